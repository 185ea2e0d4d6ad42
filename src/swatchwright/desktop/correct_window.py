"""Put a pot right by adding: what is in it, where the client wants it, and what to add for that."""

from __future__ import annotations

from PySide6.QtCore import Qt, QTimer
from PySide6.QtWidgets import (
    QDialog,
    QDialogButtonBox,
    QFormLayout,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.client_wish import CLIENT_PART, ClientWishes, Question, Stands, Wanted
from swatchwright.acts.correct import Correction, put_right
from swatchwright.acts.finish_parts import on_colour
from swatchwright.acts.recipes import MeasuredRecipe
from swatchwright.acts.wish import may_use
from swatchwright.desktop import words
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.client_wants import ClientWants
from swatchwright.desktop.widgets.colour_field import ColourField
from swatchwright.desktop.widgets.layer_choices import CalmNumber
from swatchwright.desktop.widgets.pot_amounts import PotAmounts
from swatchwright.desktop.words import pot as pot_words
from swatchwright.desktop.words.finish_ways import CLIENT_SAYS
from swatchwright.desktop.workers import Job
from swatchwright.errors import MendableError
from swatchwright.paint.layers import Stack

__all__ = ["CorrectWindow"]

_SETTLED = 150
_MOST = 100_000.0
_FINISH = "finish"


class CorrectWindow(QDialog):
    """One question, and what to add to the pot for it.

    It opens with what was asked of the mix on the page of the finish, else with nothing asked. What
    lies over the mix there is reckoned with here too.
    """

    def __init__(
        self,
        session: Session,
        desk: Desk,
        measured: MeasuredRecipe,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self._session = session
        self._over = self._lying(desk)
        self.setWindowTitle(words.PUT_POT_RIGHT)
        self.resize(600, 600)
        self.amounts = PotAmounts(measured)
        self.room = CalmNumber(0.0, _MOST, 50.0)
        self.wants = ClientWants(chosen=False)
        self.word, self.dial = self.wants.word, self.wants.dial
        self.told = QLabel(pot_words.FIRST_SAY)
        self.told.setWordWrap(True)
        self.told.setToolTip(words.SCALE_TIP)
        self.told.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        self.close_button = QPushButton(pot_words.CLOSE)
        self._picture = QVBoxLayout()
        self._wait = QTimer(self)
        self._wait.setSingleShot(True)
        self._wait.setInterval(_SETTLED)
        self._wait.timeout.connect(self._start)
        self._open_with(desk)
        self._set_up()
        self._lay_out()
        self._changed()

    def _lying(self, desk: Desk) -> Stack:
        """Give what lies over the part that the mix is for."""
        kept, recipes = desk.part(_FINISH, Stack) or Stack(), self._session.recipes
        if recipes is None:
            return kept.over("")
        return on_colour(desk.job, recipes.wanted.lab, kept).over(kept)

    def _open_with(self, desk: Desk) -> None:
        """Ask what was asked on the page of the finish."""
        recipes, found = self._session.recipes, self._session.found
        if recipes is None:
            return
        first = recipes.wanted.lab
        cloth = () if found is None else tuple(c.colour.lab for c in found.colours)
        kept = desk.part(CLIENT_PART, ClientWishes)
        wish = None if kept is None else kept.of(first)
        self.wants.show_colours(first, cloth, None if wish is None else wish.aim)
        if wish is not None:
            self.wants.show_wanted(wish.wanted)
        asked = self._session.asked
        if asked is not None and asked[0] == first:
            self._show_question(asked[1])

    def _show_question(self, question: Question) -> None:
        self.wants.show_wanted(question.wanted)
        if question.stands is not Stands.POT:
            return
        self.amounts.pot.setValue(question.pot)
        self.room.setValue(question.tub or 0.0)

    def _set_up(self) -> None:
        self.room.setSuffix(" ml")
        self.room.setAccessibleName(pot_words.ROOM)
        self.room.setSpecialValueText(pot_words.ROOM_UNSAID)
        self.room.setToolTip(f"<p>{pot_words.ROOM_TIP}</p>")
        self.amounts.changed.connect(self._changed)
        self.room.valueChanged.connect(self._changed)
        self.wants.changed.connect(self._changed)
        self.close_button.setAutoDefault(False)
        self.close_button.clicked.connect(self.close)

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self)
        rows.setSpacing(10)
        form = QFormLayout()
        self.amounts.add_to(form)
        form.addRow(pot_words.ROOM, self.room)
        told = QLabel(pot_words.ROOM_TIP)
        told.setObjectName("quiet")
        told.setWordWrap(True)
        form.addRow("", told)
        form.addRow(CLIENT_SAYS, self.wants)
        rows.addLayout(form)
        rows.addLayout(self._picture, 1)
        rows.addWidget(self.told)
        below = QDialogButtonBox()
        below.addButton(self.close_button, QDialogButtonBox.ButtonRole.RejectRole)
        rows.addWidget(below)

    def _changed(self) -> None:
        """Work anew once the hand rests."""
        self._wait.start()

    def _start(self) -> None:
        wanted = self.wants.wanted()
        if wanted is None:
            return
        self._find(wanted)

    def _find(self, wanted: Wanted) -> None:
        shelf, room = self._session.shelf, self.room.value() or None
        pot, over = self.amounts.volumes(), self._over
        only = may_use(shelf, self._session.wishes)

        def work(_: Job) -> Correction:
            return put_right(shelf, pot, wanted, tub=room, over=over, only=only)

        start = self._session.workshop.start
        start("correct", words.FINDING_ADDITIONS, work, self._show, self._show_trouble)

    def _show_trouble(self, what: object) -> None:
        """Say here what cannot be, where it was entered; our own faults go to the bench."""
        self._clear()
        if isinstance(what, MendableError):
            self.told.setText(f"{what.what} {what.mend}")
        else:
            self._session.workshop.failed.emit(what)

    def _clear(self) -> None:
        """Take the picture away."""
        while self._picture.count():
            item = self._picture.takeAt(0)
            widget = None if item is None else item.widget()
            if widget is not None:
                widget.deleteLater()

    def _show(self, found: Correction) -> None:
        self._clear()
        after = found.additions.steps[-1].after if found.additions.steps else found.now
        names = (words.WHERE_IT_SHOULD_GO, words.AS_IT_IS, words.AFTER_ADDING)
        self._picture.addWidget(ColourField(found.aim, found.now, after, names=names))
        self.told.setText(pot_words.correction_text(found))
