"""Log files: what came back from a client, one line an exercise.

CSV as RFC 4180 has it: commas, quotation marks doubled inside quoted cells.
A message that one must ask about is kept with its words alone; its other cells
stay empty until somebody has asked.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import Literal, TypeVar

from handouts import amounts
from handouts.amounts import quoted
from handouts.errors import Fault, StudioFaults
from handouts.models import LogLine, Side
from handouts.reading.text_file import LARGEST_LOG, read_text

COLUMNS = ("date", "plan", "version", "exercise", "side", "weight", "reps", "time", "effort", "note", "raw")
"""The header of a log file, in this order."""

LATER_COLUMNS = ("metres", "rounds", "warning", "answer", "corrected")
"""Columns that stand behind these in newer files; an older file has none of them."""

_EACH_SET = re.compile(r"(?:^|; )(seconds|metres) in each set: (\d{1,4}(?:/\d{1,4})*)(?:;|$)")

Cell = TypeVar("Cell")


def note_of_sets(unit: Literal["seconds", "metres"], sets: Sequence[int]) -> str:
    """What a note says of the sets of a hold or a carry, whose line has their sum."""
    return f"{unit} in each set: {'/'.join(map(str, sets))}"


def sets_in_note(note: str, unit: Literal["seconds", "metres"]) -> tuple[int, ...]:
    """The sets that a note tells of; () where it tells of none."""
    found = [sets for its, sets in _EACH_SET.findall(note) if its == unit]
    return tuple(int(count) for count in found[-1].split("/")) if found else ()


def read_log(path: Path, shown: str) -> tuple[LogLine, ...]:
    """The lines of one log file, in the order of the file.

    Raises StudioFaults with every fault of the file.
    """
    lines, faults = read_log_lines(path, shown)
    if faults:
        raise StudioFaults(faults)
    return lines


def read_log_lines(path: Path, shown: str) -> tuple[tuple[LogLine, ...], tuple[Fault, ...]]:
    """The sound lines of one log file, and the faults of the others.

    Raises StudioFaults when the file is no log at all.
    """
    text = read_text(path, shown, LARGEST_LOG)
    rows = csv.reader(io.StringIO(text, newline=""), strict=True)
    faults: list[Fault] = []
    lines: list[LogLine] = []
    columns: tuple[str, ...] = COLUMNS
    begins = 1
    try:
        for row in rows:
            if begins == 1:
                _check_header(row, shown)
                columns = tuple(cell.strip() for cell in row)
            elif any(cell.strip() for cell in row):
                line = _line(row, columns, shown, begins, faults)
                if line is not None:
                    lines.append(line)
            begins = rows.line_num + 1
    except csv.Error as problem:
        wrong = f"from here on the cells cannot be told apart ({problem})"
        instead = "close each quotation mark, and double those inside a cell"
        faults.append(Fault(shown, begins, wrong, instead))
    if begins == 1 and not faults:
        raise StudioFaults(
            (Fault(shown, 0, "there is nothing in it", f"begin it with the line '{','.join(COLUMNS)}'"),)
        )
    return tuple(lines), tuple(faults)


def _check_header(row: list[str], shown: str) -> None:
    if tuple(cell.strip() for cell in row) in (COLUMNS, COLUMNS + LATER_COLUMNS):
        return
    wrong = "the first line does not name the columns of a log"
    instead = f"write '{','.join(COLUMNS)}'"
    for sign, name in ((";", "semicolons"), ("\t", "tabs")):
        if sign in "".join(row):
            wrong = f"the cells are divided by {name}, as some spreadsheets save them"
            instead = "save the file as comma-separated values"
    raise StudioFaults((Fault(shown, 1, wrong, instead),))


def _line(row: list[str], columns: tuple[str, ...], shown: str, number: int, faults: list[Fault]) -> LogLine | None:
    if len(row) != len(columns):
        faults.append(
            Fault(
                shown,
                number,
                f"the line has {len(row)} of {len(columns)} cells",
                "write a comma for each empty cell, and quotation marks around words with commas",
            )
        )
        return None
    cells = dict.fromkeys(LATER_COLUMNS, "") | dict(zip(columns, row, strict=True))
    before = len(faults)

    no_reps: tuple[int, ...] = ()

    def read(column: str, reader: Callable[[str], Cell], empty: Cell) -> Cell:
        text = cells[column].strip()
        if not text:
            return empty
        try:
            return reader(text)
        except ValueError as problem:
            wrong, _, instead = str(problem).rpartition("; ")
            faults.append(Fault(shown, number, f"'{column}': {wrong}", instead))
            return empty

    line = LogLine(
        line=number,
        date=read("date", amounts.read_date, None),
        plan=cells["plan"].strip(),
        version=read("version", amounts.read_whole_number, None),
        exercise=cells["exercise"].strip(),
        side=read("side", _read_side, None),
        weight=read("weight", amounts.read_mass, None),
        reps=read("reps", _read_reps, no_reps),
        seconds=read("time", amounts.read_seconds, None),
        effort=read("effort", _read_effort, None),
        note=cells["note"].strip(),
        raw=cells["raw"],
        metres=read("metres", amounts.read_whole_number, None),
        rounds=read("rounds", amounts.read_whole_number, None),
        warning=cells["warning"].strip(),
        answer=cells["answer"].strip(),
        corrected=read("corrected", amounts.read_date, None),
    )
    return line if len(faults) == before else None


def _read_side(text: str) -> Side | None:
    if text == "left":
        return "left"
    if text == "right":
        return "right"
    raise ValueError(f"{quoted(text)} is not a side; write 'left' or 'right', or nothing for both")


def _read_reps(text: str) -> tuple[int, ...]:
    """ "12/12/14", one number a set.  Spaces do as well, since a spreadsheet
    takes "12/12/14" for a date."""
    words = re.split(r" ?/ ?| +", text)
    try:
        return tuple(amounts.read_whole_number(word) for word in words)
    except ValueError:
        raise ValueError(f"{quoted(text)} is not a count of each set; write '12/12/14' or '12'") from None


def _read_effort(text: str) -> int:
    effort = amounts.read_whole_number(text)
    if effort > 10:
        raise ValueError(f"{quoted(text)} is not an effort from 0 to 10; write a number in that range")
    return effort
