"""The kind "sight-check": the reader is told to check by eye."""

from collections.abc import Iterator

from handouts.wording.grammar import Phrases
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.lexicons.en import LEXICON
from handouts.wording.prose import Sentence

_STANDS_FOR = {
    "your": """
        your|the|its|both|each|either _? @body
    """,
    "readout": """
        the|your|that|a|each|its _? _? clock|timer|stopwatch|watch|wristwatch|display|dial|gauge|scale|scales|monitor|screen|readout|counter|numbers|number|figures|digits|label|labels|tag|stamp|sticker|sign|scoreboard|thermometer|speedometer|needle|pointer|percentage|reading|meter|hand|writing|print|lettering|card|sheet|list|whiteboard|timetable|fitbit|smartwatch|plates|app|phone|percentages|console|countdown|seconds|minutes|metronome
        @number|how|what|when _? _? clock|timer|display|dial
    """,
    "look_at": """
        look|looking|glance|glancing|peek|peep|peer|squint|stare|check|checking at|over|up|down|to|on|with|against? at|on?
        have|take|get|steal|sneak|grab|give|cast a|an|another|one|half _? look|glance|peek|peep|squint|eye|once-over|gander at|over|on?
        keep|keeping|have|cast|run|with an|half|your|one|both eye|eyes half? on|to|over
        keep|keeping half an eye on
        read|reads|reading off?
        watch|watching|eye|eyeing|consult|monitor|check|checking|follow|study|scan|spot|note|inspect
    """,
}

_PHRASES = Phrases(
    LEXICON,
    _STANDS_FOR,
    mirror="""
        [ in|into|with|use|using|at|by|to|check|watch|consult|before|of a|the|your|any|that|one _? mirror|mirrors|reflection ] !wall|work|image
        [ use|using|check|checking|find|watch|face|facing|spot|see|look|glance|consult your|the|a own? mirror|mirrors|reflection|shadow|silhouette on|in? the? floor|wall? ] !wall
        [ your|the reflection|silhouette ]
        [ mirror ] shows|tells|will|says|helps|is
        [ look|looking|check|glance|watch|see in|into the|a|your mirror|window|glass ]
        [ mirror check ]
    """,
    readout="""
        [ {look_at} {readout} ]
        [ {look_at} your watch|phone|clock ]
        [ label|labels|display|dial|gauge|tag|sticker|clock|timer|screen|stamp|scale|sign|counter|needle|readout|scoreboard|watch|stopwatch says|say|reads|read|shows|show|hits|reaches|gets|turns|tells|flashes|changes|displays ]
        [ whose label|tag|sticker|stamp _? _? ]
        [ read|reads|reading the|off|your|what|out _*3 ] !aloud|out
        [ where|when|until|once|till the _? hand|needle|second-hand|pointer|dial _? ]
        [ marked|stamped|labelled|labeled|printed|written|engraved|embossed|numbered @number|on|with ]
        [ printed|written|stamped on ] the|your|its
        [ by the clock|timer|stopwatch ]
    """,
    eye="""
        [ line|judge|measure|check|compare|estimate|gauge|match|level|set|space|align|find|spot|assess|inspect|note|confirm|verify _*6 by eye|sight ]
        [ by eye|sight ]
        [ eyeball|eyeballing ]
        [ visually ] 
        [ visual check|inspection|cue|checks ]
        [ use|using|with|trust your own|two? eyes ] !closed|shut
        [ with your own eyes ]
        [ naked eye ]
        [ eyes tell|confirm ]
    """,
    view="""
        [ out of sight|view ]
        [ in|into|within|enters|enter|from|leaves|leave|at your|the|clear|full|plain? field|line|edge|corner|range|peripheral of? vision|sight|view|eye ]
        [ in|into|within|from plain|your|full? view|sight ] !of
        [ comes|come|appears|appear|goes|disappears|disappear|vanishes|vanish|slips|slip|drops in|into|from|out? of? view|sight ]
        [ block|blocks|hide|hides|hiding|cover|covers|covering|obscure|obscures|eclipse|eclipses your|the? view|sight|laces|shoelaces|toes|foot|feet|shoe|shoes|toe|knee|ankle of? ]
        [ peripheral vision ]
        [ not be able to see ]
        [ not|never|cannot|just|barely|still|only|no longer see ] @poss|@body
        [ you can|could|should|will|'ll|might just|barely|only|still|no|be|able|not|longer*3 see ] @poss|the|both|@body|where|if|whether|any|more|no
        [ see|seeing your|both|all own? @body ]
        [ until|till|when|once|if|unless|where|as|so|before|that you can|could|do|no|cannot|just|first|longer|not|only*2 see|spot|notice|glimpse ] @poss|the|both|any|a|daylight|more|less
        [ visible|invisible ] 
        [ in|under|with good|bright|strong light ]
        [ disappear|disappears|vanish|vanishes behind|under|below|beneath|from ]
        [ peek|peeks|peeking|poke|pokes|show|shows|appear|appears out? past|over|beyond|above|from your ]
    """,
    inspect="""
        [ look|looking|glance|glancing|peek|peep down? at|over|along|towards {your} ] 
        [ look|glance|peek|check|peep down ] now|to|and|at|$
        ^ [ look ] to see|check|make
        [ look|looking|glance to see|check ]
        [ look|looking out? for|whether|if ]
        [ see|check that|whether|if|how|for|the|your _*3 ] @body
        [ watch|watching where|how|that|whether {your} ]
        [ watch|watching your|both|each|either @body ]
        [ watch|watching the|for _? @body ]
        [ inspect|examine|scan|survey|scrutinise|scrutinize|eye ] @poss|the|both|each|it|for
        [ compare|match _*4 ] side-by-side|@body|colour|color
        [ squint|peer|peek|peep|glance ] at|down|over|to
        [ have|take a _? look|peek|glance|gander|squint at|down|over ]
        [ spot|notice|note|see any|whether|if|where|which ] @body|swelling|redness|bruising|difference
        [ redness|bruising|discoloration|discolouration|discoloured ]
        [ not|is|looks|turns|goes|turning|going|looking|appears|if|look|gone red|pink|pale|white|blue|purple|blotchy|shiny ] <skin
        [ looks|look level|even|straight|equal|symmetrical|the|flat|square|vertical|horizontal|parallel|crooked|same ]
    """,
)


def find(sentence: Sentence) -> Iterator[Span]:
    """The marked words of a sentence."""
    for first, last, note in _PHRASES.find(sentence):
        yield first, last


def suggest(sentence: Sentence, first: int, last: int) -> str:
    """What to write instead of the marked words."""
    return "Say it in words that work without looking."


ENGLISH = Kind(
    name="sight-check",
    strength="blocks",
    why="Asks the reader to check by eye.",
    suggest=suggest,
    triggers=_PHRASES.triggers,
    find=find,
    flag=(),
    leave=(),
)
