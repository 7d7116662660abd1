"""The kind "sight-check" in French: the reader is told to check by eye."""

from __future__ import annotations

from collections.abc import Iterator

from handouts.wording.grammar import Phrases
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.lexicons.fr import LEXICON
from handouts.wording.prose import Sentence

_PHRASES = Phrases(
    LEXICON,
    plain="""
    [ @look|@check|mire|mirez vous|toi? dans le|la|un|l|votre @mirror ]
    [ dans le|la|votre @mirror ]
    [ devant le|la|un|une @mirror ]
    [ ne|n devez|dois|pouvez|peux|devriez|verrez|verras|doit plus|pas voir? ses|vos|tes orteils|pieds|genoux|mains|talons ]
    [ ne|n voyez|vois plus|pas vos|tes|les _ ]
    [ devez|dois|devriez|pouvez voir vos|tes|votre|ton|les _ ]
    [ gardez|garde|garder|gardant un œil|oeil sur ]
    [ ne|n quittez|quitte pas _*2 des yeux ]
    [ sans quitter _*3 des yeux ]
    [ suivez|suis|suivre _*2 des yeux ]
    [ jetez|jette|jeter un coup d œil|oeil ]
    [ du|d un? regard ] la|le|les|que|l
    [ du coin de l œil|oeil ]
    [ @check à l œil|oeil nu? ]
    [ à l œil|oeil nu ]
    [ @check visuellement ]
    [ visuellement ]
    [ @look|@check l|la|le|votre|ta|ton @clock ]
    [ @look|@check le|la|les|l|un chiffre|chiffres|numéro|nombre|étiquette|poids|inscription|mention|indication|valeur|fiche|carte ] !avec|en|sous
    [ @look si|que ]
    [ suivez|suis|suivre|fixez|fixe|fixer l|le|la|les @clock ]
    [ gardez|garde|garder les|le yeux|regard sur|fixés ]
    [ doit|doivent? rester|reste|restent|être visible|visibles ]
    [ cacher|cachent|cache vos|tes orteils|pieds|genoux ]
    [ ne|n*2 doit|doivent|faut pas|plus voir ]
    [ @check du coin de l œil|oeil ]
    [ voyez|vois si ] le|la|les|l|votre|vos|ton|ta|tes
    [ @look ] vos|tes pieds|genoux|mains|orteils|épaules
    [ @check que la|votre peau ]
    """,
)


def find(sentence: Sentence) -> Iterator[Span]:
    """The marked words of a sentence."""
    for first, last, _ in _PHRASES.find(sentence):
        yield first, last


def suggest(sentence: Sentence, first: int, last: int) -> str:
    """What to write instead of the marked words."""
    words = frozenset(sentence.words[first:last])
    if words & LEXICON.classes["clock"]:
        return "Let the time be heard or counted: 'comptez dix respirations', 'jusqu'au bip du minuteur'."
    return "Check by touch: 'posez une main sur le genou et sentez qu'il est au-dessus des orteils'."


SIGHT_CHECK = Kind(
    name="sight-check",
    strength="blocks",
    what="The reader is told to check by eye.",
    why="Asks the reader to check by eye.",
    suggest=suggest,
    find=find,
    flag=(
        "[[Regardez-vous dans le miroir]].",
        "[[Gardez un œil]] sur la pendule.",
        "[[Lisez le chiffre]] sur le disque.",
        "Vous [[ne devez plus voir vos orteils]].",
        "[[Vérifiez visuellement]] la position.",
    ),
    leave=(
        "Sentez que le genou est au-dessus des orteils.",
        "Vous verrez la différence dans un mois.",
        "Voyez votre médecin avant de commencer.",
        "Regardons ensemble votre programme.",
    ),
)
