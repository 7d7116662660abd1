"""A text for one side, mirrored twice, comes back to itself."""

from __future__ import annotations

import re
from collections.abc import Iterator

from handouts.wording.whole_text.check import Check, Flaw
from handouts.wording.whole_text.document import Document

# Pairs of words for one thing, of which the mirror keeps the second.
_SAME = (
    (re.compile(r"\b(c)ounter-?clockwise|\b(a)nti-clockwise", re.IGNORECASE), "anticlockwise"),
    (re.compile(r"\bsens\s+contraire\b", re.IGNORECASE), "sens inverse"),
)


def _find(document: Document) -> Iterator[Flaw]:
    if document.facts.sides not in ("each", "alternating"):
        return
    from handouts.mirror import mirror

    for piece in document.pieces:
        other = mirror(piece.text, document.language)
        if other == piece.text:
            continue
        back = mirror(other, document.language)
        if back != piece.text and _plain(back) != _plain(piece.text):
            yield Flaw(
                piece.start,
                piece.end,
                f"For the other side this reads '{other}', and mirrored once more it does not come back: '{back}'.",
                'Say the side with a plain noun before or after it, and each hour with its own "o\'clock".',
            )


def _plain(text: str) -> str:
    for pattern, words in _SAME:
        text = pattern.sub(words, text)
    return " ".join(text.lower().split())


MIRRORED = Check(
    name="mirrored",
    strength="blocks",
    what="A sentence of a text for one side that does not come back to itself when left and right, hours and turns are swapped "
    "twice.",
    why="The program writes the other side by mirroring. A sentence that does not come back says something wrong on that side.",
    everywhere=False,
    find=_find,
    flag=("---\nlanguage: fr\ntitle: Rotation\nsides: each\n---\nSentez travailler votre deltoïde droit.\n",),
    leave=(
        "---\ntitle: Row\nsides: each\n---\nPull your right elbow toward 4 o'clock, then turn anticlockwise.\n",
        "---\ntitle: Row\nsides: together\n---\nBoth arms go up.\n",
    ),
)
