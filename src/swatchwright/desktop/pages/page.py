"""What all pages share: a heading, what the page waits for, and the body in its place."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QLabel, QSizePolicy, QVBoxLayout, QWidget

from swatchwright.desktop.desk import Desk
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.areas import ScrollArea
from swatchwright.desktop.widgets.kept_place import KeptPlace

__all__ = ["Page"]


class Page(QWidget):
    """A page on the bench.

    A page that needs something from another says so in place of its body (`wait_for`), and never
    sends anybody away: pages can be visited in any order. It draws from the signals of session
    and desk; `arrive` is called whenever it comes into view.

    Parameters
    ----------
    session, desk
        What is on the bench, and the job it is for.
    heading, hint
        The page's title, and a sentence on what it is for.
    scrolls
        Whether the body is scrolled where it is higher than the window.

    Signals
    -------
    coming(QWidget)
        A part that is dressed by itself is about to come into view.
    """

    coming = Signal(QWidget)

    def __init__(
        self, session: Session, desk: Desk, heading: str, hint: str, *, scrolls: bool = True
    ) -> None:
        super().__init__()
        self.session, self.desk = session, desk
        self.setAccessibleName(heading)
        self.heading = QLabel(heading)
        self.heading.setObjectName("big")
        self.heading.setWordWrap(True)
        self.hint = QLabel(hint)
        self.hint.setObjectName("quiet")
        self.hint.setWordWrap(True)
        self.waiting = QLabel()
        self.waiting.setObjectName("waiting")
        self.waiting.setWordWrap(True)
        self.waiting.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.waiting.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.body = QWidget()
        self.body.setObjectName("bench")
        self._holder: QWidget = self.body
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(8)
        rows.addWidget(self.heading)
        rows.addWidget(self.hint)
        rows.addWidget(self.waiting, 1)
        if scrolls:
            area = ScrollArea()
            area.setWidget(self.body)
            area.setWidgetResizable(True)
            area.setFrameShape(QFrame.Shape.NoFrame)
            area.setAccessibleName(heading)
            KeptPlace(area)
            self._holder = area
        rows.addWidget(self._holder, 1)
        self.wait_for("")

    def dressed_parts(self) -> tuple[QWidget, ...]:
        """Give what of the page is dressed in its style, each in a step of its own.

        A page that names parts names all that it has: nothing is styled but what is in them.
        """
        return (self,)

    def heads(self) -> tuple[QWidget, ...]:
        """Give what each page has besides its body, for a page that names its parts."""
        bars = (self._holder.verticalScrollBar(),) if isinstance(self._holder, ScrollArea) else ()
        return self.heading, self.hint, self.waiting, *bars

    def wait_for(self, text: str) -> None:
        """Say what the page waits for in place of its body, or, of nothing, show the body."""
        self.waiting.setText(text)
        self.waiting.setVisible(bool(text))
        self._holder.setVisible(not text)

    def arrive(self) -> None:
        """Do what is to be done when the page comes into view."""
