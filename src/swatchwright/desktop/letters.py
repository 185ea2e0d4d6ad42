"""How large the letters of the window are: as the system asks, and as she likes them."""

from __future__ import annotations

from collections.abc import Callable

from PySide6.QtGui import QFontInfo, QGuiApplication
from PySide6.QtWidgets import QWidget

from swatchwright.acts.habits import LARGEST_LETTERS, SMALLEST_LETTERS
from swatchwright.desktop.followed import Followed

__all__ = [
    "follow_letters",
    "grown",
    "growth",
    "letters",
    "may_grow",
    "set_letters",
]

_LETTERS = 14
"""The pixels of our plain text."""

_SEEN = 0.02
"""Growth below which nobody sees any."""

_NEEDS, _MORE = (1245, 715), (870, 160)
"""Width and height that the window needs with those letters, and how much more with twice them."""


def growth() -> float:
    """Give how many times larger than ours the letters are that the system asks for, or she.

    From 0.9 to 2. What the system asks counts as far as it leaves all of the window in view on
    this screen; what she chose counts in any case, and the bench is scrolled if it must be.
    """
    return _growth_at(_hers.size)


def grown(pixels: int) -> int:
    """Give a size of ours as it is with the letters in use."""
    return round(pixels * growth())


def letters() -> float:
    """Give how many times the usual size she likes the letters."""
    return _hers.size


def set_letters(size: float) -> None:
    """Have letters of so many times the usual size, 0.9 to 2, from now on."""
    _hers.size = min(max(size, SMALLEST_LETTERS), LARGEST_LETTERS)
    _hers.changed.emit()


def may_grow() -> bool:
    """Tell whether there are larger letters than those in use."""
    return growth() < LARGEST_LETTERS - _SEEN


def follow_letters(widget: QWidget, act: Callable[[], object]) -> None:
    """Do something now, and whenever the letters have changed as long as a widget is there."""
    _hers.follow(widget, act)


class _Hers(Followed):
    """The size that she chose."""

    size = 1.0


_hers = _Hers()


def _growth_at(chosen: float) -> float:
    """Give the growth for a size that is chosen."""
    screen = QGuiApplication.primaryScreen() if QGuiApplication.instance() else None
    if screen is None:
        return chosen
    asked = QFontInfo(QGuiApplication.font()).pixelSize() / _LETTERS
    room = screen.availableSize().toTuple()
    spare = zip(room, _NEEDS, _MORE, strict=True)
    fits = 1 + min((has - needs) / more for has, needs, more in spare)
    own = max(1.0, min(asked, fits))
    return max(SMALLEST_LETTERS, min(own * chosen, LARGEST_LETTERS))
