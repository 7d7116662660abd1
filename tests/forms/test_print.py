"""The printed page, read back from the PDF with poppler and pikepdf.

Sources of the values: American Council of the Blind, "Best Practices and
Guidelines for Large Print Documents" (ACB); UK Association for Accessible
Formats, "Creating clear print and large print documents" (UKAAF); WCAG 2.2.
"""

from __future__ import annotations

import subprocess
import sys
from collections import defaultdict
from collections.abc import Callable
from dataclasses import dataclass
from itertools import combinations, pairwise
from pathlib import Path
from typing import Any

import pikepdf
import pytest
import wcag_contrast_ratio
from lxml import html as lxml_html

from handouts.forms import Look, paper
from handouts.forms import print as print_form
from handouts.handout import Handout, LogSheet
from tests.forms import trees
from tests.forms.conftest import CLIENTS, print_settings
from tests.forms.trees import AWKWARD

Sheet = Callable[..., Path]
Tool = Callable[..., str]

# Every size that a client may ask for is between the first and the last; each
# paper, weight and colour comes up at a small and at a large size.
LOOKS: list[dict[str, Any]] = [
    {"size": 14, "paper": "A4"},
    {"size": 18, "paper": "Letter", "both_sides": "yes"},
    {"size": 24, "paper": "A4", "weight": "bold", "colours": "yellow on black"},
    {"size": 28, "paper": "Letter", "colours": "black on yellow"},
    {"size": 28, "paper": "A4", "log_landscape": "yes"},
    {"size": 36, "paper": "A4", "weight": "bold"},
    {"size": 48, "paper": "Letter", "weight": "bold", "colours": "white on black"},
    {"size": 48, "paper": "A4", "line_spacing": "1.25"},
]
NAMES = ["bonds", "log alone", "long words", "long table", "nested lists", "two languages"]


@dataclass(frozen=True)
class Word:
    page: int
    left: float
    top: float
    right: float
    bottom: float
    text: str


def words_of(path: Path, tool: Tool) -> tuple[list[Word], list[tuple[float, float]]]:
    """Every word with its box in points from the top left, and the page sizes."""
    document = lxml_html.document_fromstring(tool("pdftotext", "-bbox", path, "-").encode(), parser=lxml_html.HTMLParser(encoding="utf-8"))
    words, sizes = [], []
    for number, page in enumerate(document.iter("page")):
        sizes.append((float(page.get("width", "")), float(page.get("height", ""))))
        for word in page.iter("word"):
            box = (float(word.get(side, "")) for side in ("xmin", "ymin", "xmax", "ymax"))
            words.append(Word(number, *box, word.text or ""))
    return words, sizes


@pytest.mark.parametrize("look", LOOKS, ids=lambda look: "-".join(map(str, look.values())))
@pytest.mark.parametrize("name", NAMES)
def test_nothing_overflows_overlaps_or_is_cut(name: str, look: dict[str, Any], sheet: Sheet, tool: Tool) -> None:
    words, sizes = words_of(sheet(name, **look), tool)
    by_page = defaultdict(list)
    for word in words:
        width, height = sizes[word.page]
        by_page[word.page].append(word)
        # 12 mm is the narrowest margin of the page's frame.
        assert word.left >= 12 * paper.MM - 1 and word.right <= width - 12 * paper.MM + 1, word
        assert word.top >= 0 and word.bottom <= height, word
    for one, other in (pair for page in by_page.values() for pair in combinations(page, 2)):
        # A word's box reaches from ascender to descender: closely set lines
        # may share a fifth of it without their letters meeting.
        slack = 0.2 * (one.bottom - one.top)
        apart = (
            one.right <= other.left + 1
            or other.right <= one.left + 1
            or one.bottom - slack <= other.top
            or other.bottom - slack <= one.top
        )
        assert apart, (one, other)


@pytest.mark.parametrize("name", ["long words", "log alone"])
@pytest.mark.parametrize("paper_name", ["A4", "Letter"])
def test_no_size_overflows(paper_name: str, name: str, sheet: Sheet, tool: Tool) -> None:
    for size in range(14, 49):
        look = {"size": size, "paper": paper_name, "weight": "bold"}
        words, sizes = words_of(sheet(name, **look), tool)
        edge = 12 * paper.MM - 1
        assert words and not [w for w in words if w.left < edge or w.right > sizes[w.page][0] - edge or w.top < 0 or w.bottom > sizes[w.page][1]]


@pytest.mark.parametrize("look", LOOKS, ids=lambda look: "-".join(map(str, look.values())))
def test_what_is_painted_stays_on_the_paper(look: dict[str, Any], sheet: Sheet) -> None:
    with pikepdf.open(sheet("log alone", **look)) as pdf:
        for page in pdf.pages:
            _, _, width, height = (float(side) for side in page.mediabox)
            for operands, operator in pikepdf.parse_content_stream(page, "re"):
                if str(operator) == "re":
                    x, y, w, h = (float(value) * 0.75 for value in operands)
                    assert min(x, x + w) >= -0.1 and max(x, x + w) <= width + 0.1
                    assert min(y, y + h) >= -0.1 and max(y, y + h) <= height + 0.1


@pytest.mark.parametrize("name", ["two languages", "bonds"])
@pytest.mark.parametrize("look", LOOKS, ids=lambda look: "-".join(map(str, look.values())))
def test_a_line_is_full_before_the_next_begins(look: dict[str, Any], name: str, sheet: Sheet, tool: Tool) -> None:
    """A line ends where the next word, or what holds together as one, would not have fitted."""
    words, _ = words_of(sheet(name, **look), tool)
    bonds = bonds_of(name, look)
    size = look["size"]
    lines: dict[tuple[int, float], list[Word]] = defaultdict(list)
    for word in words:
        lines[word.page, round(word.top)].append(word)
    seen = 0
    right = max(word.right for word in words)
    seen = 0
    for (page, top), line in lines.items():
        # The next line of the same paragraph starts below it, at the same edge.
        following = [lines.get((page, top + step), []) for step in range(round(size), round(size * 1.55))]
        for below in (each for each in following if each and abs(each[0].left - line[0].left) < 1):
            seen += 1
            assert line[-1].right + first_of(below, bonds) > right - 2.5 * size, (line[-1], below[0])
    assert seen > 10


def bonds_of(name: str, look: dict[str, Any]) -> set[str]:
    page = lxml_html.fromstring(print_form.page_html(AWKWARD[name](), print_settings(**look), Look()))
    return {" ".join(each.itertext()) for each in page.find_class("measure")}


def first_of(line: list[Word], bonds: set[str]) -> float:
    """The width of the first word of a line, or of the longest bond that it begins with."""
    width = line[0].right - line[0].left
    for count in range(2, len(line) + 1):
        said = " ".join(word.text for word in line[:count])
        if said in bonds or said.rstrip(".,:;)") in bonds:
            width = line[count - 1].right - line[0].left
    return width


@pytest.mark.parametrize("size", [18, 28, 48])
def test_no_line_is_alone_on_its_page(size: int, sheet: Sheet) -> None:
    """ACB: no widows or orphans.  A paragraph or an item that crosses a page
    leaves two lines at least on either side."""
    with pikepdf.open(sheet("usual", size=size)) as pdf:
        baselines = _baselines(pdf)
        for element in _elements(pdf, {"P", "LBody"}):
            lines: dict[Any, set[float]] = defaultdict(set)
            for page, mcid in _own_content(element):
                lines[page].add(baselines[page, mcid])
            assert len(lines) <= 1 or all(len(each) >= 2 for each in lines.values())


@pytest.mark.parametrize("size", [18, 28, 48])
def test_a_heading_is_never_last_on_its_page(size: int, sheet: Sheet) -> None:
    with pikepdf.open(sheet("usual", size=size)) as pdf:
        last: dict[Any, str] = {}
        for element in _elements(pdf, {"H1", "H2", "H3", "H4", "P", "LBody", "Lbl", "Span", "Strong"}):
            for page, _ in _own_content(element, nested=False):
                last[page] = str(element.S)
    assert not {"/H1", "/H2", "/H3", "/H4"} & set(last.values())


@pytest.mark.parametrize("client", ["C1", "C6"])
def test_an_exercise_begins_with_its_first_item_or_on_the_next_page(client: str, demo: dict[tuple[str, str], Handout], tmp_path: Path) -> None:
    path = tmp_path / "sheet.pdf"
    path.write_bytes(print_form.render(demo[client, "sheet"], print_settings(18), Look()).data)
    with pikepdf.open(path) as pdf:
        starts = [
            ({page for page, _ in _own_content(heading)}, {page for page, _ in _own_content(item)})
            for section in _elements(pdf, {"Sect"})
            for heading in _below(section, {"H2"})[:1]
            for item in _below(section, {"LBody"})[:1]
        ]
    # The first is the overview, which says what is new; the last is the log.
    assert len(starts) > 7
    assert all(item <= heading for heading, item in starts[1:-1])


def test_paper_is_not_wasted(sheet: Sheet, tool: Tool) -> None:
    """Pages before the log, which starts afresh, are at least half full on the whole."""
    words, sizes = words_of(sheet("usual", size=28), tool)
    lowest: dict[int, float] = defaultdict(float)
    for word in words:
        if word.bottom < sizes[word.page][1] - 60:
            lowest[word.page] = max(lowest[word.page], word.bottom / sizes[word.page][1])
    shares = list(lowest.values())[:-3]
    assert sum(shares) / len(shares) > 0.7
    assert min(shares) > 0.25


def test_every_page_says_whose_it_is_and_how_many_there_are(sheet: Sheet, tool: Tool) -> None:
    for look in LOOKS:
        path = sheet("log alone", **look)
        pages = tool("pdftotext", path, "-").split("\f")[:-1]
        for number, text in enumerate(pages, 1):
            told = " ".join(text.split())
            assert "Noor, C1: P1 version 2" in told
            assert f"page {number} of {len(pages)}" in told


@pytest.mark.parametrize("size", [14, 18, 28, 48])
def test_page_number_is_as_large_as_the_text(size: int, sheet: Sheet) -> None:
    """ACB and UKAAF: page numbers in the size of the text."""
    with pikepdf.open(sheet("log alone", size=size)) as pdf:
        sizes = set()
        artifact = False
        for operands, operator in pikepdf.parse_content_stream(pdf.pages[0]):
            if str(operator) == "BDC":
                artifact = operands[0] == pikepdf.Name.Artifact
            elif str(operator) == "Tf" and artifact:
                sizes.add(round(float(operands[1]) * 0.75, 1))
    assert size in sizes


def test_only_upright_atkinson_is_used_and_a_fallback_stands_in(tool: Tool, sheet: Sheet, tmp_path: Path) -> None:
    fonts = tool("pdffonts", sheet("usual", size=18))
    assert "Sheet" in fonts and "Sheet-Bold" in fonts
    assert "Italic" not in fonts and "Oblique" not in fonts and "DejaVu" not in fonts
    # U+2610 and the prime are not in Atkinson Hyperlegible 1.6 (looked up in the font).
    odd = trees.handout("sheet", (trees.Paragraph(trees.words("Tick \u2610 after 5\u2032.")),))
    path = tmp_path / "odd.pdf"
    path.write_bytes(print_form.render(odd, print_settings(18), Look()).data)
    assert "DejaVu" in tool("pdffonts", path)
    assert "Tick \u2610 after 5\u2032." in tool("pdftotext", path, "-")


@pytest.mark.parametrize("size", [14, 18, 24, 28, 36, 48])
def test_lines_are_left_aligned_and_well_apart(size: int, sheet: Sheet, tool: Tool) -> None:
    """ACB: line spacing 1.5 or more, blocked paragraphs with space between;
    American Printing House: 1.25.  Large print follows the first, giant print
    the second (see paper.spacing)."""
    words = text_words("bonds", {"size": size}, sheet, tool)
    tops: dict[tuple[int, float], list[Word]] = defaultdict(list)
    for word in words:
        if 0.97 * size < (word.bottom - word.top) / 1.24 < 1.03 * size:
            tops[word.page, word.top].append(word)
    steps = [round(below[1] - above[1], 1) for above, below in pairwise(sorted(tops)) if above[0] == below[0]]
    line = min(steps)
    assert line >= (1.5 if size <= 28 else 1.25) * size - 0.2
    gaps = [step for step in steps if step > line + 1]
    assert gaps and min(gaps) >= line + 0.5 * min(size, 24)
    lefts = {round(min(word.left for word in each)) for each in tops.values()}
    # The page's edge, and that of the dose in its box.
    assert len(lefts) <= 2
    # Not justified: the lines end where they may.
    assert len({round(max(word.right for word in each)) for each in tops.values()}) > 5


def test_headings_are_told_apart_by_more_than_size(tmp_path: Path, tool: Tool) -> None:
    """A rule above the second level, a bar beside the third, a line below the fourth."""
    from PIL import Image

    headings = tuple(trees.Heading(level, trees.words(name), name.lower()) for level, name in ((2, "Second"), (3, "Third"), (4, "Fourth")))
    path = tmp_path / "sheet.pdf"
    path.write_bytes(print_form.render(trees.handout("card", (*headings, trees.Paragraph(trees.words("Plain")))), print_settings(18), Look()).data)
    subprocess.run(["pdftoppm", "-r", "72", "-gray", "-singlefile", "-png", path, tmp_path / "page"], check=True)
    words = {word.text: word for word in words_of(path, tool)[0]}
    with Image.open(tmp_path / "page.png") as image:

        def dark(left: float, top: float, right: float, bottom: float) -> bool:
            area = image.crop((round(left), round(top), round(right), round(bottom))).tobytes()
            return sum(value < 128 for value in area) > 0.9 * len(area)

        def marks(word: Word) -> tuple[bool, bool, bool]:
            height = word.bottom - word.top
            return (
                any(dark(word.left, y, word.left + 200, y + 2) for y in range(round(word.top - height), round(word.top))),
                any(dark(x, word.top + 4, x + 3, word.bottom - 4) for x in range(round(word.left) - 20, round(word.left))),
                any(dark(word.left + 1, y, word.right - 1, y + 1) for y in range(round(word.top + 0.75 * height), round(word.bottom))),
            )

        told = {name: marks(words[name]) for name in ("Second", "Third", "Fourth", "Plain")}
    assert told == {"Second": (True, False, False), "Third": (False, True, False), "Fourth": (False, False, True), "Plain": (False, False, False)}


@pytest.mark.parametrize("name", print_form.COLOURS)
def test_only_ink_and_paper_are_painted(name: str, sheet: Sheet) -> None:
    """So black-and-white printing loses nothing: no grey, no tint, no third colour."""
    wanted = {tuple(int(c[i : i + 2], 16) for i in (1, 3, 5)) for c in print_form.COLOURS[name]}
    with pikepdf.open(sheet("usual", size=18, colours=name)) as pdf:
        found = {
            tuple(round(float(value) * 255) for value in operands)
            for page in pdf.pages
            for operands, operator in pikepdf.parse_content_stream(page, "rg RG")
        }
    assert found <= wanted | {(0, 0, 0)} and len(found) >= 1


@pytest.mark.parametrize("name", print_form.COLOURS)
def test_contrast(name: str) -> None:
    """WCAG 2.2, 1.4.6: 7:1, measured with the package wcag-contrast-ratio."""
    ink, colour = (tuple(int(c[i : i + 2], 16) / 255 for i in (1, 3, 5)) for c in print_form.COLOURS[name])
    assert wcag_contrast_ratio.rgb(ink, colour) >= 7


@pytest.mark.parametrize("name", print_form.COLOURS)
def test_pages_are_painted_to_the_edge_in_their_colours(name: str, sheet: Sheet, tmp_path: Path) -> None:
    from PIL import Image

    path = sheet("log alone", size=18, colours=name)
    subprocess.run(["pdftoppm", "-r", "30", "-png", "-singlefile", path, tmp_path / "page"], check=True)
    with Image.open(tmp_path / "page.png") as image:
        colours = image.convert("RGB").getcolors(1 << 24)
        assert colours is not None
        found = {f"#{r:02x}{g:02x}{b:02x}" for _, (r, g, b) in colours}
        corner = image.convert("RGB").getpixel((0, 0))
    ink, colour = print_form.COLOURS[name]
    assert {ink, colour} <= found
    assert corner == tuple(int(colour[i : i + 2], 16) for i in (1, 3, 5))


def test_log_has_one_row_an_exercise_and_asks_about_the_whole(demo: dict[tuple[str, str], Handout]) -> None:
    for client in CLIENTS:
        handout = demo[client, "log"]
        (log,) = [block for block in handout.blocks for block in getattr(block, "blocks", (block,)) if isinstance(block, LogSheet)]
        form = print_settings(28)
        bands = paper.bands(log.entries, form, paper.page(handout, form, log=True).width, handout.language)
        assert [band.entry for band in bands] == list(log.entries)
        assert [entry.number for entry in log.entries] == [*range(1, len(log.entries)), 0]
        assert {"time", "effort", "question"} <= {field.name for field in log.entries[-1].fields}


@pytest.mark.parametrize(("size", "lies"), [(28, True), (40, True), (44, False), (48, False)])
def test_a_log_lies_on_its_side_while_two_exercises_fit(demo: dict[tuple[str, str], Handout], size: int, lies: bool) -> None:
    # Common practice, no source: a name and its boxes belong on one page.
    log = next(handout for (_, sheet), handout in demo.items() if sheet == "log")
    form = print_settings(size, paper="A4", log_landscape="yes")
    assert paper.page(log, form, True).size == f"A4 {'landscape' if lies else 'portrait'}"


def test_log_has_room_for_a_thick_pen(sheet: Sheet) -> None:
    """Boxes at least 20 mm high and rules at least 2 pt: common practice, no source."""
    log = next(block for block in trees.log_alone().blocks if isinstance(block, LogSheet))
    for size in range(14, 49):
        form = print_settings(size)
        width = paper.page(trees.log_alone(), form, log=True).width
        for band in paper.bands(log.entries, form, width, "en"):
            assert sum(len(row) for row in band.rows) == len(band.entry.fields)
            for row in band.rows:
                assert all(box.height >= 20 * paper.MM for box in row)
                assert sum(box.percent for box in row) == pytest.approx(100)
    rules = []
    with pikepdf.open(sheet("log alone", size=18)) as pdf:
        for page in pdf.pages:
            for one, other in pairwise(pikepdf.parse_content_stream(page, "re f*")):
                if str(one.operator) == str(other.operator) == "re":
                    # A border is what lies between two boxes, the inner first.
                    (x, y, w, h), (X, Y, W, H) = ([float(v) * 0.75 for v in each.operands] for each in (one, other))
                    rules += [gap for gap in (x - X, y - Y, X + W - x - w, Y + H - y - h) if 0.01 < gap < 20]
    assert rules and min(rules) >= 2


@pytest.mark.parametrize("look", LOOKS, ids=lambda look: "-".join(map(str, look.values())))
def test_a_number_and_its_word_stand_on_one_line(look: dict[str, Any], sheet: Sheet, tool: Tool) -> None:
    """UKAAF: items are not split over lines.  The hours of the clock above all;
    a word at its own hyphen neither."""
    words = text_words("bonds", look, sheet, tool)
    numbers = 0
    for one, other in pairwise(words):
        if one.text.isdigit() and other.text[0].isalpha():
            numbers += 1
            assert (one.page, one.top) == (other.page, other.top), (one, other)
        assert not (one.text[-1] == "-" and other.top > one.top), (one, other)
        assert other.text not in (":", "!", "?", "\u00bb") or other.top == one.top, (one, other)
    assert numbers > 60


def test_a_dose_breaks_after_its_commas(sheet: Sheet, tool: Tool) -> None:
    lines = [" ".join(row.split()) for row in tool("pdftotext", "-layout", sheet("bonds", size=24), "-").splitlines()]
    at = lines.index("10 repetitions on each side,")
    assert lines[at + 1] == "20 lb held in both hands"


def text_words(name: str, look: dict[str, Any], sheet: Sheet, tool: Tool) -> list[Word]:
    """The words of a sheet without what stands in its margins."""
    words, sizes = words_of(sheet(name, **look), tool)
    page = paper.page(AWKWARD[name](), print_settings(**look))
    return [word for word in words if page.top - 9 < word.top and word.bottom < sizes[word.page][1] - page.bottom + 9]


@pytest.mark.parametrize("size", [18, 28, 36, 48])
def test_a_word_wider_than_its_line_is_divided_with_a_hyphen(size: int, sheet: Sheet, tool: Tool) -> None:
    """And no word that fits: no hyphenation (ACB, UKAAF)."""
    look = {"size": size, "weight": "bold"}
    divided = [word.text for word in text_words("long words", look, sheet, tool) if word.text.startswith("Donaudampf")]
    assert len(divided) > 8 and all(piece.endswith("-") for piece in divided if piece != trees.LONG)
    assert not [word for word in text_words("bonds", look, sheet, tool) if word.text.endswith("-")]


@pytest.mark.parametrize("look", LOOKS, ids=lambda look: "-".join(map(str, look.values())))
def test_the_signs_to_stop_at_are_never_divided(look: dict[str, Any], demo: dict[tuple[str, str], Handout], tmp_path: Path) -> None:
    """Each stands on one page; up to 28 pt all of them stand on the first."""
    path = tmp_path / "sheet.pdf"
    path.write_bytes(print_form.render(demo["C1", "sheet"], print_settings(**look), Look()).data)
    with pikepdf.open(path) as pdf:
        box = _elements(pdf, {"Div"})[0]
        parts = [{page for page, _ in _own_content(element)} for element in _below(box, {"P", "LBody"})]
        assert len(parts) > 5 and all(len(pages) == 1 for pages in parts)
        if look["size"] <= 28:
            assert set.union(*parts) == {pdf.pages[0].obj.objgen}


def test_holes_have_room_on_the_inner_side(sheet: Sheet, tool: Tool) -> None:
    """ISO 838: hole centres 12 mm from the edge, 6 mm wide; so 15 mm are punched away."""
    words, sizes = words_of(sheet("usual", size=18, both_sides="yes"), tool)
    for word in words:
        inner = word.left if word.page % 2 == 0 else sizes[word.page][0] - word.right
        assert inner >= 20 * paper.MM


def test_same_input_same_bytes(tmp_path: Path) -> None:
    program = """
import sys
from handouts.forms import Look, print
from handouts.handout import Foreign, Handout, Item, Measure, Points, Text
from handouts.models import PrintForm
points = Points(tuple(Item((Text("Word "), Measure("5 kg", "5 kilograms"), Foreign("fr", (Text(" mot"),)))) for _ in range(60)))
tree = Handout("sheet", "en", (Text("T"),), "N", "N1", "P", 1, "N", "2029-01-08", "", (points,))
sys.stdout.buffer.write(print.render(tree, PrintForm(), Look()).data)
"""
    root = Path(__file__).parents[2]
    made = [
        subprocess.run(
            [sys.executable, "-c", program], cwd=root, capture_output=True, check=True,
            env={"PYTHONHASHSEED": seed, "PATH": "/usr/bin:/bin", "TZ": zone, "HOME": str(tmp_path), "PYTHONPATH": str(root)},
        ).stdout
        for seed, zone in (("1", "UTC"), ("2", "Asia/Tokyo"))
    ]
    assert made[0] == made[1]
    assert b"CreationDate" not in made[0] and b"ModDate" not in made[0]


def _elements(pdf: pikepdf.Pdf, kinds: set[str]) -> list[pikepdf.Object]:
    from handouts.forms.pdf_repair import elements

    return [element for element in elements(pdf) if str(element.S)[1:] in kinds]


def _below(element: pikepdf.Object, kinds: set[str]) -> list[pikepdf.Object]:
    kids = [kid for kid in element.get("/K", []) if not isinstance(kid, int) and "/S" in kid]
    return [found for kid in kids for found in [*[kid][: str(kid.S)[1:] in kinds], *_below(kid, kinds)]]


def _own_content(element: pikepdf.Object, nested: bool = True) -> list[tuple[Any, int]]:
    """(page, MCID) of an element's text, with that of the spans in it."""
    found = []
    for kid in element.get("/K", []):
        if isinstance(kid, int):
            found.append((element.Pg.objgen, kid))
        elif "/MCID" in kid:
            found.append((kid.Pg.objgen, int(kid.MCID)))
        elif nested and str(kid.S) in ("/Span", "/Strong"):
            found += _own_content(kid)
    return found


def _baselines(pdf: pikepdf.Pdf) -> dict[tuple[Any, int], float]:
    found: dict[tuple[Any, int], float] = {}
    for page in pdf.pages:
        mcid = None
        for operands, operator in pikepdf.parse_content_stream(page):
            if str(operator) == "BDC":
                mcid = operands[1].get("/MCID")
                if mcid is not None:
                    found[page.obj.objgen, int(mcid)] = 0.0
            elif str(operator) == "Tm" and mcid is not None:
                found[page.obj.objgen, int(mcid)] = round(float(operands[5]), 1)
    return found
