"""A full disk, a folder that may not be written to, a clock that is wrong."""

from __future__ import annotations

import ctypes
import os
import re
import resource
import stat
import subprocess
import sys

import pytest

from tests.hostile.studios import ROOT, add_client, calm, everything, handouts, lay_out

LATE = {"SOURCE_DATE_EPOCH": "1875000000"}  # in June 2029
EARLY = {"SOURCE_DATE_EPOCH": "1862000000"}  # in January 2029


def files_of_at_most(size: int):
    """A disk that is full after so many bytes of any file: the kernel refuses
    the rest (setrlimit(2), RLIMIT_FSIZE)."""

    def limit() -> None:
        resource.setrlimit(resource.RLIMIT_FSIZE, (size, size))

    return limit


def under_the_rights() -> None:
    """In the new process: rights on files hold for the superuser too.

    Linux lets the superuser read and write anywhere by two capabilities
    (capabilities(7)); they are taken out of what a new program may have.
    """
    if sys.platform == "linux" and os.geteuid() == 0:
        drop_from_bounds = 24  # PR_CAPBSET_DROP (prctl(2))
        for capability in (1, 2):  # CAP_DAC_OVERRIDE, CAP_DAC_READ_SEARCH
            assert ctypes.CDLL(None).prctl(drop_from_bounds, capability, 0, 0, 0) == 0


def test_a_disk_that_fills_up_costs_only_what_does_not_fit(tmp_path):
    folder = lay_out(tmp_path / "studio", "C4")
    result = handouts("make", "C4", "--studio", folder, "--jobs", "1", before=files_of_at_most(20_000))
    calm(result)
    made = {path.suffix for path in (folder / "out").rglob("C4-*")}
    assert ".brf" in made and ".html" not in made
    assert result.returncode == 1
    assert re.search(r"C4 screen sheet: not written to .*: File too large; free the place and run this again", result.stderr)
    assert not list((folder / "out").rglob(".unfinished-*"))
    # With room again, the rest is made.
    result = handouts("make", "C4", "--studio", folder, "--jobs", "1")
    assert ".html" in {path.suffix for path in (folder / "out").rglob("C4-*")}


def test_a_disk_that_is_full_leaves_the_old_sheets(tmp_path):
    folder = lay_out(tmp_path / "studio", "C4")
    handouts("make", "C4", "--studio", folder, "--as", "screen", "--jobs", "1")
    before = everything(folder)
    assert [path for path in before if path.endswith(".html")]
    result = handouts("make", "C4", "--studio", folder, "--as", "screen", "--afresh", "--jobs", "1", before=files_of_at_most(0))
    calm(result)
    assert result.returncode == 2 and "not written: File too large; name another folder with --out" in result.stderr
    assert everything(folder) == before


def test_a_log_on_a_full_disk_is_kept_as_it_was(tmp_path):
    folder = lay_out(tmp_path / "studio", "C4")
    before = everything(folder)
    words = ("log", "C4", "--exercise", "goblet-squat", "--reps", "12", "--date", "2029-01-09", "--later", "--studio", folder)
    result = handouts(*words, before=files_of_at_most(10), **LATE)
    calm(result)
    assert result.returncode == 2 and "not written: File too large" in result.stderr and "run this again" in result.stderr
    assert everything(folder) == before


def test_a_start_on_a_full_disk_leaves_nothing_and_can_be_tried_again(tmp_path):
    result = handouts("start", tmp_path / "studio", before=files_of_at_most(100))
    calm(result)
    assert result.returncode == 2 and "not written: File too large" in result.stderr
    assert not (tmp_path / "studio").exists()
    assert handouts("start", tmp_path / "studio").returncode == 0


@pytest.fixture
def closed(tmp_path):
    """A studio in which nothing may be written."""
    folder = lay_out(tmp_path / "studio", "C4")
    (folder / "out").mkdir(exist_ok=True)
    folders = [folder, *(path for path in folder.rglob("*") if path.is_dir())]
    for path in folders:
        path.chmod(0o500)
    yield folder
    for path in folders:
        path.chmod(0o700)


def test_a_read_only_studio_is_told_and_another_place_serves(closed, tmp_path):
    before = everything(closed)
    result = handouts("make", "--studio", closed, "--as", "screen", before=under_the_rights)
    calm(result)
    assert result.returncode == 2
    assert "out: not written: Permission denied; name another folder with --out" in result.stderr
    result = handouts("make", "--studio", closed, "--as", "screen", "--out", tmp_path / "out", before=under_the_rights)
    assert result.returncode in (0, 1), result.stderr
    assert list((tmp_path / "out").rglob("*-sheet.html"))
    assert everything(closed) == before


def test_a_log_in_a_read_only_studio_is_told(closed):
    words = ("log", "C4", "--exercise", "goblet-squat", "--reps", "12", "--date", "2029-01-09", "--later", "--studio", closed)
    result = handouts(*words, before=under_the_rights, **LATE)
    calm(result)
    assert result.returncode == 2 and "not written: Permission denied" in result.stderr


@pytest.mark.parametrize("words", [("proof", "C4"), ("next", "C4"), ("desk",), ("questions",)])
def test_every_command_bears_a_read_only_studio(closed, words):
    before = everything(closed)
    result = handouts(*words, "--studio", closed, before=under_the_rights, **LATE)
    calm(result)
    assert result.returncode in (0, 1, 2)
    assert everything(closed) == before
    if words[0] == "proof":
        assert result.returncode == 2 and "not written: Permission denied" in result.stderr


def test_a_next_plan_and_a_proof_are_their_owners_alone(tmp_path):
    folder = lay_out(tmp_path / "studio", "C2", "C4")
    there = set(folder.rglob("*"))
    before = os.umask(0)
    try:
        handouts("next", "C2", "--studio", folder, **LATE)
        handouts("proof", "C4", "--studio", folder)
    finally:
        os.umask(before)
    new = [path for path in folder.rglob("*") if path not in there]
    assert {path.suffix for path in new} >= {".yaml", ".html"}
    for path in new:
        assert stat.S_IMODE(path.stat().st_mode) == (0o700 if path.is_dir() else 0o600), path


def test_a_client_file_that_may_not_be_read_stops_its_client_alone(tmp_path):
    folder = lay_out(tmp_path / "studio", "C4")
    add_client(folder, "bad.yaml", "BAD", "Ana")
    (folder / "clients" / "bad.yaml").chmod(0)
    result = handouts("make", "--studio", folder, "--as", "screen", "--jobs", "1", before=under_the_rights)
    calm(result)
    assert result.returncode == 2
    assert "clients/bad.yaml: you may not read this file; give yourself the right to read it" in result.stderr
    assert (folder / "out" / "C4").is_dir()


def test_a_sheet_that_cannot_be_replaced_costs_only_itself(tmp_path):
    # A folder in its place stands for a file that another program holds.
    folder = lay_out(tmp_path / "studio", "C4")
    handouts("make", "C4", "--studio", folder, "--as", "screen", "--jobs", "1")
    sheet = next((folder / "out").rglob("*-sheet.html"))
    sheet.unlink()
    sheet.mkdir()
    (sheet / "held").write_text("x")
    result = handouts("make", "C4", "--studio", folder, "--as", "screen", "--afresh", "--jobs", "1")
    calm(result)
    assert result.returncode == 1
    assert re.search(r"C4 screen sheet: not written to .*; free the place and run this again", result.stderr)
    assert list((folder / "out").rglob("*-card.html")) and (sheet / "held").is_file()


def test_a_sheet_that_is_being_read_stays_whole_for_its_reader(tmp_path):
    folder = lay_out(tmp_path / "studio", "C4")
    handouts("make", "C4", "--studio", folder, "--as", "screen", "--jobs", "1")
    sheet = next((folder / "out").rglob("*-sheet.html"))
    old = sheet.read_bytes()
    client = folder / "clients" / "C4.yaml"
    with open(sheet, "rb") as reader:
        client.write_text(re.sub(r"(?m)^name: .*$", "name: Ana", client.read_text("utf-8")), "utf-8")
        handouts("make", "C4", "--studio", folder, "--as", "screen", "--jobs", "1")
        assert reader.read() == old
    assert b"Ana" in sheet.read_bytes()


def test_a_clock_that_was_set_back(tmp_path):
    folder = lay_out(tmp_path / "studio", "C1", "C4")
    first = handouts("make", "--studio", folder, "--as", "screen", "--jobs", "1", **LATE)
    calm(first)
    for path in (folder / "out").rglob("*"):
        os.utime(path, (4_000_000_000, 4_000_000_000))  # in the year 2096
    # Times of files are compared, never ordered: each that moved is made anew.
    again = handouts("make", "--studio", folder, "--as", "screen", "--jobs", "1", "--why", **EARLY)
    calm(again)
    assert again.returncode in (0, 1), again.stderr
    assert "the file was changed or taken away by hand" in again.stdout
    third = handouts("make", "--studio", folder, "--as", "screen", "--jobs", "1", **EARLY)
    assert "0 files made" in third.stdout


def test_a_user_without_a_name_can_make_and_share(tmp_path):
    # In a container the user is often a bare number: no entry in the list of
    # users, and nothing in the environment (Python: getpass.getuser fails).
    folder = lay_out(tmp_path / "studio", "C4")
    unnamed = {name: "" for name in ("LOGNAME", "USER", "LNAME", "USERNAME")}
    code = "import pwd, sys\npwd.getpwuid = {}.__getitem__\nfrom handouts.cli import main\nmain()"
    for words in (("make", "C4", "--as", "screen"), ("share", "C4", "--to", tmp_path / "give")):
        result = subprocess.run(
            [sys.executable, "-c", code, *map(str, words), "--studio", str(folder)],
            capture_output=True, text=True, cwd=ROOT, env={**os.environ, **unnamed},
        )  # fmt: skip
        calm(result)
        assert result.returncode in (0, 1), result.stderr


def test_a_log_of_tomorrow_is_asked_about(tmp_path):
    folder = lay_out(tmp_path / "studio", "C4")
    before = everything(folder)
    words = ("log", "C4", "--exercise", "goblet-squat", "--reps", "12", "--date", "2029-06-09", "--later", "--studio", folder)
    result = handouts(*words, **EARLY)
    calm(result)
    assert result.returncode == 1 and "Not stored yet" in result.stdout
    assert {path for path in everything(folder) if path not in before} == {"logs/C4.draft.json"}


def test_all_that_is_written_is_its_owners_alone(tmp_path):
    folder = tmp_path / "studio"
    before = os.umask(0)
    try:
        assert handouts("start", folder).returncode == 0
        client = next((folder / "clients").iterdir()).stem
        code = re.search(r"(?m)^code: (\S+)", (folder / "clients" / f"{client}.yaml").read_text("utf-8"))[1]
        handouts("make", "--studio", folder, "--jobs", "1")
        handouts("log", code, "--text", "12 12 12 yesterday 3 kg", "--later", "--studio", folder)
        handouts("log", code, "--exercise", "1", "--reps", "10", "--date", "2029-01-09", "--later", "--studio", folder, **LATE)
    finally:
        os.umask(before)
    assert [path for path in (folder / "logs").iterdir() if path.suffix == ".json"]
    for path in (folder, *folder.rglob("*")):
        assert stat.S_IMODE(path.stat().st_mode) == (0o700 if path.is_dir() else 0o600), path
