"""The page of the finish: what lies over the mix, and which wash takes it where."""

from __future__ import annotations

from PySide6.QtCore import QEvent, QObject, QTimer
from PySide6.QtGui import QHideEvent, QShowEvent
from PySide6.QtWidgets import (
    QButtonGroup,
    QLabel,
    QPushButton,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.finish import build_up, preview
from swatchwright.acts.finish_paints import keep_finish
from swatchwright.acts.finish_parts import LaidOn
from swatchwright.acts.finish_values import BuildUp, Look
from swatchwright.acts.in_light import cloth_in_room
from swatchwright.acts.mix import own_colours
from swatchwright.acts.ways import Way
from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.pages.page import Page
from swatchwright.desktop.seen_light import SeenLight
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.finish_layers import FinishLayers
from swatchwright.desktop.widgets.finish_mixes import FinishMix, MixStrip, mixes_to_finish
from swatchwright.desktop.widgets.finish_piece import FinishPiece
from swatchwright.desktop.widgets.finish_reverse import FinishReverse
from swatchwright.desktop.widgets.layer_choices import Paints
from swatchwright.desktop.widgets.piece_keeper import keep_behind
from swatchwright.desktop.words import finish as words
from swatchwright.desktop.workers import Job
from swatchwright.errors import MendableError
from swatchwright.paint.layers import Stack
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab

__all__ = ["FinishPage"]

_PART = "finish"
_SETTLED, _SHOWN_AFTER = 800, 40
_PASSES = 6

_InRoom = tuple[tuple[Light, Lab], ...]
_Reckoned = tuple[Look, _InRoom, _InRoom, float | None, BuildUp | None]
"""The steps, the wanted colour and what the client wants now in each light, how far it is from
that, CIEDE2000, and the build-up."""


class FinishPage(Page):
    """Layers over the mix, forward and in reverse.

    What lies over the mix is kept with the job a moment after the hand rests.
    """

    def __init__(self, session: Session, desk: Desk) -> None:
        super().__init__(session, desk, words.HEADING, words.HINT, scrolls=False)
        self.stack = Stack()
        self.mixes: tuple[FinishMix, ...] = ()
        self._picked: FinishMix | None = None
        self._shelf: Shelf | None = None
        self._paints: Paints | None = None
        self._kept = Stack()
        self._job = None if desk.job is None else desk.job.id
        self._sent: Stack | None = None
        self._looked_at: int | None = None
        self._part_wanted: tuple[str, ...] | None = None
        self._built: int | None = None
        self.strip = MixStrip()
        self.trouble = QLabel()
        self.trouble.setObjectName("warn")
        self.trouble.setWordWrap(True)
        self.layered = FinishLayers(FinishPiece(session, desk))
        self.reverse = FinishReverse(session, desk)
        self.sides = (QPushButton(words.BY_LAYERS), QPushButton(words.BY_CLIENT))
        self._side = QStackedWidget()
        self.seen = SeenLight.of(desk)
        self._keep_soon = _timer(self, _SETTLED)
        self._reckon_soon = _timer(self, _SHOWN_AFTER)
        self._lay_out()
        self._listen()
        self._show_light()
        self._job_changed()

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self.body)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(8)
        self._top = top = BreakingRow()
        top.put(QLabel(words.OVER), self.strip, stretches=True)
        top.put(*self.sides, gap=12, pushed=True)
        group = QButtonGroup(self)
        for place, button in enumerate(self.sides):
            button.setCheckable(True)
            button.setChecked(place == 0)
            group.addButton(button, place)
        group.idClicked.connect(self._side.setCurrentIndex)
        rows.addWidget(top)
        rows.addWidget(self.trouble)
        self._side.addWidget(self.layered)
        self._side.addWidget(self.reverse)
        rows.addWidget(self._side, 1)
        self.trouble.hide()

    def dressed_parts(self) -> tuple[QWidget, ...]:
        """Give the row on top and what is below it, each dressed by itself."""
        reverse = (self.reverse.ask, self.reverse.ways)
        return *self.heads(), self._top, self.trouble, self.layered, *reverse

    def _listen(self) -> None:
        self.session.recipes_changed.connect(self._mixes_changed)
        self.session.shelf_changed.connect(self._shelf_changed)
        self.desk.job_changed.connect(self._job_changed)
        self.desk.failed.connect(self._not_kept)
        self.seen.changed.connect(self._show_light)
        self.layered.light_chosen.connect(lambda light: self.seen.choose(finish=light))
        self.strip.picked.connect(self._pick)
        self.layered.piece.picked.connect(self._pick)
        self.layered.layers.changed.connect(self._set_stack)
        self.layered.layers.looked_at.connect(self._look_at)
        self.layered.layers.part_wanted.connect(self._want_part)
        self.layered.build_up.passes_chosen.connect(self._set_passes)
        self.layered.clear_wish.clicked.connect(self.reverse.forget_wish)
        self.layered.told.again.clicked.connect(self._ask_again)
        self.reverse.taken.connect(self._take)
        self._keep_soon.timeout.connect(self.keep)
        self._reckon_soon.timeout.connect(self._reckon)

    def arrive(self) -> None:
        """Show what has come about meanwhile."""
        self._shelf_changed()
        self._mixes_changed()

    def showEvent(self, event: QShowEvent) -> None:
        """Watch the window, which may be closed before the hand has rested."""
        super().showEvent(event)
        self.window().installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Keep what was set before the window goes, and the store with it."""
        if event.type() is QEvent.Type.Close and watched is self.window():
            self.keep()
        return super().eventFilter(watched, event)

    def hideEvent(self, event: QHideEvent) -> None:
        """Keep what was set before the page goes out of view."""
        self.keep()
        self.seen.keep()
        super().hideEvent(event)

    # --- what is below and what to choose from ---------------------------------------------------

    @property
    def mix(self) -> FinishMix | None:
        """The mix below all layers; None while there is none."""
        picked = self._picked
        if picked in self.mixes or picked is None:
            return picked or (self.mixes[0] if self.mixes else None)
        wanted = {*(self._part_wanted or picked.on.zones)}
        near = [mix for mix in self.mixes if mix.follows(picked)]
        near.sort(key=lambda mix: not wanted & {*mix.on.zones})
        return next(iter((*near, *self.mixes)), None)

    @property
    def over(self) -> Stack:
        """What lies over the mix that is looked at."""
        return self.stack if self.mix is None else self.mix.on.over(self.stack)

    def _mixes_changed(self) -> None:
        self.mixes = mixes_to_finish(self.session, self.desk.job, self.stack)
        mix = self.mix
        if self._picked is not None:
            self._picked = mix
        self._part_wanted = None
        on, places = (LaidOn(), ()) if mix is None else (mix.on, mix.places())
        self.layered.layers.show_part(self.stack, on, places)
        self.layered.told.show_places(self.stack, tuple(one.on for one in self.mixes), on)
        self.wait_for("" if mix is not None else words.WAIT)
        self.strip.show_mixes(self.mixes, 0 if mix is None else self.mixes.index(mix))
        self.layered.piece.show_mixes(self.mixes, mix)
        self.reverse.show_mix(mix)
        self._reckon_soon.start()

    def _pick(self, place: int) -> None:
        self._picked = self.mixes[place]
        self._mixes_changed()

    def _shelf_changed(self) -> None:
        shelf = self.session.shelf
        if shelf is not self._shelf and shelf.paints:
            self._shelf = shelf
            start = self.session.workshop.start
            start("finish-paints", "", lambda _: own_colours(shelf.paints), self._paints_known)
        self._reckon_soon.start()

    def _paints_known(self, colours: tuple[Lab, ...]) -> None:
        if self._shelf is not None and len(colours) == len(self._shelf.paints):
            old, self._paints = self._paints, Paints(self._shelf, colours, self)
            self.layered.layers.set_paints(self._paints)
            if old is not None:
                old.deleteLater()

    # --- the layers ------------------------------------------------------------------------------

    def _set_stack(self, stack: Stack) -> None:
        """Take over what was set by hand, and keep it once the hand rests."""
        self.stack = stack
        self._mixes_changed()
        self._keep_soon.start()

    def _want_part(self, zones: tuple[str, ...]) -> None:
        """Look at these parts once a layer lies over them: what is shown is what is worked on."""
        self._picked, self._part_wanted = self.mix, zones or None

    def _show_light(self) -> None:
        """Show it in the light of the room, or in the one that was chosen here."""
        self.layered.show_light(self.seen.finish, self.seen.room)

    def _look_at(self, place: int) -> None:
        if place != self._looked_at:
            self._looked_at = place
            self._reckon_soon.start()

    def _set_passes(self, passes: int) -> None:
        if self._built is not None:
            self.layered.layers.set_passes(self._built, passes)

    def _take(self, way: Way) -> None:
        if way.layer is not None:
            self._looked_at = 0
            self.layered.layers.lay_first(way.layer)
        else:
            # What is in the pot is kept: the mix that was kept last stands first.
            self._picked = None
        self.sides[0].click()

    def _ask_again(self) -> None:
        """Ask for the ways to what the client wants anew, with what lies there now."""
        self.reverse.ask_again()
        self.sides[1].click()

    def keep(self) -> None:
        """Keep the layers with the job, if they are others than are kept."""
        self._keep_soon.stop()
        if self.stack != (self._kept if self._sent is None else self._sent):
            self._sent = stack = self.stack
            shelf = self.session.shelf
            self.desk.edit_job(
                lambda store, id_: keep_finish(store, id_, stack, shelf),
                kind=f"Desk.keep_part {_PART}",
            )

    def _keep_behind(self, job: str) -> None:
        """Keep what was just set with the job that has left the bench."""
        stack, shelf = self.stack, self.session.shelf
        if self._keep_soon.isActive() and stack != self._kept:
            keep_behind(self.desk, job, lambda store, id_: keep_finish(store, id_, stack, shelf))

    def _job_changed(self) -> None:
        """Show what is kept, unless something newer is on its way to be."""
        here = None if self.desk.job is None else self.desk.job.id
        # Something else of the page may have begun the job before the layers were kept.
        unkept = self._sent is not None or self._keep_soon.isActive()
        begun = self._job is None and unkept
        another = here != self._job and not begun
        if another and self._job is not None:
            self._keep_behind(self._job)
        self._job = here
        self._kept = self.desk.part(_PART, Stack) or Stack()
        if another or self._kept == self._sent:
            self._sent = None
        if another or (self._sent is None and not self._keep_soon.isActive()):
            self._keep_soon.stop()
            self.stack = self._kept
        self._mixes_changed()

    def _not_kept(self) -> None:
        self._sent = None

    # --- reckoning -------------------------------------------------------------------------------

    def _built_place(self) -> int | None:
        """Give the layer whose build-up is shown: the one last looked at, or the last of paint."""
        painted = [n for n, layer in enumerate(self.over.layers) if layer.is_paint]
        if self._looked_at in painted:
            return self._looked_at
        return painted[-1] if painted else None

    def _reckon(self) -> None:
        mix, shelf, stack, place = self.mix, self.session.shelf, self.over, self._built_place()
        self.reverse.show_stack(stack)
        self.layered.piece.look(self.stack)
        if mix is None:
            return
        wish = self.reverse.wish()

        def work(_: Job) -> _Reckoned:
            look, wanted = preview(shelf, mix.parts, stack), cloth_in_room(mix.wanted)
            client = () if wish is None else cloth_in_room(wish.aim)
            off = None if wish is None else _apart(look.steps[-1].dry, wish.aim)
            if place is None:
                return look, wanted, client, off, None
            layer = stack.layers[place]
            passes = max(_PASSES, layer.passes)
            return look, wanted, client, off, build_up(shelf, mix.parts, layer, passes=passes)

        def done(answer: _Reckoned) -> None:
            look, wanted, client, off, built = answer
            self.trouble.hide()
            self._built = place
            self.layered.show_look(look, wanted, mix.photo, shelf.notes, client)
            self.layered.told.show_off(off, stack)
            passes = 0 if place is None else stack.layers[place].passes
            self.layered.build_up.show_build_up((place or 0) + 1, built, passes)

        self.session.workshop.start("finish", words.RECKONING, work, done, self._say_trouble)

    def _say_trouble(self, what: object) -> None:
        """Say in place what cannot be; our own faults go to the bench."""
        if isinstance(what, MendableError):
            self._built = None
            self.layered.show_look(None)
            self.layered.told.show_off(None)
            self.layered.build_up.show_build_up(0, None, 0)
            self.trouble.setText(words.trouble(what))
            self.trouble.show()
        else:
            self.session.workshop.failed.emit(what)


def _apart(one: Lab, other: Lab) -> float:
    """Give how far two colours are apart, CIEDE2000."""
    return float(delta_e_2000(one.triple, other.triple))


def _timer(page: FinishPage, after: int) -> QTimer:
    timer = QTimer(page)
    timer.setSingleShot(True)
    timer.setInterval(after)
    return timer
