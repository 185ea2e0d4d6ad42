"""What a sheet says, and the recipe of a code, as JSON."""

from __future__ import annotations

from typing import Any

from swatchwright.acts.sheet import CodeRecipe, SheetContent
from swatchwright.commands.words import colour_json
from swatchwright.sheet.content import PaintLine, Zone
from swatchwright.values import Lab

__all__ = ["code_json", "content_json"]


def content_json(content: SheetContent) -> dict[str, Any]:
    """Give all that a sheet says."""
    return {
        "title": content.title,
        "client": content.client,
        "brief": content.brief,
        "room_light": content.room_light,
        "day": content.day,
        "job": content.job,
        "invented": content.invented,
        "zones": [_zone_json(zone) for zone in content.zones],
        "batches": [
            {"number": b.number, "day": b.day, "ml": b.ml, "zone": b.zone, "note": b.note}
            for b in content.batches
        ],
        "size": content.size,
        "piece": [
            {
                "zone": line.zone,
                "product": line.product,
                "area_m2": round(line.area, 4),
                "coats": line.coats,
                "need_ml": round(line.ml, 1),
            }
            for line in content.piece
        ],
        "mixed": list(content.mixed),
        "buy": [
            {
                "name": line.name,
                "need_ml": round(line.ml, 1),
                "words": line.words,
                "price": line.cost,
            }
            for line in content.buy
        ],
        "buy_price": content.buy_cost,
        "plan": [
            {"day": p.day, "time": p.time, "title": p.title, "wait": p.wait} for p in content.plan
        ],
        "ready": content.ready,
        "cautions": [{"danger": c.danger, "why": c.why, "do": c.do} for c in content.cautions],
        "notes": [{"day": note.day, "text": note.text} for note in content.notes],
        "again": list(content.again),
        "left_out": list(content.gaps),
    }


def _zone_json(zone: Zone) -> dict[str, Any]:
    return {
        "name": zone.name,
        "wanted": _colour(zone.wanted),
        "dry": _colour(zone.dry),
        "wet": _colour(zone.wet),
        "finished": _colour(zone.finished),
        "finished_by_part": [{"parts": end.parts, **colour_json(end.lab)} for end in zone.ends],
        "wish": list(zone.wish),
        "delta_e_00": None if zone.apart is None else round(zone.apart, 2),
        "in_parts": zone.in_parts,
        "parts_delta_e_00": (
            None if zone.apart_in_parts is None else round(zone.apart_in_parts, 2)
        ),
        "paints": [_paint_json(paint) for paint in zone.paints],
        "volume_ml": zone.volume,
        "volume_from": zone.volume_from,
        "pour": list(zone.pour),
        "finish": list(zone.finish),
        "minding": list(zone.minding),
        "sample": list(zone.sample),
        "trust": list(zone.trust),
        "check": list(zone.check),
        "code": zone.code,
    }


def _colour(lab: Lab | None) -> dict[str, Any] | None:
    return None if lab is None else colour_json(lab)


def _paint_json(paint: PaintLine) -> dict[str, Any]:
    return {
        "id": paint.id,
        "name": paint.name,
        "parts": paint.parts,
        "share": paint.share,
        "ml": paint.ml,
        "g": paint.grams,
        "spoons": paint.spoons or None,
        "own": colour_json(paint.own),
        "kind": paint.kind,
        "how_known": paint.how_known,
        "label": paint.label,
        "tins_ml": list(paint.tins),
        "note": paint.note,
    }


def code_json(recipe: CodeRecipe) -> dict[str, Any]:
    """Give the recipe that a code holds."""
    return {
        "title": recipe.title,
        "zone": recipe.zone,
        "day": recipe.day,
        "batch": recipe.batch,
        "volume_ml": recipe.ml,
        "wanted": _colour(recipe.wanted),
        "dry": _colour(recipe.dry),
        "paints": [{"id": p.id, "name": p.name, "parts": p.parts} for p in recipe.paints],
    }
