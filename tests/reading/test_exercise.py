"""Exercise texts: data, parts, options, and the texts in other languages."""

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from handouts.errors import StudioFaults
from handouts.models import ItemList, ListItem, Paragraph
from handouts.reading.exercise import (
    exercise_from,
    name_text_file,
    open_text,
    read_headings,
    slug,
    translation_from,
)

from .conftest import SQUAT, SQUAT_IN_FRENCH

HEADINGS = read_headings(Path(__file__).resolve().parents[2] / "handouts" / "languages" / "parts.yaml")
LANGUAGES = tuple(HEADINGS)


def squat(tmp_path, text=SQUAT, name="goblet-squat.md"):
    path = tmp_path / name
    path.write_text(text, "utf-8")
    return exercise_from(open_text(name_text_file(path, f"exercise_texts/{name}", False, LANGUAGES), HEADINGS))


def in_french(tmp_path, text=SQUAT_IN_FRENCH, name="goblet-squat.fr.md"):
    path = tmp_path / name
    path.write_text(text, "utf-8")
    file = name_text_file(path, f"exercise_texts/{name}", False, LANGUAGES)
    return translation_from(open_text(file, HEADINGS), squat(tmp_path))


def faults_of(reader, *given):
    with pytest.raises(StudioFaults) as caught:
        reader(*given)
    return [(fault.line, fault.wrong, fault.instead) for fault in caught.value.faults]


def line_of(text, piece):
    return text[: text.index(piece)].count("\n") + 1


def test_a_text_with_its_lines(tmp_path):
    text = squat(tmp_path)
    assert (text.id, text.path, text.starter) == ("goblet-squat", "exercise_texts/goblet-squat.md", False)
    assert text.facts.title == "Goblet squat"
    assert text.facts.equipment == (("dumbbell",),)
    assert text.facts.knee_bend == 110
    assert [part.name for part in text.parts] == [
        "Equipment", "Start position", "Movement", "Breathing", "Count", "Key points", "Easier", "Harder", "Finish",
    ]  # fmt: skip
    movement = text.part("Movement")
    assert movement.line == line_of(SQUAT, "## Movement")
    (steps,) = movement.blocks
    assert steps == ItemList(
        ordered=True,
        items=(
            ListItem(text="Bend both knees.", line=line_of(SQUAT, "1. Bend")),
            ListItem(text="Stand up, and breathe out.", line=line_of(SQUAT, "2. Stand up")),
        ),
    )
    assert text.part("Count").blocks == (
        Paragraph(text="Down and up counts one.", line=line_of(SQUAT, "Down and up")),
    )


def test_every_option_has_an_id_and_its_words(tmp_path):
    text = squat(tmp_path)
    assert list(text.facts.options) == ["to-chair-height", "slow-lowering"]
    assert text.facts.options["to-chair-height"].knee_bend == 90
    assert text.facts.options["slow-lowering"].title == "Slow lowering"
    assert [item.option for item in text.part("Harder").blocks[0].items] == ["slow-lowering"]


def test_an_option_may_have_another_id_than_its_name_says(tmp_path):
    text = squat(tmp_path, SQUAT.replace("  to-chair-height:", "  chair:").replace("option: to-chair-height", "option: chair"))
    assert text.part("Easier").blocks[0].items[0].option == "chair"


def test_kit_that_can_be_one_of_two(tmp_path):
    text = squat(tmp_path, SQUAT.replace("[dumbbell]", "[dumbbell, bench or chair]"))
    assert text.facts.equipment == (("dumbbell",), ("bench", "chair"))


def test_windows_line_ends_and_a_byte_order_mark_change_nothing(tmp_path):
    before = squat(tmp_path)
    (tmp_path / "goblet-squat.md").write_bytes(("\ufeff" + SQUAT.replace("\n", "\r\n")).encode())
    file = name_text_file(tmp_path / "goblet-squat.md", before.path, False, LANGUAGES)
    assert exercise_from(open_text(file, HEADINGS)) == before


def test_a_text_in_french_takes_data_from_english_and_words_from_itself(tmp_path):
    text = in_french(tmp_path)
    assert (text.id, text.facts.language, text.facts.title) == ("goblet-squat", "fr", "Squat")
    assert text.facts.knee_bend == 110
    assert text.facts.options["to-chair-height"].title == "À hauteur de chaise"
    assert text.facts.options["to-chair-height"].knee_bend == 90
    assert [part.name for part in text.parts] == [part.name for part in squat(tmp_path).parts]
    assert text.part("Easier").blocks[0].items[0].option == "to-chair-height"


def test_kinds_of_apostrophe_and_case_do_not_part_a_name_from_its_option(tmp_path):
    text = SQUAT_IN_FRENCH.replace("title: À hauteur de chaise", "title: à hauteur d'appui").replace(
        "**À hauteur de chaise.**", "**À hauteur d’appui :**"
    )
    assert in_french(tmp_path, text).part("Easier").blocks[0].items[0].option == "to-chair-height"


@pytest.mark.parametrize(
    ("old", "new", "at", "wrong", "instead"),
    [
        ("## Breathing", "## Breathin", "## Breathin", "no part 'Breathin'", "did you mean 'Breathing'?"),
        ("## Breathing", "## Warm words", "## Warm words", "no part 'Warm words'", "Equipment, Start position"),
        ("## Breathing", "# Breathing", "# Breathing", "not a heading of a part", "'## Breathing'"),
        ("## Breathing", "##Breathing", "##Breathing", "not a heading of a part", "'## Breathing'"),
        ("## Breathing", "### Breathing", "### Breathing", "not a heading of a part", "'## Breathing'"),
        ("## Breathing", "## Movement", "## Movement\nBreathe", "'Movement' stands here a second time", "together"),
        ("\n## Equipment", "\nWords.\n\n## Equipment", "Words.", "before the first heading", "'## Equipment'"),
        ("1. Bend both", "1. *Bend* both", "1. *Bend*", "single '*'", "**words**"),
        ("One dumbbell.", "One <i>dumbbell</i>.", "One <i>", "HTML", "out"),
        ("- **To chair height.** Stop", "- Stop", "- Stop", "name in bold", "- **Name.**"),
        ("- **Slow lowering.** Count", "Count", "Count four", "not written as an item", "- **Name.**"),
        ("- **Slow lowering.** Count", "1. **Slow lowering.** Count", "1. **Slow", "not written as an item", "- **Name.**"),
        ("**Slow lowering.**", "**!!**", "- **!!**", "has no id", "letters"),
        ("**Slow lowering.**", "**To chair height**", "- **To chair height** Count", "a second time", "another name"),
        ("title: Goblet squat", "titel: Goblet squat", "titel", "no key 'titel'", "did you mean 'title'?"),
        ("sides: together", "sides: togehter", "sides: togehter", "'togehter'", "did you mean 'together'?"),
        ("sides: together", "sides: together\nwritten for: right", "written for", "one side", "'sides: each'"),
        ("knee bend: 110 degrees", "knee bend: 110", "knee bend: 110\n", "'110'", "'90 degrees'"),
        ("[deep_knee]", "[deep_kne]", "demands: [deep_kne]", "'deep_kne'", "did you mean 'deep_knee'?"),
        ("equipment: [dumbbell]", "equipment: dumbbell", "equipment:", "where a list belongs", "'- '"),
        ("equipment: [dumbbell]", "equipment: [dumbell or chair]", "equipment:", "'dumbell'", "did you mean 'dumbbell'?"),
        ("positions: [standing]", "positions:", "positions:", "holds nothing", "at least one item"),
        ("title: Goblet squat", "title:", "title:", "no value", "after the colon"),
        ("title: Goblet squat", "language: fr\ntitle: x", "language: fr", "'fr'", "'language: en'"),
    ],
)  # fmt: skip
def test_faults_of_a_text(tmp_path, old, new, at, wrong, instead):
    text = SQUAT.replace(old, new, 1)
    found = faults_of(squat, tmp_path, text)
    assert any(line == line_of(text, at) and wrong in said and instead in better for line, said, better in found), found


def test_missing_parts_say_where_they_belong(tmp_path):
    text = SQUAT.replace("## Equipment\nOne dumbbell.\n", "").replace("## Finish\n1. Set the dumbbell down.\n", "")
    assert faults_of(squat, tmp_path, text) == [
        (0, "the part 'Equipment' is missing", "write '## Equipment' as the first part"),
        (0, "the part 'Finish' is missing", "write '## Finish' after 'Harder'"),
    ]


def test_parts_out_of_order(tmp_path):
    text = SQUAT.replace("## Movement", "## X").replace("## Count", "## Movement").replace("## X", "## Count")
    (first, *_) = faults_of(squat, tmp_path, text)
    assert first == (line_of(text, "## Breathing"), "'Breathing' stands after 'Count'", "put it after 'Movement'")


def test_an_empty_part_is_a_fault(tmp_path):
    text = SQUAT.replace("One dumbbell.\n", "")
    assert (line_of(text, "## Equipment"), "nothing stands below 'Equipment'", "write the words of this part") in faults_of(
        squat, tmp_path, text
    )


def test_an_option_without_words_is_a_fault(tmp_path):
    text = SQUAT.replace("substitutes:", "  slow-lowerin:\n    demands: []\nsubstitutes:")
    assert faults_of(squat, tmp_path, text) == [
        (
            line_of(text, "  slow-lowerin:"),
            "the option 'slow-lowerin' has no words under Easier or Harder",
            "did you mean 'slow-lowering'?",
        )
    ]


@pytest.mark.parametrize("text", ["", "title: x\n", "---\ntitle: x\n", "words\n---\ntitle: x\n---\n"])
def test_front_matter_that_is_not_there(tmp_path, text):
    ((line, wrong, _),) = faults_of(squat, tmp_path, text)
    assert line == 1 and "'---'" in wrong


def test_faults_of_front_matter_and_body_come_together(tmp_path):
    text = SQUAT.replace("title: Goblet squat", "title: a: b").replace("## Count", "## Cuont")
    assert {line for line, *_ in faults_of(squat, tmp_path, text)} >= {2, line_of(text, "## Cuont")}
    text = SQUAT.replace("sides: together", "sides: x").replace("## Count", "## Cuont")
    assert [line for line, *_ in faults_of(squat, tmp_path, text)] == [
        line_of(text, "sides: x"),
        line_of(text, "## Cuont"),
    ]


@pytest.mark.parametrize(
    ("old", "new", "at", "wrong", "instead"),
    [
        ("## Mouvement", "## Movement", "## Movement", "no part 'Movement'", "did you mean 'Mouvement'?"),
        ("language: fr", "language: en", "language: en", "'en'", "'language: fr'"),
        ("language: fr\n", "", "title:", "'language' is missing", "language"),
        ("  slow-lowering:", "  slow-lowring:", "  slow-lowring:", "no option 'slow-lowring'", "'slow-lowering'?"),
        ("  slow-lowering:\n    title: Descente lente\n", "", "options:", "'slow-lowering'", "add 'slow-lowering:'"),
        ("**Descente lente.**", "**Descente lentement.**", "- **Desc", "has no id", "did you mean 'Descente lente'?"),
        ("**Descente lente.**", "**Pause.**", "- **Pause", "has no id", "below 'options:'"),
        ("title: Squat", "title: Squat\nsides: each", "sides:", "no key 'sides'", "the keys are language, title"),
    ],
)
def test_faults_of_a_text_in_french(tmp_path, old, new, at, wrong, instead):
    text = SQUAT_IN_FRENCH.replace(old, new, 1)
    found = faults_of(in_french, tmp_path, text)
    assert any(line == line_of(text, at) and wrong in said and instead in better for line, said, better in found), found


def test_a_text_in_french_is_checked_even_when_the_english_one_cannot_be_read(tmp_path):
    path = tmp_path / "goblet-squat.fr.md"
    path.write_text(SQUAT_IN_FRENCH, "utf-8")
    file = name_text_file(path, "f", False, LANGUAGES)
    assert translation_from(open_text(file, HEADINGS), None) is None
    path.write_text(SQUAT_IN_FRENCH.replace("## Fin", "## Fni"), "utf-8")
    assert faults_of(lambda: translation_from(open_text(file, HEADINGS), None))


@pytest.mark.parametrize(
    ("name", "better"),
    [
        ("Goblet Squat.md", "'goblet-squat.md'"),
        ("Épaulé.md", "'epaule.md'"),
        ("a_b.md", "'a-b.md'"),
        (".md", "'my-exercise.md'"),
        ("a.xx.md", "'a.LANGUAGE.md' with fr"),
        ("a.en.md", "'a.md' for English"),
        ("a.fr.fr.md", "'a.md' for English"),
    ],
)
def test_file_names_that_name_no_exercise(tmp_path, name, better):
    ((line, _, instead),) = faults_of(name_text_file, tmp_path / name, "x", False, LANGUAGES)
    assert line == 0 and better in instead


def test_slugs():
    assert slug("Quarter range.") == "quarter-range"
    assert slug("15 cm step, rail") == "15-cm-step-rail"
    assert slug("À l’aise !") == "a-laise"
    assert slug("!!") == ""


def test_the_heading_table_must_hold_every_part(tmp_path):
    path = tmp_path / "parts.yaml"
    path.write_text("en:\n  Equipment: Equipment\n", "utf-8")
    assert len(faults_of(read_headings, path)) == 8


def test_each_language_has_nine_headings_of_its_own():
    for table in HEADINGS.values():
        assert len(set(table.values())) == 9


@settings(max_examples=250, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(at=st.integers(0, len(SQUAT)), drop=st.integers(0, 60), put=st.text("ab#*-1.>:[]{}&!|'\"\n\t <", max_size=12))
def test_a_text_with_anything_in_it_is_read_or_refused_with_its_line(tmp_path, at, drop, put):
    text = SQUAT[:at] + put + SQUAT[at + drop :]
    try:
        squat(tmp_path, text)
    except StudioFaults as problem:
        for fault in problem.faults:
            assert 0 <= fault.line <= text.count("\n") + 1
            assert fault.wrong and fault.instead and str(fault).isprintable()
