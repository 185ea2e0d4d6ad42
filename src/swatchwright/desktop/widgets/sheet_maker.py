"""Makes the sheet, its pictures, its files and its prints away from the window's thread."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from itertools import count
from pathlib import Path
from threading import Lock
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QImage

from swatchwright.acts.jobs import Store
from swatchwright.acts.sheet import SheetContent, pictures_of
from swatchwright.acts.sheet_form import (
    PRINT_DPI,
    BenchMix,
    SheetForm,
    laid_out,
    save_laid_out,
    sheet_of_job,
    sheet_of_mix,
    shown_pages,
)
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.words import sheet as words
from swatchwright.desktop.workers import Job, Workshop
from swatchwright.errors import MendableError
from swatchwright.shelf.shelf import Shelf

if TYPE_CHECKING:
    from PySide6.QtPrintSupport import QPrinter

__all__ = ["DrawnPages", "MadeSheet", "SheetMaker"]


@dataclass(frozen=True, slots=True, eq=False)
class MadeSheet:
    """A sheet: what it says, what it was made by, and its PDF."""

    content: SheetContent
    form: SheetForm
    document: bytes


@dataclass(frozen=True, slots=True, eq=False)
class DrawnPages:
    """The pages of a sheet as pictures, and how many dots to the inch they have."""

    sheet: MadeSheet
    images: tuple[QImage, ...]
    dpi: float
    grey: bool


class SheetMaker(QObject):
    """Makes one sheet after another; of two that are asked for, the later counts.

    Signals
    -------
    made(MadeSheet)
        A sheet was put together.
    refused(MendableError)
        It cannot be.
    drawn(DrawnPages)
        Its pages were drawn.
    written(tuple)
        The paths of the files that were written.
    printed()
        Its pages have gone to the printer.
    """

    made = Signal(object)
    refused = Signal(object)
    drawn = Signal(object)
    written = Signal(object)
    printed = Signal()

    def __init__(self, workshop: Workshop, desk: Desk, parent: QObject) -> None:
        super().__init__(parent)
        self._workshop, self._desk = workshop, desk
        self._numbers = count(1)
        self._latest = 0
        # What draws the pages of a PDF may not be called by two threads at once.
        self._drawing = Lock()

    def drop(self) -> None:
        """Give up what is being made."""
        self._latest = next(self._numbers)
        for kind in ("sheet", "sheet-pages"):
            self._workshop.stop(kind)

    def of_job(self, id_: str, form: SheetForm, shelf: Shelf) -> None:
        """Make the sheet of a job; what it says is gathered where the store is.

        The shelf is the one in use, by which it is made while the store has none.
        """
        self.drop()
        number = self._latest

        def work(store: Store) -> SheetContent | MendableError:
            try:
                return sheet_of_job(store, id_, form, in_use=shelf)
            except MendableError as error:
                return error

        def done(answer: SheetContent | MendableError) -> None:
            if number != self._latest:
                return
            if isinstance(answer, MendableError):
                self.refused.emit(answer)
            else:
                self._make(lambda: answer, form)

        self._desk.ask(work, done)

    def of_mix(self, mix: BenchMix, form: SheetForm) -> None:
        """Make the sheet of the first mix on the bench."""
        self.drop()
        self._make(lambda: sheet_of_mix(mix, form), form)

    def _make(self, say: Callable[[], SheetContent], form: SheetForm) -> None:
        def work(_: Job) -> MadeSheet:
            content = say()
            return MadeSheet(content, form, laid_out(content, form))

        self._workshop.start("sheet", words.MAKING, work, self.made.emit, self._cannot)

    def _cannot(self, what: object) -> None:
        if isinstance(what, MendableError):
            self.refused.emit(what)
        else:
            self._workshop.failed.emit(what)

    def draw(self, sheet: MadeSheet, dpi: float, *, grey: bool) -> None:
        """Draw the pages of a sheet with so many dots to the inch."""

        def work(job: Job) -> DrawnPages | None:
            with self._drawing:
                if job.stopped():
                    return None
                pages = shown_pages(sheet.document, dpi=dpi, grey=grey)
            return DrawnPages(sheet, _images(pages), dpi, grey)

        self._workshop.start("sheet-pages", words.MAKING, work, self.drawn.emit)

    def save(self, sheet: MadeSheet, path: Path) -> None:
        """Write a sheet to a PDF or to pictures."""

        def work(_: Job) -> tuple[Path, ...]:
            with self._drawing:
                return save_laid_out(sheet.content, path, sheet.form)

        self._workshop.start("sheet-file", words.SAVING, work, self.written.emit)

    def print_on(self, printer: QPrinter, sheet: MadeSheet) -> None:
        """Print the pages of a sheet at their true size."""
        from swatchwright.desktop.widgets.sheet_printing import print_pages

        def work(_: Job) -> bool:
            with self._drawing:
                pages = pictures_of(sheet.document, dpi=PRINT_DPI)
            print_pages(printer, _images(pages), PRINT_DPI)
            return True

        self._workshop.start("sheet-print", words.PRINTING, work, lambda _: self.printed.emit())


def _images(pages: tuple[bytes, ...]) -> tuple[QImage, ...]:
    return tuple(QImage.fromData(page) for page in pages)
