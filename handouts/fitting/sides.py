"""The other side of an exercise that is written for one side."""

from __future__ import annotations

from handouts.mirror import mirror
from handouts.models import Exercise, ListItem, Paragraph, Side, TextBlock

__all__ = ["mirror", "mirror_exercise", "other_side"]


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
    parts = tuple(
        part.model_copy(update={"blocks": tuple(_mirror_block(block, language) for block in part.blocks)})
        for part in exercise.parts
    )
    return exercise.model_copy(update={"facts": mirrored, "parts": parts})


def _mirror_block(block: TextBlock, language: str) -> TextBlock:
    if isinstance(block, Paragraph):
        return block.model_copy(update={"text": mirror(block.text, language)})
    return block.model_copy(update={"items": tuple(_mirror_item(item, language) for item in block.items)})


def _mirror_item(item: ListItem, language: str) -> ListItem:
    items = tuple(_mirror_item(inner, language) for inner in item.items)
    return item.model_copy(update={"text": mirror(item.text, language), "items": items})
