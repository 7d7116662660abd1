"""The kind "pointing": a place, a direction or a size is pointed at, and no words say it."""

from collections.abc import Iterator

from handouts.wording.grammar import Phrases
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.landmarks import explained
from handouts.wording.lexicons.en import LEXICON
from handouts.wording.prose import PAUSES, Sentence

_STANDS_FOR = {
    "about": "about|roughly|approximately|around|only|just|almost|exactly|precisely|to|at|by|until|till|right|no|maybe|say|up|down|out|nearly|in|on|from|over|round|off|back|across|than|somewhere|anywhere|along|past|through|under|into|between|near|toward|towards|all|way|even",
}

_PHRASES = Phrases(
    LEXICON,
    _STANDS_FOR,
    place="""
        [ {about}*3 here|there|yonder|thither|hither ]
    """,
    strong="""
        [ {about}*2 yay|yea @dim|apart ]
        [ the one|ones yonder ]
        [ yonder|hereabouts|thisaway|thataway|hitherwards ]
        [ that @name has|is|holds|got ]
        [ that much ] and|$ no|.|,|!
        [ where|to|at i|me am|is here|there ]
        [ this|that|these|those one|ones ] &here|there
        [ this|that row|group|half|lot|line|team|corner ] goes|go|starts|start|first|leads
        [ to|by|only such|this|that a? degree|extent ] !that|of
        [ at|to such an angle ]
        [ an|the|a angle|line|height|distance|gap|spot|direction like this|that ]
        [ the spot|place|point|bit|part|area under|beneath|by my|this finger|fingers|thumb|hand|palm ]
        [ where|wherever my|the finger|fingers|hand|thumb|palm|toe|foot|stick|pointer|cone|x is|are|'s|was|goes|sits|lands|lies|now ]
        [ the|this|that|a bit|part|spot|dent|place|bone|edge|hole|notch|point|one|area|muscle i am|have|'ve|just? %ing|got ]
        [ thus far ] from|,|.|off
        [ this close ]
        [ thataways|thisaways|there-ish|here-ish ]
        [ round|around about so ]
        a _? of [ so much ]
        [ in|inside|within|to|along|on this|that strip|channel|range|patch|band|box|square|circle|lane|slot|window|corridor ] !of|and
        as far as [ those|that|these _ ]
        [ the one , there ]
        tap|touch|lift|push|press|squeeze|grab|rub|pinch|bend|pull|raise|lower|straighten|relax|tighten [ this|that ] ,|.|up|down|with|then|in|out|first|only|and
        reach|rest|push|lean|press|tap|brace|pull|rub|line|step for|against|on|at|onto|towards|over|up*2 [ this|that|these|those ] ,|.|with|and|then|$
        keep [ this|that ] tucked|still|soft|straight|bent|in|down|relaxed|long|tight|up|close
        [ all|the of|whole*2 this|that ] stays|stay|relaxes|works|moves|soft|still
        all of [ this ] stays|is|should
        is|'s [ this ] that should|is|does|works|moves|hurts
        belongs|starts|stays|works|hurts [ here ] and|,|.
        where [ that|this is ]
        between [ this|that and that|this ]
        : [ there|here ] $
        [ this|that way round|about ]
        [ yon|yonder _ ]
        [ that-a-way|this-a-way|hitherward|hitherwards|thitherward ]
        [ in yon|yonder direction ]
        [ on|to|by|against|behind one? of? these|those ] ,|.|$
        [ the spot|place|line|mark|bit|point|crease my _ is on|at|in ]
        [ in|round|around this|these|those|that _? neighbourhood|neighborhood|parts|vicinity|general ]
        [ so @dim apart? and no ]
        [ this one ] , not
        not [ that|this one ] $|,
        ^ take|grab|hold [ these|those ] $
        you|@body are|is|'s [ here ] ;|and|but|, i|it|you
        i want you|it [ there ] $
        [ this|that size of ]
        [ about|roughly|around so ] ,|.|$
        [ that is|'s the _ i mean ]
        ^ [ not here|there ] ,|.|!|;|:
        [ the|that _? _? @room|@kit|@surface there ] !is|are|'s|was|will|has|had|have
        [ {about}*2 this|that sort|kind|type of angle|height|distance|width|level|spot|place|size|gap|depth|length ]
        for|at|to [ there ] and there
        between [ here and there ]
        [ this|that _? to this|that one ]
        [ to? the far|near|deep|shallow|other end|side|corner there|here ]
        as [ here|there ] $
        [ so far|much|low|high|wide and no ]
        step|stride|lunge|pause|stretch|line [ this|that long ]
        [ {about}*2 this|that much room|space|gap|slack|distance|clearance|daylight|bend|lift|turn|lean ]
        drop|lift|raise|lower|bend|move|turn|open|lean|slide|tilt _? [ that|this much ]
        [ this is|'s where ] you|it|the|your|they !live|train|meet|work
        [ this is|'s as @dim as ]
        [ this|that is|'s how wide|high|far|low|deep|big|long|close ] your|the|it|they|apart|i !come|have
        that is|'s [ how wide|high|low|deep|big|close ] your|the|it|they|apart|i
        [ that is|'s as @dim as i ]
        [ this ] is the height|width|depth|angle|distance|line|spot|place
        , [ there ] ! 
        [ that is|'s how far ] you go
        [ thereabouts ] $
        [ this|these|that row|side|half|corner|end ] of the room|hall|studio|pool|gym|mat|class|pitch|court|floor
        [ in|into|make|with|of this|that shape|size ]
        [ that size ] of
        [ this muscle|bone|tendon|joint|bit|spot|point|end|one here ]
        [ that muscle|bone|tendon|joint|bit|spot|point|end|one there ]
        for|at there and [ there ]
        [ here ] and here
        here and [ here ]
        [ to the side|left|right|front|back|end|corner|edge there|here ]
        [ about|roughly|around|just so @dim apart? ] !that|as|you|your|it
        [ where|wherever|whereabouts i|we|@name am|'m|is|'s|are|'ve|have|just? patting|pointing|touching|tapping|holding|showing|pressing|rubbing|prodding|gripping|placing|poking|stroking|indicating ]
        [ where|wherever i point|tap|touch|pat|press|hold|am|put ] !standing|sitting
        [ where|wherever my finger|fingers|hand|hands|thumb|palm|toe|foot is|are|'s|goes|go|rests ]
        [ the|this|that point|spot|place|area|bit|side|part|direction|level|height indicated|pointed|touched|mentioned? ] <indicated|pointed|touched
        [ than this ] $
        [ as @dim as this|that ] $
        [ from|between this to|and this ]
        [ this apart ]
        [ over|round|out|up|down|across|along|back|off this|that way|direction|side|corner|end ]
    """,
    size="""
        [ {about}*2 this|that @dim apart? ]
    """,
    way="""
        [ @where*2 this|that way|direction ]
    """,
    part="""
        [ {about}*2 this|that|these|those _? @spatial ]
        [ {about}*2 this|that _? bump|dent|dip|hollow|notch|crease|ridge|knob|knobble|lump|fold|seam|groove|gap|mark|bone|muscle|tendon|cord|knuckle|rib ]
    """,
    limb="""
        [ this|these number? two|three? arm|arms|leg|legs|hand|hands|foot|feet|knee|knees|elbow|finger|fingers|thumb|toe|toes|shoulder|hip|wrist|ankle|knuckle|knob|heel ]
    """,
    thing="""
        at|to|from|by|past|behind|round|around|between|beside|toward|towards|against|near|under|over|and|on|opposite|through|up|down|across|off|onto|into|use|grab|take|touch|fetch|hit|reach [ this|that|these|those _? @room ]
        at|to|from|by|past|behind|round|around|between|beside|toward|towards|under|over|off|onto|across [ that|those _? @surface|@kit ] !with|and
    """,
)

_DOES = LEXICON.mask("be", "modal")
_ENDS = frozenset(", ; : . ! ? — ) and then or but not for with while as until till so".split())
_HANDS = LEXICON.mask("handle", "orient")
_STILL = frozenset(
    "stay stays hold holds holding stop stops pause pauses wait waits rest rests breathe remain linger park stopping staying be sit lie live work"
    " works happen happens leave leaves keep keeps start starts".split()
)
_DEMONSTRATIVES = frozenset("this that these those".split())
_FELL = frozenset("sat fell fall lay went came live lived".split())
_STAYS = frozenset("stay stays remain linger breathe rest wait live be staying hang".split())
_SAID_BEFORE = frozenset("until till when once where as".split())
_ABSTRACT = frozenset(
    "point idea aim goal trick key thing secret message lesson question answer deal plan rule mistake problem difference focus job catch"
    " work everyone everybody anyone nobody people we you new back live".split()
)
_SPACE = frozenset(
    "over up down out in round around about roughly approximately somewhere anywhere just right along through across under past to"
    " exactly precisely only almost near off".split()
)
_NOT_SPACE_HERE = frozenset("be been being get gets getting got hang hanging nearly almost not you i we they he she 's are is am was".split())
_TIME = frozenset("point moment stage time week session day part".split())
_PLAN = frozenset(
    "plan programme program session class set song workout week day month year routine exercise movement sequence lesson course block"
    " rep round stretch song track morning evening talk story sheet page list text".split()
)
_DIRECTED = LEXICON.mask("orient", "handle")
_ANAPHORA = frozenset("side leg arm foot hand knee hip position space range shape line".split())


def find(sentence: Sentence) -> Iterator[Span]:
    """The marked words of a sentence."""
    for first, last, note in _PHRASES.find(sentence):
        if not _TESTS[note](sentence, first, last) or _said_next(sentence, first, last):
            continue
        if (note == "thing" and sentence.words[last : last + 1] == [","]) or not explained(sentence, first, last, size=note in ("size", "strong")):
            yield first, last


def _speaks_of_self(sentence: Sentence, first: int) -> bool:
    """Whether "I" or "we" are the ones who are here."""
    for place in range(first - 1, max(-1, first - 8), -1):
        word = sentence.words[place]
        if word in (".", "!", "?", ";", ",", "you", "your"):
            return False
        if word in ("i", "we"):
            return True
    return False


def _said_next(sentence: Sentence, first: int, last: int) -> bool:
    """Whether a colon and the words themselves follow: "this is where the brake is: under the left armrest"."""
    words = sentence.words
    if words[first] not in ("this", "that") and "way" not in words[first:last]:
        return False
    return ":" in words[last : last + 5] and len(words) - words.index(":", last) > 3


def _always(sentence: Sentence, first: int, last: int) -> bool:
    return True


def _place(sentence: Sentence, first: int, last: int) -> bool:
    """ "here" and "there" as places that a hand points at."""
    words, classes = sentence.words, sentence.classes
    word = words[last - 1]
    before = words[first - 1] if first else ""
    after = words[last] if last < len(words) else "."
    prefix = words[first : last - 1]
    if word in ("yonder", "hither", "thither"):
        return True
    if not first and last - first == 1 and word == "there" and after in (".", "!") and last + 1 >= len(words):
        return bool({"more", "bit", "lower", "higher", "wider", "further", "closer"} & set(sentence.earlier[-8:]))
    if first and {"nobody", "no-one", "nobody's"} & set(words[max(0, first - 6) : first]) and word == "here":
        return False
    if before in ("going", "on") and prefix[:1] in (["on"], ["in"]):
        return False
    if before in ("this", "that", "these") or after in ("means", "mean", "said"):
        return False
    if before in ("are", "is") and word == "there" and prefix[-1:] in (["up"], ["down"], ["in"], ["out"], ["over"], []) and {"when", "while", "once", "if"} & set(words[:first]):
        return False
    if before in ("herself", "himself", "themselves", "today", "themself", "session", "sessions") or before in _FELL or (not first and after in ("in", "with") and word == "here") or after == "with":
        return False
    if prefix == ["in"] and ({"'s", "hot", "cold", "warm", "dim", "noisy", "quiet", "loud", "dark", "stuffy"} & set(words[max(0, first - 3) : first])):
        return False
    if word == "here" and not {"over", "round", "around"} & set(prefix) and _speaks_of_self(sentence, first):
        return False
    if before in _STILL and (before in _STAYS or _SAID_BEFORE & set(words[:first])) and not {"about", "here"} & set(words[first:last]):
        return False
    after_class = classes[last] if last < len(words) else 0
    # "there are two pads", "is there a", "here comes", "here is the key point"
    if after_class & _DOES or after in ("comes", "come", "goes", "go", "we", "you", "i", "seems", "lies", "exists", "they", "it", "used"):
        if not (prefix and prefix[-1] in _SPACE):
            return False
    if before in ("is", "are", "was", "were", "'s") and word == "there" and not prefix and after in ("a", "an", "any", "no", "some", "anything", "one", "something"):
        return False
    if not prefix and (first == 0 or before in (".", "!", "?")) and after in (",", ":", "!", ".", "?", "there", "—"):
        return False  # "Here, like so"; "There!"
    if prefix and prefix[-1] == "from":
        return after == "to" and bool({"here", "there", "this", "that"} & set(words[last + 1 : last + 4]))
    if "from" in prefix:
        return True
    space = [w for w in prefix if w in _SPACE]
    if space:
        if space[-1] in ("in", "out", "up", "down", "back", "right") and before in ("hang", "hanging", "get", "someone", "somebody", "people", "anyone", "everybody", "everyone"):
            return False
        if before in ("am", "will") or (before == "be" and first > 1 and words[first - 2] in ("will", "'ll", "i")):
            return False  # "I'll be right over there"
        return not (prefix == ["almost"] or (prefix == ["just"] and after in ("to",)))
    # bare: a hand-verb with its object, and the clause ends there
    if after not in _ENDS and last < len(words):
        return False
    if before in _NOT_SPACE_HERE or before in _ABSTRACT:
        return False
    if before in _STILL:
        return False
    if word == "there" and "here" not in words and before != "not":
        return False
    for near in range(first - 1, max(-1, first - 8), -1):
        if words[near] in (".", "!", "?", ";", ":"):
            break
        if classes[near] & _HANDS and words[near] not in ("get", "go", "stop", "come", "work"):
            return words[near] not in _STILL or near < first - 1
    return before == "not" or "tender" in words or "tenderness" in words


def _size(sentence: Sentence, first: int, last: int) -> bool:
    """ "this wide", with no noun after it."""
    words, classes = sentence.words, sentence.classes
    after = words[last] if last < len(words) else "."
    dim = words[last - 1] if words[last - 1] != "apart" else words[last - 2]
    this = "this" in words[first:last]
    before = words[first - 1] if first else "."
    if dim == "far" and (before in ("come", "came", "gone", "got", "made", "been", "not") or "is" in words[max(0, first - 2) : first]):
        return False
    if dim == "much" and before in ("do", "did", "does", "done", "know", "knew", "said"):
        return False
    if dim in ("long", "hard", "short", "longer", "shorter") and words[last - 1] != "apart":
        return False
    after_class = classes[last] if last < len(words) else 0
    if not (after in _ENDS or after_class & LEXICON.mask("prep", "pause", "leader") or after in ("from", "off", "each", "every", "when", "if", "today", "now", "please", "yet", "only")):
        return False
    if after == "into" or (after == "from" and not first):
        return False
    if dim == "much" and after in ("of",):
        return False
    if not this:
        two_before = words[max(0, first - 2) : first]
        if two_before == ["to", "be"]:
            return dim in ("wide", "high", "far", "low", "close")
        if before in ("gap", "step", "circle", "loop", "hole", "space", "arc", "stride"):
            return True
        if "not" in two_before or any(sentence.classes[near] & LEXICON.bits["be"] for near in range(max(0, first - 2), first)):
            return False
        if dim in ("much", "big", "close", "deep", "bent", "straight", "back", "forward", "round"):
            return first < last - 2
    elif dim in ("round", "back", "forward", "near") and last - first == 2:
        return after in (".", ",", "!")
    return True


def _way(sentence: Sentence, first: int, last: int) -> bool:
    """ "turn that way", but not "that way the load stays close"."""
    words, classes = sentence.words, sentence.classes
    if last - first > 2 and words[first] != "just":
        return True
    before = words[first - 1] if first else "."
    after = words[last] if last < len(words) else "."
    if (before == "it" and words[max(0, first - 3) : first - 1] in (["look", "at"], ["put"])) or words[max(0, first - 3) : first] == ["look", "at", "it"]:
        return False
    if before in (".", "!", "?", ",", ";", ":", "—") or not first:
        return False
    if before in ("more", "bit", "little", "further", "touch"):
        return True
    if before in ("in",):
        return words[last - 1] == "direction" and not _said(sentence, "direction", "clockwise", "forward", "forwards", "left", "right")
    if after in ("of",):
        return False
    for near in range(first - 1, max(-1, first - 5), -1):
        if words[near] in (",", ".", ";", "!", "?"):
            break
        if classes[near] & LEXICON.bits["orient"] or words[near] in ("look", "knees", "toes", "palms"):
            return words[near] not in ("work", "keep", "feel", "stay")
    return False


def _said(sentence: Sentence, *names: str) -> bool:
    return any(name in sentence.earlier for name in names)


def _part(sentence: Sentence, first: int, last: int) -> bool:
    """ "to this spot", "at that angle"."""
    words, classes = sentence.words, sentence.classes
    noun = words[last - 1]
    before = words[first - 1] if first else "."
    after = words[last] if last < len(words) else "."
    this = next(place for place in range(last - 1, first - 1, -1) if words[place] in _DEMONSTRATIVES)
    prefix = words[first:this]
    if noun in ("way", "ways", "direction", "amount", "amounts", "space", "position", "positions", "range", "shape", "place", "quarter"):
        return False
    if {"no", "any", "every", "each", "neither", "either"} & set(words[this:last]) or after == "first":
        return False
    if noun in _ANAPHORA or noun.rstrip("s") in _ANAPHORA:
        if noun == "side" and _said(sentence, "left", "right", "side", "hand"):
            return False
        return noun in ("side", "line") and bool(prefix) and (prefix[-1] in ("to", "from", "over", "up", "along") or "over" in prefix)
    if noun in ("level", "rate", "range") and prefix[-1:] == ["at"] and after == ",":
        return False
    if noun in ("point", "stage", "moment", "part", "bit", "time") and prefix and prefix[-1] in ("at", "from", "by", "up", "until"):
        if not (
            prefix[-1] == "at"
            and after in _ENDS
            and after != ","
            and first > 1
            and any(bits & _HANDS for bits in classes[max(0, first - 4) : first])
        ):
            return prefix[-1] == "until"
    if after == "of" and any(word in _PLAN for word in words[last : last + 4]):
        return False
    if noun in ("bit", "part", "point", "section", "half", "mark", "line") and sentence.classes[min(last, len(words) - 1)] & _DOES and not prefix:
        return False
    if after in ("here", "there"):
        return True
    if words[this] == "that" and noun.endswith("s") and noun != "axis":
        return False
    if not prefix and before in (".", ",", "!", "?", ";", ":") and last < len(words) and words[last] not in PAUSES:
        return False
    if (not first and last < len(words) and words[last] not in PAUSES) or (after == "of" and last + 1 < len(words) and words[last + 1] in ("you", "us", "them")):
        return False
    if noun.rstrip("s") in ("end", "side", "corner") and words[this] == "that" and any(bits & LEXICON.mask("surface", "room") for bits in classes[:first]):
        return False
    return not (_said(sentence, noun) or noun in words[:first])


def _thing(sentence: Sentence, first: int, last: int) -> bool:
    """ "to that pillar", where no pillar was spoken of."""
    noun = sentence.words[last - 1]
    after = sentence.words[last] if last < len(sentence.words) else "."
    if noun in ("stage", "weight", "weights", "set", "set", "route", "routes", "step", "steps", "one", "ones", "pair", "exercise"):
        return False
    after_class = sentence.classes[last] if last < len(sentence.words) else 0
    if not (after in _ENDS or after_class & LEXICON.mask("prep", "pause", "leader", "where")):
        return False  # "that chair stand"
    if noun.rstrip("s") in ("side", "line", "end", "step", "station", "bar", "block", "machine", "mat"):
        return noun.rstrip("s") in ("end", "line", "side", "mat", "block", "bar") and not _said(sentence, noun) and sentence.words[first - 1] in ("to", "from", "behind", "past")
    return not (_said(sentence, noun, noun.rstrip("s")) or noun in sentence.words[:first])


def _limb(sentence: Sentence, first: int, last: int) -> bool:
    """ "lift this arm", where neither arm was spoken of."""
    words = sentence.words
    noun = words[last - 1].rstrip("s")
    if words[last : last + 1] == ["first"]:
        return False
    if "i" in words[:first] or "for" in words[max(0, first - 1) : first]:
        return False
    known = {"left", "right", "front", "back", "other", "top", "bottom", "same", "good", "bad", "sore", "weak", "strong", "lead", "rear", noun, noun + "s", words[last - 1]}
    if known & set(sentence.earlier) or known & set(words[:first]):
        return False
    after = words[last] if last < len(words) else "."
    return after in _ENDS or after in ("up", "down", "goes", "first", "on", "only", "here", "out", "in", "back", "forward")


_TESTS = {"limb": _limb, "place": _place, "strong": _always, "size": _size, "way": _way, "part": _part, "thing": _thing}


_KIT = LEXICON.bits["kit"]
_PARTS = LEXICON.bits["body"]
_DIMENSIONS = LEXICON.bits["dim"]


def suggest(sentence: Sentence, first: int, last: int) -> str:
    """What to write instead of the marked words."""
    words, classes = sentence.words, sentence.classes
    marked = words[first:last]
    if "way" in marked or "direction" in marked or marked[-1].startswith(("thisa", "thata")):
        return "Say the direction from the reader's own body or by the clock: \"to your left\", \"behind you\", \"toward 2 o'clock\"."
    if "angle" in marked or "bend" in marked:
        return "Say the angle by the clock or by a landmark: \"until your forearm points to 2 o'clock\", \"halfway to a right angle\"."
    if any(classes[place] & _DIMENSIONS for place in range(first, last)) or "size" in marked:
        return "Give the size by something the reader has with them: \"as wide as your hips\", \"two fists apart\", \"as high as your navel\"."
    if classes[last - 1] & LEXICON.bits["room"] and not classes[last - 1] & _KIT:
        return f"Say which {words[last - 1]} it is by touch, sound or steps: \"ten steps ahead, where the floor turns rough\"."
    moved = [words[place] for place in range(first) if classes[place] & _KIT and not classes[place] & _PARTS]
    if moved and moved[-1] not in ("one", "ones", "end", "side", "set"):
        return f'Say which part of the body it reaches: "until the {moved[-1]} touches the outside of your thigh, just above the knee".'
    parts = [words[place] for place in range(first) if classes[place] & _PARTS]
    if parts:
        return f'Say where the {parts[-1]} comes to, by another part of the body or something to touch: "level with your lowest rib", "on the edge of the chair".'
    return "Say the place by a part of the body, the clock or something to touch: \"on the front of your thigh, a hand above the knee\"."


ENGLISH = Kind(
    name="pointing",
    strength="blocks",
    what="A place, a direction or a size is pointed at, with no words that say it.",
    counts_each=True,
    why="A place, direction or size is pointed at, and no words say which.",
    suggest=suggest,
    triggers=_PHRASES.triggers,
    find=find,
    flag=(
        "Plant the pole [[here]], then push.",
        "Lift [[to about here]].",
        "The hips stay [[down here]].",
        "Walk [[over there]] and come back.",
        "Leave your sticks [[over there]].",
        "You should feel it [[here]].",
        "Hands [[this far apart]].",
        "A space [[this wide]] between your heels.",
        "Drop it [[that much]].",
        "March [[in that direction]].",
        "Hold the stick [[at this angle]].",
        "Keep [[this distance]] from the wall.",
        "Find [[that spot]] and stay on it.",
        "Take hold of [[that end]].",
        "Dribble to [[those cones]].",
        "Jump over [[those hurdles]].",
        "The far one, [[over yonder]].",
        "The knee travels from [[this position to this one]].",
        "[[All along this side]].",
        "Lower, lower, [[there]]!",
        "[[This is how wide]] your feet should be.",
        "[[Roughly this size]].",
        "Fingers [[in this shape]].",
        "Pull [[from way back there]].",
        "Not that much. [[This much]].",
        "At [[an angle like that]].",
        "Roll [[to the far side there]].",
        "Skip as far as [[those trees]].",
        "Keep [[inside this patch]].",
        "Lift [[these toes]] only.",
        "[[Yonder]] bench, please.",
        "Skip off [[in yon direction]].",
        "Keep [[all this]] soft.",
        "Between [[that and that]].",
        "Walk [[out past there]].",
        "Keep it [[in here]], close.",
        "Your knee's [[here]] and it should be here.",
        "Push it [[away that way]].",
        "Hang [[on to this bit]].",
        "It should pull [[across here]].",
        "Hold the racket [[down there]], by the end.",
        "Only bend [[this far]] today.",
        "[[This size of]] step.",
    ),
    leave=(
        "The golden rule is that pain ends the set.",
        "Here's a tip: breathe out as you lift.",
        "There are two ways to do it.",
        "You're nearly there.",
        "Hold it there and breathe.",
        "Is there a chair behind you?",
        "Neither here nor there.",
        "That much work is plenty.",
        "Lie on your right side. That side stays down.",
        "What matters here is rhythm.",
        "Two cones stand by the door. Walk to those cones and back.",
        "It's all downhill from here.",
        "There's no spot where you can't breathe.",
        "At this level, form first.",
        "This much is certain: sleep helps.",
        "That there is a good question.",
        "Same here.",
        "So there!",
        "There goes the bell, so rest.",
        "Watch this space for dates.",
        "We used to do this one out there on the grass in summer.",
        "That bit's optional.",
        "That end stays tied to the rail.",
        "On this side you hold the chair with your left hand.",
        "That far I can agree with the doctor.",
        "It's not that long till your holiday.",
        "We do this much every session, so you know what's coming.",
        "It was that way when I bought it.",
        "Here's how it goes: four steps forward, four back.",
        "This is where the brake is: under the left armrest.",
    ),
)
