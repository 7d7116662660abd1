"""A thousand made-up clients for half a year: what must never happen does not.

What is watched for is reckoned by the simulation itself, from kit and log.
"""

from __future__ import annotations

import datetime
import importlib.util
import random
import re
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from handouts import carried
from handouts.amounts import read_mass
from handouts.models import LogLine
from handouts.progress.next_plan import next_plan
from handouts.reading.plan import plan_from
from handouts.reading.studio import read_studio
from handouts.reading.yaml_text import read_yaml

_PATH = Path(__file__).with_name("simulation.py")


@pytest.fixture(scope="module")
def simulation():
    spec = importlib.util.spec_from_file_location("simulation", _PATH)
    module = importlib.util.module_from_spec(spec)
    sys.modules["simulation"] = module
    spec.loader.exec_module(module)
    yield module
    del sys.modules["simulation"]


@pytest.fixture(scope="module")
def watch(simulation):
    return simulation.simulate_with_all_cores(1000)


def test_nobody_is_given_what_they_must_not_be_given(watch):
    assert watch.broken == []


def test_all_of_it_was_tried(watch):
    """A watch that never saw a raise, a sign or a break has shown nothing."""
    assert watch.counted["reviews"] == 13_000
    assert watch.counted["messages"] > 20_000
    assert watch.counted["reviews in which a warning sign waits"] > 100
    for rule in ("two for two", "repetitions first", "misses", "break", "step back", "shorter rest", "more repetitions", "next band", "longer or farther"):
        assert watch.counted[f"by the rule '{rule}'"] > 20, rule
    assert len(watch.steps) > 1000 and 10 < max(watch.steps) <= 25


def test_the_distribution_is_told_and_drawn(watch, simulation):
    lines = list(simulation.told(watch, 1000))
    assert any(line.startswith("change of the weights at the end, 50 of 100") for line in lines)
    drawing = simulation.picture(watch, 1000)
    assert "<desc>After 26 weeks the middle person" in drawing and drawing.endswith("</svg>\n")


def test_the_documentation_shows_this_course(watch, simulation):
    """Numbers may differ by a twentieth, as sums of fractions do between systems;
    python tests/progress/simulation.py with --picture and --table writes them anew."""
    root = Path(__file__).parents[2]
    kept = dict(re.findall(r"(?m)^\| ([^|]+) \| ([-+]?\d[\d.]*)(?: %)? \|$", (root / "DEVELOPERS.md").read_text("utf-8")))
    fresh = dict(re.findall(r"(?m)^\| ([^|]+) \| ([-+]?\d[\d.]*)(?: %)? \|$", simulation.table(watch, 1000)))
    assert len(fresh) > 20 and set(fresh) <= set(kept)
    for what, value in fresh.items():
        assert float(kept[what]) == pytest.approx(float(value), rel=0.05, abs=5), what
    drawn = (root / "handouts" / "demo" / "pictures" / "simulation.svg").read_text("utf-8")
    numbers = [re.findall(r"[-+]\d+ ?%|[-+]\d+ and", text) for text in (drawn, simulation.picture(watch, 1000))]
    assert len(numbers[0]) == len(numbers[1]) > 4


def test_the_same_seed_gives_the_same_course(simulation):
    one, other = simulation.simulate(6, seed=1), simulation.simulate(6, seed=1)
    assert (one.counted, one.steps, one.change) == (other.counted, other.steps, other.change)


def test_the_watch_sees_what_it_watches_for(simulation):
    """Plans that break the rules on purpose are noticed, one by one."""
    demo = read_studio(carried.demo_studio(), carried.starter_texts())
    plan = plan_from(read_yaml(simulation.PLANS[0], "plans/S1-v1.yaml"), "plans/S1-v1.yaml")
    person = next(each for each in simulation.people(40, 3) if not each.client.facts.limits and each.client.facts.hands == "both")
    watch = simulation.Watch()
    course = simulation._Course(demo, plan, person, random.Random(1), watch)
    proposed = next_plan(course.studio, course.client, "hold", datetime.date(2029, 1, 2))

    def with_weight(mass):
        group = proposed.session.groups[0]
        exercise = group.exercises[0]
        changed = replace(exercise, loads=(replace(exercise.loads[0], mass=mass),))
        return replace(
            proposed, session=replace(proposed.session, groups=(replace(group, exercises=(changed,)), *proposed.session.groups[1:]))
        )

    course._check(proposed)
    assert watch.broken == []
    course._check(with_weight(read_mass("99 kg")))
    told = " ".join(watch.broken)
    assert "not owned" in told and "a step of" in told and "raised too soon" in told
    watch.broken.clear()
    sign = LogLine(
        line=2, date=datetime.date(2029, 1, 2), plan="S1", version=1, exercise="session", side=None, weight=None, reps=(),
        seconds=None, effort=None, note="", raw="", warning="my knee",
    )  # fmt: skip
    course.lines.append(sign)
    course._check(with_weight(read_mass("99 kg")))
    assert any("waits" in each for each in watch.broken)
    watch.broken.clear()
    course.client = course.client.model_copy(update={"facts": course.client.facts.model_copy(update={"minutes": 60})})
    course._check(replace(proposed, session=replace(proposed.session, expected_seconds=proposed.before_session.expected_seconds + 61)))
    assert any(each.endswith("and there are 60") for each in watch.broken)


def test_the_watch_sees_bands_and_lengths(simulation):
    demo = read_studio(carried.demo_studio(), carried.starter_texts())
    plan = plan_from(read_yaml(simulation.PLANS[3], "plans/S1-v1.yaml"), "plans/S1-v1.yaml")
    people = simulation.people(40, 3)
    person = next(each for each in people if len(each.client.facts.kit.bands) == 3 and each.client.facts.hands == "both")
    watch = simulation.Watch()
    course = simulation._Course(demo, plan, person, random.Random(1), watch)
    proposed = next_plan(course.studio, course.client, "hold", datetime.date(2029, 1, 2))
    course._check(proposed)
    assert watch.broken == []
    rows, carry = proposed.session.groups[1:]

    def check(*groups):
        course._check(replace(proposed, session=replace(proposed.session, groups=(proposed.session.groups[0], *groups))))
        told = " ".join(watch.broken)
        watch.broken.clear()
        return told

    def with_band(name):
        exercise = rows.exercises[0]
        return replace(rows, exercises=(replace(exercise, loads=(replace(exercise.loads[0], band=name),)),))

    strongest = person.client.facts.kit.bands[2].name
    assert "a band was left out" in check(with_band(strongest), carry)
    assert "is not owned" in check(with_band("another"), carry)
    exercise = carry.exercises[0]
    longer = replace(carry, exercises=(replace(exercise, dose=replace(exercise.dose, low=36, high=36)),))
    assert "36 s after 30 s" in check(rows, longer)
