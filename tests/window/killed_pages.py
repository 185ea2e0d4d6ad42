"""Set something on each page, then be killed as by a power cut; run as a process of its own.

``python tests/window/killed_pages.py LAST`` with the store in ``SWATCHWRIGHT_HOME``: what is set on
the page LAST comes last, and the hand has not rested since.
"""

from __future__ import annotations

import os
import signal
import sys

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from swatchwright.desktop.window import Window
from window.killed_bench import settle
from window.set_on_pages import SET

if __name__ == "__main__":
    application = QApplication([])
    bench = Window()
    bench.resize(1280, 720)
    bench.show()
    settle(bench)
    bench.session.set_most_paints(2)
    bench.session.type_colour("46, 34, 24")
    settle(bench)
    QTest.mouseClick(bench.mix_side.columns()[0].keep, Qt.MouseButton.LeftButton)
    settle(bench)
    last = sys.argv[1]
    for page in (*(key for key in SET if key != last), last):
        bench.show_page(page)
        settle(bench)
        SET[page](bench)
    sys.stdout.write("killed now")
    sys.stdout.flush()
    os.kill(os.getpid(), signal.SIGKILL if hasattr(signal, "SIGKILL") else signal.SIGTERM)
