"""Pages of a PDF as pictures."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import closing
from io import BytesIO

__all__ = ["pictures"]

_POINTS = 72.0


def pictures(pdf: bytes, dpi: float) -> Iterator[bytes]:
    """Render each page of a PDF as a PNG of so many dots to the inch."""
    import pypdfium2

    with closing(pypdfium2.PdfDocument(pdf)) as document:
        for page in document:
            bitmap = page.render(scale=dpi / _POINTS)
            file = BytesIO()
            bitmap.to_pil().convert("RGB").save(file, "PNG", dpi=(dpi, dpi), optimize=False)
            bitmap.close()
            page.close()
            yield file.getvalue()
