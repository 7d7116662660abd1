"""Findings as SARIF, for code hosts and editors.

Source of the format: OASIS Standard "Static Analysis Results Interchange
Format (SARIF) Version 2.1.0", sections 3.13 to 3.30 and 3.49.
"""

from __future__ import annotations

import json
import os
from pathlib import Path, PurePath
from typing import Any
from urllib.parse import quote

from handouts import __version__
from handouts.errors import Fault
from handouts.wording.checking import Checked, Finding
from handouts.wording.reports.explain import explained

_SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"
_LEVELS = {"blocks": "error", "advice": "warning"}


def report_sarif(checked: Checked) -> str:
    """One SARIF log with one run."""
    rules = [
        {
            "id": entry.name,
            "shortDescription": {"text": entry.what},
            "fullDescription": {"text": entry.why},
            "defaultConfiguration": {"level": _LEVELS[entry.strength]},
            "properties": {"strength": entry.strength},
        }
        for entry in explained()
    ]
    index = {str(rule["id"]): number for number, rule in enumerate(rules)}
    results = []
    for text in checked.texts:
        results += [_result(text.path, finding, index) for finding in text.findings]
        for finding, reason in text.allowed:
            suppression = {"kind": "inSource", "justification": reason}
            results.append({**_result(text.path, finding, index), "suppressions": [suppression]})
    run: dict[str, Any] = {
        "tool": {
            "driver": {"name": "handouts", "version": __version__, "semanticVersion": __version__, "rules": rules}
        },
        "columnKind": "unicodeCodePoints",
        "invocations": [
            {
                "executionSuccessful": not checked.faults,
                "exitCode": checked.exit_status,
                "toolExecutionNotifications": [_notification(fault) for fault in checked.faults],
            }
        ],
        "results": results,
    }
    return json.dumps({"$schema": _SCHEMA, "version": "2.1.0", "runs": [run]}, ensure_ascii=False, indent=2)


def _result(path: str, finding: Finding, index: dict[str, int]) -> dict[str, Any]:
    region: dict[str, Any] = {
        "startLine": finding.line,
        "startColumn": finding.column,
        "endLine": finding.end_line,
        "endColumn": finding.end_column,
        "charOffset": finding.start,
        "charLength": finding.end - finding.start,
        "snippet": {"text": finding.words},
    }
    result: dict[str, Any] = {
        "ruleId": finding.name,
        "ruleIndex": index[finding.name],
        "level": _LEVELS[finding.strength],
        "message": {"text": f"{finding.why} {finding.suggest}"},
        "locations": [{"physicalLocation": {"artifactLocation": {"uri": _uri(path)}, "region": region}}],
    }
    if finding.rewrite is not None:
        deleted = {key: region[key] for key in ("startLine", "startColumn", "endLine", "endColumn")}
        replacement = {"deletedRegion": deleted, "insertedContent": {"text": finding.rewrite}}
        change = {"artifactLocation": {"uri": _uri(path)}, "replacements": [replacement]}
        result["fixes"] = [{"description": {"text": f"Write '{finding.rewrite}'."}, "artifactChanges": [change]}]
    return result


def _notification(fault: Fault) -> dict[str, Any]:
    physical: dict[str, Any] = {"artifactLocation": {"uri": _uri(fault.path)}}
    if fault.line:
        physical["region"] = {"startLine": fault.line}
    return {
        "level": "error",
        "message": {"text": f"{fault.wrong}; {fault.instead}."},
        "locations": [{"physicalLocation": physical}],
    }


def _uri(path: str) -> str:
    """A path as a URI: relative ones stay relative to where the run took place."""
    if path == "-":
        return "stdin"
    if os.path.isabs(path):
        return Path(path).as_uri()
    return quote(PurePath(os.path.normpath(path)).as_posix())
