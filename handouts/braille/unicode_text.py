"""Pages of cells as plain text in Unicode braille patterns, UTF-8.

For braille displays, for mail and for eyes: every cell is its own character
(U+2800 to U+283F), lines end with a line feed, pages with a form feed.
"""

from __future__ import annotations

from handouts.braille.pages import Volume


def write(volume: Volume) -> bytes:
    """The bytes of the file.  An endless page has no form feed."""
    end = "\f" if volume.paper.length else ""
    return "".join("".join(line.cells + "\n" for line in page.lines) + end for page in volume.pages).encode("utf-8")


def read(data: bytes) -> tuple[tuple[str, ...], ...]:
    """The pages of such a file, each with its lines; empty lines at the end of
    a page left out.  Raises ValueError for anything but six-dot cells."""
    text = data.decode("utf-8")
    if wrong := {character for character in text if not ("\u2800" <= character <= "\u283f" or character in "\n\f")}:
        raise ValueError(f"no six-dot braille: {', '.join(f'U+{ord(character):04X}' for character in sorted(wrong))}")
    pages = text.removesuffix("\f").split("\f")
    return tuple(tuple(page.rstrip("\n").split("\n")) if page.strip("\n") else () for page in pages)
