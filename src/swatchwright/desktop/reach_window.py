"""What colours a shelf reaches, as a body seen from two sides, and where the wanted one lies."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray
from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import (
    QDialog,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.reach import Body, Reach, body_of, candidates_from, reach_of
from swatchwright.desktop import words
from swatchwright.desktop.files import ask_open
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.words.seen import colour_told
from swatchwright.desktop.workers import Job
from swatchwright.values import Lab

__all__ = ["BodyView", "ReachWindow"]

Floats = NDArray[np.floating[Any]]
Seen = Callable[[Floats], Floats]

_MARGIN = 26.0
_DOT = 6.0


class BodyView(QWidget):
    """The body from one side: its outline, the colours at its corners, and the wanted one.

    Parameters
    ----------
    seen
        Takes CIELAB (n, 3) to the plane (n, 2), to the right and up.
    limits
        Left, right, lowest and highest of the plane.
    axes
        What lies to the right, and what above.
    """

    def __init__(
        self, seen: Seen, limits: tuple[float, float, float, float], axes: tuple[str, str]
    ) -> None:
        super().__init__()
        self._seen, self._limits, self._axes = seen, limits, axes
        self._body: Body | None = None
        self._wanted: Lab | None = None
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setMinimumSize(260, 240)
        self.setAccessibleName(words.body_name(axes))

    def sizeHint(self) -> QSize:
        """Ask for a good size."""
        return QSize(380, 340)

    def show_body(self, body: Body | None, wanted: Lab | None) -> None:
        """Show a body of colours and the wanted colour."""
        self._body, self._wanted = body, wanted
        self.setAccessibleDescription("" if wanted is None else colour_told(words.WANTED, wanted))
        self.update()

    def place(self, lab: Lab) -> QPointF:
        """Give where a colour stands in the widget."""
        return self._points(np.array([lab.triple]))[0]

    def _points(self, labs: Floats) -> list[QPointF]:
        left, right, low, high = self._limits
        frame = QRectF(self.rect()).adjusted(_MARGIN, _MARGIN, -_MARGIN, -_MARGIN)
        plane = self._seen(labs)
        x = frame.left() + (plane[:, 0] - left) / (right - left) * frame.width()
        y = frame.bottom() - (plane[:, 1] - low) / (high - low) * frame.height()
        return [QPointF(float(a), float(b)) for a, b in zip(x, y, strict=True)]

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint axes, body and the wanted colour."""
        del event
        painter = QPainter(self)
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        ink = self.palette().windowText().color()
        painter.setPen(ink)
        below = Qt.AlignmentFlag.AlignBottom | Qt.AlignmentFlag.AlignRight
        painter.drawText(self.rect().adjusted(4, 4, -4, -4), below, self._axes[0])
        above = Qt.AlignmentFlag.AlignTop | Qt.AlignmentFlag.AlignLeft
        painter.drawText(self.rect().adjusted(4, 4, -4, -4), above, self._axes[1])
        if self._body is not None:
            self._paint_body(painter, self._body)
        if self._wanted is not None:
            self._paint_wanted(painter, self._wanted)
        painter.end()

    def _paint_body(self, painter: QPainter, body: Body) -> None:
        ink = self.palette().windowText().color()
        painter.setBrush(self.palette().base())
        painter.setPen(QPen(ink, 1))
        outline = body.outline(self._seen)
        painter.drawPolygon(QPolygonF(self._points(outline)))
        painter.setPen(QPen(ink, 0.5))
        for lab, point in zip(body.corners, self._points(body.points), strict=True):
            painter.setBrush(screen_colour(lab))
            painter.drawEllipse(point, _DOT, _DOT)

    def _paint_wanted(self, painter: QPainter, wanted: Lab) -> None:
        edge = QRectF(self.rect()).adjusted(12, 12, -12, -12)
        at = self.place(wanted)
        # What lies beyond the picture is shown at its edge.
        at.setX(min(max(at.x(), edge.left()), edge.right()))
        at.setY(min(max(at.y(), edge.top()), edge.bottom()))
        painter.setBrush(screen_colour(wanted))
        painter.setPen(QPen(Qt.GlobalColor.black, 4))
        painter.drawRect(QRectF(at - QPointF(9, 9), at + QPointF(9, 9)))
        painter.setPen(QPen(Qt.GlobalColor.white, 2))
        painter.drawRect(QRectF(at - QPointF(9, 9), at + QPointF(9, 9)))
        painter.setPen(self.palette().windowText().color())
        room = painter.fontMetrics().horizontalAdvance(words.WANTED) + 18
        right = at.x() + room < self.width()
        painter.drawText(at + QPointF(14 if right else -room, 5), words.WANTED)


class ReachWindow(QDialog):
    """The body of the shelf's colours, how near the wanted one is, and what to buy for it."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self.setWindowTitle(words.REACH)
        self.resize(820, 520)
        self.above = BodyView(lambda p: p[:, [1, 2]], (-70, 80, -70, 95), words.FROM_ABOVE)
        self.beside = BodyView(
            lambda p: np.stack([np.hypot(p[:, 1], p[:, 2]), p[:, 0]], axis=1),
            (0, 100, 0, 100),
            words.FROM_BESIDE,
        )
        self.told = QLabel(words.REACH_HINT)
        self.told.setWordWrap(True)
        self.buy = QPushButton(words.WHICH_TO_BUY)
        self.buy.setEnabled(False)
        self.verdict = QLabel()
        self.buy.clicked.connect(self._ask_candidates)
        rows = QVBoxLayout(self)
        sides = QHBoxLayout()
        sides.addWidget(self.above)
        sides.addWidget(self.beside)
        rows.addLayout(sides, 1)
        rows.addWidget(self.told)
        rows.addWidget(self.buy)
        self.verdict.setObjectName("strong")
        self.verdict.setToolTip(words.SCALE_TIP)
        self.verdict.setWordWrap(True)
        rows.insertWidget(0, self.verdict)
        session.pick_changed.connect(self._start)
        session.shelf_changed.connect(self._start)
        self._start()

    def _start(self) -> None:
        """Find the body anew, and how near the shelf comes to what is wanted now."""
        shelf, wanted = self._session.shelf, self._session.wanted

        def work(_: Job) -> tuple[Body, Reach | None]:
            return body_of(shelf), None if wanted is None else reach_of(wanted.lab, shelf)

        self._session.workshop.start("body", words.FINDING_REACH, work, self._show)

    def _show(self, found: tuple[Body, Reach | None]) -> None:
        body, reach = found
        wanted = self._session.wanted
        for view in (self.above, self.beside):
            view.show_body(body, None if wanted is None else wanted.lab)
        self.verdict.setText("" if reach is None else words.reach_text(reach, asked=False))
        self.buy.setEnabled(reach is not None and reach.shortfall is not None)

    def _ask_candidates(self) -> None:
        name, _ = ask_open(self, words.WHICH_TO_BUY, "", words.SHELF_FILES)
        if name:
            self.find_one_more(Path(name))

    def find_one_more(self, path: Path) -> None:
        """Find which one paint of another shelf would bring the wanted colour within 1."""
        wanted, shelf = self._session.wanted, self._session.shelf
        if wanted is None:
            return

        def work(_: Job) -> Reach:
            return reach_of(wanted.lab, shelf, candidates_from(path))

        self._session.workshop.start("buy", words.FINDING_REACH, work, self._show_more)

    def _show_more(self, found: Reach) -> None:
        self.verdict.setText(words.reach_text(found, asked=True))
