"""Asking on the bench whether a likely grey is the grey card."""

from __future__ import annotations

from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.grey_proposal import GreyProposal
from swatchwright.desktop.widgets.photo_view import PhotoView
from swatchwright.values import Rect

__all__ = ["PhotoProposal"]


class PhotoProposal(GreyProposal):
    """Asks as long as nothing of known colour is marked in the photo on the bench."""

    def __init__(self, session: Session, view: PhotoView) -> None:
        super().__init__(session.workshop, "greys", view.show_proposed)
        self._session, self._view = session, view
        self.agreed.connect(self._use)
        self.left.connect(view.setFocus)
        session.photo_changed.connect(self._look)
        session.marks_changed.connect(self._forget_if_marked)

    def _look(self) -> None:
        """Look for greys in a photo that has no marks yet."""
        self.look(None if self._any_marked() else self._session.photo)

    def _any_marked(self) -> bool:
        marks = self._session.marks
        return marks.grey is not None or bool(marks.references)

    def _forget_if_marked(self) -> None:
        if self._any_marked():
            self.look(None)

    def _use(self, rect: Rect) -> None:
        self._session.set_grey(rect)
        self._view.setFocus()
