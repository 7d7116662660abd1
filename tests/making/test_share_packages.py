"""What an e-book and a braille file say about themselves is read before they go out."""

import io
import re
import shutil
import socket
import zipfile

import pytest
from click.testing import CliRunner

from handouts import carried
from handouts.cli import main
from handouts.making.share import describes_itself


@pytest.fixture
def studio(tmp_path):
    folder = tmp_path / "studio"
    shutil.copytree(carried.demo_studio(), folder)
    return folder


def run(*words):
    return CliRunner().invoke(main, [str(word) for word in words])


def braille_file(studio, kind):
    client = studio / "clients" / "C4.yaml"
    text = client.read_text("utf-8")
    assert text.count("  braille:\n") == 1
    text = re.sub(r"(?m)^    file: .*\n", "", text).replace("  braille:\n", f"  braille:\n    file: {kind}\n")
    client.write_text(text, "utf-8")


@pytest.mark.parametrize(("form", "kind", "ending"), [("epub", "", ".epub"), ("braille", "ebraille", ".ebrl"), ("braille", "pef", ".pef")])
def test_a_title_is_read_in_every_kind_of_file(studio, form, kind, ending, tmp_path):
    if kind:
        braille_file(studio, kind)
    made = run("make", "C4", "--studio", studio, "--as", form, "--jobs", "1")
    assert made.exit_code in (0, 1), made.stderr
    (sheet, *_) = sorted((studio / "out" / "C4").rglob(f"*{ending}"))
    told = describes_itself(sheet.name, sheet.read_bytes())
    title = re.search(r"en: (.*)", (studio / "plans" / "P2-v1.yaml").read_text("utf-8"))[1]
    assert title in told
    for word in (socket.gethostname(), str(tmp_path), "etinit", "glaucoma"):
        assert word.lower() not in told.lower()
    # A title that names a condition stays at home in this kind of file too.
    for plan in (studio / "plans").glob("P2-*.yaml"):
        plan.write_text(plan.read_text("utf-8").replace(f"en: {title}", "en: Glaucoma session"), "utf-8")
    run("make", "C4", "--studio", studio, "--as", form, "--jobs", "1")
    shared = run("share", "C4", "--studio", studio, "--to", tmp_path / "give")
    assert shared.exit_code == 2 and "a condition of health ('glaucoma')" in shared.stderr
    assert not (tmp_path / "give").exists()


def test_comments_and_hidden_words_are_read():
    page = b"<html><head><title>Sheet</title><meta name=author content=Ilse></head><body><!-- made on box-7 --><p>Squat</p></body></html>"
    assert set(describes_itself("a.html", page).split("\n")) == {"author", "Ilse", "Sheet", " made on box-7 "}
    package = io.BytesIO()
    with zipfile.ZipFile(package, "w") as book:
        book.comment = b"from box-7"
        book.writestr("a.opf", "<metadata><dc:title>Sheet</dc:title></metadata>")
        book.writestr("a.xhtml", page.decode())
    told = describes_itself("a.epub", package.getvalue())
    assert "from box-7" in told and "Sheet" in told and " made on box-7 " in told
    assert describes_itself("a.pef", b"<pef><head><meta><dc:title>Sheet</dc:title></meta></head></pef>").strip() == "Sheet"
    assert describes_itself("a.pef", b"<pef></pef>") == describes_itself("a.brf", b"x") == ""
