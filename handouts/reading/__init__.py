"""Files to models: every fault has file, line, what is wrong, what to write.

The names are fetched when they are asked for, so that who needs one room of
reading, such as the wording checker, does not load the models of all.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from handouts.reading.studio import StudioReading, find_studio, read_studio, read_studio_parts

__all__ = ["StudioReading", "find_studio", "read_studio", "read_studio_parts"]


def __getattr__(name: str) -> Any:
    if name not in __all__:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    from handouts.reading import studio

    return getattr(studio, name)
