"""Care: what conditions ask of a session, and that none of them is ever named.

The sources of the cautions stand line by line in handouts/coaching/care.yaml;
here the rules that hold for the whole table are checked, and its use.
"""

from __future__ import annotations

import ast
import datetime
import html
import io
import re
import subprocess
import zipfile
from pathlib import Path
from typing import Any

import pytest

from handouts.amounts import read_mass
from handouts.braille import liblouis
from handouts.coaching.care import INSTRUCTION_OF, care_for, care_table, hold_of
from handouts.fitting.fit import fit
from handouts.fitting.fitted import FittedSession, Instruction
from handouts.fitting.sheets import sheet
from handouts.forms import FORMS, Look
from handouts.languages import known_languages, phrases
from handouts.models import BrailleForm, CareTable, Client, EpubForm, LogLine, PrintForm, ScreenForm, Studio, TextForm
from tests.fitting.making import STUDIO, TODAY, a_client, a_plan, an_exercise, eyes, fit_to, notes, only, straight_sets

TABLE = care_table()
SAID = {"advised by": "the doctor", "since": "2029-01-03"}


def entry(care: str, **more: Any) -> dict[str, Any]:
    rule = TABLE.cares[care]
    needed: dict[str, Any] = {}
    if rule.knee:
        needed |= {"at most": "90 degrees"}
    if rule.weaker_side:
        needed |= {"side": "left"}
    return {"care": care, **SAID, **needed, **more}


# --- the table -----------------------------------------------------------------------


def test_every_line_of_the_table_has_its_source() -> None:
    # The models make 'source' and 'why' required; here, that they say something.
    for rule in TABLE.cares.values():
        sources = [rule.ask.source, *(limit.source for limit in rule.limits), *(told.source for told in rule.tells)]
        assert all(len(source) > 10 for source in sources)
        assert all(limit.why for limit in rule.limits)
        assert rule.limits or rule.tells
        assert set(rule.names) == set(known_languages())


def test_eyes_come_first_and_every_promised_group_is_there() -> None:
    assert list(TABLE.cares)[:6] == [
        "glaucoma", "severe diabetic retinopathy", "retina bleeding or detached", "recent eye surgery",
        "gas or oil in the eye", "high myopia",
    ]  # fmt: skip
    assert {
        "treated blood pressure", "pregnancy", "diabetes", "knee trouble", "unsure balance", "one weaker side", "limb difference",
    } <= set(TABLE.cares)  # fmt: skip


@pytest.mark.parametrize("language", known_languages())
def test_every_instruction_has_its_words(language: str) -> None:
    words = phrases(language).table
    for rule in TABLE.cares.values():
        assert all(told.say in words for told in rule.tells)
        for limit in rule.limits:
            assert limit.demand is None or (INSTRUCTION_OF[limit.demand] in words and f"cue_{limit.demand}" in words)
    assert all(key in words for pair in TABLE.opposite for key in pair)


def test_high_myopia_bars_no_lifting() -> None:
    # American Academy of Ophthalmology, question page of 2012: weights are accepted, blows to the head barred.
    rule = TABLE.cares["high myopia"]
    assert all(limit.with_caution for limit in rule.limits)
    assert [told.say for told in rule.tells] == ["no_head_blows"]


def test_severe_eyes_wait_for_the_specialist() -> None:
    # Diabetes Care table after Fiatarone Singh: contraindications to resistance training.
    for care in ("severe diabetic retinopathy", "retina bleeding or detached", "recent eye surgery"):
        assert TABLE.cares[care].ask.before == "any sheet"


# --- limits from the table -------------------------------------------------------------


def hinge(**facts: Any) -> Any:
    return an_exercise("hinge", demands=["head_below_heart"], substitutes=[{"exercise": "row"}], **facts)


def test_a_care_brings_in_a_substitute_and_says_so() -> None:
    client = a_client(care=[entry("glaucoma")])
    session = fit_to(client, a_plan(straight_sets("hinge")), hinge(), an_exercise("row"))
    assert only(session).exercise.id == "row"
    assert "hinge is replaced by row: it asks for head_below_heart" in notes(session)[0]
    assert session.instructions == (Instruction("keep_head_above_heart"), Instruction("keep_breathing"))
    assert session.stopped == () and eyes(session) == []


def test_with_caution_the_movement_stays_and_the_sheet_warns() -> None:
    client = a_client(care=[entry("unsure balance")])
    session = fit_to(client, a_plan(straight_sets("hinge")), hinge())
    assert (only(session).exercise.id, only(session).cues) == ("hinge", ("head_below_heart",))
    assert Instruction("keep_head_above_heart") not in session.instructions
    assert Instruction("keep_support_in_reach") in session.instructions
    assert "asks for caution" in notes(session)[0]


def test_balance_with_caution_needs_a_free_hand() -> None:
    kit = {"dumbbells": ["2 x 5 kg"]}
    carry = an_exercise(
        "carry", demands=["balance"], equipment=["pair of dumbbells"], hands="one each", substitutes=[{"exercise": "hold"}]
    )
    hold = an_exercise("hold", demands=["balance"], equipment=["dumbbell"], hands="one")
    plan = a_plan(straight_sets("carry"))
    assert only(fit_to(a_client(kit=kit), plan, carry, hold)).exercise.id == "carry"
    session = fit_to(a_client(kit=kit, care=[entry("unsure balance")]), plan, carry, hold)
    assert (only(session).exercise.id, only(session).cues) == ("hold", ("balance",))


def test_a_knee_is_bounded_by_what_was_allowed() -> None:
    squat = an_exercise("squat", **{"knee bend": "100 degrees"})
    plan = a_plan(straight_sets("squat"))
    care = entry("knee trouble", side="right", **{"at most": "100 degrees"})
    assert only(fit_to(a_client(care=[care]), plan, squat)).exercise.id == "squat"
    session = fit_to(a_client(care=[care | {"at most": "90 degrees"}]), plan, squat)
    assert session.groups == () and "bends the right knee to 100 degrees, and 90 is the most" in eyes(session)[0]
    assert "no exercise of the plan fits" in session.stopped[0]


def test_a_weaker_side_goes_first() -> None:
    row = an_exercise("row", sides="each", **{"written for": "right"})
    session = fit_to(a_client(care=[entry("one weaker side", side="left")]), a_plan(straight_sets("row", dose="8 reps each side")), row)
    assert only(session).sides == ("left", "right")


def test_what_does_not_hold_for_one_person_can_be_left_away() -> None:
    care = entry("glaucoma", without=["head_below_heart"])
    session = fit_to(a_client(care=[care]), a_plan(straight_sets("hinge")), hinge())
    assert only(session).exercise.id == "hinge"
    assert session.instructions == (Instruction("keep_breathing"),)


def test_a_position_can_be_left_out() -> None:
    client = a_client(care=[entry("sore from sitting")])
    sit = an_exercise("sit", positions=["seated"], substitutes=[{"exercise": "either"}])
    either = an_exercise("either", positions=["seated", "standing"])
    session = fit_to(client, a_plan(straight_sets("sit")), sit, either)
    assert (only(session).exercise.id, only(session).position) == ("either", "standing")
    assert "it is done seated, which this client leaves out" in notes(session)[0]


# --- who must be asked ---------------------------------------------------------------------


def test_without_an_answer_no_sheet_or_a_reminder() -> None:
    plan, squat = a_plan(straight_sets("squat")), an_exercise("squat")
    session = fit_to(a_client(care=["glaucoma"]), plan, squat)
    assert session.stopped == ()
    assert "care 1 in clients/T1.yaml: ask the eye specialist before the first session" in eyes(session)[0]
    session = fit_to(a_client(care=["glaucoma", "recent eye surgery"]), plan, squat)
    assert "care 2 in clients/T1.yaml needs an answer first; ask the eye surgeon" in session.stopped[0]
    assert len(session.stopped) == 1


def test_an_answer_that_is_old_is_asked_for_again_and_never_lifted() -> None:
    care = entry("glaucoma", review="2029-01-07")
    session = fit_to(a_client(care=[care]), a_plan(straight_sets("hinge")), hinge(), an_exercise("row"))
    assert eyes(session)[0].startswith("care 1 was due for review on 2029-01-07 and stays in force")
    assert only(session).exercise.id == "row"


# --- opposites -------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("facts", "told"),
    [
        (
            {"care": [entry("trains seated"), entry("sore from sitting")]},
            "care 1 allows the position seated alone, and care 2 leaves it out",
        ),
        (
            {"care": [entry("sore from sitting"), entry("trains seated")]},
            "care 2 allows the position seated alone, and care 1 leaves it out",
        ),
        (
            {"care": [entry("low blood pressure"), entry("pregnancy")]},
            "care 1 asks for lie_flat_if_faint, and care 2 for not_flat_on_back",
        ),
        (
            {"care": [entry("low blood pressure")], "limits": [{"demand": "lying_back"}]},
            "limit 1 asks for not_flat_on_back, and care 1 for lie_flat_if_faint",
        ),
        (
            {"limits": [{"only position": "seated"}, {"only position": "standing"}]},
            "limit 1 allows the position seated alone, and limit 2 standing alone",
        ),
        (
            {"care": [entry("one weaker side", side="left")], "weaker_side": "right"},
            "care 1 has the left as the weaker side, and weaker side the right",
        ),
    ],
)
def test_opposites_are_reported_and_nothing_is_guessed(facts: dict[str, Any], told: str) -> None:
    squat = an_exercise("squat", positions=["standing", "seated"])
    session = fit_to(a_client(**facts), a_plan(straight_sets("squat")), squat)
    assert [told in why for why in session.stopped] == [True]
    assert "write 'without' with 'advised by' and 'since'" in session.stopped[0]


def test_an_opposite_that_was_settled_stops_nothing() -> None:
    care = [entry("trains seated"), entry("sore from sitting", without=["seated"])]
    assert care_for(a_client(care=care).facts, TABLE).opposites == ()


def test_the_same_from_two_sides_is_no_opposite() -> None:
    facts = a_client(care=[entry("glaucoma"), entry("osteoporosis"), entry("trains seated")], limits=[{"only position": "seated"}]).facts
    assert care_for(facts, TABLE).opposites == ()


# --- warning signs in the log -------------------------------------------------------------------


def logged(line: int, exercise: str, weight: str | None = None, **more: Any) -> LogLine:
    facts: dict[str, Any] = {
        "line": line, "date": datetime.date(2029, 1, 5), "plan": "T", "version": 1, "exercise": exercise, "side": None, "weight": None,
        "reps": (10,), "seconds": None, "effort": None, "note": "", "raw": "",
    }  # fmt: skip
    return LogLine.model_validate({**facts, "weight": read_mass(weight) if weight else None, **more})


ROW: dict[str, Any] = {"sides": "each", "written for": "right", "equipment": ["dumbbell"], "hands": "one"}
KIT = {"dumbbells": ["1 x 8 kg", "1 x 10 kg", "1 x 12 kg"]}


def with_log(*history: LogLine, load: str = "12 kg") -> FittedSession:
    plan = a_plan(straight_sets("row", load=load, dose="8 reps each side"), straight_sets("pull", load="8 kg", dose="8 reps each side"))
    return fit_to(a_client(kit=KIT), plan, an_exercise("row", **ROW), an_exercise("pull", **ROW), history=history)


def named(session: FittedSession) -> list[str | None]:
    return [str(load.mass) if load.mass else None for group in session.groups for load in group.exercises[0].loads]


def test_no_new_weight_before_a_warning_sign_is_answered() -> None:
    lifted = (logged(2, "row", "10 kg"), logged(3, "pull", "10 kg"))
    assert named(with_log(*lifted)) == ["12 kg", "8 kg"]
    warned = with_log(*lifted, logged(4, "session", warning="dizzy"))
    # 12 kg is heavier than anything lifted in a row, 8 kg is not in a pull.
    assert named(warned) == [None, "8 kg"]
    assert "logs/T1.csv, line 4 of 2029-01-05: a warning sign has no answer" in eyes(warned)[0]
    assert named(with_log(*lifted, logged(4, "session", warning="dizzy"), load="10 kg")) == ["10 kg", "8 kg"]
    answered = with_log(*lifted, logged(4, "session", warning="dizzy", answer="Doctor asked, go on."))
    assert named(answered) == ["12 kg", "8 kg"] and eyes(answered) == []


def test_the_exercise_that_hurt_is_frozen() -> None:
    session = with_log(logged(2, "row", "12 kg"), logged(3, "pull", "8 kg"), logged(4, "row", "12 kg", warning="sharp pain"))
    assert named(session) == [None, "8 kg"]
    (load,) = session.groups[0].exercises[0].loads
    assert load.withheld and load.chosen == "withheld until a warning sign is answered"


def test_what_was_never_lifted_is_new() -> None:
    assert named(with_log(logged(2, "session", warning="dizzy"))) == [None, None]
    # What came after the warning is no measure of what was well before it.
    assert named(with_log(logged(2, "row", "10 kg", warning="pain"), logged(3, "row", "12 kg"))) == [None, None]


def test_the_sheet_says_to_ask_where_a_weight_is_withheld() -> None:
    from handouts.handout import Dose, plain, walk

    session = with_log(logged(2, "session", warning="dizzy"))
    doses = [plain(block.content) for block in walk(sheet("sheet", session).blocks) if isinstance(block, Dose)]
    assert len(doses) == 2 and all("ask your coach for the weight before you start" in dose for dose in doses)


def test_a_weight_chosen_by_feel_is_withheld_too() -> None:
    by_feel = with_log(logged(2, "session", warning="dizzy"), load="by effort")
    assert by_feel.groups[0].exercises[0].loads[0].withheld


def test_each_side_has_a_weight_of_its_own() -> None:
    hold = hold_of((logged(2, "row", "8 kg", side="left"), logged(3, "row", "12 kg", side="right"), logged(4, "", warning="dizzy")))
    assert hold is not None
    assert [str(hold.lifted_before("row", side)) for side in ("left", "right", None)] == ["8 kg", "12 kg", "12 kg"]
    assert hold.lifted_before("press", None) is None
    assert hold.frozen == frozenset()


# --- ceilings --------------------------------------------------------------------------------------


def test_no_weight_goes_above_a_limit() -> None:
    limits = [{"heaviest": "9 kg"}]
    session = fit_to(a_client(kit=KIT, limits=limits), a_plan(straight_sets("row", load="12 kg", dose="8 reps each side")), an_exercise("row", **ROW))
    assert named(session) == ["8 kg"]
    assert "12 kg is asked for; one dumbbell of 8 kg is the heaviest there not above the limit of 9 kg" in notes(session)[0]
    assert Instruction("nothing_heavier", (("mass", "9 kg"),)) in session.instructions


def test_of_a_pair_each_is_half_of_the_limit() -> None:
    press = an_exercise("press", equipment=["pair of dumbbells"], hands="one each")
    client = a_client(kit={"dumbbells": ["2 x 4 kg", "2 x 5 kg", "2 x 8 kg"]}, limits=[{"heaviest": "9 kg"}])
    session = fit_to(client, a_plan(straight_sets("press", load="8 kg each")), press)
    assert named(session) == ["4 kg"]


def test_a_limit_for_one_exercise_leaves_the_others_alone() -> None:
    limits = [{"heaviest": "9 kg", "exercise": "row"}]
    plan = a_plan(
        straight_sets("row", load="12 kg", dose="8 reps each side"), straight_sets("pull", load="12 kg", dose="8 reps each side")
    )
    session = fit_to(a_client(kit=KIT, limits=limits), plan, an_exercise("row", **ROW), an_exercise("pull", **ROW))
    assert named(session) == ["8 kg", "12 kg"]
    assert session.instructions == ()
    open_ended = fit_to(a_client(kit=KIT, limits=limits), a_plan(straight_sets("row", dose="8 reps each side")), an_exercise("row", **ROW))
    assert "no weight is named, and 9 kg is the most for one" in eyes(open_ended)[0]


# --- nothing is ever named ---------------------------------------------------------------------------


def everything_about(table: CareTable) -> list[str]:
    """Every word for a condition in every language, and the table's own names."""
    words = [name for rule in table.cares.values() for names in rule.names.values() for name in names]
    return [*dict.fromkeys((*words, *table.cares))]


def full_of_care(demo: Studio, language: str) -> Client:
    """A client of the demo with every care at once, the opposites settled."""
    without = {"sore from sitting": ["seated"], "trains seated": ["seated"], "low blood pressure": ["lie_flat_if_faint"]}
    care = [entry(care, **({"without": without[care]} if care in without else {})) for care in TABLE.cares]
    given = a_client(
        care=care, language=language, kit={"dumbbells": ["2 x 4 kg"], "bands": ["one knot"], "other": ["chair", "mat"]},
        private="Everything at once.", place="gym", pictures="liked", pace="by touch",
    )  # fmt: skip
    assert care_for(given.facts, TABLE).opposites == ()
    return given


@pytest.fixture(scope="module", params=known_languages())
def sessions(demo: Studio, request: pytest.FixtureRequest) -> list[FittedSession]:
    """Every plan of the demo for a client with everything, in one language."""
    client = full_of_care(demo, request.param)
    made = [fit(client, plan, demo.exercises, STUDIO, None, TODAY) for plan in demo.plans.values()]
    assert any(session.groups for session in made)
    return [session for session in made if session.groups]


def test_no_condition_is_named_on_a_page_for_the_screen(sessions: list[FittedSession]) -> None:
    for session in sessions:
        for kind in ("sheet", "card", "log"):
            made = FORMS["screen"].render(sheet(kind, session), ScreenForm(), Look())
            _clean(html.unescape(made.data.decode("utf-8")))


def test_no_condition_is_named_in_print(sessions: list[FittedSession], tmp_path: Path) -> None:
    for session in sessions[:2]:
        made = FORMS["print"].render(sheet("sheet", session), PrintForm(), Look())
        (tmp_path / "sheet.pdf").write_bytes(made.data)
        told = subprocess.run(["pdftotext", tmp_path / "sheet.pdf", "-"], capture_output=True, text=True, check=True).stdout
        assert len(told) > 1000
        _clean(told)
        about = subprocess.run(["pdfinfo", tmp_path / "sheet.pdf"], capture_output=True, text=True, check=True).stdout
        assert "Title:" in about
        _clean(about)


def test_no_condition_is_named_in_an_e_book(sessions: list[FittedSession]) -> None:
    """Words, names of files and what the book says of itself."""
    for session in sessions:
        for kind in ("sheet", "card", "log"):
            book = FORMS["epub"].render(sheet(kind, session), EpubForm(), Look())
            read = _in_package(book.data)
            if kind == "sheet":
                assert phrases(session.client.facts.language).text("ready_title") in read
            _clean(read)


def test_no_condition_is_named_in_plain_text(sessions: list[FittedSession]) -> None:
    for session in sessions:
        for kind in ("sheet", "card", "log"):
            # Broken lines hide no name: _clean joins them again.
            made = FORMS["text"].render(sheet(kind, session), TextForm(), Look()).data.decode("utf-8")
            if kind == "sheet":
                assert phrases(session.client.facts.language).text("ready_title").casefold() in made.casefold()
            _clean(made)


def test_no_condition_is_named_beside_the_cells(sessions: list[FittedSession]) -> None:
    """What the files for braille programs and displays say of themselves."""
    for session in sessions[:1]:
        settings = BrailleForm(grade=1, file="pef", code="ueb" if session.client.facts.language == "en" else "fr")
        _clean(FORMS["braille"].render(sheet("sheet", session), settings, Look()).data.decode("utf-8"))
        package = FORMS["braille"].render(sheet("sheet", session), settings.model_copy(update={"file": "ebraille"}), Look())
        _clean(_in_package(package.data))


def _in_package(data: bytes) -> str:
    """Every name and every text of a zip package, entities read."""
    with zipfile.ZipFile(io.BytesIO(data)) as package:
        names = package.namelist()
        texts = [package.read(name).decode("utf-8") for name in names if not name.endswith((".woff2", ".ttf", ".otf", ".png"))]
    return html.unescape("\n".join([*names, *texts]))


def test_no_condition_is_named_in_braille(sessions: list[FittedSession]) -> None:
    code = {"en": ("ueb", "en-ueb-g1.ctb"), "fr": ("fr", "fr-bfu-comp6.utb")}
    for session in sessions[:2]:
        form, table = code[session.client.facts.language]
        settings = BrailleForm(code=form, grade=1, file="unicode", padded=False)
        text = FORMS["braille"].render(sheet("sheet", session), settings, Look()).data.decode("utf-8")
        cells = "".join(text.replace("\u2800", " ").split())
        assert len(cells) > 1000

        def in_cells(words: str, table: str = table, cells: str = cells) -> bool:
            told, _, _ = liblouis.owner().forward((table,), words, None)
            return "".join(told.replace("\u2800", " ").split()) in cells

        assert in_cells(phrases(session.client.facts.language).text("ready_title"))
        assert [name for name in everything_about(TABLE) if in_cells(name)] == []


def test_no_condition_is_named_to_the_trainer_either(sessions: list[FittedSession]) -> None:
    # A terminal stands in a studio where others can hear or read it.
    for session in sessions:
        for remark in session.remarks:
            _clean(remark.what)


def test_the_guard_itself_would_notice() -> None:
    with pytest.raises(AssertionError):
        _clean("Because of your Glaucoma, keep your head up.")
    with pytest.raises(AssertionError):
        _clean("Après l\u2019opération\nde l\u2019œil, gardez la tête haute.")
    with pytest.raises(AssertionError):
        buffer = io.BytesIO()
        with zipfile.ZipFile(buffer, "w") as package:
            package.writestr("about.opf", "<dc:title>Eye surgery &amp; after</dc:title>")
        _clean(_in_package(buffer.getvalue()))
    client = a_client(care=[entry("glaucoma")])
    plan = a_plan(straight_sets("squat"), note={"en": "Mind your glaucoma.", "fr": "Bravo."})
    session = fit_to(client, plan, an_exercise("squat"))
    assert "the note in plans/T-v1.yaml names what is private in clients/T1.yaml" in eyes(session)[0]
    surgery = a_client(care=[entry("recent eye surgery")])
    french = a_plan(straight_sets("squat"), note={"en": "Well done.", "fr": "Après l\u2019opération\u00a0de l\u2019œil, doucement."})
    assert "names what is private" in eyes(fit_to(surgery, french, an_exercise("squat")))[0]


def _clean(text: str) -> None:
    # One sign for both apostrophes, as languages differ in which they print.
    folded = " ".join(text.casefold().replace("\u2019", "'").split())
    for name in everything_about(TABLE):
        assert name.casefold().replace("\u2019", "'") not in folded, name


# --- nothing is ever called safe --------------------------------------------------------

_PROMISES = re.compile(
    r"\b(?:safe(?:ly|ty)?|harmless|risk-free|cleared|heals?|cures?|treats)\b"
    r"|\b(?:sans (?:danger|risque)|sécurité|sûre?s?|inoffensi\w+|guéri\w*|soigne\w*)\b",
    re.IGNORECASE,
)
_PACKAGE = Path(__file__).resolve().parents[2] / "handouts"


@pytest.mark.parametrize("language", known_languages())
def test_no_sheet_calls_a_plan_safe(language: str) -> None:
    told = " ".join(value if isinstance(value, str) else " ".join(map(str, value.values())) for value in phrases(language).table.values())
    assert len(told) > 10_000
    assert _PROMISES.findall(told) == []


def test_no_exercise_text_calls_a_movement_safe(demo: Studio) -> None:
    for text in demo.exercises.values():
        for part in (*text.parts, *text.variants):
            assert _PROMISES.findall(str(part)) == [], text.path


def test_no_message_calls_a_plan_safe() -> None:
    """Whatever the program says, as far as it stands in its code: what it says
    of a client who was cleared is the word of the client's file."""
    for room in ("fitting", "coaching", "making", "progress", "logbook"):
        for path in sorted((_PACKAGE / room).rglob("*.py")):
            tree = ast.parse(path.read_text("utf-8"))
            docs = {ast.get_docstring(node, clean=False) for node in ast.walk(tree) if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef)}
            words = [node.value for node in ast.walk(tree) if isinstance(node, ast.Constant) and isinstance(node.value, str)]
            # A text of one word is a key or a value of a file, and is told to nobody.
            said = [text for text in words if text not in docs and " " in text.strip()]
            assert [text for text in said if _PROMISES.search(text)] == [], path


def test_the_guard_against_promises_would_notice() -> None:
    for words in ("This plan is safe for you.", "Ce programme est sans danger.", "Un exercice sûr."):
        assert _PROMISES.search(words)
