"""The six blocking kinds in French, on their examples, on labelled passages and on the library."""

from __future__ import annotations

import importlib
import json
import pkgutil
import re
from pathlib import Path

import pytest

from handouts.wording import check_text
from handouts.wording.kinds import KINDS, french, kinds
from handouts.wording.kinds.kind import Kind
from handouts.wording.lexicons.fr import apart

CORPUS = Path(__file__).resolve().parents[1] / "wording_corpus" / "french.jsonl"
FRENCH = kinds("fr")
_MARKED = re.compile(r"\[\[(.*?)\]\]")


def name_of(value):
    return value.name if isinstance(value, Kind) else ""


def test_the_six_blocking_kinds_in_the_order_of_the_english_ones():
    english = [kind.name for kind in KINDS["en"] if kind.strength == "blocks"]
    assert [kind.name for kind in FRENCH] == english


def test_the_list_holds_every_kind_of_the_folder():
    modules = [
        importlib.import_module(f"{french.__name__}.{found.name}") for found in pkgutil.iter_modules(french.__path__)
    ]
    written = {value.name for module in modules for value in vars(module).values() if isinstance(value, Kind)}
    assert written == {kind.name for kind in FRENCH}


@pytest.mark.parametrize(("kind", "passage"), [(kind, text) for kind in FRENCH for text in kind.flag], ids=name_of)
def test_each_example_is_marked_by_its_own_kind(kind, passage):
    text = _MARKED.sub(r"\1", passage)
    marks = check_text(text, language="fr")
    assert [(mark.kind, mark.words) for mark in marks] == [(kind.name, words) for words in _MARKED.findall(passage)]
    assert all(mark.strength == "blocks" and mark.why and mark.suggest.endswith(".") for mark in marks)


@pytest.mark.parametrize("passage", [text for kind in FRENCH for text in kind.leave])
def test_each_near_miss_is_left_alone(passage):
    assert check_text(passage, language="fr") == []


@pytest.mark.parametrize(
    "text",
    [
        "Amenez l'haltère par ici.",
        "Amenez l’haltère par ici.",
        "AMENEZ L'HALTÈRE PAR ICI.",
        "Amenez **l'haltère** par  ici.",
        "Amenez l'haltère\npar ici.",
    ],
)
def test_case_apostrophes_emphasis_and_spaces_make_no_difference(text):
    (mark,) = check_text(text, language="fr")
    assert mark.kind == "pointing"
    assert text[mark.start : mark.end] == mark.words
    assert mark.words.lower().split() == ["par", "ici"]


def test_marks_hold_the_authors_own_apostrophes():
    (mark,) = check_text("Le pied à gauche de l’écran avance.", language="fr")
    assert mark.words == "à gauche de l’écran"


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("l'écran", "l écran"),
        ("Jusqu’ici, qu'il", "Jusqu ici, qu il"),
        ("regardez-moi", "regardez moi"),
        ("là-bas, avant-bras", "là-bas, avant-bras"),
        ("aujourd'hui", "aujourd'hui"),
    ],
)
def test_elided_words_stand_apart_at_the_same_places(text, words):
    assert apart(text) == words
    assert len(apart(text)) == len(text)


def test_the_labelled_passages():
    """The passages are our own and the rules were written beside them: a floor, no measure of unseen text."""
    rows = [json.loads(line) for line in CORPUS.read_text("utf-8").splitlines()]
    assert len(rows) >= 120
    right = marked = found = labelled = 0
    for row in rows:
        marks = [(mark.start, mark.end, mark.kind) for mark in check_text(row["text"], language="fr")]
        wanted = [(mark["start"], mark["end"], mark["kind"]) for mark in row["marks"]]
        assert all(row["text"][mark["start"] : mark["end"]] == mark["quote"] for mark in row["marks"])
        hits = [
            (one, other)
            for one in marks
            for other in wanted
            if one[0] < other[1] and other[0] < one[1] and one[2] == other[2]
        ]
        marked, labelled = marked + len(marks), labelled + len(wanted)
        right, found = right + len({one for one, _ in hits}), found + len({other for _, other in hits})
    assert right / marked > 0.92
    assert found / labelled > 0.92


def test_the_french_library_has_no_blocking_mark(starter_texts):
    marks = [
        (path.name, mark.kind, mark.words)
        for path in starter_texts
        if path.name.endswith(".fr.md")
        for mark in check_text(path.read_text("utf-8"), language="fr")
    ]
    assert marks == []
