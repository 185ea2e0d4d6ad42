"""Say what to brush out, and on what, so that the paints of a shelf can be fitted."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from swatchwright.acts.known import is_well_known, likely_errors, white_of
from swatchwright.errors import MendableError
from swatchwright.language import mark, say, say_count
from swatchwright.paint.fit.doubt import mix_covariances, spread_after
from swatchwright.paint.paints import HowKnown, Paint
from swatchwright.shelf.brush_outs import Strip, sheet_text
from swatchwright.shelf.shelf import Shelf

__all__ = ["Asked", "Wanted", "brush_outs_wanted", "wanted_text"]

# Parts of white to one of the paint: the masstone, half and half, and well let down.
_LET_DOWNS = (1, 10)
_MORE = (1, 2, 4, 10, 20)

# Mixes with white whose spread is to shrink.
_USED = (0.5, 0.2, 0.07, 0.02)

# Of a reading and of what the formulas get wrong, in each direction of CIELAB.
_ERROR = 1.3

_MOST_ASKED = 200


@dataclass(frozen=True, slots=True, eq=False)
class Asked:
    """A strip to brush and to read, with what to do and why, in words."""

    strip: Strip
    words: str
    why: str


@dataclass(frozen=True, slots=True)
class Wanted:
    """What to brush out, in the order to do it, with what to know before."""

    asked: tuple[Asked, ...]
    notes: tuple[str, ...]


_NOTES = (
    mark(
        "Stir each paint well, measure by volume, and let every strip dry for a day before it is "
        "read."
    ),
    mark("Photograph all strips at once beside the grey card, or read them with an instrument."),
    mark("Where it says “hides”, lay coats on white card until one more changes nothing."),
)
_ENOUGH = mark("All of them are well known; nothing more is asked for.")
_NO_WHITE = mark("There is no white among the paints; with one, far more could be learnt.")


def brush_outs_wanted(
    shelf: Shelf, ids: Sequence[str] = (), *, card: bool = True, white: str | None = None
) -> Wanted:
    """List the brush-outs by which the paints of a shelf can be fitted.

    A paint of which nothing was brushed out is asked for on its own, let down with white, and in
    one coat over a card; one that was fitted is asked for the one mix that would teach most.

    Parameters
    ----------
    shelf
        The paints.
    ids
        Which of them, or new ones by the id they are to have; if none are named, all but those
        that were measured elsewhere.
    card
        Whether there is a card of black and white.
    white
        Id of the white to let down with; the lightest of the shelf if None.

    Raises
    ------
    MendableError
        If the white is not on the shelf, or more than 200 strips would be asked for.
    """
    there = {paint.id: paint for paint in shelf.paints}
    chosen = list(dict.fromkeys(ids)) or [p.id for p in shelf.paints if not _measured(p)]
    for id_ in chosen:
        if not id_ or any(c in id_ for c in " =\t"):
            raise MendableError(
                say("“{id}” is no id.", id=id_),
                say("An id has no spaces or equals signs, such as deep-blue."),
            )
    lightest = shelf.paint(white) if white else white_of(shelf.paints)
    asked: list[Asked] = []
    for id_ in chosen:
        paint = there.get(id_)
        mixed_with = None if lightest is None or lightest.id == id_ else lightest
        if paint is not None and mixed_with is not None and _carriers_differ(paint, mixed_with):
            mixed_with = None
        if paint is not None and paint.spread is not None:
            asked += _one_more(shelf, paint, mixed_with)
        else:
            asked += _from_scratch(id_, mixed_with, card=card)
    if len(asked) > _MOST_ASKED:
        raise MendableError(
            say(
                "{strips} strips would have to be brushed for {paints} paints.",
                strips=len(asked),
                paints=len(chosen),
            ),
            say("Name the paints you mix from most, a few at a time."),
        )
    if any(one.strip.over for one in asked):
        asked = [*_bare(), *asked]
    notes = _NOTES if asked else (_ENOUGH,)
    if asked and lightest is None:
        notes = (*notes, _NO_WHITE)
    return Wanted(tuple(asked), tuple(say(note) for note in notes))


def wanted_text(wanted: Wanted) -> str:
    """Write the sheet to fill in, as `read_sheet` reads it."""
    return sheet_text([one.strip for one in wanted.asked], [one.words for one in wanted.asked])


def _measured(paint: Paint) -> bool:
    """Tell whether a paint was measured or fitted elsewhere, so that there is nothing to ask."""
    return paint.spread is None and paint.how_known in {HowKnown.MEASURED, HowKnown.FITTED}


def _carriers_differ(paint: Paint, white: Paint) -> bool:
    return paint.finish.waterborne is not white.finish.waterborne


def _bare() -> list[Asked]:
    why = say("what shows through a coat")
    return [
        Asked(Strip(0, "black", ()), say("the bare black of the card"), why),
        Asked(Strip(0, "white", ()), say("the bare white of the card"), why),
    ]


def _from_scratch(id_: str, white: Paint | None, *, card: bool) -> list[Asked]:
    """Ask for the masstone, let-downs and one coat over a card."""
    strips = [
        Asked(
            Strip(0, f"{id_}-1", ((id_, 1.0),)),
            say("{paint} on its own, laid until it hides", paint=id_),
            say("its own colour"),
        )
    ]
    if white is not None:
        strips += [_let_down(id_, white.id, parts, n) for n, parts in enumerate(_LET_DOWNS, 2)]
    if card:
        film = f"{id_}-{len(strips) + 1}"
        strips += [
            Asked(Strip(0, film, ((id_, 1.0),), over=over, coats=1.0), words, say("how it hides"))
            for over, words in (
                ("black", say("one even coat of {paint} over the black of the card", paint=id_)),
                ("white", say("one even coat of {paint} over the white of the card", paint=id_)),
            )
        ]
    return strips


def _let_down(id_: str, white: str, parts: int, number: int) -> Asked:
    return Asked(
        Strip(0, f"{id_}-{number}", ((id_, 1.0), (white, float(parts)))),
        say_count(
            "1 part {paint} with {count} part {white}, laid until it hides",
            "1 part {paint} with {count} parts {white}, laid until it hides",
            parts,
            paint=id_,
            white=white,
        ),
        say("how strong it is in white"),
    )


def _one_more(shelf: Shelf, paint: Paint, white: Paint | None) -> list[Asked]:
    """Ask for the mix that would shrink the spread of a fitted paint's mixtures most."""
    likely = likely_errors(shelf, paint)
    if white is None or is_well_known(likely.off):
        return []
    left = {}
    for parts in _MORE:
        shares = (1 / (1 + parts), parts / (1 + parts))
        spread = spread_after([paint, white], shares, _ERROR)
        left[parts] = _spread_of_mixes(replace(paint, spread=spread), white)
    best = min(left, key=lambda parts: left[parts])
    asked = _let_down(paint.id, white.id, best, 1)
    now = _spread_of_mixes(paint, white)
    why = say(
        "it is {known}; of what is not known {share:.0%} would go",
        known=likely.words,
        share=1 - left[best] / now,
    )
    return [replace(asked, strip=replace(asked.strip, id=f"{paint.id}-more"), why=why)]


def _spread_of_mixes(paint: Paint, white: Paint) -> float:
    """Give the root-mean-square spread of mixes with white, units of CIELAB."""
    exact = replace(white, spread=None)
    shares = [(share, 1 - share) for share in _USED]
    found = mix_covariances([paint, exact], shares, formula=0.0)
    return float(np.sqrt(np.trace(found, axis1=1, axis2=2).mean()))
