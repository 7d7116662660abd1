"""French sentences said in English, so that what was learnt of English can be asked about them."""

import pytest

from handouts.wording import check_text
from handouts.wording.glossing import FILE, Glossary, french, glossing
from handouts.wording.kinds import lexicon
from handouts.wording.prose import NAME
from handouts.wording.searching import read

LINES = FILE.read_text("utf-8").splitlines()


def said(text):
    return " ".join(word for word, _ in french().said(text.split()))


def test_every_french_expression_has_one_meaning_and_as_many_words_in_english():
    alone = [word for line in LINES if " = " not in line for word in line.split()[1:]]
    together = [line.split(" = ") for line in LINES if " = " in line]
    assert len(alone) == len(set(alone)) > 30_000
    assert len(together) == len({french for _, french in together}) > 1000
    assert [one for one in together if len(one[0].split()) != len(one[1].split()) or len(one[1].split()) < 2] == []
    assert all(line == line.lower().strip() for line in LINES)


@pytest.mark.parametrize(
    "text, english",
    [
        ("tenez la barre comme ça", "hold the bar like this"),
        ("tu me regardes", "you look me"),
        ("je te le montre", "i show you it"),
        ("si vous le voyez", "if you see it"),
        ("prends l élastique rouge", "take the red band"),
        ("prends la rouge", "take the red"),
        ("jusqu à ce que le genou touche", "until the moment that the knee touch"),
        ("le genou", "the knee"),
        ("12 répétitions , puis zzqx", "12 repetitions , then zzqx"),
    ],
)
def test_a_sentence_is_said_in_english_words_in_their_order(text, english):
    assert said(text) == english


def test_each_english_word_stands_for_one_french_word():
    text = "tu me la montres , la sangle bleue , jusqu à ce que je te voie et comme ça tu l as".split()
    assert sorted(place for _, place in french().said(text)) == list(range(len(text)))


def test_the_longest_expression_that_fits_is_taken_and_an_unknown_compound_is_its_first_known_part():
    glossary = Glossary(["eye œil", "door porte", "a look = coup d", "a quick look = coup d œil"])
    assert [word for word, _ in glossary.said("coup d œil coup d porte-zzqx".split())] == "a quick look a look door".split()


def test_a_sentence_keeps_its_classes_names_and_the_words_before():
    first, second = read("Placez la main ici. Regardez Firmin.", "fr")
    begun, told = glossing("fr")([first, second])
    assert told.words == ["look", "firmin", "."] and told.lead == ["place", "the", "hand", "here", "."]
    assert told.classes[0] == lexicon("en").known["look"] and told.classes[1] & NAME
    assert told.written is second and second.written is second
    assert begun.classes[0] & NAME == 0  # a capital at the beginning of a known word names nobody
    assert begun.lead == []
    assert glossing("en") is None


@pytest.mark.parametrize(
    "text, marks",
    [
        ("Choisissez l'élastique rouge, puis asseyez-vous.", [("rouge", "looks-only")]),
        ("Tu me regardes faire, puis tu essaies.", [("regardes", "demonstration")]),
        ("Zieutez ma main.", [("Zieutez", "demonstration")]),
    ],
)
def test_what_is_found_of_an_english_word_is_marked_at_the_french_one(text, marks):
    found = [(mark.words, mark.kind) for mark in check_text(text, language="fr")]
    assert len(found) == len(marks)
    for (words, kind), (marked, of_kind) in zip(found, marks, strict=True):
        assert marked in words and kind == of_kind
