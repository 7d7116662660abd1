"""The braille form: a Handout as a file for an embosser or a braille display."""

from __future__ import annotations

from handouts.braille import brf, ebraille, pef, unicode_text
from handouts.braille.bulk import bulk_of
from handouts.braille.codes import Code, find_code
from handouts.braille.layout import lay_out
from handouts.braille.liblouis import owner
from handouts.braille.pages import Paper
from handouts.errors import MissingLibrary
from handouts.forms import Look, Rendered
from handouts.handout import Handout
from handouts.models import BrailleForm

# The ending of each kind of file; the plain text form ends in ".txt" alone.
ENDINGS = {"brf": ".brf", "pef": ".pef", "unicode": "-braille.txt", "ebraille": ".ebrl"}


def render(handout: Handout, form: BrailleForm, look: Look) -> Rendered:
    """The file that the client's settings ask for.

    look: has no part in it, since braille has no style sheets.
    Raises UnknownCharacter, RenderError, MissingLibrary.
    """
    code = code_of(form)
    if form.file == "ebraille":
        return Rendered(ebraille.write(handout, code), 0)
    volume = lay_out(handout, code, paper_of(form))
    if form.file == "brf":
        data = brf.write(volume, padded=form.padded, lower_case=form.letters == "lower case")
    else:
        data = (pef if form.file == "pef" else unicode_text).write(volume)
    return Rendered(data, len(volume.pages))


def versions() -> dict[str, str]:
    """liblouis with its tables, which come together."""
    try:
        return {"liblouis": owner().version}
    except MissingLibrary:
        return {"liblouis": "missing"}


def facts(form: BrailleForm, pages: int) -> dict[str, object]:
    """What a report tells of a file beside its pages: what shaped the cells,
    and what the paper weighs."""
    told: dict[str, object] = {**versions(), "tables": list(code_of(form).tables)}
    if form.file != "ebraille" and form.length:
        bulk = bulk_of(pages, paper_of(form))
        told |= {"sheets of paper": bulk.sheets, "grams": bulk.grams, "volumes": bulk.volumes}
        told |= {"weight": bulk.weight, "advice": bulk.advice}
    return told


def code_of(form: BrailleForm) -> Code:
    """Raises RenderError for a table list that liblouis does not have."""
    if form.tables:
        owner().check_tables(form.tables)
    return find_code(form.code, form.grade, form.tables, form.numbers)


def paper_of(form: BrailleForm) -> Paper:
    return Paper(
        width=form.width,
        length=form.length,
        both_sides=form.both_sides,
        running_head=form.running_head,
        number=form.page_number,
        margin=form.binding_margin,
        volume_pages=form.volume_pages,
    )
