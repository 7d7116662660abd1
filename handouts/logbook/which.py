"""Which exercise a claim is about, and which side of it."""

from __future__ import annotations

from handouts.amounts import short_number
from handouts.fitting.fitted import FittedExercise
from handouts.logbook.kit import written
from handouts.logbook.message import Claim, Proposal
from handouts.logbook.setting import DROP, UNKNOWN, Setting
from handouts.models import Side


def exercise_of(setting: Setting, claim: Claim) -> str:
    """The id of the exercise that a claim is about; "" while that is asked,
    or when it is to be left out."""
    if claim.id:
        return claim.id
    exercises = setting.exercises
    said = setting.names.of_text(claim.name)
    label = claim.name or (f"number {claim.number}" if claim.number is not None else told_claim(claim))
    key = f"exercise:{' '.join(sorted(said)) or label}"
    answer = setting.asking.answer(key)
    if answer in (DROP, UNKNOWN):
        return ""
    reason = ""
    if answer is not None:
        chosen = named(setting, answer)
        if chosen:
            return chosen
        reason = f"'{answer}' is no exercise that this studio has; write its number on the sheet, its name or its id"
    elif claim.number is not None and not claim.name:
        if claim.number in exercises:
            return exercises[claim.number].exercise.id
        reason = f"the sheet has exercises 1 to {len(exercises)}"
    ids = setting.ids
    within = setting.names.within(said, ids)
    exact = setting.names.all_of(said)
    if not reason and len(within) == 1 and (not exact or within[0] in exact):
        return within[0]
    outside = tuple(id for id in (exact or setting.names.within(said, setting.names.by_id)) if id not in ids)
    options: list[Proposal] = [Proposal(id, f"{setting.title(id)}, on the sheet") for id in within]
    near = [id for id in setting.names.near(said, ids) if id not in within]
    planned = [e.exercise.id for e in exercises.values() if e.planned in outside and e.exercise.id not in near]
    options += [
        Proposal(id, f"{setting.title(id)}, on the sheet; the words meant this one") for id in (*planned, *near)
    ]
    options += [Proposal(id, f"{setting.title(id)}, done instead of what is on the sheet") for id in outside[:3]]
    if not options:
        options = [Proposal(id, f"{setting.title(id)}, number {number}") for number, id in enumerate(ids, 1)][:8]
    options.append(Proposal(DROP, "leave it out"))
    if not reason:
        if len(within) > 1:
            reason = f"'{label}' fits {' and '.join(within)}"
        elif claim.name:
            swapped = f"; was it done instead of {' or '.join(near)}?" if near and outside else ""
            reason = f"'{label}' is not on the sheet of {setting.place[0]} version {setting.place[1]}{swapped}"
        else:
            reason = "the message does not name it"
    setting.asking.ask(key, f"Which exercise is '{label}'?", reason, tuple(options))
    return ""


def named(setting: Setting, answer: str) -> str:
    """The exercise that an answer names: a number, an id or a title."""
    exercises = setting.exercises
    if answer in setting.names.by_id:
        return answer
    if answer.isascii() and answer.isdigit() and int(answer[:6]) in exercises:
        return exercises[int(answer[:6])].exercise.id
    said = setting.names.of_text(answer)
    found = setting.names.all_of(said) or setting.names.within(said, setting.ids)
    return found[0] if len(found) == 1 else ""


def side_of(setting: Setting, claim: Claim, id: str, fitted: FittedExercise | None) -> Side | None:
    """The side that a claim is about: what it says, the side of the cuff, or the
    one side that the sheet has.  Where they differ, it is asked."""
    cuff = setting.client.kit.cuff
    said, only, reason = claim.side, claim.side, ""
    if claim.on_cuff and cuff is not None:
        only, reason = cuff.side, f"the client's cuff is for the {cuff.side} arm"
    elif fitted is not None and len(fitted.sides) == 1:
        only, reason = fitted.sides[0], f"the sheet has the {fitted.sides[0]} side alone"
    if said in (None, only):
        return only
    key = f"side:{id}"
    match setting.asking.answer(key):
        case "left" | "right" as side:
            return side
        case "unknown" | "leave out":
            return None
    options = (Proposal("left", "left"), Proposal("right", "right"), Proposal(UNKNOWN, "leave it open"))
    setting.asking.ask(
        key, f"{id}: which side was it?", f"the message says {said}, and {reason}", options, conflict=True
    )
    return only


def told_claim(claim: Claim) -> str:
    """What a claim counts, in short."""
    pieces = [written(weight) for weight in claim.weights]
    for number in claim.numbers[:20]:
        value = short_number(number.value)
        pieces.append(f"{number.sets} x {value}" if number.sets else value)
    return " ".join(pieces) or claim.note or claim.name or "skipped"
