"""Reads closely the sentences in which `weighing` finds that a fault may be.

What `weighing` knows of a sentence are its words and their likes.  Whether
somebody is asked to watch, or it is only told, can hang on the whole of it, and
on what was said before: "see?" is a fault after a showing, and none after good
news.  So it is read by itself and, where that leaves doubt, with the words before it.

This is a small transformer, as in Vaswani and others, "Attention Is All You
Need", NeurIPS 2017, with the layers of Devlin and others, "BERT", NAACL 2019.
It was not learnt from nothing: it began as the sentence encoder
all-MiniLM-L6-v2 (Wang and others, "MiniLM", NeurIPS 2020; published under the
Apache License 2.0), which had read a great deal of English, and then learnt
from the labelled passages.  Its numbers are whole ones, and the library
onnxruntime works them out.  It takes forty times as long for a word as
`weighing`, so it is asked of few sentences, and what it said of one is kept.

`python tests/wording/learn_closely.py` makes what is read here.
"""

import math
import unicodedata
from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple, Self, TypeVar

import numpy as np
import onnxruntime
from numpy.typing import NDArray

from handouts.wording.marks import Strength
from handouts.wording.prose import LEAD, Sentence
from handouts.wording.searching import LEARNT
from handouts.wording.stored import Numbers, Words, load
from handouts.wording.weighing import Likely, lines

Item = TypeVar("Item")

LONGEST = 80
"""Words that are read at once; a longer sentence is read in stretches."""
PLACES = 1 + LEAD + 1 + LONGEST + 1
"""Words that the transformer is given at most: a lead and a stretch, and a piece before, between and after them."""
AT_ONCE = 1000
"""Words of stretches of like length that are worked out together, with their leads."""
ONCE_MORE = 10
"""Words that take about as long as asking the transformer once more."""
KEPT = 20_000
"""Stretches of which is kept what was found: a text is read again at each keystroke of an editor."""
CLOSELY = 0.7
"""The weight of the close reading; the rest is that of `weighing`."""
UNSURE = (0.3, 0.95)
"""How likely a fault is at the likeliest word of a sentence that is read by itself, if it is to be read with the words before it too: between these."""
BEGIN, END, UNKNOWN, HIDDEN = "[CLS]", "[SEP]", "[UNK]", "[MASK]"
"""The pieces before and after a stretch, of what has no other piece, and of a word that is not told, as the encoder names them."""


def reread(
    weighed: Sequence[tuple[Sentence, Likely]], least: Mapping[Strength, float]
) -> list[tuple[Sentence, Likely]]:
    """The sentences in which a fault stays likely when they are read closely, with how likely each word is part of one.

    weighed: sentences, and how likely each of their words is by `weighing`: what is told is the mean of both, the close reading counting for CLOSELY.
    least: by strength, how likely a word of the sentence must be.
    """
    settled = _closely([(sentence, (), first) for sentence, first in weighed])
    low, high = UNSURE
    unsure = [place for place, likely in enumerate(settled) if low <= likely.most < high]
    led = [(sentence, sentence.lead, first) for sentence, first in (weighed[place] for place in unsure)]
    for place, likely in zip(unsure, _closely(led), strict=True):
        settled[place] = likely
    return [
        (sentence, likely)
        for (sentence, _), likely in zip(weighed, settled, strict=True)
        if any(max(of_words) >= least[strength] for strength, of_words in likely.of.items())
    ]


def _closely(asked: Sequence[tuple[Sentence, Sequence[str], Likely]]) -> list[Likely]:
    """How likely each word of some sentences is part of a fault, by both readings.

    asked: sentences, the words before each that it is read with, and what `weighing` found.
    """
    cuts = [stretches(lead, sentence.words) for sentence, lead, _ in asked]
    closely = iter(learnt().likely([stretch for cut in cuts for stretch in cut]))
    both = []
    for (_, _, first), cut in zip(asked, cuts, strict=True):
        closer = np.concatenate([next(closely) for _ in cut])
        found = first.found + (closer - first.found) * np.float32(CLOSELY)
        both.append(Likely.of_kinds(found, first.columns, first.names))
    return both


class Stretch(NamedTuple):
    """Words that are read at once, and the lead: the words before them, by which it is read."""

    lead: tuple[str, ...]
    words: tuple[str, ...]

    @property
    def given(self) -> tuple[str, ...]:
        """What the transformer is given: words and the pieces around them."""
        return (BEGIN, *self.lead, END, *self.words, END) if self.lead else (BEGIN, *self.words, END)

    @property
    def place(self) -> int:
        """Where the words begin in what is given."""
        return len(self.lead) + 2 if self.lead else 1


def stretches(lead: Sequence[str], words: Sequence[str]) -> list[Stretch]:
    """A sentence in parts that are read at once: a later one is led by the end of the one before.

    lead: the words before it, LEAD of them at most.
    """
    found = [Stretch(tuple(lead), tuple(words[:LONGEST]))]
    for at in range(LONGEST, len(words), LONGEST):
        found.append(Stretch(tuple(words[at - LEAD : at]), tuple(words[at : at + LONGEST])))
    return found


class Reader:
    """What was learnt of English.

    kinds: the names of the kinds.
    rows: makes rows of words.
    graph: the transformer, an ONNX graph that makes of `rows` (stretches,
        words, width) and of `inside` (stretches, words), as `Rows.of` gives
        them, how `likely` each word is part of no fault and of one of each
        kind: (stretches, words, 1 + kinds).
    """

    def __init__(self, kinds: tuple[str, ...], rows: "Rows", graph: onnxruntime.InferenceSession):
        self.kinds = kinds
        self._rows = rows
        self._graph = graph
        self._met: dict[Stretch, Numbers] = {}

    @classmethod
    def read(cls, path: Path) -> Self:
        """path: of the arrays; the graph lies beside it."""
        arrays = load(path)
        return cls(tuple(lines(arrays["kinds"])), Rows(arrays), _opened(path.with_suffix(".onnx")))

    def likely(self, asked: Sequence[Stretch]) -> list[Numbers]:
        """Of each stretch, how likely each word is part of no fault and of one of each kind: (words, 1 + kinds).

        To three decimals, so that what lies on a threshold does not hang on
        the order in which a machine adds.
        """
        if len(self._met) > KEPT:
            self.forget()
        for together in of_like_length({stretch for stretch in asked if stretch not in self._met}):
            self._met |= zip(together, self._found(together), strict=True)
        return [self._met[stretch] for stretch in asked]

    def forget(self) -> None:
        """Keeps nothing of what was found until now."""
        self._met.clear()

    def _found(self, together: list[Stretch]) -> Iterator[Numbers]:
        rows, inside = self._rows.of(together)
        (likely,) = self._graph.run(["likely"], {"rows": rows, "inside": inside})
        found = np.round(likely, 3)
        return (of_stretch[one.place : one.place + len(one.words)] for one, of_stretch in zip(together, found, strict=True))


class Rows:
    """Makes of each word a row of numbers, the mean of its pieces'.

    arrays: by name: `pieces`, in the order of their bytes; `piece rows` (pieces,
        width) of whole numbers, and `piece scale`, what one of them is.
    """

    def __init__(self, arrays: Mapping[str, NDArray[Any]]):
        self._pieces = Words(arrays["pieces"])
        self._of_pieces, self._scale = arrays["piece rows"], arrays["piece scale"]
        self._of_words: dict[str, Numbers] = {}

    def of(self, stretches: Sequence[Stretch]) -> tuple[Numbers, NDArray[np.bool_]]:
        """The rows of what is given of some stretches, (stretches, words, width); and which are inside, (stretches, words), not beyond the end of a shorter one."""
        every = [stretch.given for stretch in stretches]
        longest = max(map(len, every))
        rows = np.zeros((len(every), longest, self._of_pieces.shape[1]), np.float32)
        inside = np.zeros((len(every), longest), bool)
        for number, given in enumerate(every):
            rows[number, : len(given)] = [self._of_word(word) for word in given]
            inside[number, : len(given)] = True
        return rows, inside

    def _of_word(self, word: str) -> Numbers:
        if word not in self._of_words:
            if len(self._of_words) > KEPT:
                self._of_words.clear()
            places = [self._pieces[piece] for piece in pieces(word, self._pieces)]
            rows = self._of_pieces[places].astype(np.float32) * self._scale[places, None]
            self._of_words[word] = rows.mean(axis=0)
        return self._of_words[word]


def _opened(graph: Path) -> onnxruntime.InferenceSession:
    """A graph, ready to be worked out on one core."""
    onnxruntime.disable_telemetry_events()  # on Windows it would tell its maker of each start
    options = onnxruntime.SessionOptions()
    options.intra_op_num_threads = options.inter_op_num_threads = 1
    options.log_severity_level = 3  # errors alone: a trainer cannot mend what it warns of
    # The graph is written as it is fastest; to look for a better form, and to turn the matrices, takes longer than a short text.
    options.graph_optimization_level = onnxruntime.GraphOptimizationLevel.ORT_DISABLE_ALL
    options.add_session_config_entry("session.disable_prepacking", "1")
    return onnxruntime.InferenceSession(graph, options)


def of_like_length(stretches: set[Stretch]) -> Iterator[list[Stretch]]:
    """Stretches in groups of about AT_ONCE words, with few gaps."""
    return groups(sorted((len(stretch.given), stretch) for stretch in stretches), AT_ONCE, ONCE_MORE)


def groups(by_length: Iterable[tuple[int, Item]], most: int, gaps: float = math.inf) -> Iterator[list[Item]]:
    """Things, the shorter ones first, in groups of about `most` words, the gaps at the ends of the shorter ones counted in.

    by_length: how many words each has, and the thing.
    gaps: a thing that would make more words of gaps than this in its group begins another.
    """
    together: list[Item] = []
    longest = 0
    for length, one in by_length:
        many = len(together)
        if many and ((many + 1) * length > most or many * (length - longest) > gaps):
            yield together
            together = []
        together.append(one)
        longest = length
    if together:
        yield together


def pieces(word: str, known: Mapping[str, int]) -> list[str]:
    """The pieces of a word, the longest known one first each time: Wu and others, "Google's Neural Machine Translation System", 2016.

    The first piece of a word is known as it is written, those after it with "##" before them.
    """
    if word in known:
        return [word]
    plain = "".join(letter for letter in unicodedata.normalize("NFD", word) if unicodedata.category(letter) != "Mn")
    spaced = "".join(letter if letter.isalnum() else f" {letter} " for letter in plain)
    found = []
    for part in spaced.split():
        of_part: list[str] = []
        at = 0
        while at < len(part):
            lead = "##" if at else ""
            end = next((end for end in range(len(part), at, -1) if lead + part[at:end] in known), at)
            if end == at:
                of_part = [UNKNOWN]
                break
            of_part.append(lead + part[at:end])
            at = end
        found += of_part
    return found or [UNKNOWN]


@cache
def learnt() -> Reader:
    """What was learnt."""
    return Reader.read(LEARNT / "en.close.npy")
