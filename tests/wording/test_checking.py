"""Files in, findings out: languages, settings, comments, places, and files that cannot be checked."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from handouts.errors import StudioFaults
from handouts.wording import checking
from handouts.wording.checking import check_all, check_one
from handouts.wording.names import CHECK_NAMES, KIND_NAMES, LANGUAGES
from handouts.wording.settings import Settings, read_settings

ROOT = Path(__file__).resolve().parents[2]
POINTS = "Bring the weight over here.\n"
"""One blocking mark, "over here" in columns 18 to 27."""


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """An empty working folder, and a function that writes a file in it."""
    monkeypatch.chdir(tmp_path)

    def write(name: str, content: str | bytes) -> Path:
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(content.encode() if isinstance(content, str) else content)
        return path

    return write


def marks_of(text: str, settings: Settings | None = None) -> list[tuple[str, str]]:
    checked = check_one(text, "text.md", settings or Settings())
    return [(finding.name, finding.words) for finding in checked.marks]


# --- places ------------------------------------------------------------------------


def test_a_mark_has_line_column_and_offsets(folder):
    folder("text.md", "Sit tall.\n\n" + POINTS)
    (text,) = check_all(["text.md"]).texts
    (mark,) = text.marks
    assert (mark.line, mark.column, mark.end_line, mark.end_column) == (3, 18, 3, 27)
    assert (mark.start, mark.end, mark.words) == (28, 37, "over here")


@pytest.mark.parametrize("line_end", ["\n", "\r\n", "\r"])
@pytest.mark.parametrize("mark", ["", "\ufeff"])
@pytest.mark.parametrize("before", ["Sit tall.", "Asseyez-vous là-haut, 😀.", "é" * 50])
def test_offsets_count_characters_of_the_file_itself(line_end, mark, before, folder):
    original = before + line_end * 2 + "Bring it\tover here," + line_end + "please." + line_end
    folder("text.md", (mark + original).encode())
    (text,) = check_all(["text.md"]).texts
    (found,) = [finding for finding in text.marks if finding.name == "pointing"]
    assert original[found.start : found.end] == found.words == "over here"
    assert (found.line, found.column) == (3, 10)


def test_a_finding_over_two_lines_ends_on_the_second(folder):
    folder("text.md", "Bring the weight over\nhere.\n")
    (mark,) = check_all(["text.md"]).texts[0].marks
    assert (mark.line, mark.column, mark.end_line, mark.end_column, mark.words) == (1, 18, 2, 5, "over\nhere")


# --- languages ---------------------------------------------------------------------


@pytest.mark.parametrize(
    ("name", "text", "asked", "setting", "language"),
    [
        ("text.md", "Sit.", "", "en", "en"),
        ("text.md", "Sit.", "", "fr", "fr"),
        ("text.fr.md", "Sit.", "", "en", "fr"),
        ("text.fr.md", "---\nlanguage: en\n---\nSit.", "", "fr", "en"),
        ("text.fr.md", "---\nlanguage: fr\n---\nSit.", "en", "fr", "en"),
        ("text.de.md", "Sit.", "", "en", "en"),
    ],
)
def test_the_language_is_asked_for_then_said_then_named_then_set(name, text, asked, setting, language):
    assert check_one(text, name, Settings(language=setting), asked).language == language


def test_an_unknown_language_is_a_fault_with_its_line(folder):
    folder("text.md", "---\ntitle: Sit\nlanguage: tlh\n---\nSit.\n")
    checked = check_all(["text.md"])
    assert checked.exit_status == 2
    assert [str(fault) for fault in checked.faults] == [
        f"text.md:3: the language 'tlh' is not one that is checked; write {' or '.join(LANGUAGES)}"
    ]


def test_a_second_language_takes_its_data_from_the_first_text(folder):
    folder("row.md", "---\ntitle: Row\nsides: each\n---\n## Count\n\nOne pull counts one, then the other arm.\n")
    folder("row.fr.md", "---\nlanguage: fr\ntitle: Tirage\n---\n## Compte\n\nUn tirage compte pour un.\n")
    found = {text.path: [finding.name for finding in text.whole_text] for text in check_all(["."]).texts}
    assert "both-sides" in found["./row.fr.md"]
    assert "both-sides" not in found["./row.md"]


# --- settings ----------------------------------------------------------------------


def test_known_words_are_left_alone_in_any_case_and_spacing():
    text = "Take the RED  band. Take the red cord.\n"
    assert marks_of(text) == [("looks-only", "RED"), ("looks-only", "red")]
    assert marks_of(text, Settings(known_words=("red band",))) == [("looks-only", "red")]


def test_a_kind_or_a_check_can_be_turned_off(folder):
    folder("wording.yaml", "turned off:\n  pointing: We stand beside them.\n  long-sentence: Ours are read aloud.\n")
    folder("texts/text.md", POINTS + "\n" + "word " * 30 + ".\n")
    assert check_all(["texts"]).texts[0].findings == ()


def test_the_nearest_settings_count_and_none_above_the_studio(folder):
    folder("wording.yaml", "turned off:\n  pointing: Reason.\n")
    folder("plain/text.md", POINTS)
    folder("studio/studio.yaml", "studio: S\n")
    folder("studio/exercise_texts/text.md", POINTS)
    folder("own/wording.yaml", "language: en\n")
    folder("own/text.md", POINTS)
    counts = {text.path: len(text.marks) for text in check_all(["plain", "studio", "own"]).texts}
    assert counts == {"plain/text.md": 0, "studio/exercise_texts/text.md": 1, "own/text.md": 1}


@pytest.mark.parametrize(
    ("fails_at", "text", "status"),
    [
        ("advice", "Sit tall.\n", 0),
        ("advice", "Turn your left foot slightly.\n", 1),
        ("advice", POINTS, 1),
        ("blocks", "Turn your left foot slightly.\n", 0),
        ("blocks", POINTS, 1),
    ],
)
def test_the_strength_that_makes_the_exit_status_1(fails_at, text, status, folder):
    folder("wording.yaml", f"fails at: {fails_at}\n")
    folder("text.md", text)
    assert check_all(["text.md"]).exit_status == status


@pytest.mark.parametrize(
    ("content", "fault"),
    [
        (
            "colour: red\n",
            "wording.yaml:1: there is no setting 'colour'; the settings are language, fails at, known words, turned off",
        ),
        ("language: tlh\n", "wording.yaml:1: 'tlh' is not a language that is checked; write en or fr"),
        ("\nfails at: never\n", "wording.yaml:2: 'never' is not a strength; write blocks or advice"),
        (
            "turned off:\n  pointng: Reason\n",
            "wording.yaml:2: there is no kind or check 'pointng'; did you mean 'pointing'?",
        ),
        (
            "turned off:\n  pointing:\n",
            "wording.yaml:2: 'pointing' is turned off without a reason; write why: 'pointing: your reason'",
        ),
        (
            "turned off: pointing\n",
            "wording.yaml:1: this is no list of names with reasons; write 'reading-grade: your reason'",
        ),
        (
            "known words: red band\n",
            "wording.yaml:1: one word stands where a list belongs; put '- ' before it, on a line of its own",
        ),
        ("known words:\n  - a: b\n", "wording.yaml:2: this is no name of a thing; write its words, such as 'red band'"),
        (
            "language: [en\n",
            "wording.yaml:1: a list that begins with '[' is not closed or lacks a comma; write commas between the items and ']' at the end",
        ),
    ],
)
def test_faulty_settings_are_told_once_and_the_texts_are_checked(content, fault, folder):
    folder("wording.yaml", content)
    folder("one.md", POINTS)
    folder("two.md", POINTS)
    checked = check_all(["one.md", "two.md"])
    assert [str(fault) for fault in checked.faults] == [fault]
    assert checked.exit_status == 2
    assert [len(text.marks) for text in checked.texts] == [1, 1]


def test_every_fault_of_the_settings_at_once(folder):
    path = folder("wording.yaml", "language: tlh\nfails at: never\ncolour: red\n")
    with pytest.raises(StudioFaults) as problem:
        read_settings(path, "wording.yaml")
    assert len(problem.value.faults) == 3


@pytest.mark.parametrize("content", ["", "# nothing yet\n"])
def test_settings_may_be_empty(content, folder):
    assert read_settings(folder("wording.yaml", content), "wording.yaml") == Settings()


# --- comments ----------------------------------------------------------------------

LET = "<!-- allow pointing: the pad is bolted to the wall -->"


@pytest.mark.parametrize(
    "text",
    [
        f"{LET}\nBring the weight over here.\n",
        f"{LET}\n\nBring the weight over here.\n",
        f"Bring the weight over here. {LET}\n",
        f"- {LET} Bring the weight over here.\n",
        "<!-- allow pointing:\nthe pad is bolted -->\nBring the weight over here.\n",
        "<!--allow POINTING: the pad-->\nBring the weight over here.\n",
        f"{LET}\n<!-- another note -->\nBring the weight over here.\n",
        f"{LET}\n{LET}\nBring the weight over here. Set it down over there.\n",
    ],
)
def test_a_comment_with_a_reason_lets_a_mark_stand(text):
    checked = check_one(text, "text.md", Settings())
    assert checked.findings == ()
    assert checked.allowed
    assert not checked.fails


@pytest.mark.parametrize(
    ("comment", "why"),
    [
        ("<!-- allow pointing -->", "gives no reason"),
        ("<!-- allow pointing: -->", "gives no reason"),
        ("<!-- allow pointing the pad -->", "gives no reason"),
        ("<!-- allow pointig: the pad -->", "no kind or check 'pointig'"),
        ("<!-- allow -->", "names no kind or check"),
        ("<!-- allow gaze: the pad -->", "lets nothing stand"),
    ],
)
def test_a_comment_that_lets_nothing_stand_is_a_finding(comment, why):
    checked = check_one(f"{comment}\n{POINTS}", "text.md", Settings())
    assert [mark.name for mark in checked.marks] == ["pointing"]
    (finding,) = checked.whole_text
    assert (finding.name, finding.words, finding.line) == ("allow", comment, 1)
    assert why in finding.why


def test_one_comment_lets_one_mark_stand():
    checked = check_one(f"{LET}\nBring the weight over here. Set it down over there.\n", "text.md", Settings())
    (mark,) = checked.marks
    assert "over there" in mark.words


def test_a_comment_does_not_reach_the_line_after_the_next():
    checked = check_one(f"{LET}\nSit tall.\n{POINTS}", "text.md", Settings())
    assert [finding.name for finding in checked.findings] == ["allow", "pointing"]


def test_a_finding_of_the_whole_text_is_let_stand_from_anywhere():
    text = "---\ntitle: Row\nsides: each\n---\n## Count\n\nOne pull counts one.\n"
    names = {finding.name for finding in check_one(text, "text.md", Settings()).whole_text}
    assert "both-sides" in names
    checked = check_one(text + "\n<!-- allow both-sides: one arm is in plaster -->\n", "text.md", Settings())
    assert {finding.name for finding in checked.whole_text} == names - {"both-sides"}


@pytest.mark.parametrize(
    "text",
    [
        f"```\n{LET}\n```\n",
        f"    {LET}\n",
        f"Write `{LET}` above the line.\n",
        "<!-- we allow nobody here -->\n",
        "<!-- allow pointing: never closed\n",
    ],
)
def test_what_is_no_such_comment_is_left_alone(text):
    assert check_one(text, "text.md", Settings()).whole_text == ()


def test_comments_are_no_prose():
    assert check_one("<!-- hold it like this -->\nSit tall.\n", "text.md", Settings()).findings == ()


# --- files -------------------------------------------------------------------------


def test_a_folder_is_searched_for_texts_and_hidden_ones_are_left(folder):
    for name in ("b.md", "a.txt", "deep/c.MARKDOWN", "d.rst", ".hidden/e.md", ".f.md", "g.yaml"):
        folder(name, "Sit.\n")
    assert [text.path for text in check_all(["."]).texts] == ["./a.txt", "./b.md", "./deep/c.MARKDOWN"]
    assert [text.path for text in check_all(["d.rst", "d.rst"]).texts] == ["d.rst"]


@pytest.mark.parametrize(
    ("content", "line", "words"),
    [
        (b"\x00\x01\x02binary", ":1", "zero bytes, so it is not plain text"),
        (b"\x89PNG\r\n\x1a\n\x00\x00", "", "is not"),
        ("Très bien.\n".encode("latin-1"), ":1", "not UTF-8 text"),
        ("Sit.\n".encode("utf-16"), "", "saved as UTF-16"),
        (b"---\ntitle: [open\n---\nSit.\n", ":2", "not closed or lacks a comma"),
        (b"---\ntitle: a\ntitle: b\n---\nSit.\n", ":3", "a second time"),
        (b"---\ntitle: never closed\n\n## Movement\n\nSit.\n", ":1", "have no end"),
    ],
)
def test_a_file_that_cannot_be_read_is_one_line_and_the_others_are_checked(content, line, words, folder):
    folder("bad.md", content)
    folder("good.md", POINTS)
    checked = check_all(["bad.md", "good.md", "missing.md"])
    assert checked.exit_status == 2
    bad, missing = [str(fault) for fault in checked.faults]
    assert bad.startswith(f"bad.md{line}") and words in bad and "\n" not in bad
    assert missing == "missing.md: there is no such file; make it, or take its name out"
    assert [len(text.marks) for text in checked.texts if text.path == "good.md"] == [1]


def test_a_folder_without_texts_is_a_fault(folder):
    folder("empty/notes.yaml", "a: b\n")
    checked = check_all(["empty"])
    assert [str(fault) for fault in checked.faults] == [
        "empty: there is no text in this folder; name a file, or a folder with .md, .markdown, .txt files"
    ]


def test_a_pipe_and_a_link_to_nowhere_do_not_hang(folder, tmp_path):
    os.mkfifo(tmp_path / "pipe.md")
    (tmp_path / "lost.md").symlink_to(tmp_path / "nowhere.md")
    (tmp_path / "round").symlink_to(tmp_path)
    checked = check_all(["."])
    assert sorted(str(fault).split(":")[0] for fault in checked.faults) == ["./lost.md", "./pipe.md"]


def test_what_may_not_be_read_is_one_line_each(folder, tmp_path):
    """Read by a user without rights, since root may read everything."""
    folder("shut/text.md", POINTS)
    folder("secret.md", POINTS)
    folder("good.md", POINTS)
    (tmp_path / "shut").chmod(0)
    (tmp_path / "secret.md").chmod(0)
    for place in (tmp_path, *tmp_path.parents):
        if place.stat().st_uid == os.getuid() and place != Path(place.anchor):
            place.chmod(place.stat().st_mode | 0o755)
    program = (
        "import os, sys\n"
        "import click, yaml, handouts.cli, handouts.logbook.beside, handouts.wording.checking, handouts.wording.command, handouts.reading.yaml_text, handouts.wording.reports.text\n"
        "import handouts.wording; handouts.wording.check_text('Hold it like this.')  # whatever it loads, while the checkout may be read\n"
        "if os.getuid() == 0: os.setgroups([]); os.setgid(65534); os.setuid(65534)\n"
        "sys.argv = ['handouts', 'check', 'shut', 'secret.md', 'good.md']\n"
        "handouts.cli.main()\n"
    )
    run = subprocess.run(
        [sys.executable, "-c", program],
        cwd=tmp_path,
        capture_output=True,
        text=True,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
    )
    (tmp_path / "shut").chmod(0o700)
    assert run.returncode == 2, run.stderr
    assert run.stderr.splitlines()[:2] == [
        "shut: the folder cannot be read (Permission denied); give yourself the right to read it, or leave it out",
        "secret.md: you may not read this file; give yourself the right to read it",
    ]
    assert [line.split(":")[0] for line in run.stdout.splitlines()] == ["good.md"]


def test_names_of_kinds_and_checks_differ():
    assert len({*KIND_NAMES, *CHECK_NAMES}) == len(KIND_NAMES) + len(CHECK_NAMES)


def test_texts_that_are_checked_together_are_told_as_each_by_itself(tmp_path, monkeypatch):
    """Also when they are more than are checked together, in two languages, with line ends of their own, or alike."""
    texts = {
        "a.md": b"Hold it like this.\n",
        "b.fr.md": "Faites comme ça.\n".encode(),
        "c.md": b"Sit tall.\r\nTurn that way.\r\n",
        "d.md": b"Hold it like this.\n",
        "e.md": b"",
        "f.md": b"Look at the ceiling.\n",
    }
    for name, data in texts.items():
        (tmp_path / name).write_bytes(data)
    alone = [check_all([str(tmp_path / name)]).texts[0] for name in texts]
    assert [len(text.marks) for text in alone] == [1, 1, 1, 1, 0, 1]
    assert list(check_all([str(tmp_path)]).texts) == alone
    monkeypatch.setattr(checking, "TOGETHER", 30)
    assert list(check_all([str(tmp_path)]).texts) == alone
