"""What a kind of fault is made of."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from handouts.wording.marks import Strength
from handouts.wording.prose import Sentence

Span = tuple[int, int]
"""First word, and the word after the last, as places in `Sentence.words`."""


@dataclass(frozen=True)
class Kind:
    """One kind of fault in one language, with everything that belongs to it.

    name: as marks carry it, such as "looks-only".
    strength: "blocks" or "advice".
    why: why a reader who is not watching cannot use the words.
    suggest: from a sentence and the marked words, what to write instead.
    find: the marked words of a sentence; they may overlap, the first wins.
    flag: passages with a fault, the marked words between `[[` and `]]`.
    leave: near misses, without any mark of this kind.
    rewrite: words that can stand in place of the marked ones in any sentence,
        or None where only the author can know what is meant.
    harmless: whether some words are no fault whatever was learnt of such words,
        as an idiom is; `find` asks it too.
    what: what this kind is, in one sentence.
    """

    name: str
    strength: Strength
    why: str
    suggest: Callable[[Sentence, int, int], str]
    find: Callable[[Sentence], Iterator[Span]]
    flag: tuple[str, ...]
    leave: tuple[str, ...]
    rewrite: Callable[[Sentence, int, int], str | None] = lambda sentence, first, last: None
    harmless: Callable[[Sentence, int, int], bool] = lambda sentence, first, last: False
    what: str = ""
