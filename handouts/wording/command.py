"""What `handouts check` does: findings to standard output, faults and the summary to standard error."""

from __future__ import annotations

import os
import sys
from pathlib import Path


def check(paths: tuple[str, ...], studio: Path | None, language: str, report: str) -> int:
    """Check and report; the exit status.

    paths: as the user named them; none for the studio's exercise texts, or the
    working folder when there is no studio.  report: text, json or sarif.
    """
    from handouts.wording.checking import check_all

    standard_input = sys.stdin.buffer.read() if "-" in paths else b""
    checked = check_all(paths or (_default_folder(studio),), standard_input, language)
    for fault in checked.faults:
        print(fault, file=sys.stderr)
    if report == "json":
        from handouts.wording.reports.json import report_json

        _write(report_json(checked) + "\n")
    elif report == "sarif":
        from handouts.wording.reports.sarif import report_sarif

        _write(report_sarif(checked) + "\n")
    else:
        from handouts.wording.reports.text import report_text, summary, too_long

        _write("".join(f"{line}\n" for line in report_text(checked, _wants_colour())))
        for line in too_long(checked):
            print(line, file=sys.stderr)
        print(summary(checked), file=sys.stderr)
    return checked.exit_status


def explain(name: str) -> int:
    """Print what a kind is; the exit status."""
    from handouts.wording.names import instead_of
    from handouts.wording.reports.explain import explain as explain_kind

    words = explain_kind(name)
    if words is None:
        print(f"--explain: there is no kind or check '{name}'; {instead_of(name)}", file=sys.stderr)
        return 2
    _write(words + "\n")
    return 0


def serve() -> int:
    """Talk to an editor until it says goodbye; the exit status."""
    try:
        from handouts.wording.server import serve as serve_editor
    except ModuleNotFoundError as missing:
        print(
            f"--serve: the package '{missing.name}' is not installed; install it with: pip install 'handouts[editor]'",
            file=sys.stderr,
        )
        return 2
    serve_editor()
    return 0


def _default_folder(studio: Path | None) -> str:
    """Where a trainer's texts lie: the studio's exercise_texts, else the working folder."""
    start = (studio or Path.cwd()).resolve()
    for folder in (start,) if studio else (start, *start.parents):
        texts = folder / "exercise_texts"
        if (folder / "studio.yaml").is_file() and texts.is_dir():
            return os.path.relpath(texts)
    return str(studio or ".")


def _write(text: str) -> None:
    """To standard output as UTF-8 wherever it goes, with the author's own words in it."""
    sys.stdout.flush()
    try:
        sys.stdout.buffer.write(text.encode("utf-8"))
        sys.stdout.buffer.flush()
    except BrokenPipeError:  # the reader, such as `head`, has enough
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _wants_colour() -> bool:
    """Colour on a terminal, unless NO_COLOR is set (no-color.org) or the terminal knows none."""
    return sys.stdout.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"
