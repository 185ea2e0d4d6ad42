"""The words of the page of the plan."""

from __future__ import annotations

from collections.abc import Iterable
from html import escape

from swatchwright.acts.plan import PlannedWork, titled
from swatchwright.desktop.words.days import lasting
from swatchwright.language import listed, say, say_count, say_in
from swatchwright.language.dates import day_and_month, time_of_day
from swatchwright.language.letters import plain_letters
from swatchwright.piece.names import piece_word, side_word, zone_word
from swatchwright.piece.work.cautions import CAUTIONS, Danger
from swatchwright.piece.work.order import (
    Age,
    Carrier,
    FinishKind,
    Laid,
    Lead,
    PlanOrder,
    Primer,
    Surface,
    Use,
    Which,
)
from swatchwright.piece.work.plan import Step
from swatchwright.piece.work.schedule import Session
from swatchwright.piece.work.times import Source

HEADING = say("What to do when, and what to take care of")
HINT = say("Say what the piece is and what goes on; the days follow.")

NOW = say("What it is now")
SURFACE = say("On it now")
AGE = say("How old that is")
AGE_WORDS = {
    Age.RECENT: say("from after 1992"),
    Age.OLD: say("older, or may be"),
    Age.UNKNOWN: say("nobody knows"),
}
STAINS = say("Knots or stains to seal")
REPAIRS = say("Dents to fill")
FITTINGS = say("Fittings to take off")
USE_WORDS = {
    Use.CHILDREN: say("Children will use it"),
    Use.FOOD: say("Food will touch it"),
}

LEAD_HEAD = say("It may hold lead")
LEAD_ASK = say(
    "What is on it is old or unknown. Lead in its dust poisons, children most. There is no plan "
    "before this is answered; your local rules come first."
)
LEAD_WORDS = {
    Lead.TESTED_NEGATIVE: say("It was tested and holds no lead"),
    Lead.TREAT_AS_LEAD: say("Treat as lead: sand nothing dry"),
}
LEAD_WAIT = say("The plan appears here once you have answered whether it may hold lead.")

ON = say("What goes on")
CARRIER = say("The paint is")
PRIMER = say("Primer")
AS_USUAL = say("as is usual")
PRIMER_WORDS: tuple[tuple[str, Primer | None], ...] = (
    (AS_USUAL, None),
    (say_in("of primer", "none"), Primer.NONE),
    (say(Primer.ORDINARY.value), Primer.ORDINARY),
    (say(Primer.ADHESION.value), Primer.ADHESION),
)
PRIMER_COATS = say("Coats of primer")
COATS = say("Coats of paint")
PAINTED = say("painted already")
PAINTED_SAID = say("You said on the page Finish that it is painted already.")
BEGIN_WITH_WASH = say("Begin with the wash")
WASHES = say("Washes")
FINISH = say_in("of a plan", "On top")
FINISH_WORDS = {
    FinishKind.NONE: say_in("on top", "nothing"),
    FinishKind.WAX: say(FinishKind.WAX.value),
    FinishKind.VARNISH: say(FinishKind.VARNISH.value),
    FinishKind.OIL: say(FinishKind.OIL.value),
}
FINISH_COATS = say("Coats of that")
BY_PART = say("by part, as below")
TAKE_OVER = say("Take that over")

WHEN = say("Where and when")
START = say("First day")
DAYS = say("Working days")
FROM, UNTIL = say("Work from"), say_in("of hours", "until")
WARMTH = say("Room warmth")
DAMP = say("Air damp")
TIN_ALLOWS = say("The tin allows this room")

TIMES = say("What the tins say")
TIMES_HINT = say("Hours until touch dry, until the next coat, and until hard. Tick what you have.")
TIMES_GREY = say("Grey is what is usual, and is taken where no tin tells.")
TIME_HEADS = (say("touch dry"), say("next coat"), say("hard"))
PRODUCTS = {
    "primer": say("Primer"),
    "paint": say("Paint"),
    "wash": say("Wash"),
    "finish": say_in("on top", "Finish"),
    "varnish": say_in("on top", "Varnish"),
    "oil": say_in("on top", "Oil"),
    "wax": say_in("on top", "Wax"),
}

LIST = say("Step by step")
CALENDAR = say("Save as calendar file…")
CALENDAR_FILES = say("Calendar files (*.ics)")
SAVING = say("Saving…")
CARE = say("Take care")
NOTES = say("What was assumed")

_SHORT = {Source.TIN: say("as the tin says"), Source.PRACTICE: say("common practice")}


def summary(made: PlannedWork) -> str:
    """Say how much work it is, and when it is ready."""
    return say(
        "{hours:.1f} hours of work, ready {day}, {time}; use it gently until {gently}",
        hours=made.plan.hands_on / 60,
        day=day_and_month(made.plan.ready),
        time=time_of_day(made.plan.ready),
        gently=day_and_month(made.plan.gently),
    )


def factor_line(factor: float) -> str:
    """Say how cold and damp draw out the waits; empty where they do not."""
    if factor <= 1:
        return ""
    return say("Cold or damp: waits are {factor:.1f} times as long.", factor=factor)


# --- steps ---------------------------------------------------------------------------------------


def step_when(step: Step) -> str:
    """Say when a step is worked on, and what it is."""
    times = [_hours_of(session, step.start[:10]) for session in step.sessions]
    return f"{', '.join(times)}  {titled(step)}" if times else titled(step)


def _hours_of(session: Session, day: str) -> str:
    """Say when it is worked, and on which day if that is another."""
    begin, end = time_of_day(session.start), time_of_day(session.end)
    if session.start[:10] == day:
        return f"{begin}–{end}"
    return say("{begin}–{end} on {day}", begin=begin, end=end, day=day_and_month(session.start))


def step_wait(step: Step) -> str:
    """Say how long to wait after it; empty where one need not."""
    if not step.wait:
        return ""
    return say(
        "Then wait {time}, {until} ({source}).",
        time=lasting(step.wait),
        until=say(step.wait_until.value),
        source=_SHORT[step.wait_from],
    )


def care_line(danger: Danger, *, first: bool) -> str:
    """Say a caution: in full where it first binds, and by its name from then on."""
    caution = CAUTIONS[danger]
    told = say(danger.value)
    name = told[0].upper() + told[1:]
    if not first:
        return say("{danger}, as above.", danger=name)
    return f"{name}. {say(caution.why)} {say(caution.do)}"


def step_html(step: Step, seen: Iterable[Danger]) -> str:
    """Write a step out: when, what, how, the wait, and what to take care of."""
    rows = [f"<b>{step.number}. &nbsp;{escape(step_when(step))}</b>", escape(step.how)]
    if wait := step_wait(step):
        rows.append(escape(wait))
    known = set(seen)
    rows += [
        f"<b>▲ {CARE}:</b> {escape(care_line(danger, first=danger not in known))}"
        for danger in step.cautions
    ]
    return "<br>".join(rows)


def note_html(note: str) -> str:
    """Write out something that was assumed."""
    return escape(note)


# --- elsewhere -----------------------------------------------------------------------------------


def piece_line(order: PlanOrder, *, known: bool) -> str:
    """Say which piece it is, as the page of the piece has it."""
    if not known:
        return say("Its size is not given yet on the page Piece: 2 m² are taken.")
    return say(
        "{piece}, {area:.2f} m², painted on {sides}",
        piece=piece_word(order.name),
        area=order.area,
        sides=_sides(order.faces),
    )


def _sides(faces: tuple[Which, ...]) -> str:
    return ", ".join(side_word(face.value) for face in faces)


def surface_word(surface: Surface) -> str:
    """Name what is on a piece."""
    return say(surface.value)


def carrier_word(carrier: Carrier) -> str:
    """Say what carries a paint."""
    return say(carrier.value)


def differs_line(now: PlanOrder, there: PlanOrder) -> str:
    """Say what other pages have that the plan does not; empty where they agree."""
    told = []
    if now.carrier is not there.carrier:
        water = there.carrier is Carrier.WATER
        told.append(say("water-borne paint") if water else say("solvent-borne paint"))
    if now.coats != there.coats and there.painted:
        told.append(PAINTED)
    elif now.coats != there.coats:
        told.append(say_count("{count} coat of paint", "{count} coats of paint", there.coats))
    if now.washes != there.washes:
        told.append(say_count("{count} wash", "{count} washes", there.washes))
    if there.tops:
        if _laid_apart(now) != _laid_apart(there):
            both = listed(FINISH_WORDS[finish] for finish in there.finishes)
            told.append(say("{finishes} on top, by part", finishes=both))
    elif now.tops or (now.finish, now.finish_coats) != (there.finish, there.finish_coats):
        told.append(say("{finish} on top", finish=FINISH_WORDS[there.finish]))
    return say("The other pages say: {all}.", all=", ".join(told)) if told else ""


def _laid_apart(order: PlanOrder) -> list[tuple[object, ...]]:
    """Give which finish goes where how often; nothing where there is but one finish."""
    return [(one.finish, one.zone, one.passes) for one in order.tops]


def tops_told(order: PlanOrder) -> str:
    """Say which clear finish goes on which part, in their turn, each on a line."""
    return "\n".join(_top_told(one) for one in order.tops if one.faces != ())


def _top_told(laid: Laid) -> str:
    finish = FINISH_WORDS[laid.finish or FinishKind.NONE]
    if not laid.zone:
        return say_count(
            "{finish} on all of it, {count} coat",
            "{finish} on all of it, {count} coats",
            laid.passes,
            finish=finish,
        )
    return say_count(
        "{finish} on the {part}, {count} coat",
        "{finish} on the {part}, {count} coats",
        laid.passes,
        finish=finish,
        part=zone_word(laid.zone),
    )


def rag_line(minutes: float | None) -> str:
    """Say that what is wiped over waits longer than for its next coat; empty where nothing is."""
    if minutes is None:
        return ""
    return say(
        "“Next coat” is for what is brushed on. What is wiped over with a wash waits longer, "
        "{hours:g} h, until it bears a wet rag.",
        hours=minutes / 60,
    )


def time_field(product: str, head: str) -> str:
    """Name the field of a time of a product."""
    return f"{PRODUCTS[product]}, {head}"


def file_name(name: str) -> str:
    """Propose a name for the calendar file."""
    return f"{plain_letters(piece_word(name)) or 'piece'}.ics"


def saved(name: str) -> str:
    """Say that a file was saved."""
    return say("Saved: {name}", name=name)
