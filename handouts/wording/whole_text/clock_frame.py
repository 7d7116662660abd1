"""12 o'clock is said to be somewhere before an hour is used."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from handouts.wording.whole_text.check import Check, Flaw
from handouts.wording.whole_text.document import Document
from handouts.wording.whole_text.hours import spoken_hour

# Where 12 may be: the words of each clock frame.  "across" has the ceiling
# too, when the reader lies on the back.
_PLACES = {
    "en": {
        "ahead": r"ahead|in front|forwards?|your nose|facing",
        "ceiling": r"ceiling|sky|straight up|above you",
        "crown": r"crown|top of (?:your|the) head|past your head|beyond your head|above your head|your head",
    },
    "fr": {
        "ahead": r"devant|en face|votre nez|du nez",
        "ceiling": r"plafond|ciel|au-dessus de vous",
        "crown": r"sommet|haut du crâne|au-delà de (?:votre|la) tête|votre tête|crâne",
    },
}
_FRAMES = {"floor": "ahead", "wall": "ceiling", "crown": "crown", "across": "ceiling"}
_SAID = {"ahead": "straight ahead of your nose", "ceiling": "the ceiling", "crown": "past the crown of your head"}
_SAID_FR = {"ahead": "juste devant votre nez", "ceiling": "le plafond", "crown": "au-delà du sommet de votre tête"}


@cache
def _statement(language: str) -> re.Pattern[str]:
    """A sentence that says where 12 is."""
    places = "|".join(_PLACES[language].values())
    if language == "fr":
        twelve = r"(?:12|douze)\s*(?:heures?|h\b)"
        pattern = (
            rf"{twelve}[\s,:(]*(?:est|se\s+trouve|c['’]est|désigne|indique|correspond|=)|{twelve}[^.;]{{0,30}}?\b(?:{places})"
            rf"|(?:est|c['’]est|=)\s+(?:à\s+)?{twelve}|\b(?:{places})[^.;]{{0,20}}?,?\s*(?:à\s+)?{twelve}"
        )
    else:
        twelve = r"(?:12|twelve)\s*o['’]\s?clock"
        pattern = (
            rf"{twelve}[\s,:(]*(?:is|lies|sits|stands|means|points|being|=)\b|{twelve}[^.;]{{0,30}}?\b(?:{places})\b"
            rf"|\b(?:is|as|call\s+it|be|=)\s+(?:at\s+)?(?:your\s+)?{twelve}|\b(?:{places})\b[^.;]{{0,20}}?,?\s*(?:at\s+)?{twelve}"
        )
    return re.compile(pattern, re.IGNORECASE)


@cache
def _said_in_numbers(language: str) -> re.Pattern[str]:
    """The same with the bare number: "12 is straight ahead of you, 3 is on your right"."""
    places = "|".join(_PLACES[language].values())
    if language == "fr":
        pattern = rf"\b(?:12|midi)\s+(?:est|se\s+trouve|c['’]est|=)\s[^.;]{{0,30}}?\b(?:{places})"
    else:
        pattern = rf"\b(?:12|twelve|noon)\s+(?:is|lies|sits|stands|points|means|=)\s[^.;]{{0,30}}?\b(?:{places})\b"
    return re.compile(pattern, re.IGNORECASE)


@cache
def _place(language: str, place: str) -> re.Pattern[str]:
    return re.compile(rf"\b(?:{_PLACES[language][place]})\b", re.IGNORECASE)


def _find(document: Document) -> Iterator[Flaw]:
    language = document.language
    if not document.hours:
        return
    statement = _statement(language)
    said = _SAID_FR if language == "fr" else _SAID
    told = False
    places: set[str] = set()
    first_statement: Flaw | None = None
    wanted = _FRAMES.get(document.facts.clock, "")
    for piece, hours in document.hours:
        if told and (not wanted or wanted in places):
            return
        if any(12 in named.values for named in hours) and statement.search(piece.text):
            told = True
            found = {place for place in _PLACES[language] if _place(language, place).search(piece.text)}
            places |= found
            if not wanted or wanted in places:
                return
            if first_statement is None and found:
                first_statement = Flaw(
                    piece.start,
                    piece.end,
                    f"The front matter has 'clock: {document.facts.clock}', in which 12 is {_SAID[wanted]}; "
                    "this sentence puts 12 elsewhere.",
                    "Say the same in both places.",
                )
        elif not told and not _said_in_numbers(language).search(document.prose, 0, piece.end):
            first = hours[0]
            frame = said[wanted or "ahead"]
            example = f"{spoken_hour(12, language)} {'se trouve' if language == 'fr' else 'is'} {frame}"
            yield Flaw(
                piece.start + first.start,
                piece.start + first.end,
                "No sentence before this one says where 12 is, so the hour can point anywhere.",
                f"Say it first, such as: '{example}.'",
            )
        told = True
    if first_statement is not None:
        yield first_statement


CLOCK_FRAME = Check(
    name="clock-frame",
    strength="blocks",
    what="An hour of the clock is used before the text says where 12 is, or says it otherwise than its front matter.",
    why="12 can be straight ahead, the ceiling or the crown of the head. Without it an hour is no direction at all.",
    everywhere=False,
    find=_find,
    flag=(
        "Set your right foot at 2 o'clock.",
        "Lie on your back. Open both arms to 10 and 2 o'clock.",
        "Hold both arms at 10 and 2.",
        "Open both arms to 10 and 2.",
        "Point your right foot to 1 o'clock. 12 o'clock is straight ahead of your nose.",
        "---\ntitle: Wall slide\nsides: together\nclock: wall\n---\n12 o'clock is straight ahead of your nose. Raise both arms "
        "to 2 and 10 o'clock.",
    ),
    leave=(
        "12 o'clock is straight ahead of your nose. Set your right foot at 2 o'clock.",
        "With 12 o'clock at the ceiling, raise your right arm to 2 o'clock.",
        "The crown of your head is 12 o'clock. Let your left arm rest at 9 o'clock.",
        "Think of a clock on the floor: 12 is straight ahead of you, 3 is on your right. Step to 2 o'clock.",
        "The class starts at 10 o'clock in the morning.",
        "Work clockwise round the ankle.",
        "Take 10 and 2 more.",
        "Count to 10 and 2.",
    ),
)
