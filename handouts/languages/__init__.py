"""The words that the program itself puts on a sheet, a file for each language.

A phrase is a line with `{name}` where a value stands and `**` around words
whose emphasis carries meaning.  A phrase that depends on a count is a mapping
with `one` and `other`.  Adding a language is adding a file with the same keys;
a test compares the keys.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal
from functools import cache, lru_cache
from pathlib import Path
from typing import TypeAlias

import yaml

from handouts.amounts import Mass, short_number
from handouts.handout import Inline, Line, Measure, Strong, Text

Value: TypeAlias = str | int | Inline | Line

_FOLDER = Path(__file__).parent
_PIECE = re.compile(r"\*\*(.+?)\*\*|\{(\w+)\}")


def known_languages() -> tuple[str, ...]:
    """The language tags that have a file of phrases."""
    return tuple(sorted(path.stem for path in _FOLDER.glob("??.yaml")))


@dataclass(frozen=True)
class Phrases:
    """All phrases of one language."""

    language: str
    table: dict[str, str | dict[str, str]]

    def line(self, key: str, count: int | None = None, **values: Value) -> Line:
        """The phrase `key` with its values set in.

        count: chooses between `one` and `other`, and is itself the value
            {count}.
        Raises KeyError for an unknown key or a missing value: a bug, since
        keys never come from a user.
        """
        entry = self.table[key]
        if isinstance(entry, dict):
            assert count is not None, key
            entry = entry["one" if self._is_one(count) else "other"]
        if count is not None:
            values = {"count": count, **values}
        return _fill(entry, values)

    def text(self, key: str, count: int | None = None, **values: Value) -> str:
        """The phrase as plain words, measures in their short form."""
        from handouts.handout import plain

        return plain(self.line(key, count, **values))

    def _is_one(self, count: int) -> bool:
        # Unicode CLDR plural rules: French counts 0 and 1 as one, English 1.
        return count in (0, 1) if self.language == "fr" else count == 1

    # --- measures ------------------------------------------------------------

    def number(self, number: Decimal) -> str:
        return short_number(number).replace(".", self._word("decimal_mark"))

    def mass(self, mass: Mass) -> Measure:
        """ "12.5 kg", spoken "12.5 kilograms"."""
        one = self._is_one(int(mass.amount)) and mass.amount == int(mass.amount)
        name = self._word(f"{mass.unit}_{'one' if one else 'other'}")
        number = self.number(mass.amount)
        return Measure(f"{number} {mass.unit}", f"{number} {name}")

    def count_range(self, low: int, high: int) -> Measure:
        """ "8–12", spoken "8 to 12"."""
        if low == high:
            return Measure(str(low), str(low))
        return Measure(f"{low}–{high}", f"{low} {self._word('to')} {high}")

    def seconds(self, seconds: int) -> Measure:
        """ "90 s" or "2 min" or "1 min 30 s", spoken in full words."""
        minutes, rest = divmod(seconds, 60)
        if seconds < 120 and rest:
            minutes, rest = 0, seconds
        short: list[str] = []
        long: list[str] = []
        for amount, unit in ((minutes, "min"), (rest, "s")):
            if amount or (unit == "s" and not short):
                short.append(f"{amount} {unit}")
                name = self._word(f"{unit}_{'one' if self._is_one(amount) else 'other'}")
                long.append(f"{amount} {name}")
        return Measure(" ".join(short), " ".join(long))

    def metres(self, metres: int) -> Measure:
        return Measure(f"{metres} m", f"{metres} {self._word('m_one' if self._is_one(metres) else 'm_other')}")

    def percent(self, percent: int) -> Measure:
        return Measure(self.text("percent_short", number=percent), self.text("percent_long", number=percent))

    def date(self, iso: str) -> str:
        """ "8 January 2029": no reader can take day for month."""
        year, month, day = iso.split("-")
        months = self._word("months").split()
        return self.text("date", day=str(int(day)), month=months[int(month) - 1], year=year)

    def _word(self, key: str) -> str:
        word = self.table[key]
        assert isinstance(word, str), key
        return word


def _fill(phrase: str, values: dict[str, Value]) -> Line:
    line: list[Inline] = []
    end = 0
    for found in _PIECE.finditer(phrase):
        if phrase[end : found.start()]:
            line.append(Text(phrase[end : found.start()]))
        end = found.end()
        if found[1] is not None:
            line.append(Strong(_fill(found[1], values)))
        else:
            value = values[found[2]]
            if isinstance(value, tuple):
                line.extend(value)
            elif isinstance(value, str | int):
                line.append(Text(str(value)))
            else:
                line.append(value)
    if phrase[end:]:
        line.append(Text(phrase[end:]))
    return joined(tuple(line))


def joined(line: Line) -> Line:
    """The same line with neighbouring plain words made one, empty ones gone."""
    result: list[Inline] = []
    for inline in line:
        if isinstance(inline, Text) and result and isinstance(result[-1], Text):
            result[-1] = Text(result[-1].words + inline.words)
        elif not (isinstance(inline, Text) and not inline.words):
            result.append(inline)
    return tuple(result)


@cache
def phrases(language: str) -> Phrases:
    """The phrases of a language tag such as "en" or "fr".

    Raises KeyError for a language without a file; readers check that before.
    """
    path = _FOLDER / f"{language}.yaml"
    if language not in known_languages():
        raise KeyError(language)
    return Phrases(language, yaml.safe_load(path.read_text("utf-8")))


@lru_cache(maxsize=1)
def _parts() -> dict[str, dict[str, str]]:
    table: dict[str, dict[str, str]] = yaml.safe_load((_FOLDER / "parts.yaml").read_text("utf-8"))
    return table


def part_title(name: str, language: str) -> str:
    """The heading of a part of an exercise text in a language."""
    return _parts()[language][name]
