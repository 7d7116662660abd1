"""YAML in which every word stays the word that was written.

PyYAML reads and splits the file; what its events say is kept as text.  Nothing
is turned into a number, a date or a truth, so "42:35", "no", "012", "1e3" and
"2026-03-04" arrive as typed, and the models read them by their own rules.

Kept away: two keys of the same name (the last one would win in silence),
anchors and aliases (a few lines can unfold to gigabytes), tags, merge keys,
deep nesting.  Each key and each value keeps its line for messages.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Any, TypeAlias

import yaml

from handouts.errors import Fault, StudioFaults, quoted

DEEPEST = 20
"""Blocks within blocks; a client file needs five."""

MOST_VALUES = 50_000
"""Keys, values and blocks of one file; a long plan has a few hundred."""

# The loader in C where PyYAML was built with it: the same events, ten times
# as fast.  Both are tested.
LOADER: type = getattr(yaml, "CSafeLoader", yaml.SafeLoader)


@dataclass(frozen=True)
class Scalar:
    text: str
    line: int


@dataclass(frozen=True)
class Sequential:
    items: list[Node]
    line: int


@dataclass(frozen=True)
class Mapping:
    values: dict[str, Node]
    key_lines: dict[str, int]
    line: int


Node: TypeAlias = Scalar | Sequential | Mapping


@dataclass(frozen=True)
class YamlText:
    """One YAML document.

    data: nested dicts and lists of str, all of them text as written; an empty
        value is "".
    """

    root: Mapping
    data: dict[str, Any] = field(compare=False)

    def line(self, place: Sequence[str | int], of_key: bool = False) -> int:
        """The line of a value, or of the nearest block around it.

        place: keys and list positions from the top; steps that the file does
            not have are passed over, since a validator adds some of its own.
        of_key: the line of the last key instead of that of its value.
        """
        line = self.root.line
        node: Node = self.root
        for _, step_line, step_node in self._walk(place):
            line, node = step_line, step_node
        return node.line if isinstance(node, Scalar) and not of_key else line

    def last_key(self, place: Sequence[str | int]) -> str:
        """The last key on the way to a place; "" at the top."""
        return next((key for key, _, _ in reversed(list(self._walk(place))) if key), "")

    def _walk(self, place: Sequence[str | int]) -> Iterator[tuple[str, int, Node]]:
        """Key ("" for a list item), line and value of each step that is there."""
        node: Node = self.root
        for step in place:
            if isinstance(node, Mapping) and isinstance(step, str) and step in node.values:
                line, node = node.key_lines[step], node.values[step]
                yield step, line, node
            elif isinstance(node, Sequential) and isinstance(step, int) and step < len(node.items):
                node = node.items[step]
                yield "", node.line, node


def read_yaml(text: str, shown: str, first_line: int = 1, loader: type | None = None) -> YamlText:
    """Read one YAML document whose top is a block of keys.

    shown: the file's path for messages.  first_line: the line of the file on
    which `text` begins, for front matter.  loader: a PyYAML loader class, the
    quickest one when None.
    Raises StudioFaults.
    """
    reader = _Reader(text, shown, first_line)
    try:
        root = reader.read(yaml.parse(text, Loader=loader or LOADER))
    except yaml.YAMLError as problem:
        raise StudioFaults((*reader.faults, _syntax_fault(problem, text, shown, first_line))) from None
    if reader.faults:
        raise StudioFaults(tuple(reader.faults))
    if not isinstance(root, Mapping):
        wrong = "there is nothing in it" if root is None else "the file does not begin with a key and a colon"
        raise StudioFaults((Fault(shown, first_line if root else 0, wrong, "write 'key: value' lines"),))
    return YamlText(root, _plain(root))


def _plain(node: Node) -> Any:
    if isinstance(node, Scalar):
        return node.text
    if isinstance(node, Sequential):
        return [_plain(item) for item in node.items]
    return {key: _plain(value) for key, value in node.values.items()}


class _Reader:
    """Builds nodes from PyYAML's events with a stack of its own, so that no
    nesting can exhaust Python's."""

    def __init__(self, text: str, shown: str, first_line: int):
        self.lines = text.split("\n")
        self.shown = shown
        self.first_line = first_line
        self.faults: list[Fault] = []
        self.root: Node | None = None
        self.open: list[Sequential | Mapping] = []
        # For each open mapping the key that waits for its value: None when a
        # key comes next, "" with a line of 0 when the key was refused.
        self.waiting: list[tuple[str, int] | None] = []
        self.documents = 0

    def fault(self, line: int, wrong: str, instead: str) -> None:
        self.faults.append(Fault(self.shown, line, wrong, instead))

    def read(self, events: Iterator[yaml.Event]) -> Node | None:
        for count, event in enumerate(events):
            # PyYAML marks every event of a text; its stubs do not say so.
            assert event.start_mark is not None and event.end_mark is not None
            line = event.start_mark.line + self.first_line
            if count > MOST_VALUES:
                self.fault(
                    line, f"the file has more than {MOST_VALUES:,} keys and values", "split it into several files"
                )
                return None
            if isinstance(event, yaml.DocumentStartEvent):
                self.documents += 1
                if self.documents > 1:
                    self.fault(line, "a second document begins here after '---'", "put it into a file of its own")
                    return None
            elif isinstance(event, yaml.AliasEvent):
                self.fault(
                    line,
                    f"'*{event.anchor}' points to another place in the file, which is not read here",
                    "write the value out, or put quotes around it",
                )
                self._add(Scalar("", line))
            elif isinstance(event, yaml.ScalarEvent):
                self._check_marks(event, line)
                self._check_rest_of_line(event.end_mark)
                self._add(Scalar(event.value, line))
            elif isinstance(event, yaml.SequenceStartEvent | yaml.MappingStartEvent):
                self._check_marks(event, line)
                if len(self.open) == DEEPEST:
                    self.fault(line, f"blocks are nested more than {DEEPEST} deep", "write the file with fewer levels")
                    return None
                self._open(event, line)
            elif isinstance(event, yaml.SequenceEndEvent | yaml.MappingEndEvent):
                closed = self.open.pop()
                if isinstance(closed, Mapping):
                    self.waiting.pop()
        return self.root

    def _open(self, event: yaml.CollectionStartEvent, line: int) -> None:
        if isinstance(event, yaml.SequenceStartEvent):
            block: Sequential | Mapping = Sequential([], line)
        else:
            block = Mapping({}, {}, line)
        self._add(block)
        self.open.append(block)
        if isinstance(block, Mapping):
            self.waiting.append(None)

    def _check_marks(self, event: yaml.NodeEvent, line: int) -> None:
        if event.anchor is not None:
            self.fault(
                line,
                f"'&{event.anchor}' names this place for use elsewhere, which is not read here",
                "take it out, or put quotes around the value",
            )
        tag = getattr(event, "tag", None)
        if tag is not None:
            short = tag.replace("tag:yaml.org,2002:", "!!")
            self.fault(line, f"the tag {quoted(short)} is not read here", "take it out and write the value alone")

    def _check_rest_of_line(self, end: Any) -> None:
        """ "bench #2" would lose its "#2" in silence, as a comment."""
        rest = self.lines[end.line][end.column :].lstrip() if end.line < len(self.lines) else ""
        if rest[:1] == "#" and rest[1:2].strip(" #"):
            self.fault(
                end.line + self.first_line,
                f"{quoted(rest)} is taken for a comment and would be lost",
                "put quotes around the whole value, or a space after '#' if a comment is meant",
            )

    def _add(self, node: Node) -> None:
        if not self.open:
            self.root = node
            return
        block = self.open[-1]
        if isinstance(block, Sequential):
            block.items.append(node)
            return
        waiting = self.waiting[-1]
        if waiting is None:
            self.waiting[-1] = self._key(block, node)
            return
        key, line = waiting
        self.waiting[-1] = None
        if line:
            block.values[key] = node
            block.key_lines[key] = line

    def _key(self, block: Mapping, node: Node) -> tuple[str, int]:
        """The key and its line; a line of 0 when key and value are refused."""
        if not isinstance(node, Scalar):
            self.fault(node.line, "a key is a list or a block", "write a word before the colon")
        elif not node.text.strip():
            self.fault(node.line, "there is no key before the colon", "write a word before the colon")
        elif node.text == "<<":
            self.fault(node.line, "'<<' takes in another block, which is not read here", "write the lines out")
        elif node.text in block.values:
            first = block.key_lines[node.text]
            self.fault(
                node.line,
                f"the key {quoted(node.text)} stands here a second time, first in line {first}",
                "keep one of the two",
            )
        else:
            return node.text, node.line
        return "", 0


# --- syntax errors in plain words ---------------------------------------------

# A piece of what PyYAML says (its own scanner's words and those of the C
# library), what is wrong, what to write instead.  The first that fits is told.
_SYNTAX = (
    (
        "mapping values are not allowed",
        "a second colon with a space after it stands in one value, or the line is indented too far",
        "put quotes around the words after the first colon, or line it up with the line above",
    ),
    (
        "maximum nesting",
        f"blocks are nested more than {DEEPEST} deep",
        "write the file with fewer levels",
    ),
    ("tab character", "a tab stands where spaces belong", "indent with spaces, two for each step"),
    (
        "escape",
        "a backslash stands before a letter that it cannot go with",
        "take the backslash out, or use single quotes",
    ),
    (
        "while scanning a quoted scalar",
        "a quotation mark is opened and not closed",
        "close it with the same mark at the end of the words",
    ),
    (
        "flow sequence",
        "a list that begins with '[' is not closed or lacks a comma",
        "write commas between the items and ']' at the end",
    ),
    (
        "flow mapping",
        "a block that begins with '{' is not closed or lacks a comma",
        "write commas between the entries and '}' at the end",
    ),
    ("simple key", "a line has no colon after its key, or a space is missing after the colon", "write 'key: value'"),
    (
        "sequence entries are not allowed",
        "a list item stands on the same line as its key",
        "put '- ' and the item on a line of its own",
    ),
    ("alias", "a value begins with '*'", "put quotes around the value"),
    ("anchor", "a value begins with '&'", "put quotes around the value"),
    ("tag", "a value begins with '!'", "put quotes around the value"),
    ("directive", "a line begins with '%'", "put quotes around the value"),
    (
        "cannot start any token",
        "a value begins with a sign that has a meaning of its own in these files",
        "put quotes around the value",
    ),
    ("flow node", "a comma or a bracket stands where a value belongs", "put quotes around the value"),
    (
        "block scalar",
        "after '|' or '>' the words must begin on the next line",
        "put the words on the next line, indented",
    ),
    ("block mapping", "the line does not line up with the lines around it", "indent it as far as its neighbours"),
    (
        "block collection",
        "the line does not line up with the list items around it",
        "indent it as far as its neighbours",
    ),
    (
        "document start",
        "the line does not line up with the lines above it, or words follow a closed value",
        "indent it as far as its neighbours",
    ),
)


def _syntax_fault(problem: yaml.YAMLError, text: str, shown: str, first_line: int) -> Fault:
    mark = getattr(problem, "problem_mark", None) or getattr(problem, "context_mark", None)
    line = mark.line if mark else 0
    # At the end of the text the mark can lie behind the last line.
    line = min(line, max(text.rstrip("\n").count("\n"), 0)) + first_line
    said = " ".join(str(getattr(problem, part, "") or "") for part in ("context", "problem"))
    context = getattr(problem, "context_mark", None)
    begun_before = ("quoted scalar", "flow sequence", "flow mapping", "simple key")
    if context and any(words in said for words in begun_before):
        line = context.line + first_line
    lines = text.split("\n")
    here, before = (lines[at] if 0 <= at < len(lines) else "" for at in (line - first_line, line - first_line - 1))
    if "\t" in here[: len(here) - len(here.lstrip())]:
        return Fault(shown, line, "a tab stands where spaces belong", "indent with spaces, two for each step")
    if "mapping values" in said and re.fullmatch(r"[^:#'\"]+:[^ :/].*", before):
        return Fault(shown, line - 1, "a space is missing after the colon", "write 'key: value'")
    for piece, wrong, instead in _SYNTAX:
        if piece in said:
            return Fault(shown, line, wrong, instead)
    return Fault(shown, line, f"the line cannot be read ({said.strip() or problem})", "write 'key: value' lines")
