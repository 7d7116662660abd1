"""The demo studio, its real files in a folder of its own."""

from __future__ import annotations

import datetime
import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from handouts import carried
from handouts.cli import main
from handouts.models import Studio
from handouts.reading.log import COLUMNS, LATER_COLUMNS
from handouts.reading.studio import read_studio

TODAY = datetime.date(2029, 1, 20)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A studio folder like the demo's."""
    place = tmp_path / "studio"
    shutil.copytree(carried.demo_studio(), place)
    return place


@pytest.fixture
def run(folder: Path, monkeypatch: pytest.MonkeyPatch) -> Callable[..., Result]:
    """`handouts ...` in that folder, on 20 January 2029 or another day."""

    def of(*words: str, on: datetime.date = TODAY) -> Result:
        noon = datetime.datetime.combine(on, datetime.time(12), datetime.UTC)
        monkeypatch.setenv("SOURCE_DATE_EPOCH", str(int(noon.timestamp())))
        return CliRunner().invoke(main, [*words, "--studio", str(folder)], catch_exceptions=False)

    return of


@pytest.fixture
def log(folder: Path) -> Callable[[str, str], None]:
    """Puts a log in the place of a client's: lines of cells, the header left out."""

    def write(client: str, lines: str) -> None:
        columns = len(COLUMNS) + len(LATER_COLUMNS)
        rows = [row + "," * (columns - 1 - row.count(",")) for row in lines.strip().splitlines()]
        text = "\n".join([",".join(COLUMNS + LATER_COLUMNS), *rows]) + "\n"
        (folder / "logs" / f"{client}.csv").write_text(text, "utf-8")

    return write


@pytest.fixture(scope="session")
def demo() -> Studio:
    return read_studio(carried.demo_studio(), carried.starter_texts())
