"""Waits, cold and damp."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.errors import MendableError
from swatchwright.piece.work.order import Carrier, FinishKind, Primer, Room
from swatchwright.piece.work.times import (
    BUFF_AFTER,
    Source,
    Wait,
    checked_room,
    dew_point,
    drawn_out,
    finish_times,
    paint_times,
    primer_times,
    set_down,
    stain_block_times,
    wait_factor,
)


@pytest.mark.parametrize(
    ("temperature", "humidity", "dew"),
    [(20, 60, 12.00), (20, 80, 16.44), (25, 50, 13.85), (23, 50, 12.01), (10, 85, 7.59)],
)
def test_dew_points_by_magnus(temperature: float, humidity: float, dew: float) -> None:
    """Dew points of the formula of Magnus with the constants of WMO guide no. 8."""
    assert dew_point(temperature, humidity) == pytest.approx(dew, abs=0.005)


def test_dew_point_of_a_painters_chart() -> None:
    """A chart for steel coatings (after ISO 8502-4) gives 11 for 16 Celsius and 71 %."""
    assert dew_point(16, 71) == pytest.approx(11, abs=0.5)


def test_saturated_air_is_at_its_dew_point() -> None:
    """At 100 % the dew point is the temperature."""
    assert dew_point(17.3, 100) == pytest.approx(17.3)


rooms = st.builds(Room, st.floats(0, 45), st.floats(0, 100), st.just(value=True))


@given(rooms, st.floats(0, 10), st.floats(0, 20))
def test_colder_or_damper_is_never_shorter(room: Room, colder: float, damper: float) -> None:
    """No room that is colder or damper makes a wait shorter, and none makes it less than told."""
    worse = Room(max(0, room.temperature - colder), min(100, room.humidity + damper), True)
    assert 1 <= wait_factor(room) <= wait_factor(worse)
    assert drawn_out(Wait(37), wait_factor(room)).minutes >= 37


def test_the_rule_of_thumb() -> None:
    """Twice as long at 10 Celsius, twice at 85 %, four times at both, as told at 20 and 50."""
    assert wait_factor(Room(20, 50)) == 1
    assert wait_factor(Room(10, 50)) == pytest.approx(2)
    assert wait_factor(Room(20, 85)) == pytest.approx(2)
    assert wait_factor(Room(10, 85)) == pytest.approx(4)
    assert wait_factor(Room(30, 30)) == 1


@pytest.mark.parametrize("room", [Room(9.9, 50), Room(20, 86), Room(36, 50)])
def test_where_paint_does_not_dry(room: Room) -> None:
    """Below 10, above 35 Celsius or above 85 % nothing is planned unless the tin allows it."""
    with pytest.raises(MendableError, match="does not dry"):
        checked_room(room)
    allowed = Room(room.temperature, room.humidity, tin_allows=True)
    assert checked_room(allowed) == allowed


@pytest.mark.parametrize("room", [Room(float("nan")), Room(-5, 50, True), Room(20, 120, True)])
def test_no_room_at_all(room: Room) -> None:
    """Figures that no room has are refused whatever a tin allows."""
    with pytest.raises(MendableError, match="Nothing can be painted"):
        checked_room(room)


def test_waits_are_told_in_steps() -> None:
    """Waits are drawn out to five minutes within the hour, and to a quarter beyond."""
    assert drawn_out(Wait(31), 1).minutes == 35
    assert drawn_out(Wait(61, Source.TIN), 1) == Wait(75, Source.TIN)
    assert drawn_out(Wait(240), 1).minutes == 240


def test_usual_times_are_in_order() -> None:
    """Everything is dry to touch before the next coat, and hard last."""
    found = [paint_times(c) for c in Carrier]
    found += [primer_times(p, c) for p in Primer for c in Carrier]
    found += [finish_times(f, c) for f in FinishKind for c in Carrier]
    for times in (*found, stain_block_times()):
        assert 0 < times.touch_dry <= times.recoat <= times.hard


def test_trade_values() -> None:
    """An adhesion primer's coats are two hours apart; wax is buffed after half an hour.

    Common practice, no source: told by a painter of furniture.
    """
    assert primer_times(Primer.ADHESION, Carrier.WATER).recoat == 120
    assert BUFF_AFTER == 30


def test_setting_down_takes_longer() -> None:
    """A face bears weight no sooner than its next coat, and after a night at the least."""
    assert set_down(Wait(60), Carrier.WATER) == Wait(720)
    assert set_down(Wait(2000, Source.TIN), Carrier.SOLVENT) == Wait(2000, Source.TIN)
