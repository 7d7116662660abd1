"""Files in, findings out: the wording checker as a trainer meets it.

The language of a text is what the caller asks for, else what its front matter
says, else what its file name says (`hip-hinge.fr.md`), else the setting.
"""

from __future__ import annotations

import os
import re
from bisect import bisect_right
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import NamedTuple

from handouts.errors import Fault, StudioFaults
from handouts.reading.text_file import decode_text, read_bytes
from handouts.wording.allowed import WHY, find_allows, match_allows, unused
from handouts.wording.engine import check_texts, is_read_closely
from handouts.wording.marks import Mark, Strength
from handouts.wording.names import ALLOW, LANGUAGES
from handouts.wording.settings import Settings, find_settings, read_settings
from handouts.wording.whole_text import CHECKS
from handouts.wording.whole_text.document import Document, Facts, read_facts
from handouts.wording.whole_text.reading import Reading

LARGEST = 100_000_000
"""Bytes of a file that is checked."""

TOGETHER = 200_000
"""Characters of texts that are checked together."""

ENDINGS = (".md", ".markdown", ".txt")
"""Of the files that are checked in a folder; a file that is named may end in anything."""

_LINE_END = re.compile("\r\n|\r|\n")


class Finding(NamedTuple):
    """A mark, or a flaw of the text as a whole, with its place in the author's file.

    line, column, end_line, end_column: from 1; the end is the place after the
        last character.  Columns count characters (Unicode code points).
    start, end: characters of the file, from 0, line ends as they stand there;
        a byte-order mark is not counted.
    name: of the kind or the check.
    rewrite: words that can safely take the place of these, or None.
    """

    line: int
    column: int
    end_line: int
    end_column: int
    start: int
    end: int
    name: str
    strength: Strength
    words: str
    why: str
    suggest: str
    rewrite: str | None = None


class Allowed(NamedTuple):
    """A finding that a comment lets stand, and the reason there."""

    finding: Finding
    reason: str


@dataclass(frozen=True, slots=True)
class CheckedText:
    """What was found in one text.

    path: as the user named it, "-" for standard input.
    closely: false of a text that is too long to be read as closely as others.
    fails: a finding is as strong as the settings ask for.
    """

    path: str
    language: str
    marks: tuple[Finding, ...]
    whole_text: tuple[Finding, ...]
    allowed: tuple[Allowed, ...]
    reading: Reading
    closely: bool
    fails: bool

    @property
    def findings(self) -> tuple[Finding, ...]:
        """All of them by their place."""
        return tuple(sorted((*self.marks, *self.whole_text), key=lambda found: (found.start, found.end)))


@dataclass(frozen=True, slots=True)
class Checked:
    """What a run found: the texts that could be read, and the faults of the rest."""

    texts: tuple[CheckedText, ...]
    faults: tuple[Fault, ...]

    @property
    def exit_status(self) -> int:
        """0 clean, 1 findings, 2 something could not be checked."""
        return 2 if self.faults else int(any(text.fails for text in self.texts))


def check_all(paths: Iterable[str], standard_input: bytes = b"", language: str = "") -> Checked:
    """Check files, folders and "-", the standard input.

    language: of all texts, or "" to let each text say its own.
    """
    texts: list[CheckedText] = []
    faults: list[Fault] = []
    settings: dict[Path, Settings] = {}
    opened: list[_Opened] = []
    waiting = 0
    for shown in _files(paths, faults):
        path = Path(shown)
        try:
            data = standard_input if shown == "-" else read_bytes(path, shown, LARGEST)
            text = decode_text(data, shown)
            folder = Path.cwd() if shown == "-" else Path(os.path.abspath(path)).parent
            opened.append(_open(text, shown, _settings_of(folder, settings, faults), language, faults, data))
        except StudioFaults as problem:
            faults += problem.faults
            continue
        waiting += len(text)
        if waiting >= TOGETHER:
            texts += _check_opened(opened)
            opened, waiting = [], 0
    texts += _check_opened(opened)
    return Checked(tuple(texts), tuple(dict.fromkeys(faults)))


def check_one(
    text: str, shown: str, settings: Settings, language: str = "", faults: list[Fault] | None = None
) -> CheckedText:
    """Check one text.

    text: lines ended by "\\n".  shown: its path, which need not exist.
    faults: takes what is wrong with the front matter; the text is checked all
        the same.
    """
    (checked,) = _check_opened([_open(text, shown, settings, language, [] if faults is None else faults)])
    return checked


class _Opened(NamedTuple):
    """A text that is ready to be checked.

    data: the file, where its line ends are not all "\\n"; else empty.
    """

    document: Document
    shown: str
    settings: Settings
    data: bytes


def _open(
    text: str, shown: str, settings: Settings, language: str, faults: list[Fault], data: bytes = b""
) -> _Opened:
    facts = _facts(text, shown, faults)
    language = language or facts.language or _language_of_name(shown) or settings.language
    if language not in LANGUAGES:
        wrong = f"the language '{language}' is not one that is checked"
        raise StudioFaults((Fault(shown, _line_of_key(text, "language"), wrong, f"write {' or '.join(LANGUAGES)}"),))
    document = Document(text, language, _with_original(facts, shown, language))
    return _Opened(document, shown, settings, data if b"\r" in data else b"")


def _check_opened(opened: Sequence[_Opened]) -> Iterator[CheckedText]:
    """Each text checked, in order."""
    marks: dict[str, dict[str, list[Mark]]] = {}
    for language in {one.document.language for one in opened}:
        cuts = {one.document.text: one.document.cut for one in opened if one.document.language == language}
        marks[language] = check_texts(cuts, language=language, cuts=cuts)
    for one in opened:
        checked = _checked(one, marks[one.document.language][one.document.text])
        yield _at_line_ends(checked, one.data) if one.data else checked


def _checked(opened: _Opened, marks_found: Iterable[Mark]) -> CheckedText:
    """The marks and the flaws of the whole text, without those that are known or let stand."""
    document, shown, settings, _ = opened
    text = document.text
    places = _Places(text)
    known = settings.known_pattern()
    found: list[tuple[Finding, bool, bool]] = []  # with: is it a mark, does it concern the whole text
    for mark in marks_found:
        if mark.kind not in settings.turned_off and not (known and _is_known(text, mark.start, mark.end, known)):
            finding = places.finding(
                mark.start, mark.end, mark.kind, mark.strength, mark.why, mark.suggest, mark.rewrite
            )
            found.append((finding, True, False))
    for check in CHECKS:
        if check.name not in settings.turned_off:
            for flaw in check.find(document):
                finding = places.finding(flaw.start, flaw.end, check.name, check.strength, flaw.what, flaw.suggest)
                found.append((finding, False, check.everywhere))
    allows = find_allows(text)
    let, left = match_allows(allows, [(finding.name, finding.line, whole) for finding, _, whole in found])
    flaws = [allow.flaw for allow in allows if allow.flaw] + [unused(allow) for allow in left]
    marks = tuple(finding for at, (finding, is_mark, _) in enumerate(found) if is_mark and at not in let)
    whole = [finding for at, (finding, is_mark, _) in enumerate(found) if not is_mark and at not in let]
    whole += [
        places.finding(flaw.start, flaw.end, ALLOW, "advice", f"{flaw.what} {WHY}", flaw.suggest) for flaw in flaws
    ]
    return CheckedText(
        shown,
        document.language,
        marks,
        tuple(whole),
        tuple(Allowed(found[at][0], allow.reason) for at, allow in sorted(let.items())),
        document.reading,
        is_read_closely(text),
        any(settings.fails_at == "advice" or finding.strength == "blocks" for finding in (*marks, *whole)),
    )


def settings_for(path: Path) -> Settings:
    """The settings that count for a text at `path`.  Raises StudioFaults."""
    file = find_settings(Path(os.path.abspath(path)).parent)
    return read_settings(file, _shown(file)) if file else Settings()


# --- files ---------------------------------------------------------------------


def _files(paths: Iterable[str], faults: list[Fault]) -> Iterator[str]:
    """Each file once, folders opened, in the order asked for."""
    seen: set[str] = set()
    for path in paths:
        inside = [path] if path == "-" or not os.path.isdir(path) else _files_in(path, faults)
        for file in inside:
            if file not in seen:
                seen.add(file)
                yield file


def _files_in(folder: str, faults: list[Fault]) -> list[str]:
    """The texts of a folder and the folders in it, by name; hidden ones are left alone."""
    texts: list[str] = []
    refused = len(faults)

    def refuse(problem: OSError) -> None:
        wrong = f"the folder cannot be read ({problem.strerror or problem})"
        faults.append(Fault(problem.filename, 0, wrong, "give yourself the right to read it, or leave it out"))

    for place, folders, names in os.walk(folder, onerror=refuse):
        folders[:] = sorted(name for name in folders if not name.startswith("."))
        texts += [
            os.path.join(place, name)
            for name in sorted(names)
            if name.lower().endswith(ENDINGS) and not name.startswith(".")
        ]
    if not texts and len(faults) == refused:
        faults.append(
            Fault(
                folder,
                0,
                "there is no text in this folder",
                f"name a file, or a folder with {', '.join(ENDINGS)} files",
            )
        )
    return texts


def _shown(path: Path) -> str:
    """A path as short as it can be said from here."""
    try:
        return os.path.relpath(path)
    except ValueError:  # on another drive
        return str(path)


def _settings_of(folder: Path, known: dict[Path, Settings], faults: list[Fault]) -> Settings:
    """The settings of a folder; faulty ones are told once and taken as none."""
    if folder not in known:
        known[folder] = Settings()
        try:
            file = find_settings(folder)
            if file:
                known[folder] = known[file] if file in known else read_settings(file, _shown(file))
                known[file] = known[folder]
        except StudioFaults as problem:
            faults += problem.faults
    return known[folder]


# --- facts ---------------------------------------------------------------------


def _facts(text: str, shown: str, faults: list[Fault]) -> Facts:
    try:
        return read_facts(text, shown)
    except StudioFaults as problem:
        faults += problem.faults
        return Facts()


def _language_of_name(shown: str) -> str:
    """ "fr" for "hip-hinge.fr.md"."""
    parts = os.path.basename(shown).lower().split(".")
    return parts[-2] if len(parts) > 2 and parts[-2] in LANGUAGES else ""


def _line_of_key(text: str, key: str) -> int:
    found = re.search(rf"(?m)^{key}[ \t]*:", text)
    return text.count("\n", 0, found.start()) + 1 if found else 0


def _with_original(facts: Facts, shown: str, language: str) -> Facts:
    """The facts of a second-language text, taken from the first text beside it."""
    parts = os.path.basename(shown).split(".")
    if facts.sides or len(parts) != 3 or parts[1].lower() != language:
        return facts
    original = Path(os.path.dirname(shown), f"{parts[0]}.{parts[2]}")
    try:
        found = read_facts(decode_text(read_bytes(original, str(original), LARGEST), ""), "")
    except StudioFaults:  # its own check tells
        return facts
    return found._replace(language=facts.language)


# --- places --------------------------------------------------------------------


class _Places:
    """Characters of a text to lines and columns."""

    def __init__(self, text: str):
        self.text = text
        self.starts = [0]
        self.starts += [found.end() for found in re.finditer("\n", text)]

    def finding(
        self, start: int, end: int, name: str, strength: Strength, why: str, suggest: str, rewrite: str | None = None
    ) -> Finding:
        line = bisect_right(self.starts, start)
        end_line = bisect_right(self.starts, end) if end > start else line
        return Finding(
            line,
            start - self.starts[line - 1] + 1,
            end_line,
            end - self.starts[end_line - 1] + 1,
            start,
            end,
            name,
            strength,
            self.text[start:end],
            why,
            suggest,
            rewrite,
        )


def _is_known(text: str, start: int, end: int, known: re.Pattern[str]) -> bool:
    """Whether a mark lies within words that the studio's readers know."""
    window = max(0, start - 200)
    return any(
        found.start() <= start and end <= found.end()
        for found in known.finditer(text, window, min(len(text), end + 200))
    )


def _at_line_ends(checked: CheckedText, data: bytes) -> CheckedText:
    """The same findings, with their characters counted in a file whose line ends are not all "\\n"."""
    original = data.removeprefix(b"\xef\xbb\xbf").decode("utf-8")
    starts = [0, *(found.end() for found in _LINE_END.finditer(original))]

    def placed(finding: Finding) -> Finding:
        start = starts[finding.line - 1] + finding.column - 1
        end = starts[finding.end_line - 1] + finding.end_column - 1
        return finding._replace(start=start, end=end, words=original[start:end])

    return replace(
        checked,
        marks=tuple(map(placed, checked.marks)),
        whole_text=tuple(map(placed, checked.whole_text)),
        allowed=tuple(Allowed(placed(finding), reason) for finding, reason in checked.allowed),
    )


def counted(texts: Sequence[CheckedText]) -> dict[Strength, int]:
    """How many findings there are of each strength."""
    counts: dict[Strength, int] = {"blocks": 0, "advice": 0}
    for text in texts:
        for finding in text.findings:
            counts[finding.strength] += 1
    return counts
