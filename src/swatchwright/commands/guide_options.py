"""The options of ``swatchwright guide``.

Nothing heavy is imported here, so that ``--version`` and ``--help`` answer at once.
"""

from __future__ import annotations

from swatchwright.commands.parsing import Commands, add_json

__all__ = ["add_guide"]


def add_guide(commands: Commands) -> None:
    """Add the command to a parser."""
    guide = commands.add_parser(
        "guide",
        help="a page of the guide, as plain text",
        description="Print a page of the guide to the window: what to do, what you see, and how "
        "far to trust it. In the window F1 opens the same pages with their pictures.",
    )
    guide.add_argument(
        "page", metavar="PAGE", nargs="?", help="its name or the beginning of it (index)"
    )
    guide.add_argument("--list", action="store_true", help="list the pages instead")
    guide.add_argument(
        "--find", metavar="WORDS", help="list the pages that hold these words, the best first"
    )
    add_json(guide)
