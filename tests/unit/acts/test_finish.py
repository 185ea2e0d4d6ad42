"""Layers over a mix, step by step, and how a wash builds up."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import hypot

import pytest

from swatchwright.acts.finish import build_up, preview
from swatchwright.acts.in_light import ROOM
from swatchwright.acts.layering import Primer
from swatchwright.acts.mix import look_of_mix
from swatchwright.colour.difference import delta_e_2000
from swatchwright.errors import MendableError
from swatchwright.paint.family import Family
from swatchwright.paint.layers import Layer, LayerKind, Sheen, Stack
from swatchwright.paint.paints import HowKnown
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab
from unit.paint.made import paint

DEMO = demo_shelf()
RED = [("strong-red-orange", 3.0), ("white-clean", 1.0)]
WASH = Layer(LayerKind.WASH, (("stone-grey-warm", 1.0),))
WAX, OIL = Layer(LayerKind.WAX), Layer(LayerKind.OIL)


def test_the_bare_coat_comes_first() -> None:
    """With no layer there is one step: the mix as it is elsewhere, without a range."""
    (bare,) = preview(DEMO, RED, Stack()).steps
    look = look_of_mix(DEMO, RED)
    assert bare.dry.triple == pytest.approx(look.dry.triple, abs=1e-3)
    assert bare.wet.triple == pytest.approx(look.wet.triple, abs=1e-3)
    assert bare.grain_range == 0
    assert [light for light, _ in bare.lights] == list(ROOM)
    assert bare.lights[0][1].triple == pytest.approx(bare.dry.triple, abs=1e-9)


def test_each_step_goes_on_from_the_last() -> None:
    """A stack's steps are those of its beginnings, and each change is from the step before."""
    stack = Stack((WASH, WAX, Layer(LayerKind.VARNISH, sheen=Sheen.GLOSS)))
    whole = preview(DEMO, RED, stack).steps
    assert len(whole) == 4
    for count in range(4):
        part = preview(DEMO, RED, Stack(stack.layers[:count])).steps[-1]
        assert part == whole[count]
    for before, after in pairwise(whole):
        apart = float(delta_e_2000(before.dry.triple, after.dry.triple))
        assert after.change == pytest.approx(apart)


def test_a_film_is_as_thick_as_its_formula() -> None:
    """Wet coat times what is left times solids, over one and the water, times the passes.

    A paint at 10 m2 a litre lies 100 um thick wet; 38 % solids leave 38 um of that.
    """
    shelf = Shelf("mine", (paint("a", volume_solids=0.38, spreading_rate=10.0),))
    layer = Layer(LayerKind.WASH, (("a", 1.0),), water=3, left=0.2, passes=2)
    film = preview(shelf, [("a", 1)], Stack((layer,))).steps[1].film_um
    assert film == pytest.approx(2 * 0.2 * 38 / 4)


def test_nothing_laid_changes_nothing() -> None:
    """A layer of no passes, or a wash of which nothing is left, leaves the coat as it was."""
    none = (
        Layer(LayerKind.WAX, passes=0),
        Layer(LayerKind.WASH, (("soft-black", 1.0),), left=0.0),
        Layer(LayerKind.WASH, (("soft-black", 1.0),), passes=0),
    )
    for step in preview(DEMO, RED, Stack(none)).steps[1:]:
        assert step.change == pytest.approx(0, abs=1e-6)
        assert step.grain_range == pytest.approx(0, abs=1e-6)


def test_a_tinted_wax_tints() -> None:
    """A wax with brown in it darkens and browns a white more than a clear one."""
    white = [("white-clean", 1.0)]
    clear, brown = (
        preview(DEMO, white, Stack((layer,))).steps[1].dry
        for layer in (WAX, Layer(LayerKind.WAX, (("earth-brown-mid", 1.0),), water=5))
    )
    assert brown.L < clear.L - 3
    assert brown.b > clear.b + 3


def test_more_layers_more_doubt() -> None:
    """An invented paint alone has none, a wash brings the hand's, a guessed paint its own."""
    bare, washed = preview(DEMO, RED, Stack((WASH,))).steps
    assert bare.doubt == 0
    assert washed.doubt > 1
    shelf = Shelf("mine", (paint("a", how_known=HowKnown.GUESSED),))
    assert preview(shelf, [("a", 1)], Stack()).steps[0].doubt > 5


def test_a_primer_shows_through_a_thin_coat() -> None:
    """One coat of a weak paint is lighter over white than over black; many coats are alike."""
    shelf = Shelf("mine", (paint("weak", K=5.0, S=10.0),))

    def seen(L: float, coats: int) -> float:
        ground = Primer(Lab(L, 0, 0), coats)
        return preview(shelf, [("weak", 1)], Stack(), ground).steps[0].dry.L

    assert seen(95, 1) > seen(20, 1) + 5
    assert seen(95, 20) == pytest.approx(seen(20, 20), abs=1.5)


def test_a_wash_builds_up_towards_its_own_colour() -> None:
    """No pass is the bare coat; each pass comes nearer to the wash's own paint."""
    built = build_up(DEMO, RED, WASH, passes=8)
    assert [p.count for p in built.passes] == list(range(9))
    assert built.passes[0].dry == preview(DEMO, RED, Stack()).steps[0].dry
    far = [float(delta_e_2000(p.dry.triple, built.tends_to.triple)) for p in built.passes]
    assert all(b < a for a, b in pairwise(far))
    twice = preview(DEMO, RED, Stack((Layer(WASH.kind, WASH.paints, passes=2),))).steps[1]
    assert built.passes[2].dry.triple == pytest.approx(twice.dry.triple, abs=1e-9)
    assert built.passes[2].film_um == pytest.approx(twice.film_um)


SOLVENT = Shelf("mine", (paint("water"), paint("oil", family=Family.OIL)))


@pytest.mark.parametrize(
    ("below", "layers", "says", "said"),
    [
        ("water", (Layer(LayerKind.WASH, (("water", 1.0),)),), "thickens as it stands", True),
        ("water", (WAX, Layer(LayerKind.WASH, (("water", 1.0),))), "holds on wax", True),
        ("water", (Layer(LayerKind.WASH, (("water", 1.0),)), WAX), "holds on wax", False),
        ("oil", (Layer(LayerKind.WASH, (("water", 1.0),)),), "Water-borne paint on oil", True),
        ("water", (OIL, Layer(LayerKind.WASH, (("water", 1.0),))), "Water-borne paint on", True),
        ("oil", (Layer(LayerKind.WASH, (("oil", 1.0),)),), "Water-borne paint on oil", False),
        ("water", (OIL,), "catch fire", True),
        ("water", (WAX,), "catch fire", False),
        ("water", (Layer(LayerKind.WASH, (("water", 1.0),)),), "damp the surface", True),
    ],
)
def test_what_to_mind_is_said(
    below: str, layers: tuple[Layer, ...], says: str, said: object
) -> None:
    """What does not hold, can burn or thickens is said where it applies, and only there."""
    notes = preview(SOLVENT, [(below, 1)], Stack(layers)).notes
    assert any(says in note for note in notes) is said


def test_steps_are_told_in_words() -> None:
    """Each step says what it is as a painter would."""
    layers = (
        Layer(LayerKind.WASH, (("white-clean", 2.0), ("soft-black", 1.0)), water=2, passes=2),
        Layer(LayerKind.GLAZE, (("soft-black", 1.0),)),
        Layer(LayerKind.WAX, amber=1),
        Layer(LayerKind.OIL, passes=3),
        Layer(LayerKind.VARNISH, sheen=Sheen.EGGSHELL),
    )
    assert [step.words for step in preview(DEMO, RED, Stack(layers)).steps] == [
        "the bare coat",
        "a wash of 2 of White, clean with 1 of Soft black, 1 to 2 of water, twice",
        "a glaze of Soft black, 1 to 3 of glaze medium",
        "an amber wax",
        "an oil, 3 times",
        "an eggshell varnish",
    ]


def waxed(family: Family) -> tuple[Lab, Lab, tuple[str, ...]]:
    """Give a dark blue of a family, bare and under the usual wax, and what is said of it."""
    blue = replace(DEMO.paint("ink-blue-dark"), family=family)
    look = preview(Shelf("mine", (blue,)), [(blue.id, 1.0)], Stack((WAX,)))
    return look.steps[0].dry, look.steps[1].dry, look.notes


@pytest.mark.parametrize(
    ("family", "fall"), [(Family.CHALKY, 6.0), (Family.MINERAL, 6.0), (Family.EMULSION, 3.0)]
)
def test_a_wax_deepens_a_matt_paint(family: Family, fall: float) -> None:
    """A clear wax makes a matt dark paint darker and more vivid, a chalky one most.

    A matt surface sends its own 4 % everywhere, so that of a film of 0.05 to 0.2 inside loses 7 to
    14 L* to a smooth one seen off its glint (Saunderson 1942); a wax keeps some of that sheen.
    """
    bare, under, notes = waxed(family)
    assert fall < bare.L - under.L
    assert hypot(under.a, under.b) > hypot(bare.a, bare.b) + 1
    assert not any("duller" in note for note in notes)


def test_a_wax_hardly_changes_satin() -> None:
    """On satin, which is about as smooth as a rubbed-up wax, less is seen than most accept."""
    bare, under, _ = waxed(Family.SATIN)
    assert float(delta_e_2000(bare.triple, under.triple)) < 0.8


def test_a_wax_dulls_gloss_and_that_is_said() -> None:
    """On gloss a wax scatters more light to the eye than what it covers, and the words say so."""
    bare, under, notes = waxed(Family.GLOSS)
    assert under.L > bare.L + 1
    assert hypot(under.a, under.b) < hypot(bare.a, bare.b)
    assert any(note.startswith("The wax is duller than the paint below it") for note in notes)


def test_wax_alone_is_alike_in_the_grain() -> None:
    """An untinted wax shows no grain; a wash under it, or a tint in it, does."""
    over = {"wax": Stack((WAX,)), "wash": Stack((WASH, WAX)), "none": Stack()}
    grain = {name: preview(DEMO, RED, stack).steps[-1].in_grain for name, stack in over.items()}
    assert grain == {"wax": False, "wash": True, "none": False}


@pytest.mark.parametrize(
    ("parts", "layers", "ground", "says"),
    [
        ([("nowhere", 1.0)], (), None, "nowhere"),
        (RED, (Layer(LayerKind.WASH, (("nowhere", 1.0),)),), None, "nowhere"),
        (RED, (Layer(LayerKind.WASH),), None, "0 paints"),
        (RED, (), Primer(Lab(50, 0, 0), 0), "0 coats"),
        (RED, (), Primer(Lab(150, 0, 0)), "150"),
    ],
)
def test_what_cannot_be_is_refused(
    parts: list[tuple[str, float]], layers: tuple[Layer, ...], ground: Primer | None, says: str
) -> None:
    """A mix, a layer or a primer that cannot be is named."""
    with pytest.raises(MendableError) as caught:
        preview(DEMO, parts, Stack(layers), ground)
    assert says in caught.value.what


@pytest.mark.parametrize(
    ("layer", "passes", "says"), [(WAX, 3, "built up"), (WASH, 0, "0 passes"), (WASH, 21, "21")]
)
def test_only_a_wash_builds_up(layer: Layer, passes: int, says: str) -> None:
    """A clear finish and a number of passes out of range are refused."""
    with pytest.raises(MendableError) as caught:
        build_up(DEMO, RED, layer, passes=passes)
    assert says in caught.value.what
