"""Finding jobs: by words, and by a colour."""

from __future__ import annotations

import sqlite3
from dataclasses import dataclass

import numpy as np

from swatchwright.colour.difference import delta_e_2000
from swatchwright.shelf.store.job_rows import searchable
from swatchwright.values import Lab

__all__ = ["Near", "ids_with", "nearest"]

_MOST_SL = 1.85
"""CIEDE2000 divides a difference of L* by at most so much (S_L is 1.75 at L* 0 and 100), and is
never less than what that leaves, so colours further apart in L* need not be looked at."""


@dataclass(frozen=True, slots=True)
class Near:
    """A job by its colour nearest to another: that colour, its zone, and how far apart.

    Parameters
    ----------
    job
        Id of the job.
    zone
        The zone of the piece that has the colour.
    chosen
        Whether it is that of a chosen recipe; else it was wanted.
    lab
        The colour.
    delta_e
        CIEDE2000.
    """

    job: str
    zone: str
    chosen: bool
    lab: Lab
    delta_e: float


def ids_with(
    connection: sqlite3.Connection, *, text: str = "", title: str = "", client: str = ""
) -> set[str] | None:
    """Give the ids of jobs that hold all the words asked for; None where nothing was asked.

    Parameters
    ----------
    connection
        The store's.
    text
        Words or beginnings of words, anywhere in the job's texts.
    title, client
        Words in these alone.
    """
    asked = searchable(f"{text} {title} {client}").split()
    if not asked:
        return None
    where = " AND ".join(["instr(words, ?) > 0"] * len(asked))
    rows = connection.execute(f"SELECT id, title, client FROM jobs WHERE {where}", asked)  # noqa: S608
    return {
        id_ for id_, of_title, of_client in rows if _in(title, of_title) and _in(client, of_client)
    }


def _in(asked: str, text: str) -> bool:
    """Tell whether a text holds all the words asked for."""
    return not asked or all(word in searchable(text) for word in searchable(asked).split())


def nearest(connection: sqlite3.Connection, lab: Lab, within: float) -> list[Near]:
    """Give the jobs that have a wanted or chosen colour near another, the nearest first.

    Parameters
    ----------
    connection
        The store's.
    lab
        The colour.
    within
        Largest CIEDE2000.
    """
    rows = connection.execute(
        "SELECT L, a, b, row FROM colours WHERE L BETWEEN ? AND ?",
        (lab.L - _MOST_SL * within, lab.L + _MOST_SL * within),
    ).fetchall()
    if not rows:
        return []
    table = np.array(rows, dtype=np.float64)
    apart = delta_e_2000(lab.triple, table[:, :3])
    found: dict[str, Near] = {}
    for i in np.argsort(apart, kind="stable").tolist():
        if apart[i] > within:
            break
        job, zone, kind = connection.execute(
            "SELECT job, zone, kind FROM colours WHERE row = ?", (rows[i][3],)
        ).fetchone()
        colour = Lab.of(rows[i][:3])
        found.setdefault(job, Near(job, zone, kind == "chosen", colour, float(apart[i])))
    return list(found.values())
