"""The kind "viewer" in French: a direction taken from the watcher, the camera, the screen or the writer."""

from __future__ import annotations

from collections.abc import Iterator

from handouts.wording.grammar import Phrases
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.lexicons.fr import LEXICON
from handouts.wording.prose import Sentence

_PHRASES = Phrases(
    LEXICON,
    plain="""
    [ tournez|tourne|tourner vous|toi vers moi|nous ]
    [ vers moi|nous ]
    [ loin|près|autour de moi|nous ]
    approche|approchez|éloigne|éloignez|rapproche|rapprochez|écarte|écartez vous|toi? [ de|du la|l|le*2 @screen ]
    approche|approchez|éloigne|éloignez|rapproche|rapprochez|écarte|écartez vous|toi? [ de moi|nous ]
    [ le|la mur|porte|fenêtre|côté derrière|devant moi ]
    [ vers|devant|contre|face le|la|l|mon|ma|au|à*2 @screen ]
    [ face à|au l|la|le? @screen ]
    [ face caméra|écran ]
    [ face à moi|nous ]
    [ face au public|groupe|groupe ]
    [ dos à|au moi|nous|public|groupe ]
    [ dos à la|l @screen ]
    [ devant|derrière moi ]
    [ à|vers|sur|de ma gauche|droite ]
    [ à ma main? gauche|droite ]
    [ de|vers|sur mon côté gauche|droit? ]
    [ à|sur|vers|de la? gauche|droite|haut|bas de l écran ]
    [ en haut|bas de l écran ]
    [ le|la côté|partie gauche|droit|droite de l écran ]
    [ côté caméra|écran ]
    [ pour que je|j|l _*2 voie|voit|vois|puisse|filme|voir ]
    [ afin que je|j _*2 voie|puisse ]
    [ que je vous|te voie|vois ]
    [ vu|vue|vus de face|profil|dos ] $
    """,
)


def find(sentence: Sentence) -> Iterator[Span]:
    """The marked words of a sentence."""
    for first, last, _ in _PHRASES.find(sentence):
        yield first, last


def suggest(sentence: Sentence, first: int, last: int) -> str:
    """What to write instead of the marked words."""
    return "Take the direction from the reader's own body: 'vers votre droite', 'vers 3 heures', 'face au mur que vous touchez'."


VIEWER = Kind(
    name="viewer",
    strength="blocks",
    what="A direction taken from the watcher, the camera, the screen or the writer, not from the reader's body.",
    why="The direction starts from someone who watches, and the reader does not know where they are.",
    suggest=suggest,
    find=find,
    flag=(
        "Tournez la paume [[vers la caméra]].",
        "Avancez [[vers moi]].",
        "Levez le bras [[à ma gauche]].",
        "Le pied [[à droite de l'écran]] recule.",
        "Pivotez [[pour que je voie]] votre dos.",
    ),
    leave=(
        "Amenez le poids vers votre poitrine.",
        "Placez-vous face au mur que vous touchez.",
        "Tournez le pied droit vers 1 heure.",
        "Ma hanche droite va mieux.",
    ),
)
