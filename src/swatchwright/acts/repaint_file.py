"""Strokes in a file, repainted pictures in files, and the sample box to try it on."""

from __future__ import annotations

import json
from dataclasses import dataclass, fields
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.acts.samples import sample_photos
from swatchwright.acts.whole_file import read_whole, write_whole
from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.photo.image import Photo
from swatchwright.photo.repaint_strokes import Marked, Stroke, check_marked
from swatchwright.shelf.decoding import converted
from swatchwright.values import Rect

__all__ = [
    "SampleBox",
    "read_strokes",
    "sample_box",
    "save_picture",
    "save_strokes",
    "strokes_json",
    "strokes_of_json",
]

_MOST_BYTES = 20_000_000
_QUALITY = 92
_KINDS = {".png": "PNG", ".jpg": "JPEG", ".jpeg": "JPEG"}
_HOW = mark("docs/repaint.md tells how it is laid out.")


@dataclass(frozen=True, slots=True)
class SampleBox:
    """The sample photo of a piece, with its strokes and where its grey card is."""

    path: Path
    strokes: Marked
    grey: Rect
    reflectance: float


def sample_box() -> SampleBox | None:
    """Give the sample; None where the program was installed without it."""
    for folder in dict.fromkeys(sample.path.parent for sample in sample_photos()):
        rows = json.loads((folder / "truth.json").read_text(encoding="utf-8")).get("pieces", [])
        for row in rows:
            path = folder / row["file"]
            marked = strokes_of_json((folder / row["strokes"]).read_bytes(), row["strokes"])
            return SampleBox(path, marked, Rect(*row["grey_card"]), row["grey_reflectance"])
    return None


def read_strokes(path: Path, photo: Photo) -> Marked:
    """Read the strokes in a file; where it says no size, they are on the photo as it is.

    Raises
    ------
    MendableError
        If the file cannot be read, does not hold strokes, or a stroke cannot be.
    """
    too_large = mark("{file} has more than 20 MB."), mark("A file of strokes is smaller.")
    text = read_whole(path, _MOST_BYTES, too_large)
    return strokes_of_json(text, path.name, (photo.width, photo.height))


def strokes_of_json(text: bytes, name: str, size: tuple[int, int] | None = None) -> Marked:
    """Read ``{"size": [W, H], "strokes": [{"zone": "body", "points": [[x, y], ...]}, ...]}``.

    Raises
    ------
    MendableError
        If it is no such thing, says something we do not know, or a stroke cannot be.
    """
    import msgspec

    try:
        plain = msgspec.json.decode(text)
        _refuse_unknown(plain, name)
        given = plain if size is None else {"size": size} | plain
        marked = converted(given, Marked)
    except (msgspec.MsgspecError, UnicodeDecodeError, RecursionError) as error:
        raise MendableError(
            say("{file} does not hold strokes: {why}.", file=name, why=error), say(_HOW)
        ) from error
    check_marked(marked)
    return marked


def _refuse_unknown(plain: object, name: str) -> None:
    """Refuse what would be passed over: a misspelt word is not to go unseen."""
    if not isinstance(plain, dict) or not isinstance(plain.get("strokes"), list):
        raise MendableError(say("{file} does not hold strokes.", file=name), say(_HOW))
    known = {field.name for field in fields(Stroke)}
    odd = set(plain) - {"size", "strokes"}
    for stroke in plain["strokes"]:
        odd |= set(stroke) - known if isinstance(stroke, dict) else set()
    if odd:
        told = ", ".join(sorted(map(str, odd))[:3])
        raise MendableError(
            say("{file} says “{told}”.", file=name, told=told),
            say("A stroke has: {names}.", names=", ".join(sorted(known))),
        )


def strokes_json(marked: Marked) -> dict[str, Any]:
    """Give strokes as plain values, as `strokes_of_json` reads them."""
    import msgspec

    plain: dict[str, Any] = msgspec.to_builtins(marked)
    return plain


def save_strokes(marked: Marked, path: Path) -> Path:
    """Write strokes to a file, to be used again.

    Raises
    ------
    MendableError
        If it cannot be written.
    """
    write_whole(path, json.dumps(strokes_json(marked), ensure_ascii=False).encode())
    return path


def save_picture(picture: NDArray[np.uint8], path: Path) -> Path:
    """Write a picture, PNG or JPEG by the ending of its name.

    Parameters
    ----------
    picture
        sRGB bytes, shape (rows, columns, 3).
    path
        Where to.

    Raises
    ------
    MendableError
        If the ending is another or the file cannot be written.
    """
    from io import BytesIO

    from PIL import Image

    kind = _KINDS.get(path.suffix.lower())
    if kind is None:
        raise MendableError(
            say("{file} is neither a PNG nor a JPEG by its name.", file=path.name),
            say("End it with .png or .jpg."),
        )
    written = BytesIO()
    Image.fromarray(picture).save(written, kind, quality=_QUALITY)
    write_whole(path, written.getvalue())
    return path
