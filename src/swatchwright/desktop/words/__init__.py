"""Every word the window shows, in one place and in British English."""

from __future__ import annotations

from math import ceil

from swatchwright.acts.correct import Correction
from swatchwright.acts.reach import Reach
from swatchwright.acts.recipes import Confidence, MeasuredRecipe, Recipes, proof_text
from swatchwright.colour.names import closeness, difference_words
from swatchwright.mixing.fan import Neighbour
from swatchwright.mixing.recipe import Shortfall
from swatchwright.paint.paints import HowKnown, Paint
from swatchwright.photo.dominant import DominantColour
from swatchwright.photo.reference import Balance
from swatchwright.values import KnownColour, Lab

TITLE = "Swatchwright"

OPEN_PHOTO = "Open a photo…"
SAMPLES = "Sample photos"
OPEN_SHELF = "Open a shelf…"
DEMO_SHELF = "Demonstration shelf"
DARK_BENCH = "Dark bench"
PHOTO_FILES = (
    "Photos (*.jpg *.jpeg *.png *.tif *.tiff *.webp *.heic *.heif *.avif);;"
    "Camera raw files (*.dng *.cr2 *.cr3 *.nef *.nrw *.arw *.raf *.orf *.rw2 *.pef *.srw *.raw);;"
    "All files (*)"
)
SHELF_FILES = "Shelf files (*.csv);;All files (*)"

DROP_TITLE = "Drop a photo of the cloth here"
DROP_TEXT = (
    "Photograph it flat, in daylight, with a grey card beside it and no flash.\n"
    "Then mark the card and the cloth, and the mixes appear."
)
TRY_SAMPLE = "Try it on a sample cushion"

MARK = "Mark the"
MARK_GREY = "grey card"
MARK_CLOTH = "cloth"
GREY_SHORT = "Reference"
CLOTH_SHORT = "Cloth"
SAMPLE_SHORT = "Sample"
HINT_GREY = "Drag a box on the grey card or paper, well inside it."
HINT_CLOTH = "Drag a box on the part of the cloth you want."
HINT_DONE = "Drag to move, corners to size, Shift to draw anew."
CARD_IS = "which reflects"
CARD_GREY = "18 %, a grey card"
CARD_WHITE = "90 %, white paper"
CARD_OTHER = "other…"
PUT_RIGHT = "Show it put right"
UNDO = "Undo"
REDO = "Redo"
UNTITLED = "Untitled piece"
KEEPING = "Keeping…"
PAGE_BRIEF, PAGE_BRIEF_TIP = "Job", "Who it is for, and the jobs that are kept"
PAGE_COLOUR, PAGE_COLOUR_TIP = "Colour", "The cloth, its colours and the mixes for one of them"
PAGE_COMPARE, PAGE_COMPARE_TIP = "Compare", "The mixes beside the wanted colour, in any light"
PAGE_SHELF, PAGE_SHELF_TIP = "Shelf", "Your paints, and getting to know them"
PAGE_SAMPLE, PAGE_SAMPLE_TIP = "Sample", "The dried sample beside the cloth, and what to add"
PAGE_FINISH, PAGE_FINISH_TIP = "Finish", "Washes, glazes, wax and varnish"
PAGE_PIECE, PAGE_PIECE_TIP = "Piece", "Its size, and how much to mix"
PAGE_REPAINT, PAGE_REPAINT_TIP = "On photo", "The piece in the chosen colours, on a photo of it"
PAGE_PLAN, PAGE_PLAN_TIP = "Plan", "What to do when, and what to take care of"
PAGE_SHEET, PAGE_SHEET_TIP = "Sheet", "The recipe sheet and the jar label"
UNDO_WHAT = "Undo: {}"
REDO_WHAT = "Redo: {}"
DID_MARK = "the mark in the photo"
DID_WANT = "the wanted colour"
DID_WISH = "a wish for the mixes"

COLOURS = "Colours in the cloth"
COLOURS_ALL = "Colours in the whole photo: mark the cloth to have its own"
WAIT_COLOURS = "The colours appear here once a photo is open."
READING = "Reading the photo…"
FINDING_COLOURS = "Finding the colours…"
PROVING = "Proving…"
FINDING_MIXES = "Finding mixes…"
STOP = "Stop"

TYPE_COLOUR = "or type #a4503c"
TYPE_COLOUR_TIP = (
    "A screen colour such as #a4503c, or three CIELAB numbers such as 46, 34, 24; then Return"
)

WANTED = "wanted"
DRY = "dry"
WET = "wet"
AMOUNT = "Mix"
PAINTS = "of at most"
TWO_PAINTS = "2 paints"
THREE_PAINTS = "3 paints"
WAIT_MIXES = "The mixes appear here, side by side, once a colour is picked."

REACH = "What the shelf reaches"
REACH_HINT = (
    "Every mix of the shelf lies in this body: seen from above, as a colour wheel lies, and from "
    "beside, the vivid to the right and the light at the top. A colour well outside it cannot "
    "be mixed."
)
FROM_ABOVE = ("redder →", "yellower ↑")
FROM_BESIDE = ("more vivid →", "lighter ↑")
FINDING_REACH = "Finding what the shelf reaches…"
WHICH_TO_BUY = "Which one paint more would reach it? Choose a shelf to buy from…"
COPY_SHORT = "Copy"
NEARBY_SHORT = "Nearby"
PUT_RIGHT_SHORT = "Put right"
NEIGHBOURS = "Neighbours to choose from by eye"
NEIGHBOURS_HINT = (
    "Each is about 2 from the mix in the middle, plain to see side by side. Brush out those that "
    "tempt you, let them dry, and hold them to the cloth."
)
NEIGHBOURS_PRESS = "Press a colour to see how to mix 20 ml of it."
FINDING_NEIGHBOURS = "Finding the neighbours…"
THIS_MIX = "this mix"
WANT_THIS = "This is the one: find its mixes"
TYPED = "typed in"
PICKED_BY_EYE = "chosen by eye from brush-outs"
PUT_POT_RIGHT = "Put a pot right by adding"
TUB_HOLDS = "The tub holds"
CLIENT_WANTS = "The client wants it"
HOW_FAR = "How far"
FINDING_ADDITIONS = "Finding what to add…"
WHERE_IT_SHOULD_GO = "where it should go"
AS_IT_IS = "as it is"
AFTER_ADDING = "after adding"
COPY_MIX = "Copy this mix"
SHELF_FILE_NAME = "my-paints.csv"
BRUSH_FIRST = "Brush a sample, dry it and hold it to the cloth before you mix the batch."
COPIED = "Copied"
SHOW_SHELF = "Show the paints"
SAVE_SHELF = "Save a shelf file to fill in…"
NOT_ON_SCREEN = "<p>“About”: more vivid than a screen can show; the nearest is shown.</p>"

MIXES = "The mixes, the closest first"
SHELF = "Shelf"
CARD_ASK = "How much of the light the card reflects, in per cent:"

PUT_AWAY = "Put away"
COPY_REPORT = "Copy a report"
OUR_FAULT = (
    "Something went wrong that is not your doing. Your photo and marks are still here; "
    "please copy the report and pass it on."
)

PHOTO_NAME = "Photo with the marks of the grey card and the cloth"


_MOST_PARTS = 40
_TUB_TELLS = 1.0
_FORGIVING, _TOUCHY, _LIGHT_SHOWS = 0.5, 1.0, 2.0


def name_of_colour(number: int, colour: DominantColour, name: str) -> str:
    """Tell a colour's number, name and share, for a screen reader."""
    return f"Colour {number}: {name}, {colour.share:.0%} of the cloth"


def wanted_line(name: str, wanted: KnownColour) -> str:
    """Head the mixes with what is wanted, and where that came from."""
    L, a, b = wanted.lab.triple
    if wanted.origin == PICKED_BY_EYE:
        return f"Mixes for: {name}, {wanted.origin}"
    if wanted.covariance is None and wanted.origin != TYPED:
        return f"Mixes for: {name}, {wanted.origin}"
    if wanted.covariance is None:
        return f"Mixes for: {name}, typed as L* {L:.0f}, a* {a:.0f}, b* {b:.0f}"
    return f"Mixes for: {name}, as the photo shows it"


def light_line(balance: Balance) -> str:
    """Say what the light of the photo was taken to be."""
    if balance.reflectance is None:
        return "No grey card marked: the colours are as the camera guessed them."
    right = f"Light put right by a grey of {balance.reflectance:.0%}"
    if balance.cct is None:
        return f"{right}."
    return f"{right}; the camera had left it at about {round(balance.cct, -2):.0f} K."


def closeness_line(recipe: MeasuredRecipe) -> str:
    """Say how near the dry mix comes to the wanted colour."""
    words = closeness(recipe.recipe.delta_e)
    return words[0].upper() + words[1:]


def way_line(recipe: MeasuredRecipe, wanted: Lab) -> str:
    """Say which way the dry mix differs from the wanted colour; empty if it is not to be seen."""
    ways = difference_words(wanted, recipe.recipe.dry)
    return f"Dry it is {' and '.join(ways)} than wanted" if ways else ""


def figures_line(recipe: MeasuredRecipe) -> str:
    """Give the figures behind the words."""
    r = recipe.recipe
    if len(r.paints) == 1:
        return f"Off by {r.delta_e:.1f}"
    if not in_parts(recipe):
        return f"Off by {r.delta_e:.1f}; by ml or g"
    return f"Off by {r.delta_e:.1f}; in parts {r.parts.delta_e:.1f}"


def in_parts(recipe: MeasuredRecipe) -> bool:
    """Tell whether the recipe is told in parts: not where that takes more than one can count."""
    return sum(recipe.recipe.parts.counts) <= _MOST_PARTS


def figures_tip() -> str:
    """Explain the figures."""
    return (
        "<p>How far the dry mix is from the wanted colour shown above it, in CIEDE2000: 0.8 is "
        "just seen side by side, 1.8 is accepted by most. The second figure is for pouring in "
        "whole parts instead of by the exact ml or gram.</p>"
    )


def mix_text(number: int, measured: MeasuredRecipe) -> str:
    """Tell a mix as text to paste: parts, amounts and how near it comes."""
    r = measured.recipe
    rows = [
        f"{parts_word(count)} {paint.name} ({paint.id}): {millilitres(amount.ml)}"
        + ("" if amount.grams is None else f", {_amount(amount.grams)} g")
        for paint, count, amount in zip(r.paints, r.parts.counts, measured.amounts, strict=True)
    ]
    if len(r.paints) > 1:
        rows.append(pour_text(measured))
    total = sum(amount.ml for amount in measured.amounts)
    head = f"Mix {number}, {_amount(total)} ml. {closeness_line(measured)}, off by {r.delta_e:.1f}."
    return "\n".join([head, *rows, cost_line(measured), known_line(r.paints), BRUSH_FIRST])


def pour_text(measured: MeasuredRecipe) -> str:
    """Say in which order to pour."""
    pours = measured.pours
    last = pours[-1]
    whole = [p for p in pours if p.paint.id != last.paint.id]
    strong = [p for p in pours if p.paint.id == last.paint.id and not p.held_back]
    told = [f"{millilitres(p.ml)} {p.paint.name}" for p in whole]
    in_all = millilitres(sum(p.ml for p in strong) + last.ml)
    told.append(
        f"then {last.paint.name}, {in_all} in all: {millilitres(strong[0].ml)} three times, "
        f"and the last {millilitres(last.ml)} only once a sample has dried"
    )
    return f"Pour {'; '.join(told)}."


def neighbour_text(n: Neighbour) -> str:
    """Say how to mix a neighbour for a brush-out."""
    rows = zip(n.parts.counts, n.paints, n.ml, strict=True)
    told = [f"{parts_word(count)} {paint.name} ({ml:.1f} ml)" for count, paint, ml in rows]
    return f"{n.word[0].upper()}{n.word[1:]}: {', '.join(told)}."


def dial_text(percent: int) -> str:
    """Say how far a dial stands."""
    for whole, told in ((0, "not at all"), (25, "a quarter"), (33, "a third"), (50, "half")):
        if percent == whole:
            return told
    return "all the way" if percent == 100 else f"{percent} %"


def correction_text(found: Correction, tub: float) -> str:
    """Say what to add to a pot."""
    added = found.additions
    if not added.steps:
        return "Nothing that may be added to this pot, in this tub, brings it nearer."
    rows = [
        f"Add {millilitres(step.ml)} {step.paint.name}: then {step.delta_e:.1f} off."
        for step in added.steps
    ]
    rows.append(
        f"It is {added.before:.1f} off now, and {millilitres(added.volume)} in the end. Add a "
        "third of it first, stir, and let a sample dry."
    )
    if added.delta_e > _TUB_TELLS and added.volume > tub - 1:
        rows.append("The tub stops it there: take some of the pot out first, or use a larger tub.")
    if added.volume > 2 * found.pot.volume:
        rows.append("That is more than twice the pot: mixing afresh may take less paint.")
    return "\n".join(rows)


def body_name(axes: tuple[str, str]) -> str:
    """Name a picture of the body of colours for a screen reader."""
    return f"{REACH}: {', '.join(axes)}"


def reach_text(found: Reach, *, asked: bool) -> str:
    """Say whether the shelf reaches the wanted colour, and what to buy if that was asked."""
    if found.shortfall is None:
        return f"Inside: this shelf mixes the wanted colour, off by {found.delta_e:.1f}."
    towards = " and ".join(found.shortfall.towards) or "otherwise"
    told = [f"Outside: the nearest mix is {found.delta_e:.1f} off. It would have to be {towards}."]
    if asked and not found.one_more:
        told.append("No one paint of the other shelf brings it within 1.")
    told += [f"With {m.paint.name} it comes within {m.delta_e:.1f}." for m in found.one_more[:5]]
    return " ".join(told)


def parts_word(count: int) -> str:
    """Say how many parts."""
    return f"{count} part" if count == 1 else f"{count} parts"


def millilitres(ml: float) -> str:
    """Say a volume."""
    return f"{_amount(ml)} ml"


def amount_line(ml: float | None, grams: float | None) -> str:
    """Say how much to measure out exactly; what is None is left out."""
    told = [
        "" if ml is None else f"exactly {millilitres(ml)}",
        "" if grams is None else f"{_amount(grams)} g",
    ]
    return "  ·  ".join(text for text in told if text)


def _amount(value: float) -> str:
    return f"{value:.1f}" if value < 20 else f"{value:.0f}"


def cost_line(recipe: MeasuredRecipe) -> str:
    """Say how many coats hide, and what the paint costs."""
    hides = hiding_line(recipe.recipe.coats)
    return hides if recipe.price is None else f"{hides}; costs {recipe.price:.2f}"


def hiding_line(coats: int | None) -> str:
    """Say how many coats hide what is below."""
    if coats is None:
        return "Needs more than 6 coats to hide: prime in a like colour"
    return "Hides in 1 coat" if coats == 1 else f"Hides in {coats} coats"


def touch_line(recipe: MeasuredRecipe) -> str:
    """Say how much a slip of the measure shows."""
    if len(recipe.recipe.paints) == 1:
        return ""
    if recipe.slip < _FORGIVING:
        return "Forgiving to measure"
    if recipe.slip < _TOUCHY:
        return "A 5 % slip is just seen"
    return "Touchy: a 5 % slip shows"


def light_change_line(recipe: MeasuredRecipe) -> str:
    """Say whether lamp light may part the mix from the cloth; empty where it will hardly."""
    if recipe.light_change < _LIGHT_SHOWS:
        return ""
    return "Look at it under a lamp too"


def why_line(found: Recipes, proven_gap: float | None) -> str:
    """Say why the first is first, and that no other mix would be closer."""
    why = f"Mix 1: {found.why_first[0].lower()}{found.why_first[1:]}"
    if proven_gap is None:
        return why
    return f"{why} {proof_text(proven_gap)}"


def finish_line(paints: tuple[Paint, ...]) -> str:
    """Say when finishes are mixed; empty where they are not."""
    return "" if len({paint.family for paint in paints}) == 1 else "Mixed finishes: try the sheen"


def known_line(paints: tuple[Paint, ...]) -> str:
    """Say how the paints of a recipe are known."""
    ways = {paint.how_known for paint in paints}
    if ways == {HowKnown.INVENTED}:
        return "Invented paints"
    worst = [way for way in HowKnown if way in ways][-1]
    return f"Paints known by: {worst.value} colour"


def shortfall_line(shortfall: Shortfall, most_paints: int, *, possible: bool) -> str:
    """Say how far the paints fall short, and which way."""
    towards = " and ".join(shortfall.towards) or "otherwise"
    if not possible:
        which = "No surface can have this colour, whatever the paint"
    elif most_paints == 2:
        which = "No two paints of this shelf reach it (three may)"
    else:
        which = "Nothing on this shelf reaches it"
    off = f"{shortfall.delta_e:.1f}"
    return f"{which}: the nearest found stays {off} off. It would have to be {towards}."


def sample_line(confidence: Confidence) -> str:
    """Send the painter to the sample."""
    if confidence.both < 1:
        return "Brush a sample on card and let it dry before you mix the batch."
    doubt = ceil(confidence.both)
    return (
        f"Untried, a mix lands about {doubt} from the cloth, as often more as less (1 is just "
        f"seen, {doubt} is {_plainness(doubt)}). So brush a sample, dry it and hold it to the "
        "cloth before you mix the batch."
    )


def _plainness(delta_e: float) -> str:
    """Say how plainly a difference is seen."""
    return "plain to see" if delta_e < 8 else "another colour"


def shelf_line(name: str, count: int, used: int) -> str:
    """Say which shelf is used, and how many of its paints."""
    some = f"{count}" if used == count else f"{used} of {count}"
    return f"{some} paints of {name}"
