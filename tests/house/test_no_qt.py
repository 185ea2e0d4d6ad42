"""The core works where Qt was never installed."""

from __future__ import annotations

from house.tree import PACKAGE, QT, modules, name_of, python

BLOCK_QT = f"""
import importlib, sys

class NoQt:
    def find_spec(self, name, path=None, target=None):
        if name.split(".")[0] in {sorted(QT)}:
            raise ModuleNotFoundError("No module named " + repr(name), name=name)

sys.meta_path.insert(0, NoQt())
"""


def core() -> list[str]:
    """Give the names of all modules but the desktop's and the way in, which opens it."""
    names = [name_of(path) for path, _ in modules(PACKAGE)]
    return [n for n in names if ".desktop" not in n and not n.endswith("__main__")]


def test_every_layer_of_the_core_is_tried() -> None:
    """The list of modules to import reaches into every layer below the two faces."""
    layers = {name.split(".")[1] for name in core() if "." in name}
    assert layers >= {"acts", "shelf", "mixing", "paint", "photo", "colour", "measures"}
    assert layers >= {"commands", "errors", "values"}


def test_the_core_imports_without_qt() -> None:
    """Each module of the core imports in a Python where Qt cannot be found."""
    imports = "\n".join(f"importlib.import_module({name!r})" for name in core())
    written = python("-c", f"{BLOCK_QT}\n{imports}\nprint(len(sys.modules))")
    assert int(written.split()[-1]) > len(core())


def test_the_block_holds() -> None:
    """In that Python an import of Qt fails, so that the test above means something."""
    attempt = "try:\n    import PySide6\nexcept ModuleNotFoundError:\n    print('blocked')\n"
    assert python("-c", BLOCK_QT + attempt) == "blocked\n"
