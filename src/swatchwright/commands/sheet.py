"""``swatchwright sheet``."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from swatchwright.acts.jobs import id_of
from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.recipes import typed_colour
from swatchwright.acts.sheet import (
    PICTURE_DPI,
    CodeRecipe,
    Paper,
    Units,
    content_of,
    content_of_mix,
    label_named,
    paper_named,
    read_code,
    save_sheet,
)
from swatchwright.acts.sheet_on_shelf import measures_told
from swatchwright.colour.difference import JUST_SEEN, delta_e_2000
from swatchwright.colour.names import closeness
from swatchwright.commands.codes import ExitCode
from swatchwright.commands.layer_text import layer_of_text
from swatchwright.commands.sheet_json import code_json, content_json
from swatchwright.commands.store_words import named_store
from swatchwright.commands.words import amount_of, chosen_shelf, print_json, three_numbers
from swatchwright.errors import MendableError
from swatchwright.measures.kitchen import Country
from swatchwright.paint.layers import Stack

if TYPE_CHECKING:
    from swatchwright.acts.sheet import SheetContent

__all__ = ["sheet"]


def sheet(arguments: argparse.Namespace) -> ExitCode:
    """Write a sheet or labels, or read a code back."""
    asked = [arguments.job is not None, bool(arguments.recipe), arguments.read is not None]
    if sum(asked) != 1:
        raise MendableError(
            "Nothing was said of what the sheet is." if not any(asked) else "Too much was said.",
            "Give one of --job JOB, --recipe ID=PARTS ... or --read TEXT.",
        )
    if arguments.read is not None:
        return _read(arguments)
    _check(arguments)
    content = _content(arguments)
    written = () if arguments.out is None else _save(content, arguments)
    if arguments.json:
        print_json({**content_json(content), "files": [str(path) for path in written]})
        return ExitCode.DONE
    for path in written:
        print(f"Written: {path}")
    for gap in content.gaps:
        print(f"Check: {gap}")
    return ExitCode.DONE


def _check(arguments: argparse.Namespace) -> None:
    """Refuse what has no meaning together, before any work is done."""
    only = {
        "--job": [name for name in ("zone", "store") if getattr(arguments, name) is not None],
        "--recipe": [n for n in ("title", "client", "lab", "layer") if getattr(arguments, n)],
    }
    for what, names in only.items():
        if names and not getattr(arguments, what.removeprefix("--")):
            raise MendableError(f"--{names[0]} was given without {what}.", "Leave it out.")
    if arguments.job is not None and arguments.shelf is not None:
        raise MendableError("--shelf was given for a job.", "A job keeps its own paints.")
    if arguments.fill and arguments.label is None:
        raise MendableError("--fill was given without --label.", "Give the size of the label.")
    if arguments.paper is not None and arguments.label is not None:
        raise MendableError("--paper was given with --label.", "A label has a page of its own.")
    if arguments.out is None and not arguments.json:
        raise MendableError(
            "It was not said where to write the sheet.", "Add --out FILE.pdf, FILE.png or --json."
        )


def _content(arguments: argparse.Namespace) -> SheetContent:
    units = _units(arguments)
    if arguments.job is not None:
        with named_store(arguments) as store:
            return content_of(
                store,
                id_of(store, arguments.job),
                zone=arguments.zone,
                volume=arguments.volume,
                units=units,
                day=arguments.day,
            )
    return content_of_mix(
        chosen_shelf(arguments),
        [amount_of(text) for text in arguments.recipe],
        title=arguments.title,
        client=arguments.client,
        wanted=None if arguments.lab is None else typed_colour(*three_numbers(arguments.lab)),
        layers=Stack(tuple(layer_of_text(text) for text in arguments.layer)),
        volume=arguments.volume,
        units=units,
        day=arguments.day,
    )


def _units(arguments: argparse.Namespace) -> Units:
    """Read in what amounts are told."""
    words = [word.strip().lower() for word in arguments.units.split(",") if word.strip()]
    spoons = None if arguments.spoons is None else _country(arguments.spoons)
    if not set(words) <= {"ml", "g"} or (not words and spoons is None):
        raise MendableError(f"--units was given “{arguments.units}”.", "Give ml, g or ml,g.")
    return Units(ml="ml" in words, grams="g" in words, spoons=spoons)


def _country(text: str) -> Country:
    wanted = text.strip().lower()
    begun = [country for country in Country if wanted and country.lower().startswith(wanted)]
    if len(begun) != 1:
        raise MendableError(f"--spoons was given “{text}”.", f"Use one of: {', '.join(Country)}.")
    return begun[0]


def _save(content: SheetContent, arguments: argparse.Namespace) -> tuple[Path, ...]:
    return save_sheet(
        content,
        Path(arguments.out),
        paper=Paper.A4 if arguments.paper is None else paper_named(arguments.paper),
        label=None if arguments.label is None else label_named(arguments.label),
        fill=arguments.fill,
        dpi=PICTURE_DPI if arguments.dpi is None else arguments.dpi,
    )


# --- reading -------------------------------------------------------------------------------------


def _read(arguments: argparse.Namespace) -> ExitCode:
    """Print the recipe that a code holds, and whether the shelf still gives its colour."""
    given = sys.stdin.read(100_000) if arguments.read == "-" else arguments.read
    recipe = read_code(given)
    off = _off(recipe, arguments)
    if arguments.json:
        print_json(
            {**code_json(recipe), "shelf_delta_e_00": None if off is None else round(off, 2)}
        )
        return ExitCode.DONE
    print(", ".join(text for text in _facts(recipe) if text) or "A recipe")
    for paint, told in zip(recipe.paints, measures_told(recipe), strict=True):
        print(f"{told:>11}  {paint.name or paint.id} ({paint.id})")
    for word, lab in (("wanted", recipe.wanted), ("dry", recipe.dry)):
        if lab is not None:
            print(f"{word:6}  L* {lab.L:.1f}  a* {lab.a:.1f}  b* {lab.b:.1f}")
    print("Mix it: " + " ".join(f"{paint.id}={paint.parts:.6g}" for paint in recipe.paints))
    print(_off_words(off))
    return ExitCode.DONE


def _facts(recipe: CodeRecipe) -> list[str]:
    return [
        recipe.title,
        recipe.zone,
        "" if recipe.batch is None else f"batch {recipe.batch}",
        recipe.day,
        "" if recipe.ml is None else f"{recipe.ml:g} ml",
    ]


def _off(recipe: CodeRecipe, arguments: argparse.Namespace) -> float | None:
    """Give how far the shelf's mix now dries from the code's colour; None where it cannot tell."""
    if recipe.dry is None:
        return None
    try:
        look = look_of_mix(chosen_shelf(arguments), [(p.id, p.parts) for p in recipe.paints])
    except MendableError:
        if arguments.shelf is not None:
            raise
        return None
    return float(delta_e_2000(recipe.dry.triple, look.dry.triple))


def _off_words(off: float | None) -> str:
    if off is None:
        return "Check: not all of its paints are on the shelf; name yours with --shelf."
    if off < JUST_SEEN:
        return "With the paints of the shelf it dries the same."
    return (
        f"Check: with the paints of the shelf it dries {off:.1f} CIEDE2000 from what it was "
        f"({closeness(off)}). Brush a sample first."
    )
