"""The words beside the photo: what it is worth, what is wrong with it, what would help."""

from __future__ import annotations

from swatchwright.acts.colours import PhotoColours
from swatchwright.acts.kept_words import kept_words
from swatchwright.colour.names import closeness
from swatchwright.desktop.words import light_line
from swatchwright.desktop.words.bits import first_up
from swatchwright.language import figure, mark, say, say_in
from swatchwright.photo.advise import Addition, Advice
from swatchwright.photo.dominant import DominantColour
from swatchwright.photo.facts import FileFacts
from swatchwright.photo.model import LightKind
from swatchwright.photo.origin import origin_words
from swatchwright.shelf.jobs import MarkedReference

PROPOSED_TAG = say("Is this the grey card?")
PROPOSED = say("Grey card in the dotted box?")
YES, NO = say_in("an answer", "Yes"), say_in("an answer", "No")
YES_TIP = say("Put the light right by it")
NO_TIP = say("Leave it; the next likely place is asked about, if there is one")

NOT_THERE = say("No grey here that can serve.")
NOT_EVEN = say("Hardly an even grey here.")
HINT_FURTHER = say(
    "Drag a box on it, well inside. Not in the photo? Take another with it close by."
)
HINT_FURTHER_DONE = say("Drag to move, corners to size, Delete to drop.")

ADD = say("Add a reference…")
ADD_TIP = say("A grey, white or black card, or a brushed-out paint: each makes the colours surer")
ADD_IT = say_in("what helps", "Add it")
ADD_IT_TIP = say(
    "If it lies in this photo, mark it; if not, lay it there and photograph them again"
)
ADDING = say("It is")
A_GREY, WHITE, BLACK = say("another grey card"), say("white paper"), say("a black card")
A_PAINT, BY_NUMBERS = say("a paint, brushed out"), say("a colour by its numbers")
PERCENT_TOLD = say("What it reflects")
PAINT_TOLD = say("Which paint of the shelf, dry and hiding")
NUMBERS_TOLD = say("Its L*, a*, b*, as in 46, 34, 24")
NUMBERS_SHOWN = "46, 34, 24"
CANCEL = say("Not now")
AWAY = "✕"
TOO_MANY = (
    say("There are as many references in this photo as help."),
    say("Take one away before you add another."),
)
DID_ADD = say("a reference in the photo")

WEAVE_YARN, WEAVE_METRE = say("The yarn"), say("From a metre")
WEAVE_NAMES = {
    False: say("Want the colour of the yarn"),
    True: say("Want the colour of from a metre"),
}
WEAVE_SENTENCE = say(
    "Near to you see the yarn. From a metre the weave's shadows mix in: take that for a piece "
    "seen across a room."
)

MORE, MORE_TIP = (
    say("About the photo"),
    say("What the file is, what was assumed, and what the light was"),
)
LIGHT = say("The light was")
LIGHTS: tuple[tuple[str, LightKind | None], ...] = (
    (say("I don't know"), None),
    (say("daylight"), "daylight"),
    (say("a lamp"), "lamp"),
)
DID_LIGHT = say("what the light was")

LOOKING_FOR_GREYS = say("Looking for the grey card…")
WEIGHING = say("Weighing what would help…")

GOOD = say("A good photo.")
FINDINGS = say("What is wrong with the photo")
FEWER = say_in("fewer findings", "Less")
READ_ON = say("Read on…")

_WHOLE = 1.5

_PLACES: dict[Addition, str] = {
    "grey": A_GREY,
    "far grey": A_GREY,
    "white": WHITE,
    "black": BLACK,
    "chip": A_PAINT,
}


def more_findings(count: int) -> str:
    """Offer to show the other findings."""
    return say("{count} more…", count=count)


def findings_told(found: PhotoColours, marked: tuple[MarkedReference, ...] = ()) -> tuple[str, ...]:
    """Tell what is wrong with a photo, the worst first, each with how much it matters."""
    notes = {f"{f.text} {f.mend}" for f in found.findings if f.severity == "note"}
    told = [(text in notes, _named(text, found, marked)) for text in found.warnings]
    return tuple(
        say("Worth knowing: {finding}", finding=text)
        if mild
        else say("This shifts the colours: {finding}", finding=text)
        for mild, text in sorted(told, key=lambda t: t[0])
    )


def _named(text: str, found: PhotoColours, marked: tuple[MarkedReference, ...]) -> str:
    """Name references as they are listed, in place of where they are."""
    references = found.correction.references
    cards = [say("the grey card")] * (len(references) - len(marked))
    names = [*cards, *(_listed_as(number, one) for number, one in enumerate(marked, start=1))]
    for reference, name in zip(references, names, strict=True):
        text = text.replace(reference.words, name)
        text = text.replace(f"{reference.subject} ", f"{first_up(name)} ")
    return text


def _listed_as(number: int, marked: MarkedReference) -> str:
    return say("reference {number}, {name}", number=number, name=name_told(marked))


def name_told(marked: MarkedReference) -> str:
    """Say the name that a job keeps of a reference."""
    return kept_words(marked.name)


def give_or_take(colour: DominantColour) -> str:
    """Say how sure a colour is."""
    return say("give or take {error}", error=_rounded(colour.give_or_take))


def short_give_or_take(colour: DominantColour) -> str:
    """Say the same where there is little room."""
    return f"± {_rounded(colour.give_or_take)}"


def worth_line(found: PhotoColours, colour: DominantColour | None) -> str:
    """Say what the photo is worth for the wanted colour."""
    good = not found.warnings and found.area is not None and bool(found.correction.references)
    if colour is None:
        return GOOD if good else light_told(found)
    sure = give_or_take(colour)
    if not found.correction.references:
        return say(
            "No grey card is marked, so a colour is known {sure} only. Mark one to be surer.",
            sure=sure,
        )
    seen = closeness(colour.give_or_take)
    if good:
        told = mark("A good photo: the wanted colour is known {sure} ({seen}).")
    else:
        told = mark("The wanted colour is known {sure} ({seen}).")
    return say(told, sure=sure, seen=seen)


def _put_right_by(found: PhotoColours) -> str:
    told = origin_words(found.correction.reference)
    return say("Light put right by {reference}.", reference=told)


def light_told(found: PhotoColours) -> str:
    """Say what the light was put right by."""
    if len(found.correction.references) > 1:
        return _put_right_by(found)
    return light_line(found.balance)


def help_line(advice: Advice | None) -> str:
    """Say which reference would help most; empty where none would by a whole step."""
    if advice is None or not advice.worth_it or _rounded(advice.now) == _rounded(advice.then):
        return ""
    return say(
        "Would help most: {reference} (then give or take {error}).",
        reference=advice.words,
        error=_rounded(advice.then),
    )


def kind_of(advice: Advice) -> str:
    """Say which kind of reference is advised."""
    return _PLACES[advice.addition]


def reference_word(number: int, marked: MarkedReference) -> str:
    """Name a further reference by its number."""
    return f"{number} {name_told(marked)}"


def take_away(number: int, marked: MarkedReference) -> str:
    """Offer to take a reference away."""
    told = name_told(marked)
    return say("Take away reference {number}, {name}", number=number, name=told)


def file_line(facts: FileFacts) -> str:
    """Say what the file is."""
    told = {
        True: mark("{name}: {file}."),
        False: mark("{name}: {file}, tones as they fell on the sensor."),
        None: mark("{name}: {file}, and nothing tells of a camera."),
    }[facts.tone_mapped]
    return say(told, name=facts.name, file=facts.words)


def _rounded(value: float) -> str:
    """Give as many digits as are known."""
    return figure(value, ".0f") if value >= _WHOLE else figure(max(value, 0.1), ".1f")
