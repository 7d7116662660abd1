"""From a validator's findings to what a trainer reads."""

import re

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from handouts.errors import StudioFaults
from handouts.models import ClientFacts, ExerciseFacts, ExerciseWords, PlanFacts, StudioFacts
from handouts.reading.faults import find_suggestion, instead_of, nearest, shape
from handouts.reading.yaml_text import read_yaml

from .conftest import CLIENT, PLAN


def faults_of(model, text):
    with pytest.raises(StudioFaults) as caught:
        shape(model, read_yaml(text, "f.yaml"), "f.yaml")
    return [(fault.line, fault.wrong, fault.instead) for fault in caught.value.faults]


CIRCUIT = """\
plan: P1
version: 1
title: {en: First, fr: Premier}
date: 2029-01-08
warm-up:
  time: 5 min
session:
  - structure: circuit
    rounds:
      level 1: 2
      level 2: 3
      level 3: 4
    station rest: 30 s
    round rest: 90 s
    exercises:
      - exercise: a
        dose: 10 reps
      - exercise: b
        dose: 10 reps
      - exercise: c
        dose: 10 reps
"""


def test_the_files_that_are_spoiled_below_are_sound():
    shape(PlanFacts, read_yaml(PLAN, "f"), "f")
    shape(PlanFacts, read_yaml(CIRCUIT, "f"), "f")
    shape(ClientFacts, read_yaml(CLIENT, "f"), "f")


@pytest.mark.parametrize(
    ("old", "new", "line", "wrong", "instead"),
    [
        # unknown and missing keys
        ("title:", "titel:", 3, "there is no key 'titel' at this place", "did you mean 'title'?"),
        ("title: {en: First, fr: Premier}\n", "", 1, "'title' is missing", "write a line 'title: ...'"),
        ("station rest:", "station_rest:", 13, "there is no key 'station_rest' at this place", "did you mean 'station rest'?"),
        ("    station rest: 30 s\n", "", 8, "'station rest' is missing", "write a line 'station rest: 90 s'"),
        ("      level 3: 4\n", "", 9, "'level 3' is missing", "write a line 'level 3: 3'"),
        ("        dose: 10 reps\n", "", 16, "'dose' is missing", "write a line 'dose: 8-12 reps each side'"),
        ("  - structure: circuit\n    rounds", "  - rounds", 8, "'structure' is missing", "write a line 'structure: ...' with"),
        (CIRCUIT[CIRCUIT.index("session") :], "", 1, "'session' is missing", "each item on a line of its own after '- '"),
        # choices
        ("structure: circuit", "structure: circus", 8, "'structure' cannot be 'circus'", "did you mean 'circuit'?"),
        ("structure: circuit", "structure: yoga", 8, "'structure' cannot be 'yoga'", "write 'as many rounds as possible'"),
        ("structure: circuit", "structure:", 8, "'structure' has no value", "write 'as many"),
        ("structure: circuit", "structure: [circuit]", 8, "'structure' cannot be", "circuit"),
        # amounts
        ("station rest: 30 s", "station rest: 0:30", 13, "'station rest': '0:30' is not a time", "write '90 s'"),
        ("station rest: 30 s", "station rest:", 13, "'station rest': there is no value", "such as '90 s'"),
        ("station rest: 30 s", "station rest: [30 s]", 13, "a list stands where one value belongs", "'90 s'"),
        ("station rest: 30 s", "station rest: 5 h", 13, "'5 h' is not from 0 s to 240 min", "in that range"),
        ("level 2: 3", "level 2: 03", 11, "'level 2': '03' is not a whole number", "digits alone"),
        ("level 2: 3", "level 2: 51", 11, "'level 2': 51 is not from 1 to 50", "in that range"),
        ("version: 1", "version: 0", 2, "'version': 0 is not from 1 to 999", "in that range"),
        ("time: 5 min", "time: 0 s", 6, "'0 s' is not from 1 s", "in that range"),
        ("2029-01-08", "8 January 2029", 4, "'8 January 2029' is not a date", "'2029-01-08'"),
        ("plan: P1", "plan:", 1, "'plan': there is no value", "after the colon"),
        ("plan: P1", "plan: ''", 1, "'plan': there is no value", "after the colon"),
        ("plan: P1", "plan: '  '", 1, "'plan': there are only spaces", "write the words"),
        ("plan: P1", f"plan: {'x' * 41}", 1, "is 41 characters long", "at most 40"),
        ("plan: P1", "plan: |\n  a\n  b", 1, "runs over several lines", "on one line"),
        ("First", "x" * 501, 3, "501 characters", "at most 500"),
        # lists and blocks
        (CIRCUIT[CIRCUIT.index("  - structure") :], "", 7, "'session' holds nothing", "at least one item"),
        ("      - exercise: b\n        dose: 10 reps\n", "", 15, "'exercises' holds 2 items", "write at least 3 items"),
        (CIRCUIT[CIRCUIT.index("session") :], "session: circuit\n", 7, "'circuit' stands where a list belongs", "'- '"),
        ("warm-up:\n  time: 5 min", "warm-up: 5 min", 5, "'5 min' stands where something else belongs", "'key: value' lines"),
        ("warm-up:\n  time: 5 min", "warm-up: [5 min]", 5, "a list stands where something else belongs", "'key: value' lines"),
        ("title: {en: First, fr: Premier}", "title: [a]", 3, "a list stands where one value belongs", "one line"),
        ("title: {en: First, fr: Premier}", "title: {en: }", 3, "'en': there is no value", "after the colon"),
    ],
)  # fmt: skip
def test_one_fault_one_line(old, new, line, wrong, instead):
    assert old in CIRCUIT
    found = faults_of(PlanFacts, CIRCUIT.replace(old, new, 1))
    assert len(found) == 1, found
    assert found[0][0] == line
    assert wrong in found[0][1]
    assert instead in found[0][2]


def test_a_value_for_all_levels_has_one_fault_not_three():
    assert len(faults_of(PlanFacts, PLAN.replace("sets: 3", "sets: three"))) == 1


def test_a_list_with_faulty_items_is_not_called_too_short():
    found = faults_of(PlanFacts, CIRCUIT.replace("exercise: b", "exercis: b"))
    assert [(line, wrong) for line, wrong, _ in found] == [
        (18, "there is no key 'exercis' at this place"),
    ]


def test_intervals_refuse_a_dose_that_would_not_count():
    text = CIRCUIT.replace("structure: circuit", "structure: intervals").replace("station rest", "rest")
    found = faults_of(PlanFacts, text.replace("    rest:", "    work: 40 s\n    rest:"))
    assert {wrong for _, wrong, _ in found} == {"'dose': timed intervals have no dose of their own"}
    assert [line for line, *_ in sorted(found)] == [18, 20, 22]


@pytest.mark.parametrize(
    ("lines", "line", "wrong", "instead"),
    [
        ("forms:", 4, "'forms': no form is named", "'print:', 'screen:', 'braille:', 'epub:' or 'text:'"),
        ("forms: {prnt: }", 4, "'prnt'", "did you mean 'print'?"),
        ("forms: {print: {colors: black on white}}", 4, "'colors'", "did you mean 'colours'?"),
        ("forms: {print: {size: 24}}", 4, "'size': '24' is not a print size", "'24 pt'"),
        ("forms: {print: {size: 13 pt}}", 4, "from 14 to 48", "'24 pt'"),
        ("forms: {print: {size: 49 pt}}", 4, "from 14 to 48", "'24 pt'"),
        ("forms: {braille: {grade: 3}}", 4, "'grade': 3 is not from 1 to 2", "range"),
        ("forms: {braille: {width: 19}}", 4, "'width': 19", "range"),
        ("forms: {braille: {code: uebb}}", 4, "'code' cannot be 'uebb'", "did you mean 'ueb'?"),
        ("forms: {screen: {sheets: [crd]}}", 4, "'sheets' cannot be 'crd'", "did you mean 'card'?"),
        ("forms: {screen: {sheets: }}", 4, "'sheets' holds nothing", "at least one item"),
        ("level: 4", 5, "'level': 4 is not from 1 to 3", "range"),
        ("guide dog: on", 5, "'on' is neither yes nor no", "'yes' or 'no'"),
        ("guide dog: true", 5, "'true' is neither yes nor no", "'yes' or 'no'"),
        ("kit: {dumbbells: [5 lb]}", 5, "how many of which weight", "'2 x 5 lb'"),
        ("kit: {dumbbells: [2 x 5]}", 5, "'5' is not a weight", "'25 lb'"),
        ("kit: {other: [bnch]}", 5, "'other' cannot be 'bnch'", "did you mean 'bench'?"),
        ("loads: {a: 6}", 5, "'a': '6' is not a load", "'6 kg each'"),
        ("loads: {a: {left: 6}}", 5, "'left': '6' is not a load", "'6 kg'"),
        ("loads: {a: {rigth: 6 kg}}", 5, "'rigth'", "did you mean 'right'?"),
        ("loads: [6 kg]", 5, "a list stands where a block of keys belongs", "'key: value'"),
        ("best sets: {a: 6 kg}", 5, "'a': '6 kg' stands", "'key: value'"),
        ("limits: [{demand: kneeling, joint: knee}]", 5, "a limit names one thing", "one of 'demand:'"),
        ("limits: [{joint: knee}]", 5, "belong together", "'at most: 90 degrees'"),
        ("limits: [{demand: kneeling, at most: 90 degrees}]", 5, "belong together", "both"),
        ("limits: [{demand: kneeling, side: left}]", 5, "'side' belongs to a joint", "'joint: knee'"),
        ("limits: [{}]", 5, "a limit names one thing", "one of 'demand:'"),
        ("age: 47 years", 5, "'age': '47 years' is not a whole number", "digits"),
        ("private:", 5, "'private': there is no value", "take the line out"),
    ],
)
def test_faults_of_a_client(lines, line, wrong, instead):
    base = "code: C1\nname: Noor\nunits: kg\nforms: {screen: }\nplans: [{plan: P1}]\n"
    shape(ClientFacts, read_yaml(base, "f"), "f")
    text = base.replace("forms: {screen: }", lines) if lines.startswith("forms") else base.replace("plans:", f"{lines}\nplans:")
    found = faults_of(ClientFacts, text)
    assert len(found) == 1, found
    assert found[0][0] == line
    assert wrong in found[0][1]
    assert instead in found[0][2]


def test_every_message_is_one_line_without_the_library_s_own_words():
    text = "code: [x]\nname: {}\nunits: {}\nforms: {print: [], screen: x, braille: {}}\nplans: {}\nlimits: x\nloads: 3\nkit: []\n"
    for line, wrong, instead in faults_of(ClientFacts, text):
        assert 1 <= line <= 8
        assert (wrong + instead).isprintable()
        assert not re.search(r"[Ii]nput should|valid (dict|list|str)|pydantic|\bNone\b", wrong + instead)


def test_the_nearest_name():
    names = ["goblet-squat", "split-squat", "seated-press"]
    assert nearest("goblet-sqat", names) == "goblet-squat"
    assert nearest("Goblet-Squat", names) == "goblet-squat"
    assert nearest("x", names) is None
    assert find_suggestion("goblet-sqat", names) == "; did you mean 'goblet-squat'?"
    assert find_suggestion("x", names) == ""


def test_what_to_write_instead_of_an_unknown_name():
    assert instead_of("goblet-sqat", ["goblet-squat"], "ask") == "did you mean 'goblet-squat'?"
    assert instead_of("x", ["aaa", "bbb", "ccc"], "ask") == "write 'aaa', 'bbb' or 'ccc'"
    assert instead_of("x", ["aaa"], "ask") == "write 'aaa'"
    assert instead_of("x", [], "ask") == "ask"
    assert instead_of("x", [f"name-{number}" for number in range(40)], "ask") == "ask"


ANY_VALUE = st.recursive(
    st.text("ab 0123kglbsrepmin%-:.'", max_size=12)
    | st.sampled_from(["circuit", "superset", "6 kg", "90 s", "2 x 5 kg", "left", "level 1", "none", "10 reps", ""]),
    lambda inside: st.lists(inside, max_size=3)
    | st.dictionaries(
        st.sampled_from(["structure", "exercises", "exercise", "dose", "level 1", "left", "print", "size", "joint", "x", "_"]),
        inside,
        max_size=4,
    ),
    max_leaves=12,
)


@pytest.mark.parametrize("model", [ClientFacts, PlanFacts, ExerciseFacts, ExerciseWords, StudioFacts])
@settings(max_examples=150, deadline=None)
@given(data=st.data())
def test_anything_in_any_place_is_read_or_refused_in_plain_words(model, data):
    keys = [field.alias or name for name, field in model.model_fields.items()]
    chosen = data.draw(st.dictionaries(st.sampled_from([*keys, "other", "nmae"]), ANY_VALUE, min_size=1, max_size=6))
    text = yaml.safe_dump(chosen, default_style='"')
    try:
        shape(model, read_yaml(text, "f"), "f")
    except StudioFaults as problem:
        for fault in problem.faults:
            assert 1 <= fault.line <= text.count("\n") + 1
            assert fault.wrong and fault.instead and str(fault).isprintable()
            assert not re.search(r"[Ii]nput should|valid (dict|list|str)|\bNone\b", str(fault))
