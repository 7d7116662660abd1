"""The kind "viewer": a direction taken from the watcher, the camera, the screen or the writer."""

from collections.abc import Iterator

from handouts.wording.grammar import Phrases
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.lexicons.en import LEXICON
from handouts.wording.prose import PAUSES, Sentence, word_at

_STANDS_FOR = {
    # many who watch, and where they sit
    "crowd": """
        the|your|our _? audience|viewers|viewer|spectators|onlookers|crowd|judges|judge|panel|jury|gallery|stalls|grandstand|stands|stand|bleachers|auditorium|terraces|punters|critics|gods|boxes|balcony|congregation|press|paparazzi|followers|subscribers|adjudicators|adjudicator|scouts
        the front|back|cheap|royal|dress row|rows|seats|box|circle|benches
        the folks|viewers|people|ones|those at home
    """,
    # what a watcher sees through
    "device": """
        the|your|my|this|our|a _? @camera|@screen|device|handset|mobile|tripod|selfie-stick|telly
        the|your|my|this ring|selfie light|stick
        camera|screen one|two|a|b
    """,
    # how one gets about
    "moving": "walk|jog|run|skate|swim|step|hop|skip|roll|wheel|row|ride|dance|crawl|march|shuffle|slide|glide|sprint|trot|stride|bound|paddle|scoot|travel|lunge|gallop|canter|creep|waltz|sidestep|cycle|drift|leap|jump|go|move|kick",
    # where the watching is done from
    "watcher": """
        me|us
        yours truly
        the|your|my|this|our|a _? @camera|@screen
        the|your|my|this|our @screen 's @camera|eye
        the|your|my|our _? instructor|coach|trainer|teacher|therapist|physio|leader|demonstrator|presenter|photographer|guide|tutor|class|group|examiner|assessor|clinician|operator|tester|director|host|filmer|cameraman|cameraperson
        examiner|assessor|clinician|operator|therapist|instructor|camera|audience|tester|physio|presenter
        my|our _? @kit|@room|@surface|pole|launch|boat|bank
        the|your|our|whole room|rest|others
        {crowd}
        {device}
        the parents|mums|dads|families|house|seats|mothers|fathers|fans
        whoever|whichever holds|films|watches
        whoever|whichever is|'s filming|watching|looking|holding|recording
        the person|one|side|end watching|filming|holding
        where i|we _? _?
        where the|your|my @camera|@screen|coach|trainer|teacher|instructor|phone
        where|wherever my _
        the side|end|corner|wall i|we|where
        my|our side|end|corner|hand|hands|chair|seat|desk|mat|thumb|finger|shoulder|position|window|stool|foot|knee|elbow|nose|face
    """,
    "aim": """
        toward|towards
        facing|opposite
        at right angles|angle to
        at an angle to
        lengthways|longways|widthways|crosswise|lengthwise|endways to|with
        nearest|closest|nearer|furthest|farthest to|from?
        closer|further|farther to|from
        away|off from|to
        side-on|sideways|front-on|face-on|head-on|broadside|square|square-on|parallel|perpendicular|at-right-angles|edge-on|three-quarters|end-on|back-to-front|crossways|half-turned|diagonal|diagonally on? to|with
        side|front|face|back|edge|end|square|head on to
        in front of
        in line with
        across from
        pointing|pointed|points|point|aimed|aim|aiming|directed|tilted|angled|faced|presented at|to
        back|over|round|around|up|down toward|towards|to
        the opposite|other|same|wrong way|direction to|from|as
    """,
    "see": "see|watch|check|film|get|follow|view|inspect|judge|count|catch|observe|record",
}

_PHRASES = Phrases(
    LEXICON,
    _STANDS_FOR,
    toward="""
        [ {aim} {watcher} ]
        {moving} _*4 [ to|at|past|by|round|around|behind|beside|alongside|across|over|near|before|toward|towards|through me|us ]
        stand|sit|lie|kneel|wait|start|get|park|set|stop|finish _*3 [ next|close|near|nearest to me|us ]
        @orient|perform|play|sing|project|act|cheat|sell|offer|flash|salute|smile|dedicate _*4 [ out|up|round|straight? to|toward|towards|at {crowd} ]
        [ back|side|front|face|profile|shoulder|chest|toes|feet|head|heels|palms|hip|soles to|at|toward|towards {device} ]
        [ clockwise|anticlockwise|anti-clockwise|counterclockwise|left|right as|when|if i|we|you face|look|see|watch|view at|toward|towards? ]
        [ so|until|till|where|once that? i|we|they have|'ve|see|get|gets|catch|spot|view got? your|both|all|the|every|you ] !then|at|on|again|there|soon|tomorrow|next|monday|tuesday|wednesday|thursday|friday|in
        gone|going|go|goes|went|disappear|disappears|drift|drifting|slip|slipped|fall|fell|step|stepped|move|moved|walk|walked|are|is|were|drop [ off|out|outside of? the|my|our? screen|camera|shot|frame|view|picture|lens ] !of
        circle|gather|huddle|crowd|arc|ring|semicircle|horseshoe|line|bunch _*2 [ round|around|behind|before|about me|us ]
        [ from the front|side|back|rear ] , it|you|your _? should|look|looks|make|makes|form|forms|will|would|resemble|resembles|must
        hit|serve|jab|play|send|pass|kick|punch|drive|throw|bowl|volley|tap|roll|slip|aim|cross|hook|toss|lob|chip|swing|turn|point _*4 [ at|to|toward|towards|off|past my _? @body|glove|gloves|pad|pads|forehand|backhand|stumps|bat|racket|mitt|shield ]
        [ i am mirrored|flipped|reversed|mirroring|back-to-front ]
        [ it|this|everything|screen|video|picture|image|feed|view is|'s mirrored|flipped|reversed ]
        [ as the|your|our @camera|audience|class|judges|viewers|crowd see|sees|view|views|watch|watches ]
        ^ [ from the|out audience|judges|house|stalls|crowd|front ] , it|you|your|the !last|foot|pad
        turn|face|smile|open|rotate|twist|angle|cheat|pose|turned|hold _*4 [ for the|your judges|audience|camera|cameras|viewer|viewers|crowd|panel ]
        [ director|judge|teacher|coach|camera|audience 's side ]
        {crowd} is|'s|are [ staring|looking|gazing at your _ ]
        [ judges|judge's|audience|camera|upstage|downstage|offstage|onstage|screen side? ] arm|leg|hand|foot|knee|hip|shoulder|elbow|heel|ear|side
        [ face|faces|facing {watcher} ]
        turn|turns|turned|turning|rotate|twist|point|aim|angle|tilt|tip|lean|roll|step|open|pivot|swivel|swing|reach|present|direct|drop|fold|bow|slide|shuffle|walk|run|lunge|move|sidestep|travel|show|lift|press|push|kick|sweep|extend|lie|sit|stand|kneel _*4 [ towards|toward|to {watcher} ]
        palm|palms|back|backs|chest|front|side|shoulder|shoulders|feet|heels|heel|soles|sole|toes|toe|knees|knee|hip|hips|face|head|bum|bottom|end|handle|profile|thumb|thumbs|elbow|elbows [ to|at {watcher} ]
        [ in my|our direction ]
        [ in my direction|way ]
        [ on|to|along|from|at my _? side|end|corner|half|flank ] !there
        [ where|wherever i am ] standing|sitting|,|.|stood|sat
        [ on|to|from|at|over|by my left|right|right-hand|left-hand ] side? !@body|@kit|of
        [ my right|left|right-hand|left-hand ] side? !@body|@kit|hand
        [ the|your|our|a instructor|coach|trainer|teacher|therapist|leader|demonstrator|presenter|model|camera|viewer|watcher|onlooker|observer|photographer|reader 's left|right|side|eye|front ]
        [ stage|house|camera|screen left|right ]
        [ coach-side|trainer-side|judge-side|instructor-side|teacher-side|upstage|downstage|camera-left|camera-right|stage-left|stage-right|screen-left|screen-right ]
        [ on|at|to|towards|toward|in|by the left|right|top|bottom side|edge|half|corner|hand*2 of the|your|my|this|our screen|page|picture|photo|image|frame|display|shot|stage|monitor|video|diagram|drawing ]
        [ seen|viewed|watched|filmed|photographed|looking|looked from|at? the|my|behind|front|above|side|below ] &front|side|behind|above|below|back|left|right|@camera|.|,
        [ viewed|seen from ] !any|every|all|time|week|day
        [ you see|have|get on your|the left|right ]
        [ where i|we can see|watch ]
        [ where i sit|stand|am ]
        [ the|that|your|one _? @body that|which|? i can|cannot|could not? see ] 
        the|that|your|leg|arm|side that? [ i am looking at ]
        [ i|we|the @camera? lose|loses|catches|sees|misses sight? of? your|my ]
        ^ [ to|from me ] $|,|.
        [ as i|we look|watch|see|view|face at? you|it|him|her|them ]
        [ side|front|back|rear view ] ,|please|$
        [ from where i|we am|'m|sit|sat|stand|stood|are|was ]
        [ the @camera|@screen|telly|audience|class|window-side side ]
        [ so|where|until|till|unless|once that? i|we|everyone|everybody can|could|will|have|am|get able? to? {see} ] your|both|you|all|every|the @body?
        [ let|lets|letting|give|giving|gives|allow|allows me|us see|watch|view|have|get ] your|both|how|a
        [ in|into profile|shot|frame ] !of
        [ left|right|front of me|us ]
    """,
)

_NOT_BY_SIGHT = frozenset("comes came coming report reports goes bounce up come throw hand give bring listen talk speak say write send tell email text call shout sing next matters matter happens happen".split())


def find(sentence: Sentence) -> Iterator[Span]:
    """The marked words of a sentence."""
    words = sentence.words
    for first, last, _ in _PHRASES.find(sentence):
        if words[last : last + 1] == ["man"] or ("from" in words[max(0, first - 1) : first] and "family" in words):
            continue
        if _a_place_to_go(words, first, last):
            continue
        if words[first : last + 1] == ["in", "my", "direction", "of"]:
            continue
        if _said_of_oneself(words, first, last) or _no_direction(words, first, last):
            continue
        if {"balcony", "gods", "boxes"} & set(words[first:last]) and {"eyes", "eye", "gaze", "look"} & set(words[max(0, first - 2) : first]):
            continue  # where the eyes go: the kind "gaze" has it
        if words[first] in ("to", "back") and words[last - 1] in ("me", "us") and (_NOT_BY_SIGHT & set(words[max(0, first - 3) : first]) or {"say", "tell", "read", "call"} & set(words[max(0, first - 6) : first])):
            continue
        yield first, last


_SEATS = frozenset("bleachers stands stand grandstand gallery terraces balcony boxes row seats seat bench box stage wings".split())
_GOES = frozenset("walk jog run come go march carry head get back return sprint hop".split())
_ROOM_THINGS = frozenset("television telly tv computer laptop tablet phone screen monitor".split())
_AIMED = frozenset("stand turn face turned side set put place position get sit kneel mat mats lie start yourself move step".split())


def _a_place_to_go(words: list[str], first: int, last: int) -> bool:
    """Whether it is where one goes or where one happens to be: "walk back to the stands", "do it in front of the television"."""
    inside = words[first:last]
    if _SEATS & set(inside[-1:]) and "to" in inside:
        return not {"turn", "face", "chest", "hips", "palms", "open", "bow"} & set(words[max(0, first - 5) : first]) and bool(
            _GOES & {*words[max(0, first - 4) : first], inside[0]}
        )
    return inside[:3] == ["in", "front", "of"] and bool(_ROOM_THINGS & set(inside)) and not _AIMED & set(words[max(0, first - 6) : first])


_TOUCHES = frozenset("touching pressing tapping pushing prodding".split())
_DEVICES = frozenset("device phone camera laptop tablet webcam".split())
_SETS_UP = frozenset("set put prop place lean stand tilt angle move".split())


def _no_direction(words: list[str], first: int, last: int) -> bool:
    """Whether no way for the body is given: "where I'm touching", "turned away from the class", "come back to the room"."""
    inside = words[first:last]
    before = word_at(words, first - 1, ".")
    after = word_at(words, last, ".")
    if inside[0] == "where" and after in _TOUCHES:
        return True
    if inside[0] == "so" and (after in ("whole", "full") and words[last + 1 : last + 2] == ["picture"]):
        return True
    if "so" in (inside[0], before) and {"see", "get"} & set(inside) and _DEVICES & set(words[max(0, first - 4) : first]) and _SETS_UP & set(words[max(0, first - 5) : first]):
        return True
    if before == "turned" and words[first - 2] in ("was", "were", "be", "been", "being", "got"):
        return True
    if inside[-2:] in (["to", "me"], ["to", "us"]) and after == "for" and words[last + 1 : last + 2] in (["help"], ["advice"], ["support"], ["a"]):
        return True
    if inside[-2:] == ["to", "me"] and (
        (inside[0] == "down" and before in ("is", "'s", "not", "was")) or (before == "come" and after in ("after", "before", "if", "with", "any"))
    ):
        return True
    if inside[-1] in ("me", "us") and "to" in inside and {"send", "post", "email", "hand", "leave"} & set(words[max(0, first - 2) : first]):
        return True
    if inside in (["across", "from", "me"], ["across", "from", "us"]) and before in ("sits", "sat", "lives", "lived", "works", "worked"):
        return True
    if inside[-1] == "room" and {"come", "coming", "came"} & {before, *words[max(0, first - 2) : first]} and "back" in (before, inside[0]):
        return True
    return inside == ["i", "am", "facing", "you"] and after == "," and words[last + 1 : last + 2] == ["so"]


_SIDES = frozenset("left right clockwise anticlockwise leg arm foot hand turn step it".split())
_NO_PLACE = frozenset("bargain family story argument things deal tree".split())
_HAPPENS = frozenset("is was are has had went goes can cannot could will aches hurts cracks clicks got gets never always still felt feels".split())
_SOCIAL = frozenset("then there soon again on at tomorrow".split())


def _said_of_oneself(words: list[str], first: int, last: int) -> bool:
    """Whether the writer tells of himself, or of an opinion, and points nowhere."""
    inside = words[first:last]
    before = word_at(words, first - 1, ".")
    after = word_at(words, last, ".")
    starts = before in PAUSES
    if inside[0] == "my" and inside[-1] in ("left", "right", "hand") and before not in ("to", "on", "at", "toward", "towards", "is", "'s", "use", "from", "opposite", "not", "facing"):
        if "hand" in inside or (starts and after in _HAPPENS and "your" not in words[last : last + 4]):
            return True
        if before == "than":
            return True
    if inside[0] == "where" and before == "from" and first == 1 and not _SIDES & set(words[last:]):
        return True
    if inside == ["my", "right"] and after == "to" and not {"your", "you"} & set(words[last : last + 4]):
        return True
    if inside[-1] == "eye" and inside[0] == "a":
        return True
    if inside == ["at", "me"] and before == "back":
        return True
    if inside[0] == "where" and after == "at" and words[last + 1 : last + 2] in ([], ["."], [","]):
        return True
    if after == "of" and _NO_PLACE & set(words[last : last + 4]):
        return True
    if starts and inside[0] in ("from", "to", "toward", "towards", "on", "at") and {"me", "my", "i"} & set(inside):
        rest = set(words[last:])
        if inside in (["to", "me"], ["from", "me"]):
            return len(words) > 5 and words.count("me") == 1
        if after in ("he", "she", "they") or (after in (",", "as", "all") and not _SIDES & rest):
            return True
    if inside[:3] == ["up", "to", "me"] and before in ("is", "'s", "not", "was", "be"):
        return True
    if inside[-1] in ("me", "us") and after in ("coaches", "trainers", "all", "lot"):
        return True
    return inside[-1] in ("catch", "see", "get", "you") and "i" in inside and _SOCIAL & set(words[last : last + 2]) != set() and "your" not in words[last : last + 3]


def suggest(sentence: Sentence, first: int, last: int) -> str:
    """What to write instead of the marked words."""
    words = sentence.words
    marked = set(words[first:last])
    if {"left", "right"} & marked:
        return "Say it from the reader's own side: \"your left\", \"your right\"."
    if {"palm", "palms"} & set(words):
        return "Say it from the reader's body: \"palms forward\", \"palms toward your thighs\"."
    if {"see", "show", "let", "watch"} & marked:
        return "Say how the reader stands, not what you would see: \"turn until your left shoulder points to 12 o'clock\"."
    if {"nearest", "closest", "nearer", "closer", "furthest", "farthest"} & marked:
        return "Name the side of the reader's body: \"the left knee\", \"the top leg\"."
    return "Take the direction from the reader's body, the clock or something to touch: \"toward 3 o'clock\", \"toward the wall behind your head\"."


ENGLISH = Kind(
    name="viewer",
    strength="blocks",
    what="A direction is taken from the watcher, the camera, the screen or the writer, not from the reader's body.",
    why="The direction is the watcher's, not the reader's own.",
    suggest=suggest,
    find=find,
    flag=(
        "The ball rests on your [[coach-side]] hip.",
        "Twist till the front row [[is staring at your number]].",
        "Turn your chest [[to me]].",
        "Sit [[facing the laptop]].",
        "Stand [[in front of me]].",
        "Turn [[away from the camera]].",
        "Point the toe [[at me]].",
        "[[The foot nearest me]].",
        "The knee [[on my side]].",
        "Turn [[clockwise as I]] look at you.",
        "[[As I look at you]], it's the left arm.",
        "[[Seen from]] above, the feet make a V.",
        "Lift the foot [[so I see the sole]].",
        "[[Let me see]] your heels.",
        "Move back until you're [[in shot]].",
        "[[Side view]], please.",
        "[[Bow to the audience]].",
        "Open your hips [[to the audience]].",
        "[[The instructor's right]] is your left.",
        "The wheel [[nearest to me]].",
        "Form a row [[across from me]].",
        "[[The camera side]] leg.",
        "Cant the boat towards the launch [[where I sit]].",
        "[[To me]], [[from me]], [[to me]].",
        "[[The ear I can't see]].",
        "Turn till [[I lose sight of your]] hand.",
        "Half turn [[to the gallery]].",
        "On [[the viewer's left]].",
        "On [[the coach's side]].",
        "Your right is [[my left]].",
        "Shuffle [[nearer the laptop]].",
        "Lie with your head [[at my end]].",
        "Turn your hips round to [[face me]].",
        "What [[you see on your left]] comes last.",
        "Kneel at right angles [[to the camera]].",
        "Put the chair [[where I can see]] it.",
        "Walk [[past me]] one by one.",
        "Perform it [[out to the crowd]].",
        "Twist [[toward the ring light]].",
        "Lie with your feet [[at the webcam end]].",
        "Roll to [[the bench where I'm sitting]].",
        "Turn [[clockwise as I face]] you.",
        "Patient sits [[facing clinician]].",
        "[[From the front]], your knees should line up.",
        "Come back, you've gone [[off screen]].",
        "Form a circle [[round me]].",
        "Serve it [[to my backhand]].",
        "[[I'm mirrored]], so go right.",
        "[[The judges' side]] arm lifts.",
        "Turn out [[for the judges]].",
    ),
    leave=(
        "Turn to me for help.",
        "Send it over to us.",
        "Let me see, that was eight.",
        "She sat across from us at lunch.",
        "You feel it where I'm touching.",
        "They were turned away from the class.",
        "In your own time, come back to the room.",
        "Do not lean on the drip stand.",
        "Walk back to the bleachers and sip some water.",
        "You can do it in front of the television.",
        "Say the weight back to me first.",
        "Viewed from any angle, it is hard work.",
        "Show us your progress.",
        "My right-hand man holds the pads.",
        "In my direction of travel I always had the wind.",
        "Give me your hand if you wobble.",
        "My left knee is older than I am.",
        "Talk to me while you walk.",
        "Step toward the sound of my clap.",
        "Palms face each other.",
        "Face the wall and put both palms on it.",
        "Turn your toes toward 2 o'clock.",
        "Keep your phone within reach in case you fall.",
        "In my view you are ready.",
        "Stand by me, sang somebody.",
        "It matters to me that you are safe.",
        "From my side there is no hurry at all.",
        "Turn toward the wall you are touching.",
        "I can see you're tired.",
        "Let me see: you've done four, so two to go.",
        "Hand it to me.",
        "Put me down for Tuesday.",
        "My hips go back as the bar comes down my thighs.",
        "We walk with the hedge on our left.",
        "Take the handle in the hand nearest the stack.",
        "From where I stand as a coach, sleep matters most.",
        "The top of the sheet has our number.",
        "Bow to whoever is next to you.",
        "It's up to me to set the load.",
        "From behind you, bring the arms forward.",
        "My left is weaker than my right.",
        "Lean in the direction of the turn.",
        "A trainer's eye is worth having.",
        "Come toward my voice.",
        "Show this sheet to the nurse.",
        "My right to rest is sacred.",
        "Get seen straight away if you bang your head.",
    ),
)
