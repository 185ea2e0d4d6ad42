"""How a price is told: as the language writes figures, with what the painter calls her money.

What she calls it is told once (`use_money`), and may be another word at any time after. Where she
has not named it, a price is its figure alone.
"""

from __future__ import annotations

from decimal import Decimal
from unicodedata import category

from swatchwright.language import ENGLISH, figure, language

__all__ = ["beside_figure", "money_in_use", "priced", "use_money"]

_SPACE = "\N{NO-BREAK SPACE}"
_SIGN_FIRST = frozenset({ENGLISH})
"""Languages that write £12.50 where others write 12,50 £."""

_in_use = [""]


def use_money(name: str) -> None:
    """Call the money so from now on, in every price; empty for nothing."""
    _in_use[0] = name


def money_in_use() -> str:
    """Give what the money is called; empty where nobody has named it."""
    return _in_use[0]


def priced(value: float | Decimal, own: str = "", *, spec: str = ".2f") -> str:
    r"""Write a price.

    A word follows the figure after a no-break space, in every language: 12.50 crowns, 12,50 CHF. A
    sign, which is a name that ends in one (€, £, A$), stands where the language has it: close
    before the figure in English, £12.50, and after it like a word in German, 12,50 €.

    Parameters
    ----------
    value
        The figure.
    own
        What this money is called by itself, as a job that was reckoned in it tells; where empty,
        what the money in use is called.
    spec
        How the figure is formatted.

    References
    ----------
    Unicode CLDR, number patterns of currencies, en and de.

    Examples
    --------
    >>> priced(12.5), priced(12.5, "£"), priced(12.5, "kr")
    ('12.50', '£12.50', '12.50\xa0kr')
    """
    before, after = beside_figure(own)
    return f"{before}{figure(float(value), spec)}{after}"


def beside_figure(own: str = "") -> tuple[str, str]:
    """Give what stands before and after the figure of a price, spaces too, as in `priced`."""
    name = own or money_in_use()
    if not name:
        return "", ""
    if language() in _SIGN_FIRST and category(name[-1]) == "Sc":
        return name, ""
    return "", f"{_SPACE}{name}"
