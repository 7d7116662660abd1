"""What "same as last time" means, taken from the log."""

from __future__ import annotations

import datetime
from dataclasses import replace
from decimal import Decimal

from handouts.amounts import read_date
from handouts.logbook.dating import WEEKDAYS, told_day
from handouts.logbook.message import SESSION, Claim, Notice, Number, Proposal, Same, Time, Weight
from handouts.logbook.setting import DROP, UNKNOWN, Setting
from handouts.logbook.telling import describe
from handouts.logbook.which import exercise_of
from handouts.models import LogLine


def filled_from_log(setting: Setting, claims: tuple[Claim, ...]) -> tuple[Claim, ...]:
    """The claims with every "same" filled in from the log."""
    result: list[Claim] = []
    for claim in claims:
        if claim.same is None:
            result.append(claim)
        elif setting.date is not None:
            result += _filled_in(setting, claim, claim.same, setting.date)
    return tuple(result)


def _filled_in(setting: Setting, claim: Claim, same: Same, date: datetime.date) -> tuple[Claim, ...]:
    """The claims that stand for one "same"; () while it must be asked."""
    wanted = ""
    if claim.name or claim.number is not None or claim.id:
        wanted = exercise_of(setting, claim)
        if not wanted:
            return ()
    lines = [
        line
        for line in setting.known.history
        if line.date is not None
        and line.date < date
        and line.exercise not in ("", SESSION)
        and (line.reps or line.weight or line.seconds)
        and line.plan == setting.place[0]
        and (not wanted or line.exercise == wanted)
    ]
    logged = sorted({line.date for line in lines if line.date is not None}, reverse=True)
    key = "same"
    options = (*(_proposal(day, lines) for day in logged[:3]), Proposal(DROP, "leave it out"))
    answer = setting.asking.answer(key)
    if answer in (DROP, UNKNOWN):
        return ()
    day: datetime.date | None
    if answer is not None:
        day = _read_day(answer)
        if day not in logged:
            setting.asking.ask(
                key, "The same as on which day?", f"'{answer}' is not a day with a log that can be taken over", options
            )
            return ()
    else:
        day, reason = _day_meant(setting, same, date, logged)
        if day is None:
            setting.asking.ask(key, "The same as on which day?", reason, options)
            return ()
    found = [line for line in lines if line.date == day]
    copies = [
        Claim(
            id=line.exercise,
            side=line.side,
            note=claim.note,
            weights=(Weight(line.weight.amount, line.weight.unit),) if line.weight else (),
            numbers=tuple(Number(Decimal(reps), counted=True) for reps in line.reps),
            times=(Time(line.seconds, "seconds"),) if line.seconds else (),
            metres=line.metres,
        )
        for line in found
    ]
    if same.last is not None:
        changed = _with_last(setting, copies, same.last)
        if changed is None:
            return ()
        copies = changed
    told = "; ".join(describe(line) for line in found)
    last = f", with {same.last} in the last set" if same.last is not None else ""
    setting.asking.tell(Notice("note", f"'same' is taken from the log of {day}: {told}{last}."))
    return tuple(copies)


def _proposal(day: datetime.date, lines: list[LogLine]) -> Proposal:
    done = "; ".join(describe(line) for line in lines if line.date == day)
    return Proposal(day.isoformat(), f"{told_day(day)}: {done}")


def _day_meant(
    setting: Setting, same: Same, date: datetime.date, logged: list[datetime.date]
) -> tuple[datetime.date | None, str]:
    """The day that is meant, or None and why it must be asked."""
    if setting.known.waiting:
        return None, "an earlier message of this client still waits for answers, and may be the one that is meant"
    if isinstance(same.day, datetime.date):
        return (same.day, "") if same.day in logged else (None, f"there is no log of {same.day}")
    if isinstance(same.day, int):
        back = (date.weekday() - same.day) % 7 or 7
        day = date - datetime.timedelta(days=back)
        name = WEEKDAYS[same.day]
        return (day, "") if day in logged else (None, f"there is no log of {name} {day}")
    if not logged:
        return None, "there is no earlier log to take it from"
    raw_only = [
        line
        for line in setting.known.history
        if line.date is not None and logged[0] < line.date < date and line.exercise == "" and line.raw
    ]
    if raw_only:
        return None, f"the log of {raw_only[-1].date} was never understood: '{raw_only[-1].raw}'"
    return logged[0], ""


def _read_day(text: str) -> datetime.date | None:
    try:
        return read_date(text)
    except ValueError:
        return None


def _with_last(setting: Setting, copies: list[Claim], last: int) -> list[Claim] | None:
    """The claims with other repetitions in the last set; None while it must be
    asked in which exercise."""
    counted = [claim for claim in copies if claim.numbers]
    chosen = counted[0] if len(counted) == 1 else None
    if chosen is None:
        answer = setting.asking.answer("same-last")
        chosen = next((claim for claim in counted if claim.id == answer), None)
        if chosen is None and answer not in (DROP, UNKNOWN):
            setting.asking.ask(
                "same-last",
                f"In which exercise were there {last} in the last set?",
                "that log has more than one exercise",
                (*(Proposal(claim.id, claim.id) for claim in counted), Proposal(DROP, "leave it out")),
            )
            return None
    return [
        replace(claim, numbers=(*claim.numbers[:-1], Number(Decimal(last), counted=True))) if claim is chosen else claim
        for claim in copies
    ]
