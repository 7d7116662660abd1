"""What `make` says and leaves undone where care is asked for."""

import json
import shutil

import pytest
from click.testing import CliRunner

from handouts import carried
from handouts.cli import main


@pytest.fixture
def make_with(tmp_path):
    """`make` for one client of the demo, with lines put before 'plans:' of their file."""

    def run(code, lines, *words):
        folder = tmp_path / "studio"
        shutil.copytree(carried.demo_studio(), folder)
        client = folder / "clients" / f"{code}.yaml"
        client.write_text(client.read_text("utf-8").replace("plans:\n", f"{lines}plans:\n", 1), "utf-8")
        out = tmp_path / "out"
        asked = ["make", code, "--studio", folder, "--out", out, "--as", "screen", *words]
        return CliRunner().invoke(main, [str(word) for word in asked]), out

    return run


def test_what_was_asked_and_what_was_taken_stand_in_the_json_report(make_with):
    result, _ = make_with("C3", "", "--report", "json")
    files = json.loads(result.stdout)
    assert len(files) == 3
    for file in files:
        press = next(load for load in file["loads"] if load["exercise"] == "floor-press")
        assert press == {"exercise": "floor-press", "side": "", "asked": "6 kg each", "chosen": "5 kg each hand"}
        assert any("a pair of 5 kg is the heaviest there" in remark["what"] for remark in file["remarks"])
        assert {remark["strength"] for remark in file["remarks"]} <= {"note", "eye"}


def test_no_sheet_before_the_answer_that_a_care_needs(make_with):
    result, out = make_with("C2", "care:\n  - recent eye surgery\n")
    assert result.exit_code == 2
    assert "no sheet is made for C2: care 1 in clients/C2.yaml needs an answer first; ask the eye surgeon" in result.stderr
    assert not list(out.rglob("*.html"))
    assert "surgery" not in result.stdout + result.stderr.replace("eye surgeon", "")


def test_opposites_stop_the_sheet_and_are_told(make_with):
    care = "care:\n" + "".join(
        f"  - care: {name}\n    advised by: A doctor\n    since: 2029-01-02\n" for name in ("trains seated", "sore from sitting")
    )
    result, out = make_with("C2", care)
    assert result.exit_code == 2
    assert "care 1 allows the position seated alone, and care 2 leaves it out" in result.stderr
    assert not list(out.rglob("*.html"))


def test_a_reminder_leaves_the_sheet_and_needs_the_trainers_eye(make_with):
    result, out = make_with("C2", "care:\n  - unsure balance\n")
    assert result.exit_code == 1
    assert "Look at C2, P2 version 2: care 1 in clients/C2.yaml: ask the doctor or physiotherapist" in result.stderr
    assert list(out.rglob("*.html"))
