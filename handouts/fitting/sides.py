"""The other side of an exercise that is written for one side."""

from __future__ import annotations

import re

from handouts.mirror import mirror
from handouts.models import Exercise, ListItem, Paragraph, Side, TextBlock

__all__ = ["mirror", "mirror_exercise", "needs_two_hands", "other_side"]

_TWO_HANDS = {
    "en": re.compile(r"\bboth (?:hands|palms|fists|handles|dumbbells)\b|\btwo handles\b", re.IGNORECASE),
    "fr": re.compile(r"\b(?:les|des|vos) deux (?:mains|paumes|poings|poignées|haltères)\b", re.IGNORECASE),
}


def needs_two_hands(text: str, language: str) -> bool:
    """Whether words of an exercise text ask for two hands at once, as far as a
    few plain phrases tell; never in a language without such phrases here.  It
    is asked only where the text itself does not declare how it is held."""
    words = _TWO_HANDS.get(language)
    return words is not None and words.search(text) is not None


def other_side(side: Side) -> Side:
    return "left" if side == "right" else "right"


def mirror_exercise(exercise: Exercise) -> Exercise:
    """The same exercise written for the other side; nothing else changes."""
    language = exercise.facts.language
    facts = exercise.facts

    def swapped(text: str | None) -> str | None:
        return None if text is None else mirror(text, language)

    options = {
        name: option.model_copy(update={"title": swapped(option.title)}) for name, option in facts.options.items()
    }
    mirrored = facts.model_copy(
        update={
            "title": swapped(facts.title),
            "written_for": other_side(facts.written_for) if facts.written_for else None,
            "options": options,
            "picture": swapped(facts.picture),
        }
    )
    parts, variants = (
        tuple(part.model_copy(update={"blocks": tuple(_mirror_block(block, language) for block in part.blocks)}) for part in some)
        for some in (exercise.parts, exercise.variants)
    )
    return exercise.model_copy(update={"facts": mirrored, "parts": parts, "variants": variants})


def _mirror_block(block: TextBlock, language: str) -> TextBlock:
    if isinstance(block, Paragraph):
        return block.model_copy(update={"text": mirror(block.text, language)})
    return block.model_copy(update={"items": tuple(_mirror_item(item, language) for item in block.items)})


def _mirror_item(item: ListItem, language: str) -> ListItem:
    items = tuple(_mirror_item(inner, language) for inner in item.items)
    return item.model_copy(update={"text": mirror(item.text, language), "items": items})
