"""Messages that wait for answers: nothing is lost when asking is stopped.

One file a client, logs/CLIENT.draft.json, written anew after every answer and
gone when nothing waits any more.  Who reads it to write it back holds the
folder of the logs (`handouts.making.lock.alone_in`).
"""

from __future__ import annotations

import datetime
import json
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from handouts.errors import Fault, StudioFaults
from handouts.logbook.files import file_stem
from handouts.logbook.message import Filled, Message
from handouts.making.writing import write_whole
from handouts.reading.text_file import read_text


@dataclass(frozen=True)
class Draft:
    """One message with what has been answered so far.

    answers: by a question's key.
    asked_up_to: while fields are being asked for at the terminal, how many
        prompts have been answered; None once the message is whole.
    """

    message: Message
    answers: dict[str, str] = field(default_factory=dict)
    asked_up_to: int | None = None

    def answered(self, key: str, answer: str) -> Draft:
        return replace(self, answers=self.answers | {key: answer})


def draft_path(folder: Path, client: str) -> Path:
    return folder / "logs" / f"{file_stem(client)}.draft.json"


def read_drafts(folder: Path, client: str) -> tuple[Draft, ...]:
    """What waits, the oldest first.

    Raises StudioFaults when the file was changed by hand and is broken.
    """
    path = draft_path(folder, client)
    if not path.is_file():
        return ()
    shown = f"logs/{path.name}"
    try:
        return tuple(_draft(entry) for entry in json.loads(read_text(path, shown))["waiting"])
    except json.JSONDecodeError as problem:
        line, wrong = problem.lineno, f"the draft cannot be read ({problem.msg})"
    except (KeyError, TypeError, ValueError, AttributeError) as problem:
        line, wrong = 0, f"the draft is not as it was written ({problem})"
    raise StudioFaults((Fault(shown, line, wrong, "mend it, or move the file away and log its messages again"),))


def write_drafts(folder: Path, client: str, drafts: tuple[Draft, ...]) -> None:
    """Keep what waits.  With nothing to keep, the file goes."""
    path = draft_path(folder, client)
    if drafts:
        text = json.dumps({"waiting": [_entry(draft) for draft in drafts]}, ensure_ascii=False, indent=1)
        write_whole(path, (text + "\n").encode("utf-8"))
    else:
        path.unlink(missing_ok=True)


def exchange(folder: Path, client: str, old: Draft, new: Draft | None) -> None:
    """Put a draft where another stands now, or take that away with None.

    Where somebody changed or settled the other in the meantime, that stays as
    it is, and the new one goes behind the others: nothing is lost.
    """
    waiting = list(read_drafts(folder, client))
    if old in waiting:
        at = waiting.index(old)
        waiting[at : at + 1] = [new] if new is not None else []
    elif new is not None:
        waiting.append(new)
    write_drafts(folder, client, tuple(waiting))


def same_message(folder: Path, client: str, draft: Draft) -> Draft | None:
    """The draft of the same message as it waits now, with whatever others have
    answered; None when it waits no more."""
    return next((one for one in read_drafts(folder, client) if one.message == draft.message), None)


def _entry(draft: Draft) -> dict[str, Any]:
    message = draft.message
    entry: dict[str, Any] = {"raw": message.raw, "language": message.language}
    if message.fields:
        entry["fields"] = [[one.exercise, one.name, one.text] for one in message.fields]
    if message.date:
        entry["date"] = message.date.isoformat()
    if message.plan:
        entry["plan"] = message.plan
    if message.version is not None:
        entry["version"] = message.version
    if message.corrects:
        entry["corrects"] = message.corrects
    if draft.answers:
        entry["answers"] = draft.answers
    if draft.asked_up_to is not None:
        entry["asked up to"] = draft.asked_up_to
    return entry


def _draft(entry: dict[str, Any]) -> Draft:
    fields = tuple(Filled(str(exercise), str(name), str(text)) for exercise, name, text in entry.get("fields", ()))
    date = datetime.date.fromisoformat(entry["date"]) if "date" in entry else None
    version = int(entry["version"]) if "version" in entry else None
    message = Message(
        str(entry["raw"]),
        str(entry["language"]),
        fields,
        date,
        str(entry.get("plan", "")),
        version,
        int(entry.get("corrects", 0)),
    )
    answers = {str(key): str(answer) for key, answer in entry.get("answers", {}).items()}
    up_to = int(entry["asked up to"]) if "asked up to" in entry else None
    return Draft(message, answers, up_to)
