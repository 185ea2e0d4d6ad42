"""Film thickness and how far paint goes."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.errors import MendableError
from swatchwright.piece.spreading import Ground, Tool, coat_rate, dry_film, loss, wet_film


@pytest.mark.parametrize(("rate", "um"), [(20, 50), (12, 83.333), (10, 100)])
def test_wet_film_is_volume_over_area(rate: float, um: float) -> None:
    """A litre over 20 m2 lies 50 um thick: litres per m2 are mm, exactly."""
    assert wet_film(rate) == pytest.approx(um, abs=1e-3)


def test_wet_film_in_the_units_of_the_gallon() -> None:
    """A US gallon at 1 mil covers 1604.17 ft2 (231 in3 at 0.001 in), so 400 ft2 is 4.01 mil."""
    feet_a_gallon = 231 / 0.001 / 144
    assert feet_a_gallon == pytest.approx(1604.1667, abs=1e-4)
    metric = 400 * 0.3048**2 / 3.785411784
    assert wet_film(metric) / 25.4 == pytest.approx(feet_a_gallon / 400)


def test_dry_film_by_solids_and_thinner() -> None:
    """100 um at 38 % leaves 38 um; thinned by a tenth 34.545 um (worked by hand)."""
    assert dry_film(100, 0.38) == pytest.approx(38)
    assert dry_film(100, 0.38, 0.1) == pytest.approx(34.545, abs=1e-3)


@given(st.floats(1, 40), st.sampled_from(Ground), st.sampled_from(Tool))
def test_later_coats_go_further(rate: float, ground: Ground, tool: Tool) -> None:
    """No ground makes a first coat go further than the second, and the second never thirsts."""
    first, second, third = (coat_rate(rate, ground, tool, n) for n in (1, 2, 3))
    assert first <= second == third
    assert 0 <= loss(tool) < 1


@pytest.mark.parametrize("rate", [0, -3, float("nan"), 400])
def test_a_rate_that_cannot_be(rate: float) -> None:
    """A litre covers neither nothing nor a field."""
    with pytest.raises(MendableError, match="A litre is said"):
        wet_film(rate)
