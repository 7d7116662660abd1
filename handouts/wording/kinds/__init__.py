"""The kinds of fault, in the order in which they take words from one another.

One module a kind, with everything of that kind in it.  This list is all there
is: nothing registers itself.
"""

from handouts.wording.grammar import Lexicon
from handouts.wording.kinds import demonstration, gaze, looks_only, picture, pointing, sight_check, vague, viewer
from handouts.wording.kinds.kind import Kind
from handouts.wording.lexicons import en

KINDS: dict[str, tuple[Kind, ...]] = {
    "en": (
        demonstration.ENGLISH,
        pointing.ENGLISH,
        picture.ENGLISH,
        looks_only.ENGLISH,
        viewer.ENGLISH,
        gaze.ENGLISH,  # before sight-check, to which it leaves every look that reads or checks
        sight_check.ENGLISH,
        vague.ENGLISH,
    ),
}


def kinds(language: str) -> tuple[Kind, ...]:
    """The kinds of a language, in order; those of a second language are loaded when they are asked for."""
    if language == "fr":
        from handouts.wording.kinds.french import FRENCH

        return FRENCH
    return KINDS[language]


def lexicon(language: str) -> Lexicon:
    """The word classes of a language."""
    if language == "fr":
        from handouts.wording.lexicons import fr

        return fr.LEXICON
    return {"en": en.LEXICON}[language]
