"""A kill at any moment leaves each output old and whole, or new and whole."""

import random
import shutil
import signal
import subprocess
import sys
import time

import pytest

from handouts import carried
from handouts.making.writing import UNFINISHED, write_whole

NAMES = ("Mateus", "Mateus Prudente")


def command(studio):
    return [sys.executable, "-m", "handouts", "make", "C4", "--studio", str(studio), "--as", "screen", "--quiet"]


def made(studio):
    return {path.name: path.read_bytes() for path in (studio / "out").rglob("C4-*.html")}


def rename(studio, old, new):
    client = studio / "clients" / "C4.yaml"
    client.write_text(client.read_text("utf-8").replace(f"name: {old}\n", f"name: {new}\n"), "utf-8")


@pytest.fixture(scope="module")
def both(tmp_path_factory):
    """A studio whose sheets are those of the first name, and the sheets of both names."""
    studio = tmp_path_factory.mktemp("kill") / "studio"
    shutil.copytree(carried.demo_studio(), studio)
    sheets = []
    for old, new in ((NAMES[0], NAMES[1]), (NAMES[1], NAMES[0])):
        rename(studio, old, new)
        subprocess.run(command(studio), check=True, capture_output=True)
        sheets.append(made(studio))
    assert sheets[0].keys() == sheets[1].keys() and len(sheets[0]) == 3
    assert all(sheets[0][name] != sheets[1][name] for name in sheets[0])
    return studio, sheets


def test_runs_killed_at_random_moments(both):
    # The name changes with every run, so that every run has all to do anew.
    studio, sheets = both
    begun = time.monotonic()
    subprocess.run([*command(studio), "--afresh"], check=True, capture_output=True)
    longest = time.monotonic() - begun
    chance = random.Random(20290108)
    current, killed, seen = 0, 0, set()
    for _ in range(200):
        rename(studio, NAMES[current], NAMES[1 - current])
        current = 1 - current
        process = subprocess.Popen(command(studio), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        time.sleep(chance.uniform(0.3, 1.05) * longest)
        process.send_signal(signal.SIGKILL)
        in_time = process.wait() == -signal.SIGKILL
        killed += in_time
        # On a machine with other work, runs grow longer and shorter: about
        # three in four are to be killed on their way.
        longest *= 1.01 if in_time else 0.97
        there = made(studio)
        assert there.keys() == sheets[0].keys()
        for name, data in there.items():
            found = [number for number in (0, 1) if data == sheets[number][name]]
            assert found, f"{name} is neither the old nor the new sheet"
            seen.add(found[0])
    assert killed >= 100
    assert seen == {0, 1}
    subprocess.run(command(studio), check=True, capture_output=True)
    # sheets[0] is NAMES[1]'s, sheets[1] is NAMES[0]'s.
    assert made(studio) == sheets[1 - current]
    assert not list((studio / "out").rglob(f"{UNFINISHED}*"))


def test_a_writer_killed_between_write_and_rename_leaves_the_old_file(tmp_path):
    path = tmp_path / "sheet.html"
    write_whole(path, b"old")
    code = (
        "import os, signal, sys; from pathlib import Path; from handouts.making.writing import write_whole\n"
        "os.replace = lambda *names: os.kill(os.getpid(), signal.SIGKILL)\n"
        "write_whole(Path(sys.argv[1]), b'new')"
    )
    result = subprocess.run([sys.executable, "-c", code, str(path)])
    assert result.returncode == -signal.SIGKILL
    assert path.read_bytes() == b"old"
    assert len(list(tmp_path.glob(f"{UNFINISHED}*"))) == 1


def test_a_second_run_waits_and_says_for_whom(both):
    studio, _ = both
    code = (
        "import sys; from pathlib import Path; from handouts.making.lock import only_run\n"
        "with only_run(Path(sys.argv[1]), print):\n"
        "    print('held', flush=True); sys.stdin.read()"
    )
    pipe = {"stdout": subprocess.PIPE, "text": True}
    with subprocess.Popen([sys.executable, "-c", code, str(studio / "out")], stdin=subprocess.PIPE, **pipe) as first:
        assert first.stdout.readline() == "held\n"
        with subprocess.Popen(command(studio), stderr=subprocess.PIPE, **pipe) as second:
            told = ""
            while "Waiting" not in told:
                line = second.stderr.readline()
                assert line, told
                told += line
            first.stdin.close()  # the first run ends now
            second.communicate()
    assert f"process {first.pid}" in told
    assert second.returncode in (0, 1)
    assert not (studio / "out" / ".run").exists()
