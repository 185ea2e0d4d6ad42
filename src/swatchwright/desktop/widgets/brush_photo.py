"""A photo of painted cards, in which the grey and then one card after the other is marked."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent

from swatchwright.desktop.widgets.photo_view import Mark, PhotoView
from swatchwright.desktop.words import sitting as words

__all__ = ["BrushPhoto"]


class BrushPhoto(PhotoView):
    """The photo with a box for the grey and one for the card that is read now.

    By mouse a drag is a reading, and the next card's turn comes. By keyboard the box can be moved
    and sized, and Return on it goes on.

    Signals
    -------
    agreed()
        The box is where it should be: the next one.
    """

    agreed = Signal()

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName(words.PHOTO_NAME)
        self.by_mouse = False
        self.tags[Mark.GREY] = words.GREY_TAG

    def name_card(self, number: int) -> None:
        """Say which card a drag marks now."""
        self.tags[Mark.CLOTH] = str(number)
        self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        """End a drag, and note that it was one."""
        self.by_mouse = True
        super().mouseReleaseEvent(event)
        self.by_mouse = False

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Go on from a box that is there; all else as in any photo."""
        marks = Qt.Key.Key_Return, Qt.Key.Key_Enter
        if event.key() in marks and self._mode in self._boxes:
            self.agreed.emit()
            return
        super().keyPressEvent(event)
