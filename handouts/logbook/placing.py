"""Which line of an exercise text a reader's question is about."""

from __future__ import annotations

import re
from collections.abc import Iterator

from handouts.languages import part_title
from handouts.logbook.words import folded, singular
from handouts.models import Exercise, ListItem, Part

_LETTERS = re.compile(r"[^\W\d_]+")
_STEP = re.compile(r"\b(?:step|point|line|etape|ligne)\s+([0-9]{1,2})\b")


def place_of(question: str, text: Exercise) -> tuple[str, str]:
    """(part, words of the line) that a question is about, ("", "") where
    nothing tells.

    "Movement, step 4" names its line.  Else it is the one line that shares
    most of the question's longer words, at least two of them and more than
    any other line.
    """
    said = folded(question)
    part = next((one for one in text.parts if folded(part_title(one.name, text.facts.language)) in said or folded(one.name) in said), None)
    step = _STEP.search(said)
    if part is not None and step:
        lines = [words for _, words in _lines_of(part)]
        number = int(step[1])
        if 1 <= number <= len(lines):
            return part.name, lines[number - 1]
    wanted = _content(question)
    scores = sorted(
        ((len(wanted & _content(words)), name, words) for one in text.parts for name, words in _lines_of(one)),
        key=lambda score: -score[0],
    )
    best = scores[:2]
    if best and best[0][0] >= 2 and (len(best) == 1 or best[1][0] < best[0][0]):
        return best[0][1], best[0][2]
    return (part.name, "") if part is not None else ("", "")


def _lines_of(part: Part) -> Iterator[tuple[str, str]]:
    for block in part.blocks:
        items: tuple[ListItem, ...] = getattr(block, "items", ())
        if items:
            yield from ((part.name, _flat(item.text)) for item in items)
        else:
            yield part.name, _flat(getattr(block, "text", ""))


def _flat(text: str) -> str:
    return " ".join(text.split())


def _content(text: str) -> frozenset[str]:
    """Words of four letters and more; shorter ones stand in every line."""
    return frozenset(singular(word) for word in _LETTERS.findall(folded(text)) if len(word) > 3)
