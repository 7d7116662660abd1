"""What the tests of the wording checker share."""

from __future__ import annotations

from pathlib import Path

import pytest

from handouts.wording.checking import check_one
from handouts.wording.settings import Settings
from handouts.wording.whole_text.document import Document, read_facts

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture
def document():
    """A document from a text, in the language of its front matter."""

    def read(text: str) -> Document:
        facts = read_facts(text, "text.md")
        return Document(text, facts.language or "en", facts)

    return read


@pytest.fixture
def found():
    """The names of the checks that find something in a text as a whole, by their place."""

    def names(text: str, **settings) -> list[str]:
        checked = check_one(text, "text.md", Settings(**settings))
        return [finding.name for finding in checked.findings if finding in checked.whole_text]

    return names


@pytest.fixture(scope="session")
def starter_texts() -> list[Path]:
    return sorted((ROOT / "exercise_texts").glob("*.md"))
