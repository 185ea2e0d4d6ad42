"""Lay a sheet or labels out, and write them as a PDF or as pictures."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from swatchwright.acts.whole_file import write_whole
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.sheet.content import SheetContent
from swatchwright.sheet.label import label_pdf
from swatchwright.sheet.paper import LabelSize, Paper
from swatchwright.sheet.picture import pictures
from swatchwright.sheet.recipe_sheet import sheet_pdf

__all__ = ["PICTURE_DPI", "document_of", "pictures_of", "save_sheet"]

PICTURE_DPI = 150.0
"""Dots to the inch of a picture where nothing else is asked."""

_LEAST_DPI, _MOST_DPI = 50.0, 600.0


def document_of(
    content: SheetContent,
    *,
    paper: Paper = Paper.A4,
    label: LabelSize | None = None,
    fill: bool = False,
) -> bytes:
    """Lay a sheet out as a PDF, or a label where a size of one is given.

    Parameters
    ----------
    content
        What it says.
    paper
        Of a sheet.
    label
        Size of the label; None for a sheet.
    fill
        Whether labels fill a page of them.
    """
    return sheet_pdf(content, paper) if label is None else label_pdf(content, label, fill=fill)


def pictures_of(document: bytes, *, dpi: float = PICTURE_DPI) -> tuple[bytes, ...]:
    """Give the pages of a document of ours as PNG pictures.

    Raises
    ------
    MendableError
        If so many dots to the inch, 50 to 600, cannot be.
    """
    if not _LEAST_DPI <= dpi <= _MOST_DPI:
        raise MendableError(
            say("{dpi:g} dots to the inch were asked for.", dpi=dpi),
            say("Ask for {least:g} to {most:g}.", least=_LEAST_DPI, most=_MOST_DPI),
        )
    return tuple(pictures(document, dpi))


def save_sheet(
    content: SheetContent,
    path: Path,
    *,
    paper: Paper = Paper.A4,
    label: LabelSize | None = None,
    fill: bool = False,
    dpi: float = PICTURE_DPI,
) -> tuple[Path, ...]:
    """Write a sheet or labels to a file, PDF or PNG by its ending, and give what was written.

    Of several pages each becomes a picture of its own, numbered: sheet-1.png, sheet-2.png.

    Parameters
    ----------
    content, paper, label, fill
        As for `document_of`.
    path
        Where to.
    dpi
        Of pictures, 50-600.

    Raises
    ------
    MendableError
        If the ending is another, the dots cannot be, or the file cannot be written.
    """
    kind = path.suffix.lower()
    if kind not in {".pdf", ".png"}:
        raise MendableError(
            say("{file} is neither a PDF nor a PNG by its name.", file=path.name),
            say("End it with .pdf or .png."),
        )
    document = document_of(content, paper=paper, label=label, fill=fill)
    if kind == ".pdf":
        return _written([(path, document)])
    pages = pictures_of(document, dpi=dpi)
    names = [path] if len(pages) == 1 else _numbered(path, len(pages))
    return _written(list(zip(names, pages, strict=True)))


def _numbered(path: Path, count: int) -> list[Path]:
    return [path.with_name(f"{path.stem}-{i}{path.suffix}") for i in range(1, count + 1)]


def _written(files: Sequence[tuple[Path, bytes]]) -> tuple[Path, ...]:
    """Write files, each whole or not at all."""
    for path, data in files:
        write_whole(path, data)
    return tuple(path for path, _ in files)
