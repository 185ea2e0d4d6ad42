"""What a dried sample asks for, by command."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from swatchwright.acts.samples import sample_of_a_sample
from swatchwright.shelf.csv_file import read_shelf
from unit.commands.runs import ran, refused

if TYPE_CHECKING:
    Captured = pytest.CaptureFixture[str]

POT = ("strong-red-orange=21.7", "pale-blue-greyish=5.8", "strong-yellow-orange=2.5")
WANTED = ("--lab", "46,34,24")


def marks() -> list[str]:
    """Give the options for the rendered sample photo."""
    found = sample_of_a_sample()
    assert found is not None
    assert found.sample is not None
    rects = {"--grey": found.grey, "--cloth": found.cloth, "--sample": found.sample}
    words = ["--photo", str(found.path)]
    for option, rect in rects.items():
        words += [option, f"{rect.x},{rect.y},{rect.width},{rect.height}"]
    return words


def test_the_rendered_sample_is_told_as_it_truly_differs(capsys: Captured) -> None:
    """Within what is stated the difference is that of the file of facts."""
    found = ran(capsys, "sample", *POT, *marks(), "--light", "daylight", "--json").json
    path = sample_of_a_sample()
    assert path is not None
    facts = json.loads((path.path.parent / "truth.json").read_text(encoding="utf-8"))["brushed"][0]
    both = zip(facts["sample_lab_d65_2deg"], facts["cloth_lab_d65_2deg"], strict=True)
    truth = [s - c for s, c in both]
    told = found["difference"]["lab"]
    assert all(abs(t - v) < 1.5 for t, v in zip(told, truth, strict=True))
    assert found["difference"]["give_or_take"] < 2.5
    assert found["stop"] is None
    assert found["add"] or found["fresh"]["paints"]


def test_said_by_eye_it_says_what_to_add_and_how_to_pour(capsys: Captured) -> None:
    """Words go in, words come out: what to add, and a fresh mix with its strongest paint last."""
    out = ran(capsys, "sample", *POT, *WANTED, "--said", "much too light", "--pot", "300").out
    assert "The sample is lighter than the cloth" in out
    assert "To the pot of 300 ml add" in out
    assert "only once a sample has dried" in out
    assert "Brush out beside it" in out


def test_before_a_sample_is_dry_it_says_what_to_brush_beside(capsys: Captured) -> None:
    """Two stripes of the same paints; of a single paint none."""
    found = ran(capsys, "sample", *POT, *WANTED, "--stripes", "--json").json
    assert len(found["beside"]) == 2
    assert "Beside it brush" in ran(capsys, "sample", *POT, *WANTED, "--stripes").out
    assert "single paint" in ran(capsys, "sample", POT[0], "--stripes").out


def test_it_says_when_it_is_done(capsys: Captured) -> None:
    """A difference nobody sees ends it, in words and in JSON."""
    words = ("sample", *POT, *WANTED, "--lab-difference=0.2,0.1,-0.1")
    assert "Done: hardly anybody" in ran(capsys, *words).out
    assert ran(capsys, *words, "--json").json["stop"] == "unseen"


def test_rounds_are_kept_in_a_file(capsys: Captured, tmp_path: Path) -> None:
    """Each sample is added to the file, and the second knows of the first."""
    path = tmp_path / "rounds.json"
    words = ("sample", *POT, "--rounds", path, "--json")
    first = ran(capsys, *words, *WANTED, "--said", "much too light").json
    second = ran(capsys, *words, "--said", "a touch too red").json
    assert (first["sample"], second["sample"]) == (1, 2)
    assert len(json.loads(path.read_text(encoding="utf-8"))["rounds"]) == 2


def test_the_shelf_that_has_learnt_can_be_written(capsys: Captured, tmp_path: Path) -> None:
    """Its paints have a spread, and the file reads back."""
    path = tmp_path / "mine.csv"
    ran(capsys, "sample", *POT, *WANTED, "--said", "much too light", "--out", path)
    learnt = read_shelf(path)
    assert learnt.paint("strong-red-orange").spread is not None
    assert learnt.paint("white-clean").spread is None


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ((*POT, *WANTED), "how the sample compares"),
        ((*POT, *WANTED, "--said", "too red", "--lab-difference=1,1,1"), "how the sample"),
        ((*POT, "--said", "too red"), "wanted colour is not known"),
        ((*POT, *WANTED, "--said", "lovely"), "does not say how"),
        ((*POT, "--photo", "x.jpg"), "but not where"),
        ((*POT, *WANTED, "--lab-difference=1,2"), "three numbers"),
        ((*POT, *WANTED, "--lab-difference=99,2,1"), "between -60 and 60"),
        (("no-such-paint=3", *WANTED, "--said", "too red"), "no-such-paint"),
        ((*POT, *WANTED, "--said", "too red", "--tub", "3"), "room"),
        ((*POT, *WANTED, "--said", "too red", "--fresh", "nan"), "volume"),
    ],
)
def test_what_cannot_be_is_refused(capsys: Captured, words: tuple[str, ...], told: str) -> None:
    """Each slip is named, with how to mend it."""
    assert told in refused(capsys, "sample", *words)


def test_a_file_of_other_things_is_refused(capsys: Captured, tmp_path: Path) -> None:
    """What is no file of samples is left as it was."""
    path = tmp_path / "rounds.json"
    path.write_text('{"something": 1}', encoding="utf-8")
    told = refused(capsys, "sample", *POT, *WANTED, "--said", "too red", "--rounds", path)
    assert "no file of samples" in told
    assert path.read_text(encoding="utf-8") == '{"something": 1}'


def test_a_sample_is_taken_for_a_job(capsys: Captured, tmp_path: Path) -> None:
    """With a job named, the sample is its mix for the zone; samples it has are not lost."""
    store = ("--store", str(tmp_path / "jobs.db"))
    ran(capsys, "job", "new", "A box", *store)
    said = ("sample", *POT, *WANTED, "--said", "like the cloth")
    assert "Take sample 1 as the mix of “A box”, body" in (
        ran(capsys, *said, "--for-job", "a-box", "--zone", "body", *store).err
    )
    assert "strong-red-orange" in ran(capsys, "job", "show", "a-box", *store).out
    other = ("sample", *POT, *WANTED, "--said", "much too red", "--for-job", "a-box", *store)
    assert "other samples" in refused(capsys, *other)


def test_no_more_paints_than_asked(capsys: Captured) -> None:
    """A fresh mix of two paints, where two are asked for."""
    words = ("sample", *POT, *WANTED, "--said", "much too red", "--paints", "2", "--json")
    assert len(json.loads(ran(capsys, *words).out)["fresh"]["paints"]) <= 2
