"""The small Markdown of exercise texts: all of it kept, the rest refused.

Expected structures follow John Gruber, "Markdown: Syntax", and, where that is
silent, CommonMark 0.31.2 (sections named beside the cases).
"""

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from handouts.models import ItemList, Paragraph
from handouts.reading.markdown_blocks import read_blocks


def blocks_of(text):
    blocks, problems = read_blocks(list(enumerate(text.split("\n"), 1)))
    assert not problems
    return [outline(block) for block in blocks]


def outline(block):
    if isinstance(block, Paragraph):
        return block.line, block.text
    return ("1." if block.ordered else "-", [item_outline(item) for item in block.items])


def item_outline(item):
    own = (item.line, item.text)
    return (*own, [item_outline(nested) for nested in item.items]) if item.items else own


def problems_of(text):
    return [(line, wrong) for line, wrong, _ in read_blocks(list(enumerate(text.split("\n"), 1)))[1]]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("", []),
        ("\n\n", []),
        ("One.", [(1, "One.")]),
        ("One\ngoes  on.\n\nTwo.", [(1, "One goes on."), (4, "Two.")]),
        ("**One** and **two words**.", [(1, "**One** and **two words**.")]),
        ("1. a\n2. b\n3. c", [("1.", [(1, "a"), (2, "b"), (3, "c")])]),
        ("1. a\n1. b", [("1.", [(1, "a"), (2, "b")])]),
        ("- a\n- b", [("-", [(1, "a"), (2, "b")])]),
        ("* a\n* b", [("-", [(1, "a"), (2, "b")])]),
        ("- a\n\n- b\n\n\n- c", [("-", [(1, "a"), (3, "b"), (6, "c")])]),
        ("- a\ngoes on\n- b\n  goes on", [("-", [(1, "a goes on"), (3, "b goes on")])]),
        # CommonMark 5.2: nested by the width of the outer sign, two or three spaces.
        ("- a\n  - b\n  - c\n- d", [("-", [(1, "a", [(2, "b"), (3, "c")]), (4, "d")])]),
        ("1. a\n   - b\n2. c", [("1.", [(1, "a", [(2, "b")]), (3, "c")])]),
        ("1. a\n    1. b\n    2. c", [("1.", [(1, "a", [(2, "b"), (3, "c")])])]),
        ("- a\n\n  - b\n\n- c", [("-", [(1, "a", [(3, "b")]), (5, "c")])]),
        ("- a\n\t- b", [("-", [(1, "a", [(2, "b")])])]),
        # CommonMark 5.3: a list may follow words without an empty line.
        ("Words:\n- a\n- b", [(1, "Words:"), ("-", [(2, "a"), (3, "b")])]),
        ("Words:\n1. a", [(1, "Words:"), ("1.", [(2, "a")])]),
        ("- a\n\n1. b", [("-", [(1, "a")]), ("1.", [(3, "b")])]),
        ("1. a\n\nWords.\n\n1. b", [("1.", [(1, "a")]), (3, "Words."), ("1.", [(5, "b")])]),
        ("  Words.", [(1, "Words.")]),
        ("2 kg - 3 kg, 1.5 m, 50 % of it, 12 o'clock.", [(1, "2 kg - 3 kg, 1.5 m, 50 % of it, 12 o'clock.")]),
        ("a < b > c & d [e] (f)", [(1, "a < b > c & d [e] (f)")]),
        ("« genou à 90\u00a0° »", [(1, "« genou à 90\u00a0° »")]),
    ],
)
def test_read(text, expected):
    assert blocks_of(text) == expected


@pytest.mark.parametrize(
    ("text", "line", "wrong"),
    [
        ("a\nb <b>c</b>", 2, "HTML"),
        ("<script>x</script>", 1, "HTML"),
        ("<!-- open", 1, "HTML"),
        ("<http://a.b>", 1, "HTML"),
        ("a [b](c)", 1, "link"),
        ("a [b][c]", 1, "link"),
        ("[a]: file:///etc/passwd", 1, "link"),
        ("see https://a.b", 1, "link"),
        ("see www.a.b", 1, "link"),
        ("[x](javascript:y)", 1, "link"),
        ("![a](b)", 1, "picture"),
        ("a `b`", 1, "code"),
        ("```\na\n```", 1, "code"),
        ("~~~\na\n~~~", 1, "code"),
        ("    a", 1, "program text"),
        ("a\n\n    b", 3, "program text"),
        ("| a | b |\n|---|---|", 1, "table"),
        ("> a", 1, "quotation"),
        ("- a\n- > b", 2, "quotation"),
        ("a\n---\nb", 2, "line of signs"),
        ("a\n===", 2, "line of signs"),
        ("* * *", 1, "line of signs"),
        ("*a*", 1, "single '*'"),
        ("a **b", 1, "not closed"),
        ("a ** b ** c", 1, "not closed"),
        ("**a**b**", 1, "not closed"),
        ("a *b\n\nc*", 1, "not closed"),
        ("_a_", 1, "underscore"),
        ("__a__", 1, "underscore"),
        ("a \\* b", 1, "backslash"),
        ("a &amp; b", 1, "HTML code"),
        ("a &#65; b", 1, "HTML code"),
        ("- a\n1. b", 2, "mixed"),
        ("1) a", 1, "does not number"),
        ("-", 1, "no words"),
        ("1.", 1, "no words"),
        ("- - a", 1, "two signs"),
        ("- 1. a", 1, "two signs"),
        ("1. # a", 1, "two signs"),
        ("- a\n-b", 2, "no space after"),
        ("1. a\n2.b", 2, "no space after"),
        ("- a\n\n  b", 3, "second paragraph"),
        ("  - a", 1, "no item above"),
        ("a\n\n  - b", 3, "no item above"),
        ("- a\n  - b\n    - c", 3, "two deep"),
        ("1. a\n2. b\n4. c", 3, "this is step 3, but it bears the number 4"),
        ("3. a", 1, "this is step 1"),
        ("1. a\n\nb\n\n2. c", 5, "this is step 1"),
        ("hold for\n20. Then stop", 2, "at the start of a line"),
    ],
)
def test_refused_with_its_line(text, line, wrong):
    found = problems_of(text)
    assert found and found[0][0] == line
    assert wrong in found[0][1]


def test_all_problems_of_all_lines_are_told():
    assert [line for line, _ in problems_of("a `b`\nc\nd <b> [e](f)")] == [1, 3, 3]


MARKDOWN = st.text("ab1.)- *+>#_`[]()!<&|\\\n\t~=:\"'é", max_size=60)


@settings(max_examples=400, deadline=None)
@given(text=MARKDOWN)
def test_no_word_gets_lost_and_nothing_breaks(text):
    """Every letter and digit of the source is in the blocks, in order, but for
    the numbers of steps; or there is a problem with a line of the source."""
    lines = list(enumerate(text.split("\n"), 1))
    blocks, problems = read_blocks(lines)
    if problems:
        assert all(1 <= line <= len(lines) and wrong and instead for line, wrong, instead in problems)
        return
    source = "".join(re.sub(r"^\s*\d+\.\s", "", line) for _, line in lines)
    assert re.findall(r"\w", source) == re.findall(r"\w", "".join(texts(blocks)))


def texts(blocks):
    for block in blocks:
        if isinstance(block, ItemList):
            yield from texts(block.items)
        else:
            yield block.text
            yield from texts(getattr(block, "items", ()))


def test_long_and_deep_input_is_read_or_refused():
    for text in ("- " * 5000, ">" * 5000, "* " * 5000 + "a", "1. " * 5000, "[" * 5000, "**a" * 5000, "<" * 5000, "a\n" * 5000):
        read_blocks(list(enumerate(text.split("\n"), 1)))
