"""The grey card in the photo of a sample."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt

from swatchwright.acts.sample_grey import overlaps
from swatchwright.acts.samples import sample_of_a_sample
from swatchwright.desktop.widgets.photo_view import Mark
from swatchwright.desktop.words import sample as words
from swatchwright.values import Rect
from window.sample_hands import page_of

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.pages.sample_page import SamplePage
    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton


class TestGrey:
    """The grey is looked at as soon as it is drawn."""

    @pytest.fixture
    def bare(self, mixed: Window, settle: Settle) -> SamplePage:
        """Give the page with the sample photo and no marks."""
        found = sample_of_a_sample()
        assert found is not None
        page = page_of(mixed)
        page.photo_side.open_file(found.path)
        settle()
        return page

    def test_a_likely_card_is_asked_about(
        self, bare: SamplePage, settle: Settle, qtbot: QtBot
    ) -> None:
        """Yes marks it, and nothing is wrong with it."""
        found, side = sample_of_a_sample(), bare.photo_side
        assert found is not None
        asked = side.proposal.asked
        assert asked is not None
        assert overlaps(asked, found.grey)
        qtbot.mouseClick(side.proposal.yes, LEFT)
        settle()
        assert side.marks[Mark.GREY] == asked
        assert not side.proposal.isVisible()
        assert not side.greys.isVisible()

    def test_a_wrong_one_is_told_at_once(
        self, bare: SamplePage, settle: Settle, qtbot: QtBot
    ) -> None:
        """On the cloth it is told before the others are drawn; no difference is told by it."""
        found, side = sample_of_a_sample(), bare.photo_side
        assert found is not None
        assert found.sample is not None
        side.view.marked.emit(Mark.GREY, found.cloth)
        settle()
        assert side.greys.isVisible()
        assert "hardly the grey card" in side.greys.list.text()
        assert side.proposal.isVisible()
        side.view.marked.emit(Mark.CLOTH, found.cloth)
        side.view.marked.emit(Mark.SAMPLE, found.sample)
        settle()
        assert bare.told.misread.isVisible()
        assert not bare.told.words.isVisible()
        assert not bare.told.warnings.isVisible()
        assert bare.told.ask.text() == words.KEEP_ALL_THE_SAME
        qtbot.mouseClick(bare.told.ask, LEFT)
        settle()
        assert bare.next.lines[0] == words.MISREAD_ADVICE
        side.view.marked.emit(Mark.GREY, found.grey)
        settle()
        assert not side.greys.isVisible()
        assert bare.told.ask.text() == words.KEEP

    def test_one_that_cannot_be_read(self, bare: SamplePage, settle: Settle) -> None:
        """Across stripes it cannot serve: that is told in place, and no old difference stays."""
        side = bare.photo_side
        side.view.marked.emit(Mark.GREY, Rect(380, 400, 100, 100))
        settle()
        assert "not of one colour" in side.greys.list.text()
