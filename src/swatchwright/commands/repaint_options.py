"""The options of ``swatchwright repaint``.

Nothing heavy is imported here, so that ``--version`` and ``--help`` answer at once.
"""

from __future__ import annotations

from swatchwright.commands.parsing import Commands, add_json

__all__ = ["add_repaint"]


def add_repaint(commands: Commands) -> None:
    """Add the command to a parser."""
    repaint = commands.add_parser(
        "repaint",
        help="a photographed piece in the chosen colours",
        description="Find the surfaces of a piece in a photo from a few strokes, and show them in "
        "other colours with the light, the shade and the gaps as they are. It is a picture and "
        "no measured colour.",
    )
    repaint.add_argument("photo", metavar="PHOTO", help="a photo of the piece")
    repaint.add_argument(
        "--strokes",
        metavar="FILE.json",
        required=True,
        help="the strokes, as docs/repaint.md tells",
    )
    repaint.add_argument(
        "--colour",
        metavar="ZONE=L,a,b",
        action="append",
        default=[],
        help="the new colour of a zone, CIELAB or #rrggbb; again for each more",
    )
    repaint.add_argument("--grey", metavar="X,Y,W,H", help="where a grey card is, in pixels")
    repaint.add_argument(
        "--grey-y", type=float, metavar="Y", help="its reflectance, 0-1 (0.18; white paper 0.9)"
    )
    repaint.add_argument("--grey-l", type=float, metavar="L", help="or its lightness L*, 16-100")
    repaint.add_argument(
        "--out", metavar="FILE.png", required=True, help="where to, PNG or JPEG by its ending"
    )
    repaint.add_argument(
        "--masks", metavar="FOLDER", help="also write each zone as a black and white picture here"
    )
    add_json(repaint)
