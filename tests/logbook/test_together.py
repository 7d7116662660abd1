"""Several people log for one client at the same time, and nothing is lost.

Real processes of the real program in one folder: the system's own lock on the
folder of the logs (flock) is what is tried here.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
import time
from pathlib import Path

from handouts.logbook.asked import read_questions
from handouts.making.lock import alone_in
from handouts.reading.log import read_log

ROOT = Path(__file__).resolve().parents[2]


def begin(folder, *words, say=""):
    environment = {**os.environ, "PYTHONPATH": str(ROOT), "SOURCE_DATE_EPOCH": "1863691200"}  # 2029-01-21
    command = [sys.executable, "-m", "handouts", *words, "--studio", str(folder)]
    process = subprocess.Popen(
        command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, env=environment
    )
    process.stdin.write(say)
    process.stdin.close()
    process.stdin = None
    return process


def ended(processes):
    told = [process.communicate() for process in processes]
    return [process.returncode for process in processes], "".join(out + err for out, err in told)


def stored(folder, code):
    return read_log(folder / "logs" / f"{code}.csv", "log")


def all_at_once(folder, commands):
    """All processes wait at the folder, since this one holds it until they are
    there; where the system does not tell who waits, for a while."""
    with alone_in(folder / "logs"):
        processes = [begin(folder, *words) for words in commands]
        latest = time.monotonic() + 20
        while time.monotonic() < latest and not all(process.poll() is not None or _waits(process.pid) for process in processes):
            time.sleep(0.05)
        assert all(process.poll() is None for process in processes)
    return ended(processes)


def _waits(process):
    """Whether a process waits for a lock, as Linux tells it in /proc/locks."""
    locks = Path("/proc/locks")
    return locks.is_file() and any("->" in line and f" {process} " in line for line in locks.read_text().splitlines())


def test_two_logs_at_once_are_both_there(folder):
    days = [f"2029-01-{day:02}" for day in range(8, 12)]
    commands = [("log", "C2", "--text", f"1 16 10 10 {day[-1]}", "--date", day, "--later") for day in days]
    codes, told = all_at_once(folder, commands)
    assert codes == [0] * 4, told
    lines = stored(folder, "C2")
    assert sorted(str(line.date) for line in lines) == days
    assert [line.line for line in lines] == [2, 3, 4, 5]


def test_the_same_log_twice_at_once_is_noticed(folder):
    command = ("log", "C2", "--text", "1 16 12 12 12", "--date", "2029-01-08", "--later")
    codes, told = all_at_once(folder, [command, command])
    assert sorted(codes) == [0, 0] or sorted(codes) == [0, 1], told
    assert len(stored(folder, "C2")) == 1


def test_two_doubtful_messages_at_once_both_wait(folder):
    commands = [("log", "C4", "--text", f"carry 2×{kg} kg", "--date", "2029-01-16", "--later") for kg in (12, 14)]
    codes, told = all_at_once(folder, commands)
    assert codes == [1, 1], told
    waiting = json.loads((folder / "logs" / "C4.draft.json").read_text("utf-8"))["waiting"]
    assert sorted(one["raw"] for one in waiting) == ["carry 2×12 kg", "carry 2×14 kg"]


def test_an_answer_and_a_log_at_once(folder):
    words = ("--text", "21 min; my right knee hurts", "--date", "2029-01-11", "--later")
    assert ended([begin(folder, "log", "C2", *words)])[0] == [0]
    sign = next(line for line in stored(folder, "C2") if line.warning)
    codes, told = all_at_once(
        folder,
        [
            ("log", "C2", "--answer", str(sign.line), "rest a week"),
            ("log", "C2", "--text", "1 16 10 10 9", "--date", "2029-01-12", "--later"),
        ],
    )
    assert codes == [0, 0], told
    lines = stored(folder, "C2")
    assert [line.answer for line in lines if line.line == sign.line] == ["rest a week"]
    assert any(line.exercise == "goblet-squat" for line in lines)


def test_two_questions_at_once_have_two_numbers(folder):
    commands = [
        ("log", "C2", "--date", f"2029-01-1{at}", "--exercise", "goblet-squat", "--question", f"which hand {at}?", "--later")
        for at in (1, 2)
    ]
    codes, told = all_at_once(folder, commands)
    assert codes == [0, 0], told
    assert sorted(one.number for one in read_questions(folder / "questions" / "C2.csv")) == [1, 2]


def test_what_somebody_else_settled_is_not_stored_again(run, folder, monkeypatch):
    """While one asks about a message, another answers it."""
    run("log", "C1", "--text", "seated press, fifty pounds, twelve", "--date", "2029-01-12", "--later")
    from handouts.logbook import command

    def meanwhile(words):
        monkeypatch.setattr(command, "_line", lambda words: "15 lb")
        codes, told = ended([begin(folder, "log", "C1", say="15 lb\n")])
        assert codes == [0], told
        return "12 lb"

    monkeypatch.setattr(command, "_line", meanwhile)
    done = run("log", "C1")
    assert done.exit_code == 0 and "Settled meanwhile by somebody else" in done.output
    assert [str(line.weight) for line in stored(folder, "C1")] == ["15 lb"]
