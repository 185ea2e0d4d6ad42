"""What brushed cards of three paints of the demonstration shelf reflect.

The paints have K and S of their own: what is seen of each film is worked out by the optics of the
program, with hands that slip a little in the parts and in the coats. The studio, which makes the
picture of them, shares no code with the program; so this stands beside it.
"""

from functools import cache

import numpy as np

from studio.cards import BLACK, CARDS, PAINTS, WHITE, Brushed
from studio.lights import GRID, Array
from swatchwright.acts.sitting import Card, Sitting, with_cards
from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.paint.film import film_reflectance, reflectance_of_ratio
from swatchwright.paint.mixture import DRY_INDEX, Mixtures, mix
from swatchwright.paint.paints import stack
from swatchwright.paint.surface import (
    inner_reflectance,
    internal_diffuse,
    normal_reflectance,
    seen_reflectance,
)
from swatchwright.shelf.csv_file import demo_shelf

__all__ = ["card_films"]

PARTS_SLIP, COAT_SLIP = 0.03, 0.08
"""Standard deviation of the logarithm of an amount that was measured, and of a coat."""


@cache
def card_films() -> tuple[Brushed, ...]:
    """Give what each field of the sitting reflects, in the order of the sitting."""
    cards = with_cards(Sitting(ids=PAINTS, white=PAINTS[0], ground=True), demo_shelf()).cards
    rng = np.random.default_rng(CARDS.seed)
    coats = {card.id: float(np.exp(rng.normal(0.0, COAT_SLIP))) for card in cards}
    return tuple(
        Brushed(
            tuple(card.mix),
            card.over,
            np.interp(GRID, WAVELENGTHS, _film(card, coats[card.id], rng)),
        )
        for card in cards
    )


def _film(card: Card, coat: float, rng: np.random.Generator) -> Array:
    ground = np.full(WAVELENGTHS.size, WHITE if card.over == "white" else BLACK)
    if not card.mix:
        return ground
    paints = [demo_shelf().paint(id_) for id_, _ in card.mix]
    poured = np.array([parts * np.exp(rng.normal(0.0, PARTS_SLIP)) for _, parts in card.mix])
    film = mix(stack(paints), [range(len(paints))], [poured / poured.sum()])
    return np.asarray(_seen(film, ground, coat if card.over else 0.0)[0])


def _seen(film: Mixtures, ground: Array, coats: float) -> Array:
    """Give the reflectance (1, 36) of coats over a ground, or, of none, of a film that hides."""
    k1, k2 = float(normal_reflectance(DRY_INDEX)), float(internal_diffuse(DRY_INDEX))
    if coats:
        thick = (coats * film.wet_film * film.solids)[:, None]
        below = np.clip(inner_reflectance(ground, k1, k2), 0.0, 1.0)
        inside = film_reflectance(film.K, film.S, thick, below)
    else:
        inside = reflectance_of_ratio(film.K / film.S)
    return np.asarray(seen_reflectance(inside, k1, k2, film.glare[:, None]))
