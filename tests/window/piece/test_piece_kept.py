"""The piece kept with its job, and written to files."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING
from xml.etree import ElementTree as ET

import pytest
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel

from swatchwright.acts.parts import with_part
from swatchwright.acts.piece import read_piece, save_piece
from swatchwright.acts.piece_job import AMOUNTS_PART, FORM_PART, PIECE_PART, PieceForm
from swatchwright.desktop.pages.piece_page import PiecePage
from swatchwright.desktop.words import piece as words
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.order import AmountsOrder
from swatchwright.piece.part import Piece, Shape

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton


def told(page: PiecePage) -> str:
    """Give all the text in view on the page."""
    return "\n".join(label.text() for label in page.findChildren(QLabel) if label.isVisible())


def keep(page: PiecePage, settle: Settle) -> None:
    """Let what is set be kept at once."""
    page._keeper.keep()
    settle()


class TestKept:
    """What is set stays with the job."""

    def test_it_is_kept_a_moment_later(
        self, table: PiecePage, window: Window, qtbot: QtBot, settle: Settle
    ) -> None:
        """Without any press the piece, its form and its order are kept with a job."""
        qtbot.waitUntil(lambda: window.desk.job is not None, timeout=10_000)
        settle()
        assert window.desk.part(PIECE_PART, Piece) == table.piece
        assert window.desk.part(FORM_PART, PieceForm) == table.form
        assert window.desk.part(AMOUNTS_PART, AmountsOrder) is not None

    def test_undo_and_redo(
        self, table: PiecePage, window: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """A size that was kept is taken back by the button, and done again."""
        keep(table, settle)
        table.sizes.fields["width"].setValue(1200)
        keep(table, settle)
        qtbot.mouseClick(window.undo, LEFT)
        settle()
        assert table.piece == common_piece(Kind.CONSOLE_TABLE)
        assert table.sizes.fields["width"].value() == 900
        qtbot.mouseClick(window.redo, LEFT)
        settle()
        assert table.sizes.fields["width"].value() == 1200

    def test_undo_of_all(
        self, table: PiecePage, window: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """With the first edit taken back the page waits again, and no error is shown."""
        keep(table, settle)
        qtbot.mouseClick(window.undo, LEFT)
        settle()
        assert not table.sizes.isVisible()
        assert words.WAIT in told(table)
        assert not window.trouble.isVisible()

    def test_each_job_has_its_piece(
        self, table: PiecePage, window: Window, settle: Settle, qtbot: QtBot
    ) -> None:
        """Opening a job shows its piece; what was not kept yet goes to the job it was set for."""
        keep(table, settle)
        assert window.desk.job is not None
        first = window.desk.job.id
        window.desk.put_away()
        settle()
        assert not table.sizes.isVisible()
        qtbot.mouseClick(table.kinds.buttons[Kind.CHAIR], LEFT)
        keep(table, settle)
        table.sizes.fields["width"].setValue(600)
        window.desk.open_job(first)
        settle()
        assert table.piece == common_piece(Kind.CONSOLE_TABLE)
        second = next(line.id for line in window.desk.jobs if line.id != first)
        window.desk.open_job(second)
        settle()
        assert table.piece == common_piece(Kind.CHAIR, width=600)

    def test_an_echo_overwrites_nothing(
        self, table: PiecePage, settle: Settle, window: Window
    ) -> None:
        """What is set while the last is being kept stays as it was set."""
        table._keeper.keep()
        table.sizes.fields["width"].setValue(1000)
        settle()
        assert table.sizes.fields["width"].value() == 1000
        keep(table, settle)
        kept = window.desk.part(FORM_PART, PieceForm)
        assert kept is not None
        assert kept.width == 1000


class TestFiles:
    """Drawings and pieces in files."""

    def test_the_drawing_is_saved(
        self, table: PiecePage, window: Window, settle: Settle, tmp_path: Path
    ) -> None:
        """The file is SVG with a polygon for every zone, in the colour of its mix."""
        window.session.set_most_paints(2)
        window.session.type_colour("46, 34, 24")
        settle()
        path = tmp_path / "table.svg"
        assert table.piece is not None
        table.files.save_drawing(table.piece, table.bench.colours(), path)
        settle()
        root = ET.parse(path).getroot()  # noqa: S314 - our own file
        zones = {e.get("data-zone") for e in root.iter() if e.get("data-zone")}
        assert {"top", "body"} <= zones
        colour = table.bench.zones.fields[0].colour
        rgb = f"rgb({colour.red()},{colour.green()},{colour.blue()})"
        assert any(e.get("fill") == rgb for e in root.iter())

    def test_the_piece_is_saved_and_opened(
        self, table: PiecePage, settle: Settle, tmp_path: Path
    ) -> None:
        """A saved piece is read back as it was; from then on its parts tell its size."""
        path = tmp_path / "table.json"
        assert table.piece is not None
        table.files.save(table.piece, path)
        settle()
        assert read_piece(path) == table.piece
        changed = with_part(common_piece(Kind.CONSOLE_TABLE), Shape.SPHERE)
        save_piece(changed, path)
        table.files.open(path)
        settle()
        assert table.piece == changed
        assert words.FROM_FILE in told(table)
        assert not any(button.isChecked() for button in table.kinds.buttons.values())

    def test_a_broken_file_is_told(
        self, table: PiecePage, window: Window, settle: Settle, tmp_path: Path
    ) -> None:
        """A file that is no piece is told of, and the piece on the page stays."""
        path = tmp_path / "broken.json"
        path.write_text(json.dumps({"name": "x"}), encoding="utf-8")
        table.files.open(path)
        settle()
        assert window.trouble.isVisible()
        assert table.piece == common_piece(Kind.CONSOLE_TABLE)

    def test_a_piece_of_many_parts(
        self, table: PiecePage, window: Window, settle: Settle, tmp_path: Path
    ) -> None:
        """A hundred and fifty parts are drawn without holding the window up."""
        path = tmp_path / "many.json"
        row = {"name": "slat", "shape": "panel", "length": 500, "width": 40, "depth": 10}
        parts = [{**row, "count": 150, "painted": ["outside"]}]
        path.write_text(json.dumps({"name": "slats", "parts": parts}), encoding="utf-8")
        table.files.open(path)
        settle()
        assert table.piece is not None
        assert table.bench.total.text() == words.total_line(150 * 0.5 * 0.04)
        assert not window.trouble.isVisible()

    def test_too_many_parts_to_draw(
        self, table: PiecePage, window: Window, settle: Settle, tmp_path: Path
    ) -> None:
        """More parts than a drawing can show are told of; the list and the amounts are there."""
        path = tmp_path / "many.json"
        row = {"shape": "panel", "length": 500, "width": 40, "depth": 10, "count": 150}
        parts = [{**row, "name": f"slat {n}", "painted": ["outside"]} for n in range(3)]
        path.write_text(json.dumps({"name": "slats", "parts": parts}), encoding="utf-8")
        table.files.open(path)
        settle()
        assert window.trouble.isVisible()
        assert table.parts.model.rowCount() == 3
        assert table.amounts is not None
        assert table.amounts.coatings[0].area == pytest.approx(450 * 0.5 * 0.04)
