"""The words of the page of the sample."""

from __future__ import annotations

from swatchwright.acts.sample import Advice, NextMix
from swatchwright.acts.sample_judged import AMOUNTS, TOO, How, Judged
from swatchwright.acts.sample_rounds import Round, SampleLoop, Stop
from swatchwright.colour.difference import ACCEPTED, JUST_SEEN
from swatchwright.colour.names import closeness, difference_words
from swatchwright.shelf.shelf import Shelf

HEADING = "Sample"
HINT = (
    "Mix a little, brush it on card, let it dry, and photograph it beside the cloth with a grey in "
    "the same photo. What is left between the two tells what to add."
)
WAIT = (
    "The sample is of a mix. Pick a colour and find its mixes on the page Colour first; or open a "
    "job that has one."
)

OPEN = "Open the sample photo…"
TRY = "Try it on a rendered sample"
DROP = "Photograph the dried sample beside the cloth, with the grey card in the photo."
WITHOUT = "No camera? Say below how it looks beside the cloth."
PHOTO_NAME = "Photo with the marks of the grey card, the cloth and the sample"
GREY, CLOTH, SAMPLE = "grey card", "cloth", "sample"
HINTS = {
    "grey": "Drag a box on the grey card, well inside it.",
    "cloth": "Drag a box on the cloth, on the one colour.",
    "sample": "Drag a box on the dried sample.",
    "done": "Drag to move, corners to size, Shift to draw anew.",
}
READING = "Reading the sample photo…"
COMPARING = "Comparing…"
REASONING = "Finding what to add…"

BY_EYE = "Or by eye: beside the cloth it is"
EYE_AMOUNT, EYE_FIRST, EYE_SECOND = "How much", "In which way", "And in which way"
EYE_LIKE = "like the cloth"
EYE_AND = "and"
EYE_NOTHING_ELSE = "nothing else"
EYE_TAKE = "So it looks"

MIXED = "What the sample was mixed of"
WHICH_MIX = "Mix"
SAMPLE_OF = "ml in all"
NEXT_STRIPES = ("to be brushed beside that, to one side", "to be brushed beside that, to the other")
STRIPES = ("brushed beside it, to one side", "brushed beside it, to the other side")
FIND_STRIPES = "What to brush beside it"
FIND_STRIPES_TIP = (
    "Two more stripes of the same paints in the same photo teach far more than one sample alone"
)
PROPOSED = "as proposed after the last sample"
JAR = "the last sample with what was added"

DIFFERENCE = "The sample beside the cloth"
NO_DIFFERENCE = (
    "Mark the cloth and the sample, or say how it looks, and the difference stands here."
)
KEEP = "What do I add?"
KEEP_TIP = "Keep this sample with the job, learn from it, and find what to add"
FIELD_CLOTH, FIELD_SAMPLE, FIELD_AFTER = "cloth", "sample", "expected then"

NEXT = "What to do"
POT = "Put right a pot of"
TUB = "in a tub of"
NO_ADVICE = "Once a sample is kept, what to add stands here."
FAN = "Choose from a fan by eye…"
DONE = {
    Stop.UNSEEN: "Done: nobody will see it.",
    Stop.UNTOLD: "Done, as far as this can tell.",
}
DONE_MORE = {
    Stop.UNSEEN: "The difference is below what half of all people see side by side.",
    Stop.UNTOLD: (
        "What is left is within the error of the comparison. Hold the sample to the cloth in the "
        "light of the room; if your eye still parts them, take a better photo."
    ),
}
MOST_ACCEPT = "Most people would accept it as it is. To come nearer still:"
NOTHING_TO_ADD = "Nothing that may be added to this pot, in this tub, brings it nearer."
FRESH = "Or a fresh sample"
FRESH_BETTER = "Better: a fresh sample"
BESIDE = "Brush these beside it in the same photo: to either side of where it is least sure."

HOME = "How it came home"
HOME_NAME = "How far each sample was from the cloth"
NO_ROUNDS = "Each sample that is kept stands here with how far it was from the cloth."
TAKE_BACK = "Take the last back"
GREY_TAG = "Grey card"
TEACH = "Teach the paints"
TEACH_TIP = (
    "From now on all mixes on the bench are found with the paints as the samples showed them to be"
)
TAUGHT = "The paints on the bench have learnt from these samples."
ANEW = "Begin anew"
LINE_SEEN, LINE_ACCEPTED = "just seen", "accepted"

_HOW = {
    How.PHOTO: "by photo",
    How.EYE: "by eye",
    How.FIGURES: "by figures",
    How.PICK: "picked from the fan",
}


def amounts() -> tuple[str, ...]:
    """Give the words for how much."""
    return tuple(AMOUNTS)


def ways() -> tuple[str, ...]:
    """Give the words for which way, without their “too”."""
    return tuple(word.removeprefix("too ") for word in TOO)


def said(amount: str, first: str, second: str) -> str:
    """Put together what was said by eye."""
    told = f"{amount} too {first}"
    return f"{told} and too {second}" if second else told


def mix_name(number: int, ids: tuple[str, ...], shelf: Shelf) -> str:
    """Name a mix of the bench."""
    return f"{number}: {', '.join(shelf.paint(id_).name for id_ in ids)}"


def difference(judged: Judged) -> str:
    """Say in words how the sample differs."""
    told = difference_words(judged.cloth, judged.sample)
    near = closeness(judged.delta_e)
    if not told:
        return near[0].upper() + near[1:]
    return f"{_joined(told).capitalize()} than the cloth"


def nearness(judged: Judged) -> str:
    """Say in words how near it is; empty where the difference says it."""
    if not difference_words(judged.cloth, judged.sample):
        return ""
    near = closeness(judged.delta_e)
    return f"{near[0].upper()}{near[1:]}."


def _joined(told: tuple[str, ...]) -> str:
    return " and ".join([", ".join(told[:-1]), told[-1]] if len(told) > 1 else told)


def figures(judged: Judged) -> str:
    """Give the figures behind the words."""
    dL, da, db = judged.vector
    return (
        f"{judged.delta_e:.1f} ± {judged.give_or_take:.1f}   L* {dL:+.1f}  a* {da:+.1f}  "
        f"b* {db:+.1f}"
    )


FIGURES_TIP = (
    f"<p>The difference in CIEDE2000: {JUST_SEEN} is just seen side by side, {ACCEPTED} is "
    "accepted by most. After the ± stands how far off that usually is.</p>"
)


def field_name(judged: Judged) -> str:
    """Tell the touching colours to a screen reader."""
    told = f"{FIELD_CLOTH} beside {FIELD_SAMPLE}: {difference(judged)}"
    near = nearness(judged)
    return f"{told}. {near}" if near else told


def add_lines(advice: Advice) -> tuple[str, ...]:
    """Say what to add to the pot, the least first."""
    return tuple(f"{millilitres(step.ml)}  {step.paint.name}" for step in advice.additions.steps)


def pot_after(advice: Advice) -> str:
    """Say what the pot is then."""
    return (
        f"The pot then holds {millilitres(advice.additions.volume)} and should be within about "
        f"{advice.after.usual:.1f} of the cloth. Add a third first, stir, and let a sample dry."
    )


def fresh_lines(advice: Advice) -> tuple[str, ...]:
    """Say what to measure for a fresh sample, in the order of pouring."""
    amounts_ = {p.paint.id: 0.0 for p in advice.fresh.pours}
    names = {p.paint.id: p.paint.name for p in advice.fresh.pours}
    for pour in advice.fresh.pours:
        amounts_[pour.paint.id] += pour.ml
    return tuple(f"{millilitres(ml)}  {names[id_]}" for id_, ml in amounts_.items())


def fresh_after(advice: Advice) -> str:
    """Say how near a fresh sample should come, and in which order to pour."""
    return (
        f"In this order, the last in thirds. It should be within about "
        f"{advice.fresh.outlook.usual:.1f} of the cloth."
    )


def beside_line(mix: NextMix, shelf: Shelf) -> str:
    """Say what to measure for a stripe beside the sample."""
    return ", ".join(f"{millilitres(ml)} {shelf.paint(id_).name}" for id_, ml in mix.mixed)


def stripes_text(stripes: tuple[NextMix, ...], shelf: Shelf) -> str:
    """Say what to brush beside a mix before any sample is dry."""
    return "\n".join(beside_line(mix, shelf) for mix in stripes)


def round_line(number: int, one: Round, shelf: Shelf) -> str:
    """Tell one sample of the list."""
    names = {paint.id: paint.name for paint in shelf.paints}
    of = ", ".join(f"{millilitres(ml)} {names.get(id_, id_)}" for id_, ml in one.mixed)
    how = f"{_HOW[one.how]}, “{one.said}”" if one.said and one.how is How.EYE else _HOW[one.how]
    return f"{number}.  {one.delta_e:.1f} ± {one.give_or_take:.1f}, {how}, {one.day}: {of}"


def home_name(loop: SampleLoop) -> str:
    """Tell the picture of the distances to a screen reader."""
    told = ", ".join(f"{one.delta_e:.1f}" for one in loop.rounds)
    return f"{HOME_NAME}: {told}" if told else HOME_NAME


def millilitres(ml: float) -> str:
    """Say a volume."""
    return f"{ml:.1f} ml" if ml < 100 else f"{ml:.0f} ml"


def kept_name(zone: str, names: list[str]) -> str:
    """Name a mix that is kept with the job."""
    return f"kept for {zone}: {', '.join(names)}"
