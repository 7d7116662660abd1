"""Made-up clients train for half a year, by log and next, all in memory.

    python tests/progress/simulation.py --clients 1000 --picture FILE.svg

Everything about these people is invented: how strong they are, how fast they
get stronger, how their days differ, what they forget to log.  The figures say
how the rules behave, and nothing about what training does.  What is watched
for stands in `Watch`; it is reckoned here a second time, from the kit and the
log alone, and not by asking the program whether it kept its own rules.
"""

from __future__ import annotations

import argparse
import datetime
import json
import os
import random
import re
import subprocess
import sys
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from statistics import median, quantiles

from handouts import carried
from handouts.amounts import Mass
from handouts.coaching.standing import Aim
from handouts.fitting.fit import fit
from handouts.fitting.fitted import FittedExercise, FittedLoad, FittedSession
from handouts.logbook.message import Known, Message, PlanVersion
from handouts.logbook.names import names_for
from handouts.logbook.understanding import interpret
from handouts.models import Client, ClientFacts, Kit, LogLine, Plan, PlanChoice, Studio
from handouts.progress.next_plan import NextPlan, next_plan
from handouts.reading.plan import plan_from
from handouts.reading.studio import read_studio
from handouts.reading.yaml_text import read_yaml

WEEKS = 26
FIRST_DAY = datetime.date(2029, 1, 1)

_HEAD = """
plan: S1
version: 1
title: Strength
date: 2029-01-01
review by: 2029-01-29
warm-up:
  time: 5 min
session:
"""
_SQUAT = """
  - structure: straight sets
    exercise: goblet-squat
    sets: 3
    dose: 8-12 reps
    rest: 90 s
"""
_PRESS_AND_ROW = """
  - structure: superset
    rounds: 3
    rest inside: 20 s
    rest after: 75 s
    exercises:
      - exercise: floor-press
        dose: 8-12 reps
      - exercise: one-arm-supported-row
        dose: 10 reps each side
"""
_CURL = """
  - structure: straight sets
    exercise: hammer-curl
    sets: 2
    dose: 16-24 reps in all
    rest: 60 s
"""
_BAND_AND_CARRY = """
  - structure: straight sets
    exercise: seated-band-row
    sets: 2
    dose: 8-12 reps
    rest: 60 s
  - structure: straight sets
    exercise: farmer-carry
    sets: 3
    dose: 30 s
    rest: 60 s
"""
PLANS = (_HEAD + _SQUAT + _PRESS_AND_ROW, _HEAD + _PRESS_AND_ROW, _HEAD + _SQUAT + _CURL, _HEAD + _CURL + _BAND_AND_CARRY)

_BANDS: tuple[list[object], ...] = (
    ["one knot", "two knots", "three knots"],
    [{"name": "thin", "tension": "2-4 kg"}, {"name": "middle", "tension": "3-6 kg"}, {"name": "thick", "tension": "5-10 kg"}],
    ["one knot"],
)

_RACKS: tuple[dict[str, object], ...] = (
    {"dumbbells": [f"2 x {kg} kg" for kg in (*range(1, 11), *range(12, 21, 2), 22.5, 25, 27.5, 30)]},
    {"dumbbells": [f"2 x {lb} lb" for lb in range(5, 85, 5)]},
    {"dumbbells": [f"2 x {lb} lb" for lb in (5, 8, 10, 12, 15)] + ["1 x 20 lb", "1 x 5 kg"]},
    {"dumbbells": [f"2 x {kg} kg" for kg in (2, 3, 4, 5)] + ["1 x 8 kg", "1 x 12 kg"]},
    {"dumbbells": ["2 x 4 kg", "2 x 8 kg", "1 x 16 kg", "1 x 24 kg"]},
    {"adjustable": [{"handles": "2", "handle": "2 kg", "plates": ["8 x 0.5 kg", "8 x 1.25 kg", "8 x 2.5 kg"]}]},
    {"adjustable": [{"handles": "2", "handle": "2 kg", "plates": ["8 x 1.25 lb", "8 x 2.5 lb", "8 x 1 kg", "4 x 5 lb"]}]},
    {"dumbbells": ["1 x 20 lb"], "adjustable": [{"handles": "2", "handle": "4 lb", "plates": ["8 x 2.5 lb", "4 x 5 lb"]}]},
)

# Kilograms of one weight that such a person lifts once: from weak to strong.
_ONCE = {
    "goblet-squat": (14, 60), "floor-press": (6, 40), "one-arm-supported-row": (9, 45), "hammer-curl": (5, 22),
    "farmer-carry": (10, 45),
}  # fmt: skip
_PAIRS = ("floor-press", "hammer-curl", "farmer-carry")
_SIGNS = ("my right knee hurts", "pain in the left shoulder", "felt dizzy", "sharp pain in the lower back")
_AIMS: tuple[Aim, ...] = ("heavier",) * 14 + ("more-reps", "more-reps", "faster", "faster", "easier", "hold")


@dataclass
class Watch:
    """What must never happen, and how often the rest did.

    broken: a sentence for each time that something happened which must not.
    change: change of the weights since the first week, in per cent, by week.
    """

    broken: list[str] = field(default_factory=list)
    counted: Counter[str] = field(default_factory=Counter)
    steps: list[float] = field(default_factory=list)
    change: dict[int, list[float]] = field(default_factory=dict)


@dataclass
class Person:
    """Somebody made up.

    once: kilograms of one weight that they lift once, by exercise.
    spread: repetitions that their strength is worth, 30 by Epley's formula.
    a_week: by how much they get stronger in a week, at first.
    """

    client: Client
    once: dict[str, float]
    spread: float
    a_week: float
    keeps: float
    sessions_a_week: int


def people(count: int, seed: int) -> Iterator[Person]:
    rng = random.Random(seed)
    for number in range(count):
        rack = rng.choice(_RACKS)
        unit = "lb" if " lb" in str(rack).split("plates")[0] else "kg"
        strength = rng.random()
        once = {name: (low + strength * (high - low)) * rng.uniform(0.8, 1.2) for name, (low, high) in _ONCE.items()}
        data: dict[str, object] = {
            "code": f"S{number}", "name": "Somebody", "forms": {"screen": ""}, "units": unit, "place": "gym",
            "pace": rng.choice(("sighted", "by touch")), "plans": [{"plan": "S1", "version": "1"}],
            "kit": {**rack, "bands": rng.choice(_BANDS), "other": ["chair", "lane"]},
            "screening": {"date": "2028-12-20", "by": "Ilse", "outcome": "cleared"},
        }  # fmt: skip
        if rng.random() < 0.7:
            data["minutes"] = f"{rng.randint(20, 36)} min"
        if rng.random() < 0.15:
            data["effort cap"] = str(rng.randint(5, 8))
        if rng.random() < 0.15:
            data["limits"] = [{"heaviest": f"{rng.randint(6, 30)} {unit}"}]
        if rng.random() < 0.08:
            data["hands"] = rng.choice(("left", "right"))
        data["loads"] = dict(_first_loads(Kit.model_validate(data["kit"]), once, unit))
        client = Client(path=f"clients/S{number}.yaml", facts=ClientFacts.model_validate(data))
        yield Person(
            client, once, rng.uniform(24, 38), rng.uniform(0.0, 0.02), rng.uniform(0.7, 1.0), rng.choice((1, 2, 2, 2))
        )


def _first_loads(kit: Kit, once: dict[str, float], unit: str) -> Iterator[tuple[str, str]]:
    """What a careful trainer would begin with: well below the strength there is."""
    factor = 1 / 0.45359237 if unit == "lb" else 1.0
    for name, most in once.items():
        each = " each" if name in _PAIRS else ""
        yield name, f"{max(1, round(most * factor * 0.6))} {unit}{each}"
    yield "seated-band-row", f"band {kit.bands[0].name}"


# --- the course of half a year ---------------------------------------------------------


def simulate(clients: int, seed: int = 20290101, weeks: int = WEEKS, part: int = 0, parts: int = 1) -> Watch:
    """All people one after the other, or each `parts`-th of them; the same seed
    gives the same course."""
    demo = read_studio(carried.demo_studio(), carried.starter_texts())
    plans = [plan_from(read_yaml(text, "plans/S1-v1.yaml"), "plans/S1-v1.yaml") for text in PLANS]
    watch = Watch()
    for number, person in enumerate(people(clients, seed)):
        if number % parts == part:
            rng = random.Random(f"{seed} {number}")
            _Course(demo, plans[number % len(plans)], person, rng, watch).run(weeks)
    return watch


def simulate_with_all_cores(clients: int, seed: int = 20290101) -> Watch:
    """The same course, people shared out among the cores."""
    cores = len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else 1
    if cores == 1:
        return simulate(clients, seed)
    command = [sys.executable, __file__, "--clients", str(clients), "--seed", str(seed), "--parts", str(cores), "--part"]
    root = Path(__file__).parents[2]
    running = [
        subprocess.Popen([*command, str(part)], stdout=subprocess.PIPE, cwd=root, env={**os.environ, "PYTHONPATH": str(root)})
        for part in range(cores)
    ]
    whole = Watch()
    for process in running:
        out, _ = process.communicate()
        if process.returncode != 0:
            raise RuntimeError(f"a part of the simulation ended with {process.returncode}")
        found = json.loads(out)
        whole.broken += found["broken"]
        whole.counted.update(found["counted"])
        whole.steps += found["steps"]
        for week, changes in found["change"].items():
            whole.change.setdefault(int(week), []).extend(changes)
    return whole


class _Course:
    """One person's half year."""

    def __init__(self, demo: Studio, plan: Plan, person: Person, rng: random.Random, watch: Watch):
        self.person, self.rng, self.watch = person, rng, watch
        self.client = person.client
        names = {*_ONCE, "seated-band-row", "standing-wall-press", "sit-to-stand", "seated-press", "suitcase-carry"}
        texts = {key: text for key, text in demo.exercises.items() if key[0] in names and key[1] == "en"}
        self.studio = demo.model_copy(
            update={"clients": {self.client.facts.code: self.client}, "plans": {("S1", 1): plan}, "logs": {}, "exercises": texts}
        )
        self.names = names_for(texts, "en")
        self.current: PlanVersion = ("S1", 1)
        self.lines: list[LogLine] = []
        self.next_line = 2
        self.fitted: dict[PlanVersion, FittedSession] = {}
        self.fitted[self.current] = self._fit(plan)
        self.first = self._weights(self.fitted[self.current])

    def _fit(self, plan: Plan) -> FittedSession:
        return fit(self.client, plan, self.studio.exercises, self.studio.facts, None, FIRST_DAY)

    def run(self, weeks: int) -> None:
        away_from = self.rng.randint(3, weeks) if self.rng.random() < 0.25 else weeks + 9
        away = self.rng.randint(2, 5)
        poorly_from = self.rng.randint(2, weeks) if self.rng.random() < 0.25 else weeks + 9
        strength = 1.0
        for week in range(weeks):
            strength *= 1 + self.person.a_week * (1 - week / (2 * weeks))
            if not away_from <= week < away_from + away:
                for session in range(self.person.sessions_a_week):
                    if self.rng.random() < self.person.keeps:
                        form = 0.75 if poorly_from <= week < poorly_from + 3 else 1
                        self._train(FIRST_DAY + datetime.timedelta(days=7 * week + 2 * session), strength * form)
            else:
                strength *= 0.985
            if week % 2 == 1:
                self._review(FIRST_DAY + datetime.timedelta(days=7 * week + 6))
            self._note_change(week)

    # --- training and logging ----------------------------------------------------------

    def _train(self, day: datetime.date, strength: float) -> None:
        session = self.fitted[self.current]
        pieces = list(self._did(session, strength * self.rng.gauss(1, 0.04)))
        if not pieces:
            return
        if self.rng.random() < 0.6:
            taken = session.total_seconds * self.rng.gauss(1.05, 0.12)
            pieces.append(f"{max(5, round(taken / 60))} min")
        if self.rng.random() < 0.5:
            pieces.append(f"effort {min(10, max(2, round(self.rng.gauss(6.5, 1.3))))}")
        if self.rng.random() < 0.02:
            pieces.append(self.rng.choice(_SIGNS))
        raw = "; ".join(self._slips(pieces))
        stored = self._log(day, raw)
        if not stored and self.rng.random() < 0.7:
            # Asked about what cannot be, the client says it again.
            self._log(day, "; ".join(pieces))
        elif stored and self.rng.random() < 0.02:
            self._log(day, raw)

    def _did(self, session: FittedSession, strength: float) -> Iterator[str]:
        """A slate line for each exercise with one weight: number, weight, counts."""
        for group in session.groups:
            for exercise in group.exercises:
                load, dose = exercise.loads[0] if exercise.loads else None, exercise.dose
                if load is not None and load.band and dose is not None:
                    # Each band is as hard for a person as the one before after a good while.
                    order = [band.name for band in self.client.facts.kit.bands].index(load.band)
                    able = max(1, round(14 + 20 * (strength - 1) - 5 * order + self.rng.gauss(0, 1)))
                    yield f"{exercise.number} {' '.join(str(min(able, dose.high + 5)) for _ in range(group.rounds))}"
                    continue
                if load is not None and load.mass is not None and dose is not None and dose.kind == "time":
                    able = max(5, round(34 * strength * self.rng.gauss(1, 0.06)))
                    told_sets = [str(min(able, dose.high + self.rng.choice((0, 0, 1)))) for _ in range(group.rounds)]
                    yield f"{exercise.number} {str(load.mass).split()[0]} {' '.join(told_sets)}"
                    continue
                if load is None or load.mass is None or dose is None or exercise.exercise.id not in self.person.once:
                    continue
                scale = 2 if dose.counted == "in all" else 1
                once = self.person.once[exercise.exercise.id] * strength
                able = self.person.spread * (once / float(load.mass.kilograms) - 1)
                able = max(0, round(able + self.rng.gauss(0, 1)))
                counts = [min(dose.high // scale, max(0, able - at // 2)) for at in range(group.rounds)]
                counts[-1] = min(able, dose.high // scale + self.rng.choice((0, 1, 2, 2, 3, 4)))
                if max(counts) == 0:
                    continue
                told = [max(1, count) * scale for count in counts]
                if self.rng.random() < 0.08:
                    told = told[-1:]
                if self.rng.random() < 0.98:
                    yield f"{exercise.number} {str(load.mass).split()[0]} {' '.join(map(str, told))}"

    def _slips(self, pieces: list[str]) -> Iterator[str]:
        """What is misheard, mistyped or left out."""
        for piece in pieces:
            words, slip = piece.split(), self.rng.random()
            if not words[0].isdigit() or words[-1] == "min" or slip > 0.03:
                yield piece
            elif slip < 0.01:
                yield " ".join([words[0], words[1][::-1].strip("."), *words[2:]])
            elif slip < 0.02:
                yield f"{piece}2"
            else:
                yield " ".join(words[:2])

    def _log(self, day: datetime.date, raw: str) -> bool:
        known = Known(self.client, self.fitted, (self.current,), self.studio.exercises, tuple(self.lines), day, self.names)
        message = Message(raw, "en", date=day, plan=self.current[0], version=self.current[1])
        understood = interpret(message, known)
        self.watch.counted["messages"] += 1
        if understood.questions:
            self.watch.counted["messages that ask something and store nothing"] += 1
            return False
        self.lines = [line for line in self.lines if line.line not in understood.replaces]
        for line in understood.lines:
            self.lines.append(line.model_copy(update={"line": self.next_line}))
            self.next_line += 1
            self.watch.counted["warning signs"] += bool(line.warning)
        return True

    # --- the trainer's review ------------------------------------------------------------

    def _review(self, day: datetime.date) -> None:
        for at, line in enumerate(self.lines):
            if line.warning and not line.answer and self.rng.random() < 0.6:
                self.lines[at] = line.model_copy(update={"answer": "talked it over; go on as before"})
        self.studio = self.studio.model_copy(update={"logs": {self.client.facts.code: tuple(self.lines)}})
        aim, every = self.rng.choice(_AIMS), self.rng.random() < 0.1
        proposed = next_plan(self.studio, self.client, aim, day, every=every, fitted=self.fitted)
        self.watch.counted["reviews"] += 1
        if proposed.waits:
            self.watch.counted["reviews in which a warning sign waits"] += 1
        self._check(proposed)
        if proposed.changes:
            self._take(proposed)

    def _take(self, proposed: NextPlan) -> None:
        facts = proposed.facts
        for change in proposed.changes:
            self.watch.counted[f"by the rule '{change.rule}'"] += 1
        self.watch.counted["new plans"] += 1
        self.current = facts.plan, facts.version
        plan = Plan(path=f"plans/{facts.plan}-v{facts.version}.yaml", facts=facts)
        follows = (PlanChoice(plan=facts.plan, version=facts.version),)
        self.client = self.client.model_copy(update={"facts": self.client.facts.model_copy(update={"plans": follows})})
        self.studio = self.studio.model_copy(
            update={"plans": {**self.studio.plans, self.current: plan}, "clients": {self.client.facts.code: self.client}}
        )
        self.fitted[self.current] = self._fit(plan)

    # --- what must never happen -----------------------------------------------------------

    def _check(self, proposed: NextPlan) -> None:
        before, after = proposed.before_session, proposed.session
        old, new = self._weights(before), self._weights(after)
        waiting = any(line.warning and not line.answer for line in self.lines)
        for (name, side), mass in new.items():
            was = old.get((name, side))
            if was is None or mass is None:
                continue
            if not self._owned(name, side, mass, after):
                self._broken(f"{name}: {mass} is not owned or not allowed")
            step = float(Fraction(mass.kilograms) / Fraction(was.kilograms)) - 1
            if step > 0:
                self.watch.steps.append(100 * step)
                if step > 0.25:
                    self._broken(f"{name}: a step of {step:.1%}")
                if waiting:
                    self._broken(f"{name}: heavier while a warning sign waits")
                self._check_earned(name, was)
        if waiting and proposed.changes:
            self._broken("a change while a warning sign waits")
        self._check_bands_and_lengths(before, after)
        minutes = self.client.facts.minutes
        if minutes is not None and after.expected_seconds > max(minutes, before.expected_seconds):
            self._broken(f"{after.expected_seconds} s, and there are {minutes}")
        added = [change for change in proposed.changes if change.harder]
        self.watch.counted["plans with more than one harder change"] += len(added) > 1

    def _check_bands_and_lengths(self, before: FittedSession, after: FittedSession) -> None:
        """One band further in order at most, and none that pulls half as much
        again; five seconds more at most, and none above forty."""
        bands = list(self.client.facts.kit.bands)
        names = [band.name for band in bands]
        for (old, was), (new, now) in zip(self._sets(before), self._sets(after), strict=True):
            if now.band and now.band not in names:
                self._broken(f"{new.exercise.id}: the band '{now.band}' is not owned")
            elif now.band and was.band and names.index(now.band) > names.index(was.band):
                lighter, stronger = bands[names.index(was.band)], bands[names.index(now.band)]
                self.watch.counted["stronger bands"] += 1
                if names.index(now.band) > names.index(was.band) + 1:
                    self._broken(f"a band was left out between '{was.band}' and '{now.band}'")
                if lighter.tension and stronger.tension and stronger.tension.high > lighter.tension.high * Decimal("1.5"):
                    self._broken(f"the band '{now.band}' pulls far more than '{was.band}'")
            if new.dose and old.dose and new.dose.kind == "time" and new.dose.high > old.dose.high:
                usual = 30
                if new.dose.high > max(usual, old.dose.high + 5) or new.dose.high > 40:
                    self._broken(f"{new.exercise.id}: {new.dose.high} s after {old.dose.high} s")

    @staticmethod
    def _sets(session: FittedSession) -> list[tuple[FittedExercise, FittedLoad]]:
        return [(exercise, load) for group in session.groups for exercise in group.exercises for load in exercise.loads]

    def _check_earned(self, name: str, was: Mass) -> None:
        """Two sessions in a row at that weight, both after any sign, both far above 10."""
        signs = [line.date for line in self.lines if line.warning and line.exercise in (name, "session") and line.date]
        days: dict[datetime.date, list[LogLine]] = {}
        for line in self.lines:
            if line.exercise == name and line.date and (line.reps or line.weight or line.seconds):
                days.setdefault(line.date, []).append(line)
        latest = sorted(days)[-2:]
        if name in ("farmer-carry", "suitcase-carry"):
            if any((line.seconds or 0) < 3 * 40 for day in latest for line in days[day]) or len(latest) < 2:
                self._broken(f"{name}: raised before 40 s were done twice")
            return
        scale = 2 if name == "hammer-curl" and self.client.facts.hands == "both" else 1
        for day in latest:
            for line in days[day]:
                if line.weight != was or not line.reps or line.reps[-1] < 12 * scale:
                    self._broken(f"{name}: raised after {line.weight} {line.reps} at {was}")
        if len(latest) < 2 or any(sign >= latest[0] for sign in signs):
            self._broken(f"{name}: raised too soon, or after a warning sign")

    def _owned(self, name: str, side: str | None, mass: Mass, session: FittedSession) -> bool:
        kit, pair = self.client.facts.kit, name in _PAIRS and self.client.facts.hands == "both"
        most = [limit.heaviest for limit in self.client.facts.limits if limit.heaviest]
        if any(mass.kilograms * (2 if pair else 1) > limit.kilograms for limit in most):
            return False
        pieces = Counter[Mass]()
        for piece in kit.dumbbells:
            pieces[piece.mass] += piece.count
        if pieces[mass] >= (2 if pair else 1):
            return True
        return any(self._can_be_set(adjustable, mass, 2 if pair else 1) for adjustable in kit.adjustable)

    @staticmethod
    def _can_be_set(adjustable: object, mass: Mass, handles: int) -> bool:
        """Whether plates can be found for the two ends of each handle, by trying."""
        ends = [Decimal(0)]
        for plate in adjustable.plates:  # type: ignore[attr-defined]
            many = plate.count // (2 * handles)
            ends = [end + plate.mass.kilograms * count for end in ends for count in range(many + 1)]
        handle = adjustable.handle  # type: ignore[attr-defined]
        return mass.unit == handle.unit and any(handle.kilograms + 2 * end == mass.kilograms for end in ends)

    def _broken(self, what: str) -> None:
        self.watch.broken.append(f"{self.client.facts.code}, {self.current}: {what}")

    # --- figures -----------------------------------------------------------------------------

    @staticmethod
    def _weights(session: FittedSession) -> dict[tuple[str, str | None], Mass | None]:
        return {
            (exercise.exercise.id, load.side): load.mass
            for group in session.groups
            for exercise in group.exercises
            for load in exercise.loads
        }

    def _note_change(self, week: int) -> None:
        now = self._weights(self.fitted[self.current])
        shares = [
            float(now[key].kilograms / first.kilograms)  # type: ignore[union-attr]
            for key, first in self.first.items()
            if first is not None and now.get(key) is not None
        ]
        if shares:
            self.watch.change.setdefault(week, []).append(100 * (sum(shares) / len(shares) - 1))


# --- telling ---------------------------------------------------------------------------------


def told(watch: Watch, clients: int) -> Iterator[str]:
    """The distribution in whole lines."""
    yield f"{clients} made-up clients, {len(watch.change)} weeks."
    for what, count in sorted(watch.counted.items()):
        yield f"{what}: {count}"
    last = watch.change[max(watch.change)]
    cuts = quantiles(last, n=20)
    for name, value in (("5", cuts[0]), ("25", cuts[4]), ("50", cuts[9]), ("75", cuts[14]), ("95", cuts[18])):
        yield f"change of the weights at the end, {name} of 100 people at most: {value:+.1f} %"
    if watch.steps:
        yield f"raises of a weight: {len(watch.steps)}"
        yield f"raises of up to 10 %: {sum(step <= 10 for step in watch.steps)}"
        yield f"raise in the middle: {median(watch.steps):.1f} %"
        yield f"largest raise: {max(watch.steps):.1f} %"
    yield f"times that something happened which must not: {len(watch.broken)}"
    yield from watch.broken[:10]


def table(watch: Watch, clients: int) -> str:
    """The same as a table for the documentation, between two comments."""
    rows = [line.rpartition(": ")[::2] for line in told(watch, clients) if ": " in line]
    lines = [f"| {what} | {value} |" for what, value in rows]
    return "\n".join(["<!-- simulation -->", f"| {clients:,} made-up clients, {len(watch.change)} weeks | |", "| --- | --- |", *lines, "<!-- end -->"])


def picture(watch: Watch, clients: int) -> str:
    """A drawing: the middle of all people by week, with bands around it."""
    weeks = sorted(watch.change)
    bands = {week: quantiles(watch.change[week], n=20) for week in weeks}
    low, high = min(0.0, *(cuts[0] for cuts in bands.values())), max(cuts[18] for cuts in bands.values()) or 1.0

    def at(week: int, value: float) -> str:
        return f"{70 + 600 * week / max(weeks):.1f},{330 - 290 * (value - low) / (high - low):.1f}"

    def band(inner: int, outer: int) -> str:
        up = [at(week, bands[week][outer]) for week in weeks]
        return " ".join(up + [at(week, bands[week][inner]) for week in reversed(weeks)])

    middle = " ".join(at(week, bands[week][9]) for week in weeks)
    end = bands[max(weeks)]
    title = f"Weights of {clients} made-up clients over {len(weeks)} weeks, as change since the first week"
    told_in_words = (
        f"After {len(weeks)} weeks the middle person lifts {end[9]:+.0f} %. Half of all lie between {end[4]:+.0f} and "
        f"{end[14]:+.0f} %, nine in ten between {end[0]:+.0f} and {end[18]:+.0f} %. The people are invented."
    )
    marks = [0.0, round(high / 2 / 5) * 5.0, float(int(high // 5) * 5)]
    lines = "".join(
        f'<line x1="70" x2="670" y1="{at(0, mark).split(",")[1]}" y2="{at(0, mark).split(",")[1]}" stroke="#555"/>'
        f'<text x="62" y="{float(at(0, mark).split(",")[1]) + 6:.1f}" text-anchor="end">{mark:+.0f} %</text>'
        for mark in marks
    )
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 700 400" role="img" font-family="sans-serif" font-size="18">\n'
        f"<title>{title}</title>\n<desc>{told_in_words}</desc>\n"
        '<rect width="700" height="400" fill="#fff"/>\n'
        f'<polygon points="{band(0, 18)}" fill="#c8d4e8"/>\n<polygon points="{band(4, 14)}" fill="#7f9cc9"/>\n'
        f'<polyline points="{middle}" fill="none" stroke="#0b2a5b" stroke-width="4"/>\n{lines}\n'
        f'<text x="70" y="360">week 1</text><text x="670" y="360" text-anchor="end">week {len(weeks)}</text>\n'
        '<text x="70" y="388">line: middle of all; dark: half of all; light: nine in ten</text>\n</svg>\n'
    )


def main() -> None:
    parser = argparse.ArgumentParser(description="Simulate log and next with made-up clients.")
    parser.add_argument("--clients", type=int, default=1000)
    parser.add_argument("--seed", type=int, default=20290101)
    parser.add_argument("--part", type=int, help="Tell one part of the course alone, as JSON.")
    parser.add_argument("--parts", type=int, default=1, help="How many parts there are.")
    parser.add_argument("--picture", type=Path, help="Write the drawing to this SVG file.")
    parser.add_argument("--table", type=Path, help="Put the table between the comments of this Markdown file.")
    asked = parser.parse_args()
    if asked.part is not None:
        print(json.dumps(vars(simulate(asked.clients, asked.seed, part=asked.part, parts=asked.parts))))
        return
    watch = simulate_with_all_cores(asked.clients, asked.seed)
    for line in told(watch, asked.clients):
        print(line)
    if asked.picture:
        asked.picture.parent.mkdir(parents=True, exist_ok=True)
        asked.picture.write_text(picture(watch, asked.clients), "utf-8")
    if asked.table:
        text = asked.table.read_text("utf-8")
        new = re.sub(r"(?s)<!-- simulation -->.*<!-- end -->", lambda _: table(watch, asked.clients), text)
        asked.table.write_text(new, "utf-8")
    sys.exit(1 if watch.broken else 0)


if __name__ == "__main__":
    main()
