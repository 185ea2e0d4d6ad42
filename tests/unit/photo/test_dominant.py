"""The colours that a cloth is made of: made-up cloths with known yarns, and real photographs."""

from __future__ import annotations

import importlib
from functools import cache
from typing import TYPE_CHECKING

import numpy as np
import pytest
from PIL import Image
from scipy.ndimage import gaussian_filter

from swatchwright.colour.convert import linear_srgb_to_lab, srgb_decode
from swatchwright.colour.difference import delta_e_2000
from swatchwright.errors import MendableError
from swatchwright.photo.dominant import DominantColour, dominant_colours
from swatchwright.photo.reference import balance_from_grey, no_reference
from swatchwright.values import Rect
from unit.photo.pictures import patches, photo_of, photo_of_light, woven

if TYPE_CHECKING:
    from numpy.typing import NDArray

CLAY, INK, CREAM = (45.0, 42.0, 32.0), (28.0, 8.0, -32.0), (85.0, 2.0, 14.0)
OCHRE, BROWN, SAGE = (62.0, 14.0, 52.0), (38.0, 12.0, 22.0), (60.0, -14.0, 12.0)
FREE = no_reference()


def labs(found: tuple[DominantColour, ...]) -> NDArray[np.float64]:
    """Give the colours, shape (n, 3)."""
    return np.array([colour.colour.lab.triple for colour in found])


def nearest(found: tuple[DominantColour, ...], lab: tuple[float, float, float]) -> DominantColour:
    """Give the colour found nearest to a true one."""
    return found[int(np.argmin(delta_e_2000(labs(found), lab)))]


def error(found: tuple[DominantColour, ...], lab: tuple[float, float, float]) -> float:
    """Give the CIEDE2000 of the nearest colour found from a true one."""
    return float(np.min(delta_e_2000(labs(found), lab)))


class TestFlat:
    """Flat patches, whose colours and shares are known exactly."""

    @pytest.mark.parametrize("blur", [0.0, 1.5])
    @pytest.mark.parametrize("count", [None, 4])
    def test_colours_shares_and_order(self, blur: float, count: int | None) -> None:
        """Each is found within 0.5 CIEDE2000, the largest first, blurred seams or not."""
        light = patches((SAGE, CLAY, INK, CREAM), (60, 120, 90, 30))
        found = dominant_colours(
            photo_of_light(gaussian_filter(light, (0, blur, 0))), FREE, None, count
        )
        assert len(found) == 4
        for lab, share in ((CLAY, 0.4), (INK, 0.3), (SAGE, 0.2), (CREAM, 0.1)):
            assert error(found, lab) < 0.5
            assert nearest(found, lab).share == pytest.approx(share, abs=0.015)
        shares = [colour.share for colour in found]
        assert shares == sorted(shares, reverse=True)
        assert sum(shares) <= 1 + 1e-9

    def test_marks_lie_inside_the_patch(self) -> None:
        """One to three, with nothing but the colour for ten pixels around."""
        light = patches((CLAY, INK, CREAM), (100, 100, 100))
        for colour in dominant_colours(photo_of_light(light), FREE):
            assert 1 <= len(colour.marks) <= 3
            for x, y in colour.marks:
                around = linear_srgb_to_lab(light[max(0, y - 10) : y + 11, x - 10 : x + 11])
                assert delta_e_2000(around, colour.colour.lab.triple).max() < 1

    @pytest.mark.parametrize("count", [1, 2, 5, 6])
    def test_the_count_is_kept(self, count: int) -> None:
        """As many as are asked for, as long as there are as many."""
        light = patches((SAGE, CLAY, INK, CREAM, OCHRE, BROWN), (50,) * 6)
        noisy = light * (1 + 0.02 * np.random.default_rng(16).standard_normal(light.shape))
        assert (
            len(dominant_colours(photo_of_light(np.clip(noisy, 0, 1)), FREE, None, count)) == count
        )

    def test_there_are_no_more_than_there_are(self) -> None:
        """Two colours stay two; one stays one."""
        two = photo_of_light(patches((CLAY, INK), (50, 50)))
        assert len(dominant_colours(two, FREE, None, 5)) == 2
        assert len(dominant_colours(two, FREE, Rect(0, 0, 50, 200))) == 1

    def test_a_speck_is_not_a_colour(self) -> None:
        """Less than 1.5 % goes unnamed, unless colours are counted."""
        photo = photo_of_light(patches((CLAY, INK, CREAM), (148, 150, 2)))
        assert error(dominant_colours(photo, FREE), CREAM) > 10


class TestWoven:
    """Cloths with shaded threads: the truth is the lit yarn."""

    @pytest.mark.parametrize("thread", [6, 12])
    @pytest.mark.parametrize(
        "yarns",
        [
            (CLAY,),
            (CLAY, INK),
            (CLAY, INK, CREAM),
            (OCHRE, BROWN),
            (OCHRE, BROWN, CLAY, CREAM, INK),
        ],
    )
    def test_yarns_are_found_as_lit(
        self, yarns: tuple[tuple[float, float, float], ...], thread: int
    ) -> None:
        """Exactly the yarns, each within 2 CIEDE2000 of its lit colour, with its share."""
        light, which = woven(yarns, thread=thread)
        found = dominant_colours(photo_of_light(light), FREE)
        assert len(found) == len(yarns)
        for i, lab in enumerate(yarns):
            assert error(found, lab) < 2.0
            assert nearest(found, lab).share == pytest.approx(float(np.mean(which == i)), abs=0.03)

    def test_the_mean_would_be_darker(self) -> None:
        """The cloth really is one that a mean gets wrong."""
        light, _ = woven((OCHRE,), thread=8)
        mean = linear_srgb_to_lab(light.mean(axis=(0, 1)))
        found = dominant_colours(photo_of_light(light), FREE)
        assert float(delta_e_2000(mean, OCHRE)) > 1.9
        assert error(found, OCHRE) < 0.6

    @pytest.mark.parametrize("yarns", [(CLAY,), (CLAY, INK), (CLAY, INK, CREAM)])
    def test_a_soft_picture_of_a_cloth(self, yarns: tuple[tuple[float, float, float], ...]) -> None:
        """A lens that blurs the threads into each other adds no colours and shifts them little."""
        light, _ = woven(yarns, thread=8)
        found = dominant_colours(photo_of_light(gaussian_filter(light, (0.8, 0.8, 0))), FREE)
        assert len(found) == len(yarns)
        assert max(error(found, lab) for lab in yarns) < 3.0

    def test_a_folded_cloth(self) -> None:
        """With half of it in shadow at half the light, the counted yarns are those in the light."""
        light, _ = woven((CLAY, INK), thread=8)
        y, x = np.mgrid[0:300, 0:400]
        fold = 0.75 + 0.25 * np.clip(1.6 * np.sin(x / 31 + y / 57), -1, 1)
        found = dominant_colours(photo_of_light(light * fold[..., None]), FREE, None, 2)
        assert error(found, CLAY) < 2.0
        assert error(found, INK) < 2.0


class TestAreaAndBalance:
    """Where is looked, and in what light."""

    def test_only_the_area_counts_and_exclusions_do_not(self) -> None:
        """Colours outside the area and inside an excluded part are not found; marks are upright."""
        photo = photo_of_light(patches((CLAY, INK, CREAM), (100, 100, 100)))
        found = dominant_colours(
            photo, FREE, Rect(100, 20, 200, 150), None, (Rect(200, 0, 100, 200),)
        )
        assert len(found) == 1
        assert error(found, INK) < 0.5
        assert all(100 <= x < 200 and 20 <= y < 170 for x, y in found[0].marks)

    def test_a_cast_is_taken_off_by_the_card(self) -> None:
        """Under a warm light the balanced colour is the true one, and its origin is told."""
        light = patches((CLAY, (49.5, 0.0, 0.0)), (100, 100)) * (1.3, 1.0, 0.7)
        photo = photo_of_light(light)
        card = Rect(120, 20, 60, 100)
        found = dominant_colours(
            photo, balance_from_grey(photo, card), None, None, (Rect(100, 0, 100, 200),)
        )
        assert error(found, CLAY) < 1.0
        assert "grey of 18 %" in found[0].colour.origin

    def test_the_uncertainty_is_that_of_the_photo_and_a_little_more(self) -> None:
        """The covariance of the balance is in it, the more is small for many pixels."""
        light, _ = woven((CLAY,))
        (found,) = dominant_colours(photo_of_light(light), FREE)
        more = np.array(found.colour.covariance) - np.array(FREE.covariance)
        assert np.all(np.linalg.eigvalsh(more) >= 0)
        assert 0 < np.trace(more) < 0.1
        assert 0 < found.spread < 5

    def test_clipped_and_black_pixels_have_no_say(self) -> None:
        """Glare and a black background are not colours of the cloth."""
        encoded = np.rint(photo_of_light(patches((CLAY,), (200,))).encoded).astype(np.uint8)
        encoded[:60], encoded[60:90] = 255, 2
        found = dominant_colours(photo_of(encoded), FREE)
        assert len(found) == 1
        assert error(found, CLAY) < 0.5


class TestRefusals:
    """What cannot be looked at."""

    PHOTO = photo_of_light(patches((CLAY, INK), (50, 50)))

    def test_an_area_outside_names_the_frame(self) -> None:
        """The size of the photo is said."""
        with pytest.raises(MendableError, match="100 × 200"):
            dominant_colours(self.PHOTO, FREE, Rect(60, 0, 50, 50))

    @pytest.mark.parametrize("count", [0, -1, 13])
    def test_a_count_out_of_range(self, count: int) -> None:
        """One to twelve can be asked for."""
        with pytest.raises(MendableError, match="1 to 12"):
            dominant_colours(self.PHOTO, FREE, None, count)

    def test_too_few_usable_pixels(self) -> None:
        """An overexposed part and a tiny one are refused with the number that is left."""
        with pytest.raises(MendableError, match="Only 0 pixels"):
            dominant_colours(photo_of(np.full((40, 40, 3), 255)), FREE)
        with pytest.raises(MendableError, match="Only 49 pixels"):
            dominant_colours(self.PHOTO, FREE, Rect(0, 0, 7, 7))
        assert dominant_colours(self.PHOTO, FREE, Rect(0, 0, 10, 5))


def test_the_number_of_threads_makes_no_difference() -> None:
    """One thread or two, and a second run, give the same colours."""
    # It comes with scikit-learn, without type hints.
    limits = importlib.import_module("threadpoolctl").threadpool_limits
    photo = photo_of_light(woven((CLAY, INK, CREAM))[0])
    runs = []
    for threads in (1, 2, 2):
        with limits(threads):
            runs.append(dominant_colours(photo, FREE))
    for other in runs[1:]:
        assert labs(other) == pytest.approx(labs(runs[0]), abs=1e-6)
        assert [c.marks for c in other] == [c.marks for c in runs[0]]


@cache
def photograph(name: str) -> NDArray[np.uint8]:
    """Give a photograph that scikit-image or scikit-learn ship with themselves."""
    if name in {"china", "flower"}:
        from sklearn.datasets import load_sample_image

        return np.asarray(load_sample_image(f"{name}.jpg"), dtype=np.uint8)
    import skimage.data

    return np.asarray(getattr(skimage.data, name)(), dtype=np.uint8)[..., :3]


def hue_and_chroma(colour: DominantColour) -> tuple[float, float]:
    """Give CIELAB hue in degrees and chroma."""
    lab = colour.colour.lab
    return float(np.degrees(np.arctan2(lab.b, lab.a)) % 360), float(np.hypot(lab.a, lab.b))


class TestPhotographs:
    """Real photographs."""

    NAMES = ("astronaut", "coffee", "chelsea", "rocket", "china", "flower")

    def ratio(self, name: str) -> float:
        """Compare how well the colours explain a picture with as many of Pillow's median cut."""
        pixels = photograph(name)
        photo = photo_of(pixels)
        found = labs(dominant_colours(photo, FREE))
        cut = Image.fromarray(pixels).quantize(len(found), method=Image.Quantize.MEDIANCUT)
        palette = np.array(cut.getpalette(), dtype=np.float64)[: 3 * len(found)].reshape(-1, 3)
        theirs = linear_srgb_to_lab(srgb_decode(palette / 255))
        lab = linear_srgb_to_lab(photo.linear(step=4).astype(np.float64)).reshape(-1, 1, 3)
        ours_off, theirs_off = (
            float(delta_e_2000(lab, colours).min(axis=1).mean()) for colours in (found, theirs)
        )
        return ours_off / theirs_off

    def test_the_colours_explain_the_pictures(self) -> None:
        """They are explained about as well as by median cut, which is made for just that.

        Measured as the mean CIEDE2000 of the pixels from the nearest colour. Taking the lit middle
        and joining shades costs a little here; it must not cost more.
        """
        ratios = [self.ratio(name) for name in self.NAMES]
        assert max(ratios) < 1.25
        assert np.mean(ratios) < 1.05

    def test_orange_petals(self) -> None:
        """The flower is of oranges, marked on the blossoms, before a dark blue-green ground."""
        found = dominant_colours(photo_of(photograph("flower")), FREE)
        petals = [c for c in found if 45 < hue_and_chroma(c)[0] < 85 and c.colour.lab.L > 45]
        assert petals
        assert all(hue_and_chroma(c)[1] > 30 for c in petals)
        assert 0.15 < sum(c.share for c in petals) < 0.3
        assert all(170 < x < 460 and y > 60 for c in petals for x, y in c.marks)
        assert found[0].colour.lab.L < 30
        assert 170 < hue_and_chroma(found[0])[0] < 260

    def test_an_orange_suit(self) -> None:
        """The space suit is an orange, marked on the suit."""
        found = dominant_colours(photo_of(photograph("astronaut")), FREE)
        suit = max(found, key=lambda c: hue_and_chroma(c)[1] if c.colour.lab.L > 50 else 0.0)
        hue, chroma = hue_and_chroma(suit)
        assert 35 < hue < 60
        assert chroma > 50
        assert all(y > 200 for _, y in suit.marks)

    def test_a_red_saucer_and_a_white_cup(self) -> None:
        """Both are found, the one strong and the other pale."""
        found = dominant_colours(photo_of(photograph("coffee")), FREE)
        assert any(hue_and_chroma(c)[1] > 60 and 30 < hue_and_chroma(c)[0] < 50 for c in found)
        assert any(c.colour.lab.L > 90 and hue_and_chroma(c)[1] < 15 for c in found)
