"""What the log has already: the same message twice, or a correction."""

from __future__ import annotations

from handouts.logbook.message import Proposal
from handouts.logbook.setting import DROP, Setting
from handouts.logbook.telling import describe
from handouts.models import LogLine

_CORRECT, _SECOND = "correct", "second"


def without_twins(setting: Setting, lines: list[LogLine]) -> tuple[list[LogLine], tuple[int, ...]]:
    """The lines to write, and the numbers of those whose place they take.

    Lines that the log seems to have already are asked about.
    """
    if setting.message.corrects:
        return lines, (setting.message.corrects,)
    pairs = [(line, old) for line in lines if (old := _same_place(line, setting.known.history)) is not None]
    equal = [(line, old) for line, old in pairs if _counts(line) == _counts(old)]
    other = [(line, old) for line, old in pairs if _counts(line) != _counts(old)]
    answer = setting.asking.answer("again")
    if not pairs or answer == _SECOND:
        return lines, ()
    if answer == DROP:
        return [line for line in lines if all(line is not known for known, _ in pairs)], ()
    if answer == _CORRECT and other:
        return [line for line in lines if all(line is not known for known, _ in equal)], tuple(
            old.line for _, old in other
        )
    if other:
        told = "; ".join(f"line {old.line} has {describe(old)}, this says {describe(line)}" for line, old in other)
        numbers = ", ".join(str(old.line) for _, old in other)
        options: tuple[Proposal, ...] = (
            Proposal(_CORRECT, f"a correction: it takes the place of line {numbers}, which is kept as corrected"),
            Proposal(_SECOND, "a second session"),
            Proposal(DROP, "leave it out"),
        )
        asks = "Is this a correction, or a second session on that day?"
        setting.asking.ask("again", asks, f"the log has that day already: {told}", options, conflict=True)
    else:
        told = "; ".join(f"line {old.line}, {describe(old)}" for _, old in equal)
        options = (
            Proposal(DROP, "the same log: leave out what is there"),
            Proposal(_SECOND, "a second session with the same numbers"),
        )
        setting.asking.ask("again", "Is this the same log once more?", f"the log has it already: {told}", options)
    return lines, ()


def _same_place(line: LogLine, history: tuple[LogLine, ...]) -> LogLine | None:
    """The newest line of the log on the same day, sheet, exercise and side."""
    place = (line.date, line.plan, line.version, line.exercise, line.side)
    found = [old for old in history if (old.date, old.plan, old.version, old.exercise, old.side) == place]
    return next((old for old in found if _counts(old) == _counts(line)), found[-1] if found else None)


def _counts(line: LogLine) -> tuple[object, ...]:
    return line.weight, line.reps, line.seconds, line.effort, line.metres, line.rounds, line.warning, line.note
