"""The kept photo of a job: its reduced copy with the marks drawn on it."""

from __future__ import annotations

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QColor, QImage, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QLabel, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from swatchwright.acts.job_bench import photo_to_lay
from swatchwright.acts.job_photos import photo_copy, remove_photo
from swatchwright.acts.jobs import Store
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.words import brief as words
from swatchwright.shelf.jobs import Job, KeptPhoto
from swatchwright.values import Rect

__all__ = ["JobPhoto"]

_WIDE, _HIGH = 292, 219


class JobPhoto(QWidget):
    """One photo of the job at a time, with what can be done with it."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._job: Job | None = None
        self._shown: KeptPhoto | None = None
        self.picture = _Picture()
        self.told = QLabel()
        self.told.setObjectName("small")
        self.told.setWordWrap(True)
        self.lay = self._button(words.LAY_PHOTO, words.LAY_PHOTO_TIP, self._lay)
        self.drop = self._button(words.DROP_PHOTO, words.DROP_PHOTO_TIP, self._drop)
        self.other = self._button(words.NEXT_PHOTO, words.NEXT_PHOTO, self._next)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(6)
        rows.addWidget(self.picture)
        rows.addWidget(self.told)
        row = BreakingRow(6)
        for button in (self.lay, self.other, self.drop):
            row.put(button)
        rows.addWidget(row)
        rows.addStretch(1)
        self.setFixedWidth(_WIDE)

    def _button(self, text: str, tip: str, act: object) -> QPushButton:
        button = QPushButton(text)
        button.setObjectName("little")
        button.setToolTip(tip)
        button.setAccessibleDescription(tip)
        button.clicked.connect(act)
        return button

    def show_job(self, job: Job) -> None:
        """Show the photo of a job that belongs on the bench, or the one that was looked at."""
        hash_ = "" if self._shown is None else self._shown.hash
        same = self._job is not None and self._job.id == job.id
        looked_at = next((p for p in job.photos if same and p.hash == hash_), None)
        self._job = job
        self._show(photo_to_lay(job) if looked_at is None else looked_at)

    def _show(self, photo: KeptPhoto | None) -> None:
        job = self._job
        photos = () if job is None else job.photos
        for button in (self.lay, self.drop):
            button.setVisible(photo is not None)
        self.other.setVisible(len(photos) > 1)
        self.picture.setVisible(photo is not None)
        before, self._shown = self._shown, photo
        if photo is None:
            self.told.setText(words.NO_PHOTO)
            return
        place = photos.index(photo) + 1
        self.told.setText(words.photo_name(photo, place, len(photos)))
        self.picture.setAccessibleName(words.photo_told(photo, place, len(photos)))
        if before is None or before.copy != photo.copy or not self.picture.filled():
            self.picture.show_image(QImage(), photo)
            self._desk.ask(lambda store: _image(store, photo), lambda im: self._fill(photo, im))
        else:
            self.picture.show_marks(photo)

    def _fill(self, photo: KeptPhoto, image: QImage) -> None:
        shown = self._shown
        if shown is not None and shown.copy == photo.copy:
            self.picture.show_image(image, shown)
            if image.isNull():
                self.told.setText(words.PHOTO_GONE)

    def _next(self) -> None:
        if self._job is not None and self._shown is not None:
            photos = self._job.photos
            self._show(photos[(photos.index(self._shown) + 1) % len(photos)])

    def _lay(self) -> None:
        if self._shown is not None:
            self._desk.photo_wanted.emit(self._shown)
            self._desk.page_wanted.emit("colour")

    def _drop(self) -> None:
        job, photo = self._job, self._shown
        if job is not None and photo is not None:
            self._desk.edit(lambda store: remove_photo(store, job.id, photo.hash))


class _Picture(QWidget):
    """The copy, as large as there is room, with the marks as boxes."""

    def __init__(self) -> None:
        super().__init__()
        self._image = QImage()
        self._photo: KeptPhoto | None = None
        self.setSizePolicy(QSizePolicy.Policy.Fixed, QSizePolicy.Policy.Fixed)

    def filled(self) -> bool:
        """Tell whether there is a picture."""
        return not self._image.isNull()

    def show_image(self, image: QImage, photo: KeptPhoto) -> None:
        """Show a copy with the marks of its photo."""
        self._image = image
        self.show_marks(photo)

    def show_marks(self, photo: KeptPhoto) -> None:
        """Show the marks of the photo, which is the same one."""
        self._photo = photo
        self.setFixedSize(self.sizeHint())
        self.update()

    def sizeHint(self) -> QSize:
        """Ask for the shape of the photo."""
        if self._photo is None:
            return QSize(_WIDE, _HIGH)
        shape = QSize(self._photo.width, self._photo.height)
        return shape.scaled(_WIDE, _HIGH, Qt.AspectRatioMode.KeepAspectRatio)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Draw the copy and the boxes."""
        del event
        painter = QPainter(self)
        photo = self._photo
        if photo is None or self._image.isNull():
            painter.setPen(self.palette().placeholderText().color())
            painter.drawRect(self.rect().adjusted(0, 0, -1, -1))
            painter.end()
            return
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        painter.drawImage(self.rect(), self._image)
        cloth = () if photo.marks.cloth is None else (photo.marks.cloth,)
        further = (marked.rect for marked in photo.marks.references)
        for rect in (*photo.marks.grey, *further, *cloth):
            for ink, width in (("#000000", 3), ("#ffffff", 1)):
                painter.setPen(QPen(QColor(ink), width))
                painter.drawRect(self._placed(rect, photo))
        painter.end()

    def _placed(self, rect: Rect, photo: KeptPhoto) -> QRectF:
        across, down = self.width() / photo.width, self.height() / photo.height
        return QRectF(rect.x * across, rect.y * down, rect.width * across, rect.height * down)


def _image(store: Store, photo: KeptPhoto) -> QImage:
    """Decode the copy of a photo, small enough to be drawn at once; off the interface thread."""
    image = QImage.fromData(photo_copy(store, photo))
    if image.isNull():
        return image
    return image.scaled(
        2 * _WIDE,
        2 * _HIGH,
        Qt.AspectRatioMode.KeepAspectRatio,
        Qt.TransformationMode.SmoothTransformation,
    )
