"""The words of the page of the sheet."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from swatchwright.acts.sheet import CodeRecipe, LabelSize, Paper, SheetContent
from swatchwright.acts.sheet_form import SheetForm
from swatchwright.acts.sheet_on_shelf import OnShelf
from swatchwright.colour.difference import JUST_SEEN
from swatchwright.colour.names import closeness
from swatchwright.desktop.words.keeping import zone_item
from swatchwright.errors import MendableError
from swatchwright.language import say, say_count, say_in
from swatchwright.language.letters import plain_letters
from swatchwright.measures.kitchen import Country
from swatchwright.sheet.content import Zone

HEADING = say("The recipe on paper")
HINT = say("As it will print: a sheet to keep with the piece, or a label for the jar.")
WAIT = say(
    "Pick a colour on the Colour page, or open a job with a mix that is kept: then its sheet "
    "lies here as it will print."
)
MAKING = say("Making the sheet…")
SAVING = say("Writing the file…")
PRINTING = say("Sending it to the printer…")
READING_CODE = say("Mixing what the code says…")
FIRST_MIX = say(
    "Mix 1 of the Colour page, which no job keeps yet. Keep a mix there, and piece, plan and "
    "notes come onto the sheet."
)

WHAT = say("On the paper")
AS_SHEET, AS_LABEL = say("Recipe sheet"), say("Jar label")
PAPER = say("Paper")
PAPERS = {Paper.A4: "A4", Paper.LETTER: "Letter"}
SIZE = say("Size")
HOW_MANY = say("How many")
ONE, PAGE_FULL = say("one of each"), say("a page full")
ZONE = say("The mix for")
ALL_ZONES = say_in("of zones", "all")
VOLUME = say("To mix")
VOLUME_OF_JOB, VOLUME_OF_BENCH = say("as the job has it"), say("as on the bench")
VOLUME_TIP = say(
    "The arrows or a number of ml; 0 takes the amount of the job or of the bench again"
)
ML = " ml"
AMOUNTS = say("Amounts in")
IN_ML, IN_GRAMS = "ml", "g"
ML_NAME, GRAMS_NAME = say("Amounts in millilitres"), say("Amounts in grams")
SPOONS = say("Spoons")
NO_SPOONS = say_in("of spoons", "none")
DATED = say("Dated")
TODAY = say("today")
TODAY_NAME = say("Dated with the day on which it is made")

WHOLE, FULL = say("Whole page"), say("Full size")
WHOLE_KEY, FULL_KEY = "Ctrl+-", "Ctrl++"
WHOLE_TIP = say("All of a page at once")
FULL_TIP = say("As large as on paper; the arrow keys move it")
GREY = say("In black and white")
GREY_TIP = say(
    "How it reads from a printer without colours. Files are written in colour all the same."
)
SAVE = say("Save…")
SAVE_TIP = say("As a PDF, or as a picture of each page")
SAVE_KEY = "Ctrl+S"
PDF_FILES, PNG_FILES = say("PDF (*.pdf)"), say("Pictures (*.png)")
PRINT = say("Print…")
PRINT_TIP = say("At its true size: leave “fit to page” off")
PRINT_KEY = "Ctrl+P"
COPY = say("Copy the code")
COPY_TIP = say("The text of the square code: pasted here or typed into a command, it is the recipe")
COPIED = say("The text of the code is on the clipboard.")
PRINTED = say("It has gone to the printer.")

CODE = say("Read a code")
CODE_HINT = say("Scan the square with a phone and paste its text here.")
CODE_FIELD = say("Text of a code")
WANT = say("Want this colour")
WANT_TIP = say("Its mixes are then found on the Colour page, with the paints of your shelf")
WANTED_NOW = say("It is wanted now: its mixes are on the Colour page.")
NO_COLOUR = say("The code holds no colour, only the paints and their parts.")
CODE_WANTED, CODE_DRY, SHELF_DRY = say("wanted"), say("dry, as it was"), say("dry, of your shelf")

SAME_ON_SHELF = say("With the paints of your shelf it dries the same.")

NOT_PRINTED = say("The printer did not take it.")
NOT_PRINTED_MEND = say("See that it is on and has paper, or save a PDF and print that.")
NO_CODE = say("The recipe is too long for a code.")


def copy_of(zone: str) -> str:
    """Name the zone whose code is copied."""
    return say("Code of the mix for “{zone}”", zone=zone)


def size_item(size: LabelSize) -> str:
    """Name a size of label in a list, with how many stand on their page."""
    count = size.across * size.down
    if size.name.endswith("in"):
        inches = size.name[:-2].replace("x", " × ")
        return say("{size} in, {count} on {paper}", size=inches, count=count, paper=size.paper)
    return say(
        "{wide:g} × {high:g} mm, {count} on {paper}",
        wide=size.width,
        high=size.height,
        count=count,
        paper=size.paper,
    )


def country_item(country: Country) -> str:
    """Name whose cups and spoons are meant."""
    told = say(country.value)
    return told[:1].upper() + told[1:]


def zone_choice(zone: str) -> str:
    """Name a zone in the list of zones."""
    return zone_item(zone)


def file_name(title: str, client: str, form: SheetForm) -> str:
    """Propose a name for the file: piece and client, in letters that every system takes."""
    told = [text for text in (plain_letters(title), plain_letters(client)) if text]
    name = "-".join(told) or say_in("in the name of a file", "recipe")
    if form.as_label:
        return say("{name}-label.pdf", name=name)
    return say("{name}-sheet.pdf", name=name)


def with_ending(name: str, chosen: str) -> Path:
    """Give a file its ending by the kind that was chosen, where it was typed without one."""
    path = Path(name)
    if path.suffix.lower() in {".pdf", ".png"}:
        return path
    return Path(f"{name}{'.png' if chosen == PNG_FILES else '.pdf'}")


def saved(paths: Sequence[Path]) -> str:
    """Say what was written, and in which folder."""
    names = ", ".join(path.name for path in paths)
    return say("Written: {name}, in the folder {folder}", name=names, folder=paths[0].parent)


def trouble(error: MendableError) -> str:
    """Say what is wrong and what to do."""
    return f"{error.what} {error.mend}"


# --- the preview ---------------------------------------------------------------------------------


def preview_name(form: SheetForm, pages: int, *, grey: bool) -> str:
    """Name the preview for a screen reader."""
    count = _pages(pages)
    if form.as_label and form.fill:
        told = say("Labels as it will print, {pages}", pages=count)
    elif form.as_label:
        told = say("Label as it will print, {pages}", pages=count)
    else:
        told = say("Recipe sheet as it will print, {pages}", pages=count)
    return say("{preview}, in black and white", preview=told) if grey else told


def _pages(count: int) -> str:
    return say_count("{count} page", "{count} pages", count)


def preview_told(content: SheetContent) -> str:
    """Tell what is on the sheet to who cannot see it."""
    return " ".join([content.title, *(_zone_told(zone) for zone in content.zones)]).strip()


def _zone_told(zone: Zone) -> str:
    paints = ", ".join(
        say("{paint} {parts:.6g} parts", paint=paint.name, parts=paint.parts)
        if zone.in_parts
        else say("{paint} {ml:g} ml", paint=paint.name, ml=paint.ml)
        for paint in zone.paints
    )
    told = say("{paints}; {ml:g} ml.", paints=paints, ml=zone.volume)
    return f"{zone.name}: {told}" if zone.name else told


def pages_line(pages: int, times: float) -> str:
    """Say how many pages there are and how large they are shown."""
    return say("{pages}, shown at {size:.0f} %", pages=_pages(pages), size=times * 100)


def gaps_line(content: SheetContent) -> str:
    """Say what could not be told on the sheet, and what to do; empty where there is nothing."""
    return " ".join(content.gaps)


_LACKS = {
    "piece": say_in("what a job lacks", "piece"),
    "plan": say_in("what a job lacks", "plan"),
    "finish": say_in("what a job lacks", "finish"),
    "batch": say_in("what a job lacks", "batch"),
}


def lacks_line(content: SheetContent, form: SheetForm) -> str:
    """Say which parts of a job its sheet does not have yet; empty where none lacks."""
    if form.as_label or not content.job:
        return ""
    there = {
        "piece": bool(content.piece),
        "plan": bool(content.plan),
        "finish": any(zone.finish for zone in content.zones),
        "batch": bool(content.batches),
    }
    lacking = [
        _LACKS[part]
        for part, is_there in there.items()
        if not is_there and part not in content.gaps_in
    ]
    if not lacking:
        return ""
    *most, last = lacking
    told = say_in("what a job lacks", "{first} or {last}", first=", ".join(most), last=last)
    return say(
        "The job has no {parts} yet; what you add comes onto the sheet.",
        parts=told if most else last,
    )


# --- the code ------------------------------------------------------------------------------------


def code_head(recipe: CodeRecipe) -> str:
    """Say of what a code is."""
    told = [
        recipe.title,
        recipe.zone,
        "" if recipe.batch is None else say("batch {number}", number=recipe.batch),
        recipe.day,
        "" if recipe.ml is None else say("{ml:g} ml", ml=recipe.ml),
    ]
    return ", ".join(text for text in told if text) or say("A recipe")


def shelf_line(found: OnShelf) -> str:
    """Say whether the shelf still gives the colour of a code."""
    if found.missing:
        names = ", ".join(found.missing)
        return say("Not on the shelf that is in use: {paints}.", paints=names)
    if found.dry is None:
        return say("The paints of that name on your shelf may not be mixed with each other.")
    if found.apart is None:
        return say("The code does not say how it dried, so it cannot be compared.")
    if found.apart < JUST_SEEN:
        return SAME_ON_SHELF
    return say(
        "With the paints of your shelf it dries {apart:.1f} from what it was ({seen}). Brush a "
        "sample first.",
        apart=found.apart,
        seen=closeness(found.apart),
    )
