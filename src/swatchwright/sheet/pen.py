"""Drawing on pages in millimetres from their top left corner, into a PDF."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from io import BytesIO
from typing import Any

from swatchwright.language import ENGLISH, language
from swatchwright.sheet.ink import RGB
from swatchwright.sheet.lettering import NARROW, Style, font_name, one_line, printed, text_width

__all__ = ["Box", "Pen"]

_MM = 72 / 25.4


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle: its top left corner, width and height, mm."""

    x: float
    y: float
    width: float
    height: float

    @property
    def bottom(self) -> float:
        """Where it ends below, mm."""
        return self.y + self.height


class Pen:
    """A pen on the pages of a document.

    Parameters
    ----------
    width, height
        Of a page, mm.
    title, subject
        Of the document, for those who list files.
    """

    def __init__(self, width: float, height: float, title: str, subject: str) -> None:
        from reportlab.pdfgen.canvas import Canvas

        self.width, self.height = width, height
        self._file = BytesIO()
        # Without a date in it the same sheet is the same file, byte for byte.
        self._canvas: Any = Canvas(
            self._file,
            pagesize=(width * _MM, height * _MM),
            invariant=1,
            pageCompression=1,
            lang="en-GB" if language() == ENGLISH else language(),
            initialFontName=font_name(bold=False),
        )
        self._canvas.setTitle(one_line(title))
        self._canvas.setSubject(subject)
        self._canvas.setCreator("Swatchwright")

    def next_page(self) -> None:
        """End a page."""
        self._canvas.showPage()

    def done(self) -> bytes:
        """End the document and give it."""
        self._canvas.save()
        return self._file.getvalue()

    # --- letters ---------------------------------------------------------------------------------

    def text(
        self, x: float, y: float, text: str, style: Style, *, ink: RGB | None = None, end: float = 0
    ) -> None:
        """Write one line whose top is at y; x is its left, or its right for end=1, 0.5 its middle.

        A line with nothing in it is left out.
        """
        text = printed(text)
        if not text:
            return
        left = x - end * text_width(text, style)
        line = self._canvas.beginText(left * _MM, (self.height - y - style.rise) * _MM)
        line.setFont(font_name(bold=style.bold), style.size)
        line.setHorizScale(100 * NARROW)
        line.setFillColorRGB(*(ink or (style.grey,) * 3))
        line.textOut(text)
        self._canvas.drawText(line)

    def lines(
        self, x: float, y: float, texts: Sequence[str], style: Style, *, ink: RGB | None = None
    ) -> float:
        """Write lines below each other and give where the next would begin."""
        for text in texts:
            self.text(x, y, text, style, ink=ink)
            y += style.leading
        return y

    # --- shapes ----------------------------------------------------------------------------------

    def rect(
        self, box: Box, *, fill: RGB | None = None, line: RGB | None = None, thick: float = 0.2
    ) -> None:
        """Draw a rectangle, filled, outlined or both; thickness in mm."""
        self._prepare(fill, line, thick)
        self._canvas.rect(
            *self._corner(box),
            box.width * _MM,
            box.height * _MM,
            stroke=int(line is not None),
            fill=int(fill is not None),
        )

    def rects(self, boxes: Sequence[Box], fill: RGB) -> None:
        """Fill many rectangles at once, with no seam where they touch."""
        path = self._canvas.beginPath()
        for box in boxes:
            path.rect(*self._corner(box), box.width * _MM, box.height * _MM)
        self._prepare(fill, None, 0)
        self._canvas.drawPath(path, stroke=0, fill=1)

    def stroke(
        self, x1: float, y1: float, x2: float, y2: float, *, ink: RGB, thick: float = 0.2
    ) -> None:
        """Draw a straight line."""
        self._prepare(None, ink, thick)
        self._canvas.line(x1 * _MM, (self.height - y1) * _MM, x2 * _MM, (self.height - y2) * _MM)

    def disc(
        self, x: float, y: float, radius: float, *, fill: RGB, line: RGB | None = None
    ) -> None:
        """Draw a disc about a point."""
        self._prepare(fill, line, 0.25)
        self._canvas.circle(
            x * _MM,
            (self.height - y) * _MM,
            radius * _MM,
            stroke=int(line is not None),
            fill=1,
        )

    @contextmanager
    def inside(self, box: Box) -> Iterator[None]:
        """Let nothing be drawn outside a rectangle meanwhile."""
        self._canvas.saveState()
        path = self._canvas.beginPath()
        path.rect(*self._corner(box), box.width * _MM, box.height * _MM)
        self._canvas.clipPath(path, stroke=0, fill=0)
        yield
        self._canvas.restoreState()

    def _corner(self, box: Box) -> tuple[float, float]:
        """Give the lower left corner of a box, from the lower left of the page, points."""
        return box.x * _MM, (self.height - box.bottom) * _MM

    def _prepare(self, fill: RGB | None, line: RGB | None, thick: float) -> None:
        if fill is not None:
            self._canvas.setFillColorRGB(*fill)
        if line is not None:
            self._canvas.setStrokeColorRGB(*line)
            self._canvas.setLineWidth(thick * _MM)
