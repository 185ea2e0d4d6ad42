"""A piece and its plan tell each other what goes on, and what was set by hand stays."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from swatchwright.acts.amounts import Coats, amounts_for
from swatchwright.acts.amounts_products import over_layers, spread_over
from swatchwright.acts.batch_offer import offered_volume
from swatchwright.acts.batches import keep_recipes, make_batch
from swatchwright.acts.jobs import job_of, keep_document, new_job, open_jobs, undo
from swatchwright.acts.piece_follow import Beside, followed, plan_told, set_by_hand, told_by_plan
from swatchwright.acts.piece_form import PieceForm, own_coats
from swatchwright.acts.piece_job import (
    FORM_PART,
    AtHand,
    amounts_order_of,
    form_for,
    keep_piece,
    order_for_job,
    piece_of_form,
)
from swatchwright.acts.plan_job import FINISH_PART, PLAN_PART, keep_plan, laid_in, plan_of_job
from swatchwright.acts.plan_own import answers_set, own_answers
from swatchwright.acts.recipes import Recipes, recipes_for, typed_colour
from swatchwright.acts.sheet import content_of
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.piece.common import Kind
from swatchwright.piece.order import ProductKind
from swatchwright.piece.spreading import CLEAR_RATES, Ground, Tool
from swatchwright.piece.work.order import FinishKind, Lead, PlanOrder, Primer, Surface
from swatchwright.piece.work.waits import usual_primer
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.store.store import Store

WASH = Layer(LayerKind.WASH, (("cream-pale-yellow", 1.0), ("soft-black", 1.0)), 4.0)
STACK = Stack((WASH, Layer(LayerKind.WAX)))
FORM = form_for(Kind.BLANKET_BOX)
BOX = piece_of_form(FORM)
PLAN = PlanOrder("box", "2027-03-01", own=())


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give an empty store."""
    with open_jobs(tmp_path / "store.sqlite") as opened:
        yield opened


@pytest.fixture
def job(store: Store) -> str:
    """Give a job with a box, a wash and wax."""
    id_ = new_job(store, title="Box").jobs[0]
    keep_piece(store, id_, FORM, BOX, None)
    keep_document(store, id_, FINISH_PART, STACK)
    return id_


@pytest.fixture(scope="module")
def clay() -> Recipes:
    """Give recipes for a clay red, of which none has the paints of the wash."""
    return recipes_for(typed_colour(46, 34, 24), demo_shelf(), most_paints=2)


class TestTheFinish:
    """Washes and clear finishes are those of the finish."""

    def test_a_wash_is_reckoned_from_its_parts(self) -> None:
        """One part of each of two paints and four of water to one: a tenth of the wash each.

        By hand: of five parts one is paint, and half of that is cream.
        """
        order = order_for_job(FORM, BOX, {}, demo_shelf(), AtHand(), beside=Beside(STACK))
        found = amounts_for(order)
        (wash,) = (b for b in found.batches if b.kind is ProductKind.WASH)
        assert wash.thinner_ml == pytest.approx(0.8 * wash.mix_ml)
        for paint in wash.paints:
            assert paint.ml == pytest.approx(0.1 * wash.mix_ml, abs=0.06)
        bought = {purchase.id: purchase.need_ml for purchase in found.purchases}
        assert bought["cream-pale-yellow"] == pytest.approx(0.1 * wash.mix_ml, abs=0.06)

    def test_wax_takes_a_third_of_a_varnish_or_less(self) -> None:
        """Wax is named, goes at least three times as far as a varnish, and is never sprayed on.

        Common practice, no source; and it is said to be.
        """
        sprayed = replace(FORM, coats=replace(FORM.coats, tool=Tool.SPRAY))
        order = order_for_job(sprayed, BOX, {}, demo_shelf(), AtHand(), beside=Beside(STACK))
        found = amounts_for(order)
        (wax,) = (b for b in found.batches if b.kind is ProductKind.CLEAR)
        area = sum(zone.area for zone in order.zones)
        assert wax.product == "wax"
        assert CLEAR_RATES["wax"] >= 3 * CLEAR_RATES["varnish"]
        assert wax.need_ml == pytest.approx(1000 * area / CLEAR_RATES["wax"] / 0.95)
        assert any("wax" in note and "no source" in note for note in found.notes)

    def test_layers_of_the_same_stuff_are_one_product(self) -> None:
        """Two layers of one wash are mixed together; another wash is a product of its own."""
        other = replace(WASH, water=2.0)
        over = over_layers(Stack((WASH, replace(WASH, passes=2), other, replace(other, passes=0))))
        assert [(one.coats, one.thinned) for one in over] == [(3, 4.0), (1, 2.0)]
        order = order_for_job(
            FORM, BOX, {}, demo_shelf(), AtHand(), beside=Beside(Stack((WASH, other)))
        )
        assert {"wash", "wash 2"} <= {product.id for product in order.products}

    def test_a_tinted_wax(self) -> None:
        """Nine parts of clear wax take one part of paint: by hand."""
        tinted = Stack((Layer(LayerKind.WAX, (("soft-black", 1.0),), 9.0),))
        order = order_for_job(FORM, BOX, {}, demo_shelf(), AtHand(), beside=Beside(tinted))
        (wax,) = (b for b in amounts_for(order).batches if b.kind is ProductKind.CLEAR)
        ml = {paint.id: paint.ml for paint in wax.paints}
        assert ml["wax"] == pytest.approx(9 * ml["soft-black"], rel=0.02)

    def test_a_paint_that_nobody_knows(self) -> None:
        """A wash of a paint that is not there is told by its kind and does not stop the rest."""
        gone = Stack((replace(WASH, paints=(("gone", 1.0),)),))
        order = order_for_job(FORM, BOX, {}, demo_shelf(), AtHand(), beside=Beside(gone))
        assert "wash" in {i.id for product in order.products for i in product.ingredients}

    @pytest.mark.parametrize(("coats", "laid"), [(0, []), (1, [1]), (2, [1, 1]), (5, [1, 4])])
    def test_counts_by_hand_are_spread(self, coats: int, laid: list[int]) -> None:
        """So many washes by hand are the first layers, and the last one goes on."""
        over = over_layers(Stack((WASH, replace(WASH, water=2.0))))
        assert [one.coats for one in spread_over(over, ProductKind.WASH, coats)] == laid

    def test_by_hand_comes_first(self) -> None:
        """What was set by hand stays as it is, and the rest follows."""
        shown = followed(FORM, Beside(STACK)).form
        changed = replace(shown, coats=replace(shown.coats, wash=3, wash_thinned=2.0))
        kept = set_by_hand(shown, changed)
        assert own_coats(kept) == {"wash", "wash_thinned"}
        told = followed(kept, Beside(Stack((WASH, Layer(LayerKind.VARNISH, passes=2)))))
        assert (told.coats.wash, told.coats.clear) == (3, 2)
        assert {one.thinned for one in told.over if one.kind is ProductKind.WASH} == {2.0}

    def test_a_form_that_does_not_tell(self) -> None:
        """Of a form that was kept before, what is unlike a new one counts as set by hand."""
        old = replace(FORM, coats=Coats(wash=2, ground=Ground.BARE))
        assert own_coats(old) == {"wash", "ground"}
        assert own_coats(FORM) == frozenset()


class TestOneAnswer:
    """What is on a piece and its primer are the same for piece and plan."""

    def test_the_primer_is_as_the_plan_has_it(self) -> None:
        """Two coats on what is unknown, one on raw wood, none on sound paint: the plan's rule."""
        for surface in Surface:
            plan = replace(PLAN, surface=surface, own=("surface",))
            coats = followed(FORM, Beside(plan=plan)).coats
            assert coats.primer == usual_primer(plan)[1]
        assert followed(FORM, Beside()).coats.primer == 2

    @pytest.mark.parametrize("coats", [0, 1, 3])
    @pytest.mark.parametrize("surface", list(Surface))
    def test_set_with_the_piece(self, surface: Surface, coats: int) -> None:
        """The plan then has as many coats as the piece."""
        plan = replace(PLAN, surface=surface, own=("surface",))
        shown = followed(FORM, Beside(plan=plan)).form
        kept = set_by_hand(shown, replace(shown, coats=replace(shown.coats, primer=coats)))
        told = plan_told(plan, kept)
        assert usual_primer(told)[1] == followed(kept, Beside(plan=told)).coats.primer == coats

    def test_set_with_the_plan(self) -> None:
        """A primer set with the plan is the piece's too; as is usual again, both follow."""
        kept = replace(FORM, coats=replace(FORM.coats, primer=1), own=("primer",))
        named = answers_set(PLAN, replace(PLAN, primer=Primer.ORDINARY, primer_coats=3))
        told = told_by_plan(kept, named)
        assert followed(told, Beside(plan=named)).coats.primer == 3
        usual = answers_set(named, replace(named, primer=None, primer_coats=0))
        assert "primer" not in own_coats(told_by_plan(told, usual))

    def test_what_is_on_it(self) -> None:
        """Raw wood said of the piece is the plan's, and an answer on lead is not carried over."""
        doubtful = replace(
            PLAN, surface=Surface.UNKNOWN, own=("surface",), lead=Lead.TESTED_NEGATIVE
        )
        bare = replace(
            FORM,
            surface=Surface.RAW,
            coats=replace(FORM.coats, ground=Ground.ROUGH),
            own=("ground",),
        )
        told = plan_told(doubtful, bare)
        assert (told.surface, told.lead) == (Surface.RAW, Lead.NOT_ANSWERED)
        assert followed(bare, Beside(plan=told)).coats.ground is Ground.ROUGH
        metal = replace(told, surface=Surface.METAL)
        assert followed(told_by_plan(bare, metal), Beside(plan=metal)).coats.ground is Ground.SHINY

    def test_it_is_one_edit(self, store: Store, job: str) -> None:
        """Kept with the plan it is kept with the piece, and one undo takes both back."""
        form = replace(FORM, coats=replace(FORM.coats, primer=1), own=("primer",))
        keep_piece(store, job, form, BOX, None)
        keep_plan(
            store, job, replace(PLAN, primer=Primer.ADHESION, primer_coats=3, own=("primer",))
        )
        assert read(store, job).coats.primer == 3
        undo(store)
        assert read(store, job) == form
        assert job_of(store, job).document(PLAN_PART) is None

    def test_a_kept_plan_follows(self, store: Store, job: str) -> None:
        """The plan of a job is told with the finish that the job has now."""
        keep_plan(store, job, PLAN)
        found = plan_of_job(job_of(store, job), demo_shelf())
        assert found is not None
        assert (found.washes, found.finish) == (1, FinishKind.WAX)
        assert found.laid == laid_in(STACK, demo_shelf(), BOX, FORM)
        assert found.laid[0].paints[1] == ("Soft black", 1.0)

    def test_answers_that_are_not_told(self) -> None:
        """Of a plan that was kept before, what is unusual counts as set by hand."""
        old = PlanOrder("box", "2027-03-01", coats=3, finish=FinishKind.WAX)
        assert own_answers(old) == {"coats", "finish"}


class TestWhatFollows:
    """Batches and sheets take what the piece takes."""

    def test_the_volume_of_a_batch(self, store: Store, job: str, clay: Recipes) -> None:
        """A batch is offered for what the piece takes, and then as the last one."""
        keep_recipes(store, job, clay, zone="body")
        order = amounts_order_of(store, job_of(store, job), demo_shelf())
        assert order is not None
        found = amounts_for(order)
        products = {
            row.zone: row.product for row in found.coatings if row.product.startswith("mix")
        }
        takes = next(b.mix_ml for b in found.batches if b.product == products["body"])
        assert offered_volume(store, job, "body", demo_shelf()) == takes != 500
        make_batch(store, job, volume=123, zone="body")
        assert offered_volume(store, job, "body", demo_shelf()) == 123

    def test_without_a_piece_it_is_as_on_the_bench(self, store: Store, clay: Recipes) -> None:
        """A job without a piece offers what is usual on the bench."""
        id_ = new_job(store, title="Frame").jobs[0]
        keep_recipes(store, id_, clay)
        assert offered_volume(store, id_, "all", demo_shelf()) == 500

    def test_a_sheet_of_a_wash_of_other_paints(self, store: Store, job: str, clay: Recipes) -> None:
        """With no paints kept, a wash of the demonstration's paints is told and bought."""
        keep_recipes(store, job, clay)
        mixed = {paint.paint for recipe in job_of(store, job).recipes for paint in recipe.paints}
        assert not {"cream-pale-yellow", "soft-black"} & mixed
        keep_plan(store, job, replace(PLAN, surface=Surface.RAW, own=("surface",)))
        content = content_of(store, job)
        assert not content.gaps
        names = {line.name for line in content.buy}
        assert {"Cream, pale yellow", "Soft black", "wax", "primer"} <= names
        assert any("wax" in line.lower() for line in content.mixed)


def read(store: Store, id_: str) -> PieceForm:
    """Read the form of a job."""
    document = job_of(store, id_).document(FORM_PART)
    assert document is not None
    return document.read(PieceForm)
