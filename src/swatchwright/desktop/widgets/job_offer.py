"""Strips that offer in place: to keep paints that were opened, to begin a job for a photo."""

from __future__ import annotations

from PySide6.QtWidgets import QWidget

from swatchwright.desktop.keeping import Keeping
from swatchwright.desktop.widgets.offer import Offer
from swatchwright.desktop.words import keeping as words

__all__ = ["PaintsOffer", "PhotoOffer"]


class PaintsOffer(Offer):
    """Hidden until a shelf file is opened; then its paints can be kept or used for now only."""

    def __init__(self, keeping: Keeping, parent: QWidget | None = None) -> None:
        super().__init__(words.KEEP_PAINTS, words.ONLY_NOW, words.KEEP_PAINTS_TIP, parent)
        self._keeping, self._name = keeping, ""
        self._offered = keeping.session.shelf
        self.take.clicked.connect(self._keep)
        keeping.session.shelf_opened.connect(self._offer)
        keeping.session.shelf_changed.connect(self._look)

    def _offer(self, name: str) -> None:
        self._name, self._offered = name, self._keeping.session.shelf
        self.told.setText(words.opened_shelf(len(self._offered.paints), name))
        self.show()

    def _look(self) -> None:
        """Offer nothing any more once other paints are in use."""
        if self._keeping.session.shelf is not self._offered:
            self.hide()

    def _keep(self) -> None:
        self.hide()
        self._keeping.keep_paints(self._name)


class PhotoOffer(Offer):
    """Asks whose a photo is that was opened over a job in which mixes are kept already."""

    def __init__(self, keeping: Keeping, parent: QWidget | None = None) -> None:
        super().__init__(words.ANOTHER_JOB, words.THIS_JOB, words.ANOTHER_JOB_TIP, parent)
        self._desk = keeping.desk
        self.take.clicked.connect(self._begin_another)
        self._desk.job_laid.connect(self.hide)

    def offer(self) -> None:
        """Ask, if mixes are kept in the job on the bench."""
        job = self._desk.job
        self.setVisible(job is not None and bool(job.recipes))
        if job is not None:
            self.told.setText(words.other_photo(job.title, job.client))

    def _begin_another(self) -> None:
        self.hide()
        self._desk.put_away()
