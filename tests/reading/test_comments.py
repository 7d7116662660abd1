"""Comments are dropped from a text, and every other line keeps its number."""

import pytest

from handouts.reading.comments import without_comments


@pytest.mark.parametrize(
    ("lines", "left"),
    [
        (["one", "two"], [(5, "one"), (6, "two")]),
        (["one <!-- note -->", "two"], [(5, "one"), (6, "two")]),
        (["one <!-- note --> two"], [(5, "one two")]),
        (["<!-- note --> one"], [(5, "one")]),
        (["- one", "<!-- note -->", "- two"], [(5, "- one"), (7, "- two")]),
        (["one <!-- a", "b", "c --> two", "", "three"], [(5, "one"), (7, "two"), (8, ""), (9, "three")]),
        (["one <!-- a --><!-- b --> two <!-- c -->"], [(5, "one two")]),
        (["one <!-- never closed", "two"], [(5, "one <!-- never closed"), (6, "two")]),
        (["one --> two"], [(5, "one --> two")]),
    ],
)
def test_lines_without_comments(lines, left):
    assert list(without_comments(lines, 5)) == left
