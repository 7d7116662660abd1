"""A client's log held against the sheets that it belongs to.

A line of the log says neither whether the weight was one of a pair nor whether
a count was for each side; the sheet of its plan and version does.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Literal, TypeAlias

from handouts.amounts import Dose, Mass
from handouts.coaching.care import care_for, care_table
from handouts.coaching.records import Lifted
from handouts.coaching.standing import Did, Goal, Standing
from handouts.coaching.timing import OwnPace, own_pace
from handouts.fitting.fit import fit
from handouts.fitting.fitted import FittedExercise, FittedGroup, FittedLoad, FittedSession
from handouts.fitting.weights import weights_to_hold
from handouts.models import Client, ClientFacts, Exercise, LogLine, Side, Studio, Work
from handouts.reading.log import sets_in_note

SESSION = "session"
_NO_LOAD = FittedLoad(None, None, None, "none")
PlanVersion: TypeAlias = tuple[str, int]


@dataclass(frozen=True)
class History:
    """lines: that stand and have a day, oldest first.
    unread: lines without a day, and those whose words name no exercise.
    sessions: plan and version to the session fitted to the client, for every
        version that the log names and for `current`.
    log: the file, for messages.
    """

    client: Client
    lines: tuple[LogLine, ...]
    unread: tuple[LogLine, ...]
    sessions: Mapping[PlanVersion, FittedSession]
    exercises: Mapping[tuple[str, str], Exercise]
    current: tuple[PlanVersion, ...]
    log: str


def history_of(
    studio: Studio,
    client: Client,
    today: datetime.date,
    fitted: Mapping[PlanVersion, FittedSession] = MappingProxyType({}),
) -> History:
    """What the studio knows of one client's training.

    fitted: sessions that were fitted to this client before, as they are now.
    """
    lines = studio.logs.get(client.facts.code, ())
    current = tuple(
        (choice.plan, choice.version or max(version for plan, version in studio.plans if plan == choice.plan))
        for choice in client.facts.plans
    )
    named = dict.fromkeys(
        (*current, *((line.plan, line.version) for line in lines if line.plan and line.version is not None))
    )
    sessions = {
        key: fitted.get(key) or fit(client, studio.plans[key], studio.exercises, studio.facts, None, today)
        for key in named
        if key in studio.plans
    }
    dated = sorted((line for line in lines if line.date), key=lambda line: (line.date or today, line.line))
    unread = tuple(line for line in lines if line.date is None or not line.exercise)
    log = f"logs/{client.facts.code}.csv"
    return History(client, tuple(dated), unread, sessions, studio.exercises, current, log)


def exercise_in(session: FittedSession | None, name: str) -> tuple[FittedGroup, FittedExercise] | None:
    """An exercise of a session by the id of its text, with its group."""
    for group in session.groups if session else ():
        for exercise in group.exercises:
            if exercise.exercise.id == name:
                return group, exercise
    return None


def session_of(history: History, line: LogLine) -> FittedSession | None:
    return history.sessions.get((line.plan, line.version)) if line.version is not None else None


def pace_of(history: History) -> OwnPace | None:
    """The client's own pace, from every logged session whose sheet is known."""
    timed = ((session_of(history, line), line) for line in history.lines if line.exercise == SESSION and line.seconds)
    return own_pace((session.total_seconds, line.seconds or 0) for session, line in timed if session is not None)


# --- work done ---------------------------------------------------------------------


def lifted(history: History) -> Iterator[Lifted]:
    """Every line with a weight and something done with it, oldest first."""
    for line in history.lines:
        if line.weight is None or line.date is None or line.exercise in ("", SESSION):
            continue
        reps = () if line.reps == (0,) else line.reps
        if not reps and not line.metres:
            continue
        pieces, turns, sets = _held(history, line)
        alone = line.side is not None and not _other_side_told(history, line)
        reserve, bottom = _reserve(history, line)
        yield Lifted(
            line.date, line.exercise, line.side, line.weight, pieces, turns, reps, sets, line.metres or 0, line.line, alone,
            reserve, bottom,
        )  # fmt: skip


def _reserve(history: History, line: LogLine) -> tuple[int | None, int]:
    """Repetitions that the sheet of a line asked to leave, and the bottom of its goal."""
    found = exercise_in(session_of(history, line), line.exercise)
    if found is None or found[1].effort is None:
        return None, 0
    dose = found[1].dose
    return found[1].effort.in_reserve, dose.low if dose is not None and dose.kind == "reps" else 0


def _other_side_told(history: History, line: LogLine) -> bool:
    """Whether the other side was logged that day, or does no work."""
    found = exercise_in(session_of(history, line), line.exercise)
    if found is not None and len(found[1].sides) < 2:
        return True
    return any(
        (other.date, other.exercise) == (line.date, line.exercise) and other.side not in (None, line.side)
        for other in history.lines
    )


def _held(history: History, line: LogLine) -> tuple[Literal[1, 2], Literal[1, 2], int]:
    """How many weights moved, how many sides each count is for, sets asked for.

    An exercise that was done though it is not on the sheet is held as its text
    says, and how many sets were asked for is not known.
    """
    found = exercise_in(session_of(history, line), line.exercise)
    if found is None:
        text = history.exercises.get((line.exercise, "en"))
        pair = text is not None and text.facts.hands == "one each" and history.client.facts.hands == "both"
        alternating = text is not None and text.facts.sides == "alternating"
        each = text is not None and text.facts.sides == "each" and line.side is None
        return (2 if pair and not alternating else 1), (2 if each else 1), 1
    group, exercise = found
    pair = any(load.held == "each hand" for load in exercise.loads) and not exercise.alternating
    each = line.side is None and len(exercise.sides) == 2 and not exercise.alternating
    return (2 if pair else 1), (2 if each else 1), group.rounds


# --- where each exercise stands ------------------------------------------------------


@dataclass(frozen=True)
class Placed:
    """One exercise, as it stands now, and where the plan has it.

    place: keys and list positions from the top of the plan file.
    standing: in repetitions of one side.
    scale: repetitions on the sheet for one of `standing`: 2 where they are
        counted in all.
    """

    place: tuple[str | int, ...]
    work: Work
    exercise: FittedExercise
    load: FittedLoad
    standing: Standing
    scale: int


def standings(history: History, session: FittedSession, works: Mapping[str, tuple[tuple[str | int, ...], Work]]) -> Iterator[Placed]:
    """Every weight of the session that a plan can change, in its order, and
    each exercise without one.

    works: id in the plan to its place and its entry there.
    """
    facts = history.client.facts
    by_exercise: dict[str, list[LogLine]] = {}
    for line in history.lines:
        by_exercise.setdefault(line.exercise, []).append(line)
    held = facts.model_copy(update={"limits": care_for(facts, care_table()).limits})
    for group in session.groups:
        for exercise in group.exercises:
            if exercise.planned not in works:
                continue
            place, work = works[exercise.planned]
            for load in exercise.loads or (_NO_LOAD,):
                scale = 2 if exercise.dose and exercise.dose.counted == "in all" and len(exercise.sides) == 2 else 1
                lines = by_exercise.get(exercise.exercise.id, [])
                did = tuple(_did(history, session, exercise, load, lines, scale))
                standing = _standing(session, held, exercise, load, work, scale, did, history.log)
                yield Placed(place, work, exercise, load, standing, scale)


def _standing(
    session: FittedSession,
    facts: ClientFacts,
    exercise: FittedExercise,
    load: FittedLoad,
    work: Work,
    scale: int,
    did: tuple[Did, ...],
    log: str,
) -> Standing:
    goal = _goal(exercise.dose, scale)
    planned = work.dose.at(session.level) if work.dose else None
    stays = ""
    if planned is not None and exercise.dose is not None and (planned.low, planned.high) != (exercise.dose.low, exercise.dose.high):
        stays = "it is counted in another way than the plan counts it"
    elif len(exercise.loads) > 1:
        stays = "it is that of the other side too"
    usual = _goal(work.usual_dose, scale) if work.usual_dose and not stays else goal
    kind = exercise.dose.kind if exercise.dose else "reps"
    name = exercise.exercise.id
    return Standing(
        exercise=f"{name}, {load.side}" if load.side and len(exercise.loads) > 1 else name,
        load=load.mass,
        goal=goal,
        usual=usual,
        weights=weights_to_hold(facts, name, load.held) if load.held != "none" else (),
        did=did,
        log=log,
        goal_stays=stays,
        held=load.held != "none",
        kind=kind,
        band=load.band if any(band.name == load.band for band in facts.kit.bands) else "",
        bands=facts.kit.bands,
        each_side=exercise.dose is not None and (exercise.dose.counted == "each side" or scale == 2),
    )


def _goal(dose: Dose | None, scale: int) -> Goal | None:
    return (max(1, dose.low // scale), max(1, dose.high // scale)) if dose else None


def _did(
    history: History,
    session: FittedSession,
    exercise: FittedExercise,
    load: FittedLoad,
    lines: Sequence[LogLine],
    scale: int,
) -> Iterator[Did]:
    """Every day on which the exercise was done, oldest first.

    lines: of this exercise alone.
    """
    name = exercise.exercise.id
    own = load.side if len(exercise.loads) > 1 else None
    days: dict[datetime.date, list[LogLine]] = {}
    for line in lines:
        if line.date and (own is None or line.side in (own, None)) and _says(line):
            days.setdefault(line.date, []).append(line)
    answered = [line for line in history.lines if line.warning and line.exercise in (name, "", SESSION)]
    for day, its_lines in days.items():
        did = _day(history, day, its_lines, exercise, own, scale)
        after_signs = all(_after(did, line) for line in answered)
        same = all(_same_asked(history, session, exercise, line) for line in its_lines)
        yield replace(did, same=same, counts=same and after_signs)


def _says(line: LogLine) -> bool:
    return bool(line.reps) or line.weight is not None or line.seconds is not None or line.metres is not None


def _after(did: Did, sign: LogLine) -> bool:
    """Whether something was done after a warning sign."""
    return sign.date is None or did.day > sign.date


def _day(
    history: History, day: datetime.date, lines: Sequence[LogLine], exercise: FittedExercise, own: Side | None, scale: int
) -> Did:
    by_side: dict[Side | None, LogLine] = {line.side: line for line in lines}
    skipped = any(line.reps == (0,) for line in lines)
    told = own is None or own in by_side
    if own is None and len(exercise.sides) == 2 and None not in by_side:
        told = {"left", "right"} <= set(by_side)
    loads = {line.weight for line in lines}
    counts = [counts_of(history, line, exercise.dose) for line in lines]
    reps = [tuple(count // scale for count in sets) for sets in counts if sets]
    if exercise.dose is not None and exercise.dose.kind != "reps" and len(reps) < len(counts):
        reps = []
    return Did(day, _one(loads), () if skipped else _fewer(reps), max(line.line for line in lines), told)


def counts_of(history: History, line: LogLine, dose: Dose | None) -> tuple[int, ...]:
    """Repetitions of each set, or its seconds or metres; () where they are not known.

    A line has the sum of all seconds or metres alone, and its note the sets.
    Without a note a sum that is too little for every set may be that of one
    set, which is unknown and no miss.
    """
    if dose is None or dose.kind == "reps":
        return line.reps
    total = line.seconds if dose.kind == "time" else line.metres
    told = sets_in_note(line.note, "seconds" if dose.kind == "time" else "metres")
    found = exercise_in(session_of(history, line), line.exercise)
    sets = max(1, found[0].rounds) if found else 1
    if total is None or (told and sum(told) != total):
        return ()
    if told:
        return told if len(told) >= sets else ()
    return (total // sets,) if total >= sets * dose.low else ()


def _one(loads: set[Mass | None]) -> Mass | None:
    """The weight of all lines of a day; None where they differ or one is open."""
    return next(iter(loads)) if len(loads) == 1 else None


def _fewer(reps: Sequence[tuple[int, ...]]) -> tuple[int, ...]:
    """Set by set the fewer of the sides, counted from the last set."""
    if not reps:
        return ()
    shortest = min(map(len, reps))
    return tuple(min(sets) for sets in zip(*(each[-shortest:] for each in reps), strict=True))


def _same_asked(history: History, session: FittedSession, exercise: FittedExercise, line: LogLine) -> bool:
    """Whether the version of a line asked the very same of this exercise."""
    if line.version is None or (line.plan, line.version) == (session.plan.facts.plan, session.plan.facts.version):
        return line.version is not None
    found = exercise_in(session_of(history, line), exercise.exercise.id)
    return found is not None and _asked(found[1]) == _asked(exercise)


def _asked(exercise: FittedExercise) -> tuple[object, ...]:
    loads = tuple((load.side, load.mass, load.held, load.band) for load in exercise.loads)
    return exercise.option, exercise.dose, exercise.effort, exercise.tempo, exercise.position, loads
