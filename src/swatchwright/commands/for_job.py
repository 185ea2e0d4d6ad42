"""Keeping what a command worked out with a job."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Callable

from swatchwright.acts.jobs import Changes, Store, id_of
from swatchwright.commands.store_words import named_store

__all__ = ["keep_for_job"]


def keep_for_job(arguments: argparse.Namespace, act: Callable[[Store, str], Changes]) -> None:
    """Keep something with the job that was named, if one was, and say so beside the answer.

    Raises
    ------
    MendableError
        If there is no such job, or the store cannot be written.
    """
    if arguments.for_job is None:
        return
    store = named_store(arguments)
    try:
        changes = act(store, id_of(store, arguments.for_job))
    finally:
        store.close()
    # Beside the answer and not in it: that may be JSON for another program.
    print(f"Kept: {changes.label}." if changes else "Nothing new to keep.", file=sys.stderr)
