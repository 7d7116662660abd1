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
    "card": "card|cards|sheet|sheets|list|sign|signs|instructions|notice|leaflet|chart|page|menu|plan|small-print|prompt|prompts|cue-card|laminate",
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
    # slang and homely words for one look
    "peep": "look|glance|peek|peep|squint|squiz|shufti|shufty|dekko|gander|butcher's|recce|once-over|eyeful|look-see|look-over|nosy|scan|eye",
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
        [ the|your|a _? mirror|mirrors ] shows|show|will|helps|help|tells|tell|confirms|lies|says|never|should
        in front of [ a|the window ]
        <!place|spot|seat|peg|mat [ in|into|with|use|using|at|on|check|consult|of|watch|trust|ask|facing|via|before {the}|every|some|one|full-length|bathroom|wardrobe|hall _? mirror|mirrors|reflection ] !wall|image|work|neuron|neurons|box
        [ use|using|check|checking|find|watch|spot|see|look|glance|consult|by|with|to|against|on|from|match {the} own? reflection|shadow|silhouette ] !of|ban
        [ {the} mirror|reflection|shadow ] shows|show|tells|tell|will|says|say|helps|confirms|lies|knows|looks|gives
        [ mirror check|checks|time ]
        [ look|looking|check|glance|peek|see in|into the|a|your _? window|glass|pane ]
        @be [ reflected ] in
    """,
    readout="""
        [ {look_at} {the}? _? _? {readout} ] !of|out|where|when|how
        {look_at} [ {the} _? _? {readout} ] <display|monitor|timer|gauge|dial|scoreboard|stopwatch
        [ {look_at} {the} _? _? {card} ]
        [ @look|check|note|see where|when|what|how {the} _? hand|needle|second-hand|pointer|dial|clock|timer|bar|counter|readout|display|scale|scales ]
        {the}? @colour? [ label|labels|display|dial|gauge|tag|sticker|clock|timer|countdown|screen|stamp|scale|scales|sign|counter|needle|readout|scoreboard|watch|stopwatch|digits|numbers|digit|figures|monitor|numeral|numerals|card|sheet|strip|light|lights|lamp|bulb|indicator says|say|reads|read|shows|show|hits|reaches|tells|flashes|changes|displays|glows|blinks|lights ] !off|out|aloud|loud|down|up
        [ label|labels|display|dial|gauge|tag|sticker|clock|timer|screen|stamp|scale|scales|counter|needle|readout|digits|numbers|digit|strip|light|indicator|lamp has|is|was|have|had not? turned|changed|green|red|amber|at|on|past|lit|gone ]
        [ whose|with label|tag|sticker|stamp|lettering _? _? ] <says|reads
        [ read|reads|reading|check|note what? off? the|your|its|a number|numbers|label|labels|dial|display|print|stamp|marking|markings|figure|figures|weight|weights|scale|screen|gauge|tag|digits|small|split|pace|percentage|timer|time|setting|poster|board ]
        [ read off the|your|its ]
        [ where|when|until|once|till the _? hand|needle|second-hand|pointer _? ] <is|reaches|hits|passes|points|gets|touches|sweeps|comes|goes|crosses
        [ marked|stamped|labelled|labeled|printed|written|engraved|etched|numbered @number ]
        [ marked|stamped|labelled|labeled|printed|written|engraved|etched on|with the|a|its ]
        [ by|against the|your|a wall|kitchen|big|gym? clock|stopwatch|second-hand ] !in
        [ use|using your|the|a watch|clock|stopwatch|timer|second-hand|phone 's? _? _? ] <watch|clock|stopwatch|hand|display|screen
        [ second|minute hand ] of|to|on|sweep|sweeps|pass|passes|go|goes|reach|reaches|hit|hits|is|tick|ticks
        your watch 's [ second hand ]
        set|time|pace|go|work|run|move|match|step|pulse|breathe|count _*5 [ against|by|off|to|from the|your|a _? _? clock|timer|stopwatch|second-hand|display|monitor|console|counter|watch ]
    """,
    eye="""
        [ @handle|@look|check|judge|measure|compare|estimate|gauge|match|assess|inspect|confirm|verify|tell|find|spot|line _*6 by eye|sight ]
        [ by eye|sight ]
        [ eyeball|eyeballing|eyeballs|eyeballed ]
        [ visually _? ] !impaired
        [ visual check|inspection|checks|scan|cue|cues|once-over ]
        [ use|using|with|trust your own|two eyes ] !closed|shut
        [ use|trust your eyes ] to|and
        <!done|is|was|were|got|live|learn|learned|learnt [ by looking ] !after|forward|like|for
        tell|tells|see|know|check|judge|show|shows _*6 [ at a glance ]
        [ look both|each way|ways ]
        [ by staring|looking|peering|glancing at ]
        [ naked eye ]
        [ let your eyes|eye judge|tell|decide|check|guide|confirm ]
        [ sight yourself|along|down ]
        [ your|the eye-line|eyeline|sightline|sight-line ]
        [ your|the eye line|level ] hits|meets|reaches|crosses
        [ line of sight ]
        [ eyes tell|confirm|judge ]
    """,
    view="""
        @body|@kit|@room|them|it|both|each|him|her|clock|timer|floor|wall [ out|in of? sight|view ] !,|out
        until|till|when|so _*3 [ out|in of? sight|view ] !,|out
        [ in|into|within|enter|enters|leaves|leave|edge|corner|edges|from of? your|the|clear|full|plain|my field|line|range|peripheral|corner|edge? of? vision|sight|view|gaze ]
        [ comes|come|appears|appear|goes|go|disappears|disappear|vanishes|vanish|slips|slip|drops|drop|passes|pops|moves in|into|from|out|within of? view|sight ]
        @body [ is|are in|within view|sight ]
        @body|@kit|them|both|it [ is|are|'s out of view|sight ] !,|;|and|out
        [ block|blocks|blocking|hide|hides|hiding|obscure|obscures|eclipse|eclipses|obstruct|obstructs your|the view|sight|laces|shoelaces|toes|foot|feet|shoe|shoes|toe|knee|ankle|floor|bench|bar of? ]
        [ cover|covers|covering|hide|hides|hiding|mask|masks your|the laces|shoelaces|toes|toecap|toecaps ]
        [ peripheral vision ]
        [ not be able to see ]
        [ tail|corner of your eye ]
        you|and|to|i|should|not|cannot|still|if|unless|until|when|once [ not|never|cannot|just|barely|still|only|no longer|can see ] your|both|the _? @body|@kit|@surface|@room
        [ you can|could|should|will|might|must just|barely|only|still|no|be|able|not|longer|to|hardly|all|clearly*4 see ] your|the|both|where|if|whether|any|more|no|its|one|a|daylight|how|them|it|under|over|past
        [ see|seeing|seen your|both|all own? toes|toe|feet|foot|knees|knee|laces|shoelaces|hands|hand|fingers|thumbs|thumb|heels|heel|elbows|elbow|belly|navel|shoes|shoe|wrists|knuckles|kneecaps|ankle|ankles|hips|shoulders|bar ]
        [ until|till|when|once|if|unless|where|as|so|before that? you can|could|do|no|cannot|just|first|longer|not|only|barely*3 see|spot|notice|glimpse|catch ] your|both|any|daylight|the|a !doctor|gp|nurse|physio|stars|way|point|specialist|difference|benefit|results
        [ see|spot daylight ]
        , [ have|take a look ] $
        [ if|when you look down|back|across|along|sideways ] !on|after|over|at
        @number|more seconds|minutes|second|minute|secs _? [ on the clock ]
        [ the _? timer|clock|stopwatch|countdown on|above|over|by the wall|door|bench|desk|screen ] tells|says|shows|gives
        programme|workout|session|circuit|sets|weights is|are|'s [ up? on the whiteboard|board|blackboard ] !'s
        it|plate|end [ says|tells the|your weight|size|number|load ] on
        ^ [ look on the side|end|back|bottom|top of ]
        [ read what it|each|yours says ] !to
        [ read what the|your @kit|label|card|tag says ]
        [ watch that|those front|back|left|right|top|bottom|standing|working knee|knees|elbow|hip|heel|foot|shoulder|arm|leg ] !of|on
        @body [ should|must look like ]
        it|rate|pace|split|number is|'s [ on your|the watch|screen|display|monitor|console ] !,
        [ daylight|light shows|appears|peeps|creeps|gleams ] between|under|beneath|through your|the|both|each
        [ can|could you see ] your|both _? @body
        [ in the shop|shop-front|dark|patio|car|bus window|windows|glass ] ,|your|you
        one|other|partner|partners|buddy [ watches|squints|peers for|along|down|from|under ] !me|telly
        [ the _? stamp|stencil|imprint|sticker|lettering|marking on each|the|every|its _ ] tells|says|shows|gives
        [ compare the|your|both two|both? hands|feet|legs|calves|ankles|arms|knees|sides ] each|every|daily|nightly|weekly|by
        [ no longer visible ]
        [ the sand has run|gone|finished ]
        until|till|when|once|while [ the sand ] runs|is|has
        @be|stay|stays|become|becomes|remain|remains [ visible|invisible ]
        until|when|once|till|and|so|should [ _? _? visible ]
        swims|swim|floats|drifts back? [ into sight|view ]
        [ disappear|disappears|vanish|vanishes behind|under|below|beneath|from ] &your|the|view|sight
        [ peek|peeks|peeking|poke|pokes|appear|appears out? past|over|beyond|above|from ] your|the|behind !covers
        [ see|seeing ] light|daylight|space between|under
        looks|look [ _ to you ] 
    """,
    aimed="""
        [ check|checking|consult|consulting|read|reading|watch|watching|monitor|scan|spot-check|spot-checking|double-check|recheck|eyeball|study|note|log|record|jot|heed|mind|observe {the} _? _? {instrument} ] !by|with &_|.|,
        ^ [ spot-check|double-check|eyeball {the} ]
        [ check|read|note|log|record|jot|copy|write down? {the}? _? reading|readings|figure|figures|number|numbers|time|times|value|score|distance|pace off|from|on {the} ]
        [ keep|keeping|have tabs|track|watch|guard|check on|of|over {the}? _? {instrument} ]
        [ go|going|goes|steer|judge|judging|pace|navigate|work by {the} _? _? hand|needle|clock|numbers|figures|display|dial|markings|lines|lights|signs|markers ] !o'clock|around
        {the} _? [ pedometer|odometer|counter|display|readout|dial|gauge|thermometer|speedometer|watch|clock|timer|scales|scale|monitor|oximeter|tracker|stopwatch|computer|meter should|must|will|ought to? read|say|show|reach|be ]
        [ pedometer|odometer|display|readout|dial|gauge|thermometer|speedometer|clock|timer|scales|monitor|oximeter|tracker|stopwatch should|must|will|ought to? read|say|show|reach|be ]
        [ {the} scoreboard|pace|wall|gym|pool|poolside|big|digital|kitchen|station|church clock|timer ] :|,|until|till|says|reads|hits|and|to
        [ read|reading|follow|spot|watch for? {the} _? _? {written} ]
        ^ [ read {the} _? {written} ]
        [ match|matching|compare|line|set {the} _? figure|figures|number|numbers|digit|digits|letter|letters|colour|color|mark|marks|arrow|arrows ] !of
        [ compare|comparing|check|judge {the} _? colour|color|colours|colors|shade|look|appearance|size|outline|shape ]
        [ have|having|take|taking|get|grab|give|sneak|steal|cop|chuck _*3 {peep} at|over|down|round|around|behind|in|into|along ] your|the|both|yourself|it|them|how|what|each|that
        [ peer|squint|spy|peek|peep|squiz down|up|over|across|on|upon|at|into|through|along ] your|the|a|both|yourself
        [ clap|lay|set|feast your? eyes on|upon ]
        [ spy on ]
        [ watch|see|check|view|study|admire|observe|catch|look|inspect|eye yourself at? in|on|against {the} _? {glass} ]
        [ watch|see|check|view|study|observe|catch|inspect {the} _? @body in|against {the} _? {glass} ]
        [ yourself|form|posture|alignment|shape in {the} _? {glass} ]
        [ watch|see|check|study|observe|catch|use {the}? own? reflection ]
        reflection [ should|will|must|shows|tells ]
        [ {the}? reflection should|will|must|shows|tells|gives|stays|has ]
        [ {the}? shadow of your|the|each|both @body|bar|arms|pole|bell ]
        [ your|its _? shadow ] covers|falls|reaches|touches|stretches|points|on|lands
        [ shadow|shadows match|matches|meet|meets|line|lines|overlap|overlaps|merge|merges|shows|show|tells|tell ]
        [ {the} numbers|figures|digits|letters|sizes|markings|marks|notches|arrows on {the} _? _? _? should|must|need|have match|agree|tally|be|to|line|read ]
        [ {the} numbers|figures|digits|letters|sizes|markings|arrows should|must|need|have to? match|agree|tally|line|read ]
        [ {skin} should|must|ought|shouldn't not? look|appear ]
        [ {skin} looks|look|appears|appear|seems|seem|turns|turn|goes|go|went|gone|stays|stay|remains|becomes|become a|an|too|very|bit|more|at|all|any|slightly|quite|so*3 {tint} ] &.|,|and|or|after|afterwards|when|if|by|at|for|then|:|—|;|call|stop|ring|see|tell|rest|let|do|we|you|it|that
        [ goes|go|turns|turn|changes|change|flashes|glows|blinks|flicks|flips|switches from|to|into @colour to? ] <bulb|light|lamp|led|display|signal|screen|button|strip|indicator|sensor|ring|lights|bar
        [ bulb|light|lamp|led|display|signal|screen|button|strip|indicator|sensor|lights turns|turn|changes|change|flashes|flash|glows|glow|blinks|blink|flicks|switches|lights|dims from|to|into|up|on|out|off? ]
        [ bulb|light|lamp|led|display|signal|screen|button|strip|indicator|sensor|lights goes|go|is|shows from|to|on|out|off? @colour|off|out|on|dark|bright ]
        [ check|inspect|examine|look|search|scan|watch over|at? {the} _? _? {skin} of|for|after|before|when|daily|each|every|tonight|once|between ]
        [ check|inspect|examine|look|scan|search over|at? the skin of|on|over|under|round|around|between ]
        [ check|look|glance|peek|peep|peer back? over|behind|under|around|across your|the|a shoulder|shoulder's|you|elbow ] that|to|for|before|first|it|is|way
        [ glance|look|peek|check behind you ]
        [ you|u|ya should|must|can|could|will|ought to? just|only|barely? be? able? to? see ] over|past|through|your|the|both|all|a|under|beyond|daylight|light|round|around|two|three|one|only|no|nothing|into|out|down
        [ you|u|ya ought|able|want to see ] over|past|through|your|both|all|under|beyond|daylight|two|three
        [ you|u lose|loses|losing|lost sight|view of ] your|the|both|each !goal|point|plan|why|fun|reason|big|bigger|aim|target
        [ until|till|when|before|if|once you lose|lost sight of ]
        [ use|using|find|consult|trust|read|go|see {the} _? _? sticker|label|tag|placard|plaque|chart|list|table that|which|listing|with|on|by|beside|under ] &_
        [ what|whatever|which _? the label|tag|sticker|stamp|dial|display|screen|gauge|clock|sign|scale|print says|reads|shows ]
        [ when|until|once|till|if|as {the} _? _? light|lights|lamp|led|bulb|beacon|flag|torch|strobe _? goes|go|turns|turn|changes|change|comes|come|flashes|flash|blinks|drops|falls|rises|waves|dips|dims|fades|is ]
        [ visual|visually _? check|checks|checking|inspect|inspection|line|lines|target|targets|marker|confirm|compare|spot|landmark|reference|feedback ]
        [ eyeball|eye-ball|eyeballing ]
        [ watch|look|check {the} _? board|whiteboard|scoreboard|list ] for|at|to
        until|till|once|if|when _*5 [ looks|look right|dry|clean|done|ready|wet|shiny|glossy|parallel|vertical|horizontal|centred|centered|symmetrical ]
        [ read|reads yours|yours|theirs|them|it off ]
        [ compare them|it|both|these in|under|by daylight|light|lamplight|sunlight ]
        [ number|figure|weight|letter|size|numeral stamped|printed|engraved|painted|written|moulded|molded|cast|embroidered ] !raised
        [ goes|go|turns|turn green|red|amber|blue|white|yellow ] <light|timer|lamp|button|bulb|panel
        light|lamp|bulb|led on _*3 [ goes|turns|flashes|changes ]
        [ laser|torch|light|flashlight 's? dot|beam|spot ] !or
        [ keep|hold|aim|shine|point|get|put the|a|your beam|laser|torch|dot|flashlight ] on|at|still|steady|over|straight
        trace|follow|walk|track [ the _? grout|grain|join|crease|shadow|markings|waymarks|waymarkers|signposts|signs|trail-markers|blazes ] !that
        [ follow the _? waymarks|waymarkers|signposts|signs|blazes|arrows|markers ]
        ^ [ pick|choose|find|select a|one tile|crack|knot|stain|mark|dot|floorboard ] and|to|on|in|.|,
        ^ [ pick|choose|find|select a|one leaf|square|brick|star|cloud|spot ] and|to stay|keep|fix|look|stare|watch|focus
        [ look|looking|peer|peek|glance inside|through|at|under|over the|your shoe|shoes|wear|soles|sole|tread|peephole|gap|barrel|laces ]
        [ look|looking|glance|glancing|peek|peer at|on your|the phone|screen|tablet ]
        [ when|if|as|once|until i|we|she|he hold|holds|raise|put|show up? a|the|my|two|three|one|some _? card|cards|flag|hand|finger|fingers|thumb|paddle|sign|board ] <card|cards|flag|hand|finger|fingers|thumb|paddle|sign|board
        i|we|she|he 'll|will|'m|am? [ hold|holding|raise|show up? _? fingers|cards|card|flags|thumbs|numbers|signs ] 
        [ mirror ] against|on|by|beside|next|so|near|under|opposite <prop|set|angle|place|put|position|lean|hang|turn
        [ prop|set|angle|place|put|position|lean|hang|tilt|tip|hold|move|bring|fix|use a|the|your|up _? _? mirror ] !image|wall|side|work
        [ as a mirror ]
        [ in|within view of ] &a|the|your|me|yourself
        [ turn|stop|go where|when|as the _? sign|arrow|marker|post|signpost points|says|shows|tells ]
        [ check|see|make|be|sure that|if|whether? the bruise|swelling|rash|redness|mark|lump|patch _? not? has|have|had|is|spread|grown|gone|changed|faded|went ] &_
        [ check|watch that|if|whether|for? the|your|any? bruise|swelling|rash|redness|lump|patch has|have|had|is|does|spreading|spread ]
        [ look for|at the|a vein|crease|bulge|dimple|dent|hollow|ridge|wrinkle|shine|sweat|colour|color|line|muscle ] !with|by
        [ see|watch|look|notice at? the|your|a muscle|muscles|biceps|bicep|quads|calf|calves|abs|triceps|vein|veins|skin|kneecap _? twitch|bulge|ripple|pop|tighten|jump|flicker|quiver|shake|contract|move|fold|wrinkle|whiten|redden|bunch|rise|lift|slide ]
        [ watch|watching|see the|your|a|that _? on|over|by? your? _? book|feather|tissue|candle|flame|tummy|belly|chest|paper|balloon|ball|cup|stick|shadow|bar rise|rises|fall|move|moves|rock|flicker|lift|lifts|drop|float|tip|wobble|go ]
        [ flame|candle from flickering ]
        if|when|until|once|unless|before|till it|they [ turns|turn|goes|go|looks|look|stays|gets a|very|too|bit|at|all|quite*3 @colour ] !with
        and|until|till|once|when it|they [ looks|look very|too|quite|more? {tint} ]
        if|when|until|unless|while|once|that|till the|a _? [ flag|light|lights|lamp|bulb|sign|led|indicator|symbol|buoy _*3 @be @colour ]
        [ check|read|watch the rate|split|watts|revs|rpm|cadence|wattage ]
        there 's|is [ a _? clock|timer on|over|above|by|at|in ] the
        [ {the} scale|ruler|chart|gauge on|along|down|up the|its|each _ ] that|which|to tells|shows|gives|says|read
        [ you|ya|u should|must not|never see ] is|are|a|any|much|more|no|your|the|light|daylight
        [ should|must not see ] a|any|your|much|daylight|light
        [ see|seeing your breath on|in|mist|fog|against ]
        [ sight down|along|over ]
        [ look|looking down|along the barrel|length|line|edge|shaft ] of
        [ profile|elevation|drawing|picture|table of the _ is on|below|overleaf ]
        [ your|yer|the een|eyes on the|a _? clock|board|screen|timer ]
        till|until|when|where|if|once|and you|ye|u|we [ see|spot|sight|notice|clock ] the|a|your|both|any|no _ !difference|benefit|doctor|point|nurse|physio|need|results|results|change
        [ the|those|two flags|lights|markers|tiles|lines|marks tell|tells|show|shows|warn you ]
        on|to|at|off [ the|a|one? sixty|top|bottom|thirty|red|black|big of? the? top|hand|clock ] ,|.|of|come|and
        [ when|as|until|once|till the big|long|red|little|short|black|second hand 's|is|gets|hits|reaches|goes|comes|passes ]
        [ at|on|off the top|bottom of the clock ]
        [ check|read|see|consult {the} _? board|whiteboard|noticeboard|blackboard|rota|timetable|scoreboard|schedule ] for|to|before|.|,
        [ chalked|scribbled|scrawled|written|posted {the} _? _? set|sets|times|numbers|reps|session|intervals|programme|weights up? on ]
        [ put|putting {the} _? _? set|sets|times|numbers|reps|session|intervals|programme|weights up on ]
        [ set|sets|times|time|numbers|reps|session|intervals|weights|weight|distances|names|results|settings is|are|'s up? on the|your _? sheet|board|whiteboard|tag|bottom|side|wall|label|screen|handle|back|end|list|card ]
        [ have|take|get a wee? keek|dekko|gander|neb|nosey|deek ]
        ^ [ look at|for your|the _? @body|bubbles|ripples|splash enter|leave|touch|come|pass|rise|fall|go|at|under|in ]
        [ see|watch|spot|notice|look for? the|your bubbles|splash|ripples|ripple|wake|spray ]
        [ look at the tiles|tile|lines|line|grain|boards|pattern|grout ]
        [ patient|pt|client|user|reader|you to? observe|observes|checks|inspects|inspect|views|view|examines|notes|monitors {the}? _? @body|scar|wound|alignment|gait|position _? ] in|daily|for|by|visually
        [ @body|alignment|posture|gait position|alignment? in|via|using a? mirror|reflection ]
        [ ensure|confirm|verify|check _? @body visible|visibly ]
        [ visible|visibly above|over|beyond|past|below|level|beside|between|behind|in ]
        [ inspect|examine|check|observe|monitor _? skin|scar|wound|stump|foot|feet|nails|incision|limb|site daily|with|for|nightly|twice|weekly|bd|each|every ]
        [ compare with|to unaffected|other|opposite|good|sound|left|right side|leg|limb|arm|hand|foot for|visually ] &swelling|visually|colour|color|redness|symmetry
        [ hand|shaving|pocket|make-up|compact mirror ]
        [ hit|hits|into|in|find|follow|following|under|step|dance the spotlight|limelight|footlights|searchlight ] !now
        [ when|once|as|until|till|if the _? stage|house|room|screen|lights|hall lights? goes|go|come|comes|turns|fades|dims|is dark|black|up|down|off|out|bright|red|blue|green ]
        [ spot|notice|see whether|if|when|how you|you're|your|one|it|they @be|'re? lopsided|crooked|level|straight|even|wonky|tilted|leaning|listing|square|higher|lower|parallel|twisted|off|slouching|slumping|hunched ]
        [ if|whether|when|how they|it|your|the|one|either|both _? @body? looks|look _? {tint} ]
        ^ [ check|look for missed|bald|bare|stray|untrimmed spots|patches|bits|hairs ]
        [ in time with|to the|that|my bubble|light|lights|dot|circle|bulb|lamp ]
        [ glue|glued|pin|nail|fix|keep|peel|lock|clamp your|both eyes|eye to|on|for {the} _? {readout} ]
        [ read each|both|every one|label|word|line|tag|number|sign out|aloud|loud|and|in|on|;|.|, ]
        you [ 'll|will|should|may|might|can|could notice|spot|find your|the|one|that _? @body 's|is|has|are _? lower|higher|turned|twisted|tilted|crooked|dropped|out|up|forward|drifted|shorter|longer ]
        [ look|looking look? at your|yer|that|those _? knee|knees|foot|feet|elbow|elbows|shoulder|shoulders|hips|hand|hands|toes|ankle|ankles|wrist|wrists ] now|of|then|,|.|?|again|there|and|too
        [ says|say|said|reads @number|light|medium|heavy|small|large|easy|hard|strong on ] the|it|its|each
        [ the one|ones|plate|bell|dumbbell|band|box|bag|bottle|tin|pin|hole|side|end that|which says|say|reads|read ]
        [ plate|bell|one|ones|band|box|disc|dumbbell|peg|locker|tin with|bearing a|the|an? @number on ]
        it|weight|size|name|number|price|date is|'s [ on the tag|label|side|bottom|sticker|lid|back|collar|rim|plate ]
        [ keep|get|hold|bring|push|beat|hit|chase that|the|your number|figure|reading|percentage|wattage|watts|bpm above|below|to|at|over|under|around|between|up|down|on? ] @number|the|on
        [ watch|follow|check|read|use|time|glance|look at|by|against? {the} second|minute|big|long|sweep|hour|sweeping hand ]
        ^ [ film|record|video|photograph|tape a|your|the|each|one _? set|rep|reps|lift|squat|side|attempt|jump|swing|back ]
        watch|look|looking|watching out? for [ the|my|a|his|her _? 's? hand|arm|flag|nod|wave|signal|gesture|thumb ]
        never|not lose|losing [ sight of ] your|the|both @body|@kit|_
        @body is|are|looks|turns|goes [ pale|bluish|dusky|blotchy|mottled|ashen|jaundiced|discoloured|discolored ] !or
        ^ [ look|looking down|back? at|to your|both|the _? feet|foot|toes|knees|knee|hands|shoes|laces ] between|after|before|during|each|every|.|if|:|and|as|when
        [ check|checking|see that|if|whether {the} _? _? looks|appears|seem|seems ]
        ^ [ see how far|high|low|wide|much|deep|close|straight|square|level|flat your|the|each|both|one|it ] &_
        [ see|check|notice|observe whether|if {the} _? @body is|are|stays|stay|looks|sits|points|lines ] level|square|straight|even|over|parallel|flat|in|higher|lower|past|beyond|behind|forward|turning|turned
        [ inspect|check|look|looking|examine|search|searching|hunt over|at|through|along? {the} _? @kit|@surface for|over cracks|nicks|tears|fraying|frays|splits|rips|holes|wear|damage|rust|worn|scuffs|weak|loose|broken|cuts|cracking|signs ]
        [ inspect|check|examine {the} _? @kit ] for cracks|nicks|tears|fraying|frays|splits|rips|holes|wear|damage|rust|worn|weak|cuts|cracking|signs
        to|on|as|against|by|with [ the number|numbers|figure|setting|letter on|in|from your|the _? card|sheet|list|plan|chart|log|board|notes|sticker|plate|side ]
        [ light|lamp|bulb|led|lights|beacon ] to|has [ come|go|goes|turn|change|gone|flash on|off|out|green|red|amber|by? ]
        [ wait|waiting|watch|watching|stop|go for|until|till|when|at {the} _? light|lights|lamp|bulb|led|beacon|flag|hand-signal|coach's|my to? ] to|goes|turns|changes|drops|hand|arm|flag|nod|signal
        [ follow|following|read|see|heed|obey the|all|any|your? instructions|steps|directions|notice|rules|words|list on the _? card|wall|sheet|board|poster|sign|machine|door|label ]
        [ keep|hold|get|stop|leave the _? needle|bubble|pointer|dial|cursor|arrow ] in|on|at|between|inside|below|above|under|within|over
        [ check|read|use|consult|watch|mark the|a|your tape-measure|tape|ruler|scale|thermometer|yardstick ] measure|.|,|;|for|before|and|on
        [ watch|eye|check|note|mind the level|height|surface|top of the water|bar|liquid|fluid|ball|tea ]
        [ scan|survey|search|sweep|inspect|check the floor|room|ground|area|path|space|track|surface|deck|field|pitch for|ahead|around ] !by|with|your
        [ look|glance|peer|scan|check around|round|about the|your room|hall|space|area|floor|studio|gym|pool ] to|for|and|before
        [ at|on your form|posture|alignment|technique|stance|profile|outline|silhouette side|from|in ] <at|on &on|the|a|front|behind
        [ look|looking at yourself ]
        [ have|take|keep|get|give|having|taking a|an|one good|quick|long|close|proper|careful? look|eye at|on your|the|both|yourself _? ] !doctor|diary|week|plan|food|sleep|day
        [ tell|know|judge|see|check by|from looking|the|a look|looks? at|of ] &your|the|it|them
        ^ [ look whether|if ]
        [ spot|find|pick|choose|see the|a crack|join|line|tile|knot|mark|stain|scratch|seam|grout in|on|between the ] &_
        [ may|might|could|will|should|must appear|look higher|lower|longer|shorter|bigger|smaller|larger|crooked|level|straight|even|flat|square|symmetrical|uneven ]
        [ make|making sure|certain that? you see ]
        [ match|set|turn|put the|your _? dial|knob|pointer|needle|marker|cursor|slider|arrow to|on|at|with the number|figure|mark|line|letter|dot|arrow|setting ]
        [ egg|sand timer|glass runs|is|empties|has|finishes|drains|falls ]
        [ the|a _? ruler|tape|scale|gauge|chart|measure|meter|level|protractor on|by|beside|at? the? _? tells|shows|gives|says|reads ]
        [ read|get|note {the} _? reach|height|depth|distance|angle|score|time|speed|pace off|from|on the|your ]
        [ read {the} weight off|from|on ]
        [ by|against|with|using the second|minute|sweep|big|long|red hand ] &.|,|;|for|and|on|of|to
        [ urine|wee|pee|water is|looks|should|goes|turns be|look? dark|darker|pale|clear|brown|yellow|pink|red|straw-coloured|straw ]
        [ {skin} _? is|are pale|white|blue|purple|pink|yellow|bluish|dusky|mottled|blotchy|grey|gray|black|bluer|paler ] !and|or &.|,|;|stop|call|:|when|after|then
        [ by|with|using the? naked? eye|sight|eyesight ] !level
        [ line|lining|lined|sight|aim it|them|your|the up? _? _? by|with eye ]
        [ in|into|within|inside|from|out your|the|of eyeline|eye-line|sightline|sight-line|eyeshot|view ]
        [ make|making out the|your|a|each ] _? _? !of &_
        [ picks|pick|picked|spot|spotted out the _? number|numbers|line|lines|letters|label ]
        [ keep|keeping|have|hold|with {the} _? _? within|in plain|full|clear? view|sight|eyeshot ]
        [ not|never let|lose {the} _? _? leave|out|of your|of? sight|view ]
        [ watch|watching|see|look if|whether|how|that|as|out {the} _? @body lifts|lift|drops|drop|dips|hitches|hikes|wobbles|drifts|caves|rotates|turns|tilts|stays|moves|tracks|rises|sags|sinks|creeps ]
        [ wave|waves|nod|nods|thumbs-up|signal|gesture ] from|at|by <wait|until|for|when
        on|at|with|wait|for|until [ my|the|his|her|our coach 's? nod|wave|hand-signal|thumbs-up|gesture|flag ]
    """,
    looks="""
        shoulder|hip|knee|side|foot|hand|elbow|heel|ear|eye|eyebrow|arm|leg|one [ look|looks higher|lower|level|longer|shorter|bigger|smaller|out|off|crooked ]
        [ look|looking|check|search for the|a|any bulge|dip|hollow|lump|gap|tilt|lean|wobble|change ]
        [ change in|of colour|color ]
        [ look|glance|peek at which|where|how|the gap|your _ ] !feel
        [ only|just? your|the toes|fingers|thumbs|heels|knees|laces show|showing|visible|peek|peeking ]
        read|check|find|look|copy|get _*4 [ on|off|from the list|rota|board|whiteboard|notice|sheet|card|timetable ]
        [ chalked|written|scribbled|posted up? on ] the|a
        [ written up ]
        [ the number|numbers|figure|figures|letter|letters on|of the end|side|plate|plates|dumbbell|bell|pin|disc|weight|bar|post|dial|machine|tape|label|handle|box ]
        the|two|both marks|dots|lines|arrows|notches [ line|lines|match|meet|cross up? ]
        's [ colour|color ] tells|shows|says|means
        until|till|to the [ mark ] faces|shows|points
        [ it flashes|blinks|glows|lights ]
        the [ lights|light dim|dims|flash|flashes|blink|blinks|come|comes ]
        [ in the glass ] <glass
        check|look _*4 [ in the glass|window|pane ]
        [ the needle ] should|must|is|points|past|on|sits
        by [ the numbers|figures|markings|marks ] on
        look|feel|hunt|search for [ the @number ] on <look
        match [ the? numbers|figures ]
        at the [ same number ]
        ^ [ see which|whether|if ] foot|one|knee|hip|arm|side|leg|shoulder|hand|your|both
        ^ [ look and see|check ]
        ? [ look ] .
        until|till|when [ your|the @body disappear|disappears|vanish|vanishes ] &.|,|from|behind|under
        [ look at the|your colour|color ]
        [ looks|look bigger|larger|fatter|thinner|smaller|longer ]
        [ when|until|once|if|as|after i nod|wave|point|signal|gesture|beckon ]
        [ when|until|once|if|as i|the|your raise|drop|lower|lift|swing my hand|arm|flag|arms|hands ]
        [ when|until|once|if my hand|arm|flag drops|falls|rises|goes|comes ]
        [ the|my flag drops|falls|goes|waves ]
        [ watch|check|inspect the|your _? _? for oozing|discharge|weeping|swelling|marks|spots|colour|color|rash ]
        [ give yourself a once-over ]
        [ have|take|catch a _? look|peek|glance in|into the|a|your oven|window|glass|door|bathroom|wardrobe|mirror|screen|pan|kettle ]
        [ with a|one|just _? glance|look|peek ]
        [ a|one quick|brief|sidelong|swift|downward look|glance|peek|squint down|sideways? ]
        [ cast|run|drop|lower|throw your eyes|eye|gaze down|over|along|across to|at? ] to|and|check|your|the
        [ lose|loses|losing|lost sight of ] !the? goal|why
        @body [ vanish|vanishes|disappear|disappears|peek|peeks|pop|pops|swim|swims ] !out of
        @body should|must|will|ought to? [ peek|disappear|vanish|show|appear|poke ]
        [ pop|pops|swing|swings|float|floats|creep|creeps|sneak|sneaks into|out view|sight ]
        [ ought|should|must|able to? be? able? to? spot|see|glimpse your|the|both ]
        [ in your|the sights ]
        [ sight|squint|peer|look down|along the|your _ ] !road|line
        ^ [ eye up ]
        [ the bubble ] in|between|sits|stays|is|should|must|centred|centered|floats
        [ the|a|your shadow ] <shadow &should|wobbles|has|will|shows|moves|lines|stays|is
        your [ shadow ] should|wobbles|has|will|shows|moves|stays|is|must
        [ your reflection ]
        [ shop|dark|car window ] will|shows|tells|as|to
        [ counter|clock|timer|odometer|meter rolls|ticks|counts ] !aloud|out|behind|by|loudly|on|you
        [ minute|second|hour hand ] tells|says|passes|reaches
        [ small print ]
        [ embossed|etched|stencilled in|on ] paint|ink|the|its
        [ the|a use-by|expiry|best-before date ]
        [ look|looks|looking dusky|puffy|redder|paler|darker|bluish|yellowish|bruised|inflamed|swollen|mottled ]
        [ check|watch|look _*4 for colour|color|redness|bruises|bruising ]
        [ spot|see the|any|a bruise|bruises|swelling|rash|mark|redness ]
        [ keep watch|guard on ] your|the
        ^ [ look over the|your _ for ]
        [ look both|each sides|side ]
        [ look left and right ]
        [ look right and left ]
        [ look out the|of window|door ]
        [ read _*3 on the sheet|chart|card ]
        face|facing [ the|a mirror|mirrors ] !wall
        ^ [ look down ] :|,
        ^ [ look at your _? @body ] :|,|and|to|—
        ^ [ look down at your _? @body ]
        [ keep|have an|your eye on the time|pressure|pace|heart|rate|clock|watts ]
        @be|one|band|ones [ marked|labelled|labeled|printed|stamped ] @number|light|medium|heavy|hard|easy|soft|strong|with
        [ look|looking|search|hunt for the|a|any number|mark|marks|line|label|sign|logo|arrow|marking|markings|gap|dot|sticker|tag|swelling|light ]
        ^ [ see if|whether your|the|one|both|either _ ] !get|can|feel
        ^ [ see that your|the|both|neither|each|one @body|bar|shoulders|laces|toes ] !get|can|feel
        ^ [ watch your|the|both _? @body|bar|weight|bell|needle ] as|rise|move|travel|all|go|drift|drop|doesn|do|does|through|come
        ^ [ watch your|the|each|that kneecap|knee|knees|kneecaps|hip|hips|elbow|elbows|heel|heels|wrist|wrists|shoulder|shoulders|ankle|ankles|thumb|chest|tummy|belly ] :|;|.|throughout|closely|carefully|it|they|all
        ^ [ watch where ] you|your
        ^ [ look where ] you
        ^ [ look around|behind|over|round you? ] before|to|first|for|and
        [ look out|look-out for the|a|any mark|marks|marker|markers|line|lines|cone|cones|sign|signs ]
        [ spot|sight your landing|target|line ]
        [ sight the|a target|line|pin|ball|flag|bar ]
        [ aim|line with|up your|by eye|eyes|eyeline ]
        [ look|looks the same|longer|shorter|even|level|straight|equal|alike ]
        [ compare|check how they|it|both look|looks ]
        ^ [ film|video|record|photograph yourself ]
        [ take a photo|picture|video|selfie of yourself ]
        [ have|take a _? look at your|the|both ]
        [ look at your|the shadow|reflection|alignment|posture|form|stance ]
        [ peek|peep|peer|glance through|under|between|past|round|around ]
        ^ [ scan the|your|each ] !code|qr
        ^ [ spot the ] gap|difference|bend|dip|wobble|lump
        [ see light|daylight through|under|between? ]
        [ no|any|some daylight between|under|through ]
        [ see the needle|light|lights|bulb|lamp|number|numbers|display|dial|flag|signal ]
        when|until|if|once [ the _? light|lights|lamp|led|bulb goes|go|turns|turn|flashes|flash|changes|comes|blinks|is ]
        [ the pacing|signal|warning|indicator light|lights ]
        watch|obey|follow [ the traffic light|lights ]
        [ {look_hard} {your} ]
        [ look|glance|peek|check|peep|squint down|back now|at? again|and|to|every|once|that|your ] 
        ^ [ look ] to see|check|make
        [ glance|peek|peep|peer|squint ] at|down|over|to|along
        ^ [ look|looking to see|check ]
        ^ [ look|check|inspect|examine|watch|scan|search out? for _? {sightly} ]
        [ no|any|for|of|without signs? of? redness|discolouration|discoloration|blanching|pallor|paleness|bruising ] <redness|discolouration|discoloration|pallor
        [ inspect|examine|scan|survey|scrutinise|scrutinize|surveying|inspecting ] @poss|the|both|each|it
        [ check|checking|note the|your|its|any color|colour|colours|colors ]
        [ check|checking|inspect that|if|whether? the|your _? skin|nails|toes|fingertips|scar|wound for|is|are ]
        @body [ go|goes|turn|turns|turning|gone|went|look|looks white|blue|purple|pale|grey|gray|dusky|red|mottled ] !or
        cheeks|face|lips|skin|nails|fingertips|toes [ should|ought|must to? be|stay|look not? _? pink|red|rosy|pale ]
        check|look|see|watch|inspect|make|sure|ensure that|the|your*3 skin|fingers|fingertips|toes|nails|lips|foot|hand|wound|scar|incision|cut|leg|calf _*4 [ is|are|goes|go|turn|turns|turning|looks|look|looking|gone|stays|went not|too|very|a|bit? red|pink|pale|white|blue|purple|blotchy|shiny|grey|gray|dusky|mottled|yellow|black|angry|inflamed|bruised|puffy|dark|darker ]
        [ looks|look wet|angry|inflamed|infected|puffy|swollen|bruised|discoloured|discolored|blotchy|sore ]
        @body [ looks ] level|even|straight|equal|symmetrical|flat|square|vertical|horizontal|parallel|crooked|bigger|smaller
        [ looks|look level|even|straight|equal|symmetrical|flat|square|vertical|horizontal|parallel|crooked|upright|lopsided to? you? ] <!it
        [ watch|watching where|how|whether your _ ] !feel|body
        [ watch|watching your|both|each _? knee|knees|hips|hip|elbow|elbows|feet|foot|shoulder|shoulders|hands|wrist|toes|form|ribs|belly|kneecaps|ankle|ankles|stomach ] 
        [ watch|watching the|it bar|weight|bell|knee|plates|stack|needle|handle _*3 ] move|travel|rise|climb|track|go|goes|drift|in|as
        [ match|compare|line your|the|it _*4 ] person|neighbour|neighbor|partner|others|opposite
        [ have|take|give a _? look|peek|glance|gander|squint ] <look|peek|glance|gander|squint &down|over|round|around|behind
        [ give your|both|it|them|the _*3 once-over ]
        [ film|record|video|photograph yourself _*5 check|compare|review|watch|look|see ]
        [ spot|catch yourself|your own? reflection? ] in
        [ note|notice|spot|see any|whether|if _*2 difference|change in colour|color|size|shape ]
        [ see|check|watch|look whether|if|how|that one|your|the|either|both|a _? @body _? ] <looks|drops|dips|rises|hikes|tips|drifts|caves|wobbles|tilts|higher|lower|shorter|level
        [ the|a _*2 puffier|redder|paler|darker ]
        [ side-by-side ]
        [ spot the|any difference ] by|between
    """,
)

_OTHERS_READ = frozenset("it helper partner someone reader phone app friend carer he she they them him her voice speaker".split())
_LOOK_VERBS = frozenset("looking glancing peeking peering staring squinting checking watching look glance peek peep peer stare squint check watch consult read".split())
_SOUNDS = frozenset("reader aloud beep beeps buzz buzzes speaks speaking talking spoken voice vibrates vibrate chime chimes ring rings bell sounds heard hear touch feel felt braille".split())
_NOT_ASKED = frozenset("no without nothing nobody never needn't instead rather ignore forget lose hide ditch".split())
_BY_HAND = frozenset("count tap touch feel ask listen trail reach".split())
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
    if {"rules", "website", "terms", "form", "menu", "prices"} & set(words[last - 1 : last + 3]) and "look" in inside:
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
    if words[last - 2 : last] == ["in", "view"] and words[last - 3] in ("that", "this"):
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
        if "clock" in words[first:last] and "o'clock" in words:
            continue
        if words[first] in _LOOK_VERBS and {"not", "never", "stop"} & set(words[max(0, first - (3 if words[first].endswith("ing") else 2)) : first]) and not ({"until", "till", "unless", "before"} & set(words[last : last + 2]) and {"the", "you", "your", "after"} & set(words[last : last + 4])):
            continue
        if "clock" in words[first:last] and words[first] == "watch" and {"we", "i", "coach", "partner"} & set(words[max(0, first - 2) : first]):
            continue
        if {"wrap", "wrapping", "touch", "hand", "fingers", "thumb", "measuring"} & set(words[last:]) and {"swelling", "lump"} & set(words[first:last]):
            continue
        if "see" in words[first:last] and {"i", "we"} & set(words[max(0, first - 3) : first + 1]):
            continue
        if words[first] in ("read", "reads") and _OTHERS_READ & set(words[max(0, first - 2) : first]):
            continue
        if "if" in words[max(0, first - 1) : first + 1] and _BY_HAND & set(words[last : last + 9]):
            continue
        if words[last : last + 2] in (["and", "think"], ["and", "say"], ["and", "wonder"], ["and", "panic"], ["and", "wish"], ["and", "sigh"]):
            continue
        if words[last : last + 2] in (["for", "me"], ["for", "us"], ["to", "me"], ["to", "us"]):
            continue
        if words[first] in _LOOK_VERBS and {"people", "folk", "folks", "kids", "they", "everyone", "everybody", "cannot"} & set(words[max(0, first - 1) : first]):
            continue
        if words[first] == "read" and {"cannot", "can't", "no", "longer"} & set(words[max(0, first - 2) : first]):
            continue
        if words[first] == "make" and {"said", "told"} & set(words[max(0, first - 5) : first]):
            continue
        if words[first] == "with" and words[first - 1 : first] == ["wall"]:
            continue
        if words[first] in ("have", "take", "look") and {"doctor", "nurse", "physio", "consultant", "surgeon", "gp", "optician"} & set(words[max(0, first - 3) : first]):
            continue
        if words[last - 1] in ("blue", "white", "pale", "grey", "gray") and _ALSO_FELT & set(words):
            continue
        if words[first] in ("look", "looks") and {"may", "might", "can", "could"} & set(words[max(0, first - 1) : first]):
            continue
        if words[first] in ("figures", "numbers") and words[last - 1] in ("show", "shows", "say"):
            continue
        if words[first] == "follow" and {"instructions", "plan", "list"} & set(words[first:last]) and not {"wall", "card", "sign", "board", "label", "poster", "door"} & set(words[last - 1 : last + 4]):
            continue
        if words[first] in ("where", "when", "until", "once", "till") and "hand" in words[first:last] and not {"clock", "timer", "dial", "gauge", "watch", "minute", "second", "stopwatch", "big", "long"} & set(words):
            continue
        if (words[first] in ("read", "reads") and {"you", "me", "them"} & set(words[first:last])) or words[first : first + 3] == ["in", "plain", "sight"]:
            continue
        if words[first:last] == ["spot", "the"] and "tired" in words:
            continue
        if (_NOT_ASKED & set(before) and words[first] != "sight") or ("not" in before and ("need" in before or "have" in before)):
            continue
        if note == "readout" and _SOUNDS & set(words[max(0, first - 4) : last + 6]):
            continue
        if "if" in words[first:last] and "not" in words[first:last] and "see" in words[first:last]:
            continue
        if words[first] in ("go", "goes", "turn", "turns", "turning", "gone") and _ALSO_FELT & set(words):
            continue
        if words[first] in ("looking", "watching") and "i" in before:
            continue
        if words[first] == "marked" and _TOUCHED & set(words):
            continue
        if words[first] in ("film", "record", "video") and "playback" in words:
            continue
        if "sign" in words[first:last] and "my" in before:
            continue
        if note == "looks" and "eye" not in words[first:last] and ("by", "eye") in zip(words[last:], words[last + 1 :], strict=False):
            continue
        if words[first] in ("look", "looking", "check", "inspect") and {"i", "we", "they", "he", "she"} & set(words[max(0, first - 2) : first]):
            continue
        if words[last : last + 2] == ["any", "of"] or words[last - 1 : last + 1] == ["any", "of"] or "i" in words[first - 1 : first]:
            continue
        if note == "looks" and "not" in before and words[first] in ("peek", "peep", "look", "glance", "squint", "peer"):
            continue
        around = f" {' '.join(words[max(0, first - 2) : last + 3])} "
        if any(f" {idiom} " in around for idiom in _IDIOMS):
            continue
        if note == "looks" and words[first] in ("watch", "watching") and words[last:last + 1] == ["for"]:
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
    triggers=_PHRASES.triggers,
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
        "[[Look where]] you're going.",
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
