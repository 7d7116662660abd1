"""Exercise texts: front matter and Markdown to models, with the lines kept.

The Markdown is a small part of the language, because each form of output must
be able to say all of it: headings of the nine parts, paragraphs, numbered and
bullet lists (one level of nesting), and **strong** words.  Anything else is a
fault with its line, never dropped and never passed on.

Source of the Markdown syntax: John Gruber, "Markdown: Syntax"; read by the
block parser of the library `markdown`.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TypeAlias, cast, get_args
from xml.etree.ElementTree import Element

import markdown

from handouts.amounts import quoted
from handouts.errors import Fault, StudioFaults
from handouts.models import (
    Exercise, ExerciseFacts, ExerciseWords, ItemList, ListItem, Option, Paragraph, Part, PartName, TextBlock,
)
from handouts.reading.faults import instead_of, nearest, shape
from handouts.reading.text_file import read_text
from handouts.reading.yaml_text import YamlText, read_yaml

Headings: TypeAlias = Mapping[str, Mapping[PartName, str]]
"""Language tag to part name to the words of its heading."""

PARTS: tuple[PartName, ...] = get_args(PartName)
FIRST_LANGUAGE = "en"
"""The language whose text holds an exercise's data."""

_ID = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_OPENING_STRONG = re.compile(r"\*\*(.+?)\*\*")


def read_headings(path: Path) -> Headings:
    """The heading table of all languages, `handouts/languages/parts.yaml`.

    Raises StudioFaults when it lacks a part.
    """
    document = read_yaml(read_text(path, path.name), path.name)
    faults = [
        Fault(path.name, document.line((language,)), f"'{language}' has no heading for '{part}'", "add it")
        for language, table in document.data.items()
        for part in PARTS
        if not isinstance(table, dict) or not isinstance(table.get(part), str)
    ]
    if faults:
        raise StudioFaults(tuple(faults))
    return document.data


@dataclass(frozen=True)
class TextFile:
    """One file of exercise texts by its name: which exercise, which language.

    path: to read.  shown: for messages.  starter: comes with the program.
    """

    path: Path
    shown: str
    id: str
    language: str
    starter: bool


def name_text_file(path: Path, shown: str, starter: bool, languages: Sequence[str]) -> TextFile:
    """`hip-hinge.md` or `hip-hinge.fr.md`, by its name alone.

    Raises StudioFaults when the name is no exercise id or the language is not
    known.
    """
    id, _, language = unicodedata.normalize("NFC", path.name.removesuffix(".md")).partition(".")
    if not _ID.fullmatch(id):
        better = slug(id) or "my-exercise"
        raise StudioFaults((Fault(
            shown, 0, f"{quoted(id)} cannot be the id of an exercise",
            f"name the file with small letters a to z, digits and hyphens, such as '{better}.md'",
        ),))
    if language and (language not in languages or language == FIRST_LANGUAGE):
        known = [name for name in languages if name != FIRST_LANGUAGE]
        raise StudioFaults((Fault(
            shown, 0, f"{quoted(language)} in the file's name is not a language of a second text",
            f"name the file '{id}.md' for English, or '{id}.LANGUAGE.md' with {' or '.join(known)}",
        ),))
    return TextFile(path, shown, id, language or FIRST_LANGUAGE, starter)


def slug(name: str) -> str:
    """A name as an id: "Quarter range." gives "quarter-range"."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    return "-".join(re.findall("[a-z0-9]+", plain))


def read_exercise(file: TextFile, headings: Headings) -> tuple[Exercise, YamlText]:
    """The English text of an exercise with all its data, and its front matter
    with the lines.

    Every item under Easier and Harder becomes an option: its id is that of the
    front matter whose title it bears, else the slug of its bold name.
    Raises StudioFaults with every fault of the file.
    """
    front, body, faults = _open(file, headings)
    facts = _shape_or_faults(ExerciseFacts, front, file, faults)
    parts = body
    if facts is not None:
        if facts.language != FIRST_LANGUAGE:
            _fault(faults, file, front, ("language",), f"the language is {quoted(facts.language)}, but the file's name "
                   "is that of the English text", f"write 'language: en', or name the file '{file.id}.{facts.language}.md'")
        if facts.sides == "together" and facts.written_for is not None:
            _fault(faults, file, front, ("written for",), "both sides work together, yet the text is written for one side",
                   "take 'written for' out, or write 'sides: each'")
        for id in facts.options:
            if not _ID.fullmatch(id):
                _fault(faults, file, front, ("options", id), f"{quoted(id)} cannot be the id of an option",
                       f"write small letters, digits and hyphens, such as '{slug(id) or 'quarter-range'}'")
        ids = {_same(option.title): id for id, option in facts.options.items() if option.title}
        parts, names = _tie_options(file, parts, lambda name: ids.get(_same(name)) or slug(name), faults)
        _unworded(file, front, set(facts.options) - set(names), names, faults)
        options = {id: (facts.options.get(id) or Option()).model_copy(update={"title": name}) for id, name in names.items()}
        facts = facts.model_copy(update={"options": options})
    if faults or facts is None:
        raise StudioFaults(tuple(faults))
    return Exercise(id=file.id, path=file.shown, starter=file.starter, facts=facts, parts=parts), front


def read_translation(file: TextFile, original: Exercise | None, headings: Headings) -> Exercise | None:
    """The text of an exercise in another language; data come from `original`.

    original: None when the English text has faults of its own.  This file is
    still checked as far as it goes, and None is given back.
    Raises StudioFaults with every fault of the file.
    """
    front, body, faults = _open(file, headings)
    words = _shape_or_faults(ExerciseWords, front, file, faults)
    parts = body
    if words is not None:
        if words.language != file.language:
            _fault(faults, file, front, ("language",), f"the language is {quoted(words.language)}, but the file's name says "
                   f"'{file.language}'", f"write 'language: {file.language}'")
    if words is not None and original is not None:
        known = list(original.facts.options)
        for id in words.options:
            if id not in original.facts.options:
                _fault(faults, file, front, ("options", id), f"{original.path} has no option {quoted(id)}",
                       instead_of(id, known, "take it out"), of_key=True)
        ids = {_same(option.title): id for id, option in words.options.items()}
        titles = [option.title for option in words.options.values()]
        parts, names = _tie_options(
            file, parts, lambda name: ids.get(_same(name), ""), faults,
            f"give it an id by 'options:' in the front matter, with this name as 'title'", titles,
        )
        _unworded(file, front, set(words.options) & set(known) - set(names), names, faults)
        for id in known:
            if id not in words.options:
                _fault(faults, file, front, ("options",), f"the option '{id}' of {original.path} has no words",
                       f"add '{id}:' with a 'title:' below 'options:', and an item with that name", of_key=True)
    if faults or words is None:
        raise StudioFaults(tuple(faults))
    if original is None:
        return None
    facts = original.facts.model_copy(update={
        "title": words.title,
        "language": words.language,
        "picture": words.picture,
        "options": {
            id: option.model_copy(update={"title": words.options[id].title})
            for id, option in original.facts.options.items()
        },
    })
    return Exercise(id=file.id, path=file.shown, starter=file.starter, facts=facts, parts=parts)


def _shape_or_faults(model, front: YamlText, file: TextFile, faults: list[Fault]):
    try:
        return shape(model, front, file.shown)
    except StudioFaults as problem:
        faults.extend(problem.faults)
        return None


def _fault(
    faults: list[Fault], file: TextFile, front: YamlText, place: tuple[str, ...], wrong: str, instead: str,
    of_key: bool = False,
) -> None:
    faults.append(Fault(file.shown, front.line(place, of_key), wrong, instead))


# --- front matter and parts ----------------------------------------------------


def _open(file: TextFile, headings: Headings) -> tuple[YamlText, tuple[Part, ...], list[Fault]]:
    """Front matter, parts, and the faults of the parts.

    Raises StudioFaults, those of the parts among them, when the front matter
    cannot be read at all.
    """
    lines = read_text(file.path, file.shown).split("\n")
    end = next((at for at, line in enumerate(lines) if at and line.rstrip() == "---"), 0)
    if lines[0].rstrip() != "---" or not end:
        raise StudioFaults((Fault(
            file.shown, 1, "the file does not begin with its data between two lines of '---'",
            "write '---', then 'title: ...' and the other data, then '---' again",
        ),))
    parts, faults = _read_parts(lines[end + 1 :], end + 2, file, headings[file.language])
    try:
        return read_yaml("\n".join(lines[1:end]) + "\n", file.shown, first_line=2), parts, faults
    except StudioFaults as problem:
        raise StudioFaults((*problem.faults, *faults)) from None


def _read_parts(
    lines: list[str], first_line: int, file: TextFile, table: Mapping[PartName, str]
) -> tuple[tuple[Part, ...], list[Fault]]:
    faults: list[Fault] = []
    by_heading = {_same(words): part for part, words in table.items()}
    found: list[tuple[PartName | None, int, list[tuple[int, str]]]] = []
    stray = False
    for number, line in enumerate(lines, first_line):
        if line.lstrip().startswith("#"):
            part, problem = _heading(line, by_heading, table)
            if problem:
                faults.append(Fault(file.shown, number, *problem))
            found.append((part, number, []))
        elif found:
            found[-1][2].append((number, line))
        elif line.strip() and not stray:
            stray = True
            faults.append(Fault(file.shown, number, "words stand before the first heading",
                                f"write '## {table['Equipment']}' above them"))
    faults += _order_faults(file, found, table)
    parts = []
    for name, number, body in found:
        blocks, problems = _read_blocks(body)
        faults += [Fault(file.shown, *problem) for problem in problems]
        if name is None:
            continue
        if not blocks and not problems:
            faults.append(Fault(file.shown, number, f"nothing stands below '{table[name]}'", "write the words of this part"))
        parts.append(Part(name=name, blocks=blocks, line=number))
    return tuple(parts), faults


def _heading(
    line: str, by_heading: Mapping[str, PartName], table: Mapping[PartName, str]
) -> tuple[PartName | None, tuple[str, str] | None]:
    """The part that a heading opens, and what is wrong with the heading."""
    words = line.strip().strip("#").strip()
    part = by_heading.get(_same(words))
    if not re.match(r"## +\S", line):
        shown = table[part] if part else words or "Equipment"
        return part, (f"{quoted(line)} is not a heading of a part", f"write '## {shown}' from the start of the line")
    if part is None:
        near = nearest(words, table.values())
        instead = f"did you mean '{near}'?" if near else f"the headings are {', '.join(table.values())}"
        return by_heading[_same(near)] if near else None, (f"there is no part {quoted(words)}", instead)
    return part, None


def _order_faults(
    file: TextFile, found: list[tuple[PartName | None, int, list[tuple[int, str]]]], table: Mapping[PartName, str]
) -> list[Fault]:
    """Missing, repeated and misplaced parts."""
    faults = []
    first: dict[PartName, int] = {}
    latest = -1
    for name, number, _ in found:
        if name is None:
            continue
        at = PARTS.index(name)
        if name in first:
            faults.append(Fault(file.shown, number, f"'{table[name]}' stands here a second time, first in line "
                                f"{first[name]}", "put the two together"))
            continue
        first[name] = number
        if at < latest:
            after = "as the first part" if at == 0 else f"after '{table[PARTS[at - 1]]}'"
            faults.append(Fault(file.shown, number, f"'{table[name]}' stands after '{table[PARTS[latest]]}'",
                                f"put it {after}"))
        latest = max(latest, at)
    for at, name in enumerate(PARTS):
        if name not in first:
            after = "as the first part" if at == 0 else f"after '{table[PARTS[at - 1]]}'"
            faults.append(Fault(file.shown, 0, f"the part '{table[name]}' is missing", f"write '## {table[name]}' {after}"))
    return faults


# --- Markdown ------------------------------------------------------------------

_LIST_LINE = re.compile(r"( *)([-*+]|[0-9]{1,9}[.)])(?: +(.*)|$)")
_RULE = re.compile(r" *([-*_=] *){3,}$")
_STRONG = re.compile(r"\*\*[^*\s](?:[^*]*[^*\s])?\*\*")
# Private-use characters carry each line's number through the parser; the
# reader of text files has refused them before.
_BEFORE, _AFTER = "\ue000", "\ue001"
_LINE_MARK = re.compile(f"{_BEFORE}([0-9]+){_AFTER}")

_REFUSED = (
    (re.compile(r"<[A-Za-z/!?]"), "HTML cannot be said in every form of a sheet", "take the '<...>' out"),
    (re.compile(r"!\["), "a picture cannot be read by touch or ear", "say it in words"),
    (re.compile(r"\]\(|\]\[|^ *\[[^\]]*\]:|(?:https?|ftp|file|mailto):|www\."), "a link leads nowhere on paper",
     "write the words themselves"),
    (re.compile("`|~~~"), "text set as code is not read here", "take the '`' or '~' out"),
    (re.compile(r"\|"), "a table cannot be told line by line", "write a list"),
    (re.compile(r"^ *>"), "a quotation is not read here", "take the '>' out"),
    (re.compile("_"), "an underscore makes italics, which get lost for finger and ear", "take it out, or use **words**"),
    (re.compile(r"\\"), "a backslash is not read here", "take it out"),
    (re.compile(r"&#?\w+;"), "a sign is written as HTML code", "type the sign itself"),
    (_RULE, "a line of signs cannot be told in words", "take it out"),
)

Problem: TypeAlias = tuple[int, str, str]
"""Line, what is wrong, what to write instead."""


def _read_blocks(lines: list[tuple[int, str]]) -> tuple[tuple[TextBlock, ...], list[Problem]]:
    problems: list[Problem] = []
    for number, line in lines:
        problems += [(number, wrong, instead) for pattern, wrong, instead in _REFUSED if pattern.search(line)]
    if problems:
        return (), problems
    markdown_lines = _even(lines, problems)
    if problems:
        return (), problems
    parser = markdown.Markdown(extensions=["sane_lists"]).parser
    root = parser.parseDocument(markdown_lines).getroot()
    blocks = tuple(block for element in root for block in _block(element, problems))
    _check_all_there(lines, blocks, problems)
    return blocks, problems


def _even(lines: list[tuple[int, str]], problems: list[Problem]) -> list[str]:
    """The lines as every Markdown reader takes them alike, each with a mark of
    its number: nested items four spaces in, an empty line before a list, none
    between the items of one."""
    even: list[str] = []
    kind = ""  # of the list that is open at the outer level: "ol", "ul" or ""
    inner = 0  # indentation of the nested items that are open
    empty_before = True
    for number, line in lines:
        if not line.strip():
            empty_before = True
            continue
        mark = f"{_BEFORE}{number}{_AFTER}"
        item = _LIST_LINE.fullmatch(line.expandtabs(4).rstrip())
        if item is None:
            indented = line[0] in " \t"
            if kind and empty_before and indented:
                problems.append((number, "a second paragraph stands in one list item", "write one paragraph an item"))
            elif empty_before and len(line) - len(line.lstrip()) >= 4:
                problems.append((number, "the line is indented like program text", "begin it at the start of the line"))
            if empty_before:
                kind, inner = "", 0
                even.append("")
            even.append(mark + line.strip())
            empty_before = False
            continue
        indent, sign, words = len(item[1]), item[2], item[3] or ""
        this_kind = "ul" if sign in "-*+" else "ol"
        if sign.endswith(")"):
            problems.append((number, f"{quoted(sign)} does not number a step", f"write '{sign[:-1]}.'"))
        if not words:
            problems.append((number, "a list item has no words", "write them, or take the line out"))
        if indent >= 2 and kind:
            if inner and indent > inner + 1:
                problems.append((number, "list items are nested two deep", "nest them once at most"))
            inner = inner or indent
            even.append(f"    {'- ' if this_kind == 'ul' else '1. '}{mark}{words}")
        else:
            if indent >= 2:
                problems.append((number, "an indented list item has no item above it", "begin it at the start of the line"))
            if kind and kind != this_kind and not empty_before:
                problems.append((number, "numbers and dashes are mixed in one list", "use one of them, or an empty line between"))
            if kind != this_kind:
                even.append("")
            kind, inner = this_kind, 0
            even.append(f"{'- ' if this_kind == 'ul' else '1. '}{mark}{words}")
        empty_before = False
    return even


def _block(element: Element, problems: list[Problem]) -> list[TextBlock]:
    if element.tag == "p":
        text, line = _words(element.text, problems)
        return [Paragraph(text=text, line=line)]
    if element.tag in ("ul", "ol"):
        return [ItemList(ordered=element.tag == "ol", items=tuple(_item(child, problems) for child in element))]
    raise AssertionError(f"the Markdown parser gave <{element.tag}> for checked lines")


def _item(element: Element, problems: list[Problem]) -> ListItem:
    raw = element.text if (element.text or "").strip() else next(child.text for child in element if child.tag == "p")
    text, line = _words(raw, problems)
    nested = tuple(_item(item, problems) for child in element if child.tag in ("ul", "ol") for item in child)
    return ListItem(text=text, line=line, items=nested)


def _words(raw: str | None, problems: list[Problem]) -> tuple[str, int]:
    """The words on one line, and the number of the first of their lines."""
    first = _LINE_MARK.search(raw or "")
    line = int(first[1]) if first else 0
    text = " ".join(piece for piece in re.split("[ \n]+", _LINE_MARK.sub("", raw or "")) if piece)
    if "*" in _STRONG.sub("", text):
        problems.append((line, "a single '*' makes italics, or a '**' is not closed", "write **words**, or take the '*' out"))
    return text, line


def _check_all_there(lines: list[tuple[int, str]], blocks: tuple[TextBlock, ...], problems: list[Problem]) -> None:
    """No word of the author's may get lost or change its place on the way."""
    items = [(line, _LIST_LINE.fullmatch(line.expandtabs(4).rstrip())) for _, line in lines]
    wanted = " ".join(" ".join((item[3] or "") if item else line for line, item in items).split())
    got = " ".join(" ".join(_all_texts(blocks)).split())
    if wanted != got:
        problems.append((lines[0][0], "the lists and paragraphs of this part cannot be told apart",
                         "put an empty line before and after each list"))


def _all_texts(blocks: Sequence[TextBlock | ListItem]) -> list[str]:
    texts = []
    for block in blocks:
        if isinstance(block, Paragraph):
            texts.append(block.text)
        elif isinstance(block, ItemList):
            texts += _all_texts(block.items)
        else:
            texts += [block.text, *_all_texts(block.items)]
    return texts


# --- options -------------------------------------------------------------------


def _same(words: str) -> str:
    """For comparing names: case, spaces, kinds of apostrophe and a final stop
    make no difference."""
    plain = unicodedata.normalize("NFC", words).replace("’", "'").replace("\u00a0", " ").replace("\u202f", " ")
    return " ".join(plain.casefold().split()).strip(" .:!")


def _tie_options(
    file: TextFile, parts: tuple[Part, ...], id_of, faults: list[Fault],
    instead: str = "begin the item with a name of letters in bold", titles: Sequence[str] = (),
) -> tuple[tuple[Part, ...], dict[str, str]]:
    """The parts with an option id at each item under Easier and Harder, and
    the bold name of each id."""
    names: dict[str, str] = {}
    tied = []
    for part in parts:
        if part.name not in ("Easier", "Harder"):
            tied.append(part)
            continue
        blocks: list[TextBlock] = []
        for block in part.blocks:
            if not isinstance(block, ItemList) or block.ordered:
                line = block.line if isinstance(block, Paragraph) else block.items[0].line
                faults.append(Fault(file.shown, line, "an option is not written as a bullet list item",
                                    "begin it with '- **Name.** '"))
                continue
            items = []
            for item in block.items:
                bold = _OPENING_STRONG.match(item.text)
                if not bold:
                    faults.append(Fault(file.shown, item.line, "an option does not begin with its name in bold",
                                        "write '- **Name.** ' and then the words"))
                    continue
                name = bold[1].strip().rstrip(".:!").rstrip()
                id = id_of(name)
                if not id:
                    near = nearest(name, titles)
                    faults.append(Fault(file.shown, item.line, f"the option {quoted(name)} has no id",
                                        f"did you mean '{near}'?" if near else instead))
                    continue
                if id in names:
                    faults.append(Fault(file.shown, item.line, f"the option {quoted(name)} stands here a second time",
                                        "give it another name"))
                    continue
                names[id] = name
                items.append(item.model_copy(update={"option": id}))
            blocks.append(block.model_copy(update={"items": tuple(items)}))
        tied.append(part.model_copy(update={"blocks": tuple(blocks)}))
    return tuple(tied), names


def _unworded(file: TextFile, front: YamlText, ids: set[str], names: Mapping[str, str], faults: list[Fault]) -> None:
    for id in sorted(ids):
        near = nearest(id, [other for other in names if other not in cast(dict, front.data.get("options", {}))])
        instead = f"did you mean '{near}'?" if near else "begin an item there with its name in bold, '- **Name.** '"
        _fault(faults, file, front, ("options", id), f"the option '{id}' has no words under Easier or Harder", instead, of_key=True)
