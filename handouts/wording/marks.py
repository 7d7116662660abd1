"""What the checker hands back: one mark a fault."""

from dataclasses import dataclass
from typing import Literal

Strength = Literal["blocks", "advice"]


@dataclass(frozen=True, slots=True)
class Mark:
    """A run of words that a reader who is not watching cannot use.

    start, end: characters of the author's text, counted from 0, end exclusive.
    kind: the name of the kind that found it, such as "pointing".
    strength: "blocks" when the reader cannot act on the words, else "advice".
    words: the marked words, as they stand in the text.
    why: why a reader cannot use them, one or two sentences.
    suggest: what to write instead, as specific as the sentence allows.
    rewrite: words that can safely take the place of the marked ones, or None.
    """

    start: int
    end: int
    kind: str
    strength: Strength
    words: str
    why: str
    suggest: str
    rewrite: str | None = None
