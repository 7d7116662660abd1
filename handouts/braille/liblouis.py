"""The one door to liblouis, the system's braille translator.

liblouis comes with the system, and so does its Python module `louis`; the
package of that name on the Python Package Index is another, empty project.
`louis` is therefore looked for in the places where systems put it, also from
inside a virtual environment that does not see those places.

liblouis is not thread-safe: threads that use it at once end the process
(liblouis issue 543).  Each process has one owner, and the owner has a lock.
"""

from __future__ import annotations

import functools
import glob
import importlib.util
import os
import re
import sys
import threading
from collections.abc import Iterator
from pathlib import Path
from types import ModuleType

from handouts.errors import MissingLibrary, RenderError

# Typeforms of liblouis; they add up.
BOLD = 0x0004
NO_CONTRACT = 0x1000

# Output as Unicode braille patterns.  A display table must stand first in a list.
_DISPLAY = "unicode.dis"
# Translation mode in which liblouis leaves out what it does not know.
_NO_UNDEFINED = 128

_TABLE_NAME = re.compile(r"[A-Za-z0-9][A-Za-z0-9._-]*\.(?:ctb|utb|tbl|uti|cti|dic)")

# Six-dot cells that stand in print go through as they are.
_CELLS = "".join(map(chr, range(0x2800, 0x2840)))

_OWNERS_LOCK = threading.Lock()


def _folders() -> Iterator[Path]:
    """Folders that may hold the package `louis`, the likeliest first."""
    if hint := os.environ.get("HANDOUTS_LOUIS"):
        yield Path(hint)
    version = f"python{sys.version_info.major}.{sys.version_info.minor}"
    yield from (Path(entry) for entry in sys.path if entry)
    # Debian, Ubuntu; Fedora, Arch; Homebrew on Apple silicon, on Intel and on Linux.
    yield Path("/usr/lib/python3/dist-packages")
    prefixes = ("/usr", "/usr/local", "/opt/homebrew", "/home/linuxbrew/.linuxbrew")
    for prefix in prefixes:
        for library in ("lib", "lib64"):
            yield Path(prefix, library, version, "site-packages")
    # The module is plain Python: one that was installed for another Python 3 serves as well.
    for prefix in prefixes:
        for library in ("lib", "lib64"):
            yield from map(Path, sorted(glob.glob(f"{prefix}/{library}/python3.*/site-packages"), reverse=True))


def _advice() -> str:
    """How to install liblouis on this system."""
    if sys.platform == "darwin":
        return "install it with: brew install liblouis"
    if Path("/etc/debian_version").exists():
        return "install it with: sudo apt-get install python3-louis liblouis-data"
    if Path("/etc/fedora-release").exists() or Path("/etc/redhat-release").exists():
        return "install it with: sudo dnf install python3-louis"
    return "install liblouis with its Python module from this system's own packages (never from PyPI)"


def _load_module() -> ModuleType:
    """Load the package `louis` alone, without opening the rest of its folder
    to this environment.  Raises MissingLibrary."""
    # The tables are those that were installed with liblouis, whatever the caller's shell says.
    os.environ.pop("LOUIS_TABLEPATH", None)
    failure = "the system's Python module 'louis' was not found"
    for folder in _folders():
        source = folder / "louis" / "__init__.py"
        if not source.is_file():
            continue
        spec = importlib.util.spec_from_file_location("louis", source)
        if spec is None or spec.loader is None:
            continue
        module = importlib.util.module_from_spec(spec)
        try:
            spec.loader.exec_module(module)
        except OSError as error:
            failure = f"the liblouis library itself could not be loaded ({error})"
            continue
        if hasattr(module, "translate") and hasattr(module, "version"):
            return module
    raise MissingLibrary(f"braille needs liblouis, and {failure}; {_advice()}; print and screen forms work without it")


class Liblouis:
    """The one owner of liblouis in this process; use `owner()`."""

    def __init__(self) -> None:
        self._louis = _load_module()
        self._lock = threading.Lock()
        self._louis.setLogLevel(self._louis.LOG_OFF)
        self.version: str = self._louis.version()
        self.wide: bool = self._louis.charSize() == 4
        self._known: dict[tuple[tuple[str, ...], str], bool] = {}
        self._all_known: dict[tuple[str, ...], set[str]] = {}
        # From 3.29 on a no-break space joins two groups of digits into one
        # number; before that a plain space did (liblouis NEWS, 3.29.0).
        joined, _, _ = self.forward(("en-ueb-g1.ctb",), "0\u00a00", None)
        self.numeric_space = "\u00a0" if joined == "⠼⠚⠐⠚" else " "

    def forward(
        self, tables: tuple[str, ...], text: str, typeforms: tuple[int, ...] | None
    ) -> tuple[str, list[int], list[int]]:
        """Translate print to cells.

        text: as prepared (see `preparation`); typeforms: one number for each
            character, or None for plain text.
        Returns the cells (U+2800 and up), for each cell the index of the
        character it came from, and for each character the index of its first
        cell.
        Raises RenderError if the tables cannot be used.
        """
        with self._lock:
            try:
                cells, inputs, outputs, _ = self._louis.translate(
                    [_DISPLAY, *tables], text, list(typeforms) if typeforms else None
                )
            except RuntimeError as error:
                raise RenderError(
                    f"liblouis {self.version} cannot translate with the table list {', '.join(tables)}; "
                    "install liblouis's own tables (Debian: liblouis-data) or name another table"
                ) from error
        return cells, inputs, outputs

    def backward(self, tables: tuple[str, ...], cells: str) -> str:
        """Translate cells back to print, for a proof.  Raises RenderError."""
        with self._lock:
            try:
                text: str = self._louis.backTranslateString([_DISPLAY, *tables], cells)
            except RuntimeError as error:
                raise RenderError(
                    f"liblouis {self.version} cannot translate back with {', '.join(tables)}; "
                    "the proof needs another table list"
                ) from error
        return text

    def knows(self, tables: tuple[str, ...], character: str) -> bool:
        """Whether the tables have braille for one character."""
        key = (tables, character)
        if key not in self._known:
            known = self.wide or ord(character) <= 0xFFFF
            if known and not character.isspace():
                with self._lock:
                    cells = self._louis.translateString([_DISPLAY, *tables], character, mode=_NO_UNDEFINED)
                # A character that the table lists without dots comes out as a
                # blank, which would drop it.
                known = bool(cells.strip("\u2800 ")) and all("\u2800" <= cell <= "\u283f" for cell in cells)
            self._known[key] = known
        return self._known[key]

    def unknown(self, tables: tuple[str, ...], text: str) -> set[str]:
        """The characters of a text that the tables have no braille for."""
        known = self._all_known.setdefault(tables, set(_CELLS))
        new = set(text) - known
        known |= {character for character in new if self.knows(tables, character)}
        return new - known

    def check_tables(self, tables: tuple[str, ...]) -> None:
        """Make sure that a table list of the trainer's own can be used.

        Raises RenderError for anything that is not the plain name of an
        installed table: given a path, liblouis would read that file.
        """
        for table in tables:
            if not _TABLE_NAME.fullmatch(table):
                raise RenderError(
                    f"'{table}' is not the name of a braille table; write a name that liblouis installs, such as 'en-ueb-g2.ctb'"
                )
        with self._lock:
            try:
                self._louis.checkTable([_DISPLAY, *tables])
            except RuntimeError:
                raise RenderError(
                    f"liblouis {self.version} has no usable table list '{', '.join(tables)}'; "
                    "look in liblouis's folder of tables for the name"
                ) from None


@functools.cache
def _owner() -> Liblouis:
    return Liblouis()


def owner() -> Liblouis:
    """The one owner of liblouis in this process.  Raises MissingLibrary."""
    with _OWNERS_LOCK:
        return _owner()
