"""One line a finding: first its place, then its kind, then the words.

Made to be heard: the word that tells most comes first, no line depends on the
one before, and nothing is said by colour alone.
"""

from __future__ import annotations

from collections.abc import Iterator

from handouts.wording.checking import Checked, CheckedText, Finding, counted
from handouts.wording.engine import CLOSELY_UP_TO

_LONGEST = 70
"""Characters of the author's words that a line repeats."""

_BOLD, _RED, _YELLOW, _PLAIN = "\x1b[1m", "\x1b[31m", "\x1b[33m", "\x1b[0m"


def report_text(checked: Checked, colour: bool = False) -> Iterator[str]:
    """The lines of a run's findings.

    colour: for a terminal, as an extra.
    """
    for text in checked.texts:
        for finding in text.findings:
            yield _line(text, finding, colour)


def too_long(checked: Checked) -> Iterator[str]:
    """A line for each text that was too long for the close reading."""
    for text in checked.texts:
        if not text.closely:
            yield (
                f"{text.path}: the text is longer than {CLOSELY_UP_TO:,} characters, so it was read less closely and more"
                " may be missed; to have it read closely, cut it into shorter files"
            )


def summary(checked: Checked) -> str:
    """One line about the whole run."""
    texts = len(checked.texts)
    counts = counted(checked.texts)
    allowed = sum(len(text.allowed) for text in checked.texts)
    said = [
        f"{counts['blocks']} that {'blocks' if counts['blocks'] == 1 else 'block'}",
        f"{counts['advice']} of advice",
    ]
    line = f"{texts} {'text' if texts == 1 else 'texts'} checked: "
    line += ", ".join(said) if any(counts.values()) else "nothing to change"
    if allowed:
        line += f", {allowed} let stand with a reason"
    if checked.faults:
        line += f"; {len(checked.faults)} {'fault' if len(checked.faults) == 1 else 'faults'} in files, told above"
    return line + "."


def _line(text: CheckedText, finding: Finding, colour: bool) -> str:
    words = " ".join(finding.words.split())
    if len(words) > _LONGEST:
        words = words[: _LONGEST - 1].rstrip() + "…"
    name = f"{finding.name} {finding.strength}"
    if colour:
        name = f"{_BOLD}{_RED if finding.strength == 'blocks' else _YELLOW}{name}{_PLAIN}"
    place = f"{text.path}:{finding.line}:{finding.column}"
    return f'{place}: {name}: "{words}". {finding.suggest} {finding.why}'
