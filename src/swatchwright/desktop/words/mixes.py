"""The words of the mixes: how near, how much, how they are poured, and what falls short."""

from __future__ import annotations

from math import ceil

from swatchwright.acts.known import Hiding, hiding_of
from swatchwright.acts.reach import Reach
from swatchwright.acts.recipes import Confidence, MeasuredRecipe, Recipes, proof_text
from swatchwright.colour.difference import UNSEEN
from swatchwright.colour.names import closeness, difference_words, off_words
from swatchwright.desktop.words.bits import (
    SCALE_TIP,
    amount,
    first_low,
    first_up,
    millilitres,
    parts_word,
)
from swatchwright.language import bound, figure, listed, say, say_count
from swatchwright.language.money import money_in_use, priced
from swatchwright.mixing.fan import Neighbour
from swatchwright.mixing.ranking import FORGIVING, TOUCHY
from swatchwright.mixing.recipe import Shortfall, can_be_counted
from swatchwright.paint.paints import HowKnown, Paint
from swatchwright.values import Lab

__all__ = [
    "BRUSH_FIRST",
    "REACH",
    "amount_line",
    "body_name",
    "closeness_line",
    "cost_line",
    "dial_text",
    "figures_line",
    "figures_tip",
    "finish_line",
    "hiding_line",
    "in_parts",
    "known_line",
    "light_change_line",
    "mix_rows",
    "mix_text",
    "neighbour_text",
    "neighbour_word",
    "pour_text",
    "reach_text",
    "sample_line",
    "shortfall_line",
    "touch_line",
    "way_line",
    "why_line",
]

BRUSH_FIRST = say("Brush a sample, dry it and hold it to the cloth before you mix the batch.")
REACH = say("What the shelf reaches")

_KNOWN_BY = {
    HowKnown.MEASURED: say("Paints known by: measured colour"),
    HowKnown.FITTED: say("Paints known by: fitted colour"),
    HowKnown.GUESSED: say("Paints known by: guessed colour"),
    HowKnown.INVENTED: say("Paints known by: invented colour"),
}

_LIGHT_SHOWS = 2.0


def closeness_line(recipe: MeasuredRecipe) -> str:
    """Say how near the dry mix comes to the wanted colour, in a figure and its word."""
    return off_words(recipe.recipe.delta_e)


def way_line(recipe: MeasuredRecipe, wanted: Lab) -> str:
    """Say which way the dry mix differs from the wanted colour; empty if it is not to be seen."""
    ways = difference_words(wanted, recipe.recipe.dry)
    return say("Dry it is {ways} than wanted", ways=listed(ways)) if ways else ""


def figures_line(recipe: MeasuredRecipe) -> str:
    """Say what becomes of the figure where the mix is poured by whole parts."""
    r = recipe.recipe
    if len(r.paints) == 1:
        return ""
    if not in_parts(recipe):
        return say("Measured to the ml")
    if figure(r.delta_e, ".1f") == figure(r.parts.delta_e, ".1f") or r.parts.delta_e <= UNSEEN:
        return say("The same in whole parts")
    return say("In parts {near}", near=off_words(r.parts.delta_e))


def in_parts(recipe: MeasuredRecipe) -> bool:
    """Tell whether the recipe is told in parts: few enough to count, and like the exact ml."""
    return can_be_counted(recipe.recipe.parts.counts, recipe.recipe.shares)


def figures_tip() -> str:
    """Explain the figures."""
    return SCALE_TIP + say(
        "<p>Here: the dry mix from the wanted colour shown above it, poured by the exact ml or "
        "gram, and by whole parts.</p>"
    )


def mix_text(number: int, measured: MeasuredRecipe) -> str:
    """Tell a mix as text to paste: parts, amounts and how near it comes."""
    r = measured.recipe
    head = say(
        "Mix {number}, {volume}. {closeness}.",
        number=number,
        volume=millilitres(sum(pour.ml for pour in measured.amounts)),
        closeness=closeness_line(measured),
    )
    told = [head, *mix_rows(measured), cost_line(measured), known_line(r.paints), BRUSH_FIRST]
    return "\n".join(told)


def mix_rows(measured: MeasuredRecipe) -> tuple[str, ...]:
    """Tell what to measure of each paint, and in which order to pour, line by line."""
    r = measured.recipe
    counted = in_parts(measured)
    rows = tuple(
        (f"{parts_word(count)} " if counted else "")
        + f"{_name(paint, r.paints)}: {millilitres(pour.ml)}"
        + ("" if pour.grams is None else f", {amount(pour.grams)} g")
        for paint, count, pour in zip(r.paints, r.parts.counts, measured.amounts, strict=True)
    )
    return (*rows, pour_text(measured)) if len(r.paints) > 1 else rows


def _name(paint: Paint, paints: tuple[Paint, ...]) -> str:
    """Name a paint; with its id where another of them has the same name."""
    same = sum(one.name == paint.name for one in paints)
    return paint.name if same < 2 else f"{paint.name} ({paint.id})"


def pour_text(measured: MeasuredRecipe) -> str:
    """Say in which order to pour."""
    pours = measured.pours
    last = pours[-1]
    whole = [p for p in pours if p.paint.id != last.paint.id]
    strong = [p for p in pours if p.paint.id == last.paint.id and not p.held_back]
    told = [f"{millilitres(p.ml)} {p.paint.name}" for p in whole]
    then = say(
        "then {paint}, {whole} in all: {third} three times, and the last {last} only once a "
        "sample has dried",
        paint=last.paint.name,
        whole=millilitres(sum(p.ml for p in strong) + last.ml),
        third=millilitres(strong[0].ml),
        last=millilitres(last.ml),
    )
    return say("Pour {pours}.", pours="; ".join([*told, then]))


def neighbour_word(n: Neighbour) -> str:
    """Say in which direction a neighbour lies."""
    return say(n.word)


def neighbour_text(n: Neighbour) -> str:
    """Say how to mix a neighbour for a brush-out."""
    rows = zip(n.parts.counts, n.paints, n.ml, strict=True)
    told = [
        f"{parts_word(count)} {paint.name} ({figure(ml, '.1f')} ml)" for count, paint, ml in rows
    ]
    return f"{first_up(neighbour_word(n))}: {', '.join(told)}."


def dial_text(percent: int) -> str:
    """Say how far a dial stands."""
    steps = {
        0: say("not at all"),
        25: say("a quarter"),
        33: say("a third"),
        50: say("half"),
        100: say("all the way"),
    }
    return steps.get(percent, f"{percent} %")


def body_name(axes: tuple[str, str]) -> str:
    """Name a picture of the body of colours for a screen reader."""
    return f"{REACH}: {', '.join(axes)}"


def reach_text(found: Reach, *, asked: bool) -> str:
    """Say whether the shelf reaches the wanted colour, and what to buy if that was asked."""
    if found.shortfall is None:
        return say(
            "Inside: this shelf mixes the wanted colour, {off:.1f} off ({seen}).",
            off=found.delta_e,
            seen=closeness(found.delta_e),
        )
    told = [
        say(
            "Outside: the nearest mix is {off:.1f} off ({seen}). It would have to be {towards}.",
            off=found.delta_e,
            seen=closeness(found.delta_e),
            towards=_towards(found.shortfall),
        )
    ]
    if asked and not found.one_more:
        told.append(
            say("No one paint of the other shelf brings it within 1 ({seen}).", seen=closeness(1))
        )
    told += [
        say(
            "With {paint} it comes within {off:.1f} ({seen}).",
            paint=m.paint.name,
            off=m.delta_e,
            seen=closeness(m.delta_e),
        )
        for m in found.one_more[:5]
    ]
    return " ".join(told)


def _towards(shortfall: Shortfall) -> str:
    """Say which way the wanted colour lies."""
    return listed(shortfall.towards) or say("otherwise")


def amount_line(ml: float | None, grams: float | None) -> str:
    """Say how much to measure out exactly, as parts are rounded; what is None is left out."""
    told = [
        "" if ml is None else say("exactly {amount}", amount=millilitres(ml)),
        "" if grams is None else bound(f"{amount(grams)} g"),
    ]
    return "  ·  ".join(text for text in told if text)


def cost_line(recipe: MeasuredRecipe) -> str:
    """Say how many coats hide, and what the paint costs, in her money.

    Where that has no name yet it is called so; invented prices are in nobody's money.
    """
    guessed = hiding_of(*recipe.recipe.paints) is Hiding.GUESSED
    hides = hiding_line(recipe.recipe.coats, guessed=guessed)
    if recipe.price is None:
        return hides
    price = priced(recipe.price)
    if money_in_use() or _all_invented(recipe.recipe.paints):
        return say("{hides}; costs {price}", hides=hides, price=price)
    return say("{hides}; costs {price} in your money", hides=hides, price=price)


def hiding_line(coats: int | None, *, guessed: bool = False) -> str:
    """Say how many coats hide what is below, and whether that is a guess."""
    if coats is None:
        return say("Needs more than 6 coats to hide: prime in a like colour")
    if guessed:
        return say_count("Hides in {count} coat, a guess", "Hides in {count} coats, a guess", coats)
    return say_count("Hides in {count} coat", "Hides in {count} coats", coats)


def touch_line(recipe: MeasuredRecipe) -> str:
    """Say how much a slip of the measure shows."""
    if len(recipe.recipe.paints) == 1:
        return ""
    if recipe.slip < FORGIVING:
        return say("Forgiving to measure")
    if recipe.slip < TOUCHY:
        return say("A 5 % slip: {seen}", seen=closeness(recipe.slip))
    return say("Touchy: a 5 % slip shows")


def light_change_line(recipe: MeasuredRecipe) -> str:
    """Say whether lamp light may part the mix from the cloth; empty where it will hardly."""
    if recipe.light_change < _LIGHT_SHOWS:
        return ""
    return say("Look at it under a lamp too")


def why_line(found: Recipes, closer: float | None, most_paints: int) -> str:
    """Say why the first is first, and that no other mix would be closer.

    Parameters
    ----------
    found
        The mixes that are shown.
    closer
        By how much another mix could be closer still, CIEDE2000; None where that is open.
    most_paints
        How many paints a mix may have.
    """
    why = say("Mix 1: {why}", why=first_low(found.why_first))
    return why if closer is None else f"{why} {proof_text(closer, most_paints)}"


def finish_line(paints: tuple[Paint, ...]) -> str:
    """Say when finishes are mixed; empty where they are not."""
    one = len({paint.family for paint in paints}) == 1
    return "" if one else say("Mixed finishes: try the sheen")


def known_line(paints: tuple[Paint, ...], *, prices: bool = False) -> str:
    """Say how the paints of a recipe are known; beside a price, that an invented one is too."""
    if _all_invented(paints):
        return say("Invented paints and prices") if prices else say("Invented paints")
    ways = {paint.how_known for paint in paints}
    return _KNOWN_BY[[way for way in HowKnown if way in ways][-1]]


def _all_invented(paints: tuple[Paint, ...]) -> bool:
    return all(paint.how_known is HowKnown.INVENTED for paint in paints)


def shortfall_line(shortfall: Shortfall, most_paints: int, *, possible: bool) -> str:
    """Say how far the paints fall short, and which way."""
    if not possible:
        which = say("No surface can have this colour, whatever the paint")
    elif most_paints == 2:
        which = say("No two paints of this shelf reach it (three may)")
    else:
        which = say("Nothing on this shelf reaches it")
    return say(
        "{which}: the nearest found stays {off:.1f} off ({seen}). It would have to be {towards}.",
        which=which,
        off=shortfall.delta_e,
        seen=closeness(shortfall.delta_e),
        towards=_towards(shortfall),
    )


def sample_line(confidence: Confidence) -> str:
    """Send the painter to the sample."""
    if confidence.both < 1:
        return say("Brush a sample on card and let it dry before you mix the batch.")
    doubt = ceil(confidence.both)
    return say(
        "Untried, a mix lands about {doubt} from the cloth ({seen}), as often more as less. So "
        "brush a sample, dry it and hold it to the cloth before you mix the batch.",
        doubt=doubt,
        seen=closeness(doubt),
    )
