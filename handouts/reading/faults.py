"""From what pydantic found to what a trainer reads: file, line, wrong, instead.

The models know the shapes of the files; this room words their refusals and
finds the valid name that is nearest to the one that was written.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Sequence
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from handouts.amounts import quoted
from handouts.errors import Fault, StudioFaults
from handouts.reading.yaml_text import YamlText

Shape = TypeVar("Shape", bound=BaseModel)

_FEW = 12
"""So many valid names are told in full; more would drown the message."""


def nearest(word: str, names: Iterable[str]) -> str | None:
    """The name that is most like `word`, upper and lower case being equal;
    None when none is like it."""
    by_folded = {name.casefold(): name for name in names}
    found = difflib.get_close_matches(word.casefold(), by_folded, n=1, cutoff=0.6)
    return by_folded[found[0]] if found else None


def find_suggestion(word: str, names: Iterable[str]) -> str:
    """ "; did you mean 'goblet-squat'?" or "" when no name is near."""
    near = nearest(word, names)
    return f"; did you mean '{near}'?" if near else ""


def instead_of(word: str, names: Sequence[str], otherwise: str) -> str:
    """What to write instead of an unknown name: the nearest, or all if few.

    otherwise: what to do when no name is near and there are too many to tell.
    """
    near = nearest(word, names)
    if near:
        return f"did you mean '{near}'?"
    if names and len(names) <= _FEW:
        return f"write {_one_of(names)}"
    return otherwise


def _one_of(names: Sequence[str]) -> str:
    shown = [f"'{name}'" for name in names]
    return shown[0] if len(shown) == 1 else f"{', '.join(shown[:-1])} or {shown[-1]}"


def shape(model: type[Shape], document: YamlText, shown: str) -> Shape:
    """The document as a model.

    Raises StudioFaults with every fault that the model finds.
    """
    try:
        # Only the keys as documented: "rest inside", never "rest_inside".
        return model.model_validate(document.data, by_alias=True, by_name=False)
    except ValidationError as problem:
        faults = {_fault(model, document, shown, error) for error in problem.errors(include_url=False)}
        raise StudioFaults(tuple(faults)) from None


def _fault(model: type[BaseModel], document: YamlText, shown: str, error: ErrorDetails) -> Fault:
    place = error["loc"]
    wrong, instead = _worded(model, error)
    return Fault(shown, document.line(place, of_key=error["type"] == "extra_forbidden"), wrong, instead)


def _worded(model: type[BaseModel], error: ErrorDetails) -> tuple[str, str]:
    """What is wrong and what to write instead, for one of pydantic's errors."""
    kind, place, given = error["type"], error["loc"], error["input"]
    context = error.get("ctx", {})
    key = next((str(step) for step in reversed(place) if isinstance(step, str)), "")
    if kind == "value_error":
        wrong, _, instead = str(context["error"]).rpartition("; ")
        inside = _is_in_file(key, wrong)
        return (wrong if inside else f"'{key}': {wrong}"), instead
    if kind == "missing":
        example = _example(_schema_at(model, place))
        return f"'{place[-1]}' is missing", f"write a line '{place[-1]}: {example}'"
    if kind == "extra_forbidden":
        names = _keys(_schema_at(model, place[:-1]))
        if str(place[-1]).replace("_", " ") in names:
            return f"there is no key {quoted(str(place[-1]))}", f"did you mean '{str(place[-1]).replace('_', ' ')}'?"
        return f"there is no key {quoted(str(place[-1]))} at this place", instead_of(
            str(place[-1]), names, f"the keys are {', '.join(names)}" if names else "take it out"
        )
    if kind in ("literal_error", "union_tag_invalid"):
        return _wrong_choice(model, error, key)
    if kind == "union_tag_not_found":
        return (
            f"{context['discriminator']} is missing",
            f"write a line {str(context['discriminator']).strip(chr(39))}: " + _one_of(_tags(_schema_at(model, place))),
        )
    if kind == "too_short":
        least = context["min_length"]
        return (
            f"'{key}' holds {context['actual_length'] or 'nothing'}",
            f"write at least {'one item' if least == 1 else f'{least} items'}, each on a line of its own after '- '",
        )
    if isinstance(given, dict | list | tuple | str):
        found = quoted(given) if isinstance(given, str) else "a block of keys" if isinstance(given, dict) else "a list"
        wants_block = kind.startswith(("model", "dict"))
        return f"'{key}': {found} does not fit at this place", (
            "write 'key: value' lines below it, indented" if wants_block else "write one value on the line"
        )
    return f"'{key}': {error['msg']}", "write it as the examples show"


def _is_in_file(key: str, wrong: str) -> bool:
    """Whether the message already names the key, or there is no key to name."""
    return not key or f"'{key}'" in wrong


def _wrong_choice(model: type[BaseModel], error: ErrorDetails, key: str) -> tuple[str, str]:
    schema = _schema_at(model, error["loc"])
    choices: list[str]
    if error["type"] == "union_tag_invalid":
        discriminator = str(error["ctx"]["discriminator"]).strip("'")
        key, given, choices = discriminator, error["ctx"]["tag"], _tags(schema)
    else:
        given = error["input"]
        choices = [str(choice) for choice in schema.get("enum", [])] or _expected(str(error["ctx"]["expected"]))
    if not isinstance(given, str):
        return f"'{key}': a list or a block stands where one word belongs", f"write {_one_of(choices)}"
    if not given:
        return f"'{key}' has no value", f"write {_one_of(choices)}"
    near = nearest(given, choices)
    instead = f"did you mean '{near}'?" if near else f"write {_one_of(choices)}"
    if near and len(choices) <= _FEW:
        instead = f"did you mean '{near}'? It can be {_one_of(choices)}"
    return f"'{key}' cannot be {quoted(given)}", instead


def _expected(listed: str) -> list[str]:
    """Pydantic's "'a', 'b' or 'c'" as names."""
    return [word.strip("' ") for piece in listed.split(", ") for word in piece.split(" or ")]


# --- the model's own JSON Schema tells which names are valid where -------------


def _schema_at(model: type[BaseModel], place: Sequence[str | int]) -> dict[str, Any]:
    """The part of the model's JSON Schema for one place; {} when not found."""
    root = model.model_json_schema(by_alias=True)
    node = _resolve(root, root)
    for step in place:
        node = _resolve(root, _step(root, node, step))
    return node


def _resolve(root: dict[str, Any], node: dict[str, Any]) -> dict[str, Any]:
    while "$ref" in node:
        node = root["$defs"][node["$ref"].rpartition("/")[2]]
    return node


def _step(root: dict[str, Any], node: dict[str, Any], step: str | int) -> dict[str, Any]:
    for branch in _branches(root, node):
        if isinstance(step, int):
            if "items" in branch:
                return branch["items"]
        elif step in branch.get("properties", {}):
            return branch["properties"][step]
        elif step in branch.get("discriminator", {}).get("mapping", {}):
            return {"$ref": branch["discriminator"]["mapping"][step]}
        elif isinstance(branch.get("additionalProperties"), dict):
            return branch["additionalProperties"]
    return node  # a step of pydantic's own that the file does not have


def _branches(root: dict[str, Any], node: dict[str, Any]) -> list[dict[str, Any]]:
    """The node itself, or the alternatives that it stands for."""
    node = _resolve(root, node)
    alternatives = [] if "discriminator" in node else node.get("anyOf", node.get("oneOf", []))
    return [node, *(found for branch in alternatives for found in _branches(root, branch))]


def _keys(schema: dict[str, Any]) -> list[str]:
    found = [schema, *schema.get("anyOf", []), *schema.get("oneOf", [])]
    return [key for branch in found for key in branch.get("properties", {})]


def _tags(schema: dict[str, Any]) -> list[str]:
    return list(schema.get("discriminator", {}).get("mapping", {}))


def _example(schema: dict[str, Any]) -> str:
    if "examples" in schema:
        return str(schema["examples"][0])
    if "enum" in schema:
        return str(schema["enum"][0])
    for branch in schema.get("anyOf", schema.get("oneOf", [])):
        return _example(branch)
    return "..."
