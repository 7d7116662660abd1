"""From a Handout tree to pages of cells.

`flow` says what is set and how each piece lies; this module puts the pieces
on pages: running head, page numbers, blank lines, page breaks, contents list.
Rules and their sources are named in `flow` and beside each step here.
"""

from __future__ import annotations

import hashlib
from dataclasses import dataclass, field, replace
from functools import cached_property, lru_cache
from typing import NamedTuple

from handouts.braille.codes import Code
from handouts.braille.flow import CENTRE_MARGIN, Head, Piece, Pieces, contents, flow, volume_title
from handouts.braille.lines import Row, Segment, wrap
from handouts.braille.pages import Page, PageLine, Paper, Place, Volume
from handouts.braille.translation import BLANK, words
from handouts.handout import Caution, Handout, Text, plain

# Blank cells between text and a page number on the same line.
BESIDE_NUMBER = 3
# A sheet of more pages than this begins with a contents list.
PAGES_WITHOUT_CONTENTS = 2
# A piece of so few lines is never divided; of a longer one at least two lines
# stand on either side of the page break.
UNDIVIDED = 3
DIVIDED_AT_LEAST = 2
# Lines that a "continued" line and repeated column heads leave for the text.
LEFT_FOR_TEXT = 3


def _before_contents(handout: Handout, code: Code, paper: Paper) -> int:
    """How many pieces stand before the contents list: the title, and a warning
    that begins the sheet, since when to stop belongs on the first page."""
    warned = handout.blocks[:1] if handout.blocks and isinstance(handout.blocks[0], Caution) else ()
    return len(flow(replace(handout, blocks=warned), code, paper))


def lay_out(handout: Handout, code: Code, paper: Paper) -> Volume:
    """Lay a handout out on pages.

    Raises UnknownCharacter for a character that the code has no braille for.
    """
    pieces = flow(handout, code, paper)
    frame = _Frame(paper, code, _running_head(handout, code, paper))
    laid = _Pages(frame)
    laid.fill(pieces, PAGES_WITHOUT_CONTENTS)
    if len(laid.pages) > PAGES_WITHOUT_CONTENTS:
        first = _before_contents(handout, code, paper)
        pieces = (*pieces[:first], *contents(pieces, code, paper, handout.language), *pieces[first:])
        laid = _Pages(frame)
        laid.fill(pieces)
        if paper.length and paper.volume_pages and len(laid.pages) > paper.volume_pages:
            pieces = _in_volumes(pieces, laid, handout.language)
            laid = _Pages(frame)
            laid.fill(pieces)
    pages = tuple(
        frame.finished(number, _with_numbers(lines, laid, frame)) for number, lines in enumerate(laid.pages, 1)
    )
    said = "\n".join(line.cells for page in pages for line in page.lines)
    return Volume(
        paper,
        pages,
        plain(handout.title),
        handout.language,
        handout.client_code,
        handout.date,
        identifier=hashlib.sha256(f"{paper}{code}{said}".encode()).hexdigest()[:32],
        headings=tuple(Place(head.level, head.print, page, line) for head, page, line in laid.heads),
        parts=(1, *laid.parts),
    )


def _in_volumes(pieces: Pieces, laid: _Pages, language: str) -> Pieces:
    """The pieces with volume titles: a volume begins with a section, and holds
    as many whole sections as its pages allow."""
    frame = laid.frame
    sections = [(head.anchor, page) for head, page, _ in laid.heads if head.level == 2]
    ends = [*(page for _, page in sections[1:]), len(laid.pages)][: len(sections)]
    begins: list[str] = []
    first_page = 1
    for (anchor, page), end in zip(sections, ends, strict=True):
        if end - first_page + 1 > frame.paper.volume_pages and page > first_page:
            begins.append(anchor)
            first_page = page
    count = len(begins) + 1
    title = pieces[0].heading
    if count == 1 or title is None:
        return pieces
    split: list[Piece] = []
    number = 1
    for index, piece in enumerate(pieces):
        if piece.heading and piece.heading.anchor in begins:
            number += 1
            split += volume_title(number, count, title, frame.code, frame.paper, language)
        split.append(piece)
        if index == 0:
            split += volume_title(1, count, title, frame.code, frame.paper, language)
    return tuple(split)


@lru_cache(maxsize=4096)
def _number(number: int, code: Code) -> str:
    """A number in the code's cells."""
    return "".join(word.cells for word in words((Text(str(number)),), code))


def _running_head(handout: Handout, code: Code, paper: Paper) -> PageLine:
    """The line that brings a dropped page home.  One that is too long is
    replaced by the codes alone, and cut at a blank at last."""
    if not paper.running_head or not paper.length:
        return PageLine("")
    number = 5 + BESIDE_NUMBER if paper.number.startswith("top") else 0
    room = paper.width - paper.margin - 2 * max(CENTRE_MARGIN, number)
    short = f"{handout.client_code} {handout.plan_code} {handout.version}"
    for text in (handout.running_head, short):
        its_words = list(words((Text(text),), code, emphasis=False))
        cells = BLANK.join(word.cells for word in its_words)
        if len(cells) <= room:
            break
    while len(cells) > room and len(its_words) > 1:
        its_words.pop()
        cells = BLANK.join(word.cells for word in its_words)
    said = tuple(Segment(word.cells, word.print) for word in its_words)
    return PageLine(cells[:room], said, "head")


class _Line(NamedTuple):
    """A line on its way: the entry of a contents list still lacks its number."""

    row: Row
    role: str = "text"
    refers: str = ""


@dataclass(frozen=True)
class _Frame:
    """What is the same on every page: head, numbers and the lines between."""

    paper: Paper
    code: Code
    head: PageLine

    @cached_property
    def width(self) -> int:
        """Cells that text may fill."""
        return self.paper.width - self.paper.margin

    @cached_property
    def top(self) -> int:
        """Lines above the text."""
        number_on_top = self.paper.number.startswith("top") and bool(self.paper.length)
        return 1 if self.head.cells or number_on_top else 0

    @cached_property
    def last(self) -> int:
        """The index of the line after the last one."""
        return self.paper.length or 1_000_000

    @cached_property
    def number_line(self) -> int:
        """The index of the line that text shares with the page number, -1 if none."""
        return self.last - 1 if self.paper.length and self.paper.number.startswith("bottom") else -1

    def number_cells(self, number: int) -> str:
        if not self.paper.length:
            return ""
        return _number(number, self.code)

    def width_of(self, line: int, page: int) -> int:
        """Cells that text may fill on one line of one page."""
        if line == self.number_line:
            return self.width - BESIDE_NUMBER - len(self.number_cells(page))
        return self.width

    def finished(self, number: int, lines: list[PageLine]) -> Page:
        """A page with its head, its number and its margin."""
        its_number = self.number_cells(number)
        whole = [PageLine("", role="blank")] * self.top + lines
        if self.head.cells:
            whole[0] = replace(self.head, cells=_in_the_middle(self.head.cells, self.width))
        if its_number:
            place = 0 if self.top and self.paper.number.startswith("top") else self.last - 1
            whole += [PageLine("", role="blank")] * (place + 1 - len(whole))
            line = whole[place]
            cells = line.cells.ljust(self.width - len(its_number), BLANK) + its_number
            whole[place] = replace(line, cells=cells, role="number" if line.role == "blank" else line.role)
        # On paper that is embossed on both sides, an even page is bound at its right.
        margin = 0 if self.paper.both_sides and number % 2 == 0 else self.paper.margin
        if margin:
            whole = [replace(line, cells=BLANK * margin + line.cells if line.cells else "") for line in whole]
        return Page(number, tuple(whole))


def _in_the_middle(cells: str, width: int) -> str:
    return BLANK * ((width - len(cells)) // 2) + cells


@dataclass
class _Pages:
    """Pages being filled, from top to bottom.

    pages: finished lines below the head, a list a page.
    heads: the headings met, each with its page and line (from 1).
    parts: numbers of the pages that a further volume begins on.
    """

    frame: _Frame
    pages: list[list[_Line]] = field(default_factory=lambda: [[]])
    heads: list[tuple[Head, int, int]] = field(default_factory=list)
    parts: list[int] = field(default_factory=list)
    # The lines of pieces away from a page number, by the piece's id; the piece
    # is kept beside them so that its id stays its own.
    _wide: dict[int, tuple[Piece, list[_Line]]] = field(default_factory=dict)

    def fill(self, pieces: Pieces, enough: int = 0) -> None:
        """Set pieces on pages; stop when there are more pages than `enough`,
        if that is not 0."""
        for index in range(len(pieces)):
            self._place(pieces, index)
            if enough and len(self.pages) > enough:
                return

    @cached_property
    def pages_of(self) -> dict[str, int]:
        """Anchor of each heading to the number of its page."""
        return {head.anchor: page for head, page, _ in self.heads}

    # --- where we are --------------------------------------------------------

    @property
    def _page(self) -> int:
        return len(self.pages)

    @property
    def _line(self) -> int:
        """The next line, counted from 0 at the top of the paper."""
        return self.frame.top + len(self.pages[-1])

    def _gap(self, pieces: Pieces, index: int) -> int:
        """Blank lines before a piece in the midst of a page."""
        if index == 0:
            return 0
        before = pieces[index - 1]
        piece = pieces[index]
        if before.after is None and not piece.opening:
            return 0
        return 1 if before.after or piece.before else 0

    def _gap_on_top(self, pieces: Pieces, index: int, ended_low: bool) -> int:
        """Blank lines before a piece at the top of a page.

        Below a running head, headings and box lines start on line 3.  Any
        blank line that is asked for is kept when the page before ended on one
        of its last two lines, since nothing else would show it.
        """
        piece = pieces[index]
        if self.frame.head.cells and (piece.is_heading or piece.opening):
            return 1
        return self._gap(pieces, index) if ended_low else 0

    def _last(self, piece: Piece) -> int:
        """The index of the line after the last one that a piece may stand on."""
        shared = piece.off_number_line and self.frame.number_line >= 0
        return self.frame.last - 1 if shared else self.frame.last

    # --- setting -------------------------------------------------------------

    def _rows(self, piece: Piece, line: int, page: int) -> list[_Line]:
        """The lines of a piece that starts on a line; those beyond the end of
        the page as if the page went on."""
        number_line = self.frame.number_line
        known = self._wide.get(id(piece))
        if known is None:
            # Most pieces stand above the line with the page number: -1 is far from it.
            known = self._wide[id(piece)] = (piece, self._new_rows(piece, -1_000_000, page))
        rows = known[1]
        if number_line < 0 or line > number_line or line + len(rows) <= number_line:
            return rows
        return self._new_rows(piece, line, page)

    def _new_rows(self, piece: Piece, line: int, page: int) -> list[_Line]:
        frame = self.frame

        def width(offset: int) -> int:
            place = line + offset + (1 if piece.opening else 0)
            return frame.width_of(place, page) if place < frame.last else frame.width

        if piece.fixed:
            lines = [_Line(Row(piece.fixed, piece.segments, 0), piece.role)]
        elif piece.centred:
            rows = wrap(
                piece.segments,
                0,
                0,
                lambda offset: min(frame.width - 2 * CENTRE_MARGIN, width(offset) - CENTRE_MARGIN),
                frame.width - 2 * CENTRE_MARGIN,
            )
            lines = [_Line(row._replace(cells=_in_the_middle(row.cells, frame.width)), piece.role) for row in rows]
        elif piece.refers:
            rows = wrap(piece.segments, piece.first, piece.runover, lambda _: piece.limit, piece.limit)
            lines = [_Line(row, piece.role) for row in rows]
            lines[-1] = lines[-1]._replace(refers=piece.refers)
        else:
            rows = wrap(piece.segments, piece.first, piece.runover, width, frame.width)
            lines = [_Line(row, piece.role) for row in rows]
        if piece.opening:
            lines.insert(0, _Line(Row(piece.opening * frame.width_of(line, page), (), 0), "rule"))
        if piece.closing:
            place = line + len(lines)
            its_width = frame.width_of(place, page) if place < frame.last else frame.width
            taken = lines[-1].row.taken if lines else 0
            lines.append(_Line(Row(piece.closing * its_width, (), taken), "rule"))
        blank = Row("", (), lines[-1].row.taken if lines else 0)
        lines += [_Line(blank, "room")] * piece.room
        return lines

    def _fits(self, pieces: Pieces, index: int, line: int) -> bool:
        """Whether a piece can start on a line of this page, with all that must
        stay beside it."""
        frame = self.frame
        kept = 0
        while True:
            piece = pieces[index]
            rows = self._rows(piece, line, self._page)
            beside = frame.number_line - line
            if 0 <= beside < len(rows) and len(rows[beside].row.cells) > frame.width_of(frame.number_line, self._page):
                return False
            # A long first item of a list does not hold the second one to it.
            keeps = piece.keeps if piece.unbroken or len(rows) <= UNDIVIDED else 0
            if line + len(rows) > self._last(piece):
                return self._divided(piece, rows, line) > 0
            kept = max(keeps, kept - len(rows))
            index += 1
            if kept <= 0 or index == len(pieces):
                return True
            line += len(rows) + self._gap(pieces, index)

    def _divided(self, piece: Piece, rows: list[_Line], line: int) -> int:
        """How many of a piece's lines stay on this page when the others go to
        the next; 0 if it must not be divided here."""
        if piece.unbroken or piece.fixed or sum(1 for row in rows if row.row.cells) <= UNDIVIDED:
            return 0
        room = min(self._last(piece) - line, len(rows) - 1)
        for here in range(room, 0, -1):
            above = sum(1 for row in rows[:here] if row.row.cells) - bool(piece.opening)
            if above < DIVIDED_AT_LEAST:
                return 0
            rest = self._rows(_rest(piece, rows[here - 1].row.taken), self.frame.top, self._page + 1)
            if sum(1 for row in rest if row.row.cells) - bool(piece.closing) >= DIVIDED_AT_LEAST:
                return here
        return 0

    def _new_page(self, piece: Piece | None) -> None:
        """Begin a page; in the midst of a box or table, say what goes on."""
        self.pages.append([])
        continued = piece.continued if piece else None
        if continued is None:
            return
        said = Piece(continued.line, first=4, runover=4)
        lines = [_Line(Row("", (), 0), "blank")] if self.frame.head.cells else []
        for part in (said, *continued.heads):
            lines += [line._replace(role="continued") for line in self._rows(part, self.frame.top, self._page)]
        # On a very short page the text itself goes first.
        if self.frame.top + len(lines) + LEFT_FOR_TEXT <= self.frame.last:
            self.pages[-1] += lines

    def _blank(self) -> None:
        self.pages[-1].append(_Line(Row("", (), 0), "blank"))

    def _ended_low(self) -> bool:
        """Whether the page is filled to one of its last two lines."""
        return self._line >= self.frame.last - 1

    def _place(self, pieces: Pieces, index: int) -> None:
        piece = pieces[index]
        inside = piece.continued is not None and index > 0 and _same_frame(pieces[index - 1], piece)
        if piece.new_page:
            self._begin_part()
        gap = self._gap(pieces, index) if self.pages[-1] else self._gap_on_top(pieces, index, False)
        if self.pages[-1] and not self._fits(pieces, index, self._line + gap):
            ended_low = self._ended_low()
            self._new_page(piece if inside else None)
            gap = 0 if self.pages[-1] else self._gap_on_top(pieces, index, ended_low)
        for _ in range(gap):
            self._blank()
        if piece.heading:
            self.heads.append((piece.heading, self._page, self._line + 1))
        self._set(piece)

    def _begin_part(self) -> None:
        """Begin the page of a new volume: a right-hand one on both-sided paper."""
        self.pages.append([])
        if self.frame.paper.both_sides and self._page % 2 == 0:
            self.pages.append([])
        self.parts.append(self._page)

    def _set(self, piece: Piece) -> None:
        """Set a piece from here on, over as many pages as it takes."""
        while True:
            rows = self._rows(piece, self._line, self._page)
            room = max(1, self._last(piece) - self._line)
            if len(rows) <= room:
                self.pages[-1] += rows
                return
            # Nothing else is possible where a rule cannot be kept on a whole page.
            here = self._divided(piece, rows, self._line) or room
            self.pages[-1] += rows[:here]
            piece = _rest(piece, rows[here - 1].row.taken)
            self._new_page(piece)


def _rest(piece: Piece, taken: int) -> Piece:
    """What is left of a piece after its first segments."""
    return replace(piece, segments=piece.segments[taken:], first=piece.runover, opening="")


def _same_frame(before: Piece, piece: Piece) -> bool:
    """Whether two pieces stand in the same box or table."""
    return before.continued is piece.continued and not piece.opening


def _with_numbers(lines: list[_Line], laid: _Pages, frame: _Frame) -> list[PageLine]:
    """Lines of a page, entries of a contents list led to their page numbers."""
    finished = []
    for line in lines:
        cells, role = line.row.cells, line.role
        if line.refers:
            number = frame.number_cells(laid.pages_of[line.refers])
            free = frame.width - len(cells) - len(number)
            # One blank at each side of the dots, and never fewer than two dots.
            dots = GUIDE_DOT.get(frame.code.name, "⠐") * (free - 2) if free >= 4 else BLANK * (free - 2)
            cells = cells + BLANK + dots + BLANK + number
        if not cells and role != "room":
            role = "blank"
        finished.append(PageLine(cells, line.row.words, role))
    return finished


# Dot 5 in UEB; French and the others lead with dot 3 (the braille edition of
# the Code braille français uniformisé does).
GUIDE_DOT = {"ueb": "⠐", "fr": "⠄", "es": "⠄", "de": "⠄"}
