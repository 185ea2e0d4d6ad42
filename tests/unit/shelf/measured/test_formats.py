"""Files of measurements: known by what is in them, and written by what they are called."""

from __future__ import annotations

import codecs
from datetime import UTC, datetime
from typing import TYPE_CHECKING

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.shelf.measured import (
    LARGEST_FILE,
    FileFormat,
    Measurements,
    parse_measurements,
    read_measurements,
    write_measurements,
)
from swatchwright.values import Lab
from unit.shelf.measured.made import WHEN, assert_same, measurement, refused, survived

if TYPE_CHECKING:
    from pathlib import Path

WANTED = Measurements("file", (measurement("a", 0.25), measurement("é", 0.5, Lab(50, 1, 2))))
FORMATS = [FileFormat.CSV, FileFormat.CGATS]


def formats() -> list[FileFormat]:
    """Give the formats that can be written here."""
    try:
        import colour_cxf  # noqa: F401
    except ImportError:
        return FORMATS
    return list(FileFormat)


@pytest.mark.parametrize("file_format", formats())
@pytest.mark.parametrize("suffix", [".csv", ".txt", ".cxf", ".dat", ""])
def test_known_by_content(tmp_path: Path, file_format: FileFormat, suffix: str) -> None:
    """Whatever a file is called, it is read as what it is."""
    path = tmp_path / f"file{suffix}"
    write_measurements(WANTED, path, file_format, made=WHEN)
    assert_same(read_measurements(path), WANTED)
    assert read_measurements(path).name == path.name


@pytest.mark.parametrize(
    ("name", "begins"), [("a.csv", b"id,name"), ("a.TXT", b"CGATS.17"), ("a.it8", b"CGATS.17")]
)
def test_written_by_suffix(tmp_path: Path, name: str, begins: bytes) -> None:
    """Where no format is given, the suffix tells it, and the present time is written."""
    before = datetime.now(UTC).date()
    write_measurements(WANTED, tmp_path / name)
    data = (tmp_path / name).read_bytes()
    assert data.startswith(begins)
    if begins == b"CGATS.17":
        assert any(f'"{day}"'.encode() in data for day in (before, datetime.now(UTC).date()))


@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16"])
def test_encodings(tmp_path: Path, encoding: str) -> None:
    """Unicode is read with its mark or, if UTF-8, without."""
    write_measurements(WANTED, tmp_path / "a.csv")
    data = (tmp_path / "a.csv").read_text("utf-8").encode(encoding)
    assert_same(parse_measurements(data, "file"), WANTED)


def test_an_older_encoding(tmp_path: Path) -> None:
    """Text that is not Unicode is read as western European, and said so."""
    write_measurements(WANTED, tmp_path / "a.csv")
    data = (tmp_path / "a.csv").read_text("utf-8").encode("cp1252")
    found = parse_measurements(data, "file")
    assert found.rows[1].id == "é"
    assert "not UTF-8" in found.notes[0]


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b" \r\n",
        b"\x89PNG\r\n\x1a\n\0\0\0",
        codecs.BOM_UTF16_LE + b"a",
        b"\xff" * 9,
        b"\xef\xbb\xbf",
    ],
)
def test_what_is_no_text(data: bytes) -> None:
    """Empty and binary files are refused."""
    refused(lambda: parse_measurements(data, "file"))


def test_large_files_are_not_read(tmp_path: Path) -> None:
    """A file of 50 MB is refused by its size, of which no more than the limit is read."""
    path = tmp_path / "large.cxf"
    with path.open("wb") as file:
        file.write(b"<CxF>")
        file.truncate(50_000_000)
    assert "20 MB" in refused(lambda: read_measurements(path)).what
    assert "20 MB" in refused(lambda: parse_measurements(bytes(LARGEST_FILE + 1), "x")).what


def test_places_that_cannot_be_used(tmp_path: Path) -> None:
    """A missing file, a folder, a place that is not there and a name that tells nothing."""
    assert "opened" in refused(lambda: read_measurements(tmp_path / "none.csv")).what
    assert "opened" in refused(lambda: read_measurements(tmp_path)).what
    gone = tmp_path / "none" / "a.csv"
    assert "written" in refused(lambda: write_measurements(WANTED, gone)).what
    assert "format" in refused(lambda: write_measurements(WANTED, tmp_path / "a.xyz")).what
    empty = Measurements("x", ())
    assert "no measurements" in refused(lambda: write_measurements(empty, tmp_path / "a.csv")).what


@given(st.one_of(st.binary(), st.text().map(str.encode)))
def test_any_bytes_are_survived(data: bytes) -> None:
    """Any bytes at all give measurements or a plain message."""
    survived(data)


@pytest.mark.parametrize("piece", [b"r_400,", b"400.1,", b'"', b"\r", b",", b"\n", b"id,400\n"])
def test_a_long_table_of_one_piece_is_survived(piece: bytes) -> None:
    """Repeating one piece over a megabyte neither hangs nor breaks the reader."""
    survived(piece * (1_000_000 // len(piece)))
    survived(b"id,r_400,r_700\n" + piece * (1_000_000 // len(piece)))
