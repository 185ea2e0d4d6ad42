"""The words of a pot that is put right: what is in it, how full it may get, and what to add."""

from __future__ import annotations

from collections.abc import Sequence

from swatchwright.acts.correct import Correction, room_words
from swatchwright.colour.names import closeness
from swatchwright.desktop.words.bits import millilitres
from swatchwright.language import listed, say
from swatchwright.mixing.knock_back import WORTH
from swatchwright.paint.layers import Layer

LEFT_IN_POT = say("left in the pot")
HAS_ROOM = say("the pot has room for")
ROOM_UNSAID = say("a quarter more")
ROOM_TIP = say(
    "How full the pot may get, with what is in it now. Unless you say, a quarter more than that."
)

LEFT = say("Left in the pot")
ROOM = say("The pot has room for")
EACH = say("Say it paint by paint")
EACH_TIP = say("Where what is in the pot is not the mix any more")
CHOOSE = say("choose here")
FIRST_SAY = say("Choose how the client wants it; what to add to the pot then stands here.")
CLOSE = say("Close")


def seen_with(over: Sequence[Layer]) -> str:
    """Say that colours are shown with what lies over them; empty where nothing does."""
    return say("Shown and judged with {layers} on.", layers=layers_named(over)) if over else ""


def layers_named(over: Sequence[Layer]) -> str:
    """Name what lies over a colour, each kind once."""
    return listed(dict.fromkeys(say(layer.kind.value) for layer in over))


def already_there(off: float) -> str:
    """Say that nothing is to be done."""
    return say("It is there already: {off:.1f} off ({seen}).", off=off, seen=closeness(off))


def correction_text(found: Correction) -> str:
    """Say what to add to a pot, and where its room stops it."""
    added = found.additions
    if added.before < WORTH:
        told = [already_there(added.before)]
    elif not added.steps:
        told = [
            say("Nothing that may be added to this pot, with the room it has, brings it nearer.")
        ]
    else:
        told = _steps(found)
    told += [room_words(found.roomier), seen_with(found.over)]
    return "\n".join(text for text in told if text)


def _steps(found: Correction) -> list[str]:
    added = found.additions
    told = [
        say(
            "Add {amount} {paint}: then {off:.1f} off ({seen}).",
            amount=millilitres(step.ml),
            paint=step.paint.name,
            off=step.delta_e,
            seen=closeness(step.delta_e),
        )
        for step in added.steps
    ]
    told.append(
        say(
            "It is {off:.1f} off now ({seen}), and {volume} in the end. Add a third of it first, "
            "stir, and let a sample dry.",
            off=added.before,
            seen=closeness(added.before),
            volume=millilitres(added.volume),
        )
    )
    if added.volume > 2 * found.pot.volume:
        told.append(say("That is more than twice the pot: mixing afresh may take less paint."))
    return told
