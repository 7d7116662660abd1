"""Amounts and dates as a trainer writes them: "12.5 kg", "90 s", "8-12 reps".

Every amount is read strictly: a number, a space or none, a unit, and nothing
else.  A reader raises ValueError with "what is wrong; what to write instead";
the second half never holds a semicolon, so the last one divides the two.

The pound is 0.45359237 kg exactly (International Yard and Pound Agreement,
1959; NIST Special Publication 811, appendix B.8).
"""

from __future__ import annotations

import datetime
import re
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Literal, TypeAlias

from handouts.errors import quoted as quoted

KILOGRAMS_PER_POUND = Decimal("0.45359237")

MassUnit: TypeAlias = Literal["kg", "lb"]

_NUMBER = r"(?:0|[1-9][0-9]{0,5})(?:\.[0-9]{1,3})?"
_WHOLE = r"(?:0|[1-9][0-9]{0,5})"


@dataclass(frozen=True)
class Mass:
    """A weight as stamped on the iron: amount and unit are never converted.

    exact: kilograms, where the amount is only the name of a sum of pieces that
        are stamped in different units; None for everything else.  Two weights
        of one name are the same weight.
    """

    amount: Decimal
    unit: MassUnit
    exact: Decimal | None = field(default=None, compare=False)

    @property
    def kilograms(self) -> Decimal:
        """The exact mass in kilograms, for sums and comparisons alone."""
        if self.exact is not None:
            return self.exact
        return self.amount * KILOGRAMS_PER_POUND if self.unit == "lb" else self.amount

    def __str__(self) -> str:
        return f"{short_number(self.amount)} {self.unit}"


def _plain(text: str) -> str:
    """Without the outer spaces, and with the no-break spaces that French and
    some keyboards put before a unit made plain ones."""
    return text.replace("\u00a0", " ").replace("\u202f", " ").strip(" \n")


def short_number(number: Decimal) -> str:
    """A decimal without needless zeros: 12.50 gives "12.5", 20.0 gives "20"."""
    text = format(number, "f")
    return text.rstrip("0").rstrip(".") if "." in text else text


def read_mass(text: str) -> Mass:
    """Read "12.5 kg" or "25 lb".  Raises ValueError otherwise."""
    found = re.fullmatch(rf"({_NUMBER}) ?(kg|lb)", _plain(text))
    if not found or Decimal(found[1]) == 0:
        raise ValueError(f"{quoted(text)} is not a weight; write a number and a unit, such as '12.5 kg' or '25 lb'")
    return Mass(Decimal(found[1]), "lb" if found[2] == "lb" else "kg")


def read_seconds(text: str) -> int:
    """Read "90 s", "2 min", "1 min 30 s", "1 h 5 min" as whole seconds.

    A clock form such as "1:30" is refused, since it can mean two things.
    """
    found = re.fullmatch(rf"(?:({_WHOLE}) ?h)? ?(?:({_WHOLE}) ?min)? ?(?:({_WHOLE}) ?s)?", _plain(text))
    if not found or not any(found.groups()):
        raise ValueError(f"{quoted(text)} is not a time; write '90 s', '2 min' or '1 min 30 s'")
    hours, minutes, seconds = (int(group or 0) for group in found.groups())
    if (found[2] and seconds > 59) or (found[1] and minutes > 59):
        raise ValueError(f"{quoted(text)} counts past 59 in its smaller unit; write '2 min 30 s' for 150 seconds")
    return hours * 3600 + minutes * 60 + seconds


def read_date(text: str) -> datetime.date:
    """Read "2029-01-08" (ISO 8601, the extended form of a calendar date)."""
    words = _plain(text)
    try:
        if not re.fullmatch("[0-9]{4}-[0-9]{2}-[0-9]{2}", words):
            raise ValueError
        return datetime.date.fromisoformat(words)
    except ValueError:
        raise ValueError(f"{quoted(text)} is not a date; write year-month-day, such as '2029-01-08'") from None


def read_centimetres(text: str) -> Decimal:
    """Read "15 cm", "1.2 m" or "6 in" as centimetres (one inch is 2.54 cm)."""
    found = re.fullmatch(rf"({_NUMBER}) ?(cm|m|in)", _plain(text))
    if not found:
        raise ValueError(f"{quoted(text)} is not a length; write '15 cm', '1.2 m' or '6 in'")
    factor = {"cm": Decimal(1), "m": Decimal(100), "in": Decimal("2.54")}[found[2]]
    return Decimal(found[1]) * factor


def read_degrees(text: str) -> int:
    """Read "90 degrees" (of bend, counted from the straight limb, which is 0)."""
    found = re.fullmatch(rf"({_WHOLE}) ?(?:degrees|°)", _plain(text))
    if not found or int(found[1]) > 180:
        raise ValueError(f"{quoted(text)} is not a bend; write degrees from straight, such as '90 degrees'")
    return int(found[1])


def read_whole_number(text: str) -> int:
    """Read "3": digits alone, no leading zero, no underscore, no exponent."""
    if not re.fullmatch(_WHOLE, _plain(text)):
        raise ValueError(f"{quoted(text)} is not a whole number; write digits alone, such as '3'")
    return int(_plain(text))


@dataclass(frozen=True)
class Dose:
    """How much of an exercise.

    kind: "reps", "time" (seconds) or "distance" (metres).
    low, high: equal unless a range was given.
    counted: "each side", "in all", or "" where the exercise's own side
        pattern decides (both together: one count for both).
    """

    kind: Literal["reps", "time", "distance"]
    low: int
    high: int
    counted: Literal["each side", "in all", ""] = ""


def read_dose(text: str) -> Dose:
    """Read "10 reps", "8-12 reps each side", "12 reps in all", "30 s", "20 m"."""
    words = _plain(text).replace("–", "-").replace(" to ", "-")
    found = re.fullmatch(
        rf"({_WHOLE})(?:-({_WHOLE}))? ?(reps|s|min|m)( each side| in all)?", words
    )
    if not found or int(found[1]) == 0:
        raise ValueError(
            f"{quoted(text)} is not a dose; write '10 reps', '8-12 reps each side', '12 reps in all', '30 s' or '20 m'"
        )
    scale = 60 if found[3] == "min" else 1
    low, high = int(found[1]) * scale, int(found[2] or found[1]) * scale
    if high < low:
        raise ValueError(f"{quoted(text)} runs downwards; write the smaller number first")
    kind: Literal["reps", "time", "distance"] = (
        "reps" if found[3] == "reps" else "distance" if found[3] == "m" else "time"
    )
    counted: Literal["each side", "in all", ""] = (
        "each side" if found[4] == " each side" else "in all" if found[4] else ""
    )
    return Dose(kind, low, high, counted)


@dataclass(frozen=True)
class Pieces:
    """How many equal weights a client owns: "2 x 5 lb"."""

    count: int
    mass: Mass


def read_pieces(text: str) -> Pieces:
    """Read "2 x 5 lb" (or ×): how many, then the weight as stamped."""
    found = re.fullmatch(rf"({_WHOLE}) ?[x×] ?(.+)", _plain(text))
    if not found or int(found[1]) == 0:
        raise ValueError(f"{quoted(text)} does not say how many of which weight; write '2 x 5 lb'")
    return Pieces(int(found[1]), read_mass(found[2]))


@dataclass(frozen=True)
class Tension:
    """The pull of a band as its maker gives it, from little to full stretch."""

    low: Decimal
    high: Decimal
    unit: MassUnit

    @property
    def most(self) -> Mass:
        """The pull at full stretch."""
        return Mass(self.high, self.unit)

    def __str__(self) -> str:
        low = "" if self.low == self.high else f"{short_number(self.low)}-"
        return f"{low}{short_number(self.high)} {self.unit}"


def read_tension(text: str) -> Tension:
    """Read "5-9 kg" or "15 lb" as the pull of a band.  Raises ValueError otherwise."""
    found = re.fullmatch(rf"({_NUMBER})(?: ?[-–] ?({_NUMBER}))? ?(kg|lb)", _plain(text))
    if not found or Decimal(found[2] or found[1]) == 0:
        raise ValueError(f"{quoted(text)} is not the tension of a band; write '5-9 kg' or '15 lb', as its maker does")
    low, high = Decimal(found[1]), Decimal(found[2] or found[1])
    if high < low:
        raise ValueError(f"{quoted(text)} runs downwards; write the smaller number first")
    return Tension(low, high, "lb" if found[3] == "lb" else "kg")


@dataclass(frozen=True)
class AskedLoad:
    """A load that a plan or a trainer asks for.

    kind: "mass" (mass holds it), "percent" (of the estimated maximum),
        "effort" (whatever leaves the asked effort), "bodyweight", or "band":
        by name (name holds it), by tension (mass holds the most that it may
        pull), or by order (place holds "lightest" or "strongest").
    each: True where the mass stands for each hand of a pair.
    """

    kind: Literal["mass", "percent", "effort", "bodyweight", "band"]
    mass: Mass | None = None
    percent: int = 0
    name: str = ""
    each: bool = False
    place: Literal["lightest", "strongest", ""] = ""

    def __str__(self) -> str:
        """As it is written in a file."""
        if self.kind == "band":
            return f"{self.place} band" if self.place else f"band up to {self.mass}" if self.mass else f"band {self.name}"
        words = {"percent": f"{self.percent} % of maximum", "effort": "by effort"}
        return words.get(self.kind, self.kind) if self.mass is None else f"{self.mass}{' each' if self.each else ''}"


def read_load(text: str) -> AskedLoad:
    """Read "6 kg", "6 kg each", "70 % of maximum", "by effort", "bodyweight",
    "band long loop", "band up to 6 kg", "lightest band" or "strongest band"."""
    words = _plain(text)
    if words == "bodyweight":
        return AskedLoad("bodyweight")
    if words == "by effort":
        return AskedLoad("effort")
    if found := re.fullmatch(rf"({_WHOLE}) ?% of maximum", words):
        if not 30 <= int(found[1]) <= 100:
            raise ValueError(f"{quoted(text)} is outside 30 to 100 % of maximum; write a per cent in that range")
        return AskedLoad("percent", percent=int(found[1]))
    if words == "lightest band":
        return AskedLoad("band", place="lightest")
    if words == "strongest band":
        return AskedLoad("band", place="strongest")
    if found := re.fullmatch(r"band up to (.+)", words):
        return AskedLoad("band", mass=read_mass(found[1]))
    if found := re.fullmatch(r"band ([^\s;][^;]*)", words):
        return AskedLoad("band", name=found[1])
    each = words.endswith(" each")
    try:
        return AskedLoad("mass", mass=read_mass(words.removesuffix(" each")), each=each)
    except ValueError:
        raise ValueError(
            f"{quoted(text)} is not a load; write '6 kg', '6 kg each', '70 % of maximum', 'by effort', 'bodyweight' or 'band NAME'"
        ) from None


@dataclass(frozen=True)
class Effort:
    """How hard: reps left in reserve, and the same on the 0 to 10 scale.

    A rating of perceived exertion of 10 leaves 0 in reserve, 9 leaves 1, 8
    leaves 2, 7 leaves 3 (Helms and others 2016, Strength and Conditioning
    Journal; as quoted in reviews, from memory).
    """

    in_reserve: int

    @property
    def rating(self) -> int:
        return 10 - self.in_reserve


def read_effort(text: str) -> Effort:
    """Read "2 in reserve" or "RPE 8"."""
    words = _plain(text)
    if (found := re.fullmatch(rf"({_WHOLE}) in reserve", words)) and int(found[1]) <= 6:
        return Effort(int(found[1]))
    if (found := re.fullmatch(rf"RPE ({_WHOLE})", words)) and 4 <= int(found[1]) <= 10:
        return Effort(10 - int(found[1]))
    raise ValueError(f"{quoted(text)} is not an effort; write '2 in reserve' or 'RPE 8'")


@dataclass(frozen=True)
class Tempo:
    """Seconds to lower, pause, lift, pause; a lift of 0 is "X", fast but controlled."""

    lower: int
    pause_low: int
    lift: int
    pause_high: int

    @property
    def seconds(self) -> int:
        """Seconds a repetition; a fast lift is counted as one second."""
        return self.lower + self.pause_low + max(self.lift, 1) + self.pause_high


def read_tempo(text: str) -> Tempo:
    """Read "3-1-2-0" or "3-1-X-0"."""
    found = re.fullmatch(r"([0-9])-([0-9])-([0-9]|X)-([0-9])", _plain(text))
    if not found:
        raise ValueError(f"{quoted(text)} is not a tempo; write four counts: lower, pause, lift, pause, such as '3-1-2-0'")
    return Tempo(int(found[1]), int(found[2]), 0 if found[3] == "X" else int(found[3]), int(found[4]))
