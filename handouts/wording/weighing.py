"""Weighs each word by the words around it: how likely it is part of a fault, and of which kind.

A phrase says what a fault looks like; whether the words are a fault in this
sentence, the words around say: "that way" beside "turn" is one, beside "I see
it" it is none.  This is a small convolutional network, as in Collobert and
others, "Natural Language Processing (Almost) from Scratch", JMLR 2011, with
the gates of Dauphin and others, "Language Modeling with Gated Convolutional
Networks", ICML 2017.  Each word is a row of numbers: what was learnt of the
word and of its classes in the lexicon.  Each layer makes every row short, and
adds to each word's row something of the short rows beside it, at a reach of
its own, so that in the end a word knows of the eight before it and after it in its sentence.
From its last row comes how likely it is no part of a fault, or part of one of
each kind.  That the rows seen are short halves what a layer costs.

`python tests/wording/learn.py` learns the numbers from labelled passages; with
`--why "a sentence"` it tells which words decided, by leaving out each in turn.
What was learnt is data beside this module.
"""

from collections.abc import Callable, Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple, Self, get_args

import numpy as np
from numpy.typing import NDArray

from handouts.wording.kinds import kinds
from handouts.wording.marks import Strength
from handouts.wording.prose import Sentence
from handouts.wording.searching import LEARNT
from handouts.wording.stored import Numbers, Words, load

REACHES = (1, 2, 4, 1)
"""How far each layer looks to either side of a word, in words of its sentence; all together, eight."""

KEPT = 100_000
"""Words of which is kept where their rows stand."""


class Likely(NamedTuple):
    """How likely each word of a sentence is part of a fault, from 0 to 1.

    of: by strength, a number for each word.
    found: (words, 1 + kinds), for no fault and each kind.
    columns: by strength, the columns of its kinds in `found`.
    names: the kinds, in the order of the columns.
    """

    of: dict[Strength, list[float]]
    found: Numbers
    columns: dict[Strength, list[int]]
    names: tuple[str, ...]

    @classmethod
    def of_kinds(cls, found: Numbers, columns: dict[Strength, list[int]], names: tuple[str, ...]) -> Self:
        return cls({strength: found[:, of].sum(axis=1).tolist() for strength, of in columns.items()}, found, columns, names)

    @property
    def most(self) -> float:
        """How likely the likeliest word is part of a fault of either strength."""
        return max(map(max, self.of.values()))

    def placed(self, places: Sequence[int] | None) -> Self:
        """The same of words in another order: what is the first word here is the one at `places[0]` there."""
        if places is None:
            return self
        found = np.empty_like(self.found)
        found[places] = self.found
        return self.of_kinds(found, self.columns, self.names)

    def kind(self, strength: Strength, first: int, last: int) -> str:
        """The likeliest kind of this strength of a run of words."""
        columns = self.columns[strength]
        return self.names[columns[int(self.found[first:last, columns].sum(axis=0).argmax())] - 1]


def weigh(
    block: Sequence[Sentence], least: Mapping[Strength, float], language: str
) -> list[tuple[Sentence, Likely]]:
    """The sentences that may hold a fault, and how likely each of their words is part of one.

    block: the sentences that are asked about, weighed together; in English, or `glossing`.
    least: by strength, how likely a word of the sentence must be.
    language: whose kinds are asked about.
    """
    network = learnt()
    columns = _columns(language)
    lengths = [len(sentence.words) for sentence in block]
    found = network.likely(
        [word for sentence in block for word in sentence.words],
        [bits for sentence in block for bits in sentence.classes],
        lengths,
    )
    sums = {strength: found[:, of].sum(axis=1) for strength, of in columns.items()}
    starts = np.cumsum([0, *lengths])
    enough = [np.maximum.reduceat(every, starts[:-1]) >= least[strength] for strength, every in sums.items()]
    likely = []
    for place in np.flatnonzero(np.logical_or.reduce(enough)).tolist():
        start, end = starts[place], starts[place + 1]
        of = {strength: every[start:end].tolist() for strength, every in sums.items()}
        likely.append((block[place], Likely(of, found[start:end], columns, network.kinds)))
    return likely


@cache
def _columns(language: str) -> dict[Strength, list[int]]:
    """By strength, the columns of its kinds in what the network finds."""
    names = learnt().kinds
    return {
        strength: [1 + names.index(kind.name) for kind in kinds(language) if kind.strength == strength]
        for strength in get_args(Strength)
    }


def beside(x: Any, reach: int, of: NDArray[np.int_]) -> Any:
    """(words, 3 * numbers): the row of each word between those `reach` words before and after it in its sentence, noughts where it has none there.

    of: (words,), the number of each word's sentence.
    """
    width = x.shape[1]
    found = np.zeros((len(x), 3 * width), x.dtype)
    together = (of[reach:] == of[:-reach])[:, None]
    np.multiply(x[:-reach], together, out=found[reach:, :width])
    found[:, width : 2 * width] = x
    np.multiply(x[reach:], together, out=found[:-reach, 2 * width :])
    return found


def forward(
    learnt: Mapping[str, Any],
    x: Any,
    of: NDArray[np.int_],
    drop: Callable[[Any], Any] = lambda x: x,
    beside: Callable[[Any, int, NDArray[np.int_]], Any] = beside,
    numeric: Any = np,
) -> Any:
    """The logits of each word: no fault, then each kind.

    learnt: the arrays of the layers, by name.
    x: (words, width), the row of each word.
    of: (words,), the number of each word's sentence.
    drop: leaves out some numbers at random, while learning.
    beside, numeric: this module's and numpy, or what stands for them while learning.
    """
    for number, reach in enumerate(REACHES):
        size = numeric.sqrt(numeric.mean(x * x, axis=1, keepdims=True) + np.float32(1e-5))
        short = numeric.dot(x, learnt[f"short {number}"]) / size + learnt[f"short bias {number}"]
        around = beside(short, reach, of)
        taken = numeric.dot(around, learnt[f"taps {number}"]) + learnt[f"taps bias {number}"]
        gate = numeric.tanh(numeric.dot(around, learnt[f"gates {number}"]) + learnt[f"gates bias {number}"])
        x = x + drop(taken * (gate + np.float32(1)))
    return numeric.dot(drop(x), learnt["out"]) + learnt["out bias"]


class Network:
    """What was learnt of English.

    arrays: by name: `kinds`, UTF-8, a line each; `words`, in the order of their
        bytes; their `rows` (words, width) of whole numbers and their `row scale`;
        `classes` (bits of the lexicon, width); and the layers, as `forward`
        names them.  The first word, which has no letters, stands for those that are not known.
    """

    def __init__(self, arrays: Mapping[str, NDArray[Any]]):
        self.kinds = tuple(lines(arrays["kinds"]))
        self._words = Words(arrays["words"])
        self._places: dict[str, int] = {}
        self._rows, self._scale = arrays["rows"], arrays["row scale"]
        self._layers = {name: array.astype(np.float32) for name, array in arrays.items() if array.dtype == np.float16}
        self._classes = self._layers.pop("classes")
        self._met: dict[int, int] = {}
        self._met_rows: Numbers = np.zeros((0, self._classes.shape[1]), np.float32)

    @classmethod
    def read(cls, path: Path) -> Self:
        return cls(load(path))

    def likely(self, words: Sequence[str], classes: Sequence[int], lengths: Sequence[int]) -> Numbers:
        """How likely each word is part of no fault and of one of each kind: (words, 1 + kinds), to three decimals.

        words, classes: of sentences, one after the other.
        lengths: how many words each sentence has.
        Rounded, so that what lies on a threshold does not hang on the order in which a machine adds.
        """
        places = [self._place(word) for word in words]
        x = self._rows[places].astype(np.float32) * self._scale[places]
        logits = forward(self._layers, x + self._of_classes(classes), np.repeat(np.arange(len(lengths)), lengths))
        odds = np.exp(logits - logits.max(axis=1, keepdims=True))
        found: Numbers = np.round(odds / odds.sum(axis=1, keepdims=True), 3)
        return found

    def _place(self, word: str) -> int:
        """Where the row of a word stands: of an unknown compound that of its last known part, and 0 of any other unknown word."""
        place = self._places.get(word)
        if place is None:
            if len(self._places) > KEPT:
                self._places.clear()
            parts = (word, *reversed(word.split("-")))
            place = self._places[word] = next((known for known in map(self._words.get, parts) if known is not None), 0)
        return place

    def _of_classes(self, classes: Sequence[int]) -> Numbers:
        """The rows of sets of classes; there are few different ones, so each is worked out when it is first met."""
        if fresh := set(classes).difference(self._met):
            bits = range(len(self._classes))
            rows = [self._classes[[bit for bit in bits if one >> bit & 1]].sum(axis=0) for one in sorted(fresh)]
            self._met |= {one: place for place, one in enumerate(sorted(fresh), len(self._met))}
            self._met_rows = np.concatenate([self._met_rows, rows])
        met: Numbers = self._met_rows[[self._met[one] for one in classes]]
        return met


def lines(array: NDArray[Any]) -> list[str]:
    """The words that an array holds as letters, a line each."""
    return array.tobytes().decode("utf-8").split("\n")


@cache
def learnt() -> Network:
    """What was learnt."""
    return Network.read(LEARNT / "en.npy")
