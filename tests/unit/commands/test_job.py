"""Jobs by command: each thing that can be done, in words and as JSON, and what is refused."""

from __future__ import annotations

from pathlib import Path

import pytest

from swatchwright.acts.jobs import job_of, keep_document, open_jobs
from swatchwright.piece.common import Kind, common_piece
from swatchwright.shelf.jobs import ReadFrom
from swatchwright.values import Rect
from unit.acts.scenes import scene
from unit.commands.runs import Ran, ran, refused

Captured = pytest.CaptureFixture[str]


class Bench:
    """Runs commands on a store of its own."""

    def __init__(self, capsys: Captured, store: Path) -> None:
        self.capsys = capsys
        self.store = store

    def __call__(self, *words: object, code: int = 0) -> Ran:
        """Run a command that must end with a code."""
        done = ran(self.capsys, *words, "--store", self.store)
        assert done.code == code, done
        return done

    def refused(self, *words: object) -> str:
        """Run a command that must be refused."""
        return refused(self.capsys, *words, "--store", self.store)


@pytest.fixture
def bench(capsys: Captured, tmp_path: Path) -> Bench:
    """Give a store with the demonstration shelf and one job with a recipe."""
    made = Bench(capsys, tmp_path / "store.sqlite")
    made("shelf", "demo")
    made("job", "new", "Blanket box", "--client", "Harbour workshop", "--light", "north")
    made("job", "recipe", "blanket", "--lab", "46,34,24", "--zone", "body")
    return made


def test_an_empty_store_says_how_to_begin(capsys: Captured, tmp_path: Path) -> None:
    """Where nothing is kept the list says how to begin, and JSON is an empty list."""
    bench = Bench(capsys, tmp_path / "s.sqlite")
    assert "job new" in bench("job", "list").out
    assert bench("job", "list", "--json").json == {"jobs": []}
    assert "Nothing was done" in bench("job", "history").out
    assert "nothing to undo" in bench.refused("job", "undo")
    bench("job", "new", "Chair")
    assert "shelf demo" in bench.refused("job", "recipe", "chair", "--lab", "46,34,24")


def test_a_job_is_shown(bench: Bench) -> None:
    """What is kept of a job is printed, and given as JSON."""
    bench("job", "note", "blanket", "Sand between coats")
    told = bench("job", "show", "blanket").out
    for words in ("Harbour workshop", "north", "mid red", "Recipe, body, chosen", "Sand between"):
        assert words in told
    job = bench("job", "show", "blanket", "--json").json
    assert job["wanted"][0]["lab"] == [46.0, 34.0, 24.0]
    assert [recipe["chosen"] for recipe in job["recipes"]] == [True, False, False]
    assert sum(paint["share"] for paint in job["recipes"][0]["paints"]) == pytest.approx(1)
    assert job["notes"][0]["text"] == "Sand between coats"


def test_a_recipe_out_of_reach_is_kept_and_said(bench: Bench) -> None:
    """The nearest is kept, what is missing is said, and the command ends with 3."""
    told = bench("job", "recipe", "blanket", "--lab", "50,80,40", code=3).out
    assert "Nothing on the shelf reaches it" in told
    assert len(bench("job", "show", "blanket", "--json").json["recipes"]) == 6


def test_the_head_changes(bench: Bench) -> None:
    """Status and texts are changed, and the list can be narrowed by status."""
    bench("job", "change", "blanket", "--status", "agreed", "--client", "B")
    assert [j["client"] for j in bench("job", "list", "--json").json["jobs"]] == ["B"]
    assert "Blanket box" in bench("job", "list", "--status", "agreed").out
    assert "No job is “done”" in bench("job", "list", "--status", "done").out
    assert "asked, sampling" in bench.refused("job", "list", "--status", "ready")
    assert "Nothing changed" in bench("job", "change", "blanket", "--client", "B").out


def test_jobs_are_found(bench: Bench) -> None:
    """By words, by a colour, or not at all."""
    assert "blanket-box" in bench("job", "find", "harbour", "box").out
    near = bench("job", "find", "--like", "45,33,25", "--json").json["jobs"][0]["near"]
    assert near["zone"] == "body"
    assert 0 < near["delta_e_00"] < 2
    assert "off" in bench("job", "find", "--like", "45,33,25").out
    for words in (("velvet",), ("--like", "90,0,0"), ("--piece", "harbour")):
        assert "No job is like that" in bench("job", "find", *words).out
    assert bench("job", "find", "--client", "harbour", "--json").json["jobs"]
    bench.refused("job", "find", "--like", "45,33")
    bench.refused("job", "find", "--like", "45,33,25", "--within", "0")


def test_batches_are_mixed_again_and_taken_back(bench: Bench) -> None:
    """Two batches of different volume have the same shares; taken back, the stock is as before."""
    bench("shelf", "stock", "set", "strong-red-orange", "1000")
    first = bench("job", "batch", "blanket", "--volume", "110", "--json").json
    again = bench("job", "batch", "blanket", "--volume", "220", "--json").json
    assert (first["number"], again["number"]) == (1, 2)
    for one, two in zip(first["poured"], again["poured"], strict=True):
        # Each is rounded to a tenth of a ml.
        assert two["ml"] == pytest.approx(2 * one["ml"], abs=0.15 + 1e-9)
    bench("job", "batch", "blanket", "--take-back", "2")
    bench("job", "undo")
    told = bench("job", "batch", "blanket", "--volume", "5000", "--note", "large").out
    assert "Check: Of" in told
    assert "Batch 3" in bench("job", "show", "blanket").out
    assert "1, 2, 3" in bench.refused("job", "batch", "blanket", "--take-back", "9")
    bench.refused("job", "batch", "blanket", "--take-back", "1", "--volume", "10")
    bench.refused("job", "batch", "blanket", "--day", "soon")


def test_removing_is_undone_and_redone(bench: Bench) -> None:
    """A removed job is back after undo, gone after redo; the history tells."""
    assert "job undo" in bench("job", "remove", "blanket").out
    assert bench("job", "list", "--json").json["jobs"] == []
    assert "Undone: Remove" in bench("job", "undo").out
    assert len(bench("job", "list", "--json").json["jobs"]) == 1
    assert bench("job", "redo", "--json").json["jobs"] == ["blanket-box"]
    bench("job", "undo")
    assert "(undone)" in bench("job", "history").out
    assert bench("job", "history", "--json").json["edits"][0]["undone"]


def test_a_copy_has_an_id_of_its_own(bench: Bench) -> None:
    """A copy is a new job with the same recipes."""
    assert "second-box" in bench("job", "copy", "blanket", "--title", "Second box").out
    assert bench("job", "show", "second", "--json").json["recipes"]


def test_a_photo_is_kept_with_its_marks(bench: Bench, tmp_path: Path) -> None:
    """A photo with a card and a cloth marked is listed with the job."""
    path = scene(tmp_path / "scene.png")
    asked = ("job", "photo", "blanket", path, "--grey", "10,10,60,60", "--area", "90,20,200,160")
    bench(*asked, "--grey-y", "0.2")
    (photo,) = bench("job", "show", "blanket", "--json").json["photos"]
    assert (photo["grey"], photo["area"]) == ([[10, 10, 60, 60]], [90, 20, 200, 160])
    assert photo["reflectance"] == 0.2
    assert "scene.png" in bench("job", "show", "blanket").out
    assert "does not lie" in bench.refused("job", "photo", "blanket", path, "--grey", "1,1,999,9")
    bench.refused("job", "photo", "blanket", tmp_path / "none.jpg")


def test_a_picked_colour_remembers_its_area(bench: Bench, tmp_path: Path) -> None:
    """Two colours picked from two areas of one photo each remember their own; a typed one none."""
    path = scene(tmp_path / "scene.png")
    for zone, area in (("top", Rect(90, 20, 200, 160)), ("drawers", Rect(100, 40, 80, 60))):
        told = f"{area.x},{area.y},{area.width},{area.height}"
        bench("job", "photo", "blanket", path, "--grey", "10,10,60,60", "--area", told)
        asked = ("job", "recipe", "blanket", "--pick", "1", "--zone", zone, "--paints", "2")
        bench(*asked)
    with open_jobs(bench.store) as store:
        job = job_of(store, "blanket-box")
    (hash_,) = (photo.hash for photo in job.photos)
    assert {wanted.zone: wanted.read for wanted in job.wanted} == {
        "body": None,
        "top": ReadFrom(hash_, Rect(90, 20, 200, 160)),
        "drawers": ReadFrom(hash_, Rect(100, 40, 80, 60)),
    }


def test_a_job_goes_out_and_comes_in(bench: Bench, tmp_path: Path) -> None:
    """A job is written to a file and read into another store."""
    out = tmp_path / "box.swatchjob"
    assert bench("job", "export", "blanket", "--out", out, "--json").json == {"files": [str(out)]}
    shown = bench("job", "show", "blanket", "--json").json
    other = Bench(bench.capsys, tmp_path / "other.sqlite")
    assert other("job", "import", out, "--json").json["jobs"] == ["blanket-box"]
    assert other("job", "show", "blanket-box", "--json").json == shown
    assert "job file" in other.refused("job", "import", bench.store)


def test_the_store_may_be_named_by_the_environment(
    capsys: Captured, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Without --store the store of SWATCHWRIGHT_HOME is used."""
    monkeypatch.setenv("SWATCHWRIGHT_HOME", str(tmp_path / "home"))
    assert ran(capsys, "job", "new", "Chair").code == 0
    assert (tmp_path / "home" / "swatchwright.sqlite").exists()
    assert "chair" in ran(capsys, "job", "list").out


@pytest.mark.parametrize(
    "words",
    [
        ("job",),
        ("job", "dance"),
        ("job", "show"),
        ("job", "show", "nowhere"),
        ("job", "new", " "),
        ("job", "note", "blanket", ""),
        ("job", "recipe", "blanket"),
        ("job", "recipe", "blanket", "--lab", "200,0,0"),
        ("job", "recipe", "blanket", "--lab", "46,34,24", "--choose", "9"),
        ("job", "batch", "blanket", "--volume", "nan"),
        ("job", "import", "nowhere"),
    ],
)
def test_what_cannot_be_done_is_refused(bench: Bench, words: tuple[str, ...]) -> None:
    """Words that mean nothing here are refused and change nothing."""
    before = bench("job", "history", "--json").json
    bench.refused(*words)
    assert bench("job", "history", "--json").json == before


def test_a_file_that_is_no_store_is_refused(capsys: Captured, tmp_path: Path) -> None:
    """A file of another kind is named and left as it is."""
    path = tmp_path / "mine.csv"
    path.write_text("id,name\n", encoding="utf-8")
    assert "not a store" in refused(capsys, "job", "list", "--store", path)
    assert path.read_text(encoding="utf-8") == "id,name\n"


def test_a_mix_of_before_the_zones_had_theirs(bench: Bench) -> None:
    """It is said to be out of use, no sheet or batch is made of it, and it can be taken off."""
    bench("job", "recipe", "blanket", "--lab", "60,5,20")
    with open_jobs(bench.store) as store:
        keep_document(store, "blanket-box", "piece", common_piece(Kind.BLANKET_BOX))
    assert "Not in use" not in bench("job", "show", "blanket").out
    bench("job", "recipe", "blanket", "--lab", "28,3,-24", "--zone", "top")
    assert bench("job", "show", "blanket").out.count("Not in use") == 1
    recipes = bench("job", "show", "blanket", "--json").json["recipes"]
    assert {r["zone"] for r in recipes if r["chosen"] and not r["in_use"]} == {"all"}
    told = bench("sheet", "--job", "blanket", "--json").json
    assert [zone["name"] for zone in told["zones"]] == ["body", "top"]
    assert told["size"] == "1000 × 500 × 450 mm"
    for words in (("sheet", "--job", "blanket", "--json"), ("job", "batch", "blanket")):
        assert "mixes of their own" in bench.refused(*words, "--zone", "all")
    assert "off “Blanket box”" in bench("job", "take-off", "blanket").out
    job = bench("job", "show", "blanket", "--json").json
    assert [(w["zone"], w["volume_ml"]) for w in job["wanted"]] == [("body", 500), ("top", 500)]
    assert "zone all" in bench.refused("job", "take-off", "blanket")
    bench("job", "undo")
    assert len(bench("job", "show", "blanket", "--json").json["wanted"]) == 3
