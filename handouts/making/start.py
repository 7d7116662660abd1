"""Lays out a new studio folder that makes at once."""

from __future__ import annotations

import shutil
from pathlib import Path

from handouts import carried
from handouts.errors import HandoutsError
from handouts.making.writing import make_private, write_whole

_EMPTY_FOLDERS = ("exercise_texts", "clients", "plans", "logs", "templates", "out")


class FolderInUse(HandoutsError):
    """The folder for a new studio already holds something."""


def start_studio(folder: Path) -> tuple[Path, ...]:
    """Write a new studio; gives the files written, in order.

    Raises FolderInUse when `folder` is a file or holds anything: nothing of
    the user's is ever written over.  Raises OSError when the disk refuses;
    then nothing is left of the attempt.
    """
    if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
        raise FolderInUse(f"{folder} is not empty; name a new folder, such as 'handouts start {folder}-studio'")
    was_there = folder.is_dir()
    make_private(folder)
    source = carried.starter_studio()
    written = []
    try:
        for name in _EMPTY_FOLDERS:
            (folder / name).mkdir(mode=0o700)
        for path in sorted(source.rglob("*")):
            if path.is_file():
                target = folder / path.relative_to(source)
                write_whole(target, path.read_bytes())
                written.append(target)
    except OSError:
        # Half a studio would stand in the way of the next attempt.
        for each in folder.iterdir():
            shutil.rmtree(each) if each.is_dir() else each.unlink()
        if not was_there:
            folder.rmdir()
        raise
    return tuple(written)
