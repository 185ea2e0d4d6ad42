"""The options of ``swatchwright compare``.

Nothing heavy is imported here, so that ``--version`` and ``--help`` answer at once.
"""

from __future__ import annotations

from swatchwright.commands.parsing import Commands, Parser, add_json, add_shelf
from swatchwright.commands.wash_options import add_part

__all__ = ["add_compare"]

_LIGHTS = ("daylight", "warm-lamp", "warm-led", "cool-led", "tube")


def add_compare(commands: Commands) -> None:
    """Add the command to a parser."""
    compare = commands.add_parser(
        "compare",
        help="mixes beside the wanted colour: dry, wet and finished, in each light of a room",
        description="Find the closest mixes and say how near each is to the wanted colour and "
        "which way it differs, dry, wet, washed or waxed, in each light of a room. In other "
        "lights than daylight a range is told: nobody knows what dyes the cloth holds.",
    )
    compare.add_argument("--lab", metavar="L,a,b", help="the wanted CIELAB colour, D65")
    compare.add_argument("--srgb", metavar="#RRGGBB", help="or as it is on an sRGB screen")
    add_shelf(compare)
    compare.add_argument(
        "--paints", type=int, choices=(2, 3), default=3, help="paints at the most (3)"
    )
    compare.add_argument("--keep", type=int, default=3, metavar="N", help="mixes, 1-6 (3)")
    _add_sights(compare)
    add_part(compare)
    add_json(compare)


def _add_sights(compare: Parser) -> None:
    sights = compare.add_argument_group("how and where they are seen")
    sights.add_argument(
        "--light",
        metavar="LIGHT",
        action="append",
        help=f"a light, as often as you like (all): {', '.join(_LIGHTS)}",
    )
    sights.add_argument("--wet", action="store_true", help="wet too")
    sights.add_argument("--washed", action="store_true", help="under a wash too: a usual pale one")
    sights.add_argument("--waxed", action="store_true", help="finished too: under a clear wax")
    sights.add_argument(
        "--layer",
        metavar="TEXT",
        action="append",
        default=[],
        help="a layer of your own for these two, the lowest first, as swatchwright finish has them",
    )
    sights.add_argument(
        "--layers", metavar="FILE.json", help="or all of them from a file, as docs/files.md tells"
    )
