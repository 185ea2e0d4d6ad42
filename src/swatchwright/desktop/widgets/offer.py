"""A strip that offers something in place: what it is, a button to take it, another to leave it."""

from __future__ import annotations

from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QWidget

__all__ = ["Offer"]


class Offer(QFrame):
    """Hidden until there is something to offer; leaving it hides it."""

    def __init__(self, take: str, leave: str, tip: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setObjectName("sheet")
        self.told = QLabel()
        self.told.setWordWrap(True)
        self.take = QPushButton(take)
        self.take.setObjectName("main")
        self.take.setToolTip(tip)
        self.leave = QPushButton(leave)
        self.leave.clicked.connect(self.hide)
        row = QHBoxLayout(self)
        row.setContentsMargins(16, 8, 10, 8)
        row.addWidget(self.told, 1)
        row.addWidget(self.take)
        row.addWidget(self.leave)
        self.hide()
