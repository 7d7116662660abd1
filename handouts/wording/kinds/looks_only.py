"""The kind "looks-only": a thing is told apart only by colour, shine or printed mark."""

from collections.abc import Iterator

from handouts.wording.kinds.kind import Kind, Span
from handouts.wording.lexicons.en import LEXICON
from handouts.wording.prose import Sentence

_COLOUR = LEXICON.bits["colour"]
_LOOK = LEXICON.bits["looks"]
_THING = LEXICON.mask("kit", "surface", "printed", "room")
_PRINTED = LEXICON.bits["printed"]
_NUMBER = LEXICON.bits["number"]
_PICK = frozenset("the a your our that this my one two those these some any both either which another".split())

# A colour beside one of these words names no thing by its colour.
_IDIOMS = frozenset(
    """
    green light; red flag; red flags; black out; blue moon; white knuckle; golden rule; golden rules; gold standard; grey area; gray area; grey areas
    black belt; black belts; green belt; brown belt; white belt; orange juice; green tea; black tea; black coffee; brown rice; white rice; white bread; brown bread
    white noise; pink noise; brown noise; blue light; white blood; red blood; white wine; red wine; red meat; white lie; white lies
    black eye; pink eye; silver lining; gold medal; silver medal; bronze medal; golden hour; golden ticket; golden age; golden years; yellow card; red card; black ice
    black hole; red tape; red carpet; red herring; green fingers; green thumb; blue blood; blue cheese; blue sky; blue skies; clear blue
    green room; brown sugar; black pepper; olive oil; peach fuzz; rose garden; lemon juice; lime juice; white flag; black sheep
    grey matter; gray matter; white matter; brown fat; purple patch; green salad; red pepper; black market; red hot; white hot; red alert
    code red; chocolate bar; chocolate cake; black friday; white coat; blue badge; red cross; green cross; rose hip; rust bucket; black tie; white water
    golden retriever; gold star; gold stars; clear head; bright side; dark side; bright idea; dull ache; clear run; clear path; clear space; clear floor
    clear area; clear view; plain english; plain sailing; plain words; plain water; plain language; plain old; plain wrong; plain flour; bright early; dark hour; dark room; dull pain; dull throb
    dull ; sand bag; sand dune; clear conscience; bright spark; dark horse; pale ale; salmon fillet; brown bear; polar white; plain simple
    """.replace("\n", ";").split(";")
)
_PAIRS = frozenset(tuple(idiom.split()) for idiom in _IDIOMS if len(idiom.split()) == 2)

# Colours that are more often something else; they need a thing right after them or "the ... one".
_SHY = frozenset(
    "orange gold golden silver rose tan lime lemon peach plum cherry salmon sand rust copper bronze chocolate caramel mint olive ruby jade"
    " amber coral cream ivory chestnut mustard camel emerald sapphire denim rainbow raspberry strawberry blueberry charcoal apricot violet lavender"
    " clear dull plain dark bright matte matt chrome painted printed polished stained floral marbled reflective rusty glowing"
    " pastel brown black white grey gray green chalk chalked checked dotted spotted neon coloured colored".split()
)
_FELT = frozenset(
    "knot knots notch notches felt feel feels rough ridge ridged ridges smooth smoother heavy heavier heaviest light lighter lightest thick thicker thickest"
    " thin thinner thinnest kg kilo kilos pound pounds lb lbs long longer longest short shorter shortest soft softer hard fuzzy furry bump bumps bumpy raised rubber velvet"
    " tactile sticky stiff stiffer stretchy stretchier widest narrow wide wider narrower big bigger biggest small smaller smallest large larger largest"
    " round square hexagonal loud click clicks braille velcro texture textured bumpy medium strong stronger cord rope leather"
    " woolly wooden metal plastic nearest left-hand right-hand top bottom loop loops loose tight button buttons zip gritty toggle hook buckle beads bead"
    " cold warm spiky knobbly grooved groove weighs weight weighing tied wrapped wrap elastic tape-wrapped".split()
)
_BODY = LEXICON.bits["body"]
_NO_THING = frozenset(
    "juice light belt area flag tea coffee wine moon room noise water bread rice sugar lining medal rule standard".split()
)


def find(sentence: Sentence) -> Iterator[Span]:
    """The marked words of a sentence."""
    words, classes = sentence.words, sentence.classes
    count = len(words)
    colours = [place for place in range(count) if classes[place] & (_COLOUR | _LOOK)]
    if not colours:
        return
    felt = any(word in _FELT for word in words)
    for place in colours:
        word = words[place]
        before = words[place - 1] if place else ""
        after = words[place + 1] if place + 1 < count else "."
        if (word, after) in _PAIRS or (before, word) in _PAIRS or after in _NO_THING:
            continue
        after_class = classes[place + 1] if place + 1 < count else 0
        if after_class & _BODY and not after_class & LEXICON.bits["kit"]:
            continue
        if sentence.text[sentence.starts[place]].isupper() and place and not sentence.text[sentence.starts[place] + 1].isupper() and before not in (".", ":", "—"):
            if after_class == 2 or sentence.text[sentence.starts[min(place + 1, count - 1)]].isupper():
                continue
        if _names_a_thing(sentence, place) and not felt:
            if after_class & _PRINTED and after not in ("end", "edge", "band", "tape") or (after == "tape"):
                yield place, place + 2
            else:
                yield place, place + 1


def _names_a_thing(sentence: Sentence, place: int) -> bool:
    words, classes = sentence.words, sentence.classes
    count = len(words)
    before = words[place - 1] if place else ""
    word = words[place]
    near = place + 1
    while near < count and near - place < 4 and (classes[near] & (_COLOUR | _LOOK | _NUMBER) or words[near] in ("and", "or", "-", ",", "rubber", "exercise", "resistance", "foam", "plastic")):
        if words[near] == ",":
            break
        near += 1
    thing = near < count and bool(classes[near] & _THING)
    if thing and not classes[near] & _BODY:
        return True
    if thing:
        return word not in _SHY or before in _PICK
    # "the red", "the purple for legs"
    after = words[place + 1] if place + 1 < count else "."
    if before == "the" and (after in (".", ",", ";", "!", "?", "for", "and", "or", ")", "with", "first", "if", "when", "to", "then", "at", "on") or place + 1 >= count):
        return word not in ("dark", "clear", "bright", "dull", "plain", "orange", "gold", "silver", "light")
    if before in (":", "is") and after in (".", ",", ";"):
        return word not in _SHY and any(classes[p] & LEXICON.bits["kit"] for p in range(place))
    return False


def suggest(sentence: Sentence, first: int, last: int) -> str:
    """What to write instead of the marked words."""
    return "Say it in words that work without looking."


ENGLISH = Kind(
    name="looks-only",
    strength="blocks",
    why="The thing is told apart by its looks alone.",
    suggest=suggest,
    triggers=LEXICON.classes["colour"] | LEXICON.classes["looks"],
    find=find,
    flag=(),
    leave=(),
)
