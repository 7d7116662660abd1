"""The sentences of a text, and what the phrases of the kinds find in one."""

from collections.abc import Iterable, Iterator
from functools import cache
from pathlib import Path

from handouts.wording.kinds import lexicon
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.prose import Sentence, sentences

LEARNT = Path(__file__).parent / "learnt"
"""Of a language, the suspicious words and the network that `weighing` reads."""


@cache
def suspicious(language: str) -> frozenset[str]:
    """The words of which a sentence must hold one to be asked about; none where nothing was learnt."""
    path = LEARNT / f"{language}.txt"
    return frozenset(path.read_text("utf-8").split()) if path.exists() else frozenset()


def read(text: str, language: str) -> Iterator[Sentence]:
    """The sentences of a text."""
    if language == "fr":
        from handouts.wording.lexicons import fr

        text = fr.apart(text)
    return sentences(text, lexicon(language).known)


def phrases(sentence: Sentence, kinds: Iterable[Kind]) -> Iterator[tuple[Kind, Span]]:
    """What the phrases of these kinds find: kind and words, in the order of the kinds; two may overlap."""
    for kind in kinds:
        for span in sorted(kind.find(sentence)):
            yield kind, span
