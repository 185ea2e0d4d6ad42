"""The words of the page of the plan."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, datetime
from html import escape

from swatchwright.acts.plan import PlannedWork
from swatchwright.piece.work.cautions import CAUTIONS, Danger
from swatchwright.piece.work.days import Block, Day
from swatchwright.piece.work.order import (
    Age,
    FinishKind,
    Lead,
    PlanOrder,
    Primer,
    Use,
    Which,
)
from swatchwright.piece.work.plan import Step
from swatchwright.piece.work.times import Source

HEADING = "What to do when, and what to take care of"
HINT = "Say what the piece is and what goes on; the days follow."

NOW = "What it is now"
SURFACE = "On it now"
AGE = "How old that is"
AGE_WORDS = {
    Age.RECENT: "from after 1992",
    Age.OLD: "older, or may be",
    Age.UNKNOWN: "nobody knows",
}
STAINS = "Knots or stains to seal"
REPAIRS = "Dents to fill"
FITTINGS = "Fittings to take off"
USE_WORDS = {Use.CHILDREN: "Children will use it", Use.FOOD: "Food will touch it"}

LEAD_HEAD = "It may hold lead"
LEAD_ASK = (
    "What is on it is old or unknown. Lead in its dust poisons, children most. There is no plan "
    "before this is answered; your local rules come first."
)
LEAD_WORDS = {
    Lead.TESTED_NEGATIVE: "It was tested and holds no lead",
    Lead.TREAT_AS_LEAD: "Treat as lead: sand nothing dry",
}
LEAD_WAIT = "The plan appears here once you have answered whether it may hold lead."

ON = "What goes on"
CARRIER = "The paint is"
PRIMER = "Primer"
PRIMER_WORDS: tuple[tuple[str, Primer | None], ...] = (
    ("as is usual", None),
    ("none", Primer.NONE),
    ("primer", Primer.ORDINARY),
    ("adhesion primer", Primer.ADHESION),
)
PRIMER_COATS = "Coats of primer"
AS_USUAL = "as is usual"
COATS = "Coats of paint"
WASHES = "Washes"
FINISH = "On top"
FINISH_WORDS = {
    FinishKind.NONE: "nothing",
    FinishKind.WAX: "wax",
    FinishKind.VARNISH: "varnish",
    FinishKind.OIL: "oil",
}
FINISH_COATS = "Coats of that"
TAKE_OVER = "Take that over"

WHEN = "Where and when"
START = "First day"
DAYS = "Working days"
DAY_NAMES = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
LONG_DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
FROM, UNTIL = "Work from", "until"
WARMTH = "Room warmth"
DAMP = "Air damp"
TIN_ALLOWS = "The tin allows this room"

TIMES = "What the tins say"
TIMES_HINT = "Hours until touch dry, until the next coat, and until hard. Tick what you have."
TIME_HEADS = ("touch dry", "next coat", "hard")
PRODUCTS = {"primer": "Primer", "paint": "Paint", "wash": "Wash", "finish": "Finish"}

PICTURE = "The days"
DAY_OFF = "day off"
LEGEND = (
    "Full: work, with the number of its step. Hatched: it dries or hardens. Press a block to read "
    "its step here, or go to it with the arrow keys; press it twice, or Return, to find it below."
)
DRIES = "dries"
CURES = "hardens"
NIGHT = "night"
LIST = "Step by step"
CALENDAR = "Save as calendar file…"
CALENDAR_FILES = "Calendar files (*.ics)"
SAVING = "Saving…"
SAVED = "Saved: {}"
CARE = "Take care"
NOTES = "What was assumed"

_SHORT = {Source.TIN: "as the tin says", Source.PRACTICE: "common practice"}
_CURE_FROM = 72 * 60


def day_name(day: str) -> str:
    """Name a day, as in Tue 1 Dec."""
    when = date.fromisoformat(day[:10])
    return f"{DAY_NAMES[when.weekday()]} {when.day} {MONTHS[when.month - 1]}"


def clock(minutes: int) -> str:
    """Say a minute of the day, as in 9:05."""
    return f"{minutes // 60}:{minutes % 60:02}"


def at(moment: str) -> str:
    """Say a moment's time of day."""
    when = datetime.fromisoformat(moment)
    return f"{when.hour}:{when.minute:02}"


def lasting(minutes: float) -> str:
    """Say how long, roughly as long as it is."""
    if minutes < 60:
        return f"{minutes:.0f} min"
    if minutes <= _CURE_FROM:
        return f"{minutes / 60:.2g} h" if minutes < 600 else f"{minutes / 60:.0f} h"
    return f"{minutes / 1440:.3g} days"


def summary(made: PlannedWork) -> str:
    """Say how much work it is, and when it is ready."""
    ready = f"{day_name(made.plan.ready)}, {at(made.plan.ready)}"
    return f"{made.plan.hands_on / 60:.1f} hours of work, ready {ready}"


def factor_line(factor: float) -> str:
    """Say how cold and damp draw out the waits; empty where they do not."""
    return "" if factor <= 1 else f"Cold or damp: waits are {factor:.1f} times as long."


# --- steps ---------------------------------------------------------------------------------------


def step_when(step: Step) -> str:
    """Say when a step is worked on, and what it is."""
    times = [
        f"{at(s.start)}–{at(s.end)}"
        + ("" if s.start[:10] == step.start[:10] else f" on {day_name(s.start)}")
        for s in step.sessions
    ]
    told = f"{', '.join(times)}  {step.title}" if times else step.title
    return f"{told} ({', '.join(step.faces)})" if step.faces else told


def step_wait(step: Step) -> str:
    """Say how long to wait after it; empty where one need not."""
    if not step.wait:
        return ""
    return f"Then wait {lasting(step.wait)} ({_SHORT[step.wait_from]})."


def care_line(danger: Danger, *, first: bool) -> str:
    """Say a caution: in full where it first binds, and by its name from then on."""
    caution = CAUTIONS[danger]
    name = danger.value[0].upper() + danger.value[1:]
    return f"{name}. {caution.why} {caution.do}" if first else f"{name}, as above."


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


def block_told(day: Day, block: Block, step: Step) -> str:
    """Tell a block of the picture of the days for a screen reader."""
    when = f"{day_name(day.day)}, {clock(block.begin)} to {clock(block.end)}"
    what = f"{waiting_word(step)} after" if block.drying else "work on"
    return f"{when}: {what} step {step.number}, {step.title}"


def waiting_word(step: Step) -> str:
    """Say what is waited for after a step."""
    return CURES if step.wait > _CURE_FROM else DRIES


# --- elsewhere -----------------------------------------------------------------------------------


def piece_line(order: PlanOrder, *, known: bool) -> str:
    """Say which piece it is, as the page of the piece has it."""
    told = f"{order.name}, {order.area:.2f} m², painted on {_sides(order.faces)}"
    return told if known else "Its size is not given yet on the page Piece: 2 m² are taken."


def _sides(faces: tuple[Which, ...]) -> str:
    return ", ".join(face.value for face in faces)


def differs_line(now: PlanOrder, there: PlanOrder) -> str:
    """Say what other pages have that the plan does not; empty where they agree."""
    told = []
    if now.carrier is not there.carrier:
        told.append(f"{there.carrier} paint")
    if now.coats != there.coats:
        told.append(f"{there.coats} coats of paint")
    if (now.primer, now.primer_coats) != (there.primer, there.primer_coats):
        told.append(f"{there.primer_coats} coats of {there.primer or 'primer'}")
    if now.washes != there.washes:
        told.append(f"{there.washes} washes")
    if (now.finish, now.finish_coats) != (there.finish, there.finish_coats):
        told.append(FINISH_WORDS[there.finish] + " on top")
    return f"The other pages say: {', '.join(told)}." if told else ""


def day_button(place: int) -> str:
    """Name the button of a working day."""
    return f"Work on {LONG_DAYS[place]}s"


def time_field(product: str, head: str) -> str:
    """Name the field of a time of a product."""
    return f"{PRODUCTS[product]}, {head}"


def file_name(name: str) -> str:
    """Propose a name for the calendar file."""
    plain = "".join(letter if letter.isalnum() else "-" for letter in name.strip().lower())
    return f"{plain.strip('-') or 'piece'}.ics"


def row_name(days: tuple[Day, ...]) -> str:
    """Name a row of the picture: a day, or the first and last of several."""
    if len(days) == 1:
        return day_name(days[0].day)
    first, last = (date.fromisoformat(day.day) for day in (days[0], days[-1]))
    begin = (
        f"{first.day}" if first.month == last.month else f"{first.day} {MONTHS[first.month - 1]}"
    )
    return f"{begin}–{last.day} {MONTHS[last.month - 1]}"


def hardening(days: int) -> str:
    """Say that it does nothing but harden for days."""
    return f"{CURES} for {days} days"


def hardening_told(days: tuple[Day, ...], step: Step) -> str:
    """Tell days of mere hardening for a screen reader."""
    return f"{row_name(days)}: {hardening(len(days))} after step {step.number}, {step.title}"
