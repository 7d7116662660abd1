"""Findings as one JSON object, for other programs."""

from __future__ import annotations

import json
from dataclasses import asdict
from typing import Any

from handouts.wording.checking import Checked, CheckedText, Finding


def report_json(checked: Checked) -> str:
    """One object: `files`, each with `path`, `marks`, `whole_text`, `reading`, and `faults` of files.

    `closely` is false of a text that was too long for the close reading.
    Lines and columns count from 1, `start` and `end` from 0; all of them count
    characters of the file (Unicode code points), `end` is exclusive.
    """
    return json.dumps(
        {
            "files": [_text(text) for text in checked.texts],
            "faults": [asdict(fault) for fault in checked.faults],
        },
        ensure_ascii=False,
        indent=2,
    )


def _text(text: CheckedText) -> dict[str, Any]:
    return {
        "path": text.path,
        "language": text.language,
        "marks": [_finding(finding, "kind") for finding in text.marks],
        "whole_text": [_finding(finding, "check") for finding in text.whole_text],
        "allowed": [{**_finding(allowed.finding, "kind"), "reason": allowed.reason} for allowed in text.allowed],
        "reading": text.reading._asdict(),
        "closely": text.closely,
    }


def _finding(finding: Finding, name: str) -> dict[str, Any]:
    fields = finding._asdict()
    return {name: fields.pop("name"), **fields}
