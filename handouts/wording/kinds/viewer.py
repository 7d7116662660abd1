"""The kind "viewer": a direction taken from the watcher, the camera, the screen or the writer."""

from collections.abc import Iterator

from handouts.wording.grammar import Phrases
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.lexicons.en import LEXICON
from handouts.wording.prose import Sentence

_STANDS_FOR = {
    # where the watching is done from
    "watcher": """
        me
        us
        the|your|my|this|our _? @camera|@screen
        the|your|my|this|our instructor|coach|trainer|teacher|therapist|physio|leader|demonstrator|presenter|model|photographer|person
        the|your|my|this|our person|one|side watching|filming
        where i|we am|'m|sit|stand|was
        where the|your|my @camera|@screen|coach|trainer|teacher|instructor
    """,
    "aim": """
        toward|towards
        facing|opposite
        nearest|closest|nearer|closer|near|next|furthest|farthest|further|farther to|from?
        away from
        side-on|sideways|front-on|face-on|head-on|broadside|square|square-on|parallel|perpendicular|diagonal|profile|side|edge-on|three-quarters|end-on|angled|back-to-front|crossways|sidelong|half-turned on? to|with
        in front of
        pointing|pointed|points|point|aimed|aim|aiming|directed|tilted|angled at|to|toward|towards
    """,
}

_PHRASES = Phrases(
    LEXICON,
    _STANDS_FOR,
    toward="""
        [ {aim} {watcher} ]
        ^|to|and|then|you|please|should [ face|faces ] {watcher}
        [ face|faces|facing {watcher} ]
        @orient _*3 [ to|at|from|for {watcher} ]
        [ back|backs|chest|front|side|shoulder|shoulders|palm|palms|feet|heels|soles|toes|knees|hip|face|head|bum|bottom to|at {watcher} ]
        [ towards|toward|to|facing|at|nearest|from my hand|side|voice|right|left|end|chair|seat|desk|window|station ]
        [ in my direction ]
        @orient _*3 [ my way ]
        [ on|to|from|towards|toward my right|left|side ] !@body
        [ my right|left ] !@body|@kit|hand-side
        [ my right|left hand ] <to|on|towards|toward
        [ the|your|our @role 's right|left ]
        [ @name 's right|left ] !@body
        [ stage left|right ]
        [ house|camera|screen left|right ]
        [ upstage|downstage|camera-left|camera-right|stage-left|stage-right|screen-left|screen-right ]
        [ left|right|top|bottom|side|edge|half|corner|middle|centre|center of the|your|my|this @screen|page|picture|photo|frame|image|video|stage|shot ]
        [ on|at|to|towards the left|right|side _*3 of the|your|my|this screen|page|picture|photo|image|frame|display|shot|stage|monitor ]
        [ on the|your left|right as you look|see|watch|face|view ]
        [ as you|we look|watch|view|face at? me|it|the ]
        [ as seen|viewed|watched from ]
        [ seen|viewed|watched|looking|looked from|at from? the|my|behind|front|above|side|here ]
        [ viewed|seen from ]
        [ from my|the|our|a|your point|angle|side|view|viewpoint|vantage|perspective|seat of? view? ] <viewed|seen
        [ from the|my|your @camera|viewer|watcher|audience 's _? ]
        [ @camera side ]
        [ @camera 's left|right|side ]
        [ so|so that|where i|we can|could just? see|watch ]
        [ so|that i|we can|could|am able see|watch|check|film|get|spot ] your|the|both|you
        [ so|that you|they|everyone|everybody|others|people|we can|could see my|me ]
        [ let|lets|letting me|us|the see ] your|the|both|how
        [ show|shows|showing|give me|us|the|your @camera? your|the|both @body ]
        [ show|present|give your|the|both|a @body|profile to {watcher} ]
        [ in profile|shot|frame|view ]
        [ i|we should|can|could|want|need|will|'ll|must|be|able|like|to*2 see ] your|the|both|all|daylight
        [ out of? shot|frame ]
        [ off-camera|on-camera|onscreen|on-screen|offscreen ]
        [ mirror|opposite image of me|mine ]
        [ behind|beside|before|opposite|under|below|above|left|right of? where i|we am|'m|stand|sit|are ]
        [ across from me|us ]
        [ where|when i|we am|'m standing|sitting|facing|looking ]
        [ turn|turned|turning your|the|one _? back|side|face|hip|shoulder|front on|to me|us ]
        [ the same|other|opposite|wrong? way|direction|side as|from me|i ]
        [ @room side ] <toward|towards
    """,
)


def find(sentence: Sentence) -> Iterator[Span]:
    """The marked words of a sentence."""
    for first, last, _ in _PHRASES.find(sentence):
        yield first, last


def suggest(sentence: Sentence, first: int, last: int) -> str:
    """What to write instead of the marked words."""
    return "Say it in words that work without looking."


ENGLISH = Kind(
    name="viewer",
    strength="blocks",
    why="The direction is the watcher's, not the reader's own.",
    suggest=suggest,
    triggers=_PHRASES.triggers,
    find=find,
    flag=(),
    leave=(),
)
