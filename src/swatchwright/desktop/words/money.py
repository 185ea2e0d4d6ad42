"""The words of what the money is called."""

from __future__ import annotations

from swatchwright.acts.habits import MOST_MONEY
from swatchwright.language import say

NAME = say("Money is called")
EXAMPLE = say("crowns")
TIP = say(
    "A sign or a short word, up to {most} letters and no figures. It then stands beside every "
    "price, on every page, and is there again next time.",
    most=MOST_MONEY,
)
TIP_OF_JOB = say(
    "It then stands beside every price, on every page. A job keeps the word that its own price "
    "was reckoned with."
)
