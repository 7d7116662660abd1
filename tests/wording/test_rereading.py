"""The close reading: it comes from the passages, is asked of few sentences, and decides by the whole sentence."""

import importlib.util
import math
from pathlib import Path

import numpy as np
import pytest

from handouts.wording import check_text, engine, rereading, weighing
from handouts.wording.searching import read
from handouts.wording.stored import load

HERE = Path(__file__).parent
spec = importlib.util.spec_from_file_location("wording_learn_closely", HERE / "learn_closely.py")
learn_closely = importlib.util.module_from_spec(spec)
spec.loader.exec_module(learn_closely)


def test_what_is_shipped_was_learnt_from_these_passages_with_these_settings():
    """Learning takes an hour and a half, so what it was given is compared, not what comes of it."""
    told = load(learn_closely.LEARNT / "en.close.npy")["learnt from"].tobytes().decode()
    assert told == learn_closely.told(), "run: python tests/wording/learn_closely.py FOLDER"


PIECES = {piece: place for place, piece in enumerate(["[UNK]", "kettle", "##bell", "##s", "dumb", "cafe", "'", "s", "-", "un", "##able", "##aff"])}


@pytest.mark.parametrize(
    "word, expected",
    [
        ("kettle", ["kettle"]),
        ("kettlebells", ["kettle", "##bell", "##s"]),
        ("dumbbells", ["dumb", "##bell", "##s"]),
        # The worked example of "BERT"'s published code: the longest piece first.
        ("unaffable", ["un", "##aff", "##able"]),
        ("café", ["cafe"]),
        ("'s", ["'", "s"]),
        ("kettle-s", ["kettle", "-", "s"]),
        # One part that has no pieces is one unknown piece, not several.
        ("kettleq", ["[UNK]"]),
        ("qq-kettle", ["[UNK]", "-", "kettle"]),
        ("", ["[UNK]"]),
    ],
)
def test_a_word_is_cut_into_the_longest_pieces_that_are_known(word, expected):
    assert rereading.pieces(word, PIECES) == expected


STRETCHES = [
    rereading.Stretch(tuple(lead.split()), tuple(words.split()))
    for lead, words in (
        ("", "hold the bell like this ."),
        ("stand tall .", "breathe out ."),
        ("", "see the zzqx , love , and set your left foot down"),
        ("press up , and lower until the bell touches your chest .", "turn"),
    )
]


def test_a_stretch_is_read_alike_alone_and_among_others():
    network = rereading.learnt()
    network.forget()
    together = network.likely(STRETCHES)
    assert [found.shape for found in together] == [(len(stretch.words), 1 + len(network.kinds)) for stretch in STRETCHES]
    for stretch, found in zip(STRETCHES, together, strict=True):
        network.forget()
        assert network.likely([stretch])[0] == pytest.approx(found, abs=0.0011)
        assert found.sum(axis=1) == pytest.approx(np.ones(len(stretch.words)), abs=0.006)


def test_the_words_stand_where_the_lead_ends():
    for stretch in STRETCHES:
        assert stretch.given[stretch.place : stretch.place + len(stretch.words)] == stretch.words
    assert STRETCHES[1].given == ("[CLS]", "stand", "tall", ".", "[SEP]", "breathe", "out", ".", "[SEP]")


def test_a_long_sentence_is_cut_and_each_part_led_by_the_one_before():
    words = [str(number) for number in range(2 * rereading.LONGEST + 5)]
    cut = rereading.stretches(["so", "then"], words)
    assert [word for stretch in cut for word in stretch.words] == words
    assert [len(stretch.words) for stretch in cut] == [rereading.LONGEST, rereading.LONGEST, 5]
    assert cut[0].lead == ("so", "then")
    assert [(stretch.lead[0], stretch.lead[-1]) for stretch in cut[1:]] == [
        (str(at - rereading.LEAD), str(at - 1)) for at in (rereading.LONGEST, 2 * rereading.LONGEST)
    ]
    assert all(len(stretch.given) <= rereading.PLACES for stretch in cut)


def test_what_was_found_is_kept_but_not_for_ever(monkeypatch):
    network = rereading.learnt()
    network.forget()
    (first,) = network.likely([STRETCHES[0]])
    monkeypatch.setattr(network, "_graph", None)
    assert network.likely([STRETCHES[0]])[0] is first
    monkeypatch.undo()
    monkeypatch.setattr(rereading, "KEPT", 2)
    for stretch in STRETCHES:
        network.likely([stretch])
        assert len(network._met) <= 3


def test_the_kinds_are_those_of_the_first_reading():
    assert rereading.learnt().kinds == weighing.learnt().kinds


def weighed(text):
    block = list(read(text, "en"))
    return weighing.weigh(block, {"blocks": 0.0, "advice": 0.0}, "en")


def test_what_is_told_is_a_mean_of_both_readings():
    ((sentence, first),) = weighed("Hold the bell like this.")
    ((same, both),) = rereading.reread([(sentence, first)], {"blocks": 0.0, "advice": 0.0})
    (closely,) = rereading.learnt().likely(rereading.stretches([], sentence.words))
    assert same is sentence
    assert both.found == pytest.approx(0.3 * first.found + 0.7 * closely, abs=1e-6)
    assert both.of["blocks"] == pytest.approx(both.found[:, both.columns["blocks"]].sum(axis=1), abs=1e-6)


def test_sentences_where_no_word_stays_likely_are_left_out():
    every = weighed("Breathe out. Now turn that way. Look at the ceiling. Stand tall.")
    kept = lambda blocks, advice: [  # noqa: E731
        " ".join(sentence.words) for sentence, _ in rereading.reread(every, {"blocks": blocks, "advice": advice})
    ]
    assert len(kept(0.0, 0.0)) == 4
    assert kept(0.5, 0.5) == ["now turn that way .", "look at the ceiling ."]
    assert kept(0.5, math.inf) == ["now turn that way ."]
    assert kept(math.inf, math.inf) == []


def test_the_words_before_are_asked_only_where_a_sentence_by_itself_leaves_doubt(monkeypatch):
    """By itself each sentence here is as likely to have a fault as its number says in hundredths, and no more by the words before it."""
    low, high = (round(100 * bound) for bound in rereading.UNSURE)
    numbers = (0, low - 1, low, high - 1, high, 100)
    every = weighed("Stand tall. " + " ".join(f"Count {number}." for number in numbers))[1:]
    asked = []

    class Reader:
        def likely(self, stretches):
            asked.append([stretch for stretch in stretches if stretch.lead])
            kinds = len(weighing.learnt().kinds)
            faults = [0.0 if stretch.lead else int(stretch.words[1]) / 100 for stretch in stretches]
            return [np.array([[1 - fault, fault, *[0.0] * (kinds - 1)]] * len(stretch.words)) for fault, stretch in zip(faults, stretches, strict=True)]

    monkeypatch.setattr(rereading, "learnt", lambda: Reader())
    monkeypatch.setattr(rereading, "CLOSELY", 1.0)
    kept = rereading.reread(every, {"blocks": 0.05, "advice": 0.05})
    assert [int(sentence.words[1]) for sentence, _ in kept] == [low - 1, high, 100]
    assert [[int(stretch.words[1]) for stretch in at_once] for at_once in asked] == [[], [low, high - 1]]


def test_a_long_sentence_is_read_in_stretches(monkeypatch):
    """A fault at its end is found, and no more is worked out at once than LONGEST words."""
    text = ", ".join(f"breathe in for {count} and out for {count}" for count in range(2, 31)) + ", and hold it like this."
    lengths = []
    rows_of = rereading.Rows.of
    monkeypatch.setattr(
        rereading.Rows, "of", lambda rows, stretches: lengths.extend(len(one.given) for one in stretches) or rows_of(rows, stretches)
    )
    assert [mark.words for mark in check_text(text)] == ["like this"]
    assert lengths and max(lengths) <= rereading.PLACES


def test_a_sentence_in_which_nothing_is_likely_at_first_sight_is_not_read_closely(monkeypatch):
    asked = []
    reread = rereading.reread
    monkeypatch.setattr(rereading, "reread", lambda weighed, *rest: asked.extend(" ".join(s.words) for s, _ in weighed) or reread(weighed, *rest))
    check_text("Put your left hand on your right knee. Hold the bell like this. Breathe out through your mouth.")
    assert asked == ["hold the bell like this ."]


@pytest.mark.parametrize(
    "most, phrase, closely",
    [(engine.GLANCE, False, True), (engine.GLANCE - 0.01, False, False), (engine.FAINT, True, True), (engine.FAINT - 0.01, True, False)],
)
def test_where_a_fault_is_faint_a_phrase_decides_whether_a_sentence_is_read_closely(most, phrase, closely, monkeypatch):
    text = "Hold the bell like this." if phrase else "Hold the bell in both hands."
    columns = {"blocks": [1], "advice": [2]}

    def weigh(block, least, language):
        found = np.array([[1 - most, most, 0.0]] * len(block[0].words), np.float32)
        return [(block[0], weighing.Likely.of_kinds(found, columns, ("demonstration", "gaze")))] if most >= least["blocks"] else []

    asked = []
    monkeypatch.setattr(weighing, "weigh", weigh)
    monkeypatch.setattr(engine, "hinting", lambda: lambda sentence: True)
    monkeypatch.setattr(rereading, "reread", lambda weighed, least: asked.extend(weighed) or [])
    check_text(text)
    assert bool(asked) is closely


def likely(text, word):
    """How likely a word of the last sentence of a text is part of a fault."""
    *_, sentence = read(text, "en")
    (found,) = rereading.learnt().likely(rereading.stretches(sentence.lead, sentence.words))
    return 1 - found[sentence.words.index(word), 0]


@pytest.mark.parametrize(
    "fault, harmless, word",
    [
        ("Copy me and bend your knee like this.", "I have never felt a stretch like this before.", "this"),
        ("Bring your hand up to here.", "I have worked here for nine years.", "here"),
        ("Check in the mirror that your knee is straight.", "There is a mirror in the hall, and it is cold.", "mirror"),
    ],
)
def test_the_whole_sentence_decides(fault, harmless, word):
    assert likely(fault, word) > 0.7 and likely(fault, word) > likely(harmless, word) + 0.3


@pytest.mark.parametrize("fault", ["I will do one first, watch my hips.", "Let me show you once more."])
def test_the_words_before_decide(fault):
    assert likely(f"{fault} See?", "see") > 0.7
    harmless = "You have done this for a month and you are stronger. See?"
    assert likely(harmless, "see") < 0.3
    assert "See" in [mark.words for mark in check_text(f"{fault} See?")] and not check_text(harmless)


def test_a_text_longer_than_any_text_of_exercises_is_read_at_first_sight_alone(monkeypatch):
    text = "Hold the bell like this. "
    monkeypatch.setattr(engine, "CLOSELY_UP_TO", 3 * len(text))
    monkeypatch.setattr(rereading, "reread", None)
    assert [mark.words for mark in check_text(4 * text)] == 4 * ["like this"]
    with pytest.raises(TypeError):
        check_text(3 * text)


def test_less_is_enough_for_a_close_reading_than_for_a_doubt():
    assert min(engine.DOUBT["en"].values()) > engine.GLANCE > engine.FAINT


def test_going_on_from_what_is_shipped_begins_where_it_stands():
    """The whole numbers of the shipped graph, made numbers again, say what the graph says, but for what was rounded."""
    import onnxruntime

    pieces, learnt = learn_closely.shipped()
    assert len(pieces) == len(learnt["piece rows"])
    graph = learn_closely.close_graph.written(learnt, learn_closely.LAYERS, learn_closely.HEADS)
    session = onnxruntime.InferenceSession(graph.SerializeToString())
    asked = STRETCHES[:2]
    rows, inside = rereading.Rows(load(learn_closely.LEARNT / "en.close.npy")).of(asked)
    found = session.run(["likely"], {"rows": rows, "inside": inside})[0]
    for stretch, of_stretch, shipped in zip(asked, found, rereading.learnt().likely(asked), strict=True):
        own = of_stretch[stretch.place : stretch.place + len(stretch.words)]
        assert np.abs(own - shipped).max() < 0.1
