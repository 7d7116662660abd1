"""The JSON Schemas, checked with the reference library for Python, jsonschema.

An editor reads YAML by version 1.2 of the language, whose core schema turns
"3" into a number and leaves "yes" and "2029-01-08" words (section 10.3).
"""

import json

import pytest
import yaml
from jsonschema import Draft202012Validator

from handouts import carried
from handouts.reading.schemas import FILE_KINDS, json_schema


class CoreLoader(yaml.SafeLoader):
    """YAML 1.2's core schema, as near as PyYAML's resolvers allow."""


CoreLoader.yaml_implicit_resolvers = {
    letter: [(tag, pattern) for tag, pattern in resolvers if not tag.endswith((":timestamp", ":bool"))]
    for letter, resolvers in yaml.SafeLoader.yaml_implicit_resolvers.items()
}


def front_matter(path):
    return path.read_text("utf-8").split("---\n")[1]


FILES = [
    *(("client", path, path.read_text("utf-8")) for path in carried.demo_studio().glob("clients/*.yaml")),
    *(("client", path, path.read_text("utf-8")) for path in carried.starter_studio().glob("clients/*.yaml")),
    *(("plan", path, path.read_text("utf-8")) for path in carried.demo_studio().glob("plans/*.yaml")),
    *(("plan", path, path.read_text("utf-8")) for path in carried.starter_studio().glob("plans/*.yaml")),
    *(("studio", path, path.read_text("utf-8")) for path in carried.demo_studio().glob("studio.yaml")),
    *(
        ("exercise words" if path.name.endswith(".fr.md") else "exercise", path, front_matter(path))
        for path in carried.starter_texts().glob("*.md")
    ),
]


@pytest.mark.parametrize("kind", FILE_KINDS)
def test_is_a_schema_of_its_dialect(kind):
    schema = json_schema(kind)
    assert schema["$schema"] == Draft202012Validator.META_SCHEMA["$id"]
    Draft202012Validator.check_schema(schema)
    assert json.loads(json.dumps(schema)) == schema


@pytest.mark.parametrize(("kind", "path", "text"), FILES, ids=[path.name for _, path, _ in FILES])
def test_sound_files_fit(kind, path, text):
    errors = list(Draft202012Validator(json_schema(kind)).iter_errors(yaml.load(text, CoreLoader)))
    assert errors == []


@pytest.mark.parametrize(
    ("kind", "old", "new"),
    [
        ("client", "units: lb", "units: lbs"),
        ("client", "units: lb", "unit: lb"),
        ("client", "level: 2", "level: 4"),
        ("client", "level: 2", "level: two"),
        ("client", "place: home", "place: [home]"),
        ("client", "name: Noor", ""),
        ("client", "review: 2029-05-06", "reviewed: 2029-05-06"),
        ("plan", "structure: circuit", "structure: circus"),
        ("plan", "level 3: 4", ""),
        ("plan", "station rest", "station_rest"),
        ("plan", "session:", "sessions:"),
    ],
)
def test_what_a_schema_can_see_is_marked(kind, old, new):
    file = "clients/C1.yaml" if kind == "client" else "plans/P1-v1.yaml"
    text = (carried.demo_studio() / file).read_text("utf-8")
    assert old in text
    assert not Draft202012Validator(json_schema(kind)).is_valid(yaml.load(text.replace(old, new, 1), CoreLoader))


def test_keys_carry_what_they_mean():
    client = json_schema("client")
    assert "change-over" in client["properties"]["pace"]["description"]
    assert client["$defs"]["BrailleForm"]["properties"]["width"]["description"] == "cells in a line."
    assert client["description"] == "A client file."
    assert "never printed" in client["properties"]["private"]["description"].lower()


@pytest.mark.parametrize("kind", FILE_KINDS)
def test_a_schema_speaks_of_files_and_not_of_python(kind):
    words = json.dumps(json_schema(kind))
    assert "Annotated[" not in words and "BeforeValidator," not in words
