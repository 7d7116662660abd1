"""The kind "vague": each passage is a test, and so is every example the kind carries.

Source of the marks: common practice, no source; GUIDE holds the cases that the
project's guide to wording settles by name.
"""

import pytest

from handouts.wording.engine import check_text
from handouts.wording.kinds import lexicon, vague
from handouts.wording.prose import sentences

FLAG = (
    "Land with [[a slight bend]] at the knees, arms up.",
    "Take [[a step back]] and let the band hang.",
    "Keep the hips fairly square and [[low]] through the turn.",
    "Stand with feet [[wide apart]].",
    "Drop the elbow [[a wee bit]] and try again.",
    "Your hands are [[too close together]].",
    "Step out [[a bit wider]] than last time.",
    "Chin [[slightly]] tucked, ribs soft.",
    "Bring your heels [[closer together]].",
    "Go [[deeper]] into the lunge.",
    "Widen your stance [[a little]] and sink.",
    "Roll the pelvis [[a fraction]] towards your navel.",
    "Shuffle your bum forward [[a touch]].",
    "Keep the circles [[small]] and slow.",
    "Make it [[bigger]], use your whole arm.",
    "Make the circle [[a bit bigger]] each time.",
    "Toes turned out [[slightly]].",
    "Push the chair away [[slightly]].",
    "Feet [[slightly]] apart, arms by your sides.",
    "Lower [[a little further]] on each breath.",
    "Don't go [[too deep]] on the first round.",
    "Take [[short, quick steps]] on the spot.",
    "Squat [[low]] and hold.",
    "Stay [[low]] on the way across.",
    "Reach [[further]] on the next one.",
    "Hold the bar with [[a wide grip]].",
    "Lean [[well forward]] in the chair.",
    "Point the knees out [[somewhat]].",
    "Elbows [[high]], fists by the cheeks.",
    "Lift the knee [[quite high]].",
    "Bend the knee [[partially]], then straighten it.",
    "Move your hips [[a smidge]] to the left.",
    "Stop [[just short of lockout]].",
    "The hand hovers [[just above the floor]].",
    "Keep the wheelchair [[a short distance]] from the wall.",
    "Roll [[a short way]] forward, then brake.",
    "Push off with [[big strokes]] on the rims.",
    "Lean the trunk [[slightly]] forward over the rims.",
    "Give me [[a decent gap]] between your feet.",
    "Leave [[some space]] between the elbows and the ribs.",
    "From guard, step off the line [[a bit]] and throw the jab.",
    "Sit [[deeper]] in your stance, hands up.",
    "Keep your stance [[nice and narrow]].",
    "Pliés are [[shallow]] today.",
    "[[Tiny pulses]], up an inch, down an inch.",
    "Work in [[a small range]], no pain.",
    "Affected arm: slide it forward [[a small amount]].",
    "Let the shin tip [[slightly]] over the toes.",
    "Turn your toes out [[a shade]].",
    "Swing the arm [[a little more]].",
    "[[Wider]]! [[Wider]]!",
    "Take [[a giant step]] to the side.",
    "Shift your weight [[slightly]] onto the left leg.",
    "Take it [[a bit lower]], mate.",
    "Hips [[higher]].",
    "Hips [[too high]], Dan.",
    "That's [[too wide]], bring them in.",
    "Just [[a bit more]].",
    "Hands [[further apart]].",
    "Walk your hands forward [[a good bit]].",
    "Tilt your head back [[slightly]].",
    "Let the knees drop [[partway]] to the floor.",
    "Bring the leg [[slightly]] across the body.",
    "Stand [[a bit]] away from the wall.",
    "Sit on the edge with knees [[slightly wider]] than usual.",
    "Spread your fingers [[wide]].",
    "Start with [[little bounces]].",
    "Both arms out [[wide]], thumbs up.",
    "Draw [[a big arc]] over your head.",
    "Make [[large circles]] with your hips.",
    "Lift [[an even smaller circle]].",
    "Feet need to be [[much further back]].",
    "Move [[way back]] from the bag.",
    "Keep your knees [[slightly]] bent.",
    "The knees are [[slightly]] bent.",
    "With knees [[a little]] bent, swing the arms.",
    "Bend [[slightly]] at the waist.",
    "Hold the ball away from your body [[a bit]].",
    "Rotate the trunk [[a small degree]] to the right.",
    "Put the cane [[slightly]] ahead of you.",
    "On your toes, [[higher]], and lower.",
    "Take [[longer strides]].",
    "Lift your heel [[ever so slightly]].",
    "Sink down [[a bit]] between counts.",
    "Let the hips go [[back some more]].",
    "[[A gentle bend]]",
    "Let your head hang [[low]].",
    "Crouch [[lower]] than that.",
    "Don't lean back [[too much]].",
    "Open the arms, [[not too wide]].",
    "Take [[a small hop]] to the left.",
    "Have your feet [[reasonably close together]].",
    "Use [[a narrower stance]] for this one.",
    "Crack on, [[smaller steps]], Siobhán.",
    "Keep the ball [[close]].",
    "Arms [[slightly]] out from your sides.",
    "Kick [[high]], point the toe.",
    "Drop your backside [[a good bit lower]].",
    "Step [[wide]] to the right.",
    "Raise the arm [[slightly less]] each week.",
    "Cadet, arms [[higher]] on the swing.",
    "Step off with a full, [[generous stride]].",
    "Arch the low back [[a hair]].",
    "Ease the shoulders down [[a touch]].",
    "Hands [[a good width]] apart.",
    "Let the bell drift out in front [[a bit]].",
    "Move the bench back [[a tad]].",
    "Step the back foot [[a long way]] back.",
    "Scooch over [[a little]].",
    "Feet [[fairly wide]], toes out.",
    "Squeeze, then let the knees fall open [[a little]].",
    "Keep the rims moving with [[long pushes]].",
    "Kneel with your knees [[wide]].",
    "[[Wide knees]], big toes touching.",
    "Lift the chin just [[a fraction]].",
    "Start with your hands [[low]] on the rope.",
    "Bring your hands in [[closer]].",
    "Throw [[short hooks]].",
    "Sink into [[a shallow squat]].",
    "Bend the front knee [[deeply]].",
    "Raise both arms [[partway]].",
    "Rock [[slightly]] forward and back.",
    "Sway gently, [[not too far]].",
    "Let the hips travel [[a bit further back]].",
    "Arms out [[wide]], ladies.",
    "Kick up [[nice and high]].",
    "Keep those kicks [[small]].",
    "Make your steps [[tiny]].",
    "Keep the lift [[low]].",
    "[[Not so wide]], Grace.",
    "[[A little lower]]. Good.",
    "[[A touch more]], and hold.",
    "That's [[a bit narrow]], open it out.",
    "Tilt the pelvis [[ever so slightly]] backwards.",
    "Shift the hips [[a teeny bit]] to the left.",
    "Open your stance [[somewhat]].",
    "Heels [[fairly close together]].",
    "Push the hips [[well back]].",
    "Trunk flexed [[moderately]].",
    "Hip abduction, [[small range]], ten reps.",
    "Keep the arc [[shallow]].",
    "Take your elbows [[wider]].",
    "Get [[lower]]!",
    "Step [[further out]].",
    "Bring your knees up [[higher]].",
    "Your hands have come [[too far forward]].",
    "Bump your bum back [[a smidge]].",
    "Dip [[slightly]], drive, catch.",
    "Hang [[slightly]] forward over the barre.",
    "Lean away from the rail [[a little]].",
    "Push the floor away and rise [[slightly]].",
    "Make your base [[wider]].",
    "A [[slightly]] staggered stance works best.",
    "With [[slightly]] bent elbows, lower the bells.",
    "Keep [[a small gap]] between your heels.",
    "There should be [[a slight curve]] in your low back.",
)
"""Passages with a fault, the marked words between the brackets."""

LEAVE = (
    "Bend both knees with your back long until both dumbbells rest on the surface.",
    "Breathe out each time a heel goes down, long and soft.",
    "A straight lane about ten walking steps long.",
    "Longer way out: count to eight.",
    "Feels wrong: your hips roll back. Raise your right leg less high.",
    "Step out a bit wider than your hips.",
    "You'll feel slightly tired after this.",
    "Take a little water between sets.",
    "Rest a little longer if you need to.",
    "Go a bit slower on the way down.",
    "Use a slightly heavier bell next week.",
    "Lower the bar to your chest.",
    "Lower back flat on the bench.",
    "Press the small of your back into the mat.",
    "Lift as high as you like.",
    "Bend as far as is comfortable.",
    "Step back about two foot lengths.",
    "Take a big step, about two of your foot lengths.",
    "Raise the arm slightly, until the thumb reaches the shoulder.",
    "Keep the elbows close to your ribs.",
    "Hands just outside the shoulders.",
    "Hands a little below the collarbones.",
    "Use a small towel under the head.",
    "Sit on a low bench.",
    "Take the short band.",
    "Take a deep breath.",
    "Breathe a little deeper.",
    "A long exhale, then rest for a bit.",
    "Wait a little while before you stand.",
    "Your calves may feel a bit tight tomorrow.",
    "It gets a bit boring, I know.",
    "Little by little it gets better.",
    "A little soreness is fine.",
    "Keep the effort low today.",
    "Set the volume low.",
    "It's a long way home from here.",
    "You have come a long way.",
    "There is a wide range of options.",
    "How far you go is up to you.",
    "Stop when you have gone far enough.",
    "Stand tall with a long neck.",
    "Keep your knees soft.",
    "Arms long by your sides.",
    "Move the pin one hole lower.",
    "Sit a hand's width closer to the desk.",
    "Lean back a bit, until your shoulder blades touch the chair.",
    "Feet slightly wider than hip-width.",
    "Hold it for a few seconds more.",
    "Do a few more.",
    "He dropped a bit too low and lost his balance.",
    "My hips drop a bit when I get tired.",
    "Ease off a bit if it hurts.",
    "Back off a little if it stings.",
    "Slow down a bit.",
    "So far, so good.",
    "Far from it.",
    "Your bodyweight is a bit high for this band.",
    "The far end of the mat has the fold.",
    "The step is 20 cm high.",
    "Hop on the high box by the wall.",
    "Use the upper hole, not the lower.",
    "Big toe on the floor, little toe too.",
    "Shoulders away from your ears.",
    "Turn a quarter turn to the right.",
    "Keep the chair within arm's reach.",
    "That's a big ask on a Monday.",
    "Small steps add up.",
    "Shorten the band by one hand width.",
    "Rotate the head to 2 o'clock, slightly right.",
    "Raise your arms to shoulder height.",
    "Knees wide enough for your belly.",
    "Drink a bit more than usual.",
    "It should be a little uncomfortable but not painful.",
    "High knees for twenty seconds.",
    "Close your hands round the rope.",
    "Come up slowly, a little at a time.",
    "The wide end of the towel goes under your foot.",
    "Bend your knees until they touch the bench, then rise a little, one fist.",
    "Turn it down a bit, would you?",
    "If you feel a little dizzy, sit down.",
    "Let's have a bit of fun.",
    "The right side may be slightly weaker.",
    "It takes a bit of practice.",
    "Your pulse should be a bit higher than at rest.",
    "A small cushion goes under your knees.",
    "A short walk round the block will do.",
    "Keep your spirits high.",
    "My left foot is slightly bigger than my right.",
    "I was way behind on my paperwork.",
    "A lower gear is easier on the knees.",
    "That's the high point of my week.",
    "Lift the bell an inch higher.",
    "Half a hand lower, please.",
    "Set the timer a bit longer.",
    "Turn the radio down a little.",
    "The band should feel slightly loose.",
    "Have a little patience with the left side.",
    "Feel a slight stretch in the calf.",
    "A slight pull at the back of the thigh is fine.",
    "You should be slightly out of breath.",
    "Raise the knee to hip height.",
    "Take a small bottle of water.",
    "Use the higher step at the back of the hall.",
    "Close the door before you start.",
    "Take your time on the long runs.",
    "Rest for a short while.",
    "The long head of the biceps crosses two joints.",
    "Keep a chair within arm's reach, a little to hold on to.",
    "A short warm-up, then the main set.",
    "Your grip will be a little weaker today.",
    "Add a bit of weight next week.",
    "Low back pain is common.",
    "We did a short session on Monday.",
    "It was a big step for her to come back.",
    "The wide mat is in the cupboard.",
    "Squat until your thighs touch the stool, no lower.",
    "Your feet are as wide as your shoulders.",
    "How wide you stand is up to you.",
    "Grow tall, spine long.",
    "Not bad at all, a little better each week.",
    "I was a bit late, sorry.",
    "Keep the bar so close that it brushes your shins.",
    "Feet a foot apart.",
    "Open your hands wide enough to hold the ball.",
    "Most people sit far too much.",
    "High blood pressure means no breath holding.",
    "A wide smile, please.",
    "Ten more, and we are nearly there.",
    "Have a wee rest.",
    "Use less weight if the back rounds.",
    "A deep stretch is not the aim.",
    "Close to the end now.",
    "The next step is a small one: book a review.",
    "Short of breath? Stop.",
    "Lift a little less weight.",
    "The pain went a bit further down the leg.",
    "If pain spreads further down the leg, stop.",
    "Feet on the floor, hips a little higher than your knees.",
    "Keep the knee slightly behind the toes.",
    "It is slightly more work than it sounds.",
    "This one goes a bit deeper into how muscles grow.",
    "Turn slightly, until your shoulder touches the wall.",
    "Tap the toe just in front of the other foot.",
    "A small, quiet room is best.",
    "Long day? Take the short version.",
)
"""Near misses, without a mark."""

KNOWN_MISSES = (
    "Set your feet a comfortable bit apart.",
    "Take a half-size step.",
)
"""Faults that are not found yet; a passage that comes to be found moves to FLAG."""


def found(text: str) -> list[tuple[int, int]]:
    """Start and end of what this kind finds, whatever the other kinds make of the text."""
    spans, at = [], 0
    for sentence in sentences(text, lexicon("en").known):
        for first, last in sorted(vague.ENGLISH.find(sentence)):
            start, end = sentence.starts[first], sentence.ends[last - 1]
            if start >= at:
                spans.append((start, end))
                at = end
    return spans


def marked(text: str) -> str:
    """`text` with what the kind finds between brackets."""
    parts, at = [], 0
    for start, end in found(text):
        parts += [text[at:start], "[[", text[start:end], "]]"]
        at = end
    return "".join(parts) + text[at:]


def plain(passage: str) -> str:
    return passage.replace("[[", "").replace("]]", "")


@pytest.mark.parametrize("passage", FLAG + vague.ENGLISH.flag)
def test_marks_these_words_and_no_others(passage):
    assert marked(plain(passage)) == passage


@pytest.mark.parametrize("passage", LEAVE + vague.ENGLISH.leave)
def test_leaves_alone(passage):
    assert marked(passage) == passage


@pytest.mark.parametrize("passage", KNOWN_MISSES)
def test_still_misses(passage):
    assert marked(passage) == passage


@pytest.mark.parametrize("passage", FLAG)
def test_case_and_spaces_make_no_difference(passage):
    text = plain(passage)
    wide = text.upper().replace(" ", "  ")
    assert [wide[start:end].split() for start, end in found(wide)] == [
        text[start:end].upper().split() for start, end in found(text)
    ]


GUIDE = (
    "[[slightly]] out",
    "step [[a little wider]]",
    "[[not too far]]",
    "take [[a big step]]",
    "hold it [[way in front]]",
    "hands [[wide]]",
    "stay [[low]]",
    "[[small circles]]",
    "[[a slight bend]]",
    "arms hover [[just off the mat]]",
)
"""What the guide marks, in its own words, with a verb where it gives none."""

GUIDE_LEAVES = (
    "turn them slightly out, about two fingers",
    "a little wider than your hips",
    "take a big step, about two of your foot lengths",
    "slightly tired",
    "a little water",
    "elbows close to your ribs",
    "hands just outside the shoulders",
    "a few inches",
    "lean as far as you like",
    "turn as far as is comfortable",
    "soft knees",
    "arms a bit higher than your shoulders",
)


@pytest.mark.parametrize("passage", GUIDE)
def test_the_guide_marks(passage):
    assert [mark for mark in check_text(plain(passage)) if mark.kind == "vague"]


@pytest.mark.parametrize("passage", GUIDE_LEAVES)
def test_the_guide_leaves(passage):
    assert marked(passage) == passage


def test_a_measure_in_the_next_sentence_does_not_count():
    assert marked("Take a big step. It is two foot lengths.") == "Take [[a big step]]. It is two foot lengths."


@pytest.mark.parametrize(
    ("text", "unit"),
    [
        ("Take a big step to the left.", "one foot length to your left"),
        ("Turn your toes slightly out.", "clock hour"),
        ("Draw small circles.", "palm"),
        ("Arms hover just off the mat.", "fist"),
        ("Lift the elbow a bit higher.", "level with your shoulders"),
        ("Hands wide on the bar.", "thumb length"),
    ],
)
def test_the_advice_names_a_unit_that_fits(text, unit):
    (mark,) = [mark for mark in check_text(text) if mark.kind == "vague"]
    assert unit in mark.suggest
    assert mark.rewrite is None  # only the author knows how far
