"""What checking loads: nothing that draws, translates to braille or models a studio."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
HEAVY = (
    "weasyprint",
    "pydantic",
    "louis",
    "jinja2",
    "markdown",
    "yaml",
    "pikepdf",
    "fontTools",
    "cffi",
    "pygls",
    "lsprotocol",
    "handouts.models",
)


def loaded_after(program: str, folder: Path) -> set[str]:
    """The modules that a program of its own has loaded at its end."""
    program = f"import sys\ntry:\n    {program}\nexcept SystemExit:\n    pass\nprint('\\n'.join(sys.modules), file=sys.__stderr__)"
    run = subprocess.run(
        [sys.executable, "-c", program],
        cwd=folder,
        capture_output=True,
        text=True,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
        check=True,
    )
    return set(run.stderr.split())


def heavy(modules: set[str]) -> list[str]:
    return sorted(name for name in HEAVY if name in modules)


@pytest.mark.parametrize("report", ["text", "json", "sarif"])
def test_checking_an_exercise_text_loads_nothing_heavy(report):
    text = ROOT / "exercise_texts" / "one-arm-supported-row.md"
    assert "sides: each" in text.read_text("utf-8")  # so that the mirror is used as well
    program = f"sys.argv = ['handouts', 'check', '--report', '{report}', {str(text)!r}]; from handouts.cli import main; main()"
    modules = loaded_after(program, ROOT)
    assert "handouts.wording.checking" in modules and "handouts.mirror" in modules
    assert heavy(modules) == []


def test_checking_a_text_without_front_matter_loads_no_yaml(tmp_path):
    (tmp_path / "text.md").write_text("Sit tall.\n", "utf-8")
    program = "sys.argv = ['handouts', 'check', 'text.md']; from handouts.cli import main; main()"
    assert "yaml" not in loaded_after(program, tmp_path)


@pytest.mark.parametrize(
    "text, needed",
    [
        # numpy takes longer to load than a short text to check: only for a sentence that may have a fault.
        ("Breathe out and press both feet into the floor.", set()),
        # onnxruntime as long again: only where a fault is a little likely.
        ("This is the last set.", {"numpy"}),
        ("Hold it like this.", {"numpy", "onnxruntime"}),
    ],
)
def test_the_checker_alone_needs_the_standard_library_and_more_only_for_what_may_be_a_fault(text, needed, tmp_path):
    modules = loaded_after(f"from handouts.wording import check_text; check_text({text!r})", tmp_path)
    foreign = {name.partition(".")[0] for name in modules} - set(sys.stdlib_module_names) - {"handouts", "__main__"}
    assert {name for name in foreign if not name.startswith(("_", "sitecustomize", "usercustomize"))} == needed


def test_explaining_loads_nothing_heavy(tmp_path):
    program = "sys.argv = ['handouts', 'check', '--explain', 'pointing']; from handouts.cli import main; main()"
    assert heavy(loaded_after(program, tmp_path)) == []
