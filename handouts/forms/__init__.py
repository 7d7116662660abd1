"""Forms of output: each turns a Handout into the bytes of one file.

A form is one module with `render(handout, form, look) -> Rendered` and one
line in `FORMS`.  Modules are imported only when a form is made, so that a
missing library for one form cannot stop another.
"""

from __future__ import annotations

import importlib
from dataclasses import dataclass
from pathlib import Path
from typing import Any


@dataclass(frozen=True)
class Rendered:
    """One finished file: its bytes, and its pages (0 where it has none)."""

    data: bytes
    pages: int


@dataclass(frozen=True)
class Look:
    """Where templates and style sheets come from.

    folders: searched in order; a studio's own folder stands before the
        package's.
    """

    folders: tuple[Path, ...]


@dataclass(frozen=True)
class FormKind:
    """name: as in a client's file and in --as.  ending: of the file made."""

    name: str
    ending: str
    module: str

    def render(self, handout: Any, form: Any, look: Look) -> Rendered:
        """handout: Handout.  form: the client's PrintForm, ScreenForm, ..."""
        rendered: Rendered = importlib.import_module(self.module).render(handout, form, look)
        return rendered


FORMS = {
    kind.name: kind
    for kind in (
        FormKind("print", ".pdf", "handouts.forms.print"),
        FormKind("screen", ".html", "handouts.forms.screen"),
        FormKind("braille", ".brf", "handouts.forms.braille"),
    )
}
