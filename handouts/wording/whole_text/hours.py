"""Hours on a clock as directions, in the words of a text.

Source of the clock: 12 ahead, 3 right, 6 behind, 9 left is the convention of
orientation and mobility teaching; one hour is 360 / 12 = 30 degrees.
"""

from __future__ import annotations

import re
from functools import cache, lru_cache
from typing import NamedTuple

HOUR = 30
"""Degrees."""

_EN_NAMES = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"]
_FR_NAMES = ["une", "deux", "trois", "quatre", "cinq", "six", "sept", "huit", "neuf", "dix", "onze", "douze"]


class Hours(NamedTuple):
    """One naming of an hour, or of several ("10 and 2 o'clock").

    start, end: characters of the sentence.  values: each hour, 1.5 for half
        past one.
    """

    start: int
    end: int
    values: tuple[float, ...]


class _Language(NamedTuple):
    pattern: re.Pattern[str]
    number: re.Pattern[str]
    names: dict[str, int]
    half: re.Pattern[str]


@cache
def _language(language: str) -> _Language:
    if language == "fr":
        number = rf"(?:\d{{1,2}}|{'|'.join(_FR_NAMES)})"
        link = r"(?:\s*,\s*|\s+(?:et|ou|à)\s+)(?:(?:à|vers)\s+)?"
        pattern = (
            rf"(?:(?<=\bà )|(?<=vers )|(?<=entre )|(?<=position )|(?<=direction )|(?<=et )|(?<=ou )|(?<=[.,;:(] )|^|(?<=- ))"
            rf"{number}(?:{link}{number})*\s*(?:heures?\b|h\b)(?:\s+et\s+demie)?"
            r"(?!\s+(?:de\s+(?:repos|pause|sommeil|marche|plus|moins|récupération|travail|suite|jeûne)|par\s|plus\s+tard|"
            r"d['’]affilée|du\s+(?:matin|soir)|de\s+l['’]après|avant|après|au\s+(?:moins|plus)))"
        )
        names, half = _FR_NAMES, r"et\s+demie"
    else:
        number = rf"(?:\d{{1,2}}(?::30)?|{'|'.join(_EN_NAMES)})"
        link = r"(?:\s*,\s*(?:and\s+|or\s+)?|\s*[-–]\s*|\s+(?:and|or|to)\s+)(?:(?:at|towards?)\s+)?"
        pairs = "|".join(f"{hour} and {12 - hour}" for hour in (1, 2, 3, 4, 5, 7, 8, 9, 10, 11))
        pattern = (
            rf"\b(?:half[\s-]past\s+)?{number}(?:{link}{number})*[\s-]*o['’]\s?clock\b"
            r"(?!\s+(?:in\s+the\s+(?:morning|afternoon|evening)|sharp\b|[ap]\.?m\b|at\s+night))"
            # "10 and 2" alone is a clock too when the two lie opposite each other.
            rf"|(?:(?<=\bat )|(?<=(?<!count) to )|(?<=\btoward )|(?<=\btowards ))(?:{pairs})(?=[.,;:)]|$|\s+on\s+(?:the|your)\s+clock)"
        )
        names, half = _EN_NAMES, r"^half|:30"
    return _Language(
        re.compile(pattern, re.IGNORECASE),
        # No word need end behind it: "3h" and "10o'clock" are hours too.
        re.compile(rf"\b{number}(?!\d)", re.IGNORECASE),
        {name: at for at, name in enumerate(names, 1)},
        re.compile(half, re.IGNORECASE),
    )


@lru_cache(maxsize=1000)
def find_hours(sentence: str, language: str) -> tuple[Hours, ...]:
    """The hours that a sentence names as directions, in order."""
    rules = _language(language)
    found = []
    for match in rules.pattern.finditer(sentence):
        half = 0.5 if rules.half.search(match[0]) else 0.0
        words = [word[0].lower() for word in rules.number.finditer(match[0])]
        hours = tuple(float(rules.names.get(word) or word.split(":")[0]) for word in words)
        found.append(Hours(match.start(), match.end(), (*hours[:-1], hours[-1] + half)))
    return tuple(found)


def places_of_hours(prose: str, language: str) -> list[int]:
    """Where it is worth to look for hours in a text, in order."""
    hints = _HINTS[language]
    return sorted(found.start() for hint in hints for found in hint.finditer(prose))


# Ends of hours, each with letters or spaces first, which are quick to search for.
_HINTS = {
    "en": (re.compile(r"[cC][lL][oO][cC][kK]"), re.compile(r" and \d")),
    "fr": (re.compile(r"[hH][eE][uU][rR][eE]"), re.compile(r"\d ?h\b", re.IGNORECASE)),
}


def from_twelve(hour: float) -> float:
    """Hours between an hour and 12, the shorter way: 10 gives 2."""
    return min(hour % 12, -hour % 12)


def spoken_hour(hour: float, language: str) -> str:
    """An hour as a text names it."""
    whole = int(hour) or 12
    if language == "fr":
        return f"{whole} heure{'s' if whole > 1 else ''}" + (" et demie" if hour % 1 else "")
    return f"{'half past ' if hour % 1 else ''}{whole} o'clock"


def arithmetic(hour: float, language: str) -> str:
    """Why an hour is as many degrees from 12 as it is."""
    hours = from_twelve(hour)
    unit = "hour" if hours == 1 else "hours"
    return (
        f"{spoken_hour(hour, language)} is {hours:g} {unit} from 12, and {hours:g} x {HOUR} = {hours * HOUR:g} degrees"
    )
