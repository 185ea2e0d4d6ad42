"""The guide beside the bench: the pages that the documentation has, to be read while working."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt, QTimer, QUrl
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import (
    QDialog,
    QHBoxLayout,
    QLineEdit,
    QListWidget,
    QListWidgetItem,
    QSplitter,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.guide import START, GuidePage, guide_pages
from swatchwright.acts.guide_search import find_in_guide, read_guide
from swatchwright.desktop.widgets.guide_outside import GuideOutside
from swatchwright.desktop.widgets.guide_text import GuideText
from swatchwright.desktop.widgets.shelf_bits import button, label
from swatchwright.desktop.words import guide as words
from swatchwright.desktop.workers import Workshop
from swatchwright.language import language

__all__ = ["GuideWindow"]

_REST = 200
"""ms after the last letter typed before it is looked for."""
_MOST_BACK = 100


class GuideWindow(QDialog):
    """Pages at the left, the one that is read at the right; it stays open beside the bench."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle(words.GUIDE)
        self.setWindowFlag(Qt.WindowType.WindowMaximizeButtonHint)
        self.resize(1060, 720)
        self._pages = {page.name: page for page in guide_pages(language())}
        self._past: list[str] = []
        self._future: list[str] = []
        self.name = ""
        self.workshop = Workshop(self, threads=1)
        self._read, self._first_wanted = False, False
        self.text = GuideText()
        self.field = QLineEdit()
        self.list = QListWidget()
        self.told = label("", "small")
        self.back = button(words.BACK, self.go_back, tip=words.BACK_TIP)
        self.forward = button(words.FORWARD, self.go_forward, tip=words.FORWARD_TIP)
        self.smaller = button(
            words.SMALLER,
            lambda: self.text.magnify(-1),
            told=words.SMALLER_NAME,
            tip=words.SMALLER_TIP,
        )
        self.larger = button(
            words.LARGER, lambda: self.text.magnify(1), told=words.LARGER_NAME, tip=words.LARGER_TIP
        )
        self.outside = GuideOutside()
        self._typed = QTimer(self)
        self._typed.setSingleShot(True)
        self._typed.setInterval(_REST)
        self._lay_out()
        self._listen()
        self._list_pages()
        # Some 10 ms, once: words are found at once from then on.
        self.workshop.start("words", "", lambda _: read_guide(language()), self._was_read)

    def _lay_out(self) -> None:
        self.field.setObjectName("typed")
        self.field.setPlaceholderText(words.FIND_HINT)
        self.field.setAccessibleName(words.FIND)
        self.field.setClearButtonEnabled(True)
        self.list.setObjectName("contents")
        self.list.setAccessibleName(words.PAGES)
        self.list.setWordWrap(True)
        # A title that needs a second line in a narrower list gets it.
        self.list.setResizeMode(QListWidget.ResizeMode.Adjust)
        self.list.setSpacing(2)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        for one in (self.back, self.forward, self.smaller, self.larger):
            # Return in the field is for the field, and presses no button.
            one.setAutoDefault(False)
        left = QWidget()
        column = QVBoxLayout(left)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.field)
        column.addWidget(self.told)
        column.addWidget(self.list, 1)
        top = QHBoxLayout()
        top.addWidget(self.back)
        top.addWidget(self.forward)
        top.addStretch(1)
        top.addWidget(self.smaller)
        top.addWidget(self.larger)
        right = QWidget()
        rows = QVBoxLayout(right)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.addLayout(top)
        rows.addWidget(self.outside)
        rows.addWidget(self.text, 1)
        sides = QSplitter(Qt.Orientation.Horizontal)
        sides.setChildrenCollapsible(False)
        sides.setHandleWidth(14)
        sides.addWidget(left)
        sides.addWidget(right)
        sides.setStretchFactor(1, 1)
        sides.setSizes([260, 800])
        whole = QVBoxLayout(self)
        whole.setContentsMargins(14, 14, 14, 14)
        whole.addWidget(sides)

    def _listen(self) -> None:
        self.text.followed.connect(self.follow)
        self.field.textChanged.connect(lambda _: self._typed.start())
        self.field.returnPressed.connect(self._open_first)
        self._typed.timeout.connect(self._look)
        self.list.currentItemChanged.connect(self._open_item)
        for keys, act in (
            ("Alt+Left", self.go_back),
            ("Alt+Right", self.go_forward),
            ("Ctrl+F", self._to_field),
            ("Ctrl++", lambda: self.text.magnify(1)),
            ("Ctrl+=", lambda: self.text.magnify(1)),
            ("Ctrl+-", lambda: self.text.magnify(-1)),
        ):
            QShortcut(QKeySequence(keys), self).activated.connect(act)

    # --- going about -----------------------------------------------------------------------------

    def open_page(self, name: str = START) -> None:
        """Open a page; the last one is gone back to."""
        if name not in self._pages:
            name = START
        if name not in self._pages:
            self.told.setText(words.NO_GUIDE)
            return
        if self.name and name != self.name:
            self._past = [*self._past, self.name][-_MOST_BACK:]
            self._future.clear()
        self._show(name)

    def go_back(self) -> None:
        """Go back to the page before."""
        if self._past:
            self._future.append(self.name)
            self._show(self._past.pop())

    def go_forward(self) -> None:
        """Go again to the page that she came back from."""
        if self._future:
            self._past.append(self.name)
            self._show(self._future.pop())

    def follow(self, url: QUrl) -> None:
        """Follow a link within the guide; ask first where it leads out of it."""
        name = url.path().rpartition("/")[2].removesuffix(".md")
        if url.scheme() in {"", "file"} and name in self._pages:
            self.open_page(name)
        elif url.scheme() in {"http", "https"}:
            self.outside.ask(url)

    def _show(self, name: str, wanted: tuple[str, ...] = ()) -> None:
        page = self._pages[name]
        self.name = name
        self.outside.hide()
        self.setWindowTitle(words.title(page.title))
        self.text.show_page(page, wanted)
        self.back.setEnabled(bool(self._past))
        self.forward.setEnabled(bool(self._future))
        self._choose(name)

    # --- the list --------------------------------------------------------------------------------

    def _list_pages(self) -> None:
        """List all pages."""
        self._fill([(page, "") for page in self._pages.values()])
        self.told.setText("" if self._pages else words.NO_GUIDE)
        self.told.setVisible(not self._pages)

    def _was_read(self, _: int) -> None:
        """Look for what was typed before there was anything to look through."""
        self._read = True
        if self._first_wanted:
            self._open_first()
        elif self.field.text().strip() and not self._typed.isActive():
            self._look()

    def _look(self) -> None:
        """List the pages that hold what is in the field, or all where it is empty."""
        if not self.field.text().strip():
            self._list_pages()
            return
        if not self._read:
            return
        found = find_in_guide(self.field.text(), language())
        self._fill([(one.page, one.piece) for one in found])
        self.told.setText(words.found_line(len(found)) if found else words.NOTHING_FOUND)
        self.told.show()

    def _fill(self, rows: list[tuple[GuidePage, str]]) -> None:
        self.list.blockSignals(True)
        self.list.clear()
        for page, piece in rows:
            item = QListWidgetItem(f"{page.title}\n{piece}" if piece else page.title)
            item.setData(Qt.ItemDataRole.UserRole, page.name)
            self.list.addItem(item)
        self.list.blockSignals(False)
        self._choose(self.name)

    def _choose(self, name: str) -> None:
        """Show in the list which page is open."""
        self.list.blockSignals(True)
        row = next((row for row in range(self.list.count()) if self._name_at(row) == name), -1)
        self.list.setCurrentRow(row)
        self.list.blockSignals(False)

    def _name_at(self, row: int) -> str:
        return str(self.list.item(row).data(Qt.ItemDataRole.UserRole))

    def _open_item(self) -> None:
        row = self.list.currentRow()
        if row >= 0:
            self._open_found(self._name_at(row))

    def _open_first(self) -> None:
        """Open the first page that was found."""
        self._typed.stop()
        self._first_wanted = not self._read
        if self._first_wanted:
            return
        self._look()
        if self.field.text().strip() and self.list.count():
            self._open_found(self._name_at(0))

    def _open_found(self, name: str) -> None:
        """Open a page of the list, with what is in the field marked in it."""
        if self.name and name != self.name:
            self._past = [*self._past, self.name][-_MOST_BACK:]
            self._future.clear()
        self._show(name, tuple(self.field.text().split()))

    def _to_field(self) -> None:
        self.field.setFocus()
        self.field.selectAll()

    def sizeHint(self) -> QSize:
        """Ask for room for a column of text beside the list."""
        return QSize(1060, 720)
