"""``swatchwright repaint``."""

from __future__ import annotations

import argparse
from pathlib import Path

from swatchwright.acts.colours import open_photo
from swatchwright.acts.repaint import Ready, ready_to_repaint, recoloured, repainted_whole
from swatchwright.acts.repaint_file import read_strokes, save_picture
from swatchwright.colour.convert import hex_to_lab
from swatchwright.colour.names import colour_name
from swatchwright.commands.codes import ExitCode
from swatchwright.commands.words import (
    colour_json,
    print_json,
    print_notes,
    rectangle,
    reflectance_of,
    three_numbers,
)
from swatchwright.errors import MendableError
from swatchwright.values import Lab

__all__ = ["repaint"]

_HOW = "Write --colour ZONE=L,a,b or ZONE='#rrggbb', as in --colour body=46,34,24."


def repaint(arguments: argparse.Namespace) -> ExitCode:
    """Write a picture of the piece in other colours, and say what to mind."""
    colours = _colours(arguments.colour)
    grey, reflectance = rectangle(arguments.grey, "--grey"), reflectance_of(arguments)
    photo = open_photo(Path(arguments.photo))
    strokes = read_strokes(Path(arguments.strokes), photo)
    ready = ready_to_repaint(photo, strokes, grey=grey, reflectance=reflectance)
    notes = recoloured(ready, colours).notes
    out = save_picture(repainted_whole(ready, colours), Path(arguments.out))
    masks = [] if arguments.masks is None else _masks(ready, Path(arguments.masks))
    if arguments.json:
        print_json(_json(ready, colours, notes, [out, *masks]))
    else:
        _print(ready, colours, notes, [out, *masks])
    return ExitCode.DONE


def _colours(texts: list[str]) -> dict[str, Lab]:
    """Read each ``ZONE=COLOUR``."""
    if not texts:
        raise MendableError("No colour was given.", _HOW)
    return dict(_colour(text) for text in texts)


def _colour(text: str) -> tuple[str, Lab]:
    zone, equals, value = text.partition("=")
    if not equals or not zone.strip():
        raise MendableError(f"--colour was given “{text}”.", _HOW)
    if not value.strip().startswith("#"):
        return zone.strip(), Lab.of_a_surface(*three_numbers(value, "--colour"))
    try:
        return zone.strip(), hex_to_lab(value)
    except ValueError as error:
        raise MendableError(f"--colour was given “{text}”.", _HOW) from error


def _masks(ready: Ready, folder: Path) -> list[Path]:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise MendableError(
            f"{folder} could not be made: {error.strerror}.", "Name a folder of yours."
        ) from error
    view = ready.view
    return [
        save_picture(mask, folder / f"{number}.png")
        for number, mask in enumerate(view.masks, start=1)
    ]


def _shares(ready: Ready) -> dict[str, float]:
    view = ready.view
    return {
        zone: float(mask.mean()) / 255 for zone, mask in zip(view.zones, view.masks, strict=True)
    }


def _json(
    ready: Ready, colours: dict[str, Lab], notes: tuple[str, ...], files: list[Path]
) -> dict[str, object]:
    return {
        "files": [str(path) for path in files],
        "zones": [
            {
                "zone": zone,
                "share": round(share, 4),
                "colour": colour_json(colours[zone]) if zone in colours else None,
            }
            for zone, share in _shares(ready).items()
        ],
        "grey": ready.graded,
        "notes": list(notes),
    }


def _print(
    ready: Ready, colours: dict[str, Lab], notes: tuple[str, ...], files: list[Path]
) -> None:
    for zone, share in _shares(ready).items():
        told = f"{zone}, {100 * share:.0f} % of the picture"
        if zone in colours:
            lab = colours[zone]
            print(f"{told}: {colour_json(lab)['srgb']} {colour_name(lab)}")
        else:
            print(f"{told}: as it is")
    print(f"Written: {', '.join(map(str, files))}")
    print_notes(notes)
