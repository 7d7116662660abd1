"""Values that liblouis itself publishes, against `translate`.

Source of each value: the file of liblouis's own YAML specifications named in
the last column, as in the source package of liblouis 3.39.0 that Debian
publishes, with the line there.  Values alone were taken, by a fixed step
through those that concern plain text in six dots and hold no name of a firm
or a person.
"""

from __future__ import annotations

import csv
from collections import Counter
from pathlib import Path

import pytest

from handouts.braille import translate

_FILE = Path(__file__).with_name("specification_values.tsv")


def _values() -> list[list[str]]:
    with _FILE.open(encoding="utf-8", newline="") as file:
        rows = [row for row in csv.reader(file, delimiter="\t", quoting=csv.QUOTE_NONE)]
    return rows[1:]


VALUES = _values()

# Values of the same specifications that do not fit, and why.
OF_OUR_OWN = [
    # en-ueb.yaml, line 302: a model of car; on a training sheet it is always three sets of twelve.
    ("a 4x4 vehicle", "⠁⠀⠼⠙⠭⠼⠙⠀⠧⠑⠓⠊⠉⠇⠑", "⠁⠀⠼⠙⠐⠦⠼⠙⠀⠧⠑⠓⠊⠉⠇⠑"),
]
# Tables before 3.29 lack the later corrections that these values need; none of
# them is a thing that sheets are full of, so the text is left alone.
LATER_TABLES = [
    # A capital passage with digits that run into letters a to j (en-ueb.yaml, 1053 and after).
    ("ABC 456G HIJ", "⠠⠠⠠⠁⠃⠉⠀⠼⠙⠑⠋⠰⠛⠀⠓⠊⠚⠠⠄", "⠠⠠⠠⠁⠃⠉⠀⠼⠙⠑⠋⠛⠀⠓⠊⠚⠠⠄"),
    # Capitals that change within a word (3565 and after).
    ("AttenTION!", "⠠⠁⠞⠞⠢⠠⠠⠞⠊⠕⠝⠖", "⠠⠁⠞⠞⠢⠠⠠⠰⠝⠖"),
    ("ARound", "⠠⠠⠜⠠⠄⠳⠝⠙", "⠠⠠⠜⠠⠄⠨⠙"),
    ("getFullName", "⠛⠑⠞⠠⠋⠥⠇⠇⠠⠐⠝", "⠛⠑⠞⠠⠰⠇⠇⠠⠐⠝"),
    # Shortforms before 've in capitals (3676 and after).
    ("COULD'VE", "⠠⠠⠉⠙⠄⠠⠠⠧⠑", "⠠⠠⠉⠳⠇⠙⠄⠠⠠⠧⠑"),
    # The abbreviation "yrs" (4315) and one proper name's part (4354).
    ("3 yrs 6 mths", "⠼⠉⠀⠰⠽⠗⠎⠀⠼⠋⠀⠍⠹⠎", "⠼⠉⠀⠽⠗⠎⠀⠼⠋⠀⠍⠹⠎"),
    ("somers", "⠎⠕⠍⠻⠎", "⠐⠎⠗⠎"),
]


def test_there_are_a_few_hundred_values_for_every_code_and_grade() -> None:
    counts = Counter((code, grade) for code, grade, *_ in VALUES)
    assert len(VALUES) > 500
    assert set(counts) == {(code, grade) for code in ("ueb", "fr", "es", "de") for grade in ("1", "2")}
    assert min(counts.values()) >= 25


@pytest.mark.parametrize("row", VALUES, ids=[row[-1] for row in VALUES])
def test_value(row: list[str]) -> None:
    code, grade, text, cells, _ = row
    assert translate(text, code, int(grade)) == cells


@pytest.mark.parametrize(("text", "theirs", "ours"), OF_OUR_OWN)
def test_values_that_we_mean_to_differ_from(text: str, theirs: str, ours: str) -> None:
    assert translate(text) == ours != theirs


@pytest.mark.parametrize(("text", "newer", "older"), LATER_TABLES)
def test_values_that_only_later_tables_reach(text: str, newer: str, older: str) -> None:
    assert translate(text) in (newer, older)
