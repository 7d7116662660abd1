"""The other side of a text that is written for one side.

Left and right swap, hour h becomes 12 - h (12 and 6 stay, half past one
becomes half past ten), clockwise and anticlockwise swap.  This holds where 12
o'clock lies on the midline of the body, as in all four clock frames.

What a word means decides, not its letters: "right away", "a right angle", "two
reps left", "tout droit" and a rest of 1:30 stay as they are.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import lru_cache
from typing import TypeAlias

Swap: TypeAlias = Callable[[re.Match[str]], str]


@lru_cache(maxsize=10_000)  # a library says many sentences again and again
def mirror(text: str, language: str) -> str:
    """The text for the other side of the body.

    text: plain words or words with **strong** marks.
    language: "en" or "fr".
    Mirroring twice gives the first text again; only "counterclockwise" comes
    back as "anticlockwise", and "contraire" as "inverse".
    Raises ValueError for a language that has no rules here.
    """
    rules = _RULES.get(language)
    if rules is None:
        raise ValueError(f"no rules to mirror '{language}'; write the text in {' or '.join(_RULES)}")
    likely, pattern, swaps = rules
    if not likely.search(text):
        return text
    return pattern.sub(lambda match: swaps[match.lastgroup or ""](match), text)


# --- both languages ----------------------------------------------------------


def _as_cased(word: str, model: str) -> str:
    if model.isupper():
        return word.upper()
    return word.capitalize() if model[:1].isupper() else word


def _other_hour(hour: int, half: bool) -> int:
    """12 - h on a clock of 12; with a half hour the whole hours of what is left."""
    return (-hour - half) % 12 or 12


def _words(text: str) -> frozenset[str]:
    return frozenset(text.split())


def _keep(match: re.Match[str]) -> str:
    return match[0]


def _at_words(patterns: tuple[str, ...]) -> re.Pattern[str]:
    """Any of the patterns, at the beginnings of words alone: that none is tried within a word saves a quarter of the time."""
    return re.compile(rf"\b(?:{'|'.join(patterns)})", re.IGNORECASE)


def _hour_swapper(names: tuple[str, ...]) -> Callable[[str, bool], str]:
    """A function from an hour, in digits or in words, and whether a half hour
    follows it, to the mirrored hour."""
    numbers = {name: number for number, name in enumerate(names, 1)}

    def swap(word: str, half: bool) -> str:
        if word.isdigit():
            return str(_other_hour(int(word), half))
        return _as_cased(names[_other_hour(numbers[word.lower()], half) - 1], word)

    return swap


# --- English -----------------------------------------------------------------

_EN_HOURS = (
    "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
)
_EN_HOUR_WORD = "|".join(_EN_HOURS)
# The number of a step before a comma is no hour: "in step 2, 10 o'clock is ...".
_EN_HOUR = rf"(?<!\bstep )(?<!\bset )(?<!\bround )(?<!\bexercise )(?<![\w:.])(?:1[0-2]|[1-9]|{_EN_HOUR_WORD})(?!\d|[\w.]\w)"
_EN_LINK = r"(?:\s*,\s*|\s*[-–]\s*|\s*,?\s+(?:and|or|to)\s+)(?:(?:at|towards?|from)\s+)?"
_EN_OCLOCK = r"(?:\*\*)?[\s-]*o['’]\s?clock"
_EN_TIME_OF_DAY = r"(?!\s+(?:in\s+the\s+(?:morning|afternoon|evening)|sharp\b|[ap]\.?m\b))"
_EN_COLON = r"(?<![\d:.])(?:1[0-2]|[1-9]):30(?![\d:])"
_EN_PARTS = (
    "hand|foot|leg|arm|knee|elbow|shoulder|hip|side|heel|toes?|thumb|wrist|ankle|palm|fist|thigh|calf|shin|"
    "buttock|ear|temple|cheekbone|fingers?|fingertips?|forearm|ribs?|dumbbells?|ends?|edge"
)
# "right" and "left" as something else than a side.  Both words stand in each
# line, since a word that is kept must be kept on the way back too.
_EN_KEPT = "|".join((
    rf"\b(?:all|just|feels?|seems?|sounds?|quite|about)\s+(?:right|left)\b(?!-|\s+(?:of|and|or|to|{_EN_PARTS})\b)",
    r"\b(?:right|left)[\s-]+angle[sd]?\b",
    r"\b(?:right|left)-over\b",
    r"\b(?:what|whatever|none)\s+is\s+(?:right|left)\s+of\b",
    r"(?<!\byour )(?<!\bthe )(?<!\bto )\b(?:right|left)\s+(?:away|now|here|there|alone|out)\b",
    r"(?<!\byour )(?<!\bthe )(?<!\bto )\b(?:right|left)\s+(?:over|behind)\b(?!\s+(?:your|the|to)\b)",
    r"(?<!\byour )(?<!\bthe )\b(?:right|left)\s+(?:next\s+to|in\s+front\s+of)\b",
    rf"\b(?:what|whatever|nothing|something|anything|more|none|many|much|time|reps?|repetitions?|rounds?|sets?|"
    rf"seconds?|minutes?|breaths?)\s+(?:(?:is|are|you\s+have)\s+)?(?:right|left)\b(?!-|\s+(?:of|and|or|to|{_EN_PARTS})\b)",
    r"\b(?:right|left)\s+way\s+(?:up|round)\b",
))
_EN_LENGTH_BEFORE = re.compile(r"\b(?:rest|for|in|after|of|takes?|time|lasts?|within|under|than|about)(?:\s+is)?\s+$", re.I)
_EN_LENGTH_AFTER = re.compile(r"\s*(?:min|minutes?|s|seconds?|h|hours?|rest|[ap]\.?m)\b", re.I)

_en_hour = _hour_swapper(_EN_HOURS)


def _en_hours(match: re.Match[str]) -> str:
    """A list of hours before one "o'clock", each with ":30" or without."""
    return re.sub(
        rf"\b(1[0-2]|[1-9]|{_EN_HOUR_WORD})(:30)?\b",
        lambda found: _en_hour(found[1], bool(found[2])) + (found[2] or ""),
        match[0],
        flags=re.I,
    )


def _en_half(match: re.Match[str]) -> str:
    before, hour = re.fullmatch(r"(.*\s)(\w+)", match[0], re.S).groups()  # type: ignore[union-attr]
    return before + _en_hour(hour, True)


def _en_thirty(match: re.Match[str]) -> str:
    hour, after = re.fullmatch(r"(\w+)([\s-]+\w+)", match[0]).groups()  # type: ignore[union-attr]
    return _en_hour(hour, True) + after


def _en_quarter(match: re.Match[str]) -> str:
    """A quarter past one lies as far from 12 as a quarter to eleven."""
    quarter, gap, way, between, hour = re.fullmatch(r"(\w+)(\s+)(\w+)(\s+)(\w+)", match[0]).groups()  # type: ignore[union-attr]
    swapped = _as_cased("to" if way.lower() == "past" else "past", way)
    return quarter + gap + swapped + between + _en_hour(hour, False)


def _en_colon(match: re.Match[str]) -> str:
    """ "at 1:30" is a direction, "rest 1:30" a length of time."""
    if _EN_LENGTH_BEFORE.search(match.string[: match.start()]) or _EN_LENGTH_AFTER.match(match.string, match.end()):
        return match[0]
    return _en_hour(match[0].removesuffix(":30"), True) + ":30"


def _en_turn(match: re.Match[str]) -> str:
    return _as_cased("anticlockwise" if match[0].lower() == "clockwise" else "clockwise", match[0])


def _en_side(match: re.Match[str]) -> str:
    return _as_cased("right" if match[0].lower() == "left" else "left", match[0])


# Whatever the pattern below swaps has one of these in it; most sentences have none, and are soon done.
_EN_LIKELY = re.compile(r"left|right|clock|half|quarter|thirty|:30", re.IGNORECASE)
_EN_PATTERN = _at_words(
    (
        rf"(?P<kept>{_EN_KEPT})",
        rf"(?P<half>half[\s-]past\s+{_EN_HOUR})",
        rf"(?P<quarter>quarter\s+(?:past|to)\s+{_EN_HOUR})",
        rf"(?P<hours>{_EN_HOUR}(?::30)?(?:{_EN_LINK}{_EN_HOUR}(?::30)?)*{_EN_OCLOCK}{_EN_TIME_OF_DAY})",
        rf"(?P<thirty>(?:{_EN_HOUR_WORD})[\s-]thirty\b)",
        rf"(?P<colon>{_EN_COLON})",
        r"(?P<turn>(?:(?:anti|counter)-?)?clockwise\b)",
        r"(?P<side>(?:left|right)(?=(?:most|wards?)?\b))",
    )
)
_EN_SWAPS: dict[str, Swap] = {
    "kept": _keep,
    "half": _en_half,
    "quarter": _en_quarter,
    "hours": _en_hours,
    "thirty": _en_thirty,
    "colon": _en_colon,
    "turn": _en_turn,
    "side": _en_side,
}

# --- French ------------------------------------------------------------------

_FR_HOURS = (
    "une", "deux", "trois", "quatre", "cinq", "six", "sept", "huit", "neuf", "dix", "onze", "douze",
)
_FR_HOUR_WORD = "|".join(_FR_HOURS)
_FR_HOUR = rf"(?<!\bétape )(?<!\bsérie )(?<!\btour )(?<!\bexercice )(?<![\w:.,])(?:1[0-2]|[1-9]|{_FR_HOUR_WORD})(?!\w)"
_FR_LINK = r"(?:\s*,\s*|\s*[-–]\s*|\s+(?:et|ou|à)\s+)(?:(?:à|vers)\s+)?"
_FR_UNIT = r"(?:\*\*)?\s*(?:heures?|h)\b(?:\s*30\b|\s+et\s+demie\b)?"
_FR_DIRECTION_BEFORE = re.compile(r"(?:\bà|\bvers|\bentre|\bjusqu['’]à|\bdirection|\bposition)\s+(?:\*\*)?$", re.I)
_FR_LIST_BEFORE = re.compile(r"(?:\bet|\bou|,)\s+(?:\*\*)?$", re.I)
_FR_LENGTH_BEFORE = re.compile(
    r"\b(?:pendant|durant|après|avant|depuis|toutes?\s+les|dans|en|dur(?:e|ent|era|ée)|attend\w*|repos\w*|pauses?|"
    r"moins|plus|chaque|sommeil|délai|marche\w*|dor\w+|jeûne|intervalle)\s+"
    r"(?:(?:de|d['’]|au\s+moins|au\s+plus|les|environ|à\s+jeun)\s*)*(?:\*\*)?$",
    re.I,
)
_FR_LENGTH_AFTER = re.compile(
    r"\s+(?:de\s+(?:repos|pause|sommeil|marche|jeûne|plus|moins|récupération|travail|suite)|par\s+(?:jour|semaine|nuit)|"
    r"plus\s+tard|d['’]affilée|du\s+(?:matin|soir)|de\s+l['’]après-midi)\b",
    re.I,
)
_FR_MAYBE_LENGTH_AFTER = re.compile(r"\s+(?:après|avant|entre|au\s+(?:moins|plus))\b", re.I)
_FR_STATED_AFTER = re.compile(r"\s+(?:est|se\s+trouve|c['’]est|indique|désigne|correspond|sur)\b", re.I)

# Paired parts of the body and things that lie at a side.  The other side of
# "gauche" is "droit" or "droite", by the gender of the noun.
_FR_MASCULINE = _words(
    "pied genou coude bras avant-bras poignet talon côté poing pouce index majeur annulaire auriculaire doigt orteil "
    "mollet tibia ischion œil flanc bord muscle fessier haltère poids bout gros petit banc élastique tendon sol mur "
    "coin avant arrière accoudoir creux pli biceps triceps quadriceps pectoral sein os milieu centre"
)
_FR_FEMININE = _words(
    "main jambe épaule hanche cuisse cheville oreille fesse paume joue tempe plante pointe aisselle côte rotule "
    "omoplate clavicule crête malléole phalange poignée tête-haltère extrémité bande manchette moitié direction "
    "voûte pommette aine mâchoire narine paupière semelle chaussure barre rampe roue fente fossette"
)
# The plural of a part that a body has once on each side is never a side:
# "les bras droits" are straight arms.  Fingers and ribs are several on a side.
_FR_SEVERAL = frozenset(("doigts", "orteils", "côtes", "fessiers", "muscles", "phalanges"))
_FR_PLURALS = {**dict.fromkeys(("genoux",), "genou"), **dict.fromkeys(("yeux",), "œil")}
# Nouns on the midline, and words after which "droit" means straight.
_FR_STRAIGHT_AFTER = _words(
    "tout toute bien assis assise debout angle angles dos buste tronc corps cou torse dossier bassin menton regard "
    "tête nuque colonne ligne lignes posture planche reste restes restez restent rester est sont soit soient être "
    "tiens tenez tenir tient garde gardez garder gardent maintiens maintenez maintenir toi vous parfaitement très "
    "plus trop toujours avoir avez as a ai"
)
_FR_FEMININE_BEFORE = _words("à de vers sur la ta sa ma votre notre leur une cette")
_FR_MASCULINE_BEFORE = _words("le du au un ce ton son mon")
_FR_WORD = re.compile(r"[^\W\d_]+(?:-[^\W\d_]+)*|[.,;:!?()]")

_fr_hour = _hour_swapper(_FR_HOURS)


def _fr_hours(match: re.Match[str]) -> str:
    before, words = match.string[: match.start()], match[0]
    half = bool(re.search(r"(?:30|demie)$", words))
    if not _fr_is_direction(before, match.string[match.end() :], half):
        return words
    hours, unit = re.fullmatch(r"(.*?)((?:\*\*)?\s*(?:heures?|h)\b.*)", words, re.S | re.I).groups()  # type: ignore[union-attr]
    found = list(re.finditer(rf"\b(?:1[0-2]|[1-9]|{_FR_HOUR_WORD})\b", hours, re.I))
    last = found[-1]
    swapped = (
        re.sub(
            rf"\b(?:1[0-2]|[1-9]|{_FR_HOUR_WORD})\b",
            lambda hour: _fr_hour(hour[0], False),
            hours[: last.start()],
            flags=re.I,
        )
        + _fr_hour(last[0], half)
        + hours[last.end() :]
    )
    one = re.search(r"(?:\b1|\bune)$", swapped.rstrip(), re.I)
    unit = re.sub(r"(heure)s?", lambda word: word[1] + ("" if one else "s"), unit, count=1, flags=re.I)
    return swapped + unit


def _fr_is_direction(before: str, after: str, half: bool) -> bool:
    """Whether hours are a direction on the clock and no length of time."""
    if _FR_LENGTH_AFTER.match(after):
        return False
    if _FR_DIRECTION_BEFORE.search(before):
        return True
    if _FR_LENGTH_BEFORE.search(before) or _FR_MAYBE_LENGTH_AFTER.match(after):
        return False
    if _FR_LIST_BEFORE.search(before) or _FR_STATED_AFTER.match(after):
        return True
    return not half


def _fr_turn(match: re.Match[str]) -> str:
    """Two ways to name a turn, each with its own opposite."""
    words = match[0]
    if found := re.fullmatch(r"(sens\s+)(anti-?)?(horaire)", words, re.I):
        return found[1] + ("" if found[2] else "anti") + found[3]
    found = re.fullmatch(r"(sens)(\s+(?:inverse|contraire))?(\s+des\s+aiguilles)", words, re.I)
    assert found is not None
    return found[1] + ("" if found[2] else " inverse") + found[3]


def _fr_side(match: re.Match[str]) -> str:
    word = match[0].lower()
    words = [found.lower() for found in _FR_WORD.findall(match.string[max(0, match.start() - 80) : match.start()])]
    plural = word.endswith("s")
    noun = _fr_noun(words)
    if plural and noun not in _FR_SEVERAL:
        return match[0]
    if words and words[-1].rpartition("-")[2] in _FR_STRAIGHT_AFTER:
        return match[0]
    right = "droit" if _fr_masculine(words, noun) else "droite"
    swapped = "gauche" if word.startswith("droit") else right
    return _as_cased(swapped + ("s" if plural else ""), match[0])


def _fr_noun(words: list[str]) -> str:
    """The noun that a side word belongs to, or "": a few words back at most."""
    for word in reversed([word for word in words if word not in ("et", "ou", "puis", "ni")][-4:]):
        if word in ("gauche", "droit", "droite", "gauches", "droits", "droites"):
            continue
        if not word[0].isalpha() or word in _FR_FEMININE_BEFORE | _FR_MASCULINE_BEFORE:
            return ""
        if _singular(word) in _FR_MASCULINE | _FR_FEMININE:
            return word
    return ""


def _fr_masculine(words: list[str], noun: str) -> bool:
    if noun:
        return _singular(noun) in _FR_MASCULINE
    before = [word for word in words[-4:] if word not in ("et", "ou", "puis", "ni")]
    for word in reversed(before):
        if not word[0].isalpha() or word in _FR_FEMININE_BEFORE:
            return False
        if word in _FR_MASCULINE_BEFORE:
            return True
    return False


def _singular(word: str) -> str:
    if word in _FR_PLURALS:
        return _FR_PLURALS[word]
    known = _FR_MASCULINE | _FR_FEMININE
    return word if word in known else word.removesuffix("s")


_FR_LIKELY = re.compile(r"h|aiguille|gauche|droit", re.IGNORECASE)
_FR_PATTERN = _at_words(
    (
        rf"(?P<hours>{_FR_HOUR}(?:{_FR_LINK}{_FR_HOUR})*{_FR_UNIT})",
        r"(?P<turn>sens\s+(?:(?:anti-?)?horaire\b|(?:(?:inverse|contraire)\s+)?des\s+aiguilles\b))",
        r"(?P<side>(?:gauches?|droite?s?)\b)",
    )
)
_FR_SWAPS: dict[str, Swap] = {"hours": _fr_hours, "turn": _fr_turn, "side": _fr_side}

_RULES = {"en": (_EN_LIKELY, _EN_PATTERN, _EN_SWAPS), "fr": (_FR_LIKELY, _FR_PATTERN, _FR_SWAPS)}
