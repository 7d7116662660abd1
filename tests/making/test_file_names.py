"""Names on disk are safe whatever a client is called."""

import unicodedata

from hypothesis import given
from hypothesis import strategies as st

from handouts.making.file_names import safe_name, safe_names

HOSTILE = ["../../etc/passwd", "CON", "con", "a/b", "x" * 300, "نور", "💪", "é", "e\u0301", "", ".", "..", "a\x00b", " C1 "]


def test_a_plain_code_stays_as_it_is():
    assert safe_name("C1") == "C1"
    assert safe_name("anna-2") == "anna-2"


def test_hostile_names_become_one_plain_folder_each():
    safe = safe_names(HOSTILE)
    assert len({name.lower() for name in safe.values()}) == len(HOSTILE)
    for name in safe.values():
        assert name.isascii() and all(char.isalnum() or char == "-" for char in name), name
        assert 1 <= len(name) <= 57
        assert name.lower() not in ("con", "nul", "prn")


def test_names_that_differ_in_case_or_accent_form_alone_do_not_clash():
    # A file system may fold case (NTFS, APFS) or accent forms (HFS+).
    codes = ["Ana", "ANA", "Zoé", unicodedata.normalize("NFD", "Zoé")]
    assert len({name.lower() for name in safe_names(codes).values()}) == 4


@given(st.lists(st.text(max_size=60), unique=True, max_size=12))
def test_different_names_never_share_a_folder(names):
    safe = safe_names(names)
    assert len({name.lower() for name in safe.values()}) == len(names)
    assert all(name not in (".", "..") and "/" not in name and name for name in safe.values())
