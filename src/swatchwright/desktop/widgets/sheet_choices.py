"""What is set for a sheet: sheet or label, its paper, its amounts, its zone and its day."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from PySide6.QtCore import QDate, Qt, Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QCheckBox,
    QComboBox,
    QFormLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.sheet import LABELS, Paper, Units
from swatchwright.acts.sheet_form import SheetForm
from swatchwright.desktop import words as common
from swatchwright.desktop.widgets.fields import DateField
from swatchwright.desktop.widgets.piece_fields import add_row, choice, form, number
from swatchwright.desktop.words import sheet as words
from swatchwright.measures.kitchen import Country

__all__ = ["SheetChoices"]

_MOST_ML = 100_000


class SheetChoices(QWidget):
    """Fields for all that can be chosen.

    Signals
    -------
    changed(SheetForm)
        Something else is wanted; the form with it.
    """

    changed = Signal(object)

    def __init__(self) -> None:
        super().__init__()
        self._form, self._showing, self._bench = SheetForm(), False, False
        self._zones: tuple[str, ...] = ()
        self.sheet, self.label = QPushButton(words.AS_SHEET), QPushButton(words.AS_LABEL)
        self.paper = choice((words.PAPERS[paper], paper) for paper in Paper)
        self.label_size = choice((words.size_item(size), size.name) for size in LABELS)
        self.fill = choice(((words.ONE, False), (words.PAGE_FULL, True)))
        self.zone = choice(())
        self.volume = number(0, _MOST_ML, words.ML, step=50)
        self.volume.setToolTip(f"<p>{words.VOLUME_TIP}</p>")
        self.ml, self.grams = QCheckBox(words.IN_ML), QCheckBox(words.IN_GRAMS)
        countries = ((words.country_item(country), country) for country in Country)
        self.spoons = choice(((words.NO_SPOONS, None), *countries))
        for box in (self.label_size, self.fill, self.spoons, self.zone):
            # A long word in a list is no reason for a wide column.
            box.setSizeAdjustPolicy(
                QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
            )
            box.setMinimumContentsLength(10)
        self.today, self.day = QCheckBox(words.TODAY), DateField()
        self._rows = form()
        self._lay_out()
        self._listen()
        self.show_form(self._form, (), bench=False)

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(10)
        kinds = QHBoxLayout()
        kinds.setSpacing(6)
        group = QButtonGroup(self)
        for button in (self.sheet, self.label):
            button.setCheckable(True)
            group.addButton(button)
            kinds.addWidget(button, 1)
        column.addLayout(kinds)
        column.addLayout(self._rows)
        for text, field in (
            (words.PAPER, self.paper),
            (words.SIZE, self.label_size),
            (words.HOW_MANY, self.fill),
            (words.ZONE, self.zone),
            (words.VOLUME, self.volume),
        ):
            add_row(self._rows, text, field)
        self.ml.setAccessibleName(words.ML_NAME)
        self.grams.setAccessibleName(words.GRAMS_NAME)
        _pair(self._rows, words.AMOUNTS, self.ml, self.grams)
        add_row(self._rows, words.SPOONS, self.spoons)
        self.today.setAccessibleName(words.TODAY_NAME)
        self.day.setAccessibleName(words.DATED)
        self.day.setCalendarPopup(True)
        self.day.setDisplayFormat(common.DAY_FORMAT)
        self.day.setDateRange(QDate(1970, 1, 1), QDate(2100, 12, 31))
        self.day.setMinimumHeight(26)
        _pair(self._rows, words.DATED, self.today, self.day)

    def _listen(self) -> None:
        for button in (self.sheet, self.label, self.ml, self.grams, self.today):
            button.clicked.connect(self._changed)
        for box in (self.paper, self.label_size, self.fill, self.zone, self.spoons):
            box.currentIndexChanged.connect(self._changed)
        self.volume.valueChanged.connect(self._changed)
        self.day.dateChanged.connect(self._changed)

    # --- showing ---------------------------------------------------------------------------------

    def show_form(self, wanted: SheetForm, zones: Sequence[str], *, bench: bool) -> None:
        """Show what is wanted, the zones that there are, and whether it is a mix of the bench."""
        self._form, self._bench, self._showing = wanted, bench, True
        self._show_zones(tuple(zones))
        (self.label if wanted.as_label else self.sheet).setChecked(True)
        for box, value in (
            (self.paper, wanted.paper),
            (self.label_size, wanted.label),
            (self.fill, wanted.fill),
            (self.zone, wanted.zone),
            (self.spoons, wanted.units.spoons),
        ):
            box.setCurrentIndex(max(0, box.findData(value)))
        self.volume.setSpecialValueText(words.VOLUME_OF_BENCH if bench else words.VOLUME_OF_JOB)
        if self.volume.value() != (wanted.volume or 0):
            self.volume.setValue(wanted.volume or 0)
        self.ml.setChecked(wanted.units.ml)
        self.grams.setChecked(wanted.units.grams)
        self._show_day(wanted.day)
        self._show_rows()
        self._showing = False

    def _show_zones(self, zones: tuple[str, ...]) -> None:
        if zones != self._zones or not self.zone.count():
            self._zones = zones
            self.zone.clear()
            self.zone.addItem(words.ALL_ZONES, None)
            for zone in zones:
                self.zone.addItem(words.zone_choice(zone), zone)

    def _show_day(self, day: str | None) -> None:
        self.today.setChecked(day is None)
        self.day.setEnabled(day is not None)
        told = QDate.currentDate() if day is None else QDate.fromString(day, Qt.DateFormat.ISODate)
        if told != self.day.date():
            self.day.setDate(told)

    def _show_rows(self) -> None:
        as_label = self._form.as_label
        self._rows.setRowVisible(self.paper, not as_label)
        self._rows.setRowVisible(self.label_size, as_label)
        self._rows.setRowVisible(self.fill, as_label)
        self._rows.setRowVisible(self.zone, len(self._zones) > 1)

    # --- choosing --------------------------------------------------------------------------------

    def _changed(self) -> None:
        if self._showing:
            return
        volume = self.volume.value()
        day = None
        if not self.today.isChecked():
            day = self.day.date().toString(Qt.DateFormat.ISODate)
        wanted = replace(
            self._form,
            as_label=self.label.isChecked(),
            label=self.label_size.currentData(),
            fill=self.fill.currentData(),
            paper=Paper(self.paper.currentData()),
            units=self._units(),
            volume=volume or None,
            zone=self.zone.currentData(),
            day=day,
        )
        others = wanted != self._form
        self.show_form(wanted, self._zones, bench=self._bench)
        if others:
            self.changed.emit(wanted)

    def _units(self) -> Units:
        """Give in what amounts are told; the last of them stays."""
        ml, grams, whose = self.ml.isChecked(), self.grams.isChecked(), self.spoons.currentData()
        spoons = None if whose is None else Country(whose)
        if ml or grams or spoons:
            return Units(ml=ml, grams=grams, spoons=spoons)
        last = replace(self._form.units, spoons=None)
        return last if last.ml or last.grams else Units(ml=True, grams=False)


def _pair(rows: QFormLayout, text: str, first: QWidget, second: QWidget) -> None:
    """Lay two fields beside each other under one word."""
    row = QHBoxLayout()
    row.setSpacing(10)
    row.addWidget(first)
    row.addWidget(second, 1)
    told = QLabel(text)
    told.setBuddy(first)
    rows.addRow(told, row)
