"""Which weight to take: from what is there, never heavier than was asked for.

A weight keeps the number and the unit stamped on it.  Units are converted to
compare weights and for nothing else, by the exact pound (0.45359237 kg).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from handouts.amounts import KILOGRAMS_PER_POUND, Mass, MassUnit, Pieces
from handouts.models import Cuff

MOST_ABOVE = Fraction(25, 1000)
"""A weight may lie this far above the one asked for (common practice: 2.5 %)."""


@dataclass(frozen=True)
class Choice:
    """The weight asked for and the weight taken.

    chosen: as stamped, or None when nothing there will do.
    how: "as asked", "below", "just above" (within MOST_ABOVE), "all too heavy"
        or "none there".
    lightest: the lightest of those that could be used at all, None when there
        are none; for the message when all are too heavy.
    """

    asked: Mass
    chosen: Mass | None
    how: Literal["as asked", "below", "just above", "all too heavy", "none there"]
    lightest: Mass | None


def in_unit(mass: Mass, unit: MassUnit) -> Fraction:
    """The exact amount in another unit, for sums and comparisons.

    Source of the factor: International Yard and Pound Agreement, 1959.
    """
    kilograms = Fraction(mass.kilograms)
    return kilograms if unit == "kg" else kilograms / Fraction(KILOGRAMS_PER_POUND)


def usable(pieces: Iterable[Pieces], count: Literal[1, 2]) -> tuple[Mass, ...]:
    """The weights of which there are at least `count`, lightest first.

    Two pieces match only in the same stamp and the same unit: a 5 kg never
    pairs with a 10 lb.
    """
    owned: Counter[Mass] = Counter()
    for piece in pieces:
        owned[piece.mass] += piece.count
    return tuple(sorted((mass for mass, many in owned.items() if many >= count), key=_heaviness))


def cuff_steps(cuff: Cuff) -> tuple[Mass, ...]:
    """Every weight that a cuff can be set to: whole steps, up to its limit."""
    steps = int(Fraction(cuff.up_to.kilograms) / Fraction(cuff.step.kilograms))
    return tuple(Mass(cuff.step.amount * number, cuff.step.unit) for number in range(1, steps + 1))


def choose(weights: Iterable[Mass], asked: Mass, ceiling: Mass | None = None) -> Choice:
    """The weight nearest to `asked` that is not above it by more than MOST_ABOVE.

    weights: those that can be used, each as stamped.
    ceiling: never gone above, whatever was asked for.
    Equally near, the lighter is taken.
    Source of the rule: common practice; the bound is the smallest step of a rack.
    """
    there = sorted(weights, key=_heaviness)
    lightest = there[0] if there else None
    target = Fraction(asked.kilograms)
    top = target * (1 + MOST_ABOVE)
    if ceiling is not None:
        top = min(top, Fraction(ceiling.kilograms))
    allowed = [mass for mass in there if Fraction(mass.kilograms) <= top]
    if not allowed:
        return Choice(asked, None, "all too heavy" if there else "none there", lightest)
    chosen = min(allowed, key=lambda mass: (abs(Fraction(mass.kilograms) - target), _heaviness(mass)))
    difference = Fraction(chosen.kilograms) - target
    how: Literal["as asked", "below", "just above"] = (
        "as asked" if difference == 0 else "below" if difference < 0 else "just above"
    )
    return Choice(asked, chosen, how, lightest)


def step_up(lighter: Mass, heavier: Mass) -> Fraction:
    """How much heavier, as a share of the lighter: 10 kg to 12.5 kg is 1/4."""
    return Fraction(heavier.kilograms) / Fraction(lighter.kilograms) - 1


def _heaviness(mass: Mass) -> tuple[Decimal, str]:
    return mass.kilograms, mass.unit
