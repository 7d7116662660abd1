"""Seconds of sets and sessions, worked by hand beside each check.

Four seconds a repetition, 30 s for a change-over with sight and 75 s by touch
are common practice, no source.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from handouts.amounts import read_dose, read_tempo
from handouts.coaching import timing


@pytest.mark.parametrize(
    ("dose", "sides", "expected"),
    [
        ("10 reps", 1, 40),
        ("10 reps each side", 2, 80),
        ("12 reps in all", 2, 48),
        ("8-12 reps", 1, 40),  # the middle is 10
        ("8-12 reps each side", 2, 80),
        ("8-11 reps", 1, 38),  # the middle is 9.5
        ("30 s", 1, 30),
        ("30 s each side", 2, 60),
        ("20 m", 1, 20),  # a metre a second
        ("20-25 s", 1, 23),  # 22.5, and half a second counts whole
    ],
)
def test_one_set(dose: str, sides: int, expected: int) -> None:
    assert timing.set_seconds(read_dose(dose), sides, 4) == expected


def test_a_tempo_takes_the_place_of_the_usual_pace() -> None:
    assert timing.set_seconds(read_dose("10 reps"), 1, 4, read_tempo("3-1-2-0")) == 60
    # A fast lift counts one second: 3 + 1 + 1 + 0.
    assert timing.set_seconds(read_dose("10 reps"), 1, 4, read_tempo("3-1-X-0")) == 50
    assert timing.set_seconds(read_dose("30 s"), 1, 4, read_tempo("3-1-2-0")) == 30


def test_straight_sets() -> None:
    # 3 x 10 x 4 + 2 x 60 = 240; on each side 3 x 20 x 4 + 2 x 60 = 360.
    assert timing.straight_sets(40, 3, 60) == 240
    assert timing.straight_sets(80, 3, 60) == 360
    assert timing.straight_sets(40, 1, 60) == 40


def test_a_superset() -> None:
    # (40 + 20 + 80) x 3 + 75 x 2 = 570
    assert timing.rounds_of([40, 80], 3, 20, 75) == 570
    # (64 + 20 + 48) x 2 + 60 = 324
    assert timing.rounds_of([64, 48], 2, 20, 60) == 324


@pytest.mark.parametrize(("rounds", "clock"), [(2, "16:06"), (3, "24:54"), (4, "33:42")])
def test_a_circuit(rounds: int, clock: str) -> None:
    # 72 repetitions x 4 + 5 x 30 = 438 a round; 90 between rounds.
    stations = [40, 48, 64, 40, 48, 48]
    assert sum(stations) + 5 * 30 == 438
    assert timing.clock(timing.rounds_of(stations, rounds, 30, 90)) == clock


@pytest.mark.parametrize(("work", "rest", "clock"), [(20, 40, "19:00"), (30, 30, "19:30"), (40, 20, "20:00")])
def test_timed_intervals(work: int, rest: int, clock: str) -> None:
    # Three rounds of six stations: 3 x (6 work + 5 rest) + 2 x 90.
    assert timing.clock(timing.intervals(6, work, rest, 3, 90)) == clock


@pytest.mark.parametrize(("pace", "clock"), [("sighted", "25:24"), ("by touch", "27:39")])
def test_a_session_with_its_change_overs(pace: str, clock: str) -> None:
    # 300 + 570 + 324 + 240 = 1,434, and three change-overs of 30 or 75 s.
    groups = [300, 570, 324, 240]
    assert timing.clock(timing.session(groups, timing.change_over(pace))) == clock  # type: ignore[arg-type]
    assert timing.session([], 75) == 0


def test_seconds_on_a_clock() -> None:
    assert [timing.clock(seconds) for seconds in (0, 59, 60, 3599, 3600, 3905)] == [
        "0:00", "0:59", "1:00", "59:59", "1:00:00", "1:05:05",
    ]  # fmt: skip


def test_a_pace_is_the_middle_of_the_usual_shares() -> None:
    # Shares of 100 s: 0.8, 1.2, 1.1; the middle is 1.1.  Common practice, no source.
    pace = timing.own_pace([(100, 80), (100, 120), (100, 110)])
    assert pace is not None and (pace.share, pace.sessions) == (Fraction(11, 10), 3)
    assert pace.seconds(600) == 660
    assert timing.own_pace([(100, 80), (100, 120)]) is None


def test_a_time_out_of_all_proportion_is_no_measure() -> None:
    # 95 min against 34:54 is 2.7 times as long.
    assert timing.own_pace([(2094, 5700)] * 5) is None
    assert timing.own_pace([(100, 49)] * 5) is None
    assert timing.own_pace([(0, 100)] * 5) is None
    pace = timing.own_pace([(100, 200), (100, 50), (100, 150), (100, 900)])
    assert pace is not None and (pace.share, pace.sessions) == (Fraction(3, 2), 3)


def test_the_latest_sessions_count() -> None:
    pace = timing.own_pace([(100, 190)] * 20 + [(100, 100)] * timing.LATEST_SESSIONS)
    assert pace is not None and pace.share == 1


@given(st.lists(st.tuples(st.integers(1, 9000), st.integers(1, 9000)), max_size=12))
def test_a_pace_is_never_out_of_bounds(sessions: list[tuple[int, int]]) -> None:
    pace = timing.own_pace(sessions)
    assert pace is None or timing.PACE_BOUNDS[0] <= pace.share <= timing.PACE_BOUNDS[1]
