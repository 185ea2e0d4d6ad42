"""Being asked to end from outside the window: Ctrl-C in the terminal, logging out, shutting down.

Left alone, Qt and Python would let such a signal kill the process between two edits. It is taken
for what it means: the window is closed as by its own button, and what she is typing is kept.
"""

from __future__ import annotations

import signal
import socket
from contextlib import suppress
from types import FrameType

from PySide6.QtCore import QObject, QSocketNotifier
from PySide6.QtWidgets import QApplication

__all__ = ["AskedToEnd"]

_SIGNALS = ("SIGINT", "SIGTERM", "SIGHUP")


class AskedToEnd(QObject):
    """Closes all windows when the process is asked to end; asked a second time, it ends at once."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        # Qt waits outside Python, where no handler is run; a byte through a socket wakes it.
        self._here, self._there = socket.socketpair()
        self._here.setblocking(False)
        self._there.setblocking(False)
        self._fd_before = signal.set_wakeup_fd(self._there.fileno(), warn_on_full_buffer=False)
        self._before = {
            number: signal.signal(number, self._heard)
            for number in (getattr(signal, name, None) for name in _SIGNALS)
            if number is not None
        }
        self._notifier = QSocketNotifier(self._here.fileno(), QSocketNotifier.Type.Read, self)
        self._notifier.activated.connect(self._awake)

    def close(self) -> None:
        """Leave signals as they were before."""
        self._notifier.setEnabled(False)
        signal.set_wakeup_fd(self._fd_before)
        for number, handler in self._before.items():
            signal.signal(number, handler)
        self._here.close()
        self._there.close()

    def _heard(self, number: int, _: FrameType | None) -> None:
        """Let a second signal end the process, should the window not close."""
        signal.signal(number, signal.SIG_DFL)

    def _awake(self) -> None:
        with suppress(BlockingIOError):
            self._here.recv(64)
        QApplication.closeAllWindows()
