"""Imports run one way, and light parts stay light."""

import ast
import subprocess
import sys
from pathlib import Path

import pytest

PACKAGE = Path(__file__).resolve().parents[2] / "handouts"

# A room may import from its own row and from the rows below it.
ROWS = [
    {"__main__"},
    {"cli"},
    {"logbook", "progress"},
    {"making"},
    {"forms"},
    {"braille"},
    {"fitting"},
    {"coaching"},
    {"wording"},
    {"reading"},
    {"languages"},
    {"handout"},
    {"models"},
    {"amounts", "mirror"},
    {"errors", "carried"},
]
RANK = {room: number for number, row in enumerate(ROWS) for room in row}


def rooms_imported(path):
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        names = []
        if isinstance(node, ast.ImportFrom) and node.module and node.level == 0:
            names = [node.module] if node.module != "handouts" else [f"handouts.{alias.name}" for alias in node.names]
        elif isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        for name in names:
            parts = name.split(".")
            if parts[0] == "handouts" and len(parts) > 1 and parts[1] != "__version__":
                yield parts[1]


MODULES = sorted(path for path in PACKAGE.rglob("*.py") if path != PACKAGE / "__init__.py")


@pytest.mark.parametrize("path", MODULES, ids=lambda path: str(path.relative_to(PACKAGE)))
def test_imports_run_downwards(path):
    room = path.relative_to(PACKAGE).parts[0].removesuffix(".py")
    assert room in RANK, f"{room} has no row; give it one here and in DEVELOPERS.md"
    for other in rooms_imported(path):
        assert RANK[other] > RANK[room] or other == room, f"{room} must not import {other}"


def test_the_checker_imports_nothing_of_the_forms_or_models():
    for path in (PACKAGE / "wording").rglob("*.py"):
        assert not set(rooms_imported(path)) & {"forms", "braille", "fitting", "models", "making"}, path


def loaded_after(code):
    script = f"import sys\n{code}\nprint('\\n'.join(sorted(sys.modules)))"
    out = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    return set(out.stdout.split())


@pytest.mark.parametrize(
    "code",
    [
        "import handouts.wording; handouts.wording.check_text('Hold it like this.')",
        "from click.testing import CliRunner; from handouts.cli import main; CliRunner().invoke(main, ['--help'])",
        "import handouts.braille",
    ],
)
def test_light_parts_load_no_heavy_library(code):
    heavy = {"weasyprint", "pydantic", "louis", "jinja2", "pikepdf", "markdown"}
    assert not loaded_after(code) & heavy
