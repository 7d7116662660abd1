"""Rendered sheets, each made once in a test run."""

from __future__ import annotations

import datetime
import subprocess
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from handouts import carried
from handouts.fitting.fit import fit
from handouts.fitting.sheets import sheet as word_sheet
from handouts.forms import Look
from handouts.forms import print as print_form
from handouts.handout import SHEET_KINDS, Handout
from handouts.models import PrintForm
from handouts.reading import read_studio
from tests.forms.trees import AWKWARD


def print_settings(size: int = 18, **settings: Any) -> PrintForm:
    return PrintForm.model_validate({"size": f"{size} pt", **{key.replace("_", " "): v for key, v in settings.items()}})


@pytest.fixture(scope="session")
def sheet(tmp_path_factory: pytest.TempPathFactory) -> Callable[..., Path]:
    """A function: the PDF of a named tree with print settings, as a file."""
    folder = tmp_path_factory.mktemp("sheets")

    @cache
    def made(name: str, **settings: Any) -> Path:
        rendered = print_form.render(AWKWARD[name](), print_settings(**settings), Look())
        path = folder / ("-".join([name, *map(str, settings.values())]).replace(" ", "_") + ".pdf")
        path.write_bytes(rendered.data)
        return path

    return made


@pytest.fixture(scope="session")
def tool() -> Callable[..., str]:
    """A function: runs a program and gives what it printed."""

    def run(*words: object) -> str:
        return subprocess.run([str(word) for word in words], capture_output=True, text=True, check=True).stdout

    return run


CLIENTS = ["C1", "C2", "C3", "C4", "C5", "C6"]


@pytest.fixture(scope="session")
def demo() -> dict[tuple[str, str], Handout]:
    """(client, kind of sheet) to every handout of the demo's clients, each by the first of their plans."""
    studio = read_studio(carried.demo_studio(), carried.starter_texts())
    made = {}
    for code in CLIENTS:
        client = studio.clients[code]
        choice = client.facts.plans[0]
        version = choice.version or max(v for plan, v in studio.plans if plan == choice.plan)
        session = fit(
            client, studio.plans[choice.plan, version], studio.exercises, studio.facts,
            previous=studio.plans.get((choice.plan, version - 1)), today=datetime.date(2029, 1, 8), history=(),
        )  # fmt: skip
        made.update({(code, kind): word_sheet(kind, session) for kind in SHEET_KINDS})
    return made
