"""The page of the piece on a photo: a few strokes, and it is seen in the chosen colours."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QStandardPaths, Qt
from PySide6.QtGui import QDragEnterEvent, QDropEvent, QHideEvent, QImage, QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from swatchwright.acts.repaint import Stroke
from swatchwright.acts.repaint_file import sample_box
from swatchwright.acts.repaint_job import AS_IT_IS, ChoiceKind, zones_to_mark
from swatchwright.desktop import words as common
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.files import ask_open, ask_save
from swatchwright.desktop.pages.page import Page
from swatchwright.desktop.repaint_desk import RepaintDesk, Shown
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.framing import Framing
from swatchwright.desktop.widgets.grey_proposal import GreyProposal
from swatchwright.desktop.widgets.kept_lines import KeptLines
from swatchwright.desktop.widgets.repaint_after import RepaintAfter
from swatchwright.desktop.widgets.repaint_brushes import RepaintBrushes
from swatchwright.desktop.widgets.repaint_canvas import RepaintCanvas
from swatchwright.desktop.widgets.repaint_zones import RepaintZones
from swatchwright.desktop.widgets.shelf_bits import button, label
from swatchwright.desktop.words import repaint as words
from swatchwright.values import Rect

__all__ = ["RepaintPage"]


class RepaintPage(Page):
    """Open, draw, and look."""

    def __init__(self, session: Session, desk: Desk) -> None:
        super().__init__(session, desk, words.HEADING, words.HINT, scrolls=False)
        self.setAcceptDrops(True)
        self.piece = RepaintDesk(session, desk)
        where = QStandardPaths.StandardLocation.PicturesLocation
        self._folder = QStandardPaths.writableLocation(where)
        self.brushes = RepaintBrushes()
        framing = Framing(self)
        self.canvas, self.after = RepaintCanvas(framing), RepaintAfter(framing)
        self.proposal = GreyProposal(session.workshop, "repaint-greys", self._show_proposed)
        self.zones = RepaintZones()
        self.open_first = button(words.OPEN, self._ask_photo, "main")
        self.sample = button(words.SAMPLE, self._open_sample)
        self.open_other = button(words.OPEN_OTHER, self._ask_photo, tip=words.OPEN_TIP)
        self.clear = button(words.CLEAR, self.piece.clear, tip=words.CLEAR_TIP)
        self.large = button(words.LARGE, self._show_large, tip=words.LARGE_TIP)
        self.divider = button(words.DIVIDER, self._show_divided, tip=words.DIVIDER_TIP)
        self.save = button(words.SAVE, self._ask_save, tip=words.SAVE_TIP)
        self.finished = button(words.FINISHED, self._set_finished)
        self.told, self.notes = label("", "small"), label("", "small")
        self.empty, self._open = QWidget(), QWidget()
        self._lay_out()
        self._listen()
        self.piece.begin()

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self.body)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.addWidget(self.empty, 1)
        rows.addWidget(self._open, 1)
        self._lay_out_empty()
        inner = QVBoxLayout(self._open)
        inner.setContentsMargins(0, 0, 0, 0)
        inner.setSpacing(8)
        top = BreakingRow()
        top.put(self.brushes)
        top.put(self.clear)
        top.put(self.divider, self.large, self.open_other, pushed=True)
        self.large.setCheckable(True)
        self.divider.setCheckable(True)
        self.finished.setCheckable(True)
        inner.addWidget(top)
        inner.addWidget(self.proposal)
        pictures = QHBoxLayout()
        pictures.setSpacing(0)
        pictures.addWidget(self.canvas, 1)
        pictures.addWidget(self.after, 1)
        inner.addLayout(pictures, 1)
        below = QHBoxLayout()
        below.setSpacing(12)
        below.addWidget(self.zones, 1)
        beside = QVBoxLayout()
        beside.setSpacing(6)
        beside.addWidget(self.finished)
        beside.addWidget(self.save)
        beside.addStretch(1)
        below.addLayout(beside)
        inner.addLayout(below)
        inner.addWidget(self._said())

    def _said(self) -> KeptLines:
        """Give what is told below the pictures, in room of its own: they keep their size."""
        policy = self.finished.sizePolicy()
        policy.setRetainSizeWhenHidden(True)
        self.finished.setSizePolicy(policy)
        return KeptLines((self.told, self.notes), words.NOTES)

    def _lay_out_empty(self) -> None:
        rows = QVBoxLayout(self.empty)
        title, text = label(words.EMPTY_TITLE, "big"), label(words.EMPTY_TEXT, "quiet", wraps=False)
        for line in (title, text):
            line.setAlignment(Qt.AlignmentFlag.AlignCenter)
        rows.addStretch(1)
        rows.addWidget(title)
        rows.addWidget(text)
        rows.addSpacing(12)
        buttons = QHBoxLayout()
        buttons.addStretch(1)
        buttons.addWidget(self.open_first)
        buttons.addWidget(self.sample)
        buttons.addStretch(1)
        rows.addLayout(buttons)
        rows.addStretch(2)
        self.sample.setVisible(sample_box() is not None)

    def _listen(self) -> None:
        self.piece.changed.connect(self._show)
        self.piece.pictured.connect(self.canvas.show_image)
        self.piece.pictured.connect(self.after.show_before)
        self.piece.shown.connect(self._show_after)
        self.piece.saved.connect(self._say_saved)
        self.brushes.changed.connect(self._take_brush)
        self.canvas.stroked.connect(self._stroked)
        self.canvas.boxed.connect(self._boxed)
        self.canvas.wider.connect(self.brushes.widen)
        self.zones.chosen.connect(self.piece.choose)
        self.proposal.agreed.connect(lambda rect: self.piece.mark_grey(self.piece.on_marks(rect)))
        self.proposal.left.connect(self.canvas.setFocus)

    def arrive(self) -> None:
        """Offer what has been mixed meanwhile."""
        self.piece.refresh()

    def showEvent(self, event: QShowEvent) -> None:
        """Follow the bench while in view."""
        super().showEvent(event)
        self.piece.in_view = True

    def hideEvent(self, event: QHideEvent) -> None:
        """Let the bench go its way while out of view."""
        self.piece.in_view = False
        super().hideEvent(event)

    # --- opening ---------------------------------------------------------------------------------

    def open_file(self, path: Path) -> None:
        """Open a photo of the piece."""
        self.piece.open(path)

    def _ask_photo(self) -> None:
        name, _ = ask_open(self, words.OPEN, self._folder, common.PHOTO_FILES)
        if name:
            self._folder = str(Path(name).parent)
            self.open_file(Path(name))

    def _open_sample(self) -> None:
        sample = sample_box()
        if sample is not None:
            self.piece.open(sample.path, sample)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        """Take a dragged photo."""
        if any(url.isLocalFile() for url in event.mimeData().urls()):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        """Open a dropped photo as that of the piece."""
        paths = [Path(url.toLocalFile()) for url in event.mimeData().urls() if url.isLocalFile()]
        for path in paths[:1]:
            self.open_file(path)

    # --- drawing ---------------------------------------------------------------------------------

    def _take_brush(self) -> None:
        plan = self.piece.plan
        size = (1, 1) if plan is None else plan.marked.size
        self.canvas.set_brush(self.brushes.zone(), self.brushes.width_on(size))

    def _stroked(self, points: tuple[tuple[float, float], ...], filled: bool) -> None:  # noqa: FBT001 - a signal's argument
        plan, zone = self.piece.plan, self.brushes.zone()
        if plan is not None and zone is not None:
            width = round(self.brushes.width_on(plan.marked.size), 1)
            self.piece.add(Stroke(zone, points, width, filled))

    def _boxed(self, rect: Rect) -> None:
        self.piece.mark_grey(rect)
        self.brushes.take(next(iter(self.brushes.buttons)))

    # --- showing ---------------------------------------------------------------------------------

    def _show(self) -> None:
        plan, piece = self.piece.plan, self.piece
        self.empty.setVisible(plan is None)
        self._open.setVisible(plan is not None)
        self._ask_grey()
        if plan is None:
            return
        zones = zones_to_mark(self.desk.job, plan.marked)
        self.brushes.show_zones(zones)
        self.canvas.show_marks(plan.marked, plan.grey)
        self._take_brush()
        chosen = piece.chosen()
        keys = {z: chosen[z].key if z in chosen else AS_IT_IS for z in plan.marked.zones}
        self.zones.show_zones(plan.marked.zones, piece.choices, keys)
        self.zones.setVisible(bool(plan.marked.zones))
        self.clear.setEnabled(bool(plan.marked.strokes))
        self._show_finish(finished=plan.finished)
        mixed = any(choice.kind is not ChoiceKind.PAINT for choice in piece.choices)
        tried = piece.tried_beside
        lines = "" if mixed or chosen else words.NO_COLOURS
        lines = words.tried_line(tried) if tried else lines
        self.told.setText(lines)
        self.told.setVisible(bool(lines))

    def _ask_grey(self) -> None:
        """Ask about a likely grey card as long as none is marked."""
        plan, photo = self.piece.plan, self.piece.photo
        if plan is None or photo is None:
            self.proposal.look(None)
            return
        if plan.grey is None:
            self.proposal.look(photo)
        self.proposal.mark(plan.grey_on(photo))

    def _show_proposed(self, rect: Rect | None) -> None:
        self.canvas.show_proposed(None if rect is None else self.piece.on_marks(rect))

    def _show_finish(self, *, finished: bool) -> None:
        there = self.piece.stack() is not None
        self.finished.setVisible(bool(self.zones.cells))
        self.finished.setEnabled(there)
        self.finished.setChecked(finished and there)
        self.finished.setToolTip(words.FINISHED_TIP if there else words.NO_FINISH_TIP)

    def _show_after(self, shown: Shown | None) -> None:
        for one in (self.save, self.large, self.divider):
            one.setEnabled(shown is not None)
        if shown is None:
            self.after.show_image(QImage(), words.FIRST_STROKE)
            self.notes.hide()
            self.large.setChecked(False)
            self.divider.setChecked(False)
            self._show_one()
            return
        self.zones.show_colours(shown.colours, finished=shown.finished)
        self.after.show_image(shown.image, words.after_name(self.zones.told()))
        self.notes.setText(words.notes_line((words.SEEN_IN, *shown.notes)))
        self.notes.show()

    def _show_large(self) -> None:
        self.divider.setChecked(False)
        self._show_one()

    def _show_divided(self) -> None:
        self.large.setChecked(False)
        self._show_one()

    def _show_one(self) -> None:
        """Show one picture or two, as the buttons stand."""
        divided = self.divider.isChecked()
        self.after.set_divided(divided=divided)
        self.canvas.setVisible(not divided and not self.large.isChecked())

    def _set_finished(self) -> None:
        self.piece.set_finished(finished=self.finished.isChecked())

    # --- saving ----------------------------------------------------------------------------------

    def _ask_save(self) -> None:
        name, _ = ask_save(
            self, words.SAVE, str(Path(self._folder) / words.PICTURE_NAME), words.PICTURES
        )
        if name:
            path = Path(name)
            self.piece.save(path if path.suffix else path.with_suffix(".png"))

    def _say_saved(self, path: Path) -> None:
        self.told.setText(words.saved_line(path))
        self.told.show()
