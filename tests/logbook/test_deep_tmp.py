"""Whatever comes in: no traceback, no hang, and nothing stored that cannot be read."""

from __future__ import annotations

import datetime
import tempfile
from pathlib import Path

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from handouts.logbook.drafts import Draft, read_drafts, write_drafts
from handouts.logbook.files import append_lines, clean
from handouts.logbook.message import Filled, Message
from handouts.logbook.understanding import interpret
from handouts.reading.log import read_log

TODAY = datetime.date(2029, 1, 20)
CLIENTS = ("C1", "C2", "C3", "C4", "C5", "C6")

# Pieces that mean something, in any order: most of them meet in a message
# that no client ever sent.
PIECES = st.sampled_from(
    [
        "1",
        "2",
        "3",
        "6",
        "7",
        "0",
        "12",
        "16",
        "16.5",
        "400",
        "-5",
        "1000000000000",
        "12/12/14",
        "3x12",
        "2×12",
        "1:05",
        "24:30",
        "1:05:00",
        "99:99",
        "05-06",
        "2029-01-09\n",
        "",
        "",
        "",
        "2031-01-01",
        "9999-99-99",
        "kg",
        "lb",
        "pounds",
        "kilos",
        "livres",
        "min",
        "minutes",
        "h",
        "s",
        "m",
        "each",
        "chacun",
        "reps",
        "sets",
        "rounds",
        "tours",
        "left",
        "right",
        "R",
        "L\n",
        "",
        "",
        "",
        "gauche",
        "droite",
        "cuff",
        "manchon",
        "effort",
        "RPE",
        "/10",
        "same",
        "pareil",
        "comme",
        "as",
        "que",
        "Saturday",
        "samedi",
        "lundi",
        "yesterday",
        "hier",
        "today\n",
        "",
        "",
        "",
        "last",
        "one",
        "la",
        "dernière",
        "skip",
        "sauté",
        "row",
        "press",
        "squat",
        "carry",
        "goblet",
        "floor",
        "seated",
        "développé",
        "assis",
        "tirage",
        "marche",
        "montée\n",
        "",
        "",
        "",
        "twenty",
        "five",
        "vingt",
        "cinq",
        "quatre-vingt-dix",
        "et",
        "demi",
        "and",
        "a",
        "half",
        "point",
        "virgule",
        "douze",
        "seize",
        "pain",
        "douleur",
        "fait",
        "mal",
        "genou\n",
        "",
        "",
        "",
        "knee",
        "chest",
        "dizzy",
        "no",
        "pas",
        "de",
        "mais",
        "but",
        "note:",
        "question:",
        "?",
        "which",
        "foot",
        "P2",
        "v1",
        "version",
        "2",
        "exercise",
        "3",
        "total",
        ";",
        ",",
        ".",
        ":",
        "*",
        "#",
        "(",
        ")",
        "\n",
    ]
)
MESSAGES = st.one_of(
    st.lists(PIECES, max_size=25).map(" ".join), st.lists(PIECES, max_size=12).map("".join), st.text(max_size=120)
)
FIELDS = st.builds(
    Filled,
    st.sampled_from(["floor-press", "goblet-squat", "farmer-carry", "session", "3", "press", "xyz", ""]),
    st.sampled_from(
        [
            "weight",
            "weight_left",
            "reps",
            "reps_right",
            "time",
            "seconds",
            "metres",
            "rounds",
            "date",
            "effort",
            "pain",
            "note",
            "question",
            "question_start-position",
            "other",
        ]
    ),
    st.one_of(MESSAGES, st.sampled_from(["16 kg", "12 12 12", "skip", "24 min", "7", "no"])),
)


def settle(message: Message, known, choose):
    """Answer every question until there are none; each answer is used once."""
    answers: dict[str, str] = {}
    for _ in range(60):
        found = interpret(message, known, answers)
        assert found == interpret(message, known, answers)
        for question in found.questions:
            assert question.asks and question.reason and not question.reason.endswith(".")
        if not found.questions:
            return found
        question = found.questions[0]
        answers[question.key] = choose(question)
    raise AssertionError(f"questions without end: {message.raw!r}, {question}")


@given(st.sampled_from(CLIENTS), st.sampled_from(["en", "fr"]), MESSAGES, st.integers(0, 5), st.data())
@settings(
    max_examples=20000, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow]
)
def test_any_message_ends_in_lines_that_can_be_read_again(known, code, language, raw, choice, data):
    of = known(code, TODAY)
    message = Message(clean(raw), language, date=data.draw(st.sampled_from([None, TODAY])))

    def choose(question):
        if question.proposals:
            return question.proposals[choice % len(question.proposals)].answer
        return "leave out" if question.key.startswith("unread") else TODAY.isoformat()

    found = settle(message, of, choose)
    with tempfile.TemporaryDirectory() as place:
        append_lines(Path(place), code, found.lines, (), TODAY)
        path = Path(place) / "logs" / f"{code}.csv"
        again = read_log(path, "log")
        assert len(again) == len(found.lines)
        for line, written in zip(found.lines, again, strict=True):
            assert (line.exercise, line.side, line.weight, line.reps, line.seconds, line.metres, line.effort) == (
                written.exercise,
                written.side,
                written.weight,
                written.reps,
                written.seconds,
                written.metres,
                written.effort,
            )
            assert written.raw == clean(line.raw)
            assert written.date is not None and written.date <= TODAY
            assert all(0 <= count <= 200 for count in written.reps)
            assert written.seconds is None or written.seconds >= 0


@given(
    st.sampled_from(CLIENTS),
    MESSAGES,
    st.dictionaries(
        st.sampled_from(
            [
                "date",
                "plan",
                "time",
                "effort",
                "same",
                "again",
                "unread:1",
                "weight:floor-press:both",
                "reps:goblet-squat:both",
                "first:floor-press:both",
                "warning:1",
                "ask:1",
                "exercise:press",
            ]
        ),
        MESSAGES,
    ),
)
@settings(
    max_examples=8000, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow]
)
def test_any_answer_is_taken_or_asked_again(known, code, raw, answers):
    interpret(Message(raw, "en"), known(code, TODAY), answers)


@given(st.sampled_from(CLIENTS), st.lists(FIELDS, max_size=8))
@settings(
    max_examples=8000, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow]
)
def test_any_filled_fields(known, code, fields):
    message = Message("", "en", tuple(fields), date=TODAY)
    settle(message, known(code, TODAY), lambda question: "leave out" if question.key != "date" else TODAY.isoformat())


@given(
    st.text(max_size=200),
    st.lists(FIELDS, max_size=3),
    st.dictionaries(st.text(max_size=8), st.text(max_size=8), max_size=3),
)
@settings(max_examples=50, deadline=None)
def test_a_draft_comes_back_as_it_was(raw, fields, answers):
    fields = [Filled(f.exercise, f.name, clean(f.text)) for f in fields]
    answers = {clean(key): clean(answer) for key, answer in answers.items()}
    draft = Draft(Message(clean(raw), "en", tuple(fields), TODAY, "P2", 2), answers, 3)
    with tempfile.TemporaryDirectory() as place:
        write_drafts(Path(place), "C1", (draft,))
        assert read_drafts(Path(place), "C1") == (draft,)
        write_drafts(Path(place), "C1", ())
        assert read_drafts(Path(place), "C1") == ()


def test_a_long_message_is_heard_in_moderate_time(known):
    raw = "floor press 16 kg " + "12 " * 900 + "twenty five " * 80
    found = interpret(Message(raw, "en", date=TODAY), known("C2", TODAY))
    assert found.questions
