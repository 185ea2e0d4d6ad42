"""What is wanted because a client asked for it: its words, kept with the colour in English."""

from __future__ import annotations

from swatchwright.acts.client_wish import Wanted
from swatchwright.language import mark, say
from swatchwright.mixing.asked import Asked

WISHED = mark("as the client wants it now")
_SO = {
    Asked.LIGHTER: mark("as the client wants it now, lighter"),
    Asked.DARKER: mark("as the client wants it now, darker"),
    Asked.LESS_VIVID: mark("as the client wants it now, less vivid"),
    Asked.MORE_VIVID: mark("as the client wants it now, more vivid"),
    Asked.WARMER: mark("as the client wants it now, warmer"),
    Asked.COOLER: mark("as the client wants it now, cooler"),
    Asked.REDDER: mark("as the client wants it now, redder"),
    Asked.GREENER: mark("as the client wants it now, greener"),
    Asked.YELLOWER: mark("as the client wants it now, yellower"),
    Asked.BLUER: mark("as the client wants it now, bluer"),
}


def wished(wanted: Wanted) -> str:
    """Tell of a colour that a client asked for where it came from, in English."""
    return WISHED if wanted.asked is None else _SO[wanted.asked[0]]


def is_wished(origin: str) -> bool:
    """Tell whether a colour is one that a client asked for."""
    return origin == WISHED or origin in _SO.values()


def wished_line(name: str, origin: str) -> str:
    """Head the mixes for what a client asked for in a word; empty for another colour."""
    how = next((asked for asked, told in _SO.items() if told == origin), None)
    if how is None:
        return ""
    return say("Mixes for what the client wants now, {how}: {name}", how=say(how.value), name=name)
