"""The words of the page of washes and finishes."""

from __future__ import annotations

from collections.abc import Sequence

from swatchwright.acts.batches import WHOLE_PIECE
from swatchwright.acts.finish_values import StepLook
from swatchwright.colour.names import closeness, colour_name, scale_told
from swatchwright.colour.spectrum import Light
from swatchwright.errors import MendableError
from swatchwright.language import say, say_count, say_in
from swatchwright.paint.layers import LayerKind, Sheen
from swatchwright.paint.wiped import SHARES_LEFT, share_left
from swatchwright.values import Lab

HEADING = say("Washes and finishes")
HINT = say(
    "What a wash, a glaze, a wax or a varnish makes of the mix, and which wash takes it where."
)
WAIT = say("Pick a colour and let its mixes be found: then you see here what a wash or a wax does.")
RECKONING = say("Laying it on…")
FINDING_WAYS = say("Finding washes…")

OVER = say_in("a mix", "Over")
MIXES = say("The mix below all layers")
BARE = say("bare mix")
WANTED = say("wanted")
FLATS, WHOLE, GRAIN = say_in("of a piece", "flats"), say("on the whole"), say("grain")
NOW, GOAL = say("as it is"), say("where it should go")

BY_LAYERS = say("Layer by layer")
BY_CLIENT = say("The client wants it…")
CLOTH_CAUTION = say(
    "What dyes the cloth holds nobody can tell from a photo: in this light it may look otherwise "
    "than it is shown here."
)
FIGURES = say("Figures")
FIGURES_TIP = say(
    "Show in the fields how sure, how far apart and how thick, as far as there is room"
)

ADD = say("Lay on a")
PUT_ON = {kind: say(kind.value) for kind in LayerKind}
PUT_ON_TIPS = {
    LayerKind.WASH: say("Thinned paint, brushed on and wiped back: it stays in grain and hollows"),
    LayerKind.GLAZE: say("Paint in clear medium: a thin veil of colour over the mix"),
    LayerKind.WAX: say("Rubbed in and buffed: clear, or with paint in it"),
    LayerKind.OIL: say("Rubbed in, the rest wiped off: it deepens and warms the colour"),
    LayerKind.VARNISH: say("A clear coat that protects; its sheen changes the colour a little"),
}
NO_LAYERS = say(
    "Nothing lies over the mix yet. Lay on a wash or a finish, or ask which wash would do."
)
FULL = say("That is as many layers as can be reckoned.")
EARLIER, LATER = say_in("to lay a layer", "Earlier"), say_in("to lay a layer", "Later")
REMOVE = say("Remove")
MORE_PAINT, LESS_PAINT = say("Another paint in it"), say("Leave out")
WHICH_PAINT = say("Paint")
PARTS = say("Parts")
NO_COLOUR = say("no colour in it")
NOT_THERE = say("not on this shelf")
ONE_TO = say("1 to")
LEFT = say("wiped back to")
AMBER = say_in("of a clear finish", "colour")
SHEEN = say("sheen")
TIMES = say_in("how often", "laid")
THINNER = {
    LayerKind.WASH: say("of water"),
    LayerKind.GLAZE: say("of medium"),
    LayerKind.WAX: say("of clear wax"),
}

USUAL = say("as usual")
LEFT_WORDS = tuple((share, say(told)) for share, told in SHARES_LEFT)
AMBER_WORDS: tuple[tuple[float | None, str], ...] = (
    (None, USUAL),
    (0.0, say("colourless")),
    (0.3, say("faintly amber")),
    (1.0, say("amber")),
    (2.0, say("deep amber")),
)
SHEEN_WORDS: tuple[tuple[Sheen | None, str], ...] = (
    (None, USUAL),
    *((sheen, say(sheen.value)) for sheen in Sheen),
)

BUILD_UP_HINT = say("Press one to lay it so often.")
NOT_BUILT = say("A wash or a glaze shows here how it builds up.")
TENDS_TO = say("in the end")
MIND = say("Mind")
TRY_IT = say(
    "Try it on an inside face, let it dry, and look at it in the room. What the label says goes "
    "first; for a cot, a toy or what food touches take a finish that is sold for it."
)


def builds_up(number: int, light: Light | None) -> str:
    """Head the picture of how a layer builds up: dry in daylight, which is said beside others."""
    if light is Light.D65:
        return say("How layer {number} builds up, straight over the mix", number=number)
    if light is None:
        return say("How layer {number} builds up, straight over the mix: dry", number=number)
    return say("How layer {number} builds up, straight over the mix: in daylight", number=number)


def trouble(error: MendableError) -> str:
    """Say what is wrong and how to mend it."""
    return f"{error.what} {error.mend}"


def first_up(text: str) -> str:
    """Begin with a capital."""
    return f"{text[:1].upper()}{text[1:]}"


def mix_word(number: int) -> str:
    """Name a mix of the Colour page."""
    return say("mix {number}", number=number)


def chosen_word(zone: str) -> str:
    """Name a mix that was chosen for the job."""
    if not zone:
        return say_in("a mix", "chosen")
    told = say_in("of zones", "all") if zone == WHOLE_PIECE else say(zone)
    return say("chosen, {zone}", zone=told)


def mix_name(word: str, paints: Sequence[tuple[str, float]], lab: Lab) -> str:
    """Tell a mix for a screen reader and on pointing at it."""
    told = ", ".join(say("{share:.0%} {name}", share=share, name=name) for name, share in paints)
    return f"{first_up(word)}: {colour_name(lab)}; {told}"


def layer_head(number: int, kind: LayerKind) -> str:
    """Head a layer."""
    return f"{number}. {first_up(say(kind.value))}"


def of_layer(what: str, number: int, kind: LayerKind) -> str:
    """Name a control of a layer for a screen reader."""
    return f"{what}, {number}. {say(kind.value)}"


def times_suffix(passes: int) -> str:
    """Follow the number of passes."""
    return say_count(" pass", " passes", passes)


def left_word(left: float) -> str:
    """Say how much is left after wiping."""
    return share_left(left)


def amber_word(amber: float) -> str:
    """Say how amber a clear finish is where no word of ours fits."""
    return say("amber, {times:g} times", times=amber)


def step_head(number: int, step: StepLook) -> str:
    """Head a step in its field."""
    return BARE if step.layer is None else f"{number}. {say(step.layer.kind.value)}"


def step_figures(step: StepLook) -> tuple[str, ...]:
    """Give the figures of a step."""
    told = [_within(step.doubt)] if step.doubt >= 1 else []
    if step.layer is not None:
        change = step.change
        told.append(say("moves it {change:.1f}: {seen}", change=change, seen=closeness(change)))
    if step.in_grain:
        apart = step.grain_range
        told.append(say("grain {range:.1f}: {seen}", range=apart, seen=closeness(apart)))
    if step.film_um is not None:
        told.append(say("{film:.1f} µm dry", film=step.film_um))
    return tuple(told)


def _within(doubt: float) -> str:
    return say("within {doubt:.0f}: {seen}", doubt=doubt, seen=closeness(round(doubt)))


def step_told(number: int, step: StepLook, seen: Lab) -> str:
    """Tell a step whole, for a screen reader and on pointing at it."""
    head = first_up(BARE) if step.layer is None else f"{number}. {first_up(step.words)}"
    figures = "; ".join(step_figures(step))
    return f"{head}: {colour_name(seen)}" + (f" ({figures})" if figures else "")


def figures_note() -> str:
    """Explain the figures."""
    told = say(
        "Within: how far off it usually is. Moves: how far from the step before. Grain: how far "
        "flats and grain are apart. µm dry: thickness of the dry paint."
    )
    return f"{told} {scale_told()}"


def cautions(
    notes: Sequence[str],
    of_shelf: Sequence[str],
    *,
    laid: bool,
    light: Light | None = Light.D65,
) -> tuple[str, ...]:
    """Give what to mind, without what is said of the shelf elsewhere."""
    told = tuple(note for note in notes if note not in of_shelf)
    told = (*told, TRY_IT) if laid else told
    return told if light in {None, Light.D65} else (CLOTH_CAUTION, *told)


def pass_told(count: int, lab: Lab) -> str:
    """Tell a pass for a screen reader."""
    return f"{_how_often(count)}: {colour_name(lab)}"


def _how_often(count: int) -> str:
    if count == 0:
        return say("Not laid")
    if count == 1:
        return say_in("laid", "Once")
    return say_in("laid", "Twice") if count == 2 else say("{count} times", count=count)
