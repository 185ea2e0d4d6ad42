"""How fast mixtures become colours, against a plain loop over a colour library in the same run."""

from __future__ import annotations

import time
from typing import Any

import numpy as np
from numpy.typing import NDArray

from swatchwright.colour.spectrum import WAVELENGTHS
from swatchwright.paint.mixture import dry_lab, dry_reflectance, mix
from swatchwright.paint.paints import stack
from swatchwright.shelf.csv_file import demo_shelf

EACH = stack(demo_shelf().paints)
COUNT, PLAIN = 10_000, 100
RNG = np.random.default_rng(7)
WHICH = np.array([RNG.choice(len(EACH), 3, replace=False) for _ in range(COUNT)])
SHARES = RNG.dirichlet(np.ones(3), COUNT)


def by_the_library(reflectances: NDArray[Any]) -> NDArray[Any]:
    """Turn reflectances (n, 36) into CIELAB one at a time with colour-science."""
    import colour

    observer = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"]
    light = colour.SDS_ILLUMINANTS["D65"]
    white = colour.CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]["D65"]
    labs = []
    for reflectance in reflectances:
        spectrum = colour.SpectralDistribution(reflectance, WAVELENGTHS)
        # The library warns when it carries the light to the observer's wavelengths, as is meant.
        with colour.utilities.suppress_warnings(colour_runtime_warnings=True):
            xyz = colour.sd_to_XYZ(spectrum, observer, light) / 100
        labs.append(colour.XYZ_to_Lab(xyz, white))
    return np.array(labs)


def test_a_batch_against_a_loop_over_a_library(benchmark: Any) -> None:
    """Ten thousand mixtures are predicted at least twenty times as fast, to the same colours."""
    labs = benchmark(lambda: dry_lab(mix(EACH, WHICH, SHARES)))
    reflectances = dry_reflectance(mix(EACH, WHICH[:PLAIN], SHARES[:PLAIN]))
    by_the_library(reflectances[:1])
    began = time.perf_counter()
    plain = by_the_library(reflectances)
    each = (time.perf_counter() - began) / PLAIN
    assert np.max(np.abs(labs[:PLAIN] - plain)) < 0.1
    if benchmark.stats is not None:
        times = each * COUNT / benchmark.stats.stats.median
        benchmark.extra_info["times as fast"] = round(times)
        assert times > 20
