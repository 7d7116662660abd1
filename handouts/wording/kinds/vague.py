"""The kind "vague": a distance, an angle, a width or a height without a measure.

A vague size is found in two steps.  First a word of size or degree that is
said of the body, of a movement or of a gap: "slightly", "a little", "wide",
"a big" before "step".  What it is said of decides: "a little wider" is a
place, "a little tired" is not.  Then the rest of the sentence is read for
words that give the measure: a unit, a clock hour, a part of the body or a
surface that is met, "as far as is comfortable".
"""

from collections.abc import Iterator

from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.lexicons import en
from handouts.wording.lexicons import sizes as say
from handouts.wording.lexicons.forms import words as _words
from handouts.wording.prose import PAUSES, Sentence, word_at

_BODY = en.LEXICON.classes["body"]
_LANDMARKS = (_BODY | en.LEXICON.classes["surface"]) - say.NOT_A_LANDMARK
_SURFACES = en.LEXICON.classes["surface"]

_ANGLES = _words(
    "bend bends tilt lean arch curve gap gaps space distance flexion extension rotation clearance separation headroom turn-out"
    " stagger angle incline spacing room"
)
_FORWARD = _words(
    "apart together forward forwards back backward backwards out in up down away over across ahead behind overhead front"
)
_EASY_OFF = _words("ease eases easing back lay dial tone")
_DIALS = _words("turn turned turning pick dial tone keep let")
_FIGURATIVE = _words(
    "cheer mix shake loosen wind settle cut catch perk lighten toughen liven read speed slow chat dress tidy freshen scale ramp build hurry chill wise man mess"
    " sober quieten warm cool calm bulk slim size"
)
"""Verbs that with "up", "down" or "back" speak of no place: "cheer up a bit"."""
_TRAVELS = _words("walk walks walking run running jog jogging cycle cycling swim swimming ride riding hike hiking")
_OFTEN = _words("each every daily than per this next")
_HELD_KIT = _words("bar bell ball stick pole dumbbell dumbbells kettlebell rope oar blade racket bat paddle club wand")
_BREATHING = _words(
    "breath breaths breathe breathing inhale inhaling inhales exhale exhaling exhales breathes sigh sighs"
)
_PLACES_BY_LANDMARK = _words("above below outside inside past beyond behind under underneath beneath beside")
_REACHES = _words("past beyond below above under beneath against outside inside")
_DETERMINERS = _words("a an the some your his her their its my our those these that this any no each every another one")
_MEASURING_PARTS = _words("hip knee chest shoulder waist ankle thigh chin head eye calf navel elbow")
_LENGTHS = _words("long longer short shorter")
_NEEDS_A_SHAPE = _words(
    "long longer short shorter larger bigger big small smaller tiny tinier little huge massive teeny teensy mini dinky minimal reduced slight modest moderate"
)
_STRENGTHENED = _words(
    "too pretty fairly quite rather really very super extra nice good kinda sorta sort kind so reasonably relatively medium not"
)
_WAY_PLACES = _words(
    "back out up down over in forward forwards ahead behind past overhead apart below above off wide wider high higher low lower deep deeper"
)
_WELL_PLACES = _words(
    "apart forward forwards back out wide clear behind ahead away over past in bent open tucked below above spread"
)

_PLACE_OR_AMOUNT = _words("over under above below past beyond short off left behind down back up")
"""Places that are amounts before a number or a time: "a bit over a minute"."""
_POINTED_OR_SET = _words("this that how as however yay yea whatever such these those")
"""Words that point a size out or leave it to the reader: "this wide", "as wide as"."""
_STATES = _words("come comes add adds count counts matter matters are is make makes lead were was")
"""Verbs after a noun that make it a statement and no order: "small steps add up"."""
_OPENERS = _words("a an some the your another those these")
"""Words that open a noun phrase and belong to the mark."""
_DISTANCES = _words("close far wide further farther closer nearer near")
"""Sizes that take a direction with them: "wide apart", "further back"."""
_WELL_OTHERWISE = _words("as very do did so is it works")
"""Words before "well" that make it a praise or a comparison."""
_FALLS_SHORT_OF = _words("it them lockout straight locked full vertical horizontal")
"""Ends of a movement that "just short of" stops before."""
_STEP_WAYS = _words("back backward backwards forward forwards away sideways out")
"""Where a step can go."""
_GIVES_A_GAP = _words("leave leaving with keep keeping make open have")
"""Words before "a gap" in an order."""
_LOOSE_GRADES = _words("just only so and more less still even")
"""Grading words that open no mark."""
_NO_SCALE = _words("that this usual before normal you feels most it last i we they for in on")
"""Words after "than" that give no scale."""
_GOES_ON = _words(
    "by about roughly say around like maybe until till so just level no at to in close far wide enough approximately not touching below above past under outside perhaps only or with which and more one two three half a an the though beyond against never stopping ending"
)
"""Words after a pause that still speak of the same thing."""


def find(sentence: Sentence) -> Iterator[Span]:
    """The vague words of a sentence that nothing in the sentence explains."""
    words = sentence.words
    if words[0] == "lower" and words[1:] in ([], ["."], ["!"]) and [word for word in sentence.earlier[-2:] if word not in PAUSES][-1:] == ["lower"]:
        yield 0, 1  # "Lower. Lower."
    for place, word in enumerate(words):
        read = _READERS.get(word)
        if read is None:
            continue
        span = read(words, place)
        if span and not _described(words, *span) and not _explained(words, *span):
            yield span


# --- what a word of size is said of -----------------------------------------------------------------------------------


def _amount(words: list[str], place: int) -> Span | None:
    """ "a bit", "just a little", "a good way", with what follows."""
    first = place
    while first > 0 and place - first < 6 and words[first - 1] in _AMOUNT_ADJECTIVES:
        first -= 1
    word = words[place]
    if first == 0 or words[first - 1] not in ("a", "an", "the", "some", "another"):
        if not (
            word in ("bit", "smidge", "tad", "smidgen", "hair", "touch") and words[place + 1 : place + 2] == ["more"]
        ):
            return None
        start = first
    else:
        start = first - 1
        if (words[start] == "the" and not words[first].endswith("est")) or (
            words[start] == "some" and word not in ("way", "ways", "distance")
        ):
            return None
    if word in ("way", "ways") and (
        first == place and words[start] != "some" and word != "ways" and word_at(words, start - 1) != "quite"
    ):
        return None
    if word in ("way", "ways") and start > 0 and words[start - 1] in ("in", "come", "comes", "came", "goes", "gone", "by", "is", "'s"):
        return None
    if words[max(0, start - 4) : start - 1] == ["it", "out", "of"]:
        return None  # "it took it out of you a fair bit"
    if word in ("good", "deal"):
        return None
    if start > 0 and words[start - 1] in ("at", "of", "for", "after"):
        return None
    if (
        start > 0
        and words[start - 1] == "in"
        and word in ("bit", "little")
        and not (_has(words, _clause(words, start), start, _BODY | say.MOVES))
    ):
        return None
    if (
        word in say.NOUNISH_AMOUNTS
        and word_at(words, place + 1) not in say.PREDICATES
        and word_at(words, place + 1) not in say.POSTURES
        and word_at(words, place + 1) != "more"
        and (
            word_at(words, start - 1 - (word_at(words, start - 1) in ("just", "only"))) not in say.PARTICLES
            and word_at(words, start - 1) not in _BODY
            and word_at(words, start - 1) not in say.MOVES - say.TIMID_MOVES - _PUTS
            and word_at(words, place + 1) not in ("of", "to")
            and word_at(words, start - 1) not in ("it", "them")
        )
    ):
        return None
    if word in ("way", "ways") and word_at(words, start - 1) == "such" and word_at(words, start - 2) in ("come", "comes", "came", "gone", "is", "'s"):
        return None
    if start > 0 and words[start - 1] in ("such", "by"):
        start -= 2 if words[start - 2 : start] == ["ever", "such"] else 1
    if start > 0 and words[start - 1] == "quite":
        start -= 1
    if start > 0 and words[start - 1] == "not":
        start -= 1
    end = place + 1
    if word in ("way", "ways") and word_at(words, end) in ("to", "of", "that", "you", "we"):
        return None
    if (
        word == "lot"
        and word_at(words, start - 1) in _BODY
        and (_finished(words, end) or words[end : end + 2] == ["to", "start"])
        and words[max(0, start - 3) : start - 2] in (["bend"], ["turn"], ["lift"], ["raise"], ["straighten"])
    ):
        return start, end
    if (
        word == "lot"
        and words[start] not in ("not", "quite")
        and not (word_at(words, end) in ("less", "more") and word_at(words, end + 1) in say.SHAPES | _ANGLES)
        and word_at(words, end) not in say.PREDICATES
        and not (word_at(words, start - 1) in say.PARTICLES and _finished(words, end) and _has(words, _clause(words, start), start, say.MOVES - say.TIMID_MOVES))
    ):
        return None
    if (
        word in ("way", "ways")
        and _finished(words, end)
        and (first < place or word == "ways")
        and word_at(words, end) not in (("through",) if word == "ways" else ("from", "through"))
        and not _other_verb(words, start)
    ):
        return start, end
    return _degree(words, start, end)


_PUTS = _words("put puts putting place throw stick set add")
_AMOUNT_ADJECTIVES = _words(
    "tiniest slightest smallest weest merest little wee tiny teeny teensy good fair decent small short long big whole bare slight fraction healthy reasonable tad mere just quick hair touch nice great"
)


def _adverb(words: list[str], place: int) -> Span | None:
    """ "slightly", "somewhat", "partway", with what follows or went before."""
    start = place
    if start > 0 and words[start - 1] in ("very", "ever", "so", "only", "just", "too"):
        start -= 1
        if words[start] == "so" and word_at(words, start - 1) == "ever":
            start -= 1
    return _degree(words, start, place + 1)


def _degree(words: list[str], start: int, end: int) -> Span | None:
    """The span of a phrase of degree if it is said of a place, an angle or a movement."""
    if (
        words[max(0, start - 3) : start]
        and "there" in words[max(0, start - 3) : start]
        and word_at(words, end) not in say.SHAPES
    ):
        return None
    follows = word_at(words, end)
    if follows in ("further", "farther") and word_at(words, start - 1) in _TRAVELS and word_at(words, end + 1) in _OFTEN:
        return None
    if _feels(words, start) and follows in ("low", "high", "close", "far"):
        return None
    if follows == "far" and words[max(0, start - 2) : start] in (["that", "'s"], ["that", "is"]):
        return None
    if follows in ("too", "ever", "very", "just"):
        follows = word_at(words, end + 1)
        end += 1
    if follows in ("more", "less"):
        after = word_at(words, end + 1)
        if after in say.FEELINGS or after in say.UNSPATIAL:
            return None
        if after in say.SHAPES or after in _ANGLES or after in say.POSTURES or after == "upright" or after in say.SIZES:
            return start, end + 2
        if after == "of" and _shape_after_of(words, end + 2):
            return start, _shape_after_of(words, end + 2)
        if not _finished(words, end + 1):
            return None
        return (start, end + 1) if _moved(words, start, end + 1) else None
    if follows in say.UNSPATIAL or (follows in say.FEELINGS and follows not in say.POSTURES):
        return None
    if follows == "like" or (follows == "left" and word_at(words, end + 1) == "over"):
        return None  # "a bit like house guests", "a bit left over"
    if follows == "of":
        stop = _shape_after_of(words, end + 1)
        if words[end - 1] == "amount" and not stop:
            return None  # "a small amount of swelling"
        if stop and words[stop - 1] in ("space", "room", "distance") and not _of_the_body(words, start):
            return None
        return (start, stop) if stop else None
    if follows in say.SIZES or follows in say.PREDICATES:
        after = word_at(words, end + 1)
        if after in say.SHAPES or after in say.WEAK_SHAPES:
            return start, end + 2
        if follows in ("longer", "long", "short", "shorter", "tight", "tighter", "late") and not _has(
            words, _clause(words, start), end, say.SHAPES
        ):
            return None
        if after in say.UNSPATIAL or after in say.ANATOMY or not (_finished(words, end + 1) or after in say.POSTURES):
            return None
        if _blocked(words, start) or (after == "into" and word_at(words, end + 2) in ("how", "why", "what", "it")):
            return None
        return start, end + 1
    if follows in say.POSTURES:
        after = word_at(words, end + 1)
        if follows in _PLACE_OR_AMOUNT and (
            after in say.UNSPATIAL
            or (after in say.NUMBERS and after not in ("a", "an"))
            or after[:1].isdigit()
            or after in ("half", "schedule", "pain", "colour", "form")
        ):
            return None
        if _other_verb(words, start) or _feels(words, start) or words[end : end + 3] == ["out", "of", "breath"]:
            return None
        if follows == "in" and word_at(words, end + 1) == "front":
            return (start, end) if not _landmark(words, end + 2, 4) and (_moved(words, start, end) or words[start] == "some") else None
        if follows == "in" and not _finished(words, end + 1):
            return None
        if follows == "in" and word_at(words, start - 1) == "," and word_at(words, start - 2) in say.PARTICLES and word_at(words, start - 3) in say.MOVES:
            return start, end  # "press up, slightly in,"
        if follows in ("in", "over", "across", "around", "round", "on") and not _moved(words, start, end):
            return None
        return start, end
    if follows in say.MOVES and follows not in ("gone", "done", "made", "set", "run") and words[end - 1] in say.DEGREE_ADVERBS and not _finished(words, end):
        return start, end
    if _finished(words, end) and _moved(words, start, end):
        return start, end
    return None


def _shape_after_of(words: list[str], place: int) -> int:
    """Where the noun ends in "(a bit of) a bend"; 0 if there is none."""
    for reach in range(place, min(place + 4, len(words))):
        word = words[reach]
        if word in say.SHAPES or word in _ANGLES:
            return reach + 1
        if (
            word not in ("a", "an", "the", "your")
            and word not in _BODY
            and word not in say.POSTURES
            and word not in say.SIZES
        ):
            return 0
    return 0


def _size(words: list[str], place: int) -> Span | None:
    """A size before a noun of movement, or alone after a part of the body or a verb."""
    before = word_at(words, place - 1)
    if before == "as" and word_at(words, place - 2) in ("near", "quite", "nearly", "not"):
        if "as" in words[place + 1 : place + 8] or words[place] not in say.PREDICATES or not _finished(words, place + 1):
            return None
        start = _clause(words, place - 1)
        first = place - 1
        while words[first - 1] in ("near", "quite", "nearly", "not", "nowhere", "anywhere"):
            first -= 1
        return (first, place + 1) if _has(words, start, place, say.MOVES) and not _blocked(words, place) else None
    if words[place - 2 : place] == [words[place], "and"] and words[place].endswith("er"):
        return _again_and_again(words, place)
    if before in _POINTED_OR_SET and word_at(words, place + 1) not in say.SHAPES:
        return None
    if before == "so" and word_at(words, place - 2) not in ("ever", "not"):
        return None
    if word_at(words, place + 1) == "enough" or (
        words[place] == "little" and words[place + 1 : place + 3] == ["and", "often"]
    ):
        return None
    if before in _MEASURING_PARTS and words[place] in ("high", "deep") and word_at(words, place - 2) not in _DETERMINERS:
        return None  # "hip high"
    if before in _MEASURING_PARTS and words[place] == "wide" and word_at(words, place - 2) not in _DETERMINERS and before in ("hip", "shoulder", "chest"):
        return None  # "hip wide"
    if word_at(words, place + 1) in _STOOD_ON and words[place] in _OF_A_STEP and _chosen(words, place):
        return place, place + 1
    if words[place] == "far" and before == "less" and words[place - 2] in say.MOVES and word_at(words, place + 1) in _FORWARD:
        return place - 1, place + 1
    if words[place] in ("high", "low", "wide") and words[place - 2 : place] in (["have", "them"], ["have", "it"]) and _finished(words, place + 1):
        return place, place + 1
    if words[place] in _TINY and before == "be" and words[_clause(words, place)] == "it" and _finished(words, place + 1) and word_at(words, place - 2) == "to":
        return place, place + 1
    parts = say.WIDE_PARTS.get(words[place])
    if parts and word_at(words, place + 1) in parts and before not in _DETERMINERS:
        return _grown(words, place), place + 2
    return _before_noun(words, place) or _alone(words, place)


_STOOD_ON = _words("step box chair chairs stool bench")
_OF_A_STEP = _words("low lower high higher")
_CHOOSES = _words("use uses using find choose pick get take try no avoid want need")


def _chosen(words: list[str], place: int) -> bool:
    """Whether a step or seat is to be chosen by its height: "use a low step", "low step only"."""
    if word_at(words, place - 1) in ("the", "your", "this", "that", "or", "of"):
        return False
    return word_at(words, place + 2) == "only" or _has(words, max(0, place - 4), place, _CHOOSES)


def _before_noun(words: list[str], place: int) -> Span | None:
    word = words[place]
    if word not in say.SIZES:
        return None
    count = len(words)
    reach = place + 1
    while reach < count and reach < place + 5:
        noun = words[reach]
        if noun in say.SHAPES:
            if word in ("acute", "obtuse", "mild", "sharp") and noun not in _ANGLES and word != "mild":
                return None
            if word in say.NOT_WITH.get(noun, ()):
                return None
            if word in ("some", "certain") and noun not in _ANGLES:
                return None
            break
        if noun in ("way", "ways"):
            return None
        if noun == "ones":
            if word_at(words, place - 1) in ("the", "your", "those", "these", "two", "some", "any") or not (
                _has(words, max(0, place - 14), place, say.SHAPES)
                or (_has(words, max(0, place - 14), place, say.MOVES - say.TIMID_MOVES) and _has(words, max(0, place - 14), place, _BODY))
            ):
                return None
            break
        if noun in say.SIZES_OF_WEAK:
            if word not in say.SIZES_OF_WEAK[noun]:
                return None
            if (
                noun in ("range", "way", "ways")
                and word_at(words, reach + 1) in ("of", "to")
                and word_at(words, reach + 2) not in ("motion", "movement")
            ):
                return None
            break
        if (
            noun in ("and", ",")
            and word_at(words, reach + 1) not in say.SIZES
            and word_at(words, reach + 1) not in say.FEELINGS
            and word_at(words, reach + 1) not in _BETWEEN
        ):
            return None
        if (
            noun not in say.SIZES
            and noun not in say.FEELINGS
            and noun not in _BODY
            and noun not in say.POSTURES
            and noun not in _BETWEEN
        ):
            return None
        if noun in _BODY and (
            (noun.endswith("s") and noun != "biceps")
            or (word, noun) in _NAMES
            or (word in ("low", "lower", "upper", "deep") and noun != "knee")
        ):
            return None
        reach += 1
    else:
        return None
    if reach >= count:
        return None
    end = reach + 1
    if word_at(words, end) in say.UNSPATIAL and word_at(words, end) not in ("weight", "weights"):
        return None
    if (
        noun in ("jump", "step", "drop", "jumps", "steps")
        and word_at(words, end) in ("in", "of", "for")
        and word_at(words, end + 1) in say.UNSPATIAL
    ):
        return None
    if (word_at(words, end) in _STATES or words[end : end + 2] in (["do", "not"], ["does", "not"], ["do", "nothing"])) and word_at(words, place - 1) not in _DETERMINERS:
        return None
    if noun == "loop" and word.endswith("er") and word_at(words, place - 1) == "the":
        return None  # one of two loops
    if noun == "circle" and word_at(words, end) == "of" and word_at(words, end + 1) in ("friends", "people", "family", "mates", "colleagues"):
        return None
    if noun in _GAPS and word_at(words, end) == "between" and word_at(words, end + 1).endswith("ing"):
        return None  # "a big gap between knowing and doing"
    if noun in ("beats", "beat") and word_at(words, end) in say.NUMBERS:
        return None  # "a tight trunk beats three minutes of sagging"
    if word in ("mini", "micro") and word_at(words, end) == ":" and word_at(words, place - 1) not in _DETERMINERS:
        return None  # the name of an exercise
    if noun == "amount" and word_at(words, end) == "of" and not _shape_after_of(words, end + 1):
        return None
    if word == "gentle" and noun == "bend" and words[reach - 1] == "knee":
        return None
    if noun == "wobble" and word_at(words, end) == "in":
        return None  # it comes of itself
    if noun in _CHANGES and word_at(words, end) in ("in", "for") and not any(other in _BODY or other in _SURFACES for other in words[end + 1 : end + 4]):
        return None  # "a huge leap in fitness"
    if noun == "grip" and word_at(words, end) in ("bar", "handle", "machine", "attachment", "pulldown", "pull-up", "press", "row", "bench", "strength"):
        return None
    if noun in _GAPS and word_at(words, end) == "between" and not _BREAKS_BETWEEN.isdisjoint(words[end + 1 : end + 3]):
        return None
    if noun in ("flutter", "wobble", "kick", "click", "drop", "rise") and (
        _has(words, max(0, place - 6), place, _NOTICED) or (word_at(words, end) in ("is", "'s") and word_at(words, end + 1) in ("good", "fine", "normal", "okay", "ok"))
    ):
        return None
    if noun == "step" and (word_at(words, place - 1) == "a" and word_at(words, place - 2) in ("is", "'s", "was")):
        return None  # "it's a big step"
    if word_at(words, place - 1) == "many":
        return None
    first = _grown(words, place)
    if word == "little" and first == place and word_at(words, place - 1) == "a" and noun in ("move", "work"):
        return None
    if first > 0 and words[first - 1] in _OPENERS:
        first -= 1
    return first, end


_CHANGES = _words("jump leap rise drop dip shift step slide swing climb move turn")
_GAPS = _words("gap gaps space spaces spacing distance separation")
_BREAKS_BETWEEN = _words("sets set rounds round sessions meals doses workouts reps repetitions exercises days classes visits lessons efforts sprints intervals pills tablets")
_NOTICED = _words("notice noticed feel feels felt sense have has had heart chest")

_NAMES = frozenset((size, part) for size in ("big", "little", "great", "small") for part in ("toe", "finger", "thumb"))
"""Parts of the body with a size in their name."""

_BETWEEN = _words(
    "and , controlled smooth steady even easy slow relaxed circular more less v bouncy springy lazy cat hip knee elbow of soft loose"
)


def _alone(words: list[str], place: int) -> Span | None:
    word = words[place]
    if word not in say.PREDICATES:
        return None
    after = word_at(words, place + 1)
    first = _grown(words, place)
    graded = first < place
    end = place + 1
    if after == "," and word_at(words, first - 1) in ("a", "an", "the", "your", "some"):
        return None  # "a large, soft ball"
    if word == "close" and not graded:
        if word_at(words, place - 1) in ("and", "then", "or", "to") or after in ("round", "around", "over", "on", "about"):
            return None  # the verb
        if word_at(words, place - 1) in _STANDS and after in ("", ".", ",", "!", "and", "then"):
            return first, end
    if word == "lower" and not graded and (words[place + 1 : place + 3] == [",", "lower"] or words[max(0, place - 2) : place] == ["lower", ","]):
        return first, end
    if word.endswith("er") and words[max(0, first - 2) : first] in (["do", "it"], ["do", "them"], ["do", "these"], ["do", "those"], ["try", "it"]) and _finished(words, end):
        return (first, end) if word in say.ALONE else None
    if word == "long" and graded and _has(words, max(0, first - 3), first, _REACHING) and _finished(words, end):
        return first, end
    if word in ("big", "long", "wide") and word_at(words, place - 1) in say.PARTICLES and _has(words, _clause(words, place), place, _BODY) and _finished(words, end):
        if word == "long" and word_at(words, place - 1) == "back":
            return None
        return (first if word == "wide" else place - 1, end) if not _blocked(words, place) else None
    if words[end : end + 2] in (["the", "whole"], ["all", "the"], ["the", "entire"]) and word_at(words, end + 2) in ("way", "time", "set", "round", "song"):
        if word in ("low", "wide", "high", "deep", "shallow", "narrow") and not _blocked(words, first) and not _other_verb(words, first):
            return (first, end) if _has(words, _clause(words, first), first, say.MOVES | _BODY) else None
    if (
        word in _SAID_AFTER
        and first > 1
        and words[first - 1] in (",", "—", ":")
        and _clause(words, first) == first
        and (after in ("", ",", ".", "!", "for", "but") or (after == "and" and word_at(words, end + 1) in _FLATS))
        and any(other in _BODY or other in say.SHAPES for other in words[max(0, first - 8) : first - 1])
        and not any(other in say.UNSPATIAL or other in say.OTHER_VERBS or other in say.FEELINGS for other in words[max(0, first - 5) : first - 1] if other not in ("set", "sets"))
    ):
        return first, end
    if (word in _DISTANCES and after in _FORWARD and word_at(words, place + 2) not in ("here", "there")) or (
        word in ("high", "deep", "higher", "deeper") and after in ("up", "down")
    ):
        end += 1
    elif word in ("near", "close", "nearer") and after in ("the", "your"):
        pass
    elif (not _finished(words, end) and not (word_at(words, end + 1) in ("here", "there") and after in say.PARTICLES | {"on", "over", "under"})) or after in ("of", "is", "are", "'s"):
        return None
    if word in ("close", "near", "nearer") and after in ("to", "by", "your", "the", "it"):
        if after == "by" and _finished(words, place + 2) and word_at(words, place + 2) not in ("the", "your"):
            return first, end + 1
        if after == "to" and word_at(words, place + 2) in ("you", "yourself"):
            return first, end
        if (
            not graded
            or words[first:place] == ["not"]
            or word_at(words, place + 2) in ("bedtime", "call", "home", "surgery", "lunch", "dinner", "tea", "race", "death")
            or after == "by"
            or word_at(words, place + 2) in say.UNSPATIAL
            or word_at(words, place + 2) in ("failure", "tears")
        ):
            return None
        return first, end
    if word == "closer" and after == "to" and word_at(words, place + 2) in ("failure", "your", "bed") and not graded:
        return None
    if word in ("further", "farther", "longer") and word_at(words, first - 1) in _TRAVELS and after in _OFTEN:
        return None
    if _feels(words, first) and word in ("low", "high", "close"):
        return None
    if word == "far" and words[max(0, first - 2) : first] in (["that", "'s"], ["that", "is"]):
        return None
    if word in ("far", "further", "farther") and (
        (after in ("from", "as") and word_at(words, first) != "not") or word_at(words, place - 1) in ("by", "no", "any", "as")
    ):
        return None
    if word == "near" and graded and after in ("you", "yourself", "it", "them"):
        return first, end
    if word in ("nearer", "closer") and after in ("the", "your") and word_at(words, place - 1) in say.MOVES and not _blocked(words, first):
        return first, end
    if word == "lower" and not graded and place and words[place - 1] in _BODY and after in ("", ".", ",", "!") and _clause(words, place) >= place - 2:
        return first, end
    if word in ("closer", "nearer", "higher", "lower") and word_at(words, first - 1) in _HELD_KIT and _clause(words, first) >= first - 2 and after in ("", ".", ",", "!", "to"):
        return (first, end) if word != "lower" or after != "to" else None
    if word in ("tight", "tighter", "compact", "near"):
        return None
    if word in ("short", "shorter", "long", "longer") and word_at(words, first - 1) in _LINES and _has(words, _clause(words, first), first, _words("keep hold make have")):
        return first, end
    if word_at(words, place - 1) in ("no", "any", "the", "or", "aim", "every") and not (end - place > 1):
        return None
    if word_at(words, place - 1) == "less" and first >= place - 1:  # "less high": where it hurts, not how far
        return None
    if word == "longer" and words[max(0, place - 1) : place] in (["glide"], ["reach"], ["stride"], ["stretch"]) and after in ("off", "with", "on", "and", ",", "."):
        return first, end
    if word in _LENGTHS and not (word.endswith("er") and word_at(words, first - 1) in _STRIDES) and any(other in say.NUMBERS or other.isdigit() for other in words[max(0, first - 3) : first]):
        return None
    start = _clause(words, first)
    if (
        start == first and words[first - 1 : first] == ["and"] and first > 1 and words[first - 2] not in PAUSES
    ):  # "square and low"
        start = _clause(words, first - 1)
    if (
        word in ("lower", "close", "narrow", "wide")
        and place == start
        and not graded
        and word_at(words, place + 1) in say.FOLLOWERS
        and after not in ("apart", "and")
    ):
        return None
    if _blocked(words, first):
        return None
    if word.endswith("er") and _has(words, start, first, _CANNOT) and "not" in words[start:first] and after in ("without", "", ",", "."):
        return None  # "when you can't go further without rounding"
    if word == "far" and words[first] == "not" and (after in ("now", "to") or words[max(0, first - 2) : first] in (["it", "'s"], ["it", "is"])):
        return None  # "not far to go"
    if word == "far" and (word_at(words, first - 1) == "gone" or after == "too"):
        return None
    if word == "far" and after == "away" and not _has(words, start, first, say.MOVES | _BODY):
        return None  # "your spray is in the bag, it's too far away"
    if word in ("deep", "deeper") and (
        after in ("in", "inside", "into", "within") and _has(words, start, place, say.OTHER_VERBS)
    ):
        return None
    if (
        word_at(words, end) == "with"
        and word_at(words, end + 1) in ("the", "your", "those", "both")
        and (word_at(words, end + 2) in _BODY or word_at(words, end + 3) in _BODY)
    ):
        return first, end
    subject = verb = shape = told = False
    it = False
    if words[first - 1] in ("growing", "getting", "becoming") and word.endswith("er") and _has(words, max(0, first - 16), first - 1, say.SHAPES):
        return first, end  # "ten circles, getting bigger"
    for reach in range(first - 1, start - 1, -1):
        other = words[reach]
        if (other in say.OTHER_VERBS and other != "said") or other in ("eyes", "mouth", "awake", "price"):
            return None
        if (other in say.SHAPES or other in say.WEAK_SHAPES) and (word not in _LENGTHS or other in _STRIDES):
            shape = True
        if other in _BODY:
            subject = True
        if other in say.MOVES and not (word_at(words, reach - 1) in ("the", "a", "an") and other not in say.SHAPES):
            if not verb and (other in say.TELLING_PAST or other.endswith("ed")) and other not in say.SIZES and word_at(words, reach - 1) != "be":
                told = True
            verb = True
        if other == "one" and word_at(words, reach + 1) != "of" and _has(words, max(0, start - 14), reach, _BODY):
            subject = True
        if other in ("it", "them", "these", "those", "everything"):
            it = True
        if other == "be":
            verb = True
    if told and not subject:
        return None
    if word == "sky-high" or (
        word == "close" and after in ("", ",", ".", "and", "then") and word_at(words, first - 1) == "in" and verb
    ):
        return first, end
    if start == first and first == 2 and words[1] == ":" and words[0] in ("depth", "height", "width", "reach", "step", "spacing", "hips", "stroke", "swing"):
        return first, end
    if start == first and first > 1 and words[first - 1] == ":":  # "Trunk lean: minimal."
        shape = any(
            other in say.SHAPES or other in say.MOVES or other in ("length", "range", "stance")
            for other in words[max(0, first - 4) : first - 1]
        )
        verb = verb or shape
    if word in _NEEDS_A_SHAPE:
        if (
            start == first
            and word not in _LENGTHS
            and after == "and"
            and word_at(words, place + 2) in say.FEELINGS
            and word_at(words, place + 3) in ("", ".", ",", "!")
        ):  # "Tiny and quick."
            return first, end
        if (
            start == first
            and first > 0
            and _said_apart(words, first, end)
            and word not in ("long", "longer", "short", "shorter")
        ):
            return first, end
        if (
            words[start:first] in (["it", "'s"], ["it", "is"], ["i", "said"], ["they", "are"])
            and word in _TINY
            and after in ("", ",", ".", "!")
        ):
            return first, end
        if not (
            shape
            or (it and verb and word_at(words, place - 1) in ("it", "them", "it's"))
            or (graded and word_at(words, first) in ("ever", "nice"))
        ):
            return None
        return first, end
    if word == "lower" and after == "than" and word_at(words, end + 1) in _NO_SCALE and subject and verb:
        return first, end
    if word == "lower" and not graded and word_at(words, place - 1) not in _GOES:
        return None
    if word == "lower" and not graded and word_at(words, place + 1) in ("the", "your"):
        return None
    if word in ("close",) and end == place + 1 and not graded and not (subject or it):
        return None
    if subject or verb or shape:
        return first, end
    if (
        word in say.ALONE
        and start == first
        and (word_at(words, place + 1) in ("", "than") or words[place + 1] in PAUSES)
        and (word != "lower" or after == "than")
    ):
        return first, end
    if (
        graded
        and any(other in _STRENGTHENED for other in words[first:place])
        and place - first <= 3
        and all(other in _THAT_IS for other in words[start:first])
    ):
        return first, end
    return None


_LINES = _words("rope band strap lead cord line leash tether towel")
_CANNOT = _words("can could cannot")
_STANDS = _words("stand step come move sit keep hold stay stands sits")
_REACHING = _words("arm arms leg legs reach")
_SAID_AFTER = _words("wide narrow shallow wider narrower higher deeper shallower high low")
"""Sizes that may stand alone after a pause: "Feet: narrow for set one, wider for set two"."""

_FLATS = _words("flat long slow strong loose relaxed soft steady")
_TINY = _words("tiny small little minimal teeny big huge large")


def _said_apart(words: list[str], first: int, end: int) -> bool:
    """Whether a size stands alone between pauses after words of movement: "waves, big, from the shoulder"."""
    if words[first - 1] not in (",", "—", ":", "then") or word_at(words, end) not in (",", ".", "!", "", "to", "from", ";"):
        return False
    return any(
        word in say.SHAPES or word in say.MOVES or word in _BODY for word in words[max(0, first - 10) : first - 1]
    )


_THAT_IS = _words("that it this they you 's is are was yours now still looks there oh no right")
_GOES = _words(
    "go get stay sit sink come keep drop hang start finish squat crouch hinge a bit slightly even much it them yourself hold reach hover be go goes going aim"
)


def _way(words: list[str], place: int) -> Span | None:
    """ "way back", "way in front"; "a little way" is an amount."""
    after = word_at(words, place + 1)
    before = word_at(words, place - 1)
    if before == "the" and (_finished(words, place + 1) or after in say.PARTICLES):
        start = place - 3
        if words[max(0, start) : place - 1] in _PARTS_OF_THE_WAY and _has(words, _clause(words, start), start, _BENDING):
            return start, place + 1
    if (
        after in _WAY_PLACES
        and before not in _NOT_BEFORE_WAY
        and before not in say.SIZES
        and before not in _AMOUNT_ADJECTIVES
    ):
        if after == "in" and word_at(words, place + 2) != "front":
            return None
        if (after == "back" and word_at(words, place + 2) in ("when", "in")) or (after == "ahead" and word_at(words, place + 2) == "of" and word_at(words, place + 3) not in ("your", "the")):
            return None
        if _other_verb(words, place):
            return None
        return place, place + (3 if after == "in" else 2)
    return _amount(words, place)


_BENDING = say.MOVES - _words("walk walks walking run runs running jog jogs jogging go goes going come comes march row swim ride travel pedal climb keep stay hold work")
_PARTS_OF_THE_WAY = (["part", "of"], ["some", "of"], ["most", "of"], ["half", "of"], ["nearly", "all"], ["almost", "all"])
_NOT_BEFORE_WAY = _words(
    "the this that your a an one any either which same half my their his her our its all every each other another no some long"
)


def _well(words: list[str], place: int) -> Span | None:
    """ "well apart", "well forward"."""
    if word_at(words, place + 1) == "short" and word_at(words, place - 1) in ("stop", "stops", "stopping", "finish") and _finished(words, place + 2):
        return place, place + 2
    if word_at(words, place + 1) not in _WELL_PLACES or word_at(words, place - 1) in _WELL_OTHERWISE:
        return None
    start = _clause(words, place)
    if words[place + 1] == "back" and word_at(words, place - 1) in ("sit", "sits", "sitting"):
        return None
    if _has(words, start, place, say.MOVES) or _has(words, start, place, _BODY):
        return place, place + 2
    return None


def _gap(words: list[str], place: int) -> Span | None:
    """ "just off the mat", "just short of the floor"."""
    after = word_at(words, place + 1)
    end = 0
    if after == "off" or (after in ("clear", "short", "shy") and word_at(words, place + 2) in ("of", "the")):
        end = place + 2 if after == "off" else place + 3
    elif after in ("above", "over") and word_at(words, place + 2) in ("the", "a") and word_at(words, place + 3) in _GROUND:
        end = place + 2
    if not end:
        return None
    while end < min(len(words), place + 6) and words[end] in _DETERMINERS:
        end += 1
    if end < len(words) and (words[end] in _SURFACES or words[end] in _BODY or words[end] in _FALLS_SHORT_OF):
        return place, end + 1
    return None


_GROUND = _words("floor ground mat bench chair seat bed stool box step carpet rug platform deck")


def _shy(words: list[str], place: int) -> Span | None:
    """ "shy of the floor", "a whisker shy of straight"."""
    if word_at(words, place + 1) != "of" or word_at(words, place - 1) in ("just", "be", "am", "is", "are", "feel", "never", "not"):
        return None
    first = _grown(words, place)
    return first, place + 2


def _some(words: list[str], place: int) -> Span | None:
    """ "tucked in some", "some bend"."""
    after = word_at(words, place + 1)
    if after in _ANGLES and word_at(words, place - 1) != "in":
        if after == "bend" and place == 0 and word_at(words, 2) in ("their", "the", "at", "from", "too"):
            return None  # "some bend their knees"
        if after in ("space", "room") and word_at(words, place - 1) in ("find", "make", "give", "grab", "get", "need", "want"):
            return None
        if (after in ("space", "room") and not _of_the_body(words, place)) or (after == "distance" and not _ROOM_FOR.isdisjoint(words[place : place + 8])):
            return None
        return place, place + 2
    if after in ("way", "distance"):
        return None
    before = word_at(words, place - 1)
    end = place + 1
    if after == "more":
        end += 1
    if not _finished(words, end) or word_at(words, end) == "of":
        return None
    if (
        before in say.POSTURES
        or (before in say.MOVES and before not in say.TIMID_MOVES)
        or (
            word_at(words, end) in ("", ",", ".", "and", "then")
            and before not in say.UNSPATIAL
            and word_at(words, place - 3) in say.MOVES
            and word_at(words, place - 3) not in say.TIMID_MOVES
        )
    ) and not _other_verb(words, place):
        return place - 1, end
    return None


_ROOM_FOR = _words("yourself yourselves week day life diary head mind drama work think breathe thinking clear floor budget")
_LEAVES = _words("leave leaving keep keeping with between under behind in")


def _of_the_body(words: list[str], place: int) -> bool:
    """Whether "some space" is one that parts of the body or of kit leave."""
    near = words[max(0, place - 4) : place + 8]
    return _ROOM_FOR.isdisjoint(near) and bool(_LEAVES.intersection(near) or _BODY.intersection(near))


def _much(words: list[str], place: int) -> Span | None:
    """ "not much", "not too much", "bend too much"."""
    if word_at(words, place - 1) in ("as", "how", "so", "very", "this", "that", "pretty"):
        return None
    if word_at(words, place - 1) == "too" and word_at(words, place - 2) in _IS:
        return None  # "if jumping is too much"
    first = place
    if word_at(words, first - 1) in ("too", "very"):
        first -= 1
    if word_at(words, first - 1) == "not" and word_at(words, first - 2) not in ("do", "does", "did", "is", "are"):
        first -= 1
    elif first == place and not _has(words, _clause(words, place), place, frozenset(("never", "not"))):
        return None
    if word_at(words, place + 1) in ("past", "below", "above", "beyond", "over", "under") and word_at(words, place + 2) in (
        "that",
        "this",
        "it",
    ):
        return first, place + 2
    if not _finished(words, place + 1):
        return None
    return (first, place + 1) if _moved(words, first, place + 1) else None


def _angle(words: list[str], place: int) -> Span | None:
    """ "at an angle"."""
    if words[place - 2 : place] == ["at", "an"] and word_at(words, place + 1) not in ("of", "that", "where"):
        return place - 2, place + 1
    return None


def _loads(words: list[str], place: int) -> Span | None:
    """ "push the hips back loads"."""
    if word_at(words, place - 1) in say.PARTICLES and _finished(words, place + 1) and word_at(words, place + 1) != "of":
        start = _clause(words, place)
        if _has(words, start, place, say.MOVES) and _has(words, start, place, _BODY - say.PARTICLES):
            return place, place + 1
    return _miles(words, place) if words[place] == "miles" else None


def _thin(words: list[str], place: int) -> Span | None:
    """ "pinch until it is fairly thin"."""
    first = _grown(words, place)
    if first < place and _finished(words, place + 1) and words[max(0, first - 2) : first] in (["it", "is"], ["it", "'s"]):
        return first, place + 1
    return None


def _hardly(words: list[str], place: int) -> Span | None:
    """ "knees hardly bent"."""
    return (place, place + 1) if word_at(words, place + 1) in say.POSTURES and word_at(words, place - 1) in _BODY and word_at(words, place + 1).endswith(("bent", "ed", "open", "apart")) else None


def _enough(words: list[str], place: int) -> Span | None:
    """ "enough of a gap", "plenty of space" between two parts."""
    if word_at(words, place + 1) != "of":
        return None
    stop = _shape_after_of(words, place + 2)
    if not stop or words[stop - 1] not in _ANGLES or not _of_the_body(words, place):
        return None
    return place, stop


def _side(words: list[str], place: int) -> Span | None:
    """ "the stance is on the wide side"."""
    if words[max(0, place - 3) : place - 1] != ["on", "the"] or words[place - 1] not in say.PREDICATES - _DISTANCES or not _finished(words, place + 1):
        return None
    clause = words[_clause(words, place) : place]
    return (place - 3, place + 1) if any(word in say.SHAPES or word in say.MOVES or word in _BODY or word == "grip" for word in clause[:-3]) else None


def _trace(words: list[str], place: int) -> Span | None:
    """ "a hint of a bend"."""
    if word_at(words, place + 1) == "of" and word_at(words, place - 1) in ("a", "the"):
        stop = _shape_after_of(words, place + 2)
        if stop:
            return place - 1, stop
    return None


def _next_to_no(words: list[str], place: int) -> Span | None:
    """ "next to no clearance"."""
    return (place - 3, place + 1) if words[place - 3 : place] == ["next", "to", "no"] else None


def _nearby(words: list[str], place: int) -> Span | None:
    """ "have a chair nearby"."""
    start = _clause(words, place)
    if _finished(words, place + 1) and word_at(words, start) in ("have", "keep", "put", "place", "stand", "set", "leave"):
        return place, place + 1
    return None


def _step(words: list[str], place: int) -> Span | None:
    """ "take a step back": how long a step?"""
    if word_at(words, place - 1) != "a" or word_at(words, place - 2) not in ("take", "takes", "taking", "with"):
        return None
    if word_at(words, place + 1) in _STEP_WAYS and word_at(words, place + 2) not in ("from", "in"):
        if words[place + 2 : place + 4] in (["and", "think"], ["and", "look"], ["and", "ask"], ["and", "rest"], ["and", "reflect"]):
            return None
        return place - 1, place + 2
    return None


def _short_of(words: list[str], place: int) -> Span | None:
    """ "stop short of the floor"; otherwise a size."""
    if word_at(words, place + 1) == "of" and word_at(words, place - 1) in (
        "stop",
        "stops",
        "stopping",
        "stopped",
        "finish",
        "pause",
        "end",
    ):
        return place, place + 2
    return _size(words, place)


def _so_far(words: list[str], place: int) -> Span | None:
    """ "don't come so far up", "don't sink so low"."""
    if word_at(words, place + 1) not in ("far", "low", "high", "wide", "deep") or not _has(words, max(0, place - 5), place, frozenset(("not", "never"))):
        return None
    start = _clause(words, place)
    if words[start : start + 2] != ["do", "not"] and words[start : start + 1] != ["never"]:
        return None
    if not _has(words, start, place, say.MOVES - say.TIMID_MOVES | _GO_COME) or _blocked(words, place):
        return None
    end = place + 2
    if word_at(words, end) in ("up", "down", "forward", "forwards", "back", "out", "over", "apart", "in", "across"):
        end += 1
    return (place, end) if word_at(words, end) not in ("as", "that", "you") else None


_GO_COME = _words("go come take bring pull push reach keep hold")


def _ish(words: list[str], place: int) -> Span | None:
    """ "back leg straight-ish"."""
    return (place, place + 1) if _finished(words, place + 1) and not _other_verb(words, place) else None


def _not_quite(words: list[str], place: int) -> Span | None:
    """ "elbows not quite straight"."""
    if word_at(words, place + 1) not in say.SHAPED | {"level", "locked", "flat", "parallel"} or not _finished(words, place + 2) or word_at(words, place - 1) != "not":
        return None
    start = _clause(words, place - 1)
    return (place - 1, place + 2) if _has(words, start, place, _BODY | {"them", "it"}) and not _feels(words, place) else None


def _again_and_again(words: list[str], place: int) -> Span | None:
    """ "closer and closer"."""
    if words[place - 2 : place] != [words[place], "and"] or not _finished(words, place + 1) or _blocked(words, place - 2):
        return None
    begin = max(0, place - 14)
    return (place - 2, place + 1) if _has(words, begin, place - 2, say.MOVES) and _has(words, begin, place - 2, _BODY) else None


def _merest(words: list[str], place: int) -> Span | None:
    """ "by the merest amount"."""
    return (place - 1, place + 2) if word_at(words, place - 1) == "the" and _finished(words, place + 2) else None


def _miles(words: list[str], place: int) -> Span | None:
    """ "miles apart", "miles in front"."""
    after = word_at(words, place + 1)
    if (
        (after in _WAY_PLACES or after == "too")
        and word_at(words, place - 1) not in say.NUMBERS
        and not word_at(words, place - 1)[:1].isdigit()
    ):
        return place, place + (3 if after == "in" else 2)
    return None


def _more(words: list[str], place: int) -> Span | None:
    """ "sit up more"."""
    if word_at(words, place - 1) not in ("up", "back", "forward", "forwards", "over", "down") or not _finished(words, place + 1) or word_at(words, place + 1) in ("than", "of", "often"):
        return None
    if word_at(words, place - 2) not in ("sit", "lean", "bend", "reach", "tilt", "twist", "rock", "hinge"):
        return None
    return place, place + 1


def _apart(words: list[str], place: int) -> Span | None:
    """ "arms up and apart", without a word of how far."""
    if (
        word_at(words, place - 1) == "and"
        and word_at(words, place - 2) in say.PARTICLES
        and _finished(words, place + 1)
        and word_at(words, place + 1) != "from"
    ):
        return place, place + 1
    return None


def _shaped(words: list[str], place: int) -> Span | None:
    """ "fairly straight", "pretty upright"."""
    before = word_at(words, place - 1)
    first = place - 1
    if before == "of":
        before, first = word_at(words, place - 2), place - 2
    if (
        before not in say.GRADES_POSTURES
        or not _finished(words, place + 1)
        or (before in ("kind", "sort")) != (first == place - 2)
    ):
        return None
    return first, place + 1


def _gap_noun(words: list[str], place: int) -> Span | None:
    """ "leave a gap between the feet"."""
    if word_at(words, place - 1) == "a" and word_at(words, place - 2) in _GIVES_A_GAP:
        return place - 1, place + 1
    return None


# --- reading around a phrase ------------------------------------------------------------------------------------------


def _finished(words: list[str], place: int) -> bool:
    """Whether a phrase that ends before `place` is complete there."""
    return place >= len(words) or words[place] in PAUSES or words[place] in say.FOLLOWERS


def _clause(words: list[str], place: int) -> int:
    """Where the clause around `place` starts, looking back twelve words at most."""
    start = place
    while start > 0 and place - start < 12 and words[start - 1] not in say.CLAUSE_BREAKS:
        start -= 1
    return start


def _has(words: list[str], start: int, end: int, wanted: frozenset[str]) -> bool:
    return any(word in wanted for word in words[start:end])


def _grown(words: list[str], place: int) -> int:
    """Where the words that grade a size start: "not too" before "far"."""
    first = place
    while first > 0 and place - first < 8:
        before = words[first - 1]
        if before in say.GRADERS:
            first -= 1
        elif before in ("and", "of") and first > 1 and words[first - 2] in ("nice", "good", "kind", "sort", "lovely"):
            first -= 2
        elif before in say.SMALL_AMOUNTS or (before in say.AMOUNTS_TOO and before != "good"):
            reach = first - 1
            while reach > 0 and place - reach < 8 and words[reach - 1] in _AMOUNT_ADJECTIVES:
                reach -= 1
            if reach > 0 and words[reach - 1] in ("a", "an"):
                first = reach - 1
            elif before in ("bit", "tad", "smidge"):
                first = reach
            else:
                break
        else:
            break
    if first > 0 and words[first - 1] == "not":
        first -= 1
    while first < place and words[first] in _LOOSE_GRADES and first + 1 < place:
        first += 1
    if first == place - 1 and words[first] in ("just", "only", "so", "still", "right", "less"):
        return place
    return first


def _blocked(words: list[str], place: int) -> bool:
    """Whether the clause speaks of breath, effort, load, time or another size that is no place."""
    start = _clause(words, place)
    return any(
        word in _BREATHING or (word in say.UNSPATIAL and not (word == "time" and words[start : start + 2] in (["this", "time"], ["next", "time"], ["each", "time"], ["every", "time"])))
        for word in words[start + (words[start : start + 1] == ["set"]) : place]
    ) or any(
        word in _BREATHING for word in words[place : place + 4]
    )


def _other_verb(words: list[str], place: int) -> bool:
    """Whether the nearest verb before `place` in the clause is none of movement."""
    for reach in range(place - 1, _clause(words, place) - 1, -1):
        word = words[reach]
        if word in say.OTHER_VERBS or word in ("ease", "eases", "easing", "dial", "tone"):
            return True
        if word in say.MOVES:
            return False
    return False


def _feels(words: list[str], place: int) -> bool:
    return any(word in ("feel", "feels", "feeling", "felt") for word in words[_clause(words, place) : place])


def _moved(words: list[str], start: int, end: int) -> bool:
    """Whether the words before a phrase of degree are about a movement or a place of the body."""
    begin = _clause(words, start)
    particle = subject = False
    for reach in range(start - 1, begin - 1, -1):
        word = words[reach]
        if (
            word in say.OTHER_VERBS
            or word in _BREATHING
            or (word in say.UNSPATIAL and word not in ("weight", "bodyweight"))
        ):
            return False
        if word in say.FEELINGS and word not in say.MOVES:
            return False
        if (
            word in ("off", "up", "back", "down")
            and word_at(words, reach - 1) in _EASY_OFF
            and (reach + 1 >= start or words[reach + 1] not in _DETERMINERS)
        ):
            return False
        if word in ("up", "down") and word_at(words, reach - 1) in ("it", "that", "things") and word_at(words, reach - 2) in _DIALS | _FIGURATIVE | {"step"}:
            return False
        if word in ("up", "down", "back", "off", "out") and word_at(words, reach - 1) in _FIGURATIVE:
            return False
        if word in ("may", "might") and not particle:
            return False  # "the skin may pull a little"
        if word in _BODY and word not in say.MOVES and word not in ("back", "side"):
            subject = True
        if word in say.PARTICLES:
            particle = True
        if word in say.MOVES:
            if word not in say.TIMID_MOVES or particle or subject:
                return True
            if word in ("keep", "stay", "hold", "rest", "wait"):
                return particle or subject
    if subject or particle:
        return True
    if start - begin <= 1 and (end >= len(words) or words[end] in PAUSES):  # "Just a bit.", ", not a lot,"
        if any(
            (word in say.OTHER_VERBS or word in say.UNSPATIAL or word in say.FEELINGS) and word != "time"
            for word in words[max(0, begin - 20) : begin]
        ):
            return False
        return any(word in say.MOVES or word in say.SHAPES for word in words[max(0, begin - 20) : begin]) or words[
            end - 1
        ] in ("more", "less", "further")
    return False


def _described(words: list[str], first: int, last: int) -> bool:
    """Whether the clause tells what was, or what the speaker does, or what a thing is like."""
    begin = _clause(words, first)
    if words[last - 1] in ("longer", "shorter") and word_at(words, first - 1) in ("get", "gets") and word_at(words, begin) in ("your", "the", "their", "his", "her"):
        return True  # "your stride will get longer as the hip heals"
    if word_at(words, first - 1) in ("is", "are", "'s") and begin == first - 3 and word_at(words, begin) in ("the", "these", "those", "that") and words[first - 2] in _THINGS and word_at(words, last) in (",", ";", ".", ""):
        return True  # "these mats are a bit narrow"
    if words[last : last + 2] == ["and", "sweet"] or (words[last - 1] == "more" and word_at(words, last) == "," and word_at(words, last + 1) in say.NUMBERS and word_at(words, last + 2) == ","):
        return True
    if words[max(0, first - 2) : first] in (["there", "'s"], ["there", "is"]) and words[first] == "plenty" and "between" not in words[last : last + 3]:
        return True
    if word_at(words, first - 1) in ("live", "lives"):
        return True
    if not _COUNTED.isdisjoint(words[begin:first]):
        return True  # "your blood pressure has come down a bit"
    if words[begin : begin + 1] in (["open"], ["close"], ["shut"]) and not _HOUSE.isdisjoint(words[begin:first]):
        return True
    if _no_distance(words, first, last):
        return True
    if {"up", "down", "along"}.intersection(words[last - 1 : last + 1]) and not _ROADS.isdisjoint(words[last : last + 3]) and _has(words, begin, first, _IS):
        return True  # "the car park is a bit further up the road"
    if begin == first and word_at(words, begin - 1) == "and" and _has(words, max(0, begin - 5), begin, say.PAST):
        return True  # "the knee was puffy and a little bent"
    if word_at(words, last) == "for" and word_at(words, last + 1) in ("him", "her", "them", "me", "us") and _has(words, begin, first, _IS) and _has(words, begin, first, _SURFACES):
        return True  # "the bed's a bit high for her"
    if word_at(words, first - 1) == "go" and word_at(words, first - 2) == "let":
        return True  # "the thigh wants to let go a little"
    if any(words[near : near + 3] == ["up", "to", "you"] for near in range(last, min(len(words), last + 12))):
        return True  # the reader sets it
    if words[first:last] == ["not", "even", "close"] or (words[last - 1] == "little" and words[max(0, first - 2) : first] == ["ring", ","]):
        return True
    if word_at(words, first - 1) == "back" and word_at(words, first - 2) in ("come", "came", "comes") and words[last - 1] in ("low", "high") and word_at(words, first - 3) in ("has", "have", "had", "'s", "'ve", "they", "it"):
        return True  # "the scan has come back low"
    if words[last - 1] in ("shallow", "deep", "shallower", "deeper") and not _WATERS.isdisjoint(words[max(0, first - 8) : first]) and not _has(words, begin, first, _BODY):
        return True  # "this pool starts shallow and gets deep"
    if not _WORN.isdisjoint(words[begin:first]) and _has(words, begin, first, _IS) and words[last - 1] in say.PREDICATES:
        return True  # "the shoe is too narrow"
    if _has(words, max(begin, first - 2), first, _SPREADS):
        return True  # "if it spreads further down"
    if word_at(words, last) == "left" and word_at(words, last + 1) == "over":
        return True
    if begin > 0 and words[begin - 1] in ("if", "whether") and words[last - 1] in say.PREDICATES and _has(words, begin, first, _IS):
        return True
    if word_at(words, begin) in _IS and words[-1] == "?" and words[last - 1] in say.PREDICATES and first - begin > 1:
        return True  # "is one shoulder higher?"
    for reach in range(first - 1, begin - 1, -1):
        word = words[reach]
        if word in ("you", "your", "want", "need", "like"):
            return word == "like" and word_at(words, reach - 1) not in ("would", "i", "'d")
        if word in ("was", "were", "had") and any(other.endswith("ing") for other in words[reach + 1 : first]):
            continue
        if word == "i" and word_at(words, reach + 1) == "said":
            continue
        if word in say.FIRST_PERSON or word in say.PAST or word in say.IMAGINED:
            return True
    return bool(begin > 1 and words[begin - 1] in ("if", "though") and words[begin - 2] == "as")


_THINGS = en.LEXICON.classes["kit"] - _BODY - say.SHAPES - say.MOVES
_COUNTED = _words("pressure price prices score scores total cost costs fee fees rent bill bills salary")
_HOUSE = _words("window windows jar lid curtain curtains blind tap door")
_ROADS = _words("road street hill lane corridor path track river")
_WATERS = _words("pool pools water lake river sea bay pond lido")
_WORN = _words("shoe shoes boot boots trainer trainers sock socks glove gloves waistband shirt helmet jacket")
_SPREADS = _words("spreads travels radiates creeps")
_IS = _words("is are 's was were feels feel seems looks sits")


def _no_distance(words: list[str], first: int, last: int) -> bool:
    """Whether the words before the size make it the amount of something that has no length."""
    if words[max(0, last - 3) : last - 1] == ["a", "step"] and words[last - 1] in ("further", "farther"):
        return True  # "take it a step further"
    turned = not _TURNED.isdisjoint(words[max(0, first - 4) : first])
    return turned and words[last - 1] in ("low", "high") and word_at(words, first - 1) in say.UNSPATIAL  # "turn the lamp low"


_TURNED = _words("turn turns turned turning dial")


# --- what explains a size ---------------------------------------------------------------------------------------------


def _explained(words: list[str], first: int, last: int) -> bool:
    """Whether the sentence itself gives the measure of the words from `first` to `last`."""
    count = len(words)
    scale = last + (word_at(words, last) == "apart")
    if word_at(words, scale) == "as" and word_at(words, scale + 1) in ("the", "your", "a") and _landmark(words, scale + 2, 3):
        return True  # "wide as the mat", "wide apart as your shoulders"
    # the measure stands right before: "two fingers lower"
    for reach in range(first - 1, max(-1, first - 3), -1):
        if words[reach] in PAUSES:
            break
        if (
            words[reach] in say.UNITS
            and (
                words[reach] not in _LIMBS
                or ((words[first].endswith("er") or words[first] == "too") and words[reach - 1] in ("a", "half"))
            )
            and _numbered(words, reach)
        ):
            return True
    # a place by a landmark: "just outside the shoulders", "a little above the knee"
    if words[last - 1] in ("up", "high", "low") and word_at(words, last) in ("near", "by", "under", "at", "into") and _landmark(words, last + 1, 3):
        return True
    inner = words[last - 1] in _PLACES_BY_LANDMARK and words[last - 2] not in ("far", "way", "further", "farther")
    if words[last - 1] in say.SHAPES or words[last - 1] in say.WEAK_SHAPES or words[last - 1] in _ANGLES:
        return _measured_after(words, last, count, True)
    for reach in range(first - 1, max(-1, first - 5), -1):
        if words[reach] in ("o'clock", "°", "degrees"):
            return True
    if words[last - 1] in ("low", "high") and word_at(words, last) == "inside":
        return False  # "hop low inside the ring"
    if word_at(words, last) in _PLACES_BY_LANDMARK or inner or words[last : last + 2] == ["in", "front"]:
        start = last + (0 if inner else 1)
        if words[last : last + 2] == ["in", "front"]:
            start += 1
        noun = words[first] == "a" and words[last - 1] in ("way", "ways", "distance", "step", "gap")
        if not noun and _landmark(words, start, 4):
            return True
    return _measured_after(words, last, count, False)


def _landmark(words: list[str], start: int, reach: int) -> bool:
    """Whether a landmark stands within `reach` words, before any pause."""
    for word in words[start : start + reach]:
        if word in PAUSES:
            return False
        if word in _LANDMARKS or word in ("shoulder-width", "hip-width"):
            return True
    return False


def _measured_after(words: list[str], place: int, count: int, noun: bool) -> bool:
    """Whether the words that follow give the measure.

    noun: what is measured is a movement or a gap, which a landmark beside it
        places and does not measure: "a small circle above the knee".
    """
    pauses = 0
    limit = min(count, place + 16)
    while place < limit:
        word = words[place]
        if word in (";", ".", "!", "?"):
            return False
        if word in PAUSES:
            pauses += 1
            after = word_at(words, place + 1)
            if pauses == 1 and (_contact(words, place + 1) or (after == "where" and word_at(words, place + 2) in ("it", "the", "your"))):
                return True  # "hands wide, where the bar starts to bend"
            if pauses > 1 or not _continues(words, place + 1, after):
                return False
        elif word in ("and", "then", "but", "or") and _starts_afresh(words, place + 1):
            return False
        elif word == "than":
            return word_at(words, place + 1) not in _NO_SCALE or words[place + 1 : place + 3] in (["you", "can"], ["you", "could"], ["you", "want"], ["you", "like"])
        elif (word == "size" and word_at(words, place + 1) == "of") or (
            pauses and word in ("to", "toward", "towards", "at") and word_at(words, place + 1) in _HOURS
        ):
            return True
        elif (
            word in ("with", "using") and not pauses and word_at(words, place + 1) in say.NUMBERS | {"both", "your", "the"}
        ):
            return False
        elif word in say.UNITS and _numbered(words, place):
            # not "dinky steps, one palm on the tiles"
            return not (pauses and word in _LIMBS | {"palm"} and word_at(words, place + 1) in ("on", "in", "against", "behind", "flat"))
        elif word in ("until", "till", "til", "so", "enough"):
            return _met(words, place + 1, limit + 4, word == "so")
        elif (
            (word == "as" and word_at(words, place + 2) == "as" and word_at(words, place + 1) in say.PREDICATES)
            or word in ("level", "parallel", "height", "width", "touching", "o'clock", "°")
            or (word == "line" and words[place - 1] == "in")
        ) or (
            (word in _REACHES or (pauses and word in ("at", "to", "over", "between")))
            and (pauses or not noun)
            and _landmark(words, place + 1, 3)
        ):
            return True
        place += 1
    return False


def _continues(words: list[str], place: int, word: str) -> bool:
    """Whether the words after a pause still speak of the same thing."""
    return (
        (word == "as" and word_at(words, place + 1) in say.PREDICATES)
        or (word in ("left", "right", "over") and (word == "over" or word_at(words, place + 1) in ("to", "toward", "towards", "at")))
        or word in _GOES_ON
        or (word == "some" and word_at(words, place + 1)[:1].isdigit())
        or word in say.UNITS
        or word in say.NUMBERS
        or word[:1].isdigit()
    )


def _contact(words: list[str], place: int) -> bool:
    """Whether a part of the body meets something: ", hips against the counter", ", your back brushing the planks"."""
    if word_at(words, place) in ("your", "the", "both"):
        place += 1
    return word_at(words, place) in _BODY and (
        word_at(words, place + 1) in ("against", "touching", "brushing", "grazing", "skimming", "kissing") and word_at(words, place + 2) != ""
    )


_HOURS = _words("one two three four five six seven eight nine ten eleven twelve 1 2 3 4 5 6 7 8 9 10 11 12")


def _starts_afresh(words: list[str], place: int) -> bool:
    """Whether a new action or a new part of the body starts here."""
    for word in words[place : place + 3]:
        if word in PAUSES:
            return False
        if word in say.MOVES or word in say.OTHER_VERBS or word in _BODY:
            return True
    return False


def _numbered(words: list[str], place: int) -> bool:
    """Whether the unit at `place` is counted, or counts itself: "two fingers", "hip-width"."""
    word = words[place]
    if word in _WHOLE_UNITS or "-" in word:
        return True
    for reach in range(place - 1, max(-1, place - 5), -1):
        before = words[reach]
        if before in PAUSES:
            return False
        if before in ("a", "an", "one", "half", "quarter", "another", "each"):
            return reach == place - 1 or (
                before in ("one", "half", "quarter", "a")
                and words[place - 1] in ("a", "good", "single", "whole", "'s", "full", "half")
            )
        if before in say.NUMBERS or before[:1].isdigit():
            return True
    return False


_WHOLE_UNITS = _words("o'clock ° parallel right-angle halfway width height length")
_LIMBS = _words("foot feet hand hands fingertip fingertips shoe finger thumb")


def _met(words: list[str], place: int, limit: int, purpose: bool) -> bool:
    """Whether something is met: a landmark after "until", a touch after "so that"."""
    contact = landmark = False
    for word in words[place:limit]:
        if word in (";", ".", "!", "?", ":", "("):
            break
        contact |= word in say.TOUCH
        if purpose and word == "not":
            return False
        landmark |= word in _LANDMARKS or word in say.UNITS or word in ("each", "together")
        if landmark and (contact or not purpose or word in ("level", "parallel")):
            return True
    return False


_READERS = {
    **{word: _size for word in say.SIZES | say.PREDICATES},
    **{word: _amount for word in say.SMALL_AMOUNTS | {"little", "ways", "lot"}},
    **{word: _adverb for word in say.DEGREE_ADVERBS},
    "way": _way,
    "well": _well,
    "just": _gap,
    "barely": _adverb,
    "hardly": _hardly,
    "shy": _shy,
    "some": _some,
    "enough": _enough,
    "side": _side,
    "plenty": _enough,
    "much": _much,
    "angle": _angle,
    "gap": _gap_noun,
    "merest": _merest,
    "so": _so_far,
    "quite": _not_quite,
    **{word: _ish for word in ("straight-ish", "upright-ish", "bent-ish", "flat-ish", "level-ish", "straightish", "flattish", "forward-ish", "sideways-ish", "open-ish")},
    "clearance": _next_to_no,
    "nearby": _nearby,
    "step": _step,
    "short": _short_of,
    **{word: _trace for word in say.TRACES - say.SMALL_AMOUNTS},
    "apart": _apart,
    "more": _more,
    **{word: _loads for word in ("loads", "miles", "heaps", "tons")},
    **{word: _thin for word in ("thin", "thinner", "thick", "thicker")},
}


def _little(words: list[str], place: int) -> Span | None:
    return _before_noun(words, place) or _amount(words, place) or _size(words, place)


_READERS["little"] = _little
for _word in say.SHAPED:
    _READERS.setdefault(_word, _shaped)


# --- what to write instead --------------------------------------------------------------------------------------------

_TURNS = _words(
    "turn turned turning rotate rotated rotation twist twisted out-turned turn-out turnout toes toe nose head"
)
_BENDS = _words(
    "bend bends bent bending flexed flex flexion knee knees elbow elbows unlock lean leaning lean tilt tilted tilting tip tipped hinge hinged arch angle incline"
)
_ROUNDS = _words(
    "circle circles arc arcs loop loops pulse pulses pump pumps beat beats swing swings wave waves movement movements motion range"
)
_HEIGHTS = _words(
    "high higher low lower lift lifted raise raised hover drop dropped height up down deep deeper sink squat lunge shallow"
)
_LEVELS = {
    **dict.fromkeys(("arm", "arms", "elbow", "elbows"), '"elbows level with your shoulders"'),
    **dict.fromkeys(("hand", "hands", "wrist", "fist", "fists"), '"hands level with your navel"'),
    **dict.fromkeys(("leg", "legs", "knee", "knees", "thigh", "thighs"), '"knee level with your hip"'),
    **dict.fromkeys(
        ("heel", "heels", "foot", "feet", "toe", "toes"),
        '"heel one fist above the floor", "foot level with the other knee"',
    ),
    **dict.fromkeys(("chin", "head", "nose"), '"chin one fist above your breastbone"'),
    **dict.fromkeys(
        ("hips", "hip", "bum", "bottom", "butt"), '"hips level with your knees", "until your thighs touch the seat"'
    ),
}
_STRIDES = _words("stroke strokes step steps stride strides lunge lunges hop hops jump jumps walk walking pace paces")
_HANDS = _words("hand hands arm arms grip elbow elbows fingers")
_FEET = _words("foot feet heel heels toe toes knee knees leg legs stance")


def suggest(sentence: Sentence, first: int, last: int) -> str:
    """What to write instead of the marked words."""
    words = sentence.words
    start = max(_clause(words, first), first - 8)
    near = words[start : last + 5]
    part = next(
        (word for word in reversed(words[start:last]) if word in _BODY and word not in say.NOT_A_LANDMARK), ""
    ) or next((word for word in words[last : last + 5] if word in _BODY and word not in say.NOT_A_LANDMARK), "")
    way = next(
        (word for word in near if word in ("left", "right", "forward", "forwards", "back", "backward", "backwards")), ""
    )
    said = frozenset(near)
    marked = frozenset(words[first:last])
    if marked & {"off", "hover", "clear"} or "floor" in marked:
        return 'Say how high in fists or fingers: "one fist above the floor".'
    if marked & _ROUNDS or (said & _ROUNDS and not marked & _STRIDES):
        return 'Say how big by something the hand knows: "as wide as your palm", or where it starts and ends.'
    if marked & _STRIDES or (said & _STRIDES and not said & _TURNS):
        where = {
            "left": "to your left",
            "right": "to your right",
            "back": "back",
            "backward": "back",
            "backwards": "back",
        }.get(way, "forward")
        return f'Say how far in your own feet: "one foot length {where}", "two foot lengths".'
    if marked & {
        "wide",
        "wider",
        "narrow",
        "narrower",
        "apart",
        "together",
        "gap",
        "space",
        "distance",
        "closer",
        "close",
        "spread",
    } or said & {"apart", "stance"}:
        if said & _HANDS and not said & _FEET:
            return 'Say how wide by the body: "hands one thumb length outside your shoulders".'
        return 'Say how wide by the body: "feet as wide as your hips", "two fists between your knees".'
    if said & _TURNS and not said & {"bend", "bent", "lean", "tilt"}:
        return 'Say the clock hour: "left toes toward 11, right toes toward 1" (one hour is 30 degrees).'
    if said & (_BENDS - _FEET - _HANDS) or (said & _BENDS and not said & _HEIGHTS):
        return 'Say when to stop: at a clock hour, or where one part meets or stands over another, as in "until your knees are over your toes".'
    if marked & _HEIGHTS or said & _HEIGHTS:
        return f"Say which part of the body it is level with: {_LEVELS.get(part, _LEVELS['hips'])}."
    if way:
        return f"Say how far {way}: in finger or hand widths, in foot lengths, or until something touches."
    if part:
        return f"Say how far your {part} goes: in finger or hand widths, in foot lengths, or until something touches."
    return "Say how far: in finger or hand widths, in foot lengths, to a clock hour, or until something touches."


ENGLISH = Kind(
    name="vague",
    strength="advice",
    what="A distance, an angle, a width or a height without a measure.",
    why="A size without a measure: two readers would do two different things.",
    suggest=suggest,
    find=find,
    harmless=lambda sentence, first, last: _no_distance(sentence.words, first, last),
    flag=(
        "Step-ups: use a [[low]] step.",
        "Sit tall and come [[less far]] forward.",
        "Sit up [[more]] if you want it easier.",
        "On the last rep you stop [[well short]].",
        "Press up, [[slightly]] in, and down.",
        "Bend your knees [[a lot]] to start.",
        "Hold your arms [[lower]] than we did today.",
        "Hands [[generously]] spaced.",
        "Turn your toes [[slightly]] out.",
        "Feet [[a little wider]] this time.",
        "Take [[a big step]] to the side.",
        "Hands [[wide]], thumbs up.",
        "Stay [[low]] on the way across.",
        "Draw [[small circles]] with your elbows.",
        "Land with [[a slight bend]] at the knees.",
        "Let the hand hover [[just off the mat]].",
        "Open the arms, [[not too wide]].",
        "Keep the tip of the pole [[way in front]].",
        "Drop [[partway]] and hold.",
        "Elbows tucked [[in some]] on the way down.",
        "Keep the circles [[small]] and slow.",
        "Trunk lean: [[minimal]].",
        "Hips [[higher]].",
        "Feet: [[narrow]] for round one.",
        "Ten kicks, [[small ones]].",
        "Arms [[out big]], like a scarecrow.",
        "Sit into [[a mega-deep squat]].",
        "Drop it [[nowhere near as deep]] today.",
        "Curl up [[part of the way]].",
        "Step back [[a lot]].",
        "Push your hips back [[loads]].",
        "Keep [[plenty of space]] between the elbows.",
        "Knees [[hardly]] bent.",
        "Don't come [[so far up]] the slide.",
        "Back leg [[straight-ish]].",
        "Elbows [[not quite straight]].",
        "Walk the hands in, [[closer and closer]].",
        "Ten circles, ten back, growing [[bigger]] as you warm up.",
        "Arms leading, [[low]] and flat.",
        "Kneel [[a ways]] from the bed.",
        "Keep the rope [[short]] for now.",
    ),
    leave=(
        "Feet wide as your shoulders.",
        "Next, plank, feet wide apart as the mat, ten.",
        "A small amount of swelling is normal.",
        "Your blood pressure has come down a bit.",
        "Take it a step further and ask your sister.",
        "The car park is a bit further up the road.",
        "A small circle of friends came along.",
        "There's a big gap between knowing and doing.",
        "You're way ahead of where you were in May.",
        "The bed's a bit high for her.",
        "These mats are a bit narrow; we've ordered new ones.",
        "Your stride will get longer as the hip heals.",
        "There's plenty of space in the hall for wheelchairs.",
        "If jumping is too much, step it.",
        "Cold fingers and big moves don't mix.",
        "Hands wide, where the bar starts to bend.",
        "Elbows high, so that your upper arms are level with the floor.",
        "Heels close to you or further away, it's up to you.",
        "Touch the middle finger, ring, little.",
        "If it spreads further down, stop.",
        "This pool starts shallow and gets deep.",
        "If your toes can't spread, the shoe is too narrow.",
        "My scan has come back low.",
        "Rest days are a bit like house guests.",
        "See if the thigh wants to let go a little.",
        "Am I too old? Not even close.",
        "Turn your toes slightly out, about two fingers.",
        "Swing your right leg slightly outward, by about 10 degrees.",
        "Step out a bit wider than your hips.",
        "Take a big step, about two of your foot lengths.",
        "Lean back a bit, until your shoulder blades touch the chair.",
        "Keep the elbows close to your ribs, hands just outside the shoulders.",
        "Lift as high as you like, as far as is comfortable.",
        "You may feel slightly tired, so take a little water.",
        "Go a bit slower and rest a little longer.",
        "Keep your knees soft and your neck long.",
        "Lower the bar a few inches.",
        "Press the small of your back into the mat.",
        "My hips drop a bit when I get tired.",
        "Use a small towel on a low bench.",
        "Set the volume low and keep your spirits high.",
        "Walk little and often.",
        "There's a good gap between sets: two full minutes.",
        "Sweep the toe out and close.",
        "If one hip is higher, tell me.",
        "Hold a large, soft ball in front of your chest.",
        "Turn the lamp low.",
        "You may notice a small flutter in your chest.",
        "It's not far to the bus.",
        "Make some space in your week.",
        "Turn your toes out a bit, left to eleven, right to one.",
        "Make small circles the size of a coin.",
        "Find some space and swing your arms.",
        "Keep low, your back brushing the planks.",
        "Stand close, hips against the counter.",
        "When you can't go further without rounding, stop.",
        "Never climb higher than you can come down.",
        "You have come such a long way.",
        "A great many small corrections that nobody claps for.",
    ),
)
