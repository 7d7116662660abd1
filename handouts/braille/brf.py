"""BRF: pages of cells as North American Braille ASCII, for an embosser.

There is no official standard for BRF (Library of Congress, format description
fdd000551).  What is written here is what embossers and readers agree on: one
7-bit character a cell, CR and LF after each line, and a form feed after each
page.
"""

from __future__ import annotations

from handouts.braille.pages import Volume

# Position = cell minus U+2800.  The same order as liblouis's en-us-brf.dis.
BRAILLE_ASCII = " A1B'K2L@CIF/MSP\"E3H9O6R^DJG>NTQ,*5<-U8V.%[$+X!&;:4\\0Z7(_?W]#Y)="

_TO_ASCII = {0x2800 + place: character for place, character in enumerate(BRAILLE_ASCII)}
# Lower case as in liblouis's text_nabcc.dis: the four signs beside the letters move too.
_LOWER = str.maketrans("ABCDEFGHIJKLMNOPQRSTUVWXYZ@[\\]^", "abcdefghijklmnopqrstuvwxyz`{|}~")
_TO_CELLS = {
    **{character: chr(0x2800 + place) for place, character in enumerate(BRAILLE_ASCII)},
    **{character.translate(_LOWER): chr(0x2800 + place) for place, character in enumerate(BRAILLE_ASCII)},
}


def write(volume: Volume, padded: bool = False, lower_case: bool = False) -> bytes:
    """The bytes of a BRF file.

    padded: every line filled with spaces to the width of the paper, as some
        embossers want; otherwise lines end after their last cell.
    lower_case: letters as a to z, in place of A to Z.
    Each page but an endless one is filled to its depth with empty lines, and
    a form feed follows its last line end.
    """
    paper = volume.paper
    pages = []
    for page in volume.pages:
        lines = [line.cells.translate(_TO_ASCII) for line in page.lines]
        lines += [""] * (paper.length - len(lines))
        if padded:
            lines = [line.ljust(paper.width) for line in lines]
        pages.append("".join(line + "\r\n" for line in lines) + ("\f" if paper.length else ""))
    text = "".join(pages)
    return (text.translate(_LOWER) if lower_case else text).encode("ascii")


def read(data: bytes) -> tuple[tuple[str, ...], ...]:
    """The pages of a BRF file, each with its lines of cells, blanks at the end
    of lines and empty lines at the end of pages left out.

    Reads upper and lower case, and line ends with and without CR.
    Raises ValueError, with the place, for a byte that is no Braille ASCII.
    """
    pages = data.decode("latin-1").replace("\r\n", "\n").split("\f")
    if len(pages) > 1 and not pages[-1].strip():
        pages.pop()
    return tuple(
        _without_empty_end(tuple(_cells(line, page, number) for number, line in enumerate(text.split("\n"), 1)))
        for page, text in enumerate(pages, 1)
    )


def _cells(line: str, page: int, number: int) -> str:
    for column, character in enumerate(line, 1):
        if character not in _TO_CELLS:
            raise ValueError(
                f"page {page}, line {number}, cell {column}: byte 0x{ord(character):02X} is no Braille ASCII"
            )
    return "".join(map(_TO_CELLS.__getitem__, line)).rstrip("\u2800")


def _without_empty_end(lines: tuple[str, ...]) -> tuple[str, ...]:
    end = len(lines)
    while end and not lines[end - 1]:
        end -= 1
    return lines[:end]
