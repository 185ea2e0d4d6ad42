"""A job as a file: whole on the way out and back, and nothing hostile on the way in."""

from __future__ import annotations

import io
import json
import zipfile
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import Any

import msgspec
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PIL import Image

from swatchwright.acts.job_files import export_job, import_job
from swatchwright.acts.jobs import job_of, want_colours
from swatchwright.errors import MendableError
from swatchwright.shelf import job_file
from swatchwright.shelf.job_file import read_job_file
from swatchwright.shelf.jobs import ReadFrom
from swatchwright.shelf.store.kept import fingerprint
from swatchwright.shelf.store.store import Store
from swatchwright.values import Rect
from unit.shelf.stores import add_full_job, dump, opened


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    """Give a store with a job in it."""
    with opened(tmp_path / "store.sqlite") as made:
        add_full_job(made)
        yield made


@pytest.fixture
def sent(store: Store, tmp_path: Path) -> Path:
    """Give the job as a file."""
    return export_job(store, "blanket-box", tmp_path / "box.swatchjob")


def entries(path: Path) -> dict[str, bytes]:
    """Unpack a file."""
    with zipfile.ZipFile(path) as zip_:
        return {name: zip_.read(name) for name in zip_.namelist()}


def packed(path: Path, parts: dict[str, bytes]) -> Path:
    """Pack a file anew."""
    with zipfile.ZipFile(path, "w", zipfile.ZIP_DEFLATED) as zip_:
        for name, data in parts.items():
            zip_.writestr(name, data)
    return path


def test_a_job_goes_to_another_store_whole(store: Store, sent: Path, tmp_path: Path) -> None:
    """Brought in elsewhere it is the same, but for where its photo lay and what was drawn there."""
    job = job_of(store, "blanket-box")
    with opened(tmp_path / "other.sqlite") as other:
        changes = import_job(other, sent)
        assert changes.jobs == ("blanket-box",)
        there = job_of(other, "blanket-box")
        assert len(other.history()) == 1
        full = dump(other)
        other.undo()
        assert not any(dump(other).values())
        other.redo()
        assert dump(other) == full
    photos = tuple(replace(photo, path="") for photo in job.photos)
    drawn = tuple(
        replace(b, poured=tuple(replace(p, drawn=0.0) for p in b.poured)) for b in job.batches
    )
    assert there == replace(job, photos=photos, batches=drawn)


def test_where_a_colour_was_read_goes_along(store: Store, tmp_path: Path) -> None:
    """The box of a colour is in the file; a file of before, without any, is read as it was."""
    job = job_of(store, "blanket-box")
    cloth = ReadFrom(job.photos[0].hash, Rect(20, 30, 40, 50), metre=True)
    want_colours(store, job.id, (replace(job.wanted[0], read=cloth), job.wanted[1]))
    file = export_job(store, job.id, tmp_path / "read.swatchjob")
    assert [wanted.read for wanted in read_job_file(file).job.wanted] == [cloth, None]
    packed(file, changed(entries(file), lambda d: [w.pop("read") for w in d["job"]["wanted"]]))
    assert read_job_file(file).job.wanted == job.wanted


def test_a_job_that_is_there_is_not_replaced(store: Store, sent: Path) -> None:
    """Brought in where it came from it gets an id of its own, and that is said."""
    changes = import_job(store, sent)
    assert changes.jobs == ("blanket-box-groesse-3",)
    assert "blanket-box" in changes.warnings[0]
    assert job_of(store, "blanket-box").photos[0].path == "/x/p.jpg"


def test_the_same_job_makes_the_same_file(store: Store, sent: Path, tmp_path: Path) -> None:
    """The file holds nothing of when or where it was written, and only what is documented."""
    again = export_job(store, "blanket-box", tmp_path / "again.swatchjob")
    assert again.read_bytes() == sent.read_bytes()
    document = json.loads(entries(sent)["job.json"])
    assert (document["format"], document["version"]) == ("swatchwright job", 1)
    assert set(document) == {"format", "version", "job", "paints"}
    assert b"/x/p.jpg" not in sent.read_bytes() + entries(sent)["job.json"]


def test_a_place_that_cannot_be_written_is_said(store: Store, tmp_path: Path) -> None:
    """A folder that is not there is named, and nothing is left behind."""
    with pytest.raises(MendableError, match="could not be written"):
        export_job(store, "blanket-box", tmp_path / "no" / "box.swatchjob")


# --- hostile files -------------------------------------------------------------------------------


def refused(store: Store, path: Path) -> str:
    """Bring in what must be refused; the store stays as it was."""
    before = dump(store), store.history()
    with pytest.raises(MendableError) as error:
        import_job(store, path)
    assert (dump(store), store.history()) == before
    return str(error.value)


def changed(parts: dict[str, bytes], change: Any) -> dict[str, bytes]:
    """Change the document of a file."""
    document = json.loads(parts["job.json"])
    change(document)
    # As msgspec writes it, or the paints would no longer be those of their fingerprints.
    return {**parts, "job.json": msgspec.json.encode(document)}


@pytest.mark.parametrize(
    "change",
    [
        lambda d: d.update(format="another"),
        lambda d: d.update(version=99),
        lambda d: d.update(version="x"),
        lambda d: d.update(job=None),
        lambda d: d.update(job=[]),
        lambda d: d["job"].update(id="../../x"),
        lambda d: d["job"].update(title=""),
        lambda d: d["job"].update(title="x" * 10_000),
        lambda d: d["job"].update(status="lost"),
        lambda d: d["job"].update(notes=[{"written": "", "text": "n"}] * 5000),
        lambda d: d["job"]["recipes"][0]["paints"][0].update(share=-1),
        lambda d: d["job"]["recipes"][0]["paints"][0].update(frozen="0" * 64),
        lambda d: d["job"]["recipes"][0]["dry"].update(L=1e308),
        lambda d: d["job"]["batches"][0].update(volume=-5),
        lambda d: d["job"]["photos"][0].update(copy="0" * 64),
        lambda d: d["job"]["wanted"][0].update(read={"photo": "/etc/passwd"}),
        lambda d: d["job"]["wanted"][0].update(read={"photo": "0" * 64, "cloth": [1, 2, 3, 4]}),
        lambda d: d["job"]["wanted"][0].update(
            read={"photo": "0" * 64, "cloth": {"x": -1, "y": 0, "width": 9, "height": 9}}
        ),
        lambda d: d["job"]["photos"][0].update(width=10**12),
        lambda d: d["job"]["photos"][0]["marks"]["grey"][0].update(x=-7),
        lambda d: d["job"]["documents"].append(["notes", {"schema": 1, "json": "[]"}]),
        lambda d: d["paints"].clear(),
        lambda d: d["paints"].update({"0" * 64: {}}),
        lambda d: next(iter(d["paints"].values()))["K"].__setitem__(0, 5.0),
    ],
)
def test_a_document_that_cannot_be_is_refused(store: Store, sent: Path, change: Any) -> None:
    """A value of the wrong kind, out of its bounds or without its fellow is refused."""
    packed(sent, changed(entries(sent), change))
    assert refused(store, sent)


def other_photo(data: bytes) -> Any:
    """Give a change that puts other bytes in place of the photo, with their fingerprint."""

    def change(parts: dict[str, bytes]) -> dict[str, bytes]:
        (old,) = (name for name in parts if name.startswith("photos/"))
        document = parts["job.json"].decode().replace(old[7:-4], fingerprint(data))
        return {"job.json": document.encode(), f"photos/{fingerprint(data)}.jpg": data}

    return change


def picture(kind: str, size: tuple[int, int]) -> bytes:
    """Give a picture file."""
    written = io.BytesIO()
    Image.new("RGB", size).save(written, kind)
    return written.getvalue()


@pytest.mark.parametrize(
    "change",
    [
        lambda p: {**p, "../evil.txt": b"x"},
        lambda p: {**p, "/etc/evil": b"x"},
        lambda p: {**p, "photos/../../evil.jpg": b"x"},
        lambda p: {**p, f"photos/{'0' * 64}.jpg": b"x"},
        lambda p: {**p, **{f"photos/{i:064x}.jpg": b"x" for i in range(200)}},
        lambda p: {n: d for n, d in p.items() if n == "job.json"},
        lambda p: {n: d for n, d in p.items() if n != "job.json"},
        lambda p: {**p, "job.json": b"\xff\xfe"},
        lambda p: {**p, "job.json": b"[" * 100_000},
        lambda p: {n: d[:-1] for n, d in p.items()},
        other_photo(b"no picture"),
        other_photo(picture("PNG", (9, 9))),
        other_photo(picture("JPEG", (9000, 9))),
        other_photo(picture("JPEG", (900, 900))[:-2000]),
    ],
)
def test_entries_that_cannot_be_are_refused(store: Store, sent: Path, change: Any) -> None:
    """Names that lead elsewhere, too many, missing, cut or foreign contents are refused."""
    packed(sent, change(entries(sent)))
    assert refused(store, sent)


def test_a_name_that_comes_twice_is_refused(store: Store, sent: Path) -> None:
    """Of two documents of one name neither is taken."""
    document = entries(sent)["job.json"]
    with zipfile.ZipFile(sent, "a") as zip_, pytest.warns(UserWarning, match="Duplicate"):
        zip_.writestr("job.json", document)
    assert "entries" in refused(store, sent)


def test_a_bomb_is_refused_before_it_goes_off(
    store: Store, sent: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """An entry that unpacks to more than it may, or than it says, is never unpacked whole."""
    parts = entries(sent)
    packed(sent, {**parts, "job.json": parts["job.json"] + b" " * 70_000_000})
    assert sent.stat().st_size < 200_000
    assert "too large" in refused(store, sent)
    monkeypatch.setattr(job_file, "_MOST_DOCUMENT", 1000)
    packed(sent, parts)
    lying = sent.read_bytes().replace(
        len(parts["job.json"]).to_bytes(4, "little"), (900).to_bytes(4, "little")
    )
    sent.write_bytes(lying)
    assert refused(store, sent)
    monkeypatch.setattr(job_file, "_MOST_FILE", 100)
    assert "larger" in refused(store, sent)


def test_what_is_no_zip_is_refused(store: Store, tmp_path: Path) -> None:
    """A text, a folder, a file that is not there and an empty one are refused in words."""
    (tmp_path / "text").write_text("hello", encoding="utf-8")
    (tmp_path / "empty").touch()
    for name in ("text", "empty", "nowhere", "."):
        assert refused(store, tmp_path / name)


@settings(
    max_examples=150, suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None
)
@given(st.data())
def test_a_file_with_any_byte_changed_is_read_or_refused(sent: Path, data: st.DataObject) -> None:
    """Damage anywhere in the file ends in words or in a job that is in order, never otherwise."""
    whole = bytearray(sent.read_bytes())
    for _ in range(data.draw(st.integers(1, 4))):
        whole[data.draw(st.integers(0, len(whole) - 1))] = data.draw(st.integers(0, 255))
    cut = data.draw(st.integers(0, len(whole)))
    path = sent.with_name("damaged.swatchjob")
    path.write_bytes(whole if data.draw(st.booleans()) else whole[:cut])
    try:
        file = read_job_file(path)
    except MendableError:
        return
    assert file.job.title
    assert {photo.copy for photo in file.job.photos} == set(file.photos)
