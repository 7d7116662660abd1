"""Hostile and broken files: a clear fault with its place, and the other clients' sheets."""

from __future__ import annotations

import os
import re
import subprocess
import sys
import zipfile

import pytest

from tests.hostile.studios import ROOT, add_client, calm, everything, handouts, lay_out

LAUGHS = (
    "a: &a [x, x, x, x, x, x, x, x, x]\n"
    + "".join(f"{chr(98 + n)}: &{chr(98 + n)} [{', '.join(['*' + chr(97 + n)] * 9)}]\n" for n in range(9))
)  # nine to the tenth power values when unfolded


@pytest.fixture
def studio(tmp_path):
    """One good client, and one whose file a test spoils."""
    folder = lay_out(tmp_path / "studio", "C4")
    add_client(folder, "bad.yaml", "BAD", "Ana")
    return folder


def spoilt(studio, data, told, path="clients/bad.yaml", status=2):
    """Write `data`, make everything, and look at what is told."""
    (studio / path).parent.mkdir(exist_ok=True)
    (studio / path).write_bytes(data if isinstance(data, bytes) else data.encode("utf-8"))
    result = handouts("make", "--studio", studio, "--as", "screen", "--jobs", "1")
    calm(result)
    assert result.returncode == status, result.stderr
    assert re.search(told, result.stderr), result.stderr
    assert all(line.isprintable() for line in result.stderr.split("\n"))
    assert (studio / "out" / "C4").is_dir()
    return result


@pytest.mark.parametrize(
    ("data", "told"),
    [
        (LAUGHS, r"clients/bad\.yaml:1: '&a' names this place"),
        ("a: " + "[" * 100_000, r"clients/bad\.yaml:1: blocks are nested more than 20 deep"),
        ("".join(f"{' ' * n}a:\n" for n in range(600)), r"clients/bad\.yaml:\d+: blocks are nested more than 20 deep"),
        ("a: {" * 5_000, r"clients/bad\.yaml:1: blocks are nested more than 20 deep"),
        ("a: x\n" * 60_000, r"clients/bad\.yaml: the file is larger than 200 kilobytes"),
        ("[" + "1," * 90_000 + "]", r"clients/bad\.yaml:1: the file has more than 50,000 keys and values"),
        (b"x" * 50_000_000, r"clients/bad\.yaml: the file is larger than 200 kilobytes"),
        (b"code: BAD\nname: A\0na\n", r"clients/bad\.yaml:2: the file holds zero bytes"),
        (b"code: BAD\nname: A\xff\xfe\xfana\n", r"clients/bad\.yaml:2: the file is not UTF-8 text"),
        (b"code: BAD\nname: \xed\xa0\x80\n", r"clients/bad\.yaml:2: the file is not UTF-8 text"),  # half a surrogate pair
        ("code: BAD\n".encode("utf-16"), r"clients/bad\.yaml: the file is saved as UTF-16"),
        ("code: !!python/object/apply:os.system ['touch owned']\n", r"clients/bad\.yaml:1: the tag .* is not read here"),
        ("<<: {code: BAD}\n", r"clients/bad\.yaml:1: '<<' takes in another block"),
        ("code: BAD\ncode: BAD\n", r"clients/bad\.yaml:2: the key 'code' stands here a second time"),
        ("", r"clients/bad\.yaml: there is nothing in it"),
        ("---\na: b\n---\nc: d\n", r"clients/bad\.yaml:3: a second document begins here"),
    ],
)
def test_a_spoilt_client_file(studio, data, told):
    spoilt(studio, data, told)
    assert not (studio / "out" / "BAD").exists()


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ("Stand tall. <script>alert(1)</script>", "HTML cannot be said"),
        ('<img src="file:///etc/passwd">', "HTML cannot be said"),
        ("![the pose](file:///etc/passwd)", "a picture cannot be read"),
        ("![the pose](http://127.0.0.1/x.png)", "a picture cannot be read"),
        ("Read [this](javascript:alert(1)) first.", "a link leads nowhere"),
        ("Read file:///etc/passwd first.", "a link leads nowhere"),
        ("Read http://127.0.0.1:9/ first.", "a link leads nowhere"),
        ("<svg onload=alert(1)><script>x</script></svg>", "HTML cannot be said"),
        ("<style>@import url(http://127.0.0.1/)</style>", "HTML cannot be said"),
        ("&lt;b&gt; bold", "a sign is written as HTML code"),
        ("`code`", "text set as code"),
        ("> quoted", "a quotation"),
        ("<!--[if IE]> x", "HTML cannot be said"),
    ],
)
def test_markdown_that_no_sheet_may_carry(studio, words, told):
    text = (
        "---\ntitle: Squat\npositions: [standing]\nsides: together\nregions: [legs]\n---\n"
        + "".join(
            f"\n## {part}\n\n{words if part == 'Movement' else '- **Name.** Stand.' if part in ('Easier', 'Harder') else 'Stand.'}\n"
            for part in ("Equipment", "Start position", "Movement", "Breathing", "Count", "Key points", "Easier", "Harder", "Finish")
        )
    )  # fmt: skip
    # An exercise that nobody's plan names: the fault is told, and every sheet is made.
    spoilt(studio, text, rf"exercise_texts/own\.md:\d+: {told}", "exercise_texts/own.md", status=1)


def test_a_template_in_a_text_stays_words(tmp_path):
    studio = lay_out(tmp_path / "studio", "C1")
    source = (handouts_texts() / "goblet-squat.md").read_text("utf-8")
    (studio / "exercise_texts").mkdir(exist_ok=True)
    injected = source.replace("## Movement\n\n1. ", "## Movement\n\n1. {{ 7+7 }} {% for x in handout %} ${7+7} #{7+7} ", 1)
    assert injected != source
    (studio / "exercise_texts" / "goblet-squat.md").write_text(injected, "utf-8")
    result = handouts("make", "C1", "--studio", studio, "--as", "screen")
    calm(result)
    sheet = next((studio / "out" / "C1").rglob("*-sheet.html")).read_text("utf-8")
    assert "{{ 7+7 }} {% for x in handout %} ${7+7} #{7+7}" in sheet


def handouts_texts():
    from handouts import carried

    return carried.starter_texts()


def test_a_template_of_the_studio_cannot_leave_its_sandbox(studio):
    (studio / "templates").mkdir(exist_ok=True)
    for words in (
        "{{ ''.__class__.__mro__[1].__subclasses__() }}",
        "{{ cycler.__init__.__globals__.os.system('touch owned') }}",
        "{% include '/etc/passwd' %}",
        "{% include '../studio.yaml' %}",
        "{{ words.__class__.__init__.__globals__ }}",
    ):
        (studio / "templates" / "screen.html.j2").write_text(words, "utf-8")
        result = handouts("make", "C4", "--studio", studio, "--as", "screen", "--afresh")
        calm(result)
        assert result.returncode == 2 and re.search("template|screen\\.html\\.j2", result.stderr), (words, result.stderr)
        assert "root:" not in result.stderr
        assert not list((studio / "out").rglob("*.html"))


@pytest.mark.parametrize("data", [b"x" * 50_000_000, b"date\0", b"\xff\xfe\xff", b'"' * 99_999, b"date;plan\n", b"\n" * 999])
def test_a_spoilt_log_stops_its_client_alone(studio, data):
    spoilt(studio, data, r"logs/BAD\.csv(:\d+)?: ", "logs/BAD.csv")
    assert not (studio / "out" / "BAD").exists()


@pytest.mark.parametrize("data", [b"\xff\xfe\xfa", b"a\0b", b"x" * 50_000_000, b"", b"[handouts log 99]\n[end of log]\n", b"date,exercise\n\"\n"])
def test_a_spoilt_file_that_a_client_sent(studio, tmp_path, data):
    sent = tmp_path / "sent.csv"
    sent.write_bytes(data)
    before = everything(studio)
    result = handouts("log", "C4", "--from", sent, "--later", "--studio", studio)
    calm(result)
    assert result.returncode == 2 and str(sent) in result.stderr, result.stderr
    assert everything(studio) == before


@pytest.mark.parametrize("data", [b"\xff\xfe\xfa", b"a\0b", b"[" * 100_000, b"\xed\xa0\x80"])
def test_a_spoilt_text_is_checked_or_refused(tmp_path, data):
    path = tmp_path / "own.md"
    path.write_bytes(data)
    result = handouts("check", path)
    calm(result)
    assert result.returncode in (0, 1, 2)


def test_a_studio_file_that_cannot_be_read_is_told(studio):
    for data in (b"\xff\xfe\xfa", b"", LAUGHS.encode(), b"format: 1\n", b"[]"):
        (studio / "studio.yaml").write_bytes(data)
        for words in (("make",), ("proof", "C4"), ("log", "C4", "--text", "x", "--later"), ("share", "C4", "--to", studio.parent / "to")):
            result = handouts(*words, "--studio", studio)
            calm(result)
            assert result.returncode == 2 and "studio.yaml" in result.stderr, (words, data, result.stderr)


# --- links -------------------------------------------------------------------------


def test_a_file_that_is_a_link_out_of_the_studio(studio, tmp_path):
    secret = tmp_path / "secret"
    secret.write_text("code: SECRET\nname: hidden words\n", "utf-8")
    (studio / "clients" / "bad.yaml").unlink()
    (studio / "clients" / "bad.yaml").symlink_to(secret)
    result = handouts("make", "--studio", studio, "--as", "screen", "--jobs", "1")
    calm(result)
    assert "clients/bad.yaml: this is a link that leads out of the studio; put the file itself here" in result.stderr
    assert "hidden words" not in result.stderr and "SECRET" not in result.stderr


@pytest.mark.parametrize("name", ["clients", "plans", "logs", "exercise_texts", "templates", "questions", "out", "studio.yaml"])
def test_a_folder_that_is_a_link_out_of_the_studio(studio, tmp_path, name):
    outside = tmp_path / "outside"
    if (studio / name).exists():
        (studio / name).rename(outside)
    else:
        outside.mkdir()
    (studio / name).symlink_to(outside)
    before = everything(tmp_path)
    for words in (("make",), ("proof", "C4"), ("log", "C4", "--text", "x", "--later"), ("questions",), ("share", "C4", "--to", tmp_path / "to")):
        result = handouts(*words, "--studio", studio)
        calm(result)
        assert result.returncode == 2, (words, result.stdout)
        assert f"{name}: this is a link that leads out of the studio" in result.stderr
    assert everything(tmp_path) == before


def test_a_link_within_the_studio_is_fine(studio):
    (studio / "clients" / "bad.yaml").unlink()
    (studio / "kept").mkdir()
    (studio / "clients").rename(studio / "kept" / "clients")
    (studio / "clients").symlink_to(studio / "kept" / "clients")
    result = handouts("make", "--studio", studio, "--as", "screen", "--jobs", "1")
    assert result.returncode in (0, 1), result.stderr


def test_a_template_that_is_a_link_is_not_followed(studio, tmp_path):
    secret = tmp_path / "secret"
    secret.write_text("hidden words", "utf-8")
    (studio / "templates").mkdir(exist_ok=True)
    (studio / "templates" / "screen.html.j2").symlink_to(secret)
    result = handouts("make", "C4", "--studio", studio, "--as", "screen")
    calm(result)
    assert result.returncode == 2 and "templates/screen.html.j2: this is a link that leads out of the studio" in result.stderr
    assert "hidden words" not in result.stderr


def test_a_clients_folder_that_is_a_link_is_not_written_through(studio, tmp_path):
    outside = tmp_path / "outside"
    outside.mkdir()
    (studio / "out").mkdir(exist_ok=True)
    (studio / "out" / "C4").symlink_to(outside)
    result = handouts("make", "--studio", studio, "--as", "screen", "--jobs", "1")
    calm(result)
    assert result.returncode == 2 and "is a link that leads elsewhere" in result.stderr
    assert not list(outside.rglob("*"))
    assert list((studio / "out").glob("BAD/**/*-sheet.html"))


def test_a_link_at_the_place_of_a_sheet_or_a_log_is_replaced_not_followed(studio, tmp_path):
    victim = tmp_path / "victim"
    victim.write_text("mine", "utf-8")
    handouts("make", "C4", "--studio", studio, "--as", "screen")
    sheet = next((studio / "out" / "C4").rglob("*-sheet.html"))
    sheet.unlink()
    sheet.symlink_to(victim)
    handouts("make", "C4", "--studio", studio, "--as", "screen", "--afresh")
    assert not sheet.is_symlink() and victim.read_text("utf-8") == "mine"


def test_devices_and_pipes_do_not_hang(studio):
    os.mkfifo(studio / "clients" / "pipe.yaml")
    os.mkfifo(studio / "logs" / "C4.csv") if not (studio / "logs" / "C4.csv").exists() else None
    result = handouts("make", "--studio", studio, "--as", "screen", "--jobs", "1")
    calm(result)
    assert "clients/pipe.yaml: this is not an ordinary file" in result.stderr


# --- where to put it -------------------------------------------------------------------


@pytest.mark.parametrize("out", ["/dev/null", "/dev/null/x", "/proc/none", "studio.yaml"])
def test_an_out_folder_that_cannot_be(studio, out):
    result = handouts("make", "--studio", studio, "--out", studio / out if out == "studio.yaml" else out)
    calm(result)
    assert result.returncode == 2 and "not written" in result.stderr and "name another folder with --out" in result.stderr


def test_start_in_an_impossible_place(tmp_path):
    (tmp_path / "file").write_text("x")
    for place in (tmp_path / "file" / "studio", "/proc/studio", tmp_path / ("x" * 300)):
        result = handouts("start", place)
        calm(result)
        assert result.returncode == 2 and "not written: " in result.stderr and "run this again" in result.stderr


def test_an_impossible_day_is_told(studio):
    for moment in ("soon", "99999999999999999999", "-99999999999", "1e9"):
        result = handouts("make", "--studio", studio, SOURCE_DATE_EPOCH=moment)
        calm(result)
        assert result.returncode == 2 and "SOURCE_DATE_EPOCH" in result.stderr


def test_a_reader_that_has_enough_ends_the_run_in_silence(studio):
    # The pipe is closed before the first line: what `handouts make | true` does.
    reader, writer = os.pipe()
    os.close(reader)
    words = [sys.executable, "-m", "handouts", "make", "C4", "--studio", str(studio), "--as", "screen"]
    ended = subprocess.run(words, stdout=writer, stderr=subprocess.PIPE, text=True, cwd=ROOT)
    os.close(writer)
    assert "Traceback" not in ended.stderr and "Broken pipe" not in ended.stderr


def test_an_impossible_cluster_is_told(studio):
    result = handouts("make", "--studio", studio, "--cluster", "nowhere")
    calm(result)
    assert result.returncode == 2 and "'nowhere' is not the address of a scheduler" in result.stderr


def test_a_package_of_a_book_holds_no_scripts(studio):
    """What is made opens nothing by itself: no event handler and no address to load from."""
    add_client(studio, "bad.yaml", "BAD", "<svg onload=alert(1)>")
    result = handouts("make", "BAD", "--studio", studio, "--as", "screen,braille", "--jobs", "1")
    calm(result)
    sheets = [path for path in (studio / "out").rglob("*") if path.suffix in (".html", ".ebrl", ".epub")]
    assert sheets
    for path in sheets:
        texts = (
            [path.read_text("utf-8")]
            if path.suffix == ".html"
            else [zipfile.ZipFile(path).read(name).decode("utf-8", "replace") for name in zipfile.ZipFile(path).namelist()]
        )
        for text in texts:
            assert not re.search(r"<[a-z]+[^>]*\s(?:onload|onerror)=", text)
            assert not re.search(r"<(?:script|img|link|iframe)[^>]*\s(?:src|href)=[\"']?(?:https?:|file:|//)", text)
