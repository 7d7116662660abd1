"""The mirrored text: left and right, hours, turns, and what must stay.

The clock rule is arithmetic: 12 o'clock on the midline of the body, hour h
mirrored across it is 12 - h.
"""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from handouts.fitting.sides import mirror, mirror_exercise, other_side
from handouts.models import Exercise, ItemList, Paragraph, Studio

# (text, mirrored): each pair is tried both ways.
ENGLISH = [
    ("your left hand", "your right hand"),
    ("Left foot, right knee, LEFT elbow", "Right foot, left knee, RIGHT elbow"),
    ("the left-hand side, from left to right", "the right-hand side, from right to left"),
    ("the leftmost one, leftward and rightwards", "the rightmost one, rightward and leftwards"),
    ("**left** knee", "**right** knee"),
    ("one hand left of your navel", "one hand right of your navel"),
    ("just left of the midline", "just right of the midline"),
    ("cross your right over your left", "cross your left over your right"),
    ("Left, then right.", "Right, then left."),
    ("2 o'clock", "10 o'clock"),
    ("10 o’clock", "2 o’clock"),
    ("1 o'clock and 5 o'clock", "11 o'clock and 7 o'clock"),
    ("3 o'clock is your right", "9 o'clock is your left"),
    ("at 2 or 10 o'clock", "at 10 or 2 o'clock"),
    ("between 1 and 2 o'clock", "between 11 and 10 o'clock"),
    ("10, 11, or 12 o'clock", "2, 1, or 12 o'clock"),
    ("from 12 to 3 o'clock", "from 12 to 9 o'clock"),
    ("10-11 o'clock", "2-1 o'clock"),
    ("In step 2, 10 o'clock is near.", "In step 2, 2 o'clock is near."),
    ("two o'clock", "ten o'clock"),
    ("Five o'clock, ELEVEN O'CLOCK", "Seven o'clock, ONE O'CLOCK"),
    ("the 2-o'clock spot", "the 10-o'clock spot"),
    ("**2** o'clock", "**10** o'clock"),
    ("2\no'clock", "10\no'clock"),
    ("1:30", "10:30"),
    ("at 12:30 or 1:30 o'clock", "at 11:30 or 10:30 o'clock"),
    ("toward 4:30", "toward 7:30"),
    ("half past one", "half past ten"),
    ("Half past twelve, half-past 5", "Half past eleven, half-past 6"),
    ("at one-thirty", "at ten-thirty"),
    ("quarter past one", "quarter to eleven"),
    ("a quarter to four", "a quarter past eight"),
    ("turn clockwise", "turn anticlockwise"),
    ("Clockwise, then anticlockwise", "Anticlockwise, then clockwise"),
]

ENGLISH_STAYS = [
    "12 o'clock and 6 o'clock",
    "Twelve o'clock is ahead, six o'clock behind.",
    "Stop right away.",
    "All right, that is enough.",
    "That feels right.",
    "a right angle at the knee",
    "a right-angled frame",
    "Sit upright. Keep the upright post. A bright room.",
    "What is left over goes back.",
    "Put the left-over rope away.",
    "Leftovers and copyright",
    "Stop with two reps left.",
    "what is left of your breath? None left.",
    "ten seconds left",
    "right now",
    "the right way up",
    "Total time 42:35.",
    "It took 1:10:30 in all, or 24:54.",
    "Rest 1:30. Hold for 2:30 minutes.",
    "Call at 5 o'clock in the afternoon.",
    "13 o'clock is none; 0 o'clock neither",
    "8 to 12 reps, 12.5 kg, 3 sets",
    "",
]

FRENCH = [
    ("la main gauche", "la main droite"),
    ("le pied gauche", "le pied droit"),
    ("L'épaule gauche, l’oreille gauche", "L'épaule droite, l’oreille droite"),
    ("Votre genou gauche et votre cheville gauche", "Votre genou droit et votre cheville droite"),
    ("Le bras gauche pend.", "Le bras droit pend."),
    ("à gauche, puis à droite", "à droite, puis à gauche"),
    ("sur votre gauche", "sur votre droite"),
    ("LA MAIN GAUCHE", "LA MAIN DROITE"),
    ("les pieds gauche et droit", "les pieds droit et gauche"),
    ("les mains gauche et droite", "les mains droite et gauche"),
    ("le droit, puis le gauche", "le gauche, puis le droit"),
    ("la gauche", "la droite"),
    ("l’haltère de droite, celui de gauche", "l’haltère de gauche, celui de droite"),
    ("à une longueur de pied de vos orteils gauches", "à une longueur de pied de vos orteils droits"),
    ("les côtes droites", "les côtes gauches"),
    ("le pli de l'aine gauche", "le pli de l'aine droite"),
    ("le biceps gauche, l'accoudoir gauche", "le biceps droit, l'accoudoir droit"),
    ("l'avant-bras droit", "l'avant-bras gauche"),
    ("du pied droit à gauche", "du pied gauche à droite"),
    ("à 2 heures", "à 10 heures"),
    ("à 2 h", "à 10 h"),
    ("Posez-le à 4\u00a0heures.", "Posez-le à 8\u00a0heures."),
    ("À l'étape 2, 10 heures est proche.", "À l'étape 2, 2 heures est proche."),
    ("vers dix heures", "vers deux heures"),
    ("à 10 ou 2 heures", "à 2 ou 10 heures"),
    ("à 10 ou à 2 heures", "à 2 ou à 10 heures"),
    ("de 12 heures à 3 heures", "de 12 heures à 9 heures"),
    ("entre 1 heure et 2 heures", "entre 11 heures et 10 heures"),
    ("entre une et deux heures", "entre onze et dix heures"),
    ("à une heure", "à onze heures"),
    ("à 1 h 30", "à 10 h 30"),
    ("à une heure et demie", "à dix heures et demie"),
    ("3 heures est sur votre droite", "9 heures est sur votre gauche"),
    ("2 heures", "10 heures"),
    ("dans le sens horaire", "dans le sens antihoraire"),
    ("dans le sens des aiguilles d'une montre", "dans le sens inverse des aiguilles d'une montre"),
]

FRENCH_STAYS = [
    "12 heures et 6 heures",
    "Douze heures se trouve devant votre nez.",
    "Avancez tout droit.",
    "un angle droit, des angles droits",
    "Le dos droit, la tête droite, le buste bien droit.",
    "La jambe reste droite. Tenez-vous droit.",
    "les bras droits et les jambes droites",
    "une ligne droite, une chaise à dossier droit",
    "un endroit adroit",
    "vous avez droit à une pause",
    "deux heures de repos",
    "Attendez deux heures.",
    "pendant 2 heures, après 2 heures, toutes les deux heures",
    "une pause de 2 heures, plus de 2 heures, moins de deux heures",
    "une heure après le repas, deux heures avant la séance",
    "à 8 heures du matin",
    "48 heures, 24 h, 14 heures",
    "La séance dure une heure.",
    "une heure de marche par jour",
    "42:35",
]


@pytest.mark.parametrize(
    ("language", "text", "mirrored"),
    [*(("en", *pair) for pair in ENGLISH), *(("fr", *pair) for pair in FRENCH)],
)
def test_both_ways(language: str, text: str, mirrored: str) -> None:
    assert mirror(text, language) == mirrored
    assert mirror(mirrored, language) == text


@pytest.mark.parametrize(
    ("language", "text"), [*(("en", text) for text in ENGLISH_STAYS), *(("fr", text) for text in FRENCH_STAYS)]
)
def test_what_stays(language: str, text: str) -> None:
    assert mirror(text, language) == text


def test_other_spellings_of_a_turn_are_swapped_once() -> None:
    # Two spellings have one opposite, so the way back gives the other spelling.
    assert mirror("Turn counterclockwise, counter-clockwise.", "en") == "Turn clockwise, clockwise."
    assert mirror("dans le sens contraire des aiguilles", "fr") == "dans le sens des aiguilles"


def test_a_language_without_rules_is_refused() -> None:
    with pytest.raises(ValueError, match="no rules to mirror 'de'"):
        mirror("linke Hand", "de")


@pytest.mark.parametrize("hour", range(1, 13))
def test_every_hour(hour: int) -> None:
    other = 12 if hour == 12 else 12 - hour
    assert mirror(f"at {hour} o'clock", "en") == f"at {other} o'clock"
    assert mirror(f"vers {hour} {'heure' if hour == 1 else 'heures'}", "fr") == (
        f"vers {other} {'heure' if other == 1 else 'heures'}"
    )
    # A half hour later on one side is a half hour earlier on the other.
    assert mirror(f"toward {hour}:30", "en") == f"toward {(11 - hour) % 12 or 12}:30"


# --- twice is once -------------------------------------------------------------

english_pieces = st.sampled_from(
    [text for pair in ENGLISH for text in pair]
    + ENGLISH_STAYS
    + ["your", "the", "hand", "step", "and", "to", "8", "12", "one", "rest", "of", ",", ".", "over", "left", "right"]
)
french_pieces = st.sampled_from(
    [text for pair in FRENCH for text in pair] + FRENCH_STAYS + ["le", "la main", "le pied", "vers", "et", "ou", ",", "."]
)


@settings(max_examples=400)
@given(st.lists(english_pieces, max_size=8).map(" ".join))
def test_twice_gives_the_english_text_again(text: str) -> None:
    assert mirror(mirror(text, "en"), "en") == text


@settings(max_examples=400)
@given(st.lists(french_pieces, max_size=8).map(". ".join))
def test_twice_gives_the_french_text_again(text: str) -> None:
    assert mirror(mirror(text, "fr"), "fr") == text


@given(st.text(), st.sampled_from(["en", "fr"]))
def test_any_text_at_all_comes_back(text: str, language: str) -> None:
    assert mirror(mirror(text, language), language) == text


# --- the starter library -------------------------------------------------------


def _lines(exercise: Exercise) -> list[str]:
    lines: list[str] = []
    for part in exercise.parts:
        for block in part.blocks:
            if isinstance(block, Paragraph):
                lines.append(block.text)
            elif isinstance(block, ItemList):
                for item in block.items:
                    lines.append(item.text)
                    lines.extend(inner.text for inner in item.items)
    return lines


def test_every_starter_text_mirrors_whole(demo: Studio) -> None:
    """Each side word and each hour has moved, and twice is the text again."""
    assert len(demo.exercises) >= 32
    for (name, language), exercise in demo.exercises.items():
        mirrored = mirror_exercise(exercise)
        assert mirror_exercise(mirrored).model_dump() == exercise.model_dump(), (name, language)
        sides = r"\b(?:left|right|gauches?|droite?s?)\b"
        hours = r"\b(\d+)\s+(?:o['’]clock|heures?)"
        for line, other in zip(_lines(exercise), _lines(mirrored), strict=True):
            before, after = re.findall(sides, line, re.I), re.findall(sides, other, re.I)
            assert len(before) == len(after)
            assert not any(a.lower() == b.lower() for a, b in zip(before, after, strict=True)), (name, line)
            for a, b in zip(re.findall(hours, line), re.findall(hours, other), strict=True):
                assert int(b) == (12 if a == "12" else 12 - int(a)), (name, line)


def test_only_words_and_the_written_side_change(demo: Studio) -> None:
    row = demo.exercises["one-arm-supported-row", "en"]
    other = mirror_exercise(row)
    assert (row.facts.written_for, other.facts.written_for) == ("right", "left")
    assert other.facts.model_dump() == {**row.facts.model_dump(), "written_for": "left"}
    assert [part.line for part in other.parts] == [part.line for part in row.parts]
    assert other_side("left") == "right" and other_side("right") == "left"
