"""What the guide says of a link that leads out of it, which is opened only on asking."""

from __future__ import annotations

from PySide6.QtCore import Qt, QUrl
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel

from swatchwright.desktop.widgets.shelf_bits import button
from swatchwright.desktop.words import guide as words

__all__ = ["GuideOutside"]


class GuideOutside(QFrame):
    """Says that a link leads out of the guide, and opens it only on asking."""

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("trouble")
        self._url = QUrl()
        self.told = QLabel()
        self.told.setWordWrap(True)
        self.told.setTextFormat(Qt.TextFormat.PlainText)
        self.open = button(words.OPEN_OUTSIDE, self._open)
        self.stay = button(words.STAY, self.hide)
        row = QHBoxLayout(self)
        row.setContentsMargins(14, 8, 8, 8)
        row.addWidget(self.told, 1)
        for one in (self.open, self.stay):
            one.setAutoDefault(False)
            row.addWidget(one)
        self.hide()

    def ask(self, url: QUrl) -> None:
        """Ask whether to open an address."""
        self._url = url
        self.told.setText(words.outside_line(url.toDisplayString()))
        self.show()

    def _open(self) -> None:
        self.hide()
        QDesktopServices.openUrl(self._url)
