"""Words of looking, and of what a look is aimed at."""

from handouts.wording.lexicons.forms import nouns, verbs, words

LOOKS = words(
    "look looking gaze gazing stare staring peer peering glance glancing peek peeking peep peeping squint squinting glare glaring gawp gawping"
    " gawk gawking ogle ogling gander glower glowering"
)
"""Verbs of looking, in the forms an instruction has."""

WAYS = words(
    "up down ahead forward forwards straight out back backward backwards left right sideways over behind across past beyond away toward towards"
    " upward upwards downward downwards outward outwards diagonally above below under between round around along through into onto off level high low"
    " front doon inward inwards aside skyward skywards heavenward heavenwards dead directly slightly"
)
"""Where a look can go, without a thing that it is aimed at."""

LEADS = words(
    "at to toward towards on upon over past along through into onto beyond across out up down ahead forward forwards straight above below beneath between"
)
"""Words after "eyes" or "gaze" that say where they are aimed."""

AIMS = words(
    verbs(
        "jump hold maintain soften fix set keep lift raise drop lower turn cast send train point take move bring direct aim shift sweep rest hold lock pin focus glue park"
        " plant steady swing slide draw trace level land place put anchor run throw fasten settle return pull tip lead guide trail tilt let lose"
        " flick dart nail wander carry rivet concentrate stick leave"
    )
)
"""Verbs that aim the eyes."""

FIXED = words(
    "fixed glued locked trained pinned set focused focussed riveted stuck anchored parked resting lifted raised lowered dropped cast directed pointed pointing aimed steady fastened settled nailed horizontal neutral level vertical"
    " downcast upturned perpendicular diagonal zeroed honed stabilised stabilized stable held maintained"
)
"""How the eyes are kept."""

EYES_DO = words(
    verbs(
        "follow track travel chase lead drop lift rise look turn move sweep rest gaze stare land settle point aim trail go stay shift wander drift climb fall find lock fix bore burn drill run focus face remain keep float leave come stray slip dip sink"
    )
)
"""What the eyes are told to do."""

NOT_GAZE = words(
    "close closes closing closed shut shuts shutting open opens opening opened rub rubbing cover covered blink squeeze screw wipe dry sore tired"
    " red watery itchy blurred double stinging sting sunken heavy flutter"
)
"""Words beside "eyes" that do not aim them."""

OTHERS = words(
    "screens phones scale scales me us my mine our ours him her his hers them their theirs it that this these those everyone everybody each mother father mum mom dad gran nan grandad husband wife brother sister dog cat coach instructor teacher trainer therapist"
    " physio leader neighbour neighbor mirror mirrors reflection photo photos picture pictures video videos screen clip diagram"
    " chart poster image images drawing sketch clock timer watch watches stopwatch monitor display number numbers label labels dial gauge card"
    " sheet page log diary plan timetable calendar notes website options results scores week weeks month months past year progress example illustration demo figure"
    " yourself laces posture alignment fingernail fingernails toenail toenails nails split splits watts cadence readout pedometer thermometer"
    " phone tablet camera lens how what who which whether if where bruise skin swelling wound scar colour color next cost price data list weekend summer spring autumn winter holiday holidays future race season march april june july august september october november december january february monday tuesday wednesday thursday friday saturday sunday"
)
"""What one looks at to learn, to copy or to check, and not to set the head."""

CHECKING = words("are is see adjust check checking whether sure notice make should must note compare tell confirm")

TARGETS = words(
    nouns(
        "spot point mark wall ceiling floor horizon sky tree lamp light lampshade picture-rail door window corner something object candle flame dot crack"
        " knot tile brick leaf post star cloud roof rafter beam balcony fence skyline skirting skirting-board thumb thumbnail fingertip finger"
        " heaven jump fence gate barrier obstacle jetty doorknob door-handle doorhandle knob light-switch keyhole letterbox chimney steeple spire buoy lighthouse headland shore shoreline hilltop"
        " summit treetop treeline rooftop lamppost flag hoop basket backboard crossbar bullseye dartboard vase painting calendar plant doorframe doorway"
        " thing target scoreboard stage goalpost sign pole mast hill skylight ground mat distance middle-distance"
    )
)
"""What one fixes on to keep still."""

FOLLOWED = words(
    nouns(
        "thumb thumbnail hand fingertip finger ball fist knuckle elbow horizon skyline ceiling floor wall ground puck shuttle shuttlecock target pendulum pen toe bar bell kettlebell"
    )
)
"""What is watched so that the head turns with it."""

FAR_THINGS = words(
    nouns("ceiling wall horizon sky navel skyline star cloud rafter corner door floor window post lampshade beam roof")
)
"""What is looked at only to bring the head there."""

LEXICAL_UNITS = words([*nouns("metre meter yard inch pace step"), "feet", "foot", "m"])
"""Lengths after "eyes": "eyes six feet ahead"."""

IDEAS = words(
    "advice forecast weather excuses excuse headlines diet sleep habits habit form technique training session sessions programme program schedule routine work stress pain fear doubt doubts problem"
    " problems setback hype scales weight load loads rep reps set sets effort cause causes reason reasons evidence research study studies science"
    " bigger whole way side bright facts fact cost costs goal goals aim aims shoes kit bedtime breakfast meals food history big trend average"
    " mistakes mistake curtain calories fats sugar story medication tablets dose symptoms knowledge option choices"
)
"""What "look at" and "look past" take that no eye can see."""
