"""Learns the weights of `handouts/wording/weighing.py` from the open labelled passages.

    python tests/wording/learn.py                    learns and writes handouts/wording/learnt/en.json
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
import json
import math
import random
import sys
from pathlib import Path

HERE = Path(__file__).parent
ROOT = HERE.parents[1]
sys.path[:0] = [str(ROOT), str(HERE)]

from score import BLOCKING, CORPUS, overlap, read, unbracketed  # noqa: E402

from handouts.wording import weighing  # noqa: E402
from handouts.wording.kinds import KINDS, lexicon  # noqa: E402
from handouts.wording.prose import PAUSES, sentences  # noqa: E402

SUSPICIOUS = 0.04
"""The share of a word's places that must be part of a fault before the word is weighed."""
LIKELY = 0.2
"""The share from which it is weighed without a phrase."""
NEAR_MISS = 4
"""How many passages a near miss among the examples of a kind counts for: it says what the kind does not mean."""
ROUNDS = 6
STEP, SMOOTH, SPARSE, RIDGE = 0.1, 1.0, 3.0, 1.0
"""Alpha, beta, lambda 1 and lambda 2 of the paper."""


def passages(without=()):
    """The open passages, the kinds' own examples, and the exercise texts, which have no fault."""
    paths = [path for path in sorted(CORPUS.glob("open_*.jsonl")) if path.stem.removeprefix("open_") not in without]
    rows = [(row["text"], [mark for mark in row["marks"] if mark["kind"] in BLOCKING]) for row in read(paths)]
    for kind in KINDS["en"]:
        if kind.name in BLOCKING:
            for text, spans in map(unbracketed, kind.flag):
                rows.append((text, [{"start": start, "end": end, "kind": kind.name} for start, end in spans]))
            rows += [(text, []) for text in kind.leave] * NEAR_MISS
    for path in sorted((ROOT / "exercise_texts").glob("*.md")):
        if path.name.count(".") == 1:
            rows.append((path.read_text("utf-8"), []))
    return rows


def words_of(rows):
    """(sentence, place, kind of the fault or None) of every word of every passage."""
    known = lexicon("en").known
    for text, marks in rows:
        for sentence in sentences(text, known):
            for place, word in enumerate(sentence.words):
                if word not in PAUSES:
                    here = {"start": sentence.starts[place], "end": sentence.ends[place]}
                    yield sentence, place, next((mark["kind"] for mark in marks if overlap(here, mark)), None)


def learn(rows):
    """The content of the file of weights."""
    every = list(words_of(rows))
    of_word = collections.Counter(sentence.words[place] for sentence, place, _ in every)
    faulty = collections.Counter(sentence.words[place] for sentence, place, kind in every if kind)
    suspicious = {word for word in faulty if faulty[word] / of_word[word] >= SUSPICIOUS}
    examples = [
        (weighing.evidence(sentence.words, place), kind is not None)
        for sentence, place, kind in every
        if sentence.words[place] in suspicious
    ]
    of_kind = collections.Counter((sentence.words[place], kind) for sentence, place, kind in every if kind)
    likely = sorted(word for word in suspicious if faulty[word] / of_word[word] >= LIKELY)
    return {
        "suspicious": sorted(suspicious),
        "kinds": {word: max(BLOCKING, key=lambda kind: of_kind[word, kind]) for word in likely},
        "fault": fit(examples),
    }


def fit(examples):
    """From a table to the weights of its words, to two decimals.

    examples: the evidence around a word, and whether it is part of a fault.
    """
    pull, seen = {}, {}

    def weight(name):
        z = pull.get(name, 0.0)
        if -SPARSE <= z <= SPARSE:
            return 0.0
        return (math.copysign(SPARSE, z) - z) / ((SMOOTH + math.sqrt(seen[name])) / STEP + RIDGE)

    order = list(examples)
    shuffled = random.Random(2026)
    for _ in range(ROUNDS):
        shuffled.shuffle(order)
        for found, right in order:
            weights = [weight(name) for name in found]
            slope = 1 / (1 + math.exp(-max(-30.0, min(30.0, math.fsum(weights))))) - right
            if abs(slope) < 0.001:
                continue
            for name, now in zip(found, weights, strict=True):
                before = seen.get(name, 0.0)
                after = before + slope * slope
                pull[name] = pull.get(name, 0.0) + slope - (math.sqrt(after) - math.sqrt(before)) / STEP * now
                seen[name] = after
    tables = {table: {} for table in (*weighing.PLACES, weighing.BEFORE, weighing.AFTER)}
    for table, words in sorted(pull):
        if value := round(weight((table, words)), 2):
            tables[table][words] = value
    return tables


def why(text):
    weights = weighing.learnt("en")
    for sentence in sentences(text, lexicon("en").known):
        for place, odds in weights.weighed(sentence).items():
            found = {(table, words): weights.fault[table].get(words, 0.0) for table, words in weighing.evidence(sentence.words, place)}
            heaviest = sorted(found, key=lambda one: -abs(found[one]))[:8]
            listed = "; ".join(f"{table} {words!r} {found[table, words]:+.2f}" for table, words in heaviest)
            print(f"{sentence.words[place]}: {odds:+.2f}, from {listed}")


def main(argv=None):
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--without", nargs="*", default=[], metavar="SET")
    parser.add_argument("--why", metavar="TEXT")
    arguments = parser.parse_args(argv)
    if arguments.why:
        return why(arguments.why)
    content = learn(passages(arguments.without))
    path = weighing.LEARNT / "en.json"
    path.write_text(json.dumps(content, ensure_ascii=False, separators=(',', ':')) + "\n", "utf-8")
    count = sum(len(words) for words in content["fault"].values())
    print(f"Learnt {count} weights for {len(content['suspicious'])} suspicious words: {path.relative_to(ROOT)}")


if __name__ == "__main__":
    main()
