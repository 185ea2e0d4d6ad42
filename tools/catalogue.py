"""Gather what the program says into the catalogues of its other languages, and compile them.

Run as ``python tools/catalogue.py``. Each catalogue ``src/swatchwright/language/*.po`` gets the
sentences that are new, without a translation; those no longer said are taken out; then it is
compiled beside itself. What still needs a translator is counted at the end.
"""

from __future__ import annotations

import re
import sys
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path
from string import Formatter

from babel.messages import Catalog, Message
from babel.messages.extract import extract_from_file
from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po, write_po

SOURCE = Path(__file__).parents[1] / "src" / "swatchwright"
FOLDER = SOURCE / "language"
SAYING = {
    "say": None,
    "mark": None,
    "say_count": (1, 2),
    "say_in": ((1, "c"), 2),
    "mark_in": ((1, "c"), 2),
}
"""The functions whose arguments are gathered, and which of their arguments are."""


def said() -> Catalog:
    """Gather all that the program says."""
    found = Catalog(project="Swatchwright", fuzzy=False)
    for path in sorted(SOURCE.rglob("*.py")):
        if path == FOLDER / "__init__.py":
            continue
        place = path.relative_to(SOURCE).as_posix()
        for _, text, _, context in extract_from_file("python", path, keywords=SAYING):
            if text and text != "":
                found.add(text, locations=[(place, 1)], context=context)
    # What this package says itself.
    found.add("{first} and {last}", locations=[("language/__init__.py", 1)])
    return found


def catalogues() -> tuple[Path, ...]:
    """List the catalogues of the other languages."""
    return tuple(sorted(FOLDER.glob("*.po")))


def renewed(path: Path) -> Catalog:
    """Read a catalogue, bring in what is new and take out what is no longer said."""
    with path.open("rb") as file:
        kept = read_po(file, locale=path.stem)
    kept.update(said(), no_fuzzy_matching=True, update_creation_date=False)
    kept.obsolete.clear()
    return kept


def written(catalogue: Catalog) -> bytes:
    """Write a catalogue as text: sorted, with files but no lines, so that a change is small."""
    into = BytesIO()
    write_po(into, catalogue, sort_by_file=True, include_lineno=False, width=98, omit_header=False)
    return into.getvalue()


def compiled(catalogue: Catalog) -> bytes:
    """Compile a catalogue."""
    into = BytesIO()
    write_mo(into, catalogue)
    return into.getvalue()


def messages(catalogue: Catalog) -> Iterator[Message]:
    """Give the messages of a catalogue, without its head."""
    return (message for message in catalogue if message.id)


def texts(of: str | tuple[str, ...] | list[str] | None) -> tuple[str, ...]:
    """Give the forms of a message, one or by number."""
    return (of or "",) if isinstance(of, str | None) else tuple(of)


def lacking(catalogue: Catalog) -> tuple[Message, ...]:
    """Give the messages without a translation."""
    return tuple(m for m in messages(catalogue) if not all(texts(m.string)))


def places(text: str) -> set[str]:
    """Name the places for values in a sentence."""
    return {name for _, name, _, _ in Formatter().parse(text) if name}


def spoilt(message: Message) -> str:
    """Say what is wrong with the places or the tags of a translation; empty if nothing is."""
    wanted = {name for text in texts(message.id) for name in places(text)}
    tags = set(re.findall(r"<[^>]*>", texts(message.id)[-1]))
    for text in texts(message.string):
        if places(text) - wanted or (wanted - {"count"}) - places(text):
            return f"its places are {sorted(places(text))} and should be {sorted(wanted)}"
        if set(re.findall(r"<[^>]*>", text)) != tags:
            return f"its tags should be {sorted(tags)}"
    return ""


def main() -> None:
    """Renew and compile all catalogues."""
    for path in catalogues():
        catalogue = renewed(path)
        path.write_bytes(written(catalogue))
        path.with_suffix(".mo").write_bytes(compiled(catalogue))
        left = lacking(catalogue)
        for message in messages(catalogue):
            trouble = spoilt(message) if all(texts(message.string)) else ""
            if trouble:
                print(f"{path.name}: {message.id!r}: {trouble}", file=sys.stderr)
        print(f"{path.name}: {len(catalogue)} messages, {len(left)} without a translation")


if __name__ == "__main__":
    main()
