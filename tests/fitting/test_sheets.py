"""The three sheets of the real demo studio: what stands on them, and what does not."""

import datetime
import re

import pytest

from handouts import carried
from handouts.fitting.fit import fit
from handouts.fitting.sheets import sheet
from handouts.fitting.sides import mirror
from handouts.handout import (
    SHEET_KINDS,
    Caution,
    Dose,
    Facts,
    Heading,
    LogSheet,
    Paragraph,
    Section,
    Steps,
    Strong,
    plain,
    walk,
)
from handouts.reading.studio import read_studio

TODAY = datetime.date(2029, 1, 20)
ALL = [("C1", "P1"), ("C2", "P2"), ("C3", "P2"), ("C4", "P2"), ("C5", "P3"), ("C6", "P2")]


@pytest.fixture(scope="module")
def studio():
    return read_studio(carried.demo_studio(), carried.starter_texts())


def session_of(studio, code, plan, **changed):
    client = studio.clients[code]
    if changed:
        client = client.model_copy(update={"facts": client.facts.model_copy(update=changed)})
    chosen = next(choice for choice in client.facts.plans if choice.plan == plan)
    version = chosen.version or max(v for p, v in studio.plans if p == plan)
    return fit(
        client,
        studio.plans[plan, version],
        studio.exercises,
        studio.facts,
        previous=studio.plans.get((plan, version - 1)),
        today=TODAY,
        history=studio.logs.get(code, ()),
    )


def lines(blocks, long=False):
    """Every line of words of a tree, in reading order."""
    for node in walk(blocks):
        if isinstance(node, Facts):
            for fact in node.facts:
                yield plain(fact.label, long)
                yield plain(fact.value, long)
        elif isinstance(node, Caution):
            yield plain(node.title, long)
        elif isinstance(node, LogSheet):
            for entry in node.entries:
                yield plain(entry.title, long)
                for field in entry.fields:
                    yield plain(field.label, long)
                    yield plain(field.target, long)
        elif hasattr(node, "content"):
            yield plain(node.content, long)


def words(handout, long=False):
    return "\n".join([plain(handout.title, long), handout.running_head, *lines(handout.blocks, long)])


@pytest.mark.parametrize("kind", SHEET_KINDS)
@pytest.mark.parametrize("code, plan", ALL)
def test_nothing_about_health_is_printed_by_name(studio, code, plan, kind):
    text = words(sheet(kind, session_of(studio, code, plan))).lower()
    facts = studio.clients[code].facts
    named = {"glaucoma", "glaucome", "myopia", "blood pressure", "tension artérielle", "specialist note", "blind", "aveugle"}
    named |= {limit.advised_by.lower() for limit in facts.limits if limit.advised_by} - {"eye specialist"}
    for name in named:
        assert name not in text
    for demand in ("head_below_heart", "breath_hold_risk", "lying_back", "deep_knee", "grip_long"):
        assert demand not in text
    if facts.private:
        for sentence in re.split(r"[.\n]", facts.private):
            assert not sentence.strip() or sentence.strip().lower() not in text


@pytest.mark.parametrize("code, plan", ALL)
def test_the_full_sheet_begins_with_when_to_stop(studio, code, plan):
    handout = sheet("sheet", session_of(studio, code, plan))
    first = handout.blocks[0]
    assert isinstance(first, Caution)
    assert studio.facts.emergency in "\n".join(lines((first,)))


@pytest.mark.parametrize("kind", SHEET_KINDS)
@pytest.mark.parametrize("code, plan", ALL)
def test_every_sheet_says_when_to_stop_and_that_it_is_no_medical_advice(studio, code, plan, kind):
    handout = sheet(kind, session_of(studio, code, plan))
    text = words(handout)
    assert studio.facts.emergency in text
    assert ("does not replace advice" if handout.language == "en" else "ne remplace pas l’avis") in text
    for promise in (" safe ", "sans danger", "cleared"):
        assert promise not in text.lower().replace("is safe to put", "")


@pytest.mark.parametrize("code, plan", ALL)
def test_the_full_sheet_shows_what_every_handout_must(studio, code, plan):
    # Common practice, no source: client code, version, dates, stop signs and
    # phone, kit, dose and load with unit and hand, rest, way out, clock frame,
    # what changed, how to log.
    session = session_of(studio, code, plan)
    handout = sheet("sheet", session)
    text = words(handout)
    assert code in handout.running_head and str(handout.version) in handout.running_head
    for needed in (studio.facts.phone, studio.facts.coach, str(session.plan.facts.date.year)):
        assert needed in text
    sections = [node for node in walk(handout.blocks) if isinstance(node, Section)]
    exercises = [section for section in sections if section.kind == "exercise"]
    assert len(exercises) == sum(len(g.exercises) for g in session.groups) + len(session.warm_up) + len(session.cool_down)
    finish = "Finish" if handout.language == "en" else "Fin"
    for section in exercises:
        heads = [plain(node.content) for node in walk(section.blocks) if isinstance(node, Heading)]
        assert finish in heads
    for group in session.groups:
        for exercise in group.exercises:
            section = next(s for s in exercises if s.heading.anchor == f"exercise-{exercise.number}")
            for load in exercise.loads:
                if load.mass is not None:
                    dose = next(node for node in section.blocks if isinstance(node, Dose))
                    assert f" {load.mass.unit}" in plain(dose.content)
    overview = next(s for s in sections if s.kind == "overview")
    assert sections[0] is overview
    assert [s for s in sections if s.kind == "log"] == [sections[-1]]


@pytest.mark.parametrize("kind", SHEET_KINDS)
@pytest.mark.parametrize("code, plan", ALL)
def test_headings_never_skip_a_level_and_anchors_are_unique(studio, code, plan, kind):
    headings = [node for node in walk(sheet(kind, session_of(studio, code, plan)).blocks) if isinstance(node, Heading)]
    level = 1
    for heading in headings:
        assert 2 <= heading.level <= level + 1, plain(heading.content)
        level = heading.level
    anchors = [heading.anchor for heading in headings]
    assert len(set(anchors)) == len(anchors)
    assert all(re.fullmatch(r"[a-z0-9-]+", anchor) for anchor in anchors)


def test_a_reader_is_told_to_keep_the_head_up_never_why(studio):
    text = words(sheet("sheet", session_of(studio, "C1", "P1")))
    assert "Keep your head higher than your heart" in text
    assert "Keep breathing in this exercise" in text


def test_a_guide_dog_has_its_corner(studio):
    assert "guide dog" in words(sheet("sheet", session_of(studio, "C2", "P2")))
    assert "guide dog" not in words(sheet("sheet", session_of(studio, "C4", "P2")))


def test_likenesses_stand_only_where_they_are_liked(studio):
    liked = words(sheet("sheet", session_of(studio, "C3", "P2")))
    none = words(sheet("sheet", session_of(studio, "C2", "P2")))
    pictures = {key: text.facts.picture for key, text in studio.exercises.items() if text.facts.picture}
    assert pictures["floor-press", "fr"] in liked
    assert not any(picture in none for picture in pictures.values())


def test_the_second_side_is_written_out_mirrored_or_told_shortly(studio):
    out = sheet("sheet", session_of(studio, "C2", "P2", other_side="written out"))
    short = sheet("sheet", session_of(studio, "C2", "P2", other_side="short"))
    movement = studio.exercises["one-arm-supported-row", "en"].part("Movement")
    first_step = movement.blocks[0].items[0].text
    other = mirror(first_step, "en")
    assert other != first_step
    assert first_step in words(out) and other in words(out)
    assert first_step in words(short) and other not in words(short)
    assert "swap left and right" in words(short)


def test_a_substitute_says_what_it_stands_for(studio):
    text = words(sheet("sheet", session_of(studio, "C1", "P1")))
    assert "Exercise 5 of 6: Hip hinge, quarter range" in text
    assert "This stands in place of: Glute bridge." in text


def test_one_handed_work_names_hand_and_cuff(studio):
    text = words(sheet("sheet", session_of(studio, "C4", "P2")))
    assert "16 kg in your right hand, 4 kg on the cuff at your left arm" in text
    assert "Hold the weight in your right hand alone." in text
    assert "30 s on your right side" in text


def test_the_card_has_one_line_for_each_exercise_with_the_sheets_numbers(studio):
    session = session_of(studio, "C4", "P2")
    card = sheet("card", session)
    steps = [node for node in card.blocks if isinstance(node, Steps)]
    numbers = [number for block in steps for number in range(block.first, block.first + len(block.items))]
    assert numbers == [1, 2, 3, 4, 5, 6]
    assert not any(isinstance(node, Heading) for node in walk(card.blocks))


def test_the_log_asks_for_each_side_that_works(studio):
    log = next(node for node in sheet("log", session_of(studio, "C4", "P2")).blocks if isinstance(node, LogSheet))
    row = next(entry for entry in log.entries if entry.key == "one-arm-supported-row")
    assert [field.name for field in row.fields] == ["weight_right", "weight_left", "reps_right", "reps_left"]
    carry = next(entry for entry in log.entries if entry.key == "suitcase-carry")
    assert [field.unit for field in carry.fields] == ["kg", "s"]
    assert log.entries[-1].key == "session"
    assert [field.name for field in log.entries[-1].fields] == ["date", "time", "effort", "pain", "question"]


def test_version_two_says_what_changed_and_puts_version_one_away(studio):
    text = words(sheet("sheet", session_of(studio, "C2", "P2")))
    assert "What changed since version 1" in text
    assert "takes the place of version 1" in text
    assert "two more good repetitions" in text


def test_the_first_version_says_that_all_is_new(studio):
    assert "This is version 1" in words(sheet("sheet", session_of(studio, "C1", "P1")))


@pytest.mark.parametrize("code, plan", ALL)
def test_equal_fittings_give_equal_trees(studio, code, plan):
    first = sheet("sheet", session_of(studio, code, plan))
    assert first == sheet("sheet", session_of(studio, code, plan))
    assert hash(first) == hash(sheet("sheet", session_of(studio, code, plan)))


def test_spoken_measures_are_whole_words(studio):
    spoken = words(sheet("sheet", session_of(studio, "C4", "P2")), long=True)
    assert "8 to 12 repetitions" in spoken and "16 kilograms in your right hand" in spoken
    assert not re.search(r"\d (kg|lb|s)\b", spoken)
    assert "–" not in "".join(re.findall(r"\d.\d", spoken))


def test_emphasis_is_kept_from_the_exercise_text(studio):
    sheet_ = sheet("sheet", session_of(studio, "C1", "P1"))
    strong = [piece for node in walk(sheet_.blocks) if isinstance(node, Paragraph) for piece in node.content if isinstance(piece, Strong)]
    assert strong
    assert "**" not in words(sheet_)


def test_a_text_in_another_language_is_marked_as_foreign(studio):
    english_only = {key: text for key, text in studio.exercises.items() if key[1] == "en"}
    client = studio.clients["C3"]
    session = fit(client, studio.plans["P2", 1], english_only, studio.facts, previous=None, today=TODAY)
    handout = sheet("sheet", session)
    assert any(remark.strength == "eye" and "goblet-squat.fr.md" in remark.what for remark in session.remarks)
    titles = [node for node in walk(handout.blocks) if isinstance(node, Heading) and node.level == 2]
    assert any(type(piece).__name__ == "Foreign" for heading in titles for piece in heading.content)


def test_an_exercise_known_by_heart_is_told_shortly(studio):
    whole = sheet("sheet", session_of(studio, "C6", "P2"))
    short = sheet("sheet", session_of(studio, "C6", "P2", knows=("floor-press",)))

    def heads(handout):
        section = next(s for s in walk(handout.blocks) if isinstance(s, Section) and s.heading.anchor == "exercise-2")
        return [plain(node.content) for node in walk(section.blocks) if isinstance(node, Heading)]

    assert heads(short) == ["Breathing", "Key points", "Finish"]
    assert "Movement" in heads(whole)
    assert "You know this exercise" in words(short) and "You know this exercise" not in words(whole)
