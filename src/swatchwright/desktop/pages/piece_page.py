"""The page of the piece: sized and drawn, its parts, and how much paint it takes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from PySide6.QtCore import Qt
from PySide6.QtGui import QHideEvent
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from swatchwright.acts.batches import take_off_mix
from swatchwright.acts.jobs import Changes, Store
from swatchwright.acts.piece import DrawnPiece, draw_piece, sized
from swatchwright.acts.piece_follow import Painted, followed, set_by_hand
from swatchwright.acts.piece_job import (
    FORM_PART,
    PIECE_PART,
    PieceForm,
    form_for,
    form_of_parts,
    keep_sized,
    piece_of_form,
)
from swatchwright.acts.plan_own import plan_coats_apart
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.pages.page import Page
from swatchwright.desktop.seen_light import SeenLight
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.amounts_card import AmountsCard
from swatchwright.desktop.widgets.amounts_coats import AmountsCoats
from swatchwright.desktop.widgets.amounts_panel import AmountsPanel
from swatchwright.desktop.widgets.piece_bench import PieceBench
from swatchwright.desktop.widgets.piece_fields import beside, label
from swatchwright.desktop.widgets.piece_files import PieceFiles
from swatchwright.desktop.widgets.piece_keeper import Keeper
from swatchwright.desktop.widgets.piece_kinds import KindStrip
from swatchwright.desktop.widgets.piece_parts_panel import PartsPanel
from swatchwright.desktop.widgets.piece_reckoner import PieceReckoner
from swatchwright.desktop.widgets.piece_sizes import PieceSizes
from swatchwright.desktop.words import amounts
from swatchwright.desktop.words import piece as words
from swatchwright.errors import MendableError
from swatchwright.piece.amounts import Amounts
from swatchwright.piece.common import Kind
from swatchwright.piece.order import AmountsOrder
from swatchwright.piece.part import Piece

__all__ = ["PiecePage"]


@dataclass(frozen=True, slots=True)
class _Set:
    """What is set on the page: the form and the piece."""

    form: PieceForm
    piece: Piece


class PiecePage(Page):
    """Choose, size, look, change, and read how much to mix."""

    def __init__(self, session: Session, desk: Desk) -> None:
        super().__init__(session, desk, words.HEADING, words.HINT)
        self.files = PieceFiles(session.workshop, self)
        self.kinds = KindStrip()
        self.sizes = PieceSizes()
        self.bench = PieceBench()
        self.card = AmountsCard()
        self.coats = AmountsCoats()
        self.parts = PartsPanel()
        self.panel = AmountsPanel()
        self.open_first = QPushButton(words.OR_OPEN)
        self.empty = QWidget()
        self.amounts: Amounts | None = None
        self.seen = SeenLight.of(desk)
        self._sized_part = QWidget()
        self._lay_out()
        self.reckoner = PieceReckoner(session, desk, lambda: (self.form, self.piece), self)
        self._keeper: Keeper[_Set] = Keeper(
            self, desk, read=self._read, act=self._keeping, show=self._show
        )
        self.reckoner.look_beside()
        self._listen()
        self._keeper.begin()

    def _lay_out(self) -> None:
        column = QVBoxLayout(self.body)
        column.setContentsMargins(0, 0, 6, 0)
        column.setSpacing(12)
        column.addWidget(self.kinds)
        column.addWidget(self.empty, 1)
        column.addWidget(self._sized_part)
        told = label(words.WAIT, "waiting")
        told.setAlignment(Qt.AlignmentFlag.AlignCenter)
        waiting = QVBoxLayout(self.empty)
        waiting.addStretch(1)
        waiting.addWidget(told)
        waiting.addWidget(self.open_first, 0, Qt.AlignmentFlag.AlignCenter)
        waiting.addStretch(2)
        self.open_first.clicked.connect(self.files.ask_open)
        rows = QVBoxLayout(self._sized_part)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(12)
        settings = QWidget()
        inner = QVBoxLayout(settings)
        inner.setContentsMargins(0, 0, 0, 0)
        inner.setSpacing(8)
        for part in (self.sizes, label(amounts.ON, "heading"), self.coats):
            inner.addWidget(part)
        inner.addStretch(1)
        self._rows = (
            beside(
                (words.SIZES, settings, 0, 296),
                ("", self.bench, 1, 0),
                (amounts.MIX_HEAD, self.card, 0, 290),
                least=_DRAWN_LEAST,
            ),
            beside((words.PARTS, self.parts, 1, 0), least=_DRAWN_LEAST),
        )
        for row in (*self._rows, self.panel):
            rows.addWidget(row)

    def dressed_parts(self) -> tuple[QWidget, ...]:
        """Give the sheets, each dressed by itself."""
        sheets = [sheet for row in self._rows for sheet in row.parts()]
        return *self.heads(), self.kinds, self.empty, *sheets, self.panel

    def _listen(self) -> None:
        menu = self.bench.menu
        menu.addAction(words.SAVE_DRAWING, self._ask_drawing)
        menu.addAction(words.SAVE_PIECE, self._ask_save)
        menu.addAction(words.OPEN_PIECE, self.files.ask_open)
        self.kinds.chosen.connect(self._choose)
        self.files.opened.connect(self._opened)
        self.sizes.sized.connect(self._size)
        self.coats.changed.connect(self._change_form)
        self.coats.follow.connect(self._follow_again)
        self.panel.changed.connect(self._change_form)
        self.parts.changed.connect(self._change_parts)
        self.parts.picked.connect(self.bench.drawing.choose)
        self.bench.drawing.chosen.connect(self.parts.pick)
        self.bench.to_row.clicked.connect(self._to_row)
        self.card.taken.connect(self.session.set_volume)
        self.reckoner.mixes_changed.connect(self.bench.show_mixes)
        self.reckoner.seen.connect(self.bench.show_seen)
        for gone in (self.bench.gone, self.parts.gone):
            self.reckoner.gone.connect(gone.show_zones)
            gone.taken_off.connect(self._take_off)
        self.reckoner.told.connect(self._told)
        self.reckoner.planned.connect(self.panel.price.show_plan_hours)
        self.reckoner.reckoned.connect(self._reckoned)
        self.reckoner.failed.connect(self._not_reckoned)
        self.desk.job_laid.connect(self.panel.forget_refused)
        self.bench.seen.light_chosen.connect(self._choose_light)
        self.seen.changed.connect(self._show_light)
        self._show_light()

    def hideEvent(self, event: QHideEvent) -> None:
        """Keep what is set before another page needs it."""
        super().hideEvent(event)
        self._keeper.keep()
        self.seen.keep()

    def _choose_light(self, light: Light) -> None:
        self.seen.choose(piece=light)
        self._show_light()

    def _show_light(self) -> None:
        """Draw it in the light of the room, or in the one that was chosen here."""
        self.bench.seen.show_light(self.seen.piece, self.seen.room)

    def arrive(self) -> None:
        """Ask what is left on the shelf, which another page may have changed."""
        self.reckoner.look_beside()
        self.reckoner.ask_store(anew=True)

    # --- what is set -----------------------------------------------------------------------------

    @property
    def form(self) -> PieceForm | None:
        """What was set for the piece; None before one is chosen."""
        return None if self._keeper.value is None else self._keeper.value.form

    @property
    def piece(self) -> Piece | None:
        """The piece; None before one is chosen."""
        return None if self._keeper.value is None else self._keeper.value.piece

    def _choose(self, kind: Kind) -> None:
        """Size a common piece as it usually is, with what was set for the last one."""
        new, old = form_for(kind), self.form
        if old is not None:
            new = replace(
                new,
                coats=old.coats,
                surface=old.surface,
                own=old.own,
                sample_ml=old.sample_ml,
                touch_up=old.touch_up,
                tins=old.tins,
                left=old.left,
                terms=old.terms,
            )
        self._build(new)

    def _size(self, form: PieceForm) -> None:
        self._build(self._by_hand(form))

    def _build(self, form: PieceForm) -> None:
        try:
            piece = piece_of_form(form)
        except MendableError as error:
            self.session.workshop.failed.emit(error)
            return
        self._set(_Set(form, piece))

    def _change_form(self, form: PieceForm) -> None:
        if self._keeper.value is not None:
            self._set(replace(self._keeper.value, form=self._by_hand(form)))

    def _follow_again(self) -> None:
        """Let all coats follow what the other pages say."""
        if self._keeper.value is not None:
            form = replace(self._keeper.value.form, own=())
            self._set(replace(self._keeper.value, form=form))

    def painted(self, form: PieceForm) -> Painted:
        """Give how a form is painted, as the other parts of the job say."""
        return followed(form, self.reckoner.beside)

    def _by_hand(self, form: PieceForm) -> PieceForm:
        """Mark what differs from the form as it is shown as set by hand."""
        old = self.form
        return form if old is None else set_by_hand(self.painted(old).form, form)

    def _change_parts(self, piece: Piece) -> None:
        if self.form is not None:
            self._set(_Set(replace(self.form, by_hand=True), piece))

    def _set(self, value: _Set) -> None:
        self._keeper.set(value)
        self._show(value)

    # --- kept ------------------------------------------------------------------------------------

    def _read(self) -> _Set | None:
        piece = self.desk.part(PIECE_PART, Piece)
        if piece is None:
            return None
        return _Set(self.desk.part(FORM_PART, PieceForm) or form_of_parts(), piece)

    def _keeping(self, value: _Set) -> Callable[[Store, str], Changes]:
        mixes, shelf, known = self.reckoner.at_hand()
        return lambda store, id_: keep_sized(
            store, id_, value.form, value.piece, mixes=mixes, shelf=shelf, known=known
        )

    # --- showing ---------------------------------------------------------------------------------

    def _show(self, value: _Set | None) -> None:
        self._sized_part.setVisible(value is not None)
        self.empty.setVisible(value is None)
        self.kinds.show_kind(None if value is None else value.form.kind)
        if value is None:
            self.panel.forget_refused()
            return
        self._show_form(value.form)
        self._draw(value.piece)

    def _show_form(self, form: PieceForm) -> None:
        painted = self.painted(form)
        self.sizes.show_form(painted.form)
        self.coats.show_painted(painted)
        self.coats.show_plan(plan_coats_apart(self.reckoner.beside.plan, painted.coats.paint))
        self.panel.show_form(painted.form)

    def _take_off(self, zone: str) -> None:
        """Take a mix off that is for no part of the piece."""
        self._keeper.keep()
        self.desk.edit_job(lambda store, id_: take_off_mix(store, id_, zone))

    def _told(self) -> None:
        """Show what the other pages say now of what goes on."""
        if (form := self.form) is not None:
            self._show_form(form)

    def _draw(self, piece: Piece) -> None:
        """Draw at once what is quickly drawn, and the rest in the background."""
        if sum(part.count for part in piece.parts) > _QUICK:
            self.session.workshop.start(
                "piece",
                words.DRAWING_IT,
                lambda _: draw_piece(piece),
                self._drawn,
                lambda what: self._not_drawn(piece, what),
            )
            return
        self.session.workshop.stop("piece")
        try:
            self._drawn(draw_piece(piece))
        except MendableError as error:
            self._not_drawn(piece, error)

    def _not_drawn(self, piece: Piece, what: object) -> None:
        """Tell what keeps a piece from being drawn, and show the rest of it."""
        self.session.workshop.failed.emit(what)
        self.bench.hold()
        if isinstance(what, MendableError):
            self.parts.show_piece(sized(piece))
            self.reckoner.reckon()

    def _drawn(self, found: DrawnPiece) -> None:
        self.bench.show_piece(found.sized, found.drawings, self.reckoner.find_mixes())
        self.parts.show_piece(found.sized)
        self.reckoner.reckon()

    def _to_row(self) -> None:
        """Go to the row of the part that is outlined."""
        self.parts.pick(self.bench.drawing.here())
        self.parts.go_to()

    def _reckoned(self, order: AmountsOrder, found: Amounts) -> None:
        self.amounts = found
        self.card.show_amounts(found)
        self.panel.show_amounts(order, found)

    def _not_reckoned(self, error: MendableError) -> None:
        self.amounts = None
        self.card.say(f"{error.what} {error.mend}")

    # --- files -----------------------------------------------------------------------------------

    def _ask_drawing(self) -> None:
        if (piece := self.piece) is not None:
            self.files.ask_drawing(piece, self.bench.colours())

    def _ask_save(self) -> None:
        if (piece := self.piece) is not None:
            self.files.ask_save(piece)

    def _opened(self, piece: Piece) -> None:
        """Lay a piece on the page that was read from a file."""
        old = self.form or form_of_parts()
        self._set(_Set(replace(old, kind=None, by_hand=True), piece))


_DRAWN_LEAST = 420
"""Pixels of ours in which a piece is well seen; what is said of it may take another line there."""

_QUICK = 100
"""Parts that are drawn within a few milliseconds."""
