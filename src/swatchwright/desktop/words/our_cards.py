"""The words of the sitting with the cards of the demonstration."""

from __future__ import annotations

from swatchwright.language import say

TRY_OURS = say("Try it with our cards")
TRY_OURS_TIP = say(
    "Go through it once with a photo of ours: invented paints, and nothing of it is kept"
)
OURS_HINT = say(
    "Our cards, to try it once: three invented paints, and a photo that was rendered. Your shelf "
    "and your own cards stay as they are."
)
PUT_OURS_AWAY = say("Put our cards away")
MARK_REST = say("Mark the rest for me")
MARK_REST_TIP = say("Mark the grey and all cards that have no box yet")
ALL_MARKED = say(
    "All cards have their box already. To read one anew, choose it in the list and drag."
)
OURS_DONE = say(
    "That is all of it. Paints of your own you would now keep on the shelf; these are invented, "
    "and nothing of them is kept."
)
LOOKING = say("Laying out our cards…")
