"""What a screen reader is told of the program over AT-SPI: things, their names and places."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from jeepney import DBusAddress, HeaderFields, MessageType, Properties, new_method_call

from end_to_end.screen import PATIENCE, until

if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any

    from jeepney import Message

    from end_to_end.screen import Screen

__all__ = ["Eyes", "Thing"]

_ATSPI = "org.a11y.atspi"
_ROOT = (f"{_ATSPI}.Registry", "/org/a11y/atspi/accessible/root")
_CHECKED, _ENABLED, _FOCUSED, _SHOWING = 4, 8, 12, 25
"""Places of states in what AT-SPI tells of a thing (atspi-constants.h)."""

_Reference = tuple[str, str]


@dataclass(frozen=True, slots=True)
class Thing:
    """A control, a picture or a text.

    Parameters
    ----------
    name, role
        What a screen reader says of it.
    box
        Left, top, width and height on the screen, in pixels.
    states
        Its states as bits.
    """

    name: str
    role: str
    box: tuple[int, int, int, int]
    states: int

    def _is(self, state: int) -> bool:
        return bool(self.states >> state & 1)

    @property
    def checked(self) -> bool:
        """Whether it is pressed or ticked."""
        return self._is(_CHECKED)

    @property
    def focused(self) -> bool:
        """Whether keys go to it."""
        return self._is(_FOCUSED)

    @property
    def shown(self) -> bool:
        """Whether it is shown."""
        return self._is(_SHOWING)

    @property
    def usable(self) -> bool:
        """Whether it is shown and can be used."""
        return self.shown and self._is(_ENABLED) and min(self.box[2:]) > 0

    @property
    def middle(self) -> tuple[float, float]:
        """Its middle on the screen."""
        left, top, width, height = self.box
        return left + width / 2, top + height / 2


class Eyes:
    """Looks at all that the programs on a screen show."""

    def __init__(self, screen: Screen) -> None:
        self._bus = screen.bus()

    def close(self) -> None:
        """Look no more."""
        self._bus.close()

    def things(self) -> list[Thing]:
        """List all things that can be used, and all texts that are shown."""
        return [thing for thing in self._shown() if thing.usable]

    def find(self, name: str) -> Thing | None:
        """Find a thing whose name begins like this."""
        return next((thing for thing in self.things() if thing.name.startswith(name)), None)

    def wait_for(self, name: str) -> Thing:
        """Wait for a thing whose name begins like this."""
        return self._until(lambda: self.find(name), name)

    def wait_checked(self, name: str) -> Thing:
        """Wait for a thing of this name that is pressed."""

        def pressed() -> Thing | None:
            named = (t for t in self.things() if t.name.startswith(name) and t.checked)
            return next(named, None)

        return self._until(pressed, f"{name}, pressed")

    def focus(self) -> Thing | None:
        """Give the thing that keys go to."""
        # The picked row of a list says so whether or not the list has the keys.
        things = (thing for thing in self.things() if thing.role != "list item")
        return next((thing for thing in things if thing.focused), None)

    def _until(self, find: Callable[[], Thing | None], what: str) -> Thing:
        try:
            return until(find, what)
        except AssertionError as error:
            seen = sorted({thing.name for thing in self.things() if thing.name})
            raise AssertionError(f"{error}; what was there: {seen}") from error

    # --- the bus ---------------------------------------------------------------------------------

    def _shown(self) -> list[Thing]:
        """List all that is shown, each thing before what it holds."""
        things: dict[_Reference, Thing] = {}
        inside: dict[_Reference, list[_Reference]] = {_ROOT: self._inside([_ROOT])[0]}
        level = inside[_ROOT]
        # In what is hidden, the rows of a list still say that they are shown: it is not entered.
        while level:
            seen = zip(level, self._told(level), strict=True)
            things |= {one: thing for one, thing in seen if thing is not None and thing.shown}
            level = [one for one in level if one in things]
            inside |= dict(zip(level, self._inside(level), strict=True))
            level = [child for one in level for child in inside[one]]
        listed: list[Thing] = []
        waiting = inside[_ROOT][::-1]
        while waiting:
            one = waiting.pop()
            if one in things:
                listed.append(things[one])
                waiting += inside[one][::-1]
        return listed

    def _inside(self, references: list[_Reference]) -> list[list[_Reference]]:
        """Give what each of these holds."""
        asked = [_call(one, "Accessible", "GetChildren") for one in references]
        # Something may go while it is looked at: then there is no answer, and it is not there.
        return [[(a, b) for a, b in told or ()] for told in self._answers(asked)]

    def _told(self, references: list[_Reference]) -> list[Thing | None]:
        """Give what is told of each of these."""
        asked = [
            message
            for one in references
            for message in (
                Properties(_address(one, "Accessible")).get("Name"),
                _call(one, "Accessible", "GetRoleName"),
                _call(one, "Accessible", "GetState"),
                _call(one, "Component", "GetExtents", "u", (0,)),
            )
        ]
        told = iter(self._answers(asked))
        return [_thing(*four) for four in zip(told, told, told, told, strict=True)]

    def _answers(self, messages: list[Message]) -> list[Any]:
        """Ask all at once, and give what was answered to each; None to what is not there."""
        serials = []
        for message in messages:
            serials.append(next(self._bus.outgoing_serial))
            self._bus.send(message, serial=serials[-1])
        answers: dict[int, Any] = {}
        while len(answers) < len(serials):
            told = self._bus.receive(timeout=PATIENCE)
            to = told.header.fields.get(HeaderFields.reply_serial)
            if to is not None:
                error = told.header.message_type is MessageType.error
                answers[to] = None if error else told.body[0]
        return [answers[serial] for serial in serials]


def _thing(name: Any, role: Any, states: Any, box: Any) -> Thing | None:
    if name is None or role is None or states is None:
        return None
    # An application has no place of its own on the screen.
    return Thing(str(name[1]), role, box or (0, 0, 0, 0), states[0])


def _call(
    reference: _Reference,
    interface: str,
    method: str,
    signature: str | None = None,
    body: tuple[object, ...] = (),
) -> Message:
    return new_method_call(_address(reference, interface), method, signature, body)


def _address(reference: _Reference, interface: str) -> DBusAddress:
    return DBusAddress(reference[1], reference[0], f"{_ATSPI}.{interface}")
