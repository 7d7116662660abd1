"""The sentences of a text, whether one may hold a fault, and what the phrases of the kinds find in it."""

from collections.abc import Callable, Iterable, Iterator
from functools import cache
from itertools import repeat
from pathlib import Path

from handouts.wording.kinds import lexicon
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.prose import Cut, Sentence, sentences

LEARNT = Path(__file__).parent / "learnt"
"""Of English, the hints, and what `weighing` and `rereading` read with."""


@cache
def hinting() -> Callable[[Sentence], bool]:
    """Tells whether a sentence, in English or `glossing`, may hold a fault.

    Each word, each pair of words and the first word hint at a fault, or at
    none: in `learnt`, a line each, hundredths of a logarithm of the odds.  The
    first line, which has no word, is where the sum begins; a sentence is in
    question if it does not end below 0.  This is only to leave out most of a
    well-written text, fast.
    """
    told = (line.partition(" ") for line in (LEARNT / "en.txt").read_text("utf-8").splitlines())
    hints = {words: int(number) for number, _, words in told}
    start = hints.pop("")

    def may_hold_a_fault(sentence: Sentence) -> bool:
        return sum(map(hints.get, features(sentence.words), repeat(0)), start) >= 0

    return may_hold_a_fault


def features(words: list[str]) -> set[str]:
    """What hints in a sentence: "hold", "it", " hold", which begins it, and "hold it"."""
    return {*words, *map(" ".join, zip(["", *words], words, strict=False))}


def read(text: str, language: str, already: Cut | None = None) -> Iterator[Sentence]:
    """The sentences of a text; already: the text cut, where the caller has it."""
    known = lexicon(language).known
    if language == "fr":
        from handouts.wording.lexicons.fr import apart

        return sentences(text, known, apart, already)
    return sentences(text, known, already=already)


def phrases(sentence: Sentence, kinds: Iterable[Kind]) -> Iterator[tuple[Kind, Span]]:
    """What the phrases of these kinds find: kind and words, in the order of the kinds; two may overlap."""
    for kind in kinds:
        for span in sorted(kind.find(sentence)):
            yield kind, span
