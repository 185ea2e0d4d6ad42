"""The words of a sitting: getting to know paints from cards that are brushed out and read."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import floor

from swatchwright.acts.fit import FittedShelf, PaintFit
from swatchwright.acts.known import GOOD, Hiding, grade_of, hiding_of
from swatchwright.acts.own_paint import ColourFrom
from swatchwright.acts.sitting import Card, Sitting
from swatchwright.desktop.words.shelf import (
    GRADE_SHORT,
    NEAR,
    NEAR_GUESS,
    is_guess,
    is_near_guess,
    mix_words,
    rounded,
    seen_word,
)
from swatchwright.language import listed, say, say_count, say_in
from swatchwright.paint.family import Family
from swatchwright.paint.paints import HowKnown

STEPS = (say("1  Paints"), say("2  Brush"), say("3  Read"), say("4  Work out"))
STEP_TIPS = (
    say("Choose the paints and a white"),
    say("What to brush out"),
    say("Photograph and mark the cards"),
    say("How well they are known now"),
)
NEXT, BACK = say("Next"), say("Back")
CHOOSE_HINT = say(
    "Tick the paints you mix from most, and the white you let down with: six and a white make one "
    "good sitting."
)
ADD_NEW = say("A paint that is not here yet")
NAME, NAME_EXAMPLE = say("Name"), say("as the tin calls it")
FINISH = say_in("of a paint", "Finish")
TIN, PRICE, SOLIDS = say("Tin"), say("Price"), say("Solids by volume")
NOT_KNOWN = say("not known")
ADD = say("Add it")
WHITE_IS = say("Let down with")
NO_WHITE = say("no white: far less is learnt")
WHITE_WORD = say_in("in the name of a paint", "white")
"""What the name of a white holds."""
HAVE_CARD = say(
    "I have a card of black and white to lay one coat on: it tells how each paint hides"
)
BRUSH_HINT = say(
    "Stir well, measure by volume, lay coats on white card until one more changes nothing, and "
    "let them dry for a day. Number the cards as here."
)
AMOUNT_HINT = say(
    "A card of postcard size takes about 1.5 ml for each coat: 5 to 10 ml of each mix will do."
)
BARE_TOO = say("The bare black and the bare white of the card are not brushed, only read.")
SAVE_LIST, LIST_FILES = say("Save as a list to print…"), say("Text (*.txt)")
LIST_NAME = say("cards-to-brush.txt")
CARDS_PICTURE = say("The cards to brush, in their order")
NO_CARDS = say("Choose paints first: then the cards to brush out stand here.")

OPEN_FILE = say("Measurements…")
OPEN_FILE_TIP = say(
    "A file of an instrument: CSV, CGATS text or CxF3, its samples named by card number"
)
FILES = say("Measurements (*.csv *.txt *.cgats *.cxf *.xml);;All files (*)")
READING, READING_FILE = say("Reading the card…"), say("Reading the measurements…")
GREY = say("Grey card")
GREY_TAG = say("Grey")
TYPE_LAB = say("L*, a*, b* or #rrggbb")
TYPE_LAB_TIP = say(
    "Three CIELAB numbers such as 46, 34, 24, or #a4503c; say beside it how they are known, then "
    "press Return"
)
BY_HAND = "typed"
"""Where a reading comes from; it is kept with the sitting and not shown."""
READ_WITH = say("It is known")
_READ = {
    ColourFrom.EYE: say("by eye"),
    ColourFrom.PHOTO: say("from a photo"),
    ColourFrom.MEASURED: say("by an instrument"),
}
FORGET = say("Forget this reading")
PUT_AWAY = say("Put the photo away")
PUT_AWAY_TIP = say("Its marks go with it; what was read off it stays")
FIELDS_NAME = say("What is to be read")
PHOTO_NAME = say("Photo of the cards")
FIRST_GREY = say("First drag a box on the grey card, well inside it.")
NO_GREY = (
    say("There is no grey marked in this photo yet."),
    say("Drag a box on the grey card first."),
)

FIT = say("Work out the paints")
FITTING = say("Working out the paints…")
FIT_TOLD = say(
    "From the colours of the cards it is worked out what each paint does in a mix, and how far "
    "mixes with it will be off. That may take a minute. Your shelf stays as it is until you keep "
    "the paints."
)
STOP = say("Stop")
FIT_WAITS = say("Read at least one card first; every card more leaves less doubt.")
KEEP_FITTED = say("Keep these paints on the shelf")
BEFORE, AFTER = say("before"), say("now")
SCALE_TOLD = say(
    "How far a mix with each usually dries from what is worked out, before these cards and now. A "
    "bar that ends before the line is as near as mixing gets."
)
SCALE_GOOD, SCALE_FAR = (
    say("up to {off}: good", off=floor(GOOD)),
    say("10: another colour"),
)
BRUSH_NEXT = say("Brush that one too")
WHAT_TO_DO = say(
    "Go back to the cards named there: see whether two were swapped, or brush them anew."
)


@dataclass(frozen=True, slots=True)
class ReadWords:
    """The words for reading: opening a photo, the fields, how to photograph them, and the end."""

    open: str
    fields: str
    where: str
    done: str


OF_CARDS = ReadWords(
    say("Open a photo of the cards…"),
    say("Cards"),
    say(
        "Photograph the dry cards together beside the grey card, in daylight and without flash, "
        "and open the photo here. Several photos do as well; the grey must be in each."
    ),
    say("All are read. Go on, and have the paints worked out."),
)
OF_STROKE = ReadWords(
    say("Open a photo of the stroke…"),
    say("Stroke"),
    say(
        "Open the photo of the wet stroke, mark the grey and the stroke; then that of the dry one."
    ),
    say("Both are read. Let it learn how it dries."),
)


_MUCH_NEARER = 0.7
"""The share of what is not known that a card leaves open, below which it brings much."""

_BARE = {
    "black": say("the bare black of the card"),
    "white": say("the bare white of the card"),
}


def how_read(how: ColourFrom) -> str:
    """Say how a colour that is typed is known."""
    return _READ[how]


def family_item(family: Family) -> str:
    """Name a finish family in a list."""
    return say(family.value)


def card_words(card: Card, names: Mapping[str, str]) -> str:
    """Say what is on a card."""
    if not card.mix:
        return _BARE.get(card.over, card.over)
    if card.over == "white":
        return say("{mix}, one coat over white", mix=_mixed(card.mix, names))
    if card.over:
        return _over_black(card.mix, names)
    return mix_words(card.mix, names)


def _over_black(mix: Sequence[tuple[str, float]], names: Mapping[str, str]) -> str:
    return say("{mix}, one coat over black", mix=_mixed(mix, names))


def _mixed(mix: Sequence[tuple[str, float]], names: Mapping[str, str]) -> str:
    """Say what is mixed, or name a paint on its own, as one part of what is said."""
    return names.get(mix[0][0], mix[0][0]) if len(mix) == 1 else mix_words(mix, names)


def next_line(number: int, label: str, *, read: bool, photo: bool) -> str:
    """Say which field is read now, by a box in the photo where there is one."""
    if read and photo:
        return say("Read: {label}. To read it again, drag anew; or choose another.", label=label)
    if read:
        return say("Read: {label}. To read it again, type; or choose another.", label=label)
    if photo:
        return say("Now drag a box on number {number}: {label}", number=number, label=label)
    return say("Next to read is number {number}: {label}", number=number, label=label)


def progress_line(read: int, count: int) -> str:
    """Say how many cards were read."""
    return say("{read} of {count} read", read=read, count=count)


def field_told(number: int, label: str, *, read: bool) -> str:
    """Tell an entry of the list of what is to be read."""
    return f"{number}  {label}  ✓" if read else f"{number}  {label}"


def cards_line(sitting: Sitting) -> str:
    """Say how many cards there are, and how to brush them."""
    return " ".join([_to_brush(sitting), BRUSH_HINT, AMOUNT_HINT])


def _to_brush(sitting: Sitting) -> str:
    """Say how many cards are to be brushed; the bare ones only lie beside them."""
    brushed = sum(bool(card.mix) for card in sitting.cards)
    count = say_count("{count} card to brush.", "{count} cards to brush.", brushed)
    return count if brushed == len(sitting.cards) else f"{count} {BARE_TOO}"


def cards_text(sitting: Sitting, names: Mapping[str, str], notes: Sequence[str] = ()) -> str:
    """Write the list of cards to take to the workbench."""
    head = _to_brush(sitting)
    rows = [
        f"[ ] {number:>3}  {card_words(card, names)}"
        for number, card in enumerate(sitting.cards, 1)
    ]
    foot = [
        BRUSH_HINT,
        AMOUNT_HINT,
        say(
            "Then photograph all of them together beside the grey card, in daylight, without flash."
        ),
        say(
            "Sanding or scraping dry cards makes dust: wear a mask, and keep to the label on the "
            "tin."
        ),
        *notes,
    ]
    return "\n".join([head, "", *rows, "", *foot, ""])


def saved_line(name: str) -> str:
    """Say that the list was saved."""
    return say("Saved as {name}.", name=name)


def from_file_line(count: int, name: str) -> str:
    """Say how many cards a file told of."""
    return say("{count} cards read from {name}.", count=count, name=name)


def fit_line(fit: PaintFit) -> str:
    """Say how well a fitted paint is known now."""
    near = is_near_guess(fit.paint, fit.likely.grade)
    known = NEAR_GUESS if near else fit.likely.words
    return say_count(
        "{known}; {count} card read holds it",
        "{known}; {count} cards read hold it",
        fit.cards,
        known=known[:1].upper() + known[1:],
    )


def before_word(fit: PaintFit) -> str:
    """Say how a paint was known before."""
    return say("not known at all") if fit.before is None else say(fit.before.value)


def off_word(off: float, *, guessed: bool = False) -> str:
    """Say at the end of a bar how far mixes are off, and how well known that is."""
    return say("{off}, {known}", off=rounded(off), known=_grade_word(off, guessed=guessed))


def _grade_word(off: float, *, guessed: bool) -> str:
    grade = grade_of(off)
    return NEAR_GUESS if guessed and grade in NEAR else GRADE_SHORT[grade]


def ends_of_bars() -> tuple[str, ...]:
    """Give the words that may stand after a bar, in their longest form."""
    words = (*GRADE_SHORT.values(), NEAR_GUESS)
    known = (say("{off}, {known}", off="00", known=known) for known in words)
    return (*known, say("not known at all"), *(say(how.value) for how in HowKnown))


def doubt_told(fit: PaintFit, before: float | None, after: float | None) -> str:
    """Tell the bars of a paint for a screen reader."""
    return say(
        "{name}: before {was}, now {now}; up to {good} is good",
        name=fit.paint.name,
        was=before_word(fit) if before is None else _off_by(before),
        now=NOT_KNOWN if after is None else _off_by(after, guessed=is_guess(fit.paint)),
        good=floor(GOOD),
    )


def _off_by(off: float, *, guessed: bool = False) -> str:
    known = _grade_word(off, guessed=guessed)
    return say(
        "off by about {off} ({seen}), {known}", off=rounded(off), seen=seen_word(off), known=known
    )


def hiding_line(found: FittedShelf) -> str:
    """Say of which fitted paints it was not read how they hide; empty where it was of all."""
    guessed = [fit.paint.name for fit in found.fits if hiding_of(fit.paint) is Hiding.GUESSED]
    if not guessed:
        return ""
    return say(
        "How these hide stays a guess, for no coat of them over black was read: {paints}.",
        paints=listed(guessed),
    )


def most_helpful_line(fit: PaintFit, names: Mapping[str, str]) -> str:
    """Say which card more would help most."""
    wanted, paint = fit.next, fit.paint.name
    over = wanted.over_black
    card = _over_black(wanted.mix, names) if over else mix_words(wanted.mix, names)
    if wanted.spread_then < _MUCH_NEARER * wanted.spread_now:
        return say(
            "What would help most now: {card}. Mixes with {paint} would then come out much nearer.",
            card=card,
            paint=paint,
        )
    return say(
        "What would help most now: {card}. Mixes with {paint} would then come out a little nearer.",
        card=card,
        paint=paint,
    )


def spread_line(found: FittedShelf) -> str:
    """Say how well the fitted paints give back what was read."""
    if not found.read_back:
        return ""
    return say(
        "Worked out from these paints, half of the cards come within {middle:.1f} of what was "
        "read, and the worst within {worst:.1f}.",
        middle=sorted(one.delta_e for one in found.read_back)[len(found.read_back) // 2],
        worst=max(one.delta_e for one in found.read_back),
    )
