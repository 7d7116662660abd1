"""What a client's file or an exercise text holds is words, in every form.

No markup, no script, no template, no file and nothing of a network comes in
by it (WeasyPrint reads local files and calls networks when it is let).
"""

from __future__ import annotations

import io
import re
import socket
import subprocess
import zipfile
from pathlib import Path

import pikepdf
import pytest
from lxml import etree
from lxml import html as lxml_html

from handouts.braille.layout import lay_out
from handouts.braille.proof import prove, whole_words
from handouts.errors import RenderError
from handouts.forms import Look, braille, epub, screen, text
from handouts.forms import print as print_form
from handouts.handout import (
    Caution,
    Dose,
    Fact,
    Facts,
    Foreign,
    Handout,
    Heading,
    Item,
    LogEntry,
    LogField,
    LogSheet,
    Measure,
    Paragraph,
    Points,
    Section,
    Steps,
    Strong,
    Table,
    Text,
)
from handouts.making.proof import page as proof_page
from handouts.models import BrailleForm, EpubForm, PrintForm, ScreenForm, TextForm
from tests.forms.browser import chromium

HOSTILE = [
    "<script>document.title='taken'</script>",
    "</title></style></script><img src=x onerror=\"document.title='taken'\">",
    "<img src=\"file:///etc/passwd\"><link rel=attachment href=\"file:///etc/passwd\">",
    "<iframe src='http://192.0.2.1/'></iframe><object data='http://192.0.2.1/'></object>",
    "{{ handout.__class__.__mro__ }}{% for x in ().__class__.__base__.__subclasses__() %}{% endfor %}",
    "{{ 7 * 191 }}{# gone #}",
    "\" onfocus=\"document.title='taken'\" autofocus x=\"",
    "' style='background:url(http://192.0.2.1/)",
    "]]>&entity;<!-- --><![CDATA[",
    "*/ } body { background: url(http://192.0.2.1/) } /*",
    "\\22 ) url(file:///etc/passwd)",
]  # fmt: skip


def hostile(words: str) -> Handout:
    """The words in every place of a tree that takes words."""
    said = (Text(words),)
    spread = (Text(words), Strong(said), Foreign("fr", said), Measure(words, f"{words} in full"))
    field = LogField("weight", said, "weight", words, said)
    blocks = (
        Facts((Fact(said, spread),)),
        Caution(said, (Paragraph(spread), Points((Item(said, (Steps((Item(said),)),)),)))),
        Section(
            "exercise",
            Heading(2, said, "exercise-1"),
            (Dose(spread), Heading(3, said, "exercise-1-movement"), Paragraph(spread), Table(said, (said, said), ((said, said),))),
        ),
        Section("log", Heading(2, said, "log"), (LogSheet((LogEntry("x", 1, said, (field,)), LogEntry("session", 0, said, (field,)))),)),
    )
    return Handout("sheet", "en", said, words, words, words, 1, words, "2029-01-08", "", blocks)


def words_only(text_: str) -> str:
    return "".join(text_.split())


@pytest.fixture(autouse=True)
def no_network(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whoever opens a connection fails; Chromium is another process."""

    def refuse(*_: object) -> None:
        raise AssertionError("a connection was opened")

    monkeypatch.setattr(socket.socket, "connect", refuse)


@pytest.mark.parametrize("words", HOSTILE)
def test_print(words: str, tmp_path: Path) -> None:
    data = print_form.render(hostile(words), PrintForm(), Look()).data
    with pikepdf.open(io.BytesIO(data)) as pdf:
        assert not pdf.attachments
        assert "/AcroForm" not in pdf.Root and "/OpenAction" not in pdf.Root
        assert not any("/Annots" in page.obj or len(page.obj.Resources.get("/XObject", {})) for page in pdf.pages)
    path = tmp_path / "hostile.pdf"
    path.write_bytes(data)
    told = subprocess.run(["pdftotext", path, "-"], capture_output=True, text=True, check=True).stdout
    assert words_only(words) in words_only(told)
    assert "root:" not in told and "1337" not in told


@pytest.mark.parametrize("words", HOSTILE)
def test_screen(words: str) -> None:
    page = lxml_html.fromstring(screen.render(hostile(words), ScreenForm(), Look()).data)
    assert words_only(words) in words_only(page.find(".//main").text_content())
    assert len(page.findall(".//script")) == 1 and not page.xpath("//img|//iframe|//object|//link|//*[@onfocus or @onerror]")
    assert not page.xpath("//*[starts-with(@src, 'http') or starts-with(@href, 'http') or starts-with(@href, 'file')]")


def test_screen_in_a_browser(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.undo()
    with chromium() as browser:
        for number, words in enumerate(HOSTILE):
            path = tmp_path / f"{number}.html"
            path.write_bytes(screen.render(hostile(words), ScreenForm(), Look()).data)
            page = browser.new_page()
            asked: list[str] = []
            page.on("request", lambda request, asked=asked: asked.append(request.url))
            page.goto(path.as_uri())
            page.locator("summary").click()
            page.get_by_label("Your question", exact=True).fill(words)
            assert page.title() == " ".join(f"{words} - {words}".split())
            assert asked == [path.as_uri()]
            page.close()


@pytest.mark.parametrize("words", HOSTILE)
def test_epub(words: str) -> None:
    with zipfile.ZipFile(io.BytesIO(epub.render(hostile(words), EpubForm(), Look()).data)) as book:
        assert all(".." not in name and not name.startswith("/") for name in book.namelist())
        pages = [etree.fromstring(book.read(name)) for name in book.namelist() if name.endswith("xhtml")]
        assert words_only(words) in words_only("".join(pages[1].itertext()))
        for page in pages:
            assert not [each for each in page.iter() if etree.QName(each).localname in ("script", "img", "iframe", "object")]
        etree.fromstring(book.read("EPUB/package.opf"))


@pytest.mark.parametrize("words", HOSTILE)
def test_text(words: str) -> None:
    assert words_only(words) in words_only(text.render(hostile(words), TextForm(), Look()).data.decode())


@pytest.mark.parametrize("file", ["brf", "pef", "unicode", "ebraille"])
@pytest.mark.parametrize("words", HOSTILE)
def test_braille(words: str, file: str) -> None:
    """Every sign is cells like any other: none acts in the file, and none is lost."""
    form = BrailleForm.model_validate({"code": "ueb", "grade": "1", "file": file})
    handout = hostile(words)
    data = braille.render(handout, form, Look()).data
    volume = lay_out(handout, braille.code_of(form), braille.paper_of(form))
    assert words_only("".join(word.print for _, _, word in whole_words(volume))).count(words_only(words)) > 10
    if file == "ebraille":
        with zipfile.ZipFile(io.BytesIO(data)) as book:
            assert all(".." not in name and not name.startswith("/") for name in book.namelist())
            pages = [etree.fromstring(book.read(name)) for name in book.namelist() if name.endswith((".html", ".xhtml", ".opf"))]
            for page in pages:
                assert not [each for each in page.iter("{*}script", "{*}img", "{*}iframe", "{*}object", "{*}style")]
            (body,) = pages[-1].iter("{*}body")
            assert not re.findall("[^\u2800-\u28ff\\s]", "".join(body.itertext()))
    elif file == "pef":
        root = etree.fromstring(data)
        rows = [row.text or "" for row in root.iter("{*}row")]
        assert len(rows) > 10 and not re.findall("[^\u2800-\u28ff]", "".join(rows))
        assert {etree.QName(each).localname for each in root.iter()} <= {"pef", "head", "meta", "body", "volume", "section", "page", "row", "format", "identifier", "title", "date", "language", "creator"}
    elif file == "unicode":
        assert not re.findall("[^\u2800-\u28ff\\s]", data.decode())
    else:
        assert set(data) <= set(range(0x20, 0x60)) | set(b"\r\n\f")


@pytest.mark.parametrize("words", HOSTILE)
def test_the_braille_proof_page(words: str) -> None:
    form = BrailleForm(paper="notetaker", width=40, length=0)
    handout = hostile(words)
    page = lxml_html.fromstring(proof_page(handout, form, prove(handout, braille.code_of(form), braille.paper_of(form)), Look()))
    assert words_only(words) in words_only(page.text_content())
    assert not page.xpath("//script|//img|//iframe|//object|//link|//*[@onfocus or @onerror or @src or @style]")


def test_the_fetcher_gives_the_font_and_nothing_else(tmp_path: Path) -> None:
    """Even a template of the trainer's own gets nothing from outside."""
    for address in ("file:///etc/passwd", "http://192.0.2.1/x.png", "data:image/png;base64,AAAA", "handouts:font/../../x"):
        style = f"body {{ background: url({address}) }} html {{ font-size: 18pt }}"
        with pytest.raises(RenderError, match="nothing is fetched"):
            print_form.render(hostile("Words"), PrintForm(), Look(overrides=(("print.css.j2", style),)))
