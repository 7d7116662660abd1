"""The kind "gaze": each passage is a test, and so is every example the kind carries.

Source of the marks: common practice, no source; GUIDE holds the cases that the
project's guide to wording settles by name.
"""

import pytest

from handouts.wording.engine import check_text
from handouts.wording.kinds import gaze, lexicon
from handouts.wording.prose import sentences

FLAG = (
    "[[Look straight ahead]] and breathe out.",
    "[[Gaze at the floor]] a body length in front.",
    "[[Eyes forward]], chest up.",
    "[[Keep your eyes on the horizon]] as you squat.",
    "[[Eyes up]]!",
    "[[Eyes down]], love.",
    "[[Eyes to the sky]], heart open.",
    "[[Fix your gaze on a point]] on the wall.",
    "Hold your balance by [[focusing on a spot]] ahead.",
    "[[Focus on a spot]] on the wall.",
    "[[Look over your left shoulder]].",
    "Turn your head and [[look behind you]].",
    "[[Look toward your top hand]].",
    "[[Look up]] as you arch, [[look down]] as you round.",
    "[[Lift your eyes to the ceiling]].",
    "[[Drop your gaze to the mat]].",
    "[[Lower your gaze]].",
    "[[Gaze past your big toe]].",
    "[[Keep looking forward the whole way]].",
    "[[Stare straight down at the mat]].",
    "[[Your gaze rests on your fingertips]].",
    "[[Follow your hand with your eyes]].",
    "[[Track the thumb]] with your eyes.",
    "[[Let your eyes follow your hand]].",
    "[[Watch your fingertips]] as the arm circles.",
    "[[Watch the ball]] onto the foot.",
    "[[Find a point on the wall in front of you and hold it]].",
    "[[Pick something to stare at]] and don't let go of it.",
    "Balance: [[choose a fixed point to look at]].",
    "[[Look out over the fingers of your front hand]].",
    "[[Eyes on the floor]] a metre ahead of you.",
    "[[Keep your eye on the ball]].",
    "Neck: [[eyes level]], chin tucked.",
    "[[Keep your gaze soft and forward]].",
    "[[Gaze forward]].",
    "[[Gaze up]]",
    "Chest proud, [[looking straight ahead]].",
    "With your chin tucked, [[look at your navel]].",
    "[[Don't look at your feet]] when you walk.",
    "No [[looking down]].",
    "[[Avoid looking down at the bar]].",
    "Try not to [[look down on the stairs]].",
    "Keep your head up by [[looking at the far wall]].",
    "[[Eyes front]], squad, shoulders back.",
    "[[Eyes right]]!",
    "[[Eye line]] stays on the horizon.",
    "[[Keep your eyeline just above the horizon]].",
    "[[Turn your eyes to the left]], then your head.",
    "[[Cast your eyes down the slope]].",
    "[[Glance over your shoulder]] before each stroke.",
    "[[Peer over the bar]].",
    "[[Let your gaze drift up]].",
    "[[Your eyes stay on the tip of the sword]].",
    "[[Train your eyes on the door]] handle.",
    "[[Point your eyes at the ceiling]].",
    "[[Send your gaze down the nose]].",
    "Drishti: [[gaze at the navel]].",
    "[[Keep a fixed stare on the far post]].",
    "[[Set your gaze]] about two metres ahead.",
    "[[Look towards the ceiling]] with your chin lifting.",
    "[[Look to the left]], then to the right.",
    "[[Look left]], then right.",
    "[[Aim your eyes at the top corner of the door]].",
    "[[Look through your legs]].",
    "[[Eyes ahead]], boys, elbows in.",
    "As you twist, [[look past your shoulder]].",
    "[[Have a look over your shoulder]] and come back.",
    "Turn and [[take a look behind you]].",
    "[[Sneak a peek over the wall]] with your chin level.",
    "Stand tall [[looking forward]].",
    "You should be [[looking at the floor]].",
    "Chest lifted, you're [[looking at the ceiling]].",
    "Keep your [[line of sight]] level.",
    "Chin and [[eyes forward]].",
    "Head and [[eyes straight ahead]], please.",
    "[[Look a metre ahead]] of your feet.",
    "[[Look two metres in front]] of you.",
    "[[Gaze a few feet ahead]].",
    "[[Look about a car's length ahead]].",
    "[[Look well ahead]] on the bike.",
    "[[Look in the direction]] of travel.",
    "[[Spot the door]] as you turn.",
    "[[Concentrate on a point]] on the wall.",
    "[[Lock on to a spot]] and hold it.",
    "[[Fix on the far post]].",
    "[[Don't take your eyes off the ball]].",
    "[[Your eyes never leave the bar]].",
    "[[Let the eyes lead]] and the head follow.",
    "[[Eyes lead]], head follows.",
    "[[Gaze: floor]], two metres ahead.",
    "[[Eyes: level]].",
    "Head neutral, [[gaze — horizon]].",
    "[[Keep the letter in focus]] while you turn the head.",
    "[[Fixate on the thumb]] and turn the head.",
    "[[Admire the ceiling]] for three breaths.",
    "[[Study the floor]] between your hands.",
    "[[Contemplate your navel]] and round the back.",
    "[[Scan the horizon]] from left to right.",
    "[[Throw a glance over your shoulder]].",
    "[[Give the wall a good stare]].",
    "Keep [[eye contact]] with the wall.",
    "[[Eyes six feet ahead]].",
    "[[Eyes in front]], shoulders down.",
    "[[Eyes and chest up]].",
    "[[Watch a spot]] on the wall.",
    "[[Don't stare at the floor]].",
    "[[Stop staring at the ground]].",
    "[[Eyeball the far wall]].",
    "With [[your gaze straight ahead]], sit down.",
    "[[Look down your nose]].",
    "[[Look between your feet]].",
    "Head up, [[look at the wall]].",
    "[[Eyes on your toes]].",
    "[[Keep looking at your front hand]].",
    "[[Gazing softly down]], fold.",
    "[[Let your eyes rest on the floor]].",
    "[[The gaze follows the hand]].",
    "The head follows [[the gaze up]].",
    "[[Look toward the window]].",
    "[[Look beyond your fingertips]].",
    "[[Let the eyes drift to the ceiling]].",
    "[[Look high]], then sink.",
    "Twist and [[look back over the shoulder]].",
    "Soft knees, soft [[eyes on the floor]].",
    "[[Keep your eyes open and on the wall]].",
    "Everyone [[look up]] now.",
    "Let's [[look over the right shoulder]].",
    "On the next breath we [[look up]], then fold.",
    "[[Eyes where your hand]] is.",
    "[[Flick your eyes up]] before each rise.",
    "[[Trace the ceiling edge with your eyes]].",
    "[[Don't let your eyes wander to the floor]].",
    "No [[peering at the ground]].",
    "[[Watch your hand]] as it sweeps up.",
    "[[Park your gaze on the skirting]] board.",
    "[[Nail your eyes to the far post]].",
    "[[Run your eyes up the wall]].",
    "[[Vision forward]], chin back.",
    "[[Sweep your gaze along the arm]].",
    "[[Have a gander over your shoulder]].",
    "[[Gawp at the ceiling]] for a breath.",
    "[[Ogle the rafters]].",
    "[[Eyes on your partner's chest]], hands up.",
    "[[Track the ball]] from hand to hand.",
    "[[Scan left]], then right, before you cross.",
    "[[Find a focal point]] and breathe.",
    "[[Pick something]] that isn't moving and hold on to it.",
    "Have [[a good stare at the skirting]].",
    "Turn the head and [[let the eyes go]] with it.",
    "[[Eyes first]], then the head.",
    "[[Don't let your eyes drift to the side]].",
    "[[Look under your armpit]] as you roll.",
    "[[Look back between your knees]].",
    "[[Look at the lifeguard hut]] as you tread water.",
    "[[Set your sights on the far wall]].",
    "[[Focus straight ahead]].",
    "[[Focus ahead]], ribs down.",
    "Trunk upright, [[gaze fixed on a point]].",
    "With [[gaze forward]], take a step.",
    "[[Keep your look forward]].",
    "Keep [[watching the ball]].",
    "[[Eye the ceiling]] as you arch.",
    "[[Follow the hand round with your head and eyes]].",
    "[[Pupils up]].",
    "Head still, [[gaze horizontal]].",
    "[[Eyes anywhere but the floor]].",
    "Elbows in, [[eyeballs forward]].",
    "[[Look where]] your hand goes.",
    "Tilt the head back and [[see the ceiling]].",
)
"""Passages with a fault, the marked words between the brackets."""

LEAVE = (
    "Close your eyes and breathe.",
    "Keep your eyes closed.",
    "Eyes shut, hands on hips.",
    "Open your eyes when you are ready.",
    "Get your eyes under the bar before you unrack it.",
    "Look after your wrists.",
    "Look forward to a rest day.",
    "I look forward to seeing you.",
    "Look for a bench with wheels.",
    "Look out for dizziness.",
    "Look, it is only ten reps.",
    "Focus on your breath.",
    "Focus on the left leg today.",
    "The focus of this block is strength.",
    "You look tired today.",
    "It looks like rain.",
    "Watch your step on the ramp.",
    "Watch your ego.",
    "Watch for dizziness.",
    "Face the floor.",
    "Chin level, nose toward 12 o'clock.",
    "Take a look at your plan for next week.",
    "Have a good look round the gym.",
    "Let the doctor look at it.",
    "Sweat in your eyes stings, so bring a towel.",
    "Hands level with your eyes.",
    "Rest the towel over your eyes.",
    "Relax the skin around the eyes.",
    "He stared at me for a minute.",
    "Find a spot where nobody will trip over you.",
    "Pick a spot with nothing overhead.",
    "Find a point of balance and stay there.",
    "Look up the opening hours before you come.",
    "Look back over the week and note the best day.",
    "Look ahead to the next block.",
    "Set your sights on ten reps.",
    "I keep looking at the same old plan.",
    "Raise the bar to eye level.",
    "The look of the thing doesn't matter.",
    "You may see spots in front of your eyes.",
    "Keep an eye out for loose mats.",
    "Roll your shoulders, not your eyes.",
    "We will look at sets of eight next week.",
    "Soft eyes, soft jaw, slow breath.",
    "In the blink of an eye it is over.",
    "Blurred vision means stop at once.",
    "Double vision or a headache: stop.",
    "That is a fine view from the top.",
    "It's a feast for the eyes.",
    "Fix the band round the door handle.",
    "Find your spot on the mat.",
    "Focus on form.",
    "Focus on the muscle at the back of your thigh.",
    "Pick a weight that lets you finish.",
    "Look into a second rail for the stairs.",
    "If you look down and your toes have vanished, stop.",
    "I'm looking at your feet and they are fine.",
    "We're looking at three sets today.",
    "Look down to check that both knees point forward.",
    "Have a look at the plan tonight.",
    "Take a good look at the timetable.",
    "Keep that in view when you plan your week.",
    "In focus this month: grip strength.",
    "Keep your goal in sight.",
    "The eyes of a hawk would not find it.",
    "Study the log each Sunday.",
    "Scan your body from head to toe.",
    "Spot your partner from behind the bench.",
    "Spot me on this one.",
    "Eyes: sore, red, dry? See the pharmacist.",
    "You can look forward to sore calves tomorrow.",
    "Use your own eyes to confirm that the collar is shut.",
    "Watch your fingers when you shut the clamp.",
    "Watch your toes when you set the bell down.",
    "Keep your eyes on the prize.",
    "Look at the front row.",
    "Look at your neighbour's feet.",
    "Eyes peeled for trip hazards.",
    "We look at your form every month.",
    "She looked up and smiled.",
    "You look great today.",
    "Looking ahead, week five adds a set.",
    "Looking back, the plan was too full.",
    "Look past the numbers this week.",
    "Look toward the weekend and keep two days free.",
    "Hook the strap to the eye bolt.",
    "Things are looking up.",
    "Look at your diet before you blame your knees.",
    "Look up to your coach, by all means.",
    "We see eye to eye on rest days.",
    "Look beyond the scales.",
    "Tapping beats staring at it.",
    "Stare down the last rep and rack it.",
)
"""Near misses, without a mark."""

KNOWN_MISSES = (
    "Keep the horizon in view.",
    "Keep the wall in sight as you step.",
    "Stargaze for three breaths.",
)
"""Faults that are not found yet; a passage that comes to be found moves to FLAG."""


def found(text: str) -> list[tuple[int, int]]:
    """Start and end of what this kind finds, whatever the other kinds make of the text."""
    spans, at = [], 0
    for sentence in sentences(text, lexicon("en").known):
        for first, last in sorted(gaze.ENGLISH.find(sentence)):
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


@pytest.mark.parametrize("passage", FLAG + gaze.ENGLISH.flag)
def test_marks_these_words_and_no_others(passage):
    assert marked(plain(passage)) == passage


@pytest.mark.parametrize("passage", LEAVE + gaze.ENGLISH.leave)
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


@pytest.mark.parametrize(
    "text", ["look at the ceiling", "eyes forward", "fix your gaze on a spot", "keep your eyes on the ball"]
)
def test_the_guide_marks(text):
    assert [mark.kind for mark in check_text(text)] == ["gaze"]


@pytest.mark.parametrize(
    "text", ["chin level, nose toward 12 o'clock", "face the floor", "close your eyes", "eyes under the bar"]
)
def test_the_guide_leaves(text):
    assert check_text(text) == []


@pytest.mark.parametrize(
    ("text", "rewritten"),
    [
        ("Look at the ceiling.", "Point your nose toward the ceiling."),
        ("Eyes forward, chest up.", "Keep your chin level and your nose straight ahead, chest up."),
        ("Turn, then look over your left shoulder.", "Turn, then point your nose toward your left shoulder."),
        ("Eyes on the far wall.", "Point your nose toward the far wall."),
    ],
)
def test_a_plain_order_to_the_eyes_can_be_given_to_the_nose(text, rewritten):
    (mark,) = check_text(text)
    assert text[: mark.start] + mark.rewrite + text[mark.end :] == rewritten
    assert check_text(rewritten) == []


@pytest.mark.parametrize(
    "text", ["You should be looking at the ceiling.", "Follow your hand with your eyes.", "Lower your gaze."]
)
def test_no_rewrite_where_the_sentence_would_break(text):
    (mark,) = check_text(text)
    assert mark.rewrite is None


@pytest.mark.parametrize(
    ("text", "advice"),
    [
        ("Look over your right shoulder.", "over your right shoulder"),
        ("Watch your thumb as the arm circles.", "nose follows your thumb"),
        ("Pick a spot on the wall and stare at it.", "one fingertip on the wall"),
        ("Don't look down.", "chin level"),
        ("Look up at the ceiling.", "chin"),
        ("Stare at the floor.", "breastbone"),
    ],
)
def test_the_advice_is_about_this_cue(text, advice):
    (mark,) = check_text(text)
    assert advice in mark.suggest
