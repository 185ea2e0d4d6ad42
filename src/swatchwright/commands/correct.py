"""``swatchwright correct`` and ``swatchwright fan``."""

from __future__ import annotations

import argparse

from swatchwright.acts.correct import Correction, correct_pot, neighbours, room_words
from swatchwright.acts.stack_file import layer_json
from swatchwright.colour.names import closeness, off_words
from swatchwright.commands.codes import ExitCode
from swatchwright.commands.finish import layers_given
from swatchwright.commands.layer_text import over_part
from swatchwright.commands.words import (
    amount_of,
    chosen_shelf,
    colour_json,
    print_json,
    three_numbers,
)
from swatchwright.errors import MendableError
from swatchwright.mixing.asked import Asked
from swatchwright.mixing.fan import Neighbour
from swatchwright.mixing.mend import Additions
from swatchwright.values import Lab

__all__ = ["correct", "fan", "more_room_json"]


def correct(arguments: argparse.Namespace) -> ExitCode:
    """Print what to add to a pot."""
    found = correct_pot(
        chosen_shelf(arguments),
        [amount_of(text) for text in arguments.pot],
        wanted=_colour(arguments.lab, "--lab"),
        seen=_colour(arguments.seen, "--seen"),
        asked=_asked(arguments),
        tub=arguments.tub,
        most_paints=arguments.add,
        over=over_part(layers_given(arguments), arguments.part),
    )
    if arguments.json:
        print_json(_correction_json(found))
    else:
        _print_correction(found)
    return ExitCode.DONE


def fan(arguments: argparse.Namespace) -> ExitCode:
    """Print the neighbours of a mix."""
    found = neighbours(
        chosen_shelf(arguments),
        [amount_of(text) for text in arguments.parts],
        volume=arguments.volume,
    )
    if arguments.json:
        print_json({"neighbours": [_neighbour_json(n) for n in found]})
        return ExitCode.DONE
    for n in found:
        rows = zip(n.parts.counts, n.ml, n.paints, strict=True)
        told = ", ".join(f"{count} of {p.name} ({ml:.1f} ml)" for count, ml, p in rows)
        print(f"{n.word:12} {n.apart:3.1f}  {colour_json(n.dry)['srgb']}  {told}")
    return ExitCode.DONE


def _colour(text: str | None, option: str) -> Lab | None:
    return None if text is None else Lab.of_a_surface(*three_numbers(text, option))


def _asked(arguments: argparse.Namespace) -> tuple[Asked, float] | None:
    if arguments.ask is None:
        return None
    try:
        return Asked(arguments.ask.strip().lower()), arguments.dial
    except ValueError as error:
        raise MendableError(
            f"--ask was given “{arguments.ask}”.", f"Use one of: {', '.join(Asked)}."
        ) from error


def _correction_json(found: Correction) -> dict[str, object]:
    steps = found.additions.steps
    return {
        "now": colour_json(found.now),
        "aim": colour_json(found.aim),
        "before_delta_e_00": round(found.additions.before, 2),
        "add": [
            {
                "id": step.paint.id,
                "name": step.paint.name,
                "ml": step.ml,
                "after": colour_json(step.after),
                "delta_e_00": round(step.delta_e, 2),
            }
            for step in steps
        ],
        "delta_e_00": round(found.additions.delta_e, 2),
        "volume_ml": round(found.additions.volume, 1),
        "over": [layer_json(layer) for layer in found.over],
        "with_more_room": more_room_json(found.roomier),
    }


def more_room_json(roomier: Additions | None) -> dict[str, float] | None:
    """Give what more room in the pot would come to, where it would come nearer."""
    if roomier is None:
        return None
    return {"volume_ml": round(roomier.volume, 1), "delta_e_00": round(roomier.delta_e, 2)}


def _neighbour_json(n: Neighbour) -> dict[str, object]:
    rows = zip(n.paints, n.parts.counts, n.ml, strict=True)
    return {
        "word": n.word,
        "delta_e_00": round(n.apart, 2),
        "paints": [{"id": p.id, "name": p.name, "parts": count, "ml": ml} for p, count, ml in rows],
        "dry": colour_json(n.dry),
    }


def _print_correction(found: Correction) -> None:
    added = found.additions
    print(
        f"The pot holds {found.pot.volume:g} ml and is {added.before:.1f} CIEDE2000 off: "
        f"{closeness(added.before)}."
    )
    if not added.steps:
        print("Nothing that may be added brings it nearer.")
        _print_room(found)
        return
    for step in added.steps:
        print(
            f"Add {step.ml:.1f} ml of {step.paint.name} ({step.paint.id}): then "
            f"{colour_json(step.after)['srgb']}, {off_words(step.delta_e)}."
        )
    print(f"The pot then holds {added.volume:.0f} ml. Stir, brush a sample and let it dry.")
    _print_room(found)


def _print_room(found: Correction) -> None:
    if found.roomier is not None:
        print(room_words(found.roomier))
