"""Clients may be called anything: the file names are safe, the real name stands on the sheet."""

from __future__ import annotations

import html
import re
import unicodedata

import pikepdf
import pytest

from tests.hostile.studios import add_client, calm, everything, handouts, lay_out

NAMES = (
    "../../etc/passwd", "CON", "a/b", "a\\b", "Zoë", "zoë", "ZOE\u0308", "x" * 300, "نور", "💪 Ana", "..", ".", "-rf",
    "$(id)", "{{ 7*7 }}", "{% include 'studio.yaml' %}", "<script>alert(1)</script>", "<img src=x onerror=y>",
    "file:///etc/passwd", "null", "%s%n", "a: b", '"; rm', "C:\\x", "&lt;b&gt;", "O'Brien & Söhne",
)  # fmt: skip


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    place = tmp_path_factory.mktemp("names")
    folder = lay_out(place / "studio", "C4")
    for number, name in enumerate(NAMES):
        code = name[:40] if name not in ("zoë", "ZOE\u0308") else f"N{number}"
        add_client(folder, f"n{number}.yaml", code, name)
    before = everything(place)
    result = handouts("make", "--studio", folder, "--as", "screen", "--jobs", "1")
    return place, folder, before, result


def test_every_client_gets_a_folder_of_its_own_with_a_plain_name(made):
    _, folder, _, result = made
    calm(result)
    assert result.returncode in (0, 1), result.stderr
    folders = [path.name for path in (folder / "out").iterdir()]
    assert len(folders) == len(NAMES) + 1 == len({name.casefold() for name in folders})
    assert all(re.fullmatch("[A-Za-z0-9-]{1,60}", name) and not name.startswith("-") for name in folders)
    # Microsoft, "Naming Files, Paths, and Namespaces": CON is a device.
    assert "con" not in {name.casefold() for name in folders}


def test_nothing_else_is_touched(made):
    place, _, before, _ = made
    after = everything(place)
    assert {path: data for path, data in after.items() if not path.startswith("studio/out/")} == before


def test_the_real_name_stands_on_the_sheet_as_words(made):
    _, folder, _, _ = made
    sheets = [path.read_text("utf-8") for path in sorted((folder / "out").rglob("*-sheet.html"))]
    for name in NAMES:
        assert any(html.escape(name, quote=False) in sheet.replace("&#39;", "'").replace("&#34;", '"') for sheet in sheets), name
    assert not any("<script>alert" in sheet or "<img src=x" in sheet for sheet in sheets)
    # A template in a name is never filled.
    assert not any(re.search(r"<title>[^<]*\b49\b", sheet) for sheet in sheets)


def test_codes_that_differ_only_in_case_or_accent_form_are_told(tmp_path):
    folder = lay_out(tmp_path / "studio", "C4")
    for number, code in enumerate(("Zoë", "zoë", unicodedata.normalize("NFD", "Zoë"))):
        add_client(folder, f"z{number}.yaml", code, f"Zoë {number}")
    result = handouts("make", "--studio", folder, "--as", "screen")
    calm(result)
    assert result.returncode == 2
    for number in range(3):
        assert re.search(rf"clients/z{number}\.yaml:\d+: the client's code '.*' is that of clients/z\d\.yaml too", result.stderr)
    assert [path.name for path in (folder / "out").iterdir()] == ["C4"]


def test_a_code_that_is_too_long_is_told(tmp_path):
    folder = lay_out(tmp_path / "studio", "C4")
    add_client(folder, "long.yaml", "x" * 300, "Ana")
    result = handouts("make", "--studio", folder, "--as", "screen")
    calm(result)
    assert result.returncode == 2 and "300 characters long; write a code of at most 40" in result.stderr
    assert (folder / "out" / "C4").is_dir()


@pytest.mark.parametrize("name", ["x" * 300, "نور", "💪 Ana", "<b>&amp;", "{{ 7*7 }}"])
def test_print_bears_any_name(tmp_path, name):
    folder = lay_out(tmp_path / "studio")
    add_client(folder, "n.yaml", "N1", name, like="C6")
    result = handouts("make", "--studio", folder, "--as", "print")
    calm(result)
    if result.returncode == 2:  # whether a font has the sign is the machine's affair
        assert re.search(r"no font on this machine has the sign '.' \(U\+[0-9A-F]+\); install a font", result.stderr)
        assert not list((folder / "out").rglob("*.pdf"))
        return
    with pikepdf.open(next((folder / "out").rglob("*-sheet.pdf"))) as pdf:
        assert name in str(pdf.docinfo["/Title"])


def test_braille_says_which_character_of_a_name_it_cannot_write(tmp_path):
    folder = lay_out(tmp_path / "studio", "C2")
    add_client(folder, "n.yaml", "N1", "💪 Ana", like="C3")
    result = handouts("make", "--studio", folder)
    calm(result)
    assert re.search(r"N1 braille sheet: not made; .*U\+1F4AA|N1 braille sheet: not made; .*FLEXED BICEPS", result.stderr, re.I), result.stderr
    assert list((folder / "out" / "C2").rglob("*.brf"))


@pytest.mark.parametrize("code", ["../../etc/passwd", "a/b", "..", "a\\b", "C:x"])
def test_a_log_is_never_written_outside(tmp_path, code):
    folder = lay_out(tmp_path / "studio", "C4")
    add_client(folder, "n.yaml", code, "Ana")
    before = everything(tmp_path)
    for words in (
        ("log", code, "--text", "goblet squat 10 kg 12", "--later"),
        ("log", code, "--list"),
        ("log", code, "--answer", "2", "rest"),
        ("questions", code, "--answered", "1", "x"),
    ):
        result = handouts(*words, "--studio", folder)
        calm(result)
        assert result.returncode == 2, (words, result.stdout)
    assert everything(tmp_path) == before


@pytest.mark.parametrize("plan", ["../../../P2", "CON", "a/b", "{{ 7*7 }}", "<b>", "نور"])
def test_a_plan_code_never_leads_out(tmp_path, plan):
    folder = lay_out(tmp_path / "studio", "C4")
    for path in (folder / "plans").glob("P2-*.yaml"):
        path.write_text(path.read_text("utf-8").replace("plan: P2", f"plan: '{plan}'"), "utf-8")
    client = folder / "clients" / "C4.yaml"
    client.write_text(client.read_text("utf-8").replace("plan: P2", f"plan: '{plan}'"), "utf-8")
    (folder / "logs" / "C4.csv").unlink(missing_ok=True)
    before = everything(tmp_path)
    result = handouts("make", "--studio", folder, "--as", "screen")
    calm(result)
    after = everything(tmp_path)
    assert {path for path in after if path not in before} == {
        path for path in after if path.startswith("studio/out/C4/")
    }
    if result.returncode != 2:
        sheet = next((folder / "out" / "C4").rglob("*-sheet.html")).read_text("utf-8")
        assert html.escape(plan) in sheet.replace("&#39;", "'")
