"""The options of `handouts log` as one message, or the reason why not."""

from __future__ import annotations

from collections.abc import Mapping

from handouts.amounts import read_date
from handouts.logbook.command import Asked
from handouts.logbook.files import CannotLog
from handouts.logbook.message import SESSION, Filled

_OF_SESSION = ("time", "effort")
_OF_EXERCISE = ("weight", "reps", "seconds")


def asked(
    client: str,
    text: str | None,
    source: str | None,
    date: str | None,
    plan: str | None,
    version: int | None,
    exercise: str | None,
    side: str | None,
    correct: int | None,
    ask: bool,
    said: Mapping[str, str | None],
) -> Asked:
    """What the options ask for.

    said: weight, reps, seconds, time, effort, note, warning, question, as given.
    Raises CannotLog where they do not go together.
    """
    given = {name: words for name, words in said.items() if words is not None}
    if text is not None and source is not None:
        raise CannotLog("--text and --from are two ways in; take one out")
    other = [f"--{name}" for name in (*given, *(["exercise"] if exercise else []), *(["side"] if side else []))]
    if other and (text is not None or source is not None):
        way = "--text" if text is not None else "--from"
        raise CannotLog(f"{way} brings all that was done; take out {', '.join(other)}, or say it in the text")
    needs = [name for name in _OF_EXERCISE if name in given]
    if needs and exercise is None and correct is None:
        raise CannotLog(f"--{needs[0]} needs the exercise that it is of; add --exercise")
    if date is not None:
        try:
            read_date(date)
        except ValueError as problem:
            raise CannotLog(f"--date: {problem}") from None
    code, number = _plan(plan)
    fields = []
    for name, words in given.items():
        where = SESSION if name in _OF_SESSION else exercise or SESSION
        field = "pain" if name == "warning" else name
        sided = f"{field}_{side}" if side and field in _OF_EXERCISE else field
        fields.append(Filled(where, sided, words))
    if text is not None and not text.strip():
        raise CannotLog("--text: the message is empty; write what the client sent")
    return Asked(
        client,
        text or "",
        source or "",
        date or "",
        code,
        version if version is not None else number,
        tuple(fields),
        correct or 0,
        ask,
    )


def _plan(text: str | None) -> tuple[str, int | None]:
    """ "P2", "P2v1", "P2-v1" or "P2 version 1"."""
    if text is None:
        return "", None
    words = text.strip()
    for mark in (" version ", "-v", " v", "v"):
        code, found, number = words.rpartition(mark)
        if found and code and number.isascii() and number.isdigit() and len(number) < 4:
            return code.strip(), int(number)
    return words, None
