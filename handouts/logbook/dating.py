"""Which sheet a message belongs to, and which day."""

from __future__ import annotations

import datetime
import re

from handouts.amounts import read_date
from handouts.logbook.hearing import hear
from handouts.logbook.message import Heard, Notice, PlanVersion, Proposal
from handouts.logbook.setting import Before, ids_of

WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")


def plan_of(setting: Before, heard: Heard) -> PlanVersion | None:
    """Which sheet the message belongs to; None while that must be asked."""
    code, version = setting.message.plan, setting.message.version
    said = {(plan, number) for plan, number in heard.plans}
    answer = setting.asking.answer("plan")
    if answer is not None:
        found = re.fullmatch(r"(.+?)(?:\s+(?:version\s*)?v?([0-9]{1,3}))?", answer, re.IGNORECASE)
        code, version = (found[1].strip(), int(found[2]) if found[2] else None) if found else (answer, None)
    else:
        for plan, number in said:
            if (plan and code and plan != code) or (number and version and number != version):
                setting.asking.ask(
                    "plan",
                    "Which plan and version does this log belong to?",
                    f"it says {plan or code} version {number or 'unknown'}, and came with {code} version {version or 'unknown'}",
                    _plan_proposals(setting),
                    conflict=True,
                )
                return None
            code, version = plan or code, number or version
    codes = setting.plan_codes
    code = next((known for known in codes if known.lower() == code.lower()), code)
    if not code:
        code = _only_plan(setting, heard)
    if not code or code not in codes:
        reason = (
            f"there is no plan '{code}' for {setting.client.name}"
            if code
            else "the client has several plans, and the message fits more than one"
        )
        setting.asking.ask("plan", "Which plan does this log belong to?", reason, _plan_proposals(setting))
        return None
    current = dict(setting.known.current)
    version = version or current.get(code) or max(v for plan, v in setting.known.sessions if plan == code)
    if (code, version) not in setting.known.sessions:
        setting.asking.ask(
            "plan",
            f"Which version of {code} does this log belong to?",
            f"there is no version {version} of {code}",
            _plan_proposals(setting),
        )
        return None
    if code in current and version != current[code]:
        setting.asking.tell(
            Notice(
                "note",
                f"this log belongs to {code} version {version}; version {current[code]} is current, and what "
                f"is written here does not count in it.",
            )
        )
    return code, version


def _plan_proposals(setting: Before) -> tuple[Proposal, ...]:
    return tuple(
        Proposal(f"{plan} version {version}", f"{plan} version {version}") for plan, version in setting.known.sessions
    )


def _only_plan(setting: Before, heard: Heard) -> str:
    """The one plan that the client follows, or the one that alone has the
    exercises that are named."""
    codes = tuple(dict.fromkeys(plan for plan, _ in setting.known.current))
    if len(codes) == 1:
        return codes[0]
    named = [setting.names.of_text(claim.name) for claim in heard.claims if claim.name]
    fitting = [
        plan
        for plan, version in setting.known.current
        if named and all(setting.names.within(said, ids_of(setting.known.sessions[plan, version])) for said in named)
    ]
    return fitting[0] if len(fitting) == 1 else ""


def date_of(setting: Before, heard: Heard, place: PlanVersion | None) -> datetime.date | None:
    """The day of the session; None while that must be asked."""
    today = setting.known.today
    which = "On which day was it?"
    late = f"is after today, {today}, and cannot be logged yet"
    yesterday = today - datetime.timedelta(days=1)
    days = (
        Proposal(today.isoformat(), f"today, {told_day(today)}"),
        Proposal(yesterday.isoformat(), f"yesterday, {told_day(yesterday)}"),
    )
    answer = setting.asking.answer("date")
    if answer is not None:
        try:
            date = read_date(answer)
        except ValueError:
            words = hear(answer, setting.names, (), today).dates
            if len(words) != 1 or words[0][1] is None:
                setting.asking.ask(
                    "date", which, f"'{answer}' is not a date; write year-month-day, such as '{today}'", days
                )
                return None
            date = words[0][1]
        if date > today:
            setting.asking.ask("date", which, f"{date} {late}", days)
            return None
        return date
    said = [(words, date) for words, date in heard.dates]
    dates = {date for _, date in said if date is not None} | ({setting.message.date} if setting.message.date else set())
    unclear = [words for words, date in said if date is None]
    if len(dates) > 1:
        told = " and ".join(sorted(date.isoformat() for date in dates))
        setting.asking.ask(
            "date",
            which,
            f"the message gives more than one date: {told}",
            tuple(Proposal(date.isoformat(), told_day(date)) for date in sorted(dates)),
            conflict=True,
        )
        return None
    if not dates:
        reason = f"'{unclear[0]}' can be read as two dates" if unclear else "the message has no date"
        setting.asking.ask("date", which, reason, days)
        return None
    date = dates.pop()
    if date > today:
        setting.asking.ask("date", which, f"{date} {late}", days)
        return None
    if (today - date).days > 366:
        same_day = _in_year(date, today)
        options = (Proposal(same_day.isoformat(), told_day(same_day)),) if same_day else ()
        setting.asking.ask(
            "date", which, f"{date} is more than a year ago", (*options, Proposal(date.isoformat(), "as it says"))
        )
        return None
    session = setting.known.sessions.get(place) if place else None
    told_version = setting.message.version or any(number for _, number in heard.plans) or setting.asking.answer("plan")
    if session is not None and place is not None and place[1] > 1 and not told_version:
        begins = session.plan.facts.date
        older = (place[0], place[1] - 1)
        if date < begins and older in setting.known.sessions:
            setting.asking.ask(
                "plan",
                "Which version does this log belong to?",
                f"version {place[1]} is from {begins}, and the log is from {date}, before it",
                (
                    Proposal(f"{older[0]} version {older[1]}", f"version {older[1]}, the one before"),
                    Proposal(f"{place[0]} version {place[1]}", f"version {place[1]} all the same"),
                ),
            )
    return date


def told_day(date: datetime.date) -> str:
    """ "Monday 2029-01-08"."""
    return f"{WEEKDAYS[date.weekday()]} {date}"


def _in_year(date: datetime.date, today: datetime.date) -> datetime.date | None:
    """The same day of this year or the last, not after today."""
    for year in (today.year, today.year - 1):
        try:
            moved = date.replace(year=year)
        except ValueError:
            continue
        if moved <= today:
            return moved
    return None
