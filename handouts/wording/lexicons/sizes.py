"""Words of size, distance and degree, and the words that tell a size in space from any other size.

A size is vague only where it belongs to the body or to a movement.  So the
lists come in pairs: what is measured in space (movements, gaps, postures) and
what is not (effort, time, load, feelings, talk).
"""

from handouts.wording.lexicons.forms import comparatives, nouns, verbs, words

# --- degrees --------------------------------------------------------------------------------------------------------

SMALL_AMOUNTS = words(
    "bit tad touch hair smidge smidgen smidgin smidgeon fraction whisker shade mite skosh tick jot soupçon soupcon trifle sliver"
    " wee-bit tiddly titch tidge tinge dash teensy-bit lick crumb speck nudge bittie toot fuzz squidge scooch scoosh scosh midge"
    " ounce whit iota grain skoosh tidgy squeak fag-paper gnat's weeny pinch scrap morsel notch"
)
"""Nouns that say "a little" with "a" before them."""

AMOUNTS_TOO = words("little lot ways way good deal")

DEGREE_ADVERBS = words(
    "slightly somewhat moderately marginally fractionally minimally modestly partially partly partway part-way barely faintly"
    " subtly widely deeply shallowly steeply broadly roomily expansively hugely nominally generously substantially considerably significantly noticeably minutely infinitesimally imperceptibly"
    " sparingly amply"
)
"""Adverbs that are vague wherever they change a place, an angle or a height."""

GRADERS = words(
    "too very really quite pretty fairly rather reasonably relatively extra super ultra mega dead proper properly well right"
    " kinda sorta nice nicely good just only so even still much far lots loads miles tons ever slightly somewhat moderately"
    " marginally fractionally comparatively awfully terribly crazy insanely stupidly ridiculously seriously extremely"
    " exceptionally incredibly unusually overly unduly excessively a-bit way jolly decently suitably sufficiently medium mid"
    " more most less sky ankle fractionally noticeably generously medium-ish hella wicked deceptively"
)
"""Words before a size that grade it: "pretty low", "too wide", "extra deep"."""

SIZES = words(
    comparatives(
        "wide narrow high low deep shallow near close big small large short long broad steep slight tight tiny tall"
    ),
    "far farther farthest further furthest lil little littler littlest teeny teensy teenie weeny wee tiddly titchy dinky itty-bitty itsy-bitsy"
    " teeny-weeny teeny-tiny micro mini miniature minuscule minute minimal minor moderate modest medium medium-sized decent fair"
    " generous ample sizeable sizable substantial considerable healthy hefty huge giant gigantic massive enormous vast immense"
    " colossal humongous ginormous mahoosive whopping mighty monster jumbo baby bitty weensy diddy merest choppy reduced restricted exaggerated"
    " partial subtle smallish biggish largish widish lowish highish longish shortish deepish narrowish mid-sized good-sized"
    " fair-sized reasonable sensible fractional dainty mincing gentle expansive sweeping extravagant hearty whacking great"
    " wide-open mild acute obtuse flattish nominal marginal good bijou roomy whisker-thin wide-ish low-ish high-ish shallow-ish full-ish half-ish some certain",
)
"""Adjectives of size that make a movement or a gap vague."""


PREDICATES = words(
    "wide wider high higher low lower deep deeper shallow shallower narrow narrower far farther further close closer near nearer"
    " small smaller tiny tinier big bigger little short shorter larger steeper broader minimal reduced sky-high sky-wide ground-low"
    " lowish highish widish deepish knee-deep huge massive long longer wide-ish low-ish teeny teensy diddy dinky mini"
    " slight modest moderate shallow-ish compact tight tighter steep steeper large itty-bitty itsy-bitsy teeny-tiny roomy diddy wide-open"
)
"""Sizes that can stand alone after a body part or a verb: "hands wide", "stay low"."""

_GRADED_IN_ONE = [
    f"{before}{size}"
    for size in ("wide", "high", "low", "deep", "narrow", "shallow", "long", "short", "close", "big", "small", "far")
    for before in ("mega-", "super-", "ultra-", "extra-", "really-", "over-", "too-")
] + [f"{size}-ish" for size in ("wide", "high", "low", "deep", "narrow", "shallow", "long", "short", "big", "small", "close", "wider", "higher", "lower", "deeper")]
SIZES |= frozenset(_GRADED_IN_ONE)
PREDICATES |= frozenset(_GRADED_IN_ONE)

ALONE = words("wider higher deeper shallower narrower closer nearer farther further bigger smaller tinier lower")
"""Sizes that are an instruction by themselves: "Wider!"."""

# --- what has a size in space -----------------------------------------------------------------------------------------

SHAPES = words(
    nouns(
        "step stride pace lunge hop jump leap bound skip bounce circle arc loop spiral oval ring pulse pump movement motion bend"
        " tilt lean curve arch bow angle incline decline slope gradient gap distance stance squat plié plie slam twist rotation"
        " turn nod kick straddle tuck hinge dip shift sway shuffle slide swing sweep wave opening stagger"
        " crunch curl wiggle shimmy shrug rock circuit jab hook hover toe-out turn-out turnout knee-bend elbow-bend arm-swing"
        " side-step sidestep footstep footprint tiptoe paddle kip wobble flick flutter scissor oscillation undulation"
        " excursion displacement offset clearance spacing separation headroom lordosis kink flexion extension abduction"
        " adduction pronation supination protraction retraction elevation depression inclination deviation roll lift raise drop"
        " scoot skim shove glide reach rise descent v vee wedge diamond sidelean cant slant tap stomp stamp backswing upswing"
        " follow-through swoop scoop pivot swivel windmill drift hip-hinge camber crouch fold press-up straddle split"
        " valgus varus kyphosis flare beat strike flap flick swish kneebend zigzag ripple lurch tumble wriggle traverse trajectory orbit sidebend side-bend layback lay-back backbend chop thrust rainbow recoil rollback roll-back lean-back kickback kick-back step-back crossover"
        " toe-tap heel-tap heel-raise knee-lift leg-lift arm-circle leg-circle hip-circle tailswing waggle semicircle half-circle run-up"
    ),
    "footwork feet-spacing",
)
"""Nouns of movement, angle and gap: a size word before one of them is vague."""

WEAK_SHAPES = words(
    nouns(
        "way range space room move base grip amount degree spread width height depth span swim-stroke stroke press push pull punch throw position movement-range plank bridge row walk march jog amplitude carriage hold set-up setup opening frame foothold margin"
    )
)
"""Nouns that have a size in space with some size words only."""

SIZES_OF_WEAK = {
    "way": words("little small short long fair good decent tiny wee big considerable"),
    "ways": words("little small short long fair good decent tiny wee big"),
    "range": words(
        "small smaller short shorter low partial reduced limited restricted tiny modest moderate little comfortable-ish mid narrow inner outer-ish larger bigger"
    ),
    "space": words("little small some big generous tiny bit decent fair good more wide wider"),
    "room": words("little some bit"),
    "move": words("small tiny little big smaller bigger large huge teeny wee subtle"),
    "moves": words("small tiny little big smaller bigger large huge teeny wee subtle"),
    "base": words("wide wider broad broader narrow narrower small smaller generous bigger"),
    "grip": words("wide wider narrow narrower close closer broad medium wide-ish"),
    "amount": words("small tiny little slight fair modest"),
    "degree": words("small slight modest fair moderate"),
    "spread": words("wide wider narrow generous small big slight broad"),
    "width": words("good medium generous moderate comfortable-ish decent fair small"),
    "height": words("reasonable sensible good medium low moderate modest small fair decent middling middle"),
    "heights": words("medium low moderate modest"),
    "depth": words("medium shallow moderate modest partial decent small fair good greater more"),
    "position": words("wide wider narrow narrower low lower"),
    "carriage": words("high low"),
    "margin": words("small slight fair narrow"),
    "amplitude": words("small low large"),
    "stroke": words("short shorter long longer small smaller big bigger tiny wide"),
    "strokes": words("short shorter long longer small smaller big bigger tiny wide"),
    "punches": words("short small little"),
    "corrections": words("tiny small little big minute"),
    "correction": words("tiny small little big minute"),
    "pushes": words("long longer short shorter tiny small little"),
    "presses": words("tiny small little"),
    "bridge": words("small low high higher little tiny"),
    "hold": words("wide low"),
}

NOT_WITH = {
    "step": words(
        "low lower lowest high higher tall taller deep narrow close near nearest far good great gentle tight steep fair some certain broad"
    ),
    "steps": words("low lower high higher deep narrow close steep good great gentle some certain fair"),
    "pace": words(
        "good gentle steady moderate high low decent fair reasonable sensible healthy great modest easy short some certain"
    ),
    "turn": words("good great some certain fair high low tall near long"),
    "turns": words("good great some certain fair long"),
    "press": words("low high"),
    "rock": words("good great big huge"),
    "drop": words("some good great high low"),
    "jump": words("good great broad"),
    "jumps": words("some good great broad long"),
    "ring": words("low lower high higher small big large near far close some"),
    "rings": words("low lower high higher small big large near far close some"),
    "loop": words("low high lower higher short long small big large wide narrow"),
    "loops": words("low high lower higher short long small big large wide narrow some"),
    "lift": words("good great close some certain hefty heavy big near long deep low"),
    "lifts": words("good great some certain hefty big"),
    "tap": words("good great gentle close hefty near"),
    "taps": words("gentle good great"),
    "wave": words("good great some certain"),
    "wedge": words("low small high"),
    "wedges": words("low small high"),
    "pulse": words("high low good steady fair slight"),
    "pump": words("good great"),
    "circuit": words("wee tiny quick little short long mini small big good great fair some certain"),
    "circuits": words("short long mini good great some certain"),
    "circle": words("good great some certain fair"),
    "movement": words("good great some certain fair reduced gentle limited restricted"),
    "movements": words("good great some certain fair gentle reduced"),
    "motion": words("good great certain fair gentle"),
    "press-up": words("good some"),
    "press-ups": words("good some"),
    "reach": words("good great close easy some"),
    "rise": words("some"),
    "extension": words("good great some certain"),
    "extensions": words("good great some"),
    "swing": words("good great full some"),
    "swings": words("good great some"),
    "squats": words("good great some certain fair gentle"),
    "squat": words("good great some certain fair gentle"),
    "lunges": words("good great some certain gentle"),
    "lunge": words("good great some certain gentle low high"),
    "kicks": words("good great some"),
    "kick": words("good great some"),
    "crunches": words("good great some"),
    "crunch": words("good great some"),
    "curls": words("good great some"),
    "curl": words("good great some"),
    "roll": words("good great some certain"),
    "rolls": words("good great some certain"),
    "twists": words("good great some certain"),
    "raises": words("good great some certain"),
    "raise": words("good great some certain"),
    "slide": words("good great some certain"),
    "slides": words("good great some certain"),
    "split": words("close good"),
    "depression": words("minor moderate deep major some certain mild great"),
    "elevation": words("high low higher lower great"),
    "arch": words("high low higher lower great fallen"),
    "arches": words("high low higher lower"),
    "shift": words("short long good great late"),
    "shifts": words("short long good great late some"),
    "skip": words("good great"),
    "distance": words("great"),
    "jab": words("good great some"),
    "jabs": words("some good great"),
    "hook": words("low high lower higher small big"),
    "hooks": words("low high lower higher small big some"),
    "v": words("some certain good"),
    "bow": words("some good"),
    "diamond": words("some good big"),
    "exercise": frozenset(),
    "angle": words("certain far close"),
    "bounce": words("good some"),
    "bound": words("certain"),
    "fold": words("some good"),
    "stamp": words("some small good big"),
    "curve": words("low high"),
    "dip": words("some good great"),
    "dips": words("some good great"),
    "paddle": words("small big short long some good"),
    "slope": words("some short long good"),
    "incline": words("high low some good"),
}
"""Sizes that say something else of this noun: "a low step" is a thing, "a good pace" a speed."""

ANATOMY = words(
    "back leg legs body arm arms abs belly ribs limb limbs jaw lip trunk spine tummy stomach abdomen abdominals half third part edge end side corner calf calves thigh thighs quarter quarters hand foot rung hole holes notch row rail pulley shelf step stair bar setting gear pad level hip knee elbow shoulder shoulders cable ring handle hook resistance risk weight weights load loads dose price number numbers heart rate rep reps repetitions back's extremity extremities trapezius traps trap glute chest fibres"
)
"""Nouns after "lower", "deep", "high" and the like that make it a name and no instruction."""

# --- verbs and other words of movement --------------------------------------------------------------------------------

MOVES = words(
    verbs(
        "step bend lean tilt tip turn twist rotate roll raise lift lower drop sink dip squat lunge hinge fold bow curl uncurl arch"
        " round flatten widen narrow broaden spread open close separate split straddle slide shuffle scoot shift move travel walk"
        " march jog hop jump leap skip run come go bring take draw pull push press reach extend stretch straighten lengthen shorten"
        " swing sweep circle stir rise float hover lie sit stand kneel crouch perch stay keep hold put place set plant"
        " position park rest hang tuck lock unlock flex point turn-out angle slant pivot swivel spin send drive kick punch"
        " throw push-off inch edge creep nudge scooch budge wriggle wiggle jut poke stick drift wander flare splay fan peel"
        " pike crunch rock sway pulse pump bounce tap flick shrug retract protract abduct adduct dorsiflex plantarflex pronate"
        " supinate internally-rotate elevate depress recline incline decline hike hoist heave drag lay land start finish begin end"
        " stop pause work stride tread glide swim paddle row pedal climb crawl squeeze pinch settle soften ease relax release let"
        " give make get grip grab hug loop wrap hitch bump crank adjust swap switch ride crook cock untuck stack stagger tighten"
        " loosen duck scoop slump slouch hunch crane stoop squirm scrunch project present lead follow trail cross uncross clasp"
        " unclasp push-back counter compress expand grow shrink collapse melt swoop surge plunge slot slip pop plonk"
        " plop nestle tease tweak cant aim direct steer guide carry bear lob fling toss bowl putt cast paint trace sketch"
        " scissor flutter vault spring bound prance gallop side-step sidestep back-step backpedal cover clear unfold unroll"
        " un-bend unbend jack mount dismount pull-back invert evert nod shake turn swap curve sag yaw pitch list veer"
        " tiptoe tip-toe wedge prop pile ladder feed pay play cup clench unclench lollop bob weave slip zig zag"
        " ski skate surf sashay strut twirl hook sprawl toddle stroll add write gather hollow scoop dome wing beat"
    ),
)
"""Verbs that move or place a part of the body or a piece of kit."""

TIMID_MOVES = words(
    verbs(
        "keep hold stay rest stop pause start finish begin end work get give make let swap switch adjust settle soften ease relax release"
        " play lead follow pay set run go come take carry stretch shake cover clear beat grow pump press push pull ride land grip swim"
        " sit stand kneel counter compress row pedal lie climb feed crank present project direct guide bear tighten loosen squeeze gather march jog walk"
    )
)
"""Verbs of MOVES that speak as often of effort, time or mood; a degree after them needs a place or a body part too."""

OTHER_VERBS = words(
    verbs(
        "feel ache hurt burn sting tingle throb tire worry wait cheat talk speak breathe inhale exhale sweat drink sip eat sleep"
        " slow speed calm warm cool rush hurry help know say tell hear listen see look enjoy hate laugh smile"
        " chat read learn cough sneeze sound seem cost improve progress vary differ suffer struggle"
        " panic moan grumble complain practise practice train exercise save spend wear read bother wobble shiver tremble"
        " yawn sigh hum sing whistle fidget mind change chill brace tense contract engage strengthen fatigue pant puff"
        " challenge vary scare surprise annoy sting itch pinch-feel swell bruise bleed spin fuss care sit-with"
        " depend matter hesitate rely bite grumble groan creak squeak wince quiver"
    ),
)

FEELINGS = words(
    comparatives(
        "hard heavy fast slow quick light strong weak warm cool cold hot sore stiff tight soft loud quiet easy tough brave tired late"
        " soon early old young nervous odd strange weird silly nice calm fresh keen rough sharp bright busy sick dull dim fit happy"
        " sad proud cosy snug damp dry wet messy noisy hungry thirsty dizzy giddy queasy woozy shaky wobbly achy puffy short-tempered"
    ),
    "uncomfortable comfortable breathless puffed winded out-of-breath anxious bored boring awkward nauseous unwell different"
    " difficult intense intensive relaxed tender swollen bruised numb tingly painful fatigued exhausted unsteady"
    " energetic enthusiastic ambitious demanding challenging challenged gentle careful optimistic pessimistic confusing confused"
    " embarrassed embarrassing surprised disappointed pleased better worse best worst more-tired faster slower",
)

UNSPATIAL = words(
    "time times while minute minutes second seconds hour hours day days week weeks month months year years moment longer sooner later"
    " earlier effort energy strength force power pressure resistance load loads weight weights kilo kilos pound pounds kg speed tempo"
    " beat pain soreness ache aches stiffness fatigue discomfort tension stretch burn burning pull-feeling tingle tingling warmth heat cold"
    " breath breaths breathing water tea coffee juice food sugar snack salt milk squash wine beer music volume voice noise sound"
    " rest break breather practice patience confidence courage fun help support advice information info detail details news"
    " chat talk attention focus thought sleep money rep reps repetition repetitions set sets work practice training exercise exercises"
    " movement-practice sweat oomph welly grunt effort-wise love care credit grip-strength pep zip fizz life tlc faith luck give wiggle-room"
    " chalk oil talc cream ice tape spirit spirits mood morale price cost fever temperature blood sugars pulse-rate heart risk chance"
    " challenge intensity percentage percent fuel assistance self-discipline discipline stamina balance assist bodyweight radio telly tv heating light lights lighting fan"
    " lamp lamps dimmer burner flame gas hob stress standards standard iron hopes expectations costs stakes dose doses budget sugar wage wages batteries battery fitness stereo speaker speakers headphones thermostat blind blinds gravity"
)
"""Nouns (and time words) whose amount is not a distance."""

POSTURES = words(
    "bent flexed extended open apart turned rotated tilted raised lifted elevated lowered tucked rounded arched angled inclined"
    " declined spread splayed staggered offset curved hinged crossed parted separated abducted adducted pronated supinated retracted"
    " protracted unlocked hunched leaning hanging reclined twisted crooked curled folded slanted cocked pointed flared hollowed"
    " straightened outstretched stretched outturned turned-out toed-out toed-in inward inwards outward outwards forward forwards"
    " back backward backwards up upward upwards down downward downwards sideways sideway out in over off away aside ahead"
    " behind beyond past below above under outside inside beneath across round around diagonal diagonally open opened closed"
    " together adrift upright-ish pigeon-toed knock-kneed bow-legged internally externally medially laterally anteriorly"
    " posteriorly distally proximally superiorly inferiorly lateral medial anterior posterior proximal distal oblique obliquely"
    " skewed slouched stooped crouched dipped depressed everted inverted deviated concave convex off-centre off-center"
    " uncrossed popped drawn pulled pushed dropped sunk shifted set cocked left right clockwise anticlockwise counterclockwise"
    " straighter flatter rounder wider lower taller out-turned dorsiflexed plantarflexed hyperextended overlapping bowed cupped"
    " clear proud short shy spaced"
)
"""Words for where a part of the body is or how it is bent; a degree before one of them is vague."""

PARTICLES = words(
    "up down in out back forward forwards backward backwards apart together outward outwards inward inwards away off over sideways"
    " left right upward upwards downward downwards aside ahead behind across open round around wide high low higher lower wider"
    " deep deeper closer nearer further farther out-turned down-and-out"
)


# --- what explains a size ---------------------------------------------------------------------------------------------

NOT_A_LANDMARK = words(
    "side sides back backs ball balls core cores arch arches body bodies foot-width hair pad pads heart hearts crown skin line lines"
    " step steps grip grips corner corners loop loops rest"
)


UNITS = words(
    nouns(
        "inch centimetre centimeter millimetre millimeter metre meter yard degree hand-width hand's-width handswidth handwidth handspan"
        " hand-span finger finger-width fingerwidth finger's-width thumb thumb-width fist fist-width palm palm-width foot-length"
        " foot-width shoe-length shoelength forearm-length arm-length arm's-length span knuckle hole notch click setting block quarter third half"
        " breadth length width cubit fingertip hand footprint-length stride-length shoe mat-length card phalanx mil tile plank-width"
        " floorboard paving-slab brick"
    ),
    "cm mm ft inches feet foot o'clock ° hip-width shoulder-width hips-width shoulders-width hip-distance shoulder-height"
    " chest-height waist-height head-height knee-height hip-height eye-level right-angle parallel deg",
)
NUMBERS = words(
    "a an one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen eighteen twenty thirty forty"
    " forty-five fifty sixty seventy eighty ninety hundred half quarter third few couple several"
)

# --- small words ------------------------------------------------------------------------------------------------------

FOLLOWERS = words(
    "and or but then so while until till when as if because before after on in at to of off from with for by over under above below"
    " behind beside between into onto through toward towards across around round near past inside outside along against"
    " now here there please again too instead throughout also first next this every each both you your it its his her their everyone"
    " everybody folks guys girls ladies gents love darling loves my mate today tonight than unless since once just only like without"
    " during per where which who though although rather almost plus not nor is are 's was i we they"
)
"""Words that may stand after a finished phrase of degree; after any other word the degree belongs to that word."""

CLAUSE_BREAKS = words(
    "and then but so until till while as if because when that which who whose where before after unless once or since though although"
    " , ; : ( ) ! ? . —"
)

FIRST_PERSON = words("i my he she we our")
PAST = words("was were had did went felt used became seemed looked drifted")
"""Past forms that no instruction has."""

IMAGINED = words("imagine imagining picture pretend pretending think")


TOUCH = words(verbs("touch brush meet graze kiss bump reach knock nudge tap"), ["against", "touching"])
"""Verbs after "so that" that say where a movement ends."""

SHAPED = words(
    "straight bent upright vertical horizontal open closed tucked rounded turned flexed extended angled hunched raised"
)
"""Postures that a grading word makes vague: "fairly straight"."""

GRADES_POSTURES = words("fairly pretty quite rather reasonably relatively kinda kind sort mostly mainly")


NOUNISH_AMOUNTS = words("tick crumb toot notch nudge scrap morsel lick jot dash pinch sliver speck shade touch trace")
"""Amounts that are things of their own as well: "put a tick on the log"."""

TRACES = words("hint suggestion whisper trace ghost glimmer semblance modicum suspicion dash")
"""Nouns before "of a bend", "of a turn"."""

TELLING_PAST = words("kept held took brought came went stood sat drew swung sank drove threw gave got made ran")

WIDE_PARTS = {
    "wide": words("hands feet knees elbows legs arms heels toes fingers"),
    "wider": words("hands feet knees elbows legs arms heels toes"),
    "narrow": words("hands feet"),
    "narrower": words("hands feet"),
    "high": words("elbows hands hips arms"),
    "higher": words("elbows hands hips arms knees heels kicks"),
    "longer": words("arms legs"),
    "low": words("hips hands heels"),
}
"""Sizes before a part of the body that place it: "wide knees"; "high knees" is the name of a drill."""
