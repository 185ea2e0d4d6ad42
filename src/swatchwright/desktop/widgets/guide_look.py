"""The typography of the guide: sizes, room and inks for a page that was set from Markdown."""

from __future__ import annotations

from collections.abc import Iterator

from PySide6.QtGui import (
    QBrush,
    QFont,
    QTextBlock,
    QTextBlockFormat,
    QTextCharFormat,
    QTextCursor,
    QTextDocument,
    QTextFormat,
    QTextFragment,
    QTextFrameFormat,
    QTextLength,
    QTextTable,
)
from PySide6.QtWidgets import QApplication

__all__ = ["EDGE", "TEXT", "blocks", "dress", "pieces"]

TEXT = 15
"""Pixels of the letters of a paragraph."""
EDGE = 26
"""Pixels about the text."""

_HEADINGS = {1: 26, 2: 19, 3: 16}
_ABOVE = {1: 0, 2: 18, 3: 14}
_CAPTION = 13
_COLUMNS = (40, 60)
"""Per cent of the width that the columns of a table of two have."""
_LINE = 135.0
"""Per cent of a letter's height from line to line."""


def dress(text: QTextDocument, scale: float) -> None:
    """Give headings, captions, links and tables their look.

    Parameters
    ----------
    text
        A page, in which a paragraph below a picture is its caption.
    scale
        How much larger than usual the letters are.
    """
    below_picture = False
    for block in blocks(text):
        pictured = any(piece.charFormat().isImageFormat() for piece in pieces(block))
        _dress_block(block, scale, pictured=pictured, caption=below_picture)
        _dress_links(text, block)
        below_picture = pictured
    for frame in text.rootFrame().childFrames():
        if isinstance(frame, QTextTable):
            _dress_table(frame, scale)


def blocks(text: QTextDocument) -> Iterator[QTextBlock]:
    """Give the paragraphs of a document in their order."""
    block = text.begin()
    while block.isValid():
        yield block
        block = block.next()


def pieces(block: QTextBlock) -> Iterator[QTextFragment]:
    """Give the pieces of a paragraph that look alike."""
    at = block.begin()
    while not at.atEnd():
        yield at.fragment()
        at += 1


def _dress_block(block: QTextBlock, scale: float, *, pictured: bool, caption: bool) -> None:
    level = block.blockFormat().headingLevel()
    cursor = QTextCursor(block)
    heights = QTextBlockFormat.LineHeightTypes
    shape = QTextBlockFormat()
    # A picture is as high as it is, and not a third more.
    kind = heights.SingleHeight if pictured else heights.ProportionalHeight
    shape.setLineHeight(_LINE, kind.value)
    # The cells of a table have room of their own.
    if cursor.currentTable() is None:
        shape.setTopMargin(_ABOVE.get(level, 0 if caption else 3) * scale)
        shape.setBottomMargin((4 if pictured else 9) * scale)
    cursor.mergeBlockFormat(shape)
    if level:
        _dress_letters(block, round(_HEADINGS.get(level, TEXT) * scale), QFont.Weight.DemiBold)
    elif caption:
        _dress_letters(block, round(_CAPTION * scale), QFont.Weight.Normal)


def _dress_letters(block: QTextBlock, size: int, weight: QFont.Weight) -> None:
    """Set the letters of a paragraph in a size, pixels, in place of that of its Markdown."""
    for start, length, letters in [
        (p.position(), p.length(), p.charFormat()) for p in pieces(block)
    ]:
        letters.clearProperty(QTextFormat.Property.FontSizeAdjustment.value)
        letters.setProperty(QTextFormat.Property.FontPixelSize.value, size)
        letters.setFontWeight(weight)
        cursor = QTextCursor(block.document())
        cursor.setPosition(start)
        cursor.setPosition(start + length, QTextCursor.MoveMode.KeepAnchor)
        cursor.setCharFormat(letters)


def _dress_links(text: QTextDocument, block: QTextBlock) -> None:
    """Underline links, in the ink of the text: nothing on the bench has a colour but paint."""
    letters = QTextCharFormat()
    letters.setForeground(QBrush(QApplication.palette().text().color()))
    letters.setFontUnderline(True)
    places = [(p.position(), p.length()) for p in pieces(block) if p.charFormat().isAnchor()]
    for start, length in places:
        cursor = QTextCursor(text)
        cursor.setPosition(start)
        cursor.setPosition(start + length, QTextCursor.MoveMode.KeepAnchor)
        cursor.mergeCharFormat(letters)


def _dress_table(table: QTextTable, scale: float) -> None:
    shape = table.format()
    shape.setBorder(1)
    shape.setBorderStyle(QTextFrameFormat.BorderStyle.BorderStyle_Solid)
    shape.setBorderBrush(QBrush(QApplication.palette().text().color()))
    shape.setBorderCollapse(True)
    shape.setCellPadding(6 * scale)
    shape.setCellSpacing(0)
    shape.setWidth(QTextLength(QTextLength.Type.PercentageLength, 100))
    if table.columns() == len(_COLUMNS):
        kind = QTextLength.Type.PercentageLength
        shape.setColumnWidthConstraints([QTextLength(kind, share) for share in _COLUMNS])
    shape.setTopMargin(6 * scale)
    shape.setBottomMargin(14 * scale)
    table.setFormat(shape)
