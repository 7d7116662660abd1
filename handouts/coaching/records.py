"""What a log adds up to: work done, best sets, the way that numbers go.

What was not told is unknown: a sum over sets of which some are missing says so
and is a floor, not a guess.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from itertools import combinations, pairwise
from statistics import median
from typing import Literal

from handouts.amounts import Mass, MassUnit
from handouts.coaching.loads import in_unit
from handouts.coaching.strength import MOST_REPS, Estimate, estimate_maximum


@dataclass(frozen=True)
class Lifted:
    """One exercise with a weight, on one day, as it was logged.

    side: the one side that the line is about, None for both or for the whole.
    load: of one weight, as stamped.  pieces: 2 where each hand holds one.
    turns: 2 where `reps` were done on each of two sides, else 1.
    reps: of each set that was told.  sets: how many the sheet asked for.
    metres: walked with the weight, all sets together; 0 where none were told.
    line: in the log.
    alone: whether the other side has its turn too, and was not logged.
    in_reserve: repetitions that the sheet asked to leave in each set; None
        where it asked for nothing, since then nobody knows.
    bottom: of the goal; a set below it was not stopped in time, and is taken
        as done to failure.
    """

    day: datetime.date
    exercise: str
    side: Literal["left", "right"] | None
    load: Mass
    pieces: Literal[1, 2]
    turns: Literal[1, 2]
    reps: tuple[int, ...]
    sets: int
    metres: int
    line: int
    alone: bool = False
    in_reserve: int | None = None
    bottom: int = 0

    @property
    def whole(self) -> bool:
        """Whether every set that the sheet asked for was told, of both sides."""
        return bool(self.reps) and len(self.reps) >= self.sets and not self.alone


@dataclass(frozen=True)
class Volume:
    """Weight times repetitions, in one unit.  whole: False for a floor, where
    some sets were not told."""

    amount: Fraction
    unit: MassUnit
    whole: bool


def volume_load(lifted: Iterable[Lifted], unit: MassUnit) -> Volume:
    """Sets times repetitions times weight: both weights of a pair count, and
    both sides of an exercise that works one after the other.

    Source: NSCA, volume load (examination study pages); pairs and sides are
    common practice.
    """
    each = list(lifted)
    amount = sum((sum(one.reps) * one.pieces * one.turns * in_unit(one.load, unit) for one in each), Fraction(0))
    return Volume(amount, unit, all(one.whole for one in each))


def carried(lifted: Iterable[Lifted], unit: MassUnit) -> Fraction:
    """Weight times metres of carries, kept apart from volume (common practice)."""
    return sum((one.metres * one.pieces * in_unit(one.load, unit) for one in lifted), Fraction(0))


def density(volume: Volume, seconds: int) -> Fraction | None:
    """Volume load for each minute of a session; None without a time.

    Source: common practice (from memory).
    """
    return volume.amount * 60 / seconds if seconds > 0 else None


def session_load(effort: int, seconds: int) -> int:
    """Effort, 0 to 10, times minutes, to the nearest whole number.

    Source: Foster and others, session rating of perceived exertion
    (International Journal of Sports Physiology and Performance, abstract).
    """
    return round(Fraction(effort * seconds, 60))


# --- best ------------------------------------------------------------------------


@dataclass(frozen=True)
class BestSet:
    """One set, with the day and the line where it was logged.

    in_reserve: repetitions that were left, as the sheet asked; 0 where it did not.
    """

    load: Mass
    reps: int
    day: datetime.date
    line: int
    in_reserve: int = 0

    @property
    def to_failure(self) -> int:
        return self.reps + self.in_reserve


def best_set(lifted: Iterable[Lifted]) -> BestSet | None:
    """The heaviest weight, and with it the most repetitions; the earliest of equals."""
    sets = _sets(lifted)
    return min(sets, key=lambda one: (-one.load.kilograms, -one.reps, one.day), default=None)


def estimated_best(lifted: Iterable[Lifted], unit: MassUnit) -> tuple[BestSet, Estimate] | None:
    """The set that speaks for the greatest single lift, and the estimate from it.

    A reserve that the sheet asked for counts as if it had been done: 12 with 2
    in reserve are 14 to failure (Helms and others 2016, abstract).  Sets of
    more repetitions than the formulas hold for are left out.  It is a floor
    where more was left than was asked for, which a log does not tell.
    Among formulas the lowest decides, so that one long set cannot win by the
    most generous of them.
    """
    best: tuple[BestSet, Estimate] | None = None
    for one in _sets(lifted):
        if one.to_failure > MOST_REPS:
            continue
        exact = in_unit(one.load, unit)
        estimate = estimate_maximum(Decimal(exact.numerator) / exact.denominator, one.reps, one.in_reserve)
        if best is None or estimate.low > best[1].low:
            best = (one, estimate)
    return best


def _sets(lifted: Iterable[Lifted]) -> list[BestSet]:
    return [
        BestSet(one.load, reps, one.day, one.line, (one.in_reserve or 0) if reps >= one.bottom else 0)
        for one in lifted
        for reps in one.reps
        if reps > 0
    ]


# --- the way that numbers go -------------------------------------------------------


@dataclass(frozen=True)
class Trend:
    """Which way a row of values goes.

    a_week: change in seven days, in the unit of the values.
    way: "up", "down", or "level" where the change over the whole time is less
        than one twentieth of the middle value.
    """

    a_week: Fraction
    way: Literal["up", "down", "level"]


FEWEST_FOR_TREND = 3
"""Days before a direction is told (common practice: two make a line of any noise)."""

_LEVEL = Fraction(1, 20)


def trend(values: Sequence[tuple[datetime.date, Fraction]]) -> Trend | None:
    """The middle of the slopes between each two days, which one odd day cannot turn.

    values: one a day.  None with fewer than FEWEST_FOR_TREND.
    Source: Theil 1950 and Sen 1968 (from memory); the bound of "level" is
    common practice.
    """
    if len(values) < FEWEST_FOR_TREND:
        return None
    slopes = [
        (later - earlier) / (after - before).days
        for (before, earlier), (after, later) in combinations(values, 2)
        if after != before
    ]
    a_day = median(slopes)
    span = (values[-1][0] - values[0][0]).days
    middle = median(value for _, value in values)
    change = a_day * span
    way: Literal["up", "down", "level"] = (
        "level" if abs(change) < _LEVEL * abs(middle) or not change else "up" if change > 0 else "down"
    )
    return Trend(a_day * 7, way)


@dataclass(frozen=True)
class Kept:
    """Sessions kept.

    sessions: days with a log.  weeks: calendar weeks from the first to the
    last, both counted; without: those of them with no log.
    longest_gap: days between two logged days that follow each other, 0 for one.
    """

    sessions: int
    first: datetime.date
    last: datetime.date
    weeks: int
    without: int
    longest_gap: int


def kept(days: Iterable[datetime.date]) -> Kept | None:
    """How regularly somebody trained; None without a day.

    A week begins on Monday (ISO 8601).
    """
    each = sorted(set(days))
    if not each:
        return None
    mondays = {day - datetime.timedelta(days=day.weekday()) for day in each}
    weeks = (max(mondays) - min(mondays)).days // 7 + 1
    gap = max(((after - before).days for before, after in pairwise(each)), default=0)
    return Kept(len(each), each[0], each[-1], weeks, weeks - len(mondays), gap)
