"""Values read from JSON by several threads at once."""

from __future__ import annotations

import subprocess
import sys

import msgspec
import pytest

from swatchwright.shelf.decoding import converted, decoded
from swatchwright.shelf.jobs import Marks

AT_ONCE = """
import sys
from dataclasses import make_dataclass
from threading import Barrier, Thread
from swatchwright.shelf.decoding import converted, decoded

sys.setswitchinterval(1e-6)  # threads take turns as often as they can
for turn in range(200):
    part = make_dataclass(f"Part{turn}", [(f"x{n}", int, 0) for n in range(30)], frozen=True)
    kinds = [
        make_dataclass(f"Whole{turn}{n}", [("part", part), ("n", int, 0)], frozen=True)
        for n in range(4)
    ]
    begin = Barrier(8)

    def read(kind, convert):
        begin.wait()
        if convert:
            converted({"part": {"x1": 2}}, kind)
        else:
            assert decoded('{"part": {"x1": 2}}', kind).part.x1 == 2

    threads = [Thread(target=read, args=(kind, c)) for kind in kinds for c in (False, True)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
print("all read")
"""


def test_threads_may_ask_for_the_same_type_at_once() -> None:
    """Types that share a part are first asked for by eight threads at once, and all are read."""
    run = subprocess.run(
        [sys.executable, "-c", AT_ONCE], capture_output=True, text=True, check=False
    )
    assert run.returncode == 0, run.stderr
    assert run.stdout.strip() == "all read"


def test_what_is_laid_out_otherwise_is_refused() -> None:
    """Both ways tell what does not fit."""
    with pytest.raises(msgspec.ValidationError):
        decoded('{"grey": 3}', Marks)
    with pytest.raises(msgspec.ValidationError):
        converted({"grey": 3}, Marks)
