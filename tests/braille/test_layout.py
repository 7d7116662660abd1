"""Layout rule by rule, on one hand-made handout.

Sources, where no other is named: *Braille Formats: Principles of
Print-to-Braille Transcription*, BANA 2016, as far as its sample files and
published replies show the rule (BF); "choice" marks what the rules leave open.
"""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from xml.etree import ElementTree

import pytest

from handouts.braille import pef
from handouts.braille.codes import find_code
from handouts.braille.layout import lay_out
from handouts.braille.pages import Paper, Volume
from handouts.handout import (
    Bar,
    Block,
    Caution,
    Chart,
    Handout,
    Heading,
    Item,
    LogEntry,
    LogField,
    LogSheet,
    Measure,
    Paragraph,
    Points,
    Steps,
    Strong,
    Table,
    Text,
)
from tests.braille.cells import ascii_of
from tests.braille.sheets import SHEET, line

UEB = find_code("ueb", 2)


def _pages(volume: Volume) -> list[list[str]]:
    return [[ascii_of(one.cells) for one in page.lines] for page in volume.pages]


def _sheet(*blocks: Block, title: str = "Plan") -> Handout:
    return replace(SHEET, title=line(title), running_head="C2 P2", blocks=blocks)


def _set(*blocks: Block, width: int = 30, length: int = 0, head: bool = False, **paper: object) -> list[str]:
    """The lines of the first page, from below the title on."""
    volume = lay_out(_sheet(*blocks), UEB, Paper(width, length, running_head=head, **paper))  # type: ignore[arg-type]
    lines = _pages(volume)[0]
    return lines[next(place for place, one in enumerate(lines) if one.strip() == ",PLAN") + 1 :]


# --- blocks ------------------------------------------------------------------


def test_paragraphs_are_3_1_without_a_blank_line_between() -> None:
    # BF; sample files.
    one = Paragraph(line("Stand with both feet apart and hold it."))
    assert _set(one, one) == [
        "",
        '  ,/& ) BO? FEET A"P & HOLD X4',
        '  ,/& ) BO? FEET A"P & HOLD X4',
    ]


def test_headings_are_centred_in_cell_5_and_in_cell_7() -> None:
    # BF: blank before and after a centred heading, before and not after the others; stacked
    # headings directly below; emphasis dropped.
    assert _set(
        Heading(2, line("Goblet squat"), "a"),
        Heading(3, (Text("Start "), Strong(line("now"))), "b"),
        Heading(4, line("Feet"), "c"),
        Paragraph(line("Stand.")),
        Heading(3, line("Count"), "d"),
        Paragraph(line("Once.")),
    ) == [
        "",
        "        ,GOBLET SQUAT",
        "",
        "    ,/>T N[",
        "      ,FEET",
        "  ,/&4",
        "",
        "    ,C.T",
        "  ,ONCE4",
    ]


def test_a_long_heading_leaves_three_cells_at_each_side() -> None:
    # BF: at least three blank cells at each side of a centred heading.
    lines = _set(Heading(2, line("One-arm supported row with a bench or a chair"), "a"))
    heading = [one for one in lines if one]
    assert len(heading) == 2
    assert all(one.startswith("   ") and len(one) <= 27 for one in heading)


def test_lists_are_1_3_between_blank_lines_and_nested_ones_1_5_and_3_5() -> None:
    # NLS lesson 18; BF: simple and nested lists, number before the text.
    simple = Steps((Item(line("Breathe in and bend both hips and both knees.")), Item(line("Stand up."))))
    assert _set(Paragraph(line("Do this:")), simple, Paragraph(line("Rest."))) == [
        "",
        "  ,D ?3",
        "",
        "#A4 ,BR1! 9 & B5D BO? HIPS &",
        "  BO? KNEES4",
        "#B4 ,/& UP4",
        "",
        "  ,RE/4",
    ]
    nested = Steps(
        (
            Item(
                line("Stand with both feet flat."),
                (Points((Item(line("Left toes at 11 o'clock, right toes at 1 o'clock.")),)),),
            ),
            Item(line("Bend.")),
        )
    )
    assert _set(nested) == [
        "",
        "#A4 ,/& ) BO? FEET FLAT4",
        "  ,LEFT TOES AT #AA O'CLOCK1",
        "    \"R TOES AT #A O'CLOCK4",
        "#B4 ,B5D4",
    ]


def test_a_box_has_a_line_of_7s_and_one_of_gs() -> None:
    # BF 7.1, 7.2: full lines, a blank line before and after the box and none inside at them.
    box = Caution(line("When to stop"), (Paragraph(line("Stop at chest pain.")),))
    assert _set(Paragraph(line("Read.")), box, Paragraph(line("Go on."))) == [
        "",
        "  ,R1D4",
        "",
        "7" * 30,
        "    ,:5 TO /OP",
        "  ,/OP AT *E/ PA94",
        "G" * 30,
        "",
        "  ,G ON4",
    ]


TABLE = Table(
    line("Weights"),
    (line("Exercise"), line("Left"), line("Right")),
    ((line("Squat"), line("16 kg"), line("16 kg")), (line("Press"), line("12 kg"), line("12.5 kg"))),
)


def test_a_table_stands_in_columns_when_it_fits() -> None:
    # BF: two blank cells between columns; under each head a line of dots 25 after dot 5.
    assert _set(TABLE) == [
        "",
        "    ,WEI<TS",
        ',EX]CISE  ,LEFT   ,"R',
        '"3333333  "33333  "3333333',
        ",SQUAT    #AF KG  #AF KG",
        ",PRESS    #AB KG  #AB4E KG",
    ]


def test_a_table_that_is_too_wide_is_a_list_and_says_so() -> None:
    # BF: listed table, row head in cell 5, a blank line between rows; transcriber's note 7-5 in its indicators (UEB 3.27).
    lines = _set(TABLE, width=24)
    note = next(place for place, one in enumerate(lines) if "@.<" in one)
    end = next(place for place, one in enumerate(lines) if one.endswith("@.>"))
    assert lines[note].startswith("      @.<,TRANSCRIB]'S") and all(one.startswith("    ") for one in lines[note:end])
    assert lines[end + 1 :] == [
        "",
        "    ,SQUAT",
        ",LEFT3 #AF KG",
        ',"R3 #AF KG',
        "",
        "    ,PRESS",
        ",LEFT3 #AB KG",
        ',"R3 #AB4E KG',
    ]


def test_a_log_sheet_leaves_room_to_write() -> None:
    # Choice: an exercise in cell 5, a short line a thing to write, an empty line where the label fills its own.
    entry = LogEntry(
        "x",
        1,
        line("1 Goblet squat"),
        (
            LogField("weight", line("Weight"), "weight", "kg", line("16 kg")),
            LogField("reps", line("Repetitions in each set"), "count", "reps"),
            LogField("pain", line("Pain"), "words"),
        ),
    )
    assert _set(LogSheet((entry,))) == [
        "",
        "    #A ,GOBLET SQUAT",
        ',WEI<T "<#AF KG">3',
        ",REPETI;NS 9 EA* SET1 REPS3",
        "",
        ",PA93",
        "",
    ]


# --- pages -------------------------------------------------------------------


def _numbered(count: int, words: str = "Stand up and sit down") -> tuple[Paragraph, ...]:
    return tuple(Paragraph(line(f"{words} {number}.")) for number in range(1, count + 1))


def test_running_head_and_page_number() -> None:
    # BF: running head centred on line 1, headings on line 3; page number on the last line at the right margin.
    volume = lay_out(_sheet(*_numbered(30)), UEB, Paper(30, 12))
    first, second = _pages(volume)[:2]
    # 9 cells in the middle of 30 begin after 10 blanks, 5 cells after 12.
    assert first[0] == second[0] == " " * 10 + ",C#B ,P#B"
    assert first[1] == "" and first[2] == " " * 12 + ",PLAN"
    assert second[1].startswith("  ,/& UP")
    for number, page in enumerate((first, second), 1):
        assert len(page) == 12 and len(page[-1]) == 30
        assert page[-1].endswith("   #" + "AB"[number - 1])


def test_page_number_at_the_top() -> None:
    volume = lay_out(_sheet(*_numbered(30)), UEB, Paper(30, 12, number="top right"))
    for page in _pages(volume)[:2]:
        assert page[0].rstrip().endswith(("   #A", "   #B")) and ",C#B ,P#B" in page[0] and len(page[0]) == 30
        assert "#" in page[-1] and page[-1].startswith("  ,/&")


def test_text_shares_the_number_line_and_leaves_three_cells() -> None:
    # BF: three blank cells between text and a page number.
    volume = lay_out(_sheet(*_numbered(14, "Up")), UEB, Paper(30, 10, running_head=False))
    last = _pages(volume)[0][-1]
    assert last.startswith("  ,UP #") and last.endswith("   #A")


def test_a_running_head_that_is_too_long_keeps_the_codes() -> None:
    handout = replace(_sheet(*_numbered(3)), running_head="Tomasz with a very long name, C2: plan P2 version 2")
    assert _pages(lay_out(handout, UEB, Paper(22, 12)))[0][0].strip() == ",C#B ,P#B #B"


def test_an_endless_page_has_neither_head_nor_number() -> None:
    volume = lay_out(_sheet(*_numbered(200)), UEB, Paper(32, 0))
    assert len(volume.pages) == 1
    assert not {"head", "number", "contents"} & {one.role for one in volume.pages[0].lines}


def test_the_binding_margin_is_on_the_left_and_on_the_other_side_of_the_sheet_on_the_right() -> None:
    for both_sides in (False, True):
        volume = lay_out(_sheet(*_numbered(60)), UEB, Paper(30, 12, margin=3, both_sides=both_sides))
        odd, even = _pages(volume)[2], _pages(volume)[3]
        assert all(one.startswith("   ") for one in odd if one)
        assert all(one.startswith("   ") for one in even if one) is not both_sides
        assert max(map(len, odd)) == 30 and max(map(len, even)) == (27 if both_sides else 30)


def test_a_heading_goes_to_the_next_page_with_its_text() -> None:
    # BF, older course: two lines of text stay with a heading; before a list, one complete item.
    blocks = (*_numbered(5), Heading(3, line("Movement"), "m"), *_numbered(3, "Down"))
    page = _pages(lay_out(_sheet(*blocks), UEB, Paper(30, 10, running_head=False)))
    assert "    ,MOVE;T" not in page[0] and page[1][0] == "    ,MOVE;T"


def test_a_box_that_crosses_a_page_says_so() -> None:
    # BF 7.3: a text line after the top line and before the bottom line; the "continued" line is a choice.
    box = Caution(line("When to stop"), _numbered(12))
    first, second = _pages(lay_out(_sheet(box), UEB, Paper(30, 10)))[:2]
    assert first[4] == "7" * 30 and first[5] == "    ,:5 TO /OP"
    assert second[2] == "    ,:5 TO /OP1 3T9U$"
    assert [page for page in (first, second) if "G" * 30 in page] == []


def test_column_heads_are_repeated_where_a_table_crosses_a_page() -> None:
    rows = tuple((line(f"Press {number}"), line("12 kg"), line("12.5 kg")) for number in range(1, 12))
    pages = _pages(lay_out(_sheet(replace(TABLE, rows=rows)), UEB, Paper(34, 12)))
    # The widest first cell is ",PRESS #AA", 10 cells.
    assert pages[1][2:5] == ["    ,WEI<TS1 3T9U$", ',EX]CISE    ,LEFT   ,"R', '"333333333  "33333  "3333333']


def test_contents_stand_before_a_sheet_of_more_than_two_pages() -> None:
    # BF: entries with guide dots (dot 5, one blank at each side), no entry beside the page number.
    volume = lay_out(SHEET, UEB, Paper(32, 20))
    listed = {place.words: place.page for place in volume.headings if place.level == 2}
    entries = [
        (ascii_of(one.cells), one.print) for page in volume.pages for one in page.lines if one.role == "contents"
    ]
    assert entries[0][0].strip() == ",3T5TS"
    # An entry of two lines has its page number on the second, which begins in cell 3.
    ends = [cells for cells, _ in entries[1:] if '""' in cells]
    assert [cells[:2] for cells, _ in entries[1:] if cells not in ends] == [",E", ",E", ",E"]
    for cells, page in zip(ends, listed.values(), strict=True):
        text, dots, number = cells.rsplit(" ", 2)
        assert set(dots) == {'"'} and len(dots) >= 2 and len(cells) == 32
        assert number == "#" + "ABCDEFGHI"[page - 1] and text
    assert " ".join(words for _, words in entries[1:]) == " ".join(listed)
    for page in volume.pages:
        headings = [one.print for one in page.lines if one.role == "heading"]
        assert all(listed[heading] == page.number for heading in headings if heading in listed)


def test_a_sheet_of_two_pages_has_no_contents() -> None:
    volume = lay_out(_sheet(Heading(2, line("A"), "a"), *_numbered(12)), UEB, Paper(30, 12))
    assert len(volume.pages) == 2
    assert "contents" not in {one.role for page in volume.pages for one in page.lines}


# --- long words --------------------------------------------------------------


@pytest.mark.parametrize(
    ("word", "expected"),
    [
        # At a hyphen of the print (UEB 10.13).
        ("end-over-end-over-end-over-end", ["  5D-OV]-5D-OV]-5D-", "OV]-5D"]),
        # UEB 10.13.1: a word that must be divided takes the hyphen.
        ("Xxxxxxxxxxxxxxxxxxxxxxxxxxxxx", None),
    ],
)
def test_words_break_at_hyphens_or_with_the_continuation_sign(word: str, expected: list[str] | None) -> None:
    lines = [one for one in _set(Paragraph(line(word)), width=20) if one and one.strip() != ",PLAN"]
    if expected:
        assert lines == expected
    else:
        assert lines[0].endswith("-") and len(lines) == 2 and lines[1].strip("X") == ""


def test_measures_and_ranges_stay_on_one_line() -> None:
    # Choice: a number is read with its unit; UEB asks only that numbers are not divided (6.10).
    measure = Measure("12.5 kg", "12.5 kilograms")
    words_before = line("Up and down, then ")
    assert _set(Paragraph((*words_before, measure, Text(".")))) == [
        "",
        "  ,UP & D[N1 !N #AB4E KG4",
    ]
    assert _set(Paragraph((Text("Right up and down, then "), measure, Text("."))), width=24)[1:] == [
        '  ,"R UP & D[N1 !N',
        "#AB4E KG4",
    ]
    ranged = _set(Paragraph((Text("Now up and down, "), Measure("8–12", "8 to 12"), Text(" times."))), width=22)
    assert ranged[1:] == ["  ,N[ UP & D[N1", '#H,-#AB "TS4']
    tied = _set(Paragraph(line("Now up and down, all 12\u00a0times.")), width=24)
    assert tied[1:] == ["  ,N[ UP & D[N1 ALL", '#AB "TS4']


def test_a_number_that_is_too_long_takes_dot_5() -> None:
    # UEB 6.10: the line continuation indicator, so that no hyphen is read into the number.
    lines = [one for one in _set(Paragraph(line("1" * 40)), width=20) if one and one.strip() != ",PLAN"]
    assert [one[-1] for one in lines[:-1]] == ['"'] * (len(lines) - 1)
    assert "".join(one.strip().rstrip('"') for one in lines) == "#" + "A" * 40


@pytest.mark.parametrize("name", ["fr", "es", "de"])
def test_other_codes_have_their_own_words(name: str) -> None:
    words = {"fr": "Squat", "es": "Sentadilla", "de": "Kniebeuge"}[name]
    blocks = tuple(
        block
        for number in range(1, 4)
        for block in (Heading(2, line(f"{words} {number}"), f"h{number}"), *_numbered(14, words))
    )
    handout = replace(_sheet(*blocks), language=name)
    volume = lay_out(handout, find_code(name, 1), Paper(30, 12))
    entries = [one for page in volume.pages for one in page.lines if one.role == "contents"]
    told = {"fr": "Table des matières", "es": "Índice", "de": "Inhalt"}[name]
    assert entries[0].print == told
    # Dot 3 leads to the page number, as in the braille edition of the French code.
    assert "''" in ascii_of(entries[1].cells)


# --- charts and volumes ------------------------------------------------------


def test_a_chart_is_told_and_drawn_for_the_finger() -> None:
    # Choice: a value in words, below it a bar of 7s; the largest fills the line.
    bars = tuple(Bar(line(day), Decimal(value), line(f"{value} kg")) for day, value in (("May", 8), ("June", 16)))
    assert _set(Chart(line("Squat"), line("It rose."), bars)) == [
        "",
        "    ,SQUAT",
        "  ,X ROSE4",
        "",
        ",MAY3 #H KG",
        "7" * 15,
        ",JUNE3 #AF KG",
        "7" * 30,
    ]


def _long_sheet() -> Handout:
    blocks = tuple(
        block
        for number in range(1, 9)
        for block in (Heading(2, line(f"Exercise {number}"), f"e{number}"), *_numbered(14))
    )
    return _sheet(*blocks)


@pytest.mark.parametrize("both_sides", [False, True])
def test_a_long_sheet_is_split_into_volumes_at_its_sections(both_sides: bool) -> None:
    # BANA 2011, appendix E: on both-sided paper a volume starts on a right-hand page.
    whole = lay_out(_long_sheet(), UEB, Paper(30, 12, both_sides=both_sides))
    volume = lay_out(_long_sheet(), UEB, Paper(30, 12, both_sides=both_sides, volume_pages=8))
    assert whole.parts == (1,) and len(whole.pages) > 8
    assert len(volume.parts) >= 2
    if both_sides:
        assert all(first % 2 for first in volume.parts)
    pages = _pages(volume)
    count = "#" + "ABCDEFGHI"[len(volume.parts) - 1]
    for number, first in enumerate(volume.parts, 1):
        lines = [one.strip() for one in pages[first - 1]]
        assert ",PLAN" in lines and f",VOLUME #{'ABCDEFGHI'[number - 1]} ( {count}" in lines
    # A section stays whole, and the contents list leads to the right pages still.
    places = {place.words: place.page for place in volume.headings if place.level == 2}
    assert len(places) == 8
    entries = [ascii_of(one.cells) for page in volume.pages for one in page.lines if one.role == "contents"]
    numbers = [entry.rsplit("#", 1)[1] for entry in entries if '""' in entry]
    assert numbers == ["".join("JABCDEFGHI"[int(digit)] for digit in str(page)) for page in places.values()]


def test_volumes_are_volumes_in_a_pef_file() -> None:
    volume = lay_out(_long_sheet(), UEB, Paper(30, 12, volume_pages=8))
    root = ElementTree.fromstring(pef.write(volume))
    found = [len(list(one.iter(f"{{{pef.NAMESPACE}}}page"))) for one in root.iter(f"{{{pef.NAMESPACE}}}volume")]
    assert len(found) == len(volume.parts) and sum(found) == len(volume.pages)
