"""What a hard set says about a person's greatest single lift.

An estimate is a spread, never one number: the published formulas disagree, and
people differ more than formulas do.  Nobody is asked to lift such a weight.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal
from types import MappingProxyType

from handouts.amounts import short_number

TRUSTED_REPS = 12
"""Above this many repetitions an estimate carries a warning (common practice;
the studies behind the formulas mostly stop at 10, LeSuer and others 1997, from
memory)."""

MOST_REPS = 20
"""Above this many repetitions an estimate is refused (common practice)."""


PERCENT_OF_MAXIMUM: Mapping[int, int] = MappingProxyType(
    {1: 100, 2: 95, 3: 93, 4: 90, 5: 87, 6: 85, 7: 83, 8: 80, 9: 77, 10: 75, 12: 70}
)
"""Repetitions to failure, and the per cent of the maximum that allows them.

Source: Training Load Chart of the National Strength and Conditioning
Association.  It has no 11 and ends at 12; the association's textbook gives 67
for 12, so the last places are the least certain.  People differ widely, and
more repetitions go with the legs than with the arms (Nuzzo and others 2024,
Sports Medicine).
"""


def percent_for(reps: int) -> int:
    """The per cent of the maximum with which so many repetitions can be done.

    reps: to failure, 1 to 12; 11 is read as 12, the gentler neighbour.
    Raises ValueError outside the chart.
    """
    for listed, percent in PERCENT_OF_MAXIMUM.items():
        if 1 <= reps <= listed:
            return percent
    raise ValueError(f"the chart ends at 12 repetitions, and has no {reps}; ask for a weight or by effort")


def reps_for(percent: int) -> int | None:
    """How many repetitions the chart expects at that per cent; None below its
    lightest, where it says nothing.

    percent: 1 to 100.  A per cent between two lines is read as the heavier one.
    """
    fitting = [reps for reps, listed in PERCENT_OF_MAXIMUM.items() if listed >= percent]
    return max(fitting) if percent >= min(PERCENT_OF_MAXIMUM.values()) else None


@dataclass(frozen=True)
class Formula:
    """One published formula for the one-repetition maximum.

    factor: repetitions to failure (2 or more) to "maximum divided by load".
    trusted: the repetitions for which it is used without a warning, both
        counted.  At 1 the lift itself is the maximum, and a formula that says
        otherwise begins at 2.
    ends: the first number of repetitions for which the formula has no meaning,
        None where it always has one.
    source: author and year.
    """

    name: str
    factor: Callable[[int], Decimal]
    trusted: tuple[int, int]
    source: str
    ends: int | None = None


_EULER = Decimal(1).exp()

FORMULAS: tuple[Formula, ...] = (
    Formula("Epley", lambda reps: 1 + Decimal(reps) / 30, (2, TRUSTED_REPS), "Epley 1985"),
    Formula("Brzycki", lambda reps: Decimal(36) / (37 - reps), (1, TRUSTED_REPS), "Brzycki 1993", ends=37),
    Formula("Lombardi", lambda reps: Decimal(reps) ** Decimal("0.10"), (1, TRUSTED_REPS), "Lombardi 1989"),
    Formula("O'Conner", lambda reps: 1 + Decimal(reps) / 40, (2, TRUSTED_REPS), "O'Conner and others 1989"),
    Formula(
        "Wathan",
        lambda reps: 100 / (Decimal("48.8") + Decimal("53.8") * _EULER ** (Decimal("-0.075") * reps)),
        (2, TRUSTED_REPS),
        "Wathan 1994",
    ),
)


@dataclass(frozen=True)
class Estimate:
    """A maximum as the formulas see it, in the unit of the load that was lifted.

    by_formula: (name of the formula, its value), in the order of FORMULAS.
    warning: why to trust it little, a full sentence, or "".
    """

    by_formula: tuple[tuple[str, Decimal], ...]
    warning: str

    @property
    def low(self) -> Decimal:
        return min(value for _, value in self.by_formula)

    @property
    def high(self) -> Decimal:
        return max(value for _, value in self.by_formula)

    def spread(self, unit: str) -> str:
        """ "24 to 25.6 kg": never one number where the formulas disagree.

        Rounded outward to a tenth, so that no formula lies outside.
        """
        tenth = Decimal("0.1")
        low = short_number(self.low.quantize(tenth, ROUND_FLOOR))
        high = short_number(self.high.quantize(tenth, ROUND_CEILING))
        return f"{low} {unit}" if low == high else f"{low} to {high} {unit}"


def estimate_maximum(load: Decimal, reps: int, in_reserve: int = 0) -> Estimate:
    """The one-repetition maximum from one hard set.

    load: in any unit, above 0; the estimate is in the same unit.
    reps: repetitions done, 1 or more.
    in_reserve: repetitions that were still left; they count as if done.
    Raises ValueError for a load or counts out of range, and for more than
    MOST_REPS repetitions to failure.
    Source: LeSuer and others 1997, Journal of Strength and Conditioning
    Research 11(4), gathers the five formulas (from memory).
    """
    if load <= 0:
        raise ValueError(f"a load of {load} was not lifted; give a weight above 0")
    to_failure = _to_failure(reps, in_reserve)
    by_formula = tuple((formula.name, load * _factor(formula, to_failure)) for formula in FORMULAS)
    return Estimate(by_formula, _warning(to_failure))


@dataclass(frozen=True)
class Target:
    """The weight that a set should be done with, from an estimate.

    amount: in the unit of the load that was lifted.  warning: as in Estimate.
    """

    amount: Decimal
    warning: str


def share_of_maximum(percent: int, load: Decimal, reps: int, in_reserve: int = 0) -> Target:
    """That per cent of the estimated maximum; the lowest estimate is used.

    percent: 1 to 100.  Other arguments and errors as in `estimate_maximum`.
    """
    if not 1 <= percent <= 100:
        raise ValueError(f"{percent} per cent of a maximum is out of range; give 1 to 100")
    estimate = estimate_maximum(load, reps, in_reserve)
    return Target(estimate.low * percent / 100, estimate.warning)


def load_that_allows(
    wanted_reps: int, wanted_in_reserve: int, load: Decimal, reps: int, in_reserve: int = 0
) -> Target:
    """The weight that allows so many repetitions with so many left in reserve.

    Each formula goes both ways, up to a maximum and down again; the lowest
    answer is used.  Other arguments and errors as in `estimate_maximum`.
    """
    wanted = _to_failure(wanted_reps, wanted_in_reserve)
    estimate = estimate_maximum(load, reps, in_reserve)
    amounts = [
        value / _factor(formula, wanted)
        for formula, (_, value) in zip(FORMULAS, estimate.by_formula, strict=True)
    ]
    return Target(min(amounts), estimate.warning or _warning(wanted))


def _to_failure(reps: int, in_reserve: int) -> int:
    if reps < 1 or in_reserve < 0:
        raise ValueError(f"{reps} repetitions with {in_reserve} in reserve is no set; count from 1, and from 0 in reserve")
    if reps + in_reserve > MOST_REPS:
        raise ValueError(
            f"a set of {reps + in_reserve} repetitions to failure says nothing about a maximum; "
            f"use a hard set of {TRUSTED_REPS} or fewer"
        )
    return reps + in_reserve


def _factor(formula: Formula, to_failure: int) -> Decimal:
    """A single lift to failure is the maximum itself, whatever a formula says."""
    return Decimal(1) if to_failure == 1 else formula.factor(to_failure)


def _warning(to_failure: int) -> str:
    if to_failure <= TRUSTED_REPS:
        return ""
    return (
        f"Estimated from {to_failure} repetitions to failure; above {TRUSTED_REPS} the formulas drift apart. "
        f"Use a heavier, shorter set when there is one."
    )
