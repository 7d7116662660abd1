"""Handout trees of any shape, for property tests.

Every word of a tree is a different one, in small letters alone, so that each
can be found again in the output.
"""

from __future__ import annotations

import itertools
from dataclasses import replace

from hypothesis import strategies as st

from handouts.handout import (
    Block,
    Caution,
    Dose,
    Fact,
    Facts,
    Handout,
    Heading,
    Item,
    Line,
    LogEntry,
    LogField,
    LogSheet,
    Measure,
    Paragraph,
    Points,
    Section,
    Steps,
    Strong,
    Table,
    Text,
)

_LETTERS = "abcdefghijklmnopqrstuvwxyz"


def _name(number: int, length: int) -> str:
    """A word for a number: four letters that no other number has, then x's."""
    letters = ""
    for _ in range(4):
        number, digit = divmod(number, 20)
        letters += "bcdfghjklmnpqrstvwzy"[digit]
    return letters + "x" * (length - 4)


class _Namer:
    """Gives each line of a tree new words."""

    def __init__(self) -> None:
        self._numbers = itertools.count()

    def line(self, lengths: list[int]) -> Line:
        return tuple(
            inline
            for place, length in enumerate(lengths)
            for inline in ((Text(" "),) if place else ()) + (self._inline(place, length),)
        )

    def _inline(self, place: int, length: int) -> Text | Strong | Measure:
        word = _name(next(self._numbers), length)
        if length == 5:
            return Strong((Text(word),))
        return Measure(word, word + " in full") if length == 6 else Text(word)


LENGTHS = st.lists(st.integers(4, 8), min_size=1, max_size=25)
SHORT = st.lists(st.integers(4, 9), min_size=1, max_size=3)
TITLE = st.lists(st.integers(4, 9), min_size=1, max_size=12)

# Shapes first, words after: a shape is a nested tuple of lists of lengths.
_lists = st.deferred(
    lambda: st.tuples(
        st.sampled_from(["steps", "points"]),
        st.lists(st.tuples(LENGTHS, st.lists(_lists, max_size=1)), min_size=1, max_size=4),
    )
)
_simple = st.one_of(
    st.tuples(st.just("paragraph"), LENGTHS),
    st.tuples(st.just("dose"), SHORT),
    st.tuples(st.just("facts"), st.lists(st.tuples(SHORT, SHORT), min_size=1, max_size=4)),
    st.tuples(st.just("heading"), SHORT, st.sampled_from([3, 4])),
    _lists,
)
_table = st.integers(1, 4).flatmap(
    lambda columns: st.tuples(
        st.just("table"),
        SHORT,
        st.lists(SHORT, min_size=columns, max_size=columns),
        st.lists(st.lists(SHORT, min_size=columns, max_size=columns), min_size=1, max_size=4),
    )
)
_box = st.tuples(st.just("box"), TITLE, st.lists(_simple, min_size=1, max_size=4))
_log = st.tuples(
    st.just("log"),
    st.lists(
        st.tuples(SHORT, st.lists(st.tuples(SHORT, st.sampled_from(["weight", "words"])), max_size=3)), max_size=3
    ),
)
_blocks = st.lists(st.one_of(_simple, _table, _box, _log), max_size=5)
_section = st.tuples(st.just("section"), TITLE, _blocks)


def _block(shape: tuple, namer: _Namer) -> Block:
    match shape:
        case ("paragraph", lengths):
            return Paragraph(namer.line(lengths))
        case ("dose", lengths):
            return Dose(namer.line(lengths))
        case ("facts", pairs):
            return Facts(tuple(Fact(namer.line(label), namer.line(value)) for label, value in pairs))
        case ("heading", lengths, level):
            return Heading(level, namer.line(lengths), f"h{id(lengths)}")
        case ("steps" | "points" as kind, items):
            made = tuple(
                Item(namer.line(lengths), tuple(_block(nested, namer) for nested in below)) for lengths, below in items
            )
            return Steps(made) if kind == "steps" else Points(made)
        case ("table", caption, columns, rows):
            return Table(
                namer.line(caption),
                tuple(namer.line(column) for column in columns),
                tuple(tuple(namer.line(cell) for cell in row) for row in rows),
            )
        case ("box", title, inner):
            return Caution(namer.line(title), tuple(_block(one, namer) for one in inner))
        case ("log", entries):
            return LogSheet(
                tuple(
                    LogEntry(
                        "x",
                        number,
                        namer.line(title),
                        tuple(LogField("y", namer.line(label), kind) for label, kind in fields),
                    )
                    for number, (title, fields) in enumerate(entries, 1)
                )
            )
        case ("section", title, inner):
            return Section("exercise", Heading(2, namer.line(title), "s"), tuple(_block(one, namer) for one in inner))
    raise AssertionError(shape)


def _handout(parts: tuple) -> Handout:
    title, first, sections = parts
    namer = _Namer()
    return Handout(
        sheet="sheet",
        language="en",
        title=namer.line(title),
        client="",
        client_code="C9",
        plan_code="P9",
        version=1,
        running_head="C9 P9",
        date="2029-01-08",
        review_by="",
        blocks=tuple(_block(shape, namer) for shape in (*first, *sections)),
    )


HANDOUTS = st.builds(_handout, st.tuples(SHORT, _blocks, st.lists(_section, max_size=4)))


def without_listed_tables(handout: Handout) -> Handout:
    """The same without tables: where they are set as lists, heads are repeated."""

    def strip(blocks: tuple[Block, ...]) -> tuple[Block, ...]:
        kept = []
        for block in blocks:
            if isinstance(block, Table):
                continue
            if isinstance(block, Section | Caution):
                block = replace(block, blocks=strip(block.blocks))
            kept.append(block)
        return tuple(kept)

    return replace(handout, blocks=strip(handout.blocks))


def all_words(handout: Handout) -> list[str]:
    """The words of a tree in reading order."""
    found: list[str] = []

    def add(thing: object) -> None:
        if isinstance(thing, Text):
            found.extend(thing.words.split())
        elif isinstance(thing, Measure):
            found.extend(thing.short.split())
        elif isinstance(thing, tuple):
            for part in thing:
                add(part)
        elif hasattr(thing, "__dataclass_fields__"):
            for name in thing.__dataclass_fields__:
                value = getattr(thing, name)
                if isinstance(value, tuple) or hasattr(value, "__dataclass_fields__"):
                    add(value)

    add(handout.title)
    add(handout.blocks)
    return found
