"""The large-print sheet: a tagged PDF at the client's print size."""

from __future__ import annotations

import atexit
import ctypes
import importlib.metadata
import logging
import re
from collections.abc import Iterator
from contextlib import contextmanager
from functools import lru_cache
from typing import Any

from handouts.errors import MissingLibrary, RenderError
from handouts.forms import Look, Rendered, paper
from handouts.forms.pdf_repair import repair
from handouts.forms.templating import fill, title_of
from handouts.forms.typesetting import typeset, with_bonds
from handouts.handout import Handout, LogEntry
from handouts.models import PrintForm

# (ink, paper): each over 7:1 by WCAG 2.2, 1.4.6; a test measures them.
COLOURS = {
    "black on white": ("#000000", "#ffffff"),
    "white on black": ("#ffffff", "#000000"),
    "black on yellow": ("#000000", "#ffff66"),
    "yellow on black": ("#ffff66", "#000000"),
}


def get_ready() -> None:
    """Load WeasyPrint, which takes as long as a short sheet.

    Raises MissingLibrary when Pango is not installed.
    """
    _weasyprint()
    fonts()


def render(handout: Handout, form: PrintForm, look: Look) -> Rendered:
    """The sheet as PDF bytes with tags, and its number of pages.

    Raises MissingLibrary when Pango is not installed, RenderError when
    WeasyPrint complains about anything.
    """
    weasyprint = _weasyprint()
    source = weasyprint.HTML(string=page_html(handout, form, look), base_url=None, url_fetcher=_fetcher())
    with _complaints() as complaints:
        configuration, faces = fonts()
        document = source.render(stylesheets=[faces], font_config=configuration)
        data: bytes = document.write_pdf(pdf_variant="pdf/ua-1", pdf_identifier=b"handouts")
    if complaints:
        if missing := re.search(r"\.notdef glyph.*?\((U\+[0-9A-F]+)\)", complaints[0]):
            sign = chr(int(missing[1][2:], 16))
            raise RenderError(
                f"no font on this machine has the sign '{sign}' ({missing[1]}); "
                "install a font that has it, such as one of the Noto fonts, or write it in other signs"
            )
        raise RenderError(f"the PDF would be faulty: {complaints[0]}; tell the maker of this program")
    return Rendered(repair(data, source.etree_element), len(document.pages))


def page_html(handout: Handout, form: PrintForm, look: Look) -> str:
    """The HTML that the PDF is made from."""
    ink, colour = COLOURS[form.colours]
    log_page = paper.page(handout, form, log=True)
    page = log_page if handout.sheet == "log" else paper.page(handout, form)

    def bands(entries: tuple[LogEntry, ...]) -> tuple[paper.Band, ...]:
        laid = paper.bands(entries, form, log_page.width, handout.language)
        return tuple(with_bonds(band, form, log_page.width, handout.language) for band in laid)

    html = fill(
        look, "print.html.j2", typeset(handout, form, page), form, {"style": "print.css.j2"},
        title=title_of(handout),
        ink=ink, paper=colour, page=page, log_page=log_page, sizes=paper.headings(form.size),
        spacing=paper.spacing(form), box_spacing=paper.box_spacing(form), gap=paper.gap(form), box_edge=paper.box_edge(form),
        keep=3 if page.lines > 14 else 2,
        log_template="print_log.html.j2", after_section="", scrolls=False,
        bands=bands,
        fits=lambda table: paper.fits(table, form, page.width),
    )
    return _spaces_apart(html, underlined=form.weight == "bold")


def versions() -> dict[str, str]:
    """The libraries that shape the bytes; Pango is asked without WeasyPrint."""
    found = {name: importlib.metadata.version(name) for name in ("weasyprint", "pydyf", "pikepdf", "fonttools", "pyphen", "fontpkg-atkinson-hyperlegible")}
    try:
        pango = ctypes.CDLL("libpango-1.0.so.0")
        pango.pango_version_string.restype = ctypes.c_char_p
        found["pango"] = pango.pango_version_string().decode()
    except (OSError, AttributeError):
        found["pango"] = "unknown"
    return found


def _spaces_apart(html: str, underlined: bool) -> str:
    """The same page with no text that ends in a space before a span.

    WeasyPrint 70 breaks a line after its first word when a run of text fits
    but for its last space; a run that does not end in a space is broken well.
    So the space goes into the span, or, where it would keep a measure from
    the next line or be seen underlined, into a span of its own.
    """
    html = re.sub(r" (</(?:strong|abbr|span)>)", r"\1 ", html)
    apart = r"(?:abbr|span) class=\"measure\"" + (r"|strong\b" if underlined else "")
    html = re.sub(rf" (?=<(?:{apart}))", "<span> </span>", html)
    return re.sub(r" (<(?:strong|span lang)\b[^>]*>)", r"\1 ", html)


def _weasyprint() -> Any:
    try:
        import weasyprint
    except OSError as problem:
        raise MissingLibrary(
            "print needs the system library Pango, which is not installed; on Debian and Ubuntu: "
            "sudo apt-get install libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0; on macOS: brew install pango"
        ) from problem
    return weasyprint


@lru_cache(maxsize=1)
def fonts() -> tuple[Any, Any]:
    """WeasyPrint's font configuration and the style sheet with the faces of the
    family "Sheet", loaded once: what each document loads anew is never given
    back (a third of a megabyte a document with WeasyPrint 70).
    """
    weasyprint = _weasyprint()
    # WeasyPrint takes its folder of fonts away when the configuration goes,
    # which must be before the interpreter's own parts go.
    atexit.register(fonts.cache_clear)
    configuration = weasyprint.text.fonts.FontConfiguration()
    faces = "".join(
        f"@font-face {{ font-family: Sheet; font-weight: {weight}; src: url(handouts:font/{name}) }}"
        for weight, name in ((400, "regular"), (700, "bold"))
    )
    return configuration, weasyprint.CSS(string=faces, font_config=configuration, url_fetcher=_fetcher())


@lru_cache(maxsize=1)
def _fetcher() -> Any:
    """Serves the font of the program and refuses everything else."""
    from fontpkg_atkinson_hyperlegible import ROOT
    from weasyprint.urls import URLFetcher, URLFetcherResponse

    fonts = {
        "handouts:font/regular": ROOT / "files" / "AtkinsonHyperlegible-Regular.ttf",
        "handouts:font/bold": ROOT / "files" / "AtkinsonHyperlegible-Bold.ttf",
    }

    class OwnAssets(URLFetcher):  # type: ignore[misc]
        def fetch(self, url: str, headers: Any = None) -> Any:
            if url not in fonts:
                raise ValueError(f"nothing is fetched while a handout is made: {url}")
            return URLFetcherResponse(url, fonts[url].read_bytes(), {"Content-Type": "font/ttf"})

    return OwnAssets()


@contextmanager
def _complaints() -> Iterator[list[str]]:
    """Collects what WeasyPrint only logs: it writes the file all the same."""
    found: list[str] = []

    class Collect(logging.Handler):
        def emit(self, record: logging.LogRecord) -> None:
            found.append(record.getMessage())

    logger = logging.getLogger("weasyprint")
    handler = Collect(logging.WARNING)
    logger.addHandler(handler)
    try:
        yield found
    finally:
        logger.removeHandler(handler)
