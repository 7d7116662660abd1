"""Lines of a log in words, for the terminal."""

from __future__ import annotations

from handouts.coaching.timing import clock
from handouts.models import LogLine


def describe(line: LogLine) -> str:
    """One line of a log in words, the most useful first."""
    pieces: list[str] = []
    if line.side:
        pieces.append(line.side)
    if line.weight:
        pieces.append(str(line.weight))
    if line.reps == (0,):
        pieces.append("skipped")
    elif line.reps:
        last = "last set " if len(line.reps) == 1 else ""
        pieces.append(f"{last}{'/'.join(map(str, line.reps))} reps")
    if line.seconds is not None:
        pieces.append(clock(line.seconds))
    if line.metres is not None:
        pieces.append(f"{line.metres} m")
    if line.rounds is not None:
        pieces.append(f"{line.rounds} rounds")
    if line.effort is not None:
        pieces.append(f"effort {line.effort}")
    if line.warning:
        pieces.append(f"warning sign: {line.warning}")
    if line.note:
        pieces.append(f"note: {line.note}")
    name = line.exercise or "not known which exercise"
    return f"{name}: {', '.join(pieces) or 'nothing counted'}"
