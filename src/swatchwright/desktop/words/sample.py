"""The words of the page of the sample."""

from __future__ import annotations

from itertools import pairwise

from swatchwright.acts.batches import WHOLE_PIECE
from swatchwright.acts.sample import Advice, NextMix
from swatchwright.acts.sample_judged import AMOUNTS, LIKE_THE_CLOTH, TOO, How, Judged
from swatchwright.acts.sample_rounds import Round, SampleLoop, Stop
from swatchwright.acts.sample_taken import Taken
from swatchwright.acts.sample_why import Why
from swatchwright.colour.difference import JUST_SEEN
from swatchwright.colour.names import closeness, closeness_between, difference_words, off_words
from swatchwright.desktop.words.bits import SCALE_TIP, first_up
from swatchwright.desktop.words.keeping import zone_name
from swatchwright.language import bound, figure, listed, say, say_in
from swatchwright.piece.names import zone_word
from swatchwright.sheet.told import date_text
from swatchwright.shelf.shelf import Shelf

HEADING = say("Sample")
HINT = say(
    "Mix a little, brush it on card, let it dry, and photograph it beside the cloth with a grey in "
    "the same photo. What is left between the two tells what to add."
)
WAIT = say(
    "The sample is of a mix. Pick a colour and find its mixes on the page Colour first; or open a "
    "job that has one."
)

OPEN = say("Open the sample photo…")
TRY = say("Practise with an example")
DROP = say("Photograph the dried sample beside the cloth, with the grey card in the photo.")
WITHOUT = say("No camera? Say below how it looks beside the cloth.")
PHOTO_NAME = say("Photo with the marks of the grey card, the cloth and the sample")
GREY, CLOTH, SAMPLE = say("grey card"), say("cloth"), say("sample")
HINTS = {
    "grey": say("Drag a box on the grey card, well inside it."),
    "cloth": say("Drag a box on the cloth, on the one colour."),
    "sample": say("Drag a box on the dried sample."),
    "done": say("Drag to move, corners to size, Shift to draw anew."),
}
READING = say("Reading the sample photo…")
COMPARING = say("Comparing…")
REASONING = say("Finding what to add…")

BY_EYE = say("Or by eye: beside the cloth it is")
EYE_AMOUNT, EYE_FIRST, EYE_SECOND = say("How much"), say("In which way"), say("And in which way")
EYE_LIKE = say("like the cloth")
EYE_AND = say("and")
EYE_NOTHING_ELSE = say("nothing else")
EYE_TAKE = say("So it looks")

MIXED = say("What the sample was mixed of")
AS_MIXED = say("as it was mixed")
WHICH_MIX = say_in("one of several", "Mix")
NEXT_STRIPES = (say("fresh, stripe 2 of 3"), say("fresh, stripe 3 of 3"))
STRIPES = (say("stripe 2 of 3"), say("stripe 3 of 3"))
FIND_STRIPES = say("What to brush beside it")
FIND_STRIPES_TIP = say(
    "Two more stripes of the same paints in the same photo teach far more than one sample alone"
)
PROPOSED = say("fresh, as proposed")
JAR = say("the last one, with what was added")

DIFFERENCE = say("The sample beside the cloth")
NO_DIFFERENCE = say(
    "Mark the cloth and the sample, or say how it looks, and the difference stands here."
)
AGAINST = say(
    "The sample is judged against the cloth in the same photo, not against the wanted colour."
)
MISREAD = say(
    "The grey is not on a grey card, so no difference can be told by it. Mark the card first."
)
KEEP = say("What do I add?")
KEEP_ALL_THE_SAME = say("What do I add, all the same?")
KEEP_TIP = say("Keep this sample with the job, learn from it, and find what to add")
FIELD_CLOTH, FIELD_SAMPLE = say("cloth"), say("sample")
FIELD_NOW = say("sample now")
FIELD_ADDED, FIELD_FRESH = say("after adding"), say("fresh sample")

NEXT = say("What to do")
POT = say("Put right a pot of")
TUB = say("that has room for")
NO_SAMPLE = say("Once a sample is held to the cloth and kept, what to do stands here.")
RECKONING = say("Reckoning what to do…")
RECKONING_ANEW = say("Reckoning anew; until then this is what was found before.")
FAN = say("Choose from a fan by eye…")
DONE_BY_EYE = say("Done: as near as you can see.")
DONE_UNSEEN = say("Done: hardly anybody will see it.")
DONE_UNTOLD = say("Done, as far as this can tell.")
MOST_ACCEPT = say("Most people would accept it as it is.")
NEARER_STILL = say("To come nearer still")
LEAVE = say("Leave it as it is.")
ALL_THE_SAME = say("If you want to try all the same")
NOTHING_TO_ADD = say(
    "Nothing that may be added to this pot, with the room it has, brings it nearer."
)
FRESH = say("Or a fresh sample")
FRESH_BETTER = say("Better: a fresh sample")
OR_ADD = say("Or add to the pot")
UNSURE = say(
    "Neither is sure to come nearer than this sample: what is not known of paints and cloth is as "
    "large as what is left. Stripes brushed beside it in the same photo tell more."
)
MISREAD_ADVICE = say(
    "The grey in the photo of this sample was none, so what follows is wrong. Mark the grey card, "
    "and ask again."
)
BESIDE = say("Brush these beside it in the same photo: to either side of where it is least sure.")

HOME = say("How it came home")
HOME_NAME = say("How far each sample was from the cloth")
NO_ROUNDS = say("Each sample that is kept stands here with how far it was from the cloth.")
TAKE = say("Use this sample")
TAKE_TIP = say(
    "The mix is then what was poured for this sample, with nothing added: amounts, finish and "
    "sheet go by it"
)
POT_TIP = say(
    "Press it when you have stirred in what stands above: the mix is then what the pot holds now, "
    "and amounts, finish and sheet go by it"
)
TAKE_BACK = say("Take the last back")
GREY_TAG = say("Grey card")
TEACH = say("Teach the paints")
TEACH_TIP = say(
    "From now on all mixes on the bench are found with the paints as the samples showed them to "
    "be. Undo takes it back."
)
TEACH_NONE = say("Only a sample that is kept can teach.")
ANEW = say("Begin anew")
LINE_SEEN, LINE_ACCEPTED = say("just seen"), say("accepted")

_HOW = {
    How.PHOTO: say("by photo"),
    How.EYE: say("by eye"),
    How.FIGURES: say("by figures"),
    How.PICK: say("picked from the fan"),
}


_AMOUNTS = {
    "a touch": say_in("of a sample", "a touch"),
    "clearly": say_in("of a sample", "clearly"),
    "much": say_in("of a sample", "much"),
}
_TOO = {
    "too light": say_in("of a sample", "too light"),
    "too dark": say_in("of a sample", "too dark"),
    "too red": say_in("of a sample", "too red"),
    "too green": say_in("of a sample", "too green"),
    "too yellow": say_in("of a sample", "too yellow"),
    "too blue": say_in("of a sample", "too blue"),
    "too vivid": say_in("of a sample", "too vivid"),
    "too grey": say_in("of a sample", "too grey"),
    "too warm": say_in("of a sample", "too warm"),
    "too cool": say_in("of a sample", "too cool"),
}
"""What may be said by eye, by the words in which it is understood and kept."""


def no_advice(button: str) -> str:
    """Say what to do so that it is said what to add.

    `button` is what the button for it says; empty while there is none to press.
    """
    if not button:
        return NO_SAMPLE
    return say("Press “{button}” above, and what to do stands here.", button=button)


def amounts() -> tuple[tuple[str, str], ...]:
    """Give the words for how much, each with the word that is understood."""
    return tuple((_AMOUNTS[word], word) for word in AMOUNTS)


def ways() -> tuple[tuple[str, str], ...]:
    """Give the words for which way, each with the word that is understood, without its “too”."""
    return tuple((_TOO[word], word.removeprefix("too ")) for word in TOO)


def said(amount: str, first: str, second: str) -> str:
    """Put together what was said by eye, in the words that are understood."""
    told = f"{amount} too {first}"
    return f"{told} and too {second}" if second else told


def eye_told(kept: str) -> str:
    """Tell what was said by eye; words that are not known here stay."""
    if kept == LIKE_THE_CLOTH:
        return EYE_LIKE
    told, *more = (_step_told(step) for step in kept.split(" and "))
    for step in more:
        told = say("{first} and {second}", first=told, second=step)
    return told


def _step_told(kept: str) -> str:
    """Tell one of the steps that were said: “a touch too light”, or “too yellow” alone."""
    for word, amount in _AMOUNTS.items():
        way = _TOO.get(kept.removeprefix(f"{word} "))
        if way is not None and kept.startswith(word):
            return say("{amount} {way}", amount=amount, way=way)
    return _TOO.get(kept, kept)


def mix_name(number: int, ids: tuple[str, ...], shelf: Shelf) -> str:
    """Name a mix of the bench."""
    return f"{number}: {', '.join(shelf.paint(id_).name for id_ in ids)}"


def sample_head(number: int, *, held: bool) -> str:
    """Head what a sample was mixed of: one that was kept, or the next one."""
    if held:
        return say(
            "Sample {number}, which you see. The next one begins with another photo or mark, or "
            "when you say how it looks.",
            number=number,
        )
    return say("The next one, sample {number}", number=number)


def two_photos(apart: float) -> str:
    """Say that the cloth is another colour here than where it was wanted from."""
    return say(
        "Here the cloth is {apart:.0f} from the wanted colour ({seen}), more than both photos "
        "leave in doubt. The sample is judged against the cloth in this photo. Look at the light "
        "of both.",
        apart=apart,
        seen=closeness(round(apart)),
    )


def difference(judged: Judged) -> str:
    """Say in words how the sample differs: in her own by eye, else in all ways that can be seen."""
    if judged.how is How.EYE and judged.said:
        return first_up(eye_told(judged.said))
    told = difference_words(judged.cloth, judged.sample, seen=JUST_SEEN)
    if not told:
        return first_up(closeness(judged.delta_e))
    return first_up(say("{ways} than the cloth", ways=listed(told)))


def nearness(judged: Judged) -> str:
    """Say how near it is: in a figure with its word, by eye at the most in the word alone.

    Empty where the difference, or she herself, says it.
    """
    if judged.how not in {How.EYE, How.PICK}:
        return say(
            "{off:.1f} ± {doubt:.1f} off: {seen}",
            off=judged.delta_e,
            doubt=judged.give_or_take,
            seen=closeness(judged.delta_e),
        )
    if judged.said or not difference_words(judged.cloth, judged.sample):
        return ""
    return f"{first_up(closeness(judged.delta_e))}."


def figures(judged: Judged) -> str:
    """Give what is behind the words; of a word by eye only between which words it lies."""
    if judged.how in {How.EYE, How.PICK}:
        low = max(0.0, judged.delta_e - judged.give_or_take)
        high = judged.delta_e + judged.give_or_take
        return say("By eye: {seen}", seen=closeness_between(round(low), round(high)))
    dL, da, db = judged.vector
    return say(
        "L* {dL:+.1f}  a* {da:+.1f}  b* {db:+.1f}",
        dL=dL,
        da=da,
        db=db,
    )


FIGURES_TIP = SCALE_TIP + say("<p>After the ± stands how far off that usually is.</p>")


def field_name(judged: Judged) -> str:
    """Tell the touching colours to a screen reader."""
    told = say("cloth beside sample: {difference}", difference=difference(judged))
    near = nearness(judged)
    return f"{told}. {near}" if near else told


def done_lines(advice: Advice) -> tuple[str, str]:
    """Say that it is done, and on what that rests; only where there is a reason to stop."""
    one = advice.last
    if advice.stop is Stop.UNTOLD:
        return DONE_UNTOLD, say(
            "What is left is within the error of the comparison. Hold the sample to the cloth in "
            "the light of the room; if your eye still parts them, take a better photo."
        )
    if one.how in {How.EYE, How.PICK}:
        return DONE_BY_EYE, say(
            "It rests on your eye. Look once more in the light of the room; a photo beside the "
            "cloth tells smaller differences than an eye remembers."
        )
    return DONE_UNSEEN, say(
        "It is {off:.1f} off ({word}), give or take {doubt:.1f}. At {seen:.1f} half of all people "
        "see a difference side by side, below that fewer.",
        off=one.delta_e,
        word=closeness(one.delta_e),
        doubt=one.give_or_take,
        seen=JUST_SEEN,
    )


def add_lines(advice: Advice) -> tuple[str, ...]:
    """Say what to add to the pot, the least first, and what each does to it."""
    turns = pairwise(advice.turns)
    return tuple(
        _add_line(f"{millilitres(step.ml)}  {step.paint.name}", difference_words(*turn))
        for step, turn in zip(advice.additions.steps, turns, strict=True)
    )


def _add_line(told: str, ways: tuple[str, ...]) -> str:
    return say("{paint}: makes it {ways}", paint=told, ways=listed(ways)) if ways else told


def why_lines(advice: Advice) -> tuple[str, ...]:
    """Say why a fresh sample is better, or what speaks against adding, in a line or two."""
    held = sum(ml for _, ml in advice.pot)
    added = advice.additions.volume - held
    told = {
        Why.NOTHING: NOTHING_TO_ADD,
        Why.MUCH: say(
            "To put this pot right would take {added}, {share:.0%} of what is in it.",
            added=millilitres(added),
            share=added / held,
        ),
        Why.LITTLE: say(
            "Adding would help little: this sample is {now:.1f} off ({seen}), and the pot would "
            "still be about {then:.1f} off ({then_seen}).",
            now=advice.last.delta_e,
            seen=closeness(advice.last.delta_e),
            then=advice.after.usual,
            then_seen=closeness(advice.after.usual),
        ),
        Why.NEARER: say("What is in the pot stands in the way: a fresh mix can come nearer."),
    }
    return tuple(told[why] for why in (advice.why or advice.costs)[:2])


def fields_name(word: str, usual: float) -> str:
    """Tell cloth, sample and what may be expected to a screen reader."""
    return say(
        "cloth beside the sample as it is and {then}: about {off:.1f} from the cloth ({seen})",
        then=word,
        off=usual,
        seen=closeness(usual),
    )


def pot_after(advice: Advice) -> str:
    """Say what the pot is then."""
    return say(
        "The pot then holds {amount} and should be within about {off:.1f} of the cloth ({seen}). "
        "Add a third first, stir, and let a sample dry.",
        amount=millilitres(advice.additions.volume),
        off=advice.after.usual,
        seen=closeness(advice.after.usual),
    )


def fresh_lines(advice: Advice) -> tuple[str, ...]:
    """Say what to measure for a fresh sample, in the order of pouring."""
    amounts_ = {p.paint.id: 0.0 for p in advice.fresh.pours}
    names = {p.paint.id: p.paint.name for p in advice.fresh.pours}
    for pour in advice.fresh.pours:
        amounts_[pour.paint.id] += pour.ml
    return tuple(f"{millilitres(ml)}  {names[id_]}" for id_, ml in amounts_.items())


def wider_line(advice: Advice, shelf: Shelf) -> str:
    """Say what one paint more than was asked for would bring; empty where it brings little."""
    if advice.wider is None:
        return ""
    told = {
        "off": advice.fresh.outlook.usual,
        "then": advice.wider.outlook.usual,
        "seen": closeness(advice.wider.outlook.usual),
        "mix": beside_line(advice.wider, shelf),
    }
    if len(advice.wider.mixed) > 3:
        return say("A fourth paint brings it from {off:.1f} to {then:.1f} ({seen}): {mix}.", **told)
    return say("A third paint brings it from {off:.1f} to {then:.1f} ({seen}): {mix}.", **told)


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
    how = _HOW[one.how]
    if one.said and one.how is How.EYE:
        how = say("by eye, “{said}”", said=eye_told(one.said))
    if one.how in {How.EYE, How.PICK}:
        return say(
            "{number}.  {seen}, {how}, {day}: {mix}",
            number=number,
            seen=closeness(round(one.delta_e)),
            how=how,
            day=date_text(one.day),
            mix=of,
        )
    return say(
        "{number}.  {off:.1f} ± {doubt:.1f} off ({seen}), {how}, {day}: {mix}",
        number=number,
        off=one.delta_e,
        seen=closeness(one.delta_e),
        doubt=one.give_or_take,
        how=how,
        day=date_text(one.day),
        mix=of,
    )


def take_for(zone: str) -> str:
    """Say on a button that a sample's mix becomes that of a zone."""
    return say("Use it as it is for {zone}", zone=zone_name(zone))


def take_name(number: int, zone: str) -> str:
    """Say for a screen reader which sample's mix becomes that of a zone."""
    return say("Use sample {number} for {zone}", number=number, zone=zone_name(zone))


def pot_for(zone: str) -> str:
    """Say on a button that a pot, with what was added to it, becomes the mix of a zone."""
    return say("I have added it: use the pot for {zone}", zone=zone_name(zone))


def is_mix_for(zone: str) -> str:
    """Say that this is the mix of a zone."""
    return say("✓ This is the mix for {zone}.", zone=zone_name(zone))


def is_mix_added(zone: str, taken: Taken, shelf: Shelf) -> str:
    """Say that the pot of a sample, with what was added then, is the mix of a zone."""
    names = {paint.id: paint.name for paint in shelf.paints}
    told = [f"{millilitres(ml)} {names.get(id_, id_)}" for id_, ml in taken.extra]
    if not told:
        return say(
            "✓ Its pot, with what was added to it, is the mix for {zone}.", zone=zone_name(zone)
        )
    return say(
        "✓ Its pot, with {added} added, is the mix for {zone}.",
        added=listed(told),
        zone=zone_name(zone),
    )


def home_name(loop: SampleLoop) -> str:
    """Tell the picture of the distances to a screen reader."""
    told = "; ".join(off_words(one.delta_e) for one in loop.rounds)
    return f"{HOME_NAME}: {told}" if told else HOME_NAME


def millilitres(ml: float) -> str:
    """Say a volume."""
    return bound(f"{figure(ml, '.1f' if ml < 100 else '.0f')} ml")


def kept_name(zone: str, names: list[str]) -> str:
    """Name a mix that is kept with the job."""
    told = say_in("of zones", "all") if zone == WHOLE_PIECE else zone_word(zone)
    return say("kept for {zone}: {paints}", zone=told, paints=", ".join(names))
