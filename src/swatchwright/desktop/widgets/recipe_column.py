"""One recipe as a column: the colours touching, how near, what to pour.

That which was taken from a sample is told by what the sample said, and marked as hers.
"""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QGuiApplication
from PySide6.QtWidgets import (
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.recipes import MeasuredRecipe
from swatchwright.acts.taken_mix import TakenMix
from swatchwright.desktop import words
from swatchwright.desktop.letters import follow_letters, grown
from swatchwright.desktop.widgets.colour_field import ColourField
from swatchwright.desktop.widgets.share_bar import ShareBar
from swatchwright.desktop.widgets.told_label import told_label
from swatchwright.desktop.words import keeping
from swatchwright.desktop.words import taken as taken_words
from swatchwright.values import Lab

__all__ = ["RecipeColumn"]

_WIDTH, _GAP, _FOOT = 226, 6, 10


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
    sample_wanted()
        The sample that it was taken from is to be shown.
    """

    neighbours_wanted = Signal(object)
    correction_wanted = Signal(object)
    keep_wanted = Signal(int)
    sample_wanted = Signal()

    def __init__(
        self,
        number: int,
        measured: MeasuredRecipe,
        wanted: Lab,
        *,
        taken: TakenMix | None = None,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.taken = taken
        recipe = measured.recipe
        self.number, self.measured, self._kept = number, measured, False
        self._amounts: list[tuple[QLabel | None, QLabel]] = []
        self.setObjectName("sheet")
        follow_letters(self, lambda: self.setFixedWidth(grown(_WIDTH)))
        near = taken_words.HEADING if taken else f"{number}. {words.closeness_line(measured)}"
        self.setAccessibleName(near)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, _FOOT)
        rows.setSpacing(_GAP)
        self.field = ColourField(wanted, recipe.dry, recipe.wet)
        rows.addWidget(self.field)
        text = self._text = QVBoxLayout()
        text.setContentsMargins(13, 3, 13, 0)
        text.setSpacing(4)
        if taken is None:
            self._tell_found(measured, wanted)
        else:
            self._tell_taken(taken)
        counts = recipe.parts.counts if words.in_parts(measured) else ()
        names = tuple(paint.name for paint in recipe.paints)
        text.addWidget(ShareBar(recipe.shares, counts, measured.own_colours, names))
        text.addLayout(self._pour_rows(measured))
        cost = self._cost = told_label("", "small")
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
                text.addWidget(told_label(line, "small"))
        text.addLayout(self._buttons(number))
        rows.addLayout(text)
        rows.addStretch(1)
        self.show_amounts(measured)

    def _tell_found(self, measured: MeasuredRecipe, wanted: Lab) -> None:
        """Say how near a mix that was found comes, and which way it differs."""
        near = told_label(f"{self.number}.  {words.closeness_line(measured)}", "strong")
        near.setToolTip(words.figures_tip())
        self._text.addWidget(near)
        figures = told_label(words.figures_line(measured), "quiet")
        figures.setToolTip(words.figures_tip())
        way = words.way_line(measured, wanted)
        if way:
            self._text.addWidget(told_label(way))
        self._text.addLayout(self._keep_row(figures))

    def _tell_taken(self, taken: TakenMix) -> None:
        """Say whose it is, what its sample said of it, and which way it differs."""
        self._text.addLayout(self._keep_row(told_label(taken_words.HEADING, "strong")))
        self.keep.setToolTip(taken_words.KEPT_TIP)
        told = told_label(taken_words.line(taken), "quiet")
        told.setToolTip(f"<p>{taken.told}</p>{words.SCALE_TIP}")
        self._text.addWidget(told)
        way = taken_words.way(taken)
        if way:
            self._text.addWidget(told_label(way))

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
        self.copy.setAccessibleName(
            taken_words.COPY if self.taken else f"{words.COPY_MIX}, {number}"
        )
        self.copy.clicked.connect(self._copy_told)
        parts = (self.copy, self._sample_button()) if self.taken else self._found_buttons(number)
        buttons = QHBoxLayout()
        buttons.setSpacing(5)
        for button in parts:
            button.setObjectName("little")
            buttons.addWidget(button)
        return buttons

    def _sample_button(self) -> QPushButton:
        """Make the button that shows what the mix was taken from."""
        made = self.sample = QPushButton(taken_words.SAMPLE)
        made.setToolTip(f"<p>{taken_words.SAMPLE_TIP}</p>")
        made.clicked.connect(self.sample_wanted)
        return made

    def _found_buttons(self, number: int) -> tuple[QPushButton, ...]:
        """Make the buttons of a mix that was found, which goes on from what is computed."""
        self.nearby = QPushButton(words.NEARBY_SHORT)
        self.nearby.setAccessibleName(f"{words.NEIGHBOURS}, {number}")
        self.nearby.setToolTip(words.NEIGHBOURS)
        self.nearby.clicked.connect(lambda: self.neighbours_wanted.emit(self.measured))
        self.mend = QPushButton(words.PUT_RIGHT_SHORT)
        self.mend.setAccessibleName(f"{words.PUT_POT_RIGHT}, {number}")
        self.mend.setToolTip(words.PUT_POT_RIGHT)
        self.mend.clicked.connect(lambda: self.correction_wanted.emit(self.measured))
        return self.copy, self.nearby, self.mend

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
        name = keeping.keep_name(self.number, zone, kept=kept)
        self.keep.setAccessibleName(name if self.taken is None else taken_words.kept_name(zone))
        # What was taken is kept already for its zones; another takes it on the page Sample.
        self.keep.setVisible(kept or self.taken is None)

    def _copy_told(self) -> None:
        text = words.mix_text(self.number, self.measured)
        if self.taken is not None:
            text = taken_words.text(self.taken, self.measured)
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
            parts = told_label(words.parts_word(count) if counted else "", "strong")
            parts.setWordWrap(False)
            line = told_label("", "quiet")
            grid.addWidget(parts, 2 * i, 0, Qt.AlignmentFlag.AlignTop)
            grid.addWidget(told_label(paint.name), 2 * i, 1)
            grid.addWidget(line, 2 * i + 1, 0, 1, 2)
            self._amounts.append((None if counted else parts, line))
        return grid
