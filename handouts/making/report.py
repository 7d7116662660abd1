"""Tells a run of `make`, line by line or as JSON."""

from __future__ import annotations

import json
import os
import sys
import time
from pathlib import Path

import click

from handouts.making.make import Asked, Made, Outcome, make
from handouts.making.old_sheets import told as told_old
from handouts.making.workers import Workers

_SECONDS_BETWEEN_WORDS = 10


def tell(asked: Asked, workers: Workers, report: str, quiet: bool, why: bool) -> int:
    """Run `make`, print what comes of it, give the exit status.

    report: "text" prints a line for each file as soon as it is there; "json"
        prints one list to standard output at the end.
    why: say of each file why it was made.
    Remarks and faults go to standard error in both.
    """
    outcomes: list[Outcome] = []
    files: list[Made] = []
    told: set[str] = set()
    # With text, each file's line is the progress; with JSON a person at a
    # terminal would wait in silence.
    calm = report == "json" and not quiet and sys.stderr.isatty()
    next_word = time.monotonic() + _SECONDS_BETWEEN_WORDS
    for event in make(asked, workers, say=lambda line: click.echo(line, err=True)):
        if isinstance(event, Made):
            files.append(event)
            if report == "text" and not quiet:
                click.echo(_line(event, why))
            elif calm and time.monotonic() >= next_word:
                click.echo(f"{_many(len(files), 'file')} so far, last for {event.client}.", err=True)
                next_word = time.monotonic() + _SECONDS_BETWEEN_WORDS
            continue
        outcomes.append(event)
        for line in _needs_eye(event, quiet):
            # A fault in a shared file stands at every client that it stops.
            if line not in told:
                told.add(line)
                click.echo(line, err=True)
    if report == "json":
        by_client = {outcome.client: outcome for outcome in outcomes}
        click.echo(json.dumps([_record(file, by_client[file.client]) for file in files], ensure_ascii=False, indent=1))
    elif not quiet:
        click.echo(_summary(files, outcomes))
    for outcome in outcomes:
        if outcome.old:
            line = told_old(outcome.client, tuple(Path(_shown(path)) for path in outcome.old))
            click.echo(line, err=report == "json" or quiet)
    return max((outcome.exit_status for outcome in outcomes), default=2)


def _line(made: Made, why: bool) -> str:
    pages = f", {made.pages} page{'' if made.pages == 1 else 's'}" if made.pages else ""
    weight = f", {made.facts['weight']}" if "weight" in made.facts else ""
    kept = "" if made.why else ", unchanged"
    line = f"{made.client} {made.form} {made.sheet}{pages}{weight}{kept}: {_shown(made.path)}"
    if why and made.why:
        line += f"; {made.why}"
    return f"{line}. {made.facts['advice']}" if made.facts.get("advice") else line


def _needs_eye(outcome: Outcome, quiet: bool) -> list[str]:
    lines = [str(fault) for fault in outcome.faults]
    lines += list(outcome.failures)
    for plan, remark in outcome.remarks:
        if remark.strength == "eye":
            lines.append(f"Look at {outcome.client}, {plan}: {remark.what}")
        elif not quiet:
            lines.append(f"Note for {outcome.client}, {plan}: {remark.what}")
    return lines


def _summary(files: list[Made], outcomes: list[Outcome]) -> str:
    clients = sum(1 for outcome in outcomes if outcome.files)
    new = sum(1 for file in files if file.why)
    parts = [f"{_many(new, 'file')} made for {_many(clients, 'client')}."]
    if new < len(files):
        parts.append(f"{_many(len(files) - new, 'file')} left as before, since nothing changed.")
    look = [outcome.client for outcome in outcomes if outcome.client and outcome.exit_status == 1]
    if look:
        parts.append(f"Needs your eye: {', '.join(look)}.")
    faulty = [outcome.client for outcome in outcomes if outcome.client and outcome.exit_status == 2]
    if faulty:
        parts.append(f"Nothing made because of faults: {', '.join(faulty)}.")
    if any(outcome.faults for outcome in outcomes if not outcome.client):
        parts.append("Faults in other files are told above.")
    return " ".join(parts)


def _many(count: int, what: str) -> str:
    return f"{count} {what}{'' if count == 1 else 's'}"


def _record(made: Made, outcome: Outcome) -> dict[str, object]:
    """One file, with what the trainer should know about its plan."""
    plan = f"{made.plan} version {made.version}"
    return {
        "client": made.client,
        "plan": made.plan,
        "version": made.version,
        "form": made.form,
        "sheet": made.sheet,
        "path": str(made.path),
        "pages": made.pages,
        "seconds": round(made.seconds, 3),
        "why": made.why,
        "facts": dict(made.facts),
        "remarks": [
            {"strength": remark.strength, "exercise": remark.exercise, "what": remark.what}
            for told, remark in outcome.remarks
            if told == plan
        ],
        "loads": [
            {"exercise": load.exercise, "side": load.side, "asked": load.asked, "chosen": load.chosen}
            for load in outcome.loads
            if load.plan == plan
        ],
    }


def _shown(path: Path) -> str:
    """The path as one would type it from the working folder, where it is below."""
    try:
        return os.path.relpath(path) if Path(path).resolve().is_relative_to(Path.cwd()) else str(path)
    except (OSError, ValueError):
        return str(path)
