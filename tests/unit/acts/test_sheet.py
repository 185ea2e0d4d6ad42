"""What a sheet says of a job and of a mix, what it leaves out, and where it is written."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import hypot
from pathlib import Path

import pypdfium2
import pytest

from swatchwright.acts.amounts import Coats
from swatchwright.acts.batches import choose_recipe, keep_recipes, make_batch
from swatchwright.acts.confidence import confidence_in
from swatchwright.acts.finish import preview
from swatchwright.acts.jobs import job_of, keep_document, new_job, note_job, open_jobs
from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.piece_job import form_for
from swatchwright.acts.recipes import Recipes, recipes_for, typed_colour, with_volume
from swatchwright.acts.sheet import (
    Units,
    content_of,
    content_of_mix,
    document_of,
    label_named,
    pictures_of,
    read_code,
    save_sheet,
)
from swatchwright.acts.sheet_form import BenchMix, SheetForm, sheet_of_mix
from swatchwright.acts.stock import put_paints, take_demo_shelf
from swatchwright.errors import MendableError
from swatchwright.measures.kitchen import Country
from swatchwright.measures.shares import rounded_amounts
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.paint.paints import HowKnown, Paint
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.work.order import FinishKind, Lead, PlanOrder, Surface, Which
from swatchwright.sheet.content import PaintLine
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store.store import Store
from swatchwright.values import KnownColour, Lab, isotropic

WANTED = typed_colour(46, 34, 24)
PARTS = [("strong-red-orange", 361.0), ("pale-blue-greyish", 96.0), ("strong-yellow-orange", 43.0)]
WAXED = Stack((Layer(LayerKind.WASH, (("stone-grey-warm", 1.0),)), Layer(LayerKind.WAX, amber=1.0)))


@pytest.fixture(scope="module")
def found() -> Recipes:
    """Give the recipes for a clay red."""
    return recipes_for(WANTED, demo_shelf(), keep=2)


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give an empty store."""
    with open_jobs(tmp_path / "store.sqlite") as made:
        yield made


@pytest.fixture
def box(store: Store, found: Recipes) -> str:
    """Give the id of a job with a chosen recipe for its body, on the demonstration shelf."""
    take_demo_shelf(store)
    id_ = new_job(store, title="Blanket box", client="Harbour workshop").jobs[0]
    keep_recipes(store, id_, found, zone="body")
    return id_


# --- of a mix ------------------------------------------------------------------------------------


def test_a_mix_is_told_as_the_other_acts_tell_it() -> None:
    """Colours are those of the mix and of its finish, and amounts come to the volume."""
    content = content_of_mix(demo_shelf(), PARTS, wanted=WANTED, layers=WAXED, volume=750)
    zone = content.zones[0]
    look = look_of_mix(demo_shelf(), PARTS)
    assert (zone.dry, zone.wet, zone.wanted) == (look.dry, look.wet, WANTED.lab)
    assert zone.finished == preview(demo_shelf(), PARTS, WAXED).steps[-1].dry
    assert sum(paint.ml for paint in zone.paints) == pytest.approx(750)
    assert [paint.parts for paint in zone.paints] == [361, 96, 43]
    assert [paint.ml for paint in zone.paints] == pytest.approx([541.5, 144, 64.5])


def test_grams_are_volume_times_density() -> None:
    """Each weight is the volume by the density of the paint, and none where that is not known."""
    red = demo_shelf().paint("strong-red-orange")
    blue = replace(demo_shelf().paint("pale-blue-greyish"), density=None)
    content = content_of_mix(Shelf("two", (red, blue)), [(red.id, 1.0), (blue.id, 1.0)])
    first, second = content.zones[0].paints
    assert red.density is not None
    assert first.grams == pytest.approx(250 * red.density)
    assert second.grams is None


def test_the_pour_adds_up_to_the_mix() -> None:
    """What is poured first, in three portions and held back is all there is."""
    zone = content_of_mix(demo_shelf(), PARTS, volume=500).zones[0]
    told = " ".join(zone.pour)
    numbers = [float(word) for word in told.split() if word.replace(".", "", 1).isdigit()]
    first, second, portion, held = numbers
    assert first + second + 3 * portion + held == pytest.approx(500, abs=0.2)


def test_one_paint_needs_no_pouring_order() -> None:
    """A recipe of one paint says nothing of an order."""
    zone = content_of_mix(demo_shelf(), [("white-clean", 1.0)]).zones[0]
    assert zone.pour == ()
    assert zone.apart is None
    assert zone.finished is None


def test_spoons_are_told_where_asked_for() -> None:
    """Cups and spoons stand beside the ml when a country is named, and only then."""
    units = Units(spoons=Country.METRIC)
    spooned = content_of_mix(demo_shelf(), PARTS, units=units).zones[0].paints
    assert spooned[0].spoons == "1¼ cups 3 tbsp 0.75 tsp"  # 312.5 + 45 + 3.75 = 361.25 ml
    assert content_of_mix(demo_shelf(), PARTS).zones[0].paints[0].spoons == ""


def test_invented_paints_are_said_to_be() -> None:
    """A sheet of the demonstration says that it is one, and gives no figure for its paints."""
    content = content_of_mix(demo_shelf(), PARTS)
    assert content.invented
    assert any("invented" in sentence for sentence in content.zones[0].trust)


def content_paints(paints: tuple[Paint, ...]) -> tuple[Paint, ...]:
    """Give the paints of the recipe out of those of a shelf."""
    return tuple(paint for id_, _ in PARTS for paint in paints if paint.id == id_)


def test_trust_tells_photo_and_paints_apart() -> None:
    """Of guessed paints and a colour from a photo both doubts are told, and how each is known."""
    paints = tuple(replace(p, how_known=HowKnown.GUESSED) for p in demo_shelf().paints)
    photo = KnownColour(WANTED.lab, isotropic(5.0), "a colour of the photo")
    content = content_of_mix(Shelf("mine", paints), PARTS, wanted=photo)
    zone = content.zones[0]
    told = " ".join(zone.sample)
    assert not content.invented
    doubt = confidence_in(photo, content_paints(paints), (0.722, 0.192, 0.086))
    assert f"the photo {doubt.photo:.1f}, the paints {doubt.paints:.1f}" in told
    assert f"within {hypot(doubt.photo, doubt.paints):.0f} of the cloth" in told
    assert all("guessed" in paint.how_known for paint in zone.paints)
    assert "Brush a sample" in " ".join(zone.check)


def test_cautions_follow_what_is_used() -> None:
    """Lead, dust and children always; oily rags where there is oil or wax."""
    plain = [c.danger for c in content_of_mix(demo_shelf(), PARTS).cautions]
    waxed = [c.danger for c in content_of_mix(demo_shelf(), PARTS, layers=WAXED).cautions]
    assert plain == ["lead", "dust", "children"]
    assert "oily rags" in waxed


def test_the_code_gives_the_recipe_back() -> None:
    """The code of a sheet holds its paints, parts and colours."""
    zone = content_of_mix(demo_shelf(), PARTS, title="Box", wanted=WANTED).zones[0]
    recipe = read_code(zone.code)
    assert [(paint.id, paint.parts) for paint in recipe.paints] == PARTS
    assert recipe.wanted == Lab(46, 34, 24)
    assert recipe.title == "Box"


def test_letters_that_cannot_be_printed_are_told() -> None:
    """A title in letters that the font has not is told of, not passed over."""
    content = content_of_mix(demo_shelf(), PARTS, title="箱")
    assert any("箱" in gap for gap in content.gaps)


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"volume": 0.1}, "volume"),
        ({"volume": float("nan")}, "volume"),
        ({"day": "Tuesday"}, "not a day"),
        ({"title": "x" * 201}, "201 letters"),
        ({"parts": [("nothing", 1.0)]}, "no paint"),
        ({"layers": Stack((Layer(LayerKind.WASH),))}, "paints in it"),
    ],
)
def test_what_cannot_be_is_refused(changes: dict[str, object], said: str) -> None:
    """Impossible volumes, days, texts, paints and layers are refused in plain words."""
    asked: dict[str, object] = {"parts": PARTS} | changes
    with pytest.raises(MendableError, match=said):
        content_of_mix(demo_shelf(), **asked)  # type: ignore[arg-type]


# --- of a job ------------------------------------------------------------------------------------


def test_a_bare_job_is_told_as_far_as_it_goes(store: Store, box: str) -> None:
    """With nothing but a chosen recipe there is a sheet, and nothing else is made up."""
    content = content_of(store, box)
    assert (content.title, content.client, content.job) == ("Blanket box", "Harbour workshop", box)
    assert [zone.name for zone in content.zones] == ["body"]
    assert content.zones[0].volume == 500
    assert (content.batches, content.piece, content.plan, content.gaps) == ((), (), (), ())


def test_the_last_batch_of_a_zone_gives_its_amounts(store: Store, box: str) -> None:
    """Amounts are those that were poured last, unless another volume is asked for."""
    make_batch(store, box, volume=300, day="2026-03-01")
    make_batch(store, box, volume=750, day="2026-03-02", note="warm room")
    content = content_of(store, box)
    poured = {p.paint: p.ml for p in job_of(store, box).batches[-1].poured}
    assert {paint.id: paint.ml for paint in content.zones[0].paints} == poured
    assert [batch.number for batch in content.batches] == [1, 2]
    assert read_code(content.zones[0].code).batch == 2
    assert content_of(store, box, volume=100).zones[0].volume == 100


def test_a_piece_gives_areas_and_amounts(store: Store, box: str) -> None:
    """With a piece kept there are its zones, what to mix, and what to buy; and the volume."""
    keep_document(store, box, "piece", common_piece(Kind.CHEST_OF_DRAWERS))
    content = content_of(store, box)
    assert "body" in {line.zone for line in content.piece}
    assert content.mixed
    assert content.buy
    assert content.zones[0].volume_from.startswith("what the piece takes")
    mixed = next(text for text in content.mixed if "mix for body" in text)
    assert f"{content.zones[0].volume:.0f} ml" in mixed


def test_amounts_are_those_of_the_colour_page(store: Store, box: str, found: Recipes) -> None:
    """The ml of a job's sheet, and of the first mix of the bench, are those found with the recipe.

    They follow from the exact shares; the parts beside them have a difference of their own, and
    both are those that the search gave.
    """
    measured = with_volume(found, 333.3).recipes[0]
    recipe = measured.recipe
    bench = sheet_of_mix(BenchMix(found, demo_shelf()), SheetForm(volume=333.3))
    for zone in (content_of(store, box, volume=333.3).zones[0], bench.zones[0]):
        told = {paint.id: (paint.ml, paint.grams) for paint in zone.paints}
        amounts = zip(recipe.paints, measured.amounts, strict=True)
        assert told == {paint.id: (amount.ml, amount.grams) for paint, amount in amounts}
        assert zone.apart == pytest.approx(recipe.delta_e, abs=1e-6)
        assert zone.in_parts is (sum(recipe.parts.counts) <= 40)
        assert zone.apart_in_parts == pytest.approx(recipe.parts.delta_e, abs=1e-6)


def test_a_code_brings_back_the_exact_mix(store: Store, box: str, found: Recipes) -> None:
    """The amounts of a job's code, for its ml, are those on the sheet; it dries the same."""
    zone = content_of(store, box, volume=333.3).zones[0]
    recipe = read_code(zone.code)
    assert recipe.ml is not None
    amounts = rounded_amounts([paint.parts for paint in recipe.paints], recipe.ml)
    ids = [paint.id for paint in recipe.paints]
    assert dict(zip(ids, amounts, strict=True)) == {p.id: p.ml for p in zone.paints}
    dry = look_of_mix(demo_shelf(), [(p.id, p.parts) for p in recipe.paints]).dry
    assert dry.triple == pytest.approx(found.recipes[0].recipe.dry.triple, abs=1e-6)


def test_parts_too_many_to_count_are_not_told(store: Store, box: str, found: Recipes) -> None:
    """Where one would lose count the sheet leaves the parts and what they come to out."""
    first = found.recipes[0]
    many = replace(first.recipe.parts, counts=(38, *(2 for _ in first.recipe.paints[1:])))
    recipe = replace(first.recipe, parts=many)
    keep_recipes(store, box, replace(found, recipes=(replace(first, recipe=recipe),)), zone="body")
    zone = content_of(store, box).zones[0]
    assert zone.in_parts is (len(recipe.paints) == 2)
    assert (zone.apart_in_parts is None) is (len(recipe.paints) > 2)
    told = content_of(store, box).again[0]
    assert told.startswith("For another volume")
    assert ("parts" in told) is zone.in_parts


def test_what_to_buy_follows_what_is_mixed(store: Store, box: str, found: Recipes) -> None:
    """Where another amount is asked for the list is for that, and what the piece takes is said.

    What the sheet does not mix, as a primer, is told as the piece takes it.
    """
    keep_document(store, box, "piece", common_piece(Kind.BLANKET_BOX))
    keep_document(store, box, "piece-form", replace(form_for(Kind.BLANKET_BOX), coats=Coats(1)))
    keep_recipes(store, box, found, zone="top", choose=2)
    content = content_of(store, box, volume=2000)
    piece = content_of(store, box)
    mixed: dict[str, float] = {}
    for zone in content.zones:
        assert zone.volume == 2000
        assert zone.volume_from.startswith("as asked; the piece takes ")
        for paint in zone.paints:
            mixed[paint.name] = mixed.get(paint.name, 0) + paint.ml
    bought = {line.name: line.ml for line in content.buy}
    others = {line.name: line.ml for line in piece.buy if line.name not in mixed}
    assert any("primer" in name for name in others)
    assert bought == pytest.approx(mixed | others)
    told = [text for text in content.mixed if "mix for" in text]
    assert len(told) == 2
    assert all(text.startswith("The piece takes ") for text in told)
    assert all(text.startswith("Mix at once ") for text in piece.mixed if "mix for" in text)
    for zone, text in zip(content.zones, sorted(told, key=lambda t: "body" not in t), strict=True):
        assert zone.volume_from.removeprefix("as asked; the piece takes ") in text


def test_zones_of_one_batch_are_bought_for_once(store: Store, box: str, found: Recipes) -> None:
    """Two zones of the same recipe are mixed in one batch, and its paint is needed once."""
    keep_document(store, box, "piece", common_piece(Kind.BLANKET_BOX))
    keep_recipes(store, box, found, zone="top")
    content = content_of(store, box)
    assert {zone.volume for zone in content.zones} == {content.zones[0].volume}
    names = {paint.name for paint in content.zones[0].paints}
    needed = sum(line.ml for line in content.buy if line.name in names)
    assert needed == pytest.approx(content.zones[0].volume)


def test_too_much_to_buy_is_told(store: Store, box: str, found: Recipes) -> None:
    """Of more than can be bought the list is left out with why, and the sheet is there."""
    keep_document(store, box, "piece", common_piece(Kind.BLANKET_BOX))
    keep_recipes(store, box, found, zone="top", choose=2)
    for zone in content_of(store, box, volume=100_000).zones:
        assert zone.volume == 100_000
    keep_recipes(store, box, found, zone="top")
    content = content_of(store, box, volume=100_000)
    assert content.buy == ()
    assert any("What to buy is left out" in gap for gap in content.gaps)


def test_with_nothing_kept_no_paint_is_missing(tmp_path: Path, found: Recipes) -> None:
    """A mix of the demonstration has not lost its paints, and may be washed with its others."""
    with open_jobs(tmp_path / "bare.sqlite") as bare:
        id_ = new_job(bare, title="Box").jobs[0]
        keep_recipes(bare, id_, found)
        keep_document(bare, id_, "finish", WAXED)
        content = content_of(bare, id_)
        assert [paint.note for paint in content.zones[0].paints if paint.note] == []
        assert content.zones[0].finished is not None
        fewer = Shelf("a file", demo_shelf().paints[:1])
        lacking = content_of_bare(bare, id_, fewer)
        assert all("not on the shelf" in paint.note for paint in lacking)


def content_of_bare(store: Store, id_: str, shelf: Shelf) -> list[PaintLine]:
    """Give the paints of a sheet while a shelf is in use and none is kept."""
    keep_document(store, id_, "finish", None)
    ids = {paint.id for paint in shelf.paints}
    zone = content_of(store, id_, in_use=shelf).zones[0]
    return [paint for paint in zone.paints if paint.id not in ids]


def test_finish_and_plan_are_told(store: Store, box: str) -> None:
    """Layers give the finished colour, and a plan its steps, its end and its cautions."""
    keep_document(store, box, "finish", WAXED)
    order = PlanOrder(
        "Blanket box", "2026-12-01", Surface.PAINTED, lead=Lead.TREAT_AS_LEAD, finish=FinishKind.WAX
    )
    keep_document(store, box, "plan", order)
    note_job(store, box, "The lid sticks.")
    content = content_of(store, box)
    assert content.zones[0].finished is not None
    assert len(content.zones[0].finish) == 2
    assert content.plan[0].day == "Tue 1 Dec 2026"
    assert content.ready
    assert "lead" in {caution.danger for caution in content.cautions}
    assert content.notes[0].text == "The lid sticks."


def test_steps_of_one_name_tell_their_sides(store: Store, box: str) -> None:
    """Turned over, each coat is laid twice, on other sides: on paper too."""
    order = PlanOrder(
        "chair", "2026-12-01", Surface.RAW, faces=(Which.TOP, Which.FRONT, Which.UNDERSIDE)
    )
    keep_document(store, box, "plan", order)
    titles = [line.title for line in content_of(store, box).plan if "coat" in line.title]
    assert len(set(titles)) == len(titles)
    assert sum("underside" in title for title in titles) >= 2


@pytest.mark.parametrize("part", ["piece", "plan", "finish"])
def test_a_part_that_cannot_be_used_is_left_out_and_told(store: Store, box: str, part: str) -> None:
    """What was kept by something newer does not stop the sheet, and is said to be missing."""
    keep_document(store, box, part, {"name": 3, "parts": 4, "start": 5, "layers": 6})
    content = content_of(store, box)
    assert len(content.gaps) == 1
    assert "left out" in content.gaps[0]
    assert content.gaps_in == (part,)
    assert document_of(content).startswith(b"%PDF")


def test_a_plan_that_asks_about_lead_is_left_out_and_told(store: Store, box: str) -> None:
    """A plan whose question on lead is not answered is not printed, and why is said."""
    keep_document(store, box, "plan", PlanOrder("Box", "2026-12-01"))
    assert "lead" in content_of(store, box).gaps[0]


def test_a_paint_that_has_changed_is_told_beside_it(store: Store, box: str) -> None:
    """Where the shelf's paint is no longer that of the recipe, its line says so."""
    paint = content_of(store, box).zones[0].paints[0]
    assert paint.note == ""
    other = replace(demo_shelf().paint(paint.id), S=demo_shelf().paint(paint.id).S * 3)
    put_paints(store, (other,))
    assert "not the paint of the recipe" in content_of(store, box).zones[0].paints[0].note


def test_zones_can_be_asked_for_one_by_one(store: Store, box: str, found: Recipes) -> None:
    """A job of two zones has both on its sheet, or the one that is named."""
    keep_recipes(store, box, found, zone="lid", choose=2)
    assert {zone.name for zone in content_of(store, box).zones} == {"body", "lid"}
    assert [zone.name for zone in content_of(store, box, zone="lid").zones] == ["lid"]
    with pytest.raises(MendableError, match="zone door"):
        content_of(store, box, zone="door")


def test_a_job_without_a_chosen_recipe_has_no_sheet(store: Store, found: Recipes) -> None:
    """Before a recipe is chosen there is nothing to print, and what to do is said."""
    id_ = new_job(store, title="Chair").jobs[0]
    with pytest.raises(MendableError, match="Find and keep a recipe"):
        content_of(store, id_)
    keep_recipes(store, id_, found, choose=None)
    choose_recipe(store, id_, job_of(store, id_).recipes[1])
    zone = content_of(store, id_).zones[0]
    assert zone.name == ""
    assert {paint.id for paint in zone.paints} == {p.id for p in found.recipes[1].recipe.paints}


# --- writing -------------------------------------------------------------------------------------


def test_the_same_sheet_is_the_same_file() -> None:
    """Laid out twice, a sheet is the same byte for byte."""
    content = content_of_mix(demo_shelf(), PARTS, day="2026-03-01")
    assert document_of(content) == document_of(content)


def test_files_are_written_by_their_ending(tmp_path: Path, store: Store, box: str) -> None:
    """A PDF is one file; pictures are one a page, numbered where there are several."""
    content = content_of(store, box)
    assert save_sheet(content, tmp_path / "a.pdf") == (tmp_path / "a.pdf",)
    written = save_sheet(content, tmp_path / "a.png", dpi=60)
    pages = len(pictures_of(document_of(content), dpi=50))
    assert len(written) == pages
    label = save_sheet(content, tmp_path / "b.png", label=label_named("70x37"))
    assert label == (tmp_path / "b.png",)
    assert sorted(p.name for p in tmp_path.glob("*.part")) == []


@pytest.mark.parametrize("name", ["a.doc", "a", "missing/a.pdf"])
def test_a_file_that_cannot_be_is_refused(tmp_path: Path, name: str) -> None:
    """Another ending or a folder that is not there is refused, and nothing is left behind."""
    with pytest.raises(MendableError):
        save_sheet(content_of_mix(demo_shelf(), PARTS), tmp_path / name)
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("dpi", [0, 49, 601, float("nan"), float("inf")])
def test_dots_out_of_range_are_refused(dpi: float) -> None:
    """No picture is made of too few or too many dots to the inch."""
    with pytest.raises(MendableError, match="dots"):
        pictures_of(b"", dpi=dpi)


def test_an_id_is_printed_only_where_a_name_does_not_tell() -> None:
    """Ids are for files: the sheet has them where two paints of the shelf have one name."""
    red, blue = (demo_shelf().paint(id_) for id_ in ("strong-red-orange", "pale-blue-greyish"))
    twin = replace(blue, name=red.name)
    parts = [(red.id, 1.0), (blue.id, 1.0)]
    for paints, told in (((red, blue), False), ((red, twin), True)):
        content = content_of_mix(Shelf("two", paints), parts)
        with pypdfium2.PdfDocument(document_of(content)) as opened:
            text = "".join(page.get_textpage().get_text_range() for page in opened)
        assert (red.id in text) is told
        assert (blue.id in text) is told
        assert [paint.id for paint in content.zones[0].paints] == [red.id, blue.id]
