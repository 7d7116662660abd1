"""Makes the proofs of one client's braille: a page for each sheet, and data."""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any

from handouts import carried
from handouts.braille.proof import EXPLAINED, Proof, prove
from handouts.errors import HandoutsError, StudioFaults
from handouts.fitting.sheets import sheet
from handouts.forms import Look
from handouts.forms.braille import code_of, paper_of
from handouts.forms.templating import fill
from handouts.handout import Handout, SheetKind
from handouts.making.file_names import safe_name, safe_names
from handouts.making.make import fit_plan, plans_of
from handouts.making.writing import write_whole
from handouts.models import BrailleForm, Forms
from handouts.reading.faults import instead_of
from handouts.reading.studio import read_studio_parts


@dataclass(frozen=True)
class Proved:
    """The proof of one sheet, and the page that shows it."""

    client: str
    plan: str
    version: int
    sheet: SheetKind
    path: Path
    proof: Proof

    def told(self) -> str:
        """One line for the trainer."""
        faults = len(self.proof.faults)
        found = "every word reads back as it was written" if not faults else f"{faults} words to look at"
        return f"{self.client} {self.sheet}: {found}; {self.proof.bulk.told()} Proof: {self.path}"

    def record(self) -> dict[str, Any]:
        """The same as data for JSON."""
        proof = self.proof
        return {
            "client": self.client,
            "plan": self.plan,
            "version": self.version,
            "sheet": self.sheet,
            "path": str(self.path),
            "code": proof.code.name,
            "grade": proof.code.grade,
            "tables": list(proof.code.tables),
            "liblouis": proof.liblouis_version,
            "words": proof.words,
            "bulk": asdict(proof.bulk),
            "differences": [
                {**asdict(difference), "fault": difference.is_fault, "why": EXPLAINED[difference.kind]}
                for difference in proof.differences
            ],
            "lines": [asdict(line) for line in proof.lines],
        }


def make_proofs(folder: Path, out: Path, client_code: str, today: datetime.date) -> Iterator[Proved]:
    """Prove every braille sheet of a client, and write a page for each.

    folder: the studio.  out: where CLIENT/PLAN/ folders go.
    A client whose file names no braille is proved with the usual settings.
    Raises HandoutsError for a client that is not there, StudioFaults for one
    whose files have faults, UnknownCharacter, MissingLibrary.
    """
    reading = read_studio_parts(folder, carried.starter_texts())
    if client_code not in reading.known_clients:
        hint = instead_of(client_code, sorted(reading.known_clients), "the folder clients holds the names")
        raise HandoutsError(f"no client '{client_code}' in this studio; {hint}")
    if client_code not in reading.studio.clients:
        raise StudioFaults(reading.faults_by_client[client_code])
    client = reading.studio.clients[client_code]
    form = client.facts.forms.braille or Forms.defaults("braille")
    assert isinstance(form, BrailleForm)
    name = safe_names(reading.studio.clients)[client_code]
    for plan in plans_of(client, reading.studio):
        session = fit_plan(client, plan, reading.studio, today)
        plan_name = safe_name(f"{plan.facts.plan}-v{plan.facts.version}")
        for kind in form.sheets:
            handout = sheet(kind, session)
            proof = prove(handout, code_of(form), paper_of(form))
            path = out / name / plan_name / f"{name}-{plan_name}-{kind}-proof.html"
            write_whole(path, page(handout, form, proof, Look((folder / "templates",))).encode("utf-8"))
            yield Proved(client_code, plan.facts.plan, plan.facts.version, kind, path, proof)


def page(handout: Handout, form: BrailleForm, proof: Proof, look: Look) -> str:
    """The proof as one HTML page, in English like all that the trainer reads."""
    return fill(look, "proof.html.j2", handout, form, {}, proof=proof, explained=EXPLAINED)
