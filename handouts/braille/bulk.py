"""How much paper a sheet in braille takes, and when it should be split."""

from __future__ import annotations

from dataclasses import dataclass

from handouts.braille.pages import Volume

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

    def told(self) -> str:
        """The same in a sentence or two."""
        sheets = f"{self.sheets} sheet{'' if self.sheets == 1 else 's'} of paper"
        weight = f"{self.grams} g" if self.grams < 1000 else f"{self.grams / 1000:.1f} kg"
        told = f"{self.pages} braille page{'' if self.pages == 1 else 's'} on {sheets}, about {weight}."
        if self.volumes > 1:
            told += f" Bind it in {self.volumes} volumes: one of more than {SHEETS_A_VOLUME} sheets is hard to hold."
        return told


def bulk_of(volume: Volume) -> Bulk:
    """What a volume weighs when it is embossed; nothing for an endless page."""
    paper = volume.paper
    if not paper.length:
        return Bulk(0, 0, 0, 1)
    pages = len(volume.pages)
    sheets = -(-pages // 2) if paper.both_sides else pages
    square_metres = (paper.width * _CELL + _EDGES) * (paper.length * _LINE + _EDGES) / 1_000_000
    return Bulk(pages, sheets, round(sheets * square_metres * GRAMS_A_SQUARE_METRE), -(-sheets // SHEETS_A_VOLUME))
