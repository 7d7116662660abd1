"""What holds for every client, on the whole starter library.

Clients and plans are made up at random; each property is checked here from
the client's file and the texts' own data, apart from the code that fits.
"""

from __future__ import annotations

import datetime
from collections import Counter
from decimal import Decimal
from typing import Any, get_args

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from handouts.amounts import KILOGRAMS_PER_POUND, Mass
from handouts.fitting.fit import fit
from handouts.fitting.fitted import FittedExercise, FittedLoad, FittedSession
from handouts.models import Client, ClientFacts, Demand, KitName, Plan, PlanFacts, Studio
from tests.fitting.making import STUDIO

SECRET = "xylophone-7319"
TODAY = datetime.date(2029, 1, 8)

masses = st.tuples(st.integers(1, 60), st.sampled_from(["kg", "lb"])).map(lambda pair: f"{pair[0] / 2:g} {pair[1]}")
asked_loads = st.one_of(
    masses,
    masses.map(lambda mass: f"{mass} each"),
    st.integers(30, 100).map(lambda percent: f"{percent} % of maximum"),
    st.sampled_from(["by effort", "bodyweight", "band one knot"]),
)
limits = st.one_of(
    st.sampled_from(get_args(Demand)).map(lambda demand: {"demand": demand}),
    st.tuples(st.sampled_from([None, "left", "right"]), st.integers(0, 120)).map(
        lambda knee: {"joint": "knee", "at most": f"{knee[1]} degrees", **({"side": knee[0]} if knee[0] else {})}
    ),
    st.just({"only position": "seated"}),
    masses.map(lambda mass: {"heaviest": mass}),
)
handles = st.fixed_dictionaries(
    {
        "handles": st.sampled_from(["1", "2"]),
        "handle": st.just("2 kg"),
        "plates": st.lists(
            st.tuples(st.integers(1, 9), st.sampled_from(["0.5", "1.25", "2.5"])).map(lambda pair: f"{pair[0]} x {pair[1]} kg"),
            min_size=1, max_size=3,
        ),
    }
)  # fmt: skip
kits = st.fixed_dictionaries(
    {
        "dumbbells": st.lists(st.tuples(st.integers(1, 3), masses).map(lambda pair: f"{pair[0]} x {pair[1]}"), max_size=8),
        "bands": st.lists(st.sampled_from(["one knot", "two knots"]), max_size=2, unique=True),
        "step heights": st.lists(st.sampled_from(["5 cm", "10 cm", "15 cm", "20 cm"]), max_size=2, unique=True),
        "other": st.lists(st.sampled_from(get_args(KitName)), max_size=6, unique=True),
    },
    optional={
        "adjustable": st.lists(handles, min_size=1, max_size=1),
        "cuff": st.sampled_from(["left", "right"]).map(lambda side: {"side": side, "up to": "5 kg", "step": "1 kg"}),
    },
)


@st.composite
def clients(draw: st.DrawFn, names: list[str]) -> Client:
    facts: dict[str, Any] = {
        "code": "T1",
        "name": "Test",
        "forms": {"screen": {}},
        "plans": [{"plan": "T"}],
        "private": SECRET,
        "units": draw(st.sampled_from(["kg", "lb"])),
        "language": draw(st.sampled_from(["en", "fr"])),
        "place": draw(st.sampled_from(["home", "gym"])),
        "level": draw(st.sampled_from(["1", "2", "3"])),
        "pace": draw(st.sampled_from(["sighted", "by touch"])),
        "hands": draw(st.sampled_from(["both", "both", "left", "right"])),
        "kit": draw(kits),
        "limits": draw(st.lists(limits, max_size=3)),
        "loads": draw(
            st.dictionaries(
                st.sampled_from(names), asked_loads | st.fixed_dictionaries({"left": masses, "right": masses}), max_size=5
            )
        ),
        "best sets": draw(
            st.dictionaries(
                st.sampled_from(names),
                st.fixed_dictionaries({"load": masses, "reps": st.integers(1, 30).map(str)}),
                max_size=3,
            )
        ),
        "minutes": draw(st.sampled_from(["10 min", "40 min"])),
    }
    if draw(st.booleans()):
        facts["effort cap"] = str(draw(st.integers(1, 10)))
    return Client(path="clients/T1.yaml", facts=ClientFacts.model_validate(facts))


@st.composite
def plans(draw: st.DrawFn, names: list[str], version: int = 1) -> Plan:
    doses = st.sampled_from(
        ["10 reps", "8-12 reps", "8 reps each side", "12 reps in all", "7 reps in all", "30 s", "20 m", "30 s each side"]
    )
    works = st.fixed_dictionaries(
        {"exercise": st.sampled_from(names), "dose": doses},
        optional={"load": asked_loads, "effort": st.sampled_from(["0 in reserve", "RPE 8", "3 in reserve"])},
    )
    timed = st.fixed_dictionaries({"exercise": st.sampled_from(names)})
    counts = st.integers(1, 4).map(str)
    structures = st.one_of(
        works.flatmap(lambda work: counts.map(lambda sets: {"structure": "straight sets", "sets": sets, "rest": "60 s", **work})),
        st.builds(
            lambda rounds, exercises: {
                "structure": "superset", "rounds": rounds, "rest inside": "20 s", "rest after": "75 s", "exercises": exercises,
            },
            counts, st.lists(works, min_size=2, max_size=3),
        ),
        st.builds(
            lambda rounds, exercises: {
                "structure": "circuit", "rounds": rounds, "station rest": "30 s", "round rest": "90 s", "exercises": exercises,
            },
            counts, st.lists(works, min_size=3, max_size=5),
        ),
        st.builds(
            lambda rounds, exercises: {
                "structure": "intervals", "work": "40 s", "rest": "20 s", "rounds": rounds, "round rest": "60 s", "exercises": exercises,
            },
            counts, st.lists(timed, min_size=1, max_size=4),
        ),
        st.lists(works, min_size=1, max_size=3).map(
            lambda exercises: {"structure": "every minute", "time": "6 min", "exercises": exercises}
        ),
    )  # fmt: skip
    facts: dict[str, Any] = {
        "plan": "T",
        "version": str(version),
        "title": "Test",
        "date": "2029-01-08",
        "session": draw(st.lists(structures, min_size=1, max_size=3)),
    }
    return Plan(path="plans/T.yaml", facts=PlanFacts.model_validate(facts))


def can_be_set(facts: ClientFacts, load: FittedLoad, count: int) -> bool:
    """Whether the handles make this weight with these plates and no others."""
    for made in facts.kit.adjustable:
        total = made.handle.amount + 2 * sum(plate.count * plate.mass.amount for plate in load.plates)
        owned: Counter[Mass] = Counter()
        for plate in made.plates:
            owned[plate.mass] += plate.count
        enough = all(owned[plate.mass] >= 2 * count * plate.count for plate in load.plates)
        if made.handles >= count and load.mass == Mass(total, made.handle.unit) and enough:
            return True
    return False


def everyone(session: FittedSession) -> list[FittedExercise]:
    return [*session.warm_up, *(one for group in session.groups for one in group.exercises), *session.cool_down]


def check(client: Client, plan: Plan, session: FittedSession, texts: dict[tuple[str, str], Any]) -> None:
    facts = client.facts
    owned: Counter[Mass] = Counter()
    for piece in facts.kit.dumbbells:
        owned[piece.mass] += piece.count
    banned = {limit.demand for limit in facts.limits if limit.demand}
    knees = [limit.at_most for limit in facts.limits if limit.at_most is not None]
    for exercise in everyone(session):
        data = texts[exercise.exercise.id, "en"]
        option = data.facts.options.get(exercise.option) if exercise.option else None

        def fact(name: str, data: Any = data, option: Any = option) -> Any:
            changed = getattr(option, name, None) if option else None
            return getattr(data.facts, name) if changed is None else changed

        # No demand that the client leaves out, and no deeper bend of the knee.
        assert set(fact("demands")) & banned <= {"breath_hold_risk"}
        if "breath_hold_risk" in banned & set(fact("demands")):
            assert exercise.cues == ("breath_hold_risk",) and data.part("Breathing")
        for knee in knees:
            assert fact("knee_bend") is None or fact("knee_bend") <= knee
            assert fact("knee_bend") is not None or "deep_knee" not in fact("demands")
        if any(limit.position for limit in facts.limits):
            assert exercise.position == "seated"
        # Nothing that is not there.
        for name in exercise.kit:
            there = {*facts.kit.other, "wall", "towel", "cushion"}
            there |= {"bench", "chair", "mat", "step", "rail", "band", "lane"} if facts.place == "gym" else set()
            there |= {"band"} if facts.kit.bands else set()
            there |= {"step"} if facts.kit.step_heights else set()
            most = max((*owned.values(), *(made.handles for made in facts.kit.adjustable)), default=0)
            there |= {"dumbbell"} if most else set()
            there |= {"pair of dumbbells"} if most >= 2 else set()
            assert name in there
        if exercise.step_height is not None and facts.kit.step_heights:
            assert exercise.step_height in facts.kit.step_heights
            assert exercise.step_height <= fact("step_height")
        # Each weight owned, often enough, and never above what was asked for.
        for load in exercise.loads:
            if facts.hands != "both":
                assert load.held not in ("each hand", "both hands")
                assert load.held != "one hand" or load.side == facts.hands
                assert load.held != "cuff" or load.side != facts.hands
            if load.mass is None:
                continue
            assert load.asked is not None
            if load.held == "cuff":
                assert facts.kit.cuff is not None and load.mass.kilograms <= facts.kit.cuff.up_to.kilograms
            else:
                count = 2 if load.held == "each hand" else 1
                assert owned[load.mass] >= count or can_be_set(facts, load, count)
            for limit in facts.limits:
                if limit.heaviest is not None:
                    held = load.mass.kilograms * (2 if load.held == "each hand" else 1)
                    assert held <= limit.heaviest.kilograms
            if load.asked.mass is not None:
                assert load.mass.kilograms <= load.asked.mass.kilograms * Decimal("1.025")
        if facts.effort_cap is not None and exercise.effort is not None:
            assert exercise.effort.rating <= facts.effort_cap
        assert exercise.dose is None or 1 <= exercise.dose.low <= exercise.dose.high
        # A dose is counted by sides exactly where two sides work.
        if exercise.dose is not None:
            assert (exercise.dose.counted != "") == (len(exercise.sides) == 2)

    numbers = [one.number for group in session.groups for one in group.exercises]
    assert numbers == list(range(1, len(numbers) + 1))
    assert session.main_seconds == sum(group.seconds for group in session.groups) + session.change_over * max(
        len(session.groups) - 1, 0
    )
    # What is planned is either done or told to the trainer.
    done = Counter(one.planned for one in everyone(session))
    for structure in plan.facts.session:
        works = structure.exercises if hasattr(structure, "exercises") else (structure,)
        for work in works:
            assert done[work.exercise] or any(
                remark.strength == "eye" and remark.exercise == work.exercise for remark in session.remarks
            )
    for remark in session.remarks:
        assert SECRET not in remark.what
        assert remark.what.endswith(".") and "None" not in remark.what and "  " not in remark.what


@pytest.fixture(scope="module")
def names(demo: Studio) -> list[str]:
    return sorted(name for name, language in demo.exercises if language == "en")


@settings(max_examples=300, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow])
@given(data=st.data())
def test_every_fitting_keeps_to_the_clients_file(demo: Studio, names: list[str], data: st.DataObject) -> None:
    client = data.draw(clients(names))
    plan = data.draw(plans(names))
    session = fit(client, plan, demo.exercises, STUDIO, None, TODAY)
    check(client, plan, session, demo.exercises)
    assert fit(client, plan, dict(demo.exercises), STUDIO, None, TODAY) == session


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow])
@given(data=st.data())
def test_changes_tell_whether_two_versions_differ(demo: Studio, names: list[str], data: st.DataObject) -> None:
    client = data.draw(clients(names))
    first, second = data.draw(plans(names)), data.draw(plans(names, version=2))
    assert fit(client, first, demo.exercises, STUDIO, first, TODAY).changes == ()
    changes = fit(client, second, demo.exercises, STUDIO, first, TODAY).changes
    before = fit(client, first, demo.exercises, STUDIO, None, TODAY)
    after = fit(client, second, demo.exercises, STUDIO, None, TODAY)
    ids = [Counter(one.exercise.id for group in session.groups for one in group.exercises) for session in (before, after)]
    assert sum(change.kind == "added" for change in changes) == (ids[1] - ids[0]).total()
    assert sum(change.kind == "removed" for change in changes) == (ids[0] - ids[1]).total()


@given(st.integers(1, 600), st.integers(1, 600))
def test_pounds_and_kilograms_compare_exactly(pounds: int, kilograms: int) -> None:
    # The pound of 1959 in whole hundred-millionths of a kilogram: no rounding anywhere.
    heavier = Mass(Decimal(pounds), "lb").kilograms > Mass(Decimal(kilograms), "kg").kilograms
    assert heavier == (pounds * 45_359_237 > kilograms * 100_000_000)
    assert Decimal("0.45359237") == KILOGRAMS_PER_POUND
