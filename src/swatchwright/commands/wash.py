"""``swatchwright wash``."""

from __future__ import annotations

import argparse

from swatchwright.acts.client_wish import Stands, Wanted
from swatchwright.acts.correct import room_words
from swatchwright.acts.finish import build_up
from swatchwright.acts.finish_values import BuildUp, Pass
from swatchwright.acts.finish_words import layer_words
from swatchwright.acts.recoat import PER_M2, Recoat, ToPaint, surface_of
from swatchwright.acts.stack_file import layer_json
from swatchwright.acts.ways import Way, WayKind, Ways, of_every_wash, ways_to
from swatchwright.colour.difference import ACCEPTED, delta_e_2000
from swatchwright.colour.names import closeness, colour_name
from swatchwright.commands.codes import ExitCode
from swatchwright.commands.correct import more_room_json
from swatchwright.commands.finish import layers_given, primer_of, print_colour
from swatchwright.commands.layer_text import over_part, paint_and_parts, share_left
from swatchwright.commands.words import (
    amount_of,
    chosen_shelf,
    colour_json,
    print_json,
    print_notes,
    three_numbers,
)
from swatchwright.errors import MendableError
from swatchwright.mixing.asked import Asked
from swatchwright.paint.layers import Layer, LayerKind
from swatchwright.paint.paints import Paint
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab

__all__ = ["wash"]

_LEFT = 0.2
_MIXED = (Stands.PAINTED, Stands.POT)
"""How far a mix may have come: a mix is given, so something is mixed."""
_NO_PLACE = "Give a wash to look at with --wash ID, or where to go with --ask, --as or --lab."


def wash(arguments: argparse.Namespace) -> ExitCode:
    """Print what a wash does, or which wash takes a mix where it is wanted."""
    where = [arguments.ask, arguments.grey_as, arguments.lab]
    asked = any(w is not None for w in where)
    if asked == bool(arguments.wash):
        what = "Both a wash and where to go were given." if asked else "No wash was given."
        raise MendableError(what, _NO_PLACE)
    if not asked and arguments.stands is not None:
        raise MendableError(
            "--stands was given with a wash to look at.",
            "Leave it out, or say where to go with --ask, --as or --lab.",
        )
    if not asked and arguments.part is not None:
        raise MendableError(
            "--part was given with a wash to look at.",
            "Leave it out, or say where to go with --ask, --as or --lab.",
        )
    if not asked and (arguments.layer or arguments.layers is not None):
        raise MendableError(
            "Layers over a wash to look at were given.",
            "Look at the whole stack with: swatchwright finish. Here they go with --ask, --as or "
            "--lab.",
        )
    shelf = chosen_shelf(arguments)
    return _reverse(arguments, shelf) if asked else _forward(arguments, shelf)


def _left(arguments: argparse.Namespace) -> float:
    return _LEFT if arguments.left is None else share_left(arguments.left)


def _forward(arguments: argparse.Namespace, shelf: Shelf) -> ExitCode:
    glaze = arguments.glaze
    if glaze and arguments.left is not None:
        raise MendableError("A glaze is not wiped, and --left was given.", "Leave one of them out.")
    layer = Layer(
        LayerKind.GLAZE if glaze else LayerKind.WASH,
        tuple(paint_and_parts(text) for text in arguments.wash),
        water=arguments.water,
        left=None if glaze else _left(arguments),
    )
    built = build_up(
        shelf,
        [amount_of(text) for text in arguments.parts],
        layer,
        passes=arguments.passes,
        ground=primer_of(arguments),
    )
    if arguments.json:
        print_json(_built_json(layer, built))
    else:
        words = layer_words(layer, _paints_in(layer, shelf))
        _print_built(words, built)
    return ExitCode.DONE


def _built_json(layer: Layer, built: BuildUp) -> dict[str, object]:
    return {
        "layer": layer_json(layer),
        "passes": [
            {
                "count": p.count,
                "film_um": round(p.film_um, 2),
                "flat": colour_json(p.flat),
                "dry": colour_json(p.dry) | {"name": colour_name(p.dry)},
                "grain": colour_json(p.grain),
                "grain_range_delta_e_00": round(_range(p), 2),
            }
            for p in built.passes
        ],
        "tends_to": colour_json(built.tends_to),
    }


def _range(one: Pass) -> float:
    return float(delta_e_2000(one.flat.triple, one.grain.triple))


def _print_built(words: str, built: BuildUp) -> None:
    print(f"{words[0].upper()}{words[1:]}:")
    for p in built.passes:
        print_colour(f"{p.count} pass{'' if p.count == 1 else 'es'}", p.dry)
        if p.count:
            print(
                f"            flats {colour_json(p.flat)['srgb']}, grain "
                f"{colour_json(p.grain)['srgb']}: {_range(p):.1f} apart; {p.film_um:.1f} µm dry"
            )
    print_colour("tends to", built.tends_to)


def _reverse(arguments: argparse.Namespace, shelf: Shelf) -> ExitCode:
    stands = _stands(arguments)
    found = ways_to(
        shelf,
        [amount_of(text) for text in arguments.parts],
        _wanted(arguments),
        ground=primer_of(arguments),
        left=_left(arguments),
        pot=arguments.pot,
        tub=arguments.tub,
        only=None if arguments.only is None else [i.strip() for i in arguments.only.split(",")],
        keep=arguments.keep,
        over=over_part(layers_given(arguments), arguments.part),
        zone=None if arguments.part is None else arguments.part.strip(),
        stands=stands,
        surface=_surface(arguments, stands),
    )
    if arguments.json:
        print_json(_ways_json(found, stands))
    else:
        _print_ways(found, shelf)
    best = min((way.delta_e for way in found.ways), default=found.before)
    return ExitCode.DONE if best <= ACCEPTED else ExitCode.OUT_OF_REACH


def _stands(arguments: argparse.Namespace) -> Stands | None:
    """Read how far it has come; None where that is not said."""
    if arguments.stands is None:
        return None
    stands = {one.value: one for one in _MIXED}.get(arguments.stands.strip().lower())
    if stands is None:
        raise MendableError(
            f"--stands was given “{arguments.stands}”.", f"Use one of: {', '.join(_MIXED)}."
        )
    return stands


def _surface(arguments: argparse.Namespace, stands: Stands | None) -> ToPaint:
    """Give what a full new coat would go on; a square metre where that is not said."""
    area, coats = arguments.area, arguments.new_coats
    if area is None and coats is None:
        return PER_M2
    if stands is not Stands.PAINTED:
        raise MendableError(
            "--area and --new-coats are for a full new coat, and that is for a painted piece.",
            "Give them with --stands painted.",
        )
    return surface_of(1.0 if area is None else area, 2 if coats is None else coats)


def _wanted(arguments: argparse.Namespace) -> Wanted:
    asked = None
    if arguments.ask is not None:
        try:
            asked = Asked(arguments.ask.strip().lower()), arguments.dial
        except ValueError as error:
            raise MendableError(
                f"--ask was given “{arguments.ask}”.", f"Use one of: {', '.join(Asked)}."
            ) from error
    return Wanted(asked, _colour(arguments.grey_as, "--as"), _colour(arguments.lab, "--lab"))


def _colour(text: str | None, option: str) -> Lab | None:
    return None if text is None else Lab.of_a_surface(*three_numbers(text, option))


def _ways_json(found: Ways, stands: Stands | None) -> dict[str, object]:
    return {
        "now": colour_json(found.now),
        "aim": colour_json(found.aim),
        "before_delta_e_00": round(found.before, 2),
        "ways": [_way_json(way) for way in found.ways],
        "notes": list(found.notes),
        "over": [layer_json(layer) for layer in found.over],
        "stands": None if stands is None else stands.value,
    }


def _way_json(way: Way) -> dict[str, object]:
    steps = () if way.additions is None else way.additions.steps
    return {
        "kind": way.kind.value,
        "layer": None if way.layer is None else layer_json(way.layer),
        "add": [{"id": s.paint.id, "name": s.paint.name, "ml": s.ml} for s in steps],
        "with_more_room": more_room_json(way.roomier),
        "new_coat": None if way.recoat is None else _recoat_json(way.recoat),
        "flat": colour_json(way.flat),
        "dry": colour_json(way.dry) | {"name": colour_name(way.dry)},
        "grain": colour_json(way.grain),
        "delta_e_00": round(way.delta_e, 2),
        "felt_delta_e_00": round(way.felt, 2),
        "risks": [
            {
                "of": risk.kind.value,
                "size": None if risk.size is None else round(risk.size, 1),
                "words": risk.words,
            }
            for risk in way.risks
        ],
    }


def _recoat_json(found: Recoat) -> dict[str, object]:
    recipe = found.recipe
    rows = zip(recipe.paints, recipe.shares, recipe.parts.counts, found.ml, strict=True)
    return {
        "area_m2": found.over.area,
        "coats": found.over.coats.paint,
        "mix_ml": found.volume,
        "paints": [
            {"id": p.id, "name": p.name, "share": share, "parts": parts, "ml": ml}
            for p, share, parts, ml in rows
        ],
        "hides_in_coats": recipe.coats,
    }


def _paints_in(layer: Layer, shelf: Shelf) -> list[Paint]:
    return [shelf.paint(id_) for id_, _ in layer.paints]


def _print_ways(found: Ways, shelf: Shelf) -> None:
    print_colour("now", found.now)
    print_colour("wanted", found.aim)
    print(f"  As it is: {found.before:.1f} CIEDE2000 off: {closeness(found.before)}.")
    if found.over:
        told = ", then ".join(layer_words(layer, _paints_in(layer, shelf)) for layer in found.over)
        print(f"  All of it is seen and judged with this on top: {told}.")
    common = of_every_wash(found)
    for number, way in enumerate(found.ways, 1):
        print(f"{number}. {_way_words(way)}")
        print_colour("dry", way.dry)
        if way.kind is WayKind.WASH:
            print_colour("flats", way.flat)
            print_colour("grain", way.grain)
        print(f"  {way.delta_e:.1f} off on the whole: {closeness(way.delta_e)}.")
        if way.roomier is not None:
            print(f"  {room_words(way.roomier)}")
        for risk in way.risks:
            if risk.words not in common:
                print(f"  - {risk.words}")
    for words in common:
        print(f"Of every wash: {words}")
    print_notes(found.notes)


def _way_words(way: Way) -> str:
    if way.layer is not None and way.washing is not None:
        words = layer_words(way.layer, way.washing.paints)
        return f"Over it, {words}; wipe back to {100 * way.washing.left:.0f} %."
    if way.recoat is not None:
        return _recoat_words(way.recoat)
    steps = () if way.additions is None else way.additions.steps
    told = " and ".join(f"{s.ml:.1f} ml of {s.paint.name} ({s.paint.id})" for s in steps)
    return f"Stir into the pot {told}."


def _recoat_words(found: Recoat) -> str:
    recipe, coats = found.recipe, found.over.coats.paint
    rows = zip(recipe.paints, recipe.parts.counts, found.ml, strict=True)
    told = ", ".join(f"{n} of {p.name} ({p.id}), {ml:.1f} ml" for p, n, ml in rows)
    often = "once" if coats == 1 else f"{coats} times"
    return (
        f"A full new coat: mix afresh {told}; {found.volume:.0f} ml, to paint "
        f"{found.over.area:g} m2 {often}."
    )
