"""The page for a screen reader: one self-contained HTML file.

It reads itself out in full words, holds the log as a form, and asks nothing of
a network: a policy in its head forbids it to load anything at all.
"""

from __future__ import annotations

import base64
import hashlib
import importlib.metadata
import json
import re
from dataclasses import dataclass

from handouts.forms import Look, Rendered
from handouts.forms.templating import fill, filled
from handouts.handout import Handout, Heading, Line, LogSheet, Section, walk
from handouts.languages import phrases
from handouts.models import ScreenForm

_ANCHOR = re.compile(r"exercise-(?P<number>\d+)$|(?:warm-up|cool-down)-(?P<exercise>[a-z0-9-]+)$")


@dataclass(frozen=True)
class Question:
    """What a reader may ask about one exercise.

    entry: the number of the exercise on the log, or its id where it has none.
    exercise: its id.  title: its heading.
    parts: (end of the part's anchor, its heading), such as "start-position".
    """

    entry: str
    exercise: str
    title: Line
    parts: tuple[tuple[str, Line], ...]


def render(handout: Handout, form: ScreenForm, look: Look) -> Rendered:
    """The page as UTF-8 bytes; it has no pages of paper."""
    asked = _questions(handout)
    script = filled(look, "screen.js.j2", handout)
    html = fill(
        look, "screen.html.j2", handout, form, {"style": "screen.css.j2"},
        log_template="screen_log.html.j2", after_section="screen_question.html.j2", fits=lambda table: True, scrolls=True,
        script=script, key=_key(script, handout), questions=lambda section: asked.get(section.heading.anchor),
        spoken=json.dumps(_spoken(handout.language), ensure_ascii=False, sort_keys=True),
    )
    return Rendered(html.encode("utf-8"), 0)


def _spoken(language: str) -> dict[str, str]:
    """The phrases that the page's script says."""
    table = phrases(language).table
    own = ("screen_", "logtext_", "min_", "s_")
    named = ("label_client", "label_session", "log_date")
    return {key: text for key, text in table.items() if isinstance(text, str) and (key.startswith(own) or key in named)}


def versions() -> dict[str, str]:
    return {"jinja2": importlib.metadata.version("jinja2")}


def _key(script: str, handout: Handout) -> str:
    """The word by which the page's one script is known.

    It comes from all that stands in the page, so no text in the page can hold it.
    """
    return base64.b64encode(hashlib.sha256(f"{script}\0{handout!r}".encode()).digest()).decode()


def _questions(handout: Handout) -> dict[str, Question]:
    """Anchor of an exercise's section to what may be asked about it; none on a
    sheet without a log, since a question goes home with the log."""
    nodes = list(walk(handout.blocks))
    ids = {str(entry.number): entry.key for sheet in nodes if isinstance(sheet, LogSheet) for entry in sheet.entries}
    found: dict[str, Question] = {}
    for section in (node for node in nodes if isinstance(node, Section) and ids):
        anchor = section.heading.anchor
        named = _ANCHOR.match(anchor)
        entry = named and (named["number"] or named["exercise"])
        exercise = entry and ids.get(entry, named["exercise"] if named else "")
        if entry and exercise:
            parts = tuple(
                (block.anchor.removeprefix(f"{anchor}-"), block.content)
                for block in section.blocks
                if isinstance(block, Heading) and block.level == section.heading.level + 1
            )
            found[anchor] = Question(entry, exercise, section.heading.content, parts)
    return found
