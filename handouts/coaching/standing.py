"""Where one exercise stands, and what may be proposed for it: plain frozen data,
and the words that every rule has in common.
"""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal, TypeAlias

from handouts.amounts import Mass
from handouts.coaching.rules import number
from handouts.models import Band

Aim: TypeAlias = Literal["faster", "heavier", "more-reps", "easier", "hold"]
AIMS: tuple[Aim, ...] = ("faster", "heavier", "more-reps", "easier", "hold")

Goal: TypeAlias = tuple[int, int]
"""Lowest and highest repetitions, seconds or metres of a set; equal where one
number is asked for."""

Kind: TypeAlias = Literal["reps", "time", "distance"]
"""What a goal counts: repetitions, seconds or metres."""


@dataclass(frozen=True)
class Did:
    """One exercise on one day.

    load: of one weight, as stamped; None where it was not told.
    reps: of each set that was told, the last set last; () where none was.  The
        fewer of two sides.  Seconds or metres where the goal counts those.
    line: in the log.
    told: whether both sides were logged, where two take their turn.
    same: whether the same was asked then as now.
    counts: whether it was the same, and after any warning sign.
    """

    day: datetime.date
    load: Mass | None
    reps: tuple[int, ...]
    line: int
    told: bool = True
    counts: bool = True
    same: bool = True

    @property
    def last(self) -> int | None:
        """Repetitions, seconds or metres of the last set."""
        return self.reps[-1] if self.reps and self.told else None


@dataclass(frozen=True)
class Standing:
    """One exercise, or one side of it where each has its own weight.

    load: asked for now, None where the client chooses.
    goal: asked for now; usual: the goal to come back to with the next weight.
        None where the dose is left open.
    weights: all that can be held so, lightest first, none above a ceiling.
    did: oldest first.
    log: the file, for reasons.
    goal_stays: why the goal cannot be changed, a clause; "" where it can.
    held: whether a weight is held at all; without one the goal alone changes.
    kind: what the goal counts.
    each_side: whether two sides take their turn, and the goal is that of one.
    band: the name of the band in use, "" without one.
    bands: all of the client's, from the lightest to the strongest.
    """

    exercise: str
    load: Mass | None
    goal: Goal | None
    usual: Goal | None
    weights: tuple[Mass, ...]
    did: tuple[Did, ...]
    log: str
    goal_stays: str = ""
    held: bool = True
    kind: Kind = "reps"
    band: str = ""
    bands: tuple[Band, ...] = ()
    each_side: bool = False

    def dose(self, goal: Goal) -> str:
        """ "8 to 12 repetitions", "4 repetitions on each side", "35 s"."""
        unit = " repetitions" if self.kind == "reps" else ""
        return f"{self.told(goal)}{unit}{' on each side' if self.each_side else ''}"

    def told(self, goal: Goal) -> str:
        """ "8 to 12", "35 s", "20 m"."""
        unit = {"reps": "", "time": " s", "distance": " m"}[self.kind]
        return f"{goal[0]} to {goal[1]}{unit}" if goal[0] != goal[1] else f"{goal[0]}{unit}"

    @property
    def of_set(self) -> str:
        """What a set has, in words."""
        return {"reps": "repetitions", "time": "seconds", "distance": "metres"}[self.kind]


@dataclass(frozen=True)
class Proposal:
    """What to ask for next, and why.

    move: "raise" (of a weight or a band) and "more reps" (or longer, or
        farther) are harder, "step back" is easier; "hold" keeps all as it is,
        "ask" too, since something is unknown.
    rule: its name in the table.
    load, goal: to be asked for; as they were where they stay.
    why: a full sentence that names the lines of the log.
    warning: what the trainer should weigh, a full sentence, or "".
    band: the band to take in place of the present one, "" for no change.
    """

    move: Literal["raise", "more reps", "hold", "ask", "step back"]
    rule: str
    load: Mass | None
    goal: Goal | None
    why: str
    warning: str = ""
    band: str = ""

    @property
    def harder(self) -> bool:
        return self.move in ("raise", "more reps")


def cite(standing: Standing, *did: Did) -> str:
    return " and ".join(f"{standing.log}:{one.line}" for one in did)


def hold(standing: Standing, rule: str, why: str) -> Proposal:
    return Proposal("hold", rule, standing.load, standing.goal, f"{why}.")


def ask(standing: Standing, why: str) -> Proposal:
    return Proposal("ask", "unknown", standing.load, standing.goal, f"{why}, so nothing is earned; ask the client.")


def run_of(standing: Standing, day: datetime.date) -> tuple[Did, ...]:
    """The sessions at the weight asked for, latest last, with no break between
    and nothing unknown; () when the latest is not of them."""
    days = number("break", "days")
    run: list[Did] = []
    later = day
    for one in reversed(standing.did):
        if one.load != standing.load or not one.counts or one.last is None or (later - one.day).days >= days:
            break
        run.insert(0, one)
        later = one.day
    return tuple(run)


def beyond_usual(step: Fraction) -> str:
    """What a trainer should weigh of a step up in weight, a full sentence; "" of a usual one."""
    usual = number("usual step", "per cent")
    return f"{percent(step)} is more than the usual {usual} %; watch the first session." if step * 100 > usual else ""


def percent(share: Fraction) -> str:
    """ "12.5 %", rounded to a tenth."""
    text = f"{float(share * 100):.1f}"
    return f"{text.removesuffix('.0')} %"
