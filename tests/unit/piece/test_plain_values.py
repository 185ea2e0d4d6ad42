"""Every value can be written as plain data and read back the same."""

from __future__ import annotations

import json
from dataclasses import fields, is_dataclass
from typing import Any

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.acts.piece import SizedPiece, sized
from swatchwright.acts.plan import PlannedWork, plan_for
from swatchwright.piece.amounts import Amounts, amounts_of
from swatchwright.piece.areas import PieceAreas, areas_of
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.drawing import Drawing, View, drawn
from swatchwright.piece.order import AmountsOrder
from swatchwright.piece.part import Piece
from swatchwright.piece.work.order import PaintTimes, PlanOrder
from swatchwright.piece.work.plan import Plan, plan_of
from unit.piece.made import full_order, full_work, work


def there_and_back(value: Any, of: type[Any]) -> Any:
    """Write a value as builtins and as JSON text, and read it again."""
    plain = msgspec.to_builtins(value)
    assert msgspec.convert(plain, type=of) == value
    return msgspec.convert(json.loads(json.dumps(plain)), type=of)


@given(st.sampled_from(Kind), st.booleans())
def test_pieces(kind: Kind, inside: bool) -> None:  # noqa: FBT001 - hypothesis gives it
    """Each common piece comes back from plain data, with its areas and its drawings."""
    piece = common_piece(kind, inside=inside)
    assert there_and_back(piece, Piece) == piece
    assert there_and_back(areas_of(piece), PieceAreas) == areas_of(piece)
    assert there_and_back(sized(piece), SizedPiece) == sized(piece)
    for view in View:
        assert there_and_back(drawn(piece, view), Drawing) == drawn(piece, view)


def test_amounts() -> None:
    """An order of amounts and what is reckoned from it come back, money exact."""
    assert there_and_back(full_order(), AmountsOrder) == full_order()
    found = amounts_of(full_order())
    assert there_and_back(found, Amounts) == found


@pytest.mark.parametrize(
    "order", [work(), full_work(), work(paint_times=PaintTimes(45, 90, 2880), start="2028-02-29")]
)
def test_plans(order: PlanOrder) -> None:
    """An order of a plan, the plan, and its days come back."""
    assert there_and_back(order, PlanOrder) == order
    assert there_and_back(plan_of(order), Plan) == plan_of(order)
    assert there_and_back(plan_for(order), PlannedWork) == plan_for(order)


def test_values_are_frozen() -> None:
    """No value can be changed behind the back of who else holds it."""
    values = [common_piece(Kind.CHAIR), full_order(), amounts_of(full_order()), plan_of(work())]
    for value in values:
        assert is_dataclass(value)
        with pytest.raises(AttributeError):
            setattr(value, fields(value)[0].name, None)
