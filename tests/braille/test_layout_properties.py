"""Properties of the layout over trees of any shape."""

from __future__ import annotations

import itertools
import re
from collections import Counter

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from handouts.braille import brf
from handouts.braille.codes import find_code
from handouts.braille.layout import lay_out
from handouts.braille.pages import Paper, Volume
from handouts.handout import Dose, Handout, Item, Paragraph, Table, plain, walk
from tests.braille.cells import ascii_of
from tests.braille.trees import HANDOUTS, all_words, without_listed_tables

CODE = find_code("ueb", 1)
PAPERS = st.builds(
    Paper,
    width=st.integers(20, 42),
    length=st.integers(8, 30),
    both_sides=st.booleans(),
    running_head=st.booleans(),
    number=st.sampled_from(["bottom right", "top right"]),
    margin=st.sampled_from([0, 0, 2]),
    volume_pages=st.sampled_from([0, 0, 4]),
)
CODES = st.sampled_from([("ueb", 1), ("ueb", 2), ("fr", 1), ("de", 2), ("es", 1)])
ADDED = {"head", "number", "contents", "continued", "volume", "note", "rule", "room", "blank"}
many = settings(
    max_examples=60,
    derandomize=True,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large],
)


def _tree_words(volume: Volume) -> list[str]:
    """Words of the tree as the cells on the pages say them, in order.

    Uncontracted UEB writes a word of small letters letter by letter, so the
    words are read from the cells, past indicators, numbers and punctuation.
    """
    found: list[str] = []
    for page in volume.pages:
        for line in page.lines:
            if line.role not in ADDED:
                found += re.findall("[bcdfghjklmnpqrstvwzy]{4}x*", ascii_of(line.cells).lower())
    return found


@many
@given(HANDOUTS, PAPERS, CODES)
def test_no_line_is_over_its_width_and_no_page_over_its_length(handout: Handout, paper: Paper, code: tuple) -> None:
    volume = lay_out(handout, find_code(*code), paper)
    for page in volume.pages:
        assert len(page.lines) <= paper.length
        for line in page.lines:
            assert len(line.cells) <= paper.width
            assert not line.cells.endswith("\u2800")


@many
@given(HANDOUTS.map(without_listed_tables), PAPERS)
def test_every_word_is_there_once_and_in_order(handout: Handout, paper: Paper) -> None:
    volume = lay_out(handout, CODE, paper)
    assert _tree_words(volume) == all_words(handout)
    printed = " ".join(line.print for page in volume.pages for line in page.lines if line.role not in ADDED)
    assert re.findall("[bcdfghjklmnpqrstvwzy]{4}x*", printed) == all_words(handout)


@many
@given(HANDOUTS, PAPERS)
def test_every_word_is_there_with_tables_too(handout: Handout, paper: Paper) -> None:
    assert set(_tree_words(lay_out(handout, CODE, paper))) >= set(all_words(handout)) - _heads(handout)


def _heads(handout: Handout) -> set[str]:
    """First column heads: a table set as a list has no use for them."""
    return {
        word for block in walk(handout.blocks) if isinstance(block, Table) for word in plain(block.columns[0]).split()
    }


@many
@given(HANDOUTS, PAPERS, st.booleans(), st.booleans())
def test_the_same_input_gives_the_same_bytes(handout: Handout, paper: Paper, padded: bool, lower: bool) -> None:
    one, other = (brf.write(lay_out(handout, CODE, paper), padded, lower) for _ in range(2))
    assert one == other


@many
@given(HANDOUTS, st.integers(20, 41))
def test_wider_paper_never_needs_more_lines(handout: Handout, width: int) -> None:
    # On an endless page, where no page break moves a line.
    narrow, wide = (len(lay_out(handout, CODE, Paper(cells, 0)).pages[0].lines) for cells in (width, width + 1))
    assert wide <= narrow


@many
@given(HANDOUTS, PAPERS)
def test_a_heading_keeps_two_lines_of_what_follows(handout: Handout, paper: Paper) -> None:
    volume = lay_out(handout, CODE, paper)
    pages = [
        [line.role for line in page.lines if line.role not in ("blank", "number", "head", "continued")]
        for page in volume.pages
    ]
    for number, roles in enumerate(pages):
        below = len(roles) - max((place + 1 for place, role in enumerate(roles) if role == "heading"), default=0)
        follows = any(pages[number + 1 :])
        starts_with_headings = roles[: len(roles) - below] and set(roles[: len(roles) - below]) <= {"heading", "rule"}
        # A page of nothing but headings at its top has no room for more.
        if "heading" in roles and follows and not starts_with_headings:
            assert below >= 2


@many
@given(HANDOUTS.map(without_listed_tables), PAPERS)
def test_no_piece_leaves_one_line_alone(handout: Handout, paper: Paper) -> None:
    volume = lay_out(handout, CODE, paper)
    places = {
        word: (page.number, number)
        for page in volume.pages
        for number, line in enumerate(page.lines)
        if line.role not in ADDED
        for word in re.findall("[bcdfghjklmnpqrstvwzy]{4}x*", ascii_of(line.cells).lower())
    }
    for block in walk(handout.blocks):
        if isinstance(block, Item | Paragraph | Dose):
            lines = Counter(page for page, _ in {places[word] for word in plain(block.content).split()})
            assert len(lines) == 1 or min(lines.values()) >= 2


@many
@given(HANDOUTS, PAPERS)
def test_text_beside_a_page_number_leaves_three_cells(handout: Handout, paper: Paper) -> None:
    volume = lay_out(handout, CODE, paper)
    for page in volume.pages:
        line = page.lines[-1 if paper.number.startswith("bottom") else 0]
        text, _, number = ascii_of(line.cells).rpartition(" ")
        # An even page of both-sided paper has its margin at the right.
        right = paper.margin if paper.both_sides and page.number % 2 == 0 else 0
        assert len(line.cells) == paper.width - right
        assert number == "#" + "".join("JABCDEFGHI"[int(digit)] for digit in str(page.number))
        assert not text.strip() or text.endswith("  ")


@many
@given(HANDOUTS, PAPERS)
def test_blank_lines_stand_alone(handout: Handout, paper: Paper) -> None:
    """Never two blank lines in a row above a text line of a page."""
    volume = lay_out(handout, CODE, paper)
    for page in volume.pages:
        roles = [line.role for line in page.lines]
        while roles and roles[-1] in ("blank", "number"):
            roles.pop()
        assert not any(one == other == "blank" for one, other in itertools.pairwise(roles))
