"""Fills Jinja2 templates with a Handout: sandboxed, everything escaped.

A studio's `templates/` folder is searched before the program's own.  A
template sees these values and no others:

handout: the Handout tree.  words: the Phrases of its language.
form: the client's settings for this form.  title: plain text of the title.
author: who made the sheet.  style: the style sheet, filled.
sections: the Sections at the top of the tree.  ink, paper: colours.
Filters: `kind` (name of a tree node), `tree_line` (a Line as text).
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any

import jinja2
from jinja2.sandbox import ImmutableSandboxedEnvironment

from handouts import carried
from handouts.errors import RenderError
from handouts.forms import Look
from handouts.forms.log_fields import unit_of
from handouts.handout import Handout, Line, Section, plain
from handouts.languages import phrases


@lru_cache(maxsize=8)
def _environment(look: Look) -> ImmutableSandboxedEnvironment:
    environment = ImmutableSandboxedEnvironment(
        loader=jinja2.ChoiceLoader(
            [
                jinja2.DictLoader(dict(look.overrides)),
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
    environment.filters["pt"] = _points
    return environment


def _tree_line(line: Line, long: bool = False) -> str:
    return plain(line, long)


def _points(length: float) -> str:
    return f"{length:.1f}pt"


def fill(look: Look, template: str, style: str, handout: Handout, form: Any, **more: Any) -> str:
    """The template filled with one Handout, its style sheet inside.

    Raises RenderError with file, line and reason for a broken template.
    """
    values: dict[str, Any] = {
        "handout": handout,
        "form": form,
        "words": phrases(handout.language),
        "title": f"{plain(handout.title)} - {handout.client}",
        "author": "handouts",
        "sections": tuple(block for block in handout.blocks if isinstance(block, Section)),
        **more,
    }
    environment = _environment(look)
    try:
        css = environment.get_template(style).render(values)
        return environment.get_template(template).render(values, style=jinja2.utils.markupsafe.Markup(css))
    except jinja2.TemplateSyntaxError as problem:
        where = problem.filename or problem.name or template
        raise RenderError(f"{where}:{problem.lineno}: {problem.message}; mend the template or remove it") from problem
    except jinja2.TemplateError as problem:
        raise RenderError(f"{template}: {problem}; mend the template or remove it") from problem
