"""What a sample was mixed of: a mix of the bench, what was proposed last, or amounts typed in."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QComboBox,
    QDoubleSpinBox,
    QGridLayout,
    QHBoxLayout,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.mixes_in_use import mixes_in_use
from swatchwright.acts.sample import SAMPLE_VOLUME, Advice, NextMix
from swatchwright.acts.sample_taken import same_mix
from swatchwright.desktop.sample_desk import Mixed
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.piece_fields import choice, clear, label, number
from swatchwright.desktop.words import sample as words
from swatchwright.measures.shares import rounded_amounts
from swatchwright.shelf.jobs import Job

__all__ = ["MOST_LINES", "SampleMixed"]

MOST_LINES = 10
"""Mixes to choose from: what is to be brushed now, then what is kept, then the others."""


class SampleMixed(QWidget):
    """The mixes to choose from, and each paint's ml."""

    def __init__(self, session: Session) -> None:
        super().__init__()
        self._session = session
        self._offers: list[tuple[str, Mixed]] = []
        self._hold: tuple[tuple[str, Mixed], ...] = ()
        self.which = choice((), words.WHICH_MIX)
        self.which.setMinimumContentsLength(18)
        self.which.setSizeAdjustPolicy(
            QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon
        )
        self.head = label("", "strong")
        self._held = False
        self._picked: tuple[str, Mixed] | None = None
        self.amounts: dict[str, QDoubleSpinBox] = {}
        self._grid = QGridLayout()
        self._grid.setHorizontalSpacing(8)
        self._grid.setVerticalSpacing(3)
        self._grid.setColumnStretch(1, 1)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(6)
        top = QHBoxLayout()
        told = label(words.WHICH_MIX, wraps=False)
        told.setBuddy(self.which)
        top.addWidget(told)
        top.addWidget(self.which, 1)
        rows.addWidget(self.head)
        rows.addLayout(top)
        rows.addLayout(self._grid)
        self.which.activated.connect(self._pick)

    def hold(self, number: int, mixed: Mixed | None) -> None:
        """Show what a sample was mixed of as long as it is looked at; None for one to come."""
        if mixed is not None and not self._held:
            self._picked = None
        self._held = mixed is not None
        self.head.setText(words.sample_head(number, held=self._held))
        self.head.setVisible(self._held or number > 1)
        self._hold = () if mixed is None else ((words.AS_MIXED, mixed),)

    def offer(
        self,
        job: Job | None,
        advice: Advice | None,
        stripes: tuple[NextMix, ...] = (),
        *,
        beside: bool = False,
    ) -> None:
        """Offer the mixes there are; what is chosen stays chosen where it still is there.

        `beside` if the sample is another stripe of the last photo: then that is likelier than what
        was proposed after it.
        """
        likely = [_beside(stripes), _after(advice)] if beside else [_after(advice)]
        others = [] if beside else _beside(stripes)
        first = [offer for offers in likely for offer in offers]
        # The stripes stand after the mix that they are to be brushed beside.
        bench, kept = self._on_bench(), _kept(job)
        now = first or kept[:1] or bench[:1]
        offers = [*self._hold, *now, *kept, *others, *bench]
        offers = _without_likes([o for o in offers if self._on_shelf(o[1])])[:MOST_LINES]
        if offers == self._offers:
            self._enable()
            return
        before, there = self._offers, self.which.currentIndex()
        stays = there if offers[: len(before)] == before else 0
        if self._picked in offers:
            stays = offers.index(self._picked)
        self._offers = offers
        self.which.clear()
        for told, mixed in offers:
            self.which.addItem(told, mixed)
        stays = max(0, stays)
        self.which.setCurrentIndex(stays)
        # Amounts that she has corrected stay with the mix that they are of.
        if offers[stays : stays + 1] != before[there : there + 1] or there < 0:
            self._chosen(stays)
        self._enable()

    def _on_bench(self) -> list[tuple[str, Mixed]]:
        found = self._session.recipes
        if found is None:
            return []
        made = []
        for place, measured in enumerate(found.recipes, start=1):
            recipe = measured.recipe
            ids = tuple(paint.id for paint in recipe.paints)
            ml = rounded_amounts(recipe.shares, SAMPLE_VOLUME)
            told = words.mix_name(place, ids, self._session.shelf)
            made.append((told, tuple(zip(ids, ml, strict=True))))
        return made

    def _on_shelf(self, mixed: Mixed) -> bool:
        there = {paint.id for paint in self._session.shelf.paints}
        return all(id_ in there for id_, _ in mixed)

    def _pick(self, place: int) -> None:
        """Take the mix that she has chosen."""
        self._picked = self._offers[place] if 0 <= place < len(self._offers) else None
        self._chosen(place)

    def _chosen(self, place: int) -> None:
        clear(self._grid)
        self.amounts = {}
        if not 0 <= place < len(self._offers):
            return
        for row, (id_, ml) in enumerate(self._offers[place][1]):
            name = self._session.shelf.paint(id_).name
            field = number(0.0, 5000.0, " ml", step=0.1, decimals=1)
            field.setValue(ml)
            field.setAccessibleName(name)
            self.amounts[id_] = field
            self._grid.addWidget(field, row, 0, Qt.AlignmentFlag.AlignTop)
            self._grid.addWidget(label(name), row, 1)
        self._enable()

    def _enable(self) -> None:
        """Leave the amounts of a sample that is kept as they were."""
        for field in self.amounts.values():
            field.setEnabled(not self._held or self.which.currentIndex() != 0)

    def mixed(self) -> Mixed:
        """Give what stands there, without paints of which there is nothing."""
        return tuple((i, field.value()) for i, field in self.amounts.items() if field.value() > 0)


def _without_likes(offers: list[tuple[str, Mixed]]) -> list[tuple[str, Mixed]]:
    """Leave out what is of the same proportions as something before it."""
    found: list[tuple[str, Mixed]] = []
    for told, mixed in offers:
        if not any(same_mix(mixed, there) for _, there in found):
            found.append((told, mixed))
    return found


def _after(advice: Advice | None) -> list[tuple[str, Mixed]]:
    """Offer what was proposed last, the likelier first."""
    if advice is None or advice.stop is not None:
        return []
    jar = dict(advice.last.mixed)
    scale = sum(jar.values()) / sum(ml for _, ml in advice.pot)
    for step in advice.additions.steps:
        jar[step.paint.id] = jar.get(step.paint.id, 0.0) + step.ml * scale
    fresh = (words.PROPOSED, advice.fresh.mixed)
    added = (words.JAR, tuple((id_, round(ml, 1)) for id_, ml in jar.items()))
    beside = _beside(advice.beside, words.NEXT_STRIPES)
    if not advice.additions.steps:
        return [fresh, *beside]
    first = [fresh, added] if advice.better_fresh else [added, fresh]
    return [*first, *beside]


def _beside(
    stripes: tuple[NextMix, ...], told: tuple[str, ...] = words.STRIPES
) -> list[tuple[str, Mixed]]:
    """Offer what was to be brushed beside another mix."""
    return [(word, one.mixed) for word, one in zip(told, stripes, strict=False)]


def _kept(job: Job | None) -> list[tuple[str, Mixed]]:
    """Offer the mixes that are kept with the job."""
    made = []
    for recipe in mixes_in_use(job):
        ml = rounded_amounts([paint.share for paint in recipe.paints], SAMPLE_VOLUME)
        ids = [paint.paint for paint in recipe.paints]
        told = words.kept_name(recipe.zone, [paint.name for paint in recipe.paints])
        made.append((told, tuple(zip(ids, ml, strict=True))))
    return made
