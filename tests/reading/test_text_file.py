"""Bytes to text: read where the meaning is clear, refused with a way out where not."""

import os

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from handouts.errors import StudioFaults
from handouts.reading.text_file import LARGEST_TEXT, decode_text, read_text


def fault_of(path, shown="file.md", **bounds):
    with pytest.raises(StudioFaults) as caught:
        read_text(path, shown, **bounds)
    (fault,) = caught.value.faults
    assert fault.path == shown
    return fault


@pytest.fixture
def written(tmp_path):
    def write(data):
        path = tmp_path / "file.md"
        path.write_bytes(data)
        return path

    return write


@pytest.mark.parametrize(
    ("data", "text"),
    [
        (b"a\nb\n", "a\nb\n"),
        (b"a\r\nb\r\n", "a\nb\n"),  # Windows
        (b"a\rb\r", "a\nb\n"),  # the old Macintosh
        (b"a\r\n\nb\r", "a\n\nb\n"),
        (b"\xef\xbb\xbfa\n", "a\n"),  # a byte-order mark
        (b"\xef\xbb\xbf\xef\xbb\xbf", None),
        ("é « 2 kg », 90 °\n".encode(), "é « 2 kg », 90 °\n"),
        ("2\u00a0kg\n".encode(), "2\u00a0kg\n"),
        (b"\ta\n", "\ta\n"),
        (b"", ""),
    ],
)
def test_what_is_read(written, data, text):
    if text is None:
        fault_of(written(data))
    else:
        assert read_text(written(data), "file.md") == text


def test_latin_1_is_refused_with_its_line_and_a_way_to_save(written):
    fault = fault_of(written("title: a\r\nnote: genou pli\xe9 \xe0 90\r\n".encode("latin-1")))
    assert fault.line == 2
    assert "near 'note: genou pli_ _ 90'" in fault.wrong
    assert "UTF-8" in fault.instead


@pytest.mark.parametrize(
    "data",
    [
        b"\xff",
        b"a\n\xc3",
        b"a\n\xed\xa0\x80",  # half of a surrogate pair: RFC 3629, section 3
        b"a\n\xc0\xaf",  # overlong: RFC 3629, section 3
        b"a\n\xf4\x90\x80\x80",  # beyond U+10FFFF
    ],
)
def test_other_bytes_that_are_no_utf_8_are_refused(written, data):
    fault = fault_of(written(data))
    assert fault.line == data.count(b"\n") + 1
    assert "UTF-8" in fault.wrong


@pytest.mark.parametrize("encoding", ["utf-16", "utf-16-le", "utf-16-be", "utf-32"])
def test_utf_16_and_its_like_are_refused(written, encoding):
    fault = fault_of(written("title: a\n".encode(encoding)))
    assert "UTF-16" in fault.wrong or "zero bytes" in fault.wrong
    assert "UTF-8" in fault.instead


def test_a_zero_byte_is_refused_with_its_line(written):
    assert fault_of(written(b"a\nb\0c\n")).line == 2


def test_a_picture_is_refused(written):
    assert fault_of(written(b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR"))


@pytest.mark.parametrize(
    ("sign", "name"),
    [
        ("\u200b", "zero width space"),
        ("\u00ad", "soft hyphen"),
        ("\ufeff", "zero width no-break space"),
        ("\u202e", "right-to-left override"),
        ("\u2028", "line separator"),
        ("\x0b", "a control character"),
        ("\x85", "a control character"),
        ("\x7f", "a control character"),
        ("\ue000", "without a name"),
    ],
)
def test_characters_that_nobody_can_read_are_told_by_name_and_line(written, sign, name):
    fault = fault_of(written(f"a\nsit {sign}down\n".encode()))
    assert fault.line == 2
    assert name in fault.wrong and "after 'sit'" in fault.wrong
    assert str(fault).isprintable()


def test_every_line_with_such_a_character_is_told(written):
    with pytest.raises(StudioFaults) as caught:
        read_text(written("a\u200b\nb\nc\u200b\n".encode()), "f")
    assert [fault.line for fault in caught.value.faults] == [1, 3]


def test_a_file_over_the_bound_is_refused_without_reading_it_all(written):
    assert "larger than" in fault_of(written(b"a" * (LARGEST_TEXT + 1))).wrong
    assert read_text(written(b"a" * LARGEST_TEXT), "f")
    assert fault_of(written(b"aaaa"), largest=3)


def test_a_huge_file_is_refused(tmp_path):
    path = tmp_path / "huge.md"
    with path.open("wb") as file:
        file.truncate(50_000_000)
    assert "larger than" in fault_of(path).wrong


def test_what_is_no_file_is_refused(tmp_path):
    assert "no such file" in fault_of(tmp_path / "none.md").wrong
    assert "folder" in fault_of(tmp_path).wrong
    (tmp_path / "loop").symlink_to("loop")
    assert "cannot be opened" in fault_of(tmp_path / "loop").wrong
    (tmp_path / "gone").symlink_to("nowhere")
    assert "no such file" in fault_of(tmp_path / "gone").wrong


def test_a_named_pipe_does_not_hang(tmp_path):
    os.mkfifo(tmp_path / "pipe")
    assert "not an ordinary file" in fault_of(tmp_path / "pipe").wrong


def test_a_file_that_may_not_be_read_says_so(tmp_path, monkeypatch):
    # The tests may run as root, who may read everything.
    def refuse(*_):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(os, "open", refuse)
    assert "may not read" in fault_of(tmp_path / "any.md").wrong


@settings(max_examples=300, deadline=None)
@given(data=st.binary(max_size=60))
def test_any_bytes_are_read_or_refused(data):
    try:
        text = decode_text(data, "f")
    except StudioFaults as problem:
        assert problem.faults
        assert all(str(fault).isprintable() for fault in problem.faults)
    else:
        assert "\r" not in text and "\0" not in text
        assert text.encode() == data.removeprefix(b"\xef\xbb\xbf").replace(b"\r\n", b"\n").replace(b"\r", b"\n")
