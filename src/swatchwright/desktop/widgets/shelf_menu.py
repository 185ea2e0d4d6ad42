"""Which paints are in use: a line that tells it, and the menu to choose others from."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QMenu, QWidget

from swatchwright.acts.stock import KeptShelf, kept_shelf
from swatchwright.acts.wish import how_many_wishes
from swatchwright.desktop import words
from swatchwright.desktop.files import ask_open, ask_save
from swatchwright.desktop.keeping import Keeping
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.elided_label import ElidedLabel
from swatchwright.desktop.words import keeping as keeping_words
from swatchwright.desktop.words import shelf as shelf_words
from swatchwright.desktop.words.wishes import count_line
from swatchwright.errors import MendableError
from swatchwright.shelf.csv_file import demo_shelf

__all__ = ["ShelfMenu", "ShelfTold"]


class ShelfMenu(QMenu):
    """Shows the shelf and what it reaches, and takes another one.

    Signals
    -------
    opening()
        A file was chosen to be opened as a shelf.
    """

    opening = Signal()

    def __init__(
        self,
        keeping: Keeping,
        show_shelf: Callable[[], None],
        show_reach: Callable[[], None],
        parent: QWidget,
    ) -> None:
        super().__init__(parent)
        self._session, self._keeping = keeping.session, keeping
        self.addAction(words.SHOW_SHELF, show_shelf)
        self.addAction(words.REACH, show_reach)
        self.addSeparator()
        self.addAction(words.OPEN_SHELF, self._ask_shelf)
        self.addAction(words.SAVE_SHELF, self._ask_save_shelf)
        self.addAction(keeping_words.YOUR_PAINTS, self._use_kept)
        self.addAction(words.DEMO_SHELF, lambda: keeping.use_for_now(demo_shelf()))

    def _use_kept(self) -> None:
        """Use the kept paints; where there are none, say how to come by some."""
        self._keeping.use_kept()

        def done(kept: KeptShelf) -> None:
            if not kept.stocked:
                self._session.workshop.failed.emit(MendableError(*shelf_words.NONE_KEPT))

        self._keeping.desk.ask(kept_shelf, done)

    def _ask_shelf(self) -> None:
        name, _ = ask_open(self.window(), words.OPEN_SHELF, "", words.SHELF_FILES)
        if name:
            self.opening.emit()
            self._session.open_shelf(Path(name))

    def _ask_save_shelf(self) -> None:
        asked = words.SAVE_SHELF, words.SHELF_FILE_NAME, words.SHELF_FILES
        name, _ = ask_save(self.window(), *asked)
        if name:
            self._session.save_example(Path(name))


class ShelfTold(ElidedLabel):
    """Says which shelf is in use, how many of its paints, and how many wishes there are."""

    def __init__(self, session: Session) -> None:
        super().__init__(asks=True)
        self._session = session
        self.setObjectName("quiet")
        session.shelf_changed.connect(self._show)
        session.wishes_changed.connect(self._show)
        self._show()

    def _show(self) -> None:
        shelf = self._session.shelf
        used = len(shelf.paints) - len(self._session.unused)
        wished = count_line(how_many_wishes(shelf, self._session.wishes))
        line = words.shelf_line(shelf.name, len(shelf.paints), used)
        line = f"{line}, {wished}" if wished else line
        self.say(line)
        self.setToolTip("\n".join([line, *shelf.notes]))
