"""Pieces and their drawings written to files, and read from them, away from the window's thread."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget

from swatchwright.acts.piece import read_piece, save_piece, write_drawing
from swatchwright.desktop.files import ask_open, ask_save
from swatchwright.desktop.words import piece as words
from swatchwright.desktop.workers import Workshop
from swatchwright.piece.part import Piece

__all__ = ["PieceFiles"]


class PieceFiles(QObject):
    """Saves and opens; what goes wrong is told by the workshop.

    Signals
    -------
    opened(Piece)
        A piece was read from a file.
    """

    opened = Signal(object)

    def __init__(self, workshop: Workshop, parent: QWidget) -> None:
        super().__init__(parent)
        self._workshop, self._window = workshop, parent

    def save_drawing(self, piece: Piece, colours: Mapping[str, str], path: Path) -> None:
        """Write the drawing of a piece with its colours to an SVG file."""
        self._write(lambda: write_drawing(piece, path, colours))

    def save(self, piece: Piece, path: Path) -> None:
        """Write a piece to a file of its parts."""
        self._write(lambda: save_piece(piece, path))

    def open(self, path: Path) -> None:
        """Read a piece from a file of its parts."""
        self._workshop.start("file", words.OPENING, lambda _: read_piece(path), self.opened.emit)

    def _write(self, write: Callable[[], None]) -> None:
        self._workshop.start("file", words.SAVING, lambda _: write(), lambda _: None)

    # --- asked -----------------------------------------------------------------------------------

    def ask_drawing(self, piece: Piece, colours: Mapping[str, str]) -> None:
        """Ask where to, and save the drawing."""
        path = self._where(words.SAVE_DRAWING, piece, ".svg", words.DRAWING_FILES)
        if path is not None:
            self.save_drawing(piece, colours, path)

    def ask_save(self, piece: Piece) -> None:
        """Ask where to, and save the piece."""
        path = self._where(words.SAVE_PIECE, piece, ".json", words.PIECE_FILES)
        if path is not None:
            self.save(piece, path)

    def ask_open(self) -> None:
        """Ask which, and open it."""
        chosen, _ = ask_open(self._window, words.OPEN_PIECE, "", words.PIECE_FILES)
        if chosen:
            self.open(Path(chosen))

    def _where(self, title: str, piece: Piece, suffix: str, kinds: str) -> Path | None:
        name = words.file_name(piece.name, suffix)
        chosen, _ = ask_save(self._window, title, name, kinds)
        return Path(chosen) if chosen else None
