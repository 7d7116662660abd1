"""All forms say the same: read back, each form has the words of the tree, all
of them, in order, and no others but those on the list of differences.

Print is read from the structure of the PDF, the page and the book from their
HTML, text as it is, braille from the cells of its file through liblouis, word
by word, and these words against the tree.
"""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

import pikepdf
import pytest
from lxml import etree
from lxml import html as lxml_html

from handouts.braille.brf import BRAILLE_ASCII
from handouts.braille.layout import lay_out
from handouts.braille.proof import compare, prove, whole_words
from handouts.forms import DIFFERENCES, FORMS, Look
from handouts.forms.braille import code_of, paper_of
from handouts.handout import (
    Block,
    Caution,
    Dose,
    Facts,
    Handout,
    Item,
    LogSheet,
    Measure,
    Paragraph,
    Section,
    Steps,
    Text,
    children,
    plain,
    walk,
)
from handouts.models import BrailleForm, EpubForm, PrintForm, ScreenForm, TextForm
from tests.forms.conftest import CLIENTS
from tests.forms.test_pdf_repair import said_by_content, text_of

KINDS = ["sheet", "card", "log"]
Demo = dict[tuple[str, str], Handout]


def tokens(text: str) -> list[str]:
    return re.findall(r"[^\W_]+", text.lower().replace("\u2019", "'"))


# --- what the tree says ------------------------------------------------------


@dataclass(frozen=True)
class Said:
    """One statement: its words, and whether others may stand before it, which
    is so in the log alone: each form lays it out for its own hand."""

    words: list[str]
    loose: bool = False


def told(handout: Handout, form: Form) -> Iterator[Said]:
    """The statements of the tree in order, in the words of a form."""
    long, numbered = form.long, form.numbered
    yield Said(tokens(plain(handout.title, long)))
    after_log = False
    for block in _blocks(handout.blocks, numbered):
        if isinstance(block, LogSheet):
            fields = [field for entry in block.entries for field in entry.fields]
            first = [field for field in fields if field.name == "date" and form.date_first]
            yield from (Said(tokens(plain(field.label, long)), True) for field in first)
            for entry in block.entries:
                yield Said(tokens(plain(entry.title, long).removeprefix(f"{entry.number} ")), True)
                yield from (Said(tokens(plain(field.label, long)), True) for field in entry.fields if field not in first)
            after_log = True
        elif isinstance(block, str):
            yield Said([block])
        elif isinstance(block, Facts):
            yield from (Said(tokens(f"{plain(fact.label, long)} {plain(fact.value, long)}")) for fact in block.facts)
        else:
            words = block.title if isinstance(block, Caution) else block.content
            yield Said(tokens(plain(words, long)), after_log)
            after_log = False


def _blocks(blocks: tuple[Block | Item, ...], numbered: bool) -> Iterator[Any]:
    for block in blocks:
        if (not isinstance(block, Section | Steps) and hasattr(block, "content" if not isinstance(block, Caution) else "title")) or isinstance(block, Facts | LogSheet):
            yield block
        for number, child in enumerate(children(block)):
            if numbered and isinstance(block, Steps):
                yield str(block.first + number)
            yield from _blocks((child,), numbered)


def assert_says(statements: Iterator[Said], said: list[str]) -> int:
    """Every statement stands whole in `said`, after the one before it, with
    nothing between them; how many there are."""
    at = count = 0
    loose = False
    for statement in statements:
        words = statement.words
        starts = range(at, len(said)) if statement.loose else [at]
        found = next((start for start in starts if said[start : start + len(words)] == words), None)
        assert found is not None, (" ".join(words), " ".join(said[at : at + 40]))
        at, count, loose = found + len(words), count + 1, statement.loose
    assert loose or at == len(said), " ".join(said[at : at + 40])
    return count


# --- what the forms say, without what stands on the list of differences -------


def screen_says(handout: Handout, folder: Path) -> list[str]:
    main = lxml_html.fromstring(FORMS["screen"].render(handout, ScreenForm(), Look()).data).find(".//main")
    for apart in main.xpath(".//*[contains(concat(' ', @class, ' '), ' needs-script ')] | .//*[@class='without-script']/p"):
        apart.drop_tree()
    return tokens(" ".join(main.itertext()))


def text_says(handout: Handout, folder: Path) -> list[str]:
    rows = FORMS["text"].render(handout, TextForm.model_validate({"lines": "unbroken"}), Look()).data.decode().splitlines()
    rows.remove(handout.running_head)
    return tokens("\n".join(rows))


def epub_says(handout: Handout, folder: Path) -> list[str]:
    with zipfile.ZipFile(io.BytesIO(FORMS["epub"].render(handout, EpubForm(), Look()).data)) as book:
        package = etree.fromstring(book.read("EPUB/package.opf"))
        names = {item.get("id"): item.get("href") for item in package.iter("{*}item") if item.get("properties") != "nav"}
        spine = [names[ref.get("idref")] for ref in package.iter("{*}itemref") if ref.get("idref") in names]
        pages = [etree.fromstring(book.read(f"EPUB/{name}")).find("{*}body") for name in spine]
    (running,) = [each for each in pages[0].iter("{*}p") if "".join(each.itertext()) == handout.running_head]
    running.getparent().remove(running)
    return tokens(" ".join(" ".join(page.itertext()) for page in pages))


def print_says(handout: Handout, folder: Path) -> list[str]:
    path = folder / "sheet.pdf"
    path.write_bytes(FORMS["print"].render(handout, PrintForm(), Look()).data)
    with pikepdf.open(path) as pdf:
        return tokens(text_of(pdf.Root.StructTreeRoot.K[0], said_by_content(path)))


def braille_says(handout: Handout, grade: int, paper: str) -> list[str]:
    """The words that the cells of the file say, each read back by liblouis.

    Lines that the layout adds have roles of their own.  A word comes back with
    what capitals, quotes and dashes lose on the way; it is a fault if it comes
    back otherwise (see handouts.braille.proof), and then the cells say nothing.
    """
    code_name = "fr" if handout.language == "fr" else "ueb"
    form = BrailleForm.model_validate({"code": code_name, "grade": str(grade), "paper": paper, "file": "brf"})
    code = code_of(form)
    volume = lay_out(handout, code, paper_of(form))
    cells = str.maketrans(BRAILLE_ASCII, "".join(map(chr, range(0x2800, 0x2840))))
    file = FORMS["braille"].render(handout, form, Look()).data.decode("ascii").upper().translate(cells)
    lines = [line.rstrip("\u2800") for page in volume.pages for line in [each.cells for each in page.lines]]
    assert [line for line in re.split(r"[\r\n\f]+", file) if line.strip("\u2800")] and "".join(lines) == "".join(
        line.rstrip("\u2800") for line in re.split(r"[\r\n\f]+", file)
    )
    assert prove(handout, code, paper_of(form)).faults == ()
    said = replace(
        volume, pages=tuple(replace(page, lines=tuple(line for line in page.lines if line.role in ("text", "heading"))) for page in volume.pages)
    )
    return tokens(" ".join(word.print for _, _, word in whole_words(said)))


@dataclass(frozen=True)
class Form:
    """How a form is read back.

    read: the words that it says.  long: it says measures in full.  numbered:
    the numbers of steps are among its words.  date_first: of its log.
    """

    read: Callable[[Handout, Path], list[str]]
    long: bool
    numbered: bool
    date_first: bool = False


READ = {
    "screen": Form(screen_says, True, False),
    "text": Form(text_says, True, True, date_first=True),
    "epub": Form(epub_says, True, False),
    "print": Form(print_says, False, False),
    "braille, uncontracted": Form(lambda handout, _: braille_says(handout, 1, "notetaker"), False, True),
    "braille, contracted": Form(lambda handout, _: braille_says(handout, 2, "notetaker"), False, True),
    "braille, contracted, on pages": Form(lambda handout, _: braille_says(handout, 2, "11.5 x 11 inch"), False, True),
}


@pytest.mark.parametrize("name", READ)
@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("client", CLIENTS)
def test_every_form_says_every_statement_in_order_and_no_other(client: str, kind: str, name: str, demo: Demo, tmp_path: Path) -> None:
    form, handout = READ[name], demo[client, kind]
    said = form.read(handout, tmp_path)
    assert assert_says(told(handout, form), said) > 8
    # What the log asks for: each weight and count, within the words of its own exercise.
    for sheet in (block for block in walk(handout.blocks) if isinstance(block, LogSheet)):
        at = 0
        for entry in sheet.entries[:-1]:
            start = at
            for words in (plain(entry.title, form.long).removeprefix(f"{entry.number} "), plain(entry.fields[-1].label, form.long)):
                at = place_of(tokens(words), said, at)
            asked = {token for field in entry.fields for token in tokens(plain(field.target, form.long))}
            assert asked <= set(said[start : at + 12]), (asked, said[start : at + 12])


def place_of(words: list[str], said: list[str], at: int) -> int:
    """Where the words end that stand in `said` from `at` on."""
    return next(end for end in range(at + len(words), len(said) + 1) if said[end - len(words) : end] == words)


# --- that a fault would be noticed -------------------------------------------


def part_of(handout: Handout) -> Handout:
    """The signs to stop at and one exercise with a caution."""
    stop = next(block for block in handout.blocks if isinstance(block, Caution))
    exercise = next(block for block in handout.blocks if isinstance(block, Section) and isinstance(block.blocks[0], Dose))
    caution = Caution((Text("Caution"),), (Paragraph((Text("Keep your head high."),)),))
    return replace(handout, blocks=(stop, replace(exercise, blocks=(exercise.blocks[0], caution, *exercise.blocks[1:]))))


def changed(handout: Handout, change: Callable[[Any], Any]) -> Handout:
    """The handout with one of its blocks changed: the first that `change` does change."""
    done = False

    def go(block: Any) -> Any:
        nonlocal done
        new = block if done else change(block)
        if new != block:
            done = True
            return new
        for name in ("blocks", "items"):
            if getattr(block, name, ()):
                block = replace(block, **{name: tuple(go(each) for each in getattr(block, name))})
        return block

    new = replace(handout, blocks=tuple(go(block) for block in handout.blocks))
    assert done
    return new


def without_number(block: Any) -> Any:
    if not isinstance(block, Dose):
        return block
    first = next(piece for piece in block.content if isinstance(piece, Measure) or re.search(r"\d", getattr(piece, "words", "")))
    return replace(block, content=tuple(piece for piece in block.content if piece is not first))


def without_caution(block: Any) -> Any:
    return replace(block, blocks=()) if isinstance(block, Caution) and plain(block.title) == "Caution" else block


def with_swapped_steps(block: Any) -> Any:
    return replace(block, items=(block.items[1], block.items[0], *block.items[2:])) if isinstance(block, Steps) else block


def with_one_more(block: Any) -> Any:
    return replace(block, items=(*block.items, block.items[0])) if isinstance(block, Steps) else block


@pytest.mark.parametrize("change", [without_number, without_caution, with_swapped_steps, with_one_more])
@pytest.mark.parametrize("name", READ)
@pytest.mark.parametrize("client", ["C1", "C3"])
def test_what_is_dropped_swapped_or_added_is_noticed(client: str, name: str, change: Callable[[Any], Any], demo: Demo, tmp_path: Path) -> None:
    form, handout = READ[name], part_of(demo[client, "sheet"])
    assert_says(told(handout, form), form.read(handout, tmp_path))
    wrong = form.read(changed(handout, change), tmp_path)
    with pytest.raises(AssertionError):
        assert_says(told(handout, form), wrong)


@pytest.mark.parametrize("grade", [1, 2])
@pytest.mark.parametrize("client", ["C2", "C3"])
def test_a_wrong_cell_is_noticed(client: str, grade: int, demo: Demo) -> None:
    """A number without one of its digits, and a word without its last cell."""
    handout = demo[client, "card"]
    code = code_of(BrailleForm.model_validate({"code": "fr" if handout.language == "fr" else "ueb", "grade": str(grade)}))
    words = [word for _, _, word in whole_words(lay_out(handout, code, paper_of(BrailleForm())))]
    numbers = [word for word in words if re.fullmatch(r"\d\d+", word.print)]
    letters = [word for word in words if re.fullmatch(r"[a-z]{5,}", word.print) and len(word.cells) > 3]
    assert numbers and letters
    assert all(compare(word, code) is None for word in numbers)
    assert all((compare(word._replace(cells=word.cells[:-1]), code) or ("",))[0] == "number" for word in numbers)
    noticed = [compare(word._replace(cells=word.cells[:-1]), code) is not None for word in letters]
    assert all(noticed)


# --- the list of differences -------------------------------------------------


def test_the_list_of_differences_names_every_form() -> None:
    assert {form for form, _, _ in DIFFERENCES} == set(FORMS)
    assert all(what and why for _, what, why in DIFFERENCES)
