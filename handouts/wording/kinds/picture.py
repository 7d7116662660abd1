"""The kind "picture": sends the reader to a picture, diagram, arrow, video or screen."""

from collections.abc import Iterator
from itertools import pairwise

from handouts.wording.grammar import Phrases
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.landmarks import is_part
from handouts.wording.lexicons.en import LEXICON
from handouts.wording.narrative import told
from handouts.wording.prose import Sentence, word_at

_STANDS_FOR = {
    # words that mean a picture and next to nothing else
    "surely": """
        photo|photos|photograph|photographs|selfie|selfies|screenshot|screenshots|diagram|diagrams|infographic|infographics|illustration|illustrations|drawing|drawings|cartoon|cartoons|video|videos|vid|vids|gif|gifs|animation|animations|slideshow|slideshows|tutorial|tutorials|thumbnail|pictogram|pictograms|storyboard|livestream|webinar|dvd|dvds|schematic|emoji|doodle|doodles|flipchart|wallchart|stick-man|stickman|line-drawing|snapshot|snapshots|caption|captions|footage|montage|close-up|closeup|pics|qr|poster|posters|image|images|sketch|sketches|clipart|flipbook|flashcard|flashcards|readout|playback|collage|mural|woodcut|engraving|inset|pictures|screengrab|boomerang|timelapse|freeze-frame|hologram|pictograph|watercolour|watercolor|lithograph|stills|artwork|graphic|graphics|visuals|movie|reel|reels|anatomical|blueprint|jpeg|livecam|vlog|infogram|wall-chart|squiggle|squiggles|scribble|scribbles|matchstick|projector|avatar|avatars|cutaway|time-lapse|webcast|webcasts|subtitle|subtitles|smiley|smileys|replay|replays|slow-mo|upload|uploads|vlogs|screen-grab|comic-strip|arrowhead|arrowheads|pictured|hologram|fresco|silhouette|silhouettes
    """,
    # words that mean a picture when they stand as a thing that one looks into
    "maybe": """
        picture|pic|clip|clips|film|films|slide|slides|screen|screens|display|displays|monitor|chart|charts|graph|graphs|plate|icon|icons|map|recording|recordings|visual|still|print|printout|stream|panel|panels|arrow|arrows|portrait|logo|feed|frame|frames|attachment|attachments|painting|scan|outline|figure|figures|fig|whiteboard|blackboard|noticeboard|telly|tv|slides|footer|cover|thumbnail
    """,
    "the": "the|this|that|these|those|my|our|your|a|an|each|every|any|another|both|its|their|his|her|one|two|three",
    "kind_of": "@ordinal|@colour|@number|cover|short|little|wall|left|right|attached|linked|enclosed|final|big|small|tiny|instruction|printed|laminated|reference|start|starting|finish|opening|same|other|old|new|full|rough|quick|side|front|back|lower|upper|main|full-page|step-by-step|dotted|dashed|curved|bold|thick|online|free|latest|whole|smaller|larger|bigger|muscle|pace|progress|seating|body|training|exercise|safety|class|welcome|demo|title|projected|paused|frozen|framed|hand-drawn|anatomical|lovely|nice|good|blurry|real|fine|handy",
    "carrier": "worksheet|flashcard|leaflet|handout|flyer|brochure|cover|card|sheet|page|board|app|booklet|book|wall|label|packet|pack|manual|poster|noticeboard|whiteboard|website|site|newsletter|calendar|programme|program|postcard|t-shirt|panel|door|lid|machine|magazine|email|e-mail|towel",
}

_PHRASES = Phrases(
    LEXICON,
    _STANDS_FOR,
    surely="""
        [ {the}? {kind_of}*2 {surely} ]
        [ {surely} ]
    """,
    maybe="""
        [ in|on|from|per|see|view|check|consult|study|open|follow|copy|match|matches|like|under|beside|by|at|with|as|via|of|above|below|opposite|to|use {the} {kind_of}*2 {maybe} ] <!noticeboard|blackboard|whiteboard
        [ the _? icon|icons ] !of
        {carrier} [ illustrates|depicts ]
        has|have it|them all? [ drawn out ]
        i|we|'ve|have [ drawn|sketched it|them|this|one|each out? ] on|for the|your|a|you|page|back|paper !raffle
        [ pictures|charts|photos|wall-charts of all|each ]
        [ wall chart|charts ]
        [ on|from|off the|your|its|a|that _ display|monitor|readout|touchscreen ]
        [ frame by frame ]
        [ page @number|@ordinal , the|that|our|a _? lady|man|woman|chap|girl|boy|fella|bloke|guy|picture|photo|one|drawing ] with|on|in|of|where|at
        [ page @number ,|; centre|center|left|right|top|bottom|middle left|right|hand? column|panel|row|corner|picture|box|drawing ]
        [ the|this|our|that|my {kind_of}*2 chart|graph|graphic|icon|recording|arrow|arrows|attachment|display|monitor|slide|film|feed|clip|picture|pic|painting|portrait|still|outline|map|screen|figure|telly|panel|photo ]
        [ click|tap|swipe|press|follow|open|use on|to|through? the|this|our link|play|thumbnail|attachment|icon ]
        play|pause|rewind|freeze|stream|replay|start|open|load|download|stop|run|scroll|fast-forward|loop|swipe back|forward|to? [ the|this|my|our|that|each _? clip|recording|film|frame|link|attachment|stream|screen ]
        [ the _? stick|cartoon|drawn|painted|pictured|printed|illustrated|animated|outlined _? man|men|guy|figure|figures|lady|woman|person|character|people|giraffe|bear|chap ]
        [ stick figure|figures|man|men|person|people ]
        [ on-screen|onscreen|freeze-framed ]
        [ the _? arrow|arrows ]
        steps|moves|exercises|positions|movements|poses|it|them|all [ drawn|sketched out ]
        [ plan|map|layout|diagram of the _? course|route|room|circuit|building|hall|pool|gym|stations ] hangs|on|at|by|in|inside|behind|,
        [ the|a|my|our _? snap ] is|of|from|on|in|shows|that
        [ a|the|his|her matchstick|stick|pin man|men|figure ]
        a|the|my|our [ sketch ] shows|is|of|gives
        [ the|that|our|this comic|strip|colour|color|contact|cover strip|cartoon|plate|sheet|girl|man|boy|model ]
        [ plate|panel|figure|stage|frames|panels|plates|figures i|ii|iii|iv|v|vi|vii|viii|ix|x|one|@number ] to|,|has|have|shows|takes|take
        [ my|our|latest|last|newest|the|her|his|@name 's? latest|new|last? post|story|stories|feed|channel|trailer|promo|wallpaper|print|handwriting ] on|has|shows|covers|gives|have
        attached|sent|emailed|made|posted|uploaded|linked [ a|the|you|some _? film|clip|link ]
        [ next|last|previous|first slide ] ,|please|shows|is
        [ the|our tv|telly|television|app|screen runs|shows|plays|demonstrates|displays|tells|leads ]
        [ see attached|enclosed|below|left|right ] $
        up on [ the board|screen|wall|whiteboard ]
        [ the|this|that|our _? anatomy|skeleton|muscle|reference|opening|closing|title|before-and-after|action|aerial|side|overhead|blown-up|finishing? chart|shot|shots|elevation|cutaway|card ] shows|show|gives|tells|tell|makes|on|is|by|has|have|at
        [ the banner|mosaic|wallpaper ] over|on|has|shows|in
        [ the back|middle|edge|side|front of the shot|frame|picture ]
        [ as|see|per|like|cf the? pic|photo|image|diagram|picture|pics|photos ]
        your|the|its [ screen|console|display|read-out|touchscreen ] will|shows|tells|counts|says|should|lights
    """,
    printed="""
        [ the|your|our|my|this|that _? laminated|printed|stapled|pinned|taped|photocopied|folded|glossy|illustrated _? sheet|card|handout|page|guide|strip|insert|booklet|leaflet|poster|plan ] at|on|by|in|above|beside|has|shows|gives|tells|opposite|over|under
        [ see|study|copy|consult the|our|my|your|this|its? _? sticker|decal|placard|wallchart|scroll|mural|tapestry|tattoo|carving|statue|bust|figurine|mannequin|dummy|skeleton|noticeboard|leaflet|flyer|flier|insert|handout|cover ]
        [ the|our|my|your route|muscle|body|trail|course|pool|floor|seating|acupressure|pressure|trigger|heat map|plan|chart ] !says|in|of|is|for
        [ map|plan|drawing|sketch|chart|diagram on|at|by|above|over|in|behind|beside the|my|your|our _? _? 's? station|desk|door|wall|board|counter|reception|fridge|back|cover|lid|leaflet ]
        [ the|a|its|that dotted|dashed|curved|broken|wavy|zigzag|shaded|thick|thin|solid|pencil|inked|bold curve|arc|outline|path|trail|loop|circle|oval|area|box|region ]
        ( [ illustrated|pictured|shown|inset|photo|pic|fig|see ]
        [ the? @ordinal slide|tile|panel|frame|still|scene|photo|plate|clip ] has|shows|gives|is|covers|demonstrates|of|for|,
        [ swipe|swiping|scroll|scrolling to|for|through the? @ordinal|@number? card|slide|photo|picture|clip|tile|frame|page|end|screen|gif|video|bottom|top|post|story ]
        [ pinch|zoom in|out ] on|to|.|for
        [ hover|hovering|tap|tapping|click|clicking|press|double-tap|long-press over|on? the|my|that|each|this _? link|thumbnail|thumbnails|icon|icons|tile|play|pic|thumb|heart|gif ] !by|labelled
        [ the? tiny|little|wee|small|mini|cartoon|running|walking|sitting|kneeling|green|red|white|raised|printed running|walking|sitting|standing|cycling|stick|jumping|kneeling|lifting|climbing|bending? man|woman|person|lady|figure|chap|fella|bloke|bike|bicycle|hare|tortoise|snail|rabbit|turtle|people|runner|walker ] on|at|by|in|symbol|sign|icon|button
        [ button|switch|key with the|a _? hare|tortoise|snail|rabbit|turtle|arrow|triangle|symbol|plus|minus|bike|runner|man|heart|padlock ]
        [ at|around|from 0:00|0:05|0:10|0:14|0:15|0:20|0:25|0:30|0:35|0:40|0:45|0:50|0:55|00:10|00:15|00:30|00:45 ]
        [ on|in|to|via|at|over my|our|the|his|her|their|@name 's? channel|channels|stories|feed|grid|highlights|reels|socials|carousel|pinboard ]
        [ the|those|any coloured|colored|shaded|hatched|highlighted|dotted|striped|tinted areas|area|parts|part|bits|zones|zone|muscle|muscles|regions ] show|shows|are|is|on|in|mark|marks
        [ filmed|videoed|photographed|snapped it|this|that|them|one|each ] for|so
        ^ [ see illustrated|illus|pic|pics|fig|figs|photo|photos|diag|illustration|drawings ]
        [ a|the|my|your|these|those before-and-after|before-and-afters|before/after|side-by-side|timelapse|time-lapse ]
        [ the|my|our|a|this|that|an ink|pencil|charcoal|chalk|crayon|felt-tip|line|pen|wash|pastel drawing|sketch|figure|figures|outline|study ]
        [ stick|matchstick|pin man|men|woman|women|people|person|folk|lady|figure|figures|guy|guys|chap|kid|kids ]
        [ pause|freeze|stop it|the|this at|on|clip|film|video|frame|tape ] @number|frame|at|when|if|and
        [ the|a|this|that drawing|sketch|doodle|squiggle|scribble|cartoon|caricature|pictograph|hieroglyph|glyph|picture|photo|photograph|snap|shot|image|likeness|model|depiction|rendering|etching|engraving|carving|relief|frieze|tapestry|scroll|mosaic|statue|figurine|tattoo|decal ] shows|depicts|has|gives|tells|explains|will|makes|opposite|overleaf|below
        resemble|resembles|match|matches|trace|traces|mimic|mimics|imitate|imitates|like|follow|follows|mirror|mirrors [ the _? scroll|curve|outline|statue|carving|tattoo|mannequin|skeleton|logo|emblem|crest|drawing|line|shape|figure on|above|over|in|at|by? ] &above|over|on|in|at|.|,|printed|drawn|chalked|painted
    """,
    besides="""
        [ shaded|circled|highlighted|outlined|ringed|arrowed|hatched ] on|in|area|part|muscle|zone|section|region|bit
    """,
    numbered="""
        [ fig|figs|figure|plate|panel|image|photo|picture|diagram|illustration|slide|frame|sketch|drawing|chart .? @number|a|b|c|d|e|f|i|ii|iii|iv ]
    """,
    shown="""
        [ as|where shown|pictured|illustrated|depicted|drawn|sketched|displayed|portrayed|photographed ]
        [ see|view|check page|pages|overleaf|insert|enclosed|reverse ]
    """,
)

_IDIOMS = frozenset(
    """
    picture of health; as a picture; as an arrow; an arrow; drawing to a close; drawing to; monitor lizard; reel it; slide in your; it on the map; us on the map; town on the map; club on the map; firmly on the map; slide in the; big picture; bigger picture; full picture; whole picture; wider picture; larger picture; get the picture; out of the picture
    paint a picture; poster child; poster boy; poster girl; body image; self image; mental image; mental picture; video call; video calls; video chat; video game; video games
    image of health; spitting image; film of sweat; film of; snapshot of; film night; film star; moving picture; picture this; picture yourself; figure of eight; figure out
    figure skating; figure skater; graph paper; road map; body scan; body map; pretty picture; perfect picture; cartoon character; photo finish; photo op; photo shoot
    slide of; a video call; map out; clip on; clip round; photo id; action figure; father figure; blood film; sketch show
    """.replace("\n", ";").split(";")
)
_IDIOM_WORDS = tuple(tuple(idiom.split()) for idiom in _IDIOMS if idiom.strip())
_COMPOUNDS = frozenset(
    (
        ("screen", "reader"), ("screen", "readers"), ("screen", "between"), ("screen", "door"), ("screen", "time"), ("picture", "rail"), ("picture", "rails"), ("drawing", "of"), ("graphic", "account"), ("graphic", "detail"), ("drawing", "pin"), ("drawing", "pins"), ("drawing", "in"),
        ("drawing", "room"), ("drawing", "board"), ("display", "cabinet"), ("display", "case"), ("poster", "advertising"), ("poster", "for"), ("posters", "advertising"),
        ("poster", "campaign"), ("map", "of"), ("video", "shop"), ("video", "night"), ("video", "evening"), ("video", "session"), ("video", "analysis"), ("video", "review"), ("photo", "album"), ("picture", "frame"), ("picture", "book"), ("picture", "window"), ("telly", "down"), ("tv", "off"),
        ("image", "rights"), ("film", "festival"), ("film", "crew"), ("chart", "music"), ("screen", "print"), ("monitor", "lizard"), ("recording", "studio"), ("recording", "artist"),
    )
)
_CLIP_THINGS = frozenset("belt strap straps carabiner collar collars buckle lap rope harness bib helmet fasten fastens handle hang hook hooks flywheel cable ring belts shut lead leash hair".split())
_SPOKEN = frozenset("aloud speaks talks voice speaking spoken".split())
_UNWANTED = (("no",), ("without",), ("need", "a"), ("need", "no"), ("need", "the"), ("not", "a"), ("never", "a"), ("not", "the"), ("instead", "of"), ("rather", "than"), ("than", "any"), ("than", "a"), ("not", "any"))
_HAS_WATCHED = frozenset("watched saw got viewed reviewed received enjoyed loved replayed seen".split())
_OF_A_MOVE = frozenset("it that this them each move moves movement exercise exercises routine sequence technique stretch stretches set rep reps lift all everything".split())
_ARCHERY = frozenset("nock nocks bow bows archer archers archery quiver loose fletching shoot shooting shot bowstring".split())
_MOVED = frozenset("to slide slides sliding glide".split())


_INFORMED = frozenset("stay stays keeps kept caught back comes come".split())
_TELLING = frozenset("draw draws drew paint paints painted painting".split())
_MENTIONED = frozenset("gone broken moved fixed stolen cracked replaced".split())
_SHARED = frozenset("share shares sharing take takes taking taken took post posting caught publish upload email send sent sending clients consent permission".split())
_WRITES = frozenset("tick ticks mark write writes record note log enter fill cross put jot sign pencil add".split())
_LEDGERS = frozenset("chart charts board noticeboard calendar form plan app sheet graph".split())
_ON_AIR = frozenset("follow copy see shown shows along class".split())


def _no_picture_to_use(sentence: Sentence, first: int, last: int) -> bool:
    """Whether the picture is taken, shared, filled in, done without or a manner of speaking: nobody is to learn from it."""
    words, text = sentence.words, sentence.text
    noun = words[last - 1]
    before = words[max(0, first - 5) : first]
    after = words[last : last + 1]
    if noun in ("figure", "figures") and after in (["four"], ["eight"], ["of"]):
        return True
    if noun == "arrow" and after in (["'s"], ["is"], ["means"], ["key"], ["button"]) and any(bits & LEXICON.bits["colour"] for bits in sentence.classes[first:last]):
        return True  # told apart by its colour
    if noun == "logo" and after == ["on"]:
        return True
    if words[last - 3 : last] == ["in", "the", "picture"] and _INFORMED & set(words[max(0, last - 6) : last]):
        return True
    if words[last - 3 : last - 1] in (["in", "a"], ["in", "the"]) and words[last - 4 : last - 3] in (["be"], ["been"], ["being"], ["appear"]):
        return True
    if noun == "picture" and (not _TELLING.isdisjoint(before) or (after in (["i"], ["you"], ["we"]) and words[first - 1 : first] in (["'s"], ["is"]))):
        return True
    if noun in ("screen", "monitor", "telly", "display") and (not _MENTIONED.isdisjoint(words[last : last + 7]) or words[last : last + 3] == ["can", "be", "off"] or words[last : last + 2] == ["is", "off"]):
        return True
    if {"scan", "x-ray"} & set(words[first:last]) and words[last : last + 1] in (["no"], ["some"], ["that"], ["signs"], ["nothing"], ["a"]):
        return True
    if words[first - 2 : first] in (["it", "was"], ["there", "were"]) or (noun == "painting" and after == ["of"]):
        return True
    if {("back", "from"), ("away", "from"), ("up", "from")} & set(pairwise(words[max(0, first - 2) : last])):
        return True
    if noun in _SURE and after in (["made"], ["won"], ["went"], ["got"]):
        return True
    if {"no", "need"} <= set(before) or (noun == "print" and words[first] in ("of", "beside", "by", "as", "to")):
        return True
    if words[last + 1 : last + 3] == ["be", "taken"] or "worth" in before or ("not" in before and {"need", "want", "bother"} & set(before)):
        return True
    if noun == "pictured" and words[first - 1 : first] and words[first - 1] in ("i", "'d", "would", "had", "have", "he", "she", "they", "you", "we", "'ve"):
        return True
    if noun in ("telly", "tv", "television") and {"on", "in"} & set(words[max(0, first - 1) : last]) and _ON_AIR.isdisjoint(before):
        return True
    if noun in _LEDGERS and not _WRITES.isdisjoint(before):
        return True
    if _SURE & set(words[first:last]) and not _SHARED.isdisjoint(before) and not {"yourself", "that", "attached", "i"} & set(words):
        return True
    if {"rules", "policy", "consent", "permission"} & set(words):
        return True
    if {"map", "picture", "image"} & set(words[first:last]) and {"head", "heads", "mind", "minds"} & set(words[last:]):
        return True
    # "the Old Print Works"
    return last < len(words) and all(text[sentence.starts[place]].isupper() for place in (last - 1, last)) and text[sentence.starts[first]].islower()


_SURE = frozenset("photo photos photograph photographs selfie selfies picture pictures image images video videos film footage".split())


def find(sentence: Sentence) -> Iterator[Span]:
    """The marked words of a sentence."""
    words = sentence.words
    found = list(_PHRASES.find(sentence))
    for first, last, note in found:
        if told(sentence, first, writer=False) or _no_picture_to_use(sentence, first, last):
            continue
        if note == "besides" and (words[first] == "on" or any(other != "besides" for _, _, other in found)):
            continue
        if note == "numbered":
            number = words[last - 1]
            sent = words[first - 1 : first] in (["at"], ["see"], ["per"])
            if words[first] in ("slide", "plate", "frame", "panel", "chart", "figure") and not (sent or number.isdigit() or (words[first] in ("plate", "frame", "panel") and len(number) > 2 and first == 0) or (len(number) == 1 and number != "a")):
                continue
            if number == "i" and words[first] not in ("fig", "figure", "plate", "panel"):
                continue  # "the picture I want"
            if number == "a" and words[first] not in ("fig", "figure", "diagram", "image", "photo"):
                continue
        if (note != "printed" and _watched_by_me(words, first)) or ("show" in words[first - 1 : first] and "not" in words[:first]):
            continue
        if {"arrow", "arrows"} & set(words[first:last]) and (_ARCHERY & set(words) or not _ARCHERY.isdisjoint(sentence.earlier)):
            continue
        if words[first] in ("the", "a") and {"cannot", "can't"} & set(words[max(0, first - 2) : first]) and "read" in words[first - 1 : first]:
            continue
        if words[last - 1] in ("chart", "picture", "telly", "map") and words[last : last + 1] in (["person"], ["man"], ["lady"], ["lover"], ["addict"]):
            continue
        if words[first - 1 : first] in (["mirror"], ["off"]) or {"raised", "tactile", "embossed"} & set(words[max(0, first - 1) : last]):
            continue
        if _idiom(words, first, last) or _unwanted(words, first):
            continue
        if _other_sense(sentence, first, last) and (note != "printed" or {"mind", "imagine", "imagination"} & set(words)):
            continue
        yield first, last






def _watched_by_me(words: list[str], first: int) -> bool:
    """Whether the coach has looked at what the reader sent: "I watched your clip"."""
    return "your" in words[max(0, first - 1) : first + 1] and bool(_HAS_WATCHED & set(words[max(0, first - 3) : first]))


def _idiom(words: list[str], first: int, last: int) -> bool:
    around = words[max(0, first - 3) : last + 3]
    joined = " ".join(around)
    return any(" ".join(idiom) in joined and any(word in words[first:last] for word in idiom) for idiom in _IDIOM_WORDS)


def _unwanted(words: list[str], first: int) -> bool:
    """Whether the picture is said to be absent or not needed: "no video needed"."""
    before = tuple(words[max(0, first - 2) : first])
    inside = words[first]
    return (
        before[-1:] in (("no",), ("without",))
        or before in _UNWANTED
        or (inside in ("a", "the", "any") and bool({"need", "without", "forget", "ignore"} & set(before)))
    )


def _other_sense(sentence: Sentence, first: int, last: int) -> bool:
    """Whether a word of more than one meaning has its other one here."""
    words = sentence.words
    noun = words[last - 1]
    after = word_at(words, last, ".")
    inside = words[first:last]
    if "'s" in inside or {"anatomical", "freeze", "slow-motion", "slow-mo"} & set(inside) or inside == ["frame", "by", "frame"]:
        return False
    if ({"mind", "imagine", "imagination", "head"} & set(words[last:]) and noun in ("picture", "image", "map", "drawing")) or {"mind", "imagine"} & set(words):
        return True
    if inside[-1:] == ["screen"] and words[max(0, first - 2) : first] == ["up", "on"]:
        return False
    if {"taped", "pinned", "stuck", "glued", "inside"} & set(words):
        return False
    if (noun, after) in _COMPOUNDS:
        return True
    if noun in ("photos", "pictures", "photo", "film", "video") and after == "of" and words[last + 1 : last + 2] not in (["it"], ["that"], ["this"], ["them"], ["each"]) and not any(
        bits & LEXICON.mask("body", "me", "kit", "handle", "orient") or word.endswith("ing")
        for word, bits in zip(words[last : last + 6], sentence.classes[last : last + 6], strict=False)
    ):
        return True
    if noun in ("telly", "tv", "television") and not ({"on", "watch", "follow"} & set(words[max(0, first - 1) : last]) or after in ("shows", "runs", "will")):
        return True
    if noun in ("clip", "clips") and after == "of" and not any(
        bits & LEXICON.mask("body", "me", "kit", "handle", "orient") or word.endswith("ing") or word in _OF_A_MOVE
        for word, bits in zip(words[last : last + 4], sentence.classes[last : last + 4], strict=False)
    ):
        return True
    if noun in ("recording", "recordings") and words[first - 1] not in ("pause", "play", "watch", "see", "rewind", "stop"):
        return not any(bits & LEXICON.mask("body", "me") for bits in sentence.classes[last:])
    if noun in ("picture", "pictures") and ((after == "of" and not sentence.classes[min(last + 2, len(words) - 1)] & LEXICON.mask("body", "kit", "me") and not {"move", "moves", "exercise", "stretch", "pose", "shape", "step", "position", "grip", "each", "it", "one"} & set(words[last : last + 5])) or "what" in words[first - 1 : first]):
        return True
    if noun in ("clip", "clips"):
        return bool(_CLIP_THINGS & set(words)) or "up" in words[last : last + 1] or after in ("the", "your", "it", "that", "round") or (after == "on" and not {"phone", "tablet", "site", "website", "app", "channel", "laptop", "screen", "group", "page"} & set(words[last + 1 : last + 5]))
    if noun in ("picture", "image", "sketch", "figure", "film", "outline", "chart", "map", "screen", "monitor", "display", "frame", "slide", "scan", "print", "caption") and after in (
        "yourself", "your", "a", "an", "that", "out", "it", "them", "how", "what", "each", "every", "me", "my",
    ) and not (after in ("a", "that", "your") and "the" in inside):
        return noun == words[first] or after in ("yourself", "out", "how", "me")
    if noun == "outline":
        return not any(sentence.classes[place] & LEXICON.bits["body"] for place in range(last, min(last + 4, len(words)))) and not {"on", "in"} & set(words[last : last + 2])
    if noun in ("frame", "frames", "plate", "panel", "screen", "cover", "figure", "figures", "film", "films", "silhouette", "silhouettes", "telly", "tv", "movie"):
        if noun in ("film", "films", "movie", "telly", "tv"):
            return words[max(0, first - 1)] in ("than", "to", "at", "of", "for") or after in ("of", "starts", "tonight", "about") or "watched" in words or "watching" in words or words[first] in ("at", "to", "your", "a") or _SPOKEN & set(words) != set()
        if noun in ("screen",):
            return words[first] in ("a", "to") or after in ("for", "door") or bool(_SPOKEN & set(words))
        if noun in ("silhouette", "silhouettes"):
            return after not in ("along", "on", "at", "in", "show", "shows", "above", "by", "give", "gives")
        return words[first] not in ("in", "see", "on", "from", "per", "as") or noun in ("frame", "plate", "cover")
    if noun in ("slide", "slides"):
        if noun == "slide" and words[first] == "the" and not ({"show", "shows", "screen", "has", "says", "next", "projector", "presentation", "deck", "title"} & set(words)):
            return True
        return words[first] in _MOVED or (after in ("of", "and", "is", "back") and not sentence.earlier) or (noun == "slides" and words[first] != "the")
    if noun in ("monitor", "display", "monitors", "displays"):
        return bool(_SPOKEN & set(words)) or "loud" in words
    return bool(noun in ("graphic", "graphics", "reel", "reels", "poster", "posters") and after in ("detail", "designer", "off", "paint"))


def suggest(sentence: Sentence, first: int, last: int) -> str:
    """What to write instead of the marked words."""
    words = sentence.words
    marked = words[first:last]
    if any(word.startswith("arrow") or word in ("dotted", "trail") for word in marked):
        return "Say the way itself, by the clock or by landmarks: \"from your left knee across to your right hip\"."
    if {"screen", "display", "monitor", "readout"} & set(marked):
        return "Give a measure that can be heard or counted: \"twenty-two strokes a minute, one every slow breath\", or name the setting that speaks it."
    parts = [words[place] for place in range(len(words)) if is_part(sentence, place) and not first <= place < last]
    if parts:
        return f"Put what it shows into words: from where to where, and which way, the {parts[0]} should move, and what is touched at the end. A picture may stay beside the words."
    return "Put what it shows into words, from the ground up: feet, knees, hips, back, shoulders, arms, hands; then the movement and where it ends."


ENGLISH = Kind(
    name="picture",
    strength="blocks",
    what="The reader is sent to a picture, a diagram, an arrow, a video or a screen.",
    why="Sends the reader to a picture or screen that they cannot use.",
    suggest=suggest,
    find=find,
    flag=(
        "I've [[drawn it]] on your card.",
        "Look at [[figure three]] for the grip.",
        "This booklet [[illustrates]] five stretches.",
        "Page two [[has it all drawn out]].",
        "Wherever you meet [[the bent-arm icon]], add two seconds.",
        "[[Pictures of all]] five are on the wall.",
        "[[See the picture]] for hand placement.",
        "[[As pictured]], the elbow is bent.",
        "[[Match the outline]] on the mat.",
        "[[The video]] has the full routine.",
        "Swipe left for [[the photos]].",
        "The exercise is up on [[the board]].",
        "Your programme is [[on the slide]].",
        "I've [[drawn you a sketch]].",
        "[[The illustration]] gives the angle.",
        "[[The drawings]] in the booklet help.",
        "[[The thumbnail]] shows the wrong grip.",
        "[[The graph]] tells you your zones.",
        "[[The mural]] has all the asanas.",
        "I've emailed some [[photos]].",
        "[[The app shows]] the moves.",
        "Step towards [[the screen]].",
        "As you look [[at the screen]], go left.",
        "[[The fresco]] has the salute.",
        "[[The cover girl]] has her wrist straight.",
        "[[Plate IX]], if you have the old edition.",
        "The looped [[footage]] runs by the door.",
        "[[The promo]] shows the flip.",
        "[[Thumbnail]] three is the catch.",
        "The chalk [[drawing]] on the floor shows the steps.",
        "Keep your head [[in the picture]] on the call.",
        "[[The cutaway]] shows the muscle.",
        "[[The before-and-after shots]] tell the story.",
        "[[Screenshot]] the pose and keep it.",
        "[[The banner]] over the door has the moves.",
        "[[The doodle]] I did on your cast.",
        "Compare yourself with [[the drawing]].",
        "There's [[footage]] of this in the folder.",
        "Follow the [[on-screen]] timer.",
        "[[The sticker on the frame]] tells you the angle.",
        "Press the button with the [[snail]].",
        "[[Swipe to the third card]] for the shoulder set.",
        "[[The laminated sheet]] at the poolside has the moves.",
        "Your stance should resemble [[the scroll]] above the door.",
        "Hold the handle in [[position B (illustrated)]].",
        "[[The silhouettes]] along the margin give eight postures.",
        "It's all [[on my channel]].",
        "I've put [[a before-and-after]] in the group.",
        "[[The slideshow]] runs while you rest.",
        "[[Frame by frame]], the roll is easy.",
        "On [[the freeze frame]] both locks are too tall.",
        "Turn to [[page 14, centre column]].",
        "It's the one on [[page two, the lady]] with the ball.",
        "Raise it when the line [[on the telemetry display]] is steady.",
        "A [[plan of the course]] hangs on the door.",
    ),
    leave=(
        "I've drawn one for the raffle.",
        "Push back from the screen and stand.",
        "The photo made the paper.",
        "Rose has the key to the studio.",
        "The scan shows no break.",
        "Members asked for the display to be louder.",
        "There's no need to learn the chart.",
        "In the eighties it was videos and leg warmers.",
        "The screen can be off.",
        "If you would rather not be in a photo, tell Jan.",
        "The old screen in the lobby is gone.",
        "That's the picture I want you to have.",
        "Photographs may be taken by the school alone.",
        "Right ankle on left knee, in a figure four.",
        "The sheet on the noticeboard is in braille.",
        "Tick each day on the chart.",
        "Watch something silly on the telly.",
        "Never share an image of a child.",
        "She stays in the picture about your heart.",
        "I had pictured the lot.",
        "A good coach draws a picture with words.",
        "Bring your photo ID to the gym.",
        "Paint me a picture of your week.",
        "Picture a coin between your shoulder blades.",
        "The big picture is that you are stronger.",
        "She is the picture of calm.",
        "The frame of the bench is cold, so you will know it.",
        "A film of oil on the bar makes it slippery.",
        "The figure eight goes round both knees.",
        "The screen door bangs, so hold it.",
        "No photos in the changing rooms, please.",
        "No video needed: the words say it all.",
        "Get the full picture from your consultant.",
        "She's pretty as a picture and strong as an ox.",
        "The slide in your numbers is over.",
        "Reel it in like a fish.",
        "Poster paint on your trainers, was it?",
        "Straight as an arrow from ear to heel.",
        "The monitor lizard walk: opposite arm, opposite leg, belly low.",
        "Drawing to a close now.",
        "The recording has every word, so play it as you go.",
        "Turn the telly down so you can hear me.",
        "There's a picture in my head of you at ninety, still squatting.",
        "A drawing pin was on the floor, so sweep first.",
        "The drawing in of the belly is gentle.",
        "The poster advertising the class went up today.",
        "The screen between the rooms folds back.",
        "The slide from plank to cobra is slow.",
        "The display cabinet's glass, so careful.",
        "The figure of eight takes a minute.",
        "The map of the body you carry in your head gets better.",
        "Keep your hand on the door frame.",
        "Slide your heel along the mat toward your buttock.",
        "Clip the strap to the ring at hip height.",
        "Screen the room for loose rugs before you start.",
        "Draw your belly button toward your spine.",
        "Take your tablets with food.",
        "Keep the screen reader on while you listen.",
        "It won't show on camera, but your hips will know.",
        "On the way up the slide, the knees rise last.",
        "Hang the handle against the flywheel, not in the clip.",
        "I watched your clip, good lifting.",
        "Video night is on Friday.",
        "Press the button that has a raised ring.",
        "Off the chart effort, well done.",
        "Put both hands on the table on your left side.",
        "We meet by the noticeboard, rain or shine.",
        "Right: tea is at four.",
        "Nock the arrow and draw to your chin.",
        "There's a clip of the Paralympic final that I like.",
        "You cannot read the display any more; the pharmacy lends talking ones.",
        "Keep a chart of your sleep.",
    ),
)
