"""A photographed piece in the chosen colours: found once, recoloured as often as one likes."""

from __future__ import annotations

import numpy as np
import pytest

from swatchwright.acts.repaint import (
    ready_to_repaint,
    recoloured,
    repainted,
    repainted_whole,
)
from swatchwright.errors import MendableError
from swatchwright.mixing.search import Stopped
from swatchwright.photo.repaint_strokes import NOT_THIS, Marked
from swatchwright.values import Lab, Rect
from unit.photo.painted_scenes import COLUMNS, ROWS, STROKES, chest
from unit.photo.pictures import photo_of_light

OLD = {"body": Lab(55, -20, 8), "top": Lab(42, 14, 22)}
CARD = Rect(8, 180, 24, 24)


def test_pictures_and_masks_of_the_size_asked_for() -> None:
    """The picture and a mask for each zone are of one size, and no larger than asked."""
    found = repainted(chest().photo(OLD), STROKES, {"body": Lab(40, 20, 10)}, longest=160)
    assert found.picture.shape == (ROWS // 2, COLUMNS // 2, 3)
    assert list(found.masks) == ["body", "top"]
    assert all(mask.shape == found.picture.shape[:2] for mask in found.masks.values())


def test_another_colour_finds_nothing_anew() -> None:
    """What is found serves for any colours, with the result of asking for all at once."""
    photo = chest().photo(OLD)
    ready = ready_to_repaint(photo, STROKES)
    for colours in ({"body": Lab(40, 20, 10)}, {"body": Lab(80, 0, 0), "top": Lab(20, 0, 0)}):
        once = repainted(photo, STROKES, colours)
        assert np.array_equal(recoloured(ready, colours).picture, once.picture)
        assert np.array_equal(repainted_whole(ready, colours), once.picture)


def test_a_grey_card_puts_the_light_right() -> None:
    """Under a lamp, too, the piece comes out in the colour asked for once the card is marked."""
    lamp = np.array([1.1, 0.8, 0.45])
    seen = chest().seen(OLD)
    seen[180:204, 8:32] = 0.18
    photo = photo_of_light(np.clip(seen * lamp, 0, 1))
    colours = {"body": Lab(48, 34, 22)}
    with_card = repainted(photo, STROKES, colours, grey=CARD)
    card = with_card.picture[CARD.y + 4 : CARD.bottom - 4, CARD.x + 4 : CARD.right - 4]
    assert np.ptp(card.reshape(-1, 3).mean(axis=0)) < 3
    assert not any("grey card is marked" in note for note in with_card.notes)
    without = repainted(photo, STROKES, colours)
    assert any("No grey card is marked" in note for note in without.notes)


def test_the_notes_are_honest() -> None:
    """Every picture says that it is no measured colour; what is doubtful of this one is said."""
    dark = {"body": Lab(9, 0, 0), "top": Lab(42, 14, 22)}
    strokes = Marked(STROKES.size, tuple(s for s in STROKES.strokes if s.zone != NOT_THIS))
    notes = repainted(chest().photo(dark), strokes, {"body": Lab(92, 0, 3)}).notes
    told = " ".join(notes)
    assert "no measured colour" in told
    assert "very dark" in told
    assert "edge of the picture" in told
    vivid = repainted(chest().photo(OLD), STROKES, {"top": Lab(60, -90, 60)}).notes
    assert any("than a screen can show" in note for note in vivid)
    assert not any("very dark" in note for note in vivid)


def test_an_overexposed_zone_is_told() -> None:
    """Where a zone is white through and through there is no shade left, and that is said."""
    seen = chest().seen(OLD)
    seen[chest().zones["top"]] = 1.0
    notes = repainted(photo_of_light(seen), STROKES, {"top": Lab(40, 0, 0)}).notes
    assert any("“top” is overexposed" in note for note in notes)


def test_a_zone_without_strokes_is_refused() -> None:
    """A colour for a zone that is not marked is refused, and the marked ones are named."""
    with pytest.raises(MendableError, match="drawers") as told:
        repainted(chest().photo(OLD), STROKES, {"drawers": Lab(40, 0, 0)})
    assert "body, top" in told.value.mend


def test_it_stops_when_asked() -> None:
    """Finding and painting both give up."""
    photo = chest().photo(OLD)
    with pytest.raises(Stopped):
        ready_to_repaint(photo, STROKES, stopped=lambda: True)
    ready = ready_to_repaint(photo, STROKES)
    with pytest.raises(Stopped):
        recoloured(ready, {}, stopped=lambda: True)
