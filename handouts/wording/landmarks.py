"""Whether the words of a sentence say a place or a size themselves.

A place that is pointed at, or a size without a measure, is rescued by a body
landmark, a clock direction, a measure or a surface that can be touched, when
it stands in the same sentence and explains that place or that size.
"""

from handouts.wording.lexicons.en import LEXICON
from handouts.wording.prose import Sentence

_PLACE = LEXICON.mask("body", "surface", "unit", "room")
_MEASURE = LEXICON.mask("unit")
_BODY = LEXICON.mask("body")
_TOO_WIDE = frozenset("muscle muscles bone bones joint joints skin body tendon tendons limb limbs hair core side sides end bit edge".split())
_SIZES = frozenset("level with to at until till reaching touching line toward towards".split())
_PREPOSITION = LEXICON.mask("prep")
_NOT_A_PLACE = frozenset("of with for from after before as".split())
_LEADS_IN = frozenset(", : — ( just right so that is or namely roughly about exactly i.e somewhere all the way up down out over directly too again now today flat snug snugly flush firmly lightly gently resting tucked directly just-about tight high low".split())
_SAYS_WHERE = frozenset("the a where until till so touching level close enough your halfway midway in line wherever".split())
_STOPS = frozenset("and but then not if because while or with without using . ! ? ;".split())
_POINTED = frozenset("this that these those here there yonder".split())
_CONTACT = frozenset(
    "touch touches touching meet meets brush brushes reach reaches feel feels press presses rest rests graze grazes kiss kisses"
    " contact bend bends crease creases starts ends begins stops".split()
)


def is_part(sentence: Sentence, place: int) -> bool:
    """Whether a word is a part of the body: "your back", not "goes back" or "the back of the card"."""
    words, classes = sentence.words, sentence.classes
    if not classes[place] & _BODY:
        return False
    whose = place > 0 and classes[place - 1] & LEXICON.bits["det"]
    return words[place] != "back" or bool(whose and words[place + 1 : place + 2] != ["of"])


def explained_after(sentence: Sentence, last: int, reach: int = 9, size: bool = False) -> bool:
    """Whether the words that follow say the place or the size: ", to the bridge of your nose"."""
    words, classes = sentence.words, sentence.classes
    count = len(words)
    place = last
    skipped = 0
    while place < count and words[place] in _LEADS_IN and skipped < 4 and not classes[place] & _PLACE:
        if words[place] in ("the", "your"):
            break
        place += 1
        skipped += 1
    if place >= count:
        return False
    opens = classes[place] & _PREPOSITION and words[place] not in _NOT_A_PLACE
    if size and opens and words[place] not in _SIZES:
        return False
    counts = classes[place] & LEXICON.bits["number"] or words[place] in ("a", "an", "half")
    apposed = words[place] in _SAYS_WHERE and any(word in (",", ":", "—", "(") for word in words[last:place])
    explains = words[place] in ("where", "until", "till", "so", "close", "touching", "level", "wherever") or (
        words[place] == "with" and not _CONTACT.isdisjoint(words[place : place + 6])
    )
    if not (opens or counts or apposed or explains):
        return False
    if counts and not apposed:
        reach = 4
    for near in range(place, min(count, place + reach)):
        if words[near] in _POINTED and near <= place + 4:
            return False
        level = words[near] == "with" and words[near - 1] in ("level", "flush", "line")
        if near > place and ((words[near] in _STOPS and not level) or (counts and words[near] == ",")):
            return False
        if words[near] in ("click", "clicks", "stop", "stops") and words[near - 1] == "it":
            return False
        if counts and not apposed and not classes[near] & _MEASURE:
            continue  # "up here, one arm bent"
        if classes[near] & _PLACE and words[near] not in _TOO_WIDE and (near > place or classes[near] & LEXICON.bits["unit"]):
            return True
        if explains and words[near] in _CONTACT:
            return True
    return False


def explained_before(sentence: Sentence, first: int) -> bool:
    """Whether the words just before say the place: "on the front of your thighs, right here"."""
    words, classes = sentence.words, sentence.classes
    place = first - 1
    if place >= 0 and words[place] in (",", "—", ":", "("):
        if words[first] == "to" or words[first + 1 : first + 2] == ["to"]:
            return False  # "to the first cone, back to here"
        place -= 1
    elif words[first] not in ("right", "just", "here", "there"):
        return False
    if place < 1 or not classes[place] & (_BODY | LEXICON.mask("surface", "unit")) or words[place] in _TOO_WIDE:
        return False
    if words[place] in ("click", "stop") and words[place - 1] in ("to", "it"):
        return False
    for near in range(place - 1, max(-1, place - 7), -1):
        if words[near] in _STOPS or words[near] == ",":
            return False
        if classes[near] & _PREPOSITION and words[near] not in _NOT_A_PLACE:
            return True
    return False


def explained(sentence: Sentence, first: int, last: int, size: bool = False) -> bool:
    """Whether the sentence says what the words from `first` to before `last` leave open.

    size: whether they leave a size open and not a place; then "off the floor" says nothing.
    """
    return explained_after(sentence, last, size=size) or (not size and explained_before(sentence, first))
