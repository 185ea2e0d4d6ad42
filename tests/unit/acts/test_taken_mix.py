"""What was taken from a sample, as it stands beside the mixes that are found."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import hypot
from pathlib import Path

import colour
import numpy as np
import pytest

from swatchwright.acts.batches import choose_recipe, keep_recipes
from swatchwright.acts.compare import Compared, CompareView, State, compared, sound_view
from swatchwright.acts.jobs import Store, job_of, keep_document, new_job, open_jobs, undo
from swatchwright.acts.recipes import recipes_for
from swatchwright.acts.sample import advice_on
from swatchwright.acts.sample_judged import judged_by_eye
from swatchwright.acts.sample_learnt import begun_anew, expected_off, taken_back
from swatchwright.acts.sample_rounds import SAMPLES_PART, SampleLoop, new_loop, take_round
from swatchwright.acts.sample_take import keep_sample
from swatchwright.acts.sample_tried import tried_line
from swatchwright.acts.taken_mix import TakenMix, taken_mix
from swatchwright.colour.spectrum import Light, lab_of
from swatchwright.mixing.search import coats_that_hide
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.paint.mixture import contrast_ratio, dry_reflectance, mix
from swatchwright.paint.paints import stack
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import KnownColour, Lab, isotropic

SHELF = demo_shelf()
CLOTH = KnownColour(Lab(46, 34, 24), isotropic(2.5), "a photo")
FIRST = (("strong-red-orange", 21.7), ("pale-blue-greyish", 5.8), ("strong-yellow-orange", 2.5))
RIGHT = (("strong-red-orange", 20.0), ("pale-blue-greyish", 6.1), ("strong-yellow-orange", 4.0))


def looped(*said: str) -> SampleLoop:
    """Give a loop of samples that were judged by eye, each mixed otherwise."""
    loop = new_loop(CLOTH)
    for mixed, words in zip((FIRST, RIGHT), said, strict=False):
        loop = take_round(SHELF, loop, mixed, judged_by_eye(words, CLOTH.lab), day="2026-03-01")
    return loop


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give a store with a job."""
    with open_jobs(tmp_path / "jobs.db") as made:
        new_job(made, title="Box")
        yield made


def of(store: Store, zone: str = "all", wanted: Lab = CLOTH.lab) -> TakenMix | None:
    """Give what was taken."""
    return taken_mix(store, job_of(store, "box"), wanted, zone=zone, volume=500.0)


def there(store: Store) -> TakenMix:
    """Give what was taken, which must be there."""
    found = of(store)
    assert found is not None
    return found


def take(store: Store, loop: SampleLoop, number: int, zone: str = "all") -> None:
    """Take a sample's mix."""
    keep_sample(store, "box", loop, number, shelf=SHELF, zone=zone)


class TestTaken:
    """A mix that was taken."""

    def test_it_is_the_mix_of_the_job(self, store: Store) -> None:
        """Paints, shares, parts and colours are those that are kept, whatever the shelf is now."""
        take(store, looped("clearly too light", "a touch too red"), 2)
        kept, found = job_of(store, "box").chosen("all"), there(store).measured
        assert kept is not None
        recipe = found.recipe
        assert [p.id for p in recipe.paints] == [p.paint for p in kept.paints]
        assert recipe.shares == tuple(p.share for p in kept.paints)
        assert recipe.parts.counts == tuple(p.parts for p in kept.paints)
        assert (recipe.dry, recipe.wet, recipe.delta_e) == (kept.dry, kept.wet, kept.delta_e)
        assert sum(one.ml for one in found.amounts) == pytest.approx(500.0)
        grams = [
            (a.ml, a.grams, p.density) for a, p in zip(found.amounts, recipe.paints, strict=True)
        ]
        assert all(g == pytest.approx(ml * d, abs=0.06) for ml, g, d in grams if g and d)

    def test_its_promise_is_that_of_its_sample(self, store: Store) -> None:
        """As far off as it was seen to be; what is not known is the root of both squares."""
        loop = looped("clearly too light", "a touch too red")
        take(store, loop, 2)
        found, one = there(store), loop.rounds[1]
        assert found.seen == one.delta_e
        assert found.measured.confidence.both == pytest.approx(hypot(one.delta_e, one.give_or_take))
        mix_of = [
            (p.id, s) for p, s in zip(found.paints, found.measured.recipe.shares, strict=True)
        ]
        assert found.told == tried_line(job_of(store, "box"), mix_of)

    def test_the_promise_of_a_pot_that_was_added_to(self, store: Store) -> None:
        """Of what nothing was brushed of, all pages promise what `expected_off` reckons."""
        loop = looped("clearly too light")
        _, advice = advice_on(SHELF, loop)
        added = tuple((step.paint.id, step.ml) for step in advice.additions.steps)
        assert added
        keep_sample(store, "box", loop, 1, shelf=SHELF, added=added)
        found = there(store)
        assert found.seen is None
        promised = expected_off(SHELF, loop, found.taken.mixed)
        assert found.measured.confidence.both == pytest.approx(promised)
        assert f"within about {promised:.1f} of the cloth" in found.told

    def test_for_another_volume(self, store: Store) -> None:
        """Only the amounts are others, in the same proportions."""
        take(store, looped("clearly too light", "like the cloth"), 2)
        before = there(store)
        after = before.for_volume(1250.0)
        ratios = [
            b.ml / a.ml
            for a, b in zip(before.measured.amounts, after.measured.amounts, strict=True)
        ]
        assert ratios == pytest.approx([2.5] * len(ratios), rel=2e-3)
        assert after.measured.recipe is before.measured.recipe

    def test_coats_that_hide(self, store: Store) -> None:
        """As many as ISO 6504 asks: 98 % of the luminance over white, and one less does not."""
        take(store, looped("clearly too light", "like the cloth"), 2)
        recipe = there(store).measured.recipe
        mixed = mix(stack(recipe.paints), [tuple(range(len(recipe.paints)))], [recipe.shares])
        assert recipe.coats == coats_that_hide(mixed)
        assert recipe.coats is not None
        assert contrast_ratio(mixed, recipe.coats)[0] >= 0.98
        assert recipe.coats == 1 or contrast_ratio(mixed, recipe.coats - 1)[0] < 0.98


class TestGone:
    """When it is there, and when not."""

    def test_nothing_was_taken(self, store: Store) -> None:
        """A mix that was found and kept is none that was judged."""
        keep_recipes(store, "box", recipes_for(CLOTH, SHELF, keep=2))
        keep_document(store, "box", SAMPLES_PART, looped("clearly too light"))
        assert of(store) is None
        assert taken_mix(store, None, CLOTH.lab, zone="all", volume=500.0) is None

    def test_for_another_colour(self, store: Store) -> None:
        """It is for the colour of its samples alone."""
        take(store, looped("clearly too light", "like the cloth"), 2)
        assert of(store, wanted=Lab(46, 34, 25)) is None

    def test_another_mix_is_kept_in_its_place(self, store: Store) -> None:
        """Then it goes; chosen again among those kept, it is back, and so it is by undo."""
        found = recipes_for(CLOTH, SHELF, keep=2)
        keep_sample(
            *(store, "box", looped("clearly too light", "like the cloth"), 2),
            shelf=SHELF,
            others=found,
        )
        hers, other = job_of(store, "box").recipes[:2]
        choose_recipe(store, "box", other)
        assert of(store) is None
        choose_recipe(store, "box", replace(hers, chosen=False))
        assert there(store).seen == 0.0
        undo(store)
        assert of(store) is None

    def test_its_sample_is_taken_back(self, store: Store) -> None:
        """It goes with its sample, and with all of them when they are begun anew."""
        loop = looped("clearly too light", "like the cloth")
        take(store, loop, 2)
        kept = job_of(store, "box").document(SAMPLES_PART)
        assert kept is not None
        loop = kept.read(SampleLoop)
        for gone in (taken_back(SHELF, loop)[1], begun_anew(loop)):
            keep_document(store, "box", SAMPLES_PART, gone)
            assert of(store) is None
            undo(store)
            assert of(store) is not None

    def test_of_zones(self, store: Store) -> None:
        """The zone at hand goes first; one that has just the same mix is named with it."""
        loop = looped("clearly too light", "like the cloth")
        take(store, loop, 1, "carcass")
        kept = job_of(store, "box").document(SAMPLES_PART)
        assert kept is not None
        take(store, kept.read(SampleLoop), 2, "drawers")
        first, second = of(store, "carcass"), of(store, "drawers")
        assert first is not None
        assert second is not None
        assert (first.zones, first.taken.number) == (("carcass",), 1)
        assert (second.zones, second.taken.number) == (("drawers",), 2)
        kept = job_of(store, "box").document(SAMPLES_PART)
        assert kept is not None
        take(store, kept.read(SampleLoop), 1, "drawers")
        both = of(store, "drawers")
        assert both is not None
        assert both.zones == ("drawers", "carcass")


class TestCompared:
    """Beside the wanted colour."""

    @pytest.fixture
    def taken(self, store: Store) -> TakenMix:
        """Give a mix whose sample was seen to be off."""
        take(store, looped("clearly too light", "a touch too red"), 2)
        return there(store)

    @staticmethod
    def side_by_side(taken: TakenMix, stack_: Stack | None = None) -> Compared:
        """Lay it beside two that were found."""
        found = recipes_for(CLOTH, SHELF, keep=2).recipes
        return compared(CLOTH, found, states=tuple(State), stack=stack_, shelf=SHELF, taken=taken)

    def test_it_comes_first_as_it_was_seen(self, taken: TakenMix) -> None:
        """Dry in daylight it has the colour that is kept, and is as far off as its sample."""
        told = self.side_by_side(taken)
        assert [bool(one.tried) for one in told.candidates] == [True, False, False]
        assert told.candidates[0].tried == taken.told
        sight = told.candidates[0].sight(State.DRY, Light.D65)
        assert sight.lab.triple == pytest.approx(taken.measured.recipe.dry.triple, abs=1e-9)
        assert sight.delta_e == sight.least == sight.most == taken.seen
        assert sight.usual == 0.0

    def test_in_another_light_it_is_aside_by_as_much(self, taken: TakenMix) -> None:
        """What parts it from its paints in daylight does so in every light.

        Against the colours of its paints as colour-science integrates them.
        """
        told = self.side_by_side(taken).candidates[0]
        recipe = taken.measured.recipe
        mixed = mix(stack(recipe.paints), [tuple(range(len(recipe.paints)))], [recipe.shares])
        R = dry_reflectance(mixed)[0]
        aside = np.array(recipe.dry.triple) - lab_of(R)
        spectrum = colour.SpectralDistribution(dict(zip(range(380, 731, 10), R, strict=True)))
        shape = colour.SpectralShape(380, 730, 10)
        cmfs = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"].copy().align(shape)
        lamp = colour.SDS_ILLUMINANTS["A"].copy().align(shape)
        XYZ = colour.sd_to_XYZ(spectrum, cmfs, lamp, method="Integration") / 100
        white = colour.CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]["A"]
        lab = np.asarray(colour.XYZ_to_Lab(XYZ, white)) + aside
        assert told.sight(State.DRY, Light.LAMP).lab.triple == pytest.approx(lab, abs=0.35)

    def test_those_found_are_as_without_it(self, taken: TakenMix) -> None:
        """It changes nothing of the others."""
        found = recipes_for(CLOTH, SHELF, keep=2).recipes
        alone = compared(CLOTH, found, states=tuple(State), shelf=SHELF)
        assert self.side_by_side(taken).candidates[1:] == alone.candidates

    def test_what_lies_over_it_was_not_tried(self, taken: TakenMix) -> None:
        """Under a wash its usual error is told again, and is no less than that of its sample."""
        wash = Stack((Layer(LayerKind.WASH, (("stone-grey-warm", 1.0),)),))
        told = self.side_by_side(taken, wash).candidates[0]
        sight = told.sight(State.WASHED, Light.D65)
        assert sight.usual >= taken.measured.confidence.both
        assert sight.delta_e != taken.seen

    def test_with_its_paints_off_the_shelf(self, taken: TakenMix) -> None:
        """It is shown all the same, and alone if nothing was found."""
        ids = {paint.id for paint in taken.paints}
        bare = Shelf("others", tuple(p for p in SHELF.paints if p.id not in ids))
        (one,) = compared(CLOTH, (), states=tuple(State), shelf=bare, taken=taken).candidates
        assert one.sight(State.DRY, Light.D65).delta_e == taken.seen

    def test_the_view(self) -> None:
        """It is shown unless it is left out; alone only where it is there and is shown."""
        none = CompareView(mixes=())
        assert sound_view(none, 5, taken=True).mixes == ()
        assert sound_view(none, 5).mixes == (1, 2, 3)
        assert sound_view(replace(none, taken=False), 5, taken=True).mixes == (1, 2, 3)
        assert sound_view(CompareView(), 2, taken=True) == replace(CompareView(), mixes=(1, 2))
