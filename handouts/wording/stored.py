"""What was learnt of a language, in one file of arrays.

It is a plain NumPy file (the format of NEP 1) of one record, a field for each
array, and is mapped into memory: what nobody asks for is not read, so a short
text does not wait for the rows of all words.
"""

from bisect import bisect_left
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

Numbers = NDArray[np.float32]

def load(path: Path) -> dict[str, NDArray[Any]]:
    """The arrays by name; they cannot be written to."""
    record = np.load(path, mmap_mode="r", allow_pickle=False).view(np.ndarray)
    return {name: record[name][0] for name in record.dtype.names}


def save(path: Path, arrays: Mapping[str, NDArray[Any]]) -> None:
    """Write arrays that `load` reads."""
    fields = [(name, array.dtype, array.shape) for name, array in arrays.items()]
    record = np.zeros(1, np.dtype(fields, align=True))
    for name, array in arrays.items():
        record[name] = array
    np.save(path, record, allow_pickle=False)


class Words(Mapping[str, int]):
    """Words, each with its place among them: they stand in order and are looked up by halving, so that nobody waits for a table of all.

    array: the words in UTF-8, in the order of their bytes.
    """

    def __init__(self, array: NDArray[np.bytes_]):
        self._array = array

    def __len__(self) -> int:
        return len(self._array)

    def __iter__(self) -> Iterator[str]:
        return (word.decode() for word in self._array.tolist())

    def __getitem__(self, word: str) -> int:
        letters = word.encode()
        place = bisect_left(self._array, letters)
        if place == len(self._array) or self._array[place] != letters:
            raise KeyError(word)
        return place


def in_order(words: Sequence[str]) -> tuple[NDArray[np.bytes_], NDArray[np.intp]]:
    """Words as `Words` takes them, and the place that each of these had among the words given."""
    array = np.array([word.encode() for word in words])
    order = np.argsort(array, kind="stable")
    return array[order], order
