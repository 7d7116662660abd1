"""A real Chromium, and the checkers that run in it or beside it."""

from __future__ import annotations

import shutil
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, sync_playwright

NODE = Path(__file__).parents[1] / "node" / "node_modules"


@contextmanager
def chromium() -> Iterator[Browser]:
    """The system's Chromium, else the one that playwright brought."""
    with sync_playwright() as playwright:
        # Root may not use the sandbox, and a continuous integration job is root.
        browser = playwright.chromium.launch(executable_path=shutil.which("chromium"), args=["--no-sandbox"])
        yield browser
        browser.close()


def axe(page: Any, doubts: bool = True) -> list[str]:
    """What axe-core finds with every rule of WCAG 2.2 A to AAA and best practice.

    doubts: also what it cannot decide.
    """
    page.evaluate((NODE / "axe-core" / "axe.min.js").read_text("utf-8"))
    result = page.evaluate(
        """axe.run(document, {
          resultTypes: ["violations", "incomplete"],
          runOnly: {type: "tag", values: ["wcag2a", "wcag2aa", "wcag2aaa", "wcag21a", "wcag21aa", "wcag21aaa",
                                          "wcag22a", "wcag22aa", "wcag22aaa", "best-practice"]},
          rules: {"color-contrast-enhanced": {enabled: true}, "target-size": {enabled: true}}
        })"""
    )
    assert len(result["passes"]) > 20
    return [f"{found['id']}: {node['html']}" for kind in ("violations", *["incomplete"] * doubts) for found in result[kind] for node in found["nodes"]]


def spoken(page: Any) -> list[str]:
    """All that a virtual screen reader says from the top of the page to its end.

    The page must have been opened with `bypass_csp`, since its policy lets no
    other script in.
    """
    source = (NODE / "@guidepup" / "virtual-screen-reader" / "lib" / "esm" / "index.browser.js").read_text("utf-8")
    phrases: list[str] = page.evaluate(
        """async (source) => {
          const { virtual } = await import(URL.createObjectURL(new Blob([source], { type: "text/javascript" })));
          await virtual.start({ container: document.body });
          while ((await virtual.lastSpokenPhrase()) !== "end of document") await virtual.next();
          const said = await virtual.spokenPhraseLog();
          await virtual.stop();
          return said;
        }""",
        source,
    )
    return phrases


def nu_html(path: Path) -> str:
    """What the Nu HTML checker says, warnings too; "" when nothing."""
    jar = NODE / "vnu-jar" / "build" / "dist" / "vnu.jar"
    words = ["java", "-jar", jar, "--Werror", "--format", "gnu", path]
    return subprocess.run([str(word) for word in words], capture_output=True, text=True, check=False).stderr
