"""Readers' questions, on their way to the writer of the text.

questions/CLIENT.csv keeps them until the trainer has answered.  Each remembers
the line of the exercise text that it is about by that line's own words, so
that it is found again when the text has been edited.  Importing this module
loads nothing but the standard library.
"""

from __future__ import annotations

import csv
import datetime
import io
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, replace
from pathlib import Path

from handouts import carried
from handouts.errors import Fault, HandoutsError, StudioFaults

FOLDER = "questions"
COLUMNS = (
    "number",
    "date",
    "plan",
    "version",
    "exercise",
    "language",
    "part",
    "words",
    "question",
    "answered",
    "answer",
)


@dataclass(frozen=True)
class ReadersQuestion:
    """One question that a client asked about an instruction.

    number: counts from 1 for each client.
    exercise: id of the text, "session" for the session as a whole.
    part: of the text, by its English name, "" for the text as a whole.
    words: the line of the text at the time, "" for the part as a whole.
    answered: the day, "" while it is open.
    """

    client: str
    number: int
    date: str
    plan: str
    version: str
    exercise: str
    language: str
    part: str
    words: str
    question: str
    answered: str = ""
    answer: str = ""


@dataclass(frozen=True)
class OpenQuestion:
    """An open question beside the line that it is about.

    path: of the exercise text, as `handouts check` shows it; "" for a question
        about a session.
    line: from 1; 0 where nothing tells.
    moved: the line has been changed since the question was asked.
    """

    path: str
    line: int
    moved: bool
    question: ReadersQuestion

    def __str__(self) -> str:
        one = self.question
        place = f"{self.path}:{self.line}" if self.path else f"{FOLDER}/{one.client}.csv"
        changed = " (the line was changed since)" if self.moved else ""
        return f"{place}: question {one.client} {one.number}: {one.question}{changed}"


def open_questions(studio_folder: Path) -> tuple[OpenQuestion, ...]:
    """Every question that waits for an answer, by file and line.

    studio_folder: the one with studio.yaml.
    Raises StudioFaults when a file of questions cannot be read.
    """
    found = [_placed(studio_folder, one) for one in all_questions(studio_folder) if not one.answered]
    return tuple(sorted(found, key=lambda one: (one.path, one.line, one.question.client, one.question.number)))


def all_questions(studio_folder: Path) -> tuple[ReadersQuestion, ...]:
    """Every question of every client, answered or not."""
    paths = sorted((studio_folder / FOLDER).glob("*.csv"))
    return tuple(one for path in paths for one in read_questions(path))


def texts_by_questions(questions: Iterable[ReadersQuestion]) -> tuple[tuple[str, int, int], ...]:
    """(exercise, questions in all, of them open), the most asked about first."""
    everything: Counter[str] = Counter()
    waiting: Counter[str] = Counter()
    for one in questions:
        everything[one.exercise] += 1
        waiting[one.exercise] += not one.answered
    return tuple(
        (exercise, count, waiting[exercise])
        for exercise, count in sorted(everything.items(), key=lambda pair: (-pair[1], -waiting[pair[0]], pair[0]))
    )


# --- files -----------------------------------------------------------------------


def read_questions(path: Path) -> tuple[ReadersQuestion, ...]:
    """The questions in one file, in its order.  Raises StudioFaults."""
    shown = f"{FOLDER}/{path.name}"
    try:
        text = path.read_text("utf-8-sig")
    except (OSError, UnicodeDecodeError) as problem:
        raise StudioFaults(
            (Fault(shown, 0, f"the file cannot be read ({problem})", "save it as 'UTF-8' plain text"),)
        ) from None
    rows = csv.reader(io.StringIO(text, newline=""), strict=True)
    found: list[ReadersQuestion] = []
    faults: list[Fault] = []
    begins = 1
    try:
        for row in rows:
            if begins == 1 and tuple(row) != COLUMNS:
                raise StudioFaults(
                    (Fault(shown, 1, "the first line does not name the columns", f"write '{','.join(COLUMNS)}'"),)
                )
            if begins > 1 and row:
                if len(row) == len(COLUMNS) and row[0].isascii() and row[0].isdigit():
                    found.append(ReadersQuestion(path.stem, int(row[0][:9]), *row[1:]))
                else:
                    faults.append(
                        Fault(
                            shown,
                            begins,
                            "the line is no question with a number",
                            f"give it {len(COLUMNS)} cells, the number first",
                        )
                    )
            begins = rows.line_num + 1
    except csv.Error as problem:
        faults.append(Fault(shown, begins, f"the cells cannot be told apart ({problem})", "close each quotation mark"))
    if faults:
        raise StudioFaults(tuple(faults))
    return tuple(found)


def add_questions(studio_folder: Path, client: str, new: Iterable[ReadersQuestion]) -> tuple[ReadersQuestion, ...]:
    """Keep questions, numbered on from the last; the same question about the
    same exercise from the same client is kept once while it is open.

    The caller holds the folder of the logs (`handouts.making.lock.alone_in`),
    which guards the questions too.
    """
    path = _path(studio_folder, client)
    old = read_questions(path) if path.is_file() else ()
    kept, number = list(old), max((one.number for one in old), default=0)
    added = []
    for one in new:
        if any((o.exercise, o.question, o.answered) == (one.exercise, one.question, "") for o in kept):
            continue
        number += 1
        added.append(replace(one, client=client, number=number))
        kept.append(added[-1])
    if added:
        _write(path, kept)
    return tuple(added)


def answer_question(
    studio_folder: Path, client: str, number: int, answer: str, today: datetime.date
) -> ReadersQuestion:
    """Mark a question as answered.  Raises UnknownQuestion."""
    from handouts.making.lock import alone_in

    with alone_in(studio_folder / "logs"):
        return _answered(_path(studio_folder, client), client, number, answer, today)


def _answered(path: Path, client: str, number: int, answer: str, today: datetime.date) -> ReadersQuestion:
    old = read_questions(path) if path.is_file() else ()
    chosen = next((one for one in old if one.number == number), None)
    if chosen is None:
        there = ", ".join(str(one.number) for one in old if not one.answered) or "none"
        raise UnknownQuestion(f"{client} has no question {number}; open ones: {there}")
    done = replace(chosen, answered=today.isoformat(), answer=" ".join(answer.split()))
    _write(path, [done if one.number == number else one for one in old])
    return done


class UnknownQuestion(HandoutsError):
    """No question of that client has that number."""


def _path(studio_folder: Path, client: str) -> Path:
    """The file of a client's questions.  Raises CannotLog where the code is no file name."""
    from handouts.logbook.files import file_stem

    return studio_folder / FOLDER / f"{file_stem(client)}.csv"


def _write(path: Path, questions: Iterable[ReadersQuestion]) -> None:
    from handouts.making.writing import write_whole

    file = io.StringIO(newline="")
    writer = csv.writer(file, lineterminator="\n")
    writer.writerow(COLUMNS)
    for one in questions:
        writer.writerow([one.number, *(getattr(one, column) for column in COLUMNS[1:])])
    write_whole(path, file.getvalue().encode("utf-8"))


# --- which line --------------------------------------------------------------------


def text_path(studio_folder: Path, exercise: str, language: str) -> Path | None:
    """The exercise text in a language: the studio's own, else the starter text."""
    for tag in dict.fromkeys((language, "en")):
        name = f"{exercise}.md" if tag == "en" else f"{exercise}.{tag}.md"
        for folder in (studio_folder / "exercise_texts", carried.starter_texts()):
            if (folder / name).is_file():
                return folder / name
    return None


def _placed(studio_folder: Path, one: ReadersQuestion) -> OpenQuestion:
    path = text_path(studio_folder, one.exercise, one.language) if one.exercise != "session" else None
    if path is None:
        return OpenQuestion("", 0, False, one)
    shown = f"exercise_texts/{path.name}"
    lines = path.read_text("utf-8", errors="replace").splitlines()
    if one.words:
        for number, line in enumerate(lines, 1):
            words = " ".join(line.split()).lstrip("-*0123456789. ")
            # A step may run over several lines of the file.
            if len(words) > 15 and (one.words.lstrip("*").startswith(words) or one.words.lstrip("*") in words):
                return OpenQuestion(shown, number, False, one)
    title = next((number for number, line in enumerate(lines, 1) if line.startswith("title:")), 1)
    return OpenQuestion(shown, title, bool(one.words), one)
