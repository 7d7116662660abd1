"""The starter library: complete, consistent, usable from words alone."""

import re

import pytest

from handouts import carried
from handouts.fitting.sides import mirror, mirror_exercise
from handouts.models import ItemList
from handouts.reading.studio import read_studio

STUDIO = read_studio(carried.demo_studio(), carried.starter_texts())
TEXTS = STUDIO.exercises
ENGLISH = {id: text for (id, language), text in TEXTS.items() if language == "en"}
FRENCH = {id: text for (id, language), text in TEXTS.items() if language == "fr"}
PARTS = ["Equipment", "Start position", "Movement", "Breathing", "Count", "Key points", "Easier", "Harder", "Finish"]
HOURS = re.compile(r"\d[\d:]* ?(?:o['’]clock|heures?\b)")


def sentences(text):
    for part in text.parts:
        for block in part.blocks:
            if isinstance(block, ItemList):
                for item in block.items:
                    yield part.name, item.text
                    yield from ((part.name, inner.text) for inner in item.items)
            else:
                yield part.name, block.text


def test_there_are_enough_texts_in_both_languages():
    assert len(ENGLISH) >= 24
    assert len(FRENCH) >= 8


def test_every_kind_of_place_kit_and_side_pattern_is_there():
    facts = [text.facts for text in ENGLISH.values()]
    positions = {position for one in facts for position in one.positions}
    assert {"standing", "seated", "kneeling", "lying on back", "walking"} <= positions
    kit = {name for one in facts for choice in one.equipment for name in choice}
    assert {"bench", "band", "mat", "chair", "pair of dumbbells"} <= kit
    assert {one.sides for one in facts} == {"together", "alternating", "each"}


@pytest.mark.parametrize("key", TEXTS, ids="-".join)
def test_every_part_is_there_in_order(key):
    assert [part.name for part in TEXTS[key].parts] == PARTS
    assert all(part.blocks for part in TEXTS[key].parts)


@pytest.mark.parametrize("id", ENGLISH)
def test_substitutes_exist_and_a_demanding_exercise_has_one(id):
    facts = ENGLISH[id].facts
    for substitute in facts.substitutes:
        assert substitute.exercise in ENGLISH
        if substitute.option:
            assert substitute.option in ENGLISH[substitute.exercise].facts.options
    assert facts.substitutes or not facts.demands


@pytest.mark.parametrize("key", TEXTS, ids="-".join)
def test_the_clock_frame_is_stated_before_an_hour_is_used(key):
    said = [text for _, text in sentences(TEXTS[key])]
    first = next((number for number, text in enumerate(said) if HOURS.search(text)), None)
    if first is not None:
        assert TEXTS[key].facts.clock is not None
        assert re.search(r"\b12 (o['’]clock|heures)", said[first]), said[first]


@pytest.mark.parametrize("key", TEXTS, ids="-".join)
def test_the_other_side_comes_back_to_itself(key):
    text = TEXTS[key]
    for _, said in sentences(text):
        assert mirror(mirror(said, key[1]), key[1]) == said
    assert mirror_exercise(mirror_exercise(text)) == text


@pytest.mark.parametrize("id", [id for id, text in ENGLISH.items() if "breath_hold_risk" in text.facts.demands])
def test_where_breath_may_be_held_the_steps_say_how_to_breathe(id):
    moving = " ".join(said for part, said in sentences(ENGLISH[id]) if part == "Movement").lower()
    assert "breathe" in moving


@pytest.mark.parametrize("id", FRENCH)
def test_a_french_text_says_the_same_things_in_the_same_places(id):
    english, french = ENGLISH[id], FRENCH[id]
    assert french.facts.options.keys() == english.facts.options.keys()

    def shape(text):
        return [(part, len(HOURS.findall(said.replace("12 o'clock", "").replace("12 heures", ""))) > 0)
                for part, said in sentences(text)]

    assert [part for part, _ in shape(french)] == [part for part, _ in shape(english)]


@pytest.mark.parametrize("key", TEXTS, ids="-".join)
def test_sentences_are_short(key):
    for _, said in sentences(TEXTS[key]):
        for sentence in re.split(r"(?<=[.!?]) ", said):
            assert len(re.findall(r"\w[\w'’-]*", sentence)) <= 25, sentence
