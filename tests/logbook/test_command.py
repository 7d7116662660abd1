"""`handouts log` and `handouts questions`, typed as a trainer types them."""

from __future__ import annotations

import json
import shlex

from handouts import carried
from handouts.forms.log_text import LogPart, LogText, Said, write
from handouts.logbook.interview import prompts
from handouts.reading.log import read_log


def stored(folder, code):
    path = folder / "logs" / f"{code}.csv"
    return read_log(path, "log") if path.is_file() else ()


def waiting(folder, code):
    path = folder / "logs" / f"{code}.draft.json"
    return json.loads(path.read_text("utf-8"))["waiting"] if path.is_file() else []


def test_what_is_sure_is_stored_at_once(run, folder):
    done = run("log", "C2", "--text", "1 16 10 10 9", "--date", "2029-01-08")
    assert done.exit_code == 0
    assert done.output == "Stored, 2029-01-08, P2 version 2, line 2: goblet-squat: 16 kg, 10/10/9 reps\n"
    assert [line.raw for line in stored(folder, "C2")] == ["1 16 10 10 9"]


def test_nothing_is_stored_until_the_questions_are_answered(run, folder):
    raw = "seated press, fifty pounds, twelve; ninety-five minutes"
    done = run("log", "C1", "--text", raw, "--date", "2029-01-12")  # the input ends at once
    assert done.exit_code == 1
    assert "Question (2 questions left): seated-press: 15 lb, or another weight?" in done.output
    assert not stored(folder, "C1") and waiting(folder, "C1")[0]["raw"] == raw
    half = run("log", "C1", say="a\nstop\n")
    assert half.exit_code == 1 and not stored(folder, "C1")
    assert waiting(folder, "C1")[0]["answers"] == {"weight:seated-press:both": "15 lb"}
    rest = run("log", "C1", say="unknown\n")
    assert rest.exit_code == 0 and "15 lb, or another" not in rest.output
    (line,) = stored(folder, "C1")
    assert (str(line.weight), line.reps, line.seconds) == ("15 lb", (12,), None)
    assert waiting(folder, "C1") == [] and not (folder / "logs" / "C1.draft.json").exists()


def test_an_answer_in_own_words_and_one_that_cannot_be(run, folder):
    done = run(
        "log", "C1", "--text", "seated press, fifty pounds, twelve", "--date", "2029-01-12", say="heavy\n\n12 lb\n"
    )
    assert "'heavy' is not a weight" in done.output and "An answer is needed" in done.output
    assert [str(line.weight) for line in stored(folder, "C1")] == ["12 lb"]


def test_a_reason_that_asks_has_one_sign_at_its_end(run):
    done = run("log", "C1", "--text", "floor press 12 12 12", "--date", "2029-01-12")
    assert "was it done instead of" in done.output and "?.\n" not in done.output and "??" not in done.output


def test_later_asks_nothing(run, folder):
    done = run("log", "C4", "--text", "carry 2×12 kg", "--date", "2029-01-16", "--later", say="a\n")
    assert done.exit_code == 1 and not stored(folder, "C4")
    assert "the client holds one, in the right hand" in done.output and "Answer with: handouts log C4" in done.output


def test_a_clear_message_does_not_wait_behind_a_doubtful_one(run, folder):
    run("log", "C4", "--text", "carry 2×12 kg", "--date", "2029-01-16", "--later")
    done = run("log", "C4", "--text", "21 min", "--date", "2029-01-18", "--later")
    assert done.exit_code == 0 and len(stored(folder, "C4")) == 1 and len(waiting(folder, "C4")) == 1
    same = run("log", "C4", "--text", "same", "--date", "2029-01-19", "--later")
    assert "an earlier message of this client still waits" in same.output


def test_by_options(run, folder):
    words = "log C6 --date 2029-01-08 --exercise 'floor press' --weight '40 lb' --reps 12/12/14 --time 26 --note 'felt good'"
    done = run(*shlex.split(words))
    assert done.exit_code == 0, done.output
    press, session = stored(folder, "C6")
    assert (press.exercise, str(press.weight), press.reps, press.note) == (
        "floor-press",
        "40 lb",
        (12, 12, 14),
        "felt good",
    )
    assert session.seconds == 26 * 60
    words = "log C2 --date 2029-01-18 --plan P2v1 --exercise 1 --weight 14 --reps '12 12 12' --effort 7"
    done = run(*shlex.split(words), "--warning", "left wrist aches", "--question", "which grip?")
    assert done.exit_code == 0, done.output
    lines = {line.exercise: line for line in stored(folder, "C2")}
    assert str(lines["goblet-squat"].weight) == "14 kg" and lines["goblet-squat"].version == 1
    assert lines["session"].effort == 7
    assert "Question 1 for the writer of goblet-squat" in done.output
    assert lines["goblet-squat"].warning == "left wrist aches"
    done = run(*shlex.split("log C2 --date 2029-01-19 --exercise carry --weight 20 --seconds 30/30/20"))
    assert stored(folder, "C2")[-1].seconds == 80


def test_options_that_do_not_go_together(run):
    for words, reason in (
        (("--text", "1 16 12", "--weight", "16 kg"), "take out --weight"),
        (("--weight", "16 kg"), "needs the exercise"),
        (("--date", "yesterday", "--text", "1 16 12"), "--date: 'yesterday' is not a date"),
        (("--text", " "), "the message is empty"),
        (("--text", "x" * 5000), "at most 4000"),
        (("--from", "nowhere.txt"), "no such file"),
    ):
        done = run("log", "C2", *words)
        assert done.exit_code == 2 and reason in done.output, done.output


def test_an_unknown_client(run):
    done = run("log", "C22", "--text", "1 16 12")
    assert done.exit_code == 2 and "no client 'C22'" in done.output


def test_a_wrong_line_is_corrected_and_kept(run, folder):
    run("log", "C2", "--text", "1 16 10 10 9", "--date", "2029-01-08")
    done = run("log", "C2", "--correct", "2", "--reps", "10/10/10")
    assert done.exit_code == 0 and "Kept as corrected: line 2" in done.output
    old, new = stored(folder, "C2")
    assert (old.reps, str(old.corrected)) == ((10, 10, 9), "2029-01-20")
    assert (new.reps, str(new.weight), str(new.date)) == ((10, 10, 10), "16 kg", "2029-01-08")
    assert run("log", "C2", "--correct", "2", "--reps", "1").exit_code == 2
    assert "nothing to correct was given" in run("log", "C2", "--correct", "3").output
    listed = run("log", "C2", "--list").output.splitlines()
    assert listed[0].startswith(
        "line 2, 2029-01-08, P2 version 2: goblet-squat: 16 kg, 10/10/9 reps; corrected 2029-01-20"
    )


def test_the_same_log_twice(run, folder):
    run("log", "C2", "--text", "1 16 10 10 9", "--date", "2029-01-08")
    done = run("log", "C2", "--text", "1 16 10 10 9", "--date", "2029-01-08", say="a\n")
    assert "Is this the same log once more?" in done.output and "Nothing stored" in done.output
    assert len(stored(folder, "C2")) == 1


def test_pain_alerts_freezes_and_is_answered(run, folder):
    run("log", "C3", "--date", "2029-01-10", "--text", "développé assis, trois kilos, quinze", say="b\n")
    done = run(
        "log", "C3", "--date", "2029-01-17", "--text", "pareil, mais le genou droit fait mal à la marche", say="a\n"
    )
    assert done.exit_code == 0
    assert (
        "Stop: warning sign: 'le genou droit fait mal à la marche'. Frozen until you write an answer: goblet-squat, step-up."
        in done.output
    )
    listed = run("log", "C3", "--warnings").output.splitlines()
    assert len(listed) == 2 and all("le genou droit" in line for line in listed)
    number = listed[0].split(",")[0].removeprefix("line ")
    assert run("log", "C3", "--answer", number, "step of 5 cm from now on").exit_code == 0
    assert len(run("log", "C3", "--warnings").output.splitlines()) == 1


# --- files -----------------------------------------------------------------------------


def page_log(**changed) -> LogText:
    row = LogPart(
        "one-arm-supported-row",
        "Exercise 3",
        "One-arm supported row",
        (
            Said("weight_right", "Weight, right", "20 kg"),
            Said("reps_right", "Repetitions, right", "12 12 12"),
            Said("weight_left", "Weight, left", "4 kg"),
            Said("reps_left", "Repetitions, left", "10 10 10"),
            Said("unclear", "I did not understand this", "yes"),
            Said("part", "Which part", "start-position"),
            Said("question", "Your question", "Which foot is in front?"),
        ),
    )
    session = LogPart(
        "session", "The whole session", "", (Said("time", "Total time", "41 min"), Said("effort", "How hard", "7"))
    )
    return LogText(
        **{"client": "C4", "plan": "P2", "version": 1, "date": "2029-01-09", "parts": (row, session), **changed}
    )


def test_the_log_that_the_page_saves(run, folder, tmp_path):
    path = tmp_path / "log.txt"
    path.write_text("Dear coach,\n\n" + write(page_log()) + "\nSent from a telephone", "utf-8")
    done = run("log", "C4", "--from", str(path))
    assert done.exit_code == 0, done.output
    right, left, session = stored(folder, "C4")
    assert (right.side, str(right.weight), right.reps) == ("right", "20 kg", (12, 12, 12))
    assert (left.side, str(left.weight), left.reps) == ("left", "4 kg", (10, 10, 10))
    assert (session.seconds, session.effort, session.version) == (41 * 60, 7, 1)
    told = run("questions", "C4")
    assert (
        told.exit_code == 1
        and "Which foot is in front?" in told.output
        and "exercise_texts/one-arm-supported-row.md:" in told.output
    )


def test_the_log_of_somebody_else_is_refused(run, folder, tmp_path):
    path = tmp_path / "log.txt"
    path.write_text(write(page_log(client="C9")), "utf-8")
    done = run("log", "C4", "--from", str(path))
    assert done.exit_code == 2 and "this is the log of C9, not of C4" in done.output
    path.write_text(write(page_log()).replace("End of the log [end of log]", ""), "utf-8")
    assert run("log", "C4", "--from", str(path)).exit_code == 2


def test_from_csv(run, folder, tmp_path):
    path = tmp_path / "log.csv"
    path.write_text(
        "date,exercise,side,weight,reps,time,effort,note\n"
        "2029-01-08,goblet-squat,,16 kg,12/12/12,,,\n"
        "2029-01-08,session,,,,24 min,7,went well\n"
        "2029-01-11,3,right,20,10/10/10,,,\n"
        "2029-01-11,one-arm supported row,left,20,9/9/9,,,\n",
        "utf-8",
    )
    done = run("log", "C2", "--from", str(path))
    assert done.exit_code == 0, done.output
    assert [(str(line.date), line.exercise, line.side, line.reps) for line in stored(folder, "C2")] == [
        ("2029-01-08", "goblet-squat", None, (12, 12, 12)),
        ("2029-01-08", "session", None, ()),
        ("2029-01-11", "one-arm-supported-row", "right", (10, 10, 10)),
        ("2029-01-11", "one-arm-supported-row", "left", (9, 9, 9)),
    ]


def test_csv_with_faults_writes_nothing(run, folder, tmp_path):
    path = tmp_path / "log.csv"
    for text, reason in (
        ("date,exercise,sets\n", "no column 'sets'"),
        ("date,reps\n", "no column is named 'exercise'"),
        ("date,exercise,reps\n2029-01-08,goblet-squat\n", "2 of 3 cells"),
        ("date,exercise,side\n2029-01-08,goblet-squat,both\n", "'both' is not a side"),
        ("date,exercise,reps\n8.1.29,goblet-squat,12\n", "is not a date"),
        ("", "nothing in it"),
        ("date,exercise,plan,version\n2029-01-08,goblet-squat,P2,two\n", "is not a whole number"),
    ):
        path.write_text(text, "utf-8")
        done = run("log", "C2", "--from", str(path))
        assert done.exit_code == 2 and reason in done.output, done.output
    assert not stored(folder, "C2")


def test_from_standard_input(run, folder):
    done = run("log", "C2", "--from", "-", "--date", "2029-01-08", say="1 16 12 12 12\n2 16 10 10 10\n")
    assert done.exit_code == 0, done.output
    assert [line.exercise for line in stored(folder, "C2")] == ["goblet-squat", "floor-press"]


# --- question and answer ------------------------------------------------------------------


def test_question_and_answer_can_be_stopped_and_taken_up(run, folder):
    said = ["2029-01-18", "=", "12 12 14", "16", "? which way do my knuckles point", "10 9 9"]
    first = run("log", "C2", say="\n".join(said) + "\n")
    assert first.exit_code == 1 and "Stopped. What you answered is kept" in first.output
    assert not stored(folder, "C2") and waiting(folder, "C2")[0]["asked up to"] == 5
    # The next run asks for what comes after, and for nothing twice.
    rest = run("log", "C2", say="skip\nskip\nskip\nskip\n31 min\n7\nno\n\n\n")
    assert rest.exit_code == 0, rest.output
    assert "Day of the session" not in rest.output and "Exercise 2" not in rest.output
    lines = {line.exercise: line for line in stored(folder, "C2")}
    assert (str(lines["goblet-squat"].weight), lines["goblet-squat"].reps) == ("16 kg", (12, 12, 14))
    assert lines["floor-press"].reps == (10, 9, 9)
    assert lines["farmer-carry"].reps == (0,)
    assert (lines["session"].seconds, lines["session"].effort) == (31 * 60, 7)
    assert "which way do my knuckles point" in run("questions").output


def test_a_whole_interview(run, folder, known):
    usual = {"date": "2029-01-18", "weight": "=", "effort": "7", "note": "the dog slept", "pain": "no", "question": ""}
    answers = []
    for prompt in prompts(known("C2").sessions["P2", 2]):
        two = prompt.exercise in ("split-squat", "hammer-curl")
        time = "31 min" if prompt.exercise == "session" else "30 30 30"
        answers.append(usual.get(prompt.name, time if prompt.name == "time" else "8 8" if two else "12 12 12"))
    done = run("log", "C2", say="\n".join(answers) + "\n")
    assert done.exit_code == 0, done.output
    lines = stored(folder, "C2")
    assert {line.exercise for line in lines} == {
        "goblet-squat",
        "floor-press",
        "one-arm-supported-row",
        "split-squat",
        "hammer-curl",
        "farmer-carry",
        "session",
    }
    assert {line.side for line in lines if line.exercise == "one-arm-supported-row"} == {"left", "right"}
    assert next(line for line in lines if line.exercise == "session").note == "the dog slept"
    assert next(line for line in lines if line.exercise == "farmer-carry").seconds == 90


def test_back_and_stop_at_once(run, folder):
    done = run("log", "C2", say="2029-01-17\nback\n2029-01-18\nstop\n")
    assert done.exit_code == 1
    fields = waiting(folder, "C2")[0]["fields"]
    assert fields == [["session", "date", "2029-01-18"]]
    empty = run("log", "C5", say="stop\n")
    assert empty.exit_code == 1 and not stored(folder, "C5")


def test_a_broken_draft_is_a_fault(run, folder):
    (folder / "logs").mkdir(exist_ok=True)
    (folder / "logs" / "C2.draft.json").write_text('{"waiting": [', "utf-8")
    done = run("log", "C2")
    assert done.exit_code == 2 and "logs/C2.draft.json" in done.output and "move the file away" in done.output


# --- readers' questions ---------------------------------------------------------------------


def test_questions_reach_the_writer(run, folder):
    run(
        "log",
        "C2",
        "--date",
        "2029-01-18",
        "--text",
        "floor press 16 kg 12 12 12. Movement step 3: how close to locked?",
    )
    told = run("questions")
    assert told.exit_code == 1 and "exercise_texts/floor-press.md:" in told.output
    assert "Stop just before your elbows lock" in told.output
    assert run("questions", "--by-text").output == "floor-press: 1 question, 1 open\n"
    assert "needs the client" in run("questions", "--answered", "1", "x").output
    assert run("questions", "C2", "--answered", "1", "just soft").exit_code == 0
    done = run("questions")
    assert done.exit_code == 0 and done.output == "No reader's question is open.\n"
    assert "just soft" in run("questions", "--all").output


def test_check_shows_the_open_questions_beside_their_lines(run, folder):
    run(
        "log",
        "C2",
        "--date",
        "2029-01-18",
        "--text",
        "floor press 16 kg 12 12 12. Movement step 3: how close to locked?",
    )
    own = folder / "exercise_texts"
    own.mkdir(exist_ok=True)
    (own / "floor-press.md").write_text((carried.starter_texts() / "floor-press.md").read_text("utf-8"), "utf-8")
    before = run("check").exit_code
    asked = "question C2 1: Movement step 3: how close to locked?"
    assert asked in run("check").output and run("check").exit_code == before
    assert asked not in run("check", "--report", "json").output
    run("questions", "C2", "--answered", "1", "just soft")
    assert asked not in run("check").output
