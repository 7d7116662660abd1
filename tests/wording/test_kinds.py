"""Every kind of the wording checker against its own examples, and the list of kinds against its folder."""

import importlib.util
from pathlib import Path

import pytest

from handouts.wording import check_text
from handouts.wording.kinds import KINDS
from handouts.wording.kinds import __file__ as kinds_file

spec = importlib.util.spec_from_file_location("wording_score", Path(__file__).with_name("score.py"))
score = importlib.util.module_from_spec(spec)
spec.loader.exec_module(score)

ALL = [kind for kinds in KINDS.values() for kind in kinds]
LANGUAGE = {id(kind): language for language, kinds in KINDS.items() for kind in kinds}


def examples(which):
    return [
        pytest.param(kind, passage, id=f"{LANGUAGE[id(kind)]}-{kind.name}-{passage}")
        for kind in ALL
        for passage in getattr(kind, which)
    ]


@pytest.mark.parametrize("kind, passage", examples("flag"))
def test_marks_the_words_in_brackets(kind, passage):
    text, spans = score.unbracketed(passage)
    assert spans, "a passage to flag has brackets"
    marks = [mark for mark in check_text(text, language=LANGUAGE[id(kind)]) if mark.kind == kind.name]
    for start, end in spans:
        assert any(mark.start < end and start < mark.end for mark in marks), f"nothing at {text[start:end]!r}"
    for mark in marks:
        assert any(mark.start < end and start < mark.end for start, end in spans), f"{mark.words!r} for nothing"
        assert mark.why and mark.suggest
        assert mark.words == text[mark.start : mark.end]


@pytest.mark.parametrize("kind, passage", examples("leave"))
def test_leaves_a_near_miss_alone(kind, passage):
    assert not [mark for mark in check_text(passage, language=LANGUAGE[id(kind)]) if mark.kind == kind.name]


def test_every_kind_has_examples_both_ways():
    for kind in ALL:
        assert len(kind.flag) >= 10 and len(kind.leave) >= 10, kind.name
        assert kind.why.strip() and kind.name == kind.name.lower()


def test_every_module_of_kinds_is_on_the_list():
    """A kind that nobody lists would never run."""
    modules = {path.stem for path in Path(kinds_file).parent.glob("*.py")} - {"__init__", "kind"}
    assert modules == {kind.name.replace("-", "_") for kind in KINDS["en"]}


def test_the_blocking_kinds_come_in_the_order_of_the_guide():
    names = [kind.name for kind in KINDS["en"] if kind.strength == "blocks"]
    assert names == ["demonstration", "pointing", "picture", "looks-only", "viewer", "sight-check"]


@pytest.mark.parametrize(
    "sentence, part",
    [
        ("Bring the dumbbell over here.", "until the dumbbell touches"),
        ("Bring the dumbbells over here.", "until the dumbbells touch the"),
        ("Bring your elbows about there.", "where the elbows should be"),
        ("Hold your hands this far apart.", "two fists apart"),
        ("Turn the palms toward the camera.", "palms forward"),
        ("Step to my left.", "your left"),
        ("Take the purple band.", "two knots"),
        ("Watch the clock.", "timer rings"),
        ("Watch my hips.", "send your hips back"),
        ("Check in the mirror that your hips are level.", "both hip bones"),
    ],
)
def test_the_advice_fits_the_sentence(sentence, part):
    (mark,) = check_text(sentence)
    assert part in mark.suggest
