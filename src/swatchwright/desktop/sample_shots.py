"""The photo of the sample: opened, marked, and kept with the job a moment after each change."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from PySide6.QtCore import QObject, QTimer, Signal
from PySide6.QtGui import QImage

from swatchwright.acts.colours import open_photo
from swatchwright.acts.job_bench import laid_photo
from swatchwright.acts.job_photos import hash_of
from swatchwright.acts.jobs import Changes, Store
from swatchwright.acts.sample_marks import SampleShot
from swatchwright.acts.sample_shot import SHOT_PART, keep_shot, photo_of_shot
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.photo_view import Mark
from swatchwright.desktop.widgets.piece_keeper import Keeper
from swatchwright.desktop.widgets.shelf_bits import image_of
from swatchwright.desktop.words import sample as words
from swatchwright.photo.image import Photo
from swatchwright.photo.reference import GREY_CARD
from swatchwright.shelf.jobs import KeptPhoto
from swatchwright.values import Rect

__all__ = ["SampleShots"]

_PREVIEW = 1400
_REST = 300
"""ms after which a change is kept."""


@dataclass(frozen=True, slots=True, eq=False)
class _Opened:
    """A photo with its hash and its picture; its file where that is at hand."""

    photo: Photo
    hash: str
    image: QImage
    path: Path | None


class SampleShots(QObject):
    """Goes between the job and the side of the page with the photo.

    Signals
    -------
    pictured(QImage)
        Another photo is open; a null picture where there is none.
    changed()
        What is marked is another.
    """

    pictured = Signal(QImage)
    changed = Signal()

    def __init__(self, session: Session, desk: Desk, parent: QObject) -> None:
        super().__init__(parent)
        self._session, self._desk = session, desk
        self._opened: _Opened | None = None
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.setInterval(_REST)
        self._keeper: Keeper[SampleShot] = Keeper(
            self,
            desk,
            read=lambda: desk.part(SHOT_PART, SampleShot),
            act=self._keeping,
            show=self._take_up,
        )
        self._soon.timeout.connect(self._keeper.keep)

    def begin(self) -> None:
        """Show what is kept with the job on the bench."""
        self._keeper.begin()

    def keep(self) -> None:
        """Keep at once what is not kept yet."""
        self._soon.stop()
        self._keeper.keep()

    @property
    def photo(self) -> Photo | None:
        """The photo; None before one is open."""
        return None if self._opened is None else self._opened.photo

    @property
    def shot(self) -> SampleShot | None:
        """What is marked in it; None before one is open."""
        shot, opened = self._keeper.value, self._opened
        return shot if shot is not None and opened and shot.photo == opened.hash else None

    @property
    def marks(self) -> dict[Mark, Rect]:
        """The boxes, in pixels of the photo."""
        shot, photo = self.shot, self.photo
        if shot is None or photo is None:
            return {}
        return {Mark(name): rect for name, rect in shot.on(photo).items()}

    # --- what is set -----------------------------------------------------------------------------

    def open(
        self, path: Path, marks: Mapping[Mark, Rect] | None = None, reflectance: float = GREY_CARD
    ) -> None:
        """Open a photo; its marks are to be drawn unless they are known."""
        known = {mark.value: rect for mark, rect in (marks or {}).items()}

        def work(_: object) -> _Opened:
            photo = open_photo(path)
            return _Opened(photo, hash_of(path), _picture(photo), path)

        def done(opened: _Opened) -> None:
            self._lay(opened)
            size = opened.photo.width, opened.photo.height
            self._set(SampleShot(opened.hash, size, reflectance=reflectance, **known))

        self._session.workshop.start("sample-photo", words.READING, work, done)

    def mark(self, mark: Mark, rect: Rect | None) -> None:
        """Draw, move or take away a box: then it is another sample, or the same seen otherwise."""
        shot, photo = self.shot, self.photo
        if shot is None or photo is None:
            return
        boxes: dict[str, Rect | None] = {**shot.on(photo), mark.value: rect}
        self._set(
            replace(
                shot,
                size=(photo.width, photo.height),
                grey=boxes.get("grey"),
                cloth=boxes.get("cloth"),
                sample=boxes.get("sample"),
            )
        )

    def set_reflectance(self, reflectance: float) -> None:
        """Say what the grey reflects."""
        if self.shot is not None and reflectance != self.shot.reflectance:
            self._set(replace(self.shot, reflectance=reflectance))

    def _set(self, shot: SampleShot) -> None:
        self._keeper.set(shot)
        self._soon.start()
        self.changed.emit()

    def _keeping(self, shot: SampleShot) -> Callable[[Store, str], Changes]:
        opened = self._opened
        here = opened is not None and opened.hash == shot.photo
        path, photo = (opened.path, opened.photo) if here and opened else (None, None)
        return lambda store, id_: keep_shot(store, id_, shot, path=path, photo=photo)

    # --- what is kept ----------------------------------------------------------------------------

    def _take_up(self, shot: SampleShot | None) -> None:
        """Show what is kept, or brought back by undo."""
        kept = photo_of_shot(self._desk.job, shot)
        if shot is None or kept is None:
            self._lay(None)
        elif self._opened is None or self._opened.hash != shot.photo:
            self._lay(None)
            self._fetch(kept)
        self.changed.emit()

    def _fetch(self, kept: KeptPhoto) -> None:
        def act(store: Store) -> _Opened:
            laid = laid_photo(store, kept)
            return _Opened(laid.photo, kept.hash, _picture(laid.photo), laid.path)

        def done(opened: _Opened) -> None:
            value = self._keeper.value
            if value is not None and value.photo == opened.hash:
                self._lay(opened)
                self.changed.emit()

        self._desk.ask(act, done)

    def _lay(self, opened: _Opened | None) -> None:
        self._session.workshop.stop("sample-photo")
        self._opened = opened
        self.pictured.emit(QImage() if opened is None else opened.image)


def _picture(photo: Photo) -> QImage:
    return image_of(photo.preview(_PREVIEW))
