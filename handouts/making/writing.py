"""Files are written whole or not at all, readable by their owner alone."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path

# Temporary files of a run that was cut off start with this, so that the next
# run knows them.
UNFINISHED = ".unfinished-"


def write_whole(path: Path, data: bytes) -> None:
    """Put `data` at `path` in one step: a reader sees the old file or the new.

    The folder is made when it is not there.  Raises OSError; then `path` is as
    it was.
    """
    path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
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
