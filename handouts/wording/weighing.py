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


def names(found: str | Classes, lexicon: Lexicon) -> list[str]:
    """What a table calls the classes that stand at a place: one name for each class or pair."""
    if isinstance(found, str):
        return [found]
    if isinstance(found, tuple):
        one, other = found
        return [f"{first} {second}" for first in names(one, lexicon) for second in names(other, lexicon)]
    if found in (_START, _END):
        return ["^" if found == _START else "$"]
    return [name for name, bit in lexicon.bits.items() if found & bit] or ["-"]


def evidence(sentence: Sentence, place: int, lexicon: Lexicon) -> list[tuple[str, str]]:
    """All that stands around the word at `place`: each table and the name of what it is asked for."""
    classes = classes_around(sentence, place)
    return words_around(sentence, place) + [(table, name) for table, found in classes for name in names(found, lexicon)]


_MOST_SUMS = 5_000
"""Sums kept in memory for each table."""


class _Sums(dict[Classes, float]):
    """From the classes that may stand at a place to the sum of their weights, worked out when they are first met."""

    def __init__(self, weights: Mapping[str, float], lexicon: Lexicon):
        super().__init__()
        self._weights = weights
        self._lexicon = lexicon

    def __missing__(self, found: Classes) -> float:
        total = sum([self._weights.get(name, 0.0) for name in names(found, self._lexicon)])
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

    def __init__(self, suspicious: Iterable[str], kinds: Mapping[str, str], fault: Tables, lexicon: Lexicon):
        self.suspicious = frozenset(suspicious)
        self.kinds = kinds
        self.fault = fault
        self._words = tuple(fault[table].get for table in (*PLACES, BEFORE, AFTER))
        self._classes = tuple(_Sums(fault[table], lexicon) for table in CLASSES)

    def odds(self, sentence: Sentence, place: int) -> float:
        """The logarithm of the odds that the word at `place` is part of a fault.

        The sum of the weights of what `words_around` and `classes_around` tell,
        added up where it stands: this is where the checker spends its time.
        """
        words, classes = sentence.words, sentence.classes
        last = len(words) - 1
        word, bits = words[place], classes[place]
        before, left = (words[place - 1], classes[place - 1]) if place else ("^", _START)
        second, left2 = (words[place - 2], classes[place - 2]) if place > 1 else ("^", _START)
        third, left3 = (words[place - 3], classes[place - 3]) if place > 2 else ("^", _START)
        after, right = (words[place + 1], classes[place + 1]) if place < last else ("$", _END)
        then, right2 = (words[place + 2], classes[place + 2]) if place < last - 1 else ("$", _END)
        later, right3 = (words[place + 3], classes[place + 3]) if place < last - 2 else ("$", _END)
        (
            it, at_3, at_2, at_1, at1, at2, at3, with_before, with_after, both_before, both_after, on_each_side, at_first,
            at_last, of_length, from_start, some_before, some_after,
        ) = self._words  # fmt: skip
        (
            class_, class_3, class_2, class_1, class1, class2, class3, class_before, class_after, classes_each_side,
            classes_after, classes_before, class_and_word, word_and_class,
        ) = self._classes  # fmt: skip
        total = (
            it(word, 0.0) + at_3(third, 0.0) + at_2(second, 0.0) + at_1(before, 0.0)
            + at1(after, 0.0) + at2(then, 0.0) + at3(later, 0.0)
            + with_before(f"{before} {word}", 0.0) + with_after(f"{word} {after}", 0.0)
            + both_before(f"{second} {before}", 0.0) + both_after(f"{after} {then}", 0.0)
            + on_each_side(f"{before} {after}", 0.0)
            + at_first(words[0], 0.0) + at_last(words[-1], 0.0)
            + of_length(str(min(8, (last + 1) // 3)), 0.0) + from_start(str(min(5, place)), 0.0)
            + class_[bits] + class_3[left3] + class_2[left2] + class_1[left]
            + class1[right] + class2[right2] + class3[right3]
            + classes_each_side[left, right] + classes_after[right, right2] + classes_before[left2, left]
            + class_and_word[left, word] + word_and_class[word, right]
        )  # fmt: skip
        some = 0
        for near in range(place - FAR if place > FAR else 0, place):
            total += some_before(words[near], 0.0)
            some |= classes[near]
        total += class_before[some]
        some = 0
        for near in range(place + 1, min(place + FAR, last) + 1):
            total += some_after(words[near], 0.0)
            some |= classes[near]
        return total + class_after[some]

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
def learnt(language: str, lexicon: Lexicon) -> Mapping[Strength, Weights]:
    """The weights of a language by strength; none where nothing was learnt.

    lexicon: its classes of words.
    """
    path = LEARNT / f"{language}.json"
    if not path.exists():
        return {}
    read: Mapping[Strength, dict[str, Tables]] = json.loads(path.read_text("utf-8"))
    return {
        strength: Weights(one["suspicious"], one["kinds"], one["fault"], lexicon)  # type: ignore[arg-type]
        for strength, one in read.items()
    }
