"""The look of the bench: neutral greys throughout, so that nothing tints the eye."""

from __future__ import annotations

from dataclasses import dataclass

from PySide6.QtGui import QColor, QPalette

__all__ = ["DARK", "LIGHT", "Look", "ink_on", "palette", "style"]


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
    """Give black or white, whichever stands out more on a colour (WCAG 2.2 contrast)."""
    parts = (colour.redF(), colour.greenF(), colour.blueF())
    light = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts]
    luminance = 0.2126 * light[0] + 0.7152 * light[1] + 0.0722 * light[2]
    # Contrast with black, (Y + 0.05) / 0.05, equals that with white, 1.05 / (Y + 0.05), here.
    return QColor("#000000") if luminance > 0.179 else QColor("#ffffff")


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
    QWidget {{ color: {look.ink}; font-size: 14px; }}
    QMainWindow, #bench {{ background: {look.bench}; }}
    #sheet {{ background: {look.sheet}; border-radius: 10px; }}
    #heading {{ font-size: 17px; font-weight: 600; }}
    #big {{ font-size: 21px; font-weight: 600; }}
    #small {{ color: {look.quiet}; font-size: 12px; }}
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
        font-size: 12px;
    }}
    QToolButton#page:hover {{ background: {look.pick}; }}
    QToolButton#page:checked {{ background: {look.press}; color: {look.press_ink}; }}
    QToolButton#page:focus {{ border: 2px solid {look.ink}; }}
    #waiting {{ color: {look.quiet}; font-size: 16px; padding: 60px; }}
    QPushButton#little {{ padding: 5px 6px; font-size: 12px; }}
    QDialog {{ background: {look.bench}; }}
    QPushButton:disabled {{ color: {look.edge}; border-color: {look.edge}; }}
    QPushButton:focus, QToolButton:focus, QCheckBox:focus, QScrollArea:focus,
    QPlainTextEdit:focus, QComboBox:focus, QAbstractSpinBox:focus, QListView:focus,
    QTableView:focus, QDateEdit:focus,
    QLineEdit:focus {{ border: 2px solid {look.ink}; }}
    QToolButton::menu-indicator {{ image: none; }}
    QComboBox QAbstractItemView {{
        background: {look.sheet}; color: {look.ink};
        selection-background-color: {look.pick}; selection-color: {look.ink};
    }}
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
    QCheckBox {{ spacing: 8px; padding: 3px; border: 2px solid transparent; border-radius: 6px; }}
    QScrollArea {{ border: 2px solid transparent; background: transparent; }}
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
