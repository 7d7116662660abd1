"""How easily a text reads: words, sentences, syllables, school grade.

Source of the formula: Kincaid, Fishburne, Rogers, Chissom, "Derivation of new
readability formulas for Navy enlisted personnel", 1975: 0.39 (words per
sentence) + 11.8 (syllables per word) - 15.59.  It holds for English alone.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable
from functools import lru_cache
from typing import NamedTuple

from handouts.wording.whole_text.syllables import syllables

FEWEST = 30
"""Words below which a text says too little for a grade; our own choice."""

_WORD = re.compile(r"[^\W_]+(?:['’\-‑./][^\W_]+)*")


class Reading(NamedTuple):
    """How a text reads.

    longest_sentence: in words.  syllables and grade are None in a language
    without a formula here, grade in a text of under `FEWEST` words too.
    """

    words: int
    sentences: int
    longest_sentence: int
    syllables: int | None
    grade: float | None


def words_of(text: str) -> list[str]:
    """The words of some prose; a hyphen or an apostrophe within a word parts nothing."""
    return _WORD.findall(text)


@lru_cache(maxsize=20_000)
def counted(between_spaces: str, language: str) -> tuple[int, int]:
    """How many words stand between two spaces, in lower case, and, in English, how many syllables they have."""
    words = words_of(between_spaces)
    return len(words), sum(map(syllables, words)) if language == "en" else 0


def measure(sentences: Iterable[str], language: str) -> Reading:
    """How some sentences read; each holds a word at least."""
    texts = list(sentences)
    total = spoken = longest = 0
    # Most words stand between spaces many times over: each is looked into once.
    for between_spaces, count in Counter("\n".join(texts).lower().split()).items():
        words, their_syllables = counted(between_spaces, language)
        total += count * words
        spoken += count * their_syllables
    for text in texts:
        if len(text) > 2 * longest:  # a shorter one cannot have more words
            longest = max(longest, len(words_of(text)))
    if language != "en":
        return Reading(total, len(texts), longest, None, None)
    grade = None
    if total >= FEWEST:
        grade = round(0.39 * total / len(texts) + 11.8 * spoken / total - 15.59, 1)
    return Reading(total, len(texts), longest, spoken, grade)
