"""JSON Schemas of the files, so that an editor can help while one writes.

An editor that knows YAML and JSON Schema (draft 2020-12) offers the keys and
choices of a file and marks wrong ones.  The reader here stays the judge: it
checks amounts and names, which a schema cannot.
"""

from __future__ import annotations

import re
from typing import Any, Literal, TypeAlias, get_args

from pydantic import BaseModel

from handouts.models import ClientFacts, ExerciseFacts, ExerciseWords, PlanFacts, StudioFacts

FileKind: TypeAlias = Literal["exercise", "exercise words", "plan", "client", "studio"]
FILE_KINDS: tuple[FileKind, ...] = get_args(FileKind)

_MODELS: dict[FileKind, type[BaseModel]] = {
    "exercise": ExerciseFacts,
    "exercise words": ExerciseWords,
    "plan": PlanFacts,
    "client": ClientFacts,
    "studio": StudioFacts,
}

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def json_schema(kind: FileKind) -> dict[str, Any]:
    """The JSON Schema of one kind of file; of a text, of its front matter.

    kind: "exercise words" is a text in another language than English.
    """
    schema = _MODELS[kind].model_json_schema(by_alias=True)
    for block in (schema, *schema.get("$defs", {}).values()):
        _describe_keys(block)
    return {"$schema": DIALECT, **schema}


_FIELD = re.compile(r"([a-z_]+(?:, [a-z_]+)*): (.+)")


def _describe_keys(block: dict[str, Any]) -> None:
    """Move what a docstring says of each field to the key that it is about."""
    about: list[str] = []
    names: list[str] = []
    for line in block.get("description", "").splitlines():
        field = _FIELD.fullmatch(line)
        if field:
            names = [name for name in field[1].split(", ") if _key(block, name)]
        if field and names:
            for name in names:
                _key(block, name)["description"] = field[2]
        elif names and line.startswith(" "):
            for name in names:
                _key(block, name)["description"] += " " + line.strip()
        else:
            names = []
            about.append(line)
    if about:
        block["description"] = "\n".join(about).strip()


def _key(block: dict[str, Any], field: str) -> dict[str, Any]:
    """The schema of the key that a field is read from; {} when there is none."""
    keys = block.get("properties", {})
    return next((keys[key] for key in (field, field.replace("_", " "), field.replace("_", "-")) if key in keys), {})
