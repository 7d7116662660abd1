"""Puts a fitted session into words: three Handout trees from one fitting.

The full sheet says everything; the memory card has one short line an exercise
for someone who knows the movements; the log sheet is what comes back.  Nothing
that a client's file says about health reaches this module's output: it sees
instructions ("keep_head_above_heart"), never reasons.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import replace
from typing import Any

from handouts.amounts import Dose as DoseAmount
from handouts.amounts import read_mass
from handouts.fitting.fitted import (
    Change,
    ChangeValue,
    FittedExercise,
    FittedGroup,
    FittedLoad,
    FittedSession,
    Instruction,
)
from handouts.fitting.sides import mirror, needs_two_hands
from handouts.handout import (
    Block,
    Caution,
    Dose,
    Fact,
    Facts,
    Foreign,
    Handout,
    Heading,
    Inline,
    Item,
    Line,
    LogEntry,
    LogField,
    LogSheet,
    Paragraph,
    Points,
    Section,
    SheetKind,
    Steps,
    Strong,
    Text,
)
from handouts.languages import Phrases, joined, part_title, phrases
from handouts.models import ItemList, Part, PartName, Side, TextBlock

_STRONG = re.compile(r"\*\*(.+?)\*\*")

# In the order in which a reader needs them.  Easier comes last, for a hard day;
# Harder is left out: going on is decided in the plan, not alone on the floor.
_PARTS_BEFORE_COUNT: tuple[PartName, ...] = ("Equipment", "Start position", "Movement", "Breathing", "Count")
_PARTS_AFTER: tuple[PartName, ...] = ("Key points", "Finish", "Easier")
_ALL_PARTS: frozenset[PartName] = frozenset((*_PARTS_BEFORE_COUNT, *_PARTS_AFTER))
_MIRRORED: tuple[PartName, ...] = ("Start position", "Movement")
# A warm-up or cool-down exercise is told shortly: how it starts, goes and ends.
_EASY_PARTS: frozenset[PartName] = frozenset({"Start position", "Movement", "Breathing", "Finish"})
# So is one that the client knows by heart: what to mind, and the way out.
_KNOWN_PARTS: frozenset[PartName] = frozenset({"Breathing", "Key points", "Finish"})


def sheet(kind: SheetKind, session: FittedSession) -> Handout:
    """The Handout of one kind for one fitted session, in the client's language."""
    return _BUILDERS[kind](session)


def _full_sheet(session: FittedSession) -> Handout:
    words = _phrases(session)
    blocks: list[Block] = [
        _when_to_stop(session),
        _facts(session),
        Paragraph(words.line("not_medical")),
        _overview(session),
    ]
    for exercise in session.warm_up:
        blocks.append(_easy_section(session, exercise, "warm_up"))
    for group in session.groups:
        for exercise in group.exercises:
            blocks.append(_exercise_section(session, group, exercise))
    for exercise in session.cool_down:
        blocks.append(_easy_section(session, exercise, "cool_down"))
    blocks.append(_log_section(session))
    return _handout("sheet", session, _title(session), tuple(blocks), words)


def _memory_card(session: FittedSession) -> Handout:
    words = _phrases(session)
    numbered = tuple(
        Item(words.line("card_line", title=_exercise_name(exercise, words), dose=_dose_line(session, group, exercise)))
        for group in session.groups
        for exercise in group.exercises
    )
    blocks: list[Block] = [
        Paragraph(_short_stop(session)),
        Paragraph(words.line("ready_short")),
        *(Paragraph(_instruction(instruction, words)) for instruction in session.instructions),
    ]
    if session.warm_up_seconds:
        blocks.append(Paragraph(_easy_line("order_warm_up", session.warm_up, session.warm_up_seconds, words)))
    first = 1
    for group in session.groups:
        blocks.append(Paragraph(_group_line(group, words)))
        count = len(group.exercises)
        blocks.append(Steps(numbered[first - 1 : first - 1 + count], first))
        first += count
    if session.cool_down_seconds:
        blocks.append(Paragraph(_easy_line("order_cool_down", session.cool_down, session.cool_down_seconds, words)))
    blocks.append(Paragraph(words.line("not_medical")))
    title = words.line("card_title", title=_title(session))
    return _handout("card", session, title, tuple(blocks), words)


def _log_sheet(session: FittedSession) -> Handout:
    words = _phrases(session)
    title = words.line("log_title", title=_title(session))
    blocks = (
        Paragraph(_short_stop(session)),
        Paragraph(words.line("ready_short")),
        _facts(session),
        *_log_blocks(session),
        Paragraph(words.line("not_medical")),
    )
    return _handout("log", session, title, blocks, words)


_BUILDERS: dict[SheetKind, Callable[[FittedSession], Handout]] = {
    "sheet": _full_sheet,
    "card": _memory_card,
    "log": _log_sheet,
}


# --- the frame of a sheet ----------------------------------------------------


def _phrases(session: FittedSession) -> Phrases:
    return phrases(session.client.facts.language)


def _title(session: FittedSession) -> Line:
    return (Text(_in_language(session.plan.facts.title, session.client.facts.language)),)


def _in_language(words: dict[str, str] | str, language: str) -> str:
    if isinstance(words, str):
        return words
    return words.get(language) or words.get("en") or next(iter(words.values()))


def _handout(
    kind: SheetKind, session: FittedSession, title: Line, blocks: tuple[Block, ...], words: Phrases
) -> Handout:
    client, plan = session.client.facts, session.plan.facts
    return Handout(
        sheet=kind,
        language=client.language,
        title=title,
        client=client.name,
        client_code=client.code,
        plan_code=plan.plan,
        version=plan.version,
        running_head=words.text(
            "running_head", client=client.name, code=client.code, plan=plan.plan, version=plan.version
        ),
        date=plan.date.isoformat(),
        review_by=plan.review_by.isoformat() if plan.review_by else "",
        blocks=blocks,
    )


def _facts(session: FittedSession) -> Facts:
    words, client, plan = _phrases(session), session.client.facts, session.plan.facts
    rows: list[tuple[str, Line]] = [
        ("label_client", words.line("value_client", name=client.name, code=client.code)),
        ("label_session", words.line("value_session", plan=plan.plan, version=plan.version)),
        ("label_date", (Text(words.date(plan.date.isoformat())),)),
    ]
    if plan.review_by:
        rows.append(("label_review", (Text(words.date(plan.review_by.isoformat())),)))
    rows.append(("label_coach", (Text(session.studio.coach),)))
    if session.studio.phone:
        rows.append(("label_phone", (Text(session.studio.phone),)))
    rows.append(("label_time", words.line("value_time", total=words.seconds(_whole_minutes(session.expected_seconds)))))
    return Facts(tuple(Fact(words.line(label), value) for label, value in rows))


def _whole_minutes(seconds: int) -> int:
    """Seconds rounded up to whole minutes: nobody plans a session to the second."""
    return -(-seconds // 60) * 60


# --- care --------------------------------------------------------------------


def _when_to_stop(session: FittedSession) -> Caution:
    words = _phrases(session)
    signs = ("stop_chest", "stop_faint", "stop_pain", "stop_weak", "stop_eye", "stop_sight")
    return Caution(
        words.line("stop_title"),
        (
            Paragraph(words.line("stop_lead", emergency=session.studio.emergency)),
            Points(tuple(Item(words.line(sign)) for sign in signs)),
        ),
    )


def _short_stop(session: FittedSession) -> Line:
    return _phrases(session).line("stop_short", emergency=session.studio.emergency)


def _instruction(instruction: Instruction, words: Phrases) -> Line:
    named: dict[str, Any] = {name: _instruction_value(name, value, words) for name, value in instruction.values}
    return words.line(instruction.key, **named)


def _instruction_value(name: str, value: str, words: Phrases) -> str | Inline:
    if name == "side":
        return words.text(value)
    return words.mass(read_mass(value)) if name == "mass" else value


# --- overview ----------------------------------------------------------------


def _overview(session: FittedSession) -> Section:
    words = _phrases(session)
    blocks: list[Block] = []

    version = session.plan.facts.version
    if version > 1:
        blocks.append(_heading(3, words.line("changed_title", version=version - 1), "changed"))
        blocks.append(Points(tuple(Item(_change_line(change, session)) for change in session.changes)
                             or (Item(words.line("changed_nothing")),)))
        blocks.append(Paragraph(words.line("supersedes", version=version - 1)))
    else:
        blocks.append(Paragraph(words.line("changed_first")))

    if session.instructions:
        blocks.append(_heading(3, words.line("throughout_title"), "throughout"))
        blocks.append(Points(tuple(Item(_instruction(instruction, words)) for instruction in session.instructions)))

    blocks.append(_heading(3, words.line("ready_title"), "ready"))
    blocks.append(Points(tuple(Item(line) for line in _ready_lines(session))))

    frames = _clock_frames(session)
    if frames:
        blocks.append(_heading(3, words.line("clock_title"), "clock"))
        blocks.append(Paragraph(words.line("clock_rule")))
        blocks.append(Points(tuple(Item(words.line(f"clock_{frame}")) for frame in frames)))

    blocks.append(_heading(3, words.line("order_title"), "order"))
    if session.warm_up_seconds:
        blocks.append(Paragraph(_easy_line("order_warm_up", session.warm_up, session.warm_up_seconds, words)))
    for group in session.groups:
        blocks.append(Paragraph(_group_line(group, words)))
        items = tuple(
            Item(words.line("card_line", title=_exercise_name(exercise, words), dose=_dose_line(session, group, exercise)))
            for exercise in group.exercises
        )
        blocks.append(Steps(items, group.exercises[0].number))
    if session.cool_down_seconds:
        blocks.append(Paragraph(_easy_line("order_cool_down", session.cool_down, session.cool_down_seconds, words)))
    return Section("overview", _heading(2, words.line("overview_title"), "overview"), tuple(blocks))


def _change_line(change: Change, session: FittedSession) -> Line:
    words = _phrases(session)
    before, after = (_change_value(change.kind, value, session) for value in (change.before, change.after))
    return words.line(f"changed_{change.kind}", title=change.title, before=before, after=after)


def _change_value(kind: str, value: ChangeValue, session: FittedSession) -> Line:
    """One side of a change in words; what has no value is as the text says."""
    words = _phrases(session)
    if isinstance(value, DoseAmount):
        line = _dose_words(value, words)
        return words.line("dose_each_side", dose=line) if value.counted == "each side" else line
    if isinstance(value, int):
        return words.line("rounds", count=value) if kind == "rounds" else (words.seconds(value),)
    if isinstance(value, tuple):
        return _listed(_load(load, session, words) for load in value) or words.line("changed_no_value")
    return (Text(value),) if value else words.line("changed_no_value")


def _ready_lines(session: FittedSession) -> Iterable[Line]:
    """Room, cane or dog, then every piece of kit once, weights as stamped."""
    words, client = _phrases(session), session.client.facts
    yield words.line("ready_floor")
    yield words.line("ready_reach")
    yield words.line("ready_put_down")
    yield words.line("stop_drop")
    if client.pace == "by touch":
        yield words.line("ready_dog" if client.guide_dog else "ready_cane")
    elif client.guide_dog:
        yield words.line("ready_dog")
    exercises = (*session.warm_up, *(e for group in session.groups for e in group.exercises), *session.cool_down)
    weights: dict[tuple[str, str], Line] = {}
    kit: dict[str, Line] = {}
    for exercise in exercises:
        for load in exercise.loads:
            if load.band:
                kit["band"] = words.line("ready_band", band=load.band)
            elif load.plates:
                weights["handle", str(load.mass)] = _handle(load, words)
            elif load.mass is not None:
                key = {"each hand": "ready_pair", "cuff": "ready_cuff"}.get(load.held, "ready_one")
                weights[key, str(load.mass)] = words.line(key, mass=words.mass(load.mass))
        chosen = {load.mass for load in exercise.loads if load.mass is not None}
        for name in exercise.kit:
            if name in ("dumbbell", "pair of dumbbells") and chosen:
                continue
            if name == "step" and exercise.step_height is not None:
                kit.setdefault(name, words.line("kit_step", height=words.number(exercise.step_height)))
            else:
                kit.setdefault(name, words.line("kit_step_plain" if name == "step" else f"kit_{name}"))
    yield from weights.values()
    if any(key == "handle" for key, _ in weights):
        yield words.line("handle_check")
    yield from kit.values()


def _handle(load: FittedLoad, words: Phrases) -> Line:
    """How to set up a handle: its total, then the plates on each end."""
    plates = _listed(words.line("plates", count=plate.count, mass=words.mass(plate.mass)) for plate in load.plates)
    assert load.mass is not None
    key = "handle_pair" if load.held == "each hand" else "handle_one"
    if load.mass.exact is not None:
        key = f"{key}_about"
    return words.line(key, mass=words.mass(load.mass), plates=plates)


def _clock_frames(session: FittedSession) -> tuple[str, ...]:
    """The clock frames that the session's texts use, in the order of first use."""
    exercises = (*session.warm_up, *(e for group in session.groups for e in group.exercises), *session.cool_down)
    frames = (exercise.exercise.facts.clock for exercise in exercises)
    return tuple(dict.fromkeys(frame for frame in frames if frame))


def _easy_line(key: str, exercises: tuple[FittedExercise, ...], seconds: int, words: Phrases) -> Line:
    titles = ", ".join(exercise.exercise.facts.title for exercise in exercises)
    return words.line(key, time=words.seconds(seconds), titles=titles)


# --- lines that several sheets share -----------------------------------------


def _group_line(group: FittedGroup, words: Phrases) -> Line:
    first, last = group.exercises[0].number, group.exercises[-1].number
    if first == last:
        numbers: Line = (Text(str(first)),)
    elif last == first + 1:
        numbers = words.line("list_and", first=first, last=last)
    else:
        numbers = words.line("numbers_range", first=first, last=last)
    rest = words.seconds(group.rest_after)
    if group.structure == "straight sets":
        return words.line("group_straight_sets", count=group.rounds, rest=rest)
    if group.structure in ("as many rounds as possible", "every minute"):
        key = "group_as_many" if group.structure.startswith("as many") else "group_every_minute"
        return words.line(key, time=words.seconds(group.time), numbers=numbers)
    key = {"superset": "group_superset", "circuit": "group_circuit", "intervals": "group_intervals"}[group.structure]
    return words.line(
        key,
        count=group.rounds,
        numbers=numbers,
        inside=words.seconds(group.rest_inside),
        after=rest,
        work=words.seconds(group.work),
    )


def _exercise_name(exercise: FittedExercise, words: Phrases) -> Line:
    title = _option_title(exercise)
    name: Line = (Text(exercise.exercise.facts.title),)
    if title:
        name = words.line("option_title", title=name, option=title[:1].lower() + title[1:])
    if exercise.exercise.facts.language != words.language:
        return (Foreign(exercise.exercise.facts.language, name),)
    return name


def _option_title(exercise: FittedExercise) -> str:
    if exercise.option is None:
        return ""
    option = exercise.exercise.facts.options.get(exercise.option)
    return (option.title if option and option.title else exercise.option.replace("-", " ").capitalize())


def _dose_line(session: FittedSession, group: FittedGroup | None, exercise: FittedExercise) -> Line:
    """ "12 repetitions on each side, 15 lb in each hand": found at a glance."""
    words = _phrases(session)
    return _listed([_amount(exercise, group, words), *(_load(load, session, words) for load in exercise.loads)])


def _listed(pieces: Iterable[Line]) -> Line:
    """The pieces that say something, with commas between."""
    line: Line = ()
    for piece in pieces:
        if piece:
            line = (*line, Text(", "), *piece) if line else piece
    return joined(line)


def _amount(exercise: FittedExercise, group: FittedGroup | None, words: Phrases) -> Line:
    dose = exercise.dose
    if dose is None:
        return (words.seconds(group.work),) if group and group.work else ()
    amount = _dose_words(dose, words)
    if len(exercise.sides) == 1 and not exercise.alternating:
        amount = words.line("dose_one_side", dose=amount, side=words.text(exercise.sides[0]))
    elif dose.counted == "in all":
        amount = words.line("dose_in_all", dose=amount)
    elif dose.counted == "each side" or exercise.sides:
        amount = words.line("dose_each_side", dose=amount)
    if group and group.structure == "straight sets":
        amount = words.line("dose_sets", count=group.rounds, dose=amount)
    return amount


def _dose_words(dose: DoseAmount, words: Phrases) -> Line:
    if dose.kind == "reps":
        return words.line("dose_reps", count=dose.high, reps=words.count_range(dose.low, dose.high))
    return (words.metres(dose.low) if dose.kind == "distance" else words.seconds(dose.low),)


def _load(load: FittedLoad, session: FittedSession, words: Phrases) -> Line:
    if load.withheld:
        return words.line("load_ask")
    if load.band:
        return words.line("load_band", band=load.band)
    if load.mass is None:
        # Nothing asked for, or no weight at all: the line says nothing.
        key = {"effort": "load_by_effort", "mass": "load_ask", "percent": "load_ask"}
        return words.line(key[load.asked.kind]) if load.asked and load.asked.kind in key else ()
    mass = words.mass(load.mass)
    if load.held == "each hand":
        return words.line("load_each_hand", mass=mass)
    if load.held == "both hands":
        return words.line("load_both_hands", mass=mass)
    if load.held == "cuff":
        side: Side = load.side or "left"
        return words.line(f"load_{side}_cuff", mass=mass)
    one = load.side or (session.client.facts.hands if session.client.facts.hands != "both" else None)
    return words.line(f"load_{one}_hand" if one else "load_one_hand", mass=mass)


# --- one exercise ------------------------------------------------------------


def _easy_section(session: FittedSession, exercise: FittedExercise, where: str) -> Section:
    words = _phrases(session)
    title = words.line(f"{where}_title", title=_exercise_name(exercise, words))
    dose = _dose_line(session, None, exercise)
    blocks: list[Block] = [Dose(dose)] if dose else []
    anchor = f"{where.replace('_', '-')}-{exercise.exercise.id}"
    blocks.extend(_description(session, exercise, anchor))
    return Section("exercise", _heading(2, title, anchor), tuple(blocks))


def _exercise_section(session: FittedSession, group: FittedGroup, exercise: FittedExercise) -> Section:
    words = _phrases(session)
    count = sum(len(each.exercises) for each in session.groups)
    title = words.line(
        "exercise_title", number=exercise.number, count=count, title=_exercise_name(exercise, words)
    )
    blocks: list[Block] = []
    dose = _dose_line(session, group, exercise)
    if dose:
        blocks.append(Dose(dose))
    blocks.append(Paragraph(_group_line(group, words)))
    if group.work and len(exercise.sides) == 2 and not exercise.alternating:
        blocks.append(Paragraph(words.line("sides_halfway", half=words.seconds(group.work // 2))))
    blocks.extend(Paragraph(_handle(load, words)) for load in exercise.loads if load.plates)
    if exercise.planned != exercise.exercise.id:
        blocks.append(Paragraph(words.line("in_place_of", title=exercise.planned_title)))
    if exercise.effort is not None:
        blocks.append(
            Paragraph(
                words.line("effort_line", count=exercise.effort.in_reserve, rating=exercise.effort.rating)
            )
        )
    if exercise.tempo is not None:
        tempo = exercise.tempo
        key = "tempo_line" if tempo.lift else "tempo_line_fast"
        blocks.append(
            Paragraph(words.line(key, lower=tempo.lower, low=tempo.pause_low, lift=tempo.lift, high=tempo.pause_high))
        )
    anchor = f"exercise-{exercise.number}"
    blocks.extend(_description(session, exercise, anchor))
    return Section("exercise", _heading(2, title, anchor), tuple(blocks))


def _description(session: FittedSession, exercise: FittedExercise, anchor: str) -> Iterable[Block]:
    """How to do it: position, sides, cautions, the parts of the text, other side."""
    words, client = _phrases(session), session.client.facts
    text, facts = exercise.exercise, exercise.exercise.facts
    if len(facts.positions) > 1:
        yield Paragraph(words.line("position_today", position=words.text(f"position_{exercise.position}")))
    yield from _sides_told(session, exercise)
    if exercise.cues:
        yield Caution(
            words.line("caution"), tuple(Paragraph(words.line(f"cue_{cue}")) for cue in exercise.cues)
        )
    told_option = _option_words(exercise)
    if told_option:
        yield Paragraph(words.line("option_lead", option=told_option))

    first = exercise.sides[0] if exercise.sides else None
    swap = bool(facts.written_for and first and first != facts.written_for)
    foreign = facts.language if facts.language != words.language else ""
    known = text.id in client.knows and exercise.option is None
    if known:
        yield Paragraph(words.line("told_shortly"))
    parts = _KNOWN_PARTS if known else _EASY_PARTS if exercise.number == 0 else _ALL_PARTS
    for name in (name for name in _PARTS_BEFORE_COUNT if name in parts):
        yield from _part(text.part(name, exercise.option), words, anchor, swap, foreign)
    if facts.written_for and len(exercise.sides) == 2 and not exercise.alternating and first and not known:
        if client.other_side == "short":
            yield Paragraph(words.line("other_side_short"))
        else:
            yield _heading(3, words.line("other_side_title"), f"{anchor}-other-side")
            for name in _MIRRORED:
                yield from _part(text.part(name, exercise.option), words, f"{anchor}-other", not swap, foreign, level=4)
    for name in (name for name in _PARTS_AFTER if name in parts):
        part = text.part(name, exercise.option)
        if name == "Easier":
            part = _other_options(part, exercise, client.hands == "both")
        extra = facts.picture if name == "Key points" and client.pictures == "liked" else None
        yield from _part(part, words, anchor, swap, foreign, extra)


def _sides_told(session: FittedSession, exercise: FittedExercise) -> Iterable[Block]:
    words, client = _phrases(session), session.client.facts
    cuff = next((load for load in exercise.loads if load.held == "cuff"), None)
    if cuff is not None and client.hands != "both":
        key = "side_and_cuff_in_turn" if exercise.alternating else "side_then_cuff"
        yield Paragraph(words.line(key, hand=words.text(client.hands), cuff=words.text(cuff.side or "left")))
    elif client.hands != "both" and exercise.exercise.facts.hands == "both on one":
        yield Paragraph(words.line("one_hand_hold", side=words.text(client.hands)))
    elif len(exercise.sides) == 1:
        yield Paragraph(words.line("side_only", side=words.text(exercise.sides[0])))
    elif len(exercise.sides) == 2 and not exercise.alternating:
        first, second = exercise.sides
        yield Paragraph(words.line("side_order", first=words.text(first), second=words.text(second)))


def _option_words(exercise: FittedExercise) -> Line:
    """The list item of the option in use, under Easier or Harder."""
    title = _option_title(exercise)
    for name in ("Easier", "Harder"):
        part = exercise.exercise.part(name)
        for block in part.blocks if part else ():
            for item in getattr(block, "items", ()):
                if title and item.text.startswith(f"**{title}"):
                    return _line(item.text)
    return ()


def _other_options(part: Part | None, exercise: FittedExercise, two_hands: bool) -> Part | None:
    """The easier ways without the one that is already told as today's, and
    without those for other hands than this client's."""
    language = exercise.exercise.facts.language
    if part is None:
        return None
    options = exercise.exercise.facts.options
    for_others = {name for name, option in options.items() if option.one_handed and two_hands}
    title = _option_title(exercise)
    blocks = []
    for block in part.blocks:
        if isinstance(block, ItemList):
            items = tuple(
                item
                for item in block.items
                if not (title and item.text.startswith(f"**{title}"))
                and item.option not in for_others
                and (two_hands or not needs_two_hands(item.text, language))
            )
            block = block.model_copy(update={"items": items})
        if not isinstance(block, ItemList) or block.items:
            blocks.append(block)
    return part.model_copy(update={"blocks": tuple(blocks)}) if blocks else None


def _part(
    part: Part | None,
    words: Phrases,
    anchor: str,
    swap: bool,
    foreign: str,
    extra: str | None = None,
    level: int = 3,
) -> Iterable[Block]:
    if part is None:
        return
    language = foreign or words.language
    title: Line = (Text(part_title(part.name, words.language)),)
    slug = part.name.lower().replace(" ", "-")
    yield _heading(level, title, f"{anchor}-{slug}")
    for block in part.blocks:
        yield _text_block(block, lambda text: _said(text, swap, language, foreign))
    if extra:
        yield Paragraph(_said(extra, False, language, foreign))


def _said(text: str, swap: bool, language: str, foreign: str) -> Line:
    line = _line(mirror(text, language) if swap else text)
    return (Foreign(foreign, line),) if foreign else line


def _text_block(block: TextBlock, said: Callable[[str], Line]) -> Block:
    if not isinstance(block, ItemList):
        return Paragraph(said(block.text))
    told = tuple(
        Item(said(item.text), (Points(tuple(Item(said(inner.text)) for inner in item.items)),) if item.items else ())
        for item in block.items
    )
    return Steps(told) if block.ordered else Points(told)


def _line(text: str) -> Line:
    """Text with **strong** words as a Line."""
    line: list[Inline] = []
    end = 0
    for found in _STRONG.finditer(text):
        line += [Text(text[end : found.start()]), Strong((Text(found[1]),))]
        end = found.end()
    line.append(Text(text[end:]))
    return joined(tuple(line))


# --- log ---------------------------------------------------------------------


def _log_section(session: FittedSession) -> Section:
    words = _phrases(session)
    title = words.line("log_title", title=_title(session))
    return Section(
        "log",
        _heading(2, title, "log"),
        (Paragraph(words.line("how_to_log")), *_log_blocks(session)),
    )


def _log_blocks(session: FittedSession) -> tuple[Block, ...]:
    words, client = _phrases(session), session.client.facts
    how = {"pen": "log_how"}.get(client.log_by, f"log_how_{client.log_by}")
    entries = [
        _log_entry(session, group, exercise) for group in session.groups for exercise in group.exercises
    ]
    whole = [
        LogField("date", words.line("log_date"), "words"),
        LogField("time", words.line("log_total_time"), "time", "min"),
        LogField("effort", words.line("log_effort"), "scale"),
        LogField("pain", words.line("log_pain"), "words"),
        LogField("question", words.line("log_ask"), "words"),
    ]
    if any(group.structure == "as many rounds as possible" for group in session.groups):
        whole.insert(1, LogField("rounds", words.line("log_rounds"), "count"))
    entries.append(LogEntry("session", 0, words.line("log_session"), tuple(whole)))
    plan = session.plan.facts
    return (
        Paragraph(words.line(how)),
        Paragraph(words.line("log_version", plan=plan.plan, version=plan.version)),
        LogSheet(tuple(entries)),
    )


def _log_entry(session: FittedSession, group: FittedGroup, exercise: FittedExercise) -> LogEntry:
    words = _phrases(session)
    fields: list[LogField] = []
    sided_loads = [load for load in exercise.loads if load.side is not None]
    for load in exercise.loads:
        if load.held == "none":
            continue
        label = (
            words.line("log_weight_side", side=words.text(load.side)) if load.side else words.line("log_weight")
        )
        name = f"weight_{load.side}" if load.side else "weight"
        stamped = load.mass.unit if load.mass else session.client.facts.units
        target: Line = (words.mass(load.mass),) if load.mass else ()
        fields.append(LogField(name, label, "weight", stamped, target))

    kind = exercise.dose.kind if exercise.dose else "reps"
    key, unit = {
        "reps": ("log_reps", "reps"),
        "time": ("log_seconds", "s"),
        "distance": ("log_metres", "m"),
    }[kind]
    sides = exercise.sides if len(exercise.sides) == 2 and not exercise.alternating else ()
    by_side = kind == "reps" and bool(sides or len(sided_loads) == 2)
    asked = _asked_count(_of_one_side(exercise.dose) if by_side else exercise.dose, words)
    if by_side:
        for side in sides or tuple(load.side for load in sided_loads if load.side):
            label = words.line("log_reps_side", side=words.text(side))
            fields.append(LogField(f"reps_{side}", label, "count", unit, asked))
    else:
        fields.append(LogField(kind, words.line(key), "count", unit, asked))
    title = words.line("log_exercise", number=exercise.number, title=_exercise_name(exercise, words))
    return LogEntry(exercise.exercise.id, exercise.number, title, tuple(fields))


def _of_one_side(dose: DoseAmount | None) -> DoseAmount | None:
    """What one side is asked for: 12 in all are 6, and 7 are 3 or 4."""
    if dose is None or dose.counted != "in all":
        return dose
    return replace(dose, low=max(1, dose.low // 2), high=-(-dose.high // 2), counted="each side")


def _asked_count(dose: DoseAmount | None, words: Phrases) -> Line:
    """The bare number that the log asks for; its label says what is counted."""
    if dose is None:
        return ()
    if dose.kind == "reps":
        return (words.count_range(dose.low, dose.high),)
    return _dose_words(dose, words)


def _heading(level: int, content: Line, anchor: str) -> Heading:
    return Heading(level, content, anchor)
