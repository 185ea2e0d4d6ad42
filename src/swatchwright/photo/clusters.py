"""Groups of pixels of one colour, whatever light falls on each.

Pixels are first cut into more groups than there are colours, then groups that are one colour in
different light are joined again.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import lab_to_linear_srgb, linear_srgb_to_lab
from swatchwright.colour.difference import delta_e_2000
from swatchwright.photo.kmeans import k_means, nearest
from swatchwright.photo.middle import middle

__all__ = ["Pixels", "group"]

Floats = NDArray[np.float64]
Labels = NDArray[np.intp]

_LIGHTNESS_WEIGHT = 0.4
"""Weight of L* while cutting, so that light and shade on one yarn stay together."""

_MOST_CUT = 15_000
"""Most pixels by which the cuts are found; the middles are then taken from all."""

_FIRST_GROUPS = 8
_SPARE_GROUPS = 6
_MOST_GROUPS = 6
_SEED = 7

_SAME = 2.0
_SAME_WHEN_COUNTED = 1.0
_SAME_RELIT = 4.0
_DEEPEST_SHADE = 0.35
"""What is one colour: a CIEDE2000 below the first (or second); or below the third once the darker
one is put into the light of the lighter, if the shade leaves no less light than the fourth."""

_VALLEY = 0.35
_INTERLEAVED = 0.5
_LAGS = (1, 2, 4, 8)
_BINS = 12

_MIXTURE = 4.0
_MIXTURE_LIGHT = (0.4, 1.15)
_LEAST_PART = 0.04
_RESTLESS = 0.7
"""What is two colours mixed: within this CIEDE2000 of their light added up, in shade or light
between these factors, each with at least this part, and with so much smaller a share of pure
pixels than either has."""


@dataclass(frozen=True, slots=True, eq=False)
class Pixels:
    """Pixels to be grouped.

    Parameters
    ----------
    lab
        Shape (n, 3).
    weight
        Shape (n,): how many pixels each stands for in finding the colours; 0 for those that mix two
        colours and only follow.
    grid
        Shape (rows, columns): where in the photo each lies, as its index or -1 for no pixel.
    """

    lab: Floats
    weight: Floats
    grid: Labels


def group(pixels: Pixels, count: int | None) -> Labels:
    """Group pixels by colour.

    Parameters
    ----------
    pixels
        The pixels.
    count
        How many groups; None to find out, six at most.

    Returns
    -------
    Shape (n,): the group of each pixel, numbered from 0 without gaps. There are fewer groups than
    asked for if the pixels hold fewer colours.
    """
    first = _FIRST_GROUPS if count is None else max(_FIRST_GROUPS, count + _SPARE_GROUPS)
    groups = _Groups(pixels, _cut(pixels, first))
    if count is None:
        groups.join_same(_SAME, relit=True, least=1)
        groups.drop_mixtures(least=1)
        groups.join_same(_SAME, relit=True, least=1)
        groups.join_nearest(_MOST_GROUPS)
    else:
        groups.join_same(_SAME_WHEN_COUNTED, relit=False, least=1)
        groups.join_same(_SAME, relit=True, least=count)
        groups.drop_mixtures(least=count)
        groups.join_nearest(count)
    return np.asarray(np.unique(groups.labels, return_inverse=True)[1], dtype=np.intp)


def _cut(pixels: Pixels, count: int) -> Labels:
    """Cut the pixels into so many groups by k-means, or fewer if fewer differ."""
    features = pixels.lab * (_LIGHTNESS_WEIGHT, 1.0, 1.0)
    chosen = np.flatnonzero(pixels.weight)
    if len(chosen) > _MOST_CUT:
        chosen = np.random.default_rng(_SEED).permutation(chosen)[:_MOST_CUT]
    distinct = len(np.unique(features[chosen].round(6), axis=0))
    centres = k_means(features[chosen], pixels.weight[chosen], min(count, distinct), seed=_SEED)
    return nearest(features, centres)


class _Groups:
    """Groups while they are being joined."""

    def __init__(self, pixels: Pixels, labels: Labels) -> None:
        self.pixels = pixels
        self.labels = labels
        self.pure = pixels.weight > 0
        self.middles = {int(g): self._middle(int(g)) for g in np.unique(labels)}

    def join_same(self, same: float, *, relit: bool, least: int) -> None:
        """Join what is one colour, nearest first, until nothing is or so few are left."""
        while len(self.middles) > least:
            pairs = [(self._difference(p, q, relit=relit), p, q) for p, q in self._pairs()]
            nearest, p, q = min(pairs, default=(np.inf, 0, 0))
            if nearest > same:
                return
            self._join(p, q)

    def join_nearest(self, count: int) -> None:
        """Join what costs least in sums of squares (Ward's rule) until so many are left."""
        while len(self.middles) > count:
            self._join(*min(self._pairs(), key=self._cost))

    def drop_mixtures(self, least: int) -> None:
        """Give the groups that are but the blur between two others to these."""
        while len(self.middles) > max(least, 2):
            calm = {g: float(np.mean(self.pure[self.labels == g])) for g in self.middles}
            mixtures = (
                (g, pair)
                for g in sorted(self.middles, key=lambda g: calm[g])
                for pair in self._pairs()
                if g not in pair
                and calm[g] < _RESTLESS * min(calm[pair[0]], calm[pair[1]])
                and _is_mixture(self.middles[g], *(self.middles[other] for other in pair))
            )
            found = next(mixtures, None)
            if found is None:
                return
            self._share_out(*found)

    def _share_out(self, g: int, pair: tuple[int, int]) -> None:
        """Give each pixel of a group to the nearer of two others, where it only follows."""
        mine = self.labels == g
        lab = self.pixels.lab[mine]
        far = [np.sum((lab - self.middles[other]) ** 2, axis=1) for other in pair]
        self.labels[mine] = np.where(far[0] <= far[1], *pair)
        self.pure = self.pure & ~mine
        del self.middles[g]

    def _pairs(self) -> list[tuple[int, int]]:
        return list(combinations(sorted(self.middles), 2))

    def _middle(self, g: int) -> Floats:
        mine = self.labels == g
        pure = mine & self.pure
        return middle(self.pixels.lab[pure if pure.any() else mine])

    def _join(self, p: int, q: int) -> None:
        self.labels = np.where(self.labels == q, p, self.labels)
        del self.middles[q]
        self.middles[p] = self._middle(p)

    def _cost(self, pair: tuple[int, int]) -> float:
        """Give the sum of squares that joining adds; groups of mixed pixels weigh little."""
        first, second = (
            float(np.sum(self.pixels.weight[(self.labels == g) & self.pure])) for g in pair
        )
        weight = first * second / max(first + second, 1.0)
        return weight * self._difference(*pair, relit=True) ** 2

    def _difference(self, p: int, q: int, *, relit: bool) -> float:
        """Give CIEDE2000, or what is left of it if one is the other in shade.

        A difference that shade explains is brought into the scale of those that nothing does.
        """
        one, other = self.middles[p], self.middles[q]
        plain = float(delta_e_2000(one, other))
        if not relit:
            return plain
        dark, light = sorted((one, other), key=lambda lab: float(lab[0]))
        ratio = (light[0] + 16) / (dark[0] + 16)
        left = float(delta_e_2000(light, (light[0], dark[1] * ratio, dark[2] * ratio)))
        if left > _SAME_RELIT or ratio**-3 < _DEEPEST_SHADE:
            return plain
        if self._is_continuous(p, q) or self._interleaving(p, q) > _INTERLEAVED:
            return min(plain, left * _SAME / _SAME_RELIT)
        return plain

    def _is_continuous(self, p: int, q: int) -> bool:
        """Tell whether the lightness runs from one to the other with no valley between."""
        low, high = sorted((float(self.middles[p][0]), float(self.middles[q][0])))
        both = ((self.labels == p) | (self.labels == q)) & self.pure
        if high - low < 1e-6:
            return True
        counts = np.histogram(self.pixels.lab[both, 0], _BINS, (low, high))[0]
        ends = min(counts[:2].max(), counts[-2:].max())
        return bool(counts[2:-2].min() >= _VALLEY * ends)

    def _interleaving(self, p: int, q: int) -> float:
        """Tell how finely two groups are mixed in space: 0 apart, 1 as if by chance."""
        grid = np.where(self.pixels.grid >= 0, self.labels[self.pixels.grid], -1)
        return max(_mixing(grid, p, q, lag) for lag in _LAGS)


def _is_mixture(lab: Floats, one: Floats, other: Floats) -> bool:
    """Tell whether a colour is the light of two others added up, as in a blurred edge."""
    light, first, second = (lab_to_linear_srgb(c) for c in (lab, one, other))
    parts = np.linalg.lstsq(np.stack([first, second], axis=1), light)[0]
    total = float(parts.sum())
    if not _MIXTURE_LIGHT[0] <= total <= _MIXTURE_LIGHT[1] or parts.min() < _LEAST_PART * total:
        return False
    added = linear_srgb_to_lab(parts[0] * first + parts[1] * second)
    return bool(delta_e_2000(added, lab) < _MIXTURE)


def _mixing(grid: Labels, p: int, q: int, lag: int) -> float:
    """Compare how often cells so far apart are of both groups with how often chance would do it."""
    differ = total = of_p = 0
    for near, far in ((grid[:-lag], grid[lag:]), (grid[:, :-lag], grid[:, lag:])):
        both = ((near == p) | (near == q)) & ((far == p) | (far == q))
        differ += int(np.sum(both & (near != far)))
        of_p += int(np.sum(both & (near == p)) + np.sum(both & (far == p)))
        total += int(np.sum(both))
    share = of_p / (2 * total) if total else 0.0
    by_chance = 2 * share * (1 - share) * total
    return differ / by_chance if by_chance else 0.0
