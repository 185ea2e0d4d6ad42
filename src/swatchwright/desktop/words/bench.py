"""The words of the button that sets up the bench."""

from __future__ import annotations

from swatchwright.language import say, say_in

BENCH = say_in("light or dark, letters", "Bench")
BENCH_TIP = say("Dark bench, larger and smaller letters")
DARK = say("Dark bench")
LARGER, SMALLER = say("Larger letters"), say("Smaller letters")
USUAL = say("Usual letters")
LARGEST = say("Larger letters: these are the largest")
