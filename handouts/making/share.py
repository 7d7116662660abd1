"""Copies out what may be given away: finished sheets, and nothing of the studio.

Before a file goes out, what it says about itself is read: its title, author,
producer, dates.  Nothing there may name this machine, its user, or a condition
of health from the care table.
"""

from __future__ import annotations

import re
import socket
import zipfile
from collections.abc import Iterator
from html.parser import HTMLParser
from io import BytesIO
from pathlib import Path

from handouts import carried
from handouts.coaching.care import care_table
from handouts.errors import HandoutsError
from handouts.making.file_names import safe_names
from handouts.making.fingerprints import Record
from handouts.making.lock import user
from handouts.making.writing import write_whole
from handouts.reading.faults import instead_of
from handouts.reading.studio import read_studio_parts


class NotToShare(HandoutsError):
    """There is nothing to share, or something in it must not go out."""


def share(folder: Path, out: Path, code: str, to: Path) -> Iterator[Path]:
    """Copy the finished sheets of one client into the folder `to`.

    Yields each copy.  Raises NotToShare, before anything is copied, when the
    client is unknown, has no sheets, `to` lies inside the studio, or a file
    says too much about itself.
    """
    reading = read_studio_parts(folder, carried.starter_texts())
    if code not in reading.known_clients:
        hint = instead_of(code, reading.known_clients, "the folder clients holds the names")
        raise NotToShare(f"no client '{code}' in this studio; {hint}")
    if to.resolve().is_relative_to(folder.resolve()):
        raise NotToShare(f"{to} lies inside the studio; name a folder outside it with --to")
    place = out / safe_names(reading.known_clients)[code]
    sheets = sorted(
        record.folder / name
        for record in map(Record.of, sorted(path for path in place.glob("*") if path.is_dir()))
        for name in record.files
        if (record.folder / name).is_file()
    )
    if not sheets:
        raise NotToShare(f"{code} has no sheets in {place}; make them first with 'handouts make {code}'")
    own = frozenset({user().lower(), socket.gethostname().lower()} - {""})
    health = frozenset(
        name.lower() for rule in care_table().cares.values() for names in rule.names.values() for name in names
    )
    for sheet in sheets:
        told = describes_itself(sheet.name, sheet.read_bytes()).lower()
        for words, what in ((own, "this machine or its user"), (health, "a condition of health")):
            found = sorted(word for word in words if re.search(rf"\b{re.escape(word)}\b", told))
            if found:
                raise NotToShare(
                    f"{sheet}: what the file says about itself names {what} ('{found[0]}'); "
                    "nothing was copied; change the title or the template, and make the sheet again"
                )
    for sheet in sheets:
        copy = to / sheet.name
        write_whole(copy, sheet.read_bytes())
        yield copy


def describes_itself(name: str, data: bytes) -> str:
    """All that a file says about itself and does not show: its metadata as text."""
    if name.endswith(".pdf"):
        return _pdf_metadata(data)
    if name.endswith(".html"):
        return _html_metadata(data.decode("utf-8"))
    if name.endswith((".epub", ".ebrl")):
        return _package_metadata(data)
    if name.endswith(".pef"):
        head = re.search(r"<head>.*?</head>", data.decode("utf-8"), re.S)
        return re.sub(r"<[^>]+>", " ", head[0]) if head else ""
    return ""


def _pdf_metadata(data: bytes) -> str:
    import pikepdf

    with pikepdf.open(BytesIO(data)) as pdf:
        words = [str(value) for value in pdf.docinfo.values()]
        if "/Metadata" in pdf.Root:
            words.append(re.sub(r"<[^>]+>", " ", pdf.Root.Metadata.read_bytes().decode("utf-8", "replace")))
        return "\n".join(words)


class _Head(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.words: list[str] = []
        self._in_title = False

    def handle_starttag(self, tag: str, attributes: list[tuple[str, str | None]]) -> None:
        self._in_title = tag == "title"
        if tag == "meta":
            self.words += [value for _, value in attributes if value]

    def handle_data(self, data: str) -> None:
        if self._in_title:
            self.words.append(data)

    def handle_comment(self, data: str) -> None:
        self.words.append(data)


def _html_metadata(text: str) -> str:
    head = _Head()
    head.feed(text)
    return "\n".join(head.words)


def _package_metadata(data: bytes) -> str:
    words = []
    with zipfile.ZipFile(BytesIO(data)) as package:
        words.append(package.comment.decode("utf-8", "replace"))
        for name in package.namelist():
            text = package.read(name).decode("utf-8", "replace")
            if name.endswith(".opf"):
                words.append(re.sub(r"<[^>]+>", " ", text))
            elif name.endswith((".html", ".xhtml")):
                words.append(_html_metadata(text))
    return "\n".join(words)
