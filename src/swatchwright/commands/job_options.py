"""The options of ``swatchwright job``.

Nothing heavy is imported here, so that ``--version`` and ``--help`` answer at once.
"""

from __future__ import annotations

from swatchwright.commands.parsing import Commands, Parser

__all__ = ["add_job", "add_store"]


def add_job(commands: Commands) -> None:
    """Add ``job`` with all that can be done to jobs."""
    job = commands.add_parser(
        "job",
        help="jobs kept: list, find, change, mix again, undo, send",
        description="Keep jobs: who a piece is for, its colours, recipes, batches and notes. "
        "Whatever is changed can be undone, also later. JOB is a job's id or its beginning.",
    )
    deeds: Commands = job.add_subparsers(dest="deed", required=True, metavar="DEED")
    _add_looking(deeds)
    _add_head(deeds)
    _add_mixing(deeds)
    _add_moving(deeds)


def add_store(parser: Parser) -> None:
    """Ask which store, and offer the answer as JSON."""
    parser.add_argument("--store", metavar="FILE", help="the store of shelf and jobs (your own)")
    parser.add_argument("--json", action="store_true", help="print JSON, as docs/jobs.md tells")


def _deed(deeds: Commands, name: str, help_: str, *, job: bool = True) -> Parser:
    """Add one thing that can be done."""
    parser = deeds.add_parser(name, help=help_, description=f"{help_[0].upper()}{help_[1:]}.")
    if job:
        parser.add_argument("job", metavar="JOB", help="a job's id, or its beginning")
    add_store(parser)
    return parser


def _add_looking(deeds: Commands) -> None:
    listed = _deed(deeds, "list", "the jobs, the one changed last first", job=False)
    listed.add_argument("--status", metavar="WORD", help="only those that have come so far")
    _deed(deeds, "show", "all that is kept of a job")
    find = _deed(deeds, "find", "jobs with these words, or with a colour like this", job=False)
    find.add_argument("words", metavar="WORD", nargs="*", help="words anywhere in the job")
    find.add_argument("--piece", metavar="WORDS", default="", help="words of the piece alone")
    find.add_argument("--client", metavar="WORDS", default="", help="words of the client alone")
    find.add_argument("--like", metavar="L,a,b", help="a colour that was wanted or chosen")
    find.add_argument(
        "--within", type=float, default=6.0, metavar="N", help="how near, CIEDE2000 (6)"
    )


def _add_head(deeds: Commands) -> None:
    new = _deed(deeds, "new", "begin a job", job=False)
    new.add_argument("title", metavar="PIECE", help="what the piece is, as in “Blanket box”")
    change = _deed(deeds, "change", "change what stands at the head of a job")
    change.add_argument("--title", metavar="TEXT", help="what the piece is")
    change.add_argument(
        "--status", metavar="WORD", help="how far it is: asked, sampling, agreed, painted, done"
    )
    for parser in (new, change):
        parser.add_argument("--client", metavar="TEXT", help="who it is for")
        parser.add_argument("--brief", metavar="TEXT", help="what was asked")
        parser.add_argument("--light", metavar="TEXT", help="the light of the room it is for")
    note = _deed(deeds, "note", "write a note to a job")
    note.add_argument("text", metavar="TEXT", help="the note")
    copy = _deed(deeds, "copy", "begin a job as a copy of another, without its batches")
    copy.add_argument("--title", metavar="TEXT", help="what the new piece is (the same)")
    copy.add_argument("--client", metavar="TEXT", default="", help="who it is for (the same)")
    _deed(deeds, "remove", "remove a job; undo brings it back")


def _add_mixing(deeds: Commands) -> None:
    photo = _deed(deeds, "photo", "keep a photo with its marks")
    photo.add_argument("photo", metavar="PHOTO", help="the file")
    photo.add_argument("--grey", metavar="X,Y,W,H", help="where the grey card is, in pixels")
    photo.add_argument("--grey-y", type=float, metavar="Y", help="its reflectance, 0-1 (0.18)")
    photo.add_argument("--area", metavar="X,Y,W,H", help="where the cloth is, in pixels")
    recipe = _deed(deeds, "recipe", "find the recipes for a colour, keep them, and choose one")
    wanted = recipe.add_mutually_exclusive_group(required=True)
    wanted.add_argument("--lab", metavar="L,a,b", help="the wanted CIELAB colour")
    wanted.add_argument(
        "--pick", type=int, metavar="N", help="a colour of the job's photo, 1 the largest"
    )
    recipe.add_argument("--zone", metavar="NAME", default="all", help="for which part of the piece")
    recipe.add_argument(
        "--choose", type=int, default=1, metavar="N", help="which is chosen, 0 for none (1)"
    )
    recipe.add_argument("--shelf", metavar="FILE.csv", help="other paints than those of the store")
    recipe.add_argument(
        "--paints", type=int, choices=(2, 3), default=3, help="paints at the most (3)"
    )
    recipe.add_argument("--keep", type=int, default=3, metavar="N", help="recipes to keep (3)")
    off = _deed(deeds, "take-off", "take a colour and its mixes off; the batches stay")
    off.add_argument("--zone", metavar="NAME", default="all", help="for which part of the piece")
    batch = _deed(deeds, "batch", "mix a batch by the chosen recipe, or one more of it")
    batch.add_argument("--volume", type=float, metavar="ML", help="ml to mix (500)")
    batch.add_argument("--zone", metavar="NAME", help="which recipe (the one chosen last)")
    batch.add_argument("--day", metavar="DAY", help="when, as in 2026-03-01 (today)")
    batch.add_argument("--note", metavar="TEXT", default="", help="anything")
    batch.add_argument(
        "--take-back", type=int, metavar="N", help="instead: take batch N back, with its paint"
    )


def _add_moving(deeds: Commands) -> None:
    _deed(deeds, "undo", "take the last change back, of jobs or shelf", job=False)
    _deed(deeds, "redo", "bring back what was undone", job=False)
    _deed(deeds, "history", "what was done, the newest first", job=False)
    export = _deed(deeds, "export", "write a job to one file, photos and paints and all")
    export.add_argument("--out", metavar="FILE", help="where to (the job's id, .swatchjob)")
    brought = _deed(deeds, "import", "bring in a job from such a file", job=False)
    brought.add_argument("file", metavar="FILE", help="a .swatchjob file")
    rescued = _deed(deeds, "rescue", "bring over what a damaged store still holds", job=False)
    rescued.add_argument("file", metavar="FILE", help="the damaged store, put aside")
