"""What changed between two versions of a plan, as one client meets them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from handouts.fitting.fitted import Change, FittedExercise, FittedGroup, FittedSession


@dataclass(frozen=True)
class _Placed:
    group: FittedGroup
    exercise: FittedExercise


def changes_between(before: FittedSession, after: FittedSession) -> tuple[Change, ...]:
    """The differences that the client feels, in the order of the new sheet.

    Both sessions are fitted to the same client, so a change of kit between
    the versions is no change here.  An exercise is found again by its id, and
    by its turn where it stands twice.  The trainer's own note comes first.
    """
    return tuple((*_note(after), *_of_exercises(before, after), *_of_groups(before, after)))


def _note(after: FittedSession) -> Iterator[Change]:
    note, language = after.plan.facts.note, after.client.facts.language
    if isinstance(note, dict):
        note = note.get(language) or note.get("en") or next(iter(note.values()), None)
    if note:
        yield Change("note", "", None, note)


def _of_exercises(before: FittedSession, after: FittedSession) -> Iterator[Change]:
    old, new = _placed(before), _placed(after)
    for key, now in new.items():
        title = now.exercise.exercise.facts.title
        was = old.get(key)
        if was is None:
            yield Change("added", title, None, now.exercise.dose)
            continue
        if was.exercise.option != now.exercise.option:
            yield Change("option", title, _option_title(was.exercise), _option_title(now.exercise))
        if was.exercise.dose != now.exercise.dose:
            yield Change("dose", title, was.exercise.dose, now.exercise.dose)
        if _felt(was.exercise) != _felt(now.exercise):
            yield Change("load", title, was.exercise.loads, now.exercise.loads)
    for key, was in old.items():
        if key not in new:
            yield Change("removed", was.exercise.exercise.facts.title, None, None)


def _of_groups(before: FittedSession, after: FittedSession) -> Iterator[Change]:
    """Rounds, rests and times, once for each group that can be found again."""
    old, new = _placed(before), _placed(after)
    done: list[FittedGroup] = []
    for key, now in new.items():
        if key not in old or now.group in done:
            continue
        done.append(now.group)
        was, group = old[key].group, now.group
        titles = ", ".join(exercise.exercise.facts.title for exercise in group.exercises)
        if was.rounds != group.rounds:
            yield Change("rounds", titles, was.rounds, group.rounds)
        if was.time != group.time:
            yield Change("time", titles, was.time, group.time)
        if was.work != group.work:
            yield Change("work", titles, was.work, group.work)
        if was.rest_inside != group.rest_inside:
            yield Change("rest_inside", titles, was.rest_inside, group.rest_inside)
        if was.rest_after != group.rest_after:
            yield Change("rest", titles, was.rest_after, group.rest_after)


def _placed(session: FittedSession) -> dict[tuple[str, int], _Placed]:
    """Every numbered exercise by its id and its turn among equals."""
    placed: dict[tuple[str, int], _Placed] = {}
    for group in session.groups:
        for exercise in group.exercises:
            turn = sum(name == exercise.exercise.id for name, _ in placed)
            placed[exercise.exercise.id, turn] = _Placed(group, exercise)
    return placed


def _felt(exercise: FittedExercise) -> tuple[tuple[object, ...], ...]:
    """What a client feels of the loads: the weight, its place, the band."""
    return tuple((load.side, load.mass, load.held, load.band) for load in exercise.loads)


def _option_title(exercise: FittedExercise) -> str:
    if exercise.option is None:
        return ""
    option = exercise.exercise.facts.options.get(exercise.option)
    return option.title if option and option.title else exercise.option.replace("-", " ").capitalize()
