"""The options of ``swatchwright sample``.

Nothing heavy is imported here, so that ``--version`` and ``--help`` answer at once.
"""

from __future__ import annotations

from swatchwright.commands.parsing import Commands, Parser, add_for_job, add_json, add_shelf

__all__ = ["add_sample"]


def add_sample(commands: Commands) -> None:
    """Add the command to a parser."""
    sample = commands.add_parser(
        "sample",
        help="what a dried sample beside the cloth asks for",
        description="Compare a brushed and dried sample with the cloth, in one photo, by eye or by "
        "an instrument's figures; learn from it how the paints behave, and say what to add, or "
        "what to mix afresh, or that it is done.",
    )
    sample.add_argument("parts", metavar="ID=ML", nargs="+", help="what was mixed")
    sample.add_argument(
        "--lab", metavar="L,a,b", help="the wanted colour, as it was read before any sample"
    )
    _add_ways(sample)
    pot = sample.add_argument_group("what is to be put right")
    pot.add_argument("--pot", type=float, metavar="ML", help="the pot of this mix, ml (as mixed)")
    pot.add_argument("--tub", type=float, metavar="ML", help="how full its pot may get, ml (twice)")
    pot.add_argument(
        "--fresh", type=float, default=30.0, metavar="ML", help="ml of a fresh sample (30)"
    )
    pot.add_argument("--without", metavar="IDS", help="paints that may not be added")
    pot.add_argument(
        "--paints",
        type=int,
        choices=(2, 3, 4),
        default=4,
        help="how many paints a fresh mix may have (4)",
    )
    sample.add_argument(
        "--rounds", metavar="FILE.json", help="read the samples before this one, and add this one"
    )
    add_shelf(sample)
    sample.add_argument(
        "--out", metavar="FILE.csv", help="write the shelf with what its paints were learnt to be"
    )
    add_json(sample)
    add_for_job(sample, "take this sample's mix as that of this job, by its id")
    sample.add_argument(
        "--zone", default="all", metavar="ZONE", help="of which zone of the piece (all of it)"
    )


def _add_ways(sample: Parser) -> None:
    photo = sample.add_argument_group("how it compares: by a photo of sample, cloth and a grey")
    photo.add_argument("--photo", metavar="FILE", help="the photo")
    photo.add_argument("--cloth", metavar="X,Y,W,H", help="where the cloth is, in pixels")
    photo.add_argument("--sample", metavar="X,Y,W,H", help="where the dried sample is")
    photo.add_argument("--grey", metavar="X,Y,W,H", help="where the grey card is")
    photo.add_argument(
        "--grey-y", type=float, metavar="Y", help="its reflectance, 0-1 (0.18; white paper 0.9)"
    )
    photo.add_argument("--grey-l", type=float, metavar="L", help="or its lightness L*, 16-100")
    photo.add_argument(
        "--ref",
        metavar="X,Y,W,H=VALUE",
        action="append",
        default=[],
        help="another thing of known colour, as for `swatchwright colours`",
    )
    photo.add_argument(
        "--light", choices=("daylight", "lamp"), help="what the light was, if you know"
    )
    photo.add_argument(
        "--from-a-metre", action="store_true", help="mean the cloth from a metre, not its yarn"
    )
    sample.add_argument(
        "--beside", action="store_true", help="it was brushed and looked at with the last sample"
    )
    sample.add_argument(
        "--stripes",
        action="store_true",
        help="nothing is dry yet: say what to brush out beside it, so that one photo teaches most",
    )
    other = sample.add_argument_group("or by eye, or by an instrument")
    other.add_argument(
        "--said", metavar="WORDS", help="such as “a touch too light and much too yellow”"
    )
    other.add_argument(
        "--lab-difference", metavar="dL,da,db", help="the sample less the cloth, as it was read"
    )
