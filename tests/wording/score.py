"""Scores the wording checker against the labelled passages.

    python tests/wording/score.py                 the open passages
    python tests/wording/score.py --misses        and what was missed, marked wrongly or marked for nothing
    python tests/wording/score.py --sealed        the sealed passages: figures only, never a text
    python tests/wording/score.py --french ...    the same of the French passages
    python tests/wording/score.py FILE ...        any other file of passages

A predicted mark is right when it shares a character with a labelled mark.
"Same kind" asks for the same kind too, "same strength" for the same strength.
Precision counts predicted marks, recall labelled ones.
"""

import argparse
import json
import re
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
CORPUS = ROOT / "tests" / "wording_corpus"
BLOCKING = ("demonstration", "pointing", "picture", "looks-only", "viewer", "sight-check")
ADVICE = ("gaze", "vague")


def strength(kind):
    return "blocks" if kind in BLOCKING else "advice"


def read(paths):
    return [json.loads(line) for path in paths for line in path.read_text("utf-8").splitlines() if line.strip()]


def predicted(rows):
    """The rows, each with the checker's own marks."""
    from handouts.wording import check_text

    for row in rows:
        marks = check_text(row["text"], language=row.get("language", "en"))
        row["predicted"] = [{"start": m.start, "end": m.end, "kind": m.kind} for m in marks]
    return rows


def unbracketed(example):
    """A kind's example without its brackets, and start and end of the words that stood in them."""
    spans, text, at = [], "", 0
    for found in re.finditer(r"\[\[(.*?)\]\]", example, re.S):
        text += example[at : found.start()]
        spans.append((len(text), len(text) + len(found[1])))
        text += found[1]
        at = found.end()
    return text + example[at:], spans


def overlap(one, other):
    return one["start"] < other["end"] and other["start"] < one["end"]


def tally(rows, kinds, key):
    """Right and all predicted marks, found and all labelled marks, of these kinds.

    key: from a kind to what two marks must have in common.
    """
    right = predicted = found = labelled = 0
    for row in rows:
        for mark in row["predicted"]:
            if mark["kind"] in kinds:
                predicted += 1
                right += any(overlap(mark, m) and key(mark["kind"]) == key(m["kind"]) for m in row["marks"])
        for mark in row["marks"]:
            if mark["kind"] in kinds:
                labelled += 1
                found += any(overlap(mark, m) and key(mark["kind"]) == key(m["kind"]) for m in row["predicted"])
    return right, predicted, found, labelled


def line(label, counts):
    right, predicted, found, labelled = counts
    precision = right / predicted if predicted else 1.0
    recall = found / labelled if labelled else 1.0
    return f"  {label:<28} precision {precision:.3f} ({right}/{predicted})  recall {recall:.3f} ({found}/{labelled})"


def report(rows, title, per_kind=True):
    print(f"{title}: {len(rows)} passages")
    for name, kinds in (("blocks", BLOCKING), ("advice", ADVICE)):
        print(line(f"{name}, same strength", tally(rows, kinds, strength)))
        print(line(f"{name}, same kind", tally(rows, kinds, str)))
    if per_kind:
        for kind in BLOCKING + ADVICE:
            print(line(kind, tally(rows, (kind,), str)))
    for name, which in (("labelled", "marks"), ("predicted", "predicted")):
        lengths = [mark["end"] - mark["start"] for row in rows for mark in row[which]]
        if lengths:
            print(f"  mean length {name}: {sum(lengths) / len(lengths):.1f} characters")
    print()


def around(row, mark):
    text = row["text"]
    shown = text[max(0, mark["start"] - 90) : mark["start"]] + "[[" + text[mark["start"] : mark["end"]] + "]]"
    return (shown + text[mark["end"] : mark["end"] + 70]).replace("\n", " / ")


def misses(rows, only):
    groups = {"missed": [], "other kind": [], "for nothing": []}
    for row in rows:
        for mark in row["marks"]:
            over = [m for m in row["predicted"] if overlap(mark, m)]
            if not over:
                groups["missed"].append((mark["kind"], row, mark, ""))
            elif all(m["kind"] != mark["kind"] for m in over):
                groups["other kind"].append((mark["kind"], row, mark, "as " + over[0]["kind"]))
        for mark in row["predicted"]:
            if not any(overlap(mark, m) for m in row["marks"]):
                groups["for nothing"].append((mark["kind"], row, mark, ""))
    for name, entries in groups.items():
        entries = [e for e in entries if not only or e[0] in only]
        print(f"{name} ({len(entries)})")
        for kind, row, mark, more in sorted(entries, key=lambda e: (e[0], e[1]["id"])):
            print(f"  {row['id']} {row.get('sort', '-')[:1]} {kind} {more}: {around(row, mark)}")


def main(argv=None):
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("files", nargs="*", type=Path)
    parser.add_argument("--sealed", action="store_true", help="score the sealed passages; prints figures only")
    parser.add_argument("--french", action="store_true", help="the French passages, in which the six blocking kinds are labelled")
    parser.add_argument("--misses", action="store_true", help="list the open passages that went wrong")
    parser.add_argument("--kind", action="append", help="with --misses: only this kind; may be given again")
    arguments = parser.parse_args(argv)
    if arguments.sealed and (arguments.misses or arguments.files):
        parser.error("--sealed prints figures only and takes no file and no --misses")
    if any("sealed" in path.name for path in arguments.files):
        parser.error("a sealed file is scored with --sealed alone")
    sys.path.insert(0, str(ROOT))
    which = ("french_" if arguments.french else "") + ("sealed" if arguments.sealed else "open")
    paths = arguments.files or sorted(CORPUS.glob(f"{which}_*.jsonl"))
    rows = predicted(read(paths))
    for sort, title in (("talk", "Natural talk"), ("rare", "Rare wording")):
        part = [row for row in rows if row.get("sort") == sort]
        if part:
            report(part, title)
    report(rows, "Together")
    if arguments.misses:
        misses(rows, arguments.kind)
    return 0


if __name__ == "__main__":
    sys.exit(main())
