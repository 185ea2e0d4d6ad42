"""Reads the colours of one photo in a process of its own, and tells time and memory as JSON.

The libraries are loaded before the clock starts, as they are in a window that is open.
"""

from __future__ import annotations

import json
import resource
import sys
from pathlib import Path
from time import perf_counter, process_time

import scipy.ndimage  # noqa: F401 loaded before the clock starts

from swatchwright.acts.colours import colours_of, open_photo
from swatchwright.values import Rect


def main() -> None:
    """Read, and tell: seconds of the clock and of the processor, and the most bytes in use."""
    clock, processor = perf_counter(), process_time()
    photo = open_photo(Path(sys.argv[1]))
    middle = Rect(photo.width // 3, photo.height // 3, photo.width // 3, photo.height // 3)
    found = colours_of(photo, area=middle)
    told = {
        "what": photo.facts.words,
        "seconds": round(perf_counter() - clock, 2),
        "processor": round(process_time() - processor, 2),
        "peak": peak(),
        "colours": len(found.colours),
    }
    sys.stdout.write(json.dumps(told))


def peak() -> int:
    """Give the most bytes that were in use at once."""
    status = Path("/proc/self/status")
    if status.is_file():
        # Linux hands what `getrusage` tells down from a process to those it starts.
        rows = dict(row.split(":", 1) for row in status.read_text(encoding="ascii").splitlines())
        return 1024 * int(rows["VmHWM"].split()[0])
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss


if __name__ == "__main__":
    main()
