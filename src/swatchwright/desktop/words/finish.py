"""The words of the page of washes and finishes."""

from __future__ import annotations

from collections.abc import Sequence

from swatchwright.acts.finish import Look, StepLook
from swatchwright.colour.names import colour_name
from swatchwright.errors import MendableError
from swatchwright.paint.layers import LayerKind, Sheen
from swatchwright.values import Lab

HEADING = "Washes and finishes"
HINT = "What a wash, a glaze, a wax or a varnish makes of the mix, and which wash takes it where."
WAIT = "Pick a colour and let its mixes be found: then you see here what a wash or a wax does."
RECKONING = "Laying it on…"
FINDING_WAYS = "Finding washes…"

OVER = "Over"
MIXES = "The mix below all layers"
BARE = "bare mix"
WANTED = "wanted"
FLATS, WHOLE, GRAIN = "flats", "on the whole", "grain"
NOW, GOAL = "as it is", "where it should go"

BY_LAYERS = "Layer by layer"
BY_CLIENT = "The client wants it…"
SEEN = ("Dry, daylight", "Wet, daylight", "Dry, warm lamp", "Dry, cool LED")
SEEN_TIPS = (
    "Flats, the whole, and grain and mouldings, where a wash stays thicker",
    "While the last layer is wet, on the whole",
    "As an eye used to a warm lamp sees it, on the whole",
    "As an eye used to a cool LED sees it, on the whole",
)
FIGURES = "Figures"
FIGURES_TIP = "Show in the fields how sure, how far apart and how thick, as far as there is room"

ADD = "Lay on a"
PUT_ON = {kind: kind.value for kind in LayerKind}
NO_LAYERS = "Nothing lies over the mix yet. Lay on a wash or a finish, or ask which wash would do."
FULL = "That is as many layers as can be reckoned."
EARLIER, LATER, REMOVE = "Earlier", "Later", "Remove"
MORE_PAINT, LESS_PAINT = "Another paint in it", "Leave out"
WHICH_PAINT = "Paint"
PARTS = "Parts"
NO_COLOUR = "no colour in it"
NOT_THERE = "not on this shelf"
ONE_TO = "1 to"
LEFT = "wiped back to"
AMBER = "colour"
SHEEN = "sheen"
TIMES = "laid"
THINNER = {
    LayerKind.WASH: "of water",
    LayerKind.GLAZE: "of medium",
    LayerKind.WAX: "of clear wax",
}

USUAL = "as usual"
LEFT_WORDS = (
    (0.02, "next to nothing"),
    (0.1, "a tenth"),
    (0.2, "a fifth"),
    (1 / 3, "a third"),
    (0.5, "half"),
    (0.75, "three quarters"),
    (1.0, "all, not wiped"),
)
AMBER_WORDS: tuple[tuple[float | None, str], ...] = (
    (None, USUAL),
    (0.0, "colourless"),
    (0.3, "faintly amber"),
    (1.0, "amber"),
    (2.0, "deep amber"),
)
SHEEN_WORDS: tuple[tuple[Sheen | None, str], ...] = (
    (None, USUAL),
    *((sheen, sheen.value) for sheen in Sheen),
)

BUILDS_UP = "How layer {} builds up, straight over the mix"
BUILD_UP_HINT = "Press one to lay it so often."
NOT_BUILT = "A wash or a glaze shows here how it builds up."
TENDS_TO = "in the end"
MIND = "Mind"
TRY_IT = (
    "Try it on an inside face, let it dry, and look at it in the room. What the label says goes "
    "first; for a cot, a toy or what food touches take a finish that is sold for it."
)


def trouble(error: MendableError) -> str:
    """Say what is wrong and how to mend it."""
    return f"{error.what} {error.mend}"


def first_up(text: str) -> str:
    """Begin with a capital."""
    return f"{text[:1].upper()}{text[1:]}"


def mix_word(number: int) -> str:
    """Name a mix of the Colour page."""
    return f"mix {number}"


def chosen_word(zone: str) -> str:
    """Name a mix that was chosen for the job."""
    return f"chosen, {zone}" if zone else "chosen"


def mix_name(word: str, paints: Sequence[tuple[str, float]], lab: Lab) -> str:
    """Tell a mix for a screen reader and on pointing at it."""
    told = ", ".join(f"{share:.0%} {name}" for name, share in paints)
    return f"{first_up(word)}: {colour_name(lab)}; {told}"


def layer_head(number: int, kind: LayerKind) -> str:
    """Head a layer."""
    return f"{number}. {first_up(kind.value)}"


def of_layer(what: str, number: int, kind: LayerKind) -> str:
    """Name a control of a layer for a screen reader."""
    return f"{what}, {number}. {kind.value}"


def times_suffix(passes: int) -> str:
    """Follow the number of passes."""
    return " pass" if passes == 1 else " passes"


def left_word(left: float) -> str:
    """Say how much is left after wiping."""
    for share, told in LEFT_WORDS:
        if abs(left - share) < 0.005:
            return told
    return f"{left:.0%}"


def amber_word(amber: float) -> str:
    """Say how amber a clear finish is where no word of ours fits."""
    return f"amber, {amber:g} times"


def step_head(number: int, step: StepLook) -> str:
    """Head a step in its field."""
    return BARE if step.layer is None else f"{number}. {step.layer.kind.value}"


def step_figures(step: StepLook) -> tuple[str, ...]:
    """Give the figures of a step."""
    told = [f"within {step.doubt:.0f}" if step.doubt >= 1 else ""]
    if step.layer is not None:
        told.append(f"moves it {step.change:.1f}")
    if step.grain_range >= 0.05:
        told.append(f"grain {step.grain_range:.1f}")
    if step.film_um is not None:
        told.append(f"{step.film_um:.1f} µm dry")
    return tuple(text for text in told if text)


def step_told(number: int, step: StepLook, seen: Lab) -> str:
    """Tell a step whole, for a screen reader and on pointing at it."""
    head = first_up(BARE) if step.layer is None else f"{number}. {first_up(step.words)}"
    figures = "; ".join(step_figures(step))
    return f"{head}: {colour_name(seen)}" + (f" ({figures})" if figures else "")


def figures_note() -> str:
    """Explain the figures."""
    return (
        "Within: how far off it usually is. Moves: how far from the step before. Grain: how far "
        "flats and grain are apart. All in CIEDE2000: 0.8 is just seen side by side. µm dry: "
        "thickness of the dry paint."
    )


def result_line(look: Look) -> str:
    """Say in a sentence what comes of it all."""
    last = look.steps[-1]
    if last.layer is None:
        return f"The bare mix is {colour_name(last.dry)}."
    apart = "" if last.grain_range < 0.8 else f", {_evenness(last.grain_range)}"
    return (
        f"With all layers dry it is {colour_name(last.dry)}{apart}. It usually lands within about "
        f"{last.doubt:.0f} of this (1 is just seen)."
    )


def _evenness(apart: float) -> str:
    return "a little livelier in the grain" if apart < 4 else "clearly stronger in the grain"


def cautions(notes: Sequence[str], of_shelf: Sequence[str], *, laid: bool) -> tuple[str, ...]:
    """Give what to mind, without what is said of the shelf elsewhere."""
    told = tuple(note for note in notes if note not in of_shelf)
    return (*told, TRY_IT) if laid else told


def pass_told(count: int, lab: Lab) -> str:
    """Tell a pass for a screen reader."""
    head = {0: "Not laid", 1: "Once", 2: "Twice"}.get(count, f"{count} times")
    return f"{head}: {colour_name(lab)}"
