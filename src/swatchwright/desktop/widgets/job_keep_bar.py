"""Which zone of the piece a mix is kept for, and which mix is kept for it."""

from __future__ import annotations

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QLabel,
    QPushButton,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.finish_parts import besides_of
from swatchwright.acts.keep_zone import free_zone, replaced_in
from swatchwright.acts.piece_job import PIECE_PART
from swatchwright.acts.sample_tried import taken_for
from swatchwright.colour.names import colour_name
from swatchwright.desktop.keeping import Keeping
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.fields import ChoiceField
from swatchwright.desktop.words import keeping as words
from swatchwright.desktop.words.wished import is_wished
from swatchwright.values import Lab

__all__ = ["KeepBar"]


class KeepBar(QWidget):
    """Says what is kept; where the piece has several zones, they can be chosen from.

    Where it has none yet and another colour would be replaced, it says what to do for that.

    Signals
    -------
    piece_wanted()
        The page of the piece is to be shown, to come back from it.
    """

    piece_wanted = Signal()

    def __init__(self, keeping: Keeping, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._keeping = keeping
        self._seen: tuple[str, Lab] | None = None
        self._moved: tuple[str, str, Lab] | None = None
        self._hers, self._parts = False, 1
        self.zone = ChoiceField()
        self.zone.setAccessibleName(words.KEEP_FOR)
        self.zone.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToContents)
        self.zone.activated.connect(self._choose)
        self._for = QLabel(words.KEEP_FOR)
        self._for.setBuddy(self.zone)
        self.told = QLabel()
        self.told.setWordWrap(True)
        self.told.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Minimum)
        row = BreakingRow()
        row.put(self._for, self.zone)
        row.put(self.told, stretches=True)
        self.to_piece = QPushButton(words.TO_PIECE)
        self.to_piece.setObjectName("little")
        self.to_piece.setToolTip(f"<p>{words.TO_PIECE_TIP}</p>")
        self.to_piece.setAccessibleDescription(words.TO_PIECE_TIP)
        self.to_piece.clicked.connect(self.piece_wanted)
        row.put(self.to_piece, pushed=True, align=Qt.AlignmentFlag.AlignVCenter)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.addWidget(row)
        # Until there are mixes there is nothing to keep.
        self.hide()

    def show_kept(self, *, there: bool) -> None:
        """Show the zones and what is kept for the one that is chosen, if mixes are there."""
        keeping = self._keeping
        zones, besides = keeping.zones(), besides_of(keeping.desk.job)
        self._follow_colour(zones)
        items = [(words.zone_item(zone, besides), zone) for zone in zones]
        shown = range(self.zone.count())
        if [(self.zone.itemText(i), self.zone.itemData(i)) for i in shown] != items:
            self.zone.clear()
            for told, zone in items:
                self.zone.addItem(told, zone)
        self.zone.setCurrentIndex(max(0, self.zone.findData(keeping.zone)))
        for widget in (self._for, self.zone):
            widget.setVisible(len(zones) > 1)
        # Always one line: buttons that moved once a mix is kept would be missed by the next press.
        lacking = self._lacking() if there else ""
        self.told.setText(lacking or self._told() or words.NOTHING_KEPT)
        self.to_piece.setVisible(bool(lacking))
        self.setVisible(there)

    def _replaced(self) -> Lab | None:
        """Give the colour that keeping a mix now would replace."""
        keeping, found = self._keeping, self._keeping.session.recipes
        if found is None or keeping.kept_number() is not None:
            return None
        return replaced_in(keeping.desk.job, keeping.zone, found.wanted.lab)

    def _lacking(self) -> str:
        """Say what to do so that another colour need not replace that of the whole piece."""
        job, found, replaced = self._keeping.desk.job, self._keeping.session.recipes, None
        if job is not None and found is not None and len(self._keeping.zones()) == 1:
            replaced = None if is_wished(found.wanted.origin) else self._replaced()
        if job is None or replaced is None:
            return ""
        first = words.PIECE_FIRST if job.document(PIECE_PART) is None else words.PART_FIRST
        return f"{first}\n{words.replaces_line(colour_name(replaced), self._keeping.zone)}"

    def _told(self) -> str:
        """Say what is kept for the zone, or what keeping a mix now would replace."""
        keeping, number = self._keeping, self._keeping.kept_number()
        job, replaced = keeping.desk.job, self._replaced()
        if replaced is not None:
            return words.replaces_line(colour_name(replaced), keeping.zone)
        taken = taken_for(job, keeping.zone)
        if taken is not None:
            return words.kept_from_sample(taken.number, taken.zone, added=taken.added)
        otherwise, besides = keeping.kept_otherwise(), besides_of(job)
        return words.kept_line(number, keeping.zone, otherwise=otherwise, besides=besides)

    def _choose(self, place: int) -> None:
        """Take the zone that she chose: it stays, also for a colour that is still being read."""
        session = self._keeping.session
        found, coming = session.recipes, session.coming
        self._hers = found is None or coming is None or coming != found.wanted
        self._moved = None
        self._keeping.set_zone(self.zone.itemData(place))

    def _follow_colour(self, zones: tuple[str, ...]) -> None:
        """Offer a zone without a colour to another colour than the one that is kept already.

        Only once, when there are mixes for another colour within one job, or its piece gets parts;
        and when the colour of before is wanted again, as by undo, its zone comes back.
        """
        keeping, found = self._keeping, self._keeping.session.recipes
        job = keeping.desk.job
        if found is None or job is None:
            return
        before, now = self._seen, (job.id, found.wanted.lab)
        self._seen = now
        parted, self._parts = self._parts == 1 < len(zones), len(zones)
        hers = self._hers
        if keeping.session.coming == found.wanted:
            self._hers = False
        if hers or before is None or before[0] != job.id or (before == now and not parted):
            return
        if is_wished(found.wanted.origin):
            # It is wanted in place of the colour of a part, and stays with that part.
            return
        moved, self._moved = self._moved, None
        if moved is not None and (moved[1], moved[2]) == (keeping.zone, found.wanted.lab):
            keeping.stand_at(moved[0])
            return
        if not keeping.session.history.by_hand:
            # Nothing was done by hand yet: a bench is being laid as it was left, colour by colour.
            return
        free = free_zone(job, zones, keeping.zone, found.wanted.lab)
        if free != keeping.zone:
            self._moved = (keeping.zone, free, before[1])
            keeping.stand_at(free)
