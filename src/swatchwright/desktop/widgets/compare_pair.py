"""Two colours on the whole screen, half and half, to hold the real cloth up to."""

from __future__ import annotations

from collections.abc import Sequence

from PySide6.QtCore import QAbstractAnimation, QEvent, QRect, QSize, Qt, QTimer, QVariantAnimation
from PySide6.QtGui import (
    QAccessible,
    QAccessibleEvent,
    QColor,
    QKeyEvent,
    QMouseEvent,
    QPainter,
    QPaintEvent,
)
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from swatchwright.acts.compare import Compared, Sight, State, WantedSight
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.widgets.colour_field import screen_colour
from swatchwright.desktop.words import compare as words

__all__ = ["ComparePair"]

_SHOWN, _FADES = 4000, 1500
_GROUND, _INK = QColor("#1c1c1c"), QColor("#f5f5f5")

_STATE_KEYS = {Qt.Key(ord(letter)): state for state, letter in words.STATE_KEYS.items()}


class ComparePair(QWidget):
    """The wanted colour and a mix, or a mix alone, and a line that fades.

    What a screen does to colours is said first, and again on asking.
    """

    def __init__(
        self,
        told: Compared,
        names: Sequence[str],
        *,
        state: State,
        light: Light,
        warn: bool,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        self.setWindowTitle(words.FULL)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self._told, self._names = told, tuple(names)
        self.place, self.state, self.light, self.alone = 0, state, light, False
        self.warning = QLabel(f"{words.SCREEN}<p>{words.BEGIN}</p><p>{words.KEYS_TOLD}</p>")
        self.warning.setObjectName("sheet")
        self.warning.setWordWrap(True)
        self.warning.setMargin(26)
        self.warning.setMaximumWidth(620)
        rows = QVBoxLayout(self)
        rows.addWidget(self.warning, 0, Qt.AlignmentFlag.AlignCenter)
        self._fade = QVariantAnimation(self)
        self._fade.setStartValue(1.0)
        self._fade.setEndValue(0.0)
        self._fade.setDuration(_FADES)
        self._fade.valueChanged.connect(self.update)
        self._fade.finished.connect(self._faded)
        self._rest = QTimer(self)
        self._rest.setSingleShot(True)
        self._rest.setInterval(_SHOWN)
        self._rest.timeout.connect(self._fade.start)
        self._note = ""
        self._strength = 1.0
        self._fade.valueChanged.connect(self._set_strength)
        self._warn(shown=warn)

    def sizeHint(self) -> QSize:
        """Ask for a good size, where the screen cannot be filled."""
        return QSize(1000, 640)

    # --- what is shown ---------------------------------------------------------------------------

    @property
    def sight(self) -> Sight:
        """The mix that is shown."""
        return self._told.candidates[self.place].sight(self.state, self.light)

    @property
    def wanted(self) -> WantedSight:
        """The wanted colour as it is shown."""
        return self._told.wanted_under(self.light)

    @property
    def line(self) -> str:
        """What the line tells."""
        told = words.pair_line(self._names[self.place], self.sight, self.wanted, alone=self.alone)
        return f"{self._note}{told}"

    @property
    def strength(self) -> float:
        """How strongly the line is shown, 1 to 0 when it has faded."""
        return self._strength

    def _set_strength(self, value: float) -> None:
        self._strength = value

    def _tell(self, note: str = "") -> None:
        """Show the line anew, for a while, and tell a screen reader."""
        self._note = f"{note}. " if note else ""
        self._wake()
        self.setAccessibleName(words.SCREEN if self.warning.isVisible() else self.line)
        QAccessible.updateAccessibility(QAccessibleEvent(self, QAccessible.Event.NameChanged))

    def _wake(self) -> None:
        if self._fade.state() is QAbstractAnimation.State.Running:
            self._fade.stop()
        self._strength = 1.0
        self.unsetCursor()
        self._rest.start()
        self.update()

    def _faded(self) -> None:
        self.setCursor(Qt.CursorShape.BlankCursor)

    def _warn(self, *, shown: bool) -> None:
        self.warning.setVisible(shown)
        self._tell()

    # --- keys ------------------------------------------------------------------------------------

    def event(self, event: QEvent) -> bool:
        """Take every key before the shortcuts of the window below can."""
        if event.type() is QEvent.Type.ShortcutOverride:
            event.accept()
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Leave, step, or show otherwise; while the warning stands, only go on or leave."""
        key = Qt.Key(event.key())
        if key in {Qt.Key.Key_Escape, Qt.Key.Key_F11}:
            self.close()
        elif not self.warning.isHidden():
            if key in {Qt.Key.Key_Space, Qt.Key.Key_Return, Qt.Key.Key_Enter, Qt.Key.Key_I}:
                self._warn(shown=False)
        elif key is Qt.Key.Key_I:
            self._warn(shown=True)
        elif not self._pressed(key):
            super().keyPressEvent(event)

    def _pressed(self, key: Qt.Key) -> bool:
        """Do what a key says; False if it says nothing."""
        count = len(self._told.candidates)
        if key in {Qt.Key.Key_Left, Qt.Key.Key_Right}:
            self.place = (self.place + (1 if key is Qt.Key.Key_Right else -1)) % count
        elif key is Qt.Key.Key_L:
            lights = self._told.lights
            self.light = lights[(lights.index(self.light) + 1) % len(lights)]
        elif key is Qt.Key.Key_M:
            self.alone = not self.alone
        elif key in _STATE_KEYS:
            if _STATE_KEYS[key] not in self._told.states:
                self._tell(words.no_state(_STATE_KEYS[key]))
                return True
            self.state = _STATE_KEYS[key]
        else:
            return False
        self._tell()
        return True

    def mousePressEvent(self, event: QMouseEvent) -> None:
        """Go on from the warning, or show the line again."""
        if self.warning.isHidden():
            self._wake()
        else:
            self._warn(shown=False)
        event.accept()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        """Show the line again."""
        self._wake()
        event.accept()

    # --- painting --------------------------------------------------------------------------------

    def halves(self) -> list[tuple[QRect, QColor]]:
        """Give what is painted: two halves, or one whole."""
        mix = screen_colour(self.sight.shown)
        if self.alone:
            return [(self.rect(), mix)]
        middle = self.width() // 2
        left = QRect(0, 0, middle, self.height())
        right = QRect(middle, 0, self.width() - middle, self.height())
        return [(left, screen_colour(self.wanted.shown)), (right, mix)]

    def paintEvent(self, event: QPaintEvent) -> None:
        """Paint the halves, and the line over them as far as it has not faded."""
        del event
        painter = QPainter(self)
        for area, colour in self.halves():
            painter.fillRect(area, colour)
        if self._strength > 0 and self.warning.isHidden():
            self._paint_line(painter)
        painter.end()

    def _paint_line(self, painter: QPainter) -> None:
        """Paint the line on a neutral ground of its own, so that it is read on any colour."""
        text = f"{self.line}\n{words.KEYS}"
        flags = int(Qt.AlignmentFlag.AlignCenter) | int(Qt.TextFlag.TextWordWrap)
        room = QRect(0, 0, self.width() - 80, self.height() // 2)
        needs = painter.boundingRect(room, flags, text)
        ground = QRect(0, 0, needs.width() + 32, needs.height() + 18)
        ground.moveCenter(self.rect().center())
        ground.moveBottom(self.height() - 18)
        painter.setOpacity(self._strength)
        painter.fillRect(ground, _GROUND)
        painter.setPen(_INK)
        painter.drawText(ground, flags, text)
