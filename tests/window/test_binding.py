"""The Qt binding itself: that signals do not wear Python out."""

from __future__ import annotations

import sys

import pytest
from PySide6.QtCore import QObject, Signal


class _Bell(QObject):
    rung = Signal(object)


@pytest.mark.skipif(
    sys.version_info >= (3, 12), reason="None and True cannot wear out from 3.12 on"
)
@pytest.mark.usefixtures("qapp")
def test_signals_keep_the_references_of_none_and_true() -> None:
    """A thousand signals leave the reference counts of None and True about as they were.

    A release of the binding lost one with each; a window in use then ended Python 3.11 in time.
    """
    bell = _Bell()
    heard: list[str] = []
    bell.rung.connect(heard.append)
    before = [sys.getrefcount(thing) for thing in (None, True)]
    for _ in range(1000):
        bell.rung.emit("")
    after = [sys.getrefcount(thing) for thing in (None, True)]
    assert len(heard) == 1000
    assert all(abs(now - then) < 200 for now, then in zip(after, before, strict=True))
