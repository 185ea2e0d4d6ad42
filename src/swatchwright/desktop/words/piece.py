"""The words of the page of the piece."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from swatchwright.colour.names import colour_name
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.words.compare import UNDER
from swatchwright.desktop.words.finish_parts import layers_on_parts
from swatchwright.errors import MendableError
from swatchwright.language import figure, say, say_in
from swatchwright.language.letters import plain_letters
from swatchwright.paint.layers import Layer
from swatchwright.piece.areas import PartArea
from swatchwright.piece.common import Kind
from swatchwright.piece.faces import EDGES
from swatchwright.piece.names import face_word, part_word, piece_word, zone_named, zone_word
from swatchwright.piece.part import Face, Part, Shape
from swatchwright.values import Lab

HEADING = say("How big it is, and how much paint that takes")
HINT = say(
    "Press what comes nearest, give its size, and change its parts where yours is different."
)
KINDS = say("Common pieces")
VIEW_PICTURE = say("Three sides")
VIEW_FRONT = say("From the front")
SIZES = say("Its size")
SIZE_NAMES = {"width": say("Width"), "height": say("Height"), "depth": say("Depth")}
RAIL_NAMES = {
    "width": say("Length"),
    "height": say_in("of a picture rail", "Face"),
    "depth": say("Thickness"),
}
DRAWERS = say("Drawers")
LEGS = say("Legs")
LEG_NAMES = {
    "square leg": say_in("legs", "square"),
    "tapered leg": say_in("legs", "tapered"),
    "turned leg": say_in("legs", "turned"),
}
INSIDE = say("Paint the inside too")
BY_HAND = say("You changed its parts. Sizing it again builds them anew.")
FROM_FILE = say("Built from a file of parts.")
ZONES = say("Its colours")
BARE = say("left bare")
NO_MIX = say("no mix yet")
SEEN_FINISHED_TIP = say("Draw the mixes as they look under what lies over them on the page Finish")
SEEN_BARE = say("Bare mixes")
SEEN_BARE_TIP = say("Draw the mixes without what lies over them")
NOTHING_OVER = say("Bare mixes: nothing lies over them yet")
DRAWN_IN = say("The light that the piece is drawn in")
MORE = say("Save or open")
SAVE_DRAWING = say("Save the drawing…")
SAVE_PIECE = say("Save the piece…")
OPEN_PIECE = say("Open a piece…")
DRAWING_FILES = say("Drawings (*.svg)")
PIECE_FILES = say("Pieces (*.json)")
WAIT = say("Press a piece above: it is drawn here to scale, with what there is to paint.")
OR_OPEN = say("Or open one that you saved…")
DRAWING_IT = say("Drawing…")
SAVING = say("Saving…")
OPENING = say("Opening…")

PARTS = say("Its parts")
PARTS_HINT = say("Double-click or press F2 to change a cell. Sizes in mm; areas are worked out.")
PART_COLUMNS = (
    say("Part"),
    say("Shape"),
    say("How many"),
    say("Length"),
    say("Width"),
    say("Depth"),
    say_in("head of a table of parts", "Colour of"),
    say_in("faces of a part", "Painted"),
    "m²",
)
PRESS_PART = say("Press a part to see what it is and which colour it gets.")
TO_ROW = say("In the table")
TO_ROW_TIP = say("Show the row of this part in the table below, where it can be changed")
PICK_PART = say("Pick a part to choose which of its faces are painted.")
ADD_PART = say("Add")
ADD_WHAT = say("Shape of the part to add")
REMOVE_PART = say("Remove the part")


def kind_word(kind: Kind) -> str:
    """Name a common piece on its button."""
    told = piece_word(kind.value)
    return told[0].upper() + told[1:]


def piece_name(name: str) -> str:
    """Name a piece."""
    return piece_word(name)


def shape_word(shape: Shape) -> str:
    """Name the shape of a part."""
    return part_word(shape.value)


def part_name(part: Part) -> str:
    """Name a part."""
    return part_word(part.name)


def face_name(face: Face) -> str:
    """Name a face of a part."""
    return face_word(face.value)


def zone_name(zone: str) -> str:
    """Name a colour zone."""
    return zone_word(zone)


def zone_kept(word: str) -> str:
    """Give the zone that is kept for what was typed: a common one is kept in English."""
    return zone_named(word.strip())


def area(m2: float) -> str:
    """Say an area."""
    return say("{area:.2f} m²", area=m2)


def area_unseen(m2: float) -> str:
    """Say an area that the drawing does not show."""
    return say("{area:.2f} m², unseen", area=m2)


def millimetres(mm: float) -> str:
    """Say a length."""
    return f"{mm:.0f} mm"


def total_line(m2: float) -> str:
    """Say what there is to paint in all."""
    return say("{area:.2f} m² to paint", area=m2)


def zone_head(number: int, zone: str) -> str:
    """Name a zone with its number in the drawing."""
    return f"{number}  {zone_name(zone)}"


def zone_line(number: int, zone: str, m2: float, dry: Lab | None) -> str:
    """Tell a zone with its number in the drawing, its area and the colour it gets."""
    return f"{zone_head(number, zone)}: {area(m2)}, {zone_colour(dry)}"


def zone_colour(dry: Lab | None) -> str:
    """Say which colour a zone gets."""
    return NO_MIX if dry is None else colour_name(dry)


def seen_finished(over: Sequence[Layer]) -> str:
    """Offer to see the mixes with what lies over them."""
    return say("With {layers}", layers=layers_on_parts(over))


def shown_bare(why: MendableError) -> str:
    """Say why the mixes are seen bare, and how to mend it."""
    return say("Shown bare. {what} {mend}", what=why.what, mend=why.mend)


def no_such_zone(zone: str) -> str:
    """Say that a mix is kept for a zone that the piece does not have."""
    return say(
        "A mix is kept for {zone}, and no part of this piece gets it: nothing is mixed or bought "
        "for it.",
        zone=zone_name(zone),
    )


def seen_told(over: Sequence[Layer], light: Light) -> str:
    """Say how the zones are seen: with what lies over them or bare, and in which light."""
    under = UNDER[light]
    if not over:
        return say("Bare mixes, dry, {under}", under=under)
    return say("Dry with {layers} on, {under}", layers=layers_on_parts(over), under=under)


def drawing_told(name: str, size: tuple[float, float], zones: Iterable[str], seen: str) -> str:
    """Tell a drawing for a screen reader, and how its zones are seen."""
    wide, high = size
    return say(
        "{piece}, {width:.0f} mm wide, {height:.0f} mm high. {zones}. {seen}.",
        piece=piece_name(name),
        width=wide,
        height=high,
        zones=". ".join(zones),
        seen=seen,
    )


def part_told(part: Part, areas: Sequence[PartArea], labs: Mapping[str, Lab]) -> str:
    """Tell a part: which colour it gets, and how much of it is painted."""
    name = part_name(part)
    if not areas:
        return say("{part}: {colour}", part=name, colour=BARE)
    if len(areas) > 1:
        told = [_in_colour(zone_name(row.zone), row, labs) for row in areas]
        return say("{part}: {colours}", part=name, colours="; ".join(told))
    zone = zone_name(areas[0].zone)
    if zone == name:
        return _in_colour(name, areas[0], labs)
    return _in_colour(say("{part}, colour of {zone}", part=name, zone=zone), areas[0], labs)


def _in_colour(told: str, row: PartArea, labs: Mapping[str, Lab]) -> str:
    colour = zone_colour(labs.get(row.zone))
    # The unit is not parted from its number, however long the line before it is.
    size = area(row.area).replace(" ", "\u00a0")
    return say("{part}: {colour}, {area}", part=told, colour=colour, area=size)


def outlined_told(told: str, drawing: str) -> str:
    """Tell what is outlined on a drawing, and then the drawing, for a screen reader."""
    return say("Outlined: {part}. {drawing}", part=told, drawing=drawing)


def painted_told(part: Part, faces: Sequence[Face]) -> str:
    """Say which of the faces of a part are painted, its edges in one word."""
    if not part.painted:
        return BARE
    if len(faces) > 1 and len(part.painted) == len(faces):
        return say("all over")
    edges = [face for face in part.painted if face in EDGES]
    all_edges = len(edges) == len(EDGES)
    told = [face_name(face) for face in part.painted if not (all_edges and face in EDGES)]
    return ", ".join([*told, say("edges")] if all_edges else told)


def painted_faces(part: Part) -> str:
    """Head the faces of a part that may be painted."""
    return say("Painted faces of {part}", part=part_name(part))


def size_cell(mm: float | None) -> str:
    """Write a size of a part into the table."""
    return "–" if mm is None else figure(mm, "g")


def area_cell(m2: float) -> str:
    """Write an area into the table."""
    return figure(m2, ".3f")


def cell_told(row: str, head: str, shown: str) -> str:
    """Tell a cell of a table for a screen reader."""
    return f"{row}, {head}: {shown}"


def size_range(least: float, most: float) -> str:
    """Say which sizes a field takes."""
    return say("From {least:.0f} to {most:.0f} mm", least=least, most=most)


def file_name(name: str, suffix: str) -> str:
    """Propose a name for a file."""
    return f"{plain_letters(piece_name(name)) or 'piece'}{suffix}"
