"""Render the sample images, with the file of what is true of them.

Run it from anywhere: `python tools/render_samples.py`. It takes about a minute and a half, and
running it again gives the same pixels.
"""

import json
import sys
from pathlib import Path

from PIL import Image

from studio.samples import SAMPLES, Sample, develop, paint, truth

FOLDER = Path(__file__).resolve().parents[1] / "sample_images"
PITCH = 0.5
QUALITY = 90

README = """# Sample images

These pictures are **rendered, not photographed**, by `tools/render_samples.py`. No such cushion,
cloth or bench exists: the cloths, their colours and the scenes are invented.

{lines}

`truth.json` says what is true of each: the light; where the grey card is (a rectangle well inside
it: x, y, width, height in pixels) and its reflectance; a rectangle on the cloth; how the light
there compares with that on the card; and for each yarn or print its name, its true CIELAB (D65,
2 degrees) and about which share of that rectangle it has.

How they are made: every material is a smooth invented reflectance curve at 380-780 nm by 5. Light
(CIE tables) times reflectance times the measured sensitivities of a camera (both as shipped with
colour-science) gives its raw colour. Weave, folds, shadows and the falling off of the light scale
it; threads show their full colour on the crown and are down to half and less on flanks and in
gaps. Then come the losses of a lens in the corners, noise, a white balance that goes only part of
the way, a colour matrix fitted in daylight to the 99 colour samples of CIE 224:2017, sRGB and JPEG.

What they leave out: no light is coloured by one thing and falls on another, no thread shines, and
the camera adds no contrast curve. A real photo is harder.
"""


def main(folder: Path = FOLDER) -> None:
    """Write the pictures, `truth.json` and `README.md`."""
    folder.mkdir(exist_ok=True)
    facts = [_write(sample, folder) for sample in SAMPLES]
    text = json.dumps({"rendered_by": "tools/render_samples.py", "images": facts}, indent=2)
    (folder / "truth.json").write_text(text + "\n", encoding="utf-8")
    lines = "\n".join(f"- `{sample.name}.jpg`: {sample.what}" for sample in SAMPLES)
    (folder / "README.md").write_text(README.format(lines=lines), encoding="utf-8")


def _write(sample: Sample, folder: Path) -> dict[str, object]:
    painted = paint(sample, PITCH)
    path = folder / f"{sample.name}.jpg"
    picture = Image.fromarray(develop(sample, painted, PITCH))
    # Colour at full resolution: stripes of a few threads keep their own colour.
    picture.save(path, quality=QUALITY, subsampling=0, optimize=True)
    print(f"{path.name}: {path.stat().st_size / 1024:.0f} KB")
    return truth(sample, painted, PITCH)


if __name__ == "__main__":
    main(*map(Path, sys.argv[1:2]))
