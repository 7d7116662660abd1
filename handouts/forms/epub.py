"""The e-book: EPUB 3.3, one file an exercise, with nothing to load.

Source: EPUB 3.3 (W3C Recommendation), EPUB Accessibility 1.1.  It claims no
conformance, which only somebody who has evaluated the book may do; what is
known of it stands in its schema.org properties.
"""

from __future__ import annotations

import importlib.metadata
import io
import re
import uuid
import zipfile
from dataclasses import dataclass

from handouts.forms import Look, Rendered
from handouts.forms.templating import fill
from handouts.handout import Block, Chart, Handout, Heading, Line, Section, walk
from handouts.models import EpubForm

# A name space of our own, so that a sheet keeps its identifier (RFC 9562, 5.5).
_BOOKS = uuid.UUID("b7f4c1de-2c5e-5f0a-9a43-6d5a0f2c7e11")
_CONTAINER = """<?xml version="1.0" encoding="UTF-8"?>
<container version="1.0" xmlns="urn:oasis:names:tc:opendocument:xmlns:container">
<rootfiles><rootfile full-path="EPUB/package.opf" media-type="application/oebps-package+xml"/></rootfiles>
</container>
"""


@dataclass(frozen=True)
class Chapter:
    """One file of the book.

    name: of the file.  title: in the table of contents.
    blocks: what stands in it; first: whether the title of the sheet does too.
    """

    name: str
    title: Line
    blocks: tuple[Block, ...]
    first: bool

    @property
    def drawn(self) -> bool:
        """Whether a picture is drawn in it, which the book must declare."""
        return any(isinstance(block, Chart) for block in walk(self.blocks))


def render(handout: Handout, form: EpubForm, look: Look) -> Rendered:
    """The book as a zip file, the same bytes for the same handout."""
    chapters = _chapters(handout)
    values = {
        "chapters": chapters,
        "identifier": uuid.uuid5(_BOOKS, f"{handout.client_code} {handout.plan_code} {handout.version} {handout.sheet}").urn,
        "log_template": "epub_log.xhtml.j2", "after_section": "", "fits": lambda table: True, "scrolls": False,
    }  # fmt: skip
    files = {
        "META-INF/container.xml": _CONTAINER,
        "EPUB/package.opf": fill(look, "epub_package.opf.j2", handout, form, {}, **values),
        "EPUB/nav.xhtml": fill(look, "epub_nav.xhtml.j2", handout, form, {}, **values),
        "EPUB/style.css": fill(look, "epub.css.j2", handout, form, {}, **values),
    }
    for chapter in chapters:
        page = fill(look, "epub_chapter.xhtml.j2", handout, form, {}, chapter=chapter, **values)
        files[f"EPUB/{chapter.name}"] = re.sub(r'<span lang="([^"]*)"', r'<span lang="\1" xml:lang="\1"', page)
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as book:
        # First and uncompressed (EPUB 3.3, 4.2.3).
        book.writestr(_entry("mimetype"), "application/epub+zip", zipfile.ZIP_STORED)
        for name, text in files.items():
            book.writestr(_entry(name), text.encode("utf-8"), zipfile.ZIP_DEFLATED, 9)
    return Rendered(out.getvalue(), 0)


def versions() -> dict[str, str]:
    """Python is named for its zlib."""
    import zlib

    return {"jinja2": importlib.metadata.version("jinja2"), "zlib": zlib.ZLIB_RUNTIME_VERSION}


def _entry(name: str) -> zipfile.ZipInfo:
    """An entry without the time and the machine of its making."""
    entry = zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0))
    entry.create_system = 3
    entry.external_attr = 0o644 << 16
    return entry


def _chapters(handout: Handout) -> tuple[Chapter, ...]:
    """The blocks before the first section, then each section; what stands
    between sections stays with the one before."""
    groups: list[list[Block]] = [[]]
    for block in handout.blocks:
        if isinstance(block, Section):
            groups.append([block])
        else:
            groups[-1].append(block)
    chapters = [Chapter("start.xhtml", handout.title, tuple(groups[0]), True)]
    for group in groups[1:]:
        heading: Heading = group[0].heading  # type: ignore[union-attr]
        chapters.append(Chapter(f"{heading.anchor}.xhtml", heading.content, tuple(group), False))
    return tuple(chapters)
