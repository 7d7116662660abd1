"""Faults under 'care', the care table itself, and parts in the words of one option."""

import shutil

import pytest

from handouts import carried
from handouts.errors import StudioFaults
from handouts.reading import read_studio_parts
from handouts.reading.care import read_care_table


@pytest.fixture
def faults_with(tmp_path):
    """The faults of client C2 of the demo with other lines for 'care'."""

    def read(care):
        folder = tmp_path / "studio"
        shutil.copytree(carried.demo_studio(), folder)
        client = folder / "clients" / "C2.yaml"
        client.write_text(client.read_text("utf-8") + f"care:\n{care}\n", "utf-8")
        return [(f.line, f.wrong, f.instead) for f in read_studio_parts(folder, carried.starter_texts()).faults_by_client.get("C2", ())]

    return read


LAST = len((carried.demo_studio() / "clients" / "C2.yaml").read_text("utf-8").splitlines())


@pytest.mark.parametrize(
    ("care", "wrong", "instead"),
    [
        ("  - glaucma", "no care 'glaucma'", "did you mean 'glaucoma'?"),
        ("  - knee trouble", "needs the deepest bend", "'at most: 90 degrees'"),
        ("  - care: glaucoma\n    at most: 90 degrees", "bounds no joint", "take 'at most' out"),
        ("  - care: glaucoma\n    side: left", "concerns no single side", "take 'side' out"),
        ("  - one weaker side", "which side is weaker", "'side: left'"),
        (
            "  - care: glaucoma\n    without: [overhead]\n    advised by: A doctor\n    since: 2029-01-02",
            "asks for no 'overhead'",
            "'head_below_heart'",
        ),
        ("  - care: glaucoma\n    without: [head_below_heart]", "needs somebody who said so", "'advised by:'"),
        ("  - care: glaucoma\n    advised by: A doctor", "belong together", "on which day"),
    ],
)
def test_faults_under_care_have_their_line(faults_with, care, wrong, instead):
    ((line, said, better),) = faults_with(care)
    assert line == LAST + 2
    assert wrong in said and instead in better


def test_a_care_that_is_named_twice_is_a_fault(faults_with):
    ((line, said, _),) = faults_with("  - glaucoma\n  - glaucoma")
    assert line == LAST + 3 and "named twice" in said


def test_a_sound_entry_is_no_fault(faults_with):
    assert faults_with("  - glaucoma\n  - care: knee trouble\n    side: left\n    at most: 80 degrees") == []


def test_a_table_without_sources_is_refused(tmp_path):
    table = tmp_path / "care.yaml"
    table.write_text(
        "cares:\n  thing:\n    names: {en: [thing]}\n    ask: {whom: a doctor, before: any sheet}\n"
        "    limits:\n      - demand: kneeling\n        why: it hurts\n",
        "utf-8",
    )
    with pytest.raises(StudioFaults) as problem:
        read_care_table(table)
    assert [(fault.line, fault.wrong) for fault in problem.value.faults] == [
        (4, "'source' is missing"),
        (6, "'source' is missing"),
    ]


# --- parts in the words of one option ------------------------------------------------------


@pytest.fixture
def squat_with(tmp_path):
    """The goblet squat of a studio, with one change in its text."""

    def read(old, new):
        folder = tmp_path / "studio"
        shutil.copytree(carried.demo_studio(), folder)
        text = (carried.starter_texts() / "goblet-squat.md").read_text("utf-8")
        assert old in text
        (folder / "exercise_texts").mkdir(exist_ok=True)
        (folder / "exercise_texts" / "goblet-squat.md").write_text(text.replace(old, new, 1), "utf-8")
        return read_studio_parts(folder, carried.starter_texts())

    return read


def test_an_option_has_parts_of_its_own(squat_with):
    text = squat_with("title: Goblet squat", "title: Goblet squat").studio.exercises["goblet-squat", "en"]
    own, usual = text.part("Finish", "one-hand-hold"), text.part("Finish")
    assert own.option == "one-hand-hold" and usual.option is None and own.line > usual.line
    assert text.part("Finish", "slow-lowering") == usual
    assert text.part("Breathing", "one-hand-hold") == text.part("Breathing")
    assert all(part.option is None for part in text.parts)


@pytest.mark.parametrize(
    ("old", "new", "wrong", "instead"),
    [
        ("### One-hand hold", "### One-hand hald", "no option is called 'One-hand hald'", "did you mean 'One-hand hold'?"),
        ("### One-hand hold", "### Upside down", "no option is called 'Upside down'", "bold name of an item"),
        ("### One-hand hold", "### One-hand hold\n\n1. Once.\n\n### One-hand hold", "a second time", "put the two together"),
        ("### One-hand hold", "### One-hand hold\n\n### To chair height", "nothing stands below 'One-hand hold'", "write the words"),
    ],
)
def test_faults_of_such_a_part(squat_with, old, new, wrong, instead):
    faults = squat_with(old, new).faults
    assert any(wrong in fault.wrong and instead in fault.instead and fault.line for fault in faults), faults
