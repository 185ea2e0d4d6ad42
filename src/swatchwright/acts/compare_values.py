"""What is seen of mixes beside the wanted colour, in each state and light.

A colour under another light is told twice. `lab` is CIELAB for the light's own white, in which
differences are counted. `shown` is the colour that looks alike in daylight, to an eye that has got
used to that light: a grey stays grey.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from swatchwright.acts.in_light import ROOM
from swatchwright.acts.recipes import MeasuredRecipe
from swatchwright.colour.spectrum import Light
from swatchwright.language import mark
from swatchwright.values import KnownColour, Lab

__all__ = [
    "MOST_MIXES",
    "ROOM",
    "Candidate",
    "CompareView",
    "Compared",
    "Laid",
    "Sight",
    "State",
    "WantedSight",
    "sound_view",
]

MOST_MIXES = 6


class State(StrEnum):
    """How a mix is seen."""

    DRY = mark("dry")
    WET = mark("wet")
    WASHED = mark("washed")
    WAXED = mark("waxed")


@dataclass(frozen=True, slots=True)
class CompareView:
    """What is laid beside the wanted colour, as it is kept with a job.

    Parameters
    ----------
    mixes
        Numbers of the mixes, 1 the first.
    states
        In which states.
    light
        Under which light; None for that of the room.
    figures
        Whether figures are shown.
    every_light
        Whether all lights are shown at once.
    taken
        Whether the mix that was taken from a sample is among them, where there is one.
    """

    mixes: tuple[int, ...] = (1, 2, 3)
    states: tuple[State, ...] = (State.DRY,)
    light: Light | None = None
    figures: bool = False
    every_light: bool = False
    taken: bool = True


@dataclass(frozen=True, slots=True)
class WantedSight:
    """The wanted colour under a light.

    Parameters
    ----------
    light
        The light.
    lab, shown
        For the light's own white, and as it looks there; see the module.
    turns
        Which way it looks otherwise than in daylight, the largest first; empty if it does not.
    """

    light: Light
    lab: Lab
    shown: Lab
    turns: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Sight:
    """A mix in a state under a light, beside the wanted colour.

    Parameters
    ----------
    state, light
        Of the mix, and of the room.
    lab, shown
        For the light's own white, and as it looks there; see the module.
    delta_e
        CIEDE2000 from the wanted colour, the cloth's spectrum taken as the smoothest.
    least, most
        The same over the spectra that the cloth may have: a tenth lie below, a tenth above.
    ways
        Which way it differs from the wanted colour, the largest first; empty if that is not seen.
    ways_sure
        Whether four in five of those spectra agree on the way.
    drift, drift_most
        How far the difference is another than in daylight, CIEDE2000: half of the spectra below,
        and nine tenths. 0 in daylight.
    usual
        How far from the cloth it will usually be, untried: photo, paints and finish, CIEDE2000.
    """

    state: State
    light: Light
    lab: Lab
    shown: Lab
    delta_e: float
    least: float
    most: float
    ways: tuple[str, ...]
    ways_sure: bool
    drift: float
    drift_most: float
    usual: float


@dataclass(frozen=True, slots=True)
class Laid:
    """What lies over a mix in a state, in a painter's words.

    Parameters
    ----------
    state
        The state.
    words
        The layers, lowest first.
    notes
        What to mind.
    usual
        Whether the wash, or the wax on top, is the usual one, since none was laid.
    """

    state: State
    words: tuple[str, ...]
    notes: tuple[str, ...]
    usual: bool = False


@dataclass(frozen=True, slots=True)
class Candidate:
    """A mix with all its sights, and what lies over it in each finished state.

    Parameters
    ----------
    recipe
        The mix.
    sights
        It in each state under each light.
    laid
        What lies over it, for each finished state.
    tried
        What a sample said of it, in a sentence; empty for a mix that was found.
    """

    recipe: MeasuredRecipe
    sights: tuple[Sight, ...]
    laid: tuple[Laid, ...]
    tried: str = ""

    def sight(self, state: State, light: Light) -> Sight:
        """Give the one in a state under a light."""
        return next(s for s in self.sights if (s.state, s.light) == (state, light))


@dataclass(frozen=True, slots=True)
class Compared:
    """Mixes beside the wanted colour.

    Parameters
    ----------
    wanted
        The colour, as surely as it is known.
    sights
        It under each light.
    candidates
        In the order of the recipes; the one that was taken from a sample comes first.
    states, lights
        What was asked for, in order.
    """

    wanted: KnownColour
    sights: tuple[WantedSight, ...]
    candidates: tuple[Candidate, ...]
    states: tuple[State, ...]
    lights: tuple[Light, ...]

    def notes(self, states: Sequence[State]) -> tuple[str, ...]:
        """Say what to mind in some of the states, each once."""
        laid = [over for one in self.candidates for over in one.laid if over.state in states]
        return tuple(dict.fromkeys(note for over in laid for note in over.notes))

    def wanted_under(self, light: Light) -> WantedSight:
        """Give the wanted colour under a light."""
        return next(s for s in self.sights if s.light is light)


def sound_view(view: CompareView, count: int, *, taken: bool = False) -> CompareView:
    """Give a view that can be shown where there are so many mixes.

    Mixes that are not there are left out, and the first ones taken if none is left. `taken` tells
    whether there is one from a sample, which may also be shown alone.
    """
    mixes = tuple(n for n in dict.fromkeys(sorted(view.mixes)) if 1 <= n <= min(count, MOST_MIXES))
    alone = taken and view.taken and not view.mixes
    first = () if alone else tuple(range(1, min(count, len(CompareView().mixes)) + 1))
    return replace(
        view,
        mixes=mixes or first,
        states=tuple(state for state in State if state in view.states) or (State.DRY,),
        light=view.light if view.light in ROOM else None,
    )
