"""The kind "pointing": a place, a direction or a size is pointed at, and no words say it."""

from collections.abc import Iterator
from itertools import pairwise

from handouts.wording.grammar import Phrases
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.landmarks import explained, explained_after
from handouts.wording.lexicons.en import LEXICON
from handouts.wording.prose import PAUSES, Sentence, word_at

_OUTDOORS = (
    "oak|oaks|ash|elm|beech|birch|willow|pine|fir|tree|trees|trunk|stump|log|hedge|bush|bushes|gate|gates|stile|wall|bridge|path|track|trail|footpath"
    "|lane|road|street|avenue|alley|driveway|pavement|sidewalk|hill|slope|bank|mound|dune|dunes|ridge|summit|crest|field|meadow|pond|lake|river|stream"
    "|canal|shore|beach|pier|jetty|pontoon|boat|church|chapel|tower|steeple|spire|shop|store|cafe|café|pub|school|barn|shed|hut|house|cottage|garage"
    "|van|car|cars|bus|lorry|truck|bin|bins|skip|hydrant|lamppost|streetlight|streetlamp|kerb|curb|crossing|roundabout|junction|monument|statue|fountain"
    "|pavilion|bandstand|shelter|playground|swings|goalpost|goalposts|scoreboard|dugout|ditch|puddle|boulder|post|posts|fence|flag|flags|buoy|buoys|rope|ropes"
    "|gatepost|fencepost|flagpole|milepost|turnstile|signpost|letterbox|mailbox|postbox|marquee|tent|railings|steps|stairs|staircase|corridor|doorway|door|archway|arch"
)
"""Places out of doors and on the way, that a walk goes to or along."""

_FITTINGS = (
    "lever|levers|button|buttons|knob|knobs|switch|catch|latch|pin|pins|clip|clips|hook|hooks|hole|holes|slot|slots|groove|notch|peg|pegs|dial|buckle|toggle"
    "|zip|strap|straps|handle|handles|pedal|pedals|tab|flap|socket|loop|ring|rung|rungs|cleat|bolt|screw|wheel|collar|tag|cord|plug|valve|nozzle|cuff"
)
"""Parts of a machine or of kit, of which there may be several."""

_STANDS_FOR = {
    "outdoors": _OUTDOORS,
    "fitting": _FITTINGS,
    "about": "about|roughly|approximately|around|only|just|almost|exactly|precisely|to|at|by|until|till|right|no|maybe|say|up|down|out|nearly|in|on|from|over|round|off|back|across|than|somewhere|anywhere|along|past|through|under|into|between|near|toward|towards|all|way|even|top|below|above|beyond|onto|underneath|beneath|behind|ower|oot|doon|roond",
}

_PHRASES = Phrases(
    LEXICON,
    _STANDS_FOR,
    place="""
        [ {about}*3 here|there|yonder|thither|hither ]
    """,
    strong="""
        @body|@kit|point|spot|place is|'s|are usually|often|mostly|normally|always|typically|generally [ just|right|about? here|there ] ?|,|.|;|!|:
        [ {about}*2 yay|yea @dim|apart ]
        [ hereabouts|hereish|thereish|thisaway|thataway|hitherwards ]
        [ an|the|a angle|line|height|distance|gap|spot|direction like this|that ]
        ^ [ not that|this way ] ,|.|!|$
        [ this end|side|wall|line|corner|cone|mat|tree|post ] to that
        walk|run|jog|skip|hop|dribble|swim|row|sprint|shuffle|crawl|sidestep|side-step back|over|across? to [ this|that one ] ,|.|and|then|$
        [ all|the of|whole*2 this|that ] stays|stay|relaxes|works|moves|soft|still
        between [ this|that and that|this ]
        [ this|that way round|about ] !it|that|things
        [ yon _ ]
        [ so @dim apart? ] , no
        at|to|on this|that @spatial ,? and _*4 at|to|on [ this|that one ]
        , not [ this|that edge|part|bit|end|corner|side|spot|one ] ,|.|$
        lower|higher|wider|deeper|closer|nearer|further|farther|apart|narrower|bigger|past than [ that|this|these ] ,|.|and|please|$
        angle|height|width|distance|gap|depth|level|bend|stance|grip|step|length|size|spacing|spread|tilt _*4 is|'s|be|are [ about|around|roughly|just|only this|that|so ] ,|.|$
        by [ about|around|roughly this|that ] ,|.|$
        to|at {about}? [ this|that thickness|spacing|steepness|tilt|slant|bend|spread|tightness|tension ]
        collect|take|grab|fetch|get|pick|choose _*3 from|off [ this|that|those pile|stack|heap|row|bunch|tray|tub|rack|shelf|bin|basket|trolley ] $|and|,|.
        to|near|by|beside [ where that|those _ is|are ] &%ing
        [ this|that size of ] &step|steps|gap|stride|strides|circle|circles|bend|movement|arc|swing|ball|weight|space|hop|jump|lunge|turn|bite|loop|plate|knot|hole
        [ about|roughly|around so ] ,|.|$
        ^ [ not here|there ] ,|.|!|;|:
        [ {about}*2 this|that sort|kind|type of angle|height|distance|width|level|spot|place|size|gap|depth|length ]
        that|it|this might|could|may|should _? be [ here|there ] ,|.|;|or
        @body|@kit gets|reaches|passes|arrives|reached [ here|there ] ,|.|;|and|then
        @orient|rolls|lifts|leans|turns up|down|off|out|over|round|back? , [ that|this way ] .|!
        ^ [ not those|these ] ,|.|!|;
        [ this|that|these|those _? @room|@surface|@kit|@printed here|there ] $|is|are|will|for|and|with|to|has|have|on
        [ here is|'s how @dim apart? ] to|your|the|it|they|apart
        [ over|up|down|round|along|back by|near|past|beside|behind this|that|these|those ] ,|.|and|then|$
        [ thon|yon _ ]
        [ this|that is|'s how wide|high|far|low|deep|big|long|close ] your|the|it|they|apart|i !come|have
        , [ there ] ! 
        [ here ] and here
        here and [ here ]
        [ about|roughly|around|just so @dim apart? ] !that|as|you|your|it
        <!worse|better|harder|easier|more|less|rather|nicer|tougher|faster [ than this ] $
        [ as wide|high|low|deep|far|close|big|long|narrow|tall|small as this|that ] $
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
        [ {about}*2 this|that _? bump|dent|dip|hollow|notch|crease|ridge|knob|knobble|lump|fold|seam|groove|gap|mark|bone|muscle|tendon|cord|knuckle|rib|knot|stitch|stitching|peg ]
    """,
    limb="""
        this @body _*4 ,? _*3 [ that arm|leg|hand|foot|knee|elbow|hip|shoulder|heel|thumb ]
        [ this|these number? two|three? arm|arms|leg|legs|hand|hands|foot|feet|knee|knees|elbow|finger|fingers|thumb|toe|toes|shoulder|hip|wrist|ankle|knuckle|knob|heel ]
    """,
    thing="""
        at|to|from|by|past|behind|round|around|between|beside|toward|towards|against|near|under|over|and|on|opposite|through|up|down|across|off|onto|into|use|grab|take|touch|fetch|hit|reach [ this|that|these|those _? @room ]
        at|to|from|by|past|behind|round|around|between|beside|toward|towards|under|over|off|onto|across [ that|those _? @surface|@kit ] !with|and
        to|for|at|from|by|past|behind|round|around|between|beside|toward|towards|under|over|off|onto|across|through|near|up|down|along|into|opposite|follow|following|climb|cross|pass|circle|as [ that|those _? {outdoors} ]
    """,
    pronoun="""
        sit|stand|step|hang|climb|kneel|lie|lean|rest|place|put|keep|lay|press|brace|hook|balance|perch|hop|roll|sits|stands|hold _*3 on|onto|off|upon|under|against|beside|behind|over [ this|that|these|those ] ,|.|and|with|then|for|while|;|or|$
    """,
    fitting="""
        push|pull|press|grab|turn|twist|flick|undo|loosen|tighten|squeeze|lift|lower|slide|unhook|unclip|hold|use|take|into|in|onto|on|through|over|round|to|from|at [ this|that|these|those _? {fitting} ]
    """,
    gadget="""
        at|to|from|by|past|behind|round|around|beside|toward|towards|under|over|off|onto|near|on|through|for|grab|hold|push|pull|press|turn|take|use|is|'s [ this|that|these|those _ _? thing|things|thingy|thingies|jobby|gizmo|contraption|doodah|thingummy|thingamajig|whatsit ]
    """,
    so_size="""
        [ {about}? so high|wide|big|low|deep|small|tall|thick|narrow|long|thin apart? ] ,|.|off|above|apart|between|from|and
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
    " back toward towards into near between below above beyond onto underneath beneath behind"
    " exactly precisely only almost near off".split()
)
_NOT_SPACE_HERE = frozenset("be been being get gets getting got hang hanging nearly almost not you i we they he she 's are is am was".split())
_PLAN = frozenset(
    "plan programme program session class set song workout week day month year routine exercise movement sequence lesson course block"
    " rep round stretch song track morning evening talk story sheet page list text".split()
)
_ANAPHORA = frozenset("side leg arm foot hand knee hip position space range shape line".split())


def find(sentence: Sentence) -> Iterator[Span]:
    """The marked words of a sentence."""
    for first, last, note in _PHRASES.find(sentence):
        if not _TESTS[note](sentence, first, last) or _said_next(sentence, first, last):
            continue
        if (note == "thing" and sentence.words[last : last + 1] == [","]) or not _rescued(sentence, first, last, note):
            yield first, last


def _from_to(words: list[str]) -> bool:
    """Whether the sentence goes "from here" (on the rim) "to there"."""
    pairs = list(pairwise(words))
    return any(("from", place) in pairs for place in ("here", "there")) and any(("to", place) in pairs for place in ("here", "there"))


def _rescued(sentence: Sentence, first: int, last: int, note: str) -> bool:
    """Whether the sentence says the place or the size itself."""
    words = sentence.words
    if _stops_when(words, last):
        return True
    if words[last : last + 2] in (["until", "i"], ["till", "i"]):
        return False  # "until I say stop"
    if note == "place" and words[last : last + 2] == [",", "where"] and words[last + 2 : last + 3] in (["i"], ["my"]):
        return False
    if note == "place" and words[last - 1] in ("here", "there") and _from_to(words):
        return words[last : last + 1] == [","] and explained_after(sentence, last)
    if note == "place" and last - first > 2 and words[first] == "from" and words[last : last + 1] == ["to"]:
        return False  # "from over there to your hip": the hip is the other end
    if note == "place" and words[last : last + 1] in (["on"], ["at"]) and {"about", "roughly", "somewhere", "around"} & set(words[first:last]):
        return any(bits & LEXICON.mask("body", "unit") for bits in sentence.classes[last : last + 6])
    size = note in ("size", "strong", "so_size") and words[last - 1] not in ("here", "there")
    if size and _as_much_as(words, last):
        return True
    after = words[last : last + 1]
    if size and (after in (["from"], ["off"], ["above"], ["between"], ["in"]) or (after == ["to"] and words[last - 1] in ("close", "near"))):
        comma = next((place for place in range(last, min(len(words), last + 6)) if words[place] == ","), 0)
        return bool(comma) and explained_after(sentence, comma, size=True)
    return explained(sentence, first, last, size=size)


def _stops_when(words: list[str], last: int) -> bool:
    """Whether the sentence says when to stop, and "there" is that moment: "if there is pain, stop right there"."""
    before = [word for word in words[:last] if word not in ("right", "just", "it")]
    return before[-2:] == ["stop", "there"] and not _CONDITIONS.isdisjoint(words)


_CONDITIONS = frozenset(("if", "when", "whenever", "once", "any", "should"))


def _as_much_as(words: list[str], last: int) -> bool:
    """Whether the size is said in full later: "this far apart, no: as far apart as your shoulders"."""
    for place in range(last, len(words) - 3):
        if words[place] == "as" and "as" in words[place + 2 : place + 4]:
            other = words.index("as", place + 2) + 1
            return other < len(words) and words[other] not in ("this", "that", "me", "mine", "i", "here", "there", "you", "possible")
    return False


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


def _strong(sentence: Sentence, first: int, last: int) -> bool:
    """Whether the words are no talk of what the speaker can or did: "I can't lift that much"."""
    words = sentence.words
    before = word_at(words, first - 1)
    if words[first] in ("that", "those") and first + 1 < last and (_said(sentence, words[last - 1]) or words[last - 1] in words[:first]):
        return False
    if before == "than" and words[max(0, first - 3) : first - 2] == ["any"]:
        return False  # "any closer than that and you'd hit your neighbour"
    if before == "than" and words[last - 1] == "that":
        if "if" in words[:first] or "unless" in words[:first] or any(bits & LEXICON.mask("unit", "number") for bits in sentence.classes[:first]):
            return False
        if any(LEXICON.of(one) & LEXICON.mask("unit", "number") for one in sentence.earlier[-14:]):
            return False
    if words[last - 1] not in ("much", "far", "high", "low", "deep", "long"):
        return True
    said = set(words[:first])
    if {"he", "she", "they", "never", "nobody"} & said and "you" not in said:
        return False
    return not (_speaks_of_self(sentence, first) and {"can", "could", "did", "do", "used", "went"} & said)


def _place(sentence: Sentence, first: int, last: int) -> bool:
    """ "here" and "there" as places that a hand points at."""
    words, classes = sentence.words, sentence.classes
    word = words[last - 1]
    before = word_at(words, first - 1)
    after = word_at(words, last, ".")
    prefix = words[first : last - 1]
    after_be = after in ("is", "'s", "was", "are", "gets", "feels")
    if word in ("yonder", "hither", "thither"):
        return True
    if before in ("saying", "says") or (prefix[:1] == ["say"] and before in ("i", "we", "they", "people", "to", "just")):
        return False  # words that are spoken of: "I keep saying over there"
    if prefix == ["in"] and after_be and not any(bits & LEXICON.mask("body") for bits in classes[:first]):
        return False  # "the air in here is warm"
    if prefix == ["right"] and before == "," and words[0] in ("that", "this") and words[1] in ("is", "'s", "was"):
        return any(bits & LEXICON.mask("body", "kit") for bits in classes[:first]) or bool(_SPOTS & set(words[:first]))
    if prefix == ["in"] and word == "there" and not {"breath", "breathe", "breaths"}.isdisjoint(words[:first]) and any(LEXICON.of(one) & _PARTS for one in sentence.earlier):
        return False  # "your upper back spreads. Big breath in there"
    if prefix == ["in"] and any(one.endswith("est") or one in ("best", "worst", "most") for one in words[max(0, first - 3) : first]):
        return False  # "the simplest thing in here"
    if prefix == ["in"] and not any(bits & LEXICON.mask("body", "kit", "handle", "orient") for bits in classes[:first]) and {"feel", "it", "them"}.isdisjoint(words[:first]):
        return False
    if before in ("is", "'s", "are") and first > 1 and (words[first - 2] in _KIN or classes[first - 2] & LEXICON.mask("role", "medic")):
        return False  # "his mum's right here"
    if prefix[-1:] == ["out"] and before in ("yourself", "yourselves", "myself"):
        return False  # "put yourself out there"
    if (prefix == ["somewhere", "in"] and not first and after_be) or (prefix == ["on", "in"] and before in ("go", "goes", "going", "went")):
        return False  # "somewhere in there is a lesson", "what goes on in there"
    if prefix[-1:] == ["in"] and before in ("fit", "fits", "settle", "settled", "belong") and not any(bits & LEXICON.mask("body", "kit") for bits in classes[:first]):
        return False  # "you'll fit right in here"
    if prefix == ["out"] and word == "there" and "get" in words[:first] and not any(bits & LEXICON.mask("body", "kit") for bits in classes[words.index("get") : first]):
        return False  # "you can't get a bus out there"
    if prefix == ["right", "up"] and before in ("is", "'s", "are", "was", "be") and not any(bits & LEXICON.mask("body", "kit") for bits in classes[max(0, first - 3) : first]):
        return False  # "for a man of his age that is right up there"
    if prefix[-1:] != ["here"] and _tells_of_someone(sentence, first):
        return False  # "he's not dancing under there"
    if prefix[-1:] == ["in"] and word == "there" and _HOLLOWS & set(words[:first] + sentence.earlier):
        return False  # "a gap behind you? Put a cushion in there"
    if before in ("written", "printed", "listed", "noted", "typed", "wrote", "write") or prefix[-2:] == ["from", "under"] or (before == "the" and prefix == ["back"]):
        return False
    if word == "here" and not prefix and after in ("in", "at") and words[last + 1 : last + 2] in (["the"], ["our"]) and not any(bits & LEXICON.mask("body", "kit", "surface", "room") for bits in classes[last + 2 : last + 4]):
        return False  # "the bands are here in the office"
    if prefix[-1:] == ["back"] and {"put", "leave", "set", "place", "park", "rack", "hang", "go", "come", "goes", "sit"} & set(words[:first]) and any(
        LEXICON.of(one) & LEXICON.mask("surface", "room", "kit") for one in sentence.earlier + (words[: words.index(";")] if ";" in words[:first] else [])
    ):
        return False  # a place said in the sentence before
    if not first and last - first == 1 and word == "there" and after in (".", "!") and last + 1 >= len(words):
        if sentence.earlier[-2:] == ["once", "more"]:
            return False
        if sentence.earlier[-2:] in (["not", "there"], ["not", "here"], ["go", "on"]) or sentence.earlier[-1:] == ["back"]:
            return True
        if "where" in sentence.earlier[-14:] and {"see", "feel", "know", "tell"} & set(sentence.earlier[-14:]):
            return True
        return bool({"more", "bit", "lower", "higher", "wider", "further", "closer"} & set(sentence.earlier[-8:]))
    if words[last : last + 2] in ([["and", "then"], ["and", "now"]] if not {"to", "about"} & set(prefix) else []) or words[last : last + 2] == ["or", "thereabouts"] or words[max(0, first - 2) : first] == ["then", "and"]:
        return False
    if prefix and _is_talk(sentence, first, last):
        return False
    if first and {"nobody", "no-one", "nobody's"} & set(words[max(0, first - 6) : first]) and word == "here":
        return False
    if before in ("this", "that", "these") or after in ("means", "mean", "said"):
        return False
    if before in ("are", "is") and word == "there" and prefix[-1:] in (["up"], ["down"], ["in"], ["out"], ["over"], []) and {"when", "while", "once", "if"} & set(words[:first]):
        return False
    if before in ("live", "lives") and prefix and prefix[-1] in ("down", "up", "under", "over", "in"):
        return True
    if before in ("herself", "himself", "themselves", "today", "themself", "session", "sessions") or before in _FELL or (not first and after in ("in", "with") and word == "here") or after == "with":
        return False
    if prefix == ["in"] and ({"'s", "hot", "cold", "warm", "dim", "noisy", "quiet", "loud", "dark", "stuffy"} & set(words[max(0, first - 3) : first])):
        return False
    if word == "here" and not {"over", "round", "around", "about", "roughly"} & set(prefix) and _speaks_of_self(sentence, first):
        return False
    if before in _STILL and {"over", "across"}.isdisjoint(prefix) and (before in _STAYS or _SAID_BEFORE & set(words[:first])) and not {"about", "here"} & set(words[first:last]):
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
        if after in ("on", ","):  # "from here on the rim round to here"
            return any(words[near] == "to" and words[near + 1] in ("here", "there") for near in range(last + 2, min(len(words) - 1, last + 8)))
        return after == "to" and bool({"here", "there", "this", "that"} & set(words[last + 1 : last + 4]))
    if "from" in prefix:
        return True
    if prefix[-1:] == ["back"] and (before in _RETURNS or "like" in words[:first]):
        return False  # "see you back here on Thursday"
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
    if _others_too(sentence, last - 1) and before not in _STILL and before not in _NOT_SPACE_HERE and before not in _ABSTRACT:
        return True
    if before in _NOT_SPACE_HERE or before in _ABSTRACT:
        return False
    if before in _STILL:
        return False
    if first and classes[first - 1] & LEXICON.mask("body", "kit") and _bare_noun(sentence, first - 1) and word != before:
        return True
    if word == "there" and "here" not in words and before != "not":
        return _put_there(sentence, first, last)
    for near in range(first - 1, max(-1, first - 8), -1):
        if words[near] in (".", "!", "?", ";", ":"):
            break
        if words[near] == "got" and words[near - 1 : near] in (["have"], ["'ve"], ["has"], ["'s"]):
            continue  # "you've got a wide window here"
        if classes[near] & _HANDS and words[near] not in ("get", "go", "stop", "come", "work"):
            return words[near] not in _STILL or near < first - 1
    return before == "not" or "tender" in words or "tenderness" in words


_KIN = frozenset("mum mom mother dad father wife husband sister brother son daughter gran grandma granddad grandad grandpa aunt uncle friend boss manager parent partner carer nurse".split())


def _tells_of_someone(sentence: Sentence, first: int) -> bool:
    """Whether the clause says what someone else does: "he's not dancing under there"."""
    start = first
    while start > 0 and first - start < 9 and sentence.words[start - 1] not in (".", "!", "?", ";", ":", ",", "and", "but"):
        start -= 1
    if sentence.words[start : start + 1] == ["they"] and start + 1 < first and sentence.words[start + 1].endswith("ed") and sentence.words[start + 2 : start + 3] in (["the"], ["all"], ["our"], ["my"]):
        return True  # "they moved the bikes over there"
    return sentence.words[start : start + 1] in (["he"], ["she"]) and not any(bits & LEXICON.mask("body", "kit") for bits in sentence.classes[start:first])


def _put_there(sentence: Sentence, first: int, last: int) -> bool:
    """Whether a thing is put "there" with no place said before: "put the ice pack there for ten minutes"."""
    words, classes = sentence.words, sentence.classes
    place = LEXICON.mask("body", "surface", "room")
    before = word_at(words, first - 1)
    if words[last : last + 1] not in (["for"], ["with"], ["."], []) or not first or not (classes[first - 1] & LEXICON.mask("kit") or before in ("pack", "plaster", "patch", "compress", "heat")):
        return False
    if words[0] not in ("put", "place", "lay", "stick", "tie", "rest", "press") or any(bits & place for bits in classes[1 : first - 1]):
        return False
    return not any(LEXICON.of(word) & place for word in sentence.earlier)


_PEOPLE = frozenset("people folk folks everyone everybody someone somebody anyone anybody nobody they most who he she".split())
_HOLLOWS = frozenset("gap gaps hollow space bag box drawer cupboard room hall studio gym bottle pool bath pocket armpit armpits tent car van kitchen bathroom garage shed office".split())
_SPOTS = frozenset("spot place point bit part muscle bone angle height depth line position mark end corner".split())


_CROWD = frozenset(
    "class club gym team group wind weather air water clinic people folk folks view crowd council snow rain sea sun noise temperature traffic climate man woman someone"
    " somebody anyone anybody everyone everybody nobody us effort work hours time miles graft money".split()
)
_LIVES = frozenset("live lives lived works worked train trains trained grew born teach teaches taught races raced ran coached coach play played study studied".split())
_RETURNS = frozenset("come comes coming came get gets see you meet welcome will are am i we they return report 's is was end ended start join".split())
_WEATHER = frozenset("all winter summer spring autumn weather weathers rain snow cold heat wind dark sun sunshine fog frost wild country world".split())
_SIDED = frozenset("left right front back both other top bottom your the my each rear lead leading working one".split())


def _is_talk(sentence: Sentence, first: int, last: int) -> bool:
    """Whether the words tell of a place in the world: "the wind up there is fierce", "I've been out there all winter"."""
    words, classes = sentence.words, sentence.classes
    before = word_at(words, first - 1)
    after = words[last : last + 3]
    kept = before in ("live", "lives") and {"i", "we", "they", "he", "she", "you", "people", "who"}.isdisjoint(words[:first]) and "the" in words[:first]
    if kept and not any(bits & LEXICON.mask("role", "medic") for bits in classes[:first]):
        return False  # "the heavy jars live down there"
    if before in _CROWD or before in _LIVES or after[:2] == ["is", "where"] or words[first : first + 2] == ["somewhere", "out"] or after[:1] == ["people"]:
        return True
    if first and classes[first - 1] & LEXICON.mask("role", "medic") and words[last : last + 1] in (["in"], ["at"], ["can"], ["will"], ["is"]):
        return True
    if words[last - 1] == "there" and words[last - 2] in ("up", "down") and (first or sentence.earlier):
        held = before in _STAYS or before in ("pause", "hold", "wait") or (before in ("it", "them") and words[first - 2] in ("hold", "keep", "leave"))
        if held and (sentence.earlier or "and" in words[:first]):
            return True
    if not first and after[:1] and after[0] in ("at", "in", "on") and words[last - 1] == "here":
        return not any(bits & LEXICON.mask("body", "kit", "surface") for bits in classes[last + 1 : last + 4])
    if words[last - 1] == "there" and words[last - 2] == "out" and _WEATHER & set(after):
        return True
    if words[last - 1] == "here" and after[:2] in (["at", "home"], ["in", "the"], ["on", "the"]) and not any(bits & _HANDS for bits in classes[:first]):
        return after[1] == "home" or not any(bits & (LEXICON.bits["body"] | LEXICON.bits["kit"]) for bits in classes[:first])
    if (not first or before in (",", ".", "so", "and", "but")) and words[first] in ("round", "around", "over", "down", "up", "out", "in"):
        if after[:1] and after[0] in ("we", "i", "they", "people", "it", "everyone", "nobody"):
            return True
        if after[:1] == ["you"] and after[1:2] and after[1] in ("learn", "find", "discover", "forget", "meet"):
            return True
        if after[:1] and after[0] in (",", "the", "our") and words[last - 2] in ("in", "over", "round", "around"):
            place = last + (after[0] == ",")
            noun = classes[place + 1] if place + 1 < len(words) else 0
            return bool(place + 2 < len(words) and words[place] in ("the", "our", "it") and not noun & LEXICON.mask("body", "kit", "room"))
    clause = first
    while clause > 0 and first - clause < 9 and words[clause - 1] not in (".", "!", "?", ";", ",", ":", "but", "because"):
        clause -= 1
    said = words[clause:first]
    if {"hear", "mind", "attention", "focus", "thoughts", "imagine", "hearing"} & set(words[:first]) or said[:2] == ["think", "of"]:
        return True
    unbodied = not any(classes[place] & LEXICON.mask("body", "kit", "surface") for place in range(clause, first) if words[place] != "one")
    if unbodied and words[last - 1] in ("here", "there"):
        if words[last - 2] in ("in", "out") and any(one == "there" and other in ("is", "'s", "are", "was", "were") for one, other in pairwise(said)):
            return True
        if words[last - 2] in ("in", "out", "up", "down") and _PEOPLE & set(said) and not {"you", "your", "when"} & set(said) and not any(bits & LEXICON.mask("body", "kit") for bits in classes[:clause]):
            return True
        if words[last - 2] in ("in", "out") and any(one in ("is", "'s", "are", "was") and other == "the" for one, other in pairwise(said)):
            return True
        if "i" in said and {"will", "'ll"} & set(said) and before in ("come", "be", "meet", "wait", "stand", "see", "you"):
            return True
    if said[:1] == ["it"] and 2 < len(said) + 1 <= 5 and (classes[clause + 1] & LEXICON.bits["be"] or said[1] in ("gets", "get", "got", "feels", "was")):
        told = said[2:]
        return bool(told) and not any(word.endswith("ing") or word in ("too", "not", "all", "still", "way", "right", "up", "down") for word in told) and not any(
            classes[place] & LEXICON.mask("body", "handle", "orient", "dim") for place in range(clause + 2, first)
        )
    bodiless = not any(bits & LEXICON.mask("body", "kit") for bits in classes[:first])
    if bodiless and said and _is_so(sentence, clause, first):
        return True
    if bodiless and {"we", "i"} & set(said) and {"had", "was", "were", "went", "did"} & set(said):
        return True
    if bodiless and (said[:1] in (["they"], ["he"], ["she"]) or (said[:1] == ["there"] and words[last - 2] == "out")):
        return True
    if "i" in said and not {"you", "your", "want", "'d", "would", "will"} & set(said):
        return not any(bits & LEXICON.mask("handle") for bits in classes[clause:first]) or bool({"have", "was", "had", "usually", "often", "always", "used"} & set(said))
    return False


def _is_so(sentence: Sentence, clause: int, first: int) -> bool:
    """Whether someone or something is said to be so in a place: "you're safe up there", "be honest out here"."""
    if first - clause < 2:
        return False
    word, bits = sentence.words[first - 1], sentence.classes[first - 1]
    states = sentence.classes[first - 2] & LEXICON.bits["be"] or sentence.words[first - 2] in ("get", "gets", "getting", "feel", "feels", "stay", "keep", "very", "so", "too", "really")
    return bool(states) and word not in ("it", "them", "everything", "one", "ones") and not (bits & LEXICON.mask("handle", "orient", "dim", "not", "where", "prep", "det")) and not word.endswith(("ing", "ed"))


def _others_too(sentence: Sentence, place: int) -> bool:
    """Whether another "here" or "there" ends a clause of the sentence: "balls there, bats here"."""
    words = sentence.words
    for near, word in enumerate(words):
        if near != place and word in ("here", "there") and near and (near + 1 == len(words) or words[near + 1] in PAUSES):
            return words[near - 1] not in PAUSES and words[near - 1] not in _STILL and not sentence.classes[near - 1] & LEXICON.mask("be", "leader")
    return False


def _bare_noun(sentence: Sentence, place: int) -> bool:
    """Whether a clause starts with the noun at `place`: "left foot there, right foot here"."""
    words = sentence.words
    start = place
    while start > 0 and words[start - 1] in _SIDED:
        start -= 1
    return start == 0 or words[start - 1] in (".", "!", "?", ";", ",", ":", "—", "and", "then")


_NO_LENGTH = frozenset(
    "pulse pressure score reading count rate temperature sugar price cost fee dose weight load number speed bmi mood heat pitch volume standard standards target targets".split()
)


def _size(sentence: Sentence, first: int, last: int) -> bool:
    """ "this wide", with no noun after it."""
    words, classes = sentence.words, sentence.classes
    after = word_at(words, last, ".")
    dim = words[last - 1] if words[last - 1] != "apart" else words[last - 2]
    this = "this" in words[first:last]
    before = word_at(words, first - 1, ".")
    if dim == "far" and ((before in ("come", "came", "gone", "got", "made", "been") and {"have", "has", "had", "having", "i", "we"} & set(words[:first])) or before == "not" or ("is" in words[max(0, first - 2) : first] and not (this and any(bits & LEXICON.bits["body"] for bits in classes[:first])))):
        return False
    if dim == "far" and before in ("get", "gets", "getting", "made", "make") and _PEOPLE & set(words[:first]):
        return False
    if not this and not _NO_LENGTH.isdisjoint(words[:first]):
        return False  # "a pulse that low"
    if dim == "much" and before in ("do", "did", "does", "done", "know", "knew", "said"):
        return False
    if dim in ("long", "hard", "short", "longer", "shorter") and words[last - 1] != "apart":
        return False
    after_class = classes[last] if last < len(words) else 0
    if not (after in _ENDS or after_class & LEXICON.mask("prep", "pause", "leader") or after in ("from", "off", "each", "every", "when", "if", "today", "now", "please", "yet", "only")):
        return False
    if not _strong(sentence, first, last):
        return False
    if dim == "close" and this and after == "to" and last + 1 < len(words) and words[last + 1].endswith("ing"):
        return False  # "you're this close to giving up"
    if dim == "far" and not this and words[-1] == "?" and words[0] in ("can", "could", "did", "do", "have", "will"):
        return False  # "can you really walk that far?"
    if dim == "close" and this and after == "to" and first and classes[first - 1] & LEXICON.bits["be"] and words[first - 2] == "it":
        return False  # "it's this close to the race"
    if dim == "close" and not first and after == "to" and "," in words[last:]:
        return False
    if not this:
        two_before = words[max(0, first - 2) : first]
        if two_before == ["to", "be"]:
            return dim in ("wide", "high", "far", "low", "close")
        if "not" in two_before or (first and classes[first - 1] & LEXICON.bits["be"]):
            return False
        if dim in ("much", "big", "close", "deep", "bent", "straight", "back", "forward", "round"):
            return first < last - 2
    elif dim in ("round", "back", "forward", "near") and last - first == 2:
        return after in (".", ",", "!")
    return True


def _way(sentence: Sentence, first: int, last: int) -> bool:
    """ "turn that way", but not "that way the load stays close"."""
    words, classes = sentence.words, sentence.classes
    before = word_at(words, first - 1, ".")
    after = word_at(words, last, ".")
    if words[last - 1] == "way" and words[first] == "in" and last - first == 3:
        return False
    if after == "," and _DIRECTIONS & set(words[last + 1 : last + 4]):
        return False
    if last - first > 2 and words[first] != "just":
        return True
    if len(words) <= 3 and not first:
        return sentence.earlier[-1:] == ["way"]
    if before in ("lie", "lying", "stay", "sit", "stand", "kneel", "keep", "remain", "live"):
        return False
    if "neither" not in words and not classes[first - 1] & LEXICON.mask("be", "pause") and any(
        words[near] in ("this", "that") and words[near + 1] in ("way", "direction") for near in range(first - 1)
    ):
        return True
    if before in ("me", "him", "her", "us") and "look" in words[max(0, first - 3) : first]:
        return False
    if (before == "it" and words[max(0, first - 3) : first - 1] in (["look", "at"], ["put"])) or words[max(0, first - 3) : first] == ["look", "at", "it"]:
        return False
    if before in (".", "!", "?", ",", ";", ":", "—") or not first:
        return False
    if before in ("more", "bit", "little", "further", "touch"):
        return True
    for near in range(first - 1, max(-1, first - 5), -1):
        if words[near] in (",", ".", ";", "!", "?"):
            break
        if words[near] in ("minute", "minutes", "second", "seconds", "hour", "hours", "time", "times"):
            return False
        if classes[near] & LEXICON.bits["orient"] or words[near] in ("look", "knees", "toes", "palms"):
            return words[near] not in ("work", "keep", "feel", "stay")
    return False


_DIRECTIONS = frozenset("left right forward forwards backward backwards clockwise anticlockwise counterclockwise o'clock outward outwards inward inwards".split())


def _said(sentence: Sentence, *names: str) -> bool:
    return any(name in sentence.earlier for name in names)


_MEASURES = frozenset("angle height distance level depth width length gap size".split())
_KEEPS = frozenset("hold keep stay have maintain holding keeping staying keeps holds remain".split())


_DETERMINERS = frozenset("the a an your my his her their our its every most all you i we they he she it".split())


def _joins(sentence: Sentence, this: int, last: int) -> bool:
    """Whether "that" only joins two clauses: "she told me that her bone scan", "with sadness that we mark"."""
    return not _DETERMINERS.isdisjoint(sentence.words[this + 1 : last])


def _part(sentence: Sentence, first: int, last: int) -> bool:
    """ "to this spot", "at that angle"."""
    words, classes = sentence.words, sentence.classes
    noun = words[last - 1]
    before = word_at(words, first - 1, ".")
    after = word_at(words, last, ".")
    this = next(place for place in range(last - 1, first - 1, -1) if words[place] in _DEMONSTRATIVES)
    prefix = words[first:this]
    if words[this] == "that" and (_joins(sentence, this, last) or after in _DETERMINERS):
        return False  # "the sort that half the people have"
    if after == "long" or (noun == "corner" and before == "turn" and not prefix):
        return False  # "follow that path long enough", "turn that corner in life"
    if before in ("like", "love", "hate", "miss", "remember") and not prefix:
        return False  # "I like that spot in the club"
    if noun == "point" and prefix[-1:] == ["on"] and not any(bits & _HANDS for bits in classes[:first]):
        return False  # "the policy is clear on this point"
    if noun in ("way", "ways", "direction", "amount", "amounts", "space", "position", "positions", "range", "shape", "place", "quarter"):
        return False
    if not first and noun in ("point", "end", "stage", "extent", "degree", "effect"):
        return False
    if {"for", "of", "in", "to", "on", "is", "was", "and", "one", "as"} & set(words[this:last]):
        return False
    if words[this] == "that" and noun in _MEASURES and (before in _KEEPS or prefix[-1:] == ["from"]):
        return False  # "hold that angle"
    if before in ("for", "during", "after", "before") and not prefix and noun in ("part", "bit", "section", "half"):
        return False
    if noun == "side" and any(
        one in _DEMONSTRATIVES and one != words[this] and other == "side" for one, other in pairwise(words)
    ):
        return True
    if {"no", "any", "every", "each", "neither", "either", "same"} & set(words[this:last]) or after == "first":
        return False
    if noun in _ANAPHORA or noun.rstrip("s") in _ANAPHORA:
        if noun == "side" and _said(sentence, "left", "right", "side", "hand"):
            return False
        return noun in ("side", "line") and bool(prefix) and (prefix[-1] in ("to", "from", "over", "up", "along") or "over" in prefix)
    if noun in ("section", "sections") and before not in ("press", "rub") and (prefix[-1:] in (["in"], ["for"], ["during"], ["to"], []) or before in ("in", "for", "do", "skip", "repeat")):
        return False
    if noun == "point" and words[this] == "that" and prefix[-1:] == ["to"]:
        return False
    if noun in ("bit", "part") and (before in ("minute", "minutes", "seconds", "rush", "finish", "skip") or {"first", "last", "next"} & set(words[this:last])):
        return False  # "a minute on that bit", "don't rush this first part"
    if noun in ("level", "rate", "range") and prefix[-1:] == ["at"] and after == ",":
        return False
    if noun in ("point", "stage", "moment", "part", "bit", "time") and prefix and prefix[-1] in ("at", "from", "by", "up", "until") and not (prefix[-1] == "from" and after == "to"):
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
    if noun in words[:first]:  # "from this spot to that spot"
        near = words.index(noun)
        return near > 0 and words[near - 1] in _DEMONSTRATIVES and words[near - 1] != words[this]
    return not _said(sentence, noun)


_ADDRESSED = frozenset("i we you they he she".split())


def _thing(sentence: Sentence, first: int, last: int) -> bool:
    """ "to that pillar", where no pillar was spoken of."""
    noun = sentence.words[last - 1]
    after = word_at(sentence.words, last, ".")
    if {"told", "written"} & set(sentence.words[:first]):
        return False
    if after == "long":
        return False
    if sentence.words[max(0, first - 2) : first] in (["stay", "off"], ["keep", "off"], ["get", "off"], ["away", "from"]):
        return False  # "stay off that ladder": the one that both know of
    if "been" in sentence.words[:first] and not _ADDRESSED.isdisjoint(sentence.words[:first]):
        return False  # "I've been on this wall for nine years"
    if {"she", "he", "had", "used", "remember"} & set(sentence.words[:first]) and "you" not in sentence.words[:first]:
        return False
    if sentence.words[last - 2] == "same" or (noun == "end" and first == 1 and after == ","):
        return False
    if noun in ("stage", "weight", "weights", "set", "set", "route", "routes", "step", "steps", "one", "ones", "pair", "exercise"):
        return False
    after_class = sentence.classes[last] if last < len(sentence.words) else 0
    if not (after in _ENDS or after in ("twice", "once", "home", "slowly", "gently", "easy", "each", "every") or after_class & LEXICON.mask("prep", "pause", "leader", "where")):
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
    if {"i", "mine", "been"} & set(words[:first]) or "for" in words[max(0, first - 1) : first]:
        return False
    if words[first] == "that":
        return words[first + 1] in words[:first]  # "shake this hand, shake that hand"
    if last < len(words) and words[last] in ("is", "'s"):
        return True
    known = {"left", "right", "front", "back", "other", "top", "bottom", "lead", "rear", noun, noun + "s", words[last - 1]}
    if known & set(sentence.earlier) or known & set(words[:first]):
        return False
    after = word_at(words, last, ".")
    return words[first - 1] == "let" or after in _ENDS or after in ("up", "down", "goes", "first", "on", "only", "here", "out", "in", "back", "forward", "over", "across", "under", "behind", "through") or after in _LIMB_VERBS


_LIMB_VERBS = frozenset("leads lead goes go stays stay does do works work moves move drops lifts turns comes takes points presses bends rests".split())


def _pronoun(sentence: Sentence, first: int, last: int) -> bool:
    """ "step up onto this", where no thing was spoken of."""
    words, classes = sentence.words, sentence.classes
    thing = LEXICON.mask("kit", "surface", "room")
    if words[max(0, first - 2) : first] in (["rest", "on"], ["sit", "on"], ["sleep", "on"]) and words[last : last + 1] == ["for"] and {"day", "night", "week", "bit", "while"}.intersection(words[last : last + 4]):
        return False  # "rest on that for a day"
    if any(bits & thing for bits in classes[:first]):
        return False
    return words[first] in ("this", "these") or not any(LEXICON.of(word) & thing for word in sentence.earlier)




def _fitting(sentence: Sentence, first: int, last: int) -> bool:
    """ "into that slot", where no slot was spoken of."""
    words = sentence.words
    noun = words[last - 1]
    after = word_at(words, last, ".")
    after_class = sentence.classes[last] if last < len(words) else 0
    if words[last - 2] == "same" or (words[first] == "that" and noun.endswith("s")):
        return False
    if not (after in _ENDS or after in ("till", "til", "when") or after_class & LEXICON.mask("prep", "pause", "leader", "where")):
        return False
    stem = noun.rstrip("s")
    return not (_said(sentence, noun, stem, stem + "s") or noun in words[:first] or stem in words[:first] or stem + "s" in words[:first])


_NO_GADGET = frozenset("sort kind type same whole other one only last first next little of very such important good hard simple single best main lot".split())


def _gadget(sentence: Sentence, first: int, last: int) -> bool:
    """ "at that lip thing", but not "that sort of thing"."""
    return _NO_GADGET.isdisjoint(sentence.words[first:last])


def _so_size(sentence: Sentence, first: int, last: int) -> bool:
    """ "a ball, so big,", but not "your hips are so high" or "don't lift so high"."""
    words, classes = sentence.words, sentence.classes
    start = first
    while start > 0 and first - start < 9 and words[start - 1] not in (".", "!", "?", ";", ":"):
        start -= 1
    before = words[start:first]
    if {"not", "never", "i", "we", "why", "n't", "you", "they", "he", "she"} & set(before) or (first and classes[first - 1] & LEXICON.mask("be", "have", "do")):
        return words[first - 1 : first] == ["be"] and "should" in before and words[last] in (",", ".")
    if not first:
        return words[last] in (".", ",", "apart")
    return words[first] != "so" or words[first - 1] == "," or bool(classes[first - 1] & LEXICON.mask("body", "kit", "handle")) or words[first - 1] in ("it", "them", "gap")


_TESTS = {"pronoun": _pronoun, "fitting": _fitting, "gadget": _gadget, "so_size": _so_size, "limb": _limb, "place": _place, "strong": _strong, "size": _size, "way": _way, "part": _part, "thing": _thing}


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
    if moved and moved[-1] not in ("one", "ones", "end", "side", "set", "stop", "rest", "hold"):
        touch = "touch" if moved[-1].endswith("s") else "touches"
        return f'Say which part of the body it reaches: "until the {moved[-1]} {touch} the outside of your thigh, just above the knee".'
    parts = [words[place] for place in range(first) if classes[place] & _PARTS]
    if parts:
        return f'Say where the {parts[-1]} should be, by another part of the body or something to touch: "level with your lowest rib", "on the edge of the chair".'
    return "Say the place by a part of the body, the clock or something to touch: \"on the front of your thigh, a hand above the knee\"."


def _in_time(words: list[str], last: int) -> bool:
    """Whether the words measure time that has gone by: "this far into the month"."""
    return words[last : last + 2] in (["into", "the"], ["into", "a"], ["into", "your"], ["into", "our"]) and word_at(words, last + 2) in _TIMES


_TIMES = frozenset("block class course day evening hour month morning plan program programme season session spring summer autumn winter term week year".split())

ENGLISH = Kind(
    name="pointing",
    strength="blocks",
    what="A place, a direction or a size is pointed at, with no words that say it.",
    why="A place, direction or size is pointed at, and no words say which.",
    suggest=suggest,
    find=find,
    harmless=lambda sentence, first, last: _stops_when(sentence.words, last) or _in_time(sentence.words, last),
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
        "Not [[that much]]. [[This much]].",
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
        "Your knee's [[here]] and it should be [[here]].",
        "Push it [[away that way]].",
        "Hang [[on to this bit]].",
        "It should pull [[across here]].",
        "Hold the racket [[down there]], by the end.",
        "Only bend [[this far]] today.",
        "[[This size of]] step.",
        "Sprint to [[that lamp post]].",
        "Slide the pin into [[that slot]].",
        "Swap feet at [[that lip thing]].",
        "A circle, [[so big]], with the toe.",
        "Step up onto [[this]], then down.",
        "Elbow no higher than [[this]].",
        "Not [[here]], further out.",
        "Left foot [[here]], right foot on the step.",
        "Shift from [[this leg]] to the other.",
        "[[This elbow]] stays up.",
        "[[Here's how far]] to lean.",
        "Drop the arms to [[more like there]].",
        "The gap should be [[about this]].",
        "The heavy jars live [[down there]].",
        "[[Not that way]], the other way.",
        "Run to the first cone, [[back to here]], then rest.",
        "Sprint back to [[this one]].",
        "[[This end]] to [[that end]], twice.",
        "Take both poles in your hands [[up here]], one arm bent.",
        "Grip the rope [[at this knot]].",
        "When the bar gets [[here]], bend your knees.",
        "It might be [[here]], it differs.",
        "Shake [[this hand]], shake [[that hand]].",
        "Elbows under, like, [[here]].",
        "Roll off, [[that way]].",
        "[[That chair there]] is free.",
        "[[Not those]], the light ones.",
        "Pull the band [[from way over there]] to your hip.",
        "The sore place is usually [[just there]]: two knuckles.",
        "Grip the pole [[at this spot]], and with the right at [[this one]].",
        "Palms [[so far apart]], no farther.",
        "The hand comes to rest [[hereish]].",
        "You'll feel it [[right there]], where I'm touching.",
        "Run to [[that gatepost]] and back.",
        "Collect a mat from [[that pile]].",
        "Move up to [[where that lady is]] sitting.",
        "Shuffle [[across that way]] until I say stop.",
        "Put the cold pack [[there]] for ten minutes.",
    ),
    leave=(
        "This far into the month, most of you sleep better.",
        "If there is pain, stop right there and tell me.",
        "Stop right there if the joint pinches.",
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
        "The wind up there is fierce.",
        "I've been out there all winter.",
        "Stop there and then.",
        "Place the palm here, flat on the breastbone.",
        "Swing this high, level with your collarbone.",
        "Turn that way, to your left.",
        "This close to race day, rest.",
        "Keep this up for a minute.",
        "Over here the clinic closes at five.",
        "Stand behind the same chair; lean on that same chair.",
        "Lift those knees!",
        "That sort of thing happens.",
        "Have the chair there before you start.",
        "You'll be fine out here.",
        "There's a draught in here today.",
        "Most people come in here and race.",
        "I can hear you puffing from over here.",
        "The air in here is warm.",
        "Ten paces, hands as high as your ribs, no lower than that.",
        "It leaves a gap. Put a cushion in there.",
        "A lot of people get this far and stop.",
        "If your mind wanders, bring it back here.",
        "Stop when it pulls; if you get to that point, rest.",
        "That's where your trouble comes from.",
        "In that section, sit down.",
        "It's all written down here.",
        "The bands are here in the office.",
        "Hands this far apart, no: as far apart as your shoulders.",
        "The tins go on the low shelf. Put them back there afterwards.",
        "Stir for twelve minutes that way.",
        "If there's a problem, we'll go round that.",
        "She keeps still; she's not dancing under there.",
        "Her dad's right here and says yes.",
        "The rower is the simplest thing in here.",
        "A bit of wear, the sort that half the people your age have.",
        "Her doctor told her that her bone scan was clear.",
        "You've seen far worse than this.",
        "The rules are clear on this point.",
        "I've been on this wall for nine years.",
        "You've got a good window here, ten years at least.",
        "Please bring this sheet to your next visit.",
        "Stay off that ladder!",
        "Keep that in view.",
        "A pulse that low deserves a word with your nurse.",
        "For eighty-four that is right up there.",
        "Open the ribs. Big breath in there.",
        "Everyone is friendly; you'll fit right in here.",
        "You can't get a bus out there after six.",
        "It's this close to the marathon that people get silly.",
        "Up to this point you've been lying down.",
        "I like that spot in the club where nobody bothers you.",
        "They moved the bikes over there because of the leak.",
        "You've been doing this leg for a month.",
        "Put yourself out there and try the class.",
        "What goes on in there is none of my business.",
        "This size of class suits us.",
        "Rest on that for a day and tell me what you think.",
        "You're this close to giving up the cigarettes.",
        "Can you really walk that far?",
        "Your card's here, and so is your towel.",
        "Out there you learn what your legs are for.",
        "Follow that path long enough and you'll get hurt.",
        "Rub this in twice a day.",
    ),
)
