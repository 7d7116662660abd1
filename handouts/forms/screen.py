"""The page for a screen reader: one self-contained HTML file."""

from __future__ import annotations

import importlib.metadata

from handouts.forms import Look, Rendered
from handouts.forms.templating import fill
from handouts.handout import Handout
from handouts.models import ScreenForm


def render(handout: Handout, form: ScreenForm, look: Look) -> Rendered:
    """The page as UTF-8 bytes; it has no pages of paper."""
    html = fill(
        look, "screen.html.j2", "screen.css.j2", handout, form,
        log_template="screen_log.html.j2", fits=lambda table: True,
    )
    return Rendered(html.encode("utf-8"), 0)


def versions() -> dict[str, str]:
    return {"jinja2": importlib.metadata.version("jinja2")}
