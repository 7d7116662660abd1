"""Braille ASCII for the tests, so that expected values read as the rule books print them."""

from __future__ import annotations

# Source: liblouis en-us-brf.dis, U+2800 to U+283F in order.  Written out here
# again, so that a slip in the program's own table shows.
ASCII = " A1B'K2L@CIF/MSP\"E3H9O6R^DJG>NTQ,*5<-U8V.%[$+X!&;:4\\0Z7(_?W]#Y)="


def ascii_of(cells: str) -> str:
    """Unicode cells as Braille ASCII; line breaks stay."""
    return "".join(cell if cell == "\n" else ASCII[ord(cell) - 0x2800] for cell in cells)


def cells_of(text: str) -> str:
    """Braille ASCII as Unicode cells; line breaks stay."""
    return "".join(letter if letter == "\n" else chr(0x2800 + ASCII.index(letter)) for letter in text)
