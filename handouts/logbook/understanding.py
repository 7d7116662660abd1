"""What a message comes to, held against sheet, kit and log.

Pure: the same message, studio, day and answers always come to the same.  What
is not sure becomes a question with its reason and proposed answers; an answer
goes into the next call under the question's key, so that asking can stop at
any moment and be taken up again.  Unknown is never zero, and nothing is
guessed.
"""

from __future__ import annotations

import datetime
import re
from collections.abc import Mapping
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import TypeVar

from handouts.amounts import Mass, read_date, short_number
from handouts.coaching.timing import clock
from handouts.fitting.fitted import FittedExercise, FittedGroup, FittedLoad, FittedSession
from handouts.logbook.care import concerned, is_stop_sign, names_a_joint, warning_notice
from handouts.logbook.filled import read_fields
from handouts.logbook.hearing import hear
from handouts.logbook.kit import FAR_DOWN, FAR_UP, Stamps, cuff_weights, dumbbells, proposals, written
from handouts.logbook.message import (
    SESSION, Claim, Heard, Known, Message, Notice, Number, PlanVersion, Proposal, Question, Same, TextQuestion, Time,
    Understanding, Weight,
)
from handouts.logbook.names import Names, names_for
from handouts.logbook.words import Words
from handouts.models import LogLine, Side

MOST_REPS = 200
"""Repetitions of one set above this are refused; hard sets have 1 to 200."""

MANY_REPS = 50
"""Above this, and above three times what is planned, they are asked about
(common practice, no source)."""

LONGEST_SESSION = 6 * 3600
"""Seconds; longer ones are refused (common practice, no source)."""

LONG_BREAK = 14
"""Days without a log after which the trainer is told; after two weeks off one
starts again lighter (common practice, no source)."""

UNKNOWN = "unknown"
DROP = "leave out"

Read = TypeVar("Read")


def interpret(message: Message, known: Known, answers: Mapping[str, str] | None = None) -> Understanding:
    """Lines for the log, and what must be asked first.

    answers: by a question's key, in the words that a trainer types.  An answer
    that cannot be is asked again, with the reason.
    """
    return _Reading(message, known, answers or {}).understanding()


def describe(line: LogLine) -> str:
    """One line of a log in words, the most useful first."""
    pieces = []
    if line.side:
        pieces.append(line.side)
    if line.weight:
        pieces.append(str(line.weight))
    if line.reps == (0,):
        pieces.append("skipped")
    elif line.reps:
        last = "last set " if len(line.reps) == 1 else ""
        pieces.append(f"{last}{'/'.join(map(str, line.reps))} reps")
    if line.seconds is not None:
        pieces.append(clock(line.seconds))
    if line.metres is not None:
        pieces.append(f"{line.metres} m")
    if line.rounds is not None:
        pieces.append(f"{line.rounds} rounds")
    if line.effort is not None:
        pieces.append(f"effort {line.effort}")
    if line.warning:
        pieces.append(f"warning sign: {line.warning}")
    if line.note:
        pieces.append(f"note: {line.note}")
    name = line.exercise or "not known which exercise"
    return f"{name}: {', '.join(pieces) or 'nothing counted'}"


@dataclass(frozen=True)
class _Set:
    """One claim whose exercise and side are settled."""

    exercise: FittedExercise | None
    id: str
    side: Side | None
    claim: Claim


class _Reading:
    """One message on its way to lines.  Lives for one call."""

    def __init__(self, message: Message, known: Known, answers: Mapping[str, str]):
        self.message, self.known, self.answers = message, known, answers
        self.client = known.client.facts
        self.names: Names = names_for(known.exercises, message.language)
        self.words: Words = self.names.words
        self.questions: list[Question] = []
        self.notices: list[Notice] = []
        self.replaces: list[int] = []

    def understanding(self) -> Understanding:
        heard = self._heard()
        place = self._plan(heard)
        date = self._date(heard, place)
        session = self.known.sessions.get(place) if place else None
        if session is None or place is None:
            return Understanding((), tuple(self.questions), tuple(self.notices), ())
        claims = self._same(heard.claims, date, place, session)
        sets = self._sets(claims, session)
        lines = self._exercise_lines(sets, session, date, place)
        lines += self._session_line(heard, claims, session, date, place)
        lines = self._with_warnings(heard, lines, session, date, place)
        asked = self._asked(heard, session)
        self._tell_break(date)
        if not self.questions:
            lines = self._without_twins(lines)
        questions = {question.key: question for question in self.questions}
        return Understanding(
            tuple(lines), tuple(questions.values()), tuple(dict.fromkeys(self.notices)), asked, tuple(self.replaces)
        )

    # --- asking ----------------------------------------------------------------

    def _ask(
        self, key: str, asks: str, reason: str, options: tuple[Proposal, ...] = (), conflict: bool = False
    ) -> None:
        self.questions.append(Question(key, asks, reason, options, conflict))

    def _answer(self, key: str) -> str | None:
        said = self.answers.get(key)
        return said.strip() if said is not None and said.strip() else None

    # --- what was said -----------------------------------------------------------

    def _heard(self) -> Heard:
        if self.message.fields:
            heard = read_fields(self.message.fields, self.names, self.known.today)
        else:
            heard = hear(self.message.raw, self.names, self._plan_codes(), self.known.today)
        unread = []
        for at, piece in enumerate(heard.unread, 1):
            key = f"unread:{at}"
            answer = self._answer(key)
            if answer in (DROP, UNKNOWN):
                continue
            if answer is not None:
                more = hear(answer, self.names, self._plan_codes(), self.known.today)
                if not more.unread and (more.claims or more.efforts or more.dates or more.warnings or more.asked):
                    heard = Heard(
                        (*heard.claims, *more.claims), (*heard.efforts, *more.efforts), (*heard.dates, *more.dates),
                        (*heard.plans, *more.plans), (*heard.warnings, *more.warnings), (*heard.asked, *more.asked),
                        heard.unread,
                    )
                    continue
            unread.append((key, piece))
        for key, piece in unread:
            reason = "the words do not tell what it counts" if self._answer(key) is None else (
                f"'{self._answer(key)}' does not tell it either; write it in full, such as 'effort 7' or 'floor press 16 kg 12 12 12'"
            )
            self._ask(key, f"What does '{piece}' mean?", reason, (Proposal(DROP, "leave it out"),))
        return heard

    def _plan_codes(self) -> tuple[str, ...]:
        return tuple(dict.fromkeys(plan for plan, _ in self.known.sessions))

    # --- plan and date -----------------------------------------------------------

    def _plan(self, heard: Heard) -> PlanVersion | None:
        """Which sheet the message belongs to; None while that must be asked."""
        code, version = self.message.plan, self.message.version
        said = {(plan, number) for plan, number in heard.plans}
        answer = self._answer("plan")
        if answer is not None:
            found = re.fullmatch(r"(.+?)(?:\s+(?:version\s*)?v?([0-9]{1,3}))?", answer, re.IGNORECASE)
            code, version = (found[1].strip(), int(found[2]) if found[2] else None) if found else (answer, None)
        else:
            for plan, number in said:
                if (plan and code and plan != code) or (number and version and number != version):
                    self._ask("plan", "Which plan and version does this log belong to?",
                              f"it says {plan or code} version {number or 'unknown'}, and came with {code} version {version or 'unknown'}",
                              self._plan_proposals(), conflict=True)
                    return None
                code, version = plan or code, number or version
        codes = self._plan_codes()
        code = next((known for known in codes if known.lower() == code.lower()), code)
        if not code:
            code = self._only_plan(heard)
        if not code or code not in codes:
            reason = f"there is no plan '{code}' for {self.client.name}" if code else "the client has several plans, and the message fits more than one"
            self._ask("plan", "Which plan does this log belong to?", reason, self._plan_proposals())
            return None
        current = dict(self.known.current)
        version = version or current.get(code) or max(v for plan, v in self.known.sessions if plan == code)
        if (code, version) not in self.known.sessions:
            self._ask("plan", f"Which version of {code} does this log belong to?", f"there is no version {version} of {code}",
                      self._plan_proposals())
            return None
        if code in current and version != current[code]:
            self.notices.append(Notice(
                "note", f"this log belongs to {code} version {version}; version {current[code]} is current, and what "
                f"is written here does not count in it.",
            ))
        return code, version

    def _plan_proposals(self) -> tuple[Proposal, ...]:
        return tuple(Proposal(f"{plan} version {version}", f"{plan} version {version}") for plan, version in self.known.sessions)

    def _only_plan(self, heard: Heard) -> str:
        """The one plan that the client follows, or the one that alone has the
        exercises that are named."""
        codes = tuple(dict.fromkeys(plan for plan, _ in self.known.current))
        if len(codes) == 1:
            return codes[0]
        named = [self.names.of_text(claim.name) for claim in heard.claims if claim.name]
        fitting = [
            plan for plan, version in self.known.current
            if named and all(self.names.within(said, _ids(self.known.sessions[plan, version])) for said in named)
        ]
        return fitting[0] if len(fitting) == 1 else ""

    def _date(self, heard: Heard, place: PlanVersion | None) -> datetime.date | None:
        today = self.known.today
        days = (Proposal(today.isoformat(), f"today, {_day(today)}"),
                Proposal((today - datetime.timedelta(days=1)).isoformat(), f"yesterday, {_day(today - datetime.timedelta(days=1))}"))
        answer = self._answer("date")
        if answer is not None:
            try:
                date = read_date(answer)
            except ValueError:
                words = hear(answer, self.names, (), today).dates
                if len(words) != 1 or words[0][1] is None:
                    self._ask("date", "On which day was it?", f"'{answer}' is not a date; write year-month-day, such as '{today}'", days)
                    return None
                date = words[0][1]
            if date > today:
                self._ask("date", "On which day was it?", f"{date} is after today, {today}, and cannot be logged yet", days)
                return None
            return date
        said = [(words, date) for words, date in heard.dates]
        dates = {date for _, date in said if date is not None} | ({self.message.date} if self.message.date else set())
        unclear = [words for words, date in said if date is None]
        if len(dates) > 1:
            told = " and ".join(sorted(date.isoformat() for date in dates))
            self._ask("date", "On which day was it?", f"the message gives more than one date: {told}",
                      tuple(Proposal(date.isoformat(), _day(date)) for date in sorted(dates)), conflict=True)
            return None
        if not dates:
            reason = f"'{unclear[0]}' can be read as two dates" if unclear else "the message has no date"
            self._ask("date", "On which day was it?", reason, days)
            return None
        date = dates.pop()
        if date > today:
            self._ask("date", "On which day was it?", f"{date} is after today, {today}, and cannot be logged yet", days)
            return None
        if (today - date).days > 366:
            same_day = _in_year(date, today)
            options = (Proposal(same_day.isoformat(), _day(same_day)),) if same_day else ()
            self._ask("date", "On which day was it?", f"{date} is more than a year ago",
                      (*options, Proposal(date.isoformat(), "as it says")))
            return None
        session = self.known.sessions.get(place) if place else None
        told_version = self.message.version or any(number for _, number in heard.plans) or self._answer("plan")
        if session is not None and place is not None and place[1] > 1 and not told_version:
            begins = session.plan.facts.date
            older = (place[0], place[1] - 1)
            if date < begins and older in self.known.sessions:
                self._ask("plan", "Which version does this log belong to?",
                          f"version {place[1]} is from {begins}, and the log is from {date}, before it",
                          (Proposal(f"{older[0]} version {older[1]}", f"version {older[1]}, the one before"),
                           Proposal(f"{place[0]} version {place[1]}", f"version {place[1]} all the same")))
        return date

    # --- "same as last time" -------------------------------------------------------

    def _same(
        self, claims: tuple[Claim, ...], date: datetime.date | None, place: PlanVersion, session: FittedSession
    ) -> tuple[Claim, ...]:
        """The claims with every "same" filled in from the log."""
        result: list[Claim] = []
        for at, claim in enumerate(claims):
            if claim.same is None:
                result.append(claim)
            elif date is not None:
                result += self._filled_in(claim, claim.same, at, date, place, session)
        return tuple(result)

    def _filled_in(
        self, claim: Claim, same: Same, at: int, date: datetime.date, place: PlanVersion, session: FittedSession
    ) -> tuple[Claim, ...]:
        wanted = ""
        if claim.name or claim.number is not None or claim.id:
            wanted = self._exercise_of(claim, at, session)
            if not wanted:
                return ()
        lines = [
            line for line in self.known.history
            if line.date is not None and line.date < date and line.exercise not in ("", SESSION) and (line.reps or line.weight or line.seconds)
            and line.plan == place[0] and (not wanted or line.exercise == wanted)
        ]
        logged = sorted({line.date for line in lines if line.date is not None}, reverse=True)
        key = "same"
        options = tuple(
            Proposal(day.isoformat(), f"{_day(day)}: {'; '.join(describe(line) for line in lines if line.date == day)}")
            for day in logged[:3]
        ) + (Proposal(DROP, "leave it out"),)
        answer = self._answer(key)
        if answer in (DROP, UNKNOWN):
            return ()
        if answer is not None:
            try:
                day = read_date(answer)
            except ValueError:
                day = None
            if day not in logged:
                self._ask(key, "The same as on which day?", f"'{answer}' is not a day with a log that can be taken over", options)
                return ()
        else:
            day, reason = self._day_meant(same, date, logged)
            if day is None:
                self._ask(key, "The same as on which day?", reason, options)
                return ()
        found = [line for line in lines if line.date == day]
        copies = [
            Claim(
                id=line.exercise, side=line.side, note=claim.note,
                weights=(Weight(line.weight.amount, line.weight.unit),) if line.weight else (),
                numbers=tuple(Number(Decimal(reps), counted=True) for reps in line.reps),
                times=(Time(line.seconds, "seconds"),) if line.seconds else (),
                metres=line.metres,
            )
            for line in found
        ]
        if same.last is not None:
            changed = self._with_last(copies, same.last)
            if changed is None:
                return ()
            copies = changed
        told = "; ".join(describe(line) for line in found)
        last = f", with {same.last} in the last set" if same.last is not None else ""
        self.notices.append(Notice("note", f"'same' is taken from the log of {day}: {told}{last}."))
        return tuple(copies)

    def _day_meant(
        self, same: Same, date: datetime.date, logged: list[datetime.date]
    ) -> tuple[datetime.date | None, str]:
        if self.known.waiting:
            return None, "an earlier message of this client still waits for answers, and may be the one that is meant"
        if isinstance(same.day, datetime.date):
            return (same.day, "") if same.day in logged else (None, f"there is no log of {same.day}")
        if isinstance(same.day, int):
            back = (date.weekday() - same.day) % 7 or 7
            day = date - datetime.timedelta(days=back)
            name = _WEEKDAYS[same.day]
            return (day, "") if day in logged else (None, f"there is no log of {name} {day}")
        if not logged:
            return None, "there is no earlier log to take it from"
        raw_only = [
            line for line in self.known.history
            if line.date is not None and logged[0] < line.date < date and line.exercise == "" and line.raw
        ]
        if raw_only:
            return None, f"the log of {raw_only[-1].date} was never understood: '{raw_only[-1].raw}'"
        return logged[0], ""

    def _with_last(self, copies: list[Claim], last: int) -> list[Claim] | None:
        counted = [claim for claim in copies if claim.numbers]
        chosen = counted[0] if len(counted) == 1 else None
        if chosen is None:
            answer = self._answer("same-last")
            chosen = next((claim for claim in counted if claim.id == answer), None)
            if chosen is None and answer not in (DROP, UNKNOWN):
                self._ask("same-last", f"In which exercise were there {last} in the last set?",
                          "that log has more than one exercise",
                          tuple(Proposal(claim.id, claim.id) for claim in counted) + (Proposal(DROP, "leave it out"),))
                return None
        return [
            replace(claim, numbers=(*claim.numbers[:-1], Number(Decimal(last), counted=True))) if claim is chosen else claim
            for claim in copies
        ]

    # --- which exercise ------------------------------------------------------------

    def _sets(self, claims: tuple[Claim, ...], session: FittedSession) -> list[_Set]:
        sets: list[_Set] = []
        for at, claim in enumerate(claims):
            if claim.id == SESSION:
                continue
            id = self._exercise_of(claim, at, session)
            if id:
                fitted = _fitted(session, id)
                sets.append(_Set(fitted, id, self._side_of(claim, id, fitted), claim))
        return sets

    def _exercise_of(self, claim: Claim, at: int, session: FittedSession) -> str:
        """The id of the exercise that a claim is about; "" while that is asked,
        or when it is to be left out."""
        if claim.id:
            return claim.id
        exercises = _numbered(session)
        said = self.names.of_text(claim.name)
        label = claim.name or (f"number {claim.number}" if claim.number is not None else _told(claim))
        key = f"exercise:{' '.join(sorted(said)) or label}"
        answer = self._answer(key)
        if answer in (DROP, UNKNOWN):
            return ""
        reason = ""
        if answer is not None:
            chosen = self._named(answer, exercises)
            if chosen:
                return chosen
            reason = f"'{answer}' is no exercise that this studio has; write its number on the sheet, its name or its id"
        elif claim.number is not None and not claim.name:
            if claim.number in exercises:
                return exercises[claim.number].exercise.id
            reason = f"the sheet has exercises 1 to {len(exercises)}"
        ids = tuple(dict.fromkeys(exercise.exercise.id for exercise in exercises.values()))
        within = self.names.within(said, ids)
        exact = self.names.all_of(said)
        if not reason and len(within) == 1 and (not exact or within[0] in exact):
            return within[0]
        outside = tuple(id for id in (exact or self.names.within(said, self.names.by_id)) if id not in ids)
        options: list[Proposal] = [Proposal(id, f"{self._title(id)}, on the sheet") for id in within]
        near = [id for id in self.names.near(said, ids) if id not in within]
        planned = [e.exercise.id for e in exercises.values() if e.planned in outside and e.exercise.id not in near]
        options += [Proposal(id, f"{self._title(id)}, on the sheet; the words meant this one") for id in (*planned, *near)]
        options += [Proposal(id, f"{self._title(id)}, done instead of what is on the sheet") for id in outside[:3]]
        if not options:
            options = [Proposal(id, f"{self._title(id)}, number {number}") for number, id in enumerate(ids, 1)][:8]
        options.append(Proposal(DROP, "leave it out"))
        if not reason:
            if len(within) > 1:
                reason = f"'{label}' fits {' and '.join(within)}"
            elif claim.name:
                swapped = f"; was it done instead of {' or '.join(near)}?" if near and outside else ""
                reason = f"'{label}' is not on the sheet of {session.plan.facts.plan} version {session.plan.facts.version}{swapped}"
            else:
                reason = "the message does not name it"
        self._ask(key, f"Which exercise is '{label}'?", reason, tuple(options))
        return ""

    def _named(self, answer: str, exercises: Mapping[int, FittedExercise]) -> str:
        """The exercise that an answer names: a number, an id or a title."""
        if answer in self.names.by_id:
            return answer
        if answer.isascii() and answer.isdigit() and int(answer[:6]) in exercises:
            return exercises[int(answer[:6])].exercise.id
        said = self.names.of_text(answer)
        found = self.names.all_of(said) or self.names.within(said, tuple(e.exercise.id for e in exercises.values()))
        return found[0] if len(found) == 1 else ""

    def _title(self, id: str) -> str:
        exercises = self.known.exercises
        text = exercises.get((id, self.client.language)) or exercises.get((id, "en"))
        return text.facts.title if text else id

    def _side_of(self, claim: Claim, id: str, fitted: FittedExercise | None) -> Side | None:
        cuff = self.client.kit.cuff
        side = claim.side
        if claim.on_cuff and cuff is not None:
            if side is not None and side != cuff.side:
                key = f"side:{id}:cuff"
                answer = self._answer(key)
                if answer in ("left", "right"):
                    return "left" if answer == "left" else "right"
                self._ask(key, f"{id}: on which side was the cuff?", f"the message says {side}, and the client's cuff is for the {cuff.side} arm",
                          (Proposal("left", "left"), Proposal("right", "right")), conflict=True)
            return cuff.side
        if fitted is not None and len(fitted.sides) == 1:
            only = fitted.sides[0]
            if side is not None and side != only:
                key = f"side:{id}"
                answer = self._answer(key)
                if answer in ("left", "right"):
                    return "left" if answer == "left" else "right"
                self._ask(key, f"{id}: which side was it?", f"the message says {side}, and the sheet has the {only} side alone",
                          (Proposal("left", "left"), Proposal("right", "right")), conflict=True)
            return only
        return side

    # --- lines of exercises --------------------------------------------------------

    def _exercise_lines(
        self, sets: list[_Set], session: FittedSession, date: datetime.date | None, place: PlanVersion
    ) -> list[LogLine]:
        lines: list[LogLine] = []
        merged = self._merged(sets)
        for one in merged:
            group = _group_of(session, one.id)
            claim = self._separated(one, group)
            weight = self._weight(one, claim)
            reps = self._reps(one, claim, group)
            seconds, claim = self._exercise_seconds(one, claim, group)
            note = claim.note
            if claim.skipped and not reps:
                reps = (0,)
            lines.append(self._line(date, place, one.id, one.side, weight, reps, seconds, note, claim.metres))
        return self._with_other_sides(lines, merged, session, date, place)

    def _line(
        self, date: datetime.date | None, place: PlanVersion, id: str, side: Side | None = None,
        weight: Mass | None = None, reps: tuple[int, ...] = (), seconds: int | None = None, note: str = "",
        metres: int | None = None,
    ) -> LogLine:
        return LogLine(
            line=0, date=date, plan=place[0], version=place[1], exercise=id, side=side, weight=weight, reps=reps,
            seconds=seconds, effort=None, note=note, raw=self.message.raw.strip(), metres=metres,
        )

    def _merged(self, sets: list[_Set]) -> list[_Set]:
        """One entry for each exercise and side; what is said twice is asked about."""
        result: dict[tuple[str, Side | None], _Set] = {}
        for one in sets:
            place = (one.id, one.side)
            before = result.get(place)
            if before is None:
                result[place] = one
                continue
            first, second = before.claim, one.claim
            bare = not (first.weights or first.numbers or first.times or first.metres or first.skipped)
            if bare or not (second.weights or second.numbers or second.times or second.metres or second.skipped):
                kept = second if bare else first
                notes = "; ".join(note for note in (first.note, second.note) if note)
                result[place] = replace(one, claim=replace(kept, note=notes))
                continue
            if first == second and first.weights == second.weights and self.message.fields:
                continue
            key = f"twice:{one.id}:{one.side or 'both'}"
            answer = self._answer(key)
            if answer == "first":
                continue
            if answer == "second":
                result[place] = one
            elif answer == "together":
                result[place] = replace(before, claim=replace(
                    first, numbers=first.numbers + second.numbers, weights=first.weights or second.weights))
            else:
                told = f"'{_told(first)}' and '{_told(second)}'"
                options = [Proposal("first", f"only '{_told(first)}'"), Proposal("second", f"only '{_told(second)}'")]
                if not first.weights or not second.weights or first.weights[0].amount == second.weights[0].amount:
                    options.append(Proposal("together", "one after the other, the same exercise"))
                self._ask(key, f"{one.id}: which counts are right?", f"the message tells this exercise twice: {told}",
                          tuple(options), conflict=True)
        return list(result.values())

    def _separated(self, one: _Set, group: FittedGroup | None) -> Claim:
        """A claim whose bare numbers are parted into weight and counts."""
        claim = one.claim
        takes_weight = one.exercise is None or any(load.held != "none" for load in one.exercise.loads)
        if claim.weights or not claim.numbers or not takes_weight or claim.numbers[0].counted or claim.numbers[0].sets:
            return claim
        numbers, rounds = claim.numbers, group.rounds if group else 0
        first, rest = numbers[0], numbers[1:]
        planned = self._planned(one)
        weight_first = replace(claim, weights=(Weight(first.value, None, words=short_number(first.value)),), numbers=rest)
        key = f"first:{one.id}:{one.side or 'both'}"
        answer = self._answer(key)
        if answer == "weight":
            return weight_first
        if answer == "reps":
            return claim
        all_counts = len(numbers) == (rounds or 1) or (rounds and len(numbers) == 2 * rounds and one.exercise is not None and len(one.exercise.sides) == 2)
        if planned is not None and first.value == planned.amount:
            return weight_first
        if not all_counts and len(numbers) > 1:
            return weight_first
        told = " ".join(short_number(number.value) for number in numbers)
        owned = self._stamps(one).of_amount(first.value)
        means = f"{owned[0]} and then {' '.join(short_number(n.value) for n in rest) or 'no count'}" if owned else f"a weight of {short_number(first.value)}"
        self._ask(key, f"{one.id}: is the first of '{told}' the weight?",
                  f"{len(numbers)} numbers are as many as there are sets, so the weight may be missing",
                  (Proposal("weight", means), Proposal("reps", f"repetitions: {told}; the weight is not known")))
        return replace(claim, numbers=())

    # --- weight ------------------------------------------------------------------

    def _load(self, one: _Set) -> FittedLoad | None:
        if one.exercise is None:
            return None
        loads = one.exercise.loads
        return next((load for load in loads if load.side == one.side), None) or next(
            (load for load in loads if load.side is None or one.side is None), None
        )

    def _planned(self, one: _Set) -> Mass | None:
        load = self._load(one)
        return load.mass if load else None

    def _on_cuff(self, one: _Set) -> bool:
        load = self._load(one)
        return one.claim.on_cuff or (load is not None and load.held == "cuff")

    def _stamps(self, one: _Set) -> Stamps:
        return cuff_weights(self.client.kit) if self._on_cuff(one) else dumbbells(self.client.kit)

    def _weight(self, one: _Set, claim: Claim) -> Mass | None:
        key = f"weight:{one.id}:{one.side or 'both'}"
        stamps, planned = self._stamps(one), self._planned(one)
        answer = self._answer(key)
        if answer in (UNKNOWN, DROP):
            return None
        empty = Proposal(UNKNOWN, "leave the weight open")
        if answer is not None:
            said = self._read_weight(answer)
            if said is None or said.amount <= 0:
                self._ask(key, f"{one.id}: which weight was it?", f"'{answer}' is not a weight; write a number and a unit, such as '{planned or '12.5 kg'}'",
                          (*proposals(Weight(Decimal(1), None), stamps, planned, self.words), empty))
                return None
            if said.unit is not None:
                mass = Mass(said.amount, said.unit)
                if mass not in stamps.pieces and mass != planned:
                    self.notices.append(Notice("note", f"{one.id}: {mass} is not among the client's weights; if it is theirs now, write it in {self.known.client.path} under 'kit'."))
                return mass
            units = stamps.of_amount(said.amount)
            if len(units) == 1:
                return units[0]
            self._ask(key, f"{one.id}: {short_number(said.amount)} what?", "the answer has no unit; write 'kg' or 'lb' behind it",
                      (Proposal(f"{short_number(said.amount)} kg", "kilograms"), Proposal(f"{short_number(said.amount)} lb", "pounds"), empty))
            return None
        if not claim.weights:
            return self._sibling_weight(one)
        amounts = {(weight.amount, weight.unit) for weight in claim.weights}
        weight = claim.weights[0]
        if len(amounts) > 1:
            told = " and ".join(written(weight) for weight in claim.weights)
            self._ask(key, f"{one.id}: which weight was it?", f"the message gives more than one: {told}",
                      (*(Proposal(written(weight), written(weight)) for weight in claim.weights), empty), conflict=True)
            return None
        return self._owned(one, weight, key, stamps, planned, empty)

    def _owned(
        self, one: _Set, weight: Weight, key: str, stamps: Stamps, planned: Mass | None, empty: Proposal
    ) -> Mass | None:
        said = written(weight)
        likely = (*proposals(weight, stamps, planned, self.words), empty)
        whose = f"{self.client.name} ({self.client.code})"
        if weight.amount <= 0:
            self._ask(key, f"{one.id}: which weight was it?", f"a weight of {said} cannot be", likely)
            return None
        if one.exercise is not None and not self._takes_weight(one):
            self._ask(key, f"{one.id}: was it done with {said}?", "the sheet has no weight for this exercise",
                      (*((Proposal(said, f"yes, {said}"),) if weight.unit else ()), empty))
            return None
        owned = [mass for mass in stamps.of_amount(weight.amount) if weight.unit in (None, mass.unit)]
        if planned is not None and weight.amount == planned.amount and weight.unit in (None, planned.unit) and planned not in owned:
            owned.append(planned)
        if not owned:
            where = "settings of the client's cuff" if self._on_cuff(one) else f"weights that {whose} has"
            self._ask(key, f"{one.id}: {likely[0].answer}, or another weight?" if likely[0] != empty else f"{one.id}: which weight was it?",
                      f"{said} is not among the {where}", likely)
            return None
        if len(owned) > 1:
            self._ask(key, f"{one.id}: {said} what?", f"the client has {' and '.join(map(str, owned))}",
                      (*(Proposal(str(mass), str(mass)) for mass in owned), empty))
            return None
        mass = owned[0]
        if (conflict := self._hands_against(one, weight, mass, stamps)) is not None:
            self._ask(key, f"{one.id}: which weight was it?", conflict, (Proposal(str(mass), f"one of {mass}"), *likely[:-1], empty)
                      if likely and likely[0].answer != str(mass) else likely, conflict=True)
            return None
        alike = self._sounds_like_plan(weight, mass, planned)
        if alike:
            self._ask(key, f"{one.id}: {planned} or {mass}?", alike, (Proposal(str(planned), f"{planned}, as on the sheet"), Proposal(str(mass), str(mass)), empty))
            return None
        return mass

    def _takes_weight(self, one: _Set) -> bool:
        assert one.exercise is not None
        return any(load.held != "none" for load in one.exercise.loads) or one.exercise.exercise.facts.hands != "none"

    def _hands_against(self, one: _Set, weight: Weight, mass: Mass, stamps: Stamps) -> str | None:
        """Why so many weights of this stamp cannot be; None when they can."""
        load = self._load(one)
        held = load.held if load else None
        owned = stamps.pieces.get(mass, 0)
        if weight.pieces >= 2 and self.client.hands != "both":
            return f"the message says {weight.pieces} weights of {mass}, and the client holds one, in the {self.client.hands} hand"
        if weight.pieces >= 2 and held in ("one hand", "both hands", "cuff"):
            return f"the message says {weight.pieces} weights of {mass}, and the sheet has one"
        if weight.pieces > 2:
            return f"the message says {weight.pieces} weights of {mass} for two hands"
        if held == "each hand" and owned == 1 and not self._on_cuff(one):
            return f"the client has one of {mass}, and the exercise takes one in each hand"
        return None

    def _sounds_like_plan(self, weight: Weight, mass: Mass, planned: Mass | None) -> str:
        if planned is None or mass == planned:
            return ""
        if weight.amount == weight.amount.to_integral_value() and planned.amount == planned.amount.to_integral_value():
            if int(planned.amount) in self.words.sounds_like(int(weight.amount)) and not self.message.fields:
                return f"{short_number(weight.amount)} and {short_number(planned.amount)} sound alike, and the sheet has {planned}"
        ratio = mass.kilograms / planned.kilograms
        if ratio > FAR_UP or ratio < FAR_DOWN:
            return f"{mass} is far from the {planned} on the sheet"
        return ""

    def _sibling_weight(self, one: _Set) -> Mass | None:
        """Nothing here; `_with_other_sides` lends the other side's weight."""
        return None

    def _read_weight(self, text: str) -> Weight | None:
        heard = hear(f"exercise 1 {text}", self.names, (), self.known.today)
        claim = next((claim for claim in heard.claims if claim.number == 1), None)
        if claim is None:
            return None
        if len(claim.weights) == 1 and not claim.numbers:
            return claim.weights[0]
        if not claim.weights and len(claim.numbers) == 1:
            return Weight(claim.numbers[0].value, None)
        return None

    # --- counts --------------------------------------------------------------------

    def _reps(self, one: _Set, claim: Claim, group: FittedGroup | None) -> tuple[int, ...]:
        if self._counts_time(one) and not any(number.counted for number in claim.numbers):
            return ()
        key = f"reps:{one.id}:{one.side or 'both'}"
        answer = self._answer(key)
        if answer in (UNKNOWN, DROP):
            return ()
        if answer is not None:
            found = [Number(Decimal(word)) for word in re.findall(r"[0-9]{1,6}", answer)]
            wrong = "" if found and re.fullmatch(r"[0-9 ,/]+", answer) else "write one number a set, such as '12/12/14'"
            wrong = wrong or self._impossible(found)
            if not wrong:
                return tuple(int(number.value) for number in found)
            self._ask(key, f"{one.id}: how many in each set?", f"'{answer[:40]}' cannot be; {wrong}", (Proposal(UNKNOWN, "leave it open"),))
            return ()
        numbers = _spread(claim.numbers)
        if not numbers:
            return ()
        told = " ".join(short_number(number.value) for number in numbers[:30])
        empty = Proposal(UNKNOWN, "leave it open")
        if any(number.split for number in numbers):
            whole = "/".join(short_number(number.value) for number in numbers)
            apart = "/".join(short_number(part) for number in numbers for part in (number.split or (number.value,)))
            self._ask(key, f"{one.id}: {whole} or {apart}?", "the words can be heard both ways",
                      (Proposal(apart, apart), Proposal(whole, whole), empty))
            return ()
        wrong = self._impossible(numbers)
        if wrong:
            self._ask(key, f"{one.id}: how many in each set?", f"'{told}': {wrong}", empty and (empty,))
            return ()
        reps = tuple(int(number.value) for number in numbers)
        dose = one.exercise.dose if one.exercise else None
        most = max(MANY_REPS, 3 * dose.high if dose and dose.kind == "reps" else 0)
        if max(reps) > most:
            options = (Proposal("/".join(map(str, reps)), f"yes, {told}"), empty)
            self._ask(key, f"{one.id}: were there {max(reps)} repetitions in a set?", f"that is far above {_dose_told(dose.low, dose.high) if dose else 'what is usual'}", options)
            return ()
        rounds = group.rounds if group else 0
        if rounds and len(reps) > rounds:
            options = [Proposal("/".join(map(str, reps)), f"yes, {len(reps)} sets: {told}"), empty]
            self._ask(key, f"{one.id}: were there {len(reps)} sets, {told}?", f"the sheet has {rounds}", tuple(options))
            return ()
        return reps

    def _impossible(self, numbers: list[Number]) -> str:
        for number in numbers:
            if number.value != number.value.to_integral_value():
                return f"{short_number(number.value)} is no whole count of repetitions"
            if number.value < 0:
                return f"{short_number(number.value)} is below zero"
            if number.value > MOST_REPS:
                return f"{short_number(number.value)} repetitions in one set are more than the {MOST_REPS} that a log takes"
        return "that is more than 50 sets" if len(numbers) > 50 else ""

    def _counts_time(self, one: _Set) -> bool:
        dose = one.exercise.dose if one.exercise else None
        return dose is not None and dose.kind in ("time", "distance")

    def _exercise_seconds(self, one: _Set, claim: Claim, group: FittedGroup | None) -> tuple[int | None, Claim]:
        """Seconds of an exercise that is held or carried, and metres; the
        counts of each set are added up, and told in the note."""
        dose = one.exercise.dose if one.exercise else None
        own = [time.seconds for time in claim.times if not self._is_session_time(time, one, claim)]
        numbers = [] if any(number.counted for number in claim.numbers) else _spread(claim.numbers)
        if dose is None or dose.kind == "reps" or not numbers:
            return (sum(own) if own else None), claim
        key = f"time:{one.id}:{one.side or 'both'}"
        most, unit = (3600, "seconds") if dose.kind == "time" else (5000, "metres")
        wrong = [n for n in numbers if n.value != n.value.to_integral_value() or not 0 <= n.value <= most or n.split]
        answer = self._answer(key)
        if answer in (UNKNOWN, DROP):
            return None, claim
        if answer is not None and re.fullmatch(r"[0-9 ,/]{1,60}", answer) and all(int(n) <= most for n in re.findall("[0-9]+", answer)):
            numbers, wrong = [Number(Decimal(n)) for n in re.findall("[0-9]+", answer)], []
        if wrong:
            told = " ".join(short_number(number.value) for number in numbers[:20])
            self._ask(key, f"{one.id}: how many {unit} in each set?", f"'{told}' cannot be {unit} of a set",
                      (Proposal(UNKNOWN, "leave it open"),))
            return None, claim
        total = sum(int(number.value) for number in numbers)
        if len(numbers) > 1:
            each = "/".join(short_number(number.value) for number in numbers)
            claim = replace(claim, note="; ".join(note for note in (claim.note, f"{unit} in each set: {each}") if note))
        if dose.kind == "distance":
            return (sum(own) if own else None), replace(claim, metres=total)
        return total + sum(own), claim

    def _is_session_time(self, time: Time, one: _Set, claim: Claim) -> bool:
        """Minutes said beside an exercise that is counted in repetitions are
        the session's."""
        if time.total:
            return True
        dose = one.exercise.dose if one.exercise else None
        if time.written == "seconds":
            return False
        return not (dose is not None and dose.kind in ("time", "distance") and 0 <= time.seconds <= 600)

    # --- the other side ------------------------------------------------------------

    def _with_other_sides(
        self, lines: list[LogLine], sets: list[_Set], session: FittedSession, date: datetime.date | None, place: PlanVersion
    ) -> list[LogLine]:
        """Asks for a side that is missing; a side without a weight takes that
        of the other where the sheet has one weight for both."""
        result = list(lines)
        for one in sets:
            exercise = one.exercise
            if exercise is None or one.side is None or one.claim.skipped:
                continue
            mine = [line for line in result if line.exercise == one.id]
            other: Side = "left" if one.side == "right" else "right"
            sided = len(exercise.sides) == 2 or not exercise.sides
            has_other = any(line.side == other for line in mine)
            if has_other:
                lent = next((line.weight for line in mine if line.side == other and line.weight), None)
                shared = all(load.side is None for load in exercise.loads)
                result = [
                    line.model_copy(update={"weight": lent})
                    if line.exercise == one.id and line.side == one.side and line.weight is None and lent and shared
                    and not one.claim.weights
                    else line
                    for line in result
                ]
                continue
            if not sided:
                continue
            result += self._other_side(one, other, mine, date, place)
        return result

    def _other_side(
        self, one: _Set, other: Side, mine: list[LogLine], date: datetime.date | None, place: PlanVersion
    ) -> list[LogLine]:
        key = f"side:{one.id}:{other}"
        answer = self._answer(key)
        if answer in (UNKNOWN, DROP):
            return []
        line = next((line for line in mine if line.side == one.side), None)
        if answer == "not done":
            return [self._line(date, place, one.id, other, reps=(0,))]
        twin = _Set(one.exercise, one.id, other, Claim(id=one.id, side=other))
        planned = self._planned(twin)
        if answer == "same" and line is not None:
            weight = line.weight if planned is None or self._planned(one) == planned else planned
            return [line.model_copy(update={"side": other, "weight": weight})]
        reason = f"the message tells the {one.side} side alone"
        if answer is not None:
            heard = hear(f"exercise 1 {answer}", self.names, (), self.known.today)
            claim = next((claim for claim in heard.claims if claim.number == 1), None)
            if claim is not None and (claim.weights or claim.numbers):
                twin = _Set(one.exercise, one.id, other, claim)
                parted = self._separated(twin, None)
                return [self._line(date, place, one.id, other, self._weight(twin, parted), self._reps(twin, parted, None))]
            reason = f"'{answer}' tells no weight and no count; write such as '{planned or '4 kg'} 12 12 12'"
        options = [Proposal("not done", f"not done on the {other} side"), Proposal(UNKNOWN, "leave it open: unknown, not zero")]
        if line is not None:
            weight = planned if planned is not None and self._planned(one) != planned else line.weight
            told = " ".join([*([f"{weight},"] if weight else []), "/".join(map(str, line.reps)) or "no counts"])
            options.insert(0, Proposal("same", f"the same counts as on the {one.side} side: {told}"))
        self._ask(key, f"{one.id}: what about the {other} side?", reason, tuple(options))
        return []

    # --- the whole session -----------------------------------------------------------

    def _session_line(
        self, heard: Heard, claims: tuple[Claim, ...], session: FittedSession, date: datetime.date | None, place: PlanVersion
    ) -> list[LogLine]:
        own = [claim for claim in claims if claim.id == SESSION]
        times = [time for claim in own for time in claim.times]
        for at, claim in enumerate(claims):
            if claim.id == SESSION or not claim.times:
                continue
            id = claim.id or self._quiet_exercise(claim, session)
            one = _Set(_fitted(session, id) if id else None, id, None, claim)
            times += [time for time in claim.times if self._is_session_time(time, one, claim)]
        seconds = self._session_seconds(times, session)
        effort = self._effort(heard)
        rounds = next((claim.rounds for claim in own if claim.rounds is not None), None)
        if rounds is not None and not 0 <= rounds <= 200:
            self._ask("rounds", "How many rounds were done?", f"{rounds} rounds cannot be", (Proposal(DROP, "leave it out"),))
            rounds = None
        note = "; ".join(claim.note for claim in own if claim.note)
        if effort is not None and self.client.effort_cap is not None and effort > self.client.effort_cap:
            self.notices.append(Notice(
                "eye", f"effort {effort} is over the client's cap of {self.client.effort_cap}; do not make the session harder, and talk it over.",
            ))
        if effort is not None and seconds:
            # Foster: effort of 0 to 10 times minutes (IJSPP abstract; see R25 of the ground).
            self.notices.append(Notice("note", f"session load {round(effort * Decimal(seconds) / 60)}: effort {effort} times {clock(seconds)}."))
        if seconds is None and effort is None and rounds is None and not note:
            return []
        line = self._line(date, place, SESSION, seconds=seconds, note=note)
        return [line.model_copy(update={"effort": effort, "rounds": rounds})]

    def _quiet_exercise(self, claim: Claim, session: FittedSession) -> str:
        exercises = _numbered(session)
        if claim.number is not None and claim.number in exercises:
            return exercises[claim.number].exercise.id
        within = self.names.within(self.names.of_text(claim.name), tuple(e.exercise.id for e in exercises.values()))
        return within[0] if len(within) == 1 else ""

    def _session_seconds(self, times: list[Time], session: FittedSession) -> int | None:
        key = "time"
        planned = session.total_seconds
        empty = Proposal(UNKNOWN, "leave it open")
        answer = self._answer(key)
        if answer in (UNKNOWN, DROP):
            return None
        if answer is not None:
            seconds = self._read_time(answer)
            if seconds is not None and 0 < seconds <= LONGEST_SESSION:
                return seconds
            reason = f"'{answer}' is not a time up to 6 hours; write '24 min', '24:30' or '1:05:00'"
            self._ask(key, "How long did the session take?", reason, (empty,))
            return None
        distinct = list(dict.fromkeys(time.seconds for time in times))
        if not distinct:
            return None
        if len(distinct) > 1:
            told = " and ".join(clock(seconds) for seconds in distinct)
            self._ask(key, "How long did the session take?", f"the message gives more than one time: {told}",
                      (*(Proposal(_typed(seconds), clock(seconds)) for seconds in distinct if 0 < seconds <= LONGEST_SESSION), empty), conflict=True)
            return None
        seconds = distinct[0]
        if not 0 < seconds <= LONGEST_SESSION:
            why = "is not above zero" if seconds <= 0 else "is more than 6 hours"
            self._ask(key, "How long did the session take?", f"a time of {_told_seconds(seconds)} {why}", (empty,))
            return None
        if planned and (seconds > 2 * planned or seconds * 2 < planned):
            options = [Proposal(_typed(seconds), f"yes, {clock(seconds)}"), empty]
            as_hours = seconds * 60
            if any(time.written == "clock" for time in times) and planned / 2 <= as_hours <= planned * 2:
                options.insert(0, Proposal(_typed(as_hours), f"{clock(as_hours)}, hours and minutes"))
            minutes = seconds // 60
            for other in self.words.sounds_like(minutes) if seconds % 60 == 0 else ():
                options.insert(0, Proposal(f"{other} min", f"{other} minutes, which sounds alike"))
            self._ask(key, f"Did the session take {clock(seconds)}?", f"the sheet reckons {clock(planned)}; a break or a telephone call may be in it", tuple(options))
            return None
        return seconds

    def _read_time(self, text: str) -> int | None:
        if re.fullmatch(r"[0-9]{1,3}", text):
            return int(text) * 60
        heard = hear(text, self.names, (), self.known.today)
        times = [time.seconds for claim in heard.claims for time in claim.times]
        return times[0] if len(times) == 1 else None

    def _effort(self, heard: Heard) -> int | None:
        answer = self._answer("effort")
        if answer in (UNKNOWN, DROP):
            return None
        empty = Proposal(UNKNOWN, "leave it open")
        if answer is not None:
            if re.fullmatch(r"[0-9]{1,2}", answer) and int(answer) <= 10:
                return int(answer)
            self._ask("effort", "How hard was it, 0 to 10?", f"'{answer}' is not a whole number from 0 to 10", (empty,))
            return None
        values = list(dict.fromkeys(value for _, value in heard.efforts))
        if not values:
            return None
        told = " and ".join(words for words, _ in heard.efforts)
        if len(values) > 1:
            self._ask("effort", "How hard was the whole session, 0 to 10?", f"the message gives more than one: {told}", (empty,), conflict=True)
            return None
        value = values[0]
        if value != value.to_integral_value() or not 0 <= value <= 10:
            self._ask("effort", "How hard was it, 0 to 10?", f"'{told}' is not a whole number from 0 to 10", (empty,))
            return None
        return int(value)

    def _tell_break(self, date: datetime.date | None) -> None:
        if date is None:
            return
        before = [line.date for line in self.known.history if line.date is not None and line.date < date]
        if before and (date - max(before)).days > LONG_BREAK:
            days = (date - max(before)).days
            self.notices.append(Notice("eye", f"{days} days since the log of {max(before)}; mind the break before the next weights."))

    # --- warnings and reader's questions -----------------------------------------------

    def _with_warnings(
        self, heard: Heard, lines: list[LogLine], session: FittedSession, date: datetime.date | None, place: PlanVersion
    ) -> list[LogLine]:
        exercises = tuple(_numbered(session).values())
        for at, warning in enumerate(heard.warnings, 1):
            frozen = list(concerned(warning.words, exercises, self.words))
            stop_sign = is_stop_sign(warning.words, self.words)
            frozen += self._named_in_warning(at, warning.words, warning.exercise, session)
            if stop_sign or (not frozen and not names_a_joint(warning.words, self.words)):
                frozen = []
            ids = tuple(dict.fromkeys(frozen))
            self.notices.append(warning_notice(warning.words, ids, stop_sign, self.words))
            for id in ids or (SESSION,):
                lines = self._warned(lines, id, warning.words, date, place)
        return lines

    def _warned(
        self, lines: list[LogLine], id: str, words: str, date: datetime.date | None, place: PlanVersion
    ) -> list[LogLine]:
        """The lines with a warning on one exercise; a line of its own where
        the exercise has none."""
        at = next((at for at, line in enumerate(lines) if line.exercise == id), None)
        if at is None:
            return [*lines, self._line(date, place, id).model_copy(update={"warning": words})]
        before = lines[at].warning
        both = f"{before}; {words}" if before and words not in before else words
        return [*lines[:at], lines[at].model_copy(update={"warning": both}), *lines[at + 1 :]]

    def _named_in_warning(self, at: int, words: str, name: str, session: FittedSession) -> list[str]:
        """Exercises that a warning names; what it may name is asked about."""
        if not name:
            return []
        exercises = _numbered(session)
        ids = tuple(dict.fromkeys(exercise.exercise.id for exercise in exercises.values()))
        if name in ids:
            return [name]
        said = self.names.of_text(name)
        within = self.names.within(said, ids)
        everyday = next((str(means) for word, means in self.words.table["everyday"].items() if word in said), "")
        if len(within) == 1 and not everyday:
            return list(within)
        if not within:
            return []
        key = f"warning:{at}"
        answer = self._answer(key)
        if answer in ("none", DROP, UNKNOWN):
            return []
        if answer == "all":
            return list(within)
        chosen = self._named(answer, exercises) if answer is not None else ""
        if chosen:
            return [chosen]
        reason = f"'{name}' can mean {', '.join(self._title(id) for id in within)}"
        reason += f", or {everyday}" if everyday else ""
        if answer is not None:
            reason = f"'{answer}' is no exercise of this sheet; {reason}"
        options = [Proposal(id, self._title(id)) for id in within] + [Proposal("all", "each of them")]
        options.append(Proposal("none", everyday or "none of them"))
        self._ask(key, f"What is '{name}' in '{words}'?", reason, tuple(options))
        return []

    def _asked(self, heard: Heard, session: FittedSession) -> tuple[TextQuestion, ...]:
        exercises = _numbered(session)
        ids = tuple(dict.fromkeys(exercise.exercise.id for exercise in exercises.values()))
        asked: list[TextQuestion] = []
        for at, question in enumerate(heard.asked, 1):
            key = f"ask:{at}"
            answer = self._answer(key)
            said = self.names.of_text(question.exercise)
            exact, within = self.names.all_of(said), self.names.within(said, ids)
            id = question.exercise if question.exercise in self.names.by_id or question.exercise == SESSION else ""
            id = id or (within[0] if len(within) == 1 else exact[0] if len(exact) == 1 else "")
            if answer is not None:
                id = SESSION if answer in ("none", SESSION, UNKNOWN) else self._named(answer, exercises)
                if answer == DROP:
                    continue
            if not id:
                self._ask(key, f"Which exercise is the reader's question about: '{question.words}'?",
                          f"'{answer}' is no exercise" if answer else "the message does not tell",
                          (*(Proposal(id, self._title(id)) for id in (within or ids)), Proposal(SESSION, "the whole session")))
                continue
            language = self.client.language if (id, self.client.language) in self.known.exercises else "en"
            asked.append(TextQuestion(id, language, question.words, question.part))
        return tuple(asked)

    # --- what is in the log already ------------------------------------------------------

    def _without_twins(self, lines: list[LogLine]) -> list[LogLine]:
        """Asks about lines that the log seems to have already."""
        if self.message.corrects:
            self.replaces.append(self.message.corrects)
            return lines
        equal: list[tuple[LogLine, LogLine]] = []
        other: list[tuple[LogLine, LogLine]] = []
        for line in lines:
            for old in self.known.history:
                if (old.date, old.plan, old.version, old.exercise, old.side) == (line.date, line.plan, line.version, line.exercise, line.side):
                    same = (old.weight, old.reps, old.seconds, old.effort, old.metres, old.warning) == (
                        line.weight, line.reps, line.seconds, line.effort, line.metres, line.warning)
                    (equal if same else other).append((line, old))
                    break
        if not equal and not other:
            return lines
        answer = self._answer("again")
        if answer == "second":
            return lines
        if answer == DROP:
            known = {id(line) for line, _ in (*equal, *other)}
            return [line for line in lines if id(line) not in known]
        if answer == "correct" and other:
            self.replaces += [old.line for _, old in other]
            known = {id(line) for line, _ in equal}
            return [line for line in lines if id(line) not in known]
        if other:
            told = "; ".join(f"line {old.line} has {describe(old)}, this says {describe(line)}" for line, old in other)
            self._ask("again", "Is this a correction, or a second session on that day?", f"the log has that day already: {told}", (
                Proposal("correct", f"a correction: it takes the place of line {', '.join(str(old.line) for _, old in other)}, which is kept as corrected"),
                Proposal("second", "a second session"), Proposal(DROP, "leave it out")), conflict=True)
        else:
            told = "; ".join(f"line {old.line}, {describe(old)}" for _, old in equal)
            self._ask("again", "Is this the same log once more?", f"the log has it already: {told}", (
                Proposal(DROP, "the same log: leave out what is there"), Proposal("second", "a second session with the same numbers")))
        return lines


# --- small things ------------------------------------------------------------------

_WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")


def _day(date: datetime.date) -> str:
    return f"{_WEEKDAYS[date.weekday()]} {date}"


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


def _numbered(session: FittedSession) -> dict[int, FittedExercise]:
    return {exercise.number: exercise for group in session.groups for exercise in group.exercises}


def _ids(session: FittedSession) -> tuple[str, ...]:
    return tuple(dict.fromkeys(exercise.exercise.id for exercise in _numbered(session).values()))


def _fitted(session: FittedSession, id: str) -> FittedExercise | None:
    return next((exercise for exercise in _numbered(session).values() if exercise.exercise.id == id), None)


def _group_of(session: FittedSession, id: str) -> FittedGroup | None:
    return next((group for group in session.groups if any(e.exercise.id == id for e in group.exercises)), None)


def _spread(numbers: tuple[Number, ...]) -> list[Number]:
    """Counts one by one: "3 x 12" is 12, 12, 12.  Beyond 50 sets one is enough
    to see that it cannot be."""
    result: list[Number] = []
    for number in numbers[:60]:
        result += [replace(number, sets=0)] * (min(number.sets, 51) or 1)
    return result


def _told(claim: Claim) -> str:
    pieces = [written(weight) for weight in claim.weights]
    pieces += [f"{number.sets} x {short_number(number.value)}" if number.sets else short_number(number.value) for number in claim.numbers]
    return " ".join(pieces[:20]) or claim.note or claim.name or "skipped"


def _dose_told(low: int, high: int) -> str:
    return f"the {low if low == high else f'{low} to {high}'} on the sheet"


def _typed(seconds: int) -> str:
    """A time as an answer that reads back as the same seconds."""
    hours, rest = divmod(seconds, 3600)
    minutes, rest = divmod(rest, 60)
    pieces = [f"{hours} h" if hours else "", f"{minutes} min" if minutes else "", f"{rest} s" if rest else ""]
    return " ".join(piece for piece in pieces if piece) or "0 s"


def _told_seconds(seconds: int) -> str:
    return f"-{clock(-seconds)}" if seconds < 0 else clock(seconds)
