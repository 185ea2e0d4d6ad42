"""Tins as a painter writes them, size and price: read from what she types, and written back.

A comma can part two tins or stand in a figure. It parts where a space follows it or another thing
than a digit stands beside it. Directly between digits it is what only one reading allows, in the
language in use; what two readings allow is refused, and she is told how to write either.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal

from swatchwright.errors import MendableError
from swatchwright.language import figure, say
from swatchwright.language.money import money_in_use
from swatchwright.piece.tins import TinSize, cheapest_tins

__all__ = ["tins_told", "tins_written"]

_UNITS = {
    "ml": 1,
    "cl": 10,
    "dl": 100,
    **dict.fromkeys(("l", "liter", "litern", "liters", "litre", "litres"), 1000),
}
"""ml in what sizes are told in, in the languages there are."""
_UNIT = rf"(?:{'|'.join(sorted(_UNITS, key=len, reverse=True))})(?![^\W\d_])"
_NUMBER = r"\d+(?:[.,]\d+)?"
_SIZE = re.compile(rf"({_NUMBER})\s*({_UNIT})?\s*", re.IGNORECASE)
_FOR = re.compile(r"(?:[:=]|(?:for|at|für|zu|à)\b)\s*", re.IGNORECASE)
_PRICED = re.compile(rf"[:=]|{_UNIT}\s*|\d\s+(?:for|at|für|zu|à)\b", re.IGNORECASE)
_BETWEEN = re.compile(r"(?<=\d),(?=\d)")
_GOES_ON = re.compile(rf"(\d+)(?:\.\d+)?\s*(?:([:=])|({_UNIT}))?", re.IGNORECASE)
_NO_PENCE = re.compile(r"(?<=\d)[.,]\s?[-–—]+(?=\s|;|,|$)")
_UNTOLD = 10
"""ml; a smaller figure without a unit may as well be litres."""
_THOUSAND = 3
"""Digits that stand after a mark that parts thousands."""
_DEEP = 2
"""Digits of a bare figure up to which it may be litres, or thousands, before an English comma."""


def tins_told(text: str, money: str = "") -> tuple[TinSize, ...]:
    """Read the sizes a paint is sold in, and their prices where they are known.

    A size is told in ml, or with its unit (0.5 l, 75 cl); a price follows a colon, or the unit.
    Tins are parted by a semicolon, or by a comma and a space. What the money is called may stand
    beside a price.

    Parameters
    ----------
    text
        What was typed.
    money
        What the money of this job is called, if not as all money is.

    Raises
    ------
    MendableError
        If one of them cannot be read, or could be read as two things.

    Examples
    --------
    >>> [(tin.ml, str(tin.price)) for tin in tins_told("120: 7.50, 500, 1 l 32")]
    [(120.0, '7.50'), (500.0, 'None'), (1000.0, '32')]
    """
    plain = _NO_PENCE.sub("", text.replace("\N{NO-BREAK SPACE}", " "))
    names = [name for name in (money, money_in_use()) if name]
    found = tuple(_tin(told, names) for told in _parted(plain) if told)
    if found:
        cheapest_tins(0.0, found)
    return found


def tins_written(tins: Sequence[TinSize]) -> str:
    """Write tins in the language in use, as `tins_told` reads them back."""
    return ("; " if _comma() else ", ").join(
        _size_written(tin.ml)
        if tin.price is None
        else f"{_size_written(tin.ml)}: {_written(tin.price, 2)}"
        for tin in tins
    )


def _comma() -> bool:
    """Tell whether the language in use writes decimals with a comma."""
    return figure(0.5, ".1f") == "0,5"


def _point() -> str:
    return "," if _comma() else "."


def _size_written(ml: float) -> str:
    told = _written(Decimal(repr(float(ml))), 0)
    return told if ml >= _UNTOLD and float(ml).is_integer() else f"{told} ml"


def _written(value: Decimal, least: int) -> str:
    """Write a figure exactly; never with three decimals, which may be read as thousands."""
    places = max(least, -int(value.normalize().as_tuple().exponent))
    return f"{value:.{places + 1 if places == _THOUSAND else places}f}".replace(".", _point())


# --- where one tin ends ---------------------------------------------------------------------------


def _parted(text: str) -> Iterator[str]:
    """Give the text of each tin."""
    for told in re.split(r";|\n|(?<!\d),|,(?!\d)", text):
        start = 0
        for comma in _BETWEEN.finditer(told):
            if _parts(told[start : comma.start()], told[comma.end() :]):
                yield told[start : comma.start()].strip()
                start = comma.end()
        yield told[start:].strip()


def _parts(before: str, after: str) -> bool:
    """Tell whether a comma between digits parts two tins, or stands in a figure.

    Raises
    ------
    MendableError
        If it could do either.
    """
    figure_before = re.findall(r"[\d.,]+$", before)[0]
    if "." in figure_before or "," in figure_before:
        return True
    goes_on = _GOES_ON.match(after)
    digits, colon, unit = ("", None, None) if goes_on is None else goes_on.groups()
    if _PRICED.search(before):
        parts = _parts_after_price(len(digits), another=bool(colon or unit))
    else:
        parts = _parts_after_size(figure_before, len(digits), unit=bool(unit))
    if parts is None:
        text = f"{before.strip()},{digits}{f' {unit}' if unit else ''}"
        if _PRICED.search(before):
            raise _price_or_tin(text, figure_before, digits)
        raise _one_or_two(text, figure_before, digits, unit or "")
    return parts


def _parts_after_price(digits: int, *, another: bool) -> bool | None:
    """Tell what a comma after a price is; None for either."""
    if another:
        return True
    if _comma():
        return None if digits == _THOUSAND else False
    return None if digits <= _THOUSAND else True


def _parts_after_size(before: str, digits: int, *, unit: bool) -> bool | None:
    """Tell what a comma after a size is; None for either."""
    if _comma():
        return False if unit and digits != _THOUSAND else None
    return None if len(before) <= _DEEP else True


def _price_or_tin(text: str, before: str, digits: str) -> MendableError:
    return MendableError(
        say("“{text}” may tell one price, or a price and another tin.", text=text),
        say(
            "Write {price} for one price, or {tins} for another tin.",
            price=f"{before}{_point()}{digits[:2]}",
            tins=f"{before}; {digits}",
        ),
    )


def _one_or_two(text: str, before: str, digits: str, unit: str) -> MendableError:
    small = len(before) <= _DEEP
    return MendableError(
        say("“{text}” may be one tin, or two.", text=text),
        say(
            "Write {one} for one tin, or {two} for two.",
            one=f"{before}{_point()}{digits.rstrip('0') or '0'} {unit or ('l' if small else 'ml')}",
            two=f"{before} ml; {digits} {unit or 'ml'}",
        ),
    )


# --- one tin --------------------------------------------------------------------------------------


@dataclass(frozen=True, slots=True)
class _Told:
    """A tin in its pieces."""

    size: str
    unit: str
    price: str


def _tin(text: str, names: Sequence[str]) -> TinSize:
    told = _in_pieces(text, names)
    ml = _number(told.size, text) * _UNITS[told.unit or "ml"]
    if not told.unit and 0 < ml < _UNTOLD:
        raise MendableError(
            say("“{text}” may be ml or litres.", text=text),
            say("Write {size} ml or {size} l.", size=told.size),
        )
    return TinSize(float(ml), _number(told.price, text) if told.price else None)


def _in_pieces(text: str, names: Sequence[str]) -> _Told:
    size = _SIZE.match(text)
    if size is None:
        raise _no_tin(text)
    rest = text[size.end() :]
    sign = _FOR.match(rest)
    price = _without(rest if sign is None else rest[sign.end() :], names)
    unpriced = not rest or (sign is not None and sign[0].strip() in {":", "="} and not price)
    priced = bool(sign or size[2]) and re.fullmatch(_NUMBER, price)
    if not (unpriced or priced):
        raise _no_tin(text)
    return _Told(size[1], (size[2] or "").lower(), price)


def _without(price: str, names: Sequence[str]) -> str:
    """Take off what the money is called."""
    for name in names:
        if price.casefold().startswith(name.casefold()):
            price = price[len(name) :]
        elif price.casefold().endswith(name.casefold()):
            price = price[: -len(name)]
    return price.strip()


def _number(told: str, text: str) -> Decimal:
    """Read a figure with a point or a comma."""
    whole, _, thousands = told.partition(".")
    if _comma() and len(thousands) == _THOUSAND:
        raise MendableError(
            say("In “{text}” the point may part thousands or decimals.", text=text),
            say(
                "Write {whole}, or {decimals}.",
                whole=whole + thousands,
                decimals=f"{whole},{thousands[:2]}",
            ),
        )
    return Decimal(told.replace(",", "."))


def _no_tin(text: str) -> MendableError:
    example = tins_written([TinSize(500.0, Decimal("19.50"))])
    return MendableError(
        say("“{text}” is no tin.", text=text),
        say("Write size and price, as {example}.", example=f"{example}; 1 l: 32"),
    )
