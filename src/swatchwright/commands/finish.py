"""``swatchwright finish``."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from pathlib import Path

from swatchwright.acts.compare_words import LIGHT_WORDS
from swatchwright.acts.finish import preview
from swatchwright.acts.finish_paints import keep_finish
from swatchwright.acts.finish_values import Look, StepLook
from swatchwright.acts.jobs import Changes, Store, job_of
from swatchwright.acts.layering import Primer
from swatchwright.acts.layers_by_part import OnParts, by_part, check_parts
from swatchwright.acts.mixes_in_use import WHOLE_PIECE
from swatchwright.acts.stack_file import layer_json, read_stack
from swatchwright.colour.names import closeness, colour_name
from swatchwright.commands.codes import ExitCode
from swatchwright.commands.for_job import keep_for_job
from swatchwright.commands.layer_text import layer_of_text
from swatchwright.commands.words import (
    amount_of,
    chosen_shelf,
    colour_json,
    print_json,
    print_notes,
    three_numbers,
)
from swatchwright.errors import MendableError
from swatchwright.paint.layers import Stack, check_stack
from swatchwright.values import Lab

__all__ = ["finish", "layers_given", "primer_of", "print_colour"]


def finish(arguments: argparse.Namespace) -> ExitCode:
    """Print a mix under layers."""
    stack = layers_given(arguments)
    if arguments.layers is None and not arguments.layer:
        raise MendableError(
            "No layer was given.", 'Add one, as in --layer "wax", or a file with --layers.'
        )
    check_stack(stack)
    parts = [amount_of(text) for text in arguments.parts]
    shelf, primer = chosen_shelf(arguments), primer_of(arguments)
    asked = () if arguments.part is None else (_part(arguments.part),)
    looks = [(on, preview(shelf, parts, on.layers, primer)) for on in by_part(stack, asked)]

    def keep(store: Store, id_: str) -> Changes:
        check_parts(job_of(store, id_), stack)
        return keep_finish(store, id_, stack, shelf)

    keep_for_job(arguments, keep)
    if arguments.json:
        print_json(_json(looks))
    else:
        _print_all(looks)
    return ExitCode.DONE


def _part(text: str) -> str:
    """Give the part that was named; empty for what goes on all of the piece."""
    return "" if text.strip() == WHOLE_PIECE else text.strip()


def _json(looks: Sequence[tuple[OnParts, Look]]) -> dict[str, object]:
    """Give what is seen; of parts that get other layers that of each, after the rest."""
    rest = next((look for on, look in looks if "" in on.parts), looks[0][1])
    each = [{"parts": list(on.parts), **_look_json(look)} for on, look in looks]
    return {**_look_json(rest), **({"by_part": each} if len(looks) > 1 else {})}


def _look_json(look: Look) -> dict[str, object]:
    return {"steps": [_step_json(step) for step in look.steps], "notes": list(look.notes)}


def _print_all(looks: Sequence[tuple[OnParts, Look]]) -> None:
    for number, (on, look) in enumerate(looks):
        if len(looks) > 1:
            print(f"{'' if number == 0 else chr(10)}{on.words[:1].upper()}{on.words[1:]}:")
        _print(look)


def primer_of(arguments: argparse.Namespace) -> Primer | None:
    """Give what is below the coat, where it was said."""
    if arguments.primer is None:
        return None
    colour = Lab.of_a_surface(*three_numbers(arguments.primer, "--primer"))
    return Primer(colour, arguments.coats)


def layers_given(arguments: argparse.Namespace) -> Stack:
    """Give the layers that were given, by option or in a file; none where none were."""
    if arguments.layers is not None and arguments.layer:
        raise MendableError(
            "Layers were given both by --layer and by --layers.", "Give them one way."
        )
    if arguments.layers is not None:
        return read_stack(Path(arguments.layers))
    return Stack(tuple(layer_of_text(text) for text in arguments.layer))


def _step_json(step: StepLook) -> dict[str, object]:
    return {
        "layer": None if step.layer is None else layer_json(step.layer),
        "words": step.words,
        "film_um": None if step.film_um is None else round(step.film_um, 2),
        "flat": colour_json(step.flat),
        "dry": colour_json(step.dry) | {"name": colour_name(step.dry)},
        "grain": colour_json(step.grain),
        "grain_range_delta_e_00": round(step.grain_range, 2),
        "wet": colour_json(step.wet),
        "lights": {LIGHT_WORDS[light]: colour_json(lab) for light, lab in step.lights},
        "change_delta_e_00": round(step.change, 2),
        "doubt_delta_e_00": round(step.doubt, 1),
    }


def print_colour(state: str, lab: Lab) -> None:
    """Print a colour on a line of its own."""
    print(
        f"  {state:9} {colour_json(lab)['srgb']}  L* {lab.L:5.1f}  a* {lab.a:5.1f}"
        f"  b* {lab.b:5.1f}  {colour_name(lab)}"
    )


def _print(look: Look) -> None:
    for number, step in enumerate(look.steps):
        film = "" if step.film_um is None else f", {step.film_um:.1f} µm of dry paint"
        seen = closeness(step.change)
        moved = f", {step.change:.1f} from the step before ({seen})" if number else ""
        print(f"{number}. {step.words[0].upper()}{step.words[1:]}{film}{moved}")
        print_colour("dry", step.dry)
        print_colour("wet", step.wet)
        for light, lab in step.lights[1:]:
            print_colour(LIGHT_WORDS[light], lab)
        if step.grain_range >= 0.05:
            print_colour("flats", step.flat)
            print_colour("grain", step.grain)
            seen = closeness(step.grain_range)
            print(f"  flats and grain are {step.grain_range:.1f} CIEDE2000 apart: {seen}")
        print(f"  give or take {step.doubt:.1f}: {closeness(step.doubt)}")
    print_notes(look.notes)
