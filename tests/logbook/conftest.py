"""The demo studio for the logbook: real files, read by the real readers."""

from __future__ import annotations

import datetime
import shutil
from collections.abc import Callable, Iterable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from handouts import carried
from handouts.cli import main
from handouts.logbook.known import known_of
from handouts.logbook.message import Known
from handouts.models import LogLine, Studio
from handouts.reading.studio import read_studio

TODAY = datetime.date(2029, 1, 20)


@pytest.fixture(scope="session")
def demo() -> Studio:
    return read_studio(carried.demo_studio(), carried.starter_texts())


@pytest.fixture(scope="session")
def known(demo: Studio) -> Callable[..., Known]:
    """What the studio knows of a client on a day, with the log so far."""

    def of(code: str, today: datetime.date = TODAY, history: Iterable[LogLine] = (), waiting: int = 0) -> Known:
        return known_of(demo, demo.clients[code], tuple(history), today, waiting)

    return of


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A studio folder like the demo's, with nothing in its logs yet."""
    place = tmp_path / "studio"
    shutil.copytree(carried.demo_studio(), place)
    shutil.rmtree(place / "logs")
    return place


@pytest.fixture
def run(folder: Path, monkeypatch: pytest.MonkeyPatch) -> Callable[..., Result]:
    """`handouts ...` in that folder, on 20 January 2029."""
    noon = datetime.datetime.combine(TODAY, datetime.time(12), datetime.UTC)
    monkeypatch.setenv("SOURCE_DATE_EPOCH", str(int(noon.timestamp())))

    def of(*words: str, say: str = "") -> Result:
        return CliRunner().invoke(main, [*words, "--studio", str(folder)], input=say, catch_exceptions=False)

    return of
