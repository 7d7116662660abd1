"""The kind "picture" in French: sends the reader to a picture, diagram, arrow, video or screen."""

from __future__ import annotations

from collections.abc import Iterator

from handouts.wording.grammar import Phrases
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.lexicons.fr import LEXICON
from handouts.wording.prose import Sentence

_PHRASES = Phrases(
    LEXICON,
    plain="""
    voir|voyez|vois|@look|@check|suivez|suis|suivre|lancez|lance|ouvrez|ouvre|référez|reportez|comparez|agrandissez _*2 [ @det @picture numéro|1|2|3|4|5|6|a|b|c*2 ] !que|mentale
    voir|voyez|@look [ @picture ]
    <!en [ sur|dans|selon|d l|le|la|les|cette|ce|ces|une|un @picture ] !de|du|d|que|mentale
    sur|dans [ le|la|les|l @picture ]
    [ en vidéo|images|photo|photos ]
    appuie|appuyez|appuyer|clique|cliquez|cliquer vous|toi? sur [ @det @picture ]
    [ @det @picture ] donne|donnent|résume|résument|détaille|détaillent|complète|complètent
    d après [ @det @picture ]
    <!@look|mon|ton|votre [ le|la|l|les|cette|ce @picture du|de|d*2 haut|bas|gauche|droite|dessus|dessous|gauche ]
    [ le|la|l|les|cette|ce|ces @picture ] du|de|d|numéro|_*2 montre|montrent|indique|indiquent|donne|présente|illustre|précise|décrit
    [ illustré|illustrée|illustrés|montré|montrée|montrés|représenté|représentée|dessiné|dessinée|visible|indiqué|présenté ci-dessous|ci-dessus|ci-contre|ci-après ]
    [ voir|cf ci-dessous|ci-contre|ci-dessus ]
    <!face [ à l écran ]
    [ la|le|l|les figure|image|photo|schéma|dessin|vignette|planche numéro|n? 1|2|3|4|5|6|7|8|9|10|un|deux|trois|a|b|c ]
    [ la|les flèche|flèches ]
    """,
)


def find(sentence: Sentence) -> Iterator[Span]:
    """The marked words of a sentence."""
    for first, last, _ in _PHRASES.find(sentence):
        yield first, last


def suggest(sentence: Sentence, first: int, last: int) -> str:
    """What to write instead of the marked words."""
    return "Say in words what the picture shows: which part of the body goes where, and how far."


PICTURE = Kind(
    name="picture",
    strength="blocks",
    what="Sends the reader to a picture, diagram, arrow, video or screen.",
    why="Sends the reader to a picture or screen that they cannot use.",
    suggest=suggest,
    find=find,
    flag=(
        "Placez le pied comme [[sur la photo]].",
        "Suivez [[les flèches]].",
        "Le départ est [[montré ci-dessous]].",
        "Reportez-vous à [[la figure 2]].",
        "[[Le schéma]] montre la prise.",
    ),
    leave=(
        "Imaginez une porte derrière vous.",
        "Gardez en tête une image claire du geste.",
        "Le schéma de la semaine ne change pas.",
        "Consultez d'abord votre médecin.",
    ),
)
