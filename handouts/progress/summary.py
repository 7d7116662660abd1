"""What a client's log says of their progress, in numbers.

Pure, and in no language.  Unknown is not zero: where sets are missing a sum is
a floor and says so.
"""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Literal, TypeAlias

from handouts.amounts import MassUnit
from handouts.coaching.records import (
    BestSet,
    Kept,
    Lifted,
    Trend,
    Volume,
    best_set,
    carried,
    density,
    estimated_best,
    kept,
    session_load,
    trend,
    volume_load,
)
from handouts.coaching.strength import Estimate
from handouts.models import LogLine, Side
from handouts.progress.history import SESSION, History, lifted

Shown: TypeAlias = Literal["strength", "last_set", "walked", "held"]
"""What the values of one exercise are."""


@dataclass(frozen=True)
class Session:
    """One day.

    volume: None where no weight was logged.
    seconds, effort: of the whole session; None where they were not told.
    density: volume in a minute.  load: effort times minutes.
    lines: of the log.
    """

    day: datetime.date
    volume: Volume | None
    seconds: int | None
    effort: int | None
    lines: tuple[int, ...]

    @property
    def density(self) -> Fraction | None:
        return density(self.volume, self.seconds) if self.volume and self.seconds else None

    @property
    def load(self) -> int | None:
        return session_load(self.effort, self.seconds) if self.effort is not None and self.seconds else None


@dataclass(frozen=True)
class Strand:
    """One exercise through time, or one side of it where sides were logged.

    lines: with something done, oldest first.
    best: None without a weight.  estimate: from which set, and the spread.
    values: what its chart shows, day by day.
    shows: what that is: "strength", the lowest estimate, where there is one
        for two days or more; else "last_set", its repetitions; else "walked"
        or "held", metres or seconds of all sets.
    carried: weight times metres, 0 where none were told.
    """

    exercise: str
    side: Side | None
    lines: tuple[LogLine, ...]
    best: BestSet | None
    estimate: tuple[BestSet, Estimate] | None
    values: tuple[tuple[datetime.date, Fraction], ...]
    shows: Shown
    carried: Fraction = Fraction(0)

    @property
    def trend(self) -> Trend | None:
        return trend(self.values)


@dataclass(frozen=True)
class Summary:
    """unit: of all sums, as the client thinks of weights."""

    unit: MassUnit
    kept: Kept | None
    sessions: tuple[Session, ...]
    strands: tuple[Strand, ...]

    def trend_of(self, what: str) -> tuple[tuple[tuple[datetime.date, Fraction], ...], Trend | None]:
        """The known values of "volume", "density" or "time", and their way.

        A day whose volume is a floor has no part in a direction.
        """
        values: list[tuple[datetime.date, Fraction]] = []
        for session in self.sessions:
            whole = session.volume is not None and session.volume.whole
            if what == "time" and session.seconds:
                values.append((session.day, Fraction(session.seconds)))
            elif what == "volume" and session.volume and whole:
                values.append((session.day, session.volume.amount))
            elif what == "density" and session.density is not None and whole:
                values.append((session.day, session.density))
        return tuple(values), trend(values)


def summary_of(history: History) -> Summary:
    """Everything that a report of progress tells."""
    unit = history.client.facts.units
    work = tuple(lifted(history))
    days = sorted({line.date for line in history.lines if line.date and _something(line)})
    return Summary(
        unit,
        kept(days),
        tuple(_session(history, work, day, unit) for day in days),
        tuple(_strands(history, work, unit)),
    )


def _something(line: LogLine) -> bool:
    """Whether a line tells of training: a note on a journey does not."""
    return bool(line.reps and line.reps != (0,)) or bool(
        line.seconds or line.metres or line.rounds or line.weight or line.effort is not None
    )


def _session(history: History, work: Sequence[Lifted], day: datetime.date, unit: MassUnit) -> Session:
    lines = [line for line in history.lines if line.date == day]
    whole = [line for line in lines if line.exercise == SESSION]
    done = [one for one in work if one.day == day and one.reps]
    seconds = [line.seconds for line in whole if line.seconds]
    efforts = [line.effort for line in whole if line.effort is not None]
    return Session(
        day,
        volume_load(done, unit) if done else None,
        sum(seconds) if seconds else None,
        max(efforts) if efforts else None,
        tuple(line.line for line in lines),
    )


def _strands(history: History, work: Sequence[Lifted], unit: MassUnit) -> list[Strand]:
    keys: dict[tuple[str, Side | None], list[LogLine]] = {}
    for line in history.lines:
        if line.exercise not in ("", SESSION) and _something(line):
            keys.setdefault((line.exercise, line.side), []).append(line)
    strands = []
    for (exercise, side), lines in keys.items():
        own = [one for one in work if (one.exercise, one.side) == (exercise, side)]
        values, shows = _values(own, lines, unit)
        strands.append(
            Strand(
                exercise, side, tuple(lines), best_set(own), estimated_best(own, unit), values, shows, carried(own, unit)
            )
        )
    return strands


def _values(
    own: Sequence[Lifted], lines: Sequence[LogLine], unit: MassUnit
) -> tuple[tuple[tuple[datetime.date, Fraction], ...], Shown]:
    by_day: dict[datetime.date, list[Lifted]] = {}
    if any(one.in_reserve is None for one in own):
        # A reserve that only some sheets asked for would look like more or less strength.
        own = [replace(one, in_reserve=None) for one in own]
    for one in own:
        by_day.setdefault(one.day, []).append(one)
    estimates = [(day, estimated_best(each, unit)) for day, each in by_day.items()]
    strength = tuple((day, Fraction(found[1].low)) for day, found in estimates if found is not None)
    if len(strength) > 1:
        return strength, "strength"
    last = {line.date: Fraction(line.reps[-1]) for line in lines if line.date and line.reps and line.reps != (0,)}
    if last:
        return tuple(last.items()), "last_set"
    walked = tuple((line.date, Fraction(line.metres)) for line in lines if line.date and line.metres)
    if walked:
        return _by_day(walked), "walked"
    return _by_day(tuple((line.date, Fraction(line.seconds)) for line in lines if line.date and line.seconds)), "held"


def _by_day(values: Sequence[tuple[datetime.date, Fraction]]) -> tuple[tuple[datetime.date, Fraction], ...]:
    """One value for each day: all of a day together."""
    days: dict[datetime.date, Fraction] = {}
    for day, value in values:
        days[day] = days.get(day, Fraction(0)) + value
    return tuple(days.items())
