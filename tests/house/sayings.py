"""Where the program says something to a painter, read from its syntax."""

from __future__ import annotations

import ast
from dataclasses import dataclass
from string import Formatter
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

TEXTS = {
    "say": slice(0, 1),
    "mark": slice(0, 1),
    "say_count": slice(0, 2),
    "say_in": slice(0, 2),
    "mark_in": slice(0, 2),
}
"""The functions that say or mark, and which of their arguments are texts or a context."""

_LATER = (ast.Name, ast.Attribute, ast.Subscript, ast.Call, ast.IfExp, ast.BoolOp)
"""What may stand in place of a literal: a text that was marked elsewhere."""


@dataclass(frozen=True, slots=True)
class Saying:
    """One call of `say` or one of the others.

    Parameters
    ----------
    line
        Where it is.
    function
        Its name.
    texts
        Its texts, the context before them; empty where they were marked elsewhere.
    given
        Names of the values; None if they come all in one.
    glued
        Whether a text is glued or filled in before it is said, so that nobody can translate it.
    """

    line: int
    function: str
    texts: tuple[str, ...]
    given: frozenset[str] | None
    glued: bool

    @property
    def wanted(self) -> frozenset[str]:
        """The names of the places in its texts."""
        plain = self.texts[1:] if self.function.endswith("_in") else self.texts
        return frozenset(
            name for text in plain for _, name, _, _ in Formatter().parse(text) if name is not None
        )


def sayings(tree: ast.AST) -> Iterator[Saying]:
    """Give each call that says or marks a text."""
    for node in ast.walk(tree):
        if not (isinstance(node, ast.Call) and isinstance(node.func, ast.Name)):
            continue
        at = TEXTS.get(node.func.id)
        if at is None:
            continue
        arguments = node.args[at]
        texts = [a.value for a in arguments if isinstance(a, ast.Constant)]
        names = [keyword.arg for keyword in node.keywords]
        yield Saying(
            line=node.lineno,
            function=node.func.id,
            texts=tuple(map(str, texts)) if len(texts) == at.stop else (),
            given=None if None in names else frozenset(name for name in names if name),
            glued=any(not isinstance(a, (ast.Constant, *_LATER)) for a in arguments),
        )
