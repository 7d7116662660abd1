"""Makes what is asked: every client, every plan, every form, every sheet.

The stages stand in `make` in the order of the data: read, fit, word, render,
write.  Fitting and wording are quick and are done for every sheet; a sheet is
rendered only where its fingerprint says that it would come out differently.
One client's fault never stops another client's sheets.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from handouts import __version__, carried
from handouts.errors import Fault, HandoutsError
from handouts.fitting.fit import fit
from handouts.fitting.fitted import FittedSession, Remark
from handouts.fitting.sheets import sheet
from handouts.forms import FORMS, FormKind, Look
from handouts.handout import SheetKind
from handouts.making.file_names import safe_name, safe_names
from handouts.making.fingerprints import Record, fingerprint, folder_fingerprint
from handouts.making.lock import only_run
from handouts.making.old_sheets import sheets_of
from handouts.making.workers import Result, Task, Workers
from handouts.making.writing import write_whole
from handouts.models import Client, Forms, Plan, Studio
from handouts.reading.faults import instead_of
from handouts.reading.studio import StudioReading, read_studio_parts


@dataclass(frozen=True)
class Asked:
    """What a run is to do.

    folder: the studio.  out: where CLIENT/PLAN/ folders go.
    names: codes of clients or plans; empty for all clients.
    forms: names of forms; empty for those that each client's file names.
    today: for review dates; it is never printed.
    afresh: make everything, whatever the fingerprints say.
    """

    folder: Path
    out: Path
    today: datetime.date
    names: tuple[str, ...] = ()
    forms: tuple[str, ...] = ()
    afresh: bool = False


@dataclass(frozen=True)
class Made:
    """One file that is there now.

    pages: of paper or braille, 0 where a form has none.
    seconds: how long it took to make; 0 where it was still good.
    why: why it was made, "" where it was still good.
    facts: what else its form tells of it, such as what braille weighs.
    """

    client: str
    plan: str
    version: int
    form: str
    sheet: SheetKind
    path: Path
    pages: int
    seconds: float
    why: str
    facts: Mapping[str, object]


@dataclass(frozen=True)
class LoadTaken:
    """One load of one sheet: what was asked for and what was taken.

    plan: code and version, as in an Outcome's remarks.
    exercise: id of the exercise that is done.  side: "" for both.
    asked: in the words of a file, "" when nothing was asked for.
    """

    plan: str
    exercise: str
    side: str
    asked: str
    chosen: str


@dataclass(frozen=True)
class Outcome:
    """What came of one client, or of files that concern no single client.

    client: the code, or "" for faults in files that are nobody's alone.
    files: that are there now, made or still good.
    remarks: (plan code and version, remark).
    failures: what could not be made, each a full sentence.
    loads: every load of every plan, in the order of the sheets.
    old: sheets of an earlier run that still lie there, where none was made.
    """

    client: str
    files: int = 0
    remarks: tuple[tuple[str, Remark], ...] = ()
    faults: tuple[Fault, ...] = ()
    failures: tuple[str, ...] = ()
    loads: tuple[LoadTaken, ...] = ()
    old: tuple[Path, ...] = ()

    @property
    def exit_status(self) -> int:
        """0 made; 1 made, but the trainer must look; 2 nothing made."""
        if self.client and (self.faults or (self.failures and not self.files)):
            return 2
        if self.faults or self.failures or any(remark.strength == "eye" for _, remark in self.remarks):
            return 1
        return 0


class NothingAsked(HandoutsError):
    """A name on the command line is no client and no plan of this studio."""


class TemplateUnreadable(HandoutsError):
    """A template of the studio's own is no text."""


@dataclass(frozen=True)
class _Sheet:
    """One file to be there at the end.

    inputs: what it depends on, by name; told only of what is to be made.
    """

    client: str
    plan: str
    version: int
    form: str
    kind: SheetKind
    record: Record
    name: str
    whole: str
    inputs: dict[str, str]
    settings: Any

    @property
    def path(self) -> Path:
        return self.record.folder / self.name

    def made(self, pages: int, seconds: float, why: str) -> Made:
        facts = FORMS[self.form].facts(self.settings, pages)
        return Made(self.client, self.plan, self.version, self.form, self.kind, self.path, pages, seconds, why, facts)


@dataclass(frozen=True)
class _EndOfClient:
    """All sheets of a client have gone by.

    stopped: why some of them were not even begun, each a full sentence.
    old: sheets of an earlier run of those.
    """

    client: str
    remarks: tuple[tuple[str, Remark], ...]
    loads: tuple[LoadTaken, ...]
    stopped: tuple[str, ...]
    old: tuple[Path, ...]


def make(asked: Asked, workers: Workers, say: Callable[[str], None] = lambda line: None) -> Iterator[Made | Outcome]:
    """Make the handouts of a studio folder, telling each file as it is made.

    workers: who makes them; whoever brings them closes them.
    say: told in whole lines what the run waits for.
    Yields a Made for every file, then an Outcome for every client.
    Raises NothingAsked for an unknown name, and OutUnusable.
    """
    reading = read_studio_parts(asked.folder, carried.starter_texts())
    _check_names(asked.names, reading)
    for code, faults in reading.faults_by_client.items():
        if not asked.names or not code or code in asked.names:
            old = sheets_of(asked.out / safe_name(code)) if code else ()
            yield Outcome(code, faults=faults, old=old)
    with only_run(asked.out, say):
        yield from _written(asked, workers.run(_steps(asked, reading.studio)))


def _check_names(names: tuple[str, ...], reading: StudioReading) -> None:
    plans = {plan for plan, _ in reading.studio.plans}
    for name in names:
        if name not in reading.known_clients and name not in plans:
            hint = instead_of(
                name, sorted({*reading.known_clients, *plans}), "the folders clients and plans hold the names"
            )
            raise NothingAsked(f"no client and no plan '{name}' in this studio; {hint}")


def _steps(asked: Asked, studio: Studio) -> Iterator[tuple[_Sheet | _EndOfClient, Task | None]]:
    """Every sheet of every client in order, with a task where it must be rendered."""
    folders = safe_names(studio.clients)
    look = _look(asked.folder)
    around = _inputs_around(look)
    for code, client in studio.clients.items():
        remarks: list[tuple[str, Remark]] = []
        loads: list[LoadTaken] = []
        stopped: list[str] = []
        old: list[Path] = []
        plans = [
            plan
            for plan in plans_of(client, studio)
            if not asked.names or code in asked.names or plan.facts.plan in asked.names
        ]
        for plan in plans:
            session = fit_plan(client, plan, studio, asked.today)
            told = f"{plan.facts.plan} version {plan.facts.version}"
            remarks += [(told, remark) for remark in session.remarks]
            if session.stopped:
                stopped += [why for why in session.stopped if why not in stopped]
                codes = frozenset(each.facts.plan for each in (plan, _previous(plan, studio)) if each is not None)
                old += [path for path in sheets_of(asked.out / folders[code], codes) if path not in old]
                continue
            loads += _loads_of(session, told)
            name = safe_name(f"{plan.facts.plan}-v{plan.facts.version}")
            record = Record.of(asked.out / folders[code] / name)
            inputs: dict[str, str] = {}
            for kind, settings in _forms_of(client, asked.forms):
                for sheet_kind in settings.sheets:
                    handout = sheet(sheet_kind, session)
                    whole = fingerprint(handout, settings, around)
                    file_name = f"{folders[code]}-{name}-{sheet_kind}{kind.ending_of(settings)}"
                    good = not asked.afresh and record.still_good(file_name, whole)
                    if not (good or inputs):
                        inputs = {**around, **_inputs_of(session, studio)}
                    why = {} if good else {**inputs, f"settings of {kind.name}": fingerprint(settings)}
                    one = _Sheet(
                        code, plan.facts.plan, plan.facts.version, kind.name, sheet_kind, record, file_name, whole, why,
                        settings,
                    )
                    yield one, None if good else Task(kind.name, handout, settings, look)
        if plans:
            yield _EndOfClient(code, tuple(remarks), tuple(loads), tuple(stopped), tuple(old)), None


def _loads_of(session: FittedSession, plan: str) -> Iterator[LoadTaken]:
    for group in session.groups:
        for exercise in group.exercises:
            for load in exercise.loads:
                asked = str(load.asked) if load.asked else ""
                yield LoadTaken(plan, exercise.exercise.id, load.side or "", asked, load.chosen)


def _written(
    asked: Asked, results: Iterator[tuple[_Sheet | _EndOfClient, Result | None]]
) -> Iterator[Made | Outcome]:
    """Write what comes from the workers; tell each file, then each client."""
    files = 0
    failures: list[str] = []
    old: list[Path] = []
    records: list[Record] = []
    for step, result in results:
        if isinstance(step, _EndOfClient):
            for record in records:
                _save(record, failures)
            yield Outcome(step.client, files, step.remarks, (), (*step.stopped, *failures), step.loads, (*step.old, *old))
            files, failures, old, records = 0, [], [], []
            continue
        if step.record not in records:
            records.append(step.record)
        if result is None:
            files += 1
            yield step.made(step.record.files[step.name].pages, 0.0, "")
            continue
        what = f"{step.client} {step.form} {step.kind}"
        if result.rendered is None:
            failures.append(f"{what}: not made; {result.failure}")
            old += [step.path] if step.path.is_file() else []
            continue
        why = "asked for afresh" if asked.afresh else step.record.why(step.name, step.whole, step.inputs)
        if not step.record.folder.resolve().is_relative_to(asked.out.resolve()):
            failures.append(f"{what}: not written, since {step.record.folder} is a link that leads elsewhere; take it away")
            continue
        try:
            write_whole(step.path, result.rendered.data)
            step.record.add(step.name, step.whole, step.inputs, result.rendered.pages)
        except OSError as problem:
            failures.append(
                f"{what}: not written to {step.path}: {problem.strerror or problem}; free the place and run this again"
            )
            old += [step.path] if step.path.is_file() else []
            continue
        files += 1
        yield step.made(result.rendered.pages, result.seconds, why)


def _save(record: Record, failures: list[str]) -> None:
    try:
        record.save()
    except OSError as problem:
        failures.append(
            f"{record.folder}: what was made there could not be noted down: {problem.strerror or problem}; "
            "the sheets are good, and the next run makes them again"
        )


def plans_of(client: Client, studio: Studio) -> Iterator[Plan]:
    """The plans that a client's file names, each in the version it names."""
    for choice in client.facts.plans:
        version = choice.version or max(v for plan, v in studio.plans if plan == choice.plan)
        yield studio.plans[choice.plan, version]


def _previous(plan: Plan, studio: Studio) -> Plan | None:
    after = plan.facts.after
    if after is not None and after.version is not None:
        return studio.plans.get((after.plan, after.version))
    return studio.plans.get((plan.facts.plan, plan.facts.version - 1))


def fit_plan(client: Client, plan: Plan, studio: Studio, today: datetime.date) -> FittedSession:
    """One plan fitted to one client, with all that the studio knows of both."""
    return fit(
        client,
        plan,
        studio.exercises,
        studio.facts,
        previous=_previous(plan, studio),
        today=today,
        history=studio.logs.get(client.facts.code, ()),
        plans=studio.plans,
    )


def _forms_of(client: Client, asked: tuple[str, ...]) -> Iterator[tuple[FormKind, Any]]:
    """The forms to make for a client, each with the client's own settings.

    A form that was asked for and that the client's file does not name is made
    with its usual settings.
    """
    for name, kind in FORMS.items():
        settings = getattr(client.facts.forms, name)
        if name in asked and settings is None:
            settings = Forms.defaults(name)
        if settings is not None and (not asked or name in asked):
            yield kind, settings


def _look(folder: Path) -> Look:
    """The studio's own templates, read once, so that workers need no disk of ours."""
    own = folder / "templates"
    names = sorted(path for path in own.rglob("*.j2") if path.is_file()) if own.is_dir() else []
    overrides = []
    for path in names:
        shown = path.relative_to(own).as_posix()
        if not path.resolve().is_relative_to(folder.resolve()):
            raise TemplateUnreadable(
                f"templates/{shown}: this is a link that leads out of the studio; put the template itself there"
            )
        try:
            overrides.append((shown, path.read_text("utf-8")))
        except (OSError, UnicodeDecodeError) as problem:
            raise TemplateUnreadable(
                f"templates/{shown}: cannot be read as UTF-8 text ({problem}); save it as UTF-8 or take it away"
            ) from problem
    return Look(overrides=tuple(overrides))


def _inputs_around(look: Look) -> dict[str, str]:
    """What every sheet depends on: program, templates, libraries."""
    inputs = {
        "program": f"{__version__} {folder_fingerprint(Path(__file__).parents[1], '*.py')}",
        "words of the program": folder_fingerprint(Path(__file__).parents[1] / "languages", "*.yaml"),
        "templates": fingerprint(look, folder_fingerprint(carried.templates(), "*.j2")),
    }
    for kind in FORMS.values():
        inputs.update(kind.versions())
    return inputs


def _inputs_of(session: FittedSession, studio: Studio) -> dict[str, str]:
    """What the sheets of one session depend on, by name, for "why?"."""
    code, previous = session.client.facts.code, _previous(session.plan, studio)
    inputs = {
        "studio file": fingerprint(session.studio),
        "client file": fingerprint(session.client.facts),
        "plan file": fingerprint(session.plan.facts),
        "log": fingerprint(studio.logs.get(code, ())),
    }
    if previous is not None:
        inputs["plan file of the version before"] = fingerprint(previous.facts)
    exercises = (*session.warm_up, *(each for group in session.groups for each in group.exercises), *session.cool_down)
    for each in exercises:
        inputs[f"text {each.exercise.id}"] = fingerprint(each.exercise)
    return inputs
