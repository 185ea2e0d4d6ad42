"""Whether what was marked as the grey in a sample photo can be one."""

from __future__ import annotations

import pytest

from swatchwright.acts.colours import open_photo
from swatchwright.acts.sample_grey import grey_doubts, overlaps, plainly_wrong
from swatchwright.acts.sample_in_photo import judged_by_photo
from swatchwright.acts.samples import SamplePhoto, sample_of_a_sample
from swatchwright.photo.image import Photo
from swatchwright.photo.reference import GREY_CARD, WHITE_PAPER
from swatchwright.photo.references import Reference
from swatchwright.values import Rect

BLUE_STRIPE, WOOD, ACROSS = Rect(320, 400, 60, 200), Rect(100, 100, 120, 60), Rect(380, 400, 99, 99)


@pytest.fixture(scope="module")
def found() -> SamplePhoto:
    """Give the rendered photo of a sample, whose truth is known."""
    there = sample_of_a_sample()
    assert there is not None
    return there


@pytest.fixture(scope="module")
def photo(found: SamplePhoto) -> Photo:
    """Give it, opened."""
    return open_photo(found.path)


def test_the_card_can_serve(photo: Photo, found: SamplePhoto) -> None:
    """Of the card itself nothing is said."""
    assert grey_doubts(photo, found.grey, GREY_CARD) == ()


def test_a_strong_colour_is_no_card(photo: Photo, found: SamplePhoto) -> None:
    """Clay red, ink blue and the brushed paint are no grey; the first line says so."""
    assert found.sample is not None
    for rect in (found.cloth, BLUE_STRIPE, found.sample):
        told = grey_doubts(photo, rect)
        assert plainly_wrong(told)
        assert told[0].kind in {"card not grey", "odd light"}


def test_a_grey_card_is_no_white_paper(photo: Photo, found: SamplePhoto) -> None:
    """Taken for white paper, much of the photo would be brighter than white."""
    told = grey_doubts(photo, found.grey, WHITE_PAPER)
    assert plainly_wrong(told)
    assert "brighter than white paper" in told[0].text


def test_what_is_uneven_is_worth_knowing(photo: Photo) -> None:
    """Weathered wood may pass for grey, and is noted as uneven."""
    told = grey_doubts(photo, WOOD)
    assert [one.severity for one in told] == ["note"]
    assert not plainly_wrong(told)


def test_what_cannot_be_read_is_told(photo: Photo) -> None:
    """Across two stripes there is no one grey."""
    told = grey_doubts(photo, ACROSS)
    assert plainly_wrong(told)
    assert "not of one colour" in told[0].text


def test_a_wrong_grey_has_no_other_causes(photo: Photo, found: SamplePhoto) -> None:
    """By a grey on the cloth the difference is misread, and only the grey is told of."""
    assert found.sample is not None
    wrong, right = (
        judged_by_photo(photo, (Reference.grey(rect, GREY_CARD),), found.cloth, found.sample)
        for rect in (found.cloth, found.grey)
    )
    assert wrong.misread
    assert {one.kind for one in wrong.findings} <= {"card not grey", "odd light", "warm light"}
    assert not right.misread
    assert right.cloth_covariance is not None


def test_boxes_that_touch_share_nothing() -> None:
    """Side by side they do not overlap; by a pixel they do."""
    assert not overlaps(Rect(0, 0, 10, 10), Rect(10, 0, 10, 10))
    assert overlaps(Rect(0, 0, 10, 10), Rect(9, 9, 10, 10))
    assert not overlaps(Rect(0, 0, 10, 10), Rect(2, 20, 5, 5))
