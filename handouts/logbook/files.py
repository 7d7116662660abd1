"""The log file of one client: lines appended whole or not at all, none lost.

A line that was wrong stays in the file with the day on which it was corrected;
the line that took its place stands at the end.
"""

from __future__ import annotations

import csv
import datetime
import io
from collections.abc import Iterable
from pathlib import Path

from handouts.errors import HandoutsError
from handouts.making.lock import alone_in
from handouts.making.writing import write_whole
from handouts.models import LogLine
from handouts.reading.log import COLUMNS, LATER_COLUMNS, read_log
from handouts.reading.text_file import LARGEST_LOG, read_text, readable

_ALL = COLUMNS + LATER_COLUMNS


class CannotLog(HandoutsError):
    """What was asked of the logbook cannot be done; the message says why."""


def log_path(folder: Path, client: str) -> Path:
    """logs/CLIENT.csv of a studio folder.

    Raises CannotLog where the code is no file name.
    """
    return folder / "logs" / f"{file_stem(client)}.csv"


def file_stem(client: str) -> str:
    """A client's code as the name of a file.  Raises CannotLog where it is none."""
    if client in ("", ".", "..") or any(sign in client for sign in "/\\:\0\n"):
        raise CannotLog(f"the code '{client}' cannot name a file; give the client a code of letters and digits")
    return client


def clean(text: str) -> str:
    """A message without the invisible signs that telephones and web pages add,
    since a log with them could not be read again."""
    text = text.replace("\r\n", "\n").replace("\r", "\n").replace("\u2028", "\n").replace("\u2029", "\n")
    return readable(text.encode("utf-8", "ignore").decode("utf-8")).strip()


def append_lines(
    folder: Path, client: str, lines: Iterable[LogLine], replaces: Iterable[int], today: datetime.date
) -> tuple[LogLine, ...]:
    """Write lines at the end of a client's log, in one step.

    The caller holds the folder of the logs (`handouts.making.lock.alone_in`).
    replaces: numbers of lines that these correct; they are marked with today.
    Returns the new lines as they stand in the file.
    Raises StudioFaults when the log is not sound, CannotLog for a line that is
    not there, OSError when the disk refuses; then the file is as it was.
    """
    path = log_path(folder, client)
    new = [_row(line) for line in lines]
    text, marked = _old_text(path), frozenset(replaces)
    if marked or not text.startswith(",".join(_ALL) + "\n"):
        text = _rewritten(path, text, marked, today)
    text += "" if text.endswith("\n") else "\n"
    write_whole(path, (text + _rows(new)).encode("utf-8"))
    return read_log(path, _shown(path))[-len(new) :] if new else ()


def answer_warning(folder: Path, client: str, number: int, answer: str) -> LogLine:
    """Write the trainer's answer beside a warning sign.

    Raises CannotLog where line `number` has no warning that stands.
    """
    path = log_path(folder, client)
    with alone_in(path.parent):
        return _answered(path, number, answer)


def _answered(path: Path, number: int, answer: str) -> LogLine:
    lines = read_log(path, _shown(path)) if path.is_file() else ()
    line = next((line for line in lines if line.line == number), None)
    if line is None or not line.warning or line.corrected is not None:
        open_ones = ", ".join(str(one.line) for one in open_warnings(lines)) or "none"
        raise CannotLog(f"{_shown(path)}: line {number} has no warning sign; lines with one that is open: {open_ones}")
    decided = _one_line(answer)
    if not decided:
        raise CannotLog("the answer is empty; write what you decided")
    text = _cells_changed(read_text(path, _shown(path), LARGEST_LOG), {number: {"answer": decided}})
    write_whole(path, text.encode("utf-8"))
    return line.model_copy(update={"answer": decided})


def open_warnings(lines: Iterable[LogLine]) -> tuple[LogLine, ...]:
    """Lines with a warning sign that the trainer has not answered."""
    return tuple(line for line in lines if line.warning and not line.answer and line.corrected is None)


def _shown(path: Path) -> str:
    return f"logs/{path.name}"


def _old_text(path: Path) -> str:
    if not path.is_file():
        return ",".join(_ALL) + "\n"
    read_log(path, _shown(path))  # a file with faults is not written to
    return read_text(path, _shown(path), LARGEST_LOG)


def _rewritten(path: Path, text: str, marked: frozenset[int], today: datetime.date) -> str:
    """The whole log with today's columns, and with corrected lines marked."""
    standing = (
        {line.line for line in read_log(path, _shown(path)) if line.corrected is None} if path.is_file() else set()
    )
    for number in marked - standing:
        raise CannotLog(f"{_shown(path)}: there is no line {number} to correct; see the numbers with --list")
    return _cells_changed(text, {number: {"corrected": today.isoformat()} for number in marked})


def _cells_changed(text: str, changes: dict[int, dict[str, str]]) -> str:
    """The text of a log with some cells of some lines changed."""
    reader = csv.reader(io.StringIO(text, newline=""), strict=True)
    rows, begins = [], 1
    for row in reader:
        if begins == 1:
            rows.append(list(_ALL))
        elif row:
            cells = [*row, *[""] * (len(_ALL) - len(row))]
            for column, cell in changes.get(begins, {}).items():
                cells[_ALL.index(column)] = cell
            rows.append(cells)
        else:
            rows.append([])
        begins = reader.line_num + 1
    return _rows(rows)


def _rows(rows: Iterable[list[str]]) -> str:
    file = io.StringIO(newline="")
    writer = csv.writer(file, lineterminator="\n")
    for row in rows:
        writer.writerow(row)
    return file.getvalue()


def _row(line: LogLine) -> list[str]:
    def told(value: object) -> str:
        return "" if value is None else str(value)

    return [
        told(line.date),
        line.plan,
        told(line.version),
        line.exercise,
        told(line.side),
        told(line.weight),
        "/".join(map(str, line.reps)),
        "" if line.seconds is None else told_seconds(line.seconds),
        told(line.effort),
        _one_line(line.note),
        clean(line.raw),
        told(line.metres),
        told(line.rounds),
        _one_line(line.warning),
        _one_line(line.answer),
        told(line.corrected),
    ]


def _one_line(text: str) -> str:
    return " ".join(clean(text).split())


def told_seconds(seconds: int) -> str:
    """ "1 h 5 min 30 s": the same seconds when it is read again."""
    hours, rest = divmod(seconds, 3600)
    minutes, rest = divmod(rest, 60)
    pieces = [f"{hours} h" if hours else "", f"{minutes} min" if minutes else "", f"{rest} s" if rest else ""]
    return " ".join(piece for piece in pieces if piece) or "0 s"
