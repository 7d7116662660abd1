"""PEF 1.0: pages of cells as XML for embossing programs.

Source: Portable Embosser Format 1.0, draft of 12 September 2011, with its
RELAX NG grammar and its two Schematron rules.
"""

from __future__ import annotations

import itertools
import uuid
import xml.etree.ElementTree as ElementTree
from xml.sax.saxutils import escape

from handouts.braille.pages import Volume
from handouts.errors import RenderError

NAMESPACE = "http://www.daisy.org/ns/2008/pef"
_DUBLIN_CORE = "http://purl.org/dc/elements/1.1/"


def write(volume: Volume) -> bytes:
    """The bytes of a PEF file: each volume one section.

    Raises RenderError for an endless page, which PEF has no way to say.
    """
    paper = volume.paper
    if not paper.length:
        raise RenderError(
            "a PEF file needs pages; choose a paper with a length, or another kind of file for a notetaker"
        )
    facts = [
        ("format", "application/x-pef+xml"),
        ("identifier", uuid.uuid5(uuid.NAMESPACE_URL, volume.identifier).urn),
        ("title", volume.title),
        ("language", volume.language),
        ("date", volume.date),
    ]
    lines = [
        '<?xml version="1.0" encoding="UTF-8"?>',
        f'<pef version="2008-1" xmlns="{NAMESPACE}">',
        f' <head><meta xmlns:dc="{_DUBLIN_CORE}">',
        *(f"  <dc:{name}>{escape(value)}</dc:{name}>" for name, value in facts if value),
        " </meta></head>",
        " <body>",
    ]
    duplex = "true" if paper.both_sides else "false"
    for first, after in itertools.pairwise((*volume.parts, len(volume.pages) + 1)):
        lines.append(f' <volume cols="{paper.width}" rows="{paper.length}" rowgap="0" duplex="{duplex}"><section>')
        for page in volume.pages[first - 1 : after - 1]:
            rows = "".join(f"<row>{line.cells}</row>" if line.cells else "<row/>" for line in page.lines)
            lines.append(f"  <page>{rows}</page>")
        lines.append(" </section></volume>")
    lines += [" </body>", "</pef>", ""]
    return "\n".join(lines).encode("utf-8")


def read(data: bytes) -> tuple[tuple[str, ...], ...]:
    """The pages of a PEF file, each with its lines of cells, empty lines at the
    end of a page left out.  Raises ValueError for XML that is no PEF."""
    root = ElementTree.fromstring(data)
    if root.tag != f"{{{NAMESPACE}}}pef":
        raise ValueError("no PEF file: the outermost element is not pef in PEF's namespace")
    pages = []
    for page in root.iter(f"{{{NAMESPACE}}}page"):
        rows = [(row.text or "").rstrip("\u2800") for row in page.iter(f"{{{NAMESPACE}}}row")]
        while rows and not rows[-1]:
            rows.pop()
        pages.append(tuple(rows))
    return tuple(pages)
