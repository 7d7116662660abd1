"""Strange values are asked about or refused, with the reason; nothing is guessed."""

from __future__ import annotations

import datetime
from dataclasses import replace

import pytest

from handouts.amounts import read_mass
from handouts.logbook.message import Filled, Message
from handouts.logbook.telling import describe
from handouts.logbook.understanding import interpret
from handouts.models import Kit, LogLine

TODAY = datetime.date(2029, 1, 20)


def heard(known, code, raw, answers=None, history=(), fields=(), date=TODAY, **given):
    language = given.pop("language", "en")
    waiting = given.pop("waiting", 0)
    message = Message(raw, language, tuple(fields), date, **given)
    return interpret(message, known(code, TODAY, history, waiting), answers or {})


def question(found):
    (one,) = found.questions
    return one


def done(**cells) -> LogLine:
    base = dict(
        line=2,
        date=datetime.date(2029, 1, 18),
        plan="P2",
        version=2,
        exercise="floor-press",
        side=None,
        weight=read_mass("16 kg"),
        reps=(10, 10, 10),
        seconds=None,
        effort=None,
        note="",
        raw="",
    )
    return LogLine(**{**base, **cells})


# --- weights ---------------------------------------------------------------------


def test_a_bare_number_takes_the_unit_only_where_it_is_without_doubt(known):
    assert describe(heard(known, "C2", "floor press 14 12 12 12").lines[0]) == "floor-press: 14 kg, 12/12/12 reps"
    # C1 has dumbbells of 5 lb, and one stray of 5 kg.
    found = question(heard(known, "C1", "goblet squat 5 10 10 10"))
    assert "5 kg and 5 lb" in found.reason or "5 lb and 5 kg" in found.reason
    assert {proposal.answer for proposal in found.proposals} == {"5 kg", "5 lb", "unknown"}


@pytest.mark.parametrize(
    "raw, reason",
    [
        ("floor press 17 kg 12 12 12", "17 kg is not among the weights"),
        ("floor press 40 lb 12 12 12", "40 lb is not among the weights"),
        ("floor press -5 kg 12 12 12", "a weight of -5 kg cannot be"),
        ("floor press 0 kg 12", "a weight of 0 kg cannot be"),
        ("floor press 4 kg 12 12 12", "4 kg is far from the 16 kg on the sheet"),
        ("split squat 10 kg 8 8", "the sheet has no weight for this exercise"),
    ],
)
def test_weights_that_cannot_be_taken_as_they_are(known, raw, reason):
    found = question(heard(known, "C2", raw))
    assert reason in found.reason and found.key.startswith("weight:")


def test_a_pair_needs_two(known):
    """C1 has a single dumbbell of 20 lb, and the press takes one in each hand."""
    found = question(heard(known, "C1", "seated press 20 lb 10 10 10"))
    assert found.conflict and "the client has one of 20 lb" in found.reason


def test_a_handle_with_plates_is_among_the_weights(known):
    """2 handles of 2 kg and 8 plates of 1.25 kg: 2, 4.5 and 7 kg as a pair."""
    of = known("C2")
    kit = Kit(adjustable=[{"handle": "2 kg", "handles": "2", "plates": ["8 x 1.25 kg"]}])
    facts = of.client.facts.model_copy(update={"kit": kit, "loads": {}})
    own = replace(of, client=of.client.model_copy(update={"facts": facts}))
    message = Message("seated press 4.5 kg 12 12 12", "en", (), TODAY)
    found = interpret(message, own, {"exercise:press seated": "seated-press"})
    assert not found.questions and str(found.lines[0].weight) == "4.5 kg"
    odd = interpret(replace(message, raw="seated press 5 kg 12 12 12"), own, {"exercise:press seated": "seated-press"})
    assert "5 kg is not among the weights" in question(odd).reason


def test_two_weights_in_one_breath_are_a_conflict(known):
    found = question(heard(known, "C2", "floor press 16 kg 14 kg 12 12 12"))
    assert found.conflict and "16 kg and 14 kg" in found.reason


def test_a_cuff_takes_its_steps_alone(known):
    assert not heard(known, "C4", "press R 16 kg 10, cuff 5 kg 10").questions
    assert "settings of the client's cuff" in question(heard(known, "C4", "press R 16 kg 10, cuff 6 kg 10")).reason


def test_what_the_trainer_answers_is_believed_and_told(known):
    key = "weight:floor-press:both"
    found = heard(known, "C2", "floor press 17 kg 12 12 12", {key: "17 kg"})
    assert not found.questions and str(found.lines[0].weight) == "17 kg"
    assert any("write it in clients/C2.yaml" in notice.what for notice in found.notices)
    again = question(heard(known, "C2", "floor press 17 kg 12 12 12", {key: "a lot"}))
    assert again.key == key and "'a lot' is not a weight" in again.reason


# --- counts ----------------------------------------------------------------------


@pytest.mark.parametrize(
    "raw, reason",
    [
        ("floor press 16 kg 400", "more than the 200"),
        ("floor press 16 kg 120 12 12", "far above the 8 to 12 on the sheet"),
        ("floor press 16 kg 7.5 12", "no whole count"),
        ("floor press 16 kg 12 12 12 12", "the sheet has 3"),
        ("row 20 kg twenty five twelve", "the words can be heard both ways"),
    ],
)
def test_counts_that_are_asked_about(known, raw, reason):
    found = question(heard(known, "C2", raw))
    assert reason in found.reason and found.key.startswith("reps:")


def test_four_hundred_is_refused_as_an_answer_too(known):
    key = "reps:floor-press:both"
    assert "200" in question(heard(known, "C2", "floor press 16 kg 400", {key: "400"})).reason
    assert heard(known, "C2", "floor press 16 kg 400", {key: "40"}).lines[0].reps == (40,)


def test_is_the_first_number_the_weight(known):
    found = question(heard(known, "C2", "2 12 12 14"))
    assert found.key == "first:floor-press:both"
    weight = heard(known, "C2", "2 12 12 14", {found.key: "weight"})
    assert describe(weight.lines[0]) == "floor-press: 12 kg, 12/14 reps"
    reps = heard(known, "C2", "2 12 12 14", {found.key: "reps"})
    assert describe(reps.lines[0]) == "floor-press: 12/12/14 reps"
    assert not heard(known, "C2", "2 16 12").questions  # the sheet's own weight comes first


def test_a_number_that_is_the_weight_and_a_count_as_well_is_asked_about(known):
    """Three rounds of 10 repetitions with 10 lb: "10 10 10" says both and neither."""
    found = question(heard(known, "C1", "seated press ten, ten, ten"))
    assert found.key == "first:seated-press:both" and "10 is the weight on the sheet and a count as well" in found.reason
    counts = heard(known, "C1", "seated press ten, ten, ten", {found.key: "reps"})
    assert (counts.lines[0].weight, counts.lines[0].reps) == (None, (10, 10, 10))
    weight = heard(known, "C1", "seated press ten, ten, ten", {found.key: "weight"})
    assert (str(weight.lines[0].weight), weight.lines[0].reps) == ("10 lb", (10, 10))
    sure = heard(known, "C1", "seated press ten, ten, ten, ten")
    assert not sure.questions and sure.lines[0].reps == (10, 10, 10)


def test_one_of_a_kind_is_proposed_once(known):
    found = question(heard(known, "C1", "seated press 5 kilos 12 12 12"))
    answers = [proposal.answer for proposal in found.proposals]
    assert answers[0] == "5 kg" and answers.count("5 kg") == 1 and answers[-1] == "unknown"


def test_skipped_is_not_unknown(known):
    found = heard(known, "C2", "floor press 16 kg 12 12 12; skip the carry")
    assert [line.reps for line in found.lines] == [(12, 12, 12), (0,)]
    assert describe(found.lines[1]) == "farmer-carry: skipped"


def test_a_carry_counts_seconds(known):
    found = heard(known, "C2", "6 20 30 30 25")
    assert not found.questions
    (line,) = found.lines
    assert (line.exercise, str(line.weight), line.reps, line.seconds) == ("farmer-carry", "20 kg", (), 85)
    assert line.note == "seconds in each set: 30/30/25"


def test_the_same_exercise_twice_in_one_message(known):
    found = question(heard(known, "C2", "floor press 16 kg 12 12 12; row 20 kg 10 10 10; floor press 14 kg 10"))
    assert found.conflict and "tells this exercise twice" in found.reason


def test_a_missing_side_is_unknown_and_never_zero(known):
    found = question(heard(known, "C2", "row right 20 kg 12 12 12"))
    assert found.key == "side:one-arm-supported-row:left"
    for answer, lines in (
        ("same", ["right, 20 kg, 12/12/12 reps", "left, 20 kg, 12/12/12 reps"]),
        ("not done", ["right, 20 kg, 12/12/12 reps", "left, skipped"]),
        ("unknown", ["right, 20 kg, 12/12/12 reps"]),
        ("18 kg 10 10 9", ["right, 20 kg, 12/12/12 reps", "left, 18 kg, 10/10/9 reps"]),
    ):
        settled = heard(known, "C2", "row right 20 kg 12 12 12", {found.key: answer})
        assert not settled.questions
        assert [describe(line).partition(": ")[2] for line in settled.lines] == lines


def test_the_weight_of_one_side_serves_the_other_where_the_sheet_has_one(known):
    found = heard(known, "C2", "row right 20 kg 12 12 12 left 11 11 11")
    assert [str(line.weight) for line in found.lines] == ["20 kg", "20 kg"]
    # C4's left arm has a cuff with a weight of its own.
    found = heard(known, "C4", "row right 20 kg 12 12 12 left 11 11 11")
    assert [str(line.weight) for line in found.lines] == ["20 kg", "None"]


# --- time, effort, date, plan -------------------------------------------------------


@pytest.mark.parametrize(
    "raw, reason",
    [
        ("-5 min", "is not above zero"),
        ("0 min", "is not above zero"),
        ("9 h", "more than 6 hours"),
        ("95 min", "the sheet reckons 27:39"),
        ("5 min", "the sheet reckons 27:39"),
        ("24 min; 30 min", "more than one time: 24:00 and 30:00"),
        ("24 min; -3 min", "more than one time: 24:00 and -3:00"),
    ],
)
def test_times_that_are_asked_about(known, raw, reason):
    found = question(heard(known, "C2", raw))
    assert found.key == "time" and reason in found.reason


@pytest.mark.parametrize("raw", ["25:99", "1:75:00", "24:60"])
def test_a_clock_that_counts_past_59_is_no_time(known, raw):
    found = question(heard(known, "C2", raw))
    assert found.key == "unread:1" and raw in found.asks
    answered = heard(known, "C2", raw, answers={"unread:1": "25:59"})
    assert not answered.questions and [line.seconds for line in answered.lines] == [25 * 60 + 59]


def test_one_colon_may_have_been_hours(known):
    found = question(heard(known, "C2", "0:41"))
    assert found.proposals[0].answer == "41 min"


@pytest.mark.parametrize("raw", ["effort 11", "effort 7.5", "effort 5, effort 7", "RPE 99"])
def test_efforts_that_are_asked_about(known, raw):
    found = question(heard(known, "C2", raw))
    assert found.key == "effort"
    assert heard(known, "C2", raw, {"effort": "7"}).lines[0].effort == 7
    assert question(heard(known, "C2", raw, {"effort": "11"})).key == "effort"


def test_a_date_after_today_is_refused(known):
    late = question(heard(known, "C2", "1 16 12", date=datetime.date(2029, 1, 21)))
    assert late.key == "date" and "after today" in late.reason
    again = question(heard(known, "C2", "1 16 12", {"date": "2029-02-01"}, date=None))
    assert "after today" in again.reason
    assert (
        "more than a year ago"
        in question(heard(known, "C2", "1 16 12", date=datetime.date(2027, 1, 8), version=2)).reason
    )


def test_dates_that_contradict(known):
    found = question(heard(known, "C2", "2029-01-08: 1 16 12", date=datetime.date(2029, 1, 11)))
    assert found.key == "date" and found.conflict


def test_a_log_from_before_the_version_is_asked_about(known):
    found = question(heard(known, "C2", "1 16 12", date=datetime.date(2029, 1, 5)))
    assert found.key == "plan" and "version 2 is from 2029-01-07" in found.reason
    settled = heard(known, "C2", "1 16 12", {"plan": "P2 version 1"}, date=datetime.date(2029, 1, 5))
    assert not settled.questions and settled.lines[0].version == 1


def test_plans_that_are_not_there(known):
    assert "there is no plan 'P9'" in question(heard(known, "C2", "1 16 12", plan="P9")).reason
    assert "no version 7" in question(heard(known, "C2", "1 16 12", plan="P2", version=7)).reason
    assert question(heard(known, "C2", "P2 version 1: 1 16 12", plan="P2", version=2)).conflict


# --- exercises ------------------------------------------------------------------------


def test_a_number_that_the_sheet_does_not_have(known):
    assert "exercises 1 to 6" in question(heard(known, "C2", "9 16 12 12")).reason


def test_a_name_that_fits_two(known):
    found = question(heard(known, "C2", "squat 16 kg 12 12 12"))
    assert {proposal.answer for proposal in found.proposals} == {"goblet-squat", "split-squat", "leave out"}


def test_an_unknown_word_before_a_name_is_not_overheard(known):
    found = question(heard(known, "C2", "incline press 16 kg 12 12 12"))
    assert "'incline press' is not on the sheet" in found.reason


def test_numbers_without_a_name(known):
    found = question(heard(known, "C2", "16 kilos twelve twelve fourteen"))
    assert found.key.startswith("exercise:") and "does not name it" in found.reason
    assert heard(known, "C2", "16 kilos twelve twelve fourteen", {found.key: "1"}).lines[0].exercise == "goblet-squat"


def test_what_cannot_be_placed_is_never_dropped_in_silence(known):
    found = question(heard(known, "C2", "7/10"))
    assert found.asks == "What does '7/10' mean?"
    assert heard(known, "C2", "7/10", {found.key: "effort 7"}).lines[0].effort == 7


# --- the log so far ---------------------------------------------------------------------


def test_the_same_log_twice_is_noticed(known):
    found = question(heard(known, "C2", "floor press 16 kg 10 10 10", history=[done()], date=done().date))
    assert found.asks == "Is this the same log once more?" and "line 2" in found.reason
    out = heard(known, "C2", "floor press 16 kg 10 10 10", {"again": "leave out"}, [done()], date=done().date)
    assert not out.questions and not out.lines
    second = heard(known, "C2", "floor press 16 kg 10 10 10", {"again": "second"}, [done()], date=done().date)
    assert len(second.lines) == 1 and not second.replaces


def test_other_numbers_on_the_same_day_may_be_a_correction(known):
    found = question(heard(known, "C2", "floor press 16 kg 10 10 12", history=[done()], date=done().date))
    assert found.conflict
    correct = heard(known, "C2", "floor press 16 kg 10 10 12", {"again": "correct"}, [done()], date=done().date)
    assert correct.replaces == (2,) and correct.lines[0].reps == (10, 10, 12)


def test_same_is_not_resolved_past_what_was_never_understood(known):
    raw = done(line=3, date=datetime.date(2029, 1, 19), exercise="", weight=None, reps=(), raw="mumble")
    assert "never understood: 'mumble'" in question(heard(known, "C2", "same", history=[done(), raw])).reason
    assert "still waits for answers" in question(heard(known, "C2", "same", history=[done()], waiting=1)).reason


def test_same_with_another_last_set(known):
    found = heard(known, "C2", "same as Thursday, last one eight", history=[done()])
    assert not found.questions and found.lines[0].reps == (10, 10, 8)
    two = [done(), done(line=3, exercise="goblet-squat")]
    assert question(heard(known, "C2", "same as Thursday, last one eight", history=two)).key == "same-last"


# --- signs and fields --------------------------------------------------------------------


def test_a_sign_to_stop_freezes_the_whole_session(known):
    found = heard(known, "C2", "1 16 12 12 12; felt dizzy at the end")
    (stop,) = [notice for notice in found.notices if notice.strength == "stop"]
    assert "no training before their doctor or another licensed professional has been asked" in stop.what
    assert [line.warning for line in found.lines if line.exercise == "session"] == ["felt dizzy at the end"]


def test_fields_of_a_form(known):
    fields = [
        Filled("one-arm-supported-row", "weight_right", "20 kg"),
        Filled("one-arm-supported-row", "reps_right", "12 12 12"),
        Filled("one-arm-supported-row", "weight_left", "4 kg"),
        Filled("one-arm-supported-row", "reps_left", "10/10/10"),
        Filled("suitcase-carry", "weight", "16"),
        Filled("suitcase-carry", "time", "30 30 30"),
        Filled("session", "time", "41"),
        Filled("session", "effort", "7"),
        Filled("session", "pain", "no"),
    ]
    found = heard(known, "C4", "form", fields=fields)
    assert not found.questions
    assert [describe(line) for line in found.lines] == [
        "one-arm-supported-row: right, 20 kg, 12/12/12 reps",
        "one-arm-supported-row: left, 4 kg, 10/10/10 reps",
        "suitcase-carry: right, 16 kg, 1:30, note: seconds in each set: 30/30/30",
        "session: 41:00, effort 7",
    ]


def test_a_field_that_cannot_be_read_is_asked_about(known):
    found = question(heard(known, "C2", "form", fields=[Filled("floor-press", "reps", "lots")]))
    assert "floor-press reps: lots" in found.asks
