"""The log by question and answer: what is asked at the terminal, one at a time.

The prompts follow the client's log sheet, exercise by exercise.  Which prompt
comes next follows from the answers so far alone, so that a stopped interview
goes on where it was.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from handouts.fitting.fitted import FittedSession
from handouts.fitting.sheets import sheet
from handouts.handout import LogEntry, LogField, LogSheet, plain, walk
from handouts.logbook.message import SESSION, Filled

HELP = (
    "Press Enter for what you do not know. '=' takes what the sheet asks, 'skip' leaves out the exercise, "
    "'back' goes one back, 'stop' keeps what you have for later. "
    "'?' and words ask the writer of the text about this exercise."
)

_WHAT = {
    "weight": "weight",
    "reps": "repetitions in each set",
    "time": "seconds in each set",
    "distance": "metres in each set",
    "rounds": "rounds done",
}


@dataclass(frozen=True)
class Prompt:
    """One thing to ask for.

    target: what the sheet asks, "" for nothing; '=' stands for it.
    last: whether it is the last one of its exercise.
    """

    exercise: str
    name: str
    words: str
    target: str = ""


def prompts(session: FittedSession) -> tuple[Prompt, ...]:
    """Everything to ask about one session, in order."""
    entries = [
        entry for block in walk(sheet("log", session).blocks) if isinstance(block, LogSheet) for entry in block.entries
    ]
    asked = [_of_exercise(entry, field) for entry in entries if entry.key != SESSION for field in entry.fields]
    rounds = [
        Prompt(SESSION, "rounds", "Rounds done")
        for entry in entries
        for field in entry.fields
        if entry.key == SESSION and field.name == "rounds"
    ]
    return (
        Prompt(SESSION, "date", "Day of the session, such as 2029-01-08, 'today' or 'Monday'"),
        *asked,
        *rounds,
        Prompt(SESSION, "time", "Whole session, total time, such as 24 min or 24:30"),
        Prompt(SESSION, "effort", "Whole session, effort from 0 to 10"),
        Prompt(SESSION, "pain", "Pain or another warning sign, and where"),
        Prompt(SESSION, "note", "Note"),
        Prompt(SESSION, "question", "A question for the coach"),
    )


def _of_exercise(entry: LogEntry, field: LogField) -> Prompt:
    kind, _, side = field.name.partition("_")
    what = _WHAT.get(kind, plain(field.label))
    target = plain(field.target).replace("–", "-")
    asked = f", {target} on the sheet" if target else ""
    sided = f", {side} side" if side else ""
    takes = target if kind == "weight" else ""
    return Prompt(entry.key, field.name, f"Exercise {plain(entry.title)}, {what}{sided}{asked}", takes)


def next_after(asked: tuple[Prompt, ...], at: int, fields: tuple[Filled, ...]) -> int:
    """The next prompt to ask, past those of an exercise that was skipped."""
    skipped = {field.exercise for field in fields if field.text == "skip"}
    at += 1
    while at < len(asked) and asked[at].exercise in skipped:
        at += 1
    return at


def raw_of(fields: Iterable[Filled]) -> str:
    """What was filled in, as one message."""
    return "; ".join(f"{field.exercise} {field.name.replace('_', ' ')}: {field.text}" for field in fields)
