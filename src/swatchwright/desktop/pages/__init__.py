"""The pages of the window, one for each thing a painter does.

A page is imported and made when it is first asked for, so that the window is up at once.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from importlib import import_module
from types import ModuleType
from typing import cast

from swatchwright.desktop import words
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.pages.colour_page import ColourPage
from swatchwright.desktop.pages.page import Page
from swatchwright.desktop.session import Session

__all__ = ["PAGES", "AnyPage", "PageKind", "import_pages"]

AnyPage = Page | ColourPage


@dataclass(frozen=True, slots=True)
class PageKind:
    """A page as the rail shows it: its key, its word, what it is for, and where it is made.

    `where` names the module and the class, below this package.
    """

    key: str
    word: str
    tip: str
    where: tuple[str, str]

    def make(self, session: Session, desk: Desk) -> Page:
        """Make the page."""
        kind = getattr(self.module(), self.where[1])
        return cast(Callable[[Session, Desk], Page], kind)(session, desk)

    def module(self) -> ModuleType:
        """Import the page's module."""
        return import_module(f"swatchwright.desktop.pages.{self.where[0]}")


PAGES = (
    PageKind("brief", words.PAGE_BRIEF, words.PAGE_BRIEF_TIP, ("brief_page", "BriefPage")),
    PageKind("colour", words.PAGE_COLOUR, words.PAGE_COLOUR_TIP, ("colour_page", "ColourPage")),
    PageKind(
        "compare", words.PAGE_COMPARE, words.PAGE_COMPARE_TIP, ("compare_page", "ComparePage")
    ),
    PageKind("shelf", words.PAGE_SHELF, words.PAGE_SHELF_TIP, ("shelf_page", "ShelfPage")),
    PageKind("sample", words.PAGE_SAMPLE, words.PAGE_SAMPLE_TIP, ("sample_page", "SamplePage")),
    PageKind("finish", words.PAGE_FINISH, words.PAGE_FINISH_TIP, ("finish_page", "FinishPage")),
    PageKind("piece", words.PAGE_PIECE, words.PAGE_PIECE_TIP, ("piece_page", "PiecePage")),
    PageKind(
        "repaint", words.PAGE_REPAINT, words.PAGE_REPAINT_TIP, ("repaint_page", "RepaintPage")
    ),
    PageKind("plan", words.PAGE_PLAN, words.PAGE_PLAN_TIP, ("plan_page", "PlanPage")),
    PageKind("sheet", words.PAGE_SHEET, words.PAGE_SHEET_TIP, ("sheet_page", "SheetPage")),
)
"""In the order of the work."""


def import_pages(stopped: Callable[[], bool]) -> bool:
    """Import all pages beforehand, off the interface's thread, so that each is there at once."""
    for kind in PAGES:
        if stopped():
            return False
        kind.module()
    return True
