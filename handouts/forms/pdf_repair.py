"""Gives a PDF from WeasyPrint the structure that its HTML had.

WeasyPrint 70 writes one structure element for each box on each page: a list
that crosses a page becomes two lists, header cells have no scope, `strong`,
`abbr` and `lang` are lost, and what stands in the margins is tagged like
content.  Mending that tree piece by piece would mean guessing what each box
was.  So it is made anew: the text drawn on the pages is laid word by word
along the text of the HTML, and the elements of the HTML become the elements
of the PDF.  That the two texts agree to the last letter is thereby proved for
every file that is made.

Source of the structure types and attributes: ISO 32000-1, 14.7 and 14.8; of
the requirements: ISO 14289-1 (PDF/UA-1), section 7; names of the checks follow
its clauses from memory.
"""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import groupby, pairwise
from typing import Any, TypeAlias
from xml.etree.ElementTree import Element

import pikepdf
from pikepdf import Array, Dictionary, Name, String

from handouts.errors import RenderError

# HTML element to structure type.  What is not named here adds no element.
_TYPES = {
    "section": "Sect", "h1": "H1", "h2": "H2", "h3": "H3", "h4": "H4", "h5": "H5", "h6": "H6",
    "p": "P", "ul": "L", "ol": "L", "li": "LI", "table": "Table", "caption": "Caption",
    "thead": "THead", "tbody": "TBody", "tr": "TR", "th": "TH", "td": "TD", "strong": "Strong",
}  # fmt: skip
_SVG = "{http://www.w3.org/2000/svg}svg"
# A type of our own needs a standard one behind it (ISO 32000-1, 14.7.3).
_ROLES = {"Strong": "Span"}
_MAY_BE_EMPTY = {"TD", "TH"}
_PAINTING = {"S", "s", "f", "F", "f*", "B", "B*", "b", "b*", "sh", "Do", "BI", "Tj", "TJ", "'", '"', "INLINE IMAGE"}


@dataclass(eq=False)
class _Drawn:
    """One piece of marked content, in the order of drawing.

    page: from 0.  text: as the fonts of the PDF spell it.
    place: where it stood in the tree by WeasyPrint.
    actual: what it says if its letters do not say it; "" when they do.
    type: the structure type that it stands in, once that is known.
    """

    page: int
    mcid: int
    text: str
    place: _Place
    actual: str = ""
    type: str = "Artifact"


@dataclass(eq=False)
class _Words:
    """One run of text in the HTML, and the drawn pieces that show it.

    rest: its letters, without blanks, that no piece has shown yet.
    """

    rest: str
    node: _Node
    pieces: list[_Drawn] = field(default_factory=list)

    @property
    def row(self) -> _Node | None:
        """The outermost table row or list around the text, whose parts may
        stand side by side."""
        return next((node for node in reversed([*self.node.above()]) if node.type in ("TR", "L")), None)

    def take(self, piece: _Drawn) -> None:
        piece.type = self.node.type
        self.pieces.append(piece)


@dataclass(eq=False)
class _Node:
    """A structure element to be.

    kids: nodes and words in the order of the HTML.
    attributes: entries of the element beside type, parent and kids.
    """

    type: str
    parent: _Node | None
    kids: list[_Node | _Words] = field(default_factory=list)
    entries: dict[str, Any] = field(default_factory=dict)

    def above(self) -> Iterator[_Node]:
        """This node and those around it, from the inside out."""
        node: _Node | None = self
        while node is not None:
            yield node
            node = node.parent

    def below(self, type_: str) -> Iterator[_Node]:
        """The nodes of one type within this one, in reading order."""
        for kid in self.kids:
            if isinstance(kid, _Node):
                if kid.type == type_:
                    yield kid
                yield from kid.below(type_)


def repair(data: bytes, root: Element, running: str = "running") -> bytes:
    """The PDF with a whole structure tree, the same bytes for the same input.

    data: a tagged PDF by WeasyPrint.  root: the `html` element that it was
    made from.  running: the class of the element that WeasyPrint moved to the
    margins, which is no content.
    PDF/UA-1 is declared in the metadata only if `faults` finds nothing.
    Raises RenderError if the PDF does not say what the HTML says.
    """
    with pikepdf.open(io.BytesIO(data)) as pdf:
        old = _old_tree(pdf)
        streams = [_operations(page) for page in pdf.pages]
        drawn = [piece for number, page in enumerate(pdf.pages) for piece in _drawn(page, number, streams[number], old)]
        drawn.sort(key=lambda piece: (piece.page, *piece.place.order))
        document, texts, figures = _new_tree(root, running)
        _place_figures([piece for piece in drawn if piece.place.figure is not None], figures)
        _lay_along([piece for piece in drawn if piece.place.figure is None], texts)
        _prune(document)
        _write_tree(pdf, document, len(pdf.pages))
        _write_streams(pdf, streams, drawn)
        _finish(pdf)
        out = io.BytesIO()
        pdf.save(out, deterministic_id=True, object_stream_mode=pikepdf.ObjectStreamMode.generate)
    return out.getvalue()


# --- what WeasyPrint wrote ---------------------------------------------------


@dataclass(frozen=True)
class _Place:
    """Where WeasyPrint put a piece of content.

    order: sorts the pieces of a page into reading order.
    marker: in front of a list item.  head: in the head of a table, which comes
        again on each page of the table.  figure: the element of a drawing.
    """

    order: tuple[int, int]
    marker: bool
    head: bool
    figure: Any = None


def _old_tree(pdf: pikepdf.Pdf) -> dict[tuple[int, int], _Place]:
    """(page, MCID) of all tagged content, with its place.

    Content is drawn in reading order but for the list markers, which come last
    on their page.  A marker's place is just before the text of its own item,
    which follows it in the tree.
    """
    pages: dict[Any, int] = {page.obj.objgen: number for number, page in enumerate(pdf.pages)}
    found: dict[tuple[int, int], _Place] = {}
    markers: list[tuple[int, int]] = []
    stack: list[tuple[Any, bool, bool]] = [(pdf.Root.StructTreeRoot.K[0], False, False)]
    while stack:
        element, marker, head = stack.pop()
        marker, head = marker or element.S == "/Lbl", head or element.S == "/THead"
        kids: list[Any] = list(element.get("/K", Array()))
        for mcid in (kid for kid in kids if isinstance(kid, int)):
            here = (pages[element.Pg.objgen], mcid)
            if marker:
                markers.append(here)
            else:
                found[here] = _Place((mcid, 0), False, head, element if element.S == "/Figure" else None)
                found.update((each, _Place((mcid, -1), True, head)) for each in markers)
                markers.clear()
        stack += [(kid, marker, head) for kid in reversed(kids) if not isinstance(kid, int) and "/S" in kid]
    return found


# An operator's name, its operands where this module reads them, and the
# instruction that holds both: each look into an instruction is slow.
_Operation: TypeAlias = tuple[str, Any, Any]
_READ = frozenset(("BDC", "BMC", "Tf", "Tj", "TJ", "cm"))


def _operations(page: pikepdf.Page) -> list[_Operation]:
    found = []
    for instruction in pikepdf.parse_content_stream(page):
        name = str(instruction.operator)
        found.append((name, instruction.operands if name in _READ else None, instruction))
    return found


def _drawn(
    page: pikepdf.Page, number: int, stream: list[_Operation], old: dict[tuple[int, int], _Place]
) -> Iterator[_Drawn]:
    fonts = {name: _to_unicode(font) for name, font in page.Resources.get("/Font", Dictionary()).items()}
    text: list[str] = []
    letters: dict[bytes, str] = {}
    mcid: int | None = None
    for operator, operands, _ in stream:
        if operator == "BDC":
            mcid = int(operands[1]["/MCID"]) if "/MCID" in operands[1] else None
            text = []
        elif operator == "EMC" and mcid is not None:
            if (number, mcid) in old:
                yield _Drawn(number, mcid, "".join(text), old[number, mcid])
            mcid = None
        elif operator == "Tf":
            letters = fonts[str(operands[0])]
        elif operator in ("Tj", "TJ"):
            for piece in operands[0] if operator == "TJ" else operands:
                if isinstance(piece, String):
                    glyphs = bytes(piece)
                    text += [letters.get(glyphs[at : at + 2], "\ufffd") for at in range(0, len(glyphs), 2)]


def _to_unicode(font: pikepdf.Object) -> dict[bytes, str]:
    """Glyph to text, from the font's ToUnicode map (ISO 32000-1, 9.10.3)."""
    if "/ToUnicode" not in font:
        return {}
    table = {}
    for block in re.findall(rb"beginbfchar(.*?)endbfchar", font.ToUnicode.read_bytes(), re.S):
        for glyph, letters in re.findall(rb"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]*)>", block):
            table[bytes.fromhex(glyph.decode())] = bytes.fromhex(letters.decode()).decode("utf-16-be")
    return table


# --- the tree of the HTML ----------------------------------------------------


def _new_tree(root: Element, running: str) -> tuple[_Node, list[_Words], list[_Words]]:
    """The document node with all that is below it, every text in order, and
    every drawing in order."""
    document = _Node("Document", None)
    texts: list[_Words] = []
    figures: list[_Words] = []

    def say(text: str | None, node: _Node) -> None:
        letters = "".join((text or "").split())
        if letters:
            texts.append(_Words(letters, node))
            node.kids.append(texts[-1])

    def walk(element: Element, around: _Node) -> None:
        if not isinstance(element.tag, str) or element.tag in ("head", "style", "script"):
            return
        if running in _classes(element):
            return
        inside = _node(element, around)
        if inside.type == "Figure":
            # Drawn, not said: its title is its alternative text.
            figures.append(_Words("", inside))
            inside.kids.append(figures[-1])
            return
        say(element.text, inside)
        for child in element:
            walk(child, inside)
            say(child.tail, inside)

    walk(root, document)
    for number, table in enumerate(document.below("Table")):
        _name_headers(table, number)
    return document, texts, figures


def _classes(element: Element) -> list[str]:
    return (element.get("class") or "").split()


def _node(element: Element, around: _Node) -> _Node:
    """The node that takes an element's content; the one around where it adds none."""
    kind = "Div" if "caution" in _classes(element) else _TYPES.get(element.tag, "")
    entries: dict[str, Any] = {}
    if element.tag == _SVG:
        kind = "Figure"
        title = element.find(f"{_SVG[:-3]}title")
        entries["/Alt"] = String(" ".join("".join(title.itertext() if title is not None else ()).split()))
    if element.get("lang") and element.tag != "html":
        entries["/Lang"] = String(element.get("lang", ""))
    if element.tag == "abbr" and element.get("title"):
        entries["/E"] = String(element.get("title", ""))
    kind = kind or ("Span" if entries else "")
    if not kind:
        return around
    node = _Node(kind, around, entries=entries)
    around.kids.append(node)
    if kind == "L":
        bare = {"facts", "boxes"} & set(_classes(element))
        numbering = Name.Decimal if element.tag == "ol" else Name("/None") if bare else Name.Disc
        entries["/A"] = Dictionary(O=Name.List, ListNumbering=numbering)
    if kind == "LI":
        body = _Node("LBody", node)
        node.kids.append(body)
        return body
    if kind == "TH":
        scope = Name.Row if element.get("scope") == "row" else Name.Column
        entries["/A"] = Dictionary(O=Name.Table, Scope=scope)
    return node


def _name_headers(table: _Node, number: int) -> None:
    """Ties each data cell to the headers of its row and its column.

    Our tables have no spans: a row has as many cells as the table has columns.
    """
    columns: list[String] = []
    for row_number, row in enumerate(table.below("TR")):
        row_header: list[String] = []
        for column, cell in enumerate(kid for kid in row.kids if isinstance(kid, _Node)):
            if cell.type == "TH":
                name = String(f"t{number}r{row_number}c{column}")
                cell.entries["/ID"] = name
                if cell.entries["/A"].Scope == Name.Column:
                    columns.append(name)
                else:
                    row_header.append(name)
            elif cell.type == "TD":
                headers = row_header + columns[column : column + 1]
                cell.entries["/A"] = Dictionary(O=Name.Table, Headers=Array(headers))


# --- laying one along the other ----------------------------------------------


def _lay_along(drawn: list[_Drawn], texts: list[_Words]) -> None:
    """Gives each drawn piece to the text of the HTML that it shows.

    Blanks are left out of the comparison: a line end swallows them.  Texts
    come one after the other, but where a row is higher than a page, each of
    its cells goes on where it stopped on the page before.
    """
    begun: list[_Words] = []
    ahead = list(reversed(texts))
    last: _Words | None = None
    labels: list[_Drawn] = []
    for piece in drawn:
        said = "".join(piece.text.split())
        if piece.place.marker:
            labels.append(piece)
        elif piece.place.head and not _is_first_head(said, begun, ahead):
            continue
        elif not said:
            # A space drawn on its own, between two spans.
            piece.actual = "" if piece.text else " "
            if last is not None:
                last.take(piece)
        else:
            last, shown = _whose(said, begun, ahead)
            piece.actual = _actual(piece.text, last.rest[:shown])
            _place_labels(labels, last.node)
            last.take(piece)
            last.rest = last.rest[shown:]
            begun[:] = [words for words in begun if words.rest]
    for words in (*begun, *reversed(ahead)):
        raise RenderError(f"the PDF leaves out {words.rest!r}; tell the maker of this program")


def _place_figures(drawn: list[_Drawn], figures: list[_Words]) -> None:
    """Drawings come in the order of the HTML, each as one piece."""
    for piece, figure in zip(drawn, figures, strict=True):
        figure.take(piece)
        # Where it stands (ISO 32000-1, 14.8.5.4.5), in points from the lower
        # left; WeasyPrint wrote CSS pixels from the upper left.
        left, top, right, bottom = (float(side) * 0.75 for side in piece.place.figure.A.BBox)
        height = float(piece.place.figure.Pg.MediaBox[3])
        figure.node.entries["/A"] = Dictionary(O=Name.Layout, BBox=Array([left, height - bottom, right, height - top]))


def _is_first_head(said: str, begun: list[_Words], ahead: list[_Words]) -> bool:
    """Whether a piece in the head of a table is not said again on a later page."""
    heads = [*begun, *ahead[-1:]]
    return any(_shown(said, words.rest) and any(n.type == "THead" for n in words.node.above()) for words in heads)


def _whose(said: str, begun: list[_Words], ahead: list[_Words]) -> tuple[_Words, int]:
    """The text that goes on with `said`: one begun, or the next, which is then
    begun; and how many of its letters are shown."""
    for words in begun:
        if shown := _shown(said, words.rest):
            return words, shown
    row = begun[-1].row if begun else None
    while ahead and (not begun or (row is not None and ahead[-1].row is row)):
        begun.append(ahead.pop())
        if shown := _shown(said, begun[-1].rest):
            return begun[-1], shown
    if len(begun) == 1 and (shown := _shown(said, begun[0].rest, alike=True)):
        return begun[0], shown
    rest = [words.rest for words in begun]
    raise RenderError(f"the PDF says {said!r} where the sheet says {rest}; tell the maker of this program")


_SOFT_HYPHEN = "\u00ad"


def _shown(said: str, rest: str, alike: bool = False) -> int:
    """How many letters of `rest` are shown by `said`; 0 if it says something else.

    A soft hyphen shows only where a line ends in it.  alike: whether letters
    that may share a glyph count as the same, such as the two of Omega; a
    figure and a plain letter never do.
    """
    at = 0
    for number, letter in enumerate(said, 1):
        if letter == "-" and number == len(said) and rest[at : at + 1] == _SOFT_HYPHEN:
            return at + 1
        while rest[at : at + 1] == _SOFT_HYPHEN:
            at += 1
        wanted = rest[at : at + 1]
        same = letter == wanted or (
            alike and wanted and not (letter.isascii() and wanted.isascii()) and not (letter.isnumeric() or wanted.isnumeric())
        )
        if not same:
            return 0
        at += 1
    return at


def _actual(text: str, wanted: str) -> str:
    """What a piece says where its letters say it otherwise; "" where they do not.

    text: as drawn.  wanted: the letters of the HTML without blanks.  Of two
    characters that share one glyph the HTML knows which of them it is; the
    hyphen of a divided word is a soft one (ISO 32000-1, 14.8.2.2.3).
    """
    divided = wanted.endswith(_SOFT_HYPHEN)
    letters = iter(wanted.replace(_SOFT_HYPHEN, "") + _SOFT_HYPHEN * divided)
    actual = "".join(letter if letter.isspace() else next(letters) for letter in text)
    return "" if actual == text else actual


def _place_labels(labels: list[_Drawn], node: _Node) -> None:
    """List markers belong to the items around the text that follows, the last
    marker to the innermost."""
    items = [above for above in node.above() if above.type == "LI" and not any(True for _ in _labels_of(above))]
    if len(labels) > len(items):
        raise RenderError(f"a list marker without its item: {labels[0].text!r}; tell the maker of this program")
    for piece, item in zip(reversed(labels), items, strict=False):
        label = _Node("Lbl", item)
        words = _Words("", label)
        words.take(piece)
        label.kids.append(words)
        item.kids.insert(0, label)
    labels.clear()


def _labels_of(item: _Node) -> Iterator[_Node]:
    return (kid for kid in item.kids if isinstance(kid, _Node) and kid.type == "Lbl")


def _prune(node: _Node) -> bool:
    """Removes elements without content, such as a place to write, but never a
    cell, which holds its column; False if the node itself is one."""
    node.kids = [kid for kid in node.kids if (kid.pieces if isinstance(kid, _Words) else _prune(kid))]
    return bool(node.kids) or node.type in _MAY_BE_EMPTY


# --- writing -----------------------------------------------------------------


def _write_tree(pdf: pikepdf.Pdf, document: _Node, pages: int) -> None:
    """Puts the new structure tree in the place of the old one."""
    root = pdf.make_indirect(Dictionary(Type=Name.StructTreeRoot))
    parents: list[dict[int, pikepdf.Object]] = [{} for _ in range(pages)]
    named: dict[str, pikepdf.Object] = {}

    def element(node_type: str, parent: pikepdf.Object, entries: dict[str, Any]) -> pikepdf.Object:
        return pdf.make_indirect(Dictionary({"/Type": Name.StructElem, "/S": Name(f"/{node_type}"), "/P": parent, **entries}))

    def kid_of(made: pikepdf.Object, piece: _Drawn) -> Any:
        parents[piece.page][piece.mcid] = made
        page = pdf.pages[piece.page].obj
        if "/Pg" not in made:
            made["/Pg"] = page
        if made.Pg.objgen == page.objgen:
            return piece.mcid
        return Dictionary(Type=Name.MCR, Pg=page, MCID=piece.mcid)

    def write(node: _Node, parent: pikepdf.Object) -> pikepdf.Object:
        made = element(node.type, parent, node.entries)
        if "/ID" in node.entries:
            named[str(node.entries["/ID"])] = made
        kids: list[Any] = []
        # Beside other elements, text stands in one of its own: some readers
        # take an element's own text before that of the elements in it.
        mixed = any(isinstance(kid, _Node) or any(piece.actual for piece in kid.pieces) for kid in node.kids)
        for kid in node.kids:
            if isinstance(kid, _Node):
                kids.append(write(kid, made))
                continue
            plain_words = element("Span", made, {}) if mixed else made
            shown: list[Any] = []
            apart = any(piece.actual for piece in kid.pieces)
            for actual, pieces in groupby(kid.pieces, lambda piece: piece.actual):
                if apart:
                    span = element("Span", plain_words, {"/ActualText": String(actual)} if actual else {})
                    span["/K"] = Array([kid_of(span, piece) for piece in pieces])
                    shown.append(span)
                else:
                    shown += [kid_of(plain_words, piece) for piece in pieces]
            if mixed:
                plain_words["/K"] = Array(shown)
                kids.append(plain_words)
            else:
                kids += shown
        made["/K"] = Array(kids)
        return made

    root["/K"] = Array([write(document, root)])
    root["/RoleMap"] = Dictionary({f"/{own}": Name(f"/{standard}") for own, standard in _ROLES.items()})
    numbers = Array()
    for page_number, by_mcid in enumerate(parents):
        entries = [by_mcid.get(mcid) for mcid in range(max(by_mcid, default=-1) + 1)]
        numbers.append(page_number)
        numbers.append(pdf.make_indirect(Array(entries)))
        pdf.pages[page_number].obj["/StructParents"] = page_number
    root["/ParentTree"] = pdf.make_indirect(Dictionary(Nums=numbers))
    root["/ParentTreeNextKey"] = pages
    if named:
        pairs = [item for name in sorted(named) for item in (String(name), named[name])]
        root["/IDTree"] = pdf.make_indirect(Dictionary(Names=Array(pairs)))
    pdf.Root["/StructTreeRoot"] = root


def _write_streams(pdf: pikepdf.Pdf, streams: list[list[_Operation]], drawn: list[_Drawn]) -> None:
    """Marks page furniture as artifacts, content with the type it stands in,
    and paints list markers where they are read."""
    types = {(piece.page, piece.mcid): piece.type for piece in drawn}
    moves: dict[tuple[int, int], int] = {}
    for piece in drawn:
        if piece.place.marker:
            moves[piece.page, piece.mcid] = piece.place.order[0]
    for number, (page, stream) in enumerate(zip(pdf.pages, streams, strict=True)):
        for at, (name, operands, instruction) in enumerate(stream):
            if name == "BDC" and "/MCID" in operands[1]:
                kind = types.get((number, int(operands[1]["/MCID"])), "Artifact")
                properties = Dictionary(Type=Name.Pagination) if kind == "Artifact" else operands[1]
                typed = pikepdf.ContentStreamInstruction([Name(f"/{kind}"), properties], instruction.operator)
                stream[at] = (name, operands, typed)
        here = {mcid: before for (on, mcid), before in moves.items() if on == number}
        page.Contents = pdf.make_stream(pikepdf.unparse_content_stream(_reordered(stream, here)))


def _reordered(stream: list[_Operation], moves: dict[int, int]) -> list[Any]:
    """The instructions of the same painting with marked content moved in front
    of other content.

    moves: MCID to the MCID that it is to stand before.  A piece is moved only
    between places with the same transformation, and takes its colour along.
    """
    instructions = [instruction for _, _, instruction in stream]
    if not moves:
        return instructions
    spans: dict[int, tuple[int, int]] = {}
    states: dict[int, tuple[Any, ...]] = {}
    stack: list[tuple[Any, ...]] = []
    # transformation matrices so far, then the last colour and the last gs
    state: tuple[Any, ...] = ((), None, None)
    mcid = None
    for at, (name, operands, _) in enumerate(stream):
        if name == "q":
            stack.append(state)
        elif name == "Q":
            state = stack.pop()
        elif name == "cm":
            state = ((*state[0], tuple(float(value) for value in operands)), *state[1:])
        elif name == "rg":
            state = (state[0], at, state[2])
        elif name == "gs":
            state = (*state[:2], at)
        elif name == "BDC" and "/MCID" in operands[1]:
            mcid = int(operands[1]["/MCID"])
            states[mcid] = state
            spans[mcid] = (at, at)
        elif name == "EMC" and mcid is not None:
            spans[mcid] = (spans[mcid][0], at)
            mcid = None
    save, restore = (pikepdf.ContentStreamInstruction([], pikepdf.Operator(name)) for name in "qQ")
    before: dict[int, list[Any]] = {}
    gone: set[int] = set()
    for moved, target in moves.items():
        if states[moved][0] != states[target][0]:
            continue
        first, last = spans[moved]
        taken = [instructions[at] for at in states[moved][1:] if at is not None]
        before.setdefault(spans[target][0], []).extend([save, *taken, *instructions[first : last + 1], restore])
        gone.update(range(first, last + 1))
    result: list[Any] = []
    for at, instruction in enumerate(instructions):
        result += before.get(at, ())
        if at not in gone:
            result.append(instruction)
    return result


def _finish(pdf: pikepdf.Pdf) -> None:
    """Catalogue and metadata; PDF/UA-1 is declared only without faults."""
    pdf.Root["/ViewerPreferences"] = Dictionary(DisplayDocTitle=True)
    pdf.Root["/MarkInfo"] = Dictionary(Marked=True)
    if "/Outlines" in pdf.Root:
        pdf.Root["/PageMode"] = Name.UseOutlines
        for bookmark in _bookmarks(pdf.Root.Outlines):
            bookmark["/Title"] = String(str(bookmark.Title).replace(_SOFT_HYPHEN, ""))
    for page in pdf.pages:
        page.obj["/Tabs"] = Name.S
    with pdf.open_metadata(set_pikepdf_as_editor=False, update_docinfo=False) as metadata:
        metadata["dc:language"] = {str(pdf.Root.Lang)}
        if faults(pdf):
            del metadata["pdfuaid:part"]


def _bookmarks(parent: pikepdf.Object) -> Iterator[pikepdf.Object]:
    """Every bookmark below an outline or a bookmark (ISO 32000-1, 12.3.3)."""
    each = parent.get("/First")
    while each is not None:
        yield each
        yield from _bookmarks(each)
        each = each.get("/Next")


# --- the checks --------------------------------------------------------------


def faults(pdf: pikepdf.Pdf) -> tuple[str, ...]:
    """What keeps a file from being PDF/UA-1, as far as a program can tell.

    Source: ISO 14289-1, 7.1 (tagging, artifacts, language, title), 7.2
    (text, lists), 7.4.2 (headings), 7.5 (tables); clauses from memory.
    """
    found: list[str] = []
    if not str(pdf.Root.get("/Lang", "")):
        found.append("no language")
    if not str(pdf.docinfo.get("/Title", "")):
        found.append("no title")
    tagged: set[tuple[tuple[int, int], int]] = set()
    levels: list[int] = []
    for element in elements(pdf):
        kind = str(element.S)[1:]
        if kind[:1] == "H" and kind[1:].isdigit():
            levels.append(int(kind[1:]))
        kids = list(element.get("/K", Array()))
        if not kids and kind not in _MAY_BE_EMPTY:
            found.append(f"empty {kind}")
        within = {"L": {"LI"}, "LI": {"Lbl", "LBody"}, "TR": {"TH", "TD"}, "Table": {"Caption", "THead", "TBody", "TR"}}
        for kid in kids:
            if isinstance(kid, int):
                tagged.add((element.Pg.objgen, kid))
            elif "/MCID" in kid:
                tagged.add((kid.Pg.objgen, int(kid.MCID)))
            elif kind in within and str(kid.S)[1:] not in within[kind]:
                found.append(f"{kind} holds {kid.S}")
        if kind == "TH" and "/Scope" not in element.get("/A", Dictionary()):
            found.append("TH without scope")
    if levels[:1] != [1] or levels.count(1) != 1:
        found.append("not one heading of level 1 at the start")
    found += [f"heading level {after} after {before}" for before, after in pairwise(levels) if after > before + 1]
    for number, page in enumerate(pdf.pages, 1):
        found += [f"page {number}: {fault}" for fault in _untagged(page, tagged)]
    return tuple(found)


def elements(pdf: pikepdf.Pdf) -> Iterator[pikepdf.Object]:
    """Every structure element, in reading order, parents first."""
    stack = [pdf.Root.StructTreeRoot.K[0]]
    while stack:
        element = stack.pop()
        yield element
        stack += reversed([kid for kid in element.get("/K", Array()) if not isinstance(kid, int) and "/S" in kid])


def _untagged(page: pikepdf.Page, tagged: set[tuple[tuple[int, int], int]]) -> Iterator[str]:
    """Painted content that is neither in the tree nor an artifact."""
    marks: list[bool] = []
    for operator, operands, _ in _operations(page):
        if operator in ("BMC", "BDC"):
            artifact = operands[0] == Name.Artifact
            mcid = operands[1].get("/MCID") if operator == "BDC" else None
            known = mcid is not None and (page.obj.objgen, int(mcid)) in tagged
            if mcid is not None and not known:
                yield f"content {mcid} is not in the tree"
            marks.append(artifact or known)
        elif operator == "EMC":
            marks.pop()
        elif operator in _PAINTING and not any(marks):
            yield f"{operator} is neither content nor artifact"
