"""A shelf of paints as a value, and finding a paint on it."""

from __future__ import annotations

from dataclasses import dataclass
from difflib import get_close_matches

from swatchwright.errors import MendableError
from swatchwright.language import say
from swatchwright.paint.paints import Paint

__all__ = ["Shelf"]


@dataclass(frozen=True, slots=True)
class Shelf:
    """Paints to choose from.

    Parameters
    ----------
    name
        What the shelf is called: its file, or a name marked for translation.
    paints
        In the order of the file, ids all different.
    notes
        What was assumed when it was read, in plain words.
    """

    name: str
    paints: tuple[Paint, ...]
    notes: tuple[str, ...] = ()

    def paint(self, id_: str) -> Paint:
        """Find a paint by its id.

        Raises
        ------
        MendableError
            If there is none; ids that look like it are named.
        """
        for paint in self.paints:
            if paint.id == id_:
                return paint
        ids = [paint.id for paint in self.paints]
        near = get_close_matches(id_, ids, n=3, cutoff=0.5) or ids[:6]
        raise MendableError(
            say("There is no paint “{id}” on {shelf}.", id=id_, shelf=say(self.name)),
            say("Use the id of one that is there, such as {ids}.", ids=", ".join(near)),
        )
