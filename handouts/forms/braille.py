"""The braille form: a Handout as a file for an embosser or a braille display."""

from __future__ import annotations

from handouts.braille import brf
from handouts.braille.codes import Code, find_code
from handouts.braille.layout import lay_out
from handouts.braille.pages import Paper, Volume
from handouts.forms import Look, Rendered
from handouts.handout import Handout
from handouts.models import BrailleForm


def render(handout: Handout, form: BrailleForm, look: Look) -> Rendered:
    """A BRF file.  `look` has no part in it: braille has no style sheets.

    Raises UnknownCharacter, RenderError, MissingLibrary.
    """
    volume = lay_out(handout, code_of(form), paper_of(form))
    return Rendered(brf.write(volume), len(volume.pages))


def code_of(form: BrailleForm) -> Code:
    return find_code(form.code, form.grade)


def paper_of(form: BrailleForm) -> Paper:
    return Paper(
        width=form.width, length=form.length, both_sides=form.both_sides, running_head=form.running_head
    )
