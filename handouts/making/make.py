"""Makes what is asked: every client, every plan, every form, every sheet.

The stages stand in `make` in the order of the data: read, fit, word, render,
write.  One client's fault never stops another client's sheets.
"""

from __future__ import annotations

import datetime
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from handouts import carried
from handouts.errors import Fault, HandoutsError, MissingLibrary, RenderError
from handouts.fitting.fit import fit
from handouts.fitting.fitted import FittedSession, Remark
from handouts.fitting.sheets import sheet
from handouts.forms import FORMS, FormKind, Look
from handouts.handout import SheetKind
from handouts.making.file_names import safe_names
from handouts.making.writing import write_whole
from handouts.models import Client, Plan, Studio
from handouts.reading.faults import instead_of
from handouts.reading.studio import read_studio_parts


@dataclass(frozen=True)
class Made:
    """One file that was made.

    pages: of paper or braille, 0 where a form has none.  seconds: how long it
    took to make.
    """

    client: str
    plan: str
    version: int
    form: str
    sheet: SheetKind
    path: Path
    pages: int
    seconds: float


@dataclass(frozen=True)
class Outcome:
    """What came of one client, or of files that concern no single client.

    client: the code, or "" for faults in files that are nobody's alone.
    remarks: (plan code and version, remark).  failures: forms that could not
        be made, each a full sentence.
    """

    client: str
    made: tuple[Made, ...] = ()
    remarks: tuple[tuple[str, Remark], ...] = ()
    faults: tuple[Fault, ...] = ()
    failures: tuple[str, ...] = ()

    @property
    def exit_status(self) -> int:
        """0 made; 1 made, but the trainer must look; 2 nothing made."""
        if self.faults or (self.failures and not self.made):
            return 2
        if self.failures or any(remark.strength == "eye" for _, remark in self.remarks):
            return 1
        return 0


class NothingAsked(HandoutsError):
    """A name on the command line is no client and no plan of this studio."""


def make(
    folder: Path,
    out: Path,
    names: tuple[str, ...],
    forms: tuple[str, ...],
    today: datetime.date,
) -> Iterator[Made | Outcome]:
    """Make the handouts of a studio folder, telling each file as it is made.

    folder: the studio.  out: where CLIENT/PLAN/ folders go.
    names: codes of clients or plans; empty for all clients.
    forms: names of forms; empty for those that each client's file names.
    today: for review dates; it is never printed.
    Yields a Made for every file, then an Outcome for every client.
    Raises NothingAsked for an unknown name.
    """
    read = read_studio_parts(folder, carried.starter_texts())
    studio = read.studio
    _check_names(names, studio, read.known_clients)
    folders = safe_names(studio.clients)
    look = Look((folder / "templates", carried.templates()))

    for code, faults in read.faults_by_client.items():
        if not names or not code or code in names:
            yield Outcome(code, faults=faults)
    for code, client in studio.clients.items():
        made: list[Made] = []
        remarks: list[tuple[str, Remark]] = []
        failures: list[str] = []
        for plan in _plans_of(client, studio):
            if names and code not in names and plan.facts.plan not in names:
                continue
            session = _fit(client, plan, studio, today)
            label = f"{plan.facts.plan} version {plan.facts.version}"
            remarks += [(label, remark) for remark in session.remarks]
            target = out / folders[code] / safe_names([f"{plan.facts.plan}-v{plan.facts.version}"]).popitem()[1]
            for kind, form in _forms_of(client, forms):
                for sheet_kind in form.sheets:
                    begun = time.perf_counter()
                    path = target / f"{folders[code]}-{target.name}-{sheet_kind}{kind.ending}"
                    try:
                        rendered = kind.render(sheet(sheet_kind, session), form, look)
                        write_whole(path, rendered.data)
                    except (MissingLibrary, RenderError) as problem:
                        failures.append(f"{code} {kind.name} {sheet_kind}: not made; {problem}")
                        continue
                    except OSError as problem:
                        failures.append(
                            f"{code} {kind.name} {sheet_kind}: not written to {path}: "
                            f"{problem.strerror or problem}; free the place and run this again"
                        )
                        continue
                    one = Made(
                        code, plan.facts.plan, plan.facts.version, kind.name, sheet_kind, path,
                        rendered.pages, time.perf_counter() - begun,
                    )
                    made.append(one)
                    yield one
        if made or remarks or failures:
            yield Outcome(code, tuple(made), tuple(remarks), (), tuple(failures))


def _check_names(names: tuple[str, ...], studio: Studio, clients: tuple[str, ...]) -> None:
    plans = {plan for plan, _ in studio.plans}
    for name in names:
        if name not in clients and name not in plans:
            hint = instead_of(name, sorted({*clients, *plans}), "the folders clients and plans hold the names")
            raise NothingAsked(f"no client and no plan '{name}' in this studio; {hint}")


def _plans_of(client: Client, studio: Studio) -> Iterator[Plan]:
    for choice in client.facts.plans:
        version = choice.version or max(v for plan, v in studio.plans if plan == choice.plan)
        yield studio.plans[choice.plan, version]


def _fit(client: Client, plan: Plan, studio: Studio, today: datetime.date) -> FittedSession:
    facts = plan.facts
    return fit(
        client,
        plan,
        studio.exercises,
        studio.facts,
        previous=studio.plans.get((facts.plan, facts.version - 1)),
        today=today,
        history=studio.logs.get(client.facts.code, ()),
    )


def _forms_of(client: Client, asked: tuple[str, ...]) -> Iterator[tuple[FormKind, Any]]:
    """The forms to make for a client, each with the client's own settings.

    A form that was asked for and that the client's file does not name is made
    with its default settings, all its sheets.
    """
    settings = client.facts.forms
    for name, kind in FORMS.items():
        form = getattr(settings, name)
        if asked and name in asked and form is None:
            form = type(settings).defaults(name)
        if form is not None and (not asked or name in asked):
            yield kind, form
