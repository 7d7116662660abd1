"""The kind "demonstration" in French: the movement is shown, not said."""

from __future__ import annotations

from collections.abc import Iterator

from handouts.wording.grammar import Phrases, clause_starts
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.lexicons.fr import LEXICON
from handouts.wording.prose import PAUSES, Sentence

_PHRASES = Phrases(
    LEXICON,
    so="""
    [ comme ça|ceci|cela ] !que|qu
    [ de cette façon|manière|sorte|manière-là|façon-là ]
    [ de la sorte ]
    [ ainsi ] $
    """,
    shown="""
    [ comme sur|chez? moi ]
    [ comme mon|ma|mes _ ] $
    [ prends|prenez exemple sur moi|lui|elle ]
    [ calque|calquez|règle|réglez|aligne|alignez _*3 sur moi|les|le|la miens|mien|mienne|miennes? ]
    [ fais|faites|faire|idem|la|le|même*3 pareil ] que
    [ refais|refaites|refaire|reproduis|reproduisez|répète|répétez|copiez ce que je|j _*4 faire|fais|fait|montre ]
    [ vous|tu|on l avez|as|a vu ]
    [ @look ] ,|?|!
    , [ @look ] ,|.|:
    [ voyez|vois comme|comment ]
    [ fais|faites|faire|refaites|refais comme moi ]
    [ que moi ] $
    [ de la même façon|manière que moi ]
    [ la même chose|position que moi ]
    [ pareil que moi ]
    [ comme|que le|la|les mien|mienne|miens|miennes ]
    [ comme|ce|que|dont que? je|j l|le|la|les|vous|te|t? viens de le|la|les|vous|te? montrer|faire ]
    [ comme|ce|que|dont que? je|j le|la|les|vous|te|l|t*2 fais|montre|tiens|plie|lève|place|pose|montrais ]
    [ comme|ce|que|dont que? je|j le|la|les|vous|te|l|t*2 ai fait|montré|tenu ]
    [ comme on|nous vous|te|l? a|avons? montré|vu ]
    [ comme vous|tu|on l|le|la|pouvez|peux|peut*2 voyez|vois|voit|voir ]
    ^ [ vous voyez ] !que|qu|un|une|votre|le|la|les|des
    ^ [ tu vois ] !que|qu|un|une|ton|le|la|les|des
    [ tel|telle que montré|montrée ]
    [ je|j te|vous|t montre|montrerai|fais voir? ]
    [ je|j|on montre ] !que|qu|du
    [ @look bien|moi|nous ]
    [ @look bien? comment|comme ]
    [ @look bien? ] mon|ma|mes
    [ @look moi|nous bien? ] faire|descendre|monter|pousser
    [ @copy moi|nous ]
    [ @copy ] mon|ma|mes
    [ @look|@copy bien? ce que je fais ]
    [ suis|suivez mes mouvements|gestes ]
    [ voilà|voici comment|comme je|on ]
    [ à ma façon|manière ]
    """,
)


def find(sentence: Sentence) -> Iterator[Span]:
    """The marked words of a sentence."""
    for first, last, note in _PHRASES.find(sentence):
        if note != "so" or not _says_thus(sentence, first, last):
            yield first, last


def _explained(sentence: Sentence, first: int, last: int) -> bool:
    """Whether words that no phrase found are only a "thus"."""
    return sentence.words[first] in ("comme", "ainsi") and _says_thus(sentence, first, last)


def _says_thus(sentence: Sentence, first: int, last: int) -> bool:
    """Whether "comme ça" means "thus", after words that have said the movement."""
    words = sentence.words
    if clause_starts(sentence, first) and last < len(words) and words[last] in (",", ":"):
        return first == 0  # "Comme ça, votre épaule reste basse."
    if first > 1 and words[first - 2] == "en":  # "Faites-en quatre comme ça."
        return True
    if (
        words[first] in ("comme", "de")
        and first > 0
        and words[first - 1] in ("est", "large", "haut", "grand", "longtemps", "toujours")
    ):
        return True
    return words[first] == "ainsi" and first > 0 and words[first - 1] in PAUSES


def suggest(sentence: Sentence, first: int, last: int) -> str:
    """What to write instead of the marked words."""
    return (
        "Say in words which part of the body goes where and what it touches at the end: "
        "'jusqu'à ce que le coude droit touche les côtes'."
    )


DEMONSTRATION = Kind(
    name="demonstration",
    strength="blocks",
    what="The movement is shown, not said.",
    why="The movement is shown here, not said: a reader who is not watching has nothing to follow.",
    suggest=suggest,
    find=find,
    harmless=_explained,
    flag=(
        "Pliez le bras [[comme ça]].",
        "[[Regardez comment]] je pose le pied.",
        "[[Faites comme moi]] : un pas en arrière.",
        "Tournez le poignet [[comme je le fais]].",
        "[[Comme vous le voyez]], le dos reste long.",
        "Placez le coude [[ainsi]].",
    ),
    leave=(
        "Comme ça, le poids reste près du corps.",
        "Le buste est droit comme un mur.",
        "Faites-en trois comme ça.",
        "C'est comme ça que l'on gagne en force.",
        "Comme indiqué plus haut, soufflez.",
        "Comme je vous l'ai expliqué, le talon reste au sol.",
    ),
)
