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
    """What stands before the program's own templates and style sheets.

    folders: searched in order.
    overrides: (name, text) of templates, searched before the folders: a
        studio's own, so that a worker on another machine needs no shared disk.
    The program's own templates are always searched last.
    """

    folders: tuple[Path, ...] = ()
    overrides: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True)
class FormKind:
    """name: as in a client's file and in --as.  ending: of the usual file."""

    name: str
    ending: str
    module: str

    def get_ready(self) -> None:
        """Load what the form's first sheet would otherwise wait for."""
        module = importlib.import_module(self.module)
        if hasattr(module, "get_ready"):
            module.get_ready()

    def render(self, handout: Any, form: Any, look: Look) -> Rendered:
        """handout: Handout.  form: the client's PrintForm, ScreenForm, ..."""
        rendered: Rendered = importlib.import_module(self.module).render(handout, form, look)
        return rendered

    def ending_of(self, form: Any) -> str:
        """The ending of the file that these settings ask for: a form with more
        than one kind of file has a table ENDINGS in its module."""
        endings: dict[str, str] = getattr(importlib.import_module(self.module), "ENDINGS", {})
        return endings[form.file] if endings else self.ending

    def facts(self, form: Any, pages: int) -> dict[str, object]:
        """What a report tells of a finished file beside its pages, {} for most
        forms.  "weight" and "advice" are words for the trainer."""
        module = importlib.import_module(self.module)
        told: dict[str, object] = module.facts(form, pages) if hasattr(module, "facts") else {}
        return told

    def versions(self) -> dict[str, str]:
        """Name to version of each library that shapes this form's bytes.

        A library that is not installed has the version "missing".
        """
        module = importlib.import_module(self.module)
        told: dict[str, str] = module.versions() if hasattr(module, "versions") else {}
        return told


FORMS = {
    kind.name: kind
    for kind in (
        FormKind("print", ".pdf", "handouts.forms.print"),
        FormKind("screen", ".html", "handouts.forms.screen"),
        FormKind("braille", ".brf", "handouts.forms.braille"),
        FormKind("epub", ".epub", "handouts.forms.epub"),
        FormKind("text", ".txt", "handouts.forms.text"),
    )
}


# What a form says beside the words of the Handout, or leaves out of them, and
# why.  All else stands in every form, in the same order; a test reads the
# forms back and holds them against the tree.
DIFFERENCES: tuple[tuple[str, str, str], ...] = (
    ("print", "says measures in their short form", "the eye takes in '15 lb' at once; the long form stays as its expansion"),
    ("print", "adds the running line and page numbers", "dropped pages find back"),
    ("print", "says what the log asks for once for both sides", "room for a thick pen"),
    ("screen", "adds contents, text size, the log's buttons and a question for each exercise", "the page is worked with"),
    ("braille", "says measures in their short form", "the finger reads fewer cells"),
    ("braille", "adds the running head, page numbers and contents", "pages are turned by touch"),
    ("epub", "adds contents, and the running line below the title", "a book is gone through by them, and has no pages to carry the line"),
    ("text", "adds the running line below the title", "there are no pages to carry it"),
    ("text", "leaves emphasis unmarked", "signs around words are spoken"),
    ("text", "writes the log with a key for each field, its date first", "it is filled in, sent back and read by the program"),
)
