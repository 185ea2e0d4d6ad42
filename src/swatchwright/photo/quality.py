"""What is wrong with a photo, each with what to do about it, in a painter's words."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.convert import linear_srgb_to_xyz
from swatchwright.language import mark, say
from swatchwright.photo.light import from_black_body
from swatchwright.photo.quality_cells import cells_of
from swatchwright.photo.quality_fall import fall_of
from swatchwright.photo.signs import (
    plane_of,
    sharpest_blur,
    small_steps,
    stored_lightness,
    texture,
    whiteness,
)
from swatchwright.values import Rect

if TYPE_CHECKING:
    from collections.abc import Iterator

    from swatchwright.photo.estimate import Correction
    from swatchwright.photo.image import Photo
    from swatchwright.values import Lab

__all__ = ["Finding", "Kind", "Severity", "findings"]

Kind = Literal[
    "blur",
    "card not grey",
    "clipped cloth",
    "clipped reference",
    "compression",
    "dark cloth",
    "dark reference",
    "glint",
    "glow",
    "gradient",
    "odd light",
    "portrait",
    "reference doubted",
    "two lights",
    "warm light",
]

Severity = Literal["note", "warning"]
"""Worth knowing, or likely to shift the colours by more than the stated doubt."""

Floats = NDArray[np.float64]

_TOP, _BOTTOM = 254, 4
_CLIPPED_SHARE, _DARK_SHARE = 0.02, 0.25
_NEAR_TOP = 250
_NEAR_TOP_SHARE = 0.002
_DARK_GREY = 0.02
_GLINT_SHARE = 0.001
_WHITER_THAN_WHITE = 1.05
_BLURRED = 0.60
_SHARP = 0.50
_NO_TEXTURE = 0.25
_FINE_STEPS = 0.04
_FALL = 0.5
_FALL_TO_CLOTH = 0.15
_FALL_FROM_CARD = 0.25
_TOLD_TO = 0.05
_PLANE = 0.75
_COLOUR_FALL = 0.12
_COLOUR_APART = 0.10
_WARM = 3300.0
_OFF_BODY = 0.02
_GLOWS = 100.0
_PALE = 80.0
_MOST_PIXELS = 250_000


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing that is wrong with a photo.

    Parameters
    ----------
    kind
        Which.
    severity
        How much it matters.
    text
        What is wrong.
    mend
        What to do about it.
    """

    kind: Kind
    severity: Severity
    text: str
    mend: str


def findings(
    correction: Correction, cloth: Rect | None = None, colours: tuple[Lab, ...] = ()
) -> tuple[Finding, ...]:
    """Look a photo over.

    Parameters
    ----------
    correction
        The photo with its references.
    cloth
        Where the cloth is; the whole photo if None, and then what only holds for a cloth is not
        looked for.
    colours
        The colours that were found in it.

    Returns
    -------
    What is wrong, warnings first.
    """
    found = [
        *_of_references(correction),
        *_of_light(correction),
        *_of_picture(correction.photo, cloth),
        *_of_whites(colours),
    ]
    if cloth is not None:
        found += _of_cloth(correction, cloth)
    return tuple(sorted(found, key=lambda finding: finding.severity != "warning"))


def _of_references(correction: Correction) -> Iterator[Finding]:
    """Look at the references."""
    photo = correction.photo
    for reference, light in zip(correction.references, correction.seen.light, strict=True):
        bytes_ = photo.cut(reference.rect)
        if float(np.mean(np.any(bytes_ >= _NEAR_TOP, axis=-1))) > _NEAR_TOP_SHARE:
            yield Finding(
                "clipped reference",
                "warning",
                say("{reference} is nearly overexposed.", reference=reference.subject),
                say("Expose less: touch the brightest thing on the screen before you press."),
            )
        if light.max() < _DARK_GREY * min(1.0, (reference.reflectance or 0.18) / 0.18):
            yield Finding(
                "dark reference",
                "warning",
                say(
                    "{reference} is very dark, so its colour is mostly noise.",
                    reference=reference.subject,
                ),
                say("Use more light, or expose longer."),
            )
    for doubted in correction.doubted:
        kind: Kind = "card not grey" if doubted.kind == "grey" else "reference doubted"
        yield Finding(
            kind,
            "warning",
            say("The other references contradict {reference}.", reference=doubted.words),
            say(
                "See that it lies where it is marked, in the same light, and has the colour"
                " entered."
            ),
        )


def _of_light(correction: Correction) -> Iterator[Finding]:
    """Look at the colour of the light, and how it changes from reference to reference."""
    balance = correction.balance
    if balance.light_xy is not None:
        yield from _of_cast(balance.light_xy, balance.cct)
    greys = [at for at, r in enumerate(correction.references) if r.neutral]
    if len(greys) < 2:
        return
    known = np.array([correction.references[at].lab.L for at in greys])
    light = correction.seen.light[greys]
    ratios = np.log(light[:, [0, 2]] / light[:, [1]])
    alike = np.abs(known[:, None] - known[None]) < 12
    apart = np.where(alike[..., None], np.abs(ratios[:, None] - ratios[None]), 0.0)
    if apart.max() > _COLOUR_APART:
        yield Finding(
            "two lights",
            "warning",
            say(
                "The light on one grey has another colour than on the other: two lights are mixed."
            ),
            say("Switch off the lamp, or draw the curtain, so that only one of them is left."),
        )


def _of_cast(xy: tuple[float, float], cct: float | None) -> Iterator[Finding]:
    if cct is not None and cct < _WARM:
        yield Finding(
            "warm light",
            "warning",
            say(
                "The light is very warm, about {kelvin:.0f} K even after the camera's own"
                " balancing: it hardly shows how blues and greens differ.",
                kelvin=round(cct, -2),
            ),
            say("Take the photo in daylight; or add measured chips near the colour you want."),
        )
    away = from_black_body(*xy)
    if away > _OFF_BODY:
        yield Finding(
            "odd light",
            "warning",
            say(
                "By the grey reference the light is tinted as no daylight or ordinary lamp is: the"
                " card may not be grey, or the light is a tube or a coloured lamp."
            ),
            say("See that the mark lies on the card; if it does, move to daylight."),
        )


def _of_picture(photo: Photo, cloth: Rect | None) -> Iterator[Finding]:
    """Look at the picture as such."""
    sharpest = sharpest_blur(photo)
    if sharpest is not None and sharpest > _BLURRED:
        yield Finding(
            "blur",
            "warning",
            say("Nothing in the photo is sharp, so the colours of fine patterns run together."),
            say("Hold still or lean the camera on something, and let it focus on the cloth."),
        )
    part = _middle_of(Rect(0, 0, photo.width, photo.height) if cloth is None else cloth)
    is_jpeg = photo.facts.format in {"JPEG", "MPO"}
    if is_jpeg and small_steps(stored_lightness(photo, part)) < _FINE_STEPS:
        yield Finding(
            "compression",
            "warning",
            say("The file has been compressed so hard that its colours come in blocks."),
            say("Use the file from the camera itself, not one that came through a chat."),
        )
    if photo.facts.portrait or (cloth is not None and _is_smoothed(photo, cloth, sharpest)):
        yield Finding(
            "portrait",
            "warning",
            say(
                "The cloth has no texture at all while edges in the photo are sharp: the phone has"
                " smoothed it."
            )
            if not photo.facts.portrait
            else say("The photo was taken in portrait mode, which smooths and retouches."),
            say("Switch off portrait mode, beauty and filters, and take it again."),
        )


def _is_smoothed(photo: Photo, cloth: Rect, sharpest: float | None) -> bool:
    """Tell whether the cloth has no texture, and something else is sharp."""
    if sharpest is None or sharpest > _SHARP or photo.facts.format not in {"JPEG", "MPO", "HEIC"}:
        return False
    return texture(stored_lightness(photo, _middle_of(cloth))) < _NO_TEXTURE


def _of_cloth(correction: Correction, cloth: Rect) -> Iterator[Finding]:
    """Look at the cloth."""
    photo = correction.photo
    step = max(1, round((cloth.width * cloth.height / _MOST_PIXELS) ** 0.5))
    bytes_ = photo.cut(cloth, step)
    if float(np.mean(np.any(bytes_ >= _TOP, axis=-1))) > _CLIPPED_SHARE:
        yield Finding(
            "clipped cloth",
            "warning",
            say("Part of the cloth is overexposed: its colour is lost there and was left out."),
            say("Expose less, so that the cloth is not at its brightest."),
        )
    if float(np.mean(np.all(bytes_ <= _BOTTOM, axis=-1))) > _DARK_SHARE:
        yield Finding(
            "dark cloth",
            "warning",
            say("Much of the cloth is as good as black in the photo."),
            say("Use more light, or expose longer; the grey card must not turn white."),
        )
    light = photo.linear(cloth, step).astype(np.float64) * np.asarray(correction.balance.gains)
    yield from _of_glints(correction, light)
    yield from _of_fall(correction, cloth, light)


def _of_glints(correction: Correction, light: Floats) -> Iterator[Finding]:
    """Look for spots brighter than any white could be: the light itself, mirrored."""
    if not correction.references:
        return
    share = float(np.mean(linear_srgb_to_xyz(light)[..., 1] > _WHITER_THAN_WHITE))
    if share > _GLINT_SHARE:
        yield Finding(
            "glint",
            "warning",
            say(
                "{percent:.2g} % of the cloth is brighter than white paper would be: it mirrors"
                " the light.",
                percent=100 * share,
            ),
            say("Turn the cloth or move the lamp to the side until the shine is gone."),
        )


def _of_fall(correction: Correction, cloth: Rect, light: Floats) -> Iterator[Finding]:
    """Look at how light and its colour run over the cloth, and from the references to it."""
    cells = cells_of(light)
    if cells is not None:
        yield from _of_cells(cells)
    middle = (cloth.x + cloth.width / 2, cloth.y + cloth.height / 2)
    fall = correction.fall_to(*middle)
    if abs(fall) > _FALL_TO_CLOTH:
        yield Finding(
            "gradient",
            "note",
            say(
                "By the greys, the cloth has {share:.0%} of the light that falls on them;"
                " this is put right.",
                share=float(np.exp(fall)),
            ),
            say(_CLOSE_BY),
        )
        return
    yield from _of_ground(correction, cloth, middle)


_CLOSE_BY = mark("Lay a grey close to the cloth, and let the light come evenly.")


def _of_ground(
    correction: Correction, cloth: Rect, middle: tuple[float, float]
) -> Iterator[Finding]:
    """Look at how the light falls off by what is seen all over the photo.

    The texture and the stripes within the box say nothing of the light, so they are not asked.
    """
    found = fall_of(correction.photo)
    if found is None:
        return
    greys = [r.rect for r in correction.references if r.neutral]
    falls = [found.between(middle, (r.x + r.width / 2, r.y + r.height / 2)) for r in greys]
    told = [fall for fall in falls if fall is not None]
    less = float(np.mean(told)) if told else 0.0
    across = found.across(cloth)
    if abs(less) > _FALL_FROM_CARD:
        yield Finding(
            "gradient",
            "warning",
            say(
                "By the table and what else is seen all over the photo, the cloth has about"
                " {share:.0%} of the light that falls on the grey card.",
                share=round(float(np.exp(less)) / _TOLD_TO) * _TOLD_TO,
            ),
            say(_CLOSE_BY),
        )
    elif across is not None and across > _FALL:
        yield Finding(
            "gradient",
            "warning",
            say(
                "The light falls off over the cloth, to {share:.0%} from end to end.",
                share=float(np.exp(-across)),
            ),
            say("Turn the table so that the light comes evenly, or step back from the lamp."),
        )


def _of_cells(cells: Floats) -> Iterator[Finding]:
    """Look at how the colour of the light on one colour of the cloth runs over it."""
    for ratio in (1, 2):
        span, explained = plane_of(cells[..., ratio])
        if span > _COLOUR_FALL and explained > _PLANE:
            yield Finding(
                "two lights",
                "warning",
                say("The colour of the light changes over the cloth: two lights are mixed."),
                say("Switch off the lamp, or draw the curtain, so that only one of them is left."),
            )
            return


def _of_whites(colours: tuple[Lab, ...]) -> Iterator[Finding]:
    """Look for whites that shine more than a white can (CIE 015:2018: 100 is the perfect white)."""
    if any(colour.L > _PALE and whiteness(colour) > _GLOWS for colour in colours):
        yield Finding(
            "glow",
            "warning",
            say(
                "The white of the cloth glows: a brightener in it turns invisible light into blue."
            ),
            say("No paint does that. Aim at the colour it has by lamp light, and compare by eye."),
        )


def _middle_of(rect: Rect) -> Rect:
    """Give the middle of a rectangle, 256 pixels a side at most."""
    width, height = min(rect.width, 256), min(rect.height, 256)
    left, top = rect.x + (rect.width - width) // 2, rect.y + (rect.height - height) // 2
    return Rect(left, top, width, height)
