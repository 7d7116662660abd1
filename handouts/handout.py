"""The Handout tree: the only thing that a form of output sees.

The tree says what stands on a sheet and in which order.  It knows nothing of
paper, cells or tags.  Each form (print, screen, braille, ...) walks it and
decides how a heading, a caution or a log sheet looks, sounds or feels.

Everything is frozen and hashable, so equal fittings give equal trees and a
tree can be a cache key.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal, TypeAlias, get_args

# --- within a line -----------------------------------------------------------


@dataclass(frozen=True)
class Text:
    """Plain words in the language around them."""

    words: str


@dataclass(frozen=True)
class Strong:
    """Words whose emphasis carries meaning: a warning, a name to be found."""

    content: Line


@dataclass(frozen=True)
class Foreign:
    """Words in another language than those around them.

    language: a BCP 47 tag, such as "fr".
    """

    language: str
    content: Line


@dataclass(frozen=True)
class Measure:
    """A quantity with a short form for the eye and finger, a long one for the ear.

    short: as written on paper, such as "12.5 kg", "42:35", "8–12".
    long: as spoken in full, such as "12.5 kilograms", "42 minutes 35 seconds",
        "8 to 12".
    """

    short: str
    long: str


Inline: TypeAlias = Text | Strong | Foreign | Measure
Line: TypeAlias = tuple[Inline, ...]


# --- blocks ------------------------------------------------------------------


@dataclass(frozen=True)
class Heading:
    """A heading.

    level: 2 for a part of the sheet (an exercise, the overview), 3 for a part
        of an exercise, 4 below that.  Level 1 is the Handout's title alone.
    anchor: an id that is unique in the tree, lower-case ASCII with hyphens.
    """

    level: int
    content: Line
    anchor: str


@dataclass(frozen=True)
class Paragraph:
    content: Line


@dataclass(frozen=True)
class Dose:
    """What to do how often and with which weight, in one line.

    Found at a glance on paper: "12 each side, 15 lb in each hand".
    """

    content: Line


@dataclass(frozen=True)
class Item:
    """One step or point; `blocks` are lists or paragraphs nested below it."""

    content: Line
    blocks: tuple[Block, ...] = ()


@dataclass(frozen=True)
class Steps:
    """A numbered list: the order matters.  Numbers count from `first`."""

    items: tuple[Item, ...]
    first: int = 1


@dataclass(frozen=True)
class Points:
    """A list whose order does not matter."""

    items: tuple[Item, ...]


@dataclass(frozen=True)
class Caution:
    """A boxed warning.  `title` is the word itself, such as "When to stop"."""

    title: Line
    blocks: tuple[Block, ...]


@dataclass(frozen=True)
class Fact:
    label: Line
    value: Line


@dataclass(frozen=True)
class Facts:
    """Labels with values: client, plan, version, dates.  Never a table."""

    facts: tuple[Fact, ...]


@dataclass(frozen=True)
class Table:
    """A data table.  The first cell of each row is that row's header.

    columns: one header a column.  rows: each as long as `columns`.
    """

    caption: Line
    columns: tuple[Line, ...]
    rows: tuple[tuple[Line, ...], ...]


@dataclass(frozen=True)
class Bar:
    """One value of a chart.

    label: what it belongs to, such as a day.  value: 0 or more.
    told: the value with its unit.
    """

    label: Line
    value: Decimal
    told: Line


@dataclass(frozen=True)
class Chart:
    """Values one after the other, drawn from 0 up, for the eye or the finger.

    title: what they are.
    words: which way they go, in full sentences.  They stand in every form, so
        that nothing is known from the drawing alone.
    bars: in their order, at least one.
    """

    title: Line
    words: Line
    bars: tuple[Bar, ...]


@dataclass(frozen=True)
class LogField:
    """One thing to write down.

    name: short ASCII key, stable across languages ("weight", "reps", "right").
    label: what the reader is asked for.
    kind: what is written: "weight", "count", "time", "scale" (0 to 10),
        "yes-no" or "words".
    unit: as stamped or counted ("lb", "kg", "reps", "s"); "" when none.
    target: what the plan asks for, () when nothing.
    """

    name: str
    label: Line
    kind: Literal["weight", "count", "time", "scale", "yes-no", "words"]
    unit: str = ""
    target: Line = ()


@dataclass(frozen=True)
class LogEntry:
    """The fields of one exercise, or of the whole session.

    key: the exercise's id, or "session".
    number: the number of the exercise on the sheet; 0 for the session.
    """

    key: str
    number: int
    title: Line
    fields: tuple[LogField, ...]


@dataclass(frozen=True)
class LogSheet:
    """What the client fills in.  Each form lays it out for its own hand."""

    entries: tuple[LogEntry, ...]


SectionKind: TypeAlias = Literal["overview", "care", "exercise", "rest", "log", "notes"]


@dataclass(frozen=True)
class Section:
    """A part of the sheet that stays together where it can.

    kind: what it is; a form may start a page, a landmark or a form with it.
    heading: always there; its level is that of the section.
    """

    kind: SectionKind
    heading: Heading
    blocks: tuple[Block, ...]


Block: TypeAlias = (
    Heading | Paragraph | Dose | Steps | Points | Caution | Facts | Table | Chart | LogSheet | Section
)

SheetKind: TypeAlias = Literal["sheet", "card", "log"]
SHEET_KINDS: tuple[SheetKind, ...] = get_args(SheetKind)


@dataclass(frozen=True)
class Handout:
    """One sheet for one client.

    sheet: "sheet" (in full), "card" (the memory card), "log", or "progress",
        which is no sheet of a session and is never asked for in a client's file.
    language: BCP 47 tag of the whole.
    title: the one heading of level 1.
    client: the name that stands on the sheet.
    client_code: short code, on every page, so that dropped pages find home.
    plan_code, version: which plan, and which version of it.
    running_head: short line for the top of every page; plain words.
    date: ISO date of the plan version; review_by: ISO date or "".
    blocks: everything below the title, in reading order.
    """

    sheet: SheetKind | Literal["progress"]
    language: str
    title: Line
    client: str
    client_code: str
    plan_code: str
    version: int
    running_head: str
    date: str
    review_by: str
    blocks: tuple[Block, ...]


# --- reading a tree ----------------------------------------------------------


def plain(line: Line, long: bool = False) -> str:
    """The words of a line without markup.

    long: True gives the spoken form of each Measure, False the short one.
    """
    pieces = []
    for inline in line:
        if isinstance(inline, Text):
            pieces.append(inline.words)
        elif isinstance(inline, Measure):
            pieces.append(inline.long if long else inline.short)
        else:
            pieces.append(plain(inline.content, long))
    return "".join(pieces)


def children(block: Block | Item) -> tuple[Block | Item, ...]:
    """The blocks and items directly below a block, in reading order."""
    if isinstance(block, Section):
        return (block.heading, *block.blocks)
    if isinstance(block, Caution | Item):
        return block.blocks
    if isinstance(block, Steps | Points):
        return block.items
    return ()


def walk(blocks: tuple[Block | Item, ...]) -> Iterator[Block | Item]:
    """Every block and item of a tree, in reading order, parents first."""
    for block in blocks:
        yield block
        yield from walk(children(block))
