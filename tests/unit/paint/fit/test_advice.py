"""Which brush-out to ask for next."""

from __future__ import annotations

import pytest

from swatchwright.paint.fit.advice import brush_outs_to_try, next_brush_out
from unit.paint.fit.made import EXACT, SURFACE, WHITE, brushed, paint

BONE = paint(bone_black=1.0)


@pytest.mark.parametrize("spectra", [False, True])
def test_a_masstone_wants_a_let_down_with_white(spectra: bool) -> None:  # noqa: FBT001
    """Of a paint known by its masstone, a let-down with white teaches most, the same least."""
    advice = next_brush_out(
        [brushed(1.0, colour=not spectra)],
        {"white": WHITE, "black": BONE},
        brush_outs_to_try("blue", "white", "black", over_black=True),
        spectra=spectra,
        surface=SURFACE,
        errors=EXACT,
    )
    assert len(advice) == 7
    assert "with white" in advice[0].words
    assert "on its own" in advice[-1].words
    assert advice[0].spread_then < 0.5 * advice[0].spread_now


def test_no_brush_out_makes_a_paint_less_known() -> None:
    """Any further brush-out leaves the spread as it is or less, and by less the more there are."""
    gains = []
    for shares in ((1.0,), (1.0, 0.5, 0.1)):
        advice = next_brush_out(
            [brushed(c, colour=True) for c in shares],
            {"white": WHITE},
            brush_outs_to_try("blue", "white"),
            surface=SURFACE,
            errors=EXACT,
        )
        assert all(one.spread_then <= one.spread_now * 1.001 for one in advice)
        gains.append(advice[0].spread_now - advice[0].spread_then)
    assert gains[1] < gains[0]


def test_what_may_be_asked_for() -> None:
    """Without a white or a black nothing is asked that needs them."""
    assert list(brush_outs_to_try("blue", None)) == ["on its own, laid until it hides"]
    assert sum("with chalk" in words for words in brush_outs_to_try("blue", "chalk")) == 3
