"""While a handout is made, neither a local file nor the network is asked for anything."""

from __future__ import annotations

import socket
import subprocess
import sys
import threading

import pytest

from handouts import carried
from tests.hostile.studios import ROOT, calm, handouts, lay_out


@pytest.fixture
def counter():
    """A real socket on loopback; gives its port and the list of what came to it."""
    came: list[bytes] = []
    server = socket.create_server(("127.0.0.1", 0))

    def serve() -> None:
        while True:
            try:
                connection, _ = server.accept()
            except OSError:
                return
            came.append(b"connected")
            connection.close()

    thread = threading.Thread(target=serve, daemon=True)
    thread.start()
    yield server.getsockname()[1], came
    server.shutdown(socket.SHUT_RDWR)
    server.close()
    thread.join()


def addresses(port: int) -> tuple[str, ...]:
    return (
        f"http://127.0.0.1:{port}/x.png", f"http://localhost:{port}/x.css", f"ftp://127.0.0.1:{port}/x", f"//127.0.0.1:{port}/x.png",
        "file:///etc/hostname", "/etc/hostname", "../../../etc/hostname", "data:image/svg+xml,<svg xmlns='http://www.w3.org/2000/svg'>"
        f"<script>fetch('http://127.0.0.1:{port}')</script><image href='http://127.0.0.1:{port}/y.png'/></svg>",
    )  # fmt: skip


def places(address: str) -> tuple[str, ...]:
    """Every place of a page through which WeasyPrint would load something."""
    return (
        f'<img src="{address}" alt="x">',
        f'<link rel="stylesheet" href="{address}">',
        f'<link rel="attachment" href="{address}">',
        f'<style>@import url("{address}");</style>',
        f"<style>@font-face {{ font-family: x; src: url('{address}') }} body {{ font-family: x }}</style>",
        f"<style>body {{ background: url('{address}') }}</style>",
        f'<object data="{address}">x</object>',
        f'<embed src="{address}">',
        f'<svg xmlns="http://www.w3.org/2000/svg"><image href="{address}" width="9" height="9"/><script>x</script></svg>',
        f'<a rel="attachment" href="{address}">x</a>',
        f'<base href="{address}"><img src="x.png" alt="x">',
    )


def test_a_template_that_loads_things_gets_nothing(counter, tmp_path):
    # The worst case: a template of the studio's own that asks for everything.
    port, came = counter
    folder = lay_out(tmp_path / "studio", "C6")
    (folder / "templates").mkdir(exist_ok=True)
    before = (carried.templates() / "print.html.j2").read_text("utf-8")
    assert before.count("</body>") == 1
    loads = "".join(place for address in addresses(port) for place in places(address))
    (folder / "templates" / "print.html.j2").write_text(before.replace("</body>", f"{{% raw %}}{loads}{{% endraw %}}</body>"), "utf-8")
    result = handouts("make", "C6", "--studio", folder, "--as", "print", "--jobs", "1")
    calm(result)
    assert came == []
    # What it asked for is told, and no sheet is made without it in silence.
    assert result.returncode == 2 and "not made" in result.stderr
    assert not list((folder / "out").rglob("*.pdf"))


def test_the_fetcher_serves_its_own_two_fonts_and_nothing_else(counter):
    from handouts.forms.print import _fetcher

    port, came = counter
    fetcher = _fetcher()
    for name in ("regular", "bold"):
        assert fetcher.fetch(f"handouts:font/{name}").read()[:4] == b"\x00\x01\x00\x00"  # TrueType (OpenType 1.9, "Font file")
    for address in (*addresses(port), "handouts:font/other", "handouts:../../models.py", ""):
        with pytest.raises(ValueError, match="nothing is fetched"):
            fetcher.fetch(address)
    assert came == []


def test_the_counter_counts(counter):
    port, came = counter
    socket.create_connection(("127.0.0.1", port)).close()
    while not came:
        pass
    assert came == [b"connected"]


def test_making_every_form_opens_no_connection_and_reads_no_file_of_others(tmp_path):
    """Python's own audit events tell of every connection and every file that is opened."""
    folder = lay_out(tmp_path / "studio", "C2", "C4", "C6")
    code = (
        "import sys\n"
        "seen = []\n"
        "def hear(event, given):\n"
        "    if event.startswith(('socket.connect', 'socket.getaddrinfo', 'socket.bind', 'urllib.')):\n"
        "        seen.append(event)\n"
        "    elif event == 'open' and isinstance(given[0], str) and given[0].startswith(('/home', '/etc/passwd', '/etc/shadow')):\n"
        "        seen.append(given[0])\n"
        "sys.addaudithook(hear)\n"
        "from handouts.cli import main\n"
        "try:\n"
        "    main()\n"
        "finally:\n"
        "    print('SEEN', seen)\n"
    )
    words = ["make", "--studio", str(folder), "--jobs", "1", "--quiet"]
    result = subprocess.run([sys.executable, "-c", code, *words], capture_output=True, text=True, cwd=ROOT)
    assert result.stdout.strip().split("\n")[-1] == "SEEN []", result.stdout + result.stderr
    assert {path.suffix for path in (folder / "out").rglob("*-sheet.*")} >= {".pdf", ".html", ".brf"}
