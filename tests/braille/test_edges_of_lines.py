"""Where a line or a head just fits, and where it is one cell too long."""

from __future__ import annotations

from dataclasses import replace

import pytest

from handouts.braille.codes import find_code
from handouts.braille.flow import CENTRE_MARGIN
from handouts.braille.layout import lay_out
from handouts.braille.lines import segments
from handouts.braille.pages import Paper
from handouts.braille.translation import Word
from handouts.handout import Heading, Paragraph
from tests.braille.cells import ascii_of
from tests.braille.sheets import SHEET, line

# Uncontracted: a word of small letters is as many cells as letters.
UEB = find_code("ueb", 1)


def _cells(word: str) -> str:
    return "⠀".join("⠁" * len(part) for part in word.split(" "))


def _head(running_head: str, **paper: object) -> str:
    handout = replace(SHEET, running_head=running_head, client_code="a", plan_code="b", version=1)
    return ascii_of(lay_out(handout, UEB, Paper(30, 25, **paper)).pages[0].lines[0].cells).strip()  # type: ignore[arg-type]


@pytest.mark.parametrize("margin", [0, 2])
def test_a_running_head_as_wide_as_its_room_stays(margin):
    room = 30 - margin - 2 * CENTRE_MARGIN
    assert _head("k" * room, margin=margin) == "K" * room
    # One letter more, and the codes alone stand there.
    assert "K" not in _head("k" * (room + 1), margin=margin)


def test_a_running_head_beside_a_number_leaves_five_cells_for_it_and_three_blank():
    room = 30 - 2 * 8
    assert _head("k" * room, number="top right").startswith("K" * room)
    assert "KK" not in _head("k" * (room + 1), number="top right")


def test_a_centred_heading_keeps_its_margins():
    # Three cells at either side, as the running head has them.
    def lines(length: int) -> list[str]:
        handout = replace(SHEET, title=line("k" * 4), blocks=(Heading(2, line("m" * length), "m"), Paragraph(line("o"))))
        page = lay_out(handout, UEB, Paper(30, 0)).pages[0]
        return [ascii_of(one.cells) for one in page.lines if "M" in ascii_of(one.cells)]

    room = 30 - 2 * CENTRE_MARGIN
    assert len(lines(room)) == 1
    longer = lines(room + 1)
    assert len(longer) == 2 and all(len(one.strip()) <= room for one in longer)


def test_a_sheet_of_one_volume_is_laid_out_as_without_volumes():
    one, other = (lay_out(SHEET, UEB, Paper(30, 12, volume_pages=pages)) for pages in (0, 1000))
    assert [page.lines for page in one.pages] == [page.lines for page in other.pages]


@pytest.mark.parametrize(
    ("word", "room", "pieces"),
    [
        ("16 kg", 5, ["16 kg"]),  # as wide as the line: it stays whole
        ("16 kg", 4, ["16", "kg"]),
        ("16\u00a0kg", 4, ["16", "kg"]),
        ("16 kg each", 5, ["16", "kg", "each"]),
    ],
)
def test_a_measure_stays_whole_where_the_line_takes_it(word, room, pieces):
    found = segments((Word(_cells(word.replace("\u00a0", " ")), (), word),), room, UEB)
    assert [one.print for one in found] == pieces
    assert [len(one.cells) for one in found] == [len(piece) for piece in pieces]


def test_words_that_cannot_be_told_apart_are_said_with_the_first():
    # Two groups of cells, and print of one word.
    found = segments((Word("⠁⠁⠁⠀⠁⠁", (), "twelve"),), 4, UEB)
    assert [(one.cells, one.print) for one in found] == [("⠁⠁⠁", "twelve"), ("⠁⠁", "")]


def test_a_word_with_breaks_is_cut_there_and_said_once():
    found = segments((Word("⠁⠁⠤⠁⠁", (3,), "aa-aa"),), 5, UEB)
    assert [(one.cells, one.print, one.glued) for one in found] == [("⠁⠁⠤", "aa-aa", False), ("⠁⠁", "", True)]
    # No break at its very beginning.
    assert [one.glued for one in segments((Word("⠁⠁"), Word("⠁⠁⠁⠤⠁", (4,))), 4, UEB)] == [False, False, True]
