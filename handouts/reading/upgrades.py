"""Studio folders of older formats, brought to today's.

studio.yaml says in its line `format` how a studio's files are written.  When a
release writes files in another way, the format goes up by one and a Step is
added here.  The files of a studio are data to a step: it neither reads nor
writes, so that nothing is half done when it goes wrong.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from handouts.errors import Fault, StudioFaults
from handouts.reading.folder import STUDIO_FILE

Files = Mapping[str, str]
"""Path within the studio, such as "clients/C1.yaml", to the text of the file."""


@dataclass(frozen=True)
class Step:
    """The way from one format to the next.

    to: the format that it leads to, one more than before.
    change: all text files of a studio as they are, to those that come out
        otherwise.  A file that is not among them stays as it is.  The line
        `format` of studio.yaml is not its business.
        Raises StudioFaults where a file cannot be understood.
    """

    to: int
    change: Callable[[Files], Files]


STEPS: tuple[Step, ...] = ()
"""All steps, the oldest first.  Format 1 is the first that there is."""


def newest(steps: Sequence[Step] = STEPS) -> int:
    """The format that this program reads."""
    return steps[-1].to if steps else 1


def format_of(studio_file: str) -> tuple[int, int]:
    """The format that the text of a studio.yaml names, and the line; 0 for both
    where it names none that can be read, which is a fault for the reader."""
    plain = re.search(r"^format: ([0-9]{1,4})$", studio_file, re.MULTILINE)
    if plain:  # as every studio has it, and quick
        return int(plain[1]), studio_file.count("\n", 0, plain.start()) + 1
    from handouts.reading.yaml_text import read_yaml

    try:
        document = read_yaml(studio_file, STUDIO_FILE)
    except StudioFaults:
        return 0, 0
    told = document.data.get("format", "1")
    if not (isinstance(told, str) and told.isascii() and told.isdigit() and len(told) <= 4):
        return 0, 0
    return int(told), document.line(("format",))


def refuse_newer(studio_file: str, steps: Sequence[Step] = STEPS) -> None:
    """Raises StudioFaults for a studio that a later release has written."""
    found, line = format_of(studio_file)
    if found > newest(steps):
        wrong = f"this studio has format {found}, and this program reads formats up to {newest(steps)}"
        instead = "bring the program up to date; nothing in the studio was changed"
        raise StudioFaults((Fault(STUDIO_FILE, line, wrong, instead),))


def upgraded(files: Files, steps: Sequence[Step] = STEPS) -> dict[str, str]:
    """The files that come out otherwise in today's format; {} when none is needed.

    Raises StudioFaults for a studio of a later format.
    """
    refuse_newer(files[STUDIO_FILE], steps)
    found, _ = format_of(files[STUDIO_FILE])
    ahead = [step for step in steps if 0 < found < step.to]
    if not ahead:
        return {}
    now = dict(files)
    for step in ahead:
        now.update(step.change(dict(now)))
    now[STUDIO_FILE] = _with_format(now[STUDIO_FILE], ahead[-1].to)
    return {path: text for path, text in now.items() if files.get(path) != text}


def _with_format(studio_file: str, number: int) -> str:
    """The same text with another format; all else, comments too, stays."""
    from handouts.reading.yaml_text import read_yaml

    document = read_yaml(studio_file, STUDIO_FILE)
    if "format" not in document.data:
        return f"format: {number}\n{studio_file}"
    lines = studio_file.split("\n")
    at = document.line(("format",), of_key=True) - 1
    lines[at] = lines[at].replace(document.data["format"], str(number), 1)
    return "\n".join(lines)
