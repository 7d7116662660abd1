"""What each kind and each check is, from the place where it is written.

The same words answer `--explain` and stand in KINDS.md beside the kinds.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from handouts.wording.allowed import WHY
from handouts.wording.engine import check_text
from handouts.wording.kinds import KINDS, kinds
from handouts.wording.kinds.kind import Kind
from handouts.wording.marks import Strength
from handouts.wording.names import ALLOW
from handouts.wording.whole_text import CHECKS
from handouts.wording.whole_text.check import Check

_MARKED = re.compile(r"\[\[(.*?)\]\]", re.DOTALL)


@dataclass(frozen=True, slots=True)
class Explained:
    """One kind or check in words.

    flag: passages that are marked, in those of kinds the words between `[[`
    and `]]`.  leave: near misses that are not.  french_flag, french_leave: the
    same in French, none where a kind has no French.
    """

    name: str
    strength: Strength
    what: str
    why: str
    flag: tuple[str, ...]
    leave: tuple[str, ...]
    french_flag: tuple[str, ...] = ()
    french_leave: tuple[str, ...] = ()


def explained() -> tuple[Explained, ...]:
    """All of them: kinds, then checks of whole texts, then the comments that let a finding stand."""
    known: tuple[Kind | Check, ...] = (*KINDS["en"], *CHECKS)
    french = {kind.name: (kind.flag, kind.leave) for kind in kinds("fr")}
    entries = tuple(
        Explained(
            entry.name,
            entry.strength,
            entry.what,
            entry.why,
            entry.flag,
            entry.leave,
            *french.get(entry.name, ((), ())),
        )
        for entry in known
    )
    allow = Explained(
        ALLOW,
        "advice",
        "A comment that lets a finding stand, such as '<!-- allow pointing: reason -->', without a reason, with an unknown name, "
        "or with nothing to let stand.",
        WHY,
        (),
        (),
    )
    return (*entries, allow)


def explain(name: str) -> str | None:
    """One kind or check in whole lines, "all" for all of them as Markdown; None when there is none of that name."""
    if name == "all":
        return "\n".join(_markdown())
    return next(("\n".join(_lines(entry)) for entry in explained() if entry.name == name), None)


def _lines(entry: Explained) -> Iterator[str]:
    yield f"{entry.name}, {entry.strength}"
    yield f"What: {entry.what}"
    yield f"Why: {entry.why}"
    for language, flag in (("en", entry.flag), ("fr", entry.french_flag)):
        for passage in flag:
            marked = _MARKED.findall(passage)
            words = f" (marked: {', '.join(map(_quoted, marked))})" if marked else ""
            yield f"Marked: {_shown(passage)}{words}"
            for suggestion in _suggestions(entry.name, passage, language):
                yield f"Instead: {suggestion}"
    for passage in (*entry.leave, *entry.french_leave):
        yield f"Not marked: {_shown(passage)}"


def _markdown() -> Iterator[str]:
    yield "# What the wording checker marks"
    yield ""
    yield "This page is made by `handouts check --explain all` from the kinds and checks themselves; each example is a test."
    yield "A finding **blocks** when a reader who does not watch cannot act on the words, and is **advice** when two readers"
    yield "would do two different things."
    for entry in explained():
        yield from ("", f"## {entry.name}", "", f"Strength: {entry.strength}.", "", entry.what, "", entry.why)
        for heading, passages in (
            ("Marked:", entry.flag),
            ("Not marked:", entry.leave),
            ("Marked in French:", entry.french_flag),
            ("Not marked in French:", entry.french_leave),
        ):
            if passages:
                yield from ("", heading, "")
                for passage in passages:
                    yield "- " + _shown(_MARKED.sub(r"**\1**", passage))


def _suggestions(name: str, passage: str, language: str) -> Iterator[str]:
    """What the checker itself says about a marked passage."""
    for mark in check_text(_MARKED.sub(r"\1", passage), language=language):
        if mark.kind == name:
            yield mark.suggest


def _shown(passage: str) -> str:
    """A passage on one line; line ends of a longer text are told by a slash."""
    return " / ".join(line.strip() for line in _MARKED.sub(r"\1", passage).strip().split("\n") if line.strip())


def _quoted(words: str) -> str:
    return f'"{words}"'
