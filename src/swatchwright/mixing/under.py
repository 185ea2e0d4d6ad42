"""The dry colour of mixes that hide, bare or under the layers that lie over them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.spectrum import lab_of
from swatchwright.paint.layered import Coat, base_of, look_of
from swatchwright.paint.mixture import Mixtures, dry_lab

__all__ = ["lab_under"]


def lab_under(mixtures: Mixtures, over: Sequence[Coat] = ()) -> NDArray[np.floating[Any]]:
    """Give the dry CIELAB colour (n, 3) of n mixtures, thick enough to hide, under layers.

    Parameters
    ----------
    mixtures
        What lies below.
    over
        What lies on it, the lowest first; none for the bare mix.
    """
    if not over:
        return dry_lab(mixtures)
    return lab_of(look_of(base_of(mixtures), over))
