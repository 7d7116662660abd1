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
    shipped, anew = shipped_records(), learn.learn()
    advice = "run: python tests/wording/learn.py"
    assert anew.keys() == shipped.keys()
    for strength, records in anew.items():
        assert {name: records[""][name] for name in ("suspicious", "kinds")} == {
            name: shipped[strength][""][name] for name in ("suspicious", "kinds")
        }, advice
        weights, shipped_weights = learn.weights_of(records), learn.weights_of(shipped[strength])
        for which in weights.keys() | shipped_weights.keys():
            one, other = weights.get(which, 0.0), shipped_weights.get(which, 0.0)
            # A weight that is left out here and not there has only just been too slight.
            slight = not (one and other) and abs(one + other) < learn.SLIGHT + 0.011
            assert slight or math.isclose(one, other, abs_tol=0.021), advice


def shipped_records():
    """The shipped file read plainly: strength, word, record."""
    lines = (weighing.LEARNT / "en.txt").read_text("utf-8").split("\n")
    return {
        strength: {word: json.loads(record) for word, record in zip(lines[::3], lines[at::3], strict=True) if record}
        for at, strength in weighing.LINES.items()
    }


def test_no_sealed_passage_is_learnt_from():
    learnt_from = {text for text, _, _ in learn.passages(learn.BLOCKING + learn.ADVICE)}
    sealed = {row["text"] for row in learn.read(sorted(learn.CORPUS.glob("sealed_*.jsonl")))}
    assert sealed and learnt_from.isdisjoint(sealed)


def test_fitting_separates_what_can_be_separated():
    """A word that stands in faults alone weighs for one, a word that stands elsewhere alone against it, and a word in both says little."""
    faults = [([("=", "so", ""), ("-1", "", "bad")], True, 1)] * 40
    others = [([("=", "so", ""), ("-1", "", "good")], False, 1)] * 40
    records = learn.fit(faults + others)
    assert records["bad"]["-1"] > 0.5 and records["good"]["-1"] < -0.5
    assert abs(records.get("so", {}).get("=", 0.0)) < 0.2


def odds(text, word):
    (sentence,) = sentences(text, lexicon("en").known)
    return weighing.learnt("en")["blocks"].odds(sentence, sentence.words.index(word))


def test_a_sum_for_classes_is_that_of_the_names_that_learning_saw():
    """The fast sums of the program against the plain list of evidence that the weights were learnt by."""
    words = lexicon("en")
    weights = weighing.learnt("en")["blocks"]
    for sentence in sentences("Turn that way, like Ravi. Knees over your toes, three inches off the floor; copy me here.", words.known):
        for place in range(len(sentence.words)):
            found = weighing.evidence(sentence, place, words)
            plain = math.fsum(weights.of(*one) for one in found)
            assert math.isclose(weights.odds(sentence, place), plain, abs_tol=1e-9)


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


NEVER = {"blocks": math.inf, "advice": math.inf}


def test_words_that_speak_clearly_for_a_fault_need_no_phrase(monkeypatch):
    text = "Turn please the lever in this sense, two rotations."
    assert [(mark.kind, mark.words) for mark in check_text(text)] == [("pointing", "this")]
    monkeypatch.setattr(engine, "SURE", NEVER)
    assert check_text(text) == []


def test_no_words_are_put_in_place_of_what_no_phrase_found():
    """The mark may be a part of what is said, and the rest would stay: "Keep your chin level on the clock"."""
    (mark,) = check_text("Eyes on the clock over the door.")
    assert mark.kind == "gaze" and mark.words == "Eyes" and mark.rewrite is None
    (mark,) = check_text("Look at the ceiling.")
    assert mark.kind == "gaze" and mark.rewrite


def test_words_that_speak_clearly_against_a_fault_outweigh_a_phrase(monkeypatch):
    text = "Hold the bell like this."
    assert [mark.kind for mark in check_text(text)] == ["demonstration"]
    monkeypatch.setattr(engine, "DOUBT", NEVER)
    monkeypatch.setattr(engine, "SURE", NEVER)
    assert check_text(text) == []


@pytest.mark.parametrize("strength", ["blocks", "advice"])
def test_a_word_is_weighed_without_a_phrase_only_where_it_may_be_weighed_in_one(strength):
    weights = weighing.learnt("en")[strength]
    assert weights.kinds.keys() <= weights.suspicious


def test_a_language_without_weights_has_its_phrases_alone():
    assert weighing.learnt("fr") == {}
    assert [mark.kind for mark in check_text("Faites comme ça.", language="fr")] == ["demonstration"]
