"""Names that one file uses and another must bear: the checks across files."""

from __future__ import annotations

from collections.abc import Iterator

from handouts.amounts import quoted
from handouts.errors import Fault
from handouts.models import LEVELS, Client, Exercise, LogLine, Plan
from handouts.reading.exercise import FIRST_LANGUAGE
from handouts.reading.faults import instead_of
from handouts.reading.gathered import Gathered, Place
from handouts.reading.plan import PlacedWork, all_work


def check_names(found: Gathered, languages: tuple[str, ...]) -> None:
    """Note a fault for every name that nothing bears.

    languages: tags of the languages that sheets can be written in.
    """
    for (_, language), exercise in found.texts.items():
        if language == FIRST_LANGUAGE:
            _check_substitutes(found, exercise)
    for shown, plan in found.plans.items():
        _check_plan(found, shown, plan, languages)
    for client in found.clients.values():
        _check_client(found, client, languages)
    for code, lines in found.logs.items():
        _check_log(found, f"logs/{code}.csv", lines)


def _check_substitutes(found: Gathered, exercise: Exercise) -> None:
    for at, substitute in enumerate(exercise.facts.substitutes):
        place: Place = ("substitutes", at)
        if _check_exercise(found, exercise.path, (*place, "exercise"), substitute.exercise):
            _check_option(found, exercise.path, (*place, "option"), substitute.exercise, substitute.option)


def _check_exercise(found: Gathered, shown: str, place: Place, id: str, of_key: bool = False) -> bool:
    """Whether there is such an exercise; a fault when there is none."""
    if (id, FIRST_LANGUAGE) in found.text_paths:
        return True
    otherwise = "write the name of a file in exercise_texts, without '.md'"
    found.add_at(shown, place, f"no exercise {quoted(id)}", instead_of(id, found.exercise_ids(), otherwise), of_key)
    return False


def _check_option(found: Gathered, shown: str, place: Place, id: str, option: str | None) -> None:
    exercise = found.texts.get((id, FIRST_LANGUAGE))
    if option is not None and exercise is not None and option not in exercise.facts.options:
        otherwise = f"write one of those under Easier and Harder of '{id}'"
        instead = instead_of(option, list(exercise.facts.options), otherwise)
        found.add_at(shown, place, f"no option {quoted(option)} in '{id}'", instead)


def _check_language(found: Gathered, shown: str, place: Place, language: str, languages: tuple[str, ...]) -> None:
    if language not in languages:
        wrong = f"{quoted(language)} is not a language that sheets are written in"
        found.add_at(shown, place, wrong, instead_of(language, languages, "write a known language"), len(place) > 1)


# --- plans -----------------------------------------------------------------------


def _check_plan(found: Gathered, shown: str, plan: Plan, languages: tuple[str, ...]) -> None:
    for key, words in (("title", plan.facts.title), ("note", plan.facts.note)):
        if isinstance(words, dict):
            if not words:
                found.add_at(shown, (key,), f"'{key}' has no words", f"write '{languages[0]}: ...' below it, indented")
            for language in words:
                _check_language(found, shown, (key, language), language, languages)
    for placed in all_work(plan.facts):
        if _check_exercise(found, shown, (*placed.place, "exercise"), placed.work.exercise):
            _check_work(found, shown, placed)


def _check_work(found: Gathered, shown: str, placed: PlacedWork) -> None:
    """Option, position and count of one exercise against its text."""
    work = placed.work
    exercise = found.texts.get((work.exercise, FIRST_LANGUAGE))
    if exercise is None:
        return
    if work.option is not None:
        for level in LEVELS:
            place = (*placed.place, "option", f"level {level}")
            _check_option(found, shown, place, work.exercise, work.option.at(level))
        return  # an option may change position and sides
    facts = exercise.facts
    if work.position is not None and work.position not in facts.positions:
        instead = f"write {' or '.join(repr(position) for position in facts.positions)}"
        found.add_at(
            shown, (*placed.place, "position"), f"'{work.exercise}' has no way of being done {work.position}", instead
        )
    for level in LEVELS:
        dose = work.dose.at(level) if work.dose else None
        if dose is None or dose.kind != "reps":
            continue
        place = (*placed.place, "dose", f"level {level}")
        count = str(dose.low) if dose.low == dose.high else f"{dose.low}-{dose.high}"
        if facts.sides == "together" and dose.counted:
            wrong = f"'{work.exercise}' works both sides together, so nothing is counted {dose.counted}"
            found.add_at(shown, place, wrong, f"write '{count} reps'")
        elif facts.sides != "together" and not dose.counted:
            wrong = f"'{work.exercise}' works one side at a time, so '{count} reps' can mean two things"
            found.add_at(shown, place, wrong, f"write '{count} reps each side' or '{count} reps in all'")


# --- clients and logs --------------------------------------------------------------


def _check_client(found: Gathered, client: Client, languages: tuple[str, ...]) -> None:
    shown, facts = client.path, client.facts
    _check_language(found, shown, ("language",), facts.language, languages)
    earlier: set[str] = set()
    for at, choice in enumerate(facts.plans):
        if choice.plan in earlier:
            found.add_at(shown, ("plans", at, "plan"), f"plan {quoted(choice.plan)} is named twice", "take one out")
        earlier.add(choice.plan)
        for key, wrong, instead in _plan_troubles(found, choice.plan, choice.version):
            found.add_at(shown, ("plans", at, key), wrong, instead)
    for key, ids in (("loads", facts.loads), ("best sets", facts.best_sets)):
        for id in ids:
            _check_exercise(found, shown, (key, id), id, of_key=True)


def _check_log(found: Gathered, shown: str, lines: tuple[LogLine, ...]) -> None:
    ids = [*found.exercise_ids(), "session"]
    for line in lines:
        if line.exercise and line.exercise not in ids:
            instead = instead_of(line.exercise, ids, "write the file name of an exercise, 'session' or nothing")
            found.add(Fault(shown, line.line, f"no exercise {quoted(line.exercise)}", instead))
        if line.plan:
            for _, wrong, instead in _plan_troubles(found, line.plan, line.version):
                found.add(Fault(shown, line.line, wrong, instead))


def _plan_troubles(found: Gathered, code: str, version: int | None) -> Iterator[tuple[str, str, str]]:
    """The key that is at fault, what is wrong, what to write instead."""
    if found.unread_plans(code):
        return  # that file's own faults say what is the matter
    versions = sorted(found.versions(code))
    if not versions:
        codes = sorted({plan.facts.plan for plan in found.plans.values()})
        yield "plan", f"no plan {quoted(code)}", instead_of(code, codes, "write the code that a plan file gives itself")
    elif version is not None and version not in versions:
        known = " or ".join(str(number) for number in versions)
        yield "version", f"no version {version} of plan {quoted(code)}", f"write {known}"
