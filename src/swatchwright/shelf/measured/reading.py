"""A sample as it stands in a measurement file, whatever the format."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["Reading", "Viewing"]


@dataclass(frozen=True, slots=True)
class Viewing:
    """The light and the observer that a file gives for its colours; None where it says nothing."""

    illuminant: str | None = None
    observer: str | None = None


@dataclass(frozen=True, slots=True)
class Reading:
    """A sample as it stands in the file.

    Parameters
    ----------
    place
        Where it stands, as it is said, such as “line 7”.
    id, name
        Either or both may be empty.
    spectrum
        Pairs of wavelength, nm, and value, in any order; empty without a spectrum.
    percent
        Whether the file says that the values are percent.
    lab
        L*, a*, b* for the light and observer of `viewing`; None without a colour.
    """

    place: str
    id: str = ""
    name: str = ""
    spectrum: tuple[tuple[float, float], ...] = ()
    percent: bool = False
    lab: tuple[float, float, float] | None = None
    viewing: Viewing = Viewing()
    notes: tuple[str, ...] = ()
