"""Repainting scenes whose colour, light and gloss are known, judged by colour-science."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import colour
import numpy as np
import pytest

from swatchwright.colour.convert import lab_to_linear_srgb
from swatchwright.photo.repaint import find_surfaces, in_colours, view_of, whole_picture
from swatchwright.photo.repaint_strokes import NOT_THIS, Marked, Stroke
from swatchwright.values import Lab
from unit.photo.painted_scenes import COLUMNS, ROWS, STROKES, chest
from unit.photo.pictures import photo_of_light

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Floats = NDArray[np.floating[Any]]

OLD = {"body": Lab(55, -20, 8), "top": Lab(42, 14, 22)}
NEW = {"body": Lab(48, 34, 22), "top": Lab(88, 0, 8)}
PLAIN_OLD = {"body": Lab(30, 6, 12), "top": Lab(72, 2, 20)}
WHITE = np.array([0.3127, 0.3290])


def lab(picture: NDArray[np.uint8]) -> Floats:
    """Give CIELAB of sRGB bytes, by colour-science."""
    light = colour.cctf_decoding(picture / 255.0, "sRGB")
    return np.asarray(colour.XYZ_to_Lab(colour.RGB_to_XYZ(light, "sRGB"), WHITE))


def apart(one: NDArray[np.uint8], two: NDArray[np.uint8], where: NDArray[np.bool_]) -> Floats:
    """Give CIEDE2000 of two pictures, pixel by pixel, by colour-science."""
    return np.asarray(colour.delta_E(lab(one)[where], lab(two)[where], method="CIE 2000"))


def overlap(mask: NDArray[np.uint8], where: NDArray[np.bool_]) -> float:
    """Give the intersection over the union of a mask and the truth."""
    found = mask > 127
    return float((found & where).sum() / (found | where).sum())


@pytest.mark.parametrize("old", [OLD, PLAIN_OLD], ids=["two hues", "brown and cream"])
def test_another_albedo_looks_as_if_painted(old: dict[str, Lab]) -> None:
    """From a handful of strokes each zone is found, and looks as the scene of the new colours."""
    scene = chest()
    view = view_of(find_surfaces(scene.photo(old, noise=0.02), STROKES), 400)
    out = in_colours(view, NEW)
    truth = scene.photo(NEW).preview(400)
    for zone, mask in zip(view.zones, view.masks, strict=True):
        where = scene.zones[zone]
        assert overlap(mask, where) > 0.95
        assert np.median(apart(out, truth, where)) < 2


def test_shade_and_gaps_stay() -> None:
    """The dark side and the gaps are as much darker than the lit side as they were."""
    scene = chest()
    view = view_of(find_surfaces(scene.photo(OLD), STROKES), 400)
    light = colour.cctf_decoding(in_colours(view, NEW) / 255.0, "sRGB")
    lit, side, gap = light[140, 100, 0], light[140, 266, 0], light[140, 56, 0]
    assert side / lit == pytest.approx(scene.light[140, 266], abs=0.05)
    assert gap / lit == pytest.approx(scene.light[140, 56], abs=0.05)


def test_a_highlight_is_kept() -> None:
    """Gloss is as strong on the new paint as it was on the old, and as white."""
    scene = chest(gloss=0.25)
    view = view_of(find_surfaces(scene.photo(OLD), STROKES), 400)
    out = in_colours(view, NEW)
    truth = scene.photo(NEW).preview(400)
    spot = scene.gloss > 0.15
    assert np.median(apart(out, truth, spot)) < 4
    none = in_colours(view_of(find_surfaces(chest().photo(OLD), STROKES), 400), NEW)
    assert np.median(apart(none, truth, spot)) > 12


def test_the_old_hue_is_gone() -> None:
    """Painted grey, nothing of the green is left, in the light, in the shade or at an edge."""
    scene = chest()
    view = view_of(find_surfaces(scene.photo(OLD), STROKES), 400)
    grey = lab(in_colours(view, {"body": Lab(60, 0, 0), "top": Lab(60, 0, 0)}))
    inside = scene.zones["body"]
    assert np.percentile(np.hypot(grey[inside][:, 1], grey[inside][:, 2]), 99) < 3


@pytest.mark.parametrize("old", [OLD["body"], Lab(45, 0, 0)], ids=["green", "grey"])
def test_worn_patches_are_covered(old: Lab) -> None:
    """Bare wood that shows through the old paint does not show through the new one."""
    scene = chest()
    y, x = np.mgrid[:ROWS, :COLUMNS]
    patch = (np.hypot(x - 110, y - 170) < 14) | (np.hypot(x - 215, y - 120) < 10)
    seen = scene.seen({"body": old, "top": Lab(70, 2, 30)})
    wood = np.asarray(lab_to_linear_srgb((72, 10, 30)))
    seen[patch] = (wood * scene.light[..., None])[patch]
    over = Stroke("body", ((106, 166), (114, 174)), 8)
    marked = Marked(STROKES.size, (*STROKES.strokes, over))
    view = view_of(find_surfaces(photo_of_light(seen), marked), 400)
    truth = scene.photo(NEW).preview(400)
    out = in_colours(view, NEW)
    inner = (np.hypot(x - 110, y - 170) < 11) | (np.hypot(x - 215, y - 120) < 7)
    assert np.median(apart(out, truth, inner)) < 4
    assert np.median(apart(out, truth, scene.zones["body"])) < 2


def test_what_is_not_marked_stays_as_it_is() -> None:
    """A zone without a colour, and all that is not the piece, keep every byte."""
    scene = chest()
    view = view_of(find_surfaces(scene.photo(OLD), STROKES), 400)
    out = in_colours(view, {"body": NEW["body"]})
    far = ~(scene.zones["body"] | scene.zones["top"])
    far[40:220, 20:300] = False
    assert np.array_equal(out[far], view.before[far])
    top = scene.zones["top"].copy()
    top[70:] = False
    assert np.abs(out[top].astype(int) - view.before[top]).max() <= 1


def test_painted_in_its_own_colour_it_is_the_same() -> None:
    """Repainted in the colour that it has, the piece hardly changes."""
    scene = chest()
    view = view_of(find_surfaces(scene.photo(OLD), STROKES), 400)
    changed = apart(in_colours(view, OLD), view.before, scene.zones["body"])
    assert np.percentile(changed, 95) < 1.5


def test_the_whole_picture_is_what_was_shown() -> None:
    """The picture that is saved is that of the screen, where both are of one size."""
    found = find_surfaces(chest().photo(OLD, noise=0.02), STROKES)
    shown = in_colours(view_of(found, COLUMNS), NEW)
    assert np.array_equal(whole_picture(found, NEW, COLUMNS), shown)
    assert whole_picture(found, NEW, COLUMNS // 2).shape == (ROWS // 2, COLUMNS // 2, 3)


def test_without_a_stroke_on_it_the_edge_is_not_the_piece() -> None:
    """Where nothing is marked as not the piece, the edge of the picture is taken for that."""
    scene = chest()
    strokes = tuple(s for s in STROKES.strokes if s.zone != NOT_THIS)
    found = find_surfaces(scene.photo(OLD), Marked(STROKES.size, strokes))
    assert found.by_edge
    view = view_of(found, 400)
    assert overlap(view.masks[view.zones.index("body")], scene.zones["body"]) > 0.95


def test_a_stroke_through_a_zone_takes_it_apart() -> None:
    """A handle marked as not the piece stays as it is, and its surroundings do not."""
    scene = chest()
    seen = scene.seen(OLD)
    seen[120:136, 150:166] = (0.05, 0.05, 0.055)
    handle = Stroke(NOT_THIS, ((153, 128), (162, 128)), 6)
    marked = Marked(STROKES.size, (*STROKES.strokes, handle))
    view = view_of(find_surfaces(photo_of_light(seen), marked), 400)
    body = view.masks[view.zones.index("body")]
    assert body[122:134, 152:164].max() < 100
    assert body[110:116, 152:164].min() > 200
