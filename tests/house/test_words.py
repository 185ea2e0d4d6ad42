"""Where words that a painter reads may stand, and when they are said."""

from __future__ import annotations

import ast
import re
from typing import TYPE_CHECKING

from house.sayings import TEXTS
from house.tree import PACKAGE, modules, name_of, python

if TYPE_CHECKING:
    from collections.abc import Iterator

DESKTOP = PACKAGE / "desktop"

NOT_FOR_A_PAINTER = frozenset(
    {
        "start.py",  # speaks on the terminal where no window can be opened, in no language yet
        "last_words.py",  # writes the report of a fault of ours, which we have to read
    }
)
KEYS = frozenset(
    {
        "Desk.keep_part {}",  # a kind of change, by which the history tells it from others
        "undo {}",
        "redo {}",
        "Off the interface thread:",  # stands in the report of a fault of ours
        "demo job",  # a kind of work
        "more vivid",  # a direction as the acts name it
    }
)
"""What looks like words and is none that a painter reads; braces stand for values."""

TOLD = frozenset(
    [
        "QAction",
        "QCheckBox",
        "QGroupBox",
        "QLabel",
        "QPushButton",
        "QRadioButton",
        "addAction",
        "addItem",
        "addMenu",
        "addTab",
        "button",
        "label",
        "setAccessibleDescription",
        "setAccessibleName",
        "setPlaceholderText",
        "setSpecialValueText",
        "setStatusTip",
        "setText",
        "setTitle",
        "setToolTip",
        "setWhatsThis",
        "setWindowTitle",
    ]
)
"""What shows its first argument."""

_TAG = re.compile(r"<[^>]*>")
_STYLE = re.compile(r"[\w-]+:[^:;{}]+;")
_WORD = re.compile(r"[A-Za-z]{3,}")


def looks_said(text: str) -> bool:
    """Tell whether a text looks like words: a letter here, a space there, and no style sheet."""
    plain = _TAG.sub("", text)
    return bool(re.search(r"\s", plain) and _WORD.search(plain) and not _STYLE.search(plain))


def as_text(node: ast.expr) -> str | None:
    """Give a literal as text, braces for what is put into it; None for what is no text."""
    if isinstance(node, ast.Constant):
        return node.value if isinstance(node.value, str) else None
    if isinstance(node, ast.JoinedStr):
        return "".join(as_text(part) or "{}" for part in node.values)
    return None


def literals(tree: ast.AST) -> Iterator[tuple[ast.expr, str]]:
    """Give the texts of a module: no docstrings, no faults of ours, nothing said or marked."""
    if isinstance(tree, ast.Raise) and "MendableError" not in ast.dump(tree):
        return
    if isinstance(tree, ast.Call) and getattr(tree.func, "id", "") in TEXTS:
        for value in (*tree.args[2:], *(keyword.value for keyword in tree.keywords)):
            yield from literals(value)
        return
    text = as_text(tree) if isinstance(tree, ast.expr) else None
    if text is not None and isinstance(tree, ast.expr):
        yield tree, text
    for node in ast.iter_child_nodes(tree):
        alone = isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant)
        part = isinstance(tree, ast.JoinedStr) and isinstance(node, ast.Constant)
        if not alone and not part:
            yield from literals(node)


def words_in(tree: ast.AST) -> Iterator[tuple[int, str]]:
    """Give what looks like words to a painter, with its line."""
    for node, text in literals(tree):
        if looks_said(text) and text not in KEYS:
            yield node.lineno, text
    for call in ast.walk(tree):
        if isinstance(call, ast.Call) and call.args and _name(call.func) in TOLD:
            shown = as_text(call.args[0]) or ""
            if _WORD.search(_TAG.sub("", shown)) and not looks_said(shown):
                yield call.lineno, shown


def _name(function: ast.expr) -> str:
    return function.attr if isinstance(function, ast.Attribute) else getattr(function, "id", "")


def test_words_stand_in_the_words_modules() -> None:
    """What the window says is written in `desktop/words` or said where it stands, never bare."""
    found = [
        f"{path.relative_to(PACKAGE)}:{line} {text!r}"
        for path, tree in modules(DESKTOP)
        if path.name not in NOT_FOR_A_PAINTER and "words" not in path.relative_to(DESKTOP).parts
        for line, text in words_in(tree)
    ]
    assert found == []


def test_bare_words_would_be_seen() -> None:
    """Sentences, glued pieces and single words on a button are found."""
    source = """
self.tip = "Let it dry"
self.told = f"{ml} ml left"
self.box = QPushButton("Undo")
raise MendableError("No paint", why)
self.sure = say("{a} of {b}", a=f"{n} of them", b=b)
"""
    found = [text for _, text in words_in(ast.parse(source))]
    assert found == ["Let it dry", "{} ml left", "No paint", "{} of them", "Undo"]


def test_what_is_no_words_passes() -> None:
    """Docstrings, units, names, style sheets, faults of ours and what is said stay unseen."""
    source = '''
"""A module of the window."""
self.setObjectName("quiet")
spin.setSuffix(" ml")
self.setStyleSheet("#lead { border: 2px; } QLabel { color: red; }")
label.setText(f"<p style='margin: 0 0 9px 0'>{step}</p>")
label.setText(say("Let it dry"))
label.setText(f"{words.KEEP}: {told}")
raise ValueError("nothing is wanted")
'''
    assert list(words_in(ast.parse(source))) == []


# --- when they are said --------------------------------------------------------------------------

SPOKEN = frozenset({"figure", "listed", "say", "say_count", "say_in"})

LISTEN = f"""
import importlib, sys
import swatchwright.language as language

heard = []

def listening(plain):
    def told(*words, **values):
        frame = sys._getframe(1)
        heard.append(frame.f_code.co_filename + ":" + str(frame.f_lineno))
        return plain(*words, **values)
    return told

for name in {sorted(SPOKEN)}:
    setattr(language, name, listening(getattr(language, name)))
"""


def core() -> list[str]:
    """Give the names of all modules but the desktop's, which come after the choice."""
    names = [name_of(path) for path, _ in modules(PACKAGE)]
    below = [n for n in names if ".desktop" not in n and not n.endswith("__main__")]
    return [name for name in below if name != "swatchwright.language"]


def said_by_importing(*names: str) -> list[str]:
    """Import modules in a Python of its own and give the places that say something by that."""
    imports = "\n".join(f"importlib.import_module({name!r})" for name in names)
    written = python("-c", f"{LISTEN}\n{imports}\nprint(*sorted(set(heard)), sep='\\n')")
    return written.split()


def test_the_core_says_nothing_when_it_is_imported() -> None:
    """It may be imported before a language is chosen: its tables are marked and said later."""
    assert said_by_importing(*core()) == []


def test_what_is_said_by_importing_would_be_heard() -> None:
    """The words of the window are said when they are imported, and that is heard."""
    heard = said_by_importing("swatchwright.desktop.words")
    assert heard
    assert all("words" in place for place in heard)
