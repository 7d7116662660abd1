"""The report of progress, in every form that a client reads.

Worked examples as in the tests of records; what the demo's log comes to was
written down before the program was.
"""

from __future__ import annotations

import datetime
import io
import re
import zipfile
from decimal import Decimal
from xml.etree import ElementTree

import pikepdf
import pytest

from handouts.amounts import read_mass
from handouts.forms import FORMS, Look
from handouts.forms.pdf_repair import elements
from handouts.handout import Chart, Paragraph, Section, Table, plain, walk
from handouts.models import Forms, LogLine
from handouts.progress.history import history_of
from handouts.progress.report import LATEST, progress_report
from handouts.progress.summary import summary_of

TODAY = datetime.date(2029, 1, 20)


def line(number: int, day: str, exercise: str, weight: str = "", reps=(), plan="P2", version=1, **more) -> LogLine:
    more = {"side": None, "seconds": None, "effort": None, "note": "", "raw": "", **more}
    return LogLine(
        line=number, date=datetime.date.fromisoformat(day), plan=plan, version=version, exercise=exercise,
        weight=read_mass(weight) if weight else None, reps=reps, **more,
    )  # fmt: skip


def reported(studio, code, *lines, language=""):
    logged = studio.model_copy(update={"logs": {**studio.logs, **({code: lines} if lines else {})}})
    history = history_of(logged, logged.clients[code], TODAY)
    summary = summary_of(history)
    return summary, progress_report(history, summary, studio.facts, language, *history.current[0])


# --- the numbers ---------------------------------------------------------------------


def test_4_volume_and_density_of_the_demo(demo):
    summary, _ = reported(demo, "C2")
    last = summary.sessions[-1]
    assert (last.day.isoformat(), last.volume.amount, last.volume.whole) == ("2029-01-18", 608, True)
    assert round(float(last.density), 1) == 25.3
    assert summary.kept.sessions == 4 and summary.kept.longest_gap == 4


def test_11_13_14_session_loads_and_a_side_that_is_missing(demo):
    (session,) = reported(demo, "C4")[0].sessions
    assert session.load == 287
    # 20 x 36, 16 x 28 and 4 x 30; the left side of the row was not told.
    assert session.volume.amount == 1288 and not session.volume.whole
    assert [each.load for each in reported(demo, "C5")[0].sessions] == [105, 138]


def test_15_a_pair_counts_double_and_a_note_is_no_session(demo):
    summary, _ = reported(demo, "C6")
    assert [session.volume.amount for session in summary.sessions] == [3040, 3040]
    assert summary.kept.last == datetime.date(2029, 1, 11)


def test_each_side_counts_double_and_turns_in_all_do_not(demo):
    row = line(2, "2029-01-08", "one-arm-supported-row", "20 kg", (10, 10, 10), version=2)
    curl = line(3, "2029-01-09", "hammer-curl", "8 kg", (12, 12), version=2)
    summary, _ = reported(demo, "C2", row, curl)
    assert [session.volume.amount for session in summary.sessions] == [1200, 8 * 24]


def test_the_last_set_alone_is_a_floor(demo):
    summary, report = reported(demo, "C1")
    assert not summary.sessions[0].volume.whole
    assert "at least 240 lb" in {plain(cell) for table in walk(report.blocks) if isinstance(table, Table) for row in table.rows for cell in row}


def squats(count: int, plan="P2", version=2) -> list[LogLine]:
    start = datetime.date(2028, 12, 4)
    return [
        line(at + 2, (start + datetime.timedelta(days=3 * at)).isoformat(), "goblet-squat", "16 kg", (10, 10, 8 + at % 12), plan, version)
        for at in range(count)
    ]


def test_only_the_latest_days_stand_in_table_and_chart(demo):
    _, report = reported(demo, "C2", *squats(30))
    tables = [block for block in walk(report.blocks) if isinstance(block, Table)]
    charts = [block for block in walk(report.blocks) if isinstance(block, Chart)]
    assert all(len(table.rows) == LATEST for table in tables) and all(len(chart.bars) == LATEST for chart in charts)
    assert plain(tables[0].caption) == "The latest 12 sessions"


def test_the_reserve_that_the_sheet_asked_for_counts(demo):
    """P2 version 2 asks for squats with 2 in reserve: 14 count as 16 to failure.
    By hand, 16 kg x 16: Lombardi 21.11, Brzycki 27.43, the lowest and the highest."""
    summary, report = reported(demo, "C2")
    one, estimate = summary.strands[0].estimate
    assert (one.reps, one.in_reserve) == (14, 2)
    assert (round(float(estimate.low), 2), round(float(estimate.high), 2)) == (21.11, 27.43)
    told = " ".join(plain(block.content) for block in walk(report.blocks) if isinstance(block, Paragraph))
    assert "lies from 21.1 kg to 27.5 kg. The sheet asked you to leave 2 more in you, so the set counts as 16" in told
    french = reported(demo, "C2", language="fr")[1]
    told = " ".join(plain(block.content) for block in walk(french.blocks) if isinstance(block, Paragraph))
    assert "demandait d’en garder 2 en réserve" in told and "compte donc pour 16" in told


def test_a_reserve_that_only_some_sheets_ask_for_is_no_gain_of_strength(demo):
    """Version 1 asks for no reserve, version 2 does; the client did the same."""
    days = ("2029-01-03", "2029-01-08", "2029-01-11", "2029-01-15")
    lines = [line(at + 2, day, "goblet-squat", "16 kg", (10, 10, 10), version=1 + at // 2) for at, day in enumerate(days)]
    (strand,) = reported(demo, "C2", *lines)[0].strands
    assert strand.shows == "strength" and len({value for _, value in strand.values}) == 1
    assert strand.trend.way == "level"


def test_holds_and_carries_have_a_way_and_a_chart_too(demo):
    days = ("2029-01-03", "2029-01-08", "2029-01-11")
    held = [line(at + 2, day, "farmer-carry", "20 kg", seconds=90 + 15 * at) for at, day in enumerate(days)]
    summary, report = reported(demo, "C2", *held)
    (strand,) = summary.strands
    assert (strand.shows, strand.trend.way, strand.carried) == ("held", "up", 0)
    told = [plain(block.content) for block in walk(report.blocks) if isinstance(block, Paragraph)]
    assert [each for each in told if "all sets together went" in each] == ["Time, all sets together went up: 90 s on the first day, 2 min on the last."]
    walked = [line(at + 2, day, "farmer-carry", "20 kg", metres=60) for at, day in enumerate(days)]
    summary, report = reported(demo, "C2", *walked, language="fr")
    (strand,) = summary.strands
    # Two of 20 kg over 3 x 60 m, kept apart from volume (common practice).
    assert (strand.shows, strand.trend.way, strand.carried) == ("walked", "level", 7200)
    (chart,) = [block for block in walk(report.blocks) if isinstance(block, Chart)]
    assert plain(chart.title).startswith("Mètres avec le poids") and len(chart.bars) == 3


# --- words, table, chart ---------------------------------------------------------------


def test_words_come_first_then_a_table_then_a_chart(demo):
    _, report = reported(demo, "C2")
    for section in (block for block in report.blocks if isinstance(block, Section)):
        kinds = [type(block) for block in section.blocks]
        assert kinds[0] is Paragraph
        assert kinds.index(Table) < kinds.index(Chart)


def test_nothing_of_health_or_of_the_trainers_notes_is_said(demo):
    for code in demo.clients:
        _, report = reported(demo, code)
        said = " ".join(plain(part) for block in walk(report.blocks) for part in (getattr(block, "content", ()),))
        assert not re.search("glaucoma|blood pressure|dioptre", said, re.IGNORECASE)


def test_nothing_logged_is_told(demo):
    summary, report = reported(demo, "C3")
    assert summary.kept is None
    assert "Rien n’est encore noté." in [plain(b.content) for b in walk(report.blocks) if isinstance(b, Paragraph)]


@pytest.mark.parametrize("language, words", [("en", "went up"), ("fr", "cela monte")])
def test_both_languages(demo, language, words):
    _, report = reported(demo, "C2", *squats(9)[:6], language=language)
    told = " ".join(plain(block.content) for block in walk(report.blocks) if isinstance(block, Paragraph))
    assert words in told and "{" not in told


# --- every form ------------------------------------------------------------------------


@pytest.fixture(scope="module")
def report(demo):
    return reported(demo, "C2", *squats(8))[1]


def made(report, form: str, **settings) -> bytes:
    settings_ = Forms.defaults(form).model_copy(update=settings)
    return FORMS[form].render(report, settings_, Look()).data


def charts_of(report) -> list[Chart]:
    return [block for block in walk(report.blocks) if isinstance(block, Chart)]


def test_the_pdf_draws_each_chart_as_a_figure_that_says_every_value(report):
    with pikepdf.open(io.BytesIO(made(report, "print", size=28))) as pdf:
        figures = [str(element.Alt) for element in elements(pdf) if element.S == "/Figure"]
        with pdf.open_metadata() as metadata:
            assert metadata["pdfuaid:part"] == "1"  # declared only without faults
    charts = charts_of(report)
    assert len(figures) == len(charts) == 2
    for alternative, chart in zip(figures, charts, strict=True):
        for bar in chart.bars:
            assert f"{plain(bar.label)}: {plain(bar.told, long=True)}" in alternative


def test_the_page_draws_bars_in_proportion_and_says_them(report):
    page = made(report, "screen").decode()
    drawings = re.findall(r"<svg.*?</svg>", page, re.DOTALL)
    charts = charts_of(report)
    assert len(drawings) == len(charts)
    for drawing, chart in zip(drawings, charts, strict=True):
        svg = ElementTree.fromstring(drawing)
        name = "{http://www.w3.org/2000/svg}"
        assert svg.get("role") == "img"
        title = svg.find(f"{name}title").text
        heights = [float(rect.get("height")) for rect in svg.findall(f"{name}rect")[:-1]]
        most = max(bar.value for bar in chart.bars)
        for bar, height in zip(chart.bars, heights, strict=True):
            assert height == pytest.approx(196 * float(bar.value / most), abs=0.01)
            assert f"{plain(bar.label)}: {plain(bar.told, long=True)}" in title
        assert plain(chart.words, long=True) in re.sub(r"<[^>]+>", "", page)


def test_the_book_declares_its_drawings(report):
    with zipfile.ZipFile(io.BytesIO(made(report, "epub"))) as book:
        package = book.read("EPUB/package.opf").decode()
        drawn = [name for name in book.namelist() if name.endswith(".xhtml") and b"<svg" in book.read(name)]
        for name in book.namelist():
            if name.endswith((".xhtml", ".opf")):
                ElementTree.fromstring(book.read(name))
    assert drawn and package.count('properties="svg"') == len(drawn)
    assert "alternativeText" in package


def test_plain_text_says_every_value(report):
    text = made(report, "text", lines="unbroken").decode()
    for chart in charts_of(report):
        for bar in chart.bars:
            assert f"{plain(bar.label)}: {plain(bar.told, long=True)}" in text


def test_braille_keeps_lines_and_pages(report):
    lines = made(report, "braille", width=28, length=27).decode().split("\r\n")
    assert all(len(each.strip("\x0c")) <= 28 for each in lines)


@pytest.mark.parametrize("file", ["brf", "pef", "unicode", "ebraille"])
def test_braille_is_made_in_every_kind_of_file(report, file):
    assert made(report, "braille", file=file)


def test_a_chart_of_zeros_is_drawn():
    from handouts.handout import Bar, Handout, Text

    bars = tuple(Bar((Text(str(day)),), Decimal(0), (Text("0"),)) for day in range(3))
    chart = Chart((Text("Zeros"),), (Text("All zero."),), bars)
    handout = Handout("progress", "en", (Text("T"),), "N", "C", "P", 1, "N, C", "2029-01-01", "", (chart,))
    for form in FORMS:
        assert FORMS[form].render(handout, Forms.defaults(form), Look()).data


# --- the command -----------------------------------------------------------------------------


def test_the_report_is_made_in_the_clients_own_forms(run, folder):
    result = run("progress", "C4")
    assert result.exit_code == 0, result.output
    names = sorted(path.name for path in (folder / "out" / "C4" / "progress").iterdir())
    assert names == ["C4-progress.brf", "C4-progress.html"]
    assert "Session load of 2029-01-09: 287, effort 7 times 41:00." in result.output
    assert "Best of floor-press, left: 4 kg, 10 reps, logs/C4.csv:4." in result.output
    assert "Look: logs/C4.csv:6 names no day or no exercise" in result.output
    assert "9 January 2029; Weight moved at least 1288 kilograms" in result.output


def test_another_form_can_be_asked_for(run, folder):
    assert run("progress", "C2", "--as", "print").exit_code == 0
    assert [path.suffix for path in (folder / "out" / "C2" / "progress").iterdir()] == [".pdf"]


def test_nothing_logged_makes_nothing(run, folder):
    result = run("progress", "C3")
    assert result.exit_code == 1 and "Nothing is logged yet." in result.output
    assert not (folder / "out" / "C3").exists()


def test_an_unknown_client_is_a_fault(run):
    assert run("progress", "C9").exit_code == 2
