"""How long a session takes, in whole seconds.

Doses given as a range are counted at their middle: "8-12 reps" as 10.  A
repetition takes its text's own seconds (4 at an easy, controlled pace), or the
sum of its tempo.  No rest follows the last set, station or round.  All figures
here are common practice without a published source.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from statistics import median
from typing import Literal

from handouts.amounts import Dose, Tempo

SECONDS_PER_METRE = 1
"""Walking slowly with a weight: one metre a second."""


def change_over(pace: Literal["sighted", "by touch"]) -> int:
    """Seconds to clear one exercise away and be ready for the next.

    Between the structures of a session; inside a superset or a circuit the
    rest between exercises already holds it.
    """
    return 75 if pace == "by touch" else 30


def set_seconds(dose: Dose, sides: int, seconds_per_rep: int, tempo: Tempo | None = None) -> int:
    """One set of an exercise, all its sides.

    dose: counted "each side" is done once for each of `sides`; any other dose
        is the whole set.
    sides: how many sides take their turn, 1 or 2.
    Half a second counts as a whole one.
    """
    amount = Fraction(dose.low + dose.high, 2)
    turns = sides if dose.counted == "each side" else 1
    if dose.kind == "reps":
        amount *= tempo.seconds if tempo else seconds_per_rep
    elif dose.kind == "distance":
        amount *= SECONDS_PER_METRE
    return math.ceil(amount * turns)


def straight_sets(one_set: int, sets: int, rest: int) -> int:
    return rounds_of([one_set], sets, 0, rest)


def rounds_of(sets: Sequence[int], rounds: int, rest_inside: int, rest_after: int) -> int:
    """A superset or a circuit: sets of seconds, rest between them and between rounds."""
    one_round = sum(sets) + (len(sets) - 1) * rest_inside
    return rounds * one_round + (rounds - 1) * rest_after


def intervals(stations: int, work: int, rest: int, rounds: int, round_rest: int) -> int:
    """Timed intervals: each station `work` seconds, `rest` between stations."""
    return rounds_of([work] * stations, rounds, rest, round_rest)


def session(groups: Sequence[int], change_over_seconds: int) -> int:
    """The structures of a session with one change-over between each two."""
    return sum(groups) + max(len(groups) - 1, 0) * change_over_seconds


FEWEST_SESSIONS = 3
"""So many logged sessions before a client's own pace is used (common practice)."""

LATEST_SESSIONS = 8
"""So many sessions count, the latest ones: people get quicker (common practice)."""

PACE_BOUNDS = (Fraction(1, 2), Fraction(2))
"""Beyond these shares of the reckoned time a session is no measure of pace:
something came between, or part of it was left out (common practice)."""


@dataclass(frozen=True)
class OwnPace:
    """How a client's sessions compare with what the rules reckon.

    share: time taken divided by time reckoned; 1 when there is no difference.
    sessions: how many it was learned from.
    """

    share: Fraction
    sessions: int

    def seconds(self, reckoned: int) -> int:
        """What the client will need for what the rules reckon."""
        return math.ceil(reckoned * self.share)


def own_pace(sessions: Iterable[tuple[int, int]]) -> OwnPace | None:
    """A client's own pace: the middle of the shares, so that one odd day does
    not count.

    sessions: (seconds reckoned, seconds taken), oldest first.
    Returns None when fewer than FEWEST_SESSIONS lie within PACE_BOUNDS.
    """
    low, high = PACE_BOUNDS
    shares = [Fraction(taken, reckoned) for reckoned, taken in sessions if reckoned > 0]
    usual = [share for share in shares if low <= share <= high][-LATEST_SESSIONS:]
    return OwnPace(median(usual), len(usual)) if len(usual) >= FEWEST_SESSIONS else None


def clock(seconds: int) -> str:
    """Seconds as "24:54", or "1:05:00" from one hour on."""
    minutes, rest = divmod(seconds, 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours}:{minutes:02}:{rest:02}" if hours else f"{minutes}:{rest:02}"
