"""The words of ``swatchwright plan``."""

from __future__ import annotations

from swatchwright.commands.parsing import Commands, Parser, add_for_job, add_json, add_shelf
from swatchwright.commands.piece_options import add_which_piece

__all__ = ["add_plan"]


def add_plan(commands: Commands) -> None:
    """Add ``plan``."""
    plan = commands.add_parser(
        "plan",
        help="the work day by day, with waits and cautions, and a calendar file",
        description="Plan the work from what is on the piece and what goes on it. A coat that is "
        "old or unknown must be tested for lead, or treated as lead, before it is planned.",
        epilog="What the tins say comes first: enter it with --paint-times and the like.",
    )
    plan.add_argument("--start", metavar="YYYY-MM-DD", required=True, help="the first day")
    plan.add_argument("--name", metavar="WORDS", help="what the piece is called")
    plan.add_argument("--area", type=float, metavar="M2", help="m² to paint (the piece's, or 2)")
    add_which_piece(plan)
    _add_now(plan)
    _add_goes_on(plan)
    _add_where(plan)
    plan.add_argument("--ics", metavar="FILE.ics", help="write a calendar file (iCalendar)")
    add_shelf(plan)
    add_for_job(plan)
    add_json(plan)


def _add_now(plan: Parser) -> None:
    now = plan.add_argument_group("what it is now")
    now.add_argument(
        "--surface",
        default="unknown",
        metavar="WHAT",
        help="raw wood, painted, varnished, waxed, veneer, laminate, metal, unknown (unknown)",
    )
    now.add_argument(
        "--age",
        default="unknown",
        metavar="WHAT",
        help="of what is on it: recent (known to be after 1992), old, unknown (unknown)",
    )
    now.add_argument(
        "--lead", default="not answered", metavar="WHAT", help="tested negative, or treat as lead"
    )
    now.add_argument("--repairs", action="store_true", help="there are dents to fill")
    now.add_argument("--stains", action="store_true", help="there are knots or stains to seal")
    now.add_argument("--no-fittings", action="store_true", help="there is nothing to take off")
    now.add_argument(
        "--faces",
        metavar="LIST",
        help="what is painted: underside, front, sides, back, top, inside (the piece's, or front, "
        "sides, top)",
    )
    now.add_argument("--flat", action="store_true", help="it lies flat to be painted")
    now.add_argument("--use", metavar="LIST", help="who lives with it: children, food")


_COATS = "coats of paint; 0 where it is painted already in this job (2)"


def _add_goes_on(plan: Parser) -> None:
    on = plan.add_argument_group("what goes on")
    on.add_argument(
        "--carrier", default="water-borne", metavar="WHAT", help="or solvent-borne (water-borne)"
    )
    on.add_argument(
        "--primer", metavar="WHAT", help="none, primer, adhesion primer (as the surface asks)"
    )
    on.add_argument("--primer-coats", type=int, default=0, metavar="N", help="(as is usual)")
    on.add_argument("--coats", type=int, default=2, metavar="N", help=_COATS)
    on.add_argument("--washes", type=int, default=0, metavar="N", help="washes over it (0)")
    on.add_argument(
        "--washes-on",
        metavar="LIST",
        help="the part of the piece that each wash goes on, in turn, as body,top (all of it)",
    )
    on.add_argument("--finish", default="none", metavar="WHAT", help="wax, varnish, oil (none)")
    on.add_argument("--finish-coats", type=int, default=1, metavar="N", help="coats of it (1)")
    on.add_argument(
        "--layer",
        metavar="TEXT",
        action="append",
        default=[],
        help="instead of washes and finish, each layer as `finish` takes it, where several go on "
        "different parts: “varnish coats=3 on=top”, “wax on=body”",
    )
    on.add_argument(
        "--layers", metavar="FILE.json", help="or all of them from a file, as docs/files.md tells"
    )
    for kind in ("primer", "paint", "wash", "finish", "wax", "oil", "varnish"):
        on.add_argument(
            f"--{kind}-times",
            metavar="H,H,H",
            help=f"hours of the {kind}'s tin: touch dry, recoat, hard",
        )


def _add_where(plan: Parser) -> None:
    where = plan.add_argument_group("where and when")
    where.add_argument("--temperature", type=float, default=20.0, metavar="C", help="°C (20)")
    where.add_argument(
        "--humidity", type=float, default=50.0, metavar="PERCENT", help="relative humidity (50)"
    )
    where.add_argument(
        "--tin-allows", action="store_true", help="the tin allows what is colder or damper"
    )
    where.add_argument(
        "--days", default="mon,tue,wed,thu,fri", metavar="LIST", help="working days (mon to fri)"
    )
    where.add_argument(
        "--hours", default="9:00-17:00", metavar="H:MM-H:MM", help="working hours (9:00-17:00)"
    )
