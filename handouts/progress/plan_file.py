"""The file of a next plan: the old one's text with what changes, and why.

Comments of the trainer stay where they stood; those that an earlier `next`
wrote are taken out first.  The text is read again like any other plan file,
and must say exactly what was proposed.
"""

from __future__ import annotations

import io
import re
import textwrap
from collections.abc import Iterator
from typing import Any

from handouts.amounts import AskedLoad
from handouts.coaching.rules import rules
from handouts.models import OneOrTwoSided, PlanFacts
from handouts.progress.next_plan import Edit, NextPlan, levels_changed
from handouts.reading.plan import plan_from
from handouts.reading.yaml_text import read_yaml

_OWN = "next: "
"""Begins every comment that is written here."""

_OWN_LINE = re.compile(rf"^\s*# {_OWN}.*\n", re.MULTILINE)
_WIDTH = 92


def plan_text(proposed: NextPlan, old: str) -> str:
    """The text of the file for the next version.

    old: the text of the file that it comes from.
    Raises AssertionError when the text does not say what was proposed, a bug.
    """
    from ruamel.yaml import YAML

    yaml = YAML()
    yaml.preserve_quotes = True
    yaml.width = 4096
    yaml.indent(mapping=2, sequence=4, offset=2)
    document = yaml.load(_OWN_LINE.sub("", old))
    _name(document, proposed.facts)
    for change in proposed.changes:
        why = (f"{change.what}: {change.why}", *((change.warning,) if change.warning else ()), f"Rule: {change.rule}.")
        for edit in change.edits:
            _set(document, edit, proposed, " ".join(why))
        if change.load:
            _ask(document, *change.load, " ".join(why))
    file = io.StringIO()
    yaml.dump(document, file)
    text = _head(proposed) + file.getvalue()
    read = plan_from(read_yaml(text, proposed.before.path), proposed.before.path).facts
    assert read == proposed.facts, "the file of the next plan says something else than was proposed"
    return text


def _name(document: Any, facts: PlanFacts) -> None:
    """Code, version, whose it is, dates; the note was about the version before."""
    document["plan"], document["version"] = facts.plan, facts.version
    document["date"] = facts.date
    if facts.review_by:
        document["review by"] = facts.review_by
    document.pop("note", None)
    for key in ("for", "after"):
        document.pop(key, None)
    at = list(document).index("version") + 1
    document.insert(at, "for", facts.client)
    assert facts.after is not None
    document.insert(at + 1, "after", {"plan": facts.after.plan, "version": facts.after.version})


def _set(document: Any, edit: Edit, proposed: NextPlan, why: str) -> None:
    block = document
    for step in edit.place[:-1]:
        block = block[step]
    key = edit.place[-1]
    if edit.written is None:
        block.pop(key, None)
        return
    if isinstance(block.get(key), dict):
        for level in _levels(edit, proposed):
            block[key][f"level {level}"] = edit.written
    elif key in block:
        block[key] = edit.written
    else:
        block.insert(list(block).index("dose") + 1, key, edit.written)
        return
    depth = 2 * (len(edit.place) - 1) if len(edit.place) > 1 else 0
    _comment(block, key, why, depth)


def _levels(edit: Edit, proposed: NextPlan) -> tuple[int, ...]:
    model: Any = proposed.before.facts
    for step in edit.place:
        model = model[step] if isinstance(step, int) else getattr(model, step.replace(" ", "_"))
    return levels_changed(model, proposed.before_session.level)


def _ask(document: Any, exercise: str, load: OneOrTwoSided, why: str) -> None:
    from ruamel.yaml.comments import CommentedMap

    if "loads" not in document:
        before = "warm-up" if "warm-up" in document else "session"
        document.insert(list(document).index(before), "loads", CommentedMap())
    sides = {"left": getattr(load, "left", None), "right": getattr(load, "right", None)}
    if isinstance(load, AskedLoad):
        document["loads"][exercise] = str(load)
    else:
        document["loads"][exercise] = CommentedMap((side, str(asked)) for side, asked in sides.items() if asked)
    _comment(document["loads"], exercise, why, 2)


def _comment(block: Any, key: str | int, words: str, indent: int) -> None:
    lines = [_OWN + line for line in textwrap.wrap(words, _WIDTH - indent - len(_OWN) - 2, break_on_hyphens=False)]
    block.yaml_set_comment_before_after_key(key, before="\n".join(lines), indent=indent)


def _head(proposed: NextPlan) -> str:
    """What the file is, what it changes, and what stays and why."""
    return "".join(
        f"# {_OWN}{line}\n" for words in _sentences(proposed) for line in textwrap.wrap(words, _WIDTH - len(_OWN) - 2, break_on_hyphens=False)
    )


def _sentences(proposed: NextPlan) -> Iterator[str]:
    facts, before = proposed.facts, proposed.before
    yield (
        f"proposed for {facts.client} with the aim '{proposed.aim}', from {before.path}. "
        f"Read it and change what you like; it is no advice on health."
    )
    for change in proposed.changes:
        yield f"- {change.exercise}: {change.what}. Rule '{change.rule}' ({rules()[change.rule].source})."
    if proposed.target:
        yield proposed.target
    for kept in proposed.kept:
        yield f"- {kept.exercise} stays: {kept.why}"
