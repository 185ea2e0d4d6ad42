"""What stands in a field of colour is whole on each label, in each language."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

import pytest

from swatchwright.colour.names import colour_name
from swatchwright.language import ENGLISH, listed, say_in, use_language
from swatchwright.piece.names import zone_word
from swatchwright.sheet.fields import Field, draw_field
from swatchwright.sheet.lettering import Style
from swatchwright.sheet.paper import LABELS, LabelSize
from swatchwright.sheet.pen import Box, Pen
from swatchwright.values import Lab


@pytest.fixture(autouse=True)
def english_again() -> Iterator[None]:
    """Speak English again."""
    yield
    use_language(ENGLISH)


@dataclass
class Written:
    """What was written on a page, in lines, with the height at which each text ends, mm."""

    texts: list[list[str]] = field(default_factory=list)
    ends: float = 0.0


@pytest.fixture
def written(monkeypatch: pytest.MonkeyPatch) -> Written:
    """Note what pens write."""
    noted = Written()

    def lines(_: Pen, __: float, y: float, texts: list[str], style: Style, **___: object) -> float:
        noted.texts.append(texts)
        noted.ends = max(noted.ends, y + len(texts) * style.leading)
        return y

    monkeypatch.setattr(Pen, "lines", lines)
    return noted


@pytest.mark.parametrize("code", ["en", "de"])
@pytest.mark.parametrize("size", LABELS, ids=lambda size: size.name)
@pytest.mark.parametrize("zones", [("body",), ("drawers",), ("body", "drawers")])
def test_words_are_whole(
    written: Written, size: LabelSize, zones: tuple[str, ...], code: str
) -> None:
    """The parts of the piece and the name of the colour are neither cut nor out of the field."""
    use_language(code)
    part = listed(zone_word(zone) for zone in zones)
    # Small labels name the parts alone.
    large = size.height > 45
    word = say_in("on a field of colour", "{part}, finished", part=part) if large else part
    box = Box(0, 0, 0.22 * size.width, (size.height - 6) / 3)
    lab = Lab(60, 20, 10)
    draw_field(Pen(size.width, size.height, "", ""), box, Field(word, lab), size=8)
    head, name = written.texts
    assert " ".join(head) == word
    assert " ".join(name) == colour_name(lab)
    assert written.ends <= box.height + 0.3
