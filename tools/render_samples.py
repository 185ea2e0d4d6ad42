"""Render the sample images, with the file of what is true of them.

Run it from anywhere: `python tools/render_samples.py`. It takes some minutes, and running
it again gives the same pixels.
"""

import json
import sys
from pathlib import Path

from PIL import Image

from card_films import card_films
from studio.box import (
    BOX_FILE,
    BOX_STROKES_FILE,
    OLD,
    box_picture,
    box_strokes,
    box_truth,
    see_box,
)
from studio.brushed import BRUSHED, brushed_truth, paint_brushed
from studio.cards import CARDS, cards_truth, paint_cards
from studio.curves import CURVES
from studio.samples import SAMPLES, Sample, develop, paint, truth
from studio.scene import Painted

FOLDER = Path(__file__).resolve().parents[1] / "sample_images"
PITCH = 0.5
QUALITY = 90

README = """# Sample images

These pictures are **rendered, not photographed**, by `tools/render_samples.py`. No such cushion,
cloth, bench or box exists: the cloths, their colours and the scenes are invented.

{lines}

`truth.json` says what is true of each: the light; where the grey card is (a rectangle well inside
it: x, y, width, height in pixels) and its reflectance; a rectangle on the cloth; how the light
there compares with that on the card; and for each yarn or print its name, its true CIELAB (D65,
2 degrees) and about which share of that rectangle it has. Under `brushed` stands the photo of a
sample: where the cloth of one yarn, the sample and the card are in it, and both true colours. Under
`cards` stands that of brushed cards of three paints of the demonstration shelf: of each, in the
order of their numbers, what is mixed on it, what it lies over, where it is, and its true colour.

`blanket_box_strokes.json` holds a few strokes on the box, as
[docs/repaint.md](../docs/repaint.md) tells. What is true of the box stands under `pieces`: of each
zone the curve of its old paint, its CIELAB and its share of the picture.

How they are made: every material is a smooth invented reflectance curve at 380-780 nm by 5. Light
(CIE tables) times reflectance times the measured sensitivities of a camera (both as shipped with
colour-science) gives its raw colour. Weave, folds, shadows and the falling off of the light scale
it; threads show their full colour on the crown and are down to half and less on flanks and in
gaps. Then come the losses of a lens in the corners, noise, a white balance that goes only part of
the way, a colour matrix fitted in daylight to the 99 colour samples of CIE 224:2017, sRGB and JPEG.
The box is made of solids met by rays, with soft shadows, a grain and a sheen.
The cards reflect what the optics of the program give for the K and S of their paints, with hands
that slip a little in the parts and in the coats.

What they leave out: no light is coloured by one thing and falls on another, no thread shines, and
the camera adds no contrast curve. A real photo is harder.
"""


def main(folder: Path = FOLDER) -> None:
    """Write the pictures, `truth.json` and `README.md`."""
    folder.mkdir(exist_ok=True)
    facts = [_write(sample, folder) for sample in SAMPLES]
    brushed = [_write_brushed(folder)]
    cards = [_write_cards(folder)]
    box = _write_box(folder)
    rendered = {
        "rendered_by": "tools/render_samples.py",
        "images": facts,
        "brushed": brushed,
        "cards": cards,
        "pieces": [box],
    }
    text = json.dumps(rendered, indent=2)
    (folder / "truth.json").write_text(text + "\n", encoding="utf-8")
    every = (*SAMPLES, BRUSHED.scene, CARDS)
    shown = [(f"{sample.name}.jpg", sample.what) for sample in every]
    shown.append((BOX_FILE, str(box["shows"])))
    lines = "\n".join(f"- `{name}`: {what}" for name, what in shown)
    (folder / "README.md").write_text(README.format(lines=lines), encoding="utf-8")


def _write_box(folder: Path) -> dict[str, object]:
    """Write the picture of the box and the strokes on it."""
    seen = see_box(PITCH)
    picture = box_picture(seen, {zone: CURVES[name] for zone, name in OLD.items()})
    Image.fromarray(picture).save(folder / BOX_FILE, quality=QUALITY, subsampling=0, optimize=True)
    strokes = json.dumps(box_strokes(), indent=1)
    (folder / BOX_STROKES_FILE).write_text(strokes + "\n", encoding="utf-8")
    return box_truth(seen)


def _write(sample: Sample, folder: Path) -> dict[str, object]:
    painted = paint(sample, PITCH)
    _save(sample, painted, folder)
    return truth(sample, painted, PITCH)


def _write_brushed(folder: Path) -> dict[str, object]:
    _save(BRUSHED.scene, paint_brushed(BRUSHED, PITCH), folder)
    return brushed_truth(BRUSHED)


def _write_cards(folder: Path) -> dict[str, object]:
    _save(CARDS, paint_cards(PITCH, card_films()), folder)
    return cards_truth(card_films())


def _save(sample: Sample, painted: Painted, folder: Path) -> None:
    path = folder / f"{sample.name}.jpg"
    picture = Image.fromarray(develop(sample, painted, PITCH))
    # Colour at full resolution: stripes of a few threads keep their own colour.
    picture.save(path, quality=QUALITY, subsampling=0, optimize=True)
    print(f"{path.name}: {path.stat().st_size / 1024:.0f} KB")


if __name__ == "__main__":
    main(*map(Path, sys.argv[1:2]))
