"""Learns the weights of `handouts/wording/weighing.py` from the open labelled passages.

    python tests/wording/learn.py                    learns and writes handouts/wording/learnt/en.txt
    python tests/wording/learn.py --without SET ...  learns without these sets of passages, to score them honestly
    python tests/wording/learn.py --why "a sentence" prints each suspicious word's odds and its heaviest evidence

Logistic regression, fitted one example at a time with a step of its own for
each weight, which keeps weights that little speaks for at nought: "FTRL-
Proximal" of McMahan and others, "Ad Click Prediction: a View from the
Trenches", KDD 2013, algorithm 1.  The order of examples is shuffled from a
fixed seed, so the same passages give the same weights.
"""

import argparse
import collections
import itertools
import json
import math
import random
import sys
from pathlib import Path

HERE = Path(__file__).parent
ROOT = HERE.parents[1]
sys.path[:0] = [str(ROOT), str(HERE)]

from score import ADVICE, BLOCKING, CORPUS, overlap, read, unbracketed  # noqa: E402

from handouts.wording import weighing  # noqa: E402
from handouts.wording.kinds import KINDS, lexicon  # noqa: E402
from handouts.wording.prose import PAUSES, sentences  # noqa: E402

SUSPICIOUS = 0.04
"""The share of a word's places that must be part of a fault before the word is weighed."""
LIKELY = 0.08
"""The share from which it is weighed without a phrase."""
SETTLED = 4
"""How many passages an example of a kind counts for, and an exercise text of the library: it says what is meant."""
ROUNDS = 6
SLIGHT = 0.03
"""A weight nearer to nought is left out: it tips nothing, and the file is read at every start."""
STEP, SMOOTH, SPARSE, RIDGE = 0.1, 1.0, 3.0, 1.0
"""Alpha, beta, lambda 1 and lambda 2 of the paper."""


def passages(kinds, without=()):
    """The open passages, the examples of these kinds, and the exercise texts, which have no fault: (text, marks of these kinds, how much it counts)."""
    paths = [path for path in sorted(CORPUS.glob("open_*.jsonl")) if path.stem.removeprefix("open_") not in without]
    rows = [(row["text"], [mark for mark in row["marks"] if mark["kind"] in kinds]) for row in read(paths)]
    settled = []
    for kind in KINDS["en"]:
        if kind.name in kinds:
            for text, spans in map(unbracketed, kind.flag):
                settled.append((text, [{"start": start, "end": end, "kind": kind.name} for start, end in spans]))
            settled += [(text, []) for text in kind.leave]
    for path in sorted((ROOT / "exercise_texts").glob("*.md")):
        if path.name.count(".") == 1:
            settled.append((path.read_text("utf-8"), []))
    return [(text, marks, 1) for text, marks in rows] + [(text, marks, SETTLED) for text, marks in settled]


def words_of(rows):
    """(sentence, place, kind of the fault or None, how much it counts) of every word of every passage."""
    known = lexicon("en").known
    for text, marks, counts in rows:
        for sentence in sentences(text, known):
            for place, word in enumerate(sentence.words):
                if word not in PAUSES:
                    here = {"start": sentence.starts[place], "end": sentence.ends[place]}
                    yield sentence, place, next((mark["kind"] for mark in marks if overlap(here, mark)), None), counts


def learn(without=()):
    """The content of the file of weights: a model for each strength."""
    return {strength: of_kinds(passages(kinds, without), kinds) for strength, kinds in (("blocks", BLOCKING), ("advice", ADVICE))}


def of_kinds(rows, kinds):
    """The model of some kinds."""
    every = list(words_of(rows))
    of_word, faulty, of_kind = collections.Counter(), collections.Counter(), collections.Counter()
    for sentence, place, kind, counts in every:
        word = sentence.words[place]
        of_word[word] += counts
        if kind:
            faulty[word] += counts
            of_kind[word, kind] += counts
    suspicious = {word for word in faulty if faulty[word] / of_word[word] >= SUSPICIOUS}
    likely = sorted(word for word in suspicious if faulty[word] / of_word[word] >= LIKELY)
    examples = [
        (weighing.evidence(sentence, place, lexicon("en")), kind is not None, counts)
        for sentence, place, kind, counts in every
        if sentence.words[place] in suspicious
    ]
    records = fit(examples)
    records[""] |= {
        "suspicious": sorted(suspicious),
        "kinds": {word: max(kinds, key=lambda kind: of_kind[word, kind]) for word in likely},
    }
    return records


def fit(examples):
    """The records, weights to two decimals, by word, two words or number; that of "" holds the tables of classes.

    examples: the evidence around a word, whether it is part of a fault, and how much it counts.
    """
    numbers = collections.defaultdict(itertools.count().__next__)
    order = [([numbers[one] for one in found], right, counts) for found, right, counts in examples]
    pull, seen = [0.0] * len(numbers), [0.0] * len(numbers)

    def weight(number):
        z = pull[number]
        if -SPARSE <= z <= SPARSE:
            return 0.0
        return (math.copysign(SPARSE, z) - z) / ((SMOOTH + math.sqrt(seen[number])) / STEP + RIDGE)

    shuffled = random.Random(2026)
    for _ in range(ROUNDS):
        shuffled.shuffle(order)
        for found, right, counts in order:
            weights = [weight(number) for number in found]
            slope = counts * (1 / (1 + math.exp(-max(-30.0, min(30.0, math.fsum(weights))))) - right)
            if abs(slope) < 0.001:
                continue
            for number, now in zip(found, weights, strict=True):
                before = seen[number]
                after = before + slope * slope
                pull[number] += slope - (math.sqrt(after) - math.sqrt(before)) / STEP * now
                seen[number] = after
    records = {"": {table: {} for table in weighing.CLASSES}}
    for (table, word, name), number in sorted(numbers.items()):
        if abs(value := round(weight(number), 2)) < SLIGHT:
            continue
        record, inner = weighing.kept_at(table, word, name)
        if inner:
            records.setdefault(record, {}).setdefault(table, {})[inner] = value
        else:
            records.setdefault(record, {})[table] = value
    return records


def weights_of(records):
    """Each weight by (word, table, name)."""
    weights = {}
    for word, record in records.items():
        for table, found in record.items():
            if isinstance(found, float):
                weights[word, table, ""] = found
            elif table not in ("suspicious", "kinds"):
                weights |= {(word, table, name): value for name, value in found.items()}
    return weights


def written(content):
    """The file: for each word three lines, itself and its record in each strength."""
    lines = []
    for word in sorted(set().union(*content.values())):
        records = (content[strength].get(word) for strength in weighing.LINES.values())
        lines += (word, *(json.dumps(one, ensure_ascii=False, separators=(",", ":")) if one else "" for one in records))
    return "\n".join(lines)


def why(text):
    words = lexicon("en")
    for sentence in sentences(text, words.known):
        for strength, weights in weighing.learnt("en").items():
            for place, odds in weights.weighed(sentence).items():
                found = weighing.evidence(sentence, place, words)
                heaviest = sorted({(weights.of(*one), *one) for one in found}, key=lambda one: -abs(one[0]))
                listed = "; ".join(f"{table} {name!r} {weight:+.2f}" for weight, table, _, name in heaviest[:8])
                print(f"{sentence.words[place]}, {strength}: {odds:+.2f}, from {listed}")


def main(argv=None):
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--without", nargs="*", default=[], metavar="SET")
    parser.add_argument("--why", metavar="TEXT")
    arguments = parser.parse_args(argv)
    if arguments.why:
        return why(arguments.why)
    content = learn(arguments.without)
    path = weighing.LEARNT / "en.txt"
    path.write_text(written(content), "utf-8")
    for strength, records in content.items():
        print(f"Learnt {len(weights_of(records))} weights, {strength}: {path.relative_to(ROOT)}")


if __name__ == "__main__":
    main()
