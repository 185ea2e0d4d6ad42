"""A report tells of a fault what helps to find it, and nothing of the painter's or her client's."""

from __future__ import annotations

import getpass
import platform
import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright import __version__
from swatchwright.acts.report import (
    LEFT_OUT,
    MOST_LETTERS,
    Scene,
    fault_of,
    head_of,
    report_of,
    shorter,
    without,
    without_folders,
)

CLIENT = "Ada Whitcombe"


def caught(act: object) -> BaseException:
    """Give what an act raises."""
    assert callable(act)
    try:
        act()
    except BaseException as error:  # noqa: BLE001 - whatever it is
        return error
    raise AssertionError("nothing was raised")


def raising(error: Exception) -> BaseException:
    """Give an exception as it is caught, with its traceback."""

    def act() -> None:
        raise error

    return caught(act)


class TestAFault:
    """What is told of an exception."""

    def test_calls_and_message(self) -> None:
        """Each call is told with its file, line, name and code; the message comes last."""
        told = fault_of(raising(RuntimeError("a loose screw"))).told
        lines = told.splitlines()
        assert lines[-1] == "RuntimeError: a loose screw"
        assert re.fullmatch(r"  \S*test_report\.py:\d+ act: raise error", lines[-2])

    def test_files_are_told_below_their_folder(self) -> None:
        """The folder in which the program or Python lies is left out."""
        told = fault_of(caught(lambda: re.compile("("))).told
        assert re.search(r"^  re/_?\w+\.py:\d+ ", told, re.MULTILINE)
        assert str(Path(re.__file__).parents[1]) not in told
        assert str(Path(__file__).parent) not in told

    def test_what_led_to_it(self) -> None:
        """An exception raised from another is told after it."""

        def act() -> None:
            try:
                dict[str, str]()[CLIENT]
            except KeyError as error:
                raise RuntimeError("then this") from error

        told = fault_of(caught(act)).told
        assert told.index("KeyError") < told.index("RuntimeError: then this")
        assert CLIENT not in told

    @pytest.mark.parametrize(
        "error",
        [
            KeyError(CLIENT),
            ValueError(f"invalid literal for int() with base 10: '{CLIENT}'"),
            ValueError(f'no such zone: "{CLIENT}" here'),
            ValueError(f"“{CLIENT}” has no colour"),
            FileNotFoundError(2, "No such file or directory", f"/pictures/{CLIENT}/sofa.jpg"),
            OSError(f"cannot read /pictures/{CLIENT}/sofa big.jpg again"),
            OSError(rf"cannot read {'C:'}\pictures\{CLIENT}\sofa.jpg again"),
            OSError(f"cannot read file:///pictures/{CLIENT} again"),
            ValueError(f"it isn't there: 'the wife of {CLIENT}'s friend'"),
        ],
        ids=str,
    )
    def test_messages_tell_nothing_of_hers(self, error: Exception) -> None:
        """What stands in quotes, and every path, is left out of a message."""
        told = fault_of(raising(error)).told
        assert CLIENT not in told
        assert "sofa" not in told
        assert type(error).__name__ in told

    def test_names_of_ours_stay(self) -> None:
        """A quoted name stays where our own code says it too, or Python or Qt has it."""
        told = fault_of(caught(lambda: None.no_such_thing)).told  # type: ignore[attr-defined]
        assert told.endswith("AttributeError: 'NoneType' object has no attribute 'no_such_thing'")

    def test_a_deep_one_is_cut(self) -> None:
        """Of a thousand calls the first and the last are told."""

        def deeper(left: int) -> None:
            if left:
                deeper(left - 1)
            raise RuntimeError("the bottom")

        told = fault_of(caught(lambda: deeper(300))).told
        assert "more calls" in told
        assert told.endswith("RuntimeError: the bottom")
        assert len(told) < 10_000

    def test_the_same_fault_has_the_same_mark(self) -> None:
        """A fault is known again by its kind and place, whatever its message."""
        one, two = (fault_of(raising(ValueError(word))) for word in ("one", "two"))
        assert one.mark == two.mark
        assert one.mark != fault_of(raising(KeyError("one"))).mark


class TestAReport:
    """What is passed on."""

    SCENE = Scene("Qt 6.9.1 on xcb", "colour", ("Session.set_marks", "Keeping.keep"))

    def test_what_runs_on_what(self) -> None:
        """Versions, system, language, the page in view and what was done last are in it."""
        head = head_of(self.SCENE)
        for told in (
            f"Swatchwright {__version__}",
            f"Python {platform.python_version()}",
            "Qt 6.9.1 on xcb",
            platform.platform(),
            "language en",
            "Page: colour",
            "Last done: Session.set_marks, Keeping.keep",
        ):
            assert told in head

    def test_nothing_of_hers(self, monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
        """Names that are told, her home folder, her user name and her store are left out."""
        monkeypatch.setenv("SWATCHWRIGHT_HOME", str(tmp_path / "store"))
        monkeypatch.setenv("HOME", str(tmp_path / "ada"))
        monkeypatch.setenv("USERPROFILE", str(tmp_path / "ada"))
        monkeypatch.setenv("LOGNAME", "adawhit")
        monkeypatch.setenv("USERNAME", "adawhit")
        assert getpass.getuser() == "adawhit"
        said = f"{CLIENT.upper()} at {tmp_path / 'ada'}, by adawhit, in {tmp_path / 'store'}: rest"
        told = report_of(self.SCENE, [said], private=[CLIENT])
        for word in (CLIENT.upper(), CLIENT, str(tmp_path), "adawhit"):
            assert word not in told
        assert told.endswith(": rest\n")

    def test_it_can_be_passed_on(self) -> None:
        """However much went wrong, a report stays within its length, its beginning kept."""
        told = report_of(self.SCENE, ["x" * 7_000 for _ in range(50)])
        assert len(told) <= MOST_LETTERS + 1
        assert told.startswith("Swatchwright")

    def test_each_line_of_a_text_is_hers(self) -> None:
        """A brief of several lines is left out line by line too."""
        assert "the red" not in without("KeyError: the red", ["make it\nthe red"])

    @given(st.text(min_size=2), st.text())
    def test_what_is_private_never_stays(self, private: str, text: str) -> None:
        """Standing alone, a private word is left out wherever it stands."""
        word = private.strip()
        if len(word) > 1 and len(word.splitlines()) == 1 and word not in LEFT_OUT:
            assert word not in without(f"{text} : {word} :", [private]).removeprefix(text)

    @given(st.text(max_size=300), st.integers(60, 200))
    def test_shorter_keeps_both_ends(self, text: str, most: int) -> None:
        """A text that fits stays; of another, the beginning and the end do."""
        cut = shorter(text, most)
        assert len(cut) <= max(most, 0)
        assert cut == text or (text.startswith(cut[:10]) and text.endswith(cut[-10:]))

    def test_files_of_a_crash(self) -> None:
        """What Python's fault handler names is told below its folder, or by its name alone."""
        line = f'  File "{re.__file__}", line 3 in compile\n  File "/x/{CLIENT}/y.py", line 1'
        told = without_folders(line)
        assert f'"re/{Path(re.__file__).name}"' in told
        assert '"y.py"' in told
