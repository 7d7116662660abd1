"""What the project depends on, carries and is made of."""

import re
import shutil
import subprocess
import sys
import tomllib
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]


def names(requirements):
    # Python Packaging User Guide, "Names and normalization".
    return {re.sub(r"[-_.]+", "-", re.split(r"[^A-Za-z0-9_.-]", line.strip())[0]).lower() for line in requirements}


def locked(path):
    return dict(re.findall(r"^([a-z0-9_.-]+)(?:\[[^]]*\])?==([^ \\]+)", path.read_text("utf-8"), re.M))


def test_louis_never_comes_from_the_python_index():
    # The index's "louis" 1.3 of 2013 holds no code and has nothing to do with
    # liblouis; the real module comes with the system's liblouis.
    everything = names(PROJECT["dependencies"])
    for extra in PROJECT.get("optional-dependencies", {}).values():
        everything |= names(extra)
    assert "louis" not in everything
    assert "louis" not in locked(ROOT / "handouts/first_run.lock")
    assert "louis" not in locked(ROOT / "tests/requirements.lock")


def test_the_locks_pin_every_dependency_with_hashes():
    first_run = locked(ROOT / "handouts/first_run.lock")
    assert names(PROJECT["dependencies"]) <= first_run.keys()
    for lock in ("handouts/first_run.lock", "tests/requirements.lock"):
        text = (ROOT / lock).read_text("utf-8")
        assert "http" not in text
        blocks = re.split(r"^(?=[a-z0-9])", text, flags=re.M)[1:]
        assert all("--hash=sha256:" in block for block in blocks)


def test_both_locks_agree():
    first_run, tests = locked(ROOT / "handouts/first_run.lock"), locked(ROOT / "tests/requirements.lock")
    assert all(first_run[name] == tests[name] for name in first_run.keys() & tests.keys())


def test_the_wheel_declares_ranges():
    assert all(">=" in line and "==" not in line for line in PROJECT["dependencies"])


def test_weasyprint_is_new_enough_for_its_security_fixes():
    # WeasyPrint's changelog: 70.0 closes CVE-2026-55073, 69.0 CVE-2026-49452,
    # 68.0 CVE-2025-68616.
    assert "weasyprint>=70.0" in PROJECT["dependencies"]


@pytest.fixture(scope="module")
def wheel(tmp_path_factory):
    copy = tmp_path_factory.mktemp("source") / "project"
    kept = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True).stdout.split("\n")
    for name in filter(None, kept):
        if (ROOT / name).is_file():
            target = copy / name
            target.parent.mkdir(parents=True, exist_ok=True)
            shutil.copy(ROOT / name, target)
    made = tmp_path_factory.mktemp("wheel")
    subprocess.run([sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(made)], cwd=copy, check=True,
                   capture_output=True)
    return next(made.glob("*.whl"))


def test_the_wheel_carries_texts_templates_demo_and_phrases(wheel):
    inside = set(zipfile.ZipFile(wheel).namelist())
    for needed in (
        "handouts/exercise_texts/goblet-squat.md",
        "handouts/exercise_texts/goblet-squat.fr.md",
        "handouts/templates/print.html.j2",
        "handouts/demo/studio.yaml",
        "handouts/starter_studio/studio.yaml",
        "handouts/languages/fr.yaml",
    ):
        assert needed in inside, needed


def test_an_installed_wheel_makes_its_example(wheel, tmp_path):
    # Unpacked away from the checkout: what it needs must be inside.
    zipfile.ZipFile(wheel).extractall(tmp_path / "site")
    code = "import sys; sys.path.insert(0, sys.argv.pop(1)); from handouts.cli import main; main()"

    def run(*words):
        return subprocess.run([sys.executable, "-I", "-c", code, str(tmp_path / "site"), *words],
                              capture_output=True, text=True, cwd=tmp_path)

    started = run("start", "studio")
    assert started.returncode == 0, started.stderr
    made = run("make", "--studio", "studio", "--as", "screen")
    assert made.returncode in (0, 1) and "Traceback" not in made.stderr, made.stderr
    assert list((tmp_path / "studio" / "out").rglob("*-sheet.html"))


def test_the_top_level_is_as_agreed():
    kept = subprocess.run(["git", "ls-files"], cwd=ROOT, capture_output=True, text=True, check=True).stdout.split()
    tops = {name.split("/")[0] for name in kept}
    agreed = {"README.md", "DEVELOPERS.md", "LICENSE", "pyproject.toml", "handouts", "templates", "exercise_texts",
              "tests", "out"}
    assert {top for top in tops if not top.startswith(".")} == agreed
    assert [name for name in kept if name.startswith("out/")] == ["out/.gitkeep"]
