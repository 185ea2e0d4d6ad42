"""What is known of paints, as text and as JSON."""

from __future__ import annotations

from typing import Any

from swatchwright.acts.brush_outs import Wanted
from swatchwright.acts.fit import FittedShelf, PaintFit
from swatchwright.acts.known import Hiding, Likely, Off, hiding_of
from swatchwright.acts.mix import own_colours
from swatchwright.acts.paint import PaintLook
from swatchwright.colour.names import colour_name
from swatchwright.commands.words import colour_json, print_notes
from swatchwright.paint.fit.drying import Drying
from swatchwright.shelf.brush_outs import BARE
from swatchwright.values import Lab

__all__ = [
    "asked_json",
    "drying_json",
    "fitted_json",
    "look_json",
    "print_asked",
    "print_drying",
    "print_fitted",
    "print_look",
]


def asked_json(wanted: Wanted) -> dict[str, Any]:
    """Give what to brush out as JSON."""
    return {
        "brush_outs": [
            {
                "id": one.strip.id,
                "mix": [{"id": id_, "parts": parts} for id_, parts in one.strip.mix],
                "over": one.strip.over or ("hides" if one.strip.mix else BARE),
                "coats": one.strip.coats,
                "words": one.words,
                "why": one.why,
            }
            for one in wanted.asked
        ],
        "notes": list(wanted.notes),
    }


def print_asked(wanted: Wanted) -> None:
    """Print what to brush out."""
    for number, one in enumerate(wanted.asked, start=1):
        print(f"{number:3}.  {one.words}: {one.why}")
    if wanted.asked:
        print()
    print_notes(wanted.notes)


def fitted_json(fitted: FittedShelf) -> dict[str, Any]:
    """Give fitted paints as JSON."""
    return {
        "paints": [_fit_json(fit) for fit in fitted.fits],
        "read_back": [
            {
                "film": one.film,
                "read": colour_json(one.read),
                "predicted": colour_json(one.predicted),
                "delta_e_00": round(one.delta_e, 2),
            }
            for one in fitted.read_back
        ],
        "notes": list(fitted.notes),
    }


def _fit_json(fit: PaintFit) -> dict[str, Any]:
    paint = fit.paint
    return {
        "id": paint.id,
        "name": paint.name,
        "how_known": paint.how_known.value,
        "hiding": hiding_of(paint).value,
        "before": None if fit.before is None else fit.before.value,
        "brush_outs": fit.brush_outs,
        "dry": colour_json(own_colours((paint,))[0]),
        **_likely_json(fit.likely),
        "next": {
            "words": fit.next.words,
            "mix": [{"id": id_, "parts": parts} for id_, parts in fit.next.mix],
            "over": "black" if fit.next.over_black else "hides",
            "again": fit.next.again,
            "spread_now": round(fit.next.spread_now, 2),
            "spread_then": round(fit.next.spread_then, 2),
        },
    }


def _likely_json(likely: Likely) -> dict[str, Any]:
    return {
        "known": likely.words,
        "usual_error_with_white": _off_json(likely.with_white),
        "usual_error_crossing": _off_json(likely.crossing),
    }


def _off_json(off: Off | None) -> dict[str, float] | None:
    if off is None:
        return None
    return {"paints": round(off.paints, 2), "whole": round(off.whole, 2)}


def print_fitted(fitted: FittedShelf) -> None:
    """Print fitted paints, and how well they give back what was read."""
    for fit in fitted.fits:
        _print_fit(fit)
        print()
    if fitted.read_back:
        worst = max(fitted.read_back, key=lambda one: one.delta_e)
        middle = sorted(one.delta_e for one in fitted.read_back)[len(fitted.read_back) // 2]
        print(
            f"What was read comes out {middle:.1f} CIEDE2000 off, as a rule; worst is "
            f"{worst.film}, {worst.delta_e:.1f} off."
        )


def _print_fit(fit: PaintFit) -> None:
    paint = fit.paint
    before = "" if fit.before is None else f", {fit.before.value} before"
    films = f"{fit.brush_outs} brush-out{'s' if fit.brush_outs > 1 else ''}"
    print(f"{paint.name} ({paint.id}): {fit.likely.words}, {paint.how_known.value}{before}")
    print(f"    from {films}; {_look(own_colours((paint,))[0])}")
    for line in _likely_text(fit.likely):
        print(f"    {line}")
    if hiding_of(paint) is Hiding.GUESSED:
        print(f"    how it hides is {_HIDING_GUESSED}")
    gone = 1 - fit.next.spread_then / fit.next.spread_now if fit.next.spread_now else 0.0
    if round(gone, 2) > 0:
        what = f"{fit.next.words}, once more" if fit.next.again else fit.next.words
        print(f"    brush out next: {what} (of what is not known {gone:.0%} would go)")


def _likely_text(likely: Likely) -> list[str]:
    told = [("mixed with white", likely.with_white), ("crossed with another", likely.crossing)]
    return [
        f"{words}, usually within {off.whole:.1f} CIEDE2000; {off.paints:.1f} of it from the paints"
        for words, off in told
        if off is not None
    ]


_HIDING_GUESSED = "a guess, as no coat of it over black was read"


def _hides(look: PaintLook) -> str:
    least, most = look.coats_span
    if look.known.hiding is Hiding.GUESSED:
        return f"perhaps {_coats(look.coats)}: {_HIDING_GUESSED}"
    coats = _coats(least) if least == most else f"{least} coats or more"
    if least is not None and most is not None and least < most:
        coats = f"{least} to {most} coats"
    return f"{coats}; one coat gives {look.one_coat:.1%}"


def _coats(count: int | None) -> str:
    if count is None:
        return "more than 6 coats"
    return f"{count} coat" if count == 1 else f"{count} coats"


def _look(lab: Lab) -> str:
    srgb = colour_json(lab)["srgb"]
    return f"{srgb}  L* {lab.L:.1f}  a* {lab.a:.1f}  b* {lab.b:.1f}  {colour_name(lab)}"


def look_json(look: PaintLook) -> dict[str, Any]:
    """Give how a paint is known and looks as JSON."""
    paint, finish = look.paint, look.paint.finish
    return {
        "id": paint.id,
        "name": paint.name,
        "family": paint.family.value,
        "how_known": paint.how_known.value,
        "hiding": look.known.hiding.value,
        "dry": colour_json(look.dry),
        "wet": colour_json(look.wet),
        "drying_delta_e_00": round(look.drying, 2),
        "finish": {
            "glare": round(finish.glare, 3),
            "wet_scattering": round(finish.wet_scattering, 3),
            "milk": round(finish.milk, 3),
            "own": paint.own_finish is not None,
        },
        "let_downs": [
            {"white": one.white.id, "parts": one.parts, "dry": colour_json(one.dry)}
            for one in look.let_downs
        ],
        "coats_to_hide": look.coats,
        "coats_to_hide_span": list(look.coats_span),
        "one_coat_contrast": round(look.one_coat, 3),
        "known": look.known.words or None,
        **({} if look.likely is None else _likely_json(look.likely)),
    }


def print_look(look: PaintLook) -> None:
    """Print how a paint is known and how it looks."""
    paint = look.paint
    known = f", {look.known.words}" if look.known.words else ""
    print(f"{paint.name} ({paint.id}), {paint.family.value}: {paint.how_known.value}{known}")
    if look.likely is not None:
        for line in _likely_text(look.likely):
            print(f"    {line}")
    print(f"dry   {_look(look.dry)}")
    print(f"wet   {_look(look.wet)}")
    own = "learnt from a stroke of it" if paint.own_finish else f"as {paint.family.value} does"
    print(f"dries {look.drying:.1f} CIEDE2000 away from wet, {own}")
    for one in look.let_downs:
        print(f"1 : {one.parts:<2} {_look(one.dry)}  (with {one.white.id})")
    print(f"hides in {_hides(look)}")
    if paint.note:
        print(paint.note)


def drying_json(drying: Drying) -> dict[str, Any]:
    """Give what was learnt of drying as JSON."""
    return {
        "id": drying.paint.id,
        "learnt": [
            {
                "name": one.name,
                "family": round(one.usual, 3),
                "own": round(one.own, 3),
                "give_or_take": round(one.spread, 3),
            }
            for one in drying.learnt
        ],
        "wet_delta_e_00": {
            "before": round(drying.off_before, 2),
            "after": round(drying.off_after, 2),
        },
        "dry_moved_delta_e_00": round(drying.dry_moved, 2),
    }


_TOLD, _STILL_OFF = 0.05, 3.5

_MEANING = {
    "glare": "share of its surface's own reflection that is seen",
    "wet_scattering": "scattering while wet, as a factor on the dry",
    "milk": "milkiness while wet, per mm",
}


def print_drying(drying: Drying) -> None:
    """Print what was learnt of drying."""
    paint = drying.paint
    print(f"{paint.name} ({paint.id}), {paint.family.value}")
    for one in drying.learnt:
        print(
            f"    {_MEANING[one.name]}: {one.own:.2f}, give or take {one.spread:.2f} "
            f"(the family {one.usual:.2f})"
        )
    print(
        f"The wet stroke was predicted {drying.off_before:.1f} CIEDE2000 off by its family, and is "
        f"{drying.off_after:.1f} off now."
    )
    if drying.off_after > _STILL_OFF:
        print("No paint of its family dries so far; see whether both are of the same stroke.")
    if drying.dry_moved >= _TOLD:
        print(f"Its dry colour by itself moves by {drying.dry_moved:.1f} with its glare.")
