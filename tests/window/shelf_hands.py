"""What a hand does on the page of the shelf, and the cards and photos that it has."""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from PIL import Image
from PySide6.QtCore import Qt

from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.own_paint import ColourFrom
from swatchwright.colour.convert import lab_to_hex
from swatchwright.desktop.pages.shelf_page import ShelfPage
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.values import Lab

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    Settle = Callable[[], None]

LEFT = Qt.MouseButton.LeftButton
TICK = Qt.ItemDataRole.CheckStateRole
WHITE = "white-clean"
SIX = (
    "strong-yellow-orange",
    "clay-red-muted",
    "strong-red-orange",
    "deep-blue-red",
    "leaf-green-mid",
    "soft-black",
)
DEMO = demo_shelf()


def tick(page: ShelfPage, qtbot: QtBot, ids: tuple[str, ...]) -> None:
    """Tick paints in the list of a sitting, by keyboard."""
    paints = page.sitting.choose.paints
    for row in range(paints.count()):
        if paints.item(row).data(Qt.ItemDataRole.UserRole) in ids:
            paints.setCurrentRow(row)
            qtbot.keyClick(paints, Qt.Key.Key_Space)


def enter(page: ShelfPage, qtbot: QtBot, lab: Lab) -> None:
    """Type a colour for the card whose turn it is, as read with an instrument."""
    means, typed = page.sitting.reading.means, page.sitting.reading.typed
    means.setCurrentIndex(means.findData(ColourFrom.MEASURED.usually_off))
    typed.setText(", ".join(f"{v:.2f}" for v in lab.triple))
    qtbot.keyClick(typed, Qt.Key.Key_Return)


def colour_of(mix: tuple[tuple[str, float], ...]) -> Lab:
    """Give the colour of a card by the optics of the paints as they are."""
    return look_of_mix(DEMO, mix).dry


def to_reading(page: ShelfPage, qtbot: QtBot, ids: tuple[str, ...]) -> None:
    """Choose paints of the demonstration and go to the reading of their cards."""
    qtbot.mouseClick(page.get_to_know, LEFT)
    tick(page, qtbot, ids)
    qtbot.mouseClick(page.sitting.next, LEFT)
    qtbot.mouseClick(page.sitting.next, LEFT)


def photo_of(folder: Path, labs: list[Lab]) -> Path:
    """Paint a photo in yellow light: a grey card of 18 %, and a card of each colour beside it.

    Encoded as sRGB (IEC 61966-2-1).
    """
    patches = [(118, 118, 118)] + [
        tuple(int(lab_to_hex(lab)[i : i + 2], 16) for i in (1, 3, 5)) for lab in labs
    ]
    encoded = np.array(patches, dtype=np.float64) / 255
    low = encoded / 12.92
    linear = np.where(encoded <= 0.04045, low, ((encoded + 0.055) / 1.055) ** 2.4)
    linear = linear * (0.9, 0.8, 0.6)
    again = np.where(linear <= 0.0031308, 12.92 * linear, 1.055 * linear ** (1 / 2.4) - 0.055)
    row = np.round(255 * again).astype(np.uint8)
    pixels = np.repeat(np.repeat(row[None, :, :], 200, axis=0), 200, axis=1)
    path = folder / "cards.png"
    Image.fromarray(pixels).save(path)
    return path
