"""The words of a log in one language, ready to be compared."""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import yaml

from handouts.models import Side

_FILE = Path(__file__).with_name("words.yaml")
_APART = str.maketrans({"’": "'", "‘": "'", "œ": "oe", "æ": "ae", "ß": "ss"})


def folded(word: str) -> str:
    """A word without accents and capitals, for comparing."""
    plain = unicodedata.normalize("NFKD", word.lower().translate(_APART))
    return "".join(sign for sign in plain if not unicodedata.combining(sign))


def singular(word: str) -> str:
    """Without a plural s: "kilos" and "kilo" are the same word here."""
    return word[:-1] if len(word) > 3 and word.endswith("s") and not word.endswith("ss") else word


@dataclass(frozen=True)
class Words:
    """One language's block of words.yaml.

    table: key to a list or a mapping, as in the file.
    """

    language: str
    table: dict[str, Any]

    def has(self, key: str, word: str) -> bool:
        """Whether a folded word is one of a list's words."""
        return word in self._set(key) or singular(word) in self._set(key)

    def phrases(self, key: str) -> tuple[tuple[str, ...], ...]:
        """A list's entries as runs of words, the longest first."""
        return _phrases(self.language, key)

    def _set(self, key: str) -> frozenset[str]:
        return _words(self.language, key)

    def side(self, word: str) -> Side | None:
        if self.has("left", word):
            return "left"
        return "right" if self.has("right", word) else None

    def unit(self, word: str) -> str | None:
        """Which of kg, lb, hour, minute, second, metre a word stands for."""
        return next((unit for unit in ("kg", "lb", "hour", "minute", "second", "metre") if self.has(unit, word)), None)

    def is_body(self, word: str) -> bool:
        """Whether a word names a joint or another part that can hurt."""
        return any(singular(word) in map(singular, names) for names in self.table["body"].values())

    def index(self, key: str, word: str) -> int | None:
        """The place of a word in a list, from 0."""
        entries = [str(entry) for entry in self.table[key]]
        return next((at for at, entry in enumerate(entries) if entry in (word, singular(word))), None)

    def sounds_like(self, number: int) -> tuple[int, ...]:
        """Numbers that are easily heard for this one."""
        pairs = [[int(one) for one in pair] for pair in self.table["sound_alike"]]
        return tuple(other for pair in pairs if number in pair for other in pair if other != number)

    def number(self, word: str) -> int | None:
        """What a number word stands for by itself."""
        found = self.table["numbers"].get(word)
        return None if found is None else int(found)


@cache
def _table() -> dict[str, dict[str, Any]]:
    # The plain loader: "no" and "on" are words here, not truth values.
    table: dict[str, dict[str, Any]] = yaml.load(_FILE.read_text("utf-8"), Loader=yaml.BaseLoader)
    return table


@cache
def _words(language: str, key: str) -> frozenset[str]:
    return frozenset(str(entry) for entry in _table()[language][key])


@cache
def _phrases(language: str, key: str) -> tuple[tuple[str, ...], ...]:
    runs = {tuple(str(entry).replace("'", " ").split()) for entry in _table()[language][key]}
    return tuple(sorted(runs, key=lambda run: (-len(run), run)))


@cache
def words(language: str) -> Words:
    """The words of a language; English where there are none for it."""
    known = language if language in _table() else "en"
    return Words(known, _table()[known])
