"""Plan files: one version of one plan each."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from handouts.models import EasyPart, Plan, PlanFacts, StraightSets, Work
from handouts.reading.faults import shape
from handouts.reading.yaml_text import YamlText


def plan_from(document: YamlText, shown: str) -> Plan:
    """The plan that a file holds.  shown: its path, relative to the studio.

    Raises StudioFaults with every fault of the file.
    """
    return Plan(path=shown, facts=shape(PlanFacts, document, shown))


@dataclass(frozen=True)
class PlacedWork:
    """One exercise of a plan and where it stands in the file.

    place: keys and list positions from the top.
    """

    work: Work
    place: tuple[str | int, ...]


def all_work(plan: PlanFacts) -> Iterator[PlacedWork]:
    """Every exercise of a plan, warm-up and cool-down included, in order."""
    yield from _easy("warm-up", plan.warm_up)
    for at, structure in enumerate(plan.session):
        if isinstance(structure, StraightSets):
            yield PlacedWork(structure, ("session", at))
        else:
            for number, work in enumerate(structure.exercises):
                yield PlacedWork(work, ("session", at, "exercises", number))
    yield from _easy("cool-down", plan.cool_down)


def _easy(key: str, part: EasyPart | None) -> Iterator[PlacedWork]:
    for number, work in enumerate(part.exercises if part else ()):
        yield PlacedWork(work, (key, "exercises", number))
