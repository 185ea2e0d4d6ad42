"""The words of the window in which the guide is read."""

from __future__ import annotations

from swatchwright.language import say, say_count

GUIDE = say("Guide")
GUIDE_TIP = say("How it is done, with pictures: opens at the page in view (F1)")
PAGES = say("Pages of the guide")
READING = say("The page of the guide")
FIND = say("Find in the guide")
FIND_HINT = say("Find: a word or two")
NOTHING_FOUND = say("No page holds any of these words. Try others.")
BACK, BACK_TIP = say("◀ Back"), say("The page before (Alt+←)")
FORWARD, FORWARD_TIP = say("Forward ▶"), say("The page that you came back from (Alt+→)")
SMALLER, SMALLER_TIP = say("A−"), say("Smaller letters (Ctrl+−)")
SMALLER_NAME = say("Smaller letters")
LARGER, LARGER_TIP = say("A+"), say("Larger letters (Ctrl++)")
LARGER_NAME = say("Larger letters")
OPEN_OUTSIDE = say("Open it in the browser")
STAY = say("Stay here")
NO_GUIDE = say(
    "The guide was not installed with this copy of the program. Install it anew, as its readme "
    "tells."
)


def outside_line(address: str) -> str:
    """Say that a link leads out of the guide, and where to."""
    return say("This leads out of the guide, to {address}.", address=address)


def found_line(count: int) -> str:
    """Say on how many pages the words were found."""
    return say_count("Found on {count} page", "Found on {count} pages", count)


def title(page: str) -> str:
    """Title the window by the page that is open."""
    return say("{page} – Guide", page=page)
