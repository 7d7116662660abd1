"""Opens a studio folder: found, safe to go into, of today's format, private.

Every command that works on a studio comes through here.
"""

from __future__ import annotations

import os
import shutil
import stat
from collections.abc import Iterator, Sequence
from pathlib import Path

from handouts import carried
from handouts.errors import Fault, StudioFaults
from handouts.making.writing import UNFINISHED, write_whole
from handouts.reading.folder import STUDIO_FILE, find_studio
from handouts.reading.text_file import LARGEST_LOG, read_text
from handouts.reading.upgrades import STEPS, Step, format_of, newest, upgraded

FOLDERS = ("clients", "plans", "logs", "exercise_texts", "templates", "questions")
"""Of a studio, all that hold files of the trainer's."""

TOLD = ".open-to-others"
"""A file in the studio that remembers that the trainer was told."""

_ENDINGS = (".yaml", ".md", ".csv", ".json", ".j2")


def open_studio(start: Path, steps: Sequence[Step] = STEPS) -> tuple[Path, tuple[str, ...]]:
    """The studio at `start` or above, and what to tell the trainer of it.

    Raises StudioNotFound; StudioFaults for a folder that is a link out of the
    studio and for a studio of a later format; OSError when the files of an
    older format cannot be written anew, which are then as they were.
    """
    folder = find_studio(start)
    _refuse_links(folder)
    return folder, _upgrade(folder, steps)


def _refuse_links(folder: Path) -> None:
    """A studio that came from elsewhere must not reach into other folders."""
    inside = folder.resolve()
    faults = tuple(
        Fault(name, 0, "this is a link that leads out of the studio", f"put the folder itself here{more}")
        for name, more in ((STUDIO_FILE, ""), *((name, "") for name in FOLDERS), ("out", ", or name its place with --out"))
        if (folder / name).is_symlink() and not (folder / name).resolve().is_relative_to(inside)
    )
    if faults:
        raise StudioFaults(faults)


# --- older formats -------------------------------------------------------------------


def _upgrade(folder: Path, steps: Sequence[Step]) -> tuple[str, ...]:
    """Bring an older studio to today's format and keep its files as they were.

    The copy is whole before the first file changes, and studio.yaml with the
    new format comes last: cut off at any moment, the next run begins again
    from the copy.
    """
    studio_file = read_text(folder / STUDIO_FILE, STUDIO_FILE)
    before, _ = format_of(studio_file)
    if not before or before == newest(steps):
        return ()
    copy = folder / f"before-format-{newest(steps)}"
    if before < newest(steps) and not copy.is_dir():
        unfinished = folder / f"{UNFINISHED}copy"
        shutil.rmtree(unfinished, ignore_errors=True)
        for path, shown in _text_files(folder):
            (unfinished / shown).parent.mkdir(parents=True, exist_ok=True, mode=0o700)
            shutil.copyfile(path, unfinished / shown)
            (unfinished / shown).chmod(0o600)
        unfinished.chmod(0o700)
        unfinished.rename(copy)
    begin = copy if copy.is_dir() else folder
    texts = {shown: read_text(path, shown, LARGEST_LOG) for path, shown in _text_files(begin)}
    texts[STUDIO_FILE] = studio_file
    changed = upgraded(texts, steps)
    for shown in sorted(changed, key=lambda shown: shown == STUDIO_FILE):
        write_whole(folder / shown, changed[shown].encode("utf-8"))
    return (
        f"The studio was brought from format {before} to format {newest(steps)}: {len(changed)} files written anew; "
        f"the files as they were lie in {copy}",
    )


def _text_files(folder: Path) -> Iterator[tuple[Path, str]]:
    yield folder / STUDIO_FILE, STUDIO_FILE
    for name in FOLDERS:
        for path in sorted((folder / name).rglob("*")):
            if path.is_file() and not path.is_symlink() and path.suffix in _ENDINGS:
                yield path, path.relative_to(folder).as_posix()


# --- private ------------------------------------------------------------------------


def point_out_open(folder: Path, top: Path = Path("/")) -> tuple[str, ...]:
    """What to tell when others on this machine can read clients or logs.

    It is told once, and again after it was mended and came back.
    top: the folder above which rights are not looked at.
    """
    if os.name == "nt" or folder.resolve() == carried.demo_studio():
        return ()  # Windows has rights of another kind; the demo is invented
    open_files = _open_files(folder, top)
    memory = folder / TOLD
    try:
        if not open_files:
            memory.unlink(missing_ok=True)
            return ()
        if memory.is_file():
            return ()
        write_whole(memory, b"You were told that others on this machine can read this studio. Not yet mended.\n")
    except OSError:
        pass  # it is told again next time, which does no harm
    shown = open_files[0].relative_to(folder)
    more = f" and {len(open_files) - 1} more" if len(open_files) > 1 else ""
    return (f"Others on this machine can read {shown}{more}; close the studio to them with: chmod -R go= '{folder}'",)


def _open_files(folder: Path, top: Path) -> list[Path]:
    """Files of clients, logs and sheets that everybody can come to and read."""
    place = folder.resolve()
    above = [each for each in (place, *place.parents) if each.is_relative_to(top)]
    if not all(_has(each, stat.S_IXOTH) for each in above):
        return []
    found = []
    for name in ("clients", "logs", "questions", "out"):
        for path, folders, files in os.walk(folder / name):
            folders[:] = sorted(each for each in folders if _has(Path(path, each), stat.S_IXOTH))
            if _has(Path(path), stat.S_IXOTH):
                found += [Path(path, file) for file in sorted(files) if _has(Path(path, file), stat.S_IROTH)]
    return found


def _has(path: Path, right: int) -> bool:
    try:
        return bool(path.stat().st_mode & right)
    except OSError:
        return False
