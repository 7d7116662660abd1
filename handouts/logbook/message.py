"""What comes in, what it seems to say, and what was made of it.

Plain frozen data between the stages of this room.
"""

from __future__ import annotations

import datetime
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal, TypeAlias

from handouts.amounts import MassUnit
from handouts.fitting.fitted import FittedSession
from handouts.logbook.names import Names
from handouts.models import Client, Exercise, LogLine, Side

SESSION = "session"
"""Stands for the whole session where an exercise's id would stand."""

PlanVersion: TypeAlias = tuple[str, int]


@dataclass(frozen=True)
class Filled:
    """One field that somebody filled in: in the page's form, at the terminal,
    by options or in a CSV file.

    exercise: its id, or "session".
    name: of the field, as `handouts.handout.LogField` names it: "weight",
        "weight_left", "reps", "reps_right", "time", "distance", "rounds",
        "date", "effort", "pain", "note", and "question"; "question_PART" is
        about one part of the text.
    text: what was written, word for word.
    """

    exercise: str
    name: str
    text: str


@dataclass(frozen=True)
class Message:
    """One log as it came in.

    raw: word for word, as the client sent it.
    fields: what was filled in; () for plain text, which has yet to be heard.
    date, plan, version: where the way in told them; None or "" otherwise.
    language: of the words, a tag such as "fr".
    corrects: the line of the log whose place this takes, 0 for none.
    """

    raw: str
    language: str
    fields: tuple[Filled, ...] = ()
    date: datetime.date | None = None
    plan: str = ""
    version: int | None = None
    corrects: int = 0


@dataclass(frozen=True)
class Weight:
    """A weight as it was said, before the kit is looked at.

    pieces: 2 in "2 x 12 kg"; 1 in "12 kg each"; 0 where nothing was said.
    words: as it stood in the message.
    """

    amount: Decimal
    unit: MassUnit | None
    pieces: int = 0
    words: str = ""


@dataclass(frozen=True)
class Number:
    """A number without a unit, whose part has yet to be found.

    split: the numbers that the same words could also be: "dix neuf" is 19,
        or 10 and then 9.
    sets: n in "3 x 12", where `value` is the 12.
    counted: whether the words say that it counts repetitions.
    """

    value: Decimal
    split: tuple[Decimal, ...] = ()
    sets: int = 0
    counted: bool = False


@dataclass(frozen=True)
class Time:
    """Seconds, and how they were written: "clock" is 24:30, which counts in
    minutes; total is True where the words say that it is the whole session."""

    seconds: int
    written: Literal["words", "clock", "seconds"] = "words"
    total: bool = False


@dataclass(frozen=True)
class Same:
    """ "same as Saturday, last one eight".

    day: a weekday (0 is Monday), a date, or None for the last time.
    last: repetitions of the last set, where they differ.
    """

    day: int | datetime.date | None = None
    last: int | None = None


@dataclass(frozen=True)
class Claim:
    """What a message says of one exercise, or of the whole session.

    name: the words that name the exercise; "" where there are none.
    number: of the exercise on the sheet, where it was given.
    id: where the way in knows the exercise already, or "session".
    weights, numbers: in the order in which they were said.
    note: in the client's words.
    """

    name: str = ""
    number: int | None = None
    id: str = ""
    side: Side | None = None
    on_cuff: bool = False
    weights: tuple[Weight, ...] = ()
    numbers: tuple[Number, ...] = ()
    times: tuple[Time, ...] = ()
    metres: int | None = None
    rounds: int | None = None
    skipped: bool = False
    same: Same | None = None
    note: str = ""


@dataclass(frozen=True)
class Warning:
    """A sign to stop, in the client's words, and the exercise it was said of."""

    words: str
    exercise: str = ""


@dataclass(frozen=True)
class Asked:
    """A reader's question about an instruction.

    exercise: words that name it, or its id; "" where nothing tells.
    part: of the text, as an anchor ends ("start-position"), "" where nothing
        tells.
    """

    words: str
    exercise: str = ""
    part: str = ""


@dataclass(frozen=True)
class Heard:
    """All that one message says, as far as words alone can tell.

    efforts, dates: as said, with the words; a number out of range is kept to
        be asked about.
    plans: (plan code or "", version or None) as said.
    unread: pieces with a number in them that could not be placed.
    """

    claims: tuple[Claim, ...] = ()
    efforts: tuple[tuple[str, Decimal], ...] = ()
    dates: tuple[tuple[str, datetime.date | None], ...] = ()
    plans: tuple[tuple[str, int | None], ...] = ()
    warnings: tuple[Warning, ...] = ()
    asked: tuple[Asked, ...] = ()
    unread: tuple[str, ...] = ()

    def with_more(self, other: Heard) -> Heard:
        """Both together; what could not be placed stays that of this one."""
        return Heard(
            (*self.claims, *other.claims),
            (*self.efforts, *other.efforts),
            (*self.dates, *other.dates),
            (*self.plans, *other.plans),
            (*self.warnings, *other.warnings),
            (*self.asked, *other.asked),
            self.unread,
        )


# --- what is held against it -------------------------------------------------


@dataclass(frozen=True)
class Known:
    """What the studio knows when a message comes in.

    sessions: by plan and version, fitted to the client; every version that may
        still lie at the client's home.
    current: plan and version that the client should be using, one a plan.
    exercises: all texts, by id and language.
    history: lines of the log that stand.
    names: of all exercises, in the client's language.
    waiting: messages of this client that came before and wait for answers.
    """

    client: Client
    sessions: Mapping[PlanVersion, FittedSession]
    current: tuple[PlanVersion, ...]
    exercises: Mapping[tuple[str, str], Exercise]
    history: tuple[LogLine, ...]
    today: datetime.date
    names: Names
    waiting: int = 0


# --- what comes of it --------------------------------------------------------


@dataclass(frozen=True)
class Proposal:
    """One answer to choose from.  answer: what to type; means: in full words."""

    answer: str
    means: str


@dataclass(frozen=True)
class Question:
    """Something that is not sure enough to be written down.

    key: the same for the same question, so that an answer finds it again.
    asks: one sentence.  reason: why it is asked.
    conflict: two things that cannot both be so, in place of one in doubt.
    """

    key: str
    asks: str
    reason: str
    proposals: tuple[Proposal, ...] = ()
    conflict: bool = False


@dataclass(frozen=True)
class Notice:
    """What the trainer should know at once.

    strength: "stop" for a warning sign, "eye" for what needs a decision,
        "note" for the rest.
    exercises: ids that are frozen until the trainer has decided.
    """

    strength: Literal["stop", "eye", "note"]
    what: str
    exercises: tuple[str, ...] = ()


@dataclass(frozen=True)
class TextQuestion:
    """A reader's question with the exercise that it is about.

    language: of the text that the reader has in hand.
    part: as in `Asked`.
    """

    exercise: str
    language: str
    words: str
    part: str = ""


@dataclass(frozen=True)
class Understanding:
    """What one message comes to.

    lines: entries that are sure, with `line` 0.  They are stored only when
        `questions` is empty.
    replaces: numbers of lines in the log that these correct.
    """

    lines: tuple[LogLine, ...]
    questions: tuple[Question, ...]
    notices: tuple[Notice, ...]
    asked: tuple[TextQuestion, ...]
    replaces: tuple[int, ...] = ()

    @property
    def conflicts(self) -> tuple[Question, ...]:
        return tuple(question for question in self.questions if question.conflict)
