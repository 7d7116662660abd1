"""The kind "picture": sends the reader to a picture, diagram, arrow, video or screen."""

from collections.abc import Iterator

from handouts.wording.grammar import Phrases
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.lexicons.en import LEXICON
from handouts.wording.prose import Sentence

_STANDS_FOR = {
    # words that mean a picture and next to nothing else
    "surely": """
        photo|photos|photograph|photographs|selfie|screenshot|screenshots|diagram|diagrams|infographic|illustration|illustrations|drawing|drawings|cartoon|cartoons|video|videos|vid|vids|gif|gifs|animation|animations|slideshow|tutorial|thumbnail|pictogram|pictograms|storyboard|livestream|webinar|dvd|youtube|schematic|infographics|emoji|doodle|flipchart|whiteboard|wallchart|figure-drawing|stick-man|stickman|line-drawing|snapshots|caption|footage|montage|close-up|closeup|pics|qr|slideshows|poster|posters|image|images|sketch|sketches|snapshot|noticeboard|clipart|flipbook|flashcard|flashcards|telly|tv|readout|playback|barcode|collage|mural|x-ray
    """,
    # words that mean a picture when they stand as a thing one looks into
    "maybe": """
        picture|pictures|pic|clip|clips|figure|figures|film|films|movie|reel|reels|slide|slides|screen|screens|display|displays|monitor|chart|charts|graph|graphs|plate|plates|graphic|graphics|icon|icons|map|recording|recordings|visual|visuals|still|stills|print|stream|link|links|panel|panels|tablet|arrow|arrows|portrait|logo|feed|frame|attachment|attachments|painting|card|cards|leaflet|handout|page|scan|app|animation|tile
    """,
    "the": "the|this|that|these|those|my|our|your|a|an|each|every|any|another|both|its|their|his|her|one|two|three",
    "into": "in|on|from|per|see|view|watch|check|consult|study|open|follow|copy|match|matches|like|under|beside|by|at|to|with|as|via|of|above|below|opposite",
}

_PHRASES = Phrases(
    LEXICON,
    _STANDS_FOR,
    surely="""
        [ {the} @ordinal|@colour|cover|short|little|top|wall|long|full|training|new|attached|linked|enclosed|final|first|quick|online|small|big|tiny|instruction|printed|laminated|demo|drawn? {surely} ] !yourself|yourselves
        [ {surely} ] !yourself|yourselves|call|calls|shoot
    """,
    maybe="""
        [ {into} {the}? @ordinal|cover|short|little|top|wall|left|right|attached|linked|enclosed|final|big|small|instruction|printed|laminated|bottom|middle? picture|pictures|pic|clip|clips|film|films|movie|reel|chart|charts|graph|graphs|graphic|graphics|icon|icons|map|maps|recording|visual|visuals|figure|figures|fig|figs|print|printout|stills|arrow|arrows|painting|attachment|link|screen|display|monitor|slide|feed|panel ]
        [ the|this|that|our|my @ordinal|cover|little|top|wall|left|right|attached|final|small|big|bottom|middle|second picture|clip|film|chart|graph|graphic|icon|map|recording|arrow|arrows|attachment|screen|display|monitor|panel|panels|still|stills|frame|slide ]
        [ the picture|clip|chart|graph|graphic|icon|recording|arrow|arrows|attachment|display|monitor|screen|slide|movie|reel|film|feed|visuals ]
        [ a|my|this|that|our|your|each picture|clip|chart|recording|movie|reel|attachment|graphic ] !of health|yourself
        [ fig|figs|figure|plate|panel|image|photo|picture|diagram|illustration|slide|frame .? @number|a|b|c|d|i|ii|iii ]
        [ follow|following the _? arrow|arrows|chart|map ]
        [ the _? arrow|arrows ]
        [ arrow|arrows ] show|shows|point|points|mark|marks|on|in
        @number [ arrows ]
        [ scan|scanning the|this|a|our _? code ]
        [ qr code|codes ]
        [ click|tap|swipe|press|follow|open|see|use on|to? the|this|our link|play|thumbnail|attachment|app|icon|gif|button ]
        [ link in|below|above|at|attached ]
        [ play|pause|rewind|freeze|stream|replay|start|open|load|download|stop|run|watch|skip|scroll|fast-forward the|this|my|our|that|each|to _? clip|recording|film|movie|reel|frame|link|attachment|stream|app|session ]
        [ the _? cartoon|stick|drawn|painted|pictured|printed|illustrated|animated _? man|guy|figure|lady|woman|person|character|people ]
        [ stick figure|figures|man|men|person ]
        [ printed|displayed|projected|screened on|onto ] the|this|that|your
        [ on screen|youtube|instagram|facebook|tiktok|video|film|camera|tv|telly|page ] !@number
        [ on-screen|onscreen|freeze-frame|freeze-framed|close-up ]
        [ the|your|that _? video|film|photo|picture|image|clip|movie 's ]
    """,
    shown="""
        [ shown|pictured|illustrated|depicted|drawn|sketched|displayed|portrayed|visualised|visualized|photographed|diagrammed|diagramed below|above|overleaf|opposite|here|right|left|alongside|beside|underneath|over|on|in|at|by|next|$ ] 
        [ as shown|pictured|illustrated|depicted|drawn|sketched|displayed|portrayed|imaged|photographed ]
        @be|@poss|the|each|both|all [ pictured|illustrated|depicted|photographed|sketched ]
        [ illustrated|depicted|pictured|diagrammed|sketched ] 
        [ shaded|circled|highlighted|coloured|colored|marked|outlined|ringed|labelled|labeled|numbered|arrowed in|on|with the|a|this _? {surely} ]
        [ shaded|circled|highlighted|outlined|ringed|arrowed ] on|in|area|part|muscle|zone|section|region|bit
        @be [ shaded|circled|highlighted|outlined|arrowed ]
        [ see|view below|overleaf|opposite|above|right|left ] !the|your|@number
        [ see|view|check page|pages|sheet|overleaf|insert|handout|leaflet|attached|enclosed|reverse ]
        [ overleaf ]
    """,
)

_NOT_PICTURES = {
    "picture": frozenset("health full big bigger whole wider larger clear perfect".split()),
}


def find(sentence: Sentence) -> Iterator[Span]:
    """The marked words of a sentence."""
    words = sentence.words
    for first, last, note in _PHRASES.find(sentence):
        noun = words[last - 1]
        after = words[last] if last < len(words) else "."
        before = words[first - 1] if first else "."
        inside = words[first:last]
        if noun in ("picture", "pictures") and (
            any(w in _NOT_PICTURES["picture"] for w in inside) or after in ("of", "yourself", "your", "a", "that", "this")
        ):
            continue
        if noun in ("slide", "slides", "clip", "clips", "screen", "film", "frame", "plate", "panel") and after in (
            "of", "your", "the", "for", "out", "it", "them", "back", "forward", "on",
        ) and not (noun in ("slide", "screen", "clip", "film") and after in ("of", "for", "on") and "the" in inside):
            continue
        if noun in ("poster", "image") and (before in ("body", "self") or after in ("child", "boy", "girl", "paint")):
            continue
        yield first, last


def suggest(sentence: Sentence, first: int, last: int) -> str:
    """What to write instead of the marked words."""
    return "Say it in words that work without looking."


ENGLISH = Kind(
    name="picture",
    strength="blocks",
    why="Sends the reader to a picture or screen that they cannot use.",
    suggest=suggest,
    triggers=_PHRASES.triggers,
    find=find,
    flag=(),
    leave=(),
)
