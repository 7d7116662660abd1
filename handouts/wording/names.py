"""The names that a trainer can use: of languages, of kinds, of checks."""

from __future__ import annotations

from handouts.wording.kinds import KINDS
from handouts.wording.marks import Strength
from handouts.wording.whole_text import CHECKS

LANGUAGES: tuple[str, ...] = ("en", "fr")
STRENGTHS: tuple[Strength, ...] = ("blocks", "advice")
KIND_NAMES: tuple[str, ...] = tuple(kind.name for kind in KINDS["en"])
CHECK_NAMES: tuple[str, ...] = tuple(check.name for check in CHECKS)
ALL_NAMES: tuple[str, ...] = KIND_NAMES + CHECK_NAMES

ALLOW = "allow"
"""What a finding about a comment that lets something stand is called."""


def nearest_name(word: str) -> str:
    """The name that a misspelt word is likely to mean, or ""."""
    import difflib

    return next(
        iter(difflib.get_close_matches(word.lower().replace(" ", "-").replace("_", "-"), ALL_NAMES, 1, 0.6)), ""
    )


def instead_of(word: str) -> str:
    """What to write in place of an unknown name."""
    near = nearest_name(word)
    return f"did you mean '{near}'?" if near else "the names are " + ", ".join(ALL_NAMES)
