"""A small part of the fuzzing with a fixed seed, and every finding of the large part.

The large part is run by hand: python tests/fuzz/guided.py
"""

from __future__ import annotations

import random
import re

import pytest

from handouts.braille.codes import find_code
from handouts.braille.layout import lay_out
from handouts.braille.pages import Paper
from handouts.errors import StudioFaults, UnknownCharacter
from handouts.forms import log_text
from handouts.mirror import mirror
from handouts.reading.text_file import decode_text
from handouts.wording.checking import check_one
from handouts.wording.settings import Settings, read_settings
from tests.fuzz.targets import TARGETS, Finding, Target, promise, run, target, tree, watch

SEED = 20290108


def inputs(door: Target, count: int):
    """Seeds of a door with pieces cut, doubled, swapped, put in and spoilt."""
    chance = random.Random(f"{SEED} {door.name}")
    pool = [seed[: door.longest] for seed in door.seeds()]
    words = [word.encode() for word in door.words]
    for _ in range(count):
        data = bytearray(chance.choice(pool))
        for _ in range(chance.randint(1, 8)):
            at, end = sorted(chance.randint(0, len(data)) for _ in range(2))
            what = chance.randrange(6)
            if what == 0:
                del data[at:end]
            elif what == 1:
                data[at:at] = data[at : min(end, at + 200)]
            elif what == 2:
                other = chance.choice(pool)
                data[at:end] = other[chance.randint(0, len(other)) :][:200]
            elif what == 3 and data:
                data[min(at, len(data) - 1)] = chance.randrange(256)
            else:
                data[at:at] = chance.choice(words)
        yield bytes(data[: door.longest])


@pytest.mark.parametrize("door", TARGETS, ids=lambda door: door.name)
def test_some_inputs_through_every_door(door):
    for data in inputs(door, max(40, door.share * 6)):
        try:
            run(door, data)
        except Exception as problem:
            raise AssertionError(f"{door.name}: {data!r}") from problem


@pytest.mark.parametrize("door", TARGETS, ids=lambda door: door.name)
@pytest.mark.parametrize("data", [b"", b"\0", b"\xff\xfe", b"\xed\xa0\x80", "\U0010ffff".encode(), b"\n" * 300, b"-" * 300, b"9" * 300])
def test_plain_extremes_through_every_door(door, data):
    run(door, data)


def test_the_watch_sees_what_goes_outside(tmp_path):
    with pytest.raises(Finding, match="outside the studio"), watch().on():
        (tmp_path / "x").write_text("x")
    with pytest.raises(Finding, match=r"socket\.getaddrinfo"), watch().on():
        import socket

        socket.getaddrinfo("127.0.0.1", 80)
    with pytest.raises(Finding):
        promise(False, "x")


def test_the_doors_share_the_inputs():
    names = [door.name for door in TARGETS]
    assert len(set(names)) == len(names) == 18
    assert target("mirror").share > 0


# --- findings ------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("language", "words"),
    [("fr", "Posez le talon à 3h."), ("fr", "0heure"), ("en", "Step to 10o'clock."), ("en", "Step to 9, 10o'clock.")],
)
def test_an_hour_may_touch_its_unit(language, words):
    # The checker of whole texts lost the hours of "3h" and failed.
    check_one(words, "own.md", Settings(), language)


def test_a_fault_about_an_unreadable_character_can_be_read_aloud():
    # A thin space before the character went into the message.
    with pytest.raises(StudioFaults) as caught:
        decode_text(b"- pla\xe2\x80\x89ted-pres\x01s", "file")
    assert str(caught.value).isprintable()


ENDLESS = "9" * 5000  # Python refuses to make a number of so many digits


@pytest.mark.parametrize("door", TARGETS, ids=lambda door: door.name)
def test_endless_numbers_through_every_door(door):
    for seed in door.seeds()[:3]:
        for number in list(re.finditer(rb"[0-9]+", seed))[:40]:
            run(door, seed[: number.start()] + ENDLESS.encode() + seed[number.end() :])


def test_endless_numbers_in_a_log_that_a_client_sent():
    for first, version in ((ENDLESS, "1"), ("1", ENDLESS)):
        text = f"Log [handouts log {first}]\nClient: C1\nSession [plan]: P1 version {version}\n[end of log]\n"
        with pytest.raises(log_text.NoLogText):
            log_text.read(text)


def test_a_plan_code_of_two_words_comes_back_in_a_log():
    written = log_text.LogText("C1", "Leg day", 2, "", ())
    assert log_text.read(log_text.write(written)) == written


def test_control_characters_in_a_log_part_words():
    with pytest.raises(log_text.NoLogText):
        log_text.read("[handouts log 1]\nClient: 1\n[plan]: P\x002 \x00version\n[end of log]")
    found = log_text.read("[handouts log 1]\nClient: 1\n[plan]: P\x002 version 1\n[end of log]")
    assert log_text.read(log_text.write(found)) == found


def test_settings_with_odd_names_are_told_on_one_line(tmp_path):
    (tmp_path / "wording.yaml").write_text('"n\\ts": 1\nlanguage: "x\\ty"\nturned off:\n  "a\\tb": ""\n', "utf-8")
    with pytest.raises(StudioFaults) as caught:
        read_settings(tmp_path / "wording.yaml", "wording.yaml")
    assert all(str(fault).isprintable() for fault in caught.value.faults)


def test_a_character_without_name_is_told_by_its_number():
    # An unassigned character stood in the message as itself.
    with pytest.raises(UnknownCharacter) as caught:
        lay_out(tree("\u07fb\u2009deep"), find_code("ueb", 1), Paper())
    assert str(caught.value).isprintable()
    assert str(caught.value).startswith('no braille for a sign (U+07FB) at character 1 in "deep"')


def test_one_hour_alone_is_mirrored_like_every_other():
    # "11 h" became "1 h", which then stayed "1 h".
    for hour in range(1, 12):
        words = f"Le talon {hour} h"
        assert mirror(words, "fr") == f"Le talon {12 - hour} h"
        assert mirror(mirror(words, "fr"), "fr") == words


@pytest.mark.parametrize("text", ["Quarter to 112, then stop.", "At half past 123 o'clock.", "At 112 o'clock."])
def test_a_part_of_a_number_is_no_hour(text):
    assert mirror(text, "en") == text


def test_a_negation_cut_off_from_its_verb_is_read():
    run(target("wording"), b"Sit down. 12 n't ahead of your nose. N'T here.")
