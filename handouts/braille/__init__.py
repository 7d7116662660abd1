"""Braille: print to cells, cells to pages, pages to files, and their proof."""

from __future__ import annotations

__all__ = ["translate"]


def translate(text: str, code: str = "ueb", grade: int = 2) -> str:
    """Translate print into Unicode braille cells.

    text: plain words; line breaks stay, every other space becomes a blank
        cell (U+2800).
    code: "ueb" (Unified English Braille), "fr", "es" or "de".
    grade: 1 uncontracted, 2 contracted.
    Returns cells from U+2800 to U+283F, and line breaks.
    Raises UnknownCharacter for a character without braille in that code,
    RenderError for a code or grade that does not exist, MissingLibrary
    without liblouis.
    """
    # Loaded here, so that a program that makes no braille never needs liblouis.
    from handouts.braille import codes, translation

    return translation.translate(text, codes.find_code(code, grade))
