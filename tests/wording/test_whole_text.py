"""The checks of whole texts, on their own examples and on texts that break one thing.

Sources: the clock is the convention of orientation and mobility teaching (12
ahead, 3 right, 6 behind, 9 left), one hour 360 / 12 = 30 degrees; the order of
the parts and "over 25 words" are the project's own rules.
"""

from __future__ import annotations

import importlib
import pkgutil

import pytest

from handouts.wording import whole_text
from handouts.wording.whole_text import CHECKS
from handouts.wording.whole_text.check import Check
from handouts.wording.whole_text.clock_direction import CLOCK_DIRECTION
from handouts.wording.whole_text.hours import arithmetic, find_hours, from_twelve

FLAGGED = [(check, text) for check in CHECKS for text in check.flag]
LEFT = [(check, text) for check in CHECKS for text in check.leave]


def name_of(value):
    return value.name if isinstance(value, Check) else ""


@pytest.mark.parametrize(("check", "text"), FLAGGED, ids=name_of)
def test_each_example_is_found_by_its_own_check(check, text, document):
    flaws = list(check.find(document(text)))
    assert flaws
    for flaw in flaws:
        assert 0 <= flaw.start < flaw.end <= len(text)
        assert flaw.what.endswith(".") and flaw.suggest.endswith((".", "'"))


@pytest.mark.parametrize(("check", "text"), LEFT, ids=name_of)
def test_each_near_miss_is_left_alone(check, text, document):
    assert list(check.find(document(text))) == []


def test_every_check_has_examples_of_both_sorts():
    assert [check.name for check in CHECKS if not check.flag or not check.leave] == []
    assert len({check.name for check in CHECKS}) == len(CHECKS)


def test_the_list_holds_every_check_of_the_folder():
    modules = [
        importlib.import_module(f"{whole_text.__name__}.{found.name}")
        for found in pkgutil.iter_modules(whole_text.__path__)
    ]
    written = {id(value) for module in modules for value in vars(module).values() if isinstance(value, Check)}
    assert written == {id(check) for check in CHECKS}


@pytest.mark.parametrize(
    ("text", "hours"),
    [
        ("to 2 o'clock", [(2.0,)]),
        ("at 10 and 2 o’clock", [(10.0, 2.0)]),
        ("half past one o'clock", [(1.5,)]),
        ("at 1:30 o'clock", [(1.5,)]),
        ("between ten and 11 o'clock, then 12 o'clock", [(10.0, 11.0), (12.0,)]),
        ("Hold them at 10 and 2.", [(10.0, 2.0)]),
        ("Do sets at 10 and 2 more.", []),
        ("at 10 o'clock in the morning", []),
    ],
)
def test_hours_are_read_from_words(text, hours):
    assert [found.values for found in find_hours(text, "en")] == hours


@pytest.mark.parametrize(
    ("text", "hours"),
    [
        ("vers 2 heures", [(2.0,)]),
        ("à 10 et 2 heures", [(10.0, 2.0)]),
        ("à une heure et demie", [(1.5,)]),
        ("12 heures se trouve devant vous", [(12.0,)]),
        ("après 2 heures de repos", []),
        ("dormez 8 heures par nuit", []),
    ],
)
def test_hours_are_read_from_french_words(text, hours):
    assert [found.values for found in find_hours(text, "fr")] == hours


@pytest.mark.parametrize("hour", range(1, 13))
def test_an_hour_is_thirty_degrees(hour):
    # The angle of an hour hand from the upright, the shorter way round.
    degrees = min(hour * 360 / 12 % 360, 360 - hour * 360 / 12 % 360)
    assert from_twelve(hour) * 30 == degrees
    assert arithmetic(hour, "en").endswith(f"{degrees:g} degrees")


def test_a_contradiction_shows_its_arithmetic(document):
    text = "12 o'clock is straight ahead. Turn your left foot slightly out to 10 o'clock."
    (flaw,) = CLOCK_DIRECTION.find(document(text))
    assert text[flaw.start : flaw.end] == "slightly out to 10 o'clock"
    assert "10 o'clock is 2 hours from 12, and 2 x 30 = 60 degrees" in flaw.what
    assert "11 o'clock for 30 degrees" in flaw.suggest


@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize("hour", range(1, 12))
def test_a_limb_that_opens_outward_stays_on_its_own_side(side, hour, document):
    text = f"12 o'clock is straight ahead. Turn your {side} foot outward to {hour} o'clock."
    wrong = hour < 6 if side == "left" else hour > 6
    assert bool(list(CLOCK_DIRECTION.find(document(text)))) == (wrong and hour != 6)


SOUND = """---
title: Chair stand
sides: each
written for: right
---
## Equipment

A firm chair.

## Start position

1. 12 o'clock is straight ahead of your nose.
2. Sit down. Set both feet flat. The dumbbell lies at 2 o'clock.
3. Draw both shoulders down.

## Movement

1. Press your right hand up until your right elbow is straight.
2. Lower your right hand.

## Breathing

Breathe out as you press.

## Count

Do all with this arm, then as many with the other arm.

## Key points

- Stop when it hurts.

## Easier

- **Shorter.** Press half as far.

## Harder

- **Slow.** Take four counts.

## Finish

1. To stop, lower the dumbbell to the floor.
"""


def test_a_sound_text_has_no_findings(found):
    assert found(SOUND) == []


@pytest.mark.parametrize(
    ("before", "after", "name"),
    [
        ("## Breathing\n\nBreathe out as you press.\n\n", "", "parts"),
        ("1. 12 o'clock is straight ahead of your nose.\n", "", "clock-frame"),
        ("then as many with the other arm", "and rest", "both-sides"),
        ("Draw both shoulders down.", "Put your hand on your thigh.", "unnamed-side"),
        ("Press your right hand up until your right elbow is straight.", "Press your right hand up.", "completeness"),
        ("A firm chair.", "A firm chair, " + "and one more thing, " * 8 + "on the floor.", "long-sentence"),
    ],
)
def test_one_fault_in_a_sound_text_is_the_one_that_is_found(before, after, name, found):
    assert before in SOUND
    assert found(SOUND.replace(before, after)) == [name]


def test_a_text_without_headings_or_facts_has_no_parts_to_miss(found):
    assert found("Sit down on the chair. Rest both palms on your thighs.") == []
