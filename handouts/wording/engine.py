"""Runs the kinds over a text, sentence by sentence.

The phrases of a kind say what may be a fault; the learnt weights say whether
the words around agree.  A phrase stands unless they speak clearly against it;
without a phrase, they mark a word themselves where they speak clearly for it.
"""

from collections.abc import Iterator, Mapping

from handouts.wording import weighing
from handouts.wording.kinds import kinds, lexicon, triggers
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.marks import Mark, Strength
from handouts.wording.prose import PAUSES, Sentence, sentences
from handouts.wording.weighing import Weights

_JOINS = PAUSES | {"and", "then", "but", "or", "so"}
"""What stands between two clauses: pauses, and the words that join them."""

DOUBT: Mapping[Strength, float] = {"blocks": -2.2, "advice": -2.0}
"""Odds, as a logarithm, under which the words around speak against a phrase."""
SURE: Mapping[Strength, float] = {"blocks": 0.5, "advice": 1.0}
"""Odds, as a logarithm, from which they mark a word without a phrase."""
ALONG = -2.0
"""Odds, as a logarithm, from which a word beside a sure one belongs to its mark."""


def check_text(text: str, *, language: str = "en") -> list[Mark]:
    """The marks of a text, in the order of their places.

    text: Markdown or plain text.
    language: "en" or "fr".
    Where two kinds fit the same words, the one higher in `KINDS` has them.
    """
    looked_for = kinds(language)
    weights = weighing.learnt(language)
    marks: list[Mark] = []
    for sentence in sentences(_with_words_apart(text, language), lexicon(language).known):
        marks += _check(sentence, looked_for, triggers(language), weights, text)
    return marks


def _with_words_apart(text: str, language: str) -> str:
    """The text as its sentences are read, the same length."""
    if language == "fr":
        from handouts.wording.lexicons import fr

        return fr.apart(text)
    return text


def _check(
    sentence: Sentence, kinds: tuple[Kind, ...], triggers: frozenset[str], weights: Mapping[Strength, Weights], text: str
) -> list[Mark]:
    found: list[tuple[Kind, Span, bool]] = []
    for kind, span, by_phrase in _candidates(sentence, kinds, triggers, weights):
        first, last = span = _whole_words(sentence, *span)
        if any(first < end and begin < last for _, (begin, end), _ in found):
            continue
        if any(
            other.strength == kind.strength and _one_clause(sentence, span, place) and not (by_phrase and _apart(kind, other))
            for other, place, _ in found
        ):
            continue
        found.append((kind, span, by_phrase))
    found.sort(key=lambda one: one[1])
    return [_mark(sentence, kind, span, text, whole=by_phrase) for kind, span, by_phrase in found]


def _candidates(
    sentence: Sentence, kinds: tuple[Kind, ...], triggers: frozenset[str], weights: Mapping[Strength, Weights]
) -> Iterator[tuple[Kind, Span, bool]]:
    """What the phrases find, then what the weights find alone: kind, words, and whether a phrase found it.

    They may overlap, the first wins.
    triggers: those of all the kinds; most sentences have few or none, so each kind is asked about few words.
    """
    odds = {strength: model.weighed(sentence) for strength, model in weights.items()}
    words = sentence.words
    here = triggers.intersection(words)
    if hyphened := [word for word in words if "-" in word]:
        here |= triggers.intersection(part for word in hyphened for part in word.split("-"))
    for kind in kinds if here else ():
        if kind.triggers.isdisjoint(here):
            continue
        model, doubt = weights.get(kind.strength), DOUBT[kind.strength]
        for first, last in sorted(kind.find(sentence)):
            if model is None or model.most(sentence, first, last, odds[kind.strength]) >= doubt:
                yield kind, (first, last), True
    for strength, known in odds.items():
        likely = [place for place, weight in known.items() if weight >= ALONG]
        for first, last in weighing.runs(likely, sentence):
            surest = max(known.keys() & range(first, last), key=lambda place: (known[place], place))
            if known[surest] < SURE[strength]:
                continue
            name = weights[strength].kinds[sentence.words[surest]]
            kind = next(kind for kind in kinds if kind.name == name)
            if not kind.explained(sentence, first, last):
                yield kind, (first, last), False


def _apart(kind: Kind, other: Kind) -> bool:
    """Whether two phrases in one clause are two faults: two sizes, two places, two things to be told apart."""
    return kind.strength == "advice" or (kind.counts_each and other.counts_each)


def _mark(sentence: Sentence, kind: Kind, span: Span, text: str, whole: bool) -> Mark:
    """The mark of some words.

    whole: a phrase found them, so that others can take their place; what
        weighs may be half of what is said: "eyes" of "eyes on the clock".
    """
    first, last = span
    start, end = sentence.starts[first], sentence.ends[last - 1]
    suggest = kind.suggest(sentence, first, last)
    rewrite = kind.rewrite(sentence, first, last) if whole else None
    return Mark(start, end, kind.name, kind.strength, text[start:end], kind.why, suggest, rewrite)


def _one_clause(sentence: Sentence, span: Span, other: Span) -> bool:
    """Whether nothing between two spans ends a clause."""
    between = sentence.words[min(span[1], other[1]) : max(span[0], other[0])]
    return _JOINS.isdisjoint(between)


def _whole_words(sentence: Sentence, first: int, last: int) -> Span:
    """The span, with the other half of a contraction that it would cut: "you'll notice", not "'ll notice"."""
    if first and sentence.starts[first] == sentence.ends[first - 1] and sentence.words[first] not in PAUSES:
        first -= 1
    if last < len(sentence.words) and sentence.ends[last - 1] == sentence.starts[last] and sentence.words[last] not in PAUSES:
        last += 1
    return first, last
