"""A small grammar over words: phrases are written as they are spoken.

A phrase is a line of parts, each part one word or a choice of words:

    watch|observe       one of these words
    @landmark           a word of that class in the lexicon
    @my|the             both together
    %ing                any word with that ending
    x?                  the part may be missing
    x*3                 the part up to three times, or not at all
    _                   any one word, never a pause; _*3 up to three of them
    !x   &x             what follows here is not x; is x (and stays unread)
    <!x  <x             what stands before here is not x; is x
    ^    $              here a clause starts; ends (also "x|$" as the last part)
    [ ... ]             the words that are marked (without brackets: all of it)
    {who}               any of the phrases that `who` stands for

A phrase is tried only where its rarest word stands, and it reads outward from
there, so a sentence without that word costs nothing.  Repeats are bounded, so
the work at one word has a fixed ceiling.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import cached_property
from typing import NamedTuple

from handouts.wording.prose import NAME, PAUSES, Sentence

LEADER = 1
"""The bit of the class `leader`, the first class of every lexicon: words after which a clause may start."""

ONE, MANY, NEXT, NOT_NEXT, PREVIOUS, NOT_PREVIOUS, CLAUSE_START, CLAUSE_END, OPEN, CLOSE = range(10)


_RARE = 0.02
"""How often a word that is not among the common ones stands in a thousand; no word counts as rarer."""


class _Known(dict[str, int]):
    """From a word to its class bits; a word that no class lists is guessed, each time anew."""

    def __init__(self, bits: Mapping[str, int], guess: Callable[[str], Iterable[str]]):
        super().__init__()
        self._bits = bits
        self._guess = guess

    def __missing__(self, word: str) -> int:
        bits = 0
        for name in self._guess(word):
            bits |= self._bits[name]
        return bits


class Lexicon:
    """Word classes of one language, and the bits that stand for them.

    classes: class name to its words, lower case; a word may be in several.
    guess: a function from an unknown word to the names of its likely classes.
    common: how often a word stands in a thousand, for the common words; a
        phrase is looked for where its rarest word stands.
    """

    def __init__(
        self,
        classes: Mapping[str, Iterable[str]],
        guess: Callable[[str], Iterable[str]] = lambda word: (),
        common: Mapping[str, float] | None = None,
    ):
        self.classes = {name: frozenset(words) for name, words in classes.items()}
        self.bits = {name: 1 << number for number, name in enumerate(self.classes)}
        self.common = common or {}
        self.known = _Known(self.bits, guess)
        self.parts: dict[str, Part] = {}
        self.anchors: dict[str, tuple[frozenset[str], float]] = {}
        for name, words in self.classes.items():
            bit = self.bits[name]
            for word in words:
                self.known[word] = self.known.get(word, 0) | bit

    def of(self, word: str) -> int:
        """The class bits of a word."""
        return self.known[word]

    def mask(self, *names: str) -> int:
        """The bits of several classes together."""
        mask = 0
        for name in names:
            mask |= self.bits[name]
        return mask

    def how_common(self, words: Iterable[str]) -> float:
        """How often one of the words stands in a thousand."""
        common = self.common.get
        return sum([common(word, _RARE) for word in words])


class Part(NamedTuple):
    """One part of a phrase.

    most: how often it may stand; for ONE it is 1 and the part must be there.
    anything: whether any word fits.
    endings: endings of words that fit.
    """

    sort: int
    words: frozenset[str]
    mask: int
    most: int
    anything: bool
    endings: tuple[str, ...] = ()


ANY = 1 << 200
"""A bit that every word has: what may stand beside the anchor is open."""


_MOST_PAIRS = 20_000
"""Pairs of words kept in memory for each kind; a text of a megabyte has fewer."""


class Phrase(NamedTuple):
    """A phrase as it is tried at its anchor.

    right_mask, right_words, left_mask, left_words: what may stand beside the
        anchor; almost every attempt ends there.
    after, before: the parts on each side, nearest first.
    note: the group the phrase is of.
    """

    right_mask: int
    right_words: frozenset[str]
    left_mask: int
    left_words: frozenset[str]
    after: tuple[Part, ...]
    before: tuple[Part, ...]
    note: str


class Phrases:
    """Phrases of one kind, found by their rarest word.

    stands_for: names in braces, each with the phrases it stands for, one a line.
    groups: the phrases, one a line, as the module explains.  The note of a
        match is the name of its group, so that a kind can treat groups apart.
    """

    def __init__(self, lexicon: Lexicon, stands_for: Mapping[str, str] | None = None, /, **groups: str):
        self._lexicon = lexicon
        self._stands_for = stands_for or {}
        self._groups = groups
        # Which phrases are left once the word to the right of the anchor is
        # known: most pairs of words come again and again.
        self._pairs: dict[tuple[str, str, int], list[Phrase]] = {}

    @cached_property
    def _by_word(self) -> dict[str, list["_Line"]]:
        """The phrases by the words of their anchors.

        Read when the first sentence is searched, and each taken apart when its
        anchor is first met: a short text meets few of them or none, and is not
        to wait for the rest.
        """
        lines: dict[str, list[_Line]] = {}
        for note, group in self._groups.items():
            for line in _lines(group):
                for spelt in _without_braces(line, self._stands_for):
                    for ending in _endings(spelt):
                        words, read = self._read(ending.split(), note)
                        for word in words:
                            lines.setdefault(word, []).append(read)
        return lines

    def _read(self, pieces: list[str], note: str) -> tuple[frozenset[str], "_Line"]:
        """The words of a phrase's anchor, and the phrase."""
        known = self._lexicon.anchors
        best, rarest = -1, 1e9
        words: frozenset[str] = frozenset()
        for place, piece in enumerate(pieces):
            anchor = known.get(piece)
            if anchor is None:
                anchor = known[piece] = _anchor(self._lexicon, piece)
            if anchor[0] and anchor[1] < rarest:
                best, (words, rarest) = place, anchor
                if rarest <= _RARE:
                    break
        if best < 0:
            raise ValueError(f"the phrase {' '.join(pieces)!r} has no word to be found by")
        return words, _Line(self._lexicon, pieces, best, note)

    def find(self, sentence: Sentence) -> Iterator[tuple[int, int, str]]:
        """(first word, word after the last, note) of every match, by place."""
        words, classes = sentence.words, sentence.classes
        by_word, pairs = self._by_word, self._pairs
        final = len(words) - 1
        for place in [place for place, word in enumerate(words) if word in by_word]:
            right, right_bits = (words[place + 1], classes[place + 1] | ANY) if place < final else (".", -1)
            likely = pairs.get((words[place], right, right_bits))
            if likely is None:
                likely = self._pair(words[place], right, right_bits)
            if not likely:
                continue
            left, left_bits = (words[place - 1], classes[place - 1] | ANY) if place else (".", -1)
            for _, _, left_mask, left_words, after, before, note in likely:
                if not (left_mask & left_bits or left in left_words):
                    continue
                spans: dict[int, int] = {}
                end = _forward(after, 0, sentence, place + 1, spans)
                if end is None:
                    continue
                start = _backward(before, 0, sentence, place, spans)
                if start is None:
                    continue
                first = spans.get(OPEN, start)
                last = spans.get(CLOSE, end)
                if last > first:
                    yield first, last, note

    def _pair(self, word: str, right: str, right_bits: int) -> list[Phrase]:
        """The phrases of an anchor that the word to its right allows."""
        if len(self._pairs) >= _MOST_PAIRS:
            self._pairs.clear()
        phrases = [line.phrase for line in self._by_word[word]]
        likely = [one for one in phrases if one.right_mask & right_bits or right in one.right_words]
        self._pairs[word, right, right_bits] = likely
        return likely


class _Line:
    """A phrase as it is written, taken apart when it is first asked for.

    best: the place of its anchor among the pieces.
    """

    def __init__(self, lexicon: Lexicon, pieces: list[str], best: int, note: str):
        self._lexicon = lexicon
        self._pieces = pieces
        self._best = best
        self._note = note

    @cached_property
    def phrase(self) -> Phrase:
        parts = [_part_of(self._lexicon, piece) for piece in self._pieces]
        before, after = tuple(reversed(parts[: self._best])), tuple(parts[self._best + 1 :])
        return Phrase(*_beside(after), *_beside(before), after, before, self._note)


def _beside(parts: tuple[Part, ...]) -> tuple[int, frozenset[str]]:
    """What may stand next to the anchor on the side that `parts` reads: class bits, and words."""
    words: frozenset[str] = frozenset()
    mask = 0
    for part in parts:
        if part.sort in (ONE, MANY):
            if part.anything or part.endings:
                break
            words |= part.words
            mask |= part.mask
            if part.sort == ONE:
                return mask, words
        elif part.sort == CLAUSE_END:
            return mask, words | PAUSES
    return ANY, frozenset()


def _lines(text: str) -> list[str]:
    return [line.strip() for line in text.splitlines() if line.strip()]


def _endings(line: str) -> Iterator[str]:
    """The line itself, or two of it where its last part is a word or the end of a clause: "with|$"."""
    start, _, last = line.rpartition(" ")
    choices = last.split("|")
    if "$" not in choices or len(choices) == 1:
        yield line
        return
    others = [choice for choice in choices if choice != "$" and choice not in PAUSES]
    yield f"{start} $"
    if others:
        yield f"{start} {'|'.join(others)}"


def _without_braces(line: str, stands_for: Mapping[str, str]) -> Iterator[str]:
    opening = line.find("{")
    if opening < 0:
        yield line
        return
    closing = line.index("}", opening)
    for choice in _lines(stands_for[line[opening + 1 : closing]]):
        yield from _without_braces(f"{line[:opening]}{choice}{line[closing + 1 :]}", stands_for)


_SIGNS = {"^": CLAUSE_START, "$": CLAUSE_END, "[": OPEN, "]": CLOSE}


_LOOKS = (("<!", NOT_PREVIOUS), ("<", PREVIOUS), ("!", NOT_NEXT), ("&", NEXT))


def _anchor(lexicon: Lexicon, piece: str) -> tuple[frozenset[str], float]:
    """All words that a piece may be, and how often one of them stands in a
    thousand; no words where the piece may be left out, reads none, or a list
    cannot hold them."""
    if piece.replace("|", "").isalpha():  # as nearly all are: no part is made before it is read
        words = frozenset(piece.split("|"))
        return words, lexicon.how_common(words)
    part = _part_of(lexicon, piece)
    if part.sort != ONE or part.anything or part.endings or part.mask & NAME:
        return frozenset(), 0.0
    words = part.words.union(*(lexicon.classes[name] for name, bit in lexicon.bits.items() if part.mask & bit))
    return words, lexicon.how_common(words)


def _part_of(lexicon: Lexicon, piece: str) -> Part:
    """A piece taken apart, once for all the phrases that have it."""
    part = lexicon.parts.get(piece)
    if part is None:
        part = lexicon.parts[piece] = _part(lexicon, piece)
    return part


def _part(lexicon: Lexicon, piece: str) -> Part:
    if piece in _SIGNS:
        return Part(_SIGNS[piece], frozenset(), 0, 0, False)
    if piece.replace("|", "").isalpha():
        return Part(ONE, frozenset(piece.split("|")), 0, 1, False)
    sort, most = ONE, 1
    for sign, look in _LOOKS:
        if piece.startswith(sign) and len(piece) > len(sign):
            sort, piece = look, piece[len(sign) :]
            break
    if len(piece) > 1 and piece.endswith("?"):
        sort, piece = MANY, piece[:-1]
    elif len(piece) > 2 and piece[-2] == "*" and piece[-1].isdigit():
        sort, most, piece = MANY, int(piece[-1]), piece[:-2]
    words: set[str] = set()
    mask, anything = 0, False
    endings: tuple[str, ...] = ()
    for choice in piece.split("|"):
        if choice == "_":
            anything = True
        elif choice.startswith("%") and len(choice) > 1:
            endings += (choice[1:],)
        elif choice.startswith("@"):
            mask |= lexicon.mask(choice[1:])
        else:
            words.add(choice)
    return Part(sort, frozenset(words), mask, most, anything, endings)


def _fits(part: Part, sentence: Sentence, place: int) -> bool:
    if part.anything:
        return sentence.words[place] not in PAUSES
    if part.mask & sentence.classes[place] or sentence.words[place] in part.words:
        return True
    return bool(part.endings) and sentence.words[place].endswith(part.endings)


def _look(part: Part, sentence: Sentence, place: int, spans: dict[int, int]) -> bool:
    """Whether a part that reads no word holds at this place."""
    sort = part.sort
    if sort >= OPEN:
        spans[sort] = place
        return True
    count = len(sentence.words)
    if sort == NEXT:
        return place < count and _fits(part, sentence, place)
    if sort == NOT_NEXT:
        return place >= count or not _fits(part, sentence, place)
    if sort == PREVIOUS:
        return place > 0 and _fits(part, sentence, place - 1)
    if sort == NOT_PREVIOUS:
        return place == 0 or not _fits(part, sentence, place - 1)
    if sort == CLAUSE_START:
        return clause_starts(sentence, place)
    return place >= count or sentence.words[place] in PAUSES


def clause_starts(sentence: Sentence, place: int) -> bool:
    """Whether a clause may start with the word at `place`."""
    return place == 0 or sentence.words[place - 1] in PAUSES or bool(sentence.classes[place - 1] & LEADER)


def _forward(parts: tuple[Part, ...], number: int, sentence: Sentence, place: int, spans: dict[int, int]) -> int | None:
    count = len(sentence.words)
    while number < len(parts):
        part = parts[number]
        if part.sort == ONE:
            if place >= count or not _fits(part, sentence, place):
                return None
            place += 1
        elif part.sort == MANY:
            reach = place
            while reach < count and reach - place < part.most and _fits(part, sentence, reach):
                reach += 1
            while reach >= place:
                end = _forward(parts, number + 1, sentence, reach, spans)
                if end is not None:
                    return end
                reach -= 1
            return None
        elif not _look(part, sentence, place, spans):
            return None
        number += 1
    return place


def _backward(parts: tuple[Part, ...], number: int, sentence: Sentence, place: int, spans: dict[int, int]) -> int | None:
    while number < len(parts):
        part = parts[number]
        if part.sort == ONE:
            if place <= 0 or not _fits(part, sentence, place - 1):
                return None
            place -= 1
        elif part.sort == MANY:
            reach = place
            while reach > 0 and place - reach < part.most and _fits(part, sentence, reach - 1):
                reach -= 1
            while reach <= place:
                start = _backward(parts, number + 1, sentence, reach, spans)
                if start is not None:
                    return start
                reach += 1
            return None
        elif not _look(part, sentence, place, spans):
            return None
        number += 1
    return place
