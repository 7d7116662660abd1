"""The proof: what reads back differently, and what a trainer is shown of it."""

from __future__ import annotations

import datetime
import json
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from click.testing import CliRunner
from playwright.sync_api import Browser

from handouts import carried
from handouts.braille.bulk import bulk_of
from handouts.braille.codes import find_code
from handouts.braille.layout import lay_out
from handouts.braille.lines import Segment
from handouts.braille.pages import Page, Paper, Volume
from handouts.braille.proof import EXPLAINED, FAULTS, Proof, compare, digits, prove, whole_words
from handouts.braille.translation import words
from handouts.cli import main
from handouts.forms import Look
from handouts.handout import Foreign, Handout, Paragraph, Strong, Text
from handouts.making.proof import make_proofs, page
from handouts.models import BrailleForm
from tests.braille.cells import cells_of
from tests.braille.sheets import SHEET
from tests.forms.browser import axe, chromium, nu_html

UEB = find_code("ueb", 2)


# --- one word ----------------------------------------------------------------


@pytest.mark.parametrize(
    ("cells", "written", "kind", "back"),
    [
        ("#AB", "12", None, None),
        ("#AC", "12", "number", "13"),
        ("#AB", "12 lb", "letters", None),
        ("#A4E", "12.5", "number", None),
        ("%\\LD]", "shoulder", None, None),
        ("%\\LD", "shoulder", "letters", None),
        ("SQUAT1", "squat.", "signs", "squat,"),
        ("/OP", "STOP", "case", "stop"),
        ("#H,-#AB", "8–12", None, None),
        ("8SL[0", "“slow”", "marks", '"slow"'),
        ("A@B4ORG", "a@b.org", "one way", None),
    ],
)
def test_what_is_different_about_a_word(cells: str, written: str, kind: str | None, back: str | None) -> None:
    found = compare(Segment(cells_of(cells), written), UEB)
    if kind is None:
        assert found is None or found[0] not in FAULTS
    else:
        assert found is not None and found[0] == kind
        assert back is None or found[1] == back


def test_likelier_faults_come_first() -> None:
    assert FAULTS == ("number", "letters", "signs") and tuple(EXPLAINED)[: len(FAULTS)] == FAULTS


def test_emphasis_and_foreign_words_are_no_difference() -> None:
    line = (
        Strong((Text("Never hold your breath"),)),
        Text(", say "),
        Foreign("fr", (Text("étirement du dos là-bas"),)),
        Text(" 2 1/2 times, 3 x 12."),
    )
    for code in (find_code(name, grade) for name in ("ueb", "fr", "de", "es") for grade in (1, 2)):
        for word in words(line, code):
            found = compare(Segment(word.cells, word.print, language=word.language, strong=word.strong), code)
            assert found is None or found[0] not in FAULTS, (code, word, found)


# --- one sheet ---------------------------------------------------------------


def _volume_with(change: dict[str, str]) -> Volume:
    """The hand-made sheet's pages, some of their words with other cells."""
    volume = lay_out(SHEET, UEB, Paper(32, 20))
    pages = []
    for one in volume.pages:
        lines = []
        for line in one.lines:
            changed = tuple(
                word._replace(cells=cells_of(change[word.print])) if word.print in change else word
                for word in line.words
            )
            lines.append(replace(line, words=changed))
        pages.append(Page(one.number, tuple(lines)))
    return replace(volume, pages=tuple(pages))


def test_a_wrong_cell_is_found_where_it_stands(monkeypatch: pytest.MonkeyPatch) -> None:
    wrong = _volume_with({"dumbbell": "DUMB2LL", "112.": "#AAC4"})
    monkeypatch.setattr("handouts.braille.proof.lay_out", lambda *_: wrong)
    proof = prove(SHEET, UEB, Paper(32, 20))
    assert next((fault.kind, fault.print, fault.back) for fault in proof.faults) == ("number", "112.", "113")
    found = next(fault for fault in proof.faults if fault.print == "dumbbell")
    assert found.kind == "letters" and found.times == 3
    line = wrong.pages[found.page - 1].lines[found.line - 1]
    assert "dumbbell" in line.print


def test_a_word_that_was_broken_is_compared_whole() -> None:
    long_word = "https://example.org/a-very-long-address/without-any-end-at-all"
    handout = replace(SHEET, blocks=(Paragraph((Text(f"See {long_word} now."),)),))
    volume = lay_out(handout, UEB, Paper(20, 12))
    assert sum(len(line.words) for one in volume.pages for line in one.lines) > 12
    assert long_word in [word.print for _, _, word in whole_words(volume)]
    assert prove(handout, UEB, Paper(20, 12)).faults == ()


@pytest.mark.parametrize(
    ("name", "language", "text"),
    [
        ("fr", "fr", "Descendez lentement, soufflez en montant : 8–12 répétitions, 12,5 kg. « Doucement ! »"),
        ("de", "de", "Gehen Sie langsam in die Knie und atmen Sie beim Aufstehen aus. 3 × 12, 12,5 kg, 42:35."),
        ("es", "es", "Baje despacio y espire al subir. Tres series de 12, 12,5 kg, ¿de acuerdo? ¡Muy bien!"),
    ],
)
@pytest.mark.parametrize("grade", [1, 2])
def test_sentences_in_the_other_codes_read_back(name: str, language: str, text: str, grade: int) -> None:
    handout = replace(SHEET, language=language, title=(Text("A"),), blocks=(Paragraph((Text(text),)),))
    proof = prove(handout, find_code(name, grade), Paper(30, 20))
    assert proof.faults == ()
    assert proof.words >= (10 if proof.whole else 2)
    assert proof.whole is ((name, grade) not in (("de", 2), ("es", 2)))


@pytest.mark.parametrize(
    ("name", "grade", "text", "said"),
    [
        ("ueb", 2, "42:35", "4235"),
        ("ueb", 2, "16\u00a0000", "16000"),
        ("ueb", 2, "2nd", "2"),
        ("fr", 1, "42:35", "4235"),
        ("fr", 1, "(8–12)", "812"),
        ("de", 2, "12,5", "125"),
        ("es", 1, "1.234,5", "12345"),
        ("es", 1, "12º", "12"),
    ],
)
def test_numbers_are_read_without_the_table(name: str, grade: int, text: str, said: str) -> None:
    code = find_code(name, grade)
    assert digits("".join(word.cells for word in words((Text(text),), code)), code) == said


def test_a_wrong_number_is_found_in_a_one_way_code() -> None:
    german = find_code("de", 2)
    assert compare(Segment(cells_of("#AC"), "12"), german) == ("number", "13")
    assert compare(Segment(cells_of("#AB"), "12"), german) is None


def test_each_line_stands_beside_its_words() -> None:
    proof = prove(SHEET, UEB, Paper(32, 20))
    line = next(line for line in proof.lines if "Push the floor away" in line.print)
    assert line.ascii.lstrip().startswith("#B4 ,PU% ! FLOOR AWAY")
    assert [line.ascii for line in proof.lines if line.role == "rule"][:2] == ["7" * 32, "G" * 32]


# --- what it weighs ----------------------------------------------------------


def test_bulk_is_arithmetic() -> None:
    # 40 cells at 6.2 mm and 25 lines at 10 mm, with 30 mm of edges: 278 by 280 mm; 160 g a square metre.
    bulk = bulk_of(100, Paper(40, 25))
    assert (bulk.pages, bulk.sheets, bulk.grams, bulk.volumes) == (100, 100, round(100 * 0.278 * 0.28 * 160), 2)
    both = bulk_of(101, Paper(40, 25, both_sides=True))
    assert (both.sheets, both.volumes) == (51, 1)
    assert "Bind it in 2 volumes" in bulk.told() and "volumes" not in both.told()
    assert bulk_of(1, Paper(32, 0)).sheets == 0


# --- the demo and the page ---------------------------------------------------

TODAY = datetime.date(2029, 1, 20)


@pytest.mark.parametrize("client", ["C1", "C2", "C3", "C4", "C5", "C6"])
def test_the_demos_proofs_have_no_unexplained_difference(client: str, tmp_path: Path) -> None:
    proofs = list(make_proofs(carried.demo_studio(), tmp_path, client, TODAY))
    assert proofs and all(one.path.is_file() for one in proofs)
    for one in proofs:
        assert one.proof.words > 100
        assert one.proof.faults == ()


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with chromium() as running:
        yield running


def _proof_with_faults(handout: Handout) -> Proof:
    proof = prove(handout, UEB, Paper(32, 20))
    one = replace(proof.differences[0], kind="number", print="16 < 17", back="17 & more")
    return replace(proof, differences=(one, replace(one, kind="letters"), *proof.differences))


@pytest.mark.parametrize("faulty", [False, True])
def test_the_page_is_accessible(faulty: bool, browser: Browser, tmp_path: Path) -> None:
    proof = _proof_with_faults(SHEET) if faulty else prove(SHEET, UEB, Paper(32, 20))
    file = tmp_path / "proof.html"
    file.write_text(page(SHEET, BrailleForm(), proof, Look()), "utf-8")
    assert nu_html(file) == ""
    # Scripts of the checker need a context without the page's own policy.
    context = browser.new_context(viewport={"width": 1280, "height": 900}, bypass_csp=True)
    shown = context.new_page()
    shown.goto(file.as_uri())
    assert axe(shown, doubts=False) == []
    headings = shown.locator("h1, h2").all_inner_texts()
    assert headings[:2] == ["Braille proof: Strength in pairs, weeks one and two - Tomasz", "Result"]
    assert ("Words to look at" in headings) is faulty
    assert shown.locator("h3", has_text="Braille page").count() == proof.lines[-1].page
    text = shown.locator("main").inner_text()
    assert ("16 < 17" in text) is faulty and "liblouis 3." in text
    context.close()


def test_what_stands_in_the_file_is_shown_in_letters_of_one_width(browser: Browser, tmp_path: Path) -> None:
    """So that cells of one line stand below those of another."""
    path = tmp_path / "proof.html"
    path.write_text(page(SHEET, BrailleForm(), prove(SHEET, UEB, Paper(32, 20)), Look()), "utf-8")
    shown = browser.new_page()
    shown.goto(path.as_uri())
    widths = shown.evaluate(
        """[...document.querySelectorAll("td.ascii")].slice(0, 2).map((cell) => ["iiii", "WWWW", "  .:"].map((text) => {
          const range = document.createRange(); cell.textContent = text; range.selectNodeContents(cell);
          return range.getBoundingClientRect().width }))"""
    )
    shown.close()
    assert len(widths) == 2 and all(len({round(width, 1) for width in each}) == 1 and each[0] > 20 for each in widths)


def test_the_command_tells_and_writes(tmp_path: Path) -> None:
    words = ["proof", "C2", "--studio", str(carried.demo_studio()), "--out", str(tmp_path)]
    result = CliRunner().invoke(main, words)
    assert result.exit_code == 0, result.output
    lines = result.output.splitlines()
    assert len(lines) == 3 and all("every word reads back" in line for line in lines)
    data = json.loads(CliRunner().invoke(main, [*words, "--report", "json"]).output)
    assert [one["sheet"] for one in data] == ["sheet", "card", "log"]
    assert data[0]["liblouis"].startswith("3.") and data[0]["tables"] == ["en-ueb-g2.ctb"]
    assert Path(data[0]["path"]).is_file() and data[0]["words"] > 1000


def test_the_command_knows_who_is_not_there(tmp_path: Path) -> None:
    result = CliRunner().invoke(main, ["proof", "C22", "--studio", str(carried.demo_studio()), "--out", str(tmp_path)])
    assert result.exit_code == 2
    assert "no client 'C22' in this studio" in result.output
