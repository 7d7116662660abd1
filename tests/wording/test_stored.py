"""What was learnt is stored as NumPy's own format and comes back as it was."""

import numpy as np

from handouts.wording.stored import load, save


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
