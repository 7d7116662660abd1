"""What stays on one line of print, and what may be divided when nothing else fits.

Sources: UK Association for Accessible Formats, "Creating clear print and large
print documents": words and items are not split over lines.  So "3 o'clock",
"15 lb", "page 3 of 9" and "pull-apart" stay whole, and a dose breaks after its
commas, wherever the line has room for it.  A word that is wider than its line
must be divided; then it is divided between syllables and with a hyphen, since
two pieces without one read as two words.  (Common practice, no source.)

The lines of the tree get these bonds before any page is made: a bond is a
Measure, which no line end may cut, and a place to divide is a soft hyphen.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import groupby
from typing import TypeAlias

import pyphen  # type: ignore[import-untyped]

from handouts.forms.paper import Band, Box, Page, box_edge, fits, headings, indent, text_width
from handouts.handout import (
    Block,
    Caution,
    Dose,
    Fact,
    Facts,
    Foreign,
    Handout,
    Heading,
    Item,
    Line,
    Measure,
    Paragraph,
    Points,
    Section,
    Steps,
    Strong,
    Table,
    Text,
    plain,
)
from handouts.models import PrintForm

SOFT_HYPHEN = "\u00ad"
_SHARE = 0.75  # of its line that a bond may take, so that the line before is not left bare
_COMPOUND = re.compile(r"\w[-\u2013/]\w")
_EDGES = re.compile(r"([^\w\u00ab]*)(.*?)((?<!\s)[^\w\s\u00bb%\u00b0]+)?$", re.DOTALL)
_LEAST = 3  # letters before and after a hyphen

# A piece of a line without a space in it: its words and measures.
_Word: TypeAlias = tuple[Text | Measure, ...]


@dataclass(frozen=True)
class _Room:
    """The line that a text has, in points, its size, and its language."""

    width: float
    size: float
    language: str

    def less(self, by: float) -> _Room:
        return replace(self, width=self.width - by)

    def holds(self, text: str, share: float = 1.0) -> bool:
        # Bold is the wider of the two.
        return text_width(text, self.size) <= share * self.width


def typeset(handout: Handout, form: PrintForm, page: Page) -> Handout:
    """The same sheet with bonds and with places to divide.  Tables, whose columns
    are measured by their words, stay as they are; for the log see `with_bonds`."""
    room = _Room(page.width, form.size, handout.language)
    sizes = headings(form.size)

    def blocks(all_: tuple[Block, ...], room: _Room) -> tuple[Block, ...]:
        return tuple(block(each, room) for each in all_)

    def block(one: Block, room: _Room) -> Block:
        match one:
            case Section():
                heading = block(one.heading, room)
                assert isinstance(heading, Heading)
                return replace(one, heading=heading, blocks=blocks(one.blocks, room))
            case Heading():
                size = sizes[f"h{one.level}"]
                return replace(one, content=_line(one.content, replace(room, width=room.width - 6 - 0.4 * size, size=size)))
            case Paragraph():
                return replace(one, content=_line(one.content, room))
            case Dose():
                size = form.size + 3
                return replace(one, content=_line(one.content, replace(room, width=room.width - 6 - 0.9 * size, size=size), parts=True))
            case Steps() | Points():
                inside = room.less(indent(one, form))
                return replace(one, items=tuple(Item(_line(item.content, inside), blocks(item.blocks, inside)) for item in one.items))
            case Caution():
                inside = room.less(2 * box_edge(form))
                return replace(one, title=_line(one.title, replace(inside, size=sizes["h3"])), blocks=blocks(one.blocks, inside))
            case Facts():
                return replace(one, facts=tuple(Fact(_line(fact.label, room), _line(fact.value, room)) for fact in one.facts))
            case Table() if not fits(one, form, page.width):
                # It becomes a list, since its columns would be too narrow.
                rows = tuple(tuple(_line(cell, room) for cell in row) for row in one.rows)
                columns = tuple(_line(column, room) for column in one.columns)
                return replace(one, caption=_line(one.caption, room), columns=columns, rows=rows)
            case _:
                return one

    title = _line(handout.title, replace(room, size=sizes["h1"]))
    return replace(handout, title=title, blocks=blocks(handout.blocks, room))


def with_bonds(band: Band, form: PrintForm, width: float, language: str) -> Band:
    """A band of the log whose labels and targets keep a number and its word together."""
    room = _Room(width * (band.beside or 100) / 100 - 8, form.size, language)

    def box(one: Box, row: float) -> Box:
        inside = replace(room, width=row * one.percent / 100 - 14)
        return replace(one, asked=_line(one.asked, inside), field=replace(one.field, label=_line(one.field.label, inside)))

    row = width * (100 - band.beside) / 100
    rows = tuple(tuple(box(one, row) for one in boxes) for boxes in band.rows)
    entry = replace(band.entry, title=_line(band.entry.title, room))
    return replace(band, entry=entry, asked=_line(band.asked, room), rows=rows)


def _line(line: Line, room: _Room, parts: bool = False) -> Line:
    """parts: whether what stands between two commas stays together."""
    done: list[Line] = []
    for loose, group in groupby(line, lambda piece: isinstance(piece, Text | Measure)):
        if loose:
            runs = _runs(tuple(_words(piece for piece in group if isinstance(piece, Text | Measure))), room)
            runs = _parts(runs, room) if parts else runs
            found: list[Text | Measure] = []
            for number, run in enumerate(runs):
                found += [Text(" ")] * bool(number) + list(_set(run, room))
            done.append(tuple(_joined(found)))
        else:
            for piece in group:
                if isinstance(piece, Foreign):
                    done.append((replace(piece, content=_line(piece.content, replace(room, language=piece.language))),))
                elif isinstance(piece, Strong):
                    done.append((replace(piece, content=_line(piece.content, room)),))
    return tuple(piece for each in done for piece in each)


def _words(pieces: Iterator[Text | Measure]) -> Iterator[_Word]:
    """What stands between spaces; a space at either end of the line is kept as
    an empty word."""
    word: list[Text | Measure] = []
    for piece in pieces:
        if isinstance(piece, Measure):
            word.append(piece)
            continue
        first, *others = piece.words.split(" ")
        word += [Text(first)] if first else []
        for other in others:
            yield tuple(word)
            word = [Text(other)] if other else []
    yield tuple(word)


def _runs(words: tuple[_Word, ...], room: _Room) -> list[list[_Word]]:
    """Words that stay on one line, put together while they fit."""
    runs: list[list[_Word]] = []
    for word in words:
        if runs and _bound([plain(each) for each in runs[-1]], plain(word)) and room.holds(_said([*runs[-1], word]), _SHARE):
            runs[-1].append(word)
        else:
            runs.append([word])
    return runs


def _bound(before: list[str], word: str) -> bool:
    """Whether a word belongs on the line of the words before it.

    A number with its word, a number to a number, and French signs of
    punctuation with what they stand beside.
    """
    last = before[-1]
    if not last or not word:
        return False
    if word in (":", ";", "!", "?", "\u00bb", "%") or last == "\u00ab":
        return True
    between = last.isalpha() and len(last) <= 3 and len(before) > 1 and before[-2][-1:].isnumeric()
    return (last[-1].isnumeric() and word[0].isalpha()) or (between and word[0].isnumeric())


def _parts(runs: list[list[_Word]], room: _Room) -> list[list[_Word]]:
    """Runs up to each comma as one, where they fit in a line."""
    parts: list[list[list[_Word]]] = [[]]
    for run in runs:
        parts[-1].append(run)
        if _said(run).endswith((",", ":")):
            parts.append([])
    whole = ([word for run in part for word in run] for part in parts if part)
    return [run for part, words in zip(parts, whole, strict=False) for run in ([words] if room.holds(_said(words)) else part)]


def _said(run: list[_Word]) -> str:
    return " ".join(plain(word) for word in run)


def _set(run: list[_Word], room: _Room) -> Iterator[Text | Measure]:
    """A run as a bond, where it has something to bind; a lone word that is
    wider than its line with places to divide it."""
    short = _said(run)
    if not room.holds(short):
        for word in run:
            yield from (Text(_divided(piece.words, room)) if isinstance(piece, Text) else piece for piece in word)
    elif len(run) == 1 and not _COMPOUND.search("".join(piece.words for piece in run[0] if isinstance(piece, Text))):
        yield from run[0]
    else:
        long = " ".join(plain(word, long=True) for word in run)
        # The signs around a bond hang on it without being in it.
        before, _, after = _EDGES.match(short).groups("")  # type: ignore[union-attr]
        if not (long.startswith(before) and long.endswith(after)):
            before = after = ""
        yield Text(before)
        yield Measure(short[len(before) : len(short) - len(after)], long[len(before) : len(long) - len(after)])
        yield Text(after)


def _joined(pieces: list[Text | Measure]) -> Iterator[Text | Measure]:
    """Neighbouring texts as one, empty ones left out."""
    for is_text, group in groupby(pieces, lambda piece: isinstance(piece, Text)):
        if is_text:
            words = "".join(piece.words for piece in group if isinstance(piece, Text))
            yield from [Text(words)] * bool(words)
        else:
            yield from group


def _divided(word: str, room: _Room) -> str:
    """A word with soft hyphens between its syllables, and between letters
    where a syllable is wider than the line or the language is not known."""
    pieces = []
    for piece in _syllables(word, room.language):
        if room.holds(piece + "-"):
            pieces.append(piece)
        else:
            pieces += [piece[:_LEAST], *piece[_LEAST:-_LEAST], piece[-_LEAST:]] if len(piece) > 2 * _LEAST else [piece]
    return SOFT_HYPHEN.join(pieces)


def _syllables(word: str, language: str) -> list[str]:
    tag = pyphen.language_fallback(language) if language else None
    return _hyphens(tag).inserted(word, SOFT_HYPHEN).split(SOFT_HYPHEN) if tag else [word]


@lru_cache(maxsize=4)
def _hyphens(tag: str) -> pyphen.Pyphen:
    return pyphen.Pyphen(lang=tag, left=_LEAST, right=_LEAST)
