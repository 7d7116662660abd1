"""Plain front matter is read to the same words as by the YAML library's reader, or not at all."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from handouts.errors import StudioFaults
from handouts.reading.yaml_text import read_yaml
from handouts.wording.whole_text.plain_data import plain_data

ROOT = Path(__file__).resolve().parents[2]

WORDS = st.sampled_from(
    ["each", "one-arm row", "30 degrees", "4 s", "12 o'clock", "yes", "no", "~", "null", "1:30", "a: b", "a #b", "'q'", '"q"', "[]", "[a, b c]", "[a, [b]]",
     "{a: b}", "&a", "*a", "!t", "|", ">", "- x", "-x", "", "é", "a,b", "10%", "50 %", "@x", "`x`", "x:", "a:b", "\\n", "\u00a0x", "x\ty", "? a", "#", "---", "[a,]", "[ ]", "[a b,c]"]
)  # fmt: skip
LINES = st.builds(
    lambda indent, lead, words, tail: " " * indent + lead + words + tail,
    st.integers(0, 6),
    st.sampled_from(["", "key: ", "other: ", "written for: ", "key:", "- ", "- key: ", "-", "# ", "  - "]),
    WORDS,
    st.sampled_from(["", " ", " # note", "\t"]),
)


@settings(max_examples=1500, deadline=None)
@given(lines=st.lists(LINES, max_size=7))
def test_what_is_read_is_what_the_library_reads(lines):
    text = "\n".join(lines) + "\n"
    data = plain_data(text)
    if data is not None:
        assert data == read_yaml(text, "f").data, text


def test_the_front_matter_of_the_library_is_plain(starter_texts):
    for path in starter_texts:
        inside = path.read_text("utf-8").split("---\n")[1]
        assert plain_data(inside) == read_yaml(inside, path.name).data, path.name


def test_the_table_of_headings_is_plain():
    text = (ROOT / "handouts" / "languages" / "parts.yaml").read_text("utf-8")
    assert plain_data(text) == read_yaml(text, "parts.yaml").data


@pytest.mark.parametrize(
    "text",
    [
        "title: [open\n",
        "title: a\ntitle: b\n",
        "a: b\n c: d\n",
        "a: b: c\n",
        "- a\n",
        " a: b\n",
        "a: 'b'\n",
        "a: |\n  b\n",
        "\ta: b\n",
        "",
    ],
)
def test_what_is_not_plain_is_left_to_the_library(text):
    assert plain_data(text) is None


def test_faults_are_the_librarys():
    with pytest.raises(StudioFaults):
        read_yaml("title: [open\n", "f")
