"""What a hand does on the page of the sheet, for its tests."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from io import BytesIO
from typing import TYPE_CHECKING

import numpy as np
import pypdfium2
from numpy.typing import NDArray
from PIL import Image
from PySide6.QtCore import QRect, Qt
from PySide6.QtGui import QImage

from swatchwright.acts.batches import keep_recipes
from swatchwright.acts.jobs import keep_document, new_job, note_job
from swatchwright.acts.piece_job import PIECE_PART
from swatchwright.acts.recipes import Recipes, recipes_for, typed_colour
from swatchwright.desktop.pages.sheet_page import SheetPage
from swatchwright.piece.common import Kind, common_piece
from swatchwright.shelf.csv_file import demo_shelf

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtWidgets import QComboBox
    from pytestqt.qtbot import QtBot

    from swatchwright.desktop.window import Window
    from swatchwright.shelf.store.history import Changes
    from swatchwright.shelf.store.store import Store

    Settle = Callable[[], None]

Pixels = NDArray[np.uint8]

__all__ = [
    "CLAY",
    "LEFT",
    "PATIENCE",
    "ZONES",
    "choose",
    "document",
    "kept_recipes",
    "lay_box",
    "mix_clay_red",
    "of_png",
    "on_screen",
    "rest",
    "sheet_page",
    "text_of",
    "unlike",
]

LEFT = Qt.MouseButton.LeftButton
PATIENCE = 60_000
CLAY = "46, 34, 24"
ZONES = ("body", "top")


def sheet_page(window: Window, settle: Settle) -> SheetPage:
    """Bring the page into view and give it."""
    window.show_page("sheet")
    settle()
    made = window.page("sheet")
    assert isinstance(made, SheetPage)
    return made


def mix_clay_red(window: Window, settle: Settle) -> None:
    """Have mixes of two paints for a typed clay red."""
    window.session.set_most_paints(2)
    window.session.type_colour(CLAY)
    settle()


@cache
def kept_recipes() -> tuple[Recipes, Recipes]:
    """Give recipes for a clay red and an ink blue."""
    shelf = demo_shelf()
    colours = (typed_colour(46, 34, 24), typed_colour(27, 2, -24))
    red, blue = (recipes_for(wanted, shelf, most_paints=2, keep=1) for wanted in colours)
    return red, blue


def lay_box(window: Window, settle: Settle) -> None:
    """Lay a job on the bench: two zones, a piece, a note."""
    red, blue = kept_recipes()

    def begun(store: Store) -> Changes:
        with store.editing("Begin") as edit:
            id_ = new_job(store, title="Blanket box", client="Harbour workshop").jobs[0]
            keep_recipes(store, id_, red, zone="body")
            keep_recipes(store, id_, blue, zone="top")
            keep_document(store, id_, PIECE_PART, common_piece(Kind.BLANKET_BOX))
            note_job(store, id_, "Two coats, then wax.")
            return replace(edit.changes, jobs=(id_,))

    window.desk.begin(begun)
    settle()


def rest(page: SheetPage, qtbot: QtBot) -> None:
    """Wait until what is shown is what is chosen, made and drawn for the size it is shown in."""

    def rested() -> bool:
        workshop, desk = page.session.workshop, page.desk
        timers = (page._soon, page.preview._rested)
        waits = any(timer.isActive() for timer in timers) or page._stale or page._making
        if waits or not (workshop.idle(besides="proof") and desk.idle()):
            return False
        if page.made is None:
            return True
        drawn = page.drawn
        same = drawn is not None and drawn.sheet is page.made
        return same and page.preview.leaves.dot_for_dot

    qtbot.waitUntil(rested, timeout=PATIENCE)


def choose(box: QComboBox, value: object) -> None:
    """Choose from a list as a hand does."""
    place = box.findData(value)
    assert place >= 0
    box.setCurrentIndex(place)
    box.activated.emit(place)


def pixels(image: QImage) -> Pixels:
    """Give a picture as rows of red, green and blue."""
    plain = image.convertToFormat(QImage.Format.Format_RGB888)
    rows = np.frombuffer(plain.constBits(), dtype=np.uint8).reshape(plain.height(), -1)
    return rows[:, : 3 * plain.width()].reshape(plain.height(), plain.width(), 3).copy()


def of_png(page: bytes) -> Pixels:
    """Give a PNG as rows of red, green and blue."""
    return np.asarray(Image.open(BytesIO(page)).convert("RGB"))


def unlike(one: Image.Image, other: Image.Image) -> float:
    """Give how unlike two greys are on average, square by square, from the top left corner."""
    rows, columns = min(one.height, other.height), min(one.width, other.width)
    squares = [
        np.asarray(image.crop((0, 0, columns, rows)).reduce(6), dtype=float)
        for image in (one, other)
    ]
    return float(np.abs(squares[0] - squares[1]).mean())


def on_screen(page: SheetPage, number: int) -> Pixels:
    """Give the pixels of a page as the window shows them."""
    leaves, place = page.preview.leaves, page.preview.leaves.places[number]
    size = leaves.images[number].size()
    return pixels(leaves.grab(QRect(place.topLeft(), size)).toImage())


def text_of(document: bytes) -> str:
    """Give the text of a PDF, as a reader of PDFs that is not ours finds it."""
    with pypdfium2.PdfDocument(document) as opened:
        return "\n".join(page.get_textpage().get_text_range() for page in opened)


def document(page: SheetPage) -> bytes:
    """Give the PDF of the sheet on the page, which must be there."""
    assert page.made is not None
    return page.made.document
