"""Pages of cells: what the layout makes and every braille file starts from."""

from __future__ import annotations

from dataclasses import dataclass

from handouts.braille.lines import Segment


@dataclass(frozen=True)
class PageLine:
    """One line of a page.

    cells: from the first cell on, without blanks at the end; "" for an empty
        line.  Blanks are U+2800.
    words: what the line says, word by word.
    role: "text", "heading", "rule" (a line of a box or table), or what the
        layout adds: "head" (running head), "number" (a page number alone),
        "contents", "continued", "volume" (the title of a volume), "note" (transcriber's note), "room" (an empty
        line to write on), "blank".
    """

    cells: str
    words: tuple[Segment, ...] = ()
    role: str = "text"

    @property
    def print(self) -> str:
        """The words of the source that the line says, "" where none do."""
        return " ".join(word.print for word in self.words if word.print)


@dataclass(frozen=True)
class Page:
    """number: counted from 1.  lines: from the top; never more than fit."""

    number: int
    lines: tuple[PageLine, ...]


@dataclass(frozen=True)
class Place:
    """Where a heading stands.  level: as in the Handout tree, 1 for the title.
    page: its number.  line: counted from 1 on that page."""

    level: int
    words: str
    page: int
    line: int


@dataclass(frozen=True)
class Paper:
    """What the pages are made for.

    width: cells a line.  length: lines a page, 0 for one endless page (a
        notetaker).  both_sides: embossed on both sides of the sheet.
    running_head: whether line 1 carries it.  number: where the page number
        stands.  margin: blank cells kept at the binding edge, counted in the
        width; on both-sided paper that is the right edge of even pages.
    volume_pages: a sheet of more pages than this is split into volumes, 0 for
        one volume however long it is.
    """

    width: int = 40
    length: int = 25
    both_sides: bool = False
    running_head: bool = True
    number: str = "bottom right"
    margin: int = 0
    volume_pages: int = 0


@dataclass(frozen=True)
class Volume:
    """All pages of one sheet for one client.

    title, language, code: of the handout; code is the client's short code.
    date: ISO date of the plan.  identifier: a name for this very content,
        the same for the same content.
    headings: in reading order.
    parts: number of the first page of each volume that it is split into.
    """

    paper: Paper
    pages: tuple[Page, ...]
    title: str
    language: str
    code: str
    date: str
    identifier: str
    headings: tuple[Place, ...]
    parts: tuple[int, ...] = (1,)
