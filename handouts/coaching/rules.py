"""The table of rules by which a next plan is proposed: `progression.yaml`."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from pathlib import Path
from types import MappingProxyType

from handouts.errors import Fault, StudioFaults
from handouts.models import MapOf, Model, Whole, Words
from handouts.reading.faults import shape
from handouts.reading.text_file import read_text
from handouts.reading.yaml_text import read_yaml

_TABLE = Path(__file__).with_name("progression.yaml")

_COUNTED: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "two for two": ("sessions", "above"),
        "usual step": ("per cent",),
        "largest step": ("per cent",),
        "repetitions first": ("most", "bottom"),
        "more repetitions": ("step",),
        "misses": ("sessions",),
        "step back": ("least", "most"),
        "break": ("days",),
        "next band": ("sessions", "above", "per cent"),
        "longer or farther": ("sessions", "step", "most", "per cent"),
        "warning sign": (),
        "too hard": ("effort",),
        "unknown": (),
        "shorter rest": ("step", "shortest"),
        "shorter change": ("step",),
        "one change": (),
        "own weights": (),
        "own time": (),
    }
)
"""The rules, and the numbers that each of them must have."""


class Rule(Model):
    """One rule.

    says: in words, for the trainer.
    numbers: by name; the words name their units.
    source: where it comes from, "common practice" or "from memory".
    """

    says: Words
    numbers: MapOf[Whole] = {}
    source: Words


class _Table(Model):
    rules: MapOf[Rule]


def read_rules(path: Path = _TABLE) -> Mapping[str, Rule]:
    """The rules by name, in the order of the file.

    Raises StudioFaults with every fault of the file.
    """
    rules = shape(_Table, read_yaml(read_text(path, path.name), path.name), path.name).rules
    faults = [
        Fault(path.name, 0, f"the rule '{name}' needs the numbers {', '.join(numbers) or 'none'}", "write them all")
        for name, numbers in _COUNTED.items()
        if name not in rules or tuple(rules[name].numbers) != numbers
    ]
    if faults or set(rules) != set(_COUNTED):
        raise StudioFaults(tuple(faults) or (Fault(path.name, 0, "there is a rule that nothing follows", "take it out"),))
    return MappingProxyType(rules)


@cache
def rules() -> Mapping[str, Rule]:
    """The rules that come with the program."""
    return read_rules()


def number(rule: str, name: str) -> int:
    """A number of a rule: number("two for two", "sessions") is 2."""
    return rules()[rule].numbers[name]
