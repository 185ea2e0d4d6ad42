"""A screen of its own for the program, with a hand at its mouse and keys, and eyes on it.

The screen is Xvfb's. The hand is xdotool, so that keys and clicks come in as from a keyboard and a
mouse. The eyes are a picture of the whole screen, and what the program tells a screen reader over
AT-SPI: the names of things and where they stand. Nothing is asked of the program in another way.
"""

from __future__ import annotations

import ctypes
import os
import re
import shutil
import subprocess
import tempfile
import time
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from jeepney import DBusAddress, new_method_call
from jeepney.io.blocking import open_dbus_connection
from PIL import Image, ImageGrab

if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any, Self

    from jeepney.io.blocking import DBusConnection

__all__ = ["PATIENCE", "PROGRAMS", "Hand", "Screen", "missing", "until"]

T = TypeVar("T")

PATIENCE = 90.0
"""Seconds to wait for anything at the most: a loaded machine is slow."""

PROGRAMS = ("Xvfb", "xdotool", "dbus-daemon")
_A11Y = (
    Path("/usr/libexec/at-spi-bus-launcher"),
    Path("/usr/lib/at-spi2-core/at-spi-bus-launcher"),
)
_SIZE = 1380, 860
_START = 20.0


def missing() -> list[str]:
    """Name the programs that these tests need and that are not here."""
    lacking = [name for name in PROGRAMS if shutil.which(name) is None]
    return lacking if any(path.exists() for path in _A11Y) else [*lacking, _A11Y[0].name]


def until(find: Callable[[], T | None], what: str, patience: float = PATIENCE) -> T:
    """Wait until something is found that is not None or False, and give it."""
    end = time.monotonic() + patience
    while True:
        found = find()
        if found is not None and found is not False:
            return found
        assert time.monotonic() < end, f"it never came: {what}"
        time.sleep(0.05)


class Screen:
    """Xvfb on a free display, and a message bus of its own for what screen readers are told."""

    def __init__(self) -> None:
        # Short, as the name of a socket below it may only be so long.
        self._folder = Path(tempfile.mkdtemp(prefix="sw-"))
        self._processes: list[subprocess.Popen[str]] = []
        self.variables = {
            **{name: os.environ[name] for name in ("PATH", "PYTHONPATH") if name in os.environ},
            "HOME": str(self._folder),
            "XDG_RUNTIME_DIR": str(self._folder),
            "XDG_CACHE_HOME": str(self._folder / "cache"),
            "LC_ALL": "C.UTF-8",
        }
        try:
            self.name = self._show()
            self.variables["DISPLAY"] = self.name
            bus = ["dbus-daemon", "--session", "--nofork", "--print-address=1"]
            started = self._start(bus, stdout=subprocess.PIPE)
            assert started.stdout is not None
            self.variables["DBUS_SESSION_BUS_ADDRESS"] = started.stdout.readline().strip()
        except BaseException:
            self.close()
            raise

    def _show(self) -> str:
        """Start Xvfb, which takes a free number and tells it once it answers."""
        reading, writing = os.pipe()
        size = "{}x{}x24".format(*_SIZE)
        command = ["Xvfb", "-displayfd", str(writing), "-screen", "0", size]
        self._start([*command, "-nolisten", "tcp", "-noreset"], pass_fds=[writing])
        os.close(writing)
        with os.fdopen(reading, encoding="ascii") as told:
            number = told.readline().strip()
        assert number, "Xvfb did not start"
        return f":{number}"

    def _start(self, command: list[str], **more: Any) -> subprocess.Popen[str]:
        started = subprocess.Popen(
            command, env=self.variables, text=True, stderr=subprocess.DEVNULL, **more
        )
        self._processes.append(started)
        return started

    def picture(self) -> Image.Image:
        """Give what is on the screen."""
        return ImageGrab.grab(xdisplay=self.name).convert("RGB")

    def bus(self) -> DBusConnection:
        """Connect to the bus of screen readers, which is started by asking for it."""
        with open_dbus_connection(self.variables["DBUS_SESSION_BUS_ADDRESS"]) as session:
            where = DBusAddress("/org/a11y/bus", "org.a11y.Bus", "org.a11y.Bus")
            told = session.send_and_get_reply(new_method_call(where, "GetAddress"), timeout=_START)
        return open_dbus_connection(told.body[0])

    def close(self) -> None:
        """End what was started, the last first."""
        for process in reversed(self._processes):
            process.terminate()
            process.wait(_START)
            if process.stdout is not None:
                process.stdout.close()
        shutil.rmtree(self._folder, ignore_errors=True)

    def __enter__(self) -> Self:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()


# --- the hand ------------------------------------------------------------------------------------


class Hand:
    """The keyboard and the mouse of a screen."""

    def __init__(self, screen: Screen) -> None:
        self._screen = screen

    def do(self, *words: str | float) -> str:
        """Have xdotool do something, and give what it wrote."""
        command = ["xdotool", *(str(word) for word in words)]
        done = subprocess.run(
            command,
            env=self._screen.variables,
            capture_output=True,
            text=True,
            check=False,
            timeout=PATIENCE,
        )
        return done.stdout

    def window(self, process: int) -> str:
        """Wait for the window of a process, give it the keyboard, and name it by its number."""

        def shown() -> str | None:
            ids = self.do("search", "--onlyvisible", "--pid", process, "--name", "^Swatchwright$")
            return next(iter(re.findall(r"^\d+$", ids, re.MULTILINE)), None)

        found = until(shown, "a window")
        # There is no window manager here that would do it.
        self.do("windowfocus", "--sync", found)
        return found

    def press(self, *keys: str) -> None:
        """Press keys, one after another, each by its X name: ``Tab``, ``ctrl+3``."""
        self.do("key", "--delay", 40, *keys)

    def type(self, text: str) -> None:
        """Type a text."""
        self.do("type", "--delay", 40, text)

    def click(self, x: float, y: float) -> None:
        """Click with the left button."""
        self.do("mousemove", "--sync", round(x), round(y), "click", 1)

    def drag(self, start: tuple[float, float], end: tuple[float, float]) -> None:
        """Press the left button at one place, move in steps, and let go at another."""
        self.do("mousemove", "--sync", *(round(v) for v in start), "mousedown", 1)
        for step in range(1, 6):
            at = (a + (b - a) * step / 5 for a, b in zip(start, end, strict=True))
            self.do("mousemove", "--sync", *(round(v) for v in at))
            time.sleep(0.03)
        self.do("mouseup", 1)

    def ask_to_close(self, window: str) -> None:
        """Ask a window to close, as the button in its frame does (ICCCM, 4.2.8.1)."""
        x11 = ctypes.CDLL("libX11.so.6")
        x11.XOpenDisplay.restype = ctypes.c_void_p
        x11.XInternAtom.restype = ctypes.c_ulong
        display = ctypes.c_void_p(x11.XOpenDisplay(self._screen.name.encode()))
        message = _ClientMessage()
        message.type, message.format = 33, 32
        message.window = int(window)
        message.message_type = x11.XInternAtom(display, b"WM_PROTOCOLS", 0)
        message.data[0] = x11.XInternAtom(display, b"WM_DELETE_WINDOW", 0)
        room = ctypes.create_string_buffer(bytes(message), 24 * ctypes.sizeof(ctypes.c_long))
        x11.XSendEvent(display, ctypes.c_ulong(int(window)), 0, ctypes.c_long(0), room)
        x11.XFlush(display)
        x11.XCloseDisplay(display)


class _ClientMessage(ctypes.Structure):
    """XClientMessageEvent of Xlib."""

    _fields_ = (
        ("type", ctypes.c_int),
        ("serial", ctypes.c_ulong),
        ("send_event", ctypes.c_int),
        ("display", ctypes.c_void_p),
        ("window", ctypes.c_ulong),
        ("message_type", ctypes.c_ulong),
        ("format", ctypes.c_int),
        ("data", ctypes.c_long * 5),
    )
