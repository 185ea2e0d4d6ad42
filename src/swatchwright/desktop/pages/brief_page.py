"""The page of the brief."""

from __future__ import annotations

from swatchwright.desktop import words
from swatchwright.desktop.desk import Desk
from swatchwright.desktop.pages.page import Page
from swatchwright.desktop.session import Session

__all__ = ["BriefPage"]


class BriefPage(Page):
    """To be built."""

    def __init__(self, session: Session, desk: Desk) -> None:
        super().__init__(session, desk, words.PAGE_BRIEF, words.PAGE_BRIEF_TIP)
