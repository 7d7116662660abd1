"""The kind "looks-only": a thing is told apart only by colour, shine or printed mark."""

import itertools
from collections.abc import Iterator

from handouts.wording.grammar import Phrases, clause_starts
from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.lexicons.en import LEXICON
from handouts.wording.narrative import told
from handouts.wording.prose import NAME, Sentence, word_at

_COLOUR = LEXICON.bits["colour"]
_LOOK = LEXICON.mask("colour", "looks")
_THING = LEXICON.mask("kit", "surface", "printed", "room")
_KIT = LEXICON.bits["kit"]
_PRINTED = LEXICON.bits["printed"]
_BODY = LEXICON.bits["body"]
_PICK = frozenset("the a an your our that this my one two three those these some any both either which another every each its".split())
_ONE = frozenset("one ones pair half side face part bit end kind sort version set type size two".split())

# A colour beside one of these words tells no thing apart.
_PAIRS = frozenset(
    tuple(pair.split())
    for pair in """
    green light; green lights; red flag; red flags; black out; blacks out; blacked out; blue moon; white knuckle; white knuckles; golden rule; golden rules
    gold standard; grey area; gray area; grey areas; gray areas; black belt; black belts; green belt; brown belt; yellow belt; orange belt
    orange juice; green tea; black tea; black coffee; white coffee; brown rice; white rice; white bread; brown bread; white noise; pink noise; blue light
    blue lights; white blood; red blood; white wine; red wine; red meat; white lie; white lies; black eye; pink eye; silver lining; gold medal; gold medals
    white-knuckle hold; white-knuckle grip; silver medal; bronze medal; silver medals; bronze medals; golden hour; golden ticket; golden age; golden years; yellow card; red card; black ice; black hole; red carpet
    red herring; green fingers; green thumb; blue blood; blue cheese; blue sky; blue skies; clear blue; green room; brown sugar; black pepper; olive oil
    white flag; black sheep; grey matter; gray matter; white matter; brown fat; purple patch; red pepper; black market; red hot; white hot; red alert
    code red; black friday; white coat; white coats; blue badge; white belt; purple belt; yellow cards; black spots; black spot; black tie; yellow bag; orange bag; blues band; red cards; red belt; blue belt; green-tea break; green onion; black pudding; brown sauce; red onion; green beans; green bean; green salad; black bean; black beans; white fish; red lentil; yellow pages; green party; black cab; black cabs; red nose; pink slip; white noise; red zone; amber zone; green zone; yellow zone; blue zone; red kite; blue tit; brown envelope; green space; green spaces; blue spell; greys out; grays out; reds and; white van; white goods; red tape; black mark; grey squirrel; grey cells; grey pound; silver screen; silver spoon; golden handshake; red cabbage; black widow; rose hip; black tie; white water; golden retriever; green fee; green fees
    clear head; bright side; dark side; bright idea; dull ache; dull pain; dull throb; dull day; clear run; clear path; clear space; clear floor; clear area; clear view
    clear voice; clear mind; clear line; clear picture; clear idea; clear rule; plain english; plain sailing; plain words; plain water; plain language; plain old
    plain wrong; plain flour; plain tired; plain stubborn; plain lazy; plain truth; just plain; dark room; dark hour; dark horse; dark thoughts; bright spark; pale ale
    crystal clear; whites of; all clear; steer clear; stay clear; keep clear; clear of; clear the; clear your; clear a; clear up; clear out; clear away; dull moment; dull the
    feeling blue; feel blue; of blue; once blue; in black; see red; sees red; seeing red; saw red; gone green; go green; in dark; night black; pitch dark; pitch black
    tickled pink; rose to; rose up; rose from; he rose; she rose; it rose; plum job; peach of; plum tired; sand bag; brown bear; green with; white as; red as; pink as
    red eye; white christmas; blue ribbon; blue chip; red letter; black box; grey hair; gray hair; white hair; red hair; brown hair; red face; white face; green grass; blue water
    silver service; silver surfers; silver swimmers; silver steps; golden oldies; golden girls; gold dust; gold mine; gold plate; brown paper; white paper; red squirrel
    mint tea; mint condition; lime cordial; lemon water; lemon tea; cherry pie; chocolate biscuit; chocolate biscuits; chocolate cake; chocolate bar; hot chocolate; dark chocolate; ginger tea; peppermint tea
    ginger biscuit; ruby wedding; silver wedding; golden wedding; coral reef; amber nectar; bronze age; iron lung; salmon leap; salmon sandwich; plum jam; peach melba
    charcoal biscuit; violet cream; lavender oil; lavender bag; rose garden; rose tea; rust belt; copper bottomed; red wire; tan lines; sun tan; grey day; gray day; grey morning; grey skies
    clear lane; clear wall; clear ground; clear spot; clear stretch; dark corner; dark corners; red mist; white cane; white canes; white stick; white sticks; lemon bars; oatmeal bars; bright morning; bright day; bright smile; bright and; dark and; dark morning; dark mornings; dark evening; dark evenings; dark winter; polished performance; polished floor; floral dance
    ivory tower; ebony and; sky high; jet lag; navy seal; navy seals; jade garden; denim jacket; dotted about; dotted around; spotted you; spotted that; checked that; checked the; checked your; checked by; checked with; checked for; been checked; get checked; be checked; have checked
    plain to; is plain; is clear; be clear; quite clear; clear enough; clear that; clear on; it clear; clear about; clear by; clear from; clear; dull; clear instructions; clear cue
    """.replace("\n", ";").split(";")
    if len(pair.split()) == 2
)
# Words that are more often something else than a look: they need a thing after them and a choosing word before.
_SHY = frozenset(
    "orange gold golden silver rose tan lime lemon peach plum cherry salmon sand rust copper bronze chocolate caramel mint olive ruby jade sky"
    " amber coral cream ivory chestnut mustard camel emerald sapphire denim rainbow raspberry strawberry blueberry charcoal apricot violet lavender tangerine"
    " clear dull plain dark bright matte matt chrome polished stained reflective rusty glowing navy pastel spotted checked chalk chalked marbled dotted"
    " claret mocha slate saffron cranberry buff pewter pistachio damson mulberry primrose cornflower sienna oatmeal colourful colorful"
    " stone sparkling painted printed coloured colored brighter darker duller metallic varnished opaque".split()
)
_MIGHT_BE_ALONE = frozenset("orange gold silver lime plum navy amber peach mint rose lilac lavender mustard cream jade olive tan bronze copper salmon cherry lemon coral ruby".split())
# Something the hand, the ear or the mind can tell: it rescues wherever it stands near.
_FELT = frozenset(
    "knot knots knotted notch notches notched felt rough ridge ridged ridges smooth thicker thinner"
    " kg kilo kilos kilogram kilograms pound pounds lb lbs gram grams fuzzy furry bump bumps bumpy raised rubbery velvet tactile sticky"
    " stretchy hexagonal braille velcro texture textured weighs knobbly grooved groove spiky"
    " tape-wrapped woolly toggle bead beads fingertips fingertip touch rubber-coated corrugated ribbed hiss clicks audible gritty nub nubs pimples dimpled dimples"
    " loops tassel tassels fringe embossed stitched lukewarm cork cable-tie safety-pin elastic-band rubber-band".split()
)
# The same, but only inside the words that name the thing: "the thick red band".
_FELT_INSIDE = frozenset(
    "light lighter heavy heavier thick thin long longer short shorter soft softer hard harder big bigger small smaller large larger medium strong stronger tight loose"
    " wide wider narrow narrower round square wooden metal plastic rubber leather cold warm stiff stiffer tall low high middle left right first second third fourth fifth"
    " top bottom nearest upper lower single double foam cotton wool steel brass canvas weighted".split()
)
_MOST = frozenset(
    "heaviest lightest thickest thinnest longest shortest softest stiffest stretchiest widest narrowest biggest smallest largest strongest weakest"
    " toughest easiest hardest tallest".split()
)
_FLAT = frozenset("dot dots spot spots line lines cross crosses circle circles square squares star stars stripe stripes mark marks arrow arrows x letter letters number numbers".split())
_SIZES = frozenset("big bigger small smaller large larger long short thick thin wide round tall single double left right top bottom".split())
_WEIGHTS = frozenset("twos threes fours fives sixes sevens eights tens twelves fifteens sixteens twenties twenty-fives".split())
_PLURALS = frozenset("reds blues greens yellows purples pinks greys grays".split())
_BARE = frozenset("take use grab try to on from with pick choose load than up if".split())
_NONE = frozenset("no without not never".split())
_LINE_COLOURS = frozenset("yellow white red blue black green".split())
_EFFORT = frozenset("breath word words talk talking puff effort heart pulse breathe breathing speak exertion".split())
_TASTED = frozenset("beans tea soup delicious tasty yummy scrumptious tastes eaten ate drank sip flavour flavor sauce recipe biscuits biscuit".split())
_TURNS = frozenset("go goes turn turns change changes from to flash flashes glow glows blink blinks switches flicks gone".split())
_LAMPS = frozenset("bulb light lights lamp lamps led leds indicator signal display screen skin scar wound nails fingertips lips toes fingers".split())
_NUMBER = LEXICON.bits["number"]
_PRINT = Phrases(
    LEXICON,
    print="""
        on|to|at|over|behind|along|inside|from|until|past [ the _? x|cross|dots|dot|stripe|star|sticker|footprints|hopscotch|logo|stars|crosses|stripes ] !of|bar|trainer|stick|strip|beam|piece|brace|section|over|wind
        [ painted|taped|chalked|chalk|drawn|printed|stencilled feet|foot|cross|line|lines|square|squares|circle|circles|mark|marks|box|boxes|x|dot|dots|spot|spots|arrow|footprints|hand|hands ]
        [ double|broken|dashed|dotted yellow|white|red|blue? line|lines ]
        [ its|the|your logo ] faces|is|on|to|points|up|down|side
        [ by|of your colour|color ]
        [ tramlines|bullseye|bull's-eye ]
        with the [ flower|star|picture|pattern|stripe|stripes|logo|letter|heart|skull|dragon|crest|spots ] on?
        [ free-throw|halfway|touch|goal|penalty|service|three-point line ] painted
        [ numbered|lettered|labelled|branded|varnished|unpainted|glossier side|end|face|rung|edge|hole|half ]
        [ lighter|darker|paler|brighter|duller|shinier|glossier ] of the
        [ one|ones|@kit with a|an|the|its|your _? l|r|s|m|xl|b|c|d|h|x|t ] on|goes|is|.|,|and|for|in|first
        [ the|which|whichever _? side|end|face|one|ones|@kit _? with|bearing|carrying|sporting|wearing|showing the|a|an|our|its? _? logo|print|pattern|writing|lettering|badge|crest|emblem|swirl|swirls|stripe|stripes|zigzag|smiley|cartoon|initials|flag|wording|monogram ] 
        [ logo|label|print|pattern|writing|badge|picture|shiny|coloured|colored|painted|printed|striped|patterned side|end|face up|down|out|in|uppermost|outward|outwards|outermost|toward|towards|facing? ] &up|down|out|in|goes|is|to|.|,|against|on|first|uppermost|outward|toward|towards|facing
        [ where|until|till|after|past|at|from|beyond the _? paint|colour|color|pattern|carpet|grain|varnish|sheen changes|starts|ends|stops|turns|begins|fades ]
        [ the|a|your|our silver|gold|golden|copper|bronze|chrome|clear|transparent|see-through part|bit|half|end|ends|top|tip|base|cap|lid|button|rim ]
        at|on|to|from|behind|round|past|by|beside|between|over|across the [ red|black|blue|white|yellow|green|orange|pink double? flag|flags|tape|mark|line|lines|buoy|post|paint|strip|strips|crossing ] !of
        <!line|lines|mark|marks [ painted|dyed|sprayed|coloured|colored|trimmed|edged|lined|stitched|wrapped|bound|taped in? @colour ]
        in|with the [ @colour|silver|gold skirts|skirt|tops|top|shirt|shirts|shoes|socks|bibs|hat|hats|caps|cap|jacket|leggings|vest|t-shirt|t-shirts ]
        [ numbers|exercises|moves|items|ones|words|lines|rows|sets|steps|those|anything|everything|parts|loads|cells|boxes|names|days|it|that|text in bold|italics|italic|capitals|caps|red|grey|gray|green|blue|yellow|orange|pink|black ] !ink
        [ moves|exercises|items|ones|sets|steps|anything|everything|those marked|starred|shown|flagged with|by? an|a|the? asterisk|star|tick|cross|dot|dagger|circle ]
        i|we|coach|have|has|'ve [ highlighted|circled|underlined|starred|ticked|asterisked|ringed|bolded ] yours|your|them|it|those|each|for|which|what|one|ones|two|three
        [ the bold|thick|thin|solid|dashed|wavy line ] is|shows|marks|for
        [ solid|dotted|dashed|bold line ] for
        [ pad|button|light|letter|letters|square|tile|target|arrow|pod|pods|targets|lights|one|ones|panel that|which|as|when they? lights|light|flashes|flash|glows|blinks up? ]
        anything|everything|pair|pairs|one|ones [ in @colour ] &.|,|is|are|and|for|first
        @kit that|which [ gleams|glints|shines|glitters|sparkles ]
        ^ [ reds|blues|greens|yellows|purples|blacks|whites ] for|attack|defend|serve|start|first|rest|against|lead|push|versus|v
        stand|step|jump|hop|land|feet|walk on [ the spots|dots|crosses ] !you|that
        grab|take|use|pick|get|try|fetch [ a red|blue|green|yellow|purple|pink|black|grey|white|brown ] or|.|for
        [ hazard|warning|reflective|fluorescent|hi-vis|glitter|glow|duct|masking|neon|barrier|marking tape|stripes|stripe|strip|paint|line|lines|markings ] !that|you|felt|over
        [ logo|print|writing|badge|pattern|sticker|lettering side|end|face? facing|faces|pointing|points|looking up|upward|upwards|down|out|outward|outwards|in|inward ]
        [ @colour ] jerseys|shirts|bibs|vests|tops|caps|hats|pinnies|t-shirts|socks|team push|go|rest|serve|on|against|first|versus|start|lead|line|work|swap|this|that|stay|attack|defend|pull|hold
        [ the|a|that pale|dark|grey|white|black|darker|paler|lighter|red|brown ] slab|slabs|stone|stones|tile|paving|plank|planks|paver|pavers|flagstone|stair|stairs
    """,
)


def find(sentence: Sentence) -> Iterator[Span]:
    """The marked words of a sentence."""
    words, classes = sentence.words, sentence.classes
    for first, last, _ in _PRINT.find(sentence):
        if told(sentence, first):
            continue
        if _NONE & set(words[max(0, first - 2) : first]) or ("zone" in words[first:last] and _EFFORT & set(words)):
            continue
        if (words[last - 2] in _LINE_COLOURS and words[last - 1] in ("line", "lines")) or not _felt(sentence, last - 1):
            yield first, last
    looks = [place for place in range(len(words)) if classes[place] & _LOOK]
    for place in looks:
        after = word_at(words, place + 1, ".")
        before = word_at(words, place - 1)
        belt = after == "belt" and words[max(0, place - 2) : place] == ["in", "the"]
        if (not belt and ((words[place], after) in _PAIRS or (before, words[place]) in _PAIRS)) or _named(sentence, place):
            continue
        if (words[place], after) in (("gold", "star"), ("gold", "stars")) and not {"with", "on", "by", "marked", "bearing"} & set(words[max(0, place - 2) : place]):
            continue
        if words[place] in _SHY and sentence.text[sentence.starts[place] - 1 : sentence.starts[place]] in ("\"", "\u201c"):
            continue
        if "-" in words[place] and tuple(words[place].split("-")) in _PAIRS:
            continue
        if told(sentence, place) or _described(sentence, place):
            continue
        if words[place] == "green-tea" or _TASTED & set(words) or _light_turns(sentence, place):
            continue
        last = _tells_apart(sentence, place, len(looks))
        if last and not _felt(sentence, place):
            yield place, last


_MEDICINE = frozenset("inhaler inhalers pill pills tablet tablets capsule capsules medicine puffer".split())


def _described(sentence: Sentence, place: int) -> bool:
    """Whether the look is told of a thing in passing, and nobody is to find it by that."""
    words = sentence.words
    before = word_at(words, place - 1)
    if words[place].startswith("large-") or words[place + 1 : place + 3] == ["flag", "day"]:
        return True
    if before in ("wear", "wears", "wearing", "wore") or {"imagine", "imagining", "pretend", "visualise", "visualize"} & set(words[:place]):
        return True
    if words[max(0, place - 2) : place + 1] == ["on", "the", "green"] and words[place + 1 : place + 2] in (["."], [","], ["at"]):
        return True
    if not _MEDICINE.isdisjoint(words) or {"bruise", "bruises", "scab", "phlegm", "mucus"} & set(words[place + 1 : place + 5]):
        return True
    if before in ("a", "an") and (words[place] in _CONDITIONS or (place > 2 and words[place - 2] in ("has", "had", "wears", "wore", "owns", "bought") and words[place - 3] in ("he", "she", "i", "they"))):
        return True
    opens = max(0, sentence.starts[0] - 1)
    return len(words) <= 6 and words[0] == "the" and sentence.text[opens : opens + 1] in ("\"", "\u201c")


_CONDITIONS = frozenset("rusty dull plain dark bright clear polished".split())


def _light_turns(sentence: Sentence, place: int) -> bool:
    """Whether the colour is what a lamp or the skin turns: that is read by eye, no thing is told apart."""
    words = sentence.words
    near = set(words[max(0, place - 6) : place])
    return bool(_TURNS & set(words[max(0, place - 4) : place])) and bool(_LAMPS & near)


def _named(sentence: Sentence, place: int) -> bool:
    """Whether the word is part of a name: "our White Lane class"."""
    text, starts = sentence.text, sentence.starts
    if not place or not text[starts[place]].isupper() or text[starts[place] + 1 : starts[place] + 2].isupper():
        return False
    before = sentence.words[place - 1]
    near = place + 1
    if sentence.words[place] in _PLURALS:
        return True
    return (
        before in ("mr", "mrs", "ms", "dr", "miss")
        or (near < len(starts) and text[starts[near]].isupper())
        or bool(sentence.classes[place - 1] & NAME and before != ":")
    )


def _tells_apart(sentence: Sentence, place: int, looks: int) -> int:
    """The word after the marked ones, or 0 where the look tells no thing apart."""
    words, classes = sentence.words, sentence.classes
    count = len(words)
    word = words[place]
    before = word_at(words, place - 1)
    near = place + 1
    while near < count and near - place < 4 and (classes[near] & _LOOK or words[near] in ("and", "or", "rubber", "exercise", "resistance", "foam", "plastic")):
        near += 1
    if near + 1 < count and not classes[near] and words[near].isalpha() and classes[near + 1] & _KIT:
        near += 1  # "the orange tee peg"
    noun = word_at(words, near, ".")
    noun_class = classes[near] if near < count else 0
    chosen = before in _PICK or bool(place and classes[place - 1] & (_NUMBER | LEXICON.bits["poss"] | _LOOK)) or (place > 1 and words[place - 2] in _PICK)
    shy = word in _SHY
    if noun in _ONE or (noun_class & _THING and not (noun_class & _BODY and not noun_class & _KIT)):
        if noun in ("size", "kind", "sort", "type", "version", "set", "side", "part", "bit", "half", "end", "two") and shy and not (word == "tan" and noun == "set"):
            if not (word in ("painted", "printed", "coloured", "colored") or (near + 1 < count and words[near + 1] == "of")):
                return 0
        if noun == "face" and before != "its" and words[near + 1 : near + 2] != ["of"]:
            return 0
        if shy and not chosen and not noun_class & (_KIT | _PRINTED):
            return 0
        if (noun_class & _PRINTED and noun not in ("end", "band", "one", "edge") and near == place + 1) or noun == "bit":
            return near + 1
        return place + 1
    if before in ("my", "his", "her", "their") and not noun_class & _THING:
        return 0
    if not shy and chosen and classes[place] & _LOOK and _unknown_thing(sentence, near):
        return near + 1 if word in ("printed", "painted", "chalked") else place + 1
    if not classes[place] & _COLOUR and noun not in _ONE:
        return 0
    if shy and word not in _MIGHT_BE_ALONE:
        return 0
    after = word_at(words, place + 1, ".")
    ends = after in (".", ",", ";", ":", "!", "?", "for", "and", "or", ")", "with", "first", "if", "when", "to", "then", "at", "on", "are", "is", "'s", "today", "now", "until", "from", "next", "in", "out", "—", "means")
    if not ends:
        return place + 1 if chosen and not shy and noun in ("lettering", "paint", "thread", "print", "writing", "wool", "cotton", "fabric", "rubber", "plastic", "stuff", "markings", "elastic", "stitching") else 0
    kit_near = any(bits & _KIT for bits in classes) or any(LEXICON.of(word) & _KIT for word in sentence.earlier)
    if (before == "'s" and place > 1 and words[place - 2] in ("whichever", "one", "which")) or (before == "shade" and word.endswith("er")):
        return place + 1
    if word in _PLURALS:
        return place + 1 if chosen or before in ("use", "take", "grab", "load", "with", "to", "on") else 0
    if not shy or word == "orange":
        if before in _BARE and ends and after not in ("and",) and (kit_near or before in ("take", "use", "grab", "try", "to")):
            return place + 1 if not (before == "to" and place > 1 and words[place - 2] in ("go", "goes", "turn", "turns", "changes", "from", "white")) else 0
        if (place == 0 and after == "for") or (before in (",", "and", "but", "or") and looks > 1 and after in ("for", "if", "when")):
            return place + 1
    if looks > 1 and kit_near and before in (",", ":", ";", "and") and after in ("in", "out", "up", "down"):
        return place + 1
    if before in (":", ",", ";") and kit_near and not shy and place > 1 and classes[place - 2] & _KIT:
        return place + 1
    if before in ("is", "are", "'s") and kit_near and after in ("where", "if", "for") and not shy:
        return place + 1
    if before == "the" and place > 2 and words[place - 3 : place - 1] == ["out", "of"]:
        return 0
    if before == "the" and place > 1 and words[place - 2] in ("in", "into") and word in ("pink", "red", "black"):
        return 0
    if looks > 1 and kit_near and after in ("if", "for", "when") and before == ",":
        return place + 1
    if before in ("the", "one", "two", "your", "my", "a", "on", "both", "that", "this"):
        if shy:
            return place + 1 if looks > 1 and kit_near else 0
        if before in ("on", "a") and not kit_near:
            return 0
        return place + 1
    if before in (":", ";", "") and kit_near and (not shy or looks > 1):
        return place + 1
    if looks > 1 and kit_near and after in ("for", "are", "is", "means") and before in (",", ";", "and", "or", "", ":"):
        return place + 1
    return 0


_CLOSED_CLASSES = LEXICON.mask(
    "function", "prep", "be", "have", "do", "modal", "det", "poss", "pause", "not", "leader", "adverb", "body", "me", "they", "number", "where", "dim", "role", "look", "see"
)


def _unknown_thing(sentence: Sentence, place: int) -> bool:
    """Whether a noun that no list holds stands there: "the tartan sash"."""
    words, classes = sentence.words, sentence.classes
    if place >= len(words) or classes[place] & _CLOSED_CLASSES or not words[place].isalpha() or words[place] in _NO_THINGS:
        return False
    after = word_at(words, place + 1, ".")
    return not words[place].endswith(("ly", "ing")) and words[place] not in _CLOSED and after != "'s"


_NO_THINGS = frozenset(
    "sky sea water grass hair dress shirt suit team club day days morning night light lights party food sauce fish pudding house houses bird birds"
    " eyes smile mood dream dreams weather cloud clouds sunset wine juice tea coffee rice bread meat milk sugar pepper cat dog horse car bus van taxi"
    " country town street road leaves leaf flower flowers roses trousers shorts leggings plimsolls tracksuit hoodie jumper fleece coat jacket tutu kit hat leotard shirts suits blood army"
    " christmas monday friday page pages stuff team teams cells tail paper badge ribbon bruise bruises bruising scab scabs phlegm mucus tongue stool stools".split()
)
_CLOSED = frozenset("if so than then when because too instead like as but yet either neither enough both who whom whose which that what how why".split())


def _felt(sentence: Sentence, place: int) -> bool:
    """Whether something that can be felt, heard or known is named too."""
    words = sentence.words
    near = words[max(0, place - 9) : place + 11]
    if place + 1 < len(words) and words[place + 1] in ("one", "ones") and place > 3 and words[place - 2] == "," and sentence.classes[place - 3] & _THING:
        return any(word in _FELT or word in _MOST or word in _FELT_INSIDE or "-" in word or word.endswith("most") for word in words[max(0, place - 6) : place - 3])
    if any(word in _FELT and not (word == "knot" and _orders(sentence, at)) for at, word in enumerate(near, max(0, place - 9))):
        return True
    if words[place - 2 : place] == [",", "the"] and place > 2:
        if sentence.classes[place - 3] & _NUMBER or words[place - 3].isdigit():
            return True  # "the 12, the purple one"
        if words[place + 2 : place + 3] and words[place + 2] in ("by", "beside", "under", "below", "nearest"):
            return True  # "the call bell, the orange button by your pillow"
    if ("feel", "for") in itertools.pairwise(words):
        return True
    after = words[place + 1 : place + 7]
    if any(after[at - 2] == "," and after[at - 1] == "the" and after[at] in _WEIGHTS for at in range(2, len(after))):
        return True
    if any(after[at - 2] == "," and after[at - 1] == "the" and after[at] in _FELT_INSIDE for at in range(2, len(after))):
        return True
    if any(word in _MOST for word in words[max(0, place - 4) : place + (8 if "which" in after else 4)]):
        return True
    if "feel" in near and any(word in ("can", "by", "fingers", "thumb", "hand") for word in near):
        return True
    start = place
    while start > 0 and place - start < 3 and (words[start - 1] in _FELT_INSIDE or sentence.classes[start - 1] & _LOOK):
        start -= 1
    inside = words[start:place] + words[place + 1 : place + 3]
    for number, word in enumerate(inside):
        if word in _FELT_INSIDE and not (word in _SIZES and words[place + 1 : place + 2] and words[place + 1] in _FLAT):
            if number >= place - start and (words[place + 1] != word or place + 2 >= len(words) or not sentence.classes[place + 2] & _THING):
                continue
            return True
    return False


def _orders(sentence: Sentence, place: int) -> bool:
    """Whether the word is an order and no thing: "knot an old pair of tights"."""
    return place + 1 < len(sentence.words) and sentence.words[place + 1] in ("a", "an", "the", "your", "it", "both") and clause_starts(sentence, place)


def suggest(sentence: Sentence, first: int, last: int) -> str:
    """What to write instead of the marked words."""
    words, classes = sentence.words, sentence.classes
    marked = sentence.quote(first, last)
    if any(classes[place] & _PRINTED and words[place] not in ("one", "end", "band") for place in range(first, last)):
        return "Name a line or spot that can be felt: tape over a cord, the edge of the mat, or so many steps from the wall."
    thing = words[last] if last < len(words) and classes[last] & _THING and words[last] not in ("one", "ones") else ""
    if thing in ("band", "bands", "loop", "strap", "rope"):
        return f'Name what the hand can tell beside "{marked}": "the {thing} with two knots", "the thickest {thing}".'
    if thing:
        return f'Name what the hand can tell beside "{marked}": the weight, the size, the place or a mark to feel: "the {thing} with the notch", "the {thing} nearest the door".'
    return f'Name what the hand can tell beside "{marked}": the weight, the thickness, a knot or a notch: "the one with two knots".'


ENGLISH = Kind(
    name="looks-only",
    strength="blocks",
    what="A thing is told apart only by colour, shine or a printed mark.",
    why="The thing is told apart by its looks alone.",
    suggest=suggest,
    find=find,
    flag=(
        "[[Reds]] attack, [[blues]] defend.",
        "Stand on [[the spots]].",
        "Grab [[a purple]] or a green.",
        "If you are in the [[red]] belt, press your tail down.",
        "Anything [[in rust]] is too heavy.",
        "The ring that [[gleams]] takes the strap.",
        "Step on [[the footprints]].",
        "Sit on the [[purple]] ball.",
        "Start behind the [[white line]].",
        "Line up on the [[chalk mark]].",
        "Keep your toes on the [[dotted line]].",
        "Use the [[shiny]] one.",
        "Choose the [[dark]] [[green]] one.",
        "[[Red]] for beginners, [[blue]] for the rest.",
        "We'll use [[purple]] today.",
        "Change to the [[brown]] spring.",
        "Pull the [[red]] cord.",
        "Pass to the person in the [[yellow]] bib.",
        "Take the [[zebra]] mat.",
        "The club with the [[red]] grip.",
        "Go to the cone [[of your colour]].",
        "The [[burgundy]] bolster goes under your spine.",
        "The [[darker]] of the two.",
        "Fetch the [[crimson]] rope.",
        "Hold the [[varnished end]].",
        "The [[polka-dot]] cushion.",
        "The [[tinted]] goggles.",
        "The [[brighter]] of the two bibs.",
        "Behind the [[free-throw line]] painted white.",
        "It's whichever has the [[pink]] trim.",
        "Check for [[pale patches]] on the heel.",
        "The [[charcoal]] band is too strong.",
        "The [[sun-bleached]] cushion.",
        "Past the [[blue]] sign.",
        "Between the [[tramlines]].",
        "Work with the [[brown]] sandbag.",
        "Put the [[dark-blue]] pillow under your knees.",
        "Lift the bar with [[green]] ends.",
        "Walk the [[white]] edge of the lane.",
        "The [[chalked ring]] is where you throw from.",
        "[[The one with the R]] goes on the right hand.",
        "Band swap: [[tan]] out, [[crimson]] in.",
        "Strike the pad with the [[gold star]].",
        "The peg with a [[red cross]] is for tall users.",
        "The [[logo side]] goes up.",
        "Use the bar [[painted red]].",
        "Cross [[the double yellow line]].",
        "[[The one in black]] is heavier.",
        "Stop [[where the carpet changes]].",
        "[[The numbers in bold]] are your loads.",
        "[[Moves marked with an asterisk]] need a spotter.",
        "I've [[highlighted]] yours.",
        "Hit [[the pad that lights up]].",
        "[[Black]] jerseys push first.",
        "Jump to the [[pale]] slab.",
        "Knot an old pair of tights; the [[tan]] pair will do.",
        "The pads have a big [[white dot]] in the middle.",
        "The splint goes on [[logo facing up]].",
    ),
    leave=(
        "Whites go in the hot wash, reds take forty.",
        "Land on the spots you know best.",
        "Choose a clear lane of two metres.",
        "Imagine a red lantern.",
        "A green or yellow bruise is part of healing.",
        "She lived in a house with a blue gate.",
        "She has a white cane.",
        "A large-print sheet is on the desk.",
        "There is a blue inhaler for relief and a brown one for prevention.",
        "Use the call bell, the orange button by your pillow.",
        "Hush on the touchline.",
        "I trained in the dark corner.",
        "Up the Blues!",
        "A calm voice beats a loud one.",
        "We met in the Greens sports hall.",
        "Wear black socks.",
        "Look on the bright side: you only have two left.",
        "You have the green light from the surgeon.",
        "The golden rule is that pain ends the set.",
        "Have a black coffee an hour before.",
        "Eat greens and brown rice tonight.",
        "Meet at the Red Lion after the walk.",
        "Use the heavy kettlebell, 16 kg, grey.",
        "The green foam block has a notch cut into its edge.",
        "A dull ache is fine, a sharp pain is not.",
        "In the dark, use the rail.",
        "The gold standard for balance is the one-leg stand.",
        "The rose garden is ten minutes' walk away.",
        "A clear picture of your week helps me plan.",
        "Caught red-handed with a biscuit.",
        "Paint the town red after the race.",
        "Out of the blue, my back went.",
        "True blue, that lad.",
        "Green around the gills after the rower.",
        "White noise helps you sleep.",
        "Little white pill at breakfast, as your doctor said.",
        "Black belts start at the door.",
        "Orange segments at half time.",
        "A purple patch for the squad.",
        "Gold-medal grumbling.",
        "Grey day, bright mood.",
        "Bright idea: train with a friend.",
        "Clear off the table before the wall-slide.",
        "It's as clear as day in braille.",
        "Shiny new you by June.",
        "Spotted anything odd? Ring me.",
        "Tell your son the green tin was delicious.",
        "The green-tea break is at four.",
        "If you hit the red zone, where you can't get a word out, walk.",
        "A black belt is a white belt who kept turning up.",
        "No colour code on these plates: the five has one hole.",
        "Gold star for you today.",
        "We circled the block twice.",
        "Exercises in water are kind to joints.",
        "If you feel it in your calf, good.",
        "The blue ball, the big one, is by the door.",
        "Two of the white plates, the fives, go on.",
        "The blue-tagged ones have two ties, so feel for the pair.",
        "The colour-coded stickers matter less than the count.",
        "Somebody has walked off with my blue cagoule.",
        "Wear purple on Friday.",
    ),
)
