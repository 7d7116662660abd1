"""Bytes of one file to text, or a fault that says how to save it.

The first room of reading: everything that comes out of here is sound Unicode
with "\\n" line ends and no invisible characters that would trip a voice or a
braille table later.
"""

from __future__ import annotations

import os
import re
import stat
import unicodedata
from pathlib import Path

from handouts.errors import Fault, StudioFaults, quoted

LARGEST_TEXT = 200_000
"""Bytes of an exercise, plan, client or studio file; a long one has 10,000."""

LARGEST_LOG = 20_000_000
"""Bytes of a log file: more than a lifetime of sessions."""

_SAVE_AS = "open it in a text editor and save it as 'UTF-8' plain text"

# Characters that no trainer types and no reader perceives.  They come along
# when text is pasted from a web page or a word processor.  Control characters
# (Unicode's category Cc) but tab and line feed, then invisible ones.
_BAD = re.compile(
    "[\x00-\x08\x0b-\x1f\x7f-\x9f"
    "\u00ad\u200b\u200e\u200f\u2028\u2029\u202a-\u202e\u2060\u2066-\u2069\ufeff\ufffe\uffff"
    # Private-use characters mean something in one font alone; none has a name
    # to speak or a braille cell.
    "\ue000-\uf8ff\U000f0000-\U000ffffd\U00100000-\U0010fffd]"
)


def read_text(path: Path, shown: str, largest: int = LARGEST_TEXT) -> str:
    """The text of one file, its lines ended by "\\n" alone.

    A UTF-8 byte-order mark is dropped; Windows and old Macintosh line ends are
    read.  shown: the path for messages, relative to the studio.  largest: in
    bytes.
    Raises StudioFaults when the file cannot be read, is not UTF-8 text or is
    too large.
    """
    return decode_text(read_bytes(path, shown, largest), shown)


def decode_text(data: bytes, shown: str) -> str:
    """The text of some bytes, as `read_text` gives it for a file.

    Raises StudioFaults when they are not UTF-8 text.
    """
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        raise _refused(shown, 0, "the file is saved as UTF-16", _SAVE_AS)
    text = _decode(data.removeprefix(b"\xef\xbb\xbf"), shown)
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    faults = _bad_characters(text, shown)
    if faults:
        raise StudioFaults(faults)
    return text


def _refused(shown: str, line: int, wrong: str, instead: str) -> StudioFaults:
    return StudioFaults((Fault(shown, line, wrong, instead),))


def read_bytes(path: Path, shown: str, largest: int = LARGEST_TEXT) -> bytes:
    """The bytes of one file.

    shown: the path for messages.  Raises StudioFaults when the file cannot be
    read, is no ordinary file or is larger than `largest` bytes.
    """
    try:
        # O_NONBLOCK: opening a named pipe that nobody writes to must not hang.
        handle = os.open(path, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_BINARY", 0))
    except FileNotFoundError:
        raise _refused(shown, 0, "there is no such file", "make it, or take its name out") from None
    except PermissionError:
        if path.is_dir():  # Windows says no permission where others say it is a folder
            raise _refused(shown, 0, "this is a folder, not a file", "put a text file in its place") from None
        raise _refused(shown, 0, "you may not read this file", "give yourself the right to read it") from None
    except OSError as problem:
        raise _refused(
            shown, 0, f"the file cannot be opened ({problem.strerror or problem})", "check the file and its disk"
        ) from None
    try:
        mode = os.fstat(handle).st_mode
        if stat.S_ISDIR(mode):
            raise _refused(shown, 0, "this is a folder, not a file", "put a text file in its place")
        if not stat.S_ISREG(mode):
            raise _refused(shown, 0, "this is not an ordinary file", "put a text file in its place")
        with os.fdopen(handle, "rb", closefd=False) as file:
            data = file.read(largest + 1)
    except OSError as problem:
        raise _refused(
            shown, 0, f"the file cannot be read ({problem.strerror or problem})", "check the file and its disk"
        ) from None
    finally:
        os.close(handle)
    if len(data) > largest:
        raise _refused(
            shown,
            0,
            f"the file is larger than {largest // 1000:,} kilobytes",
            "split it, or check that it is the right file",
        )
    return data


def _decode(data: bytes, shown: str) -> str:
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError as problem:
        line = _line_of(data[: problem.start])
        if b"\0" in data:
            raise _binary(shown, _line_of(data[: data.index(b"\0")])) from None
        raise _refused(
            shown,
            line,
            f"the file is not UTF-8 text; the first letter that cannot be read is in this line, near "
            f"'{_around(data, problem.start)}'",
            _SAVE_AS,
        ) from None


def _line_of(before: bytes) -> int:
    return 1 + before.replace(b"\r\n", b"\n").replace(b"\r", b"\n").count(b"\n")


def _around(data: bytes, at: int) -> str:
    """The words around a byte that cannot be read, "_" standing for such bytes."""
    start = max(data.rfind(b"\n", 0, at), data.rfind(b"\r", 0, at), at - 20) + 1
    line = re.split(b"[\r\n]", data[start : at + 12])[0]
    words = line.decode("utf-8", "replace").replace("\ufffd", "_")
    return "".join(sign for sign in words if sign.isprintable())


def _binary(shown: str, line: int) -> StudioFaults:
    return _refused(
        shown,
        line,
        "the file holds zero bytes, so it is not plain text",
        "save the text from its own program as plain text in UTF-8",
    )


def readable(text: str) -> str:
    """A text without the characters that `read_text` refuses."""
    return _BAD.sub("", text)


def _bad_characters(text: str, shown: str) -> tuple[Fault, ...]:
    """One fault for each line with a control or an invisible character."""
    if "\0" in text:
        raise _binary(shown, 1 + text.count("\n", 0, text.index("\0")))
    if not _BAD.search(text):
        return ()
    faults = []
    for number, line in enumerate(text.split("\n"), 1):
        bad = _BAD.search(line)
        if bad:
            found = bad[0]
            nameless = "a control character" if unicodedata.category(found) == "Cc" else "without a name"
            name = unicodedata.name(found, nameless).lower()
            faults.append(
                Fault(
                    shown,
                    number,
                    f"a character that cannot be read (U+{ord(found):04X}, {name}) stands after {quoted(_start_of(line, found))}",
                    "delete it and type the line again",
                )
            )
    return tuple(faults)


def _start_of(line: str, found: str) -> str:
    return line[: line.index(found)][-20:]
