"""Exercise texts: front matter and nine headed parts, with the lines kept."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from typing import TypeAlias, get_args

from handouts.amounts import quoted
from handouts.errors import Fault, StudioFaults
from handouts.models import (
    Exercise,
    ExerciseFacts,
    ExerciseWords,
    ItemList,
    ListItem,
    Option,
    Paragraph,
    Part,
    PartName,
    TextBlock,
)
from handouts.reading.comments import without_comments
from handouts.reading.faults import Shape, instead_of, nearest, shape
from handouts.reading.markdown_blocks import read_blocks
from handouts.reading.text_file import read_text
from handouts.reading.yaml_text import YamlText, read_yaml

Headings: TypeAlias = Mapping[str, Mapping[PartName, str]]
"""Language tag to part name to the words of its heading."""

PARTS: tuple[PartName, ...] = get_args(PartName)

FIRST_LANGUAGE = "en"
"""The language whose text holds an exercise's data."""

_ID = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_OPENING_STRONG = re.compile(r"\*\*(.+?)\*\*")
_OPTION_HEADING = re.compile(r"### +(\S.*?)[ #]*")


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


# --- files ---------------------------------------------------------------------


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
    id, _, language = unicodedata.normalize("NFC", path.name).removesuffix(".md").partition(".")
    if not _ID.fullmatch(id):
        wrong = f"{quoted(id)} cannot be the id of an exercise"
        better = slug(id) or "my-exercise"
        instead = f"name the file with small letters a to z, digits and hyphens, such as '{better}.md'"
        raise StudioFaults((Fault(shown, 0, wrong, instead),))
    others = [name for name in languages if name != FIRST_LANGUAGE]
    if language and language not in others:
        wrong = f"{quoted(language)} in the file's name is not a language of a second text"
        instead = f"name the file '{id}.md' for English, or '{id}.LANGUAGE.md' with {' or '.join(others)}"
        raise StudioFaults((Fault(shown, 0, wrong, instead),))
    return TextFile(path, shown, id, language or FIRST_LANGUAGE, starter)


def slug(name: str) -> str:
    """A name as an id: "Quarter range." gives "quarter-range"."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    return "-".join(re.findall("[a-z0-9]+", plain))


@dataclass
class OpenedText:
    """A text whose front matter can be read, its parts, and the faults so far.

    variants: parts in the words of one option, which here is still its name.
    """

    file: TextFile
    front: YamlText
    parts: tuple[Part, ...]
    variants: tuple[Part, ...] = ()
    faults: list[Fault] = field(default_factory=list)

    def shape(self, model: type[Shape]) -> Shape:
        """The front matter as a model.  Raises StudioFaults, those of the parts
        among them."""
        try:
            return shape(model, self.front, self.file.shown)
        except StudioFaults as problem:
            raise StudioFaults((*problem.faults, *self.faults)) from None

    def fault(self, place: tuple[str, ...], wrong: str, instead: str, of_key: bool = False) -> None:
        self.faults.append(Fault(self.file.shown, self.front.line(place, of_key), wrong, instead))


def open_text(file: TextFile, headings: Headings) -> OpenedText:
    """The front matter of a text, as text, and its parts.

    Raises StudioFaults, those of the parts among them, when the front matter
    cannot be read at all.
    """
    lines = read_text(file.path, file.shown).split("\n")
    end = next((at for at, line in enumerate(lines) if at and line.rstrip() == "---"), 0)
    if lines[0].rstrip() != "---" or not end:
        wrong = "the file does not begin with its data between two lines of '---'"
        instead = "write '---', then 'title: ...' and the other data, then '---' again"
        raise StudioFaults((Fault(file.shown, 1, wrong, instead),))
    parts, faults = _read_parts(lines[end + 1 :], end + 2, file.shown, headings[file.language])
    try:
        front = read_yaml("\n".join(lines[1:end]) + "\n", file.shown, first_line=2)
    except StudioFaults as problem:
        raise StudioFaults((*problem.faults, *faults)) from None
    base = tuple(part for part in parts if part.option is None)
    return OpenedText(file, front, base, tuple(part for part in parts if part.option is not None), faults)


def exercise_from(opened: OpenedText) -> Exercise:
    """The English text of an exercise with all its data.

    Every item under Easier and Harder becomes an option: its id is that of the
    front matter whose title it bears, else the slug of its bold name.  Words
    below '### NAME' in a part stand in that option's sheets in place of the
    part's own.
    Raises StudioFaults with every fault of the file.
    """
    facts = opened.shape(ExerciseFacts)
    _check_facts(opened, facts)
    ids = {_same(option.title): id for id, option in facts.options.items() if option.title}
    parts, names = _tie_options(
        opened,
        lambda name: ids.get(_same(name)) or slug(name),
        tuple(ids),
        "begin it with a name that has letters a to z",
    )
    _check_worded(opened, facts.options, names)
    options = {id: (facts.options.get(id) or Option()).model_copy(update={"title": name}) for id, name in names.items()}
    return _exercise(opened, facts.model_copy(update={"options": options}), parts, _tie_variants(opened, names))


def translation_from(opened: OpenedText, original: Exercise | None) -> Exercise | None:
    """The text of an exercise in another language; data come from `original`.

    original: None when the English text has faults of its own.  This file is
    still checked as far as it goes, and None is given back.
    Raises StudioFaults with every fault of the file.
    """
    words = opened.shape(ExerciseWords)
    language = opened.file.language
    if words.language != language:
        wrong = f"the language is {quoted(words.language)}, but the file's name says '{language}'"
        opened.fault(("language",), wrong, f"write 'language: {language}'")
    if original is None:
        if opened.faults:
            raise StudioFaults(tuple(opened.faults))
        return None
    known = original.facts.options
    _check_translated(opened, words, original)
    ids = {_same(option.title): id for id, option in words.options.items()}
    parts, names = _tie_options(
        opened,
        lambda name: ids.get(_same(name), ""),
        tuple(option.title for option in words.options.values()),
        "give it an id below 'options:' in the front matter, with this name as 'title'",
    )
    _check_worded(opened, [id for id in words.options if id in known], names)
    titles = {id: option.title for id, option in words.options.items()}
    options = {id: option.model_copy(update={"title": titles.get(id)}) for id, option in known.items()}
    facts = original.facts.model_copy(
        update={"title": words.title, "language": language, "picture": words.picture, "options": options}
    )
    return _exercise(opened, facts, parts, _tie_variants(opened, names))


def _exercise(
    opened: OpenedText, facts: ExerciseFacts, parts: tuple[Part, ...], variants: tuple[Part, ...]
) -> Exercise:
    if opened.faults:
        raise StudioFaults(tuple(opened.faults))
    file = opened.file
    return Exercise(id=file.id, path=file.shown, starter=file.starter, facts=facts, parts=parts, variants=variants)


# --- checks of the front matter ----------------------------------------------------


def _check_facts(opened: OpenedText, facts: ExerciseFacts) -> None:
    if facts.language != FIRST_LANGUAGE:
        opened.fault(
            ("language",),
            f"the language is {quoted(facts.language)}, but the file's name is that of the English text",
            "write 'language: en', or put the language into the file's name, as in 'hip-hinge.fr.md'",
        )
    if facts.sides == "together" and facts.written_for is not None:
        opened.fault(
            ("written for",),
            "both sides work together, yet the text is written for one side",
            "take 'written for' out, or write 'sides: each'",
        )
    for id in facts.options:
        if not _ID.fullmatch(id):
            opened.fault(
                ("options", id),
                f"{quoted(id)} cannot be the id of an option",
                f"write small letters, digits and hyphens, such as '{slug(id) or 'quarter-range'}'",
                of_key=True,
            )


def _check_translated(opened: OpenedText, words: ExerciseWords, original: Exercise) -> None:
    """The options here are those of the English text, no more and no fewer."""
    known = list(original.facts.options)
    for id in words.options:
        if id not in known:
            wrong = f"{original.path} has no option {quoted(id)}"
            opened.fault(("options", id), wrong, instead_of(id, known, "take it out"), of_key=True)
    for id in known:
        if id not in words.options:
            wrong = f"the option '{id}' of {original.path} has no words in this language"
            instead = f"add '{id}:' with a 'title:' below 'options:', and an item with that name"
            opened.fault(("options",), wrong, instead, of_key=True)


# --- parts -----------------------------------------------------------------------


@dataclass
class _Heading:
    """A heading as found: its part (None when unknown), line, and lines below.

    option: the name after '###', within the part of the heading before it.
    """

    part: PartName | None
    line: int
    below: list[tuple[int, str]] = field(default_factory=list)
    option: str | None = None


def _read_parts(
    lines: list[str], first_line: int, shown: str, table: Mapping[PartName, str]
) -> tuple[tuple[Part, ...], list[Fault]]:
    faults: list[Fault] = []
    found: list[_Heading] = []
    stray = False
    for number, line in without_comments(lines, first_line):
        option = _OPTION_HEADING.fullmatch(line)
        of_part = option is not None and _same(option[1]) in {_same(words) for words in table.values()}
        if option and not of_part and found and found[-1].part is not None:
            found.append(_Heading(found[-1].part, number, option=option[1]))
        elif line.lstrip().startswith("#"):
            part, wrong, instead = _heading(line, table)
            found.append(_Heading(part, number))
            if wrong:
                faults.append(Fault(shown, number, wrong, instead))
        elif found:
            found[-1].below.append((number, line))
        elif line.strip() and not stray:
            stray = True
            wrong = "words stand before the first heading"
            faults.append(Fault(shown, number, wrong, f"write '## {table[PARTS[0]]}' above them"))
    faults += _order_faults(shown, found, table)
    parts = []
    for heading in found:
        blocks, problems = read_blocks(heading.below)
        faults += [Fault(shown, *problem) for problem in problems]
        if heading.part is None:
            continue
        if not blocks and not problems:
            wrong = f"nothing stands below '{heading.option or table[heading.part]}'"
            faults.append(Fault(shown, heading.line, wrong, "write the words of this part"))
        parts.append(Part(name=heading.part, blocks=blocks, line=heading.line, option=heading.option))
    return tuple(parts), faults


def _heading(line: str, table: Mapping[PartName, str]) -> tuple[PartName | None, str, str]:
    """The part that a heading opens, what is wrong with the heading ("" when
    nothing is), and what to write instead."""
    by_words = {_same(words): part for part, words in table.items()}
    words = line.strip().strip("#").strip()
    part = by_words.get(_same(words))
    if not re.match(r"## +\S", line):
        better = table[part or PARTS[0]]
        return part, f"{quoted(line)} is not a heading of a part", f"write '## {better}' from the start of the line"
    if part is not None:
        return part, "", ""
    near = nearest(words, table.values())
    if near:
        return by_words[_same(near)], f"there is no part {quoted(words)}", f"did you mean '{near}'?"
    return None, f"there is no part {quoted(words)}", f"the headings are {', '.join(table.values())}"


def _order_faults(shown: str, found: list[_Heading], table: Mapping[PartName, str]) -> list[Fault]:
    """Missing, repeated and misplaced parts."""

    def right_place(at: int) -> str:
        return f"after '{table[PARTS[at - 1]]}'" if at else "as the first part"

    faults = []
    lines: dict[PartName, int] = {}
    latest = -1
    for heading in found:
        if heading.part is None or heading.option is not None:
            continue
        at, words = PARTS.index(heading.part), table[heading.part]
        if heading.part in lines:
            wrong = f"'{words}' stands here a second time, first in line {lines[heading.part]}"
            faults.append(Fault(shown, heading.line, wrong, "put the two together"))
            continue
        lines[heading.part] = heading.line
        if at < latest:
            wrong = f"'{words}' stands after '{table[PARTS[latest]]}'"
            faults.append(Fault(shown, heading.line, wrong, f"put it {right_place(at)}"))
        latest = max(latest, at)
    for at, part in enumerate(PARTS):
        if part not in lines:
            wrong = f"the part '{table[part]}' is missing"
            faults.append(Fault(shown, 0, wrong, f"write '## {table[part]}' {right_place(at)}"))
    return faults


# --- options ---------------------------------------------------------------------


def _same(words: str) -> str:
    """For comparing names: case, spaces, kinds of apostrophe and a final stop
    make no difference."""
    plain = unicodedata.normalize("NFC", words).replace("\u2019", "'").casefold()
    return " ".join(plain.split()).strip(" .:!")


def _tie_options(
    opened: OpenedText, id_of: Callable[[str], str], titles: Sequence[str], instead: str
) -> tuple[tuple[Part, ...], dict[str, str]]:
    """The parts with an option id at each item under Easier and Harder, and
    the bold name of each id.

    id_of: from a bold name to an id, "" when it has none.  titles: names that
    have an id.  instead: what to do for a name without an id.
    """
    names: dict[str, str] = {}

    def fault(line: int, wrong: str, better: str) -> None:
        opened.faults.append(Fault(opened.file.shown, line, wrong, better))

    def tied(item: ListItem) -> ListItem:
        bold = _OPENING_STRONG.match(item.text)
        if not bold:
            fault(
                item.line, "an option does not begin with its name in bold", "write '- **Name.** ' and then the words"
            )
            return item
        name = bold[1].strip().rstrip(".:!").rstrip()
        id = id_of(name)
        if not id:
            near = nearest(name, titles)
            fault(item.line, f"the option {quoted(name)} has no id", f"did you mean '{near}'?" if near else instead)
        elif id in names:
            fault(item.line, f"the option {quoted(name)} stands here a second time", "give it another name")
        else:
            names[id] = name
        return item.model_copy(update={"option": id})

    def block_tied(block: TextBlock) -> TextBlock:
        if isinstance(block, ItemList) and not block.ordered:
            return block.model_copy(update={"items": tuple(tied(item) for item in block.items)})
        line = block.line if isinstance(block, Paragraph) else block.items[0].line
        fault(line, "an option is not written as an item of a bullet list", "begin it with '- **Name.** '")
        return block

    parts = tuple(
        part.model_copy(update={"blocks": tuple(block_tied(block) for block in part.blocks)})
        if part.name in ("Easier", "Harder")
        else part
        for part in opened.parts
    )
    return parts, names


def _tie_variants(opened: OpenedText, names: Mapping[str, str]) -> tuple[Part, ...]:
    """The parts that are worded for an option, each with that option's id.

    names: the bold name of each option, by id.
    """
    ids = {_same(name): id for id, name in names.items()}
    tied: dict[tuple[PartName, str], Part] = {}
    for part in opened.variants:
        name = part.option or ""
        id = ids.get(_same(name))
        if id is None:
            near = nearest(name, names.values())
            instead = f"did you mean '{near}'?" if near else "write the bold name of an item under Easier or Harder"
            opened.faults.append(Fault(opened.file.shown, part.line, f"no option is called {quoted(name)}", instead))
        elif (part.name, id) in tied:
            wrong = f"the words for {quoted(name)} stand here a second time"
            opened.faults.append(Fault(opened.file.shown, part.line, wrong, "put the two together"))
        else:
            tied[part.name, id] = part.model_copy(update={"option": id})
    return tuple(tied.values())


def _check_worded(opened: OpenedText, ids: Sequence[str] | Mapping[str, object], names: Mapping[str, str]) -> None:
    """Every option of the front matter has its words under Easier or Harder."""
    unnamed = [id for id in names if id not in ids]
    for id in ids:
        if id not in names:
            near = nearest(id, unnamed)
            instead = f"did you mean '{near}'?" if near else "begin an item there with '- **Name.** '"
            opened.fault(
                ("options", id), f"the option {quoted(id)} has no words under Easier or Harder", instead, of_key=True
            )
