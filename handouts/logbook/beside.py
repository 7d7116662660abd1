"""Readers' open questions, told beside the wording findings of the lines that they ask about."""

from __future__ import annotations

import sys
from pathlib import Path

from handouts.errors import StudioFaults
from handouts.logbook.asked import open_questions


def tell_open_questions(folder: Path, paths: tuple[str, ...]) -> None:
    """Print one line a question.  They are no findings and change no exit status.

    folder: the studio.  paths: that were checked; none for all of them.
    """
    try:
        waiting = open_questions(folder)
    except StudioFaults as problem:
        print(problem, file=sys.stderr)
        return
    wanted = [Path(path).resolve() for path in paths if path != "-"]
    for one in waiting:
        place = (folder / one.path).resolve()
        if not paths or (one.path and any(place.is_relative_to(path) for path in wanted)):
            print(one)
