"""What a message comes to, held against sheet, kit and log.

Pure: the same message, studio, day and answers always come to the same.  What
is not sure becomes a question with its reason and proposed answers; an answer
goes into the next call under the question's key, so that asking can stop at
any moment and be taken up again.  Unknown is never zero, and nothing is
guessed.
"""

from __future__ import annotations

from collections.abc import Mapping

from handouts.logbook.counting import exercise_seconds, reps_of
from handouts.logbook.dating import date_of, plan_of
from handouts.logbook.filled import read_fields
from handouts.logbook.hearing import hear
from handouts.logbook.merging import done_in
from handouts.logbook.message import Claim, Heard, Known, Message, Proposal, Understanding
from handouts.logbook.names import names_for
from handouts.logbook.same import filled_from_log
from handouts.logbook.setting import DROP, UNKNOWN, Asking, Before, Setting
from handouts.logbook.sides import with_other_sides
from handouts.logbook.signs import readers_questions, with_warnings
from handouts.logbook.twins import without_twins
from handouts.logbook.weighing import separated, weight_of
from handouts.logbook.whole import session_line, tell_break
from handouts.models import LogLine


def interpret(message: Message, known: Known, answers: Mapping[str, str] | None = None) -> Understanding:
    """Lines for the log, and what must be asked first.

    answers: by a question's key, in the words that a trainer types.  An answer
    that cannot be is asked again, with the reason.
    """
    asking = Asking(answers or {})
    # A draft may have waited while the client changed the language.
    own = message.language == known.client.facts.language
    names = known.names if own else names_for(known.exercises, message.language)
    before = Before(message, known, names, asking)
    heard = _heard(before)
    place = plan_of(before, heard)
    date = date_of(before, heard, place)
    if place is None:
        return Understanding((), tuple(asking.questions.values()), tuple(asking.notices), ())
    setting = Setting(message, known, before.names, asking, known.sessions[place], place, date)
    claims = filled_from_log(setting, heard.claims)
    lines = [*_exercise_lines(setting, claims), *session_line(setting, heard, claims)]
    lines = with_warnings(setting, heard, lines)
    asked = readers_questions(setting, heard)
    tell_break(setting)
    replaces: tuple[int, ...] = ()
    if not asking.questions:
        lines, replaces = without_twins(setting, lines)
    return Understanding(tuple(lines), tuple(asking.questions.values()), tuple(asking.notices), asked, replaces)


def _heard(before: Before) -> Heard:
    """What the message says, with the answers to what could not be placed."""
    message, today = before.message, before.known.today
    if message.fields:
        heard = read_fields(message.fields, before.names, today)
    else:
        heard = hear(message.raw, before.names, before.plan_codes, today)
    for at, piece in enumerate(heard.unread, 1):
        key = f"unread:{at}"
        answer = before.asking.answer(key)
        if answer in (DROP, UNKNOWN):
            continue
        reason = "the words do not tell what it counts"
        if answer is not None:
            more = hear(answer, before.names, before.plan_codes, today)
            if not more.unread and (more.claims or more.efforts or more.dates or more.warnings or more.asked):
                heard = heard.with_more(more)
                continue
            reason = f"'{answer}' does not tell it either; write it in full, such as 'effort 7' or '1 16 kg 12 12 12'"
        before.asking.ask(key, f"What does '{piece}' mean?", reason, (Proposal(DROP, "leave it out"),))
    return heard


def _exercise_lines(setting: Setting, claims: tuple[Claim, ...]) -> list[LogLine]:
    lines: list[LogLine] = []
    done = done_in(setting, claims)
    for one in done:
        group = setting.group(one.id)
        claim = separated(setting, one, group)
        weight = weight_of(setting, one, claim)
        reps = reps_of(setting, one, claim, group)
        seconds, claim = exercise_seconds(setting, one, claim)
        skipped = claim.skipped and not reps
        lines.append(
            setting.line(one.id, one.side, weight, (0,) if skipped else reps, seconds, claim.note, claim.metres)
        )
    return with_other_sides(setting, lines, done)
