"""Studios that a test may spoil, and the real commands run on them."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

from handouts import carried

ROOT = Path(__file__).resolve().parents[2]


def lay_out(folder: Path, *clients: str) -> Path:
    """A copy of the demo studio with these clients alone."""
    shutil.copytree(carried.demo_studio(), folder)
    for kind in ("clients", "logs"):
        for path in (folder / kind).iterdir():
            if path.stem not in clients:
                path.unlink()
    return folder


def add_client(folder: Path, file: str, code: str, name: str, like: str = "C4") -> None:
    """A client of the demo with another code and name."""
    text = (carried.demo_studio() / "clients" / f"{like}.yaml").read_text("utf-8")
    lines = [
        f"{line.partition(':')[0]}: {json.dumps({'code': code, 'name': name}[line.partition(':')[0]], ensure_ascii=False)}"
        if line.startswith(("code:", "name:"))
        else line
        for line in text.split("\n")
    ]
    (folder / "clients" / file).write_text("\n".join(lines), "utf-8")


def handouts(*words: object, say: str = "", before: Callable[[], None] | None = None, **environment: str):
    """`handouts ...` in a process of its own, as a person runs it."""
    return subprocess.run(
        [sys.executable, "-m", "handouts", *map(str, words)],
        input=say,
        capture_output=True,
        text=True,
        cwd=ROOT,
        env={**os.environ, **environment},
        preexec_fn=before,
    )


def calm(result) -> None:
    """No traceback, and no message that only says a number of an error."""
    assert "Traceback" not in result.stderr + result.stdout, result.stderr
    assert "[Errno" not in result.stderr + result.stdout, result.stderr


def everything(folder: Path) -> dict[str, bytes]:
    """All files below a folder, links not followed."""
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}
