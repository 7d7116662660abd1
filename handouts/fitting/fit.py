"""Fits a plan to one client: level, limits, hands, kit, weights, sides, time.

Pure: the same client, plan, texts and dates always give the same session.
Whatever is changed, left out or in doubt is told to the trainer in a remark
that says what, why and what to do; the client's private notes are never read
here.  A fitting follows the files; it never says that a plan is safe.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from statistics import median
from typing import Literal

from handouts.amounts import AskedLoad, Dose, Effort
from handouts.coaching import timing
from handouts.fitting.changes import changes_between
from handouts.fitting.fitted import (
    FittedExercise,
    FittedGroup,
    FittedSession,
    Instruction,
    Remark,
)
from handouts.fitting.ways import Clash, Found, Settled, Way, data_of, find_way, planned_way
from handouts.fitting.weights import Ask, weights_for
from handouts.models import (
    LEVELS,
    AsManyRounds,
    Circuit,
    Client,
    ClientFacts,
    Demand,
    EasyPart,
    EveryMinute,
    Exercise,
    Intervals,
    LogLine,
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

_LONG_SET = 60
"""Seconds in which a set of "every minute" must be done."""

_INSTRUCTION_KEYS: dict[Demand, str] = {
    "head_below_heart": "keep_head_above_heart",
    "breath_hold_risk": "keep_breathing",
    "jarring": "no_jarring",
    "lying_back": "not_flat_on_back",
    "kneeling": "no_kneeling",
    "overhead": "nothing_overhead",
    "balance": "keep_support_in_reach",
    "grip_long": "rest_the_grip",
    "deep_knee": "no_deep_knee_bend",
    "over_face": "no_weight_over_face",
}


def fit(
    client: Client,
    plan: Plan,
    exercises: Mapping[tuple[str, str], Exercise],
    studio: StudioFacts,
    previous: Plan | None,
    today: datetime.date,
    history: tuple[LogLine, ...] = (),
) -> FittedSession:
    """One plan as one client will do it.

    exercises: (id, language) to text; the English texts hold the data.
    previous: the version before this one, None when there is none.
    today: for review dates alone.
    history: the client's log, for the time that sessions really take.
    An exercise that cannot be fitted is left out, and a group left empty too;
    a remark of strength "eye" says so.
    """
    facts = client.facts
    context = _Context(facts, exercises)

    warm_up, warm_up_remarks = _fit_easy_part(context, plan.facts.warm_up)
    groups, group_remarks = _fit_groups(context, plan.facts.session)
    cool_down, cool_down_remarks = _fit_easy_part(context, plan.facts.cool_down)

    warm_up_seconds = plan.facts.warm_up.time if plan.facts.warm_up else 0
    cool_down_seconds = plan.facts.cool_down.time if plan.facts.cool_down else 0
    change_over = timing.change_over(facts.pace)
    main_seconds = timing.session([group.seconds for group in groups], change_over)
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
        total_seconds=warm_up_seconds + main_seconds + cool_down_seconds,
        instructions=_instructions(facts),
        changes=(),
        effort_cap=facts.effort_cap,
        remarks=(),
    )
    if previous is not None:
        before = fit(client, previous, exercises, studio, None, today)
        session = replace(session, changes=changes_between(before, session))
    remarks = (
        *_screening_remarks(client, today),
        *_review_remarks(client, today),
        *warm_up_remarks,
        *group_remarks,
        *cool_down_remarks,
        *_time_remarks(session),
        *_pace_remarks(session, history),
    )
    return replace(session, remarks=tuple(dict.fromkeys(remarks)))


@dataclass(frozen=True)
class _Context:
    client: ClientFacts
    exercises: Mapping[tuple[str, str], Exercise]


# --- the client as a whole ---------------------------------------------------


def _instructions(client: ClientFacts) -> tuple[Instruction, ...]:
    """What the client does throughout; the reason stays in the file."""
    instructions: list[Instruction] = []
    for limit in client.limits:
        if limit.demand:
            instructions.append(Instruction(_INSTRUCTION_KEYS[limit.demand]))
        if limit.at_most is not None:
            for side in (limit.side,) if limit.side else ("left", "right"):
                values = (("side", side), ("degrees", str(limit.at_most)))
                instructions.append(Instruction("knee_not_beyond", values))
        if limit.position == "seated":
            instructions.append(Instruction("stay_seated"))
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
    remarks = []
    for limit in client.facts.limits:
        if limit.review is not None and today > limit.review:
            name = limit.demand or (f"{limit.joint} bend" if limit.joint else f"only {limit.position}")
            what = (
                f"the limit '{name}' was due for review on {limit.review} and stays in force; "
                f"ask again whether it still holds and write a new review date in {client.path}."
            )
            remarks.append(Remark("eye", "", what))
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
    for exercise in group.exercises:
        if group.structure == "every minute" and exercise.seconds > _LONG_SET:
            what = (
                f"{exercise.exercise.id}: one set takes about {exercise.seconds} s and does not fit in its minute; "
                f"ask for fewer repetitions."
            )
            remarks.append(Remark("eye", exercise.planned, what))
    return tuple(remarks)


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
    ask = Ask(work.exercise, planned.hands, work.load, dose, effort)
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
    kinds = {clash.kind for clash in found.against}
    return next((kind for kind in ("limit", "hands", "kit") if kind in kinds), "")


def _why(clashes: Sequence[Clash]) -> str:
    return "; ".join(dict.fromkeys(clash.why for clash in clashes))


def _change_remarks(planned: Way, found: Found) -> tuple[Remark, ...]:
    assert found.settled is not None
    way = found.settled.way
    if (way.exercise.id, way.option) == (planned.exercise.id, planned.option):
        return ()
    if way.exercise.id == planned.exercise.id:
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
            f"breathe, and the sheet repeats it. Practise the breathing with the client first.",
        )
        for cue in settled.cues
    )


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
    if minutes is None:
        return ()
    total, limit = timing.clock(session.total_seconds), timing.clock(minutes)
    over = session.total_seconds - minutes
    if over <= 0:
        return (Remark("note", "", f"the session takes {total} and fits in the client's {limit}."),)
    cuts = "; then ".join(_cuts(session, over))
    advice = f"Cut first: {cuts}." if cuts else "Shorten the plan: no round can be cut."
    return (Remark("eye", "", f"the session takes {total}, {timing.clock(over)} over the client's {limit}. {advice}"),)


def _cuts(session: FittedSession, over: int) -> list[str]:
    """One round at a time from the last group upward, never the last round."""
    cuts: list[str] = []
    rounds = [group.rounds for group in session.groups]
    while over > 0 and any(count > 1 for count in rounds):
        for place in reversed(range(len(rounds))):
            group = session.groups[place]
            if rounds[place] > 1 and over > 0:
                saved = (group.seconds + group.rest_after) // group.rounds
                rounds[place] -= 1
                over -= saved
                names = ", ".join(exercise.exercise.id for exercise in group.exercises)
                what = "set" if group.structure == "straight sets" else "round"
                cuts.append(f"one {what} of {names} (saves {timing.clock(saved)})")
    if over > 0 and cuts:
        cuts.append(f"whole exercises, since {timing.clock(over)} is still too much")
    return cuts


def _pace_remarks(session: FittedSession, history: tuple[LogLine, ...]) -> tuple[Remark, ...]:
    """What this version of the plan really took, where the log says so."""
    plan = session.plan.facts
    times = [
        line.seconds
        for line in history
        if line.exercise == "session" and (line.plan, line.version) == (plan.plan, plan.version) and line.seconds
    ]
    if not times:
        return ()
    middle = round(median(times))
    if abs(middle - session.total_seconds) * 10 <= session.total_seconds:
        return ()
    what = (
        f"the log has {len(times)} session{'s' if len(times) > 1 else ''} of this plan, {timing.clock(middle)} in the "
        f"middle, and {timing.clock(session.total_seconds)} is reckoned; ask the client where the time differs."
    )
    return (Remark("note", "", what),)
