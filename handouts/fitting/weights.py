"""The weight for each hand: what is asked for, met from the client's own kit.

The client's file goes before the plan.  A weight is never heavier than asked
for beyond the bound in `handouts.coaching.loads`, and never one that the
client does not have.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from handouts.amounts import AskedLoad, Dose, Effort, Mass, short_number
from handouts.coaching.loads import MOST_ABOVE, Choice, choose, cuff_steps, usable
from handouts.coaching.strength import Target, load_that_allows, share_of_maximum
from handouts.fitting.fitted import FittedLoad, Remark
from handouts.fitting.ways import Grip, Settled
from handouts.models import ClientFacts, Hands, Side, TwoSided

USUAL_RESERVE = Effort(2)
"""Repetitions to leave when a load goes by effort and no effort is named
(common practice: two or three)."""

_WEIGHTS = frozenset(("dumbbell", "pair of dumbbells"))


@dataclass(frozen=True)
class Ask:
    """What a plan and a client's file ask for in one exercise.

    planned: id of the exercise in the plan, under which remarks are filed.
    planned_hands: how the planned exercise is held.
    dose: as fitted.  effort: as fitted, or None.
    """

    planned: str
    planned_hands: Hands
    load: AskedLoad | None
    dose: Dose | None
    effort: Effort | None


def weights_for(settled: Settled, client: ClientFacts, ask: Ask) -> tuple[tuple[FittedLoad, ...], tuple[Remark, ...]]:
    """The loads of a settled exercise, one for each grip, with remarks."""
    asked, remarks = _asked(settled, client, ask)
    if "band" in settled.kit:
        bands, more = _band(settled, client, ask, asked)
        return bands, remarks + more
    if isinstance(asked, AskedLoad) and asked.kind == "bodyweight":
        return (FittedLoad(None, asked, None, "none"),), remarks
    if not _WEIGHTS & set(settled.kit):
        if isinstance(asked, AskedLoad) and asked.kind != "bodyweight" and str(settled.way) == ask.planned:
            what = f"{settled.way}: a load is asked for, but nothing is held; take the load out or choose another exercise."
            remarks += (Remark("eye", ask.planned, what),)
        return (), remarks
    loads: list[FittedLoad] = []
    for grip in _split(settled, asked):
        load, more = _one_load(settled, client, ask, grip, _for_grip(asked, grip))
        loads.append(load)
        remarks += more
    return tuple(loads), remarks


def _asked(
    settled: Settled, client: ClientFacts, ask: Ask
) -> tuple[AskedLoad | TwoSided | None, tuple[Remark, ...]]:
    """The client's own load for this exercise, else the one planned.

    After a substitution the planned weight goes along only where the new
    exercise is held as the planned one was, or a pair became one of the two.
    """
    used = settled.way.exercise.id
    if used in client.loads:
        return client.loads[used], ()
    planned = client.loads.get(ask.planned, ask.load)
    if used == ask.planned or planned is None:
        return planned, ()
    if isinstance(planned, AskedLoad) and planned.kind in ("bodyweight", "band"):
        return None, ()
    if settled.way.hands == ask.planned_hands or (ask.planned_hands, settled.way.hands) == ("one each", "one"):
        told = (
            f"{used}: the weight asked for {ask.planned} is kept; "
            f"if another is right, write it under loads in the client's file."
        )
        return planned, (Remark("note", ask.planned, told),) if settled.grips else ()
    return None, ()


def _split(settled: Settled, asked: AskedLoad | TwoSided | None) -> tuple[Grip, ...]:
    """A weight held in one hand after the other becomes two grips where each
    side has a load of its own."""
    grips = settled.grips
    if isinstance(asked, TwoSided) and len(settled.sides) == 2 and grips == (Grip(None, "one hand"),):
        return tuple(Grip(side, "one hand") for side in settled.sides)
    return grips


def _for_grip(asked: AskedLoad | TwoSided | None, grip: Grip) -> AskedLoad | TwoSided | None:
    """One load for the one side of a grip; a hand's load is not the cuff's."""
    if isinstance(asked, TwoSided):
        return asked if grip.side is None else getattr(asked, grip.side)
    return None if grip.held == "cuff" else asked


def _one_load(
    settled: Settled, client: ClientFacts, ask: Ask, grip: Grip, asked: AskedLoad | TwoSided | None
) -> tuple[FittedLoad, tuple[Remark, ...]]:
    remarks: tuple[Remark, ...] = ()
    if isinstance(asked, TwoSided):
        asked, remarks = _lighter(settled, ask, asked)
    if asked is None:
        where = f"the {grip.side} cuff" if grip.held == "cuff" else "it"
        what = (
            f"{settled.way}: no weight is given for {where}, so the client chooses; "
            f"write one under loads in the client's file."
        )
        return FittedLoad(grip.side, None, None, grip.held), (*remarks, Remark("note", ask.planned, what))
    if asked.kind == "mass" and asked.mass is not None:
        if grip.held == "each hand" and not asked.each:
            told = (
                f"{settled.way}: '{asked.mass}' is taken as the weight in each hand; "
                f"write '{asked.mass} each' so that nobody reads it as the sum."
            )
            remarks += (Remark("note", ask.planned, told),)
        mass, more = _met(settled, client, ask, grip, asked.mass, str(asked.mass))
        return FittedLoad(grip.side, asked, mass, grip.held), remarks + more
    if asked.kind in ("percent", "effort"):
        mass, more = _estimated(settled, client, ask, grip, asked)
        return FittedLoad(grip.side, asked, mass, grip.held), remarks + more
    what = f"{settled.way}: a {asked.kind} load is asked for, but weights are held; write a weight in its place."
    return FittedLoad(grip.side, asked, None, grip.held), (*remarks, Remark("eye", ask.planned, what))


def _lighter(settled: Settled, ask: Ask, asked: TwoSided) -> tuple[AskedLoad | None, tuple[Remark, ...]]:
    """Both hands work at once, so both carry the lighter of two loads."""
    masses = [load for load in (asked.left, asked.right) if load and load.mass]
    lighter = min(masses, key=lambda load: load.mass.kilograms, default=None)  # type: ignore[union-attr]
    what = (
        f"{settled.way}: both hands work together, but each side has its own load; "
        f"{f'both get the lighter, {lighter.mass}' if lighter else 'neither is a weight'}. "
        f"Write one load for this exercise in the client's file."
    )
    return lighter and replace(lighter, each=True), (Remark("eye", ask.planned, what),)


def _met(
    settled: Settled, client: ClientFacts, ask: Ask, grip: Grip, wanted: Mass, told: str
) -> tuple[Mass | None, tuple[Remark, ...]]:
    """A weight of the client's for the weight wanted, with a remark where they differ."""
    cuff = client.kit.cuff
    if grip.held == "cuff" and cuff is not None:
        choice = choose(cuff_steps(cuff), wanted, ceiling=cuff.up_to)
    else:
        choice = choose(usable(client.kit.dumbbells, 2 if grip.held == "each hand" else 1), wanted)
    if choice.how == "as asked":
        return choice.chosen, ()
    where = {"each hand": "a pair", "cuff": "the cuff"}.get(grip.held, "one dumbbell")
    return choice.chosen, (_choice_remark(settled, ask, choice, told, where),)


def _choice_remark(settled: Settled, ask: Ask, choice: Choice, told: str, where: str) -> Remark:
    if choice.chosen is None:
        have = f"the lightest there is {choice.lightest}" if choice.lightest else "there is none"
        what = (
            f"{settled.way}: {told} is asked for as {where}, and {have}; the sheet names no weight. "
            f"Add a lighter weight to the client's kit, or ask for another load."
        )
        return Remark("eye", ask.planned, what)
    if choice.how == "just above":
        what = (
            f"{settled.way}: {told} is asked for; {where} of {choice.chosen} is nearest, "
            f"no more than {float(MOST_ABOVE):.1%} above it."
        )
    else:
        what = f"{settled.way}: {told} is asked for; {where} of {choice.chosen} is the heaviest there not above it."
    return Remark("note", ask.planned, what)


def _estimated(
    settled: Settled, client: ClientFacts, ask: Ask, grip: Grip, asked: AskedLoad
) -> tuple[Mass | None, tuple[Remark, ...]]:
    """A load by per cent of maximum or by effort, from the client's best set."""
    used = settled.way.exercise.id
    best = client.best_sets.get(used)
    effort = ask.effort or USUAL_RESERVE
    if best is None or best.load.mass is None or grip.held == "cuff":
        if asked.kind == "effort":
            what = (
                f"{settled.way}: the load goes by effort and there is no best set to start from, so the client "
                f"chooses it by feel; write one under best sets in the client's file when there is one."
            )
            return None, (Remark("note", ask.planned, what),)
        what = (
            f"{settled.way}: {asked.percent} % of maximum is asked for, and there is no best set to reckon from; "
            f"the sheet names no weight. Write one under best sets in the client's file."
        )
        return None, (Remark("eye", ask.planned, what),)
    base = best.load.mass
    try:
        target = _target(ask, asked, effort, base, best.reps, best.in_reserve)
    except ValueError as problem:
        what = f"{settled.way}: no weight can be reckoned from the best set of {best.reps} with {base}: {problem}."
        return None, (Remark("eye", ask.planned, what),)
    wanted = Mass(target.amount, base.unit)
    rounded = f"{short_number(round(target.amount, 1))} {base.unit}"
    told = f"{asked.percent} % of maximum" if asked.kind == "percent" else f"a load by effort {effort.rating} of 10"
    mass, remarks = _met(settled, client, ask, grip, wanted, f"{told}, about {rounded},")
    if target.warning:
        remarks += (Remark("note", ask.planned, f"{settled.way}: {target.warning}"),)
    return mass, remarks


def _target(ask: Ask, asked: AskedLoad, effort: Effort, base: Mass, reps: int, in_reserve: int) -> Target:
    if asked.kind == "percent":
        return share_of_maximum(asked.percent, base.amount, reps, in_reserve)
    if ask.dose is None or ask.dose.kind != "reps":
        raise ValueError("a load by effort needs a dose in repetitions")
    each_side = math.ceil(ask.dose.high / 2) if ask.dose.counted == "in all" else ask.dose.high
    return load_that_allows(each_side, effort.in_reserve, base.amount, reps, in_reserve)


def _band(
    settled: Settled, client: ClientFacts, ask: Ask, asked: AskedLoad | TwoSided | None
) -> tuple[tuple[FittedLoad, ...], tuple[Remark, ...]]:
    """The band by its name, the one that the client has where there is one alone."""
    side: Side | None = settled.grips[0].side if settled.grips else None
    bands = client.kit.bands
    if isinstance(asked, AskedLoad) and asked.kind == "band":
        if asked.name in bands or not bands:
            return (FittedLoad(side, asked, None, "none", asked.name),), ()
        what = (
            f"{settled.way}: the band '{asked.name}' is asked for, and this client has "
            f"{', '.join(bands)}; the sheet names no band. Change the load or the client's kit."
        )
        return (FittedLoad(side, asked, None, "none"),), (Remark("eye", ask.planned, what),)
    if len(bands) == 1:
        return (FittedLoad(side, None, None, "none", bands[0]),), ()
    if bands:
        what = (
            f"{settled.way}: this client has the bands {', '.join(bands)} and none is asked for; "
            f"write 'band NAME' under loads in the client's file."
        )
        return (), (Remark("note", ask.planned, what),)
    return (), ()
