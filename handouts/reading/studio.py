"""A studio folder: all its files read, checked one by one and then together.

Every fault of every file is found in one go.  Faults stop the clients that
they concern and no others: a client is sound when nothing is wrong with its
own file, its log, its plans, and the texts of every exercise that these plans
or their substitutes can bring in, in the client's language.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import TypeVar

from handouts.amounts import quoted
from handouts.errors import Fault, StudioFaults, StudioNotFound
from handouts.models import LEVELS, Client, Exercise, LogLine, Plan, Studio, StudioFacts
from handouts.reading.client import client_from
from handouts.reading.exercise import (
    FIRST_LANGUAGE, Headings, TextFile, name_text_file, read_exercise, read_headings, read_translation,
)
from handouts.reading.faults import find_suggestion, instead_of, shape
from handouts.reading.log import read_log
from handouts.reading.plan import PlacedWork, all_work, plan_from
from handouts.reading.text_file import read_text
from handouts.reading.yaml_text import YamlText, read_yaml

__all__ = ["StudioReading", "find_studio", "find_suggestion", "read_studio", "read_studio_parts"]

STUDIO_FILE = "studio.yaml"
_HEADINGS = Path(__file__).resolve().parent.parent / "languages" / "parts.yaml"

Result = TypeVar("Result")


@dataclass(frozen=True)
class StudioReading:
    """What a studio folder says, as far as it is sound, and what is wrong.

    studio: sound clients, plans and texts alone.
    faults_by_client: for each client that is not sound, by code (by the
        file's name where the code cannot be read), every fault that stops it;
        a fault in a shared file stands at each client that it stops.  Under ""
        the faults that stop no client.
    known_clients: codes of all clients, sound or not.
    """

    studio: Studio
    faults_by_client: dict[str, tuple[Fault, ...]]
    known_clients: tuple[str, ...]

    @property
    def faults(self) -> tuple[Fault, ...]:
        """Every fault of the studio once, by file and line."""
        return tuple(sorted({fault for faults in self.faults_by_client.values() for fault in faults}))


def find_studio(start: Path) -> Path:
    """The studio folder at `start` or above it: the nearest with a studio.yaml.

    Raises StudioNotFound.
    """
    place = start.resolve()
    for folder in (place, *place.parents):
        if (folder / STUDIO_FILE).is_file():
            return folder
    raise StudioNotFound(
        f"{start}: no studio here nor in a folder above, since none holds a file '{STUDIO_FILE}'; "
        "go into your studio's folder, name it with --studio, or lay out a new one with 'handouts start FOLDER'"
    )


def read_studio(folder: Path, starter_texts: Path) -> Studio:
    """A studio in which everything is sound.

    folder: the one with studio.yaml.  starter_texts: the folder of the texts
    that come with the program; a text of the studio with the same file name
    goes before.
    Raises StudioFaults with all faults of all files.
    """
    reading = read_studio_parts(folder, starter_texts)
    if reading.faults:
        raise StudioFaults(reading.faults)
    return reading.studio


def read_studio_parts(folder: Path, starter_texts: Path) -> StudioReading:
    """What is sound in a studio, so that one client's fault stops no other.

    Raises StudioFaults with all faults of all files when studio.yaml itself
    is not sound, since every sheet needs it.
    """
    headings = read_headings(_HEADINGS)
    found = _Found(folder)
    facts = found.read(STUDIO_FILE, lambda: shape(StudioFacts, found.open(folder / STUDIO_FILE, STUDIO_FILE), STUDIO_FILE))
    _read_texts(found, starter_texts, headings)
    _read_plans(found)
    _read_clients(found)
    _read_logs(found)
    _check_texts(found)
    for shown, placed in found.plans.items():
        _check_plan(found, shown, placed, tuple(headings))
    for client in found.clients.values():
        _check_client(found, client, tuple(headings))
    for code, lines in found.logs.items():
        _check_log(found, code, lines)
    if facts is None:
        raise StudioFaults(tuple(fault for faults in found.faults.values() for fault in faults))
    return _sound(found, facts)


@dataclass
class _Found:
    """What has been read so far.  Lives for one reading.

    faults, documents: by path.  texts: sound ones by id and language; paths:
    of all texts, sound or not.  plans, clients: by path; claims: the plan code
    of each plan file, the client code of each client file, as far as can be
    told.
    """

    folder: Path
    faults: dict[str, list[Fault]] = field(default_factory=dict)
    documents: dict[str, YamlText] = field(default_factory=dict)
    texts: dict[tuple[str, str], Exercise] = field(default_factory=dict)
    paths: dict[tuple[str, str], str] = field(default_factory=dict)
    plans: dict[str, Plan] = field(default_factory=dict)
    clients: dict[str, Client] = field(default_factory=dict)
    claims: dict[str, str] = field(default_factory=dict)
    logs: dict[str, tuple[LogLine, ...]] = field(default_factory=dict)

    def add(self, *faults: Fault) -> None:
        for fault in faults:
            self.faults.setdefault(fault.path, []).append(fault)

    def read(self, shown: str, reader: Callable[[], Result]) -> Result | None:
        """What `reader` gives, or None with its faults noted."""
        try:
            return reader()
        except StudioFaults as problem:
            self.add(*problem.faults)
            return None

    def open(self, path: Path, shown: str) -> YamlText:
        self.documents[shown] = read_yaml(read_text(path, shown), shown)
        return self.documents[shown]

    def line(self, shown: str, place: tuple[str | int, ...], of_key: bool = False) -> int:
        return self.documents[shown].line(place, of_key)

    def add_at(self, shown: str, place: tuple[str | int, ...], wrong: str, instead: str, of_key: bool = False) -> None:
        self.add(Fault(shown, self.line(shown, place, of_key), wrong, instead))

    def ids(self) -> list[str]:
        """Of all exercises, sound or not."""
        return [id for id, language in self.paths if language == FIRST_LANGUAGE]

    def versions(self, code: str) -> dict[int, str]:
        """Version to path, for one plan."""
        return {plan.facts.version: shown for shown, plan in self.plans.items() if plan.facts.plan == code}

    def broken_plans(self, code: str) -> list[str]:
        """Paths of files that seem to hold this plan and cannot be read."""
        return [
            shown for shown, claim in self.claims.items()
            if shown.startswith("plans/") and shown not in self.plans and claim.casefold() == code.casefold()
        ]


# --- files ---------------------------------------------------------------------

# What trainers and editors write for the endings that are read.
_MISSPELT = {
    ".yaml": (".yml", ".yaml.txt", ".yml.txt", ".txt"),
    ".md": (".markdown", ".md.txt", ".txt"),
    ".csv": (".csv.txt", ".txt", ".tsv"),
}


def _files(found: _Found, folder: Path, ending: str, needed: bool = False) -> Iterator[tuple[Path, str]]:
    """Each file of one folder with its path for messages, by name.

    Hidden files and files of other kinds are left alone; a name that is meant
    to be read and would not be is a fault.
    """
    name = folder.name
    try:
        paths = sorted(folder.iterdir())
    except FileNotFoundError:
        if needed:
            found.add(Fault(name, 0, "there is no such folder in the studio", "make it, or check that this is the studio"))
        return
    except OSError as problem:
        found.add(Fault(name, 0, f"the folder cannot be read ({problem.strerror or problem})", "check that it is a folder and yours to read"))
        return
    inside = folder.parent.resolve()
    for path in paths:
        shown = f"{name}/{unicodedata.normalize('NFC', path.name)}"
        if path.name.startswith(".") or path.name.endswith("~"):
            continue
        if path.name.endswith(ending):
            if path.is_symlink() and not path.resolve().is_relative_to(inside):
                found.add(Fault(shown, 0, "this is a link that leads out of the studio", "put the file itself here"))
                continue
            yield path, shown
            continue
        lower = path.name.lower()
        misspelt = next((other for other in (*_MISSPELT[ending], ending) if lower.endswith(other)), None)
        if misspelt:
            stem = path.name[: len(path.name) - len(misspelt)]
            found.add(Fault(shown, 0, f"a name that ends in '{path.name[len(stem):]}' is not read", f"name it '{stem}{ending}'"))


def _stem(shown: str) -> str:
    return shown.rpartition("/")[2].rpartition(".")[0]


def _read_texts(found: _Found, starter_texts: Path, headings: Headings) -> None:
    own = _text_files(found, found.folder / "exercise_texts", False, headings)
    starters = _text_files(found, starter_texts, True, headings)
    files = {**starters, **own}
    # A second text must say what the English one says: the starter's words do
    # not belong to a text that the studio wrote itself.
    replaced = {id for id, language in own if language == FIRST_LANGUAGE}
    files = {key: file for key, file in files.items() if not (file.starter and key[0] in replaced)}
    found.paths = {key: file.shown for key, file in files.items()}
    for (id, language), file in files.items():
        if language == FIRST_LANGUAGE:
            read = found.read(file.shown, lambda file=file: read_exercise(file, headings))
            if read is not None:
                found.texts[id, language], found.documents[file.shown] = read
    for (id, language), file in files.items():
        if language == FIRST_LANGUAGE:
            continue
        if (id, FIRST_LANGUAGE) not in files:
            found.add(Fault(file.shown, 0, f"there is no English text '{id}.md', which would hold the data",
                            f"write it{find_suggestion(id, found.ids())}"))
            continue
        original = found.texts.get((id, FIRST_LANGUAGE))
        text = found.read(file.shown, lambda file=file, original=original: read_translation(file, original, headings))
        if text is not None:
            found.texts[id, language] = text


def _text_files(found: _Found, folder: Path, starter: bool, headings: Headings) -> dict[tuple[str, str], TextFile]:
    files: dict[tuple[str, str], TextFile] = {}
    for path, shown in _files(found, folder, ".md"):
        shown = f"exercise_texts/{_stem(shown)}.md"
        file = found.read(shown, lambda: name_text_file(path, shown, starter, tuple(headings)))
        if file is not None:
            files[file.id, file.language] = file
    return files


def _read_plans(found: _Found) -> None:
    for path, shown in _files(found, found.folder / "plans", ".yaml", needed=True):
        plan = found.read(shown, lambda: plan_from(found.open(path, shown), shown))
        found.claims[shown] = _claim(found, shown, "plan", _stem(shown).rpartition("-v")[0] or _stem(shown))
        if plan is None:
            continue
        facts = plan.facts
        twin = next((
            other for other, earlier in found.plans.items()
            if (earlier.facts.plan.casefold(), earlier.facts.version) == (facts.plan.casefold(), facts.version)
        ), None)
        if twin:
            found.add_at(shown, ("version",), f"version {facts.version} of plan {quoted(facts.plan)} stands in {twin} too",
                         "give this one another version or another code")
        found.plans[shown] = plan


def _read_clients(found: _Found) -> None:
    for path, shown in _files(found, found.folder / "clients", ".yaml", needed=True):
        client = found.read(shown, lambda: client_from(found.open(path, shown), shown))
        code = found.claims[shown] = _claim(found, shown, "code", _stem(shown))
        twin = next((
            other for other, claim in found.claims.items()
            if other.startswith("clients/") and other != shown and claim.casefold() == code.casefold()
        ), None)
        if twin:
            for one, other in ((shown, twin), (twin, shown)):
                line = found.line(one, ("code",)) if one in found.documents else 0
                found.add(Fault(one, line, f"the code {quoted(found.claims[one])} is that of {other} too",
                                "give each client a code of their own"))
        if client is not None:
            found.clients[shown] = client


def _claim(found: _Found, shown: str, key: str, otherwise: str) -> str:
    """The code that a file gives itself, even when the rest of it has faults."""
    document = found.documents.get(shown)
    code = document.data.get(key) if document else None
    return code.strip() if isinstance(code, str) and code.strip() else otherwise


def _read_logs(found: _Found) -> None:
    codes = [claim for shown, claim in found.claims.items() if shown.startswith("clients/")]
    for path, shown in _files(found, found.folder / "logs", ".csv"):
        code = _stem(shown)
        lines = found.read(shown, lambda: read_log(path, shown))
        if code not in codes:
            found.add(Fault(shown, 0, f"no client {quoted(code)}",
                            instead_of(code, codes, "name the file after the client's code")))
        elif lines is not None:
            found.logs[code] = lines


# --- names across files ----------------------------------------------------------


def _check_texts(found: _Found) -> None:
    for (_, language), exercise in found.texts.items():
        if language != FIRST_LANGUAGE:
            continue
        for at, substitute in enumerate(exercise.facts.substitutes):
            place = ("substitutes", at)
            if _check_exercise(found, exercise.path, (*place, "exercise"), substitute.exercise):
                _check_option(found, exercise.path, (*place, "option"), substitute.exercise, substitute.option)


def _check_exercise(found: _Found, shown: str, place: tuple[str | int, ...], id: str, of_key: bool = False) -> bool:
    """Whether there is such an exercise; a fault when there is none."""
    if (id, FIRST_LANGUAGE) in found.paths:
        return True
    found.add_at(shown, place, f"no exercise {quoted(id)}",
                 instead_of(id, found.ids(), "write the name of a file in exercise_texts, without '.md'"), of_key)
    return False


def _check_option(found: _Found, shown: str, place: tuple[str | int, ...], id: str, option: str | None) -> None:
    exercise = found.texts.get((id, FIRST_LANGUAGE))
    if option is not None and exercise is not None and option not in exercise.facts.options:
        found.add_at(shown, place, f"no option {quoted(option)} in '{id}'",
                     instead_of(option, list(exercise.facts.options), f"write one of those under Easier and Harder of '{id}'"))


def _check_plan(found: _Found, shown: str, plan: Plan, languages: tuple[str, ...]) -> None:
    for key, words in (("title", plan.facts.title), ("note", plan.facts.note)):
        if isinstance(words, dict):
            if not words:
                found.add_at(shown, (key,), f"'{key}' has no words", f"write '{languages[0]}: ...' below it")
            for language in words:
                _check_language(found, shown, (key, language), language, languages)
    for placed in all_work(plan.facts):
        if _check_exercise(found, shown, (*placed.place, "exercise"), placed.work.exercise):
            _check_work(found, shown, placed)


def _check_work(found: _Found, shown: str, placed: PlacedWork) -> None:
    """Option, position and count of one exercise against its text."""
    work = placed.work
    exercise = found.texts.get((work.exercise, FIRST_LANGUAGE))
    if exercise is None:
        return
    if work.option is not None:
        options = {work.option.at(level): level for level in reversed(LEVELS)}
        for option, level in options.items():
            _check_option(found, shown, (*placed.place, "option", f"level {level}"), work.exercise, option)
        return  # an option may change position and sides
    facts = exercise.facts
    if work.position is not None and work.position not in facts.positions:
        found.add_at(shown, (*placed.place, "position"), f"'{work.exercise}' is not done {work.position}",
                     f"write {' or '.join(repr(position) for position in facts.positions)}")
    for level in LEVELS:
        dose = work.dose.at(level) if work.dose else None
        if dose is None or dose.kind != "reps":
            continue
        place = (*placed.place, "dose", f"level {level}")
        count = str(dose.low) if dose.low == dose.high else f"{dose.low}-{dose.high}"
        if facts.sides == "together" and dose.counted:
            found.add_at(shown, place, f"'{work.exercise}' works both sides together, so nothing is counted {dose.counted}",
                         f"write '{count} reps'")
        elif facts.sides != "together" and not dose.counted:
            found.add_at(shown, place, f"'{work.exercise}' works one side at a time, and {count} reps can mean two things",
                         f"write '{count} reps each side' or '{count} reps in all'")


def _check_language(found: _Found, shown: str, place: tuple[str, ...], language: str, languages: tuple[str, ...]) -> None:
    if language not in languages:
        found.add_at(shown, place, f"{quoted(language)} is not a language that the sheets are written in",
                     instead_of(language, languages, "write one of the known languages"), of_key=len(place) > 1)


def _check_client(found: _Found, client: Client, languages: tuple[str, ...]) -> None:
    shown, facts = client.path, client.facts
    _check_language(found, shown, ("language",), facts.language, languages)
    codes = sorted({plan.facts.plan for plan in found.plans.values()})
    chosen: set[str] = set()
    for at, choice in enumerate(facts.plans):
        versions = found.versions(choice.plan)
        if choice.plan in chosen:
            found.add_at(shown, ("plans", at, "plan"), f"plan {quoted(choice.plan)} is named a second time", "take one out")
        chosen.add(choice.plan)
        if found.broken_plans(choice.plan):
            continue  # its own faults are told at its own file
        if not versions:
            found.add_at(shown, ("plans", at, "plan"), f"no plan {quoted(choice.plan)}",
                         instead_of(choice.plan, codes, "write the code of a plan file"))
        elif choice.version is not None and choice.version not in versions:
            found.add_at(shown, ("plans", at, "version"), f"no version {choice.version} of plan {quoted(choice.plan)}",
                         f"write {' or '.join(str(version) for version in sorted(versions))}, or take 'version' out for the newest")
    for key, ids in (("loads", facts.loads), ("best sets", facts.best_sets)):
        for id in ids:
            _check_exercise(found, shown, (key, id), id, of_key=True)


def _check_log(found: _Found, code: str, lines: tuple[LogLine, ...]) -> None:
    shown = f"logs/{code}.csv"
    codes = sorted({*(plan.facts.plan for plan in found.plans.values())})
    for line in lines:
        if line.exercise not in ("", "session") and (line.exercise, FIRST_LANGUAGE) not in found.paths:
            found.add(Fault(shown, line.line, f"no exercise {quoted(line.exercise)}",
                            instead_of(line.exercise, [*found.ids(), "session"], "write an exercise's file name, 'session' or nothing")))
        if not line.plan or found.broken_plans(line.plan):
            continue
        versions = found.versions(line.plan)
        if not versions:
            found.add(Fault(shown, line.line, f"no plan {quoted(line.plan)}",
                            instead_of(line.plan, codes, "write the code of a plan file")))
        elif line.version is not None and line.version not in versions:
            found.add(Fault(shown, line.line, f"no version {line.version} of plan {quoted(line.plan)}",
                            f"write {' or '.join(str(version) for version in sorted(versions))}"))


# --- what is sound ---------------------------------------------------------------


def _sound(found: _Found, facts: StudioFacts) -> StudioReading:
    by_client: dict[str, tuple[Fault, ...]] = {}
    clients: dict[str, Client] = {}
    codes = {shown: claim for shown, claim in found.claims.items() if shown.startswith("clients/")}
    for shown, code in codes.items():
        client = found.clients.get(shown)
        needed = {shown, f"logs/{code}.csv"} | (_needs(found, client) if client else set())
        faults = tuple(sorted(fault for path in needed for fault in found.faults.get(path, ())))
        if faults:
            by_client[code] = tuple(dict.fromkeys((*by_client.get(code, ()), *faults)))
        elif client is not None:
            clients[code] = client
    told = {fault for faults in by_client.values() for fault in faults}
    rest = {fault for faults in found.faults.values() for fault in faults} - told
    if rest:
        by_client[""] = tuple(sorted(rest))
    studio = Studio(
        facts=facts,
        exercises={key: text for key, text in found.texts.items() if text.path not in found.faults},
        plans={
            (plan.facts.plan, plan.facts.version): plan
            for shown, plan in found.plans.items() if shown not in found.faults
        },
        clients=clients,
        logs={code: lines for code, lines in found.logs.items() if code in clients},
    )
    return StudioReading(studio, by_client, tuple(codes.values()))


def _needs(found: _Found, client: Client) -> set[str]:
    """Paths of the plans and texts that this client's sheets are made from."""
    paths: set[str] = set()
    ids: set[str] = set()
    for choice in client.facts.plans:
        plans = found.versions(choice.plan).values()
        paths |= {*plans, *found.broken_plans(choice.plan)}
        ids |= {placed.work.exercise for shown in plans for placed in all_work(found.plans[shown].facts)}
    for id in _with_substitutes(ids, found.texts):
        for language in (FIRST_LANGUAGE, client.facts.language):
            if (id, language) in found.paths:
                paths.add(found.paths[id, language])
    return paths


def _with_substitutes(ids: Iterable[str], texts: Mapping[tuple[str, str], Exercise]) -> set[str]:
    """The exercises, and all that can stand in for them; circles are fine."""
    reached: set[str] = set()
    waiting = list(ids)
    while waiting:
        id = waiting.pop()
        if id not in reached:
            reached.add(id)
            exercise = texts.get((id, FIRST_LANGUAGE))
            waiting += [substitute.exercise for substitute in exercise.facts.substitutes] if exercise else []
    return reached
