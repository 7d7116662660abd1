"""Log files: whole or not at all, old ones readable, wrong lines kept."""

from __future__ import annotations

import datetime
import stat

import pytest

from handouts.amounts import read_mass
from handouts.errors import StudioFaults
from handouts.logbook.files import CannotLog, answer_warning, append_lines, clean, log_path, open_warnings
from handouts.models import LogLine
from handouts.reading.log import COLUMNS, LATER_COLUMNS, read_log

TODAY = datetime.date(2029, 1, 20)
OLD = (
    "date,plan,version,exercise,side,weight,reps,time,effort,note,raw\n"
    '2029-01-09,P1,1,seated-press,,10 lb,12,,,,"seated press, ten pounds, twelve"\n'
    "2029-01-12,P1,1,,,,,,,,seated press fifty\n"
)


def line(**cells) -> LogLine:
    base = dict(
        line=0,
        date=TODAY,
        plan="P1",
        version=1,
        exercise="seated-press",
        side=None,
        weight=read_mass("12.5 kg"),
        reps=(12, 12, 14),
        seconds=95 * 60 + 5,
        effort=7,
        note="a, note",
        raw='said "twelve",\nthen stopped',
        metres=40,
        rounds=3,
        warning="left knee",
        answer="",
    )
    return LogLine(**{**base, **cells})


def test_a_line_comes_back_as_it_was_written(tmp_path):
    (written,) = append_lines(tmp_path, "C1", [line()], (), TODAY)
    assert written == line(line=2)
    path = log_path(tmp_path, "C1")
    assert stat.S_IMODE(path.stat().st_mode) == 0o600
    assert path.read_text("utf-8").startswith(",".join(COLUMNS + LATER_COLUMNS) + "\n")


def test_an_older_file_is_read_and_goes_on_with_the_new_columns(tmp_path):
    path = log_path(tmp_path, "C1")
    path.parent.mkdir()
    path.write_text(OLD, "utf-8")
    before = read_log(path, "log")
    assert [one.warning for one in before] == ["", ""] and before[0].corrected is None
    append_lines(tmp_path, "C1", [line()], (), TODAY)
    assert read_log(path, "log")[:2] == before


def test_a_wrong_line_is_kept_and_marked(tmp_path):
    append_lines(tmp_path, "C1", [line(reps=(9,))], (), TODAY)
    append_lines(tmp_path, "C1", [line(reps=(12,))], (2,), TODAY)
    old, new = read_log(log_path(tmp_path, "C1"), "log")
    assert (old.reps, old.corrected) == ((9,), TODAY)
    assert (new.reps, new.corrected) == ((12,), None)
    with pytest.raises(CannotLog, match="no line 2 to correct"):
        append_lines(tmp_path, "C1", [line()], (2,), TODAY)


def test_corrected_lines_do_not_reach_the_studio(folder):
    from handouts import carried
    from handouts.reading.studio import read_studio

    append_lines(folder, "C1", [line(reps=(9,))], (), TODAY)
    append_lines(folder, "C1", [line(reps=(12,))], (2,), TODAY)
    log = read_studio(folder, carried.starter_texts()).logs["C1"]
    assert [one.reps for one in log] == [(12,)]


def test_a_line_over_several_rows_keeps_the_numbers_right(tmp_path):
    append_lines(tmp_path, "C1", [line(raw="one\ntwo\nthree"), line(reps=(1,))], (), TODAY)
    lines = read_log(log_path(tmp_path, "C1"), "log")
    assert [one.line for one in lines] == [2, 5]
    append_lines(tmp_path, "C1", [line(reps=(2,))], (5,), TODAY)
    assert [one.corrected for one in read_log(log_path(tmp_path, "C1"), "log")] == [None, TODAY, None]


def test_nothing_is_written_to_a_file_with_a_fault(tmp_path):
    path = log_path(tmp_path, "C1")
    path.parent.mkdir()
    path.write_text(OLD + "yesterday,P1\n", "utf-8")
    before = path.read_bytes()
    with pytest.raises(StudioFaults, match=r"logs/C1\.csv:4"):
        append_lines(tmp_path, "C1", [line()], (), TODAY)
    assert path.read_bytes() == before


def test_nothing_is_half_written_when_the_place_is_taken(tmp_path):
    append_lines(tmp_path, "C1", [line()], (), TODAY)
    log_path(tmp_path, "C2").mkdir()
    with pytest.raises(OSError):
        append_lines(tmp_path, "C2", [line()], (), TODAY)
    assert sorted(one.name for one in (tmp_path / "logs").iterdir()) == ["C1.csv", "C2.csv"]


@pytest.mark.parametrize("code", ["", "..", "a/b", "a\\b"])
def test_a_code_that_names_no_file(tmp_path, code):
    with pytest.raises(CannotLog, match="cannot name a file"):
        log_path(tmp_path, code)


def test_a_warning_is_answered_once(tmp_path):
    append_lines(tmp_path, "C1", [line(), line(warning="")], (), TODAY)
    path = log_path(tmp_path, "C1")
    (waiting,) = open_warnings(read_log(path, "log"))
    answer_warning(tmp_path, "C1", waiting.line, "seen on Friday,\nlower step")
    assert open_warnings(read_log(path, "log")) == ()
    assert read_log(path, "log")[0].answer == "seen on Friday, lower step"
    with pytest.raises(CannotLog, match="has no warning sign"):
        answer_warning(tmp_path, "C1", 4, "nothing there")


def test_invisible_signs_are_taken_out(tmp_path):
    assert clean("\ufeff1 16\u200b 12\x00\r\n12\u2028") == "1 16 12\n12"
    append_lines(tmp_path, "C1", [line(raw="1\u200b2\x07", note="\u200e n")], (), TODAY)
    assert read_log(log_path(tmp_path, "C1"), "log")[0].raw == "12"
