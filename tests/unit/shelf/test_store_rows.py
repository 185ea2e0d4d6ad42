"""Paints and jobs come back from the store as they went in, to the last bit."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, replace
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from numpy.testing import assert_array_equal
from skimage import color

from swatchwright.errors import MendableError
from swatchwright.paint.paints import Paint
from swatchwright.shelf.jobs import Document, Job, Note, ReadFrom, WantedColour
from swatchwright.shelf.store import job_rows, paint_rows, search
from swatchwright.shelf.store.kept import fingerprint, take
from swatchwright.shelf.store.paint_rows import StockedPaint
from swatchwright.shelf.store.store import Store
from swatchwright.values import KnownColour, Lab, Rect
from unit.paint.made import paint, paints
from unit.shelf.stores import RED, add_full_job, opened, two_paints

skimage_difference: Any = color.deltaE_ciede2000


def read_from(photo: str, cloth: Rect | None) -> WantedColour:
    """Give a colour that was read from a cloth in a photo."""
    return WantedColour("z", KnownColour(RED, None, "photo"), ReadFrom(photo, cloth))


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give an empty store."""
    with opened(tmp_path / "store.sqlite") as made:
        yield made


def assert_same(one: Paint, two: Paint) -> None:
    """Compare two paints field by field."""
    for field in fields(Paint):
        a, b = getattr(one, field.name), getattr(two, field.name)
        if isinstance(a, np.ndarray):
            assert_array_equal(a, b)
            assert b.dtype == np.float64
        else:
            assert a == b, field.name


# --- paints --------------------------------------------------------------------------------------


def test_a_paint_comes_back_whole(store: Store) -> None:
    """Every field of a paint is kept, with its stock and the times from its tin."""
    times = Document.of({"recoat_hours": 4})
    with store.editing("Paints") as edit:
        for one in two_paints():
            paint_rows.write_paint(edit, StockedPaint(one, 120.5, times))
        paint_rows.set_times(edit, "red", None)
        paint_rows.set_stock(edit, "red", None)
        found = paint_rows.read_paints(edit.connection)
        only = paint_rows.read_paints(edit.connection, ("red", "nowhere"))
    for one, stocked in zip(two_paints(), found, strict=True):
        assert_same(one, stocked.paint)
    assert (found[0].ml_left, found[0].times) == (120.5, times)
    assert (found[1].ml_left, found[1].times) == (None, None)
    assert [stocked.paint.id for stocked in only] == ["red"]


def test_writing_a_paint_again_keeps_its_place(store: Store) -> None:
    """A paint that is written again stands where it stood."""
    with store.editing("Paints") as edit:
        for one in (*two_paints(), replace(two_paints()[0], name="Whiter")):
            paint_rows.write_paint(edit, StockedPaint(one, None))
        names = [s.paint.name for s in paint_rows.read_paints(edit.connection)]
    assert names == ["Whiter", "Red"]


@given(paints())
def test_a_frozen_paint_comes_back_whole(made: Paint) -> None:
    """A paint as JSON reads back to the last bit, and its bytes depend on nothing but it."""
    data = paint_rows.paint_bytes(made)
    assert_same(made, paint_rows.paint_from_bytes(data))
    assert paint_rows.paint_bytes(paint_rows.paint_from_bytes(data)) == data


@pytest.mark.parametrize(
    "bad",
    [
        paint(K=-1.0),
        paint(K=np.inf),
        paint(S=0.0),
        paint(volume_solids=0.0),
        paint(volume_solids=float("nan")),
        paint(density=1e9),
        paint(spreading_rate=-2.0),
        paint(spread=np.ones((3, 10))),
        paint(spread=np.full((1, 72), np.nan)),
        paint(note="x" * 30_000),
    ],
    ids=lambda _: "",
)
def test_a_paint_that_cannot_be_is_refused(bad: Paint) -> None:
    """Numbers that no paint has are refused with the paint's name."""
    with pytest.raises(MendableError, match="Made"):
        paint_rows.check_paint(bad)


@pytest.mark.parametrize("data", [b"", b"{}", b"[]", b'{"facts":{},"K":[1],"S":[1]}', b"\xff"])
def test_what_is_no_paint_is_refused(data: bytes) -> None:
    """Bytes that are not a paint are refused in words."""
    with pytest.raises(MendableError):
        paint_rows.paint_from_bytes(data)


def test_a_change_of_what_is_kept_is_seen(store: Store) -> None:
    """A photo or paint whose bytes are no longer those of its fingerprint is refused."""
    job = add_full_job(store)
    with store.editing("Harm") as edit:
        edit.connection.execute("UPDATE kept SET bytes = zeroblob(9) WHERE kind = 'photo'")
    with store.reading() as connection, pytest.raises(MendableError, match="damaged"):
        take(connection, job.photos[0].copy)


# --- jobs ----------------------------------------------------------------------------------------


def test_a_job_comes_back_whole(store: Store) -> None:
    """Every part of a job is kept."""
    job = add_full_job(store)
    with store.reading() as connection:
        assert job_rows.read_job(connection, job.id) == job


def test_a_job_without_anything_comes_back(store: Store) -> None:
    """A job that is only a title is kept too."""
    with store.editing("Add") as edit:
        job_rows.add_job(edit, Job(id="chair", title="Chair"))
        assert job_rows.read_job(edit.connection, "chair") == Job(id="chair", title="Chair")


def test_a_line_shows_the_chosen_colour_first(store: Store) -> None:
    """A list shows the colour of the chosen recipe, else the first wanted, else none."""
    job = add_full_job(store)
    shown = []
    for new in (job, replace(job, recipes=()), replace(job, recipes=(), wanted=())):
        with store.editing("Change") as edit:
            old = job_rows.read_job(edit.connection, job.id)
            job_rows.write_job(edit, old, new)
            shown.append(job_rows.read_lines(edit.connection)[0].colour)
    assert shown == [job.recipes[0].dry, RED, None]


@pytest.mark.parametrize(
    ("change", "told"),
    [
        ({"title": " "}, "title"),
        ({"title": "x" * 300}, "title"),
        ({"client": "a\x00b"}, "client"),
        ({"brief": "x" * 30_000}, "brief"),
        ({"notes": (Note("", "n"),) * 3000}, "notes"),
        ({"wanted": (WantedColour("z", KnownColour(Lab(300, 0, 0), None, "")),)}, "300"),
        ({"wanted": (WantedColour("z", KnownColour(Lab(float("nan"), 0, 0), None, "")),)}, "nan"),
        ({"wanted": (read_from("f" * 64, Rect(0, 0, 2_000_000, 5)),)}, "marked at 0, 0"),
        ({"wanted": (read_from(fingerprint(b"x"), Rect(3999, 7, 2, 2)),)}, "3999, 7"),
        ({"wanted": (read_from("../../x", None),)}, "fingerprint"),
        ({"documents": (("Piece", Document(1, "{}")),)}, "Piece"),
        ({"documents": (("notes", Document(1, "{}")),)}, "notes"),
        ({"documents": (("piece", Document(0, "{}")),)}, "layout"),
    ],
)
def test_a_job_that_cannot_be_is_refused(
    store: Store, change: dict[str, object], told: str
) -> None:
    """What is too long, too many or out of range is named, and the job stays as it was."""
    job = add_full_job(store)
    with pytest.raises(MendableError, match=told), store.editing("Change") as edit:
        job_rows.write_job(edit, job, replace(job, **change))  # type: ignore[arg-type]
    with store.reading() as connection:
        assert job_rows.read_job(connection, job.id) == job


@pytest.mark.parametrize(
    ("title", "id_"),
    [
        ("Blanket box", "blanket-box"),
        ("  Größe – No. 2!", "groesse-no-2"),
        ("木箱", "job"),
        ("x" * 90, "x" * 40),
    ],
)
def test_ids_are_made_from_titles(store: Store, title: str, id_: str) -> None:
    """An id can be typed on any keyboard, and is another one where it is taken."""
    with store.editing("Add") as edit:
        found = []
        for _ in range(2):
            found.append(job_rows.free_id(edit.connection, title))
            job_rows.add_job(edit, Job(id=found[-1], title=title))
    assert found == [id_, f"{id_}-2"]


def test_the_beginning_of_an_id_will_do(store: Store) -> None:
    """An id may be cut short while only one begins like that; else those are named."""
    with store.editing("Add") as edit:
        for id_ in ("blanket-box", "blanket-box-2", "chair"):
            job_rows.add_job(edit, Job(id=id_, title=id_))
    with store.reading() as connection:
        assert job_rows.full_id(connection, "ch") == "chair"
        assert job_rows.full_id(connection, "blanket-box") == "blanket-box"
        for typed, told in (("bl", "blanket-box-2"), ("", "no job"), ("chiar", "such as chair")):
            with pytest.raises(MendableError, match=told):
                job_rows.full_id(connection, typed)


def test_a_document_of_arrays_is_kept() -> None:
    """A document may hold numbers of numpy; one of another layout is refused in words."""
    document = Document.of({"a": np.float64(0.1), "b": np.array([1.5, 2.5])}, 3)
    assert document.read(dict[str, object]) == {"a": 0.1, "b": [1.5, 2.5]}
    with pytest.raises(MendableError, match="could not be read"):
        document.read(list[int])
    with pytest.raises(TypeError):
        Document.of({"a": object()})


# --- finding -------------------------------------------------------------------------------------


def test_like_this_is_the_nearest_by_ciede2000(store: Store) -> None:
    """The nearest jobs by colour are those that scikit-image's CIEDE2000 gives."""
    rng = np.random.default_rng(11)
    labs = rng.uniform((0, -60, -60), (100, 60, 60), (300, 3))
    wanted = (52.0, 14.0, 19.0)
    with store.editing("Many") as edit:
        for i in range(100):
            colours = tuple(
                WantedColour(f"zone {k}", KnownColour(Lab.of(labs[3 * i + k]), None, "typed in"))
                for k in range(3)
            )
            job_rows.add_job(edit, Job(id=f"job-{i}", title="Chair", wanted=colours))
    apart = skimage_difference(np.tile(wanted, (300, 1)), labs).reshape(100, 3)
    expected = [f"job-{i}" for i in np.argsort(apart.min(axis=1)) if apart[i].min() <= 20]
    with store.reading() as connection:
        found = search.nearest(connection, Lab(*wanted), 20)
        assert search.nearest(connection, Lab(*wanted), 0.001) == []
    assert len(expected) > 10
    assert [near.job for near in found] == expected
    for near in found:
        i = int(near.job.split("-")[1])
        assert near.delta_e == pytest.approx(apart[i].min(), abs=1e-9)
        assert near.zone == f"zone {int(np.argmin(apart[i]))}"


@pytest.mark.parametrize("lightness", [0.0, 50.0, 100.0])
def test_no_colour_within_reach_is_passed_over(store: Store, lightness: float) -> None:
    """Colours left out by their lightness alone are further off than asked, also at the ends."""
    grid = np.array([[L, a, b] for L in range(0, 101, 2) for a in (-8, 0, 8) for b in (-8, 0, 8)])
    colours = [WantedColour("z", KnownColour(Lab.of(lab), None, "")) for lab in grid]
    with store.editing("Many") as edit:
        for i, colour in enumerate(colours):
            job_rows.add_job(edit, Job(id=f"job-{i}", title="Chair", wanted=(colour,)))
    middle = (lightness, 1.0, -1.0)
    apart = skimage_difference(np.tile(middle, (len(grid), 1)), grid.astype(float))
    expected = int(np.sum(apart <= 6))
    with store.reading() as connection:
        assert len(search.nearest(connection, Lab(*middle), 6)) == expected


@pytest.mark.parametrize(
    ("asked", "found"),
    [
        ({"text": "CUSHION shiny"}, True),
        ({"text": "groesse"}, False),
        ({"text": "grosse"}, True),
        ({"text": "drawers"}, True),
        ({"text": "white, clean"}, True),
        ({"text": "sand coats"}, True),
        ({"text": "sand velvet"}, False),
        ({"title": "blanket"}, True),
        ({"title": "harbour"}, False),
        ({"client": "harbour"}, True),
        ({"client": "blanket"}, False),
        ({"title": "blanket", "client": "harbour", "text": "sand"}, True),
        ({"text": "100%"}, False),
    ],
)
def test_jobs_are_found_by_words(store: Store, asked: dict[str, str], found: bool) -> None:  # noqa: FBT001
    """All words must be there, whatever their case and accents, in the place that was asked."""
    job = add_full_job(store)
    with store.reading() as connection:
        assert search.ids_with(connection, **asked) == ({job.id} if found else set())
        assert search.ids_with(connection) is None
