"""The parts of an exercise text: all there, in order, and each with what it must say."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from handouts.wording.whole_text.check import Check, Flaw
from handouts.wording.whole_text.document import Document, Part, part_headings

_WEIGHTS = ("dumbbell", "pair of dumbbells")

# What a part must say, by one of these words at least.  A part without any of
# them leaves the reader without it; one that has them may still do.
_SAYING = {
    "en": {
        "end point": r"until|till|stop|when|as far as|touch\w*|reach\w*|level with|straight|pass|passes|at the top|hold|stay|count|start",
        "way out": r"stop\w*|at any (?:moment|time)|any time|end|finish\w*|come down|rest|break off|terminat\w+|ceas\w+|quit|discontinu\w+",
        "weight down": r"floor|ground|rack|put|set|lay|lower|let go|place|slide|rest|down|bench|seat|thighs?|mat",
        "feet": r"foot|feet|heels?|toes|soles?",
        "shoulders": r"(?:both|your)\s+shoulders|(?:your|the)\s+chin",
    },
    "fr": {
        "end point": r"jusqu['’]\w*|arrêt\w+|quand|lorsqu\w*|touch\w+|à hauteur|tendu\w*|attei\w+|niveau|gard\w+|rest\w+|le temps",
        "way out": r"arrêt\w+|à tout moment|fini\w*|termin\w+|cess\w+|interromp\w+|repos\w+",
        "weight down": r"sol|pos\w+|dépos\w+|lâch\w+|plac\w+|gliss\w+|repos\w+|banc|siège|cuisses?|tapis|descend\w+",
        "feet": r"pieds?|talons?|orteils|plantes?",
        "shoulders": r"(?:les|vos)\s+(?:deux\s+)?épaules|le\s+menton",
    },
}


@cache
def _says(what: str, language: str) -> re.Pattern[str]:
    return re.compile(
        rf"(?<!high as )(?<!level with )(?<!height of )\b(?:{_SAYING[language][what]})(?!\w)", re.IGNORECASE
    )


def _find_parts(document: Document) -> Iterator[Flaw]:
    if not document.is_exercise:
        return
    headings = part_headings(document.language)
    order = list(headings)
    known = [part for part in document.parts if part.name]
    first: dict[str, Part] = {}
    latest = -1
    for part in known:
        at = order.index(part.name)
        words = headings[part.name]
        if part.name in first:
            yield Flaw(
                part.start, part.heading_end, f"The part '{words}' stands here a second time.", "Put the two together."
            )
            continue
        first[part.name] = part
        if at < latest:
            before = headings[order[latest]]
            after = f"after '{headings[order[at - 1]]}'" if at else "as the first part"
            yield Flaw(
                part.start,
                part.heading_end,
                f"'{words}' stands after '{before}'; a person does it before.",
                f"Put it {after}.",
            )
        latest = max(latest, at)
        if not document.prose[part.heading_end : part.end].strip():
            yield Flaw(
                part.start, part.heading_end, f"Nothing stands below '{words}'.", "Write the words of this part."
            )
    for at, name in enumerate(order):
        if name not in first:
            after = f"after '{headings[order[at - 1]]}'" if at else "as the first part"
            start, end = _where(document, known, order, at)
            yield Flaw(start, end, f"The part '{headings[name]}' is missing.", f"Write '## {headings[name]}' {after}.")


def _where(document: Document, known: list[Part], order: list[str], at: int) -> tuple[int, int]:
    """The heading that a missing part belongs before, or else the last one."""
    for part in known:
        if order.index(part.name) > at:
            return part.start, part.heading_end
    if document.parts:
        return document.parts[-1].start, document.parts[-1].heading_end
    return (document.pieces[0].start, document.pieces[0].end) if document.pieces else (0, 0)


def _find_contents(document: Document) -> Iterator[Flaw]:
    language = document.language
    movement, finish = document.part("Movement"), document.part("Finish")
    prose = document.prose
    if movement and not _holds("end point", prose, movement, language):
        yield Flaw(
            movement.start,
            movement.heading_end,
            "The movement has no end point that can be felt.",
            "Say where it stops: 'until your right elbow touches the floor'.",
        )
    if finish and not _holds("way out", prose, finish, language):
        yield Flaw(
            finish.start,
            finish.heading_end,
            "This part does not say how to stop.",
            "Say how to stop at any moment, in the middle of a repetition too.",
        )
    if (
        finish
        and any(item in _WEIGHTS for item in document.facts.equipment)
        and not _holds("weight down", prose, finish, language)
    ):
        yield Flaw(
            finish.start,
            finish.heading_end,
            "This part does not say where the weight goes.",
            "Say how it is set down and where, as an hour of the clock and in foot lengths.",
        )
    yield from _find_upside_down(document)


def _holds(what: str, prose: str, part: Part, language: str) -> bool:
    return bool(_says(what, language).search(prose, part.heading_end, part.end))


def _find_upside_down(document: Document) -> Iterator[Flaw]:
    """Shoulders and head set before the feet, in the start position."""
    feet, shoulders = _says("feet", document.language), _says("shoulders", document.language)
    first = None
    for piece in document.pieces_of("Start position"):
        if feet.search(piece.text):
            if first:
                yield Flaw(
                    first.start,
                    first.end,
                    "The shoulders or the head are set before the feet.",
                    "Go from the ground up: feet, knees, hips, back, shoulders, arms, hands.",
                )
            return
        if first is None and shoulders.search(piece.text):
            first = piece


_WHOLE = (
    "## Equipment\n\nA firm chair.\n\n## Start position\n\n1. Sit with both feet flat.\n2. Draw both shoulders down.\n\n"
    "## Movement\n\n1. Stand up until both knees are straight.\n2. Sit down.\n\n## Breathing\n\nBreathe out as you rise.\n\n"
    "## Count\n\nOnce up and down counts one.\n\n## Key points\n\n- Both heels stay down.\n\n## Easier\n\n- **Higher seat.** "
    "Sit on a firm cushion.\n\n## Harder\n\n- **Slow.** Take four counts.\n\n## Finish\n\n1. Sit down to stop at any moment.\n"
)

PARTS = Check(
    name="parts",
    strength="blocks",
    what="A part of an exercise text is missing, empty, there twice or not in its place. The parts are: equipment, start "
    "position, movement, breathing, count, key points, easier, harder, finish.",
    why="Who cannot skim a page needs each thing at the moment when it is done. A grip described before the weight is found, or "
    "no way to stop, costs the whole exercise.",
    everywhere=True,
    find=_find_parts,
    flag=(
        _WHOLE.replace("## Breathing\n\nBreathe out as you rise.\n\n", ""),
        _WHOLE.replace("Once up and down counts one.", ""),
        _WHOLE.replace("## Equipment\n\nA firm chair.\n\n", "").replace(
            "## Movement", "## Equipment\n\nA chair.\n\n## Movement"
        ),
        _WHOLE + "\n## Count\n\nOnce more.\n",
    ),
    leave=(_WHOLE, "# Notes of the week\n\nNew mats have come.\n\n## Rooms\n\nThe small one is free.\n"),
)

COMPLETENESS = Check(
    name="completeness",
    strength="advice",
    what="A movement without an end point that can be felt, a finish that does not say how to stop or where the weight goes, or a "
    "start position that sets the shoulders before the feet.",
    why="Without these the reader has to guess, or is stuck with a weight in hand.",
    everywhere=True,
    find=_find_contents,
    flag=(
        _WHOLE.replace("Stand up until both knees are straight.", "Stand up."),
        _WHOLE.replace("Sit down to stop at any moment.", "Well done."),
        "---\ntitle: Press\nsides: together\nequipment:\n  - dumbbell\n---\n"
        + _WHOLE.replace("Sit down to stop at any moment.", "You can stop at any moment."),
        _WHOLE.replace("Sit with both feet flat.", "Draw both shoulders down.").replace(
            "2. Draw both shoulders down.", "2. Set both feet are flat."
        ),
    ),
    leave=(_WHOLE,),
)
