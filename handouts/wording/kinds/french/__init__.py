"""The six blocking kinds in French, in the order in which they take words from one another.

Loaded only when a French text is checked.
"""

from __future__ import annotations

from handouts.wording.kinds.french.demonstration import DEMONSTRATION
from handouts.wording.kinds.french.looks_only import LOOKS_ONLY
from handouts.wording.kinds.french.picture import PICTURE
from handouts.wording.kinds.french.pointing import POINTING
from handouts.wording.kinds.french.sight_check import SIGHT_CHECK
from handouts.wording.kinds.french.viewer import VIEWER
from handouts.wording.kinds.kind import Kind

FRENCH: tuple[Kind, ...] = (DEMONSTRATION, POINTING, PICTURE, LOOKS_ONLY, VIEWER, SIGHT_CHECK)
