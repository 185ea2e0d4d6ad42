"""Draw the two pictures of the style guide, docs/look.md, from the program's own look.

Run as ``python tools/draw_look.py`` from the root.
"""

from __future__ import annotations

import os
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QApplication,
    QCheckBox,
    QComboBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from swatchwright.desktop.look import DARK, LIGHT, Look, palette, style
from swatchwright.desktop.pages import PAGES
from swatchwright.desktop.widgets.fields import CountField
from swatchwright.desktop.widgets.rail import Rail

PICTURES = Path(__file__).parents[1] / "docs" / "pictures"
CLAY_RED, INK_BLUE = "#a55248", "#243a5b"


def named(text: str, name: str) -> QLabel:
    """Give a label in one of the kinds of type."""
    label = QLabel(text)
    label.setObjectName(name)
    return label


def field(colour: str, text: str) -> QLabel:
    """Give a colour field with a word on it."""
    label = QLabel(text)
    label.setStyleSheet(f"background: {colour}; color: white; padding: 9px;")
    label.setAlignment(Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft)
    label.setMinimumSize(150, 120)
    return label


def greys(look: Look) -> QGridLayout:
    """Lay out the greys, each with its name."""
    grid = QGridLayout()
    grid.setSpacing(0)
    for column, name in enumerate(look.__slots__):
        block = QLabel()
        block.setStyleSheet(f"background: {getattr(look, name)};")
        block.setMinimumSize(84, 44)
        grid.addWidget(block, 0, column)
        grid.addWidget(named(name.replace("_", " "), "small"), 1, column)
    return grid


def sheet() -> QWidget:
    """Lay out a sheet with type and controls."""
    made = QWidget()
    made.setObjectName("sheet")
    rows = QVBoxLayout(made)
    rows.setContentsMargins(18, 14, 18, 16)
    for text, name in (
        ("A page says what it is for", "big"),
        ("A heading over a part of it", "heading"),
        ("What matters most stands out", "strong"),
        ("What is read in its turn", "plain"),
        ("What explains is quiet", "quiet"),
        ("What is asked for is small", "small"),
    ):
        rows.addWidget(named(text, name))
    row = QHBoxLayout()
    main, pressed, off = QPushButton("The main act"), QPushButton("Pressed"), QPushButton("Not now")
    main.setObjectName("main")
    pressed.setCheckable(True)
    pressed.setChecked(True)
    off.setEnabled(False)
    for button in (main, QPushButton("An act"), pressed, off):
        row.addWidget(button)
    row.addStretch(1)
    rows.addLayout(row)
    row = QHBoxLayout()
    amount, choice, tick = CountField(), QComboBox(), QCheckBox("use this paint")
    amount.setRange(0, 5000)
    amount.setValue(500)
    amount.setSuffix(" ml")
    choice.addItem("18 %, a grey card")
    tick.setChecked(True)
    for widget in (amount, choice, QLineEdit("Blanket box"), tick):
        row.addWidget(widget)
    rows.addLayout(row)
    rows.addWidget(named("▲ What is wrong, and how to mend it", "warn"))
    return made


def guide(look: Look) -> QWidget:
    """Lay out the guide on a bench."""
    bench = QWidget()
    bench.setObjectName("bench")
    bench.setStyleSheet(style(look))
    columns = QHBoxLayout(bench)
    columns.setContentsMargins(12, 16, 20, 16)
    columns.setSpacing(18)
    rail = Rail([(kind.key, kind.word, kind.tip) for kind in PAGES])
    rail.set_look(look)
    rail.show_page("colour")
    columns.addWidget(rail)
    rows = QVBoxLayout()
    rows.setSpacing(14)
    rows.addLayout(greys(look))
    below = QHBoxLayout()
    below.setSpacing(18)
    fields = QGridLayout()
    fields.setSpacing(0)
    for place, (colour, text) in enumerate(
        ((CLAY_RED, "wanted"), (INK_BLUE, "wanted"), ("#a35047", "dry"), ("#263d5d", "dry"))
    ):
        fields.addWidget(field(colour, text), *divmod(place, 2))
    below.addLayout(fields)
    below.addWidget(sheet(), 1)
    rows.addLayout(below)
    columns.addLayout(rows)
    return bench


def main() -> None:
    """Draw both benches."""
    application = QApplication([])
    application.setStyle("Fusion")
    for look, name in ((LIGHT, "light"), (DARK, "dark")):
        application.setPalette(palette(look))
        made = guide(look)
        made.resize(1100, 640)
        made.show()
        application.processEvents()
        made.grab().save(str(PICTURES / f"look_{name}.png"))
        made.close()


if __name__ == "__main__":
    main()
