"""The text of a code pasted in, and the recipe that it holds."""

from __future__ import annotations

from PySide6.QtCore import QMimeData, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import (
    QGridLayout,
    QPlainTextEdit,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.sheet import CodeRecipe, read_code
from swatchwright.acts.sheet_on_shelf import OnShelf, measures_told
from swatchwright.colour.convert import in_srgb
from swatchwright.desktop import words as common
from swatchwright.desktop.widgets.finish_bands import Band, paint_bands
from swatchwright.desktop.widgets.piece_fields import clear, label
from swatchwright.desktop.words import sheet as words
from swatchwright.desktop.words.seen import fields_told
from swatchwright.errors import MendableError
from swatchwright.shelf.demo_names import name_in_use
from swatchwright.values import Lab

__all__ = ["SheetCode", "TouchingFields"]

_MOST_LETTERS = 20_000


class SheetCode(QWidget):
    """A field for the text, and below it touching colours, parts and names.

    Signals
    -------
    read(CodeRecipe)
        A recipe was read.
    wanted(Lab)
        The colour of the recipe is wanted.
    """

    read = Signal(object)
    wanted = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self.recipe: CodeRecipe | None = None
        self.text = _Pasted()
        self.text.setAccessibleName(words.CODE_FIELD)
        self.text.setPlaceholderText(words.CODE_HINT)
        self.text.setTabChangesFocus(True)
        self.text.setFixedHeight(76)
        self.trouble = label("", "warn")
        self.head = label("", "strong")
        self.fields = TouchingFields()
        self.on_shelf = label("", "quiet")
        self.on_shelf.setToolTip(common.SCALE_TIP)
        self.want = QPushButton(words.WANT)
        self.want.setToolTip(f"<p>{words.WANT_TIP}</p>")
        self.told = label("", "quiet")
        self._parts = QGridLayout()
        self._lay_out()
        self.text.textChanged.connect(self._read)
        self.want.clicked.connect(self._want)
        self._show()

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        self._parts.setHorizontalSpacing(10)
        self._parts.setVerticalSpacing(3)
        self._parts.setColumnStretch(1, 1)
        column.addWidget(self.text)
        for widget in (self.trouble, self.head, self.fields):
            column.addWidget(widget)
        column.addLayout(self._parts)
        for below in (self.on_shelf, self.want, self.told):
            column.addWidget(below)

    # --- reading ---------------------------------------------------------------------------------

    def _read(self) -> None:
        text = self.text.toPlainText()
        self.recipe = None
        self.trouble.setText("")
        if text.strip():
            try:
                self.recipe = read_code(text)
            except MendableError as error:
                self.trouble.setText(words.trouble(error))
        self._show()
        if self.recipe is not None:
            self.read.emit(self.recipe)

    def colour(self) -> Lab | None:
        """Give the colour of the recipe: how it dried, else what was wanted; None for neither."""
        recipe = self.recipe
        return None if recipe is None else recipe.dry or recipe.wanted

    def _want(self) -> None:
        if (lab := self.colour()) is not None:
            self.told.setText(words.WANTED_NOW)
            self.told.show()
            self.wanted.emit(lab)

    # --- showing ---------------------------------------------------------------------------------

    def _show(self) -> None:
        recipe = self.recipe
        self.trouble.setVisible(bool(self.trouble.text()))
        self.head.setVisible(recipe is not None)
        self.want.setVisible(recipe is not None)
        self.on_shelf.hide()
        self.told.setVisible(recipe is not None and self.colour() is None)
        self.told.setText(words.NO_COLOUR)
        clear(self._parts)
        if recipe is not None:
            self.head.setText(words.code_head(recipe))
            self.want.setEnabled(self.colour() is not None)
            self._show_parts(recipe)
        self._show_fields(None)

    def _show_parts(self, recipe: CodeRecipe) -> None:
        measures = measures_told(recipe)
        for row, (paint, told) in enumerate(zip(recipe.paints, measures, strict=True)):
            parts = label(told, "strong", wraps=False)
            name = label(name_in_use(paint.id, paint.name) or paint.id)
            name.setToolTip(paint.id)
            self._parts.addWidget(parts, row, 0, Qt.AlignmentFlag.AlignTop)
            self._parts.addWidget(name, row, 1)

    def show_on_shelf(self, recipe: CodeRecipe, found: OnShelf) -> None:
        """Show what the recipe gives with the paints of the shelf."""
        if recipe != self.recipe:
            return
        self.on_shelf.setText(words.shelf_line(found))
        self.on_shelf.show()
        self._show_fields(found.dry)

    def _show_fields(self, of_shelf: Lab | None) -> None:
        recipe = self.recipe
        told = (
            (words.CODE_WANTED, None if recipe is None else recipe.wanted),
            (words.CODE_DRY, None if recipe is None else recipe.dry),
            (words.SHELF_DRY, of_shelf),
        )
        self.fields.show_colours(tuple((word, lab) for word, lab in told if lab is not None))


class TouchingFields(QWidget):
    """Colours below each other, edge to edge, each with its word; out of view without any."""

    def __init__(self) -> None:
        super().__init__()
        self.colours: tuple[tuple[str, Lab], ...] = ()
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)

    def show_colours(self, colours: tuple[tuple[str, Lab], ...]) -> None:
        """Show these."""
        self.colours = colours
        self.setVisible(bool(colours))
        self.setAccessibleName(fields_told(colours))
        beyond = not all(in_srgb(lab) for _, lab in colours)
        self.setToolTip(common.NOT_ON_SCREEN if beyond else "")
        self.updateGeometry()
        self.update()

    def sizeHint(self) -> QSize:
        """Ask for a good size."""
        return QSize(240, 54 * len(self.colours))

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint them."""
        del event
        painter = QPainter(self)
        bands = tuple(Band(lab, word) for word, lab in self.colours)
        if bands:
            paint_bands(painter, self.rect(), bands)
        painter.end()


class _Pasted(QPlainTextEdit):
    """A field for plain text that takes no more of what is pasted than a code can have."""

    def insertFromMimeData(self, source: QMimeData) -> None:
        """Take the beginning of what is far too long: it is told that it is no code."""
        if source.hasText():
            self.insertPlainText(source.text()[: _MOST_LETTERS + 1])
