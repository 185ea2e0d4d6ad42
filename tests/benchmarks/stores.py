"""A large store: thousands of jobs with colours, recipes and notes, and a thousand paints."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import numpy as np

from swatchwright.acts.batches import keep_recipes
from swatchwright.acts.jobs import job_of, new_job, open_jobs
from swatchwright.acts.recipes import recipes_for, typed_colour
from swatchwright.acts.stock import put_paints
from swatchwright.shelf.jobs import Document, Note, Status, WantedColour
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.store import job_rows
from swatchwright.values import KnownColour, Lab
from unit.mixing.composed import composed

__all__ = ["large_store", "some_labs"]

_WORDS = "clay red blanket box harbour chest drawers oak pine wash wax north window second coat"


def some_labs(count: int) -> list[Lab]:
    """Give colours that cloth may have, the same each time."""
    rng = np.random.default_rng(8)
    return [Lab.of(lab) for lab in rng.uniform((20, -40, -40), (90, 50, 60), (count, 3))]


def large_store(path: Path, jobs: int, paints: int) -> Path:
    """Make it: each job with three wanted colours, a chosen recipe, a plan and three notes."""
    words = _WORDS.split()
    rng = np.random.default_rng(9)
    labs = some_labs(3 * jobs)
    with open_jobs(path) as store:
        put_paints(store, composed(paints))
        model = new_job(store, title="Model").jobs[0]
        found = recipes_for(typed_colour(46, 34, 24), store_shelf(paints), keep=1)
        keep_recipes(store, model, found)
        pattern = job_of(store, model)
        plan = Document.of({"steps": [{"name": word, "minutes": 30} for word in words * 3]})
        with store.editing("Many jobs") as edit:
            for i in range(jobs):
                said = [" ".join(rng.choice(words, 12)) for _ in range(3)]
                wanted = [
                    WantedColour(zone, KnownColour(lab, None, "typed in"))
                    for zone, lab in zip(("body", "drawers", "top"), labs[3 * i :], strict=False)
                ]
                chosen = replace(pattern.recipes[0], dry=labs[3 * i], zone="body")
                job = replace(
                    pattern,
                    id=f"job-{i}",
                    title=f"{said[0][:30]} {i}",
                    client=f"Client {i % 700}",
                    brief=said[1],
                    status=list(Status)[i % 5],
                    wanted=tuple(wanted),
                    recipes=(chosen,),
                    notes=tuple(Note(edit.made, text) for text in said),
                    documents=(("plan", plan),),
                )
                job_rows.add_job(edit, job)
    return path


def store_shelf(paints: int) -> Shelf:
    """Give some of the paints as a shelf."""
    return Shelf("composed", composed(paints)[:20])
