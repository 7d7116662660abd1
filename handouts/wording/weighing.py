"""Weighs a suspicious word by the words around it.

A phrase says what a fault looks like; whether the words are a fault in this
sentence, the sentence says: "that way" beside "turn" is one, beside "I see it"
it is none.  This is a linear model: each word around and each class of word (a
part of the body, a verb of seeing), by its place, has a weight, the weights are
added, and the sum is the logarithm of the odds that the suspicious word is part
of a fault.  There is one model for each strength.  `python tests/wording/learn.py`
learns the weights from labelled passages, and with `--why "a sentence"` prints
each word's sum and its heaviest evidence.  The learnt weights are data beside
this module.
"""

import json
from collections.abc import Iterable, Iterator, Mapping
from functools import cache
from pathlib import Path

from handouts.wording.grammar import Lexicon
from handouts.wording.kinds import lexicon
from handouts.wording.marks import Strength
from handouts.wording.prose import PAUSES, Sentence

LEARNT = Path(__file__).parent / "learnt"

FAR = 8
"""Words on each side that count wherever they stand."""
BEFORE, AFTER = "<", ">"
"""The tables of words that stand somewhere before and after the word."""
PLACES = (
    "=", "-3", "-2", "-1", "+1", "+2", "+3", "-1=", "=+1", "-2-1", "+1+2", "-1+1", "first", "last", "length", "from start",
)  # fmt: skip
"""The tables of words in a certain place: "=" is the word itself, "-1=" the one before and itself."""
CLASSES = (
    "class =", "class -3", "class -2", "class -1", "class +1", "class +2", "class +3", "class <", "class >",
    "class -1+1", "class +1+2", "class -2-1", "class -1 =", "= class +1",
)  # fmt: skip
"""The tables of classes of words: in a certain place, somewhere before and after, of two at once, of one and the word itself."""
TABLES = (*PLACES, BEFORE, AFTER, *CLASSES)

_START, _END = -1, -2
"""What stands for the classes of a word beyond the start and the end of a sentence."""

Classes = int | tuple[int, int] | tuple[str, int] | tuple[int, str]
"""The bits of the classes of a word, two such, or a word and such."""
Tables = Mapping[str, Mapping[str, float]]
"""From a table to its words or classes and their weights, in natural logarithms of odds."""


def words_around(sentence: Sentence, place: int) -> list[tuple[str, str]]:
    """The words around the one at `place`: each table and what it is asked for."""
    words = sentence.words
    word = words[place]
    third, second, before = ("^", "^", "^", *words[max(0, place - 3) : place])[-3:]
    after, then, later = (*words[place + 1 : place + 4], "$", "$", "$")[:3]
    here = (
        word, third, second, before, after, then, later, f"{before} {word}", f"{word} {after}", f"{second} {before}",
        f"{after} {then}", f"{before} {after}", words[0], words[-1], str(min(8, len(words) // 3)), str(min(5, place)),
    )  # fmt: skip
    found = list(zip(PLACES, here, strict=True))
    found += [(BEFORE, other) for other in words[max(0, place - FAR) : place]]
    found += [(AFTER, other) for other in words[place + 1 : place + FAR + 1]]
    return found


def classes_around(sentence: Sentence, place: int) -> list[tuple[str, Classes]]:
    """The classes of the words around the one at `place`, the same way."""
    word, classes = sentence.words[place], sentence.classes
    third, second, before = (_START, _START, _START, *classes[max(0, place - 3) : place])[-3:]
    after, then, later = (*classes[place + 1 : place + 4], _END, _END, _END)[:3]
    all_before = all_after = 0
    for bits in classes[max(0, place - FAR) : place]:
        all_before |= bits
    for bits in classes[place + 1 : place + FAR + 1]:
        all_after |= bits
    return [
        ("class =", classes[place]), ("class -3", third), ("class -2", second), ("class -1", before), ("class +1", after),
        ("class +2", then), ("class +3", later), ("class <", all_before), ("class >", all_after),
        ("class -1+1", (before, after)), ("class +1+2", (after, then)), ("class -2-1", (second, before)),
        ("class -1 =", (before, word)), ("= class +1", (word, after)),
    ]  # fmt: skip


def names(found: str | Classes, known: Lexicon) -> list[str]:
    """What a table calls the classes that stand at a place: one name for each class or pair."""
    if isinstance(found, str):
        return [found]
    if isinstance(found, tuple):
        one, other = found
        return [f"{first} {second}" for first in names(one, known) for second in names(other, known)]
    if found in (_START, _END):
        return ["^" if found == _START else "$"]
    return [name for name, bit in known.bits.items() if found & bit] or ["-"]


def evidence(sentence: Sentence, place: int, known: Lexicon) -> list[tuple[str, str]]:
    """All that stands around the word at `place`: each table and the name of what it is asked for."""
    classes = classes_around(sentence, place)
    return words_around(sentence, place) + [(table, name) for table, found in classes for name in names(found, known)]


_MOST_SUMS = 5_000
"""Sums kept in memory for each table."""


class _Sums(dict[Classes, float]):
    """From the classes that may stand at a place to the sum of their weights, worked out when they are first met."""

    def __init__(self, weights: Mapping[str, float], known: Lexicon):
        super().__init__()
        self._weights = weights
        self._known = known

    def __missing__(self, found: Classes) -> float:
        total = sum([self._weights.get(name, 0.0) for name in names(found, self._known)])
        if len(self) < _MOST_SUMS:
            self[found] = total
        return total


class Weights:
    """What was learnt for one language and one strength.

    suspicious: the words that are weighed in a phrase: those that are part of
        a fault now and then.
    kinds: the words that are weighed wherever they stand, because they often
        are part of a fault, each with the kind that it is most often part of.
    fault: the weights.
    """

    def __init__(self, suspicious: Iterable[str], kinds: Mapping[str, str], fault: Tables, known: Lexicon):
        self.suspicious = frozenset(suspicious)
        self.kinds = kinds
        self.fault = fault
        self._sums = {table: _Sums(fault[table], known) for table in CLASSES}

    def odds(self, sentence: Sentence, place: int) -> float:
        """The logarithm of the odds that the word at `place` is part of a fault.

        To two decimals, as the weights are: what lies on a threshold is not to
        hang on the order in which they are added.
        """
        fault, sums = self.fault, self._sums
        by_word = sum([fault[table].get(found, 0.0) for table, found in words_around(sentence, place)])
        by_class = sum([sums[table][found] for table, found in classes_around(sentence, place)])
        return round(by_word + by_class, 2)

    def weighed(self, sentence: Sentence) -> dict[int, float]:
        """The places of the words that are weighed wherever they stand, and the odds of each, as a logarithm."""
        words = sentence.words
        if self.kinds.keys().isdisjoint(words):
            return {}
        return {place: self.odds(sentence, place) for place, word in enumerate(words) if word in self.kinds}

    def most(self, sentence: Sentence, first: int, last: int, known: Mapping[int, float]) -> float:
        """The greatest odds among the suspicious words of a span, as a logarithm; 0 (even odds) where there is none.

        known: what `weighed` gave for the sentence.
        """
        words = sentence.words
        suspicious = [place for place in range(first, last) if words[place] in self.suspicious]
        return max((known[place] if place in known else self.odds(sentence, place) for place in suspicious), default=0.0)


def runs(places: Iterable[int], sentence: Sentence) -> Iterator[tuple[int, int]]:
    """First and after-last place of each run of places, over a gap of one word at most that is no pause."""
    begin = end = -1
    for place in places:
        if end >= 0 and place - end <= 1 and PAUSES.isdisjoint(sentence.words[end:place]):
            end = place + 1
            continue
        if end >= 0:
            yield begin, end
        begin, end = place, place + 1
    if end >= 0:
        yield begin, end


@cache
def learnt(language: str) -> Mapping[Strength, Weights]:
    """The weights of a language by strength; none where nothing was learnt."""
    path = LEARNT / f"{language}.json"
    if not path.exists():
        return {}
    read: Mapping[Strength, dict[str, Tables]] = json.loads(path.read_text("utf-8"))
    return {
        strength: Weights(one["suspicious"], one["kinds"], one["fault"], lexicon(language))  # type: ignore[arg-type]
        for strength, one in read.items()
    }
