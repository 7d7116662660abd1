"""Learns what `handouts/wording/weighing.py` weighs with, from the open labelled passages.

    python tests/wording/learn.py                    learns and writes handouts/wording/learnt/en.npy and en.txt
    python tests/wording/learn.py --hints            learns en.txt alone, in a minute
    python tests/wording/learn.py --without SET ...  learns without these sets of passages, to score them honestly
    python tests/wording/learn.py --further SET ...  goes on from what is shipped with these sets, in a few minutes
    python tests/wording/learn.py --why "a sentence" prints each word that may be a fault, and the words that decide

It takes a quarter of an hour on one core.  Everything random comes from one
seed, so one machine learns the same numbers each time; another machine may
round a sum otherwise and come to slightly others.

French passages are learnt from as they are asked about: said in English, a word
for a word (`glossing`).

The learner is Adam (Kingma and Ba, ICLR 2015) with a rate that rises, then
falls to nothing; numbers are left out at random while learning ("dropout",
Srivastava and others, JMLR 2014), and so are words, so that the words around
them must do.  The library autograd works out which way to change each number.

The hints of en.txt are a logistic regression with few weights (Tibshirani's
"lasso", Journal of the Royal Statistical Society B, 1996), by scikit-learn.
"""

import argparse
import collections
import copy
import hashlib
import json
import sys
from pathlib import Path
from typing import NamedTuple

import numpy as np

HERE = Path(__file__).parent
ROOT = HERE.parents[1]
sys.path[:0] = [str(ROOT), str(HERE)]

from score import CORPUS, overlap, read, unbracketed  # noqa: E402

from handouts.wording import engine, rereading, weighing  # noqa: E402
from handouts.wording.glossing import glossing  # noqa: E402
from handouts.wording.kinds import KINDS, lexicon  # noqa: E402
from handouts.wording.prose import sentences  # noqa: E402
from handouts.wording.searching import LEARNT, features, hinting  # noqa: E402
from handouts.wording.searching import read as sentences_of  # noqa: E402
from handouts.wording.stored import Words, in_order, load, save  # noqa: E402

NAMES = tuple(kind.name for kind in KINDS["en"])
CLASSES = len(lexicon("en").bits)
VECTORS = HERE / "word_vectors.npz"

WIDTH, SHORT = 128, 48
"""Numbers in the row of a word, and in the short row that the words beside it see."""
ROUNDS = 8
BATCH = 3000
"""Words that are learnt from at once."""
RATE, WARM_UP = 2e-3, 0.05
"""The greatest rate of learning, and the share of the batches after which it is reached."""
DECAY = 0.01
"""How much of itself each number loses, times the rate, at each batch."""
LEFT_OUT, LEFT_OUT_INSIDE, HIDDEN = 0.2, 0.1, 0.06
"""The shares of a word's first and last row, of what a layer adds, and of the words, that are left out while learning."""
SETTLED = 10
"""How many passages an example of a kind counts for, and an exercise text of the library: it says what is meant."""
FURTHER_ROUNDS, FURTHER_RATE = 3, 5e-4
REMEMBERED = 0.25
"""When going on from what is shipped: how often, at what rate, and the share of all other passages that is gone through again, so that they are not forgotten."""
SEED = 2026

MET, WEIGHTY = 3, 0.4
"""How often a word or pair must be met to be a hint, and how little its weight may cost: the less, the fewer are hints."""
AT_LEAST = 0.015
"""How likely a fault must be, by the hints alone, for the sentence to be in question."""


class Passage(NamedTuple):
    """words, classes: as the checker sees them; targets: of each word 0 or 1 + the number of its kind; lengths: words of each sentence; counts: what it counts for."""

    words: list[str]
    classes: list[int]
    targets: list[int]
    lengths: list[int]
    counts: int


def texts(without=(), only=None):
    """The open passages, the examples of the kinds, and the exercise texts, which have no fault: (text, marks, how much it counts, language).

    without: sets that are left out.  only: sets that alone are given, with nothing besides.
    """
    paths = [path for path in sorted(CORPUS.glob("*open_*.jsonl")) if path.stem.rpartition("open_")[2] not in without]
    if only is not None:
        paths = [path for path in paths if path.stem.rpartition("open_")[2] in only]
    rows = [(row["text"], row["marks"], 1, row.get("language", "en")) for row in read(paths)]
    if only is not None:
        return rows
    for kind in KINDS["en"]:
        for text, spans in map(unbracketed, kind.flag):
            rows.append((text, [{"start": start, "end": end, "kind": kind.name} for start, end in spans], SETTLED, "en"))
        rows += [(text, [], SETTLED, "en") for text in kind.leave]
    library = [path for path in sorted((ROOT / "exercise_texts").glob("*.md")) if path.name.count(".") == 1]
    return rows + [(path.read_text("utf-8"), [], SETTLED, "en") for path in library]


def passages(without=(), only=None):
    """What is learnt from, as the checker reads it; `without` and `only` as in `texts`."""
    return [as_read(*row) for row in texts(without, only)]


def as_asked(text, marks, language="en"):
    """Each sentence as it is asked about, in English, and the targets of its words."""
    glossed = glossing(language) or iter
    for sentence in glossed(sentences_of(text, language)):
        of_words = targets(sentence.written, marks)
        yield sentence, [of_words[place] for place in sentence.places] if sentence.places else of_words


def as_read(text, marks, counts, language="en"):
    words, classes, targets, lengths = [], [], [], []
    for sentence, of_words in as_asked(text, marks, language):
        words += sentence.words
        classes += sentence.classes
        targets += of_words
        lengths.append(len(sentence.words))
    return Passage(words, classes, targets, lengths, counts)


def by_sentence(row):
    """Words and targets of each sentence of a passage."""
    at = 0
    for length in row.lengths:
        yield row.words[at : at + length], row.targets[at : at + length]
        at += length


def targets(sentence, marks):
    """Of each word of a sentence 0, or 1 + the number of the kind of its mark."""
    found = []
    for start, end in zip(sentence.starts, sentence.ends, strict=True):
        mark = next((mark for mark in marks if overlap({"start": start, "end": end}, mark)), None)
        found.append(1 + NAMES.index(mark["kind"]) if mark else 0)
    return found


def fingerprint(rows, settings=None):
    """A short text that changes with the open passages, their labels and the settings.

    rows: as `texts` gives them.
    Not with the examples and the exercise texts: what the checker says of each
    is a test of its own, so they need no learning anew while it is right; nor
    with what words are read as, by the lexicon and the glossary.
    """
    settings = settings or (WIDTH, SHORT, ROUNDS, BATCH, RATE, WARM_UP, DECAY, LEFT_OUT, LEFT_OUT_INSIDE, HIDDEN, SETTLED, SEED, MET, WEIGHTY, AT_LEAST, weighing.REACHES, NAMES)
    labelled = [(text, [(mark["start"], mark["end"], mark["kind"]) for mark in marks], language) for text, marks, counts, language in rows if counts == 1]
    told = json.dumps([settings, labelled], ensure_ascii=False).encode()
    return hashlib.sha256(told).hexdigest()[:16]


def hints(rows):
    """The lines of en.txt: see `searching.hinting`."""
    from sklearn.feature_extraction.text import CountVectorizer
    from sklearn.linear_model import LogisticRegression

    every, faulty, counts = [], [], []
    for row in rows:
        for words, of_words in by_sentence(row):
            every.append(words)
            faulty.append(any(of_words))
            counts.append(row.counts)
    counter = CountVectorizer(analyzer=features, min_df=MET, dtype=np.float32)
    learner = LogisticRegression(l1_ratio=1, C=WEIGHTY, solver="liblinear", intercept_scaling=10, random_state=SEED)
    learner.fit(counter.fit_transform(every), faulty, counts)
    start = round(100 * (learner.intercept_[0] - np.log(AT_LEAST / (1 - AT_LEAST))))
    weights = zip(np.round(100 * learner.coef_[0]).astype(int).tolist(), counter.get_feature_names_out(), strict=True)
    told = sorted((weight for weight in weights if weight[0]), key=lambda weight: (-weight[0], weight[1]))
    return [str(start), *(f"{weight} {feature}" for weight, feature in told)]


class Learner:
    """The numbers while they are learnt, and how they are learnt.

    rows: the passages.
    begun: what is shipped, by name, to go on from; None to begin with the vectors of words.
    """

    def __init__(self, rows, begun=None):
        from autograd import make_vjp, numpy
        from autograd.extend import defvjp, primitive

        self.numeric = numpy
        self.beside = primitive(weighing.beside)
        defvjp(self.beside, lambda found, x, reach, of: lambda slopes: merged(slopes, reach, of))
        self.random = np.random.default_rng(SEED)
        if begun is not None:
            _, *self.words = Words(begun["words"])
            self.vectors = begun["rows"].astype(np.float32) * begun["row scale"]
        else:
            with np.load(VECTORS) as found:
                self.words = weighing.lines(found["words"])
                self.vectors = found["vectors"].astype(np.float32) * found["scale"][:, None]
            self.vectors = np.concatenate([np.zeros((1, self.vectors.shape[1]), np.float32), self.vectors])
        common = collections.Counter(word for row in rows for word in row.words)
        places = {word: place for place, word in enumerate(self.words, 1)}
        self.places = collections.defaultdict(int, places)
        # A word that was met only once stands for all those that are not known.
        repeated = sorted(word for word in common if common[word] > 1)
        own = {word: number for number, word in enumerate(repeated, 1)}
        self.own = np.array([0] + [own.get(word, 0) for word in self.words])
        self.learnt = {
            "of words": np.zeros((len(own) + 1, WIDTH)),
            "of vectors": self.normal(self.vectors.shape[1], WIDTH),
            "classes": self.normal(CLASSES, WIDTH),
            "out": self.normal(WIDTH, 1 + len(NAMES)),
            "out bias": np.zeros(1 + len(NAMES)),
        }
        for number in range(len(weighing.REACHES)):
            self.learnt |= {
                f"short {number}": self.normal(WIDTH, SHORT),
                f"short bias {number}": np.zeros(SHORT),
                f"taps {number}": self.normal(3 * SHORT, WIDTH) / 2,
                f"taps bias {number}": np.zeros(WIDTH),
                f"gates {number}": self.normal(3 * SHORT, WIDTH) / 2,
                f"gates bias {number}": np.zeros(WIDTH),
            }
        if begun is not None:
            self.learnt |= {name: begun[name] for name in self.learnt if name in begun} | {"of vectors": np.eye(WIDTH)}
        self.learnt = {name: array.astype(np.float32) for name, array in self.learnt.items()}
        self.slopes = make_vjp(self.loss, (0, 1))
        self.moments = {name: np.zeros((2, *array.shape), np.float32) for name, array in self.learnt.items()}
        self.steps = 0

    def normal(self, inward, outward):
        """Numbers at random, the smaller the more of them are added up."""
        return self.random.normal(0, inward**-0.5, (inward, outward))

    def batch(self, rows):
        """Rows of passages as arrays, each with a number for each word: the word, its classes, its sentence, its target, and what it counts for."""
        words, classes, lengths, targets, counts = [], [], [], [], []
        for row in rows:
            words += [self.places[word] for word in row.words]
            classes += row.classes
            lengths += row.lengths
            targets += row.targets
            counts += [row.counts] * len(row.words)
        spread = (np.array(classes)[:, None] >> np.arange(CLASSES) & 1).astype(np.float32)
        of = np.repeat(np.arange(len(lengths)), lengths)
        return np.array(words), spread, of, np.eye(1 + len(NAMES), dtype=np.float32)[targets], np.array(counts, np.float32)

    def drop(self, share):
        def leave_out(x):
            kept = self.random.random(x.shape, np.float32) >= share
            return x * (kept / np.float32(1 - share))

        return leave_out

    def loss(self, learnt, own, vectors, spread, of, targets, counts):
        """How unlikely the labels are, as a mean over the words."""
        numeric = self.numeric
        x = own + numeric.dot(vectors, learnt["of vectors"]) + numeric.dot(spread, learnt["classes"])
        logits = weighing.forward(learnt, self.drop(LEFT_OUT)(x), of, self.drop(LEFT_OUT_INSIDE), self.beside, numeric)
        logits = logits - numeric.max(logits, axis=1, keepdims=True)
        likely = numeric.sum(logits * targets, axis=1) - numeric.log(numeric.sum(numeric.exp(logits), axis=1))
        return -numeric.sum(likely * counts) / np.float32(counts.sum())

    def step(self, rows, rate):
        """Learns from some passages; the loss before it."""
        words, *seen = self.batch(rows)
        own = self.own[words]
        own[self.random.random(len(own)) < HIDDEN] = 0
        layers = {name: array for name, array in self.learnt.items() if name != "of words"}
        slopes_of, loss = self.slopes(layers, self.learnt["of words"][own], self.vectors[words], *seen)
        slopes, of_own = slopes_of(np.float32(1))
        slopes["of words"] = np.zeros_like(self.learnt["of words"])
        np.add.at(slopes["of words"], own, of_own)
        steep = np.sqrt(sum(float((slope * slope).sum()) for slope in slopes.values()))
        self.steps += 1
        for name, slope in slopes.items():
            slope = (slope / max(1.0, steep)).astype(np.float32)
            first, second = self.moments[name]
            first += np.float32(0.1) * (slope - first)
            second += np.float32(0.001) * (slope * slope - second)
            way = first / (1 - 0.9**self.steps) / (np.sqrt(second / (1 - 0.999**self.steps)) + 1e-8)
            self.learnt[name] -= np.float32(rate) * (way + np.float32(DECAY) * self.learnt[name])
        return float(loss)

    def round(self, rows, at, rounds, rate):
        """Learns from every passage once, in an order of its own; the mean loss."""
        order = self.random.permutation(len(rows))
        batches, words = [[]], 0
        for place in order:
            if words > BATCH:
                batches.append([])
                words = 0
            batches[-1].append(rows[place])
            words += len(rows[place].words)
        losses = []
        for number, batch in enumerate(batches):
            done = (at + number / len(batches)) / rounds
            losses.append(self.step(batch, rate * min(1.0, done / WARM_UP + 0.001) * (1 - done)))
        return sum(losses) / len(losses)

    def arrays(self, told):
        """What the checker reads: see `weighing.Network`."""
        rows = self.learnt["of words"][self.own] + self.vectors @ self.learnt["of vectors"]
        scale = np.abs(rows).max(axis=1, keepdims=True) / 127
        words, order = in_order(["", *self.words])
        layers = {name: array.astype(np.float16) for name, array in self.learnt.items() if not name.startswith("of ")}
        return layers | {
            "learnt from": letters([told]),
            "kinds": letters(NAMES),
            "words": words,
            "rows": np.round(rows / scale).astype(np.int8)[order],
            "row scale": scale.astype(np.float32)[order],
        }


def merged(slopes, reach, of):
    """The way back through `weighing.beside`: what each row's three copies say of it, together."""
    before, total, after = np.split(slopes, 3, axis=1)
    total = total.copy()
    together = (of[reach:] == of[:-reach])[:, None]
    total[:-reach] += before[reach:] * together
    total[reach:] += after[:-reach] * together
    return total


def letters(words):
    return np.frombuffer("\n".join(words).encode(), np.uint8)


def learn(rows, rounds=ROUNDS, tell=lambda line: None, begun=None, rate=RATE):
    """A learner that has gone through the passages so many times; `begun` as it has it."""
    learner = Learner(rows, begun)
    for number in range(rounds):
        loss = learner.round(rows, number, rounds, rate)
        tell(f"Round {number + 1} of {rounds}, loss {loss:.4f}")
    return learner


def remembered(others, random):
    """A share of what was learnt from before."""
    return [other for other in others if random.random() < REMEMBERED]


def why(text):
    """Prints how likely each word is part of a fault, by both readings together, and which other words of the sentence make it more or less so."""
    may_hold_a_fault = hinting()
    for sentence in sentences(text, lexicon("en").known):
        words = sentence.words
        found = both(sentence)
        # A word is hidden as it was while learning.
        without = [both(hiding(sentence, place))[:, 0] for place in range(len(words))]
        asked = "in question" if may_hold_a_fault(sentence) else "not in question, by the hints"
        print(f"{sentence.quote(0, len(words))!r} is {asked}")
        for place in np.flatnonzero(found[:, 0] <= 0.9):
            changes = [(other[place] - found[place, 0], word) for word, other in zip(words, without, strict=True)]
            del changes[place]
            heaviest = sorted(changes, key=lambda change: -abs(change[0]))[:6]
            told = "; ".join(f"{word} {change:+.2f}" for change, word in heaviest if abs(change) >= 0.01)
            kind = NAMES[int(found[place, 1:].argmax())]
            print(f"{words[place]}, {kind}: {1 - found[place, 0]:.2f}; {told or 'no other word alone decides'}")


def both(sentence):
    """How likely each word is part of no fault and of one of each kind, by both readings together."""
    any_at_all = dict.fromkeys(engine.DOUBT["en"], 0.0)
    ((_, likely),) = rereading.reread(weighing.weigh([sentence], any_at_all, "en"), any_at_all)
    return likely.found


def hiding(sentence, place):
    """The sentence with one word not told."""
    hidden = copy.copy(sentence)
    hidden.words = [*sentence.words[:place], rereading.HIDDEN, *sentence.words[place + 1 :]]
    hidden.classes = [*sentence.classes[:place], 0, *sentence.classes[place + 1 :]]
    return hidden


def main(argv=None):
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("--without", nargs="*", default=[], metavar="SET")
    parser.add_argument("--further", nargs="+", metavar="SET")
    parser.add_argument("--rounds", type=int, default=ROUNDS, help="fewer are for a trial")
    parser.add_argument("--hints", action="store_true", help="learn the hints alone")
    parser.add_argument("--why", metavar="TEXT")
    arguments = parser.parse_args(argv)
    if arguments.why:
        return why(arguments.why)
    rows = passages(arguments.without)
    path = LEARNT / "en.npy"
    path.with_suffix(".txt").write_text("\n".join(hints(rows)) + "\n", "utf-8")
    print(f"Learnt the hints from {len(rows)} passages: {path.stem}.txt", flush=True)
    if arguments.hints:
        return None
    tell = lambda line: print(line, flush=True)  # noqa: E731
    if arguments.further:
        some = passages(only=arguments.further) + remembered(passages(arguments.further), np.random.default_rng(SEED))
        tell(f"Goes on with {len(some)} passages")
        learner = learn(some, FURTHER_ROUNDS, tell, load(path), FURTHER_RATE)
    else:
        learner = learn(rows, arguments.rounds, tell)
    save(path, learner.arrays(fingerprint(texts(arguments.without))))
    print(f"Learnt the network: {path.relative_to(ROOT)}")


if __name__ == "__main__":
    main()
