"""The command that writes sheets and labels, and reads a code back."""

from __future__ import annotations

import io
from pathlib import Path

import pypdfium2
import pytest
from PIL import Image

from swatchwright.acts.jobs import new_job, open_jobs
from unit.commands.runs import ran, refused

MIX = ("--recipe", "strong-red-orange=361", "pale-blue-greyish=96", "strong-yellow-orange=43")


def test_a_sheet_is_written_and_named(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """The file is there, is a PDF of the asked paper, and its name is printed."""
    out = tmp_path / "box.pdf"
    done = ran(capsys, "sheet", *MIX, "--title", "Box", "--out", out, "--paper", "letter")
    assert (done.code, done.out) == (0, f"Written: {out}\n")
    document = pypdfium2.PdfDocument(out.read_bytes())
    assert document[0].get_size() == pytest.approx((612, 792))
    document.close()


def test_a_label_has_its_size_in_dots(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """A picture of a 4 by 2 inch label at 100 dots to the inch is 400 by 200 dots."""
    out = tmp_path / "jar.png"
    assert ran(capsys, "sheet", *MIX, "--label", "4x2in", "--out", out, "--dpi", 100).code == 0
    with Image.open(out) as picture:
        assert picture.size == (400, 200)


def test_json_tells_all_and_writes_nothing(capsys: pytest.CaptureFixture[str]) -> None:
    """Without a file --json prints what would be on the sheet."""
    told = ran(
        capsys, "sheet", *MIX, "--lab", "46,34,24", "--layer", "wax", "--units", "ml", "--json"
    ).json
    zone = told["zones"][0]
    assert [paint["ml"] for paint in zone["paints"]] == [361.0, 96.0, 43.0]
    assert zone["wanted"]["lab"] == [46, 34, 24]
    assert zone["finished"]["srgb"].startswith("#")
    assert told["invented"] is True
    assert told["files"] == []


def test_a_code_is_read_back(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    """The text of a code becomes a recipe again, and the shelf still gives its colour."""
    code = ran(capsys, "sheet", *MIX, "--title", "Box", "--json").json["zones"][0]["code"]
    done = ran(capsys, "sheet", "--read", code)
    assert done.out.startswith("Box, ")
    assert f"Mix it: {' '.join(MIX[1:])}" in done.out
    assert "dries the same" in done.out
    monkeypatch.setattr("sys.stdin", io.StringIO(code))
    told = ran(capsys, "sheet", "--read", "-", "--json").json
    assert [p["id"] for p in told["paints"]] == [text.partition("=")[0] for text in MIX[1:]]
    assert told["shelf_delta_e_00"] < 0.2


def test_a_code_of_another_shelf_says_so(capsys: pytest.CaptureFixture[str]) -> None:
    """A recipe of paints that are not there is read all the same; a changed colour is told."""
    strange = "SWATCHWRIGHT 1\ndry 50 0 0\nmix my-own=1 My own"
    assert "not all of its paints" in ran(capsys, "sheet", "--read", strange).out
    changed = "SWATCHWRIGHT 1\ndry 50 0 0\nmix white-clean=1"
    assert "from what it was" in ran(capsys, "sheet", "--read", changed).out


def test_a_job_is_found_by_the_beginning_of_its_id(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, demo: Path
) -> None:
    """A job of two zones becomes a sheet, or that of one zone."""
    out = tmp_path / "job.pdf"
    done = ran(capsys, "sheet", "--job", "blan", "--store", demo, "--out", out, "--json")
    assert [zone["name"] for zone in done.json["zones"]] == ["body", "lid"]
    assert done.json["files"] == [str(out)]
    lid = ran(capsys, "sheet", "--job", "blan", "--store", demo, "--zone", "lid", "--json").json
    assert [zone["name"] for zone in lid["zones"]] == ["lid"]


@pytest.fixture
def demo(tmp_path: Path) -> Path:
    """Give a store with a job of two zones, and one of none."""
    from swatchwright.acts.batches import keep_recipes
    from swatchwright.acts.recipes import recipes_for, typed_colour
    from swatchwright.shelf.csv_file import demo_shelf

    path = tmp_path / "store.sqlite"
    with open_jobs(path) as store:
        id_ = new_job(store, title="Blanket box").jobs[0]
        for zone, lab in (("body", (46, 34, 24)), ("lid", (25, 2, -22))):
            found = recipes_for(typed_colour(*lab), demo_shelf(), most_paints=2, keep=1)
            keep_recipes(store, id_, found, zone=zone)
        new_job(store, title="Chair")
    return path


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ((), "--job JOB"),
        ((*MIX, "--read", "x"), "Too much"),
        (MIX, "--out"),
        ((*MIX, "--out", "a.txt"), ".pdf or .png"),
        ((*MIX, "--out", "a.pdf", "--paper", "a3"), "A4, Letter"),
        ((*MIX, "--out", "a.pdf", "--label", "9x9"), "63.5x38.1"),
        ((*MIX, "--out", "a.pdf", "--fill"), "--label"),
        ((*MIX, "--out", "a.pdf", "--label", "70x37", "--paper", "a4"), "--paper"),
        ((*MIX, "--json", "--units", "pints"), "ml, g"),
        ((*MIX, "--json", "--units", ""), "ml, g"),
        ((*MIX, "--json", "--spoons", "Mars"), "United Kingdom"),
        ((*MIX, "--json", "--zone", "lid"), "--job"),
        ((*MIX, "--json", "--layer", "jam"), "layer"),
        ((*MIX, "--json", "--day", "soon"), "2026-03-01"),
        ((*MIX, "--json", "--lab", "1,2"), "three numbers"),
        (("--job", "x", "--title", "y", "--json"), "--recipe"),
        (("--job", "x", "--shelf", "y.csv", "--json"), "its own paints"),
        (("--read", "hello"), "SWATCHWRIGHT 1"),
        (("--read", "SWATCHWRIGHT 1\ndry 50 0 0\nmix a=1", "--shelf", "no.csv"), "no.csv"),
    ],
)
def test_bad_input_is_refused_with_what_to_do(
    capsys: pytest.CaptureFixture[str], words: tuple[str, ...], said: str
) -> None:
    """Each slip is told in plain words, and nothing is written."""
    assert said in refused(capsys, "sheet", *words)


def test_a_job_without_a_recipe_is_refused(capsys: pytest.CaptureFixture[str], demo: Path) -> None:
    """A job for which nothing is chosen has no sheet, and what to do is said."""
    said = refused(capsys, "sheet", "--job", "chair", "--store", demo, "--json")
    assert "Find and keep a recipe" in said
