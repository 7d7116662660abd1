"""What was learnt is stored as NumPy's own format and comes back as it was."""

import numpy as np
import pytest

from handouts.wording.stored import Words, in_order, load, save


def test_arrays_come_back_as_they_were(tmp_path):
    arrays = {
        "learnt from": np.frombuffer(b"abc", np.uint8),
        "rows": np.arange(-6, 6, dtype=np.int8).reshape(4, 3),
        "row scale": np.linspace(0, 1, 5, dtype=np.float32),
        "0 norm": np.array([0.5, -2], np.float16),
    }
    save(tmp_path / "en.npy", arrays)
    found = load(tmp_path / "en.npy")
    assert list(found) == list(arrays)
    for name, array in arrays.items():
        assert found[name].dtype == array.dtype and np.array_equal(found[name], array)
        assert found[name].flags.aligned and not found[name].flags.writeable
    assert np.load(tmp_path / "en.npy").dtype.names == tuple(arrays)


def test_words_are_found_where_they_stand():
    given = ["", "turn", "épaule", "##s", "Zug", "tu", "turns", "z"]
    array, order = in_order(given)
    words = Words(array)
    assert [given[place] for place in order] == list(words) and len(words) == len(given)
    assert [words[word] for word in words] == list(range(len(given)))
    assert words[""] == 0
    for unknown in ("tur", "turnst", "e", "zz", "\0", "é"):
        assert unknown not in words
        with pytest.raises(KeyError):
            words[unknown]


def test_words_of_every_length_come_back_from_a_file(tmp_path):
    array, _ = in_order(["a" * length for length in range(30)])
    save(tmp_path / "words.npy", {"words": array})
    assert list(Words(load(tmp_path / "words.npy")["words"])) == ["a" * length for length in range(30)]
