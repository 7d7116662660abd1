"""The kind "gaze": the eyes are used to set the head.

Three ways of saying it: a verb of looking that is told to go somewhere ("look
up", "stare at the wall"), the eyes or the gaze aimed at a place ("eyes
forward", "fix your gaze on a spot"), and a thing to be followed or fixed on
("watch your thumb", "pick a spot on the wall").  Looking to learn, to copy or
to check is none of it: other kinds have those.
"""

from collections.abc import Iterator

from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.lexicons import en, eyes
from handouts.wording.lexicons.forms import words as _words
from handouts.wording.prose import PAUSES, Sentence, word_at

_BODY = en.LEXICON.classes["body"]
_KIT = en.LEXICON.classes["kit"] - _words("scales card set pair")
_SURFACES = en.LEXICON.classes["surface"] | en.LEXICON.classes["room"]

_PHASES = _words("swing press lift squat lunge turn step rep bow jump pull push stretch hold reach row top bottom")
"""Parts of a movement: "at the top of the swing"."""

_CHECKERS = _words("gander glance glancing peek peeking peep peeping squint squinting")
"""Quick looks: down or at a thing they check, and do not set the head."""

_LOOKING_GOOD = _words("good long quick little last")
_PINCHED = _words("thumb thumbs finger fingers toe toes hand hands knuckle knuckles elbow elbows")
"""What "watch" tells the reader to keep from harm."""

_PEOPLE = en.LEXICON.classes["role"] - _words(
    "line lines row rows star stars guide model group crew rest team class boy girl"
) | {"prize", "row"}
_OWNERS = _words("that your the both those my his her their these")
_TELLS = _words(
    "no and then to not never always keep keeps keeping you should can let without avoid quit stop stopping start try while by but or so just now also"
    " again when as rather than before if don't instead gently slowly softly simply everyone everybody all folks guys ladies resist of from must could may either please with eyes help"
)
_ENDS = _words(
    "now again please too and or but then so as while when until till if for with without through because which that where before after to keep"
)
_REACHES = _words("a an about roughly one two three four five six ten some few around well far slightly several half")
_SMALL = _words(
    "the your a an his her their that those this its own one some any far opposite very top bottom edge end middle centre center tips tip left right upper lower same"
)

_TAKES_A_LOOK = _words("have take sneak steal throw cast give get having taking")
"""Verbs that a look is the object of."""
_HOW = _words(
    "slightly straight directly dead always just slowly gently softly only fixedly calmly steadily right forward ahead"
)
"""Words between a verb of looking and where it goes."""
_WIDE_WAYS = _words("over up ahead back past behind left right along sideways forward beyond toward towards")
"""Where a quick look goes when it turns the head."""
_SEEN_THROUGH = _words("legs hands arms knees window gap fingers elbows feet thighs")
"""What one looks through with the head down or turned."""
_NEEDS_A_THING = _words(
    "over through into across around round under along between above below behind past beyond off onto"
)
"""Ways of looking that are a figure of speech without a thing: "look into it"."""
_STARES = _words(
    "horizontal downward upward visual lifted good steady soft fixed level gentle calm long hard forward relaxed straight firm still unblinking focused"
)
"""Words between "a" and "stare"."""
_NOT_BEFORE_EYES = _words("by between behind of around before in under above below near for into roll from to")
"""Words before "eyes" that make them a place of the body."""


def find(sentence: Sentence) -> Iterator[Span]:
    """The words of a sentence that set the head by what the eyes look at."""
    words = sentence.words
    for place, word in enumerate(words):
        read = _READERS.get(word)
        if read is None:
            continue
        span = read(words, place)
        if span and not _named(sentence, *span):
            first, last = span
            yield first, last + (words[last - 1] == "through" and word_at(words, last) == "it")


def _named(sentence: Sentence, first: int, last: int) -> bool:
    """Whether somebody is named in the mark: who is looked at is copied."""
    for place in range(first + 1, last):
        letters = sentence.text[sentence.starts[place] : sentence.ends[place]]
        if letters[:1].isupper() and letters != "I" and not letters.isupper():
            return True
    return False


def _told(words: list[str], place: int) -> bool:
    """Whether the verb at `place` is asked of the reader."""
    before = word_at(words, place - 1)
    if place == 0 or before in PAUSES:
        return True
    if words[place].endswith("ing"):
        if before in ("am", "is", "are", "was", "were", "been", "be"):
            return (
                any(
                    word in ("you", "your", "head", "chin", "face", "eyes") for word in words[max(0, place - 5) : place]
                )
                and "i" not in words[max(0, place - 3) : place]
            )
        return before not in ("i", "we", "the", "a", "good", "'s")
    if before in ("a", "the") or before in _LOOKING_GOOD:
        return any(word in _TAKES_A_LOOK for word in words[max(0, place - 3) : place - 1 + (before == "a")])
    if before == "to" and word_at(words, place - 2) in ("nice", "good", "how", "here", "easy", "hard"):
        return False
    if before in ("you", "and", "or") and word_at(words, place - 2) in ("i", "we", "they"):
        return False
    if before == "'s":
        return word_at(words, place - 2) == "let"
    if before == "we":
        return word_at(words, place + 1) in ("up", "down", "over", "left", "right", "forward")
    if before in ("should", "can", "must", "could") and word_at(words, place - 2) in ("they", "he", "she", "i", "people"):
        return False
    if words[place] == "look" and before in _KIT | _SURFACES | _PHASES and word_at(words, place + 1) in ("at", "up", "straight", "ahead"):
        start = max((far for far in range(place) if words[far] in PAUSES or words[far] in ("and", "then")), default=-1) + 1
        return words[start] in ("at", "on", "in", "during", "from")  # "at the top of the swing look ahead"
    return before in _TELLS or before.endswith("ly")


def _look(words: list[str], place: int) -> Span | None:
    """ "look up", "stare at the wall", "don't peer over your shoulder"."""
    if words[place] == "look" and words[max(0, place - 2) : place] == ["where", "you"] and word_at(words, place + 1) in _AFTER_WHERE:
        return place - 2, place + 1
    if not _told(words, place):
        return None
    word = words[place]
    reach = place + 1
    way = word_at(words, reach)
    if way == "just":
        reach += 1
    elif way == "a" and word_at(words, reach + 1) in ("little", "bit", "touch"):
        reach += 2
    way = word_at(words, reach)
    if not _READ_DOWN.isdisjoint(words[reach + 1 : reach + 4]) or (way == "out" and word_at(words, reach + 1) == "below"):
        return None
    if word == "looking" and way in ("further", "farther", "ahead") and "to" in words[reach + 1 : reach + 3]:
        return None  # in time: "looking further ahead to the weekend"
    if way in ("further", "farther") and word_at(words, reach + 1) in eyes.WAYS:
        return _start(words, place), reach + 2
    if way == "as" and word_at(words, reach + 1) == "far" and word_at(words, reach + 2) in ("ahead", "forward", "down", "up"):
        return _start(words, place), reach + 3
    if way == "off" and words[reach + 1 : reach + 3] == ["to", "the"]:
        return _start(words, place), reach + 4
    if way == "anywhere" and word_at(words, reach + 1) in ("but", "except"):
        return _start(words, place), reach + 3
    if way == "in" and word_at(words, reach + 1) == "front" and (word_at(words, reach + 2) in PAUSES or word_at(words, reach + 2) in ("", "of")):
        return _start(words, place), reach + 2
    if way in ("round", "around") and word_at(words, place - 1) in ("not", "no", "never") and (word_at(words, reach + 1) in PAUSES or word_at(words, reach + 1) == ""):
        return _start(words, place), reach + 1
    if way in ("ahead", "back") and word_at(words, reach + 1) == ":" and place == 0:
        return None
    if way == "'s" or (word == "look" and place == 1 and words[0] == "you" and word_at(words, place + 2) in PAUSES):
        return None
    if way == "over" and not {"anyone", "anybody", "someone", "somebody", "anyone's"}.isdisjoint(words[reach + 1 : reach + 3]):
        return None
    if way in _OWNERS or way in ("them", "it", "him", "everyone"):  # "look your partner in the eye"
        for far in range(reach + 1, min(reach + 5, len(words) - 2)):
            if words[far] == "in" and words[far + 1] in _SMALL and words[far + 2] in _BODY | _WORN:
                return _start(words, place), far + 3
    if way in ("through", "around", "round") and any(other in _ROUTES for other in words[reach + 1 : reach + 4]):
        return _start(words, place), _aimed(words, reach + 1) or reach + 1
    if way == "where" and word_at(words, reach + 1) in ("your", "the") and word in ("look", "looking", "gaze"):
        return _start(words, place), reach + 1
    if word.endswith("ing") and place == 0 and way in ("ahead", "back", "forward") and word_at(words, reach + 1) in PAUSES:
        return None
    if (
        word in ("stare", "staring")
        and way == "down"
        and word_at(words, reach + 1) in ("the", "your", "that")
        and not _landmark(words, reach + 1)
    ):
        return None
    if way == "from" and "to" in words[reach + 2 : reach + 5] and word_at(words, reach + 1) in _FROM_HERE | _BODY:
        return _start(words, place), words.index("to", reach) + 2
    if way == "into" and word_at(words, reach + 1) == "space":
        return _start(words, place), reach + 2
    if way == "over" and any(other in ("crowd", "audience", "heads", "stalls") for other in words[reach + 1 : reach + 4]):
        return _start(words, place), _aimed(words, reach + 1) or reach + 1
    if way in _REACHES:  # "look two metres in front", "gaze about a foot ahead", "look well ahead"
        for far in range(reach + 1, min(reach + 7, len(words))):
            if words[far] in PAUSES:
                break
            if words[far] in ("ahead", "front", "away", "forward", "beyond"):
                return _start(words, place), far + 1
        if way not in ("straight", "far", "slightly"):
            return None
    if words[reach : reach + 3] in (["in", "the", "direction"], ["in", "front", "of"]):
        return _start(words, place), reach + 3
    while way in _HOW and (
        word_at(words, reach + 1) in eyes.WAYS
        or word_at(words, reach + 1) == "at"
        or (word_at(words, reach + 1) == "to" and way not in ("forward", "ahead"))
    ):
        reach += 1
        way = words[reach]
    after = word_at(words, reach + 1)
    if word in _CHECKERS and way not in _WIDE_WAYS:
        return None
    if (
        way == "to"
        and word_at(words, reach + 1) in ("the", "your")
        and word_at(words, reach + 2) in ("left", "right", "side", "front", "back")
    ):
        return _start(words, place), reach + 3
    if (
        way == "through"
        and word in ("look", "looking")
        and not any(other in _SEEN_THROUGH for other in words[reach + 1 : reach + 5])
    ):
        return None
    if way == "through" and word in ("stare", "staring", "gaze", "gazing"):
        return _start(words, place), reach + 1
    if way in ("at", "toward", "towards", "to", "on", "upon"):
        if way == "to" and word in ("look", "looking") and not (_landmark(words, reach + 1) and _place_word(word_at(words, reach + 1))):
            return None
        if way == "on" and word in ("look", "looking"):
            return None
        if word in ("peek", "peep", "peeking", "peeping") and not _landmark(words, reach + 1):
            return None
        end = _aimed(words, reach + 1)
        if word in ("look", "looking") and not _landmark(words, reach + 1) and _abstract(words, reach + 1):
            return None
        if word_at(words, reach + 1) == "you":
            return None
        if word_at(words, place - 1) in ("a", "good", "quick", "long") and not any(
            other in _BODY or other in eyes.TARGETS or other in eyes.FAR_THINGS for other in words[reach + 1 : reach + 5]
        ):
            return None
        if not end or _checks(words, end) or (word in ("glance", "glancing") and not _landmark(words, reach + 1)):
            return None
        return _start(words, place), end
    if way not in eyes.WAYS:
        return None
    if (
        way in ("forward", "ahead", "forwards")
        and after == "to"
        and not (way == "ahead" and _landmark(words, reach + 2))
    ):
        return None
    if (
        way in ("out", "after", "around", "round")
        and (after in ("for", "", "your", "the") or after in PAUSES)
        and not (way == "out" and after in eyes.LEADS)
    ):
        return None
    if way == "up" and after == "to" and not _landmark(words, reach + 2):
        return None
    if way == "up" and not (
        after == ""
        or after in PAUSES
        or after in eyes.LEADS
        or after in _ENDS
        or after in eyes.WAYS
        or (after in ("a", "slightly") and word_at(words, reach + 2) in ("little", "bit", "touch"))
    ):
        return None
    if (
        way == "into"
        and word in ("look", "looking")
        and not any(other in ("distance", "sky", "corner", "mirror") for other in words[reach + 1 : reach + 4])
    ):
        return None
    if way == "down" and after == "on" and not _landmark(words, reach + 2):
        return None
    if way == "back" and after in ("on", "at", "and", "over") and not _landmark(words, reach + 2):
        return None
    if (
        way in _NEEDS_A_THING
        and not _landmark(words, reach + 1)
        and not (way == "behind" and after in ("you", "yourself"))
        and (way not in ("past", "beyond", "behind") or after not in ("the", "your") or _abstract(words, reach + 1))
    ):
        return None
    if way in ("left", "right", "high", "low", "level") and not (
        after == "" or after in PAUSES or after in _ENDS or after == "and"
    ):
        return None
    if way == "down" and (
        _checks(words, reach + 1)
        or after in (":", "—")
        or (word_at(words, place - 1) == "you" and word_at(words, place - 2) in ("if", "when"))
    ):
        return None
    end = reach + 1
    if after in eyes.LEADS or after in _SMALL or after in _BODY or after in _SURFACES:
        aimed = _aimed(words, end + 1 if after in eyes.LEADS else end)
        if not aimed and after in ("at", "to") and _barred(words, end + 1):
            return None
        end = aimed or end
        if aimed and _checks(words, end):
            return None
    elif after in eyes.WAYS or after in ("you", "yourself"):
        end += 1
    return _start(words, place), end


def _start(words: list[str], place: int) -> int:
    """Takes "don't", "keep", "quit" and the like into the mark."""
    before = word_at(words, place - 1)
    if before == "not" and word_at(words, place - 2) == "do":
        return place - 2
    if before in ("a", "the", "good", "quick", "long"):
        return place - 2 if before == "a" else place - 3
    if before in ("keep", "quit", "stop", "never", "avoid", "always"):
        return place - 1
    return place


def _barred(words: list[str], start: int) -> bool:
    """Whether what is looked at is there to learn from, to copy or to check."""
    for reach, word in enumerate(words[start : start + 5], start):
        if word in PAUSES:
            return False
        if (word == "next" and word_at(words, reach + 1) in _COMES_NEXT) or (word == "each" and word_at(words, reach + 1) in _BODY):
            continue
        if word in eyes.OTHERS or (word in _PEOPLE and word not in ("partner", "opponent", "buddy")):
            return True
        if word not in _SMALL and word not in _BODY and word not in _SURFACES:
            return False
    return False


def _aimed(words: list[str], start: int) -> int:
    """Where the words for the target end; 0 if it is barred or there is none."""
    reach = start
    while reach < len(words) and reach < start + 6:
        word = words[reach]
        if word in PAUSES or word in _ENDS:
            break
        if (word in _PEOPLE and word not in ("partner", "opponent", "buddy")) or (
            word in eyes.OTHERS
            and not (
                (word == "next" and word_at(words, reach + 1) in _COMES_NEXT)
                or (word == "each" and word_at(words, reach + 1) in _BODY)
                or (word in ("that", "those", "this", "her", "his", "their") and word_at(words, reach + 1) in _BODY | _SURFACES)
            )
        ):
            return 0
        reach += 1
        if word in _BODY or word in _SURFACES or word in eyes.TARGETS:
            if word_at(words, reach) == "of" and word_at(words, reach + 1) in _SMALL:
                continue
            break
    return reach if reach > start else 0


def _landmark(words: list[str], start: int) -> bool:
    for reach, word in enumerate(words[start : start + 5], start):
        if word in PAUSES or word in ("and", "or", "but", "then"):
            return False
        if (word == "next" and word_at(words, reach + 1) in _COMES_NEXT) or (word == "each" and word_at(words, reach + 1) in _BODY):
            continue
        if word in eyes.OTHERS or word in _PEOPLE:
            return False
        if word in _BODY or word in _SURFACES or word in _KIT or word in eyes.TARGETS or word in eyes.FAR_THINGS:
            return True
    return False


def _abstract(words: list[str], start: int) -> bool:
    """Whether what is looked at is no thing at all: "your diet", "the numbers"."""
    for word in words[start : start + 4]:
        if word in PAUSES or word in _ENDS:
            return word in PAUSES and word_at(words, start) not in ("the", "your", "a")
        if word in eyes.OTHERS or word in _PEOPLE or word in eyes.IDEAS:
            return True
    return word_at(words, start) not in _SMALL


def _checks(words: list[str], start: int) -> bool:
    """Whether the look is there to find something out."""
    return any(word in eyes.CHECKING for word in words[start : start + 5])


def _eyes(words: list[str], place: int) -> Span | None:
    """ "eyes forward", "keep your eyes on the ball"."""
    word = words[place]
    first = place
    if word_at(words, place - 1) in _OWNERS:
        first -= 1
        while word_at(words, first - 1) in ("just", "only") and word_at(words, first - 2) == "with":
            first -= 1
        if word_at(words, first - 1) in ("of", "both"):
            first -= 1
    elif word == "eye" and word_at(words, place + 1) == "line":
        return place, place + 2
    elif word == "eye" and word_at(words, place + 1) == "contact":
        held = word_at(words, place - 1) in _MEETS_EYES or word_at(words, place - 2) in _MEETS_EYES
        return (place, place + 2) if held or (word_at(words, place + 2) == "with" and not _barred(words, place + 3)) else None
    elif word == "vision" and (place == 0 or words[place - 1] in PAUSES):
        if word_at(words, place + 1) not in eyes.LEADS and word_at(words, place + 1) not in (":", "level", "fixed"):
            return None
    elif word in ("eye", "vision", "sight", "sights", "pupils", "focus", "view") and not (
        word == "pupils" and word_at(words, place + 1) in eyes.WAYS
    ):
        return None
    elif word == "stare" or word == "gaze" or word == "glance":
        while place - first < 4 and word_at(words, first - 1) in _STARES:
            first -= 1
        if first < place and word_at(words, first - 1) in ("a", "the", "your"):
            first -= 1
        if (
            words[max(0, first - 5) : first]
            and "give" in words[max(0, first - 5) : first]
            and any(other in eyes.FAR_THINGS for other in words[first - 3 : first])
        ):
            return words.index("give", max(0, first - 5)), place + 1
        if (
            first == place
            and word != "gaze"
            and word_at(words, place - 1) not in eyes.AIMS
            and word_at(words, place + 1) not in eyes.FIXED
            and word_at(words, place + 1) not in (":", "—")
        ):
            return None
    before = word_at(words, first - 1)
    if word == "eye" and words[first] in ("his", "her", "their") and before in ("got", "has", "have", "had", "having", "keeps", "with"):
        return None
    if word == "eyes" and before == "where" and word_at(words, place + 1) in ("go", "look", "land", "travel", "lead", "point"):
        return first, place + 2
    if word == "eyes" and before == "roll" and word_at(words, place + 1) in ("up", "down", "back"):
        return first - 1, place + 2
    if word == "eyes" and word_at(words, place + 1) == "in" and word_at(words, place + 3) in ("boat", "water"):
        return first, place + 4
    if word == "eyes" and (before in eyes.NOT_GAZE or before in _NOT_BEFORE_EYES or before == "line"):
        return None
    if word == "eyes" and before in ("lock", "locking", "meet", "meeting") and word_at(words, place + 1) == "with":
        return first - 1, place + 2
    if word == "eyes" and before in ("meet", "meeting") and first < place and words[first] not in ("my", "your"):
        return first - 1, place + 1
    after = word_at(words, place + 1)
    if before == "with" and first < place and (after == "" or after in PAUSES or after in _ENDS):
        if word_at(words, first - 2) in ("level", "line"):
            return None
        for reach in range(first - 2, max(-1, first - 10), -1):
            if words[reach] in PAUSES:
                return None
            if reach == 0 or words[reach - 1] in PAUSES or words[reach - 1] in ("and", "then", "to", "now"):
                return (reach, place + 1) if words[reach] not in _SEARCHES else None
        return None
    if before == "and" and (after == "" or after in PAUSES or after in _ENDS):  # "follow it with your head and eyes"
        behind = words[max(0, first - 10) : first]
        for verb in ("follow", "track", "trace", "chase"):
            if verb in behind and "with" in behind[behind.index(verb) :]:
                return max(0, first - 10) + behind.index(verb), place + 1
    if before == "my" or words[first] == "my":
        return None
    start = first
    aiming = ""
    if before in eyes.AIMS:
        start, aiming = first - 1, before
        if word_at(words, start - 1) == "not" and word_at(words, start - 2) == "do":
            start -= 2
    reach = place + 1
    if word_at(words, reach) in (":", "—"):
        after = word_at(words, reach + 1)
        if (
            after in eyes.WAYS
            or after in eyes.TARGETS
            or after in eyes.FIXED
            or after in _BODY
            or after in ("on", "to", "at")
            or (after[:1].isdigit() and word in ("gaze", "eyes"))
            or (word_at(words, reach + 2) in eyes.TARGETS)
        ):
            return start, reach + 2
        return None
    if word_at(words, reach) in eyes.LEXICAL_UNITS or word_at(words, reach + 1) in eyes.LEXICAL_UNITS:
        for far in range(reach, min(reach + 5, len(words))):
            if words[far] in ("ahead", "front", "away", "down"):
                return start, far + 1
    fixed = doing = False
    while reach < len(words) and reach < place + 6:
        after = words[reach]
        if (after in eyes.NOT_GAZE and after not in ("heavy", "drop", "double", "open")) or after in ("closed", "shut"):
            return None
        if after in eyes.FIXED:
            fixed = True
        elif after in eyes.EYES_DO:
            doing = True
        elif after not in _BETWEEN:
            break
        reach += 1
    if doing and words[reach - 1] == "and":
        reach -= 1
    if words[reach : reach + 2] == ["to", "be"]:
        reach += 2
    after = word_at(words, reach)
    if word_at(words, reach + 1) in ("here", "there"):
        return None
    if word == "eyes" and first == place and after == "right":
        return start, reach + 1
    if aiming and after in ("side", "from", "between"):
        return start, reach + 1
    if after == "anywhere" and word_at(words, reach + 1) in ("but", "except"):
        return start, _aimed(words, reach + 2) or reach + 1
    if after == "about" and (aiming or words[reach - 1] in ("is", "are", "be")) and word_at(words, reach + 1) in en.LEXICON.classes["number"]:
        return start, place + 1
    if after in eyes.WAYS or after in ("at", "to", "on", "upon", "in", "where"):
        if after == "in" and word_at(words, reach + 1) == "front":
            return start, reach + 2
        if word == "sights" and not _landmark(words, reach + 1):
            return None
        if after == "to" and not _place_word(word_at(words, reach + 1)):
            return None
        if (after == "in" and not (doing or fixed or aiming)) or (
            after in ("under", "above", "below", "between") and not aiming
        ):
            return None
        if (
            after in ("on", "at", "to", "upon", "toward", "towards")
            or word_at(words, reach + 1) in eyes.LEADS
            or word_at(words, reach + 1) in _SMALL
        ):
            skip = (
                reach + 1
                if after in ("on", "at", "to", "upon", "toward", "towards") or word_at(words, reach + 1) in _SMALL
                else reach + 2
            )
            if word_at(words, skip) == "where":
                return start, skip + 1
            if _barred(words, skip) and not (aiming and word_at(words, skip) in ("it", "that")):
                if "me" in words[skip : skip + 3] or "my" in words[skip : skip + 3]:
                    return None
                if fixed or (any(other in _STAND_STILL for other in words[skip : skip + 3]) and not _SET_BY_IT.isdisjoint(words)):
                    return start, reach + 1
                return None
            return start, _aimed(words, skip) or reach + 1
        return start, reach + 1
    if words[reach - 1] == "level" and after == "with":
        return None
    if doing and (after in _OWNERS or after in ("it", "a")):
        if _barred(words, reach):
            return None
        return start, _aimed(words, reach) or reach
    if doing and after in ("with", "too", "along") and word_at(words, reach + 1) not in ("me", "my"):
        return start, reach
    if words[reach - 1] == "straight" and (after == "" or after in PAUSES) and reach > place + 1:
        return start, reach
    if after in ("first", "last") or (
        (after == "then" and word_at(words, reach + 1) in ("head", "the", "chin", "your")) and word == "eyes"
    ):
        return start, reach + 1
    if doing and words[reach - 1] in ("lead", "leading", "leads"):
        return start, reach
    if fixed and (reach - place > 1 or word != "focus"):
        return start, reach
    if (
        aiming
        and aiming in _ENOUGH
        and word != "sight"
        and (after == "" or after in PAUSES or after in _ENDS or after in ("a", "slightly", "gently", "there"))
    ):
        return start, place + 1
    if doing and word in ("gaze", "eyes") and words[reach - 1] not in ("rest", "resting", "go", "find"):
        return start, reach
    return None


_MEETS_EYES = _words("make makes making keep keeps keeping hold holds holding maintain maintaining avoid lose losing break meet constant steady good firm")
"""Words before "eye contact" that ask for it."""
_STAND_STILL = _words("clock mirror mirrors screen display monitor tv telly reflection poster timer")
"""What hangs on a wall and may set the head as a spot does; other kinds have it where it is read."""
_SET_BY_IT = _words("head neck chin nose")
_ROUTES = _words("bend turn corner apex bar ring hoop rings")
"""What one looks through or round on the way."""
_FROM_HERE = _words("one side left right top corner wall")
_COMES_NEXT = _words("jump fence gate obstacle buoy barrier hold stair rung corner bend cone marker post door hurdle flag tree")
"""What one heads for after this one, and not a week or a block of weeks."""
_READ_DOWN = _words("list lists form forms menu timetable names contract")
_MOVES_BY_A_THING = _words("press presses slide slides sit sits squat squats angel angels of push raise hold drill")
"""What makes an exercise or a part of the body of the word before: "the wall press", "the ball of the foot"."""
_AFTER_WHERE = {"", "is", "'s"} | PAUSES
_WORN = _words("collar belt badge shirt visor helmet tie")
_SEARCHES = _words(
    "see check find search read look smile feel breathe do say speak work move start stay sit lie stand with"
)
_BETWEEN = _words(
    "ought want wants will kind sort of like pretty fairly quite um soften softens softening relax relaxed relaxes open never head chest chin face nose are is stay stays should remain be go goes always both softly steadily and soft gently slightly still just firmly only kept do not looking gazing staring straight"
)
_ENOUGH = _words(
    "lift lifts lifting raise raises raising drop drops dropping lower lowers lowering cast level turn turns fix fixes fixing shift anchor steady soften softens softening maintain maintains maintaining hold holding"
)


def _sight(words: list[str], place: int) -> Span | None:
    """ "sight straight out the door", "your sight level"."""
    if word_at(words, place - 2) in ("lose", "loses", "losing", "lost") and word_at(words, place - 1) in _OWNERS:
        return None  # blindness: "he lost his sight"
    if words[place - 2 : place] == ["line", "of"]:
        return place - 2, place + 1
    if word_at(words, place + 1) in ("line", "lines"):
        return (place - 1 if word_at(words, place - 1) in _OWNERS else place), place + 2
    if word_at(words, place - 1) in ("keep", "keeping") and word_at(words, place + 1) == "of" and _landmark(words, place + 2):
        return place - 1, _aimed(words, place + 2) or place + 2
    if word_at(words, place - 1) in ("lose", "losing", "loses") and word_at(words, place + 1) == "of":
        held = any(word in eyes.TARGETS or word in eyes.FOLLOWED for word in words[place + 2 : place + 5])
        told = {"not", "never", "without"} & set(words[max(0, place - 4) : place])
        return (place - 1, place + 2) if held and told else None
    if _told(words, place) and word_at(words, place + 1) == "the" and _landmark(words, place + 2):
        return place, _aimed(words, place + 2) or place + 3
    if _told(words, place) and word_at(words, place + 1) in ("straight", "along", "down", "out", "over", "on"):
        return place, _aimed(words, place + 2) or place + 2
    return _eyes(words, place)


def _eye(words: list[str], place: int) -> Span | None:
    if word_at(words, place + 1) == "on" and word_at(words, place - 1) in ("and", ",", "with", "one") and _landmark(words, place + 2):
        return place, _aimed(words, place + 2) or place + 2
    return _eyes(words, place) or _admire(words, place)


def _look_or_noun(words: list[str], place: int) -> Span | None:
    if word_at(words, place - 1) == "your" and (word_at(words, place + 1) in eyes.WAYS or word_at(words, place - 2) in eyes.AIMS):
        return _eyes(words, place)
    return _look(words, place)


def _place_word(word: str) -> bool:
    return (
        word in _SMALL
        or word in _OWNERS
        or word in _BODY
        or word in _SURFACES
        or word in eyes.TARGETS
        or word in eyes.WAYS
        or word[:1].isdigit()
    )


def _gaze(words: list[str], place: int) -> Span | None:
    return _eyes(words, place) or _look(words, place)


def _focus(words: list[str], place: int) -> Span | None:
    """ "focus on a spot": on something that is seen, not on the breath."""
    if words[place + 1 : place + 4] == ["on", "one", "thing"]:
        return None  # the mind: "focus on one thing at a time"
    if words[place].startswith("focus") and _told(words, place):
        reach = place + 1
        if word_at(words, reach) in ("straight", "dead", "directly"):
            reach += 1
        if word_at(words, reach) in ("ahead", "forward", "forwards", "upward", "downward") or (
            reach > place + 1 and word_at(words, reach) in ("up", "down", "out")
        ):
            return place, reach + 1
    if words[place] == "fix" and word_at(words, place + 1) in ("on", "onto", "upon") and (span := _lock(words, place)):
        return span
    if words[place] == "focus" and word_at(words, place - 1) == "in":
        return _in_view(words, place)
    if word_at(words, place + 1) == "on" or (
        word_at(words, place + 1) in ("your", "both") and word_at(words, place + 2) in ("eyes", "gaze", "sight", "vision")
    ):
        start = place + 2
        if word_at(words, place + 1) != "on":
            return _eyes(words, place + 2) or (place, place + 3)
        for reach in range(start, min(start + 5, len(words))):
            if (
                words[reach] in eyes.TARGETS
                and words[reach] not in ("mat", "finger", "thumb", "point", "thing", "things", "points")
                and word_at(words, reach + 1) not in _MOVES_BY_A_THING
            ) or (
                words[reach] in ("point", "thing")
                and word_at(words, reach + 1) != "where"
                and words[reach - 1] in ("a", "one", "fixed", "still", "single", "the", "focal")
            ):
                return (place - 1 if word_at(words, place - 1) == "not" else place), reach + 1
            if words[reach] in PAUSES or words[reach] in ("breath", "breathing", "feeling", "how", "what"):
                return None
    return _eyes(words, place) if words[place] != "fix" else None


def _in_view(words: list[str], place: int) -> Span | None:
    """ "keep the horizon in view", from its last word."""
    if word_at(words, place - 1) != "in":
        return None
    for reach in range(place - 2, max(-1, place - 9), -1):
        word = words[reach]
        if word in PAUSES:
            return None
        if word in ("keep", "keeping", "hold", "holding", "have", "get"):
            seen = words[reach + 1 : place - 1]
            if any(
                other in eyes.TARGETS or other in _BODY or other in _SURFACES or other in ("letter", "x", "ball", "bar")
                for other in seen
            ) and not any(other in ("my", "me", "goal", "aim", "end", "finish") for other in seen):
                return reach, place + 1
            return None
    return None


def _admire(words: list[str], place: int) -> Span | None:
    """ "admire the ceiling", "scan the horizon"."""
    if not _told(words, place):
        return None
    if words[place] == "scan" and word_at(words, place + 1) in ("left", "right", "ahead", "up", "down"):
        return place, place + 2
    if word_at(words, place + 1) not in ("the", "your", "a"):
        return None
    if words[place] == "spot" and word_at(words, place + 2) in ("front", "turn", "turns", "corner", "corners", "pirouette", "pirouettes"):
        return place, place + 3
    if words[place] == "spot" and word_at(words, place + 2) in ("edge", "landing", "ground", "wall", "floor"):
        return place, place + 3
    if words[place] == "spy" and word_at(words, place + 1) == "your" and word_at(words, place + 2) in _BODY:
        return place, place + 3
    for reach in range(place + 2, min(place + 5, len(words))):
        if words[reach] in eyes.FAR_THINGS or (
            words[place] == "track" and words[reach] in ("ball", "shuttle", "shuttlecock", "puck", "thumb", "fingertip")
        ):
            return place, reach + 1
        if words[reach] in PAUSES:
            return None
    return None


def _lock(words: list[str], place: int) -> Span | None:
    """ "lock on to a spot", "fixate on the thumb"."""
    reach = place + 1
    if word_at(words, reach) == "in":
        reach += 1
    told = _told(words, place) or word_at(words, place - 1) in _DOES_IT
    if told and words[place].startswith("fixat") and word_at(words, reach) in ("target", "thumb", "finger", "letter", "card", "the", "your"):
        return place, _aimed(words, reach) or reach + 1
    if word_at(words, reach) not in ("on", "onto", "upon") or not told:
        return None
    reach += 2 if word_at(words, reach + 1) == "to" else 1
    for far in range(reach, min(reach + 4, len(words))):
        if word_at(words, far + 1) in _MOVES_BY_A_THING:
            return None
        if (
            words[far] in eyes.TARGETS
            or words[far] in eyes.FAR_THINGS
            or (words[place].startswith("fixat") and words[far] in _BODY)
        ):
            return place, far + 1
        if words[far] in PAUSES:
            return None
    return None


def _watch(words: list[str], place: int) -> Span | None:
    """ "watch your thumb as it moves"."""
    if not _told(words, place) or word_at(words, place + 1) not in ("your", "the", "that", "a"):
        return None
    for reach in range(place + 2, min(place + 5, len(words))):
        if words[place + 1] == "a" and words[reach] in ("spot", "point") and word_at(words, reach + 1) == "on":
            return place, reach + 1
        if words[reach] in eyes.FOLLOWED:
            if (words[place + 1] != "your" and words[reach] in _BODY and words[reach] != "ball") or words[reach] in (
                "bell",
                "bar",
                "kettlebell",
            ):
                return None
            if word_at(words, reach + 1) == "of" and words[reach] == "ball":
                return None
            if words[reach] in ("ground", "floor") and word_at(words, reach + 1) not in _GROUND_AHEAD:
                return None
            if word_at(words, reach + 1) == ":" or (
                words[reach] in _PINCHED
                and not any(
                    word in ("as", "all", "while", "move", "travel", "go", "rise")
                    for word in words[reach + 1 : reach + 4]
                )
            ):
                return None
            if any(
                word in eyes.CHECKING or word in ("how", "where", "if", "what") for word in words[reach + 1 : reach + 5]
            ):
                return None
            return place, reach + 1
        if words[reach] in PAUSES:
            return None
    return None


_DOES_IT = _words("patient client person participant learner athlete student")
"""Who does it, in a clinic's or a teacher's sheet."""


def _does(words: list[str], place: int) -> Span | None:
    """ "patient looks over shoulder"."""
    if word_at(words, place - 1) not in _DOES_IT:
        return None
    return _look([*words[: place - 1], "to", "look", *words[place + 1 :]], place)


_GROUND_AHEAD = _words("ahead in a an one two three four five six some between below as while about just")


def _see(words: list[str], place: int) -> Span | None:
    """ "tilt the head back and see the ceiling"."""
    before = word_at(words, place - 1)
    asked = place == 0 or before in PAUSES or before in ("and", "then", "you")
    if not asked or word_at(words, place - 2) in ("not", "will", "if") or word_at(words, place + 1) not in ("the", "your"):
        return None
    if before == "you" and word_at(words, place - 2) not in ("until", "till", "so"):
        return None
    for reach in range(place + 2, min(place + 4, len(words))):
        if words[reach] in _SEEN_BY_THE_HEAD:
            after = word_at(words, reach + 1)
            ends = after == "" or after in PAUSES or after in _ENDS or after in eyes.WAYS or after in ("ahead", "above", "below")
            return (place, reach + 1) if ends else None
        if words[reach] not in _SMALL and words[reach] not in ("far", "opposite"):
            return None
    return None


_SEEN_BY_THE_HEAD = _words("ceiling sky horizon wall navel floor rafters roof ground mat skyline clouds stars belly-button")
"""What comes into sight only when the head is brought there."""


def _check(words: list[str], place: int) -> Span | None:
    """ "check over your shoulder"."""
    if _told(words, place) and word_at(words, place + 1) in ("over", "behind", "past") and "shoulder" in words[place + 2 : place + 5]:
        end = words.index("shoulder", place) + 1
        return (place, end) if word_at(words, end) not in ("that", "if", "whether", "for", "strap", "straps", "pad", "pads", "belt") else None
    return None


def _pick(words: list[str], place: int) -> Span | None:
    """ "pick a spot on the wall"."""
    if not _told(words, place):
        return None
    for reach in range(place + 1, min(place + 5, len(words))):
        word = words[reach]
        if word == "drishti" or (word == "point" and words[reach - 1] == "focal"):
            return place, reach + 1
        if word in _FIXED_ON and (
            any(other in eyes.LOOKS for other in words[reach + 1 : reach + 6]) or words[reach + 1 : reach + 3] in (["at", "head"], ["at", "eye"])
        ):
            return place, reach + 1
        if word == "face":
            for far in range(reach + 1, min(reach + 4, len(words))):
                if words[far] in ("crowd", "audience", "stalls", "congregation"):
                    return place, far + 1
        if word in ("spot", "point", "mark", "something", "object"):
            rest = words[reach + 1 : reach + 12]
            if (
                any(other in eyes.LOOKS or other in ("focus", "eyes", "gaze", "moving") for other in rest)
                or (
                    rest[:1] in (["on"], ["ahead"], ["straight"])
                    and any(other in ("wall", "horizon", "ceiling", "ahead") for other in rest[:5])
                )
                or (rest[:3] == ["in", "front", "of"] and word != "something")
            ):
                end = reach + 1
                while (
                    end < len(words)
                    and end < reach + 11
                    and words[end] not in PAUSES
                    and words[end] not in eyes.LOOKS
                    and words[end] not in ("focus", "that", "as", "keep")
                ):
                    end += 1
                if word_at(words, end) in eyes.LOOKS:
                    end += 1
                    if word_at(words, end) in ("at", "on"):
                        end += 1
                        if word_at(words, end) == "it":
                            end += 1
                return place, end
        if word in PAUSES:
            return None
    return None


_FIXED_ON = (eyes.TARGETS | eyes.FAR_THINGS) - _words("spot point mark something object mat")
"""Things that are picked out to be stared at; a spot or a point is read further on."""

_READERS = {
    **{word: _look for word in eyes.LOOKS},
    **{
        word: _eyes
        for word in (
            "eyes",
            "eyeline",
            "pupils",
            "sights",
            "eye-line",
            "vision",
            "sight",
            "eyeballs",
            "drishti",
            "peepers",
            "sightline",
        )
    },
    "gaze": _gaze,
    "eye": _eye,
    "look": _look_or_noun,
    "sight": _sight,
    "stare": _gaze,
    "glance": _gaze,
    "focus": _focus,
    "focusing": _focus,
    "focussing": _focus,
    "fix": _focus,
    "watch": _watch,
    "watching": _watch,
    **{
        word: _admire
        for word in (
            "admire",
            "ogle",
            "spy",
            "track",
            "study",
            "inspect",
            "contemplate",
            "survey",
            "scan",
            "eyeball",
            "eyeing",
            "admiring",
            "studying",
            "scanning",
            "tracking",
            "inspecting",
            "contemplating",
            "spot",
            "examine",
            "behold",
        )
    },
    **{word: _lock for word in ("lock", "fixate", "fixates", "fixating", "zero", "home", "concentrate", "hone")},
    "pick": _pick,
    "find": _pick,
    "see": _see,
    **{word: _does for word in ("looks", "gazes", "stares", "peers", "glances")},
    "check": _check,
    "checking": _check,
    "choose": _pick,
    "select": _pick,
}


# --- what to write instead --------------------------------------------------------------------------------------------

_UPWARD = _words(
    "up ceiling sky roof rafters rafter beam beams balcony lampshade lamp stars clouds upward upwards skyward lift raise"
)
_DOWNWARD = _words(
    "down floor mat ground feet foot toes toe shoes navel knees shins downward downwards lower drop tiles"
)
_AHEAD = _words("ahead forward forwards front straight level horizon horizontal")
_STILL = _words("spot point mark something still focal")
_MOVING = _words("hand hands thumb thumbs fingertip fingertips finger fingers ball elbow bell")


def suggest(sentence: Sentence, first: int, last: int) -> str:
    """What to write instead of the marked words."""
    said = sentence.words[first:last]
    around = sentence.words[first : last + 4]
    side = next((word for word in around if word in ("left", "right")), "")
    if "shoulder" in around or "behind" in said or (side and "shoulder" not in around and not _UPWARD & set(said)):
        over = side or "left"
        return f'Say where the nose goes, not the eyes: "turn your head until your nose is over your {over} shoulder", or the clock hour.'
    moving = next((word for word in said if word in _MOVING), "")
    if moving and ("follow" in said or "as" in around or "watch" in said or "track" in said or "along" in said):
        return f'Say what the head does: "turn your head so that your nose follows your {moving}".'
    if _STILL & set(said):
        return 'Give something to hold instead of something to look at: "rest one fingertip on the wall, chin level, nose toward 12 o\'clock".'
    if "not" in said and _DOWNWARD & set(said):
        return 'Say where the head stays: "keep your chin level, the back of your neck long".'
    if _UPWARD & set(said):
        return 'Say how far the chin lifts: "lift your chin until your nose points toward the ceiling", or stop at the hour that suits.'
    if _DOWNWARD & set(said):
        return 'Say where the nose points and how near the chin comes: "nose toward the floor, one fist between chin and breastbone".'
    if _AHEAD & set(said):
        return 'Say where the head is: "chin level, nose toward 12 o\'clock".'
    return 'Say where the chin and the nose go, not the eyes: "chin level, nose toward 12 o\'clock".'


_POINTED = _words("look gaze stare peer")


def rewrite(sentence: Sentence, first: int, last: int) -> str | None:
    """The same order to the nose instead of the eyes, where the words are plain enough for that."""
    words = sentence.words
    said = words[first:last]
    asked = first == 0 or words[first - 1] in PAUSES or words[first - 1] in ("and", "then")
    if not asked:
        return None
    new = None
    rest = [word for word in said[1:] if word not in ("straight", "up", "down", "directly", "dead")]
    if said[0] in _POINTED or said[0] == "eyes":
        if (not rest and said[-1] != "down" and "up" not in said) or rest in (
            ["ahead"],
            ["forward"],
            ["forwards"],
            ["front"],
        ):
            new = "keep your chin level and your nose straight ahead"
        elif (
            len(rest) > 2
            and rest[0] in ("at", "to", "toward", "towards", "on", "over")
            and rest[1] in ("the", "your")
            and len(rest) < 6
        ) and (rest[-1] in eyes.FAR_THINGS or rest[-1] in ("shoulder", "mat", "navel")):
            start = first + said.index(rest[1], 1)
            new = "point your nose toward " + sentence.quote(start, last)
    if new and sentence.quote(first, first + 1)[:1].isupper():
        new = new[:1].upper() + new[1:]
    return new


ENGLISH = Kind(
    name="gaze",
    strength="advice",
    what="The eyes are used to set the head or to keep the balance.",
    why="A reader who does not see cannot aim the eyes; the head is set by the chin and the nose, and balance by touch.",
    suggest=suggest,
    rewrite=rewrite,
    find=find,
    flag=(
        "At the top of the swing [[look at the horizon]].",
        "[[Pick out a brick]] at head height.",
        "[[Find one face in the crowd]].",
        "[[Keep sight of the spire]] and stay on one leg.",
        "[[Fix upon the gate]].",
        "[[Spy your thumbs]].",
        "[[Eyes boring through it]], hit the bag.",
        "[[Look at the ceiling]] and breathe out.",
        "[[Eyes forward]], chest up.",
        "[[Fix your gaze on a spot]] by the door.",
        "[[Look over your left shoulder]].",
        "[[Don't look down]], feel for the step with your toes.",
        "Chest lifted, you're [[looking at the ceiling]].",
        "[[Watch your thumb]] as the arm circles.",
        "[[Pick a spot on the wall and stare at it]].",
        "[[Follow your hand with your eyes]].",
        "Neck: [[eyes level]], chin tucked.",
        "[[Keep your eyes on the ball]].",
        "Turn the head, and [[let the eyes go]] with it.",
        "[[Focus on a spot]] near the door and lift one foot.",
        "[[Look your opponent in the collar]].",
        "Hold [[eye contact]] with the person opposite.",
        "Let [[your sight line]] fall on the kerb ahead.",
        "[[Stare through]] your partner, guard up.",
        "Patient [[looks over shoulder]].",
        "[[Spot the front]] as you turn.",
        "[[Look around the corner]] as you ride.",
        "Head back, [[see the ceiling]].",
        "[[Gaze vertical]], ten a side.",
        "The body goes where [[the eyes go]].",
        "Never [[lose sight of]] the ball.",
        "[[Have a look over]] each shoulder.",
        "[[Look from thumb to thumb]].",
    ),
    leave=(
        "Focus on one thing at a time.",
        "She lost her sight at twenty.",
        "Looking further ahead to the weekend, bring a coat.",
        "Somebody asks whether they should look up.",
        "Come and have a look at the new gym.",
        "No looking over anyone's shoulder.",
        "The doctor's got his eye on your blood pressure.",
        "Close your eyes and breathe.",
        "Get your eyes under the bar before you unrack it.",
        "Chin level, nose toward 12 o'clock.",
        "Face the floor.",
        "Look after your wrists, and look out for dizziness.",
        "You can look forward to sore calves tomorrow.",
        "Look, it is only ten reps.",
        "Focus on your breath.",
        "Watch your step on the ramp.",
        "Look down to check that both knees point forward.",
        "Hands level with your eyes.",
        "Looking ahead, week five adds a set.",
        "Look past the numbers this week.",
        "Don't look at the scale till Friday.",
        "Focus on the point where your foot presses.",
        "Watch the ground, it's icy.",
        "Look to improve by one rep.",
        "Never look a gift horse in the mouth.",
        "Patient looks well.",
        "See the nurse on the ground floor.",
        "Look ahead: May is a rest month.",
        "Look ahead to the next block.",
        "Until the arrow goes high, don't lower the sight.",
    ),
)
