"""The other side, where a message tells one side alone."""

from __future__ import annotations

from handouts.logbook.counting import reps_of
from handouts.logbook.hearing import hear
from handouts.logbook.message import Claim, Proposal
from handouts.logbook.setting import DROP, UNKNOWN, Done, Setting
from handouts.logbook.weighing import planned_weight, separated, weight_of
from handouts.models import LogLine, Side


def with_other_sides(setting: Setting, lines: list[LogLine], done: list[Done]) -> list[LogLine]:
    """Asks for a side that is missing; a side without a weight takes that
    of the other where the sheet has one weight for both."""
    result = list(lines)
    for one in done:
        exercise = one.exercise
        if exercise is None or one.side is None or one.claim.skipped:
            continue
        mine = [line for line in result if line.exercise == one.id]
        other: Side = "left" if one.side == "right" else "right"
        sided = len(exercise.sides) == 2 or not exercise.sides
        has_other = any(line.side == other for line in mine)
        if has_other:
            lent = next((line.weight for line in mine if line.side == other and line.weight), None)
            shared = all(load.side is None for load in exercise.loads)
            result = [
                line.model_copy(update={"weight": lent})
                if line.exercise == one.id
                and line.side == one.side
                and line.weight is None
                and lent
                and shared
                and not one.claim.weights
                else line
                for line in result
            ]
            continue
        if not sided:
            continue
        result += _other_side(setting, one, other, mine)
    return result


def _other_side(setting: Setting, one: Done, other: Side, mine: list[LogLine]) -> list[LogLine]:
    key = f"side:{one.id}:{other}"
    answer = setting.asking.answer(key)
    if answer in (UNKNOWN, DROP):
        return []
    line = next((line for line in mine if line.side == one.side), None)
    if answer == "not done":
        return [setting.line(one.id, other, reps=(0,))]
    twin = Done(one.exercise, one.id, other, Claim(id=one.id, side=other))
    planned = planned_weight(setting, twin)
    if answer == "same" and line is not None:
        weight = line.weight if planned is None or planned_weight(setting, one) == planned else planned
        return [line.model_copy(update={"side": other, "weight": weight})]
    reason = f"the message tells the {one.side} side alone"
    if answer is not None:
        heard = hear(f"#1 {answer}", setting.names, (), setting.known.today)
        claim = next((claim for claim in heard.claims if claim.number == 1), None)
        if claim is not None and (claim.weights or claim.numbers):
            twin = Done(one.exercise, one.id, other, claim)
            parted = separated(setting, twin, None)
            return [setting.line(one.id, other, weight_of(setting, twin, parted), reps_of(setting, twin, parted, None))]
        reason = f"'{answer}' tells no weight and no count; write such as '{planned or '4 kg'} 12 12 12'"
    options = [
        Proposal("not done", f"not done on the {other} side"),
        Proposal(UNKNOWN, "leave it open: unknown, not zero"),
    ]
    if line is not None:
        weight = planned if planned is not None and planned_weight(setting, one) != planned else line.weight
        told = " ".join([*([f"{weight},"] if weight else []), "/".join(map(str, line.reps)) or "no counts"])
        options.insert(0, Proposal("same", f"the same counts as on the {one.side} side: {told}"))
    setting.asking.ask(key, f"{one.id}: what about the {other} side?", reason, tuple(options))
    return []
