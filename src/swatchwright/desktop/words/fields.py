"""The words of fields for numbers."""

from __future__ import annotations

from swatchwright.language import say


def between(least: str, most: str) -> str:
    """Say which numbers a field takes."""
    return say("It takes from {least} to {most}.", least=least, most=most)


def no_number(typed: str) -> str:
    """Say that what was typed is no number, and what was done."""
    return say("“{typed}” is no number here; it stays as it was.", typed=typed)
