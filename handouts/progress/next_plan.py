"""The next version of a plan for one client: what changes in it, and why.

Pure: studio, client, log and day come in; a plan comes out that has been
fitted to the client again, so that no weight is asked for which is not there
and no session gets longer than the client's time.  Where the next load is
written: into the plan version, under `loads`, which is for this client alone.
So an old sheet still finds what it asked for, the new one can say what
changed, and another client of the same plan is not touched.
"""

from __future__ import annotations

import datetime
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Any, TypeAlias, TypeVar

from handouts.amounts import AskedLoad, Dose
from handouts.coaching import timing
from handouts.coaching.care import hold_of
from handouts.coaching.lengths import least
from handouts.coaching.progression import propose
from handouts.coaching.rules import number
from handouts.coaching.standing import Aim, Goal, Proposal, Standing
from handouts.coaching.timing import OwnPace
from handouts.errors import HandoutsError
from handouts.fitting.fit import fit
from handouts.fitting.fitted import FittedSession
from handouts.models import (
    LEVELS,
    AsManyRounds,
    ByLevel,
    Client,
    EveryMinute,
    Level,
    LogLine,
    Model,
    OneOrTwoSided,
    Plan,
    PlanChoice,
    PlanFacts,
    StraightSets,
    Structure,
    Studio,
    TwoSided,
    Work,
)
from handouts.progress.history import (
    SESSION,
    History,
    Placed,
    PlanVersion,
    counts_of,
    history_of,
    pace_of,
    standings,
)

Place: TypeAlias = tuple[str | int, ...]
Changed = TypeVar("Changed", bound=Model)


class NothingNext(HandoutsError):
    """No next plan can be asked for; the message says why."""


@dataclass(frozen=True)
class Edit:
    """One value of a plan file that changes.

    place: keys and list positions from the top; the last is the key.  Where
        the levels have values of their own, the client's level alone changes.
    value: a dose, sets or rounds, or a rest in seconds; None takes the key out.
    """

    place: Place
    value: Dose | int | None

    @property
    def written(self) -> str | int | None:
        """The value as a file has it."""
        if isinstance(self.value, Dose):
            return told_dose(self.value)
        return f"{self.value} s" if self.place[-1] in {*_RESTS.values(), *_RESTS_INSIDE.values()} else self.value


@dataclass(frozen=True)
class Change:
    """One thing that the next plan changes.

    exercise: id, or the ids of a group.
    what: from what to what, in words.
    why, rule, warning: as in Proposal.
    load: (id of the exercise, its load), where a weight changes.
    edits: where anything else of the plan changes.
    harder: whether the client has to do more.
    always: whether it is made however many changes are asked for.
    """

    exercise: str
    what: str
    why: str
    rule: str
    warning: str = ""
    load: tuple[str, OneOrTwoSided] | None = None
    edits: tuple[Edit, ...] = ()
    harder: bool = False
    always: bool = False


@dataclass(frozen=True)
class Kept:
    """One exercise that stays as it is, and why."""

    exercise: str
    why: str
    rule: str


@dataclass(frozen=True)
class NextPlan:
    """before: the version that the client follows.
    facts: of the next version, whole.
    session, before_session: both fitted.
    waits: warning signs without an answer; then nothing may change.
    unread: lines of the log without a day or an exercise.
    """

    client: Client
    aim: Aim
    before: Plan
    facts: PlanFacts
    changes: tuple[Change, ...]
    kept: tuple[Kept, ...]
    session: FittedSession
    before_session: FittedSession
    waits: tuple[LogLine, ...] = ()
    unread: tuple[LogLine, ...] = ()

    @property
    def target(self) -> str:
        """The target time where the aim is to be faster, a full sentence; "" else."""
        if self.aim != "faster" or not any(change.harder for change in self.changes):
            return ""
        takes, took = self.session.expected_seconds, self.before_session.expected_seconds
        return f"Target: the same loads and repetitions in {timing.clock(takes)}, {timing.clock(took - takes)} less than before."


def next_plan(
    studio: Studio,
    client: Client,
    aim: Aim,
    today: datetime.date,
    plan: str = "",
    every: bool = False,
    fitted: Mapping[PlanVersion, FittedSession] = MappingProxyType({}),
) -> NextPlan:
    """What the rules propose next.

    today: the day of the new version; a log that goes on after it moves it.
    plan: the code of the plan, where the client follows several.
    every: make all changes that were earned in place of one.
    fitted: as in `history_of`.
    Raises NothingNext where there is no such plan, or a later version waits.
    """
    history = history_of(studio, client, today, fitted)
    key = _chosen(history, plan)
    before = studio.plans[key]
    day = max([today, *(line.date for line in history.lines[-1:] if line.date)])
    session = _at_pace(history.sessions[key], pace_of(history))
    waits = hold_of(studio.logs.get(client.facts.code, ()))
    if waits is not None:
        return NextPlan(client, aim, before, before.facts, (), (), session, session, waits.warnings, history.unread)
    facts = _named(studio, client, before, day)
    wanted, kept = _wanted(history, before, session, aim, day)
    changes, left = _one_at_a_time(wanted, every)
    remade = _remade(studio, history, before, facts, today)
    changes, refused, new = _fitting(changes, remade, session)
    return NextPlan(
        client, aim, before, new.plan.facts, changes, (*kept, *left, *refused), new, session, (), history.unread
    )


def _chosen(history: History, plan: str) -> PlanVersion:
    code = history.client.facts.code
    follows = [key for key in history.current if plan in ("", key[0])]
    if not follows:
        raise NothingNext(f"{code} does not follow a plan '{plan}'; write one of: {', '.join(key[0] for key in history.current)}")
    if len(follows) > 1:
        codes = ", ".join(key[0] for key in follows)
        raise NothingNext(f"{code} follows several plans; choose one with --plan: {codes}")
    return follows[0]


def _named(studio: Studio, client: Client, before: Plan, day: datetime.date) -> PlanFacts:
    """The version before with the new one's names and dates, and no note.

    A plan that somebody else follows too gets a code of its own, with this
    client's code behind.
    """
    facts, code = before.facts, client.facts.code
    shared = any(
        choice.plan == facts.plan for other in studio.clients.values() if other != client for choice in other.facts.plans
    )
    own = facts.plan if facts.client == code or not shared else f"{facts.plan}-{code}"
    version = facts.version + 1
    if len(own) > 40:
        raise NothingNext(f"the code '{own}' is longer than 40 characters; give the plan or the client a shorter code")
    if (own, version) in studio.plans:
        written = studio.plans[own, version].path
        raise NothingNext(
            f"{written} holds version {version} of {own} already; let {client.path} name it, or take that file away first"
        )
    review = day + (facts.review_by - facts.date) if facts.review_by else None
    return facts.model_copy(
        update={
            "plan": own,
            "version": version,
            "client": code,
            "after": PlanChoice(plan=facts.plan, version=facts.version),
            "date": day,
            "review_by": review,
            "note": None,
        }
    )


# --- what is wanted ------------------------------------------------------------------


def _wanted(
    history: History, plan: Plan, session: FittedSession, aim: Aim, day: datetime.date
) -> tuple[list[Change], list[Kept]]:
    """Every change that the rules propose, in the order of the session."""
    changes: list[Change] = []
    kept: list[Kept] = []
    nothing_harder = _nothing_harder(history)
    works, twice = _works(plan.facts)
    kept += [Kept(name, "it stands in the plan more than once; change it by hand.", "one change") for name in twice]
    for placed in standings(history, session, works):
        if placed.load.asked is not None and placed.load.asked.kind in ("percent", "effort"):
            goes_by = f"its weight goes by '{placed.load.asked}'; write a new best set in {history.client.path}."
            kept.append(Kept(placed.standing.exercise, goes_by, "two for two"))
            continue
        proposal = propose(placed.standing, aim, day, nothing_harder)
        change = _change(placed, proposal, session)
        standing = placed.standing
        told = standing.held or standing.band or standing.kind != "reps" or (aim != "hold" and proposal.rule in _BACK)
        if change is None and told:
            kept.append(Kept(placed.standing.exercise, proposal.why, proposal.rule))
        elif change is not None:
            changes.append(change)
    if aim == "faster":
        quicker, why = _faster(history, plan.facts, session, nothing_harder, day)
        changes += quicker
        kept = [each for each in kept if each.rule != "one change"]
        if why:
            kept.append(why)
    return changes, kept


def _works(facts: PlanFacts) -> tuple[dict[str, tuple[Place, Work]], tuple[str, ...]]:
    """The exercises that stand in the session once, by id; ids of the others."""
    placed: list[tuple[Place, Work]] = []
    for at, structure in enumerate(facts.session):
        if isinstance(structure, StraightSets):
            placed.append((("session", at), structure))
        else:
            placed += [(("session", at, "exercises", turn), work) for turn, work in enumerate(structure.exercises)]
    ids = [work.exercise for _, work in placed]
    once = {work.exercise: (place, work) for place, work in placed if ids.count(work.exercise) == 1}
    return once, tuple(dict.fromkeys(name for name in ids if name not in once))


def _nothing_harder(history: History) -> str:
    """Why nothing may get harder, by the latest session's effort; "" where it may."""
    efforts = [line for line in history.lines if line.exercise == SESSION and line.effort is not None]
    if not efforts:
        return ""
    last, cap = efforts[-1], history.client.facts.effort_cap
    assert last.effort is not None
    most = cap if cap is not None else number("too hard", "effort") - 1
    if last.effort <= most:
        return ""
    bound = f"the client's cap of {cap}" if cap is not None else f"{most} of 10"
    return f"the effort of {last.effort} in {history.log}:{last.line} is above {bound}, so nothing gets harder"


def _change(placed: Placed, proposal: Proposal, session: FittedSession) -> Change | None:
    standing = placed.standing
    if proposal.move in ("hold", "ask"):
        return None
    what: list[str] = []
    load: tuple[str, OneOrTwoSided] | None = None
    edits: tuple[Edit, ...] = ()
    if proposal.load is not None and proposal.load != standing.load:
        load = (placed.exercise.exercise.id, _load(placed, proposal))
        what.append(f"{proposal.load} in place of {standing.load or 'none'}")
    if proposal.band:
        load = (placed.exercise.exercise.id, AskedLoad("band", name=proposal.band))
        what.append(f"band '{proposal.band}' in place of '{standing.band}'")
    if proposal.goal is not None and proposal.goal != standing.goal and not standing.goal_stays:
        edits = tuple(_dose_edits(placed, proposal.goal, session))
        if edits:
            what.append(_goals(standing, proposal.goal))
    if not what:
        return None
    return Change(
        standing.exercise,
        ", ".join(what),
        proposal.why,
        proposal.rule,
        proposal.warning,
        load,
        edits,
        harder=proposal.harder,
        always=proposal.rule in _BACK,
    )


_BACK = ("break", "misses")
"""Rules whose changes are always made, and always told."""


def _goals(standing: Standing, goal: Goal) -> str:
    """ "12 to 16 repetitions in place of 10", "35 s in place of 30 s"."""
    return f"{standing.dose(goal)} in place of {standing.told(standing.goal) if standing.goal else 'none'}"


def _load(placed: Placed, proposal: Proposal) -> OneOrTwoSided:
    """The new load as a file has it; the other side keeps its own."""
    loads = placed.exercise.loads
    each = placed.load.held == "each hand"
    new = AskedLoad("mass", mass=proposal.load, each=each)
    if len(loads) == 1 and placed.load.side is None:
        return new
    sides = {load.side: load.asked for load in loads if load.side} | {placed.load.side: new}
    return TwoSided(left=sides.get("left"), right=sides.get("right"))


def _dose_edits(placed: Placed, goal: Goal, session: FittedSession) -> Iterator[Edit]:
    work, dose = placed.work, placed.exercise.dose
    if work.dose is None or dose is None:
        return
    planned = work.dose.at(session.level)
    new = replace(planned, low=goal[0] * placed.scale, high=goal[1] * placed.scale)
    yield Edit((*placed.place, "dose"), new)
    usual = work.usual_dose or planned
    if new.high != usual.high:
        if work.usual_dose is None:
            yield Edit((*placed.place, "usual dose"), usual)
    elif work.usual_dose is not None:
        yield Edit((*placed.place, "usual dose"), None)


def told_dose(dose: Dose) -> str:
    """A dose as a file has it."""
    count = str(dose.low) if dose.low == dose.high else f"{dose.low}-{dose.high}"
    unit = {"reps": "reps", "time": "s", "distance": "m"}[dose.kind]
    return f"{count} {unit}{' ' if dose.counted else ''}{dose.counted}"


_ROUNDS = {"straight sets": "sets", "superset": "rounds", "circuit": "rounds", "intervals": "rounds"}
_RESTS = {"straight sets": "rest", "superset": "rest after", "circuit": "round rest", "intervals": "round rest"}
_RESTS_INSIDE = {"superset": "rest inside", "circuit": "station rest", "intervals": "rest"}


def _faster(
    history: History, facts: PlanFacts, session: FittedSession, nothing_harder: str, day: datetime.date
) -> tuple[list[Change], Kept | None]:
    """Shorter rests, from the last group upward: the main exercises come first
    and keep their rest longest.  Those between exercises and stations come
    after those between sets and rounds."""
    shortest, change = number("shorter rest", "shortest"), session.change_over
    why = nothing_harder or _missed(history, session, day)
    if why:
        return [], Kept("session", f"{why}.", "shorter rest")
    done = [line for line in history.lines if _of(line, session) and _done(line)]
    cited = f"{history.log}:{done[-1].line}"
    changes = [
        *_shorter(facts, session, _RESTS, "shorter rest", shortest, cited),
        *_shorter(facts, session, _RESTS_INSIDE, "shorter change", change, cited),
    ]
    none = f"no rest between sets or rounds is above {shortest} s, and none between exercises above {change} s."
    return changes, None if changes else Kept("session", none, "shorter rest")


def _shorter(
    facts: PlanFacts, session: FittedSession, keys: Mapping[str, str], rule: str, shortest: int, cited: str
) -> Iterator[Change]:
    """keys: of the rest that is meant, by structure.  shortest: never under it."""
    for at, structure in reversed(list(enumerate(facts.session))):
        key = keys.get(structure.structure)
        if key is None or (rule == "shorter rest" and _rounds(structure, session) < 2):
            continue
        rest: int = getattr(structure, key.replace(" ", "_")).at(session.level)
        new = max(rest - number(rule, "step"), shortest)
        if new >= rest:
            continue
        between = "" if rule == "shorter rest" else " between exercises"
        yield Change(
            _ids(structure),
            f"rest{between} of {new} s in place of {rest} s",
            f"no set was missed in the session of {cited}; weights and repetitions stay.",
            rule,
            edits=(Edit(("session", at, key), new),),
            harder=True,
        )


def _done(line: LogLine) -> bool:
    return bool(line.reps or line.seconds or line.metres) and line.exercise not in ("", SESSION)


def _rounds(structure: Any, session: FittedSession) -> int:
    rounds: int = (structure.sets if isinstance(structure, StraightSets) else structure.rounds).at(session.level)
    return rounds


def _of(line: LogLine, session: FittedSession) -> bool:
    return (line.plan, line.version) == (session.plan.facts.plan, session.plan.facts.version)


def _missed(history: History, session: FittedSession, day: datetime.date) -> str:
    """Why the latest session earns no shorter rest, a clause; "" where it does."""
    lines = [line for line in history.lines if _of(line, session) and _done(line)]
    if not lines:
        return "no session of this version is logged yet"
    away = (day - lines[-1].date).days if lines[-1].date else 0
    if away >= number("break", "days"):
        return f"{away} days lie between {history.log}:{lines[-1].line} and this plan"
    signs = [line for line in history.lines if line.warning]
    if signs and lines[-1].date and signs[-1].date and lines[-1].date <= signs[-1].date:
        return f"no session is logged after the warning sign in {history.log}:{signs[-1].line}"
    doses = {exercise.exercise.id: exercise.dose for group in session.groups for exercise in group.exercises}
    for line in lines:
        dose = doses.get(line.exercise)
        counts = counts_of(history, line, dose)
        if line.date != lines[-1].date or dose is None or not counts:
            continue
        bottom = dose.low if dose.kind == "reps" else least((dose.low, dose.high))
        if min(counts) < bottom:
            return f"{history.log}:{line.line} has {min(counts)} of {line.exercise}, and {bottom} is the bottom of the goal"
    return ""


# --- how much of it -----------------------------------------------------------------


def _one_at_a_time(wanted: Sequence[Change], every: bool) -> tuple[tuple[Change, ...], tuple[Kept, ...]]:
    if every:
        return tuple(wanted), ()
    chosen = [change for change in wanted if change.always]
    if not chosen:
        chosen = list(wanted[:1])
    left = tuple(
        Kept(change.exercise, f"{change.what} can come too, and waits: {change.why}", "one change")
        for change in wanted
        if change not in chosen
    )
    return tuple(change for change in wanted if change in chosen), left


Remake: TypeAlias = Callable[[Sequence[Change]], FittedSession]


def _remade(studio: Studio, history: History, before: Plan, facts: PlanFacts, today: datetime.date) -> Remake:
    pace = pace_of(history)

    def remake(changes: Sequence[Change]) -> FittedSession:
        changed = applied(facts, changes, history.client.facts.level)
        plan = Plan(path=before.path, facts=changed)
        session = fit(history.client, plan, studio.exercises, studio.facts, None, today)
        return _at_pace(session, pace)

    return remake


def _at_pace(session: FittedSession, pace: OwnPace | None) -> FittedSession:
    return replace(session, expected_seconds=pace.seconds(session.total_seconds)) if pace else session


def _fitting(
    changes: tuple[Change, ...], remake: Remake, before: FittedSession
) -> tuple[tuple[Change, ...], tuple[Kept, ...], FittedSession]:
    """The changes that the client's kit, limits and time allow, and the session
    with them."""
    refused: list[Kept] = []
    unchanged = remake(())
    while True:
        session = remake(changes)
        trouble = next((change for change in changes if change.load and not _met(change, session)), None)
        if trouble is not None:
            why = f"{trouble.what} does not fit the client's limits or kit, so it stays: {trouble.why}"
            refused.append(Kept(trouble.exercise, why, "own weights"))
        elif changes and _too_long(session, unchanged):
            harder = [change for change in changes if change.harder]
            if not harder:
                return _with_room(changes, remake, unchanged, refused)
            trouble = harder[-1]
            took, has = timing.clock(session.expected_seconds), timing.clock(before.client.facts.minutes or 0)
            why = f"{trouble.what} would make the session {took}, and the client has {has}, so it stays."
            refused.append(Kept(trouble.exercise, why, "own time"))
        else:
            return changes, tuple(refused), session
        changes = tuple(change for change in changes if change is not trouble)


def _with_room(
    changes: tuple[Change, ...], remake: Remake, unchanged: FittedSession, refused: Sequence[Kept]
) -> tuple[tuple[Change, ...], tuple[Kept, ...], FittedSession]:
    """A step back stays even where it takes time, such as for other plates: a
    set or a round less makes room, from the last group upward."""
    session = remake(changes)
    for at, structure in reversed(list(enumerate(unchanged.plan.facts.session))):
        if not _too_long(session, unchanged):
            break
        if isinstance(structure, AsManyRounds | EveryMinute) or _rounds(structure, unchanged) < 2:
            continue
        key, less = _ROUNDS[structure.structure], _rounds(structure, unchanged) - 1
        cut = Change(
            _ids(structure),
            f"{less} {key} in place of {less + 1}",
            "the step back takes time to set up, and this makes room for it.",
            "own time",
            edits=(Edit(("session", at, key), less),),
            always=True,
        )
        changes = (*changes, cut)
        session = remake(changes)
    return changes, tuple(refused), session


def _ids(structure: Structure) -> str:
    works = (structure,) if isinstance(structure, StraightSets) else structure.exercises
    return ", ".join(work.exercise for work in works)


def _met(change: Change, session: FittedSession) -> bool:
    """Whether the weight or the band that a change asks for is the one on the sheet."""
    assert change.load is not None
    name, new = change.load
    for group in session.groups:
        for exercise in group.exercises:
            if exercise.exercise.id == name and isinstance(new, AskedLoad) and new.kind == "band":
                return all(load.band == new.name for load in exercise.loads)
            if exercise.exercise.id == name:
                return all(
                    load.asked is None or load.asked.mass is None or load.mass == load.asked.mass for load in exercise.loads
                )
    return False


def _too_long(session: FittedSession, without: FittedSession) -> bool:
    """Whether a session is longer than the client's time, and than it was."""
    minutes = session.client.facts.minutes
    return (
        minutes is not None
        and session.expected_seconds > minutes
        and session.expected_seconds > without.expected_seconds
    )


# --- from changes to a plan -----------------------------------------------------------


def applied(facts: PlanFacts, changes: Sequence[Change], level: Level) -> PlanFacts:
    """The plan with its changes, as it will be read from its file."""
    loads = {**facts.loads, **{change.load[0]: change.load[1] for change in changes if change.load}}
    session = list(facts.session)
    for change in changes:
        for edit in change.edits:
            at = int(edit.place[1])
            session[at] = _edited(session[at], edit.place[2:], edit.value, level)
    return facts.model_copy(update={"loads": loads, "session": tuple(session)})


def _edited(structure: Structure, place: Place, value: Dose | int | None, level: Level) -> Structure:
    if len(place) == 3:
        turn = int(place[1])
        works = list(structure.exercises)  # type: ignore[union-attr]
        works[turn] = _with(works[turn], str(place[2]), value, level)
        return structure.model_copy(update={"exercises": tuple(works)})
    return _with(structure, str(place[0]), value, level)


def _with(model: Changed, key: str, value: Dose | int | None, level: Level) -> Changed:
    """A part of a plan with one key changed: for all levels where they were
    alike, else for one."""
    name = key.replace(" ", "_")
    old = getattr(model, name)
    if isinstance(old, ByLevel):
        levels = levels_changed(old, level)
        value = old.model_copy(update={f"level_{number}": value for number in levels})  # type: ignore[assignment]
    return model.model_copy(update={name: value})


def levels_changed(values: ByLevel[Any], level: Level) -> tuple[Level, ...]:
    """The levels that a change concerns: all where they are alike."""
    alike = len({values.at(each) for each in LEVELS}) == 1
    return LEVELS if alike else (level,)
