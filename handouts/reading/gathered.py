"""What one reading of a studio has found so far, sound or not."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, ParamSpec, TypeAlias, TypeVar

from handouts.errors import Fault, StudioFaults
from handouts.models import Client, Exercise, LogLine, Plan
from handouts.reading.exercise import FIRST_LANGUAGE
from handouts.reading.text_file import read_text
from handouts.reading.yaml_text import YamlText, read_yaml

Asked = ParamSpec("Asked")
Result = TypeVar("Result")
Place: TypeAlias = tuple[str | int, ...]
"""Keys and list positions from the top of a YAML file."""


@dataclass
class Gathered:
    """Lives for one reading; every dict is by the file's path for messages
    unless it says otherwise.

    texts: by id and language, those without faults of their own.
    text_paths: by id and language, of all texts.
    plan_codes, client_codes: what each file says of itself, as far as can be
        told, also where the rest of it has faults.
    logs: by client code.
    """

    faults: dict[str, list[Fault]] = field(default_factory=dict)
    documents: dict[str, YamlText] = field(default_factory=dict)
    texts: dict[tuple[str, str], Exercise] = field(default_factory=dict)
    text_paths: dict[tuple[str, str], str] = field(default_factory=dict)
    plans: dict[str, Plan] = field(default_factory=dict)
    plan_codes: dict[str, str] = field(default_factory=dict)
    clients: dict[str, Client] = field(default_factory=dict)
    client_codes: dict[str, str] = field(default_factory=dict)
    logs: dict[str, tuple[LogLine, ...]] = field(default_factory=dict)

    def read(self, reader: Callable[Asked, Result], *given: Asked.args, **named: Asked.kwargs) -> Result | None:
        """What a reader gives, or None with its faults noted."""
        try:
            return reader(*given, **named)
        except StudioFaults as problem:
            for fault in problem.faults:
                self.add(fault)
            return None

    def open_yaml(self, path: Path, shown: str) -> YamlText | None:
        document = self.read(lambda: read_yaml(read_text(path, shown), shown))
        if document is not None:
            self.documents[shown] = document
        return document

    def data(self, shown: str) -> dict[str, Any]:
        """What a YAML file or a front matter says, as text; {} when unreadable."""
        document = self.documents.get(shown)
        return document.data if document else {}

    def add(self, fault: Fault) -> None:
        self.faults.setdefault(fault.path, []).append(fault)

    def add_at(self, shown: str, place: Place, wrong: str, instead: str, of_key: bool = False) -> None:
        """A fault at one place of a YAML file, or of the file as a whole when
        the file could not be read."""
        document = self.documents.get(shown)
        self.add(Fault(shown, document.line(place, of_key) if document else 0, wrong, instead))

    def all_faults(self) -> set[Fault]:
        return {fault for faults in self.faults.values() for fault in faults}

    def exercise_ids(self) -> list[str]:
        """Of all exercises, sound or not."""
        return [id for id, language in self.text_paths if language == FIRST_LANGUAGE]

    def versions(self, code: str) -> dict[int, str]:
        """Version to path, for one plan."""
        return {plan.facts.version: shown for shown, plan in self.plans.items() if plan.facts.plan == code}

    def unread_plans(self, code: str) -> list[str]:
        """Files that seem to hold a version of this plan and have faults of form."""
        return [
            shown
            for shown, claimed in self.plan_codes.items()
            if shown not in self.plans and claimed.casefold() == code.casefold()
        ]
