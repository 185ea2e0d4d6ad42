"""In which light a page begins."""

from __future__ import annotations

import pytest

from swatchwright.acts.seen_in import SeenIn, light_named
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.words.brief import LIGHTS
from swatchwright.shelf.jobs import Document


@pytest.mark.parametrize(
    ("room", "light"),
    [
        ("Daylight, window to the north", Light.D65),
        ("Daylight, sunny window", Light.D65),
        ("Warm lamp in the evening", Light.LAMP),
        ("Cool LED light", Light.COOL_LED),
        ("Tubes, as in a workshop or kitchen", Light.TUBE),
        ("Daylight by day, warm lamp by night", Light.D65),
        ("warm LEDs", Light.WARM_LED),
        ("Glühbirne, abends", Light.LAMP),
        ("warme Lampe", Light.LAMP),
        ("Leuchtstoffröhren in der Küche", Light.TUBE),
        ("kühle LED", Light.COOL_LED),
        ("Fenster nach Norden", Light.D65),
        ("", None),
        ("the hall", None),
        ("a ledge by the stairs", None),
    ],
)
def test_the_light_that_a_room_names_first(room: str, light: Light | None) -> None:
    """What the list offers is known, in her own words too; where none is named there is none."""
    assert light_named(room) is light


def test_each_light_of_the_list_is_known() -> None:
    """Whatever she picks for the room, the pages know where to begin."""
    assert all(light_named(light) is not None for light in LIGHTS if light)


def test_it_is_kept() -> None:
    """A choice comes back as it was; what was not chosen is that of the room."""
    kept = Document.of(SeenIn(finish=Light.TUBE)).read(SeenIn)
    assert (kept.finish, kept.piece) == (Light.TUBE, None)
