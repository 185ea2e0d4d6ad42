"""Asking whether a likely grey is the grey card; nothing is used before she says so."""

from __future__ import annotations

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from swatchwright.acts.colours import propose_greys
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.photo_view import PhotoView
from swatchwright.desktop.widgets.shelf_bits import button, label
from swatchwright.desktop.words import photo as words
from swatchwright.values import Rect

__all__ = ["PhotoProposal"]


class PhotoProposal(QWidget):
    """Looks for greys in a photo without marks, and asks about one after the other.

    Signals
    -------
    changed()
        Something is asked, or nothing more.
    """

    changed = Signal()

    def __init__(self, session: Session, view: PhotoView) -> None:
        super().__init__()
        self._session, self._view = session, view
        self._likely: tuple[Rect, ...] = ()
        self.yes = button(words.YES, self._agree, "little", tip=words.YES_TIP)
        self.no = button(words.NO, self._next, "little", tip=words.NO_TIP)
        for one in (self.yes, self.no):
            one.setAccessibleName(f"{words.PROPOSED} {one.text()}")
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(6)
        row.addWidget(label(words.PROPOSED, "strong"), 1)
        row.addWidget(self.yes)
        row.addWidget(self.no)
        self.hide()
        session.photo_changed.connect(self._look)
        session.marks_changed.connect(self._forget_if_marked)

    @property
    def asked(self) -> Rect | None:
        """The place that is asked about; None if nothing is."""
        return self._likely[0] if self._likely else None

    def _look(self) -> None:
        """Look for greys in a photo that has no marks yet."""
        self._show(())
        photo = self._session.photo
        if photo is None or self._marked():
            self._session.workshop.stop("greys")
            return

        def done(found: tuple[Rect, ...]) -> None:
            if self._session.photo is photo and not self._marked():
                self._show(found)

        self._session.workshop.start(
            "greys", words.LOOKING_FOR_GREYS, lambda _: propose_greys(photo), done, _leave
        )

    def _marked(self) -> bool:
        marks = self._session.marks
        return marks.grey is not None or bool(marks.references)

    def _forget_if_marked(self) -> None:
        if self._marked():
            self._show(())

    def _agree(self) -> None:
        rect = self.asked
        if rect is not None:
            self._session.set_grey(rect)
            self._view.setFocus()

    def _next(self) -> None:
        self._show(self._likely[1:])
        if self.asked is None:
            self._view.setFocus()

    def _show(self, likely: tuple[Rect, ...]) -> None:
        self._likely = likely
        self._view.show_proposed(self.asked)
        self.setVisible(self.asked is not None)
        self.changed.emit()


def _leave(_: object) -> None:
    """Ask nothing where no grey can be looked for."""
