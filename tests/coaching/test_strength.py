"""Estimates of a maximum against published formulas and worked examples."""

from __future__ import annotations

import math
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from handouts.coaching.strength import (
    FORMULAS,
    MOST_REPS,
    PERCENT_OF_MAXIMUM,
    TRUSTED_REPS,
    estimate_maximum,
    load_that_allows,
    percent_for,
    reps_for,
    share_of_maximum,
)

# The formulas as printed in LeSuer and others 1997, "The accuracy of prediction
# equations for estimating 1-RM performance in the bench press, squat, and
# deadlift", Journal of Strength and Conditioning Research 11(4): 211-213 (from
# memory), written here again in floating point, apart from the product's own.
PRINTED = {
    "Epley": lambda w, r: w * (1 + r / 30),
    "Brzycki": lambda w, r: 36 * w / (37 - r),
    "Lombardi": lambda w, r: w * r**0.10,
    "O'Conner": lambda w, r: w * (1 + r / 40),
    "Wathan": lambda w, r: 100 * w / (48.8 + 53.8 * math.exp(-0.075 * r)),
}

# Worked by hand from the same formulas, to two places.
WORKED = [
    ("20", 8, ("25.33", "24.83", "24.62", "24.00", "25.53")),
    ("12.5", 12, ("17.50", "18.00", "16.03", "16.25", "17.69")),
    ("45", 5, ("52.50", "50.62", "52.86", "50.62", "52.46")),
    ("30", 10, ("40.00", "40.00", "37.77", "37.50", "40.42")),
    ("16", 15, ("24.00", "26.18", "20.98", "22.00", "24.15")),
]


@pytest.mark.parametrize(("load", "reps", "expected"), WORKED)
def test_worked_values(load: str, reps: int, expected: tuple[str, ...]) -> None:
    estimate = estimate_maximum(Decimal(load), reps)
    assert [name for name, _ in estimate.by_formula] == list(PRINTED)
    for (name, value), printed in zip(estimate.by_formula, expected, strict=True):
        # 50.625 stands in the table as 50.62: half a hundredth either way.
        assert abs(value - Decimal(printed)) <= Decimal("0.0051"), name
    assert estimate.low == min(value for _, value in estimate.by_formula)
    assert estimate.high == max(value for _, value in estimate.by_formula)


@given(st.integers(2, MOST_REPS), st.decimals("0.5", "200", places=1))
def test_every_formula_as_printed(reps: int, load: Decimal) -> None:
    for name, value in estimate_maximum(load, reps).by_formula:
        assert float(value) == pytest.approx(PRINTED[name](float(load), reps), rel=1e-12)


def test_epley_and_brzycki_meet_at_ten_repetitions() -> None:
    # 1 + 10/30 = 36/27 = 4/3: follows from the formulas.
    values = dict(estimate_maximum(Decimal(30), 10).by_formula)
    assert abs(values["Epley"] - values["Brzycki"]) < Decimal("1e-20")
    assert abs(values["Epley"] - 40) < Decimal("1e-20")


def test_a_single_lift_is_the_maximum() -> None:
    # Epley's formula would give 1.033 w; a maximum that was lifted is no estimate.
    assert {value for _, value in estimate_maximum(Decimal("82.5"), 1).by_formula} == {Decimal("82.5")}


def test_repetitions_in_reserve_count_as_done() -> None:
    assert estimate_maximum(Decimal(20), 8, in_reserve=2) == estimate_maximum(Decimal(20), 10)


def test_long_sets_warn_and_very_long_ones_are_refused() -> None:
    # Common practice, no source: warn above 12, refuse above 20.
    assert estimate_maximum(Decimal(16), TRUSTED_REPS).warning == ""
    assert "13 repetitions" in estimate_maximum(Decimal(16), TRUSTED_REPS + 1).warning
    assert estimate_maximum(Decimal(16), MOST_REPS).warning
    with pytest.raises(ValueError, match="30 repetitions to failure"):
        estimate_maximum(Decimal(16), 30)
    with pytest.raises(ValueError, match="21 repetitions"):
        estimate_maximum(Decimal(16), 18, in_reserve=3)


@pytest.mark.parametrize(("load", "reps", "in_reserve"), [("0", 8, 0), ("-5", 8, 0), ("20", 0, 0), ("20", -1, 0), ("20", 8, -1)])
def test_what_is_no_set_is_refused(load: str, reps: int, in_reserve: int) -> None:
    with pytest.raises(ValueError):
        estimate_maximum(Decimal(load), reps, in_reserve)


def test_per_cent_of_the_lowest_estimate() -> None:
    # 20 kg x 8: the lowest of the five is O'Conner's 24.00 kg; 75 % of it is 18 kg.
    assert share_of_maximum(75, Decimal(20), 8).amount == 18
    with pytest.raises(ValueError, match="101 per cent"):
        share_of_maximum(101, Decimal(20), 8)


def test_the_load_that_allows_the_same_set_is_the_same_load() -> None:
    target = load_that_allows(8, 2, Decimal(20), 10)
    assert abs(target.amount - 20) < Decimal("1e-20")


@given(st.integers(1, 10), st.integers(0, 5), st.integers(1, MOST_REPS))
def test_harder_asks_never_bring_heavier_weights(reps: int, reserve: int, done: int) -> None:
    easier = load_that_allows(reps + 1, reserve, Decimal(50), done).amount
    assert easier <= load_that_allows(reps, reserve, Decimal(50), done).amount
    # And no formula of the five allows the set less reserve than asked for.
    target = load_that_allows(reps, reserve, Decimal(50), done).amount
    for formula, (_, maximum) in zip(FORMULAS, estimate_maximum(Decimal(50), done).by_formula, strict=True):
        factor = Decimal(1) if reps + reserve == 1 else formula.factor(reps + reserve)
        assert target * factor <= maximum + Decimal("1e-18")


# Training Load Chart of the National Strength and Conditioning Association,
# its two head rows and the rows for 100 and 60 (read in a copy of the chart).
CHART_REPS = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12]
CHART_100 = ["100", "95", "93", "90", "87", "85", "83", "80", "77", "75", "70"]
CHART_60 = ["60", "57", "55.8", "54", "52.2", "51", "49.8", "48", "46.2", "45", "42"]


def test_the_per_cent_table_is_the_published_chart() -> None:
    assert list(PERCENT_OF_MAXIMUM) == CHART_REPS
    for reps, of_100, of_60 in zip(CHART_REPS, CHART_100, CHART_60, strict=True):
        assert percent_for(reps) == Decimal(of_100)
        assert Decimal(60) * percent_for(reps) / 100 == Decimal(of_60)


def test_between_the_lines_of_the_chart_the_gentler_one_is_read() -> None:
    assert percent_for(11) == 70
    assert reps_for(70) == 12 and reps_for(71) == 10 and reps_for(80) == 8 and reps_for(81) == 7
    assert reps_for(69) is None
    for reps in (0, 13, 30):
        with pytest.raises(ValueError, match="chart ends at 12"):
            percent_for(reps)


def test_a_maximum_is_told_as_a_spread() -> None:
    # The worked values above: 24.00 to 25.53 for 20 kg x 8, rounded outward.
    assert estimate_maximum(Decimal(20), 8).spread("kg") == "24 to 25.6 kg"
    assert estimate_maximum(Decimal("82.5"), 1).spread("kg") == "82.5 kg"


def test_every_formula_has_its_range() -> None:
    # Which formulas give the lift itself at 1 follows from them; 12 is common practice.
    for formula in FORMULAS:
        first, last = formula.trusted
        assert last == TRUSTED_REPS and formula.source.startswith(formula.name)
        assert (first == 1) == (formula.factor(1) == 1)
        warned = [reps for reps in range(1, MOST_REPS + 1) if estimate_maximum(Decimal(20), reps).warning]
        assert warned == list(range(last + 1, MOST_REPS + 1))


def test_no_set_is_taken_where_a_formula_has_no_meaning() -> None:
    # Brzycki's 36 / (37 - r) ends at 37 repetitions: follows from the formula.
    assert [formula.name for formula in FORMULAS if formula.ends] == ["Brzycki"]
    assert all(formula.ends is None or formula.ends > MOST_REPS for formula in FORMULAS)
    with pytest.raises(ArithmeticError):
        FORMULAS[1].factor(37)
