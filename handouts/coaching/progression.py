"""What comes next in one exercise: from what was logged to a proposal.

Every rule stands in `progression.yaml` with its source; here they are followed.
Pure: what was done, what is asked and which weights there are come in; a
proposal with its reason goes out.  It proposes, and decides nothing.
"""

from __future__ import annotations

import datetime
import math
from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

from handouts.amounts import Mass
from handouts.coaching import bands, lengths
from handouts.coaching.loads import next_heavier, step_up
from handouts.coaching.rules import number
from handouts.coaching.standing import (
    Aim,
    Did,
    Goal,
    Proposal,
    Standing,
    ask,
    beyond_usual,
    cite,
    hold,
    percent,
    run_of,
)

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
        return hold(standing, back.rule if back else "one change", f"it stays as asked for{though}")
    if aim == "faster":
        return hold(standing, "one change", "weights and repetitions stay when the aim is a shorter time")
    if not (standing.held or standing.band) and aim != "more-reps":
        return hold(standing, "two for two", "no weight is held")
    if standing.held and standing.load is None:
        return ask(standing, "no weight is asked for")
    if standing.goal is None:
        return hold(standing, "two for two", f"no repetitions are asked for, so none can earn a weight{_too_far(standing)}")
    last = standing.did[-1] if standing.did else None
    if last is None:
        return ask(standing, "nothing is logged for it")
    if not last.told:
        return ask(standing, f"{cite(standing, last)} tells one side alone")
    if (standing.held and last.load is None) or last.last is None:
        count = "count" if standing.kind == "reps" else f"{standing.of_set} of every set"
        missing = count if last.last is None and last.load is not None else "weight" if standing.held else count
        return ask(standing, f"{cite(standing, last)} has no {missing}")
    if nothing_harder:
        return hold(standing, "too hard", nothing_harder)
    run = run_of(standing, day)
    if not run:
        told = f"{cite(standing, last)} is of {last.load}" if last.load != standing.load else cite(standing, last)
        return hold(standing, "two for two", f"{told}, and was not done as the sheet asks now")
    if standing.usual is not None and standing.goal[1] < standing.usual[1]:
        return _goal_back(standing, run)
    if standing.kind != "reps":
        return lengths.longer(standing, run, aim)
    if aim == "more-reps":
        return _more_reps(standing, run)
    return _stronger(standing, run) if standing.band else _heavier(standing, run)


def _too_far(standing: Standing) -> str:
    """A clause on the next weight where it is above the largest step, else ""."""
    heavier = next_heavier(standing.weights, standing.load) if standing.load else None
    bound = number("largest step", "per cent")
    if standing.load is None or heavier is None or step_up(standing.load, heavier) * 100 <= bound:
        return ""
    return f"; {heavier} is {percent(step_up(standing.load, heavier))} more than {standing.load}, and above {bound} % none is proposed"


def _after_break(standing: Standing, day: datetime.date) -> Proposal | None:
    if not standing.did or (day - standing.did[-1].day).days < number("break", "days"):
        return None
    last = standing.did[-1]
    why = f"{(day - last.day).days} days lie between {cite(standing, last)} and this plan"
    if not standing.held:
        return _without_weight(standing, "break", why) if last.same else hold(standing, "break", f"{why}; it has changed since")
    loads = [one.load for one in standing.did if one.load is not None]
    return _back(standing, loads[-1], "break", why) if loads else None


def _after_misses(standing: Standing) -> Proposal | None:
    if standing.goal is None or (standing.held and standing.load is None):
        return None
    # A goal that was raised for the next weight is no measure of a miss.
    bottom = min(_missed_below(standing, goal) for goal in (standing.goal, standing.usual) if goal is not None)
    needed = number("misses", "sessions")
    latest = standing.did[-needed:]
    missed = [one for one in latest if one.load == standing.load and one.counts and one.reps and min(one.reps) < bottom]
    if len(missed) < needed:
        return None
    if any((later.day - earlier.day).days >= number("break", "days") for earlier, later in pairwise(latest)):
        return None
    told = " and ".join("/".join(map(str, one.reps)) for one in missed)
    why = f"{told} in {cite(standing, *missed)} are below {standing.told((bottom, bottom))}"
    return _without_weight(standing, "misses", why) if standing.load is None else _back(standing, standing.load, "misses", why)


def _missed_below(standing: Standing, goal: Goal) -> int:
    return usual_bottom(goal)[0] if standing.kind == "reps" else lengths.least(goal)


def _easier(standing: Standing) -> Proposal:
    if standing.load is None:
        if standing.held:
            return hold(standing, "step back", "easier is asked for, and no weight; take a set out by hand")
        return _without_weight(standing, "step back", "easier is asked for")
    return _back(standing, standing.load, "step back", "easier is asked for")


def _back(standing: Standing, load: Mass, rule: str, why: str) -> Proposal:
    """A step back from a weight; where it was taken already, all stays."""
    lighter = stepped_back(standing.weights, load)
    if lighter is None:
        return _fewer_reps(standing, load, rule, why)
    if standing.load is not None and standing.load.kilograms <= lighter.kilograms:
        return hold(standing, rule, f"{why}; {standing.load} is a step back from {load} already")
    goal = standing.goal if standing.goal_stays else standing.usual
    down = percent(-step_up(load, lighter))
    return Proposal("step back", rule, lighter, goal, f"{why}; {lighter} is {down} lighter than {load}.")


def _fewer_reps(standing: Standing, load: Mass, rule: str, why: str) -> Proposal:
    """The step back where no weight is near enough below."""
    if standing.load is not None and standing.load.kilograms < load.kilograms:
        return hold(standing, rule, f"{why}; {standing.load} is a step back from {load} already")
    return _lower_goal(standing, rule, f"{why}; no weight is up to {number('step back', 'most')} % lighter than {load}")


def _without_weight(standing: Standing, rule: str, why: str) -> Proposal:
    """The step back with a band, or with the own body alone."""
    return (bands.lighter(standing, rule, why) if standing.band else None) or _lower_goal(standing, rule, why)


def _lower_goal(standing: Standing, rule: str, why: str) -> Proposal:
    """A third less of what a set has."""
    goal, usual = standing.goal, standing.usual
    if goal is None or usual is None or standing.goal_stays:
        return hold(standing, rule, f"{why}, and its goal is not changed here; make it easier by hand")
    lower = (max(1, usual[0] * 2 // 3), max(1, usual[1] * 2 // 3))
    if goal[1] <= lower[1]:
        return hold(standing, rule, f"{why}, and the goal of {standing.told(goal)} is low already")
    told = f"{why}, so {standing.dose(lower)} in place of {standing.told(goal)}."
    return Proposal("step back", rule, standing.load, lower, told)


def _goal_back(standing: Standing, run: tuple[Did, ...]) -> Proposal:
    """A goal that was lowered comes back once its top was reached."""
    goal, usual, done = standing.goal, standing.usual, run[-1].last
    assert goal is not None and usual is not None and done is not None
    told = f"the last set had {done} in {cite(standing, run[-1])}"
    if done < goal[1]:
        return hold(standing, "step back", f"{told}, and {goal[1]} brings the usual goal back")
    return Proposal("more reps", "step back", standing.load, usual, f"{told}, so the usual goal of {standing.told(usual)} comes back.")


def _stronger(standing: Standing, run: tuple[Did, ...]) -> Proposal:
    """The next band, where it was earned; repetitions first, where it was not."""
    found = bands.stronger(standing, run)
    return found if isinstance(found, Proposal) else _reps_first(standing, run, *found)


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
            f"{heavier} is {percent(step)} more than {load} and would allow {expected} now; {needed} with {load} are needed "
            f"for {usual[0]} with it, so it is not proposed and repetitions go up"
        )
        return _reps_first(standing, run, most, why)
    threshold = max(usual[1] + number("two for two", "above"), needed)
    sessions = number("two for two", "sessions")
    latest = run[-sessions:]
    if len(latest) == sessions and all((one.last or 0) >= threshold for one in latest):
        return _raised(standing, latest, heavier, threshold)
    if needed > usual[1] + number("two for two", "above") and goal[1] < threshold:
        why = f"{heavier} is {percent(step)} more than {load}, and {needed} repetitions with {load} are needed for {usual[0]} with it"
        return _reps_first(standing, run, threshold, why)
    told = " and ".join(str(one.last) for one in latest)
    why = f"the last set had {told} in {cite(standing, *latest)}; {threshold} in {sessions} sessions in a row earn {heavier}"
    return hold(standing, "two for two", why)


def _raised(standing: Standing, latest: Sequence[Did], heavier: Mass, threshold: int) -> Proposal:
    load = standing.load
    assert load is not None and standing.usual is not None
    usual = usual_bottom(standing.usual)
    step = step_up(load, heavier)
    weakest = min(one.last or 0 for one in latest)
    allowed = float(reps_allowed(load, weakest, heavier))
    why = (
        f"the last set had {' and '.join(str(one.last) for one in latest)} in {cite(standing, *latest)}, and {threshold} "
        f"were needed twice; {heavier} is {percent(step)} more and should allow about {allowed:.1f}, so start at {usual[0]}."
    )
    goal = standing.goal if standing.goal_stays else usual
    return Proposal("raise", "two for two", heavier, goal, why, beyond_usual(step))


def _reps_first(standing: Standing, run: tuple[Did, ...], most: int, why: str) -> Proposal:
    """A higher goal once the top of the present one was reached."""
    goal, done = standing.goal, run[-1].last
    assert goal is not None and done is not None
    most = min(most, number("repetitions first", "most"))
    told = f"{why}; the last set had {done} in {cite(standing, run[-1])}"
    if standing.goal_stays:
        return hold(standing, "repetitions first", f"{told}, and the goal stays, since {standing.goal_stays}")
    if goal[1] >= most:
        rest = "; at the top of it the trainer finds a smaller step, a slower tempo or a harder way" if done >= most else ""
        return hold(standing, "repetitions first", f"{told}, and {standing.told(goal)} is asked for already{rest}")
    if done < goal[1]:
        return hold(standing, "repetitions first", f"{told}, and {goal[1]} is the top of the goal")
    low = max(goal[0], min(done, most - number("two for two", "above")))
    new = (low, most)
    return Proposal("more reps", "repetitions first", standing.load, new, f"{told}: the goal is {standing.told(new)} with the same {'band' if standing.band else 'weight'}.")


def _more_reps(standing: Standing, run: tuple[Did, ...]) -> Proposal:
    goal, done = standing.goal, run[-1].last
    assert goal is not None and done is not None
    cited = f"the last set had {done} in {cite(standing, run[-1])}"
    most, more = number("repetitions first", "most"), number("more repetitions", "step")
    if standing.goal_stays:
        return hold(standing, "more repetitions", f"{cited}, and the goal stays, since {standing.goal_stays}")
    if done < goal[1]:
        return hold(standing, "more repetitions", f"{cited}, and {goal[1]} is the top of the goal")
    if goal[1] >= most:
        return hold(standing, "more repetitions", f"{cited}, and {most} is the most that is ever asked for")
    new = (min(goal[0] + more, most), min(goal[1] + more, most))
    return Proposal("more reps", "more repetitions", standing.load, new, f"{cited}, the top of the goal: it is {standing.told(new)} now.")
