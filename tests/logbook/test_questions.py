"""Readers' questions stand beside the line that they ask about."""

from __future__ import annotations

import datetime
import subprocess
import sys

import pytest

from handouts.errors import StudioFaults
from handouts.logbook.asked import (
    ReadersQuestion,
    UnknownQuestion,
    add_questions,
    all_questions,
    answer_question,
    open_questions,
    texts_by_questions,
)
from handouts.logbook.placing import place_of

TODAY = datetime.date(2029, 1, 20)


def asked(question="How far apart?", exercise="floor-press", part="", words="", language="en") -> ReadersQuestion:
    return ReadersQuestion("C2", 0, "2029-01-18", "P2", "2", exercise, language, part, words, question)


def test_a_question_finds_its_line_again_after_the_text_was_edited(folder, demo):
    text = demo.exercises["floor-press", "en"]
    part, words = place_of("Movement, step 3: how close to locked?", text)
    assert part == "Movement" and words.startswith("Stop just before your elbows lock")
    add_questions(folder, "C2", [asked(part=part, words=words)])
    (found,) = open_questions(folder)
    assert found.path == "exercise_texts/floor-press.md" and not found.moved
    own = folder / "exercise_texts" / "floor-press.md"
    own.parent.mkdir(exist_ok=True)
    from handouts import carried

    starter = (carried.starter_texts() / "floor-press.md").read_text("utf-8")
    own.write_text("\n\n" + starter, "utf-8")
    assert open_questions(folder)[0].line == found.line + 2
    own.write_text(starter.replace("Stop just before your elbows lock", "Leave your elbows soft"), "utf-8")
    (moved,) = open_questions(folder)
    assert moved.moved and "(the line was changed since)" in str(moved)
    assert starter.splitlines()[moved.line - 1].startswith("title:")


@pytest.mark.parametrize(
    "question, anchor, part, start",
    [
        ("what does neither fist passes above my neck mean?", "", "Movement", "Guide each fist"),
        ("Start position, step 2: which hand length?", "", "Start position", "Lay one dumbbell"),
        ("I did not understand this.", "finish", "Finish", ""),
        ("is it good?", "", "", ""),
    ],
)
def test_which_line_a_question_is_about(demo, question, anchor, part, start):
    found = place_of(question, demo.exercises["floor-press", "en"], anchor)
    assert found[0] == part and found[1].startswith(start) and bool(found[1]) == bool(start)


def test_a_question_in_french(demo):
    part, words = place_of("Mouvement, étape 3 : jusqu'où ?", demo.exercises["floor-press", "fr"])
    assert part == "Movement" and words.startswith("Arrêtez-vous juste avant")


def test_numbers_answers_and_counts(folder):
    first, second = add_questions(folder, "C2", [asked("One?"), asked("Two?", "goblet-squat")])
    assert (first.number, second.number) == (1, 2)
    assert add_questions(folder, "C2", [asked("One?")]) == ()  # the same question is kept once
    add_questions(folder, "C1", [asked("Three?")])
    answer_question(folder, "C2", 1, "Two hand lengths.", TODAY)
    assert [one.question.question for one in open_questions(folder)] == ["Three?", "Two?"]
    assert texts_by_questions(all_questions(folder)) == (("floor-press", 2, 1), ("goblet-squat", 1, 1))
    with pytest.raises(UnknownQuestion, match="C2 has no question 9; open ones: 2"):
        answer_question(folder, "C2", 9, "?", TODAY)


def test_a_broken_file_is_a_fault_with_its_line(folder):
    add_questions(folder, "C2", [asked()])
    path = folder / "questions" / "C2.csv"
    path.write_text(path.read_text("utf-8") + "x,y\n", "utf-8")
    with pytest.raises(StudioFaults, match=r"questions/C2\.csv:3"):
        open_questions(folder)


def test_no_questions_and_a_text_that_is_gone(folder):
    assert open_questions(folder) == ()
    add_questions(folder, "C2", [asked(exercise="gone"), asked(exercise="session")])
    assert [(one.path, one.line) for one in open_questions(folder)] == [("", 0), ("", 0)]


def test_asking_for_open_questions_loads_little():
    code = "import handouts.logbook.asked, sys; print([m for m in ('pydantic', 'yaml', 'click', 'jinja2') if m in sys.modules])"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
