"""What comes next with a band, which has no number that every maker means alike.

The rule "next band" of `progression.yaml`.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from handouts.coaching.rules import number
from handouts.coaching.standing import Did, Proposal, Standing, cite, hold, percent
from handouts.models import Band

RULE = "next band"


def neighbour(standing: Standing, way: int) -> Band | None:
    """The band next in order; None where there is none.

    way: 1 for the stronger one, -1 for the lighter one.
    """
    names = [band.name for band in standing.bands]
    at = names.index(standing.band) + way if standing.band in names else -1
    return standing.bands[at] if 0 <= at < len(names) else None


def pull_apart(lighter: Band, stronger: Band) -> Fraction | None:
    """How much more a band pulls than another at full stretch, as a share of
    the lighter; None where their makers do not say."""
    if lighter.tension is None or stronger.tension is None:
        return None
    return Fraction(stronger.tension.most.kilograms) / Fraction(lighter.tension.most.kilograms) - 1


def too_far(lighter: Band, stronger: Band) -> bool:
    apart = pull_apart(lighter, stronger)
    return apart is not None and apart * 100 > number(RULE, "per cent")


def needed(standing: Standing) -> int:
    """Repetitions of the last set that earn the next band."""
    assert standing.usual is not None
    return min(standing.usual[1] + number(RULE, "above"), number("repetitions first", "most"))


def stronger(standing: Standing, run: tuple[Did, ...]) -> Proposal | tuple[int, str]:
    """The next band where it was earned, or why it has to wait; or how far
    repetitions go up in its place, and why, a clause.

    run: sessions in a row with the present band, the latest last.
    """
    most = number("repetitions first", "most")
    now = next((band for band in standing.bands if band.name == standing.band), Band(name=standing.band))
    after = neighbour(standing, 1)
    if after is None:
        return most, f"'{standing.band}' is the strongest band there, so repetitions go up"
    if too_far(now, after):
        apart = pull_apart(now, after)
        assert apart is not None
        return most, f"'{after.name}' pulls {percent(apart)} more than '{now.name}', so it is not proposed and repetitions go up"
    sessions, reps = number(RULE, "sessions"), needed(standing)
    latest = run[-sessions:]
    told = f"the last set had {' and '.join(str(one.last) for one in latest)} in {cite(standing, *latest)}"
    if len(latest) == sessions and all((one.last or 0) >= reps for one in latest):
        apart = pull_apart(now, after)
        more = f"it pulls {percent(apart)} more at full stretch" if apart is not None else "nobody has told how much more it pulls"
        goal = standing.goal if standing.goal_stays else standing.usual
        why = f"{told}, and {reps} were needed twice; '{after.name}' is the next band."
        return Proposal("raise", RULE, standing.load, goal, why, f"{more}; let the client feel it first, in an easy set.", after.name)
    assert standing.goal is not None
    if standing.goal[1] < reps:
        return reps, f"{reps} repetitions with '{now.name}' in {sessions} sessions in a row earn '{after.name}'"
    return hold(standing, RULE, f"{told}; {reps} in {sessions} sessions in a row earn '{after.name}'")


def lighter(standing: Standing, rule: str, why: str) -> Proposal | None:
    """A step back to the next lighter band; None where there is none, or where
    it would be too far to come back from."""
    before = neighbour(standing, -1)
    now = next((band for band in standing.bands if band.name == standing.band), None)
    if before is None or now is None or too_far(before, now):
        return None
    goal = standing.goal if standing.goal_stays else standing.usual
    back = Proposal("step back", rule, standing.load, goal, f"{why}; '{before.name}' is lighter than '{now.name}'.")
    return replace(back, band=before.name)
