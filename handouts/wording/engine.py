"""Runs the kinds over a text, sentence by sentence."""

from handouts.wording.kinds import kinds, lexicon
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.marks import Mark
from handouts.wording.prose import PAUSES, Sentence, sentences

_JOINS = PAUSES | {"and", "then", "but", "or", "so"}
"""What stands between two clauses: pauses, and the words that join them."""


def check_text(text: str, *, language: str = "en") -> list[Mark]:
    """The marks of a text, in the order of their places.

    text: Markdown or plain text.
    language: "en" or "fr".
    Where two kinds fit the same words, the one higher in `KINDS` has them.
    """
    looked_for = kinds(language)
    marks: list[Mark] = []
    for sentence in sentences(_with_words_apart(text, language), lexicon(language).known):
        marks += _check(sentence, looked_for, text)
    return marks


def _with_words_apart(text: str, language: str) -> str:
    """The text as its sentences are read, the same length."""
    if language == "fr":
        from handouts.wording.lexicons import fr

        return fr.apart(text)
    return text


def _check(sentence: Sentence, kinds: tuple[Kind, ...], text: str) -> list[Mark]:
    marks: list[Mark] = []
    blocking: list[tuple[Kind, Span]] = []
    words = set(sentence.words)
    words.update(part for word in sentence.words if "-" in word for part in word.split("-"))
    for kind in kinds:
        if kind.triggers.isdisjoint(words):
            continue
        for first, last in sorted(kind.find(sentence)):
            first, last = _whole_words(sentence, first, last)
            start, end = sentence.starts[first], sentence.ends[last - 1]
            if any(start < mark.end and mark.start < end for mark in marks):
                continue
            if kind.strength == "blocks":
                if any(_one_fault(sentence, kind, (first, last), *other) for other in blocking):
                    continue
                blocking.append((kind, (first, last)))
            marks.append(
                Mark(
                    start,
                    end,
                    kind.name,
                    kind.strength,
                    text[start:end],
                    kind.why,
                    kind.suggest(sentence, first, last),
                    kind.rewrite(sentence, first, last),
                )
            )
    marks.sort(key=lambda mark: mark.start)
    return marks


def _one_fault(sentence: Sentence, kind: Kind, span: Span, other: Kind, found: Span) -> bool:
    """Whether two blocking marks are one fault: they stand in one clause, and are not two things to be told apart."""
    if kind.counts_each and other.counts_each:
        return False
    between = sentence.words[min(span[1], found[1]) : max(span[0], found[0])]
    return _JOINS.isdisjoint(between)


def _whole_words(sentence: Sentence, first: int, last: int) -> Span:
    """The span, with the other half of a contraction that it would cut: "you'll notice", not "'ll notice"."""
    if first and sentence.starts[first] == sentence.ends[first - 1] and sentence.words[first] not in PAUSES:
        first -= 1
    if last < len(sentence.words) and sentence.ends[last - 1] == sentence.starts[last] and sentence.words[last] not in PAUSES:
        last += 1
    return first, last
