"""The measures of a printed page: margins, running line, type sizes, log boxes.

Everything here is arithmetic on the widths of the letters, so that what does
not fit is known before the page is laid out.  Lengths are in points (1/72
inch) unless a name says otherwise.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from handouts.forms.log_fields import Asked, asked_of
from handouts.handout import Handout, Line, LogEntry, LogField, Measure, Points, Steps, Table, plain
from handouts.languages import phrases
from handouts.models import PrintForm

MM = 72 / 25.4
_INCH = 72.0
_PAPERS = {"A4": (210 * MM, 297 * MM), "Letter": (8.5 * _INCH, 11 * _INCH)}


@dataclass(frozen=True)
class Page:
    """One kind of page of a sheet.

    size: for the CSS property of that name.  inner: the margin with the holes.
    head: type size of the running line.  head_lines: 1 or 2.
    number_at: where the page number stands: "top" right or "bottom" right.
    width: of the text.  height: of the text.
    lines: of running text on a full page.
    """

    size: str
    inner: float
    outer: float
    top: float
    bottom: float
    head: float
    head_lines: int
    number_at: str
    width: float
    height: float
    lines: int


@dataclass(frozen=True)
class Box:
    """A place to write: what is asked for, how wide in percent of the row, how high."""

    field: LogField
    asked: Line
    percent: float
    height: float


@dataclass(frozen=True)
class Band:
    """One exercise on the log sheet.

    beside: percent of the width that the title takes when the boxes stand
        beside it in the one row; 0 when the title has a line of its own.
    """

    entry: LogEntry
    asked: Line
    beside: float
    rows: tuple[tuple[Box, ...], ...]


def text_width(text: str, size: float, bold: bool = True) -> float:
    """How wide a text is in the sheet's font.

    A character that the font lacks counts as one em: as wide as the fallback
    could make it.
    """
    advances, units = _advances(bold)
    return sum(advances.get(ord(character), units) for character in text) * size / units


@lru_cache(maxsize=2)
def _advances(bold: bool) -> tuple[dict[int, int], int]:
    from fontpkg_atkinson_hyperlegible import ROOT
    from fontTools.ttLib import TTFont  # type: ignore[import-untyped]

    name = "Bold" if bold else "Regular"
    with TTFont(ROOT / "files" / f"AtkinsonHyperlegible-{name}.ttf") as font:
        widths = font["hmtx"].metrics
        return {code: widths[glyph][0] for code, glyph in font.getBestCmap().items()}, font["head"].unitsPerEm


def page(handout: Handout, form: PrintForm, log: bool = False) -> Page:
    """The page for a sheet at the client's print size; log: for its log, which
    may lie on its side, and whose boxes may be wider than a line of text.

    Up to 18 pt the line is 6 inches at most, with an inch of margin (two
    university guides on large print).  Above that such a line holds less than
    45 characters, where the UK Association for Accessible Formats asks for 60
    to 70: every millimetre of line counts, and the margins leave just the room
    for punched holes, whose centres stand 12 mm from the edge (ISO 838).
    """
    width, height = _PAPERS[form.paper]
    landscape = log and form.log_landscape and _holds_a_row(form)
    if landscape:
        width, height = height, width
    if form.size <= 18 and not log:
        outer = _INCH
        inner = max(width - outer - 6 * _INCH, _INCH)
    else:
        inner, outer = 25 * MM, 15 * MM
    line = width - inner - outer

    # The widest page number that a sheet could have, so that it never wraps.
    number = phrases(handout.language).text("page_of", page="888", pages="888")
    number_width = text_width(number, form.size)
    head_width = text_width(handout.running_head, form.size)
    if head_width + number_width + form.size <= line:
        head, lines, number_at = float(form.size), 1, "top"
    else:
        number_at = "bottom"
        # In one line if that leaves 18 pt, else in two, which any name fits.
        one_line = form.size * line / (head_width * 1.01)
        lines = 1 if one_line >= min(18, form.size) else 2
        head = min(form.size, one_line if lines == 1 else min(18, 1.7 * one_line))
    top = 11 * MM + lines * head * 1.25 + 6 * MM
    bottom = 18 * MM if number_at == "top" else 9 * MM + form.size * 1.25 + 3 * MM
    return Page(
        size=f"{form.paper} {'landscape' if landscape else 'portrait'}",
        inner=inner, outer=outer, top=top, bottom=bottom,
        head=head, head_lines=lines, number_at=number_at,
        width=line, height=height - top - bottom,
        lines=int((height - top - bottom) / (form.size * spacing(form))),
    )


def _holds_a_row(form: PrintForm) -> bool:
    """Whether a page on its side has the lines for two exercises with their boxes.

    With fewer lines it holds one, and where a name is long its boxes go to the
    next page (seen on the demo's log from 28 to 48 pt); upright they stay
    together.
    """
    return min(_PAPERS[form.paper]) / (form.size * spacing(form)) >= 11


def spacing(form: PrintForm) -> float:
    """Line spacing, as a multiple of the size.

    Sources part: the American Council of the Blind asks for 1.5 or more, the
    American Printing House takes 1.25, the UK Association for Accessible
    Formats is content with single.  Large print follows the first, giant print
    the others, since wide gaps between few lines only cost pages.
    """
    if form.line_spacing != "by size":
        return float(form.line_spacing)
    return 1.5 if form.size <= 28 else 1.3


def headings(size: int) -> dict[str, float]:
    """Type sizes of h1 to h4: a fixed step up, so that huge print is not wasted
    on huger headings (common practice, no source)."""
    return {"h1": size + 9, "h2": size + 6, "h3": size + 2, "h4": float(size)}


def gap(form: PrintForm) -> float:
    """What the gaps between blocks are a share of: the size, but in huge print
    less, so that a page of nine lines is not lost to gaps (common practice, no
    source).  A gap stays wider than the one between lines."""
    return min(form.size, 24 + 0.4 * max(form.size - 24, 0))


def box_spacing(form: PrintForm) -> float:
    """Line spacing within a caution: 1.25 is enough for the American Printing
    House, and so the signs to stop at fit on one page for most readers."""
    return min(spacing(form), 1.25) if form.size > 18 else spacing(form)


def indent(block: Steps | Points, form: PrintForm) -> float:
    """How far a list stands to the right of the text around it."""
    if isinstance(block, Points):
        return 0.9 * form.size
    return {1: 1.4, 2: 2.0}.get(len(str(block.first + len(block.items) - 1)), 2.6) * form.size


def box_edge(form: PrintForm) -> float:
    """From the outer edge of a caution to its text: a thick rule and a little room."""
    return 6 + 0.5 * gap(form)


def fits(table: Table, form: PrintForm, width: float) -> bool:
    """Whether the columns of a table hold their longest words side by side."""
    columns = zip(table.columns, *table.rows, strict=True)
    padding = 0.7 * form.size + 2
    return sum(max(_longest(cell, form.size) for cell in column) + padding for column in columns) <= width


# --- the log sheet -----------------------------------------------------------

_WRITING = 20 * MM  # height of a box for a thick pen; common practice, no source
_LEAST = 38 * MM  # narrowest box that holds three digits from a thick pen
_TITLE_LINES = 3.5  # of a title beside its boxes, before they are wrapped
_LABEL_LINES = 2.5  # of a label in its box
_PADDING = 14.0  # left and right of the words in a box, with its rules


def bands(entries: tuple[LogEntry, ...], form: PrintForm, width: float, language: str) -> tuple[Band, ...]:
    """Lays the log out for a thick pen: one band an exercise.

    The title stands in the one row with its boxes where the words fit, else on
    a line of its own above them; boxes that still do not fit beside each other
    go below each other.
    """
    words = phrases(language)
    return tuple(_band(entry, asked_of(entry, words), form, width) for entry in entries)


def _band(entry: LogEntry, asked: Asked, form: PrintForm, width: float) -> Band:
    needs = [_need(field, asked, form, width) for field in entry.fields]
    name = max(_longest(entry.title, form.size), _longest(asked.entry, form.size), 0.3 * width) + _PADDING
    # What is left over: half to the title, which has most words.
    name += max(width - name - sum(needs), 0) / 2
    title = text_width(f"{plain(entry.title)} {plain(asked.entry)}", form.size)
    fits = name + sum(needs) <= width and title <= _TITLE_LINES * name
    if fits and not any(map(_is_long, entry.fields)):
        return Band(entry, asked.entry, 100 * name / width, (_row(tuple(zip(entry.fields, needs, strict=True)), asked, form),))
    rows: list[list[tuple[LogField, float]]] = []
    for field, need in zip(entry.fields, needs, strict=True):
        if rows and sum(each for _, each in rows[-1]) + need <= width:
            rows[-1].append((field, need))
        else:
            rows.append([(field, need)])
    return Band(entry, asked.entry, 0, tuple(_row(tuple(row), asked, form) for row in _evened(rows, width)))


def _evened(rows: list[list[tuple[LogField, float]]], width: float) -> list[list[tuple[LogField, float]]]:
    """Two rows of two in place of three and one: like stands above like."""
    if len(rows) == 2 and len(rows[0]) == 3 and len(rows[1]) == 1:
        (first, second, third), (fourth,) = rows
        if third[1] + fourth[1] <= width:
            return [[first, second], [third, fourth]]
    return rows


def _row(row: tuple[tuple[LogField, float], ...], asked: Asked, form: PrintForm) -> tuple[Box, ...]:
    total = sum(need for _, need in row)
    return tuple(Box(field, asked.of(field), 100 * need / total, _height(field, form)) for field, need in row)


def _need(field: LogField, asked: Asked, form: PrintForm, width: float) -> float:
    if _is_long(field):
        return width
    words = max(_longest(field.label, form.size), _longest(asked.of(field), form.size))
    words = max(words, text_width(plain(field.label), form.size) / _LABEL_LINES)
    least = 1.3 * _LEAST if field.kind == "count" else _LEAST
    return min(max(words + _PADDING, least), width)


def _is_long(field: LogField) -> bool:
    return field.kind == "words" and field.name != "date"


def _height(field: LogField, form: PrintForm) -> float:
    return max(_WRITING, 2 * form.size) * (1.4 if _is_long(field) else 1)


def _longest(line: Line, size: float) -> float:
    """The widest word of a line; a measure counts as one word."""
    plain_words = plain(tuple(piece for piece in line if not isinstance(piece, Measure))).split()
    measures = [piece.short for piece in line if isinstance(piece, Measure)]
    return max((text_width(word, size) for word in (*plain_words, *measures)), default=0.0)
