"""The door to liblouis: where it is found, who may use it, what loading costs."""

from __future__ import annotations

import subprocess
import sys
import threading
from pathlib import Path

import pytest

import handouts.braille.liblouis as door
from handouts.braille import translate
from handouts.braille.codes import find_code
from handouts.braille.layout import lay_out
from handouts.braille.pages import Paper
from handouts.errors import MissingLibrary
from tests.braille.sheets import SHEET

ROOT = Path(__file__).parents[2]


def _python(program: str, **environment: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-c", program],
        capture_output=True,
        text=True,
        check=False,
        cwd=ROOT,
        env={"PATH": "/usr/bin:/bin", **environment},
    )


def test_it_is_found_from_an_environment_that_does_not_see_the_systems_packages() -> None:
    # -I leaves out the working folder and every PYTHON variable.
    program = (
        "import sys; sys.path.insert(0, '.')\n"
        "try:\n import louis\nexcept ImportError:\n pass\n"
        "from handouts.braille import translate; print(translate('squat'))"
    )
    assert _python(program).stdout == "⠎⠟⠥⠁⠞\n"


def test_importing_the_package_loads_neither_liblouis_nor_the_layout() -> None:
    program = (
        "import sys, handouts.braille\n"
        "print([name for name in sys.modules if name in ('louis', 'ctypes', 'yaml', 'pydantic')"
        " or name.startswith('handouts.braille.')])"
    )
    assert _python(program).stdout == "[]\n"


def test_a_table_path_in_the_environment_changes_nothing(tmp_path: Path) -> None:
    (tmp_path / "en-ueb-g2.ctb").write_text("letter a 1\n")
    result = _python("from handouts.braille import translate; print(translate('the'))", LOUIS_TABLEPATH=str(tmp_path))
    assert result.stdout == "⠮\n", result.stderr


def test_without_liblouis_the_message_says_what_to_install(tmp_path: Path) -> None:
    # A folder with a package of that name that cannot load its library.
    broken = tmp_path / "louis"
    broken.mkdir()
    (broken / "__init__.py").write_text("raise OSError('liblouis.so.20: cannot open shared object file')\n")
    program = (
        "from pathlib import Path\n"
        "import handouts.braille.liblouis as door\n"
        f"door._folders = lambda: iter([Path({str(tmp_path / 'empty')!r}), Path({str(tmp_path)!r})])\n"
        "from handouts.braille import translate\n"
        "from handouts.errors import MissingLibrary\n"
        "try:\n translate('a')\nexcept MissingLibrary as problem:\n print(problem)"
    )
    message = _python(program).stdout
    assert "braille needs liblouis" in message and "cannot open shared object file" in message
    assert "install" in message and "print and screen forms work without it" in message


@pytest.mark.parametrize(
    ("platform", "file", "expected"),
    [
        ("darwin", "", "brew install liblouis"),
        ("linux", "/etc/debian_version", "apt-get install python3-louis liblouis-data"),
        ("linux", "/etc/fedora-release", "dnf install python3-louis"),
        ("linux", "", "never from PyPI"),
    ],
)
def test_each_system_has_its_own_advice(
    platform: str, file: str, expected: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys, "platform", platform)
    monkeypatch.setattr(Path, "exists", lambda self: str(self) == file)
    assert expected in door._advice()


def test_an_unrelated_package_of_that_name_is_passed_over(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    other = tmp_path / "louis"
    other.mkdir()
    (other / "__init__.py").write_text("print_louis = print\n")
    monkeypatch.setattr(door, "_folders", lambda: iter([tmp_path]))
    with pytest.raises(MissingLibrary, match="not found"):
        door._load_module()


def test_threads_wait_for_each_other() -> None:
    """Eight threads that use liblouis at once end the process (liblouis issue
    543); through the one owner they get the same cells as one thread."""
    program = (
        "import threading\n"
        "from handouts.braille import translate\n"
        "words = ['the shoulder blades %d x 12' % n for n in range(150)]\n"
        "right, wrong = [], []\n"
        "def work():\n"
        " for word in words:\n"
        "  for grade in (1, 2):\n"
        "   translate(word, grade=grade)\n"
        " right.append([translate(word) for word in words])\n"
        "threads = [threading.Thread(target=work) for _ in range(8)]\n"
        "[thread.start() for thread in threads]; [thread.join() for thread in threads]\n"
        "print(len(right), all(one == right[0] for one in right))"
    )
    result = _python(program)
    assert (result.returncode, result.stdout) == (0, "8 True\n"), result.stderr


def test_there_is_one_owner_whoever_asks_first() -> None:
    found: list[door.Liblouis] = []
    threads = [threading.Thread(target=lambda: found.append(door.owner())) for _ in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len({id(one) for one in found}) == 1


def test_the_same_words_again_give_the_same_pages() -> None:
    code = find_code("ueb", 2)
    assert lay_out(SHEET, code, Paper()) == lay_out(SHEET, code, Paper())
    assert translate("shoulder") == translate("shoulder")
