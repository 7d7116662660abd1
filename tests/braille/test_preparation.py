"""Each mend of the text, beside what the bare library makes of it."""

from __future__ import annotations

import pytest

from handouts.braille import liblouis, translate
from handouts.braille.codes import find_code
from handouts.braille.preparation import MENDS, Passage, prepare
from handouts.braille.translation import BLANK, words
from handouts.errors import RenderError, UnknownCharacter
from handouts.handout import Foreign, Strong, Text
from tests.braille.cells import ascii_of

LOUIS = liblouis.owner()
OLD = tuple(map(int, LOUIS.version.split(".")[:2])) < (3, 29)


def _bare(text: str, code: str = "ueb", grade: int = 2) -> str:
    """What liblouis makes of a text that nothing was done to."""
    return LOUIS.forward(find_code(code, grade).tables, text, None)[0]


# text, right cells, rule; the bare library gives something else on every version.
ALWAYS = [
    ("ueb", "2 1/2 kg", "#B#A/B KG", "11.3.2"),
    ("ueb", "3 x 12", '#C "8 #AB', "3.9.1"),
    ("ueb", "3x12", '#C"8#AB', "3.9.1"),
    ("ueb", "2 x 5 lb", '#B "8 #E LB', "3.9.1"),
    ("ueb", "____ kg", ".- KG", "7.2.3"),
    ("ueb", "the IT band", "! ,,IT B&", "10.1.3"),
    ("ueb", "90˚ bend", "#IJ^J B5D", "3.11.1"),
    ("ueb", "90º bend", "#IJ^J B5D", "3.11.1"),
    ("ueb", "soft\u00adly", "S(TLY", "soft hyphen"),
    ("ueb", "knee\u200bcap", "KNEECAP", "zero-width space"),
    ("ueb", "squat\tslow", "SQUAT SL[", "7.1.2"),
    ("ueb", "8\u201212", "#H,-#AB", "7.2, figure dash"),
    ("ueb", "„slow“", "8SL[0", "7.6"),
    ("ueb", "5⁄8", "#E_/#H", "11.3.3"),
    ("fr", "2½", ",< ,*/<", "a whole number and its fraction apart"),
    ("fr", "¾", ",%/?", "number sign"),
    ("fr", "Attention !", ".ATTENTION6", "no space before a sign"),
    ("fr", "16\u202f000", ",*$'###", "dot 3 between groups"),
    ("es", "90°", "#IJ0", "dots 356"),
    ("es", "1º, 2ª", "#1O1 #2A", "ordinals, from memory"),
    ("de", "2 1/2", "#B#A2", "mixed number"),
]


@pytest.mark.parametrize(("code", "text", "right", "rule"), ALWAYS)
def test_mended_on_every_version(code: str, text: str, right: str, rule: str) -> None:
    grade = 2 if code == "ueb" else 1
    assert ascii_of(translate(text, code, grade)) == right, rule
    assert _bare(text, code, grade).replace(" ", BLANK) != translate(text, code, grade)


# right cells, and whether the bare library before 3.29 and since gives them.
BY_VERSION = [
    ("knee\u2060cap", "KNEECAP", False, True, "word joiner"),
    ("3 12", "#C #AB", False, True, "6.6: two numbers"),
    ("Rest 90 60 30", ",RE/ #IJ #FJ #CJ", False, True, "6.6: three numbers"),
    ("16\u00a0000", '#AF"JJJ', False, True, "6.6.1: one number"),
    ("+44 20 7946 0123", '"6#DD"BJ"GIDF"JABC', True, False, "6.6.1: one telephone number"),
    ("12\u202f500", '#AB"EJJ', False, False, "6.6.1: one number, narrow space"),
]


@pytest.mark.parametrize(("text", "right", "before", "since", "rule"), BY_VERSION)
def test_mended_where_versions_differ(text: str, right: str, before: bool, since: bool, rule: str) -> None:
    assert ascii_of(translate(text)) == right, rule
    assert (_bare(text) == translate(text)) is (before if OLD else since)


def test_capitals_that_are_words_stay_contracted() -> None:
    # 10.1.3 speaks of initials; in a run of capitals the letters are the word.
    assert ascii_of(translate("DO IT NOW")) == ",,,D X N[,'"
    assert ascii_of(translate("KEEP IT")) == ",,KEEP ,,X"


def test_a_date_is_no_mixed_number() -> None:
    assert ascii_of(translate("7 1/2/2029")) == "#G #A_/#B_/#BJBI"


def test_a_name_keeps_its_low_lines() -> None:
    # en-ueb-g1_harness.yaml of liblouis 3.39.0, line 105
    assert ascii_of(translate("__init__", grade=1)) == ".-.-INIT.-.-"


@pytest.mark.parametrize("grade", [1, 2])
@pytest.mark.parametrize(("text", "right"), [("12,5", "#AB1E"), ("1.234,5", "#A'BCD1E"), ("16\u00a0000", "#AF'JJJ")])
def test_spanish_numbers_have_one_number_sign(text: str, right: str, grade: int) -> None:
    # es-g0-g1.yaml of liblouis 3.39.0, line 676, has 123.456,789 with one sign.
    assert ascii_of(translate(text, "es", grade)) == right


@pytest.mark.parametrize(
    ("text", "right"),
    [
        ("42:35", "#DB3#CE"),
        ("12,5 kg", "#AB1E KG"),
        ("3 × 12", '#C "9 #AB'),
        ("(8–12)", "8#H-#AB0"),
        ("16\u202f000", "#AF'JJJ"),
        ("1er", "#A;ER"),
        ("3 km", "#C KM"),
    ],
)
def test_french_numbers_in_letters(text: str, right: str) -> None:
    # Number sign and a to j, as Louis Braille had them; from memory, and each reads one way only.
    code = find_code("fr", 1, numbers="letters")
    assert ascii_of(BLANK.join(word.cells for word in words((Text(text),), code))) == right


def test_each_mend_has_a_name_and_a_rule() -> None:
    assert len({mend.name for mend in MENDS}) == len(MENDS)
    assert all(len(mend.rule) > 10 for mend in MENDS)


def test_origins_lead_back_to_the_text() -> None:
    text = "Hold 2 1/2 kg, 3 x 12, at 90˚"
    prepared = prepare(Passage(text), find_code("ueb", 2), LOUIS)
    assert prepared.text == "Hold 2½ kg, 3 × 12, at 90°"
    assert prepared.origins is not None and len(prepared.origins) == len(prepared.text)
    assert [text[place] for place in prepared.origins][:5] == list("Hold ")
    assert text[prepared.origins[prepared.text.index("k")]] == "k"
    assert list(prepared.origins) == sorted(prepared.origins)


# --- characters without braille ----------------------------------------------


@pytest.mark.parametrize(
    ("text", "code", "character", "place"),
    [("Tick ☐ when done", "ueb", "☐", 5), ("😀", "ueb", "😀", 0), ("a ✓", "fr", "✓", 2), ("x\n• y", "de", "•", 2)],
)
def test_an_unknown_character_is_named_with_its_place(text: str, code: str, character: str, place: int) -> None:
    with pytest.raises(UnknownCharacter) as caught:
        translate(text, code, 1)
    assert [(found, index) for found, _, index in caught.value.characters] == [(character, place)]
    assert f"U+{ord(character):04X}" in str(caught.value)


def test_the_place_counts_through_the_whole_line() -> None:
    line = (Text("One "), Foreign("fr", (Text("deux ✓"),)))
    with pytest.raises(UnknownCharacter) as caught:
        words(line, find_code("ueb", 2))
    assert caught.value.characters == (("✓", "CHECK MARK", 9),)


def test_no_escape_ever_reaches_the_cells() -> None:
    # The bare library writes \x2610 into the braille, in 8-dot cells.
    assert any(cell > "\u283f" for cell in _bare("☐"))


# --- emphasis and other languages --------------------------------------------


def _cells(line: tuple, code: str, grade: int = 1) -> str:
    return ascii_of(BLANK.join(word.cells for word in words(line, find_code(code, grade))))


STRONG = (Strong((Text("Stop if it hurts"),)), Text(". Rest"))


def test_the_bare_library_ends_a_bold_passage_early_before_3_29() -> None:
    typeforms = (liblouis.BOLD,) * len("Stop if it hurts") + (0,) * len(". Rest")
    bare, _, _ = LOUIS.forward(("en-ueb-g2.ctb",), "Stop if it hurts. Rest", typeforms)
    assert (ascii_of(bare) == "^7,/OP IF X^' ^1HURTS^'4 ,RE/") is OLD


@pytest.mark.parametrize(
    ("code", "expected"),
    [
        # 9.4.3
        ("ueb", "^7,STOP IF IT HURTS4^' ,REST"),
        # Code braille français uniformisé: dots 25, 456 open a passage, 456 stands before its last word.
        ("fr", "3_.STOP IF IT _HURTS4 .REST"),
        # de-g1.ctb: dots 456, 456 open, 6, 3 close.
        ("de", "__)OP IF IT HURTS,'' RE)"),
        # As es-g2.ctb does; the bare es-g1.ctb has none.
        ("es", '"9.STOP IF IT HURTS\'"9 .REST'),
    ],
)
def test_strong_words_keep_their_emphasis_in_every_code(code: str, expected: str) -> None:
    assert _cells(STRONG, code) == expected


def test_a_foreign_word_keeps_its_own_table() -> None:
    # 14.3.1: the non-UEB word indicator; e acute is dots 123456 in French.
    assert _cells((Text("the "), Foreign("fr", (Text("été"),))), "ueb", 2) == "! ^(=T="


def test_a_foreign_passage_is_set_off() -> None:
    # 14.3.2, 14.3.3: passage indicators with the letters of the language.
    line = (Text("Say "), Foreign("fr", (Text("tout le monde debout"),)), Text("."))
    assert _cells(line, "ueb", 2) == ',SAY "(FR\'TOUT LE MONDE DEBOUT,")4'


def test_english_within_french_is_not_contracted() -> None:
    assert _cells((Text("le "), Foreign("en", (Text("shoulder"),))), "fr", 2) == "L SHOULDER"


def test_table_names_are_names() -> None:
    for bad in ("/etc/passwd", "../x.ctb", "a,b.ctb", "en-ueb-g2.ctb\0", ""):
        with pytest.raises(RenderError):
            LOUIS.check_tables((bad,))
    with pytest.raises(RenderError):
        LOUIS.check_tables(("no-such-table.ctb",))
    LOUIS.check_tables(("en-ueb-g1.ctb",))


def test_codes_and_grades_that_do_not_exist() -> None:
    for code, grade in (("xx", 1), ("ueb", 3)):
        with pytest.raises(RenderError, match="no braille code"):
            translate("a", code, grade)


def test_line_breaks_stay_and_every_other_space_is_a_blank_cell() -> None:
    assert translate("a  b\n\nc ", grade=1) == "⠁⠀⠀⠃\n\n⠉⠀"
    assert translate("") == ""
