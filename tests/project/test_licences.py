"""What comes along with the program may be passed on, and cannot be swapped in silence."""

import importlib.metadata
import re
from pathlib import Path

import pytest
from packaging.requirements import Requirement

ROOT = Path(__file__).resolve().parents[2]
# SPDX License List names, and the older classifiers of the Python index.
FREE = re.compile(
    r"MIT|BSD|0BSD|Apache|PSF|Python Software Foundation|MPL|Mozilla|OFL|Zlib|CC0|Unlicense|ISC|LGPL|HPND|Public Domain", re.I
)


def blocks(name):
    text = (ROOT / name).read_text("utf-8")
    return re.split(r"^(?=[a-z0-9])", text, flags=re.M)[1:]


def licence(name):
    told = importlib.metadata.metadata(name)
    classified = [line for line in told.get_all("Classifier") or () if line.startswith("License ::")]
    return "; ".join(filter(None, (told.get("License-Expression"), *classified, (told.get("License") or "").split("\n")[0])))


def wanted_here(block):
    marker = Requirement(block.split(" \\")[0]).marker
    return marker is None or marker.evaluate()


INSTALLED = sorted(re.match(r"[a-z0-9_.-]+", block)[0] for block in blocks("handouts/first_run.lock") if wanted_here(block))


@pytest.mark.parametrize("name", INSTALLED)
def test_every_package_that_the_program_needs_may_be_passed_on(name):
    assert FREE.search(licence(name)), f"{name}: {licence(name) or 'no licence told'}"


@pytest.mark.parametrize("lock", ["handouts/first_run.lock", "tests/requirements.lock"])
def test_every_locked_file_has_a_hash_that_names_it_alone(lock):
    for block in blocks(lock):
        hashes = re.findall(r"--hash=(\S+)", block)
        assert hashes and all(re.fullmatch("sha256:[0-9a-f]{64}", one) for one in hashes), block[:60]
        assert len(set(hashes)) == len(hashes)
        # One exact version from the index: no address, no folder, no branch.
        assert re.match(r"[a-z0-9_.-]+(?:\[[a-z,]+\])?==[0-9][\w.!+]*(?: ;.*)? \\\n", block), block[:80]
