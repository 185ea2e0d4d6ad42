"""What is wrong with a photo: each defect is found where it is, and not where it is not."""

from __future__ import annotations

from dataclasses import replace
from io import BytesIO
from typing import TYPE_CHECKING

import numpy as np
import pytest
from PIL import Image
from scipy.ndimage import gaussian_filter

from swatchwright.photo.estimate import estimate
from swatchwright.photo.quality import Finding, findings
from swatchwright.photo.references import Reference
from swatchwright.values import Lab, Rect
from unit.photo.pictures import photo_of, photo_of_light, woven

if TYPE_CHECKING:
    from swatchwright.photo.image import Photo

CLOTH = Rect(20, 20, 360, 260)
CARD = Rect(430, 40, 100, 100)
SECOND = Rect(430, 170, 100, 100)
GREY = Reference.grey(CARD, 0.18)


def scene() -> np.ndarray:
    """Weave a clay-red cloth with two grey cards beside it: linear light, 300 x 560."""
    cloth, _ = woven([(45, 33, 24), (45, 33, 24)])
    beside = np.full((300, 160, 3), 0.05)
    for card in (CARD, SECOND):
        beside[card.y : card.bottom, card.x - 400 : card.right - 400] = 0.18
    rng = np.random.default_rng(9)
    return np.concatenate([cloth, beside * rng.normal(1, 0.02, beside.shape)], axis=1)


def found(
    light: np.ndarray | Photo, *references: Reference, colours: tuple[Lab, ...] = ()
) -> dict[str, Finding]:
    """Look a scene over with these references, or the first card."""
    photo = photo_of_light(np.clip(light, 0, 1)) if isinstance(light, np.ndarray) else light
    correction = estimate(photo, references or (GREY,))
    return {finding.kind: finding for finding in findings(correction, CLOTH, colours)}


def as_jpeg(light: np.ndarray, quality: int) -> Photo:
    """Send a scene through JPEG."""
    plain, held = photo_of_light(np.clip(light, 0, 1)), BytesIO()
    Image.fromarray(plain.encoded).save(held, "JPEG", quality=quality)
    photo = photo_of(np.asarray(Image.open(held)))
    return replace(photo, facts=replace(photo.facts, format="JPEG"))


def test_a_good_photo_has_nothing_wrong() -> None:
    """With one card, with two, and as a good JPEG, nothing is found."""
    assert found(scene()) == {}
    assert found(scene(), GREY, Reference.grey(SECOND, 0.18)) == {}
    assert found(as_jpeg(scene(), 92)) == {}


def test_each_finding_says_what_to_do() -> None:
    """Text and mend are sentences."""
    finding = found(gaussian_filter(scene(), (5, 5, 0)))["blur"]
    assert finding.severity == "warning"
    for words in (finding.text, finding.mend):
        assert words.endswith(".")
        assert words[0].isupper()


def test_an_overexposed_cloth() -> None:
    """A cloth with a tenth of it at the top is told."""
    light = scene()
    light[40:80, 40:300] = 1.0
    assert "clipped cloth" in found(light)


def test_a_cloth_that_is_as_good_as_black() -> None:
    """Half of it black is told."""
    light = scene()
    light[:150, :400] = 0.0
    assert "dark cloth" in found(light)


def test_a_reference_near_the_top_and_one_in_the_dark() -> None:
    """Each is told by its own name."""
    light = scene()
    light[CARD.y : CARD.bottom, CARD.x : CARD.right] = 0.945
    light[CARD.y : CARD.y + 4, CARD.x : CARD.x + 30] = 0.98
    assert "clipped reference" in found(light, Reference.grey(CARD, 0.9))
    assert "dark reference" in found(scene() * 0.09)


def test_a_glint() -> None:
    """Spots brighter than white paper would be are told, and not a light cloth."""
    light = scene()
    light *= 0.7
    light[100:110, 100:120] = 0.95
    assert "glint" in found(light)
    assert "glint" not in found(np.where(scene() > 0.2, 0.85, scene()))


def test_a_blurred_photo() -> None:
    """A blur of five pixels is told, one of half a pixel is not."""
    assert "blur" in found(gaussian_filter(scene(), (5, 5, 0)))
    assert "blur" not in found(gaussian_filter(scene(), (0.5, 0.5, 0)))


def test_light_that_falls_off() -> None:
    """Half the light at one end is told, a tenth less is not."""
    across = np.linspace(0, 1, 400)[None, :, None]
    for loss, told in ((0.5, True), (0.1, False)):
        light = scene()
        light[:, :400] *= 1 - loss * across
        assert ("gradient" in found(light)) is told


def test_greys_tell_of_less_light_on_the_cloth() -> None:
    """Two cards of one reflectance, one dark: the fall is told and is put right."""
    light = scene()
    down = np.linspace(0.6, 0, 300)[:, None, None]
    light = light * np.exp(-down)
    assert found(light, GREY, Reference.grey(SECOND, 0.18))["gradient"].severity in {
        "note",
        "warning",
    }


def test_two_lights() -> None:
    """A second light over one card, or over one side of the cloth, is told."""
    warm = np.array([1.2, 1.0, 0.7])
    cards = scene()
    cards[SECOND.y : SECOND.bottom, SECOND.x : SECOND.right] *= warm
    assert "two lights" in found(cards, GREY, Reference.grey(SECOND, 0.18))
    cloth = scene()
    mix = np.linspace(0, 1, 400)[None, :, None]
    cloth[:, :400] *= 1 - mix + mix * warm
    assert "two lights" in found(cloth)


def test_stripes_are_not_two_lights() -> None:
    """A cloth of two yarns in one light gives no alarm."""
    light = scene()
    light[:, :400] = woven([(45, 33, 24), (27, 2, -24), (78, 3, 14)])[0]
    assert not {"two lights", "gradient"} & found(light).keys()


def test_heavy_compression() -> None:
    """A JPEG of quality 6 is told, of 90 not (qualities as libjpeg scales the tables of T.81)."""
    assert "compression" in found(as_jpeg(scene(), 6))
    assert "compression" not in found(as_jpeg(scene(), 90))


@pytest.mark.parametrize(
    ("cast", "kind"),
    [
        ((1.9, 1.0, 0.3), "warm light"),
        ((1.0, 1.6, 1.0), "odd light"),
        ((1.6, 0.9, 1.6), "odd light"),
    ],
)
def test_the_colour_of_the_light(cast: tuple[float, float, float], kind: str) -> None:
    """A candle's light is very warm; green and magenta light is no daylight (CIE 015, 9.5)."""
    assert kind in found(scene() * np.array(cast) * 0.5)
    assert kind not in found(scene() * np.array((1.15, 1.0, 0.8)) * 0.5)


def test_a_card_that_is_not_grey() -> None:
    """Among others that agree, a pink card is named."""
    light = scene()
    light[SECOND.y : SECOND.bottom, SECOND.x : SECOND.right] *= (1.5, 0.95, 0.85)
    others = [Rect(430, 40 + 25 * i, 100, 24) for i in range(4)]
    given = [Reference.grey(rect, 0.18, 0.4) for rect in others]
    assert "card not grey" in found(light, *given, Reference.grey(SECOND, 0.18, 0.4))
    assert "card not grey" not in found(scene(), *given, Reference.grey(SECOND, 0.18, 0.4))


def test_a_white_that_glows() -> None:
    """Whiteness beyond the perfect white is told (CIE 015:2018), linen is not."""
    assert "glow" in found(scene(), colours=(Lab(94, 2, -9),))
    assert "glow" not in found(scene(), colours=(Lab(94, 0, 2), Lab(30, 5, -40)))


def test_portrait_mode() -> None:
    """A cloth without any texture beside sharp edges is told; a woven one is not."""
    light = scene()
    light[:, :400] = light[:, :400].mean(axis=(0, 1))
    assert "portrait" in found(as_jpeg(light, 95))
    assert "portrait" not in found(as_jpeg(scene(), 95))
    photo = photo_of_light(np.clip(scene(), 0, 1))
    marked = replace(photo, facts=replace(photo.facts, portrait=True))
    assert "portrait mode" in found(marked)["portrait"].text


def test_warnings_come_before_notes() -> None:
    """What matters most is said first."""
    light = np.clip(scene() * np.exp(-np.linspace(0.5, 0, 300))[:, None, None], 0, 1)
    light[40:100, 40:300] = 1.0
    photo = photo_of_light(light)
    told = findings(estimate(photo, (GREY, Reference.grey(SECOND, 0.18))), CLOTH)
    ranks = [finding.severity == "note" for finding in told]
    assert ranks == sorted(ranks)
    assert ranks
