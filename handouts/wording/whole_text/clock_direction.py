"""Hours of the clock against the words around them."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache, lru_cache
from typing import NamedTuple

from handouts.wording.whole_text.check import Check, Flaw
from handouts.wording.whole_text.document import Document
from handouts.wording.whole_text.hours import (
    HOUR,
    Hours,
    arithmetic,
    from_twelve,
    spoken_hour,
)

_TOKEN = re.compile(r"[^\W_]+(?:'[^\W_]+)?|[^\w\s]")


class _Words(NamedTuple):
    """What the words of one language say about a direction.

    small: an amount too small for two hours.  carrying: words that may stand
        between it and the hour that it measures.  limb: a paired limb with its
        side in the group "side".  outward, inward: the way a limb goes.  own: a
        side of the reader's in the group "side", right before or after an
        hour.  degrees: a number of degrees in the group "degrees", or a part
        of a turn in "turn", right before or after an hour.  ahead, behind: in
        the group "straight" what lies neither to the left nor to the right.
        aside: out to a side; None where this is not asked.
    """

    small: re.Pattern[str]
    carrying: frozenset[str]
    limb: re.Pattern[str]
    outward: re.Pattern[str]
    inward: re.Pattern[str]
    own_after: re.Pattern[str]
    own_before: re.Pattern[str]
    degrees_before: re.Pattern[str]
    degrees_after: re.Pattern[str]
    ahead_before: re.Pattern[str]
    behind_before: re.Pattern[str]
    up_before: re.Pattern[str]
    down_before: re.Pattern[str]
    no_hour: re.Pattern[str]
    left: str
    turns: dict[str, int]
    aside_before: re.Pattern[str] | None = None


@cache
def _words(language: str) -> _Words:
    def pattern(text: str) -> re.Pattern[str]:
        return re.compile(text, re.IGNORECASE)

    if language == "fr":
        limb = "pied|genou|jambe|cuisse|talon|orteils?|hanche|bras|avant-bras|main|coude|poing|paume|épaule|pouce"
        return _Words(
            small=pattern(r"\b(?:légèrement|un\s+(?:tout\s+petit\s+)?peu|à\s+peine|un\s+brin)\b"),
            carrying=frozenset(
                "pied pieds genou genoux jambe jambes cuisse cuisses talon talons orteil orteils hanche hanches bras main mains "
                "coude coudes poing poings paume paumes épaule épaules pouce pouces le la les vos votre deux chaque gauche "
                "gauches droit droite droits droites vers à l'extérieur l'intérieur dehors en ouvert ouverte ouverts ouvertes "
                "tourné tournée tournés tournées pointé pointée pointés pointées et de côté , ( — –".split()
            ),
            limb=pattern(rf"\b(?:{limb})\s+(?P<side>gauche|droite?)\b"),
            outward=pattern(
                r"vers\s+l['’]extérieur|\bouvr\w+|\bouverte?s?\b|s['’]ouvr\w+|\bde\s+côté\b|\bécart\w+|en\s+dehors"
            ),
            inward=pattern(r"vers\s+l['’]intérieur|en\s+dedans"),
            own_after=pattern(r"[\s,(]*(?:est|se\s+trouve)?\s*(?:à|sur|de)\s+votre\s+(?P<side>gauche|droite)\b"),
            own_before=pattern(r"\b(?:à|sur)\s+votre\s+(?P<side>gauche|droite)[\s,]*(?:à|vers)?\s*$"),
            degrees_before=pattern(
                r"\b(?:(?P<degrees>\d+)\s*(?:degrés|°)|un\s+(?P<turn>quart\s+de|demi-?)\s*tour)[\s,]*(?:vers|jusqu['’]à|à|soit)?\s*$"
            ),
            degrees_after=pattern(r"[\s,(]*(?:soit|c['’]est-à-dire)\s+(?P<degrees>\d+)\s*(?:degrés|°)"),
            ahead_before=pattern(r"\bdevant\s+vous[\s,]*(?:à|vers)?\s*$"),
            behind_before=pattern(r"\bderrière\s+vous[\s,]*(?:à|vers)?\s*$"),
            up_before=pattern(r"\b(?:au-dessus\s+de\s+(?:la|votre)\s+tête|vers\s+le\s+plafond)[\s,]*(?:à|vers)?\s*$"),
            down_before=pattern(r"\b(?:vers\s+le\s+(?:bas|sol))[\s,]*(?:à|vers)?\s*$"),
            no_hour=pattern(r"(?<=à )(?:1[3-9]|2[0-4]|0)\s*heures\b(?!\s*\d)"),
            left="gauche",
            turns={"quart de": 90, "demi": 180, "demi-": 180},
        )
    limb = (
        "foot|toes?|big\\s+toe|knee|kneecap|leg|thigh|heel|hip|shin|arm|forearm|hand|elbow|fist|palm|shoulder|thumb|fingers|"
        "fingertips"
    )
    return _Words(
        small=pattern(
            r"\b(?:slightly|a\s+(?:tiny\s+|little\s+)?(?:little|bit|touch|fraction|hair|shade|tad)|barely)\b"
        ),
        carrying=frozenset(
            "foot feet toe toes knee knees kneecap leg legs thigh thighs heel heels hip hips shin arm arms forearm hand hands elbow "
            "elbows fist fists palm palms shoulder shoulders thumb thumbs fingers the your both each left right out outward "
            "outwards outside open opened turn turned rotated angled pointed pointing point points to toward towards at from and so "
            "that they it in inward inwards apart sideways side about is are big , ( — –".split()
        ),
        limb=pattern(rf"\b(?P<side>left|right)\s+(?:{limb})\b"),
        outward=pattern(
            r"\b(?:outwards?|outside|opens?|opened|opening|sideways|to\s+the\s+side|away\s+from\s+your\s+(?:body|midline)|"
            r"(?<!breathe )(?<!breathing )(?<!breath )(?<!reach )(?<!reaching )(?<!stretch )(?<!straighten )(?<!press )"
            r"(?<!push )(?<!hold )(?<!length )(?<!lengths )(?<!width )(?<!widths )out(?!\s+of\b))\b"
        ),
        inward=pattern(r"\b(?:inwards?|across\s+your\s+(?:body|chest|midline|belly))\b"),
        own_after=pattern(
            r"[\s,(]*(?:is|lies|sits|points|being)?\s*(?:on|to|at|off\s+to)?\s*(?:your|the)\s+(?:own\s+)?(?P<side>left|right)\b"
            r"(?!-?\s*(?:hand\s+(?!side)|foot|knee|arm|leg|hip|elbow|toes?|heel|shoulder|thigh|palm|thumb|fist))"
        ),
        own_before=pattern(
            r"\b(?:(?:on|to)\s+your\s+(?P<side>left|right)(?:\s+side)?|to\s+the\s+(?P<side2>left|right)\s+of\s+(?:straight\s+ahead|the\s+midline|12\s+o['’]clock))"
            r"[\s,]*(?:(?:the\s+)?toes)?\s*(?:is|at|towards?|to)?\s*$"
        ),
        degrees_before=pattern(
            r"\b(?:(?P<degrees>\d+)\s*(?:degrees|°)|a\s+(?P<turn>quarter|half)(?:[\s-]turn)|(?P<turned>quarter|half)\s+of\s+a\s+turn)"
            r"(?:\s+(?:out(?:wards?)?|(?:to\s+the\s+)?(?:left|right)|clockwise))?[\s,]*(?:to|towards?|that\s+is|or|so)?\s*$"
        ),
        degrees_after=pattern(
            r"[\s,(]*(?:that\s+is|which\s+is|or|so|about)?[\s,]*(?:about\s+)?(?P<degrees>\d+)\s*(?:degrees|°)(?!\s+(?:bend|of\s+bend))"
        ),
        ahead_before=pattern(
            r"(?<!of )\b(?:in\s+front\s+of\s+you|(?P<straight>straight\s+(?:ahead|in\s+front))(?:\s+of\s+you)?|ahead\s+of\s+you)[\s,]*(?:at|towards?|to)?\s*$"
        ),
        behind_before=pattern(r"\b(?P<straight>straight\s+)?behind\s+you(?:r\s+\w+)?[\s,]*(?:at|towards?|to)?\s*$"),
        up_before=pattern(r"\b(?:straight\s+up|overhead|above\s+your\s+head|to(?:wards?)?\s+the\s+ceiling)[\s,]*(?:at|towards?|to)?\s*$"),
        down_before=pattern(r"\b(?:straight\s+down|to(?:wards?)?\s+the\s+floor)[\s,]*(?:at|towards?|to)?\s*$"),
        no_hour=pattern(r"\b(?:1[3-9]|[2-9]\d|0)\s*o['’]\s?clock\b"),
        left="left",
        turns={"quarter": 90, "half": 180},
        aside_before=pattern(
            r"\b(?:out|straight)\s+to\s+(?:the|one|your|its)\s+(?:(?:left|right)\s+)?side"
            r"(?:\s*,?\s+(?:level\s+with|as\s+high\s+as|at\s+the\s+height\s+of)\s+(?:the|your)\s+\w+)?[\s,]*(?:at|towards?|to)?\s*$"
        ),
    )


def _find(document: Document) -> Iterator[Flaw]:
    language = document.language
    if not document.hours:
        return
    clock = document.facts.clock or "floor"
    for piece, hours in document.hours:
        for flaw in _in_sentence(piece.text, hours, language, clock):
            yield flaw._replace(start=piece.start + flaw.start, end=piece.start + flaw.end)


# The same sentence says the same: a long file of one line over and over is no slower than another.
@lru_cache(maxsize=1000)
def _in_sentence(text: str, named: tuple[Hours, ...], language: str, clock: str) -> tuple[Flaw, ...]:
    """The flaws of a sentence, counted from its start."""
    words = _words(language)
    all_hours = [hours for hours in named if all(1 <= hour < 13 for hour in hours.values)]
    flaws = [
        Flaw(
            found.start(),
            found.end(),
            f"There is no hour '{found[0]}' on a clock of 12.",
            "Write an hour from 1 to 12.",
        )
        for found in (words.no_hour.finditer(text) if len(all_hours) < len(named) else ())
    ]
    for at, hours in enumerate(all_hours):
        begin = all_hours[at - 1].end if at else 0
        end = all_hours[at + 1].start if at + 1 < len(all_hours) else len(text)
        flaw = (
            _too_small(text, begin, hours, end, words, language)
            or _wrong_way(text, begin, hours, end, words, language)
            or _wrong_side(text, begin, hours, end, words, language)
            or _wrong_degrees(text, begin, hours, end, words, language)
            or _wrong_half(text, begin, hours, words, language, clock)
            or _not_aside(text, begin, hours, words, language)
        )
        if flaw:
            flaws.append(flaw)
    return tuple(flaws)


def _too_small(text: str, begin: int, hours: Hours, end: int, words: _Words, language: str) -> Flaw | None:
    """ "slightly" with two hours away from 12."""
    furthest = max(hours.values, key=from_twelve)
    if from_twelve(furthest) < 2:
        return None
    for small in words.small.finditer(text, begin, end):
        if small.end() <= hours.start:
            start, stop = small.start(), hours.end
            between = text[small.end() : hours.start]
            if not words.carrying.issuperset(_TOKEN.findall(between.lower().replace("’", "'"))):
                continue
        elif re.fullmatch(r"[\s,]*(?:only|just|seulement|juste)?\s*", text[hours.end : small.start()]):
            start, stop = hours.start, small.end()
            if not re.match(r"\s*(?:[.,;:!?)]|$|out|vers\s+l['’]ext)", text[small.end() :]):
                continue
        else:
            continue
        nearer = spoken_hour(1.0 if furthest < 6 else 11.0, language)
        return Flaw(
            start,
            stop,
            f"'{small[0]}' and {spoken_hour(furthest, language)} contradict each other: {arithmetic(furthest, language)}.",
            f"Write {nearer} for {HOUR} degrees, or leave '{small[0]}' out if {from_twelve(furthest) * HOUR:g} degrees are meant.",
        )
    return None


def _is_left(hour: float) -> bool:
    return 6 < hour < 12


def _is_right(hour: float) -> bool:
    return 0 < hour % 12 < 6


def _side(found: re.Match[str], words: _Words) -> str:
    side = found["side"] or found.groupdict()["side2"]
    return "left" if side.lower() == words.left else "right"


def _wrong_way(text: str, begin: int, hours: Hours, end: int, words: _Words, language: str) -> Flaw | None:
    """A limb that opens outward to the other side of the body."""
    if len(hours.values) != 1:
        return None
    limbs = list(words.limb.finditer(text, begin, hours.start))
    if not limbs:
        return None
    limb, hour = limbs[-1], hours.values[0]
    after = re.match(r"[^.;:]{0,25}", text[hours.end : end])
    window_end = hours.end + (len(after[0]) if after and not words.limb.search(after[0]) else 0)
    window_start = max(text.rfind(sign, begin, limb.start()) + 1 for sign in ".;") or begin
    side = _side(limb, words)
    wrong_half = _is_left(hour) if side == "right" else _is_right(hour)
    right_half = _is_right(hour) if side == "right" else _is_left(hour)
    outward = words.outward.search(text, window_start, window_end)
    if outward and wrong_half:
        way, goes, other = outward[0], "outward", hour
    else:
        inward = words.inward.search(text, window_start, window_end)
        if not inward or not right_half:
            return None
        way, goes, other = inward[0], "inward", hour
    out_side = side if goes == "outward" else ("left" if side == "right" else "right")
    target = "1, 2 or 3" if out_side == "right" else "9, 10 or 11"
    return Flaw(
        limb.start(),
        hours.end,
        f"'{limb[0]}' and '{way}' contradict {spoken_hour(other, language)}: 3 is the reader's own right and 9 the left, so a "
        f"{side} limb that goes {goes} goes to {target}.",
        f"Write {spoken_hour(-hour % 12, language)}, or name the other side.",
    )


def _wrong_side(text: str, begin: int, hours: Hours, end: int, words: _Words, language: str) -> Flaw | None:
    """ "3 o'clock, on your left"."""
    hour = hours.values[-1]
    found = words.own_after.match(text, hours.end, end) or words.own_before.search(text, begin, hours.start)
    if not found or len(hours.values) != 1:
        return None
    side = _side(found, words)
    if (side == "left" and _is_right(hour)) or (side == "right" and _is_left(hour)):
        own = "right" if side == "left" else "left"
        return Flaw(
            min(found.start(), hours.start),
            max(found.end(), hours.end),
            f"{spoken_hour(hour, language)} lies on the reader's {own}: 3 is always the own right and 9 the own left.",
            f"Write {spoken_hour(-hour % 12, language)}, or name the {own} side.",
        )
    return None


def _wrong_degrees(text: str, begin: int, hours: Hours, end: int, words: _Words, language: str) -> Flaw | None:
    """ "45 degrees, to 2 o'clock": the two say different angles."""
    if len(hours.values) != 1:
        return None
    hour = hours.values[0]
    found = words.degrees_before.search(text, begin, hours.start) or words.degrees_after.match(text, hours.end, end)
    if not found:
        return None
    groups = found.groupdict()
    turn = (groups.get("turn") or groups.get("turned") or "").lower()
    degrees = words.turns.get(turn) if turn else int(groups["degrees"])
    if degrees is None or degrees > 360 or abs(degrees - from_twelve(hour) * HOUR) < HOUR / 2:
        return None
    nearest = round(degrees / HOUR * 2) / 2 % 12
    right = nearest if hour <= 6 else -nearest % 12
    return Flaw(
        min(found.start(), hours.start),
        max(found.end(), hours.end),
        f"{degrees} degrees and {spoken_hour(hour, language)} contradict each other: {arithmetic(hour, language)}.",
        f"Write {from_twelve(hour) * HOUR:g} degrees, or {spoken_hour(right, language)}.",
    )


def _wrong_half(text: str, begin: int, hours: Hours, words: _Words, language: str, clock: str) -> Flaw | None:
    """ "behind you, at 12 o'clock", on the floor's clock; "above your head, to 6 o'clock", on the wall's."""
    if len(hours.values) != 1 or clock not in ("floor", "wall"):
        return None
    hour = hours.values[0]
    to_twelve, to_six = (words.ahead_before, words.behind_before) if clock == "floor" else (words.up_before, words.down_before)
    twelve = to_twelve.search(text, begin, hours.start)
    six = to_six.search(text, begin, hours.start)
    found = twelve or six
    if not found:
        return None
    # "12 is straight ahead, 3 is on your right" is a list; "straight ahead, at 3" is none.
    straight = bool(found.groupdict().get("straight")) and not found[0].rstrip().endswith((",", "ahead", "front", "you"))
    off = from_twelve(hour) if twelve else 6 - from_twelve(hour)
    if off <= (0.5 if straight else 3):
        return None
    where = "12 is ahead and 6 is behind" if clock == "floor" else "12 is up and 6 is down"
    return Flaw(
        found.start(),
        hours.end,
        f"'{found[0].strip()}' and {spoken_hour(hour, language)} contradict each other: {where}.",
        f"Write {spoken_hour(12.0 if twelve else 6.0, language) if straight else spoken_hour((6 - hour) % 12, language)}, or change the words.",
    )


def _not_aside(text: str, begin: int, hours: Hours, words: _Words, language: str) -> Flaw | None:
    """ "out to the side, at 1 o'clock"."""
    found = words.aside_before.search(text, begin, hours.start) if words.aside_before else None
    hour = hours.values[0]
    if not found or len(hours.values) != 1 or 2 <= from_twelve(hour) <= 4:
        return None
    return Flaw(
        found.start(),
        hours.end,
        f"'{found[0].strip()}' and {spoken_hour(hour, language)} contradict each other: 3 is the reader's own right and 9 the left.",
        f"Write {spoken_hour(9.0 if _is_left(hour) else 3.0, language)}, or change the words.",
    )


CLOCK_DIRECTION = Check(
    name="clock-direction",
    strength="blocks",
    what="An hour of the clock and the words around it say different directions.",
    why="One of the two is wrong, and a reader who does not watch cannot tell which. One hour is 30 degrees; 3 is always the "
    "reader's own right. A left limb that opens outward goes to 9, 10 or 11, a right limb to 1, 2 or 3.",
    everywhere=False,
    find=_find,
    flag=(
        "12 o'clock is straight ahead. Turn your left foot slightly out to 10 o'clock.",
        "12 o'clock is straight ahead. Point both feet slightly outward, to 10 and 2 o'clock.",
        "12 o'clock is straight ahead. Let your left foot open a little (10 o'clock).",
        "12 o'clock is straight ahead. Turn your right foot outward to 10 o'clock.",
        "12 o'clock is straight ahead. Your left knee opens to 2 o'clock.",
        "12 o'clock is straight ahead. Turn your right foot inward, to 2 o'clock.",
        "12 o'clock is straight ahead. The chair stands on your left, at 3 o'clock.",
        "12 o'clock is straight ahead, 9 o'clock is on your right.",
        "12 o'clock is straight ahead. Turn 45 degrees, to 2 o'clock.",
        "12 o'clock is straight ahead. Make a quarter turn to 2 o'clock.",
        "12 o'clock is straight ahead. The bench stands behind you at 12 o'clock.",
        "12 o'clock is straight ahead. Point your right foot to 13 o'clock.",
        "12 o'clock is straight ahead. Your left arm reaches straight ahead, at 3 o'clock.",
        "12 o'clock is straight ahead. Your right elbow lies out to the side, level with the shoulder, at 1 o'clock.",
        "12 o'clock is straight ahead. Left foot flat, a little to the left of straight ahead, toes at 1 o'clock.",
        "12 o'clock is straight ahead. Turn both feet out: the left toes to 1 o'clock, the right toes to 11 o'clock.",
        "12 o'clock is straight ahead. Lay your right arm slightly out from your hip, at 3 o'clock.",
        "---\nclock: wall\n---\n12 o'clock is the ceiling. Slide both arms straight up above your head, to 6 o'clock.",
    ),
    leave=(
        "12 o'clock is straight ahead. Turn your left foot slightly out, to 11 o'clock.",
        "12 o'clock is straight ahead. With elbows slightly bent, raise both arms to 10 and 2 o'clock.",
        "12 o'clock is straight ahead. Turn your right foot outward to 2 o'clock.",
        "12 o'clock is straight ahead. Reach out with your right hand to 10 o'clock and find the rail.",
        "12 o'clock is straight ahead. Breathe out and move your right hand to 11 o'clock.",
        "12 o'clock is straight ahead. Turn your right foot inward, to 11 o'clock.",
        "12 o'clock is straight ahead, 3 o'clock is on your right, 9 o'clock on your left.",
        "12 o'clock is straight ahead. Turn 60 degrees, to 2 o'clock.",
        "12 o'clock is straight ahead. Reach out to the side, to 2 o'clock.",
        "12 o'clock is straight ahead. Your left foot stands to the left of straight ahead, toes at 11 o'clock.",
        "12 o'clock is straight ahead. Make a quarter turn to 3 o'clock.",
        "12 o'clock is straight ahead. The chair stands behind you at 6 o'clock.",
        "---\nclock: wall\n---\n12 o'clock is the ceiling. Slide both arms straight up above your head, to 12 o'clock.",
        "12 o'clock is straight ahead. Left foot out to 10 o'clock, right foot out to 2 o'clock.",
    ),
)
