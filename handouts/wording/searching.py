"""What the phrases of the kinds find in each sentence of a text."""

from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import NamedTuple

from handouts.wording.kinds import kinds, lexicon, triggers
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.prose import Sentence, sentences

LEARNT = Path(__file__).parent / "learnt"
"""Of a language, the suspicious words and the network that `weighing` reads."""


@cache
def suspicious(language: str) -> frozenset[str]:
    """The words of which a sentence without a phrase must hold one to be weighed; none where nothing was learnt."""
    path = LEARNT / f"{language}.txt"
    return frozenset(path.read_text("utf-8").split()) if path.exists() else frozenset()


class Searched(NamedTuple):
    """A sentence, and what the phrases found in it: kind and words, in the order of the kinds; two may overlap."""

    sentence: Sentence
    phrases: list[tuple[Kind, Span]]


def searched(text: str, language: str) -> Iterator[Searched]:
    """The sentences of a text, each with what the phrases find."""
    looked_for, every = kinds(language), triggers(language)
    for sentence in sentences(_with_words_apart(text, language), lexicon(language).known):
        yield Searched(sentence, list(_phrases(sentence, looked_for, every)))


def _with_words_apart(text: str, language: str) -> str:
    """The text as its sentences are read, the same length."""
    if language == "fr":
        from handouts.wording.lexicons import fr

        return fr.apart(text)
    return text


def _phrases(sentence: Sentence, kinds: tuple[Kind, ...], triggers: frozenset[str]) -> Iterator[tuple[Kind, Span]]:
    """triggers: those of all the kinds; most sentences have few or none, so each kind is asked about few words."""
    words = sentence.words
    here = triggers.intersection(words)
    if hyphened := [word for word in words if "-" in word]:
        here |= triggers.intersection(part for word in hyphened for part in word.split("-"))
    for kind in kinds if here else ():
        if not kind.triggers.isdisjoint(here):
            for span in sorted(kind.find(sentence)):
                yield kind, span
