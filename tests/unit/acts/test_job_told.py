"""What other parts of the program keep with a job, told in a line."""

from __future__ import annotations

from swatchwright.acts.job_told import told_parts
from swatchwright.acts.piece import sized_piece
from swatchwright.paint.layers import Layer, LayerKind, Stack
from swatchwright.piece.common import Kind
from swatchwright.piece.work.order import PlanOrder
from swatchwright.shelf.jobs import Document, Job


def told(part: str, value: object) -> str:
    """Tell one part of a job."""
    return told_parts(Job("box", "Box", documents=((part, Document.of(value)),)))[part]


def test_a_piece_by_its_name_and_area() -> None:
    """A piece is told by its name and the area that its parts come to."""
    found = sized_piece(Kind.BLANKET_BOX)
    assert told("piece", found.piece) == f"blanket box, {found.areas.total:.1f} m² to paint"


def test_a_finish_by_its_layers() -> None:
    """A finish is told by its layers from below, and a bare coat as that."""
    layers = (Layer(LayerKind.WASH), Layer(LayerKind.WAX))
    assert told("finish", Stack(layers)) == "wash, wax"
    assert "bare" in told("finish", Stack())
    body = Layer(LayerKind.WASH, zone="body")
    assert told("finish", Stack((body, Layer(LayerKind.WAX)))) == "wash (body), wax"


def test_a_plan_by_its_first_day() -> None:
    """A plan is told by the day on which it begins."""
    assert told("plan", PlanOrder("Box", "2026-12-01")) == "from 1 December 2026"


def test_what_cannot_be_read_is_only_there() -> None:
    """A part of another layout, or of no kind that is known, is told as being there."""
    assert not told("plan", {"days": 3})
    assert not told("tea", ["milk"])
