"""The other side: what decides between a direction and a length of time, and the arithmetic.

Worked by hand from the rule that hour h becomes 12 - h.
"""

import json
from pathlib import Path

import pytest

from handouts import mirror as rules
from handouts.mirror import mirror

ROOT = Path(__file__).resolve().parents[2]


@pytest.mark.parametrize("hour", range(1, 13))
@pytest.mark.parametrize("half", ["", ":30"])
def test_every_hour_of_the_clock(hour, half):
    minutes = 720 - (hour * 60 + (30 if half else 0))  # what is left of 12 hours, in minutes
    other = f"{minutes // 60 % 12 or 12}{half}"
    assert mirror(f"Step to {hour}{half} o'clock", "en") == f"Step to {other} o'clock"


@pytest.mark.parametrize(
    ("text", "other"),
    [
        # Half hours are directions where the text says so, and else lengths.
        ("2 h 30 est la ligne du talon", "9 h 30 est la ligne du talon"),
        ("D\u2019abord le talon, 2 h 30", "D\u2019abord le talon, 9 h 30"),
        ("vers 2 h 30", "vers 9 h 30"),
        ("Le circuit 2 h 30", "Le circuit 2 h 30"),
        # Whole hours are lengths where the text says so, and else directions.
        ("Le talon 2 heures", "Le talon 10 heures"),
        ("2 heures du matin", "2 heures du matin"),
        ("pendant 2 heures", "pendant 2 heures"),
        ("2 heures avant le repas", "2 heures avant le repas"),
        ("\u00e0 2 heures de repos", "\u00e0 2 heures de repos"),
        ("et 2 heures", "et 10 heures"),
    ],
)
def test_french_hours(text, other):
    assert mirror(text, "fr") == other
    assert mirror(other, "fr") == text


@pytest.mark.parametrize(
    ("text", "other"),
    [
        ("gauche", "droite"),  # "la droite", where no noun tells
        ("tournez gauche", "tournez droite"),
        ("un deux trois vite gauche", "un deux trois vite droit"),  # four words back
        ("un deux trois quatre vite gauche", "un deux trois quatre vite droite"),
        ("LE PIED GAUCHE", "LE PIED DROIT"),
        ("Gauche puis droite", "Droite puis gauche"),
    ],
)
def test_the_french_ending_follows_what_stands_before(text, other):
    assert mirror(text, "fr") == other


def test_a_language_without_rules_is_refused():
    with pytest.raises(ValueError, match="no rules to mirror 'de'; write the text in en or fr"):
        mirror("links", "de")


@pytest.mark.parametrize("language, passages", [("en", "open_[a-g].jsonl"), ("fr", "french.jsonl")])
def test_nothing_that_is_swapped_is_passed_over(language, passages):
    """The quick look that spares most sentences the rules, against the rules themselves."""
    likely, pattern, swaps = rules._RULES[language]
    rows = [json.loads(line) for path in (ROOT / "tests" / "wording_corpus").glob(passages) for line in path.read_text("utf-8").splitlines()]
    texts = [sentence for row in rows for sentence in row["text"].split(". ")]
    texts += ["at one-thirty", "half past two", "quarter to three", "at 4:30", "2 O'CLOCK", "vers 2 h", "3 HEURES", "sens des aiguilles", "Droite"]
    found = [text for text in texts if any(swaps[match.lastgroup](match) != match[0] for match in pattern.finditer(text))]
    assert found
    assert [text for text in found if not likely.search(text)] == []
