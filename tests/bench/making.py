"""How fast sheets are made: against the bare engines, in bulk, and when nothing changed.

    python tests/bench/making.py              all figures, about 45 minutes
    python tests/bench/making.py --most 100   no more than 100 clients

Prints rows of a table: the ratio first, then what it aims at, then what was
measured.  Each ratio is measured side by side in one run.  Seconds are of this
machine alone; a ratio says something about others too.  The machine must have
nothing else to do: what is measured is the time that a person waits.
"""

from __future__ import annotations

import argparse
import datetime
import os
import re
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
CORES = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1

import table  # noqa: E402

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
import time
import weasyprint
from handouts.forms.print import _fetcher, fonts
begun = time.perf_counter()
for name in sys.argv[1:]:
    html = pathlib.Path(name).read_text("utf-8")
    configuration, faces = fonts()
    source = weasyprint.HTML(string=html, base_url=None, url_fetcher=_fetcher())
    source.write_pdf(pdf_variant="pdf/ua-1", stylesheets=[faces], font_config=configuration)
print(time.perf_counter() - begun)
"""

# The interpreter and everything that `make` imports in its own process.
IMPORTS = """
import sys
sys.path.insert(0, {root!r})
import weasyprint, pikepdf, handouts.cli, handouts.making.make, handouts.making.report
from handouts.forms import FORMS
for form in ("print", "screen", "braille"):
    FORMS[form].versions()
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


def make(studio: Path, *words: str) -> list[str]:
    return [sys.executable, "-m", "handouts", "make", "--studio", str(studio), "--quiet", *words]


def studio_of(count: int, folder: Path, form: str = "") -> Path:
    """A new studio of `count` invented clients that all read the forms of the
    example, whole sets, or one form alone, and of print the card."""
    studio = Path(tempfile.mkdtemp(dir=folder)) / f"{form or 'whole'}-{count}"
    subprocess.run([sys.executable, "-m", "handouts", "start", str(studio)], env=PLACE, check=True, capture_output=True)
    example = (studio / "clients" / "example.yaml").read_text("utf-8")
    (studio / "clients" / "example.yaml").unlink()
    (studio / "logs" / "example.csv").unlink(missing_ok=True)
    if form:
        head, rest = example.split("\nforms:\n", 1)
        rest = rest[rest.index("\n# Weights in kg or lb") :]
        settings = {"print": "  print:\n    size: 20 pt\n    sheets: [card]\n", "screen": "  screen:\n", "braille": "  braille:\n"}
        example = f"{head}\nforms:\n{settings[form]}{rest}"
    for number in range(count):
        text = example.replace("code: example", f"code: K{number:05}").replace("name: Alex", f"name: Alex {number}")
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
    imports = [sys.executable, "-c", IMPORTS.format(root=str(ROOT))]
    for aim, words in (("at most 1.25", ()), ("", ("--jobs", "1"))):
        turns = []
        for _ in range(7):
            alone = float(subprocess.run(engine, env=PLACE, capture_output=True, text=True, check=True).stdout)
            loading, ours = timed(imports), timed(make(studio, "--afresh", *words))
            turns.append(((ours - loading) / alone, ours, loading, alone))
        ratio, ours, loading, alone = map(statistics.median, zip(*turns[1:], strict=True))
        how = "one process" if words else f"{CORES} processes"
        table.row(f"{ratio:.3g}", aim, f"one client, print, screen and braille, cold, {how}: {ours:.2f} s less {loading:.2f} s of start "
                        f"and imports, against WeasyPrint alone with the same HTML, {alone:.2f} s")
    braille = [sys.executable, "-c", BRAILLE.format(root=str(ROOT)), *map(str, texts)]
    ours, other, ratio = pairs(make(studio, "--afresh", "--as", "braille"), braille, 5)
    table.row(f"{ratio:.3g}", "", f"one client, braille, cold, {ours:.2f} s, against liblouis alone with the same words, {other:.2f} s")
    ours, other, ratio = pairs([sys.executable, "-m", "handouts", "--help"], [sys.executable, "-c", "import click"], 15)
    table.row(f"{ratio:.3g}", "at most 2", f"handouts --help, {ours:.3f} s, against importing click, {other:.3f} s")


def growth(folder: Path, most: int) -> None:
    """1 to 10 to 100 to 1,000 clients; bulk against single; a second run."""
    for form in ("screen", "braille", "print"):
        single = 0.0
        for count in (1, 10, 100, 500, 1000):
            if count > most or (count == 500 and form != "print"):
                continue
            studio = studio_of(count, folder, form)
            first = timed(make(studio))
            again = timed(make(studio))
            single = single or first
            table.row(f"{first / count / single:.3g}", "", f"{form}, {count} clients, {first:.1f} s, {first / count:.3f} s a client, "
                                            "against one client alone")
            table.row(f"{again / first:.3g}", "",
                f"{form}, {count} clients: second run, nothing changed, {again:.2f} s, against the first")


def cores(folder: Path, count: int) -> None:
    """All cores against one."""
    studio = studio_of(count, folder, "print")
    one = timed(make(studio, "--afresh", "--jobs", "1"))
    all_of_them = timed(make(studio, "--afresh", "--jobs", str(CORES)))
    table.row(f"{one / all_of_them / CORES:.3g}", "at least 0.9", f"{CORES} processes, {count} clients, {all_of_them:.1f} s, against "
                                                    f"{CORES} times the rate of one process, {one:.1f} s")


def unchanged(folder: Path, count: int) -> None:
    """A second run of whole sets, nothing changed, against the first."""
    studio = studio_of(count, folder)
    first, again = timed(make(studio)), timed(make(studio))
    table.row(f"{again / first:.3g}", "at most 0.02", f"print, screen and braille of {count} clients, nothing changed, {again:.2f} s, "
                                       f"against the first run, {first:.0f} s, {first / count:.2f} s a client")


def whole_clients(folder: Path, count: int) -> None:
    """What one client's whole set costs in bulk: time of a core and storage."""
    studio = studio_of(count, folder)
    for form in ("print", "screen", "braille"):
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        timed(make(studio, "--afresh", "--as", form))
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        spent = after.ru_utime - before.ru_utime + after.ru_stime - before.ru_stime
        table.row(f"{spent / count:.2f} s", "", f"of a core a client, {form}, sheet, card and log, {count} clients")
    files = [file for file in (studio / "out").rglob("*.*") if file.suffix in {".pdf", ".html", ".brf"}]
    size = sum(file.stat().st_size for file in files) / count / 1e6
    table.row(f"{size:.2f} MB", "", "of files a client, print, screen and braille")


def cluster(folder: Path, count: int) -> None:
    """The same work through Dask's scheduler with as many worker processes."""
    studio = studio_of(count, folder, "print")
    here = timed(make(studio, "--afresh"))
    scheduler = subprocess.Popen(
        [sys.executable, "-m", "distributed.cli.dask_scheduler", "--host", "127.0.0.1", "--port", "0",
         "--no-dashboard", "--no-show"],
        env=PLACE, stderr=subprocess.PIPE, text=True, cwd=folder,
    )
    workers: list[subprocess.Popen[bytes]] = []
    try:
        assert scheduler.stderr is not None
        address = next(found[1] for line in scheduler.stderr if (found := re.search(r"Scheduler at:\s+(tcp://\S+)", line)))
        workers = [
            subprocess.Popen(
                [sys.executable, "-m", "distributed.cli.dask_worker", address, "--nthreads", "1", "--no-dashboard"],
                env=PLACE, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, cwd=folder,
            )
            for _ in range(CORES)
        ]
        time.sleep(5)
        there = timed(make(studio, "--afresh", "--cluster", address))
    finally:
        for process in (*workers, scheduler):
            process.terminate()
            process.wait()
    table.row(f"{there / here:.3g}", "", f"{CORES} workers of a Dask scheduler, {count} clients, {there:.1f} s, against "
                          f"{CORES} processes, {here:.1f} s")


MEMORY = """
import datetime, resource, sys
from dataclasses import replace
from pathlib import Path
sys.path.insert(0, {root!r})
from handouts import carried
from handouts.fitting.fit import fit
from handouts.fitting.sheets import sheet
from handouts.forms import Look
from handouts.making.workers import Task, work
from handouts.models import BrailleForm, PrintForm, ScreenForm
from handouts.reading.studio import read_studio
read = read_studio(Path({studio!r}), carried.starter_texts())
session = fit(read.clients["example"], next(iter(read.plans.values())), read.exercises, read.facts, previous=None,
              today=datetime.date(2029, 1, 1))
for at in range(1, {count} + 1):
    for form, kind, settings in (("print", "card", PrintForm()), ("screen", "sheet", ScreenForm()),
                                 ("braille", "sheet", BrailleForm())):
        handout = replace(sheet(kind, session), client=f"Client {{at}}", client_code=f"K{{at}}")
        assert work(Task(form, handout, settings, Look())).rendered
    if at in ({early}, {count}):
        pages = int(open("/proc/self/statm").read().split()[1])
        print(at, pages * resource.getpagesize() // 1048576)
"""


def memory(folder: Path, count: int) -> None:
    """What a worker holds after 100 and after many clients; Linux alone tells."""
    early_at = max(1, count // 20)
    script = MEMORY.format(root=str(ROOT), studio=str(folder / "one"), count=count, early=early_at)
    done = subprocess.run([sys.executable, "-c", script], env=PLACE, capture_output=True, text=True, check=True)
    (_, early), (_, late) = (map(int, line.split()) for line in done.stdout.strip().split("\n"))
    table.row(f"{late / early:.3g}", "at most 1.1, under 400 MB", f"memory of a worker after {count} clients, {late} MB, against after "
                                                   f"{early_at}, {early} MB")


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    parser.add_argument("--most", type=int, default=1000, help="no more clients than this")
    parser.add_argument("--rows", action="store_true", help="leave out the head of the table")
    asked = parser.parse_args()
    most = asked.most
    if not asked.rows:
        table.head()
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        cold(folder)
        cores(folder, min(most, 200))
        whole_clients(folder, min(most, 20))
        unchanged(folder, min(most, 500))
        cluster(folder, min(most, 100))
        growth(folder, most)
        memory(folder, min(most * 2, 2000))
    peak = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss // 1024
    table.row(f"{peak} MB", "under 400 MB", "the largest process of all these runs")


if __name__ == "__main__":
    main()
