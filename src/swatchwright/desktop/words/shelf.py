"""The words of the page of the shelf."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from swatchwright.acts.known import Grade, Hiding
from swatchwright.acts.shelf_view import PaintLine, WholeLook
from swatchwright.colour.names import closeness
from swatchwright.desktop.words.bits import SCALE_TIP
from swatchwright.errors import MendableError
from swatchwright.language import bound, figure, say, say_count, say_in
from swatchwright.language.money import priced
from swatchwright.paint.fit.drying import Drying
from swatchwright.paint.paints import HowKnown, Paint

HEADING = say("Shelf")
HINT = say("Your paints, how well each is known, and what you ask of all mixes.")
LOOKING = say("Looking at the paints…")

GET_TO_KNOW = say("Get to know your paints")
GET_TO_KNOW_TIP = say(
    "Brush out a few cards and photograph them: what each paint does in a mix is worked out"
)
GET_TO_KNOW_HINT = say("Choose, brush out, let dry, photograph, and have the paints worked out.")
DRY_ALIKE = say("Wet and dry of one stroke")
DRY_ALIKE_TIP = say("Teach a paint how it dries, from one stroke read wet and dry")
KEEP_SHELF = say("Keep these paints")
KEEP_SHELF_TIP = say(
    "Keep them as your shelf: it is there again next time, with what is left of each"
)
NONE_KEPT = (
    say("You have kept no paints yet: those of the demonstration are used."),
    say("Press “Add a paint…” on the page Shelf, or open a shelf file and keep its paints."),
)
BACK_TO_SHELF = say("Back to the shelf")
COLUMNS = (
    say_in("use a paint", "Use"),
    "",
    say("Paint"),
    say_in("of a paint", "Finish"),
    say("Known by"),
    say_in("what remains", "Left"),
    say("Tins, ml"),
    say("A litre"),
)
COLUMN_TIPS = (
    say("Untick what is not to be used; the mixes follow."),
    say("Its dry colour by itself"),
    "",
    say("The finish family"),
    say(
        "<p>Where it is known from, how well, and how far a mix with it is usually off: up to 4 is "
        "good.</p>"
    )
    + SCALE_TIP,
    say("What is left of it"),
    say("Sizes it is sold in"),
    say("Price of a litre in the cheapest tin"),
)
NOT_SAID = "–"

DRY, WET = say("dry"), say("wet")
OVER_CARD = say("coats over black and white")
OVER_CARD_GUESSED = say("coats over black and white, guessed")
GUESSED = say_in("of how a paint hides", "guessed")
LEFT_NOW = say_in("what remains", "Left")
TAKE_DOWN, TIN_BOUGHT = say("Take down"), say("A tin bought")
KEEP_FIRST = say(
    "Keep these paints, and you can take down here what is left of each, change them, and take "
    "them off."
)
UNKNOWN_LEFT = say("not known")

HOW = {
    HowKnown.MEASURED: say("measured with an instrument"),
    HowKnown.FITTED: say("worked out from brushed cards"),
    HowKnown.GUESSED: say("guessed from little"),
    HowKnown.INVENTED: say("invented for the demonstration: no such paint is sold"),
}

_HOW_SHORT = {
    HowKnown.MEASURED: say("measured"),
    HowKnown.FITTED: say_in("how a paint is known", "from cards"),
    HowKnown.GUESSED: say("guessed"),
    HowKnown.INVENTED: say("invented"),
}

GRADE_SHORT = {
    Grade.WELL: say("well known"),
    Grade.ENOUGH: say("well enough known"),
    Grade.ROUGHLY: say("roughly known"),
    Grade.HARDLY: say("hardly known"),
}

NEAR = (Grade.WELL, Grade.ENOUGH)
NEAR_GUESS = say("guessed, but near")
"""Of a paint whose mixes come near though little of it was read: no guess is called well known."""

DOUBT_TIP = say(
    "<p>How far a mix with it is usually off: the shorter the better. Up to 4 is as good as "
    "mixing gets.</p>"
)
DOUBT_TIP += SCALE_TIP

TO_KNOW_BETTER = say(
    "To know it better, brush more cards of it: “Get to know your paints” says which help most."
)
KEPT = say("Kept. They are on the shelf in use, and recipes carry their doubt from now on.")

# --- wet and dry ---------------------------------------------------------------------------------

STROKE_HINT = say(
    "Brush one stroke until it hides. Photograph it wet beside the grey card, out of its glint, "
    "and again when it is dry, in the same light. Or type what you read."
)
WHICH_PAINT = say("Paint")
STROKE = (say("the stroke wet"), say("the stroke dry"))
LEARN = say("Learn how it dries")
LEARNING = say("Learning how it dries…")
BOTH_FIRST = say("Both colours are needed: the wet one and the dry one.")
KEEP_DRYING = say("Keep it on the shelf")
WET_TYPICAL, WET_OWN, WET_SEEN = say("as its kind dries"), say("as it dries"), say("wet, as read")


def trouble(error: MendableError) -> str:
    """Say what is wrong and what to do."""
    return f"{error.what} {error.mend}"


def known_cell(line: PaintLine) -> str:
    """Say in a cell how a paint is known, how well, and how far mixes with it are off."""
    how, known = _HOW_SHORT[line.paint.how_known], line.known
    if known.off is None or known.grade is None:
        return how
    if is_near_guess(line.paint, known.grade):
        return say("{known}:\noff by about {off}", known=NEAR_GUESS, off=rounded(known.off))
    return say(
        "{how}, {known}:\noff by about {off}",
        how=how,
        known=GRADE_SHORT[known.grade],
        off=rounded(known.off),
    )


def is_guess(paint: Paint) -> bool:
    """Tell whether a paint is guessed."""
    return paint.how_known is HowKnown.GUESSED


def is_near_guess(paint: Paint, grade: Grade | None) -> bool:
    """Tell whether a paint is guessed, and its mixes come near all the same."""
    return is_guess(paint) and grade in NEAR


def price_cell(price: float | None) -> str:
    """Say in a cell what a litre costs, in her money."""
    return NOT_SAID if price is None else priced(price)


def rounded(off: float) -> str:
    """Round a doubt to what is known of it."""
    return figure(_to_known(off), "g")


def seen_word(off: float) -> str:
    """Say of a doubt, rounded so, how plainly it is seen."""
    return closeness(_to_known(off))


def _to_known(off: float) -> float:
    return float(round(off)) if off >= 3 else round(2 * off) / 2


def left_cell(ml: float | None) -> str:
    """Say in a cell what is left."""
    return NOT_SAID if ml is None else millilitres(ml)


def millilitres(ml: float) -> str:
    """Say a volume."""
    return bound(f"{figure(ml / 1000, '.2g')} l" if ml >= 1000 else f"{ml:.0f} ml")


def tins_cell(paint: Paint) -> str:
    """Say in a cell which tins there are."""
    return ", ".join(figure(tin.ml, "g") for tin in paint.tins) or NOT_SAID


def line_told(line: PaintLine, colour: str) -> str:
    """Tell the colour of a paint for a screen reader."""
    return f"{line.paint.name}, {colour}"


def known_line(whole: WholeLook) -> str:
    """Say how a paint is known, how well, and how far mixes with it are usually off."""
    how, known = HOW[whole.look.paint.how_known], whole.known
    if known.off is None:
        return say("Known by: {how}.", how=how)
    if is_near_guess(whole.look.paint, known.grade):
        return say(
            "Known by: {how}, but its mixes come near: off by about {off} ({seen}).",
            how=how,
            off=rounded(known.off),
            seen=seen_word(known.off),
        )
    return say(
        "Known by: {how}; {known}. Mixes with it are off by about {off} ({seen}).",
        how=how,
        known=known.words,
        off=rounded(known.off),
        seen=seen_word(known.off),
    )


def hides_line(whole: WholeLook) -> str:
    """Say how a paint hides, or that this is a guess, and how it dries."""
    look = whole.look
    guessed = whole.known.hiding is Hiding.GUESSED
    hides = _perhaps(look.coats) if guessed else _hides(*look.coats_span)
    dries = (
        say("dries as it looks wet")
        if look.drying < 1
        else say("dries {change:.0f} from wet", change=look.drying)
    )
    return f"{hides}; {dries}."


def _hides(least: int | None, most: int | None) -> str:
    if least is None:
        return say("Needs more than 6 coats to hide black and white")
    if most is None:
        return say("Hides black and white in {least} coats or more", least=least)
    if least < most:
        return say("Hides black and white in {least} to {most} coats", least=least, most=most)
    return say_count(
        "Hides black and white in {count} coat", "Hides black and white in {count} coats", least
    )


def _perhaps(coats: int | None) -> str:
    """Say how a paint may hide of which no coat over black was read."""
    if coats is None:
        return say("Perhaps does not hide in 6 coats, a guess until a coat over black is read")
    return say_count(
        "Perhaps hides in {count} coat, a guess until a coat over black is read",
        "Perhaps hides in {count} coats, a guess until a coat over black is read",
        coats,
    )


def bought_tip(ml: float) -> str:
    """Say what a tin that was bought adds."""
    return say("Adds {amount}, the smallest tin", amount=millilitres(ml))


def coats_word(coats: int) -> str:
    """Say how many coats."""
    return say_count("{count} coat", "{count} coats", coats)


def coats_short(coats: int) -> str:
    """Say how many coats where there is little room."""
    return say_in("coats, where there is little room", "{count}", count=coats)


def let_down_word(parts: int) -> str:
    """Say how many parts of white are with one of the paint."""
    return say("1 : {parts} white", parts=parts)


def wanted_line(whole: WholeLook, names: Mapping[str, str]) -> str:
    """Say what to brush out next; a paint that is well known needs no more."""
    if whole.known.off is None:
        return say("Brush out the paints that you have: they take the place of the invented ones.")
    if whole.wanted:
        return _asked_line(whole, names)
    if whole.known.grade in NEAR:
        return say("Well enough known to mix from.")
    if whole.is_white:
        return say("To know it better, brush out other paints let down with it.")
    if whole.let_down_with is None:
        return say("To know it better, put a white on the shelf to let it down with.")
    return say(
        "More of its own cards would hardly help: get to know {white} better, which it is let "
        "down with.",
        white=whole.let_down_with.name,
    )


def _asked_line(whole: WholeLook, names: Mapping[str, str]) -> str:
    """Say what is asked for; of a paint with cards, only its sitting knows what is new."""
    if whole.look.paint.spread is not None:
        return TO_KNOW_BETTER
    told = dict.fromkeys(mix_words(one.mix, names) for one in whole.wanted if not one.over)
    return say("To know it better, brush out: {mixes}.", mixes="; ".join(told))


def look_told(whole: WholeLook) -> str:
    """Tell the picture of a paint for a screen reader."""
    look = whole.look
    downs = ", ".join(let_down_word(down.parts) for down in look.let_downs)
    card = OVER_CARD if whole.known.hiding is not Hiding.GUESSED else OVER_CARD_GUESSED
    return f"{look.paint.name}: {DRY} and {WET}; {downs}; {card}"


def mix_words(mix: Sequence[tuple[str, float]], names: Mapping[str, str]) -> str:
    """Say what is mixed in what parts: ``Deep blue 1 : 4 Clean white``, or a paint on its own."""
    if len(mix) == 1:
        return say("{paint}, on its own", paint=names.get(mix[0][0], mix[0][0]))
    told = [names.get(id_, id_) for id_, _ in mix]
    parts = [figure(part, "g") for _, part in mix]
    if len(mix) == 2:
        return f"{told[0]} {parts[0]}\u00a0:\u00a0{parts[1]} {told[1]}"
    return ", ".join(f"{part} {name}" for part, name in zip(parts, told, strict=True))


def drying_line(drying: Drying) -> str:
    """Say what was learnt of how a paint dries."""
    told = say(
        "By its kind the wet colour would be {before:.1f} off what you read ({seen}); as this "
        "paint dries it is {after:.1f} ({then_seen}).",
        before=drying.off_before,
        seen=closeness(drying.off_before),
        after=drying.off_after,
        then_seen=closeness(drying.off_after),
    )
    if drying.off_after > drying.off_before - 0.2:
        return " ".join([told, say("It dries as its kind does; nothing new to keep.")])
    return told


def put_away_line(warnings: Sequence[str]) -> str:
    """Say what keeping the paints brought with it."""
    return " ".join([KEPT, *warnings])
