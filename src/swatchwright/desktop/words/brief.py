"""The words of the page of the job, and of keeping a mix with it."""

from __future__ import annotations

from datetime import UTC, datetime, tzinfo

from swatchwright.acts.batches import WHOLE_PIECE
from swatchwright.colour.names import closeness, colour_name
from swatchwright.shelf.jobs import Batch, JobLine, KeptPhoto, KeptRecipe, Note, Status
from swatchwright.shelf.store.search import Near

HEADING = "The job"
HINT = "What the piece is, who it is for, and all that was found for it. It is kept as you go."

# --- the list ------------------------------------------------------------------------------------

JOBS = "Jobs"
FIND = "Find a job"
FIND_HINT = "Find: piece, client, paint, note"
LIKE = "Only those like the wanted colour"
LIKE_TIP = "Jobs that wanted or chose a colour near the one on the Colour page, the nearest first"
LIKE_NOTHING = "Pick a colour on the Colour page first; then jobs of a like colour can be found."
NONE_FOUND = "No job has these words."
NONE_LIKE = "No job has a colour like it."
BEGIN, BEGIN_TIP = "Begin a job", "A new job, with nothing in it yet"
COPY, COPY_TIP = "Copy", "A new job with the same colours, mixes and photos, without the batches"
REMOVE, REMOVE_TIP = "Remove", "Take the job away; Undo brings it back"
REMOVED = "Removed. Undo brings it back."
BRING_IN, BRING_IN_TIP = "Bring in…", "A job from its one file, as another machine wrote it"
GIVE_OUT, GIVE_OUT_TIP = "Give out…", "The whole job as one file, with its photos and paints"
JOB_FILES = "Jobs (*.swatchjob);;All files (*)"
ON_BENCH = "on the bench"
_HERE = "▸ On the bench"
NO_COLOUR = "no colour yet"

# --- the first time ------------------------------------------------------------------------------

WELCOME = "Begin with a piece and somebody who wants it painted"
WELCOME_TEXT = (
    "A job is one piece for one client. It keeps the photo with its marks, the colours that are "
    "wanted, the mixes you chose and every batch you made, so that the same colour comes back next "
    "year. Nothing needs saving: it is all kept as you go, and Undo takes anything back."
)
NO_JOB = "No job is on the bench"
NO_JOB_TEXT = "Press one of the jobs on the left to lay it here, or begin another."
DEMO = "Play with the demonstration job"
DEMO_TEXT = (
    "A cushion in clay red and ink blue, and a blanket box to go with it, for a harbour workshop. "
    "All of it is invented, the paints too: nothing there can be spoiled."
)
PREPARING_DEMO = "Preparing the demonstration…"

# --- the head ------------------------------------------------------------------------------------

PIECE, CLIENT, BRIEF, LIGHT, STATUS = "Piece", "Client", "What is asked", "Light", "How far"
PIECE_HINT = "such as: chest of drawers"
CLIENT_HINT = "who it is for"
BRIEF_HINT = "What the client said: the look, the sheen, what must go with it, by when"
LIGHT_HINT = "where it will stand"
LIGHT_NAME = "The light of the room where the piece will stand"
LIGHTS = (
    "",
    "Daylight, window to the north",
    "Daylight, sunny window",
    "Warm lamp in the evening",
    "Cool LED light",
    "Tubes, as in a workshop or kitchen",
    "Daylight by day, warm lamp by night",
)
STATUSES = {
    Status.ASKED: "Asked for",
    Status.SAMPLING: "Trying samples",
    Status.AGREED: "Agreed",
    Status.PAINTED: "Painted",
    Status.DONE: "Done and delivered",
}

# --- the photo -----------------------------------------------------------------------------------

PHOTO = "Photo"
NO_PHOTO = "No photo is kept yet: it comes with the first mix that you keep on the Colour page."
LAY_PHOTO, LAY_PHOTO_TIP = "To the bench", "Open this photo with its marks on the Colour page"
DROP_PHOTO, DROP_PHOTO_TIP = "Take off", "Take this photo off the job; Undo brings it back"
NEXT_PHOTO = "Next photo"
PHOTO_GONE = "The kept copy of this photo cannot be read."

# --- colours and batches -------------------------------------------------------------------------

COLOURS = "Colours and mixes"
NO_COLOURS = (
    "No mix is kept yet. On the Colour page, press Keep at the mix you choose: it comes here, with "
    "the colour it is for."
)
TO_COLOUR_PAGE = "To the Colour page"
WANTED = "wanted"
SHOW_MIXES, SHOW_MIXES_TIP = "Its mixes", "Show the mixes for this colour on the Colour page"
NOT_CHOSEN = "No mix is chosen for it yet."
BATCHES = "Batches"
BATCH_OF = "Mix"
BATCH_FOR = "for the"
BATCH_NOTE = "a note, if you like"
MAKE_BATCH = "Note this batch"
MAKE_BATCH_TIP = (
    "By the same parts as before, with the next number; what is poured is drawn from the stock of "
    "your shelf where that is known"
)
NO_BATCHES = "No batch has been made yet."
TAKE_BACK = "Take back"
PAINT_CHANGED = "Before you mix it again:"
SAMPLE_FIRST = "Brush a sample, dry it and hold it to the cloth before you mix the batch."

# --- notes and the rest --------------------------------------------------------------------------

NOTES = "Notes"
NOTE_NAME = "A new note"
NOTE_HINT = "Write a note; it is kept with today's date"
ADD_NOTE = "Keep the note"
ALSO_KEPT = "Also kept with this job"
NO_PARTS = "Nothing yet: the piece, the plan, finishes and samples come here as you go."
GO_THERE = "Show"
PARTS = {
    "piece": ("The piece", "piece"),
    "plan": ("The plan of work", "plan"),
    "finish": ("Washes and finishes", "finish"),
    "samples": ("Samples held to the cloth", "sample"),
    "sheet": ("What the recipe sheet says", "sheet"),
}
"""Parts of a job that other pages keep, in the painter's words, and the pages they are on."""

# --- keeping a mix -------------------------------------------------------------------------------

KEEP, KEPT = "Keep", "✓ Kept"
KEEP_TIP = "Choose this mix for the job; the others are kept beside it, and the photo"
PHOTO_NOT_KEPT = "The mix is kept. Open the photo again and press Keep to have it with the job."
KEEP_FOR = "Keep for the"
EARLIER, LATER = "◀", "▶"
EARLIER_NAME, LATER_NAME = "Show the mixes before", "Show the mixes after"
IN_YOUR_MONEY = "The price is in the money of your shelf, by the sizes of tin that are on it."
KEPT_ELSEWHERE = "The mix kept {} is not among these: see the Job page."
YOUR_PAINTS = "Your kept paints"
KEEP_PAINTS = "Keep these paints"
KEEP_PAINTS_TIP = "Put them on your shelf, where they are found again at the next start"
ONLY_NOW = "Only for now"


def zone_name(zone: str) -> str:
    """Name a zone in a sentence: “the whole piece” or “the drawers”."""
    return "the whole piece" if zone == WHOLE_PIECE else f"the {zone}"


def zone_item(zone: str) -> str:
    """Name a zone in a list."""
    return "whole piece" if zone == WHOLE_PIECE else zone


def zone_heading(zone: str) -> str:
    """Head what belongs to a zone."""
    return "The whole piece" if zone == WHOLE_PIECE else zone[:1].upper() + zone[1:]


def keep_name(number: int, zone: str, *, kept: bool) -> str:
    """Tell what the button of a mix does, or that it is done, for a screen reader."""
    if kept:
        return f"Mix {number} is kept for {zone_name(zone)}"
    return f"Keep mix {number} for {zone_name(zone)}"


def kept_line(number: int | None, zone: str, *, otherwise: bool) -> str:
    """Say which mix is kept for a zone; empty where none is."""
    if number is not None:
        return f"✓ Mix {number} is kept for {zone_name(zone)}."
    return KEPT_ELSEWHERE.format(f"for {zone_name(zone)}") if otherwise else ""


def shown_line(first: int, last: int, count: int) -> str:
    """Say which of the mixes are in view."""
    if first == 1 and last == count:
        return f"All {count} mixes" if count > 1 else "One mix"
    told = f"Mix {first}" if first == last else f"Mixes {first} to {last}"
    return f"{told} of {count}"


def opened_shelf(count: int, name: str) -> str:
    """Say that the paints of a file are used, and are not kept yet."""
    return f"The {count} paints of {name} are in use for now. Keep them on your shelf?"


def line_name(line: JobLine, near: Near | None, *, on_bench: bool) -> str:
    """Tell a job of the list for a screen reader."""
    colour = NO_COLOUR if line.colour is None else colour_name(line.colour)
    told = [line.title, line.client, STATUSES[line.status], colour, near_line(near)]
    return ", ".join(text for text in [*told, ON_BENCH if on_bench else ""] if text)


def line_second(line: JobLine) -> str:
    """Say who a job is for."""
    return line.client


def line_third(line: JobLine, near: Near | None, *, on_bench: bool) -> str:
    """Say how far a job is, when it was changed, how near its colour is, whether it lies here."""
    told = (STATUSES[line.status], when(line.changed), near_line(near))
    rest = "  ·  ".join(text for text in told if text)
    return f"{rest}\n{_HERE}" if on_bench else rest


def near_line(near: Near | None) -> str:
    """Say how near the colour of a job is to the one looked for."""
    return "" if near is None else f"{near.delta_e:.1f} off"


def when(text: str, now: datetime | None = None, zone: tzinfo | None = None) -> str:
    """Say a time of the store (UTC) as a day, or of today as an hour, where the painter is."""
    try:
        at = datetime.strptime(text, "%Y-%m-%dT%H:%M:%SZ").replace(tzinfo=UTC).astimezone(zone)
    except ValueError:
        return text
    today = (datetime.now(UTC) if now is None else now).astimezone(zone)
    return f"today, {at:%H:%M}" if at.date() == today.date() else day(f"{at:%Y-%m-%d}")


def day(text: str) -> str:
    """Say a day such as 2026-03-01 as 1 March 2026."""
    try:
        at = datetime.strptime(text, "%Y-%m-%d").replace(tzinfo=UTC)
    except ValueError:
        return text
    return f"{at.day} {_MONTHS[at.month - 1]} {at.year}"


_MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)


def photo_name(photo: KeptPhoto, place: int, count: int) -> str:
    """Tell a kept photo: its name, and which of how many it is."""
    which = f", {place} of {count}" if count > 1 else ""
    return f"{photo.name}{which}"


def photo_told(photo: KeptPhoto, place: int, count: int) -> str:
    """Tell a kept photo and its marks for a screen reader."""
    marks = photo.marks
    grey = "with the grey card marked" if marks.grey else "with no grey card marked"
    cloth = "and the cloth marked" if marks.cloth else "and no cloth marked"
    return f"{PHOTO} {photo_name(photo, place, count)}, {grey} {cloth}"


def recipe_rows(recipe: KeptRecipe) -> list[tuple[str, str]]:
    """Give the parts and the name of each paint; shares where the parts are too many to count."""
    counted = sum(paint.parts for paint in recipe.paints) <= _MOST_PARTS
    return [
        (parts_of(paint.parts) if counted else f"{paint.share:.1%}", paint.name)
        for paint in recipe.paints
    ]


_MOST_PARTS = 40


def parts_of(count: int) -> str:
    """Say how many parts."""
    return f"{count} part" if count == 1 else f"{count} parts"


def recipe_closeness(recipe: KeptRecipe) -> str:
    """Say how near a kept mix comes to the colour it is for."""
    told = closeness(recipe.delta_e)
    return f"{told[:1].upper()}{told[1:]}, off by {recipe.delta_e:.1f}"


def mixes_name(zone: str) -> str:
    """Say for a screen reader whose mixes a button shows."""
    return f"{SHOW_MIXES} for {zone_name(zone)}"


def batch_head(batch: Batch) -> str:
    """Say which batch it was, when, and how much."""
    zone = "" if batch.zone == WHOLE_PIECE else f", for {zone_name(batch.zone)}"
    return f"Batch {batch.number}, {day(batch.day)}: {ml(batch.volume)}{zone}"


def batch_poured(batch: Batch) -> str:
    """Say what went into a batch, and what of it was not drawn from the stock."""
    poured = ", ".join(f"{ml(p.ml)} {p.name}" for p in batch.poured)
    drawn = sum(p.drawn for p in batch.poured)
    if drawn <= 0:
        told = "Not drawn from the stock, which is not known."
    elif drawn < sum(p.ml for p in batch.poured) - 0.05:
        told = f"{ml(drawn)} of it drawn from the stock."
    else:
        told = "Drawn from the stock."
    return ". ".join(text for text in (poured, batch.note, told) if text)


def take_back_name(batch: Batch) -> str:
    """Say for a screen reader which batch is taken back."""
    return f"{TAKE_BACK} batch {batch.number}"


def earlier_batches(count: int) -> str:
    """Say how many batches are not shown."""
    return f"and {count} earlier" if count else ""


def ml(volume: float) -> str:
    """Say a volume."""
    return f"{volume:.1f} ml" if volume < 20 else f"{volume:.0f} ml"


def note_line(note: Note) -> str:
    """Tell a note with its time."""
    return f"{when(note.written)}: {note.text}"


def written_file(name: str) -> str:
    """Say which file a job was written to."""
    return f"Written: {name}"


def field_name(dry: KeptRecipe | None, zone: str, wanted_name: str) -> str:
    """Name the touching colours of a zone for a screen reader."""
    mixed = NOT_CHOSEN if dry is None else f"the kept mix: {recipe_closeness(dry)}"
    return f"{zone_heading(zone)}: wanted {wanted_name}; {mixed}"


def part_line(told: str, detail: str) -> str:
    """Say what is kept of a part in a line."""
    return f"{told}: {detail}" if detail else told
