"""How fast the wording checker is: against proselint, from a cold start, and as texts grow.

    python tests/bench/wording.py          all figures, a few minutes
    python tests/bench/wording.py --quick  smaller texts, a minute

Prints ratios, each measured side by side in one run on one core, in processor
time, so that other work on the machine does not count.  A figure of one machine
says nothing about another; a ratio says something about both.
"""

from __future__ import annotations

import argparse
import gc
import json
import os
import resource
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable, Iterator, Sequence
from itertools import cycle
from pathlib import Path
from typing import Any

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))
os.environ["OPENBLAS_NUM_THREADS"] = "1"  # as the program itself loads numpy

import table  # noqa: E402

from handouts import mirror  # noqa: E402
from handouts.wording import check_text, rereading  # noqa: E402
from handouts.wording.checking import check_all  # noqa: E402
from handouts.wording.engine import CLOSELY_UP_TO  # noqa: E402
from handouts.wording.whole_text import reading  # noqa: E402

MEGABYTE = 1_000_000
SHORT = "exercise_texts/hip-hinge.md"
INSTALLED = [sys.executable, "-c", "from handouts.cli import main; main()"]
"""What the installed command `handouts` runs."""


def labelled() -> list[dict[str, Any]]:
    """The open passages of the corpus, in English."""
    paths = sorted((ROOT / "tests" / "wording_corpus").glob("open_*.jsonl"))
    return [json.loads(line) for path in paths for line in path.read_text("utf-8").splitlines()]


def library() -> list[str]:
    """The exercise texts, in English."""
    return [path.read_text("utf-8") for path in sorted((ROOT / "exercise_texts").glob("*.md")) if path.name.count(".") == 1]


def prose(size: int) -> str:
    """About `size` characters of real wording, the library and the open passages, over and over in the same order."""
    pieces = []
    length = 0
    for text in cycle(library() + [row["text"] for row in labelled()]):
        body = text.split("\n---\n", 1)[1] if text.startswith("---") else text
        pieces.append(body)
        length += len(body) + 2
        if length >= size:
            return "\n\n".join(pieces)
    raise AssertionError


def talk(size: int) -> str:
    """About `size` characters of trainers' talk alone, each passage once: the text with most to weigh."""
    return "\n\n".join(row["text"] for row in labelled() if row.get("sort") == "talk")[:size]


def shapes(size: int) -> Iterator[tuple[str, str]]:
    """Texts that are made to be slow, each of about `size` characters."""
    yield "one line", " ".join(prose(size).split())
    yield "one word, over and over", "like " * (size // 5)
    yield "one trigger, over and over", "look at this here " * (size // 18)
    yield "one long word", "a" * size
    yield "nested brackets", "[" * (size // 2) + "]" * (size // 2)
    yield "open brackets and links", "[a](" * (size // 4)
    yield "backticks", "` `` ``` " * (size // 9)
    yield "opened comments", "<!-- allow pointing: a -->\n" * (size // 27)
    yield "never closed comments", "<!-- " * (size // 5)
    yield "list items", "- Set your right foot at 2 o'clock.\n" * (size // 36)
    yield "hours without an end", "at 2 and 10, 11 " * (size // 16)
    yield "headings", "## Movement\n\n" * (size // 13)
    yield "empty lines", "\n" * size
    yield "commas", "left, right, " * (size // 13)


def forget() -> None:
    """Keeps nothing of what was found in the texts until now."""
    rereading.learnt().forget()
    mirror.mirror.cache_clear()
    reading.counted.cache_clear()


def seconds(work: Callable[[], object], repeat: int = 3, again: bool = False) -> float:
    """Of processor time, the shortest of some runs, each as if the program had read nothing before, or again."""
    best = float("inf")
    for _ in range(repeat):
        if not again:
            forget()
        start = time.process_time()
        work()
        best = min(best, time.process_time() - start)
    return best


def against_proselint(folder: Path, what: str, texts: list[str]) -> None:
    from proselint.checks import __register__
    from proselint.config import DEFAULT
    from proselint.registry import CheckRegistry
    from proselint.tools import LintFile

    files = []
    for number, text in enumerate(texts):
        path = folder / f"{what.replace(' ', '-')}-{number}.md"
        path.write_text(text, "utf-8")
        files.append(str(path))
    total = sum(os.path.getsize(file) for file in files)
    named = f"{what}, {len(files)} files, {total / MEGABYTE:.2f} MB"
    marks = seconds(lambda: [check_text(Path(file).read_text("utf-8")) for file in files])
    whole = seconds(lambda: check_all(files))
    table.row(f"{total / MEGABYTE / marks:.2f} MB/s", "", f"wording, {named}: marks alone")
    table.row(f"{total / MEGABYTE / whole:.2f} MB/s", "at least 1", f"wording, {named}: marks and checks of whole texts")
    CheckRegistry().register_many(__register__)
    theirs = seconds(lambda: [LintFile(Path(file), Path(file).read_text("utf-8")).lint(DEFAULT) for file in files])
    table.row(
        f"{theirs / whole:.2f}", "at least 2",
        f"wording, {named}: throughput against proselint on the same files, {total / MEGABYTE / theirs:.2f} MB/s",
    )  # fmt: skip
    ours = command([*INSTALLED, "check", *files])
    other = command([sys.executable, "-m", "proselint", "check", *files])
    table.row(f"{other / ours:.2f}", "", f"wording, {named}: the same as commands, start included")


def cut(text: str, size: int) -> list[str]:
    """A text in parts of about `size` characters, cut between paragraphs."""
    parts = [""]
    for paragraph in text.split("\n\n"):
        if len(parts[-1]) > size:
            parts.append("")
        parts[-1] += paragraph + "\n\n"
    return parts


def command(arguments: list[str]) -> float:
    """The processor seconds of a program with its byte code kept, as an installed one has it."""
    environment = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
    environment |= {
        "PYTHONPATH": str(ROOT),
        "PYTHONPYCACHEPREFIX": str(Path(tempfile.gettempdir()) / "handouts-bench-bytecode"),
    }
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run(
        arguments, cwd=ROOT, env=environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False
    )
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime - before.ru_utime + after.ru_stime - before.ru_stime


def cold_start(repeat: int) -> None:
    """Interleaved, so that a busy moment of the machine falls on both."""
    ours, bare = [], []
    for turn in range(repeat + 1):
        checking = command([*INSTALLED, "check", SHORT])
        importing = command([sys.executable, "-c", "import click, yaml, markdown"])
        if turn:  # the first writes the byte code
            ours.append(checking)
            bare.append(importing)
    table.row(
        f"{statistics.median(ours) / statistics.median(bare):.2f}", "at most 2",
        f"wording, one short file from a cold start, {statistics.median(ours) * 1000:.0f} ms, against importing click, "
        f"yaml and markdown, {statistics.median(bare) * 1000:.0f} ms",
    )  # fmt: skip


def of_talk(size: int) -> None:
    """Talk is slower than the exercise texts, most of all when it is new."""
    text = talk(size)
    new = seconds(lambda: check_text(text), 1)
    again = seconds(lambda: check_text(text), again=True)
    table.row(
        f"{len(text) / MEGABYTE / new:.2f} MB/s", "",
        f"wording, marks alone, trainers' talk of {len(text) / MEGABYTE:g} MB; {len(text) / MEGABYTE / again:.2f} when read again",
    )  # fmt: skip


def growth(folder: Path, sizes: Sequence[int]) -> None:
    """Seconds a megabyte at each size; a flat line means linear.  Of talk, which is alike from beginning to end."""
    path = folder / "growing.md"
    rates = []
    every = talk(10 * MEGABYTE)
    for size in sizes:
        path.write_text("\n\n".join([every] * (1 + size // len(every)))[:size], "utf-8")
        rates.append(seconds(lambda: check_all([str(path)]), 1) / (size / MEGABYTE))
        table.row(f"{1 / rates[-1]:.2f} MB/s", "", f"wording, talk of {size / MEGABYTE:g} MB")
    table.row(
        f"{rates[-1] / rates[0]:.2f}", "about 1",
        f"wording, time a MB, of {sizes[-1] / MEGABYTE:g} against {sizes[0] / MEGABYTE:g} MB",
    )  # fmt: skip


def made_to_be_slow(folder: Path, size: int) -> None:
    """Each shape at two sizes: twice the size should take twice the time."""
    path = folder / "slow.md"
    smaller = dict(shapes(size // 2))
    for name, text in shapes(size):
        path.write_text(smaller[name], "utf-8")
        half = seconds(lambda: check_all([str(path)]), 1)
        path.write_text(text, "utf-8")
        full = seconds(lambda: check_all([str(path)]), 1)
        rate = len(text.encode()) / MEGABYTE / full
        table.row(f"{rate:.2f} MB/s", "", f"wording, {name}, {size / MEGABYTE:g} MB; twice the size takes {full / half:.2f} times as long")


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--quick", action="store_true", help="smaller texts")
    parser.add_argument("--rows", action="store_true", help="leave out the head of the table")
    asked = parser.parse_args()
    quick = asked.quick
    gc.disable()  # as the command does
    if not asked.rows:
        table.head()
    with tempfile.TemporaryDirectory() as folder:
        against_proselint(Path(folder), "exercise texts", library())
        against_proselint(Path(folder), "exercise texts and talk", cut(prose(MEGABYTE // (4 if quick else 1)), 60_000))
        cold_start(5 if quick else 15)
        of_talk(MEGABYTE // 5)
        growth(Path(folder), (CLOSELY_UP_TO // 4, CLOSELY_UP_TO))
        growth(Path(folder), (2 * CLOSELY_UP_TO, 4 * CLOSELY_UP_TO) if quick else (2 * CLOSELY_UP_TO, 20 * MEGABYTE))
        made_to_be_slow(Path(folder), 2 * MEGABYTE if quick else 20 * MEGABYTE)


if __name__ == "__main__":
    main()
