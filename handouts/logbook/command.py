"""What `handouts log` does: take in, ask, write, tell.

Whole lines, the most useful word first.  Asking goes one question at a time,
and every answer is kept before the next question is put.
"""

from __future__ import annotations

import csv
import datetime
import io
import sys
from collections.abc import Iterator, Mapping
from contextlib import AbstractContextManager
from dataclasses import dataclass, replace
from pathlib import Path

import click

from handouts import carried
from handouts.amounts import quoted, read_date
from handouts.errors import Fault, StudioFaults
from handouts.forms.log_text import NoLogText, holds_log
from handouts.forms.log_text import read as read_log_text
from handouts.logbook.asked import ReadersQuestion, add_questions
from handouts.logbook.drafts import Draft, exchange, read_drafts, same_message, write_drafts
from handouts.logbook.files import CannotLog, answer_warning, append_lines, clean, log_path, open_warnings
from handouts.logbook.interview import HELP, next_after, prompts, raw_of
from handouts.logbook.known import known_of
from handouts.logbook.message import SESSION, Filled, Known, Message, Question, Understanding
from handouts.logbook.placing import place_of
from handouts.logbook.telling import describe
from handouts.logbook.tokens import LONGEST
from handouts.logbook.understanding import interpret
from handouts.making.lock import alone_in
from handouts.models import Client, LogLine, Studio
from handouts.reading.faults import find_suggestion
from handouts.reading.log import read_log
from handouts.reading.studio import read_studio_parts
from handouts.reading.text_file import read_text

STORED, WAITS = 0, 1
"""Exit statuses; 2 is a fault, as everywhere."""

_STOP = ("stop", "quit", "exit")


@dataclass(frozen=True)
class Asked:
    """What the command line asks for; "" and None where it says nothing.

    fields: what was filled in by options.
    source: a file, "-" for standard input.
    ask: False keeps every doubt for later in place of asking.
    """

    client: str
    text: str = ""
    source: str = ""
    date: str = ""
    plan: str = ""
    version: int | None = None
    fields: tuple[Filled, ...] = ()
    correct: int = 0
    ask: bool = True


def log(folder: Path, asked: Asked, today: datetime.date) -> int:
    """Take in what is asked and give the exit status.

    Raises StudioFaults, CannotLog and OSError; then nothing was written but
    the draft.
    """
    desk = _Desk(folder, asked.client, today, asked.ask)
    incoming = _incoming(desk, asked)
    if incoming:
        return desk.take_in(incoming)
    if desk.waiting():
        return desk.go_on()
    return desk.interview(asked)


def list_lines(folder: Path, client: str, only_warnings: bool = False) -> int:
    """The log with the numbers of its lines, newest last."""
    path = log_path(folder, client)
    lines = read_log(path, f"logs/{path.name}") if path.is_file() else ()
    chosen = open_warnings(lines) if only_warnings else lines
    for line in chosen:
        done = f"; corrected {line.corrected}" if line.corrected else f"; answer: {line.answer}" if line.answer else ""
        place = f"{line.plan} version {line.version}" if line.plan and line.version else line.plan or "no plan"
        raw = f"; words: {quoted(line.raw)}" if not line.exercise else ""
        click.echo(f"line {line.line}, {line.date or 'no date'}, {place}: {describe(line)}{raw}{done}")
    if not chosen:
        click.echo(f"{client}: {'no warning sign waits for an answer' if only_warnings else 'nothing in the log yet'}.")
    return STORED


def answer(folder: Path, client: str, number: int, words: str) -> int:
    """The trainer's answer beside a warning sign."""
    line = answer_warning(folder, client, number, words)
    click.echo(f"Answered: {client} line {number}, '{line.warning}': {line.answer}")
    return STORED


# --- what comes in -----------------------------------------------------------------


def _incoming(desk: _Desk, asked: Asked) -> list[Message]:
    date = read_date(asked.date) if asked.date else None
    plan, version = asked.plan, asked.version
    found = [*_from_text(desk, asked.text), *_from_file(desk, asked.source)]
    if asked.correct:
        return [_correction(desk, asked, date)]
    if asked.fields:
        found.append(Message(raw_of(asked.fields), desk.language, asked.fields))
    return [
        replace(message, date=date or message.date, plan=plan or message.plan, version=version or message.version)
        for message in found
    ]


def _from_text(desk: _Desk, text: str) -> Iterator[Message]:
    words = clean(text)
    if not words:
        if text:
            raise CannotLog("the message is empty; write what the client sent")
        return
    if len(words) > LONGEST:
        raise CannotLog(f"the message has {len(words)} characters; log it in parts of at most {LONGEST}")
    yield Message(words, desk.language)


def _from_file(desk: _Desk, source: str) -> Iterator[Message]:
    if not source:
        return
    if source == "-":
        shown = "standard input"
        text = sys.stdin.read()
    else:
        shown = source
        text = read_text(Path(source), shown)
    if not text.strip():
        raise StudioFaults((Fault(shown, 0, "there is nothing in it", "choose the file that the client sent"),))
    if holds_log(text):
        yield _from_page(desk, text, shown)
    elif source.lower().endswith(".csv") or text.startswith("date,"):
        yield from _from_csv(desk, text, shown)
    else:
        yield from _from_text(desk, text)


def _from_page(desk: _Desk, text: str, shown: str) -> Message:
    """The log that the page saves or copies."""
    try:
        saved = read_log_text(text)
    except NoLogText as problem:
        raise CannotLog(f"{shown}: {problem}") from None
    if saved.client != desk.code:
        raise CannotLog(
            f"{shown}: this is the log of {saved.client}, not of {desk.code}; write: handouts log {saved.client} --from {shown}"
        )
    fields = [Filled(SESSION, "date", saved.date)] if saved.date else []
    for part in saved.parts:
        said = {one.name: one for one in part.fields}
        where = said["part"].text if "part" in said else ""
        if "question" in said:
            fields.append(Filled(part.exercise, f"question_{where}" if where else "question", said["question"].text))
        elif "unclear" in said:
            fields.append(
                Filled(part.exercise, f"question_{where}" if where else "question", f"{said['unclear'].label}.")
            )
        fields += [
            Filled(part.exercise, one.name, clean(one.text))
            for one in part.fields
            if one.name not in ("part", "question", "unclear")
        ]
    return Message(raw_of(fields), desk.language, tuple(fields), plan=saved.plan, version=saved.version)


_CSV_FIELDS = ("weight", "reps", "time", "seconds", "metres", "rounds", "effort", "note", "warning", "question")
_CSV_COLUMNS = ("date", "plan", "version", "exercise", "side", *_CSV_FIELDS, "raw")


def _from_csv(desk: _Desk, text: str, shown: str) -> Iterator[Message]:
    """One message for each day and plan; the first line names the columns."""
    rows = csv.reader(io.StringIO(text, newline=""), strict=True)
    faults: list[Fault] = []
    groups: dict[tuple[str, str, str], list[Filled]] = {}
    words: dict[tuple[str, str, str], list[str]] = {}
    columns: list[str] = []
    begins = 1
    try:
        for row in rows:
            if begins == 1:
                columns = [cell.strip().lower() for cell in row]
                _check_columns(columns, shown)
            elif any(cell.strip() for cell in row):
                cells = dict(zip(columns, (cell.strip() for cell in row), strict=False))
                if len(row) != len(columns):
                    faults.append(
                        Fault(
                            shown,
                            begins,
                            f"the line has {len(row)} of {len(columns)} cells",
                            "write a comma for each empty cell",
                        )
                    )
                elif cells.get("side", "") not in ("", "left", "right"):
                    faults.append(
                        Fault(
                            shown,
                            begins,
                            f"'side': {quoted(cells['side'])} is not a side",
                            "write 'left', 'right' or nothing",
                        )
                    )
                else:
                    place = (cells.get("date", ""), cells.get("plan", ""), cells.get("version", ""))
                    groups.setdefault(place, []).extend(_row_fields(cells))
                    words.setdefault(place, []).append(cells.get("raw") or ",".join(cell for cell in row if cell))
            begins = rows.line_num + 1
    except csv.Error as problem:
        faults.append(Fault(shown, begins, f"the cells cannot be told apart ({problem})", "close each quotation mark"))
    for date, _, version in groups:
        if version and not (version.isascii() and version.isdigit() and len(version) < 4):
            faults.append(Fault(shown, 0, f"'version': {quoted(version)} is not a whole number", "write such as '2'"))
        elif date and not _is_date(date):
            faults.append(
                Fault(shown, 0, f"'date': {quoted(date)} is not a date", "write year-month-day, such as '2029-01-08'")
            )
    if faults:
        raise StudioFaults(tuple(faults))
    for place, fields in groups.items():
        date, plan, version = place
        raw = clean("; ".join(dict.fromkeys(words[place])))
        yield Message(
            raw,
            desk.language,
            tuple(fields),
            read_date(date) if date else None,
            plan,
            int(version) if version else None,
        )


def _is_date(text: str) -> bool:
    try:
        read_date(text)
    except ValueError:
        return False
    return True


def _check_columns(columns: list[str], shown: str) -> None:
    unknown = [column for column in columns if column not in _CSV_COLUMNS]
    if unknown or "exercise" not in columns:
        wrong = f"there is no column {quoted(unknown[0])}" if unknown else "no column is named 'exercise'"
        raise StudioFaults((Fault(shown, 1, wrong, f"name columns among: {', '.join(_CSV_COLUMNS)}"),))


def _row_fields(cells: Mapping[str, str]) -> Iterator[Filled]:
    exercise, side = cells.get("exercise") or SESSION, cells.get("side", "")
    for name in _CSV_FIELDS:
        if cells.get(name):
            yield Filled(
                exercise,
                f"{name}_{side}" if side and name in ("weight", "reps", "time", "seconds", "metres") else name,
                cells[name],
            )


def _correction(desk: _Desk, asked: Asked, date: datetime.date | None) -> Message:
    """The line with what was given put in place of what it had."""
    old = next((line for line in desk.all_lines() if line.line == asked.correct and line.corrected is None), None)
    if old is None:
        raise CannotLog(
            f"logs/{asked.client}.csv: there is no line {asked.correct} to correct; see the numbers with --list"
        )
    if not asked.fields and not asked.text and date is None and not asked.plan and asked.version is None:
        raise CannotLog("nothing to correct was given; add such as --weight '16 kg' --reps 12/12/14")
    if asked.text:
        return Message(
            clean(asked.text),
            desk.language,
            (),
            date or old.date,
            asked.plan or old.plan,
            asked.version or old.version,
            old.line,
        )
    side = f"_{old.side}" if old.side else ""
    had = {
        f"weight{side}": str(old.weight) if old.weight else "",
        f"reps{side}": "/".join(map(str, old.reps)),
        "time": f"{old.seconds} s" if old.seconds is not None else "",
        f"metres{side}": str(old.metres) if old.metres is not None else "",
        "effort": str(old.effort) if old.effort is not None else "",
        "note": old.note,
        "pain": old.warning,
    }
    exercise = next((field.exercise for field in asked.fields if field.exercise != SESSION), old.exercise or SESSION)
    had |= {
        field.name
        if "_" in field.name or field.name not in ("weight", "reps", "metres")
        else f"{field.name}{side}": field.text
        for field in asked.fields
    }
    fields = tuple(Filled(exercise, name, text) for name, text in had.items() if text)
    raw = f"correction of line {old.line}: {raw_of(asked.fields) or date or asked.plan}"
    return Message(
        raw, desk.language, fields, date or old.date, asked.plan or old.plan, asked.version or old.version, old.line
    )


# --- the desk -------------------------------------------------------------------------


class _Desk:
    """One client's logbook while a command runs."""

    def __init__(self, folder: Path, code: str, today: datetime.date, ask: bool):
        self.folder, self.code, self.today, self.ask = folder, code, today, ask
        self.studio, self.client = _read(folder, code)
        self.language = self.client.facts.language
        self._known: Known | None = None

    def all_lines(self) -> tuple[LogLine, ...]:
        path = log_path(self.folder, self.code)
        return read_log(path, f"logs/{path.name}") if path.is_file() else ()

    def waiting(self) -> tuple[Draft, ...]:
        return read_drafts(self.folder, self.code)

    def known(self, waiting: int = 0) -> Known:
        standing = tuple(line for line in self.all_lines() if line.corrected is None)
        self._known = known_of(self.studio, self.client, standing, self.today, waiting, self._known)
        return self._known

    def alone(self) -> AbstractContextManager[None]:
        """While nobody else changes a log or a draft.  Nothing is asked meanwhile."""
        return alone_in(self.folder / "logs")

    # --- taking in ---------------------------------------------------------------

    def take_in(self, messages: list[Message]) -> int:
        """New messages: what is sure is stored at once, the rest waits."""
        status = STORED
        for message in messages:
            with self.alone():
                earlier = self.waiting()
                understanding = interpret(message, self.known(len(earlier)))
                if not understanding.questions:
                    self._store(message, understanding)
                    continue
                write_drafts(self.folder, self.code, (*earlier, Draft(message)))
            if not self.ask:
                self._tell_questions(message, understanding)
                status = WAITS
            elif earlier:
                click.echo(f"Waiting: {quoted(message.raw)} comes after {len(earlier)} earlier.")
        return max(status, self.go_on()) if self.waiting() and self.ask else status

    def go_on(self) -> int:
        """Ask about what waits, the oldest message first."""
        status = STORED
        while drafts := self.waiting():
            draft = drafts[0]
            if draft.asked_up_to is not None:
                if self._interview(draft) == WAITS:
                    return WAITS
                continue
            if not self.ask:
                self._tell_questions(draft.message, interpret(draft.message, self.known(), draft.answers))
                return WAITS
            if not self._settle(draft):
                return WAITS
        return status

    def _settle(self, draft: Draft) -> bool:
        """Ask until nothing is in doubt, then store.  False where asking was
        stopped; the draft is then on disk as far as it came."""
        click.echo(f"Message of {self.code}: {quoted(draft.message.raw)}")
        while True:
            with self.alone():
                waits = same_message(self.folder, self.code, draft)
                if waits is None:
                    click.echo(f"Settled meanwhile by somebody else: {quoted(draft.message.raw)}")
                    return True
                draft = waits
                understanding = interpret(draft.message, self.known(), draft.answers)
                if not understanding.questions:
                    self._store(draft.message, understanding)
                    exchange(self.folder, self.code, draft, None)
                    return True
            question = understanding.questions[0]
            said = self._put(question, len(understanding.questions))
            if said is None:
                click.echo(f"Stopped. Nothing of this message is in the log yet; go on with: handouts log {self.code}")
                return False
            with self.alone():
                waits = same_message(self.folder, self.code, draft)
                if waits is not None:
                    exchange(self.folder, self.code, waits, waits.answered(question.key, said))

    def _put(self, question: Question, count: int) -> str | None:
        """One question and its answer; None when asking is to stop."""
        left = f" ({count} questions left)" if count > 1 else ""
        click.echo(f"Question{left}: {question.asks}")
        click.echo(f"Reason: {_sentence(question.reason)}")
        letters = "abcdefghijklmnopqrstuvwxyz"
        for letter, proposal in zip(letters, question.proposals, strict=False):
            click.echo(f"{letter}: {proposal.means}")
        how = "Answer, a letter or in your own words" if question.proposals else "Answer"
        while True:
            said = _line(how)
            if said is None or said.lower() in _STOP:
                return None
            if len(said) == 1 and said.lower() in letters[: len(question.proposals)]:
                return question.proposals[letters.index(said.lower())].answer
            if said:
                return said
            click.echo("An answer is needed; 'stop' keeps the message for later.")

    def _tell_questions(self, message: Message, understanding: Understanding) -> None:
        click.echo(f"Not stored yet: {quoted(message.raw)}")
        for question in understanding.questions:
            answers = "; ".join(proposal.means for proposal in question.proposals)
            click.echo(
                f"Question: {question.asks} Reason: {_sentence(question.reason)}" + (f" Possible: {answers}." if answers else "")
            )
        click.echo(f"Answer with: handouts log {self.code}")

    # --- storing --------------------------------------------------------------------

    def _store(self, message: Message, understanding: Understanding) -> None:
        lines = understanding.lines
        for notice in understanding.notices:
            word = {"stop": "Stop", "eye": "Look", "note": "Note"}[notice.strength]
            click.echo(f"{word}: {notice.what}")
        if lines:
            stored = append_lines(self.folder, self.code, lines, understanding.replaces, self.today)
            for line in stored:
                click.echo(
                    f"Stored, {line.date}, {line.plan} version {line.version}, line {line.line}: {describe(line)}"
                )
            for number in understanding.replaces:
                click.echo(f"Kept as corrected: line {number}")
        self._keep_questions(understanding, lines[0] if lines else None, message)
        if not lines and not understanding.asked:
            click.echo(f"Nothing stored of {quoted(message.raw)}: nothing in it is left to write down.")

    def _keep_questions(self, understanding: Understanding, line: LogLine | None, message: Message) -> None:
        date = line.date.isoformat() if line and line.date else (message.date or self.today).isoformat()
        plan = line.plan if line else message.plan
        version = line.version if line else message.version
        new = []
        for asked in understanding.asked:
            text = self.studio.exercises.get((asked.exercise, asked.language))
            part, words = place_of(asked.words, text, asked.part) if text else ("", "")
            new.append(
                ReadersQuestion(
                    self.code,
                    0,
                    date,
                    plan,
                    str(version or ""),
                    asked.exercise,
                    asked.language,
                    part,
                    words,
                    clean(asked.words),
                )
            )
        for one in add_questions(self.folder, self.code, new):
            place = f"{one.exercise}, {one.part}: {quoted(one.words)}" if one.words else one.exercise
            click.echo(f"Question {one.number} for the writer of {place}: {one.question}")

    # --- question and answer -----------------------------------------------------------

    def interview(self, asked: Asked) -> int:
        """Ask for one session, field by field."""
        current = dict(self.known().current)
        plan = asked.plan or (next(iter(current)) if len(current) == 1 else "")
        while plan not in current:
            click.echo(f"Plans of {self.code}: {', '.join(current)}")
            said = _line("Which plan")
            if said is None or said in _STOP:
                return WAITS
            plan = said
        message = Message(
            "",
            self.language,
            date=read_date(asked.date) if asked.date else None,
            plan=plan,
            version=asked.version or current[plan],
        )
        click.echo(HELP)
        if self._interview(Draft(message, asked_up_to=1 if message.date else 0)) == WAITS:
            return WAITS
        return self.go_on()

    def _interview(self, draft: Draft) -> int:
        """Prompts from where the draft stands; afterwards the draft is whole."""
        place = (draft.message.plan, draft.message.version or 0)
        session = self.known().sessions.get(place)
        if session is None:
            raise CannotLog(f"there is no plan {place[0]} version {place[1]} any more; the draft keeps what was said")
        asked = prompts(session)
        at = draft.asked_up_to or 0
        trail: list[int] = []
        while at < len(asked):
            prompt = asked[at]
            said = _line(prompt.words)
            if said is None or said.lower() in _STOP:
                click.echo(f"Stopped. What you answered is kept; go on with: handouts log {self.code}")
                return WAITS
            fields = draft.message.fields
            if said.lower() == "back":
                at = trail.pop() if trail else 0
                before = asked[at]
                fields = tuple(f for f in fields if (f.exercise, f.name) != (before.exercise, before.name))
            elif said.startswith("?") and said.strip("? "):
                fields = (*fields, Filled(prompt.exercise, "question", said.lstrip("? ")))
            else:
                text = prompt.target if said == "=" else said
                if said == "=" and not text:
                    click.echo("The sheet asks for nothing here; write a number or press Enter.")
                    continue
                if text:
                    text = "skip" if text.lower() == "skip" and prompt.exercise != SESSION else text
                    fields = (*fields, Filled(prompt.exercise, prompt.name, clean(text)))
                trail.append(at)
                at = next_after(asked, at, fields)
            draft = self._kept(draft, replace(draft, message=replace(draft.message, fields=fields), asked_up_to=at))
        if not draft.message.fields:
            self._kept(draft, None)
            click.echo("Nothing was answered, so nothing is stored.")
            return STORED
        self._kept(draft, Draft(replace(draft.message, raw=raw_of(draft.message.fields))))
        return STORED

    def _kept(self, old: Draft, new: Draft | None) -> Draft:
        with self.alone():
            exchange(self.folder, self.code, old, new)
        return new or old


def _sentence(reason: str) -> str:
    """A reason with its full stop; one that asks has its own sign."""
    return reason if reason.endswith("?") else f"{reason}."


def _line(words: str) -> str | None:
    """One line from the terminal; None at the end of input and at Ctrl-C."""
    try:
        said: str = click.prompt(words, default="", show_default=False)
    except click.Abort:
        click.echo("")
        return None
    return said.strip()


def _read(folder: Path, code: str) -> tuple[Studio, Client]:
    read = read_studio_parts(folder, carried.starter_texts())
    client = read.studio.clients.get(code)
    if client is not None:
        return read.studio, client
    if code in read.faults_by_client:
        raise StudioFaults(read.faults_by_client[code])
    raise CannotLog(f"no client '{code}' in this studio{find_suggestion(code, read.known_clients)}")
