"""The weight for each hand: what is asked for, met from the client's own kit.

The client's file goes before the plan.  A weight is never heavier than asked
for beyond the bound in `handouts.coaching.loads`, and never one that the
client does not have.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

from handouts.amounts import AskedLoad, Dose, Effort, Mass, Pieces, short_number
from handouts.coaching.care import Hold
from handouts.coaching.loads import MOST_ABOVE, Choice, choose, choose_band, cuff_steps, weights_there
from handouts.coaching.strength import Target, estimate_maximum, load_that_allows, reps_for, share_of_maximum
from handouts.fitting.fitted import FittedLoad, Remark
from handouts.fitting.ways import Grip, Settled
from handouts.models import Band, ClientFacts, Hands, Side, TwoSided

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
    hold: what an unanswered warning sign holds back, or None.
    """

    planned: str
    planned_hands: Hands
    load: AskedLoad | None
    dose: Dose | None
    effort: Effort | None
    hold: Hold | None = None


def weights_for(settled: Settled, client: ClientFacts, ask: Ask) -> tuple[tuple[FittedLoad, ...], tuple[Remark, ...]]:
    """The loads of a settled exercise, one for each grip, with remarks.

    client: with the limits of the care table among their own.
    """
    loads, remarks = _loads(settled, client, ask)
    held_back = tuple(_held_back(load, settled, ask) for load in loads)
    if any(load.withheld for load in held_back):
        what = (
            f"{settled.way}: no weight is named before the warning sign in the log is answered; "
            f"the sheet tells the client to ask you."
        )
        return held_back, (Remark("eye", ask.planned, what),)
    return held_back, remarks


def _held_back(load: FittedLoad, settled: Settled, ask: Ask) -> FittedLoad:
    """After an unanswered warning sign only what was lifted before may stand."""
    if ask.hold is None or (load.held == "none" and not load.band):
        return load
    name = settled.way.exercise.id
    before = ask.hold.lifted_before(name, load.side)
    if name in ask.hold.frozen or ask.planned in ask.hold.frozen:
        return replace(load, mass=None, band="", plates=(), withheld=True)
    if load.band:
        return load
    if load.mass is None or before is None or load.mass.kilograms > before.kilograms:
        return replace(load, mass=None, band="", plates=(), withheld=True)
    return load


def _loads(settled: Settled, client: ClientFacts, ask: Ask) -> tuple[tuple[FittedLoad, ...], tuple[Remark, ...]]:
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
        remarks += (*more, *_unbounded(settled, client, ask, load))
    return tuple(loads), remarks


def _unbounded(settled: Settled, client: ClientFacts, ask: Ask, load: FittedLoad) -> tuple[Remark, ...]:
    """A limit on the weight of an exercise for which no weight is named."""
    ceiling = _ceiling(client, settled.way.exercise.id, load.held)
    if ceiling is None or load.mass is not None:
        return ()
    what = (
        f"{settled.way}: no weight is named, and {ceiling} is the most for one; "
        f"ask for a weight, so that the limit stands on the sheet."
    )
    return (Remark("eye", ask.planned, what),)


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
        load, more = _met(settled, client, ask, grip, asked, asked.mass, str(asked.mass))
        return load, remarks + more
    if asked.kind in ("percent", "effort"):
        load, more = _estimated(settled, client, ask, grip, asked)
        return load, remarks + more
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


def _ceiling(client: ClientFacts, name: str, held: str) -> Mass | None:
    """The heaviest that one weight may be.

    A limit counts all that is held at once, so each of a pair is at most half
    of it: the gentler reading of what a doctor says.
    """
    limits = [limit.heaviest for limit in client.limits if limit.heaviest and limit.exercise in (None, name)]
    lowest = min(limits, key=lambda mass: mass.kilograms, default=None)
    return replace(lowest, amount=lowest.amount / 2) if lowest and held == "each hand" else lowest


def weights_to_hold(client: ClientFacts, name: str, held: str) -> tuple[Mass, ...]:
    """Every weight of the client's that can be held so in an exercise, lightest
    first, none above a limit.

    client: with the limits of the care table among their own.
    name: id of the exercise that is done.  held: as in FittedLoad.
    """
    ceiling, cuff = _ceiling(client, name, held), client.kit.cuff
    if held == "cuff":
        there = cuff_steps(cuff) if cuff else ()
    else:
        there = tuple(weights_there(client.kit, 2 if held == "each hand" else 1))
    return tuple(mass for mass in there if ceiling is None or mass.kilograms <= ceiling.kilograms)


def _met(
    settled: Settled, client: ClientFacts, ask: Ask, grip: Grip, asked: AskedLoad, wanted: Mass, told: str
) -> tuple[FittedLoad, tuple[Remark, ...]]:
    """A weight of the client's for the weight wanted, with a remark where they differ."""
    cuff = client.kit.cuff
    ceiling = _ceiling(client, settled.way.exercise.id, grip.held)
    if grip.held == "cuff" and cuff is not None:
        lowest = min((cuff.up_to, ceiling or cuff.up_to), key=lambda mass: mass.kilograms)
        there: Mapping[Mass, tuple[Pieces, ...]] = {mass: () for mass in cuff_steps(cuff)}
        choice = choose(there, wanted, ceiling=lowest)
    else:
        there = weights_there(client.kit, 2 if grip.held == "each hand" else 1)
        choice = choose(there, wanted, ceiling=ceiling)
    plates = there[choice.chosen] if choice.chosen else ()
    load = FittedLoad(grip.side, asked, choice.chosen, grip.held, plates=plates)
    if choice.how == "as asked":
        return load, ()
    where = {"each hand": "a pair", "cuff": "the cuff"}.get(grip.held, "one dumbbell")
    below_limit = ceiling is not None and wanted.kilograms > ceiling.kilograms
    above = f"the limit of {ceiling} for one weight" if below_limit else "it"
    more = "".join(f"; the next there is {mass}" for mass in _next(there, choice.chosen) if grip.held != "cuff" and plates)
    return load, (_choice_remark(settled, ask, choice, told, where, above, more),)


def _next(there: Mapping[Mass, object], chosen: Mass | None) -> tuple[Mass, ...]:
    """The next heavier weight, which for a set handle no stamp tells."""
    heavier = [mass for mass in there if chosen and mass.kilograms > chosen.kilograms]
    return tuple(heavier[:1])


def _choice_remark(
    settled: Settled, ask: Ask, choice: Choice, told: str, where: str, above: str, more: str
) -> Remark:
    if choice.chosen is None:
        have = f"the lightest there is {choice.lightest}" if choice.lightest else "there is none"
        limit = "" if above == "it" else f", with {above}"
        what = (
            f"{settled.way}: {told} is asked for as {where}, and {have}{limit}; the sheet names no weight. "
            f"Add a lighter weight to the client's kit, or ask for another load."
        )
        return Remark("eye", ask.planned, what)
    if choice.how == "just above":
        what = (
            f"{settled.way}: {told} is asked for; {where} of {choice.chosen} is nearest, "
            f"no more than {float(MOST_ABOVE):.1%} above it."
        )
    else:
        what = f"{settled.way}: {told} is asked for; {where} of {choice.chosen} is the heaviest there not above {above}{more}."
    return Remark("note", ask.planned, what)


def _estimated(
    settled: Settled, client: ClientFacts, ask: Ask, grip: Grip, asked: AskedLoad
) -> tuple[FittedLoad, tuple[Remark, ...]]:
    """A load by per cent of maximum or by effort, from the client's best set."""
    nothing = FittedLoad(grip.side, asked, None, grip.held)
    used = settled.way.exercise.id
    best = client.best_sets.get(used)
    effort = ask.effort or USUAL_RESERVE
    if best is None or best.load.mass is None or grip.held == "cuff":
        if asked.kind == "effort":
            what = (
                f"{settled.way}: the load goes by effort and there is no best set to start from, so the client "
                f"chooses it by feel; write one under best sets in the client's file when there is one."
            )
            return nothing, (Remark("note", ask.planned, what),)
        what = (
            f"{settled.way}: {asked.percent} % of maximum is asked for, and there is no best set to reckon from; "
            f"the sheet names no weight. Write one under best sets in the client's file."
        )
        return nothing, (Remark("eye", ask.planned, what),)
    base = best.load.mass
    try:
        target = _target(ask, asked, effort, base, best.reps, best.in_reserve)
    except ValueError as problem:
        what = f"{settled.way}: no weight can be reckoned from the best set of {best.reps} with {base}: {problem}."
        return nothing, (Remark("eye", ask.planned, what),)
    wanted = Mass(target.amount, base.unit)
    rounded = f"{short_number(round(target.amount, 1))} {base.unit}"
    asked_for = f"{asked.percent} % of maximum" if asked.kind == "percent" else f"a load by effort {effort.rating} of 10"
    spread = estimate_maximum(base.amount, best.reps, best.in_reserve).spread(base.unit)
    told = f"{asked_for}, about {rounded} from an estimated maximum of {spread},"
    load, remarks = _met(settled, client, ask, grip, asked, wanted, told)
    if target.warning:
        remarks += (Remark("note", ask.planned, f"{settled.way}: {target.warning}"),)
    return load, remarks + _too_many(settled, ask, asked, effort)


def _too_many(settled: Settled, ask: Ask, asked: AskedLoad, effort: Effort) -> tuple[Remark, ...]:
    """Where the chart of per cents does not expect so many repetitions."""
    if asked.kind != "percent" or ask.dose is None or ask.dose.kind != "reps":
        return ()
    expected, reps = reps_for(asked.percent), _each_side(ask.dose)
    reserve = effort.in_reserve if ask.effort else 0
    if expected is None or reps + reserve <= expected:
        return ()
    wanted = f"{reps} repetitions" + (f" with {reserve} in reserve" if reserve else "")
    what = (
        f"{settled.way}: {wanted} at {asked.percent} % of maximum are asked for, and the NSCA's load chart expects "
        f"{expected} at most; ask for fewer repetitions or a smaller per cent."
    )
    return (Remark("eye", ask.planned, what),)


def _each_side(dose: Dose) -> int:
    return math.ceil(dose.high / 2) if dose.counted == "in all" else dose.high


def _target(ask: Ask, asked: AskedLoad, effort: Effort, base: Mass, reps: int, in_reserve: int) -> Target:
    if asked.kind == "percent":
        return share_of_maximum(asked.percent, base.amount, reps, in_reserve)
    if ask.dose is None or ask.dose.kind != "reps":
        raise ValueError("a load by effort needs a dose in repetitions")
    return load_that_allows(_each_side(ask.dose), effort.in_reserve, base.amount, reps, in_reserve)


def _band(
    settled: Settled, client: ClientFacts, ask: Ask, asked: AskedLoad | TwoSided | None
) -> tuple[tuple[FittedLoad, ...], tuple[Remark, ...]]:
    """The band by its name, tension or order, the one that the client has
    where there is one alone."""
    side: Side | None = settled.grips[0].side if settled.grips else None
    bands = client.kit.bands
    listed = ", ".join(f"{band.name} ({band.tension})" if band.tension else band.name for band in bands)
    if isinstance(asked, AskedLoad) and asked.kind == "band":
        if not bands:
            return (FittedLoad(side, asked, None, "none", asked.name),), ()
        band = _band_asked(bands, asked)
        if band is not None:
            return (FittedLoad(side, asked, None, "none", band.name),), ()
        what = (
            f"{settled.way}: the {asked} is asked for, and this client has {listed}; "
            f"the sheet names no band. Change the load or the client's kit."
        )
        return (FittedLoad(side, asked, None, "none"),), (Remark("eye", ask.planned, what),)
    if len(bands) == 1:
        return (FittedLoad(side, None, None, "none", bands[0].name),), ()
    if bands:
        what = (
            f"{settled.way}: this client has the bands {listed} and none is asked for; "
            f"write 'band NAME' or 'lightest band' under loads in the client's file."
        )
        return (), (Remark("note", ask.planned, what),)
    return (), ()


def _band_asked(bands: tuple[Band, ...], asked: AskedLoad) -> Band | None:
    """bands: from the lightest to the strongest, at least one."""
    if asked.place:
        return bands[0] if asked.place == "lightest" else bands[-1]
    if asked.mass is not None:
        return choose_band(bands, asked.mass)
    return next((band for band in bands if band.name == asked.name), None)
