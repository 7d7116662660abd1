"""The rules of progression, held against the published ones and the demo's log.

Two for two: Graves and Baechle, as quoted after Baechle and Earle (second-hand).
Steps of 2 to 10 per cent: American College of Sports Medicine 2009, abstract.
Repetitions that a weight allows: Epley 1985, maximum = weight (1 + reps / 30).
What says "common practice" in the table has no published source.
"""

from __future__ import annotations

import datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from handouts.amounts import Mass, read_mass
from handouts.coaching.loads import next_heavier, step_up
from handouts.coaching.progression import propose, reps_allowed, reps_needed, stepped_back, usual_bottom
from handouts.coaching.rules import number, read_rules, rules
from handouts.coaching.standing import AIMS, Did, Standing
from handouts.errors import StudioFaults

GYM_KG = tuple(read_mass(f"{kg} kg") for kg in (*range(1, 11), 12, 14, 16, 18, 20, "22.5", 25))
GYM_LB = tuple(read_mass(f"{lb} lb") for lb in range(5, 55, 5))
HOME_LB = tuple(read_mass(f"{lb} lb") for lb in (5, 8, 10, 12, 15))
HOME_KG = tuple(read_mass(f"{kg} kg") for kg in (2, 3, 4, 5))


def day(text: str) -> datetime.date:
    return datetime.date.fromisoformat(f"2029-{text}")


def did(date: str, load: str | None, *reps: int, line: int = 2, **more: bool) -> Did:
    return Did(day(date), read_mass(load) if load else None, reps, line, **more)


def standing(load: str, goal: tuple[int, int], weights: tuple[Mass, ...], *done: Did, usual=None, stays="") -> Standing:
    return Standing("squat", read_mass(load), goal, usual or goal, weights, done, "logs/C.csv", stays)


# --- arithmetic --------------------------------------------------------------------


@pytest.mark.parametrize(
    "load, heavier, needed",
    [
        # Epley, worked by hand: 30 (h/l (1 + 8/30) - 1), rounded up.
        ("10 kg", "12.5 kg", 18),
        ("8 kg", "10 kg", 18),
        ("12 kg", "14 kg", 15),
        ("20 kg", "22.5 kg", 13),
        ("10 lb", "12 lb", 16),
        ("3 kg", "4 kg", 21),
    ],
)
def test_repetitions_that_earn_eight_with_the_next_weight(load, heavier, needed):
    assert reps_needed(read_mass(load), read_mass(heavier), 8) == needed


def test_what_the_next_weight_allows():
    # 16 kg x 14 is 23.47 kg by Epley, and 9.11 repetitions with 18 kg.
    assert round(float(reps_allowed(read_mass("16 kg"), 14, read_mass("18 kg"))), 1) == 9.1
    assert round(float(reps_allowed(read_mass("40 lb"), 14, read_mass("45 lb"))), 1) == 9.1
    assert reps_allowed(read_mass("5 lb"), 15, read_mass("8 lb")) < 0


@pytest.mark.parametrize(
    "load, weights, share",
    [("10 kg", ("12.5 kg",), 25), ("5 kg", ("7.5 kg",), 50), ("15 kg", ("20 kg",), 33.3), ("20 kg", ("22.5 kg",), 12.5)],
)
def test_the_next_weight_and_how_far_it_is(load, weights, share):
    heavier = next_heavier([read_mass(weight) for weight in weights], read_mass(load))
    assert heavier is not None
    assert round(float(step_up(read_mass(load), heavier) * 100), 1) == share


@pytest.mark.parametrize(
    "load, weights, back",
    [
        ("40 lb", GYM_LB, "35 lb"),  # 32 to 36 lb is 10 to 20 % lighter
        ("20 kg", GYM_KG, "18 kg"),
        ("10 lb", HOME_LB, "8 lb"),
        ("25 kg", GYM_KG, "22.5 kg"),
        ("5 kg", HOME_KG, "4 kg"),
        ("4 kg", HOME_KG, None),  # 3 kg is a quarter lighter
        ("2 kg", HOME_KG, None),
    ],
)
def test_a_step_back_is_ten_to_twenty_per_cent(load, weights, back):
    assert stepped_back(weights, read_mass(load)) == (read_mass(back) if back else None)


def test_a_goal_of_one_number_has_room_below():
    assert usual_bottom((10, 10)) == (8, 10)
    assert usual_bottom((6, 6)) == (6, 6)
    assert usual_bottom((8, 12)) == (8, 12)


# --- the demo's log, as it was written down before the program was --------------------


SQUATS = (
    did("01-08", "16 kg", 10, 10, 9, line=2),
    did("01-11", "16 kg", 12, 11, 11, line=3),
    did("01-15", "16 kg", 12, 12, 14, line=4),
    did("01-18", "16 kg", 12, 12, 14, line=5),
)


def test_1_to_4_two_sessions_at_two_over_raise_with_a_warning():
    found = propose(standing("16 kg", (8, 12), GYM_KG, *SQUATS), "heavier", day("01-19"))
    assert (found.move, str(found.load), found.goal, found.rule) == ("raise", "18 kg", (8, 12), "two for two")
    assert "logs/C.csv:4 and logs/C.csv:5" in found.why and "about 9.1" in found.why
    assert found.warning.startswith("12.5 % is more than the usual 10 %")


@pytest.mark.parametrize("sessions", [1, 2, 3])
def test_before_that_it_stays(sessions):
    found = propose(standing("16 kg", (8, 12), GYM_KG, *SQUATS[:sessions]), "heavier", day("01-19"))
    assert found.move == "hold" and found.load == read_mass("16 kg")


def test_5_a_late_log_of_an_older_version_earns_nothing():
    late = did("01-19", "16 kg", 12, 12, 14, line=6, counts=False)
    found = propose(standing("16 kg", (8, 12), GYM_KG, *SQUATS[:3], late), "heavier", day("01-20"))
    assert found.move == "hold"


def test_6_a_fifth_more_asks_for_repetitions_first():
    found = propose(standing("10 lb", (10, 10), HOME_LB, did("01-09", "10 lb", 12)), "heavier", day("01-10"))
    assert (found.move, found.goal, str(found.load)) == ("more reps", (12, 16), "10 lb")
    assert "12 lb is 20 % more" in found.why and "16 repetitions" in found.why and "logs/C.csv:2" in found.why


def test_after_the_repetitions_the_weight_and_the_usual_goal():
    twice = (did("01-20", "10 lb", 16, line=5), did("01-23", "10 lb", 17, line=6))
    found = propose(standing("10 lb", (12, 16), HOME_LB, *twice, usual=(10, 10)), "heavier", day("01-24"))
    assert (found.move, str(found.load), found.goal) == ("raise", "12 lb", (8, 10))


def test_9_a_third_more_is_never_proposed():
    found = propose(standing("3 kg", (8, 12), HOME_KG, did("01-10", "3 kg", 15)), "heavier", day("01-11"))
    assert (found.move, found.goal) == ("more reps", (15, 20))
    assert "4 kg is 33.3 % more" in found.why and "21 with 3 kg are needed" in found.why
    many = tuple(did(f"01-{at}", "3 kg", 20, 20, 25, line=at) for at in (12, 14, 16))
    stays = propose(standing("3 kg", (15, 20), HOME_KG, *many, usual=(8, 12)), "heavier", day("01-17"))
    assert stays.move == "hold" and "smaller step" in stays.why


def test_11_at_the_top_and_not_two_over_stays_and_one_side_alone_is_asked_for():
    row = standing("20 kg", (8, 12), GYM_KG, did("01-09", "20 kg", 12, 12, 12))
    assert propose(row, "heavier", day("01-10")).move == "hold"
    alone = standing("20 kg", (8, 12), GYM_KG, did("01-09", "20 kg", 12, 12, 14, told=False))
    found = propose(alone, "heavier", day("01-10"))
    assert found.move == "ask" and "one side alone" in found.why


def test_14_sixty_per_cent_more_allows_not_one():
    found = propose(standing("5 lb", (8, 12), HOME_LB, did("01-18", "5 lb", 15)), "heavier", day("01-19"))
    assert found.load == read_mass("5 lb") and "not even one repetition" in found.why and "60 % more" in found.why


PRESSES = (did("01-08", "40 lb", 12, 12, 14, line=2), did("01-11", "40 lb", 12, 12, 14, line=3))


def test_15_and_16_raise():
    found = propose(standing("40 lb", (8, 12), GYM_LB, *PRESSES), "heavier", day("01-12"))
    assert (found.move, str(found.load)) == ("raise", "45 lb") and "about 9.1" in found.why


def test_17_a_break_takes_the_raise_back():
    found = propose(standing("40 lb", (8, 12), GYM_LB, *PRESSES), "heavier", day("02-12"))
    assert (found.move, str(found.load), found.rule) == ("step back", "35 lb", "break")
    assert "32 days" in found.why
    lighter = standing("35 lb", (8, 12), GYM_LB, *PRESSES)
    assert propose(lighter, "heavier", day("02-14")).move == "hold"


# --- each rule -----------------------------------------------------------------------


def test_thirteen_days_are_no_break_and_fourteen_are():
    press = standing("40 lb", (8, 12), GYM_LB, *PRESSES)
    assert propose(press, "heavier", day("01-24")).move == "raise"
    assert propose(press, "heavier", day("01-25")).rule == "break"


def test_a_break_between_two_sessions_parts_them():
    apart = (did("01-08", "40 lb", 12, 12, 14, line=2), did("01-23", "40 lb", 12, 12, 14, line=3))
    assert propose(standing("40 lb", (8, 12), GYM_LB, *apart), "heavier", day("01-24")).move == "hold"


def test_two_sessions_below_the_bottom_step_back_and_one_does_not():
    missed = (did("01-08", "16 kg", 8, 7, 6, line=2), did("01-11", "16 kg", 9, 8, 7, line=3))
    for aim in ("heavier", "more-reps", "faster"):
        found = propose(standing("16 kg", (8, 12), GYM_KG, *missed), aim, day("01-12"))
        assert (found.move, str(found.load), found.rule) == ("step back", "14 kg", "misses")
    one = propose(standing("16 kg", (8, 12), GYM_KG, did("01-04", "16 kg", 8, 8, 8), missed[1]), "heavier", day("01-12"))
    assert one.move == "hold"


def test_without_a_lighter_weight_there_are_fewer_repetitions_and_they_come_back():
    missed = (did("01-08", "4 kg", 6, 5, line=2), did("01-11", "4 kg", 7, 6, line=3))
    found = propose(standing("4 kg", (8, 12), HOME_KG, *missed), "heavier", day("01-12"))
    assert (found.move, str(found.load), found.goal) == ("step back", "4 kg", (5, 8))
    low = standing("4 kg", (5, 8), HOME_KG, did("01-15", "4 kg", 7, 7), usual=(8, 12))
    assert propose(low, "heavier", day("01-16")).move == "hold"
    back = standing("4 kg", (5, 8), HOME_KG, did("01-15", "4 kg", 8, 9), usual=(8, 12))
    found = propose(back, "heavier", day("01-16"))
    assert (found.move, found.goal) == ("more reps", (8, 12))


def test_nothing_gets_harder_when_something_speaks_against_it():
    for aim in AIMS:
        found = propose(standing("16 kg", (8, 12), GYM_KG, *SQUATS), aim, day("01-19"), "the effort was too high")
        assert not found.harder


@pytest.mark.parametrize(
    "last, why",
    [
        (did("01-18", None, 12, 12, 14), "has no weight"),
        (did("01-18", "16 kg"), "has no count"),
    ],
)
def test_unknown_earns_nothing(last, why):
    found = propose(standing("16 kg", (8, 12), GYM_KG, SQUATS[2], last), "heavier", day("01-19"))
    assert found.move == "ask" and why in found.why


def test_other_weights_than_asked_for_earn_nothing():
    lighter = (did("01-15", "14 kg", 12, 12, 15), did("01-18", "14 kg", 12, 12, 15))
    assert propose(standing("16 kg", (8, 12), GYM_KG, *lighter), "heavier", day("01-19")).move == "hold"


def test_more_repetitions_go_up_by_two_to_twenty():
    found = propose(standing("16 kg", (8, 12), GYM_KG, did("01-18", "16 kg", 12, 12, 12)), "more-reps", day("01-19"))
    assert (found.move, found.goal) == ("more reps", (10, 14))
    most = standing("16 kg", (18, 20), GYM_KG, did("01-18", "16 kg", 20, 20, 22))
    assert propose(most, "more-reps", day("01-19")).move == "hold"


def test_easier_and_hold():
    squat = standing("16 kg", (8, 12), GYM_KG, *SQUATS)
    assert str(propose(squat, "easier", day("01-19")).load) == "14 kg"
    assert propose(squat, "hold", day("01-19")).move == "hold"
    assert propose(squat, "hold", day("03-19")).move == "hold"


# --- whatever is logged ----------------------------------------------------------------


masses = st.sampled_from([*GYM_KG, *GYM_LB])
racks = st.sets(masses, min_size=1, max_size=10).map(lambda rack: tuple(sorted(rack, key=lambda mass: mass.kilograms)))
dones = st.lists(
    st.builds(
        Did,
        st.dates(day("01-01"), day("03-01")),
        st.one_of(st.none(), masses),
        st.lists(st.integers(0, 30), max_size=4).map(tuple),
        st.integers(2, 99),
        st.booleans(),
        st.booleans(),
    ),
    max_size=8,
).map(lambda each: tuple(sorted(each, key=lambda one: one.day)))
goals = st.tuples(st.integers(1, 15), st.integers(0, 5)).map(lambda pair: (pair[0], pair[0] + pair[1]))


@given(st.data(), racks, goals, goals, dones, st.sampled_from(AIMS), st.dates(day("01-01"), day("05-01")))
def test_whatever_was_logged_the_bounds_hold(data, rack, goal, usual, done, aim, on):
    load = data.draw(st.sampled_from(rack))
    found = propose(Standing("x", load, goal, usual, rack, done, "logs/C.csv"), aim, on)
    assert found.load in rack
    assert step_up(load, found.load) <= 1 / 4
    assert found.goal is not None and 1 <= found.goal[0] <= found.goal[1] <= max(20, goal[1], usual[1])
    assert found.why.endswith(".") and found.rule in rules()
    if found.load.kilograms > load.kilograms:
        told = [one for one in done if one.load is not None and one.last is not None][-2:]
        assert len(told) == 2 and all(one.load == load and (one.last or 0) >= usual[1] + 2 for one in told)
    if aim in ("easier", "hold", "faster"):
        assert not found.harder


# --- the table ---------------------------------------------------------------------------


def test_every_rule_says_what_it_is_and_where_it_comes_from():
    for name, rule in rules().items():
        assert rule.says.endswith(".") and rule.source, name
    assert (number("two for two", "sessions"), number("two for two", "above")) == (2, 2)
    assert number("usual step", "per cent") == 10


def test_numbers_lie_in_the_ranges_of_the_position_stands():
    """American College of Sports Medicine 2009, Progression models in resistance
    training (abstract): 2 to 10 per cent after one to two repetitions more.
    The same by goal (university summary): 8 to 12 repetitions for novices, rests
    of 2 to 3 minutes for main lifts, 1 to 2 minutes for others.
    National Strength and Conditioning Association (study pages): endurance sets
    of 12 and more; rests of 30 to 90 s for growth."""
    assert 2 <= number("usual step", "per cent") <= 10
    assert 1 <= number("two for two", "above") <= 2
    assert 8 <= number("repetitions first", "bottom") <= 12 <= number("repetitions first", "most") <= 25
    assert 60 <= number("shorter rest", "shortest") <= 120
    # Common practice: 10 to 20 per cent lighter after two weeks; carries of 20 to 40 s or m.
    assert (number("step back", "least"), number("step back", "most"), number("break", "days")) == (10, 20, 14)
    assert 20 < number("longer or farther", "most") <= 40


def test_the_plan_to_start_from_lies_in_them_too():
    from handouts import carried
    from handouts.models import StraightSets
    from handouts.reading.plan import plan_from
    from handouts.reading.yaml_text import read_yaml

    folder = carried.demo_studio().parent
    (path,) = [path for path in folder.rglob("first-v1.yaml")]
    plan = plan_from(read_yaml(path.read_text("utf-8"), "plans/first-v1.yaml"), "plans/first-v1.yaml").facts
    works = [work for each in plan.session for work in ((each,) if isinstance(each, StraightSets) else each.exercises)]
    for work in works:
        if work.dose is not None and work.dose.at(1).kind == "reps":
            assert 8 <= work.dose.at(1).low <= work.dose.at(1).high <= 12
    rests = [each.rest.at(1) if isinstance(each, StraightSets) else each.rest_after.at(1) for each in plan.session]
    assert all(60 <= rest <= 180 for rest in rests) and plan.session[0].sets.at(1) in (1, 2, 3)


def test_a_rule_without_its_number_is_a_fault(tmp_path):
    from handouts.coaching import rules as module

    text = module._TABLE.read_text("utf-8")
    broken = tmp_path / "progression.yaml"
    broken.write_text(text.replace("    numbers:\n      days: 14\n", ""), "utf-8")
    with pytest.raises(StudioFaults, match="break"):
        read_rules(broken)
    broken.write_text(text + "\n  another:\n    says: Something.\n    source: nobody\n", "utf-8")
    with pytest.raises(StudioFaults):
        read_rules(broken)
