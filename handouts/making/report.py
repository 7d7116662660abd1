"""Tells a run of `make`, line by line or as JSON."""

from __future__ import annotations

import datetime
import json
import os
from pathlib import Path

import click

from handouts.making.make import Made, Outcome, make


def tell(
    folder: Path,
    out: Path,
    names: tuple[str, ...],
    forms: tuple[str, ...],
    today: datetime.date,
    report: str,
    quiet: bool,
) -> int:
    """Run `make`, print what comes of it, give the exit status.

    report: "text" prints a line for each file as soon as it is there; "json"
        prints one list to standard output at the end.
    Remarks and faults go to standard error in both.
    """
    outcomes: list[Outcome] = []
    files: list[Made] = []
    told: set[str] = set()
    for event in make(folder, out, names, forms, today):
        if isinstance(event, Made):
            files.append(event)
            if report == "text" and not quiet:
                click.echo(_line(event))
            continue
        outcomes.append(event)
        for line in _needs_eye(event, quiet):
            # A fault in a shared file stands at every client that it stops.
            if line not in told:
                told.add(line)
                click.echo(line, err=True)
    if report == "json":
        click.echo(json.dumps([_record(file) for file in files], ensure_ascii=False, indent=1))
    elif not quiet:
        click.echo(_summary(files, outcomes))
    return max((outcome.exit_status for outcome in outcomes), default=2)


def _line(made: Made) -> str:
    pages = f", {made.pages} page{'' if made.pages == 1 else 's'}" if made.pages else ""
    return f"{made.client} {made.form} {made.sheet}{pages}: {_shown(made.path)}"


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
    clients = sum(1 for outcome in outcomes if outcome.made)
    parts = [f"{len(files)} file{'' if len(files) == 1 else 's'} made for {clients} client{'' if clients == 1 else 's'}."]
    look = [outcome.client for outcome in outcomes if outcome.exit_status == 1]
    if look:
        parts.append(f"Needs your eye: {', '.join(look)}.")
    faulty = [outcome.client or "files of the studio" for outcome in outcomes if outcome.exit_status == 2]
    if faulty:
        parts.append(f"Nothing made because of faults: {', '.join(faulty)}.")
    return " ".join(parts)


def _record(made: Made) -> dict[str, object]:
    return {
        "client": made.client,
        "plan": made.plan,
        "version": made.version,
        "form": made.form,
        "sheet": made.sheet,
        "path": str(made.path),
        "pages": made.pages,
        "seconds": round(made.seconds, 3),
    }


def _shown(path: Path) -> str:
    """The path as one would type it from the working folder, where it is below."""
    try:
        return os.path.relpath(path) if Path(path).resolve().is_relative_to(Path.cwd()) else str(path)
    except (OSError, ValueError):
        return str(path)
