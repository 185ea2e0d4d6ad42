"""Putting a pot right by adding, and only by adding."""

from __future__ import annotations

from itertools import combinations, pairwise
from typing import Any

import numpy as np
import pytest
import scipy.optimize
from hypothesis import given, settings
from hypothesis import strategies as st
from numpy.typing import NDArray

from swatchwright.colour.difference import delta_e_2000
from swatchwright.colour.spectrum import lab_of
from swatchwright.errors import MendableError
from swatchwright.mixing.asked import Asked, asked_for
from swatchwright.mixing.mend import Pot, additions, aim_by_sample, pot_colour
from swatchwright.paint.clear import AMBER_WAX
from swatchwright.paint.family import Family
from swatchwright.paint.layered import Clear, base_of, look_of
from swatchwright.paint.mixture import mix
from swatchwright.paint.paints import Paint, stack
from swatchwright.values import Lab
from unit.mixing.composed import composed
from unit.mixing.shelves import STRONG, made_by, some
from unit.paint.made import paint

optimize: Any = scipy.optimize

SHELF = some(*STRONG)
POT = Pot(some("white-yellow", "strong-red-orange"), (200.0, 60.0))

volumes = st.lists(st.floats(1, 500), min_size=1, max_size=3)


@settings(max_examples=50)
@given(volumes, st.integers(0, 200), st.floats(1, 3))
def test_adding_only_adds(parts: list[float], seed: int, room: float) -> None:
    """Whatever the pot, the wish and the tub, nothing is taken away and nothing spills.

    The colour told after each step is that of what is then in the pot; the last is no further off
    than the pot was.
    """
    shelf = composed(6, seed=seed % 7)
    rng = np.random.default_rng(seed)
    wanted = Lab(*(float(v) for v in (rng.uniform(20, 90), *rng.uniform(-40, 40, 2))))
    pot = Pot(shelf[: len(parts)], tuple(parts))
    found = additions(pot, wanted, shelf, pot.volume * room)
    inside, amounts = list(pot.paints), list(pot.volumes)
    for step in found.steps:
        assert step.ml > 0
        inside.append(step.paint)
        amounts.append(step.ml)
        mixed = made_by(inside, [a / sum(amounts) for a in amounts])
        assert step.after.triple == pytest.approx(mixed.triple, abs=1e-9)
        assert step.delta_e == pytest.approx(float(delta_e_2000(wanted.triple, mixed.triple)))
    assert sum(amounts) == pytest.approx(found.volume)
    assert found.volume <= pot.volume * room + 1e-6
    assert found.delta_e <= found.before
    assert all(a.ml <= b.ml for a, b in pairwise(found.steps))


def by_slsqp(wanted: Lab, pair: tuple[Paint, ...], start: list[float]) -> float:
    """Minimise by scipy's SLSQP over what is added of two paints, 340 ml at the most."""

    def apart(added: NDArray[np.float64]) -> float:
        amounts = np.array([*POT.volumes, *np.maximum(added, 0)])
        mixed = made_by((*POT.paints, *pair), (amounts / amounts.sum()).tolist())
        return float(delta_e_2000(wanted.triple, mixed.triple))

    room = {"type": "ineq", "fun": lambda x: 340 - x.sum()}
    found = optimize.minimize(apart, start, method="SLSQP", bounds=[(0, 340)] * 2, constraints=room)
    return float(found.fun)


@pytest.mark.parametrize("word", list(Asked))
def test_no_minimiser_does_better_by_adding(word: Asked) -> None:
    """SLSQP over additions of all paints two at a time comes no nearer than by what ties."""
    wanted = asked_for(pot_colour(POT), word, 0.3)
    found = additions(POT, wanted, SHELF, 600.0)

    best = min(
        by_slsqp(wanted, pair, start)
        for pair in combinations(SHELF, 2)
        for start in ([5.0, 5.0], [100.0, 20.0], [20.0, 100.0])
    )
    assert found.delta_e <= best + 0.4 + 0.05


WAX = (Clear(AMBER_WAX),)


@pytest.mark.parametrize("word", [Asked.LESS_VIVID, Asked.LIGHTER, Asked.COOLER])
def test_what_lies_over_it_is_aimed_off_for(word: Asked) -> None:
    """Under an amber wax the additions are those that come near with the wax on.

    What is told of each step is the colour under the wax, as the layers reckon it, and it is nearer
    than what would be added to the bare paint comes to once that is waxed.
    """
    wanted = asked_for(pot_colour(POT, WAX), word, 0.3)
    found = additions(POT, wanted, SHELF, 800.0, over=WAX)
    inside = Pot(
        (*POT.paints, *(step.paint for step in found.steps)),
        (*POT.volumes, *(step.ml for step in found.steps)),
    )
    shares = np.array(inside.volumes) / inside.volume
    base = base_of(mix(stack(inside.paints), [range(len(shares))], [shares]))
    waxed = lab_of(look_of(base, WAX))[0]
    assert found.steps[-1].after.triple == pytest.approx(tuple(waxed), abs=1e-9)
    assert found.delta_e == pytest.approx(float(delta_e_2000(wanted.triple, waxed)), abs=1e-9)
    bare = additions(POT, asked_for(pot_colour(POT), word, 0.3), SHELF, 800.0)
    poured = Pot(
        (*POT.paints, *(step.paint for step in bare.steps)),
        (*POT.volumes, *(step.ml for step in bare.steps)),
    )
    blind = float(delta_e_2000(wanted.triple, pot_colour(poured, WAX).triple))
    assert found.delta_e <= blind + 0.4


def test_what_was_forgotten_is_added() -> None:
    """A pot in which a third of the red was forgotten asks for about that much red."""
    wanted = pot_colour(Pot(POT.paints, (200.0, 90.0)))
    found = additions(POT, wanted, SHELF, 1000.0)
    (step,) = found.steps
    assert step.paint.id == "strong-red-orange"
    assert step.ml == pytest.approx(30, abs=6)
    assert found.delta_e < 0.5


def test_a_pot_that_is_right_is_left_alone() -> None:
    """Nothing is added to a pot that has the colour, nor to a full tub."""
    right = additions(POT, pot_colour(POT), SHELF, 1000.0)
    assert right.steps == ()
    assert right.volume == POT.volume
    full = additions(POT, Lab(20, 0, 0), SHELF, POT.volume)
    assert full.steps == ()
    assert full.delta_e == full.before


def test_a_sample_that_is_off_moves_the_aim() -> None:
    """A sample that dried 2 too dark and 1 too red asks for 2 lighter and 1 less red."""
    here = pot_colour(POT)
    seen = Lab(here.L - 2, here.a + 1, here.b)
    aim = aim_by_sample(POT, seen, here)
    assert aim.triple == pytest.approx((here.L + 2, here.a - 1, here.b))
    assert aim_by_sample(POT, here, here).triple == pytest.approx(here.triple)


@pytest.mark.parametrize(
    ("pot", "shelf", "tub", "says"),
    [
        (Pot((), ()), SHELF, 100.0, "empty"),
        (Pot(SHELF[:1], (0.0,)), SHELF, 100.0, "holds 0 ml"),
        (POT, SHELF, 100.0, "room for only 100 ml"),
        (POT, [paint("o", family=Family.OIL)], 1000.0, "water-borne"),
        (Pot((SHELF[0], paint("o", family=Family.OIL)), (1.0, 1.0)), SHELF, 9.0, "solvent-borne"),
    ],
)
def test_what_cannot_be_mended_is_said(pot: Pot, shelf: list[Paint], tub: float, says: str) -> None:
    """An empty pot, one fuller than its tub, and paints that do not mix are refused by name."""
    with pytest.raises(MendableError) as caught:
        additions(pot, Lab(50, 0, 0), shelf, tub)
    assert says in caught.value.what


# --- what a client asks for ----------------------------------------------------------------------

HERE = Lab(50, 30, 15)


@pytest.mark.parametrize("word", list(Asked))
def test_the_dial_goes_from_nothing_on(word: Asked) -> None:
    """At 0 the colour stays; the further the dial the further the colour."""
    assert asked_for(HERE, word, 0.0).triple == pytest.approx(HERE.triple)
    steps = [
        float(np.linalg.norm(np.subtract(asked_for(HERE, word, d).triple, HERE.triple)))
        for d in (0.1, 0.4, 0.7, 1.0)
    ]
    assert steps == sorted(steps)
    assert steps[0] > 0


def test_words_mean_what_they_say() -> None:
    """A third less vivid has two thirds of the chroma at the same hue and lightness, and so on."""
    paler = asked_for(HERE, Asked.LESS_VIVID, 1 / 3)
    assert np.hypot(paler.a, paler.b) == pytest.approx(np.hypot(30, 15) * 2 / 3)
    assert paler.b / paler.a == pytest.approx(0.5)
    assert paler.L == 50
    assert asked_for(HERE, Asked.LIGHTER, 1.0).L == 100
    assert asked_for(HERE, Asked.DARKER, 1.0).L == 0
    assert asked_for(HERE, Asked.BLUER, 0.5).b < HERE.b
    assert asked_for(HERE, Asked.GREENER, 0.5).a < HERE.a
    warmer, cooler = (asked_for(HERE, w, 0.5) for w in (Asked.WARMER, Asked.COOLER))
    assert warmer.b > HERE.b > cooler.b
    assert warmer.a > HERE.a > cooler.a


@pytest.mark.parametrize("dial", [-0.1, 1.1, float("nan")])
def test_a_dial_off_its_scale_is_refused(dial: float) -> None:
    """The dial goes from 0 to 1."""
    with pytest.raises(MendableError, match="dial"):
        asked_for(HERE, Asked.WARMER, dial)
