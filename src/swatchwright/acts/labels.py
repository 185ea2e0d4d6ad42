"""What was done, in the words that are kept with an edit for undo.

They are kept in English, as the commands print them, with what they are about filled in;
`kept_words` says them in the painter's language when they are shown.
"""

from __future__ import annotations

from swatchwright.language import mark

__all__ = ["LABELS", "PARTS", "part_label"]

BEGIN = mark("Begin “{job}”")
BEGIN_DEMO = mark("Begin the demonstration job")
CHANGE_HEAD = mark("Change the head of “{job}”")
NOTE = mark("Note on “{job}”")
WANTED = mark("Wanted colours of “{job}”")
COPY = mark("Copy “{job}”")
REMOVE = mark("Remove “{job}”")
BRING_IN = mark("Bring in “{job}” from {file}")
RESCUE = mark("Rescue what can be read of {file}")

ADD_PHOTO = mark("Add a photo to “{job}”")
MARK_PHOTO = mark("Mark a photo of “{job}”")
REMOVE_PHOTO = mark("Remove a photo of “{job}”")

KEEP_RECIPES = mark("Keep recipes for “{job}”")
CHOOSE_RECIPE = mark("Choose a recipe for “{job}”")
KEEP_MIX = mark("Keep mix {number} for “{job}”")
KEEP_MIX_FOR_ZONE = mark("Keep mix {number} for “{job}”, {zone}")
TAKE_MIX_OFF = mark("Take a colour and its mixes off “{job}”")
TAKE_MIX_OFF_ZONE = mark("Take a colour and its mixes off “{job}”, {zone}")
KEEP_SAMPLE = mark("Take sample {number} as the mix of “{job}”")
KEEP_SAMPLE_FOR_ZONE = mark("Take sample {number} as the mix of “{job}”, {zone}")
KEEP_POT = mark("Take what is in the pot as the mix of “{job}”")
KEEP_POT_FOR_ZONE = mark("Take what is in the pot as the mix of “{job}”, {zone}")
TEACH = mark("Teach the paints by the samples of “{job}”")
MIX_BATCH = mark("Mix batch {number} of “{job}”, {ml} ml")
TAKE_BACK = mark("Take back batch {number} of “{job}”")
THE_PIECE = mark("The piece of “{job}”")
STROKE = mark("A stroke on {zone}")
OTHER_COLOUR = mark("Another colour for {zone}")

TAKE_DEMO = mark("Take the demonstration shelf")
PUT_ONE = mark("Put 1 paint on the shelf")
PUT_MANY = mark("Put {number} paints on the shelf")
PUT_ONE_FROM = mark("Put 1 paint on the shelf from {file}")
PUT_MANY_FROM = mark("Put {number} paints on the shelf from {file}")
ADD_PAINT = mark("Add “{paint}” to the shelf")
CHANGE_PAINT = mark("Change “{paint}” on the shelf")
TAKE_OFF = mark("Take “{paint}” off the shelf")
TAKE_ALL_OFF = mark("Take paints off the shelf")
TIMES = mark("Times from the tin of “{paint}”")
FORGET_STOCK = mark("Forget how much of “{paint}” is left")
SET_STOCK = mark("Set “{paint}” to {ml} ml")
ADD_STOCK = mark("Add {ml} ml of “{paint}”")
DRAW_STOCK = mark("Draw {ml} ml of “{paint}”")

PARTS = {
    "amounts": mark("Amounts of “{job}”"),
    "bench": mark("Bench of “{job}”"),
    "client": mark("What the client wants of “{job}”"),
    "compare": mark("Compare of “{job}”"),
    "finish": mark("Finish of “{job}”"),
    "piece": mark("Piece of “{job}”"),
    "piece-form": mark("Piece-form of “{job}”"),
    "plan": mark("Plan of “{job}”"),
    "repaint": mark("Repaint of “{job}”"),
    "sample-photo": mark("Sample-photo of “{job}”"),
    "samples": mark("Samples of “{job}”"),
    "seen-in": mark("The light to look in of “{job}”"),
    "sheet-form": mark("Sheet-form of “{job}”"),
    "sitting": mark("Sitting of “{job}”"),
    "wishes": mark("Wishes of “{job}”"),
}
"""The words for a change of a part of a job, by the part's name."""

LABELS = (
    *(BEGIN, BEGIN_DEMO, CHANGE_HEAD, NOTE, WANTED, COPY, REMOVE, BRING_IN, RESCUE),
    *(ADD_PHOTO, MARK_PHOTO, REMOVE_PHOTO),
    *(KEEP_RECIPES, CHOOSE_RECIPE, KEEP_MIX_FOR_ZONE, KEEP_MIX, MIX_BATCH, TAKE_BACK, THE_PIECE),
    *(TAKE_MIX_OFF_ZONE, TAKE_MIX_OFF),
    *(KEEP_SAMPLE_FOR_ZONE, KEEP_SAMPLE, TEACH, STROKE, OTHER_COLOUR),
    *(KEEP_POT_FOR_ZONE, KEEP_POT),
    *(TAKE_DEMO, PUT_ONE, PUT_MANY, PUT_ONE_FROM, PUT_MANY_FROM, TAKE_OFF, TAKE_ALL_OFF, TIMES),
    *(ADD_PAINT, CHANGE_PAINT),
    *(FORGET_STOCK, SET_STOCK, ADD_STOCK, DRAW_STOCK),
    *PARTS.values(),
)
"""All of them; where one could be taken for another, the one that says more comes first."""


def part_label(part: str, job: str) -> str:
    """Give the words for a change of a part of a job."""
    known = PARTS.get(part)
    return f"{part.capitalize()} of “{job}”" if known is None else known.format(job=job)
