"""A proof of braille for someone who reads none.

Each line of cells stands beside the print words it came from, and each word
is translated back and compared with them.  What comes back differently is a
fault, unless it is one of the things that braille or its way back cannot
keep; those are told apart, with the reason.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal, TypeAlias

from handouts.braille import liblouis
from handouts.braille.brf import BRAILLE_ASCII
from handouts.braille.bulk import Bulk, bulk_of
from handouts.braille.codes import Code, code_for_language
from handouts.braille.layout import lay_out
from handouts.braille.lines import Segment
from handouts.braille.pages import Paper, Place, Volume
from handouts.braille.preparation import Passage, prepare
from handouts.handout import Handout

Kind: TypeAlias = Literal["number", "letters", "signs", "case", "marks", "one way"]

# The likeliest real fault first; `case`, `marks` and `one way` are no faults.
FAULTS: tuple[Kind, ...] = ("number", "letters", "signs")
EXPLAINED: dict[Kind, str] = {
    "number": "A number reads differently. Check it before anything else.",
    "letters": "The letters differ: a contraction may stand where it must not, or a letter is lost.",
    "signs": "Only signs of punctuation differ.",
    "case": "Capitals of a passage stand once, at its start, so a single word comes back in small letters.",
    "marks": "Quotes, dashes and dots come back in one plain shape, and spaces before signs are left out.",
    "one way": "Two languages in one word, or an address: no table reads it back.",
}


@dataclass(frozen=True)
class ProofLine:
    """One line of braille and what it says.

    page, line: counted from 1.  cells: as embossed.  ascii: the same in
    Braille ASCII, as it stands in a BRF file.  print: the words of the source;
    "" for lines that only layout needs.  role: as in `pages.PageLine`.
    """

    page: int
    line: int
    cells: str
    ascii: str
    print: str
    role: str


@dataclass(frozen=True)
class Difference:
    """A word that comes back otherwise than it was written.

    back: what its cells say when they are read.  times: how often it stands in
    the sheet; page and line are those of the first.
    """

    kind: Kind
    print: str
    back: str
    cells: str
    page: int
    line: int
    times: int

    @property
    def is_fault(self) -> bool:
        return self.kind in FAULTS


@dataclass(frozen=True)
class Proof:
    """All that a proofreader wants to see of one sheet.

    differences: faults first, the likeliest first, then what is explained.
    words: how many were compared.  whole: whether that is all of them, and
        not only those with numbers.
    headings: where each stands.
    """

    title: str
    language: str
    code: Code
    liblouis_version: str
    lines: tuple[ProofLine, ...]
    differences: tuple[Difference, ...]
    words: int
    whole: bool
    bulk: Bulk
    headings: tuple[Place, ...]

    @property
    def faults(self) -> tuple[Difference, ...]:
        return tuple(difference for difference in self.differences if difference.is_fault)

    @property
    def explained(self) -> tuple[Difference, ...]:
        return tuple(difference for difference in self.differences if not difference.is_fault)


def prove(handout: Handout, code: Code, paper: Paper) -> Proof:
    """Lay a handout out and read its cells back.

    Raises UnknownCharacter as `lay_out` does, MissingLibrary without liblouis.
    """
    volume = lay_out(handout, code, paper)
    lines = tuple(
        ProofLine(page.number, number, line.cells, _ascii(line.cells), line.print, line.role)
        for page in volume.pages
        for number, line in enumerate(page.lines, 1)
    )
    compared = 0
    found: dict[tuple[str, str], Difference] = {}
    for page_number, line_number, word in whole_words(volume):
        compared += can_be_read_back(code) or any("0" <= character <= "9" for character in word.print)
        key = (word.print, word.cells)
        if key in found:
            found[key] = replace(found[key], times=found[key].times + 1)
        elif difference := compare(word, code):
            kind, back = difference
            found[key] = Difference(kind, word.print, back, word.cells, page_number, line_number, 1)
    order = tuple(EXPLAINED)
    differences = sorted(found.values(), key=lambda one: (order.index(one.kind), one.page, one.line, one.print))
    return Proof(
        volume.title,
        volume.language,
        code,
        liblouis.owner().version,
        lines,
        tuple(differences),
        compared,
        can_be_read_back(code),
        bulk_of(len(volume.pages), paper),
        volume.headings,
    )


def _ascii(cells: str) -> str:
    return "".join(BRAILLE_ASCII[ord(cell) - 0x2800] for cell in cells)


def whole_words(volume: Volume) -> Iterator[tuple[int, int, Segment]]:
    """Every word on the pages with its page and line, parts that were broken
    between lines joined again, continuation signs left out."""
    begun: tuple[int, int, Segment] | None = None
    for page in volume.pages:
        for number, line in enumerate(page.lines, 1):
            # A running head that is cut for its length is no word to compare.
            if line.role == "head":
                continue
            for segment in line.words:
                cells = segment.cells[:-1] if segment.broken else segment.cells
                if segment.glued and begun:
                    begun = (*begun[:2], begun[2]._replace(cells=begun[2].cells + cells))
                    continue
                if begun:
                    yield begun
                begun = (page.number, number, segment._replace(cells=cells))
    if begun:
        yield begun


# --- reading back ------------------------------------------------------------

# What emphasis adds to a word, by code; see `preparation` for the sources.
_EMPHASIS = {
    "ueb": re.compile("⠘[⠂⠆⠶⠄]"),
    "fr": re.compile("^⠒?⠸|⠠⠄"),
    "es": re.compile("⠐⠔"),
    "de": re.compile("^⠸⠸?|⠠⠄"),
}
# Indicators of a passage in another code, and of a transcriber's note.
_INDICATORS = {"ueb": re.compile("⠘⠷|⠐⠷[^⠄]*⠄|⠠⠐⠾|⠈⠨⠣|⠈⠨⠜")}

_SHAPES = str.maketrans(
    {**dict.fromkeys("“”„«»″", '"'), **dict.fromkeys("‘’‚′", "'"), **dict.fromkeys("‐‑‒–—―−", "-"), "…": "..."}
)


# Codes whose liblouis tables read their own cells back.  The tables for
# contracted Spanish and German are made for one way only.
READS_BACK = {("ueb", 1), ("ueb", 2), ("fr", 1), ("fr", 2), ("es", 1), ("de", 1)}

_ADDRESS = re.compile(r"@|://|www\.")


def compare(word: Segment, code: Code) -> tuple[Kind, str] | None:
    """What is different about a word when its cells are read back, and what
    they then say; None if nothing is.

    Numbers are read by `digits`, not by the table, since a wrong number does
    most harm.  In a code whose table is one-way, numbers alone are compared.
    """
    if word.language == "?" or _ADDRESS.search(word.print):
        return "one way", ""
    its_code = code_for_language(word.language, code) if word.language else code
    cells = word.cells
    if word.strong:
        cells = _EMPHASIS[code.name].sub("", cells)
    if code.name in _INDICATORS:
        cells = _INDICATORS[code.name].sub("", cells)
    louis = liblouis.owner()
    # What the mends make of the word; a letter x before a number is one of them.
    written = re.sub("^[xX](?= ?[0-9]|$)", "×", prepare(Passage(word.print), its_code, louis).text)
    if not any(character in _FRACTION_SIGNS for character in written):
        read = digits(cells, its_code)
        if read != re.sub("[^0-9]", "", word.print if "⠼" in written else written):
            return "number", read if read else louis.backward(its_code.tables, cells)
    if "×" in written or not any(character.isalpha() for character in written):
        return None
    if not can_be_read_back(its_code):
        return None
    back = louis.backward(its_code.tables, _without_letters_notation(cells, its_code)) if cells else ""
    if back in (word.print, written):
        return None if back == word.print else ("marks", back)
    said, read = _folded(written), _folded(back)
    if said == read:
        return ("marks" if back.lower() != written.lower() else "case"), back
    if re.sub(r"[\W_]", "", said) != re.sub(r"[\W_]", "", read):
        # The Spanish table reads signs of punctuation as digits.
        if its_code.name == "es" and re.sub(r"[\W\d_]", "", said) == re.sub(r"[\W\d_]", "", read):
            return "marks", back
        return "letters", back
    return ("marks" if its_code.name == "es" else "signs"), back


def can_be_read_back(code: Code) -> bool:
    """Whether all words of a code are compared, or numbers alone."""
    return (code.name, code.grade) in READS_BACK


_LETTER_DIGITS = dict(zip("⠁⠃⠉⠙⠑⠋⠛⠓⠊⠚", "1234567890", strict=True))
_ANTOINE_DIGITS = dict(zip("⠡⠣⠩⠹⠱⠫⠻⠳⠪⠼", "1234567890", strict=True))
_LOWERED_DIGITS = dict(zip("⠂⠆⠒⠲⠢⠖⠶⠦⠔⠴", "1234567890", strict=True))
_FRACTION_SIGNS = "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞²³"


def digits(cells: str, code: Code) -> str:
    """The digits that cells say, signs between them left out.

    A number goes on over signs that do not end it: Rules of Unified English
    Braille, 6.3.1 (comma, full stop, numeric space); French, German and
    Spanish alike, with dot 3 between groups; German also over the colon
    (de-g1.ctb), and French over signs of arithmetic too, since its digits are
    no letters.
    """
    antoine = code.name == "fr" and code.numbers == "antoine"
    sign, values = ("⠠", _ANTOINE_DIGITS) if antoine else ("⠼", _LETTER_DIGITS)
    goes_on = "⠂⠲⠄⠒⠤⠖⠶⠌⠔⠦⠴⠐⠠" if antoine else "⠂⠲⠄⠈⠒" if code.name == "de" else "⠂⠲⠄⠐"
    found = []
    in_number = False
    before = ""
    for cell in cells:
        if cell == sign:
            in_number = True
        elif code.name == "es" and in_number and before in (sign, *_LOWERED_DIGITS) and cell in _LOWERED_DIGITS:
            # Ordinals.
            found.append(_LOWERED_DIGITS[cell])
        elif in_number and cell in values:
            found.append(values[cell])
        else:
            in_number = in_number and cell in goes_on
        before = cell
    return "".join(found)


def _folded(text: str) -> str:
    """Text without what the way back is known to lose."""
    return re.sub(r"\s", "", text.translate(_SHAPES).replace("''", '"').lower())


_TO_ANTOINE = dict(zip("⠁⠃⠉⠙⠑⠋⠛⠓⠊⠚", "⠡⠣⠩⠹⠱⠫⠻⠳⠪⠼", strict=True))


def _without_letters_notation(cells: str, code: Code) -> str:
    """French numbers in letters, turned into those that the table reads."""
    if code.name != "fr" or code.numbers != "letters" or "⠼" not in cells:
        return cells
    read = []
    in_number = False
    for cell in cells:
        if cell == "⠼":
            read.append("⠠")
            in_number = True
        elif in_number and cell in _TO_ANTOINE:
            read.append(_TO_ANTOINE[cell])
        else:
            # The decimal comma, the point and the dot between groups go on with the number.
            in_number = in_number and cell in "⠂⠲⠄"
            read.append(cell)
    return "".join(read)
