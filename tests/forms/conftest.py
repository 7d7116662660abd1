"""Rendered sheets, each made once in a test run."""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any

import pytest

from handouts.forms import Look
from handouts.forms import print as print_form
from handouts.models import PrintForm
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
