"""The seventeen messages that the demo was invented with, in two languages.

What each must come to was written down before the program was.  A message
that was sent in one language is tried in the other too.
"""

from __future__ import annotations

import datetime

import pytest

from handouts.logbook.message import Message, Understanding
from handouts.logbook.telling import describe
from handouts.logbook.understanding import interpret
from handouts.models import LogLine


def day(text: str) -> datetime.date:
    return datetime.date.fromisoformat(f"2029-{text}")


def heard(known, code, plan, version, date, raw, language="en", history=(), answers=None) -> Understanding:
    date = day(date) if date else None
    today = date or day("01-19")
    message = Message(raw, language, date=date, plan=plan, version=version)
    return interpret(message, known(code, today, history), answers or {})


def told(understanding: Understanding) -> list[str]:
    return [describe(line) for line in understanding.lines]


def keys(understanding: Understanding) -> list[str]:
    return [question.key for question in understanding.questions]


@pytest.mark.parametrize(
    "date, raw, french, reps",
    [
        ("01-08", "1 16 10 10 9", "un seize dix dix 9", (10, 10, 9)),
        ("01-11", "1 16 12 11 11", "1 16 12 11 11", (12, 11, 11)),
        ("01-15", "1 16 12 12 14", "un seize douze douze quatorze", (12, 12, 14)),
    ],
)
def test_1_to_3_a_slate_line(known, date, raw, french, reps):
    for language, words in (("en", raw), ("fr", french)):
        found = heard(known, "C2", "P2", 2, date, words, language)
        assert not found.questions
        (line,) = found.lines
        assert (line.exercise, str(line.weight), line.reps, line.version) == ("goblet-squat", "16 kg", reps, 2)
        assert line.raw == words


def test_4_a_slate_line_and_the_time(known):
    for language in ("en", "fr"):
        found = heard(known, "C2", "P2", 2, "01-18", "1 16 12 12 14; 24 min", language)
        assert told(found) == ["goblet-squat: 16 kg, 12/12/14 reps", "session: 24:00"]
        squat, session = found.lines
        # 38 repetitions, 608 kg, and over 24 minutes 25.3 kg a minute.
        assert sum(squat.reps) == 38
        volume = squat.weight.amount * sum(squat.reps)
        assert volume == 608 and round(float(volume) * 60 / session.seconds, 1) == 25.3


def test_5_an_old_version_without_a_date(known):
    for language in ("en", "fr"):
        found = heard(known, "C2", "P2", 1, None, "1 14 12 12 12", language)
        assert keys(found) == ["date"]
        assert [proposal.answer for proposal in found.questions[0].proposals] == ["2029-01-19", "2029-01-18"]
        answered = heard(known, "C2", "P2", 1, None, "1 14 12 12 12", language, answers={"date": "2029-01-18"})
        assert not answered.questions
        assert (answered.lines[0].plan, answered.lines[0].version, str(answered.lines[0].weight)) == ("P2", 1, "14 kg")
        assert any("does not count in it" in notice.what for notice in answered.notices)


@pytest.mark.parametrize(
    "language, raw",
    [
        ("en", "seated press, ten pounds, twelve"),
        ("fr", "développé assis, dix livres, douze"),
    ],
)
def test_6_a_voice(known, language, raw):
    found = heard(known, "C1", "P1", 1, "01-09", raw, language)
    assert not found.questions
    assert told(found) == ["seated-press: 10 lb, last set 12 reps"]


@pytest.mark.parametrize(
    "language, raw",
    [
        ("en", "seated press, fifty pounds, twelve; ninety-five minutes"),
        ("fr", "développé assis, cinquante livres, douze ; quatre-vingt-quinze minutes"),
    ],
)
def test_7_fifty_is_not_in_the_rack_and_the_time_is_far_off(known, language, raw):
    found = heard(known, "C1", "P1", 1, "01-12", raw, language)
    assert keys(found) == ["weight:seated-press:both", "time"]
    weight, time = found.questions
    assert weight.asks == "seated-press: 15 lb, or another weight?"
    assert weight.proposals[0].answer == "15 lb"
    assert time.asks == "Did the session take 1:35:00?" and "34:54" in time.reason
    answers = {"weight:seated-press:both": "15 lb", "time": "unknown"}
    settled = heard(known, "C1", "P1", 1, "01-12", raw, language, answers=answers)
    assert not settled.questions and told(settled) == ["seated-press: 15 lb, last set 12 reps"]


PRESS = dict(
    line=2, plan="P1", version=1, exercise="seated-press", side=None, seconds=None, effort=None, note="", raw=""
)


@pytest.mark.parametrize(
    "language, raw",
    [
        ("en", "same as Saturday"),
        ("fr", "comme samedi"),
        ("fr", "pareil que samedi"),
        ("en", "like Saturday"),
    ],
)
def test_8_the_same_as_a_day_without_a_log(known, language, raw):
    press = _line(PRESS, date="01-09", weight="10 lb", reps=(12,))
    found = heard(known, "C1", "P1", 1, "01-16", raw, language, [press])
    assert keys(found) == ["same"] and not found.lines
    assert found.questions[0].reason == "there is no log of Saturday 2029-01-13"
    assert found.questions[0].proposals[0].answer == "2029-01-09"
    settled = heard(known, "C1", "P1", 1, "01-16", raw, language, [press], {"same": "2029-01-09"})
    assert told(settled) == ["seated-press: 10 lb, last set 12 reps"]
    assert any("2029-01-09" in notice.what and "10 lb" in notice.what for notice in settled.notices)


@pytest.mark.parametrize(
    "language, raw",
    [
        ("fr", "développé assis, trois kilos, quinze"),
        ("en", "seated press, three kilos, fifteen"),
    ],
)
def test_9_an_exercise_that_is_not_on_the_sheet(known, language, raw):
    found = heard(known, "C3", "P2", 1, "01-10", raw, language)
    (question,) = found.questions
    assert not found.lines
    assert "not on the sheet of P2 version 1; was it done instead of floor-press?" in question.reason
    assert [proposal.answer for proposal in question.proposals] == ["floor-press", "seated-press", "leave out"]
    swapped = heard(known, "C3", "P2", 1, "01-10", raw, language, answers={question.key: "seated-press"})
    assert not swapped.questions and told(swapped) == ["seated-press: 3 kg, last set 15 reps"]


@pytest.mark.parametrize(
    "language, raw, walks",
    [
        ("fr", "pareil, mais le genou droit fait mal à la marche", "marche"),
        ("en", "same, but the right knee hurts on the step up", ""),
    ],
)
def test_10_pain_freezes_and_the_step_is_asked_about(known, language, raw, walks):
    press = _line(PRESS, plan="P2", exercise="floor-press", date="01-10", weight="3 kg", reps=(15,))
    found = heard(known, "C3", "P2", 1, "01-17", raw, language, [press])
    (stop,) = [notice for notice in found.notices if notice.strength == "stop"]
    assert set(stop.exercises) == {"step-up", "goblet-squat"}
    assert keys(found) == (["warning:1"] if walks else [])
    if walks:
        (question,) = found.questions
        assert [p.answer for p in question.proposals] == ["step-up", "farmer-carry", "all", "none"]
        assert "walking outside the session" in question.reason
        found = heard(known, "C3", "P2", 1, "01-17", raw, language, [press], {"warning:1": "step-up"})
    assert not found.questions
    warned = {line.exercise: line.warning for line in found.lines if line.warning}
    assert set(warned) == {"step-up", "goblet-squat"} and all(
        "knee" in words or "genou" in words for words in warned.values()
    )
    assert "floor-press: 3 kg, last set 15 reps" in told(found)


@pytest.mark.parametrize(
    "language, raw",
    [
        ("en", "row R 20 kg 12/12/12; press R 16 kg 10/9/9, cuff 4 kg 10/10/10; 41 min; effort 7"),
        ("fr", "tirage D 20 kg 12/12/12 ; développé D 16 kg 10/9/9, manchon 4 kg 10/10/10 ; 41 min ; effort 7"),
    ],
)
def test_11_one_hand_and_a_cuff(known, language, raw):
    found = heard(known, "C4", "P2", 1, "01-09", raw, language)
    assert keys(found) == ["side:one-arm-supported-row:left"]
    sure = [
        "one-arm-supported-row: right, 20 kg, 12/12/12 reps",
        "floor-press: right, 16 kg, 10/9/9 reps",
        "floor-press: left, 4 kg, 10/10/10 reps",
        "session: 41:00, effort 7",
    ]
    assert told(found) == sure
    assert any("session load 287" in notice.what for notice in found.notices)
    open_side = heard(
        known, "C4", "P2", 1, "01-09", raw, language, answers={"side:one-arm-supported-row:left": "unknown"}
    )
    assert not open_side.questions and told(open_side) == sure
    both = heard(
        known, "C4", "P2", 1, "01-09", raw, language, answers={"side:one-arm-supported-row:left": "4 kg 12 12 10"}
    )
    assert "one-arm-supported-row: left, 4 kg, 12/12/10 reps" in told(both)


@pytest.mark.parametrize("language, raw", [("en", "carry 2×12 kg"), ("fr", "valise 2 fois 12 kg")])
def test_12_two_weights_and_one_hand(known, language, raw):
    found = heard(known, "C4", "P2", 1, "01-16", raw, language)
    assert [question.key for question in found.conflicts] == ["weight:suitcase-carry:right"]
    assert "2 weights of 12 kg" in found.conflicts[0].reason and "right hand" in found.conflicts[0].reason
    settled = heard(known, "C4", "P2", 1, "01-16", raw, language, answers={"weight:suitcase-carry:right": "12 kg"})
    assert told(settled) == ["suitcase-carry: right, 12 kg"]


def test_13_and_14_session_load_and_the_cap(known):
    for raw, language in (("21 min, effort 5", "en"), ("21 min, effort cinq", "fr")):
        found = heard(known, "C5", "P3", 1, "01-11", raw, language)
        assert told(found) == ["session: 21:00, effort 5"] and not found.questions
        assert any("session load 105" in notice.what for notice in found.notices)
        assert not any(notice.strength == "eye" for notice in found.notices)
    for raw, language in (
        ("23 min, effort 6, press 5 lb × 15", "en"),
        ("23 min, effort 6, développé 5 livres × 15", "fr"),
    ):
        found = heard(known, "C5", "P3", 1, "01-18", raw, language)
        assert (
            told(found) == ["seated-press: 5 lb, last set 15 reps", "session: 23:00, effort 6"] and not found.questions
        )
        assert any("session load 138" in notice.what for notice in found.notices)
        assert any(notice.strength == "eye" and "over the client's cap of 5" in notice.what for notice in found.notices)


@pytest.mark.parametrize(
    "language, raw, same",
    [
        ("en", "floor press 40 lb each 12, 12, 14", "same"),
        ("fr", "développé au sol 40 livres chacun 12, 12, 14", "pareil"),
    ],
)
def test_15_and_16_a_pair_and_the_same_again(known, language, raw, same):
    found = heard(known, "C6", "P2", 1, "01-08", raw, language)
    assert not found.questions and told(found) == ["floor-press: 40 lb, 12/12/14 reps"]
    (line,) = found.lines
    assert 2 * line.weight.amount * sum(line.reps) == 3040  # a pair
    again = heard(known, "C6", "P2", 1, "01-11", same, language, found.lines)
    assert not again.questions and told(again) == ["floor-press: 40 lb, 12/12/14 reps"]
    assert any("log of 2029-01-08" in notice.what and "12/12/14" in notice.what for notice in again.notices)


@pytest.mark.parametrize("language, raw", [("en", "back from travel"), ("fr", "de retour de voyage")])
def test_17_a_note_after_a_break(known, language, raw):
    press = _line(PRESS, plan="P2", exercise="floor-press", date="01-11", weight="40 lb", reps=(12, 12, 14))
    found = heard(known, "C6", "P2", 1, "02-12", raw, language, [press])
    assert not found.questions
    (line,) = found.lines
    assert (line.exercise, line.note, line.reps, line.weight) == ("session", raw, (), None)
    assert any(notice.strength == "eye" and notice.what.startswith("32 days") for notice in found.notices)


def _line(base: dict, date: str, weight: str, reps: tuple[int, ...], **changed: object) -> LogLine:
    from handouts.amounts import read_mass

    return LogLine(**{**base, **changed, "date": day(date), "weight": read_mass(weight), "reps": reps})
