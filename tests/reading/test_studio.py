"""A whole studio: everything read, every fault told, no client stopped by another's."""

import pytest

from handouts import carried
from handouts.errors import StudioFaults, StudioNotFound
from handouts.reading import find_studio, read_studio, read_studio_parts

from .conftest import CLIENT, MARCH, PLAN, SQUAT, SQUAT_IN_FRENCH


def said(reading_or_faults):
    return [str(fault) for fault in getattr(reading_or_faults, "faults", reading_or_faults)]


def read(folder):
    return read_studio_parts(folder.root, folder.starter)


# --- where it is ------------------------------------------------------------------


def test_the_studio_is_found_from_within(folder):
    inside = folder.root / "clients"
    assert find_studio(inside) == folder.root.resolve()
    assert find_studio(folder.root) == folder.root.resolve()
    assert find_studio(inside / "C1.yaml") == folder.root.resolve()


def test_the_nearest_studio_counts(folder):
    folder.write("inner/studio.yaml", "name: x")
    assert find_studio(folder.root / "inner") == (folder.root / "inner").resolve()


def test_no_studio_says_what_to_do_next(tmp_path):
    with pytest.raises(StudioNotFound) as caught:
        find_studio(tmp_path)
    assert str(tmp_path) in str(caught.value)
    assert "studio.yaml" in str(caught.value) and "handouts start" in str(caught.value)


# --- what is read -----------------------------------------------------------------


def test_a_sound_studio(folder):
    studio = read_studio(folder.root, folder.starter)
    assert list(studio.clients) == ["C1"]
    assert list(studio.plans) == [("P1", 1)]
    assert set(studio.exercises) == {("goblet-squat", "en"), ("march", "en")}
    assert studio.exercises["march", "en"].starter
    assert studio.facts.coach == "Ilse"
    assert studio.logs == {}
    assert studio.clients["C1"].lines["units"] == 3


def test_reading_twice_gives_the_same(folder):
    assert read(folder) == read(folder)


def test_a_text_of_the_studio_goes_before_the_starter_text(folder):
    folder.write("exercise_texts/goblet-squat.md", SQUAT.replace("title: Goblet squat", "title: My squat"))
    text = read_studio(folder.root, folder.starter).exercises["goblet-squat", "en"]
    assert (text.facts.title, text.starter, text.path) == ("My squat", False, "exercise_texts/goblet-squat.md")


def test_a_starter_translation_does_not_follow_a_text_that_the_studio_wrote(folder):
    (folder.starter / "goblet-squat.fr.md").write_text(SQUAT_IN_FRENCH, "utf-8")
    assert ("goblet-squat", "fr") in read_studio(folder.root, folder.starter).exercises
    folder.write("exercise_texts/goblet-squat.md", SQUAT.replace("**Slow lowering.**", "**Very slow lowering.**"))
    assert ("goblet-squat", "fr") not in read_studio(folder.root, folder.starter).exercises
    folder.write(
        "exercise_texts/goblet-squat.fr.md", SQUAT_IN_FRENCH.replace("  slow-lowering:", "  very-slow-lowering:")
    )
    assert ("goblet-squat", "fr") in read_studio(folder.root, folder.starter).exercises


def test_a_translation_may_be_the_studio_s_own_beside_a_starter_text(folder):
    folder.write("exercise_texts/goblet-squat.fr.md", SQUAT_IN_FRENCH)
    text = read_studio(folder.root, folder.starter).exercises["goblet-squat", "fr"]
    assert not text.starter and text.facts.knee_bend == 110


def test_hidden_files_backups_and_other_kinds_of_file_are_left_alone(folder):
    for name in (".C2.yaml.swp", "C1.yaml~", "photo.jpg", "._C1.yaml", "intake.pdf"):
        folder.write(f"clients/{name}", b"\xff\0")
    assert said(read(folder)) == []


@pytest.mark.parametrize(
    ("name", "instead"),
    [
        ("clients/C2.yml", "'C2.yaml'"),
        ("clients/C2.yaml.txt", "'C2.yaml'"),
        ("clients/C2.YAML", "'C2.yaml'"),
        ("clients/C2.txt", "'C2.yaml'"),
        ("plans/P2-v1.yml", "'P2-v1.yaml'"),
        ("logs/C1.csv.txt", "'C1.csv'"),
        ("logs/C1.CSV", "'C1.csv'"),
        ("exercise_texts/squat.markdown", "'squat.md'"),
        ("exercise_texts/squat.md.txt", "'squat.md'"),
    ],
)
def test_a_file_that_is_meant_and_would_not_be_read_is_a_fault(folder, name, instead):
    folder.write(name, "x")
    (fault,) = read(folder).faults
    assert fault.path == name and instead in fault.instead


def test_names_that_cannot_be_shown(folder):
    folder.write("clients/C2\n.yaml", CLIENT)
    (fault,) = read(folder).faults
    assert fault.path == "clients/C2?.yaml" and str(fault).isprintable()


def test_a_link_out_of_the_studio_is_not_followed(folder, tmp_path):
    outside = tmp_path / "outside.yaml"
    outside.write_text(CLIENT.replace("C1", "C2"), "utf-8")
    (folder.root / "clients/C2.yaml").symlink_to(outside)
    (folder.root / "clients/C3.yaml").symlink_to("C1.yaml")
    faults = said(read(folder))
    assert faults[0].startswith("clients/C1.yaml:1: the client's code 'C1' is that of clients/C3.yaml too")
    assert "clients/C2.yaml: this is a link that leads out of the studio; put the file itself here" in faults


def test_folders_that_are_missing(folder):
    (folder.root / "plans/P1-v1.yaml").unlink()
    (folder.root / "plans").rmdir()
    assert "plans: there is no such folder in the studio; make it, or check that this is the right folder" in said(
        read(folder)
    )


def test_a_file_in_the_place_of_a_folder_and_the_other_way_round(folder):
    (folder.root / "logs").write_text("x")
    (folder.root / "clients/C2.yaml").mkdir()
    faults = said(read(folder))
    assert any(fault.startswith("logs: the folder cannot be read") for fault in faults)
    assert "clients/C2.yaml: this is a folder, not a file; put a text file in its place" in faults


# --- names across files -------------------------------------------------------------


def test_the_message_of_the_issue(folder):
    folder.change("plans/P1-v1.yaml", "goblet-squat", "goblet-sqat")
    assert said(read(folder)) == ["plans/P1-v1.yaml:7: no exercise 'goblet-sqat'; did you mean 'goblet-squat'?"]


@pytest.mark.parametrize(
    ("name", "old", "new", "fault"),
    [
        ("plans/P1-v1.yaml", "    sets: 3", "    option: slow-lowring\n    sets: 3",
         "plans/P1-v1.yaml:8: no option 'slow-lowring' in 'goblet-squat'; did you mean 'slow-lowering'?"),
        ("plans/P1-v1.yaml", "    sets: 3",
         "    option: {level 1: none, level 2: slow-lowering, level 3: x}\n    sets: 3",
         "plans/P1-v1.yaml:8: no option 'x' in 'goblet-squat'; write 'to-chair-height' or 'slow-lowering'"),
        ("plans/P1-v1.yaml", "    sets: 3", "    position: seated\n    sets: 3",
         "plans/P1-v1.yaml:8: 'goblet-squat' has no way of being done seated; write 'standing'"),
        ("plans/P1-v1.yaml", "8-12 reps", "8-12 reps each side",
         "plans/P1-v1.yaml:9: 'goblet-squat' works both sides together, so nothing is counted each side; write '8-12 reps'"),
        ("plans/P1-v1.yaml", "exercise: goblet-squat", "exercise: march",
         "plans/P1-v1.yaml:9: 'march' works one side at a time, so '8-12 reps' can mean two things; "
         "write '8-12 reps each side' or '8-12 reps in all'"),
        ("plans/P1-v1.yaml", "title: First", "title: {en: First, de: Erster}",
         "plans/P1-v1.yaml:3: 'de' is not a language that sheets are written in; write 'en' or 'fr'"),
        ("clients/C1.yaml", "units: kg", "units: kg\nlanguage: fra",
         "clients/C1.yaml:4: 'fra' is not a language that sheets are written in; did you mean 'fr'?"),
        ("clients/C1.yaml", "plan: P1", "plan: P2", "clients/C1.yaml:8: no plan 'P2'; write 'P1'"),
        ("clients/C1.yaml", "plan: P1", "plan: p1", "clients/C1.yaml:8: no plan 'p1'; did you mean 'P1'?"),
        ("clients/C1.yaml", "plan: P1", "plan: P1\n    version: 2",
         "clients/C1.yaml:9: no version 2 of plan 'P1'; write 1"),
        ("clients/C1.yaml", "- plan: P1", "- plan: P1\n  - plan: P1",
         "clients/C1.yaml:9: plan 'P1' is named twice; take one out"),
        ("clients/C1.yaml", "units: kg", "units: kg\nloads:\n  goblet-sqat: 5 kg",
         "clients/C1.yaml:5: no exercise 'goblet-sqat'; did you mean 'goblet-squat'?"),
        ("clients/C1.yaml", "units: kg", "units: kg\nbest sets:\n  goblet-sqat:\n    load: 5 kg\n    reps: 10",
         "clients/C1.yaml:5: no exercise 'goblet-sqat'; did you mean 'goblet-squat'?"),
    ],
)  # fmt: skip
def test_names_that_nothing_bears(folder, name, old, new, fault):
    folder.change(name, old, new)
    assert said(read(folder)) == [fault]


def test_substitutes_that_do_not_exist(folder):
    folder.write("exercise_texts/goblet-squat.md", SQUAT.replace("option: to-chair-height", "option: to-chair-hight"))
    folder.write("exercise_texts/march.md", MARCH.replace("exercise: goblet-squat", "exercise: sit-ups"))
    assert said(read(folder)) == [
        "exercise_texts/goblet-squat.md:19: no option 'to-chair-hight' in 'goblet-squat'; did you mean 'to-chair-height'?",
        "exercise_texts/march.md:8: no exercise 'sit-ups'; write 'goblet-squat' or 'march'",
    ]


def test_substitutes_may_go_in_a_circle(folder):
    """The squat stands in for the march, and the march for the squat."""
    assert said(read(folder)) == []


def test_an_option_may_change_what_a_dose_can_count(folder):
    folder.change("plans/P1-v1.yaml", "exercise: goblet-squat", "exercise: march\n    option: heels-only")
    assert said(read(folder)) == []


def test_names_in_logs(folder):
    header = "date,plan,version,exercise,side,weight,reps,time,effort,note,raw\n"
    folder.write("logs/C1.csv", header + ",P1,1,goblet-squat,,,,,,,x\n,P1,2,goblet-sqat,,,,,,,x\n,P2,,session,,,,,,,x\n")
    folder.write("logs/c1.csv", header)
    assert said(read(folder)) == [
        "logs/C1.csv:3: no exercise 'goblet-sqat'; did you mean 'goblet-squat'?",
        "logs/C1.csv:3: no version 2 of plan 'P1'; write 1",
        "logs/C1.csv:4: no plan 'P2'; write 'P1'",
        "logs/c1.csv: no client 'c1'; did you mean 'C1'?",
    ]


def test_a_translation_without_its_english_text(folder):
    folder.write("exercise_texts/gobletsquat.fr.md", SQUAT_IN_FRENCH)
    assert said(read(folder)) == [
        "exercise_texts/gobletsquat.fr.md: there is no English text 'gobletsquat.md' to hold its data; "
        "did you mean 'goblet-squat'?"
    ]


def test_codes_are_used_once_whatever_their_case(folder):
    folder.write("clients/other.yaml", CLIENT.replace("code: C1", "code: c1"))
    folder.write("plans/other.yaml", PLAN.replace("plan: P1", "plan: p1"))
    assert said(read(folder)) == [
        "clients/C1.yaml:1: the client's code 'C1' is that of clients/other.yaml too; give each client a code of their own",
        "clients/other.yaml:1: the client's code 'c1' is that of clients/C1.yaml too; give each client a code of their own",
        "plans/other.yaml:2: version 1 of plan 'p1' stands in plans/P1-v1.yaml too; "
        "give this one another version or another code",
    ]


def test_a_client_is_not_blamed_for_a_plan_that_cannot_be_read(folder):
    folder.change("plans/P1-v1.yaml", "sets: 3", "sets: three")
    reading = read(folder)
    assert [fault.path for fault in reading.faults] == ["plans/P1-v1.yaml"]
    assert list(reading.faults_by_client) == ["C1"]
    folder.change("plans/P1-v1.yaml", "plan: P1", "plan: [")
    assert [fault.path for fault in read(folder).faults] == ["plans/P1-v1.yaml"]


# --- all at once, and no more than it concerns ---------------------------------------


def spoil_everything(folder):
    folder.change("studio.yaml", "emergency: 112", "emergncy: 112")
    folder.change("clients/C1.yaml", "units: kg", "units: stone\nloads:\n  goblet-sqat: 5")
    folder.write("clients/C2.yaml", b"code: C2\nname: Zo\xeb\n")
    folder.change("plans/P1-v1.yaml", "rest: 90 s", "rest: 1:30")
    folder.change("plans/P1-v1.yaml", "goblet-squat", "goblet-sqat")
    folder.write("plans/P2-v1.yaml", "plan: P2\nplan: P3\n")
    folder.write("logs/C1.csv", "date;plan\n")
    folder.write("exercise_texts/march.md", MARCH.replace("## Count", "## Cuont").replace("goblet-squat", "sit"))


def test_all_faults_of_all_files_in_one_go(folder):
    spoil_everything(folder)
    with pytest.raises(StudioFaults) as caught:
        read_studio(folder.root, folder.starter)
    assert [(fault.path, fault.line) for fault in caught.value.faults] == [
        ("clients/C1.yaml", 3),
        ("clients/C1.yaml", 5),
        ("clients/C1.yaml", 5),
        ("clients/C2.yaml", 2),
        ("exercise_texts/march.md", 8),
        ("exercise_texts/march.md", 23),
        ("logs/C1.csv", 1),
        ("plans/P1-v1.yaml", 7),
        ("plans/P1-v1.yaml", 10),
        ("plans/P2-v1.yaml", 2),
        ("studio.yaml", 3),
    ]
    for fault in caught.value.faults:
        assert str(fault).isprintable() and fault.wrong and fault.instead
    assert str(caught.value).count("\n") == 10


def test_without_a_sound_studio_file_nothing_can_be_made(folder):
    spoil_everything(folder)
    with pytest.raises(StudioFaults) as caught:
        read(folder)
    assert {fault.path for fault in caught.value.faults} >= {"studio.yaml", "clients/C1.yaml", "plans/P2-v1.yaml"}


@pytest.fixture
def two(folder):
    """C1 squats, C2 marches in French; each has a plan and a log of their own."""
    folder.write("clients/C2.yaml", CLIENT.replace("C1", "C2").replace("P1", "P2") + "language: fr\n")
    folder.write("plans/P2-v1.yaml", PLAN.replace("P1", "P2").replace("goblet-squat", "march").replace("reps", "reps in all"))
    for text in (folder.starter / "goblet-squat.md", folder.starter / "march.md"):
        text.write_text(text.read_text("utf-8").replace("exercise: march", "exercise: goblet-squat"), "utf-8")
    (folder.starter / "march.md").write_text(MARCH.replace("exercise: goblet-squat", "exercise: march"), "utf-8")
    header = "date,plan,version,exercise,side,weight,reps,time,effort,note,raw\n"
    for code in ("C1", "C2"):
        folder.write(f"logs/{code}.csv", header)
    assert said(read(folder)) == []
    return folder


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("clients/C1.yaml", "code: C1\n"),
        ("clients/C1.yaml", "code: C1\ncode: C1\n"),
        ("clients/C1.yaml", b"\xff\xfe"),
        ("clients/C1.yaml", CLIENT.replace("P1", "P9")),
        ("plans/P1-v1.yaml", PLAN.replace("goblet-squat", "sit")),
        ("plans/P1-v1.yaml", PLAN.replace("sets: 3", "sets: 0")),
        ("plans/P1-v1.yaml", "plan: ["),
        ("plans/P1-v2.yaml", PLAN.replace("version: 1", "version: 2").replace("90 s", "90")),
        ("exercise_texts/goblet-squat.md", "---\n"),
        ("exercise_texts/goblet-squat.md", SQUAT.replace("exercise: march", "exercise: sit")),
        ("logs/C1.csv", "x\n"),
    ],
)
def test_one_client_s_fault_stops_no_other(two, name, text):
    two.write(name, text)
    reading = read(two)
    assert list(reading.studio.clients) == ["C2"]
    assert list(reading.faults_by_client) == ["C1"]
    assert {fault.path for fault in reading.faults} == {name}
    assert reading.known_clients == ("C1", "C2")
    assert list(reading.studio.logs) == ["C2"]
    with pytest.raises(StudioFaults):
        read_studio(two.root, two.starter)


def test_a_substitute_that_cannot_be_read_stops_those_whom_it_may_serve(two):
    (two.starter / "goblet-squat.md").write_text(SQUAT, "utf-8")  # the march stands in for the squat
    two.write("exercise_texts/march.md", "---\n")
    assert set(read(two).faults_by_client) == {"C1", "C2"}


def test_a_text_in_another_language_stops_only_those_who_read_it(two):
    two.write("exercise_texts/march.fr.md", "---\n")
    two.write("clients/C3.yaml", CLIENT.replace("C1", "C3").replace("P1", "P2"))
    reading = read(two)
    assert list(reading.faults_by_client) == ["C2"]
    assert list(reading.studio.clients) == ["C1", "C3"]


def test_faults_that_stop_nobody_are_told_under_no_name(two):
    two.write("plans/P7-v1.yaml", "plan: P7\n")
    two.write("exercise_texts/unused.md", "---\n")
    two.write("logs/C9.csv", "x\n")
    reading = read(two)
    assert list(reading.studio.clients) == ["C1", "C2"]
    assert list(reading.faults_by_client) == [""]
    assert {fault.path for fault in reading.faults_by_client[""]} == {
        "plans/P7-v1.yaml", "exercise_texts/unused.md", "logs/C9.csv",
    }  # fmt: skip


def test_a_shared_fault_stands_at_each_client_and_once_in_the_whole(two):
    two.change("clients/C2.yaml", "P2", "P1")
    two.change("plans/P1-v1.yaml", "sets: 3", "sets: 0")
    reading = read(two)
    assert set(reading.faults_by_client) == {"C1", "C2"}
    assert len(reading.faults) == 1


# --- the studio to start from ----------------------------------------------------------


def test_the_studio_to_start_from_is_sound():
    studio = read_studio(carried.starter_studio(), carried.starter_texts())
    (client,) = studio.clients.values()
    forms = client.facts.forms
    assert forms.print and forms.screen and forms.braille
    assert client.facts.level == 1
    assert [choice.plan for choice in client.facts.plans] == ["first"]


def test_the_files_to_start_from_teach():
    for path in carried.starter_studio().rglob("*.yaml"):
        lines = path.read_text("utf-8").splitlines()
        assert sum(line.lstrip().startswith("#") for line in lines) >= 10, path
        assert max(map(len, lines)) <= 80, path
