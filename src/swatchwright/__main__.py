"""The way in: the window when nothing is asked, a command otherwise."""

from __future__ import annotations

import sys

__all__ = ["main"]


def main(argv: list[str] | None = None) -> int:
    """Open the window, or run one command and return its exit code.

    Both faces are imported only when wanted, so that a command never loads Qt and
    ``--version`` loads nothing at all.
    """
    words = sys.argv[1:] if argv is None else argv
    if not words or words[0] == "window":
        from swatchwright.desktop.start import open_window

        return open_window(words[1:])
    from swatchwright.commands.run import run

    return run(words)


if __name__ == "__main__":
    sys.exit(main())
