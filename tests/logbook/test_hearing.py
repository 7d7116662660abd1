"""What words alone tell: numbers spelled out, slate lines, phone keys, voices."""

from __future__ import annotations

import datetime

import pytest
from num2words import num2words

from handouts.logbook.hearing import hear
from handouts.logbook.message import Same
from handouts.logbook.names import names_for
from handouts.logbook.tokens import cut, with_numbers
from handouts.logbook.words import words

TODAY = datetime.date(2029, 1, 16)  # a Tuesday


@pytest.fixture(scope="module")
def listen(demo):
    names = {language: names_for(demo.exercises, language) for language in ("en", "fr")}
    return lambda raw, language="en": hear(raw, names[language], ("P1", "P2", "P3"), TODAY)


def spelled(text: str, language: str) -> list[float]:
    own = words(language)
    return [float(token.value) for token in with_numbers(cut(text, own), own) if token.kind == "number"]


@pytest.mark.parametrize("language", ["en", "fr"])
def test_every_number_word_up_to_999(language):
    """Spelled by num2words, a general-purpose library."""
    for number in range(1000):
        assert spelled(num2words(number, lang=language), language) == [number]


@pytest.mark.parametrize("language", ["en", "fr"])
def test_halves_and_quarters(language):
    for number in (0.5, 2.5, 12.5, 22.5, 47.5, 6.25, 11.75):
        assert spelled(num2words(number, lang=language), language) == [number]
    said = {"en": "twenty-two and a half", "fr": "vingt-deux et demi"}[language]
    assert spelled(said, language) == [22.5]
    assert spelled("12½", language) == [12.5]


def test_a_number_that_can_be_two_numbers_says_so():
    """Dictation often leaves the hyphen out: "dix neuf" may be 19, or 10 and 9."""
    for text, language, value, split in (
        ("dix neuf", "fr", 19, (10, 9)),
        ("twenty five", "en", 25, (20, 5)),
    ):
        own = words(language)
        (token,) = with_numbers(cut(text, own), own)
        assert (token.value, token.split) == (value, split)
    own = words("fr")
    (token,) = with_numbers(cut("dix-neuf", own), own)
    assert token.split == ()


@pytest.mark.parametrize(
    "raw", ["1 16 10 10 9", "1*16*10*10*9", "one sixteen ten ten nine", "1: 16 10 10 9", "1  16, 10, 10, 9"]
)
def test_a_slate_line_and_phone_keys(listen, raw):
    (claim,) = listen(raw).claims
    assert claim.number == 1
    assert [int(number.value) for number in claim.numbers] == [16, 10, 10, 9]


def test_several_slate_lines(listen):
    heard = listen("1 16 10 10 9\n2 16 9 9 8\n3*20*12*12*12; 24:30")
    assert [claim.number for claim in heard.claims] == [1, 2, 3, None]
    assert heard.claims[3].times[0].seconds == 24 * 60 + 30


def test_a_voice_without_any_punctuation(listen):
    heard = listen(
        "goblet squat sixteen kilos twelve twelve fourteen floor press sixteen kilos ten nine nine "
        "total time twenty four minutes effort seven"
    )
    squat, press, session = heard.claims
    assert (squat.name, str(squat.weights[0].amount), [int(n.value) for n in squat.numbers]) == (
        "goblet squat",
        "16",
        [12, 12, 14],
    )
    assert (press.name, [int(n.value) for n in press.numbers]) == ("floor press", [10, 9, 9])
    assert session.times[0].seconds == 24 * 60 and session.times[0].total
    assert [int(value) for _, value in heard.efforts] == [7]


def test_a_voice_with_full_stops(listen):
    (press,) = listen("Floor press. Sixteen kilos. Twelve, twelve, fourteen.").claims
    assert press.weights and [int(n.value) for n in press.numbers] == [12, 12, 14]


def test_numbers_in_names_are_no_counts(listen):
    (row,) = listen("one-arm row right 20 kg 12 12 12").claims
    assert (row.name, row.side, [int(n.value) for n in row.numbers]) == ("one-arm row", "right", [12, 12, 12])


def test_sides_in_both_languages(listen):
    for raw, language in (("row R 20 kg 12 12 12 L 10 10 10", "en"), ("tirage D 20 kg 12 12 12 G 10 10 10", "fr")):
        right, left = listen(raw, language).claims
        assert (right.side, left.side) == ("right", "left")
        assert [int(n.value) for n in left.numbers] == [10, 10, 10]


@pytest.mark.parametrize(
    "raw, seconds",
    [
        ("24 min", 1440),
        ("24:30", 1470),
        ("1:05:00", 3900),
        ("1 h 5 min", 3900),
        ("1h05", 3900),
        ("90 minutes", 5400),
        ("1 min 30 s", 90),
        ("une heure cinq minutes", 3900),
        ("quarante et une minutes", 2460),
    ],
)
def test_times(listen, raw, seconds):
    language = "fr" if raw.startswith(("une", "quarante")) else "en"
    (claim,) = listen(raw, language).claims
    assert [time.seconds for time in claim.times] == [seconds]


@pytest.mark.parametrize(
    "raw, said",
    [
        ("12.5 kg", 12.5),
        ("12,5 kg", 12.5),
        ("12,5 kilos", 12.5),
        ("25lb", 25),
        ("25 lbs", 25),
        ("25 pounds", 25),
        ("12 livres et demie", 12),
        ("-5 kg", -5),
    ],
)
def test_weights(listen, raw, said):
    (claim,) = listen(
        f"floor press {raw}" if "livres" not in raw else f"développé au sol {raw}", "fr" if "livres" in raw else "en"
    ).claims
    assert float(claim.weights[0].amount) == said


def test_lists_with_commas_are_no_decimals(listen):
    (claim,) = listen("floor press 16 kg 12,12,14").claims
    assert [int(n.value) for n in claim.numbers] == [12, 12, 14]


@pytest.mark.parametrize(
    "raw, language, same",
    [
        ("same", "en", Same()),
        ("same as last time", "en", Same()),
        ("same as Saturday", "en", Same(5)),
        ("same as Tuesday, last one eight", "en", Same(1, 8)),
        ("pareil", "fr", Same()),
        ("comme lundi", "fr", Same(0)),
        ("pareil que samedi, la dernière huit", "fr", Same(5, 8)),
        ("same as 2029-01-09", "en", Same(datetime.date(2029, 1, 9))),
    ],
)
def test_the_same_as_before(listen, raw, language, same):
    (claim,) = listen(raw, language).claims
    assert claim.same == same and not claim.numbers


@pytest.mark.parametrize(
    "raw, language, date",
    [
        ("2029-01-09: 1 16 12", "en", "2029-01-09"),
        ("yesterday: floor press 16 kg 12", "en", "2029-01-15"),
        ("hier, développé au sol 16 kg 12", "fr", "2029-01-15"),
        ("Saturday: 1 16 12", "en", "2029-01-13"),
        ("9 January, 24 min", "en", "2029-01-09"),
        ("le 30 décembre, 24 min", "fr", "2028-12-30"),
    ],
)
def test_days(listen, raw, language, date):
    assert [day.isoformat() for _, day in listen(raw, language).dates] == [date]


def test_a_day_that_can_be_read_twice_is_not_read(listen):
    assert listen("01-08: floor press 16 kg 12").dates == (("01-08", None),)


@pytest.mark.parametrize(
    "raw, language, words",
    [
        ("floor press 40 lb 12 12 12, left shoulder hurts a bit", "en", "left shoulder hurts a bit"),
        ("squat 12 reps 12 reps knee pain floor press 16 kg 10 10 9", "en", "knee pain"),
        ("21 min, felt dizzy", "en", "felt dizzy"),
        ("21 min, j'ai eu mal au dos", "fr", "j'ai eu mal au dos"),
        ("un peu essoufflé à la fin", "fr", "un peu essoufflé à la fin"),
        ("no pain but dizzy", "en", "dizzy"),
    ],
)
def test_warning_signs_keep_the_clients_words(listen, raw, language, words):
    assert [warning.words for warning in listen(raw, language).warnings] == [words]


@pytest.mark.parametrize(
    "raw, language",
    [
        ("21 min, no pain", "en"),
        ("pain: no", "en"),
        ("pas de douleur", "fr"),
        ("douleur : non", "fr"),
        ("pas mal", "fr"),
        ("chest stretch, 2 min", "en"),
        ("nothing hurts", "en"),
    ],
)
def test_no_pain_is_no_warning(listen, raw, language):
    assert not listen(raw, language).warnings


def test_no_pain_takes_nothing_else_with_it(listen):
    (claim,) = listen("1 16 12 12 12 no pain").claims
    assert [int(number.value) for number in claim.numbers] == [16, 12, 12, 12] and not claim.note
    assert [warning.words for warning in listen("j'ai pas mal de douleurs", "fr").warnings] == [
        "j'ai pas mal de douleurs"
    ]
    assert not listen("no knee pain").warnings


def test_a_readers_question_finds_its_exercise(listen):
    heard = listen("floor press 16 kg 12 12 12; how far apart are my elbows?")
    assert [(asked.words, asked.exercise) for asked in heard.asked] == [("how far apart are my elbows?", "floor press")]
    assert len(heard.claims) == 1


def test_plan_and_version(listen):
    assert listen("P2v1 1 14 12 12 12").plans == (("P2", 1),)
    assert listen("P2 version 1: 1 14 12 12 12").plans == (("P2", 1),)
    assert listen("version 1, 1 14 12 12 12").plans == (("", 1),)


def test_unknown_names_are_kept_as_names(listen):
    press, lift = listen("incline press 12 kg 10 10 10, deadlift 40 kg 8").claims
    assert (press.name, lift.name) == ("incline press", "deadlift")


def test_words_without_numbers_are_a_note(listen):
    (claim,) = listen("the dog slept through all of it").claims
    assert claim.id == "session" and claim.note == "the dog slept through all of it"
