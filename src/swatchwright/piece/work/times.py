"""How long things dry and take, and how cold and damp draw it out.

All of it is common practice, no source, unless a tin's own times are given, which come first.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from math import ceil, isfinite, log

from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.piece.work.order import Carrier, FinishKind, PaintTimes, Primer, Room

__all__ = [
    "ADHESION_BEFORE_PAINT",
    "BEFORE_WAX",
    "BEFORE_WIPING",
    "BUFF_AFTER",
    "Source",
    "Until",
    "Wait",
    "checked_room",
    "dew_point",
    "drawn_out",
    "finish_times",
    "paint_times",
    "primer_times",
    "set_down",
    "stain_block_times",
    "wait_factor",
]

_HOUR = 60.0
_DAY = 24 * _HOUR
_WEEK = 7 * _DAY

ADHESION_BEFORE_PAINT = _DAY
"""Minutes from the last coat of an adhesion primer to paint."""

BEFORE_WAX = _DAY
"""Minutes from the last coat to wax, or to oil."""

BEFORE_WIPING = {Carrier.WATER: 12 * _HOUR, Carrier.SOLVENT: _DAY}
"""Minutes from a coat to what is wiped back over it, until it bears a wet rag: overnight."""

BUFF_AFTER = 30.0
"""Minutes from waxing to buffing."""

_COLDEST, _HOTTEST, _DAMPEST = 10.0, 35.0, 85.0
_SHORT_STEP, _LONG_STEP = 5.0, 15.0


class Source(StrEnum):
    """Where a time comes from."""

    TIN = mark("from the tin")
    PRACTICE = mark("common practice, no source")


class Until(StrEnum):
    """What is waited for."""

    DRY = mark("until it is dry")
    SAMPLE = mark("until the sample is dry")
    NEXT = mark("until the next coat")
    PAINT = mark("until it bears paint")
    RAG = mark("until it bears a wet rag")
    WAX = mark("until it bears wax or oil")
    TURN = mark("until it can be set down on")
    BUFF = mark("until it can be buffed")
    USE = mark("until it may be used")
    DUST = mark("until dust no longer sticks to it")


@dataclass(frozen=True, slots=True)
class Wait:
    """How long to wait, minutes, where that comes from, and what for."""

    minutes: float
    source: Source = Source.PRACTICE
    until: Until = Until.DRY


# Touch dry, recoat, ready for use.
_PAINT = {
    Carrier.WATER: PaintTimes(_HOUR, 4 * _HOUR, _WEEK),
    Carrier.SOLVENT: PaintTimes(6 * _HOUR, _DAY, _WEEK),
}
_ADHESION = PaintTimes(_HOUR, 2 * _HOUR, _WEEK)
_STAIN_BLOCK = PaintTimes(30.0, _HOUR, _DAY)
_WAX = PaintTimes(BUFF_AFTER, _DAY, _WEEK)
_OIL = PaintTimes(12 * _HOUR, _DAY, 2 * _WEEK)

# Until a painted face may bear the piece's weight on battens or a soft cloth.
_SET_DOWN = {Carrier.WATER: 12 * _HOUR, Carrier.SOLVENT: _DAY}


def paint_times(carrier: Carrier) -> PaintTimes:
    """Give how long a paint or a wash usually dries."""
    return _PAINT[carrier]


def primer_times(primer: Primer, carrier: Carrier) -> PaintTimes:
    """Give how long a primer usually dries; an adhesion primer's coats are two hours apart."""
    return _ADHESION if primer is Primer.ADHESION else _PAINT[carrier]


def stain_block_times() -> PaintTimes:
    """Give how long a stain block usually dries."""
    return _STAIN_BLOCK


def finish_times(finish: FinishKind, carrier: Carrier) -> PaintTimes:
    """Give how long a clear finish usually dries."""
    own = {FinishKind.WAX: _WAX, FinishKind.OIL: _OIL}
    return own.get(finish, _PAINT[carrier])


def set_down(recoat: Wait, carrier: Carrier) -> Wait:
    """Give how long to wait until a face may be set down on."""
    usual = _SET_DOWN[carrier]
    return recoat if recoat.minutes >= usual else Wait(usual)


# --- cold and damp -------------------------------------------------------------------------------


def checked_room(room: Room) -> Room:
    """Give a room back if paint dries in it.

    Raises
    ------
    MendableError
        If it is below 10 or above 35 Celsius or damper than 85 %, and the tin is not said to
        allow that; or the figures cannot be.
    """
    warm, damp = room.temperature, room.humidity
    if not (isfinite(warm) and 0 <= warm <= 45 and isfinite(damp) and 0 <= damp <= 100):
        raise MendableError(
            say(
                "Nothing can be painted at {warm:g} °C and {damp:g} % humidity.",
                warm=warm,
                damp=damp,
            ),
            say("Give the room's temperature from 0 to 45 °C and its humidity from 0 to 100 %."),
        )
    if not room.tin_allows and not (_COLDEST <= warm <= _HOTTEST and damp <= _DAMPEST):
        raise MendableError(
            say(
                "At {warm:g} °C and {damp:g} % humidity most paint does not dry as it should.",
                warm=warm,
                damp=damp,
            ),
            say(
                "Work between {coldest:g} and {hottest:g} °C and below {dampest:g} % (common "
                "practice), or say that the tin allows it.",
                coldest=_COLDEST,
                hottest=_HOTTEST,
                dampest=_DAMPEST,
            ),
        )
    return room


def wait_factor(room: Room) -> float:
    """Give how much longer than at 20 Celsius and 50 % things dry, 1 or more.

    A rule of thumb (common practice, no source): twice as long for each 10 degrees below 20, and
    from 70 % humidity on a fifteenth longer for each percent, so twice as long at 85 %. Warmth
    and dry air are not counted: the tin's times are the least.

    Examples
    --------
    >>> wait_factor(Room(10, 50))
    2.0
    """
    cold = max(0.0, 20.0 - room.temperature)
    damp = max(0.0, room.humidity - 70.0)
    return float(2.0 ** (cold / 10.0) * (1.0 + damp / 15.0))


def drawn_out(wait: Wait, factor: float) -> Wait:
    """Draw a wait out by a factor, up to the next five minutes, or quarter of an hour."""
    minutes = wait.minutes * factor
    step = _SHORT_STEP if minutes <= _HOUR else _LONG_STEP
    return replace(wait, minutes=step * ceil(minutes / step - 1e-9))


def dew_point(temperature: float, humidity: float) -> float:
    """Give the temperature, Celsius, at which air of this humidity begins to wet what it meets.

    Parameters
    ----------
    temperature
        Celsius, 0 to 60.
    humidity
        Relative, %, above 0.

    Notes
    -----
    The formula of Magnus with a = 17.62, b = 243.12 Celsius over water ([WMO8]). A surface should
    be 3 degrees warmer when it is painted: [ISO8502-4], for steel, here a rule of thumb.

    Examples
    --------
    >>> round(dew_point(20, 60), 2)
    12.0
    """
    gamma = log(humidity / 100.0) + 17.62 * temperature / (243.12 + temperature)
    return 243.12 * gamma / (17.62 - gamma)
