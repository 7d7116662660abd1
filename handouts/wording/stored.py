"""What was learnt of a language, in one file of arrays.

It is a plain NumPy file (the format of NEP 1) of one record, a field for each
array, and is mapped into memory: what nobody asks for is not read, so a short
text does not wait for the rows of all words.
"""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray


def load(path: Path) -> dict[str, NDArray[Any]]:
    """The arrays by name; they cannot be written to."""
    record = np.load(path, mmap_mode="r", allow_pickle=False)
    return {name: np.asarray(record[name][0]) for name in record.dtype.names}


def save(path: Path, arrays: Mapping[str, NDArray[Any]]) -> None:
    """Write arrays that `load` reads."""
    fields = [(name, array.dtype, array.shape) for name, array in arrays.items()]
    record = np.zeros(1, np.dtype(fields, align=True))
    for name, array in arrays.items():
        record[name] = array
    np.save(path, record, allow_pickle=False)
