"""The words of the page of the shelf."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from swatchwright.acts.shelf_view import PaintLine, WholeLook
from swatchwright.errors import MendableError
from swatchwright.paint.fit.drying import Drying
from swatchwright.paint.paints import HowKnown, Paint

HEADING = "Shelf"
HINT = "Your paints, how well each is known, and what you ask of all mixes."
LOOKING = "Looking at the paints…"

GET_TO_KNOW = "Get to know your paints"
GET_TO_KNOW_TIP = "Brush out a few cards, photograph them, and let the paints be fitted"
GET_TO_KNOW_HINT = "Choose, brush out, let dry, photograph, and let the paints be fitted."
DRY_ALIKE = "Wet and dry of one stroke"
DRY_ALIKE_TIP = "Teach a paint how it dries, from one stroke read wet and dry"
KEEP_SHELF = "Keep these paints"
KEEP_SHELF_TIP = "Keep them as your shelf: it is there again next time, with what is left of each"
BACK_TO_SHELF = "Back to the shelf"
COLUMNS = ("Use", "", "Paint", "Finish", "Known by", "Left", "Tins, ml", "A litre")
COLUMN_TIPS = (
    "Untick what is not to be used; the mixes follow.",
    "Its dry colour by itself",
    "",
    "The finish family",
    "Where it is known from, and how far a mix with it is usually off: 1 is just seen",
    "What is left of it",
    "Sizes it is sold in",
    "Price of a litre in the cheapest tin",
)
NOT_SAID = "–"

DRY, WET = "dry", "wet"
OVER_CARD = "coats over black and white"
LEFT_NOW = "Left"
TAKE_DOWN, TIN_BOUGHT = "Take down", "A tin bought"
KEEP_FIRST = "Keep these paints, and you can take down here what is left of each."
UNKNOWN_LEFT = "not known"

HOW = {
    HowKnown.MEASURED: "measured with an instrument",
    HowKnown.FITTED: "fitted from brush-outs",
    HowKnown.GUESSED: "guessed from little",
    HowKnown.INVENTED: "invented for the demonstration: no such paint is sold",
}

KEPT = "Kept. They are on the shelf in use, and recipes carry their doubt from now on."

# --- wet and dry ---------------------------------------------------------------------------------

STROKE_HINT = (
    "Brush one stroke until it hides. Photograph it wet beside the grey card, out of its glint, "
    "and again when it is dry, in the same light. Or type what you read."
)
WHICH_PAINT = "Paint"
STROKE = ("the stroke wet", "the stroke dry")
LEARN = "Learn how it dries"
LEARNING = "Learning how it dries…"
BOTH_FIRST = "Both colours are needed: the wet one and the dry one."
KEEP_DRYING = "Keep it on the shelf"
WET_TYPICAL, WET_OWN, WET_SEEN = "as its kind dries", "as it dries", "wet, as read"

_PLURAL = {1: "1 coat"}


def trouble(error: MendableError) -> str:
    """Say what is wrong and what to do."""
    return f"{error.what} {error.mend}"


def known_cell(line: PaintLine) -> str:
    """Say in a cell how a paint is known, and how far mixes with it are off."""
    how = line.paint.how_known.value
    return how if line.off is None else f"{how},\noff by about {rounded(line.off)}"


def price_cell(price: float | None) -> str:
    """Say in a cell what a litre costs."""
    return NOT_SAID if price is None else f"{price:.2f}"


def rounded(off: float) -> str:
    """Round a doubt to what is known of it."""
    return f"{off:.0f}" if off >= 3 else f"{round(2 * off) / 2:g}"


def left_cell(ml: float | None) -> str:
    """Say in a cell what is left."""
    return NOT_SAID if ml is None else millilitres(ml)


def millilitres(ml: float) -> str:
    """Say a volume."""
    return f"{ml / 1000:.2g} l" if ml >= 1000 else f"{ml:.0f} ml"


def tins_cell(paint: Paint) -> str:
    """Say in a cell which tins there are."""
    return ", ".join(f"{tin.ml:g}" for tin in paint.tins) or NOT_SAID


def line_told(line: PaintLine, colour: str) -> str:
    """Tell the colour of a paint for a screen reader."""
    return f"{line.paint.name}, {colour}"


def known_line(whole: WholeLook) -> str:
    """Say how a paint is known, and what that means for mixes with it."""
    paint = whole.look.paint
    told = f"Known by: {HOW[paint.how_known]}"
    if whole.look.likely is not None:
        told += f"; {whole.look.likely.words}"
    if whole.off is None:
        return f"{told}."
    return f"{told}. A mix with it is usually off by about {rounded(whole.off)} (1 is just seen)."


def hides_line(whole: WholeLook) -> str:
    """Say how a paint hides, and how it dries."""
    look = whole.look
    hides = (
        "Needs more than 6 coats to hide black and white"
        if look.coats is None
        else f"Hides black and white in {coats_word(look.coats)}"
    )
    dries = "dries as it looks wet" if look.drying < 1 else f"dries {look.drying:.0f} from wet"
    return f"{hides}; {dries}."


def bought_tip(ml: float) -> str:
    """Say what a tin that was bought adds."""
    return f"Adds {millilitres(ml)}, the smallest tin"


def coats_word(coats: int) -> str:
    """Say how many coats."""
    return _PLURAL.get(coats, f"{coats} coats")


def let_down_word(parts: int) -> str:
    """Say how many parts of white are with one of the paint."""
    return f"1 : {parts} white"


def wanted_line(whole: WholeLook, names: Mapping[str, str]) -> str:
    """Say what to brush out next; a paint that is well known needs no more."""
    if whole.off is None:
        return "Brush out the paints that you have: they take the place of the invented ones."
    if not whole.wanted:
        return "Well enough known: no brush-out more is asked for."
    told = dict.fromkeys(mix_words(strip.mix, names) for strip in whole.wanted)
    return f"To know it better, brush out: {'; '.join(told)}."


def look_told(whole: WholeLook) -> str:
    """Tell the picture of a paint for a screen reader."""
    look = whole.look
    downs = ", ".join(let_down_word(down.parts) for down in look.let_downs)
    return f"{look.paint.name}: {DRY} and {WET}; {downs}; {OVER_CARD}"


def mix_words(mix: Sequence[tuple[str, float]], names: Mapping[str, str]) -> str:
    """Say what is mixed in what parts: ``Deep blue 1 : 4 Clean white``, or a paint on its own."""
    if len(mix) == 1:
        return f"{names.get(mix[0][0], mix[0][0])}, on its own"
    told = [names.get(id_, id_) for id_, _ in mix]
    parts = [f"{part:g}" for _, part in mix]
    if len(mix) == 2:
        return f"{told[0]} {parts[0]}\u00a0:\u00a0{parts[1]} {told[1]}"
    return ", ".join(f"{part} {name}" for part, name in zip(parts, told, strict=True))


def drying_line(drying: Drying) -> str:
    """Say what was learnt of how a paint dries."""
    told = (
        f"By its kind the wet colour would be {drying.off_before:.1f} off what you read; as this "
        f"paint dries it is {drying.off_after:.1f}."
    )
    if drying.off_after > drying.off_before - 0.2:
        return f"{told} It dries as its kind does; nothing new to keep."
    return told


def put_away_line(warnings: Sequence[str]) -> str:
    """Say what keeping the paints brought with it."""
    return " ".join([KEPT, *warnings])
