"""The trainer's desk: everything that waits, in one place, the gravest first."""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from pathlib import Path

from handouts import carried
from handouts.coaching.care import hold_of
from handouts.errors import quoted
from handouts.logbook.asked import open_questions
from handouts.logbook.drafts import read_drafts
from handouts.making.make import fit_plan, plans_of
from handouts.reading.studio import read_studio_parts


def waiting_at(folder: Path, today: datetime.date) -> Iterator[str]:
    """One line for each thing that waits: warning signs without an answer,
    faults in files, logs whose doubts are not settled, readers' questions, and
    what needs the trainer's eye in the next sheets.

    folder: the studio.  today: for review dates and screening.
    """
    reading = read_studio_parts(folder, carried.starter_texts())
    studio = reading.studio
    for code in studio.clients:
        hold = hold_of(studio.logs.get(code, ()))
        for line in hold.warnings if hold else ():
            day = line.date.isoformat() if line.date else "no day"
            yield (
                f"Warning sign of {code}, {day}, {line.exercise or 'no exercise'}: {line.warning}; "
                f"answer it with: handouts log {code} --answer {line.line} WORDS"
            )
    for fault in reading.faults:
        yield f"Fault in {fault}"
    for code in reading.known_clients:
        for draft in read_drafts(folder, code):
            yield f"Log of {code} is not settled: {quoted(draft.message.raw)}; go on with: handouts log {code}"
    for question in open_questions(folder):
        yield f"Question at {question}"
    for code, client in studio.clients.items():
        for plan in plans_of(client, studio):
            for remark in fit_plan(client, plan, studio, today).remarks:
                if remark.strength == "eye":
                    yield f"Look at {code}, {plan.facts.plan} version {plan.facts.version}: {remark.what}"
