"""The kind "sight-check": the reader is told to check by eye."""

from collections.abc import Iterator

from handouts.wording.grammar import Phrases
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.lexicons.en import LEXICON
from handouts.wording.narrative import told
from handouts.wording.prose import Sentence

_STANDS_FOR = {
    "your": """
        your|the|its|both|each|either|those|these _? @body
    """,
    # something that says its news in figures, letters or hands
    "readout": """
        clock|clocks|timer|stopwatch|watch|wristwatch|display|dial|dials|gauge|scales|scale|monitor|screen|readout|counter|numbers|number|figures|digits|label|labels|tag|stamp|sticker|scoreboard|thermometer|speedometer|needle|pointer|percentage|reading|meter|minute-hand|second-hand|writing|print|lettering|whiteboard|timetable|fitbit|smartwatch|percentages|console|countdown|seconds|digit|watches|step-counter|pedometer|odometer|markings|marking|lettering|expiry|date|dates|noticeboard|indicator|led|tracker|battery|split|splits|watts|wattage|bpm|cadence|sand|bubble
    """,
    "the": "the|your|that|a|an|each|its|his|her|my|this|those|these|what|any|both",
    "look_at": """
        look|looking|glance|glancing|peek|peep|peer|squint|stare|peeking|squinting|peering over|up|down|across|back|quickly|briefly? at|to|towards|toward
        glance|peek|squint|peer up|down|over? at|to
        have|take|get|steal|sneak|grab|give|cast|keep|keeping|run a|an|another|one|half|your|occasional|regular _? look|glance|peek|peep|squint|eye|gander at|over|on|to
        keep|have|cast|run|with half? an|one|your|both|half eye|eyes half? on|over|to
        watch|watching|eye|eyeing|consult|consulting|follow|study|read|reads|reading|check|checking|scan|eyeball|notice off?
        your|both eye|eyes on
    """,
    # looking, and nothing else: for what is not made to be read
    "look_hard": """
        look|looking|glance|glancing|peek|peep|peer|squint|peeking|squinting|peering over|up|down|across|back|quickly|briefly? at|to
        have|take|get|steal|sneak|grab|cast a|an|another|one|half|your|occasional|regular _? look|glance|peek|peep|squint|eye|gander at|over|on|to
        keep|have|cast|run|with half? an|one|your|both|half eye|eyes half? on|over|to
        eyeball|inspect
    """,
    # the same, in words that have no other use
    "instrument": "wrist-watch|wristwatch|wristwatches|pace-clock|speedo|dashboard|oximeter|tachometer|rev-counter|altimeter|cyclometer|power-meter|protractor|goniometer|spirit-level|plumb-line|hourglass|sandglass|egg-timer|sand-timer|sundial|pedometer|odometer|speedometer|milometer|stopwatch|scoreboard|thermometer|readout|read-out|display|displays|dial|dials|gauge|gauges|touchscreen|lcd|led|leds|tracker|smartwatch|step-counter|counter|clock|timer|countdown|label|labels|sticker|stickers|placard|plaque|milestones|signpost|signposts|pointer|needle|second-hand|split|splits|wattage|watts|bpm|cadence|computer",
    # things read on the way or on the kit
    "written": "marker|markers|milestone|milestones|signpost|signposts|sign|signs|number|numbers|figure|figures|digits|letters|lettering|writing|inscription|engraving|stamp|wording|print|barcode|graduations|increments|scale|ruler|tape-measure|ticket|tag|tags|label|labels|embossing|placard|plaque|engravings|marks|markings|sizes|prices",
    # a surface that gives a likeness back
    "glass": "mirror|mirrors|window|windows|glass|pane|windowpane|oven|kettle|screen|puddle|water|reflection|tv|telly|chrome|shopfront|patio|door",
    # what a skin or a wound shows
    "skin": "skin|scar|wound|stitches|graze|blister|mole|bruise|stump|nail|nails|fingernails|toenails|dressing|lips|knuckles|incision|scab|rash|calf|calves|shin|shins|ankle|ankles|sole|soles|palm|palms|fingertips|fingers|toes|heel|heels|foot|feet|face|cheeks|legs|leg|hand|hands|bandage|plaster|urine|wee|pee|spit|sputum|tongue",
    "tint": "@colour|@looks|blotchy|mottled|bruised|angry|inflamed|ashen|dusky|sallow|flushed|scuffed|raw|patchy|weepy|waxy|marbled|streaky|bloody|bloodshot|jaundiced|translucent|puffy|swollen",
    "sightly": "redness|bruising|bruises|discolouration|discoloration|rash|rashes|blanching|bleeding|spots|blotches|blotchiness|colour|color|paleness|pallor|marks|puffiness|fraying|frays|frayed|cracks|shadows|shadow|symmetry|asymmetry",
}

_PHRASES = Phrases(
    LEXICON,
    _STANDS_FOR,
    mirror="""
        <!place|spot|seat|peg|mat [ in|into|with|use|using|at|on|check|consult|of|watch|trust|ask|facing|via|before {the}|every|some|one|full-length|bathroom|wardrobe|hall _? mirror|mirrors|reflection ] !wall|image|work|neuron|neurons|box
    """,
    readout="""
        [ {look_at} {the}? _? _? {readout} ] !of|out|where|when|how
        {look_at} [ {the} _? _? {readout} ] <display|monitor|timer|gauge|dial|scoreboard|stopwatch
        {the}? @colour? [ label|labels|display|dial|gauge|tag|sticker|clock|timer|countdown|screen|stamp|scale|scales|sign|counter|needle|readout|scoreboard|watch|stopwatch|digits|numbers|digit|figures|monitor|numeral|numerals|card|sheet|strip|light|lights|lamp|bulb|indicator says|say|reads|read|shows|show|hits|reaches|tells|flashes|changes|displays|glows|blinks|lights ] !off|out|aloud|loud|down|up
        [ read|reads|reading|check|note what? off? the|your|its|a number|numbers|label|labels|dial|display|print|stamp|marking|markings|figure|figures|weight|weights|scale|screen|gauge|tag|digits|small|split|pace|percentage|timer|time|setting|poster|board ]
        [ where|when|until|once|till the _? hand|needle|second-hand|pointer _? ] <is|reaches|hits|passes|points|gets|touches|sweeps|comes|goes|crosses
        [ marked|stamped|labelled|labeled|printed|written|engraved|etched|numbered @number ]
        [ marked|stamped|labelled|labeled|printed|written|engraved|etched on|with the|a|its ]
        [ second|minute hand ] of|to|on|sweep|sweeps|pass|passes|go|goes|reach|reaches|hit|hits|is|tick|ticks
    """,
    eye="""
        [ @handle|@look|check|judge|measure|compare|estimate|gauge|match|assess|inspect|confirm|verify|tell|find|spot|line _*6 by eye|sight ]
        [ by eye|sight ]
        [ eyeball|eyeballing|eyeballs|eyeballed ]
        [ visually _? ] !impaired
    """,
    view="""
        @body|@kit|@room|them|it|both|each|him|her|clock|timer|floor|wall [ out|in of? sight|view ] !,|out
        [ in|into|within|enter|enters|leaves|leave|edge|corner|edges|from of? your|the|clear|full|plain|my field|line|range|peripheral|corner|edge? of? vision|sight|view|gaze ]
        [ block|blocks|blocking|hide|hides|hiding|obscure|obscures|eclipse|eclipses|obstruct|obstructs your|the view|sight|laces|shoelaces|toes|foot|feet|shoe|shoes|toe|knee|ankle|floor|bench|bar of? ]
        [ cover|covers|covering|hide|hides|hiding|mask|masks your|the laces|shoelaces|toes|toecap|toecaps ]
        [ not be able to see ]
        [ see|seeing|seen your|both|all own? toes|toe|feet|foot|knees|knee|laces|shoelaces|hands|hand|fingers|thumbs|thumb|heels|heel|elbows|elbow|belly|navel|shoes|shoe|wrists|knuckles|kneecaps|ankle|ankles|hips|shoulders|bar ]
        , [ have|take a look ] $
        [ if|when you look down|back|across|along|sideways ] !on|after|over|at
        @number|more seconds|minutes|second|minute|secs _? [ on the clock ]
        [ the _? timer|clock|stopwatch|countdown on|above|over|by the wall|door|bench|desk|screen ] tells|says|shows|gives
        [ watch that|those front|back|left|right|top|bottom|standing|working knee|knees|elbow|hip|heel|foot|shoulder|arm|leg ] !of|on
        @body [ should|must look like ]
        it|rate|pace|split|number is|'s [ on your|the watch|screen|display|monitor|console ] !,
        [ daylight|light shows|appears|peeps|creeps|gleams ] between|under|beneath|through your|the|both|each
        [ can|could you see ] your|both _? @body
        [ in the shop|shop-front|dark|patio|car|bus window|windows|glass ] ,|your|you
        one|other|partner|partners|buddy [ watches|squints|peers for|along|down|from|under ] !me|telly
        [ compare the|your|both two|both? hands|feet|legs|calves|ankles|arms|knees|sides ] each|every|daily|nightly|weekly|by
        until|when|once|till|and|so|should [ _? _? visible ]
        [ peek|peeks|peeking|poke|pokes|appear|appears out? past|over|beyond|above|from ] your|the|behind !covers
    """,
    aimed="""
        [ check|checking|consult|consulting|read|reading|watch|watching|monitor|scan|spot-check|spot-checking|double-check|recheck|eyeball|study|note|log|record|jot|heed|mind|observe {the} _? _? {instrument} ] !by|with &_|.|,
        ^ [ spot-check|double-check|eyeball {the} ]
        [ pedometer|odometer|display|readout|dial|gauge|thermometer|speedometer|clock|timer|scales|monitor|oximeter|tracker|stopwatch should|must|will|ought to? read|say|show|reach|be ]
        [ read|reading|follow|spot|watch for? {the} _? _? {written} ]
        ^ [ read {the} _? {written} ]
        [ compare|comparing|check|judge {the} _? colour|color|colours|colors|shade|look|appearance|size|outline|shape ]
        [ peer|squint|spy|peek|peep|squiz down|up|over|across|on|upon|at|into|through|along ] your|the|a|both|yourself
        [ clap|lay|set|feast your? eyes on|upon ]
        [ yourself|form|posture|alignment|shape in {the} _? {glass} ]
        [ {the}? shadow of your|the|each|both @body|bar|arms|pole|bell ]
        [ your|its _? shadow ] covers|falls|reaches|touches|stretches|points|on|lands
        [ {skin} looks|look|appears|appear|seems|seem|turns|turn|goes|go|went|gone|stays|stay|remains|becomes|become a|an|too|very|bit|more|at|all|any|slightly|quite|so*3 {tint} ] &.|,|and|or|after|afterwards|when|if|by|at|for|then|:|—|;|call|stop|ring|see|tell|rest|let|do|we|you|it|that
        [ bulb|light|lamp|led|display|signal|screen|button|strip|indicator|sensor|lights turns|turn|changes|change|flashes|flash|glows|glow|blinks|blink|flicks|switches|lights|dims from|to|into|up|on|out|off? ]
        [ check|inspect|examine|look|search|scan|watch over|at? {the} _? _? {skin} of|for|after|before|when|daily|each|every|tonight|once|between ]
        [ check|inspect|examine|look|scan|search over|at? the skin of|on|over|under|round|around|between ]
        [ you|u|ya should|must|can|could|will|ought to? just|only|barely? be? able? to? see ] over|past|through|your|the|both|all|a|under|beyond|daylight|light|round|around|two|three|one|only|no|nothing|into|out|down
        [ when|until|once|till|if|as {the} _? _? light|lights|lamp|led|bulb|beacon|flag|torch|strobe _? goes|go|turns|turn|changes|change|comes|come|flashes|flash|blinks|drops|falls|rises|waves|dips|dims|fades|is ]
        [ eyeball|eye-ball|eyeballing ]
        [ follow the _? waymarks|waymarkers|signposts|signs|blazes|arrows|markers ]
        [ look|looking|peer|peek|glance inside|through|at|under|over the|your shoe|shoes|wear|soles|sole|tread|peephole|gap|barrel|laces ]
        [ when|if|as|once|until i|we|she|he hold|holds|raise|put|show up? a|the|my|two|three|one|some _? card|cards|flag|hand|finger|fingers|thumb|paddle|sign|board ] <card|cards|flag|hand|finger|fingers|thumb|paddle|sign|board
        [ prop|set|angle|place|put|position|lean|hang|tilt|tip|hold|move|bring|fix|use a|the|your|up _? _? mirror ] !image|wall|side|work
        [ see|watch|look|notice at? the|your|a muscle|muscles|biceps|bicep|quads|calf|calves|abs|triceps|vein|veins|skin|kneecap _? twitch|bulge|ripple|pop|tighten|jump|flicker|quiver|shake|contract|move|fold|wrinkle|whiten|redden|bunch|rise|lift|slide ]
        [ watch|watching|see the|your|a|that _? on|over|by? your? _? book|feather|tissue|candle|flame|tummy|belly|chest|paper|balloon|ball|cup|stick|shadow|bar rise|rises|fall|move|moves|rock|flicker|lift|lifts|drop|float|tip|wobble|go ]
        if|when|until|once|unless|before|till it|they [ turns|turn|goes|go|looks|look|stays|gets a|very|too|bit|at|all|quite*3 @colour ] !with
        if|when|until|unless|while|once|that|till the|a _? [ flag|light|lights|lamp|bulb|sign|led|indicator|symbol|buoy _*3 @be @colour ]
        [ check|read|watch the rate|split|watts|revs|rpm|cadence|wattage ]
        [ {the} scale|ruler|chart|gauge on|along|down|up the|its|each _ ] that|which|to tells|shows|gives|says|read
        [ you|ya|u should|must not|never see ] is|are|a|any|much|more|no|your|the|light|daylight
        till|until|when|where|if|once|and you|ye|u|we [ see|spot|sight|notice|clock ] the|a|your|both|any|no _ !difference|benefit|doctor|point|nurse|physio|need|results|results|change
        [ chalked|scribbled|scrawled|written|posted {the} _? _? set|sets|times|numbers|reps|session|intervals|programme|weights up? on ]
        [ have|take|get a wee? keek|dekko|gander|neb|nosey|deek ]
        [ inspect|examine|check|observe|monitor _? skin|scar|wound|stump|foot|feet|nails|incision|limb|site daily|with|for|nightly|twice|weekly|bd|each|every ]
        [ spot|notice|see whether|if|when|how you|you're|your|one|it|they @be|'re? lopsided|crooked|level|straight|even|wonky|tilted|leaning|listing|square|higher|lower|parallel|twisted|off|slouching|slumping|hunched ]
        [ if|whether|when|how they|it|your|the|one|either|both _? @body? looks|look _? {tint} ]
        ^ [ check|look for missed|bald|bare|stray|untrimmed spots|patches|bits|hairs ]
        [ in time with|to the|that|my bubble|light|lights|dot|circle|bulb|lamp ]
        [ glue|glued|pin|nail|fix|keep|peel|lock|clamp your|both eyes|eye to|on|for {the} _? {readout} ]
        [ read each|both|every one|label|word|line|tag|number|sign out|aloud|loud|and|in|on|;|.|, ]
        never|not lose|losing [ sight of ] your|the|both @body|@kit|_
        ^ [ look|looking down|back? at|to your|both|the _? feet|foot|toes|knees|knee|hands|shoes|laces ] between|after|before|during|each|every|.|if|:|and|as|when
        ^ [ see how far|high|low|wide|much|deep|close|straight|square|level|flat your|the|each|both|one|it ] &_
        [ wait|waiting|watch|watching|stop|go for|until|till|when|at {the} _? light|lights|lamp|bulb|led|beacon|flag|hand-signal|coach's|my to? ] to|goes|turns|changes|drops|hand|arm|flag|nod|signal
        [ look|glance|peer|scan|check around|round|about the|your room|hall|space|area|floor|studio|gym|pool ] to|for|and|before
        [ may|might|could|will|should|must appear|look higher|lower|longer|shorter|bigger|smaller|larger|crooked|level|straight|even|flat|square|symmetrical|uneven ]
        [ urine|wee|pee|water is|looks|should|goes|turns be|look? dark|darker|pale|clear|brown|yellow|pink|red|straw-coloured|straw ]
        [ by|with|using the? naked? eye|sight|eyesight ] !level
        [ in|into|within|inside|from|out your|the|of eyeline|eye-line|sightline|sight-line|eyeshot|view ]
    """,
    looks="""
        [ change in|of colour|color ]
        [ chalked|written|scribbled|posted up? on ] the|a
        [ in the glass ] <glass
        [ the needle ] should|must|is|points|past|on|sits
        ^ [ see which|whether|if ] foot|one|knee|hip|arm|side|leg|shoulder|hand|your|both
        [ when|until|once|if|as|after i nod|wave|point|signal|gesture|beckon ]
        [ a|one quick|brief|sidelong|swift|downward look|glance|peek|squint down|sideways? ]
        [ pop|pops|swing|swings|float|floats|creep|creeps|sneak|sneaks into|out view|sight ]
        [ ought|should|must|able to? be? able? to? spot|see|glimpse your|the|both ]
        [ in your|the sights ]
        [ the bubble ] in|between|sits|stays|is|should|must|centred|centered|floats
        your [ shadow ] should|wobbles|has|will|shows|moves|stays|is|must
        [ minute|second|hour hand ] tells|says|passes|reaches
        [ look|looks|looking dusky|puffy|redder|paler|darker|bluish|yellowish|bruised|inflamed|swollen|mottled ]
        ^ [ see if|whether your|the|one|both|either _ ] !get|can|feel
        ^ [ watch your|the|each|that kneecap|knee|knees|kneecaps|hip|hips|elbow|elbows|heel|heels|wrist|wrists|shoulder|shoulders|ankle|ankles|thumb|chest|tummy|belly ] :|;|.|throughout|closely|carefully|it|they|all
        [ aim|line with|up your|by eye|eyes|eyeline ]
        [ peek|peep|peer|glance through|under|between|past|round|around ]
        [ no|any|some daylight between|under|through ]
        when|until|if|once [ the _? light|lights|lamp|led|bulb goes|go|turns|turn|flashes|flash|changes|comes|blinks|is ]
        [ the pacing|signal|warning|indicator light|lights ]
        [ {look_hard} {your} ]
        [ look|glance|peek|check|peep|squint down|back now|at? again|and|to|every|once|that|your ] 
        [ glance|peek|peep|peer|squint ] at|down|over|to|along
        ^ [ look|check|inspect|examine|watch|scan|search out? for _? {sightly} ]
        [ inspect|examine|scan|survey|scrutinise|scrutinize|surveying|inspecting ] @poss|the|both|each|it
        @body [ go|goes|turn|turns|turning|gone|went|look|looks white|blue|purple|pale|grey|gray|dusky|red|mottled ] !or
        cheeks|face|lips|skin|nails|fingertips|toes [ should|ought|must to? be|stay|look not? _? pink|red|rosy|pale ]
        check|look|see|watch|inspect|make|sure|ensure that|the|your*3 skin|fingers|fingertips|toes|nails|lips|foot|hand|wound|scar|incision|cut|leg|calf _*4 [ is|are|goes|go|turn|turns|turning|looks|look|looking|gone|stays|went not|too|very|a|bit? red|pink|pale|white|blue|purple|blotchy|shiny|grey|gray|dusky|mottled|yellow|black|angry|inflamed|bruised|puffy|dark|darker ]
        [ looks|look wet|angry|inflamed|infected|puffy|swollen|bruised|discoloured|discolored|blotchy|sore ]
        [ looks|look level|even|straight|equal|symmetrical|flat|square|vertical|horizontal|parallel|crooked|upright|lopsided to? you? ] <!it
        [ give your|both|it|them|the _*3 once-over ]
    """,
)

_LOOK_VERBS = frozenset("looking glancing peeking peering staring squinting checking watching look glance peek peep peer stare squint check watch consult read".split())
_SOUNDS = frozenset("reader aloud beep beeps buzz buzzes speaks speaking talking spoken voice vibrates vibrate chime chimes ring rings bell sounds heard hear touch feel felt braille".split())
_NOT_ASKED = frozenset("no without nothing nobody never needn't instead rather ignore forget lose hide ditch".split())
_TOUCHED = frozenset("rope feel felt raised bump ridge cord tape-wrapped tactile notch notches rough".split())
_ALSO_FELT = frozenset(
    "cold numb tingle tingles tingling tingly hot warm swollen swells swell painful hurt hurts helper someone somebody partner 999 911 dizzy faint".split()
)
_IDIOMS = frozenset(
    (
        "end in sight", "is in sight", "is in sight", "in sight :", "sight of the goal", "lose sight of the goal", "lose sight of the point", "lose sight of why", "lose sight of the fun", "lose sight of what", "out of sight out of mind", "watch your back", "your numbers show", "yourself ? no need", "watch this space", "light at the end", "mirror of memory", "watch for colour", "watch for color", "see if you can", "see if you get", "see if you like", "see if you need", "see if you still", "see if you feel", "see if you are", "see the numbers grow", "see the numbers growing", "watch your fingers when", "watch your fingers as the", "peek at next", "glance over sleep", "glance off", "at the weather", "looking at the plan", "mirror away", "helper to inspect", "carer to inspect", "carer to check", "helper to check", "peek at tomorrow", "here is looking",  "mirror of", "watch your step", "watch your head", "watch your language",
        "watch your breath", "watch your breathing", "watch your weight", "watch your ego", "watch your pace", "watch the step", "watch the edge", "in view of", "with a view", "in my view", "in your view",
        "long view", "point of view", "look after", "look forward", "to look at it", "see the point", "see the doctor", "see the nurse", "see the physio", "see the benefit", "see the difference", "you will see the",
        "watch the clock tick", "at first sight", "second sight", "clock in", "clock off", "round the clock", "against the clock", "visually impaired", "by the clock tower", "watch list",
        "keep an eye on the baby", "see a difference", "see any difference", "see any improvement", "see any progress", "see how it feels", "see how you", "see how that", "see how they", "see how easy", "see how things", "see how it goes", "see how long", "see how well", "see how we", "see how much calmer", "see how much easier", "see how much better", "see how much stronger", "see how much more", "see how much better", "see how far you", "nowhere in sight", "by the number", "by numbers", "by the numbers",
        "eye of the needle", "scan your body", "scan the body", "scan through your body", "by the book", "with a number", "have a reading", "notice the level", "note the number", "level of effort", "use the weights", "use weights", "see the level",
    )
)


_SEEN = frozenset("see seeing spot notice glimpse catch".split())
_OUTCOMES = frozenset(
    "change changes difference differences benefit benefits result results gain gains improvement improvements progress increase decrease rise drop effect effects point"
    " pain soreness breach problem problems reason need dietitian doctor doctors gp nurse physio specialist consultant surgeon optician pharmacist podiatrist dentist coach trainer team"
    " manager finish end future funny way truth logic sense pattern trend mistake risk danger benefit value use friend friends family people person someone anyone everybody class"
    " website price prices".split()
)
_RAISED = frozenset("raised embossed tactile braille".split())
_TELLS_ONE = frozenset("sheet card clock figures".split())
_ON_CONDITION = frozenset("until till when once what if whatever as where how which".split())
_INNER = frozenset("wants want will would softens soften relaxes relax eases ease agrees agree lets let hurts hurt feels feel complains complain settles settle melts melt likes like gives".split())


def _looks_at_nothing(sentence: Sentence, first: int, last: int) -> bool:
    """Whether what is seen is an outcome or a person, or what is asked is how it feels."""
    words = sentence.words
    inside = words[first:last]
    if words[last - 1] == "mirrors" and words[last : last + 1] in (["the"], ["your"], ["it"], ["this"], ["each"], ["that"], ["what"]):
        return True
    if not _SEEN.isdisjoint(inside) and not _OUTCOMES.isdisjoint(words[last : last + 4]) and not any(
        bits & LEXICON.bits["body"] for bits in sentence.classes[last : last + 2]
    ):
        return True
    if inside == ["by", "sight"] and {"learn", "learned", "learnt"} & set(words[max(0, first - 6) : first]):
        return True
    if words[last - 1] in ("says", "say", "tells") and _TELLS_ONE & set(inside) and _ON_CONDITION.isdisjoint(words[:first]):
        return True
    if inside[-2:] == ["clock", "read"] or words[last : last + 1] in (["near"], ["specialist"], ["clinic"], ["hospital"]):
        return True
    if words[max(0, first - 4) : first - 1][:2] == ["one", "day"] or words[max(0, first - 3) : first - 1] == ["one", "day"]:
        return True
    if inside == ["have", "a", "look"] and "if" in words[:first]:
        return True
    if first and words[first : first + 2] == ["read", "out"]:
        return True
    near = words[last - 1 : last + 9]
    if "with" in near and {"hand", "hands", "fingers", "fingertips", "thumb"} & set(near[near.index("with") + 1 : near.index("with") + 4]):
        return True
    if _RAISED & set(words[last : last + 5]) or words[last : last + 2] == ["one", "day"]:
        return True
    return inside[:1] == ["see"] and words[first + 1 : first + 2] in (["if"], ["whether"]) and not _INNER.isdisjoint(words[first + 2 : last + 3])


def find(sentence: Sentence) -> Iterator[Span]:
    """The marked words of a sentence."""
    words = sentence.words
    for first, last, note in _PHRASES.find(sentence):
        before = words[max(0, first - 3) : first]
        if told(sentence, first) or _looks_at_nothing(sentence, first, last):
            continue
        if "clock" in words[first:last] and "not" in words[max(0, first - 7) : first]:
            continue
        if words[first] in _LOOK_VERBS and {"not", "never", "stop"} & set(words[max(0, first - (3 if words[first].endswith("ing") else 2)) : first]) and not ({"until", "till", "unless", "before"} & set(words[last : last + 2]) and {"the", "you", "your", "after"} & set(words[last : last + 4])):
            continue
        if "clock" in words[first:last] and words[first] == "watch" and {"we", "i", "coach", "partner"} & set(words[max(0, first - 2) : first]):
            continue
        if "see" in words[first:last] and {"i", "we"} & set(words[max(0, first - 3) : first + 1]):
            continue
        if words[last : last + 2] in (["and", "think"], ["and", "say"], ["and", "wonder"], ["and", "panic"], ["and", "wish"], ["and", "sigh"]):
            continue
        if words[last : last + 2] in (["for", "me"], ["for", "us"], ["to", "me"], ["to", "us"]):
            continue
        if words[first] in _LOOK_VERBS and {"people", "folk", "folks", "kids", "they", "everyone", "everybody", "cannot"} & set(words[max(0, first - 1) : first]):
            continue
        if words[last - 1] in ("blue", "white", "pale", "grey", "gray") and _ALSO_FELT & set(words):
            continue
        if words[first] in ("look", "looks") and {"may", "might", "can", "could"} & set(words[max(0, first - 1) : first]):
            continue
        if words[first] in ("figures", "numbers") and words[last - 1] in ("show", "shows", "say"):
            continue
        if words[first] in ("where", "when", "until", "once", "till") and "hand" in words[first:last] and not {"clock", "timer", "dial", "gauge", "watch", "minute", "second", "stopwatch", "big", "long"} & set(words):
            continue
        if (words[first] in ("read", "reads") and {"you", "me", "them"} & set(words[first:last])) or words[first : first + 3] == ["in", "plain", "sight"]:
            continue
        if (_NOT_ASKED & set(before) and words[first] != "sight") or ("not" in before and ("need" in before or "have" in before)):
            continue
        if note == "readout" and _SOUNDS & set(words[max(0, first - 4) : last + 6]):
            continue
        if words[first] in ("looking", "watching") and "i" in before:
            continue
        if words[first] == "marked" and _TOUCHED & set(words):
            continue
        if "sign" in words[first:last] and "my" in before:
            continue
        if words[first] in ("look", "looking", "check", "inspect") and {"i", "we", "they", "he", "she"} & set(words[max(0, first - 2) : first]):
            continue
        if words[last : last + 2] == ["any", "of"] or words[last - 1 : last + 1] == ["any", "of"] or "i" in words[first - 1 : first]:
            continue
        around = f" {' '.join(words[max(0, first - 2) : last + 3])} "
        if any(f" {idiom} " in around for idiom in _IDIOMS):
            continue
        yield first, last


_CLOCKS = frozenset("clock timer watch stopwatch hand seconds countdown minute second".split())
_TO_READ = frozenset(
    "label labels number numbers digits dial gauge display screen tag stamp sticker scale scales card sheet list print marked stamped printed labelled reads says read counter".split()
)
_FEEL_IT = {
    "back": "lay the back of one hand on your lower back and feel that it stays flat",
    "knee": "reach down and feel that your kneecap is above your toes",
    "hip": "lay a stick across both hip bones and feel that it does not tip",
    "shoulder": "slide a hand between your ear and your shoulder; it should fit on both sides",
    "foot": "feel the edge of the mat along the outside of both feet",
    "elbow": "feel your elbow brush your ribs",
    "heel": "feel both heels press into the floor",
    "toe": "reach down and touch your big toes; they should be level",
    "hand": "bring your hands together and feel whether the fingertips meet",
    "skin": "run the back of your fingers over it, and feel for heat, swelling or soreness",
}
_FORMS = {"knees": "knee", "kneecaps": "knee", "hips": "hip", "shoulders": "shoulder", "feet": "foot", "elbows": "elbow", "heels": "heel", "toes": "toe", "hands": "hand"}
_FORMS |= {"spine": "back", "laces": "toe", "shoelaces": "toe", "redness": "skin", "bruising": "skin", "calves": "skin", "wound": "skin", "colour": "skin", "color": "skin"}


def suggest(sentence: Sentence, first: int, last: int) -> str:
    """What to write instead of the marked words."""
    words = sentence.words
    marked = set(words[first:last])
    if _CLOCKS & marked:
        return "Give a time that can be heard or counted: \"until the timer rings\", \"for ten slow breaths\"."
    if _TO_READ & marked:
        return "Say how the hand or the ear can tell it: \"count three holes from the top\", \"the plate as wide as your hand\", or have it read out."
    for place in (*range(first, len(words)), *range(first - 1, -1, -1)):
        part = _FORMS.get(words[place], words[place])
        if part in _FEEL_IT:
            return f'Give a check by touch or feel: "{_FEEL_IT[part]}".'
    return "Give a check by touch, sound or feel: \"slide a hand along it\", \"listen for the click\", \"feel both sides press alike\"."


ENGLISH = Kind(
    name="sight-check",
    strength="blocks",
    what="The reader is told to check by eye.",
    why="Asks the reader to check by eye.",
    suggest=suggest,
    find=find,
    flag=(
        "Your knees should be in line, [[have a look]].",
        "[[If you look down]], your toes should point ahead.",
        "Ten more seconds [[on the clock]].",
        "[[The timer on the wall]] tells you when to change.",
        "[[Watch that front knee]].",
        "Your arms [[should look like]] a straight line.",
        "Hold it at 120, it's [[on your watch]].",
        "[[Can you see your]] big toe?",
        "Stop if [[daylight shows between]] your back and the mat.",
        "[[Compare the two hands]] each evening.",
        "[[In the shop window]], your shoulders should be level.",
        "The other [[squints along]] the spine.",
        "[[Look at the screen]] for your power.",
        "Stand in front [[of a mirror]].",
        "[[Look down and]] check your feet.",
        "[[Look at your hands]] to make sure they're level.",
        "[[Keep an eye on your heart]] rate monitor.",
        "Turn it until the [[dial says]] five.",
        "Choose the dumbbell [[marked \"8]]\".",
        "[[Check for redness]].",
        "[[Examine]] your heels.",
        "[[You should see]] your toes in front of your knees.",
        "If [[you can't see]] your hands, they're too far back.",
        "Keep your hands [[in view]].",
        "[[See whether]] your knees track over your toes.",
        "[[Line up your eye]] with the pin.",
        "It should [[look symmetrical]].",
        "[[Compare both calves by sight]].",
        "[[Peek through]] your legs.",
        "[[No daylight between]] your knees.",
        "Follow [[the pacing lights]].",
        "[[A quick look down]] tells you.",
        "[[Your shadow]] should have two straight lines.",
        "When your toes [[pop into view]], stop.",
        "Keep the target [[in your sights]].",
        "The [[minute hand]] tells you.",
        "Follow [[the numbers on]] the dial.",
        "The size is [[printed on the]] insole.",
        "If [[the scar looks redder]], ring us.",
        "[[Give the rope the once-over]].",
        "Change legs [[when I wave]].",
        "Go [[when the second hand hits]] twelve.",
        "[[The needle]] should be past three.",
        "[[Look at both feet]] and compare.",
        "Your hands should [[be just visible]].",
        "[[Spot-check the dial]]: forty.",
        "[[Check your wrist-watch]] at the turn.",
        "Go [[when I hold up a card]].",
        "[[See the muscle twitch]].",
        "[[Prop a mirror]] against the wall.",
        "[[Watch the book]] on your tummy rise.",
        "Follow [[the waymarks]] to the stile.",
        "Your [[pedometer should read]] two thousand.",
        "[[Read the mile markers]] as you pass.",
        "[[Watch yourself in the oven door]].",
        "[[Have a squiz at your]] toes.",
        "The [[shadow of your knee]] covers the line.",
        "Stop if the [[scar turns pale]].",
        "Stop the sled when the [[bulb goes from amber]] to green.",
        "[[Compare the colour]] of your two hands.",
        "[[Check the skin]] under the strap for marks.",
        "Never lose [[sight of]] your back foot.",
        "[[Watch your kneecap]]: it goes over the second toe.",
        "[[Check for missed patches]].",
        "You'd [[spot whether you're]] lopsided.",
        "Pick up the labels and [[read each one]] out.",
        "Don't [[peek at your watch]] until the sixth.",
        "Breathe [[in time with the bubble]].",
        "Contact us if it [[turns blue]].",
        "When the [[countdown hits]] zero, paddle light.",
        "If the [[flag at the lock is red]], there's no rowing.",
        "There's [[a scale on the upright]] that tells you how high it is.",
        "[[You shouldn't see]] a crease at the back of the neck.",
    ),
    leave=(
        "If you've time, have a look.",
        "If you look back over the month, you've done well.",
        "Have a look at the rules before you enter.",
        "One day you'll look down and laugh.",
        "The clock says half past, so we've time for one more.",
        "Lou read out the figures.",
        "See an eye specialist, or be seen by eye clinic staff.",
        "Watch your feet near the ditch.",
        "If you can't see the posts, count sixty steps.",
        "Check your feet with your hands.",
        "You will look in the mirror one day and laugh.",
        "Put the weights on the couch; the timer stays in the hall.",
        "The second half of the list mirrors the first.",
        "See if the thigh wants to let go.",
        "It can take three months before you see a change.",
        "You should not see any increase in pain.",
        "If you spot a breach, tell the duty manager.",
        "Notice the difference between the two legs.",
        "She stood by the clock and said nothing.",
        "The number on the dumbbell is raised.",
        "You'll see a difference within a month.",
        "Follow the plan for six weeks.",
        "In view of your blood pressure, no breath holding.",
        "In my view you are ready.",
        "The end is in sight.",
        "No need to watch the clock; count your breaths.",
        "Your numbers show a steady climb.",
        "Lose sight of the goal and you'll drift.",
        "Watch this space for dates.",
        "Against the clock, or rather against the drum: twenty beats.",
        "See the light at the end of the tunnel.",
        "The figures show that you're walking further.",
        "Follow the instructions you know by heart.",
        "You'll see how easy it gets.",
        "You can see how that would tire you.",
        "You can see the doctor on Mondays.",
        "Have a look at the weather before you set out.",
        "We'll have a look at your shoes.",
        "I'm not one to watch the clock.",
        "My watch says nothing, it buzzes.",
        "Watch out for the step by the door.",
        "Watch for numbness in the fingers.",
        "See how you get on with ten.",
        "See your GP if the pain lasts.",
        "Look after your knees this winter.",
        "When the timer beeps, change legs.",
        "Check your grip with your thumb.",
        "Check that the pin clicks.",
        "With a view to running, we build the calf.",
        "Check the belt's snug with two fingers.",
        "Out of sight, out of mind: put the biscuits away.",
        "Feel that your knee is over your toes.",
        "Round the clock care is not needed.",
        "The next hold comes by the clock, with 12 o'clock above your head.",
        "Your ankles may look puffy by evening.",
        "Tick the box when the set is done.",
        "Scan your body from the feet up.",
        "Don't look at the scale till Friday.",
        "Eye of the needle stretch next.",
        "Read the sheet with your reader, then start.",
        "Watch your fingers when the stack comes down.",
        "Trace the rim with one finger.",
        "Feel the muscle tighten under your palm.",
        "Run the strap through your fingers to check for nicks.",
        "We meet by the hall mirror.",
        "That's your mirror.",
        "The moment the whistle's in sight, they slow down.",
        "Discover how much of standing up was done by looking.",
        "Some will look at the clock and think there's time for curls.",
        "If you can't see the kerb, tap it with your shoe.",
        "These days people stare at the little numbers and forget to breathe.",
        "See that your towel isn't on somebody else's peg.",
        "Do ten at the traffic lights.",
        "Look out for the step.",
        "Pick a leaf, and take it back.",
    ),
)
