"""Names that one file uses and another must bear: the checks across files.

Names are looked up as they stand in the files, so that they are checked in
the same go as everything else, also in a file with other faults.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from handouts.amounts import quoted
from handouts.errors import Fault
from handouts.models import LEVELS, CareChoice, CareRule, CareTable, LogLine, Plan
from handouts.reading.exercise import FIRST_LANGUAGE
from handouts.reading.faults import instead_of
from handouts.reading.gathered import Gathered, Place
from handouts.reading.plan import PlacedWork, all_work


def check_names(found: Gathered, languages: tuple[str, ...], cares: CareTable) -> None:
    """Note a fault for every name that nothing bears.

    languages: tags of the languages that sheets can be written in.
    cares: the care table, for the names under 'care'.
    """
    for shown in (*found.text_paths.values(), *found.plan_codes):
        _check_exercises(found, shown)
    for shown in found.plan_codes:
        for key in ("title", "note"):
            _check_keys_are_languages(found, shown, key, languages)
    for plan in found.plans.values():
        for placed in all_work(plan.facts):
            _check_work(found, plan, placed)
        _check_one_client(found, plan)
    for shown in found.client_codes:
        _check_client(found, shown, languages)
        _check_care(found, shown, cares)
    for code, lines in found.logs.items():
        _check_log(found, f"logs/{code}.csv", lines)


# --- exercises and their options -----------------------------------------------------


def _check_exercises(found: Gathered, shown: str) -> None:
    """Every 'exercise' of a plan or among substitutes, and its 'option'."""
    for place, block in _blocks(found.data(shown)):
        id, option = block.get("exercise"), block.get("option")
        if not isinstance(id, str) or not id or not _check_exercise(found, shown, (*place, "exercise"), id):
            continue
        by_level = option if isinstance(option, dict) else {"": option}
        for level, name in by_level.items():
            if isinstance(name, str) and name not in ("", "none"):
                _check_option(found, shown, (*place, "option", level), id, name)


def _blocks(data: Any, place: Place = ()) -> Iterator[tuple[Place, dict[str, Any]]]:
    """Every block of keys of a YAML file with its place."""
    if isinstance(data, dict):
        yield place, data
        for key, value in data.items():
            yield from _blocks(value, (*place, key))
    elif isinstance(data, list):
        for at, value in enumerate(data):
            yield from _blocks(value, (*place, at))


def _check_exercise(found: Gathered, shown: str, place: Place, id: str, of_key: bool = False) -> bool:
    """Whether there is such an exercise; a fault when there is none."""
    ids = found.exercise_ids()
    if id in ids:
        return True
    instead = instead_of(id, ids, "write the name of a file in exercise_texts, without '.md'")
    found.add_at(shown, place, f"no exercise {quoted(id)}", instead, of_key)
    return False


def _check_option(found: Gathered, shown: str, place: Place, id: str, option: str) -> None:
    exercise = found.texts.get((id, FIRST_LANGUAGE))
    if exercise is not None and option not in exercise.facts.options:
        options = list(exercise.facts.options)
        instead = instead_of(option, options, f"write one of those under Easier and Harder of '{id}'")
        found.add_at(shown, place, f"no option {quoted(option)} in '{id}'", instead)


def _check_work(found: Gathered, plan: Plan, placed: PlacedWork) -> None:
    """Position and count of one exercise of a plan against its text."""
    work = placed.work
    exercise = found.texts.get((work.exercise, FIRST_LANGUAGE))
    if exercise is None or work.option is not None:
        return  # an option may change position and sides
    facts = exercise.facts
    if work.position is not None and work.position not in facts.positions:
        wrong = f"'{work.exercise}' has no way of being done {work.position}"
        instead = f"write {' or '.join(repr(position) for position in facts.positions)}"
        found.add_at(plan.path, (*placed.place, "position"), wrong, instead)
    for level in LEVELS:
        dose = work.dose.at(level) if work.dose else None
        if dose is None or dose.kind != "reps":
            continue
        place = (*placed.place, "dose", f"level {level}")
        count = str(dose.low) if dose.low == dose.high else f"{dose.low}-{dose.high}"
        if facts.sides == "together" and dose.counted:
            wrong = f"'{work.exercise}' works both sides together, so nothing is counted {dose.counted}"
            found.add_at(plan.path, place, wrong, f"write '{count} reps'")
        elif facts.sides != "together" and not dose.counted:
            wrong = f"'{work.exercise}' works one side at a time, so '{count} reps' can mean two things"
            found.add_at(plan.path, place, wrong, f"write '{count} reps each side' or '{count} reps in all'")


def _check_one_client(found: Gathered, plan: Plan) -> None:
    """What a version for one client names: the client, its loads, the version before."""
    facts, codes = plan.facts, list(found.client_codes.values())
    if facts.client is not None and facts.client not in codes:
        instead = instead_of(facts.client, codes, "write the code that a client's file gives itself")
        found.add_at(plan.path, ("for",), f"no client {quoted(facts.client)}", instead)
    for id in facts.loads:
        _check_exercise(found, plan.path, ("loads", id), id, of_key=True)
    if facts.after is not None:
        for key, wrong, instead in _plan_troubles(found, facts.after.plan, facts.after.version):
            found.add_at(plan.path, ("after", key), wrong, instead)


# --- languages -------------------------------------------------------------------------


def _check_keys_are_languages(found: Gathered, shown: str, key: str, languages: tuple[str, ...]) -> None:
    words = found.data(shown).get(key)
    if isinstance(words, dict):
        for language in words:
            _check_language(found, shown, (key, language), language, languages, of_key=True)


def _check_language(
    found: Gathered, shown: str, place: Place, language: str, languages: tuple[str, ...], of_key: bool = False
) -> None:
    if language not in languages:
        wrong = f"{quoted(language)} is not a language that sheets are written in"
        found.add_at(shown, place, wrong, instead_of(language, languages, "write a known language"), of_key)


# --- clients and logs ------------------------------------------------------------------


def _check_client(found: Gathered, shown: str, languages: tuple[str, ...]) -> None:
    data = found.data(shown)
    language = data.get("language")
    if isinstance(language, str) and language:
        _check_language(found, shown, ("language",), language, languages)
    plans = data.get("plans")
    earlier: set[str] = set()
    for at, choice in enumerate(plans if isinstance(plans, list) else ()):
        code = choice.get("plan") if isinstance(choice, dict) else None
        if not isinstance(code, str) or not code:
            continue
        if code in earlier:
            found.add_at(shown, ("plans", at, "plan"), f"plan {quoted(code)} is named twice", "take one out")
        earlier.add(code)
        version = choice.get("version")
        # Python refuses to read thousands of digits; no version has more than three.
        whole = isinstance(version, str) and version.isascii() and version.isdigit() and len(version) <= 9
        number = int(version) if whole else None
        for key, wrong, instead in _plan_troubles(found, code, number):
            found.add_at(shown, ("plans", at, key), wrong, instead)
        _check_chosen(found, shown, ("plans", at), code, number)
    for key in ("loads", "best sets"):
        ids = data.get(key)
        for id in ids if isinstance(ids, dict) else ():
            _check_exercise(found, shown, (key, id), id, of_key=True)
    known = data.get("knows")
    for number, id in enumerate(known if isinstance(known, list) else ()):
        _check_exercise(found, shown, ("knows", number), id)


def _check_chosen(found: Gathered, shown: str, place: Place, code: str, version: int | None) -> None:
    """Whether the version that a client follows is for somebody else."""
    versions = found.versions(code)
    chosen = version if version is not None else max(versions, default=None)
    plan = found.plans.get(versions.get(chosen, "")) if chosen is not None else None
    own = found.client_codes[shown]
    if plan is not None and plan.facts.client not in (None, own):
        wrong = f"version {chosen} of plan {quoted(code)} is for {plan.facts.client} alone"
        free = [each for each in versions if found.plans[versions[each]].facts.client in (None, own)]
        instead = f"write 'version: {max(free)}'" if free else "choose another plan"
        found.add_at(shown, (*place, "version" if version is not None else "plan"), wrong, instead)


def _check_care(found: Gathered, shown: str, table: CareTable) -> None:
    """Every entry of 'care' against the care table."""
    client = found.clients.get(shown)
    seen: set[str] = set()
    for number, choice in enumerate(client.facts.care if client else ()):
        rule = table.cares.get(choice.care)
        if rule is None:
            instead = instead_of(choice.care, list(table.cares), "write one of the names in the program's care.yaml")
            found.add_at(shown, ("care", number), f"no care {quoted(choice.care)}", instead)
            continue
        if choice.care in seen:
            found.add_at(shown, ("care", number), f"care {quoted(choice.care)} is named twice", "put the two together")
        seen.add(choice.care)
        for wrong, instead in _care_troubles(choice, rule):
            found.add_at(shown, ("care", number), wrong, instead)


def _care_troubles(choice: CareChoice, rule: CareRule) -> Iterator[tuple[str, str]]:
    """What is wrong with one entry, and what to write instead."""
    care = quoted(choice.care)
    if rule.knee and choice.at_most is None:
        yield f"{care} needs the deepest bend that was allowed", "write 'at most: 90 degrees' beside 'care:'"
    if not rule.knee and choice.at_most is not None:
        yield f"{care} bounds no joint", "take 'at most' out"
    if rule.weaker_side and choice.side is None:
        yield f"{care} does not say which side is weaker", "write 'side: left' or 'side: right' beside 'care:'"
    if not (rule.weaker_side or rule.knee) and choice.side is not None:
        yield f"{care} concerns no single side", "take 'side' out"
    parts = [limit.demand or limit.not_position or limit.position for limit in rule.limits]
    known = [part for part in (*parts, *(told.say for told in rule.tells)) if part]
    for part in choice.without:
        if part not in known:
            yield f"{care} asks for no {quoted(part)}", instead_of(part, known, "take it out")


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
        codes = sorted(set(found.plan_codes.values()))
        yield "plan", f"no plan {quoted(code)}", instead_of(code, codes, "write the code that a plan file gives itself")
    elif version is not None and version not in versions:
        known = " or ".join(str(number) for number in versions)
        yield "version", f"no version {version} of plan {quoted(code)}", f"write {known}"
