"""Marks the faults of a text, sentence by sentence.

What was learnt says where a fault may be, and where the words around speak
clearly for it, which words it has.  Elsewhere the phrases of a kind say so, and
stand unless the words around speak against them.
"""

import os
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import cache
from itertools import chain
from types import MappingProxyType, ModuleType
from typing import TYPE_CHECKING, Any

from handouts.wording.glossing import glossing
from handouts.wording.kinds import kinds
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.marks import Mark, Strength
from handouts.wording.prose import PAUSES, Cut, Sentence, word_at
from handouts.wording.searching import hinting, phrases, read

if TYPE_CHECKING:
    from handouts.wording.weighing import Likely

DOUBT: Mapping[str, Mapping[Strength, float]] = {"en": {"blocks": 0.45, "advice": 0.4}, "fr": {"blocks": 0.05, "advice": 0.05}}
"""Of each language, how likely a fault must be, at the most likely of its words, for a phrase to stand; from 0 to 1.

A sentence without such a word is not looked at further.  French is known less
well, by an English word for each, so its phrases count for more.
"""
SURE: Mapping[str, Mapping[Strength, float]] = {"en": {"blocks": 0.65, "advice": 0.5}, "fr": {"blocks": 0.6, "advice": 0.6}}
"""How likely it must be, at the most likely of them, for words to be marked without a phrase."""
GLANCE, FAINT = 0.3, 0.05
"""How likely it must be at first sight for the sentence to be read closely, and how likely where a phrase is found too."""
ALONG = 0.35
"""How likely it must be at a word beside a sure one that belongs to its mark."""

CLOSELY_UP_TO = 500_000
"""Characters of a text up to which it is read closely: some seconds of work, and more than any text of exercises."""

LEADING_ON = {
    "en": frozenset("a an and as but or the then to with your".split()),
    "fr": frozenset("à au aux avec d de des du en et j l la le les mais ou par pour puis qu que sur ton un une vos votre".split()),
}
"""Words that lead on to others: no mark has these alone, nor ends with one unless a pause follows."""

BLOCK = 500
"""Words that are weighed, or read closely, at once: their numbers stay within reach of the processor."""


def check_text(text: str, *, language: str = "en") -> list[Mark]:
    """The marks of a text, in the order of their places.

    text: Markdown or plain text.
    language: "en" or "fr".
    Where two kinds fit the same words, the one higher in `KINDS` has them.
    """
    return check_texts([text], language=language)[text]


def check_texts(
    texts: Iterable[str], *, language: str = "en", cuts: Mapping[str, Cut] = MappingProxyType({})
) -> dict[str, list[Mark]]:
    """The marks of each text, as `check_text` finds them; of many short texts together, which is faster than one by one.

    cuts: of texts that the caller has cut.
    """
    found: dict[str, list[Mark]] = {text: [] for text in texts}
    for closely in (True, False):
        together = [text for text in found if is_read_closely(text) is closely]
        every = chain.from_iterable(read(text, language, cuts.get(text)) for text in together)
        for sentence, likely in _in_question(every, language, closely):
            found[sentence.text] += _check(sentence, likely, language)
    return found


def is_read_closely(text: str) -> bool:
    """Whether a text is short enough that nothing of what was learnt is left unasked."""
    return len(text) <= CLOSELY_UP_TO


def _in_question(every: Iterable[Sentence], language: str, closely: bool) -> Iterator[tuple[Sentence, "Likely"]]:
    """The sentences that may hold a fault, with how likely each word is part of one."""
    may_hold_a_fault = hinting()
    doubt = DOUBT[language]
    least = dict.fromkeys(doubt, FAINT) if closely else doubt
    if glossed := glossing(language):
        every = glossed(every)
    weighed = (
        found
        for block in blocks(filter(may_hold_a_fault, every), lambda sentence: sentence)
        for found in _weighing().weigh(block, least, language)
    )
    for sentence, likely in _reread(weighed, language) if closely else weighed:
        yield sentence.written, likely.placed(sentence.places)


def _reread(weighed: Iterable[tuple[Sentence, "Likely"]], language: str) -> Iterator[tuple[Sentence, "Likely"]]:
    """Of the sentences that hold a fault at first sight, or faintly where a phrase is found too, those that hold one when they are read closely."""
    doubt = DOUBT[language]
    worth_it = (
        (sentence, likely)
        for sentence, likely in weighed
        if likely.most >= GLANCE or any(True for _ in _by_phrase(sentence.written, likely.placed(sentence.places), language, dict.fromkeys(doubt, FAINT)))
    )
    for glanced in blocks(worth_it, lambda found: found[0]):
        from handouts.wording import rereading  # when first needed: onnxruntime takes as long to load as numpy

        yield from rereading.reread(glanced, doubt)


def blocks(every: Iterable[Any], sentence: Callable[[Any], Sentence]) -> Iterator[list[Any]]:
    """Sentences, or what goes with each, in blocks of about BLOCK words."""
    block: list[Any] = []
    count = 0
    for one in every:
        block.append(one)
        count += len(sentence(one).words)
        if count >= BLOCK:
            yield block
            block, count = [], 0
    if block:
        yield block


@cache
def _weighing() -> ModuleType:
    """The module that weighs, loaded when first needed: numpy takes longer to load than a short text to check.

    With one thread for its sums, which are too small to be shared: a second
    would only wait, and cost as much as the first.
    """
    threads = os.environ.get(_THREADS)
    os.environ[_THREADS] = "1"
    try:
        from handouts.wording import weighing
    finally:
        del os.environ[_THREADS]
        if threads is not None:
            os.environ[_THREADS] = threads
    return weighing


_THREADS = "OPENBLAS_NUM_THREADS"


def _check(sentence: Sentence, likely: "Likely", language: str) -> list[Mark]:
    found: list[tuple[Kind, Span, bool]] = []
    for kind, span, by_phrase in _candidates(sentence, likely, language):
        first, last = span = _to_its_end(sentence, LEADING_ON[language], *_whole_words(sentence, *span))
        if any(first < end and begin < last for _, (begin, end), _ in found):
            continue
        found.append((kind, span, by_phrase))
    found.sort(key=lambda one: one[1])
    return [_mark(sentence, kind, span, whole=by_phrase) for kind, span, by_phrase in found]


def _candidates(sentence: Sentence, likely: "Likely", language: str) -> Iterator[tuple[Kind, Span, bool]]:
    """What the words around speak clearly for, and the phrases that they do not deny: kind, words, and whether a phrase has just these words.

    They may overlap, the first wins: what the words around speak for, in
    English, where they are known well; in French the phrase.
    """
    by_phrase = list(_by_phrase(sentence, likely, language, DOUBT[language]))
    clear = _clear(sentence, likely, language)
    for kind, span in chain(by_phrase, clear) if language == "fr" else chain(clear, by_phrase):
        yield kind, span, (kind, span) in by_phrase


def _clear(sentence: Sentence, likely: "Likely", language: str) -> Iterator[tuple[Kind, Span]]:
    """The runs of words that are surely likely, each with its likeliest kind."""
    named = {kind.name: kind for kind in kinds(language)}
    for strength, sure in SURE[language].items():
        of_words = likely.of[strength]
        for first, last in runs(of_words, sentence.words):
            if max(of_words[first:last]) >= sure and not LEADING_ON[language].issuperset(sentence.words[first:last]):
                kind = named[likely.kind(strength, first, last)]
                if not kind.harmless(sentence, first, last):
                    yield kind, (first, last)


def _by_phrase(sentence: Sentence, likely: "Likely", language: str, least: Mapping[Strength, float]) -> Iterator[tuple[Kind, Span]]:
    """What the phrases find where a fault is likely enough."""
    open_to = [strength for strength, of_words in likely.of.items() if max(of_words) >= least[strength]]
    for kind, (first, last) in phrases(sentence, (kind for kind in kinds(language) if kind.strength in open_to)):
        if max(likely.of[kind.strength][first:last]) >= least[kind.strength]:
            yield kind, (first, last)


def runs(likely: Sequence[float], words: Sequence[str]) -> Iterator[Span]:
    """The runs of words, without a pause in them, that are likely enough to belong to one mark."""
    begin = -1
    for place, (found, word) in enumerate(zip([*likely, 0.0], [*words, "."], strict=True)):
        along = found >= ALONG and word not in PAUSES
        if along and begin < 0:
            begin = place
        elif not along and begin >= 0:
            yield begin, place
            begin = -1


def _mark(sentence: Sentence, kind: Kind, span: Span, whole: bool) -> Mark:
    """The mark of some words.

    whole: a phrase found them, so that others can take their place; what
        weighs may be half of what is said: "eyes" of "eyes on the clock".
    """
    first, last = span
    start, end = sentence.starts[first], sentence.ends[last - 1]
    suggest = kind.suggest(sentence, first, last)
    rewrite = kind.rewrite(sentence, first, last) if whole else None
    return Mark(start, end, kind.name, kind.strength, sentence.text[start:end], kind.why, suggest, rewrite)


def _whole_words(sentence: Sentence, first: int, last: int) -> Span:
    """The span, with the other half of a contraction that it would cut: "you'll notice", not "'ll notice"."""
    if first and sentence.starts[first] == sentence.ends[first - 1] and sentence.words[first] not in PAUSES:
        first -= 1
    if last < len(sentence.words) and sentence.ends[last - 1] == sentence.starts[last] and sentence.words[last] not in PAUSES:
        last += 1
    return first, last


def _to_its_end(sentence: Sentence, leading_on: frozenset[str], first: int, last: int) -> Span:
    """The span, without words at its end that only lead on: "the wall clock", not "the wall clock to"."""
    goes_on = word_at(sentence.words, last, ".") not in PAUSES
    while goes_on and last - first > 1 and sentence.words[last - 1] in leading_on:
        last -= 1
    return first, last
