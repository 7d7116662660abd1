"""What a client's conditions and circumstances ask of the training.

The table is `care.yaml` beside this module, sourced line by line.  Here its
entries become limits and instructions, and two that ask for opposite things
are found and reported, never weighed against each other.  No name of a
condition leaves this module: messages count the entries of the client's file.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import combinations
from types import MappingProxyType

from handouts.amounts import Mass
from handouts.models import (
    CareAsk,
    CareChoice,
    CareRule,
    CareTable,
    ClientFacts,
    Demand,
    Limit,
    LogLine,
    Side,
)
from handouts.reading.care import read_care_table

INSTRUCTION_OF: Mapping[Demand, str] = MappingProxyType(
    {
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
)
"""What the sheet tells a client who leaves out a demand: key of the language files."""


@cache
def care_table() -> CareTable:
    """The care table that comes with the program."""
    return read_care_table()


# --- from entries to limits -----------------------------------------------------


@dataclass(frozen=True)
class Unasked:
    """Somebody who must be asked first and, by the client's file, was not.

    entry: "care 2", as it is counted in the client's file.
    """

    entry: str
    ask: CareAsk


@dataclass(frozen=True)
class Cared:
    """What all entries and the client's own limits ask for together.

    limits: the client's own first, then those of the entries.
    tells: instructions of the entries, each only once.
    weaker_side: of the client's file or of an entry, None when none is weaker.
    unasked: entries without anybody who was asked.
    opposites: what cannot all be followed, each a clause that names the
        entries; () when there is nothing of the kind.
    """

    limits: tuple[Limit, ...]
    tells: tuple[str, ...]
    weaker_side: Side | None
    unasked: tuple[Unasked, ...]
    opposites: tuple[str, ...]


@dataclass(frozen=True)
class _Asked:
    """One thing that one entry asks for; the other fields are empty."""

    entry: str
    limit: Limit | None = None
    tell: str = ""
    weaker_side: Side | None = None


def care_for(client: ClientFacts, table: CareTable) -> Cared:
    """Everything that this client's limits and cares ask for.

    Raises KeyError for a care that the table does not hold; the reader checks
    names before.
    """
    asked = [
        *(_Asked(f"limit {number}", limit) for number, limit in enumerate(client.limits, 1)),
        *(
            thing
            for number, choice in enumerate(client.care, 1)
            for thing in _asked_by(f"care {number}", choice, table.cares[choice.care])
        ),
    ]
    if client.weaker_side:
        asked.append(_Asked("weaker side", weaker_side=client.weaker_side))
    return Cared(
        limits=tuple(thing.limit for thing in asked if thing.limit),
        tells=tuple(dict.fromkeys(thing.tell for thing in asked if thing.tell)),
        weaker_side=next((thing.weaker_side for thing in asked if thing.weaker_side), None),
        unasked=tuple(
            Unasked(f"care {number}", table.cares[choice.care].ask)
            for number, choice in enumerate(client.care, 1)
            if choice.advised_by is None
        ),
        opposites=tuple(dict.fromkeys(_opposites(asked, table.opposite))),
    )


def _asked_by(entry: str, choice: CareChoice, rule: CareRule) -> Iterator[_Asked]:
    for limit in rule.limits:
        if (limit.demand or limit.not_position or limit.position) not in choice.without:
            yield _Asked(entry, limit)
    for told in rule.tells:
        if told.say not in choice.without:
            yield _Asked(entry, tell=told.say)
    if rule.knee and choice.at_most is not None:
        yield _Asked(entry, Limit(joint="knee", side=choice.side, at_most=choice.at_most))
    if rule.weaker_side and choice.side:
        yield _Asked(entry, weaker_side=choice.side)


def _opposites(asked: Sequence[_Asked], opposite: Iterable[Sequence[str]]) -> Iterator[str]:
    pairs = [frozenset(pair) for pair in opposite]
    for one, other in combinations(asked, 2):
        for first, second in ((one, other), (other, one)):
            if first.limit and second.limit and first.limit.position:
                if second.limit.not_position == first.limit.position:
                    yield (
                        f"{first.entry} allows the position {first.limit.position} alone, "
                        f"and {second.entry} leaves it out"
                    )
                if first is one and second.limit.position not in (None, first.limit.position):
                    yield (
                        f"{first.entry} allows the position {first.limit.position} alone, "
                        f"and {second.entry} {second.limit.position} alone"
                    )
        if frozenset((_told_by(one), _told_by(other))) in pairs:
            yield f"{one.entry} asks for {_told_by(one)}, and {other.entry} for {_told_by(other)}"
        if one.weaker_side and other.weaker_side and one.weaker_side != other.weaker_side:
            yield f"{one.entry} has the {one.weaker_side} as the weaker side, and {other.entry} the {other.weaker_side}"


def _told_by(thing: _Asked) -> str:
    if thing.limit and thing.limit.demand and not thing.limit.with_caution:
        return INSTRUCTION_OF[thing.limit.demand]
    return thing.tell


# --- warning signs in the log ------------------------------------------------------


@dataclass(frozen=True)
class Hold:
    """What is held back until the trainer has answered a warning sign.

    warnings: the lines of the log with a warning and no answer.
    frozen: ids of the exercises that a warning names; none of their weights
        stands.
    lifted: every (exercise, side, weight) logged before the first of the
        warnings.  No other exercise goes above what is there.
    """

    warnings: tuple[LogLine, ...]
    frozen: frozenset[str]
    lifted: tuple[tuple[str, Side | None, Mass], ...]

    def lifted_before(self, exercise: str, side: Side | None) -> Mass | None:
        """The heaviest that was lifted in an exercise, None when nothing was.

        side: of the load; a load or a line without a side stands for both.
        """
        masses = [
            mass
            for name, logged, mass in self.lifted
            if name == exercise and (side is None or logged is None or logged == side)
        ]
        return max(masses, key=lambda mass: mass.kilograms, default=None)


def hold_of(history: Sequence[LogLine]) -> Hold | None:
    """What the log holds back, None when every warning sign has its answer.

    history: lines that count, in the order of the file.
    An answer is written in the log, in the column 'answer' of the line that
    has the warning.
    """
    warnings = tuple(line for line in history if line.warning and not line.answer)
    if not warnings:
        return None
    first = warnings[0].line
    return Hold(
        warnings,
        frozenset(line.exercise for line in warnings) - {"", "session"},
        tuple(
            (line.exercise, line.side, line.weight)
            for line in history
            if line.line < first and line.exercise and line.weight is not None
        ),
    )


# --- names that are never printed ----------------------------------------------------


def names_in(words: str, client: ClientFacts, table: CareTable) -> bool:
    """Whether words for a client's own condition stand in a text, in any language."""
    folded = _folded(words)
    return any(
        _folded(name) in folded
        for choice in client.care
        for names in table.cares[choice.care].names.values()
        for name in names
    )


def _folded(words: str) -> str:
    """Without capitals, in one line, and with one sign for both apostrophes."""
    return " ".join(words.casefold().replace("\u2019", "'").split())
