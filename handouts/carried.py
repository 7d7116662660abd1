"""Where the things lie that travel with the program: texts, templates, demo.

In a checkout `templates/` and `exercise_texts/` stand beside the package; in
an installed wheel they lie inside it.
"""

from __future__ import annotations

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent


def _carried(name: str) -> Path:
    inside = _PACKAGE / name
    return inside if inside.is_dir() else _PACKAGE.parent / name


def starter_texts() -> Path:
    """The folder of the starter library, one Markdown file an exercise."""
    return _carried("exercise_texts")


def templates() -> Path:
    """The folder of the program's own templates and style sheets."""
    return _carried("templates")


def demo_studio() -> Path:
    """The invented studio that the first run makes hand-outs for."""
    return _PACKAGE / "demo"


def starter_studio() -> Path:
    """What `handouts start` lays out."""
    return _PACKAGE / "starter_studio"
