"""The command ``swatchwright plan``."""

from __future__ import annotations

from pathlib import Path

import pytest
import vobject

from unit.commands.runs import ran, refused

Captured = pytest.CaptureFixture[str]

START = ("--start", "2026-12-01")
RAW = (*START, "--surface", "raw wood")


def test_json_is_as_documented(capsys: Captured) -> None:
    """JSON has steps, days, cautions and notes, as docs/files.md says."""
    done = ran(capsys, "plan", *RAW, "--json")
    assert (done.code, done.err) == (0, "")
    found = done.json
    assert found["steps"][0]["start"] == "2026-12-01T09:00"
    assert [step["number"] for step in found["steps"]] == list(range(1, len(found["steps"]) + 1))
    assert found["days"][0]["day"] == "2026-12-01"
    assert {b["step"] for d in found["days"] for b in d["blocks"]} == {
        step["number"] for step in found["steps"]
    }
    assert {c["danger"] for c in found["cautions"]} == {
        danger for step in found["steps"] for danger in step["cautions"]
    }


def test_lead_must_be_met(capsys: Captured) -> None:
    """Without an answer to lead there is no plan; treated as lead nothing is sanded dry."""
    assert "may hold lead" in refused(capsys, "plan", *START)
    done = ran(capsys, "plan", *START, "--lead", "treat-as-lead")
    assert done.code == 0
    assert "licensed contractor" in done.out
    kinds = {
        s["kind"] for s in ran(capsys, "plan", *START, "--lead", "treat", "--json").json["steps"]
    }
    assert "key, wet" in kinds
    assert "sand" not in kinds
    tested = ran(capsys, "plan", *START, "--lead", "tested negative", "--json").json
    assert "sand" in {s["kind"] for s in tested["steps"]}


def test_a_calendar_file(capsys: Captured, tmp_path: Path) -> None:
    """The calendar file is read by another parser, and its name told."""
    path = tmp_path / "plan.ics"
    done = ran(capsys, "plan", *RAW, "--piece", "console-table", "--finish", "wax", "--ics", path)
    assert f"Written: {path}" in done.out
    calendar = vobject.readOne(path.read_bytes().decode())
    first = calendar.contents["vevent"][0]
    assert first.summary.value == "console table: Brush a sample"
    assert first.dtstart.value.isoformat() == "2026-12-01T09:00:00"


def test_a_plan_in_words(capsys: Captured) -> None:
    """Days, hours, waits with where they come from, and cautions can be read."""
    asked = ("--paint-times", "1,3,48", "--finish", "oil", "--use", "children", "--name", "crib")
    text = ran(capsys, "plan", *RAW, *asked).out
    assert text.startswith("crib: ")
    for words in (
        "Tue 2026-12-01",
        "wait 3 h, until the next coat (the tin)",
        "(common practice)",
        "Take care: ",
    ):
        assert words in text
    assert "Oily rags." in text
    assert "Children." in text


def test_the_painters_own_week(capsys: Captured) -> None:
    """Days and hours of work are kept."""
    asked = ("--days", "sat,sun", "--hours", "13-19:30")
    steps = ran(capsys, "plan", *RAW, *asked, "--json").json["steps"]
    sessions = [s for step in steps for s in step["sessions"]]
    assert sessions[0]["start"] == "2026-12-05T13:00"
    assert all(s["start"][11:] >= "13:00" and s["end"][11:] <= "19:30" for s in sessions)


def test_the_piece_tells_what_is_painted(capsys: Captured) -> None:
    """A table is turned over, a chest is not, and faces by hand come before the piece's."""
    turns = {
        words: sum(
            s["kind"] == "turn" for s in ran(capsys, "plan", *RAW, *words, "--json").json["steps"]
        )
        for words in (
            ("--piece", "console-table"),
            ("--piece", "chest-of-drawers"),
            ("--piece", "console-table", "--faces", "top,front"),
            ("--piece", "mirror-frame", "--faces", "front,back"),
        )
    }
    assert list(turns.values()) == [2, 0, 0, 2]


def test_painted_already(capsys: Captured) -> None:
    """With no coat of paint nothing old is rubbed, so no test for lead is asked, and it is told."""
    asked = ("--surface", "painted", "--age", "old", "--coats", "0", "--washes", "1")
    found = ran(capsys, "plan", *START, *asked, "--json").json
    assert found["painted_already"] is True
    kinds = [step["kind"] for step in found["steps"]]
    assert kinds[:3] == ["check the paint", "mix the wash", "wash"]
    assert "lead" in {c["danger"] for c in found["cautions"]}
    assert ran(capsys, "plan", *RAW, "--json").json["painted_already"] is False


def test_washes_on_parts(capsys: Captured) -> None:
    """Washes of two parts are named by part, and that of one does not wait for the other."""
    asked = ("--piece", "console-table", "--washes-on", "body, top,body", "--faces", "front,top")
    steps = [s for s in ran(capsys, "plan", *RAW, *asked, "--json").json["steps"] if s["parts"]]
    assert [(s["kind"], s["parts"]) for s in steps] == [
        ("mix the wash", ["body", "top"]),
        ("wash", ["body", "top"]),
        ("wash", ["body"]),
    ]
    assert steps[1]["wait_until"] == "until it bears a wet rag"
    assert "Wash 1 on the body and top (front, top)" in ran(capsys, "plan", *RAW, *asked).out


BOTH = ("--layer", "wax coats=2 on=body", "--layer", "varnish coats=3 on=top")


def test_finishes_of_several_parts(capsys: Captured) -> None:
    """Wax for the body and varnish for the lid each have their coats, waits and cautions."""
    asked = ("--piece", "blanket-box", *BOTH, "--varnish-times", "1,3,48")
    found = ran(capsys, "plan", *RAW, *asked, "--json").json
    steps = [s for s in found["steps"] if s["kind"] == "clear finish"]
    assert [(s["title"], s["parts"]) for s in steps] == [
        *((f"Varnish, coat {n} on the top", ["top"]) for n in (1, 2, 3)),
        *((f"Wax, coat {n} on the body", ["body"]) for n in (1, 2)),
    ]
    assert (steps[0]["wait_minutes"], steps[0]["wait_from"]) == (180, "from the tin")
    assert "oily rags" in steps[-1]["cautions"]
    assert "oily rags" not in steps[0]["cautions"]
    assert any("edge with wax" in note for note in found["notes"])
    text = ran(capsys, "plan", *RAW, "--layer", "wax", "--layer", "varnish on=top").out
    assert "Varnish does not hold on wax" in text


def test_a_wash_of_the_shelf_is_named(capsys: Captured) -> None:
    """A wash that is given as a layer is stirred of the paints of the shelf, by their names."""
    asked = ("--piece", "blanket-box", "--layer", "wash white-clean water=4 on=top", *BOTH)
    steps = ran(capsys, "plan", *RAW, *asked, "--json").json["steps"]
    (mixed,) = [s for s in steps if s["kind"] == "mix the wash"]
    assert "“White, clean” with 4 parts of water" in mixed["how"]
    (washed,) = [s for s in steps if s["kind"] == "wash"]
    assert washed["parts"] == ["top"]


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ((*RAW, *BOTH, "--finish", "wax"), "Layers were given"),
        ((*RAW, *BOTH, "--washes", "1"), "Layers were given"),
        ((*RAW, "--layer", "polish"), "polish"),
        ((*RAW, "--layer", "wax coats=11 on=top"), "11 coats of finish"),
        ((*RAW, "--piece", "blanket-box", "--layer", "oil on=doors"), "no part “doors”"),
        ((*RAW, *BOTH, "--wax-times", "3,2,1"), "times of the wax"),
        (("--surface", "raw"), "--start"),
        (("--start", "soon", "--surface", "raw"), "is not a day"),
        ((*START, "--surface", "glass"), "raw wood"),
        ((*RAW, "--lead", "maybe"), "treat as lead"),
        ((*RAW, "--temperature", "4"), "does not dry"),
        ((*RAW, "--humidity", "95"), "does not dry"),
        ((*RAW, "--paint-times", "1,2"), "--paint-times"),
        ((*RAW, "--paint-times", "3,2,1"), "times of the paint"),
        ((*RAW, "--days", "someday"), "--days"),
        ((*RAW, "--hours", "all"), "--hours"),
        ((*RAW, "--hours", "17-9"), "working hours"),
        ((*RAW, "--area", "0"), "0 m²"),
        ((*RAW, "--area", "99"), "longer than a working day"),
        ((*RAW, "--coats", "0"), "0 coats"),
        ((*RAW, "--faces", "bottom"), "underside"),
        ((*RAW, "--piece", "console-table", "--washes-on", "doors"), "no part “doors”"),
        ((*RAW, "--washes-on", "body", "--washes", "1"), "--washes-on"),
        ((*RAW, "--washes-on", "b" * 61), "too long"),
        ((*RAW, "--use", "cats"), "children"),
        ((*RAW, "--piece", "sofa"), "no piece “sofa”"),
        ((*RAW, "--ics", "no/such/folder/x.ics"), "cannot be written"),
    ],
)
def test_what_cannot_be_planned(words: tuple[str, ...], told: str, capsys: Captured) -> None:
    """What is off is named, with what would do."""
    assert told in refused(capsys, "plan", *words)
