"""From what a photo shows of known colours to what it says of unknown ones, and how surely.

One estimator serves any mixture of references. All that may be amiss (`model.py`) is a Gaussian
before the references are looked at; they narrow it, and a colour is read with what is left. With
one grey this is plain white balance; greys of several lightnesses take off the camera's tone curve,
greys over the frame the fall of the light, and measured chips the errors of colours like theirs
(Bayesian linear regression with a Gaussian process for the remainder: [Rasmussen2006] chapter 2,
linearised anew until it no longer moves).
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import lab_to_linear_srgb
from swatchwright.photo.model import (
    AXES,
    PARAMETERS,
    LightKind,
    Prior,
    jacobian,
    log_gains,
    monotone,
    predicted,
    prior_for,
)
from swatchwright.photo.origin import references_origin
from swatchwright.photo.reference import (
    GREY_CARD,
    Balance,
    balance_from_chips,
    balance_from_grey,
    no_reference,
)
from swatchwright.photo.references import Reference, Seen, see
from swatchwright.values import Covariance, Lab

if TYPE_CHECKING:
    from collections.abc import Sequence

    from swatchwright.photo.image import Photo

__all__ = ["Correction", "estimate", "to_covariance"]

Floats = NDArray[np.float64]

_ROUNDS = 8
_STILL = 1e-4
_HALVINGS = 12
_MOST_MISFIT = 2.0
"""Standard deviations by which references may contradict each other, in the root mean square,
before all that they tell is held to be less sure."""
_STRENGTHS = (1.0, 1.4, 2.0, 2.8)
_STRENGTH_SPREAD = 0.5
_FEWEST_TO_JUDGE = 4
"""How strongly colour may be corrected is judged from so many references on, by how well each is
foretold from the others; with fewer it stays at 1."""

_DOUBTFUL = 3.0
"""A reference this many standard deviations from what the others say is doubted."""


@dataclass(frozen=True, slots=True, eq=False)
class Correction:
    """What takes the light of a photo to colours, with their uncertainty.

    Parameters
    ----------
    photo
        The photo.
    references
        What it was estimated from.
    balance
        The plain white balance that it starts from, for showing the picture.
    prior
        What was thought before.
    theta
        Parameters of the model, shape (26,).
    seen
        What was seen of the references.
    known
        Colours of the references by which likeness is judged, shape (n, 3).
    weights
        Of what is left over at each reference, shape (3 n,).
    inverse
        Inverse of the covariance of the references, shape (3 n, 3 n).
    misfits
        How many standard deviations each reference lies from what the others say, shape (n,).
    """

    photo: Photo
    references: tuple[Reference, ...]
    balance: Balance
    prior: Prior
    theta: Floats
    seen: Seen
    known: Floats
    weights: Floats
    inverse: Floats
    misfits: Floats

    @property
    def reference(self) -> str:
        """What the light was put right by, in English words; `origin_words` says them."""
        if len(self.references) < 2:
            return self.balance.reference
        greys = sum(reference.kind == "grey" for reference in self.references)
        return references_origin(greys, len(self.references) - greys)

    @property
    def doubted(self) -> tuple[Reference, ...]:
        """References that the others contradict."""
        return tuple(
            reference
            for reference, misfit in zip(self.references, self.misfits, strict=True)
            if misfit > _DOUBTFUL
        )

    def lab_of(self, light: object, x: object, y: object) -> Floats:
        """Read colours.

        Parameters
        ----------
        light
            Linear sRGB of the photo, shape (n, 3) or (3,).
        x, y
            Where it was seen, in pixels, shape (n,) or one number for all.

        Returns
        -------
        CIELAB, shape (n, 3).
        """
        seen = Seen.at(self.photo, light, x, y)
        labs = predicted(seen, self.theta, self._gains)
        if not self.references:
            return labs
        like = self.prior.leftover(self._balanced(seen), self.known)
        return np.asarray(labs + (like @ self.weights.reshape(-1, 3)) * AXES)

    def covariance_at(self, light: object, x: object, y: object) -> Covariance:
        """Give the uncertainty of one colour; arguments as in `lab_of`."""
        return to_covariance(self._joint(Seen.at(self.photo, light, x, y)))

    def apply(self, light: object, x: float, y: float) -> tuple[Lab, Covariance]:
        """Read one colour, linear sRGB of shape (3,) seen at a pixel, with its uncertainty."""
        return Lab.of(self.lab_of(light, x, y)[0]), self.covariance_at(light, x, y)

    def difference(
        self, light: object, x: Sequence[float], y: Sequence[float]
    ) -> tuple[Floats, Covariance]:
        """Give the second of two colours less the first, and the uncertainty of that.

        What the camera and the light do to both alike cancels, which the covariance shows.
        """
        labs = self.lab_of(light, x, y)
        both = self._joint(Seen.at(self.photo, light, x, y))
        apart = np.hstack([-np.eye(3), np.eye(3)])
        return labs[1] - labs[0], to_covariance(apart @ both @ apart.T)

    def fall_to(self, x: float, y: float) -> float:
        """Give the natural logarithm of the light at a pixel over that on the references."""
        if not self.references:
            return 0.0
        here = Seen.at(self.photo, (0, 0, 0), x, y).place
        gains = log_gains(np.vstack([self.seen.place, here]), self.theta)[:, 1]
        return float(gains[:-1].mean() - gains[-1])

    def with_one_more(self, more: Seen, spread: float, wanted: Seen) -> Floats:
        """Give the covariance of a wanted colour, shape (3, 3), if a reference were added.

        Parameters
        ----------
        more
            What the photo would show of it.
        spread
            How well its colour would be known, as in `Reference`.
        wanted
            What the photo shows of the wanted colour.
        """
        both = Seen(np.vstack([more.light, wanted.light]), np.vstack([more.place, wanted.place]))
        joint = self._joint(both)
        told = joint[:3, :3] + spread**2 * np.eye(3)
        shared = joint[3:, :3]
        return np.asarray(joint[3:, 3:] - shared @ np.linalg.solve(told, shared.T))

    @property
    def _gains(self) -> Floats:
        return np.asarray(self.balance.gains)

    def _balanced(self, seen: Seen) -> Floats:
        return predicted(seen, np.zeros(PARAMETERS), self._gains)

    def _joint(self, seen: Seen) -> Floats:
        """Give the covariance of several colours at once, shape (3 n, 3 n)."""
        labs = self._balanced(seen)
        slopes = jacobian(seen, self.theta, self._gains).reshape(-1, PARAMETERS)
        before = _covariance(self.prior, slopes, slopes, labs, labs)
        before += np.diag(self.prior.lone(labs).ravel())
        if not self.references:
            return before
        at_references = jacobian(self.seen, self.theta, self._gains).reshape(-1, PARAMETERS)
        shared = _covariance(self.prior, slopes, at_references, labs, self.known)
        return np.asarray(before - shared @ self.inverse @ shared.T) * self._tension**2

    @property
    def _tension(self) -> float:
        """How far the references contradict each other beyond what they may; 1 where they do not.

        All that is told from them is then less sure by as much [Birge1932].
        """
        if len(self.misfits) < 2:
            return 1.0
        return max(1.0, float(np.sqrt(np.mean(self.misfits**2))) / _MOST_MISFIT)


def estimate(
    photo: Photo, references: Sequence[Reference] = (), *, light: LightKind | None = None
) -> Correction:
    """Estimate what takes the light of a photo to colours.

    Parameters
    ----------
    photo
        The photo.
    references
        Any mixture of greys and chips in it, 60 at most; none is allowed, at a price.
    light
        Whether it was daylight or a lamp, where that is known: it says how far a camera errs.

    Raises
    ------
    MendableError
        If a reference cannot be read.
    """
    given = tuple(references)
    seen = see(photo, given)
    balance = _balance(photo, given, seen)
    prior = _prior(photo, balance, light, balanced=bool(given))
    fit = _Fit(seen, given, balance)
    best = prior
    theta = fit.theta(prior)
    if len(given) >= _FEWEST_TO_JUDGE:
        best = prior.scaled(fit.strength(prior, theta))
        theta = fit.theta(best, theta)
    theta = monotone(theta)
    inverse, weights = fit.solved(best, theta)
    return Correction(
        photo=photo,
        references=given,
        balance=balance,
        prior=best,
        theta=theta,
        seen=seen,
        known=fit.known,
        weights=weights,
        inverse=inverse,
        misfits=fit.misfits(best, theta),
    )


def to_covariance(matrix: Floats) -> Covariance:
    """Make a plain value of a covariance, shape (3, 3), exactly symmetric."""
    even = (matrix + matrix.T) / 2
    rows = [(float(row[0]), float(row[1]), float(row[2])) for row in even]
    return rows[0], rows[1], rows[2]


class _Fit:
    """The references against what the model says of them."""

    def __init__(self, seen: Seen, references: tuple[Reference, ...], balance: Balance) -> None:
        self.seen = seen
        self.gains = np.asarray(balance.gains)
        self.truth = np.reshape([r.lab.triple for r in references], (-1, 3))
        # Likeness is judged by what is seen, for so is that of a wanted colour; but a grey is grey.
        grey = np.array([[r.neutral] for r in references], dtype=np.bool_).reshape(-1, 1)
        balanced = predicted(seen, np.zeros(PARAMETERS), self.gains)
        self.known = np.where(grey, self.truth, balanced)
        self.spread = np.array([r.spread for r in references])

    def theta(self, prior: Prior, start: Floats | None = None) -> Floats:
        """Find the likeliest parameters: linearise, solve, and again."""
        theta = prior.mean if start is None else start
        if not len(self.truth):
            return theta
        for _ in range(_ROUNDS):
            slopes, off = self._linear(theta)
            told = np.linalg.solve(self._told(prior, slopes), off - slopes @ prior.mean)
            moved = prior.mean + prior.spread**2 * (slopes.T @ told)
            # Far from the answer the tangent misleads: no step may make things worse.
            worst = self._unlikely(prior, theta)
            for _ in range(_HALVINGS):
                if self._unlikely(prior, moved) <= worst:
                    break
                moved = (theta + moved) / 2
            else:
                break
            still = float(np.max(np.abs(moved - theta)))
            theta = moved
            if still < _STILL:
                break
        return np.asarray(theta)

    def _unlikely(self, prior: Prior, theta: Floats) -> float:
        """Tell how unlikely parameters are: by what is thought of them, and by the references."""
        pulled = (theta - prior.mean) / np.maximum(prior.spread, 1e-12)
        off = (self.truth - predicted(self.seen, theta, self.gains)).ravel()
        alone = np.kron(prior.leftover(self.known, self.known), np.diag(AXES))
        alone += np.diag((prior.lone(self.known) + self.spread[:, None] ** 2).ravel())
        found = float(pulled @ pulled + off @ np.linalg.solve(alone, off))
        return found if np.isfinite(found) else np.inf

    def solved(self, prior: Prior, theta: Floats) -> tuple[Floats, Floats]:
        """Give the inverse of the covariance of the references, and their weights."""
        slopes, off = self._linear(theta)
        inverse = np.asarray(np.linalg.inv(self._told(prior, slopes)), dtype=np.float64)
        return inverse, np.asarray(inverse @ (off - slopes @ prior.mean))

    def strength(self, prior: Prior, theta: Floats) -> float:
        """Choose how strongly colour may be corrected; a usual strength needs no reason."""
        return max(
            _STRENGTHS,
            key=lambda s: (
                self.foretold(prior.scaled(s), theta) - (np.log(s) / _STRENGTH_SPREAD) ** 2 / 2
            ),
        )

    def foretold(self, prior: Prior, theta: Floats) -> float:
        """Tell how likely each reference is, foretold from the others (its log, summed)."""
        total = 0.0
        for off, told in self._left_out(prior, theta):
            total -= float(off @ np.linalg.solve(told, off)) + float(np.linalg.slogdet(told)[1])
        return total / 2

    def misfits(self, prior: Prior, theta: Floats) -> Floats:
        """Give how many standard deviations each reference lies from what the others say."""
        if len(self.truth) < 2:
            return np.zeros(len(self.truth))
        return np.sqrt(
            [off @ np.linalg.solve(told, off) / 3 for off, told in self._left_out(prior, theta)]
        )

    def _left_out(self, prior: Prior, theta: Floats) -> list[tuple[Floats, Floats]]:
        """Give the error of each reference foretold from the others, and its covariance."""
        slopes, off = self._linear(theta)
        inverse = np.linalg.inv(self._told(prior, slopes))
        pulls = inverse @ (off - slopes @ prior.mean)
        found = []
        for at in range(0, len(off), 3):
            told = np.linalg.inv(inverse[at : at + 3, at : at + 3])
            found.append((told @ pulls[at : at + 3], told))
        return found

    def _linear(self, theta: Floats) -> tuple[Floats, Floats]:
        """Give slopes, and the truth less the model's tangent at no parameters."""
        slopes = jacobian(self.seen, theta, self.gains).reshape(-1, PARAMETERS)
        off = (self.truth - predicted(self.seen, theta, self.gains)).ravel()
        return slopes, off + slopes @ theta

    def _told(self, prior: Prior, slopes: Floats) -> Floats:
        """Give the covariance of the references as the prior has it, with their own errors."""
        told = _covariance(prior, slopes, slopes, self.known, self.known)
        return told + np.diag((prior.lone(self.known) + self.spread[:, None] ** 2).ravel())


def _covariance(
    prior: Prior, one_slopes: Floats, other_slopes: Floats, one: Floats, other: Floats
) -> Floats:
    """Give the covariance of two sets of colours but for what each has alone."""
    shared = (one_slopes * prior.spread**2) @ other_slopes.T
    return np.asarray(shared + np.kron(prior.leftover(one, other), np.diag(AXES)))


def _balance(photo: Photo, references: tuple[Reference, ...], seen: Seen) -> Balance:
    """Give the plain white balance: by the grey nearest to a grey card, or by chips, or none."""
    greys = [r for r in references if r.kind == "grey"]
    if greys:
        best = min(greys, key=lambda r: abs(np.log((r.reflectance or 1.0) / GREY_CARD)))
        return balance_from_grey(photo, best.rect, best.reflectance or GREY_CARD)
    if references:
        truth = lab_to_linear_srgb([r.lab.triple for r in references])
        return balance_from_chips(seen.light, np.asarray(truth))
    return no_reference()


def _prior(photo: Photo, balance: Balance, light: LightKind | None, *, balanced: bool) -> Prior:
    """Give what is thought of a photo before its references are looked at."""
    return prior_for(
        linear=photo.facts.linear or photo.facts.tone_mapped is False,
        cast=float(np.std(np.log(balance.gains))),
        balanced=balanced,
        light=light,
    )
