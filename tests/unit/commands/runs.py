"""Running a command in this process, as the shell would see it."""

from __future__ import annotations

import json
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from swatchwright.commands.run import run

if TYPE_CHECKING:
    import pytest


@dataclass(frozen=True, slots=True)
class Ran:
    """What a command ended with and wrote."""

    code: int
    out: str
    err: str

    @property
    def json(self) -> Any:
        """Its output as JSON."""
        return json.loads(self.out)


def ran(capsys: pytest.CaptureFixture[str], *words: object) -> Ran:
    """Run a command, and check that no traceback is among what it wrote."""
    capsys.readouterr()
    try:
        code = run([str(word) for word in words])
    except SystemExit as end:
        code = int(end.code or 0)
    written = capsys.readouterr()
    if code != 70:
        assert "Traceback" not in written.out + written.err
    return Ran(code, written.out, written.err)


def refused(capsys: pytest.CaptureFixture[str], *words: object) -> str:
    """Run a command that must be refused, and give its message.

    It ends with 2, prints nothing where a script would read, and says what to do.
    """
    done = ran(capsys, *words)
    assert done.code == 2, done
    assert done.out == ""
    assert done.err.startswith("swatchwright")
    assert len(done.err.strip().splitlines()) >= 2
    return done.err
