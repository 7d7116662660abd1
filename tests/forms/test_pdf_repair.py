"""The structure of the PDF, checked by two packages and against the HTML.

Checkers: the packages pdfua and outloud.  pdfua skips its heading order rule
with the pikepdf in use, so that has a test of its own here.
"""

from __future__ import annotations

import io
import json
import re
import subprocess
import sys
from collections import Counter
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path
from typing import Any

import pikepdf
import pytest
import weasyprint
from lxml import html as lxml_html

from handouts.errors import RenderError
from handouts.forms import Look
from handouts.forms import print as print_form
from handouts.forms.pdf_repair import elements, faults, repair
from tests.forms.conftest import print_settings
from tests.forms.trees import AWKWARD, LONG

Sheet = Callable[..., Path]
LOOKS: list[dict[str, Any]] = [
    {"size": 14, "colours": "white on black"},
    {"size": 18},
    {"size": 28, "paper": "Letter", "weight": "bold", "colours": "black on yellow"},
    {"size": 48, "colours": "yellow on black"},
]
CASES = [(name, look) for name in AWKWARD for look in LOOKS if name != "usual" or look["size"] in (18, 48)]
every_case = pytest.mark.parametrize(("name", "look"), CASES, ids=lambda case: str(case).replace(" ", "-"))


def text_of(element: pikepdf.Object, said: dict[tuple[Any, int], str]) -> str:
    """What an element says: its kids in order, ActualText in their place."""
    if "/ActualText" in element:
        return str(element.ActualText)
    pieces = []
    for kid in element.get("/K", []):
        if isinstance(kid, int):
            pieces.append(said.get((element.Pg.objgen, kid), ""))
        elif "/MCID" in kid:
            pieces.append(said.get((kid.Pg.objgen, int(kid.MCID)), ""))
        elif str(kid.S) != "/Lbl":
            pieces.append(text_of(kid, said))
    # Lines of one element: the end of a line is a space, but for a soft hyphen.
    return " ".join(piece.strip() for piece in pieces).replace("\u00ad ", "")


def said_by_content(path: Path) -> dict[tuple[Any, int], str]:
    """The text of each marked content, as outloud reads it from the fonts."""
    from outloud.model import Document

    said = {}
    with pikepdf.open(path) as pdf:
        ids = [page.obj.objgen for page in pdf.pages]
    document = Document(str(path))
    for number, page_id in enumerate(ids):
        for key, text in document.content(number).mcid_text.items():
            said[page_id, key[1]] = text
    return said


# Rule of outloud to why its finding is false, and what stands for it here.
FALSE_ALARMS = {
    # A heading of one word that begins three pages counts as a running line.
    # test_structure_says_the_words_of_the_html_in_order shows that the running
    # line and the page numbers are not among the content.
    "PAG-001": "the same heading at the top of three pages",
    # Dates and weights have fewer letters than other signs.
    # test_a_drawing_has_its_values_as_alternative_text.
    "FIG-012": "values of a chart are no sentences",
}


def findings(path: Path) -> list[str]:
    """Every error and warning of both checkers but the false alarms."""
    folder = Path(sys.executable).parent
    pdfua = subprocess.run([folder / "pdfua", "check", "--format", "json", path], capture_output=True, text=True, check=False)
    outloud = subprocess.run([folder / "outloud", "--json", "-", "--quiet", path], capture_output=True, text=True, check=False)
    found = [json.dumps(one) for one in json.loads(pdfua.stdout)["findings"]]
    report = json.loads(outloud.stdout[outloud.stdout.index("{") :])
    for document in report["results"]:
        found += [json.dumps(one) for one in document["findings"] if one["severity"] != "info" and one["rule"] not in FALSE_ALARMS]
    return found


@every_case
def test_two_checkers_find_nothing(name: str, look: dict[str, Any], sheet: Sheet) -> None:
    assert findings(sheet(name, **look)) == []


def test_the_checkers_do_find_faults(tmp_path: Path) -> None:
    """The same list is not empty for a file as WeasyPrint leaves it."""
    data, _ = made_from("<h1>One</h1><table><tr><th>A</th></tr><tr><td>b</td></tr></table>")
    (tmp_path / "raw.pdf").write_bytes(data)
    assert findings(tmp_path / "raw.pdf") != []


def test_a_drawing_has_its_values_as_alternative_text(sheet: Sheet) -> None:
    with pikepdf.open(sheet("chart", size=18)) as pdf:
        (figure,) = [element for element in elements(pdf) if element.S == "/Figure"]
        assert str(figure.Alt) == "Weight lifted: Week 1: 140 kilograms; Week 2: 180 kilograms; Week 3: 220 kilograms; Week 4: 260 kilograms."
        left, low, right, high = (float(side) for side in figure.A.BBox)
        width, height = (float(side) for side in pdf.pages[0].mediabox[2:])
        assert 0 < left < right < width and 0 < low < high < height


@every_case
def test_headings_start_at_one_and_skip_no_level(name: str, look: dict[str, Any], sheet: Sheet) -> None:
    """ISO 14289-1, 7.4.2; stands in for the rule UA-14-001 that pdfua skips."""
    with pikepdf.open(sheet(name, **look)) as pdf:
        levels = [int(str(e.S)[2:]) for e in elements(pdf) if re.fullmatch(r"/H\d", str(e.S))]
    assert levels[0] == 1 and levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))


@every_case
def test_one_element_for_each_of_the_html(name: str, look: dict[str, Any], sheet: Sheet) -> None:
    """However many pages a list, an item, a table or a paragraph crosses."""
    html = page(name, look)
    wanted = Counter(
        {
            "/L": len(html.xpath("//ul|//ol")), "/LI": len(html.xpath("//li")), "/Table": len(html.xpath("//table")),
            "/TR": len(html.xpath("//tr")), "/TH": len(html.xpath("//th")), "/TD": len(html.xpath("//td")),
            "/P": len(html.xpath("//p[not(@class='running')]")), "/Sect": len(html.xpath("//section")),
            "/Strong": len(html.xpath("//strong")),
        }
    )  # fmt: skip
    with pikepdf.open(sheet(name, **look)) as pdf:
        found = Counter(str(element.S) for element in elements(pdf))
        assert {kind: found[kind] for kind in wanted} == dict(wanted)
        assert found["/Lbl"] == len(html.xpath("//ol/li")) + len(html.xpath("//ul[not(@class)]/li"))


@every_case
def test_structure_says_the_words_of_the_html_in_order(name: str, look: dict[str, Any], sheet: Sheet) -> None:
    path = sheet(name, **look)
    html = page(name, look)
    # A drawing says its title as alternative text, not as content.
    for apart in html.xpath("//p[@class='running']|//svg/title"):
        apart.getparent().remove(apart)
    with pikepdf.open(path) as pdf:
        spoken = text_of(pdf.Root.StructTreeRoot.K[0], said_by_content(path))
    wanted = " ".join(html.find("body").itertext()).replace("\u00ad", "")
    if name == "long words":
        # A syllable wider than the page is cut, so the words cannot be told apart.
        assert "".join(spoken.split()) == "".join(wanted.split())
    else:
        assert tokens(spoken) == tokens(wanted)


def tokens(text: str) -> list[str]:
    """Words and signs: a line may end between them without a blank."""
    return re.findall(r"\w+|[^\w\s]", text)


def page(name: str, look: dict[str, Any]) -> Any:
    return lxml_html.fromstring(print_form.page_html(AWKWARD[name](), print_settings(**look), Look()))


def test_language_expansion_scope_and_numbering_are_kept(sheet: Sheet) -> None:
    with pikepdf.open(sheet("two languages", size=18)) as pdf:
        assert pdf.Root.Lang == "en"
        languages = Counter(str(e.Lang) for e in elements(pdf) if "/Lang" in e)
        html = page("two languages", {"size": 18})
        assert languages == Counter(html.xpath("//body//@lang"))
        numbered = [str(e.A.ListNumbering) for e in elements(pdf) if e.S == "/L"]
        assert {"/Decimal", "/Disc"} <= set(numbered)
    with pikepdf.open(sheet("long table", size=18)) as pdf:
        expansions = {str(e.E) for e in elements(pdf) if "/E" in e}
        assert expansions == {"12.5 kilograms"}
        heads = [e for e in elements(pdf) if e.S == "/TH"]
        assert Counter(str(e.A.Scope) for e in heads) == {"/Column": 3, "/Row": 60}
        names = {str(e.ID) for e in heads}
        cells = [e for e in elements(pdf) if e.S == "/TD"]
        assert len(cells) == 120
        for cell in cells:
            assert len(cell.A.Headers) == 2 and {str(each) for each in cell.A.Headers} <= names
        table = next(e for e in elements(pdf) if e.S == "/Table")
        assert [str(kid.S) for kid in table.K] == ["/Caption", "/THead", "/TBody"]


def test_a_table_over_five_pages_and_more_is_one_table(sheet: Sheet) -> None:
    with pikepdf.open(sheet("long table", size=28, paper="Letter", weight="bold", colours="black on yellow")) as pdf:
        (table,) = [each for each in elements(pdf) if each.S == "/Table"]
        rows = [row for body in table.K if body.S == "/TBody" for row in body.K]
        pages = {cell.Pg.objgen for row in rows for cell in row.K if "/Pg" in cell}
        assert len(rows) == 60 and len(pages) >= 5


def test_catalogue_and_metadata(sheet: Sheet) -> None:
    with pikepdf.open(sheet("usual", size=18)) as pdf:
        assert pdf.Root.MarkInfo.Marked is True
        assert pdf.Root.ViewerPreferences.DisplayDocTitle is True
        assert all(each.obj.Tabs == "/S" for each in pdf.pages)
        with pdf.open_outline() as outline:
            (top,) = outline.root
            assert top.title == "Circuit at home"
            assert [child.title for child in top.children] == [
                "The session at a glance",
                "Exercise 1 of 3: Goblet squat: to chair height",
                "Exercise 2 of 3: One-arm supported row",
                "Exercise 3 of 3: Band pull-apart",
                "Log sheet: Circuit at home",
            ]
        with pdf.open_metadata() as metadata:
            assert metadata["pdfuaid:part"] == "1"
            assert metadata["dc:title"] == "Circuit at home - Noor"
            assert metadata["dc:language"] == {"en"}
            assert not [key for key in metadata if "Date" in key]


def test_bookmarks_say_a_divided_word_whole(sheet: Sheet) -> None:
    with pikepdf.open(sheet("long words", size=28)) as pdf:
        with pdf.open_outline() as outline:
            titles = [child.title for child in outline.root[0].children]
        assert f"Exercise 1 of 1: {LONG}" in titles
        # A line that ends within a word ends in a soft hyphen (ISO 32000-1, 14.8.2.2.3).
        divided = [str(each.ActualText) for each in elements(pdf) if "/ActualText" in each]
        assert any(text.endswith("\u00ad") for text in divided) and not any("-" in text for text in divided)


def test_letters_that_differ_are_no_shared_glyph() -> None:
    """The same number of letters is not enough; a figure is never taken for another."""
    data, _ = made_from("<h1>Lift 12 times, left</h1>")
    for other in ("Lift 13 times, left", "Lift 12 times, loft", "Lift 12 times, right"):
        with pytest.raises(RenderError):
            repair(data, made_from(f"<h1>{other}</h1>")[1])


def test_all_painting_is_content_or_artifact(sheet: Sheet) -> None:
    for name in AWKWARD:
        with pikepdf.open(sheet(name, size=18)) as pdf:
            assert faults(pdf) == ()


def made_from(body: str) -> tuple[bytes, Any]:
    source = weasyprint.HTML(string=f'<html lang="en"><head><title>T</title></head><body>{body}</body></html>')
    return source.write_pdf(pdf_variant="pdf/ua-1"), source.etree_element


def test_pdf_ua_is_not_declared_when_a_check_fails() -> None:
    with pikepdf.open(io.BytesIO(repair(*made_from("<h1>One</h1><h3>Three</h3><p>Text</p>")))) as pdf:
        assert faults(pdf) == ("heading level 3 after 1",)
        assert "pdfuaid:part" not in pdf.open_metadata()
    with pikepdf.open(io.BytesIO(repair(*made_from("<h1>One</h1><h2>Two</h2><p>Text</p>")))) as pdf:
        assert pdf.open_metadata()["pdfuaid:part"] == "1"


def test_a_pdf_that_says_something_else_is_refused() -> None:
    data, _ = made_from("<h1>Lift the right arm</h1>")
    for other in ("Lift the left arm", "Lift the right arm now", "Lift"):
        with pytest.raises(RenderError):
            repair(data, made_from(f"<h1>{other}</h1>")[1])


def test_characters_that_share_a_glyph_keep_their_own_name() -> None:
    """U+00A0 and the space, and a soft and a hard hyphen, are one glyph in many fonts."""
    data, root = made_from("<h1>A</h1><p>\u00b5 and \u03bc, \u2126 and \u03a9</p>")
    with pikepdf.open(io.BytesIO(repair(data, root))) as pdf:
        assert faults(pdf) == ()


def test_only_the_heading_rule_was_skipped(sheet: Sheet) -> None:
    tool = Path(sys.executable).parent / "pdfua"
    words = [tool, "check", "--format", "json", sheet("usual", size=18)]
    told = json.loads(subprocess.run(words, capture_output=True, text=True, check=False).stdout)
    assert {rule["rule_id"] for rule in told["skipped"]} <= {"UA-14-001"}
    assert told["summary"]["rules_run"] >= 11
