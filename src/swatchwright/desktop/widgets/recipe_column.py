"""One recipe as a column: the colours touching, how near, what to pour."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import (
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.recipes import MeasuredRecipe
from swatchwright.desktop import words
from swatchwright.desktop.letters import follow_letters, grown
from swatchwright.desktop.widgets.colour_field import ColourField
from swatchwright.desktop.widgets.share_bar import ShareBar
from swatchwright.desktop.words import keeping
from swatchwright.values import Lab

__all__ = ["RecipeColumn"]

_WIDTH, _GAP, _FOOT = 226, 7, 12


class RecipeColumn(QFrame):
    """A recipe beside the wanted colour.

    Signals
    -------
    neighbours_wanted(MeasuredRecipe)
        Its neighbours are to be shown.
    correction_wanted(MeasuredRecipe)
        A pot of it is to be put right.
    keep_wanted(int)
        It is the one for the job; its number.
    """

    neighbours_wanted = Signal(object)
    correction_wanted = Signal(object)
    keep_wanted = Signal(int)

    def __init__(
        self, number: int, measured: MeasuredRecipe, wanted: Lab, parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        recipe = measured.recipe
        self.number, self.measured, self._kept = number, measured, False
        self._amounts: list[tuple[QLabel | None, QLabel]] = []
        self.setObjectName("sheet")
        follow_letters(self, lambda: self.setFixedWidth(grown(_WIDTH)))
        self.setAccessibleName(f"{number}. {words.closeness_line(measured)}")
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, _FOOT)
        rows.setSpacing(_GAP)
        self.field = ColourField(wanted, recipe.dry, recipe.wet)
        rows.addWidget(self.field)
        text = self._text = QVBoxLayout()
        text.setContentsMargins(13, 3, 13, 0)
        text.setSpacing(5)
        text.addWidget(_label(f"{number}.  {words.closeness_line(measured)}", "strong"))
        figures = _label(words.figures_line(measured), "quiet")
        figures.setToolTip(words.figures_tip())
        way = words.way_line(measured, wanted)
        if way:
            text.addWidget(_label(way))
        text.addLayout(self._keep_row(figures))
        counts = recipe.parts.counts if words.in_parts(measured) else ()
        names = tuple(paint.name for paint in recipe.paints)
        text.addWidget(ShareBar(recipe.shares, counts, measured.own_colours, names))
        text.addLayout(self._pour_rows(measured))
        cost = self._cost = _label("", "small")
        if measured.price is not None:
            cost.setToolTip(f"<p>{keeping.IN_YOUR_MONEY}</p>")
            cost.setAccessibleDescription(keeping.IN_YOUR_MONEY)
        text.addWidget(cost)
        for line in (
            words.touch_line(measured),
            words.light_change_line(measured),
            words.finish_line(recipe.paints),
            words.known_line(recipe.paints, prices=measured.price is not None),
        ):
            if line:
                text.addWidget(_label(line, "small"))
        text.addLayout(self._buttons(number))
        rows.addLayout(text)
        rows.addStretch(1)
        self.show_amounts(measured)

    def show_amounts(self, measured: MeasuredRecipe) -> None:
        """Show the same recipe for another volume.

        The column stays what it is, so that a press that ends typing a volume, and falls on one of
        its buttons, is not lost.
        """
        self.measured = measured
        counted = words.in_parts(measured)
        for (parts, line), amount in zip(self._amounts, measured.amounts, strict=True):
            if parts is not None:
                parts.setText(words.millilitres(amount.ml))
            line.setText(words.amount_line(amount.ml if counted else None, amount.grams))
        self._cost.setText(words.cost_line(measured))
        self.copy.setText(words.COPY_SHORT)
        if len(measured.recipe.paints) > 1:
            self.copy.setToolTip(f"<p>{words.pour_text(measured)}</p>")

    def _buttons(self, number: int) -> QHBoxLayout:
        """Lay the buttons of what else can be done with the mix."""
        self.copy = QPushButton(words.COPY_SHORT)
        self.copy.setAccessibleName(f"{words.COPY_MIX}, {number}")
        self.copy.clicked.connect(lambda: self._copy(words.mix_text(number, self.measured)))
        self.nearby = QPushButton(words.NEARBY_SHORT)
        self.nearby.setAccessibleName(f"{words.NEIGHBOURS}, {number}")
        self.nearby.setToolTip(words.NEIGHBOURS)
        self.nearby.clicked.connect(lambda: self.neighbours_wanted.emit(self.measured))
        self.mend = QPushButton(words.PUT_RIGHT_SHORT)
        self.mend.setAccessibleName(f"{words.PUT_POT_RIGHT}, {number}")
        self.mend.setToolTip(words.PUT_POT_RIGHT)
        self.mend.clicked.connect(lambda: self.correction_wanted.emit(self.measured))
        buttons = QHBoxLayout()
        buttons.setSpacing(5)
        for button in (self.copy, self.nearby, self.mend):
            button.setObjectName("little")
            buttons.addWidget(button)
        return buttons

    def _keep_row(self, figures: QLabel) -> QHBoxLayout:
        """Lay the button that keeps the mix beside its figures, where it is seen first."""
        self.keep = QPushButton(keeping.KEEP)
        self.keep.setObjectName("little")
        self.keep.setCheckable(True)
        self.keep.setToolTip(keeping.KEEP_TIP)
        self.keep.clicked.connect(self._keep_pressed)
        row = QHBoxLayout()
        row.setSpacing(5)
        row.addWidget(figures, 1)
        row.addWidget(self.keep, 0, Qt.AlignmentFlag.AlignTop)
        return row

    def _keep_pressed(self) -> None:
        # Pressed is what is kept, not what was pressed: the store answers.
        self.keep.setChecked(self._kept)
        self.keep_wanted.emit(self.number)

    def show_kept(self, *, kept: bool, zone: str) -> None:
        """Show whether it is the mix that is kept for a zone."""
        self._kept = kept
        self.keep.setChecked(kept)
        self.keep.setText(keeping.KEPT if kept else keeping.KEEP)
        self.keep.setAccessibleName(keeping.keep_name(self.number, zone, kept=kept))

    def _copy(self, text: str) -> None:
        QGuiApplication.clipboard().setText(text)
        self.copy.setText(words.COPIED)

    def height_of_text(self) -> int:
        """Give the height that everything but the colours needs."""
        return self._text.totalHeightForWidth(grown(_WIDTH)) + 2 * _GAP + _FOOT

    def _pour_rows(self, measured: MeasuredRecipe) -> QGridLayout:
        """Lay out parts and name of each paint, and room for its amount."""
        grid = QGridLayout()
        grid.setHorizontalSpacing(10)
        grid.setVerticalSpacing(2)
        grid.setColumnStretch(1, 1)
        recipe = measured.recipe
        counted = words.in_parts(measured)
        for i, (paint, count) in enumerate(zip(recipe.paints, recipe.parts.counts, strict=True)):
            parts = _label(words.parts_word(count) if counted else "", "strong")
            parts.setWordWrap(False)
            line = _label("", "quiet")
            grid.addWidget(parts, 2 * i, 0, Qt.AlignmentFlag.AlignTop)
            grid.addWidget(_label(paint.name), 2 * i, 1)
            grid.addWidget(line, 2 * i + 1, 0, 1, 2)
            self._amounts.append((None if counted else parts, line))
        return grid


def _label(text: str, name: str = "") -> QLabel:
    label = QLabel(text)
    label.setObjectName(name)
    label.setWordWrap(True)
    label.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Minimum)
    label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
    return label
