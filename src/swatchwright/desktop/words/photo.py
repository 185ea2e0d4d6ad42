"""The words beside the photo: what it is worth, what is wrong with it, what would help."""

from __future__ import annotations

from math import inf

from swatchwright.acts.colours import PhotoColours
from swatchwright.desktop.words import light_line
from swatchwright.photo.advise import Addition, Advice
from swatchwright.photo.dominant import DominantColour
from swatchwright.photo.facts import FileFacts
from swatchwright.photo.model import LightKind
from swatchwright.shelf.jobs import MarkedReference

PROPOSED_TAG = "Is this the grey card?"
PROPOSED = "Grey card in the dotted box?"
YES, NO = "Yes", "No"
YES_TIP = "Put the light right by it"
NO_TIP = "Leave it; the next likely place is asked about, if there is one"

NOT_THERE = "No grey here that can serve."
NOT_EVEN = "Hardly an even grey here."
HINT_FURTHER = "Drag a box on it, well inside. Not in the photo? Take another with it close by."
HINT_FURTHER_DONE = "Drag to move, corners to size, Delete to drop."

ADD = "Add a reference…"
ADD_TIP = "A grey, white or black card, or a brushed-out paint: each makes the colours surer"
ADD_IT = "Add it"
ADD_IT_TIP = "If it lies in this photo, mark it; if not, lay it there and photograph them again"
ADDING = "It is"
A_GREY, WHITE, BLACK = "another grey card", "white paper", "a black card"
A_PAINT, BY_NUMBERS = "a paint, brushed out", "a colour by its numbers"
PERCENT_TOLD = "What it reflects"
PAINT_TOLD = "Which paint of the shelf, dry and hiding"
NUMBERS_TOLD = "Its L*, a*, b*, as in 46, 34, 24"
NUMBERS_SHOWN = "46, 34, 24"
CANCEL = "Not now"
AWAY = "✕"
TOO_MANY = (
    "There are as many references in this photo as help.",
    "Take one away before you add another.",
)
DID_ADD = "a reference in the photo"

WEAVE_YARN, WEAVE_METRE = "The yarn", "From a metre"
WEAVE_TOLD = "Want the colour of"
WEAVE_SENTENCE = (
    "Near to you see the yarn. From a metre the weave's shadows mix in: take that for a piece "
    "seen across a room."
)

MORE, MORE_TIP = "About the photo", "What the file is, what was assumed, and what the light was"
LIGHT = "The light was"
LIGHTS: tuple[tuple[str, LightKind | None], ...] = (
    ("I don't know", None),
    ("daylight", "daylight"),
    ("a lamp", "lamp"),
)
DID_LIGHT = "what the light was"

LOOKING_FOR_GREYS = "Looking for the grey card…"
WEIGHING = "Weighing what would help…"

GOOD = "A good photo."
FINDINGS = "What is wrong with the photo"
FEWER = "Less"

_WHOLE = 1.5

_PLACES: dict[Addition, str] = {
    "grey": A_GREY,
    "far grey": A_GREY,
    "white": WHITE,
    "black": BLACK,
    "chip": A_PAINT,
}


_SEEN = (
    (0.8, "hardly to be seen"),
    (1.8, "just seen side by side"),
    (3.5, "clearly seen side by side"),
    (8.0, "plain to see"),
    (inf, "another colour"),
)


def more_findings(count: int) -> str:
    """Offer to show the other findings."""
    return f"{count} more…"


def findings_told(found: PhotoColours, marked: tuple[MarkedReference, ...] = ()) -> tuple[str, ...]:
    """Tell what is wrong with a photo, the worst first, each with how much it matters."""
    notes = {f"{f.text} {f.mend}" for f in found.findings if f.severity == "note"}
    told = [(text in notes, _named(text, found, marked)) for text in found.warnings]
    heads = {False: "This shifts the colours", True: "Worth knowing"}
    return tuple(f"{heads[mild]}: {text}" for mild, text in sorted(told, key=lambda t: t[0]))


def _named(text: str, found: PhotoColours, marked: tuple[MarkedReference, ...]) -> str:
    """Name references as they are listed, in place of where they are."""
    references = found.correction.references
    cards = ["the grey card"] * (len(references) - len(marked))
    names = [*cards, *(f"reference {n}, {m.name}" for n, m in enumerate(marked, start=1))]
    for reference, name in zip(references, names, strict=True):
        where = f"The reference at {reference.rect.x}, {reference.rect.y} "
        text = text.replace(reference.words, name)
        text = text.replace(where, f"{name[0].upper()}{name[1:]} ")
    return text


def give_or_take(colour: DominantColour) -> str:
    """Say how sure a colour is."""
    return f"give or take {_rounded(colour.give_or_take)}"


def short_give_or_take(colour: DominantColour) -> str:
    """Say the same where there is little room."""
    return f"± {_rounded(colour.give_or_take)}"


def worth_line(found: PhotoColours, colour: DominantColour | None) -> str:
    """Say what the photo is worth for the wanted colour."""
    good = not found.warnings and found.area is not None and bool(found.correction.references)
    if colour is None:
        return GOOD if good else f"Light put right by {found.correction.reference}."
    sure = give_or_take(colour)
    if not found.correction.references:
        return f"No grey card is marked, so a colour is known {sure} only. Mark one to be surer."
    seen = next(word for most, word in _SEEN if colour.give_or_take < most)
    told = f"the wanted colour is known {sure}, {seen}."
    return f"{GOOD[:-1]}: {told}" if good else f"{told[0].upper()}{told[1:]}"


def light_told(found: PhotoColours) -> str:
    """Say what the light was put right by."""
    if len(found.correction.references) > 1:
        return f"Light put right by {found.correction.reference}."
    return light_line(found.balance)


def help_line(advice: Advice | None) -> str:
    """Say which reference would help most; empty where none would by a whole step."""
    if advice is None or not advice.worth_it or _rounded(advice.now) == _rounded(advice.then):
        return ""
    return f"Would help most: {advice.words} (then give or take {_rounded(advice.then)})."


def kind_of(advice: Advice) -> str:
    """Say which kind of reference is advised."""
    return _PLACES[advice.addition]


def reference_word(number: int, marked: MarkedReference) -> str:
    """Name a further reference by its number."""
    return f"{number} {marked.name}"


def take_away(number: int, marked: MarkedReference) -> str:
    """Offer to take a reference away."""
    return f"Take away reference {number}, {marked.name}"


def file_line(facts: FileFacts) -> str:
    """Say what the file is."""
    camera = {
        True: "",
        False: ", tones as they fell on the sensor",
        None: ", and nothing tells of a camera",
    }[facts.tone_mapped]
    return f"{facts.name}: {facts.words}{camera}."


def _rounded(value: float) -> str:
    """Give as many digits as are known."""
    return f"{value:.0f}" if value >= _WHOLE else f"{max(value, 0.1):.1f}"
