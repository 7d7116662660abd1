"""The starter library passes its own checker: no blocking mark, and no advice without a reason."""

from __future__ import annotations

from pathlib import Path

import pytest

from handouts.wording.checking import check_all

ROOT = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="module")
def checked():
    return check_all([str(ROOT / "exercise_texts")])


def test_the_whole_library_is_checked(checked, starter_texts):
    assert checked.faults == ()
    assert [Path(text.path) for text in checked.texts] == starter_texts
    assert len(starter_texts) > 40


def test_no_finding_stands_without_a_reason(checked):
    found = [
        f"{Path(text.path).name}:{finding.line} {finding.name} {finding.words!r}"
        for text in checked.texts
        for finding in text.findings
    ]
    assert found == []


def test_nothing_that_blocks_is_let_stand(checked):
    allowed = [one for text in checked.texts for one in text.allowed]
    assert all(one.finding.strength == "advice" and len(one.reason.split()) >= 3 for one in allowed)


def test_the_french_texts_are_checked_as_french(checked):
    assert all((text.language == "fr") == text.path.endswith(".fr.md") for text in checked.texts)
