"""One table of all measures, for the documentation.

    python tests/bench/table.py > tests/bench/RESULTS.md    about an hour
    python tests/bench/table.py --quick                     a few minutes, smaller amounts

Runs making.py, braille.py and wording.py one after the other; each measures
its ratios side by side.  The machine must have nothing else to do.
"""

from __future__ import annotations

import argparse
import os
import platform
import subprocess
import sys
from pathlib import Path

HERE = Path(__file__).parent


def row(figure: str, aim: str, what: str) -> None:
    """One line of the table: the ratio, or the figure with its unit, first."""
    print(f"| {figure} | {aim} | {what} |", flush=True)


def head() -> None:
    memory = os.sysconf("SC_PAGE_SIZE") * os.sysconf("SC_PHYS_PAGES") / 2**30
    cores = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count()
    print(f"Python {platform.python_version()}, {cores} cores ({platform.machine()}), {memory:.0f} GB of memory.\n")
    print("| ratio or figure | aim | what |\n| --- | --- | --- |", flush=True)


def main() -> None:
    parser = argparse.ArgumentParser(description=(__doc__ or "").split("\n")[0])
    parser.add_argument("--quick", action="store_true", help="smaller amounts")
    quick = parser.parse_args().quick
    head()
    for script, words in (("making.py", ["--most", "10"]), ("braille.py", []), ("wording.py", ["--quick"])):
        command = [sys.executable, str(HERE / script), "--rows", *(words if quick else [])]
        subprocess.run(command, check=True)


if __name__ == "__main__":
    main()
