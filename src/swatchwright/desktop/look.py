"""The look of the bench: neutral greys throughout, so that nothing tints the eye."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import QRect, QRectF
from PySide6.QtGui import QColor, QPainter, QPalette

from swatchwright.colour.sight import LEAST_CONTRAST, black_and_white_on
from swatchwright.desktop.letters import grown

__all__ = [
    "DARK",
    "LIGHT",
    "Look",
    "ink_on",
    "palette",
    "reads_on",
    "style",
    "write_on",
]

_RIM = tuple((x, y) for x in (-1, 0, 1) for y in (-1, 0, 1) if x or y)

_DRAWINGS = Path(__file__).parent / "drawings"


@dataclass(frozen=True, slots=True)
class Look:
    """Greys of a bench, as ``#rrggbb``; every text on its ground has a contrast of 4.5 or more."""

    bench: str
    sheet: str
    edge: str
    ink: str
    quiet: str
    press: str
    press_ink: str
    pick: str


LIGHT = Look("#cfcfcf", "#e9e9e9", "#8a8a8a", "#1c1c1c", "#4a4a4a", "#333333", "#f5f5f5", "#bdbdbd")
DARK = Look("#2b2b2b", "#383838", "#7d7d7d", "#f0f0f0", "#c2c2c2", "#e2e2e2", "#1c1c1c", "#555555")


def ink_on(colour: QColor) -> QColor:
    """Give black or white, whichever stands out more on a colour to eyes of every kind."""
    black, white = black_and_white_on(_parts(colour))
    return QColor("#000000") if black >= white else QColor("#ffffff")


def reads_on(colour: QColor) -> bool:
    """Tell whether words in that ink are read by eyes of every kind with nothing about them.

    On some vivid reds and oranges they are not: without long cones they are dark, without middle
    ones light.
    """
    return max(black_and_white_on(_parts(colour))) >= LEAST_CONTRAST


def write_on(
    painter: QPainter, area: QRect | QRectF, flags: int, text: str, colour: QColor
) -> None:
    """Write on a field of a colour; where the ink alone would not do, with a rim of the other."""
    ink, room = ink_on(colour), QRectF(area)
    if not reads_on(colour):
        painter.setPen(QColor("#ffffff") if ink == QColor("#000000") else QColor("#000000"))
        for x, y in _RIM:
            painter.drawText(room.translated(x, y), flags, text)
    painter.setPen(ink)
    painter.drawText(room, flags, text)


def _parts(colour: QColor) -> tuple[float, float, float]:
    return colour.red() / 255, colour.green() / 255, colour.blue() / 255


def palette(look: Look) -> QPalette:
    """Give the palette for everything that no style rule names."""
    made = QPalette()
    roles = {
        QPalette.ColorRole.Window: look.bench,
        QPalette.ColorRole.WindowText: look.ink,
        QPalette.ColorRole.Base: look.sheet,
        QPalette.ColorRole.AlternateBase: look.bench,
        QPalette.ColorRole.Text: look.ink,
        QPalette.ColorRole.Button: look.sheet,
        QPalette.ColorRole.ButtonText: look.ink,
        QPalette.ColorRole.Highlight: look.press,
        QPalette.ColorRole.HighlightedText: look.press_ink,
        QPalette.ColorRole.ToolTipBase: look.sheet,
        QPalette.ColorRole.ToolTipText: look.ink,
        QPalette.ColorRole.PlaceholderText: look.quiet,
    }
    for role, colour in roles.items():
        made.setColor(role, QColor(colour))
    return made


def style(look: Look) -> str:
    """Give the style rules."""
    return f"""
    QWidget {{ color: {look.ink}; font-size: {grown(14)}px; }}
    QMainWindow, #bench {{ background: {look.bench}; }}
    #sheet {{ background: {look.sheet}; border-radius: 10px; }}
    #heading {{ font-size: {grown(17)}px; font-weight: 600; }}
    #big {{ font-size: {grown(21)}px; font-weight: 600; }}
    #small {{ color: {look.quiet}; font-size: {grown(12)}px; }}
    #quiet {{ color: {look.quiet}; }}
    #strong {{ font-weight: 600; }}
    QPushButton, QToolButton {{
        background: {look.sheet}; border: 1px solid {look.edge}; border-radius: 8px;
        padding: 7px 13px;
    }}
    QPushButton:hover, QToolButton:hover {{ border-color: {look.ink}; }}
    QPushButton:checked, QToolButton:checked, QPushButton#main {{
        background: {look.press}; color: {look.press_ink}; border-color: {look.press};
    }}
    QToolButton#page {{
        background: transparent; border: none; border-radius: 8px; padding: 7px 2px;
        font-size: {grown(12)}px;
    }}
    QToolButton#page:hover {{ background: {look.pick}; }}
    QToolButton#page:checked {{ background: {look.press}; color: {look.press_ink}; }}
    QToolButton#page:focus {{ border: 2px solid {look.ink}; }}
    #waiting {{ color: {look.quiet}; font-size: {grown(16)}px; padding: 60px; }}
    QPushButton#little {{ padding: 5px 6px; font-size: {grown(12)}px; }}
    QDialog {{ background: {look.bench}; }}
    QPushButton:disabled, QToolButton:disabled, QCheckBox:disabled, QRadioButton:disabled,
    QComboBox:disabled, QAbstractSpinBox:disabled, QLineEdit:disabled, QPlainTextEdit:disabled {{
        color: {look.edge}; border-color: {look.edge};
    }}
    QPushButton#main:disabled {{
        background: {look.sheet}; color: {look.edge}; border-color: {look.edge};
    }}
    QPushButton:checked:disabled, QToolButton:checked:disabled {{ color: {look.edge}; }}
    QPushButton:focus, QToolButton:focus, QCheckBox:focus, QScrollArea:focus,
    QPlainTextEdit:focus, QComboBox:focus, QAbstractSpinBox:focus, QListView:focus,
    QTableView:focus, QDateEdit:focus,
    QLineEdit:focus, QRadioButton:focus, #typed:focus {{ border: 2px solid {look.ink}; }}
    QPushButton:checked:focus, QToolButton:checked:focus, QPushButton#main:focus,
    QToolButton#page:checked:focus {{ border: 2px solid {look.press_ink}; }}
    QToolButton::menu-indicator {{ image: none; }}
    {_lists(look)}
    QTableView {{
        background: {look.sheet}; color: {look.ink}; border: none; gridline-color: {look.bench};
        selection-background-color: {look.press}; selection-color: {look.press_ink};
    }}
    QHeaderView::section {{
        background: {look.bench}; color: {look.ink}; border: none; padding: 6px;
    }}
    #warn {{
        color: {look.press_ink}; background: {look.press}; border-radius: 8px; padding: 7px 10px;
    }}
    #typed {{
        background: {look.sheet}; border: 1px solid {look.edge}; border-radius: 8px;
        padding: 6px 9px;
    }}
    QCheckBox, QRadioButton {{
        spacing: 8px; padding: 3px; border: 2px solid transparent; border-radius: 6px;
    }}
    QScrollArea {{ border: 2px solid transparent; background: transparent; }}
    #guide, #contents {{
        background: {look.sheet}; border: 2px solid transparent; border-radius: 10px;
    }}
    #contents {{ padding: 6px; }}
    #guide:focus, #contents:focus {{ border-color: {look.ink}; }}
    #contents::item {{ padding: 6px 0; border-radius: 6px; }}
    #contents::item:selected {{ background: {look.press}; color: {look.press_ink}; }}
    QSlider {{ border: 2px solid transparent; border-radius: 6px; }}
    QSlider:focus {{ border-color: {look.ink}; }}
    {_fields(look)}
    {_scroll_bars(look)}
    QSplitter::handle {{ background: transparent; }}
    QProgressBar {{ background: {look.sheet}; border: 1px solid {look.edge}; border-radius: 4px; }}
    QProgressBar::chunk {{ background: {look.press}; border-radius: 3px; }}
    QMenu {{ background: {look.sheet}; border: 1px solid {look.edge}; padding: 6px; }}
    QMenu::item {{ padding: 7px 22px; border-radius: 5px; }}
    QMenu::item:selected {{ background: {look.press}; color: {look.press_ink}; }}
    QToolTip {{ background: {look.sheet}; color: {look.ink}; border: 1px solid {look.edge}; }}
    #trouble {{
        background: {look.press}; border-radius: 10px;
    }}
    #trouble QLabel {{ color: {look.press_ink}; }}
    """


def _fields(look: Look) -> str:
    """Give the rules of what is typed into, chosen from and ticked, in one flat shape."""
    return f"""
    QComboBox, QAbstractSpinBox, QDateEdit, QLineEdit {{
        background: {look.sheet}; border: 1px solid {look.edge}; border-radius: 7px;
        padding: 2px 7px; min-height: 20px;
        selection-background-color: {look.press}; selection-color: {look.press_ink};
    }}
    QComboBox:hover, QAbstractSpinBox:hover, QLineEdit:hover {{ border-color: {look.ink}; }}
    QComboBox:disabled, QAbstractSpinBox:disabled, QLineEdit:disabled {{ color: {look.edge}; }}
    QComboBox:focus, QAbstractSpinBox:focus, QDateEdit:focus, QLineEdit:focus {{
        border: 2px solid {look.ink}; padding: 1px 6px;
    }}
    QAbstractSpinBox {{ padding: 0 1px; min-height: 24px; }}
    QAbstractSpinBox:focus {{ padding: 0; min-height: 22px; }}
    QAbstractSpinBox QLineEdit, QComboBox QLineEdit, QAbstractSpinBox QLineEdit:focus,
    QComboBox QLineEdit:focus {{
        background: transparent; border: none; padding: 0; min-height: 0;
    }}
    QComboBox::drop-down, QDateEdit::drop-down {{ border: none; width: 22px; }}
    QComboBox::down-arrow, QDateEdit::down-arrow, QAbstractSpinBox::down-arrow {{
        image: {_drawing("down", look)}; width: 11px; height: 11px;
    }}
    QAbstractSpinBox::up-arrow {{ image: {_drawing("up", look)}; width: 9px; height: 9px; }}
    QAbstractSpinBox::down-arrow {{ width: 9px; height: 9px; }}
    QAbstractSpinBox::up-button, QAbstractSpinBox::down-button {{
        border: none; background: transparent; width: 18px; height: 11px;
        subcontrol-origin: border; margin: 1px 2px;
    }}
    QAbstractSpinBox::up-button {{ subcontrol-position: top right; }}
    QAbstractSpinBox::down-button {{ subcontrol-position: bottom right; }}
    QAbstractSpinBox::up-button:hover, QAbstractSpinBox::down-button:hover {{
        background: {look.pick}; border-radius: 5px;
    }}
    QAbstractSpinBox::up-arrow:off, QAbstractSpinBox::down-arrow:off {{ image: none; }}
    QCheckBox::indicator, QRadioButton::indicator, QTableView::indicator {{
        width: {grown(15)}px; height: {grown(15)}px; border-radius: 4px;
        background: {look.sheet}; border: 1px solid {look.edge};
    }}
    QTableView::indicator {{ margin-left: 4px; }}
    QRadioButton::indicator {{ border-radius: {grown(15) // 2 + 1}px; }}
    QCheckBox::indicator:hover, QRadioButton::indicator:hover {{ border-color: {look.ink}; }}
    QCheckBox::indicator:checked, QRadioButton::indicator:checked, QTableView::indicator:checked {{
        background: {look.press}; border-color: {look.press};
    }}
    QTableView::indicator:checked {{ border-color: {look.edge}; }}
    QCheckBox::indicator:checked, QTableView::indicator:checked {{
        image: {_drawing("tick", look)};
    }}
    QRadioButton::indicator:checked {{ image: {_drawing("dot", look)}; }}
    """


def _lists(look: Look) -> str:
    """Give the rules of the lists that are chosen from.

    They open below their field and are scrolled by a bar: strips that scroll would hide the first
    entry or the last. No frame for the keyboard, which would take room from the entries: the entry
    that is chosen is seen by its ground.
    """
    return f"""
    QComboBox {{ combobox-popup: 0; }}
    QComboBox QAbstractItemView, QComboBox QAbstractItemView:focus {{
        background: {look.sheet}; color: {look.ink}; border: 1px solid {look.edge};
        padding: 0; outline: none;
        selection-background-color: {look.pick}; selection-color: {look.ink};
    }}
    QComboBox QAbstractItemView::item {{ padding: 4px 8px; min-height: {grown(16)}px; }}
    """


def _scroll_bars(look: Look) -> str:
    """Give the rules of slim scroll bars without arrows."""
    return f"""
    QScrollBar {{ background: transparent; border: none; margin: 0; }}
    QScrollBar:vertical {{ width: 12px; }}
    QScrollBar:horizontal {{ height: 12px; }}
    QScrollBar::handle {{ background: {look.edge}; border-radius: 4px; margin: 2px; }}
    QScrollBar::handle:vertical {{ min-height: 32px; }}
    QScrollBar::handle:horizontal {{ min-width: 32px; }}
    QScrollBar::handle:hover, QScrollBar::handle:pressed {{ background: {look.quiet}; }}
    QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
    QScrollBar::add-page, QScrollBar::sub-page {{ background: transparent; }}
    QAbstractScrollArea::corner {{ background: transparent; border: none; }}
    """


def _drawing(what: str, look: Look) -> str:
    """Name the file of a small drawing of ours in the ink of a bench."""
    file = _DRAWINGS / f"{what}-{'dark' if look == DARK else 'light'}.svg"
    return f'url("{file.as_posix()}")'
