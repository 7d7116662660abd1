"""Words set into lines.

Words are never broken except after a hyphen or dash; a word that is longer
than a line is broken with the continuation sign of its code.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Callable, Iterable, Iterator
from typing import NamedTuple

from handouts.braille.codes import Code
from handouts.braille.translation import BLANK, Word

# A cell that says how to read the next one; a line never ends with one.
_PREFIXES = frozenset("⠠⠼⠐⠰⠨⠸⠘⠈")


class Segment(NamedTuple):
    """The longest run of cells that stays on one line.

    glued: no blank before it, since it goes on with the word before.
    alone: it begins a line, being part of a word that is longer than a line.
    broken: it ends with a continuation sign that is no part of the word.
    language, strong: as in `Word`.
    print: of the whole word; "" on all segments of a word but its first.
    """

    cells: str
    print: str
    glued: bool = False
    alone: bool = False
    broken: bool = False
    language: str = ""
    strong: bool = False


class Row(NamedTuple):
    """One line.

    words: the segments on it.  taken: how many stand on it and on the lines
        above.
    """

    cells: str
    words: tuple[Segment, ...]
    taken: int


def segments(all_words: Iterable[Word], room: int, code: Code) -> tuple[Segment, ...]:
    """Words cut where lines may end.

    all_words: in reading order.
    room: cells of the narrowest whole line that the words may come to stand on.
    """
    found: list[Segment] = []
    for word in _fitting(all_words, room):
        if len(word.cells) <= room and not word.breaks:
            found.append(Segment(word.cells, word.print, language=word.language, strong=word.strong))
            continue
        edges = (0, *word.breaks, len(word.cells))
        for index, (start, end) in enumerate(itertools.pairwise(edges)):
            part = Segment(
                word.cells[start:end],
                "" if index else word.print,
                glued=index > 0,
                language=word.language,
                strong=word.strong,
            )
            found += [part] if len(part.cells) <= room else _broken(part, room, continuation_sign(word, code))
    return tuple(found)


def _fitting(all_words: Iterable[Word], room: int) -> Iterator[Word]:
    """The words, those with a blank in them apart where they are too long."""
    for word in all_words:
        if len(word.cells) <= room or BLANK not in word.cells:
            yield word
            continue
        parts = word.cells.split(BLANK)
        prints = re.split("[ \u00a0\u202f]", word.print)
        if len(prints) != len(parts):
            prints = [word.print, *[""] * (len(parts) - 1)]
        yield from (
            word._replace(cells=cells, breaks=(), print=said) for cells, said in zip(parts, prints, strict=True)
        )


def continuation_sign(word: Word, code: Code) -> str:
    """The sign at the end of a line that breaks a word where print does not.

    A word takes the hyphen in all four codes (Rules of Unified English
    Braille, 10.13.1).  In UEB a number or an address takes the line
    continuation indicator, dot 5, so that no hyphen is read into it (6.10).
    """
    letters = word.print.strip(".,;:!?()'’\"“”")
    return "⠤" if code.name != "ueb" or letters.replace("-", "").isalpha() else "⠐"


def _broken(segment: Segment, room: int, sign: str) -> list[Segment]:
    """A segment that is longer than a line, cut into lines of its own."""
    pieces: list[Segment] = []
    rest = segment
    while len(rest.cells) > room:
        end = room - 1
        while end > 1 and rest.cells[end - 1] in _PREFIXES:
            end -= 1
        pieces.append(rest._replace(cells=rest.cells[:end] + sign, alone=True, broken=True))
        rest = rest._replace(cells=rest.cells[end:], print="", glued=True)
    return [*pieces, rest._replace(alone=True)]


def wrap(what: tuple[Segment, ...], first: int, runover: int, width: Callable[[int], int], whole: int) -> list[Row]:
    """Set segments into lines, each as full as it gets.

    first, runover: blank cells before the first line and before the others.
    width: the cells that line 0, 1, 2, ... may fill; some lines are shorter
        than `whole`, for a page number.  A short line that cannot take the
        next segment stays empty.
    """
    rows: list[Row] = []
    indent = first
    line: list[str] = []
    column = indent
    words: list[Segment] = []
    taken = 0
    limit = width(0)
    for segment in what:
        blank = 1 if line and not segment.glued else 0
        length = len(segment.cells)
        while (segment.alone and line) or column + blank + length > limit:
            if not line and limit >= whole:
                # Cannot be: segments are never longer than a whole line.
                raise AssertionError(f"{length} cells do not fit {limit}")
            rows.append(Row(BLANK * indent + "".join(line) if line else "", tuple(words), taken))
            if line:
                indent = runover
            line, words = [], []
            column, blank = indent, 0
            limit = width(len(rows))
        if blank:
            line.append(BLANK)
        line.append(segment.cells)
        words.append(segment)
        column += blank + length
        taken += 1
    if line:
        rows.append(Row(BLANK * indent + "".join(line), tuple(words), taken))
    return rows
