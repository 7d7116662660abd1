"""Comments in a text that let one finding stand, with the reason.

    <!-- allow pointing: the two pads are bolted to the wall there -->

The comment stands in the line of the finding, or on a line of its own right
above it.  It lets one finding of that name stand; two findings take two
comments.  A finding about the text as a whole is let stand from any line.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import NamedTuple

from handouts.wording.names import ALL_NAMES, instead_of
from handouts.wording.prose import comments
from handouts.wording.whole_text.check import Flaw

_ALLOW = re.compile(r"<!--\s*allow\b[ \t]*([^\s:>]*)[ \t]*(:?)\s*(.*?)\s*-->", re.IGNORECASE | re.DOTALL)

_LONGEST = 2000
"""Characters of a comment that is read; a longer one is a note of another sort."""

_FURTHEST = 50
"""Lines that a comment of its own may stand above its line."""

WHY = (
    "A comment lets a finding stand only with a reason, so that whoever reads the text next knows that it was meant. A comment "
    "that lets nothing stand hides the next fault that comes into its line."
)


class Allow(NamedTuple):
    """One such comment.

    start, end: characters of the text.  line: that it speaks for, from 1.
    name: of a kind or a check.  flaw: what is wrong with the comment itself, so
    that it lets nothing stand; None when nothing is.
    """

    start: int
    end: int
    line: int
    name: str
    reason: str
    flaw: Flaw | None


def find_allows(text: str) -> tuple[Allow, ...]:
    """The comments that let something stand, in order, each with what is wrong with it."""
    read = [
        (start, match)
        for start, end in comments(text)
        if end - start <= _LONGEST and (match := _ALLOW.fullmatch(text, start, end))
    ]
    below: dict[int, int] = {}  # from the beginning of a line with a comment: lines down to its words
    for start, match in reversed(read):
        begin = text.rfind("\n", 0, start) + 1
        if begin not in below:
            below[begin] = _lines_down(text, begin, match.end(), below)
    found = []
    line, counted = 1, 0  # the line of the character `counted`
    for start, match in read:
        line += text.count("\n", counted, start)
        counted = start
        name, reason = match[1].lower(), " ".join(match[3].split())
        flaw = None
        if name not in ALL_NAMES:
            wrong = f"There is no kind or check '{match[1]}'." if name else "The comment names no kind or check."
            flaw = Flaw(start, match.end(), wrong, f"Write '<!-- allow NAME: reason -->'; {instead_of(name)}.")
        elif not match[2] or not reason:
            wrong = "The comment gives no reason, so it lets nothing stand."
            flaw = Flaw(start, match.end(), wrong, f"Write '<!-- allow {name}: your reason -->'.")
        speaks_for = line + below[text.rfind("\n", 0, start) + 1]
        found.append(Allow(start, match.end(), speaks_for, name, reason, flaw))
    return tuple(found)


def _lines_down(text: str, begin: int, end: int, below: dict[int, int]) -> int:
    """How many lines below its first a comment speaks for: none when words stand
    beside it, else as many as to the next line with words.

    begin: of the comment's line.  end: of the comment.  below: the same for
    lines further down.
    """
    down = 0
    stop = text.find("\n", end)
    while stop >= 0 and down < _FURTHEST and not _without_comments(text[begin:stop]).strip():
        down += text.count("\n", begin, stop) + 1
        begin = stop + 1
        if begin in below:
            return min(down + below[begin], _FURTHEST)
        stop = text.find("\n", begin)
    return down


def _without_comments(line: str) -> str:
    parts = []
    at = line.find("<!--")
    before = 0
    while at >= 0:
        end = line.find("-->", at + 4)
        if end < 0:
            break
        parts.append(line[before:at])
        before = end + 3
        at = line.find("<!--", before)
    parts.append(line[before:])
    return "".join(parts)


def unused(allow: Allow) -> Flaw:
    """What is wrong with a comment that lets nothing stand."""
    return Flaw(
        allow.start,
        allow.end,
        f"The comment lets nothing stand: no '{allow.name}' is found where it speaks for.",
        "Take the comment out.",
    )


def match_allows(
    allows: Sequence[Allow], findings: Sequence[tuple[str, int, bool]]
) -> tuple[dict[int, Allow], tuple[Allow, ...]]:
    """Which finding is let stand by which comment, and the comments left over.

    findings: of each its name, the line it begins in, and whether it concerns
        the text as a whole.
    """
    by_place: dict[tuple[str, int], list[int]] = {}
    by_name: dict[str, list[int]] = {}
    for number, (name, line, whole) in enumerate(findings):
        if whole:
            by_name.setdefault(name, []).append(number)
        else:
            by_place.setdefault((name, line), []).append(number)
    let: dict[int, Allow] = {}
    left = []
    for allow in allows:
        if allow.flaw is not None:
            continue
        waiting = by_place.get((allow.name, allow.line)) or by_name.get(allow.name)
        if waiting:
            let[waiting.pop(0)] = allow
        else:
            left.append(allow)
    return let, tuple(left)
