"""The page where mixes lie beside the wanted colour, in any state and light."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import QTimer
from PySide6.QtGui import QHideEvent
from PySide6.QtWidgets import QLabel, QVBoxLayout

from swatchwright.acts.compare import (
    MOST_MIXES,
    Compared,
    CompareView,
    State,
    compared,
    sound_view,
)
from swatchwright.acts.finish_parts import besides_of, on_colour
from swatchwright.acts.job_bench import chosen_among, zones_of
from swatchwright.acts.jobs import keep_document
from swatchwright.acts.recipes import MeasuredRecipe
from swatchwright.acts.seen_in import room_of
from swatchwright.acts.taken_mix import TakenMix
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.pages.page import Page
from swatchwright.desktop.session import Session
from swatchwright.desktop.taken_desk import TakenDesk
from swatchwright.desktop.widgets.compare_bar import CompareBar
from swatchwright.desktop.widgets.compare_lights import CompareLights
from swatchwright.desktop.widgets.compare_pair import ComparePair
from swatchwright.desktop.widgets.compare_picture import ComparePicture
from swatchwright.desktop.widgets.compare_told import CompareTold
from swatchwright.desktop.widgets.piece_keeper import keep_behind
from swatchwright.desktop.words import compare as words
from swatchwright.desktop.words import taken as taken_words
from swatchwright.desktop.workers import Job
from swatchwright.errors import MendableError
from swatchwright.paint.layers import Stack
from swatchwright.values import KnownColour

__all__ = ["ComparePage"]

_PART, _FINISH = "compare", "finish"
_SETTLED = 800

_Answer = tuple[Compared, MendableError | None]


class ComparePage(Page):
    """The wanted colour and its mixes edge to edge.

    All states and lights are reckoned at once, so that another one is there when it is pressed.
    What is shown is kept with the job, if there is one.
    """

    def __init__(self, session: Session, desk: Desk) -> None:
        super().__init__(session, desk, words.HEADING, words.HINT)
        self.view = CompareView()
        self.found: Compared | None = None
        self.pair: ComparePair | None = None
        self._numbers: tuple[int | None, ...] = ()
        self._taken = TakenDesk.of(session, desk)
        self._reckoned: object = None
        self._warned = False
        self._lit = Light.D65
        self._kept: CompareView | None = None
        self._sent: CompareView | None = None
        self._job = None if desk.job is None else desk.job.id
        self.bar = CompareBar()
        self.picture, self.told, self.lights = ComparePicture(), CompareTold(), CompareLights()
        self.trouble, self.notes = _line("warn"), _line("small")
        self._keep_soon = QTimer(self)
        self._keep_soon.setSingleShot(True)
        self._keep_soon.setInterval(_SETTLED)
        self._lay_out()
        self._listen()
        self._job_changed()

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self.body)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(8)
        rows.addWidget(self.bar)
        rows.addWidget(self.trouble)
        rows.addWidget(self.picture, 1)
        rows.addWidget(self.told)
        rows.addWidget(self.lights, 1)
        rows.addWidget(self.notes)
        self.trouble.hide()

    def _listen(self) -> None:
        self.session.recipes_changed.connect(self._mixes_changed)
        self._taken.changed.connect(self._mixes_changed)
        self.session.shelf_changed.connect(self._mixes_changed)
        self.desk.job_changed.connect(self._job_changed)
        self.desk.failed.connect(self._not_kept)
        self.bar.changed.connect(self.set_view)
        self.bar.full_wanted.connect(self.fill_screen)
        self._keep_soon.timeout.connect(self.keep)

    def arrive(self) -> None:
        """Show what has come about meanwhile, as another light of the room."""
        self._mixes_changed()
        if self.light is not self._lit:
            self._show()

    def hideEvent(self, event: QHideEvent) -> None:
        """Keep what was set before the page goes out of view."""
        self.keep()
        super().hideEvent(event)

    # --- what is shown ---------------------------------------------------------------------------

    def mixes(self) -> tuple[MeasuredRecipe, ...]:
        """Give the mixes found that can be chosen from."""
        found = self.session.recipes
        return () if found is None else found.recipes[:MOST_MIXES]

    @property
    def light(self) -> Light:
        """The light that they are seen in: that of the room, until another is chosen here."""
        return self._sound().light or room_of(self.desk.job) or Light.D65

    def set_view(self, view: CompareView) -> None:
        """Show otherwise, and keep that once the hand rests."""
        others = (view.mixes, view.taken) != (self.view.mixes, self.view.taken)
        self.view = view
        if view != self._kept:
            self._keep_soon.start()
        if others:
            self._reckon()
        self._show()

    def _mixes_changed(self) -> None:
        if self.isHidden():
            return
        self.wait_for("" if self.mixes() or self._taken.mix is not None else words.WAIT)
        self._reckon()
        self._show_bar()

    def _reckon(self) -> None:
        """Lay the ticked mixes beside the wanted colour, unless that is what is shown already."""
        shelf, stack, view, wanted = self.session.shelf, self._over(), self._sound(), self._wanted()
        taken = self._taken.mix if view.taken else None
        if wanted is None:
            self.found, self._reckoned = None, None
            return
        chosen = tuple(self.mixes()[n - 1] for n in view.mixes)
        asked = (wanted, tuple(one.recipe for one in chosen), stack, shelf, _bare(taken))
        if asked == self._reckoned:
            return

        def work(_: Job) -> _Answer:
            lay = partial(compared, wanted, chosen, shelf=shelf, taken=taken)
            try:
                return lay(states=tuple(State), stack=stack), None
            except MendableError as error:
                # A layer that cannot be does not hide what the bare mixes look like.
                return lay(states=(State.DRY, State.WET)), error

        def done(answer: _Answer) -> None:
            hers = () if taken is None else (None,)
            self.found, self._numbers, self._reckoned = answer[0], (*hers, *view.mixes), asked
            self.trouble.setText("" if answer[1] is None else words.trouble(answer[1]))
            self.trouble.setVisible(answer[1] is not None)
            self._show()

        self.session.workshop.start("compare", words.RECKONING, work, done)

    def _sound(self) -> CompareView:
        """Give what can be shown of what is asked for."""
        return sound_view(self.view, len(self.mixes()), taken=self._taken.mix is not None)

    def _wanted(self) -> KnownColour | None:
        """Give the colour that the mixes are for; None where there are none."""
        found = self.session.recipes
        if found is not None:
            return found.wanted
        return None if self._taken.mix is None else self.session.wanted

    def _over(self) -> Stack | None:
        """Give what lies over the part that the wanted colour is for; None where nothing does."""
        kept, wanted = self.desk.part(_FINISH, Stack), self._wanted()
        if kept is None or wanted is None:
            return None
        return on_colour(self.desk.job, wanted.lab, kept).over(kept)

    def _seen(self, told: Compared) -> tuple[State, ...]:
        """Give the states to show: those asked for that there are."""
        return tuple(s for s in self.view.states if s in told.states) or told.states[:1]

    def _name(self, number: int | None) -> str:
        """Name a mix, hers for None, with the zones that it is kept for."""
        job, found = self.desk.job, self.session.recipes
        if number is None:
            mix = self._taken.mix
            return taken_words.name(() if mix is None else mix.zones, besides_of(job))
        zones = [zone for zone in zones_of(job) if chosen_among(job, found, zone) == number]
        return words.mix_word(number, zones, besides_of(job))

    def _show(self) -> None:
        self._show_bar()
        told = self.found
        if told is None:
            return
        view, states, self._lit = self.view, self._seen(told), self.light
        names = [self._name(number) for number in self._numbers]
        for widget in (self.picture, self.told):
            widget.setVisible(not view.every_light)
        self.lights.setVisible(view.every_light)
        short = [_short(number) for number in self._numbers]
        if view.every_light:
            self.lights.show_compared(told, names, states, short=short, figures=view.figures)
        else:
            self.picture.show_compared(told, names, states, self.light, short=short)
            self.told.show_compared(told, names, states, self.light, figures=view.figures)
        notes = words.notes_line(told, self.light, states, every_light=view.every_light)
        self.notes.setText(notes)
        self.notes.setVisible(bool(notes))

    def _show_bar(self) -> None:
        mixes = self.mixes()
        names = [self._told(self._name(n), one) for n, one in enumerate(mixes, start=1)]
        states = tuple(State) if self.found is None else self.found.states
        mix = self._taken.mix
        taken = "" if mix is None else self._told(self._name(None), mix.measured)
        self.bar.show_view(self._sound(), names, states, taken, room_of(self.desk.job))
        self.bar.full.setEnabled(self.found is not None)

    def _told(self, name: str, measured: MeasuredRecipe) -> str:
        """Tell a mix by its paints."""
        return words.mix_told(name, measured.recipe.paints, measured.recipe.shares)

    # --- the full screen -------------------------------------------------------------------------

    def fill_screen(self) -> None:
        """Fill the screen with the wanted colour and the first ticked mix."""
        told = self.found
        if told is None:
            return
        state = self._seen(told)[0]
        pair = ComparePair(
            told,
            [self._name(number) for number in self._numbers],
            state=state,
            light=self.light,
            warn=not self._warned,
            parent=self,
        )
        self._warned, self.pair = True, pair
        pair.destroyed.connect(self._left)
        pair.showFullScreen()
        pair.activateWindow()
        pair.setFocus()

    def _left(self) -> None:
        self.pair = None

    # --- keeping ---------------------------------------------------------------------------------

    def keep(self) -> None:
        """Keep what is shown with the job, if there is one that does not have it."""
        self._keep_soon.stop()
        known = self._kept if self._sent is None else self._sent
        if self.desk.job is not None and self.view != (known or CompareView()):
            self._sent = self.view
            self.desk.keep_part(_PART, self.view)

    def _keep_behind(self, job: str) -> None:
        """Keep what was just set with the job that has left the bench."""
        view = self.view
        if self._keep_soon.isActive() and view != self._kept:
            keep_behind(self.desk, job, lambda store, id_: keep_document(store, id_, _PART, view))

    def _job_changed(self) -> None:
        """Show what is kept, unless something newer is on its way to be."""
        here = None if self.desk.job is None else self.desk.job.id
        another, begun = here != self._job, self._job is None
        if another and self._job is not None:
            self._keep_behind(self._job)
        self._job = here
        self._kept = self.desk.part(_PART, CompareView)
        if another or self._kept == self._sent:
            self._sent = None
        kept = self._kept or (self.view if begun else CompareView())
        if another or (self._sent is None and not self._keep_soon.isActive()):
            self._keep_soon.stop()
            self.view = kept
        self._mixes_changed()
        if not self.isHidden():
            self._show()

    def _not_kept(self) -> None:
        self._sent = None


def _short(number: int | None) -> str:
    return taken_words.name() if number is None else words.mix_word(number)


def _bare(taken: TakenMix | None) -> object:
    """Give what of a mix that was taken is to be seen: for another amount it looks the same."""
    return None if taken is None else (taken.measured.recipe, taken.zones, taken.told)


def _line(name: str) -> QLabel:
    label = QLabel()
    label.setObjectName(name)
    label.setWordWrap(True)
    return label
