"""What is fuzzed: one target for each door through which text comes in.

A target takes bytes and must give them back as data or as a fault that the
user can read.  Anything else (another exception, a broken promise, a file
touched outside the studio, a connection) is a finding.
"""

from __future__ import annotations

import datetime
import functools
import os
import re
import sys
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from handouts import amounts, carried
from handouts.braille import brf
from handouts.braille.codes import find_code
from handouts.braille.layout import lay_out
from handouts.braille.pages import Paper
from handouts.errors import HandoutsError, StudioFaults, UnknownCharacter
from handouts.forms import log_text
from handouts.handout import (
    Caution,
    Dose,
    Fact,
    Facts,
    Handout,
    Heading,
    Item,
    LogEntry,
    LogField,
    LogSheet,
    Measure,
    Paragraph,
    Points,
    Section,
    Steps,
    Strong,
    Table,
    Text,
)
from handouts.logbook.asked import read_questions
from handouts.logbook.command import known_of
from handouts.logbook.drafts import read_drafts
from handouts.logbook.files import append_lines, clean
from handouts.logbook.message import Filled, Known, Message
from handouts.logbook.understanding import interpret
from handouts.making.fingerprints import RECORD_NAME, Record
from handouts.mirror import mirror
from handouts.models import ClientFacts, PlanFacts, StudioFacts
from handouts.reading.exercise import (
    Headings,
    TextFile,
    exercise_from,
    name_text_file,
    open_text,
    read_headings,
    translation_from,
)
from handouts.reading.faults import shape
from handouts.reading.log import read_log, read_log_lines
from handouts.reading.studio import read_studio, read_studio_parts
from handouts.reading.text_file import decode_text, readable
from handouts.reading.yaml_text import read_yaml
from handouts.wording.checking import check_one
from handouts.wording.settings import Settings, read_settings

ROOT = Path(__file__).resolve().parents[2]
TODAY = datetime.date(2029, 1, 20)


@dataclass(frozen=True)
class Target:
    """One door.

    run: takes an input; raises for a finding.
    seeds: sound inputs to begin from.  words: pieces that mean something there.
    share: how many of 1,000 inputs go to this target.
    longest: in bytes; faults of longer texts are the same faults, and short
        texts are tried more often.
    """

    name: str
    run: Callable[[bytes], None]
    seeds: Callable[[], list[bytes]]
    words: tuple[str, ...]
    share: int
    longest: int


class Finding(AssertionError):
    """A promise that was broken; other exceptions that get out are findings too."""


def promise(kept: bool, what: str) -> None:
    if not kept:
        raise Finding(what)


# --- nothing outside ---------------------------------------------------------------


class Watch:
    """Notes what is written, removed, started or connected to, but for the
    files below one folder of its own.

    Python tells of each through an audit event (Python Library Reference,
    "Audit events table").
    """

    def __init__(self) -> None:
        self.folder = tempfile.mkdtemp(prefix="fuzz-")
        self.seen: list[str] = []
        self._on = False
        sys.addaudithook(self._hear)

    def _hear(self, event: str, given: tuple[object, ...]) -> None:
        if not self._on:
            return
        if event == "open":
            path, _, flags = given
            if isinstance(flags, int) and flags & (os.O_WRONLY | os.O_RDWR | os.O_CREAT) and self._outside(path):
                self.seen.append(f"{path} opened to write")
        elif event in ("os.remove", "os.rename", "os.mkdir", "os.rmdir", "os.symlink", "os.link", "os.chmod", "os.truncate"):
            self.seen += [f"{event} {path}" for path in given if isinstance(path, str | bytes | os.PathLike) and self._outside(path)]
        elif event in ("socket.connect", "socket.bind", "socket.getaddrinfo", "subprocess.Popen", "os.system", "os.exec"):
            self.seen.append(event)

    def _outside(self, path: object) -> bool:
        return isinstance(path, str | bytes | os.PathLike) and not os.path.realpath(os.fsdecode(path)).startswith(self.folder)

    @contextmanager
    def on(self) -> Iterator[None]:
        self.seen.clear()
        self._on = True
        try:
            yield
        finally:
            self._on = False
        promise(not self.seen, f"went outside the studio: {self.seen[:3]}")


    @contextmanager
    def off(self) -> Iterator[None]:
        """For what a door needs once, before its first input."""
        before, self._on = self._on, False
        try:
            yield
        finally:
            self._on = before


@functools.cache
def watch() -> Watch:
    return Watch()


def run(target: Target, data: bytes) -> None:
    """One input through one door.  Raises for a finding."""
    with watch().on():
        target.run(data)


def _written(name: str, data: bytes) -> Path:
    path = Path(watch().folder) / name
    path.parent.mkdir(exist_ok=True)
    path.write_bytes(data)
    return path


# --- the doors ------------------------------------------------------------------------


def _text(data: bytes) -> str | None:
    try:
        return decode_text(data, "file")
    except StudioFaults as problem:
        _sound(problem)
        return None


def _sound(problem: StudioFaults) -> None:
    """Every fault is a line that a person can read and act on."""
    promise(bool(problem.faults), "a refusal without a fault")
    for fault in problem.faults:
        told = str(fault)
        promise("\n" not in told and told.isprintable(), f"a fault that cannot be read aloud: {told!r}")
        promise(fault.line >= 0 and bool(fault.wrong) and bool(fault.instead), f"half a fault: {told!r}")


def _words_of(data: bytes) -> str:
    """The sound words in some bytes, so that most inputs reach what lies behind."""
    return readable(data.decode("utf-8", "ignore").replace("\r\n", "\n").replace("\r", "\n"))


def run_text(data: bytes) -> None:
    text = _text(data)
    if text is not None:
        promise(text == readable(text) and "\r" not in text, "invisible characters came through")


def run_yaml(data: bytes) -> None:
    try:
        found = read_yaml(_words_of(data), "file")
    except StudioFaults as problem:
        _sound(problem)
        return

    def all_text(value: object) -> bool:
        if isinstance(value, dict):
            return all(isinstance(key, str) and all_text(inner) for key, inner in value.items())
        return isinstance(value, str) or (isinstance(value, list) and all(map(all_text, value)))

    promise(all_text(found.data), "something else than text")
    lines = _words_of(data).count("\n") + 2
    promise(all(1 <= line <= lines for line in found.root.key_lines.values()), "a line that the file does not have")


def _run_model(model: type[ClientFacts] | type[PlanFacts] | type[StudioFacts], data: bytes) -> None:
    try:
        shape(model, read_yaml(_words_of(data), "file"), "file")  # type: ignore[type-var]
    except StudioFaults as problem:
        _sound(problem)


@functools.cache
def _headings() -> Headings:
    return read_headings(ROOT / "handouts/languages/parts.yaml")


@functools.cache
def _english() -> object:
    path = carried.starter_texts() / "goblet-squat.md"
    return exercise_from(open_text(TextFile(path, "goblet-squat.md", "goblet-squat", "en", True), _headings()))


def run_exercise(data: bytes) -> None:
    path = _written("goblet-squat.md", _words_of(data).encode())
    try:
        exercise_from(open_text(TextFile(path, "goblet-squat.md", "goblet-squat", "en", False), _headings()))
    except StudioFaults as problem:
        _sound(problem)
    try:
        translation_from(open_text(TextFile(path, "goblet-squat.fr.md", "goblet-squat", "fr", False), _headings()), _english())  # type: ignore[arg-type]
    except StudioFaults as problem:
        _sound(problem)


def run_file_name(data: bytes) -> None:
    try:
        name_text_file(Path(_words_of(data).replace("\n", "").replace("/", "") or "x"), "file", False, ("en", "fr"))
    except StudioFaults as problem:
        _sound(problem)


def run_log(data: bytes) -> None:
    path = _written("log.csv", data)
    try:
        _, faults = read_log_lines(path, "logs/C1.csv")
    except StudioFaults as problem:
        _sound(problem)
        return
    if faults:
        _sound(StudioFaults(faults))


def run_log_text(data: bytes) -> None:
    text = data.decode("utf-8", "replace")
    log_text.holds_log(text)
    try:
        found = log_text.read(text)
    except log_text.NoLogText:
        return
    again = log_text.read(log_text.write(found))
    promise(log_text.read(log_text.write(again)) == again, "a log that changes each time it is written")


_AMOUNTS = tuple(
    reader for name, reader in sorted(vars(amounts).items()) if name.startswith("read_") and callable(reader)
)


def run_amounts(data: bytes) -> None:
    text = _words_of(data)
    for reader in _AMOUNTS:
        try:
            reader(text)
        except ValueError as problem:
            wrong, _, instead = str(problem).rpartition("; ")
            promise(bool(wrong and instead) and str(problem).isprintable(), f"{reader.__name__}: {problem}")


def run_mirror(data: bytes) -> None:
    text = _words_of(data)
    for language in ("en", "fr"):
        one = mirror(text, language)
        two = mirror(one, language)
        promise(_same(two) == _same(text), f"{language}: mirrored twice is {two!r}, not {text!r}")
        promise(mirror(two, language) == one, f"{language}: mirrored three times is not {one!r} again")


def _same(text: str) -> str:
    """Without what may change on the way there and back: one of two words for
    a turn, and the endings of words that did not agree in the first place."""
    text = re.sub(r"\b(anti|counter)-?clockwise", "anticlockwise", text, flags=re.I)
    text = re.sub(r"anti-?horaire", "antihoraire", text, flags=re.I)
    text = re.sub(r"sens\s+(?:contraire|inverse)", "sens inverse", text, flags=re.I)
    text = re.sub(r"\bdroite\b", "droit", re.sub(r"\bdroites\b", "droits", text, flags=re.I), flags=re.I)
    return re.sub(r"\b(heure)s\b", r"\1", text, flags=re.I).lower()


def run_wording(data: bytes) -> None:
    text = _words_of(data)
    for language in ("en", "fr"):
        try:
            checked = check_one(text, "file.md", Settings(), language)
        except StudioFaults as problem:
            _sound(problem)
            continue
        for found in checked.findings:
            promise(0 <= found.start <= found.end <= len(text), f"{found} lies outside the text")
            promise(text[found.start : found.end] == found.words, f"{found} does not stand there")
            promise(bool(found.why and found.suggest), f"{found} does not say why")


def run_settings(data: bytes) -> None:
    path = _written("wording.yaml", data)
    try:
        read_settings(path, "wording.yaml")
    except StudioFaults as problem:
        _sound(problem)


@functools.cache
def _known(code: str) -> Known:
    studio = read_studio(carried.demo_studio(), carried.starter_texts())
    return known_of(studio, studio.clients[code], studio.logs.get(code, ()), TODAY)


_CLIENTS = ("C1", "C2", "C3", "C4", "C5", "C6")
_FIELD_NAMES = (
    "weight", "weight_left", "reps", "reps_right", "time", "seconds", "metres", "rounds", "date", "effort", "pain",
    "note", "question", "question_start-position", "other",
)  # fmt: skip
_EXERCISES = ("floor-press", "goblet-squat", "farmer-carry", "session", "3", "press", "xyz", "")


def run_logbook(data: bytes) -> None:
    """The first byte chooses the client and the way in, the rest is the message
    and, each after a line with "=", answers to what is asked."""
    first, parts = (data[0] if data else 0), [clean(part) for part in _words_of(data[1:]).split("\n=")]
    known = _known(_CLIENTS[first % 6])
    language = ("en", "fr")[first // 6 % 2]
    if first >= 128:
        fields = tuple(
            Filled(_EXERCISES[len(line) % len(_EXERCISES)], _FIELD_NAMES[ord(line[0]) % len(_FIELD_NAMES)], line[1:])
            for line in parts[0].split("\n")
            if line
        )
        message = Message("", language, fields, date=TODAY)
    else:
        message = Message(parts[0], language, date=TODAY if first % 2 else None)
    answers: dict[str, str] = {}
    for answer in [*parts[1:], *["leave out"] * 60]:
        found = interpret(message, known, answers)
        for question in found.questions:
            promise(bool(question.asks and question.reason), f"a question without a reason: {question}")
        if not found.questions:
            break
        question = found.questions[0]
        if question.key in answers and question.proposals:
            answer = question.proposals[0].answer
        elif question.key in answers:
            answer = TODAY.isoformat() if question.key == "date" else "leave out"
        answers[question.key] = answer
    else:
        raise Finding(f"questions without end: {question}")
    for line in found.lines:
        promise(line.date is not None and line.date <= TODAY, f"stored with the day {line.date}")
        promise(all(0 <= count <= 200 for count in line.reps), f"stored {line.reps} repetitions")
    folder = Path(watch().folder) / "studio"
    (folder / "logs/C1.csv").unlink(missing_ok=True)
    if found.lines:
        stored = append_lines(folder, "C1", found.lines, (), TODAY)
        promise(len(stored) == len(found.lines) == len(read_log(folder / "logs/C1.csv", "log")), "lines were lost")


def run_kept(data: bytes) -> None:
    """What the program keeps for itself, spoilt: fingerprints, drafts, questions."""
    _written(RECORD_NAME, data)
    record = Record.of(Path(watch().folder))
    record.still_good("x", "y")
    record.why("x", "y", {"z": "1"})
    _written("logs/C1.draft.json", data)
    try:
        read_drafts(Path(watch().folder), "C1")
    except StudioFaults as problem:
        _sound(problem)
    try:
        read_questions(_written("logs/C1.questions.csv", data))
    except StudioFaults as problem:
        _sound(problem)


_CODES = (("ueb", 1), ("ueb", 2), ("fr", 1), ("de", 2), ("es", 1))


def tree(text: str) -> Handout:
    """A tree whose shape follows the signs at the start of the lines of a text."""

    def line(words: str) -> tuple:
        pieces = words.split("*")
        return tuple(Strong((Text(piece),)) if at % 2 else Text(piece) for at, piece in enumerate(pieces) if piece)

    blocks: list = []
    for number, row in enumerate(text.split("\n")[:40]):
        sign, words = row[:1], line(row[1:])
        if sign == "#":
            blocks.append(Heading(3, words, f"h{number}"))
        elif sign == "1":
            blocks.append(Steps(tuple(Item(line(piece)) for piece in row[1:].split(";"))))
        elif sign == "-":
            blocks.append(Points(tuple(Item(line(piece), (Paragraph(words),)) for piece in row[1:].split(";"))))
        elif sign == "!":
            blocks.append(Caution(words, (Paragraph(words), Dose(words))))
        elif sign == "=":
            label, _, value = row[1:].partition(":")
            blocks.append(Facts((Fact(line(label), line(value)),)))
        elif sign == "|":
            cells = row[1:].split("|")
            blocks.append(Table(line(cells[0]), tuple(map(line, cells)), (tuple(map(line, cells)),)))
        elif sign == "?":
            fields = tuple(LogField("reps", line(piece), "count", "reps", words) for piece in row[1:].split(";"))
            blocks.append(LogSheet((LogEntry("x", number, words, fields),)))
        elif sign == "@":
            blocks.append(Section("exercise", Heading(2, words, f"s{number}"), (Paragraph(words),)))
        elif sign == "~":
            blocks.append(Paragraph((Measure(row[1:], row[1:] + " in full"),)))
        elif row:
            blocks.append(Paragraph(line(row)))
    first = text.split("\n")[0]
    return Handout("sheet", "en", (Text(first),), first, "C9", "P9", 1, first, "2029-01-08", "", tuple(blocks))


def run_braille(data: bytes) -> None:
    """The first two bytes choose code and paper, the rest is the tree."""
    head, text = data[:2].ljust(2, b"\0"), _words_of(data[2:])
    code = find_code(*_CODES[head[0] % len(_CODES)])
    paper = Paper(
        width=20 + head[1] % 30,
        length=(0, 8, 12, 25)[head[0] // 8 % 4],
        both_sides=head[0] >= 128,
        running_head=head[1] < 128,
        number=("bottom right", "top right")[head[0] // 64 % 2],
    )
    try:
        volume = lay_out(tree(text), code, paper)
    except UnknownCharacter as problem:
        promise(bool(problem.characters) and str(problem).isprintable(), f"does not say which: {problem!r}")
        return
    for page in volume.pages:
        promise(not paper.length or len(page.lines) <= paper.length, f"page {page.number} is too long")
        for line in page.lines:
            promise(len(line.cells) <= paper.width, f"a line of {len(line.cells)} cells on {paper.width}")
    brf.write(volume)


_STUDIO_FILES = ("studio.yaml", "clients/C1.yaml", "plans/P1-v1.yaml", "logs/C1.csv", "exercise_texts/goblet-squat.md")


@functools.cache
def _small_studio() -> tuple[Path, Path]:
    """A studio with one client and its plan, and the texts that this needs."""
    folder, starters = Path(watch().folder) / "whole", Path(watch().folder) / "starters"
    for path in (folder / "clients", folder / "plans", folder / "logs", folder / "exercise_texts", starters):
        path.mkdir(parents=True)
    plan = (carried.demo_studio() / "plans/P1-v1.yaml").read_text("utf-8")
    for id in (*re.findall(r"exercise: (\S+)", plan), "hip-hinge"):
        (starters / f"{id}.md").write_bytes((carried.starter_texts() / f"{id}.md").read_bytes())
    for name in _STUDIO_FILES:
        (folder / name).write_bytes(_whole_file(name))
    return folder, starters


def _whole_file(name: str) -> bytes:
    place = carried.starter_texts().parent if name.startswith("exercise_texts") else carried.demo_studio()
    return (place / name).read_bytes()


def run_whole_studio(data: bytes) -> None:
    """The first byte chooses the one file that is spoilt, the rest is its text."""
    with watch().off():
        folder, starters = _small_studio()
    name = _STUDIO_FILES[(data[0] if data else 0) % len(_STUDIO_FILES)]
    (folder / name).write_bytes(_words_of(data[1:]).encode())
    try:
        reading = read_studio_parts(folder, starters)
        if reading.faults:
            _sound(StudioFaults(reading.faults))
    except StudioFaults as problem:
        _sound(problem)
    finally:
        (folder / name).write_bytes(_whole_file(name))


def run_csv_from(data: bytes) -> None:
    """A table or a page's log that a client sent, through the door of `log --from`."""
    from handouts.logbook import command

    class Desk:
        code, language = "C1", "en"

    path = _written("sent.csv", data)
    try:
        list(command._from_file(Desk(), str(path)))  # type: ignore[arg-type]
    except StudioFaults as problem:
        _sound(problem)
    except HandoutsError as problem:
        promise("\n" not in str(problem), f"more than one line: {problem!r}")


# --- where they begin ---------------------------------------------------------------


def _files(pattern: str) -> Callable[[], list[bytes]]:
    return lambda: [path.read_bytes() for path in sorted(ROOT.glob(pattern))]


def _texts(*texts: str) -> Callable[[], list[bytes]]:
    return lambda: [text.encode() for text in texts]


def _sentences() -> list[bytes]:
    texts = (path.read_text("utf-8") for path in sorted(ROOT.glob("exercise_texts/*.md"))[:40])
    lines = (line for text in texts for line in text.split("---", 2)[2].split("\n"))
    return [line.encode() for line in lines if re.search("left|right|clock|gauche|droit|heure", line)][::7]


_YAML_WORDS = (
    ": ", "- ", "\n  ", "\n", "\t", "#", "&a", "*a", "!!str", "<<: ", "|", ">", "|-", "'", '"', "[", "]", "{", "}",
    "? ", "---", "...", "%YAML 1.1\n", "\\x41", "~", "null", "yes", "no", "0x1f", "1e3", "2029-01-08", ",", "\u2028",
)  # fmt: skip
_MARKDOWN_WORDS = (
    "## ", "# ", "**", "*", "_", "- ", "1. ", "2) ", "    ", "\n\n", "<b>", "</b>", "<!--", "-->", "![a](b)", "[a](b)",
    "[a]: b", "`", "~~~", "> ", "|", "&amp;", "\\", "***", "---", "http://a", "file:///etc/passwd", "<script>",
    "{{ 7*7 }}", "{% raw %}", "## Movement", "## Easier", "- **Name.** ",
)  # fmt: skip
_SIDE_WORDS = (
    "left", "right", "o'clock", "clockwise", "anticlockwise", "counter-clockwise", "half past", "quarter to", ":30",
    " and ", " or ", " to ", ", ", "1", "2", "11", "12", "3", "6", "one", "twelve", "-thirty", "**", "your ", "the ",
    "right away", "right angle", "left hand", "gauche", "droite", "droit", "droits", "heures", "heure", "h 30",
    " et demie", "sens horaire", "sens antihoraire", "sens inverse des aiguilles", "sens des aiguilles", "à ", "vers ",
    "la main ", "le pied ", "pendant ", "tout ", "les bras ", "step ", "rest ", " et ", " ou ", "leftmost", "rightward",
)  # fmt: skip
_LOG_WORDS = (
    "12 12 14", "12/12/14", "3x12", "16 kg", "20 lb", "24:30", "1:05:00", "min", "s", "left", "right", "same", "pareil",
    "Saturday", "hier", "effort 7", "pain", "skip", "floor press", "goblet squat", "gauche", "droite", "P2", "version 2",
    "\n=", "leave out", "2029-01-09", "dix neuf", "twenty five", "each", "half", "question: ", "knee", "=", "9" * 30,
)  # fmt: skip
_CSV_WORDS = (",", '"', '""', "\n", "\r\n", "12/12", "16 kg", "left", "2029-01-08", ";", "\t", "session", "date,")
_PAGE_WORDS = (
    "[handouts log 1]", "[handouts log 2]", "[end of log]", "[client]: C1", "[plan]: P1 version 1", "[date]: 2029-01-09",
    "[exercise goblet-squat]: x", "[session]", "[weight right]: ", "[unclear]: yes", "> ", "\u00a0", "Client: ", "[", "]",
)  # fmt: skip
_SHEET_WORDS = ("#", "1", "-", "!", "=", "|", "?", "@", "~", ";", "*", ":", "\n", "é", "œ", "½", "×", "–", "’", "x" * 50, "12:30")

_LOG = "Training log [handouts log 1]\nClient: C1\nSession [plan]: P1 version 1\nDate: 2029-01-09\n\nExercise 1 [exercise goblet-squat]: Goblet squat\nWeight, right [weight right]: 20 kg\nRepetitions [reps]: 12 12 12\n\nThe whole session [session]\nTotal time [time]: 41 min\nEnd of the log [end of log]\n"

TARGETS = (
    Target("text", run_text, _files("handouts/demo/*/*.yaml"), ("\ufeff", "\u200b", "\u2028", "\r", "\r\n", "\0"), 120, 600),
    Target("yaml", run_yaml, _files("handouts/demo/**/*.yaml"), _YAML_WORDS, 90, 500),
    Target("client", lambda data: _run_model(ClientFacts, data), _files("handouts/demo/clients/*.yaml"),
           (*_YAML_WORDS, "kit:", "limits:", "forms:", "print:", "24 pt", "braille:", "2 x 5 lb"), 25, 2500),
    Target("plan", lambda data: _run_model(PlanFacts, data), _files("handouts/demo/plans/*.yaml"),
           (*_YAML_WORDS, "structure: circuit", "dose: ", "10 reps each side", "rest: ", "90 s", "level 1: "), 20, 2500),
    Target("studio", lambda data: _run_model(StudioFacts, data), _files("handouts/*/studio.yaml"), _YAML_WORDS, 30, 400),
    Target("exercise", run_exercise, _files("exercise_texts/*.md"), (*_YAML_WORDS, *_MARKDOWN_WORDS), 15, 3500),
    Target("file name", run_file_name, _texts("hip-hinge.md", "hip-hinge.fr.md"), (".", ".md", "-", "fr", "é"), 100, 60),
    Target("log", run_log, _files("handouts/demo/logs/*.csv"), _CSV_WORDS, 60, 700),
    Target("log text", run_log_text, _texts(_LOG), _PAGE_WORDS, 90, 700),
    Target("amounts", run_amounts, _texts("12.5 kg", "8-12 reps each side", "3-1-2-0", "90 s", "1 h 5 min", "2 x 5 lb",
           "2 in reserve", "5-9 kg", "15 cm", "2029-01-08", "70 % of 1RM", "24:30"),
           (" kg", " lb", " reps", " each side", " s", " min", "x", "-", "–", "/", ".", ":", "²", "٣", " in all"), 150, 50),
    Target("mirror", run_mirror, _sentences, _SIDE_WORDS, 150, 200),
    Target("wording", run_wording, _sentences, (*_SIDE_WORDS, *_MARKDOWN_WORDS, "like this", "as shown", "see", "here"), 20, 300),
    Target("settings", run_settings, _texts("fails at: advice\n", "known words: [a]\n"), _YAML_WORDS, 20, 300),
    Target("logbook", run_logbook, _texts("\x01floor press 16 kg 12 12 14, 24 min, effort 7", "\x02same as Saturday, last one eight",
           "\x811same\nw16 kg\nr12 12 12", "\x07développé 16 kg 12 12 12\n=hier\n=leave out"), _LOG_WORDS, 25, 160),
    Target("kept", run_kept, _texts('{"format": 1, "files": {"a": {"whole": "x", "inputs": {}, "pages": 1, "size": 1, "changed": 1}}}',
           '{"waiting": [{"raw": "x", "language": "en", "fields": [["a", "b", "c"]], "date": "2029-01-08", "answers": {"a": "b"}}]}'),
           ("{", "}", "[", "]", ":", '"', "null", "1e999", "NaN", "\\ud800", "waiting", "files"), 25, 400),
    Target("braille", run_braille, lambda: [b"\0\0" + body for body in _sentences()], _SHEET_WORDS, 8, 300),
    Target("whole studio", run_whole_studio, lambda: [bytes([at]) + _whole_file(name) for at, name in enumerate(_STUDIO_FILES)],
           (*_YAML_WORDS, *_CSV_WORDS, "goblet-squat", "version: ", "P1"), 6, 3000),
    Target("sent file", run_csv_from, lambda: [*_texts(_LOG, "date,plan,version,exercise,side,weight,reps\n2029-01-08,P1,1,goblet-squat,left,16 kg,12\n")()],
           (*_CSV_WORDS, *_PAGE_WORDS), 32, 500),
)  # fmt: skip


def target(name: str) -> Target:
    return next(one for one in TARGETS if one.name == name)


