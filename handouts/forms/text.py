"""Plain text: for messages, notetakers, and whoever likes it plain.

UTF-8, LF line ends.  Everything is said in full words, as for the ear.  There
are no lines of signs: a heading stands alone between empty lines, two before
an exercise.  The log is the empty form of log_text.py, to be filled in at the
end of each line and sent back as it is.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterator

from handouts.forms import Look, Rendered, log_text
from handouts.forms.log_fields import asked_of, unit_of
from handouts.handout import (
    Block,
    Caution,
    Chart,
    Dose,
    Facts,
    Handout,
    Heading,
    Item,
    Line,
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
from handouts.languages import Phrases, phrases
from handouts.models import TextForm

COLUMNS = 72


def render(handout: Handout, form: TextForm, look: Look) -> Rendered:
    """The sheet as text; look has no part in it, since text has no style."""
    writer = _Writer(handout, COLUMNS if form.lines == "72 columns" else 0)
    rows = [*writer.paragraph(handout.title), "", handout.running_head, *writer.blocks(handout.blocks)]
    return Rendered(("\n".join(rows).rstrip() + "\n").encode("utf-8"), 0)


class _Writer:
    """Writes the blocks of one handout.  columns: 0 for lines without an end."""

    def __init__(self, handout: Handout, columns: int):
        self._handout = handout
        self._words: Phrases = phrases(handout.language)
        self._columns = columns

    def blocks(self, blocks: tuple[Block, ...]) -> Iterator[str]:
        for block in blocks:
            yield from self._block(block)

    def paragraph(self, line: Line, first: str = "", indent: str = "") -> list[str]:
        text = " ".join(plain(line, long=True).split())
        if not self._columns:
            return [first + text]
        return textwrap.wrap(
            text, self._columns, initial_indent=first, subsequent_indent=indent or " " * len(first),
            break_long_words=False, break_on_hyphens=False,
        ) or [first.rstrip()]  # fmt: skip

    def _block(self, block: Block) -> Iterator[str]:
        if isinstance(block, Section):
            yield from self._block(block.heading)
            yield from self.blocks(block.blocks)
        elif isinstance(block, Heading):
            yield from ("", "") if block.level == 2 else ("",)
            yield from self.paragraph(block.content)
        elif isinstance(block, Paragraph | Dose):
            yield ""
            yield from self.paragraph(block.content)
        elif isinstance(block, Steps | Points):
            yield ""
            yield from self._items(block, "")
        elif isinstance(block, Caution):
            yield ""
            yield from self.paragraph(block.title)
            yield from self.blocks(block.blocks)
        elif isinstance(block, Facts):
            yield ""
            for fact in block.facts:
                yield from self.paragraph((*fact.label, Text(": "), *fact.value))
        elif isinstance(block, Table):
            yield from self._table(block)
        elif isinstance(block, Chart):
            yield from ("", *self.paragraph(block.title), *self.paragraph(block.words))
            for bar in block.bars:
                yield from self.paragraph((*bar.label, Text(": "), *bar.told))
        elif isinstance(block, LogSheet):
            yield ""
            yield from self._log(block)

    def _items(self, block: Steps | Points, indent: str) -> Iterator[str]:
        numbers = [f"{block.first + at}. " if isinstance(block, Steps) else "- " for at in range(len(block.items))]
        width = max(map(len, numbers), default=0)
        for number, item in zip(numbers, block.items, strict=True):
            yield from self.paragraph(item.content, indent + number.ljust(width), indent + " " * width)
            yield from self._below(item, indent + " " * width)

    def _below(self, item: Item, indent: str) -> Iterator[str]:
        for block in item.blocks:
            if isinstance(block, Steps | Points):
                yield from self._items(block, indent)
            else:
                yield from (indent + row if row else row for row in self._block(block) if row)

    def _table(self, table: Table) -> Iterator[str]:
        """A row is a line: its header, then each cell after its column's header."""
        yield ""
        yield from self.paragraph(table.caption)
        for row in table.rows:
            line: Line = row[0]
            for column, cell in zip(table.columns[1:], row[1:], strict=True):
                line = (*line, Text("; "), *column, Text(" "), *cell)
            yield from self.paragraph(line)

    def _log(self, sheet: LogSheet) -> Iterator[str]:
        parts = []
        for entry in sheet.entries:
            asked = asked_of(entry, self._words)
            fields = tuple(
                log_text.Said(field.name, f"{plain(field.label)}{self._unit(field)}{self._asked(asked.of(field))}", "")
                for field in entry.fields
                if field.name != "date"
            )
            title = plain(entry.title, long=True)
            if entry.number:
                heading = self._words.text("logtext_exercise", number=entry.number) + self._asked(asked.entry)
                title = title.removeprefix(f"{entry.number} ")
            else:
                heading, title = title, ""
            parts.append(log_text.LogPart(entry.key, heading, title, fields))
        handout = self._handout
        log = log_text.LogText(handout.client_code, handout.plan_code, handout.version, "", tuple(parts))
        yield from log_text.blank(log, log_text.labels(self._words)).splitlines()

    def _unit(self, field: LogField) -> str:
        unit = unit_of(field)
        spoken = self._words.table.get(f"{unit}_other", unit)
        return f", {spoken}" if unit else ""

    def _asked(self, target: Line) -> str:
        return f" ({plain(self._words.line('log_target', target=target), long=True)})" if target else ""
