"""What the readme promises, done at the window by mouse and keys, and read back from the store."""

from __future__ import annotations

import sys
import time
from typing import TYPE_CHECKING

import numpy as np
import pytest
from PIL import Image, ImageChops

from end_to_end.screen import until
from swatchwright.acts.batches import WHOLE_PIECE
from swatchwright.acts.samples import sample_photos
from swatchwright.colour.spectrum import Light
from swatchwright.desktop import words
from swatchwright.desktop.words import brief, compare, keeping, report
from swatchwright.desktop.words.bits import first_up

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from end_to_end.conftest import Painter
    from end_to_end.eyes import Thing
    from swatchwright.values import Rect

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="Xvfb is a screen of Linux")

KEEP, KEPT = (keeping.keep_name(1, WHOLE_PIECE, kept=kept) for kept in (False, True))
CUSHION, LAMP, _ = sample_photos()


class Photo:
    """Where the pixels of a photo are on the screen: fitted into its place, in the middle."""

    def __init__(self, place: Thing, size: tuple[int, int]) -> None:
        left, top, width, height = place.box
        self._scale = min(width / size[0], height / size[1])
        self._left = left + (width - size[0] * self._scale) / 2
        self._top = top + (height - size[1] * self._scale) / 2

    def at(self, x: float, y: float) -> tuple[float, float]:
        """Give where a pixel of the photo is."""
        return self._left + x * self._scale, self._top + y * self._scale

    def inner(self, rect: Rect) -> tuple[int, int, int, int]:
        """Give the inner part of a box, clear of its edges: left, top, right, bottom."""
        start = self.at(rect.x + rect.width * 0.3, rect.y + rect.height * 0.3)
        end = self.at(rect.right - rect.width * 0.3, rect.bottom - rect.height * 0.3)
        return round(start[0]), round(start[1]), round(end[0]), round(end[1])


def mean(picture: Image.Image, box: tuple[int, int, int, int]) -> NDArray[np.float64]:
    """Give the mean of red, green and blue in a part of a picture, 0-255."""
    pixels = np.asarray(picture.crop(box), dtype=np.float64).reshape(-1, 3)
    return np.array([part.mean() for part in pixels.T])


def share_changed(before: Image.Image, after: Image.Image) -> float:
    """Give the share of the pixels that look different."""
    apart = np.asarray(ImageChops.difference(before, after)).max(axis=2)
    return float((apart > 8).mean())


def shows_something(picture: Image.Image) -> bool:
    """Tell whether a picture is more than one flat colour, as an empty screen is."""
    return len(picture.getcolors(1 << 24) or ()) > 100


def settled(painter: Painter) -> Image.Image:
    """Wait until the picture stays, and give it."""
    seen = [painter.picture()]

    def stays() -> bool:
        time.sleep(0.3)
        seen.append(painter.picture())
        return share_changed(*seen[-2:]) == 0

    until(stays, "a picture that stays")
    return seen[-1]


def test_from_the_cushion_to_a_kept_mix_by_keyboard(painter: Painter) -> None:
    """A job is begun and named, the sample opened, and its first mix kept, with keys alone."""
    painter.start()
    start = painter.picture()
    assert shows_something(start)
    painter.hand.press("ctrl+1")
    painter.press_button(brief.BEGIN)
    painter.wait_for_keys_in(brief.PIECE)
    painter.hand.type("Blanket box")
    painter.hand.press("Tab")
    painter.wait_for_keys_in(brief.CLIENT)
    painter.hand.type("Harbour workshop")
    painter.hand.press("Tab", "ctrl+2")
    painter.press_button(words.TRY_SAMPLE)
    painter.eyes.wait_for(KEEP)
    painter.rest()
    painter.press_button(KEEP)
    painter.eyes.wait_checked(KEPT)
    job = painter.job()
    assert (job["title"], job["client"]) == ("Blanket box", "Harbour workshop")
    assert [photo["name"] for photo in job["photos"]] == [CUSHION.path.name]
    assert sum(recipe["chosen"] for recipe in job["recipes"]) == 1
    assert share_changed(start, painter.picture()) > 0.1


def test_the_lamp_put_right_with_the_mouse(painter: Painter) -> None:
    """A box dragged on the grey card makes it grey on the screen; one on the cloth, its colours."""
    painter.start(str(LAMP.path))
    painter.eyes.wait_for("Colour 1")
    painter.rest()
    with Image.open(LAMP.path) as opened:
        photo = Photo(painter.eyes.wait_for(words.PHOTO_NAME), opened.size)
    card = photo.inner(LAMP.grey)
    red, _, blue = mean(painter.picture(), card)
    assert red - blue > 25, "under the lamp the card is yellow"
    painter.hand.drag(
        photo.at(LAMP.grey.x + 20, LAMP.grey.y + 20),
        photo.at(LAMP.grey.right - 20, LAMP.grey.bottom - 20),
    )

    def is_grey() -> bool:
        parts = mean(painter.picture(), card)
        return float(parts.max() - parts.min()) < 6

    until(is_grey, "a grey card")
    painter.rest()
    with Image.open(LAMP.path) as opened:
        photo = Photo(painter.eyes.wait_for(words.PHOTO_NAME), opened.size)
    painter.hand.drag(
        photo.at(LAMP.cloth.x, LAMP.cloth.y), photo.at(LAMP.cloth.right, LAMP.cloth.bottom)
    )
    painter.eyes.wait_for(words.COLOURS)
    painter.rest()
    painter.click(KEEP)
    painter.eyes.wait_checked(KEPT)
    (kept,) = painter.job()["photos"]
    (grey,), cloth = kept["grey"], LAMP.cloth
    asked = [LAMP.grey.x + 20, LAMP.grey.y + 20, LAMP.grey.width - 40, LAMP.grey.height - 40]
    assert np.allclose(grey, asked, atol=6)
    assert np.allclose(kept["area"], [cloth.x, cloth.y, cloth.width, cloth.height], atol=6)


def test_mixes_side_by_side_in_another_light(painter: Painter) -> None:
    """On the page that compares, the colours change with the lamp, and back again by key."""
    painter.start()
    painter.click(words.TRY_SAMPLE)
    painter.eyes.wait_for(KEEP)
    painter.hand.press("ctrl+3")
    painter.eyes.wait_checked(compare.LIGHTS[Light.D65])
    painter.eyes.wait_for(compare.MIXES)
    painter.rest()
    for number in (1, 2, 3):
        painter.eyes.wait_for(first_up(compare.mix_word(number)))
    by_day = settled(painter)
    painter.click(compare.LIGHTS[Light.LAMP])
    painter.eyes.wait_checked(compare.LIGHTS[Light.LAMP])
    until(lambda: share_changed(by_day, painter.picture()) > 0.1, "other colours")
    # Tab stops once at lights that exclude each other, and the arrows go among them.
    painter.tab_to(compare.LIGHTS[Light.LAMP])
    painter.hand.press("Left")
    painter.eyes.wait_checked(compare.LIGHTS[Light.D65])
    until(lambda: share_changed(by_day, painter.picture()) < 0.05, "the colours by day")


def test_killed_in_the_middle_the_job_is_back(painter: Painter) -> None:
    """After a kill the next start says so; the job is there, and what was picked after it."""
    painter.start()
    painter.click(words.TRY_SAMPLE)
    painter.eyes.wait_for(KEEP)
    painter.rest()
    painter.click(KEEP)
    painter.eyes.wait_checked(KEPT)
    job = painter.job()
    written = painter.home / "last-bench.json"
    before = written.read_bytes()
    painter.click("Colour 2")
    until(lambda: written.read_bytes() != before, "the colour written down")
    painter.kill()
    painter.start()
    painter.eyes.wait_for(report.STOPPED)
    painter.eyes.wait_checked("Colour 2")
    painter.click("Colour 1")
    painter.eyes.wait_checked(KEPT)
    assert shows_something(painter.picture())
    assert painter.job() == job
    painter.click(words.PUT_AWAY)
    until(lambda: painter.eyes.find(report.STOPPED) is None, "the message put away")


def test_closed_as_usual_nothing_is_said(painter: Painter) -> None:
    """The close button of the frame ends the program well, and the next start says nothing."""
    painter.start()
    painter.hand.ask_to_close(painter.window)
    assert painter.ended() == 0
    painter.start()
    assert painter.eyes.find(report.STOPPED) is None
    painter.hand.ask_to_close(painter.window)
    assert painter.ended() == 0


def test_a_home_that_cannot_be_written(painter: Painter) -> None:
    """Where nothing can be kept the window comes up all the same, says why, and closes well."""
    painter.home.write_text("not a folder", encoding="utf-8")
    painter.start()
    painter.eyes.wait_for(f"The store {painter.home}")
    painter.hand.ask_to_close(painter.window)
    assert painter.ended() == 0
    assert painter.home.read_text(encoding="utf-8") == "not a folder"
