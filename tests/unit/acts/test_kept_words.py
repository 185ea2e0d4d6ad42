"""Words that are kept in English: found again by the sentence they were made of, and said."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path
from string import Formatter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from swatchwright.acts import labels
from swatchwright.acts.jobs import (
    change_job,
    copy_job,
    job_of,
    keep_document,
    new_job,
    open_jobs,
    remove_job,
)
from swatchwright.acts.kept_words import A_GREY, COPIED_FROM, kept_words
from swatchwright.acts.references import name_of_grey
from swatchwright.acts.stock import add_stock, remove_paints, set_stock, take_demo_shelf

EVERY = pytest.mark.parametrize("sentence", [*labels.LABELS, COPIED_FROM, A_GREY])
GERMAN = {
    labels.MIX_BATCH: "Ansatz {number} von „{job}“ mischen, {ml} ml",
    labels.KEEP_MIX: "Mischung {number} für „{job}“ speichern",
    labels.KEEP_MIX_FOR_ZONE: "Mischung {number} für „{job}“, {zone}, speichern",
    labels.TAKE_DEMO: "Beispielregal nehmen",
    A_GREY: "ein Grau von {percent} %",
    "grey card": "Graukarte",
    "body": "Korpus",
}


@pytest.fixture
def german(speak: Callable[[Mapping[str, str]], None]) -> None:
    """Speak a German of just what is looked at here, and English again after the test."""
    speak(GERMAN)


def filled(sentence: str, word: str, number: float) -> str:
    """Fill in a sentence as the acts do."""
    names = {name for _, name, _, _ in Formatter().parse(sentence) if name}
    values = {"ml": f"{number:g}", "percent": f"{min(number, 100):.3g}", "number": "3"}
    return sentence.format(**{name: values.get(name, word) for name in names})


@EVERY
@given(word=st.text(max_size=30), number=st.floats(0.01, 1e6))
def test_in_english_they_stay_as_they_were_kept(sentence: str, word: str, number: float) -> None:
    """Whatever a job or a paint is called, nothing of what was kept changes."""
    kept = filled(sentence, word, number)
    assert kept_words(kept) == kept


@pytest.mark.usefixtures("german")
@pytest.mark.parametrize(
    ("kept", "told"),
    [
        ("Mix batch 3 of “Box, large”, 2.5 ml", "Ansatz 3 von „Box, large“ mischen, 2,5 ml"),
        ("Keep mix 1 for “Box”", "Mischung 1 für „Box“ speichern"),
        ("Keep mix 1 for “Box”, body", "Mischung 1 für „Box“, Korpus, speichern"),
        ("Take the demonstration shelf", "Beispielregal nehmen"),
        ("a grey of 12.5 %", "ein Grau von 12,5 %"),
        ("grey card", "Graukarte"),
    ],
)
def test_another_language_tells_them_by_their_sentence(kept: str, told: str) -> None:
    """What was filled in stands in its place, numbers as the language writes them."""
    assert kept_words(kept) == told


@pytest.mark.usefixtures("german")
def test_her_own_words_are_left_alone() -> None:
    """A note or a name that she wrote herself is nobody's to translate."""
    assert kept_words("Rang her about the top") == "Rang her about the top"


@pytest.mark.usefixtures("german")
def test_a_face_may_add_sentences_of_its_own() -> None:
    """What the window has kept is told by the sentences that it hands over."""
    assert kept_words("A sketch of body", "A sketch of {zone}") == "A sketch of Korpus"


@pytest.mark.usefixtures("german")
def test_what_is_kept_is_english_in_any_language(tmp_path: Path) -> None:
    """Labels, and the names of references, read the same whoever opens the store."""
    with open_jobs(tmp_path / "store.sqlite") as store:
        assert take_demo_shelf(store).label == "Take the demonstration shelf"
        assert set_stock(store, "white-clean", 2.5).label == "Set “White, clean” to 2.5 ml"
    assert name_of_grey(0.125) == "a grey of 12.5 %"


def test_each_label_is_one_of_those_that_can_be_told(tmp_path: Path) -> None:
    """What acts call themselves comes from the list that `kept_words` looks through."""
    with open_jobs(tmp_path / "store.sqlite") as store:
        take_demo_shelf(store)
        job = new_job(store, title="Box").jobs[0]
        change_job(store, job, client="Workshop")
        for part in labels.PARTS:
            keep_document(store, job, part, {"of": part})
        copy = copy_job(store, job).jobs[0]
        notes = [note.text for note in job_of(store, copy).notes]
        remove_job(store, copy)
        add_stock(store, "white-clean", 2.5)
        remove_paints(store, ("white-clean",))
        told = [step.label for step in store.history(50)]
    lists = {sentence: filled(sentence, "Box", 2.5) for sentence in labels.LABELS}
    made = {*lists.values(), *(filled(s, "White, clean", 2.5) for s in labels.LABELS)}
    assert set(told) <= made
    assert notes == [COPIED_FROM.format(job="Box", id=job)]
