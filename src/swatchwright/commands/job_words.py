"""Jobs in words and as JSON."""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from swatchwright.acts.mixes_in_use import mixes_in_use, of_no_zone, stood_down
from swatchwright.colour.names import colour_name, off_words
from swatchwright.commands.words import colour_json
from swatchwright.mixing.recipe import can_be_counted

if TYPE_CHECKING:
    from swatchwright.acts.jobs import EditLine, JobLine
    from swatchwright.shelf.jobs import Job, KeptPhoto, KeptRecipe
    from swatchwright.shelf.store.search import Near

__all__ = ["job_json", "line_json", "print_job", "print_lines", "print_steps", "steps_json"]


def line_json(line: JobLine, near: Near | None = None) -> dict[str, Any]:
    """Give a line of a list as JSON."""
    told: dict[str, Any] = {
        "id": line.id,
        "title": line.title,
        "client": line.client,
        "status": line.status.value,
        "changed": line.changed,
        "colour": None if line.colour is None else colour_json(line.colour),
    }
    if near is not None:
        told["near"] = {
            "zone": near.zone,
            "chosen": near.chosen,
            **colour_json(near.lab),
            "delta_e_00": round(near.delta_e, 2),
        }
    return told


def job_json(job: Job) -> dict[str, Any]:
    """Give a job as JSON."""
    used = mixes_in_use(job)
    return {
        "id": job.id,
        "title": job.title,
        "client": job.client,
        "brief": job.brief,
        "room_light": job.room_light,
        "status": job.status.value,
        "created": job.created,
        "changed": job.changed,
        "photos": [_photo_json(photo) for photo in job.photos],
        "wanted": [
            {
                "zone": w.zone,
                **colour_json(w.colour.lab),
                "origin": w.colour.origin,
                "volume_ml": w.volume,
            }
            for w in job.wanted
        ],
        "recipes": [_recipe_json(recipe, used) for recipe in job.recipes],
        "batches": [
            {
                "number": b.number,
                "day": b.day,
                "zone": b.zone,
                "volume_ml": b.volume,
                "poured": [
                    {"id": p.paint, "name": p.name, "ml": p.ml, "drawn_ml": p.drawn}
                    for p in b.poured
                ],
                "note": b.note,
            }
            for b in job.batches
        ],
        "notes": [{"written": note.written, "text": note.text} for note in job.notes],
        "documents": {
            part: {"schema": document.schema, "value": json.loads(document.json)}
            for part, document in job.documents
        },
    }


def _photo_json(photo: KeptPhoto) -> dict[str, Any]:
    marks = photo.marks
    return {
        "hash": photo.hash,
        "name": photo.name,
        "bytes": photo.size,
        "path": photo.path,
        "grey": [[g.x, g.y, g.width, g.height] for g in marks.grey],
        "reflectance": marks.reflectance,
        "area": None
        if marks.cloth is None
        else [marks.cloth.x, marks.cloth.y, marks.cloth.width, marks.cloth.height],
        "references": [
            {
                "name": m.name,
                "kind": m.kind,
                "rect": [m.rect.x, m.rect.y, m.rect.width, m.rect.height],
                "lab": [round(v, 2) for v in m.lab.triple],
            }
            for m in marks.references
        ],
        "light": marks.light,
        "from_a_metre": marks.metre,
    }


def _recipe_json(recipe: KeptRecipe, used: Sequence[KeptRecipe]) -> dict[str, Any]:
    return {
        "zone": recipe.zone,
        "chosen": recipe.chosen,
        "in_use": recipe in used,
        "delta_e_00": round(recipe.delta_e, 3),
        "paints": [
            {"id": p.paint, "name": p.name, "share": p.share, "parts": p.parts}
            for p in recipe.paints
        ],
        "dry": colour_json(recipe.dry),
        "wet": colour_json(recipe.wet),
    }


def steps_json(steps: Sequence[EditLine]) -> list[dict[str, Any]]:
    """Give the history as JSON."""
    return [{"label": s.label, "made": s.made, "undone": s.undone} for s in steps]


def print_steps(steps: Sequence[EditLine]) -> None:
    """Print the history."""
    for step in steps:
        print(f"{step.made}  {step.label}{'  (undone)' if step.undone else ''}")


def print_lines(lines: Sequence[JobLine], nears: Sequence[Near | None] = ()) -> None:
    """Print jobs, a line each."""
    width = max(len(line.id) for line in lines)
    for i, line in enumerate(lines):
        near = nears[i] if nears else None
        told = [f"{line.id:{width}}", f"{line.status.value:8}", line.changed[:10], line.title]
        if line.client:
            told.append(f"for {line.client}")
        if near is not None:
            state = "chosen" if near.chosen else "wanted"
            told.append(f"{state} {colour_json(near.lab)['srgb']}, {off_words(near.delta_e)}")
        print("  ".join(told))


def print_job(job: Job, *, zone: str | None = None) -> None:
    """Print a job; with a zone, only the recipes for it."""
    if zone is None:
        _print_head(job)
    unused, of_no_part = stood_down(job), of_no_zone(job)
    for recipe in job.recipes:
        if zone in {None, recipe.zone}:
            _print_recipe(recipe)
            if recipe == unused:
                print(
                    "    Not in use: each zone of the piece has a mix of its own, and nothing is "
                    "mixed or bought for this one."
                )
            if recipe in of_no_part:
                print(
                    f"    Not in use: the piece has no zone {recipe.zone}, and nothing is mixed or "
                    "bought for it."
                )
    if zone is not None:
        return
    for batch in job.batches:
        poured = ", ".join(f"{p.ml:g} ml {p.paint}" for p in batch.poured)
        said = f" ({batch.note})" if batch.note else ""
        print(f"Batch {batch.number}, {batch.day}, {batch.volume:g} ml: {poured}{said}")
    for note in job.notes:
        print(f"Note, {note.written[:10]}: {note.text}")
    if job.documents:
        print(f"Also kept: {', '.join(part for part, _ in job.documents)}")


def _print_head(job: Job) -> None:
    print(f"{job.title} ({job.id}), {job.status.value}")
    for word, text in (("For", job.client), ("Asked", job.brief), ("Light", job.room_light)):
        if text:
            print(f"{word}: {text}")
    for photo in job.photos:
        print(f"Photo: {photo.name}, {photo.width} × {photo.height}")
    for wanted in job.wanted:
        lab = wanted.colour.lab
        print(
            f"Wanted, {wanted.zone}: {colour_name(lab)}, L* {lab.L:.1f}, a* {lab.a:.1f}, "
            f"b* {lab.b:.1f} ({wanted.colour.origin})"
            + ("" if wanted.volume is None else f", for {wanted.volume:g} ml")
        )


def _print_recipe(recipe: KeptRecipe) -> None:
    chosen = ", chosen" if recipe.chosen else ""
    print(
        f"Recipe, {recipe.zone}{chosen}: {off_words(recipe.delta_e)}; dry "
        f"{colour_json(recipe.dry)['srgb']}, wet {colour_json(recipe.wet)['srgb']}"
    )
    paints = recipe.paints
    counted = can_be_counted([paint.parts for paint in paints], [paint.share for paint in paints])
    for paint in recipe.paints:
        plural = " " if paint.parts == 1 else "s"
        told = f"{paint.parts:3} part{plural}  " if counted else ""
        print(f"    {told}{paint.share:6.1%}  {paint.name} ({paint.paint})")
