"""Asking for a file: in the dialog of the system, or in Qt's own where the system has none."""

from __future__ import annotations

from pathlib import Path

from PySide6.QtCore import QEvent, QObject, QStandardPaths
from PySide6.QtWidgets import QApplication, QFileDialog, QHeaderView, QTreeView, QWidget

from swatchwright.desktop.letters import grown

__all__ = ["ask_open", "ask_save", "last_folder", "note_file"]

_SIZE = (900, 560)
_COLUMNS = (100, 110, 170)
"""Pixels of size, kind and date in a list of files; the name has the rest."""


class _Last:
    """Where a file was last opened or saved; None before the first."""

    folder: Path | None = None


def note_file(path: Path) -> None:
    """Note a file that was opened or saved: the next is asked for in its folder."""
    _Last.folder = path.absolute().parent


def last_folder() -> Path:
    """Give the folder of the file last opened or saved; where there is none, that of documents."""
    where = QStandardPaths.StandardLocation.DocumentsLocation
    documents = Path(QStandardPaths.writableLocation(where))
    likely = (_Last.folder, documents)
    return next((one for one in likely if one is not None and one.is_dir()), Path.home())


def ask_open(parent: QWidget, title: str, start: str, kinds: str) -> tuple[str, str]:
    """Ask for a file that is there.

    Parameters
    ----------
    parent
        The widget that asks.
    title
        What for.
    start
        The folder to begin in, or the file; empty for the last one.
    kinds
        The kinds of files, as Qt writes them.

    Returns
    -------
    The path, empty if she asks for none after all, and the kind.
    """
    with _Fitting():
        return _noted(QFileDialog.getOpenFileName(_bare(parent), title, start, kinds))


def ask_save(parent: QWidget, title: str, start: str, kinds: str) -> tuple[str, str]:
    """Ask where to save a file; the parameters and what is returned are those of `ask_open`.

    A name without a folder is proposed in the folder of the file last opened or saved.
    """
    proposed = str(last_folder() / start)
    with _Fitting():
        return _noted(QFileDialog.getSaveFileName(_bare(parent), title, proposed, kinds))


def _noted(answer: tuple[str, str]) -> tuple[str, str]:
    """Note the file that was chosen, if one was."""
    if answer[0]:
        note_file(Path(answer[0]))
    return answer


def _bare(widget: QWidget) -> QWidget:
    """Give the window below all others, which has no style of ours: its buttons would be blank."""
    above = widget.parentWidget()
    return widget.window() if above is None else _bare(above)


class _Fitting(QObject):
    """Gives Qt's own dialog a sensible size; that of a system never comes by here."""

    def __enter__(self) -> None:
        QApplication.instance().installEventFilter(self)  # type: ignore[union-attr]

    def __exit__(self, *_: object) -> None:
        self._rest()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Wait for the dialog to be shown."""
        if event.type() is QEvent.Type.Show and isinstance(watched, QFileDialog):
            self._rest()
            _fit(watched)
        return False

    def _rest(self) -> None:
        QApplication.instance().removeEventFilter(self)  # type: ignore[union-attr]


def _fit(dialog: QFileDialog) -> None:
    """Give a dialog room for its names, and letters as large as those of the window."""
    font = dialog.font()
    font.setPixelSize(grown(14))
    dialog.setFont(font)
    room = dialog.screen().availableSize()
    dialog.resize(min(grown(_SIZE[0]), room.width()), min(grown(_SIZE[1]), room.height()))
    for tree in dialog.findChildren(QTreeView):
        header = tree.header()
        header.setStretchLastSection(False)
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.Stretch)
        for column, wide in enumerate(_COLUMNS, start=1):
            header.resizeSection(column, grown(wide))
