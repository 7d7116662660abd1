"""The demo's outputs as text to read and compare.

    python tests/golden/demo.py     writes them anew; read the difference before you commit it

Braille stands as it goes to the embosser.  Of print and screen the words stand
in reading order, one line a block; layout has tests of its own.
"""

from __future__ import annotations

import datetime
import re
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from xml.etree.ElementTree import Element

import html5lib

HERE = Path(__file__).parent
KEPT = HERE / "expected"
TODAY = datetime.date(2029, 1, 20)

_BLOCKS = {"h1", "h2", "h3", "h4", "p", "li", "td", "th", "caption", "legend", "label", "dt", "dd", "summary", "button"}
_RUNNING = re.compile(r"^\w+, C\d: P\d version \d+|\bpage \d+ of \d+$")
_UNSEEN = {"script", "style", "head", "template"}


def outputs(folder: Path) -> Iterator[tuple[str, str]]:
    """(name, text) of each file that `make` has put below a folder."""
    for path in sorted(folder.rglob("C*-*")):
        if path.suffix == ".brf":
            yield path.name, path.read_bytes().decode("ascii").replace("\r\n", "\n")
        elif path.suffix == ".html":
            yield path.name + ".txt", "\n".join(page_words(path.read_text("utf-8"))) + "\n"
        elif path.suffix == ".pdf":
            yield path.name + ".txt", "\n".join(pdf_words(path)) + "\n"


def page_words(page: str) -> Iterator[str]:
    """The words of a page, a line for each block that holds words of its own."""
    tree = html5lib.parse(page, namespaceHTMLElements=False)

    def own(element: Element) -> str:
        words = [element.text or ""]
        for child in element:
            if child.tag not in _BLOCKS | _UNSEEN | {"ul", "ol", "table"}:
                words.append(own(child))
            words.append(child.tail or "")
        return " ".join("".join(words).split())

    def walk(element: Element) -> Iterator[str]:
        if element.tag in _UNSEEN:
            return
        if element.tag in _BLOCKS and own(element):
            yield f"{element.tag}: {own(element)}"
        for child in element:
            yield from walk(child)

    yield from walk(tree.find("body"))


def pdf_words(path: Path) -> Iterator[str]:
    """The words of a PDF, ten a line, without running lines: where a page ends
    is for the layout's own tests."""
    text = subprocess.run(["pdftotext", "-raw", str(path), "-"], capture_output=True, text=True, check=True).stdout
    lines = [_RUNNING.sub("", line) for line in text.replace("\f", "").split("\n")]
    words = " ".join(lines).split()
    for at in range(0, len(words), 10):
        yield " ".join(words[at : at + 10])


def make_demo(out: Path) -> None:
    """The demo studio's outputs in a folder, as of a fixed day."""
    from handouts import carried
    from handouts.making.make import Asked, make
    from handouts.making.workers import InThisProcess

    for _ in make(Asked(carried.demo_studio(), out, TODAY), InThisProcess()):
        pass


def main() -> None:
    KEPT.mkdir(exist_ok=True)
    for old in KEPT.iterdir():
        old.unlink()
    with tempfile.TemporaryDirectory() as name:
        make_demo(Path(name))
        for file, text in outputs(Path(name)):
            (KEPT / file).write_text(text, "utf-8")
            print(f"{file}: {len(text.split())} words")


if __name__ == "__main__":
    sys.path.insert(0, str(HERE.parents[1]))
    main()
