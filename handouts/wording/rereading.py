"""Reads closely the sentences in which `weighing` finds that a fault may be.

What `weighing` knows of a sentence are its words and their likes.  Whether
somebody is asked to watch, or it is only told, can hang on the whole of it.
This is a small transformer, as in Vaswani and others, "Attention Is All You
Need", NeurIPS 2017, with the layers of Devlin and others, "BERT", NAACL 2019.
It was not learnt from nothing: it began as the sentence encoder
all-MiniLM-L6-v2 (Wang and others, "MiniLM", NeurIPS 2020; published under the
Apache License 2.0), which had read a great deal of English, and then learnt
from the labelled passages.  It takes fifty times as long for a word as
`weighing`, so it is asked of few sentences, and what it said of one is kept.

`python tests/wording/learn_closely.py` makes what is read here.
"""

import math
import unicodedata
from collections.abc import Iterator, Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import Any, Self

import numpy as np
from numpy.typing import NDArray

from handouts.wording.marks import Strength
from handouts.wording.prose import Sentence
from handouts.wording.searching import LEARNT
from handouts.wording.stored import load
from handouts.wording.weighing import Likely, Numbers, lines

LONGEST = 120
"""Words that are read at once; a longer sentence is read in stretches."""
AT_ONCE = 600
"""Words of stretches of like length that are worked out together."""
KEPT = 20_000
"""Stretches of which is kept what was found: a text is read again at each keystroke of an editor."""
CLOSELY = 0.7
"""The weight of the close reading; the rest is that of `weighing`."""
HEADS = 12
BEGIN, END, UNKNOWN, HIDDEN = "[CLS]", "[SEP]", "[UNK]", "[MASK]"
"""The pieces before and after a stretch, of what has no other piece, and of a word that is not told, as the encoder names them."""


def reread(
    weighed: Sequence[tuple[Sentence, Likely]], least: Mapping[Strength, float], language: str
) -> list[tuple[Sentence, Likely]]:
    """The sentences in which a fault stays likely when they are read closely, with how likely each word is part of one.

    weighed: sentences, and how likely each of their words is by `weighing`: what is told is the mean of both, the close reading counting for CLOSELY.
    least: by strength, how likely a word of the sentence must be.
    """
    cuts = [stretches(sentence.words) for sentence, _ in weighed]
    closely = iter(learnt(language).likely([stretch for cut in cuts for stretch in cut]))
    both = []
    for (sentence, first), cut in zip(weighed, cuts, strict=True):
        closer = np.concatenate([next(closely) for _ in cut])
        found = first.found + (closer - first.found) * np.float32(CLOSELY)
        both.append((sentence, Likely.of_kinds(found, first.columns, first.names)))
    return [
        (sentence, likely)
        for sentence, likely in both
        if any(max(of_words) >= least[strength] for strength, of_words in likely.of.items())
    ]


def stretches(of_words: list[Any]) -> list[list[Any]]:
    """A sentence's words, or what stands for each, in parts that are read at once."""
    return [of_words[at : at + LONGEST] for at in range(0, len(of_words), LONGEST)]


class Reader:
    """What was learnt of one language.

    arrays: by name: `kinds` and `pieces`, UTF-8, a line each; `piece rows`
        (pieces, width) and `piece scale`; `places` (LONGEST + 2, width); and of
        each layer, by its number, the matrices `asks`, `mixes`, `widens` and
        `narrows` of whole numbers (inward, outward) and their scales
        (outward), with a bias each, and two pairs of `norm` numbers.
    """

    def __init__(self, arrays: Mapping[str, NDArray[Any]]):
        self.kinds = tuple(lines(arrays["kinds"]))
        self._pieces = {piece: place for place, piece in enumerate(lines(arrays["pieces"]))}
        self._piece_rows, self._piece_scale = arrays["piece rows"], arrays["piece scale"].astype(np.float32)
        self._learnt = {
            name: unpacked(arrays, name)
            for name in arrays
            if name.split()[-1] != "scale" and name not in ("kinds", "pieces", "piece rows", "learnt from")
        }
        self._layers = 1 + max(int(name.split()[0]) for name in self._learnt if name[0].isdigit())
        self._rows: dict[str, Numbers] = {}
        self._met: dict[tuple[str, ...], Numbers] = {}

    @classmethod
    def read(cls, path: Path) -> Self:
        return cls(load(path))

    def likely(self, stretches: Sequence[Sequence[str]]) -> list[Numbers]:
        """Of each stretch of words, how likely each word is part of no fault and of one of each kind: (words, 1 + kinds).

        To three decimals, so that what lies on a threshold does not hang on
        the order in which a machine adds.
        """
        asked = [tuple(stretch) for stretch in stretches]
        if len(self._met) > KEPT:
            self.forget()
        for together in _of_like_length({stretch for stretch in asked if stretch not in self._met}):
            self._met |= zip(together, self._found(together), strict=True)
        return [self._met[stretch] for stretch in asked]

    def forget(self) -> None:
        """Keeps nothing of what was found until now."""
        self._met.clear()

    def _found(self, stretches: list[tuple[str, ...]]) -> Iterator[Numbers]:
        longest = max(map(len, stretches)) + 2
        x = np.zeros((len(stretches), longest, self._piece_rows.shape[1]), np.float32)
        inside = np.zeros((len(stretches), longest), bool)
        for number, stretch in enumerate(stretches):
            x[number, : len(stretch) + 2] = [self._row(word) for word in (BEGIN, *stretch, END)]
            inside[number, : len(stretch) + 2] = True
        logits = forward(self._learnt, x, inside, self._layers)
        odds = np.exp(logits - logits.max(axis=2, keepdims=True))
        found = np.round(odds / odds.sum(axis=2, keepdims=True), 3)
        return (found[number, 1 : 1 + len(stretch)] for number, stretch in enumerate(stretches))

    def _row(self, word: str) -> Numbers:
        """The row of a word: the mean of its pieces'."""
        if word not in self._rows:
            if len(self._rows) > KEPT:
                self._rows.clear()
            places = [self._pieces[piece] for piece in pieces(word, self._pieces)]
            rows = self._piece_rows[places].astype(np.float32) * self._piece_scale[places, None]
            self._rows[word] = rows.mean(axis=0)
        return self._rows[word]


def unpacked(arrays: Mapping[str, NDArray[Any]], name: str) -> Numbers:
    """An array of the file as numbers: whole ones times the scale of their column."""
    found: Numbers = arrays[name].astype(np.float32)
    if f"{name} scale" in arrays:
        found *= arrays[f"{name} scale"]
    return found


def _of_like_length(stretches: set[tuple[str, ...]]) -> Iterator[list[tuple[str, ...]]]:
    """Stretches in groups of about AT_ONCE words, the gaps at their ends counted in."""
    together: list[tuple[str, ...]] = []
    for stretch in sorted(stretches, key=lambda stretch: (len(stretch), stretch)):
        if together and (len(together) + 1) * (len(stretch) + 2) > AT_ONCE:
            yield together
            together = []
        together.append(stretch)
    if together:
        yield together


def forward(learnt: Mapping[str, Numbers], x: Numbers, inside: NDArray[np.bool_], layers: int) -> Numbers:
    """The logits of each word: no fault, then each kind: (stretches, words, 1 + kinds).

    learnt: as `Reader` has it.
    x: (stretches, words, width), the row of each word.
    inside: (stretches, words), False beyond the end of a shorter stretch.
    """
    count, longest, width = x.shape
    beyond = np.where(inside, np.float32(0), np.float32(-1e9))[:, None, None, :]
    x = normed(learnt, "norm", (x + learnt["places"][:longest]).reshape(-1, width))
    for layer in range(layers):
        asks = x @ learnt[f"{layer} asks"] + learnt[f"{layer} asks bias"]
        query, key, value = asks.reshape(count, longest, 3, HEADS, width // HEADS).transpose(2, 0, 3, 1, 4)
        heed = query @ key.swapaxes(2, 3) * np.float32(1 / math.sqrt(width // HEADS)) + beyond
        heed = np.exp(heed - heed.max(axis=3, keepdims=True))
        heed /= heed.sum(axis=3, keepdims=True)
        mixed = (heed @ value).swapaxes(1, 2).reshape(-1, width)
        x = normed(learnt, f"{layer} norm mixed", x + mixed @ learnt[f"{layer} mixes"] + learnt[f"{layer} mixes bias"])
        wide = bent(x @ learnt[f"{layer} widens"] + learnt[f"{layer} widens bias"])
        x = normed(learnt, f"{layer} norm", x + wide @ learnt[f"{layer} narrows"] + learnt[f"{layer} narrows bias"])
    return (x @ learnt["out"] + learnt["out bias"]).reshape(count, longest, -1)


def normed(learnt: Mapping[str, Numbers], name: str, x: Numbers) -> Numbers:
    """Each row brought to mean 0 and deviation 1, then stretched as was learnt: Ba and others, "Layer Normalization", 2016."""
    x = x - x.mean(axis=1, keepdims=True)
    size = np.sqrt(np.einsum("ij,ij->i", x, x)[:, None] / np.float32(x.shape[1]) + np.float32(1e-12))
    found: Numbers = x / size * learnt[f"{name} stretch"] + learnt[f"{name} shift"]
    return found


def bent(x: Numbers) -> Numbers:
    """The "GELU" of Hendrycks and Gimpel, 2016, by its published approximation with the hyperbolic tangent."""
    inner = x * x
    inner *= np.float32(0.044715 * math.sqrt(2 / math.pi))
    inner += np.float32(math.sqrt(2 / math.pi))
    inner *= x
    np.tanh(inner, out=inner)
    inner += 1
    inner *= x
    inner *= np.float32(0.5)
    return inner


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
def learnt(language: str) -> Reader:
    """What was learnt of a language."""
    return Reader.read(LEARNT / f"{language}.close.npy")
