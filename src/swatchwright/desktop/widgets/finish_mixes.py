"""The mixes that a finish can be laid over, as a strip of touching fields to press one of."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QSizePolicy

from swatchwright.acts.finish_parts import LaidOn, MixOn, mix_of_colour, mixes_on, on_nothing
from swatchwright.acts.layering import BARE
from swatchwright.acts.recipes import MeasuredRecipe
from swatchwright.colour.doubt import give_or_take
from swatchwright.colour.names import colour_name
from swatchwright.desktop.letters import follow_letters, grown
from swatchwright.desktop.look import ink_on, write_on
from swatchwright.desktop.session import Session
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.even_rows import EvenRows
from swatchwright.desktop.words import finish as words
from swatchwright.desktop.words import finish_parts as part_words
from swatchwright.paint.layers import Stack
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
    on
        What of the piece is laid on over it.
    besides
        The parts with mixes of their own, where it is on all the others; else none.
    """

    word: str
    parts: tuple[tuple[str, float], ...]
    names: tuple[tuple[str, float], ...]
    dry: Lab
    wanted: Lab
    photo: float = 0.0
    zone: str = ""
    on: LaidOn = field(default_factory=LaidOn)
    besides: tuple[str, ...] = ()

    def follows(self, other: FinishMix) -> bool:
        """Tell whether it is another mix as it is looked at after layers went elsewhere."""
        same = replace(self, word="", zone="", on=LaidOn(), besides=())
        return same == replace(other, word="", zone="", on=LaidOn(), besides=()) and (
            bool({*self.on.zones} & {*other.on.zones}) or self.on.zones == other.on.zones
        )

    def places(self) -> tuple[tuple[tuple[str, ...], str], ...]:
        """Give where a layer over it may go, each with how that is told; none for no choice."""
        return tuple(
            (zones, part_words.place_word(zones, self.besides if zones == self.on.zones else ()))
            for zones in self.on.choices
        )


def mixes_to_finish(
    session: Session, job: Job | None, stack: Stack = BARE
) -> tuple[FinishMix, ...]:
    """Give the chosen mixes of the job, the one chosen last first, then the others found.

    A mix on parts that have other layers over them is given for each. Where several are chosen,
    mixes for a colour that is none of theirs are left out: they are on no part of the piece.
    """
    kept = mixes_on(job, stack)
    mixes = [_chosen(mix, _wanted(job, mix.recipe)) for mix in kept]
    found = session.recipes
    if found is None:
        return tuple(mixes)
    lab = found.wanted.lab
    own = mix_of_colour(job, lab, kept)
    here = on_nothing(kept) if own is None else own.on
    several = len({mix.recipe.zone for mix in kept}) > 1
    if several and own is None:
        return tuple(mixes)
    strange = bool(kept) and own is None
    for number, measured in enumerate(found.recipes, start=1):
        if not any(_same(mix.recipe, measured) for mix in kept):
            one = _found(number, measured, lab, here)
            if several and own is not None:
                word = part_words.mix_for(number, here.zones, own.besides)
                one = replace(one, word=word, zone=own.recipe.zone, besides=own.besides)
            elif strange:
                one = replace(one, word=part_words.mix_of_colour(number, colour_name(lab)))
            mixes.append(one)
    return tuple(mixes)


def _same(kept: KeptRecipe, measured: MeasuredRecipe) -> bool:
    recipe = measured.recipe
    ids = zip((p.id for p in recipe.paints), recipe.shares, strict=True)
    return {(p.paint, p.share) for p in kept.paints} == set(ids)


def _wanted(job: Job | None, recipe: KeptRecipe) -> KnownColour | None:
    """Give the colour that a kept recipe was found for, as surely as the job knows it."""
    colours = () if job is None else tuple(w.colour for w in job.wanted)
    return next((colour for colour in colours if colour.lab == recipe.wanted), None)


def _chosen(mix: MixOn, wanted: KnownColour | None) -> FinishMix:
    recipe, on = mix.recipe, mix.on
    word = words.chosen_word(recipe.zone)
    if mix.besides or (on.zones and not on.whole):
        word = part_words.chosen_for(on.zones, mix.besides)
    return FinishMix(
        word,
        tuple((p.paint, p.share) for p in recipe.paints),
        tuple((p.name, p.share) for p in recipe.paints),
        recipe.dry,
        recipe.wanted,
        0.0 if wanted is None else give_or_take(wanted),
        recipe.zone if on.whole or mix.besides or not on.zones else on.zones[0],
        on,
        mix.besides,
    )


def _found(number: int, measured: MeasuredRecipe, wanted: Lab, on: LaidOn) -> FinishMix:
    recipe = measured.recipe
    rows = list(zip(recipe.paints, recipe.shares, strict=True))
    return FinishMix(
        words.mix_word(number),
        tuple((paint.id, share) for paint, share in rows),
        tuple((paint.name, share) for paint, share in rows),
        recipe.dry,
        wanted,
        measured.confidence.photo,
        on=on,
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
        follow_letters(self, lambda: self.setFixedHeight(grown(_HEIGHT)))
        self.setCursor(Qt.CursorShape.PointingHandCursor)

    def sizeHint(self) -> QSize:
        """Ask for room for the word and its tick, in the font that the bench gives it."""
        return QSize(min(max(self._width(self._mix.word), _NARROWEST), _WIDEST), _HEIGHT)

    def minimumSizeHint(self) -> QSize:
        """Ask for so much that the word can be broken into two lines, and not within."""
        pieces = self._mix.word.split()
        breaks = range(1, len(pieces) + 1)
        lines = [(" ".join(pieces[:at]), " ".join(pieces[at:])) for at in breaks]
        narrowest = min(max(map(self._width, pair)) for pair in lines)
        return QSize(min(narrowest, _WIDEST), _HEIGHT)

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


class MixStrip(EvenRows):
    """The mixes edge to edge, in as few rows as there is room for.

    Signals
    -------
    picked(int)
        A mix was pressed.
    """

    picked = Signal(int)

    def __init__(self) -> None:
        super().__init__(0)
        self.setAccessibleName(words.MIXES)
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
                field.hide()
                field.deleteLater()
            for place, mix in enumerate(mixes):
                field = _MixField(mix)
                self._group.addButton(field, place)
            self.put(*self.fields())
        button = self._group.button(pick)
        if button is not None:
            button.setChecked(True)
