"""Which files of a studio folder are read, and where the studio is."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator
from pathlib import Path

from handouts.errors import Fault, StudioNotFound

STUDIO_FILE = "studio.yaml"

# What trainers, editors and spreadsheets write for the endings that are read.
_MISSPELT = {
    ".yaml": (".yaml.txt", ".yml.txt", ".yml", ".txt"),
    ".md": (".md.txt", ".markdown", ".txt"),
    ".csv": (".csv.txt", ".tsv", ".txt"),
}


def find_studio(start: Path) -> Path:
    """The studio folder at `start` or above it: the nearest with a studio.yaml.

    Raises StudioNotFound.
    """
    place = start.resolve()
    for folder in (place, *place.parents):
        if (folder / STUDIO_FILE).is_file():
            return folder
    raise StudioNotFound(
        f"{start}: no studio here nor in a folder above, since none of them holds a file '{STUDIO_FILE}'; "
        "go into your studio's folder, name it with --studio, or lay out a new one with 'handouts start FOLDER'"
    )


def files_in(folder: Path, ending: str, needed: bool = False) -> Iterator[tuple[Path, str] | Fault]:
    """Each file of a folder with its path for messages, in the order of names.

    Hidden files and files of other kinds are left alone.  A fault comes for a
    name that is meant to be read and would not be, for a link that leads out
    of the studio, and for a folder that is needed and missing.
    """
    try:
        paths = sorted(folder.iterdir())
    except FileNotFoundError:
        if needed:
            wrong = "there is no such folder in the studio"
            yield Fault(folder.name, 0, wrong, "make it, or check that this is the right folder")
        return
    except OSError as problem:
        wrong = f"the folder cannot be read ({problem.strerror or problem})"
        yield Fault(folder.name, 0, wrong, "check that it is a folder and yours to read")
        return
    studio = folder.parent.resolve()
    for path in paths:
        name = unicodedata.normalize("NFC", path.name)
        shown = f"{folder.name}/{name}"
        if name.startswith(".") or name.endswith("~"):
            continue
        if not name.isprintable():
            readable = "".join(sign if sign.isprintable() else "?" for sign in name)
            yield Fault(f"{folder.name}/{readable}", 0, "the file's name holds signs that cannot be read", "rename it")
            continue
        if not name.endswith(ending):
            found = next((other for other in (*_MISSPELT[ending], ending) if name.lower().endswith(other)), None)
            if found:
                stem, written = name[: -len(found)], name[-len(found) :]
                yield Fault(shown, 0, f"a name that ends in '{written}' is not read here", f"name it '{stem}{ending}'")
        elif path.is_symlink() and not path.resolve().is_relative_to(studio):
            yield Fault(shown, 0, "this is a link that leads out of the studio", "put the file itself here")
        else:
            yield path, shown


def stem(shown: str) -> str:
    """The name of a file without its folder and its ending."""
    return shown.rpartition("/")[2].rpartition(".")[0]
