"""A camera for the running window: it waits until the window rests, and saves small pictures."""

from __future__ import annotations

import os
import time
from collections.abc import Callable, Sequence
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PIL import Image
from PySide6.QtCore import QBuffer, QRect
from PySide6.QtGui import QPixmap
from PySide6.QtWidgets import QApplication, QWidget

if TYPE_CHECKING:
    # Its words are said when it is imported, so the language has to be chosen before.
    from swatchwright.desktop.window import Window

__all__ = ["Camera"]

T = TypeVar("T", bound=QWidget)

SIZE = (1280, 760)
PATIENCE = 120.0
MOST_BYTES = 240_000
COLOURS = 256


class Camera:
    """Takes pictures of a window and of parts of it.

    Parameters
    ----------
    window
        What is pictured; it is shown in the size of all pictures.
    folder
        Where the pictures go.
    small
        Whether a picture that comes out large is saved with a palette of 256 colours.
    """

    def __init__(self, window: Window, folder: Path, *, small: bool = False) -> None:
        self.window, self.folder, self._small = window, folder, small
        folder.mkdir(parents=True, exist_ok=True)
        window.resize(*SIZE)
        window.show()

    def page(self, key: str, kind: type[T]) -> T:
        """Bring a page into view, let it come to rest, and give it."""
        self.window.show_page(key)
        self.rest()
        page = self.window.page(key)
        if not isinstance(page, kind):
            raise TypeError(f"the page {key} is another")
        return page

    def rest(self, *, proof: bool = False) -> None:
        """Let the window work until all is done and kept, and then paint."""
        besides = "" if proof else "proof"
        for _ in range(2):
            self._until(lambda: self.window.at_rest(besides=besides))
            # What waits for a hand to rest begins its work only after a while.
            self.pause(0.7)

    def pause(self, seconds: float) -> None:
        """Let the window live for a while."""
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            QApplication.processEvents()
            time.sleep(0.01)

    def take(
        self, name: str, *parts: QWidget | None, room: int = 8, high: int | None = None
    ) -> None:
        """Take a picture of the window, or of the rectangle about some of its parts.

        Parameters
        ----------
        name
            The name of the file, without its ending.
        parts
            What is to be in it, in this window or all in another; the whole window if none.
        room
            Pixels to leave about them.
        high
            How high it is at the most.
        """
        there = [part for part in parts if part is not None]
        if len(there) < len(parts):
            raise LookupError(f"there is nothing to take {name} of")
        window = there[0].window() if there else self.window
        frame = _about(window, there, room) if there else window.rect()
        if high is not None:
            frame.setHeight(min(frame.height(), high))
        path = self.folder / f"{name}.png"
        path.write_bytes(self._saved(window.grab(frame)))
        print(f"took {path.name}, {path.stat().st_size // 1000} kB")

    def _saved(self, taken: QPixmap) -> bytes:
        buffer = QBuffer()
        buffer.open(QBuffer.OpenModeFlag.WriteOnly)
        taken.save(buffer, "PNG")
        whole = bytes(buffer.data().data())
        if not self._small:
            return whole
        image = Image.open(BytesIO(whole)).convert("RGB")
        smallest = _png(image)
        if len(smallest) <= MOST_BYTES:
            return smallest
        return _png(image.quantize(COLOURS, dither=Image.Dither.NONE))

    def _until(self, done: Callable[[], bool]) -> None:
        end = time.monotonic() + PATIENCE
        while not done():
            if time.monotonic() > end:
                raise TimeoutError("the window did not come to rest")
            QApplication.processEvents()
            time.sleep(0.01)


def _about(window: QWidget, parts: Sequence[QWidget], room: int) -> QRect:
    """Give the rectangle about parts of a window."""
    frame = QRect()
    for part in parts:
        frame = frame.united(QRect(part.mapTo(window, part.rect().topLeft()), part.size()))
    return frame.adjusted(-room, -room, room, room).intersected(window.rect())


def _png(image: Image.Image) -> bytes:
    into = BytesIO()
    image.save(into, "PNG", optimize=True)
    return into.getvalue()
