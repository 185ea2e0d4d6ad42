"""The words of the page of the piece on a photo."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path

from swatchwright.acts import labels
from swatchwright.acts.batches import WHOLE_PIECE
from swatchwright.acts.repaint import NOT_THIS
from swatchwright.acts.repaint_job import Choice, ChoiceKind
from swatchwright.colour.convert import in_srgb
from swatchwright.colour.names import colour_name
from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.piece import names
from swatchwright.values import Lab

HEADING = say("On a photo")
HINT = say(
    "A photo of the piece as it stands, a few strokes on each surface: and you see it in the "
    "chosen colours."
)

EMPTY_TITLE = say("Drop a photo of the piece here")
EMPTY_TEXT = say(
    "Take it in daylight, from the front and a little to one side,\n"
    "with a grey card standing in the same light as its front."
)
NOTES = say("Notes on the picture")
OPEN, OPEN_OTHER = say("Open a photo of the piece…"), say("Another photo…")
OPEN_TIP = say("Open another photo of the piece in place of this one")
SAMPLE = say("Try it on a sample box")

BRUSHES = say("Draw on")
GREY = say("grey card")
GREY_TAG = say("grey")
WIDTH = say("Brush")
WIDTH_NAME = say("Width of the brush")
WIDTH_TIP = say("How wide the brush is on the photo ([ narrower, ] wider)")
CLEAR, CLEAR_TIP = say("Clear"), say("Take all strokes away (Undo brings them back)")
LARGE = say("Only the new colours")
LARGE_TIP = say("Show only the piece in its new colours, as large as fits")
DIVIDER, DIVIDER_TIP = (
    say("Before and after in one"),
    say("Show the piece as it is left of a line, and in its new colours right of it"),
)
DIVIDER_KEYS = say(
    "Drag the line, or move it with the left and right arrows; Home and End bring it to an edge."
)
SAVE = say("Save the picture…")
SAVE_TIP = say("Save the piece in its new colours, in the size of the photo")
FINISHED = say("With its finish")
FINISHED_TIP = say("Show the washes, wax or varnish of the job over the mixes")
NO_FINISH_TIP = say("Nothing lies over the mixes yet: lay it on, on the page Finish")

READING = say("Reading the photo…")
FINDING = say("Finding the surfaces…")
PAINTING = say("Painting…")
SAVING = say("Saving the picture…")
PICTURES = say("Pictures (*.png *.jpg)")
PICTURE_NAME = say("repainted.png")

BEFORE, AFTER = say("as it is"), say("in the new colours")
FIRST_STROKE = say(
    "Draw a stroke or two on each surface. Here you see the piece in its new colours."
)
CANVAS_NAME = say("The photo of the piece, to draw strokes on")
BY_KEYS = say(
    "By keyboard: Return lays a box, arrows move it, Shift with arrows sizes it, Return makes a "
    "stroke of it, Delete takes it away."
)
NO_COLOURS = say(
    "No mix is found yet. Choose a paint for each surface, or pick a colour on the page Colour: "
    "its mixes are offered here."
)

LEAVE = say("as it is")


def tried_line(title: str) -> str:
    """Say that the sample box is not kept with a client's job."""
    return say(
        "Only a try: the sample box is not kept with the job “{job}”. Open a photo of the piece "
        "itself, and that is.",
        job=title,
    )


# What undo takes back; the job keeps these, so they are said only where they are shown.
DID_OPEN = mark("Open a photo of the piece")
DID_CLEAR = mark("Clear the strokes")
DID_GREY = mark("Mark the grey card")
DID_FINISH = mark("See it with or without its finish")
_DID_NOT_THIS = mark("A stroke on what is not it")


def zone_word(zone: str) -> str:
    """Name a zone."""
    if zone == WHOLE_PIECE:
        return say("whole piece")
    return say("not this") if zone == NOT_THIS else names.zone_word(zone)


def brush_name(told: str) -> str:
    """Name a brush for a screen reader."""
    return say("Draw on {what}", what=told)


def zone_name(zone: str) -> str:
    """Name the list of colours of a zone for a screen reader."""
    return say("What {zone} is seen in", zone=zone_word(zone))


def did_stroke(zone: str) -> str:
    """Say what undo takes back."""
    return _DID_NOT_THIS if zone == NOT_THIS else labels.STROKE.format(zone=_kept_zone(zone))


def did_colour(zone: str) -> str:
    """Say what undo takes back."""
    return labels.OTHER_COLOUR.format(zone=_kept_zone(zone))


def _kept_zone(zone: str) -> str:
    """Name a zone as the job keeps it."""
    return "whole piece" if zone == WHOLE_PIECE else zone


def choice_word(choice: Choice) -> str:
    """Name a colour to choose."""
    if choice.kind is ChoiceKind.CHOSEN:
        if choice.name == WHOLE_PIECE:
            return say("chosen mix")
        return say("chosen mix, {zone}", zone=zone_word(choice.name))
    if choice.kind is ChoiceKind.MIX:
        return say("mix {number}", number=choice.name)
    return say("the wanted colour") if choice.kind is ChoiceKind.WANTED else choice.name


def zone_told(lab: Lab | None, *, finished: bool) -> str:
    """Say in words what a zone is seen in."""
    if lab is None:
        return say("old paint")
    name = colour_name(lab)
    told = say("{colour}, finished", colour=name) if finished else say("{colour}, dry", colour=name)
    return told if in_srgb(lab) else say("{told}, more vivid than a screen shows", told=told)


def after_name(zones: Iterable[tuple[str, str]]) -> str:
    """Tell the picture for a screen reader."""
    told = "; ".join(f"{zone_word(zone)} {text}" for zone, text in zones)
    return say("The piece in the new colours: {zones}", zones=told) if told else FIRST_STROKE


def divided_name(told: str, share: float) -> str:
    """Tell a screen reader how much of the picture shows the piece as it is."""
    return say("{told}. Left of {share:.0%}: the piece as it is.", told=told, share=share)


def canvas_told(zones: Sequence[str], *, grey: bool) -> str:
    """Tell the photo and what is marked on it for a screen reader."""
    told = [zone_word(zone) for zone in zones] + ([GREY] if grey else [])
    if not told:
        return say("{photo}. Marked: nothing yet. {keys}", photo=CANVAS_NAME, keys=BY_KEYS)
    return say(
        "{photo}. Marked: {marks}. {keys}", photo=CANVAS_NAME, marks=", ".join(told), keys=BY_KEYS
    )


SEEN_IN = say(
    "All of it is seen in the light that the photo was taken in: how the colours look in the light "
    "of the room is on the pages Compare, Finish and Piece."
)


def notes_line(notes: Sequence[str]) -> str:
    """Put notes into one paragraph."""
    return " ".join(notes)


def saved_line(path: Path) -> str:
    """Say where the picture went."""
    return say("Saved as {name}.", name=path.name)


def trouble(error: MendableError) -> str:
    """Say what is wrong and how to mend it."""
    return f"{error.what} {error.mend}"
