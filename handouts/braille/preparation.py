"""Print made ready for liblouis, so that the rule book's cells come out.

Where a liblouis from 3.24 to the newest departs from a braille code, or where
print says a thing in a way that the tables do not read, the text is mended
before it is translated.  Each mend stands in one named place below, with the
rule it serves.  Rule numbers without a name are those of *The Rules of
Unified English Braille*, second edition 2013.

A text carries, beside its characters, a typeform for each (what liblouis
calls emphasis) and the index of the source character that each came from.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable
from dataclasses import dataclass

from handouts.braille.codes import Code
from handouts.braille.liblouis import BOLD, NO_CONTRACT, Liblouis
from handouts.errors import UnknownCharacter


@dataclass(frozen=True)
class Passage:
    """Print in one code.

    text: the characters.
    typeforms: one a character, or None where all is plain.
    origins: for each character the index in the first text, or None where
        nothing has moved.
    """

    text: str
    typeforms: tuple[int, ...] | None = None
    origins: tuple[int, ...] | None = None


@dataclass(frozen=True)
class Mend:
    """One place where print is mended.

    rule: the rule that asks for it, and where it is written.
    codes: the codes that it is for; () for all.
    pattern: what is mended.
    put: what stands in its place: a replacement, or a function of the match.
    """

    name: str
    rule: str
    codes: tuple[str, ...]
    pattern: re.Pattern[str]
    put: str | Callable[[re.Match[str]], str]


# Stands for a space inside one number until the code in use is known.  It is a
# private character, so no text can hold it (see INVISIBLE).
_INSIDE_NUMBER = "\ue000"
# A space that liblouis never takes for the space inside a number.  Unlike the
# plain space (before 3.29) and the no-break space (since), the thin space
# ends a number in every version.
_BETWEEN_NUMBERS = "\u2009"

_FRACTIONS = {unicodedata.normalize("NFKC", sign).replace("\u2044", "/"): sign for sign in "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"}
_WRITTEN_OUT = {sign: text for text, sign in _FRACTIONS.items()}

INVISIBLE = Mend(
    "invisible characters",
    "common practice: they have no braille (soft hyphen, zero-width and direction marks, variation selectors)",
    (),
    re.compile("[\u00ad\u034f\u061c\u200b-\u200f\u202a-\u202e\u2060-\u2064\u2066-\u206f\ufe0e\ufe0f\ufeff\ue000]+"),
    "",
)
NUMERIC_SPACE = Mend(
    "space inside a number",
    "6.6.1: a space inside one number is the numeric space; print ties such a number with a no-break or thin space",
    (),
    re.compile("(?<=[0-9])[\u00a0\u2007-\u200a\u202f](?=[0-9])"),
    _INSIDE_NUMBER,
)
TELEPHONE = Mend(
    "international telephone number",
    "6.6.1: the groups of one telephone number are joined by the numeric space",
    ("ueb",),
    re.compile(r"(?<![0-9])\+[0-9]{1,3}(?: [0-9]{1,4}){2,}(?![0-9])"),
    lambda found: found[0].replace(" ", _INSIDE_NUMBER),
)
SPACES = Mend(
    "spaces of every width",
    "7.1.2: one blank cell, however wide the space is in print",
    (),
    re.compile("[\t\v\f\r\x1c-\x1f\x85\u00a0\u1680\u2000-\u200a\u2028\u2029\u202f\u205f\u3000]"),
    " ",
)
TIMES = Mend(
    "letter x between numbers",
    "3.9.1 and 3.17.1: the multiplication sign, not the letter",
    (),
    re.compile(r"(?<=[0-9])( ?)[xX\u2715\u2716\u2a09](?=( ?)[0-9])"),
    lambda found: found[1] + "×",
)
FRACTION_SLASH = Mend(
    "fraction slash",
    "11.3.3: a fraction in one line of print has the solidus",
    (),
    re.compile("\u2044"),
    "/",
)
MIXED_FRACTION = Mend(
    "mixed number",
    "11.3.2: a mixed number is unspaced, with a simple numeric fraction",
    ("ueb", "de", "es"),
    re.compile(r"(?<![0-9/.,:] )(?<![0-9./,:])([0-9]{1,4}) ([1-7]/[2-8])(?![0-9/.,:][0-9]|[0-9/])"),
    lambda found: found[1] + _FRACTIONS.get(found[2], " " + found[2]),
)
FRACTIONS_WRITTEN_OUT = Mend(
    "fraction signs",
    "French: liblouis runs a whole number into the fraction after it and gives a single fraction no number sign",
    ("fr",),
    re.compile(f"(?<=[0-9])(?= ?[{''.join(_WRITTEN_OUT)}])|[{''.join(_WRITTEN_OUT)}]"),
    lambda found: _WRITTEN_OUT[found[0]] if found[0] else " ",
)
LOW_LINES = Mend(
    "row of low lines",
    "7.2.3: one low line for a blank to be filled in, however long it is in print",
    (),
    # Two beside a letter belong to a name such as __init__.
    re.compile(r"_{3,}|(?<!\w)__(?!\w)"),
    "_",
)
DEGREE = Mend(
    "degree sign",
    "3.11.1: the ring above and the ordinal sign after a number stand for the degree sign",
    (),
    re.compile("\u02da"),
    "°",
)
ORDINAL_AS_DEGREE = Mend(
    "ordinal sign as degree sign",
    "3.11.1; Spanish keeps its ordinals",
    ("ueb", "fr", "de"),
    re.compile("(?<=[0-9])\u00ba"),
    "°",
)
HYPHENS = Mend(
    "hyphens",
    "7.2: hyphen, no-break hyphen and minus-like hyphens are one sign",
    (),
    re.compile("[\u2010\u2011\ufe63\uff0d]"),
    "-",
)
FIGURE_DASH = Mend("figure dash", "7.2: a dash of the width of a digit is a dash", (), re.compile("\u2012"), "–")
LONG_DASH = Mend(
    "long dash", "7.2.1; codes with one dash use that one", ("fr", "es", "de"), re.compile("[\u2015\u2e3a\u2e3b]"), "—"
)
LOW_QUOTES = Mend(
    "low opening quotes",
    "7.6: opening and closing sign by their part, not by their shape",
    ("ueb",),
    re.compile("\u201e([^\u201c\u201d\u201e]*)[\u201c\u201d]"),
    "\u201c\\1\u201d",
)
LOW_SINGLE_QUOTES = Mend(
    "low single opening quotes",
    "7.6: opening and closing sign by their part, not by their shape",
    ("ueb",),
    re.compile("\u201a([^\u2018\u2019\u201a]*)[\u2018\u2019]"),
    "\u2018\\1\u2019",
)
ANGLED_SINGLE_QUOTES = Mend(
    "single angled quotes",
    "7.6: inner quotes",
    ("ueb",),
    re.compile("\u2039([^\u2039\u203a]*)\u203a"),
    "\u2018\\1\u2019",
)
FRENCH_SPACING = Mend(
    "space before a sign of punctuation",
    "Code braille français uniformisé: signs of punctuation and quotes join the word (its own braille edition is written so)",
    ("fr",),
    re.compile(r"(?<=\S) (?=[;:!?»](?:\s|$|[)\]».,]))|(?<=«) (?=\S)"),
    "",
)
LIGATURES = Mend(
    "ligatures",
    "common practice: letters, not shapes",
    (),
    re.compile("[\ufb00-\ufb04]"),
    lambda found: unicodedata.normalize("NFKC", found[0]),
)
FRENCH_GROUPS = Mend(
    "French groups of digits",
    "dot 3 between groups of three digits (from memory)",
    ("fr",),
    re.compile(_INSIDE_NUMBER),
    "⠄",
)
POINT_GROUPS = Mend(
    "German and Spanish groups of digits",
    "the point between groups of three digits, dot 3 in both codes (from memory)",
    ("de", "es"),
    re.compile(_INSIDE_NUMBER),
    ".",
)
SPANISH_DEGREE = Mend(
    "Spanish degree sign",
    "dots 356: the value in liblouis's own specification es-g0-g1.yaml, which its table does not reach",
    ("es",),
    re.compile("°"),
    "⠴",
)
_LOWERED = str.maketrans("1234567890", "⠂⠆⠒⠲⠢⠖⠶⠦⠔⠴")
SPANISH_ORDINALS = Mend(
    "Spanish ordinals",
    "Spanish code: number sign, digits in the lower part of the cell, then o or a (from memory); the table has no sign",
    ("es",),
    re.compile("(?<![0-9.,])([0-9]{1,3})([ºª])"),
    lambda found: "⠼" + found[1].translate(_LOWERED) + ("o" if found[2] == "º" else "a"),
)
SPANISH_MINUS = Mend(
    "Spanish minus sign",
    "liblouis's Spanish tables have the hyphen alone, of the same cell (dots 36)",
    ("es",),
    re.compile("\u2212"),
    "-",
)
NUMBERS_APART = Mend(
    "two numbers with a space between them",
    "6.6: only a space inside one number joins; before 3.29 liblouis joined any two",
    ("ueb",),
    re.compile("(?<=[0-9]) (?=[0-9])"),
    _BETWEEN_NUMBERS,
)

MENDS: tuple[Mend, ...] = (
    INVISIBLE,
    NUMERIC_SPACE,
    TELEPHONE,
    SPACES,
    TIMES,
    FRACTION_SLASH,
    MIXED_FRACTION,
    FRACTIONS_WRITTEN_OUT,
    LOW_LINES,
    DEGREE,
    ORDINAL_AS_DEGREE,
    HYPHENS,
    FIGURE_DASH,
    LONG_DASH,
    LOW_QUOTES,
    LOW_SINGLE_QUOTES,
    ANGLED_SINGLE_QUOTES,
    FRENCH_SPACING,
    LIGATURES,
    FRENCH_GROUPS,
    POINT_GROUPS,
    SPANISH_DEGREE,
    SPANISH_ORDINALS,
    SPANISH_MINUS,
    NUMBERS_APART,
)

# 10.1.3: initials are not contracted where the word of the same letters would
# be.  In a run of capitals the same two letters are the word; "IT band" (the
# iliotibial band) is always the initials.
NO_CONTRACT_INITIALS = re.compile(r"(?<![\w'’])(?:IT(?= band\b| BAND\b)|(?<![A-Z] )(?:IT|US)(?![\w'’]| [A-Z]{2}))")

# 9.4.3: the stop that closes emphasised words is emphasised with them; before
# 3.29 liblouis ended the passage one word too early where it was not.
CLOSING_SIGNS = ".,;:!?…)]}’”»'\""


# Within one number the number sign stands once.  Before 3.33 liblouis's Spanish
# tables set it again after a decimal sign, and its French ones always do after
# the dot between groups.
REPEATED_NUMBER_SIGN = {
    "es": (re.compile("(?<=[0-9])[.,](?=[0-9])"), "⠼"),
    "fr": (re.compile("(?<=[0-9])⠄(?=[0-9])"), "⠠"),
}


def repeated_number_signs(text: str, cells: str, outputs: list[int], code: Code) -> list[int]:
    """Cells that say a number sign a second time within one number.

    text: as prepared; outputs: the index of the first cell of each character.
    """
    if code.name not in REPEATED_NUMBER_SIGN:
        return []
    pattern, sign = REPEATED_NUMBER_SIGN[code.name]
    places = [outputs[found.end()] for found in pattern.finditer(text)]
    return [place for place in places if cells[place] == sign]


def _replaced(passage: Passage, mend: Mend) -> Passage:
    """One mend carried out, typeforms and origins kept in step."""
    matches = list(mend.pattern.finditer(passage.text))
    if not matches:
        return passage
    pieces: list[str] = []
    origins: list[int] = []
    sources = passage.origins or range(len(passage.text))
    typeforms: list[int] = []
    old_typeforms = passage.typeforms
    end = 0
    for found in matches:
        new = found.expand(mend.put) if isinstance(mend.put, str) else mend.put(found)
        start = found.start()
        pieces += (passage.text[end:start], new)
        # Within the match, characters keep their own place as far as they go.
        last = max(found.end() - 1, start - 1 if start else 0)
        places = [*range(end, start), *(min(start + step, last) for step in range(len(new)))]
        origins += (sources[place] for place in places)
        if old_typeforms:
            typeforms += (old_typeforms[place] for place in places)
        end = found.end()
    pieces.append(passage.text[end:])
    origins += sources[end:]
    if old_typeforms:
        typeforms += old_typeforms[end:]
    return Passage("".join(pieces), tuple(typeforms) if old_typeforms else None, tuple(origins))


def _with_typeforms(passage: Passage, code: Code) -> Passage:
    """The two mends that set typeforms: initials, and the stop after emphasis."""
    typeforms = list(passage.typeforms) if passage.typeforms else None
    if typeforms:
        for place in range(1, len(typeforms)):
            if typeforms[place - 1] & BOLD and passage.text[place] in CLOSING_SIGNS:
                typeforms[place] |= BOLD
    if code.name == "ueb" and code.grade == 2:
        for found in NO_CONTRACT_INITIALS.finditer(passage.text):
            typeforms = typeforms or [0] * len(passage.text)
            for place in range(*found.span()):
                typeforms[place] |= NO_CONTRACT
    return Passage(passage.text, tuple(typeforms) if typeforms else None, passage.origins)


def _with_spanish_emphasis(passage: Passage, code: Code) -> Passage:
    """Spanish grade 1 has no emphasis in liblouis; its grade 2 opens and closes
    it with dots 5, 35 (es-g2.ctb), and so does this."""
    if code.name != "es" or code.grade != 1 or not passage.typeforms or not any(passage.typeforms):
        return passage
    text: list[str] = []
    origins: list[int] = []
    sources = passage.origins or range(len(passage.text))
    before = 0
    for place, (character, typeform) in enumerate(zip(passage.text, passage.typeforms, strict=True)):
        if (typeform ^ before) & BOLD:
            text.append("⠐⠔")
            origins += [sources[place if typeform & BOLD else place - 1]] * 2
        text.append(character)
        origins.append(sources[place])
        before = typeform
    if before & BOLD:
        text.append("⠐⠔")
        origins += [sources[-1]] * 2
    return Passage("".join(text), None, tuple(origins))


# A text without any of these needs no mend that replaces anything: most text.
_MAY_NEED_MENDS = re.compile("[^A-Za-z \\u00c0-\\u017f.,'’“”()—…;:!?-]")
_MAY_NEED_MENDS_IN_FRENCH = re.compile("[^A-Za-z \\u00c0-\\u017f.,'’“”()—…;:!?-]|(?<= )[;:!?]")


def prepare(passage: Passage, code: Code, louis: Liblouis) -> Passage:
    """Mend a passage for one code.

    Raises UnknownCharacter for characters that the code's tables do not know;
    their index is that in the passage as it came in.
    """
    # French typographic spaces before ; : ! ? may be plain ones.
    if (_MAY_NEED_MENDS_IN_FRENCH if code.name == "fr" else _MAY_NEED_MENDS).search(passage.text):
        for mend in MENDS:
            if not mend.codes or code.name in mend.codes:
                passage = _replaced(passage, mend)
        passage = _without_unknown_fractions(passage, code, louis)
        if _INSIDE_NUMBER in passage.text:
            passage = Passage(
                passage.text.replace(_INSIDE_NUMBER, louis.numeric_space), passage.typeforms, passage.origins
            )
    _check_characters(passage, code, louis)
    passage = _with_typeforms(passage, code)
    return _with_spanish_emphasis(passage, code)


def _without_unknown_fractions(passage: Passage, code: Code, louis: Liblouis) -> Passage:
    """Fraction signs that a table lacks, written with the solidus instead."""
    lacking = "".join(sign for sign in _WRITTEN_OUT if sign in passage.text and not louis.knows(code.tables, sign))
    if not lacking:
        return passage
    return _replaced(
        passage,
        Mend(
            "fraction signs that the table lacks",
            "11.3.3: in one line, with the solidus",
            (),
            re.compile(f"(?<=[0-9])(?= ?[{lacking}])|[{lacking}]"),
            lambda found: _WRITTEN_OUT[found[0]] if found[0] else " ",
        ),
    )


def _check_characters(passage: Passage, code: Code, louis: Liblouis) -> None:
    unknown = louis.unknown(code.tables, passage.text)
    if not unknown:
        return
    origins = passage.origins or range(len(passage.text))
    places = tuple(
        (character, unicodedata.name(character, f"U+{ord(character):04X}"), origins[place])
        for place, character in enumerate(passage.text)
        if character in unknown
    )
    told = "; ".join(
        f"{_shown(character)}U+{ord(character):04X}) at character {place + 1}"
        for character, name, place in places[:5]
    )
    raise UnknownCharacter(
        f'no braille for {told} in "{_around(passage.text, unknown)}" '
        f"(table {', '.join(code.tables)}); write it in words",
        places,
    )


def _shown(character: str) -> str:
    """The sign and its name, where it has them, up to the number that always follows."""
    name = unicodedata.name(character, "").lower()
    sign = f"'{character}'" if character.isprintable() else "a sign"
    return f"{sign} ({name + ', ' if name else ''}"


def _around(text: str, unknown: set[str]) -> str:
    """A few words on each side of the first unknown character."""
    place = next(index for index, character in enumerate(text) if character in unknown)
    words = text[max(0, place - 20) : place + 21]
    # A message is read aloud: what has no sign to show stands as a space.
    return " ".join("".join(sign if sign.isprintable() else " " for sign in words).split())
