"""Amounts carry units and are read strictly."""

import datetime
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from handouts import amounts
from handouts.amounts import AskedLoad, Dose, Effort, Mass, Pieces, Tempo

READERS = [
    amounts.read_mass,
    amounts.read_seconds,
    amounts.read_date,
    amounts.read_centimetres,
    amounts.read_degrees,
    amounts.read_whole_number,
    amounts.read_dose,
    amounts.read_pieces,
    amounts.read_load,
    amounts.read_effort,
    amounts.read_tempo,
]


@pytest.mark.parametrize(
    ("reader", "text", "amount"),
    [
        (amounts.read_mass, "12.5 kg", Mass(Decimal("12.5"), "kg")),
        (amounts.read_mass, "25lb", Mass(Decimal(25), "lb")),
        (amounts.read_mass, "2\u00a0kg", Mass(Decimal(2), "kg")),  # as French is typed
        (amounts.read_mass, "2\u202fkg", Mass(Decimal(2), "kg")),
        (amounts.read_seconds, "90 s", 90),
        (amounts.read_seconds, "2 min", 120),
        (amounts.read_seconds, "1 min 30 s", 90),
        (amounts.read_seconds, "1min30s", 90),
        (amounts.read_seconds, "1 h 5 min", 3900),
        (amounts.read_seconds, "90 min", 5400),
        (amounts.read_seconds, "0 s", 0),
        (amounts.read_date, "2029-01-08", datetime.date(2029, 1, 8)),
        (amounts.read_date, "2028-02-29", datetime.date(2028, 2, 29)),
        (amounts.read_centimetres, "15 cm", Decimal(15)),
        (amounts.read_centimetres, "1.2 m", Decimal("120.0")),
        (amounts.read_centimetres, "6 in", Decimal("15.24")),
        (amounts.read_degrees, "90 degrees", 90),
        (amounts.read_degrees, "90°", 90),
        (amounts.read_whole_number, "12", 12),
        (amounts.read_dose, "10 reps", Dose("reps", 10, 10)),
        (amounts.read_dose, "8-12 reps each side", Dose("reps", 8, 12, "each side")),
        (amounts.read_dose, "8\u201312 reps", Dose("reps", 8, 12)),
        (amounts.read_dose, "8 to 12 reps in all", Dose("reps", 8, 12, "in all")),
        (amounts.read_dose, "30 s", Dose("time", 30, 30)),
        (amounts.read_dose, "1-2 min", Dose("time", 60, 120)),
        (amounts.read_dose, "20 m", Dose("distance", 20, 20)),
        (amounts.read_pieces, "2 x 5 lb", Pieces(2, Mass(Decimal(5), "lb"))),
        (amounts.read_pieces, "1 × 22.5 kg", Pieces(1, Mass(Decimal("22.5"), "kg"))),
        (amounts.read_load, "6 kg", AskedLoad("mass", Mass(Decimal(6), "kg"))),
        (amounts.read_load, "6 kg each", AskedLoad("mass", Mass(Decimal(6), "kg"), each=True)),
        (amounts.read_load, "70 % of maximum", AskedLoad("percent", percent=70)),
        (amounts.read_load, "by effort", AskedLoad("effort")),
        (amounts.read_load, "bodyweight", AskedLoad("bodyweight")),
        (amounts.read_load, "band one knot", AskedLoad("band", name="one knot")),
        (amounts.read_effort, "2 in reserve", Effort(2)),
        (amounts.read_effort, "RPE 8", Effort(2)),
        (amounts.read_tempo, "3-1-2-0", Tempo(3, 1, 2, 0)),
        (amounts.read_tempo, "3-1-X-0", Tempo(3, 1, 0, 0)),
    ],
)
def test_read(reader, text, amount):
    assert reader(text) == amount


@pytest.mark.parametrize(
    ("reader", "texts"),
    [
        (amounts.read_mass, ["12", "12.5", "012 kg", "1_000 kg", "1e3 kg", "-5 kg", "0 kg", "5 KG", "5 kgs", "5,5 kg", ".5 kg",
                             "5. kg", "5  kg", "5 kg each", "٥ kg", "", "kg", "1 kg\n2 kg", "1.2345 kg", "1234567 kg"]),
        (amounts.read_seconds, ["90", "1:30", "42:35", "0:45", "90 sec", "1.5 min", "-5 s", "5 s 3 min", "1 min 90 s",
                                "1 h 75 min", "", " ", "٩ s", "012 s"]),
        (amounts.read_date, ["2029-1-8", "08.01.2029", "2029/01/08", "20290108", "2029-02-30", "2029-W02-1",
                             "2029-01-08 10:00", "today", "", "٢٠٢٩-01-08"]),
        (amounts.read_centimetres, ["15", "15 mm", "1,2 m", "1 ft"]),
        (amounts.read_degrees, ["90", "-5 degrees", "181 degrees", "0.5 degrees"]),
        (amounts.read_whole_number, ["012", "1_000", "1e3", "3.0", "-3", "+3", "three", "٣", "", "3 4", "0x3"]),
        (amounts.read_dose, ["10", "10 rep", "0 reps", "12-8 reps", "8-12", "8--12 reps", "10 reps each", "10 reps per side",
                             "10 kg", "10 reps each side in all", "8-12-14 reps"]),
        (amounts.read_pieces, ["5 lb", "2 5 lb", "0 x 5 lb", "2 x 5", "two x 5 lb", "2 x 2 x 5 lb"]),
        (amounts.read_load, ["6", "6 each", "70 %", "70 % of max", "20 % of maximum", "101 % of maximum", "Bodyweight",
                             "band", "band ", "band ;", ""]),
        (amounts.read_effort, ["8", "RPE 11", "RPE 3", "7 in reserve", "RIR 2", "RPE8"]),
        (amounts.read_tempo, ["42:35", "3-1-2", "3-1-2-0-1", "31X0", "3-1-x-0", "10-1-2-0", "٣-1-2-0"]),
    ],
    ids=lambda value: getattr(value, "__name__", ""),
)  # fmt: skip
def test_refused_with_what_to_write(reader, texts):
    for text in texts:
        with pytest.raises(ValueError) as caught:
            reader(text)
        wrong, divider, instead = str(caught.value).rpartition("; ")
        assert divider and wrong and instead, text
        assert str(caught.value).isprintable(), text


@pytest.mark.parametrize("reader", READERS, ids=lambda reader: reader.__name__)
@given(text=st.text(max_size=80))
def test_any_text_is_read_or_refused_on_one_short_line(reader, text):
    try:
        reader(text)
    except ValueError as problem:
        assert str(problem).isprintable()
        assert len(str(problem)) < 250


@given(number=st.decimals("0.001", "999999", places=3), unit=st.sampled_from(["kg", "lb"]))
def test_a_mass_is_read_as_it_is_written(number, unit):
    mass = Mass(number, unit)
    assert amounts.read_mass(str(mass)) == mass


@given(seconds=st.integers(0, 999_999))
def test_seconds_are_read_as_they_are_written(seconds):
    hours, rest = divmod(seconds, 3600)
    minutes, left = divmod(rest, 60)
    assert amounts.read_seconds(f"{hours} h {minutes} min {left} s") == seconds


def test_the_pound_is_exact():
    """25 lb = 11.33980925 kg: International Yard and Pound Agreement of 1959,
    0.45359237 kg a pound (NIST SP 811, appendix B.8), times 25."""
    assert Mass(Decimal(25), "lb").kilograms == Decimal("11.33980925")
    assert Mass(Decimal(5), "kg").kilograms == 5


@pytest.mark.parametrize(
    ("reserve", "rating"), [(0, 10), (1, 9), (2, 8), (3, 7)]
)  # Helms and others 2016, "Application of the repetitions in reserve-based rating of perceived exertion scale"; from memory
def test_effort_is_ten_less_what_is_in_reserve(reserve, rating):
    assert Effort(reserve).rating == rating
    assert amounts.read_effort(f"RPE {rating}").in_reserve == reserve


def test_a_tempo_counts_a_fast_lift_as_one_second():
    assert amounts.read_tempo("3-1-2-0").seconds == 6
    assert amounts.read_tempo("3-1-X-0").seconds == 5


@pytest.mark.parametrize(
    ("number", "text"), [("12.50", "12.5"), ("20.0", "20"), ("20", "20"), ("100", "100"), ("0.500", "0.5"), ("1E+2", "100")]
)
def test_short_numbers(number, text):
    assert amounts.short_number(Decimal(number)) == text


def test_what_the_user_wrote_is_quoted_short_and_on_one_line():
    assert amounts.quoted("a\n\tb") == "'a b'"
    assert amounts.quoted("x" * 100) == f"'{'x' * 57}...'"
    assert amounts.quoted("a\u202eb\u200bc").isprintable()
