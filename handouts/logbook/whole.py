"""What is said of the whole session: time, effort, rounds, a note."""

from __future__ import annotations

import re
from decimal import Decimal

from handouts.coaching.timing import clock
from handouts.logbook.counting import is_session_time
from handouts.logbook.files import told_seconds
from handouts.logbook.hearing import hear
from handouts.logbook.message import SESSION, Claim, Heard, Notice, Proposal, Time
from handouts.logbook.setting import DROP, UNKNOWN, Done, Setting
from handouts.models import LogLine

LONGEST_SESSION = 6 * 3600
"""Seconds; longer ones are refused (common practice, no source)."""

MOST_ROUNDS = 100
"""Of one session (common practice, no source)."""

LONG_BREAK = 14
"""Days without a log after which the trainer is told; after two weeks off one
starts again lighter (common practice, no source)."""


def session_line(setting: Setting, heard: Heard, claims: tuple[Claim, ...]) -> list[LogLine]:
    """The line of the whole session, [] where nothing is said of it."""
    own = [claim for claim in claims if claim.id == SESSION]
    times = [time for claim in own for time in claim.times]
    for claim in claims:
        if claim.id == SESSION or not claim.times:
            continue
        id = claim.id or _quiet_exercise(setting, claim)
        one = Done(setting.fitted(id) if id else None, id, None, claim)
        times += [time for time in claim.times if is_session_time(time, one)]
    seconds = _session_seconds(setting, times)
    effort = _effort(setting, heard)
    rounds = _rounds(setting, own)
    note = "; ".join(claim.note for claim in own if claim.note)
    if effort is not None and setting.client.effort_cap is not None and effort > setting.client.effort_cap:
        setting.asking.tell(
            Notice(
                "eye",
                f"effort {effort} is over the client's cap of {setting.client.effort_cap}; do not make the session harder, and talk it over.",
            )
        )
    if effort is not None and seconds:
        # Session rating of perceived exertion: effort from 0 to 10 times minutes
        # (Foster, International Journal of Sports Physiology and Performance).
        setting.asking.tell(
            Notice(
                "note", f"session load {round(effort * Decimal(seconds) / 60)}: effort {effort} times {clock(seconds)}."
            )
        )
    if seconds is None and effort is None and rounds is None and not note:
        return []
    line = setting.line(SESSION, seconds=seconds, note=note)
    return [line.model_copy(update={"effort": effort, "rounds": rounds})]


def _rounds(setting: Setting, own: list[Claim]) -> int | None:
    said = next((claim.rounds for claim in own if claim.rounds is not None), None)
    answer = setting.asking.answer("rounds")
    if said is None or answer in (UNKNOWN, DROP):
        return None
    if answer is not None and re.fullmatch(r"[0-9]{1,3}", answer):
        said = int(answer)
    if 0 <= said <= MOST_ROUNDS:
        return said
    reason = f"{said} rounds cannot be; a session has at most {MOST_ROUNDS}"
    setting.asking.ask("rounds", "How many rounds were done?", reason, (Proposal(DROP, "leave it out"),))
    return None


def _quiet_exercise(setting: Setting, claim: Claim) -> str:
    """The exercise of a claim where it is plain, without asking."""
    exercises = setting.exercises
    if claim.number is not None and claim.number in exercises:
        return exercises[claim.number].exercise.id
    within = setting.names.within(setting.names.of_text(claim.name), setting.ids)
    return within[0] if len(within) == 1 else ""


def _session_seconds(setting: Setting, times: list[Time]) -> int | None:
    key = "time"
    planned = setting.session.total_seconds
    empty = Proposal(UNKNOWN, "leave it open")
    answer = setting.asking.answer(key)
    if answer in (UNKNOWN, DROP):
        return None
    if answer is not None:
        seconds = _read_time(setting, answer)
        if seconds is not None and 0 < seconds <= LONGEST_SESSION:
            return seconds
        reason = f"'{answer}' is not a time up to 6 hours; write '24 min', '24:30' or '1:05:00'"
        setting.asking.ask(key, "How long did the session take?", reason, (empty,))
        return None
    distinct = list(dict.fromkeys(time.seconds for time in times))
    if not distinct:
        return None
    if len(distinct) > 1:
        told = " and ".join(_told_seconds(seconds) for seconds in distinct)
        setting.asking.ask(
            key,
            "How long did the session take?",
            f"the message gives more than one time: {told}",
            (
                *(
                    Proposal(told_seconds(seconds), clock(seconds))
                    for seconds in distinct
                    if 0 < seconds <= LONGEST_SESSION
                ),
                empty,
            ),
            conflict=True,
        )
        return None
    seconds = distinct[0]
    if not 0 < seconds <= LONGEST_SESSION:
        why = "is not above zero" if seconds <= 0 else "is more than 6 hours"
        setting.asking.ask(key, "How long did the session take?", f"a time of {_told_seconds(seconds)} {why}", (empty,))
        return None
    if planned and (seconds > 2 * planned or seconds * 2 < planned):
        options = [Proposal(told_seconds(seconds), f"yes, {clock(seconds)}"), empty]
        as_hours = seconds * 60
        if any(time.written == "clock" for time in times) and planned / 2 <= as_hours <= planned * 2:
            options.insert(0, Proposal(told_seconds(as_hours), f"{clock(as_hours)}, hours and minutes"))
        minutes = seconds // 60
        for other in setting.words.sounds_like(minutes) if seconds % 60 == 0 else ():
            options.insert(0, Proposal(f"{other} min", f"{other} minutes, which sounds alike"))
        setting.asking.ask(
            key,
            f"Did the session take {clock(seconds)}?",
            f"the sheet reckons {clock(planned)}; a break or a telephone call may be in it",
            tuple(options),
        )
        return None
    return seconds


def _read_time(setting: Setting, text: str) -> int | None:
    if re.fullmatch(r"[0-9]{1,3}", text):
        return int(text) * 60
    heard = hear(text, setting.names, (), setting.known.today)
    times = [time.seconds for claim in heard.claims for time in claim.times]
    return times[0] if len(times) == 1 else None


def _effort(setting: Setting, heard: Heard) -> int | None:
    answer = setting.asking.answer("effort")
    if answer in (UNKNOWN, DROP):
        return None
    empty = Proposal(UNKNOWN, "leave it open")
    if answer is not None:
        if re.fullmatch(r"[0-9]{1,2}", answer) and int(answer) <= 10:
            return int(answer)
        setting.asking.ask(
            "effort", "How hard was it, 0 to 10?", f"'{answer}' is not a whole number from 0 to 10", (empty,)
        )
        return None
    values = list(dict.fromkeys(value for _, value in heard.efforts))
    if not values:
        return None
    told = " and ".join(words for words, _ in heard.efforts)
    if len(values) > 1:
        setting.asking.ask(
            "effort",
            "How hard was the whole session, 0 to 10?",
            f"the message gives more than one: {told}",
            (empty,),
            conflict=True,
        )
        return None
    value = values[0]
    if value != value.to_integral_value() or not 0 <= value <= 10:
        setting.asking.ask(
            "effort", "How hard was it, 0 to 10?", f"'{told}' is not a whole number from 0 to 10", (empty,)
        )
        return None
    return int(value)


def tell_break(setting: Setting) -> None:
    """Tells of a long time without a log before this one."""
    date = setting.date
    if date is None:
        return
    before = [line.date for line in setting.known.history if line.date is not None and line.date < date]
    if before and (date - max(before)).days > LONG_BREAK:
        days = (date - max(before)).days
        setting.asking.tell(
            Notice("eye", f"{days} days since the log of {max(before)}; mind the break before the next weights.")
        )


def _told_seconds(seconds: int) -> str:
    return f"-{clock(-seconds)}" if seconds < 0 else clock(seconds)
