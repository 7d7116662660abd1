"""Knows which sheets are still as they would be made, and what changed if not.

A sheet depends on its Handout tree (all words of all texts, client, plan and
log that reach it), the client's settings for the form, the templates, and the
versions of program and libraries.  Their fingerprint is kept beside the files
in `.fingerprints.json`, with the fingerprint of each input by name, so that
"why was this remade?" has an answer.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from dataclasses import asdict, dataclass, field
from pathlib import Path

from handouts.making.writing import write_whole

RECORD_NAME = ".fingerprints.json"
_FORMAT = 1


def fingerprint(*parts: object) -> str:
    """A fingerprint of things whose `repr` says all of them, such as frozen data."""
    digest = hashlib.sha256()
    for part in parts:
        digest.update(repr(part).encode("utf-8", "surrogatepass"))
        digest.update(b"\x00")
    return digest.hexdigest()[:32]


def folder_fingerprint(folder: Path, pattern: str) -> str:
    """A fingerprint of the names and bytes of the files that match below a folder."""
    files = sorted(path for path in folder.rglob(pattern) if path.is_file())
    return fingerprint(*((str(path.relative_to(folder)), path.read_bytes()) for path in files))


@dataclass(frozen=True)
class MadeFile:
    """What is known of one file that was made.

    whole: fingerprint of everything that it depends on.
    inputs: name of each input, such as "client file" or "text goblet-squat",
        to its fingerprint or version.
    size, changed: bytes, and the time of last change in nanoseconds, by which
        a file that was edited or replaced by hand is noticed.
    """

    whole: str
    inputs: Mapping[str, str]
    pages: int
    size: int
    changed: int


@dataclass
class Record:
    """What is known of the files of one folder; `save` writes what changed."""

    folder: Path
    files: dict[str, MadeFile] = field(default_factory=dict)
    _dirty: bool = False

    @classmethod
    def of(cls, folder: Path) -> Record:
        """Read a folder's record; one that is missing, old or damaged is empty."""
        try:
            told = json.loads((folder / RECORD_NAME).read_text("utf-8"))
            if told["format"] != _FORMAT:
                return cls(folder)
            return cls(folder, {name: MadeFile(**entry) for name, entry in told["files"].items()})
        except (OSError, ValueError, TypeError, KeyError, AttributeError, RecursionError):
            return cls(folder)

    def still_good(self, name: str, whole: str) -> bool:
        """Whether the file is there, untouched, and would be made just so again."""
        known = self.files.get(name)
        if known is None or known.whole != whole:
            return False
        try:
            found = (self.folder / name).stat()
        except OSError:
            return False
        return (found.st_size, found.st_mtime_ns) == (known.size, known.changed)

    def why(self, name: str, whole: str, inputs: Mapping[str, str]) -> str:
        """In words, why a file is to be made: never empty."""
        known = self.files.get(name)
        if known is None:
            return "it was not made before"
        if known.whole == whole:
            return "the file was changed or taken away by hand"
        changed = [
            each for each in sorted({*inputs, *known.inputs}) if inputs.get(each) != known.inputs.get(each)
        ]
        return f"changed: {', '.join(changed)}" if changed else "the program reckons it differently now"

    def add(self, name: str, whole: str, inputs: Mapping[str, str], pages: int) -> None:
        """Remember a file that has just been written."""
        found = (self.folder / name).stat()
        self.files[name] = MadeFile(whole, dict(inputs), pages, found.st_size, found.st_mtime_ns)
        self._dirty = True

    def save(self) -> None:
        """Write the record, whole, if anything was added.  Raises OSError."""
        if self._dirty:
            told = {"format": _FORMAT, "files": {name: asdict(made) for name, made in sorted(self.files.items())}}
            write_whole(self.folder / RECORD_NAME, json.dumps(told, indent=1).encode())
            self._dirty = False
