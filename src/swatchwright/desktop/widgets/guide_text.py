"""A page of the guide as it is read, its pictures as wide as the text."""

from __future__ import annotations

import re
from pathlib import Path

from PySide6.QtCore import QEvent, QSize, Qt, QTimer, QUrl, Signal
from PySide6.QtGui import (
    QFont,
    QImage,
    QImageReader,
    QResizeEvent,
    QTextCharFormat,
    QTextCursor,
    QTextDocument,
    QTextImageFormat,
)
from PySide6.QtWidgets import QApplication, QTextBrowser, QTextEdit

from swatchwright.acts.guide import GuidePage
from swatchwright.acts.guide_search import marks_in
from swatchwright.desktop.letters import growth
from swatchwright.desktop.widgets.guide_look import EDGE, TEXT, blocks, dress, pieces
from swatchwright.desktop.widgets.guide_pictures import GuidePictures
from swatchwright.desktop.words import guide as words

__all__ = ["GuideText"]

_COLUMN = 780
"""Pixels of a column of text at the most: longer lines are tiring to read."""
_STEP, _LEAST, _MOST = 1.2, 0.8, 2.5
_PICTURE = re.compile(r"^!\[([^\]]+)\]\(([^)]+)\)$", re.MULTILINE)


class GuideText(QTextBrowser):
    """Shows one page; links are told, not followed.

    Signals
    -------
    followed(QUrl)
        A link was pressed.
    """

    followed = Signal(QUrl)

    def __init__(self) -> None:
        super().__init__()
        self.setObjectName("guide")
        self.setAccessibleName(words.READING)
        self.setOpenLinks(False)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.page: GuidePage | None = None
        self.pictures = GuidePictures(self)
        self._scale = growth()
        self._wanted: tuple[str, ...] = ()
        self._later = QTimer(self)
        self._later.setSingleShot(True)
        self._later.setInterval(120)
        self._later.timeout.connect(self._fit)
        self.anchorClicked.connect(self.followed)
        self.pictures.ready.connect(self._show_picture)

    def show_page(self, page: GuidePage, wanted: tuple[str, ...] = ()) -> None:
        """Show a page from its top, or from the first of the words that were looked for."""
        self.page, self._wanted = page, wanted
        self._lay()
        self.moveCursor(QTextCursor.MoveOperation.Start)
        self.verticalScrollBar().setValue(0)
        self._mark()

    def magnify(self, steps: int) -> None:
        """Make the letters larger, or smaller for steps below 0."""
        scale = min(max(self._scale * _STEP**steps, _LEAST), _MOST)
        if scale != self._scale:
            self._scale = scale
            self._lay_again()

    @property
    def letters(self) -> int:
        """How large the letters of a paragraph are, pixels."""
        return self.document().defaultFont().pixelSize()

    @property
    def marked(self) -> int:
        """How many places are marked as found."""
        return len(self.extraSelections())

    # --- laying out ------------------------------------------------------------------------------

    def _lay(self) -> None:
        """Lay out the page anew, in the ink of the bench in use."""
        if self.page is None:
            return
        self.pictures.forget()
        font = QFont(self.font())
        font.setPixelSize(round(TEXT * self._scale))
        text = self.document()
        text.setBaseUrl(QUrl.fromLocalFile(str(self.page.path)))
        # What a picture shows stands below it too: a screen reader finds it there.
        text.setMarkdown(
            _PICTURE.sub(r"![\1](\2)\n\n\1", self.page.text),
            QTextDocument.MarkdownFeature.MarkdownDialectGitHub,
        )
        text.setDefaultFont(font)
        text.setIndentWidth(26 * self._scale)
        text.setDocumentMargin(EDGE)
        dress(text, self._scale)
        self._fit()

    def _lay_again(self) -> None:
        """Lay out the page anew and stay about where it was read."""
        bar = self.verticalScrollBar()
        share = bar.value() / max(bar.maximum(), 1)
        self._lay()
        self._mark()
        bar.setValue(round(share * bar.maximum()))

    # --- pictures --------------------------------------------------------------------------------

    def _fit(self) -> None:
        """Make pictures as wide as the text, or as they are where that is less, and fetch them."""
        if self.page is None:
            return
        room = self.viewport().width() - 2 * EDGE - 4
        for start, image in self._images():
            path = self.page.path.parent / image.name()
            whole = QImageReader(str(path)).size()
            if whole.isEmpty() or room < 1:
                continue
            width = min(room, whole.width())
            size = QSize(width, round(whole.height() * width / whole.width()))
            image.setWidth(size.width())
            image.setHeight(size.height())
            cursor = QTextCursor(self.document())
            cursor.setPosition(start)
            cursor.setPosition(start + 1, QTextCursor.MoveMode.KeepAnchor)
            cursor.setCharFormat(image)
            self.pictures.fetch(path, size * self.devicePixelRatio())

    def _images(self) -> list[tuple[int, QTextImageFormat]]:
        """Give where each picture of the page stands, and how it is shown."""
        return [
            (piece.position(), piece.charFormat().toImageFormat())
            for block in blocks(self.document())
            for piece in pieces(block)
            if piece.charFormat().isImageFormat()
        ]

    def loadResource(self, kind: int, name: QUrl | str) -> object:
        """Give a picture if it is there already, else an empty field; nothing else is loaded."""
        if kind != QTextDocument.ResourceType.ImageResource.value:
            return None
        return self.pictures.of(Path(QUrl(name).toLocalFile())) or _empty()

    def _show_picture(self, path: Path, image: QImage) -> None:
        """Put a picture that was fetched into its place."""
        kind = QTextDocument.ResourceType.ImageResource.value
        self.document().addResource(kind, QUrl.fromLocalFile(str(path)), image)
        self.viewport().update()

    # --- what was looked for ---------------------------------------------------------------------

    def _mark(self) -> None:
        """Mark the words that were looked for, and go to the first of them."""
        places = sorted(self._places(), key=QTextCursor.position)
        shown = QTextCharFormat()
        shown.setBackground(QApplication.palette().highlight())
        shown.setForeground(QApplication.palette().highlightedText())
        marks = []
        for at in places:
            mark = QTextEdit.ExtraSelection()
            mark.cursor, mark.format = at, shown
            marks.append(mark)
        self.setExtraSelections(marks)
        if places:
            first = QTextCursor(self.document())
            first.setPosition(places[0].position())
            self.setTextCursor(first)
            self.ensureCursorVisible()

    def _places(self) -> list[QTextCursor]:
        """Find each place where one of the words stands."""
        found = []
        for start, end in marks_in(self.document().toPlainText(), " ".join(self._wanted)):
            at = QTextCursor(self.document())
            at.setPosition(start)
            at.setPosition(end, QTextCursor.MoveMode.KeepAnchor)
            found.append(at)
        return found

    # --- Qt --------------------------------------------------------------------------------------

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Keep the text in a column in the middle, and the pictures as wide as it."""
        edge = max(0, (self.width() - _COLUMN - 2 * EDGE) // 2)
        self.setViewportMargins(edge, 0, edge, 0)
        super().resizeEvent(event)
        self._later.start()

    def changeEvent(self, event: QEvent) -> None:
        """Take the ink of another bench."""
        super().changeEvent(event)
        # It changes while it is being made, too.
        if event.type() == QEvent.Type.StyleChange and getattr(self, "page", None) is not None:
            QTimer.singleShot(0, self, self._lay_again)


def _empty() -> QImage:
    empty = QImage(1, 1, QImage.Format.Format_ARGB32)
    empty.fill(Qt.GlobalColor.transparent)
    return empty
