"""Make the sample store of this release, which every later release has to open.

Run ``python tools/make_sample_store.py`` from the root once for each release that changes the
layout of the store, and keep the file in ``tests/data`` for good.
"""

from __future__ import annotations

import sqlite3
import sys
from pathlib import Path

ROOT = Path(__file__).parents[1]
sys.path.insert(0, str(ROOT / "tests"))

from swatchwright.acts.batches import make_batch  # noqa: E402
from swatchwright.acts.jobs import new_job, note_job, undo  # noqa: E402
from swatchwright.acts.stock import set_stock  # noqa: E402
from swatchwright.shelf.store.schema import MIGRATIONS  # noqa: E402
from unit.shelf.stores import add_full_job, add_two_paints, opened  # noqa: E402


def main() -> None:
    """Write a store with paints, stock, a full job, a batch, and an edit that is undone."""
    path = ROOT / "tests" / "data" / f"store_layout_{len(MIGRATIONS)}.sqlite"
    path.unlink(missing_ok=True)
    with opened(path) as store:
        add_two_paints(store)
        set_stock(store, "red", 1000)
        add_full_job(store)
        make_batch(store, "blanket-box", volume=200)
        new_job(store, title="Chair")
        note_job(store, "chair", "Undone, to be redone.")
        undo(store)
    connection = sqlite3.connect(path)
    connection.execute("VACUUM")
    connection.close()
    print(f"{path.relative_to(ROOT)}: {path.stat().st_size} bytes")


if __name__ == "__main__":
    main()
