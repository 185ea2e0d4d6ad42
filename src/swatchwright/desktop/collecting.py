"""Python's garbage is collected on the interface thread alone.

Left to itself, Python collects wherever the allocation falls that is one too many: in the middle of
a search, on a worker's thread. Widgets that are part of the garbage would be destroyed there, which
Qt forbids and which ends the process.
"""

from __future__ import annotations

import gc
from collections.abc import Sequence

from PySide6.QtCore import QObject, QTimer

__all__ = ["Collecting", "due"]

_EVERY = 250
"""ms between two looks at what has gathered: seconds of work leave some thousand objects."""


def due(counts: Sequence[int], limits: Sequence[int]) -> int | None:
    """Give the oldest generation that Python would collect by now.

    Parameters
    ----------
    counts, limits
        As `gc.get_count` and `gc.get_threshold` give them, the youngest generation first; a limit
        of 0 says that the generation is not collected.

    Returns
    -------
    The generation, 0 the youngest, or None if there is none to collect.
    """
    passed = [age for age, (n, most) in enumerate(zip(counts, limits, strict=True)) if 0 < most < n]
    return max(passed, default=None)


class Collecting(QObject):
    """Collects garbage when Python would, but between two events of the thread it was made in."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._before = gc.isenabled()
        gc.disable()
        self._timer = QTimer(self)
        self._timer.setInterval(_EVERY)
        self._timer.timeout.connect(self._collect)
        self._timer.start()

    def close(self) -> None:
        """Let Python collect as it did before."""
        self._timer.stop()
        if self._before:
            gc.enable()

    def _collect(self) -> None:
        age = due(gc.get_count(), gc.get_threshold())
        if age is not None:
            gc.collect(age)
