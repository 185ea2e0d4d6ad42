"""The sample photos that come with the program."""

from __future__ import annotations

from swatchwright.acts.colours import colours_of, open_photo
from swatchwright.acts.samples import sample_photos
from swatchwright.values import Rect


def test_every_sample_is_there_and_its_marks_fit() -> None:
    """Each sample opens, and its card and cloth lie inside it, apart from each other."""
    samples = sample_photos()
    assert samples
    for sample in samples:
        photo = open_photo(sample.path)
        for mark in (sample.grey, sample.cloth):
            assert mark.inside(photo.width, photo.height), sample.path.name
        assert sample.shows.endswith(".")
        assert 0 < sample.reflectance < 1
        assert separate(sample.grey, sample.cloth)


def separate(one: Rect, two: Rect) -> bool:
    """Tell whether two rectangles share no pixel."""
    beside = one.right <= two.x or two.right <= one.x
    return beside or one.bottom <= two.y or two.bottom <= one.y


def test_a_sample_has_colours() -> None:
    """The first sample, in the light of its card, has at least two colours."""
    first = sample_photos()[0]
    photo = open_photo(first.path)
    found = colours_of(photo, grey=first.grey, reflectance=first.reflectance, area=first.cloth)
    assert len(found.colours) >= 2
