"""The forms of English words, so that a lexicon lists each word once."""

_IRREGULAR = {
    "be": "be is are was were being been",
    "bend": "bend bends bending bent",
    "bring": "bring brings bringing brought",
    "come": "come comes coming came",
    "cut": "cut cuts cutting",
    "draw": "draw draws drawing drew drawn",
    "drive": "drive drives driving drove driven",
    "fall": "fall falls falling fell fallen",
    "feel": "feel feels feeling felt",
    "find": "find finds finding found",
    "fling": "fling flings flinging flung",
    "get": "get gets getting got",
    "give": "give gives giving gave given",
    "go": "go goes going went gone",
    "grow": "grow grows growing grew grown",
    "hang": "hang hangs hanging hung",
    "have": "have has having had",
    "hold": "hold holds holding held",
    "keep": "keep keeps keeping kept",
    "kneel": "kneel kneels kneeling knelt",
    "lean": "lean leans leaning leaned leant",
    "leap": "leap leaps leaping leaped leapt",
    "leave": "leave leaves leaving left",
    "let": "let lets letting",
    "lie": "lie lies lying lay lain",
    "make": "make makes making made",
    "put": "put puts putting",
    "ride": "ride rides riding rode ridden",
    "rise": "rise rises rising rose risen",
    "run": "run runs running ran",
    "send": "send sends sending sent",
    "set": "set sets setting",
    "shrink": "shrink shrinks shrinking shrank shrunk",
    "sink": "sink sinks sinking sank sunk",
    "sit": "sit sits sitting sat",
    "slide": "slide slides sliding slid",
    "split": "split splits splitting",
    "spread": "spread spreads spreading",
    "spring": "spring springs springing sprang sprung",
    "stand": "stand stands standing stood",
    "sweep": "sweep sweeps sweeping swept",
    "swim": "swim swims swimming swam swum",
    "swing": "swing swings swinging swung",
    "take": "take takes taking took taken",
    "tear": "tear tears tearing tore torn",
    "throw": "throw throws throwing threw thrown",
    "tread": "tread treads treading trod trodden",
    "bind": "bind binds binding bound",
    "hurt": "hurt hurts hurting",
    "sleep": "sleep sleeps sleeping slept",
    "think": "think thinks thinking thought",
    "speak": "speak speaks speaking spoke spoken",
    "eat": "eat eats eating ate eaten",
    "drink": "drink drinks drinking drank drunk",
    "know": "know knows knowing knew known",
    "say": "say says saying said",
    "tell": "tell tells telling told",
    "hear": "hear hears hearing heard",
    "see": "see sees seeing saw seen",
    "do": "do does doing did done",
    "wait": "wait waits waiting waited",
    "burn": "burn burns burning burned burnt",
    "bite": "bite bites biting bit bitten",
    "shake": "shake shakes shaking shook shaken",
    "begin": "begin begins beginning began begun",
    "sting": "sting stings stinging stung",
    "breathe": "breathe breathes breathing breathed",
    "teach": "teach teaches teaching taught",
    "read": "read reads reading",
    "lay": "lay lays laying laid",
    "build": "build builds building built",
    "win": "win wins winning won",
    "lose": "lose loses losing lost",
    "pay": "pay pays paying paid",
    "buy": "buy buys buying bought",
    "spend": "spend spends spending spent",
    "wear": "wear wears wearing wore worn",
    "choose": "choose chooses choosing chose chosen",
}
_DOUBLES = frozenset(
    [
        "bob",
        "chop",
        "clip",
        "dip",
        "drag",
        "drop",
        "flap",
        "flip",
        "grip",
        "hip",
        "hop",
        "hug",
        "jab",
        "jog",
        "lap",
        "nod",
        "pat",
        "pin",
        "pop",
        "rip",
        "scan",
        "scoot-up",
        "set",
        "shrug-up",
        "skip",
        "slip",
        "slot",
        "snap",
        "spin",
        "split",
        "spot",
        "step",
        "stop",
        "strap",
        "swap",
        "tap",
        "tip",
        "trip",
        "tuck-up",
        "wrap",
        "zip",
        "hem",
        "rub",
        "strum",
        "trim",
        "cram",
        "plan",
        "map",
        "let",
    ]
)


def words(*lists: str | list[str]) -> frozenset[str]:
    """All words of some lists; a string is a list with spaces between the words."""
    return frozenset(word for some in lists for word in (some.split() if isinstance(some, str) else some))


def verbs(text: str) -> list[str]:
    """Each verb in all of its forms."""
    forms: list[str] = []
    for verb in text.split():
        if verb in _IRREGULAR:
            forms += _IRREGULAR[verb].split()
        elif verb.endswith("e"):
            forms += (verb, verb + "s", verb[:-1] + "ing", verb + "d")
        elif verb.endswith("y") and verb[-2] not in "aeou":
            forms += (verb, verb[:-1] + "ies", verb + "ing", verb[:-1] + "ied")
        else:
            stem = verb + verb[-1] if verb in _DOUBLES else verb
            forms += (
                verb,
                verb + ("es" if verb.endswith(("s", "x", "z", "ch", "sh", "o")) else "s"),
                stem + "ing",
                stem + "ed",
            )
    return forms


def nouns(text: str) -> list[str]:
    """Each noun and its plural."""
    forms: list[str] = []
    for noun in text.split():
        forms.append(noun)
        if noun.endswith("y") and noun[-2] not in "aeou":
            forms.append(noun[:-1] + "ies")
        else:
            forms.append(noun + ("es" if noun.endswith(("s", "x", "z", "ch", "sh")) else "s"))
    return forms


def comparatives(text: str) -> list[str]:
    """Each short adjective with its "-er" and "-est"."""
    forms: list[str] = []
    for word in text.split():
        if word.endswith("e"):
            stem = word[:-1]
        elif word.endswith("y"):
            stem = word[:-1] + "i"
        elif word[-1] in "gmt" and word[-2] in "aeiou" and word[-3] not in "aeiou":
            stem = word + word[-1]
        else:
            stem = word
        forms += (word, stem + "er", stem + "est")
    return forms
