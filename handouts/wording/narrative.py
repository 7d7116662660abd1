"""Whether a clause tells what somebody once did, and asks nothing of the reader."""

from handouts.wording.prose import NAME, Sentence

_WRITERS = frozenset("i we".split())
_TELLERS = frozenset("he she they who nobody everyone everybody somebody someone members staff people patients parents players children".split())
_ASKED = frozenset("you your yours yourself please let".split())
_REACH = 20
"""How many words before a mark are read for somebody who did something."""

_STOPS = frozenset(". ! ? ; : —".split())
_PAST = frozenset(
    "was were had did went said told came gave saw thought ran stood sat put got made took kept left found felt knew began held brought wrote bought lost"
    " heard met paid rode sang sent slept spent swam taught used could would".split()
)
_NOT_PAST = frozenset("need feed speed bed red shed seed weed indeed instead exceed proceed succeed bleed breed".split())


def told(sentence: Sentence, first: int, writer: bool = True) -> bool:
    """Whether the words before `first` have somebody who did something, and nobody is asked: "She stood by the clock".

    writer: whether "I" and "we" tell too; "I've left a photo" hands something over.
    """
    words = sentence.words
    begin = first
    while begin and first - begin < _REACH and words[begin - 1] not in _STOPS:
        begin -= 1
    before = words[begin:first]
    if not _ASKED.isdisjoint(before) or not _ASKED.isdisjoint(words[first : first + 6]):
        return False
    for place, word in enumerate(before):
        if word in _TELLERS or (writer and word in _WRITERS):
            if any(_past(after) for after in before[place + 1 : place + 6]):
                return True
        elif sentence.classes[begin + place] & NAME and any(_past(after) and after != "left" for after in before[place + 1 : place + 2]):
            return True
    return False


def _past(word: str) -> bool:
    return word in _PAST or word == "'d" or (len(word) > 4 and word.endswith("ed") and word not in _NOT_PAST)
