"""The weight that is taken, against the rule of the rack and the legal pound."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from handouts.amounts import Mass, Pieces, read_mass, read_pieces
from handouts.coaching.loads import choose, cuff_steps, in_unit, step_up, usable
from handouts.models import Cuff

# Home kit in pounds with one stray dumbbell stamped in kilograms.
POUNDS_AND_A_STRAY = [
    read_pieces(text) for text in ("2 x 5 lb", "2 x 8 lb", "2 x 10 lb", "2 x 12 lb", "2 x 15 lb", "1 x 20 lb", "1 x 5 kg")
]


def masses(*texts: str) -> list[Mass]:
    return [read_mass(text) for text in texts]


def test_the_pound_is_exact() -> None:
    # International Yard and Pound Agreement, 1959; NIST SP 811, appendix B.8.
    assert in_unit(read_mass("25 lb"), "kg") == Fraction("11.33980925")
    assert round(float(in_unit(read_mass("12.5 kg"), "lb")), 4) == 27.5578
    assert in_unit(read_mass("22.5 kg"), "kg") == Fraction("22.5")


@given(st.decimals("0.001", "999999", places=3))
def test_there_and_back_again_is_the_same(amount: Decimal) -> None:
    pounds = in_unit(Mass(amount, "kg"), "lb")
    assert pounds * Fraction("0.45359237") == Fraction(amount)


def test_a_pair_is_two_of_one_stamp_in_one_unit() -> None:
    # A 10 lb with a 5 kg (11.02 lb) would be a tenth lopsided.
    assert [str(mass) for mass in usable(POUNDS_AND_A_STRAY, 2)] == ["5 lb", "8 lb", "10 lb", "12 lb", "15 lb"]
    assert [str(mass) for mass in usable(POUNDS_AND_A_STRAY, 1)] == [
        "5 lb", "8 lb", "10 lb", "5 kg", "12 lb", "15 lb", "20 lb",
    ]  # fmt: skip


def test_single_pieces_listed_apart_make_a_pair() -> None:
    assert usable([Pieces(1, read_mass("8 kg")), Pieces(1, read_mass("8.0 kg"))], 2) == (read_mass("8 kg"),)


@pytest.mark.parametrize(
    ("asked", "there", "chosen", "how"),
    [
        # The heaviest that is not above (common practice, no source).
        ("6 kg", ["2 kg", "3 kg", "4 kg", "5 kg", "8 kg"], "5 kg", "below"),
        ("6 lb", ["2 lb", "3 lb", "5 lb", "8 lb"], "5 lb", "below"),
        ("22 kg", ["20 kg", "25 kg"], "20 kg", "below"),
        ("16 kg", ["14 kg", "16 kg", "18 kg"], "16 kg", "as asked"),
        # Above only within 2.5 % (common practice, no source): 20 x 1.025 = 20.5.
        ("20 kg", ["16 kg", "20.5 kg"], "20.5 kg", "just above"),
        ("20 kg", ["16 kg", "20.6 kg"], "16 kg", "below"),
        ("22.4 kg", ["20 kg", "22.5 kg"], "22.5 kg", "just above"),
        # Equally near: the lighter.
        ("10 kg", ["9.8 kg", "10.2 kg"], "9.8 kg", "below"),
        # 12.5 kg are 27.5578 lb: 27.5 lb is the stamp for it.
        ("12.5 kg", ["25 lb", "27.5 lb", "30 lb"], "27.5 lb", "below"),
        ("5 kg", ["10 lb", "12 lb"], "10 lb", "below"),
    ],
)
def test_the_weight_taken(asked: str, there: list[str], chosen: str, how: str) -> None:
    choice = choose(masses(*there), read_mass(asked))
    assert (str(choice.chosen), choice.how) == (chosen, how)


def test_when_all_are_too_heavy_none_is_taken_and_the_lightest_is_told() -> None:
    choice = choose(masses("8 kg", "10 kg"), read_mass("6 kg"))
    assert (choice.chosen, choice.how, choice.lightest) == (None, "all too heavy", read_mass("8 kg"))
    assert choose([], read_mass("6 kg")).how == "none there"


def test_a_ceiling_is_never_broken() -> None:
    assert choose(masses("4 kg", "5 kg", "5.1 kg"), read_mass("5.1 kg"), ceiling=read_mass("5 kg")).chosen == read_mass("5 kg")
    assert choose(masses("5.1 kg"), read_mass("5.1 kg"), ceiling=read_mass("5 kg")).chosen is None


def test_a_cuff_goes_up_in_its_steps_to_its_limit() -> None:
    cuff = Cuff(side="left", up_to=read_mass("5 kg"), step=read_mass("1 kg"))
    assert [str(mass) for mass in cuff_steps(cuff)] == ["1 kg", "2 kg", "3 kg", "4 kg", "5 kg"]
    halves = Cuff(side="left", up_to=read_mass("2.2 kg"), step=read_mass("0.5 kg"))
    assert [str(mass) for mass in cuff_steps(halves)] == ["0.5 kg", "1 kg", "1.5 kg", "2 kg"]
    # 2 kg are 4.41 lb, so four steps of a pound and not five.
    mixed = Cuff(side="left", up_to=read_mass("2 kg"), step=read_mass("1 lb"))
    assert [str(mass) for mass in cuff_steps(mixed)] == ["1 lb", "2 lb", "3 lb", "4 lb"]


@pytest.mark.parametrize(
    ("lighter", "heavier", "share"),
    # Arithmetic: 10 to 12.5 is a quarter more, and so on.
    [("10 kg", "12.5 kg", "1/4"), ("5 kg", "7.5 kg", "1/2"), ("15 kg", "20 kg", "1/3"), ("20 kg", "22.5 kg", "1/8"), ("50 lb", "55 lb", "1/10")],
)
def test_how_big_a_step_is(lighter: str, heavier: str, share: str) -> None:
    assert step_up(read_mass(lighter), read_mass(heavier)) == Fraction(share)


a_mass = st.builds(Mass, st.decimals("0.5", "60", places=1), st.sampled_from(["kg", "lb"]))


@given(st.lists(a_mass, max_size=12), a_mass, st.none() | a_mass)
def test_never_what_is_not_there_nor_too_heavy(there: list[Mass], asked: Mass, ceiling: Mass | None) -> None:
    choice = choose(there, asked, ceiling)
    top = asked.kilograms * Decimal("1.025")
    fitting = [mass for mass in there if mass.kilograms <= top and (ceiling is None or mass.kilograms <= ceiling.kilograms)]
    if choice.chosen is None:
        assert not fitting
        return
    assert choice.chosen in fitting
    distance = abs(choice.chosen.kilograms - asked.kilograms)
    assert all(abs(mass.kilograms - asked.kilograms) >= distance for mass in fitting)
    assert choose(reversed(there), asked, ceiling) == choice
