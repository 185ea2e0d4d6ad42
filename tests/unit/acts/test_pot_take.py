"""Keeping what is in a pot as the mix of a part, once something was stirred in."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.acts.batches import keep_recipes
from swatchwright.acts.client_wish import CLIENT_PART, ClientWish, ClientWishes, Stands, Wanted
from swatchwright.acts.jobs import Store, job_of, new_job, open_jobs, undo
from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.pot_take import added_in, bare_aim, keep_pot, pot_after, recipe_of_pot
from swatchwright.acts.recipes import colour_by_eye, recipes_for
from swatchwright.acts.ways import WayKind, ways_to
from swatchwright.colour.difference import delta_e_2000
from swatchwright.errors import MendableError
from swatchwright.mixing.asked import Asked
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.values import KnownColour, Lab

if TYPE_CHECKING:
    from pathlib import Path

DEMO = demo_shelf()
RED = (("strong-red-orange", 7.0), ("white-clean", 2.0))
QUIETER = Wanted(asked=(Asked.LESS_VIVID, 0.33))
FIRST = Lab(46, 34, 24)


@given(
    pot=st.floats(1, 20_000),
    parts=st.lists(st.floats(0.1, 100), min_size=1, max_size=4),
    added=st.lists(st.floats(0.1, 100), max_size=3),
)
def test_nothing_is_lost_in_the_pot(pot: float, parts: list[float], added: list[float]) -> None:
    """The pot holds what was in it and what was added, whichever paints these are."""
    mix = [(f"p{n}", part) for n, part in enumerate(parts)]
    more = [(f"p{2 * n}", ml) for n, ml in enumerate(added)]
    held = pot_after(mix, pot, more)
    assert sum(ml for _, ml in held) == pytest.approx(pot + sum(added))
    assert len(held) == len({id_ for id_, _ in held})


def test_its_recipe_is_what_it_holds() -> None:
    """Shares are just those of the pot, the colour that of the mix, the most of it first."""
    mixed = (("white-clean", 50.0), ("strong-red-orange", 150.0))
    wanted = KnownColour(FIRST, None, "typed in")
    recipe = recipe_of_pot(DEMO, mixed, wanted, volume=300).recipe
    assert [paint.id for paint in recipe.paints] == ["strong-red-orange", "white-clean"]
    assert recipe.shares == pytest.approx((0.75, 0.25))
    assert (
        recipe.dry
        == look_of_mix(
            DEMO, [(p.id, s) for p, s in zip(recipe.paints, recipe.shares, strict=True)]
        ).dry
    )
    assert recipe.delta_e == pytest.approx(float(delta_e_2000(recipe.dry.triple, FIRST.triple)))


def test_a_paint_that_is_not_there() -> None:
    """A pot of a paint that the shelf lacks is no recipe."""
    with pytest.raises(MendableError):
        recipe_of_pot(DEMO, (("gone", 10.0),), KnownColour(FIRST, None, ""), volume=100)


@pytest.mark.parametrize("over", [Stack(), Stack((Layer(LayerKind.WAX),))])
def test_the_bare_coat_is_as_far_off_as_the_finished_one(over: Stack) -> None:
    """What the zone wants from now on is as far from the pot as the aim is with all on."""
    (way,) = ways_to(DEMO, RED, QUIETER, pot=250, stands=Stands.POT, over=over).ways
    assert way.kind is WayKind.STIR
    aim = ways_to(DEMO, RED, QUIETER, pot=250, stands=Stands.POT, over=over).aim
    mixed = pot_after(RED, 250, added_in(way.additions))
    bare = bare_aim(DEMO, mixed, way, aim)
    dry = look_of_mix(DEMO, mixed).dry
    apart = [b - d for b, d in zip(bare.triple, dry.triple, strict=True)]
    assert apart == pytest.approx([a - w for a, w in zip(aim.triple, way.dry.triple, strict=True)])
    if not over.layers:
        assert bare.triple == pytest.approx(aim.triple, abs=0.05)


class TestKept:
    """A job with a red for its body, and a pot of it put right."""

    @pytest.fixture
    def job(self, tmp_path: Path) -> tuple[Store, str]:
        """Give the store and the job."""
        store = open_jobs(tmp_path / "jobs.db")
        id_ = new_job(store, title="A box").jobs[0]
        found = recipes_for(KnownColour(FIRST, None, "typed in"), DEMO, most_paints=2, keep=2)
        keep_recipes(store, id_, found, zone="body")
        return store, id_

    def test_in_one_edit(self, job: tuple[Store, str]) -> None:
        """Mix, wanted colour and what was said go together, and one undo takes all back."""
        store, id_ = job
        before = job_of(store, id_)
        now = colour_by_eye(Lab(48, 22, 16), "as the client wants it now")
        wishes = ClientWishes((ClientWish(FIRST, QUIETER, now.lab),))
        changes = keep_pot(
            *(store, id_),
            shelf=DEMO,
            mixed=(("strong-red-orange", 100.0), ("pale-blue-greyish", 25.0)),
            wanted=now,
            first=FIRST,
            wishes=wishes.standing(FIRST, Stands.POT),
            zone="body",
            volume=400,
        )
        assert "pot" in changes.label
        after = job_of(store, id_)
        kept = after.chosen("body")
        assert kept is not None
        assert kept.wanted == now.lab
        assert [paint.share for paint in kept.paints] == pytest.approx([0.8, 0.2])
        document = after.document(CLIENT_PART)
        assert document is not None
        said = document.read(ClientWishes)
        assert said.of(FIRST) is None
        assert said.stands(now.lab) is Stands.POT
        undo(store)
        assert job_of(store, id_) == before
        store.close()
