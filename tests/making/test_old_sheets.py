"""Sheets of an earlier run, where this run makes none: named, and left alone."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner

from handouts import carried
from handouts.cli import main

SURGERY = "care:\n  - recent eye surgery\n"


@pytest.fixture
def folder(tmp_path):
    place = tmp_path / "studio"
    shutil.copytree(carried.demo_studio(), place)
    return place


def make(folder, *words):
    return CliRunner().invoke(main, ["make", *words, "--studio", str(folder), "--as", "screen"])


def with_lines(folder, code, lines):
    client = folder / "clients" / f"{code}.yaml"
    client.write_text(client.read_text("utf-8").replace("plans:\n", f"{lines}plans:\n", 1), "utf-8")


def lines_of(text):
    return [line for line in text.splitlines() if line.startswith("Old:")]


def test_a_care_that_stops_a_sheet_names_the_old_ones(folder):
    assert make(folder, "C2").exit_code == 0
    files = {path: path.read_bytes() for path in sorted((folder / "out" / "C2").rglob("*.html"))}
    assert len(files) == 3
    with_lines(folder, "C2", SURGERY)
    result = make(folder, "C2")
    assert result.exit_code == 2
    (line,) = lines_of(result.stdout)
    assert "of C2 3 older files from an earlier run still there" in line and "do not hand out" in line
    for path, data in files.items():
        assert str(path) in line
        assert path.read_bytes() == data
    assert "surgery" not in line


def test_the_version_before_is_named_too_and_other_plans_are_not(folder):
    client = folder / "clients" / "C2.yaml"
    text = client.read_text("utf-8")
    client.write_text(text.replace("version: 2", "version: 1"), "utf-8")
    make(folder, "C2")
    other = folder / "out" / "C2" / "P1-v1"
    other.mkdir()
    (other / "C2-P1-v1-sheet.html").write_text("another plan")
    client.write_text(text, "utf-8")
    with_lines(folder, "C2", SURGERY)
    (line,) = lines_of(make(folder, "C2").stdout)
    assert "C2-P2-v1-sheet.html" in line and "P1-v1" not in line


def test_faults_in_a_clients_file_name_the_old_sheets(folder):
    make(folder, "C6")
    with_lines(folder, "C6", "nonsense: 3\n")
    result = make(folder, "C6")
    assert result.exit_code == 2
    (line,) = lines_of(result.stdout)
    assert "C6-P2-v1-sheet.html" in line


def test_nothing_is_said_where_nothing_is_old(folder):
    with_lines(folder, "C2", SURGERY)
    assert lines_of(make(folder, "C2").output) == []
    assert lines_of(make(folder, "C6").output) == []
    assert lines_of(make(folder, "C6").output) == []


def test_json_and_quiet_say_it_beside_the_report(folder):
    make(folder, "C2")
    with_lines(folder, "C2", SURGERY)
    for words in (("--report", "json"), ("--quiet",)):
        result = make(folder, "C2", *words)
        assert lines_of(result.stdout) == [] and len(lines_of(result.stderr)) == 1


def test_links_and_the_report_of_progress_are_left_out(folder, tmp_path):
    make(folder, "C2")
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    (elsewhere / "secret.html").write_text("not ours")
    (folder / "out" / "C2" / "P2-v9").symlink_to(elsewhere)
    progress = folder / "out" / "C2" / "progress"
    progress.mkdir()
    Path(progress / "C2-progress.html").write_text("a report")
    with_lines(folder, "C2", SURGERY)
    (line,) = lines_of(make(folder, "C2").stdout)
    assert "secret" not in line and "progress" not in line
