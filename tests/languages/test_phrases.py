"""Every language has the same keys and values, and words numbers its own way."""

import string
from decimal import Decimal

import pytest

from handouts.amounts import Mass
from handouts.handout import Measure, Strong, Text, plain
from handouts.languages import known_languages, phrases

OTHERS = [language for language in known_languages() if language != "en"]


def fields(entry):
    texts = entry.values() if isinstance(entry, dict) else [entry]
    return {name for text in texts for _, name, _, _ in string.Formatter().parse(text) if name}


@pytest.mark.parametrize("language", OTHERS)
def test_every_language_has_the_english_keys_and_values(language):
    english, other = phrases("en").table, phrases(language).table
    assert other.keys() == english.keys()
    for key, entry in english.items():
        assert isinstance(other[key], dict) == isinstance(entry, dict), key
        if key in ("dose_sets", "effort_line", "rounds"):
            continue  # English says "1" as a word where French counts 0 and 1 alike
        assert fields(other[key]) == fields(entry), key


@pytest.mark.parametrize("language", known_languages())
def test_no_phrase_is_empty_or_has_loose_markup(language):
    for key, entry in phrases(language).table.items():
        for text in entry.values() if isinstance(entry, dict) else [entry]:
            assert text.strip(" ") == text and text, key
            assert text.count("**") % 2 == 0, key


def test_plural_forms_follow_cldr():
    # Unicode CLDR, Language Plural Rules: English "one" is 1 alone, French "one" is 0 and 1.
    assert phrases("en").text("dose_reps", count=0, reps=0) == "0 repetitions"
    assert phrases("fr").text("dose_reps", count=0, reps=0) == "0 répétition"
    assert phrases("en").text("dose_reps", count=1, reps=1) == "1 repetition"
    assert phrases("fr").text("dose_reps", count=2, reps=2) == "2 répétitions"


def test_numbers_take_the_decimal_mark_of_the_language():
    half = Mass(Decimal("12.5"), "kg")
    assert phrases("en").mass(half) == Measure("12.5 kg", "12.5 kilograms")
    assert phrases("fr").mass(half) == Measure("12,5 kg", "12,5 kilogrammes")
    assert phrases("en").mass(Mass(Decimal(1), "lb")).long == "1 pound"


@pytest.mark.parametrize(
    "seconds, short, long",
    [
        (20, "20 s", "20 seconds"),
        (90, "90 s", "90 seconds"),
        (60, "1 min", "1 minute"),
        (120, "2 min", "2 minutes"),
        (150, "2 min 30 s", "2 minutes 30 seconds"),
        (1, "1 s", "1 second"),
    ],
)
def test_seconds_are_written_short_and_spoken_whole(seconds, short, long):
    assert phrases("en").seconds(seconds) == Measure(short, long)


def test_a_range_is_spoken_with_to():
    # An en dash alone is read as "eight twelve" by a common synthesiser.
    assert phrases("en").count_range(8, 12) == Measure("8–12", "8 to 12")


def test_a_date_cannot_be_taken_for_another():
    assert phrases("en").date("2029-01-08") == "8 January 2029"
    assert phrases("fr").date("2029-12-01") == "1 décembre 2029"


def test_strong_words_and_values_in_one_line():
    line = phrases("en").line("stop_short", emergency="112")
    assert isinstance(line[0], Strong)
    assert plain(line).endswith("Emergency number: 112.")
    assert line.count(Text("")) == 0


def test_an_unknown_language_is_told():
    with pytest.raises(KeyError):
        phrases("xx")
