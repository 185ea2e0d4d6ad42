"""``swatchwright recipe``."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from swatchwright.acts.habits import habits
from swatchwright.acts.known import Hiding, hiding_of
from swatchwright.acts.recipes import (
    Order,
    Recipes,
    could_be_closer,
    proof_text,
    recipes_for,
)
from swatchwright.colour.names import closeness, colour_name, off_words
from swatchwright.commands.codes import ExitCode
from swatchwright.commands.many import recipes_of_list
from swatchwright.commands.measures import measures_json, measures_text
from swatchwright.commands.recipe_json import recipes_json
from swatchwright.commands.wishes import wishes_of
from swatchwright.commands.words import (
    chosen_shelf,
    colour_json,
    doubt_text,
    price_text,
    print_json,
    print_notes,
    read_photo_colours,
    typed_by_options,
)
from swatchwright.errors import MendableError
from swatchwright.language.money import use_money
from swatchwright.mixing.recipe import can_be_counted
from swatchwright.values import KnownColour

if TYPE_CHECKING:
    from swatchwright.acts.recipes import MeasuredRecipe

__all__ = ["recipe"]


def recipe(arguments: argparse.Namespace) -> ExitCode:
    """Print the recipes that come closest to the wanted colour, or to each of a list."""
    use_money(habits().money)
    if arguments.list is not None:
        return recipes_of_list(arguments)
    wanted, notes, warnings = _wanted(arguments)
    found = recipes_for(
        wanted,
        chosen_shelf(arguments),
        most_paints=arguments.paints,
        keep=arguments.keep,
        volume=arguments.volume,
        order=Order(arguments.order),
        wishes=wishes_of(arguments),
        proven=arguments.prove,
    )
    if arguments.json:
        told = recipes_json(found, notes, warnings)
        for row, measured in zip(told["recipes"], found.recipes, strict=True):
            row.update(measures_json(measured, found.wanted.lab, arguments))
        print_json(told)
    else:
        _print(found, arguments)
        print_notes((*notes, *found.notes), warnings)
    return ExitCode.DONE if found.shortfall is None else ExitCode.OUT_OF_REACH


Told = tuple[str, ...]


def _wanted(arguments: argparse.Namespace) -> tuple[KnownColour, Told, Told]:
    """Find out which colour is wanted, from the one of three ways that was used."""
    ways = [way for way in ("photo", "lab", "srgb") if getattr(arguments, way) is not None]
    if len(ways) != 1:
        raise MendableError(
            "No wanted colour was given." if not ways else "More than one colour was asked for.",
            "Give one of: a photo, --lab L,a,b, or --srgb #rrggbb.",
        )
    if arguments.photo is None:
        _refuse_photo_options(arguments)
        return typed_by_options(arguments), (), ()
    found = read_photo_colours(arguments)
    pick = 1 if arguments.pick is None else arguments.pick
    if not 1 <= pick <= len(found.colours):
        raise MendableError(
            f"--pick {pick} was asked for, and the photo gave {len(found.colours)} colours.",
            f"Pick from 1 to {len(found.colours)}; swatchwright colours lists them.",
        )
    return found.colours[pick - 1].colour, found.notes, found.warnings


def _refuse_photo_options(arguments: argparse.Namespace) -> None:
    for option in ("grey", "grey_y", "grey_l", "area", "count", "pick"):
        if getattr(arguments, option) is not None:
            raise MendableError(
                f"--{option.replace('_', '-')} goes with a photo, and none was given.",
                "Name the photo, or leave the option out.",
            )


def _print(found: Recipes, arguments: argparse.Namespace) -> None:
    wanted, most_paints = found.wanted.lab, arguments.paints
    print(
        f"Wanted: {colour_name(wanted)}, L* {wanted.L:.1f}, a* {wanted.a:.1f}, b* {wanted.b:.1f} "
        f"({found.wanted.origin})"
    )
    if found.shortfall is not None:
        towards = " and ".join(found.shortfall.towards) or "otherwise"
        print(
            f"{'No two paints' if most_paints == 2 else 'Nothing'} on the shelf "
            f"{'reach' if most_paints == 2 else 'reaches'} it. The nearest stays "
            f"{found.shortfall.delta_e:.1f} CIEDE2000 off ({closeness(found.shortfall.delta_e)}): "
            f"it would have to be {towards}."
        )
    for number, measured in enumerate(found.recipes, start=1):
        _print_recipe(number, measured)
        for line in measures_text(measured, wanted, arguments):
            print(f"    {line}")
    print()
    print(found.why_first)
    closer = could_be_closer(found, found)
    if closer is not None:
        print(proof_text(closer, most_paints))
    print()
    print("Brush a sample on card, dry it, and hold it to the cloth before you mix the batch.")


def _print_recipe(number: int, measured: MeasuredRecipe) -> None:
    r = measured.recipe
    print()
    print(f"{number}.  {r.delta_e:.1f} CIEDE2000 off: {closeness(r.delta_e)}")
    counted = can_be_counted(r.parts.counts, r.shares)
    for paint, share, parts, amount in zip(
        r.paints, r.shares, r.parts.counts, measured.amounts, strict=True
    ):
        told = f"{parts:3} part{'s' if parts > 1 else ' '}  " if counted else ""
        grams = "" if amount.grams is None else f"{amount.grams:8.1f} g"
        print(
            f"    {told}{share:6.1%}  {amount.ml:7.1f} ml "
            f"{grams}  {paint.name} ({paint.id}, {paint.how_known.value})"
        )
    print(
        f"    {f'in parts {off_words(r.parts.delta_e)}; ' if counted else ''}"
        f"dry {colour_json(r.dry)['srgb']}, "
        f"wet {colour_json(r.wet)['srgb']}; "
        + (f"coats to hide: {r.coats}" if r.coats else "needs more than 6 coats to hide")
        + (", a guess" if hiding_of(*r.paints) is Hiding.GUESSED else "")
    )
    pours = [
        f"{'then hold back ' if p.held_back else ''}{p.ml:.1f} ml {p.paint.id}"
        for p in measured.pours
    ]
    if len(pours) > 1:
        print(f"    pour in turn: {', '.join(pours)} until a sample has dried")
    minded = [f"a slip of 5 % in a measure moves it {measured.slip:.1f}"]
    minded.append(f"from light to light it changes by {measured.light_change:.1f}")
    if measured.price is not None:
        minded.append(f"costs {price_text(measured.price)}")
    print(f"    {'; '.join(minded)}")
    if measured.confidence.both:
        print(f"    {doubt_text(measured.confidence)}")
