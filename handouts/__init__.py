"""Strength training hand-outs that can be read, heard or felt.

Public names: `handouts.braille.translate`, `handouts.wording.check_text`,
`handouts.making.make`.  Importing this package alone loads nothing else.
"""

__all__ = ["__version__"]

__version__ = "0.1.0"
