"""The words of a sitting: getting to know paints from cards that are brushed out and read."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from swatchwright.acts.fit import FittedShelf, PaintFit
from swatchwright.acts.sitting import Card, Sitting
from swatchwright.desktop.words.shelf import mix_words, rounded

STEPS = ("1  Paints", "2  Brush", "3  Read", "4  Fit")
STEP_TIPS = (
    "Choose the paints and a white",
    "What to brush out",
    "Photograph and mark the cards",
    "How well they are known now",
)
NEXT, BACK = "Next", "Back"
CHOOSE_HINT = (
    "Tick the paints you mix from most, and the white you let down with: six and a white make one "
    "good sitting."
)
ADD_NEW = "A paint that is not here yet"
NAME, NAME_EXAMPLE = "Name", "as the tin calls it"
FINISH = "Finish"
TIN, PRICE, SOLIDS = "Tin", "Price", "Solids by volume"
NOT_KNOWN = "not known"
ADD = "Add it"
WHITE_IS = "Let down with"
NO_WHITE = "no white: far less is learnt"
HAVE_CARD = "I have a card of black and white to lay one coat on: it tells how each paint hides"
BRUSH_HINT = (
    "Stir well, measure by volume, lay coats on white card until one more changes nothing, and "
    "let them dry for a day. Number the cards as here."
)
SAVE_LIST, LIST_FILES = "Save as a list to print…", "Text (*.txt)"
LIST_NAME = "cards-to-brush.txt"
CARDS_PICTURE = "The cards to brush, in their order"
NO_CARDS = "Choose paints first: then the cards to brush out stand here."

OPEN_FILE = "Measurements…"
OPEN_FILE_TIP = "A file of an instrument: CSV, CGATS text or CxF3, its samples named by card number"
FILES = "Measurements (*.csv *.txt *.cgats *.cxf *.xml);;All files (*)"
READING, READING_FILE = "Reading the card…", "Reading the measurements…"
GREY = "Grey card"
GREY_TAG = "Grey"
TYPE_LAB = "or type L*, a*, b*"
TYPE_LAB_TIP = "Three CIELAB numbers such as 46, 34, 24; then Return"
BY_INSTRUMENT, BY_PHOTO, BY_HAND = "an instrument", "a photo", "typed"
READ_WITH = "read with"
FORGET = "Forget this reading"
FIELDS_NAME = "What is to be read"
PHOTO_NAME = "Photo of the cards"
FIRST_GREY = "First drag a box on the grey card, well inside it."
NO_GREY = ("There is no grey marked in this photo yet.", "Drag a box on the grey card first.")

FIT = "Fit the paints"
FITTING = "Fitting the paints…"
STOP = "Stop"
FIT_WAITS = "Read at least one card first; every card more leaves less doubt."
KEEP_FITTED = "Keep these paints on the shelf"
BEFORE, AFTER = "before", "now"
BRUSH_NEXT = "Brush that one too"
DOUBT_TIP = "<p>How far a mix with it is usually off, in CIEDE2000: the shorter the better.</p>"
WHAT_TO_DO = "Go back to the cards named there: see whether two were swapped, or brush them anew."


@dataclass(frozen=True, slots=True)
class ReadWords:
    """The words for reading: opening a photo, the fields, how to photograph them, and the end."""

    open: str
    fields: str
    where: str
    done: str


OF_CARDS = ReadWords(
    "Open a photo of the cards…",
    "Cards",
    "Photograph the dry cards together beside the grey card, in daylight and without flash, and "
    "open the photo here. Several photos do as well; the grey must be in each.",
    "All are read. Go on to the fit.",
)
OF_STROKE = ReadWords(
    "Open a photo of the stroke…",
    "Stroke",
    "Open the photo of the wet stroke, mark the grey and the stroke; then that of the dry one.",
    "Both are read. Let it learn how it dries.",
)


def card_words(card: Card, names: Mapping[str, str]) -> str:
    """Say what is on a card."""
    if not card.mix:
        return f"the bare {card.over} of the card"
    told = mix_words(card.mix, names)
    if card.over:
        told = told.removesuffix(", on its own")
        return f"{told}, one coat over {card.over}"
    return told


def next_line(label: str, *, read: bool, photo: bool) -> str:
    """Say which field is read now, by a box in the photo where there is one."""
    if read:
        again = "drag anew" if photo else "type"
        return f"Read: {label}. To read it again, {again}; or choose another."
    return f"Now the box of {label}" if photo else f"Now {label}"


def progress_line(read: int, count: int) -> str:
    """Say how many cards were read."""
    return f"{read} of {count} read"


def field_told(number: int, label: str, *, read: bool) -> str:
    """Tell an entry of the list of what is to be read."""
    return f"{number}  {label}  ✓" if read else f"{number}  {label}"


def cards_line(sitting: Sitting) -> str:
    """Say how many cards there are for how many paints."""
    return f"{len(sitting.cards)} cards for {len(sitting.ids)} paints. {BRUSH_HINT}"


def cards_text(sitting: Sitting, names: Mapping[str, str], notes: Sequence[str] = ()) -> str:
    """Write the list of cards to take to the workbench."""
    head = f"Cards to brush: {len(sitting.cards)}"
    rows = [
        f"[ ] {number:>3}  {card_words(card, names)}"
        for number, card in enumerate(sitting.cards, 1)
    ]
    foot = [
        BRUSH_HINT,
        "Then photograph all of them together beside the grey card, in daylight, without flash.",
        "Sanding or scraping dry cards makes dust: wear a mask, and keep to the label on the tin.",
        *notes,
    ]
    return "\n".join([head, "", *rows, "", *foot, ""])


def saved_line(name: str) -> str:
    """Say that the list was saved."""
    return f"Saved as {name}."


def from_file_line(count: int, name: str) -> str:
    """Say how many cards a file told of."""
    return f"{count} cards read from {name}."


def fit_line(fit: PaintFit) -> str:
    """Say how well a fitted paint is known now."""
    many = "1 card" if fit.brush_outs == 1 else f"{fit.brush_outs} cards"
    return f"{fit.likely.words[0].upper()}{fit.likely.words[1:]}, from {many}"


def before_word(fit: PaintFit) -> str:
    """Say how a paint was known before."""
    return "not at all" if fit.before is None else fit.before.value


def doubt_told(fit: PaintFit, before: float | None, after: float | None) -> str:
    """Tell the bar of a paint for a screen reader."""
    was = before_word(fit) if before is None else f"off by about {rounded(before)}"
    now = NOT_KNOWN if after is None else f"off by about {rounded(after)}"
    return f"{fit.paint.name}: {BEFORE} {was}, {AFTER} {now}"


def most_helpful_line(fit: PaintFit, names: Mapping[str, str]) -> str:
    """Say which card more would help most."""
    told = mix_words(fit.next.mix, names)
    if fit.next.over_black:
        told = f"{told.removesuffix(', on its own')}, one coat over black"
    gone = 1 - fit.next.spread_then / max(fit.next.spread_now, 1e-9)
    return (
        f"What would help most now: {told}. About {gone:.0%} of what is not known of "
        f"{fit.paint.name} would go."
    )


def spread_line(found: FittedShelf) -> str:
    """Say how well the fitted paints give back what was read."""
    if not found.read_back:
        return ""
    worst = max(one.delta_e for one in found.read_back)
    middle = sorted(one.delta_e for one in found.read_back)[len(found.read_back) // 2]
    return f"They give the cards back within {middle:.1f} for half of them, {worst:.1f} at worst."
