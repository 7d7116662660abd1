"""A file is written whole or not at all, for its owner's eyes alone."""

import os
import stat

import pytest

from handouts.making.writing import write_whole


def test_the_file_and_its_folders_are_the_owners_alone(tmp_path):
    path = tmp_path / "C1" / "P1-v1" / "sheet.pdf"
    write_whole(path, b"words")
    assert path.read_bytes() == b"words"
    assert stat.S_IMODE(path.stat().st_mode) == 0o600
    assert stat.S_IMODE(path.parent.stat().st_mode) == 0o700


def test_nothing_stays_behind_when_the_place_is_taken(tmp_path):
    (tmp_path / "sheet.pdf").mkdir()
    with pytest.raises(OSError):
        write_whole(tmp_path / "sheet.pdf", b"words")
    assert os.listdir(tmp_path) == ["sheet.pdf"]


def test_an_equal_file_is_left_untouched(tmp_path):
    path = tmp_path / "sheet.html"
    write_whole(path, b"words")
    before = path.stat()
    write_whole(path, b"words")
    assert (path.stat().st_mtime_ns, path.stat().st_ino) == (before.st_mtime_ns, before.st_ino)
    write_whole(path, b"other words")
    assert path.read_bytes() == b"other words"
