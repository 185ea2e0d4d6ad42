"""Getting to know paints in one sitting: choose, brush, read, fit, keep; a step after the other."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import (
    QButtonGroup,
    QHBoxLayout,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.card_photo import CardColour
from swatchwright.acts.fit_told import Next
from swatchwright.acts.shelf_view import PaintLine
from swatchwright.acts.sitting import (
    Sitting,
    measured_cards,
    names_in,
    next_unread,
    read_now,
    save_cards,
    with_card_more,
    with_cards,
    with_reading,
)
from swatchwright.desktop.files import ask_open, ask_save
from swatchwright.desktop.letters import follow_letters
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.bench_area import PageStack
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.brush_cards import BrushCards
from swatchwright.desktop.widgets.brush_choose import BrushChoose
from swatchwright.desktop.widgets.brush_reading import BrushReading, ReadField
from swatchwright.desktop.widgets.brush_result import BrushResult
from swatchwright.desktop.widgets.shelf_bits import button, label, scrolled
from swatchwright.desktop.words import our_cards as our_words
from swatchwright.desktop.words import shelf as shelf_words
from swatchwright.desktop.words import sitting as words
from swatchwright.errors import MendableError
from swatchwright.shelf.measured import read_measurements
from swatchwright.shelf.shelf import Shelf

__all__ = ["ShelfSitting"]

PAINTS, BRUSH, READ, FIT = range(4)


class ShelfSitting(QWidget):
    """The steps of a sitting, in any order of visiting.

    Signals
    -------
    changed(object)
        Something was chosen or read (`Sitting`).
    stepped()
        Another step is shown.
    left()
        Back to the shelf.
    ours_wanted()
        It is to be tried with the cards of the demonstration.
    """

    changed = Signal(object)
    stepped = Signal()
    left = Signal()
    ours_wanted = Signal()

    def __init__(self, session: Session, kinds: tuple[str, str] = ("card", "paint-fit")) -> None:
        """Take kinds of work of its own, as two of these may stand on one page."""
        super().__init__()
        self._session = session
        self._lines: Sequence[PaintLine] = ()
        self.sitting = Sitting()
        self.choose = BrushChoose()
        self.cards = BrushCards()
        self.result = BrushResult(session, kinds[1], self._shelf)
        self.file = button(words.OPEN_FILE, self._ask_file, tip=words.OPEN_FILE_TIP)
        self.reading = BrushReading(session, kinds[0], words.OF_CARDS)
        self.count = label(name="quiet")
        self.brush_told = label(name="quiet")
        self.save = button(words.SAVE_LIST, self._ask_save)
        self.trouble = label(name="warn")
        self.about = label(name="strong")
        self.about.hide()
        self.steps = [QPushButton(word) for word in words.STEPS]
        self.back = button(words.BACK, lambda: self.show_step(self._step - 1))
        self.next = button(words.NEXT, lambda: self.show_step(self._step + 1), "main")
        self.leave = button(shelf_words.BACK_TO_SHELF, self.left.emit)
        self.ours = button(our_words.TRY_OURS, self.ours_wanted.emit, tip=our_words.TRY_OURS_TIP)
        self._stack = PageStack()
        self._step = PAINTS
        self._hold_places()
        self._lay_out()
        self.choose.changed.connect(self._chosen)
        self.reading.read.connect(self._read)
        self.result.card_wanted.connect(self._one_more)
        self.show_step(PAINTS)

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(10)
        top = BreakingRow()
        group = QButtonGroup(self)
        for n, (step, tip) in enumerate(zip(self.steps, words.STEP_TIPS, strict=True)):
            step.setCheckable(True)
            step.setToolTip(tip)
            step.setAccessibleName(f"{step.text()}: {tip}")
            step.clicked.connect(lambda _=False, at=n: self.show_step(at))
            group.addButton(step)
            top.put(step)
        top.put(self.count)
        top.put(self.ours, self.back, self.next, self.leave, pushed=True)
        rows.addWidget(top)
        rows.addWidget(self.about)
        rows.addWidget(self.trouble)
        self.reading.put_before(self.file)
        for page in (self.choose, self._brush_page(), self.reading, self.result):
            self._stack.addWidget(page)
        rows.addWidget(self._stack, 1)

    def _hold_places(self) -> None:
        """Keep the place of each button, there or not: a quick second press meets no other.

        The one that leaves is as wide in a sitting with our cards, so that the others stand there
        where they stood.
        """
        for one in (self.ours, self.back, self.next):
            policy = one.sizePolicy()
            policy.setRetainSizeWhenHidden(True)
            one.setSizePolicy(policy)
        follow_letters(self, self._widen)

    def showEvent(self, event: QShowEvent) -> None:
        """Know how wide the button that leaves is in the letters and the style in use."""
        self._widen()
        super().showEvent(event)

    def _widen(self) -> None:
        self.leave.ensurePolished()
        self.leave.setMinimumWidth(0)
        told, widths = self.leave.text(), []
        for text in (shelf_words.BACK_TO_SHELF, our_words.PUT_OURS_AWAY):
            self.leave.setText(text)
            widths.append(self.leave.sizeHint().width())
        self.leave.setText(told)
        self.leave.setMinimumWidth(max(widths))

    def _brush_page(self) -> QWidget:
        page = QWidget()
        rows = QVBoxLayout(page)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(8)
        row = QHBoxLayout()
        row.addWidget(self.brush_told, 1)
        row.addWidget(self.save)
        rows.addLayout(row)
        holder = QWidget()
        holder.setObjectName("bench")
        inner = QVBoxLayout(holder)
        inner.setContentsMargins(0, 0, 0, 0)
        inner.addWidget(self.cards)
        inner.addStretch(1)
        rows.addWidget(scrolled(holder, words.CARDS_PICTURE), 1)
        return page

    def _shelf(self) -> Shelf:
        """Give the shelf that the paints are on."""
        return self._session.shelf

    # --- the steps -------------------------------------------------------------------------------

    def show_step(self, step: int) -> None:
        """Show a step."""
        self._step = min(max(step, PAINTS), FIT)
        self.trouble.hide()
        self.steps[self._step].setChecked(True)
        self._stack.setCurrentIndex(self._step)
        self.back.setVisible(self._step > PAINTS)
        self.next.setVisible(self._step < FIT)
        self.ours.setVisible(self._offers_ours())
        if self._step > PAINTS and self.sitting.ids:
            self._work_out_cards()
        self._show()
        self.stepped.emit()

    def _offers_ours(self) -> bool:
        """Tell whether she may want to try it: where she chooses, or has no photo yet."""
        waits = self._step == READ and self.reading.marker.photo is None
        return self._step == PAINTS or waits

    @property
    def step(self) -> int:
        """The step that is shown, 0 the first."""
        return self._step

    def _work_out_cards(self) -> None:
        try:
            sitting = with_cards(self.sitting, self._shelf())
        except MendableError as error:
            self._fail(error)
            return
        self._take(sitting)

    def show_sitting(self, sitting: Sitting) -> None:
        """Show a sitting that was kept with a job."""
        self.sitting = sitting
        self._show()
        if self._step == PAINTS:
            self.choose.show_sitting(sitting, self._lines)
        self.reading.take_turn(next_unread(sitting) or 0)

    def show_paints(self, lines: Sequence[PaintLine]) -> None:
        """Offer these paints."""
        self._lines = lines
        self.choose.show_sitting(self.sitting, lines)

    def _take(self, sitting: Sitting) -> None:
        if sitting != self.sitting:
            self.sitting = sitting
            self.changed.emit(sitting)

    def _show(self) -> None:
        sitting = self.sitting
        names = names_in(sitting, self._shelf())
        if self._step == PAINTS:
            self.choose.show_sitting(sitting, self._lines)
        self.cards.show_cards(sitting, names)
        self.save.setEnabled(bool(sitting.cards))
        self.brush_told.setText(words.cards_line(sitting) if sitting.cards else words.NO_CARDS)
        self.reading.show_fields(
            [
                ReadField(words.card_words(card, names), card.colour, card.key)
                for card in sitting.cards
            ]
        )
        self.ours.setVisible(self._offers_ours())
        self.count.setText(words.progress_line(read_now(sitting), len(sitting.cards)))
        self.count.setVisible(bool(sitting.cards))
        self.result.show_sitting(sitting)

    def _chosen(self, sitting: Sitting) -> None:
        self._take(sitting)

    def _read(self, number: int, colour: CardColour | None, by: str) -> None:
        """Note a reading, or its removal."""
        if number >= len(self.sitting.cards):
            return
        off = 1.0 if colour is None else colour.usually_off
        lab = None if colour is None else colour.lab
        try:
            sitting = with_reading(self.sitting, number, lab, usually_off=off, read_by=by)
        except MendableError as error:
            self._fail(error)
            return
        self.trouble.hide()
        self._take(sitting)
        self._show()

    def _one_more(self, paint: str, wanted: Next) -> None:
        """Add the card that would teach most, and go to reading it."""
        self._take(with_card_more(self.sitting, paint, wanted))
        self.show_step(READ)
        self.reading.take_turn(next_unread(self.sitting) or 0)

    # --- files -----------------------------------------------------------------------------------

    def _ask_file(self) -> None:
        name, _ = ask_open(self, words.OPEN_FILE, "", words.FILES)
        if name:
            self.open_measurements(Path(name))

    def open_measurements(self, path: Path) -> None:
        """Take readings off a measurement file."""
        sitting = self.sitting

        def done(answer: tuple[Sitting, int]) -> None:
            read, count = answer
            self.trouble.hide()
            self._take(read)
            self._show()
            self.count.setText(words.from_file_line(count, path.name))

        self._session.workshop.start(
            "card-file",
            words.READING_FILE,
            lambda _: measured_cards(sitting, read_measurements(path)),
            done,
            self._fail,
        )

    def _ask_save(self) -> None:
        name, _ = ask_save(self, words.SAVE_LIST, words.LIST_NAME, words.LIST_FILES)
        if name:
            self.save_list(Path(name))

    def save_list(self, path: Path) -> None:
        """Save the list of cards, to be printed."""
        text = words.cards_text(self.sitting, names_in(self.sitting, self._shelf()))

        def work(_: object) -> bool:
            save_cards(text, path)
            return True

        self._session.workshop.start(
            "card-list",
            words.READING,
            work,
            lambda _: self.brush_told.setText(words.saved_line(path.name)),
            self._fail,
        )

    def _fail(self, what: object) -> None:
        if isinstance(what, MendableError):
            self.trouble.setText(shelf_words.trouble(what))
            self.trouble.show()
        else:
            self._session.workshop.failed.emit(what)
