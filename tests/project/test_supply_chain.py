"""What is installed is what was locked, and nothing has changed it since."""

import base64
import csv
import hashlib
import importlib.metadata
import json
import re
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.version import Version

ROOT = Path(__file__).resolve().parents[2]
LOCK = (ROOT / "handouts/first_run.lock").read_text("utf-8")


def locked(text):
    """From each package of a lock to its requirement; of one that is locked for several Pythons, that of this one."""
    found = list(map(Requirement, re.findall(r"^[a-z0-9].*?==[^\\]+", text, re.M)))
    here = {one.name: one for one in found if one.marker is None or one.marker.evaluate()}
    return {one.name: one for one in found} | here


LOCKED = locked(LOCK)
HERE = {
    re.sub(r"[-_.]+", "-", one.metadata["Name"]).lower(): one
    for one in importlib.metadata.distributions()
    if one.metadata["Name"]
}


@pytest.mark.parametrize("name", sorted(LOCKED.keys() & HERE.keys()))
def test_an_installed_package_is_the_one_of_its_wheel(name):
    # Recording installed projects (packaging.python.org): RECORD holds the hash
    # of each file as the wheel brought it.
    package = HERE[name]
    (pin,) = LOCKED[name].specifier
    assert Version(package.version) == Version(pin.version)
    rows = list(csv.reader((package.read_text("RECORD") or "").splitlines()))
    hashed = [(path, *told.split("=", 1)) for path, told, _ in rows if told]
    assert hashed, "no file has a hash"
    for path, kind, told in hashed:
        file = Path(str(package.locate_file(path)))
        # Scripts in bin/ are written at the installation, for this interpreter.
        if path.startswith("../"):
            continue
        found = base64.urlsafe_b64encode(hashlib.new(kind, file.read_bytes()).digest()).rstrip(b"=").decode()
        assert found == told, f"{file} is not what the wheel brought"


def test_nothing_is_locked_that_nobody_asked_for():
    # uv writes who asked for a package beneath it; without that line it came from nowhere.
    for block in re.split(r"^(?=[a-z0-9])", LOCK, flags=re.M)[1:]:
        assert re.search(r"^    # via\b", block, re.M), block.split("\n")[0]


@pytest.mark.parametrize("path", ["handouts/first_run.lock", "tests/requirements.lock"])
def test_an_extra_is_locked_with_its_package(path):
    # pip before 23.1 takes "name[extra]" and "name" for two packages when it checks hashes: with only
    # the second locked, the first newer release of the package breaks the installation.
    there = locked((ROOT / path).read_text("utf-8"))
    asked = [
        Requirement(line)
        for name in there.keys() & HERE.keys()
        for line in HERE[name].requires or ()
        if "extra ==" not in line
    ]
    for requirement in asked:
        if requirement.extras and requirement.name in there:
            assert requirement.extras <= there[requirement.name].extras, requirement
    assert any(requirement.extras for requirement in asked)


def test_every_package_of_the_page_checkers_has_its_hash():
    # npm's lock file, version 3: "integrity" is a hash by Subresource Integrity (W3C).
    packages = json.loads((ROOT / "tests/node/package-lock.json").read_text("utf-8"))["packages"]
    for name, told in packages.items():
        if name and not told.get("link"):
            assert re.fullmatch(r"sha512-[A-Za-z0-9+/]{86}==", told.get("integrity", "")), name
            assert "resolved" not in told or told["resolved"].startswith("https://"), name
