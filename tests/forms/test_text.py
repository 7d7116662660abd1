"""Plain text: width, structure, and a log that can be filled in and read."""

from __future__ import annotations

import pytest

from handouts.forms import Look, log_text, text
from handouts.models import TextForm
from tests.forms.trees import AWKWARD

UNBROKEN = TextForm.model_validate({"lines": "unbroken"})


def made(name: str, form: TextForm = TextForm()) -> str:  # noqa: B008 (frozen)
    return text.render(AWKWARD[name](), form, Look()).data.decode("utf-8")


@pytest.mark.parametrize("name", AWKWARD)
def test_no_line_is_longer_than_72_but_those_of_the_log(name: str) -> None:
    rows = made(name).splitlines()
    long = [row for row in rows if len(row) > 72 and "[" not in row]
    # A word longer than a line stands whole.
    assert all(max(map(len, row.split())) > 60 for row in long)
    assert not any(row != row.rstrip() or "\t" in row for row in rows)


@pytest.mark.parametrize("name", AWKWARD)
def test_unbroken_text_has_the_same_words(name: str) -> None:
    assert made(name, UNBROKEN).split() == made(name).split()
    if name == "usual":
        assert len(made(name, UNBROKEN).splitlines()) < len(made(name).splitlines())


def test_shape() -> None:
    rows = made("usual").splitlines()
    assert rows[:3] == ["Circuit at home", "", "Noor, C1: P1 version 2"]
    at = rows.index("Exercise 2 of 3: One-arm supported row")
    assert rows[at - 2 : at] == ["", ""] and rows[at + 1] == ""
    assert rows[at + 2] == "10 to 12 repetitions on each side, 15 pounds in one hand"
    assert "Client: Noor (C1)" in rows
    assert "1. Breathe out and pull your right elbow up, past your ribs, toward your" in rows
    nested = made("nested lists").splitlines()
    assert nested[7:10] == ["3.  Outer step one.", "    - One, point 1, with words enough to fill more than one line of", "      large print."]
    assert "Session 1; Weight 12.5 kilograms; Repetitions 9, 10, 11" in made("long table")


def test_the_log_can_be_filled_in_and_sent_back() -> None:
    filled = made("usual").replace("Weight, pounds [weight]:", "Weight, pounds [weight]: 15", 1).replace("[effort]:", "[effort]: 6")
    log = log_text.read(filled)
    assert (log.client, log.plan, log.version) == ("C1", "P1", 2)
    said = {(part.exercise, field.name): field.text for part in log.parts for field in part.fields}
    assert said == {("goblet-squat", "weight"): "15", ("session", "effort"): "6"}
    assert [part.exercise for part in log.parts][-1] == "session"


def test_utf_8_and_line_ends() -> None:
    data = text.render(AWKWARD["two languages"](), TextForm(), Look()).data
    assert "Respiration" in data.decode("utf-8") and b"\r" not in data and data.endswith(b"\n")
