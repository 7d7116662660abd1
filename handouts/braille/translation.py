"""Print to cells, passage by passage and word by word.

A whole passage goes through liblouis at once, since indicators for capitals
and emphasis look beyond single words; it is cut into words afterwards.
"""

from __future__ import annotations

import itertools
import re
import unicodedata
from dataclasses import dataclass, replace
from typing import NamedTuple

from handouts.braille import liblouis
from handouts.braille.codes import Code, code_for_language
from handouts.braille.preparation import Passage, prepare, repeated_number_signs
from handouts.errors import RenderError, UnknownCharacter
from handouts.handout import Foreign, Line, Measure, Strong, Text

BLANK = "\u2800"
_WORD = re.compile(f"[^{BLANK}]+")


class Word(NamedTuple):
    """Cells that stay on one line: those between two blanks, or a measure such
    as "16 kg" with the blank in it.

    cells: never empty, without a blank at either end.
    breaks: where a line may end within the word, as counts of cells; they
        follow a hyphen or dash of the print.
    print: the words of the source that these cells say.
    language: of a word in another language than those around it; "?" where
        one word holds two.
    strong: whether it carries emphasis, and so may carry indicators for it.
    """

    cells: str
    breaks: tuple[int, ...] = ()
    print: str = ""
    language: str = ""
    strong: bool = False


@dataclass(frozen=True)
class _Cells:
    """A translated passage: for each cell the source character it came from,
    the passage's own text and typeforms, and its language if it is foreign.

    ties: indexes of spaces in the source at which no line ends.
    """

    cells: str
    sources: list[int]
    source: str
    breaks: frozenset[int]
    typeforms: tuple[int, ...] | None = None
    language: str = ""
    ties: frozenset[int] = frozenset()


# A space that ties what stands on either side of it.
_NO_BREAK = "\u00a0\u202f"
_HYPHENS = "\\-\u2010\u2011\u2013\u2014\u2015"
# Between two digits there is a range or a telephone number, which stays whole.
_BREAK_AFTER = re.compile(
    f"(?<=[^\\s{_HYPHENS}])(?:(?<![0-9])[{_HYPHENS}]+|[{_HYPHENS}]+(?![0-9]))(?=[^\\s{_HYPHENS}])"
)


def _to_cells(text: str, typeforms: tuple[int, ...] | None, code: Code) -> _Cells:
    louis = liblouis.owner()
    prepared = prepare(Passage(text, typeforms), code, louis)
    if not prepared.text:
        return _Cells("", [], text, frozenset())
    cells, inputs, outputs = louis.forward(code.tables, prepared.text, prepared.typeforms)
    for place in reversed(repeated_number_signs(prepared.text, cells, outputs, code)):
        cells = cells[:place] + cells[place + 1 :]
        del inputs[place]
        outputs = [index - (index > place) for index in outputs]
    if code.numbers == "letters" and code.name == "fr":
        cells, inputs, outputs = _numbers_in_letters(prepared.text, cells, outputs)
    breaks = frozenset(
        outputs[found.end()] for found in _BREAK_AFTER.finditer(prepared.text) if outputs[found.end()] < len(cells)
    )
    # Each space of the text is a blank, whichever space the table gave out.
    cells = re.sub("[ \u00a0\u2009]", BLANK, cells)
    _assert_six_dots(cells, text, code)
    origins = prepared.origins
    sources = [origins[place] for place in inputs] if origins else inputs
    return _Cells(cells, sources, text, breaks, typeforms)


def _assert_six_dots(cells: str, text: str, code: Code) -> None:
    if all("\u2800" <= cell <= "\u283f" for cell in set(cells)):
        return
    raise RenderError(
        f'the table list {", ".join(code.tables)} gives cells outside six-dot braille for "{text[:60]}"; '
        "choose a six-dot table, or write the words in another way"
    )


_ANTOINE = dict(zip("⠡⠣⠩⠹⠱⠫⠻⠳⠪⠼", "⠁⠃⠉⠙⠑⠋⠛⠓⠊⠚", strict=True))


_NUMBER_BEGINS = re.compile(r"(?<![0-9])(?<![0-9][.,⠄])[0-9]")
# A letter that would be read as one more digit.
_LETTER_AFTER_NUMBER = re.compile("(?<=[0-9])[a-j]")


def _numbers_in_letters(text: str, cells: str, outputs: list[int]) -> tuple[str, list[int], list[int]]:
    """French numbers with the number sign and a to j, in place of dot 6 and the
    digits of the mathematical notation.

    The number sign stands right before the first digit, while dot 6 may stand
    before a parenthesis or a sign.  A letter from a to j that follows has the
    letter sign, dots 56, as in fr-bfu-g2.ctb after numbers.
    Returns cells, and the indexes in both directions as liblouis gives them.
    """
    begins = {found.start() for found in _NUMBER_BEGINS.finditer(text)}
    letters = {found.start() for found in _LETTER_AFTER_NUMBER.finditer(text)}
    changed, inputs, starts = "", [], []
    for place, character in enumerate(text):
        end = outputs[place + 1] if place + 1 < len(text) else len(cells)
        part = cells[outputs[place] : end]
        if "0" <= character <= "9":
            part = ("⠼" if place in begins else "") + _ANTOINE[part[-1]]
        elif place in letters:
            part = "⠰" + part.lstrip("⠰")
        elif part[:1] == "⠠" and not character.isalnum() and len(part) > 1:
            part = part[1:]
        starts.append(len(changed))
        inputs += [place] * len(part)
        changed += part
    return changed, inputs, starts


@dataclass(frozen=True)
class Run:
    """Words in one language with one emphasis; tied ones stay on one line."""

    words: str
    strong: bool
    language: str
    tied: bool = False


def runs(line: Line, language: str, strong: bool = False) -> list[Run]:
    """A line of the tree as runs, nesting undone; measures in their short form."""
    found: list[Run] = []
    for inline in line:
        if isinstance(inline, Text):
            found.append(Run(inline.words, strong, language))
        elif isinstance(inline, Measure):
            found.append(Run(inline.short, strong, language, tied=True))
        elif isinstance(inline, Strong):
            found += runs(inline.content, language, True)
        elif isinstance(inline, Foreign):
            found += runs(inline.content, inline.language, strong)
    return found


def words(line: Line, code: Code, emphasis: bool = True) -> tuple[Word, ...]:
    """Translate a line of the tree into words of cells.

    emphasis: False leaves out the indicators for strong words, as headings do.
    Raises UnknownCharacter, whose index counts in the plain words of the line.
    """
    pieces: list[_Cells] = []
    before = 0
    all_runs = runs(line, code.language)
    for its_code, group in itertools.groupby(all_runs, key=lambda run: code_for_language(run.language, code)):
        text, typeforms = "", []
        ties: list[int] = []
        for run in group:
            # One character for what print writes as two (a letter and its accent).
            run_text = run.words if run.words.isascii() else unicodedata.normalize("NFC", run.words)
            ties += [
                len(text) + place for place, one in enumerate(run_text) if one in _NO_BREAK or (run.tied and one == " ")
            ]
            text += run_text
            typeforms += [liblouis.BOLD if run.strong and emphasis else 0] * len(run_text)
        try:
            pieces.append(_to_cells(text, tuple(typeforms) if any(typeforms) else None, its_code))
        except UnknownCharacter as error:
            moved = tuple((character, name, index + before) for character, name, index in error.characters)
            raise UnknownCharacter(str(error), moved) from error
        pieces[-1] = replace(pieces[-1], ties=frozenset(ties))
        if its_code.name != code.name:
            pieces[-1] = replace(pieces[-1], language=its_code.language)
            if code.name == "ueb":
                pieces[-1] = _switched(pieces[-1], its_code.language)
        before += len(text)
    return _joined_words(pieces)


def _switched(piece: _Cells, language: str) -> _Cells:
    """A passage in another code, set off within UEB text.

    One word or two have the non-UEB word indicator, dots 45, 12356, before
    each; more stand between the passage indicators, the first of them with the
    letters of the language.  Source: Rules of Unified English Braille, 14.3.1
    to 14.3.3, as quoted in the worked values of a public test suite.
    """
    starts = [match.start() for match in _WORD.finditer(piece.cells)]
    if not starts:
        return piece
    if len(starts) <= 2:
        inserted = {start: "⠘⠷" for start in starts}
    else:
        letters = "".join("⠁⠃⠉⠙⠑⠋⠛⠓⠊⠚⠅⠇⠍⠝⠕⠏⠟⠗⠎⠞⠥⠧⠺⠭⠽⠵"[ord(letter) - ord("a")] for letter in language)
        inserted = {starts[0]: f"⠐⠷{letters}⠄", len(piece.cells.rstrip(BLANK)): "⠠⠐⠾"}
    cells: list[str] = []
    sources: list[int] = []
    moved: list[int] = []
    end = shift = 0
    breaks = sorted(piece.breaks)
    for place, sign in sorted(inserted.items()):
        cells += (piece.cells[end:place], sign)
        sources += piece.sources[end:place] + [piece.sources[min(place, len(piece.sources) - 1)]] * len(sign)
        moved += [index + shift for index in breaks if end <= index < place]
        end, shift = place, shift + len(sign)
    cells.append(piece.cells[end:])
    sources += piece.sources[end:]
    moved += [index + shift for index in breaks if index >= end]
    return replace(piece, cells="".join(cells), sources=sources, breaks=frozenset(moved))


def _joined_words(pieces: list[_Cells]) -> tuple[Word, ...]:
    """Cut translated passages at their blanks; a word may span two passages."""
    found: list[Word] = []
    open_word = False
    for piece in pieces:
        spans = [match.span() for match in _WORD.finditer(piece.cells)]
        breaks = sorted(piece.breaks)
        for index, (start, end) in enumerate(spans):
            # The print of a word runs to where the next word begins.
            first = piece.sources[start] if index else 0
            last = piece.sources[spans[index + 1][0]] if index + 1 < len(spans) else len(piece.source)
            word = Word(
                piece.cells[start:end],
                tuple([place - start for place in breaks if start < place < end]) if breaks else (),
                piece.source[first:last].strip(),
                piece.language,
                bool(piece.typeforms and any(piece.typeforms[first:last])),
            )
            if open_word and start == 0:
                word = _joined(found.pop(), "", word, "")
            elif index and piece.ties and piece.sources[start - 1] in piece.ties and spans[index - 1][1] == start - 1:
                word = _joined(found.pop(), BLANK, word, " ")
            found.append(word)
        if piece.cells:
            open_word = not piece.cells.endswith(BLANK)
    return tuple(found)


def _joined(left: Word, blank: str, right: Word, space: str) -> Word:
    """Two words as one, with a blank between them or none."""
    cells = left.cells + blank
    return Word(
        cells + right.cells,
        left.breaks + tuple(place + len(cells) for place in right.breaks),
        left.print + space + right.print,
        left.language if left.language == right.language else "?",
        left.strong or right.strong,
    )


def translate(text: str, code: Code) -> str:
    """Translate plain text; line breaks stay, every other space is a blank cell.

    Raises UnknownCharacter, whose index counts in the text in normal form C.
    """
    text = text if text.isascii() else unicodedata.normalize("NFC", text)
    before = 0
    lines = []
    for line in text.split("\n"):
        try:
            lines.append(_to_cells(line, None, code).cells)
        except UnknownCharacter as error:
            moved = tuple((character, name, index + before) for character, name, index in error.characters)
            raise UnknownCharacter(str(error), moved) from error
        before += len(line) + 1
    return "\n".join(lines)
