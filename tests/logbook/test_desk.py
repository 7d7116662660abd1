"""The desk: one line for each thing that waits, the gravest first."""

import shutil

import pytest
from click.testing import CliRunner

from handouts import carried
from handouts.cli import main


def run(*words):
    return CliRunner().invoke(main, [str(word) for word in words])


@pytest.fixture
def studio(tmp_path):
    folder = tmp_path / "studio"
    shutil.copytree(carried.starter_studio(), folder)
    client = folder / "clients" / "example.yaml"
    client.write_text(
        client.read_text("utf-8") + "\nscreening:\n  date: 2026-01-01\n  by: Ilse\n  outcome: cleared\n", "utf-8"
    )
    return folder


def desk(studio):
    result = CliRunner().invoke(main, ["desk", "--studio", str(studio)], env={"SOURCE_DATE_EPOCH": "1767312000"})
    return result.exit_code, result.stdout.strip().split("\n")


def test_an_empty_desk_says_so(studio):
    assert desk(studio) == (0, ["Nothing waits for you."])


def test_a_warning_sign_waits_until_it_is_answered(studio):
    run("log", "example", "--studio", studio, "--date", "2025-12-30", "--exercise", "goblet-squat",
        "--weight", "5 kg", "--reps", "8/8", "--warning", "pain in the right knee")
    status, lines = desk(studio)
    assert status == 1 and lines[0].startswith("Warning sign of example, 2025-12-30")
    number = lines[0].split("--answer ")[1].split()[0]
    assert run("log", "example", "--studio", studio, "--answer", number, "seen, lighter from now on").exit_code == 0
    assert not any(line.startswith("Warning sign") for line in desk(studio)[1])


def test_a_readers_question_waits_at_its_text(studio):
    run("log", "example", "--studio", studio, "--date", "2025-12-30", "--exercise", "goblet-squat",
        "--weight", "5 kg", "--reps", "8/8", "--question", "Which end of the dumbbell is up?")
    assert any(line.startswith("Question at") and "Which end" in line for line in desk(studio)[1])


def test_a_log_in_doubt_and_a_fault_wait(studio):
    run("log", "example", "--studio", studio, "--text", "goblet squat, fifty kilos, eight", "--later")
    (studio / "plans" / "other-v1.yaml").write_text("plan: other\n", "utf-8")
    _, lines = desk(studio)
    assert any(line.startswith("Log of example is not settled") for line in lines)
    assert any(line.startswith("Fault in plans/other-v1.yaml") for line in lines)
    assert lines[-1].endswith("on your desk.")
