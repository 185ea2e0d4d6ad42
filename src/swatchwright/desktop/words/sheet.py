"""The words of the page of the sheet."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from swatchwright.acts.sheet import CodeRecipe, LabelSize, Paper, SheetContent
from swatchwright.acts.sheet_form import SheetForm
from swatchwright.acts.sheet_on_shelf import OnShelf
from swatchwright.colour.difference import JUST_SEEN
from swatchwright.desktop.words.brief import zone_item
from swatchwright.errors import MendableError
from swatchwright.measures.kitchen import Country
from swatchwright.sheet.content import Zone

HEADING = "The recipe on paper"
HINT = "As it will print: a sheet to keep with the piece, or a label for the jar."
WAIT = (
    "Pick a colour on the Colour page, or open a job with a mix that is kept: then its sheet "
    "lies here as it will print."
)
MAKING = "Making the sheet…"
SAVING = "Writing the file…"
PRINTING = "Sending it to the printer…"
READING_CODE = "Mixing what the code says…"
FIRST_MIX = (
    "Mix 1 of the Colour page, which no job keeps yet. Keep a mix there, and piece, plan and "
    "notes come onto the sheet."
)

WHAT = "On the paper"
AS_SHEET, AS_LABEL = "Recipe sheet", "Jar label"
PAPER = "Paper"
PAPERS = {Paper.A4: "A4", Paper.LETTER: "Letter"}
SIZE = "Size"
HOW_MANY = "How many"
ONE, PAGE_FULL = "one of each zone", "a page full"
ZONE = "Zone"
ALL_ZONES = "all"
VOLUME = "To mix"
VOLUME_OF_JOB, VOLUME_OF_BENCH = "as the job has it", "as on the bench"
VOLUME_TIP = "The arrows or a number of ml; 0 takes the amount of the job or of the bench again"
ML = " ml"
AMOUNTS = "Amounts in"
IN_ML, IN_GRAMS = "ml", "g"
ML_NAME, GRAMS_NAME = "Amounts in millilitres", "Amounts in grams"
SPOONS = "Spoons"
NO_SPOONS = "none"
DATED = "Dated"
TODAY = "today"
TODAY_NAME = "Dated with the day on which it is made"

WHOLE, FULL = "Whole page", "Full size"
WHOLE_KEY, FULL_KEY = "Ctrl+-", "Ctrl++"
WHOLE_TIP = "All of a page at once"
FULL_TIP = "As large as on paper; the arrow keys move it"
GREY = "In black and white"
GREY_TIP = "How it reads from a printer without colours. Files are written in colour all the same."
SAVE = "Save…"
SAVE_TIP = "As a PDF, or as a picture of each page"
SAVE_KEY = "Ctrl+S"
PDF_FILES, PNG_FILES = "PDF (*.pdf)", "Pictures (*.png)"
PRINT = "Print…"
PRINT_TIP = "At its true size: leave “fit to page” off"
PRINT_KEY = "Ctrl+P"
COPY = "Copy the code"
COPY_TIP = "The text of the square code: pasted here or typed into a command, it is the recipe"
COPY_OF = "Code of the zone “{}”"
COPIED = "The text of the code is on the clipboard."
PRINTED = "It has gone to the printer."

CODE = "Read a code"
CODE_HINT = "Scan the square with a phone and paste its text here."
CODE_FIELD = "Text of a code"
WANT = "Want this colour"
WANT_TIP = "Its mixes are then found on the Colour page, with the paints of your shelf"
WANTED_NOW = "It is wanted now: its mixes are on the Colour page."
FROM_CODE = "read from the code of a recipe"
NO_COLOUR = "The code holds no colour, only the paints and their parts."
CODE_WANTED, CODE_DRY, SHELF_DRY = "wanted", "dry, as it was", "dry, of your shelf"

SAME_ON_SHELF = "With the paints of your shelf it dries the same."

NOT_PRINTED = "The printer did not take it."
NOT_PRINTED_MEND = "See that it is on and has paper, or save a PDF and print that."
NO_CODE = "The recipe is too long for a code."


def size_item(size: LabelSize) -> str:
    """Name a size of label in a list, with how many stand on their page."""
    name = size.name
    told = f"{name[:-2].replace('x', ' × ')} in" if name.endswith("in") else f"{_mm(size)} mm"
    return f"{told}, {size.across * size.down} on {size.paper}"


def _mm(size: LabelSize) -> str:
    return f"{size.width:g} × {size.height:g}"


def country_item(country: Country) -> str:
    """Name whose cups and spoons are meant."""
    return country.value[:1].upper() + country.value[1:]


def zone_choice(zone: str) -> str:
    """Name a zone in the list of zones."""
    return zone_item(zone)


def file_name(title: str, form: SheetForm) -> str:
    """Propose a name for the file."""
    plain = "".join(letter if letter.isalnum() else "-" for letter in title.strip().lower())
    kind = "label" if form.as_label else "sheet"
    return f"{plain.strip('-')[:60] or 'recipe'}-{kind}.pdf"


def with_ending(name: str, chosen: str) -> Path:
    """Give a file its ending by the kind that was chosen, where it was typed without one."""
    path = Path(name)
    if path.suffix.lower() in {".pdf", ".png"}:
        return path
    return Path(f"{name}{'.png' if chosen == PNG_FILES else '.pdf'}")


def saved(paths: Sequence[Path]) -> str:
    """Say what was written."""
    return f"Written: {', '.join(path.name for path in paths)}"


def trouble(error: MendableError) -> str:
    """Say what is wrong and what to do."""
    return f"{error.what} {error.mend}"


# --- the preview ---------------------------------------------------------------------------------


def preview_name(form: SheetForm, pages: int, *, grey: bool) -> str:
    """Name the preview for a screen reader."""
    what = "Labels" if form.as_label and form.fill else "Label" if form.as_label else "Recipe sheet"
    count = "1 page" if pages == 1 else f"{pages} pages"
    return f"{what} as it will print, {count}{', in black and white' if grey else ''}"


def preview_told(content: SheetContent) -> str:
    """Tell what is on the sheet to who cannot see it."""
    return " ".join([content.title, *(_zone_told(zone) for zone in content.zones)]).strip()


def _zone_told(zone: Zone) -> str:
    paints = ", ".join(f"{paint.name} {paint.parts:.6g} parts" for paint in zone.paints)
    head = f"{zone.name}: " if zone.name else ""
    return f"{head}{paints}; {zone.volume:g} ml."


def pages_line(pages: int, times: float) -> str:
    """Say how many pages there are and how large they are shown."""
    count = "1 page" if pages == 1 else f"{pages} pages"
    return f"{count}, shown at {times * 100:.0f} %"


def gaps_line(content: SheetContent) -> str:
    """Say what could not be told on the sheet, and what to do; empty where there is nothing."""
    return " ".join(content.gaps)


def lacks_line(content: SheetContent, form: SheetForm) -> str:
    """Say which parts of a job its sheet does not have yet; empty where none lacks."""
    if form.as_label or not content.job:
        return ""
    there = {
        "piece": bool(content.piece) or _left_out(content, "amounts"),
        "plan": bool(content.plan) or _left_out(content, "plan"),
        "finish": any(zone.finish for zone in content.zones) or _left_out(content, "finish"),
        "batch": bool(content.batches),
    }
    lacking = [word for word, is_there in there.items() if not is_there]
    if not lacking:
        return ""
    *most, last = lacking
    listed = f"{', '.join(most)} or {last}" if most else last
    return f"The job has no {listed} yet; what you add comes onto the sheet."


def _left_out(content: SheetContent, word: str) -> bool:
    return any(word in gap.split(" left out")[0] for gap in content.gaps)


# --- the code ------------------------------------------------------------------------------------


def code_head(recipe: CodeRecipe) -> str:
    """Say of what a code is."""
    told = [
        recipe.title,
        recipe.zone,
        "" if recipe.batch is None else f"batch {recipe.batch}",
        recipe.day,
        "" if recipe.ml is None else f"{recipe.ml:g} ml",
    ]
    return ", ".join(text for text in told if text) or "A recipe"


def parts_told(parts: float) -> str:
    """Say how many parts of a paint."""
    return "1 part" if parts == 1 else f"{parts:.6g} parts"


def shelf_line(found: OnShelf) -> str:
    """Say whether the shelf still gives the colour of a code."""
    if found.missing:
        names = ", ".join(found.missing)
        return f"Not on the shelf that is in use: {names}."
    if found.dry is None:
        return "The paints of that name on your shelf may not be mixed with each other."
    if found.apart is None:
        return "The code does not say how it dried, so it cannot be compared."
    if found.apart < JUST_SEEN:
        return SAME_ON_SHELF
    return (
        f"With the paints of your shelf it dries {found.apart:.1f} CIEDE2000 from what it was. "
        "Brush a sample first."
    )
