"""A studio folder: all its files read, checked one by one and then together.

Every fault of every file is found in one go.  Faults stop the clients that
they concern and no others: a client is sound when nothing is wrong with its
own file, its log, its plans, and the texts of every exercise that these plans
or their substitutes can bring in, in the client's language.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from handouts.amounts import quoted
from handouts.errors import Fault, StudioFaults
from handouts.models import Client, Exercise, Studio, StudioFacts
from handouts.reading.care import read_care_table
from handouts.reading.client import client_from
from handouts.reading.exercise import (
    FIRST_LANGUAGE,
    Headings,
    OpenedText,
    TextFile,
    exercise_from,
    name_text_file,
    open_text,
    read_headings,
    translation_from,
)
from handouts.reading.faults import find_suggestion, instead_of, shape
from handouts.reading.folder import STUDIO_FILE, files_in, find_studio, stem
from handouts.reading.gathered import Gathered
from handouts.reading.log import read_log_lines
from handouts.reading.names import check_names
from handouts.reading.plan import all_work, plan_from
from handouts.reading.text_file import read_text
from handouts.reading.upgrades import refuse_newer
from handouts.reading.yaml_text import YamlText

__all__ = ["StudioReading", "find_studio", "find_suggestion", "read_studio", "read_studio_parts"]

_HEADINGS = Path(__file__).resolve().parent.parent / "languages" / "parts.yaml"


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
    found = Gathered()
    facts = _read_facts(found, folder)
    _read_texts(found, folder / "exercise_texts", starter_texts, headings)
    _read_plans(found, folder / "plans")
    _read_clients(found, folder / "clients")
    _read_logs(found, folder / "logs")
    check_names(found, tuple(headings), read_care_table())
    if facts is None:
        raise StudioFaults(tuple(found.all_faults()))
    return _sound(found, facts)


# --- files -------------------------------------------------------------------------


def _read_facts(found: Gathered, folder: Path) -> StudioFacts | None:
    text = found.read(read_text, folder / STUDIO_FILE, STUDIO_FILE)
    if text is not None:
        # A studio of a later format is told as that, not as faults of its keys.
        refuse_newer(text)
    document = found.open_yaml(folder / STUDIO_FILE, STUDIO_FILE) if text is not None else None
    return found.read(shape, StudioFacts, document, STUDIO_FILE) if document else None


def _files(found: Gathered, folder: Path, ending: str, needed: bool = False) -> Iterator[tuple[Path, str]]:
    for file in files_in(folder, ending, needed):
        if isinstance(file, Fault):
            found.add(file)
        else:
            yield file


def _read_texts(found: Gathered, own_texts: Path, starter_texts: Path, headings: Headings) -> None:
    own = _text_files(found, own_texts, False, headings)
    # A second text must say what the English one says: the starter's French
    # does not belong to a text that the studio wrote itself.
    starters = {
        key: file
        for key, file in _text_files(found, starter_texts, True, headings).items()
        if (file.id, FIRST_LANGUAGE) not in own
    }
    files = {**starters, **own}
    found.text_paths = {key: file.shown for key, file in files.items()}
    for (_, language), file in files.items():
        if language == FIRST_LANGUAGE:
            opened = _open_text(found, file, headings)
            exercise = found.read(exercise_from, opened) if opened else None
            if exercise is not None:
                found.texts[file.id, language] = exercise
    for (_, language), file in files.items():
        if language != FIRST_LANGUAGE:
            _read_second_text(found, file, headings)


def _open_text(found: Gathered, file: TextFile, headings: Headings) -> OpenedText | None:
    opened = found.read(open_text, file, headings)
    if opened is not None:
        found.documents[file.shown] = opened.front
    return opened


def _text_files(found: Gathered, folder: Path, starter: bool, headings: Headings) -> dict[tuple[str, str], TextFile]:
    files: dict[tuple[str, str], TextFile] = {}
    for path, shown in _files(found, folder, ".md"):
        file = found.read(name_text_file, path, shown, starter, tuple(headings))
        if file is not None:
            files[file.id, file.language] = file
    return files


def _read_second_text(found: Gathered, file: TextFile, headings: Headings) -> None:
    if (file.id, FIRST_LANGUAGE) not in found.text_paths:
        instead = instead_of(file.id, found.exercise_ids(), "write it, or rename this file")
        found.add(Fault(file.shown, 0, f"there is no English text '{file.id}.md' to hold its data", instead))
        return
    opened = _open_text(found, file, headings)
    text = found.read(translation_from, opened, found.texts.get((file.id, FIRST_LANGUAGE))) if opened else None
    if text is not None:
        found.texts[file.id, file.language] = text


def _read_plans(found: Gathered, folder: Path) -> None:
    for path, shown in _files(found, folder, ".yaml", needed=True):
        document = found.open_yaml(path, shown)
        # "P1-v2.yaml" is how the demo names its files; the code inside counts.
        found.plan_codes[shown] = _code(document, "plan", stem(shown).rpartition("-v")[0] or stem(shown))
        plan = found.read(plan_from, document, shown) if document else None
        if plan is None:
            continue
        for other, earlier in found.plans.items():
            if _plan_key(earlier.facts.plan, earlier.facts.version) == _plan_key(plan.facts.plan, plan.facts.version):
                wrong = f"version {plan.facts.version} of plan {quoted(plan.facts.plan)} stands in {other} too"
                found.add_at(shown, ("version",), wrong, "give this one another version or another code")
                break
        found.plans[shown] = plan


def _plan_key(code: str, version: int) -> tuple[str, int]:
    return code.casefold(), version


def _read_clients(found: Gathered, folder: Path) -> None:
    for path, shown in _files(found, folder, ".yaml", needed=True):
        document = found.open_yaml(path, shown)
        code = found.client_codes[shown] = _code(document, "code", stem(shown))
        for other, claimed in found.client_codes.items():
            if other != shown and claimed.casefold() == code.casefold():
                for one, another in ((shown, other), (other, shown)):
                    wrong = f"the client's code {quoted(found.client_codes[one])} is that of {another} too"
                    found.add_at(one, ("code",), wrong, "give each client a code of their own")
        client = found.read(client_from, document, shown) if document else None
        if client is not None:
            found.clients[shown] = client


def _code(document: YamlText | None, key: str, otherwise: str) -> str:
    """The code that a file gives itself, even where the rest of it has faults."""
    code = document.data.get(key) if document else None
    return unicodedata.normalize("NFC", code.strip()) if isinstance(code, str) and code.strip() else otherwise


def _read_logs(found: Gathered, folder: Path) -> None:
    codes = list(found.client_codes.values())
    for path, shown in _files(found, folder, ".csv"):
        code = stem(shown)
        lines, faults = found.read(read_log_lines, path, shown) or ((), ())
        for fault in faults:
            found.add(fault)
        found.logs[code] = lines
        if code not in codes:
            instead = instead_of(code, codes, "name the file after a client's code")
            found.add(Fault(shown, 0, f"no client {quoted(code)}", instead))


# --- what is sound -------------------------------------------------------------------


def _sound(found: Gathered, facts: StudioFacts) -> StudioReading:
    by_client: dict[str, tuple[Fault, ...]] = {}
    clients: dict[str, Client] = {}
    for shown, code in found.client_codes.items():
        client = found.clients.get(shown)
        paths = {shown, f"logs/{code}.csv"} | (_paths_behind(found, client) if client else set())
        faults = tuple(sorted(fault for path in paths for fault in found.faults.get(path, ())))
        if faults:
            by_client[code] = tuple(dict.fromkeys((*by_client.get(code, ()), *faults)))
        elif client is not None:
            clients[code] = client
    rest = found.all_faults().difference(*by_client.values())
    if rest:
        by_client[""] = tuple(sorted(rest))
    studio = Studio(
        facts=facts,
        exercises={key: text for key, text in found.texts.items() if text.path not in found.faults},
        plans={
            (plan.facts.plan, plan.facts.version): plan
            for shown, plan in found.plans.items()
            if shown not in found.faults
        },
        clients=clients,
        logs={
            code: tuple(line for line in lines if line.corrected is None)
            for code, lines in found.logs.items()
            if code in clients
        },
    )
    return StudioReading(studio, by_client, tuple(dict.fromkeys(found.client_codes.values())))


def _paths_behind(found: Gathered, client: Client) -> set[str]:
    """Paths of the plans and texts that this client's sheets are made from."""
    paths: set[str] = set()
    ids: set[str] = set()
    for choice in client.facts.plans:
        # All versions: a sheet also tells what changed since the last one.
        versions = found.versions(choice.plan).values()
        paths |= {*versions, *found.unread_plans(choice.plan)}
        ids |= {placed.work.exercise for shown in versions for placed in all_work(found.plans[shown].facts)}
    for id in _with_substitutes(ids, found.texts):
        for language in (FIRST_LANGUAGE, client.facts.language):
            if (id, language) in found.text_paths:
                paths.add(found.text_paths[id, language])
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
