"""What lies over each part of a piece, and what is told and mixed of it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pypdfium2
import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.acts.amounts import amounts_for
from swatchwright.acts.amounts_products import coats_over, over_layers, spread_over
from swatchwright.acts.batches import WHOLE_PIECE, keep_recipes
from swatchwright.acts.client_wish import (
    CLIENT_PART,
    ClientWish,
    ClientWishes,
    ColourStands,
    Stands,
    Wanted,
)
from swatchwright.acts.finish import preview
from swatchwright.acts.jobs import job_of, keep_document, new_job, open_jobs
from swatchwright.acts.layers_by_part import by_part, check_parts, layers_on
from swatchwright.acts.piece_follow import Beside, followed, set_by_hand
from swatchwright.acts.piece_job import (
    AtHand,
    amounts_order_of,
    form_for,
    keep_piece,
    order_for_job,
    piece_of_form,
)
from swatchwright.acts.plan_job import FINISH_PART
from swatchwright.acts.recipes import Recipes, recipes_for, typed_colour
from swatchwright.acts.sheet import Units, content_of, content_of_mix, document_of, label_named
from swatchwright.acts.stock import take_demo_shelf
from swatchwright.colour.names import colour_name
from swatchwright.errors import MendableError
from swatchwright.mixing.asked import Asked
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.piece.amounts import Amounts
from swatchwright.piece.common import Kind
from swatchwright.piece.order import ProductKind
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.store.store import Store
from swatchwright.values import Lab

WASH = Layer(LayerKind.WASH, (("white-clean", 1.0),), 4.0, zone="body")
BLACK = Layer(LayerKind.WASH, (("soft-black", 1.0),), 4.0, zone="top")
WAX = Layer(LayerKind.WAX)
STACK = Stack((WASH, WAX))
FORM = form_for(Kind.BLANKET_BOX)
BOX = piece_of_form(FORM)
RED = [("strong-red-orange", 361.0), ("pale-blue-greyish", 139.0)]


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give an empty store."""
    with open_jobs(tmp_path / "store.sqlite") as opened:
        yield opened


@pytest.fixture(scope="module")
def red() -> Recipes:
    """Give a red that is too bright."""
    return recipes_for(typed_colour(46, 44, 26), demo_shelf(), most_paints=2, keep=1)


@pytest.fixture(scope="module")
def blue() -> Recipes:
    """Give an ink blue."""
    return recipes_for(typed_colour(24, 2, -20), demo_shelf(), most_paints=2, keep=1)


@pytest.fixture
def job(store: Store, red: Recipes, blue: Recipes) -> str:
    """Give a red box with a blue lid; its body has a wash, and all of it wax."""
    take_demo_shelf(store)
    id_ = new_job(store, title="Box", client="Harbour workshop").jobs[0]
    keep_piece(store, id_, FORM, BOX, None)
    keep_recipes(store, id_, red, zone="body")
    keep_recipes(store, id_, blue, zone="top")
    keep_document(store, id_, FINISH_PART, STACK)
    return id_


def reckoned(stack: Stack) -> Amounts:
    """Reckon the amounts of the box under layers."""
    return amounts_for(order_for_job(FORM, BOX, {}, demo_shelf(), AtHand(), beside=Beside(stack)))


def text_of(document: bytes) -> str:
    """Read the words of a document, whatever lines they stand in."""
    with pypdfium2.PdfDocument(document) as opened:
        return " ".join(" ".join(p.get_textpage().get_text_bounded() for p in opened).split())


class TestParts:
    """Which parts have which layers."""

    def test_parts_under_the_same_layers_are_told_as_one(self) -> None:
        """The body has its wash; doors and rest have none of their own and go together."""
        found = by_part(STACK, ["body", "doors", ""])
        assert [(on.parts, on.layers.layers) for on in found] == [
            (("body",), (WASH, WAX)),
            (("doors", ""), (WAX,)),
        ]
        assert found[1].words == "doors and the rest"

    def test_one_layer_each_that_is_the_same(self) -> None:
        """The same wash laid on body and top alone is one look."""
        both = Stack((WASH, replace(WASH, zone="top")))
        assert len(by_part(both, ["body", "top"])) == 1

    def test_parts_that_are_not_known(self) -> None:
        """Then they are those with layers of their own, and the rest."""
        assert [on.parts for on in by_part(STACK)] == [("body",), ("",)]
        assert layers_on(STACK, []) == STACK
        assert layers_on(STACK, ["top"]) == Stack((WAX,))

    def test_a_part_that_the_piece_does_not_have(self, store: Store, job: str) -> None:
        """Layers for it are refused, with the parts that there are; others are not."""
        kept = job_of(store, job)
        check_parts(kept, STACK)
        with pytest.raises(MendableError, match="lid") as caught:
            check_parts(kept, Stack((replace(WASH, zone="lid"),)))
        assert {"body", "top"} <= set(caught.value.mend.strip(".").split(": ")[1].split(", "))


class TestAmounts:
    """A layer takes what the part that it goes on takes."""

    def test_a_wash_for_the_body_is_laid_there_alone(self) -> None:
        """Its m2 are the body's, its ml in proportion, and wax goes on all as one product."""
        found, all_over = reckoned(STACK), reckoned(Stack((replace(WASH, zone=""), WAX)))
        areas = {row.zone: row.area for row in found.coatings if row.product == "wax"}
        assert set(areas) == {"body", "top"}
        (wash,) = [row for row in found.coatings if row.product == "wash"]
        assert (wash.zone, wash.coats) == ("body", 1)
        assert wash.area == pytest.approx(areas["body"])
        need = {b.product: b.need_ml for b in found.batches}
        whole = {b.product: b.need_ml for b in all_over.batches}
        share = areas["body"] / sum(areas.values())
        assert need["wash"] == pytest.approx(share * whole["wash"])
        assert need["wax"] == pytest.approx(whole["wax"])
        assert [b.product for b in found.batches].count("wax") == 1

    def test_its_paint_is_bought_for_the_part_alone(self) -> None:
        """What is needed of the paint in the wash follows the ml of the wash."""
        part, whole = (
            {p.id: p.need_ml for p in found.purchases}
            for found in (reckoned(STACK), reckoned(Stack((replace(WASH, zone=""), WAX))))
        )
        assert part["white-clean"] < whole["white-clean"]
        assert part["wax"] == pytest.approx(whole["wax"])

    def test_the_same_stuff_on_two_parts_is_one_product(self) -> None:
        """A wash once on all and once more on the body is one jar: two coats there, one on top."""
        found = reckoned(Stack((replace(WASH, zone=""), WASH)))
        rows = {r.zone: r.coats for r in found.coatings if r.product == "wash"}
        assert rows == {"body": 2, "top": 1}
        assert "wash 2" not in {b.product for b in found.batches}

    def test_another_wash_for_each_part(self) -> None:
        """Each is a product of its own, on its part alone."""
        found = reckoned(Stack((WASH, BLACK, WAX)))
        rows = [(r.zone, r.product) for r in found.coatings if r.product.startswith("wash")]
        assert set(rows) == {("body", "wash"), ("top", "wash 2")}

    def test_a_part_that_is_not_there_takes_nothing(self) -> None:
        """A layer for a part that the piece does not have is not mixed."""
        found = reckoned(Stack((replace(WASH, zone="lid"), WAX)))
        assert {b.product for b in found.batches if b.kind is not ProductKind.PAINT} & {
            "wash",
            "wax",
        } == {"wax"}

    def test_counts_are_those_of_the_part_with_the_most(self) -> None:
        """The form tells one count of washes: a wash on each of two parts is one, not two."""
        assert coats_over(over_layers(Stack((WASH, BLACK))), ProductKind.WASH) == 1
        assert coats_over(over_layers(Stack((WASH, BLACK, WASH))), ProductKind.WASH) == 2
        assert coats_over((), ProductKind.WASH) == 0
        assert followed(FORM, Beside(Stack((WASH, BLACK, WAX)))).coats.wash == 1

    @pytest.mark.parametrize(
        ("coats", "laid"),
        [
            (0, []),
            (1, [("", 1)]),
            (2, [("", 1), ("body", 1)]),
            (4, [("", 1), ("body", 3)]),
        ],
    )
    def test_counts_by_hand_on_parts(self, coats: int, laid: list[tuple[str, int]]) -> None:
        """By hand the last one goes on, on the part that has the most; no other gets more."""
        over = over_layers(Stack((replace(BLACK, zone=""), WASH)))
        found = spread_over(over, ProductKind.WASH, coats)
        assert [(one.zone, one.coats) for one in found] == laid

    @given(
        st.lists(st.tuples(st.sampled_from(["", "body", "top"]), st.integers(0, 4)), max_size=6),
        st.integers(0, 10),
    )
    def test_counts_are_those_that_are_told(self, laid: list[tuple[str, int]], coats: int) -> None:
        """Told as they are nothing changes; told otherwise the fullest part gets just so many."""
        layers = [
            replace(WASH, water=float(i), passes=n, zone=zone) for i, (zone, n) in enumerate(laid)
        ]
        over = over_layers(Stack(tuple(layers)))
        assert spread_over(over, ProductKind.WASH, coats_over(over, ProductKind.WASH)) == over
        assert coats_over(spread_over(over, ProductKind.WASH, coats), ProductKind.WASH) == coats

    def test_as_many_by_hand_on_two_parts(self) -> None:
        """Where two parts have as many, both get more."""
        found = spread_over(over_layers(Stack((WASH, BLACK))), ProductKind.WASH, 3)
        assert [(one.zone, one.coats) for one in found] == [("body", 3), ("top", 3)]

    def test_by_hand_still_works(self) -> None:
        """Two washes set by hand go twice on the body, where the finish has its wash."""
        shown = followed(FORM, Beside(STACK)).form
        kept = set_by_hand(shown, replace(shown, coats=replace(shown.coats, wash=2)))
        order = order_for_job(kept, BOX, {}, demo_shelf(), AtHand(), beside=Beside(STACK))
        rows = {r.zone: r.coats for r in amounts_for(order).coatings if r.product == "wash"}
        assert rows == {"body": 2}


class TestTheSheet:
    """Each colour is told with its own layers."""

    def test_each_part_has_its_own(self, store: Store, job: str) -> None:
        """The body ends as under wash and wax, the top as under wax, and says no wash."""
        body, top = content_of(store, job).zones
        assert [line.split()[1] for line in body.finish] == ["wash", "wax"]
        assert top.finish == ("a wax",)
        for zone, stack in ((body, STACK), (top, Stack((WAX,)))):
            parts = [(paint.id, paint.share) for paint in zone.paints]
            seen = preview(demo_shelf(), parts, stack).steps[-1].dry
            assert zone.finished is not None
            assert zone.finished.triple == pytest.approx(seen.triple, abs=0.05)
        assert not any("thicken" in note for note in top.minding)

    def test_the_label_of_the_top(self, store: Store, job: str) -> None:
        """It says the wax and not the body's wash."""
        label = label_named("99.1x67.7")
        told = {
            zone: text_of(document_of(content_of(store, job, zone=zone), label=label))
            for zone in ("body", "top")
        }
        assert "wash" in told["body"]
        assert "wash" not in told["top"]
        assert "wax" in told["top"]

    def test_amounts_of_the_piece(self, store: Store, job: str) -> None:
        """The table of the piece has the wash on the body alone."""
        content = content_of(store, job)
        lines = content.piece
        assert [line.zone for line in lines if line.product == "wash"] == ["body"]
        assert {line.zone for line in lines if line.product == "wax"} == {"body", "top"}
        assert any("ml of wash for body:" in line for line in content.mixed)
        assert any("ml of wax:" in line for line in content.mixed)

    def test_one_mix_for_parts_that_end_otherwise(self, store: Store, red: Recipes) -> None:
        """One red for all, with a wash on the body: layers and looks are told by part."""
        take_demo_shelf(store)
        id_ = new_job(store, title="Box").jobs[0]
        keep_piece(store, id_, FORM, BOX, None)
        keep_recipes(store, id_, red, zone=WHOLE_PIECE)
        keep_document(store, id_, FINISH_PART, STACK)
        content = content_of(store, id_)
        (zone,) = content.zones
        assert zone.finish[0].startswith("body: a wash of White")
        assert zone.finish[1] == "a wax"
        assert zone.finished is None
        assert {end.parts for end in zone.ends} == {"body", "top"}
        assert zone.ends[0].lab != zone.ends[1].lab
        told = text_of(document_of(content))
        assert "body, finished" in told
        assert "top, finished" in told
        assert "Under its finish" in told

    def test_one_mix_for_a_part_and_the_rest(self) -> None:
        """Of a mix with no job the other parts are the rest."""
        (zone,) = content_of_mix(demo_shelf(), RED, layers=Stack((WASH,))).zones
        assert [end.parts for end in zone.ends] == ["body"]
        (zone,) = content_of_mix(demo_shelf(), RED, layers=STACK).zones
        assert [end.parts for end in zone.ends] == ["body", "the rest"]

    def test_layers_for_a_part_that_is_not_there(self, store: Store, job: str) -> None:
        """They are left out, and that is told."""
        keep_document(store, job, FINISH_PART, Stack((replace(WASH, zone="lid"), WAX)))
        content = content_of(store, job)
        assert all(zone.finish == ("a wax",) for zone in content.zones)
        assert any("lid" in gap for gap in content.gaps)
        assert content.gaps_in == ("finish",)

    def test_near_is_said_of_the_mix_alone(self, store: Store, job: str) -> None:
        """Where layers go over it, the figure is said to be of the mix before them."""
        assert "the mix alone, before what goes over it" in text_of(
            document_of(content_of(store, job))
        )
        keep_document(store, job, FINISH_PART, None)
        told = text_of(document_of(content_of(store, job)))
        assert "before what goes over it" not in told
        assert "As computed it dries" in told

    def test_the_order_of_amounts(self, store: Store, job: str) -> None:
        """A job's own order lays the wash on the body alone."""
        order = amounts_order_of(store, job_of(store, job), demo_shelf())
        assert order is not None
        assert [c.zone for c in order.coatings if c.product == "wash"] == ["body"]


class TestJars:
    """The jar of a wash has a label."""

    def test_the_wash_of_the_body(self, store: Store, job: str) -> None:
        """Its paint and water by parts and ml, what it is for, and how the body looks under it."""
        content = content_of(store, job)
        (jar,) = content.jars
        assert jar.name == "wash for body"
        assert [(p.name, p.parts) for p in jar.paints] == [("White, clean", 1.0), ("water", 4.0)]
        assert sum(paint.ml for paint in jar.paints) == pytest.approx(jar.volume)
        assert jar.paints[1].ml == pytest.approx(0.8 * jar.volume, abs=0.5)
        parts = [(paint.id, paint.share) for paint in content.zones[0].paints]
        seen = preview(demo_shelf(), parts, Stack((WASH,))).steps[-1].dry
        assert jar.dry.triple == pytest.approx(seen.triple, abs=0.05)
        told = text_of(document_of(content, label=label_named("63.5x38.1")))
        assert "wash for body" in told
        assert "White, clean" in told

    def test_one_page_for_each(self, store: Store, job: str) -> None:
        """Two mixes and a wash are three labels; of the top alone there is no wash."""
        label = label_named("70x37")
        for zone, count in ((None, 3), ("body", 2), ("top", 1)):
            document = document_of(content_of(store, job, zone=zone), label=label)
            with pypdfium2.PdfDocument(document) as opened:
                assert len(opened) == count

    def test_a_wash_on_all(self, store: Store, job: str) -> None:
        """It is for no part alone, and two paints have their parts, with water for both."""
        paints = (("white-clean", 2.0), ("soft-black", 1.0))
        keep_document(store, job, FINISH_PART, Stack((replace(WASH, paints=paints, zone=""),)))
        (jar,) = content_of(store, job).jars
        assert jar.name == "wash"
        assert [paint.parts for paint in jar.paints] == [2.0, 1.0, 12.0]

    @pytest.mark.parametrize("stack", [None, Stack((WAX,)), Stack((replace(WASH, passes=0),))])
    def test_no_wash_no_jar(self, store: Store, job: str, stack: Stack | None) -> None:
        """With no wash laid there is no jar of one."""
        keep_document(store, job, FINISH_PART, stack)
        assert content_of(store, job).jars == ()


class TestTheWish:
    """What a client wants now is told under the colour it is of."""

    def test_it_is_told_under_its_colour(self, store: Store, job: str, red: Recipes) -> None:
        """Of the body only, with how far that has come, and how near its layers bring it."""
        first = red.wanted.lab
        asked = Wanted(asked=(Asked.LESS_VIVID, 1 / 3))
        wish = ClientWish(first, asked, asked.aim(first))
        wishes = ClientWishes((wish,), (ColourStands(first, Stands.PAINTED),))
        keep_document(store, job, CLIENT_PART, wishes)
        body, top = content_of(store, job).zones
        assert body.wish[0] == f"The client wants it less vivid now: {colour_name(wish.aim)}."
        assert body.wish[1] == "It is painted already."
        assert body.wish[2].startswith("With all layers on it is ")
        assert top.wish == ()
        assert body.wish[0] in text_of(document_of(content_of(store, job)))

    @pytest.mark.parametrize(
        ("wanted", "says"),
        [
            (Wanted(grey_as=Lab(50, 10, 9)), "as grey as another colour"),
            (Wanted(colour=Lab(50, 20, 9)), "another colour now"),
        ],
    )
    def test_other_wishes(
        self, store: Store, job: str, red: Recipes, wanted: Wanted, says: str
    ) -> None:
        """A wish for a grey or for a very colour is said to be that, with its colour."""
        first = red.wanted.lab
        wish = ClientWish(first, wanted, wanted.aim(first))
        keep_document(store, job, CLIENT_PART, ClientWishes((wish,)))
        told = content_of(store, job).zones[0].wish
        assert says in told[0]
        assert colour_name(wish.aim) in told[0]
        assert len(told) == 2

    def test_none_is_told_where_none_is_kept(self, store: Store, job: str) -> None:
        """With no wish, and with one that cannot be read, the sheet says nothing of it."""
        assert content_of(store, job).zones[0].wish == ()
        keep_document(store, job, CLIENT_PART, {"wishes": 3})
        assert content_of(store, job).zones[0].wish == ()


class TestAmountsOnLabels:
    """A label tells ml and g where both are asked for."""

    def test_both_where_there_is_room(self) -> None:
        """Each paint has ml and g on a large label."""
        content = content_of_mix(demo_shelf(), [("strong-red-orange", 3), ("soft-black", 1)])
        told = text_of(document_of(content, label=label_named("99.1x67.7")))
        for paint in content.zones[0].paints:
            assert paint.grams is not None
            assert f"{paint.ml:.1f} ml / {paint.grams:.1f} g" in told

    def test_amounts_in_front_of_the_paints(self, store: Store, job: str) -> None:
        """Where parts cannot be counted the ml stand in front, and the g after the name."""
        content = content_of(store, job, zone="body", volume=500)
        assert not content.zones[0].in_parts
        told = text_of(document_of(content, label=label_named("99.1x67.7")))
        for paint in content.zones[0].paints:
            assert f"{paint.ml:.1f} ml" in told
            assert f"{paint.grams:.1f} g" in told

    @pytest.mark.parametrize("parts", [True, False])
    @pytest.mark.parametrize("units", [Units(ml=True, grams=False), Units(ml=False, grams=True)])
    def test_one_where_one_is_asked_for(self, units: Units, *, parts: bool) -> None:
        """Only ml, or only g, whether the parts are counted or not."""
        mix = [("strong-red-orange", 3.0 if parts else 100 / 3), ("soft-black", 1.0)]
        content = content_of_mix(demo_shelf(), mix, units=units)
        assert content.zones[0].in_parts is parts
        told = text_of(document_of(content, label=label_named("99.1x67.7")))
        (paint, *_) = content.zones[0].paints
        assert (f"{paint.ml:.1f} ml" in told) is units.ml
        assert (f"{paint.grams:.1f} g" in told) is units.grams
