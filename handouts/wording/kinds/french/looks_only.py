"""The kind "looks-only" in French: a thing is told apart only by colour, shine or printed mark."""

from __future__ import annotations

from collections.abc import Iterator

from handouts.wording.grammar import Phrases
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.lexicons.fr import LEXICON
from handouts.wording.prose import Sentence

_PHRASES = Phrases(
    LEXICON,
    printed="""
    [ le|la|les|l|un|une|cette|ce|ces @printed @colour ]
    """,
    thing="""
    @kit [ @colour|@shine ]
    le|la|les|l @kit _ [ @colour ]
    @move|prends|prenez|prendre|choisis|choisissez|saisis|saisissez|attrape|attrapez|utilise|utilisez _*3 , pas le|la|les [ @colour ]
    , pas|et|ou|non le|la|les [ @colour ]
    prends|prenez|prendre|choisissez|saisissez|attrapez|utilisez|passez le|la|les [ @colour ]
    partie|côté|face|bout|extrémité [ @colour|@shine|imprimé|imprimée ]
    """,
)
_FELT = LEXICON.mask("felt")


def find(sentence: Sentence) -> Iterator[Span]:
    """The marked words of a sentence."""
    if any(bits & _FELT for bits in sentence.classes) and not _FELT_ELSEWHERE.intersection(sentence.words):
        return
    for first, last, _ in _PHRASES.find(sentence):
        yield first, last


# Sides of the body are no property of a thing that is told apart.
_FELT_ELSEWHERE = frozenset(("gauche", "droite", "main"))


def suggest(sentence: Sentence, first: int, last: int) -> str:
    """What to write instead of the marked words."""
    return "Tell it by touch or by name: 'l'élastique le plus épais', 'celui à un nœud', 'la bande en relief'."


LOOKS_ONLY = Kind(
    name="looks-only",
    strength="blocks",
    what="A thing is told apart only by colour, shine or printed mark.",
    why="The thing is told apart by its looks alone.",
    suggest=suggest,
    find=find,
    flag=(
        "Prenez la bande [[jaune]].",
        "Mettez le pied sur [[le trait blanc]].",
        "Tenez le bout [[brillant]].",
        "L'haltère [[gris]] va dans la main gauche.",
    ),
    leave=(
        "Prenez la bande légère (un nœud, jaune).",
        "Votre médecin donne son feu vert.",
        "Un café noir le matin.",
        "Prenez l'élastique le plus épais, le noir.",
    ),
)
