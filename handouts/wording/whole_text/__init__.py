"""Checks of a text as a whole, in the order in which they are told.

One module a subject, with everything of it inside.  This list is all there
is: nothing registers itself.
"""

from __future__ import annotations

from handouts.wording.whole_text.check import Check
from handouts.wording.whole_text.clock_direction import CLOCK_DIRECTION
from handouts.wording.whole_text.clock_frame import CLOCK_FRAME
from handouts.wording.whole_text.mirrored import MIRRORED
from handouts.wording.whole_text.parts import COMPLETENESS, PARTS
from handouts.wording.whole_text.reading_ease import LONG_SENTENCE, READING_GRADE
from handouts.wording.whole_text.sides import BOTH_SIDES, START_SIDES
from handouts.wording.whole_text.unnamed_side import UNNAMED_SIDE

CHECKS: tuple[Check, ...] = (
    PARTS,
    COMPLETENESS,
    CLOCK_FRAME,
    CLOCK_DIRECTION,
    START_SIDES,
    BOTH_SIDES,
    MIRRORED,
    UNNAMED_SIDE,
    LONG_SENTENCE,
    READING_GRADE,
)
