"""A text as the checks of whole texts read it: facts, parts, sentences, words."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache, cached_property
from pathlib import Path
from typing import Any, NamedTuple

from handouts.errors import Fault, StudioFaults
from handouts.wording.prose import Cut, cut, front_matter_end
from handouts.wording.whole_text.hours import Hours, find_hours, places_of_hours
from handouts.wording.whole_text.plain_data import plain_data
from handouts.wording.whole_text.reading import Reading, measure

_PART_NAMES = Path(__file__).resolve().parents[2] / "languages" / "parts.yaml"
_HEADING = re.compile(r"\n[ ]{0,3}(#{1,6})[ \t]+(\S[^\n]*)")
_IS_HEADING = re.compile(r"#{1,6}[ \t]+\S")
_LETTER = re.compile(r"[^\W_]")
_LEADING = re.compile(r"(?:(?:[-*+>]|\d{1,9}[.)])(?:\s+|$))*")
_MARKERS = frozenset("-*+>0123456789")
_FIELD = re.compile(r"\s*\n[ ]{0,3}[^\s:#-][^\n:]*:(?:[ \t]|\n)")


class Facts(NamedTuple):
    """What the front matter says, as far as a check asks for it; "" where it says nothing.

    exercise: the front matter, or the file's name, is that of an exercise text.
    """

    exercise: bool = False
    language: str = ""
    sides: str = ""
    written_for: str = ""
    clock: str = ""
    hands: str = ""
    equipment: tuple[str, ...] = ()


NO_FACTS = Facts()


class Part(NamedTuple):
    """One heading of an exercise text and the prose below it.

    name: of the part in the program, such as "Start position"; "" for a
        heading of another name.
    start, heading_end, end: characters of the text.
    """

    name: str
    start: int
    heading_end: int
    end: int


class Piece(NamedTuple):
    """One sentence: where it stands and its words."""

    start: int
    end: int
    text: str


@dataclass(frozen=True)
class Document:
    """A text with its facts.

    text: as the author wrote it, lines ended by "\\n".  language: "en" or "fr".
    prose: the text with everything that is not prose blanked out, the same
        offsets.
    """

    text: str
    language: str = "en"
    facts: Facts = NO_FACTS

    @cached_property
    def cut(self) -> Cut:
        return cut(self.text)

    @property
    def prose(self) -> str:
        return self.cut.prose

    @cached_property
    def parts(self) -> tuple[Part, ...]:
        """The headings of any name, in order."""
        # A line end before the first line too, which is quicker to search for than the start of a line.
        found = list(_HEADING.finditer("\n" + self.prose)) if "#" in self.prose else []
        if not found:
            return ()
        names = part_names(self.language)
        ends = [*(heading.start() for heading in found[1:]), len(self.prose)]
        return tuple(
            Part(names.get(same_words(heading[2]), ""), heading.start(1) - 1, heading.end() - 1, end)
            for heading, end in zip(found, ends, strict=True)
        )

    @cached_property
    def is_exercise(self) -> bool:
        """Whether this is an exercise text, by its facts or its headings."""
        return self.facts.exercise or len({part.name for part in self.parts if part.name}) > 1

    @cached_property
    def pieces(self) -> tuple[Piece, ...]:
        """The sentences with words, headings left out."""
        return tuple(_pieces(self.cut))

    @cached_property
    def piece_starts(self) -> list[int]:
        return [piece.start for piece in self.pieces]

    def piece_at(self, place: int) -> Piece | None:
        """The sentence with the character at `place`; None in a heading or between sentences."""
        number = bisect_right(self.piece_starts, place) - 1
        piece = self.pieces[number] if number >= 0 else None
        return piece if piece and place < piece.end else None

    @cached_property
    def hours(self) -> tuple[tuple[Piece, tuple[Hours, ...]], ...]:
        """The sentences that name hours of the clock as directions, each with its hours."""
        found = []
        before: Piece | None = None
        for place in places_of_hours(self.prose, self.language):
            piece = self.piece_at(place)
            if piece is None or piece is before:
                continue
            before = piece
            hours = find_hours(piece.text, self.language)
            if hours:
                found.append((piece, hours))
        return tuple(found)

    @cached_property
    def reading(self) -> Reading:
        return measure((piece.text for piece in self.pieces), self.language)

    def part(self, name: str) -> Part | None:
        return next((part for part in self.parts if part.name == name), None)

    def pieces_of(self, name: str) -> tuple[Piece, ...]:
        """The sentences of one part; none when the part is missing."""
        part = self.part(name)
        if part is None:
            return ()
        return tuple(piece for piece in self.pieces if part.heading_end <= piece.start < part.end)


def same_words(heading: str) -> str:
    """A heading for comparing: case, spaces and closing signs make no difference."""
    return " ".join(heading.casefold().split()).strip(" #.:")


def _pieces(cut: Cut) -> Iterator[Piece]:
    for start, end in cut.spans:
        text = cut.prose[start:end]
        words = text.strip()
        if not words:
            continue
        first = words[0]
        if first == "#" and _IS_HEADING.match(words):
            continue
        if first in _MARKERS:
            words = words[_LEADING.match(words).end() :]  # type: ignore[union-attr]
        if _LETTER.search(words):
            end = start + len(text.rstrip())
            yield Piece(end - len(words), end, words)


def part_names(language: str) -> dict[str, str]:
    """The words of each part's heading in a language, and the part's name.

    The keys are as `same_words` gives them.
    """
    return {same_words(words): name for name, words in part_headings(language).items()}


@cache
def part_headings(language: str) -> dict[str, str]:
    """Each part's name and the words of its heading, in the order of an exercise.

    From the table that the reader of exercise texts uses too.
    """
    table = _data(_PART_NAMES.read_text("utf-8"), _PART_NAMES.name, 1)
    return dict(table.get(language, table["en"]))


def read_facts(text: str, shown: str) -> Facts:
    """The facts of a text's front matter; a text without one has none.

    shown: the file's path for messages.
    Raises StudioFaults when there is front matter that cannot be read.
    """
    end = front_matter_end(text)
    if not end:
        if text.startswith("---") and _FIELD.match(text, 3):
            wrong = "the data that begin with '---' have no end"
            raise StudioFaults((Fault(shown, 1, wrong, "write '---' on a line of its own below them"),))
        return NO_FACTS
    inside = text[text.index("\n") + 1 : text.rindex("\n", 0, end) + 1]
    if not inside.strip():
        return NO_FACTS
    return _facts(_data(inside, shown, 2))


def _data(text: str, shown: str, first_line: int) -> dict[str, Any]:
    data = plain_data(text)
    if data is None:
        from handouts.reading.yaml_text import read_yaml

        data = read_yaml(text, shown, first_line).data
    return data


def _facts(data: dict[str, Any]) -> Facts:
    def word(key: str) -> str:
        value = data.get(key, "")
        return value.strip() if isinstance(value, str) else ""

    equipment = data.get("equipment", ())
    return Facts(
        exercise="title" in data and ("sides" in data or "equipment" in data or "options" in data),
        language=word("language").lower(),
        sides=word("sides"),
        written_for=word("written for"),
        clock=word("clock"),
        hands=word("hands"),
        equipment=tuple(item for item in equipment if isinstance(item, str)) if isinstance(equipment, list) else (),
    )
