"""A note that a running program keeps, by which the next start knows how the last run ended.

Each run has a file of its own beside the store, and holds a lock on it that the system lets go
when the process ends, however it ends. A run that closes takes its file away. So a file that
nobody holds is that of a run which was killed or crashed, or of a computer that lost its power; a
second copy of the program, running at the same time, is not mistaken for one.

Where nothing can be written, no note is kept, and the program runs without.
"""

from __future__ import annotations

import faulthandler
import os
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from datetime import UTC, datetime
from pathlib import Path

from swatchwright.acts.report import shorter, without_folders
from swatchwright.shelf.store.place import usual_place

__all__ = ["MOST_FILES", "REPORTS", "Run", "begin_run"]

REPORTS = "reports"
"""The folder beside the store."""

MOST_FILES = 5
"""How many reports of past runs are kept, the newest."""

_HEAD = 4096
"""Bytes at the beginning of a note that are written anew as the painter goes on."""
_MOST_BYTES = 64 * 2**10
_MOST_READ = 12_000
_PATIENCE = 0.5


class Run:
    """The note of this run; of a run without one each act does nothing.

    Parameters
    ----------
    file, descriptor
        The note, open and locked; None and -1 where there is none.
    """

    def __init__(self, file: Path | None = None, descriptor: int = -1) -> None:
        self._file, self._descriptor = file, descriptor
        self._faults = False

    def watch(self) -> None:
        """Have Python's fault handler write into the note, should the process crash."""
        if self._descriptor >= 0:
            faulthandler.enable(self._descriptor)

    def set_scene(self, head: str) -> None:
        """Write where in the program she is, in place of what was written before."""
        block = head.encode()[: _HEAD - 1].ljust(_HEAD - 1) + b"\n"
        with suppress(OSError):
            self._write(block, at=0)

    def add_fault(self, told: str) -> None:
        """Write down a fault after which the program went on; not more than there is room for."""
        with suppress(OSError):
            end = max(self._size(), _HEAD)
            if end + len(told.encode()) < _MOST_BYTES:
                self._faults = True
                self._write(f"\n{told}\n".encode(), at=end)

    def close(self) -> None:
        """Take the note away, as this run has ended well; keep it if something went wrong."""
        if self._descriptor < 0 or self._file is None:
            return
        faulthandler.disable()
        with suppress(OSError):
            # Windows removes and renames no file that is open.
            os.close(self._descriptor)
        self._descriptor = -1
        with suppress(OSError):
            if self._faults:
                _put_by(self._file, "faults")
                _keep_few(self._file.parent)
            else:
                self._file.unlink()

    def _write(self, data: bytes, *, at: int) -> None:
        """Write, and stand at the end, which is where a fault handler would go on."""
        if self._descriptor < 0:
            return
        os.lseek(self._descriptor, at, os.SEEK_SET)
        os.write(self._descriptor, data)
        os.lseek(self._descriptor, 0, os.SEEK_END)

    def _size(self) -> int:
        return 0 if self._descriptor < 0 else os.fstat(self._descriptor).st_size


def begin_run(folder: Path | None = None) -> tuple[Run, str]:
    """Begin the note of this run, and read that of one that did not close.

    Parameters
    ----------
    folder
        Where reports are; None for the usual place, beside the store.

    Returns
    -------
    The note, and what the last run that did not close has left; empty where all have closed.
    """
    folder = usual_place().parent / REPORTS if folder is None else folder
    try:
        folder.mkdir(parents=True, exist_ok=True)
        with _alone(folder):
            return _begun(folder), _left(folder)
    except (OSError, ValueError):
        return Run(), ""


def _begun(folder: Path) -> Run:
    stamp = datetime.now(UTC).strftime("%Y%m%d-%H%M%S-%f")
    file = folder / f"running-{stamp}-{os.getpid()}.txt"
    # Not inherited by programs that are started from here, so that the lock ends with us.
    flags = os.O_RDWR | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0)
    descriptor = os.open(file, flags, 0o600)
    try:
        held = _lock(descriptor)
    except OSError:
        held = False
    if held:
        return Run(file, descriptor)
    os.close(descriptor)
    file.unlink()
    return Run()


def _left(folder: Path) -> str:
    """Put by the notes of runs that nobody holds any more, and give the newest."""
    told = ""
    for file in sorted(folder.glob("running-*.txt")):
        with suppress(OSError):
            if not _held(file):
                told = _put_by(file, "stopped")
    _keep_few(folder)
    return told


def _held(file: Path) -> bool:
    """Tell whether a running program holds this note, by its lock."""
    descriptor = os.open(file, os.O_RDWR)
    try:
        return not _lock(descriptor)
    finally:
        os.close(descriptor)


def _put_by(file: Path, word: str) -> str:
    """Rename a note to what became of its run, without folders of this computer; give its text."""
    with file.open("rb") as opened:
        raw = opened.read(_MOST_BYTES).decode("utf-8", errors="replace")
    lines = (line.rstrip(" \0") for line in raw.splitlines())
    told = shorter(without_folders("\n".join(lines)).strip(), _MOST_READ)
    kept = file.with_name(file.name.replace("running", word, 1))
    kept.write_text(told + "\n", encoding="utf-8")
    file.unlink()
    # One that was stopped before it wrote anything has stopped all the same.
    return told or kept.stem


def _keep_few(folder: Path) -> None:
    """Throw away all but the newest reports."""
    kept = [*folder.glob("stopped-*.txt"), *folder.glob("faults-*.txt")]
    for old in sorted(kept, key=lambda file: file.name.partition("-")[2])[:-MOST_FILES]:
        with suppress(OSError):
            old.unlink()


# --- locks ---------------------------------------------------------------------------------------


@contextmanager
def _alone(folder: Path) -> Iterator[None]:
    """Look at the notes while no other start does; two would both tell of the same run.

    Raises
    ------
    OSError
        If another start does so for long, or the folder takes no lock.
    """
    descriptor = os.open(folder / "lock", os.O_RDWR | os.O_CREAT, 0o600)
    try:
        end = time.monotonic() + _PATIENCE
        while not _lock(descriptor):
            if time.monotonic() > end:
                raise TimeoutError("another start holds the reports")
            time.sleep(0.02)
        yield
    finally:
        os.close(descriptor)


if sys.platform == "win32":
    import msvcrt

    def _lock(descriptor: int) -> bool:
        """Lock a file until it is closed or the process ends; False where another holds it."""
        try:
            # Far behind what is written: Windows lets nobody read what is locked.
            os.lseek(descriptor, 2**30, os.SEEK_SET)
            msvcrt.locking(descriptor, msvcrt.LK_NBLCK, 1)
        except OSError:
            return False
        finally:
            os.lseek(descriptor, 0, os.SEEK_SET)
        return True

else:
    import fcntl

    def _lock(descriptor: int) -> bool:
        """Lock a file until it is closed or the process ends; False where another holds it."""
        try:
            fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            return False
        return True
