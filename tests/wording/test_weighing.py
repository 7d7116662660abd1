"""What was learnt: it comes from the passages, and it listens to the words around."""

import collections
import importlib.util
import math
import types
from pathlib import Path

import numpy as np
import pytest

from handouts.wording import check_text, engine, weighing
from handouts.wording.kinds import lexicon
from handouts.wording.prose import sentences
from handouts.wording.searching import features, hinting, read
from handouts.wording.stored import load

HERE = Path(__file__).parent
spec = importlib.util.spec_from_file_location("wording_learn", HERE / "learn.py")
learn = importlib.util.module_from_spec(spec)
spec.loader.exec_module(learn)

ADVICE = "run: python tests/wording/learn.py"


@pytest.fixture(scope="module")
def rows():
    return learn.passages()


def test_what_is_shipped_was_learnt_from_these_passages_with_these_settings():
    """Learning takes a quarter of an hour, so what it was given is compared, not what comes of it."""
    told = load(learn.LEARNT / "en.npy")["learnt from"].tobytes().decode()
    assert told == learn.fingerprint(learn.texts()), ADVICE


def test_the_fingerprint_changes_with_a_label_a_word_and_a_setting(monkeypatch):
    row = ("Turn that way.", [{"start": 5, "end": 13, "kind": "pointing"}], 1, "en")
    seen = {learn.fingerprint([row]), learn.fingerprint([("Turn that way.", [], 1, "en")])}
    seen.add(learn.fingerprint([("Turn this way.", [{"start": 5, "end": 13, "kind": "pointing"}], 1, "en")]))
    monkeypatch.setattr(learn, "ROUNDS", learn.ROUNDS + 1)
    seen.add(learn.fingerprint([row]))
    assert len(seen) == 4


def test_no_sealed_passage_is_learnt_from():
    learnt_from = {text for text, *_ in learn.texts()}
    sealed = {row["text"] for row in learn.read(sorted(learn.CORPUS.glob("sealed_*.jsonl")))}
    assert sealed and learnt_from.isdisjoint(sealed)


def test_a_set_that_is_left_out_is_not_learnt_from():
    sets = ("ea", "eg", "dd", "ec", "dg", "ak", "c")
    left_out = {row["text"] for row in learn.read([learn.CORPUS / f"open_{name}.jsonl" for name in sets])}
    assert len(left_out) > 2000 and left_out.isdisjoint(text for text, *_ in learn.texts(sets))


def test_the_hints_that_are_shipped_come_from_these_passages_and_lose_few_faults(rows):
    """Learning them takes a minute, so it is asked whether each was met often enough and what they let through."""
    _, *lines = (learn.LEARNT / "en.txt").read_text("utf-8").splitlines()
    sentences = [(words, any(targets), row.counts) for row in rows for words, targets in learn.by_sentence(row)]
    met = collections.Counter(feature for words, _, _ in sentences for feature in features(words))
    assert all(met[line.partition(" ")[2]] >= learn.MET for line in lines)
    asked = [hinting()(types.SimpleNamespace(words=words)) for words, _, _ in sentences]
    of_faults = [one for one, (_, faulty, _) in zip(asked, sentences, strict=True) if faulty]
    assert sum(of_faults) / len(of_faults) > 0.99
    of_examples = [one for one, (_, faulty, counts) in zip(asked, sentences, strict=True) if faulty and counts == learn.SETTLED]
    assert all(of_examples)


def test_a_passage_is_read_as_the_checker_reads_it():
    read = learn.as_read("Don't turn *that way*. Sit.", [{"start": 12, "end": 20, "kind": "pointing"}], 1)
    assert read.words == ["do", "not", "turn", "that", "way", ".", "sit", "."]
    pointing = 1 + learn.NAMES.index("pointing")
    assert read.targets == [0, 0, 0, pointing, pointing, 0, 0, 0]


PICTURE = 1 + learn.NAMES.index("picture")


def rows_of(*passages):
    """Passages of plain words, of which those in capitals are part of a picture; sentences end with a full stop."""
    rows = []
    for passage in passages:
        words = passage.split()
        lengths = [len(sentence.split()) for sentence in passage.replace(".", ".\n").splitlines()]
        rows.append(learn.Passage([word.lower() for word in words], [0] * len(words), [PICTURE * word.isupper() for word in words], lengths, 1))
    return rows


def of_sentence(network, words):
    words = words.split()
    return network.likely(words, [0] * len(words), [len(words)])


@pytest.fixture(scope="module")
def small():
    """A learner of a few passages: "plate" is a fault after "see", however far, and none after "lift"."""
    rows = rows_of("see the PLATE", "now see the big PLATE", "lift the plate", "now lift the big plate") * 40
    return learn.learn(rows, rounds=25)


def test_learning_finds_what_decides(small):
    network = weighing.Network(small.arrays("nothing"))

    def plate(words):
        return of_sentence(network, words)[words.split().index("plate"), PICTURE]

    assert plate("see the plate") > 0.9 and plate("lift the plate") < 0.1
    # In words that it has not met together.
    assert plate("now see the plate") > 0.7 and plate("now lift the plate") < 0.3


def test_the_same_passages_give_the_same_numbers():
    rows = rows_of("see the PLATE", "lift the plate") * 20
    one, other = (learn.learn(rows, rounds=2).arrays("nothing") for _ in range(2))
    assert one.keys() == other.keys() and all(np.array_equal(one[name], other[name]) for name in one)


def test_the_checker_gives_what_the_learner_learnt(small):
    """Against the learner's own numbers, before they are rounded for the file."""
    words = "now see the big plate".split()
    places = np.array([small.places[word] for word in words])
    x = small.learnt["of words"][small.own[places]] + small.vectors[places] @ small.learnt["of vectors"]
    logits = weighing.forward(small.learnt, x, np.zeros(5, int))
    expected = np.exp(logits) / np.exp(logits).sum(axis=1, keepdims=True)
    assert of_sentence(weighing.Network(small.arrays("nothing")), "now see the big plate") == pytest.approx(expected, abs=0.02)


@pytest.mark.parametrize("reach", [1, 2, 4])
def test_the_rows_beside_a_word_are_those_that_a_convolution_takes_within_its_sentence(reach):
    """Against numpy's own convolution, with a kernel that has gaps."""
    random = np.random.default_rng(1)
    x, taps = random.normal(size=(30, 1)), random.normal(size=3)
    kernel = np.zeros(2 * reach + 1)
    kernel[[0, reach, 2 * reach]] = taps[::-1]
    lengths = [11, 1, 3, 15]
    parts = np.split(x[:, 0], np.cumsum(lengths)[:-1])
    # Of a part shorter than the kernel the middle of the whole convolution counts.
    expected = np.concatenate([np.convolve(part, kernel)[reach : reach + len(part)] for part in parts])
    assert (weighing.beside(x, reach, np.repeat(range(4), lengths)) @ taps) == pytest.approx(expected)


@pytest.mark.parametrize("reach", [1, 2, 4])
def test_the_way_back_through_the_rows_beside_is_their_transpose(reach):
    random = np.random.default_rng(2)
    x, slopes = random.normal(size=(20, 3)), random.normal(size=(20, 9))
    of = np.repeat([0, 1, 2], [2, 7, 11])
    assert (weighing.beside(x, reach, of) * slopes).sum() == pytest.approx((x * learn.merged(slopes, reach, of)).sum())


def test_a_sentence_is_weighed_alike_alone_and_among_others():
    text = (
        "Stand tall. Feet a hip's width apart, toes to 12 o'clock. Breathe in through the nose and out through the mouth. "
        "Now turn that way. Rest for two minutes, drink some water and shake your arms out. Then do it like this again."
    )
    block = list(read(text, "en"))
    nothing = {"blocks": 0.0, "advice": 0.0}
    every = weighing.weigh(block, nothing, "en")
    assert [sentence for sentence, _ in every] == block
    for sentence, among in every:
        ((_, alone),) = weighing.weigh([sentence], nothing, "en")
        assert alone.found == pytest.approx(among.found, abs=0.0011)


def test_the_hints_are_few_and_say_what_decides():
    """Of words that stand in faults and outside alike, a pair or the first word can be the hint."""
    rows = rows_of("turn this WAY .", "now turn this WAY .", "try this weight .", "now try this weight .", "keep this pace .") * 30
    start, *lines = learn.hints(rows)
    weights = {words: int(number) for number, _, words in (line.partition(" ") for line in lines)}
    assert int(start) and 0 < len(weights) < 12
    assert max(weights, key=weights.__getitem__) in ("turn", "way", "this way", "turn this", "way .")
    assert "this" not in weights and "now" not in weights


@pytest.mark.parametrize(
    "text, asked", [("Copy me.", True), ("Do it like this.", True), ("Breathe out through your mouth.", False), ("Rest for two minutes.", False)]
)
def test_a_sentence_is_in_question_by_its_hints(text, asked):
    (sentence,) = read(text, "en")
    assert hinting()(sentence) is asked


def test_hints_are_words_and_pairs_of_which_one_begins_the_sentence():
    assert features(["turn", "it", "and", "turn"]) == {"turn", "it", "and", " turn", "turn it", "it and", "and turn"}
    assert features([]) == set()


def test_sentences_where_no_word_is_likely_enough_are_left_out():
    block = list(read("Breathe out. Now turn that way. Look at the ceiling. Stand tall.", "en"))

    def kept(blocks, advice):
        weighed = weighing.weigh(block, {"blocks": blocks, "advice": advice}, "en")
        return [block.index(sentence) for sentence, _ in weighed]

    assert kept(0.0, 0.0) == [0, 1, 2, 3]
    assert kept(0.1, 0.5) == [1, 2]
    assert kept(0.1, math.inf) == [1]
    assert kept(math.inf, 0.5) == [2]
    assert kept(math.inf, math.inf) == []


def test_an_unknown_compound_is_read_as_its_last_part_and_any_other_unknown_word_as_unknown():
    network = weighing.learnt()
    compound, poster, unknown, other = (of_sentence(network, f"see the {word}") for word in ("zzqx-poster", "poster", "zzqx", "qqzv"))
    assert (compound == poster).all() and (unknown == other).all() and (unknown != poster).any()


def test_the_learner_tells_which_words_decided(capsys):
    learn.why("Breathe out through your mouth. Hold the bell like this.")
    breathe, hold, *told = capsys.readouterr().out.splitlines()
    assert breathe.endswith("is not in question, by the hints") and hold.endswith("is in question")
    (this,) = [line for line in told if line.startswith("this, demonstration: ")]
    assert "like +" in this and "mouth" not in this


def likely(text, word):
    (sentence,) = sentences(text, lexicon("en").known)
    found = weighing.learnt().likely(sentence.words, sentence.classes, [len(sentence.words)])
    return 1 - found[sentence.words.index(word), 0]


@pytest.mark.parametrize(
    "fault, harmless, word",
    [
        ("Copy me and bend your knee like this.", "I have never felt a stretch like this before.", "this"),
        ("Bring your hand up to here.", "I have worked here for nine years.", "here"),
        ("Look at me and do the same.", "My daughter told me to rest on Sunday.", "me"),
    ],
)
def test_the_words_around_decide(fault, harmless, word):
    assert likely(fault, word) > 0.7 and likely(fault, word) > likely(harmless, word) + 0.3


NEVER = {"en": {"blocks": math.inf, "advice": math.inf}}


def test_words_that_speak_clearly_for_a_fault_need_no_phrase(monkeypatch):
    text = "Turn please the lever in this sense, two rotations."
    assert [mark.kind for mark in check_text(text)] == ["pointing"]
    monkeypatch.setattr(engine, "SURE", NEVER)
    assert check_text(text) == []


def test_a_landmark_in_the_sentence_explains_only_what_it_is_said_of():
    """The elbows do not say where "in here" is."""
    marks = check_text("Grab the bar out here, not in here, with the elbows bent.")
    assert [mark.words for mark in marks if mark.kind == "pointing"] == ["out here", "in here"]


def test_words_that_only_lead_on_to_others_are_no_mark():
    text = "Move your arm a step."
    (sentence,) = read(text, "en")
    columns = {"blocks": [1], "advice": [2]}

    def marks(*likely_words):
        found = np.array([[0.1, 0, 0.9] if word in likely_words else [1, 0, 0] for word in sentence.words], np.float32)
        return [mark.words for mark in engine._check(sentence, weighing.Likely.of_kinds(found, columns, ("demonstration", "vague")), "en")]

    assert marks("a", "step") == ["a step"] and marks("step") == ["step"] and marks("a") == []


def test_no_words_are_put_in_place_of_what_no_phrase_found():
    """The mark may be a part of what is said, and the rest would stay: "Keep your chin level on the clock"."""
    marks = check_text("Eyes on the clock over the door.")
    assert marks and all(mark.rewrite is None for mark in marks)
    (mark,) = check_text("Look at the ceiling.")
    assert mark.kind == "gaze" and mark.rewrite


def test_words_that_speak_clearly_against_a_fault_outweigh_a_phrase(monkeypatch):
    text = "Hold the bell like this."
    assert [mark.kind for mark in check_text(text)] == ["demonstration"]
    monkeypatch.setattr(engine, "DOUBT", NEVER)
    monkeypatch.setattr(engine, "SURE", NEVER)
    assert check_text(text) == []


@pytest.mark.parametrize("surest, kind", [(0.9, "picture"), (0.5, "demonstration"), (0.1, None)])
def test_a_phrase_names_the_kind_unless_the_words_around_are_sure_of_another(surest, kind):
    text = "Hold the bell like this."
    (sentence,) = read(text, "en")
    network = weighing.learnt()
    found = np.zeros((len(sentence.words), 1 + len(network.kinds)), np.float32)
    picture = 1 + network.kinds.index("picture")
    found[:, picture] = surest
    nothing = [0.0] * len(found)
    likely = weighing.Likely(
        {"blocks": [surest if word in ("like", "this") else 0.0 for word in sentence.words], "advice": nothing},
        found,
        {"blocks": [picture], "advice": []},
        network.kinds,
    )
    assert [mark.kind for mark in engine._check(sentence, likely, "en")] == ([kind] if kind else [])


@pytest.mark.parametrize(
    "text, found, marked",
    [
        ("Use the wall clock to count.", (1, 5), "the wall clock"),
        ("Keep your gaze level and your chin in.", (0, 6), "Keep your gaze level"),
        ("Bring it where I am pointing to, then press.", (2, 7), "where I am pointing to"),
        ("Stand on the and hold.", (2, 3), "the"),
    ],
)
def test_a_mark_does_not_end_with_a_word_that_leads_on(text, found, marked):
    (sentence,) = read(text, "en")
    assert sentence.quote(*engine._to_its_end(sentence, engine.LEADING_ON["en"], *found)) == marked


@pytest.mark.parametrize(
    "text, marked",
    [("Hold the load low.", ["low"]), ("Keep the weights high.", ["high"]), ("Turn the lamp low.", [])],
)
def test_where_no_phrase_is_found_a_thing_that_is_turned_has_no_height(text, marked):
    assert [mark.words for mark in check_text(text)] == marked


def test_going_on_from_what_is_shipped_begins_where_it_stands(rows):
    """Before anything more is learnt, the learner says what the network says; as French passages do, in English."""
    shipped = weighing.learnt()
    learner = learn.Learner(rows[:20], load(learn.LEARNT / "en.npy"))
    begun = weighing.Network(learner.arrays("nothing"))
    for text, language in (("Turn that way and watch my hands.", "en"), ("Tenez la barre comme ça.", "fr")):
        read = learn.as_read(text, [], 1, language)
        asked = (read.words, read.classes, read.lengths)
        assert begun.likely(*asked) == pytest.approx(shipped.likely(*asked), abs=0.02)


def test_a_french_passage_is_learnt_from_as_it_is_asked_about():
    start = len("Prends l'élastique ")
    read = learn.as_read("Prends l'élastique rouge.", [{"start": start, "end": start + 5, "kind": "looks-only"}], 1, "fr")
    assert read.words == ["take", "the", "red", "band", "."]
    assert [word for word, target in zip(read.words, read.targets, strict=True) if target] == ["red"]
