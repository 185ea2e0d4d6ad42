"""The forward side of a finish: the big picture of it above, its layers and cautions below."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QFrame,
    QHBoxLayout,
    QLabel,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.finish_values import Look
from swatchwright.acts.in_light import ROOM
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.widgets.areas import ScrollArea
from swatchwright.desktop.widgets.breaking_row import BreakingRow
from swatchwright.desktop.widgets.columns import Columns
from swatchwright.desktop.widgets.finish_build_up import BuildUpPicture
from swatchwright.desktop.widgets.finish_piece import FinishPiece
from swatchwright.desktop.widgets.finish_steps import FinishSteps
from swatchwright.desktop.widgets.finish_told import FinishTold
from swatchwright.desktop.widgets.layer_list import LayerList
from swatchwright.desktop.words import finish as words
from swatchwright.desktop.words import finish_seen as seen
from swatchwright.desktop.words import finish_ways as ways
from swatchwright.desktop.words.bits import SCALE_TIP
from swatchwright.desktop.words.compare import LIGHTS
from swatchwright.values import Lab

__all__ = ["FinishLayers"]

_APART = 12
"""Pixels before what is seen in another way than the lights beside it."""
_LAYERS = 640
"""Pixels without which what is said of the layers goes below them."""
_ASIDE = 320
"""Pixels of what is beside them: a row of a layer breaks before this grows narrower."""
_FEW, _MANY = 1, 6
"""How much of the room the layers have beside the picture's 5, while there are none, and else."""


class FinishLayers(QWidget):
    """What each layer does, and the layers to be set.

    Signals
    -------
    light_chosen(Light)
        It is to be seen in a light that was chosen by hand.

    Parameters
    ----------
    piece
        The piece, beside what the layers do to one mix of it.
    """

    light_chosen = Signal(object)

    def __init__(self, piece: FinishPiece) -> None:
        super().__init__()
        self.of_room = QLabel()
        self.of_room.setToolTip(seen.OF_ROOM_TIP)
        self.of_room.setObjectName("small")
        self.of_room.hide()
        self._room: Light | None = None
        self.steps, self.piece = FinishSteps(), piece
        self.layers = LayerList()
        self.build_up = BuildUpPicture()
        self.result = QLabel()
        self.result.setWordWrap(True)
        self.result.setToolTip(SCALE_TIP)
        self.told = FinishTold()
        self.mind = QLabel()
        self.mind.setWordWrap(True)
        self.mind.setAlignment(Qt.AlignmentFlag.AlignTop)
        self.lights = {light: QPushButton(LIGHTS[light]) for light in ROOM}
        self.wet = QPushButton(seen.WET)
        self._look: Look | None = None
        self._light: Light | None = Light.D65
        self._photo = 0.0
        self._of_shelf: tuple[str, ...] = ()
        self.clear_wish = QPushButton(ways.CLEAR_WISH)
        self.figures = QPushButton(words.FIGURES)
        self._rows = rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(8)
        rows.addWidget(self._views())
        pictures = QHBoxLayout()
        pictures.setSpacing(12)
        pictures.addWidget(self.steps, 1)
        pictures.addWidget(self.piece)
        rows.addLayout(pictures, 5)
        rows.addWidget(self.result)
        rows.addWidget(self.told)
        below = Columns(18)
        below.put(self.layers, stretch=17, least=_LAYERS, unbroken=self.layers.unbroken)
        below.put(self._aside(), stretch=10, least=_ASIDE)
        rows.addWidget(below, _FEW)
        # Below each other the page is scrolled: the picture need not give way to what is below it.
        below.turned.connect(lambda abreast: self.steps.set_whole(whole=not abreast))

    def _views(self) -> BreakingRow:
        row = BreakingRow(6)
        before: tuple[QWidget, ...] = (QLabel(seen.DRY_IN),)
        group = QButtonGroup(self)
        for light, button in self.lights.items():
            button.setToolTip(f"<p>{seen.light_tip(light)}</p>")
            button.setAccessibleName(seen.seen_word(light))
            row.put(*before, button)
            before = ()
        self.wet.setToolTip(seen.WET_TIP)
        row.put(self.wet, gap=_APART)
        row.put(self.of_room)
        for place, button in enumerate((*self.lights.values(), self.wet)):
            button.setCheckable(True)
            group.addButton(button, place)
        self.lights[Light.D65].setChecked(True)
        group.idClicked.connect(self._see)
        self.clear_wish.setObjectName("little")
        self.clear_wish.setToolTip(ways.CLEAR_WISH_TIP)
        self.clear_wish.hide()
        self.figures.setCheckable(True)
        self.figures.setToolTip(words.FIGURES_TIP)
        self.figures.toggled.connect(self._show_figures)
        row.put(self.clear_wish, self.figures, pushed=True)
        return row

    def _see(self, place: int) -> None:
        """Show it as it is seen now; after the lights comes wet."""
        lights = tuple(self.lights)
        self._look_in(lights[place] if place < len(lights) else None)
        if self._light is not None:
            self.light_chosen.emit(self._light)

    def show_light(self, light: Light, room: Light | None) -> None:
        """Show it in a light, unless it is looked at wet, and say if it is that of the room."""
        self._room = room
        wet = self.wet.isChecked()
        if not wet:
            self.lights[light].setChecked(True)
        self._look_in(None if wet else light)

    def _look_in(self, light: Light | None) -> None:
        self.of_room.setText("" if light is None else seen.of_room(light))
        self.of_room.setVisible(light is not None and light is self._room)
        if light is self._light:
            return
        self._light = light
        self.steps.see(self._light)
        self.piece.see(self._light)
        self.build_up.see(self._light)
        self._tell()

    def _show_figures(self, on: bool) -> None:  # noqa: FBT001 - as Qt tells it
        self.steps.show_figures(shown=on)
        self.figures.setToolTip(f"<p>{words.figures_note() if on else words.FIGURES_TIP}</p>")

    def _aside(self) -> QWidget:
        aside = QWidget()
        column = QVBoxLayout(aside)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(8)
        column.addWidget(self.build_up)
        area = ScrollArea()
        area.setWidget(self.mind)
        area.setWidgetResizable(True)
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setAccessibleName(words.MIND)
        column.addWidget(area, 1)
        return aside

    def show_look(
        self,
        look: Look | None,
        wanted: Sequence[tuple[Light, Lab]] = (),
        photo: float = 0.0,
        of_shelf: tuple[str, ...] = (),
        client: Sequence[tuple[Light, Lab]] = (),
    ) -> None:
        """Show what comes of the layers, and what to mind; or nothing.

        Parameters
        ----------
        look
            The steps.
        wanted
            The wanted colour under each light of the room.
        photo
            How far that usually is from the cloth, CIEDE2000.
        of_shelf
            What is said of the shelf elsewhere.
        client
            What the client wants now in place of the wanted colour, likewise; none for that.
        """
        self._look, self._photo, self._of_shelf = look, photo, of_shelf
        self.steps.show_look(look, wanted, client)
        self.clear_wish.setVisible(look is not None and bool(client))
        # While nothing is laid on, the mix itself has the room.
        laid = look is not None and len(look.steps) > 1
        self._rows.setStretch(self._rows.count() - 1, _MANY if laid else _FEW)
        self._tell()

    def _tell(self) -> None:
        """Say what comes of it as it is seen now, and what to mind."""
        look, light = self._look, self._light
        if look is None:
            self.result.clear()
            self.mind.clear()
            return
        self.result.setText(seen.result_line(look, light, self._photo))
        told = words.cautions(look.notes, self._of_shelf, laid=len(look.steps) > 1, light=light)
        self.mind.setText("\n\n".join(told))
