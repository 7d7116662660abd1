"""English words, in classes that the grammar of the kinds is written in.

The classes are meant to be wide: a word that a trainer might say belongs here
whether or not a passage of ours has it.  British and American forms alike.
"""

from handouts.wording.grammar import Lexicon


def _words(text: str) -> list[str]:
    return text.split()


def _nouns(text: str) -> list[str]:
    """Each noun and its plural."""
    forms: list[str] = []
    for noun in text.split():
        forms.append(noun)
        if noun.endswith(("s", "x", "z", "ch", "sh")):
            forms.append(noun + "es")
        elif noun.endswith("y") and noun[-2] not in "aeou":
            forms.append(noun[:-1] + "ies")
        else:
            forms.append(noun + "s")
    return forms


_DOUBLED = frozenset(
    "grab grip step tip tap hug drop stop slip swap clip dip hop skip flip trap pat pop put set sit spin run tug cut let get rub pin tuck-in"
    " scan nod zip jog jab spot plan shut wrap drag chop plug rip map knit pad snap".split()
)


def _verbs(text: str) -> list[str]:
    """Each regular verb in its four forms, doubled last letters included."""
    forms: list[str] = []
    for verb in text.split():
        stem = verb + verb[-1] if verb in _DOUBLED else verb
        if verb.endswith("e"):
            forms += (verb, verb + "s", verb[:-1] + "ing", verb + "d")
        elif verb.endswith(("s", "x", "z", "ch", "sh", "o")):
            forms += (verb, verb + "es", stem + "ing", stem + "ed")
        elif verb.endswith("y") and verb[-2] not in "aeou":
            forms += (verb, verb[:-1] + "ies", verb + "ing", verb[:-1] + "ied")
        else:
            forms += (verb, verb + "s", stem + "ing", stem + "ed")
    return forms


# --- people ---------------------------------------------------------------------------------------------------------

_ROLES = [*_nouns("instructor coach trainer teacher therapist physio physiotherapist leader demonstrator model presenter assistant" " tutor guide helper colleague expert pro professional athlete dancer swimmer runner lifter rower climber gymnast" " skater boxer yogi neighbour neighbor partner buddy mate friend teammate captain choreographer midwife nurse" " sensei sifu guru master mentor staff volunteer student pupil client member class group team crew line row" " person guy lady girl boy bloke lad lass fella chap gentleman lady kid child man woman fellow dude gal star" " daughter son sister brother mum mom dad wife husband nephew niece cousin aunt uncle grandson granddaughter" " carer caregiver companion opponent archer golfer fencer rider skier surfer sailor wrestler judoka acrobat trapezist drummer conductor cheerleader skipper soloist understudy paddler canoeist cyclist sprinter vaulter walker-in-front beginner veteran old-timer regular leader-in-front front-row somebody whoever someone everyone everybody others rest"), "men", "women", "children", "people", "folk", "folks", "ladies", "guys"]

# --- the body -------------------------------------------------------------------------------------------------------

_BODY = (
    _nouns(
        "head face forehead brow eyebrow eye eyelid ear earlobe nose nostril cheek cheekbone chin jaw jawbone mouth lip tongue tooth"
        " temple crown scalp skull neck nape throat collarbone clavicle shoulder armpit underarm arm elbow forearm"
        " wrist hand palm fist finger fingertip fingernail thumb thumbnail knuckle chest breast breastbone sternum rib ribcage"
        " side waist belly tummy stomach abdomen navel button-hole groin hip hipbone pelvis buttock bum bottom butt glute backside"
        " tailbone coccyx sacrum spine vertebra back loin flank thigh quad quadricep hamstring knee kneecap patella shin calf"
        " ankle anklebone heel foot toe sole instep arch ball tendon muscle bone joint leg limb trunk torso body core"
        " bicep biceps tricep triceps lat pec trap delt deltoid abdominal oblique diaphragm lung heart bellybutton belly-button"
        " waistband beltline belt-line buckle pocket shoelace lace shoe sock trainer sneaker hair hairline ponytail beard skin"
        " pinky pinkie pinkies webbing pad crotch sit-bone sitbone ischium rump lap midline midriff solar-plexus"
    )
    + "feet teeth calves thighs hips glutes abs quads hamstrings lats pecs traps delts vertebrae heels pinkies bellies tummies halves".split()
)

# --- things ---------------------------------------------------------------------------------------------------------

_SURFACES = [*_nouns("floor ground mat carpet rug wall door doorway doorframe doorpost door-frame ceiling chair seat seat-back backrest chairback armrest" " stool bench table desk worktop counter countertop sink bath bathtub tub bed sofa couch settee armchair cushion pillow stair" " step rail handrail banister grab-rail bar barre pole post pillar column rack frame upright edge corner rim kerb curb" " block brick box platform step-board wedge foam roller bolster towel blanket strap loop rope ring pulley cable handle" " grip lever pin pedal saddle handlebar footplate footrest pad stop stopper safety rung ladder cone hurdle marker board" " skirting skirting-board baseboard radiator windowsill sill shelf ledge fence tree poolside deck grass turf gravel track" " threshold tile windowpane pane cupboard drawer fridge"), "stairs", "shelves", "safeties"]

_KIT = [*_nouns("dumbbell kettlebell bell barbell bar weight plate disc disk band tube loop ball rope ring strap handle cable pulley machine" " bench box block brick mat roller bolster towel pole stick dowel broomstick broom bottle tin can bag sandbag backpack rucksack" " medicine-ball med-ball board wobble-board disc slider glider noodle float kickboard paddle oar blade skipping-rope" " cushion pillow chair stool cone hurdle ladder step marker hoop beanbag racket glove mitt wrap belt collar clip carabiner" " pin lever knob dial button switch catch hook anchor peg pad seat saddle pedal sled tyre tire vest bib putty peanut" " wheel stepper treadmill rower erg bike elliptical trampoline rebounder parallette wall-bar hold grip jug crimp" " tub bucket crate basket rack stack tape sock slipper shoe trainer end side line square circle dot spot cross stripe star sticker" " mark label tag blanket sheet rug tile scarf ribbon flag pen card folder sleeve cuff foam sponge bungee cord string ankle-strap" " tubing key fob remote bandage spring hose string cloth curtain barrel ramp tunnel net goal boulder route target stop sock dressing splint brace rim stud peg bolt nut screw wire lead plug cone" " stirrup rein sail boat kayak canoe cox seat-belt buckle armband wristband headband bangle whistle trolley rake spade hoe ladle spoon cup plate bowl lid saucer" " strip sash fin flipper lino logo putty cap snorkel paddle floater woggle sandbell dome spikeball hedgehog tube-band mini-band quoit skittle baton bucket" " handle-end one pair set door doorway chalk lane rope-end tie thread stitch patch flap panel tin jar mug cup lid"), "ones", "shelves", "pairs", "weights", "sixes", "twos", "threes", "fives", "tens"]

_MARKS_ON_THINGS = [*_nouns("line stripe cross square circle dot spot tape mark arrow triangle star x footprint footmark number letter logo sticker" " grid box lane tile border edge edging band ring stitching seam dash patch panel pattern rectangle diamond"), "markings", "lettering", "lines", "sticky-tape"]

_ROOM = _nouns(
    "pillar column post door doorway window wall corner fence tree bench cone marker flag hall gate goal goalpost net lamp-post"
    " lamppost sign signpost pillar-box stage piano stereo radiator cupboard mirror chair table rack machine station end side line lane box bin pole"
    " clock exit entrance desk counter stand stool speaker ladder staircase hedge bush stile buoy kerb curb hut shed bleacher"
    " mat step block locker shelf rail bar barre treadmill rower bike fan heater fireplace"
)

# --- measures -------------------------------------------------------------------------------------------------------

_UNITS = [*_nouns("cm centimetre centimeter mm millimetre millimeter metre meter m inch inche yard km kilometre mile degree hour o'clock" " hand handspan hand-width hand's-width hand's-breadth finger fingerwidth finger-width thumb palm span fist stride" " forearm hole notch knot click rung stop setting shoulder-width hip-width arm's-length shoelength foot-length quarter third half halfway" " foot-width fist-width body-length head-width"), "feet", "foot", "inches", "o'clock", "right-angle", "ninety", "forty-five", "halfway", "midway", "lengths", "widths", "length", "width", "breadth"]

_NUMBERS = _words(
    "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen twenty thirty forty fifty sixty"
    " ninety hundred half quarter third couple few several dozen both another"
)

_ORDINALS = _words("first second third fourth fifth sixth seventh eighth ninth tenth top bottom middle last next")

# --- looks ----------------------------------------------------------------------------------------------------------

_COLOURS = _words(
    "red orange yellow green blue indigo violet purple pink brown black white grey gray silver gold golden beige cream ivory tan"
    " turquoise teal aqua cyan navy maroon burgundy crimson scarlet vermilion magenta fuchsia lilac lavender mauve plum peach"
    " coral salmon apricot amber mustard lemon lime olive khaki emerald jade mint turquoise azure cobalt sapphire ruby cherry"
    " rose rust copper bronze charcoal ebony chestnut chocolate caramel camel sand taupe ochre terracotta cerise puce sky-blue"
    " navy-blue royal-blue baby-blue lime-green bottle-green olive-green off-white jet-black dark-blue light-blue pale-blue dark-green"
    " light-green dark-red bright-red bright-yellow reddish bluish greenish yellowish greyish grayish pinkish purplish brownish"
    " whitish blackish orangey greeny bluey redder bluer greener pinker whiter blacker greyer yellower browner colourless colorless"
    " coloured colored multicoloured multicolored multi-coloured multi-colored rainbow pastel"
    " reds blues greens yellows purples pinks greys grays"
    " claret mocha slate saffron cranberry ecru buff pewter pistachio damson mulberry primrose cornflower carmine sienna oatmeal flesh-coloured"
    " forest-green pea-green sea-green racing-green ice-blue powder-blue electric-blue duck-egg-blue midnight-blue blood-red brick-red cherry-red hot-pink"
    " red-and-white black-and-white blue-and-white yellow-and-black tangerine canary sapphire vermillion umber sepia periwinkle chartreuse aubergine raspberry strawberry blueberry denim"
)

_LOOKS = _words(
    "shiny shinier shiniest glossy gleaming glittery glittering sparkly sparkling glinting glowing luminous reflective mirrored chrome chromed metallic"
    " matt matte dull duller neon fluorescent fluoro fluorescent day-glo dayglo hi-vis high-vis high-visibility transparent see-through translucent opaque clear"
    " pale paler palest dark darker darkest bright brighter brightest light-coloured light-colored dark-coloured dark-colored faded bleached tinted"
    " striped stripy stripey spotted spotty dotted dotty polka-dot checked chequered checkered checkerboard tartan plaid paisley floral flowery patterned plain"
    " camouflage camo tie-dye marbled mottled speckled speckly flecked two-tone zebra leopard leopard-print gingham pinstriped painted printed chalked chalk"
    " sequinned sequined holographic iridescent pearlescent pearly shimmery shimmering candy-striped two-toned colourful colorful monochrome sun-faded"
    " herringbone houndstooth argyle logoed monogrammed emblazoned initialled unbranded"
    " illuminated lit backlit flashing blinking smoked frosted smoky gold-plated silvery rusty tarnished polished varnished stained discoloured discolored pretty-looking"
)

# --- seeing, showing, copying ---------------------------------------------------------------------------------------

_SEE = _words("see sees seeing saw seen") + _verbs("spot notice glimpse observe view witness")
_LOOK = _verbs("look watch glance peek peep gaze stare peer squint gawk gawp glimpse observe eye eyeball study")
_SHOW = _verbs("show demonstrate demo display model illustrate exhibit present exemplify") + _words(
    "shown modelled modelling demoed demoing demo'd demo'ed showed"
)
_COPY = _verbs(
    "copy mimic imitate mirror ape emulate shadow echo replicate duplicate reproduce parrot mime match impersonate"
) + _words("mimicking mimicked copycat")

_MEDIA = _nouns(
    "photo photograph picture pic image snapshot selfie screenshot diagram figure chart graph infographic illustration drawing sketch"
    " cartoon poster video clip vid footage film movie reel gif animation slideshow slide recording tutorial thumbnail"
    " pictogram icon emoji doodle outline inset woodcut engraving silhouette flyer brochure leaflet painting storyboard livestream stream vlog webcast broadcast webinar dvd visual graphic"
    " flipbook flashcard handout-picture leaflet-picture close-up closeup wallchart flipchart whiteboard blackboard noticeboard"
    " projection projector montage portrait figure-drawing artwork stick-man stick-figure stickman x-ray scan plate caption line-drawing"
    " schematic blueprint map print printout"
) + _words("footage fig figs photos photography imagery")

_SCREENS = _nouns(
    "screen display monitor telly tv television tablet laptop phone computer console readout touchscreen projector smartphone panel"
)
_CAMERAS = _nouns("camera lens webcam cam camcorder viewer audience spectator onlooker crowd photographer cameraman videographer")

_READOUTS = _nouns(
    "clock timer stopwatch watch wristwatch countdown display dial gauge scale meter monitor screen readout counter number figure"
    " digit label tag print stamp sticker sign scoreboard list sheet card whiteboard noticeboard board poster timetable thermometer"
    " speedometer odometer tachometer hand second-hand needle pointer light lamp led bulb percentage reading step-counter pedometer"
    " fitbit smartwatch barometer level spirit-level plumb-line hourglass sand-timer egg-timer metronome-light log-sheet instruction-card"
) + _words("writing lettering digits")

# --- directions and places ------------------------------------------------------------------------------------------

_TOWARD = _words("toward towards to at facing opposite nearest closest near nearer furthest farthest")
_ORIENT = (
    _verbs(
        "turn face step lean roll rotate twist tip tilt point aim direct angle swing sweep push press kick punch walk run march jog hop"
        " skip jump slide shuffle move travel come reach stretch extend lunge open pivot drop shift scoot crawl pass throw toss"
        " send bring take pull draw draw sway circle gallop dance row paddle glide float drift bend bow fold curl lift raise spin"
        " swivel flick drive project present show lie stand sit kneel position place line stay finish start begin end cross head go"
    )
    + "stood sat lay lying sitting kneeling knelt swung swept threw thrown brought took taken drew drawn ran came went going goes lies".split()
)

_HAND_VERBS = (
    _verbs(
        "place position rest hold grab grip grasp clasp clutch take pick lift raise lower bring move push press pull draw drag lay lean"
        " plant park pop stick clip tuck touch tap bend straighten stop start finish turn twist rotate step walk run jog march"
        " hop skip jump shuffle slide glide travel head go come reach stretch aim point send sweep swing drop sink dip stand"
        " kneel balance squeeze pinch feel press rub massage roll pause hover land anchor loop hook wrap tie fix fasten"
        " attach set keep extend carry shift scoot open close fold tip tilt lunge pass throw toss catch pile stack load dump"
        " line row paddle spread split kick punch hang pedal crawl climb spin cross drive angle work aim bounce relax trace draw slot"
        " insert wedge screw strap buckle adjust measure mark circle wiggle nudge ease haul heave tug yank hoist float"
    )
    + "put puts putting sit sits sitting sat set lie lies lying hold held let get gets getting got bring brought meet meets feel felt hurt hurts bite bites stay stays stayed".split()
)

_PERCEPTION_HARMLESS = _words("doctor gp physio therapist nurse surgeon specialist consultant optician dentist midwife podiatrist")

_DIMENSIONS = _words(
    "wide wider high higher far farther further long longer low lower deep deeper close closer near nearer big bigger small smaller short shorter"
    " narrow narrower thick thin tall broad tight apart steep shallow bent straight tilted turned angled forward back round much"
)

_SPATIAL = _nouns(
    "way direction side end angle distance spot point place level height depth width length area zone region corner part bit"
    " position space gap amount line mark location section portion half range size shape curve path arc route patch quarter"
)

_PREPOSITIONS = _words(
    "in on at to from by beside under underneath beneath below above over behind between against across along around round near next"
    " inside outside into onto off through toward towards past beyond within before after upon alongside opposite level with touching"
    " until till where just about around halfway midway outside in-between atop"
)

_SPACE_ADVERBS = _words(
    "up down over out in back around round through across along off away right just about roughly somewhere anywhere only exactly"
    " approximately precisely all almost nearly straight way"
)

_BE = _words("be is are am was were been being 's")
_HAVE = _words("have has had having")
_DO = _words("do does did doing done")
_MODALS = _words("can could will would should may might must shall need ought let")
_DETERMINERS = _words("the a an this that these those my your his her its our their each every any some no both either one another")
_POSSESSIVES = _words("my your his her its our their")

CLASSES = {
    "leader": _words("and then but or so now just please next also okay ok right first to again here well good simply lastly finally instead"),
    "name": [],
    "forename": _words(
        "rose olive ruby amber violet jade grace joy hope mark bill will frank art grant pat sue rob jack penny may april june dawn heather ivy lily daisy"
        " holly iris hazel ginger pearl crystal jean gene ray rich dale glen cliff reed drew bob nick chuck skip josh faith chase hunter mason cooper"
        " scarlett coral poppy basil herb don miles max rusty sandy robin jay dean earl duke norm stew lance pierce wade brook brooke summer autumn"
        " sky kit jo beth bella stella star angel destiny charity victor oscar sage melody carol eve gail harmony fern clay forest woody barb peg dot"
    ),
    "heard": _nouns(
        "voice count clap call beat drum music word instruction direction advice sound whistle breath breathing story metronome song tune bell cue-word rhythm tempo"
        " plan programme program text page list note schedule link recipe rule guideline heartbeat counting talk line-by-line thought"
    ),
    "adverb": _words("neatly slowly smoothly nicely softly quietly lightly gently tidily tall straight still low high wide far deep deeply fast quickly crisply sharply loosely cleanly well"),
    "me": _words("i me myself we us mine ours"),
    "my": _words("my our mine ours"),
    "they": _words("he she they him her them"),
    "role": _ROLES,
    "body": _BODY,
    "surface": _SURFACES,
    "kit": _KIT,
    "printed": _MARKS_ON_THINGS,
    "room": _ROOM,
    "unit": _UNITS,
    "number": _NUMBERS,
    "ordinal": _ORDINALS,
    "colour": _COLOURS,
    "looks": _LOOKS,
    "see": _SEE,
    "look": _LOOK,
    "show": _SHOW,
    "copy": _COPY,
    "media": _MEDIA,
    "screen": _SCREENS,
    "camera": _CAMERAS,
    "readout": _READOUTS,
    "toward": _TOWARD,
    "orient": _ORIENT,
    "handle": _HAND_VERBS,
    "medic": _PERCEPTION_HARMLESS,
    "dim": _DIMENSIONS,
    "spatial": _SPATIAL,
    "prep": _PREPOSITIONS,
    "where": _SPACE_ADVERBS,
    "be": _BE,
    "have": _HAVE,
    "do": _DO,
    "modal": _MODALS,
    "det": _DETERMINERS,
    "poss": _POSSESSIVES,
    "pause": list(",;:()!?.—"),
    "function": _words(
        "you yourself yourselves if when how why who whom whose while what although because since yes nope yeah yep everything something anything most many"
        " only even once twice still very quite rather maybe perhaps unless whether than though already ever often sometimes soon later today tomorrow"
        " yesterday tonight it its hi hello hey thanks thank where with for of as too more less much same such own every few monday tuesday wednesday"
        " thursday friday saturday sunday january february march april may june july august september october november december christmas easter"
        " research science evidence studies english british american irish scottish welsh french pilates yoga nordic romanian russian turkish bulgarian achilles gp nhs"
    ),
    "not": _words("not never no without nor neither none nothing nobody cannot"),
}


_NUMBER_SET = frozenset(_NUMBERS) | frozenset("seventy eighty".split())
_COLOUR_SET = frozenset(_COLOURS)


def _guess(word: str) -> tuple[str, ...]:
    """Classes of a word that no class lists, by its shape."""
    if word[0].isdigit():
        return ("number", "unit") if word.endswith(("cm", "mm", "m", "in", "kg", "lb", "°")) and not word.isdigit() else ("number",)
    if "-" in word:
        first, _, head = word.rpartition("-")
        if first in _NUMBER_SET and head in _NUMBER_SET:
            return ("number",)
        if first in _COLOUR_SET or head in _COLOUR_SET or head in ("splashed", "bleached", "topped", "print", "striped", "spotted", "tinted", "toned"):
            return ("colour",)
        if head in ("coloured", "colored", "striped", "spotted", "white", "blue", "green", "red", "grey", "black", "yellow", "pink", "purple"):
            return ("colour",)
        if head in ("width", "high", "height", "length", "deep", "wide"):
            return ("unit",)
    return ()


# How often the common words stand in a thousand words of trainers' talk; counted on the open labelled passages.
COMMON = {
    word: float(count)
    for count, words in (
        (78, "the"), (28, "and"), (27, "your"), (24, "a"), (20, "you it on , ."), (17, "to"), (14, "'s"), (11, "of"), (10, "in"), (9, "with that i for"),
        (8, "back if at not"), (7, "up one is"), (6, "so then will"), (5, "down out as right we : ! ? ;"), (4, "hand from left two let there side go are have"),
        (3, "knees do this foot by no hands feet me like or over three off arms knee"),
        (2, "first hips when ten now under see can way floor shoulder hip toes sit each until get heel front about here all them five be before turn rest"
            " feel leg both keep step hold arm four legs other what week come wall head elbow my"),
        (1, "stand round put bar between stop next lift forward day look chest top behind heels am goes minutes take same has they an press straight lower"
            " elbows push after shoulders too walk again breathe height little where how along last through just mat away good more pull eyes far got bend than bit tell"),
    )
    for word in words.split()
}  # fmt: skip

LEXICON = Lexicon(CLASSES, _guess, COMMON)
