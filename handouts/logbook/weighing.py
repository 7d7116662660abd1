"""Which weight it was: what was said, held against sheet, kit and hands."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from handouts.amounts import Mass, short_number
from handouts.fitting.fitted import FittedGroup, FittedLoad
from handouts.logbook.hearing import hear
from handouts.logbook.kit import FAR_DOWN, FAR_UP, Stamps, cuff_weights, hand_weights, proposals, written
from handouts.logbook.message import Claim, Notice, Proposal, Weight
from handouts.logbook.setting import DROP, UNKNOWN, Done, Setting


def separated(setting: Setting, one: Done, group: FittedGroup | None) -> Claim:
    """A claim whose bare numbers are parted into weight and counts."""
    claim = one.claim
    takes_weight = one.exercise is None or any(load.held != "none" for load in one.exercise.loads)
    if claim.weights or not claim.numbers or not takes_weight or claim.numbers[0].counted or claim.numbers[0].sets:
        return claim
    numbers, rounds = claim.numbers, group.rounds if group else 0
    first, rest = numbers[0], numbers[1:]
    planned = planned_weight(setting, one)
    weight_first = replace(claim, weights=(Weight(first.value, None, words=short_number(first.value)),), numbers=rest)
    key = one.key("first")
    answer = setting.asking.answer(key)
    if answer == "weight":
        return weight_first
    if answer == "reps":
        return claim
    if answer in (UNKNOWN, DROP):
        return replace(claim, numbers=())
    all_counts = len(numbers) == (rounds or 1) or (
        rounds and len(numbers) == 2 * rounds and one.exercise is not None and len(one.exercise.sides) == 2
    )
    dose = one.exercise.dose if one.exercise else None
    may_be_both = all_counts and dose is not None and dose.kind == "reps" and dose.low <= first.value <= dose.high
    if planned is not None and first.value == planned.amount and not may_be_both:
        return weight_first
    if not all_counts and len(numbers) > 1:
        return weight_first
    told = " ".join(short_number(number.value) for number in numbers)
    owned = _stamps(setting, one).of_amount(first.value)
    means = (
        f"{owned[0]} and then {' '.join(short_number(n.value) for n in rest) or 'no count'}"
        if owned
        else f"a weight of {short_number(first.value)}"
    )
    setting.asking.ask(
        key,
        f"{one.id}: is the first of '{told}' the weight?",
        "there are as many numbers as sets, so the weight may be missing"
        if not may_be_both
        else f"there are as many numbers as sets, and {short_number(first.value)} is the weight on the sheet and a count as well",
        (Proposal("weight", means), Proposal("reps", f"repetitions: {told}; the weight is not known")),
    )
    return replace(claim, numbers=())


def _load(setting: Setting, one: Done) -> FittedLoad | None:
    if one.exercise is None:
        return None
    loads = one.exercise.loads
    return next((load for load in loads if load.side == one.side), None) or next(
        (load for load in loads if load.side is None or one.side is None), None
    )


def planned_weight(setting: Setting, one: Done) -> Mass | None:
    """What the sheet asks for on that side, as stamped."""
    load = _load(setting, one)
    return load.mass if load else None


def _on_cuff(setting: Setting, one: Done) -> bool:
    load = _load(setting, one)
    return one.claim.on_cuff or (load is not None and load.held == "cuff")


def _stamps(setting: Setting, one: Done) -> Stamps:
    return cuff_weights(setting.client.kit) if _on_cuff(setting, one) else hand_weights(setting.client.kit)


def weight_of(setting: Setting, one: Done, claim: Claim) -> Mass | None:
    """The weight of one claim, of each piece; None where it was not said or
    must be asked."""
    key = one.key("weight")
    stamps, planned = _stamps(setting, one), planned_weight(setting, one)
    answer = setting.asking.answer(key)
    if answer in (UNKNOWN, DROP):
        return None
    empty = Proposal(UNKNOWN, "leave the weight open")
    if answer is not None:
        return _answered(setting, one, answer, stamps, planned)
    if not claim.weights:
        return None
    amounts = {(weight.amount, weight.unit) for weight in claim.weights}
    weight = claim.weights[0]
    if len(amounts) > 1:
        told = " and ".join(written(weight) for weight in claim.weights)
        setting.asking.ask(
            key,
            f"{one.id}: which weight was it?",
            f"the message gives more than one: {told}",
            (*(Proposal(written(weight), written(weight)) for weight in claim.weights), empty),
            conflict=True,
        )
        return None
    return _owned(setting, one, weight, key, stamps, planned, empty)


def _answered(setting: Setting, one: Done, answer: str, stamps: Stamps, planned: Mass | None) -> Mass | None:
    """The weight that the trainer names.  It is believed, the client's or not."""
    key, empty = one.key("weight"), Proposal(UNKNOWN, "leave the weight open")
    said = _read_weight(setting, answer)
    if said is None or said.amount <= 0:
        likely = proposals(Weight(Decimal(1), None), stamps, planned, setting.words)
        reason = f"'{answer}' is not a weight; write a number and a unit, such as '{planned or '12.5 kg'}'"
        setting.asking.ask(key, f"{one.id}: which weight was it?", reason, (*likely, empty))
        return None
    if said.unit is None:
        units = stamps.of_amount(said.amount)
        if len(units) == 1:
            return units[0]
        amount = short_number(said.amount)
        options = (Proposal(f"{amount} kg", "kilograms"), Proposal(f"{amount} lb", "pounds"), empty)
        reason = "the answer has no unit; write 'kg' or 'lb' behind it"
        setting.asking.ask(key, f"{one.id}: {amount} what?", reason, options)
        return None
    mass = Mass(said.amount, said.unit)
    if mass not in stamps.pieces and mass != planned:
        where = setting.known.client.path
        what = (
            f"{one.id}: {mass} is not among the client's weights; if it is theirs now, write it in {where} under 'kit'."
        )
        setting.asking.tell(Notice("note", what))
    return mass


def _owned(
    setting: Setting, one: Done, weight: Weight, key: str, stamps: Stamps, planned: Mass | None, empty: Proposal
) -> Mass | None:
    """The weight that was said, where the client has it and can hold it so."""
    said = written(weight)
    likely = (*proposals(weight, stamps, planned, setting.words), empty)
    whose = f"{setting.client.name} ({setting.client.code})"
    if weight.amount <= 0:
        setting.asking.ask(key, f"{one.id}: which weight was it?", f"a weight of {said} cannot be", likely)
        return None
    if one.exercise is not None and not _takes_weight(setting, one):
        setting.asking.ask(
            key,
            f"{one.id}: was it done with {said}?",
            "the sheet has no weight for this exercise",
            (*((Proposal(said, f"yes, {said}"),) if weight.unit else ()), empty),
        )
        return None
    owned = [mass for mass in stamps.of_amount(weight.amount) if weight.unit in (None, mass.unit)]
    if (
        planned is not None
        and weight.amount == planned.amount
        and weight.unit in (None, planned.unit)
        and planned not in owned
    ):
        owned.append(planned)
    if not owned:
        where = "settings of the client's cuff" if _on_cuff(setting, one) else f"weights that {whose} has"
        setting.asking.ask(
            key,
            f"{one.id}: {likely[0].answer}, or another weight?"
            if likely[0] != empty
            else f"{one.id}: which weight was it?",
            f"{said} is not among the {where}",
            likely,
        )
        return None
    if len(owned) > 1:
        setting.asking.ask(
            key,
            f"{one.id}: {said} what?",
            f"the client has {' and '.join(map(str, owned))}",
            (*(Proposal(str(mass), str(mass)) for mass in owned), empty),
        )
        return None
    mass = owned[0]
    if (conflict := _hands_against(setting, one, weight, mass, stamps)) is not None:
        setting.asking.ask(
            key,
            f"{one.id}: which weight was it?",
            conflict,
            (Proposal(str(mass), f"one of {mass}"), *(each for each in likely if each.answer != str(mass))),
            conflict=True,
        )
        return None
    doubt = _in_doubt(setting, weight, mass, planned)
    if doubt:
        setting.asking.ask(
            key,
            f"{one.id}: {planned} or {mass}?",
            doubt,
            (Proposal(str(planned), f"{planned}, as on the sheet"), Proposal(str(mass), str(mass)), empty),
        )
        return None
    return mass


def _takes_weight(setting: Setting, one: Done) -> bool:
    assert one.exercise is not None
    return any(load.held != "none" for load in one.exercise.loads) or one.exercise.exercise.facts.hands != "none"


def _hands_against(setting: Setting, one: Done, weight: Weight, mass: Mass, stamps: Stamps) -> str | None:
    """Why so many weights of this stamp cannot be; None when they can."""
    load = _load(setting, one)
    held = load.held if load else None
    owned = stamps.pieces.get(mass, 0)
    if weight.pieces >= 2 and setting.client.hands != "both":
        return f"the message says {weight.pieces} weights of {mass}, and the client holds one, in the {setting.client.hands} hand"
    if weight.pieces >= 2 and held in ("one hand", "both hands", "cuff"):
        return f"the message says {weight.pieces} weights of {mass}, and the sheet has one"
    if weight.pieces > 2:
        return f"the message says {weight.pieces} weights of {mass} for two hands"
    if held == "each hand" and owned == 1 and not _on_cuff(setting, one):
        return f"the client has one of {mass}, and the exercise takes one in each hand"
    return None


def _in_doubt(setting: Setting, weight: Weight, mass: Mass, planned: Mass | None) -> str:
    """Why a weight that the client has may not be the one that was meant."""
    if planned is None or mass == planned:
        return ""
    said, asked = short_number(weight.amount), short_number(planned.amount)
    heard = not setting.message.fields and said.isdigit() and asked.isdigit()
    if heard and int(asked) in setting.words.sounds_like(int(said)):
        return f"{said} and {asked} sound alike, and the sheet has {planned}"
    ratio = mass.kilograms / planned.kilograms
    if ratio > FAR_UP or ratio < FAR_DOWN:
        return f"{mass} is far from the {planned} on the sheet"
    return ""


def _read_weight(setting: Setting, text: str) -> Weight | None:
    heard = hear(f"#1 {text}", setting.names, (), setting.known.today)
    claim = next((claim for claim in heard.claims if claim.number == 1), None)
    if claim is None:
        return None
    if len(claim.weights) == 1 and not claim.numbers:
        return claim.weights[0]
    if not claim.weights and len(claim.numbers) == 1:
        return Weight(claim.numbers[0].value, None)
    return None
