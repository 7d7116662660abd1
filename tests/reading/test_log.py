"""Log files: one line an exercise; what is not said stays unknown."""

import datetime
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from handouts.amounts import Mass
from handouts.errors import StudioFaults
from handouts.reading.log import COLUMNS, read_log

HEADER = ",".join(COLUMNS) + "\n"


@pytest.fixture
def log(tmp_path):
    def write(text, encoding="utf-8"):
        path = tmp_path / "C1.csv"
        path.write_bytes(text.encode(encoding))
        return path

    return write


def faults_of(path):
    with pytest.raises(StudioFaults) as caught:
        read_log(path, "logs/C1.csv")
    return caught.value.faults


def test_a_line_with_everything(log):
    (line,) = read_log(log(HEADER + "2029-01-09,P2,1,floor-press,right,16 kg,10/9/9,41 min,7,slow,press R 16 kg\n"), "x")
    assert (line.line, line.date, line.plan, line.version) == (2, datetime.date(2029, 1, 9), "P2", 1)
    assert (line.exercise, line.side, line.weight) == ("floor-press", "right", Mass(Decimal(16), "kg"))
    assert (line.reps, line.seconds, line.effort) == ((10, 9, 9), 2460, 7)
    assert (line.note, line.raw) == ("slow", "press R 16 kg")


def test_what_is_not_said_is_unknown_and_not_zero(log):
    (line,) = read_log(log(HEADER + ",,,,,,,,,,same as Saturday\n"), "x")
    assert (line.date, line.version, line.side, line.weight, line.seconds, line.effort) == (None,) * 6
    assert (line.plan, line.exercise, line.reps, line.note) == ("", "", (), "")
    assert line.raw == "same as Saturday"


@pytest.mark.parametrize("reps", ["12/12/14", "12 12 14", "12 / 12 / 14"])
def test_reps_of_each_set(log, reps):
    assert read_log(log(HEADER + f",,,,,,{reps},,,,x\n"), "x")[0].reps == (12, 12, 14)


def test_what_came_in_stays_word_for_word(log):
    lines = read_log(log(HEADER + ',,,,,,,,,,"  say ""no"", 012;\r\n2 × 3  "\n,,,,,,,,,,1_000\n'), "x")
    assert [line.raw for line in lines] == ['  say "no", 012;\n2 × 3  ', "1_000"]
    assert [line.line for line in lines] == [2, 4]


@pytest.mark.parametrize("ending", ["\n", "\r\n", "\r"])
def test_every_line_end_and_a_byte_order_mark_are_read(log, ending):
    text = "\ufeff" + (HEADER + ",,,,,,,,,,x\n").replace("\n", ending)
    assert read_log(log(text), "x")[0].raw == "x"


def test_empty_lines_are_passed_over(log):
    text = HEADER + "\n,,,,,,,,,,\n,,,,,,,,,,x\n"
    assert [line.line for line in read_log(log(text), "x")] == [4]


def test_only_a_header_is_an_empty_log(log):
    assert read_log(log(HEADER), "x") == ()


@pytest.mark.parametrize(
    ("cells", "column", "instead"),
    [
        ("9.1.2029,,,,,,,,,,x", "date", "2029-01-08"),
        (",,one,,,,,,,,x", "version", "digits"),
        (",,,,up,,,,,,x", "side", "'left' or 'right'"),
        (",,,,,16,,,,,x", "weight", "unit"),
        (",,,,,,12-14,,,,x", "reps", "'12/12/14'"),
        (",,,,,,14/12/2012 00:00,,,,x", "reps", "'12/12/14'"),
        (",,,,,,,41,,,x", "time", "'2 min'"),
        (",,,,,,,,11,,x", "effort", "range"),
    ],
)
def test_a_wrong_cell_is_told_with_line_and_column(log, cells, column, instead):
    (fault,) = faults_of(log(HEADER + ",,,,,,,,,,x\n" + cells + "\n"))
    assert (fault.path, fault.line) == ("logs/C1.csv", 3)
    assert fault.wrong.startswith(f"'{column}': ") and instead in fault.instead


def test_all_faults_at_once(log):
    assert [fault.line for fault in faults_of(log(HEADER + "x,,x,,,,,,,,x\na,,\n,,,,up,,,,,,x\n"))] == [2, 2, 3, 4]


@pytest.mark.parametrize(
    ("text", "wrong"),
    [
        ("", "nothing in it"),
        ("date,plan\n", "does not name the columns"),
        (HEADER.replace(",", ";"), "semicolons"),
        (HEADER.replace(",", "\t"), "tabs"),
        (HEADER.replace("raw", "Raw"), "does not name the columns"),
    ],
)
def test_a_file_that_is_no_log(log, text, wrong):
    (fault,) = faults_of(log(text))
    assert wrong in fault.wrong


@pytest.mark.parametrize("end", ['"open\n', '"a"b,\n'])
def test_broken_quotation_marks(log, end):
    (fault,) = faults_of(log(HEADER + ",,,,,,,,,,x\n,,,,,,,,,," + end))
    assert fault.line == 3 and "quotation mark" in fault.instead


def test_a_cell_beyond_all_bounds(log):
    (fault,) = faults_of(log(HEADER + ",,,,,,,,,," + "x" * 200_000 + "\n"))
    assert fault.line == 2


def test_latin_1_is_refused(log):
    (fault,) = faults_of(log(HEADER + ",,,,,,,,,,développé\n", "latin-1"))
    assert fault.line == 2 and "UTF-8" in fault.instead


@settings(max_examples=200, deadline=None)
@given(text=st.text("ab12,;\"'\n/ kg-é", max_size=80))
def test_anything_is_read_or_refused(tmp_path_factory, text):
    path = tmp_path_factory.mktemp("log") / "C1.csv"
    path.write_text(HEADER + text, "utf-8")
    try:
        read_log(path, "x")
    except StudioFaults as problem:
        assert problem.faults
        assert all(str(fault).isprintable() for fault in problem.faults)
