"""How a dried sample differs from the cloth: what is told of it, by eye in words, or by figures."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from math import cos, hypot, isfinite, radians, sin

import numpy as np

from swatchwright.acts.sample_grey import plainly_wrong
from swatchwright.colour.difference import JUST_SEEN, delta_e_2000
from swatchwright.colour.doubt import usual_difference
from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.mixing.fan import SPACING
from swatchwright.photo.quality import Finding
from swatchwright.values import Covariance, Lab, isotropic

__all__ = [
    "AMOUNTS",
    "LIKE_THE_CLOTH",
    "TOO",
    "How",
    "Judged",
    "judged_by_eye",
    "judged_by_figures",
    "picked_by_eye",
]


class How(StrEnum):
    """How a sample was compared with the cloth."""

    PHOTO = "photo"
    EYE = "eye"
    FIGURES = "figures"
    PICK = "pick"


@dataclass(frozen=True, slots=True)
class Judged:
    """How a sample differs from the cloth.

    Parameters
    ----------
    how
        How that was found.
    vector
        The sample less the cloth: L*, a*, b*.
    covariance
        Uncertainty of it, in squared Lab units.
    delta_e
        The same as CIEDE2000.
    give_or_take
        Its usual error, CIEDE2000.
    cloth, sample
        Both colours, as they are shown.
    said
        What was said, where it was judged in words.
    findings
        What is wrong with the photo.
    cloth_covariance
        Uncertainty of the cloth's own colour in the photo, in squared Lab units; None by eye.
    """

    how: How
    vector: tuple[float, float, float]
    covariance: Covariance
    delta_e: float
    give_or_take: float
    cloth: Lab
    sample: Lab
    said: str = ""
    findings: tuple[Finding, ...] = ()
    cloth_covariance: Covariance | None = None

    @property
    def misread(self) -> bool:
        """Whether the grey in the photo is plainly none, so that the difference is wrong."""
        return plainly_wrong(self.findings)


# --- by eye --------------------------------------------------------------------------------------

AMOUNTS = {"a touch": 1.5, "clearly": 3.0, "much": 6.0}
"""CIEDE2000 that is meant by each word; common practice, no source."""

TOO = (
    "too light",
    "too dark",
    "too red",
    "too green",
    "too yellow",
    "too blue",
    "too vivid",
    "too grey",
    "too warm",
    "too cool",
)
"""What may be said of a sample beside the cloth; the words are understood and kept in English."""

LIKE_THE_CLOTH = "like the cloth"

_ALIASES = {"a little": "a touch", "slightly": "a touch", "somewhat": "clearly", "far": "much"}
_LIKE = {LIKE_THE_CLOTH, "no difference", "the same", "done"}
_HUES = {"red": 0.0, "yellow": 90.0, "green": 180.0, "blue": 270.0, "warm": 50.0, "cool": 230.0}

# A word for how much is right to about half of it, and an eye errs by what it just sees.
_SURE = 0.5
_FURTHEST = 60.0
_NO_WAY = 0.3
"""Two ways whose steps leave less than this of one of them take each other back."""


def judged_by_eye(said: str, cloth: Lab) -> Judged:
    """Take a sample that was judged by eye, in words.

    Parameters
    ----------
    said
        Such as “a touch too light and too yellow”, “much too dark”, or “like the cloth”. An amount
        is how far off it is in all the ways that are said with it.
    cloth
        The colour of the cloth, about.

    Raises
    ------
    MendableError
        If it is not made of such words.
    """
    text = " ".join(said.lower().replace(",", " and ").split()).strip(" .")
    for other, word in _ALIASES.items():
        text = text.replace(other, word)
    if text in _LIKE:
        return _by_eye(How.EYE, np.zeros(3), cloth, JUST_SEEN, text)
    vector, sizes = np.zeros(3), []
    for amount, ways in _groups(text.removeprefix("it is ")):
        steps = [_step(way, cloth, amount, said) for way in ways]
        step = np.sum(steps, axis=0)
        if np.linalg.norm(step) < _NO_WAY * max(np.linalg.norm(one) for one in steps):
            raise MendableError(
                say("“{said}” says two opposite things.", said=said),
                say("Say the one of them that you see most."),
            )
        # A touch too light and too yellow is a touch off, whichever way.
        vector += step if len(ways) == 1 else _as_far_as(step, cloth, amount)
        sizes.append(amount)
    return _by_eye(How.EYE, vector, cloth, hypot(JUST_SEEN, _SURE * max(sizes)), text)


def _groups(text: str) -> list[tuple[float, list[str]]]:
    """Give each amount that is said, with the ways that are said with it."""
    found: list[tuple[float, list[str]]] = []
    for part in (part.strip() for part in text.split(" and ")):
        word = next((word for word in AMOUNTS if part.startswith(word)), "")
        if word or not found:
            found.append((AMOUNTS[word or "a touch"], []))
        found[-1][1].append(part.removeprefix(word).strip())
    return found


def _as_far_as(way: np.ndarray, cloth: Lab, amount: float) -> np.ndarray:
    """Give the step from the cloth along a way whose CIEDE2000 is an amount."""
    near, far, start = 0.0, _FURTHEST, np.array(cloth.triple)
    unit = way / np.linalg.norm(way)
    for _ in range(40):
        middle = (near + far) / 2
        if float(delta_e_2000(start, start + middle * unit)) < amount:
            near = middle
        else:
            far = middle
    return np.asarray(near * unit)


def _step(word: str, cloth: Lab, amount: float, said: str) -> np.ndarray:
    """Give the step of L*, a*, b* that one direction means."""
    asked = word if word.startswith("too ") else f"too {word}"
    if asked not in TOO:
        raise MendableError(
            say("“{said}” does not say how the sample differs from the cloth.", said=said),
            say(
                "Say {amounts} and then {ways} …, joined by “and”; or “{alike}”.",
                amounts=", ".join(AMOUNTS),
                ways=", ".join(TOO[:4]),
                alike=LIKE_THE_CLOTH,
            ),
        )
    return _as_far_as(_way(asked.removeprefix("too "), cloth), cloth, amount)


def _way(word: str, cloth: Lab) -> np.ndarray:
    if word in {"light", "dark"}:
        return np.array([1.0 if word == "light" else -1.0, 0.0, 0.0])
    if word in {"vivid", "grey"}:
        chroma = hypot(cloth.a, cloth.b)
        if chroma < 1.0:
            raise MendableError(
                say("The cloth is grey, so the sample cannot be too vivid.")
                if word == "vivid"
                else say("The cloth is grey, so the sample cannot be too grey."),
                say("Say which colour it leans to: too red, too green, too yellow or too blue."),
            )
        sign = 1.0 if word == "vivid" else -1.0
        return np.array([0.0, sign * cloth.a / chroma, sign * cloth.b / chroma])
    turn = radians(_HUES[word])
    return np.array([0.0, cos(turn), sin(turn)])


def _by_eye(how: How, vector: np.ndarray, cloth: Lab, usual: float, said: str) -> Judged:
    L, a, b = (float(v) for v in vector)
    return _judged(how, (L, a, b), isotropic(usual), cloth, said)


def picked_by_eye(cloth: Lab) -> Judged:
    """Take a mix that was picked out of a fan of brush-outs as the one like the cloth.

    It is right to half the step between neighbours, and to what an eye just sees.
    """
    return _by_eye(How.PICK, np.zeros(3), cloth, hypot(JUST_SEEN, SPACING / 2), LIKE_THE_CLOTH)


# --- by figures ----------------------------------------------------------------------------------


def judged_by_figures(
    vector: Sequence[float], cloth: Lab, *, usual: float = JUST_SEEN / 2
) -> Judged:
    """Take a difference that an instrument read.

    Parameters
    ----------
    vector
        The sample less the cloth: L*, a*, b*.
    cloth
        The colour of the cloth, about.
    usual
        The usual error of the difference, CIEDE2000.

    Raises
    ------
    MendableError
        If it is not three numbers of a difference.
    """
    if len(vector) != 3 or not all(isfinite(v) and abs(v) <= _FURTHEST for v in vector):
        raise MendableError(
            say("The difference of sample and cloth is not one."),
            say(
                "Give three numbers, the sample less the cloth: L*, a*, b*, each between -60 and "
                "60."
            ),
        )
    L, a, b = (float(v) for v in vector)
    return _judged(How.FIGURES, (L, a, b), isotropic(usual), cloth, "")


def _judged(
    how: How,
    vector: tuple[float, float, float],
    covariance: Covariance,
    cloth: Lab,
    said: str,
) -> Judged:
    there = np.array(cloth.triple) + vector
    there[0] = np.clip(there[0], 0.0, 100.0)
    return Judged(
        how=how,
        vector=vector,
        covariance=covariance,
        delta_e=float(delta_e_2000(cloth.triple, there)),
        give_or_take=usual_difference(cloth, covariance),
        cloth=cloth,
        sample=Lab.of(there),
        said=said,
    )
