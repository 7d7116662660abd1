"""Every file that is written is read back and holds the same cells."""

from __future__ import annotations

import io
import itertools
import math
import re
import zipfile
from pathlib import Path
from xml.etree import ElementTree

import pytest
from hypothesis import HealthCheck, given, settings
from lxml import etree

from handouts.braille import brf, ebraille, liblouis, pef, unicode_text
from handouts.braille.codes import find_code
from handouts.braille.layout import lay_out
from handouts.braille.pages import Paper, Volume
from handouts.errors import RenderError
from handouts.forms import Look
from handouts.forms import braille as form
from handouts.handout import Handout
from handouts.models import BrailleForm
from tests.braille.sheets import SHEET
from tests.braille.trees import HANDOUTS

UEB = find_code("ueb", 2)
CELLS = "".join(chr(0x2800 + place) for place in range(64))

# Braille ASCII by the dots of each cell, as the text table en-nabcc of BRLTTY
# 6.5 (Debian's package) has it; that table has the lower-case variant.
DOTS = {
    " ": "", "!": "2346", '"': "5", "#": "3456", "$": "1246", "%": "146", "&": "12346", "'": "3", "(": "12356",
    ")": "23456", "*": "16", "+": "346", ",": "6", "-": "36", ".": "46", "/": "34", "0": "356", "1": "2", "2": "23",
    "3": "25", "4": "256", "5": "26", "6": "235", "7": "2356", "8": "236", "9": "35", ":": "156", ";": "56",
    "<": "126", "=": "123456", ">": "345", "?": "1456", "_": "456", "`": "4", "a": "1", "b": "12", "c": "14",
    "d": "145", "e": "15", "f": "124", "g": "1245", "h": "125", "i": "24", "j": "245", "k": "13", "l": "123",
    "m": "134", "n": "1345", "o": "135", "p": "1234", "q": "12345", "r": "1235", "s": "234", "t": "2345", "u": "136",
    "v": "1236", "w": "2456", "x": "1346", "y": "13456", "z": "1356", "{": "246", "|": "1256", "}": "12456",
    "~": "45",
}  # fmt: skip


def _lines(volume: Volume) -> tuple[tuple[str, ...], ...]:
    """The pages as a reader gives them: empty lines at the end left out."""
    pages = []
    for page in volume.pages:
        lines = [line.cells for line in page.lines]
        while lines and not lines[-1]:
            lines.pop()
        pages.append(tuple(lines))
    return tuple(pages)


# --- Braille ASCII -----------------------------------------------------------


def _shown(display: str) -> str:
    """Every cell as a display table shows it."""
    louis = liblouis.owner()._louis
    return "".join(louis.translateString([display, "unicode-braille.utb"], cell) for cell in CELLS)


def test_the_table_is_liblouiss_own_for_brf() -> None:
    # Source: liblouis's display table en-us-brf.dis, asked for each cell.
    assert _shown("en-us-brf.dis") == brf.BRAILLE_ASCII


def test_the_table_is_brlttys_too() -> None:
    assert len(DOTS) == 64
    lower = brf.BRAILLE_ASCII.translate(brf._LOWER)
    for place, character in enumerate(lower):
        assert DOTS[character] == "".join(str(dot + 1) for dot in range(6) if place >> dot & 1)


def test_the_lower_case_variant_is_liblouiss() -> None:
    # Source: liblouis's display table text_nabcc.dis.
    assert _shown("text_nabcc.dis") == brf.BRAILLE_ASCII.translate(brf._LOWER)


# --- BRF ---------------------------------------------------------------------


@pytest.mark.parametrize("padded", [False, True])
@pytest.mark.parametrize("lower_case", [False, True])
def test_brf_bytes(padded: bool, lower_case: bool) -> None:
    volume = lay_out(SHEET, UEB, Paper(32, 20))
    data = brf.write(volume, padded, lower_case)
    assert set(data) <= {0x0A, 0x0C, 0x0D, *range(0x20, 0x60)} | (set(range(0x60, 0x7F)) if lower_case else set())
    # CR and LF only together; each page of 20 lines ends with a line end and a form feed.
    assert data.count(b"\r\n") == data.count(b"\r") == data.count(b"\n") == 20 * len(volume.pages)
    assert data.endswith(b"\r\n\f") and data.count(b"\f") == len(volume.pages)
    for page in data.split(b"\f")[:-1]:
        lines = page.split(b"\r\n")[:-1]
        assert len(lines) == 20
        assert all(len(line) == 32 if padded else line == line.rstrip() for line in lines)
    assert brf.read(data) == _lines(volume)


def test_an_endless_page_has_no_form_feed() -> None:
    volume = lay_out(SHEET, UEB, Paper(32, 0))
    data = brf.write(volume)
    assert len(volume.pages) == 1 and b"\f" not in data and data.endswith(b"\r\n")
    assert brf.read(data) == _lines(volume)


def test_reading_takes_other_line_ends_and_letters() -> None:
    assert brf.read(b"abc\n`1\n\f@d\n") == (("⠁⠃⠉", "⠈⠂"), ("⠈⠙",))
    with pytest.raises(ValueError, match="page 1, line 2, cell 3: byte 0xE9"):
        brf.read(b"AB\r\nCD\xe9\r\n\f")


# --- Unicode text ------------------------------------------------------------


def test_unicode_text() -> None:
    volume = lay_out(SHEET, UEB, Paper(28, 27))
    data = unicode_text.write(volume)
    assert unicode_text.read(data) == _lines(volume)
    assert set(data.decode()) <= {*CELLS, "\n", "\f"}
    with pytest.raises(ValueError, match=r"U\+0041"):
        unicode_text.read(b"A\n")


# --- PEF ---------------------------------------------------------------------

GRAMMAR = etree.RelaxNG(etree.parse(Path(__file__).with_name("pef.rng")))
PEF = f"{{{pef.NAMESPACE}}}"


def _check_pef(data: bytes) -> etree._Element:
    """The grammar, and the two Schematron rules of the draft in our own words."""
    root = etree.fromstring(data)
    GRAMMAR.assertValid(root)
    for volume in root.iter(PEF + "volume"):
        for page in volume.iter(PEF + "page"):
            rows = page.findall(PEF + "row")
            gaps = sum(int(row.get("rowgap", volume.get("rowgap"))) for row in rows)
            assert all(len(row.text or "") <= int(volume.get("cols")) for row in rows)
            assert len(rows) + math.ceil(gaps / 4) <= int(volume.get("rows"))
    return root


@pytest.mark.parametrize("both_sides", [False, True])
def test_pef_is_valid_and_keeps_the_cells(both_sides: bool) -> None:
    volume = lay_out(SHEET, UEB, Paper(30, 25, both_sides=both_sides))
    data = pef.write(volume)
    root = _check_pef(data)
    assert pef.read(data) == _lines(volume)
    element = root.find(f".//{PEF}volume")
    assert (element.get("cols"), element.get("rows")) == ("30", "25")
    assert element.get("duplex") == ("true" if both_sides else "false")
    facts = {child.tag.rpartition("}")[2]: child.text for child in root.find(f".//{PEF}meta")}
    assert facts["title"] == "Strength in pairs, weeks one and two"
    assert facts["date"] == "2029-01-07" and facts["language"] == "en"
    assert re.fullmatch("urn:uuid:[0-9a-f-]{36}", facts["identifier"])
    assert data == pef.write(volume)


SAMPLE = f"""<pef version="2008-1" xmlns="{pef.NAMESPACE}"><head>
<meta xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:format>application/x-pef+xml</dc:format>
<dc:identifier>x</dc:identifier></meta></head><body>
<volume cols="40" rows="25" rowgap="0" duplex="true"><section><page><row>⠠⠎</row><row/></page></section></volume>
</body></pef>"""


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("<row>⠠⠎", "<row>⠠ ⠎"),
        ("<row>⠠⠎", "<row>⠠\n⠎"),
        (' rowgap="0"', ""),
        ("<page>", '<page cols="40">'),
        ('cols="40"', 'cols="0"'),
        ("<dc:identifier>", "<dc:title>a</dc:title><dc:title>b</dc:title><dc:identifier>"),
        ("<dc:identifier>", "<dc:date>2026-01</dc:date><dc:identifier>"),
    ],
)
def test_the_grammar_refuses_what_the_published_one_refuses(old: str, new: str) -> None:
    # The same cases were run against the published grammar: sample valid, each of these refused.
    assert GRAMMAR.validate(etree.fromstring(SAMPLE))
    assert old in SAMPLE and not GRAMMAR.validate(etree.fromstring(SAMPLE.replace(old, new, 1)))


def test_pef_has_no_endless_page() -> None:
    with pytest.raises(RenderError, match="needs pages"):
        pef.write(lay_out(SHEET, UEB, Paper(32, 0)))
    with pytest.raises(ValueError, match="no PEF"):
        pef.read(b"<x/>")


# --- eBraille ----------------------------------------------------------------

XHTML = "{http://www.w3.org/1999/xhtml}"
EPUB = "{http://www.idpf.org/2007/ops}"
OPF = "{http://www.idpf.org/2007/opf}"
DC = "{http://purl.org/dc/elements/1.1/}"


@pytest.fixture(scope="module")
def files() -> dict[str, bytes]:
    data = ebraille.write(SHEET, UEB)
    assert data == ebraille.write(SHEET, UEB)
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        first = archive.infolist()[0]
        # EPUB 3.3, OCF: the first entry is mimetype, not compressed, without extra fields.
        assert (first.filename, first.compress_type, first.extra) == ("mimetype", zipfile.ZIP_STORED, b"")
        return {entry.filename: archive.read(entry) for entry in archive.infolist()}


def test_ebraille_has_its_files_in_their_places(files: dict[str, bytes]) -> None:
    assert files["mimetype"] == b"application/epub+zip"
    assert {"package.opf", "index.html", "META-INF/container.xml"} <= set(files)
    package = ElementTree.fromstring(files["package.opf"])
    listed = {item.get("href") for item in package.iter(OPF + "item")}
    assert listed == set(files) - {"mimetype", "package.opf", "META-INF/container.xml"}
    assert [item.get("href") for item in package.iter(OPF + "item") if item.get("properties") == "nav"] == [
        "index.html"
    ]


def test_ebraille_metadata_is_complete(files: dict[str, bytes]) -> None:
    package = ElementTree.fromstring(files["package.opf"])
    found = {child.tag.replace(DC, "dc:"): child.text for child in package.find(OPF + "metadata")}
    found |= {meta.get("property"): meta.text for meta in package.iter(OPF + "meta")}
    assert found["dc:format"] == "eBraille 1.0"
    assert found["dc:language"] == "en-Brai"
    assert found["a11y:brailleCellType"] == "6"
    assert found["a11y:brailleSystem"] == "UEB grade2"
    assert found["a11y:tactileGraphics"] == "none"
    assert found["a11y:completeTranscription"] == "true"
    for name in (
        "dc:title", "dc:creator", "dc:identifier", "dc:date", "dcterms:modified", "dcterms:dateCopyrighted",
        "a11y:producer",
    ):  # fmt: skip
        assert found[name]


@pytest.mark.parametrize("name", ["index.html", "text.html"])
def test_ebraille_text_is_cells_and_spaces_alone(files: dict[str, bytes], name: str) -> None:
    root = ElementTree.fromstring(files[name])
    assert {*"".join(root.itertext())} <= {*CELLS[1:], " ", "\n"}
    tags = {element.tag.removeprefix(XHTML) for element in root.iter()}
    assert not tags & {"script", "form", "img", "br"}


def test_ebraille_is_navigated_by_its_headings(files: dict[str, bytes]) -> None:
    index, text = ElementTree.fromstring(files["index.html"]), ElementTree.fromstring(files["text.html"])
    nav = index.find(f".//{XHTML}nav")
    assert (nav.get(EPUB + "type"), nav.get("role")) == ("toc", "doc-toc")
    assert index.find(f".//{XHTML}link[@rel='publication']").get("href") == "package.opf"
    targets = [link.get("href") for link in nav.iter(XHTML + "a")]
    ids = {f"text.html#{element.get('id')}": element for element in text.iter() if element.get("id")}
    assert len(targets) == 6 and set(targets) <= set(ids)
    for link in nav.iter(XHTML + "a"):
        assert "".join(link.itertext()) == "".join(ids[link.get("href")].itertext())
    levels = [int(element.tag[-1]) for element in text.iter() if re.fullmatch(XHTML + "h[1-6]", element.tag)]
    assert levels[0] == 1 and all(later - earlier <= 1 for earlier, later in itertools.pairwise(levels))


def test_ebraille_says_the_words_of_the_pages_in_the_same_cells(files: dict[str, bytes]) -> None:
    text = ElementTree.fromstring(files["text.html"]).find(XHTML + "body")
    words = " ".join(text.itertext()).split()
    volume = lay_out(SHEET, UEB, Paper(42, 0))
    paged = [
        word
        for line in volume.pages[0].lines
        if line.role not in ("rule", "note", "room")
        for word in line.cells.split("\u2800")
        if word
    ]
    assert words == paged


# --- all of them -------------------------------------------------------------


@pytest.mark.parametrize(
    ("file", "start"), [("brf", b" "), ("pef", b"<?xml"), ("unicode", "⠀".encode()), ("ebraille", b"PK")]
)
def test_the_form_writes_the_file_that_the_settings_name(file: str, start: bytes) -> None:
    settings_of_client = BrailleForm.model_validate({"file": file, "paper": "A4"})
    rendered = form.render(SHEET, settings_of_client, Look())
    assert rendered.data.startswith(start)
    assert rendered.pages == (0 if file == "ebraille" else len(lay_out(SHEET, UEB, Paper(28, 28)).pages))


def test_a_table_list_of_the_clients_own() -> None:
    own = BrailleForm.model_validate({"tables": ["en-us-g1.ctb"]})
    # American braille as it was before UEB.
    assert form.code_of(own).tables == ("en-us-g1.ctb",)
    assert form.render(SHEET, own, Look()).pages > 1
    with pytest.raises(RenderError, match=r"nowhere\.ctb"):
        form.code_of(BrailleForm.model_validate({"tables": ["nowhere.ctb"]}))


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(HANDOUTS)
def test_what_is_written_is_read_back(handout: Handout) -> None:
    volume = lay_out(handout, find_code("ueb", 1), Paper(24, 12))
    assert brf.read(brf.write(volume)) == _lines(volume)
    assert unicode_text.read(unicode_text.write(volume)) == _lines(volume)
    data = pef.write(volume)
    _check_pef(data)
    assert pef.read(data) == _lines(volume)
