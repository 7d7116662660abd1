"""Which line of an exercise text a reader's question is about."""

from __future__ import annotations

import re
from collections.abc import Iterator

from handouts.languages import part_title
from handouts.logbook.words import folded, singular
from handouts.models import Exercise, ListItem, Part

_LETTERS = re.compile(r"[^\W\d_]+")
_STEP = re.compile(r"\b(?:step|point|line|etape|ligne)\s+([0-9]{1,2})\b")


def place_of(question: str, text: Exercise, anchor: str = "") -> tuple[str, str]:
    """(part, words of the line) that a question is about, ("", "") where
    nothing tells.

    "Movement, step 4" names its line.  Else it is the one line that shares
    most of the question's longer words, at least two of them and more than
    any other line.
    anchor: the end of the anchor of the part that the reader marked, "" where
    none was marked.
    """
    said = folded(question)
    part = next((one for one in text.parts if _is_named(one, text.facts.language, said, anchor)), None)
    step = _STEP.search(said)
    if part is not None and step:
        lines = [words for _, words in _lines_of(part)]
        number = int(step[1])
        if 1 <= number <= len(lines):
            return part.name, lines[number - 1]
    wanted = _content(question) - _content(text.facts.title)
    parts = (part,) if part is not None and anchor else text.parts
    scores = sorted(
        ((len(wanted & _content(words)), name, words) for one in parts for name, words in _lines_of(one)),
        key=lambda score: -score[0],
    )
    best = scores[:2]
    if best and best[0][0] >= 2 and (len(best) == 1 or best[1][0] < best[0][0]):
        return best[0][1], best[0][2]
    return (part.name, "") if part is not None else ("", "")


def _is_named(part: Part, language: str, said: str, anchor: str) -> bool:
    if anchor:
        return anchor == part.name.lower().replace(" ", "-")
    return folded(part_title(part.name, language)) in said or folded(part.name) in said


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
