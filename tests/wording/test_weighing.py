"""The learnt weights: they come from the passages, and they listen to the words around."""

import importlib.util
import json
import math
from pathlib import Path

import pytest

from handouts.wording import check_text, engine, weighing
from handouts.wording.kinds import lexicon
from handouts.wording.prose import sentences

HERE = Path(__file__).parent
spec = importlib.util.spec_from_file_location("wording_learn", HERE / "learn.py")
learn = importlib.util.module_from_spec(spec)
spec.loader.exec_module(learn)


def test_the_weights_are_those_that_the_open_passages_give():
    """Learnt anew and compared; a last digit may differ where another machine rounds a logarithm otherwise."""
    shipped = json.loads((weighing.LEARNT / "en.json").read_text("utf-8"))
    anew = learn.learn(learn.passages())
    advice = "run: python tests/wording/learn.py"
    assert anew["suspicious"] == shipped["suspicious"] and anew["kinds"] == shipped["kinds"], advice
    for table, weights in anew["fault"].items():
        shipped_weights = shipped["fault"][table]
        for words in weights.keys() | shipped_weights.keys():
            assert math.isclose(weights.get(words, 0.0), shipped_weights.get(words, 0.0), abs_tol=0.021), advice


def test_no_sealed_passage_is_learnt_from():
    learnt_from = {text for text, _ in learn.passages()}
    sealed = {row["text"] for row in learn.read(sorted(learn.CORPUS.glob("sealed_*.jsonl")))}
    assert sealed and learnt_from.isdisjoint(sealed)


def test_fitting_separates_what_can_be_separated():
    """A word that stands in faults alone weighs for one, a word that stands elsewhere alone against it, and a word in both says little."""
    faults = [([("=", "so"), ("-1", "bad")], True)] * 40
    others = [([("=", "so"), ("-1", "good")], False)] * 40
    weights = learn.fit(faults + others)
    assert weights["-1"]["bad"] > 0.5 and weights["-1"]["good"] < -0.5
    assert abs(weights["="].get("so", 0.0)) < 0.2


def odds(text, word):
    (sentence,) = sentences(text, lexicon("en").known)
    return weighing.learnt("en").odds(sentence.words, sentence.words.index(word))


@pytest.mark.parametrize(
    "fault, harmless, word",
    [
        ("Copy me and bend your knee like this.", "I have never felt a stretch like this before.", "this"),
        ("Bring your hand up to here.", "I have worked here for nine years.", "here"),
        ("Look at me and do the same.", "My daughter told me to rest on Sunday.", "me"),
    ],
)
def test_the_words_around_decide(fault, harmless, word):
    assert odds(fault, word) > odds(harmless, word) + 1


def test_words_that_speak_clearly_for_a_fault_need_no_phrase(monkeypatch):
    text = "Turn please the lever in this sense, two rotations."
    assert [(mark.kind, mark.words) for mark in check_text(text)] == [("pointing", "this")]
    monkeypatch.setattr(engine, "SURE", math.inf)
    assert check_text(text) == []


def test_words_that_speak_clearly_against_a_fault_outweigh_a_phrase(monkeypatch):
    text = "Hold the bell like this."
    assert [mark.kind for mark in check_text(text)] == ["demonstration"]
    monkeypatch.setattr(engine, "DOUBT", math.inf)
    monkeypatch.setattr(engine, "SURE", math.inf)
    assert check_text(text) == []


def test_a_word_is_weighed_without_a_phrase_only_where_it_may_be_weighed_in_one():
    weights = weighing.learnt("en")
    assert weights.kinds.keys() <= weights.suspicious


def test_a_language_without_weights_has_its_phrases_alone():
    assert weighing.learnt("fr") is None
    assert [mark.kind for mark in check_text("Faites comme ça.", language="fr")] == ["demonstration"]
