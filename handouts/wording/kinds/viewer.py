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
        come|go|comes _*2 [ past|by|round|around|behind|beside|alongside|toward|towards me|us ]
        stand|sit|lie|kneel|wait|start|get|park|set|stop|finish _*3 [ beside|alongside|behind me|us ] !in
        stand|sit|lie|kneel|wait|start|get|park|set|stop|finish _*3 [ next|close|near|nearest to me|us ]
        hold|offer|present|stick|push|reach|send|lift|extend|poke|point|turn|stretch|press|open|show|swing _*4 [ out|up|across|over|round|straight to|at|toward|towards me|us ]
        @orient|perform|play|sing|project|act|cheat|sell|offer|flash|salute|smile|dedicate _*4 [ out|up|round|straight? to|toward|towards|at {crowd} ]
        @orient|perform|play|sing|project|act|cheat|sell|offer|flash|salute|smile|bow|wave|nod _*4 [ out? to|toward|towards|at the parents|house|fans|seats|mums|dads|families ]
        [ back|side|front|face|profile|shoulder|chest|toes|feet|head|heels|palms|hip|soles to|at|toward|towards {device} ]
        line|lined|square|align|aligned|squared _*4 [ with|to {device} ]
        [ at|by|near|on|from the|your _? @camera|@screen|webcam end|side ]
        [ the _ where? i|we am|'m|are sitting|standing|stood|sat|kneeling|spotting|waiting|lying|leaning|filming|perched|parked|at|facing on|in|at? ]
        [ to|toward|towards|at|near|nearer|beside|behind|past|from where i|we am|'m|are|was ]
        [ same|other|opposite|wrong way|direction i|we am|are facing|turned|pointing ]
        [ clockwise|anticlockwise|anti-clockwise|counterclockwise|left|right as|when|if i|we|you face|look|see|watch|view at|toward|towards? ]
        [ clockwise|anticlockwise|anti-clockwise|counterclockwise|left|right from my|our|the _? point|angle|side|view|end|seat|viewpoint ]
        [ as|when|where i|we|you face me|us|you|it ]
        [ so|until|till|where|once that? i|we|they have|'ve|see|get|gets|catch|spot|view got? your|both|all|the|every|you ] !then|at|on|again|there|soon|tomorrow|next|monday|tuesday|wednesday|thursday|friday|in
        till|until|so|where that? i|we can|could [ get|fit|take|have all|the|both|you ] of|in|whole
        stay|stays|is|are|be|fit|fits|get|keep|remains|remain|everything|body|come|step|move|back [ in|into the|my|our _? frame|shot|picture|view ] !of|door|beside|and
        keep|stay|stays|get|be|is|are|stand|bring|put|move|step|hold _*4 [ in|into|within|inside my|our view|sight|eyeline|eye-line|vision|sightline ]
        [ let|lets|letting me|us|coach|them see|watch|view|inspect|have|check the|those|that|these|each _? @body ]
        [ let|lets|letting me|us|coach|them see|watch|view|inspect|have|check the|those|that|these|each soles|sole|whites|underside|inside|outside|back|front|side|top ]
        [ i|we cannot see your|both|the ]
        @body [ my|our end|side ] ,|.|$|and
        [ across from|opposite my|our @body|chair|mat|seat ]
        @body|teeth|smile|line|jazz|work|it|numbers [ out? to|toward|towards|at {crowd} ]
        @body|teeth|smile|work|it [ out? to|toward|towards|at the parents|house|fans|seats|families ]
        @body|one|end [ by|beside|near {device} ]
        @body|one|end [ next|nearest|closest to? {device} ]
        gone|going|go|goes|went|disappear|disappears|drift|drifting|slip|slipped|fall|fell|step|stepped|move|moved|walk|walked|are|is|were|drop [ off|out|outside of? the|my|our? screen|camera|shot|frame|view|picture|lens ] !of
        i|we have only got [ your ]
        i|we only|just have|get|got|see [ your ]
        stay|keep|be|stand|lie|sit|remain|move|come|fit [ within|inside|into|in the|my frame|shot|picture|lens ] !of|and
        [ in full|plain|clear view of {watcher} ]
        [ where|so that? the|your|my|our @camera|@screen|coach|class|group|audience|judges|panel|lens|instructor will|can|could|would? see|sees|catch|catches|pick|picks|film|films|get|gets ]
        turn|away|back|side|shoulder|step|pace|roll|lean|face|hip|profile _? [ from|on {device} ]
        turn|away|back|side|shoulder|step|pace|roll|lean|face|hip|profile _? [ from|on {crowd} ]
        step|steps|pace|paces|metre|metres|meter|meters|yard|yards|stroke|strokes|back|away [ back|away? from me|us ]
        circle|gather|huddle|crowd|arc|ring|semicircle|horseshoe|line|bunch _*2 [ round|around|behind|before|about me|us ]
        {moving}|pass|go|come _*2 [ past|round|around|by|behind|across my|our _? @body|chair|mat|seat|bench|desk ]
        [ from where you are|'re looking|watching|viewing|facing ]
        [ as you|we are looking|watching|viewing|facing at? me|us|it|them|this|the? ]
        [ from the front|side|back|rear ] , it|you|your _? should|look|looks|make|makes|form|forms|will|would|resemble|resembles|must
        ^ [ from behind|above|below|overhead ] , it|you|your|the _? should|look|looks|make|makes|form|forms|will|would|resemble|resembles|must
        [ seen|viewed|watched|filmed|photographed|looked side-on|head-on|front-on|face-on|sideways|edge-on|end-on ]
        [ to|for an|any|the|a _? onlooker|onlookers|observer|watcher|bystander|outsider|passer-by|spectator|viewer ]
        if someone|anyone|somebody|anybody|i|you _*4 ,? [ they|i|you would see ]
        [ if someone|anyone|somebody|anybody|i were|was|stood|looked|watched|is|stands|looks|watches _*3 ,? they|i would see ]
        [ looking|looked down|up|straight on|at|upon you|me ]
        step|walk|move|come|drift|roll|lean|slide|shuffle|run _*2 [ out|off of? camera|shot|frame|screen|lens ]
        @orient|face|facing [ down|up|centre|center|front|off stage ]
        [ on|to|at|toward|towards|from sister|matron|nurse|coach|teacher|instructor|director|photographer|pianist|camera|judges|umpire|referee 's? side ]
        [ toward|towards|facing|nearest|closest|beside|opposite to? the|your nurse|doctor|carer|midwife|consultant|surgeon|porter|examiner ]
        [ away|further|furthest from the|your nurse|doctor|carer|midwife|consultant|surgeon|porter|examiner ]
        is|'s|are [ next|close|closest|nearest|near|nearer to? me|us ]
        hit|serve|jab|play|send|pass|kick|punch|drive|throw|bowl|volley|tap|roll|slip|aim|cross|hook|toss|lob|chip|swing|turn|point _*4 [ at|to|toward|towards|off|past my _? @body|glove|gloves|pad|pads|forehand|backhand|stumps|bat|racket|mitt|shield ]
        so|for the folks|people|viewers|ones|those|lot|others _*3 [ can|to|get|gets|could see|watch|a ] &look|view|,|.|it|you|how|your|the|what
        [ i|we have lost your|both|the ] @body|end|side
        [ from the stalls|audience|gallery|house|auditorium|judges|camera|lens|wings ] ,? it|you|your|this|that|they
        [ i am mirrored|flipped|reversed|mirroring|back-to-front ]
        [ i am back to front ]
        [ it|this|everything|screen|video|picture|image|feed|view is|'s mirrored|flipped|reversed ]
        [ mirror|mirrored|flipped view|mode|video|image ]
        [ as the|your|our @camera|audience|class|judges|viewers|crowd see|sees|view|views|watch|watches ]
        ^ [ from the|out audience|judges|house|stalls|crowd|front ] , it|you|your|the !last|foot|pad
        [ from where the|your judges|audience|class|camera|coach|teacher|viewers|crowd _ ]
        turn|face|smile|open|rotate|twist|angle|cheat|pose|turned|hold _*4 [ for the|your judges|audience|camera|cameras|viewer|viewers|crowd|panel ]
        ^ [ for the|your judges|audience|camera|cameras|viewer|viewers|crowd|panel ] ,
        [ give|offer|show|sell|throw|feed|flash|serve the|your|our judges|audience|crowd|stalls|gallery|house|panel ] a|your|some|that|both|one
        [ director|judge|teacher|coach|camera|audience 's side ]
        {crowd} is|'s|are [ staring|looking|gazing at your _ ]
        [ judges|judge's|audience|camera|upstage|downstage|offstage|onstage|screen side? ] arm|leg|hand|foot|knee|hip|shoulder|elbow|heel|ear|side
        [ offstage|onstage|frontstage|house-left|house-right ]
        the|your one|leg|arm|hand|foot|side|knee|hip|elbow|shoulder [ i can|cannot|could not? see|reach ]
        [ face|faces|facing {watcher} ]
        turn|turns|turned|turning|rotate|twist|point|aim|angle|tilt|tip|lean|roll|step|open|pivot|swivel|swing|reach|present|direct|drop|fold|bow|slide|shuffle|walk|run|lunge|move|sidestep|travel|show|lift|press|push|kick|sweep|extend|lie|sit|stand|kneel _*4 [ towards|toward|to {watcher} ]
        palm|palms|back|backs|chest|front|side|shoulder|shoulders|feet|heels|heel|soles|sole|toes|toe|knees|knee|hip|hips|face|head|bum|bottom|end|handle|profile|thumb|thumbs|elbow|elbows [ to|at {watcher} ]
        [ in my|our direction ]
        [ in the direction of me|us|the _? @camera|@screen ]
        [ back|over|round|around|off in|to my direction|side|way ]
        [ in my direction|way ]
        [ my side|end|corner|half|flank ] !there is|are|'s
        [ on|to|along|from|at my _? side|end|corner|half|flank ] !there
        [ my|our way ] for|and|,|on|with|in|until|for
        [ where|wherever i am ] standing|sitting|,|.|stood|sat
        [ from my _? vantage|viewpoint|angle|perspective|seat|chair point? ]
        [ my far|near|nearest|left|right side|hand|end ] !@body
        [ left|right from the stage|front|camera|audience|desk|piano|screen ]
        [ for|so the|that|all*2 folks|people|viewers|audience|those|everyone|everybody at? home|back? _? see|watch ]
        [ to|at the folks|people|viewers|audience|ones|those at|back|in home|front? ]
        turn|swing|lean|roll|tip|point|step|face|slide|shuffle|send|kick|push|drop|reach|rotate|pivot|open|come|bring|look|move|tilt|walk|run|lunge|travel|twist|pull|press|pass|toss|throw|point|aim|angle|lift|swivel|scoot|roll|bend|curl|sweep|draw|row|skate|swim|shift|sidestep|jump _*4 [ over|round|back|straight? my|our way ]
        [ screenwards|screenward|camerawards|camera-side|mewards|lenswards|camera-facing|screen-side|audience-side|stageward|stagewards|classwards|coachward|coachwards ]
        [ on|to|from|at|over|by my left|right|right-hand|left-hand ] side? !@body|@kit|of
        [ my right|left|right-hand|left-hand ] side? !@body|@kit|hand
        <to|on|at [ my right|left hand side? ]
        [ the|your|our|a instructor|coach|trainer|teacher|therapist|leader|demonstrator|presenter|model|camera|viewer|watcher|onlooker|observer|photographer|reader 's left|right|side|eye|front ]
        [ @name 's right|left ] !@body|hand
        [ stage|house|camera|screen left|right ]
        [ coach-side|trainer-side|judge-side|instructor-side|teacher-side|upstage|downstage|camera-left|camera-right|stage-left|stage-right|screen-left|screen-right ]
        [ left|right|right-hand|left-hand|top|bottom|middle|centre|center side|edge|half|corner|part|third*2 of the|your|my|this|our @screen|picture|photo|image|video|stage|shot|diagram|drawing|mirror ]
        [ left|right|right-hand|left-hand side|edge|half|corner|part|third*2 of the|your|my|this|our page|poster|sheet ]
        [ on|at|to|towards|toward|in|by the left|right|top|bottom side|edge|half|corner|hand*2 of the|your|my|this|our screen|page|picture|photo|image|frame|display|shot|stage|monitor|video|diagram|drawing ]
        [ your|the screen|page|monitor|display 's left|right|top|bottom ]
        [ on|at|to|towards|toward the|your left|right side? as you|we|i ] look|see|watch|face|view|read
        [ as you|we|i look|watch|view|face at? me|us|it|the|this|the _? ]
        [ as seen|viewed|watched|filmed from ]
        [ seen|viewed|watched|filmed|photographed|looking|looked from|at? the|my|behind|front|above|side|below ] &front|side|behind|above|below|back|left|right|@camera|.|,
        [ viewed|seen from ] !any|every|all|time|week|day
        so|until|till|where that? [ i have|get|see got? you|your ] side|front|back|in|full|from|side-on|whole|good
        [ you see|have|get on your|the left|right ]
        [ i am facing you|the ]
        [ where i|we can see|watch ]
        [ in view of me|us|the @camera? ] <me|us|@camera
        [ turn|face|look|point|facing towards|to|toward the front|back row|line ]
        [ where i sit|stand|am ]
        @orient _*3 [ at|to|from the door|window|wall|chair|spot|side i _ ]
        [ i|we have|get a _? view of ]
        [ the|that|your|one _? @body that|which|? i can|cannot|could not? see ] 
        the|that|your _? @body that? [ i can|cannot|could not? see ]
        the|that|your|leg|arm|side that? [ i am looking at ]
        that|which is|'s [ hidden|turned|away from me|us|the @camera? ] <me|us|@camera
        [ i|we|the @camera? lose|loses|catches|sees|misses sight? of? your|my ]
        that the [ lens|camera|webcam|screen catches|sees|gets|picks|shows|misses ]
        ^ [ to|from me ] $|,|.
        [ so i|we|they have|'ve|get a _? view|shot ]
        [ flash|flashing me|us your ]
        [ give the|my|your|our _? row|class|crowd|stalls|gallery|house|camera your|a ]
        [ bow|turn|face to? the house|stalls|wings ]
        [ prompt side|corner ]
        [ opposite prompt ]
        fill [ the frame|screen|shot ]
        [ along|by|at|beside|under the @camera 's edge|eye|line? ]
        [ other|wrong|opposite way round? from|to me|mine|us ]
        [ reverse|mirror|opposite of what? i|me|mine|my ]
        [ flat|front|back|head|square on to the|my|our @camera|@screen ]
        @orient [ at my hand|hands|pad|pads|palm|mitt|foot ]
        @body [ by|near me ] $|,|.
        [ as i|we see it|you|them ]
        [ as i|we look|watch|see|view|face at? you|it|him|her|them ]
        [ from here ] it|that looks|is|'s|seems
        [ from the side|front|back|top view|angle ] ,|you|it
        [ side|front|back|rear view ] ,|please|$
        ^ [ salute me|us ]
        [ bow|curtsey|curtsy|nod|salute|wave|smile to|at me|us ]
        [ bow|wave|salute|smile|curtsey|curtsy|nod to? at? the|your _? @camera|judges|audience|crowd|class|panel ]
        [ in the|our|your coach|trainer|instructor|teacher|leader|camera 's direction ]
        [ line|queue|lined up|behind behind|beside|with me ]
        [ away|off from camera|screen|shot ]
        [ toward|towards|to camera ]
        [ the mirror|opposite of my _ ]
        [ get|keep|have|fit _*4 in the? frame|shot|picture ]
        [ from my|our|the @camera|viewer|observer|onlooker|audience|teacher|coach|instructor|trainer 's? point|angle|side|view|viewpoint|perspective|end|seat ]
        [ from my side|end|angle|viewpoint|perspective|seat|chair|window ] !there|of|i|we
        [ from where i|we am|'m|sit|sat|stand|stood|are|was ]
        [ the @camera|@screen|telly|audience|class|window-side side ]
        over to the @camera|@screen|audience|class side
                [ camera|lens|screen|audience|window side ] arm|leg|hand|knee|foot|shoulder|hip
        [ so|where|until|till|unless|once that? i|we|everyone|everybody can|could|will|have|am|get able? to? {see} ] your|both|you|all|every|the @body?
        [ so|where|until that? the _? _? can|could {see} ] @poss|both|you|all|the @body?
        [ so|where that? i get|have|see|catch your|both|the @body|back|backs|side|full|good|clear|view ]
        [ so|where that? the @camera|class|group gets|has|sees|catches|picks|can _? ]
        [ so|where that? you can|could {see} my|me|mine ]
        [ let|lets|letting|give|giving|gives|allow|allows me|us see|watch|view|have|get ] your|both|how|a
        [ give|giving|gives|allow|allows|let|lets|letting the @camera|class|group _? ] view|look|see|catch|get|have
        [ give|giving me|us a _? view|look ] !at|into
        [ show|shows|showing|present|presenting|offer|give me|us your|the|both _? @body ]
        [ show|shows|showing|present|offer|give your|the|both|a _? @body|profile to {watcher} ]
        [ show|present|give the _? @camera|@screen|class|group ]
        [ in|into profile|shot|frame ] !of
        [ out of shot|frame ]
        [ i|we should|can|could|want|need|must|will|would|ought be? able? like? to? see your|both|all|daylight|the !confidence|progress|effort _? @body ]
        [ i|we should|can|could|want|need|must be? able? to? see the @body|@kit ] of|on|under
        [ i|we want|need|like to {see} your|both @body ]
        [ off-camera|on-camera|offscreen|off-screen|side-to-camera ]
        [ mirror image of me|mine|the ]
                [ opposite|across from? me|us ]
        [ left|right|front of me|us ]
        [ turn|turned|turning|turns your|the|one|that _? back|side|face|hip|shoulder|front|profile on|to me|us ]
        [ opposite|other|same|wrong way|direction|side to|as|from my|me|i|mine ]
        [ the|your _? side|end|hand|arm|leg|foot|knee|shoulder|hip|one|heel|elbow|ear facing|nearest|closest|nearer|closer|furthest|farthest to|from? me|us ]
        [ the|your _? side|end|hand|arm|leg|foot|knee|shoulder|hip|one|heel|elbow|ear facing|nearest|closest|nearer|closer|furthest|farthest to|from? {device} ]
        [ that|which faces|face|is|'s facing? me|us|the _? class|group|audience|@camera|@screen ] <class|group|audience|me|us|@camera|@screen
        [ the lobby|security|front|back|side _? @camera ]
        [ anticlockwise|clockwise|anti-clockwise as i|seen|viewed|from ]
        [ reader|viewer|onlooker|observer|watcher|spectator 's|s left|right|side ]
        [ the|your _? window|camera|screen|audience|stage|camera-side end ] <!the &of|,
    """,
)

_NOT_BY_SIGHT = frozenset("comes came coming report reports goes bounce up come throw hand give bring listen talk speak say write send tell email text call shout sing next matters matter happens happen".split())


def find(sentence: Sentence) -> Iterator[Span]:
    """The marked words of a sentence."""
    words = sentence.words
    for first, last, _ in _PHRASES.find(sentence):
        if words[last : last + 1] == ["man"] or ("from" in words[max(0, first - 1) : first] and "family" in words):
            continue
        if (words[first] in ("give", "lend") and words[last - 1 : last] == ["hand"]) or (words[first] == "on" and first == 0 and words[last : last + 1] == [","]):
            continue
        if _a_place_to_go(words, first, last):
            continue
        if words[first : last + 1] == ["in", "my", "direction", "of"]:
            continue
        if _said_of_oneself(words, first, last) or _no_direction(words, first, last):
            continue
        if {"balcony", "gods", "boxes"} & set(words[first:last]) and {"eyes", "eye", "gaze", "look"} & set(words[max(0, first - 2) : first]):
            continue  # where the eyes go: the kind "gaze" has it
        if words[first] == "my" and words[last - 1] == "side" and words[first - 1 : first] == ["from"] and "there" in words:
            continue
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
    if inside == ["let", "me", "see"] and after == ",":
        return True
    if inside in (["across", "from", "me"], ["across", "from", "us"]) and before in ("sits", "sat", "lives", "lived", "works", "worked"):
        return True
    if inside[-1] == "room" and {"come", "coming", "came"} & {before, *words[max(0, first - 2) : first]} and "back" in (before, inside[0]):
        return True
    if inside[-1] == "picture" and words[max(0, first - 2) : first - 1] and words[first - 2] in ("she", "he", "they", "him", "her", "them", "who"):
        return True
    if inside[:2] == ["on", "the"] and inside[-1] in ("stand", "box", "bench") and not {"turn", "face", "back", "side"} & set(words[max(0, first - 3) : first]):
        return True
    return inside == ["i", "am", "facing", "you"] and after == "," and words[last + 1 : last + 2] == ["so"]


_SIDES = frozenset("left right clockwise anticlockwise leg arm foot hand turn step it".split())
_NO_PLACE = frozenset("bargain family story argument things deal tree".split())
_HAPPENS = frozenset("is was are has had went goes can cannot could will aches hurts cracks clicks got gets never always still felt feels".split())
_SOCIAL = frozenset("then there soon again on at tomorrow".split())
_FEELINGS = frozenset("got get gets go goes feel feels cope copes do does are is manage like it far many much long".split())


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
    if {"doctor", "nurse", "therapist", "physio", "coach", "trainer"} & set(inside) and {"help", "advice", "support", "questions"} & set(words[last : last + 4]):
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
    if inside[0] in ("let", "lets") and inside[-1] in ("see", "how") and after in ("how", "you", "if", ",") and _FEELINGS & set(words[last : last + 4]):
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
    triggers=_PHRASES.triggers,
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
        "What [[you see on your left]] is my right.",
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
