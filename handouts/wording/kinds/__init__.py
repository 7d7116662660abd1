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


def lexicon(language: str) -> Lexicon:
    """The word classes of a language."""
    return {"en": en.LEXICON}[language]
