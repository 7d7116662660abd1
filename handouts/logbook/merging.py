"""One entry for each exercise and side of a message."""

from __future__ import annotations

from dataclasses import replace

from handouts.logbook.message import SESSION, Claim, Proposal
from handouts.logbook.setting import DROP, UNKNOWN, Done, Setting
from handouts.logbook.which import exercise_of, side_of, told_claim
from handouts.models import Side


def done_in(setting: Setting, claims: tuple[Claim, ...]) -> list[Done]:
    """The claims whose exercise is known, each exercise and side once.

    What is said twice of one exercise is asked about.
    """
    result: dict[tuple[str, Side | None], Done] = {}
    for claim in claims:
        id = "" if claim.id == SESSION else exercise_of(setting, claim)
        if not id:
            continue
        fitted = setting.fitted(id)
        one = Done(fitted, id, side_of(setting, claim, id, fitted), claim)
        before = result.get((one.id, one.side))
        result[one.id, one.side] = one if before is None else _together(setting, before, one)
    return list(result.values())


def _together(setting: Setting, before: Done, after: Done) -> Done:
    """Two claims on one exercise and side as one."""
    first, second = before.claim, after.claim
    if not _counts(first) or not _counts(second):
        kept = first if _counts(first) else second
        notes = "; ".join(note for note in (first.note, second.note) if note)
        return replace(before, claim=replace(kept, note=notes))
    if first == second and setting.message.fields:
        return before
    key = before.key("twice")
    answer = setting.asking.answer(key)
    if answer == "first":
        return before
    if answer == "second":
        return after
    if answer in (UNKNOWN, DROP):
        return replace(before, claim=Claim(id=before.id, side=before.side))
    joined = replace(first, numbers=first.numbers + second.numbers, weights=first.weights or second.weights)
    if answer == "together":
        return replace(before, claim=joined)
    told = f"'{told_claim(first)}' and '{told_claim(second)}'"
    options = [Proposal("first", f"only '{told_claim(first)}'"), Proposal("second", f"only '{told_claim(second)}'")]
    if not first.weights or not second.weights or first.weights[0].amount == second.weights[0].amount:
        options.append(Proposal("together", "one after the other, the same exercise"))
    reason = f"the message tells this exercise twice: {told}"
    setting.asking.ask(key, f"{before.id}: which counts are right?", reason, tuple(options), conflict=True)
    return before


def _counts(claim: Claim) -> bool:
    """Whether a claim says anything but its name."""
    return bool(claim.weights or claim.numbers or claim.times or claim.metres or claim.skipped)
