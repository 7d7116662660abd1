"""The log as text: the program's writer and reader against each other.

The page's own writer and reader are held against these in test_screen.py.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from handouts.forms import log_text
from handouts.forms.log_text import LogPart, LogText, NoLogText, Said
from handouts.languages import known_languages, phrases

LOG = LogText(
    "C4", "P2", 2, "2029-01-09",
    (
        LogPart("one-arm-supported-row", "Exercise 2", "One-arm supported row", (
            Said("weight_right", "Weight, right", "20 kg"),
            Said("reps_right", "Repetitions in each set, right", "12 12 12"),
            Said("unclear", "I did not understand this", "yes"),
            Said("question", "Your question", "Which foot is in front: the left one, or the one on the side of the weight?"),
        )),
        LogPart("session", "The whole session", "", (Said("time", "Total time", "41 min"), Said("pain", "Pain: no, or where", "no"))),
    ),
)  # fmt: skip


def test_the_text_is_as_the_description_shows_it() -> None:
    assert log_text.write(LOG) == (
        "Training log [handouts log 1]\n"
        "Client: C4\n"
        "Session [plan]: P2 version 2\n"
        "Date: 2029-01-09\n"
        "\n"
        "Exercise 2 [exercise one-arm-supported-row]: One-arm supported row\n"
        "Weight, right [weight right]: 20 kg\n"
        "Repetitions in each set, right [reps right]: 12 12 12\n"
        "I did not understand this [unclear]: yes\n"
        "Your question [question]: Which foot is in front: the left one, or the one on the side of the weight?\n"
        "\n"
        "The whole session [session]\n"
        "Total time [time]: 41 min\n"
        "Pain: no, or where [pain]: no\n"
        "End of the log [end of log]\n"
    )


@pytest.mark.parametrize("language", known_languages())
def test_read_gives_back_what_was_written_in_every_language(language: str) -> None:
    assert log_text.read(log_text.write(LOG, log_text.labels(phrases(language)))) == LOG


def test_a_mail_program_may_wrap_quote_and_add() -> None:
    wrapped = []
    for row in log_text.write(LOG).splitlines():
        while len(row) > 60:
            cut = row.rindex(" ", 0, 60)
            wrapped.append(row[:cut])
            row = row[cut + 1 :]
        wrapped.append(row)
    text = "\ufeffDear Ilse,\r\nhere it is:\r\n\r\n" + "".join(f"> {row}\r\n" for row in wrapped) + "\r\n-- \r\nTime: 3 min\r\n"
    assert log_text.read(text) == LOG
    assert log_text.holds_log(text)


def test_a_label_wrapped_off_its_key_is_put_back() -> None:
    text = log_text.write(LOG).replace("Repetitions in each set, right [reps", "Repetitions in each set, right\n[reps")
    assert log_text.read(text) == LOG


def test_empty_fields_say_nothing() -> None:
    form = log_text.blank(LOG, log_text.ENGLISH)
    assert "Weight, right [weight right]:\n" in form
    assert all(part.fields == () for part in log_text.read(form).parts)
    filled = form.replace("[time]:", "[time]: 41 min")
    assert log_text.read(filled).parts[1].fields == (Said("time", "Total time", "41 min"),)


# A value as anybody may write it, with what the format itself uses.
values = st.text(st.characters(exclude_categories=["Cs"]), max_size=60) | st.sampled_from(
    ["[end of log]", "x [weight]: 99 kg", "[handouts log 1]", "> quoted", "a\nWeight: 3 kg", "Exercise 9 [exercise x]: y"]
)


@given(st.lists(values, min_size=1, max_size=5), values)
def test_nothing_that_a_client_writes_can_pose_as_a_line(texts: list[str], title: str) -> None:
    fields = tuple(Said("question", "Your question", text) for text in texts)
    log = LogText("C4", "P2", 2, "", (LogPart("x", "Exercise 1", title, fields), LogPart("session", "S", "", ())))
    back = log_text.read(log_text.write(log))
    assert (back.client, back.plan, back.version, len(back.parts)) == ("C4", "P2", 2, 2)
    assert [field.name for field in back.parts[0].fields] == ["question"] * len(back.parts[0].fields)
    assert len(back.parts[0].fields) <= len(texts)
    # Once written, it does not change any more.
    assert log_text.read(log_text.write(back)) == back


@given(st.text(max_size=300))
def test_any_text_is_read_or_refused(text: str) -> None:
    for whole in (text, f"T [handouts log 1]\n{text}\nE [end of log]\n"):
        try:
            log_text.read(whole)
        except NoLogText:
            continue


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("Hello", "not a log"),
        ("Training log [handouts log 2]\nEnd [end of log]\n", "bring the program up to date"),
        ("Training log [handouts log 1]\nClient: C4\n", "part of the log may be"),
        ("Training log [handouts log 1]\nClient: C4\nEnd [end of log]\n", "whose and which session"),
        ("T [handouts log 1]\nClient: C4\nClient: C5\nEnd [end of log]\n", "client twice"),
    ],
)
def test_what_is_no_whole_log_is_refused_with_the_reason(text: str, reason: str) -> None:
    with pytest.raises(NoLogText, match=reason):
        log_text.read(text)
