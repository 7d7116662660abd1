"""What comes next with bands, holds and carries.

Carries of 20 to 40 s or 20 to 40 m, one band after the other in order: common
practice, no source.  The numbers are those of the table of rules.
"""

from __future__ import annotations

import datetime

import pytest

from handouts.amounts import Mass, read_mass, read_tension
from handouts.coaching.bands import pull_apart
from handouts.coaching.progression import propose
from handouts.coaching.rules import number
from handouts.coaching.standing import Did, Goal, Kind, Proposal, Standing
from handouts.models import Band

ONE, TWO, THREE = Band(name="one knot"), Band(name="two knots"), Band(name="three knots")
LIGHT, MIDDLE, HEAVY = (
    Band(name=name, tension=read_tension(tension))
    for name, tension in (("light", "2-4 kg"), ("middle", "3-6 kg"), ("heavy", "5-10 kg"))
)
PAIRS = tuple(read_mass(f"{kg} kg") for kg in (10, 12, 14, 20))


def day(text: str) -> datetime.date:
    return datetime.date.fromisoformat(f"2029-{text}")


def did(date: str, *reps: int, load: str = "", line: int = 2, same: bool = True) -> Did:
    return Did(day(date), read_mass(load) if load else None, reps, line, counts=same, same=same)


def with_band(band: str, bands: tuple[Band, ...], goal: Goal, *done: Did, usual: Goal | None = None, stays: str = "") -> Standing:
    return Standing("row", None, goal, usual or goal, (), done, "logs/C.csv", stays, held=False, band=band, bands=bands)


def by_length(
    goal: Goal, *done: Did, load: str = "", weights: tuple[Mass, ...] = PAIRS, kind: Kind = "time", usual: Goal | None = None
) -> Standing:
    mass = read_mass(load) if load else None
    return Standing("carry", mass, goal, usual or goal, weights if load else (), done, "logs/C.csv", held=bool(load), kind=kind)


def told(found: Proposal) -> tuple[object, ...]:
    return found.move, found.rule, str(found.load) if found.load else "", found.goal, found.band


# --- bands ---------------------------------------------------------------------------


def test_the_next_band_is_earned_by_five_above_the_top_twice() -> None:
    twice = did("01-08", 15, 17, line=2), did("01-11", 15, 17, line=3)
    found = propose(with_band("one knot", (ONE, TWO, THREE), (8, 17), *twice, usual=(8, 12)), "heavier", day("01-12"))
    assert told(found) == ("raise", "next band", "", (8, 12), "two knots")
    assert "17 and 17 in logs/C.csv:2 and logs/C.csv:3, and 17 were needed twice" in found.why
    assert "nobody has told how much more it pulls" in found.warning
    once = propose(with_band("one knot", (ONE, TWO), (8, 17), twice[1], usual=(8, 12)), "heavier", day("01-12"))
    assert once.move == "hold" and "17 in 2 sessions in a row earn 'two knots'" in once.why
    less = propose(with_band("one knot", (ONE, TWO), (8, 17), did("01-08", 16), did("01-11", 17), usual=(8, 12)), "heavier", day("01-12"))
    assert less.move == "hold"


def test_repetitions_go_up_first_to_earn_a_band() -> None:
    found = propose(with_band("one knot", (ONE, TWO), (8, 12), did("01-11", 12, 12)), "heavier", day("01-12"))
    assert told(found) == ("more reps", "repetitions first", "", (12, 17), "")
    assert "17 repetitions with 'one knot' in 2 sessions in a row earn 'two knots'" in found.why
    assert found.why.endswith("with the same band.")


def test_a_band_that_pulls_more_than_half_as_much_again_is_not_proposed() -> None:
    # 4 kg to 6 kg at full stretch is 50 %, 6 kg to 10 kg is 66.7 %.
    assert pull_apart(LIGHT, MIDDLE) == pytest.approx(0.5) and number("next band", "per cent") == 50
    twice = did("01-08", 20, 20), did("01-11", 20, 20)
    assert propose(with_band("light", (LIGHT, MIDDLE, HEAVY), (8, 12), *twice), "heavier", day("01-12")).band == "middle"
    held = propose(with_band("middle", (LIGHT, MIDDLE, HEAVY), (8, 12), *twice), "heavier", day("01-12"))
    assert held.band == "" and "'heavy' pulls 66.7 % more than 'middle', so it is not proposed" in held.why
    assert held.goal == (18, 20)


def test_above_the_strongest_band_there_is_none() -> None:
    found = propose(with_band("two knots", (ONE, TWO), (18, 20), did("01-08", 20), did("01-11", 20)), "heavier", day("01-12"))
    assert found.move == "hold" and "'two knots' is the strongest band there" in found.why


def test_a_step_back_is_the_lighter_band_else_fewer_repetitions() -> None:
    missed = did("01-08", 7, 6), did("01-11", 7, 5)
    found = propose(with_band("two knots", (ONE, TWO), (8, 12), *missed), "heavier", day("01-12"))
    assert told(found) == ("step back", "misses", "", (8, 12), "one knot")
    lightest = propose(with_band("one knot", (ONE, TWO), (8, 12), *missed), "heavier", day("01-12"))
    assert told(lightest) == ("step back", "misses", "", (5, 8), "")
    # 10 kg back to 6 kg could never be come back from, since forward it is above the bound.
    far = propose(with_band("heavy", (LIGHT, MIDDLE, HEAVY), (8, 12), *missed), "heavier", day("01-12"))
    assert far.band == "" and far.goal == (5, 8)
    after = propose(with_band("two knots", (ONE, TWO), (8, 12), did("01-08", 12)), "heavier", day("02-19"))
    assert (after.rule, after.band) == ("break", "one knot") and after.why.startswith("42 days lie between logs/C.csv:2")
    again = propose(with_band("one knot", (ONE, TWO), (8, 12), did("01-08", 12, same=False)), "heavier", day("02-19"))
    assert again.move == "hold" and "it has changed since" in again.why
    assert propose(with_band("two knots", (ONE, TWO), (8, 12)), "easier", day("01-12")).band == "one knot"


def test_nothing_harder_and_nothing_unknown_earns_a_band() -> None:
    twice = did("01-08", 20), did("01-11", 20)
    assert propose(with_band("one knot", (ONE, TWO), (8, 12), *twice), "heavier", day("01-12"), "the effort was 10").move == "hold"
    assert propose(with_band("one knot", (ONE, TWO), (8, 12)), "heavier", day("01-12")).move == "ask"
    assert propose(with_band("one knot", (ONE, TWO), (8, 12), did("01-11")), "heavier", day("01-12")).move == "ask"
    other = did("01-08", 20, same=False), did("01-11", 20, same=False)
    assert propose(with_band("one knot", (ONE, TWO), (8, 12), *other), "heavier", day("01-12")).move == "hold"


# --- holds and carries ---------------------------------------------------------------------


@pytest.mark.parametrize("aim", ["heavier", "more-reps"])
@pytest.mark.parametrize("kind, unit", [("time", "s"), ("distance", "m")])
def test_five_more_after_two_sessions_with_all_of_it(aim, kind: Kind, unit: str) -> None:
    twice = did("01-08", 30, 30, 31, load="12 kg"), did("01-11", 30, 30, 30, load="12 kg", line=3)
    found = propose(by_length((30, 30), *twice, load="12 kg", kind=kind), aim, day("01-12"))
    assert told(found) == ("more reps", "longer or farther", "12 kg", (35, 35), "")
    assert "logs/C.csv:2 and logs/C.csv:3" in found.why and f"it is 35 {unit} now" in found.why
    once = propose(by_length((30, 30), twice[0], load="12 kg", kind=kind), aim, day("01-12"))
    assert once.move == "hold" and f"30 {unit} in every set of 2 sessions in a row earn more" in once.why
    one_set_short = did("01-08", 30, 29, 30, load="12 kg"), twice[1]
    assert propose(by_length((30, 30), *one_set_short, load="12 kg", kind=kind), aim, day("01-12")).move == "hold"


def test_at_forty_the_weight_goes_up_and_the_usual_time_comes_back() -> None:
    twice = did("01-08", 40, load="12 kg"), did("01-11", 40, load="12 kg")
    found = propose(by_length((40, 40), *twice, load="12 kg", usual=(30, 30)), "heavier", day("01-12"))
    assert told(found) == ("raise", "longer or farther", "14 kg", (30, 30), "")
    assert "16.7 % is more than the usual 10 %" in found.warning
    # 14 to 20 kg is 42.9 %, above the largest step of 25 %.
    far = propose(by_length((40, 40), *(did(on, 40, load="14 kg") for on in ("01-08", "01-11")), load="14 kg"), "heavier", day("01-12"))
    assert far.move == "hold" and "20 kg is 42.9 % more than 14 kg, so it is not proposed" in far.why
    top = propose(by_length((40, 40), *(did(on, 40, load="20 kg") for on in ("01-08", "01-11")), load="20 kg"), "heavier", day("01-12"))
    assert top.move == "hold" and "20 kg is the heaviest there" in top.why
    longer = propose(by_length((40, 40), *twice, load="12 kg"), "more-reps", day("01-12"))
    assert longer.move == "hold" and "40 is the most that is asked for" in longer.why
    beyond = propose(by_length((60, 60), *(did(on, 60, load="12 kg") for on in ("01-08", "01-11")), load="12 kg"), "more-reps", day("01-12"))
    assert beyond.move == "hold" and beyond.goal == (60, 60)
    near = propose(by_length((38, 38), *(did(on, 38, load="12 kg") for on in ("01-08", "01-11")), load="12 kg"), "more-reps", day("01-12"))
    assert near.goal == (40, 40)


def test_a_hold_without_a_weight_gets_longer_when_more_is_asked_for() -> None:
    twice = did("01-08", 20, 20), did("01-11", 20, 20)
    assert propose(by_length((20, 20), *twice), "more-reps", day("01-12")).goal == (25, 25)
    assert propose(by_length((20, 20), *twice), "heavier", day("01-12")).move == "hold"


def test_steps_back_of_holds_and_carries() -> None:
    # 80 % of 30 s is 24 s: 23 is a miss, 24 is none.
    missed = did("01-08", 30, 23, load="12 kg"), did("01-11", 23, 30, load="12 kg")
    found = propose(by_length((30, 30), *missed, load="12 kg"), "heavier", day("01-12"))
    assert told(found) == ("step back", "misses", "10 kg", (30, 30), "")
    near = did("01-08", 30, 24, load="12 kg"), did("01-11", 24, 30, load="12 kg")
    assert propose(by_length((30, 30), *near, load="12 kg"), "heavier", day("01-12")).move == "hold"
    hold = propose(by_length((30, 30), did("01-08", 10), did("01-11", 10)), "heavier", day("01-12"))
    assert told(hold) == ("step back", "misses", "", (20, 20), "") and "20 s in place of 30 s" in hold.why
    back = propose(by_length((20, 20), did("01-15", 20), usual=(30, 30)), "more-reps", day("01-16"))
    assert back.goal == (30, 30) and back.rule == "step back"
    after = propose(by_length((30, 30), did("01-08", 30)), "heavier", day("02-19"))
    assert (after.rule, after.goal) == ("break", (20, 20))
    assert propose(by_length((20, 20), did("01-08", 30), usual=(30, 30)), "heavier", day("02-19")).move == "hold"
    assert propose(by_length((30, 30)), "easier", day("01-12")).goal == (20, 20)


def test_an_unknown_time_is_asked_for() -> None:
    found = propose(by_length((30, 30), did("01-11", load="12 kg"), load="12 kg"), "heavier", day("01-12"))
    assert found.move == "ask" and "has no seconds of every set" in found.why
