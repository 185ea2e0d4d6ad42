"""Qt is there, and the window is really tested: silence here would look like success."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6 import QtGui, QtWidgets

if TYPE_CHECKING:
    from conftest import WindowTests

WINDOW_TESTS_AT_LEAST = 1000
"""Raise it as tests are added under tests/window; lower it only with the tests themselves."""


def test_qt_imports(qapp: QtWidgets.QApplication) -> None:
    """Qt loads with its libraries and gives an application with a platform and a font."""
    assert isinstance(qapp, QtWidgets.QApplication)
    assert QtGui.QGuiApplication.platformName()
    assert QtGui.QFontDatabase.families()


def test_the_window_tests_are_there(window_tests: WindowTests) -> None:
    """A run of all tests has collected as many tests of the window as there are known to be."""
    assert window_tests.count >= WINDOW_TESTS_AT_LEAST or not window_tests.whole_suite
