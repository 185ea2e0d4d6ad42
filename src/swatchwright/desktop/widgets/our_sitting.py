"""A sitting with the cards of the demonstration, to go through it once; nothing of it is kept."""

from __future__ import annotations

from swatchwright.acts.demo_cards import NO_SHELF, DemoCards
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.shelf_bits import button
from swatchwright.desktop.widgets.shelf_sitting import PAINTS, READ, ShelfSitting
from swatchwright.desktop.words import our_cards as words
from swatchwright.shelf.shelf import Shelf

__all__ = ["OurSitting"]


class OurSitting(ShelfSitting):
    """The steps of a sitting with paints and a photo that are there already.

    It has a shelf of its own with nothing on it. What she does is hers to undo by doing it anew: it
    is of no job, and goes with the cards when it is done.
    """

    def __init__(self, session: Session, cards: DemoCards) -> None:
        self._ours = cards
        super().__init__(session, ("our-card", "our-fit"))
        self.mark_rest = button(words.MARK_REST, self._mark_rest, tip=words.MARK_REST_TIP)
        self._leave_out()
        self.reading.put_before(self.mark_rest)
        self.reading.marker.changed.connect(self._photo_changed)
        self._photo_changed()
        self.show_sitting(cards.sitting)
        self.show_step(PAINTS)

    def _leave_out(self) -> None:
        """Say what it is, and leave out what is for cards of her own."""
        reading, result = self.reading, self.result
        for part in (self.file, reading.marker.open, self.choose.form):
            part.hide()
        # A card more is in no photo that there is.
        reading.one_photo = result.one_photo = True
        result.nothing_kept = words.OURS_DONE
        self.about.setText(words.OURS_HINT)
        self.about.show()
        self.leave.setText(words.PUT_OURS_AWAY)
        self.leave.setAccessibleName(words.PUT_OURS_AWAY)

    def show_step(self, step: int) -> None:
        """Show a step; the photo is there when the cards are to be read."""
        super().show_step(step)
        if self.step == READ and self.reading.marker.photo is None:
            self.reading.open_file(self._ours.path)

    def _shelf(self) -> Shelf:
        return NO_SHELF

    def _offers_ours(self) -> bool:
        return False

    def _photo_changed(self) -> None:
        self.mark_rest.setEnabled(self.reading.marker.photo is not None)

    def _mark_rest(self) -> None:
        if self.reading.all_marked():
            self.reading.say(words.ALL_MARKED)
        else:
            self.reading.mark_rest(self._ours.grey, self._ours.boxes)
