"""The words of the page of the job."""

from __future__ import annotations

from collections.abc import Collection
from datetime import UTC, datetime, tzinfo

from swatchwright.acts.batches import WHOLE_PIECE
from swatchwright.acts.kept_words import kept_words
from swatchwright.colour.names import colour_name, off_words
from swatchwright.desktop.words.keeping import zone_heading, zone_name
from swatchwright.language import bound, figure, mark, say, say_count, say_in
from swatchwright.language.dates import clock, date_text
from swatchwright.measures.shares import rounded_amounts
from swatchwright.mixing.recipe import can_be_counted
from swatchwright.shelf.jobs import Batch, JobLine, KeptPhoto, KeptRecipe, Note, Status
from swatchwright.shelf.store.search import Near

HEADING = say("The job")
HINT = say("What the piece is, who it is for, and all that was found for it. It is kept as you go.")

# --- the list ------------------------------------------------------------------------------------

JOBS = say("Jobs")
FIND = say("Find a job")
FIND_HINT = say("Find: piece, client, paint, note")
LIKE = say("Only those like the wanted colour")
LIKE_TIP = say(
    "Jobs that wanted or chose a colour near the one on the Colour page, the nearest first"
)
LIKE_NOTHING = say(
    "Pick a colour on the Colour page first; then jobs of a like colour can be found."
)
NONE_FOUND = say("No job has these words.")
NONE_LIKE = say("No job has a colour like it.")
BEGIN, BEGIN_TIP = say("Begin a job"), say("A new job, with nothing in it yet")
COPY = say("Copy")
COPY_TIP = say("A new job with the same colours, mixes and photos, without the batches")
REMOVE, REMOVE_TIP = say("Remove"), say("Take the job away; Undo brings it back")
REMOVED = say("Removed. Undo brings it back.")
BRING_IN = say("Bring in…")
BRING_IN_TIP = say("A job from its one file, as another machine wrote it")
GIVE_OUT = say("Give out…")
GIVE_OUT_TIP = say("The whole job as one file, with its photos and paints")
JOB_FILES = say("Jobs (*.swatchjob);;All files (*)")
ON_BENCH = say("on the bench")
_HERE = say("▸ On the bench")
NO_COLOUR = say("no colour yet")

# --- the first time ------------------------------------------------------------------------------

WELCOME = say("Begin with a piece and somebody who wants it painted")
WELCOME_TEXT = say(
    "A job is one piece for one client. It keeps the photo with its marks, the colours that are "
    "wanted, the mixes you chose and every batch you made, so that the same colour comes back next "
    "year. Nothing needs saving: it is all kept as you go, and Undo takes anything back."
)
NO_JOB = say("No job is on the bench")
NO_JOB_TEXT = say("Press one of the jobs on the left to lay it here, or begin another.")
DEMO = say("Play with the demonstration job")
DEMO_TEXT = say(
    "A cushion in clay red and ink blue, and a blanket box to go with it, for a harbour workshop. "
    "All of it is invented, the paints too: nothing there can be spoiled."
)
PREPARING_DEMO = say("Preparing the demonstration…")

# --- the head ------------------------------------------------------------------------------------

PIECE = say_in("of a job", "Piece")
CLIENT = say("Client")
BRIEF = say("What is asked")
LIGHT = say_in("of a room", "Light")
STATUS = say_in("of a job", "How far")
PIECE_HINT = say("such as: chest of drawers")
CLIENT_HINT = say("who it is for")
BRIEF_HINT = say("What the client said: the look, the sheen, what must go with it, by when")
LIGHT_HINT = say("where it will stand")
LIGHT_NAME = say("The light of the room where the piece will stand")
LIGHTS = (
    "",
    mark("Daylight, window to the north"),
    mark("Daylight, sunny window"),
    mark("Warm lamp in the evening"),
    mark("Cool LED light"),
    mark("Tubes, as in a workshop or kitchen"),
    mark("Daylight by day, warm lamp by night"),
)
"""As they are kept with a job; `light_told` says them."""

STATUSES = {
    Status.ASKED: say("Asked for"),
    Status.SAMPLING: say("Trying samples"),
    Status.AGREED: say("Agreed"),
    Status.PAINTED: say_in("of a job", "Painted"),
    Status.DONE: say("Done and delivered"),
}

# --- the photo -----------------------------------------------------------------------------------

PHOTO = say("Photo")
NO_PHOTO = say(
    "No photo is kept yet: it comes with the first mix that you keep on the Colour page."
)
LAY_PHOTO = say("To the bench")
LAY_PHOTO_TIP = say("Open this photo with its marks on the Colour page")
DROP_PHOTO = say("Take off")
DROP_PHOTO_TIP = say("Take this photo off the job; Undo brings it back")
NEXT_PHOTO = say("Next photo")
PHOTO_GONE = say("The kept copy of this photo cannot be read.")

# --- colours and batches -------------------------------------------------------------------------

COLOURS = say("Colours and mixes")
NO_COLOURS = say(
    "No mix is kept yet. On the Colour page, press Keep at the mix you choose: it comes here, with "
    "the colour it is for."
)
TO_COLOUR_PAGE = say("To the Colour page")
WANTED = say("wanted")
SHOW_MIXES = say("Its mixes")
SHOW_MIXES_TIP = say("Show the mixes for this colour on the Colour page")
ANOTHER = say("Another piece in it")
ANOTHER_TIP = say(
    "Begin a job for a piece that is to stand beside this one: its wanted colour is this mix as it "
    "dries, and the paints in use now are tried for it"
)
TAKE_OFF = say_in("of a colour", "Take off")
TAKE_OFF_TIP = say(
    "Take this colour and its mixes off the job; its batches stay, and Undo brings it back"
)
NOT_IN_USE = say(
    "Each part of the piece has a mix of its own now: nothing is mixed or bought for this one."
)
NO_SUCH_ZONE = say("The piece has no such part: nothing is mixed or bought for this one.")
NOT_CHOSEN = say("No mix is chosen for it yet.")
UNTRIED = say("No sample of it has been tried yet.")
BATCHES = say("Batches")
BATCH_OF = say_in("to mix an amount", "Mix")
BATCH_FOR = say("for the")
BATCH_NOTE = say("a note, if you like")
MAKE_BATCH = say("Note this batch")
MAKE_BATCH_TIP = say(
    "By the same recipe as before, with the next number; what is poured is drawn from the stock of "
    "your shelf where that is known"
)
NO_BATCHES = say("No batch has been made yet.")
TAKE_BACK = say("Take back")
PAINT_CHANGED = say("Before you mix it again:")
SAMPLE_FIRST = say("Brush a sample, dry it and hold it to the cloth before you mix the batch.")

# --- notes and the rest --------------------------------------------------------------------------

NOTES = say("Notes")
NOTE_NAME = say("A new note")
NOTE_HINT = say("Write a note; it is kept with today's date")
ADD_NOTE = say("Keep the note")
ALSO_KEPT = say("Also kept with this job")
NO_PARTS = say("Nothing yet: the piece, the plan, finishes and samples come here as you go.")
GO_THERE = say("Show")
PARTS = {
    "piece": (say("The piece"), "piece"),
    "plan": (say("The plan of work"), "plan"),
    "finish": (say("Washes and finishes"), "finish"),
    "client": (say("What the client wants now"), "finish"),
    "samples": (say("Samples held to the cloth"), "sample"),
    "sheet": (say("What the recipe sheet says"), "sheet"),
}
"""Parts of a job that other pages keep, in the painter's words, and the pages they are on."""


def light_told(kept: str) -> str:
    """Say the light of a room as it is kept with a job."""
    return say(kept)


def light_kept(told: str) -> str:
    """Give what is kept of a light: the word of the list in English, or what she wrote herself."""
    return next((kept for kept in LIGHTS if light_told(kept) == told), told)


def line_name(line: JobLine, near: Near | None, *, on_bench: bool) -> str:
    """Tell a job of the list for a screen reader."""
    shown = line.colour if near is None else near.lab
    colour = NO_COLOUR if shown is None else colour_name(shown)
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
    return "" if near is None else off_words(near.delta_e)


def when(text: str, now: datetime | None = None, zone: tzinfo | None = None) -> str:
    """Say a time of the store (UTC) as a day, or of today as an hour, where the painter is."""
    try:
        at = datetime.strptime(text, "%Y-%m-%dT%H:%M:%SZ").replace(tzinfo=UTC).astimezone(zone)
    except ValueError:
        return text
    today = (datetime.now(UTC) if now is None else now).astimezone(zone)
    if at.date() == today.date():
        return say("today, {time}", time=clock(60 * at.hour + at.minute))
    return date_text(f"{at:%Y-%m-%d}")


def photo_name(photo: KeptPhoto, place: int, count: int) -> str:
    """Tell a kept photo: its name, and which of how many it is."""
    if count <= 1:
        return photo.name
    return say("{name}, {place} of {count}", name=photo.name, place=place, count=count)


def photo_told(photo: KeptPhoto, place: int, count: int) -> str:
    """Tell a kept photo and its marks for a screen reader."""
    name, marks = photo_name(photo, place, count), photo.marks
    if marks.grey and marks.cloth:
        return say("Photo {name}, with the grey card marked and the cloth marked", name=name)
    if marks.grey:
        return say("Photo {name}, with the grey card marked and no cloth marked", name=name)
    if marks.cloth:
        return say("Photo {name}, with no grey card marked and the cloth marked", name=name)
    return say("Photo {name}, with no grey card marked and no cloth marked", name=name)


def recipe_rows(recipe: KeptRecipe, volume: float) -> list[tuple[str, str]]:
    """Give the parts and the name of each paint; of too many to count the ml of a volume, ml."""
    if _counted(recipe):
        return [(parts_of(paint.parts), paint.name) for paint in recipe.paints]
    amounts = rounded_amounts([paint.share for paint in recipe.paints], volume)
    return [(ml(amount), paint.name) for amount, paint in zip(amounts, recipe.paints, strict=True)]


def _counted(recipe: KeptRecipe) -> bool:
    """Tell whether a recipe is told in parts."""
    paints = recipe.paints
    return can_be_counted([paint.parts for paint in paints], [paint.share for paint in paints])


def measured_for(recipe: KeptRecipe, volume: float) -> str:
    """Say for how much the ml of a recipe are told; empty where it is told in parts."""
    if _counted(recipe):
        return ""
    return say("for {amount} of the mix", amount=ml(volume))


def parts_of(count: int) -> str:
    """Say how many parts."""
    return say_count("{count} part", "{count} parts", count)


def kept_for(volume: float) -> str:
    """Say how much of a mix was to be mixed when its colour was kept."""
    return say("Kept for {amount}", amount=ml(volume))


def recipe_closeness(recipe: KeptRecipe) -> str:
    """Say how near a kept mix comes to the colour it is for."""
    return off_words(recipe.delta_e)


def mixes_name(zone: str) -> str:
    """Say for a screen reader whose mixes a button shows."""
    return say("Its mixes for {zone}", zone=zone_name(zone))


def another_name(zone: str) -> str:
    """Say for a screen reader in whose mix a button begins another piece."""
    return say("Another piece in the mix for {zone}", zone=zone_name(zone))


def take_off_name(zone: str) -> str:
    """Say for a screen reader whose colour and mixes are taken off."""
    return say("Take off the colour and the mixes for {zone}", zone=zone_name(zone))


def batch_head(batch: Batch) -> str:
    """Say which batch it was, when, and how much."""
    told = {"number": batch.number, "day": date_text(batch.day), "amount": ml(batch.volume)}
    if batch.zone == WHOLE_PIECE:
        return say("Batch {number}, {day}: {amount}", **told)
    return say("Batch {number}, {day}: {amount}, for {zone}", zone=zone_name(batch.zone), **told)


def batch_poured(batch: Batch) -> str:
    """Say what went into a batch, and what of it was not drawn from the stock."""
    poured = ", ".join(f"{ml(p.ml)} {p.name}" for p in batch.poured)
    drawn = sum(p.drawn for p in batch.poured)
    if drawn <= 0:
        told = say("Not drawn from the stock, which is not known.")
    elif drawn < sum(p.ml for p in batch.poured) - 0.05:
        told = say("{amount} of it drawn from the stock.", amount=ml(drawn))
    else:
        told = say("Drawn from the stock.")
    return ". ".join(text for text in (poured, batch.note, told) if text)


def take_back_name(batch: Batch) -> str:
    """Say for a screen reader which batch is taken back."""
    return say("Take back batch {number}", number=batch.number)


def earlier_batches(count: int) -> str:
    """Say how many batches are not shown."""
    return say_count("and {count} earlier", "and {count} earlier", count) if count else ""


def ml(volume: float) -> str:
    """Say a volume."""
    return bound(f"{figure(volume, '.1f' if volume < 20 else '.0f')} ml")


def note_line(note: Note) -> str:
    """Tell a note with its time."""
    return f"{when(note.written)}: {kept_words(note.text)}"


def written_file(name: str) -> str:
    """Say which file a job was written to."""
    return say("Written: {name}", name=name)


def field_name(
    dry: KeptRecipe | None, zone: str, wanted_name: str, besides: Collection[str] = ()
) -> str:
    """Name the touching colours of a zone for a screen reader."""
    head = zone_heading(zone, besides)
    if dry is None:
        return say(
            "{zone}: wanted {wanted}; {rest}", zone=head, wanted=wanted_name, rest=NOT_CHOSEN
        )
    return say(
        "{zone}: wanted {wanted}; the kept mix: {near}",
        zone=head,
        wanted=wanted_name,
        near=recipe_closeness(dry),
    )


def part_line(told: str, detail: str) -> str:
    """Say what is kept of a part in a line."""
    return f"{told}: {detail}" if detail else told


def go_name(told: str) -> str:
    """Say for a screen reader which part a button shows."""
    return f"{GO_THERE}: {told}"
