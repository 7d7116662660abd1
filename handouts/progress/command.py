"""What `handouts next` and `handouts progress` do: propose, make, write, tell.

Whole lines, the most useful word first.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from pathlib import Path

import click

from handouts import carried
from handouts.coaching import timing
from handouts.coaching.rules import rules
from handouts.coaching.standing import Aim
from handouts.errors import HandoutsError, StudioFaults
from handouts.forms import FORMS, Look
from handouts.making.file_names import safe_name, safe_names
from handouts.making.lock import only_run
from handouts.making.workers import Task, work
from handouts.making.writing import write_whole
from handouts.models import Client, Forms, LogLine, Studio, TextForm
from handouts.progress.history import History, history_of
from handouts.progress.next_plan import NextPlan, NothingNext, next_plan
from handouts.progress.plan_file import plan_text
from handouts.progress.report import progress_report
from handouts.progress.summary import Summary, summary_of
from handouts.reading.faults import find_suggestion
from handouts.reading.studio import read_studio_parts

WRITTEN, KEPT = 0, 1
"""Exit statuses; 2 is a fault, as everywhere."""


class UnknownClient(HandoutsError):
    """No client of this code in the studio."""


def read_client(folder: Path, code: str) -> tuple[Studio, Client]:
    """A studio and one of its clients.  Raises UnknownClient and StudioFaults."""
    read = read_studio_parts(folder, carried.starter_texts())
    client = read.studio.clients.get(code)
    if client is not None:
        return read.studio, client
    if code in read.faults_by_client:
        raise StudioFaults(read.faults_by_client[code])
    raise UnknownClient(f"no client '{code}' in this studio{find_suggestion(code, read.known_clients)}")


def tell_rules() -> int:
    """The table of rules, a rule a line."""
    for name, rule in rules().items():
        click.echo(f"{name}: {rule.says} Source: {rule.source}.")
    return WRITTEN


def propose_next(
    folder: Path, code: str, aim: Aim, today: datetime.date, plan: str = "", every: bool = False, show: bool = False
) -> int:
    """Write the next version of a client's plan, or show it; the exit status.

    Raises NothingNext, UnknownClient, StudioFaults and OSError; then nothing
    was written.
    """
    studio, client = read_client(folder, code)
    proposed = next_plan(studio, client, aim, today, plan, every)
    for line in _reasons(proposed):
        click.echo(line)
    if proposed.waits or not (proposed.changes or aim == "hold"):
        why = "until the warning signs are answered" if proposed.waits else "since nothing changes"
        click.echo(f"Nothing written, {why}: {code} goes on with {_named(proposed)}.")
        return KEPT
    facts = proposed.facts
    text = plan_text(proposed, (folder / proposed.before.path).read_text("utf-8"))
    shown = f"plans/{safe_name(f'{facts.plan}-v{facts.version}')}.yaml"
    if show:
        click.echo(text, nl=False)
        return WRITTEN
    path = folder / shown
    if path.exists():
        raise NothingNext(f"{shown}: there is a file already, and it is not written over; move it away first")
    write_whole(path, text.encode("utf-8"))
    click.echo(f"{shown}: written. Read it, change what you like, then make the sheets.")
    follows = next(choice for choice in client.facts.plans if choice.plan == proposed.before.facts.plan)
    if follows.plan != facts.plan or follows.version is not None:
        number = client.lines.get("plans", 0)
        where = f"{client.path}:{number}" if number else client.path
        click.echo(f"{where}: to use it, write there 'plan: {facts.plan}' and 'version: {facts.version}'.")
    return WRITTEN


def tell_progress(folder: Path, out: Path, code: str, forms: tuple[str, ...], today: datetime.date) -> int:
    """Tell a client's progress, and make the report in the client's own forms.

    out: where the client's folder goes.  forms: other forms to make it in.
    Raises UnknownClient, StudioFaults, OutUnusable and OSError.
    """
    studio, client = read_client(folder, code)
    history = history_of(studio, client, today)
    summary = summary_of(history)
    plan = history.current[0]
    told = progress_report(history, summary, studio.facts, "en", *plan)
    click.echo(FORMS["text"].render(told, TextForm(lines="unbroken"), Look()).data.decode(), nl=False)
    click.echo("")
    for line in _for_the_trainer(history, summary):
        click.echo(line)
    if summary.kept is None:
        return KEPT
    report = progress_report(history, summary, studio.facts, "", *plan)
    name = safe_names(studio.clients)[code]
    status = WRITTEN
    with only_run(out, lambda line: click.echo(line, err=True)):
        for kind in (FORMS[form] for form in FORMS):
            settings = getattr(client.facts.forms, kind.name) or (Forms.defaults(kind.name) if kind.name in forms else None)
            if settings is None or (forms and kind.name not in forms):
                continue
            result = work(Task(kind.name, report, settings, Look((folder / "templates",))))
            if result.rendered is None:
                click.echo(f"{code} {kind.name} progress: not made; {result.failure}", err=True)
                status = 2
                continue
            path = out / name / "progress" / f"{name}-progress{kind.ending_of(settings)}"
            write_whole(path, result.rendered.data)
            click.echo(f"{code} {kind.name} progress: {path}")
    return status


def _for_the_trainer(history: History, summary: Summary) -> Iterator[str]:
    """What the client's own report leaves out: lines of the log, session loads."""
    for session in summary.sessions:
        if session.load is not None:
            yield f"Session load of {session.day}: {session.load}, effort {session.effort} times {timing.clock(session.seconds or 0)}."
    for strand in summary.strands:
        if strand.best is not None:
            side = f", {strand.side}" if strand.side else ""
            yield f"Best of {strand.exercise}{side}: {strand.best.load}, {strand.best.reps} reps, {history.log}:{strand.best.line}."
        if strand.carried:
            side = f", {strand.side}" if strand.side else ""
            yield f"Carried, {strand.exercise}{side}: {round(strand.carried)} {summary.unit} times metres in all."
    for line in history.unread:
        yield _unread(history.log, line)


def _unread(log: str, line: LogLine) -> str:
    return f"Look: {log}:{line.line} names no day or no exercise, so it counts for nothing; correct it with 'handouts log'."


def _named(proposed: NextPlan) -> str:
    return f"{proposed.before.facts.plan} version {proposed.before.facts.version}"


def _reasons(proposed: NextPlan) -> Iterator[str]:
    """What waits, what changes, what to weigh, what stays, how long it takes."""
    log = f"logs/{proposed.client.facts.code}.csv"
    for line in proposed.waits:
        about = f" ({line.exercise})" if line.exercise not in ("", "session") else ""
        answer = f"handouts log {proposed.client.facts.code} --answer {line.line} WORDS"
        yield f"Stop: {log}:{line.line}{about} has a warning sign without an answer; talk with the client, then write: {answer}"
    for change in proposed.changes:
        yield f"Change: {change.exercise}, {change.what}: {change.why} Rule: {change.rule}."
        if change.warning:
            yield f"Look: {change.exercise}, {change.warning}"
    for kept in proposed.kept:
        yield f"Stays: {kept.exercise}: {kept.why} Rule: {kept.rule}."
    for line in proposed.unread:
        yield _unread(log, line)
    if proposed.changes:
        took, takes = proposed.before_session.expected_seconds, proposed.session.expected_seconds
        minutes = proposed.client.facts.minutes
        has = f"; the client has {timing.clock(minutes)}" if minutes is not None else ""
        yield f"Time: {timing.clock(takes)}, before {timing.clock(took)}{has}."
        if proposed.target:
            yield proposed.target
        over = minutes is not None and takes > minutes
        if over:
            yield "Look: the session was longer than the client's time before, and still is; make says what to cut."
