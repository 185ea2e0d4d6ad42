"""What decoders throw at a malformed file."""

from __future__ import annotations

import struct
import zlib

from PIL import ImageCms

__all__ = ["MALFORMED"]

MALFORMED = (
    OSError,  # also UnidentifiedImageError
    EOFError,
    ValueError,
    TypeError,
    LookupError,
    ArithmeticError,
    AttributeError,
    AssertionError,
    SyntaxError,
    RuntimeError,  # also NotImplementedError
    struct.error,
    zlib.error,
    ImageCms.PyCMSError,
)
"""What Pillow throws at a malformed file (found with its own collection of broken files)."""
