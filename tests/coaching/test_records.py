"""What a log adds up to, held against worked examples.

Volume load as sets x repetitions x weight: NSCA examination study pages.
Session load as effort x minutes: Foster and others (abstract).  Pairs, sides,
density: common practice.  The middle of slopes: Theil 1950, Sen 1968 (from
memory), worked by hand.
"""

from __future__ import annotations

import datetime
from fractions import Fraction

import pytest

from handouts.amounts import read_mass
from handouts.coaching.records import (
    Lifted,
    best_set,
    carried,
    density,
    estimated_best,
    kept,
    session_load,
    trend,
    volume_load,
)

FIRST = datetime.date(2029, 1, 8)


def lifted(load: str, *reps: int, pieces=1, turns=1, sets=3, metres=0, days=0, **more) -> Lifted:
    day = FIRST + datetime.timedelta(days=days)
    return Lifted(day, "x", None, read_mass(load), pieces, turns, reps, sets, metres, 2, **more)


def test_a_pair_and_each_side_count_double():
    assert volume_load([lifted("12 kg", 10, 10, 10, pieces=2)], "kg").amount == 720
    assert volume_load([lifted("20 kg", 10, 10, 10, turns=2)], "kg").amount == 1200
    assert volume_load([lifted("40 lb", 12, 12, 14, pieces=2)], "lb").amount == 3040


def test_volume_and_density_of_the_demo():
    volume = volume_load([lifted("16 kg", 12, 12, 14)], "kg")
    assert (volume.amount, volume.whole) == (608, True)
    found = density(volume, 24 * 60)
    assert found is not None and round(float(found), 1) == 25.3
    assert density(volume, 0) is None


def test_units_convert_by_the_exact_pound():
    # International Yard and Pound Agreement, 1959: 25 lb are 11.33980925 kg.
    assert volume_load([lifted("25 lb", 1, sets=1)], "kg").amount == Fraction("11.33980925")


def test_missing_sets_make_a_floor():
    assert not volume_load([lifted("10 lb", 12)], "lb").whole
    assert not volume_load([lifted("20 kg", 12, 12, 12, alone=True)], "kg").whole
    assert volume_load([lifted("10 lb", 12)], "lb").amount == 120


def test_a_carry_is_weight_times_metres_and_no_volume():
    carry = lifted("20 kg", pieces=2, metres=30)
    assert carried([carry], "kg") == 1200 and volume_load([carry], "kg").amount == 0


@pytest.mark.parametrize("effort, minutes, load", [(7, 41, 287), (5, 21, 105), (6, 23, 138)])
def test_session_load(effort, minutes, load):
    assert session_load(effort, minutes * 60) == load


def test_the_best_set_is_the_heaviest_then_the_longest_then_the_first():
    log = [lifted("16 kg", 10, 12), lifted("18 kg", 8, 9, days=3), lifted("18 kg", 9, days=5)]
    best = best_set(log)
    assert best is not None
    assert (str(best.load), best.reps, best.day) == ("18 kg", 9, FIRST + datetime.timedelta(days=3))
    assert best_set([]) is None


def test_the_estimate_is_a_spread_and_long_sets_have_none():
    found = estimated_best([lifted("20 kg", 8)], "kg")
    assert found is not None
    # The table of formulas: O'Conner 24.00 is the lowest, Wathan 25.53 the highest.
    assert round(float(found[1].low), 2) == 24.00
    assert round(float(found[1].high), 2) == 25.53
    assert estimated_best([lifted("5 kg", 21, 30)], "kg") is None


def values(*pairs: tuple[int, float]) -> list[tuple[datetime.date, Fraction]]:
    return [(FIRST + datetime.timedelta(days=at), Fraction(value)) for at, value in pairs]


def test_the_way_is_the_middle_of_the_slopes():
    # Of fifteen slopes ten are 1 a day; five come from the odd day.
    found = trend(values((0, 10), (1, 11), (2, 12), (3, 3), (4, 14), (5, 15)))
    assert found is not None
    assert (found.a_week, found.way) == (7, "up")
    down = trend(values((0, 50), (7, 45), (14, 40)))
    assert down is not None and (down.a_week, down.way) == (-5, "down")


def test_two_days_have_no_way_and_noise_is_level():
    assert trend(values((0, 10), (7, 20))) is None
    level = trend(values((0, 100), (7, 103), (14, 99), (21, 101)))
    assert level is not None and level.way == "level"
    flat = trend(values((0, 0), (7, 0), (14, 0)))
    assert flat is not None and flat.way == "level"


def test_sessions_kept_by_the_week():
    # 2029-01-08 is a Monday (ISO 8601).
    days = [FIRST + datetime.timedelta(days=at) for at in (0, 3, 3, 6, 21)]
    found = kept(days)
    assert found is not None
    assert (found.sessions, found.weeks, found.without, found.longest_gap) == (4, 4, 2, 15)
    assert kept([]) is None


def test_a_planned_reserve_counts_as_done():
    # 12 with 2 in reserve are 14 to failure (Helms and others 2016, abstract).
    # By hand, 16 kg x 14: Epley 23.467, Brzycki 25.043, Lombardi 20.832, O'Conner 21.6.
    found = estimated_best([lifted("16 kg", 12, in_reserve=2, bottom=8)], "kg")
    assert found is not None
    one, estimate = found
    assert (one.reps, one.in_reserve, one.to_failure) == (12, 2, 14)
    values = dict(estimate.by_formula)
    assert [round(float(values[name]), 3) for name in ("Epley", "Brzycki", "Lombardi", "O'Conner")] == [23.467, 25.043, 20.832, 21.6]
    assert estimate.warning  # 14 is above 12
    plain = estimated_best([lifted("16 kg", 14)], "kg")
    assert plain is not None and plain[1].by_formula == estimate.by_formula


def test_a_set_below_the_goal_was_not_stopped_in_time():
    found = estimated_best([lifted("16 kg", 7, in_reserve=2, bottom=8)], "kg")
    assert found is not None and (found[0].in_reserve, found[0].to_failure) == (0, 7)


def test_reserve_can_make_a_set_too_long_to_say_anything():
    assert estimated_best([lifted("5 kg", 18, in_reserve=2)], "kg") is not None
    assert estimated_best([lifted("5 kg", 19, in_reserve=2)], "kg") is None
