"""The pictures of a page of the guide, read off the interface thread."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QObject, QSize, Qt, Signal
from PySide6.QtGui import QImage

from swatchwright.desktop.workers import Job, Workshop

__all__ = ["GuidePictures"]


class GuidePictures(QObject):
    """Fetches pictures in the size in which they are shown.

    It has a thread of its own, so that a page is not kept waiting for mixes that are searched.

    Signals
    -------
    ready(Path, QImage)
        A picture that was fetched is there.
    """

    ready = Signal(object, QImage)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.workshop = Workshop(self, threads=1)
        self._asked: dict[Path, QSize] = {}
        self._there: dict[Path, QImage] = {}

    def of(self, path: Path) -> QImage | None:
        """Give a picture that is there already."""
        return self._there.get(path)

    def fetch(self, path: Path, size: QSize) -> None:
        """Fetch a picture in this size, in dots of the screen, unless that is done or under way."""
        if self._asked.get(path) == size:
            return
        self._asked[path] = size

        def work(_: Job) -> tuple[Path, QImage]:
            read = QImage(str(path)).scaled(
                size,
                Qt.AspectRatioMode.IgnoreAspectRatio,
                Qt.TransformationMode.SmoothTransformation,
            )
            return path, read

        self.workshop.start(str(path), "", work, self._fetched)

    def forget(self) -> None:
        """Forget all pictures: another page is shown."""
        self.workshop.stop_all()
        self._asked.clear()
        self._there.clear()

    def _fetched(self, found: tuple[Path, QImage]) -> None:
        path, image = found
        if not image.isNull():
            self._there[path] = image
            self.ready.emit(path, image)
