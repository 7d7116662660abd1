"""A weight as it was said, held against the weights that the client has."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from handouts.amounts import Mass, short_number
from handouts.coaching.loads import cuff_steps, weights_there
from handouts.logbook.message import Proposal, Weight
from handouts.logbook.words import Words
from handouts.models import Kit

FAR_UP, FAR_DOWN = Decimal("1.5"), Decimal("0.5")
"""Beyond these, times the weight on the sheet, a weight is asked about (common
practice, no source)."""


@dataclass(frozen=True)
class Stamps:
    """Weights of one kind of hold.

    pieces: how many of each stamp can be held at a time, 1 or 2.
    """

    pieces: dict[Mass, int]

    def of_amount(self, amount: Decimal) -> tuple[Mass, ...]:
        return tuple(mass for mass in self.pieces if mass.amount == amount)

    def near(self, kilograms: Decimal) -> tuple[Mass, ...]:
        """The heaviest at or below, and the lightest above."""
        ordered = sorted(self.pieces, key=lambda mass: mass.kilograms)
        below = [mass for mass in ordered if mass.kilograms <= kilograms][-1:]
        above = [mass for mass in ordered if mass.kilograms > kilograms][:1]
        return (*below, *above)


def hand_weights(kit: Kit) -> Stamps:
    """Dumbbells and handles with plates: 2 of what makes a pair, else 1."""
    return Stamps(dict.fromkeys(weights_there(kit, 1), 1) | dict.fromkeys(weights_there(kit, 2), 2))


def cuff_weights(kit: Kit) -> Stamps:
    """What a cuff can be set to, from one step upward."""
    return Stamps(dict.fromkeys(cuff_steps(kit.cuff), 1) if kit.cuff is not None else {})


def written(weight: Weight) -> str:
    """ "50 lb" for a weight as said, without the unit where it has none."""
    amount = short_number(weight.amount)
    return f"{amount} {weight.unit}" if weight.unit else amount


def proposals(weight: Weight, stamps: Stamps, planned: Mass | None, words: Words) -> tuple[Proposal, ...]:
    """Weights that the client has and may have meant, the likeliest first."""
    likely: list[Mass] = []
    if weight.amount == weight.amount.to_integral_value():
        for other in words.sounds_like(int(weight.amount)):
            likely += [mass for mass in stamps.of_amount(Decimal(other)) if weight.unit in (None, mass.unit)]
    heard = list(likely)
    likely += stamps.of_amount(weight.amount)
    if planned is not None:
        likely.append(planned)
    unit = weight.unit or (planned.unit if planned else next(iter(stamps.pieces)).unit if stamps.pieces else "kg")
    likely += stamps.near(Mass(weight.amount, unit).kilograms)
    told = []
    for mass in dict.fromkeys(likely):
        why = "sounds alike" if mass in heard else "on the sheet" if planned and mass == planned else "in the kit"
        told.append(Proposal(str(mass), f"{mass}, {why}"))
    return tuple(told[:4])
