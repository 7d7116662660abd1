"""Sheets that lie in the out folder from an earlier run, where this run makes none.

They are named, so that nobody hands one out by mistake, and never taken away.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from handouts.making.file_names import safe_name

_PROGRESS = "progress"


def sheets_of(folder: Path, plans: frozenset[str] | None = None) -> tuple[Path, ...]:
    """The files of earlier runs, in order of name.

    folder: of one client in the out folder.
    plans: codes of the plans to look for, any version; None for all.
    """
    if not folder.is_dir():
        return ()
    begins = None if plans is None else tuple(f"{_without_version(code)}-v" for code in plans)
    return tuple(sorted(_files(folder, begins)))


def told(client: str, old: tuple[Path, ...]) -> str:
    """One line that names them all."""
    many = f"{len(old)} older file{'' if len(old) == 1 else 's'}"
    return (
        f"Old: of {client} {many} from an earlier run still there, not made anew and perhaps no longer right; "
        f"do not hand out: {', '.join(map(str, old))}"
    )


def _without_version(code: str) -> str:
    """What the folders of all versions of a plan begin with."""
    return safe_name(f"{code}-v1").partition("-v1")[0]


def _files(folder: Path, begins: tuple[str, ...] | None) -> Iterator[Path]:
    for plan in folder.iterdir():
        if plan.is_symlink() or not plan.is_dir() or plan.name == _PROGRESS or plan.name.startswith("."):
            continue
        if begins is None or plan.name.startswith(begins):
            yield from (path for path in plan.iterdir() if path.is_file() and not path.name.startswith("."))
