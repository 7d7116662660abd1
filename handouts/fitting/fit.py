"""Fits a plan to one client: level, limits, hands, kit, weights, sides, time.

Pure: the same client, plan, texts and dates always give the same session.
Whatever is changed, left out or in doubt is told to the trainer in a remark
that says what, why and what to do; the client's private notes are never read
here.  A fitting follows the files; it never says that a plan is safe.
"""

from __future__ import annotations

import datetime
import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise
from types import MappingProxyType
from typing import Literal

from handouts.amounts import AskedLoad, Dose, Effort
from handouts.coaching import timing
from handouts.coaching.care import INSTRUCTION_OF, Cared, Hold, care_for, care_table, hold_of, names_in
from handouts.fitting.changes import changes_between
from handouts.fitting.fitted import (
    FittedExercise,
    FittedGroup,
    FittedSession,
    Instruction,
    Remark,
)
from handouts.fitting.sides import needs_two_hands
from handouts.fitting.ways import Clash, Found, Settled, Way, data_of, find_way, planned_way
from handouts.fitting.weights import Ask, weights_for
from handouts.models import (
    LEVELS,
    AsManyRounds,
    Circuit,
    Client,
    ClientFacts,
    EasyPart,
    EveryMinute,
    Exercise,
    Intervals,
    ItemList,
    Limit,
    LogLine,
    PartName,
    Plan,
    SidePattern,
    StraightSets,
    Structure,
    StudioFacts,
    Superset,
    Work,
)

SCREENING_LASTS = datetime.timedelta(days=365)
"""After this the trainer is reminded to screen again (common practice: a year)."""

_STEPS: tuple[PartName, ...] = ("Start position", "Movement", "Finish")

_LONG_SET = 60
"""Seconds in which a set of "every minute" must be done."""

def fit(
    client: Client,
    plan: Plan,
    exercises: Mapping[tuple[str, str], Exercise],
    studio: StudioFacts,
    previous: Plan | None,
    today: datetime.date,
    history: tuple[LogLine, ...] = (),
    plans: Mapping[tuple[str, int], Plan] = MappingProxyType({}),
) -> FittedSession:
    """One plan as one client will do it.

    exercises: (id, language) to text; the English texts hold the data.
    previous: the version before this one, None when there is none.
    today: for review dates alone.
    history: the client's log, for the time that sessions really take and for
        warning signs without an answer.
    plans: by code and version, those that the log can name.
    An exercise that cannot be fitted is left out, and a group left empty too;
    a remark of strength "eye" says so.  A session that must not be handed out
    says why in `stopped`.
    """
    cared = care_for(client.facts, care_table())
    loads = {**client.facts.loads, **(plan.facts.loads if plan.facts.client == client.facts.code else {})}
    facts = client.facts.model_copy(update={"limits": cared.limits, "weaker_side": cared.weaker_side, "loads": loads})
    hold = hold_of(history)
    context = _Context(facts, exercises, hold)

    warm_up, warm_up_remarks = _fit_easy_part(context, plan.facts.warm_up)
    groups, group_remarks = _fit_groups(context, plan.facts.session)
    cool_down, cool_down_remarks = _fit_easy_part(context, plan.facts.cool_down)

    warm_up_seconds = plan.facts.warm_up.time if plan.facts.warm_up else 0
    cool_down_seconds = plan.facts.cool_down.time if plan.facts.cool_down else 0
    change_over = timing.change_over(facts.pace)
    main_seconds = timing.session([group.seconds for group in groups], change_over)
    main_seconds += _settings_changed(groups) * change_over
    total_seconds = warm_up_seconds + main_seconds + cool_down_seconds
    session = FittedSession(
        studio=studio,
        client=client,
        plan=plan,
        level=facts.level,
        warm_up=warm_up,
        warm_up_seconds=warm_up_seconds,
        groups=groups,
        cool_down=cool_down,
        cool_down_seconds=cool_down_seconds,
        change_over=change_over,
        main_seconds=main_seconds,
        total_seconds=total_seconds,
        expected_seconds=total_seconds,
        instructions=_instructions(facts, cared),
        changes=(),
        effort_cap=facts.effort_cap,
        remarks=(),
        stopped=_stopped(client, cared, groups),
    )
    if previous is not None:
        before = fit(client, previous, exercises, studio, None, today)
        session = replace(session, changes=changes_between(before, session))
    pace = _own_pace(session, history, {**plans, (plan.facts.plan, plan.facts.version): plan}, exercises, today)
    if pace is not None:
        session = replace(session, expected_seconds=pace.seconds(total_seconds))
    remarks = (
        *_screening_remarks(client, today),
        *_review_remarks(client, today),
        *_care_remarks(client, cared),
        *_printed_remarks(client, plan),
        *_warning_remarks(client, hold),
        *warm_up_remarks,
        *group_remarks,
        *cool_down_remarks,
        *_time_remarks(session),
        *_pace_remarks(session, pace, history),
    )
    return replace(session, remarks=tuple(dict.fromkeys(remarks)))


@dataclass(frozen=True)
class _Context:
    """client: with the limits of the care table among their own."""

    client: ClientFacts
    exercises: Mapping[tuple[str, str], Exercise]
    hold: Hold | None


# --- the client as a whole ---------------------------------------------------


def _instructions(client: ClientFacts, cared: Cared) -> tuple[Instruction, ...]:
    """What the client does throughout; the reason stays in the file."""
    instructions: list[Instruction] = []
    for limit in cared.limits:
        if limit.demand and not limit.with_caution:
            instructions.append(Instruction(INSTRUCTION_OF[limit.demand]))
        if limit.at_most is not None:
            for side in (limit.side,) if limit.side else ("left", "right"):
                values = (("side", side), ("degrees", str(limit.at_most)))
                instructions.append(Instruction("knee_not_beyond", values))
        if limit.position == "seated":
            instructions.append(Instruction("stay_seated"))
        if limit.heaviest is not None and limit.exercise is None:
            instructions.append(Instruction("nothing_heavier", (("mass", str(limit.heaviest)),)))
    instructions += [Instruction(tell) for tell in cared.tells]
    if client.effort_cap is not None:
        instructions.append(Instruction("effort_not_above", (("cap", str(client.effort_cap)),)))
    return tuple(dict.fromkeys(instructions))


def _screening_remarks(client: Client, today: datetime.date) -> tuple[Remark, ...]:
    screening = client.facts.screening
    if screening is None:
        what = (
            f"no screening is on file for {client.facts.code}; screen before the first session "
            f"and write screening, with date, by and outcome, in {client.path}."
        )
        return (Remark("note", "", what),)
    remarks: list[Remark] = []
    if screening.outcome == "referred":
        what = (
            f"{client.facts.code} was referred to a licensed professional on {screening.date}; "
            f"wait for the answer and write it in {client.path} before the client trains with this sheet."
        )
        remarks.append(Remark("eye", "", what))
    if today - screening.date > SCREENING_LASTS:
        what = f"the screening of {client.facts.code} is from {screening.date}, more than a year ago; screen again."
        remarks.append(Remark("note", "", what))
    return tuple(remarks)


def _review_remarks(client: Client, today: datetime.date) -> tuple[Remark, ...]:
    """A limit past its review date stays: to be asked again, never lifted here."""
    due: list[tuple[str, datetime.date]] = []
    for limit in client.facts.limits:
        if limit.review is not None and today > limit.review:
            due.append((f"the limit '{_name(limit)}'", limit.review))
    for number, choice in enumerate(client.facts.care, 1):
        if choice.review is not None and today > choice.review:
            due.append((f"care {number}", choice.review))
    return tuple(
        Remark(
            "eye",
            "",
            f"{what} was due for review on {day} and stays in force; "
            f"ask again whether it still holds and write a new review date in {client.path}.",
        )
        for what, day in due
    )


def _name(limit: Limit) -> str:
    if limit.joint:
        return f"{limit.joint} bend"
    if limit.heaviest:
        return f"heaviest {limit.heaviest}"
    return limit.demand or (f"only {limit.position}" if limit.position else f"not {limit.not_position}")


def _stopped(client: Client, cared: Cared, groups: tuple[FittedGroup, ...]) -> tuple[str, ...]:
    """Why this session must not be handed out."""
    code, path = client.facts.code, client.path
    stopped = [
        f"no sheet is made for {code}: {unasked.entry} in {path} needs an answer first; ask {unasked.ask.whom}, "
        f"and write 'advised by' and 'since' beside it."
        for unasked in cared.unasked
        if unasked.ask.before == "any sheet"
    ]
    stopped += [
        f"no sheet is made for {code}, since two things in {path} ask for opposites: {opposite}; ask the licensed "
        f"professional who knows the client, and write 'without' with 'advised by' and 'since' at one of them."
        for opposite in cared.opposites
    ]
    if not groups and not stopped:
        stopped.append(
            f"no sheet is made for {code}: no exercise of the plan fits this client; choose or write another plan."
        )
    return tuple(stopped)


def _care_remarks(client: Client, cared: Cared) -> tuple[Remark, ...]:
    """Who must be asked before the first session, and what to talk over."""
    remarks = []
    for unasked in cared.unasked:
        ask = unasked.ask
        talk = f" Talk over with the client: {ask.talk_over}." if ask.talk_over else ""
        what = (
            f"{unasked.entry} in {client.path}: ask {ask.whom} before {ask.before}, and write "
            f"'advised by' and 'since' beside it.{talk}"
        )
        remarks.append(Remark("eye", "", what))
    return tuple(remarks)


def _printed_remarks(client: Client, plan: Plan) -> tuple[Remark, ...]:
    """The trainer's own words that would name what is never printed."""
    remarks = []
    for key, words in (("title", plan.facts.title), ("note", plan.facts.note)):
        texts = words.values() if isinstance(words, dict) else (words,)
        if any(names_in(text, client.facts, care_table()) for text in texts if text):
            what = (
                f"the {key} in {plan.path} names what is private in {client.path}, and it stands on the sheet; "
                f"say there what to do, and not why."
            )
            remarks.append(Remark("eye", "", what))
    return tuple(remarks)


def _warning_remarks(client: Client, hold: Hold | None) -> tuple[Remark, ...]:
    """Warning signs in the log that the trainer has not answered yet."""
    remarks = []
    for line in hold.warnings if hold else ():
        day = f" of {line.date}" if line.date else ""
        about = f" ({line.exercise})" if line.exercise not in ("", "session") else ""
        what = (
            f"logs/{client.facts.code}.csv, line {line.line}{day}{about}: a warning sign has no answer, so no new weight "
            f"is worked out; talk with the client, then write what you decide in the column 'answer' of that line."
        )
        remarks.append(Remark("eye", line.exercise, what))
    return tuple(remarks)


# --- groups ------------------------------------------------------------------


def _fit_groups(
    context: _Context, session: Sequence[Structure]
) -> tuple[tuple[FittedGroup, ...], tuple[Remark, ...]]:
    groups: list[FittedGroup] = []
    remarks: list[Remark] = []
    number = 1
    for structure in session:
        works = (structure,) if isinstance(structure, StraightSets) else structure.exercises
        work_seconds = structure.work.at(context.client.level) if isinstance(structure, Intervals) else None
        fitted: list[FittedExercise] = []
        for work in works:
            exercise, more = _fit_exercise(context, work, number, work_seconds)
            remarks += more
            if exercise is not None:
                fitted.append(exercise)
                number += 1
        if fitted:
            group = _group(context, structure, tuple(fitted))
            groups.append(group)
            remarks += _group_remarks(context, group)
        else:
            what = f"the {structure.structure} of {', '.join(work.exercise for work in works)} is left out: nothing in it fits."
            remarks.append(Remark("eye", works[0].exercise, f"{what} Change the plan for this client."))
    return tuple(groups), (*remarks, *_twice_remarks(groups))


def _group(context: _Context, structure: Structure, fitted: tuple[FittedExercise, ...]) -> FittedGroup:
    """The group with its seconds.  What is left of a superset or a circuit
    when one exercise remains is told as straight sets."""
    level = context.client.level
    seconds = [exercise.seconds for exercise in fitted]
    match structure:
        case StraightSets():
            rounds, rest = structure.sets.at(level), structure.rest.at(level)
            return FittedGroup(
                "straight sets", fitted, rounds, 0, 0, rest, 0, timing.straight_sets(seconds[0], rounds, rest)
            )
        case Superset() | Circuit():
            rounds = structure.rounds.at(level)
            if isinstance(structure, Superset):
                inside, after = structure.rest_inside.at(level), structure.rest_after.at(level)
            else:
                inside, after = structure.station_rest.at(level), structure.round_rest.at(level)
            if len(fitted) == 1:
                return FittedGroup(
                    "straight sets", fitted, rounds, 0, 0, after, 0, timing.straight_sets(seconds[0], rounds, after)
                )
            total = timing.rounds_of(seconds, rounds, inside, after)
            return FittedGroup(structure.structure, fitted, rounds, 0, inside, after, 0, total)
        case Intervals():
            work, rest = structure.work.at(level), structure.rest.at(level)
            rounds, after = structure.rounds.at(level), structure.round_rest.at(level)
            total = timing.intervals(len(fitted), work, rest, rounds, after)
            return FittedGroup("intervals", fitted, rounds, work, rest, after, 0, total)
        case AsManyRounds() | EveryMinute():
            time = structure.time.at(level)
            return FittedGroup(structure.structure, fitted, 0, 0, 0, 0, time, time)


def _twice_remarks(groups: Sequence[FittedGroup]) -> Iterator[Remark]:
    """A substitute that the session holds already works the same muscles twice."""
    fitted = [exercise for group in groups for exercise in group.exercises]
    for exercise in fitted:
        name = exercise.exercise.id
        if exercise.planned != name and sum(other.exercise.id == name for other in fitted) > 1:
            what = (
                f"{name}, which takes the place of {exercise.planned}, stands in this session more than once; "
                f"keep it so, or choose another exercise for one of them."
            )
            yield Remark("note", exercise.planned, what)


def _group_remarks(context: _Context, group: FittedGroup) -> tuple[Remark, ...]:
    remarks: list[Remark] = []
    first = group.exercises[0].planned
    if group.structure in ("as many rounds as possible", "every minute"):
        what = (
            f"'{group.structure}' hurries people: give {context.client.code} a talking timer, "
            f"and set the weights out before it starts so that none is changed on the way."
        )
        remarks.append(Remark("note", first, what))
    remarks += _between_remarks(context, group)
    for exercise in group.exercises:
        if group.structure == "every minute" and exercise.seconds > _LONG_SET:
            what = (
                f"{exercise.exercise.id}: one set takes about {exercise.seconds} s and does not fit in its minute; "
                f"ask for fewer repetitions."
            )
            remarks.append(Remark("eye", exercise.planned, what))
    return tuple(remarks)


def _between_remarks(context: _Context, group: FittedGroup) -> Iterator[Remark]:
    """What has to change between two exercises of a round, and the rest for it."""
    needed = timing.change_over(context.client.pace)
    for one, other in pairwise(group.exercises):
        if _plates(one) and _plates(other) and _plates(one) != _plates(other):
            what = (
                f"{other.exercise.id} needs other plates on the handle than {one.exercise.id} before it, in every round; "
                f"ask for one weight in both, or take them apart."
            )
            yield Remark("eye", other.planned, what)
        elif (one.kit, one.position) != (other.kit, other.position) and group.rest_inside * 2 < needed and group.rounds:
            what = (
                f"from {one.exercise.id} to {other.exercise.id} there are {group.rest_inside} s, and a change of kit and "
                f"position takes this client about {needed} s; lay both out beforehand, or plan a longer rest."
            )
            yield Remark("note", other.planned, what)


def _plates(exercise: FittedExercise) -> tuple[object, ...]:
    """The setting of the handles in use, () where nothing is set."""
    return tuple((load.mass, load.plates) for load in exercise.loads if load.plates)


def _settings_changed(groups: Sequence[FittedGroup]) -> int:
    """How often a handle gets other plates in the session.

    It is set for the first time before the session, with everything else.
    """
    in_order = [exercise for group in groups for _ in range(max(group.rounds, 1)) for exercise in group.exercises]
    settings = [plates for plates in map(_plates, in_order) if plates]
    return sum(one != other for one, other in pairwise(settings))


def _fit_easy_part(
    context: _Context, part: EasyPart | None
) -> tuple[tuple[FittedExercise, ...], tuple[Remark, ...]]:
    fitted: list[FittedExercise] = []
    remarks: list[Remark] = []
    for work in part.exercises if part else ():
        exercise, more = _fit_exercise(context, work, 0, None)
        remarks += more
        if exercise is not None:
            fitted.append(exercise)
    return tuple(fitted), tuple(remarks)


# --- one exercise ------------------------------------------------------------


def _fit_exercise(
    context: _Context, work: Work, number: int, work_seconds: int | None
) -> tuple[FittedExercise | None, tuple[Remark, ...]]:
    """One exercise of the plan, or None and the reason.

    work_seconds: seconds of work in timed intervals, None elsewhere.
    """
    client, level = context.client, context.client.level
    data = data_of(context.exercises, work.exercise, client.language)
    if data is None:
        what = f"there is no exercise text '{work.exercise}', so it is left out; write one or change the plan."
        return None, (Remark("eye", work.exercise, what),)
    option = work.option.at(level) if work.option else None
    planned = planned_way(data, option, work.position)
    asked = client.loads.get(work.exercise, work.load)
    unloaded = isinstance(asked, AskedLoad) and asked.kind == "bodyweight"
    found = find_way(planned, client, context.exercises, work.position, unloaded)
    if found.settled is None:
        return None, (_refusal(planned, found),)
    settled = found.settled
    reason: Literal["kit", "limit", "hands", "level", ""] = _reason(work, planned, found)
    text, text_remarks = _text(context, settled.way.exercise.id, work.exercise)
    planned_text, _ = _text(context, work.exercise, work.exercise)

    dose = settle_dose(work.dose.at(level), planned.sides, settled) if work.dose else None
    effort, effort_remarks = _effort(client, work)
    ask = Ask(work.exercise, planned.hands, work.load, dose, effort, context.hold)
    loads, load_remarks = weights_for(settled, client, ask)
    facts = settled.way.exercise.facts
    if work_seconds is not None:
        seconds = work_seconds
    elif dose is not None:
        seconds = timing.set_seconds(dose, len(settled.sides), facts.seconds_per_rep, work.tempo)
    else:
        seconds = 0
    fitted = FittedExercise(
        number=number,
        planned=work.exercise,
        planned_title=planned_text.facts.title,
        exercise=text,
        option=settled.way.option,
        reason=reason,
        position=settled.position,
        sides=settled.sides,
        alternating=settled.alternating,
        dose=dose,
        loads=loads,
        effort=effort,
        tempo=work.tempo,
        cues=settled.cues,
        kit=settled.kit,
        step_height=settled.step_height,
        seconds=seconds,
    )
    remarks = (
        *_two_hands_remarks(client, work.exercise, fitted),
        *_change_remarks(planned, found),
        *_cue_remarks(work.exercise, settled),
        *_hand_remarks(client, planned, found),
        *text_remarks,
        *effort_remarks,
        *load_remarks,
    )
    return fitted, remarks


def settle_dose(dose: Dose, planned: SidePattern, settled: Settled) -> Dose:
    """The planned dose in the side pattern of the exercise that is done.

    The number stays what one side is asked for: 8 each side of one exercise
    are 8 each side of another; 12 together become 12 each side, and 12 each
    side become 12 together.  A number "in all" stays the number in all: 12 in
    all are 6 on each of two sides.  Where only one side of the body works, it
    does its own share and no more.
    Without a word on counting, an exercise on each side counts each side, and
    an alternating one counts in all.
    """
    in_all = dose.counted == "in all" or (dose.counted == "" and planned == "alternating")
    half = replace(dose, low=max(1, dose.low // 2), high=max(1, dose.high // 2))
    if not settled.sides:
        return replace(dose, counted="")
    if len(settled.sides) == 1:
        return replace(half if in_all else dose, counted="")
    if in_all and planned != "together":
        return replace(dose, counted="in all") if settled.alternating else replace(half, counted="each side")
    return replace(dose, counted="each side")


def _effort(client: ClientFacts, work: Work) -> tuple[Effort | None, tuple[Remark, ...]]:
    """The planned effort, never above the client's cap."""
    cap, effort = client.effort_cap, work.effort
    if cap is None or effort is None or effort.rating <= cap:
        return effort, ()
    what = (
        f"{work.exercise}: effort {effort.rating} of 10 is planned, and this client's cap is {cap}; "
        f"the sheet asks for {cap}."
    )
    return Effort(10 - cap), (Remark("note", work.exercise, what),)


def _text(context: _Context, name: str, planned: str) -> tuple[Exercise, tuple[Remark, ...]]:
    """The text in the client's language, else the one in English."""
    language = context.client.language
    text = context.exercises.get((name, language))
    if text is not None:
        return text, ()
    what = (
        f"{name}: there is no text in the language '{language}', so the English one is used; "
        f"write exercise_texts/{name}.{language}.md."
    )
    return context.exercises[name, "en"], (Remark("eye", planned, what),)


# --- what the trainer is told ------------------------------------------------


def _reason(work: Work, planned: Way, found: Found) -> Literal["kit", "limit", "hands", "level", ""]:
    assert found.settled is not None
    way = found.settled.way
    if (way.exercise.id, way.option) == (planned.exercise.id, planned.option):
        by_level = work.option is not None and len({work.option.at(level) for level in LEVELS}) > 1
        return "level" if by_level and planned.option else ""
    if found.for_one_hand:
        return "hands"
    kinds = {clash.kind for clash in found.against}
    return next((kind for kind in ("limit", "hands", "kit") if kind in kinds), "")


def _why(clashes: Sequence[Clash]) -> str:
    return "; ".join(dict.fromkeys(clash.why for clash in clashes))


def _change_remarks(planned: Way, found: Found) -> tuple[Remark, ...]:
    assert found.settled is not None
    way = found.settled.way
    if (way.exercise.id, way.option) == (planned.exercise.id, planned.option):
        return ()
    if found.for_one_hand:
        what = f"{planned} is done as {way}, its way for one hand. Go through it with the client before the first session."
    elif way.exercise.id == planned.exercise.id:
        what = (
            f"{planned} is done as {way}: {_why(found.against)}. "
            f"Go through the changed steps with the client before the first session."
        )
    else:
        what = (
            f"{planned} is replaced by {way}: {_why(found.against)}. "
            f"Check that it serves the same end, and go through it with the client before the first session."
        )
    return (Remark("note", planned.exercise.id, what),)


def _refusal(planned: Way, found: Found) -> Remark:
    others = " ".join(f"Instead, {way} was tried: {_why(clashes)}." for way, clashes in found.tried)
    what = (
        f"{planned} is left out of the sheet: {_why(found.against)}. {others} "
        f"Choose another exercise in the plan, or add a substitute to its text."
    )
    return Remark("eye", planned.exercise.id, " ".join(what.split()))


def _cue_remarks(planned: str, settled: Settled) -> tuple[Remark, ...]:
    return tuple(
        Remark(
            "note",
            planned,
            f"{settled.way} carries {cue}, which is limited for this client; it stays because its text says how to "
            f"breathe, and the sheet repeats it. Practise the breathing with the client first."
            if cue == "breath_hold_risk"
            else f"{settled.way} carries {cue}, which asks for caution with this client; the sheet says what to mind. "
            f"Practise it with the client first.",
        )
        for cue in settled.cues
    )


def _two_hands_remarks(client: ClientFacts, planned: str, fitted: FittedExercise) -> tuple[Remark, ...]:
    """Steps for two hands on the sheet of somebody with one that grips.

    What the text declares comes first: where it holds a weight in both hands,
    all steps that its option does not word anew are for two.  In other steps
    plain phrases are looked for.
    """
    text = fitted.exercise
    if client.hands == "both":
        return ()
    declared = text.facts.hands if text.facts.hands in ("one each", "both on one") else ""
    lines: list[int] = []
    for part in (text.part(name, fitted.option) for name in _STEPS):
        if part is None:
            continue
        if declared and (fitted.option is None or part.option != fitted.option):
            lines.append(part.line)
            continue
        items = [item for block in part.blocks for item in (block.items if isinstance(block, ItemList) else (block,))]
        lines += [item.line for item in items if needs_two_hands(item.text, text.facts.language)]
    if not lines:
        return ()
    why = f", as 'hands: {declared}' in the text says" if declared else ""
    what = (
        f"{text.path}, line{'s' if len(lines) > 1 else ''} {', '.join(map(str, lines))}: these steps are for two hands{why}, and one "
        f"hand of this client grips; write '### NAME OF THE OPTION' and other steps into that part of the text."
    )
    return (Remark("eye", planned, what),)


def _hand_remarks(client: ClientFacts, planned: Way, found: Found) -> tuple[Remark, ...]:
    """How a one-handed client holds what the text holds otherwise."""
    settled = found.settled
    assert settled is not None
    if client.hands == "both" or not settled.grips:
        return ()
    name, way = planned.exercise.id, settled.way
    held = [grip.held for grip in settled.grips]
    if "cuff" in held:
        cuff = next(grip.side for grip in settled.grips if grip.held == "cuff")
        order = "take turns" if settled.alternating else "work one after the other, the hand first"
        what = f"{way}: the {client.hands} hand and the {cuff} forearm with its cuff {order}."
        return (Remark("note", name, f"{what} Practise both with the client."),)
    if found.one_hand_only:
        what = (
            f"{way}: its text is for a weight in each hand, no substitute fits, and the {client.hands} hand works alone. "
            f"Go through it with the client, or choose another exercise."
        )
        return (Remark("eye", name, what),)
    if way.hands == "both on one":
        what = f"{way}: the text holds the weight with both hands; this client holds it in the {client.hands} hand."
        return (Remark("note", name, f"{what} Practise the hold with the client."),)
    if len(settled.sides) == 1:
        what = f"{way}: only the {client.hands} side works, since the other side has neither grip nor cuff for it."
        return (Remark("note", name, f"{what} See that the other side gets its work elsewhere."),)
    return ()


def _time_remarks(session: FittedSession) -> tuple[Remark, ...]:
    """Whether the session fits the client's minutes, and what to cut first."""
    minutes = session.client.facts.minutes
    if minutes is None or not session.groups:
        return ()
    total, limit = timing.clock(session.expected_seconds), timing.clock(minutes)
    over = session.expected_seconds - minutes
    if over <= 0:
        return (Remark("note", "", f"the session takes {total} and fits in the client's {limit}."),)
    cuts = "; then ".join(_cuts(session, over))
    advice = f"Cut first: {cuts}." if cuts else "Choose a shorter plan: nothing is left to cut."
    return (Remark("eye", "", f"the session takes {total}, {timing.clock(over)} over the client's {limit}. {advice}"),)


def _cuts(session: FittedSession, over: int) -> list[str]:
    """What to cut until `over` seconds are saved, what is missed least first.

    One round at a time from the last group upward, never the last round; then
    whole groups from the last upward, never the first (common practice: the
    main exercises come first and stay).  Warm-up and cool-down are never cut.
    """
    share = Fraction(session.expected_seconds, max(session.total_seconds, 1))
    cuts: list[str] = []
    left = [(group, group.rounds, group.seconds) for group in session.groups]

    def cut(what: str, seconds: int) -> int:
        saved = math.floor(seconds * share)
        cuts.append(f"{what} (saves {timing.clock(saved)})")
        return saved

    while over > 0 and any(rounds > 1 for _, rounds, _ in left):
        for place, (group, rounds, seconds) in reversed(list(enumerate(left))):
            if rounds > 1 and over > 0:
                one = (group.seconds + group.rest_after) // group.rounds
                word = "set" if group.structure == "straight sets" else "round"
                over -= cut(f"one {word} of {_ids(group)}", one)
                left[place] = (group, rounds - 1, seconds - one)
    for group, _, seconds in reversed(left[1:]):
        if over > 0:
            over -= cut(f"all of {_ids(group)}", seconds + session.change_over)
    if over > 0 and cuts:
        cuts.append(f"choose a shorter plan, since {timing.clock(over)} is still too much")
    return cuts


def _ids(group: FittedGroup) -> str:
    return ", ".join(exercise.exercise.id for exercise in group.exercises)


def _own_pace(
    session: FittedSession,
    history: tuple[LogLine, ...],
    plans: Mapping[tuple[str, int], Plan],
    exercises: Mapping[tuple[str, str], Exercise],
    today: datetime.date,
) -> timing.OwnPace | None:
    """The client's own pace, from every logged session whose plan is known."""
    timed = [
        ((line.plan, line.version), line.seconds)
        for line in history
        if line.exercise == "session" and line.seconds and line.version and (line.plan, line.version) in plans
    ]
    if len(timed) < timing.FEWEST_SESSIONS:
        return None
    plan = session.plan.facts
    reckoned = {(plan.plan, plan.version): session.total_seconds}
    for key, _ in timed:
        if key not in reckoned:
            other = plans[key[0], key[1] or 0]
            reckoned[key] = fit(session.client, other, exercises, session.studio, None, today).total_seconds
    return timing.own_pace((reckoned[key], taken) for key, taken in timed)


def _pace_remarks(
    session: FittedSession, pace: timing.OwnPace | None, history: tuple[LogLine, ...]
) -> tuple[Remark, ...]:
    """How the time was reckoned, and which logged times are out of the ordinary."""
    remarks: list[Remark] = []
    if pace is not None:
        what = (
            f"the time is reckoned at the client's own pace, {round(pace.share * 100)} % of the usual time, "
            f"from {pace.sessions} logged sessions."
        )
        remarks.append(Remark("note", "", what))
    plan, usual = session.plan.facts, session.expected_seconds
    low, high = timing.PACE_BOUNDS
    for line in history:
        if line.exercise == "session" and (line.plan, line.version) == (plan.plan, plan.version) and line.seconds:
            share = Fraction(line.seconds, max(session.total_seconds, 1))
            off = not low <= share <= high
            if off or (pace is None and abs(line.seconds - usual) * 10 > usual):
                day = f" of {line.date}" if line.date else ""
                counts = "; it does not count for the client's pace" if off else ""
                what = (
                    f"the session{day} took {timing.clock(line.seconds)} by the log, and {timing.clock(usual)} is "
                    f"reckoned{counts}; ask the client where the time differs."
                )
                remarks.append(Remark("note", "", what))
    return tuple(remarks)
