"""The words of the page of the piece on a photo."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path

from swatchwright.acts.batches import WHOLE_PIECE
from swatchwright.acts.repaint import NOT_THIS
from swatchwright.acts.repaint_job import Choice, ChoiceKind
from swatchwright.colour.convert import in_srgb
from swatchwright.colour.names import colour_name
from swatchwright.errors import MendableError
from swatchwright.values import Lab

HEADING = "On a photo"
HINT = (
    "A photo of the piece as it stands, a few strokes on each surface: and you see it in the "
    "chosen colours."
)

EMPTY_TITLE = "Drop a photo of the piece here"
EMPTY_TEXT = (
    "Take it in daylight, from the front and a little to one side,\n"
    "with a grey card standing in the same light as its front."
)
OPEN, OPEN_OTHER = "Open a photo of the piece…", "Another photo…"
OPEN_TIP = "Open another photo of the piece in place of this one"
SAMPLE = "Try it on a sample box"

BRUSHES = "Draw on"
GREY = "grey card"
GREY_TAG = "grey"
WIDTH = "Brush"
WIDTH_NAME = "Width of the brush"
WIDTH_TIP = "How wide the brush is on the photo ([ narrower, ] wider)"
CLEAR, CLEAR_TIP = "Clear", "Take all strokes away (Undo brings them back)"
LARGE, LARGE_TIP = (
    "Only the new colours",
    "Show only the piece in its new colours, as large as fits",
)
SAVE = "Save the picture…"
SAVE_TIP = "Save the piece in its new colours, in the size of the photo"
FINISHED = "With its finish"
FINISHED_TIP = "Show the washes, wax or varnish of the job over the mixes"
NO_FINISH_TIP = "Nothing lies over the mixes yet: lay it on, on the page Finish"

READING = "Reading the photo…"
FINDING = "Finding the surfaces…"
PAINTING = "Painting…"
SAVING = "Saving the picture…"
PICTURES = "Pictures (*.png *.jpg)"
PICTURE_NAME = "repainted.png"

BEFORE, AFTER = "as it is", "in the new colours"
FIRST_STROKE = "Draw a stroke or two on each surface. Here you see the piece in its new colours."
CANVAS_NAME = "The photo of the piece, to draw strokes on"
BY_KEYS = (
    "By keyboard: Return lays a box, arrows move it, Shift with arrows sizes it, Return makes a "
    "stroke of it, Delete takes it away."
)
NO_COLOURS = (
    "No mix is found yet. Choose a paint for each surface, or pick a colour on the page Colour: "
    "its mixes are offered here."
)

LEAVE = "as it is"
ZONE_NAME = "What {} is seen in"

DID_OPEN = "Open a photo of the piece"
DID_CLEAR = "Clear the strokes"
DID_GREY = "Mark the grey card"
DID_COLOUR = "Another colour for {}"
DID_FINISH = "See it with or without its finish"


def zone_word(zone: str) -> str:
    """Name a zone."""
    return "whole piece" if zone == WHOLE_PIECE else zone


def zone_name(zone: str) -> str:
    """Name the list of colours of a zone for a screen reader."""
    return ZONE_NAME.format(zone_word(zone))


def did_stroke(zone: str) -> str:
    """Say what undo takes back."""
    return f"A stroke on {zone_word(zone)}" if zone != NOT_THIS else "A stroke on what is not it"


def choice_word(choice: Choice) -> str:
    """Name a colour to choose."""
    if choice.kind is ChoiceKind.CHOSEN:
        zone = choice.name
        return "chosen mix" if zone == WHOLE_PIECE else f"chosen mix, {zone}"
    if choice.kind is ChoiceKind.MIX:
        return f"mix {choice.name}"
    return "the wanted colour" if choice.kind is ChoiceKind.WANTED else choice.name


def zone_told(lab: Lab | None, *, finished: bool) -> str:
    """Say in words what a zone is seen in."""
    if lab is None:
        return "old paint"
    about = "" if in_srgb(lab) else ", more vivid than a screen shows"
    return f"{colour_name(lab)}, {'finished' if finished else 'dry'}{about}"


def after_name(zones: Iterable[tuple[str, str]]) -> str:
    """Tell the picture for a screen reader."""
    told = "; ".join(f"{zone_word(zone)} {text}" for zone, text in zones)
    return f"The piece {AFTER}: {told}" if told else FIRST_STROKE


def canvas_told(zones: Sequence[str], *, grey: bool) -> str:
    """Tell the photo and what is marked on it for a screen reader."""
    told = [zone_word(zone) for zone in zones] + ([GREY] if grey else [])
    return f"{CANVAS_NAME}. Marked: {', '.join(told) or 'nothing yet'}. {BY_KEYS}"


def notes_line(notes: Sequence[str]) -> str:
    """Put notes into one paragraph."""
    return " ".join(notes)


def saved_line(path: Path) -> str:
    """Say where the picture went."""
    return f"Saved as {path.name}."


def trouble(error: MendableError) -> str:
    """Say what is wrong and how to mend it."""
    return f"{error.what} {error.mend}"
