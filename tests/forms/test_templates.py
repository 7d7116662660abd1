"""A trainer's own look: overriding, broken templates, the sandbox."""

from __future__ import annotations

import io
import re
import zipfile
from pathlib import Path
from typing import Any

import pytest

from handouts.errors import RenderError
from handouts.forms import Look, epub, screen, templating
from handouts.forms import print as print_form
from handouts.models import EpubForm, PrintForm, ScreenForm
from tests.forms.trees import usual


def page(look: Look) -> str:
    return screen.render(usual(), ScreenForm(), look).data.decode()


def test_a_folder_and_a_given_text_override_a_template(tmp_path: Path) -> None:
    (tmp_path / "screen.css.j2").write_text("/* from the folder */", "utf-8")
    assert "/* from the folder */" in page(Look(folders=(tmp_path,)))
    given = Look(folders=(tmp_path,), overrides=(("screen.css.j2", "/* given */"),))
    assert "/* given */" in page(given)


@pytest.mark.parametrize("form", ["print", "screen", "epub"])
def test_a_style_sheet_of_the_studio_comes_after_the_programs(form: str, tmp_path: Path) -> None:
    (tmp_path / f"{form}_more.css.j2").write_text("h2 { margin-top: 77px } /* {{ handout.client }} */", "utf-8")
    look = Look(folders=(tmp_path,))
    if form == "print":
        style = print_form.page_html(usual(), PrintForm(), look)
    elif form == "screen":
        style = page(look)
    else:
        with zipfile.ZipFile(io.BytesIO(epub.render(usual(), EpubForm(), look).data)) as book:
            style = book.read("EPUB/style.css").decode()
    own = style.index("h2 { margin-top: 77px } /* Noor */")
    assert own > style.index("h2") and own > style.rindex(".caution")


def test_a_template_sees_what_is_documented_and_no_more(monkeypatch: pytest.MonkeyPatch) -> None:
    seen: set[str] = set()
    rendered = templating._rendered

    def watched(look: Look, template: str, values: dict[str, Any]) -> Any:
        seen.update(values)
        return rendered(look, template, values)

    monkeypatch.setattr(templating, "_rendered", watched)
    print_form.render(usual(), PrintForm(), Look())
    screen.render(usual(), ScreenForm(), Look())
    epub.render(usual(), EpubForm(), Look())
    assert templating.__doc__ is not None
    documented = set(re.findall(r"\w+", templating.__doc__.split("no others:")[1]))
    assert len(seen) > 20 and seen <= documented


@pytest.mark.parametrize(
    ("template", "place", "reason"),
    [
        ("<p>\n{% if %}\n</p>", r"screen\.html\.j2:2", "Expected an expression"),
        ("<p>\n\n{{ handuot.title }}", r"screen\.html\.j2:3", "'handuot' is undefined"),
        ("{{ handout.titel }}", r"screen\.html\.j2:1", "no attribute 'titel'"),
        ("<p>\n{{ 1 / 0 }}", r"screen\.html\.j2:2", "division by zero"),
        ("{{ words.text('no_such_phrase') }}", r"screen\.html\.j2", "no_such_phrase"),
        ("\n{% include 'missing.j2' %}", r"missing\.j2", "no template 'missing.j2'"),
        ("{{ title | no_filter }}", r"screen\.html\.j2:1", "no_filter"),
    ],
)
def test_a_broken_template_gives_file_line_and_reason(template: str, place: str, reason: str, tmp_path: Path) -> None:
    (tmp_path / "screen.html.j2").write_text(template, "utf-8")
    for look in (Look(folders=(tmp_path,)), Look(overrides=(("screen.html.j2", template),))):
        with pytest.raises(RenderError, match=place) as told:
            page(look)
        assert reason in str(told.value)


@pytest.mark.parametrize(
    "template",
    [
        "{{ handout.__class__.__mro__ }}",
        "{{ ''.__class__.__base__.__subclasses__() }}",
        "{{ words.text.__globals__ }}",
        "{{ bands.__globals__ }}{{ handout.__init__.__globals__['sys'] }}",
        "{{ cycler.__init__.__globals__.os.popen('id').read() }}",
        "{% set x = handout.blocks.__getitem__.__self__.__class__.__subclasses__() %}{{ x }}",
    ],
)
def test_a_template_cannot_reach_the_program(template: str) -> None:
    with pytest.raises(RenderError):
        print_form.render(usual(), PrintForm(), Look(overrides=(("print.html.j2", template),)))


def test_a_template_cannot_read_files(tmp_path: Path) -> None:
    for name in ("../../../etc/passwd", "/etc/passwd"):
        with pytest.raises(RenderError, match="no template"):
            page(Look(folders=(tmp_path,), overrides=(("screen.html.j2", f"{{% include '{name}' %}}"),)))


def test_a_bug_of_the_program_is_not_laid_on_a_template(monkeypatch: pytest.MonkeyPatch) -> None:
    from handouts.forms import paper

    monkeypatch.setattr(paper, "fits", lambda *_: 1 / 0)
    monkeypatch.setattr(paper, "bands", lambda *_: 1 / 0)
    with pytest.raises(ZeroDivisionError):
        print_form.render(usual(), PrintForm(), Look())
