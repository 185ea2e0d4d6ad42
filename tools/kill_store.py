"""Kill a process that is editing the store, over and over, and see what is left.

Run ``python tools/kill_store.py`` from the root: 500 kills at random moments. After each one the
file must be sound, every edit whole, and no edit lost but the one that was under way.
"""

from __future__ import annotations

import argparse
import random
import sqlite3
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from dataclasses import dataclass, replace
from pathlib import Path

from swatchwright.acts.jobs import job_of, keep_document, new_job, note_job, open_jobs, redo, undo
from swatchwright.acts.stock import add_stock, kept_shelf, set_stock, take_demo_shelf
from swatchwright.errors import MendableError
from swatchwright.shelf.jobs import KeptPhoto
from swatchwright.shelf.store import job_rows
from swatchwright.shelf.store.kept import fingerprint, keep
from swatchwright.shelf.store.store import Store

PAINT = "white-clean"
JOB = "ledger"
PHOTO_BYTES = 60_000
LONGEST = 0.25
"""Seconds that a process lives at the most once it edits."""


@dataclass(frozen=True, slots=True)
class Kill:
    """One kill: how many edits were told as done, and what was found afterwards."""

    done: int
    in_flight: bool
    found: str


def begin(path: Path) -> None:
    """Make a store in which edits can be counted in four places at once."""
    with open_jobs(path) as store:
        take_demo_shelf(store)
        new_job(store, title=JOB)
        set_stock(store, PAINT, 0)


def one_more(store: Store, number: int, rng: random.Random) -> None:
    """Count up in one edit: in the stock, in a document, by a job more, and by a photo."""
    with store.editing(f"Count to {number}") as edit:
        add_stock(store, PAINT, 1)
        keep_document(store, JOB, "count", number)
        new_job(store, title=f"Job {number}")
        note_job(store, f"job-{number}", "x" * rng.randrange(1, 5000))
        job = job_rows.read_job(edit.connection, JOB)
        data = rng.randbytes(PHOTO_BYTES)
        copy = keep(edit, "photo", data)
        photo = KeptPhoto(fingerprint(data), "p.jpg", 1, "", 9, 9, copy)
        job_rows.write_job(edit, job, replace(job, photos=(photo,)))


def count(store: Store) -> int:
    """Give the count, which must be the same in all four places."""
    stock = next(s.ml_left for s in kept_shelf(store).stocked if s.paint.id == PAINT)
    job = job_of(store, JOB)
    told = job.document("count")
    number = told.read(int) if told else 0
    with store.reading() as connection:
        jobs = connection.execute("SELECT count(*) FROM jobs").fetchone()[0] - 1
        photos = connection.execute(
            "SELECT count(*) FROM photos JOIN kept ON kept.hash = photos.copy"
        ).fetchone()[0]
    if not stock == number == jobs or not photos == len(job.photos) == min(number, 1):
        raise ValueError(f"half an edit: {stock}, {number}, {jobs}, {photos}, {len(job.photos)}")
    return number


def edit_for_ever(path: Path, seed: int) -> None:
    """Edit, undo and redo without end, telling before and after each what the count will be."""
    rng = random.Random(seed)  # noqa: S311 - a test's dice
    with open_jobs(path) as store:
        number = count(store)
        print("ack", number, flush=True)
        while True:
            deed = rng.choice(("more", "more", "more", "undo", "undo", "redo"))
            if deed == "more":
                print("try", number + 1, flush=True)
                one_more(store, number + 1, rng)
                number += 1
            elif deed == "undo" and number > 0 and store.next_undo() is not None:
                print("try", number - 1, flush=True)
                undo(store)
                number -= 1
            elif deed == "redo" and store.next_redo() is not None:
                print("try", number + 1, flush=True)
                redo(store)
                number += 1
            print("ack", number, flush=True)


def killed(path: Path, seed: int) -> Kill:
    """Start a process that edits, kill it at a random moment, and look at the store."""
    rng = random.Random(seed)  # noqa: S311 - a test's dice
    with open_jobs(path) as store:
        before = count(store)
    child = subprocess.Popen(  # noqa: S603 - our own program
        [sys.executable, __file__, "--edit", str(path), "--seed", str(seed)],
        stdout=subprocess.PIPE,
        text=True,
    )
    # One in five dies while it starts or opens the store.
    told = [child.stdout.readline()] if rng.random() > 0.2 and child.stdout else []
    time.sleep(rng.uniform(0, LONGEST * (1 if told else 2)))
    ended = child.poll()
    child.kill()
    told += child.communicate()[0].splitlines(keepends=True)
    lines = [line.split() for line in told if line.endswith("\n")]
    acks = [int(number) for word, number in lines if word == "ack"]
    tries = [int(number) for word, number in lines if word == "try"]
    in_flight = bool(lines) and lines[-1][0] == "try"
    allowed = {acks[-1] if acks else before, *(tries[-1:] if in_flight else [])}
    found = look(path, allowed) if ended is None else f"it ended by itself with {ended}"
    return Kill(len(acks), in_flight, found)


def look(path: Path, allowed: set[int]) -> str:
    """Say what is wrong with the store; empty if nothing is."""
    try:
        with open_jobs(path) as store, store.reading() as connection:
            found = count(store)
            sound = connection.execute("PRAGMA integrity_check").fetchall()
            strays = connection.execute("PRAGMA foreign_key_check").fetchall()
    except (MendableError, sqlite3.Error, ValueError) as error:
        return f"{type(error).__name__}: {error}"
    if sound != [("ok",)] or strays:
        return f"integrity: {sound}, {strays}"
    return "" if found in allowed else f"the count is {found}, not one of {sorted(allowed)}"


def kills(path: Path, number: int, seed: int) -> Iterator[Kill]:
    """Kill again and again over one store."""
    begin(path)
    for i in range(number):
        yield killed(path, seed + i)


def main() -> int:
    """Kill as often as is asked and report."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--kills", type=int, default=500, help="how often (500)")
    parser.add_argument("--seed", type=int, default=1, help="of the dice (1)")
    parser.add_argument("--edit", type=Path, help=argparse.SUPPRESS)
    arguments = parser.parse_args()
    if arguments.edit is not None:
        edit_for_ever(arguments.edit, arguments.seed)
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "store.sqlite"
        done = list(kills(path, arguments.kills, arguments.seed))
    wrong = [kill for kill in done if kill.found]
    for kill in wrong:
        print(kill.found)
    flights = sum(kill.in_flight for kill in done)
    print(f"{len(done)} kills after {sum(kill.done for kill in done)} edits in all,")
    print(f"{flights} of them with an edit under way: {len(wrong)} found something wrong")
    return 1 if wrong else 0


if __name__ == "__main__":
    sys.exit(main())
