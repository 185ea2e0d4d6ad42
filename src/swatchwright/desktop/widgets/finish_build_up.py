"""How a wash builds up: a picture of its passes, one of which can be pressed."""

from __future__ import annotations

from PySide6.QtCore import QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import (
    QAbstractButton,
    QButtonGroup,
    QHBoxLayout,
    QLabel,
    QSizePolicy,
    QVBoxLayout,
    QWidget,
)

from swatchwright.acts.finish_values import BuildUp
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.look import ink_on, write_on
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.widgets.finish_bands import Band, paint_bands
from swatchwright.desktop.words import finish as words
from swatchwright.desktop.words.seen import colour_told
from swatchwright.values import Lab

__all__ = ["BuildUpPicture", "PassField"]

_HEIGHT, _NARROWEST = 84, 22


class PassField(QAbstractButton):
    """The colour after so many passes, from flat to grain."""

    def __init__(self, word: str, told: str, labs: tuple[Lab, Lab, Lab]) -> None:
        super().__init__()
        self._word, self._colour = word, screen_colour(labs[1])
        self._ink = ink_on(self._colour)
        flat, dry, grain = labs
        self._bands = (Band(flat), Band(dry, weight=2), Band(grain))
        self.setCheckable(True)
        self.setAccessibleName(told)
        self.setToolTip(told)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setFixedHeight(_HEIGHT)
        self.setMinimumWidth(_NARROWEST)

    def sizeHint(self) -> QSize:
        """Ask for a good size."""
        return QSize(_NARROWEST, _HEIGHT)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the bands, the number, and a frame if it is chosen or has the focus."""
        del event
        painter = QPainter(self)
        paint_bands(painter, self.rect(), self._bands)
        told = f"✓\n{self._word}" if self.isChecked() else self._word
        flags = int(Qt.AlignmentFlag.AlignCenter) | int(Qt.TextFlag.TextWordWrap)
        write_on(painter, self.rect(), flags, told, self._colour)
        if self.isChecked():
            painter.setPen(QPen(self._ink, 2))
            painter.drawRect(self.rect().adjusted(2, 2, -3, -3))
        if self.hasFocus():
            painter.setPen(QPen(self._ink, 1, Qt.PenStyle.DashLine))
            painter.drawRect(self.rect().adjusted(5, 5, -6, -6))
        painter.end()


class BuildUpPicture(QWidget):
    """Passes from none on, edge to edge, and the colour they tend to.

    Signals
    -------
    passes_chosen(int)
        So many passes are to be laid.
    """

    passes_chosen = Signal(int)

    def __init__(self) -> None:
        super().__init__()
        self.heading = QLabel(words.NOT_BUILT)
        self.heading.setWordWrap(True)
        self.hint = QLabel(words.BUILD_UP_HINT)
        self.hint.setObjectName("small")
        self._row = QHBoxLayout()
        self._row.setSpacing(0)
        self._light: Light | None = Light.D65
        self._number = 0
        self._group = QButtonGroup(self)
        self._group.idClicked.connect(self.passes_chosen)
        rows = QVBoxLayout(self)
        rows.setContentsMargins(0, 0, 0, 0)
        rows.setSpacing(4)
        rows.addWidget(self.heading)
        rows.addLayout(self._row)
        rows.addWidget(self.hint)
        self.show_build_up(0, None, 0)

    def fields(self) -> list[PassField]:
        """Give the fields of the passes, none the first."""
        return [field for field in self._group.buttons() if isinstance(field, PassField)]

    def show_build_up(self, number: int, built: BuildUp | None, passes: int) -> None:
        """Show how layer `number` builds up, laid `passes` times; or say that none does."""
        focused = next((n for n, field in enumerate(self.fields()) if field.hasFocus()), None)
        self._clear()
        self.hint.setVisible(built is not None)
        self.heading.setObjectName("quiet" if built is None else "strong")
        self.heading.style().polish(self.heading)
        if built is None:
            self.heading.setText(words.NOT_BUILT)
            return
        for one in built.passes:
            told = words.pass_told(one.count, one.dry)
            field = PassField(str(one.count), told, (one.flat, one.dry, one.grain))
            field.setChecked(one.count == passes)
            self._group.addButton(field, one.count)
            self._row.addWidget(field, 1)
        self._row.addWidget(_end(built.tends_to), 2)
        self._number = number
        self.see(self._light)
        if focused is not None and focused < len(self.fields()):
            self.fields()[focused].setFocus()

    def see(self, light: Light | None) -> None:
        """Say that it is shown dry in daylight, while all else is seen otherwise; wet if None."""
        self._light = light
        if self.fields():
            self.heading.setText(words.builds_up(self._number, light))

    def _clear(self) -> None:
        while self._row.count():
            item = self._row.takeAt(0)
            widget = None if item is None else item.widget()
            if isinstance(widget, QAbstractButton):
                self._group.removeButton(widget)
            if widget is not None:
                widget.hide()
                widget.deleteLater()


def _end(lab: Lab) -> PassField:
    """Show what many passes tend to, which cannot be pressed."""
    field = PassField(words.TENDS_TO, colour_told(words.TENDS_TO, lab), (lab,) * 3)
    field.setCheckable(False)
    field.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    field.setEnabled(False)
    return field
