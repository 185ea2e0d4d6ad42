"""The grey reference: gains, refusals and doubts."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np
import pytest

from swatchwright.colour.convert import linear_srgb_to_lab, linear_srgb_to_xyz
from swatchwright.errors import MendableError
from swatchwright.photo.reference import (
    GREY_CARD,
    REFLECTANCES,
    WHITE_PAPER,
    Balance,
    apply,
    balance_from_grey,
    no_reference,
    reflectance_from_lightness,
)
from swatchwright.values import Rect
from unit.photo.pictures import photo_of, photo_of_light

if TYPE_CHECKING:
    from swatchwright.photo.image import Photo

CARD = Rect(10, 20, 30, 25)
WARM = (0.26, 0.20, 0.14)


def scene(card: tuple[float, float, float] = WARM, *, noise: float = 0.0) -> Photo:
    """Make a photo, 80 x 60, of a card that shows this light on a green ground."""
    light = np.full((60, 80, 3), (0.05, 0.2, 0.06))
    light[CARD.y : CARD.bottom, CARD.x : CARD.right] = card
    noisy = light * (1 + noise * np.random.default_rng(2).standard_normal(light.shape))
    return photo_of_light(np.clip(noisy, 0, 1))


def test_the_card_becomes_neutral_and_as_light_as_it_is() -> None:
    """The balanced card has a* and b* of 0 and the Y of its reflectance."""
    photo = scene()
    for reflectance in (0.18, 0.36, 0.9):
        balance = balance_from_grey(photo, CARD, reflectance)
        card = np.median(apply(balance, photo.linear(CARD)), axis=(0, 1))
        assert linear_srgb_to_xyz(card)[1] == pytest.approx(reflectance, rel=1e-4)
        assert linear_srgb_to_lab(card)[1:] == pytest.approx([0, 0], abs=0.02)


def test_a_cast_is_taken_off_the_rest_of_the_picture() -> None:
    """A cloth under a coloured light comes out as under white light."""
    truth = np.array([0.35, 0.08, 0.11])
    cast = np.array([1.5, 1.0, 0.6])
    light = np.full((60, 80, 3), truth * cast)
    light[CARD.y : CARD.bottom, CARD.x : CARD.right] = 0.18 * cast
    photo = photo_of_light(light)
    balance = balance_from_grey(photo, CARD, 0.18)
    found = apply(balance, photo.linear(Rect(50, 10, 20, 20))).mean(axis=(0, 1))
    distance = linear_srgb_to_lab(found) - linear_srgb_to_lab(truth.astype(np.float32))
    assert float(np.linalg.norm(distance)) < 1.0


def test_dust_and_noise_hardly_move_the_balance() -> None:
    """The median takes no notice of a few specks, as the mean would; a byte is 2 % of the light."""
    clean = balance_from_grey(scene(), CARD).gains
    encoded = np.array(scene(noise=0.03).encoded)
    encoded[22:24, 12:30] = (20, 5, 5)
    assert balance_from_grey(photo_of(encoded), CARD).gains == pytest.approx(clean, rel=0.02)


def test_the_light_is_told_as_the_file_shows_it() -> None:
    """A card as light as D65 gives 6 504 K; a warmer one gives less."""
    neutral = balance_from_grey(scene((0.2, 0.2, 0.2)), CARD)
    assert neutral.light_xy == pytest.approx((0.3127, 0.3290), abs=1e-3)
    assert neutral.cct == pytest.approx(6504, abs=60)
    warm = balance_from_grey(scene(), CARD)
    assert warm.cct is not None
    assert warm.cct < 5000


def test_the_uncertainty_is_the_measured_one() -> None:
    """Half of the drawn errors are longer than 5.5 with a grey and 14.5 without."""
    rng = np.random.default_rng(3)
    for balance, median in ((balance_from_grey(scene(), CARD), 5.5), (no_reference(), 14.5)):
        errors = rng.multivariate_normal(np.zeros(3), np.array(balance.covariance), 200_000)
        assert np.median(np.linalg.norm(errors, axis=1)) == pytest.approx(median, rel=0.01)


def test_without_a_reference_nothing_changes_and_the_cost_is_said() -> None:
    """Gains are 1 and the note names the figures."""
    balance = no_reference()
    light = np.random.default_rng(4).random((3, 4, 3)).astype(np.float32)
    assert np.array_equal(apply(balance, light), light)
    assert (balance.reflectance, balance.light_xy, balance.cct) == (None, None, None)
    assert "14 to 15" in balance.notes[0]


def test_words_name_the_grey_and_where_it_is() -> None:
    """The reference can be told to a painter."""
    assert balance_from_grey(scene(), CARD).reference == "a grey of 18 % at 10, 20 (30 × 25 pixels)"


class TestDoubts:
    """Notes that go with a balance."""

    @staticmethod
    def notes(balance: Balance) -> str:
        """Join the notes."""
        return " ".join((*balance.notes, *balance.warnings))

    def test_paper_may_be_brightened(self) -> None:
        """White paper gets the warning about brighteners, a card the one about its makers."""
        assert "bluish" in self.notes(balance_from_grey(scene(), CARD, WHITE_PAPER))
        assert "no standard" in self.notes(balance_from_grey(scene(), CARD, GREY_CARD))
        assert balance_from_grey(scene(), CARD, 0.36).notes == ()

    def test_a_strong_cast_is_pointed_out(self) -> None:
        """Lamp light and a mark beside the card both show as a strong cast."""
        assert "very warm" in self.notes(balance_from_grey(scene((0.5, 0.2, 0.06)), CARD))
        assert "strongly coloured" in self.notes(balance_from_grey(scene((0.1, 0.1, 0.5)), CARD))
        assert "light on" not in self.notes(balance_from_grey(scene(), CARD))

    def test_an_uneven_card_is_pointed_out(self) -> None:
        """A shadow gradient across the card is a doubt, not a refusal."""
        light = np.full((60, 80, 3), 0.2) * np.linspace(0.7, 1.2, 80)[None, :, None]
        balance = balance_from_grey(photo_of_light(light), Rect(0, 0, 80, 60))
        assert "not even" in self.notes(balance)


class TestRefusals:
    """Marks that hold no usable grey."""

    @pytest.mark.parametrize(
        ("card", "words"),
        [
            ((0.99, 0.99, 0.99), "overexposed"),
            ((0.99, 0.4, 0.3), "overexposed"),
            ((0.004, 0.004, 0.004), "nearly black"),
            ((0.4, 0.1, 0.002), "hardly any blue"),
        ],
    )
    def test_a_grey_with_lost_light(self, card: tuple[float, float, float], words: str) -> None:
        """Clipped, black and one-channel cards are refused, each in its own words."""
        with pytest.raises(MendableError, match=words):
            balance_from_grey(scene(card), CARD)

    def test_a_mark_outside_names_the_frame(self) -> None:
        """The size of the photo is said."""
        with pytest.raises(MendableError, match="80 × 60"):
            balance_from_grey(scene(), Rect(60, 40, 30, 25))
        with pytest.raises(MendableError, match="80 × 60"):
            balance_from_grey(scene(), Rect(10, 20, 0, 25))

    def test_too_small_a_mark(self) -> None:
        """Fifteen pixels are too few, sixteen will do."""
        with pytest.raises(MendableError, match="only 15 pixels"):
            balance_from_grey(scene(), Rect(10, 20, 5, 3))
        assert balance_from_grey(scene(), Rect(10, 20, 4, 4)).gains[0] > 0

    def test_transparent_pixels_do_not_count(self) -> None:
        """A mark on nothing holds no pixels."""
        photo = scene()
        clear = photo_of(photo.encoded, np.zeros((60, 80), dtype=np.bool_))
        with pytest.raises(MendableError, match="only 0 pixels"):
            balance_from_grey(clear, CARD)

    def test_a_mark_over_two_things(self) -> None:
        """Half card, half cloth is not one grey."""
        with pytest.raises(MendableError, match="not on one grey"):
            balance_from_grey(scene(), Rect(25, 20, 30, 25))

    @pytest.mark.parametrize("reflectance", [0.0, 0.01, -0.2, 1.01, 18.0, math.nan, math.inf])
    def test_an_impossible_reflectance(self, reflectance: float) -> None:
        """Only 2 to 100 % are taken; 18 for 18 % is told."""
        with pytest.raises(MendableError, match="%"):
            balance_from_grey(scene(), CARD, reflectance)


def test_a_printed_lightness_gives_the_reflectance() -> None:
    """L* 50 is Y 0.1842 and L* 100 is 1 (ISO/CIE 11664-4); what no card has is refused."""
    import colour

    for L in (16.0, 49.5, 50.0, 81.0, 100.0):
        expected = float(colour.colorimetry.luminance_CIE1976(L)) / 100
        assert reflectance_from_lightness(L) == pytest.approx(expected, rel=1e-6)
    for L in (0.0, 15.0, 100.5, math.nan):
        with pytest.raises(MendableError):
            reflectance_from_lightness(L)


def test_the_offered_references_start_with_the_grey_card() -> None:
    """The default is the 18 % card, and every offer is accepted."""
    assert next(iter(REFLECTANCES.values())) == GREY_CARD
    for reflectance in REFLECTANCES.values():
        assert balance_from_grey(scene(), CARD, reflectance).reflectance == reflectance
