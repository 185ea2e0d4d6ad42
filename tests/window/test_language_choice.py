"""Choosing the language in the window, and the dark bench, for the next start."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QLocale, Qt
from PySide6.QtWidgets import QApplication

from swatchwright import language
from swatchwright.acts.habits import habits, keep_dark, keep_language
from swatchwright.desktop.tongue import settle_language
from swatchwright.desktop.window import AGAIN, Window
from swatchwright.desktop.words import language as words

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from pytestqt.qtbot import QtBot


@pytest.fixture
def afterwards_as_before() -> Iterator[None]:
    """Put language and locale back."""
    spoken, locale = language.language(), QLocale()
    yield
    language.use_language(spoken)
    QLocale.setDefault(locale)
    language.bind_units(bind=False)


def test_another_language_is_kept_and_offered(window: Window, qtbot: QtBot) -> None:
    """Choosing a language keeps it and offers, in that language, to start again in place."""
    other = next(code for code in window.language.choices if code != language.language())
    window.language.choices[other].trigger()
    assert habits().language == other
    assert window.language_offer.isVisible()
    assert window.language_offer.told.text() == words.from_next_start(other)
    assert window.language_offer.take.text() == words.start_again(other)
    assert window.language_offer.leave.text() == words.later(other)
    assert words.later(other) != words.later(language.language())
    qtbot.mouseClick(window.language_offer.leave, Qt.MouseButton.LeftButton)
    assert not window.language_offer.isVisible()


def test_the_language_in_use_offers_nothing(window: Window) -> None:
    """Going back to the language in use takes the offer away."""
    spoken = language.language()
    other = next(code for code in window.language.choices if code != spoken)
    window.language.choices[other].trigger()
    window.language.choices[spoken].trigger()
    assert habits().language == spoken
    assert not window.language_offer.isVisible()


def test_every_language_has_its_own_name() -> None:
    """Whatever catalogue there is, it is chosen by its own name."""
    assert set(language.languages()) == set(words.OWN_NAMES)


def test_starting_again_closes_the_window(
    window: Window, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The button closes the window and leaves with the code that opens it anew."""
    left: list[int] = []
    monkeypatch.setattr(QApplication, "exit", left.append)
    window.language_offer.offer("xx")
    qtbot.mouseClick(window.language_offer.take, Qt.MouseButton.LeftButton)
    assert not window.isVisible()
    assert left == [AGAIN]


@pytest.mark.usefixtures("afterwards_as_before")
def test_the_kept_language_is_spoken_and_typed(
    qapp: QApplication, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A kept language is used for words, and for the decimal mark in fields."""
    monkeypatch.setenv("SWATCHWRIGHT_HOME", str(tmp_path))
    keep_language("de")
    settle_language(qapp)
    assert language.language() == "de"
    assert QLocale().decimalPoint() == ","


@pytest.mark.usefixtures("afterwards_as_before")
def test_the_environment_goes_first(
    qapp: QApplication, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A language named in the environment is spoken, whatever was kept."""
    monkeypatch.setenv("SWATCHWRIGHT_HOME", str(tmp_path))
    monkeypatch.setenv("SWATCHWRIGHT_LANGUAGE", "en_GB")
    keep_language("de")
    settle_language(qapp)
    assert language.language() == "en"
    assert QLocale().decimalPoint() == "."


def test_the_dark_bench_is_kept(
    qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A bench that was dark is dark at the next start."""
    monkeypatch.setenv("SWATCHWRIGHT_HOME", str(tmp_path))
    keep_dark(dark=True)
    window = Window()
    qtbot.addWidget(window)
    assert window.dark.isChecked()
    window.dark.trigger()
    assert not habits().dark
    window.session.close()
    window.desk.close()
