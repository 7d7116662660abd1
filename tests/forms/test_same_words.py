"""All forms say the same: read back, each form has the words of the tree in order.

The log is left out here: each form lays it out for its own hand, and tests of
its own hold its fields against the tree.  What else differs stands in
handouts.forms.DIFFERENCES.
"""

from __future__ import annotations

import datetime
import io
import re
import subprocess
import zipfile
from collections.abc import Iterator
from pathlib import Path

import pytest
from lxml import etree
from lxml import html as lxml_html

from handouts import carried
from handouts.braille.codes import find_code
from handouts.braille.liblouis import owner
from handouts.fitting.fit import fit
from handouts.fitting.sheets import sheet as word_sheet
from handouts.forms import DIFFERENCES, FORMS, Look
from handouts.forms import print as print_form
from handouts.handout import (
    Caution,
    Dose,
    Facts,
    Handout,
    Heading,
    Item,
    LogSheet,
    Paragraph,
    Section,
    plain,
    walk,
)
from handouts.models import BrailleForm, EpubForm, PrintForm, ScreenForm, TextForm
from handouts.reading import read_studio

CLIENTS = ["C1", "C2", "C3", "C4", "C5", "C6"]


@pytest.fixture(scope="module")
def handouts() -> dict[tuple[str, str], Handout]:
    """(client, kind of sheet) to the handout of the client's first plan."""
    studio = read_studio(carried.demo_studio(), carried.starter_texts())
    made = {}
    for code in CLIENTS:
        client = studio.clients[code]
        choice = client.facts.plans[0]
        version = choice.version or max(v for plan, v in studio.plans if plan == choice.plan)
        session = fit(
            client, studio.plans[choice.plan, version], studio.exercises, studio.facts,
            previous=studio.plans.get((choice.plan, version - 1)), today=datetime.date(2029, 1, 8), history=(),
        )  # fmt: skip
        made[code, "sheet"] = word_sheet("sheet", session)
        made[code, "card"] = word_sheet("card", session)
    return made


def tokens(text: str) -> list[str]:
    return re.findall(r"[^\W_]+", text.lower().replace("\u2019", "'"))


def told(handout: Handout, long: bool) -> Iterator[list[str]]:
    """The words of each statement of the tree, in order, without the log."""
    for block in walk(handout.blocks):
        if isinstance(block, Section) and block.kind == "log":
            return
        if isinstance(block, Heading | Paragraph | Dose | Item):
            yield tokens(plain(block.content, long))
        elif isinstance(block, Caution):
            yield tokens(plain(block.title, long))
        elif isinstance(block, Facts):
            yield from (tokens(f"{plain(fact.label, long)} {plain(fact.value, long)}") for fact in block.facts)
        assert not isinstance(block, LogSheet)


def assert_in_order(statements: Iterator[list[str]], said: list[str]) -> int:
    """Each statement stands whole in `said`, after the one before it."""
    at = count = 0
    for words in statements:
        found = next((start for start in range(at, len(said)) if said[start : start + len(words)] == words), None)
        assert found is not None, (" ".join(words), " ".join(said[at : at + 40]))
        at, count = found + len(words), count + 1
    return count


@pytest.mark.parametrize("kind", ["sheet", "card"])
@pytest.mark.parametrize("client", CLIENTS)
def test_every_form_has_every_statement_in_order(
    client: str, kind: str, handouts: dict[tuple[str, str], Handout], tmp_path: Path
) -> None:
    handout = handouts[client, kind]

    data = FORMS["screen"].render(handout, ScreenForm(), Look()).data
    screen = tokens(" ".join(lxml_html.fromstring(data).find(".//main").itertext()))
    assert assert_in_order(told(handout, long=True), screen) > 8

    text = tokens(FORMS["text"].render(handout, TextForm(), Look()).data.decode())
    assert_in_order(told(handout, long=True), text)

    with zipfile.ZipFile(io.BytesIO(FORMS["epub"].render(handout, EpubForm(), Look()).data)) as book:
        package = etree.fromstring(book.read("EPUB/package.opf"))
        names = {item.get("id"): item.get("href") for item in package.iter("{*}item")}
        spine = [names[ref.get("idref")] for ref in package.iter("{*}itemref")]
        pages = [etree.fromstring(book.read(f"EPUB/{name}")).find("{*}body") for name in spine]
    assert_in_order(told(handout, long=True), tokens(" ".join(" ".join(page.itertext()) for page in pages)))

    page = lxml_html.fromstring(print_form.page_html(handout, PrintForm(), Look()))
    assert_in_order(told(handout, long=False), tokens(" ".join(page.find(".//main").itertext())))
    # The repair has shown that the PDF says what its HTML says; here the
    # text as poppler reads it, without the lines in the margins.
    (tmp_path / "sheet.pdf").write_bytes(FORMS["print"].render(handout, PrintForm(), Look()).data)
    crop = ["-x", "0", "-y", "62", "-W", "595", "-H", "730"]
    words = ["pdftotext", "-raw", *crop, tmp_path / "sheet.pdf", "-"]
    printed = tokens(subprocess.run([str(w) for w in words], capture_output=True, text=True, check=True).stdout)
    assert_in_order(without_step_numbers(told(handout, long=False)), [word for word in printed if not word.isdigit()])


def without_step_numbers(statements: Iterator[list[str]]) -> Iterator[list[str]]:
    """Poppler reads step numbers as text, wherever a step crosses a page."""
    yield from ([word for word in words if not word.isdigit()] for words in statements)


@pytest.mark.parametrize("client", CLIENTS)
def test_braille_says_the_same_when_it_is_read_back(client: str, handouts: dict[tuple[str, str], Handout]) -> None:
    """Uncontracted and without pages, so that it can be read back at all.

    What translating back cannot keep apart (capitals, dashes, quotes: standards
    of back-translation in liblouis) is folded by the comparison of words.
    """
    handout = handouts[client, "card"]
    code = "fr" if handout.language == "fr" else "ueb"
    form = BrailleForm.model_validate({"code": code, "grade": "1", "paper": "notetaker", "file": "unicode"})
    cells = FORMS["braille"].render(handout, form, Look()).data.decode("utf-8")
    spoken = read_back(cells, code)
    wanted = [word for words in told(handout, long=False) for word in words]
    # Each number, and nineteen words of twenty, in their order.
    at = missing = 0
    for word in wanted:
        found = next((place for place in range(at, min(at + 40, len(spoken))) if spoken[place] == word), None)
        if found is None:
            missing += 1
            assert not word.isdigit(), (word, spoken[at : at + 40])
        else:
            at = found + 1
    assert missing <= len(wanted) / 20


def read_back(cells: str, code: str) -> list[str]:
    tables = find_code(code, 1).tables
    return tokens(owner().backward(tables, "\u2800".join(cells.split())))


def test_the_list_of_differences_names_every_form() -> None:
    assert {form for form, _, _ in DIFFERENCES} == set(FORMS)
    assert all(what and why for _, what, why in DIFFERENCES)
