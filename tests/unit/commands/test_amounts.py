"""The command ``swatchwright amounts``."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from swatchwright.acts.habits import keep_money
from unit.commands.runs import ran, refused

Captured = pytest.CaptureFixture[str]

TWO = ("--zone", "body=2.4", "--zone", "drawers=0.6")
RECIPE = ("--recipe", "white-clean=8,deep-blue-red=2")


def test_json_is_as_documented(capsys: Captured) -> None:
    """JSON has coatings, batches, purchases, price and notes, as docs/files.md says."""
    done = ran(capsys, "amounts", *TWO, *RECIPE, "--json")
    assert (done.code, done.err) == (0, "")
    found = done.json
    assert found.keys() == {"coatings", "batches", "purchases", "price", "notes"}
    assert found["price"] is None
    (batch,) = found["batches"]
    assert sum(p["ml"] for p in batch["paints"]) == pytest.approx(batch["mix_ml"], abs=0.1)
    assert {p["id"] for p in found["purchases"]} == {"white-clean", "deep-blue-red"}
    for purchase in found["purchases"]:
        held = sum(t["count"] * t["ml"] for t in purchase["tins"])
        assert held >= purchase["need_ml"]


def test_a_worked_amount(capsys: Captured) -> None:
    """2.4 m2 twice at 12 m2 a litre are 400 ml, told in the table with the brush's 5 %."""
    done = ran(capsys, "amounts", "--zone", "body=2.4")
    assert "421" in done.out
    assert "83      32" in done.out
    found = ran(capsys, "amounts", "--zone", "body=2.4", "--json").json
    assert found["coatings"][0]["laid_ml"] == 400


def test_a_price_in_the_painters_money(capsys: Captured) -> None:
    """The price is work and materials and margin, exact, in the word that was given."""
    asked = ("--hours", "8", "--hour-rate", "31.50", "--margin", "0.2", "--currency", "crowns")
    tins = ("--tins", "body=750:22,2500:58.10", "--tins", "clear=500:19", "--clear", "1")
    done = ran(capsys, "amounts", "--zone", "body=2.4", *tins, *asked, "--json")
    price = {key: done.json["price"][key] for key in ("labour", "materials", "margin", "total")}
    assert Decimal(price["labour"]) == Decimal(252)
    assert Decimal(price["materials"]) == Decimal(41)
    assert Decimal(price["total"]) == Decimal("351.60")
    text = ran(capsys, "amounts", "--zone", "body=2.4", *tins, *asked).out
    assert "= 351.60 crowns" in text
    assert "buy 1 × 750 ml for 22.00" in text


def test_a_piece_gives_its_zones(capsys: Captured) -> None:
    """The zones of a common piece are those of the piece, with a recipe for one of them."""
    asked = ("--piece", "chest-of-drawers", *RECIPE, "--recipe", "drawers:clay-red-muted=1")
    found = ran(capsys, "amounts", *asked, "--json").json
    assert {row["zone"] for row in found["coatings"]} == {"top", "body", "drawers"}
    mixes = {row["zone"]: row["product"] for row in found["coatings"]}
    assert mixes["top"] == mixes["body"] != mixes["drawers"]


def test_all_there_is_in_words(capsys: Captured) -> None:
    """Every part of the answer can be read: pouring, water, what is left, what is missing."""
    asked = ("--wash", "1", "--primer", "1", "--left", "white-clean=5000", "--ground", "bare")
    text = ran(capsys, "amounts", *TWO, *RECIPE, *asked).out
    for words in ("Mix at once", "Pour", "ml water", "nothing to buy", "to get", "for a sample"):
        assert words in text


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ((), "Nothing to be painted"),
        (("--zone", "body"), "--zone"),
        (("--zone", "body=x"), "--zone"),
        (("--zone", "body=-1"), "measures −1"),
        (("--zone", "body=1", "--piece", "chair"), "one or the other"),
        ((*TWO, "--coats", "-1"), "-1 coats"),
        ((*TWO, "--coats", "0"), "Nothing is put on"),
        ((*TWO, "--coats", "99"), "99 coats"),
        ((*TWO, "--tool", "sponge"), "foam roller"),
        ((*TWO, "--ground", "p"), "primed"),
        ((*TWO, "--paint-rate", "0"), "A litre is said"),
        ((*TWO, "--solids", "0"), "volume solids"),
        ((*TWO, *RECIPE, *RECIPE), "two recipes"),
        ((*TWO, "--recipe", "lid:white-clean=1"), "no zone “lid”"),
        ((*TWO, "--recipe", "white-clean"), "white-clean"),
        ((*TWO, "--recipe", "nothing=1"), "no paint “nothing”"),
        ((*TWO, "--tins", "body=750:x"), "--tins"),
        ((*TWO, "--tins", "body=0:1"), "cannot be bought"),
        ((*TWO, "--tins", "wax=750"), "Nothing called “wax”"),
        ((*TWO, "--left", "body=x"), "--left"),
        ((*TWO, "--hours", "many"), "--hours"),
        ((*TWO, "--margin", "-1"), "margin is −1"),
        ((*TWO, "--touch-up", "3"), "touching up"),
    ],
)
def test_what_cannot_be_reckoned(words: tuple[str, ...], told: str, capsys: Captured) -> None:
    """What is off is named, with what would do."""
    assert told in refused(capsys, "amounts", *words)


def test_the_money_named_in_the_window_counts_unless_another_is_given(
    capsys: Captured, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Where no word is given, prices are in what she calls her money; an empty word is none."""
    monkeypatch.setenv("SWATCHWRIGHT_HOME", str(tmp_path))
    asked = ("amounts", "--zone", "body=2.4", "--tins", "body=750:22")
    terms = ("--hours", "1", "--hour-rate", "30")
    assert ran(capsys, *asked, *terms, "--json").json["price"]["currency"] == ""
    keep_money("£")
    assert ran(capsys, *asked, *terms, "--json").json["price"]["currency"] == "£"
    text = ran(capsys, *asked, *terms).out
    assert "buy 1 × 750 ml for £22.00" in text
    assert "= £52.00\n" in text
    text = ran(capsys, *asked, *terms, "--currency", "CHF").out
    assert "for 22.00 CHF" in text
    assert "= 52.00 CHF\n" in text
    assert "= 52.00\n" in ran(capsys, *asked, *terms, "--currency", "").out


def test_finishes_of_several_parts(capsys: Captured) -> None:
    """Wax for the body and varnish for the lid are two products, each for its own area."""
    asked = (
        "--piece",
        "blanket-box",
        "--layer",
        "wax on=body",
        "--layer",
        "varnish coats=3 on=top",
    )
    found = ran(capsys, "amounts", *asked, "--json").json
    rows = {(row["zone"], row["product"]): row for row in found["coatings"]}
    assert rows["top", "varnish"]["coats"] == 3
    assert rows["body", "wax"]["coats"] == 1
    assert not {("body", "varnish"), ("top", "wax")} & set(rows)
    # From memory, common practice: wax goes 40 m2 a litre, a varnish 12; a brush keeps a twentieth.
    wax, varnish = rows["body", "wax"], rows["top", "varnish"]
    assert wax["need_ml"] == pytest.approx(1000 * wax["area_m2"] / 40 / 0.95, rel=0.01)
    assert varnish["need_ml"] == pytest.approx(3000 * varnish["area_m2"] / 12 / 0.95, rel=0.01)
    assert "no part “doors”" in refused(capsys, "amounts", *asked[:2], "--layer", "oil on=doors")
    assert "Layers were given" in refused(capsys, "amounts", *asked, "--clear", "1")
