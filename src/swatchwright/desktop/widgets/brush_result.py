"""The last step of a sitting: how well each paint is known now, and keeping them."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtCore import Signal, Slot
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QGridLayout,
    QHBoxLayout,
    QProgressBar,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.fit import FittedShelf
from swatchwright.acts.sitting import Sitting, read_now
from swatchwright.acts.sitting_fit import Doubt, doubts_of, fit_sitting, most_helpful
from swatchwright.desktop.letters import follow_letters, grown
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.doubt_bar import DoubtBar, DoubtScale
from swatchwright.desktop.widgets.shelf_bits import button, label, scrolled
from swatchwright.desktop.words import shelf as shelf_words
from swatchwright.desktop.words import sitting as words
from swatchwright.desktop.workers import Job
from swatchwright.errors import MendableError
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab

__all__ = ["BrushResult"]

_SWATCH_WIDTH, _ROW = 120, 52


class BrushResult(QWidget):
    """Fits the paints off the interface's thread and shows what came of it.

    Signals
    -------
    kept(object)
        The fitted paints are to be kept (`FittedShelf`).
    card_wanted(str, object)
        One card more is to be brushed: of which paint, and which (`Next`).
    moved(float)
        The share of the fit that is done, 0-1.
    """

    kept = Signal(object)
    card_wanted = Signal(str, object)
    moved = Signal(float)

    def __init__(
        self, session: Session, kind: str = "paint-fit", shelf: Callable[[], Shelf] | None = None
    ) -> None:
        """Take a kind of work of its own, and what gives the shelf where it is not that in use."""
        super().__init__()
        self._session, self._kind = session, kind
        self._shelf = shelf or (lambda: session.shelf)
        self._sitting = Sitting()
        self.found: FittedShelf | None = None
        self.fit = button(words.FIT, self.start, "main")
        self.stop = button(words.STOP, self._stop)
        self.bar = QProgressBar()
        self.bar.setRange(0, 100)
        self.bar.setTextVisible(False)
        self.bar.setFixedHeight(10)
        self.bar.setAccessibleName(words.FITTING)
        self.waits = label(words.FIT_WAITS, "quiet")
        self.fit_told = label(words.FIT_TOLD, "quiet")
        self.trouble = label(name="warn")
        self.notes = label(name="quiet")
        self.spread = label(name="quiet")
        self.scale_told = label(words.SCALE_TOLD, "quiet")
        self.helps = label()
        self.more = button(words.BRUSH_NEXT, self._more)
        self.keep = button(words.KEEP_FITTED, self._keep, "main")
        self.told = label(name="strong")
        self.nothing_kept = ""
        self.one_photo = False
        self.bars: list[DoubtBar] = []
        self._results, self._rows = QWidget(), QWidget()
        self._results.hide()
        self._grid = QGridLayout(self._rows)
        self._lay_out()
        # A bound method, so that it is told on the interface's thread.
        self.moved.connect(self._show_moved)
        self._show()

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(8)
        top = QHBoxLayout()
        top.addWidget(self.fit)
        top.addWidget(self.stop)
        top.addWidget(self.bar, 1)
        top.addWidget(self.waits, 2)
        top.addStretch(1)
        rows.addLayout(top)
        rows.addWidget(self.fit_told)
        rows.addWidget(self.trouble)
        rows.addWidget(self._results, 1)
        rows.addStretch(0)
        self._lay_out_results()

    def _lay_out_results(self) -> None:
        """Lay out what comes of it: shown in one, as each part that is shown has all laid anew."""
        rows = QVBoxLayout(self._results)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(8)
        rows.addWidget(self.scale_told)
        self._rows.setObjectName("sheet")
        self._grid.setContentsMargins(0, 0, 14, 6)
        self._grid.setHorizontalSpacing(14)
        self._grid.setVerticalSpacing(0)
        self._grid.setColumnStretch(1, 2)
        self._grid.setColumnStretch(2, 5)
        self._area = scrolled(self._rows, words.STEP_TIPS[3])
        rows.addWidget(self._area, 1)
        rows.addWidget(self.spread)
        rows.addWidget(self.notes)
        helps = QHBoxLayout()
        helps.addWidget(self.helps, 1)
        helps.addWidget(self.more)
        rows.addLayout(helps)
        foot = QHBoxLayout()
        foot.addWidget(self.keep)
        foot.addWidget(self.told, 1)
        rows.addLayout(foot)

    def show_sitting(self, sitting: Sitting) -> None:
        """Fit from the cards of this sitting, when asked to."""
        if sitting != self._sitting:
            self._sitting, self.found = sitting, None
            self.told.setText("")
            self.trouble.setText("")
            self._session.workshop.stop(self._kind)
        self._show()

    def say(self, text: str) -> None:
        """Say what came of keeping the paints."""
        self.told.setText(text)
        self._show()

    def start(self) -> None:
        """Fit the paints."""
        sitting, shelf = self._sitting, self._shelf()
        self.trouble.setText("")

        def work(job: Job) -> tuple[FittedShelf, tuple[Doubt, ...]]:
            found = fit_sitting(sitting, shelf, progress=self.moved.emit, stopped=job.stopped)
            return found, doubts_of(found, shelf)

        self.bar.setValue(0)
        self._session.workshop.start(self._kind, words.FITTING, work, self._fitted, self._failed)
        self._show(working=True)
        # The button that began it cannot hold the keyboard meanwhile.
        self.stop.setFocus()

    @Slot(float)
    def _show_moved(self, share: float) -> None:
        self.bar.setValue(round(100 * share))

    def _stop(self) -> None:
        self._session.workshop.stop(self._kind)
        self._show()

    def _fitted(self, answer: tuple[FittedShelf, tuple[Doubt, ...]]) -> None:
        self.found, doubts = answer
        self.told.setText(self.nothing_kept)
        self._show_fits(self.found, doubts)
        self._show()

    def _failed(self, what: object) -> None:
        self.found = None
        if isinstance(what, MendableError):
            self.trouble.setText(f"{shelf_words.trouble(what)} {words.WHAT_TO_DO}")
        else:
            self._session.workshop.failed.emit(what)
        self._show()

    def _show_fits(self, found: FittedShelf, doubts: tuple[Doubt, ...]) -> None:
        while self._grid.count():
            item = self._grid.takeAt(0)
            gone = None if item is None else item.widget()
            if gone is not None:
                gone.hide()
                gone.deleteLater()
        self.bars = []
        self._grid.addWidget(DoubtScale(), 0, 2)
        for row, (fit, doubt) in enumerate(zip(found.fits, doubts, strict=True), 1):
            self._grid.addWidget(_Swatch(doubt.dry), row, 0)
            told = label(f"<b>{fit.paint.name}</b><br>{words.fit_line(fit)}")
            self._grid.addWidget(told, row, 1)
            bar = DoubtBar(fit, doubt)
            self.bars.append(bar)
            self._grid.addWidget(bar, row, 2)
        for row in range(self._grid.rowCount()):
            self._grid.setRowStretch(row, 0)
        self._grid.setRowStretch(len(found.fits) + 1, 1)

    def _show(self, *, working: bool = False) -> None:
        found = self.found
        readable = read_now(self._sitting) > 0
        self.fit.setEnabled(readable and not working)
        self.waits.setVisible(not readable)
        self.fit_told.setVisible(found is None)
        if self.stop.hasFocus() and not working:
            self.fit.setFocus()
        for part in (self.stop, self.bar):
            part.setVisible(working)
        self.trouble.setVisible(bool(self.trouble.text()))
        if found is None:
            self._results.hide()
            return
        self.keep.setVisible(not self.nothing_kept)
        names = {paint.id: paint.name for paint in found.shelf.paints}
        self.spread.setText(words.spread_line(found))
        self.notes.setText(" ".join([*found.notes, words.hiding_line(found)]).strip())
        self.notes.setVisible(bool(self.notes.text()))
        helpful = most_helpful(found)
        self.helps.setText("" if helpful is None else words.most_helpful_line(helpful, names))
        self.helps.setVisible(helpful is not None)
        self.more.setVisible(helpful is not None and not self.one_photo)
        self._results.show()

    def _more(self) -> None:
        helpful = None if self.found is None else most_helpful(self.found)
        if helpful is not None:
            self.card_wanted.emit(helpful.paint.id, helpful.next)

    def _keep(self) -> None:
        if self.found is not None:
            self.kept.emit(self.found)


class _Swatch(QWidget):
    """A large field of a fitted paint's colour, touching those above and below."""

    def __init__(self, lab: Lab) -> None:
        super().__init__()
        self._colour = screen_colour(lab)
        self.setFixedWidth(_SWATCH_WIDTH)
        follow_letters(self, lambda: self.setMinimumHeight(grown(_ROW)))
        self.setAccessibleName(self._colour.name())

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint it."""
        del event
        painter = QPainter(self)
        painter.fillRect(self.rect(), self._colour)
        painter.end()
