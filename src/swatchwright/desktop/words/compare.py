"""The words of the page where mixes lie beside the wanted colour."""

from __future__ import annotations

from collections.abc import Sequence
from functools import reduce

from swatchwright.acts.compare import Candidate, Compared, Sight, State, WantedSight
from swatchwright.acts.compare_words import (
    LIGHT_WORDS,
    STATE_WORDS,
    drift_words,
    figure_words,
    light_notes,
    near_words,
    seen_name,
    shown_words,
    turn_words,
    usual_words,
    way_words,
)
from swatchwright.colour.convert import in_srgb
from swatchwright.colour.spectrum import Light
from swatchwright.desktop.words.bits import SCALE_TIP, first_up
from swatchwright.desktop.words.keeping import zone_name
from swatchwright.errors import MendableError
from swatchwright.language import figure, listed, say, say_in
from swatchwright.paint.paints import Paint

HEADING = say("Side by side")
HINT = say(
    "The wanted colour and the mixes for it, edge to edge: dry, wet or finished, in any light."
)
WAIT = say("Pick a colour and let its mixes be found: then they lie here beside it.")
RECKONING = say("Laying them side by side…")

MIXES, SEEN, IN_LIGHT = say("Mixes"), say_in("so it is seen", "Seen"), say_in("of a lamp", "Light")
WANTED = say("wanted")
STATES = {state: say(word).capitalize() for state, word in STATE_WORDS.items()}
LIGHTS = {light: first_up(say(word)) for light, word in LIGHT_WORDS.items()}
UNDER = {
    Light.D65: say("in daylight"),
    Light.LAMP: say("in warm lamp light"),
    Light.WARM_LED: say("in warm LED light"),
    Light.COOL_LED: say("in cool LED light"),
    Light.TUBE: say("in tube light"),
}
STATE_TIPS = {
    State.DRY: say("As it dries"),
    State.WET: say("In the pot, or just brushed, seen away from the glint"),
    State.WASHED: say("Under the washes of the Finish page, or else a usual pale one"),
    State.WAXED: say("Finished as on the Finish page, or else under a clear wax"),
}
LIGHT_TIPS = {
    Light.D65: say("Daylight at noon (D65)"),
    Light.LAMP: say("A filament lamp (CIE illuminant A)"),
    Light.WARM_LED: say("A warm white LED (LED-B1)"),
    Light.COOL_LED: say("A cooler white LED (LED-B3)"),
    Light.TUBE: say("A fluorescent tube (FL11)"),
}
FIGURES = say("Figures")
FIGURES_TIP = SCALE_TIP + say(
    "<p>Told with it: how far the dried mix usually is from the cloth, as long as no sample has "
    "been brushed.</p>"
)
EVERY_LIGHT = say("In every light")
EVERY_LIGHT_TIP = say(
    "All lights at once, and how each mix keeps to the cloth from one to the next"
)
FULL = say("Fill the screen")
FULL_KEY = "F11"
FULL_TIP = say("The wanted colour and one mix and nothing else, to hold the cloth up to")
LAST_ONE = say("At least one stays.")

SCREEN = say(
    "<p><b>Before you hold the cloth up</b></p>"
    "<p>This screen is not calibrated. It shows every colour a little otherwise than it is, often "
    "by more than these mixes differ: too bright or too dark as its brightness is set, too yellow "
    "where its night light is on, and otherwise seen from the side.</p>"
    "<p>So do not ask whether a colour is the same as the cloth. Ask which of two is nearer, and "
    "which way it would have to go. Hold the cloth in daylight beside the screen, not in the "
    "screen's own light, and look from straight ahead.</p>"
    "<p>What counts is a dried sample beside the cloth.</p>"
)
BEGIN = say("Press Space to go on, Escape to leave.")
STATE_KEYS = {
    State.DRY: say_in("a key", "D"),
    State.WET: say_in("a key", "W"),
    State.WASHED: say_in("a key", "S"),
    State.WAXED: say_in("a key", "X"),
}
"""The letters that show a state on the whole screen: all different, and neither L, M nor I."""
KEYS = say(
    "← → mix    D dry    W wet    S washed    X waxed    L light    M alone    I screen    Esc"
)
KEYS_TOLD = say(
    "Left and right: another mix. D dry, W wet, S washed, X waxed. L: the next light. M: the mix "
    "alone. I: about this screen. Escape: leave."
)


def mix_word(number: int, zones: Sequence[str] = (), besides: Sequence[str] = ()) -> str:
    """Name a mix by its number, and by the zones of the job that it is kept for.

    One for the whole piece is on all but the parts with mixes of their own.
    """
    if not zones:
        return say("mix {number}", number=number)
    kept = listed([zone_name(zone, besides) for zone in zones])
    return say("mix {number}, kept for {zones}", number=number, zones=kept)


def mix_told(mix: str, paints: Sequence[Paint], shares: Sequence[float]) -> str:
    """Tell a mix by its paints and their shares."""
    rows = zip(paints, shares, strict=True)
    told = [f"{figure(share, '.0%')} {p.name}" for p, share in rows]
    return f"{mix}: {', '.join(told)}"


def no_state(state: State) -> str:
    """Say that a state cannot be shown."""
    return say("{state} cannot be shown here", state=STATES[state])


def cell_word(mix: str, state: State, *, with_state: bool) -> str:
    """Head a field of the picture."""
    return f"{mix}, {_state(state)}" if with_state else mix


def _state(state: State) -> str:
    return say(STATE_WORDS[state])


def near_line(mix: str, sight: Sight, *, figures: bool = False) -> str:
    """Say first of a mix how near it is, in words or with the figure before its word."""
    head = f"{first_up(mix)}, {_state(sight.state)}"
    return f"{head}. {figure_words(sight)}" if figures else f"{head}: {near_words(sight)}"


def way_line(sight: Sight) -> str:
    """Say which way it differs, as a sentence of its own; empty if that is not to be seen."""
    way = way_words(sight)
    return say("{way} than wanted", way=first_up(way)) if way else ""


def figures_line(sight: Sight) -> str:
    """Say how far the mix usually is from the cloth, untried; empty where nothing is in doubt."""
    return first_up(usual_words(sight))


def laid_line(candidate: Candidate, state: State) -> str:
    """Say what lies over a mix in a state, and whose it is; empty for the bare coat."""
    over = next((laid for laid in candidate.laid if laid.state is state), None)
    if over is None:
        return ""
    layers = _one_by_one(over.words)
    if not over.usual:
        return say("Under {layers}, as on the Finish page", layers=layers)
    if state is State.WASHED:
        return say("Under {layers}: the usual wash, as none is laid on Finish", layers=layers)
    return say("Under {layers}: the usual wax, as none is laid on Finish", layers=layers)


def _one_by_one(layers: Sequence[str]) -> str:
    """List layers from below."""
    return reduce(lambda below, over: say("{below}, then {over}", below=below, over=over), layers)


def sight_told(mix: str, sight: Sight) -> str:
    """Tell a mix in a state under a light, for somebody who does not see the picture."""
    near, colour, way = near_line(mix, sight), seen_name(sight.shown), way_line(sight)
    if way:
        return say("{near}; it is {colour}. {way}.", near=near, colour=colour, way=way)
    return say("{near}; it is {colour}.", near=near, colour=colour)


def picture_told(wanted: WantedSight, rows: Sequence[str]) -> str:
    """Tell the whole picture for a screen reader."""
    head = say(
        "{under}. Wanted: {colour}.",
        under=first_up(UNDER[wanted.light]),
        colour=seen_name(wanted.shown),
    )
    return " ".join([head, *rows])


def light_head(sight: WantedSight) -> str:
    """Head the row of a light."""
    return LIGHTS[sight.light]


def turn_line(sight: WantedSight) -> str:
    """Say how the cloth itself turns in a light."""
    if sight.light is Light.D65:
        return ""
    turn = turn_words(sight)
    return say("the cloth looks {turn}", turn=turn) if turn else say("the cloth looks the same")


def change_line(sight: Sight, *, figures: bool) -> str:
    """Say in the overview how near a mix is in daylight, and what changes in another light."""
    way, drift = way_words(sight), drift_words(sight)
    near = figure_words(sight) if figures else near_words(sight)
    told = first_up(drift or near)
    if way and not drift.startswith(say("holds")):
        told = f"{told}; {way}"
    return f"{told}; {near}" if figures and drift else told


def overview_head(state: State) -> str:
    """Say what the overview shows."""
    return say(
        "{state}, in every light, each beside the wanted colour. How a mix keeps to the cloth "
        "when the light changes: it holds, drifts, or parts from it.",
        state=STATES[state],
    )


def notes_line(told: Compared, light: Light, states: Sequence[State], *, every_light: bool) -> str:
    """Say what to know of what is shown now."""
    lights = told.lights if every_light else (light,)
    shown = [told.wanted_under(seen).shown for seen in lights]
    shown += [
        one.sight(state, seen).shown
        for one in told.candidates
        for state in states
        for seen in lights
    ]
    told_of = (shown_words(shown), *light_notes(lights), *told.notes(states))
    return " ".join(text for text in told_of if text)


def trouble(error: MendableError) -> str:
    """Say what is wrong and how to mend it."""
    return f"{error.what} {error.mend}"


def pair_line(mix: str, sight: Sight, wanted: WantedSight, *, alone: bool) -> str:
    """Tell the two colours of the full screen."""
    told = say(
        "{which}, {state}, {under}: {near}",
        which=_which(mix, alone=alone),
        state=_state(sight.state),
        under=UNDER[sight.light],
        near=near_words(sight),
    )
    way = way_words(sight)
    told = f"{told}; {way}" if way else told
    shown = [(WANTED, wanted.shown)] if not alone else []
    out = [word for word, lab in [*shown, (say("mix"), sight.shown)] if not in_srgb(lab)]
    if not out:
        return told
    return say(
        "{told}. {colours}: more vivid than a screen shows",
        told=told,
        colours=first_up(listed(out)),
    )


def _which(mix: str, *, alone: bool) -> str:
    """Say what fills the screen."""
    if alone:
        return say("{mix} alone", mix=first_up(mix))
    return say("Wanted | {mix}", mix=mix)
