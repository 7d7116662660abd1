"""Whatever a file holds, checking it ends with findings at true places and no traceback."""

from __future__ import annotations

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from handouts.errors import StudioFaults
from handouts.wording.checking import Checked, check_one
from handouts.wording.reports.json import report_json
from handouts.wording.reports.sarif import report_sarif
from handouts.wording.reports.text import report_text
from handouts.wording.settings import Settings

# Pieces that mean something to one check or another, glued in any order.
PIECES = [
    "---\n", "title: Row\n", "sides: each\n", "clock: wall\n", "language: fr\n", "equipment:\n  - dumbbell\n", "# ", "## Count\n", "## Start position\n",
    "## Finish\n", "## Compte\n", "1. ", "- ", "> ", "\n", "\n\n", " ", "**", "*", "`", "```\n", "    ", "[a](b)", "<b>", "<!-- ", "-->",
    "<!-- allow pointing: why -->", "<!-- allow vague -->", "2 o'clock", "10 and 2 o’clock", "12 o'clock is the ceiling", "13 o'clock", "half past one o'clock",
    "slightly ", "left foot ", "right knee ", "outward ", "on the bench", "on the floor", "45 degrees, ", "your hand ", "here", "like this", "regardez-moi",
    "à 10 heures ", "le pied gauche ", "vers l’extérieur ", "à votre droite ", ". ", ", ", "; ", ": ", "?", "…", "é", "𝔞", "👣", "\u00a0", "\t", "a" * 60, "word " * 30,
]  # fmt: skip
TEXTS = st.lists(st.one_of(st.sampled_from(PIECES), st.text(max_size=5)), max_size=40).map("".join)


@pytest.mark.parametrize("language", ["", "en", "fr"])
@settings(max_examples=150, deadline=None)
@given(text=TEXTS)
def test_findings_of_any_text_are_at_true_places(language, text):
    text = text.replace("\r", "\n").replace("\0", "")
    try:
        checked = check_one(text, "text.md", Settings(), language)
    except StudioFaults as problem:
        assert problem.faults
        return
    lines = text.split("\n")
    for finding in (*checked.findings, *(allowed.finding for allowed in checked.allowed)):
        assert 0 <= finding.start <= finding.end <= len(text)
        assert text[finding.start : finding.end] == finding.words
        assert finding.start == sum(len(line) + 1 for line in lines[: finding.line - 1]) + finding.column - 1
        assert finding.end == sum(len(line) + 1 for line in lines[: finding.end_line - 1]) + finding.end_column - 1
        assert finding.why and finding.suggest
    report = Checked((checked,), ())
    assert all("\n" not in line for line in report_text(report))
    json.loads(report_json(report))
    json.loads(report_sarif(report))
