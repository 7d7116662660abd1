"""The commands, end to end on real folders through the real libraries."""

import datetime
import json
import shutil
import stat
import subprocess
import sys
from pathlib import Path

import pikepdf
import pytest
from click.testing import CliRunner

from handouts import carried
from handouts.cli import main

DEMO_FORMS = {"C1": {"print"}, "C2": {"braille"}, "C3": {"braille"}, "C4": {"screen", "braille"}, "C5": {"print"}, "C6": {"print"}}


def run(*words, **more):
    return CliRunner().invoke(main, [str(word) for word in words], **more)


@pytest.fixture
def studio(tmp_path):
    """A copy of the demo studio that a test may spoil."""
    folder = tmp_path / "studio"
    shutil.copytree(carried.demo_studio(), folder)
    return folder


@pytest.fixture(scope="module")
def demo(tmp_path_factory):
    out = tmp_path_factory.mktemp("demo")
    result = run("make", "--studio", carried.demo_studio(), "--out", out, "--report", "json")
    return out, result


def test_the_demo_makes_every_client_in_their_own_forms(demo):
    _, result = demo
    assert result.exit_code in (0, 1), result.stderr
    files = json.loads(result.stdout)
    forms = {}
    for file in files:
        forms.setdefault(file["client"], set()).add(file["form"])
        assert Path(file["path"]).is_file()
    assert forms == DEMO_FORMS


def test_the_json_report_is_one_list_with_what_was_promised(demo):
    _, result = demo
    for file in json.loads(result.stdout):
        assert {"client", "plan", "form", "path", "pages", "seconds"} <= file.keys()
        assert file["seconds"] > 0
        assert (file["pages"] > 0) == (file["form"] != "screen")


def test_the_pages_told_are_the_pages_there(demo):
    _, result = demo
    for file in json.loads(result.stdout):
        data = Path(file["path"]).read_bytes()
        if file["form"] == "print":
            with pikepdf.open(file["path"]) as pdf:
                assert len(pdf.pages) == file["pages"]
        elif file["form"] == "braille":
            assert data.count(b"\x0c") == file["pages"]


def test_a_card_alone_is_made_where_the_client_asked_for_it(demo):
    out, _ = demo
    made = {path.name for path in (out / "C4" / "P2-v1").iterdir()}
    assert {"C4-P2-v1-card.brf", "C4-P2-v1-sheet.html"} <= made
    assert "C4-P2-v1-sheet.brf" not in made


def test_what_is_made_is_readable_by_its_owner_alone(demo):
    out, _ = demo
    for path in out.rglob("*"):
        assert stat.S_IMODE(path.stat().st_mode) == (0o700 if path.is_dir() else 0o600), path


def test_the_same_input_gives_the_same_bytes_and_touches_nothing(studio, tmp_path):
    out = tmp_path / "out"
    run("make", "C4", "C6", "--studio", studio, "--out", out)
    first = {path: (path.read_bytes(), path.stat().st_mtime_ns) for path in out.rglob("*") if path.is_file()}
    assert first
    run("make", "C4", "C6", "--studio", studio, "--out", out)
    assert {path: (path.read_bytes(), path.stat().st_mtime_ns) for path in out.rglob("*") if path.is_file()} == first


def test_only_what_is_asked_is_made(studio, tmp_path):
    out = tmp_path / "out"
    result = run("make", "C2", "--studio", studio, "--out", out, "--as", "screen")
    assert result.exit_code in (0, 1), result.stderr
    assert {path.suffix for path in out.rglob("C2-*")} == {".html"}
    assert [path.name for path in out.iterdir()] == ["C2"]


def test_a_plan_can_be_asked_for(studio, tmp_path):
    out = tmp_path / "out"
    run("make", "P3", "--studio", studio, "--out", out, "--as", "screen")
    assert [path.name for path in out.iterdir()] == ["C5"]


def test_an_unknown_name_or_form_is_told_with_the_nearest(studio):
    result = run("make", "P22", "--studio", studio)
    assert result.exit_code == 2 and "'P22'" in result.stderr and "did you mean 'P2'?" in result.stderr
    result = run("make", "--as", "print,paper", "--studio", studio)
    assert result.exit_code == 2 and "'paper'" in result.stderr and "screen" in result.stderr


def test_a_line_for_each_file_and_a_summary(studio, tmp_path):
    result = run("make", "C6", "--studio", studio, "--out", tmp_path / "out")
    lines = result.stdout.strip().split("\n")
    assert [line.split()[:3] for line in lines[:-1]] == [
        ["C6", "print", "sheet,"], ["C6", "print", "card,"], ["C6", "print", "log,"],
    ]
    assert lines[-1].startswith("3 files made for 1 client.")


def test_quiet_says_only_what_needs_the_trainer(studio, tmp_path):
    result = run("make", "C5", "--studio", studio, "--out", tmp_path / "out", "--quiet")
    assert result.stdout == ""
    assert "Note for" not in result.stderr


def test_remarks_go_to_standard_error_and_name_the_client(studio, tmp_path):
    result = run("make", "C3", "--studio", studio, "--out", tmp_path / "out")
    assert any(line.startswith("Note for C3") and "5 kg" in line for line in result.stderr.split("\n"))


def test_one_bad_client_does_not_stop_the_others(studio, tmp_path):
    client = studio / "clients" / "C6.yaml"
    client.write_text(client.read_text("utf-8").replace("level:", "levle:").replace("units: lb", "units: stone"), "utf-8")
    out = tmp_path / "out"
    result = run("make", "C4", "C6", "--studio", studio, "--out", out, "--as", "screen")
    assert result.exit_code == 2
    assert (out / "C4").is_dir() and not (out / "C6").exists()
    assert "clients/C6.yaml:" in result.stderr
    assert "did you mean" in result.stderr or "write" in result.stderr
    assert "C6" in result.stdout.strip().split("\n")[-1]


def test_a_fault_leaves_the_old_sheet_in_place(studio, tmp_path):
    out = tmp_path / "out"
    run("make", "C4", "--studio", studio, "--out", out, "--as", "screen")
    sheet = next(out.rglob("*-sheet.html"))
    before = sheet.read_bytes()
    plan = studio / "plans" / "P2-v1.yaml"
    plan.write_text(plan.read_text("utf-8").replace("goblet-squat", "goblet-sqat"), "utf-8")
    result = run("make", "C4", "--studio", studio, "--out", out, "--as", "screen")
    assert result.exit_code == 2
    assert "no exercise 'goblet-sqat'; did you mean 'goblet-squat'?" in result.stderr
    assert "Traceback" not in result.stderr
    assert sheet.read_bytes() == before


def test_a_shared_fault_is_told_once(studio, tmp_path):
    plan = studio / "plans" / "P2-v1.yaml"
    plan.write_text(plan.read_text("utf-8").replace("rest inside: 20 s", "rest inside: 20"), "utf-8")
    result = run("make", "--studio", studio, "--out", tmp_path / "out", "--as", "screen")
    faults = [line for line in result.stderr.split("\n") if line.startswith("plans/P2-v1.yaml:")]
    assert faults and len(faults) == len(set(faults))


def test_a_missing_bench_brings_in_the_substitute_and_says_so(studio, tmp_path):
    client = studio / "clients" / "C3.yaml"
    client.write_text(client.read_text("utf-8").replace("other: [chair, mat, rail, lane]", "other: [mat, rail, lane]"), "utf-8")
    result = run("make", "C3", "--studio", studio, "--out", tmp_path / "out", "--as", "screen")
    assert "one-arm-supported-row" in result.stderr
    assert result.exit_code in (0, 1)


def test_a_refused_substitution_needs_the_trainers_eye(studio, tmp_path):
    client = studio / "clients" / "C5.yaml"
    text = client.read_text("utf-8")
    assert "limits:" in text
    client.write_text(text.replace("limits:\n", "limits:\n  - demand: overhead\n"), "utf-8")
    result = run("make", "C5", "--studio", studio, "--out", tmp_path / "out", "--as", "screen")
    assert result.exit_code == 1
    assert any(line.startswith("Look at C5") and "seated-press" in line for line in result.stderr.split("\n"))


def test_no_studio_is_told(tmp_path):
    result = run("make", "--studio", tmp_path / "nothing")
    assert result.exit_code == 2
    assert "handouts start" in result.stderr


def test_a_read_only_place_is_told_and_nothing_is_lost(studio, tmp_path):
    out = tmp_path / "out"
    out.write_text("a file where the folder should be")
    result = run("make", "C4", "--studio", studio, "--out", out, "--as", "screen")
    assert result.exit_code == 2
    assert "not written" in result.stderr and "Traceback" not in result.stderr
    assert out.read_text() == "a file where the folder should be"


def test_start_lays_out_a_studio_that_makes_at_once(tmp_path):
    folder = tmp_path / "my-studio"
    result = run("start", folder)
    assert result.exit_code == 0, result.stderr
    assert {path.name for path in folder.iterdir()} == {
        "studio.yaml", "exercise_texts", "clients", "plans", "logs", "templates", "out",
    }
    made = run("make", "--studio", folder)
    assert made.exit_code == 0, made.stderr
    suffixes = {path.suffix for path in (folder / "out").rglob("*") if path.is_file()}
    assert {".pdf", ".html", ".brf"} <= suffixes


def test_start_never_writes_over_anything(tmp_path):
    (tmp_path / "diary.txt").write_text("mine")
    result = run("start", tmp_path)
    assert result.exit_code == 2 and "not empty" in result.stderr
    assert [path.name for path in tmp_path.iterdir()] == ["diary.txt"]


def test_the_studio_is_found_from_below(studio, monkeypatch, tmp_path):
    monkeypatch.chdir(studio / "clients")
    result = run("make", "C4", "--out", tmp_path / "out", "--as", "screen")
    assert result.exit_code in (0, 1), result.stderr


def test_a_missing_library_stops_its_own_form_alone(studio, tmp_path):
    # A fresh process in which no folder holds the module louis.
    code = (
        "import handouts.braille.liblouis as found\n"
        "found._folders = lambda: iter(())\n"
        "from handouts.cli import main; main()"
    )
    words = ["make", "C4", "--studio", str(studio), "--out", str(tmp_path / "out"), "--jobs", "1"]
    result = subprocess.run([sys.executable, "-c", code, *words], capture_output=True, text=True)
    assert result.returncode == 1, result.stderr
    assert "C4 braille card: not made" in result.stderr and "liblouis" in result.stderr
    assert "Traceback" not in result.stderr
    assert list((tmp_path / "out").rglob("*-sheet.html"))
    assert not list((tmp_path / "out").rglob("*.brf"))


def test_today_is_given_from_outside(studio, tmp_path):
    late = datetime.datetime(2029, 6, 1, tzinfo=datetime.UTC).timestamp()
    result = run("make", "C1", "--studio", studio, "--out", tmp_path / "out", "--as", "screen",
                 env={"SOURCE_DATE_EPOCH": str(int(late))})
    assert any(line.startswith("Look at C1") and "2029-05-06" in line for line in result.stderr.split("\n"))


@pytest.mark.parametrize("kind", ["exercise", "exercise words", "plan", "client", "studio"])
def test_the_schema_of_a_file_is_valid_json_schema(kind):
    import jsonschema

    schema = json.loads(run("schema", kind).stdout)
    jsonschema.Draft202012Validator.check_schema(schema)
    assert schema["properties"]
