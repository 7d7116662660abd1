"""How fast sheets are made: against the bare engines, in bulk, and when nothing changed.

    python tests/bench/making.py              all figures, about half an hour
    python tests/bench/making.py --most 100   no more than 100 clients

Each ratio is measured side by side in one run.  Seconds are of this machine
alone; a ratio says something about others too.
"""

from __future__ import annotations

import argparse
import datetime
import os
import platform
import resource
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))
PLACE = {**os.environ, "PYTHONPATH": str(ROOT)}

from handouts import carried  # noqa: E402
from handouts.fitting.fit import fit  # noqa: E402
from handouts.fitting.sheets import sheet  # noqa: E402
from handouts.forms import Look  # noqa: E402
from handouts.handout import SHEET_KINDS  # noqa: E402
from handouts.models import PrintForm  # noqa: E402
from handouts.reading.studio import read_studio  # noqa: E402

# What WeasyPrint alone does with the final HTML: read it, lay it out, write it.
ENGINE = """
import sys, pathlib
sys.path.insert(0, {root!r})
import weasyprint
from handouts.forms.print import _fetcher
for name in sys.argv[1:]:
    html = pathlib.Path(name).read_text("utf-8")
    weasyprint.HTML(string=html, base_url=None, url_fetcher=_fetcher()).write_pdf(pdf_variant="pdf/ua-1")
"""

BRAILLE = """
import sys, pathlib
sys.path.insert(0, {root!r})
from handouts.braille.liblouis import owner
louis = owner()._louis
for name in sys.argv[1:]:
    for line in pathlib.Path(name).read_text("utf-8").split("\\n"):
        louis.translateString(["unicode.dis", "en-ueb-g2.ctb"], line)
"""


def timed(words: list[str]) -> float:
    """Wall seconds of a whole process."""
    begun = time.perf_counter()
    done = subprocess.run(words, env=PLACE, capture_output=True, text=True)
    if done.returncode not in (0, 1) or "Traceback" in done.stderr:
        raise SystemExit(done.stderr)
    return time.perf_counter() - begun


def pairs(first: list[str], second: list[str], runs: int) -> tuple[float, float, float]:
    """Medians of both and of the ratio, the two run in turn."""
    seconds = [(timed(first), timed(second)) for _ in range(runs + 1)][1:]
    return (
        statistics.median(a for a, _ in seconds),
        statistics.median(b for _, b in seconds),
        statistics.median(a / b for a, b in seconds),
    )


def told(what: str, ours: float, other: float, ratio: float) -> None:
    print(f"{ratio:5.2f}  {what}: {ours:.2f} s against {other:.2f} s", flush=True)


def make(studio: Path, *words: str) -> list[str]:
    return [sys.executable, "-m", "handouts", "make", "--studio", str(studio), "--quiet", *words]


def studio_of(count: int, form: str, folder: Path) -> Path:
    """A studio of `count` invented clients that all read one form."""
    studio = folder / f"{form}-{count}"
    subprocess.run([sys.executable, "-m", "handouts", "start", str(studio)], env=PLACE, check=True, capture_output=True)
    example = (studio / "clients" / "example.yaml").read_text("utf-8")
    (studio / "clients" / "example.yaml").unlink()
    (studio / "logs" / "example.csv").unlink(missing_ok=True)
    head, rest = example.split("\nforms:\n", 1)
    rest = rest[rest.index("\n# Weights in kg or lb") :]
    settings = {"print": "  print:\n    size: 20 pt\n    sheets: [card]\n", "screen": "  screen:\n", "braille": "  braille:\n"}
    for number in range(count):
        text = f"{head}\nforms:\n{settings[form]}{rest}"
        text = text.replace("code: example", f"code: K{number:05}").replace("name: Alex", f"name: Alex {number}")
        (studio / "clients" / f"K{number:05}.yaml").write_text(text, "utf-8")
    return studio


def cold(folder: Path) -> None:
    """One client, all forms, from a cold start, against the engines alone."""
    studio = folder / "one"
    subprocess.run([sys.executable, "-m", "handouts", "start", str(studio)], env=PLACE, check=True, capture_output=True)
    read = read_studio(studio, carried.starter_texts())
    client = read.clients["example"]
    session = fit(client, next(iter(read.plans.values())), read.exercises, read.facts, previous=None,
                  today=datetime.date(2029, 1, 1))
    from handouts.forms.print import page_html

    pages, texts = [], []
    for kind in SHEET_KINDS:
        pages.append(folder / f"{kind}.html")
        pages[-1].write_text(page_html(sheet(kind, session), client.facts.forms.print or PrintForm(), Look()), "utf-8")
        texts.append(folder / f"{kind}.txt")
        from html.parser import HTMLParser

        class Words(HTMLParser):
            def __init__(self) -> None:
                super().__init__()
                self.lines: list[str] = []

            def handle_data(self, data: str) -> None:
                self.lines.append(data)

        words = Words()
        words.feed(pages[-1].read_text("utf-8"))
        texts[-1].write_text("\n".join(words.lines), "utf-8")
    engine = [sys.executable, "-c", ENGINE.format(root=str(ROOT)), *map(str, pages)]
    told("one client, all forms, cold, against WeasyPrint alone with the same HTML",
         *pairs(make(studio, "--afresh"), engine, 5))
    braille = [sys.executable, "-c", BRAILLE.format(root=str(ROOT)), *map(str, texts)]
    told("one client, braille alone, cold, against liblouis alone with the same words",
         *pairs(make(studio, "--afresh", "--as", "braille"), braille, 5))
    told("handouts --help against importing click",
         *pairs([sys.executable, "-m", "handouts", "--help"], [sys.executable, "-c", "import click"], 9))


def growth(folder: Path, most: int) -> None:
    """1 to 10 to 100 to 1,000 clients; bulk against single; a second run."""
    for form in ("screen", "braille", "print"):
        single = 0.0
        for count in (1, 10, 100, 1000):
            if count > most:
                break
            studio = studio_of(count, form, folder)
            first = timed(make(studio))
            again = timed(make(studio))
            if count == 1:
                single = first
            print(f"{first / count / single:5.2f}  {form}, {count} clients: {first:.2f} s, {first / count:.3f} s a client "
                  "against one alone", flush=True)
            print(f"{again / first:5.3f}  {form}, {count} clients: second run, nothing changed, {again:.2f} s "
                  "against the first", flush=True)


def cores(folder: Path, count: int) -> None:
    """All cores against one, without the time to read and start."""
    studio = studio_of(count, "print", folder)
    one = timed(make(studio, "--afresh", "--jobs", "1"))
    number = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1
    all_of_them = timed(make(studio, "--afresh", "--jobs", str(number)))
    print(f"{one / all_of_them / number:5.2f}  {number} processes against {number} times the rate of one, "
          f"{count} clients: {all_of_them:.2f} s against {one:.2f} s", flush=True)


MEMORY = """
import resource, sys
sys.path.insert(0, {root!r})
from handouts.making.workers import Task, work
from handouts.forms import Look
from handouts.handout import Handout, Paragraph, Text
from handouts.models import PrintForm, BrailleForm, ScreenForm
import pickle
for at in range(1, {count} + 1):
    for form, settings in (("print", PrintForm()), ("screen", ScreenForm()), ("braille", BrailleForm())):
        handout = Handout("card", "en", (Text(f"Card {{at}}"),), f"Client {{at}}", f"K{{at}}", "P", 1, f"Client {{at}}",
                          "2029-01-01", "", tuple(Paragraph((Text(f"Line {{at}} of {{n}}"),)) for n in range(30)))
        assert work(Task(form, handout, settings, Look())).rendered
    if at in ({early}, {count}):
        pages = int(open("/proc/self/statm").read().split()[1])
        print(at, pages * resource.getpagesize() // 1048576)
"""


def memory(count: int) -> None:
    """A worker's memory after 100 and after many clients."""
    early_at = max(1, count // 20)
    script = MEMORY.format(root=str(ROOT), count=count, early=early_at)
    done = subprocess.run([sys.executable, "-c", script], env=PLACE, capture_output=True, text=True, check=True)
    (_, early), (_, late) = (map(int, line.split()) for line in done.stdout.strip().split("\n"))
    print(f"{late / early:5.2f}  memory of a worker after {count} clients, {late} MB, against after {early_at}, {early} MB",
          flush=True)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("--most", type=int, default=1000, help="no more clients than this")
    most = parser.parse_args().most
    print(f"Python {platform.python_version()}, {os.cpu_count()} cores, {platform.machine()}, "
          f"{os.sysconf('SC_PAGE_SIZE') * os.sysconf('SC_PHYS_PAGES') // 2**30} GB. Ratio first.")
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        cold(folder)
        memory(min(most * 2, 2000))
        cores(folder, min(most, 100))
        growth(folder, most)
    peak = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss // 1024
    print(f"Largest process: {peak} MB.")


if __name__ == "__main__":
    main()
