"""From what pydantic found to what a trainer reads: file, line, wrong, instead.

The models know the shapes of the files; this room words their refusals and
finds the valid name that is nearest to the one that was written.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Sequence
from typing import Any, TypeAlias, TypeVar

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from handouts.amounts import quoted
from handouts.errors import Fault, StudioFaults
from handouts.reading.yaml_text import YamlText

Shape = TypeVar("Shape", bound=BaseModel)

Schema: TypeAlias = dict[str, Any]

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
        errors = problem.errors(include_url=False)
        root = model.model_json_schema(by_alias=True)
        meant = {(*error["loc"][:-1], _meant(root, error)) for error in errors if error["type"] == "extra_forbidden"}
        faults = {_fault(root, document, shown, error) for error in errors if not _follows(error, meant)}
        raise StudioFaults(tuple(faults)) from None


def _follows(error: ErrorDetails, meant: set[tuple[Any, ...]]) -> bool:
    """Whether another fault says it all: a list is only too short because its
    items have faults of their own, or a key is missing because it is misspelt.

    meant: places of the keys that misspelt ones stand for.
    """
    given = error["input"]
    if error["type"] == "too_short":
        return isinstance(given, list) and len(given) >= error["ctx"]["min_length"]
    return error["type"] == "missing" and error["loc"] in meant


def _meant(root: Schema, error: ErrorDetails) -> str | None:
    """The valid key that is nearest to a key that is not valid."""
    key = str(error["loc"][-1])
    names = _keys(_schema_at(root, error["loc"][:-1]))
    return key.replace("_", " ") if key.replace("_", " ") in names else nearest(key, names)


def _fault(root: Schema, document: YamlText, shown: str, error: ErrorDetails) -> Fault:
    place = error["loc"]
    wrong, instead = _worded(root, error, document.last_key(place))
    return Fault(shown, document.line(place, of_key=error["type"] == "extra_forbidden"), wrong, instead)


def _worded(root: Schema, error: ErrorDetails, key: str) -> tuple[str, str]:
    """What is wrong and what to write instead, for one of pydantic's errors.

    key: the nearest key of the file.
    """
    kind, place, given = error["type"], error["loc"], error["input"]
    if kind == "value_error":
        wrong, _, instead = str(error["ctx"]["error"]).rpartition("; ")
        return (wrong if not key or quoted(key) in wrong else f"{quoted(key)}: {wrong}"), instead
    if kind == "missing":
        return f"'{place[-1]}' is missing", _line_for(str(place[-1]), _schema_at(root, place))
    if kind == "extra_forbidden":
        names = _keys(_schema_at(root, place[:-1]))
        near = _meant(root, error)
        instead = f"did you mean '{near}'?" if near else f"the keys are {', '.join(names)}" if names else "take it out"
        return f"there is no key {quoted(str(place[-1]))} at this place", instead
    if kind in ("literal_error", "union_tag_invalid"):
        return _wrong_choice(root, error, key)
    if kind == "union_tag_not_found":
        tag = str(error["ctx"]["discriminator"]).strip("'")
        return f"'{tag}' is missing", f"write a line '{tag}: ...' with {_one_of(_tags(_schema_at(root, place)))}"
    if kind == "too_short":
        least = error["ctx"]["min_length"]
        holds = "nothing" if not given else f"{len(given)} item{'s' if len(given) > 1 else ''}"
        items = "one item" if least == 1 else f"{least} items"
        return f"{quoted(key)} holds {holds}", f"write at least {items}, each on a line of its own after '- '"
    found = quoted(given) if isinstance(given, str) else "a block of keys" if isinstance(given, dict) else "a list"
    found = "nothing" if given == "" else found
    wants_block = kind.startswith(("model", "dict"))
    instead = "write 'key: value' lines below it, indented" if wants_block else "write one value on the line"
    return f"{quoted(key)}: {found} stands where something else belongs", instead


def _line_for(key: str, schema: dict[str, Any]) -> str:
    example = _example(schema)
    if example:
        return f"write a line '{key}: {example}'"
    kinds = [branch.get("type") for branch in _alternatives(schema)]
    if kinds == ["array"]:
        return f"write '{key}:' and below it each item on a line of its own after '- '"
    if kinds == ["object"]:
        return f"write '{key}:' and below it its own lines, indented"
    return f"write a line '{key}: ...'"


def _wrong_choice(root: Schema, error: ErrorDetails, key: str) -> tuple[str, str]:
    schema = _schema_at(root, error["loc"])
    if error["type"] == "union_tag_invalid":
        key = str(error["ctx"]["discriminator"]).strip("'")
        given, choices = error["ctx"]["tag"], _tags(schema)
    else:
        given, choices = error["input"], _choices(schema) or _expected(str(error["ctx"]["expected"]))
    if not isinstance(given, str):
        return f"{quoted(key)}: a list or a block stands where one word belongs", f"write {_one_of(choices)}"
    if not given:
        return f"{quoted(key)} has no value", f"write {_one_of(choices)}"
    near = nearest(given, choices)
    return (
        f"{quoted(key)} cannot be {quoted(given)}",
        f"did you mean '{near}'?" if near else f"write {_one_of(choices)}",
    )


def _expected(listed: str) -> list[str]:
    """Pydantic's "'a', 'b' or 'c'" as names."""
    return [word.strip("' ") for piece in listed.split(", ") for word in piece.split(" or ")]


# --- the model's own JSON Schema tells which names are valid where -------------


def _schema_at(root: Schema, place: Sequence[str | int]) -> Schema:
    """The part of a model's JSON Schema for one place.

    root: the schema of the whole model.  All references are followed; alternatives stand side by side in "anyOf".
    """
    nodes = _branches(root, root)
    for step in place:
        # A step that no branch knows is pydantic's own: the file has none.
        nodes = [found for node in nodes for found in _step(root, node, step)] or nodes
    return nodes[0] if len(nodes) == 1 else {"anyOf": nodes}


def _branches(root: Schema, node: Schema) -> list[Schema]:
    """The node, or each of the alternatives that it stands for."""
    while "$ref" in node:
        node = root["$defs"][node["$ref"].rpartition("/")[2]]
    if "discriminator" in node:
        return [node]
    alternatives = node.get("anyOf") or node.get("oneOf")
    return [found for branch in alternatives for found in _branches(root, branch)] if alternatives else [node]


def _step(root: Schema, node: Schema, step: str | int) -> list[Schema]:
    if isinstance(step, int):
        found = node.get("items")
    elif step in node.get("properties", {}):
        found = node["properties"][step]
    elif step in node.get("discriminator", {}).get("mapping", {}):
        found = {"$ref": node["discriminator"]["mapping"][step]}
    else:
        found = node.get("additionalProperties") or None
    return _branches(root, found) if isinstance(found, dict) else []


def _alternatives(schema: Schema) -> list[Schema]:
    found: list[Schema] = schema.get("anyOf", [schema])
    return found


def _keys(schema: Schema) -> list[str]:
    return [key for branch in _alternatives(schema) for key in branch.get("properties", {})]


def _tags(schema: Schema) -> list[str]:
    mappings = [branch.get("discriminator", {}).get("mapping", {}) for branch in _alternatives(schema)]
    return [tag for mapping in mappings for tag in mapping]


def _choices(schema: Schema) -> list[str]:
    return [str(choice) for branch in _alternatives(schema) for choice in branch.get("enum", [])]


def _example(schema: Schema) -> str:
    examples = [example for branch in _alternatives(schema) for example in branch.get("examples", [])]
    return str((examples or _choices(schema) or [""])[0])
