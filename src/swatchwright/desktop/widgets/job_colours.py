"""The wanted colours of a job, each touching the mix that is kept for its zone."""

from __future__ import annotations

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QFrame,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.batches import take_off_mix, what_has_changed
from swatchwright.acts.finish_parts import besides_of
from swatchwright.acts.job_bench import volume_kept
from swatchwright.acts.jobs import new_job
from swatchwright.acts.kept_recipe import Changed
from swatchwright.acts.mixes_in_use import WHOLE_PIECE, of_no_zone, stood_down
from swatchwright.acts.sample_known import TaughtPaint
from swatchwright.acts.sample_tried import taught_in, tried_line
from swatchwright.colour.names import colour_name
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.colour_field import ColourField
from swatchwright.desktop.widgets.told_label import told_label
from swatchwright.desktop.words import FROM_MIX, UNTITLED
from swatchwright.desktop.words import brief as words
from swatchwright.desktop.words.bits import SCALE_TIP
from swatchwright.desktop.words.keeping import zone_heading
from swatchwright.shelf.jobs import Job, KeptRecipe, WantedColour
from swatchwright.shelf.shelf import Shelf

__all__ = ["JobColours"]

_FIELD = (210, 150)


class JobColours(QWidget):
    """A row for each zone: the touching fields, the parts, and what has changed since."""

    def __init__(self, session: Session, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session, self._desk = session, desk
        self._shown: tuple[object, ...] = ()
        self._taught: tuple[TaughtPaint, ...] = ()
        self.zones: dict[str, ZoneRow] = {}
        self.none = QLabel(words.NO_COLOURS)
        self.none.setObjectName("quiet")
        self.none.setWordWrap(True)
        self.go = QPushButton(words.TO_COLOUR_PAGE)
        self.go.clicked.connect(lambda: desk.page_wanted.emit("colour"))
        self._rows = QVBoxLayout(self)
        self._rows.setContentsMargins(0, 0, 0, 0)
        self._rows.setSpacing(12)
        self._rows.addWidget(self.none)
        self._rows.addWidget(self.go, 0, Qt.AlignmentFlag.AlignLeft)
        desk.paints_changed.connect(self._look)
        session.shelf_changed.connect(self._look)

    def show_job(self, job: Job) -> None:
        """Show the colours of a job; rows are made anew only where something is new."""
        chosen = {wanted.zone: job.chosen(wanted.zone) for wanted in job.wanted}
        volumes = {wanted.zone: volume_kept(job, wanted.zone) for wanted in job.wanted}
        unused = (*of_no_zone(job), *(one for one in [stood_down(job)] if one))
        tried = {zone: _tried(job, recipe) for zone, recipe in chosen.items()}
        besides, told = besides_of(job), tuple(tried.items())
        new = (job.id, job.wanted, tuple(chosen.items()), volumes, unused, told, besides)
        before, self._taught = self._taught, taught_in(job)
        if new == self._shown:
            if before != self._taught:
                self._look()
            return
        self._shown = new
        for row in self.zones.values():
            row.hide()
            row.deleteLater()
        self.zones = {
            w.zone: ZoneRow(
                *(self._desk, w, chosen[w.zone], volumes[w.zone], tried[w.zone]),
                used=chosen[w.zone] not in unused,
                besides=besides,
            )
            for w in job.wanted
        }
        for row in self.zones.values():
            row.another.clicked.connect(partial(self._begin_another, job, row.recipe))
            self._rows.addWidget(row)
        self.none.setVisible(not job.wanted)
        self.go.setVisible(not job.wanted)
        self._look()

    def _begin_another(self, job: Job, recipe: KeptRecipe | None, *_: object) -> None:
        """Begin a job for the same client, whose wanted colour is a kept mix as it dries."""
        if recipe is None:
            return
        session, desk, dry = self._session, self._desk, recipe.dry

        def begun(_: object) -> None:
            session.want(dry, FROM_MIX)
            desk.page_wanted.emit("colour")

        client, light = job.client, job.room_light
        desk.begin(
            lambda store: new_job(store, title=UNTITLED, client=client, room_light=light), begun
        )

    def _look(self) -> None:
        """Ask whether the paints of the kept mixes are still what they were."""
        for row in self.zones.values():
            row.look(self._session.shelf, self._taught)


def _tried(job: Job, recipe: KeptRecipe | None) -> str:
    """Say how near a sample of a mix came; empty where there is none."""
    parts = () if recipe is None else recipe.paints
    return tried_line(job, [(paint.paint, paint.share) for paint in parts]) if parts else ""


class ZoneRow(QFrame):
    """One zone of the piece: its wanted colour and its mix."""

    def __init__(
        self,
        desk: Desk,
        wanted: WantedColour,
        recipe: KeptRecipe | None,
        volume: float,
        tried: str = "",
        *,
        used: bool = True,
        besides: tuple[str, ...] = (),
    ) -> None:
        super().__init__()
        self._tried, self._used, self._besides = tried, used, besides
        self._desk, self._wanted, self.recipe, self._volume = desk, wanted, recipe, volume
        self.field = self._touching()
        self.changed = QLabel()
        self.changed.setObjectName("warn")
        self.changed.setWordWrap(True)
        self.changed.hide()
        self.taught = told_label("", "quiet")
        self.taught.hide()
        self.mixes = _button(words.SHOW_MIXES, words.SHOW_MIXES_TIP, words.mixes_name(wanted.zone))
        self.mixes.clicked.connect(self._show_mixes)
        self.off = _button(words.TAKE_OFF, words.TAKE_OFF_TIP, words.take_off_name(wanted.zone))
        self.off.clicked.connect(self._take_off)
        self.another = _button(words.ANOTHER, words.ANOTHER_TIP, words.another_name(wanted.zone))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(14)
        row.addWidget(self.field, 0, Qt.AlignmentFlag.AlignTop)
        row.addLayout(self._text(), 1)

    def _touching(self) -> ColourField:
        """Lay the wanted colour and the mix edge to edge; without a mix all is the wanted one."""
        lab, recipe = self._wanted.colour.lab, self.recipe
        if recipe is None:
            field = ColourField(lab, lab, lab, names=(words.WANTED, "", ""))
        else:
            field = ColourField(lab, recipe.dry, recipe.wet)
        field.setFixedSize(*_FIELD)
        field.setAccessibleName(
            words.field_name(recipe, self._wanted.zone, colour_name(lab), self._besides)
        )
        return field

    def _text(self) -> QVBoxLayout:
        rows = QVBoxLayout()
        rows.setSpacing(4)
        head = QHBoxLayout()
        head.addWidget(told_label(zone_heading(self._wanted.zone, self._besides), "strong"), 1)
        head.addWidget(self.mixes)
        head.addWidget(self.another)
        if self.recipe is None:
            self.another.hide()
        head.addWidget(self.off)
        rows.addLayout(head)
        rows.addWidget(told_label(colour_name(self._wanted.colour.lab), "quiet"))
        if self.recipe is None:
            rows.addWidget(told_label(words.NOT_CHOSEN))
        else:
            rows.addLayout(_parts(self.recipe, self._volume))
            volume = self._volume
            for told, tip in (
                (words.measured_for(self.recipe, volume) or words.kept_for(volume), ""),
                # What was tried tells more than what was computed before, and may say otherwise.
                ("" if self._tried else words.recipe_closeness(self.recipe), SCALE_TIP),
                (self._tried or words.UNTRIED, SCALE_TIP if self._tried else ""),
            ):
                if told:
                    line = told_label(told, "quiet")
                    line.setToolTip(tip)
                    rows.addWidget(line)
            if not self._used:
                whole = self._wanted.zone == WHOLE_PIECE
                rows.addWidget(told_label(words.NOT_IN_USE if whole else words.NO_SUCH_ZONE))
        rows.addWidget(self.changed)
        rows.addWidget(self.taught)
        rows.addStretch(1)
        return rows

    def look(self, in_use: Shelf, taught: tuple[TaughtPaint, ...]) -> None:
        """Say which paints of the mix are no longer what they were on the shelf that is in use."""
        recipe = self.recipe
        if recipe is not None:
            self._desk.ask(
                lambda store: what_has_changed(store, recipe, in_use=in_use, taught=taught),
                self._say,
            )

    def _say(self, changed: Changed) -> None:
        others = changed.others
        self.changed.setText(" ".join([words.PAINT_CHANGED, *others]) if others else "")
        self.changed.setVisible(bool(others))
        self.taught.setText(" ".join(changed.taught))
        self.taught.setVisible(bool(changed.taught))

    def _show_mixes(self) -> None:
        self._desk.colour_wanted.emit(self._wanted.zone)
        self._desk.page_wanted.emit("colour")

    def _take_off(self) -> None:
        zone = self._wanted.zone
        self._desk.edit_job(lambda store, id_: take_off_mix(store, id_, zone))


def _button(text: str, tip: str, name: str) -> QPushButton:
    button = QPushButton(text)
    button.setObjectName("little")
    button.setToolTip(tip)
    button.setAccessibleName(name)
    return button


def _parts(recipe: KeptRecipe, volume: float) -> QGridLayout:
    grid = QGridLayout()
    grid.setHorizontalSpacing(10)
    grid.setVerticalSpacing(2)
    grid.setColumnStretch(1, 1)
    for row, (parts, name) in enumerate(words.recipe_rows(recipe, volume)):
        count = told_label(parts, "strong")
        count.setWordWrap(False)
        grid.addWidget(count, row, 0, Qt.AlignmentFlag.AlignTop)
        grid.addWidget(told_label(name), row, 1)
    return grid
