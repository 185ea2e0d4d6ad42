"""Open the window."""

from __future__ import annotations

import gc
import os
import subprocess
import sys
from contextlib import suppress
from pathlib import Path
from typing import NoReturn

__all__ = ["open_window"]

_NO_QT = (
    "swatchwright: the window cannot be opened, since Qt is not complete here:\n  {why}\n"
    "Run “make setup”, which installs what it needs, or use the commands: swatchwright --help"
)
_NO_SCREEN = (
    "swatchwright: there is no screen to open a window on.\n"
    "Start it from a desktop session, or use the commands: swatchwright --help"
)


def open_window(words: list[str]) -> int:
    """Open the window, with a photo if one is named, until it is closed.

    Parameters
    ----------
    words
        At most one: the path of a photo.

    Returns
    -------
    The exit code 2, with a message, if there is no screen or Qt is not complete, or 0 after telling
    how it is used. Where a window was opened, the process ends with it and nothing is returned.
    """
    if words[:1] in (["-h"], ["--help"]) or len(words) > 1:
        print("usage: swatchwright window [PHOTO]")  # noqa: T201 - this is for the terminal
        return 0 if words[0].startswith("-") else 2
    if not _has_screen():
        print(_NO_SCREEN, file=sys.stderr)  # noqa: T201
        return 2
    try:
        from PySide6.QtWidgets import QApplication
    except ImportError as error:
        print(_NO_QT.format(why=error), file=sys.stderr)  # noqa: T201
        return 2
    from swatchwright.desktop.asked_to_end import AskedToEnd
    from swatchwright.desktop.memory import keep_few_arenas
    from swatchwright.desktop.tongue import settle_language

    keep_few_arenas()
    application = QApplication(sys.argv[:1])
    application.setApplicationName("Swatchwright")
    application.setStyle("Fusion")
    settle_language(application)
    # Not before: the words are said when they are imported.
    from swatchwright.desktop.collecting import Collecting
    from swatchwright.desktop.last_words import LastWords
    from swatchwright.desktop.window import AGAIN, Window

    # What was imported stays: no collection need look at it again, which halves the longest one.
    gc.freeze()
    ended, last_words, collecting = AskedToEnd(), LastWords(), Collecting()
    window = Window()
    last_words.watch(window)
    window.show()
    if words:
        window.open(Path(words[0]))
    code = application.exec()
    collecting.close()
    last_words.close()
    ended.close()
    if code == AGAIN:
        _start_again()
    return _leave(0 if code == AGAIN else code)


def _leave(code: int) -> NoReturn:
    """End the process here, where all is kept and all work is done.

    Left to end by themselves, Python and Qt take down what is still there in no set order; once in
    some thousand times that met an object whose other half was gone, and the system told of a
    fault when nothing was lost.
    """
    for stream in (sys.stdout, sys.stderr):
        # A program without a terminal may have neither.
        with suppress(AttributeError, OSError, ValueError):
            stream.flush()
    os._exit(code)


def _start_again() -> None:
    """Open the window anew, as another language is spoken only from the start."""
    again = [sys.executable, "-m", "swatchwright", "window"]
    if sys.platform == "win32":
        subprocess.Popen(again)  # noqa: S603 - our own program
    else:
        os.execv(again[0], again)  # noqa: S606 - our own program


def _has_screen() -> bool:
    """Tell whether there is a screen, without which Qt would abort on Linux."""
    if not sys.platform.startswith("linux"):
        return True
    return any(os.environ.get(name) for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"))
