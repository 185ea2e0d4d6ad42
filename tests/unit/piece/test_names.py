"""Names of pieces, parts and zones as they are read."""

import pytest

from swatchwright.piece import names
from swatchwright.piece.common import USUAL, Kind, common_piece
from swatchwright.piece.names import PARTS, ZONES, paint_word, part_word, zone_named, zone_word
from swatchwright.piece.part import Shape


@pytest.mark.parametrize("kind", list(Kind))
@pytest.mark.parametrize("drawers", [0, 2])
def test_every_name_of_a_common_piece_can_be_said_in_another_language(
    kind: Kind, drawers: int
) -> None:
    """No part and no zone is built under a name that is not gathered for translation."""
    has_drawers = USUAL[kind].drawers is not None and (drawers or not USUAL[kind].drawers)
    piece = common_piece(kind, drawers=drawers if has_drawers else None, inside=True)
    known = {*PARTS, *(shape.value for shape in Shape)}
    for part in piece.parts:
        assert part.name in known
        assert part.zone in ZONES
        assert part.inside_zone in {*ZONES, ""}


def test_names_are_read_in_english_as_they_are_kept() -> None:
    """English is the language of what is kept, so nothing changes."""
    assert part_word("panel 2") == "panel 2"
    assert part_word("Linen box 3") == "Linen box 3"
    assert zone_word("body") == "body"
    assert paint_word("paint for body") == "paint for body"
    assert paint_word("Deep blue, slightly red") == "Deep blue, slightly red"


def test_a_number_after_the_name_of_a_part_stays_where_it_is(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """What is looked up is the name without its number."""
    asked: list[tuple[str, str]] = []

    def say_in(context: str, text: str) -> str:
        asked.append((context, text))
        return "Füllung" if text == "panel" else text

    monkeypatch.setattr(names, "say_in", say_in)
    assert part_word("panel 2") == "Füllung 2"
    assert part_word("panel") == "Füllung"
    assert part_word("7") == "7"
    assert asked == [("part", "panel"), ("part", "panel"), ("part", "7")]


def test_a_zone_typed_in_another_language_is_kept_in_english(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    """So it is the same zone to whoever opens the job in English."""
    monkeypatch.setattr(names, "say", lambda text: "Korpus" if text == "body" else text)
    assert zone_named("Korpus") == "body"
    assert zone_named("Tür links") == "Tür links"
