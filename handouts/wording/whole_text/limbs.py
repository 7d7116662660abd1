"""What the start position says of one limb, step by step, and where two steps cannot both be true.

A limb is told by what it does: it bears the body, it is free, it holds a
weight.  A step that moves a limb forgets what was said of it; a step that only
says how a limb is must agree with what was said before.  English alone.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import cache
from typing import NamedTuple

from handouts.wording.whole_text.check import Flaw
from handouts.wording.whole_text.document import Piece


class _Told(NamedTuple):
    """What is said of a limb: the sign of it, such as "bears", and the words, characters of a sentence from `start` to `end`."""

    sign: str
    start: int
    end: int


_SIDE = r"(?P<side>left|right)"
_LEG = r"(?:foot|leg|knee|shin|sole|heel|toes|ankle|thigh)"
_ARM = r"(?:hand|arm|palm|forearm|elbow|fist|fingertips|fingers)"
_KIT = r"(?:dumbbell|kettlebell|bell|bottle|weight|handle|bag)"
_NOT_STRAIGHT_ON = r"straight(?!\s+(?:ahead|back|behind|up|down|out|forward|to|line))"

_LEG_SIGNS = {
    "bears": (
        rf"\b{_SIDE}\s+(?:foot|sole|heel)\s+(?:is\s+|stands?\s+|stays\s+|rests\s+)?(?:flat|planted|on\s+the\s+(?:floor|ground|mat))\b"
        rf"|\bweight\s+(?:\w+\s+){{0,2}}(?:on|into|onto)\s+(?:the|your)\s+{_SIDE}\s+(?:foot|leg|heel)\b"
        rf"|\b(?:tread|stand|balance)\s+(?:\w+\s+){{0,6}}?(?:with|on)\s+(?:the|your)\s+{_SIDE}\s+(?:foot|leg|heel)\b"
        rf"|\b{_SIDE}\s+(?:foot|leg)\b[^.;]*\b(?:carry|carries|bears?)\s+(?:you|your\s+weight)\b"
        rf"|\b{_SIDE}\s+(?:knee|leg|heel)\s+(?:sinks|presses|puts)\s+(?:its\s+|your\s+)?weight\b"
    ),
    "is free": (
        rf"\bfree\s+{_SIDE}\s+{_LEG}\b|\bfree\s+(?:leg|foot),\s+the\s+{_SIDE}\b"
        rf"|\b{_SIDE}\s+(?:foot|leg|heel)\s+(?:is\s+|hangs\s+|stays\s+)?(?:up\s+)?(?:in\s+the\s+air|off\s+the\s+floor|dangles?\b|hangs?\b)"
        rf"|\b(?:lift|peel|raise)\s+(?:the|your)\s+{_SIDE}\s+(?:foot|knee|leg)\b"
    ),
    "lies on the other": (
        rf"\b{_SIDE}\s+(?:leg|knee|ankle|foot)\b[^.;]*?\b(?:across|on\s+top\s+of)\s+(?:the|your)\s+(?:left|right)\s+(?:thigh|knee|leg|one|shin)\b"
    ),
    "is straight": (
        rf"\b{_NOT_STRAIGHT_ON}\s+{_SIDE}\s+(?:knee|leg)\b|\b{_SIDE}\s+(?:knee|leg)\s+is\s+{_NOT_STRAIGHT_ON}"
        rf"|\b{_SIDE}\s+thigh\b[^.;]*\bthe\s+straight\s+knee\b|\b{_SIDE}\s+(?:foot|heel)\b[^.;]*\bthe\s+knee\s+is\s+{_NOT_STRAIGHT_ON}"
    ),
    "is bent": (
        rf"\bbent\s+{_SIDE}\s+(?:knee|leg)\b|\b{_SIDE}\s+(?:knee|leg)\s+is\s+bent\b|\bbend\s+(?:the|your)\s+{_SIDE}\s+(?:knee|leg)\b"
        rf"|\b{_SIDE}\s+foot\b[^.;]*\bbent\s+knee\b"
    ),
    "is in front": rf"\bfront\s+(?:knee|foot|leg),\s+the\s+{_SIDE}\b|\b{_SIDE}\s+(?:foot|knee|leg)\s+is\s+(?:in\s+front|ahead)\b",
    "is behind": rf"\b(?:back|rear)\s+(?:knee|foot|leg),\s+the\s+{_SIDE}\b|\b(?:slide|step|move|set)\s+(?:the|your)\s+{_SIDE}\s+(?:foot|leg)\s+(?:straight\s+)?(?:back|behind)\b",
    "kneels": rf"\bkneel\w*\s+(?:down\s+)?on\s+(?:the|your)\s+{_SIDE}\s+knee\b",
    "is upright": rf"\b{_SIDE}\s+shin\s+(?:is|stands)\s+upright\b",
}
_ARM_SIGNS = {
    "supports": (
        rf"\b{_SIDE}\s+(?:hand|palm|fingertips|forearm|elbow)\s+(?:is\s+|rests?\s+|down\s+|flat\s+)*(?:on|against)\s+the\s+(?:\w+\s+)?(?:bench|seat|wall|mat|floor|chair|rail)\b"
        rf"|\btouch\s+the\s+(?:wall|rail|bench|seat)\s+with\s+(?:the|your)\s+{_SIDE}\s+{_ARM}\b"
        rf"|\bweight\b[^.;]*\bon\s+(?:the|your|that)\s+{_SIDE}\s+(?:forearm|hand|palm|elbow|arm)\b|\b{_SIDE}\s+elbow\s+down\b"
        rf"|\b{_SIDE}\s+arm\b[^.;]*\bpush(?:es|ing)\s+(?:the\s+)?(?:mat|floor)\b"
    ),
    "holds a weight": (
        rf"\b{_KIT}\b[^.;]{{0,40}}\b(?:from|in)\s+(?:the|your)\s+{_SIDE}\s+hand\b|\bwith\s+(?:the|your)\s+{_SIDE}\s+hand\b[^.;]{{0,30}}\b{_KIT}\s+hang\b"
        rf"|\b{_SIDE}\s+(?:arm|hand)\b[^.;]*\bweight\s+(?:that\s+)?it\s+(?:carries|holds)\b"
    ),
    "is free": rf"\bfree\s+{_SIDE}\s+{_ARM}\b|\bfree\s+(?:arm|hand),\s+the\s+{_SIDE}\b",
    "is at the head": (
        rf"\b(?:fingertips\s+of\s+(?:the|your)\s+)?{_SIDE}\s+(?:hand|fingertips|palm)\b(?:\s+is|\s+rests|:)?[^.;]{{0,20}}\bbehind\s+(?:the|your)\s+(?:\w+\s+)?(?:ear|head|nape)\b"
    ),
    "lies flat": rf"\b{_SIDE}\s+(?:arm|forearm)\b[^.;]*\bflat\s+on\s+the\s+(?:mat|floor)\b",
    "is upright": rf"\b{_SIDE}\s+forearm\s+(?:is|stands)\s+upright\b",
    "holds the seat": rf"\bwith\s+(?:the|your)\s+{_SIDE}\s+hand,?\s+(?:hold|grip)\s+[^.;]*\b(?:seat|chair|bench|rail)\b",
    "holds the arm": rf"\b{_SIDE}\s+(?:hand|palm)\s+(?:lies|rests|is|holds)\b[^.;]*\bupper\s+arm\b",
}
_CANNOT = {
    frozenset(pair)
    for pair in (
        ("bears", "is free"), ("bears", "lies on the other"), ("is straight", "is bent"), ("is in front", "is behind"), ("kneels", "is upright"),
        ("supports", "is free"), ("is at the head", "supports"), ("is at the head", "holds a weight"), ("lies flat", "is upright"),
        ("holds the seat", "holds the arm"),
    )
}  # fmt: skip
_CANNOT_THEN = ("supports", "holds a weight")
"""A hand may find a weight and then a support; it is this way round that cannot be."""
_ONE_ALONE = "is straight"
"""Said of one limb as that which tells it from the other: "the straight left leg" after the right one was made straight."""

_MOVES = re.compile(
    r"\b(?:lift|lower|raise|step|move|bring|slide|swing|shift|return|walk|draw|drop|take|carry|roll|leave|let\s+go|straighten|bend|lay|put|place|set|"
    r"stretch|reach|climb|peel)(?:s|ing)?\b|\bcomes?\b",
    re.IGNORECASE,
)
_NAMED = {
    (limb, side): re.compile(rf"\b{side}\s+{words}\b", re.IGNORECASE) for limb, words in (("leg", _LEG), ("arm", _ARM)) for side in ("left", "right")
}
_FOR_NOW = re.compile(r"\b(?:for\s+now|for\s+a\s+moment|until\s+now|first)\b", re.IGNORECASE)


@cache
def _signs() -> dict[str, list[tuple[str, re.Pattern[str]]]]:
    """Of legs and arms, the signs and how each is said."""

    def numbered(said: str) -> str:
        """Each alternative's side in a group of its own."""
        parts = said.split("(?P<side>")
        return parts[0] + "".join(f"(?P<side{number}>{part}" for number, part in enumerate(parts[1:]))

    return {
        limb: [(sign, re.compile(numbered(said), re.IGNORECASE)) for sign, said in signs.items()]
        for limb, signs in (("leg", _LEG_SIGNS), ("arm", _ARM_SIGNS))
    }


def at_odds(pieces: Iterable[Piece]) -> Iterator[Flaw]:
    """Where what is said of a limb cannot be true beside what was said before.

    pieces: the sentences of a start position, in order.
    """
    known: dict[tuple[str, str], dict[str, str]] = {}
    for piece in pieces:
        text = piece.text
        if "left" not in text.lower() and "right" not in text.lower():
            continue
        for limb, signs in _signs().items():
            every = _told(text, signs)
            for side, told in every:
                moved = _MOVES.search(text, 0, told.end)
                before = known.setdefault((side, limb), {})
                if moved and not re.match(r"\bfree\b|\bstraight\b", text[told.start : told.end], re.IGNORECASE):
                    before.clear()
                elif words := _against(told.sign, before, known.get((_other(side), limb), {})):
                    yield _flaw(piece, told, words, side, limb)
                    continue
                before[told.sign] = text[told.start : told.end]
            for side in _moved(text, limb, {side for side, _ in every}):
                known.pop((side, limb), None)


def _told(text: str, signs: list[tuple[str, re.Pattern[str]]]) -> list[tuple[str, _Told]]:
    """What a sentence tells of the limbs of each side, in its order."""
    found = []
    for sign, said in signs:
        for one in said.finditer(text):
            side = next(value for value in one.groupdict().values() if value)
            found.append((side.lower(), _Told(sign, one.start(), one.end())))
    return sorted(found, key=lambda one: one[1].start)


def _against(sign: str, before: dict[str, str], other: dict[str, str]) -> str:
    """The words before that a sign cannot stand beside, or ""."""
    for earlier, words in before.items():
        if frozenset((sign, earlier)) in _CANNOT or (earlier, sign) == _CANNOT_THEN:
            return words
    return other.get(sign, "") if sign == _ONE_ALONE and not before else ""


def _moved(text: str, limb: str, told: set[str]) -> Iterator[str]:
    """The sides whose limb a sentence moves without telling where to, or puts somewhere for now.

    told: the sides of which it tells something.
    """
    for_now, moves = _FOR_NOW.search(text), _MOVES.search(text)
    for side in ("left", "right"):
        if (for_now and side in text.lower()) or (moves and side not in told and _NAMED[limb, side].search(text)):
            yield side


def _other(side: str) -> str:
    return "left" if side == "right" else "right"


def _flaw(piece: Piece, told: _Told, before: str, side: str, limb: str) -> Flaw:
    return Flaw(
        piece.start + told.start,
        piece.start + told.end,
        f"'{before}' stands before: both cannot be true of the {side} {limb}.",
        f"Name the {_other(side)} side in one of the two, or say that the limb moves.",
    )
