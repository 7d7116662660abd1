"""Fills Jinja2 templates with a Handout: sandboxed, everything escaped.

A studio's `templates/` folder is searched before the program's own.  What
stands there as `print_more.css.j2`, `screen_more.css.j2` or `epub_more.css.j2`
comes after the style sheet of that form.  A template sees Jinja2's own
functions, and these values and no others:

handout: the Handout tree.  words: the Phrases of its language.
form: the client's settings for this form.  title: plain text of the title.
author: who made the sheet.  style: the style sheet, filled.
sections: the Sections at the top of the tree.
log_template: name of the template for a log sheet.  after_section: name of
    the template for the end of each section, "" for none.
fits: function of a Table, whether it fits in columns.  scrolls: whether a
    wide table may scroll.
print alone: ink, paper (colours), page, log_page (paper.Page), sizes (of h1 to
    h4 in points), spacing (of lines), box_spacing (of lines in a caution), gap
    (what the gaps between blocks are a share of), box_edge (of a caution, both
    in points), keep (lines that stay together),
    bands (function of LogEntries: how to lay them out, paper.Band).
screen alone: script, the filled script; key, its word in the page's policy;
    questions (function of a Section: forms.screen.Question or None); spoken
    (JSON of the phrases that the script says).
epub alone: chapters and chapter (forms.epub.Chapter), identifier (a URN).
Filters: `kind` (name of a tree node), `tree_line` (a Line as text), `pt` (a
    length in points), `unit` (of a log field), `asked` (of a
    log entry, in a language).
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any

import jinja2
from jinja2.sandbox import ImmutableSandboxedEnvironment
from markupsafe import Markup

from handouts import carried
from handouts.errors import RenderError
from handouts.forms import Look
from handouts.forms.log_fields import asked_of, unit_of
from handouts.handout import Handout, Line, Section, plain
from handouts.languages import phrases


@lru_cache(maxsize=8)
def _environment(look: Look) -> ImmutableSandboxedEnvironment:
    environment = ImmutableSandboxedEnvironment(
        loader=jinja2.ChoiceLoader(
            [
                jinja2.FunctionLoader(lambda name: _own(look, name)),
                jinja2.FileSystemLoader([str(folder) for folder in (*look.folders, carried.templates())]),
            ]
        ),
        autoescape=True,
        undefined=jinja2.StrictUndefined,
        trim_blocks=False,
        keep_trailing_newline=True,
    )
    environment.filters["kind"] = lambda node: type(node).__name__
    environment.filters["tree_line"] = _tree_line
    environment.filters["unit"] = unit_of
    environment.filters["asked"] = lambda entry, language: asked_of(entry, phrases(language))
    environment.filters["pt"] = _points
    return environment


def _own(look: Look, name: str) -> tuple[str, str, None] | None:
    """A template of the studio's own: its text, and its path for messages."""
    text = dict(look.overrides).get(name)
    return None if text is None else (text, f"templates/{name}", None)


def _tree_line(line: Line, long: bool = False) -> str:
    return plain(line, long)


def _points(length: float) -> str:
    return f"{length:.1f}pt"


def fill(look: Look, template: str, handout: Handout, form: Any, parts: dict[str, str], **more: Any) -> str:
    """The template filled with one Handout.

    parts: name of a value to name of the template that makes it, such as the
        style sheet; these are filled first, and stand in the page unescaped.
    Raises RenderError with file, line and reason for a broken template.
    """
    values: dict[str, Any] = {
        "handout": handout,
        "form": form,
        "words": phrases(handout.language),
        "title": title_of(handout),
        "author": "handouts",
        "sections": tuple(block for block in handout.blocks if isinstance(block, Section)),
        **more,
    }
    for value, name in parts.items():
        values[value] = _rendered(look, name, values)
    return str(_rendered(look, template, values))


def title_of(handout: Handout) -> str:
    """The title of the file: what the sheet is and whose."""
    return f"{plain(handout.title)} - {handout.client}"


def filled(look: Look, template: str, handout: Handout) -> Markup:
    """A template that needs no more than the phrases, such as the page's script."""
    return _rendered(look, template, {"words": phrases(handout.language)})


def _rendered(look: Look, template: str, values: dict[str, Any]) -> Markup:
    try:
        return Markup(_environment(look).get_template(template).render(values))
    except jinja2.TemplateNotFound as problem:
        raise RenderError(f"no template '{problem.name}'; bring it back or do not name it") from problem
    except jinja2.TemplateSyntaxError as problem:
        where = problem.filename or problem.name or template
        raise RenderError(f"{where}:{problem.lineno}: {problem.message}; mend the template or remove it") from problem
    except Exception as problem:
        place, innermost = _place_in_template(problem)
        # A KeyError is a phrase that does not exist, asked for by the template.
        if not (innermost or isinstance(problem, jinja2.TemplateError | KeyError)):
            raise
        raise RenderError(f"{place or template}: {problem}; mend the template or remove it") from problem


def _place_in_template(problem: BaseException) -> tuple[str, bool]:
    """FILE:LINE of the template in which an error arose, and whether it arose
    there and not in the program that the template called.

    Jinja2 puts the template's own file and line into the traceback.
    """
    place, innermost = "", False
    trace = problem.__traceback__
    while trace is not None:
        file = trace.tb_frame.f_code.co_filename
        innermost = file.endswith(".j2")
        place = f"{file}:{trace.tb_lineno}" if innermost else place
        trace = trace.tb_next
    return place, innermost
