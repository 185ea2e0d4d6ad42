"""What a command works out can be kept with a job, and a colour of the job's photo be wanted."""

from __future__ import annotations

from pathlib import Path

import pytest

from swatchwright.acts.jobs import job_of, open_jobs
from swatchwright.acts.samples import sample_photos
from swatchwright.colour.difference import delta_e_2000
from swatchwright.commands.run import run
from swatchwright.paint.layers import Stack
from swatchwright.piece.part import Piece
from swatchwright.piece.work.order import PlanOrder

MIX = ("strong-red-orange=11", "pale-blue-greyish=2")


@pytest.fixture
def store(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> list[str]:
    """Give the words that name a store with a job in it."""
    named = ["--store", str(tmp_path / "store.sqlite")]
    assert run(["shelf", "demo", *named]) == 0
    assert run(["job", "new", "Blanket box", *named]) == 0
    capsys.readouterr()
    return named


def test_piece_plan_and_finish_are_kept(store: list[str]) -> None:
    """Each can be read back from the job as the value that it was."""
    kept = ["--for-job", "blanket", *store]
    assert run(["piece", "blanket box", "--width", "1000", *kept]) == 0
    plan = ["plan", "--start", "2027-03-01", "--surface", "painted", "--age", "recent"]
    assert run([*plan, *kept]) == 0
    assert run(["finish", *MIX, "--layer", "wax", *kept]) == 0
    opened = open_jobs(Path(store[1]))
    job = job_of(opened, "blanket-box")
    opened.close()
    kinds = {"piece": Piece, "plan": PlanOrder, "finish": Stack}
    for part, kind in kinds.items():
        document = job.document(part)
        assert document is not None
        assert isinstance(document.read(kind), kind)


def test_a_layer_for_a_part(store: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    """A layer for a part of the piece is kept; for another it is refused, with those there are."""
    kept = ["--for-job", "blanket", *store]
    assert run(["piece", "blanket box", *kept]) == 0
    wash = "wash white-clean on="
    assert run(["finish", *MIX, "--layer", f"{wash}lid", *kept]) == 2
    assert "body" in capsys.readouterr().err
    assert run(["finish", *MIX, "--layer", f"{wash}body", *kept]) == 0
    opened = open_jobs(Path(store[1]))
    document = job_of(opened, "blanket-box").document("finish")
    opened.close()
    assert document is not None
    assert document.read(Stack).zones == ("body",)


def test_json_stays_json(store: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    """That something was kept is said beside the answer, which another program may read."""
    assert run(["finish", *MIX, "--layer", "wax", "--json", "--for-job", "blanket", *store]) == 0
    out, err = capsys.readouterr()
    assert out.lstrip().startswith("{")
    assert err.startswith("Kept: ")


def test_a_job_that_is_not_there_is_said(
    store: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    """Nothing is kept with a job of another name."""
    assert run(["finish", *MIX, "--layer", "wax", "--for-job", "dresser", *store]) == 2
    assert "dresser" in capsys.readouterr().err


def test_a_colour_of_the_photo_is_wanted(
    store: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    """The photo that a job keeps is read by its marks; a colour it does not have is refused."""
    sample = sample_photos()[0]
    assert run(["job", "recipe", "blanket", "--pick", "1", *store]) == 2
    assert "no photo" in capsys.readouterr().err
    grey, cloth = (f"{r.x},{r.y},{r.width},{r.height}" for r in (sample.grey, sample.cloth))
    assert (
        run(["job", "photo", "blanket", str(sample.path), "--grey", grey, "--area", cloth, *store])
        == 0
    )
    assert run(["job", "recipe", "blanket", "--pick", "2", "--zone", "top", *store]) in {0, 3}
    opened = open_jobs(Path(store[1]))
    wanted = job_of(opened, "blanket-box").wanted[0]
    opened.close()
    assert wanted.zone == "top"
    assert wanted.colour.covariance is not None
    # The ink blue of sample_images/truth.json.
    assert float(delta_e_2000(wanted.colour.lab.triple, [26.93, 2.02, -24.02])) < 8
    assert run(["job", "recipe", "blanket", "--pick", "9", *store]) == 2
    assert "Colour 9 was picked" in capsys.readouterr().err


def test_a_plan_for_two_colours(store: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    """A plan for a job with two mixes names each pot and says where each coat goes; alone not."""
    assert run(["piece", "blanket box", "--for-job", "blanket", *store]) == 0
    for zone, lab in (("body", "46,34,24"), ("top", "28,3,-24")):
        wanted = ["--lab", lab, "--zone", zone]
        assert run(["job", "recipe", "blanket", *wanted, *store]) == 0
    plan = ["plan", "--start", "2026-12-01", "--surface", "raw wood", "--piece", "blanket-box"]
    capsys.readouterr()
    assert run([*plan, *store]) == 0
    assert "Mix the whole batch" in capsys.readouterr().out
    assert run([*plan, "--for-job", "blanket", *store]) == 0
    told = capsys.readouterr().out
    assert "Mix each colour whole, in one pot each: " in told
    assert " on the body, " in told
    assert told.count("take the tape off before") == told.count("Paint, coat ")
