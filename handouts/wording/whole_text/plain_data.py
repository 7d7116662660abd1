"""Plain front matter without the YAML library, which takes longer to load than a text to check.

Nearly all front matter is made of lines such as `sides: each` and `- bench`.
What has only such lines is read here, to the same words that the library's
reader gives (a test compares the two); anything else is left to the library.
"""

from __future__ import annotations

import re
from typing import Any

_DEEPEST = 5
_KEY = re.compile(r"([A-Za-zÀ-ÿ][\w '’-]*):(?: +(.*))?")
# Words that mean themselves: nothing in them has a meaning in YAML.
_SCALAR = re.compile(r"[^\W_][^:#\[\]{}&*!|>%@`\"\\\t]*(?::[^\s:#\[\]{}&*!|>%@`\"\\][^:#\[\]{}&*!|>%@`\"\\\t]*)*")
_FLOW = re.compile(r"\[ *(?:[^\W_][\w '’().-]*(?:, *[^\W_][\w '’().-]*)*)? *\]")


class _NotPlainError(Exception):
    pass


class _Lines:
    """The lines that say something, each with its indentation, read one after the other."""

    def __init__(self, text: str):
        self.at = 0
        self.lines: list[tuple[int, str]] = []
        for line in text.split("\n"):
            words = line.strip(" ")
            if not words.isprintable():
                raise _NotPlainError
            if words and words[0] != "#":
                self.lines.append((len(line) - len(line.lstrip(" ")), words))

    def indent(self) -> int:
        """Of the next line; -1 at the end."""
        return self.lines[self.at][0] if self.at < len(self.lines) else -1

    def words(self) -> str:
        return self.lines[self.at][1]


def plain_data(text: str) -> dict[str, Any] | None:
    """The data of some plain lines, every scalar as text; None when a line is not plain.

    text: the lines between the two of `---`.
    """
    try:
        lines = _Lines(text)
        if lines.indent() != 0 or lines.words().startswith("-"):
            return None
        data = _mapping(lines, 0, _DEEPEST)
    except _NotPlainError:
        return None
    return data if lines.indent() < 0 else None


def _mapping(lines: _Lines, indent: int, deeper: int) -> dict[str, Any]:
    data: dict[str, Any] = {}
    while lines.indent() == indent and not lines.words().startswith("- "):
        found = _KEY.fullmatch(lines.words())
        if not found or found[1] in data or not deeper:
            raise _NotPlainError
        lines.at += 1
        data[found[1].rstrip(" ")] = _scalar(found[2]) if found[2] else _block(lines, indent, deeper)
    if lines.indent() > indent:
        raise _NotPlainError
    return data


def _block(lines: _Lines, above: int, deeper: int) -> Any:
    """What stands below a key without a value on its line."""
    indent = lines.indent()
    if indent >= above and lines.words().startswith("- "):
        return _sequence(lines, indent, deeper - 1)
    return _mapping(lines, indent, deeper - 1) if indent > above else ""


def _sequence(lines: _Lines, indent: int, deeper: int) -> list[Any]:
    items: list[Any] = []
    while lines.indent() == indent and lines.words().startswith("- "):
        words = lines.words()[2:]
        if _KEY.fullmatch(words):
            lines.lines[lines.at] = (indent + 2, words)
            items.append(_mapping(lines, indent + 2, deeper - 1))
        else:
            items.append(_scalar(words))
            lines.at += 1
    if lines.indent() > indent:
        raise _NotPlainError
    return items


def _scalar(words: str) -> str | list[str]:
    if _SCALAR.fullmatch(words):
        return words
    if _FLOW.fullmatch(words):
        return [item.strip(" ") for item in words[1:-1].split(",") if item.strip(" ")]
    raise _NotPlainError
