"""What the checker reads of a Markdown text, and whether its offsets are the author's."""

import importlib
import itertools
import pkgutil
import re
import re._constants as regex
import re._parser as regex_parser

import pytest

import handouts.wording
from handouts.wording import check_text
from handouts.wording.kinds import lexicon
from handouts.wording.prose import LEAD, LONGEST_SENTENCE, SAME_FEW, blank_out, sentence_spans, sentences


def words(text):
    return [mark.words for mark in check_text(text)]


@pytest.mark.parametrize(
    "text",
    [
        "Hold it like this.",
        "Hold it *like* **this**.",
        "Hold it __like__ this.",
        "Hold it like\nthis.",
        "Hold it like  this.",
        "HOLD IT LIKE THIS.",
        "- Hold it like this",
        "3. Hold it like this",
        "## Hold it like this",
        "> Hold it like this",
        "“Hold it like this.”",
        "| Hold it like this | 3 |",
        "Hold it [like this](film.html).",
    ],
)
def test_mark_up_hides_no_phrase(text):
    (mark,) = check_text(text)
    assert mark.kind == "demonstration"
    assert text[mark.start : mark.end] == mark.words
    assert "".join(c for c in mark.words.lower() if c.isalpha()) == "likethis"


@pytest.mark.parametrize(
    "text",
    [
        "`Hold it like this.`",
        "``Hold it ` like this.``",
        "```\nHold it like this.\n```",
        "~~~\nHold it like this.\n~~~",
        "Text.\n\n    Hold it like this.\n",
        "---\ntitle: Hold it like this\n---\n\nStand.",
        "<!-- Hold it like this. -->",
        "Stand [tall](hold-it-like-this 'like this').",
        "Stand [tall][1].\n\n[1]: http://example.org/hold/it/like-this",
        'Stand <span title="like this">tall</span>.',
        "See https://example.org/over-here for the club.",
    ],
)
def test_what_is_no_prose_is_not_read(text):
    assert not check_text(text)


def test_front_matter_without_an_end_is_prose():
    assert words("---\nHold it like this.") == ["like this"]


def test_contractions_and_curly_quotes_are_read_alike():
    straight, curly = "Don't bend it like this. As I'm doing it.", "Don’t bend it like this. As I’m doing it."
    assert [m.start for m in check_text(straight)] == [m.start for m in check_text(curly)]
    assert len(check_text(straight)) == 2


def test_marks_do_not_cut_a_contraction():
    assert words("You'll notice I don't lock my knees.") == ["You'll notice"]


def test_a_full_stop_in_a_number_or_an_abbreviation_ends_no_sentence():
    text = "Lower it 2.5 cm, approx. one finger, e.g. by bending."
    assert list(sentence_spans(text)) == [(0, len(text))]


def test_blanking_keeps_every_line_and_every_place():
    text = "---\na: b\n---\nOne `two`\n<!-- three\n four -->\n[five](six)\n"
    blank = blank_out(text)
    assert len(blank) == len(text)
    assert [i for i, c in enumerate(blank) if c == "\n"] == [i for i, c in enumerate(text) if c == "\n"]


def test_a_line_without_an_end_is_cut_into_pieces_of_bounded_length():
    text = "word " * 5000
    spans = list(sentence_spans(text))
    assert spans[0][0] == 0 and spans[-1][1] == len(text)
    assert all(one[1] == other[0] for one, other in itertools.pairwise(spans))
    assert max(end - start for start, end in spans) <= LONGEST_SENTENCE


def test_a_run_of_one_word_is_read_as_two():
    (sentence,) = sentences("here " * 50 + "now.", lexicon("en").known)
    assert sentence.words == ["here", "here", "now", "."]
    assert sentence.ends[1] == 50 * 5 - 1


def test_a_long_sentence_of_the_same_few_words_is_read_in_part():
    (sentence,) = sentences("look here " * 70, lexicon("en").known)
    assert len(sentence.words) == SAME_FEW == len(sentence.starts)
    assert len(check_text("here " * 20000)) < 200


@pytest.mark.parametrize("text", ["", "\n", " ", ".", "…", "''", "’s", "---", "`", "[](", "<", "<!--", "\x00", "é" * 10, "é̀ here", "İ over here"])
def test_odd_texts_are_read_without_a_fault(text):
    for mark in check_text(text):
        assert mark.words == text[mark.start : mark.end]


def patterns():
    """Every compiled pattern of the checker's modules, by its name."""
    for found in pkgutil.walk_packages(handouts.wording.__path__, "handouts.wording."):
        module = importlib.import_module(found.name)
        for name, value in vars(module).items():
            if isinstance(value, re.Pattern):
                yield pytest.param(value, id=f"{found.name}.{name}")


def repeats(parsed):
    """What each possessive repeat of a parsed pattern repeats, at any depth."""
    for operation, argument in parsed:
        if operation is regex.POSSESSIVE_REPEAT:
            yield argument[2]
        for part in argument if isinstance(argument, (tuple, list)) else (argument,):
            for inner in part if isinstance(part, list) else (part,):
                if isinstance(inner, regex_parser.SubPattern):
                    yield from repeats(inner)


@pytest.mark.parametrize("pattern", list(patterns()))
def test_no_group_repeats_possessively(pattern):
    """Python before 3.11.5 reads on past a turn that failed half-way (the "re" entry of its change log for 3.11.5,
    issue 106052): there "14, or" lost its comma."""
    several = [
        repeated
        for repeated in repeats(regex_parser.parse(pattern.pattern, pattern.flags))
        if len(repeated) > 1 or repeated[0][0] in (regex.SUBPATTERN, regex.BRANCH)
    ]
    assert not several, "repeat one character class possessively, or the group with a plain * or +"


def test_a_pause_after_a_number_or_a_possessive_is_a_word_of_its_own():
    (sentence,) = sentences("The judges' side, 14, or 2: 3", lexicon("en").known)
    assert sentence.words == ["the", "judges", "side", ",", "14", ",", "or", "2", ":", "3"]


def test_a_sentence_knows_the_words_that_lead_to_it():
    found = list(sentences("Sit tall, feet flat.\n\n## Movement\n\nDon't stop. Do four.", lexicon("en").known))
    assert [sentence.lead for sentence in found] == [
        [],
        ["sit", "tall", ",", "feet", "flat", "."],
        ["sit", "tall", ",", "feet", "flat", ".", "movement"],
        ["sit", "tall", ",", "feet", "flat", ".", "movement", "do", "not", "stop", "."],
    ]
    long = [*sentences(f"{'very ' * 2}{' '.join(map(str, range(LEAD + 9)))}. Then stop.", lexicon("en").known)][1].lead
    assert len(long) == LEAD and long[-2:] == [str(LEAD + 8), "."]
