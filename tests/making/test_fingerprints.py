"""Only what changed is made again, and the reason can be asked for."""

import json
import shutil

import pytest
from click.testing import CliRunner

from handouts import carried
from handouts.cli import main
from handouts.making.fingerprints import RECORD_NAME, Record, fingerprint


def run(studio, *words):
    out = studio / "out"
    result = CliRunner().invoke(main, ["make", "--studio", str(studio), "--out", str(out), "--as", "screen",
                                       "--jobs", "1", "--report", "json", *words])
    assert result.exit_code in (0, 1), (result.stderr, result.exception)
    return {(file["client"], file["sheet"]): file["why"] for file in json.loads(result.stdout)}


@pytest.fixture
def studio(tmp_path):
    folder = tmp_path / "studio"
    shutil.copytree(carried.demo_studio(), folder)
    run(folder)
    return folder


def edit(path, old, new):
    text = path.read_text("utf-8")
    assert old in text
    path.write_text(text.replace(old, new), "utf-8")


def remade(whys):
    return {client for (client, _), why in whys.items() if why}


def test_the_first_run_makes_everything_and_says_so(tmp_path):
    folder = tmp_path / "studio"
    shutil.copytree(carried.demo_studio(), folder)
    assert set(run(folder).values()) == {"it was not made before"}


def test_nothing_changed_touches_nothing(studio):
    before = {path: path.stat().st_mtime_ns for path in studio.rglob("*")}
    assert set(run(studio).values()) == {""}
    assert {path: path.stat().st_mtime_ns for path in studio.rglob("*") if path != studio / "out"} == {
        path: time for path, time in before.items() if path != studio / "out"
    }


def test_one_changed_text_remakes_exactly_the_sheets_that_use_it(studio):
    own = studio / "exercise_texts" / "split-squat.md"
    own.parent.mkdir(exist_ok=True)
    for name in ("split-squat.md", "split-squat.fr.md"):
        shutil.copy(carried.starter_texts() / name, own.parent / name)
    assert remade(run(studio)) == set()
    edit(own, "## Breathing\n\n", "## Breathing\n\nLet your belly move. ")
    whys = run(studio)
    # Split squat stands in P2: C2, C4 and C6 do it; for C3 it is replaced, and C3 reads French.
    assert {key for key, why in whys.items() if why} == {("C2", "sheet"), ("C4", "sheet"), ("C6", "sheet")}
    assert whys["C2", "sheet"] == "changed: text split-squat"


def test_a_changed_client_file_remakes_that_client_alone(studio):
    edit(studio / "clients" / "C6.yaml", "name: Kofi", "name: Kofi B.")
    whys = run(studio)
    assert remade(whys) == {"C6"}
    assert "client file" in whys["C6", "sheet"]


def test_a_note_that_reaches_no_sheet_remakes_nothing(studio):
    client = studio / "clients" / "C1.yaml"
    edit(client, "private: ", "private: Called today. ")
    assert remade(run(studio)) == set()


def test_a_template_of_the_studio_remakes_all_and_is_named(studio):
    own = studio / "templates" / "screen.css.j2"
    own.parent.mkdir(exist_ok=True)
    own.write_text((carried.templates() / "screen.css.j2").read_text("utf-8") + "\nbody { margin-left: 2rem }\n")
    whys = run(studio)
    assert all("templates" in why for why in whys.values())
    assert "margin-left: 2rem" in next((studio / "out").rglob("C4-*-sheet.html")).read_text("utf-8")


def test_a_file_edited_or_taken_away_by_hand_is_made_again(studio):
    sheet = next((studio / "out").rglob("C4-*-sheet.html"))
    good = sheet.read_bytes()
    sheet.write_bytes(good + b"<!-- mine -->")
    card = next((studio / "out").rglob("C4-*-card.html"))
    card.unlink()
    whys = run(studio)
    assert whys["C4", "sheet"] == whys["C4", "card"] == "the file was changed or taken away by hand"
    assert sheet.read_bytes() == good and card.is_file()


def test_afresh_makes_all_and_changes_no_byte(studio):
    before = {path: path.read_bytes() for path in (studio / "out").rglob("*.html")}
    assert set(run(studio, "--afresh").values()) == {"asked for afresh"}
    assert {path: path.read_bytes() for path in (studio / "out").rglob("*.html")} == before


@pytest.mark.parametrize("damage", [b"", b"{", b"[]", b'{"format": 99, "files": {}}', b'{"format": 1, "files": {"a": {}}}', b"\xff\x00"])
def test_a_damaged_record_only_costs_a_remake(studio, damage):
    record = next((studio / "out").rglob(RECORD_NAME))
    record.write_bytes(damage)
    whys = run(studio)
    assert any(whys.values())
    assert json.loads(record.read_bytes())["files"]


def test_fingerprints_tell_neighbours_apart():
    assert fingerprint("ab", "c") != fingerprint("a", "bc")
    assert fingerprint("a") == fingerprint("a")


def test_why_is_never_empty(tmp_path):
    record = Record(tmp_path)
    assert record.why("x", "1", {})
    (tmp_path / "x").write_bytes(b"words")
    record.add("x", "1", {"plan file": "1"}, 0)
    assert record.why("x", "1", {"plan file": "1"})
    assert record.why("x", "2", {"plan file": "2"}) == "changed: plan file"
    assert record.why("x", "2", {"plan file": "1"})
