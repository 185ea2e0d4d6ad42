"""Stores for tests: a clock that ticks, a few paints, a job with everything in it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from io import BytesIO
from pathlib import Path
from typing import Any

import numpy as np
from PIL import Image

from swatchwright.paint.family import Family
from swatchwright.paint.paints import HowKnown, Paint, Tin
from swatchwright.shelf.jobs import (
    Batch,
    Document,
    Job,
    KeptPhoto,
    KeptRecipe,
    Marks,
    Note,
    Poured,
    RecipePaint,
    Status,
    WantedColour,
)
from swatchwright.shelf.store import job_rows, paint_rows
from swatchwright.shelf.store.history import Changes
from swatchwright.shelf.store.kept import fingerprint, keep
from swatchwright.shelf.store.opening import open_store
from swatchwright.shelf.store.paint_rows import StockedPaint
from swatchwright.shelf.store.schema import WATCHED
from swatchwright.shelf.store.store import Store
from swatchwright.values import KnownColour, Lab, Rect
from unit.paint.made import paint

RED = Lab(46, 34, 24)
BLUE = Lab(28, 3, -24)


@dataclass(slots=True)
class Clock:
    """A clock that is a minute on each time it is looked at."""

    time: datetime = datetime(2026, 3, 1, 9, 0, tzinfo=UTC)

    def __call__(self) -> datetime:
        """Give the time."""
        self.time += timedelta(minutes=1)
        return self.time


def opened(path: Path, **more: Any) -> Store:
    """Open a store with such a clock."""
    return open_store(path, clock=Clock(), **more)


def two_paints() -> tuple[Paint, Paint]:
    """Give a white with everything known of it, and a red with little."""
    rng = np.random.default_rng(4)
    white = replace(
        paint("white-clean", 0.3, 120.0, how_known=HowKnown.FITTED),
        name="White, clean",
        density=1.31,
        volume_solids=0.41,
        spreading_rate=11.5,
        tins=(Tin(500, 12.5), Tin(2500)),
        note="from the harbour – “no. 2”",
        spread=rng.normal(0, 0.1, (5, 72)),
    )
    red = paint("red", np.linspace(200, 5, 36), 60.0, Family.EGGSHELL)
    return white, red


def a_photo(colour: tuple[int, int, int] = (160, 80, 70)) -> bytes:
    """Give a small JPEG."""
    written = BytesIO()
    Image.new("RGB", (24, 16), colour).save(written, "JPEG")
    return written.getvalue()


def full_job(id_: str = "blanket-box", *, white: str, red: str, copy: str) -> Job:
    """Give a job with everything in it; its paints and photo by their fingerprints."""
    recipe = KeptRecipe(
        zone="drawers",
        wanted=RED,
        paints=(
            RecipePaint("red", "Red", red, 0.75, 3),
            RecipePaint("white-clean", "White, clean", white, 0.25, 1),
        ),
        dry=Lab(46.2, 33.5, 24.1),
        wet=Lab(40, 38, 29),
        delta_e=0.31,
        chosen=True,
    )
    marks = Marks((Rect(1, 2, 3, 4), Rect(5, 5, 2, 2)), Rect(8, 8, 10, 6), 0.2)
    return Job(
        id=id_,
        title="Blanket box, Größe 3",
        client="The harbour workshop",
        brief="Clay red like the cushion.\nNot shiny.",
        room_light="north window",
        status=Status.SAMPLING,
        created="2026-03-01T09:00:00Z",
        changed="2026-03-01T09:00:00Z",
        photos=(KeptPhoto(fingerprint(b"x"), "p.jpg", 12, "/x/p.jpg", 4000, 3000, copy, marks),),
        wanted=(
            WantedColour("drawers", KnownColour(RED, ((1, 0, 0), (0, 2, 0), (0, 0, 3)), "photo")),
            WantedColour("body", KnownColour(BLUE, None, "typed in")),
        ),
        recipes=(recipe, replace(recipe, chosen=False, delta_e=1.2)),
        batches=(Batch(1, "2026-03-02", 500.0, "drawers", (Poured("red", "Red", 375.0, 100.0),)),),
        notes=(Note("2026-03-01T10:00:00Z", "Sand between coats."),),
        documents=(("piece", Document(2, '{"faces":[1.5,2]}')), ("plan", Document(1, "[]"))),
    )


def add_full_job(store: Store, id_: str = "blanket-box") -> Job:
    """Put a job with everything in it into a store, and give it."""
    with store.editing("Add a full job") as edit:
        white, red = (paint_rows.freeze(edit, p) for p in two_paints())
        copy = keep(edit, "photo", a_photo())
        job = full_job(id_, white=white, red=red, copy=copy)
        job_rows.add_job(edit, job)
    return job


def add_two_paints(store: Store) -> Changes:
    """Put the two paints on the shelf of a store."""
    with store.editing("Two paints") as edit:
        for one in two_paints():
            paint_rows.write_paint(edit, StockedPaint(one, None))
        return edit.changes


def dump(store: Store) -> dict[str, list[tuple[Any, ...]]]:
    """Give all that a store holds, but its history."""
    with store.reading() as connection:
        return {
            table: connection.execute(f"SELECT * FROM {table} ORDER BY row").fetchall()  # noqa: S608
            for table in WATCHED
        }
