"""The store that was named, and what has changed in it, in words and as JSON."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING, Any

from swatchwright.acts.jobs import Changes, open_jobs
from swatchwright.commands.codes import ExitCode
from swatchwright.commands.words import print_json

if TYPE_CHECKING:
    from swatchwright.acts.jobs import Store

__all__ = ["changes_json", "named_store", "tell_changes"]


def named_store(arguments: argparse.Namespace) -> Store:
    """Open the store that was named, or the usual one."""
    return open_jobs(None if arguments.store is None else Path(arguments.store))


def tell_changes(changes: Changes, arguments: argparse.Namespace, done: str = "") -> ExitCode:
    """Print what was done."""
    if arguments.json:
        print_json(changes_json(changes))
        return ExitCode.DONE
    print(f"{done}{changes.label}." if changes else "Nothing changed.")
    for warning in changes.warnings:
        print(f"Check: {warning}")
    return ExitCode.DONE


def changes_json(changes: Changes) -> dict[str, Any]:
    """Give what was done as JSON."""
    return {
        "label": changes.label,
        "jobs": list(changes.jobs),
        "paints": list(changes.paints),
        "parts": [{"job": job, "part": part} for job, part in changes.parts],
        "warnings": list(changes.warnings),
    }
