"""A studio in arithmetic: scenes lit, woven and photographed from spectra.

It renders the sample images and the charts that the program is judged by. It knows nothing of the
program: it shares no code with it, and takes its lights, its cameras and its colour arithmetic
from colour-science.
"""
