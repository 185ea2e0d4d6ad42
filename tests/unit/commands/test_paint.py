"""The command ``swatchwright paint``: brushouts, fit, show and dry."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from swatchwright.acts.paint import look_of_paint
from swatchwright.colour.spectrum import lab_of
from swatchwright.commands.words import colour_json
from swatchwright.paint.paints import HowKnown
from swatchwright.shelf.csv_file import demo_shelf, read_shelf
from swatchwright.shelf.shelf import Shelf
from swatchwright.shelf.write import write_shelf
from unit.acts.films_made import LET_DOWNS, SHELF, seen
from unit.commands.runs import ran, refused

Captured = pytest.CaptureFixture[str]


@pytest.fixture
def mine(tmp_path: Path) -> Path:
    """Give a shelf of three measured paints."""
    write_shelf(SHELF, tmp_path / "mine.csv")
    return tmp_path / "mine.csv"


@pytest.fixture
def sheet(tmp_path: Path) -> Path:
    """Give a sheet of a blue in the writing of a spreadsheet: semicolons and decimal commas."""
    rows = ["id;mix;family;volume_solids;l;a;b"]
    for n, mix in enumerate(LET_DOWNS, 1):
        mixed = " ".join(f"{i}={p:g}" for i, p in mix.items())
        lab = ";".join(f"{v:.2f}" for v in lab_of(seen(mix)))
        rows.append(f"f{n};{mixed};{'satin;0.39' if n == 1 else ';'};{lab}".replace(".", ","))
    path = tmp_path / "sheet.csv"
    path.write_bytes(b"\xef\xbb\xbf" + "\r\n".join(rows).encode())
    return path


def test_from_what_to_brush_to_a_sheet(capsys: Captured, tmp_path: Path, mine: Path) -> None:
    """What to brush out is listed, and written as a sheet that fit takes once it is filled in."""
    out = tmp_path / "todo.csv"
    done = ran(capsys, "paint", "brushouts", "blue", "--shelf", mine, "--out", out)
    assert done.code == 0
    assert "1 part blue with 10 parts white-clean" in done.out
    assert f"Written: {out}" in done.out
    assert "holds no reading" in refused(capsys, "paint", "fit", out, "--shelf", mine)
    told = ran(capsys, "paint", "brushouts", "blue", "--shelf", mine, "--no-card", "--json").json
    assert [one["over"] for one in told["brush_outs"]] == ["hides"] * 3
    assert {"id", "mix", "over", "coats", "words", "why"} == told["brush_outs"][0].keys()


def test_fit_writes_a_shelf(capsys: Captured, tmp_path: Path, mine: Path, sheet: Path) -> None:
    """The fitted paint is on the shelf that is written, with what is known of it, and is used."""
    out = tmp_path / "new.csv"
    words = ("paint", "fit", sheet, "--shelf", mine, "--usually-off", 0.5)
    told = ran(capsys, *words, "--out", out, "--json").json
    (paint,) = told["paints"]
    assert (paint["id"], paint["how_known"], paint["brush_outs"]) == ("blue", "fitted", 3)
    assert 0 < paint["usual_error_with_white"]["paints"] < paint["usual_error_with_white"]["whole"]
    assert paint["next"]["spread_then"] <= paint["next"]["spread_now"]
    assert max(one["delta_e_00"] for one in told["read_back"]) < 1
    assert told["written"] == [str(out), str(tmp_path / "new.doubt.csv")]
    kept = read_shelf(out).paint("blue")
    assert kept.how_known is HowKnown.FITTED
    assert kept.spread is not None
    recipe = ran(capsys, "recipe", "--lab", "45,15,-40", "--shelf", out, "--keep", 1, "--json").json
    error = recipe["recipes"][0]["usual_error_delta_e_00"]
    assert error["by_spread"]
    assert 0.5 < error["paints"] < 4
    assert {p["id"]: p["how_known"] for p in recipe["recipes"][0]["paints"]}["blue"] == "fitted"


def test_fit_in_words(capsys: Captured, mine: Path, sheet: Path) -> None:
    """Without --json it says how well the paint is known and what to brush next, and keeps none."""
    done = ran(capsys, "paint", "fit", sheet, "--shelf", mine)
    assert done.code == 0
    for said in ("from 3 brush-outs", "mixed with white, usually within", "brush out next: "):
        assert said in done.out
    assert "usually within 5.5 of the truth" in done.out
    assert "Nothing was written" in done.out


def test_show_tells_what_is_known(capsys: Captured) -> None:
    """Text and JSON tell how a paint is known, its colours, how it hides and dries."""
    look = look_of_paint(demo_shelf(), "clay-red-muted")
    told = ran(capsys, "paint", "show", "clay-red-muted", "--json").json
    assert (told["dry"], told["wet"]) == (colour_json(look.dry), colour_json(look.wet))
    assert told["coats_to_hide"] == look.coats
    assert [one["parts"] for one in told["let_downs"]] == [1, 4, 10]
    assert told["known"] is None
    text = ran(capsys, "paint", "show", "clay-red-muted").out
    for said in ("chalky matte: invented", told["wet"]["srgb"], "1 : 10", "hides in"):
        assert said in text


def test_dry_is_kept(capsys: Captured, tmp_path: Path) -> None:
    """What a stroke teaches is on the shelf that is written, and shown with the paint."""
    out, id_ = tmp_path / "new.csv", "clay-red-muted"
    look = look_of_paint(demo_shelf(), id_)
    wet = f"{look.wet.L - 3:.2f},{look.wet.a:.2f},{look.wet.b:.2f}"
    dry = ",".join(f"{v:.2f}" for v in look.dry.triple)
    words = ("paint", "dry", id_, "--wet", wet, "--dry", dry)
    done = ran(capsys, *words, "--out", out)
    assert done.code == 0
    assert "scattering while wet" in done.out
    told = ran(capsys, *words, "--json").json
    assert told["wet_delta_e_00"]["after"] < told["wet_delta_e_00"]["before"]
    shown = ran(capsys, "paint", "show", id_, "--shelf", out, "--json").json
    assert shown["finish"]["own"]
    assert shown["finish"]["wet_scattering"] == told["learnt"][0]["own"]
    assert "learnt from a stroke of it" in ran(capsys, "paint", "show", id_, "--shelf", out).out


def test_the_photo_and_the_paints_are_told_apart(capsys: Captured, tmp_path: Path) -> None:
    """A recipe says how far it will be off, also where paints are only told by their kind."""
    path = tmp_path / "guessed.csv"
    paints = tuple(replace(p, how_known=HowKnown.GUESSED) for p in SHELF.paints)
    write_shelf(Shelf("x", paints), path)
    done = ran(capsys, "recipe", "--lab", "60,20,14", "--shelf", path, "--keep", 1)
    assert "usually within 10 of the cloth" in done.out


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("fit", "nothere.csv"), "nothere.csv"),
        (("fit", "SHEET", "--usually-off", "-1"), "--usually-off"),
        (("fit", "SHEET", "--usually-off", "nan"), "--usually-off"),
        (("fit", "SHEET", "--shelf", "nothere.csv"), "nothere.csv"),
        (("fit", "SHEET", "--readings", "nothere.csv"), "nothere.csv"),
        (("fit", "SHEET", "--again", "ochre"), "ochre is to be fitted again"),
        (("show", "nope"), "no paint “nope”"),
        (("dry", "clay-red-muted", "--wet", "1,2", "--dry", "1,2,3"), "--wet"),
        (("dry", "clay-red-muted", "--wet", "40,20,10", "--dry", "95,0,0"), "from the colour"),
        (("brushouts", "deep blue"), "is no id"),
        (("brushouts", "--white", "nope"), "no paint “nope”"),
        (("brushouts", "blue", "--out", "no/such/place.csv"), "could not be written"),
        ((), "WHAT"),
    ],
)
def test_what_is_off_is_refused(
    capsys: Captured, sheet: Path, words: tuple[str, ...], says: str
) -> None:
    """Files, ids and numbers that cannot be are refused, and the message names them."""
    told = [str(sheet) if word == "SHEET" else word for word in words]
    assert says in refused(capsys, "paint", *told)


def test_a_paint_is_added_by_hand(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    """A paint of one colour goes on the kept shelf, with its tins and an honest doubt."""
    store = tmp_path / "store.sqlite"
    words = ("paint", "add", "Harbour blue", "--kind", "chalky", "--store", store)
    tins = ("--tin", "750=24", "--tin", "125")
    told = ran(capsys, *words, "--colour", "#2f4a7d", *tins, "--json").json
    assert told["paints"] == ["harbour-blue"]
    assert told["label"] == "Add “Harbour blue” to the shelf"
    assert told["paint"]["how_known"] == "guessed"
    assert told["paint"]["known"] == "hardly known"
    shelf = ran(capsys, "shelf", "list", "--store", store, "--json").json
    assert [(p["id"], p["tins_ml"]) for p in shelf["paints"]] == [("harbour-blue", [125, 750])]
    again = ran(capsys, *words, "--colour", "30,5,-30", "--known", "measured").out
    assert "Add “Harbour blue” to the shelf" in again
    assert "harbour-blue-2" in again


@pytest.mark.parametrize(
    ("told", "says"),
    [
        (("--colour", "blue"), "not a colour"),
        (("--colour", "30,5,-30", "--kind", "jelly"), "no kind"),
        (("--colour", "30,5,-30", "--tin", "a lot"), "--tin"),
        (("--colour", "30,5,-30", "--tin", "0"), "tin of 0"),
        (("--colour", "30,5,-30", "--tin", "nan=3"), "tin of nan"),
    ],
)
def test_a_paint_by_hand_that_cannot_be(
    capsys: pytest.CaptureFixture[str], tmp_path: Path, told: tuple[str, ...], says: str
) -> None:
    """A colour, a kind or a tin that cannot be is refused, and the shelf stays empty."""
    store = tmp_path / "store.sqlite"
    assert says in refused(capsys, "paint", "add", "Harbour blue", "--store", store, *told)
    assert "empty" in ran(capsys, "shelf", "list", "--store", store).out
