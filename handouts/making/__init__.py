"""From a studio folder to finished files.

The names are fetched when they are asked for, so that who only opens a studio
does not load what makes sheets.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from handouts.making.make import Asked, Made, Outcome

__all__ = ["Asked", "Made", "Outcome"]


def __getattr__(name: str) -> Any:
    if name not in __all__:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    import importlib

    return getattr(importlib.import_module("handouts.making.make"), name)
