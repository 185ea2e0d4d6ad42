"""Which way is better after a sample, and that what is said of it is true of the figures shown."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from swatchwright.acts.sample import advice_on
from swatchwright.acts.sample_judged import judged_by_figures
from swatchwright.acts.sample_rounds import take_round
from swatchwright.acts.sample_why import (
    Why,
    costs_of_adding,
    hardly_nearer,
    told_nearer,
    why_fresh,
)
from swatchwright.mixing.mend import Addition, Additions, Pot
from swatchwright.mixing.remix import Outlook
from unit.acts.test_sample import CLOTH, DAY, MIX, SHELF, loop_with


def test_a_fresh_sample_is_better_where_adding_takes_much() -> None:
    """More than a quarter of the pot, and a fresh mix as near: then that reason is told."""
    _, advice = advice_on(SHELF, loop_with("much too grey"))
    held = sum(ml for _, ml in advice.pot)
    assert advice.additions.volume > 1.25 * held
    assert advice.better_fresh
    assert Why.MUCH in advice.why


@settings(max_examples=6, deadline=None)
@given(
    st.lists(st.tuples(*[st.floats(-7, 7)] * 3), min_size=1, max_size=3),
    st.sampled_from([0.4, 1.0, 2.5]),
)
def test_what_is_said_of_both_ways_is_true_of_the_figures_shown(
    differences: list[tuple[float, ...]], usual: float
) -> None:
    """Over simulated loops: equal figures and a small addition, and adding comes first."""
    loop = loop_with()
    for difference in differences:
        judged = judged_by_figures(difference, CLOTH, usual=usual)
        loop = take_round(SHELF, loop, MIX, judged, day=DAY)
        _, advice = advice_on(SHELF, loop)
        held = sum(ml for _, ml in advice.pot)
        small = advice.additions.volume <= 1.25 * held
        then, fresh = (round(o.usual, 1) for o in (advice.after, advice.fresh.outlook))
        if not advice.additions.steps:
            assert advice.why == (Why.NOTHING,)
            continue
        if small and fresh > then - 0.25:
            assert not advice.better_fresh
            assert advice.costs == ()
        told = {*advice.why, *advice.costs}
        assert (Why.MUCH in told) <= (not small)
        assert (Why.NEARER in told) <= (fresh < then - 0.15)
        assert (Why.LITTLE in told) <= (fresh < then - 0.15 and then > advice.last.delta_e / 2)
        assert advice.better_fresh <= (fresh < then + 0.25)


def test_why_a_fresh_sample_is_better() -> None:
    """A small addition that halves what is left needs none; what is no better is no way out."""
    last = loop_with("much too light").rounds[0]
    pot = Pot(tuple(SHELF.paint(id_) for id_, _ in MIX), tuple(ml for _, ml in MIX))

    def added(ml: float) -> Additions:
        step = Addition(SHELF.paint("soft-black"), ml, CLOTH, 1.0)
        return Additions(6.0, (step,) if ml else (), 1.0, pot.volume + ml)

    def outlook(usual: float) -> Outlook:
        return Outlook(CLOTH, usual, usual, usual)

    good, fair, bad = outlook(2.0), outlook(4.0), outlook(9.0)
    assert why_fresh(last, pot, added(1.0), good, good) == ()
    assert why_fresh(last, pot, added(0.0), good, good) == (Why.NOTHING,)
    assert why_fresh(last, pot, added(9.0), good, good) == (Why.MUCH,)
    assert why_fresh(last, pot, added(1.0), fair, fair) == ()
    assert why_fresh(last, pot, added(1.0), fair, outlook(3.81)) == ()
    assert why_fresh(last, pot, added(9.0), good, bad) == ()
    assert costs_of_adding(last, pot, added(9.0), good, bad) == (Why.MUCH,)
    assert costs_of_adding(last, pot, added(0.0), bad, bad) == ()
    assert why_fresh(last, pot, added(1.0), fair, good) == (Why.LITTLE, Why.NEARER)
    assert hardly_nearer(last, bad, bad)
    assert not hardly_nearer(last, bad, good)
    assert told_nearer(outlook(1.04), outlook(1.26))
    assert not told_nearer(outlook(1.05), outlook(1.24))


def test_her_number_of_paints_is_kept_to() -> None:
    """The fresh mix and its stripes have no more; one more is told only where it is nearer."""
    told = []
    for said in ("much too red", "much too grey", "clearly too blue and much too light"):
        for most in (2, 3):
            _, advice = advice_on(SHELF, loop_with(said), most_paints=most)
            assert all(len(mix.mixed) <= most for mix in (advice.fresh, *advice.beside))
            if advice.wider is not None:
                told.append(most)
                assert len(advice.wider.mixed) == most + 1
                off, then = (m.outlook.usual for m in (advice.fresh, advice.wider))
                assert round(then, 1) <= round(off, 1) - 0.2 + 1e-9
    assert told
