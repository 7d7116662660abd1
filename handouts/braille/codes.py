"""Braille codes that a client can read, and the liblouis tables for each.

The table names are fixed here: liblouis is never given a name that a file of
the user's has not been checked for (see `liblouis.Liblouis.check_tables`).
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal, TypeAlias

from handouts.errors import RenderError

CodeName: TypeAlias = Literal["ueb", "fr", "es", "de"]

# German: basic script has no contractions, but grade 1 is by name the full
# script (Vollschrift), with its few; Spanish and French: grade 1 is uncontracted.
# Source: the index lines (language, grade) at the head of liblouis's tables.
_TABLES: dict[tuple[str, int], tuple[str, ...]] = {
    ("ueb", 1): ("en-ueb-g1.ctb",),
    ("ueb", 2): ("en-ueb-g2.ctb",),
    ("fr", 1): ("fr-bfu-comp6.utb",),
    ("fr", 2): ("fr-bfu-g2.ctb",),
    ("es", 1): ("es-g1.ctb",),
    ("es", 2): ("es-g2.ctb",),
    ("de", 1): ("de-g1.ctb",),
    ("de", 2): ("de-g2.ctb",),
}
_LANGUAGES = {"ueb": "en", "fr": "fr", "es": "es", "de": "de"}
_CODES_BY_LANGUAGE = {language: name for name, language in _LANGUAGES.items()}


@dataclass(frozen=True)
class Code:
    """One braille code in one grade.

    name: "ueb", "fr", "es" or "de": whose rules of writing apply.
    grade: 1 uncontracted, 2 contracted.
    tables: liblouis table names, without the display table.
    numbers: French digits as "antoine" (dot 6 and the digits of the
        mathematical notation) or as "letters" (number sign and a to j).
    """

    name: str
    grade: int
    tables: tuple[str, ...]
    numbers: Literal["antoine", "letters"] = "antoine"

    @property
    def language(self) -> str:
        """The language that the code is made for, as a BCP 47 tag."""
        return _LANGUAGES[self.name]


def find_code(
    name: str, grade: int, tables: tuple[str, ...] = (), numbers: Literal["antoine", "letters"] = "antoine"
) -> Code:
    """The code of that name and grade, with a table list of the client's own
    if there is one.  Raises RenderError for a code or grade that is not there."""
    if (name, grade) not in _TABLES:
        raise RenderError(
            f"there is no braille code '{name}' in grade {grade}; write one of {', '.join(_LANGUAGES)}, and grade 1 or 2"
        )
    return Code(name, grade, tables or _TABLES[name, grade], numbers)


def code_for_language(language: str, around: Code) -> Code:
    """The code for a passage in `language` within text in the code `around`.

    A foreign passage is not contracted (Rules of Unified English Braille,
    13.2); a language without a table here keeps the code around it.
    """
    primary = language.split("-")[0].lower()
    if primary == around.language or primary not in _CODES_BY_LANGUAGE:
        return around
    return replace(find_code(_CODES_BY_LANGUAGE[primary], 1), numbers=around.numbers)
