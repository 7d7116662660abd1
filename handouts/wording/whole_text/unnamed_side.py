"""A landmark that the body has twice, named without its side."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from typing import NamedTuple

from handouts.wording.whole_text.check import Check, Flaw
from handouts.wording.whole_text.document import Document, Piece


class _Words(NamedTuple):
    """landmark: a paired landmark in the singular with its article, "noun" its
    noun.  sided: words in the same step that settle which one is meant.
    height: words right before it that make it a height, which both sides share.
    defined: words that say once which limb works.  own: how a landmark of the
    reader's begins, which nothing said before settles.
    """

    landmark: re.Pattern[str]
    sided: re.Pattern[str]
    height: re.Pattern[str]
    defined: re.Pattern[str]
    own: str


@cache
def _words(language: str) -> _Words:
    if language == "fr":
        nouns = (
            "genou|pied|talon|cheville|mollet|cuisse|hanche|fesse|épaule|coude|poignet|main|paume|poing|avant-bras|pouce|"
            "index|oreille|tempe|aisselle|omoplate|clavicule|tibia|rotule|aine|joue|ischion"
        )
        return _Words(
            landmark=re.compile(
                rf"(?:[Vv]otre|[Tt]on|[Tt]a)\s+(?P<noun>{nouns})\b(?!-)(?!\s+(?:gauche|droite?|avant|arrière|libre|du\s+(?:haut|bas|dessus|"
                r"dessous|même)|de\s+(?:devant|derrière|son|même)|qui|en\s+appui|d['’]appui|opposée?))",
            ),
            sided=re.compile(
                r"\b(?:gauche|droite?|chaque|deux|même|autre|opposée?|l['’]un|l['’]une|celui|celle|ce|cette|libre|d['’]appui|avant|"
                r"arrière)\b",
                re.IGNORECASE,
            ),
            height=re.compile(r"(?:hauteur|niveau)\s+de\s+$", re.IGNORECASE),
            defined=re.compile(r"\b(?:la main|le bras|la jambe|le pied|le côté)\s+(?:qui|avec|sans)\b", re.IGNORECASE),
            own="",
        )
    nouns = (
        "knee|kneecap|foot|heel|ankle|calf|shin|thigh|hip|buttock|shoulder|shoulder blade|elbow|wrist|hand|palm|fist|"
        "forearm|upper arm|arm|leg|thumb|big toe|little toe|ear|ear lobe|temple|armpit|collarbone|kneecap|sit bone|hip bone|"
        "hip crease|cheekbone|instep"
    ).replace(" ", r"\s+")
    return _Words(
        landmark=re.compile(
            rf"(?:[Yy]our|[Tt]he)\s+(?P<noun>{nouns})\b(?!['’-])(?!\s+(?:lengths?|widths?|heights?|level|spans?|grip|joints?|rail|rest|strap|"
            r"of\s+(?:the|a|your)\s+(?:bed|bench|mat|page|stairs?|list|chair|clock|hand|foot|thumb|hip|shoulder|knee)|"
            r"on\s+(?:that|the\s+same|this|each|the\s+other)|above|below|that|which|nearest|closest|(?:press|raise|curl|bend)(?:es|s)?\b|"
            r"of\s+(?:that|the\s+same|this|the\s+\w+\s+(?:hand|foot|arm|leg|side))|cuff|crease|point|position|blades|points|cords|bones|"
            r"creases|lobes|blade\s+tips))",
        ),
        sided=re.compile(
            r"\b(?:each|both|either|same|other|opposite|every|whichever|alternat\w+|one\s+(?:of|dumbbell|weight|handle|end)|"
            r"(?:one|two|free|working|top|bottom|front|back|outside|inside|rear|standing|supporting|support|upper|lower|near|nearer|far|outer|"
            rf"inner|that|this|lead|leading|trailing|first|second|bent|straight|lifting|hanging)\s+(?:{nouns}|feet|calves|thighs|side|one)s?|"
            rf"(?:left|right)(?:\s+(?P<limb>{nouns}|arm|toes|fingers|fingertips|ribs))?s?)\b",
            re.IGNORECASE,
        ),
        height=re.compile(r"(?:(?:high|low|far|long|wide|big|thick)\s+as|level\s+with|(?:height|size|length|width)\s+of)\s+$", re.IGNORECASE),
        defined=re.compile(r"\bthe\s+(?:hand|arm|leg|foot|side)\s+(?:that|which|with|without)\b", re.IGNORECASE),
        own="your",
    )


_LIMBS = (
    frozenset("hand palm fist thumb wrist forearm elbow arm shoulder fingers fingertips armpit collarbone ear".split()) | {"upper arm", "shoulder blade"},
    frozenset("leg foot heel ankle calf shin thigh knee kneecap hip buttock instep toes".split()) | {"big toe", "little toe", "sit bone", "hip bone", "hip crease"},
)
"""What belongs to one arm, and to one leg."""
_WHOLE = ("arm", "leg")
"""Limbs that any side in the step settles: "the handle in your right hand, palm facing your leg"."""


def _settles(sided: re.Match[str], noun: str) -> bool:
    """Whether words with a side say it of a landmark too: "your right elbow" does of the wrist, and not of the hip."""
    limb = " ".join((sided.groupdict().get("limb") or "").lower().split())
    return not limb or noun in _WHOLE or limb == noun or any({limb, noun} <= together for together in _LIMBS)


def _find(document: Document) -> Iterator[Flaw]:
    if not document.is_exercise:
        return
    words = _words(document.language)
    told: Piece | None = None
    defined = words.defined.search(document.prose)
    for found in words.landmark.finditer(document.prose):
        piece = document.piece_at(found.start())
        if (
            piece is None
            or piece is told
            or words.height.search(document.prose, max(0, found.start() - 20), found.start())
        ):
            continue
        noun = " ".join(found["noun"].split())
        step = words.sided.finditer(document.prose, _line_start(document.prose, piece.start), piece.end)
        if any(_settles(sided, noun) for sided in step):
            continue
        if defined and defined.end() <= found.start() and not found[0].lower().startswith(words.own):
            continue  # "the hand that grips" has been said: from then on "the hand" is that one
        told = piece
        if document.language == "fr":
            example = f"'{noun} droit(e)', 'chaque {noun}' ou '{noun} du même côté'"
        else:
            example = f"'your right {noun}', 'each {noun}' or 'the {noun} on the same side'"
        yield Flaw(
            found.start(),
            found.end(),
            f"The body has two of these, and the step does not say which {noun} is meant.",
            f"Write {example}.",
        )


def _line_start(prose: str, at: int) -> int:
    """Where the line begins; a step's first sentence names the side for the whole step."""
    reach = max(0, at - _LONGEST_STEP)
    return max(reach, prose.rfind("\n", reach, at) + 1)


_LONGEST_STEP = 2000
"""Characters; no more are searched for a side."""

_FRONT = "---\ntitle: Row\nsides: each\n---\n"

UNNAMED_SIDE = Check(
    name="unnamed-side",
    strength="advice",
    what="A landmark that the body has twice, in the singular, in a step that does not say which of the two; in exercise texts.",
    why="Of two hips and two hands, two readers take different ones. The midline has no side; all else does.",
    everywhere=False,
    find=_find,
    flag=(
        _FRONT + "Put your hand on the hip.\n",
        _FRONT + "Keep your wrist against your ribs.\n",
        _FRONT + "Straighten your right elbow until the dumbbell rests on the thigh.\n",
        _FRONT + "Stay for two breaths. Press the knee down, or your back will twist.\n",
        "---\nlanguage: fr\ntitle: Rameur\nsides: each\n---\nPosez votre main sur la cuisse.\n",
    ),
    leave=(
        _FRONT + "Put your right hand on the right hip.\n",
        _FRONT + "Set each foot below the hip.\n",
        _FRONT + "Step back by one foot length.\n",
        _FRONT + "Bend your right leg until the heel touches the floor.\n",
        _FRONT + "Take a flat band, about as long as your arm.\n",
        _FRONT + "Rest both palms on your thighs.\n",
        _FRONT + "Find the hand that grips best. Press the hand down.\n",
        _FRONT + "Keep your chin one fist from your throat.\n",
        "Put your hand on the hip.\n",
    ),
)
