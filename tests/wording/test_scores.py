"""The checker against the open labelled passages: a change that costs too much is seen here.

The floors lie a little under what was reached; `python tests/wording/score.py`
prints the figures themselves, `--sealed` those of the passages that no rule
was written from.
"""

import importlib.util
from functools import lru_cache
from pathlib import Path

import pytest

HERE = Path(__file__).parent
spec = importlib.util.spec_from_file_location("wording_score", HERE / "score.py")
score = importlib.util.module_from_spec(spec)
spec.loader.exec_module(score)


# The passages that the rules were written from, and those that came later.
WRITTEN_FROM = ("a", "b", "c")
LATER = ("d", "e", "f", "g")


def predicted(names):
    return score.predicted(score.read([score.CORPUS / f"open_{name}.jsonl" for name in names]))


@pytest.fixture(scope="module")
def rows():
    return predicted(WRITTEN_FROM)


def test_there_are_enough_passages_and_their_marks_are_in_place():
    rows = score.read(sorted(score.CORPUS.glob("*.jsonl")))
    wrong = [row["id"] for row in rows if any(row["text"][m["start"] : m["end"]] != m["quote"] for m in row["marks"])]
    assert not wrong
    assert len(rows) >= 800
    assert len({row["id"] for row in rows}) == len(rows)


@pytest.mark.parametrize("kinds, precision, recall", [(score.BLOCKING, 0.92, 0.92), (score.ADVICE, 0.92, 0.90)])
def test_open_passages_keep_their_scores(rows, kinds, precision, recall):
    right, predicted, found, labelled = score.tally(rows, kinds, score.strength)
    assert right / predicted >= precision
    assert found / labelled >= recall


@pytest.mark.parametrize("kinds, precision, recall", [(score.BLOCKING, 0.82, 0.74), (score.ADVICE, 0.83, 0.74)])
def test_later_passages_keep_their_scores(kinds, precision, recall):
    right, predicted_marks, found, labelled = score.tally(predicted(LATER), kinds, score.strength)
    assert right / predicted_marks >= precision
    assert found / labelled >= recall


# The sealed passages of those who wrote the first open ones, and of others, in the order in which they came.
FIRST = ("a", "b", "c")
OTHERS = ("an", "bj", "v", "w")
NEWER = ("dc", "ef", "eh")
NEWEST = ("gh",)
READ_TWICE = ("hc",)
"""Of thirty voices, labelled, then read again whole and mended by their writer."""
LATEST = ("ha", "hb", "hd", "he", "hf", "hg", "hh")
AS_SPOKEN = ("mg", "mh", "nf", "nh", *("p" + one for one in "abcdefgh"))
"""Of many voices, as they would speak and write, each set read again whole and mended by its writer."""
EDGES = (*("q" + one for one in "abcdegh"), "sa")
"""Of sixteen voices, by writers who were asked to look further for wording that nobody thinks of first."""
ORDINARY = tuple("s" + one for one in "bcdefgh")
"""Of fourteen voices, by writers who were asked for the wording of every day."""
NEW_VOICES = tuple("t" + one for one in "abcdefgh")
"""Of sixteen voices, twelve of them in the wording of every day; several writers left faults unmarked that are named only to be avoided."""


@pytest.mark.parametrize(
    "sets, sort, kinds, precision, recall",
    [
        (FIRST, "talk", score.BLOCKING, 0.93, 0.94),
        (FIRST, "talk", score.ADVICE, 0.94, 0.92),
        (FIRST, "rare", score.BLOCKING, 0.91, 0.88),
        (FIRST, "rare", score.ADVICE, 0.84, 0.93),
        (OTHERS, "talk", score.BLOCKING, 0.88, 0.81),
        (OTHERS, "talk", score.ADVICE, 0.64, 0.85),
        (OTHERS, "rare", score.BLOCKING, 0.94, 0.90),
        (NEWER, "talk", score.BLOCKING, 0.83, 0.82),
        (NEWER, "talk", score.ADVICE, 0.81, 0.81),
        (NEWER, "rare", score.BLOCKING, 0.91, 0.79),
        (NEWER, "rare", score.ADVICE, 0.83, 0.86),
        (NEWEST, "talk", score.BLOCKING, 0.90, 0.90),
        (NEWEST, "talk", score.ADVICE, 0.85, 0.91),
        (NEWEST, "rare", score.BLOCKING, 0.95, 0.89),
        (READ_TWICE, "talk", score.BLOCKING, 0.95, 0.91),
        (READ_TWICE, "talk", score.ADVICE, 0.90, 0.94),
        (READ_TWICE, "rare", score.BLOCKING, 0.97, 0.84),
        (READ_TWICE, "rare", score.ADVICE, 0.97, 0.79),
        (LATEST, "talk", score.BLOCKING, 0.89, 0.78),
        (LATEST, "talk", score.ADVICE, 0.85, 0.85),
        (LATEST, "rare", score.BLOCKING, 0.88, 0.77),
        (LATEST, "rare", score.ADVICE, 0.83, 0.76),
        (AS_SPOKEN, "talk", score.BLOCKING, 0.94, 0.90),
        (AS_SPOKEN, "talk", score.ADVICE, 0.93, 0.92),
        (AS_SPOKEN, "rare", score.BLOCKING, 0.91, 0.90),
        (AS_SPOKEN, "rare", score.ADVICE, 0.90, 0.90),
        (EDGES, "talk", score.BLOCKING, 0.94, 0.86),
        (EDGES, "talk", score.ADVICE, 0.94, 0.84),
        (EDGES, "rare", score.BLOCKING, 0.91, 0.76),
        (EDGES, "rare", score.ADVICE, 0.91, 0.67),
        (ORDINARY, "talk", score.BLOCKING, 0.93, 0.89),
        (ORDINARY, "talk", score.ADVICE, 0.91, 0.89),
        (ORDINARY, "rare", score.BLOCKING, 0.94, 0.88),
        (ORDINARY, "rare", score.ADVICE, 0.95, 0.87),
        (NEW_VOICES, "talk", score.BLOCKING, 0.91, 0.90),
        (NEW_VOICES, "talk", score.ADVICE, 0.91, 0.90),
        (NEW_VOICES, "rare", score.BLOCKING, 0.92, 0.93),
        (NEW_VOICES, "rare", score.ADVICE, 0.94, 0.93),
    ],
)
def test_sealed_passages_keep_their_scores(sets, sort, kinds, precision, recall):
    """Figures alone: nothing was written or learnt from these passages."""
    right, predicted_marks, found, labelled = score.tally(sealed(sets, sort), kinds, score.strength)
    figures = (round(right / predicted_marks, 3), round(found / labelled, 3))
    assert figures[0] >= precision and figures[1] >= recall


@lru_cache(maxsize=1)
def sealed(sets, sort):
    """The sealed passages of a sort, with their marks."""
    rows = score.read([score.CORPUS / f"sealed_{name}.jsonl" for name in sets])
    return score.predicted([row for row in rows if row["sort"] == sort])


def test_a_quarter_of_the_passages_is_sealed_and_every_sealed_set_is_scored():
    names = {path.stem.removeprefix("sealed_") for path in score.CORPUS.glob("sealed_*.jsonl")}
    assert names == {*FIRST, *OTHERS, *NEWER, *NEWEST, *READ_TWICE, *LATEST, *AS_SPOKEN, *EDGES, *ORDINARY, *NEW_VOICES}
    count = {sort: len(score.read(score.CORPUS.glob(f"{sort}_*.jsonl"))) for sort in ("open", "sealed")}
    assert 3 * count["sealed"] >= count["open"]


FRENCH_OPEN, FRENCH_SEALED = ("ra", "rb", "rc", "rd", "re"), ("rf", "rg", "rh", "ri")
"""Of eighteen voices; the glosses and phrases were mended by the open ones, the sealed ones were scored alone."""


@pytest.mark.parametrize(
    "name, sets, sort, precision, recall",
    [
        ("open", FRENCH_OPEN, "talk", 0.88, 0.79),
        ("open", FRENCH_OPEN, "rare", 0.82, 0.60),
        ("sealed", FRENCH_SEALED, "talk", 0.85, 0.75),
        ("sealed", FRENCH_SEALED, "rare", 0.75, 0.60),
    ],
)
def test_french_passages_keep_their_scores(name, sets, sort, precision, recall):
    rows = score.read([score.CORPUS / f"french_{name}_{one}.jsonl" for one in sets])
    found = score.predicted([row for row in rows if row["sort"] == sort])
    right, predicted_marks, hit, labelled = score.tally(found, score.BLOCKING, score.strength)
    figures = (round(right / predicted_marks, 3), round(hit / labelled, 3))
    assert figures[0] >= precision and figures[1] >= recall


def test_a_quarter_of_the_french_passages_is_sealed():
    names = {sort: {path.stem.removeprefix(f"french_{sort}_") for path in score.CORPUS.glob(f"french_{sort}_*.jsonl")} for sort in ("open", "sealed")}
    assert names == {"open": set(FRENCH_OPEN), "sealed": set(FRENCH_SEALED)}
    texts = {sort: {row["text"] for row in score.read(score.CORPUS.glob(f"french_{sort}_*.jsonl"))} for sort in names}
    assert 3 * len(texts["sealed"]) >= len(texts["open"]) and texts["open"].isdisjoint(texts["sealed"])


def test_marks_are_short(rows):
    lengths = [mark["end"] - mark["start"] for row in rows for mark in row["predicted"]]
    assert sum(lengths) / len(lengths) <= 16
