"""Words stay words; every key and value keeps its line; nothing unfolds."""

import string

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from handouts.errors import StudioFaults
from handouts.reading.yaml_text import DEEPEST, LOADER, MOST_VALUES, read_yaml

LOADERS = sorted({yaml.SafeLoader, LOADER}, key=lambda loader: loader.__name__)
either_loader = pytest.mark.parametrize("loader", LOADERS, ids=lambda loader: loader.__name__)


def faults_of(text, loader=None, first_line=1):
    with pytest.raises(StudioFaults) as caught:
        read_yaml(text, "file.yaml", first_line, loader)
    return caught.value.faults


# Each is another type in YAML 1.1 (https://yaml.org/type/): sexagesimal int,
# bool, octal int, int with underscores, timestamp, float, null, hexadecimal,
# infinity, not a number, binary int, a value key.
TURNED_BY_YAML_1_1 = [
    "42:35", "0:45", "1:30:00", "no", "No", "NO", "on", "off", "yes", "y", "n", "true", "False", "012", "0o17", "1_000",
    "2026-03-04", "2026-03-04 10:00:00", "1e3", "1.5e+3", "12.50", "~", "null", "Null", "0x1F", ".inf", "-.INF", ".nan",
    "0b11", "=", "+7", "-0", "007",
]  # fmt: skip


@either_loader
@pytest.mark.parametrize("word", TURNED_BY_YAML_1_1)
def test_words_stay_words(word, loader):
    read = read_yaml(f"a: {word}\nb:\n  - {word}\n{word}: c\n", "f", loader=loader).data
    assert read == {"a": word, "b": [word], word: "c"}


def test_the_words_of_the_test_above_are_turned_by_yaml_1_1():
    def turned(word):
        try:
            return yaml.safe_load(f"a: {word}") != {"a": word}
        except yaml.YAMLError:
            return True

    # PyYAML leaves these alone where YAML 1.1 or another reader would not.
    assert {word for word in TURNED_BY_YAML_1_1 if not turned(word)} <= {"y", "n", "0o17", "1e3", "0:45"}


def quoted_in_yaml(words):
    return "'" + words.replace("'", "''") + "'"


PRINTABLE = st.text(
    st.characters(exclude_categories=("Cs", "Cc", "Co", "Cn", "Zl", "Zp"), exclude_characters="\ufeff"), max_size=40
)


@either_loader
@settings(max_examples=150, deadline=None)
@given(words=PRINTABLE)
def test_any_printable_words_in_quotes_stay_themselves(loader, words):
    assert read_yaml(f"a: {quoted_in_yaml(words)}\n", "f", loader=loader).data == {"a": words}


@either_loader
@settings(max_examples=150, deadline=None)
@given(words=st.text(string.ascii_letters + string.digits + "_.:+~/() -éßñ«»°×", min_size=1, max_size=30))
def test_any_plain_words_stay_themselves(loader, words):
    """Without quotes: as far as the YAML 1.2 rules for plain scalars go (section 7.3.3)."""
    plain = " ".join(words.split())
    if not plain or plain[0] in "-:" or ": " in plain or plain.endswith(":") or plain.startswith("..."):
        return
    assert read_yaml(f"a: {plain}\n", "f", loader=loader).data == {"a": plain}


@either_loader
@settings(max_examples=100, deadline=None)
@given(data=st.recursive(PRINTABLE, lambda inside: st.lists(inside) | st.dictionaries(PRINTABLE.filter(str.strip), inside)))
def test_what_pyyaml_writes_is_read_back(loader, data):
    document = {"top": data}
    written = yaml.safe_dump(document, allow_unicode=True, default_style='"')
    if "<<" in written or "!!" in written:
        return
    assert read_yaml(written, "f", loader=loader).data == document


@either_loader
def test_keys_and_values_keep_their_lines(loader):
    text = "# note\na: 1\nb:\n  - x\n  -\n    c: y\n    d:\n      - z\n      - >\n        folded\ne: 'two\n  lines'\nf: 2\n"
    read = read_yaml(text, "f", loader=loader)
    assert read.line(("a",)) == 2
    assert read.line(("b",)) == 3
    assert read.line(("b", 0)) == 4
    assert read.line(("b", 1, "c")) == 6
    assert read.line(("b", 1, "d", 1)) == 9
    assert read.line(("e",)) == 11
    assert read.line(("f",)) == 13
    assert read.line(("b", 1, "no such key", "d", 0)) == 8
    assert read.line(()) == 2
    assert read.last_key(("b", 1, "c", "added by a validator")) == "c"
    assert read.last_key(()) == ""


@either_loader
def test_front_matter_counts_from_its_own_first_line(loader):
    assert read_yaml("a: 1\nb: 2\n", "f", first_line=2, loader=loader).line(("b",)) == 3
    assert faults_of("a: 1\na: 2\n", loader, first_line=2)[0].line == 3


@either_loader
def test_a_second_key_of_the_same_name_is_a_fault(loader):
    (fault,) = faults_of("a: 1\nb:\n  c: 2\n  c: 3\n", loader)
    assert str(fault) == (
        "file.yaml:4: the key 'c' stands here a second time, first in line 3; keep one of the two"
    )


@either_loader
def test_all_double_keys_are_told_at_once(loader):
    assert [fault.line for fault in faults_of("a: 1\na: 2\nb: 3\nb: [4]\nb: {c: 1, c: 2}\n", loader)] == [2, 4, 5, 5]


@either_loader
def test_an_alias_bomb_is_refused_at_once(loader):
    bomb = "a: &a [x, x, x, x, x, x, x, x, x]\n"
    for name, before in zip("bcdefghi", "abcdefgh", strict=True):
        bomb += f"{name}: &{name} [{', '.join([f'*{before}'] * 9)}]\n"
    faults = faults_of(bomb, loader)
    assert "'&a' names this place for use elsewhere" in faults[0].wrong
    assert any("'*a' points to another place" in fault.wrong for fault in faults)


@either_loader
def test_an_alias_to_itself_is_refused(loader):
    assert faults_of("a: &a\n  b: *a\n", loader)


@either_loader
@pytest.mark.parametrize("tag", ["!!python/object/apply:os.system [x]", "!!binary aGk=", "!mine x", "! x", "!!str 1"])
def test_tags_are_refused(tag, loader):
    (fault,) = faults_of(f"a: {tag}\n", loader)
    assert fault.line == 1 and "tag" in fault.wrong


@either_loader
def test_merge_keys_are_refused(loader):
    (fault,) = faults_of("a:\n  <<: b\n", loader)
    assert fault.line == 2 and "'<<'" in fault.wrong


@either_loader
@pytest.mark.parametrize("opening", ["[", "{a: ", "- ", "? "])
def test_deep_nesting_is_a_fault_and_no_recursion_error(opening, loader):
    faults = faults_of("a:\n " + opening * 20_000 + "\n", loader)
    assert any("deep" in fault.wrong for fault in faults)


@either_loader
def test_nesting_is_read_to_the_bound(loader):
    read_yaml("a: " + "[" * (DEEPEST - 1) + "]" * (DEEPEST - 1), "f", loader=loader)
    faults_of("a: " + "[" * DEEPEST + "]" * DEEPEST, loader)


@either_loader
def test_too_many_values_are_refused(loader):
    (fault,) = faults_of("a: [" + "x," * MOST_VALUES + "]\n", loader)
    assert "keys and values" in fault.wrong


@either_loader
def test_a_second_document_is_refused(loader):
    (fault,) = faults_of("a: 1\n---\nb: 2\n", loader)
    assert fault.line == 2


@either_loader
@pytest.mark.parametrize("text", ["", "\n\n", "# only a note\n", "---\n"])
def test_an_empty_file_says_so(text, loader):
    (fault,) = faults_of(text, loader)
    assert "nothing in it" in fault.wrong or "key and a colon" in fault.wrong


@either_loader
@pytest.mark.parametrize("text", ["- a\n", "word\n", "[a, b]\n", "'a: b'\n"])
def test_a_file_without_keys_says_so(text, loader):
    assert "does not begin with a key" in faults_of(text, loader)[0].wrong


@either_loader
def test_words_after_a_hash_are_not_lost_in_silence(loader):
    """ "bench #2" is "bench" and a comment to YAML."""
    (fault,) = faults_of("a: 1\nnote: bench #2\n", loader)
    assert fault.line == 2 and "'#2' is taken for a comment" in fault.wrong
    assert read_yaml("a: 1 # a note\nb: 'x #2'  # y\nc: p#2\n", "f", loader=loader).data == {
        "a": "1", "b": "x #2", "c": "p#2",
    }  # fmt: skip


# What is written, the line, a piece of what is wrong.
SYNTAX = [
    ("a: 1\nnote: say: this\n", 2, "second colon"),
    ("a:1\nb: 2\n", 1, "a space is missing after the colon"),
    ("a:\n\tb: 1\n", 2, "a tab"),
    ("a: 1\nb: 'open\nc: 2\n", 2, "quotation mark is opened"),
    ('a: 1\nb: "open\nc: 2\n', 2, "quotation mark is opened"),
    ('a: "c:\\qoo"\n', 1, "backslash"),
    ("a: 1\nb: [1, 2\nc: 3\n", 2, "'[' is not closed"),
    ("a: 1\nb: {x: 1\nc: 3\n", 2, "'{' is not closed"),
    ("a: 1\nword\n", 2, "no colon after its key"),
    ("a: 1\nword\nb: 2\n", 2, "no colon after its key"),
    ("a: - b\n", 1, "list item stands on the same line"),
    ("a: *b\n", 1, "'*b' points to another place"),
    ("a: **b** c\n", 1, "begins with '*'"),
    ("a: @b\n", 1, "a sign that has a meaning"),
    ("a: `b`\n", 1, "a sign that has a meaning"),
    ("a: | b\n", 1, "after '|' or '>'"),
    ("a:\n    b: 1\n  c: 2\n", 3, "does not line up"),
    ("a:\n  - x\n b: 2\n", 3, "does not line up"),
    ("a: [x, }]\n", 1, "a comma or a bracket"),
    ("? [a]\n: b\n", 1, "a key is a list"),
]


@either_loader
@pytest.mark.parametrize(("text", "line", "wrong"), SYNTAX)
def test_syntax_errors_in_plain_words(text, line, wrong, loader):
    fault = faults_of(text, loader)[0]
    assert (fault.line, fault.path) == (line, "file.yaml")
    assert wrong in fault.wrong
    assert "\n" not in str(fault)


@either_loader
@settings(max_examples=200, deadline=None)
@given(text=st.text("ab:-[]{}#&*!|>'\"%@`,? \n\t<~=\\", max_size=60))
def test_anything_is_read_or_refused_on_one_line(loader, text):
    try:
        read_yaml(text, "f", loader=loader)
    except StudioFaults as problem:
        assert problem.faults
        assert all("\n" not in str(fault) and fault.line <= text.count("\n") + 1 for fault in problem.faults)
