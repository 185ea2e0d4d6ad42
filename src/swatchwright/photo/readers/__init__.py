"""Readers of files: what is in a file is told by its content, never by its name."""

from swatchwright.photo.readers.picture import read_photo

__all__ = ["read_photo"]
