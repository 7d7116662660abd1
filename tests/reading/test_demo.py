"""The demo studio says what it was invented with, client by client, line by line.

The names, weights, limits and log entries below are the invented scenario's
own, written out by hand a second time.
"""

import datetime
from decimal import Decimal

import pytest

from handouts import carried
from handouts.amounts import Mass
from handouts.models import Intervals, StraightSets, Superset
from handouts.reading import read_studio

DEMO = read_studio(carried.demo_studio(), carried.starter_texts())


def facts(code):
    return DEMO.clients[code].facts


def weights(code):
    return sorted((piece.mass.amount, piece.mass.unit, piece.count) for piece in facts(code).kit.dumbbells)


def pairs(unit, *masses):
    return [(Decimal(mass), unit, 2) for mass in masses]


GYM_KG = ("1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "12", "14", "16", "18", "20", "22.5", "25")


def test_the_studio():
    assert (DEMO.facts.name, DEMO.facts.coach) == ("the Yard", "Ilse")
    assert (DEMO.facts.emergency, DEMO.facts.phone) == ("112", "555 0142")


def test_everything_is_there():
    assert list(DEMO.clients) == ["C1", "C2", "C3", "C4", "C5", "C6"]
    assert list(DEMO.plans) == [("P1", 1), ("P2", 1), ("P2", 2), ("P3", 1)]
    assert list(DEMO.logs) == list(DEMO.clients)


@pytest.mark.parametrize(
    ("code", "name", "age", "units", "place", "log_by", "pace"),
    [
        ("C1", "Noor", 47, "lb", "home", "voice", "sighted"),
        ("C2", "Tomasz", 31, "kg", "gym", "slate", "by touch"),
        ("C3", "Aminata", 58, "kg", "home", "voice", "by touch"),
        ("C4", "Mateus", 39, "kg", "gym", "keys", "by touch"),
        ("C5", "Keiko", 66, "lb", "home", "pen", "sighted"),
        ("C6", "Kofi", 28, "lb", "gym", "pen", "sighted"),
    ],
)
def test_clients(code, name, age, units, place, log_by, pace):
    client = facts(code)
    assert (client.name, client.age, client.units, client.place) == (name, age, units, place)
    assert (client.log_by, client.pace) == (log_by, pace)


def test_forms():
    assert (facts("C1").forms.print.size, facts("C1").forms.print.weight) == (24, "bold")
    assert (facts("C5").forms.print.size, facts("C6").forms.print.size) == (28, 18)
    for code, table in {
        "C2": ("ueb", 2, 40, 25),
        "C3": ("fr", 1, 28, 27),
        "C4": ("ueb", 1, 32, 27),
    }.items():
        braille = facts(code).forms.braille
        assert (braille.code, braille.grade, braille.width, braille.length) == table
    assert facts("C4").forms.screen and facts("C4").forms.braille.sheets == ("card",)
    assert facts("C3").language == "fr"
    assert {code for code in DEMO.clients if facts(code).language == "en"} == {"C1", "C2", "C4", "C5", "C6"}


def test_weights_that_the_clients_own():
    stray = (Decimal(5), "kg", 1)
    assert weights("C1") == sorted([*pairs("lb", "5", "8", "10", "12", "15"), (Decimal(20), "lb", 1), stray])
    assert weights("C2") == weights("C4") == pairs("kg", *GYM_KG)
    assert weights("C3") == [*pairs("kg", "2", "3", "4", "5"), (Decimal(8), "kg", 1)]
    assert weights("C5") == pairs("lb", "2", "3", "5", "8")
    assert weights("C6") == pairs("lb", *range(5, 55, 5))


def test_the_stray_five_kilograms_is_no_ten_pounds():
    """5 kg is 11.02 lb: 5 / 0.45359237 (pound of 1959)."""
    pounds = Mass(Decimal(5), "kg").kilograms / Mass(Decimal(1), "lb").kilograms
    assert round(pounds, 2) == Decimal("11.02")


def test_kit_and_limits():
    assert "bench" in facts("C1").kit.other
    assert "bench" not in facts("C3").kit.other and "chair" in facts("C3").kit.other and facts("C3").kit.bands
    assert facts("C5").kit.other == ("chair",) and facts("C5").kit.bands
    (care,) = facts("C1").care
    assert (care.care, care.advised_by, care.since, care.review) == (
        "glaucoma", "eye specialist", datetime.date(2028, 11, 6), datetime.date(2029, 5, 6),
    )  # fmt: skip
    knee, kneeling = facts("C3").limits
    assert (knee.joint, knee.side, knee.at_most, kneeling.demand) == ("knee", "right", 90, "kneeling")
    assert facts("C4").hands == "right"
    assert (facts("C4").kit.cuff.side, facts("C4").kit.cuff.up_to) == ("left", Mass(Decimal(5), "kg"))
    assert [limit.position for limit in facts("C5").limits] == ["seated"]
    assert facts("C5").effort_cap == 5
    assert facts("C6").limits == () and facts("C2").limits == ()


def test_how_they_are_taught():
    assert facts("C2").touch == "client feels coach" and facts("C2").guide_dog
    assert facts("C2").pictures == "none" and facts("C3").pictures == "liked"
    assert facts("C1").level == 2 and facts("C5").level == 1


def test_health_stands_under_care_and_in_private_notes_alone():
    for code in DEMO.clients:
        open_part = facts(code).model_dump_json(exclude={"private", "care"}).lower()
        for word in ("glaucoma", "myopia", "short-sighted", "blood", "blind"):
            assert word not in open_part
    assert "lifting is not limited" in facts("C6").private


def test_asked_loads():
    def asked(load):
        return f"{load.mass}{' each' if load.each else ''}"

    assert asked(facts("C3").loads["floor-press"]) == "6 kg each"
    assert asked(facts("C5").loads["seated-press"]) == "6 lb each"
    row, press = facts("C4").loads["one-arm-supported-row"], facts("C4").loads["floor-press"]
    assert (asked(row.right), asked(row.left)) == ("20 kg", "4 kg")
    assert (asked(press.right), asked(press.left)) == ("16 kg", "4 kg")
    assert asked(facts("C2").loads["goblet-squat"]) == "16 kg"
    assert asked(facts("C6").loads["floor-press"]) == "40 lb each"


def doses(structure):
    return [(work.exercise, work.dose.level_1 if work.dose else None) for work in structure.exercises]


def told(dose):
    count = str(dose.low) if dose.low == dose.high else f"{dose.low}-{dose.high}"
    return f"{count} {dose.kind} {dose.counted}".strip()


def test_the_circuit():
    plan = DEMO.plans["P1", 1].facts
    (circuit,) = plan.session
    assert [(id, told(dose)) for id, dose in doses(circuit)] == [
        ("goblet-squat", "10 reps"),
        ("band-pull-apart", "12 reps"),
        ("step-up", "8 reps each side"),
        ("seated-press", "10 reps"),
        ("glute-bridge", "12 reps"),
        ("dead-bug", "12 reps in all"),
    ]
    assert [circuit.rounds.at(level) for level in (1, 2, 3)] == [2, 3, 4]
    assert (circuit.station_rest.level_1, circuit.round_rest.level_1) == (30, 90)
    assert (plan.warm_up.time, plan.cool_down.time) == (360, 240)


@pytest.mark.parametrize("version", [1, 2])
def test_straight_sets_and_supersets(version):
    plan = DEMO.plans["P2", version].facts
    squat, press, split, carry = plan.session
    assert isinstance(squat, StraightSets) and isinstance(press, Superset)
    assert (squat.exercise, squat.sets.level_1, told(squat.dose.level_1), squat.rest.level_1) == (
        "goblet-squat", 3, "8-12 reps", 90,
    )  # fmt: skip
    assert [(id, told(dose)) for id, dose in doses(press)] == [
        ("floor-press", "8-12 reps"),
        ("one-arm-supported-row", "8-12 reps each side"),
    ]
    assert (press.rounds.level_1, press.rest_inside.level_1, press.rest_after.level_1) == (3, 20, 75)
    assert [(id, told(dose)) for id, dose in doses(split)] == [
        ("split-squat", "8 reps each side"),
        ("hammer-curl", "12 reps in all"),
    ]
    assert (split.rounds.level_1, split.rest_inside.level_1, split.rest_after.level_1) == (2, 20, 60)
    assert (carry.exercise, carry.sets.level_1, told(carry.dose.level_1), carry.rest.level_1) == (
        "farmer-carry", 3, "30 time", 75,
    )  # fmt: skip
    assert plan.warm_up is None and plan.cool_down is None


def test_the_second_version_says_what_changed():
    first, second = DEMO.plans["P2", 1].facts, DEMO.plans["P2", 2].facts
    assert second.note and set(second.note) == {"en", "fr"}
    assert second.session[0].effort and not first.session[0].effort
    assert second.session[1:] == first.session[1:]
    assert second.date > first.date


def test_the_intervals():
    plan = DEMO.plans["P3", 1].facts
    (intervals,) = plan.session
    assert isinstance(intervals, Intervals)
    assert [work.exercise for work in intervals.exercises] == [
        "seated-leg-extension", "seated-press", "seated-band-row", "seated-march", "band-pull-apart", "heel-raise",
    ]  # fmt: skip
    assert [(intervals.work.at(level), intervals.rest.at(level)) for level in (1, 2, 3)] == [(20, 40), (30, 30), (40, 20)]
    assert (intervals.rounds.level_1, intervals.round_rest.level_1) == (3, 90)


def test_every_plan_has_a_title_in_both_languages():
    assert all(set(plan.facts.title) == {"en", "fr"} for plan in DEMO.plans.values())


def test_dates_are_those_of_no_real_year_s_clients():
    for plan in DEMO.plans.values():
        assert plan.facts.date.year == 2029 and plan.facts.review_by.year == 2029


# --- logs --------------------------------------------------------------------------

# As received: client, plan, version, month and day ("" when none was said), words.
RECEIVED = [
    ("C2", "P2", 2, "01-08", "1 16 10 10 9"),
    ("C2", "P2", 2, "01-11", "1 16 12 11 11"),
    ("C2", "P2", 2, "01-15", "1 16 12 12 14"),
    ("C2", "P2", 2, "01-18", "1 16 12 12 14; 24 min"),
    ("C2", "P2", 1, "", "1 14 12 12 12"),
    ("C1", "P1", 1, "01-09", "seated press, ten pounds, twelve"),
    ("C1", "P1", 1, "01-12", "seated press, fifty pounds, twelve; ninety-five minutes"),
    ("C1", "P1", 1, "01-16", "same as Saturday"),
    ("C3", "P2", 1, "01-10", "développé assis, trois kilos, quinze"),
    ("C3", "P2", 1, "01-17", "pareil, mais le genou droit fait mal à la marche"),
    ("C4", "P2", 1, "01-09", "row R 20 kg 12/12/12; press R 16 kg 10/9/9, cuff 4 kg 10/10/10; 41 min; effort 7"),
    ("C4", "P2", 1, "01-16", "carry 2×12 kg"),
    ("C5", "P3", 1, "01-11", "21 min, effort 5"),
    ("C5", "P3", 1, "01-18", "23 min, effort 6, press 5 lb × 15"),
    ("C6", "P2", 1, "01-08", "floor press 40 lb each 12, 12, 14"),
    ("C6", "P2", 1, "01-11", "same"),
    ("C6", "P2", 1, "02-12", "back from travel"),
]

# Messages that one must ask about before anything of them is stored.
ODD = {
    "seated press, fifty pounds, twelve; ninety-five minutes",
    "same as Saturday",
    "développé assis, trois kilos, quinze",
    "pareil, mais le genou droit fait mal à la marche",
    "carry 2×12 kg",
    "back from travel",
}


def test_all_seventeen_messages_stand_word_for_word():
    stored = {
        (code, line.plan, line.version, f"{line.date:%m-%d}" if line.date else "", line.raw)
        for code, lines in DEMO.logs.items()
        for line in lines
    }
    assert stored == set(RECEIVED)
    assert len(RECEIVED) == 17


@pytest.mark.parametrize(
    ("day", "weekday"), [("01-08", 0), ("01-09", 1), ("01-10", 2), ("01-11", 3), ("01-12", 4), ("02-12", 0)]
)
def test_weekdays_are_those_of_2029(day, weekday):
    assert datetime.date.fromisoformat(f"2029-{day}").weekday() == weekday


def test_what_one_must_ask_about_is_kept_as_words_alone():
    for lines in DEMO.logs.values():
        for line in lines:
            said = (line.exercise, line.side, line.weight, line.reps, line.seconds, line.effort)
            assert (said == ("", None, None, (), None, None)) == (line.raw in ODD)


def stored(code, day):
    return [
        (line.exercise, line.side, str(line.weight or ""), line.reps, line.seconds, line.effort)
        for line in DEMO.logs[code]
        if (f"{line.date:%m-%d}" if line.date else "") == day
    ]


def test_what_is_said_without_doubt_is_stored():
    squat = "goblet-squat"
    assert stored("C2", "01-08") == [(squat, None, "16 kg", (10, 10, 9), None, None)]
    assert stored("C2", "01-18") == [
        (squat, None, "16 kg", (12, 12, 14), None, None),
        ("session", None, "", (), 24 * 60, None),
    ]
    assert stored("C2", "") == [(squat, None, "14 kg", (12, 12, 12), None, None)]
    assert stored("C1", "01-09") == [("seated-press", None, "10 lb", (12,), None, None)]
    assert stored("C4", "01-09") == [
        ("one-arm-supported-row", "right", "20 kg", (12, 12, 12), None, None),
        ("floor-press", "right", "16 kg", (10, 9, 9), None, None),
        ("floor-press", "left", "4 kg", (10, 10, 10), None, None),
        ("session", None, "", (), 41 * 60, 7),
    ]
    assert stored("C5", "01-11") == [("session", None, "", (), 21 * 60, 5)]
    assert stored("C5", "01-18") == [
        ("session", None, "", (), 23 * 60, 6),
        ("seated-press", None, "5 lb", (15,), None, None),
    ]
    assert stored("C6", "01-08") == stored("C6", "01-11") == [("floor-press", None, "40 lb", (12, 12, 14), None, None)]


def test_volume_of_the_fourth_message():
    """38 repetitions with one 16 kg dumbbell are 608 kg: the first number of a
    slate entry is the exercise's number on the sheet, and the first exercise
    of the plan is held as one weight."""
    squat = next(line for line in DEMO.logs["C2"] if line.date == datetime.date(2029, 1, 18) and line.reps)
    assert squat.exercise == DEMO.plans["P2", 2].facts.session[0].exercise
    assert sum(squat.reps) == 38
    assert sum(squat.reps) * squat.weight.kilograms == 608
