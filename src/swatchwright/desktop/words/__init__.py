"""Every word the window shows, in one place, said in the language that was chosen."""

from __future__ import annotations

from swatchwright.acts.kept_words import kept_words
from swatchwright.acts.samples import SamplePhoto
from swatchwright.desktop.words.bits import (
    SCALE_TIP as SCALE_TIP,
)
from swatchwright.desktop.words.bits import (
    about as about,
)
from swatchwright.desktop.words.bits import (
    adding as adding,
)
from swatchwright.desktop.words.bits import (
    first_low as first_low,
)
from swatchwright.desktop.words.bits import (
    first_up as first_up,
)
from swatchwright.desktop.words.bits import (
    millilitres as millilitres,
)
from swatchwright.desktop.words.bits import (
    parts_word as parts_word,
)
from swatchwright.desktop.words.mixes import (
    BRUSH_FIRST as BRUSH_FIRST,
)
from swatchwright.desktop.words.mixes import (
    REACH as REACH,
)
from swatchwright.desktop.words.mixes import (
    amount_line as amount_line,
)
from swatchwright.desktop.words.mixes import (
    body_name as body_name,
)
from swatchwright.desktop.words.mixes import (
    closeness_line as closeness_line,
)
from swatchwright.desktop.words.mixes import (
    cost_line as cost_line,
)
from swatchwright.desktop.words.mixes import (
    dial_text as dial_text,
)
from swatchwright.desktop.words.mixes import (
    figures_line as figures_line,
)
from swatchwright.desktop.words.mixes import (
    figures_tip as figures_tip,
)
from swatchwright.desktop.words.mixes import (
    finish_line as finish_line,
)
from swatchwright.desktop.words.mixes import (
    hiding_line as hiding_line,
)
from swatchwright.desktop.words.mixes import (
    in_parts as in_parts,
)
from swatchwright.desktop.words.mixes import (
    known_line as known_line,
)
from swatchwright.desktop.words.mixes import (
    light_change_line as light_change_line,
)
from swatchwright.desktop.words.mixes import (
    mix_text as mix_text,
)
from swatchwright.desktop.words.mixes import (
    neighbour_text as neighbour_text,
)
from swatchwright.desktop.words.mixes import (
    neighbour_word as neighbour_word,
)
from swatchwright.desktop.words.mixes import (
    pour_text as pour_text,
)
from swatchwright.desktop.words.mixes import (
    reach_text as reach_text,
)
from swatchwright.desktop.words.mixes import (
    sample_line as sample_line,
)
from swatchwright.desktop.words.mixes import (
    shortfall_line as shortfall_line,
)
from swatchwright.desktop.words.mixes import (
    touch_line as touch_line,
)
from swatchwright.desktop.words.mixes import (
    way_line as way_line,
)
from swatchwright.desktop.words.mixes import (
    why_line as why_line,
)
from swatchwright.desktop.words.wished import (
    WISHED as WISHED,
)
from swatchwright.desktop.words.wished import (
    is_wished as is_wished,
)
from swatchwright.desktop.words.wished import (
    wished_line as wished_line,
)
from swatchwright.language import mark, say, say_count, say_in
from swatchwright.photo.dominant import DominantColour
from swatchwright.photo.origin import origin_words
from swatchwright.photo.reference import Balance
from swatchwright.values import KnownColour

TITLE = "Swatchwright"

OPEN_PHOTO = say("Open a photo…")
SAMPLES = say("Sample photos")
OPEN_SHELF = say("Open a shelf…")
DEMO_SHELF = say("Demonstration shelf")
OPEN_PHOTO_TIP = say(
    "A photo of the cloth with a grey card beside it, from a phone or a camera: JPEG, PNG, TIFF, "
    "HEIC or a raw file. It may also be dropped anywhere on the window."
)
_PICTURES = ("jpg", "jpeg", "png", "tif", "tiff", "webp", "heic", "heif", "avif")
_RAW = ("dng", "cr2", "cr3", "nef", "nrw", "arw", "raf", "orf", "rw2", "pef", "srw", "raw")


def _files(told: str, endings: tuple[str, ...]) -> str:
    """Give a kind of files as Qt writes it, with endings in small and in capital letters.

    Some systems tell these apart, and cameras write capitals.
    """
    both = (ending for one in endings for ending in (one, one.upper()))
    return f"{told} ({' '.join(f'*.{ending}' for ending in both)})"


PHOTO_FILES = ";;".join(
    (
        _files(say("Photos"), _PICTURES + _RAW),
        _files(say("Camera raw files"), _RAW),
        say("All files (*)"),
    )
)
SHELF_FILES = say("Shelf files (*.csv);;All files (*)")

DROP_TITLE = say("Drop a photo of the cloth here")
DROP_TEXT = say(
    "Photograph it flat, in daylight, with a grey card beside it and no flash.\n"
    "Then mark the card and the cloth, and the mixes appear."
)
TRY_SAMPLE = say("Try it on a sample cushion")

MARK = say("Mark the")
MARK_GREY = say("grey card")
MARK_CLOTH = say("cloth")
GREY_SHORT = say("Reference")
CLOTH_SHORT = say("Cloth")
SAMPLE_SHORT = say("Sample")
HINT_GREY = say("Drag a box on the grey card or paper, well inside it.")
HINT_CLOTH = say("Drag a box on the part of the cloth you want.")
HINT_DONE = say("Drag to move, corners to size, Shift to draw anew.")
CARD_IS = say("which reflects")
CARD_GREY = say("18 %, a grey card")
CARD_WHITE = say("90 %, white paper")
CARD_OTHER = say("other…")
PUT_RIGHT = say("Show it put right")
UNDO = say("Undo")
REDO = say("Redo")
NOTHING_TO_UNDO = say(
    "Nothing to take back. After a new start only what was kept with the job on the bench can be "
    "taken back, not marks and picks."
)
NOTHING_TO_REDO = say("Nothing to do again")
UNTITLED = say("Untitled piece")
KEEPING = say("Keeping…")
PAGE_BRIEF, PAGE_BRIEF_TIP = say_in("page", "Job"), say("Who it is for, and the jobs that are kept")
PAGE_COLOUR, PAGE_COLOUR_TIP = (
    say_in("page", "Colour"),
    say("The cloth, its colours and the mixes for one of them"),
)
PAGE_COMPARE, PAGE_COMPARE_TIP = (
    say_in("page", "Compare"),
    say("The mixes beside the wanted colour, in any light"),
)
PAGE_SHELF, PAGE_SHELF_TIP = say_in("page", "Shelf"), say("Your paints, and getting to know them")
PAGE_SAMPLE, PAGE_SAMPLE_TIP = (
    say_in("page", "Sample"),
    say("The dried sample beside the cloth, and what to add"),
)
PAGE_FINISH, PAGE_FINISH_TIP = say_in("page", "Finish"), say("Washes, glazes, wax and varnish")
PAGE_PIECE, PAGE_PIECE_TIP = say_in("page", "Piece"), say("Its size, and how much to mix")
PAGE_REPAINT, PAGE_REPAINT_TIP = (
    say_in("page", "On photo"),
    say("The piece in the chosen colours, on a photo of it"),
)
PAGE_PLAN, PAGE_PLAN_TIP = say_in("page", "Plan"), say("What to do when, and what to take care of")
PAGE_SHEET, PAGE_SHEET_TIP = say_in("page", "Sheet"), say("The recipe sheet and the jar label")
DID_MARK = say("the mark in the photo")
DID_WANT = say("the wanted colour")
DID_WISH = say("a wish for the mixes")

COLOURS = say("Colours in the cloth")
COLOURS_ALL = say("Colours in the whole photo")
WAIT_COLOURS = say("The colours appear here once a photo is open.")
READING = say("Reading the photo…")
FINDING_COLOURS = say("Finding the colours…")
PROVING = say("Seeing whether any mix comes closer…")
FINDING_MIXES = say("Finding mixes…")
STOP = say("Stop")

TYPE_COLOUR = say("or type #a4503c")
TYPE_COLOUR_TIP = say(
    "A screen colour such as #a4503c, or three CIELAB numbers such as 46, 34, 24; then Return"
)

WANTED = say("wanted")
DRY = say("dry")
WET = say("wet")
AMOUNT = say_in("so much", "Mix")
AMOUNT_TIP = say(
    "How much to mix, 10 ml up to 20 litres. The parts of a mix stay as they are; its ml and g "
    "follow."
)
PAINTS = say("of at most")
TWO_PAINTS = say("2 paints")
TWO_PAINTS_TIP = say("Mixes of one or two paints: quick to pour, but not always as near")
THREE_PAINTS = say("3 paints")
THREE_PAINTS_TIP = say("Mixes of up to three paints: as near as the shelf comes, more to measure")
WAIT_MIXES = say(
    "The mixes appear here, side by side, once the cloth is marked or a colour is picked."
)

REACH_HINT = say(
    "Every mix of the shelf lies in this body: seen from above, as a colour wheel lies, and from "
    "beside, the vivid to the right and the light at the top. A colour well outside it cannot "
    "be mixed."
)
FROM_ABOVE = (say("redder →"), say("yellower ↑"))
FROM_BESIDE = (say("more vivid →"), say("lighter ↑"))
FINDING_REACH = say("Finding what the shelf reaches…")
WHICH_TO_BUY = say("Which one paint more would reach it? Choose a shelf to buy from…")
COPY_SHORT = say_in("copy a mix", "Copy")
NEARBY_SHORT = say("Nearby")
PUT_RIGHT_SHORT = say("Put right")
NEIGHBOURS = say("Neighbours to choose from by eye")
NEIGHBOURS_HINT = say(
    "Each is about 2 from the mix in the middle (seen side by side). Brush out those that tempt "
    "you, let them dry, and hold them to the cloth."
)
NEIGHBOURS_PRESS = say("Press a colour to see how to mix 20 ml of it.")
FINDING_NEIGHBOURS = say("Finding the neighbours…")
THIS_MIX = say("this mix")
WANT_THIS = say("Brushed out, this is the one: find its mixes")
WANT_SEEN = say("Only seen here: find its mixes")
WANT_SEEN_TIP = say("For a colour that you have not brushed out: it counts for no sample.")
# Where a colour came from is kept with it, and so stays English until it is shown.
TYPED = mark("typed in")
PICKED_BY_EYE = mark("chosen by eye from brush-outs")
PICKED_HERE = mark("chosen on the screen")
FROM_CODE = mark("read from the code of a recipe")
FROM_MIX = mark("as the kept mix dries")
_NOT_OF_THE_PHOTO = {PICKED_BY_EYE, PICKED_HERE, FROM_CODE, FROM_MIX}
PUT_POT_RIGHT = say("Put a pot right by adding")
FINDING_ADDITIONS = say("Finding what to add…")
WHERE_IT_SHOULD_GO = say("where it should go")
AS_IT_IS = say("as it is")
AFTER_ADDING = say("after adding")
COPY_MIX = say("Copy this mix")
SHELF_FILE_NAME = say("my-paints.csv")
COPIED = say("Copied")
SHOW_SHELF = say("Show the paints")
SAVE_SHELF = say("Save a shelf file to fill in…")
NOT_ON_SCREEN = say("<p>“About”: more vivid than a screen can show; the nearest is shown.</p>")

MIXES = say("The mixes, the closest first")
SHELF = say("Shelf")
CARD_ASK = say("How much of the light the card reflects, in per cent:")

PUT_AWAY = say("Put away")
COPY_REPORT = say("Copy a report")
OUR_FAULT = say(
    "Something went wrong that is not your doing. Your photo and marks are still here; "
    "please copy the report and pass it on."
)

PHOTO_NAME = say("Photo with the marks of the grey card and the cloth")

# What the sample photos that come with the program show, as it stands beside them.
_SAMPLES_SHOW = (
    mark("A striped cushion beside a grey card on a workbench, by a window."),
    mark("The same under a warm lamp that the camera's white balance only partly makes up for."),
    mark("A printed cotton of four colours beside a grey card on a workbench, by a window."),
    mark("A blanket box of old paint with a wooden lid, beside a grey card, by a window."),
    mark("A first brushed sample on card, dried and laid on the cushion, with a grey card."),
)

# How Qt is to write a day.
DAY_FORMAT = say_in("a day, in the letters of Qt", "d MMM yyyy")
WEEKDAY_FORMAT = say_in("a day, in the letters of Qt", "ddd d MMM yyyy")


def undo_told(what: str) -> str:
    """Say what would be taken back; empty if nothing."""
    return say("Undo: {what}", what=kept_words(what)) if what else ""


def undone_told(what: str) -> str:
    """Say what was just taken back."""
    return say("Taken back: {what}", what=kept_words(what))


def redone_told(what: str) -> str:
    """Say what was just done again."""
    return say("Done again: {what}", what=kept_words(what))


def redo_told(what: str) -> str:
    """Say what would be done again; empty if nothing."""
    return say("Redo: {what}", what=kept_words(what)) if what else ""


def sample_told(sample: SamplePhoto) -> str:
    """Say what a sample photo shows."""
    return say(sample.shows)


def name_of_colour(number: int, colour: DominantColour, name: str) -> str:
    """Tell a colour's number, name and share, for a screen reader."""
    return say(
        "Colour {number}: {name}, {share:.0%} of the cloth",
        number=number,
        name=name,
        share=colour.share,
    )


def wanted_line(name: str, wanted: KnownColour) -> str:
    """Head the mixes with what is wanted, and where that came from."""
    L, a, b = wanted.lab.triple
    if wished := wished_line(name, wanted.origin):
        return wished
    by_eye = wanted.origin in _NOT_OF_THE_PHOTO or is_wished(wanted.origin)
    typed = wanted.origin == TYPED
    if by_eye or (wanted.covariance is None and not typed):
        return say("Mixes for: {name}, {origin}", name=name, origin=origin_words(wanted.origin))
    if wanted.covariance is None:
        told = mark("Mixes for: {name}, typed as L* {L:.0f}, a* {a:.0f}, b* {b:.0f}")
        return say(told, name=name, L=L, a=a, b=b)
    return say("Mixes for: {name}, as the photo shows it", name=name)


def light_line(balance: Balance) -> str:
    """Say what the light of the photo was taken to be."""
    if balance.reflectance is None:
        return say("No grey card marked: the colours are as the camera guessed them.")
    if balance.cct is None:
        return say("Light put right by a grey of {grey:.0%}.", grey=balance.reflectance)
    return say(
        "Light put right by a grey of {grey:.0%}; the camera had left it at about {kelvin:.0f} K.",
        grey=balance.reflectance,
        kelvin=round(balance.cct, -2),
    )


def shelf_line(name: str, count: int, used: int) -> str:
    """Say which shelf is used, and how many of its paints."""
    if used == count:
        return say_count(
            "{count} paint of {shelf}", "{count} paints of {shelf}", count, shelf=say(name)
        )
    return say("{used} of {count} paints of {shelf}", used=used, count=count, shelf=say(name))
