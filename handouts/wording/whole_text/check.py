"""What a check of a whole text is made of."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import NamedTuple

from handouts.wording.marks import Strength
from handouts.wording.whole_text.document import Document


class Flaw(NamedTuple):
    """A place where a text contradicts itself, leaves something out or is hard to read.

    start, end: characters of the author's text, counted from 0, end exclusive,
        no longer than the sentence that gives rise to it.
    what: what is wrong here, with the arithmetic where there is any.
    suggest: what to write instead.
    """

    start: int
    end: int
    what: str
    suggest: str


class Check(NamedTuple):
    """One check, with everything that belongs to it.

    name: as findings carry it, such as "clock-frame".
    strength: "blocks" when the reader cannot act on the text, else "advice".
    what: what the check looks for.
    why: why it matters to a reader who does not watch.
    everywhere: it concerns the text as a whole, so that a comment anywhere in
        the text lets its finding stand.
    find: the flaws of a text, in order.
    flag: texts with the flaw, and leave: near misses without it.
    """

    name: str
    strength: Strength
    what: str
    why: str
    everywhere: bool
    find: Callable[[Document], Iterator[Flaw]]
    flag: tuple[str, ...]
    leave: tuple[str, ...]
