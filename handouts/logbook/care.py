"""Which exercises a warning sign concerns, and what the trainer is told.

A warning freezes exercises until the trainer has decided; nothing here says
what is wrong with anybody.  Which regions work when a joint is loaded is
common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence

from handouts.fitting.fitted import FittedExercise
from handouts.logbook.message import Notice
from handouts.logbook.tokens import cut
from handouts.logbook.words import Words, singular

_LOADED_WITH: dict[str, tuple[str, ...]] = {
    "knee": ("thigh",),
    "shoulder": ("shoulder", "chest", "upper back"),
    "back": ("back", "trunk", "waist"),
    "wrist": ("arm", "forearm"),
    "elbow": ("arm",),
    "hip": ("hip", "buttock", "thigh"),
    "ankle": ("calves", "feet"),
    "neck": ("neck", "shoulder", "upper back"),
    "hand": ("arm", "forearm"),
    "foot": ("calves", "feet"),
}


def is_stop_sign(said: str, words: Words) -> bool:
    """Whether the words name one of the signs at which to stop for good."""
    tokens = [token.text for token in cut(said, words) if token.kind == "word"]
    for run in words.phrases("stop_signs"):
        for at in range(len(tokens)):
            piece = tuple(tokens[at : at + len(run)])
            if piece == run or tuple(map(singular, piece)) == tuple(map(singular, run)):
                return True
    return False


def concerned(said: str, exercises: Sequence[FittedExercise], words: Words) -> tuple[str, ...]:
    """Ids of the exercises that load what the words name; () where they name
    no joint, which concerns them all."""
    tokens = {singular(token.text) for token in cut(said, words) if token.kind == "word"}
    regions = [
        region
        for part, names in words.table["body"].items()
        if tokens & {singular(str(name)) for name in names}
        for region in _LOADED_WITH[part]
    ]
    return tuple(
        exercise.exercise.id
        for exercise in exercises
        if any(region in own for own in exercise.exercise.facts.regions for region in regions)
    )


def names_a_joint(said: str, words: Words) -> bool:
    return any(token.kind == "word" and words.is_body(token.text) for token in cut(said, words))


def warning_notice(said: str, frozen: tuple[str, ...], stop_sign: bool) -> Notice:
    what = f"warning sign: '{said}'. "
    what += (
        f"Frozen until you write an answer: {', '.join(frozen)}. "
        if frozen
        else "The whole session is frozen until you write an answer. "
    )
    if stop_sign:
        what += (
            "It is among the signs at which to stop. Call the client today; no training before "
            "their doctor or another licensed professional has been asked."
        )
    else:
        what += (
            "Change nothing in the plan before you have talked with the client; if the pain is new, sharp or comes back, "
            "they should ask their doctor or another licensed professional."
        )
    return Notice("stop", what, frozen)
