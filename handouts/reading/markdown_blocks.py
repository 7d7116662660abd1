"""The part of Markdown that exercise texts are written in, to blocks with lines.

It is small, because each form of output must be able to say all of it:
paragraphs, numbered and bullet lists with one level of nesting, and **strong**
words.  Anything else is a fault with its line, never dropped and never passed
on.

Source of the syntax: John Gruber, "Markdown: Syntax"; the lines are read by
the block parser of the library `markdown`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import TypeAlias
from xml.etree.ElementTree import Element

import markdown

from handouts.amounts import quoted
from handouts.models import ItemList, ListItem, Paragraph, TextBlock

Problem: TypeAlias = tuple[int, str, str]
"""Line, what is wrong, what to write instead."""

_REFUSED = (
    (re.compile(r"<[A-Za-z/!?]"), "HTML cannot be said in every form of a sheet", "take the '<...>' out"),
    (re.compile(r"!\["), "a picture cannot be read by touch or ear", "say it in words"),
    (
        re.compile(r"\]\(|\]\[|^ *\[[^\]]*\]:|\b(?:https?|ftp|file|mailto):|\bwww\."),
        "a link leads nowhere on paper",
        "write the words themselves",
    ),
    (re.compile("`|~~~"), "text set as code is not read here", "take the '`' or '~' out"),
    (re.compile(r"\|"), "a table cannot be told line by line", "write a list"),
    (re.compile(r"^ *>"), "a quotation is not read here", "take the '>' out"),
    (re.compile(r"^ *([-*_=] *){3,}$"), "a line of signs cannot be told in words", "take it out"),
    (re.compile("_"), "an underscore makes italics, which finger and ear miss", "take it out, or use **words**"),
    (re.compile(r"\\"), "a backslash is not read here", "take it out"),
    (re.compile(r"&#?\w+;"), "a sign is written as HTML code", "type the sign itself"),
)
_ANY_REFUSED = re.compile("|".join(f"(?:{pattern.pattern})" for pattern, _, _ in _REFUSED))
_LIST_LINE = re.compile(r"( *)([-*+]|[0-9]{1,9}[.)])(?: +(.*)|$)")
_STRONG = re.compile(r"\*\*[^*\s](?:[^*]*[^*\s])?\*\*")

# Private-use characters carry each line's number through the parser; the
# reader of text files has refused them before.
_MARK = "\ue000{}\ue001"
_MARKED = re.compile("\ue000([0-9]+)\ue001")


def read_blocks(lines: list[tuple[int, str]]) -> tuple[tuple[TextBlock, ...], list[Problem]]:
    """The blocks of some lines, and what is wrong with them.

    lines: each with its number in the file.  With problems there may be no
    blocks.
    """
    read = [_Line.of(number, text) for number, text in lines if text.strip()]
    empty_above = {
        number for (_, above), (number, _) in zip([(0, ""), *lines], lines, strict=False) if not above.strip()
    }
    problems = [problem for line in read for problem in _refused(line)] or list(_misplaced(read, empty_above))
    if problems or not read:
        return (), problems
    root = _library().parser.parseDocument(list(_even(read, empty_above))).getroot()
    assert root is not None
    blocks = tuple(_block(element) for element in root)
    problems = [problem for text, line in _texts(blocks) for problem in _unclosed(text, line)]
    if " ".join(line.words for line in read).split() != " ".join(text for text, _ in _texts(blocks)).split():
        wrong = "the lists and paragraphs of this part cannot be told apart"
        problems.append((read[0].number, wrong, "put an empty line before and after each list"))
    return blocks, problems


def _library() -> markdown.Markdown:
    """The library as if new: to build it takes longer than to read a part."""
    library = _built_library()
    library.reset()
    # What a text that was too deep left behind.
    library.parser.state.clear()
    return library


@lru_cache(maxsize=1)
def _built_library() -> markdown.Markdown:
    return markdown.Markdown(extensions=["sane_lists"])


@dataclass(frozen=True)
class _Line:
    """A line that is not empty.

    kind: "ol" or "ul" for a list item, "" for other words.  indent: in spaces.
    sign: that makes it a list item.
    """

    number: int
    indent: int
    kind: str
    sign: str
    words: str

    @classmethod
    def of(cls, number: int, text: str) -> _Line:
        text = text.expandtabs(4).rstrip(" ")
        item = _LIST_LINE.fullmatch(text)
        if item is None:
            words = text.lstrip(" ")
            return cls(number, len(text) - len(words), "", "", words)
        return cls(number, len(item[1]), "ul" if item[2] in "-*+" else "ol", item[2], item[3] or "")


def _refused(line: _Line) -> Iterator[Problem]:
    text = " " * line.indent + f"{line.sign} {line.words}".strip(" ")
    if not (_ANY_REFUSED.search(text) or _ANY_REFUSED.search(line.words)):
        return
    for pattern, wrong, instead in _REFUSED:
        if pattern.search(text) or pattern.search(line.words):
            yield line.number, wrong, instead


def _misplaced(lines: list[_Line], empty_above: set[int]) -> Iterator[Problem]:
    """Lines that two readers of Markdown would take for different things."""
    kind = ""  # of the list that is open
    nested = 0  # indentation of its nested items, 0 when there are none
    counts = [0, 0]  # numbered items so far, of the list and of its nested one
    above: _Line | None = None
    for line in lines:
        apart = line.number in empty_above
        if not line.kind:
            yield from _misplaced_words(line, apart, bool(kind))
            kind = "" if apart else kind
            above = line
            continue
        if line.sign.endswith(")"):
            yield line.number, f"{quoted(line.sign)} does not number a step", f"write '{line.sign[:-1]}.'"
        if not line.words:
            yield line.number, "a list item has no words", "write them, or take the line out"
        elif _LIST_LINE.fullmatch(line.words) or line.words.startswith("#"):
            yield line.number, "two signs stand before the words of a list item", "write one of them"
        if line.indent < 2:
            if kind not in ("", line.kind) and not apart:
                wrong = "numbers and dashes are mixed in one list"
                yield line.number, wrong, "use one of the two, or put an empty line between two lists"
            counts = [counts[0] if kind == line.kind else 0, 0]
            kind, nested = line.kind, 0
        elif not kind:
            yield line.number, "an indented list item has no item above it", "begin it at the start of the line"
        else:
            if nested and line.indent > nested + 1:
                yield line.number, "list items are nested two deep", "nest them once at most"
            nested = nested or line.indent
        if line.kind == "ol":
            depth = 0 if line.indent < 2 else 1
            counts[depth] += 1
            yield from _misnumbered(line, counts[depth], above is not None and not above.kind and not apart)
        above = line


def _misplaced_words(line: _Line, apart: bool, in_list: bool) -> Iterator[Problem]:
    if apart and in_list and line.indent:
        yield line.number, "a second paragraph stands in one list item", "write one paragraph an item"
    elif apart and line.indent >= 4:
        yield line.number, "the line is indented like program text", "begin it at the start of the line"
    if re.match(r"[-+]\w|[0-9]+[.)][^\W0-9]|\*[^*]*$", line.words):
        yield line.number, "a list sign has no space after it", "write '- ' or '1. ' before the words of an item"


def _misnumbered(line: _Line, expected: int, after_words: bool) -> Iterator[Problem]:
    """Steps are numbered afresh on the sheet, so another number would be lost."""
    number = int(line.sign[:-1])
    if number not in (1, expected):
        if after_words:
            wrong = f"{quoted(line.sign)} at the start of a line makes it a step of a list"
            yield line.number, wrong, "join the line with the one above, or write 'step' before the number"
        else:
            yield line.number, f"this is step {expected}, but it bears the number {number}", f"write '{expected}.'"


def _even(lines: list[_Line], empty_above: set[int]) -> Iterator[str]:
    """The lines as every reader of Markdown takes them alike, each with a mark
    of its number: nested items four spaces in, an empty line before a list,
    none between the items of one."""
    kind = ""
    for line in lines:
        words = _MARK.format(line.number) + line.words
        if not line.kind:
            if line.number in empty_above:
                kind = ""
                yield ""
            yield words
            continue
        sign = "- " if line.kind == "ul" else "1. "
        if line.indent < 2:
            if kind != line.kind:
                yield ""
            kind = line.kind
            yield sign + words
        else:
            yield "    " + sign + words


def _block(element: Element) -> TextBlock:
    if element.tag == "p":
        text, line = _words(element.text)
        return Paragraph(text=text, line=line)
    assert element.tag in ("ol", "ul"), f"<{element.tag}> from lines that were checked"
    return ItemList(ordered=element.tag == "ol", items=tuple(_item(child) for child in element))


def _item(element: Element) -> ListItem:
    # An item with others below it keeps its own words in a paragraph.
    raw = element.text if (element.text or "").strip() else element.findtext("p")
    text, line = _words(raw)
    nested = tuple(_item(item) for child in element if child.tag in ("ol", "ul") for item in child)
    return ListItem(text=text, line=line, items=nested)


def _words(raw: str | None) -> tuple[str, int]:
    """The words on one line, and the number of the first of their lines."""
    first = _MARKED.search(raw or "")
    pieces = re.split("[ \n]+", _MARKED.sub("", raw or ""))
    return " ".join(piece for piece in pieces if piece), int(first[1]) if first else 0


def _unclosed(text: str, line: int) -> Iterator[Problem]:
    if "*" in _STRONG.sub("", text):
        wrong = "a single '*' makes italics, or a '**' is not closed"
        yield line, wrong, "write **words**, or take the '*' out"


def _texts(blocks: Sequence[TextBlock | ListItem]) -> Iterator[tuple[str, int]]:
    """Every text with its line, in reading order."""
    for block in blocks:
        if not isinstance(block, ItemList):
            yield block.text, block.line
        if not isinstance(block, Paragraph):
            yield from _texts(block.items)
