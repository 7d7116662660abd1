"""A Handout tree as a row of pieces to be set, one after the other, on pages.

Which cell a line starts in and where blank lines stand follows *Braille
Formats: Principles of Print-to-Braille Transcription* (Braille Authority of
North America, 2016) as far as it could be read; where it leaves a choice, the
choice is named beside it.  "3-1" means: first line in cell 3, the lines below
in cell 1.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache, lru_cache
from pathlib import Path
from typing import TypeAlias

import yaml

from handouts.braille.codes import Code
from handouts.braille.lines import Segment, segments, wrap
from handouts.braille.pages import Paper
from handouts.braille.translation import BLANK, Word, words
from handouts.handout import (
    Block,
    Caution,
    Chart,
    Dose,
    Facts,
    Handout,
    Heading,
    Inline,
    Item,
    Line,
    LogEntry,
    LogField,
    LogSheet,
    Paragraph,
    Points,
    Section,
    Steps,
    Table,
    Text,
    plain,
)

# Blank cells at each side of a centred line, at the least.
CENTRE_MARGIN = 3
# Lines that say what goes on at the top of a page.
LINES_CONTINUED = 2
# Cells of a page number in a contents list: the number sign and three digits.
LONGEST_NUMBER = 4
# Cells that deep lists leave for their words.
NARROWEST = 12
# Lines of what follows that stay on the page of a heading.
KEPT_BELOW_HEADING = 2
# A field of the log sheet leaves this much of its line free, or a line below.
ROOM_TO_WRITE = {"weight": 8, "count": 14, "time": 8, "scale": 4, "yes-no": 4, "words": 24}


@dataclass(frozen=True)
class Continued:
    """What stands at the top of a page in the middle of a box or a table:
    a line in cell 5, and for a table its column heads."""

    line: tuple[Segment, ...]
    heads: tuple[Piece, ...] = ()


@dataclass(frozen=True)
class Head:
    """What a heading says, for the contents list and for navigation."""

    level: int
    print: str
    words: tuple[Word, ...]
    anchor: str


@dataclass(frozen=True)
class Piece:
    """What is set as one: a paragraph, a heading, an item, a row of a table.

    segments: its words.  first, runover: blank cells at the left.
    centred: each line in the middle, `first` and `runover` then 0.
    before, after: whether a blank line stands there; None below a heading
        that keeps its text close (then no blank line, whatever follows).
    keeps: lines of the next pieces that must stand on the same page.
    unbroken: never divided between pages.
    opening, closing: sign of which a full line stands above or below.
    room: empty lines below, to write on.
    fixed: cells of a line that is set already; `segments` say its words.
    off_number_line: not beside a page number.
    continued: set in a box or table; what a new page in its midst begins with.
    heading: what it says, where it is a heading of the tree.
    refers: for an entry of a contents list, the anchor of its heading.
    limit: for such an entry, the cells that its words may fill.
    new_page: begins a page, as a volume does; on a right-hand page where both
        sides of the sheet are embossed.
    role: as in `PageLine`.
    """

    segments: tuple[Segment, ...] = ()
    first: int = 0
    runover: int = 0
    centred: bool = False
    before: bool = False
    after: bool | None = False
    keeps: int = 0
    unbroken: bool = False
    opening: str = ""
    closing: str = ""
    room: int = 0
    fixed: str = ""
    off_number_line: bool = False
    continued: Continued | None = None
    heading: Head | None = None
    refers: str = ""
    limit: int = 0
    new_page: bool = False
    role: str = "text"

    @property
    def is_heading(self) -> bool:
        """Whether it reads as a heading: centred, or close above its text."""
        return self.centred or self.after is None


Pieces: TypeAlias = tuple[Piece, ...]


@cache
def _all_words() -> dict[str, dict[str, str]]:
    source = Path(__file__).parents[1] / "languages" / "braille.yaml"
    table: dict[str, dict[str, str]] = yaml.safe_load(source.read_text("utf-8"))
    return table


def layout_words(language: str) -> dict[str, str]:
    """The words that layout adds to a page; English for a language without any."""
    table = _all_words()
    return table.get(language.split("-")[0], table["en"])


def flow(handout: Handout, code: Code, paper: Paper) -> Pieces:
    """The pieces of a handout, in reading order, its title first.

    Raises UnknownCharacter for a character that the code has no braille for.
    """
    setter = _Setter(code, paper.width - paper.margin, layout_words(handout.language))
    title = setter.heading(Heading(1, handout.title, "title"))
    return (title, *setter.blocks(handout.blocks))


@lru_cache(maxsize=1024)
def _marker(number: int, code: Code) -> tuple[Word, ...]:
    """The number before a step."""
    return words((Text(f"{number}."),), code)


@dataclass(frozen=True)
class _Setter:
    """Sets blocks in one code for lines of one width."""

    code: Code
    width: int
    words: dict[str, str]

    # --- words ---------------------------------------------------------------

    def _segments(self, content: Line, indent: int, emphasis: bool = True) -> tuple[Segment, ...]:
        return segments(words(content, self.code, emphasis), self.width - indent, self.code)

    def _continued(self, title: Line) -> tuple[Segment, ...]:
        """The line that goes on with a box or table; a title that is too long
        for a line or two is left out."""
        line = self._segments(self.phrase("continued", title=title), 4, emphasis=False)
        if title and len(wrap(line, 4, 4, lambda _: self.width, self.width)) <= LINES_CONTINUED:
            return line
        return self._segments((Text(self.words["continued_alone"]),), 4)

    def _indent(self, cells: int) -> int:
        """An indent that leaves room for words, however deep a list goes."""
        return min(cells, self.width - NARROWEST)

    def phrase(self, key: str, **values: Line) -> Line:
        """A phrase of layout with lines set in for its names."""
        line: list[Inline] = []
        rest = self.words[key]
        while rest:
            text, brace, tail = rest.partition("{")
            if text:
                line.append(Text(text))
            if not brace:
                break
            name, _, rest = tail.partition("}")
            line.extend(values[name])
        return tuple(line)

    # --- blocks --------------------------------------------------------------

    def blocks(self, blocks: tuple[Block, ...]) -> Pieces:
        return tuple(piece for block in blocks for piece in self._block(block))

    def _block(self, block: Block) -> Pieces:
        if isinstance(block, Section):
            return (self.heading(block.heading), *self.blocks(block.blocks))
        if isinstance(block, Heading):
            return (self.heading(block),)
        if isinstance(block, Paragraph):
            return (Piece(self._segments(block.content, 2), first=2),)
        if isinstance(block, Dose):
            # Found at once by hand: a blocked paragraph, 1-1, between blank lines.
            return (Piece(self._segments(block.content, 0), before=True, after=True),)
        if isinstance(block, Steps | Points):
            return self._list(block)
        if isinstance(block, Facts):
            return _as_list(
                tuple(
                    Piece(self._segments(self.phrase("fact", label=fact.label, value=fact.value), 2), runover=2)
                    for fact in block.facts
                )
            )
        if isinstance(block, Caution):
            return self._box(block)
        if isinstance(block, Table):
            return self._table(block)
        if isinstance(block, Chart):
            return self._chart(block)
        return self._log(block)

    def heading(self, heading: Heading) -> Piece:
        """Level 1 (the title) and 2 are centred, 3 in cell 5, 4 in cell 7.

        Emphasis is dropped in headings.
        """
        its_words = words(heading.content, self.code, emphasis=False)
        told = Head(heading.level, plain(heading.content), its_words, heading.anchor)
        if heading.level <= 2:
            return Piece(
                segments(its_words, self.width - 2 * CENTRE_MARGIN, self.code),
                centred=True,
                before=True,
                after=True,
                keeps=KEPT_BELOW_HEADING,
                heading=told,
                unbroken=True,
                role="heading",
            )
        indent = 4 if heading.level == 3 else 6
        return Piece(
            segments(its_words, self.width - indent, self.code),
            first=indent,
            runover=indent,
            before=True,
            after=None,
            keeps=KEPT_BELOW_HEADING,
            heading=told,
            unbroken=True,
            role="heading",
        )

    def _list(self, block: Steps | Points) -> Pieces:
        return _as_list(self._items(block, 0, 2 * _depth(block)))

    def _items(self, block: Steps | Points, level: int, runover: int) -> Pieces:
        """A simple list is 1-3, one of two levels 1-5 and 3-5, and so on."""
        pieces: list[Piece] = []
        for number, item in enumerate(block.items, getattr(block, "first", 1)):
            marker = _marker(number, self.code) if isinstance(block, Steps) else ()
            content = (*marker, *words(item.content, self.code))
            pieces.append(
                Piece(
                    segments(content, self.width - self._indent(runover), self.code),
                    self._indent(2 * level),
                    self._indent(runover),
                )
            )
            for nested in item.blocks:
                if isinstance(nested, Steps | Points):
                    pieces += self._items(nested, level + 1, runover)
                elif isinstance(nested, Paragraph):
                    below = self._indent(runover)
                    pieces.append(Piece(self._segments(nested.content, below), self._indent(2 * (level + 1)), below))
                else:
                    pieces += self._block(nested)
        return tuple(pieces)

    def _box(self, block: Caution) -> Pieces:
        """A line of 7s above, a line of gs below, no blank line at their inside."""
        title = Piece(
            self._segments(block.title, 4, emphasis=False),
            first=4,
            runover=4,
            after=None,
            keeps=KEPT_BELOW_HEADING,
            unbroken=True,
            role="heading",
        )
        inner = (title, *self.blocks(block.blocks))
        continued = Continued(self._continued(block.title))
        return _framed(tuple(replace(piece, continued=piece.continued or continued) for piece in inner))

    # --- tables --------------------------------------------------------------

    def _table(self, table: Table) -> Pieces:
        caption = Piece(
            self._segments(table.caption, 4, emphasis=False),
            first=4,
            runover=4,
            before=True,
            after=None,
            keeps=KEPT_BELOW_HEADING,
            unbroken=True,
            role="heading",
        )
        if not table.columns or not table.rows:
            return (caption,) if table.caption else ()
        columns = self._columns(table)
        return (caption, *(columns or self._listed(table)))

    def _columns(self, table: Table) -> Pieces:
        """The table side by side, () if it is too wide: two blank cells between
        columns, and under each head a line of dots 25 after one of dot 5."""
        grid = [
            [segments(words(cell, self.code), self.width, self.code) for cell in row]
            for row in (table.columns, *table.rows)
        ]
        sizes = [max(2, *(len(_set(row[column])) for row in grid)) for column in range(len(table.columns))]
        if sum(sizes) + 2 * (len(sizes) - 1) > self.width:
            return ()
        gap = BLANK * 2

        def set_row(cells: list[str]) -> str:
            return gap.join(cell.ljust(size, BLANK) for cell, size in zip(cells, sizes, strict=True)).rstrip(BLANK)

        def whole(row: list[tuple[Segment, ...]]) -> tuple[Segment, ...]:
            return tuple(segment for cell in row for segment in cell)

        head, *rows = grid
        heads = (
            Piece(whole(head), fixed=set_row([_set(cell) for cell in head]), keeps=2),
            Piece(fixed=set_row(["⠐" + "⠒" * (size - 1) for size in sizes]), keeps=1, role="rule"),
        )
        continued = Continued(self._continued(table.caption), heads)
        body = [Piece(whole(row), fixed=set_row([_set(cell) for cell in row]), continued=continued) for row in rows]
        return (*heads, *body[:-1], replace(body[-1], after=True))

    def _listed(self, table: Table) -> Pieces:
        """The table as a list: a row's name in cell 5, below it each column's
        head and value, a blank line between rows; a note says so."""
        note_words = words((Text(self.words["listed_table"]),), self.code)
        opening, closing = _NOTE_SIGNS.get(self.code.name, ("", ""))
        if opening:
            note_words = (
                note_words[0]._replace(cells=opening + note_words[0].cells),
                *note_words[1:-1],
                note_words[-1]._replace(cells=note_words[-1].cells + closing),
            )
        note = Piece(segments(note_words, self.width - 6, self.code), first=6, runover=4, role="note")
        continued = Continued(self._continued(table.caption))
        pieces: list[Piece] = [note]
        for row in table.rows:
            pieces.append(
                Piece(
                    self._segments(row[0], 4),
                    first=4,
                    runover=4,
                    before=True,
                    after=None,
                    keeps=1,
                    unbroken=True,
                    continued=continued,
                )
            )
            for head, value in zip(table.columns[1:], row[1:], strict=True):
                line = self.phrase("listed_row", column=head, value=value)
                pieces.append(Piece(self._segments(line, 2), runover=2, continued=continued))
        pieces[-1] = replace(pieces[-1], after=True)
        return tuple(pieces)

    def _chart(self, chart: Chart) -> Pieces:
        """Each value in a line of words, and below it a bar for the finger: a
        line of 7s from cell 1, as long as the value is large."""
        title = Piece(
            self._segments(chart.title, 4, emphasis=False), first=4, runover=4, before=True, after=None,
            keeps=KEPT_BELOW_HEADING, unbroken=True, role="heading",
        )  # fmt: skip
        most = max(bar.value for bar in chart.bars)
        pieces: list[Piece] = [title, Piece(self._segments(chart.words, 2), first=2)]
        for bar in chart.bars:
            told = self.phrase("fact", label=bar.label, value=bar.told)
            cells = round(bar.value / most * self.width) if most else 0
            pieces.append(Piece(self._segments(told, 2), runover=2, keeps=1 if cells else 0))
            if cells:
                pieces.append(Piece(fixed=_BAR * cells, role="rule"))
        return (*pieces[:2], *_as_list(tuple(pieces[2:])))

    # --- log sheet -----------------------------------------------------------

    def _log(self, sheet: LogSheet) -> Pieces:
        return tuple(piece for entry in sheet.entries for piece in self._log_entry(entry))

    def _log_entry(self, entry: LogEntry) -> Pieces:
        """An exercise in cell 5, below it a short line for each thing to write,
        with room beside it or an empty line below it."""
        title = Piece(
            self._segments(entry.title, 4, emphasis=False),
            first=4,
            runover=4,
            before=True,
            after=None,
            keeps=KEPT_BELOW_HEADING,
            unbroken=True,
            role="heading",
        )
        fields = [self._log_field(field) for field in entry.fields]
        if not fields:
            return (replace(title, after=False, keeps=0, role="text"),)
        return (title, *fields[:-1], replace(fields[-1], after=True))

    def _log_field(self, field: LogField) -> Piece:
        if field.target:
            line = self.phrase("field_target", label=field.label, target=field.target)
        elif field.unit:
            line = self.phrase("field_unit", label=field.label, unit=(Text(field.unit),))
        else:
            line = self.phrase("field", label=field.label)
        content = self._segments(line, 2)
        used = sum(len(segment.cells) + (not segment.glued) for segment in content)
        free = self.width - used
        return Piece(content, runover=2, unbroken=True, room=0 if free > ROOM_TO_WRITE[field.kind] else 1)


# Opening and closing transcriber's note indicators: UEB 3.27.  The other codes
# have the note's own first words say what it is.
_NOTE_SIGNS = {"ueb": ("⠈⠨⠣", "⠈⠨⠜")}

_BOX_TOP, _BOX_BOTTOM = "⠶", "⠛"
_BAR = "⠶"


def _set(cell: tuple[Segment, ...]) -> str:
    """A cell of a table in one line."""
    return "".join((BLANK if place and not segment.glued else "") + segment.cells for place, segment in enumerate(cell))


def _as_list(pieces: Pieces) -> Pieces:
    """A list stands between blank lines, and at least two of its items, or
    lines, stand on the page where it starts."""
    if not pieces:
        return ()
    if len(pieces) == 1:
        return (replace(pieces[0], before=True, after=True),)
    return (
        replace(pieces[0], before=True, keeps=1),
        *pieces[1:-1],
        replace(pieces[-1], after=True),
    )


def _framed(pieces: Pieces) -> Pieces:
    first = replace(pieces[0], opening=_BOX_TOP, before=True)
    if len(pieces) == 1:
        return (replace(first, closing=_BOX_BOTTOM, after=True, keeps=0),)
    last = replace(pieces[-1], closing=_BOX_BOTTOM, after=True)
    return (first, *pieces[1:-1], last)


def _depth(block: Steps | Points | Item) -> int:
    """Levels of a list, itself counted."""
    if isinstance(block, Item):
        return max((_depth(nested) for nested in block.blocks if isinstance(nested, Steps | Points)), default=0)
    return 1 + max((_depth(item) for item in block.items), default=0)


def contents(pieces: Pieces, code: Code, paper: Paper, language: str) -> Pieces:
    """A contents list of the level 2 headings among `pieces`, () without any."""
    width = paper.width - paper.margin
    setter = _Setter(code, width, layout_words(language))
    title = setter.heading(Heading(2, (Text(setter.words["contents"]),), "contents"))
    # A blank, two guide dots, a blank and the page number stand after an entry.
    limit = width - 4 - LONGEST_NUMBER
    entries = tuple(
        Piece(
            segments(piece.heading.words, limit - 2, code),
            runover=2,
            limit=limit,
            refers=piece.heading.anchor,
            off_number_line=True,
            role="contents",
        )
        for piece in pieces
        if piece.heading and piece.heading.level == 2
    )
    return (replace(title, heading=None, role="contents"), *_as_list(entries)) if entries else ()


def volume_title(number: int, count: int, title: Head, code: Code, paper: Paper, language: str) -> Pieces:
    """The lines that a volume begins with: the sheet's title, and which volume
    of how many it is.  The first volume has its title already."""
    setter = _Setter(code, paper.width - paper.margin, layout_words(language))
    told = setter.phrase("volume", number=(Text(str(number)),), count=(Text(str(count)),))
    which = replace(setter.heading(Heading(2, told, "")), heading=None, role="volume")
    if number == 1:
        return (which,)
    again = Piece(
        segments(title.words, paper.width - paper.margin - 2 * CENTRE_MARGIN, code),
        centred=True, before=True, after=True, keeps=1, unbroken=True, role="volume", new_page=True,
    )  # fmt: skip
    return (again, which)
