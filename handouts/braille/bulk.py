"""How much paper a sheet in braille takes, and when it should be split."""

from __future__ import annotations

from dataclasses import dataclass

from handouts.braille.pages import Paper

# Common practice, no source: braille paper of 160 g a square metre, and
# volumes of no more than 80 sheets, which still lie flat and fit a bag.
GRAMS_A_SQUARE_METRE = 160
SHEETS_A_VOLUME = 80
# Source: BANA, Size and Spacing of Braille Characters: 6.2 mm from cell to
# cell, 10 mm from line to line.  The edges around them are an estimate.
_CELL, _LINE, _EDGES = 6.2, 10.0, 30.0


@dataclass(frozen=True)
class Bulk:
    """What a reader has to carry.

    pages: sides with braille.  sheets: of paper.  grams: rough weight.
    volumes: into how many it should be split, 1 where it need not be.
    """

    pages: int
    sheets: int
    grams: int
    volumes: int

    @property
    def weight(self) -> str:
        """In words, such as "about 511 g"."""
        return f"about {self.grams} g" if self.grams < 1000 else f"about {self.grams / 1000:.1f} kg"

    @property
    def advice(self) -> str:
        """What to do about it, "" when nothing."""
        if self.volumes == 1:
            return ""
        return (
            f"Bind it in {self.volumes} volumes, since one of more than {SHEETS_A_VOLUME} sheets is hard to hold; "
            "'volume pages' in the client's file splits it at its sections."
        )

    def told(self) -> str:
        """All of it in a sentence or two."""
        pages = f"{self.pages} braille page{'' if self.pages == 1 else 's'}"
        sheets = f"{self.sheets} sheet{'' if self.sheets == 1 else 's'} of paper"
        return f"{pages} on {sheets}, {self.weight}. {self.advice}".strip()


def bulk_of(pages: int, paper: Paper) -> Bulk:
    """What so many pages weigh when they are embossed; nothing for an endless page."""
    if not paper.length:
        return Bulk(0, 0, 0, 1)
    sheets = -(-pages // 2) if paper.both_sides else pages
    square_metres = (paper.width * _CELL + _EDGES) * (paper.length * _LINE + _EDGES) / 1_000_000
    return Bulk(pages, sheets, round(sheets * square_metres * GRAMS_A_SQUARE_METRE), -(-sheets // SHEETS_A_VOLUME))
