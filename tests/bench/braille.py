"""How fast braille is: layout and files beside liblouis's bare translation.

    python tests/bench/braille.py

Every figure is measured side by side in one run on one core, in processor
time, the best of several turns, so that other work on the machine counts
little.  The same words are translated three ways: by bare liblouis, one call a
line of the handout; with the mends of `preparation`; and as part of a whole
handout that is laid out and written.
"""

from __future__ import annotations

import argparse
import sys
import time
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
sys.path.insert(0, str(ROOT))

import table  # noqa: E402

from handouts.braille import brf, ebraille, liblouis, pef, unicode_text  # noqa: E402
from handouts.braille.codes import Code, find_code  # noqa: E402
from handouts.braille.flow import flow  # noqa: E402
from handouts.braille.layout import lay_out  # noqa: E402
from handouts.braille.pages import Paper  # noqa: E402
from handouts.handout import Handout, Heading, Item, Paragraph, Section, Steps, Text  # noqa: E402
from handouts.reading.studio import read_studio_parts  # noqa: E402

TURNS = 7
PAPER = Paper(40, 25)


def handout(language: str) -> Handout:
    """The starter library in one language, each text a section."""
    texts = read_studio_parts(ROOT / "handouts" / "demo", ROOT / "exercise_texts").studio.exercises
    sections = []
    for (name, spoken), text in sorted(texts.items()):
        if spoken != language:
            continue
        blocks: list[Heading | Paragraph | Steps] = []
        for part in text.parts:
            blocks.append(Heading(3, (Text(part.name),), f"{name}-{part.name}"))
            for block in part.blocks:
                if hasattr(block, "items"):
                    blocks.append(Steps(tuple(Item((Text(_plain(item.text)),)) for item in block.items)))
                else:
                    blocks.append(Paragraph((Text(_plain(block.text)),)))
        sections.append(Section("exercise", Heading(2, (Text(text.facts.title),), name), tuple(blocks)))
    return Handout(
        sheet="sheet", language=language, title=(Text("Library"),), client="", client_code="C0", plan_code="P0",
        version=1, running_head="C0 P0", date="2029-01-08", review_by="", blocks=tuple(sections),
    )  # fmt: skip


def _plain(text: str) -> str:
    return text.replace("**", "")


def seconds(work: Callable[[], object]) -> float:
    """Processor seconds of the quickest of several turns."""
    best = float("inf")
    for _ in range(TURNS):
        begun = time.process_time()
        work()
        best = min(best, time.process_time() - begun)
    return best


def lines_of(tree: Handout, code: Code) -> list[tuple[tuple[str, ...], str, tuple[int, ...] | None]]:
    """What goes to liblouis when a handout is laid out, call by call."""
    calls: list[tuple[tuple[str, ...], str, tuple[int, ...] | None]] = []
    louis = liblouis.owner()
    forward = louis.forward

    def noted(
        tables: tuple[str, ...], text: str, typeforms: tuple[int, ...] | None
    ) -> tuple[str, list[int], list[int]]:
        calls.append((tables, text, typeforms))
        return forward(tables, text, typeforms)

    louis.forward = noted  # type: ignore[method-assign]
    try:
        flow(tree, code, PAPER)
    finally:
        louis.forward = forward  # type: ignore[method-assign]
    return calls


def measure(tree: Handout, code: Code) -> None:
    """Print the figures of one code."""
    volume = lay_out(tree, code, PAPER)
    calls = lines_of(tree, code)
    forward = liblouis.owner().forward
    bare = seconds(lambda: [forward(*call) for call in calls])
    translated = seconds(lambda: flow(tree, code, PAPER))
    whole = seconds(lambda: brf.write(lay_out(tree, code, PAPER)))
    characters = sum(len(text) for _, text, _ in calls)
    what = f"{code.name} grade {code.grade}"
    table.row(
        f"{len(volume.pages) / whole:.0f} pages/s", "at least 100",
        f"{what}, from tree to BRF: {len(volume.pages)} pages, {characters} characters of print",
    )  # fmt: skip
    table.row(
        f"{(whole - bare) / bare:.2f}", "at most 3",
        f"{what}, layout and files against liblouis's own translation: mends and cutting into words "
        f"{(translated - bare) / bare:.2f}, pages and BRF {(whole - translated) / bare:.2f}",
    )  # fmt: skip
    for name, write in (("PEF", pef.write), ("Unicode text", unicode_text.write)):
        table.row(f"{seconds(lambda write=write: write(volume)) / bare:.2f}", "", f"{what}, writing {name} against liblouis's translation")


def main() -> None:
    parser = argparse.ArgumentParser(description=(__doc__ or "").split("\n")[0])
    parser.add_argument("--rows", action="store_true", help="leave out the head of the table")
    if not parser.parse_args().rows:
        table.head()
    table.row(liblouis.owner().version, "", "is the version of liblouis")
    english, french = handout("en"), handout("fr")
    measure(english, find_code("ueb", 2))
    measure(english, find_code("ueb", 1))
    measure(french, find_code("fr", 1))
    measure(french, find_code("fr", 2))
    code = find_code("ueb", 2)
    one = replace(english, blocks=english.blocks[:1])
    table.row(f"{seconds(lambda: ebraille.write(one, code)) * 1000:.1f} ms", "", "eBraille of one exercise")


if __name__ == "__main__":
    main()
