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
from functools import cache, reduce
from operator import or_
from pathlib import Path
from typing import Any, NamedTuple

from handouts.wording.grammar import Lexicon
from handouts.wording.kinds import lexicon
from handouts.wording.marks import Strength
from handouts.wording.prose import PAUSES, Sentence

LEARNT = Path(__file__).parent / "learnt"

FAR = 8
"""Words on each side that count wherever they stand."""
WORDS = (
    "-3", "-2", "-1", "+1", "+2", "+3", "-2-1", "+1+2", "-1+1", "first", "last", "length", "from start", "<", ">",
)  # fmt: skip
"""The tables of words: in a certain place, two together, and somewhere before and after."""
CLASSES = (
    "class =", "class -3", "class -2", "class -1", "class +1", "class +2", "class +3", "class <", "class >",
    "class -1+1", "class +1+2", "class -2-1", "class < =", "class = >",
)  # fmt: skip
"""The tables of classes of words: in a certain place, somewhere before and after, and of two at once."""
BESIDE = ("-1=", "=+1")
"""The tables that each suspicious word has for itself: of the word beside it.  "=" is its own weight."""
OWN_CLASSES = ("class -1 =", "= class +1", "class < word", "word class >")
"""Its own tables of classes: beside it, and somewhere before and after."""

_START, _END = -1, -2
"""What stands for the classes of a word beyond the start and the end of a sentence."""

LINES: Mapping[int, Strength] = {1: "blocks", 2: "advice"}
"""What is learnt of a word takes three lines of the file: the word, or two, and its record in each strength."""

Classes = int | tuple[int, int]
"""The bits of the classes of a word, or two such."""
Record = Mapping[str, Any]
"""What was learnt of a word, by table: a weight, in natural logarithms of odds, or the weights of what is beside it."""


class Around(NamedTuple):
    """What stands around a word: each table and what it is asked for."""

    words: list[tuple[str, str]]
    classes: list[tuple[str, Classes]]
    beside: list[tuple[str, str]]
    own_classes: tuple[int, int, int, int]


def around(sentence: Sentence, place: int) -> Around:
    """What stands around the word at `place`."""
    words, classes = sentence.words, sentence.classes
    third, second, before = ("^", "^", "^", *words[max(0, place - 3) : place])[-3:]
    after, then, later = (*words[place + 1 : place + 4], "$", "$", "$")[:3]
    here = (
        third, second, before, after, then, later, f"{second} {before}", f"{after} {then}", f"{before} {after}",
        words[0], words[-1], str(min(8, len(words) // 3)), str(min(5, place)),
    )  # fmt: skip
    found = list(zip(WORDS, here, strict=False))
    start, end = max(0, place - FAR), place + FAR + 1
    found += [("<", other) for other in words[start:place]]
    found += [(">", other) for other in words[place + 1 : end]]
    its, is_third, is_second, is_before = classes[place], *(_START, _START, _START, *classes[max(0, place - 3) : place])[-3:]
    is_after, is_then, is_later = (*classes[place + 1 : place + 4], _END, _END, _END)[:3]
    all_before = reduce(or_, classes[start:place], 0)
    all_after = reduce(or_, classes[place + 1 : end], 0)
    of_classes: tuple[Classes, ...] = (
        its, is_third, is_second, is_before, is_after, is_then, is_later, all_before, all_after,
        (is_before, is_after), (is_after, is_then), (is_second, is_before), (all_before, its), (its, all_after),
    )  # fmt: skip
    return Around(
        found,
        list(zip(CLASSES, of_classes, strict=True)),
        list(zip(BESIDE, (before, after), strict=True)),
        (is_before, is_after, all_before, all_after),
    )


def names(found: Classes, known: Lexicon) -> list[str]:
    """What a table calls the classes that stand at a place: one name for each class or pair."""
    if isinstance(found, tuple):
        one, other = found
        return [f"{first} {second}" for first in names(one, known) for second in names(other, known)]
    if found in (_START, _END):
        return ["^" if found == _START else "$"]
    return [name for name, bit in known.bits.items() if found & bit] or ["-"]


def evidence(sentence: Sentence, place: int, known: Lexicon) -> list[tuple[str, str, str]]:
    """All that stands around the word at `place`: each table, the word whose own it is or "", and the name of what it is asked for."""
    found = around(sentence, place)
    word = sentence.words[place]
    return (
        [(table, "", name) for table, name in found.words]
        + [(table, "", name) for table, classes in found.classes for name in names(classes, known)]
        + [("=", word, "")]
        + [(table, word, name) for table, name in found.beside]
        + [
            (table, word, name)
            for table, bits in zip(OWN_CLASSES, found.own_classes, strict=True)
            for name in names(bits, known)
        ]
    )


def kept_at(table: str, word: str, name: str) -> tuple[str, str]:
    """Where a weight is kept, as `evidence` names it: the word whose record has it, and its name in the table, "" where the table is the weight."""
    return (name or word, "") if table in WORDS or table == "=" else (word, name)


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


class _OwnSums:
    """The same for a word's own table, whose few weights are soon added up: no sum is kept, since there are many words."""

    def __init__(self, weights: Mapping[str, float], known: Lexicon):
        self._beyond = {_START: weights.get("^", 0.0), _END: weights.get("$", 0.0), 0: weights.get("-", 0.0)}
        self._weights = [(known.bits[name], weight) for name, weight in weights.items() if name in known.bits]

    def __getitem__(self, found: int) -> float:
        if found in self._beyond:
            return self._beyond[found]
        return sum([weight for bit, weight in self._weights if found & bit])


class _Records(dict[str, Record]):
    """From a word, or two, to its weights, each read when it is first asked for: a short text asks for few."""

    def __init__(self, lines: Mapping[str, str]):
        super().__init__()
        self._lines = lines

    def __missing__(self, name: str) -> Record:
        line = self._lines.get(name)
        if not line:
            return _NOTHING
        record: Record = json.loads(line)
        self[name] = record
        return record


_NOTHING: Record = {}


class Weights:
    """What was learnt for one language and one strength.

    suspicious: the words that are weighed in a phrase: those that are part of
        a fault now and then.
    kinds: the words that are weighed wherever they stand, because they often
        are part of a fault, each with the kind that it is most often part of.

    lines: from a word, two words or a number to its record as JSON; that of ""
        holds `suspicious`, `kinds` and the tables of classes.
    """

    def __init__(self, lines: Mapping[str, str], known: Lexicon):
        self._records = _Records(lines)
        self._known = known
        general = self._records[""]
        self.suspicious = frozenset(general["suspicious"])
        self.kinds: Mapping[str, str] = general["kinds"]
        self._classes = {table: _Sums(general[table], known) for table in CLASSES}
        self._own_classes: dict[str, list[_OwnSums]] = {}

    def of(self, table: str, word: str, name: str) -> float:
        """One weight, as `evidence` names it."""
        record, inner = kept_at(table, word, name)
        found = self._records[record].get(table, 0.0)
        weight: float = found.get(inner, 0.0) if isinstance(found, dict) else found
        return weight

    def odds(self, sentence: Sentence, place: int) -> float:
        """The logarithm of the odds that the word at `place` is part of a fault.

        To two decimals, as the weights are: what lies on a threshold is not to
        hang on the order in which they are added.
        """
        records, of_classes = self._records, self._classes
        word = sentence.words[place]
        found = around(sentence, place)
        total: float = sum([records[name].get(table, 0.0) for table, name in found.words])
        total += sum([of_classes[table][bits] for table, bits in found.classes])
        own = records[word]
        total += own.get("=", 0.0) + sum([own.get(table, _NOTHING).get(name, 0.0) for table, name in found.beside])
        sums = self._own_classes.get(word)
        if sums is None:
            sums = self._own_classes[word] = [_OwnSums(own.get(table, _NOTHING), self._known) for table in OWN_CLASSES]
        total += sum([sums[number][bits] for number, bits in enumerate(found.own_classes)])
        return round(total, 2)

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
    path = LEARNT / f"{language}.txt"
    if not path.exists():
        return {}
    lines = path.read_text("utf-8").split("\n")
    words = lines[0::3]  # no line is looked into before its word is met: the file is long, and most texts are short
    return {strength: Weights(dict(zip(words, lines[at::3], strict=True)), lexicon(language)) for at, strength in LINES.items()}
