"""``swatchwright sample``."""

from __future__ import annotations

import argparse
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import Any

from swatchwright.acts.colours import open_photo
from swatchwright.acts.jobs import Changes, Store, job_of
from swatchwright.acts.mix import look_of_mix
from swatchwright.acts.sample import Advice, NextMix, advice_on, learnt_shelf, stripes_beside
from swatchwright.acts.sample_in_photo import judged_by_photo
from swatchwright.acts.sample_judged import (
    How,
    Judged,
    judged_by_eye,
    judged_by_figures,
)
from swatchwright.acts.sample_rounds import SampleLoop, Stop, new_loop, take_round
from swatchwright.acts.sample_take import keep_sample
from swatchwright.acts.sample_tried import loop_of
from swatchwright.colour.names import closeness, difference_words
from swatchwright.commands.codes import ExitCode
from swatchwright.commands.for_job import keep_for_job
from swatchwright.commands.references import references_of
from swatchwright.commands.words import (
    amount_of,
    chosen_shelf,
    colour_json,
    print_json,
    rectangle,
    reflectance_of,
    three_numbers,
)
from swatchwright.errors import MendableError
from swatchwright.photo.references import Reference
from swatchwright.shelf.jobs import Document
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.write import write_shelf
from swatchwright.values import KnownColour, Lab

__all__ = ["sample"]

_LARGEST_FILE = 5_000_000

_STOPS = {
    Stop.UNSEEN: "Done: hardly anybody will see the difference; fewer than half of all people do "
    "side by side.",
    Stop.UNTOLD: "Done, as far as this comparison can tell: the difference is within its own error."
    " Hold the sample to the cloth in the light of the room.",
}
_BY_EYE = "Done: as near as your eye can tell. Look once more in the light of the room."


def sample(arguments: argparse.Namespace) -> ExitCode:
    """Print what a dried sample asks for."""
    shelf = chosen_shelf(arguments)
    mixed = [amount_of(text) for text in arguments.parts]
    before = None if arguments.rounds is None else _read(Path(arguments.rounds))
    if arguments.stripes:
        return _stripes(arguments, shelf, mixed, before)
    judged = _judged(arguments, before)
    loop = before or new_loop(_wanted(arguments, judged))
    loop = take_round(shelf, loop, mixed, judged, day=_today(), beside=arguments.beside)
    loop, advice = advice_on(
        shelf,
        loop,
        pot=arguments.pot,
        tub=arguments.tub,
        fresh=arguments.fresh,
        without=frozenset((arguments.without or "").replace(",", " ").split()),
        most_paints=arguments.paints,
    )
    keep_for_job(arguments, lambda store, id_: _take(store, id_, arguments, shelf, loop))
    written = _keep(arguments, shelf, loop)
    if arguments.json:
        print_json(_as_json(shelf, loop, advice, judged))
    else:
        _print(shelf, loop, advice, judged)
        for path in written:
            print(f"Written: {path}")
    return ExitCode.DONE


def _today() -> str:
    return datetime.now().astimezone().date().isoformat()


def _take(
    store: Store, id_: str, arguments: argparse.Namespace, shelf: Shelf, loop: SampleLoop
) -> Changes:
    """Take the sample as the mix of a zone, unless the job has samples that would be lost."""
    there = loop_of(job_of(store, id_))
    rounds = () if there is None else there.rounds
    same = all(a.same_as(b) for a, b in zip(rounds, loop.rounds, strict=False))
    if len(rounds) > len(loop.rounds) or not same:
        raise MendableError(
            "The job has other samples of its own.",
            "Take its mix on the page Sample of the window, or name another job.",
        )
    taken = () if there is None else there.taken
    whole = replace(loop, taken=taken)
    return keep_sample(
        *(store, id_, whole, len(loop.rounds)),
        shelf=shelf,
        zone=arguments.zone,
        most_paints=min(arguments.paints, 3),
    )


def _stripes(
    arguments: argparse.Namespace,
    shelf: Shelf,
    mixed: list[tuple[str, float]],
    before: SampleLoop | None,
) -> ExitCode:
    """Print what to brush out beside a mix."""
    known = _lab(arguments)
    look = look_of_mix(shelf, mixed).dry
    loop = before or new_loop(KnownColour(look if known is None else known, None, ""))
    stripes = stripes_beside(shelf, loop, mixed, volume=arguments.fresh)
    if arguments.json:
        print_json({"beside": [_mix_json(shelf, one) for one in stripes]})
        return ExitCode.DONE
    if not stripes:
        print("A single paint has nothing beside it: brush it out as it is.")
    for one in stripes:
        told = ", ".join(f"{ml:.1f} ml {shelf.paint(id_).name}" for id_, ml in one.mixed)
        print(f"Beside it brush: {told}")
    return ExitCode.DONE


# --- what was given ------------------------------------------------------------------------------


def _read(path: Path) -> SampleLoop | None:
    """Read the samples before this one; none where there is no such file yet."""
    if not path.exists():
        return None
    if path.stat().st_size > _LARGEST_FILE:
        raise MendableError(f"{path.name} is too large for a file of samples.", "Name another.")
    try:
        return Document(1, path.read_text(encoding="utf-8")).read(SampleLoop)
    except (MendableError, OSError, UnicodeDecodeError) as error:
        raise MendableError(
            f"{path.name} is no file of samples.",
            "Name one that `swatchwright sample --rounds` wrote, or a new one.",
        ) from error


def _judged(arguments: argparse.Namespace, before: SampleLoop | None) -> Judged:
    """Compare as was asked, by just one of the ways."""
    ways = [arguments.photo, arguments.said, arguments.lab_difference]
    if sum(way is not None for way in ways) != 1:
        raise MendableError(
            "It is not clear how the sample compares with the cloth.",
            "Give one of --photo with --cloth and --sample, --said, or --lab-difference.",
        )
    if arguments.photo is not None:
        return _by_photo(arguments)
    known = before.wanted if before is not None else _lab(arguments)
    if known is None:
        raise MendableError(
            "The wanted colour is not known.", "Add --lab L,a,b, as it was read from the cloth."
        )
    if arguments.said is not None:
        return judged_by_eye(arguments.said, known)
    return judged_by_figures(three_numbers(arguments.lab_difference, "--lab-difference"), known)


def _by_photo(arguments: argparse.Namespace) -> Judged:
    cloth = rectangle(arguments.cloth, "--cloth")
    brushed = rectangle(arguments.sample, "--sample")
    if cloth is None or brushed is None:
        raise MendableError(
            "The photo shows sample and cloth, but not where.",
            "Add --cloth X,Y,W,H and --sample X,Y,W,H.",
        )
    grey = rectangle(arguments.grey, "--grey")
    reflectance = reflectance_of(arguments)
    first = () if grey is None else (Reference.grey(grey, reflectance),)
    return judged_by_photo(
        open_photo(Path(arguments.photo)),
        (*first, *references_of(arguments.ref)),
        cloth,
        brushed,
        seeing="metre" if arguments.from_a_metre else "yarn",
        light=arguments.light,
    )


def _lab(arguments: argparse.Namespace) -> Lab | None:
    return None if arguments.lab is None else Lab.of_a_surface(*three_numbers(arguments.lab))


def _wanted(arguments: argparse.Namespace, judged: Judged) -> KnownColour:
    """Give the wanted colour: as it was read before, or as this photo shows the cloth."""
    known = _lab(arguments)
    return KnownColour(judged.cloth if known is None else known, None, "")


def _keep(arguments: argparse.Namespace, shelf: Shelf, loop: SampleLoop) -> list[Path]:
    """Write the shelf that has learnt, and the rounds, where that was asked."""
    written: list[Path] = []
    if arguments.out is not None:
        learnt, loop = learnt_shelf(shelf, loop)
        written += write_shelf(learnt, Path(arguments.out))
    if arguments.rounds is not None:
        path = Path(arguments.rounds)
        try:
            path.write_text(Document.of(loop).json + "\n", encoding="utf-8")
        except OSError as error:
            raise MendableError(
                f"{path.name} cannot be written ({error.strerror}).", "Choose another place."
            ) from error
        written.append(path)
    return written


# --- the answer ----------------------------------------------------------------------------------


def _words(judged: Judged) -> str:
    ways = difference_words(judged.cloth, judged.sample)
    told = f"The sample is {' and '.join(ways)} than the cloth" if ways else "The sample is like it"
    if judged.how is How.EYE:
        return f"{told}, as you said: {judged.said}."
    return f"{told}."


def _print(shelf: Shelf, loop: SampleLoop, advice: Advice, judged: Judged) -> None:
    dL, da, db = judged.vector
    print(_words(judged))
    print(
        f"{judged.delta_e:.1f} ± {judged.give_or_take:.1f} CIEDE2000 off: "
        f"{closeness(judged.delta_e)}; "
        f"L* {dL:+.1f}, a* {da:+.1f}, b* {db:+.1f} (sample {len(loop.rounds)})"
    )
    for finding in judged.findings:
        print(
            f"{'Check' if finding.severity == 'warning' else 'Note'}: {finding.text} {finding.mend}"
        )
    if advice.stop is not None:
        unseen = advice.stop is Stop.UNSEEN
        print(_BY_EYE if unseen and advice.last.how is How.EYE else _STOPS[advice.stop])
        return
    if advice.accepted:
        print("Most people would accept it as it is; to come nearer still:")
    if judged.misread:
        print("The grey is none, so what follows is wrong: mark the grey card.")
    if advice.unsure:
        print("Neither is sure to come nearer than this sample: stripes beside it tell more.")
    if advice.costs and not advice.why:
        print(f"Mind: {', '.join(advice.costs)}.")
    if advice.better_fresh:
        _print_fresh(shelf, advice)
        _print_additions(advice)
    else:
        _print_additions(advice)
        _print_fresh(shelf, advice)


def _print_additions(advice: Advice) -> None:
    held = sum(ml for _, ml in advice.pot)
    if not advice.additions.steps:
        print(f"Nothing that may be added to the pot of {held:.0f} ml brings it nearer.")
        return
    print(f"To the pot of {held:.0f} ml add, the least first:")
    for step in advice.additions.steps:
        print(f"  {step.ml:6.1f} ml  {step.paint.name} ({step.paint.id})")
    print(
        f"The pot then holds {advice.additions.volume:.0f} ml and should be about "
        f"{_off(advice.after.usual)} from the cloth. Add a third of it first, stir, brush and dry."
    )


def _off(delta_e: float) -> str:
    return f"{delta_e:.1f} ({closeness(delta_e)})"


def _print_fresh(shelf: Shelf, advice: Advice) -> None:
    volume = sum(ml for _, ml in advice.fresh.mixed)
    lead = "Better, mix" if advice.better_fresh else "Or mix"
    if advice.why:
        print(f"A fresh sample is better: {', '.join(advice.why)}.")
    print(
        f"{lead} {volume:.0f} ml afresh, about {_off(advice.fresh.outlook.usual)} from the cloth:"
    )
    for pour in advice.fresh.pours:
        held = "  only once a sample has dried" if pour.held_back else ""
        print(f"  {pour.ml:6.1f} ml  {pour.paint.name} ({pour.paint.id}){held}")
    if advice.wider is not None:
        told = ", ".join(f"{ml:.1f} ml {shelf.paint(id_).name}" for id_, ml in advice.wider.mixed)
        print(
            f"One paint more brings it from {advice.fresh.outlook.usual:.1f} to "
            f"{_off(advice.wider.outlook.usual)}: {told}"
        )
    if advice.beside:
        print("Brush out beside it, to either side of where it is least sure:")
    for other in advice.beside:
        told = ", ".join(f"{ml:.1f} ml {shelf.paint(id_).name}" for id_, ml in other.mixed)
        print(f"  {told}")


def _as_json(shelf: Shelf, loop: SampleLoop, advice: Advice, judged: Judged) -> dict[str, Any]:
    return {
        "sample": len(loop.rounds),
        "difference": {
            "lab": [round(v, 2) for v in judged.vector],
            "delta_e_00": round(judged.delta_e, 2),
            "give_or_take": round(judged.give_or_take, 2),
            "words": list(difference_words(judged.cloth, judged.sample)),
            "how": judged.how,
            "cloth": colour_json(judged.cloth),
            "sample": colour_json(judged.sample),
        },
        "findings": [
            {"kind": f.kind, "severity": f.severity, "text": f.text, "mend": f.mend}
            for f in judged.findings
        ],
        "stop": advice.stop,
        "accepted": advice.accepted,
        "add": [
            {"id": s.paint.id, "name": s.paint.name, "ml": s.ml} for s in advice.additions.steps
        ],
        "pot_ml": round(advice.additions.volume, 1),
        "after": _outlook_json(advice),
        "fresh": _mix_json(shelf, advice.fresh),
        "beside": [_mix_json(shelf, other) for other in advice.beside],
        "wider": None if advice.wider is None else _mix_json(shelf, advice.wider),
        "better_fresh": advice.better_fresh,
        "why_fresh": list(advice.why),
    }


def _outlook_json(advice: Advice) -> dict[str, Any]:
    seen = advice.after
    return {**colour_json(seen.dry), "usual_delta_e_00": round(seen.usual, 2)}


def _mix_json(shelf: Shelf, mix: NextMix) -> dict[str, Any]:
    return {
        "paints": [{"id": i, "name": shelf.paint(i).name, "ml": ml} for i, ml in mix.mixed],
        "pour": [{"id": p.paint.id, "ml": p.ml, "held_back": p.held_back} for p in mix.pours],
        **colour_json(mix.outlook.dry),
        "usual_delta_e_00": round(mix.outlook.usual, 2),
    }
