"""Names in plain letters, for files and ids that every system takes."""

from __future__ import annotations

import re
from unicodedata import combining, normalize

__all__ = ["plain_letters"]

# As German writes them where it has no such letters (DIN 5007-2, telephone lists).
_SPELT = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue", "ß": "ss"})


def plain_letters(text: str, most: int = 40) -> str:
    """Give a name in the letters a to z and digits, with a dash for all between.

    Umlauts are spelt out, other accents left off.

    Parameters
    ----------
    text
        Any name.
    most
        Letters at most.

    Returns
    -------
    Empty where nothing is left.

    Examples
    --------
    >>> plain_letters("Stück ohne Namen")
    'stueck-ohne-namen'
    """
    # Composed first: an umlaut may come as a letter with a mark after it.
    spelt = normalize("NFC", text).lower().translate(_SPELT)
    bare = "".join(c for c in normalize("NFKD", spelt.casefold()) if not combining(c))
    return "-".join(re.findall(r"[a-z0-9]+", bare))[:most].strip("-")
