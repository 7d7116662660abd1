"""Weighs a suspicious word by the words around it.

A phrase says what a fault looks like; whether the words are a fault in this
sentence, the sentence says: "that way" beside "turn" is one, beside "I see it"
it is none.  This is a linear model: each word around, by its place, has a
weight, the weights are added, and the sum is the logarithm of the odds that the
suspicious word is part of a fault.  `python tests/wording/learn.py` learns the
weights from labelled passages, and with `--why "a sentence"` prints each word's
sum and its heaviest evidence.  The learnt weights are data beside this module.
"""

import json
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path

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

Tables = Mapping[str, Mapping[str, float]]
"""From a table to its words and their weights, in natural logarithms of odds."""


def evidence(words: list[str], place: int) -> list[tuple[str, str]]:
    """What stands around the word at `place`: each table and its words."""
    word = words[place]
    third, second, before = ("^", "^", "^", *words[max(0, place - 3) : place])[-3:]
    after, then, later = (*words[place + 1 : place + 4], "$", "$", "$")[:3]
    here = [
        word, third, second, before, after, then, later, f"{before} {word}", f"{word} {after}", f"{second} {before}",
        f"{after} {then}", f"{before} {after}", words[0], words[-1], str(min(8, len(words) // 3)), str(min(5, place)),
    ]  # fmt: skip
    found = list(zip(PLACES, here, strict=True))
    found += [(BEFORE, other) for other in words[max(0, place - FAR) : place]]
    found += [(AFTER, other) for other in words[place + 1 : place + FAR + 1]]
    return found


@dataclass(frozen=True)
class Weights:
    """What was learnt for one language.

    suspicious: the words that are weighed in a phrase: those that are part of
        a fault now and then.
    kinds: the words that are weighed wherever they stand, because they often
        are part of a fault, each with the kind that it is most often part of.
    fault: the weights.
    """

    suspicious: frozenset[str]
    kinds: Mapping[str, str]
    fault: Tables

    def odds(self, words: list[str], place: int) -> float:
        """The logarithm of the odds that the word at `place` is part of a fault."""
        fault = self.fault
        return sum([fault[table].get(found, 0.0) for table, found in evidence(words, place)])

    def weighed(self, sentence: Sentence) -> dict[int, float]:
        """The places of the words that are weighed wherever they stand, and the odds of each, as a logarithm."""
        words = sentence.words
        if self.kinds.keys().isdisjoint(words):
            return {}
        return {place: self.odds(words, place) for place, word in enumerate(words) if word in self.kinds}

    def most(self, sentence: Sentence, first: int, last: int, known: Mapping[int, float]) -> float:
        """The greatest odds among the suspicious words of a span, as a logarithm; 0 (even odds) where there is none.

        known: what `weighed` gave for the sentence.
        """
        words = sentence.words
        suspicious = [place for place in range(first, last) if words[place] in self.suspicious]
        return max((known[place] if place in known else self.odds(words, place) for place in suspicious), default=0.0)


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
def learnt(language: str) -> Weights | None:
    """The weights of a language, or None where nothing was learnt."""
    path = LEARNT / f"{language}.json"
    if not path.exists():
        return None
    read = json.loads(path.read_text("utf-8"))
    return Weights(frozenset(read["suspicious"]), read["kinds"], read["fault"])
