"""What goes out says nothing of health or of the machine it was made on."""

import getpass
import shutil
import socket

import pytest
from click.testing import CliRunner

from handouts import carried
from handouts.cli import main
from handouts.making.share import describes_itself


def run(*words):
    return CliRunner().invoke(main, [str(word) for word in words])


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    studio = tmp_path_factory.mktemp("share") / "studio"
    shutil.copytree(carried.demo_studio(), studio)
    assert run("make", "C1", "C4", "--studio", studio).exit_code in (0, 1)
    return studio


def test_the_finished_sheets_go_out_and_nothing_else(made, tmp_path):
    result = run("share", "C4", "--studio", made, "--to", tmp_path / "give")
    assert result.exit_code == 0, result.stderr
    copied = {path.name for path in (tmp_path / "give").iterdir()}
    assert copied == {path.name for path in (made / "out" / "C4" / "P2-v1").iterdir() if not path.name.startswith(".")}
    for name in copied:
        assert (tmp_path / "give" / name).read_bytes() == (made / "out" / "C4" / "P2-v1" / name).read_bytes()


def test_metadata_names_neither_health_nor_machine(made):
    files = [path for path in (made / "out").rglob("C*-*") if path.is_file()]
    assert {path.suffix for path in files} >= {".pdf", ".html", ".brf"}
    for path in files:
        told = describes_itself(path.name, path.read_bytes()).lower()
        if path.suffix in (".pdf", ".html"):
            assert "noor" in told or "mateus" in told, "the title should be there to read"
        for word in (getpass.getuser(), socket.gethostname(), "glaucoma", str(made), "/home", "/root"):
            assert word.lower() not in told, (path.name, word)


def test_a_title_that_names_a_condition_does_not_go_out(made, tmp_path):
    plan = made / "plans" / "P1-v1.yaml"
    before = plan.read_text("utf-8")
    plan.write_text(before.replace("en: Whole-body circuit", "en: Glaucoma circuit"), "utf-8")
    try:
        run("make", "C1", "--studio", made)
        result = run("share", "C1", "--studio", made, "--to", tmp_path / "give")
    finally:
        plan.write_text(before, "utf-8")
    assert result.exit_code == 2 and "a condition of health" in result.stderr
    assert not (tmp_path / "give").exists()


def test_no_sheets_no_client_and_no_place_inside_are_told(made, tmp_path):
    result = run("share", "C6", "--studio", made, "--to", tmp_path / "give")
    assert result.exit_code == 2 and "handouts make C6" in result.stderr
    result = run("share", "C44", "--studio", made, "--to", tmp_path / "give")
    assert result.exit_code == 2 and "did you mean" in result.stderr
    result = run("share", "C4", "--studio", made, "--to", made / "give")
    assert result.exit_code == 2 and "inside the studio" in result.stderr
