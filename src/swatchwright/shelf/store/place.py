"""Where the store lives."""

from __future__ import annotations

import os
from pathlib import Path

__all__ = ["FILE_NAME", "HOME", "usual_place"]

HOME = "SWATCHWRIGHT_HOME"
"""The variable of the environment that names another folder."""

FILE_NAME = "swatchwright.sqlite"


def usual_place() -> Path:
    """Give the file where shelf and jobs are kept when nothing else is said."""
    named = os.environ.get(HOME, "").strip()
    if named:
        return Path(named).expanduser() / FILE_NAME
    from platformdirs import user_data_path

    return user_data_path("swatchwright", appauthor=False) / FILE_NAME
