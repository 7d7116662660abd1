"""The two sides of the body: none contradicts the other, and both are counted."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import cache
from itertools import chain
from typing import NamedTuple

from handouts.wording.whole_text.check import Check, Flaw
from handouts.wording.whole_text.document import Document, Piece
from handouts.wording.whole_text.limbs import at_odds


class _Words(NamedTuple):
    """How one language says that a limb of one side is borne by something.

    held: side and limb, then what it rests on, in the groups "side", "limb"
        and "on".  holding: a hand with a weight in it, in the group "side".
    moving: verbs that take a limb away from where it was.  legs, low: what
        counts as one leg and as the floor, by the beginnings of words.  both:
        words that count both sides; sides: the two sides, which together do.
    lies: a hand, foot or knee of which it is said where it is, in the groups
        "side", "limb" and "where"; put: one that is put there, perhaps by its
        "part"; at: the words there that tell one place from another, the same
        place in one group.  None where this is not asked.
    """

    held: re.Pattern[str]
    holding: re.Pattern[str]
    moving: re.Pattern[str]
    legs: tuple[str, ...]
    low: tuple[str, ...]
    left: str
    both: re.Pattern[str]
    sides: tuple[re.Pattern[str], re.Pattern[str]]
    lies: re.Pattern[str] | None = None
    put: re.Pattern[str] | None = None
    at: re.Pattern[str] | None = None


@cache
def _words(language: str) -> _Words:
    def pattern(text: str) -> re.Pattern[str]:
        return re.compile(text, re.IGNORECASE)

    if language == "fr":
        return _Words(
            held=pattern(
                r"\b(?P<limb>genou|pied|tibia|jambe|talon|orteils|main|paume|avant-bras|coude|poing)\s+(?P<side>gauche|droite?)"
                r"(?:\s+(?!sous\b|près\b)\w+){0,3}?\s+(?:sur|au)\s+(?:le\s+|la\s+|l['’]|un\s+|une\s+)?(?:\w+\s+(?:de\s+|du\s+)(?:la\s+)?)?"
                r"(?P<on>banc|chaise|siège|assise|support|marche|tapis|sol)\b"
            ),
            holding=pattern(
                r"\b(?:tenez|prenez|saisissez|attrapez|soulevez)\b[^.;]*\b(?:haltère|poids|poignée)\b[^.;]*\b(?:de|dans|avec)\s+"
                r"(?:la|votre)\s+main\s+(?P<side>gauche|droite)"
            ),
            moving=pattern(
                r"\b(?:lev\w+|soulev\w+|déplac\w+|ramen\w+|gliss\w+|recul\w+|avanc\w+|descend\w+|retir\w+|décoll\w+|montez|faites\s+un\s+pas)\b"
            ),
            legs=("genou", "pied", "tibia", "jambe", "talon", "orteils"),
            low=("sol", "tapis"),
            left="gauche",
            both=pattern(
                r"\b(?:chaque|l['’]autre|les\s+deux|de\s+l['’]autre|second\w*|alternat\w+|quel\s+que\s+soit|n['’]importe\s+quel\w*|"
                r"un\s+(?:côté|bras|pied|genou)|une\s+(?:jambe|main))\b"
            ),
            sides=(pattern(r"\bgauche\b"), pattern(r"\bdroite?\b")),
        )
    surface = "bench|chair|seat|support|step|box|stool|bed|sofa|mat|floor|ground"
    return _Words(
        held=pattern(
            # What it rests on is looked for ahead, so that "left knee and left hand on the bench" is two statements.
            r"\b(?P<side>left|right)\s+(?P<limb>kneecap|knee|shin|foot|leg|heel|toes|hand|palm|forearm|elbow|fist)\b"
            r"(?=(?:\s+and\s+(?:your\s+|the\s+)?(?:left\s+|right\s+)?(?:knee|shin|foot|hand|palm|forearm|elbow|toes)\b)?,?"
            r"(?:\s+(?!against\b|beside\b|near\b|above\b|over\b|off\b|and\b|next\b|under\b|below\b|left\b|right\b)\w+){0,5}?\s+(?:on|onto)\s+"
            rf"(?:the\s+|a\s+|your\s+)?(?:(?!left\b|right\b)\w+\s+){{0,4}}?(?P<on>{surface})\b)"
            rf"|\b(?:stand|kneel|balance|stay)\w*\s+on\s+(?:your|the)\s+(?P<side2>left|right)\s+(?P<limb2>foot|leg|knee|shin)\s+on\s+"
            rf"(?:the\s+|a\s+)?(?P<on2>{surface})\b"
            r"|\bstand\w*\s+on\s+(?:your|the)\s+(?P<side3>left|right)\s+(?P<limb3>foot|leg|knee)(?!\s+on\b)"
        ),
        holding=pattern(
            r"\b(?:hold|grip|grasp|pick\s+up|take|lift)\b[^.;]*\b(?:dumbbell|kettlebell|weight|handle|bar)\b[^.;]*\b(?:in|with)\s+"
            r"(?:your|the)\s+(?P<side>left|right)\s+hand"
        ),
        moving=pattern(
            r"\b(?:lift|lower|raise|step|move|bring|slide|swing|shift|return|walk|take\s+your|reach|draw|drop)(?:s|ing)?\b"
        ),
        legs=("knee", "shin", "foot", "leg", "heel", "toes"),
        low=("floor", "ground", "mat"),
        left="left",
        both=pattern(
            r"\b(?:(?:each|both|either|other|per|opposite|second|every)\s+(?:\w+\s+)?(?:sides?|arms?|legs?|hands?|f[eo][eo]t|knees?|"
            r"ways?|heels?|shoulders?|elbows?|hips?|turns?|directions?)|the\s+other|other\s+one|"
            r"one\s+(?:side|arm|leg|hand|foot|knee)|alternat\w+|in\s+turn|a\s+side|whichever|anticlockwise|counter-?clockwise)\b"
        ),
        sides=(pattern(r"\bleft\b"), pattern(r"\bright\b")),
        lies=pattern(
            r"\b(?P<side>left|right)\s+(?P<limb>hand|palm|fist|foot|knee)\s+"
            r"(?:is|lies|rests|stays|sits|stands|holds|grips|presses|touches|(?=on\b|against\b|flat\b))\b(?P<where>[^.;]*)"
        ),
        put=pattern(
            r"\b(?:set|put|place|rest|plant)\s+(?:the\s+(?P<part>ball|toes)\s+of\s+)?your\s+(?P<side>left|right)\s+"
            r"(?P<limb>hand|palm|fist|foot|knee)\b(?P<where>[^.;]*)"
        ),
        at=pattern(
            r"\b(?:(?P<thigh>thigh|lap)|(?P<hip>hip|waist|pelvis)|(?P<tail>tailbone|sacrum|buttock)|(?P<belly>belly|navel|stomach|ribs?)|(?P<chest>chest|breastbone)|"
            r"(?P<arm>upper\s+arm|forearm|elbow|wrist)|(?P<shoulder>shoulder|collarbone)|(?P<head>head|ear|temple|forehead|nape)|"
            r"(?P<shin>shin|calf|ankle)|(?P<knee>knee|kneecap)|(?P<heel>heel|toes|ball)|(?P<flat>flat)|"
            r"(?P<mat>mat|floor|ground|cushion|towel|pad)|(?P<bench>bench|chair|seat|rail|wall|table|stool|step|box)|"
            r"(?P<kit>dumbbell|band|strap|weight|handle|bar|kettlebell|bottle))\b"
        ),
    )


class _Statement(NamedTuple):
    """A limb of one side, what it rests on ("floor", "raised" or "weight"), and where that is said."""

    start: int
    end: int
    side: str
    leg: bool
    on: str
    words: str


def _statements(piece: Piece, words: _Words) -> Iterator[_Statement]:
    for found in words.held.finditer(piece.text):
        groups = {name.rstrip("23"): value for name, value in found.groupdict().items() if value}
        side = "left" if groups["side"].lower() == words.left else "right"
        low = "on" not in groups or groups["on"].lower().startswith(words.low)
        end = max(found.end(), found.end("on"))
        yield _Statement(
            piece.start + found.start(),
            piece.start + end,
            side,
            groups["limb"].lower().startswith(words.legs),
            "floor" if low else "raised",
            piece.text[found.start() : end],
        )
    for found in words.holding.finditer(piece.text):
        side = "left" if found["side"].lower() == words.left else "right"
        yield _Statement(piece.start + found.start(), piece.start + found.end(), side, False, "weight", found[0])


def _find_contradictions(document: Document) -> Iterator[Flaw]:
    words = _words(document.language)
    start = document.pieces_of("Start position")
    if start:
        told = list(_contradictions(start, words, None))
        more = _find_two_places(start, words), at_odds(start) if document.language == "en" else ()
        for flaw in chain.from_iterable(more):
            if not any(one.start < flaw.end and flaw.start < one.end for one in told):
                told.append(flaw)
        yield from told
    elif not document.is_exercise:
        yield from _contradictions(document.pieces, words, 1)


def _contradictions(pieces: Iterable[Piece], words: _Words, reach: int | None) -> Iterator[Flaw]:
    """reach: how many sentences back a statement holds; None for all the way."""
    standing: dict[tuple[str, bool], tuple[int, _Statement]] = {}
    for number, piece in enumerate(pieces):
        # Words are looked for one by one only where a side is named at all.
        if not words.held.search(piece.text) and not words.holding.search(piece.text):
            if words.moving.search(piece.text):
                for key in [key for key in standing if key[0] in piece.text.lower()]:
                    del standing[key]
            continue
        moves = bool(words.moving.search(piece.text))
        for statement in sorted(_statements(piece, words), key=lambda found: found.start):
            key = (statement.side, statement.leg)
            before_at, before = standing.get(key, (number, None))
            if before and before.on != statement.on and (not moves or before_at == number) and _held(before, statement):
                if reach is None or number - before_at <= reach:
                    limb = "leg" if statement.leg else "arm"
                    yield _two_places(statement.start, statement.end, before.words, statement.side, limb)
                continue
            standing[key] = (number, statement)


def _two_places(start: int, end: int, before: str, side: str, limb: str) -> Flaw:
    """before: the words that put the limb elsewhere."""
    return Flaw(
        start,
        end,
        f"'{before}' stands before: the {side} {limb} cannot be in two places.",
        f"Name the {'right' if side == 'left' else 'left'} side in one of the two, or say that the limb moves.",
    )


def _held(before: _Statement, now: _Statement) -> bool:
    """A hand may find a weight and then a support; it is the other way round that cannot be."""
    return before.on != "weight"


_STACKED = re.compile(r"\b(?:above|over)\b")


def _places(found: re.Match[str], words: _Words) -> frozenset[str]:
    """Where a limb is said to be; for a foot only how it stands, for a knee only what bears it or lies below it."""
    assert words.at
    where = f"{found.groupdict().get('part') or ''} {found['where']}"
    named = [one.lastgroup for one in words.at.finditer(where) if one.lastgroup]
    limb = found["limb"].lower()
    if limb == "foot":
        return frozenset([place for place in named if place in ("flat", "heel")][:1])
    if limb == "knee":
        borne = [place for place in named if place in ("mat", "knee", "heel")][:1]
        return frozenset(borne if _STACKED.search(where) or borne != ["heel"] else ())
    return frozenset(named) - {"flat", "heel", "knee"}


def _limb(found: re.Match[str]) -> tuple[str, str]:
    limb = found["limb"].lower()
    return found["side"].lower(), limb if limb in ("foot", "knee") else "hand"


def _find_two_places(pieces: Iterable[Piece], words: _Words) -> Iterator[Flaw]:
    """A hand, foot or knee that is said, or was put, to be in one place and, without a word of its moving, is said to be in another."""
    if words.lies is None or words.put is None:
        return
    known: dict[tuple[str, str], tuple[frozenset[str], str]] = {}
    for piece in pieces:
        put = list(words.put.finditer(piece.text))
        said = [found for found in words.lies.finditer(piece.text) if not any(one.start() <= found.start() < one.end() for one in put)]
        for found in said:
            side, limb = key = _limb(found)
            places = _places(found, words)
            before = known.get(key)
            if before and places and places.isdisjoint(before[0]):
                yield _two_places(piece.start + found.start(), piece.start + found.end(), before[1], side, limb)
            elif places:
                known[key] = (places, found[0].strip())
        if not said and words.moving.search(piece.text):
            for key in [key for key in known if key[0] in piece.text.lower() and key[1] in piece.text.lower()]:
                del known[key]
        for found in put:
            known[_limb(found)] = (_places(found, words), found[0].strip())


def _find_uncounted(document: Document) -> Iterator[Flaw]:
    if document.facts.sides not in ("each", "alternating"):
        return
    part = document.part("Count")
    if part is None or not document.prose[part.heading_end : part.end].strip():
        return
    words = _words(document.language)
    if not any(all(side.search(document.prose, part.heading_end, part.end) for side in sides) for sides in ((words.both,), words.sides)):
        yield Flaw(
            part.start,
            part.heading_end,
            f"The front matter has 'sides: {document.facts.sides}', but this part counts no second side.",
            "Say how both sides are counted: 'Do all repetitions with this arm, then as many with the other arm.'",
        )


START_SIDES = Check(
    name="start-sides",
    strength="blocks",
    what="The start position puts one limb in two places: the left knee on the bench cannot also be the knee that stands on the "
    "floor.",
    why="One of the two names the wrong side, and who does not watch cannot tell which.",
    everywhere=False,
    find=_find_contradictions,
    flag=(
        "Put your left knee on the bench. Set your left foot flat on the floor.",
        "Rest your right knee on the bench, and stand on your right foot.",
        "Place your left knee and left hand on the bench. Stand on your left foot.",
        "Kneel with your left knee on the bench. Your left foot stays flat on the floor.",
        "## Start position\n\nYour left palm is flat on the mat, under your left shoulder. Your left hand lies on your left thigh.\n",
        "## Start position\n\nYour right foot is flat on the floor. Your right foot is on its toes.\n",
        "## Start position\n\nSet the ball of your left foot on the towel. Your left foot stands flat on the bare floor.\n",
        "## Start position\n\nLeft hand flat on the seat. Left hand lies on your hip bone.\n",
        "## Start position\n\nYour left knee is bent, above your left heel. Your left knee presses into the cushion.\n",
        "## Start position\n\nLet your weight settle on the right foot. Because the right foot is up in the air, its ankle goes soft.\n",
        "## Start position\n\nTread on the band with your left foot. Slide the free left foot back until only its toes touch down.\n",
        "## Start position\n\nSlide your right foot back until the knee is straight. The straight left leg presses into the mat.\n",
        "## Start position\n\nPlace the left leg on top of the right one. The left knee sinks its weight into the mat.\n",
        "## Start position\n\nSlide your left foot straight back. Your front knee, the left one, is above its ankle.\n",
        "## Start position\n\nTouch the wall with your left fingertips. Keep the bottle quiet in your left hand.\n",
        "## Start position\n\nLeft hand: fingertips behind the left ear. Left arm: straight, pushing the mat away.\n",
        "## Start position\n\n1. Put your left palm on the bench.\n2. Keep your back long.\n3. Hold the dumbbell in your left "
        "hand.\n\n## Movement\n\n1. Pull.\n",
    ),
    leave=(
        "Put your left knee on the bench. Set your right foot flat on the floor.",
        "## Start position\n\nYour left palm lies on your left thigh. Move your left hand to your hip. Your left hand rests on your hip bone.\n",
        "## Start position\n\nYour right hand holds the dumbbell against your right thigh. Your right palm rests on your right thigh.\n",
        "Set your left foot on the step. Lift your left foot and set it on the floor.",
        "## Start position\n\nLift the right foot and pat the step. Bring the right foot down again. The right foot is flat on the floor.\n",
        "## Start position\n\nStand on your left foot. The free right foot hangs beside the step.\n",
        "## Start position\n\nHold the right edge of the seat with your right hand. Take your right hand off the seat. The bottle hangs from your right hand.\n",
        "## Start position\n\nBend your left knee. The straight right leg presses into the mat.\n",
        "Kneel with your left knee on the mat, right foot flat on the floor.",
        "Pick up the dumbbell with your right hand. Put your left palm on the bench.",
        "Stand so that the bench touches your left leg, your left foot flat on the floor.",
    ),
)

BOTH_SIDES = Check(
    name="both-sides",
    strength="advice",
    what="An exercise for each side, or for the sides in turn, whose count leaves one side out.",
    why="The reader does one side alone, or half of what is meant on each.",
    everywhere=True,
    find=_find_uncounted,
    flag=("---\ntitle: Row\nsides: each\n---\n## Count\n\nOne pull and one return count one.\n",),
    leave=(
        "---\ntitle: Row\nsides: each\n---\n## Count\n\nOne pull counts one. Then do the same with the other arm.\n",
        "---\ntitle: March\nsides: alternating\n---\n## Count\n\nA right step and a left step count one.\n",
        "---\ntitle: Press\nsides: together\n---\n## Count\n\nOne press counts one.\n",
    ),
)
