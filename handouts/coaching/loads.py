"""Which weight to take: from what is there, never heavier than was asked for.

A weight keeps the number and the unit stamped on it.  Units are converted to
compare weights and for nothing else, by the exact pound (0.45359237 kg).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from functools import lru_cache
from types import MappingProxyType
from typing import Literal

from handouts.amounts import KILOGRAMS_PER_POUND, Mass, MassUnit, Pieces
from handouts.models import Adjustable, Band, Cuff, Kit

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


def settings(adjustable: Adjustable, count: Literal[1, 2]) -> Mapping[Mass, tuple[Pieces, ...]]:
    """Every total that one handle can be set to, with the plates on each end.

    count: 2 for two handles set alike at the same time, from the same plates.
    Plates go on in pairs, one on each end, so a plate without a partner stays
    in the box.  Where several settings make one total, the one with the fewest
    plates is taken: less to find and to fasten by touch.  Where plates are
    stamped in another unit than the handle, the total is reckoned exactly and
    named to a tenth of the handle's unit, since it has no stamp.
    Returns an empty mapping when there are fewer handles than `count`.
    Source: arithmetic; plates in pairs are common practice.
    """
    if adjustable.handles < count:
        return {}
    sizes: Counter[Mass] = Counter()
    for plate in adjustable.plates:
        sizes[plate.mass] += plate.count
    top = adjustable.up_to.kilograms if adjustable.up_to else None
    found: dict[Mass, tuple[Pieces, ...]] = {adjustable.handle: ()}
    for size in sorted(sizes, key=_heaviness, reverse=True):
        for total, plates in list(found.items()):
            for on_each_end in range(1, sizes[size] // (2 * count) + 1):
                made = _sum(total, 2 * on_each_end, size)
                if top is not None and made.kilograms > top:
                    break
                setting = (*plates, Pieces(on_each_end, size))
                if made not in found or _number(setting) < _number(found[made]):
                    # Of two sums with one name the key is to hold its own exact one.
                    found.pop(made, None)
                    found[made] = setting
    return {total: found[total] for total in sorted(found, key=_heaviness)}


def _sum(total: Mass, count: int, plate: Mass) -> Mass:
    """A handle with more plates on it.

    Source of the factor between units: International Yard and Pound Agreement, 1959.
    """
    if total.exact is None and plate.unit == total.unit:
        return Mass(total.amount + count * plate.amount, total.unit)
    kilograms = total.kilograms + count * plate.kilograms
    in_its_unit = kilograms if total.unit == "kg" else kilograms / KILOGRAMS_PER_POUND
    return Mass(in_its_unit.quantize(Decimal("0.1"), ROUND_HALF_UP), total.unit, exact=kilograms)


def _number(plates: Iterable[Pieces]) -> int:
    return sum(plate.count for plate in plates)


@lru_cache(maxsize=64)  # the same kit is asked for every exercise and every line of a log
def weights_there(kit: Kit, count: Literal[1, 2]) -> Mapping[Mass, tuple[Pieces, ...]]:
    """All weights that can be held, lightest first: dumbbells and handles.

    count: 2 for a pair of equal weights.
    Returns the weight as stamped or as summed, and the plates on each end of
    a handle; () for a dumbbell as it is and for a bare handle.  A dumbbell
    goes before a handle of the same weight, since nothing needs to be set.
    """
    found: dict[Mass, tuple[Pieces, ...]] = {}
    for adjustable in kit.adjustable:
        for total, plates in settings(adjustable, count).items():
            if total not in found or _number(plates) < _number(found[total]):
                found.pop(total, None)
                found[total] = plates
    for mass in usable(kit.dumbbells, count):
        found.pop(mass, None)
        found[mass] = ()
    return MappingProxyType({mass: found[mass] for mass in sorted(found, key=_heaviness)})


def choose_band(bands: Sequence[Band], most: Mass) -> Band | None:
    """The strongest band that pulls no more than `most` at full stretch.

    bands: those whose tension is not known cannot be chosen.
    """
    fitting = [band for band in bands if band.tension and band.tension.most.kilograms <= most.kilograms]
    return max(fitting, key=lambda band: band.tension.most.kilograms if band.tension else 0, default=None)


def cuff_steps(cuff: Cuff) -> tuple[Mass, ...]:
    """Every weight that a cuff can be set to: whole steps, up to its limit."""
    steps = int(Fraction(cuff.up_to.kilograms) / Fraction(cuff.step.kilograms))
    return tuple(Mass(cuff.step.amount * number, cuff.step.unit) for number in range(1, steps + 1))


def choose(weights: Iterable[Mass], asked: Mass, ceiling: Mass | None = None) -> Choice:
    """The weight nearest to `asked` that is not above it by more than MOST_ABOVE.

    weights: those that can be used, each as stamped.
    ceiling: never gone above, whatever was asked for.
    Equally near, the lighter is taken.  A weight of the very name that was
    asked for is the one that was meant, whatever its plates add up to.
    Source of the rule: common practice; the bound is the smallest step of a rack.
    """
    there = sorted(weights, key=_heaviness)
    lightest = there[0] if there else None
    target = Fraction(asked.kilograms)
    top, most = target * (1 + MOST_ABOVE), ceiling.kilograms if ceiling is not None else None
    allowed = [
        mass
        for mass in there
        if (Fraction(mass.kilograms) <= top or mass == asked) and (most is None or mass.kilograms <= most)
    ]
    if not allowed:
        return Choice(asked, None, "all too heavy" if there else "none there", lightest)
    chosen = min(allowed, key=lambda mass: (abs(Fraction(mass.kilograms) - target), _heaviness(mass)))
    difference = Fraction(chosen.kilograms) - target
    how: Literal["as asked", "below", "just above"] = (
        "as asked" if chosen == asked or difference == 0 else "below" if difference < 0 else "just above"
    )
    return Choice(asked, chosen, how, lightest)


def step_up(lighter: Mass, heavier: Mass) -> Fraction:
    """How much heavier, as a share of the lighter: 10 kg to 12.5 kg is 1/4."""
    return Fraction(heavier.kilograms) / Fraction(lighter.kilograms) - 1


def next_heavier(weights: Sequence[Mass], load: Mass) -> Mass | None:
    """The next of the client's weights, None when there is none."""
    return min((mass for mass in weights if mass.kilograms > load.kilograms), key=lambda mass: mass.kilograms, default=None)


def _heaviness(mass: Mass) -> tuple[Decimal, str]:
    return mass.kilograms, mass.unit
