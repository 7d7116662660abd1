"""How many in each set, and how long an exercise was held or carried."""

from __future__ import annotations

import re
from dataclasses import replace
from decimal import Decimal
from typing import Literal

from handouts.amounts import short_number
from handouts.fitting.fitted import FittedGroup
from handouts.logbook.message import Claim, Number, Proposal, Time
from handouts.logbook.setting import DROP, UNKNOWN, Done, Setting
from handouts.reading.log import note_of_sets

MOST_REPS = 200
"""Repetitions of one set above this are refused; hard sets have 1 to 200."""

MANY_REPS = 50
"""Above this, and above three times what is planned, they are asked about
(common practice, no source)."""

MOST_SECONDS, MOST_METRES = 3600, 5000
"""Of one set that is held or carried (common practice, no source)."""


def reps_of(setting: Setting, one: Done, claim: Claim, group: FittedGroup | None) -> tuple[int, ...]:
    """Repetitions of each set; () where they were not said or must be asked."""
    if _counts_time(one) and not any(number.counted for number in claim.numbers):
        return ()
    key = one.key("reps")
    answer = setting.asking.answer(key)
    if answer in (UNKNOWN, DROP):
        return ()
    if answer is not None:
        found = [Number(Decimal(word)) for word in re.findall(r"[0-9]{1,6}", answer)]
        wrong = "" if found and re.fullmatch(r"[0-9 ,/]+", answer) else "write one number a set, such as '12/12/14'"
        wrong = wrong or _impossible(found)
        if not wrong:
            return tuple(int(number.value) for number in found)
        setting.asking.ask(
            key,
            f"{one.id}: how many in each set?",
            f"'{answer[:40]}' cannot be; {wrong}",
            (Proposal(UNKNOWN, "leave it open"),),
        )
        return ()
    numbers = _spread(claim.numbers)
    if not numbers:
        return ()
    told = " ".join(short_number(number.value) for number in numbers[:30])
    empty = Proposal(UNKNOWN, "leave it open")
    if any(number.split for number in numbers):
        whole = "/".join(short_number(number.value) for number in numbers)
        apart = "/".join(short_number(part) for number in numbers for part in (number.split or (number.value,)))
        setting.asking.ask(
            key,
            f"{one.id}: {whole} or {apart}?",
            "the words can be heard both ways",
            (Proposal(apart, apart), Proposal(whole, whole), empty),
        )
        return ()
    wrong = _impossible(numbers)
    if wrong:
        setting.asking.ask(key, f"{one.id}: how many in each set?", f"'{told}': {wrong}", (empty,))
        return ()
    reps = tuple(int(number.value) for number in numbers)
    dose = one.exercise.dose if one.exercise else None
    most = max(MANY_REPS, 3 * dose.high if dose and dose.kind == "reps" else 0)
    if max(reps) > most:
        options = (Proposal("/".join(map(str, reps)), f"yes, {told}"), empty)
        setting.asking.ask(
            key,
            f"{one.id}: were there {max(reps)} repetitions in a set?",
            f"that is far above {_dose_told(dose.low, dose.high) if dose else 'what is usual'}",
            options,
        )
        return ()
    rounds = group.rounds if group else 0
    if rounds and len(reps) > rounds:
        options = (Proposal("/".join(map(str, reps)), f"yes, {len(reps)} sets: {told}"), empty)
        setting.asking.ask(key, f"{one.id}: were there {len(reps)} sets, {told}?", f"the sheet has {rounds}", options)
        return ()
    return reps


def _impossible(numbers: list[Number]) -> str:
    """Why these cannot be counts of repetitions, "" where they can."""
    for number in numbers:
        if number.value != number.value.to_integral_value():
            return f"{short_number(number.value)} is no whole count of repetitions"
        if number.value < 0:
            return f"{short_number(number.value)} is below zero"
        if number.value > MOST_REPS:
            return f"{short_number(number.value)} repetitions in one set are more than the {MOST_REPS} that a log takes"
    return "that is more than 50 sets" if len(numbers) > 50 else ""


def _counts_time(one: Done) -> bool:
    dose = one.exercise.dose if one.exercise else None
    return dose is not None and dose.kind in ("time", "distance")


def exercise_seconds(setting: Setting, one: Done, claim: Claim) -> tuple[int | None, Claim]:
    """Seconds of an exercise that is held or carried, and the claim with its
    metres; the seconds of each set are added up, and told in the note.

    Bare numbers are seconds or metres where the sheet asks for these.
    """
    dose = one.exercise.dose if one.exercise else None
    asked = dose.kind if dose is not None and not any(number.counted for number in claim.numbers) else "reps"
    bare = _spread(claim.numbers)
    times = [Number(Decimal(time.seconds)) for time in claim.times if not is_session_time(time, one)]
    times += bare if asked == "time" else []
    metres = [Number(Decimal(claim.metres))] if claim.metres is not None else []
    metres += bare if asked == "distance" else []
    seconds = _sum(setting, one, "seconds", times, MOST_SECONDS)
    walked = _sum(setting, one, "metres", metres, MOST_METRES)
    notes = [claim.note] if claim.note else []
    units: tuple[tuple[Literal["seconds", "metres"], int | None, list[Number]], ...] = (
        ("seconds", seconds, times),
        ("metres", walked, metres),
    )
    for unit, total, counts in units:
        if total is not None and len(counts) > 1:
            notes.append(note_of_sets(unit, [int(count.value) for count in counts]))
    return seconds, replace(claim, metres=walked, note="; ".join(notes))


def _sum(setting: Setting, one: Done, unit: str, numbers: list[Number], most: int) -> int | None:
    """All sets together; None where nothing was said or it must be asked."""
    key = one.key(unit)
    answer = setting.asking.answer(key)
    if not numbers or answer in (UNKNOWN, DROP):
        return None
    if answer is not None and re.fullmatch(r"[0-9 ,/]{1,60}", answer):
        numbers = [Number(Decimal(word)) for word in re.findall("[0-9]+", answer)]
    if numbers and all(_possible(number, most) for number in numbers):
        return sum(int(number.value) for number in numbers)
    told = " ".join(short_number(number.value) for number in numbers[:20])
    reason = f"'{answer or told}' cannot be the {unit} of a set, which are whole numbers up to {most}"
    setting.asking.ask(key, f"{one.id}: how many {unit} in each set?", reason, (Proposal(UNKNOWN, "leave it open"),))
    return None


def _possible(number: Number, most: int) -> bool:
    return number.value == number.value.to_integral_value() and 0 <= number.value <= most and not number.split


def is_session_time(time: Time, one: Done) -> bool:
    """Minutes said beside an exercise that is counted in repetitions are
    the session's."""
    if time.total:
        return True
    dose = one.exercise.dose if one.exercise else None
    if time.written == "seconds":
        return False
    return not (dose is not None and dose.kind in ("time", "distance") and 0 <= time.seconds <= 600)


def _spread(numbers: tuple[Number, ...]) -> list[Number]:
    """Counts one by one: "3 x 12" is 12, 12, 12.  Beyond 50 sets one is enough
    to see that it cannot be."""
    result: list[Number] = []
    for number in numbers[:60]:
        result += [replace(number, sets=0)] * (min(number.sets, 51) or 1)
    return result


def _dose_told(low: int, high: int) -> str:
    return f"the {low if low == high else f'{low} to {high}'} on the sheet"
