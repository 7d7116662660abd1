"""eBraille 1.0: a set of files for braille displays, zipped.

Unlike an embosser, a display has no page: it fits the lines to its own width.
So the file keeps the structure of the handout (headings, lists, tables) and
leaves the lines to the reader.

Source: eBraille 1.0, DAISY Specification of 14 August 2025, on top of EPUB 3.3.
Where the specification's definitions and its example differ, the definitions
are followed.
"""

from __future__ import annotations

import io
import uuid
import zipfile
from xml.sax.saxutils import escape

from handouts.braille.codes import Code
from handouts.braille.flow import layout_words
from handouts.braille.translation import BLANK, words
from handouts.handout import (
    Block,
    Caution,
    Chart,
    Dose,
    Facts,
    Handout,
    Heading,
    Line,
    LogField,
    LogSheet,
    Paragraph,
    Points,
    Section,
    Steps,
    Table,
    Text,
    plain,
)

_MEDIA_TYPE = "application/epub+zip"
_SYSTEMS = {"ueb": "UEB", "fr": "French", "es": "Spanish", "de": "German"}
# ZIP has no time before 1980; one fixed time, so that equal handouts are equal files.
_ZIP_TIME = (1980, 1, 1, 0, 0, 0)

_STYLE = """\
body { margin: 0; }
ol, ul { list-style-type: none; margin: 0; padding-left: 2em; }
.box { border-top: medium solid; border-bottom: medium solid; }
"""


def write(handout: Handout, code: Code) -> bytes:
    """The bytes of an .ebrl file.

    Raises UnknownCharacter for a character that the code has no braille for.
    """
    page = _Page(code, layout_words(handout.language))
    body = page.body(handout)
    language = f"{handout.language}-Brai" if handout.language.isalpha() else handout.language
    title = page.line(handout.title)
    files = {
        "META-INF/container.xml": _CONTAINER,
        "package.opf": _package(handout, code, language, uuid.uuid5(uuid.NAMESPACE_URL, title + body).urn),
        "index.html": _html(language, title, _contents(page, handout, title), publication=True),
        "text.html": _html(language, title, body),
        "style.css": _STYLE,
    }
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr(zipfile.ZipInfo("mimetype", _ZIP_TIME), _MEDIA_TYPE, zipfile.ZIP_STORED)
        for name, text in files.items():
            entry = zipfile.ZipInfo(name, _ZIP_TIME)
            entry.compress_type = zipfile.ZIP_DEFLATED
            archive.writestr(entry, text)
    return buffer.getvalue()


_CONTAINER = """\
<?xml version="1.0" encoding="UTF-8"?>
<container version="1.0" xmlns="urn:oasis:names:tc:opendocument:xmlns:container">
 <rootfiles><rootfile full-path="package.opf" media-type="application/oebps-package+xml"/></rootfiles>
</container>
"""


def _package(handout: Handout, code: Code, language: str, identifier: str) -> str:
    """The package document.  Dates are those of the plan's version: making the
    file again changes nothing in it."""
    facts = [
        ('<dc:identifier id="identifier">', identifier, "</dc:identifier>"),
        ("<dc:title>", plain(handout.title), "</dc:title>"),
        ("<dc:creator>", handout.client_code, "</dc:creator>"),
        ("<dc:language>", language, "</dc:language>"),
        ("<dc:format>", "eBraille 1.0", "</dc:format>"),
        ("<dc:date>", handout.date, "</dc:date>"),
        ('<meta property="dcterms:modified">', f"{handout.date}T00:00:00Z", "</meta>"),
        ('<meta property="dcterms:dateCopyrighted">', handout.date, "</meta>"),
        ('<meta property="a11y:brailleCellType">', "6", "</meta>"),
        ('<meta property="a11y:brailleSystem">', f"{_SYSTEMS[code.name]} grade{code.grade}", "</meta>"),
        ('<meta property="a11y:completeTranscription">', "true", "</meta>"),
        ('<meta property="a11y:producer">', "handouts", "</meta>"),
        ('<meta property="a11y:tactileGraphics">', "none", "</meta>"),
    ]
    lines = "\n".join(f"  {opening}{escape(value)}{closing}" for opening, value, closing in facts)
    return f"""\
<?xml version="1.0" encoding="UTF-8"?>
<package xmlns="http://www.idpf.org/2007/opf" version="3.0" unique-identifier="identifier" xml:lang="{escape(language)}">
 <metadata xmlns:dc="http://purl.org/dc/elements/1.1/">
{lines}
 </metadata>
 <manifest>
  <item id="nav" href="index.html" media-type="application/xhtml+xml" properties="nav"/>
  <item id="text" href="text.html" media-type="application/xhtml+xml"/>
  <item id="style" href="style.css" media-type="text/css"/>
 </manifest>
 <spine><itemref idref="text"/></spine>
</package>
"""


def _html(language: str, title: str, body: str, publication: bool = False) -> str:
    link = '\n <link rel="publication" href="package.opf"/>' if publication else ""
    return f"""\
<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE html>
<html xmlns="http://www.w3.org/1999/xhtml" xmlns:epub="http://www.idpf.org/2007/ops" lang="{language}" xml:lang="{language}">
<head>
 <meta charset="utf-8"/>
 <title>{title}</title>{link}
 <link rel="stylesheet" href="style.css"/>
</head>
<body>
{body}
</body>
</html>
"""


def _contents(page: _Page, handout: Handout, title: str) -> str:
    """Navigation: the title, and below it every heading of level 2."""
    entries = "\n".join(
        f'  <li><a href="text.html#{escape(heading.anchor)}">{page.line(heading.content)}</a></li>'
        for heading in _headings(handout.blocks)
    )
    below = f"\n <ol>\n{entries}\n </ol>" if entries else ""
    return (
        f'<nav epub:type="toc" role="doc-toc">\n <h1>{page.phrase("contents")}</h1>\n'
        f' <ol><li><a href="text.html#title">{title}</a>{below}</li></ol>\n</nav>'
    )


def _headings(blocks: tuple[Block, ...]) -> list[Heading]:
    found: list[Heading] = []
    for block in blocks:
        if isinstance(block, Section):
            found += [block.heading] if block.heading.level == 2 else []
            found += _headings(block.blocks)
        elif isinstance(block, Heading) and block.level == 2:
            found.append(block)
    return found


class _Page:
    """Blocks of the tree as XHTML whose text is cells and spaces alone."""

    def __init__(self, code: Code, its_words: dict[str, str]):
        self._code = code
        self._words = its_words

    def line(self, content: Line, emphasis: bool = False) -> str:
        return " ".join(word.cells for word in words(content, self._code, emphasis)).replace(BLANK, " ")

    def phrase(self, key: str) -> str:
        return self.line((Text(self._words[key]),))

    def body(self, handout: Handout) -> str:
        return f'<h1 id="title">{self.line(handout.title)}</h1>\n' + self._blocks(handout.blocks)

    def _blocks(self, blocks: tuple[Block, ...]) -> str:
        return "\n".join(self._block(block) for block in blocks)

    def _block(self, block: Block) -> str:
        if isinstance(block, Section):
            return f"<section>\n{self._block(block.heading)}\n{self._blocks(block.blocks)}\n</section>"
        if isinstance(block, Heading):
            return f'<h{block.level} id="{escape(block.anchor)}">{self.line(block.content)}</h{block.level}>'
        if isinstance(block, Paragraph | Dose):
            return f"<p>{self.line(block.content, emphasis=True)}</p>"
        if isinstance(block, Steps | Points):
            return self._list(block)
        if isinstance(block, Caution):
            inner = self._blocks(block.blocks)
            return f'<aside class="box">\n<p>{self.line(block.title)}</p>\n{inner}\n</aside>'
        if isinstance(block, Facts):
            rows = "".join(
                f"<li>{self.line((*fact.label, Text(': '), *fact.value), emphasis=True)}</li>" for fact in block.facts
            )
            return f"<ul>{rows}</ul>"
        if isinstance(block, Table):
            return self._table(block)
        if isinstance(block, Chart):
            rows = "".join(f"<li>{self.line((*bar.label, Text(': '), *bar.told))}</li>" for bar in block.bars)
            return f"<p>{self.line(block.title)}</p>\n<p>{self.line(block.words)}</p>\n<ul>{rows}</ul>"
        return self._log(block)

    def _list(self, block: Steps | Points) -> str:
        tag = "ol" if isinstance(block, Steps) else "ul"
        items = []
        for number, item in enumerate(block.items, getattr(block, "first", 1)):
            # The number is text: a style sheet would set it in print.
            marker = self.line((Text(f"{number}."),)) + " " if isinstance(block, Steps) else ""
            inner = "\n" + self._blocks(item.blocks) if item.blocks else ""
            items.append(f"<li>{marker}{self.line(item.content, emphasis=True)}{inner}</li>")
        return f"<{tag}>\n" + "\n".join(items) + f"\n</{tag}>"

    def _table(self, table: Table) -> str:
        heads = "".join(f'<th scope="col">{self.line(column)}</th>' for column in table.columns)
        rows = "\n".join(
            "<tr>"
            + f'<th scope="row">{self.line(row[0])}</th>'
            + "".join(f"<td>{self.line(cell, emphasis=True)}</td>" for cell in row[1:])
            + "</tr>"
            for row in table.rows
        )
        caption = f"<caption>{self.line(table.caption)}</caption>" if table.caption else ""
        return f"<table>{caption}\n<thead><tr>{heads}</tr></thead>\n<tbody>\n{rows}\n</tbody>\n</table>"

    def _log(self, sheet: LogSheet) -> str:
        parts = []
        for entry in sheet.entries:
            fields = "".join(f"<li>{self.line(_field(field))}</li>" for field in entry.fields)
            parts.append(f"<p>{self.line(entry.title)}</p>" + (f"\n<ul>{fields}</ul>" if fields else ""))
        return "\n".join(parts)


def _field(field: LogField) -> Line:
    if field.target:
        return (*field.label, Text(" ("), *field.target, Text("):"))
    if field.unit:
        return (*field.label, Text(f", {field.unit}:"))
    return (*field.label, Text(":"))
