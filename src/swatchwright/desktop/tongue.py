"""Which language the window speaks, settled before any word of it is imported."""

from __future__ import annotations

import os

from PySide6.QtCore import QLibraryInfo, QLocale, QTranslator
from PySide6.QtWidgets import QApplication

from swatchwright.acts.habits import habits
from swatchwright.language import ENGLISH, bind_units, language, languages, use_language

__all__ = ["LANGUAGE", "settle_language"]

LANGUAGE = "SWATCHWRIGHT_LANGUAGE"
"""The variable of the environment that names a language, before what was chosen in the window."""


def settle_language(application: QApplication) -> None:
    """Speak the language that was asked for, or else that of the computer, or else English.

    Numbers and dates in fields, and what Qt itself says, go with it. Call it before the modules
    of words are imported: their constants are said at import.
    """
    use_language(os.environ.get(LANGUAGE, "").strip() or habits().language or _of_computer())
    bind_units()
    QLocale.setDefault(_locale())
    if language() == ENGLISH:
        return
    translator = QTranslator(application)
    folder = QLibraryInfo.path(QLibraryInfo.LibraryPath.TranslationsPath)
    if translator.load(f"qtbase_{language()}", folder):
        application.installTranslator(translator)


def _of_computer() -> str:
    """Give the first language of the computer that is spoken here."""
    for told in QLocale.system().uiLanguages():
        if told.partition("-")[0] in languages():
            return told
    return ENGLISH


def _locale() -> QLocale:
    """Give the computer's locale if it is of the language in use, and the language's own if not."""
    system = QLocale.system()
    if system.name().partition("_")[0] == language():
        return system
    return QLocale("en_GB" if language() == ENGLISH else language())
