"""The right half of the bench: the mixes for the wanted colour, side by side.

First stands what was taken from a sample for it, where something was; then those that were found.
"""

from __future__ import annotations

from collections import deque
from dataclasses import replace

from PySide6.QtCore import QEvent, QObject, QSignalBlocker, Qt, QTimer
from PySide6.QtWidgets import (
    QButtonGroup,
    QDialog,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.recipes import MeasuredRecipe, Recipes, with_volume
from swatchwright.acts.taken_mix import TakenMix
from swatchwright.colour.names import colour_name
from swatchwright.desktop import words
from swatchwright.desktop.correct_window import CorrectWindow
from swatchwright.desktop.keeping import Keeping
from swatchwright.desktop.letters import follow_letters, grown
from swatchwright.desktop.money import follow_money
from swatchwright.desktop.neighbours_window import NeighboursWindow
from swatchwright.desktop.session import Session
from swatchwright.desktop.taken_desk import TakenDesk
from swatchwright.desktop.widgets.areas import ScrollArea
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.fields import NumberField
from swatchwright.desktop.widgets.first_look import MixesToCome
from swatchwright.desktop.widgets.job_keep_bar import KeepBar
from swatchwright.desktop.widgets.job_mix_pager import MixPager
from swatchwright.desktop.widgets.mixes_lacking import MixesLacking
from swatchwright.desktop.widgets.recipe_column import RecipeColumn

__all__ = ["MixSide"]

_LEAST_WIDTH = 240
_LEAST_FIELD, _WHOLE_FIELD, _MOST_FIELD = 60, 150, 320
"""Pixels of height of the colours: at least, where the page is scrolled, and at most."""
_TO_COME = 200
"""Pixels of height of what stands where mixes are to come, on a page that is scrolled."""
_BESIDE = 6
"""Pixels between the heading and what stands beside it."""


class MixSide(QWidget):
    """Shows the session's mixes, lets the amount be set, and one of them be kept with the job."""

    def __init__(self, session: Session, keeping: Keeping, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session, self._keeping = session, keeping
        self.heading = QLabel()
        self.heading.setObjectName("heading")
        self.heading.setWordWrap(True)
        self.lacking = MixesLacking(session)
        self.why = QLabel()
        self.why.setObjectName("quiet")
        self.why.setWordWrap(True)
        self.short = QLabel()
        self.short.setObjectName("strong")
        self.short.setToolTip(words.SCALE_TIP)
        self.short.setWordWrap(True)
        self.sample = QLabel()
        self.sample.setObjectName("quiet")
        self.sample.setToolTip(words.SCALE_TIP)
        self.sample.setWordWrap(True)
        self.volume = NumberField()
        self.counts = {2: QPushButton(words.TWO_PAINTS), 3: QPushButton(words.THREE_PAINTS)}
        self.typed = QLineEdit()
        self.area = ScrollArea()
        self.to_come = MixesToCome()
        self.keep_bar = KeepBar(keeping)
        self.pager = MixPager(self.area)
        self._head = BreakingRow(_BESIDE)
        self._row = QHBoxLayout()
        self._columns: list[RecipeColumn] = []
        self.hers: RecipeColumn | None = None
        self._taken = TakenDesk.of(session, keeping.desk)
        self._shown: Recipes | None = None
        self._to_lay = deque[MeasuredRecipe]()
        self._laying = QTimer(self)
        self._laying.timeout.connect(self._lay_next)
        self.opened: QDialog | None = None
        self._abreast = True
        self._lay_out()
        # Once the new letters have reached the columns.
        follow_letters(self, lambda: QTimer.singleShot(0, self, self._size_fields))
        session.recipes_changed.connect(self._show)
        session.shelf_changed.connect(self._show)
        session.pick_changed.connect(self._picked)
        session.proof_changed.connect(self._show_why)
        keeping.changed.connect(self._show_kept)
        self._taken.changed.connect(self._show_taken)
        self.lacking.shelf_wanted.connect(lambda: keeping.desk.page_wanted.emit("shelf"))
        self._show()
        follow_money(self, self._tell_prices)

    def columns(self) -> list[RecipeColumn]:
        """Give the columns of the mixes found that are laid, the closest first."""
        return list(self._columns)

    def _all(self) -> list[RecipeColumn]:
        """Give all columns from the left: hers, and those that were found."""
        return self._columns if self.hers is None else [self.hers, *self._columns]

    def laying(self) -> bool:
        """Tell whether columns are still being laid, or stand closer in view than they will."""
        close = self._row.geometry().width() < self._row.minimumSize().width()
        return self._laying.isActive() or (self.isVisible() and close)

    def _lay_out(self) -> None:
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(10)
        rows.addWidget(self._tools())
        head = self._head
        head.put(self.heading, stretches=True)
        head.put(self.pager, pushed=True, align=Qt.AlignmentFlag.AlignTop)
        rows.addWidget(head)
        rows.addWidget(self.lacking)
        rows.addWidget(self.why)
        rows.addWidget(self.short)
        rows.addWidget(self.keep_bar)
        holder = QWidget()
        holder.setObjectName("bench")
        holder.setLayout(self._row)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(12)
        self.area.setWidget(holder)
        self.area.setWidgetResizable(True)
        self.area.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAsNeeded)
        # The pager says which are in view and moves them; a small screen needs the bar's height.
        self.area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.area.setMinimumWidth(_LEAST_WIDTH)
        self.area.setAccessibleName(words.MIXES)
        self.area.installEventFilter(self)
        rows.addWidget(self.area, 1)
        rows.addWidget(self.to_come, 1)
        rows.addWidget(self.sample)

    def _tools(self) -> BreakingRow:
        row = BreakingRow()
        told = QLabel(words.AMOUNT)
        told.setBuddy(self.volume)
        self.volume.setAccessibleName(words.AMOUNT)
        self.volume.setToolTip(f"<p>{words.AMOUNT_TIP}</p>")
        self.volume.setRange(10, 20_000)
        self.volume.setDecimals(0)
        self.volume.setSingleStep(50)
        self.volume.setSuffix(" ml")
        self.volume.setValue(self._session.volume)
        self.volume.setKeyboardTracking(False)
        self.volume.valueChanged.connect(self._session.set_volume)
        row.put(told, self.volume)
        self.counts[2].setToolTip(words.TWO_PAINTS_TIP)
        self.counts[3].setToolTip(words.THREE_PAINTS_TIP)
        row.put(QLabel(words.PAINTS), *self.counts.values())
        group = QButtonGroup(self)
        for count, button in self.counts.items():
            button.setCheckable(True)
            button.setChecked(count == self._session.most_paints)
            group.addButton(button, count)
        group.idClicked.connect(self._session.set_most_paints)
        self.typed.setObjectName("typed")
        self.typed.setPlaceholderText(words.TYPE_COLOUR)
        self.typed.setAccessibleName(words.TYPE_COLOUR)
        self.typed.setToolTip(words.TYPE_COLOUR_TIP)
        self.typed.setMinimumWidth(132)
        self.typed.returnPressed.connect(self._colour_typed)
        row.put(self.typed, pushed=True)
        return row

    def _colour_typed(self) -> None:
        if self.typed.text().strip():
            self._session.type_colour(self.typed.text())

    def _picked(self) -> None:
        """Forget the typed colour once another is picked."""
        if self._session.typed is None:
            self.typed.clear()

    def _show(self) -> None:
        found = self._session.recipes
        shown, self._shown = self._shown, found
        if found is not None and not self.laying() and _only_amounts_differ(found, shown):
            self._show_asked()
            for column, measured in zip(self._columns, found.recipes, strict=True):
                column.show_amounts(measured)
            self._show_kept()
            return
        self.pager.show_columns(())
        self._laying.stop()
        self._to_lay.clear()
        for column in self._columns:
            column.hide()
            column.deleteLater()
        self._columns = []
        while self._row.count():
            self._row.takeAt(0)
        self._row.addStretch(1)
        if self.hers is not None:
            self._row.insertWidget(0, self.hers)
        self._show_asked()
        self._show_area()
        self.sample.setVisible(found is not None)
        self._show_why()
        self.short.setVisible(found is not None and found.shortfall is not None)
        if found is None:
            self._head.hide()
            self.lacking.show()
            self._show_kept()
            self._size_fields()
            return
        self._head.show()
        self.lacking.hide()
        wanted = found.wanted.lab
        confidence = found.recipes[0].confidence
        self.heading.setText(words.wanted_line(colour_name(wanted), found.wanted))
        if found.shortfall is not None:
            most, possible = self._session.most_paints, found.possible
            self.short.setText(words.shortfall_line(found.shortfall, most, possible=possible))
        self.sample.setText(words.sample_line(confidence))
        self._to_lay.extend(found.recipes)
        self._lay_next()
        self._laying.start(0)

    def _show_area(self) -> None:
        """Show the mixes, hers or found, or where they are to come."""
        there = self.hers is not None or self._session.recipes is not None
        self.area.setVisible(there)
        self.to_come.setVisible(not there)

    def _show_taken(self) -> None:
        """Stand what was taken from a sample first, or let it go; the others stay as they are."""
        mix, there = self._taken.mix, self.hers
        if mix is not None and there is not None and _only_amounts_of(mix, there.taken):
            there.show_amounts(mix.measured)
            return
        self.pager.show_columns(())
        if there is not None:
            self._row.removeWidget(there)
            there.hide()
            there.deleteLater()
            self.hers = None
        if mix is not None:
            self.hers = RecipeColumn(0, mix.measured, mix.wanted, taken=mix)
            self.hers.sample_wanted.connect(lambda: self._keeping.desk.page_wanted.emit("sample"))
            self._row.insertWidget(0, self.hers)
        self._show_area()
        self._show_kept()
        # As with those that are found, one after another: it has its height once it is dressed.
        self._laying.start(0)

    def _lay_next(self) -> None:
        """Lay the next mix: one at a time, for all six at once would hold the hand up."""
        found = self._session.recipes
        if found is None or not self._to_lay:
            self._laying.stop()
            # Now that the style has reached the columns, their text has its true height.
            self._size_fields()
            return
        number = len(self._columns) + 1
        column = RecipeColumn(number, self._to_lay.popleft(), found.wanted.lab)
        column.neighbours_wanted.connect(self.show_neighbours)
        column.correction_wanted.connect(self.show_correction)
        column.keep_wanted.connect(self._keeping.keep)
        self._row.insertWidget(len(self._all()), column)
        self._columns.append(column)
        self._show_kept()

    def _tell_prices(self) -> None:
        """Tell what the mixes cost in what the money is called now."""
        for column in self._all():
            column.show_amounts(column.measured)
        self._size_fields()

    def _show_asked(self) -> None:
        """Show what is asked of the mixes, which a job may have laid anew."""
        with QSignalBlocker(self.volume):
            self.volume.setValue(self._session.volume)
        self.counts[self._session.most_paints].setChecked(True)

    def _show_kept(self) -> None:
        """Show which mix is kept, and for what."""
        self.keep_bar.show_kept(there=self._session.recipes is not None)
        kept, zone = self._keeping.kept_number(), self._keeping.zone
        for column in self._columns:
            column.show_kept(kept=column.number == kept, zone=zone)
        if self.hers is not None and self.hers.taken is not None:
            self.hers.show_kept(kept=zone in self.hers.taken.zones, zone=zone)

    def show_neighbours(self, measured: MeasuredRecipe) -> None:
        """Show the neighbours of a mix in a window of their own."""
        self.opened = NeighboursWindow(self._session, measured, self)
        self.opened.show()

    def show_correction(self, measured: MeasuredRecipe) -> None:
        """Show what to add to a pot of a mix in a window of its own."""
        self.opened = CorrectWindow(self._session, self._keeping.desk, measured, self)
        self.opened.show()

    def _show_why(self) -> None:
        """Say why the first is first, and by how much another could be closer still."""
        found = self._session.recipes
        self.why.setVisible(found is not None)
        if found is not None:
            most, closer = self._session.most_paints, self._session.could_be_closer
            self.why.setText(words.why_line(found, closer, most))

    def set_abreast(self, *, abreast: bool) -> None:
        """Stand beside the photo, or below it, where the page is scrolled and shows all of them."""
        self._abreast = abreast
        self.to_come.setMinimumHeight(0 if abreast else _TO_COME)
        self._size_fields()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        """Give the colours their share of the height, the same in every column.

        What is said above the mixes takes from it as well as the window does.
        """
        if watched is self.area and event.type() == QEvent.Type.Resize:
            self._size_fields()
        return super().eventFilter(watched, event)

    def _size_fields(self) -> None:
        columns = self._all()
        if not columns:
            return
        self.pager.show_columns(columns, hers=self.hers is not None)
        frame = 2 * self.area.frameWidth()
        self.area.setMinimumWidth(max(_LEAST_WIDTH, columns[0].width() + frame))
        text = max(column.height_of_text() for column in columns)
        self.area.setMinimumHeight(0 if self._abreast else text + _WHOLE_FIELD + frame + 6)
        free = self.area.height() - text - frame - 6
        least = grown(_LEAST_FIELD)
        field = min(max(free, least), _MOST_FIELD)
        for column in columns:
            column.field.setFixedHeight(field)
            column.setMinimumHeight(field + text)
        # Wrapped labels claim more height than they take; ask for a bar only where it is needed.
        fits = free >= least
        policy = Qt.ScrollBarPolicy
        self.area.setVerticalScrollBarPolicy(
            policy.ScrollBarAlwaysOff if fits else policy.ScrollBarAsNeeded
        )


def _only_amounts_differ(found: Recipes, shown: Recipes | None) -> bool:
    """Tell whether mixes are those that are shown, for another volume."""
    return shown is not None and with_volume(found, shown.volume) == shown


def _only_amounts_of(mix: TakenMix, shown: TakenMix | None) -> bool:
    """Tell whether what was taken is what is shown, for another volume."""
    if shown is None:
        return False
    amounts = shown.measured.amounts
    return replace(mix, measured=replace(mix.measured, amounts=amounts)) == shown
