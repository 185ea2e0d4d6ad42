"""Swatchwright: from a photo of a client's cushion to a measured mix of furniture paints."""

__all__ = ["__version__"]

__version__ = "0.1.0"
