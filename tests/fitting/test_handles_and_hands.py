"""Handles with plates, sides in timed work, and clients with one hand, as the sheets tell them."""

from __future__ import annotations

from handouts.fitting.fit import fit
from handouts.fitting.fitted import FittedSession
from handouts.fitting.sheets import sheet
from handouts.handout import LogSheet, SheetKind, plain, walk
from handouts.languages import phrases
from handouts.models import Exercise, Part, Studio
from tests.fitting.making import TODAY, a_client, a_plan, an_exercise, eyes, fit_to, straight_sets


def words_of(session: FittedSession, kind: SheetKind = "sheet") -> list[str]:
    return [plain(block.content) for block in walk(sheet(kind, session).blocks) if hasattr(block, "content")]


def test_the_sheet_says_how_to_set_a_handle() -> None:
    press = an_exercise("press", equipment=["pair of dumbbells"], hands="one each")
    kit = {"adjustable": [{"handles": "2", "handle": "2 kg", "plates": ["8 x 1 kg", "4 x 2.5 kg"]}]}
    session = fit_to(a_client(kit=kit), a_plan(straight_sets("press", load="11 kg each")), press)
    # 2 + 2 x (1 x 2.5 + 2 x 1) = 11
    told = words_of(session)
    setting = "Set two handles to 11 kg each: on each end 1 plate of 2.5 kg, 2 plates of 1 kg."
    assert told.count(setting) == 2  # what to have ready, and at the exercise
    assert any("no plate is loose" in line for line in told)
    assert "Two dumbbells of 11 kg each" not in told


def test_plates_of_another_unit_are_told_as_stamped_and_the_sum_as_about() -> None:
    # 2 kg + 2 x 5 lb = 6.5359237 kg by the pound of 1959.
    row = an_exercise("row", equipment=["dumbbell"], hands="one")
    kit = {"adjustable": [{"handle": "2 kg", "plates": ["2 x 5 lb", "2 x 2.5 lb"]}]}
    session = fit_to(a_client(kit=kit), a_plan(straight_sets("row", load="7 kg")), row)
    assert "Set one handle to about 6.5 kg: on each end 1 plate of 5 lb." in words_of(session)
    assert any("one dumbbell of 6.5 kg is the heaviest there not above it; the next there is 8.8 kg" in each.what for each in session.remarks)
    french = fit_to(a_client(kit=kit, language="fr"), a_plan(straight_sets("row", load="7 kg")), row)
    told = [line.replace("\u00a0", " ").replace("\u202f", " ") for line in words_of(french)]
    assert "Réglez une poignée sur 6,5 kg environ : de chaque côté 1 disque de 5 lb." in told


def test_new_plates_take_time_and_in_a_superset_they_need_the_trainers_eye() -> None:
    kit = {"adjustable": [{"handles": "2", "handle": "2 kg", "plates": ["8 x 1 kg"]}]}
    texts = [an_exercise(name, equipment=["pair of dumbbells"], hands="one each") for name in ("press", "curl")]
    works = [straight_sets("press", load="4 kg each"), straight_sets("curl", load="6 kg each")]
    apart = fit_to(a_client(kit=kit), a_plan(*works), *texts)
    # 2 x (3 x 40 + 2 x 60) + 30, and one more change-over of 30 s for the plates (common practice).
    assert apart.total_seconds == 240 + 30 + 240 + 30
    same = fit_to(a_client(kit=kit), a_plan(works[0], works[1] | {"load": "4 kg each"}), *texts)
    assert same.total_seconds == 240 + 30 + 240
    together = a_plan(
        {
            "structure": "superset", "rounds": "2", "rest inside": "20 s", "rest after": "60 s",
            "exercises": [{"exercise": "press", "dose": "10 reps", "load": "4 kg each"}, {"exercise": "curl", "dose": "10 reps", "load": "6 kg each"}],
        }
    )  # fmt: skip
    session = fit_to(a_client(kit=kit), together, *texts)
    assert "curl needs other plates on the handle than press before it, in every round" in eyes(session)[0]


def test_timed_work_on_one_side_at_a_time_changes_sides_halfway() -> None:
    row = an_exercise("row", sides="each", **{"written for": "right"})
    march = an_exercise("march", sides="alternating")
    plan = a_plan(
        {"structure": "intervals", "work": "40 s", "rest": "20 s", "rounds": "2", "round rest": "60 s",
         "exercises": [{"exercise": "row"}, {"exercise": "march"}]}
    )  # fmt: skip
    told = words_of(fit_to(a_client(), plan, row, march))
    assert told.count("Change sides halfway: 20 s on each side.") == 1


def test_every_sheet_says_clear_floor_and_how_to_put_weights_down(demo: Studio) -> None:
    for code, (plan, version) in {"C1": ("P1", 1), "C3": ("P2", 1)}.items():
        session = fit(demo.clients[code], demo.plans[plan, version], demo.exercises, demo.facts, None, TODAY)
        words = phrases(session.client.facts.language)
        for kind in ("sheet", "card", "log"):
            told = words_of(session, kind)
            assert words.text("not_medical") in told
            keys = ("ready_floor", "ready_reach", "ready_put_down") if kind == "sheet" else ("ready_short",)
            assert all(words.text(key) in told for key in keys)


def test_a_one_handed_client_meets_no_step_for_two_hands(demo: Studio) -> None:
    # Both languages, right and left: the texts are written for any one hand that grips.
    for language in ("en", "fr"):
        for hand, other in (("right", "left"), ("left", "right")):
            facts = demo.clients["C4"].facts
            cuff = facts.kit.cuff and facts.kit.cuff.model_copy(update={"side": other})
            kit = facts.kit.model_copy(update={"cuff": cuff})
            facts = facts.model_copy(update={"hands": hand, "language": language, "kit": kit, "loads": {}})
            client = demo.clients["C4"].model_copy(update={"facts": facts})
            session = fit(client, demo.plans["P2", 1], demo.exercises, demo.facts, None, TODAY)
            done = {exercise.planned: exercise.option for group in session.groups for exercise in group.exercises}
            assert (done["goblet-squat"], done["floor-press"], done["hammer-curl"]) == (
                "one-hand-hold", "one-hand-and-cuff", "one-hand-and-cuff",
            )  # fmt: skip
            told = " ".join(words_of(session)).casefold()
            for wrong in ("both palms", "both fists", "both handles", "both hands", "deux paumes", "deux poings", "deux mains"):
                assert wrong not in told, wrong
            assert not any("for two hands" in remark.what for remark in session.remarks)


def test_a_two_handed_client_never_meets_the_way_for_one_hand(demo: Studio) -> None:
    session = fit(demo.clients["C6"], demo.plans["P2", 1], demo.exercises, demo.facts, None, TODAY)
    assert not any("cuff" in line.casefold() for line in words_of(session))
    assert any("both fists" in line for line in words_of(session))


def test_steps_for_two_hands_are_told_to_the_trainer() -> None:
    text = an_exercise("hold", equipment=["dumbbell"], hands="one", sides="each")
    steps = {"name": "Finish", "line": 30, "blocks": [{"ordered": True, "items": [{"text": "Press both palms down.", "line": 32}]}]}
    text = text.model_copy(update={"parts": (Part.model_validate(steps),)})
    plan = a_plan(straight_sets("hold", dose="8 reps each side", load="5 kg"))
    kit = {"dumbbells": ["1 x 5 kg"]}
    assert eyes(fit_to(a_client(kit=kit), plan, text)) == []
    assert eyes(fit_to(a_client(kit=kit, hands="right"), plan, text))[0].startswith(
        "exercise_texts/hold.md, line 32: these steps are for two hands"
    )


def test_what_a_text_declares_goes_before_phrases() -> None:
    """No phrase of these steps tells of two hands, and none has to: the text
    declares that it holds one weight in each."""
    options = {"alone": {"title": "Alone", "one handed": "yes", "hands": "one", "sides": "each"}}
    text = an_exercise("curl", equipment=["pair of dumbbells"], hands="one each", options=options)
    items = [{"text": "Lift the left one as you lower the right one.", "line": 32}]
    steps = {"name": "Movement", "line": 30, "blocks": [{"ordered": True, "items": items}]}
    anew = {"name": "Movement", "line": 40, "option": "alone", "blocks": [{"ordered": True, "items": [{"text": "Lift it.", "line": 42}]}]}
    without = text.model_copy(update={"parts": (Part.model_validate(steps),)})
    worded = without.model_copy(update={"variants": (Part.model_validate(anew),)})
    plan, kit = a_plan(straight_sets("curl", dose="8 reps", load="5 kg")), {"dumbbells": ["2 x 5 kg"]}

    def told(text: Exercise, **facts: str) -> list[str]:
        return [what for what in eyes(fit_to(a_client(kit=kit, **facts), plan, text)) if "two hands" in what]

    (what,) = told(without, hands="right")
    assert what.startswith("exercise_texts/curl.md, line 30: these steps are for two hands, as 'hands: one each' in the text says")
    assert told(worded, hands="right") == []
    assert told(without) == []


def test_the_log_asks_each_side_for_its_own_share(demo: Studio) -> None:
    session = fit(demo.clients["C4"], demo.plans["P2", 1], demo.exercises, demo.facts, None, TODAY)
    (log,) = [block for block in walk(sheet("log", session).blocks) if isinstance(block, LogSheet)]
    curl = next(entry for entry in log.entries if entry.key == "hammer-curl")
    # 12 in all are 6 on each side.
    assert [(field.name, plain(field.target)) for field in curl.fields if field.kind == "count"] == [
        ("reps_right", "6"), ("reps_left", "6"),
    ]  # fmt: skip
