"""The kind "sight-check"."""

from collections.abc import Iterator

from handouts.wording.grammar import Phrases
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.lexicons.en import LEXICON
from handouts.wording.prose import Sentence

_PHRASES = Phrases(
    LEXICON,
    plain="""
    in the mirror
    """,
)


def find(sentence: Sentence) -> Iterator[Span]:
    """The marked words of a sentence."""
    for first, last, _ in _PHRASES.find(sentence):
        yield first, last


def suggest(sentence: Sentence, first: int, last: int) -> str:
    """What to write instead of the marked words."""
    return "Say it in words that work without looking."


ENGLISH = Kind(
    name="sight-check",
    strength="blocks",
    why="Asks the reader to check by eye.",
    suggest=suggest,
    triggers=_PHRASES.triggers,
    find=find,
    flag=(),
    leave=(),
)
