"""Every model of the window keeps Qt's rules for models, whatever is shown and typed in turn.

Qt's own tester watches each: rows that come and go untold, a parent that is not one, a cell that
answers a role with a thing of another kind. It tells by a line in the log, which fails the test.
"""

from __future__ import annotations

import ast
from collections.abc import Callable, Iterator
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import (
    QAbstractItemModel,
    QModelIndex,
    QStringListModel,
    Qt,
    qInstallMessageHandler,
)
from PySide6.QtTest import QAbstractItemModelTester

from house.tree import ROOT
from swatchwright.acts.jobs import FoundJob
from swatchwright.acts.parts import with_part, without_part
from swatchwright.acts.piece import sized
from swatchwright.acts.shelf_view import shelf_lines
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.amounts_buying import BuyingModel
from swatchwright.desktop.widgets.job_model import JobModel
from swatchwright.desktop.widgets.layer_choices import Paints
from swatchwright.desktop.widgets.piece_parts import PartsModel
from swatchwright.desktop.widgets.shelf_table import ShelfModel
from swatchwright.mixing.wishes import Wishes
from swatchwright.piece.amounts import amounts_of
from swatchwright.piece.common import Kind, common_piece
from swatchwright.piece.part import Shape
from swatchwright.shelf.csv_file import demo_shelf
from swatchwright.shelf.jobs import JobLine, Status
from swatchwright.shelf.shelf import Shelf
from swatchwright.values import Lab
from unit.piece.made import full_order, order

if TYPE_CHECKING:
    from swatchwright.piece.part import Piece

EDIT, TICK = Qt.ItemDataRole.EditRole, Qt.ItemDataRole.CheckStateRole
TYPED = ("", "top", "2", 3, 4.5, -1, 1e12, "250, 500", "no tin")
"""What may be typed into any cell: fit for it or not."""

Steps = Iterator[None]
DESKTOP = ROOT / "src" / "swatchwright" / "desktop"


def type_everywhere(model: QAbstractItemModel) -> None:
    """Type all of that into every cell that takes it, and tick and untick what can be."""
    for row in range(model.rowCount()):
        for column in range(model.columnCount()):
            flags = model.flags(model.index(row, column))
            if flags & Qt.ItemFlag.ItemIsEditable:
                for value in TYPED:
                    # What is typed may bring other rows.
                    model.setData(model.index(row, column), value, EDIT)
            if flags & Qt.ItemFlag.ItemIsUserCheckable:
                for state in (Qt.CheckState.Unchecked, Qt.CheckState.Checked):
                    model.setData(model.index(row, column), state.value, TICK)


def parts(model: PartsModel) -> Steps:
    """Show pieces of other kinds, with parts more and fewer, and none; type into all."""
    shown: list[Piece] = []

    def show(piece: Piece) -> None:
        shown.append(piece)
        model.show_piece(sized(piece))

    model.changed.connect(show)
    for kind in Kind:
        show(common_piece(kind))
        yield
    type_everywhere(model)
    yield
    show(with_part(shown[-1], Shape.PANEL))
    yield
    show(without_part(shown[-1], 0))
    yield
    model.show_piece(None)


def buying(model: BuyingModel) -> Steps:
    """Show what to buy for one paint and for several, and nothing; type into all."""
    for one in (order(), full_order(), order()):
        model.show_amounts(one, amounts_of(one))
        yield
        type_everywhere(model)
        yield
    model.show_amounts(None, None)


def jobs(model: JobModel) -> Steps:
    """Find jobs, more, fewer, changed, in another order and none; lay one on the bench."""
    lines = [
        JobLine(f"job-{n}", f"Box {n}", "", Status.ASKED, "2026-03-01T10:00:00+00:00", colour)
        for n, colour in enumerate((None, Lab(46, 34, 24), Lab(27, 2, -24)))
    ]
    found = [FoundJob(line) for line in lines]
    for shown in (found[:1], found, found[::-1], found[1:], [], found):
        model.show_found(shown)
        yield
    model.show_here("job-1")
    model.show_here("not one of them")
    yield
    model.show_found([FoundJob(replace(line, title="Another name")) for line in lines])
    yield
    model.show_here(None)


def shelf(model: ShelfModel) -> Steps:
    """Show the whole shelf, three of it, none and all again; tick, untick, and wish otherwise."""
    whole = demo_shelf()
    for paints in (whole.paints, whole.paints[:3], (), whole.paints[::-1]):
        model.show_lines(shelf_lines(Shelf("some", paints)) if paints else ())
        yield
        type_everywhere(model)
        yield
    model._session.wish(Wishes(without=frozenset({whole.paints[0].id})))


@pytest.fixture
def session(qapp: object) -> Iterator[Session]:
    """Give a bench of no window."""
    del qapp
    made = Session()
    yield made
    made.close()


MODELS: dict[str, tuple[Callable[[Session], QAbstractItemModel], Callable[..., Steps]]] = {
    "PartsModel": (lambda _: PartsModel(), parts),
    "BuyingModel": (lambda _: BuyingModel(), buying),
    "JobModel": (lambda _: JobModel(), jobs),
    "ShelfModel": (ShelfModel, shelf),
}


def watched(model: QAbstractItemModel) -> QAbstractItemModelTester:
    """Let Qt watch a model, which tells of what it breaks by a warning.

    Its other ways to tell end the process, or fail a test of Qt's own kind, which this is not.
    """
    return QAbstractItemModelTester(model, QAbstractItemModelTester.FailureReportingMode.Warning)


@pytest.mark.parametrize("name", MODELS)
def test_a_model_keeps_the_rules(name: str, session: Session) -> None:
    """It does so empty, filled, refilled, typed into and emptied again."""
    make, steps = MODELS[name]
    model = make(session)
    tester = watched(model)
    count = sum(1 for _ in steps(model))
    assert count >= 3
    assert tester.model() is model


def test_the_choices_of_paint_keep_the_rules(qapp: object) -> None:
    """So do the models that the choices of a layer share, each with a row for every paint."""
    del qapp
    made = Paints.of(demo_shelf())
    testers = [watched(model) for model in (made.model, made.model_or_none)]
    assert [tester.model().rowCount() for tester in testers] == [24, 25]


class _Broken(QStringListModel):
    """A model that says a row has come, and has none more."""

    def lie(self) -> None:
        """Tell of a row that does not come."""
        self.beginInsertRows(QModelIndex(), 3, 3)
        self.endInsertRows()


def test_the_tester_bites(qapp: object) -> None:
    """A model that tells of a row that does not come is found out, by a warning."""
    del qapp
    said: list[str] = []
    model = _Broken(["one", "two", "three"])
    tester = watched(model)
    before = qInstallMessageHandler(lambda _kind, _where, text: said.append(str(text)))
    model.lie()
    qInstallMessageHandler(before)
    assert any(text.startswith("FAIL!") for text in said)
    assert tester.model() is model


def models_in_source() -> set[str]:
    """Give the classes of the desktop that are models by a base of that name, but that of ours."""
    ours, known = "CellModel", {"QStandardItemModel", "QAbstractProxyModel", "CellModel"}
    found = set()
    for path in sorted(DESKTOP.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.ClassDef):
                bases = {ast.unparse(base).rsplit(".", 1)[-1] for base in node.bases}
                if any(b in known or (b[:1] == "Q" and b.endswith("Model")) for b in bases):
                    found.add(node.name)
    return found - {ours}


def test_no_model_goes_untested() -> None:
    """A new model class is given its steps above, or this fails."""
    assert models_in_source() == set(MODELS)
