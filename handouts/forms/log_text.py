"""The filled-in log as plain text: what the page saves, copies and sends.

A person reads it as it is; the program reads it back without guessing.  Each
line is `LABEL [KEY]: VALUE`: the label in the client's language, the key the
same in every language.  Where the label is the key, the key is left out.

    Training log [handouts log 1]
    Client: C4
    Session [plan]: P2 version 1
    Date: 2029-01-09

    Exercise 2 [exercise one-arm-supported-row]: One-arm supported row
    Weight, right [weight right]: 20 kg
    Repetitions in each set, right [reps right]: 12 12 12
    I did not understand this [unclear]: yes
    Which part [part]: start-position
    Your question [question]: Which foot is in front?

    The whole session [session]
    Total time [time]: 41 min
    How hard it felt, 0 to 10 [effort]: 7
    End of the log [end of log]

Rules:

- The first line ends in `[handouts log 1]`, the last in `[end of log]`; what
  stands before and after them is no part of the log, so it may be pasted into
  any message.
- A value holds no square brackets: the writer turns them into round ones.  So
  nothing that a client writes can look like a line of the log.
- A line without a key goes on with the value of the line before, since a mail
  program may wrap lines; `> ` at the start of lines is taken away.  A wrapped
  line that begins with a plain key and a colon is the one thing misread.
- Keys are LogField names with spaces for underscores, and `client`, `plan`,
  `date`, `exercise ID`, `session`, `unclear` (yes), `part` (an anchor's end,
  such as `start-position`) and `question`.
- A field that the client left empty has no line, or a line without a value:
  unknown is not zero.

UTF-8, lines end in LF; CRLF, a byte-order mark and no-break spaces are read
too.  The page's script writes and reads the same format
(templates/screen.js.j2); a test holds the two against each other.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass

from handouts.errors import HandoutsError
from handouts.languages import Phrases

FORMAT = 1
# Keys that may stand without brackets, where the label says the same.
PLAIN_KEYS = ("client", "plan", "date", "weight", "reps", "time", "seconds", "rounds", "distance", "effort", "pain", "question", "part")
_FIRST = re.compile(r"[^\[\]]*\[handouts log ([0-9]{1,6})\]\s*$")
_LAST = re.compile(r"[^\[\]]*\[end of log\]\s*$")
_LINE = re.compile(r"[^\[\]]*\[([a-z0-9][a-z0-9 -]*)\](?::\s*(.*))?$")
_PLAIN = re.compile(rf"({'|'.join(PLAIN_KEYS)})\s*:\s*(.*)$", re.IGNORECASE)
_PLAN = re.compile(r"(.*\S) version ([0-9]{1,6})$")


class NoLogText(HandoutsError):
    """A text is no log as the page writes it; the message says why."""


@dataclass(frozen=True)
class Said:
    """One filled-in field.

    name: as in LogField, or "unclear", "part" or "question".
    label: what the client was asked.  text: what the client wrote.
    """

    name: str
    label: str
    text: str


@dataclass(frozen=True)
class LogPart:
    """What was said of one exercise, or of the session.

    exercise: its id, or "session".  heading: the line that the reader sees.
    title: name of the exercise, "" for the session.
    """

    exercise: str
    heading: str
    title: str
    fields: tuple[Said, ...]


@dataclass(frozen=True)
class LogText:
    """client: code.  date: ISO date, "" when not given.  parts: in the order
    of the sheet."""

    client: str
    plan: str
    version: int
    date: str
    parts: tuple[LogPart, ...]


@dataclass(frozen=True)
class Labels:
    """The lines around the fields, in the client's language."""

    title: str
    client: str
    plan: str
    date: str
    end: str


ENGLISH = Labels("Training log", "Client", "Session", "Date", "End of the log")


def write(log: LogText, labels: Labels = ENGLISH) -> str:
    """The log as text; fields without text are left out."""
    return _written(log, labels, empty=False)


def _written(log: LogText, labels: Labels, empty: bool) -> str:
    lines = [
        f"{_clean(labels.title)} [handouts log {FORMAT}]",
        _line(labels.client, "client", log.client),
        _line(labels.plan, "plan", f"{log.plan} version {log.version}"),
    ]
    if log.date or empty:
        lines.append(_line(labels.date, "date", "" if empty else log.date))
    for part in log.parts:
        lines.append("")
        if part.exercise == "session":
            lines.append(f"{_clean(part.heading)} [session]")
        else:
            lines.append(_line(part.heading, f"exercise {part.exercise}", part.title))
        fields = (said for said in part.fields if empty or said.text.strip())
        lines += [_line(said.label, said.name.replace("_", " "), "" if empty else said.text) for said in fields]
    lines.append(f"{_clean(labels.end)} [end of log]")
    return "\n".join(lines) + "\n"


def blank(log: LogText, labels: Labels) -> str:
    """The log as an empty form: a line for each field, to be written after."""
    return _written(log, labels, empty=True)


def labels(words: Phrases) -> Labels:
    """The lines around the fields in one language."""
    title, client, plan, date, end = (
        words.text(key) for key in ("logtext_title", "label_client", "label_session", "log_date", "logtext_end")
    )
    return Labels(title, client, plan, date, end)


def read(text: str) -> LogText:
    """The log in a text.

    Labels and headings come back as they stand there.
    Raises NoLogText when the text holds no whole log, or one of a later format.
    """
    head: dict[str, str] = {}
    parts: list[tuple[str, str, str, list[Said]]] = []
    for label, key, value in _joined(_rows(text)):
        if key == "session" or key.startswith("exercise "):
            parts.append((key.removeprefix("exercise "), label, value, []))
        elif not value:
            continue
        elif parts:
            parts[-1][3].append(Said(key.replace(" ", "_"), label, value))
        elif key in head:
            raise NoLogText(f"the log names its {key} twice; ask the client to send it again")
        else:
            head[key] = value
    plan = _PLAN.match(head.get("plan", ""))
    if not head.get("client") or plan is None:
        raise NoLogText("the log does not say whose and which session it is; ask the client to send it again")
    return LogText(
        head["client"], plan[1], int(plan[2]), head.get("date", ""),
        tuple(LogPart(exercise, heading, title, tuple(fields)) for exercise, heading, title, fields in parts),
    )


def holds_log(text: str) -> bool:
    """Whether a text has the first line of a log in it."""
    return any(_FIRST.match(row) for row in _lines(text))


def _lines(text: str) -> list[str]:
    text = text.removeprefix("\ufeff").replace("\u00a0", " ").replace("\u202f", " ")
    # Control characters mean nothing here; the writer takes them out too.
    rows = (re.sub(r"[\x00-\x08\x0e-\x1f\x7f-\x9f]", " ", row) for row in text.splitlines())
    return [re.sub(r"^(?:\s*>)+\s?", "", row).strip() for row in rows]


def _rows(text: str) -> list[str]:
    """The lines between the first and the last of the log, without empty ones."""
    rows = _lines(text)
    first = next(((number, found) for number, row in enumerate(rows) if (found := _FIRST.match(row))), None)
    if first is None:
        raise NoLogText("no line ends in [handouts log 1]; this is not a log that the page wrote")
    number, found = first
    if int(found[1]) > FORMAT:
        raise NoLogText(f"the log has format {found[1]}, this program reads format {FORMAT}; bring the program up to date")
    end = next((at for at, row in enumerate(rows) if at > number and _LAST.match(row)), None)
    if end is None:
        raise NoLogText("the line [end of log] is missing, so part of the log may be; ask the client to send it again")
    return [row for row in rows[number + 1 : end] if row]


def _joined(rows: list[str]) -> list[tuple[str, str, str]]:
    """(label, key, value) of each line, put together again where it was wrapped."""
    whole: list[tuple[str, str, list[str]]] = []
    for row in rows:
        found = _key_line(row)
        if found is None:
            if whole:
                whole[-1][2].append(row)
            continue
        label, key, value = found
        if not label and whole and len(whole[-1][2]) > 1:
            # The label was wrapped off its key, and looked like the end of the
            # value before.
            label = whole[-1][2].pop()
        whole.append((label, key, [value]))
    return [(label, key, " ".join(value).strip()) for label, key, value in whole]


def _key_line(row: str) -> tuple[str, str, str] | None:
    """(label, key, value) of a line that starts something, None of one that goes on."""
    found = _LINE.match(row)
    if found:
        return row[: row.index("[")].strip(), found[1], found[2] or ""
    plain = _PLAIN.match(row)
    if plain:
        return plain[1], plain[1].lower(), plain[2]
    return None


def _line(label: str, key: str, value: str) -> str:
    label = _clean(label)
    shown = label if label.lower() == key and key in PLAIN_KEYS else f"{label} [{key}]"
    return f"{shown}: {_clean(value)}".rstrip()


def _clean(text: str) -> str:
    """One line without square brackets and control characters."""
    text = unicodedata.normalize("NFC", text).replace("[", "(").replace("]", ")")
    return " ".join("".join(" " if unicodedata.category(c) == "Cc" else c for c in text).split())
