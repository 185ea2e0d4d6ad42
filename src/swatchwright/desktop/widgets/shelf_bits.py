"""Small things that the widgets of the shelf page share."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QIcon, QImage, QPixmap
from PySide6.QtWidgets import QDoubleSpinBox, QFrame, QLabel, QPushButton, QScrollArea, QWidget

from swatchwright.desktop.widgets.areas import ScrollArea
from swatchwright.desktop.widgets.fields import NumberField

__all__ = ["amount", "button", "image_of", "label", "scrolled", "swatch"]


def label(text: str = "", name: str = "", *, wraps: bool = True) -> QLabel:
    """Make a label; its text can be selected."""
    made = QLabel(text)
    made.setObjectName(name)
    made.setWordWrap(wraps)
    return made


def button(
    text: str, act: Callable[[], object], name: str = "", *, told: str = "", tip: str = ""
) -> QPushButton:
    """Make a button that does something."""
    made = QPushButton(text)
    made.setObjectName(name)
    made.setAccessibleName(told or text)
    made.setToolTip(tip)
    made.clicked.connect(lambda _=False: act())
    return made


def amount(
    told: str, most: float, suffix: str, nothing: str, *, decimals: int = 0
) -> QDoubleSpinBox:
    """Make a box for a number above 0, whose lowest stand means that nothing is said."""
    made = NumberField()
    made.setAccessibleName(told)
    made.setRange(0, most)
    made.setDecimals(decimals)
    made.setSuffix(suffix)
    made.setSpecialValueText(nothing)
    made.setKeyboardTracking(False)
    made.setMinimumHeight(30)
    return made


def scrolled(inner: QWidget, told: str) -> QScrollArea:
    """Put a widget where it can be scrolled, up and down."""
    area = ScrollArea()
    area.setWidget(inner)
    area.setWidgetResizable(True)
    area.setFrameShape(QFrame.Shape.NoFrame)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    area.setAccessibleName(told)
    return area


def swatch(colour: str, size: QSize) -> QIcon:
    """Make an icon of one colour, which stays as it is where it is chosen; empty of none."""
    filled = QPixmap(size)
    filled.fill(colour or Qt.GlobalColor.transparent)
    icon = QIcon(filled)
    icon.addPixmap(filled, QIcon.Mode.Selected)
    return icon


def image_of(pixels: NDArray[np.uint8]) -> QImage:
    """Copy an array (rows, columns, 3) of sRGB bytes into an image."""
    solid = np.ascontiguousarray(pixels)
    rows, columns, _ = solid.shape
    return QImage(solid.data, columns, rows, columns * 3, QImage.Format.Format_RGB888).copy()
