"""One job as one file, to send or to put away: a zip with a JSON document and photos.

The file is made of ``job.json`` (the job, and its paints as they were) and
``photos/<fingerprint>.jpg``; docs/jobs.md tells its layout. What comes from outside is trusted in
nothing: sizes, counts and names have bounds that are held while reading, whatever the file says of
itself, and nothing of it is ever written under a name that it gives.
"""

from __future__ import annotations

import re
import struct
import warnings
import zipfile
import zlib
from collections.abc import Mapping
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path

import msgspec
from PIL import Image

from swatchwright.errors import MendableError
from swatchwright.language import mark, say
from swatchwright.photo.readers.malformed import MALFORMED
from swatchwright.shelf.decoding import decoded
from swatchwright.shelf.job_limits import MOST_PHOTOS, check_job
from swatchwright.shelf.jobs import Job
from swatchwright.shelf.store.kept import fingerprint
from swatchwright.shelf.store.paint_rows import paint_from_bytes

__all__ = ["SUFFIX", "JobFile", "check_copy", "read_job_file", "write_job_file"]

SUFFIX = ".swatchjob"

_FORMAT = "swatchwright job"
_VERSION = 1
_DOCUMENT = "job.json"
_PHOTO = re.compile(r"photos/([0-9a-f]{64})\.jpg")
_MOST_FILE = 300 * 2**20
_MOST_DOCUMENT = 60 * 2**20
_MOST_PHOTO = 8 * 2**20
_MOST_PAINTS = 1000
_MOST_SIDE = 4096
_WHEN = (1980, 1, 1, 0, 0, 0)
"""A zip must date its entries; the same job makes the same file."""

_STORED = frozenset({zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED})
_NO_JOB_FILE = mark("{name} is not a job file.")
_BROKEN_ZIP = (
    *(zipfile.BadZipFile, zlib.error, struct.error, EOFError, NotImplementedError),
    *(RuntimeError, ValueError, OverflowError, KeyError, MemoryError),
)


@dataclass(frozen=True, slots=True)
class JobFile:
    """A job with all that it refers to.

    Parameters
    ----------
    job
        The job.
    paints
        Its paints as they were, as JSON, by fingerprint.
    photos
        The reduced copies of its photos, as JPEG, by fingerprint.
    """

    job: Job
    paints: Mapping[str, bytes]
    photos: Mapping[str, bytes]


class _Document(msgspec.Struct):
    """What stands in job.json."""

    format: str
    version: int
    job: msgspec.Raw = msgspec.Raw(b"null")
    paints: dict[str, msgspec.Raw] = {}


def write_job_file(file: JobFile, path: Path) -> None:
    """Write a job to a file, whole or not at all.

    Raises
    ------
    MendableError
        If it cannot be written there.
    """
    raw = {hash_: msgspec.Raw(data) for hash_, data in file.paints.items()}
    job = msgspec.Raw(msgspec.json.encode(file.job))
    document = msgspec.json.encode(_Document(_FORMAT, _VERSION, job, raw))
    packed = BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as zip_:
        zip_.writestr(zipfile.ZipInfo(_DOCUMENT, _WHEN), document, zipfile.ZIP_DEFLATED)
        for hash_, data in sorted(file.photos.items()):
            zip_.writestr(zipfile.ZipInfo(f"photos/{hash_}.jpg", _WHEN), data)
    try:
        beside = path.with_name(f"{path.name}.part")
        beside.write_bytes(packed.getvalue())
        beside.replace(path)
    except (OSError, ValueError) as error:
        raise MendableError(
            say("The job could not be written to {path}.", path=path),
            say("Choose another place for it."),
        ) from error


def read_job_file(path: Path) -> JobFile:
    """Read a job from a file.

    Raises
    ------
    MendableError
        If it cannot be opened, is not a job, comes from a newer Swatchwright, is damaged, or holds
        more or other things than a job does.
    """
    try:
        with path.open("rb") as opened:
            data = opened.read(_MOST_FILE + 1)
    except (OSError, ValueError) as error:
        raise MendableError(
            say("The job file {path} could not be opened.", path=path),
            say("Check its name and place."),
        ) from error
    if len(data) > _MOST_FILE:
        raise _refused(path, mark("{name} is larger than 300 MB."))
    try:
        with zipfile.ZipFile(BytesIO(data)) as zip_:
            return _unpacked(zip_, path)
    except _BROKEN_ZIP as error:
        raise _refused(path, mark("{name} is not a job file, or it is damaged.")) from error


def _unpacked(zip_: zipfile.ZipFile, path: Path) -> JobFile:
    entries = zip_.infolist()
    names = [entry.filename for entry in entries]
    if len(entries) > MOST_PHOTOS + 1 or len(set(names)) < len(names):
        told = mark("{name} holds {count} entries, more or other than a job has.")
        raise _refused(path, told, count=len(entries))
    if _DOCUMENT not in names:
        raise _refused(path, mark("{name} holds no job."))
    strange = [n for n in names if n != _DOCUMENT and not _PHOTO.fullmatch(n)]
    if strange:
        told = mark("{name} holds “{entry}”, which no job has.")
        raise _refused(path, told, entry=strange[0][:60])
    job, paints = _document(_entry(zip_, _DOCUMENT, _MOST_DOCUMENT, path), path)
    photos = {}
    for name in names:
        if found := _PHOTO.fullmatch(name):
            photos[found[1]] = _photo(_entry(zip_, name, _MOST_PHOTO, path), found[1], path)
    file = JobFile(job, paints, photos)
    _whole(file, path)
    return file


def _entry(zip_: zipfile.ZipFile, name: str, most: int, path: Path) -> bytes:
    """Unpack one entry, never more of it than it may have."""
    entry = zip_.getinfo(name)
    if entry.file_size > most or entry.flag_bits & 1 or entry.compress_type not in _STORED:
        told = mark("{name} holds “{entry}” too large, locked or packed in a way of its own.")
        raise _refused(path, told, entry=name)
    with zip_.open(entry) as packed:
        data = packed.read(most + 1)
    if len(data) > most:
        told = mark("{name} holds “{entry}”, which unpacks to more than it says.")
        raise _refused(path, told, entry=name)
    return data


def _document(data: bytes, path: Path) -> tuple[Job, dict[str, bytes]]:
    try:
        read = decoded(data, _Document)
        if read.format != _FORMAT:
            raise _refused(path, _NO_JOB_FILE)
        if read.version > _VERSION:
            raise MendableError(
                say("{name} was written by a newer Swatchwright.", name=path.name),
                say("Bring this one up to date to read it."),
            )
        job = decoded(read.job, Job)
    except (msgspec.DecodeError, RecursionError, UnicodeDecodeError) as error:
        told = mark("{name} holds a job that cannot be read ({error}).")
        raise _refused(path, told, error=error) from error
    check_job(job)
    if len(read.paints) > _MOST_PAINTS:
        raise _refused(path, mark("{name} holds {count} paints."), count=len(read.paints))
    paints = {hash_: bytes(raw) for hash_, raw in read.paints.items()}
    for hash_, raw_paint in paints.items():
        if fingerprint(raw_paint) != hash_:
            raise _refused(path, mark("{name} holds a paint that has been changed."))
        paint_from_bytes(raw_paint)
    return job, paints


def _photo(data: bytes, hash_: str, path: Path) -> bytes:
    if fingerprint(data) != hash_:
        raise _refused(path, mark("{name} holds a photo that has been changed."))
    check_copy(data)
    return data


def check_copy(data: bytes) -> None:
    """Refuse what is not a small, sound JPEG.

    Raises
    ------
    MendableError
        If it is not.
    """
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            picture = Image.open(BytesIO(data), formats=("JPEG",))
            fine = max(picture.size) <= _MOST_SIDE
            if fine:
                picture.load()
    except (*MALFORMED, Image.DecompressionBombError, MemoryError):
        fine = False
    if not fine:
        raise MendableError(
            say("A photo of the job is damaged or too large."), say("Ask for the file again.")
        )


def _whole(file: JobFile, path: Path) -> None:
    """Refuse a job that refers to what is not there, or brings what it does not refer to."""
    paints = {p.frozen for recipe in file.job.recipes for p in recipe.paints}
    photos = {photo.copy for photo in file.job.photos}
    if paints != set(file.paints) or photos != set(file.photos):
        told = mark("{name} lacks a paint or a photo of its job, or holds one too many.")
        raise _refused(path, told)


def _refused(path: Path, what: str, **values: object) -> MendableError:
    return MendableError(
        say(what, name=path.name, **values),
        say("Choose a {suffix} file that Swatchwright has written.", suffix=SUFFIX),
    )
