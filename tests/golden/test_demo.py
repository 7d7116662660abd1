"""The demo comes out as it was read and approved: word for word, cell for cell.

The expected files were read by eye when they were written; after a change on
purpose, `python tests/golden/demo.py` writes them anew.
"""

import importlib.util
from pathlib import Path

import pytest

SPEC = importlib.util.spec_from_file_location("golden_demo", Path(__file__).with_name("demo.py"))
demo = importlib.util.module_from_spec(SPEC)
SPEC.loader.exec_module(demo)


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    out = tmp_path_factory.mktemp("golden")
    demo.make_demo(out)
    return dict(demo.outputs(out))


EXPECTED = sorted(path.name for path in demo.KEPT.iterdir())


def test_the_same_files_are_made(made):
    assert sorted(made) == EXPECTED


@pytest.mark.parametrize("name", EXPECTED)
def test_a_file_says_what_it_said(made, name):
    assert made[name] == (demo.KEPT / name).read_text("utf-8")
