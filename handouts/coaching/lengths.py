"""What comes next in holds, carries and all else that is counted in seconds or metres.

The rule "longer or farther" of `progression.yaml`.
"""

from __future__ import annotations

from fractions import Fraction

from handouts.coaching.loads import next_heavier, step_up
from handouts.coaching.rules import number
from handouts.coaching.standing import Aim, Did, Goal, Proposal, Standing, beyond_usual, cite, hold, percent

RULE = "longer or farther"


def least(goal: Goal) -> int:
    """Seconds or metres below which a set was missed."""
    low, high = goal
    return -(-low * number(RULE, "per cent") // 100) if low == high else low


def longer(standing: Standing, run: tuple[Did, ...], aim: Aim) -> Proposal:
    """A longer dose; at its most a heavier weight, where that is the aim.

    run: sessions in a row at what is asked for now, the latest last.
    """
    goal, sessions, most = standing.goal, number(RULE, "sessions"), number(RULE, "most")
    assert goal is not None
    latest = run[-sessions:]
    told = " and ".join("/".join(map(str, one.reps)) for one in latest)
    cited = f"{told} {standing.of_set} in {cite(standing, *latest)}"
    if len(latest) < sessions or any(min(one.reps) < goal[1] for one in latest):
        return hold(standing, RULE, f"{cited}; {standing.told((goal[1], goal[1]))} in every set of {sessions} sessions in a row earn more")
    if goal[1] < most and not standing.goal_stays:
        new = (min(goal[0] + number(RULE, "step"), most), min(goal[1] + number(RULE, "step"), most))
        return Proposal("more reps", RULE, standing.load, new, f"{cited}, all that was asked for: it is {standing.told(new)} now.")
    why = f"the goal stays, since {standing.goal_stays}" if standing.goal_stays else f"{most} is the most that is asked for"
    if aim != "heavier" or standing.load is None:
        return hold(standing, RULE, f"{cited}, and {why}; the trainer finds a harder way")
    return _heavier(standing, f"{cited}, and {why}")


def _heavier(standing: Standing, why: str) -> Proposal:
    assert standing.load is not None
    heavier = next_heavier(standing.weights, standing.load)
    if heavier is None:
        return hold(standing, RULE, f"{why}; {standing.load} is the heaviest there")
    step = step_up(standing.load, heavier)
    if step > Fraction(number("largest step", "per cent"), 100):
        return hold(standing, RULE, f"{why}; {heavier} is {percent(step)} more than {standing.load}, so it is not proposed")
    goal = standing.goal if standing.goal_stays else standing.usual
    told = f"{why}; {heavier} is {percent(step)} more than {standing.load}."
    return Proposal("raise", RULE, heavier, goal, told, beyond_usual(step))
