"""What the fields of a log say, the same in every form that is written on."""

from __future__ import annotations

from dataclasses import dataclass

from handouts.handout import Line, LogEntry, LogField, Text, plain
from handouts.languages import Phrases, joined


@dataclass(frozen=True)
class Asked:
    """What the plan asks for, said once.

    entry: told with the exercise's name; () when the fields tell it.
    fields: (name of a field, what is asked there), for fields that differ
        from a field of the same kind, such as a heavier weight on one side.
    """

    entry: Line
    fields: tuple[tuple[str, Line], ...]

    def of(self, field: LogField) -> Line:
        return dict(self.fields).get(field.name, ())


def asked_of(entry: LogEntry, words: Phrases) -> Asked:
    """Targets of one entry without saying the same thing twice.

    Where right and left ask for the same, the target stands once, beside the
    name of the exercise; where they differ, each stands with its own field.
    """
    by_kind: dict[str, set[Line]] = {}
    for field in entry.fields:
        by_kind.setdefault(field.kind, set()).add(field.target)
    differing = {kind for kind, targets in by_kind.items() if len(targets) > 1}
    own = tuple((field.name, field.target) for field in entry.fields if field.kind in differing and field.target)
    common: Line = ()
    for field in entry.fields:
        if field.target and field.kind in by_kind and field.kind not in differing:
            # Beside its field a bare count is plain; beside a name it needs its unit.
            told = _counted(field, words)
            common = (*common, Text(", "), *told) if common else told
            del by_kind[field.kind]
    return Asked(joined(common), own)


def _counted(field: LogField, words: Phrases) -> Line:
    if field.kind != "count" or field.unit != "reps":
        return field.target
    return words.line("dose_reps", count=1 if plain(field.target) == "1" else 2, reps=field.target)


def unit_of(field: LogField) -> str:
    """The unit to name beside a label; "" where the label says it already."""
    return field.unit if field.kind in ("weight", "time") else ""
