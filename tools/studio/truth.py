"""What colour a reflectance truly is, worked out by colour-science and by nothing of ours."""

import colour
import numpy as np

from studio.lights import GRID, Array

__all__ = ["lab_d65"]

OBSERVER = "CIE 1931 2 Degree Standard Observer"
WHITE = np.array([0.3127, 0.3290])  # D65, 2 degrees, CIE 015:2018


def lab_d65(reflectance: Array, wavelengths: Array = GRID) -> Array:
    """Give the CIELAB under D65 for the 2 degree observer (ASTM E308, CIE 015:2018).

    Parameters
    ----------
    reflectance
        Reflectance 0-1, shape (n,).
    wavelengths
        Its wavelengths in nm, evenly spaced, shape (n,).

    Returns
    -------
    Array
        L*, a*, b*, shape (3,).
    """
    surface = colour.SpectralDistribution(reflectance, wavelengths)
    observer, daylight = colour.MSDS_CMFS[OBSERVER], colour.SDS_ILLUMINANTS["D65"]
    # It says at every call that it brings the light's table to the observer's, which is meant.
    with colour.utilities.suppress_warnings(colour_runtime_warnings=True):
        xyz = colour.sd_to_XYZ(surface, observer, daylight)
    return np.asarray(colour.XYZ_to_Lab(xyz / 100.0, WHITE), dtype=np.float64)
