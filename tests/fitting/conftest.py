"""The demo studio with the starter library, read once by the program's own reader."""

from __future__ import annotations

import pytest

from handouts import carried
from handouts.models import Studio
from handouts.reading import read_studio


@pytest.fixture(scope="session")
def demo() -> Studio:
    return read_studio(carried.demo_studio(), carried.starter_texts())
