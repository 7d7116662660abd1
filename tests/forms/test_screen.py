"""The page in a real Chromium: checkers, keyboard, phone width, the log form.

Sources: WCAG 2.2 by success criterion, named beside each check.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
import wcag_contrast_ratio
from lxml import html as lxml_html
from playwright.sync_api import Browser, Page

from handouts.forms import Look, log_text, screen
from handouts.models import ScreenForm
from tests.forms import trees
from tests.forms.browser import axe, chromium, nu_html, spoken

NAMES = ["usual", "log alone", "two languages", "long table", "nested lists", "long words"]


@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    with chromium() as running:
        yield running


@pytest.fixture(scope="module")
def files(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    folder = tmp_path_factory.mktemp("pages")
    made = {}
    for name in NAMES:
        made[name] = folder / f"{name.replace(' ', '-')}.html"
        made[name].write_bytes(screen.render(trees.AWKWARD[name](), ScreenForm(), Look()).data)
    return made


@pytest.fixture
def open_page(browser: Browser, files: dict[str, Path]) -> Iterator[Callable[..., Page]]:
    contexts = []

    def opened(name: str = "usual", width: int = 390, **settings: Any) -> Page:
        context = browser.new_context(viewport={"width": width, "height": 844}, accept_downloads=True, **settings)
        contexts.append(context)
        page = context.new_page()
        page.faults = []  # type: ignore[attr-defined]
        page.on("console", lambda message: page.faults.append(message.text))  # type: ignore[attr-defined]
        page.on("pageerror", lambda problem: page.faults.append(str(problem)))  # type: ignore[attr-defined]
        page.on("request", lambda request: page.faults.append(request.url) if "html" not in request.url else None)  # type: ignore[attr-defined]
        page.goto(files[name].as_uri())
        return page

    yield opened
    for context in contexts:
        context.close()


@pytest.mark.parametrize("name", NAMES)
def test_the_nu_html_checker_says_nothing(name: str, files: dict[str, Path]) -> None:
    assert nu_html(files[name]) == ""


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [390, 1280])
@pytest.mark.parametrize("name", NAMES)
def test_axe_finds_nothing(name: str, width: int, scheme: str, open_page: Callable[..., Page]) -> None:
    page = open_page(name, width, color_scheme=scheme)
    page.evaluate("document.querySelectorAll('details').forEach((each) => { each.open = true })")
    # What is scrolled out of sight cannot be measured: words of 80 letters in a table.
    assert axe(page, doubts=name != "long words") == []
    assert page.faults == []  # type: ignore[attr-defined]


@pytest.mark.parametrize("name", NAMES)
def test_nothing_scrolls_sideways_on_a_narrow_phone(name: str, open_page: Callable[..., Page]) -> None:
    """1.4.10: 320 px, which is also 1280 px at 400 %; 1.4.12: text spacing."""
    page = open_page(name, 320)
    spacing = "* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important } p { margin-bottom: 2em !important }"
    for style in ("", spacing):
        if style:
            page.evaluate("(css) => { const s = document.createElement('style'); s.textContent = css; document.head.append(s) }", style)
        wide = page.evaluate("[...document.querySelectorAll('body *')].filter((e) => e.getBoundingClientRect().right > 321 && !e.closest('table')).map((e) => e.outerHTML.slice(0, 80))")
        assert wide == []
        assert page.evaluate("document.documentElement.scrollWidth") <= 320


def test_targets_are_large(open_page: Callable[..., Page]) -> None:
    """2.5.5: 44 px, for everything but links within a sentence."""
    page = open_page("usual", 320)
    page.evaluate("document.querySelectorAll('details').forEach((each) => { each.open = true })")
    small = page.evaluate(
        """[...document.querySelectorAll("a, button, input, select, textarea, summary")]
        .filter((e) => e.offsetParent && !e.classList.contains("skip"))
        .filter((e) => { const r = e.getBoundingClientRect(); return r.width < 44 || r.height < 44 }).map((e) => e.outerHTML)"""
    )
    assert small == []


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_contrast_by_a_reference_library(scheme: str, open_page: Callable[..., Page]) -> None:
    """1.4.6: 7:1 for text and links; 1.4.11: 3:1 for rules and borders."""
    page = open_page("usual", color_scheme=scheme)
    colours = page.evaluate(
        """Object.fromEntries(["ink", "paper", "link", "rule"].map((name) => {
          const probe = document.createElement("span"); probe.style.color = `var(--${name})`; document.body.append(probe);
          const [r, g, b] = getComputedStyle(probe).color.match(/[0-9.]+/g).map(Number); probe.remove(); return [name, [r / 255, g / 255, b / 255]] }))"""
    )
    for name, least in (("ink", 7), ("link", 7), ("rule", 3)):
        assert wcag_contrast_ratio.rgb(tuple(colours[name]), tuple(colours["paper"])) >= least


def test_forced_colours_and_reduced_motion(open_page: Callable[..., Page]) -> None:
    page = open_page("usual", forced_colors="active", reduced_motion="reduce")
    borders = page.evaluate("[...document.querySelectorAll('.caution, .dose, button, fieldset')].map((e) => getComputedStyle(e).borderTopWidth)")
    assert borders and all(float(width[:-2]) >= 2 for width in borders)
    assert page.evaluate("document.getAnimations().length") == 0


def test_print_style_leaves_out_what_is_only_for_the_screen(open_page: Callable[..., Page]) -> None:
    page = open_page("usual")
    page.emulate_media(media="print")
    shown = page.evaluate("(names) => names.filter((n) => [...document.querySelectorAll(n)].some((e) => e.offsetParent))", ["nav", "button", ".skip", ".question"])
    assert shown == []
    assert page.locator("fieldset").first.is_visible()


def test_text_size_is_announced_and_kept(open_page: Callable[..., Page]) -> None:
    page = open_page("usual")
    size = "parseFloat(getComputedStyle(document.documentElement).fontSize)"
    before = page.evaluate(size)
    page.get_by_role("button", name="Larger text").press("Enter")
    page.get_by_role("button", name="Larger text").press("Enter")
    assert page.locator("#text_said").inner_text() == "Text size 150 percent"
    assert page.evaluate(size) == pytest.approx(before * 1.5)
    page.reload()
    assert page.evaluate(size) == pytest.approx(before * 1.5)


# --- structure and speech ----------------------------------------------------


def test_structure(files: dict[str, Path]) -> None:
    """1.3.1, 2.4.1, 2.4.6, 3.1.1, 3.1.2."""
    page = lxml_html.parse(str(files["usual"])).getroot()
    assert page.get("lang") == "en"
    assert [len(page.findall(f".//{tag}")) for tag in ("main", "h1", "nav", "header")] == [1, 1, 1, 1]
    levels = [int(each.tag[1]) for each in page.iter("h1", "h2", "h3", "h4")]
    assert levels[0] == 1 and all(after <= before + 1 for before, after in pairwise(levels))
    assert page.find("body")[0].get("href") == "#title"
    for link in page.findall(".//nav//a"):
        assert page.xpath(f"//h2[@id='{link.get('href')[1:]}']")
    mixed = lxml_html.parse(str(files["two languages"])).getroot()
    assert {each.get("lang") for each in mixed.find("body").iter() if each.get("lang")} == {"fr", "de"}


def test_measures_are_spoken_in_full_and_once(files: dict[str, Path]) -> None:
    for name in ("usual", "log alone"):
        page = lxml_html.parse(str(files[name])).getroot()
        text = " ".join(page.find("body").itertext())
        assert not page.findall(".//abbr") and page.find(".//main//h1").get("aria-label") is None
        assert not re.search(r"\d\s?(lb|kg|min|s)\b|\d–\d", re.sub(r"<script.*?</script>", "", text, flags=re.S).split('"use strict"')[0])
        assert "15 pounds" in text and "10 to 12 repetitions" in text


def test_tables_have_captions_and_headers(files: dict[str, Path]) -> None:
    page = lxml_html.parse(str(files["long table"])).getroot()
    (table,) = page.findall(".//main//table")
    assert table.find("caption").text == "Every session of the season"
    assert all(each.get("scope") in ("col", "row") for each in table.iter("th"))


def test_accessible_names_of_the_form(open_page: Callable[..., Page]) -> None:
    """2.4.6, 3.3.2, 4.1.2: what a screen reader is told, from Chromium's own tree."""
    page = open_page("usual")
    tree = page.locator("form").aria_snapshot()
    for line in (
        'form "Training log"',
        'group "1 Goblet squat: to chair height (asked: 15 pounds, 10 to 12 repetitions)"',
        'textbox "Weight, pounds"',
        'textbox "Repetitions in each set, right"',
        'combobox "How hard it felt, 0 to 10"',
        'button "Start the time"',
        'button "Save my log"',
        'button "Copy my log as text"',
    ):
        assert line in tree, tree


def test_what_a_virtual_screen_reader_says(open_page: Callable[..., Page]) -> None:
    """In order, in full words, and nothing twice (checked with the package
    @guidepup/virtual-screen-reader)."""
    said = spoken(open_page("usual", bypass_csp=True))
    wanted = [
        "link, Skip to the session",
        "navigation, Contents",
        "link, Exercise 2 of 3: One-arm supported row",
        "heading, Circuit at home, level 1",
        "heading, When to stop, level 2",
        "heading, Exercise 1 of 3: Goblet squat: to chair height, level 2",
        "10 to 12 repetitions, 15 pounds held in both hands",
        "heading, Equipment, level 3",
        "form, Training log",
        "group, 1 Goblet squat: to chair height (asked: 15 pounds, 10 to 12 repetitions)",
        "textbox, Weight, pounds",
        "button, Start the time",
        "textbox, Total time, minutes",
        "button, Save my log",
        "button, Copy my log as text",
    ]
    at = [said.index(phrase) for phrase in wanted]
    assert at == sorted(at)
    # A date and a file field have no role in ARIA: after its label the reader
    # names each without one.
    doubled = [one for one, other in pairwise(said) if one == other]
    assert set(doubled) <= {"Date", "Take up a saved log again"}


def test_without_script_the_table_is_there_to_read(browser: Browser, files: dict[str, Path]) -> None:
    context = browser.new_context(java_script_enabled=False, viewport={"width": 320, "height": 800})
    page = context.new_page()
    page.goto(files["log alone"].as_uri())
    assert page.get_by_role("table", name="What to write down").is_visible()
    assert not page.locator("form").is_visible()
    assert page.get_by_role("button").count() == 0
    assert "2 One-arm supported row (asked: 15 pounds, 10 to 12 repetitions)" in page.locator("table").inner_text()
    context.close()


# --- the keyboard ------------------------------------------------------------


def test_the_keyboard_reaches_all_in_order(open_page: Callable[..., Page]) -> None:
    """2.1.1, 2.1.2, 2.4.3, 2.4.7."""
    page = open_page("log alone")
    reached = []
    for _ in range(80):
        page.keyboard.press("Tab")
        here = page.evaluate("document.activeElement === document.body ? '' : document.activeElement.id || document.activeElement.className")
        if not here:
            break
        # A date has three parts and a button, each a stop of its own, of which
        # the browser draws the focus on the last.
        if not reached or reached[-1] != here:
            assert page.evaluate("getComputedStyle(document.activeElement).outlineStyle") != "none"
            reached.append(here)
    wanted = page.evaluate("[...document.querySelectorAll('a, button, input, select, textarea')].filter((e) => e.offsetParent || e.className === 'skip').map((e) => e.id || e.className)")
    assert reached == wanted
    assert reached[0] == "skip" and "log_save" in reached


def test_the_skip_link_goes_to_the_title(open_page: Callable[..., Page]) -> None:
    page = open_page("usual")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.id") == "title"


# --- the log -----------------------------------------------------------------


def fill_in(page: Page) -> None:
    page.get_by_label("Weight, pounds").nth(0).fill("15")
    page.get_by_label("Repetitions in each set").nth(0).fill("12 11 10")
    row = page.get_by_role("group", name="2 One-arm supported row")
    row.get_by_label("Repetitions in each set, left").fill("skip")
    page.get_by_label("Date").fill("2029-01-09")
    page.get_by_label("Total time, minutes").fill("41")
    page.get_by_label("How hard it felt").select_option("7")
    page.get_by_label("Pain: no, or where").fill("no")


def test_what_is_written_is_kept_when_the_page_goes_away(open_page: Callable[..., Page]) -> None:
    page = open_page("usual")
    fill_in(page)
    page.reload()
    assert page.get_by_label("Repetitions in each set").nth(0).input_value() == "12 11 10"
    page.once("dialog", lambda dialog: dialog.dismiss())
    page.get_by_role("button", name="Empty the log").click()
    assert page.get_by_label("Total time, minutes").input_value() == "41"
    page.once("dialog", lambda dialog: dialog.accept())
    page.get_by_role("button", name="Empty the log").click()
    assert page.locator("#log_said").inner_text() == "The log is empty."
    page.reload()
    assert page.get_by_label("Total time, minutes").input_value() == ""


def test_a_device_without_storage_keeps_it_over_a_reload_and_says_so(browser: Browser, files: dict[str, Path]) -> None:
    context = browser.new_context()
    context.add_init_script("Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError') } })")
    page = context.new_page()
    page.goto(files["usual"].as_uri())
    assert "keeps nothing" in page.locator("#log_kept").inner_text()
    fill_in(page)
    page.reload()
    assert page.get_by_label("Total time, minutes").input_value() == "41"
    context.close()


def test_the_clock_goes_on_while_the_phone_sleeps(open_page: Callable[..., Page]) -> None:
    page = open_page("usual")
    begin = 1_862_640_000  # 9 January 2029
    page.clock.set_fixed_time(begin)
    page.reload()
    button = page.locator("#log_timer")
    button.press("Space")
    assert button.inner_text() == "Stop the time"
    assert page.locator("#log_timer_said").inner_text() == "The time runs."
    page.clock.set_fixed_time(begin + 25 * 60 + 24)
    page.reload()
    assert button.inner_text() == "Stop the time"
    button.press("Space")
    assert page.locator("#log_timer_said").inner_text().startswith("Stopped: 25 minutes 24 seconds.")
    assert page.get_by_label("Total time, minutes").input_value() == "25 min 24 s"
    # Polite, and silent while it runs: the clock that ticks is hidden from speech.
    assert page.locator("#log_timer_said").get_attribute("role") == "status"
    assert page.locator("#log_clock").get_attribute("aria-hidden") == "true"


EXPECTED = """\
Training log [handouts log 1]
Client: C1
Session [plan]: P1 version 2
Date: 2029-01-09

Exercise 2 [exercise one-arm-supported-row]: One-arm supported row
I did not understand this [unclear]: yes
Which part [part]: start-position
Your question [question]: Which foot (left?) is in front?
Repetitions in each set, left [reps left]: skip

Exercise 1 [exercise goblet-squat]: Goblet squat: to chair height
Weight: 15 lb
Repetitions in each set [reps]: 12 11 10

The whole session [session]
Total time [time]: 41 min
How hard it felt, 0 to 10 [effort]: 7
Pain: no, or where [pain]: no
End of the log [end of log]
"""


def ask(page: Page) -> None:
    asked = page.locator("details", has_text="One-arm supported row")
    asked.locator("summary").press("Enter")
    asked.get_by_label("I did not understand this").check()
    asked.get_by_label("Which part").select_option("start-position")
    asked.get_by_label("Your question", exact=True).fill("Which foot [left?]\nis in front?")


def test_save_my_log(open_page: Callable[..., Page], tmp_path: Path) -> None:
    page = open_page("usual")
    fill_in(page)
    ask(page)
    with page.expect_download() as download:
        page.get_by_role("button", name="Save my log").press("Enter")
    assert download.value.suggested_filename == "log-C1-P1-v2-2029-01-09.txt"
    download.value.save_as(tmp_path / "log.txt")
    text = (tmp_path / "log.txt").read_text("utf-8")
    assert sorted(text.splitlines()) == sorted(EXPECTED.splitlines())
    assert page.locator("#log_said").inner_text() == "Saved as log-C1-P1-v2-2029-01-09.txt."
    log = log_text.read(text)
    assert (log.client, log.plan, log.version, log.date) == ("C1", "P1", 2, "2029-01-09")
    said = {(part.exercise, field.name): field.text for part in log.parts for field in part.fields}
    assert said == {
        ("one-arm-supported-row", "unclear"): "yes",
        ("one-arm-supported-row", "part"): "start-position",
        ("one-arm-supported-row", "question"): "Which foot (left?) is in front?",
        ("one-arm-supported-row", "reps_left"): "skip",
        ("goblet-squat", "weight"): "15 lb",
        ("goblet-squat", "reps"): "12 11 10",
        ("session", "time"): "41 min",
        ("session", "effort"): "7",
        ("session", "pain"): "no",
    }
    # Written again by the program's own writer it is the same text.
    assert log_text.write(log) == text
    # And the page takes it up again, wrapped and quoted by a mail program too.
    page.once("dialog", lambda dialog: dialog.accept())
    page.get_by_role("button", name="Empty the log").click()
    quoted = "Dear Ilse,\r\n" + "".join(f"> {row}\r\n" for row in text.splitlines()) + "-- \r\nNoor\r\n"
    (tmp_path / "mail.txt").write_bytes(quoted.encode())
    page.get_by_label("Take up a saved log again").set_input_files(tmp_path / "mail.txt")
    page.get_by_text("The saved log is in the fields.").wait_for()
    with page.expect_download() as again:
        page.get_by_role("button", name="Save my log").click()
    again.value.save_as(tmp_path / "again.txt")
    assert (tmp_path / "again.txt").read_text("utf-8") == text
    assert page.faults == [] or all(fault.startswith("blob:") for fault in page.faults)  # type: ignore[attr-defined]


def test_copy_my_log_as_text(browser: Browser, files: dict[str, Path]) -> None:
    for allowed in (["clipboard-read", "clipboard-write"], []):
        context = browser.new_context(permissions=allowed)
        page = context.new_page()
        page.goto(files["usual"].as_uri())
        fill_in(page)
        if not allowed:
            page.evaluate("navigator.clipboard.writeText = () => Promise.reject(new Error('no')); document.execCommand = () => false")
        page.get_by_role("button", name="Copy my log as text").press("Enter")
        if allowed:
            page.wait_for_function("document.getElementById('log_said').textContent.startsWith('Copied')")
            assert log_text.read(page.evaluate("navigator.clipboard.readText()")).client == "C1"
        else:
            page.wait_for_function("document.getElementById('log_said').textContent !== ''")
            assert "does not let the page copy" in page.locator("#log_said").inner_text()
            assert page.evaluate("document.activeElement.id") == "log_text"
            assert log_text.read(page.locator("#log_text").input_value()).client == "C1"
        context.close()


def test_a_log_of_another_session_is_not_taken_up(open_page: Callable[..., Page], tmp_path: Path) -> None:
    page = open_page("usual")
    page.get_by_label("Total time, minutes").fill("12")
    (tmp_path / "other.txt").write_text(EXPECTED.replace("P1 version 2", "P1 version 1"), "utf-8")
    page.get_by_label("Take up a saved log again").set_input_files(tmp_path / "other.txt")
    page.get_by_text("This file is no log of this session.").wait_for()
    assert page.get_by_label("Total time, minutes").input_value() == "12"


def test_the_page_says_what_the_handout_says(files: dict[str, Path]) -> None:
    from handouts.handout import LogSheet, Paragraph, plain, walk

    page = lxml_html.parse(str(files["usual"])).getroot()
    text = " ".join(page.find(".//main").text_content().split())
    at = 0
    for block in walk(trees.usual().blocks):
        if isinstance(block, LogSheet):
            continue
        if isinstance(block, Paragraph) or hasattr(block, "content"):
            said = " ".join(plain(block.content, long=True).split())
            assert said in text[at:], said
            at = text.index(said, at) + len(said)
