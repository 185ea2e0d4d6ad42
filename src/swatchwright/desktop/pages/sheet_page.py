"""The page of the sheet: what is on it, how it will print, its files, its prints, and its code."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, QTimer
from PySide6.QtGui import QGuiApplication, QHideEvent
from PySide6.QtWidgets import (
    QFrame,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.finish_parts import on_colour
from swatchwright.acts.jobs import Changes, Store, keep_document
from swatchwright.acts.sheet import CodeRecipe
from swatchwright.acts.sheet_form import (
    FORM_PART,
    BenchMix,
    SheetForm,
    page_size,
    sound_form,
    told_of,
    zones_told,
)
from swatchwright.acts.sheet_on_shelf import on_shelf
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.files import ask_save
from swatchwright.desktop.pages.page import Page
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.areas import ScrollArea
from swatchwright.desktop.widgets.columns import Columns
from swatchwright.desktop.widgets.piece_fields import card
from swatchwright.desktop.widgets.piece_keeper import Keeper
from swatchwright.desktop.widgets.sheet_choices import SheetChoices
from swatchwright.desktop.widgets.sheet_code import SheetCode
from swatchwright.desktop.widgets.sheet_maker import DrawnPages, MadeSheet, SheetMaker
from swatchwright.desktop.widgets.sheet_side import SheetSide
from swatchwright.desktop.words import FROM_CODE
from swatchwright.desktop.words import sheet as words
from swatchwright.errors import MendableError
from swatchwright.paint.layers import Stack
from swatchwright.shelf.jobs import Job
from swatchwright.values import Lab

if TYPE_CHECKING:
    from PySide6.QtPrintSupport import QPrinter

__all__ = ["SheetPage"]

_FINISH = "finish"
_WIDE = 356
_LEAST, _HIGH = 560, 640
"""Pixels without which the preview goes below the choices, and its height there."""
_SETTLED, _CHOSEN = 600, 250
"""ms without a change until the sheet is made anew: of job or mixes, and of what is chosen here."""


class SheetPage(Page):
    """Choices and the reading of codes on the left, the sheet as it will print on the right."""

    def __init__(self, session: Session, desk: Desk) -> None:
        super().__init__(session, desk, words.HEADING, words.HINT, scrolls=False)
        self.form = SheetForm()
        self.made: MadeSheet | None = None
        self.drawn: DrawnPages | None = None
        self._stale, self._making = True, False
        self._told: Job | None = None
        self._job = None if desk.job is None else desk.job.id
        self._waiting_for_it: list[Callable[[MadeSheet], None]] = []
        self.choices, self.code, self.side = SheetChoices(), SheetCode(), SheetSide()
        self.bar, self.preview = self.side.bar, self.side.preview
        self.maker = SheetMaker(session.workshop, desk, self)
        self._soon = QTimer(self)
        self._soon.setSingleShot(True)
        self._soon.timeout.connect(self.make)
        self._lay_out()
        self._keeper: Keeper[SheetForm] = Keeper(
            self, desk, read=self._read_form, act=_keeping, show=self._take_form
        )
        self._listen()
        self._keeper.begin()

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self.body)
        rows.setContentsMargins(0, 0, 0, 0)
        columns = Columns()
        columns.put(self._left(), wide=_WIDE)
        columns.put(self.side, stretch=1, least=_LEAST, high=_HIGH)
        rows.addWidget(columns)

    def _left(self) -> QScrollArea:
        side = QWidget()
        side.setObjectName("bench")
        column = QVBoxLayout(side)
        column.setContentsMargins(0, 0, 4, 0)
        column.setSpacing(12)
        for heading, part in ((words.WHAT, self.choices), (words.CODE, self.code)):
            sheet, inside = card(heading)
            inside.addWidget(part)
            column.addWidget(sheet)
        column.addStretch(1)
        area = ScrollArea()
        area.setWidget(side)
        area.setWidgetResizable(True)
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        area.setAccessibleName(words.WHAT)
        return area

    def _listen(self) -> None:
        self.session.recipes_changed.connect(self._mixes_changed)
        self.desk.job_changed.connect(self._job_changed)
        self.desk.paints_changed.connect(self._look_again)
        self.session.shelf_changed.connect(self._look_again)
        self.choices.changed.connect(self._choose)
        self.preview.dots_wanted.connect(self._draw)
        self.maker.made.connect(self._show_made)
        self.maker.refused.connect(self._refuse)
        self.maker.drawn.connect(self._show_pages)
        self.maker.written.connect(lambda paths: self.side.say(words.saved(paths)))
        self.maker.printed.connect(lambda: self.side.say(words.PRINTED))
        self.bar.grey_wanted.connect(self._see_grey)
        self.bar.copy_wanted.connect(self.copy_code)
        self.bar.save_wanted.connect(self._ask_file)
        self.bar.print_wanted.connect(self._ask_printer)
        self.code.read.connect(self._try_on_shelf)
        self.code.wanted.connect(self._want)

    def arrive(self) -> None:
        """Make what has come about meanwhile."""
        if self._stale or self._making:
            self.make()

    def hideEvent(self, event: QHideEvent) -> None:
        """Keep what was chosen before another page needs it."""
        super().hideEvent(event)
        self._keeper.keep()

    # --- what is chosen --------------------------------------------------------------------------

    def _choose(self, form: SheetForm) -> None:
        self.form = form
        # With no job, a choice of paper is no reason to begin one.
        if self.desk.job is not None:
            self._keeper.set(form)
        self._make_soon(_CHOSEN)

    def _read_form(self) -> SheetForm | None:
        return self.desk.part(FORM_PART, SheetForm)

    def _take_form(self, kept: SheetForm | None) -> None:
        """Take up what is kept; a job that was just begun goes on with what was chosen without."""
        form = kept or (SheetForm() if self._job is not None else self.form)
        self._use(form)

    def _use(self, form: SheetForm) -> None:
        """Use a form as far as it can be, and make the sheet anew where that is another."""
        zones = zones_told(self.desk.job)
        sound = sound_form(form, zones)
        if sound != self.form:
            self.form = sound
            self._make_soon(_CHOSEN)
        self.choices.show_form(sound, zones, bench=not zones)

    # --- what it is of ---------------------------------------------------------------------------

    def _bench(self) -> BenchMix | None:
        found, job = self.session.recipes, self.desk.job
        if found is None or not found.recipes:
            return None
        shelf = self.session.shelf
        if job is None:
            return BenchMix(found, shelf)
        kept = self.desk.part(_FINISH, Stack) or Stack()
        over = on_colour(job, found.wanted.lab, kept).over(kept)
        return BenchMix(found, shelf, job.title, job.client, over)

    def _job_changed(self) -> None:
        """Make the sheet anew where something that is on it has changed."""
        job = self.desk.job
        self._job = None if job is None else job.id
        told = None if job is None else told_of(job)
        if told != self._told:
            self._told = told
            self._use(self.form)
            self._make_soon(_SETTLED)

    def _mixes_changed(self) -> None:
        if not zones_told(self.desk.job):
            self._make_soon(_SETTLED)

    def _look_again(self) -> None:
        self._make_soon(_SETTLED)

    # --- making ----------------------------------------------------------------------------------

    def _make_soon(self, rest: int) -> None:
        self._stale = True
        if self.isVisible():
            self._soon.start(rest)

    def make(self) -> None:
        """Make the sheet of the job on the bench, or else of the first mix there."""
        self._soon.stop()
        self._stale, self._making = False, True
        job = self.desk.job
        if job is not None and zones_told(job):
            self.maker.of_job(job.id, self.form, self.session.shelf)
        elif (bench := self._bench()) is not None:
            self.maker.of_mix(bench, self.form)
        else:
            self.maker.drop()
            self._block(words.WAIT)

    def _refuse(self, error: MendableError) -> None:
        self._block(words.trouble(error))

    def _block(self, why: str) -> None:
        """Say in place of the sheet why there is none."""
        self.made, self.drawn, self._making = None, None, False
        self._waiting_for_it.clear()
        self.side.block(why)

    def _show_made(self, made: MadeSheet) -> None:
        self.made, self._making = made, False
        self.side.show_made(made)
        waiting, self._waiting_for_it = self._waiting_for_it, []
        for act in waiting:
            act(made)

    def _draw(self, dots: float) -> None:
        if self.made is not None:
            self.maker.draw(self.made, dots, grey=self.bar.grey.isChecked())

    def _see_grey(self) -> None:
        self.preview.show_size(page_size(self.form if self.made is None else self.made.form))

    def _show_pages(self, drawn: DrawnPages) -> None:
        if self.made is drawn.sheet:
            self.drawn = drawn
            self.side.show_pages(drawn)

    # --- what is done with it --------------------------------------------------------------------

    def _with_sheet(self, act: Callable[[MadeSheet], None]) -> None:
        """Do something with the sheet once it is made as it is chosen now."""
        if self.made is not None and not (self._stale or self._making):
            act(self.made)
            return
        self._waiting_for_it.append(act)
        self.make()

    def save(self, path: Path) -> None:
        """Write the sheet to a PDF or to pictures, by the ending of the name."""
        self._with_sheet(lambda made: self.maker.save(made, path))

    def _ask_file(self) -> None:
        content = None if self.made is None else self.made.content
        title, client = ("", "") if content is None else (content.title, content.client)
        name, kind = ask_save(
            self,
            words.SAVE,
            words.file_name(title, client, self.form),
            f"{words.PDF_FILES};;{words.PNG_FILES}",
        )
        if name:
            self.save(words.with_ending(name, kind))

    def _ask_printer(self) -> None:
        # Printing is looked up in the system only when it is wanted.
        from swatchwright.desktop.widgets.sheet_printing import ask_printer

        pages = len(self.preview.leaves.images)
        ask_printer(self, self.form, pages, self.print_on)

    def print_on(self, printer: QPrinter) -> None:
        """Print the sheet."""
        self._with_sheet(lambda made: self.maker.print_on(printer, made))

    def copy_code(self, place: int) -> None:
        """Put the text of the code of a zone on the clipboard."""

        def copy(made: MadeSheet) -> None:
            QGuiApplication.clipboard().setText(made.content.zones[place].code)
            self.side.say(words.COPIED)

        self._with_sheet(copy)

    # --- a code ----------------------------------------------------------------------------------

    def _try_on_shelf(self, recipe: CodeRecipe) -> None:
        shelf = self.session.shelf
        self.session.workshop.start(
            "sheet-code",
            words.READING_CODE,
            lambda _: on_shelf(recipe, shelf),
            lambda found: self.code.show_on_shelf(recipe, found),
        )

    def _want(self, lab: Lab) -> None:
        self.session.want(lab, FROM_CODE)


def _keeping(form: SheetForm) -> Callable[[Store, str], Changes]:
    return lambda store, id_: keep_document(store, id_, FORM_PART, form)
