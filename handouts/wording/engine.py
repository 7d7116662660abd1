"""Runs the kinds over a text, sentence by sentence."""

import re
from functools import lru_cache

from handouts.wording.kinds import KINDS, lexicon
from handouts.wording.kinds.kind import Kind
from handouts.wording.marks import Mark
from handouts.wording.prose import Sentence, sentences

_LETTERS = re.compile(r"[^\W\d_]+")


def check_text(text: str, *, language: str = "en") -> list[Mark]:
    """The marks of a text, in the order of their places.

    text: Markdown or plain text.
    language: "en" or "fr".
    Where two kinds fit the same words, the one higher in `KINDS` has them.
    """
    kinds = KINDS[language]
    marks: list[Mark] = []
    for sentence in sentences(text, _triggers(language), lexicon(language).known):
        marks += _check(sentence, kinds)
    return marks


@lru_cache
def _triggers(language: str) -> frozenset[str]:
    """The first run of letters of every word that a kind may start from."""
    triggers: set[str] = set()
    for kind in KINDS[language]:
        for word in kind.triggers:
            triggers.update(_LETTERS.findall(word)[:1])
    return frozenset(triggers)


def _check(sentence: Sentence, kinds: tuple[Kind, ...]) -> list[Mark]:
    marks: list[Mark] = []
    words = set(sentence.words)
    words.update(part for word in sentence.words if "-" in word for part in word.split("-"))
    for kind in kinds:
        if kind.triggers.isdisjoint(words):
            continue
        previous = -1
        for first, last in sorted(kind.find(sentence)):
            start, end = sentence.starts[first], sentence.ends[last - 1]
            if first == previous or any(start < mark.end and mark.start < end for mark in marks):
                continue  # one fault, one mark
            previous = last
            marks.append(
                Mark(
                    start,
                    end,
                    kind.name,
                    kind.strength,
                    sentence.text[start:end],
                    kind.why,
                    kind.suggest(sentence, first, last),
                    kind.rewrite(sentence, first, last),
                )
            )
    marks.sort(key=lambda mark: mark.start)
    return marks
