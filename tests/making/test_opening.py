"""Opening a studio: older and newer formats, and who else can read it."""

import os
import shutil
import stat
import subprocess
import sys
import tempfile
from pathlib import Path

import pytest

from handouts import carried
from handouts.errors import StudioFaults, StudioNotFound
from handouts.making.opening import TOLD, open_studio, point_out_open
from handouts.reading.studio import read_studio
from handouts.reading.upgrades import Step, format_of, newest, refuse_newer, upgraded


def _other_key(files):
    """An invented step: a later format writes "trainer" for "coach"."""
    return {"studio.yaml": files["studio.yaml"].replace("coach:", "trainer:")}


def _other_client(files):
    return {path: f"# new\n{text}" for path, text in files.items() if path.startswith("clients/")}


STEPS = (Step(2, _other_key), Step(3, _other_client))


@pytest.fixture
def studio(tmp_path):
    folder = tmp_path / "studio"
    shutil.copytree(carried.demo_studio(), folder)
    return folder


def texts(folder):
    return {
        str(path.relative_to(folder)): path.read_text("utf-8")
        for path in folder.rglob("*")
        if path.suffix in (".yaml", ".csv", ".md") and "before-format" not in str(path.relative_to(folder))
    }


def test_a_studio_of_todays_format_is_left_alone(studio):
    before = texts(studio)
    assert open_studio(studio) == (studio, ())
    assert texts(studio) == before


def test_no_studio_is_told(tmp_path):
    with pytest.raises(StudioNotFound, match="handouts start"):
        open_studio(tmp_path)


def test_an_older_studio_is_brought_up_to_date_and_a_copy_kept(studio):
    before = texts(studio)
    folder, told = open_studio(studio / "clients", STEPS)
    assert folder == studio
    after = texts(studio)
    assert "format: 3" in after["studio.yaml"] and "trainer: Ilse" in after["studio.yaml"]
    assert after["studio.yaml"].startswith("# An invented studio.")  # the trainer's notes stay
    assert all(text.startswith("# new\n") for path, text in after.items() if path.startswith("clients/"))
    assert {path: text for path, text in after.items() if path.startswith(("plans/", "logs/"))} == {
        path: text for path, text in before.items() if path.startswith(("plans/", "logs/"))
    }
    copy = studio / "before-format-3"
    assert texts(copy) == before
    assert all(stat.S_IMODE(path.stat().st_mode) == (0o700 if path.is_dir() else 0o600) for path in (copy, *copy.rglob("*")))
    assert len(told) == 1 and "from format 1 to format 3: 7 files" in told[0] and str(copy) in told[0]
    # The second time there is nothing to do.
    assert open_studio(studio, STEPS) == (studio, ())
    assert texts(studio) == after


def test_a_copy_can_be_put_back(studio):
    before = texts(studio)
    open_studio(studio, STEPS)
    shutil.copytree(studio / "before-format-3", studio, dirs_exist_ok=True)
    assert texts(studio) == before
    assert read_studio(studio, carried.starter_texts())


@pytest.mark.parametrize("written", range(8))
def test_an_upgrade_that_is_cut_off_begins_again_from_the_copy(studio, written):
    """Killed after so many files, as after a pulled plug; the next run ends it."""
    before = texts(studio)
    code = (
        "import sys, os; from pathlib import Path; sys.path.insert(0, sys.argv[4])\n"
        "import handouts.making.opening as opening\n"
        "from handouts.reading.upgrades import Step\n"
        "left = int(sys.argv[2]); write = opening.write_whole\n"
        "def some(path, data):\n"
        "    global left\n"
        "    if not left: os._exit(9)\n"
        "    left -= 1; write(path, data)\n"
        "opening.write_whole = some\n"
        "exec(Path(sys.argv[3]).read_text())\n"
        "opening.open_studio(Path(sys.argv[1]), STEPS)"
    )
    steps = studio.parent / "steps.py"
    steps.write_text(
        "def a(files): return {'studio.yaml': files['studio.yaml'].replace('coach:', 'trainer:')}\n"
        "def b(files): return {p: '# new\\n' + t for p, t in files.items() if p.startswith('clients/')}\n"
        "STEPS = (Step(2, a), Step(3, b))\n"
    )
    root = Path(__file__).resolve().parents[2]
    ended = subprocess.run([sys.executable, "-c", code, str(studio), str(written), str(steps), str(root)], capture_output=True, text=True)
    assert ended.returncode == (9 if written < 7 else 0), ended.stderr
    open_studio(studio, STEPS)
    after = texts(studio)
    assert all(text.count("# new\n") == 1 for path, text in after.items() if path.startswith("clients/"))
    assert "format: 3" in after["studio.yaml"]
    assert texts(studio / "before-format-3") == before


def test_a_step_that_cannot_understand_a_file_changes_nothing(studio):
    def fails(files):
        raise StudioFaults(())

    before = texts(studio)
    with pytest.raises(StudioFaults):
        open_studio(studio, (Step(2, fails),))
    assert texts(studio) == before


def test_a_newer_studio_is_refused_and_left_alone(studio):
    file = studio / "studio.yaml"
    file.write_text(file.read_text("utf-8").replace("format: 1", "format: 7"), "utf-8")
    before = texts(studio)
    for refuse in (lambda: open_studio(studio), lambda: read_studio(studio, carried.starter_texts())):
        with pytest.raises(StudioFaults) as caught:
            refuse()
        (fault,) = caught.value.faults
        assert str(fault) == (
            "studio.yaml:3: this studio has format 7, and this program reads formats up to 1; "
            "bring the program up to date; nothing in the studio was changed"
        )
    assert texts(studio) == before


def test_what_a_studio_file_says_of_its_format():
    assert format_of("format: 3\nname: x\n") == (3, 1)
    assert format_of("name: x\nformat: '12'\n") == (12, 2)
    assert format_of("name: x\n")[0] == 1  # the first format did not need the line
    for broken in ("format: [1]\n", "format: one\n", "format: -1\n", "format: 99999\n", "[", "format: ٣\n"):
        assert format_of(broken) == (0, 0)
        refuse_newer(broken)  # a fault for the reader
    assert newest(()) == 1 and newest(STEPS) == 3


def test_a_studio_file_without_the_line_gets_one():
    changed = upgraded({"studio.yaml": "name: x\n"}, (Step(2, lambda files: {}),))
    assert changed == {"studio.yaml": "format: 2\nname: x\n"}


def test_only_the_steps_ahead_are_taken():
    steps = (Step(2, lambda files: {"a": files["a"] + "2"}), Step(3, lambda files: {"a": files["a"] + "3"}))
    assert upgraded({"studio.yaml": "format: 2\n", "a": ""}, steps) == {"studio.yaml": "format: 3\n", "a": "3"}
    assert upgraded({"studio.yaml": "format: 1\n", "a": ""}, steps) == {"studio.yaml": "format: 3\n", "a": "23"}
    assert upgraded({"studio.yaml": "format: 3\n", "a": ""}, steps) == {}
    with pytest.raises(StudioFaults, match="formats up to 3"):
        upgraded({"studio.yaml": "format: 4\n"}, steps)


# --- who else can read it ------------------------------------------------------------


def open_up(folder):
    for path in (folder, *folder.rglob("*")):
        path.chmod(0o755 if path.is_dir() else 0o644)


def test_an_open_studio_is_pointed_out_once(studio):
    open_up(studio)
    (told,) = point_out_open(studio, studio)
    files = len([path for name in ("clients", "logs") for path in (studio / name).iterdir()])
    assert told == (
        f"Others on this machine can read clients/C1.yaml and {files - 1} more; "
        f"close the studio to them with: chmod -R go= '{studio}'"
    )
    assert point_out_open(studio, studio) == ()
    assert stat.S_IMODE((studio / TOLD).stat().st_mode) == 0o600


def test_it_is_told_again_when_it_comes_back(studio):
    open_up(studio)
    point_out_open(studio, studio)
    subprocess.run(["chmod", "-R", "go=", str(studio)], check=True)  # as the message says
    assert point_out_open(studio, studio) == ()
    assert not (studio / TOLD).exists()
    open_up(studio)
    assert len(point_out_open(studio, studio)) == 1


@pytest.mark.parametrize("closed", [".", "clients logs", "files"])
def test_a_studio_that_nobody_can_come_to_is_no_matter(studio, closed):
    open_up(studio)
    if closed == "files":
        for path in studio.rglob("*.*"):
            path.chmod(0o640)
    else:
        for name in closed.split():
            (studio / name).chmod(0o750)
    assert point_out_open(studio, studio) == ()


def test_one_open_sheet_is_enough(studio):
    open_up(studio)
    for name in ("clients", "logs"):
        (studio / name).chmod(0o700)
    sheet = studio / "out" / "C1" / "sheet.html"
    sheet.parent.mkdir(parents=True)
    sheet.write_text("x")
    open_up(studio / "out")
    (told,) = point_out_open(studio, studio)
    assert "can read out/C1/sheet.html; close" in told


def test_a_folder_above_that_is_closed_closes_all(tmp_path, studio):
    open_up(studio)
    tmp_path.chmod(0o700)
    assert point_out_open(studio, tmp_path) == ()
    tmp_path.chmod(0o755)
    assert len(point_out_open(studio, tmp_path)) == 1


def test_the_demo_is_invented_and_not_pointed_out():
    assert point_out_open(carried.demo_studio()) == ()


def test_make_says_it_once_on_standard_error():
    # Not below pytest's own folder, which is closed to others.
    with tempfile.TemporaryDirectory(dir="/tmp") as place:
        os.chmod(place, 0o755)
        studio = Path(place) / "studio"
        shutil.copytree(carried.demo_studio(), studio)
        open_up(studio)
        words = [sys.executable, "-m", "handouts", "make", "C4", "--as", "screen", "--studio", str(studio)]
        first, second = (
            subprocess.run(words, capture_output=True, text=True, cwd=Path(__file__).resolve().parents[2]) for _ in range(2)
        )
    assert first.stderr.startswith("Others on this machine can read clients/C1.yaml and ")
    assert "chmod -R go=" not in second.stderr
