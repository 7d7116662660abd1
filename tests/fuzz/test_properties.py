"""What is written by one side comes back as it was from the other, for any input."""

from __future__ import annotations

import datetime
import json
from decimal import Decimal

import pytest
import yaml
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from handouts import amounts
from handouts.errors import StudioFaults, quoted
from handouts.forms import log_text
from handouts.logbook.files import told_seconds
from handouts.making.file_names import safe_name
from handouts.mirror import mirror
from handouts.reading.exercise import slug
from handouts.reading.markdown_blocks import read_blocks
from handouts.reading.text_file import decode_text, readable
from handouts.reading.yaml_text import read_yaml

# No property is a matter of time, on a busy machine neither.
many = settings(
    max_examples=300, deadline=None, derandomize=True, database=None, suppress_health_check=[HealthCheck.too_slow]
)
WORDS = st.text(st.characters(blacklist_categories=["Cs"]), max_size=60)
SOUND = WORDS.map(readable).map(lambda text: text.replace("\r", ""))


def nested(inner):
    return SOUND | st.lists(inner, max_size=3) | st.dictionaries(SOUND, inner, max_size=3)


UNITS = st.sampled_from(["kg", "lb"])


@many
@given(st.integers(1, 999_999_999), st.integers(0, 3), UNITS)
def test_a_weight_is_read_as_it_is_told(digits, places, unit):
    mass = amounts.Mass(Decimal(digits) / 10**places, unit)
    if mass.amount < 1_000_000:
        assert amounts.read_mass(str(mass)) == mass


@many
@given(st.integers(0, 359_999))
def test_a_time_is_read_as_it_is_told(seconds):
    assert amounts.read_seconds(told_seconds(seconds)) == seconds


@many
@given(st.dates())
def test_a_date_is_read_as_the_standard_writes_it(date):
    assert amounts.read_date(date.isoformat()) == date  # ISO 8601, as the standard library writes it


@many
@given(WORDS)
def test_no_reader_of_amounts_takes_what_python_alone_would(text):
    # Digits of other scripts, underscores, exponents, signs.
    try:
        number = amounts.read_whole_number(text)
    except ValueError:
        return
    assert str(number) == text.strip(" \n\u00a0\u202f")


@many
@given(st.dictionaries(SOUND.filter(lambda key: key.strip() and key != "<<"), SOUND | st.lists(SOUND, max_size=4), min_size=1, max_size=5))
def test_yaml_of_another_writer_is_read_as_the_text_it_was(data):
    # Written by PyYAML itself, every scalar in quotes.
    text = yaml.safe_dump(data, allow_unicode=True, default_style='"', width=10_000)
    assert read_yaml(text, "file").data == data


@many
@given(nested(nested(nested(SOUND))))
def test_json_is_read_or_refused(value):
    # JSON is YAML 1.2 (YAML 1.2.2, section 1.3), but for keys that are refused here.
    try:
        found = read_yaml(json.dumps({"top": value}, ensure_ascii=False), "file")
    except StudioFaults:
        return
    assert found.data == {"top": value}


@many
@given(st.binary(max_size=80))
def test_bytes_are_text_without_odd_characters_or_refused(data):
    try:
        text = decode_text(data, "file")
    except StudioFaults as problem:
        assert str(problem).isprintable()
        return
    assert text.encode("utf-8").replace(b"\n", b"") == data.removeprefix(b"\xef\xbb\xbf").replace(b"\r", b"").replace(b"\n", b"")


@many
@given(st.lists(SOUND, max_size=8))
def test_blocks_of_a_text_lose_no_word(rows):
    lines = [(number, line) for number, line in enumerate("\n".join(rows).split("\n"), 1)]
    blocks, problems = read_blocks(lines)
    assert blocks or problems or not any(line.strip() for _, line in lines)
    assert all(1 <= number <= len(lines) and wrong and instead for number, wrong, instead in problems)


@many
@given(WORDS)
def test_a_name_of_a_file_is_plain_and_its_own(name):
    safe = safe_name(name)
    assert safe.isascii() and 1 <= len(safe) <= 57 and safe.replace("-", "").isalnum() and not safe.startswith("-")
    assert len(safe) > 48 or safe_name(safe) == safe
    assert name == safe or safe_name(name + "x") != safe


@many
@given(WORDS)
def test_a_slug_is_an_id_or_nothing(name):
    assert slug(slug(name)) == slug(name)
    assert not slug(name) or slug(name).replace("-", "").isalnum()


@many
@given(WORDS)
def test_what_is_quoted_in_a_message_is_short_and_printable(text):
    told = quoted(text)
    assert told.isprintable() and len(told) <= 62


SIDED = st.lists(
    st.sampled_from(
        "left right your the hand foot o'clock clockwise anticlockwise half past quarter to at and , . 1 2 6 11 12 one "
        "twelve 10:30 rest away angle side leftmost LEFT Right over next".split()
    ),
    max_size=14,
).map(" ".join)


@many
@given(SIDED)
def test_english_mirrored_twice_is_the_same(text):
    assert mirror(mirror(text, "en"), "en") == text


@many
@given(SIDED)
def test_a_mirror_changes_no_word_that_has_no_side(text):
    kept = {"your", "the", "hand", "foot", "half", "at", "and", "rest", "angle", "away", "over", "next", "side"}
    assert [word for word in mirror(text, "en").split() if word in kept] == [word for word in text.split() if word in kept]


SAID = st.builds(log_text.Said, st.sampled_from(["weight", "reps_left", "effort", "question", "note"]), SOUND, SOUND)


@many
@given(SOUND.filter(str.strip), st.integers(1, 99), st.dates() | st.just(""), st.lists(st.lists(SAID, max_size=4), max_size=3))
def test_a_log_as_text_is_read_as_it_was_written(client, version, date, parts):
    written = log_text.LogText(
        client,
        "P1",
        version,
        date.isoformat() if isinstance(date, datetime.date) else "",
        tuple(log_text.LogPart(f"exercise-{at}", "Exercise", "Squat", tuple(fields)) for at, fields in enumerate(parts)),
    )
    once = log_text.write(written)
    if not log_text._clean(client):
        return
    found = log_text.read(once)
    assert (found.plan, found.version, found.date, len(found.parts)) == ("P1", version, written.date, len(parts))
    assert log_text.read(log_text.write(found)) == found
    for part, fields in zip(found.parts, parts, strict=True):
        kept = [said for said in fields if said.text.strip()]
        assert len(part.fields) <= len(kept)


def test_a_log_without_its_end_is_not_half_read():
    with pytest.raises(log_text.NoLogText, match="end of log"):
        log_text.read("Log [handouts log 1]\nClient: C1\n")
