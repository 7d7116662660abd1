"""One run at a time in one out folder; the second waits and says for whom."""

from __future__ import annotations

import contextlib
import getpass
import os
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TextIO

from handouts.errors import HandoutsError
from handouts.making.writing import UNFINISHED, make_private

_LOCK_NAME = ".lock"


@contextmanager
def only_run(out: Path, say: Callable[[str], None]) -> Iterator[None]:
    """Hold the out folder; wait for another run, telling once who holds it.

    Afterwards no unfinished file of a run that was cut off is left.  Where
    the system has no file locks the run goes on without.  Raises OutUnusable
    when the folder cannot be made or written to.
    """
    try:
        make_private(out)
        file = os.fdopen(os.open(out / _LOCK_NAME, os.O_RDWR | os.O_CREAT, 0o600), "r+", encoding="utf-8")
    except OSError as problem:
        raise OutUnusable(
            f"{out}: not written: {problem.strerror or problem}; name another folder with --out"
        ) from problem
    with file:
        _hold(file, say)
        file.seek(0)
        file.truncate()
        file.write(f"{getpass.getuser()}, process {os.getpid()}, since {time.strftime('%H:%M')}\n")
        file.flush()
        for path in out.rglob(f"{UNFINISHED}*"):
            with contextlib.suppress(OSError):
                path.unlink()
        yield


class OutUnusable(HandoutsError):
    """Nothing can be written to the out folder."""


def _hold(file: TextIO, say: Callable[[str], None]) -> None:
    try:
        import fcntl
    except ImportError:  # Windows
        return
    try:
        fcntl.flock(file.fileno(), fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        file.seek(0)
        holder = file.read().strip() or "somebody"
        say(f"Waiting: another run is making sheets in this folder ({holder}). Press Ctrl-C to give up.")
        fcntl.flock(file.fileno(), fcntl.LOCK_EX)
