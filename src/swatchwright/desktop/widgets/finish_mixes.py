"""The mixes that a finish can be laid over, as a strip of touching fields to press one of."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QHBoxLayout, QSizePolicy, QWidget

from swatchwright.acts.mixes_in_use import mixes_in_use
from swatchwright.acts.recipes import MeasuredRecipe
from swatchwright.colour.doubt import give_or_take
from swatchwright.desktop.look import ink_on, write_on
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.words import finish as words
from swatchwright.shelf.jobs import Job, KeptRecipe
from swatchwright.values import KnownColour, Lab

__all__ = ["FinishMix", "MixStrip", "mixes_to_finish"]

_HEIGHT, _NARROWEST, _WIDEST, _BESIDE = 40, 92, 240, 26


@dataclass(frozen=True, slots=True)
class FinishMix:
    """A mix to lay something over.

    Parameters
    ----------
    word
        What it is called in the strip.
    parts
        Ids and shares of its paints.
    names
        Names and shares of its paints, to be told.
    dry, wanted
        Its dry colour, and the colour it was found for.
    photo
        How far that usually is from the cloth, CIEDE2000; 0 where it is exact or no longer known.
    zone
        The zone it was chosen for; empty where it was not chosen.
    """

    word: str
    parts: tuple[tuple[str, float], ...]
    names: tuple[tuple[str, float], ...]
    dry: Lab
    wanted: Lab
    photo: float = 0.0
    zone: str = ""


def mixes_to_finish(session: Session, job: Job | None) -> tuple[FinishMix, ...]:
    """Give the chosen mixes of the job, the one chosen last first, then the others found."""
    zones = {recipe.zone for recipe in mixes_in_use(job)}
    recipes = () if job is None else job.recipes
    kept = tuple(r for r in reversed(recipes) if r.chosen and r.zone in zones)
    mixes = [_chosen(recipe, _wanted(job, recipe)) for recipe in kept]
    found = session.recipes
    if found is not None:
        mixes += [
            _found(number, measured, found.wanted.lab)
            for number, measured in enumerate(found.recipes, start=1)
            if not any(_alike(recipe, measured) for recipe in kept)
        ]
    return tuple(mixes)


def _alike(kept: KeptRecipe, measured: MeasuredRecipe) -> bool:
    recipe = measured.recipe
    ids = zip((p.id for p in recipe.paints), recipe.shares, strict=True)
    return {(p.paint, p.share) for p in kept.paints} == set(ids)


def _wanted(job: Job | None, recipe: KeptRecipe) -> KnownColour | None:
    """Give the colour that a kept recipe was found for, as surely as the job knows it."""
    colours = () if job is None else tuple(w.colour for w in job.wanted)
    return next((colour for colour in colours if colour.lab == recipe.wanted), None)


def _chosen(recipe: KeptRecipe, wanted: KnownColour | None) -> FinishMix:
    return FinishMix(
        words.chosen_word(recipe.zone),
        tuple((p.paint, p.share) for p in recipe.paints),
        tuple((p.name, p.share) for p in recipe.paints),
        recipe.dry,
        recipe.wanted,
        0.0 if wanted is None else give_or_take(wanted),
        recipe.zone,
    )


def _found(number: int, measured: MeasuredRecipe, wanted: Lab) -> FinishMix:
    recipe = measured.recipe
    rows = list(zip(recipe.paints, recipe.shares, strict=True))
    return FinishMix(
        words.mix_word(number),
        tuple((paint.id, share) for paint, share in rows),
        tuple((paint.name, share) for paint, share in rows),
        recipe.dry,
        wanted,
        measured.confidence.photo,
    )


class _MixField(QAbstractButton):
    """One mix; ticked and framed when it is the one below the layers."""

    def __init__(self, mix: FinishMix) -> None:
        super().__init__()
        self._mix, self._colour = mix, screen_colour(mix.dry)
        self.setCheckable(True)
        self.setAccessibleName(words.mix_name(mix.word, mix.names, mix.dry))
        self.setToolTip(self.accessibleName())
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFixedHeight(_HEIGHT)
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def sizeHint(self) -> QSize:
        """Ask for room for the word and its tick, in the font that the bench gives it."""
        return QSize(min(max(self._width(self._mix.word), _NARROWEST), _WIDEST), _HEIGHT)

    def minimumSizeHint(self) -> QSize:
        """Ask for so much that the word can be broken into two lines, and not within."""
        widest = max(self._width(piece) for piece in self._mix.word.split())
        return QSize(min(widest, _WIDEST), _HEIGHT)

    def _width(self, word: str) -> int:
        self.ensurePolished()
        return self.fontMetrics().horizontalAdvance(f"✓ {word}") + _BESIDE

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the mix, its word, and a frame if it is chosen or has the focus."""
        del event
        painter = QPainter(self)
        painter.fillRect(self.rect(), self._colour)
        ink = ink_on(self._colour)
        tick = "✓ " if self.isChecked() else ""
        inside = self.rect().adjusted(11, 0, -9, 0)
        where = Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft
        broken = Qt.TextFlag.TextWordWrap
        write_on(painter, inside, int(where) | int(broken), f"{tick}{self._mix.word}", self._colour)
        if self.isChecked():
            painter.setPen(QPen(ink, 2))
            painter.drawRect(self.rect().adjusted(2, 2, -3, -3))
        if self.hasFocus():
            painter.setPen(QPen(ink, 1, Qt.PenStyle.DashLine))
            painter.drawRect(self.rect().adjusted(5, 5, -6, -6))
        painter.end()


class MixStrip(QWidget):
    """The mixes edge to edge.

    Signals
    -------
    picked(int)
        A mix was pressed.
    """

    picked = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.setAccessibleName(words.MIXES)
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(0)
        self._group = QButtonGroup(self)
        self._group.idClicked.connect(self.picked)
        self._shown: tuple[FinishMix, ...] = ()

    def fields(self) -> list[QAbstractButton]:
        """Give the fields, in order."""
        return list(self._group.buttons())

    def show_mixes(self, mixes: Sequence[FinishMix], pick: int) -> None:
        """Show these mixes, one of them picked."""
        if tuple(mixes) != self._shown:
            self._shown = tuple(mixes)
            for field in self.fields():
                self._group.removeButton(field)
                self._row.removeWidget(field)
                field.deleteLater()
            for place, mix in enumerate(mixes):
                field = _MixField(mix)
                self._group.addButton(field, place)
                self._row.addWidget(field)
        button = self._group.button(pick)
        if button is not None:
            button.setChecked(True)
