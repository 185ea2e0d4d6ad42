"""A text of a card, that can be selected and copied."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QSizePolicy

__all__ = ["told_label"]


def told_label(text: str, name: str = "") -> QLabel:
    """Make a label that is wrapped where it is long; `name` is its place in the look."""
    label = QLabel(text)
    label.setObjectName(name)
    label.setWordWrap(True)
    label.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
    label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    return label
