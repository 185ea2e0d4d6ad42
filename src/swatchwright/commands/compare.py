"""``swatchwright compare``."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import Any

from swatchwright.acts.compare import (
    MOST_MIXES,
    ROOM,
    Candidate,
    Compared,
    Laid,
    Sight,
    State,
    compared,
)
from swatchwright.acts.compare_words import (
    LIGHT_WORDS,
    STATE_WORDS,
    drift_words,
    figure_words,
    light_notes,
    light_of_word,
    near_words,
    turn_words,
    usual_words,
    way_words,
)
from swatchwright.acts.recipes import Recipes, recipes_for
from swatchwright.acts.stack_file import read_stack
from swatchwright.colour.names import colour_name, off_words
from swatchwright.colour.spectrum import Light
from swatchwright.commands.codes import ExitCode
from swatchwright.commands.layer_text import layer_of_text, over_part
from swatchwright.commands.words import (
    chosen_shelf,
    colour_json,
    print_json,
    print_notes,
    typed_by_options,
)
from swatchwright.errors import MendableError
from swatchwright.paint.layers import Stack
from swatchwright.values import KnownColour

__all__ = ["compare"]

_USUAL = {State.WASHED: "wash", State.WAXED: "wax"}


def compare(arguments: argparse.Namespace) -> ExitCode:
    """Print how mixes stand beside the wanted colour in each state and light."""
    wanted, lights, states = _wanted(arguments), _lights(arguments), _states(arguments)
    stack = _stack(arguments)
    if not 1 <= arguments.keep <= MOST_MIXES:
        raise MendableError(
            f"{arguments.keep} mixes were asked for.", f"Compare from 1 to {MOST_MIXES}."
        )
    shelf = chosen_shelf(arguments)
    found = recipes_for(wanted, shelf, most_paints=arguments.paints, keep=arguments.keep)
    told = compared(wanted, found.recipes, states=states, lights=lights, stack=stack, shelf=shelf)
    if arguments.json:
        print_json(_json(told, found))
    else:
        _print(told, found)
    return ExitCode.DONE if found.shortfall is None else ExitCode.OUT_OF_REACH


def _wanted(arguments: argparse.Namespace) -> KnownColour:
    if (arguments.lab is None) == (arguments.srgb is None):
        raise MendableError(
            "No wanted colour was given." if arguments.lab is None else "Two colours were given.",
            "Give one of --lab L,a,b and --srgb '#rrggbb'.",
        )
    return typed_by_options(arguments)


def _lights(arguments: argparse.Namespace) -> tuple[Light, ...]:
    if not arguments.light:
        return ROOM
    found = [_light(word) for word in arguments.light]
    return tuple(light for light in ROOM if light in found)


def _light(word: str) -> Light:
    light = light_of_word(word)
    if light is None:
        known = ", ".join(name.lower().replace(" ", "-") for name in LIGHT_WORDS.values())
        raise MendableError(f"--light was given “{word}”.", f"Give one of: {known}.")
    return light


def _states(arguments: argparse.Namespace) -> tuple[State, ...]:
    asked = {
        State.DRY: True,
        State.WET: arguments.wet,
        State.WASHED: arguments.washed,
        State.WAXED: arguments.waxed,
    }
    return tuple(state for state, ask in asked.items() if ask)


def _stack(arguments: argparse.Namespace) -> Stack | None:
    if arguments.layers is not None and arguments.layer:
        raise MendableError(
            "Layers were given both by --layer and by --layers.", "Give them one way."
        )
    given = arguments.layers is not None or bool(arguments.layer)
    if given and not (arguments.washed or arguments.waxed):
        raise MendableError(
            "Layers were given, and nothing is asked to be seen under them.",
            "Add --washed, --waxed or both.",
        )
    if arguments.layers is not None:
        return over_part(read_stack(Path(arguments.layers)), arguments.part)
    if not given:
        return None
    return over_part(Stack(tuple(layer_of_text(text) for text in arguments.layer)), arguments.part)


# --- JSON ----------------------------------------------------------------------------------------


def _json(told: Compared, found: Recipes) -> dict[str, Any]:
    short = found.shortfall
    return {
        "wanted": {**colour_json(told.wanted.lab), "origin": told.wanted.origin},
        "wanted_in": {
            LIGHT_WORDS[sight.light]: {
                **colour_json(sight.shown),
                "lab_in_light": [round(v, 2) for v in sight.lab.triple],
                "turns": list(sight.turns),
            }
            for sight in told.sights
        },
        "mixes": [_mix_json(one) for one in told.candidates],
        "shortfall": None
        if short is None
        else {"delta_e_00": round(short.delta_e, 2), "towards": list(short.towards)},
        "notes": [*light_notes(told.lights), *told.notes(told.states), *found.notes],
    }


def _mix_json(one: Candidate) -> dict[str, Any]:
    recipe = one.recipe.recipe
    rows = zip(recipe.paints, recipe.shares, recipe.parts.counts, strict=True)
    return {
        "paints": [
            {"id": paint.id, "name": paint.name, "share": share, "parts": parts}
            for paint, share, parts in rows
        ],
        "under": {laid.state.value: list(laid.words) for laid in one.laid},
        "under_the_usual": [laid.state.value for laid in one.laid if laid.usual],
        "seen": [_sight_json(sight) for sight in one.sights],
    }


def _sight_json(sight: Sight) -> dict[str, Any]:
    return {
        "state": sight.state.value,
        "light": LIGHT_WORDS[sight.light],
        **colour_json(sight.shown),
        "lab_in_light": [round(v, 2) for v in sight.lab.triple],
        "delta_e_00": round(sight.delta_e, 2),
        "least_delta_e_00": round(sight.least, 2),
        "most_delta_e_00": round(sight.most, 2),
        "near": near_words(sight),
        "ways": list(sight.ways),
        "ways_sure": sight.ways_sure,
        "drift_delta_e_00": round(sight.drift, 2),
        "drift_most_delta_e_00": round(sight.drift_most, 2),
        "drift": drift_words(sight),
        "usual_error_delta_e_00": round(sight.usual, 1),
    }


# --- text ----------------------------------------------------------------------------------------


def _print(told: Compared, found: Recipes) -> None:
    wanted = told.wanted.lab
    print(f"Wanted: {colour_name(wanted)}, L* {wanted.L:.1f}, a* {wanted.a:.1f}, b* {wanted.b:.1f}")
    for sight in told.sights:
        turn = turn_words(sight)
        if turn:
            print(f"  in {LIGHT_WORDS[sight.light]} it looks {turn}")
    if found.shortfall is not None:
        print(f"Nothing found reaches it. The nearest: {off_words(found.shortfall.delta_e)}.")
    for number, one in enumerate(told.candidates, start=1):
        _print_mix(number, one)
    print()
    print_notes((*light_notes(told.lights), *told.notes(told.states), *found.notes))
    print()
    print("Brush a sample on card, dry it, and hold it to the cloth in the room it is for.")


def _print_mix(number: int, one: Candidate) -> None:
    recipe = one.recipe.recipe
    print()
    parts = [
        f"{count} {paint.name}"
        for paint, count in zip(recipe.paints, recipe.parts.counts, strict=True)
    ]
    print(f"{number}.  {', '.join(parts)}")
    laid = {row.state: row for row in one.laid}
    for state in dict.fromkeys(sight.state for sight in one.sights):
        under = _under(laid[state]) if state in laid else ""
        sights = [sight for sight in one.sights if sight.state is state]
        usual = usual_words(sights[0])
        print(f"    {STATE_WORDS[state]}{under}{f': {usual}' if usual else ''}")
        for sight in sights:
            _print_sight(sight)


def _under(laid: Laid) -> str:
    """Say what lies over a mix, and whether it is the usual, since none was given."""
    told = f", under {'; then '.join(laid.words)}"
    return f"{told}, the usual {_USUAL[laid.state]}" if laid.usual else told


def _print_sight(sight: Sight) -> None:
    drift, way = drift_words(sight), way_words(sight)
    print(
        f"      {LIGHT_WORDS[sight.light]:10} {colour_json(sight.shown)['srgb']}  "
        f"{figure_words(sight)}"
        + (f"; {way}" if way else "")
        + (f"; from daylight it {drift}" if drift else "")
    )
