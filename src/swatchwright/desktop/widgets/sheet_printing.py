"""Asks for a printer, and paints pages on it at their true size."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from PySide6.QtCore import QRectF, QSizeF
from PySide6.QtGui import QImage, QPageLayout, QPageSize, QPainter
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import QDialog, QWidget

from swatchwright.acts.sheet import Paper
from swatchwright.acts.sheet_form import SheetForm, page_size
from swatchwright.desktop.words import sheet as words
from swatchwright.errors import MendableError

__all__ = ["ask_printer", "print_pages", "printer_for"]

_PAPERS = {
    Paper.A4.size: QPageSize.PageSizeId.A4,
    Paper.LETTER.size: QPageSize.PageSizeId.Letter,
}


def printer_for(form: SheetForm) -> QPrinter:
    """Give a printer that is set for the pages of a form, the whole paper of each."""
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setFullPage(True)
    printer.setPageOrientation(QPageLayout.Orientation.Portrait)
    size = page_size(form)
    if size in _PAPERS:
        printer.setPageSize(QPageSize(_PAPERS[size]))
    else:
        printer.setPageSize(QPageSize(QSizeF(*size), QPageSize.Unit.Millimeter))
    return printer


def ask_printer(
    parent: QWidget, form: SheetForm, pages: int, then: Callable[[QPrinter], None]
) -> QPrintDialog:
    """Ask which printer, and hand it on where she goes on with it."""
    printer = printer_for(form)
    dialog = QPrintDialog(printer, parent)
    dialog.setWindowTitle(words.PRINT)
    dialog.setMinMax(1, max(1, pages))
    dialog.finished.connect(lambda result: _answered(result, printer, then))
    dialog.finished.connect(dialog.deleteLater)
    QDialog.open(dialog)
    return dialog


def _answered(result: int, printer: QPrinter, then: Callable[[QPrinter], None]) -> None:
    if result == QDialog.DialogCode.Accepted.value:
        then(printer)


def print_pages(printer: QPrinter, images: Sequence[QImage], dpi: float) -> None:
    """Paint pages of so many dots to the inch on a printer, from the corner of the paper.

    Raises
    ------
    MendableError
        If the printer does not take them.
    """
    first, last = printer.fromPage() or 1, printer.toPage() or len(images)
    painter = QPainter()
    if not painter.begin(printer):
        raise MendableError(words.NOT_PRINTED, words.NOT_PRINTED_MEND)
    try:
        painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
        times = printer.resolution() / dpi
        for place, image in enumerate(images[first - 1 : last]):
            if place and not printer.newPage():
                raise MendableError(words.NOT_PRINTED, words.NOT_PRINTED_MEND)
            painter.drawImage(QRectF(0, 0, image.width() * times, image.height() * times), image)
    finally:
        painter.end()
