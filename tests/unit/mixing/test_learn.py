"""Learning from samples: paints, the error of the theory and the cloth, against known ones."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.colour.difference import delta_e_2000
from swatchwright.mixing.believed import believed, usual_spread
from swatchwright.mixing.learn import Tried, learn
from swatchwright.mixing.remix import least_sure, outlook, remix
from swatchwright.paint.fit.doubt import mix_covariances
from swatchwright.paint.mixture import dry_lab, mix
from swatchwright.paint.paints import HowKnown, Paint, stack
from swatchwright.values import KnownColour, Lab, isotropic
from unit.mixing.shelves import some

if TYPE_CHECKING:
    from collections.abc import Sequence

    from numpy.typing import ArrayLike

IDS = ("white-clean", "strong-yellow-orange", "clay-red-muted")
SHARES = {"white-clean": 0.5, "strong-yellow-orange": 0.3, "clay-red-muted": 0.2}
EXACT = KnownColour(Lab(60, 25, 30), None, "")


def guessed() -> tuple[Paint, ...]:
    """Give three paints that are known by one colour."""
    return tuple(replace(p, how_known=HowKnown.GUESSED) for p in some(*IDS))


def stronger(paint: Paint, factor: float) -> Paint:
    """Give a paint that holds so much more pigment than was thought."""
    return replace(paint, K=factor * paint.K, S=factor * paint.S)


def colour(paints: Sequence[Paint], shares: dict[str, float]) -> np.ndarray:
    """Give the dry colour of a mix."""
    place = {paint.id: i for i, paint in enumerate(paints)}
    which = [[place[id_] for id_ in shares]]
    return np.asarray(dry_lab(mix(stack(paints), which, [list(shares.values())]))[0])


def tried(shares: dict[str, float], off: ArrayLike, usual: float = 0.2) -> Tried:
    """Give a sample that differed so from the cloth."""
    L, a, b = (float(v) for v in np.asarray(off))
    return Tried(shares, (L, a, b), isotropic(usual))


def test_nothing_tried_changes_nothing() -> None:
    """Without a sample the paints, the cloth and the computed colour stay as they are."""
    paints = guessed()
    learnt = learn(paints, EXACT, [])
    assert learnt.paints() == paints
    assert learnt.cloth == EXACT.lab
    seen = outlook(learnt, SHARES)
    assert seen.dry.triple == pytest.approx(tuple(colour(paints, SHARES)), abs=1e-6)


def test_doubt_before_any_sample_is_that_of_the_propagation_of_errors() -> None:
    """For paints with a spread the covariance is that of `mix_covariances`, and the hand's."""
    paints = tuple(replace(p, spread=usual_spread(p)) for p in guessed())
    learnt = learn(paints, EXACT, [])
    which, shares = np.array([[0, 1, 2]]), np.array([list(SHARES.values())])
    _, unknown, _ = learnt.off(which, shares)
    expected = mix_covariances(paints, shares)[0]
    assert unknown[0] == pytest.approx(expected, rel=0.02)


def test_slopes_are_those_of_small_steps() -> None:
    """Along a direction of the spread the colour changes as its slope says (finite differences)."""
    ground = believed(guessed())
    which, shares = np.array([[0, 1, 2]]), np.array([[0.5, 0.3, 0.2]])
    seen = ground.look(which, shares)
    for paint in range(3):
        for way in (0, 3):
            steps = np.zeros(ground.spread.shape[:2])
            steps[paint, way] = 1e-4
            ahead = ground.moved(steps).labs(which, shares)
            back = ground.moved(-steps).labs(which, shares)
            slope = (ahead - back)[0] / 2e-4
            assert seen.pushed[0, paint, way] == pytest.approx(slope, rel=1e-3, abs=1e-5)


def test_slopes_by_amount_are_those_of_small_steps() -> None:
    """A little more of a paint of one sheen changes the colour by its slope (finite steps)."""
    paints = guessed()
    ground = believed([replace(p, own_finish=paints[0].finish) for p in paints])
    which, shares = np.array([[0, 1, 2]]), np.array([[0.5, 0.3, 0.2]])
    seen = ground.look(which, shares)
    for paint in range(3):
        more, less = shares.copy(), shares.copy()
        more[0, paint] *= 1 + 1e-5
        less[0, paint] *= 1 - 1e-5
        slope = (ground.labs(which, more) - ground.labs(which, less))[0] / 2e-5
        assert seen.poured[0, paint] == pytest.approx(slope, rel=1e-3, abs=1e-4)


def test_the_tried_mix_is_then_known() -> None:
    """After a sure sample the mix is expected where it was found, and surer than before."""
    paints = guessed()
    off = np.array([4.0, -3.0, 6.0])
    before = outlook(learn(paints, EXACT, []), SHARES)
    learnt = learn(paints, EXACT, [tried(SHARES, off)])
    after = outlook(learnt, SHARES)
    found = np.array(EXACT.lab.triple) + off
    assert delta_e_2000(after.dry.triple, found) < 0.3
    assert after.usual - after.delta_e < before.usual - before.delta_e


@pytest.mark.parametrize("factor", [0.6, 1.6])
def test_a_paint_stronger_than_thought_is_found_out(factor: float) -> None:
    """After two samples other mixes of the paints are predicted much better than before."""
    paints = guessed()
    truth = (*paints[:2], stronger(paints[2], factor))
    second = {**SHARES, "white-clean": 0.3, "clay-red-muted": 0.4}
    rows = [
        tried(s, colour(truth, s) - np.array(EXACT.lab.triple)) for s in (SHARES, second)
    ]  # fmt: skip
    learnt = learn(paints, EXACT, rows).paints()
    other = {"white-clean": 0.6, "clay-red-muted": 0.3, "strong-yellow-orange": 0.1}
    right = colour(truth, other)
    thought, now = (float(delta_e_2000(right, colour(p, other))) for p in (paints, learnt))
    assert now < 0.55 * thought


def test_paints_that_were_not_tried_stay_as_they_are() -> None:
    """What is not in any sample is neither changed nor surer."""
    paints = guessed()
    two = {"white-clean": 0.7, "clay-red-muted": 0.3}
    learnt = learn(paints, EXACT, [tried(two, (5, 0, 0))])
    assert learnt.paints()[1] is paints[1]
    assert learnt.paints()[2].spread is not None


def test_a_misread_cloth_is_found_out() -> None:
    """Of paints that are known exactly and a cloth that is not, the cloth takes the difference."""
    sure = tuple(replace(p, spread=np.zeros((0, 72))) for p in some(*IDS))
    alone = {"clay-red-muted": 1.0}
    cloth = KnownColour(Lab.of(colour(sure, alone)), isotropic(5.0), "")
    learnt = learn(sure, cloth, [tried(alone, (3.0, 0.0, -2.0))])
    moved = np.array(learnt.cloth.triple) - cloth.lab.triple
    assert moved == pytest.approx([-3.0, 0.0, 2.0], abs=0.1)


def test_the_error_of_the_theory_fades_with_distance() -> None:
    """Of paints known exactly, a mix far from the tried one keeps its computed colour."""
    sure = tuple(replace(p, spread=np.zeros((0, 72))) for p in some(*IDS))
    cloth = KnownColour(Lab.of(colour(sure, SHARES)), None, "")
    learnt = learn(sure, cloth, [tried(SHARES, (3.0, 0.0, 0.0), 0.1)])
    far = {"white-clean": 0.995, "strong-yellow-orange": 0.005}
    near = outlook(learnt, SHARES).dry.L - colour(sure, SHARES)[0]
    away = outlook(learnt, far).dry.L - colour(sure, far)[0]
    assert near == pytest.approx(3.0, abs=0.2)
    assert abs(away) < 0.5 * near


@given(
    st.tuples(*[st.floats(-12, 12) for _ in range(3)]),
    st.floats(0.05, 0.9),
    st.floats(0.3, 3.0),
)
def test_a_sample_makes_its_mix_surer_but_for_its_surprise(
    off: tuple[float, float, float], share: float, usual: float
) -> None:
    """But for how surprising it was, what is not known of the mix tried shrinks to the reading."""
    paints = guessed()
    shares = {"white-clean": share, "clay-red-muted": 1 - share}
    which, rows = np.array([[0, 2]]), np.array([[share, 1 - share]])
    learnt = learn(paints, EXACT, [tried(shares, off, usual)])
    _, after, _ = learnt.off(which, rows)
    assert np.linalg.eigvalsh(after[0]).min() > -1e-6
    read = np.trace(np.array(isotropic(usual)))
    assert np.trace(after[0]) / learnt.strain < read + 3.0


def test_a_surprising_sample_says_that_less_is_known() -> None:
    """Far off what was thought, all stays less sure; just as it was thought, surer than usual."""
    paints = some(*IDS)
    thought = colour(paints, SHARES) - np.array(EXACT.lab.triple)
    as_thought = learn(paints, EXACT, [tried(SHARES, thought)])
    far = learn(paints, EXACT, [tried(SHARES, thought + np.array([-12.0, 9.0, -9.0]))])
    assert learn(paints, EXACT, []).strain == 1.0
    assert as_thought.strain < 1.0 < far.strain
    other = {"white-clean": 0.9, "clay-red-muted": 0.1}
    near, away = outlook(as_thought, other), outlook(far, other)
    assert away.usual**2 - away.delta_e**2 > near.usual**2 - near.delta_e**2


def test_photos_by_one_camera_err_alike() -> None:
    """A second photo of the same mix narrows it less than a second instrument reading does."""
    paints = some(*IDS)
    which, shares = np.array([[0, 1, 2]]), np.array([list(SHARES.values())])
    left = []
    for photo in (True, False):
        rows = [replace(tried(SHARES, (1.0, 0.0, 0.0), 1.5), by_photo=photo)] * 2
        learnt = learn(paints, EXACT, rows)
        left.append(np.trace(learnt.off(which, shares)[1][0]) / learnt.strain)
    assert left[0] > 1.2 * left[1]


def test_draws_of_sure_paints_agree_with_the_tangent() -> None:
    """Where little is not known the drawn usual difference is that of linear propagation."""
    sure = tuple(replace(p, spread=0.05 * usual_spread(p)) for p in some(*IDS))
    cloth = KnownColour(
        Lab.of(colour(sure, SHARES) + np.array([4.0, 0.0, 0.0])), isotropic(0.3), ""
    )
    learnt = learn(sure, cloth, [tried(SHARES, (-4.0, 0.0, 0.0), 0.3)])
    which, shares = np.array([[0, 1, 2]]), np.array([list(SHARES.values())])
    mean, unknown, hand = learnt.off(which, shares)
    rng = np.random.default_rng(5)
    drawn = rng.multivariate_normal(mean[0], unknown[0] + hand[0], 20_000)
    apart = delta_e_2000(learnt.cloth.triple, np.array(learnt.cloth.triple) + drawn)
    assert outlook(learnt, SHARES).usual == pytest.approx(np.sqrt(np.mean(apart**2)), rel=0.05)


def test_the_next_mix_goes_where_the_paints_truly_bring_it() -> None:
    """A mix proposed after two samples truly is nearer to the cloth than either sample."""
    paints = guessed()
    truth = (stronger(paints[0], 0.8), paints[1], stronger(paints[2], 1.5))
    cloth = KnownColour(Lab.of(colour(truth, SHARES)), None, "")
    shares: dict[str, float] = {"white-clean": 0.6, "strong-yellow-orange": 0.1}
    shares["clay-red-muted"] = 0.3
    rows: list[Tried] = []
    off = []
    for _ in range(3):
        brushed = colour(truth, shares)
        off.append(float(delta_e_2000(cloth.lab.triple, brushed)))
        rows.append(tried(shares, brushed - cloth.lab.triple))
        shares = remix(learn(paints, cloth, rows), list(shares)).shares
    assert off[1] < 0.6 * off[0]
    assert off[2] < 1.5


def test_a_mix_aside_lies_aside() -> None:
    """Brushed beside the next mix is one that differs by the step that was asked for."""
    paints = guessed()
    cloth = KnownColour(Lab.of(colour(paints, SHARES)), None, "")
    learnt = learn(paints, cloth, [tried(SHARES, (0.5, 0.0, 0.0), 0.5)])
    middle = remix(learnt, list(SHARES))
    step = np.array(least_sure(learnt, middle.shares))
    side = remix(learnt, list(SHARES), list(SHARES), aside=(2 * step).tolist())
    moved = np.array(side.outlook.dry.triple) - middle.outlook.dry.triple
    assert float(moved @ step) > 0


def test_water_and_solvent_are_kept_apart() -> None:
    """No paint of another carrier is proposed for a mix, however near it would bring it."""
    paints = guessed()
    oil = replace(paints[1], id="oil", own_finish=replace(paints[1].finish, waterborne=False))
    cloth = KnownColour(Lab.of(colour([oil], {"oil": 1.0})), None, "")
    two = {"white-clean": 0.5, "clay-red-muted": 0.5}
    brushed = colour(paints, two) - np.array(cloth.lab.triple)
    found = remix(learn((*paints, oil), cloth, [tried(two, brushed)]), list(two))
    assert "oil" not in found.shares
    assert sum(found.shares.values()) == pytest.approx(1.0)
