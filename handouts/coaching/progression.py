"""What comes next in one exercise: from what was logged to a proposal.

Every rule stands in `progression.yaml` with its source; here they are followed.
Pure: what was done, what is asked and which weights there are come in; a
proposal with its reason goes out.  It proposes, and decides nothing.
"""

from __future__ import annotations

import datetime
import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from typing import Literal, TypeAlias

from handouts.amounts import Mass
from handouts.coaching.loads import step_up
from handouts.coaching.rules import number

Aim: TypeAlias = Literal["faster", "heavier", "more-reps", "easier", "hold"]
AIMS: tuple[Aim, ...] = ("faster", "heavier", "more-reps", "easier", "hold")

Goal: TypeAlias = tuple[int, int]
"""Lowest and highest repetitions of a set; equal where one number is asked for."""


@dataclass(frozen=True)
class Did:
    """One exercise on one day.

    load: of one weight, as stamped; None where it was not told.
    reps: of each set that was told, the last set last; () where none was.  The
        fewer of two sides.
    line: in the log.
    told: whether both sides were logged, where two take their turn.
    counts: whether the same was asked then as now.
    """

    day: datetime.date
    load: Mass | None
    reps: tuple[int, ...]
    line: int
    told: bool = True
    counts: bool = True

    @property
    def last(self) -> int | None:
        """Repetitions of the last set."""
        return self.reps[-1] if self.reps and self.told else None


@dataclass(frozen=True)
class Standing:
    """One exercise, or one side of it where each has its own weight.

    load: asked for now, None where the client chooses.
    goal: asked for now; usual: the goal to come back to with the next weight.
        None where no repetitions are asked for.
    weights: all that can be held so, lightest first, none above a ceiling.
    did: oldest first.
    log: the file, for reasons.
    goal_stays: why the goal cannot be changed, a clause; "" where it can.
    held: whether a weight is held at all; without one repetitions alone change.
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


@dataclass(frozen=True)
class Proposal:
    """What to ask for next, and why.

    move: "raise" and "more reps" are harder, "step back" is easier; "hold"
        keeps all as it is, "ask" too, since something is unknown.
    rule: its name in the table.
    load, goal: to be asked for; as they were where they stay.
    why: a full sentence that names the lines of the log.
    warning: what the trainer should weigh, a full sentence, or "".
    """

    move: Literal["raise", "more reps", "hold", "ask", "step back"]
    rule: str
    load: Mass | None
    goal: Goal | None
    why: str
    warning: str = ""

    @property
    def harder(self) -> bool:
        return self.move in ("raise", "more reps")


# --- arithmetic ------------------------------------------------------------------


def usual_bottom(goal: Goal) -> Goal:
    """A goal with room below it: of one number, 10, it is 8 to 10."""
    low, high = goal
    return (min(low, number("repetitions first", "bottom")), high) if low == high else goal


def reps_allowed(load: Mass, reps: int, other: Mass) -> Fraction:
    """Repetitions that another weight is expected to allow after `reps` with
    `load`; below 1 when it allows none.

    reps: more than the formula is good for are counted as the most it is.
    Source: Epley 1985, the same formula both ways.
    """
    reps = min(reps, number("repetitions first", "most"))
    share = Fraction(load.kilograms) / Fraction(other.kilograms)
    return 30 * (share * (1 + Fraction(reps, 30)) - 1)


def reps_needed(load: Mass, other: Mass, bottom: int) -> int:
    """Repetitions with `load` that let one expect `bottom` with a heavier one.

    Source: Epley 1985, the same formula both ways.
    """
    share = Fraction(other.kilograms) / Fraction(load.kilograms)
    return math.ceil(30 * (share * (1 + Fraction(bottom, 30)) - 1))


def next_heavier(weights: Sequence[Mass], load: Mass) -> Mass | None:
    """The next of the client's weights, None when there is none."""
    return min((mass for mass in weights if mass.kilograms > load.kilograms), key=lambda mass: mass.kilograms, default=None)


def stepped_back(weights: Sequence[Mass], load: Mass) -> Mass | None:
    """The heaviest weight that is 10 to 20 per cent lighter, else the nearest
    that is not more than 20 lighter; None when there is none."""
    most = Fraction(load.kilograms) * (100 - number("step back", "least")) / 100
    least = Fraction(load.kilograms) * (100 - number("step back", "most")) / 100
    near = [mass for mass in weights if least <= Fraction(mass.kilograms) < Fraction(load.kilograms)]
    within = [mass for mass in near if Fraction(mass.kilograms) <= most]
    return max(within or near, key=lambda mass: mass.kilograms, default=None)


# --- the proposal ----------------------------------------------------------------


def propose(standing: Standing, aim: Aim, day: datetime.date, nothing_harder: str = "") -> Proposal:
    """What the rules propose for one exercise.

    day: on which the next plan begins.
    nothing_harder: why nothing may get harder, a clause; "" where it may.
    """
    back = _after_break(standing, day) or _after_misses(standing)
    if aim != "hold" and back is not None:
        return back
    if aim == "easier":
        return _easier(standing)
    if aim == "hold":
        though = f", though {back.why.removesuffix('.')}" if back is not None else ""
        return _hold(standing, back.rule if back else "one change", f"it stays as asked for{though}")
    if aim == "faster":
        return _hold(standing, "one change", "weights and repetitions stay when the aim is a shorter time")
    if not standing.held and aim != "more-reps":
        return _hold(standing, "two for two", "no weight is held")
    if standing.held and standing.load is None:
        return _ask(standing, "no weight is asked for")
    if standing.goal is None:
        return _hold(standing, "two for two", f"no repetitions are asked for, so none can earn a weight{_too_far(standing)}")
    last = standing.did[-1] if standing.did else None
    if last is None:
        return _ask(standing, "nothing is logged for it")
    if not last.told:
        return _ask(standing, f"{_cite(standing, last)} tells one side alone")
    if (standing.held and last.load is None) or last.last is None:
        missing = "count" if last.last is None and last.load is not None else "weight" if standing.held else "count"
        return _ask(standing, f"{_cite(standing, last)} has no {missing}")
    if nothing_harder:
        return _hold(standing, "too hard", nothing_harder)
    run = _run(standing, day)
    if not run:
        told = f"{_cite(standing, last)} is of {last.load}" if last.load != standing.load else _cite(standing, last)
        return _hold(standing, "two for two", f"{told}, and was not done as the sheet asks now")
    if standing.usual is not None and standing.goal[1] < standing.usual[1]:
        return _goal_back(standing, run)
    return _more_reps(standing, run) if aim == "more-reps" else _heavier(standing, run)


def _too_far(standing: Standing) -> str:
    """A clause on the next weight where it is above the largest step, else ""."""
    heavier = next_heavier(standing.weights, standing.load) if standing.load else None
    bound = number("largest step", "per cent")
    if standing.load is None or heavier is None or step_up(standing.load, heavier) * 100 <= bound:
        return ""
    return f"; {heavier} is {_percent(step_up(standing.load, heavier))} more than {standing.load}, and above {bound} % none is proposed"


def _cite(standing: Standing, *did: Did) -> str:
    return " and ".join(f"{standing.log}:{one.line}" for one in did)


def _hold(standing: Standing, rule: str, why: str) -> Proposal:
    return Proposal("hold", rule, standing.load, standing.goal, f"{why}.")


def _ask(standing: Standing, why: str) -> Proposal:
    return Proposal("ask", "unknown", standing.load, standing.goal, f"{why}, so nothing is earned; ask the client.")


def _run(standing: Standing, day: datetime.date) -> tuple[Did, ...]:
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


def _after_break(standing: Standing, day: datetime.date) -> Proposal | None:
    done = [one for one in standing.did if one.load is not None]
    if not done or (day - standing.did[-1].day).days < number("break", "days"):
        return None
    last = done[-1]
    assert last.load is not None
    away = (day - standing.did[-1].day).days
    why = f"{away} days lie between {_cite(standing, standing.did[-1])} and this plan"
    return _back(standing, last.load, "break", why)


def _after_misses(standing: Standing) -> Proposal | None:
    if standing.goal is None or standing.load is None:
        return None
    # A goal that was raised for the next weight is no measure of a miss.
    bottom = min(usual_bottom(goal)[0] for goal in (standing.goal, standing.usual) if goal is not None)
    needed = number("misses", "sessions")
    latest = standing.did[-needed:]
    missed = [one for one in latest if one.load == standing.load and one.counts and one.reps and min(one.reps) < bottom]
    if len(missed) < needed:
        return None
    if any((later.day - earlier.day).days >= number("break", "days") for earlier, later in pairwise(latest)):
        return None
    told = " and ".join("/".join(map(str, one.reps)) for one in missed)
    return _back(standing, standing.load, "misses", f"{told} in {_cite(standing, *missed)} are below {bottom}")


def _easier(standing: Standing) -> Proposal:
    if standing.load is None:
        return _hold(standing, "step back", "easier is asked for, and no weight; take a set out by hand")
    return _back(standing, standing.load, "step back", "easier is asked for")


def _back(standing: Standing, load: Mass, rule: str, why: str) -> Proposal:
    """A step back from a weight; where it was taken already, all stays."""
    lighter = stepped_back(standing.weights, load)
    if lighter is None:
        return _fewer_reps(standing, load, rule, why)
    if standing.load is not None and standing.load.kilograms <= lighter.kilograms:
        return _hold(standing, rule, f"{why}; {standing.load} is a step back from {load} already")
    goal = standing.goal if standing.goal_stays else standing.usual
    down = _percent(-step_up(load, lighter))
    return Proposal("step back", rule, lighter, goal, f"{why}; {lighter} is {down} lighter than {load}.")


def _fewer_reps(standing: Standing, load: Mass, rule: str, why: str) -> Proposal:
    """The step back where no weight is near enough below."""
    goal, usual = standing.goal, standing.usual
    none = f"{why}; no weight is up to {number('step back', 'most')} % lighter than {load}"
    if goal is None or usual is None or standing.goal_stays:
        return _hold(standing, rule, f"{none}, and its goal is not changed here; make it easier by hand")
    if standing.load is not None and standing.load.kilograms < load.kilograms:
        return _hold(standing, rule, f"{why}; {standing.load} is a step back from {load} already")
    lower = (max(1, usual[0] * 2 // 3), max(1, usual[1] * 2 // 3))
    if goal[1] <= lower[1]:
        return _hold(standing, rule, f"{none}, and the goal of {_told(goal)} is low already")
    return Proposal("step back", rule, standing.load, lower, f"{none}, so {_told(lower)} repetitions in place of {_told(goal)}.")


def _goal_back(standing: Standing, run: tuple[Did, ...]) -> Proposal:
    """A goal that was lowered comes back once its top was reached."""
    goal, usual, done = standing.goal, standing.usual, run[-1].last
    assert goal is not None and usual is not None and done is not None
    told = f"the last set had {done} in {_cite(standing, run[-1])}"
    if done < goal[1]:
        return _hold(standing, "step back", f"{told}, and {goal[1]} brings the usual goal back")
    return Proposal("more reps", "step back", standing.load, usual, f"{told}, so the usual goal of {_told(usual)} comes back.")


def _heavier(standing: Standing, run: tuple[Did, ...]) -> Proposal:
    """The next weight, where it was earned; repetitions first, where it is far."""
    load, goal = standing.load, standing.goal
    assert load is not None and goal is not None and standing.usual is not None
    usual = usual_bottom(standing.usual)
    heavier = next_heavier(standing.weights, load)
    most = number("repetitions first", "most")
    if heavier is None:
        return _reps_first(standing, run, most, f"{load} is the heaviest there, so repetitions go up")
    step = step_up(load, heavier)
    needed = reps_needed(load, heavier, usual[0])
    if step > Fraction(number("largest step", "per cent"), 100) or needed > most:
        allowed = reps_allowed(load, run[-1].last or 0, heavier)
        expected = f"about {float(allowed):.1f} repetitions" if allowed >= 1 else "not even one repetition"
        why = (
            f"{heavier} is {_percent(step)} more than {load} and would allow {expected} now; {needed} with {load} are needed "
            f"for {usual[0]} with it, so it is not proposed and repetitions go up"
        )
        return _reps_first(standing, run, most, why)
    threshold = max(usual[1] + number("two for two", "above"), needed)
    sessions = number("two for two", "sessions")
    latest = run[-sessions:]
    if len(latest) == sessions and all((one.last or 0) >= threshold for one in latest):
        return _raised(standing, latest, heavier, threshold)
    if needed > usual[1] + number("two for two", "above") and goal[1] < threshold:
        why = f"{heavier} is {_percent(step)} more than {load}, and {needed} repetitions with {load} are needed for {usual[0]} with it"
        return _reps_first(standing, run, threshold, why)
    told = " and ".join(str(one.last) for one in latest)
    why = f"the last set had {told} in {_cite(standing, *latest)}; {threshold} in {sessions} sessions in a row earn {heavier}"
    return _hold(standing, "two for two", why)


def _raised(standing: Standing, latest: Sequence[Did], heavier: Mass, threshold: int) -> Proposal:
    load = standing.load
    assert load is not None and standing.usual is not None
    usual = usual_bottom(standing.usual)
    step = step_up(load, heavier)
    weakest = min(one.last or 0 for one in latest)
    allowed = float(reps_allowed(load, weakest, heavier))
    why = (
        f"the last set had {' and '.join(str(one.last) for one in latest)} in {_cite(standing, *latest)}, and {threshold} "
        f"were needed twice; {heavier} is {_percent(step)} more and should allow about {allowed:.1f}, so start at {usual[0]}."
    )
    warning = ""
    if step > Fraction(number("usual step", "per cent"), 100):
        warning = f"{_percent(step)} is more than the usual {number('usual step', 'per cent')} %; watch the first session."
    goal = standing.goal if standing.goal_stays else usual
    return Proposal("raise", "two for two", heavier, goal, why, warning)


def _reps_first(standing: Standing, run: tuple[Did, ...], most: int, why: str) -> Proposal:
    """A higher goal once the top of the present one was reached."""
    goal, done = standing.goal, run[-1].last
    assert goal is not None and done is not None
    most = min(most, number("repetitions first", "most"))
    told = f"{why}; the last set had {done} in {_cite(standing, run[-1])}"
    if standing.goal_stays:
        return _hold(standing, "repetitions first", f"{told}, and the goal stays, since {standing.goal_stays}")
    if goal[1] >= most:
        rest = "; at the top of it the trainer finds a smaller step, a slower tempo or a harder way" if done >= most else ""
        return _hold(standing, "repetitions first", f"{told}, and {_told(goal)} is asked for already{rest}")
    if done < goal[1]:
        return _hold(standing, "repetitions first", f"{told}, and {goal[1]} is the top of the goal")
    low = max(goal[0], min(done, most - number("two for two", "above")))
    new = (low, most)
    return Proposal("more reps", "repetitions first", standing.load, new, f"{told}: the goal is {_told(new)} with the same weight.")


def _more_reps(standing: Standing, run: tuple[Did, ...]) -> Proposal:
    goal, done = standing.goal, run[-1].last
    assert goal is not None and done is not None
    cited = f"the last set had {done} in {_cite(standing, run[-1])}"
    most, more = number("repetitions first", "most"), number("more repetitions", "step")
    if standing.goal_stays:
        return _hold(standing, "more repetitions", f"{cited}, and the goal stays, since {standing.goal_stays}")
    if done < goal[1]:
        return _hold(standing, "more repetitions", f"{cited}, and {goal[1]} is the top of the goal")
    if goal[1] >= most:
        return _hold(standing, "more repetitions", f"{cited}, and {most} is the most that is ever asked for")
    new = (min(goal[0] + more, most), min(goal[1] + more, most))
    return Proposal("more reps", "more repetitions", standing.load, new, f"{cited}, the top of the goal: it is {_told(new)} now.")


def _told(goal: Goal) -> str:
    return f"{goal[0]} to {goal[1]}" if goal[0] != goal[1] else str(goal[0])


def _percent(share: Fraction) -> str:
    """ "12.5 %", rounded to a tenth."""
    text = f"{float(share * 100):.1f}"
    return f"{text.removesuffix('.0')} %"
