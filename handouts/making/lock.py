"""One at a time in one folder; the second waits, and in an out folder says for whom."""

from __future__ import annotations

import contextlib
import getpass
import os
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from handouts.errors import HandoutsError
from handouts.making.writing import UNFINISHED, make_private, write_whole

_HOLDER_NAME = ".run"


@contextmanager
def only_run(out: Path, say: Callable[[str], None]) -> Iterator[None]:
    """Hold the out folder; wait for another run, telling once who holds it.

    No unfinished file of a run that was cut off is left.  The folder itself is
    locked, so that nothing of the lock stays behind; where the system has no
    such locks the run goes on without.  Raises OutUnusable when the folder
    cannot be made or written to.
    """
    holder = out / _HOLDER_NAME
    with contextlib.ExitStack() as held:
        try:
            held.enter_context(alone_in(out, lambda: _tell_holder(holder, say)))
        except BrokenPipeError:
            raise  # of what is said, not of the folder
        except OSError as problem:
            raise _unusable(out, problem) from problem
        for path in out.rglob(f"{UNFINISHED}*"):
            with contextlib.suppress(OSError):
                path.unlink()
        try:
            write_whole(holder, f"{user() or 'somebody'}, process {os.getpid()}, since {time.strftime('%H:%M')}".encode())
        except OSError as problem:
            raise _unusable(out, problem) from problem
        try:
            yield
        finally:
            with contextlib.suppress(OSError):
                holder.unlink()


@contextmanager
def alone_in(folder: Path, taken: Callable[[], None] = lambda: None) -> Iterator[None]:
    """Hold a folder for the moment that it takes to read something in it and to
    write it back; another who wants to do so waits.

    taken: called once when another holds it.
    Not to be held while a person is asked something, nor twice by one process.
    The folder is made when it is not there; where the system has no such locks
    it goes on without.  Raises OSError when the folder cannot be made or read.
    """
    make_private(folder)
    try:
        import fcntl
    except ImportError:  # Windows
        yield
        return
    held = os.open(folder, os.O_RDONLY)
    try:
        try:
            fcntl.flock(held, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            taken()
            fcntl.flock(held, fcntl.LOCK_EX)
        yield
    finally:
        os.close(held)


def user() -> str:
    """The name of who runs the program; "" where the system has none, as for a
    bare number in a container."""
    try:
        return getpass.getuser()
    except (KeyError, OSError, ImportError):
        return ""


class OutUnusable(HandoutsError):
    """Nothing can be written to the out folder."""


def _unusable(out: Path, problem: OSError) -> OutUnusable:
    return OutUnusable(f"{out}: not written: {problem.strerror or problem}; name another folder with --out")


def _tell_holder(holder: Path, say: Callable[[str], None]) -> None:
    try:
        who = holder.read_text("utf-8")
    except OSError:
        who = "somebody"
    say(f"Waiting: another run is making sheets in this folder ({who}). Press Ctrl-C to give up.")
