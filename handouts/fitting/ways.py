"""Whether a client can do an exercise, and what to do instead.

A way is an exercise with one of its easier or harder options, or plain.  It is
held against the client's limits, hands and kit; where it clashes, the
exercise's own easier options are tried, then its substitutes, then theirs.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Literal, TypeAlias

from handouts.amounts import short_number
from handouts.coaching.loads import weights_there
from handouts.fitting.sides import other_side
from handouts.models import (
    ClientFacts,
    Demand,
    Exercise,
    Hands,
    KitName,
    Option,
    Position,
    Side,
    SidePattern,
)

Exercises: TypeAlias = Mapping[tuple[str, str], Exercise]
"""(id, language) to text.  The data of an exercise stand in its English text."""

ALWAYS_THERE: frozenset[KitName] = frozenset(("wall", "towel", "cushion"))
"""What any home and any gym has (common practice)."""

IN_A_GYM: frozenset[KitName] = frozenset(("bench", "chair", "mat", "step", "rail", "band", "lane"))
"""What any gym has besides weights (common practice)."""

_STILL_POSITIONS: frozenset[Position] = frozenset(("seated", "lying on back", "lying on front", "lying on side"))


@dataclass(frozen=True)
class Way:
    """An exercise with one option, or plain: what it needs and demands."""

    exercise: Exercise
    option: str | None
    equipment: tuple[tuple[KitName, ...], ...]
    positions: tuple[Position, ...]
    sides: SidePattern
    hands: Hands
    cuff: bool
    demands: tuple[Demand, ...]
    knee_bend: int | None
    step_height: Decimal | None

    def __str__(self) -> str:
        return f"{self.exercise.id} ({self.option})" if self.option else self.exercise.id


@dataclass(frozen=True)
class Grip:
    """Where a weight is: in which hand or on which forearm.

    side: None where one load serves both hands or both sides.
    """

    side: Side | None
    held: Literal["each hand", "both hands", "one hand", "cuff"]


@dataclass(frozen=True)
class Settled:
    """A way that this client can do, with everything decided but the loads.

    sides, alternating, cues, step_height: as in FittedExercise.
    grips: () where nothing is held.
    """

    way: Way
    position: Position
    sides: tuple[Side, ...]
    alternating: bool
    grips: tuple[Grip, ...]
    kit: tuple[KitName, ...]
    step_height: Decimal | None
    cues: tuple[Demand, ...]


ClashKind: TypeAlias = Literal["limit", "hands", "kit"]


@dataclass(frozen=True)
class Clash:
    """One reason against a way, as a clause that follows a colon."""

    kind: ClashKind
    why: str


@dataclass(frozen=True)
class Found:
    """What was found for a planned exercise.

    settled: None when nothing fits.
    against: the clashes of the way that was planned; () when it fits.
    tried: every other way that was tried in vain, each with its clashes.
    one_hand_only: no other way fits, so the one hand that grips works alone.
    """

    settled: Settled | None
    against: tuple[Clash, ...]
    tried: tuple[tuple[Way, tuple[Clash, ...]], ...]
    one_hand_only: bool = False

    @property
    def for_one_hand(self) -> bool:
        """Whether nothing stood against the plan but that the text has a way
        of its own for one hand."""
        return self.settled is not None and not self.against and _is_one_handed(self.settled.way)


def way_of(exercise: Exercise, option: str | None) -> Way:
    facts = exercise.facts
    changed = facts.options.get(option, Option()) if option else Option()
    return Way(
        exercise=exercise,
        option=option,
        equipment=facts.equipment if changed.equipment is None else changed.equipment,
        positions=facts.positions if changed.position is None else (changed.position,),
        sides=changed.sides or facts.sides,
        hands=changed.hands or facts.hands,
        cuff=facts.cuff,
        demands=facts.demands if changed.demands is None else changed.demands,
        knee_bend=facts.knee_bend if changed.knee_bend is None else changed.knee_bend,
        step_height=facts.step_height if changed.step_height is None else changed.step_height,
    )


def planned_way(exercise: Exercise, option: str | None, wanted: Position | None) -> Way:
    """The way that a plan names: its option, or the option for the position
    that it names, where the exercise has one."""
    if option is None and wanted is not None and wanted != exercise.facts.positions[0]:
        option = next((name for name, facts in exercise.facts.options.items() if facts.position == wanted), None)
    return way_of(exercise, option)


def data_of(exercises: Exercises, name: str, language: str) -> Exercise | None:
    """The text that holds the data: English where there is one."""
    return exercises.get((name, "en")) or exercises.get((name, language))


def find_way(
    planned: Way, client: ClientFacts, exercises: Exercises, wanted: Position | None, unloaded: bool
) -> Found:
    """The planned way if the client can do it, else the nearest that they can.

    wanted: the position that the plan names, None when it names none.
    unloaded: the plan asks for body weight alone, so no dumbbell is needed.
    Order: the way itself, the exercise's own easier options, its substitutes
    with theirs, the substitutes' substitutes, options that lay the weight
    down, and last, for a pair of dumbbells, the one hand that grips alone.
    """
    tried: list[tuple[Way, tuple[Clash, ...]]] = []
    put_off: list[Way] = []
    queue = [planned]
    seen: set[tuple[str, str | None]] = set()
    while queue:
        first = queue.pop(0)
        if (first.exercise.id, first.option) in seen:
            continue
        ways = [first, *_easier_ways(first, client)]
        if first.option is None and client.hands != "both":
            ways.sort(key=lambda way: not _is_one_handed(way))
        ways = [way for way in ways if (way.exercise.id, way.option) not in seen]
        seen.update((way.exercise.id, way.option) for way in ways)
        put_off += [way for way in ways if _lays_weight_down(way, first)]
        ways = [way for way in ways if not _lays_weight_down(way, first)]
        position = wanted if first.exercise.id == planned.exercise.id else None
        settled, clashes = _first_that_fits(ways, client, position, unloaded)
        tried += clashes
        if settled:
            return _found(planned, settled, tried)
        queue += _substitutes(first.exercise, exercises, client.language)
    for way in put_off:
        outcome = settle(way, client, None, unloaded)
        if isinstance(outcome, Settled):
            return _found(planned, outcome, tried)
        tried.append((way, outcome))
    alone = settle(planned, client, wanted, unloaded, one_hand_only=True)
    if isinstance(alone, Settled):
        return replace(_found(planned, alone, tried), one_hand_only=True)
    return Found(None, tried[0][1] if tried else (), tuple(tried[1:]))


def _found(planned: Way, settled: Settled, tried: list[tuple[Way, tuple[Clash, ...]]]) -> Found:
    against = next((clashes for way, clashes in tried if way == planned), ())
    others = tuple((way, clashes) for way, clashes in tried if way != planned)
    return Found(settled, against, others)


def _first_that_fits(
    ways: list[Way], client: ClientFacts, wanted: Position | None, unloaded: bool
) -> tuple[Settled | None, list[tuple[Way, tuple[Clash, ...]]]]:
    """First strictly; then with one hand where the text says both on one weight."""
    clashes: list[tuple[Way, tuple[Clash, ...]]] = []
    for way in ways:
        outcome = settle(way, client, wanted, unloaded)
        if isinstance(outcome, Settled):
            return outcome, clashes
        clashes.append((way, outcome))
    for way in ways:
        if way.hands == "both on one":
            outcome = settle(way, client, wanted, unloaded, one_hand_only=True)
            if isinstance(outcome, Settled):
                return outcome, [entry for entry in clashes if entry[0] != way]
    return None, clashes


def _is_one_handed(way: Way) -> bool:
    return bool(way.option) and way.exercise.facts.options.get(way.option or "", Option()).one_handed


def _easier_ways(first: Way, client: ClientFacts) -> Iterator[Way]:
    """The exercise's other options, but never one that its text calls harder,
    nor one that is for another client's hands."""
    part = first.exercise.part("Harder")
    harder = {item.option for block in (part.blocks if part else ()) for item in getattr(block, "items", ())}
    for option, facts in first.exercise.facts.options.items():
        for_others = facts.one_handed and client.hands == "both"
        if option != first.option and option not in harder and not for_others:
            yield way_of(first.exercise, option)


def _lays_weight_down(way: Way, first: Way) -> bool:
    return way.hands == "none" and first.hands != "none"


def _substitutes(exercise: Exercise, exercises: Exercises, language: str) -> Iterator[Way]:
    for substitute in exercise.facts.substitutes:
        text = data_of(exercises, substitute.exercise, language)
        if text is not None:
            yield way_of(text, substitute.option)


# --- one way against one client ----------------------------------------------


def settle(
    way: Way, client: ClientFacts, wanted: Position | None, unloaded: bool, one_hand_only: bool = False
) -> Settled | tuple[Clash, ...]:
    """Everything decided for this client, or all that speaks against it.

    one_hand_only: a one-handed client holds with the gripping hand what the
        text holds with both.
    """
    position, clashes = _position(way, client, wanted)
    cues, more = _demands(way, client)
    clashes += more
    held = _hold(way, client, unloaded, one_hand_only)
    if isinstance(held, Clash):
        clashes += (held,)
    kit, step_height, lacking = _kit(way, client, unloaded)
    clashes += lacking
    if clashes or position is None or isinstance(held, Clash):
        return clashes
    return Settled(way, position, held.sides, held.alternating, held.grips, kit, step_height, cues)


def _position(
    way: Way, client: ClientFacts, wanted: Position | None
) -> tuple[Position | None, tuple[Clash, ...]]:
    left_out = {limit.not_position for limit in client.limits if limit.not_position}
    positions = tuple(position for position in way.positions if position not in left_out)
    if not positions:
        return None, (Clash("limit", f"it is done {' or '.join(way.positions)}, which this client leaves out"),)
    only = tuple(dict.fromkeys(limit.position for limit in client.limits if limit.position))
    for position in only:
        if position not in positions:
            return None, (Clash("limit", f"it cannot be done {position}, the only position for this client"),)
        if position in _STILL_POSITIONS and "balance" in way.demands:
            return None, (Clash("limit", f"it asks for balance, so it does not stay {position}"),)
    if len(only) > 1:
        return None, (Clash("limit", f"it cannot be done {' and '.join(only)} at once"),)
    if only:
        return only[0], ()
    if wanted is None:
        return positions[0], ()
    if wanted not in positions:
        return None, (Clash("limit", f"it cannot be done {wanted}, as the plan asks"),)
    return wanted, ()


def _demands(way: Way, client: ClientFacts) -> tuple[tuple[Demand, ...], tuple[Clash, ...]]:
    """Demands that are kept with a caution, and those that are not allowed."""
    cues: list[Demand] = []
    clashes: list[Clash] = []
    for limit in client.limits:
        if limit.demand and limit.demand in way.demands:
            if limit.with_caution and limit.demand == "balance" and not _a_hand_is_free(way, client):
                clashes.append(Clash("limit", "it asks for balance and leaves no hand free for a hold"))
            elif limit.with_caution or (limit.demand == "breath_hold_risk" and way.exercise.part("Breathing")):
                cues.append(limit.demand)
            else:
                clashes.append(Clash("limit", f"it asks for {limit.demand}, which this client leaves out"))
        if limit.at_most is not None:
            knee = f"the {limit.side} knee" if limit.side else "a knee"
            if way.knee_bend is not None and way.knee_bend > limit.at_most:
                clashes.append(
                    Clash("limit", f"it bends {knee} to {way.knee_bend} degrees, and {limit.at_most} is the most")
                )
            elif way.knee_bend is None and "deep_knee" in way.demands:
                clashes.append(Clash("limit", f"it bends {knee} deeply, and {limit.at_most} degrees is the most"))
    return tuple(dict.fromkeys(cues)), tuple(dict.fromkeys(clashes))


def _a_hand_is_free(way: Way, client: ClientFacts) -> bool:
    return way.hands == "none" or (way.hands == "one" and client.hands == "both")


def _sides(way: Way, client: ClientFacts) -> tuple[Side, ...]:
    """Both sides in their order: the weaker first (common practice), else the
    side that the text is written for, else the right."""
    if way.sides == "together":
        return ()
    first: Side = client.weaker_side or way.exercise.facts.written_for or "right"
    return first, other_side(first)


@dataclass(frozen=True)
class _Held:
    grips: tuple[Grip, ...]
    sides: tuple[Side, ...]
    alternating: bool


def _hold(way: Way, client: ClientFacts, unloaded: bool, one_hand_only: bool) -> _Held | Clash:
    """Where the weight is and which sides work; a Clash when it cannot be held."""
    sides = _sides(way, client)
    alternating = way.sides == "alternating"
    if way.hands == "none" or unloaded:
        return _Held((), sides, alternating)
    if client.hands == "both":
        held: dict[Hands, Literal["each hand", "both hands", "one hand"]] = {
            "one each": "each hand", "both on one": "both hands", "one": "one hand",
        }
        return _Held((Grip(None, held[way.hands]),), sides, alternating)
    gripping: Side = client.hands
    other = other_side(gripping)
    in_hand = Grip(gripping, "one hand")
    if way.hands == "both on one":
        if one_hand_only:
            return _Held((in_hand,), sides, alternating)
        return Clash("hands", f"it is held with both hands, and only the {gripping} hand grips")
    if way.hands == "one each" and way.sides == "each":
        return _Held((in_hand,), sides, False)  # the legs take turns; the hands only carry
    if way.hands == "one" and way.sides == "together":
        return _Held((in_hand,), (), False)
    if way.cuff and client.kit.cuff is not None and client.kit.cuff.side == other:
        return _Held((in_hand, Grip(other, "cuff")), (gripping, other), alternating)
    if way.hands == "one" or (one_hand_only and any("pair of dumbbells" in choice for choice in way.equipment)):
        return _Held((in_hand,), (gripping,), False)
    return Clash("hands", f"each hand holds something, and only the {gripping} hand grips")


def _kit(
    way: Way, client: ClientFacts, unloaded: bool
) -> tuple[tuple[KitName, ...], Decimal | None, tuple[Clash, ...]]:
    kit: list[KitName] = []
    step_height: Decimal | None = None
    clashes: list[Clash] = []
    for choice in way.equipment:
        if unloaded and any(name in ("dumbbell", "pair of dumbbells") for name in choice):
            continue
        there = next((name for name in choice if _has(name, client)), None)
        if there is None:
            clashes.append(Clash("kit", f"it needs {' or '.join(_with_article(name) for name in choice)}"))
        elif there == "step":
            step_height = _step(way, client)
            if step_height is None and client.kit.step_heights:
                lowest = short_number(min(client.kit.step_heights))
                wanted = short_number(way.step_height or Decimal(0))
                clashes.append(Clash("kit", f"it needs a step of {wanted} cm or lower, and the lowest is {lowest} cm"))
            kit.append(there)
        elif there == "pair of dumbbells" and client.hands != "both":
            kit.append("dumbbell")
        else:
            kit.append(there)
    return tuple(dict.fromkeys(kit)), step_height, tuple(clashes)


def _has(name: KitName, client: ClientFacts) -> bool:
    if name == "pair of dumbbells":
        return bool(weights_there(client.kit, 2 if client.hands == "both" else 1))
    if name == "dumbbell":
        return bool(client.kit.dumbbells or client.kit.adjustable)
    owned = (
        name in ALWAYS_THERE
        or name in client.kit.other
        or (name == "band" and bool(client.kit.bands))
        or (name == "step" and bool(client.kit.step_heights))
    )
    return owned or (client.place == "gym" and name in IN_A_GYM)


def _step(way: Way, client: ClientFacts) -> Decimal | None:
    """The highest of the client's steps that is not above the exercise's."""
    heights = client.kit.step_heights
    if not heights:
        return way.step_height
    if way.step_height is None:
        return min(heights)
    return max((height for height in heights if height <= way.step_height), default=None)


def _with_article(name: KitName) -> str:
    return f"a {name}"
