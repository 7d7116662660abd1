"""The kind "pointing" in French: a place, direction or size is pointed at."""

from __future__ import annotations

from collections.abc import Iterator

from handouts.wording.grammar import Phrases
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.lexicons.fr import LEXICON
from handouts.wording.prose import Sentence

_PHRASES = Phrases(
    LEXICON,
    place="""
    <!à|partir|en|par|jusqu|d|@stay|lorsque [ ici ] !même|présent|on|vous|nous|je|c|la|le|les
    <!partir|en|par|jusque|d|de|@stay|est|à [ là ] !où|que|qu|c|même|on|vous|nous|je|encore|aussi
    [ juste|exactement|précisément ici|là ] !où
    [ par ici|là ] !j|je|même|on|la
    [ là-bas|ci-là|jusque-là|là-haut|là-dessus|là-dedans|là-dessous ]
    [ jusqu ici ]
    [ vers ici|là ]
    [ jusqu à ce niveau|point ] !où|que
    @move _*4 [ de ça ] $
    [ de|vers ce côté-là ]
    [ dans ce sens-là ]
    [ jusque là ] !où
    <!partir [ d ici ] à|jusque|jusqu|vers
    d ici [ à là ]
    [ à là ] !où
    [ à|vers cet endroit ] précis?
    [ à cet endroit ]
    """,
    way="""
    @move vous|toi|la|le|tête? [ de ce côté ] !où
    [ dans cette direction ]
    [ dans ce sens ]
    [ vers ce côté ]
    [ à cette hauteur|distance|largeur|profondeur ]
    [ de cette hauteur|distance|largeur|longueur ]
    [ grand|grands|grande|haut|hauts|haute|large|larges|loin|bas|écarté|écartés|long comme ça|ceci|cela ]
    [ aussi|si? large|larges|haut|loin|bas|grand que ça|cela ]
    """,
)

_REACH = 7
"""Words after a pointing word in which the words that say the place must come."""


def find(sentence: Sentence) -> Iterator[Span]:
    """The marked words of a sentence."""
    for first, last, note in _PHRASES.find(sentence):
        if not _is_said(sentence, first, last, note):
            yield first, last


def _is_said(sentence: Sentence, first: int, last: int, note: str) -> bool:
    """Whether the words of the place stand beside the pointing word: "ici, contre votre hanche"."""
    words, classes = sentence.words, sentence.classes
    if first == 0 and last < len(words) and words[last] == ",":
        return True  # "Ici, tout le monde se tutoie."
    if words[last : last + 2] == ["et", "maintenant"] or words[last : last + 1] == ["pour"]:
        return True
    said = LEXICON.mask("landmark", "surface", "measure")
    at = LEXICON.mask("at")
    place = last
    if place < len(words) and words[place] in (",", ":", "—", "("):
        place += 1
    if place < len(words) and classes[place] & at:
        for one in range(place + 1, min(len(words), place + _REACH)):
            if words[one] in (".", ";", "!", "?"):
                break
            if classes[one] & said:
                return True
    # "sur la hanche, là"
    return first > 2 and words[first - 1] == "," and bool(classes[first - 2] & said) and bool(classes[first - 3] & at)


def suggest(sentence: Sentence, first: int, last: int) -> str:
    """What to write instead of the marked words."""
    words = " ".join(sentence.words[first:last])
    if "comme" in words or "hauteur" in words or "distance" in words or "large" in words:
        return "Say the size by the body: 'à la hauteur du nombril', 'à deux longueurs de pied'."
    if "côté" in words or "direction" in words or "sens" in words:
        return "Say the way by the body or by the clock: 'vers votre droite', 'vers 2 heures'."
    return "Say the place by a part of the body or a surface that is touched: 'contre la hanche droite', 'sur le bord de la chaise'."


POINTING = Kind(
    name="pointing",
    strength="blocks",
    what="A place, direction or size is pointed at, with no words that say it.",
    why="A place, direction or size is pointed at, and no words say which.",
    suggest=suggest,
    find=find,
    flag=(
        "Amenez la barre [[par ici]].",
        "Posez le talon [[là]].",
        "Ouvrez les bras [[large comme ça]].",
        "Tournez [[de ce côté]].",
        "Pas [[ici]], mais [[ici]].",
        "Descendez [[jusque-là]].",
    ),
    leave=(
        "À partir d'ici, soufflez et poussez.",
        "Posez-le ici, contre votre cuisse gauche.",
        "Restez là deux secondes.",
        "Voici le point important.",
        "Il y a deux chaises.",
        "D'ici deux mois, vous changerez de poids.",
        "Levez le genou gauche et gardez la hanche de ce côté au sol.",
    ),
)
