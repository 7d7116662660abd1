"""Comments of an author's, `<!-- ... -->`: notes that no sheet carries."""

from __future__ import annotations

from collections.abc import Iterator


def without_comments(lines: list[str], first_line: int) -> Iterator[tuple[int, str]]:
    """The lines without comments, each with its number in the file.

    first_line: the number of the first of the lines.  A line that held
    nothing but a comment falls away, so that it parts no list and no
    paragraph.  A comment that is opened and never closed stays as it is.
    """
    open_before = False
    closings = [number for number, line in enumerate(lines) if "-->" in line]
    last_closing = closings[-1] if closings else -1
    for number, line in enumerate(lines):
        kept, commented, at = "", open_before, 0
        while True:
            if open_before:
                end = line.find("-->", at)
                if end < 0:
                    break
                at, open_before = end + 3, False
                if not kept:
                    at = len(line) - len(line[at:].lstrip(" \t"))
            start = line.find("<!--", at)
            if start < 0 or (line.find("-->", start + 4) < 0 and number >= last_closing):
                kept += line[at:]
                break
            kept = (kept + line[at:start]).rstrip(" \t")
            at, open_before, commented = start + 4, True, True
        if kept.strip() or not commented:
            yield first_line + number, kept
