"""Files are written whole or not at all, readable by their owner alone."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path

# Temporary files of a run that was cut off start with this, so that the next
# run knows them.
UNFINISHED = ".unfinished-"


def make_private(folder: Path) -> None:
    """Make a folder and those above it, readable by their owner alone."""
    if not folder.is_dir():
        make_private(folder.parent)
        folder.mkdir(exist_ok=True, mode=0o700)


def write_whole(path: Path, data: bytes) -> None:
    """Put `data` at `path` in one step: a reader sees the old file or the new.

    The folders are made when they are not there.  A file that already holds
    exactly `data` is left untouched.  Raises OSError; then `path` is as it was.
    """
    if path.is_file() and path.read_bytes() == data:
        return
    make_private(path.parent)
    handle, name = tempfile.mkstemp(prefix=UNFINISHED, dir=path.parent)
    try:
        # mkstemp makes the file readable by its owner alone.
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        os.replace(name, path)
    except BaseException:
        os.unlink(name)
        raise
