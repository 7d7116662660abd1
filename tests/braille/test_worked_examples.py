"""Worked examples against `translate`.

Numbers are those of *The Rules of Unified English Braille*, 2nd edition 2013,
whose rule gives the value ("as" marks a value by the same rule as the book's
own example).  Rows without a number follow from the plain alphabet and the
contractions of the book's section 10, and agree with liblouis 3.24 and 3.38.
"""

from __future__ import annotations

import pytest

from handouts.braille import translate
from handouts.braille.codes import find_code
from handouts.braille.translation import BLANK, words
from handouts.handout import Strong, Text
from tests.braille.cells import ascii_of

UEB_2 = [
    ("12 reps", "#AB REPS", "-"),
    ("42:35", "#DB3#CE", "as 7:30, 6.3.1"),
    ("12.5", "#AB4E", "as 2.5-5, 6.3.1"),
    ("1/2", "#A_/#B", "6.3.1, 11.3.3"),
    ("2½", "#B#A/B", "11.3.2"),
    ("35-pound", "#CE-P.D", "as 3-dimensional, 6.5.4"),
    ("20-yr period", "#BJ-;YR P]IOD", "6.5.4"),
    ("90 degrees", "#IJ DEGREES", "-"),
    ("90°", "#IJ^J", "3.11.1"),
    ("50%", "#EJ.0", "3.21.1"),
    ("35 lb", "#CE LB", "-"),
    ("20 kg", "#BJ KG", "-"),
    ("3 × 12", '#C "8 #AB', "3.9.1, 3.17.1"),
    ("3×12", '#C"8#AB', "as 2×4, 3.9.1"),
    ("8-12", "#H-#AB", "6.3.1"),
    ("8–12", "#H,-#AB", "6.3.1"),
    ("60 s", "#FJ ;S", "2.6.1"),
    ("5 m", "#E ;M", "2.6.1"),
    ("3b", "#C;B", "6.5.2"),
    ("2nd", "#BND", "6.7.1"),
    ("7:30 a.m.", "#G3#CJ A4M4", "6.3.1"),
    ("STOP NOW", ",,/OP ,,N[", "as NEW YORK, 8.4.2"),
    ("CAUTION: WET PAINT!", ",,,CAU;N3 WET PA9T6,'", "8.5.3"),
    ("• protein", "_4 PROTE9", "3.5.1"),
    ("o'clock", "O'CLOCK", "1.3.2"),
    ("dumbbell", "DUMBBELL", "10.6.5, 10.11.1"),
    ("shoulder", "%\\LD]", "Appendix 1"),
    ("knuckles", "KNUCKLES", "-"),
    ("ceiling", "CEIL+", "-"),
    ("towards", "T[>DS", "-"),
    ("squat", "SQUAT", "-"),
    ("breathe", "BR1!", "-"),
    ("abs", "ABS", "named in Appendix 1"),
    # Where liblouis and the book part:
    ("2 1/2", "#B#A/B", "11.3.2"),
    ("3 12", "#C #AB", "6.6: two numbers"),
    ("Set 1 12 reps", ",SET #A #AB REPS", "6.6: two numbers"),
    ("16\u00a000", '#AF"JJ', "6.6.1: one number"),
    ("____", ".-", "7.2.3"),
    ("IT", ",,IT", "10.1.3"),
    ("US", ",,US", "10.1.3"),
    ("IT band", ",,IT B&", "10.1.3"),
    ("90˚", "#IJ^J", "3.11"),
    # A letter x between numbers is the multiplication sign of a sheet: 3.9.1.
    ("3 x 12", '#C "8 #AB', "3.9.1, 3.17.1"),
]

UNICODE = [
    ("12 reps", "⠼⠁⠃⠀⠗⠑⠏⠎"),
    ("42:35", "⠼⠙⠃⠒⠼⠉⠑"),
    ("12.5", "⠼⠁⠃⠲⠑"),
    ("1/2", "⠼⠁⠸⠌⠼⠃"),
    ("2½", "⠼⠃⠼⠁⠌⠃"),
    ("35-pound", "⠼⠉⠑⠤⠏⠨⠙"),
    ("90 degrees", "⠼⠊⠚⠀⠙⠑⠛⠗⠑⠑⠎"),
    ("90°", "⠼⠊⠚⠘⠚"),
    ("50%", "⠼⠑⠚⠨⠴"),
    ("35 lb", "⠼⠉⠑⠀⠇⠃"),
    ("3 × 12", "⠼⠉⠀⠐⠦⠀⠼⠁⠃"),
    ("o'clock", "⠕⠄⠉⠇⠕⠉⠅"),
    ("dumbbell", "⠙⠥⠍⠃⠃⠑⠇⠇"),
    ("shoulder", "⠩⠳⠇⠙⠻"),
    ("knuckles", "⠅⠝⠥⠉⠅⠇⠑⠎"),
    ("ceiling", "⠉⠑⠊⠇⠬"),
    ("towards", "⠞⠪⠜⠙⠎"),
    ("squat", "⠎⠟⠥⠁⠞"),
    ("breathe", "⠃⠗⠂⠮"),
]


@pytest.mark.parametrize(("text", "expected", "rule"), UEB_2)
def test_contracted_ueb_has_the_rule_books_cells(text: str, expected: str, rule: str) -> None:
    assert ascii_of(translate(text, "ueb", 2)) == expected, rule


@pytest.mark.parametrize(("text", "expected"), UNICODE)
def test_cells_come_as_unicode_braille(text: str, expected: str) -> None:
    assert translate(text) == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        # Uncontracted: each letter its own cell (book, 1.1 and 2.1); numbers as above.
        ("shoulder", "SHOULDER"),
        ("the knuckles", "THE KNUCKLES"),
        ("3 × 12", '#C "8 #AB'),
        ("IT", ",,IT"),
        ("3 12", "#C #AB"),
    ],
)
def test_uncontracted_ueb(text: str, expected: str) -> None:
    assert ascii_of(translate(text, "ueb", 1)) == expected


def _line(*parts: str) -> str:
    """Words of a line whose every second part is strong, as Braille ASCII."""
    line = tuple(Strong((Text(part),)) if place % 2 else Text(part) for place, part in enumerate(parts) if part)
    return ascii_of(BLANK.join(word.cells for word in words(line, find_code("ueb", 2))))


def test_one_bold_word_has_the_word_indicator() -> None:
    # 9.3
    assert _line("", "Brace", " now") == "^1,BRACE N["


def test_three_bold_words_are_a_passage() -> None:
    # 9.4.2; the book's example is italic (.7 ... .'), bold has ^7 ... ^'.
    assert _line("keep ", "your back flat", " here") == "KEEP ^7YR BACK FLAT^' \"H"


def test_the_stop_after_a_bold_passage_stands_inside_it() -> None:
    # 9.4.3
    assert _line("", "Stop if it hurts", ". Rest") == "^7,/OP IF X HURTS4^' ,RE/"
