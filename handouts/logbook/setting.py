"""Where one message is held against the studio, and what must be asked.

`Before` is what is there before sheet and day are known; `Setting` has both.
"""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from dataclasses import dataclass

from handouts.amounts import Mass
from handouts.fitting.fitted import FittedExercise, FittedGroup, FittedSession
from handouts.logbook.message import Claim, Known, Message, Notice, PlanVersion, Proposal, Question
from handouts.logbook.names import Names
from handouts.logbook.words import Words
from handouts.models import ClientFacts, LogLine, Side

UNKNOWN = "unknown"
"""The answer that leaves a thing open."""

DROP = "leave out"
"""The answer that leaves a thing out of the log."""


class Asking:
    """What must be asked about one message, and the answers so far.

    answers: by a question's key.
    """

    def __init__(self, answers: Mapping[str, str]):
        self._answers = answers
        self.questions: dict[str, Question] = {}
        self.notices: list[Notice] = []

    def ask(self, key: str, asks: str, reason: str, options: tuple[Proposal, ...] = (), conflict: bool = False) -> None:
        """reason: a clause, without a final stop."""
        self.questions.setdefault(key, Question(key, asks, reason, options, conflict))

    def answer(self, key: str) -> str | None:
        """The answer under a key, None where there is none yet."""
        return self._answers.get(key, "").strip() or None

    def tell(self, notice: Notice) -> None:
        if notice not in self.notices:
            self.notices.append(notice)


@dataclass(frozen=True)
class Before:
    """One message with what the studio knows."""

    message: Message
    known: Known
    names: Names
    asking: Asking

    @property
    def client(self) -> ClientFacts:
        return self.known.client.facts

    @property
    def words(self) -> Words:
        return self.names.words

    @property
    def plan_codes(self) -> tuple[str, ...]:
        return tuple(dict.fromkeys(plan for plan, _ in self.known.sessions))

    def title(self, id: str) -> str:
        """The title of an exercise in the client's language."""
        exercises = self.known.exercises
        text = exercises.get((id, self.client.language)) or exercises.get((id, "en"))
        return text.facts.title if text else id


@dataclass(frozen=True)
class Setting(Before):
    """The same with the sheet that the message belongs to.

    date: None while it has to be asked for.
    """

    session: FittedSession
    place: PlanVersion
    date: datetime.date | None

    @property
    def exercises(self) -> dict[int, FittedExercise]:
        """The exercises of the sheet by their number."""
        return {exercise.number: exercise for group in self.session.groups for exercise in group.exercises}

    @property
    def ids(self) -> tuple[str, ...]:
        return ids_of(self.session)

    def fitted(self, id: str) -> FittedExercise | None:
        return next((exercise for exercise in self.exercises.values() if exercise.exercise.id == id), None)

    def group(self, id: str) -> FittedGroup | None:
        groups = self.session.groups
        return next((group for group in groups if any(one.exercise.id == id for one in group.exercises)), None)

    def line(
        self,
        id: str,
        side: Side | None = None,
        weight: Mass | None = None,
        reps: tuple[int, ...] = (),
        seconds: int | None = None,
        note: str = "",
        metres: int | None = None,
    ) -> LogLine:
        """A line for the log; its number comes when it is written."""
        return LogLine(
            line=0,
            date=self.date,
            plan=self.place[0],
            version=self.place[1],
            exercise=id,
            side=side,
            weight=weight,
            reps=reps,
            seconds=seconds,
            effort=None,
            note=note,
            raw=self.message.raw.strip(),
            metres=metres,
        )


@dataclass(frozen=True)
class Done:
    """One claim whose exercise and side are settled.

    exercise: as fitted, None where it is not on the sheet.
    """

    exercise: FittedExercise | None
    id: str
    side: Side | None
    claim: Claim

    def key(self, what: str) -> str:
        """The key of a question about it."""
        return f"{what}:{self.id}:{self.side or 'both'}"


def ids_of(session: FittedSession) -> tuple[str, ...]:
    """Ids of the numbered exercises of a session, in the order of the sheet."""
    return tuple(dict.fromkeys(one.exercise.id for group in session.groups for one in group.exercises))
